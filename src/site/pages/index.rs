//! Home, the indexes, and the short pages that clients look for first.

use super::{Made, about, head, sheet, turn};
use crate::curriculum::caution::ClassIx;
use crate::curriculum::page::Page;
use crate::curriculum::words::{Pattern, Word};
use crate::curriculum::{MovementIx, SkillIx};
use crate::site::material::{Material, ROWS_A_PAGE};
use crate::site::names::stage_words;
use crate::site::pages::markdown::{self, Place};
use crate::site::pages::view::{self, CautionView, Named};
use crate::site::theme::ThemeError;
use crate::words::key;
use serde::Serialize;
use std::cmp::Reverse;
use std::collections::BTreeMap;
use tera::Context;

/// Links in one list of an index; more are counted.
const MOST_LINKS: usize = 200;
/// Entries of the ledger on the home page.
const RECENT: usize = 3;

pub fn fixed(site: &Material<'_>, page: &'static Page) -> Result<Made, ThemeError> {
    let name = page.name;
    let of_page = key("page", page.template);
    let text = |part: &str| site.say().say(&format!("{of_page}.{part}"));
    let head = head(page.template, text("title"), text("description"));
    let mut context = Context::new();
    let note = site
        .curriculum
        .fixed_page_note(name)
        .map(|ix| markdown::render(site, ix, Place::own(0)))
        .transpose()?;
    context.insert("note", &note.unwrap_or_default());
    match name {
        "index" => home(site, &mut context),
        "before-you-start" => about::before(site, &mut context),
        "if-it-hurts" => about::hurts(site, &mut context),
        "about-the-numbers" => about::numbers(site, &mut context),
        "cautions" => cautions(site, &mut context),
        "faults" => faults(site, &mut context),
        "equipment" => equipment(site, &mut context),
        "words" => words(site, &mut context),
        "changes" => entries(site, usize::MAX, &mut context),
        "today" => {
            context.insert("stops", &sheet::stops(site, in_order(site)));
            context.insert("goals", &begun_with(site));
        }
        "where-i-stand" | "my-people" => context.insert("goals", &goals(site)),
        "data" => context.insert("count", &site.curriculum.published().count()),
        _ => {}
    }
    Ok((format!("{}.html", page.template).into(), head, context))
}

/// The ledger's newest entries first, so many at most.
fn entries(site: &Material<'_>, most: usize, context: &mut Context) {
    let newest = site.curriculum.ledger().entries.iter().rev().take(most);
    let entries: Vec<_> = newest.map(|e| view::entry(site, e)).collect();
    context.insert("entries", &entries);
}

#[derive(Serialize)]
struct SkillCard<'a> {
    id: &'a str,
    link: &'a str,
    summary: Option<&'a str>,
    stage: u32,
    stage_words: String,
    /// The address of its goal's small figure, or nothing.
    figure: String,
}

/// The goals of all skills, the one with the fewest rungs under it first.
fn goals<'a>(site: &'a Material<'_>) -> Vec<SkillCard<'a>> {
    let card = |ix: SkillIx| {
        let skill = site.curriculum.skill(ix);
        let stage = site.resolved.stages.of(skill.goal.movement).unwrap_or(0);
        SkillCard {
            id: skill.id.as_str(),
            link: site.links.skill(ix),
            summary: skill.summary.as_deref(),
            stage,
            stage_words: stage_words(site.say(), stage),
            figure: view::figure_of(site, skill.goal.movement),
        }
    };
    let all = site.curriculum.skills().map(|(ix, _)| card(ix));
    let mut all: Vec<SkillCard<'_>> = all.collect();
    all.sort_by_key(|goal| goal.stage);
    all
}

/// A figure on the ground.
#[derive(Serialize)]
struct Standing<'a> {
    id: &'a str,
    stage: u32,
    figure: String,
}

/// So many figures stand on the ground of a page.
const MOST_STANDING: usize = 7;

/// What everybody begins with: drawn movements of the first rung.
fn begun_with<'a>(site: &Material<'a>) -> Vec<Standing<'a>> {
    let first = in_order(site)
        .iter()
        .filter(|ix| stage_of(site, **ix) == 0 && site.resolved.solved(**ix).is_some());
    let standing = first.map(|ix| Standing {
        id: site.curriculum.movement(*ix).id().as_str(),
        stage: 0,
        figure: view::figure_of(site, *ix),
    });
    standing.take(MOST_STANDING).collect()
}

