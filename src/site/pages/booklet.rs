//! The booklet: the whole curriculum, or one skill, as one page for paper. Cautions come first; each movement stands once.
//!
//! Names are made as everywhere else; [`anchored`] then turns links to what stands in the booklet into anchors.

use super::{Made, head, record, sheet};
use crate::curriculum::caution::ClassIx;
use crate::curriculum::{MovementIx, Owner, SkillIx};
use crate::site::Plan;
use crate::site::draw::figure;
use crate::site::pages::markdown;
use crate::site::pages::view::{self, CautionView, TestView};
use crate::site::theme::ThemeError;
use crate::site::theme::link::Mark;
use foldhash::fast::FixedState;
use memchr::{memchr, memmem};
use serde::Serialize;
use std::borrow::Cow;
use std::collections::{BTreeSet, HashMap};
use tera::Context;

/// At most so many movements stand in a booklet; of more, the page says so and leads on.
const MOST: usize = 500;

/// Of more skills a booklet does not list the other booklets; that of the whole curriculum, to which it leads, lists them all.
const MOST_OTHERS: usize = 60;

/// The address of a booklet.
pub fn path(plan: &Plan<'_>, skill: Option<SkillIx>) -> String {
    match skill {
        Some(ix) => format!("booklet-{}.html", plan.curriculum.skill(ix).id),
        None => "booklet.html".into(),
    }
}

#[derive(Serialize)]
struct SkillPart<'a> {
    id: &'a str,
    name: &'a str,
    summary: Option<&'a str>,
    goal: &'a str,
    target: String,
    mark: Option<&'a Mark>,
    note: String,
    stages: Vec<StagePart<'a>>,
}

#[derive(Serialize)]
struct StagePart<'a> {
    says: String,
    rows: Vec<RowPart<'a>>,
}

#[derive(Serialize)]
struct RowPart<'a> {
    id: &'a str,
    link: &'a str,
    needs: &'a str,
    standard: String,
    each_side: bool,
    essential: bool,
}

#[derive(Serialize)]
struct MovementPart<'a> {
    id: &'a str,
    link: &'a str,
    name: &'a str,
    also: &'a [String],
    summary: &'a str,
    stage: String,
    mark: Option<&'a Mark>,
    cautions: Vec<view::CautionName<'a>>,
    standard: String,
    each_side: bool,
    test: TestView<'a>,
    needs: &'a str,
    opens: Cow<'a, str>,
    /// As HTML.
    way_out: Option<String>,
    skills: Vec<&'a str>,
    dose: String,
    cues: &'a [String],
    faults: Vec<record::FaultView<'a>>,
    figure: String,
    leverage: Vec<String>,
    pictures: Vec<record::PictureView<'a>>,
    note: String,
    sources: &'a [String],
}

/// The booklet of a skill, or of everything.
pub(super) fn booklet(plan: &Plan<'_>, of: Option<SkillIx>) -> Result<Made, ThemeError> {
    let mut context = Context::new();
    let (title, description) = match of {
        Some(ix) => {
            let skill = plan.curriculum.skill(ix);
            context.insert("of_skill", skill.id.as_str());
            context.insert("goal_mark", &view::mark_of(plan, skill.goal.movement));
            (
                plan.named(Owner::Skill(ix)),
                plan.say().fill(
                    "page.booklet_skill_description",
                    &[("skill", (&plan.named(Owner::Skill(ix))).into())],
                ),
            )
        }
        None => (
            plan.say().say("page.booklet_whole").to_string(),
            plan.say().say("page.booklet_description").to_string(),
        ),
    };
    let movements = movements(plan, of);
    let few = plan.chains.len() <= MOST_OTHERS;
    let others: Vec<view::Named> = plan
        .curriculum
        .skills()
        .filter(|(ix, _)| Some(*ix) != of && (of.is_none() || few))
        .map(|(ix, _)| view::Named::skill_at(plan, ix, &path(plan, Some(ix))))
        .collect::<Result<_, _>>()?;
    let plain = of.map_or(&title, |ix| &plan.curriculum.skill(ix).name);
    context.insert("title", plain);
    context.insert("others", &others);
    let count = match of {
        Some(ix) => plan.chains[ix.at()].movements.len(),
        None => plan.curriculum.published().count(),
    };
    context.insert("count", &count);
    context.insert("listed", &movements.is_none());
    if let Some(movements) = &movements {
        fill(plan, of, movements, &mut context)?;
    }
    let title = plan
        .say()
        .fill("page.booklet_title", &[("title", (&title).into())]);
    Ok((
        "booklet.html".into(),
        head("booklet", &title, description),
        context,
    ))
}

