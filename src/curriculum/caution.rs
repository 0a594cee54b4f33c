//! Cautions: what may hurt, who asks a clinician first, how to set up, how to bail out, when to stop.

use super::words::{Arms, ArmsAt, Load, Phase, Position};
pub use super::words::{Part, Shipped, Word};
use crate::source::Span;
use crate::words::Words;
use std::fmt;

/// How grave a caution is, in the sense of ANSI Z535.4-2007, clause 4.14: a warning could lead to death or serious injury, a
/// caution to minor or moderate injury; a notice speaks of practice. Ordered from lightest to gravest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Signal {
    Notice,
    Caution,
    Warning,
}

impl Signal {
    pub const WORDS: &'static [&'static str] = &["notice", "caution", "warning"];

    pub fn word(self) -> &'static str {
        Self::WORDS[self as usize]
    }

    pub fn read(text: &str) -> Option<Signal> {
        [Signal::Notice, Signal::Caution, Signal::Warning]
            .into_iter()
            .find(|s| s.word() == text)
    }
}

/// Which class it is: one that ships with the tool, or the school's own by its name.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum ClassId {
    Shipped(Shipped),
    Own(String),
}

impl ClassId {
    pub fn read(text: &str) -> ClassId {
        Shipped::read(text).map_or_else(|| ClassId::Own(text.into()), ClassId::Shipped)
    }

    pub fn as_str(&self) -> &str {
        match self {
            ClassId::Shipped(class) => class.word(),
            ClassId::Own(name) => name,
        }
    }
}

impl fmt::Display for ClassId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}

impl PartialEq<str> for ClassId {
    fn eq(&self, other: &str) -> bool {
        self.as_str() == other
    }
}

impl PartialEq<&str> for ClassId {
    fn eq(&self, other: &&str) -> bool {
        self.as_str() == *other
    }
}

/// A text of a class, and where the school wrote it; shipped ones have no place.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Text {
    pub words: String,
    pub span: Option<Span>,
}

/// What a part of a class says: in general, and otherwise in some positions.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Wording {
    /// Stands where the position has no words of its own. Never empty.
    pub general: Text,
    /// In the order of [`Position`].
    pub in_position: Vec<(Position, Text)>,
}

impl Wording {
    /// Sets the general words, and drops the shipped ones of single positions: who rewords a part rewords all of it.
    pub(crate) fn reword(&mut self, text: Text) {
        self.in_position.retain(|(_, text)| text.span.is_some());
        self.general = text;
    }

    /// Sets the words of one position.
    pub(crate) fn reword_in(&mut self, position: Position, text: Text) {
        self.in_position.retain(|(p, _)| *p != position);
        self.in_position.push((position, text));
        self.in_position.sort_by_key(|(p, _)| *p);
    }

    /// The words that fit one position.
    pub fn at(&self, position: Position) -> &Text {
        let own = self.in_position.iter().find(|(p, _)| *p == position);
        own.map_or(&self.general, |(_, text)| text)
    }

    /// The positions among these that have words of their own, in the order of [`Position`], each once; `None` last where one
    /// of them has none.
    fn wanted(&self, positions: &[Position]) -> Vec<Option<Position>> {
        let own = self.in_position.iter().map(|(p, _)| *p);
        let mut wanted: Vec<Option<Position>> =
            own.filter(|p| positions.contains(p)).map(Some).collect();
        if wanted.is_empty() || positions.iter().any(|p| !wanted.contains(&Some(*p))) {
            wanted.push(None);
        }
        wanted
    }
}

/// A caution class in full. No general wording is ever empty.
#[derive(Clone, Debug, PartialEq)]
pub struct Class {
    pub id: ClassId,
    pub name: String,
    pub signal: Signal,
    /// By [`Part`].
    wordings: [Wording; 5],
}

impl Class {
    /// A class without words.
    pub(crate) fn new(id: ClassId, name: String, signal: Signal) -> Class {
        let wordings = Default::default();
        Class {
            id,
            name,
            signal,
            wordings,
        }
    }

    pub fn wording(&self, part: Part) -> &Wording {
        &self.wordings[part as usize]
    }

    pub(crate) fn wording_mut(&mut self, part: Part) -> &mut Wording {
        &mut self.wordings[part as usize]
    }

    /// The general words of a part.
    pub fn part(&self, part: Part) -> &str {
        &self.wording(part).general.words
    }

    /// The name in a language: the school's own, else the shipped one.
    pub fn name<'a>(&'a self, words: &'a Words) -> &'a str {
        super::caution_text::translated(&self.id, "name", &self.name, words)
    }

    /// The general words of a part in a language: the school's own, else the shipped ones.
    pub fn say<'a>(&'a self, part: Part, words: &'a Words) -> &'a str {
        self.say_in(part, None, words)
    }

    fn say_in<'a>(&'a self, part: Part, at: Option<Position>, words: &'a Words) -> &'a str {
        let wording = self.wording(part);
        let text = at.map_or(&wording.general, |p| wording.at(p));
        let key = super::caution_text::part_key(part, at);
        super::caution_text::translated(&self.id, &key, &text.words, words)
    }