fn home(site: &Material<'_>, context: &mut Context) {
    context.insert("skills", &goals(site));
    context.insert("count", &site.curriculum.published().count());
    entries(site, RECENT, context);
    let pages = site
        .curriculum
        .notes()
        .filter(|(_, n)| n.owner == crate::curriculum::note::NoteOwner::Page);
    context.insert(
        "pages",
        &pages
            .map(|(_, n)| Named::page(&n.id, &n.title))
            .collect::<Vec<_>>(),
    );
    let families = site.curriculum.families().filter(|(_, f)| !f.held_back);
    context.insert(
        "families",
        &families
            .map(|(ix, _)| site.links.family(ix))
            .collect::<Vec<_>>(),
    );
}

#[derive(Serialize)]
struct ClassView<'a> {
    #[serde(flatten)]
    class: CautionView<'a>,
    /// The movement that is about little else, and its small figure; nothing where none is drawn.
    shown: Option<(String, &'a str)>,
    movements: Vec<&'a str>,
    more: usize,
}

fn cautions(site: &Material<'_>, context: &mut Context) {
    let mut by_class: BTreeMap<ClassIx, Vec<MovementIx>> = BTreeMap::new();
    for ix in in_order(site) {
        let classes = site.curriculum.movement(*ix).cautions();
        classes
            .iter()
            .for_each(|c| by_class.entry(*c).or_default().push(*ix));
    }
    let classes = site.curriculum.cautions().classes().len();
    let mut all: Vec<ClassIx> = (0..classes).map(|i| ClassIx(i as u16)).collect();
    all.sort_by_key(|ix| Reverse(site.curriculum.cautions().class(*ix).signal));
    let view = |ix: ClassIx| {
        let movements = by_class.get(&ix).map_or(&[][..], Vec::as_slice);
        ClassView {
            class: view::caution(site, ix, &[]),
            shown: purest(site, movements).map(|m| (view::figure_of(site, m), site.links.of(m))),
            movements: movements
                .iter()
                .take(MOST_LINKS)
                .map(|m| site.links.of(*m))
                .collect(),
            more: movements.len().saturating_sub(MOST_LINKS),
        }
    };
    context.insert("classes", &all.into_iter().map(view).collect::<Vec<_>>());
}

/// Of movements from the ground up the drawn one with the fewest cautions, and no way out where there is another: its figure
/// shows best what a class is about.
fn purest(site: &Material<'_>, movements: &[MovementIx]) -> Option<MovementIx> {
    let drawn = movements
        .iter()
        .filter(|ix| site.resolved.solved(**ix).is_some());
    let about = |ix: &&MovementIx| {
        let movement = site.curriculum.movement(**ix);
        (
            movement.pattern() == Pattern::Exit,
            movement.cautions().len(),
        )
    };
    drawn.min_by_key(about).copied()
}

#[derive(Serialize)]
struct FaultRow<'a> {
    see: &'a str,
    /// The address of the small figure of the movement where it is met first, or nothing.
    figure: String,
    because: Option<&'a str>,
    attempt: Option<&'a str>,
    movements: Vec<&'a str>,
}

/// The faults that are seen first in movements of one pattern.
#[derive(Serialize)]
struct FaultGroup<'a> {
    name: &'a str,
    rows: Vec<FaultRow<'a>>,
}

/// A fault by which rows are joined: what is seen in small letters, then its parts as written.
type FaultKey<'a> = (String, &'a str, Option<&'a str>, Option<&'a str>);

/// Faults by pattern, then by what is seen; the same fault of several movements once, where it is met first.
fn faults(site: &Material<'_>, context: &mut Context) {
    let mut by_fault: BTreeMap<FaultKey<'_>, Vec<MovementIx>> = BTreeMap::new();
    for ix in in_order(site).iter().copied() {
        for fault in site.curriculum.movement(ix).faults() {
            let key = (
                fault.see.to_lowercase(),
                fault.see.as_str(),
                fault.because.as_deref(),
                fault.attempt.as_deref(),
            );
            by_fault.entry(key).or_default().push(ix);
        }
    }
    let total = by_fault.len();
    let mut groups: Vec<FaultGroup<'_>> = Pattern::ALL
        .iter()
        .map(|pattern| FaultGroup {
            name: site.say().say(&key("pattern", pattern.word())),
            rows: Vec::new(),
        })
        .collect();
    let shown = by_fault.into_iter().take(ROWS_A_PAGE * 2);
    for ((_, see, because, attempt), movements) in shown {
        let pattern = site.curriculum.movement(movements[0]).pattern();
        let of = Pattern::ALL.iter().position(|p| *p == pattern);
        groups[of.unwrap_or(0)].rows.push(FaultRow {
            see,
            figure: view::figure_of(site, movements[0]),
            because,
            attempt,
            movements: movements
                .iter()
                .take(MOST_LINKS)
                .map(|m| site.links.of(*m))
                .collect(),
        });
    }
    groups.retain(|group| !group.rows.is_empty());
    let rows: usize = groups.iter().map(|group| group.rows.len()).sum();
    context.insert("more", &(total - rows));
    context.insert("groups", &groups);
}

