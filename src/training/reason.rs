//! The rules by name, and the reasons of lines and of what is left out, before anybody puts them in words.

use super::facts::{Facts, Group};
use crate::curriculum::target::Got;
use crate::curriculum::words::{BodyPart, Pattern};
use crate::curriculum::{Mass, MovementIx};
use crate::results::{Paused, Sides};

/// Two to four reps left.
const LEFT: &str = "Zourdos et al. 2016, J Strength Cond Res 30(1):267-275";

macro_rules! rules {
    ($($(#[$doc:meta])* $id:ident $name:literal $key:literal $source:expr;)*) => {
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

            /// Where it was published; `None`: common practice, no source.
            pub fn source(self) -> Option<&'static str> {
                match self { $(Rule::$id => $source),* }
            }
        }
    };
}

rules! {
    /// A gap that fits is trained itself: the route asks for it.
    Itself "the gap itself" "itself" Some(LEFT);
    /// What stands closest below a gap that does not fit.
    Builder "builder" "builder" None;
    /// Nothing new that is harder than what is known, while something asks for care.
    Care "care first" "care" None;
    /// What is too easy gives way to its lowest harder neighbour.
    Harder "harder" "harder" None;
    /// Exits, balance and turnovers: attempts while fresh.
    Practice "practice" "practice" None;
    Range "range" "range" Some("Garber et al. 2011, Med Sci Sports Exerc 43(7):1334-1359");
    KeptUp "kept up" "kept_up" Some("Bickel et al. 2011, Med Sci Sports Exerc 43(7):1177-1187");
    /// Of the goal's chain and trained lately: it does not make room for others.
    GoesOn "goes on" "goes_on" None;
    /// Its own number counts, though what it needs was never shown.
    Before "done before" "before" None;
    Balance "balance from 65" "balance" None;
    /// What stands nearest to a gap that rests or lacks its equipment.
    Instead "instead" "instead" None;
    Singles "singles" "singles" None;
    Show "show it" "show" None;
    FirstTry "first try" "first_try" None;
    UntilTested "until it is tested" "until_tested" None;
    TwoForTwo "two for two" "two_for_two" Some("Baechle, Earle, Essentials of Strength Training and Conditioning");
    Strict "strict" "strict" None;
    /// Failing never raises an amount.
    Shows "what training shows" "shows" None;
    TimeOff "time off" "time_off" None;
    /// One tendon was studied.
    Pain "pain" "pain" Some("Silbernagel et al. 2007, Am J Sports Med 35(6):897-906");
    Pause "after a pause" "pause" None;
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
    /// Nobody measured it: it follows from another movement, and has to be shown.
    KnownFrom(Got, MovementIx),
    Easy(MovementIx, Got),
    /// Easy by what only follows from another movement.
    EasyFrom(MovementIx),
    TooFew(MovementIx, Got),
    /// Lifted, but what it needs was not all shown.
    NotShown(MovementIx, Got),
    Single(Got),
    ShortSets,
    NoGap(Pattern),
    WholeBody,
    Best(Got),
    /// Nobody measured it: it follows from another movement.
    Counts(Got, MovementIx),
    Load,
    /// Of what has no posture: a share of what was lifted.
    OfRecord,
    /// Far more is known than is asked: slower reps.
    Slow,
    /// The same, and nothing harder may take over.
    AskHarder,
    /// One easy set puts it on record.
    ShowFar,
    LoadHeld(Mass),
    InFull,
    /// A plan's step of load, and what its sets leave.
    IfDone(i64),
    TwoOver,
    FellShort,
    /// A mobility movement's own standard is asked.
    Asked(MovementIx, Got),
    /// Of one whose line says what is asked.
    SoFar(Got),
    Measure,
    /// What is on file was measured in another way.
    MeasureAgain(Sides),
    /// Nothing that measures it is at hand.
    MeasureNot,
    UntilNumber,
    DaysOff(i32),
    /// On the way back to what it was.
    BackAfter(i32),
    Hurts {
        part: BodyPart,
        score: u32,
        /// Worse the next morning.
        next: bool,
        /// Light and easier.
        less: bool,
        /// And half as much, a rung further down.
        least: bool,
        /// What stands here does not stress it.
        near: bool,
    },
    /// It hurt so much lately, and is better.
    Hurt(BodyPart, u32),
    /// Which week after it.
    AfterPause(i32),
    /// Something harder is not tried first.
    Waits(MovementIx),
    /// Of the goal's chain, and trained lately.
    GoesOn,
    /// By its own number, though what it needs was never shown.
    Before,
    /// The hands are raised, since lying on the belly is left alone.
    Raised,
}

impl Reason {
    /// Of a part that hurts, on a movement: whether that stresses it.
    pub(super) fn on(self, facts: &Facts<'_>) -> Reason {
        match self {
            Reason::Hurts {
                part,
                score,
                next,
                less,
                least,
                ..
            } => Reason::Hurts {
                part,
                score,
                next,
                less,
                least,
                near: !facts.stresses(part),
            },
            other => other,
        }
    }

    /// What only follows, said of a line that asks to show it.
    pub fn to_show(self) -> Reason {
        match self {
            Reason::Counts(got, from) => Reason::KnownFrom(got, from),
            other => other,
        }
    }
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
    /// It comes in no session of the plan.
    Beyond,
    /// Its test stands in its place.
    Tested,
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
    /// Nothing new on a part that hurts.
    Sore(BodyPart),
    /// Its number is known, and it bears on a part that hurts.
    Spared(BodyPart),
    /// A way out whose needs begin anew: until the number of this is in.
    WaitsFor(MovementIx),
    /// With the arms overhead, for a shoulder that hurts.
    Overhead(BodyPart),
    /// Its number is known, and another of its group has the line.
    Served(Group),
    /// Its number is known, and what it needs was not shown.
    NotShown,
    /// Nothing harder than what is known.
    Careful,
    /// It would be new, and bears on what hurt or rested lately.
    Lately(Paused),
    /// Harder or graver than what left for a pain or a rest.
    StandsIn,
    /// Enough lines on a part that hurts.
    Enough,
    /// One long or straight-arm hold a session while holding the breath is left alone.
    Breath,
}

/// What follows a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Then {
    Result,
    StopTwo,
    /// To so many reps at most.
    StopMost(i64),
    /// A hold, for so many seconds at most.
    HoldMost(i64),
    Did,
    Step,
    /// Nothing moves on.
    Same,
}

impl Then {
    /// Its key under `training.then`.
    pub fn key(self) -> &'static str {
        match self {
            Then::Result => "result",
            Then::StopTwo => "stop_two",
            Then::StopMost(_) => "stop_most",
            Then::HoldMost(_) => "hold_most",
            Then::Did => "did",
            Then::Step => "step",
            Then::Same => "same",
        }
    }
}
