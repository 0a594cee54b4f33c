//! What carries a body and what it holds: floor, boxes, walls, bars, rings, weights; behind it and before it.

use super::front;
use super::pen::{Bounds, point};
use super::person;
use super::scene::Layer;
use crate::curriculum::posture::{Gear, Touch};
use crate::leverage::{Point, Pose, Prop, Solved};
use std::fmt::Write;

/// Half the width of what stands under hands or feet.
const BOX: f64 = 17.0;

/// The radius of a ring.
pub fn ring_of(layer: &Layer) -> f64 {
    layer.size(9.0, 13.0)
}

const GROUND: &str = "figure-ground";
const GRIP: &str = "figure-grip";
const FAR_GRIP: &str = "figure-grip figure-behind";

/// Floor, boxes, walls and what else stands about.
pub fn ground(layer: &mut Layer, pose: &Pose, body: Bounds) {
    let touches = |touch: Touch| pose.touches.contains(&touch);
    let floored = pose.on_floor();
    raised(layer, pose);
    let mut right = body.right + 6.0;
    let mut left = body.left - 6.0;
    let feet = pose
        .points
        .legs
        .iter()
        .fold(f64::NEG_INFINITY, |most, leg| {
            most.max(leg.toes.0).max(leg.heel.0).max(leg.ball.0)
        });
    let top = body.top.clamp(90.0, 210.0) + 4.0;
    let mut wall = |layer: &mut Layer, face: f64, side: f64| {
        let back = face + layer.size(5.0, 12.0) * side;
        layer.block(GROUND, face.min(back), face.max(back), 0.0, top);
        (left, right) = (left.min(back), right.max(back));
        if side > 0.0 {
            right = back;
        } else {
            left = back;
        }
    };
    if touches(Touch::Wall) && !pose.props.iter().any(|p| matches!(p, Prop::WallLeft(_))) {
        wall(layer, feet + 1.2, 1.0);
    }
    for prop in pose.props {
        match *prop {
            Prop::Box(from, to, height) => layer.block(GROUND, from, to, 0.0, height),
            Prop::Chair(from, to, seat) => chair(layer, from, to, seat),
            Prop::WallLeft(face) => wall(layer, face, -1.0),
            Prop::WallRight(face) => wall(layer, face, 1.0),
            Prop::WallAtFeet if !touches(Touch::Wall) => wall(layer, feet + 1.2, 1.0),
            Prop::Post(x) => {
                let half = layer.size(2.0, 4.5);
                layer.block(GROUND, x - half, x + half, 0.0, 150.0);
            }
            Prop::Mat(from, to) => layer.block("figure-ground figure-mat", from, to, -3.0, -0.6),
            Prop::WallAtFeet | Prop::Floor => {}
        }
    }
    if floored {
        let from = left.min(layer.bounds.left - 4.0);
        let to = right.max(layer.bounds.right + 4.0);
        layer.line("figure-ground figure-floor", (from, -0.6), (to, -0.6));
    }
}

/// What raises hands and feet.
fn raised(layer: &mut Layer, pose: &Pose) {
    let touches = |touch: Touch| pose.touches.contains(&touch);
    if touches(Touch::Hands)
        && pose.hands_at > 0.0
        && let Some(at) = pose.hands
    {
        if pose.gear.contains(&Gear::Handles) {
            handles(layer, at, pose.hands_at);
        } else {
            let ahead = if pose.points.fingers.0 < at.0 {
                -8.0
            } else {
                8.0
            };
            let middle = at.0 + ahead;
            layer.block(GROUND, middle - BOX, middle + BOX, 0.0, pose.hands_at);
        }
    }
    if let (Some(at), Some(height)) = (pose.feet, pose.feet_at)
        && height > 0.0
        && !touches(Touch::Wall)
    {
        layer.block(GROUND, at.0 - BOX, at.0 + BOX, 0.0, height);
    }
}

