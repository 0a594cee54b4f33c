//! Quantities that must not be taken for each other: a mass, what a person weighs, a share of that.
//!
//! Each is a whole number of a small unit, so that equal values are equal and every machine agrees.

use super::target::{KILOGRAM, Micro, ONE};
use serde::Serialize;
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
}
