//! Home, the indexes, and the short pages that clients look for first.

use super::{Made, about, head, turn};
use crate::curriculum::caution::ClassIx;
use crate::curriculum::page::Page;
use crate::curriculum::{MovementIx, SkillIx};
use crate::site::material::{Material, ROWS_A_PAGE};
use crate::site::names::stage_words;
use crate::site::pages::markdown;
use crate::site::pages::view::{self, CautionView, Named};
use crate::site::theme::ThemeError;
use crate::words::key;
use serde::Serialize;
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
        .map(|ix| markdown::render(site, ix, 0))
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
        "changes" => context.insert(
            "entries",
            &site
                .curriculum
                .ledger
                .entries
                .iter()
                .rev()
                .map(|e| view::entry(site, e))
                .collect::<Vec<_>>(),
        ),
        "data" => context.insert("count", &site.curriculum.published().count()),
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

fn home(site: &Material<'_>, context: &mut Context) {
    let card = |ix: SkillIx| {
        let skill = site.curriculum.skill(ix);
        let stage = site.resolved.stages.of(skill.goal.movement).unwrap_or(0);
        SkillCard {
            id: skill.id.as_str(),
            link: site.links.skill(ix),
            summary: skill.summary.as_deref(),
            stage,
            stage_words: stage_words(site.say(), stage),
        }
    };
    context.insert(
        "skills",
        &site
            .curriculum
            .skills()
            .map(|(ix, _)| card(ix))
            .collect::<Vec<_>>(),
    );
    context.insert("count", &site.curriculum.published().count());
    context.insert(
        "entries",
        &site
            .curriculum
            .ledger
            .entries
            .iter()
            .rev()
            .take(RECENT)
            .map(|e| view::entry(site, e))
            .collect::<Vec<_>>(),
    );
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
    movements: Vec<&'a str>,
    more: usize,
}

fn cautions(site: &Material<'_>, context: &mut Context) {
    let mut by_class: BTreeMap<ClassIx, Vec<MovementIx>> = BTreeMap::new();
    for (ix, movement) in site.curriculum.published() {
        movement
            .cautions
            .iter()
            .for_each(|c| by_class.entry(*c).or_default().push(ix));
    }
    let all = 0..site.curriculum.cautions.classes().len();
    let view = |i: usize| {
        let ix = ClassIx(i as u16);
        let movements = by_class.get(&ix).map_or(&[][..], Vec::as_slice);
        ClassView {
            class: view::caution(site, ix, &[]),
            movements: movements
                .iter()
                .take(MOST_LINKS)
                .map(|m| site.links.of(*m))
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
fn faults(site: &Material<'_>, context: &mut Context) {
    let mut by_fault: BTreeMap<FaultKey<'_>, Vec<MovementIx>> = BTreeMap::new();
    for (ix, movement) in site.curriculum.published() {
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
                .map(|m| site.links.of(*m))
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

fn equipment(site: &Material<'_>, context: &mut Context) {
    let mut by_word: BTreeMap<&str, Vec<MovementIx>> = BTreeMap::new();
    let mut without = Vec::new();
    for (ix, movement) in site.curriculum.published() {
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
    for (word, means) in &site.curriculum.school.equipment {
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
    let mut also: Vec<AlsoRow<'_>> = Vec::new();
    for (ix, movement) in site.curriculum.published() {
        also.extend(movement.also.iter().map(|a| AlsoRow {
            also: a,
            link: site.links.of(ix),
        }));
    }
    also.sort_by(|a, b| (a.also.to_lowercase(), a.link).cmp(&(b.also.to_lowercase(), b.link)));
    also.truncate(ROWS_A_PAGE * 2);
    context.insert("also", &also);
}

#[derive(Serialize)]
struct MovementRow<'a> {
    link: &'a str,
    /// The address of its small figure, or nothing.
    figure: String,
    standard: String,
    stage: String,
    pattern: &'a str,
    skills: Vec<&'a str>,
}

/// Every published movement by name; kept.
fn by_name<'a>(site: &Material<'a>) -> &'a [MovementIx] {
    site.kept.names_order.get_or_init(|| sorted_by_name(site))
}

fn sorted_by_name(site: &Material<'_>) -> Vec<MovementIx> {
    let mut all: Vec<MovementIx> = site.curriculum.published().map(|(ix, _)| ix).collect();
    all.sort_by_cached_key(|ix| (site.curriculum.movement(*ix).name.to_lowercase(), *ix));
    all
}

/// Every movement by name, a long table.
pub fn movements(site: &Material<'_>, index: usize) -> Made {
    use crate::curriculum::words::Word;
    let all = by_name(site);
    let rows: Vec<MovementRow<'_>> = all
        .chunks(ROWS_A_PAGE)
        .nth(index)
        .unwrap_or(&[])
        .iter()
        .map(|ix| {
            let m = site.curriculum.movement(*ix);
            let skills = site.chains.skills_of[ix.at()].iter().take(8);
            MovementRow {
                link: site.links.of(*ix),
                figure: super::view::figure_of(site, *ix),
                standard: site.words(&m.standard),
                stage: stage_words(site.say(), site.resolved.stages.of(*ix).unwrap_or(0)),
                pattern: site.say().say(&key("pattern", m.pattern.word())),
                skills: skills.map(|s| site.links.skill(*s)).collect(),
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
            site.say().say("page.movements.title"),
            site.say().say("page.movements.description"),
        ),
        context,
    )
}
