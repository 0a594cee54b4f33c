//! What templates see: flat records of words and rendered names. Every name of a movement is HTML made by the theme's own part.

use super::Plan;
use super::link::Mark;
use crate::chain::Step;
use crate::curriculum::caution::ClassIx;
use crate::curriculum::ledger::{Change, Entry};
use crate::curriculum::note::SessionLine;
use crate::curriculum::target::{Measure, ONE, decimal};
use crate::curriculum::words::{Load, Pattern, Phase, Word};
use crate::curriculum::{Leaf, Movement, MovementIx, Need};
use serde::Serialize;

/// A caution class in full.
#[derive(Serialize)]
pub struct CautionView<'a> {
    pub id: &'a str,
    pub name: &'a str,
    pub signal: &'static str,
    pub happens: &'a str,
    pub ask_first: &'a str,
    pub set_up: &'a str,
    pub bail_out: &'a str,
    pub stop: &'a str,
}

pub fn caution<'a>(plan: &Plan<'a>, ix: ClassIx) -> CautionView<'a> {
    let class = plan.curriculum.cautions.class(ix);
    CautionView {
        id: &class.id,
        name: &class.name,
        signal: class.signal.word(),
        happens: &class.happens,
        ask_first: &class.ask_first,
        set_up: &class.set_up,
        bail_out: &class.bail_out,
        stop: &class.stop,
    }
}

/// A line of a needs tree: templates nest lists by `open` and `close`.
#[derive(Serialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
pub enum NeedLine {
    Open { says: String },
    Close,
    Leaf { link: String, target: String },
}

/// The needs of a movement, flattened.
pub fn needs(plan: &Plan<'_>, movement: &Movement) -> Vec<NeedLine> {
    let mut out = Vec::new();
    if let Need::All(parts) = &movement.needs {
        parts.iter().for_each(|p| need_lines(plan, p, &mut out));
    }
    out
}

fn need_lines(plan: &Plan<'_>, need: &Need<Leaf>, out: &mut Vec<NeedLine>) {
    let (says, parts) = match need {
        Need::Leaf(leaf) => {
            out.push(NeedLine::Leaf {
                link: plan.links.of(leaf.movement).to_string(),
                target: plan.words(&leaf.target),
            });
            return;
        }
        Need::All(parts) => ("all of these".to_string(), parts),
        Need::Any(parts) => ("any one of these".to_string(), parts),
        Need::AtLeast(k, parts) => (format!("at least {k} of these {}", parts.len()), parts),
    };
    out.push(NeedLine::Open { says });
    parts.iter().for_each(|p| need_lines(plan, p, out));
    out.push(NeedLine::Close);
}

/// One rung of a threshold ladder: "your number opens ...".
#[derive(Serialize)]
pub struct StepView {
    pub target: String,
    pub opens: Vec<String>,
    pub skills: Vec<Named>,
    /// How many more movements it opens than are listed.
    pub more: usize,
}

/// A record that is not a movement.
#[derive(Serialize)]
pub struct Named {
    pub href: String,
    pub name: String,
}

const MOST_OPENS: usize = 60;

/// A ladder in words; within a chain when `within` is given.
pub fn steps(
    plan: &Plan<'_>,
    steps: &[Step],
    within: Option<&dyn Fn(MovementIx) -> bool>,
) -> Vec<StepView> {
    let view = |step: &Step| {
        let opens: Vec<MovementIx> = step
            .opens
            .iter()
            .copied()
            .filter(|ix| within.is_none_or(|w| w(*ix)))
            .collect();
        let skills = step.skills.iter().map(|ix| plan.curriculum.skill(*ix));
        StepView {
            target: plan.words(&step.target),
            more: opens.len().saturating_sub(MOST_OPENS),
            opens: opens
                .into_iter()
                .take(MOST_OPENS)
                .map(|ix| plan.links.of(ix).to_string())
                .collect(),
            skills: skills
                .map(|s| Named {
                    href: format!("{}.html", s.id),
                    name: s.name.clone(),
                })
                .collect(),
        }
    };
    steps
        .iter()
        .map(view)
        .filter(|s| !s.opens.is_empty() || !s.skills.is_empty())
        .collect()
}

