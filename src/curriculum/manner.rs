//! How a movement is done and dosed beyond its amount: tempo, what is held, what a part is stressed by, what goes in its place.

use super::MovementIx;
use super::caution::ClassIx;
use super::quantity::Seconds;
use super::words::{BodyPart, End, How};
use crate::source::Span;
use std::fmt;

/// Seconds of each part of a rep: lowering, pause, lifting, pause; not all 0, each at most [`Tempo::MOST`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tempo {
    pub lowering: u32,
    pub bottom: u32,
    pub lifting: u32,
    pub top: u32,
}

impl Tempo {
    /// Seconds of one part of a rep, at most.
    pub const MOST: u32 = 60;

    /// Reads `3-1-1-0`; blanks and long dashes do not matter.
    pub fn read(text: &str) -> Option<Tempo> {
        let parts: Vec<u32> = text
            .split(['-', '\u{2013}'])
            .map(|part| part.trim().parse().ok().filter(|n| *n <= Tempo::MOST))
            .collect::<Option<_>>()?;
        let [lowering, bottom, lifting, top] = parts.try_into().ok()?;
        let tempo = Tempo {
            lowering,
            bottom,
            lifting,
            top,
        };
        (tempo.seconds() > Seconds::of(0)).then_some(tempo)
    }

    /// Of a whole rep, at least one.
    pub fn seconds(self) -> Seconds {
        Seconds::of(self.lowering + self.bottom + self.lifting + self.top)
    }
}

impl fmt::Display for Tempo {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Tempo {
            lowering,
            bottom,
            lifting,
            top,
        } = self;
        write!(f, "{lowering}-{bottom}-{lifting}-{top}")
    }
}

/// Each rep is held at one end for so long, at least a second.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Held {
    pub at: End,
    pub seconds: Seconds,
}

/// A body part, and what it is stressed by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Stress {
    pub part: BodyPart,
    pub how: Option<How>,
}

/// What goes in a movement's place, and when.
#[derive(Clone, Debug, PartialEq)]
pub struct Instead {
    pub when: When,
    pub movement: MovementIx,
    /// Where its reason stands.
    pub span: Span,
}

/// When another movement is done instead.
#[derive(Clone, Debug, PartialEq)]
pub enum When {
    /// A part is sore, or rests.
    Part(BodyPart),
    /// A caution class is not to be trained.
    Class(ClassIx),
    /// Equipment is not at hand.
    Without(String),
}

#[cfg(test)]
mod tests {
    use super::{Seconds, Tempo};

    #[test]
    fn tempos_read_and_print_themselves() {
        for text in ["3-1-1-0", "5-0-1-0", "0-0-1-0", "10-2-2-60"] {
            let tempo = Tempo::read(text).unwrap_or_else(|| panic!("{text}"));
            assert_eq!(tempo.to_string(), text);
        }
        assert_eq!(
            Tempo::read("3-1-1-0").map(Tempo::seconds),
            Some(Seconds::of(5))
        );
        for text in [
            "",
            "3110",
            "3-1-1",
            "3-1-x-0",
            "0-0-0-0",
            "61-0-0-0",
            "3-1-1-0-0",
            "-3-1-1-0",
        ] {
            assert_eq!(Tempo::read(text), None, "{text}");
        }
    }
}
