//! The columns that the page's training needs beside readiness: what each movement is to a plan, and the numbers of the rules.

use super::tables::Columns;
use crate::chain::{BOUNDS, Flat};
use crate::curriculum::MovementIx;
use crate::curriculum::gear::Gear;
use crate::curriculum::manner::{Instead, When};
use crate::curriculum::target::Measure;
use crate::curriculum::words::{BodyPart, Pattern, Word};
use crate::history::{H, SHEET};
use crate::morning::M;
use crate::strength::one_rep_max::{MOST_REPS, per_cent_of_max, range};
use crate::training::{Facts, Group, K, ORDER, Roster, Rule};
use serde_json::{Value, json};
use std::collections::BTreeMap;

const STRAIGHT: u32 = 1;
const STRICT: u32 = 2;
const TURNOVER: u32 = 4;
const LOADED: u32 = 16;
const OWN_DOSE: u32 = 32;
const UPRIGHT: u32 = 64;
const INVERTED: u32 = 128;
const OVER_FLOOR: u32 = 256;

pub(super) fn put(out: &mut Columns, roster: &Roster<'_>, flat: &Flat) {
    let all = || flat.movements.iter().map(|ix| roster.of(*ix));
    out.each("traits", all().map(traits));
    let bits = |parts: &[BodyPart]| parts.iter().fold(0, |bits, p| bits | 1_u32 << *p as u32);
    out.each("heavy_on", all().map(|f| bits(&f.heavy_on)));
    let lightly = |f: &Facts<'_>| -> Vec<BodyPart> {
        let parts = BodyPart::ALL.iter().copied();
        parts.filter(|part| f.stresses_lightly(*part)).collect()
    };
    out.each("light_on", all().map(|f| bits(&lightly(f))));
    let try_group = |f: &Facts<'_>| match f.try_group() {
        Some(group) => Group::ALL
            .iter()
            .position(|g| *g == group)
            .map_or(-1, |at| at as i32),
        None => -1,
    };
    out.each("try_group", all().map(try_group));
    out.each(
        "phase",
        all().map(|f| f.of.phase().map_or(0, |phase| phase as u32 + 1)),
    );
    let weeks = |f: &Facts<'_>| [f.half_weeks.0, f.half_weeks.1];
    out.each("weeks", all().flat_map(weeks));
    let numbers = |list: &[MovementIx]| -> Vec<u32> {
        list.iter().filter_map(|ix| flat.number(*ix)).collect()
    };
    out.put("share", shares(roster, flat));
    put_manner(out, roster, flat);
    out.each("easier", all().map(|f| numbers(&f.easier)));
    let group_of = |pattern: &Pattern| {
        let at = Group::ALL
            .iter()
            .position(|g| Group::of(*pattern) == Some(*g));
        at.map_or(-1, |at| at as i32)
    };
    out.each("groups", Pattern::ALL.iter().map(group_of));
    out.each("group_names", Group::ALL.iter().map(|g| g.word()));
    let words = roster.curriculum.school().equipment.keys();
    out.each("measures", words.filter(|word| Gear::measures(word)));
    out.each("pattern_order", ORDER.iter().map(|p| *p as u32));
    let lowest = |reps| range(1.0, reps).map_or(1.0, |(low, _)| low);
    out.each("one_rep", (1..=MOST_REPS).map(lowest));
    out.each("chart", (1..=MOST_REPS).filter_map(per_cent_of_max));
    let rules: BTreeMap<&str, &str> = Rule::ALL.iter().map(|r| (r.name(), r.key())).collect();
    out.put("rules", rules);
    out.put("training", K);
    out.put("history", H);
    out.put("drawing", SHEET);
    out.put("morning", M);
    out.put("route", BOUNDS);
}

/// Tempo, rest, when to go back, and what goes in its place, of those movements that say it, by the movement's number.
fn put_manner(out: &mut Columns, roster: &Roster<'_>, flat: &Flat) {
    fn of<'r, T>(
        roster: &Roster<'r>,
        flat: &Flat,
        say: impl Fn(&Facts<'r>) -> Option<T>,
    ) -> BTreeMap<usize, T> {
        let all = flat.movements.iter().enumerate();
        all.filter_map(|(i, ix)| Some((i, say(roster.of(*ix))?)))
            .collect()
    }
    out.put(
        "rep_s",
        of(roster, flat, |f| (f.rep_s != K.rep_s).then_some(f.rep_s)),
    );
    out.put(
        "tempo",
        of(roster, flat, |f| f.of.tempo().map(|t| t.to_string())),
    );
    let held = |f: &Facts<'_>| f.of.hold().map(|h| (h.at.word(), h.seconds));
    out.put("hold", of(roster, flat, held));
    out.put("rest_s", of(roster, flat, |f| f.of.rest()));
    let back = |f: &Facts<'_>| Some(f.of.back_when().to_vec()).filter(|all| !all.is_empty());
    let joint = |f: &Facts<'_>| f.joint().map(|part| part as u32);
    out.put("joint", of(roster, flat, joint));
    out.put("back_when", of(roster, flat, back));
    // What it is for (0 a part, 1 a class, 2 missing equipment), which, and the movement.
    let instead = |f: &Facts<'_>| {
        let one = |i: &Instead| {
            let (kind, which) = match &i.when {
                When::Part(part) => (0, json!(*part as u32)),
                When::Class(class) => (1, json!(class.0)),
                When::Without(word) => (2, json!(word)),
            };
            Some((kind, which, flat.number(i.movement)?))
        };
        let all: Vec<(u32, Value, u32)> = f.of.instead().iter().filter_map(one).collect();
        Some(all).filter(|all| !all.is_empty())
    };
    out.put("instead", of(roster, flat, instead));
}

fn traits(f: &Facts<'_>) -> u32 {
    let set = |is: bool, flag: u32| if is { flag } else { 0 };
    set(f.straight, STRAIGHT)
        | set(f.strict, STRICT)
        | set(f.turnover, TURNOVER)
        | set(f.loaded(), LOADED)
        | set(f.own_dose, OWN_DOSE)
        | set(f.upright_balance(), UPRIGHT)
        | set(f.of.inverted(), INVERTED)
        | set(f.over_floor(), OVER_FLOOR)
}

/// The share of body weight on the hands of what is trained by its weight in reps, by the movement's number.
fn shares(roster: &Roster<'_>, flat: &Flat) -> BTreeMap<usize, f64> {
    let of = |ix: &MovementIx| {
        let facts = roster.of(*ix);
        let weighed = facts.of.standard().measure() == Measure::Reps;
        weighed.then_some(facts.share).flatten()
    };
    let all = flat.movements.iter().enumerate();
    all.filter_map(|(i, ix)| Some((i, of(ix)?))).collect()
}