fn chair(layer: &mut Layer, from: f64, to: f64, seat: f64) {
    layer.block(GROUND, from, to, seat - 3.0, seat);
    layer.line(GRIP, (from + 2.0, seat - 4.0), (from + 2.0, 0.0));
    layer.line(GRIP, (to - 2.0, seat + 38.0), (to - 2.0, 0.0));
}

fn handles(layer: &mut Layer, at: Point, height: f64) {
    let (x, top) = (at.0, height);
    let half = layer.size(8.0, 15.0);
    layer.line(GRIP, (x - half, top), (x + half, top));
    for foot in [x - half + 2.0, x + half - 2.0] {
        layer.line(GRIP, (foot, top), (foot, 0.0));
    }
}

/// How far rings hang below what holds their straps, and bars stand above the ground, where nothing else says.
fn reach_of(solved: &Solved, y: f64) -> (f64, f64) {
    let mut ends = Bounds::NONE;
    for p in solved.poses().map(|pose| &pose.points) {
        [p.vertex, p.hip, p.legs[0].knee, p.legs[0].toes]
            .iter()
            .for_each(|at| ends.include(*at, 0.0));
    }
    let top = (ends.top + 10.0).max(y + 36.0);
    (top, (ends.bottom - 5.0).min(y - 30.0))
}

/// The middle of a ring: above the hand, or round a hand that lies in it with the wrist on its lower edge.
fn ring(pose: &Pose, (x, y): Point, radius: f64) -> Point {
    let p = &pose.points;
    let arm = person::unit(p.elbow, p.wrist);
    let hand = person::unit(p.wrist, p.fingers);
    match arm.0 * hand.0 + arm.1 * hand.1 < 0.75 {
        true => (p.wrist.0 + 3.0 * hand.0, p.wrist.1 + radius + 0.5),
        false => (x, y + radius),
    }
}

/// What of a grip is behind the body: the far bar, the far ring and its strap.
pub fn behind(layer: &mut Layer, solved: &Solved, pose: &Pose) {
    let Some((x, y)) = pose.hands else { return };
    let (top, foot) = reach_of(solved, y);
    let foot = if pose.on_floor() { 0.0 } else { foot };
    if front::faces(solved) {
        return front::behind(layer, pose, (top, foot));
    }
    if pose.touches.contains(&Touch::Rings) {
        let radius = ring_of(layer);
        let (x, y) = ring(pose, (x, y), radius);
        layer.line("figure-strap", (x, y + radius), (x, top));
        let (x, y) = person::beside((x, y), 1.0);
        layer.line("figure-strap figure-behind", (x, y + radius), (x, top));
        layer.circle(FAR_GRIP, (x, y), radius);
    }
    if pose.touches.contains(&Touch::Bars) {
        let (x, y) = person::beside((x, y), 1.6);
        two_posts(layer, FAR_GRIP, x, y, foot);
    }
    if pose.touches.contains(&Touch::Bar) {
        layer.line(
            "figure-grip figure-rod",
            person::beside((x, y), -1.4),
            person::beside((x, y), 3.6),
        );
    }
}

fn two_posts(layer: &mut Layer, class: &str, x: f64, y: f64, foot: f64) {
    layer.line(class, (x - 28.0, y), (x + 28.0, y));
    for post in [x - 22.0, x + 22.0] {
        layer.line(class, (post, y), (post, foot));
    }
}

/// What of a grip is before trunk and legs.
pub fn before(layer: &mut Layer, solved: &Solved, pose: &Pose) {
    let Some((x, y)) = pose.hands else { return };
    let (_, foot) = reach_of(solved, y);
    let foot = if pose.on_floor() { 0.0 } else { foot };
    if pose.touches.contains(&Touch::Rings) {
        let radius = ring_of(layer);
        layer.circle(GRIP, ring(pose, (x, y), radius), radius);
    }
    if pose.touches.contains(&Touch::Bars) {
        two_posts(layer, GRIP, x, y, foot);
    }
    if pose.touches.contains(&Touch::Bar) && pose.gear.contains(&Gear::Band) {
        band(layer, pose, (x, y));
    }
}

