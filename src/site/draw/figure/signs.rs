//! What a small figure says besides its pose: where the movement comes from, which way it goes, and where it is held.

use super::front;
use super::pen::{Bounds, number, point};
use super::person::{cm, offset, unit};
use super::scene::Layer;
use crate::curriculum::words::End;
use crate::leverage::{Arm, Leg, Point, Pose, Solved};
use std::fmt::Write;

/// Half thicknesses of a body of plain strokes, as shares of stature: trunk and head, thighs, and what is thinner.
const THICK: [f64; 3] = [0.052, 0.042, 0.024];

/// A body as lines through its joints, of three thicknesses.
type Bones = [Vec<Vec<Point>>; 3];

/// Arms and legs, each with where it begins.
type Limbs = (Vec<(Point, Arm)>, Vec<(Point, Leg)>);

fn bones(solved: &Solved, pose: &Pose) -> Bones {
    let flat = front::faces(solved);
    let turned;
    let p = match flat {
        true => {
            turned = front::turned(pose);
            &turned.points
        }
        false => &pose.points,
    };
    let up = unit(p.shoulder, p.vertex);
    let head = vec![
        offset(p.vertex, up, -cm(0.085)),
        offset(p.vertex, up, -cm(0.05)),
    ];
    let (arms, legs): Limbs = if flat {
        let both = [-1.0, 1.0];
        (
            both.iter().map(|side| front::arm(pose, *side)).collect(),
            both.iter().map(|side| front::leg(pose, *side)).collect(),
        )
    } else {
        let far = |one: Point, other: Point| libm::hypot(one.0 - other.0, one.1 - other.1) > 4.0;
        let mut arms = vec![(p.root, p.first())];
        if far(p.fingers, p.other.fingers) {
            arms.push((p.root, p.other));
        }
        let mut legs = vec![(p.hip, p.legs[0])];
        if far(p.legs[0].ankle, p.legs[1].ankle) {
            legs.push((p.hip, p.legs[1]));
        }
        (arms, legs)
    };
    let trunk = vec![
        offset(p.shoulder, unit(p.shoulder, p.chest), cm(0.02)),
        p.chest,
        p.waist,
        p.hip,
    ];
    let neck = vec![p.shoulder, offset(p.vertex, up, -cm(0.1))];
    [
        vec![head, trunk],
        legs.iter().map(|(hip, leg)| vec![*hip, leg.knee]).collect(),
        arms.iter()
            .map(|(root, arm)| vec![*root, arm.elbow, arm.wrist, arm.fingers])
            .chain([neck])
            .chain(
                legs.iter()
                    .map(|(_, leg)| vec![leg.knee, leg.ankle, leg.toes]),
            )
            .collect(),
    ]
}

/// The pale body of the other end; of what is only lowered it is where it comes from.
pub fn ghost(solved: &Solved, pose: &Pose, lowered: bool) -> Layer {
    let mut layer = Layer::new();
    let bones = bones(solved, pose);
    layer.svg.push_str(match lowered {
        true => "<g class=\"figure-ghost figure-from\">",
        false => "<g class=\"figure-ghost\">",
    });
    for (lines, thick) in bones.iter().zip(THICK) {
        let wide = cm(thick);
        let mut path = String::new();
        for line in lines {
            for (i, at) in line.iter().enumerate() {
                layer.bounds.include(*at, wide);
                let whole = (at.0.round(), at.1.round());
                let _ = write!(path, "{}{}", if i == 0 { 'M' } else { 'L' }, point(whole));
            }
        }
        let _ = write!(
            layer.svg,
            "<path stroke-width=\"{}\" d=\"{path}\"/>",
            number((2.0 * wide).round())
        );
    }
    layer.svg.push_str("</g>");
    layer
}

/// Which way a movement goes.
#[derive(Clone, Copy, Debug)]
pub struct Way {
    /// About where what moves most moves.
    pub about: Point,
    /// Of length 1.
    pub towards: Point,
    /// How far it goes, in centimetres.
    pub far: f64,
}

