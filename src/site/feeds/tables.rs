//! The tables that the pages' script looks up: requirement trees, demands, necessary demands, patterns, marks, as flat columns.
//!
//! Everything that needs thought is worked out here; the script compares and looks up. A tree is a list of whole numbers in
//! prefix order: a demand by its number, or -1 and a count for "all of", -2 and a count for "any of", -3, k and a count.

use super::training;
use crate::chain::{Chain, Flat};
use crate::curriculum::school::{School, WarmUpLine};
use crate::curriculum::target::{Added, Measure, ONE};
use crate::curriculum::words::{BodyPart, Pattern, Phase, Word};
use crate::curriculum::{Movement, MovementIx, Owner, Skill, SkillIx, Target};
use crate::placement;
use crate::readiness::never_presumed;
use crate::site::material::Material;
use crate::site::names::Mark;
use crate::training::Roster;
use foldhash::fast::FixedState;
use serde::Serialize;
use serde_json::{Map, Value, json};
use std::collections::{BTreeMap, HashMap};

/// The path of the tables, and what stands before them: a page opened from disk can load a script but no data.
pub const PATH: &str = "data/tables.js";
pub const PREFIX: &str = "globalThis.rungbookTables = ";

const EACH_SIDE: u32 = 1;
const GUARDED: u32 = 2;
const NEVER_PRESUMED: u32 = 4;
const LOWERING: u32 = 8;
/// It has a figure: `figures/<id>.svg`.
const DRAWN: u32 = 16;

/// `data/tables.js`, with the version by which a page names it; kept.
pub fn made<'a>(site: &Material<'a>) -> &'a (Vec<u8>, String) {
    site.kept.tables.get_or_init(|| tables(site))
}

fn tables(site: &Material<'_>) -> (Vec<u8>, String) {
    let columns = columns(site)
        .into_iter()
        .map(|(key, column)| format!("\"{key}\":{column}"));
    let columns = columns.collect::<Vec<String>>().join(",\n");
    let version = crate::site::theme::version(columns.as_bytes());
    // The page that got them looks whether they are those it named: a host sends what it has, whatever follows the `?`.
    let text = format!("{PREFIX}{{\n\"version\":\"{version}\",\n{columns}\n}};\n");
    (text.into_bytes(), version)
}

/// The tables as one object; what the tests give to the script.
pub fn value(site: &Material<'_>) -> Value {
    let columns = columns(site).into_iter();
    columns
        .map(|(key, json)| {
            (
                key.to_string(),
                serde_json::from_str(&json).unwrap_or_default(),
            )
        })
        .collect::<Map<String, Value>>()
        .into()
}

