//! A movement: one exercise in one variation.

use super::caution::ClassIx;
use super::day::Day;
use super::id::Id;
use super::manner::{Held, Instead, Stress, Tempo};
use super::need::{Leaf, Need};
use super::posture::Posture;
use super::quantity::{Seconds, Weeks};
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
    /// Rest between sets in training, at least a second; a test's own rest is the test's.
    pub rest: Option<Seconds>,
    /// When to go back a rung.
    pub back_when: Vec<String>,
    pub cues: Vec<String>,
    pub faults: Vec<Fault>,
    pub posture: Option<Posture>,
    pub weeks: Option<Weeks>,
    pub sources: Vec<String>,
}

/// All that makes a movement, as `reading` joins it; what each part means say the methods of [`Movement`] with its name.
#[derive(Clone, Debug, PartialEq)]
pub struct MovementParts {
    pub id: Id,
    pub name: String,
    pub also: Vec<String>,
    pub was: Vec<Id>,
    pub pattern: Pattern,
    pub positions: Vec<Position>,
    pub load: Load,
    pub equipment: Vec<Vec<String>>,
    pub each_side: bool,
    pub summary: String,
    pub needs: Need<Leaf>,
    pub standard: Target,
    pub exit: Option<String>,
    pub dose: Option<Target>,
    pub instead: Vec<Instead>,
    /// What it says as it was read.
    pub says: Says,
    pub declared: Vec<ClassIx>,
    pub cautions: Vec<ClassIx>,
    pub loaded: bool,
    pub pictures: Vec<Picture>,
    pub clip: Option<Clip>,
    pub held_back: bool,
    pub place: Option<Place>,
    pub note: Option<NoteIx>,
    pub spans: Spans,
    pub faulty: bool,
}

/// A movement with everything that holds for it, its family's share included. Nobody but `reading` changes it.
#[derive(Clone, Debug, PartialEq)]
pub struct Movement {
    parts: MovementParts,
}

impl From<MovementParts> for Movement {
    fn from(parts: MovementParts) -> Movement {
        Movement { parts }
    }
}

/// What it is and says.
impl Movement {
    /// All of it, for who must decide on each part: taken apart without `..`, a part that is added does not compile there.
    pub(crate) fn parts(&self) -> &MovementParts {
        &self.parts
    }

    pub fn id(&self) -> &Id {
        &self.parts.id
    }

    pub fn name(&self) -> &str {
        &self.parts.name
    }

    /// Its other names.
    pub fn also(&self) -> &[String] {
        &self.parts.also
    }

    /// The ids it bore before.
    pub fn was(&self) -> &[Id] {
        &self.parts.was
    }

    pub fn pattern(&self) -> Pattern {
        self.parts.pattern
    }

    /// In the order passed through; never empty.
    pub fn positions(&self) -> &[Position] {
        &self.parts.positions
    }

    pub fn load(&self) -> Load {
        self.parts.load
    }

    /// All are needed; of each inner list one is enough.
    pub fn equipment(&self) -> &[Vec<String>] {
        &self.parts.equipment
    }

    /// Tested and trained on each side.
    pub fn each_side(&self) -> bool {
        self.parts.each_side
    }

    pub fn summary(&self) -> &str {
        &self.parts.summary
    }

    /// What is to be owned before it.
    pub fn needs(&self) -> &Need<Leaf> {
        &self.parts.needs
    }

    /// What owning it takes; of one side, where it is done on each.
    pub fn standard(&self) -> Target {
        self.parts.standard
    }

    /// The way out, in words.
    pub fn exit(&self) -> Option<&str> {
        self.parts.exit.as_deref()
    }

    /// Its own working sets.
    pub fn dose(&self) -> Option<Target> {
        self.parts.dose
    }

    /// What goes in its place, in the coach's order.
    pub fn instead(&self) -> &[Instead] {
        &self.parts.instead
    }

    /// The classes that its definition names.
    pub fn declared(&self) -> &[ClassIx] {
        &self.parts.declared
    }

    /// Every class that holds, gravest first.
    pub fn cautions(&self) -> &[ClassIx] {
        &self.parts.cautions
    }

