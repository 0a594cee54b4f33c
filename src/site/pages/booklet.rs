//! The booklet: the whole curriculum, or one skill, as one page for paper. Cautions come first; each movement stands once.
//!
//! Names are made as everywhere else; [`anchored`] then turns links to what stands in the booklet into anchors.

use super::{Made, head, record, sheet};
use crate::curriculum::caution::ClassIx;
use crate::curriculum::{MovementIx, Owner, SkillIx};
use crate::site::material::Material;
use crate::site::names::Mark;
use crate::site::names::piece::Kind;
use crate::site::names::stage_words;
use crate::site::pages::markdown::{self, Place};
use crate::site::pages::pieces::once;
use crate::site::pages::view::{self, CautionView, TestView};
use crate::site::theme::ThemeError;
use foldhash::fast::FixedState;
use memchr::{memchr, memmem};
use serde::Serialize;
use std::borrow::Cow;
use std::cmp::Reverse;
use std::collections::{BTreeSet, HashMap};
use tera::Context;

/// At most so many movements stand in a booklet; of more, the page says so and leads on.
const MOST: usize = 500;

/// Of more skills a booklet does not list the other booklets; that of the whole curriculum, to which it leads, lists them all.
const MOST_OTHERS: usize = 60;

/// The address of a booklet.
pub fn path(site: &Material<'_>, skill: Option<SkillIx>) -> String {
    match skill {
        Some(ix) => format!("booklet-{}.html", site.curriculum.skill(ix).id),
        None => "booklet.html".into(),
    }
}

#[derive(Serialize)]
struct SkillPart<'a> {
    id: &'a str,
    name: &'a str,
    summary: Option<&'a str>,
    goal: &'a str,
    /// The address of its goal's figure, or nothing.
    figure: String,
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
    standard: String,
    each_side: bool,
    essential: bool,
}

/// A movement in the contents, and where it stands in full.
#[derive(Serialize)]
struct Part<'a> {
    link: &'a str,
    /// As HTML.
    article: Cow<'a, str>,
}

#[derive(Serialize)]
struct MovementPart<'a> {
    id: &'a str,
    name: &'a str,
    also: &'a [String],
    summary: &'a str,
    stage: String,
    mark: Option<&'a Mark>,
    cautions: Vec<view::CautionName<'a>>,
    standard: String,
    each_side: bool,
    test: TestView<'a>,
    instead: Vec<view::InsteadView>,
    needs: &'a str,
    /// As HTML.
    way_out: Option<String>,
    dose: String,
    cues: &'a [String],
    faults: Vec<record::FaultView<'a>>,
    figure: &'a str,
    leverage: Vec<String>,
    pictures: Vec<record::PictureView<'a>>,
    note: String,
    sources: &'a [String],
}

/// The booklet of a skill, or of everything.
pub(super) fn booklet(site: &Material<'_>, of: Option<SkillIx>) -> Result<Made, ThemeError> {
    let mut context = Context::new();
    let (title, description) = match of {
        Some(ix) => {
            let skill = site.curriculum.skill(ix);
            context.insert("of_skill", skill.id.as_str());
            context.insert("goal_mark", &site.links.mark(skill.goal.movement));
            (
                site.named(Owner::Skill(ix)),
                site.say().fill(
                    "page.booklet_skill_description",
                    &[("skill", (&site.named(Owner::Skill(ix))).into())],
                ),
            )
        }
        None => (
            site.say().say("page.booklet_whole").to_string(),
            site.say().say("page.booklet_description").to_string(),
        ),
    };
    let movements = movements(site, of);
    let few = site.chains.of_skills.len() <= MOST_OTHERS;
    let others: Vec<view::Named> = site
        .curriculum
        .skills()
        .filter(|(ix, _)| Some(*ix) != of && (of.is_none() || few))
        .map(|(ix, _)| view::Named::skill_at(site, ix, &path(site, Some(ix))))
        .collect::<Result<_, _>>()?;
    let plain = of.map_or(&title, |ix| &site.curriculum.skill(ix).name);
    context.insert("title", plain);
    context.insert("others", &others);
    let count = match of {
        Some(ix) => site.chains.of_skills[ix.at()].movements.len(),
        None => site.curriculum.published().count(),
    };
    context.insert("count", &count);
    context.insert("listed", &movements.is_none());
    if let Some(movements) = &movements {
        fill(site, of, movements, &mut context)?;
    }
    let title = site
        .say()
        .fill("page.booklet_title", &[("title", (&title).into())]);
    Ok((
        "booklet.html".into(),
        head("booklet", &title, description),
        context,
    ))
}

