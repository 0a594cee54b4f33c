//! What a client's best sets come to: the load that moved and the one-rep maximum, as a range.

use super::best::best;
use super::load::moved;
use super::one_rep_max::{OutOfRange, range};
use crate::curriculum::target::Measure;
use crate::curriculum::words::Phase;
use crate::curriculum::{Curriculum, Day, MovementIx};
use crate::leverage::solve;
use crate::results::Person;

/// A best set in kilograms.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    pub movement: MovementIx,
    pub reps: u32,
    /// Share of body weight, where the posture says it, plus what is added, less help.
    pub moved: f64,
    /// Lowest and highest estimate of the one-rep maximum of the moved load, or why there is none.
    pub one_rep_max: Result<(f64, f64), OutOfRange>,
    /// The range over body weight.
    pub relative: Option<(f64, f64)>,
}

/// The estimates for every tested movement that is measured in reps and whose moved load is known: its posture tells the share
/// on the hands (the larger of its two ends), and the body weight is given, by the entry itself or for all.
pub fn estimates(curriculum: &Curriculum, person: &Person, today: Day) -> Vec<Estimate> {
    let one = |ix: MovementIx| {
        let m = curriculum.movement(ix);
        // The formulas are for whole reps at one's own pace.
        let whole = m.phase() != Some(Phase::Lowering) && m.standard().seconds() == 0;
        if m.standard().measure() != Measure::Reps || !whole {
            return None;
        }
        let set = best(curriculum, person, today, ix).filter(|b| b.amount > 0)?;
        let weight = set.body_weight.or(person.body_weight)?;
        let solved = solve(m.posture()?).ok()?;
        let share = solved
            .poses()
            .filter_map(|p| p.hands_carry)
            .reduce(f64::max)?;
        let reps = u32::try_from(set.amount).ok()?;
        let moved = moved(share, weight, set.added);
        let weight = weight.mass().kilograms();
        let one_rep_max = range(moved, reps);
        Some(Estimate {
            movement: ix,
            reps,
            moved,
            one_rep_max,
            relative: one_rep_max
                .ok()
                .map(|(low, high)| (low / weight, high / weight)),
        })
    };
    curriculum
        .published()
        .map(|(ix, _)| ix)
        .filter(|ix| person.tested.iter().any(|t| t.movement == *ix))
        .filter_map(one)
        .collect()
}
