//! From a declared posture to its two ends in space.

use super::balance::{Hold, Pose, PostureError, Setting, Turning, stand};
use super::body::{Body, STANDARD};
use super::named::{Filled, Part, filled};
use super::place::FootAt;
use super::plane::{Point, Turn};
use super::shape::Shape;
use crate::curriculum::posture::{Posture, Touch};

/// A posture that stands: its start, and its other end where the movement has one.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// The shipped posture that it is, if it is one.
    pub named: Option<&'static str>,
    pub touches: Vec<Touch>,
    /// Centimetres above the floor or the grip's own height.
    pub hands_at: f64,
    /// The same; `None` where the coach says nothing.
    pub feet_at: Option<f64>,
    /// Degrees that each leg points out of the plane.
    pub legs_apart: f64,
    pub start: Pose,
    /// What is passed on the way.
    pub between: Vec<Pose>,
    pub end: Option<Pose>,
}

impl Solved {
    pub fn poses(&self) -> impl Iterator<Item = &Pose> {
        std::iter::once(&self.start)
            .chain(&self.between)
            .chain(&self.end)
    }

    /// The most inverted of its ends; see [`Pose::inversion`].
    pub fn inversion(&self) -> u8 {
        self.poses().map(Pose::inversion).max().unwrap_or(0)
    }

    /// The larger turning load of its ends at each joint, in body weight x centimetres.
    pub fn turning(&self) -> Option<Turning> {
        self.poses()
            .map(|p| p.turning)
            .reduce(|one, other| Some(one?.max(other?)))
            .flatten()
    }
}

/// Stands a body in a posture.
///
/// # Errors
/// An unknown name; contacts that cannot be reached; a centre of mass beyond its support; contacts that say nothing.
pub fn solve_for(posture: &Posture, body: &Body) -> Result<Solved, PostureError> {
    let filled = adapted(posture, body)?;
    let mut poses = filled
        .keys
        .iter()
        .map(|(setting, shape)| stand(setting, shape, body))
        .collect::<Result<Vec<Pose>, PostureError>>()?
        .into_iter();
    let (setting, shape) = &filled.keys[0];
    let start = poses
        .next()
        .ok_or_else(|| PostureError::Unsupported(setting.touches.clone()))?;
    let end = poses.next_back();
    Ok(Solved {
        named: filled.named.map(|n| n.name),
        touches: setting.touches.clone(),
        hands_at: setting.hands_at,
        feet_at: setting.feet_at,
        legs_apart: shape.legs_apart,
        start,
        between: poses.collect(),
        end,
    })
}

/// Poses on the way through a posture's ends, in order: each of them, and `between` more from one to the next, as far as they
/// stand. One pose, or none, where nothing moves.
pub fn on_the_way(posture: &Posture, between: usize, body: &Body) -> Vec<Pose> {
    let Ok(filled) = adapted(posture, body) else {
        return Vec::new();
    };
    let steps = between + 1;
    let pairs = filled.keys.windows(2).flat_map(|pair| {
        (0..steps).filter_map(|step| {
            let [(from, shape), (to, other)] = pair else {
                return None;
            };
            if step == 0 {
                return stand(from, shape, body).ok();
            }
            let share = step as f64 / steps as f64;
            let pose = stand(&mix(from, to, share), &shape.part_way(other, share), body).ok()?;
            let ends = [stand(from, shape, body).ok()?, stand(to, other, body).ok()?];
            Some(evenly(pose, &ends, share))
        })
    });
    let last = filled.keys.last();
    pairs
        .chain(last.and_then(|(setting, shape)| stand(setting, shape, body).ok()))
        .collect()
}

