//! The pages of movements and skills.

use super::{Made, head};
use crate::chain::{Neighbour, neighbours_of};
use crate::curriculum::family::Way;
use crate::curriculum::words::Load;
use crate::curriculum::{FamilyIx, Movement, MovementIx, Owner, SkillIx};
use crate::leverage::Solved;
use crate::site::draw::map;
use crate::site::feeds::definitions;
use crate::site::material::Material;
use crate::site::media::picture;
use crate::site::names::{change_words, stage_words};
use crate::site::pages::markdown::{self, Place};
use crate::site::pages::moving;
use crate::site::pages::pieces;
use crate::site::pages::view::{self, Row};
use crate::site::theme::ThemeError;
use crate::training::paced;
use crate::words::escape::escape;
use crate::words::{Value, Words, key};
use serde::Serialize;
use tera::Context;

#[derive(Serialize)]
struct MovementView<'a> {
    id: &'a str,
    name: &'a str,
    also: &'a [String],
    summary: &'a str,
    stage: u32,
    stage_words: String,
    standard: String,
    dose: String,
    dose_is_schools: bool,
    /// As HTML.
    way_out: Option<String>,
    each_side: bool,
    cues: &'a [String],
    sources: &'a [String],
    guarded: bool,
    faults: Vec<FaultView<'a>>,
    pictures: Vec<PictureView<'a>>,
    clip: Option<ClipView<'a>>,
}

#[derive(Serialize)]
pub(super) struct FaultView<'a> {
    see: &'a str,
    because: Option<&'a str>,
    attempt: Option<&'a str>,
}

#[derive(Serialize)]
pub(super) struct PictureView<'a> {
    alt: &'a str,
    credit: Option<&'a str>,
    /// Its address, its sizes and its room on the page, as attributes.
    source: String,
}

#[derive(Serialize)]
struct ClipView<'a> {
    file: String,
    poster: Option<String>,
    alt: &'a str,
    /// Width and height as attributes.
    room: String,
}

#[derive(Serialize)]
struct NeighbourView {
    axis: String,
    link: String,
    figure: String,
}

pub fn movement(site: &Material<'_>, ix: MovementIx) -> Result<Made, ThemeError> {
    let m = site.curriculum.movement(ix);
    let mut context = Context::new();
    context.insert("m", &movement_view(site, ix)?);
    context.insert("facts", &view::facts(site, m));
    context.insert("mark", &site.links.mark(ix));
    context.insert(
        "cautions",
        &m.cautions()
            .iter()
            .map(|c| site.caution(*c, m))
            .collect::<Result<Vec<&str>, ThemeError>>()?,
    );
    context.insert("figure_small", &view::figure_of(site, ix));
    let film = moving::moves(site, ix).then(|| moving::film_path(site, ix));
    context.insert("film", &film.unwrap_or_default());
    context.insert("stands_on", &pieces::stands_on(site, ix));
    context.insert("opens", &pieces::opens_above(site, ix));
    context.insert("test", &view::test(site.say(), m));
    context.insert("instead", &view::instead(site, m));
    context.insert("rest", &rest(site.say(), m));
    context.insert("easier", &neighbours(site, ix, Way::Easier));
    context.insert("harder", &neighbours(site, ix, Way::Harder));
    context.insert(
        "family",
        &m.place().map(|p| family_place(site, p.family, ix)),
    );
    context.insert("skills", &skills(site, &site.chains.skills_of[ix.at()]));
    context.insert("warm_up", &warm_up(site, ix));
    context.insert("note", &markdown::of_movement(site, ix, Place::own(1))?);
    let solved = site.resolved.solved(ix);
    context.insert("figure", site.figure(ix));
    context.insert(
        "leverage",
        &solved.map_or_else(Vec::new, |s| leverage_lines(site.say(), s, m.load())),
    );
    context.insert("definition", &definitions::of(site, ix));
    context.insert("change", &last_change(site, m));
    Ok((
        "movement.html".into(),
        head("movement", &site.named(Owner::Movement(ix)), m.summary()),
        context,
    ))
}

fn movement_view<'a>(site: &Material<'a>, ix: MovementIx) -> Result<MovementView<'a>, ThemeError> {
    let m = site.curriculum.movement(ix);
    let stage = site.resolved.stages.of(ix).unwrap_or(0);
    Ok(MovementView {
        id: m.id().as_str(),
        name: m.name(),
        also: m.also(),
        summary: m.summary(),
        stage,
        stage_words: stage_words(site.say(), stage),
        standard: site.words(&m.standard()),
        dose: dose(site, m),
        dose_is_schools: m.dose().is_none(),
        way_out: markdown::way_out(site, m)?,
        each_side: m.each_side(),
        cues: m.cues(),
        sources: m.sources(),
        guarded: m.guarded(),
        faults: faults(m),
        pictures: pictures(site, m),
        clip: m.clip().map(|c| ClipView {
            file: picture::address(&c.file),
            poster: c.poster.as_deref().map(picture::address),
            alt: &c.alt,
            room: picture::clip_room(site, &c.file, c.poster.as_deref()),
        }),
    })
}