/// What stands in a booklet, by stage, then name; nothing where it is too much for one.
fn movements(plan: &Plan<'_>, of: Option<SkillIx>) -> Option<Vec<MovementIx>> {
    let mut all: Vec<MovementIx> = match of {
        Some(ix) => {
            let chain = &plan.chains[ix.at()].movements;
            if chain.len() > MOST {
                return None;
            }
            chain.iter().map(|l| l.movement).collect()
        }
        None => plan.curriculum.published().map(|(ix, _)| ix).collect(),
    };
    if all.len() > MOST {
        return None;
    }
    all.sort_by_key(|ix| {
        let name = plan.curriculum.movement(*ix).name.to_lowercase();
        (plan.stages.of(*ix), name, *ix)
    });
    Some(all)
}

fn skills(plan: &Plan<'_>, of: Option<SkillIx>) -> Vec<SkillIx> {
    match of {
        Some(ix) => vec![ix],
        None => plan.curriculum.skills().map(|(ix, _)| ix).collect(),
    }
}

/// The caution classes that a booklet prints: for a skill those that its movements carry.
fn classes(plan: &Plan<'_>, of: Option<SkillIx>, movements: &[MovementIx]) -> Vec<ClassIx> {
    let count = plan.curriculum.cautions.classes().len();
    let carried: BTreeSet<u16> = movements
        .iter()
        .flat_map(|ix| &plan.curriculum.movement(*ix).cautions)
        .map(|c| c.0)
        .collect();
    (0..count as u16)
        .filter(|i| of.is_none() || carried.contains(i))
        .map(ClassIx)
        .collect()
}

fn fill(
    plan: &Plan<'_>,
    of: Option<SkillIx>,
    movements: &[MovementIx],
    context: &mut Context,
) -> Result<(), ThemeError> {
    let classes: Vec<CautionView<'_>> = classes(plan, of, movements)
        .into_iter()
        .map(|c| view::caution(plan, c, &[]))
        .collect();
    let skills: Vec<SkillPart<'_>> = skills(plan, of)
        .into_iter()
        .map(|ix| skill_part(plan, ix))
        .collect::<Result<_, _>>()?;
    let parts: Vec<MovementPart<'_>> = movements
        .iter()
        .map(|ix| movement_part(plan, *ix, of))
        .collect::<Result<_, _>>()?;
    let mut tested: Vec<MovementIx> = movements.to_vec();
    sheet::sort(plan, &mut tested);
    context.insert("classes", &classes);
    context.insert("skills", &skills);
    context.insert("movements", &parts);
    context.insert("paper", &sheet::on_paper(plan, &tested, of)?);
    Ok(())
}