/// From one pose to another: the trunk's way where it moves nearly as far as what moves most.
pub fn way(from: &Pose, to: &Pose) -> Way {
    let joints = |pose: &Pose| {
        let p = &pose.points;
        [
            p.shoulder,
            p.hip,
            p.legs[0].knee,
            p.legs[1].knee,
            p.legs[0].toes,
            p.legs[1].toes,
            p.fingers,
            p.other.fingers,
        ]
    };
    let ways = joints(from).into_iter().zip(joints(to)).map(|(a, b)| {
        let (x, y) = (b.0 - a.0, b.1 - a.1);
        let middle = ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
        (middle, (x, y), libm::hypot(x, y))
    });
    let ways: Vec<(Point, Point, f64)> = ways.collect();
    let most = ways.iter().fold(0.0, |most: f64, way| most.max(way.2));
    let told = ways
        .iter()
        .find(|way| way.2 > 0.8 * most)
        .unwrap_or(&ways[0]);
    let (about, (x, y), far) = *told;
    // Nearly straight up or down is drawn so.
    let towards = match x.abs() < 0.8 * y.abs() {
        true => (0.0, y.signum()),
        false => unit((0.0, 0.0), (x, y)),
    };
    Way {
        about,
        towards,
        far,
    }
}

/// What is in the way of a sign: lines with half their thickness.
pub struct Room {
    taken: Vec<(Point, Point, f64)>,
    pale: Vec<(Point, Point, f64)>,
    bounds: Bounds,
}

impl Way {
    /// The same way upwards, or downwards.
    pub fn turned(mut self, up: bool) -> Way {
        if (self.towards.1 > 0.0) != up {
            self.towards = (-self.towards.0, -self.towards.1);
        }
        self.steep()
    }

    /// Straight up or down, where it is more so than to a side.
    pub fn steep(mut self) -> Way {
        let (x, y) = self.towards;
        if x.abs() < 1.3 * y.abs() {
            self.towards = (0.0, y.signum());
        }
        self
    }
}

impl Room {
    pub fn new(layer: &Layer, solved: &Solved, pose: &Pose, ghost: Option<&Pose>) -> Room {
        let lines = |pose: &Pose| -> Vec<(Point, Point, f64)> {
            let bones = bones(solved, pose);
            let mut out = Vec::new();
            for (lines, thick) in bones.iter().zip(THICK) {
                for pair in lines.iter().flat_map(|line| line.windows(2)) {
                    out.push((pair[0], pair[1], cm(thick)));
                }
            }
            out
        };
        let mut taken = lines(pose);
        taken.extend(layer.solid.iter().map(|(a, b)| (*a, *b, 2.0)));
        Room {
            taken,
            pale: ghost.map(lines).unwrap_or_default(),
            bounds: layer.bounds,
        }
    }

    /// How near a line comes to what is there.
    fn clear(taken: &[(Point, Point, f64)], a: Point, b: Point) -> f64 {
        let along = |share: f64| (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share);
        let ends = (0..=6).map(|i| along(f64::from(i) / 6.0));
        ends.map(|at| {
            taken
                .iter()
                .map(|(from, to, thick)| distance(at, *from, *to) - thick)
                .fold(f64::INFINITY, f64::min)
        })
        .fold(f64::INFINITY, f64::min)
    }

    /// The free place for a line of some length that is nearest to where something moves.
    fn place(&self, way: Way, long: f64, around: f64) -> (Point, Point) {
        let b = self.bounds;
        let side = (b.right - b.left).max(b.top - b.bottom);
        let middle = ((b.left + b.right) / 2.0, (b.top + b.bottom) / 2.0);
        let mut best = (f64::INFINITY, ((0.0, 0.0), (0.0, 0.0)));
        let reach = (side / 2.0 + around * 2.0).max(60.0);
        let steps = (2.0 * reach / 4.0) as i32;
        for i in 0..=steps {
            for j in 0..=steps {
                let at = (
                    middle.0 - reach + 4.0 * f64::from(i),
                    middle.1 - reach + 4.0 * f64::from(j),
                );
                let half = (way.towards.0 * long / 2.0, way.towards.1 * long / 2.0);
                let (from, to) = (
                    (at.0 - half.0, at.1 - half.1),
                    (at.0 + half.0, at.1 + half.1),
                );
                let near = libm::hypot(at.0 - way.about.0, at.1 - way.about.1);
                // Past the square that the body fills, the whole figure would be smaller.
                let past = [from, to].map(|end| {
                    let out = |by: f64| (by.abs() + around - side / 2.0).max(0.0);
                    out(end.0 - middle.0) + out(end.1 - middle.1)
                });
                let cost = near + 6.0 * past[0].max(past[1]);
                if cost >= best.0 || Room::clear(&self.taken, from, to) < around {
                    continue;
                }
                let cost = cost + 1.5 * (around * 0.5 - Room::clear(&self.pale, from, to)).max(0.0);
                if cost < best.0 {
                    best = (cost, (from, to));
                }
            }
        }
        best.1
    }
}