/// The day of the last change that the ledger tells, and what it was.
fn last_change(site: &Material<'_>, m: &Movement) -> Option<(String, String)> {
    let (entry, changes) = site.curriculum.ledger().last_change(m.id().as_str())?;
    let said = changes.iter().map(|c| change_words(site.curriculum, c));
    let said = said.collect::<Vec<_>>();
    Some((entry.on.clone(), site.say().joined(&said, "list.semicolon")))
}

pub(super) fn faults(m: &Movement) -> Vec<FaultView<'_>> {
    m.faults()
        .iter()
        .map(|f| FaultView {
            see: &f.see,
            because: f.because.as_deref(),
            attempt: f.attempt.as_deref(),
        })
        .collect()
}

pub(super) fn pictures<'a>(site: &Material<'_>, m: &'a Movement) -> Vec<PictureView<'a>> {
    m.pictures()
        .iter()
        .map(|p| PictureView {
            alt: &p.alt,
            credit: p.credit.as_deref(),
            source: picture::attributes(site, &p.file),
        })
        .collect()
}

/// The movement's working sets, or the school's, as HTML; of each side where it is done so.
pub(super) fn dose(site: &Material<'_>, m: &Movement) -> String {
    let words = match m.dose() {
        Some(dose) => site.words(&dose),
        None => school_dose(site, m.standard().measure()),
    };
    let paced = paced(site.say(), m).into_iter().map(|text| escape(&text));
    let words = match words.is_empty() {
        true => words,
        false => {
            let all: Vec<String> = std::iter::once(words).chain(paced).collect();
            site.say().list_html(&all)
        }
    };
    let says_so = m.dose().is_some_and(|dose| dose.each_side());
    if m.each_side() && !words.is_empty() && !says_so {
        return site
            .say()
            .fill_html("target.each_side", &[("amount", (&words).into())]);
    }
    words
}

/// How long to rest between sets, where the movement says it.
fn rest(words: &Words, m: &Movement) -> Option<String> {
    let rest = m.rest()?;
    let (key, n) = match rest.minutes() {
        Some(minutes) => ("training.rest_min", minutes),
        None => ("training.rest_s", rest.count()),
    };
    Some(words.fill(key, &[("n", n.into())]))
}

/// The school's dose in the movement's measure.
fn school_dose(site: &Material<'_>, measure: crate::curriculum::target::Measure) -> String {
    use crate::curriculum::target::Measure;
    let dose = &site.curriculum.school().dose;
    match measure {
        Measure::Reps => {
            let reps = site.say().whole(dose.reps.into());
            let values = [("n", dose.sets.into()), ("amount", (&reps).into())];
            escape(&site.say().fill("target.sets", &values))
        }
        Measure::Time => site.words(&dose.hold),
        _ => String::new(),
    }
}

fn neighbours(site: &Material<'_>, ix: MovementIx, way: Way) -> Vec<NeighbourView> {
    let Some(place) = site.curriculum.movement(ix).place() else {
        return Vec::new();
    };
    let axes = &site.curriculum.family(place.family).axes;
    let view = |n: Neighbour| NeighbourView {
        axis: axes[n.axis].name.replace('-', " "),
        link: site.links.of(n.movement).to_string(),
        figure: view::figure_of(site, n.movement),
    };
    neighbours_of(site.curriculum, ix, way)
        .into_iter()
        .map(view)
        .collect()
}

#[derive(Serialize)]
struct FamilyPlace<'a> {
    link: &'a str,
    /// "support: free, phase: full".
    place: String,
}

fn family_place<'a>(site: &'a Material<'_>, family: FamilyIx, ix: MovementIx) -> FamilyPlace<'a> {
    let f = site.curriculum.family(family);
    let rungs = site
        .curriculum
        .movement(ix)
        .place()
        .map_or(&[][..], |p| p.rungs.as_slice());
    let values: Vec<String> = f
        .axes
        .iter()
        .zip(rungs)
        .filter_map(|(axis, rung)| {
            rung.map(|r| format!("{}: {}", axis.name, axis.value(r)).replace('-', " "))
        })
        .collect();
    FamilyPlace {
        link: site.links.family(family),
        place: site.say().list(&values),
    }
}

fn skills<'a>(site: &'a Material<'_>, skills: &[SkillIx]) -> Vec<&'a str> {
    skills.iter().map(|ix| site.links.skill(*ix)).collect()
}