/// A row of a skill's readiness table.
#[derive(Serialize)]
pub struct Row {
    pub id: String,
    pub link: String,
    pub needs: Vec<NeedLine>,
    pub standard: String,
    pub opens: Vec<StepView>,
    pub mark: Option<Mark>,
    pub bar: Option<Bar>,
    pub essential: bool,
}

/// A test on the sheet.
#[derive(Serialize)]
pub struct SheetRow {
    pub id: String,
    pub link: String,
    pub standard: String,
    pub each_side: bool,
    pub how: String,
    pub counts: Vec<String>,
    pub stop: Vec<String>,
    pub rest: String,
    pub opens: Vec<StepView>,
    pub needs: Vec<NeedLine>,
    /// Tested only when its needs are met: inverted, loaded or lowering.
    pub only_after: bool,
}

pub fn sheet_row(
    plan: &Plan<'_>,
    ix: MovementIx,
    within: Option<&dyn Fn(MovementIx) -> bool>,
) -> SheetRow {
    let movement = plan.curriculum.movement(ix);
    let test = movement.test.clone().unwrap_or_default();
    SheetRow {
        id: movement.id.to_string(),
        link: plan.links.of(ix).to_string(),
        standard: plan.words(&movement.standard),
        each_side: movement.each_side,
        how: test.how.unwrap_or_default(),
        counts: test.counts,
        stop: test.stop,
        rest: test.rest.unwrap_or_default(),
        opens: plan
            .ladders
            .get(&ix)
            .map_or_else(Vec::new, |s| steps(plan, s, within)),
        needs: needs(plan, movement),
        only_after: movement.guarded() || movement.phase == Some(Phase::Lowering),
    }
}

/// A line of a session.
#[derive(Serialize)]
pub struct SessionRow {
    pub link: String,
    pub target: String,
    pub rest: String,
    pub volume: String,
}

pub fn session_row(plan: &Plan<'_>, line: &SessionLine) -> SessionRow {
    let amount = i64::from(line.target.sets()) * line.target.amount();
    let volume = match line.target.measure() {
        Measure::Reps => format!(
            "{} {}",
            decimal(amount),
            if amount == ONE { "rep" } else { "reps" }
        ),
        Measure::Time => format!("{} s", decimal(amount)),
        _ => format!(
            "{} {}",
            line.target.sets(),
            if line.target.sets() == 1 {
                "time"
            } else {
                "times"
            }
        ),
    };
    SessionRow {
        link: plan.links.of(line.movement).to_string(),
        target: plan.words(&line.target),
        rest: line.rest.clone().unwrap_or_default(),
        volume,
    }
}

/// What a movement is, in words.
#[derive(Serialize)]
pub struct Fact {
    pub name: &'static str,
    pub value: String,
}

pub fn facts(movement: &Movement) -> Vec<Fact> {
    let positions: Vec<String> = movement
        .positions
        .iter()
        .map(|p| p.word().replace('-', " "))
        .collect();
    let load = match movement.load {
        Load::None => "nothing to carry",
        Load::Assisted => "less than the body, assisted",
        Load::Body => "the body",
        Load::Added => "the body and added weight",
    };
    let mut out = vec![
        Fact {
            name: "Pattern",
            value: movement.pattern.word().into(),
        },
        Fact {
            name: "Position",
            value: positions.join(", then "),
        },
        Fact {
            name: "Load",
            value: load.into(),
        },
    ];
    let mut add = |name: &'static str, value: Option<String>| {
        out.extend(value.map(|value| Fact { name, value }))
    };
    add("Arms", movement.arms.map(|a| a.word().to_string()));
    add(
        "Phase",
        movement.phase.map(|p| match p {
            Phase::Full => "the full movement".to_string(),
            other => other.word().to_string(),
        }),
    );
    add(
        "Equipment",
        (!movement.equipment.is_empty()).then(|| equipment(movement)),
    );
    add(
        "Sides",
        movement
            .each_side
            .then(|| "each side by itself".to_string()),
    );
    add(
        "Stresses",
        (!movement.stresses.is_empty()).then(|| {
            movement
                .stresses
                .iter()
                .map(|s| s.word().replace('-', " "))
                .collect::<Vec<_>>()
                .join(", ")
        }),
    );
    add(
        "Usual time",
        movement.weeks.map(|w| {
            if w.from == w.to {
                format!("about {} weeks", w.from)
            } else {
                format!("{} to {} weeks", w.from, w.to)
            }
        }),
    );
    out
}

