//! What follows from the curriculum alone: for each movement its dose, its kind, how strictly it is handled, its neighbours.

use super::constants::K;
use crate::chain::{Stages, median_half_weeks, neighbours_of};
use crate::curriculum::caution::Book;
use crate::curriculum::family::Way;
use crate::curriculum::gear::Gear;
use crate::curriculum::manner::Stress;
use crate::curriculum::movement::Movement;
use crate::curriculum::posture::Joints;
use crate::curriculum::target::{Measure, Micro, ONE, Target};
use crate::curriculum::words::{Arms, BodyPart, How, Load, Pattern, Phase, Position};
use crate::curriculum::{Curriculum, Mass, MovementIx, Seconds, Weeks};
use crate::leverage::solve;

/// Patterns that rest together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Group {
    Pull,
    Push,
    Legs,
    Core,
}

impl Group {
    /// In the order in which what is kept up is looked for.
    pub const ALL: [Group; 4] = [Group::Pull, Group::Push, Group::Legs, Group::Core];

    /// Squat, hinge and carry are legs; balance, exit and mobility are of no group.
    pub fn of(pattern: Pattern) -> Option<Group> {
        match pattern {
            Pattern::VerticalPush | Pattern::HorizontalPush => Some(Group::Push),
            Pattern::VerticalPull | Pattern::HorizontalPull => Some(Group::Pull),
            Pattern::Squat | Pattern::Hinge | Pattern::Carry => Some(Group::Legs),
            Pattern::Core => Some(Group::Core),
            Pattern::Balance | Pattern::Mobility | Pattern::Exit => None,
        }
    }

    /// The key of its word under `training.group`.
    pub fn word(self) -> &'static str {
        match self {
            Group::Pull => "pull",
            Group::Push => "push",
            Group::Legs => "legs",
            Group::Core => "core",
        }
    }
}

/// The patterns of strength in the order of a session. Common practice, no source.
pub const ORDER: [Pattern; 8] = [
    Pattern::VerticalPull,
    Pattern::VerticalPush,
    Pattern::HorizontalPull,
    Pattern::HorizontalPush,
    Pattern::Squat,
    Pattern::Hinge,
    Pattern::Carry,
    Pattern::Core,
];

/// The place of a pattern in [`ORDER`]; behind all of them where it is not of strength.
pub fn place_of(pattern: Pattern) -> usize {
    ORDER
        .iter()
        .position(|p| *p == pattern)
        .unwrap_or(ORDER.len())
}

/// A pattern, its straight-arm movements apart: what hard sets are counted by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Kind {
    pub pattern: Pattern,
    pub straight: bool,
}

/// Classes that load a part heavily. Common practice, no source.
const HEAVY: [&str; 5] = [
    "lowering",
    "loaded",
    "straight-arm",
    "shoulder-extension",
    "neck-load",
];

/// A movement as training sees it.
#[derive(Clone, Debug)]
pub struct Facts<'a> {
    pub ix: MovementIx,
    pub of: &'a Movement,
    /// Rungs up.
    pub stage: u32,
    /// Its own dose, else the school's.
    pub dose: Target,
    pub own_dose: bool,
    /// Reps or seconds of one set of the dose, whole.
    pub each: i64,
    /// Seconds of a rep in millionths; 0 where none are said.
    pub seconds: Micro,
    /// Seconds of a rep where its target says none: its tempo's, else the usual and what is held.
    pub rep_s: u32,
    /// From open to owned, low and high, in half weeks.
    pub half_weeks: (u32, u32),
    pub straight: bool,
    /// Measured in reps or seconds.
    pub counted: bool,
    /// Guarded, lowering, straight-arm, balance, or on rings: moved on more slowly.
    pub strict: bool,
    /// From hanging to support.
    pub turnover: bool,
    /// The parts that it loads heavily, by part.
    pub heavy_on: Vec<BodyPart>,
    /// The share of body weight that moves with what is added: the posture's on the hands, the larger of its ends. `None` where no
    /// posture says, and of what is not loaded.
    pub share: Option<f64>,
    /// The easier neighbours in its family.
    pub easier: Vec<MovementIx>,
    pub harder: Vec<MovementIx>,
}