/// The school's warm-up for a movement: what always comes, then by its caution classes.
fn warm_up(site: &Material<'_>, ix: MovementIx) -> Vec<String> {
    let school = site.curriculum.school();
    let classes = site
        .curriculum
        .movement(ix)
        .cautions()
        .iter()
        .map(|c| site.curriculum.cautions().class(*c).id.as_str());
    let mut out: Vec<String> = Vec::new();
    for key in std::iter::once("always").chain(classes) {
        for line in school.warm_up.get(key).into_iter().flatten() {
            if !out.contains(&line.text) {
                out.push(line.text.clone());
            }
        }
    }
    out
}

/// What the posture comes to, in words.
pub(super) fn leverage_lines(words: &Words, solved: &Solved, load: Load) -> Vec<String> {
    let mut out = Vec::new();
    let hands: Vec<i64> = solved
        .poses()
        .filter_map(|p| p.hands_carry)
        .map(|s| (s * 100.0).round() as i64)
        .collect();
    match hands.as_slice() {
        [start, .., end] if start != end => {
            let values = [("start", Value::Whole(*start)), ("end", Value::Whole(*end))];
            out.push(words.fill("leverage.hands_both", &values));
        }
        [one, ..] => out.push(words.fill("leverage.hands", &[("share", Value::Whole(*one))])),
        [] => {}
    }
    match load {
        _ if hands.is_empty() => {}
        Load::Assisted => out.push(words.say("leverage.less_help").to_string()),
        Load::Added => out.push(words.say("leverage.and_added").to_string()),
        Load::None | Load::Body => {}
    }
    if let Some(turning) = solved.turning() {
        let whole = |n: f64| Value::Whole(n.round() as i64);
        // What is nothing is not said: the wrists on the floor, the knees of who hangs.
        let joints = [
            ("shoulder", turning.shoulder),
            ("elbow", turning.elbow),
            ("wrist", turning.wrist),
            ("hip", turning.hip),
            ("knee", turning.knee),
        ];
        let said: Vec<String> = joints
            .iter()
            .filter(|(_, load)| load.round() > 0.0)
            .map(|(joint, load)| {
                let load = [("load", whole(*load))];
                words.fill(&key("leverage", &format!("turning_{joint}")), &load)
            })
            .collect();
        if !said.is_empty() {
            let said = words.list(&said);
            out.push(words.fill("leverage.turning", &[("loads", (&said).into())]));
        }
    }
    out
}

#[derive(Serialize)]
struct StageView<'a> {
    stage: u32,
    says: String,
    rows: Vec<Row<'a>>,
}

/// At most so many rows stand in a skill's table; a larger chain is shown in part, and says so.
const MOST_ROWS: usize = 1000;

pub fn skill(site: &Material<'_>, ix: SkillIx) -> Result<Made, ThemeError> {
    let s = site.curriculum.skill(ix);
    let chain = &site.chains.of_skills[ix.at()];
    let mut stages: Vec<StageView<'_>> = Vec::new();
    for link in chain.movements.iter().take(MOST_ROWS) {
        let m = site.curriculum.movement(link.movement);
        let row = Row {
            id: m.id().as_str(),
            link: site.links.of(link.movement),
            figure: view::figure_of(site, link.movement),
            needs: site.needs(link.movement)?,
            standard: site.words(&m.standard()),
            opens: site.opens(link.movement, Some(ix))?,
            mark: site.links.mark(link.movement),
            bar: view::bar(site, link.movement),
            essential: link.essential,
        };
        match stages.last_mut() {
            Some(stage) if stage.stage == link.stage => stage.rows.push(row),
            _ => stages.push(StageView {
                stage: link.stage,
                says: stage_words(site.say(), link.stage),
                rows: vec![row],
            }),
        }
    }
    let mut context = Context::new();
    context.insert("skill", s.id.as_str());
    context.insert("name", &s.name);
    context.insert("also", &s.also);
    context.insert("summary", &s.summary);
    context.insert("goal", site.links.of(s.goal.movement));
    context.insert("goal_target", &site.words(&s.goal.target));
    context.insert("goal_figure", &view::figure_of(site, s.goal.movement));
    context.insert("goal_mark", &site.links.mark(s.goal.movement));
    context.insert("stages", &stages);
    context.insert("map", &map::of_skill(site, ix));
    context.insert("count", &chain.movements.len());
    context.insert(
        "essential",
        &chain.movements.iter().filter(|l| l.essential).count(),
    );
    context.insert("left_out", &chain.movements.len().saturating_sub(MOST_ROWS));
    context.insert(
        "note",
        &s.note
            .map(|n| markdown::render(site, n, Place::own(0)))
            .transpose()?
            .unwrap_or_default(),
    );
    let named = site.named(Owner::Skill(ix));
    let summary = s.summary.clone().unwrap_or_else(|| {
        site.say()
            .fill("page.skill_description", &[("skill", (&named).into())])
    });
    Ok(("skill.html".into(), head("skill", &named, summary), context))
}