/// Columns with their names, as JSON.
#[derive(Default)]
pub(super) struct Columns(Vec<(&'static str, String)>);

impl Columns {
    pub(super) fn put(&mut self, name: &'static str, column: impl Serialize) {
        let json = serde_json::to_string(&column).unwrap_or_default();
        self.0.push((name, json));
    }

    /// A column of one value for each.
    pub(super) fn each<T: Serialize>(
        &mut self,
        name: &'static str,
        values: impl Iterator<Item = T>,
    ) {
        self.put(name, values.collect::<Vec<T>>());
    }
}

/// Every column.
fn columns(site: &Material<'_>) -> Vec<(&'static str, String)> {
    let mut out = Columns::default();
    put_site(&mut out, site);
    put_movements(&mut out, site);
    put_training(&mut out, site);
    put_classes(&mut out, site);
    put_trees(&mut out, site);
    out.0
}

/// The published movements, in the order of their numbers.
fn movements<'a>(site: &'a Material<'_>) -> impl Iterator<Item = &'a Movement> {
    let numbered = site.chains.flat.movements.iter();
    numbered.map(|ix| site.curriculum.movement(*ix))
}

fn put_site(out: &mut Columns, site: &Material<'_>) {
    let school = site.curriculum.school();
    out.put("format", 1);
    out.put("site", site_key(&school.address));
    out.put("school", &school.name);
    out.put("presume", school.presume);
    out.put("results_last_days", school.results_last);
    out.put("units", school.units.word());
    out.put("patterns", Pattern::WORDS);
    out.put("parts", BodyPart::WORDS);
}

fn put_movements(out: &mut Columns, site: &Material<'_>) {
    let shown = &site.chains.flat.movements;
    out.each("ids", movements(site).map(|m| m.id().as_str()));
    out.each("names", movements(site).map(|m| m.name()));
    let stage = |ix: &MovementIx| site.resolved.stages.of(*ix).unwrap_or(0);
    out.each("stage", shown.iter().map(stage));
    out.each("pattern", movements(site).map(|m| m.pattern() as u32));
    out.each("day_order", movements(site).map(placement::day_order));
    out.put("placement", placement::P);
    let drawn = |ix: &MovementIx| site.resolved.solved(*ix).map_or(0, |_| DRAWN);
    let flags = |ix: &MovementIx| flags(site.curriculum.movement(*ix)) | drawn(ix);
    out.each("flags", shown.iter().map(flags));
    let stresses = |m: &Movement| {
        let parts = m.stresses().iter();
        parts.fold(0, |bits, s| bits | 1_u32 << s.part as u32)
    };
    out.each("stresses", movements(site).map(stresses));
    let (marks, mark) = marks(site, shown);
    out.put("marks", marks);
    out.put("mark", mark);
    out.each("equipment", movements(site).map(|m| m.equipment()));
}

fn put_training(out: &mut Columns, site: &Material<'_>) {
    let school = site.curriculum.school();
    let gear: BTreeMap<&str, String> = movements(site)
        .flat_map(|m| m.equipment().iter().flatten())
        .map(|word| (word.as_str(), site.say().gear(word)))
        .collect();
    out.put("gear", gear);
    out.each("dose", movements(site).map(|m| m.dose().map(|d| dose(&d))));
    out.put("dose_of_school", of_school(school));
    out.put("warm_up", warm_up(school));
    let roster = Roster::new(site.curriculum, &site.resolved.stages);
    training::put(out, &roster, &site.chains.flat);
}

/// The lines of the warm-up by class: what is said, the parts that are more than lightly stressed as bits, what is wanted.
fn warm_up(school: &School) -> BTreeMap<&str, Vec<Value>> {
    let parts = |line: &WarmUpLine| {
        let of = BodyPart::ALL.iter().filter(|part| line.bears_on(**part));
        of.fold(0, |bits, part| bits | 1_u32 << *part as u32)
    };
    let one = |line: &WarmUpLine| json!([line.text, parts(line), line.equipment]);
    let all = school.warm_up.iter();
    all.map(|(class, lines)| (class.as_str(), lines.iter().map(one).collect()))
        .collect()
}

fn put_classes(out: &mut Columns, site: &Material<'_>) {
    let classes = site.curriculum.cautions().classes();
    out.each("classes", classes.iter().map(|c| c.id.as_str()));
    let words = site.say();
    out.each("class_names", classes.iter().map(|c| c.name(words)));
    let of = |m: &Movement| m.cautions().iter().map(|c| c.0).collect::<Vec<u16>>();
    out.each("cautions", movements(site).map(of));
}

/// Needs, goals, old ids, demands and their targets.
fn put_trees(out: &mut Columns, site: &Material<'_>) {
    let (curriculum, flat) = (site.curriculum, &site.chains.flat);
    out.put("needs", &flat.trees);
    out.put("necessary", &flat.necessary);
    let skills = curriculum.skills().zip(&site.chains.of_skills);
    let skill = |((ix, skill), chain): ((SkillIx, &Skill), &Chain)| {
        let members = chain.movements.iter();
        let members: Vec<u32> = members.filter_map(|l| flat.number(l.movement)).collect();
        // A choice or a text that names it says its signal word too.
        let named = site.named(Owner::Skill(ix));
        json!({ "id": skill.id.as_str(), "name": named, "plain": skill.name, "goal": flat.find(&skill.goal), "members": members })
    };
    out.each("skills", skills.map(skill));
    let old = curriculum.old_ids().filter_map(|(id, owner)| match owner {
        Owner::Movement(ix) => Some((id.to_string(), json!(flat.number(ix)?))),
        _ => None,
    });
    out.put("old", old.collect::<Map<String, Value>>());
    let since = movements(site).zip(0_u32..).filter_map(|(m, number)| {
        let since = m.test()?.since?;
        Some((number.to_string(), since.to_string()))
    });
    // The first day of today's way to measure, of those movements that were measured otherwise before.
    out.put("since", since.collect::<BTreeMap<String, String>>());
    let (targets, target_of) = targets(flat);
    let demands = flat.demands.iter().zip(&target_of);
    out.each("leaves", demands.flat_map(|((m, _), t)| [*m, *t]));
    out.put("implied", &flat.implied);
    out.each("targets", targets.iter().map(parts));
    out.each("target_text", targets.iter().map(Target::to_string));
}

/// measure, sets, amount, seconds of each rep, unit of the load, load.
fn dose(target: &Target) -> [i64; 6] {
    let (unit, load) = load(target);
    [
        measure(target),
        target.sets().into(),
        target.amount(),
        target.seconds(),
        unit,
        load,
    ]
}

/// Its unit (0 none, 1 mass, 2 body weight) and number.
fn load(target: &Target) -> (i64, i64) {
    match target.added() {
        None => (0, 0),
        Some(load @ Added::Mass(_)) => (1, load.signed()),
        Some(load @ Added::BodyWeight(_)) => (2, load.signed()),
    }
}

fn of_school(school: &School) -> Value {
    let dose = &school.dose;
    json!({
        "sets": dose.sets, "reps": dose.reps, "hold_sets": dose.hold.sets(), "hold_seconds": dose.hold.amount() / ONE,
        "a_week": dose.a_week, "lighter_every": dose.lighter_every, "practice": school.practice.word(),
        "smallest_plate": school.smallest_plate,
    })
}

/// The hash of the school's address: storage and caches of one browser may serve several sites.
pub fn site_key(address: &str) -> String {
    blake3::hash(address.as_bytes()).to_hex()[..12].to_string()
}

fn flags(movement: &Movement) -> u32 {
    let set = |is: bool, flag: u32| if is { flag } else { 0 };
    set(movement.each_side(), EACH_SIDE)
        | set(movement.guarded(), GUARDED)
        | set(never_presumed(movement), NEVER_PRESUMED)
        | set(movement.phase() == Some(Phase::Lowering), LOWERING)
}

/// The different targets, and for each demand which it asks.
fn targets(flat: &Flat) -> (Vec<Target>, Vec<u32>) {
    let mut all: Vec<Target> = Vec::new();
    let mut numbers: HashMap<Target, u32, FixedState> = HashMap::default();
    let mut number = |target: Target| {
        *numbers.entry(target).or_insert_with(|| {
            all.push(target);
            all.len() as u32 - 1
        })
    };
    let of = flat
        .demands
        .iter()
        .map(|(_, target)| number(*target))
        .collect();
    (all, of)
}

fn measure(target: &Target) -> i64 {
    match target.measure() {
        Measure::Reps => 0,
        Measure::Time => 1,
        Measure::Length => 2,
        Measure::Angle => 3,
        Measure::Done => 4,
    }
}

/// measure, "at most", sets, amount, seconds, unit of the load, load, hits, tries, each side.
fn parts(target: &Target) -> [i64; 10] {
    let measure = measure(target);
    let (unit, load) = load(target);
    let (hits, of) = target
        .tries()
        .map_or((0, 0), |t| (t.hits.into(), t.of.into()));
    [
        measure,
        i64::from(target.at_most()),
        target.sets().into(),
        target.amount(),
        target.seconds(),
        unit,
        load,
        hits,
        of,
        target.each_side().into(),
    ]
}

/// The different marks, and for each movement which it bears; -1 for none.
fn marks<'p>(site: &'p Material<'_>, shown: &[MovementIx]) -> (Vec<&'p Mark>, Vec<i64>) {
    let mut all: Vec<&Mark> = Vec::new();
    let mut of = Vec::new();
    for ix in shown {
        let number = site.links.mark(*ix).map_or(-1, |mark| {
            let known = all
                .iter()
                .position(|m| m.says == mark.says && m.href == mark.href);
            known.unwrap_or_else(|| {
                all.push(mark);
                all.len() - 1
            }) as i64
        });
        of.push(number);
    }
    (all, of)
}
