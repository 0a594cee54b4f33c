//! A movement: one exercise in one variation.

use super::caution::ClassIx;
use super::day::Day;
use super::id::Id;
use super::manner::{Held, Instead, Stress, Tempo};
use super::need::{Leaf, Need};
use super::posture::Posture;
use super::target::Target;
use super::words::{Arms, ArmsAt, BodyPart, Load, Pattern, Phase, Position};
use super::{FamilyIx, NoteIx};
use crate::source::Span;

/// What a movement, a family and a member say alike, and what stays as it was read: nothing of it is looked up. A key that is
/// added here and forgotten where a member takes its family's share does not compile.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Says {
    pub arms: Option<Arms>,
    /// Where the arms are to the trunk, as the coach says it.
    pub arms_at: Option<ArmsAt>,
    pub phase: Option<Phase>,
    pub test: Option<Test>,
    /// By part, each once.
    pub stresses: Vec<Stress>,
    pub tempo: Option<Tempo>,
    pub hold: Option<Held>,
    /// Seconds of rest between sets in training, at least 1; a test's own rest is the test's.
    pub rest: Option<u32>,
    /// When to go back a rung.
    pub back_when: Vec<String>,
    pub cues: Vec<String>,
    pub faults: Vec<Fault>,
    pub posture: Option<Posture>,
    pub weeks: Option<Weeks>,
    pub sources: Vec<String>,
}

/// A movement with everything that holds for it, its family's share included.
#[derive(Clone, Debug, PartialEq)]
pub struct Movement {
    pub id: Id,
    pub name: String,
    pub also: Vec<String>,
    pub was: Vec<Id>,
    pub pattern: Pattern,
    /// In the order passed through; never empty.
    pub positions: Vec<Position>,
    pub load: Load,
    /// All are needed; of each inner list one is enough.
    pub equipment: Vec<Vec<String>>,
    pub each_side: bool,
    pub summary: String,
    pub needs: Need<Leaf>,
    pub standard: Target,
    pub exit: Option<String>,
    pub dose: Option<Target>,
    /// What goes in its place, in the coach's order.
    pub instead: Vec<Instead>,
    /// What it says as it was read; its parts are the movement's own.
    pub says: Says,
    /// The classes that its definition names.
    pub declared: Vec<ClassIx>,
    /// Every class that holds, gravest first.
    pub cautions: Vec<ClassIx>,
    /// `load: added`, or added weight in the standard, the dose or any target asked of it.
    pub loaded: bool,
    pub pictures: Vec<Picture>,
    pub clip: Option<Clip>,
    pub held_back: bool,
    pub place: Option<Place>,
    pub note: Option<NoteIx>,
    pub spans: Spans,
    /// Something in its definition is in error, so nothing is computed from it.
    pub faulty: bool,
}

impl std::ops::Deref for Movement {
    type Target = Says;

    fn deref(&self) -> &Says {
        &self.says
    }
}

impl Movement {
    /// Passes through the inverted position.
    pub fn inverted(&self) -> bool {
        self.positions.contains(&Position::Inverted)
    }

    /// Whether on that day it was still measured in another way than its test says now.
    pub fn measured_otherwise_on(&self, day: Day) -> bool {
        let since = self.test.as_ref().and_then(|t| t.since);
        since.is_some_and(|since| day < since)
    }

    /// Whether it stresses a part, in whatever way.
    pub fn stresses_part(&self, part: BodyPart) -> bool {
        self.stresses.iter().any(|s| s.part == part)
    }

    /// Seconds of one rep as it is to be done, where its tempo says them.
    pub fn tempo_seconds(&self) -> Option<u32> {
        self.tempo.map(Tempo::seconds)
    }

    /// Inverted or loaded: never named without its mark, and its needs are judged without presumption.
    pub fn guarded(&self) -> bool {
        self.inverted() || self.loaded
    }
}

/// Where the parts of a movement's definition stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spans {
    /// The id.
    pub id: Span,
    /// The whole definition: the record, or the member's record in its family.
    pub whole: Span,
    pub standard: Span,
    /// The exit's words.
    pub exit: Option<Span>,
    pub tempo: Option<Span>,
}

/// How the standard is tested.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Test {
    pub how: Option<String>,
    pub counts: Vec<String>,
    pub stop: Vec<String>,
    pub rest: Option<String>,
    /// The first day on which it was measured so: results of earlier days count for nothing.
    pub since: Option<Day>,
}

/// What goes wrong, why, and what to try.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    pub see: String,
    pub because: Option<String>,
    pub attempt: Option<String>,
}

/// Usual weeks from open to owned; `from <= to`, both at least 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Weeks {
    pub from: u32,
    pub to: u32,
}

/// A picture of the coach's own.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Path below `content/pictures/`.
    pub file: String,
    pub alt: String,
    pub credit: Option<String>,
}

/// A clip of the coach's own.
#[derive(Clone, Debug, PartialEq)]
pub struct Clip {
    pub file: String,
    pub poster: Option<String>,
    pub alt: String,
}

/// Where a member stands in its family: for each axis its rung, if it has one.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    pub family: FamilyIx,
    pub rungs: Vec<Option<Rung>>,
}

/// A value on an axis: its rung from easier to harder, and which of the values that share that rung.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Rung {
    pub rung: u16,
    pub value: u16,
}