fn skill_part<'a>(plan: &'a Plan<'_>, ix: SkillIx) -> Result<SkillPart<'a>, ThemeError> {
    let skill = plan.curriculum.skill(ix);
    let chain = &plan.chains[ix.at()];
    let mut stages: Vec<(u32, StagePart<'a>)> = Vec::new();
    for link in &chain.movements {
        let m = plan.curriculum.movement(link.movement);
        let row = RowPart {
            id: m.id.as_str(),
            link: plan.links.of(link.movement),
            needs: plan.needs(link.movement)?,
            standard: plan.words(&m.standard),
            each_side: m.each_side,
            essential: link.essential,
        };
        match stages.last_mut() {
            Some((stage, part)) if *stage == link.stage => part.rows.push(row),
            _ => stages.push((
                link.stage,
                StagePart {
                    says: view::stage_words(plan.say(), link.stage),
                    rows: vec![row],
                },
            )),
        }
    }
    let note = skill
        .note
        .map(|n| markdown::among_others(plan, n, 2, &format!("skill-{}", skill.id)))
        .transpose()?
        .unwrap_or_default();
    Ok(SkillPart {
        id: skill.id.as_str(),
        name: &skill.name,
        summary: skill.summary.as_deref(),
        goal: plan.links.of(skill.goal.movement),
        target: plan.words(&skill.goal.target),
        mark: view::mark_of(plan, skill.goal.movement),
        note,
        stages: stages.into_iter().map(|s| s.1).collect(),
    })
}

fn movement_part<'a>(
    plan: &'a Plan<'_>,
    ix: MovementIx,
    within: Option<SkillIx>,
) -> Result<MovementPart<'a>, ThemeError> {
    let m = plan.curriculum.movement(ix);
    let solved = plan.solved[ix.at()].as_deref();
    let note = m
        .note
        .map(|n| markdown::among_others(plan, n, 3, &format!("movement-{}", m.id)))
        .transpose()?
        .unwrap_or_default();
    let names = m.cautions.iter().map(|c| view::caution_name(plan, *c));
    Ok(MovementPart {
        id: m.id.as_str(),
        link: plan.links.of(ix),
        name: &m.name,
        also: &m.also,
        summary: &m.summary,
        stage: view::stage_words(plan.say(), plan.stages.of(ix).unwrap_or(0)),
        mark: view::mark_of(plan, ix),
        cautions: names.collect(),
        standard: plan.words(&m.standard),
        each_side: m.each_side,
        test: view::test(m),
        needs: plan.needs(ix)?,
        opens: plan.opens(ix, within)?,
        way_out: markdown::way_out(plan, m)?,
        skills: record::skills(plan, &plan.skills_of[ix.at()]),
        dose: record::dose(plan, m),
        cues: &m.cues,
        faults: record::faults(m),
        figure: solved.map_or_else(String::new, |s| {
            figure::figure(s, plan.say(), plan.curriculum.school.units).svg
        }),
        leverage: solved.map_or_else(Vec::new, |s| record::leverage_lines(plan.say(), s, m.load)),
        pictures: record::pictures(plan, m),
        note,
        sources: &m.sources,
    })
}

/// What stands before an address.
const HREF: &str = " href=\"";

/// The page with every link to what stands in this booklet turned into an anchor; the rest still leads to its page.
pub fn anchored(plan: &Plan<'_>, of: Option<SkillIx>, html: &str) -> String {
    let Some(movements) = movements(plan, of) else {
        return html.to_string();
    };
    let curriculum = plan.curriculum;
    let mut anchors: HashMap<String, String, FixedState> = HashMap::default();
    for ix in &movements {
        let id = &curriculum.movement(*ix).id;
        anchors.insert(format!("{id}.html"), format!("#movement-{id}"));
    }
    for ix in skills(plan, of) {
        let id = &curriculum.skill(ix).id;
        anchors.insert(format!("{id}.html"), format!("#skill-{id}"));
    }
    for ix in classes(plan, of, &movements) {
        let id = &curriculum.cautions.class(ix).id;
        anchors.insert(format!("cautions.html#{id}"), format!("#caution-{id}"));
    }
    // Anchors are longer than addresses.
    let mut out = String::with_capacity(html.len() + html.len() / 8);
    let mut copied = 0;
    for at in memmem::find_iter(html.as_bytes(), HREF) {
        let start = at + HREF.len();
        let end = memchr(b'"', &html.as_bytes()[start..]).map_or(html.len(), |n| start + n);
        if let Some(anchor) = anchors.get(&html[start..end]) {
            out.push_str(&html[copied..start]);
            out.push_str(anchor);
            copied = end;
        }
    }
    out.push_str(&html[copied..]);
    out
}