/// On the way between two supports the trunk turns evenly: with the centre of mass nearly in the hands, balance says little of it.
fn evenly(mut pose: Pose, ends: &[Pose; 2], share: f64) -> Pose {
    let supports = |pose: &Pose| {
        let hands = pose.hands.filter(|_| pose.feet.is_none());
        hands.filter(|hands| pose.points.shoulder.1 > hands.1)
    };
    let (Some(_), Some(_), Some(hands)) = (supports(&ends[0]), supports(&ends[1]), supports(&pose))
    else {
        return pose;
    };
    let trunk = |pose: &Pose| {
        let p = &pose.points;
        libm::atan2(p.shoulder.1 - p.hip.1, p.shoulder.0 - p.hip.0)
    };
    let [from, to] = [trunk(&ends[0]), trunk(&ends[1])];
    let turn = Turn {
        by: from + (to - from) * share - trunk(&pose),
        about: hands,
        to: hands,
    };
    pose.points = pose.points.map(|at| turn.of(at));
    pose.centre = turn.of(pose.centre);
    pose
}

/// The keys of a posture, fitted to its heights and to how deep the coach says it is.
fn adapted(posture: &Posture, body: &Body) -> Result<Filled, PostureError> {
    let mut filled = filled(posture)?;
    if filled.adapts {
        let (setting, shape) = &filled.keys[0];
        let less = floor_lean(setting, shape, body)? * stacked(setting);
        let top = filled.keys[0].1;
        for (setting, shape) in &mut filled.keys {
            *shape = over_the_floor(setting, (&top, shape), less, body)?;
        }
    }
    if let Some(part) = filled.part_way {
        deepen(&mut filled, part, body)?;
    }
    Ok(filled)
}

/// The share between two values at which something reaches a wanted value, from where it is below it to where it is above.
fn halve(mut below: f64, mut above: f64, wanted: f64, of: impl Fn(f64) -> Option<f64>) -> f64 {
    for _ in 0..50 {
        let middle = (below + above) / 2.0;
        match of(middle) {
            Some(value) if value >= wanted => above = middle,
            _ => below = middle,
        }
    }
    above
}

/// Feet this high bring the hips over the hands: common practice, no source.
const STACKED_CM: f64 = 85.0;

/// How much of the floor's lean the height of the feet takes away, 0 to 1.
fn stacked(setting: &Setting) -> f64 {
    (setting.feet_at.unwrap_or(0.0) / STACKED_CM).clamp(0.0, 1.0)
}

/// How far the trunk leans from upside down towards the hands, in degrees.
fn lean(setting: &Setting, shape: &Shape, body: &Body) -> Result<f64, PostureError> {
    let p = stand(setting, shape, body)?.points;
    Ok(libm::atan2(p.hip.0 - p.shoulder.0, p.hip.1 - p.shoulder.1).to_degrees())
}

fn floor_lean(setting: &Setting, shape: &Shape, body: &Body) -> Result<f64, PostureError> {
    let floor = Setting {
        feet_at: None,
        ..setting.clone()
    };
    lean(&floor, shape, body)
}

/// As deep as the head leaves room: the steeper the trunk, the sooner it meets the floor.
fn over_the_floor(
    setting: &Setting,
    (top, bottom): (&Shape, &Shape),
    less: f64,
    body: &Body,
) -> Result<Shape, PostureError> {
    for twentieth in (1..=20).rev() {
        let shape = top.part_way(bottom, f64::from(twentieth) / 20.0);
        let shape = leaning(setting, &shape, less, body)?;
        if stand(setting, &shape, body)?.points.vertex.1 > 0.0 {
            return Ok(shape);
        }
    }
    leaning(setting, top, less, body)
}

/// With the feet raised the hips bend until the trunk leans so much less than from the floor.
fn leaning(
    setting: &Setting,
    shape: &Shape,
    less: f64,
    body: &Body,
) -> Result<Shape, PostureError> {
    let wanted = floor_lean(setting, shape, body)? - less;
    let bent = |hip: f64| {
        let mut bent = *shape;
        bent.legs.iter_mut().for_each(|leg| leg.hip = hip);
        bent
    };
    // Where the hips fold too far to reach the box there is no lean yet.
    let hip = halve(60.0, 180.0, wanted, |hip| {
        lean(setting, &bent(hip), body).ok()
    });
    let open = bent(hip);
    stand(setting, &open, body)?;
    Ok(open)
}

