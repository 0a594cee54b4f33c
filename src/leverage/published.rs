//! Published values to hold the model against: what was measured, by whom, and what this model gives.

use super::balance::{Hold, Setting, Stance};
use super::body::{Body, STANDARD};
use super::named::names;
use super::place::placed;
use super::posture::solve;
use super::shape::{Shape, centre};
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
    /// A straight body leans on its heels, its trunk so many degrees from the vertical, and pulls along the arms.
    leaning: Option<f64>,
    /// As a fraction of body weight.
    pub value: f64,
    /// How near the model must come: points of body weight as a fraction.
    pub within: f64,
    pub source: &'static str,
}

impl Published {
    /// What the model gives for the body of mean build.
    pub fn ours(&self) -> Option<f64> {
        if let Some(degrees) = self.leaning {
            return Some(pulled_along_the_arms(degrees, &STANDARD));
        }
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

/// The share of body weight that pulls along the arms of a straight body on its heels, the arms square to the trunk, which leans
/// so many degrees from the vertical: moments about the heels. Straps swing to where they pull, a bar does not.
pub fn pulled_along_the_arms(degrees: f64, body: &Body) -> f64 {
    let shape = Shape::new(90.0, 180.0, 180.0, 180.0);
    let trunk = 90.0 - degrees;
    let setting = Setting {
        touches: Vec::new(),
        stance: Stance::Heels,
        hold: Hold::Above,
        hands_at: 0.0,
        feet_at: None,
        feet_to: [None, None],
        hands_to: [None, None],
        gear: Vec::new(),
        props: &[],
        front: false,
    };
    let points = placed(&setting, &shape, body, trunk, (0.0, 0.0));
    let (_, centre) = centre(points.masses(body).all());
    let heel = points.legs[0].heel;
    let (way, hand) = (
        (
            points.wrist.0 - points.shoulder.0,
            points.wrist.1 - points.shoulder.1,
        ),
        (points.fingers.0 - heel.0, points.fingers.1 - heel.1),
    );
    let lever = (hand.0 * way.1 - hand.1 * way.0) / libm::hypot(way.0, way.1);
    ((centre.0 - heel.0) / lever).abs()
}

const GULMEZ: &str =
    "Gulmez 2017, J Strength Cond Res 31(4):1017-1023; the rings of ours at the floor";
const MELROSE: &str = "Melrose, Dawes 2015, J Athl Enhancement 4(1), n = 40";
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
        leaning: None,
        value,
        within,
        source,
    }
}

/// A row on straps, the trunk so many degrees from the vertical.
const fn row(key: &'static str, degrees: f64, value: f64, within: f64) -> Published {
    Published {
        leaning: Some(degrees),
        ..of(key, "row", (0.0, 0.0), false, (value, within), MELROSE)
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
    of(
        "on_rings_arms_straight_a_miss",
        "ring-push-up",
        (0.0, 0.0),
        false,
        (0.504, 0.14),
        GULMEZ,
    ),
    of(
        "on_rings_arms_bent",
        "ring-push-up",
        (0.0, 0.0),
        true,
        (0.753, 0.06),
        GULMEZ,
    ),
    row("row_leaning_30", 30.0, 0.3744, 0.08),
    row("row_leaning_45", 45.0, 0.5288, 0.08),
    row("row_leaning_60", 60.0, 0.6808, 0.10),
    row("row_leaning_75_a_miss", 75.0, 0.7938, 0.14),
];

/// The named postures for which no share on the hands was ever measured: computed, unchecked.
pub fn unchecked() -> impl Iterator<Item = &'static str> {
    // The rows that were measured pull along straps; ours press straight up.
    let measured = |name: &&str| {
        PUBLISHED
            .iter()
            .any(|p| p.posture == *name && p.leaning.is_none())
    };
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
