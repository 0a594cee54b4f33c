//! The numbers by which results are read and judged, each once. The page's scripts have the same table in their first line, for
//! pages that load no other: the health questions and what hurts are asked without the tables.

use crate::curriculum::quantity::{BodyWeight, Mass};
use crate::curriculum::target::{KILOGRAM, Micro, ONE};
use serde::Serialize;

/// The numbers. Pairs are lowest and highest, or first and then, as each line says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Limits {
    /// Of 10. Pain from the first goes on without steps, from the second its part rests, in the neck from the
    /// first (Silbernagel et al. 2007, Am J Sports Med
    /// 35(6):897-906: one tendon; the cut between bands is theirs, the rest common practice).
    pub pain: [u32; 2],
    /// Years. Under this age growth plates are open: no tests with added weight, and what grows rests at any pain.
    /// Common practice, no source.
    pub adult: i32,
    /// The parts that a growing person rests at the first pain: where growth plates and vertebrae are hurt most. Common practice,
    /// no source.
    pub growing: [&'static str; 7],
    /// Years. Under this age with a coach and a parent's consent. Common practice, no source.
    pub youth: i32,
    /// Years. From this age on, as under `adult`, nothing is planned before health answers are on file: who still grows, and who is
    /// old, is hurt by what does others no harm. Common practice, no source.
    pub older: i32,
    /// Years. Under this age nobody tests or trains by a page, but only with a coach in person. A page asks its reader to judge
    /// effort, what was left, and pain from 0 to 10 alone: under twelve that is a coach's to see. Common practice, no source.
    pub alone: i32,
    /// A clearance ends after so many days at the latest: a year, whichever.
    pub clearance: i32,
    /// The lightest and the heaviest body weight that is read.
    pub body_weight: [Mass; 2],
    /// People of one class's table at most: more are no class, and one answer for all of them would fill the memory. Common
    /// practice, no source.
    pub class: usize,
    /// Thousandths: a near miss has at least this share. Common practice, no source.
    pub near: u16,
    /// A length may be short by so much, an angle too; millionths of a centimetre, of a degree. Common practice, no source.
    pub near_length: Micro,
    pub near_angle: Micro,
    /// Loads that were converted are equal within so much.
    pub same_mass: Mass,
    /// The monotony of a week's load is at most said to be this: days all alike have no deviation to divide by.
    pub monotony: u32,
    /// A number is asked about from so many times the most that is asked of its movement, an angle beyond so much: the widest that a
    /// joint makes. Common practice, no source.
    pub far: u32,
    pub widest: Micro,
    /// Reps in reserve, the effort of a session and its minutes, at most: a day has no more minutes, and more in reserve is a slip.
    pub in_reserve: u32,
    pub effort: u32,
    pub minutes: u32,
}

/// The table.
pub const LIMITS: Limits = Limits {
    pain: [3, 6],
    adult: 18,
    growing: [
        "wrist",
        "elbow",
        "lower-back",
        "hip",
        "knee",
        "ankle",
        "foot",
    ],
    youth: 16,
    older: 65,
    alone: 12,
    clearance: 366,
    body_weight: BodyWeight::BOUNDS,
    class: 1000,
    near: 800,
    near_length: 3 * ONE,
    near_angle: 10 * ONE,
    same_mass: Mass::of_units(KILOGRAM / ONE),
    monotony: 10,
    far: 6,
    widest: 180 * ONE,
    in_reserve: 100,
    effort: 10,
    minutes: 24 * 60,
};

#[cfg(test)]
mod tests {
    use super::LIMITS;

    /// Silbernagel et al. 2007: up to 2 of 10 safe, up to 5 acceptable, above 5 not.
    #[test]
    fn pain_is_silbernagels() {
        assert_eq!(LIMITS.pain, [3, 6]);
    }
}
