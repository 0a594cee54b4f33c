//! Quantities that must not be taken for each other: a mass, what a person weighs, a share of that; seconds, days, weeks.
//!
//! Each is a whole number of a small unit, so that equal values are equal and every machine agrees.

use super::target::{KILOGRAM, Micro, ONE};
use serde::Serialize;
use std::fmt;
use std::ops::{Add, Mul, Neg, Sub};

/// A mass; below 0 it is taken off the body.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(transparent)]
pub struct Mass(i64);

impl Mass {
    pub const NONE: Mass = Mass(0);

    pub const fn of_kilograms(n: i64) -> Mass {
        Mass(n * KILOGRAM)
    }

    /// Of hundred-millionths of a kilogram.
    pub const fn of_units(n: i64) -> Mass {
        Mass(n)
    }

    /// Hundred-millionths of a kilogram.
    pub const fn units(self) -> i64 {
        self.0
    }

    /// To compute with; what is compared or written stays whole.
    pub fn kilograms(self) -> f64 {
        self.0 as f64 / KILOGRAM as f64
    }

    /// A part of it, in hundred-millionths of a kilogram, not yet rounded.
    pub fn part(self, share: f64) -> f64 {
        self.0 as f64 * share
    }

    /// More than none.
    pub fn is_added(self) -> bool {
        self.0 > 0
    }

    pub fn abs(self) -> Mass {
        Mass(self.0.abs())
    }
}

impl Add for Mass {
    type Output = Mass;

    fn add(self, other: Mass) -> Mass {
        Mass(self.0 + other.0)
    }
}

impl Sub for Mass {
    type Output = Mass;

    fn sub(self, other: Mass) -> Mass {
        Mass(self.0 - other.0)
    }
}

impl Neg for Mass {
    type Output = Mass;

    fn neg(self) -> Mass {
        Mass(-self.0)
    }
}

/// So many of it.
impl Mul<i64> for Mass {
    type Output = Mass;

    fn mul(self, times: i64) -> Mass {
        Mass(self.0 * times)
    }
}

/// What a person weighs: a mass that a body can have.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct BodyWeight(Mass);

impl BodyWeight {
    /// The lightest and the heaviest that is read.
    pub const BOUNDS: [Mass; 2] = [Mass::of_kilograms(10), Mass::of_kilograms(500)];

    /// `None` where no body weighs that.
    pub fn new(mass: Mass) -> Option<BodyWeight> {
        let [lightest, heaviest] = BodyWeight::BOUNDS;
        (lightest <= mass && mass <= heaviest).then_some(BodyWeight(mass))
    }

    pub fn mass(self) -> Mass {
        self.0
    }

    /// A share of it, rounded half up.
    pub fn share(self, share: BodyShare) -> Mass {
        let product = i128::from(share.0) * i128::from(self.0.0);
        Mass((product + i128::from(ONE) / 2).div_euclid(i128::from(ONE)) as i64)
    }
}

/// A share of somebody's own body weight; below 0 it is taken off the body.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct BodyShare(Micro);

impl BodyShare {
    pub const NONE: BodyShare = BodyShare(0);

    /// Of millionths of the body weight.
    pub const fn of_millionths(n: Micro) -> BodyShare {
        BodyShare(n)
    }

    pub const fn millionths(self) -> Micro {
        self.0
    }

    /// 1 is the whole body weight.
    pub fn fraction(self) -> f64 {
        self.0 as f64 / ONE as f64
    }
}

impl Neg for BodyShare {
    type Output = BodyShare;

    fn neg(self) -> BodyShare {
        BodyShare(-self.0)
    }
}

/// Whole seconds, of a rest or of a part of a rep.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(transparent)]
pub struct Seconds(u32);

impl Seconds {
    pub const fn of(n: u32) -> Seconds {
        Seconds(n)
    }

    pub const fn count(self) -> u32 {
        self.0
    }

    /// As a target's amount.
    pub fn micro(self) -> Micro {
        Micro::from(self.0) * ONE
    }