impl Facts<'_> {
    pub fn pattern(&self) -> Pattern {
        self.of.pattern()
    }

    pub fn measure(&self) -> Measure {
        self.of.standard().measure()
    }

    pub fn is_reps(&self) -> bool {
        self.measure() == Measure::Reps
    }

    pub fn is_hold(&self) -> bool {
        self.measure() == Measure::Time
    }

    pub fn guarded(&self) -> bool {
        self.of.guarded()
    }

    pub fn loaded(&self) -> bool {
        self.of.loaded()
    }

    pub fn lowering(&self) -> bool {
        self.of.phase() == Some(Phase::Lowering)
    }

    pub fn mobility(&self) -> bool {
        self.of.pattern() == Pattern::Mobility
    }

    /// Exits, balance and turnovers are practised, not trained in sets.
    pub fn practised(&self) -> bool {
        matches!(self.of.pattern(), Pattern::Balance | Pattern::Exit) || self.turnover
    }

    /// A balance movement that is only ever upright.
    pub fn upright_balance(&self) -> bool {
        self.of.pattern() == Pattern::Balance
            && self.of.positions().iter().all(|p| *p == Position::Upright)
    }

    /// Face down, the hands or forearms no higher than the feet.
    pub fn over_floor(&self) -> bool {
        let hands = self.of.posture().and_then(|p| p.hands_at);
        self.of.positions().contains(&Position::Prone) && hands.is_none_or(|at| at <= 0.0)
    }

    /// The joint whose range it is: the first part that it bears on more than lightly.
    pub fn joint(&self) -> Option<BodyPart> {
        let mut all = self.of.stresses().iter();
        let first = all.find(|s| s.how != Some(How::Light)).map(|s| s.part);
        first.filter(|_| self.mobility())
    }

    pub fn group(&self) -> Option<Group> {
        Group::of(self.of.pattern())
    }

    /// The group that a first try of an exit or a balance works, by its positions. Common practice, no source.
    pub fn try_group(&self) -> Option<Group> {
        let passes = |position| self.of.positions().contains(&position);
        match self.pattern() {
            Pattern::Exit | Pattern::Balance
                if [
                    Position::Support,
                    Position::Inverted,
                    Position::PartInverted,
                ]
                .into_iter()
                .any(passes) =>
            {
                Some(Group::Push)
            }
            Pattern::Exit if passes(Position::Hanging) => Some(Group::Pull),
            _ => None,
        }
    }

    pub fn kind(&self) -> Kind {
        Kind {
            pattern: self.of.pattern(),
            straight: self.straight,
        }
    }

    /// Full reps to which weight is added.
    pub fn by_weight(&self) -> bool {
        self.loaded() && self.is_reps() && !self.lowering() && self.of.pattern() != Pattern::Exit
    }

    pub fn stresses(&self, part: BodyPart) -> bool {
        self.of.stresses_part(part)
    }

    /// Stresses a part, but only lightly.
    pub fn stresses_lightly(&self, part: BodyPart) -> bool {
        self.stresses(part) && !self.bears_on(part)
    }

    /// Stresses a part, and not only lightly.
    pub fn bears_on(&self, part: BodyPart) -> bool {
        let mut of = self.of.stresses().iter().filter(|s| s.part == part);
        of.any(|s| s.how != Some(How::Light))
    }
}

/// Every movement's facts, by number; `None` for those that are held back or in error.
pub struct Roster<'a> {
    pub curriculum: &'a Curriculum,
    pub stages: &'a Stages,
    all: Vec<Option<Facts<'a>>>,
    /// The numbers of those that stand, by id.
    pub standing: Vec<MovementIx>,
}

