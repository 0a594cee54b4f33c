//! The guided self-test: which question next, so that a few safe questions decide every state in a skill.
//!
//! A question asks for a number: of a test today, or the most done in the last four weeks. Pure; the page's own script does the
//! same on the same tables.

mod board;

pub use board::Board;

use crate::curriculum::target::{Measure, ONE};
use crate::curriculum::words::Pattern;
use crate::curriculum::{Movement, MovementIx};
use serde::Serialize;

/// Reps in one set, and seconds, from which a test is one of endurance. Common practice, no source.
const MANY_REPS: i64 = 15 * ONE;
const LONG: i64 = 60 * ONE;

/// The place of a movement's test within a day: mobility 0, balance and exits 1, strength 2, endurance 3.
/// Common practice, no source.
pub fn day_order(movement: &Movement) -> u32 {
    let standard = &movement.standard();
    match (movement.pattern(), standard.measure()) {
        (Pattern::Mobility, _) => 0,
        (Pattern::Balance | Pattern::Exit, _) => 1,
        (_, Measure::Reps) if standard.amount() >= MANY_REPS => 3,
        (_, Measure::Time) if standard.amount() >= LONG => 3,
        _ => P.strength,
    }
}

/// The numbers of this room. The page's script has them from the tables.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Constants {
    /// From here on in the order of a day a test is an all-out set.
    pub strength: u32,
    /// All-out sets of one pattern on one day. Common practice, no source.
    pub all_out_sets: u32,
    /// How many open questions a state in doubt weighs as much as. Tried over simulated clients; 3 asks fewest.
    pub state: usize,
}

/// The table.
pub const P: Constants = Constants {
    strength: 2,
    all_out_sets: 2,
    state: 3,
};

/// What to ask next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Question {
    pub movement: MovementIx,
    /// It may be tested today: its needs are shown, and the day has room for it. Otherwise only a number from training is
    /// asked.
    pub today: bool,
}
