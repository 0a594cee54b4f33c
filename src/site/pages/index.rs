//! Home, the indexes, and the short pages that clients look for first.

use super::{Made, about, head, turn};
use crate::curriculum::caution::ClassIx;
use crate::curriculum::page::Page;
use crate::curriculum::{MovementIx, SkillIx};
use crate::site::pages::markdown;
use crate::site::pages::view::{self, CautionView, Named};
use crate::site::theme::ThemeError;
use crate::site::{Plan, ROWS_A_PAGE};
use serde::Serialize;
use std::collections::BTreeMap;
use tera::Context;

/// Links in one list of an index; more are counted.
const MOST_LINKS: usize = 200;
/// Entries of the ledger on the home page.
const RECENT: usize = 3;

pub fn fixed(plan: &Plan<'_>, page: &'static Page) -> Result<Made, ThemeError> {
    let name = page.name;
    let of_page = view::key("page", page.template);
    let text = |part: &str| plan.say().say(&format!("{of_page}.{part}"));
    let head = head(page.template, text("title"), text("description"));
    let mut context = Context::new();
    let note = plan
        .curriculum
        .fixed_page_note(name)
        .map(|ix| markdown::render(plan, ix, 0))
        .transpose()?;
    context.insert("note", &note.unwrap_or_default());
    match name {
        "index" => home(plan, &mut context),
        "before-you-start" => about::before(plan, &mut context),
        "if-it-hurts" => about::hurts(plan, &mut context),
        "about-the-numbers" => about::numbers(plan, &mut context),
        "cautions" => cautions(plan, &mut context),
        "faults" => faults(plan, &mut context),
        "equipment" => equipment(plan, &mut context),
        "words" => words(plan, &mut context),
        "changes" => context.insert(
            "entries",
            &plan
                .curriculum
                .ledger
                .entries
                .iter()
                .rev()
                .map(|e| view::entry(plan, e))
                .collect::<Vec<_>>(),
        ),
        "data" => context.insert("count", &plan.curriculum.published().count()),
        _ => {}
    }
    Ok((format!("{}.html", page.template).into(), head, context))
}

#[derive(Serialize)]
struct SkillCard<'a> {
    id: &'a str,
    link: &'a str,
    summary: Option<&'a str>,
    stage: u32,
    stage_words: String,
}

fn home(plan: &Plan<'_>, context: &mut Context) {
    let card = |ix: SkillIx| {
        let skill = plan.curriculum.skill(ix);
        let stage = plan.stages.of(skill.goal.movement).unwrap_or(0);
        SkillCard {
            id: skill.id.as_str(),
            link: plan.links.skill(ix),
            summary: skill.summary.as_deref(),
            stage,
            stage_words: view::stage_words(plan.say(), stage),
        }
    };
    context.insert(
        "skills",
        &plan
            .curriculum
            .skills()
            .map(|(ix, _)| card(ix))
            .collect::<Vec<_>>(),
    );
    context.insert("count", &plan.curriculum.published().count());
    context.insert(
        "entries",
        &plan
            .curriculum
            .ledger
            .entries
            .iter()
            .rev()
            .take(RECENT)
            .map(|e| view::entry(plan, e))
            .collect::<Vec<_>>(),
    );
    let pages = plan
        .curriculum
        .notes()
        .filter(|(_, n)| n.owner == crate::curriculum::note::NoteOwner::Page);
    context.insert(
        "pages",
        &pages
            .map(|(_, n)| Named::page(&n.id, &n.title))
            .collect::<Vec<_>>(),
    );
    let families = plan.curriculum.families().filter(|(_, f)| !f.held_back);
    context.insert(
        "families",
        &families
            .map(|(ix, _)| plan.links.family(ix))
            .collect::<Vec<_>>(),
    );
}

#[derive(Serialize)]
struct ClassView<'a> {
    #[serde(flatten)]
    class: CautionView<'a>,
    movements: Vec<&'a str>,
    more: usize,
}

fn cautions(plan: &Plan<'_>, context: &mut Context) {
    let mut by_class: BTreeMap<ClassIx, Vec<MovementIx>> = BTreeMap::new();
    for (ix, movement) in plan.curriculum.published() {
        movement
            .cautions
            .iter()
            .for_each(|c| by_class.entry(*c).or_default().push(ix));
    }
    let all = 0..plan.curriculum.cautions.classes().len();
    let view = |i: usize| {
        let ix = ClassIx(i as u16);
        let movements = by_class.get(&ix).map_or(&[][..], Vec::as_slice);
        ClassView {
            class: view::caution(plan, ix, &[]),
            movements: movements
                .iter()
                .take(MOST_LINKS)
                .map(|m| plan.links.of(*m))
                .collect(),
            more: movements.len().saturating_sub(MOST_LINKS),
        }
    };
    context.insert("classes", &all.map(view).collect::<Vec<_>>());
}

