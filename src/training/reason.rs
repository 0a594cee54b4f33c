//! The rules by name, and the reasons of lines and of what is left out, before anybody puts them in words.

use super::facts::Group;
use super::trainee::Mass;
use crate::curriculum::MovementIx;
use crate::curriculum::target::Got;
use crate::curriculum::words::{BodyPart, Pattern};
use crate::results::Paused;

macro_rules! rules {
    ($($(#[$doc:meta])* $id:ident $name:literal $key:literal;)*) => {
        /// A rule that decided about a line; of several the last that applies.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Rule { $($(#[$doc])* $id),* }

        impl Rule {
            /// In the order in which they apply.
            pub const ALL: &'static [Rule] = &[$(Rule::$id),*];

            /// The name, as answers for programs say it.
            pub fn name(self) -> &'static str {
                match self { $(Rule::$id => $name),* }
            }

            /// The key of its name under `training.rule` in the words files, and of what it says under `training.says`.
            pub fn key(self) -> &'static str {
                match self { $(Rule::$id => $key),* }
            }
        }
    };
}

rules! {
    /// A gap that fits is trained itself: the route asks for it. Common practice, no source.
    Itself "the gap itself" "itself";
    /// What stands closest below a gap that does not fit. Common practice, no source.
    Builder "builder" "builder";
    /// What is too easy gives way to its lowest harder neighbour. Common practice, no source.
    Harder "harder" "harder";
    /// Exits, balance and turnovers: attempts while fresh. Common practice, no source.
    Practice "practice" "practice";
    /// Garber et al. 2011, Med Sci Sports Exerc 43(7):1334-1359.
    Range "range" "range";
    /// Bickel et al. 2011, Med Sci Sports Exerc 43(7):1177-1187.
    KeptUp "kept up" "kept_up";
    /// Common practice, no source.
    Balance "balance from 65" "balance";
    /// What stands nearest to a gap that rests or lacks its equipment. Common practice, no source.
    Instead "instead" "instead";
    /// Common practice, no source.
    Singles "singles" "singles";
    /// Common practice, no source.
    Show "show it" "show";
    /// Common practice, no source.
    FirstTry "first try" "first_try";
    UntilTested "until it is tested" "until_tested";
    /// Baechle & Earle, Essentials.
    TwoForTwo "two for two" "two_for_two";
    /// Common practice, no source.
    Strict "strict" "strict";
    /// Failing never raises an amount. Common practice, no source.
    Shows "what training shows" "shows";
    /// Common practice, no source.
    TimeOff "time off" "time_off";
    /// Silbernagel et al. 2007, Am J Sports Med 35(6):897-906: one tendon.
    Pain "pain" "pain";
    /// Common practice, no source.
    Pause "after a pause" "pause";
}

/// Where a line stands in a session, in its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Block {
    Practice,
    Strength,
    KeptUp,
    Range,
}

impl Block {
    pub const ALL: [Block; 4] = [
        Block::Practice,
        Block::Strength,
        Block::KeptUp,
        Block::Range,
    ];

    /// As answers for programs say it.
    pub fn name(self) -> &'static str {
        match self {
            Block::Practice => "practice",
            Block::Strength => "strength",
            Block::KeptUp => "kept up",
            Block::Range => "range",
        }
    }

    /// The key of its word under `training.block`.
    pub fn key(self) -> &'static str {
        match self {
            Block::KeptUp => "kept_up",
            other => other.name(),
        }
    }

    /// Whether its sets are hard ones.
    pub fn is_hard(self) -> bool {
        matches!(self, Block::Strength | Block::KeptUp)
    }
}

/// Why a line is as it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    NothingKnown,
    NothingOfGroup(Group),
    TriedAnew,
    Instead(MovementIx, Left),
    Known(Got),
    Easy(MovementIx, Got),
    TooFew(MovementIx, Got),
    Single(Got),
    ShortSets,
    NoGap(Pattern),
    WholeBody,
    Best(Got),
    Load,
    LoadHeld(Mass),
    InFull,
    TwoOver,
    FellShort,
    /// A mobility movement's own standard is asked.
    Asked(MovementIx, Got),
    Measure,
    UntilNumber,
    DaysOff(i32),
    Hurts {
        part: BodyPart,
        score: u32,
        worse: bool,
    },
    /// Which week after it.
    AfterPause(i32),
}

/// Why something does not stand in a session.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Left {
    Apart(Group),
    Heavy,
    Waits,
    ShowTurns,
    TryTurns,
    Turns,
    Sets,
    Time,
    TooHard,
    Minor,
    Equipment,
    Rests(Paused),
    Restricted(Paused),
    Pain(BodyPart),
    Light,
    Below,
}

/// What follows a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Then {
    Result,
    StopTwo,
    Did,
    Step,
}

impl Then {
    /// Its key under `training.then`.
    pub fn key(self) -> &'static str {
        match self {
            Then::Result => "result",
            Then::StopTwo => "stop_two",
            Then::Did => "did",
            Then::Step => "step",
        }
    }
}