#[derive(Serialize)]
struct EquipmentRow<'a> {
    word: String,
    id: &'a str,
    means: &'a str,
    movements: Vec<&'a str>,
    more: usize,
}

fn equipment(site: &Material<'_>, context: &mut Context) {
    let mut by_word: BTreeMap<&str, Vec<MovementIx>> = BTreeMap::new();
    let mut without = Vec::new();
    for ix in in_order(site).iter().copied() {
        let movement = site.curriculum.movement(ix);
        movement
            .equipment()
            .iter()
            .flatten()
            .for_each(|word| by_word.entry(word).or_default().push(ix));
        if movement.equipment().is_empty() {
            without.push(ix);
        }
    }
    let mut rows: Vec<EquipmentRow<'_>> = Vec::new();
    for (word, means) in &site.curriculum.school().equipment {
        let movements = by_word.get(word.as_str()).map_or(&[][..], Vec::as_slice);
        rows.push(EquipmentRow {
            word: site.say().gear(word),
            id: word,
            means,
            movements: movements
                .iter()
                .take(MOST_LINKS)
                .map(|m| site.links.of(*m))
                .collect(),
            more: movements.len().saturating_sub(MOST_LINKS),
        });
    }
    context.insert("equipment", &rows);
    context.insert(
        "without",
        &without
            .iter()
            .take(MOST_LINKS)
            .map(|m| site.links.of(*m))
            .collect::<Vec<_>>(),
    );
}

#[derive(Serialize)]
struct AlsoRow<'a> {
    also: &'a str,
    link: &'a str,
}

fn words(site: &Material<'_>, context: &mut Context) {
    let mut named: Vec<(&str, MovementIx)> = Vec::new();
    for (ix, movement) in site.curriculum.published() {
        named.extend(movement.also().iter().map(|also| (also.as_str(), ix)));
    }
    let id = |ix: MovementIx| site.curriculum.movement(ix).id().as_str();
    named.sort_by_cached_key(|(also, ix)| (also.to_lowercase(), id(*ix)));
    named.truncate(ROWS_A_PAGE * 2);
    let row = |(also, ix)| AlsoRow {
        also,
        link: site.links.of(ix),
    };
    let also: Vec<AlsoRow<'_>> = named.into_iter().map(row).collect();
    context.insert("also", &also);
}

#[derive(Serialize)]
struct MovementRow<'a> {
    link: &'a str,
    /// The address of its small figure, or nothing.
    figure: String,
    standard: String,
    pattern: &'a str,
}

/// The movements that stand at the same height.
#[derive(Serialize)]
struct StageGroup<'a> {
    stage: u32,
    says: String,
    rows: Vec<MovementRow<'a>>,
}

/// Every published movement from the ground up, by name on each rung; kept.
fn in_order<'a>(site: &Material<'a>) -> &'a [MovementIx] {
    site.kept.ground_up.get_or_init(|| {
        let mut all: Vec<MovementIx> = site.curriculum.published().map(|(ix, _)| ix).collect();
        all.sort_by_cached_key(|ix| {
            let name = site.curriculum.movement(*ix).name().to_lowercase();
            (stage_of(site, *ix), name, *ix)
        });
        all
    })
}

fn stage_of(site: &Material<'_>, ix: MovementIx) -> u32 {
    site.resolved.stages.of(ix).unwrap_or(0)
}

/// Every movement from the ground up, a long table.
pub fn movements(site: &Material<'_>, index: usize) -> Made {
    let all = in_order(site);
    let row = |ix: &MovementIx| {
        let m = site.curriculum.movement(*ix);
        MovementRow {
            link: site.links.of(*ix),
            figure: view::figure_of(site, *ix),
            standard: site.words(&m.standard()),
            pattern: site.say().say(&key("pattern", m.pattern().word())),
        }
    };
    let here = all.chunks(ROWS_A_PAGE).nth(index).unwrap_or(&[]);
    let groups: Vec<StageGroup<'_>> = here
        .chunk_by(|a, b| stage_of(site, *a) == stage_of(site, *b))
        .map(|rung| StageGroup {
            stage: stage_of(site, rung[0]),
            says: stage_words(site.say(), stage_of(site, rung[0])),
            rows: rung.iter().map(row).collect(),
        })
        .collect();
    let mut context = Context::new();
    context.insert("groups", &groups);
    context.insert("count", &all.len());
    context.insert(
        "turn",
        &turn("movements", index, all.len().div_ceil(ROWS_A_PAGE).max(1)),
    );
    (
        "movements.html".into(),
        head(
            "movements",
            site.say().say("page.movements.title"),
            site.say().say("page.movements.description"),
        ),
        context,
    )
}