    /// Whole minutes; `None` where it is none of them.
    pub fn minutes(self) -> Option<u32> {
        self.0.is_multiple_of(60).then_some(self.0 / 60)
    }
}

/// As a coach writes it: `90 s`.
impl fmt::Display for Seconds {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} s", self.0)
    }
}

/// Whole days of the calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(transparent)]
pub struct Days(u32);

impl Days {
    pub const fn of(n: u32) -> Days {
        Days(n)
    }

    pub fn count(self) -> i32 {
        i32::try_from(self.0).unwrap_or(i32::MAX)
    }

    /// Whole weeks in them.
    pub fn weeks(self) -> i32 {
        self.count() / 7
    }
}

/// Usual weeks from open to owned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Weeks {
    from: u32,
    to: u32,
}

impl Weeks {
    /// Ten years: more is hardly meant.
    pub const MOST: u32 = 520;

    /// `None` unless both are at least 1, at most [`Weeks::MOST`], and in order.
    pub fn new(from: u32, to: u32) -> Option<Weeks> {
        (1 <= from && from <= to && to <= Weeks::MOST).then_some(Weeks { from, to })
    }

    pub fn from(self) -> u32 {
        self.from
    }

    pub fn to(self) -> u32 {
        self.to
    }

    /// The middle of them, in half weeks, so that it is whole.
    pub fn middle_in_half_weeks(self) -> u32 {
        self.from + self.to
    }

    /// The shortest and the longest of them, in half weeks.
    pub fn in_half_weeks(self) -> (u32, u32) {
        (2 * self.from, 2 * self.to)
    }
}

/// As a coach writes it: `3-8`, or one number.
impl fmt::Display for Weeks {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.from == self.to {
            true => write!(f, "{}", self.from),
            false => write!(f, "{}-{}", self.from, self.to),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_of_a_body_is_rounded_half_up() {
        let weight = BodyWeight::new(Mass::of_kilograms(70)).expect("somebody weighs that");
        let share = |n| weight.share(BodyShare::of_millionths(n));
        assert_eq!(share(250_000), Mass::of_units(17 * KILOGRAM + KILOGRAM / 2));
        assert_eq!(share(-1_000_000), -Mass::of_kilograms(70));
        // 10.00000005 kg: a millionth of it is 1000.000005 units, half of it 500.0000025.
        let odd = BodyWeight::new(Mass::of_units(10 * KILOGRAM + 5)).expect("as above");
        assert_eq!(
            odd.share(BodyShare::of_millionths(500_000)),
            Mass::of_units(5 * KILOGRAM + 3)
        );
    }

    #[test]
    fn nobody_weighs_nothing() {
        for (kilograms, weighs) in [
            (-70, false),
            (0, false),
            (9, false),
            (10, true),
            (500, true),
            (501, false),
        ] {
            let read = BodyWeight::new(Mass::of_kilograms(kilograms));
            assert_eq!(read.is_some(), weighs, "{kilograms} kg");
        }
        let units = |n: i64| BodyWeight::new(Mass::of_units(n)).is_some();
        assert!(!units(10 * KILOGRAM - 1) && !units(500 * KILOGRAM + 1));
    }

    #[test]
    fn weeks_run_forward() {
        for (from, to, written) in [
            (3, 8, Some("3-8")),
            (4, 4, Some("4")),
            (1, 520, Some("1-520")),
            (0, 3, None),
            (8, 3, None),
            (1, 521, None),
        ] {
            let weeks = Weeks::new(from, to);
            assert_eq!(weeks.map(|w| w.to_string()).as_deref(), written);
        }
        assert_eq!(Weeks::new(3, 8).map(Weeks::middle_in_half_weeks), Some(11));
    }

    #[test]
    fn times_of_two_units_are_told_apart() {
        let minutes = |n| Seconds::of(n).minutes();
        assert_eq!((minutes(120), minutes(90)), (Some(2), None));
        assert_eq!(Seconds::of(90).to_string(), "90 s");
        assert_eq!(Seconds::of(2).micro(), 2 * ONE);
        assert_eq!((Days::of(28).weeks(), Days::of(27).weeks()), (4, 3));
    }
}