#[derive(Serialize)]
struct FaultRow<'a> {
    see: &'a str,
    because: Option<&'a str>,
    attempt: Option<&'a str>,
    movements: Vec<&'a str>,
}

/// A fault by which rows are joined: what is seen in small letters, then its parts as written.
type FaultKey<'a> = (String, &'a str, Option<&'a str>, Option<&'a str>);

/// Faults by what is seen; the same fault of several movements once.
fn faults(plan: &Plan<'_>, context: &mut Context) {
    let mut by_fault: BTreeMap<FaultKey<'_>, Vec<MovementIx>> = BTreeMap::new();
    for (ix, movement) in plan.curriculum.published() {
        for fault in &movement.faults {
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
    let rows: Vec<FaultRow<'_>> = by_fault
        .into_iter()
        .take(ROWS_A_PAGE * 2)
        .map(|((_, see, because, attempt), movements)| FaultRow {
            see,
            because,
            attempt,
            movements: movements
                .iter()
                .take(MOST_LINKS)
                .map(|m| plan.links.of(*m))
                .collect(),
        })
        .collect();
    context.insert("more", &(total - rows.len()));
    context.insert("faults", &rows);
}

#[derive(Serialize)]
struct EquipmentRow<'a> {
    word: String,
    id: &'a str,
    means: &'a str,
    movements: Vec<&'a str>,
    more: usize,
}

fn equipment(plan: &Plan<'_>, context: &mut Context) {
    let mut by_word: BTreeMap<&str, Vec<MovementIx>> = BTreeMap::new();
    let mut without = Vec::new();
    for (ix, movement) in plan.curriculum.published() {
        movement
            .equipment
            .iter()
            .flatten()
            .for_each(|word| by_word.entry(word).or_default().push(ix));
        if movement.equipment.is_empty() {
            without.push(ix);
        }
    }
    let mut rows: Vec<EquipmentRow<'_>> = Vec::new();
    for (word, means) in &plan.curriculum.school.equipment {
        let movements = by_word.get(word.as_str()).map_or(&[][..], Vec::as_slice);
        rows.push(EquipmentRow {
            word: plan.say().gear(word),
            id: word,
            means,
            movements: movements
                .iter()
                .take(MOST_LINKS)
                .map(|m| plan.links.of(*m))
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
            .map(|m| plan.links.of(*m))
            .collect::<Vec<_>>(),
    );
}

#[derive(Serialize)]
struct AlsoRow<'a> {
    also: &'a str,
    link: &'a str,
}

fn words(plan: &Plan<'_>, context: &mut Context) {
    let mut also: Vec<AlsoRow<'_>> = Vec::new();
    for (ix, movement) in plan.curriculum.published() {
        also.extend(movement.also.iter().map(|a| AlsoRow {
            also: a,
            link: plan.links.of(ix),
        }));
    }
    also.sort_by(|a, b| (a.also.to_lowercase(), a.link).cmp(&(b.also.to_lowercase(), b.link)));
    also.truncate(ROWS_A_PAGE * 2);
    context.insert("also", &also);
}

#[derive(Serialize)]
struct MovementRow<'a> {
    link: &'a str,
    standard: String,
    stage: String,
    pattern: &'a str,
    skills: Vec<&'a str>,
}

/// Every movement by name, a long table.
/// Every published movement by name.
pub fn by_name(plan: &Plan<'_>) -> Vec<MovementIx> {
    let mut all: Vec<MovementIx> = plan.curriculum.published().map(|(ix, _)| ix).collect();
    all.sort_by_cached_key(|ix| (plan.curriculum.movement(*ix).name.to_lowercase(), *ix));
    all
}

pub fn movements(plan: &Plan<'_>, index: usize) -> Made {
    use crate::curriculum::words::Word;
    let all = plan.by_name();
    let rows: Vec<MovementRow<'_>> = all
        .chunks(ROWS_A_PAGE)
        .nth(index)
        .unwrap_or(&[])
        .iter()
        .map(|ix| {
            let m = plan.curriculum.movement(*ix);
            let skills = plan.skills_of[ix.at()].iter().take(8);
            MovementRow {
                link: plan.links.of(*ix),
                standard: plan.words(&m.standard),
                stage: view::stage_words(plan.say(), plan.stages.of(*ix).unwrap_or(0)),
                pattern: plan.say().say(&view::key("pattern", m.pattern.word())),
                skills: skills.map(|s| plan.links.skill(*s)).collect(),
            }
        })
        .collect();
    let mut context = Context::new();
    context.insert("rows", &rows);
    context.insert("count", &all.len());
    context.insert(
        "turn",
        &turn("movements", index, all.len().div_ceil(ROWS_A_PAGE).max(1)),
    );
    (
        "movements.html".into(),
        head(
            "movements",
            plan.say().say("page.movements.title"),
            plan.say().say("page.movements.description"),
        ),
        context,
    )
}
