//! A posture as the coach declares it; what follows from it is computed in `leverage`.

use super::words::Word;
use crate::source::Span;

/// Angles at the joints in degrees, as seen from the side: 180 is straight; the shoulder's is between arm and trunk, 0 by the
/// side, 90 forward, 180 overhead, less than 0 behind.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Joints {
    pub shoulder: Option<f64>,
    pub elbow: Option<f64>,
    pub hip: Option<f64>,
    pub knee: Option<f64>,
}

/// What touches the ground, or is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Touch {
    Hands,
    /// The forearms, pressed at the elbows.
    Forearms,
    Toes,
    Knees,
    Head,
    Back,
    /// The feet, against a wall that only pushes sideways.
    Wall,
    Bar,
    Bars,
    Rings,
}

impl Word for Touch {
    const WORDS: &'static [&'static str] = &[
        "hands", "forearms", "toes", "knees", "head", "back", "wall", "bar", "bars", "rings",
    ];
    const WHAT: &'static str = "place that is touched";

    fn word(self) -> &'static str {
        Self::WORDS[self as usize]
    }

    fn read(text: &str) -> Option<Touch> {
        use Touch::*;
        [
            Hands, Forearms, Toes, Knees, Head, Back, Wall, Bar, Bars, Rings,
        ]
        .into_iter()
        .find(|t| t.word() == text)
    }
}

/// What is held or worn besides what carries the hands and feet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Gear {
    /// A weight on a belt, hanging between the legs.
    Belt,
    /// A rubber band from the grip to the knee.
    Band,
    /// A weight in the hand.
    Weight,
    /// Push-up handles.
    Handles,
    /// A stick in both hands.
    Stick,
}

impl Word for Gear {
    const WORDS: &'static [&'static str] = &["belt", "band", "weight", "handles", "stick"];
    const WHAT: &'static str = "thing that is held or worn";

    fn word(self) -> &'static str {
        Self::WORDS[self as usize]
    }

    fn read(text: &str) -> Option<Gear> {
        use Gear::*;
        [Belt, Band, Weight, Handles, Stick]
            .into_iter()
            .find(|g| g.word() == text)
    }
}

/// A declared posture.
#[derive(Clone, Debug, PartialEq)]
pub struct Posture {
    /// One of the shipped postures, by name.
    pub named: Option<String>,
    pub touches: Vec<Touch>,
    pub start: Joints,
    pub end: Option<Joints>,
    /// Centimetres above the floor, or above the grip's own height; `None` where the coach says nothing.
    pub hands_at: Option<f64>,
    pub feet_at: Option<f64>,
    /// What is held, worn or stood on besides.
    pub with: Vec<Gear>,
    pub span: Span,
}
