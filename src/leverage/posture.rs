//! From joint angles and what is touched to a pose in space.

use super::body::{Body, Segment};
use crate::curriculum::posture::{Joints, Posture, Touch};
use std::f64::consts::PI;

/// The shipped postures by name.
pub const NAMES: &[&str] = &["plank", "push-up", "pike", "handstand", "support", "hang"];

/// Stature that heights in centimetres are compared with.
const STATURE_CM: f64 = 174.1;

/// Why a posture cannot stand.
#[derive(Clone, Debug, PartialEq)]
pub enum PostureError {
    /// No shipped posture has this name.
    Unknown(String),
    /// Hands and feet cannot both be where they are said to be; short by so many centimetres.
    Open { short_by: f64 },
}

type Point = (f64, f64);

/// A pose in space: points in shares of stature, y upwards from the floor or the grip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    pub head: Point,
    pub shoulder: Point,
    pub hip: Point,
    pub hands: Point,
    pub feet: Point,
    pub centre: Point,
    /// The share of body weight on the hands; `None` where it is not determined.
    pub hands_carry: Option<f64>,
}

impl Pose {
    /// 2 inverted (the hips above the head, and the hands carry most), 1 part-inverted (the head below the hips), 0 neither.
    /// A head that is lower by less than a twentieth of stature is level.
    pub fn inversion(&self) -> u8 {
        let below = self.hip.1 - self.head.1 > 0.05;
        match below {
            true if self.hands_carry.is_some_and(|share| share > 0.9) => 2,
            true => 1,
            false => 0,
        }
    }
}

/// The angles and touches of a posture, the named one filled in where the coach says nothing else.
fn filled(posture: &Posture) -> Result<(Vec<Touch>, [f64; 4]), PostureError> {
    use Touch::{Bar, Bars, Hands, Toes};
    let (touches, angles) = match posture.named.as_deref() {
        None => (vec![], [180.0; 4]),
        // The one arm-trunk angle at which five published push-ups come near their values.
        Some("plank" | "push-up") => (vec![Hands, Toes], [88.0, 180.0, 180.0, 180.0]),
        Some("pike") => (vec![Hands, Toes], [170.0, 180.0, 85.0, 180.0]),
        Some("handstand") => (vec![Hands], [180.0, 180.0, 180.0, 180.0]),
        Some("support") => (vec![Bars], [10.0, 180.0, 180.0, 180.0]),
        Some("hang") => (vec![Bar], [180.0, 180.0, 180.0, 180.0]),
        Some(other) => return Err(PostureError::Unknown(other.to_string())),
    };
    let Joints {
        shoulder,
        elbow,
        hip,
        knee,
    } = posture.start;
    let given = [shoulder, elbow, hip, knee];
    let angles = std::array::from_fn(|i| given[i].unwrap_or(angles[i]));
    Ok((
        if posture.touches.is_empty() {
            touches
        } else {
            posture.touches.clone()
        },
        angles,
    ))
}

/// Computes the pose of a posture's start.
///
/// # Errors
/// An unknown name; contacts that cannot be reached.
pub fn pose(posture: &Posture, body: &Body) -> Result<Pose, PostureError> {
    let (touches, [shoulder, elbow, hip, knee]) = filled(posture)?;
    // The body lies along x with the shoulder at the origin and the hips ahead; forward of the body is downwards.
    let bend = |from: f64, degrees: f64| from - degrees.to_radians();
    let trunk = 0.0;
    let arm = bend(trunk, shoulder);
    let forearm = bend(arm, 180.0 - elbow);
    let thigh = bend(trunk, 180.0 - hip);
    let shank = bend(thigh, -(180.0 - knee));
    let mut parts: Vec<(f64, Point)> = Vec::new();
    let mut walk = |from: Point, direction: f64, segment: Segment| {
        parts.push((segment.mass, along(from, direction, segment.centre)));
        along(from, direction, segment.length)
    };
    let origin = (0.0, 0.0);
    let top = walk(origin, trunk + PI, body.head);
    let hips = walk(origin, trunk, body.trunk);
    let elbows = walk(origin, arm, body.upper_arm);
    let wrists = walk(elbows, forearm, body.forearm);
    let held = touches
        .iter()
        .any(|t| matches!(t, Touch::Bar | Touch::Bars | Touch::Rings));
    let fingers = walk(wrists, forearm, body.hand);
    let hands = if held { fingers } else { wrists };
    let knees = walk(hips, thigh, body.thigh);
    let ankles = walk(knees, shank, body.shank);
    let toes = walk(ankles, shank - PI / 2.0, body.foot);
    let mass: f64 = parts.iter().map(|p| p.0).sum();
    let centre = (
        parts.iter().map(|p| p.0 * p.1.0).sum::<f64>() / mass,
        parts.iter().map(|p| p.0 * p.1.1).sum::<f64>() / mass,
    );
    let feet = if touches.contains(&Touch::Knees) {
        knees
    } else {
        toes
    };
    let feet_touch = touches
        .iter()
        .any(|t| matches!(t, Touch::Toes | Touch::Knees));
    let hands_touch = held || touches.contains(&Touch::Hands);
    let raised = (posture.feet_at - posture.hands_at) / STATURE_CM;
    let turn = match (hands_touch, feet_touch) {
        (true, true) => closed(hands, feet, raised, centre)?,
        // Balance: the centre of mass stands straight above the hands; from a bar without arms at the side it hangs below.
        (true, false) => {
            let above = !(held && shoulder > 90.0);
            let now = libm::atan2(centre.1 - hands.1, centre.0 - hands.0);
            (if above { PI / 2.0 } else { -PI / 2.0 }) - now
        }
        (false, _) => PI / 2.0,
    };
    let turned = |point: Point| rotate(point, hands, turn);
    let (hands_now, feet_now, centre_now) = (turned(hands), turned(feet), turned(centre));
    let hands_carry = match (hands_touch, feet_touch) {
        (true, true) if (feet_now.0 - hands_now.0).abs() > 1e-9 => {
            Some(((feet_now.0 - centre_now.0) / (feet_now.0 - hands_now.0)).clamp(0.0, 1.0))
        }
        (true, false) => Some(1.0),
        _ => None,
    };
    Ok(Pose {
        head: turned(top),
        shoulder: turned(origin),
        hip: turned(hips),
        hands: hands_now,
        feet: feet_now,
        centre: centre_now,
        hands_carry,
    })
}

