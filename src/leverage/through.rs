//! A pose that goes through the floor, the bar, a wall or itself.

use super::balance::{Pose, Prop};
use super::plane::{Point, part_way};
use super::posture::Solved;
use crate::curriculum::posture::Touch;

/// What a part of the body goes through, and by how much.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Through {
    /// The named part lies so many centimetres under the floor.
    Floor(&'static str, f64),
    /// The named part is where the bar is.
    Bar(&'static str),
    Wall(&'static str, f64),
    /// A joint is folded further than flesh allows: at so many degrees.
    Itself(&'static str, f64),
}

/// Half thicknesses as shares of stature, and how far a part may sink before it is said.
const HEAD: f64 = 0.05;
const TRUNK: f64 = 0.035;
const LIMB: f64 = 0.015;
const SLACK_CM: f64 = 2.5;

/// Less than this no hip, knee or elbow folds, in degrees.
const FOLDED: [(&str, f64); 3] = [("hip", 15.0), ("knee", 22.0), ("elbow", 15.0)];

/// The first thing that a solved posture goes through.
pub fn through(solved: &Solved) -> Option<Through> {
    solved.poses().find_map(one)
}

fn parts(pose: &Pose) -> Vec<(&'static str, Point, f64)> {
    let p = &pose.points;
    let cm = pose.stature_cm;
    let head = part_way(p.vertex, p.shoulder, HEAD * cm / 34.0);
    let mut parts = vec![
        ("head", head, HEAD * cm),
        ("shoulder", p.shoulder, TRUNK * cm),
        ("trunk", p.waist, TRUNK * cm),
        ("hip", p.hip, TRUNK * cm),
    ];
    for arm in [p.first(), p.other] {
        parts.push(("elbow", arm.elbow, LIMB * cm));
        parts.push(("hand", arm.wrist, LIMB * cm / 2.0));
    }
    for leg in p.legs {
        parts.push(("knee", leg.knee, LIMB * cm));
        parts.push(("foot", leg.ankle, LIMB * cm));
        parts.push(("foot", leg.toes, 0.0));
    }
    parts
}

fn one(pose: &Pose) -> Option<Through> {
    let parts = parts(pose);
    let deepest = |sunk: &dyn Fn(Point, f64) -> f64| {
        parts
            .iter()
            .map(|(name, at, thick)| (*name, sunk(*at, *thick)))
            .max_by(|a, b| a.1.total_cmp(&b.1))
            .filter(|(_, by)| *by > SLACK_CM)
    };
    if pose.on_floor()
        && let Some((name, by)) = deepest(&|at, thick| thick - at.1)
    {
        return Some(Through::Floor(name, by.round()));
    }
    let face = wall(pose);
    if let Some((face, right)) = face {
        let side = if right { 1.0 } else { -1.0 };
        if let Some((name, by)) = deepest(&|at, thick| side * (at.0 - face) + thick * 0.7) {
            return Some(Through::Wall(name, by.round()));
        }
    }
    bar(pose).or_else(|| folded(pose))
}

/// The face of the wall, and whether it stands to the right.
fn wall(pose: &Pose) -> Option<(f64, bool)> {
    pose.props.iter().find_map(|prop| match prop {
        Prop::WallLeft(x) => Some((*x, false)),
        Prop::WallRight(x) => Some((*x, true)),
        _ => None,
    })
}

/// The bar runs across the body: it cannot lie inside trunk or head.
fn bar(pose: &Pose) -> Option<Through> {
    let at = pose.hands.filter(|_| pose.touches.contains(&Touch::Bar))?;
    let p = &pose.points;
    let cm = pose.stature_cm;
    let head = part_way(p.shoulder, p.vertex, 0.5);
    [
        ("head", head, p.vertex, 0.018),
        ("trunk", p.shoulder, p.chest, 0.02),
        ("trunk", p.chest, p.waist, 0.02),
        ("trunk", p.waist, p.hip, 0.02),
    ]
    .iter()
    .find(|(_, from, to, thick)| distance(at, *from, *to) < thick * cm)
    .map(|(name, ..)| Through::Bar(name))
}

fn distance(at: Point, from: Point, to: Point) -> f64 {
    let way = (to.0 - from.0, to.1 - from.1);
    let long = (way.0 * way.0 + way.1 * way.1).max(1e-9);
    let share = (((at.0 - from.0) * way.0 + (at.1 - from.1) * way.1) / long).clamp(0.0, 1.0);
    let near = part_way(from, to, share);
    libm::hypot(at.0 - near.0, at.1 - near.1)
}

fn folded(pose: &Pose) -> Option<Through> {
    let p = &pose.points;
    let angle = |from: Point, joint: Point, to: Point| {
        let way = |q: Point| libm::atan2(q.1 - joint.1, q.0 - joint.0).to_degrees();
        let apart = (way(from) - way(to)).abs();
        apart.min(360.0 - apart)
    };
    let [hip, knee, elbow] = FOLDED;
    let legs = p.legs.iter().flat_map(|leg| {
        [
            (hip, angle(p.shoulder, p.hip, leg.knee)),
            (knee, angle(p.hip, leg.knee, leg.ankle)),
        ]
    });
    let arms = [p.first(), p.other].map(|arm| (elbow, angle(p.shoulder, arm.elbow, arm.wrist)));
    legs.chain(arms)
        .find(|((_, least), found)| found < least)
        .map(|((name, _), found)| Through::Itself(name, found.round()))
}