/// What stands in a booklet, by stage, then name; nothing where it is too much for one.
fn movements(site: &Material<'_>, of: Option<SkillIx>) -> Option<Vec<MovementIx>> {
    let mut all: Vec<MovementIx> = match of {
        Some(ix) => {
            let chain = &site.chains.of_skills[ix.at()].movements;
            if chain.len() > MOST {
                return None;
            }
            chain.iter().map(|l| l.movement).collect()
        }
        None => site.curriculum.published().map(|(ix, _)| ix).collect(),
    };
    if all.len() > MOST {
        return None;
    }
    all.sort_by_key(|ix| {
        let name = site.curriculum.movement(*ix).name().to_lowercase();
        (site.resolved.stages.of(*ix), name, *ix)
    });
    Some(all)
}

fn skills(site: &Material<'_>, of: Option<SkillIx>) -> Vec<SkillIx> {
    match of {
        Some(ix) => vec![ix],
        None => site.curriculum.skills().map(|(ix, _)| ix).collect(),
    }
}

/// The caution classes that a booklet prints, the gravest first: for a skill those that its movements carry.
fn classes(site: &Material<'_>, of: Option<SkillIx>, movements: &[MovementIx]) -> Vec<ClassIx> {
    let count = site.curriculum.cautions().classes().len();
    let carried: BTreeSet<u16> = movements
        .iter()
        .flat_map(|ix| site.curriculum.movement(*ix).cautions())
        .map(|c| c.0)
        .collect();
    let mut all: Vec<ClassIx> = (0..count as u16)
        .filter(|i| of.is_none() || carried.contains(i))
        .map(ClassIx)
        .collect();
    all.sort_by_key(|ix| Reverse(site.curriculum.cautions().class(*ix).signal));
    all
}

fn fill(
    site: &Material<'_>,
    of: Option<SkillIx>,
    movements: &[MovementIx],
    context: &mut Context,
) -> Result<(), ThemeError> {
    let classes: Vec<CautionView<'_>> = classes(site, of, movements)
        .into_iter()
        .map(|c| view::caution(site, c, &[]))
        .collect();
    let skills: Vec<SkillPart<'_>> = skills(site, of)
        .into_iter()
        .map(|ix| skill_part(site, ix))
        .collect::<Result<_, _>>()?;
    let whole = site.curriculum.published().count() <= MOST;
    let parts: Vec<Part<'_>> = movements
        .iter()
        .map(|ix| {
            Ok(Part {
                link: site.links.of(*ix),
                article: article(site, *ix, whole)?,
            })
        })
        .collect::<Result<_, ThemeError>>()?;
    let mut tested: Vec<MovementIx> = movements.to_vec();
    sheet::sort(site, &mut tested);
    context.insert("classes", &classes);
    context.insert("skills", &skills);
    context.insert("movements", &parts);
    context.insert("paper", &sheet::on_paper(site, &tested, of)?);
    Ok(())
}