impl<'a> Roster<'a> {
    pub fn new(curriculum: &'a Curriculum, stages: &'a Stages) -> Roster<'a> {
        let middle = median_half_weeks(curriculum);
        let stands = |ix: MovementIx| {
            let m = curriculum.movement(ix);
            !m.held_back() && !m.faulty()
        };
        let mut all: Vec<Option<Facts<'a>>> = curriculum
            .movements()
            .map(|(ix, m)| {
                stands(ix).then(|| facts(curriculum, (ix, m), stages.of(ix).unwrap_or(0), middle))
            })
            .collect();
        let standing: Vec<MovementIx> = curriculum
            .movements()
            .map(|(ix, _)| ix)
            .filter(|ix| stands(*ix))
            .collect();
        for ix in &standing {
            let easier: Vec<MovementIx> = neighbours_of(curriculum, *ix, Way::Easier)
                .into_iter()
                .map(|n| n.movement)
                .filter(|low| stands(*low))
                .collect();
            for low in &easier {
                if let Some(facts) = &mut all[low.at()] {
                    facts.harder.push(*ix);
                }
            }
            if let Some(facts) = &mut all[ix.at()] {
                facts.easier = easier;
            }
        }
        Roster {
            curriculum,
            stages,
            all,
            standing,
        }
    }

    /// The facts of a movement that stands.
    pub fn find(&self, ix: MovementIx) -> Option<&Facts<'a>> {
        self.all[ix.at()].as_ref()
    }

    /// The facts of a movement that is known to stand: whatever a person may train, or a route asks for.
    pub fn of(&self, ix: MovementIx) -> &Facts<'a> {
        self.find(ix).expect("only what stands is trained")
    }

    /// The smallest plate, in hundred-millionths of a kilogram.
    pub fn plate(&self) -> Mass {
        self.curriculum
            .school()
            .smallest_plate
            .max(Mass::of_units(1))
    }

    /// The movements reached by going up easier neighbours of the same phase and measure.
    pub fn above(&self, ix: MovementIx) -> Vec<MovementIx> {
        let from = self.of(ix);
        let alike = |o: &Facts<'_>| {
            o.of.phase() == from.of.phase()
                && o.measure() == from.measure()
                && o.seconds == from.seconds
        };
        let (mut out, mut open) = (Vec::new(), vec![ix]);
        while let Some(low) = open.pop() {
            for up in &self.of(low).harder {
                if *up != ix && !out.contains(up) && alike(self.of(*up)) {
                    out.push(*up);
                    open.push(*up);
                }
            }
        }
        out
    }

    /// Everything that the needs of some movements mention, all the way down; of what stands.
    pub fn under(&self, from: impl IntoIterator<Item = MovementIx>) -> Vec<MovementIx> {
        let mut seen = vec![false; self.all.len()];
        let mut open: Vec<MovementIx> = from.into_iter().collect();
        let mut out = Vec::new();
        while let Some(ix) = open.pop() {
            self.curriculum.movement(ix).needs().visit(&mut |leaf| {
                let below = leaf.movement;
                if !std::mem::replace(&mut seen[below.at()], true) && self.find(below).is_some() {
                    out.push(below);
                    open.push(below);
                }
            });
        }
        out
    }
}

fn facts<'a>(
    curriculum: &Curriculum,
    (ix, m): (MovementIx, &'a Movement),
    stage: u32,
    middle: u32,
) -> Facts<'a> {
    let school = &curriculum.school().dose;
    let dose = m.dose().unwrap_or_else(|| match m.standard().measure() {
        Measure::Time => school.hold,
        _ => Target::of_reps(school.sets, school.reps),
    });
    let straight = m.arms() == Some(Arms::Straight);
    let lowering = m.phase() == Some(Phase::Lowering);
    let on_rings = m.names_gear(Gear::Rings);
    let held = || K.rep_s + m.hold().map_or(0, |held| held.seconds.count());
    let passes = |position| m.positions().contains(&position);
    Facts {
        ix,
        of: m,
        stage,
        dose,
        own_dose: m.dose().is_some(),
        each: dose.amount() / ONE,
        seconds: match dose.seconds() {
            0 => m.standard().seconds(),
            own => own,
        },
        rep_s: m.tempo_seconds().map_or_else(held, Seconds::count),
        half_weeks: m.weeks().map_or((middle, middle), Weeks::in_half_weeks),
        straight,
        counted: matches!(m.standard().measure(), Measure::Reps | Measure::Time),
        strict: m.guarded() || lowering || straight || m.pattern() == Pattern::Balance || on_rings,
        turnover: passes(Position::Hanging) && passes(Position::Support),
        heavy_on: heavy_on(curriculum.cautions(), m),
        share: if m.loaded() { share(m) } else { None },
        easier: Vec::new(),
        harder: Vec::new(),
    }
}

/// The parts that a movement loads heavily: as its definition says of a part; where it does not, by the classes.
fn heavy_on(book: &Book, m: &Movement) -> Vec<BodyPart> {
    if m.load() == Load::None || matches!(m.pattern(), Pattern::Balance | Pattern::Exit) {
        return Vec::new();
    }
    let by_class = HEAVY.iter().any(|id| bears(book, m, id));
    let heavy = |stress: &&Stress| match stress.how {
        Some(How::Loaded | How::StraightArm | How::Lowering) => true,
        Some(How::Light | How::Stretched) => false,
        None => by_class,
    };
    m.stresses().iter().filter(heavy).map(|s| s.part).collect()
}

fn share(m: &Movement) -> Option<f64> {
    let posture = m.posture()?;
    // Of a part of the range no load is reckoned as of the whole.
    if posture.start != Joints::default() || posture.end.is_some() {
        return None;
    }
    let solved = solve(posture).ok()?;
    solved
        .poses()
        .filter_map(|p| p.hands_carry)
        .reduce(f64::max)
}

/// Whether a movement is of a class.
fn bears(book: &Book, m: &Movement, id: &str) -> bool {
    m.cautions().iter().any(|ix| book.class(*ix).id == id)
}
