//! Published values to hold the model against: what was measured, by whom, and what this model gives.

use super::named::names;
use super::posture::solve;
use crate::curriculum::posture::{Joints, Posture};
use crate::source::{FileId, Span};

/// A measured share of body weight on the hands.
#[derive(Clone, Copy, Debug)]
pub struct Published {
    /// What was measured: its key in the words file, under `measured`.
    pub key: &'static str,
    posture: &'static str,
    hands_at: f64,
    feet_at: f64,
    /// The lower end of the movement instead of its start.
    lower_end: bool,
    /// As a fraction of body weight.
    pub value: f64,
    /// How near the model must come: points of body weight as a fraction.
    pub within: f64,
    pub source: &'static str,
}

impl Published {
    /// What the model gives for the body of mean build.
    pub fn ours(&self) -> Option<f64> {
        let posture = Posture {
            named: Some(self.posture.to_string()),
            touches: Vec::new(),
            start: Joints::default(),
            end: None,
            hands_at: Some(self.hands_at),
            feet_at: Some(self.feet_at),
            with: Vec::new(),
            span: Span::top(FileId::FOLDER),
        };
        let solved = solve(&posture).ok()?;
        match self.lower_end {
            true => solved.end?.hands_carry,
            false => solved.start.hands_carry,
        }
    }
}

const EBBEN: &str = "Ebben et al. 2011, J Strength Cond Res 25(10):2891-2894";
const SUPRAK: &str = "Suprak, Dawes, Stephenson 2011, J Strength Cond Res 25(2):497-503";
const GOUVALI: &str = "Gouvali, Boudolos 2005, J Strength Cond Res 19(1):146-151";
const MIER: &str = "Mier et al. 2014, Int J Exerc Sci 7(2):161-168, men and women in the middle";

const fn of(
    key: &'static str,
    posture: &'static str,
    at: (f64, f64),
    lower_end: bool,
    (value, within): (f64, f64),
    source: &'static str,
) -> Published {
    Published {
        key,
        posture,
        hands_at: at.0,
        feet_at: at.1,
        lower_end,
        value,
        within,
        source,
    }
}

/// Every published value used. Ebben et al. measured peaks while moving; the others held still.
pub const PUBLISHED: &[Published] = &[
    of(
        "hands_raised_61_cm",
        "push-up",
        (60.96, 0.0),
        false,
        (0.41, 0.12),
        EBBEN,
    ),
    of(
        "on_the_knees",
        "knee-push-up",
        (0.0, 0.0),
        false,
        (0.49, 0.06),
        EBBEN,
    ),
    of(
        "hands_raised_30_cm",
        "push-up",
        (30.48, 0.0),
        false,
        (0.55, 0.06),
        EBBEN,
    ),
    of(
        "hands_and_feet_on_the_floor",
        "push-up",
        (0.0, 0.0),
        false,
        (0.64, 0.06),
        EBBEN,
    ),
    of(
        "feet_raised_30_cm",
        "push-up",
        (0.0, 30.48),
        false,
        (0.70, 0.06),
        EBBEN,
    ),
    of(
        "feet_raised_61_cm",
        "push-up",
        (0.0, 60.96),
        false,
        (0.74, 0.06),
        EBBEN,
    ),
    of(
        "arms_straight",
        "push-up",
        (0.0, 0.0),
        false,
        (0.6916, 0.07),
        SUPRAK,
    ),
    of(
        "arms_bent",
        "push-up",
        (0.0, 0.0),
        true,
        (0.7504, 0.06),
        SUPRAK,
    ),
    of(
        "beginning",
        "push-up",
        (0.0, 0.0),
        false,
        (0.664, 0.06),
        GOUVALI,
    ),
    of(
        "arms_straight",
        "push-up",
        (0.0, 0.0),
        false,
        (0.660, 0.06),
        MIER,
    ),
    of(
        "arms_bent",
        "push-up",
        (0.0, 0.0),
        true,
        (0.7245, 0.06),
        MIER,
    ),
    of(
        "on_the_knees_arms_bent",
        "knee-push-up",
        (0.0, 0.0),
        true,
        (0.5835, 0.07),
        MIER,
    ),
    of(
        "on_the_knees_arms_straight_a_miss",
        "knee-push-up",
        (0.0, 0.0),
        false,
        (0.520, 0.10),
        MIER,
    ),
    of(
        "on_the_knees_beginning_a_miss",
        "knee-push-up",
        (0.0, 0.0),
        false,
        (0.529, 0.10),
        GOUVALI,
    ),
];

/// The named postures for which no share on the hands was ever measured: computed, unchecked.
pub fn unchecked() -> impl Iterator<Item = &'static str> {
    let measured = |name: &&str| PUBLISHED.iter().any(|p| p.posture == *name);
    names().into_iter().filter(move |name| !measured(name))
}

#[cfg(test)]
mod tests {
    use super::PUBLISHED;

    #[test]
    fn the_model_comes_as_near_as_it_says() {
        for p in PUBLISHED {
            let ours = p.ours().expect("it stands");
            assert!(
                (ours - p.value).abs() <= p.within,
                "{}: {ours} for {}",
                p.key,
                p.value
            );
        }
    }
}