/// The turn that puts hands and feet at their heights, the body on the upper side.
fn closed(hands: Point, feet: Point, raised: f64, centre: Point) -> Result<f64, PostureError> {
    let (dx, dy) = (feet.0 - hands.0, feet.1 - hands.1);
    let reach = (dx * dx + dy * dy).sqrt();
    if raised.abs() > reach {
        return Err(PostureError::Open {
            short_by: ((raised.abs() - reach) * STATURE_CM * 10.0).round() / 10.0,
        });
    }
    let now = libm::atan2(dy, dx);
    let slope = libm::asin(raised / reach);
    let height = |turn: f64| rotate(centre, hands, turn).1;
    let (one, other) = (slope - now, PI - slope - now);
    Ok(if height(one) >= height(other) {
        one
    } else {
        other
    })
}

fn along(from: Point, direction: f64, length: f64) -> Point {
    (
        from.0 + length * libm::cos(direction),
        from.1 + length * libm::sin(direction),
    )
}

/// A point turned about another, that one brought to the origin.
fn rotate(point: Point, about: Point, turn: f64) -> Point {
    let (x, y) = (point.0 - about.0, point.1 - about.1);
    (
        x * libm::cos(turn) - y * libm::sin(turn),
        x * libm::sin(turn) + y * libm::cos(turn),
    )
}

#[cfg(test)]
mod tests {
    use super::super::{FEMALE, MALE};
    use super::*;
    use crate::source::{FileId, Span};

    fn posture(named: &str, hands_at: f64, feet_at: f64) -> Posture {
        Posture {
            named: Some(named.into()),
            touches: vec![],
            start: Joints::default(),
            end: None,
            hands_at,
            feet_at,
            span: Span::top(FileId(0)),
        }
    }

    fn share(named: &str, hands_at: f64, feet_at: f64, body: &Body) -> f64 {
        pose(&posture(named, hands_at, feet_at), body)
            .expect("closes")
            .hands_carry
            .expect("a share")
    }

    #[test]
    fn static_push_ups_lie_in_the_published_band() {
        // Straight-arm, static: Suprak et al. 2011 69.16 %, Mier et al. 2014 67.0 and 65.1 %: a band of
        // 62 to 75.
        for body in [&MALE, &FEMALE] {
            let full = share("push-up", 0.0, 0.0, body);
            assert!((0.62..=0.75).contains(&full), "{full}");
        }
    }

    #[test]
    fn five_published_push_ups() {
        // Ebben et al. 2011, J Strength Cond Res 25(10):2891-2894: within 6 points, hands raised 61 cm within 12.
        let published = [
            ("push-up", 0.0, 0.0, 0.64, 0.06),
            ("push-up", 0.0, 30.48, 0.70, 0.06),
            ("push-up", 0.0, 60.96, 0.74, 0.06),
            ("push-up", 30.48, 0.0, 0.55, 0.06),
            ("push-up", 60.96, 0.0, 0.41, 0.12),
        ];
        for body in [&MALE, &FEMALE] {
            let ours = published.map(|(named, hands, feet, value, within)| {
                (share(named, hands, feet, body), value, within)
            });
            assert!(
                ours.iter()
                    .all(|(share, value, within)| (share - value).abs() <= *within),
                "{ours:?}"
            );
        }
    }

    #[test]
    fn raising_the_feet_loads_the_hands_and_raising_the_hands_unloads_them() {
        let order = [
            (61.0, 0.0),
            (30.0, 0.0),
            (0.0, 0.0),
            (0.0, 30.0),
            (0.0, 61.0),
        ]
        .map(|(h, f)| share("push-up", h, f, &MALE));
        assert!(order.windows(2).all(|w| w[0] < w[1]), "{order:?}");
        assert!(order.iter().all(|s| (0.0..=1.0).contains(s)));
    }

    #[test]
    fn upside_down_is_seen() {
        assert_eq!(
            pose(&posture("handstand", 0.0, 0.0), &MALE)
                .expect("stands")
                .inversion(),
            2
        );
        assert_eq!(share("handstand", 0.0, 0.0, &MALE), 1.0);
        assert_eq!(
            pose(&posture("plank", 0.0, 0.0), &MALE)
                .expect("stands")
                .inversion(),
            0
        );
        assert!(
            pose(&posture("pike", 0.0, 0.0), &MALE)
                .expect("stands")
                .inversion()
                >= 1
        );
        assert_eq!(
            pose(&posture("support", 0.0, 0.0), &MALE)
                .expect("stands")
                .inversion(),
            0
        );
        assert_eq!(
            pose(&posture("hang", 0.0, 0.0), &MALE)
                .expect("stands")
                .inversion(),
            0
        );
    }

    #[test]
    fn a_posture_that_cannot_close_says_by_how_much() {
        match pose(&posture("push-up", 0.0, 400.0), &MALE) {
            Err(PostureError::Open { short_by }) => assert!(short_by > 100.0),
            other => panic!("{other:?}"),
        }
    }
}