fn equipment(movement: &Movement) -> String {
    let items: Vec<String> = movement
        .equipment
        .iter()
        .map(|alternatives| alternatives.join(" or ").replace('-', " "))
        .collect();
    items.join("; ")
}

/// An entry of the ledger.
#[derive(Serialize)]
pub struct EntryView {
    pub on: String,
    pub note: String,
    pub changes: Vec<ChangeView>,
}

#[derive(Serialize)]
pub struct ChangeView {
    /// The movement's rendered name; its old id as text where it is gone.
    pub link: String,
    pub gone: String,
    pub says: String,
}

pub fn entry(plan: &Plan<'_>, entry: &Entry) -> EntryView {
    let changes = entry.changes.iter().map(|(id, change)| {
        let ix = plan
            .curriculum
            .find_movement(id)
            .filter(|ix| !plan.curriculum.movement(*ix).held_back);
        ChangeView {
            link: ix.map_or_else(String::new, |ix| plan.links.of(ix).to_string()),
            gone: if ix.is_none() {
                id.clone()
            } else {
                String::new()
            },
            says: change_words(change),
        }
    });
    EntryView {
        on: entry.on.clone(),
        note: entry.note.clone(),
        changes: changes.collect(),
    }
}

/// A change in words.
pub fn change_words(change: &Change) -> String {
    match change {
        Change::Added => "added".into(),
        Change::Removed => "removed".into(),
        Change::Renamed(from) => format!("renamed, was {from}"),
        Change::Raised { from, to } => format!("standard raised from {from} to {to}"),
        Change::Lowered { from, to } => format!("standard lowered from {from} to {to}"),
        Change::Standard { from, to } => format!("standard changed from {from} to {to}"),
        Change::Cautions { from, to } => {
            format!("cautions changed from {} to {}", listed(from), listed(to))
        }
    }
}

fn listed(words: &[String]) -> String {
    if words.is_empty() {
        "none".into()
    } else {
        words.join(", ").replace('-', " ")
    }
}

/// Where a movement stands: "on the ground", "3 rungs up".
pub fn stage_words(stage: u32) -> String {
    match stage {
        0 => "on the ground".into(),
        1 => "1 rung up".into(),
        n => format!("{n} rungs up"),
    }
}

/// The group of a movement on the test sheet: in the order in which one day's tests are done.
pub fn sheet_group(pattern: Pattern) -> (usize, &'static str) {
    match pattern {
        Pattern::Mobility => (0, "Mobility"),
        Pattern::Balance => (1, "Balance"),
        Pattern::Exit => (2, "Ways out"),
        Pattern::Squat | Pattern::Hinge | Pattern::Carry => (3, "Legs"),
        Pattern::HorizontalPush => (4, "Horizontal push"),
        Pattern::VerticalPush => (5, "Vertical push"),
        Pattern::HorizontalPull => (6, "Horizontal pull"),
        Pattern::VerticalPull => (7, "Vertical pull"),
        Pattern::Core => (8, "Trunk"),
    }
}

/// The mark of a movement.
pub fn mark_of<'p>(plan: &'p Plan<'_>, ix: MovementIx) -> Option<&'p Mark> {
    plan.links.mark(ix)
}

/// A bar of leverage: how full it is, of 100, and what it says.
#[derive(Serialize)]
pub struct Bar {
    pub full: u32,
    pub says: String,
}

/// The weight on the hands where a posture tells it; where the hands carry everything, which tells nothing, the turning load at
/// the shoulder, full at 50 body weight x centimetres.
pub fn bar(plan: &Plan<'_>, ix: MovementIx) -> Option<Bar> {
    let solved = plan.solved[ix.at()].as_deref()?;
    let share = solved
        .poses()
        .filter_map(|p| p.hands_carry)
        .reduce(f64::max)?;
    let hundredths = (share * 100.0).round() as u32;
    if hundredths < 100 {
        return Some(Bar {
            full: hundredths,
            says: format!("{hundredths} % of body weight on the hands"),
        });
    }
    let turning = solved.turning()?.shoulder.round() as u32;
    (turning > 0).then(|| Bar {
        full: (turning * 2).min(100),
        says: format!("{turning} body weight x cm at the shoulder"),
    })
}