    /// `load: added`, or added weight in the standard, the dose or any target asked of it.
    pub fn loaded(&self) -> bool {
        self.parts.loaded
    }

    pub fn pictures(&self) -> &[Picture] {
        &self.parts.pictures
    }

    pub fn clip(&self) -> Option<&Clip> {
        self.parts.clip.as_ref()
    }

    /// On no page as yet.
    pub fn held_back(&self) -> bool {
        self.parts.held_back
    }

    /// Where it stands in its family.
    pub fn place(&self) -> Option<&Place> {
        self.parts.place.as_ref()
    }

    pub fn note(&self) -> Option<NoteIx> {
        self.parts.note
    }

    pub fn spans(&self) -> &Spans {
        &self.parts.spans
    }

    /// Something in its definition is in error, so nothing is computed from it.
    pub fn faulty(&self) -> bool {
        self.parts.faulty
    }

    pub fn arms(&self) -> Option<Arms> {
        self.parts.says.arms
    }

    /// Where the arms are to the trunk, as the coach says it.
    pub fn arms_at(&self) -> Option<ArmsAt> {
        self.parts.says.arms_at
    }

    pub fn phase(&self) -> Option<Phase> {
        self.parts.says.phase
    }

    pub fn test(&self) -> Option<&Test> {
        self.parts.says.test.as_ref()
    }

    /// By part, each once.
    pub fn stresses(&self) -> &[Stress] {
        &self.parts.says.stresses
    }

    pub fn tempo(&self) -> Option<Tempo> {
        self.parts.says.tempo
    }

    pub fn hold(&self) -> Option<Held> {
        self.parts.says.hold
    }

    /// Rest between sets in training, at least a second; a test's own rest is the test's.
    pub fn rest(&self) -> Option<Seconds> {
        self.parts.says.rest
    }

    /// When to go back a rung.
    pub fn back_when(&self) -> &[String] {
        &self.parts.says.back_when
    }

    pub fn cues(&self) -> &[String] {
        &self.parts.says.cues
    }

    pub fn faults(&self) -> &[Fault] {
        &self.parts.says.faults
    }

    pub fn posture(&self) -> Option<&Posture> {
        self.parts.says.posture.as_ref()
    }

    pub fn weeks(&self) -> Option<Weeks> {
        self.parts.says.weeks
    }

    pub fn sources(&self) -> &[String] {
        &self.parts.says.sources
    }
}

/// What follows from that.
impl Movement {
    /// Passes through the inverted position.
    pub fn inverted(&self) -> bool {
        self.parts.positions.contains(&Position::Inverted)
    }

    /// Whether on that day it was still measured in another way than its test says now.
    pub fn measured_otherwise_on(&self, day: Day) -> bool {
        let since = self.test().and_then(|t| t.since);
        since.is_some_and(|since| day < since)
    }

    /// Whether it stresses a part, in whatever way.
    pub fn stresses_part(&self, part: BodyPart) -> bool {
        self.stresses().iter().any(|s| s.part == part)
    }

    /// What one rep takes as it is to be done, where its tempo says it.
    pub fn tempo_seconds(&self) -> Option<Seconds> {
        self.tempo().map(Tempo::seconds)
    }

    /// Inverted or loaded: never named without its mark, and its needs are judged without presumption.
    pub fn guarded(&self) -> bool {
        self.inverted() || self.loaded()
    }
}

/// What is known of it only when all records are read.
impl Movement {
    pub(crate) fn asks(&mut self, needs: Need<Leaf>) {
        self.parts.needs = needs;
    }

    pub(crate) fn is_replaced_by(&mut self, instead: Vec<Instead>) {
        self.parts.instead = instead;
    }

    pub(crate) fn is_in_error(&mut self) {
        self.parts.faulty = true;
    }

    pub(crate) fn has_note(&mut self, note: Option<NoteIx>) {
        self.parts.note = note;
    }

    pub(crate) fn bears(&mut self, cautions: Vec<ClassIx>, loaded: bool) {
        self.parts.cautions = cautions;
        self.parts.loaded = loaded;
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