    /// What a part says to somebody who passes through these positions: one text where one fits all of them, otherwise each
    /// with its position before it. Without positions all that there is.
    pub fn fitting(&self, part: Part, positions: &[Position], words: &Words) -> String {
        let wording = self.wording(part);
        let wanted = wording.wanted(match positions.is_empty() {
            true => Position::ALL,
            false => positions,
        });
        if let [one] = wanted.as_slice() {
            return self.say_in(part, *one, words).to_string();
        }
        let say = |at: Option<Position>| {
            let key = super::caution_text::at_key(at);
            words.fill(&key, &[("text", self.say_in(part, at, words).into())])
        };
        wanted.into_iter().map(say).collect::<Vec<_>>().join(" ")
    }

    /// Of these positions those that change what the class says, as bits: movements of one sum are told the same.
    pub fn told_apart(&self, positions: &[Position]) -> u64 {
        let bits = |wording: &Wording| {
            let wanted = wording.wanted(positions);
            let bit = |at: &Option<Position>| 1u64 << at.map_or(0, |p| p as u64 + 1);
            wanted.iter().map(bit).sum::<u64>()
        };
        let parts = self.wordings.iter();
        parts.fold(0, |all, wording| (all << 10) | bits(wording))
    }

    pub fn is_complete(&self) -> bool {
        Part::ALL.iter().all(|p| !self.part(*p).trim().is_empty())
    }
}

/// Position of a class in the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct ClassIx(pub u16);

/// All classes: the shipped ones, reworded by the school where it wishes, then the school's own.
#[derive(Clone, Debug, PartialEq)]
pub struct Book {
    classes: Vec<Class>,
}

impl Default for Book {
    fn default() -> Book {
        Book {
            classes: super::caution_text::shipped(),
        }
    }
}

impl Book {
    pub fn classes(&self) -> &[Class] {
        &self.classes
    }

    pub fn class(&self, ix: ClassIx) -> &Class {
        &self.classes[ix.0 as usize]
    }

    pub fn find(&self, id: &str) -> Option<ClassIx> {
        self.classes
            .iter()
            .position(|c| c.id == id)
            .map(|i| ClassIx(i as u16))
    }

    /// Where a shipped class stands.
    pub fn shipped(class: Shipped) -> ClassIx {
        ClassIx(class as u16)
    }

    pub(crate) fn class_mut(&mut self, ix: ClassIx) -> &mut Class {
        &mut self.classes[ix.0 as usize]
    }

    pub(crate) fn add(&mut self, class: Class) {
        self.classes.push(class);
    }

    /// The classes of one movement, gravest first, then in the order of the book.
    pub fn sorted(&self, mut found: Vec<ClassIx>) -> Vec<ClassIx> {
        found.sort_by_key(|ix| (std::cmp::Reverse(self.class(*ix).signal), *ix));
        found.dedup();
        found
    }
}

/// Degrees between upper arm and trunk from which an arm is overhead. Common practice, no source.
pub const OVERHEAD_FROM: f64 = 120.0;

/// What of a movement classes follow from.
#[derive(Clone, Copy, Debug)]
pub struct Traits<'a> {
    pub positions: &'a [Position],
    pub load: Load,
    pub loaded: bool,
    pub arms: Option<Arms>,
    pub phase: Option<Phase>,
    pub arms_at: Option<ArmsAt>,
    /// Degrees between upper arm and trunk at each end of its posture, where it has one.
    pub arm_angles: &'a [f64],
    /// The posture stands on the head.
    pub on_head: bool,
    /// The classes that its definition names.
    pub declared: &'a [ClassIx],
}

impl Traits<'_> {
    /// Face down with nothing carried by the hands: the belly lies on the floor.
    fn on_belly(&self) -> bool {
        let hands = self
            .declared
            .contains(&Book::shipped(Shipped::WristExtension));
        self.passes(Position::Prone) && self.load == Load::None && !hands
    }

    fn passes(&self, position: Position) -> bool {
        self.positions.contains(&position)
    }

    /// By the posture, or by what the coach says of the arms. Where neither tells, a hang is overhead and so is standing upside
    /// down on the hands; an inverted hang is not.
    fn overhead(&self) -> bool {
        let hangs = self.passes(Position::Hanging);
        match self.arms_at {
            Some(at) if self.arm_angles.is_empty() || at == ArmsAt::Overhead => {
                at == ArmsAt::Overhead
            }
            _ if !self.arm_angles.is_empty() => self.arm_angles.iter().any(|a| *a >= OVERHEAD_FROM),
            _ => hangs != self.passes(Position::Inverted),
        }
    }
}

/// The classes that follow by themselves from what a movement is.
///
/// # Source
/// Common practice, no source.
pub fn derived(of: &Traits<'_>) -> Vec<ClassIx> {
    use Shipped::*;
    let rolls = of.declared.contains(&Book::shipped(Rolling));
    let straight = of.arms == Some(Arms::Straight) && matches!(of.load, Load::Body | Load::Added);
    let rules = [
        (of.passes(Position::Inverted), Inverted),
        (of.passes(Position::PartInverted), PartInverted),
        (of.passes(Position::Supine), Supine),
        (of.on_belly(), Prone),
        (of.loaded, Loaded),
        (of.loaded, BreathHolding),
        (straight, StraightArm),
        (of.phase == Some(Phase::Lowering), Lowering),
        (of.overhead(), Overhead),
        (of.passes(Position::Bridge), SpineExtension),
        (of.on_head || rolls, NeckLoad),
    ];
    let holding = rules.into_iter().filter(|(when, _)| *when);
    holding.map(|(_, class)| Book::shipped(class)).collect()
}