/// Brings the other end part of the way from the start, to where elbow or knee is bent as the coach says.
fn deepen(filled: &mut Filled, part: Part, body: &Body) -> Result<(), PostureError> {
    let last = filled.keys.len() - 1;
    let (from, to) = (filled.keys[0].clone(), filled.keys[last].clone());
    let mixed = |share: f64| (mix(&from.0, &to.0, share), from.1.part_way(&to.1, share));
    let bent = |share: f64| {
        let (setting, shape) = mixed(share);
        let p = stand(&setting, &shape, body).ok()?.points;
        let straight = match part {
            Part::Elbow(_) => angle(p.shoulder, p.elbow, p.wrist),
            Part::Knee(_) => angle(p.hip, p.legs[0].knee, p.legs[0].ankle),
        };
        Some(180.0 - straight)
    };
    let (Part::Elbow(wanted) | Part::Knee(wanted)) = part;
    let share = halve(0.0, 1.0, 180.0 - wanted, bent);
    filled.keys[last] = mixed(share);
    Ok(())
}

fn mix(from: &Setting, to: &Setting, share: f64) -> Setting {
    let number = |a: f64, b: f64| a + (b - a) * share;
    let point = |a: Point, b: Point| (number(a.0, b.0), number(a.1, b.1));
    let hold = match (from.hold, to.hold) {
        (Hold::Placed { trunk: a, hip: p }, Hold::Placed { trunk: b, hip: q }) => Hold::Placed {
            trunk: number(a, b),
            hip: point(p, q),
        },
        (_, hold) => hold,
    };
    let feet = |i: usize| match (from.feet_to[i], to.feet_to[i]) {
        (Some(a), Some(b)) => Some(FootAt {
            ball: point(a.ball, b.ball),
            heel_up: number(a.heel_up, b.heel_up),
        }),
        (_, b) => b,
    };
    let hands = |i: usize| match (from.hands_to[i], to.hands_to[i]) {
        (Some(a), Some(b)) => Some(point(a, b)),
        (_, b) => b,
    };
    Setting {
        hold,
        feet_to: [feet(0), feet(1)],
        hands_to: [hands(0), hands(1)],
        ..to.clone()
    }
}

/// The angle at a joint between its two neighbours, in degrees.
fn angle(from: Point, joint: Point, to: Point) -> f64 {
    let way = |p: Point| libm::atan2(p.1 - joint.1, p.0 - joint.0).to_degrees();
    let apart = (way(from) - way(to)).abs();
    apart.min(360.0 - apart)
}

/// Where a declared posture has the arms, and what it touches: told without standing a body in it.
#[derive(Clone, Debug, PartialEq)]
pub struct ArmsOf {
    /// Degrees between upper arm and trunk at the start, and at the other end where there is one.
    pub angles: Vec<f64>,
    /// Degrees at the elbow, likewise: 180 is straight.
    pub elbows: Vec<f64>,
    pub touches: Vec<Touch>,
}

/// Where a posture has the arms; `None` where its name is unknown.
pub fn arms(posture: &Posture) -> Option<ArmsOf> {
    let filled = filled(posture).ok()?;
    // Hands that are put somewhere have no angle of their own before the body stands.
    let free = || {
        filled
            .keys
            .iter()
            .filter(|(setting, _)| setting.hands_to[0].is_none())
    };
    Some(ArmsOf {
        angles: free().map(|(_, shape)| shape.shoulder).collect(),
        elbows: free().map(|(_, shape)| shape.elbow).collect(),
        touches: filled.keys[0].0.touches.clone(),
    })
}

/// Stands the [`STANDARD`] body in a posture: what findings, tables and figures use.
///
/// # Errors
/// As [`solve_for`].
pub fn solve(posture: &Posture) -> Result<Solved, PostureError> {
    solve_for(posture, &STANDARD)
}