fn skill_part<'a>(site: &'a Material<'_>, ix: SkillIx) -> Result<SkillPart<'a>, ThemeError> {
    let skill = site.curriculum.skill(ix);
    let chain = &site.chains.of_skills[ix.at()];
    let mut stages: Vec<(u32, StagePart<'a>)> = Vec::new();
    for link in &chain.movements {
        let m = site.curriculum.movement(link.movement);
        let row = RowPart {
            id: m.id().as_str(),
            link: site.links.of(link.movement),
            standard: site.words(&m.standard()),
            each_side: m.each_side(),
            essential: link.essential,
        };
        match stages.last_mut() {
            Some((stage, part)) if *stage == link.stage => part.rows.push(row),
            _ => stages.push((
                link.stage,
                StagePart {
                    says: stage_words(site.say(), link.stage),
                    rows: vec![row],
                },
            )),
        }
    }
    let owner = format!("skill-{}", skill.id);
    let place = Place {
        shift: 2,
        owner: Some(&owner),
    };
    let note = skill
        .note
        .map(|n| markdown::render(site, n, place))
        .transpose()?
        .unwrap_or_default();
    Ok(SkillPart {
        id: skill.id.as_str(),
        name: &skill.name,
        summary: skill.summary.as_deref(),
        goal: site.links.of(skill.goal.movement),
        figure: view::figure_of(site, skill.goal.movement),
        target: site.words(&skill.goal.target),
        mark: site.links.mark(skill.goal.movement),
        note,
        stages: stages.into_iter().map(|s| s.1).collect(),
    })
}

/// A movement in full. It says the same in every booklet: where it stands in several it is made once.
/// `whole`: the booklet of everything is one of them.
fn article<'a>(
    site: &'a Material<'_>,
    ix: MovementIx,
    whole: bool,
) -> Result<Cow<'a, str>, ThemeError> {
    let make = || site.part("ui.move", "m", &movement_part(site, ix)?);
    let of_skills = site.chains.skills_of[ix.at()]
        .iter()
        .filter(|skill| site.chains.of_skills[skill.at()].movements.len() <= MOST);
    let booklets = of_skills.count() + usize::from(whole);
    match site.texts.article(ix.at()) {
        Some(place) if booklets > 1 => {
            let made = once(place, || Ok(site.made(Kind::Article, ix.at(), make()?)))?;
            Ok(made.shown().into())
        }
        _ => make().map(Cow::Owned),
    }
}

fn movement_part<'a>(
    site: &'a Material<'_>,
    ix: MovementIx,
) -> Result<MovementPart<'a>, ThemeError> {
    let m = site.curriculum.movement(ix);
    let solved = site.resolved.solved(ix);
    let owner = format!("movement-{}", m.id());
    let place = Place {
        shift: 3,
        owner: Some(&owner),
    };
    let note = markdown::of_movement(site, ix, place)?;
    let names = m.cautions().iter().map(|c| view::caution_name(site, *c));
    Ok(MovementPart {
        id: m.id().as_str(),
        name: m.name(),
        also: m.also(),
        summary: m.summary(),
        stage: stage_words(site.say(), site.resolved.stages.of(ix).unwrap_or(0)),
        mark: site.links.mark(ix),
        cautions: names.collect(),
        standard: site.words(&m.standard()),
        each_side: m.each_side(),
        test: view::test(site.say(), m),
        instead: view::instead(site, m),
        needs: site.needs(ix)?,
        way_out: markdown::way_out(site, m)?,
        dose: record::dose(site, m),
        cues: m.cues(),
        faults: record::faults(m),
        figure: site.figure(ix),
        leverage: solved.map_or_else(Vec::new, |s| {
            record::leverage_lines(site.say(), s, m.load())
        }),
        pictures: record::pictures(site, m),
        note,
        sources: m.sources(),
    })
}

/// What stands before an address.
const HREF: &str = " href=\"";

/// Addresses, each with the anchor that takes its place.
pub type Anchors = HashMap<String, String, FixedState>;

/// What stands in this booklet, by its address elsewhere; none where too much would.
pub fn anchors(site: &Material<'_>, of: Option<SkillIx>) -> Option<Anchors> {
    let movements = movements(site, of)?;
    let curriculum = site.curriculum;
    let mut anchors = Anchors::default();
    for ix in &movements {
        let id = curriculum.movement(*ix).id();
        anchors.insert(format!("{id}.html"), format!("#movement-{id}"));
    }
    for ix in skills(site, of) {
        let id = &curriculum.skill(ix).id;
        anchors.insert(format!("{id}.html"), format!("#skill-{id}"));
    }
    for ix in classes(site, of, &movements) {
        let id = &curriculum.cautions().class(ix).id;
        anchors.insert(format!("cautions.html#{id}"), format!("#caution-{id}"));
    }
    Some(anchors)
}

/// What stands between an address and what its link says when it is pointed at.
const TITLE: &str = "\" title=\"";

/// The page with every link to what stands in this booklet turned into an anchor; the rest still leads to its page.
pub fn anchored(anchors: &Anchors, html: &str) -> String {
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
            // What a mark says when it is pointed at it says on paper too.
            let title = html[end..].strip_prefix(TITLE);
            if let Some(length) = title.and_then(|rest| memchr(b'"', rest.as_bytes())) {
                out.push('"');
                copied = end + TITLE.len() + length + 1;
            }
        }
    }
    out.push_str(&html[copied..]);
    out
}