/// A band from the bar round the near knee, taut: looped over the bar, and under the shank.
fn band(layer: &mut Layer, pose: &Pose, bar: Point) {
    let leg = &pose.points.legs[0];
    let under = person::offset(leg.knee, person::unit(leg.knee, leg.ankle), 5.0);
    let wide = (layer.size(2.0, 3.5), layer.size(5.0, 8.0));
    loop_of(layer, [bar, under], wide);
    layer.circle("figure-band", bar, layer.size(3.6, 6.0));
}

/// A band from one point round another: half as wide as said at each, and round at the second.
pub fn loop_of(layer: &mut Layer, [from, to]: [Point; 2], (narrow, wide): (f64, f64)) {
    let way = person::unit(from, to);
    let side = (way.1, -way.0);
    let beside = |at: Point, by: f64| point(person::offset(at, side, by));
    let _ = write!(
        layer.svg,
        "<path class=\"figure-band\" d=\"M{}L{}Q{} {}L{}\"/>",
        beside(from, narrow),
        beside(to, wide),
        point(person::offset(to, way, 9.0)),
        beside(to, -wide),
        beside(from, -narrow),
    );
}

/// A belt with its weight between the legs.
pub fn worn(layer: &mut Layer, pose: &Pose, heavy: bool) {
    if !pose.gear.contains(&Gear::Belt) {
        return;
    }
    let p = &pose.points;
    let trunk = person::unit(p.waist, p.hip);
    let across = (trunk.1, -trunk.0);
    let belt = person::offset(p.hip, trunk, -5.0);
    let thick = person::cm(0.05);
    layer.line(
        "figure-belt",
        person::offset(belt, across, -thick),
        person::offset(belt, across, thick),
    );
    let front = person::offset(belt, across, thick + 1.0);
    let plate = (front.0 - 4.0, front.1 - 46.0);
    layer.line("figure-chain", front, (plate.0, plate.1 + 11.0));
    plates(layer, plate, heavy);
}

/// One plate, or the two of a heavier load, one behind the other.
pub fn plates(layer: &mut Layer, (x, y): Point, heavy: bool) {
    let (radius, apart) = match heavy {
        true => (layer.size(15.0, 21.0), layer.size(9.0, 22.0)),
        false => (layer.size(12.0, 23.0), 0.0),
    };
    if heavy {
        layer.circle("figure-plate", (x + apart, y - 4.0), radius);
    }
    layer.circle("figure-plate", (x - apart, y), radius);
    layer.circle("figure-hole", (x - apart, y), 2.8);
}

/// What the near hand is round, and a stick.
pub fn held(layer: &mut Layer, pose: &Pose) {
    let p = &pose.points;
    if pose.touches.contains(&Touch::Bar)
        && let Some(at) = pose.hands
    {
        let radius = layer.size(1.8, 3.2);
        layer.circle("figure-grip figure-bar", person::beside(at, -1.4), radius);
    }
    if pose.gear.contains(&Gear::Stick) {
        let at = p.fingers;
        layer.line(
            "figure-grip figure-rod",
            person::beside(at, -2.4),
            person::beside(at, 3.4),
        );
        layer.circle("figure-grip figure-bar", person::beside(at, -2.4), 1.7);
    }
    if pose.gear.contains(&Gear::Weight) {
        let stands_on_one = pose.touches == [Touch::Toes]
            && (p.legs[0].ankle.1 - p.legs[1].ankle.1).abs() > 20.0
            && p.fingers.1 < p.hip.1;
        let at = if stands_on_one {
            person::beside(p.other.fingers, 1.0)
        } else {
            p.fingers
        };
        weight(layer, at);
    }
}

/// A dumbbell from the side.
fn weight(layer: &mut Layer, (x, y): Point) {
    let (out, high) = (layer.size(11.0, 17.0), layer.size(8.5, 16.0));
    let thick = layer.size(3.5, 8.0);
    layer.line("figure-grip figure-rod", (x - out, y), (x + out, y));
    for disc in [x - out, x + out] {
        layer.block(
            "figure-plate",
            disc - thick,
            disc + thick,
            y - high,
            y + high,
        );
    }
}
