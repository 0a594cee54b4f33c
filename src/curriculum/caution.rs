//! Cautions: what may hurt, who asks a clinician first, how to set up, how to bail out, when to stop.

use super::words::{Arms, Load, Phase, Position};
use crate::words::Words;

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

/// A caution class in full. No part is ever empty.
#[derive(Clone, Debug, PartialEq)]
pub struct Class {
    pub id: String,
    pub name: String,
    pub signal: Signal,
    pub happens: String,
    pub ask_first: String,
    pub set_up: String,
    pub bail_out: String,
    pub stop: String,
}

/// The parts of a class that a school may reword, by the key that `cautions.yaml` uses.
pub const PARTS: &[&str] = &["happens", "ask_first", "set_up", "bail_out", "stop"];

impl Class {
    /// The text of a part.
    pub fn part(&self, key: &str) -> &str {
        match key {
            "happens" => &self.happens,
            "ask_first" => &self.ask_first,
            "set_up" => &self.set_up,
            "bail_out" => &self.bail_out,
            _ => &self.stop,
        }
    }

    /// The text of a part, or the name, in a language: the school's own wording, else the shipped one.
    pub fn say<'a>(&'a self, part: &str, words: &'a Words) -> &'a str {
        let text = match part {
            "name" => &self.name,
            _ => self.part(part),
        };
        super::caution_text::translated(&self.id, part, text, words)
    }

    pub(crate) fn part_mut(&mut self, key: &str) -> &mut String {
        match key {
            "happens" => &mut self.happens,
            "ask_first" => &mut self.ask_first,
            "set_up" => &mut self.set_up,
            "bail_out" => &mut self.bail_out,
            _ => &mut self.stop,
        }
    }

    pub fn is_complete(&self) -> bool {
        PARTS.iter().all(|key| !self.part(key).trim().is_empty())
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

/// The ids of the classes that follow by themselves from what a movement is.
///
/// # Source
/// Common practice, no source.
pub fn derived(
    positions: &[Position],
    load: Load,
    loaded: bool,
    arms: Option<Arms>,
    phase: Option<Phase>,
) -> Vec<&'static str> {
    let mut ids = Vec::new();
    let mut add = |when: bool, id: &'static str| {
        if when {
            ids.push(id);
        }
    };
    let passes = |position: Position| positions.contains(&position);
    add(passes(Position::Inverted), "inverted");
    add(passes(Position::PartInverted), "part-inverted");
    add(loaded, "loaded");
    add(loaded, "breath-holding");
    add(
        arms == Some(Arms::Straight) && matches!(load, Load::Body | Load::Added),
        "straight-arm",
    );
    add(phase == Some(Phase::Lowering), "lowering");
    add(
        passes(Position::Hanging) || passes(Position::Inverted),
        "overhead",
    );
    add(passes(Position::Bridge), "spine-extension");
    ids
}
