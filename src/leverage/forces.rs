//! What hands and feet push with, and what the joints between them hold.

use super::balance::{PostureError, Setting, Stance, Turning};
use super::body::Body;
use super::plane::{Point, moment};
use super::shape::Points;
use crate::curriculum::posture::Touch;

/// What the contacts push with, in body weights.
#[derive(Clone, Copy, Default)]
pub(super) struct Forces {
    pub hands: Option<Point>,
    pub feet: Option<Point>,
}

/// What hands and feet push with, or nothing where balance does not decide it: between head and hands a finger's width of
/// lean moves a third of the weight.
pub(super) fn forces(
    hands: Option<Point>,
    feet: Option<Point>,
    other: Option<Point>,
    wall: bool,
    centre: Point,
) -> Result<Option<Forces>, PostureError> {
    let up = |share: f64| Some((0.0, share));
    Ok(Some(match (hands, other, feet) {
        (Some(hands), None, Some(feet)) if wall => {
            let push = (centre.0 - hands.0) / (feet.1 - hands.1);
            if push < 0.0 {
                return Err(tips(hands.0 - centre.0));
            }
            Forces {
                hands: Some((push, 1.0)),
                feet: Some((-push, 0.0)),
            }
        }
        (Some(hands), None, Some(feet)) => {
            let share = shared(hands, feet, centre)?;
            Forces {
                hands: up(share),
                feet: up(1.0 - share),
            }
        }
        (None, Some(other), Some(feet)) => Forces {
            hands: None,
            feet: up(1.0 - shared(other, feet, centre)?),
        },
        (Some(_), None, None) => Forces {
            hands: up(1.0),
            feet: None,
        },
        (None, None, Some(_)) => Forces {
            hands: None,
            feet: up(1.0),
        },
        (None, Some(_), None) => Forces::default(),
        _ => return Ok(None),
    }))
}

/// The share on one of two contacts that both push straight up.
fn shared(one: Point, other: Point, centre: Point) -> Result<f64, PostureError> {
    let span = other.0 - one.0;
    let share = (other.0 - centre.0) / span;
    if !(-1e-9..=1.0 + 1e-9).contains(&share) {
        let past = (centre.0 - one.0).abs().min((centre.0 - other.0).abs());
        return Err(tips(past));
    }
    Ok(share.clamp(0.0, 1.0))
}

fn tips(past: f64) -> PostureError {
    PostureError::Tips {
        past_by: (past * 10.0).round() / 10.0,
    }
}

/// Moments of arms and hands about the shoulder, of legs and feet about the hip; of a leg that stands alone, that leg's.
pub(super) fn turning(
    points: &Points,
    body: &Body,
    setting: &Setting,
    forces: Forces,
    hands: Option<Point>,
    feet: Option<Point>,
) -> Turning {
    let masses = points.masses(body);
    let weights = |about: Point, masses: &[(f64, Point)]| -> f64 {
        masses
            .iter()
            .map(|(share, at)| moment(about, *at, (0.0, -share)))
            .sum()
    };
    let pushed = |about: Point, at: Option<Point>, force: Option<Point>| match (at, force) {
        (Some(at), Some(force)) => moment(about, at, force),
        _ => 0.0,
    };
    let standing = if setting.stance == Stance::OneFlat && feet.is_some() {
        1
    } else {
        2
    };
    // From a joint outwards: the parts of both arms, or of the legs that stand, from so many on.
    let arms = |about: Point, from: usize| -> f64 {
        masses.arms.iter().map(|a| weights(about, &a[from..])).sum()
    };
    let legs = |about: Point, from: usize| -> f64 {
        let standing = &masses.legs[..standing];
        standing.iter().map(|l| weights(about, &l[from..])).sum()
    };
    let hand = |about: Point| pushed(about, hands, forces.hands);
    let foot = |about: Point| pushed(about, feet, forces.feet);
    let (elbow, wrist, knee) = (points.elbow, points.wrist, points.legs[0].knee);
    // On the knees nothing turns them but the shins, which lie.
    let kneels = setting.touches(Touch::Knees);
    Turning {
        shoulder: (arms(points.shoulder, 0) + hand(points.shoulder)).abs(),
        elbow: (arms(elbow, 1) + hand(elbow)).abs(),
        wrist: (arms(wrist, 2) + hand(wrist)).abs(),
        hip: (legs(points.hip, 0) + foot(points.hip)).abs(),
        knee: if kneels {
            0.0
        } else {
            (legs(knee, 1) + foot(knee)).abs()
        },
    }
}