fn distance(at: Point, from: Point, to: Point) -> f64 {
    let (x, y) = (to.0 - from.0, to.1 - from.1);
    let long = (x * x + y * y).max(1e-9);
    let share = (((at.0 - from.0) * x + (at.1 - from.1) * y) / long).clamp(0.0, 1.0);
    libm::hypot(at.0 - from.0 - share * x, at.1 - from.1 - share * y)
}

/// An arrow, and two short bars at the end where each rep stands still.
pub fn arrow(layer: &mut Layer, room: &Room, way: Way, held: Option<End>, unit: f64) {
    let paused = if held.is_some() { 16.0 } else { 0.0 };
    // The longer the way, the longer the arrow.
    let long = (1.4 * way.far / unit).clamp(19.5, 36.0);
    let (from, to) = room.place(way, (long + paused) * unit, 9.0 * unit);
    let ahead = match held {
        // The end of the arrow that is higher.
        Some(End::Top) => way.towards.1 >= 0.0,
        _ => way.towards.1 < 0.0,
    };
    let cut = paused * unit;
    let (from, to) = match (held, ahead) {
        (None, _) => (from, to),
        (_, true) => (from, offset(to, way.towards, -cut)),
        (_, false) => (offset(from, way.towards, cut), to),
    };
    let across = (way.towards.1, -way.towards.0);
    let barb = |side: f64| {
        offset(
            offset(to, way.towards, -8.0 * unit),
            across,
            side * 8.0 * unit,
        )
    };
    let mut path = format!(
        "M{}L{}M{}L{}L{}",
        point(from),
        point(to),
        point(barb(1.0)),
        point(to),
        point(barb(-1.0))
    );
    if held.is_some() {
        let end = match ahead {
            true => offset(to, way.towards, 11.0 * unit),
            false => offset(from, way.towards, -11.0 * unit),
        };
        bars(&mut path, layer, end, way.towards, unit);
    }
    layer.bounds.include(from, 3.0 * unit);
    layer.bounds.include(to, 3.0 * unit);
    for side in [-1.0, 1.0] {
        layer.bounds.include(barb(side), 1.5 * unit);
    }
    sign(layer, &path);
}

/// Two short bars alone: held where the movement ends.
pub fn still(layer: &mut Layer, room: &Room, way: Way, unit: f64) {
    let upright = Way {
        towards: (0.0, 1.0),
        ..way
    };
    let (from, to) = room.place(upright, 11.0 * unit, 8.0 * unit);
    let middle = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
    let mut path = String::new();
    bars(&mut path, layer, middle, upright.towards, unit);
    sign(layer, &path);
}

fn bars(path: &mut String, layer: &mut Layer, at: Point, along: Point, unit: f64) {
    let across = (along.1, -along.0);
    for side in [-3.2, 3.2] {
        let middle = offset(at, across, side * unit);
        let (from, to) = (
            offset(middle, along, -5.5 * unit),
            offset(middle, along, 5.5 * unit),
        );
        layer.bounds.include(from, 1.5 * unit);
        layer.bounds.include(to, 1.5 * unit);
        let _ = write!(path, "M{}L{}", point(from), point(to));
    }
}

fn sign(layer: &mut Layer, path: &str) {
    let _ = write!(layer.svg, "<path class=\"figure-sign\" d=\"{path}\"/>");
}
