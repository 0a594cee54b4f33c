//! One pose with what it touches and what is marked.

use super::pen::{Bounds, number, point};
use super::person::{self, HandShape, Person};
use super::words::Says;
use crate::curriculum::posture::Touch;
use crate::leverage::{Point, Pose, Solved};
use crate::words::escape::escape;
use std::fmt::Write;

/// A drawn pose.
pub struct Scene {
    pub svg: String,
    pub bounds: Bounds,
}

/// What the arrow shows.
#[derive(Clone, Copy)]
pub enum Way<'a> {
    /// The way to the other end.
    Towards(&'a Pose),
    /// How the hands press in a hold.
    Held,
    None,
}

/// Half the width of what stands under hands or feet.
const BOX: f64 = 17.0;

const RING: f64 = 9.0;

struct Layer {
    svg: String,
    bounds: Bounds,
}

impl Layer {
    fn line(&mut self, class: &str, from: Point, to: Point) {
        self.bounds.include(from, 0.5);
        self.bounds.include(to, 0.5);
        let _ = write!(
            self.svg,
            "<path class=\"{class}\" d=\"M{}L{}\"/>",
            point(from),
            point(to)
        );
    }

    fn circle(&mut self, class: &str, at: Point, radius: f64) {
        self.bounds.include(at, radius);
        let _ = write!(
            self.svg,
            "<circle class=\"{class}\" cx=\"{}\" cy=\"{}\" r=\"{}\"/>",
            number(at.0),
            number(-at.1),
            number(radius)
        );
    }

    fn block(&mut self, class: &str, left: f64, right: f64, bottom: f64, top: f64) {
        self.bounds.include((left, bottom), 0.5);
        self.bounds.include((right, top), 0.5);
        let _ = write!(
            self.svg,
            "<rect class=\"{class}\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>",
            number(left),
            number(-top),
            number(right - left),
            number(top - bottom)
        );
    }

    fn person(&mut self, person: &Person) {
        for (class, pen) in [
            ("figure-far", &person.far),
            ("figure-body", &person.body),
            ("figure-near", &person.near),
        ] {
            if pen.path.is_empty() {
                continue;
            }
            self.bounds = self.bounds.with(pen.bounds);
            let _ = write!(self.svg, "<path class=\"{class}\" d=\"{}\"/>", pen.path);
        }
    }

    /// A height in whole centimetres beside what it is the height of.
    fn height(&mut self, x: f64, top: f64, to_the_left: bool, says: Says<'_>) {
        const MARK: &str = "figure-mark";
        let outward = if to_the_left { -1.0 } else { 1.0 };
        let (text, other) = says.height(top);
        let wide = 4.6 * text.chars().count() as f64;
        self.line(MARK, (x, 0.0), (x, top));
        self.line(MARK, (x - 2.0, 0.0), (x + 2.0, 0.0));
        self.line(MARK, (x - 2.0, top), (x + 2.0, top));
        let at = (x + outward * 3.5, top / 2.0 - 2.8);
        self.bounds.include((at.0 + outward * wide, at.1), 4.0);
        let _ = write!(
            self.svg,
            "<text class=\"{MARK}\" x=\"{}\" y=\"{}\" font-size=\"8\" text-anchor=\"{}\" data-other=\"{}\">{}</text>",
            number(at.0),
            number(-at.1),
            if to_the_left { "end" } else { "start" },
            escape(&other),
            escape(&text),
        );
    }

    fn arrow(&mut self, from: Point, to: Point) {
        self.bounds.include(from, 2.0);
        self.bounds.include(to, 2.0);
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let long = (dx * dx + dy * dy).sqrt().max(1e-9);
        let (dx, dy) = (dx / long, dy / long);
        let barb = |side: f64| {
            point((
                to.0 - 4.5 * dx + side * 3.0 * dy,
                to.1 - 4.5 * dy - side * 3.0 * dx,
            ))
        };
        let _ = write!(
            self.svg,
            "<path class=\"figure-mark figure-arrow\" d=\"M{}L{}M{}L{}L{}\"/>",
            point(from),
            point(to),
            barb(1.0),
            point(to),
            barb(-1.0)
        );
    }
}

/// Draws a pose. Heights are marked where `marked`; an arrow shows the way `towards` the other end, or without one how the hands
/// press.
pub fn draw(solved: &Solved, pose: &Pose, marked: Option<Says<'_>>, way: Way) -> Scene {
    let touches = |touch: Touch| solved.touches.contains(&touch);
    let hands = if grips(solved) {
        HandShape::Fist
    } else if touches(Touch::Hands) {
        HandShape::Flat
    } else {
        HandShape::Free
    };
    let person = person::draw(pose, hands, solved.legs_apart);
    let body = person
        .far
        .bounds
        .with(person.body.bounds)
        .with(person.near.bounds);
    let mut layer = Layer {
        svg: String::new(),
        bounds: Bounds::NONE,
    };
    ground(&mut layer, solved, pose, body);
    hung(&mut layer, solved, pose);
    layer.person(&person);
    grip(&mut layer, solved, pose);
    plumb(&mut layer, pose);
    if let Some(says) = marked {
        heights(&mut layer, solved, pose, body, says);
    }
    match way {
        Way::Towards(other) => travel(&mut layer, pose, other),
        Way::Held => press(&mut layer, solved, pose),
        Way::None => {}
    }
    Scene {
        svg: layer.svg,
        bounds: layer.bounds,
    }
}

fn grips(solved: &Solved) -> bool {
    [Touch::Bar, Touch::Bars, Touch::Rings]
        .iter()
        .any(|t| solved.touches.contains(t))
}

/// Floor, boxes and wall.
fn ground(layer: &mut Layer, solved: &Solved, pose: &Pose, body: Bounds) {
    const CLASS: &str = "figure-ground";
    let touches = |touch: Touch| solved.touches.contains(&touch);
    if touches(Touch::Hands)
        && solved.hands_at > 0.0
        && let Some(at) = pose.hands
    {
        layer.block(
            CLASS,
            at.0 - BOX - 8.0,
            at.0 + BOX - 8.0,
            0.0,
            solved.hands_at,
        );
    }
    if let (Some(at), Some(height)) = (pose.feet, solved.feet_at)
        && height > 0.0
        && !touches(Touch::Wall)
    {
        layer.block(CLASS, at.0 - BOX, at.0 + BOX, 0.0, height);
    }
    let mut right = body.right + 6.0;
    if touches(Touch::Wall)
        && let Some(at) = pose.feet
    {
        let face = at.0 + 1.2;
        right = face + 4.0;
        layer.block(CLASS, face, right, 0.0, at.1 + 14.0);
    }
    let on_floor = [
        Touch::Hands,
        Touch::Toes,
        Touch::Knees,
        Touch::Head,
        Touch::Back,
    ]
    .iter()
    .any(|t| touches(*t));
    if on_floor {
        let left = layer.bounds.left.min(body.left) - 6.0;
        layer.line(
            CLASS,
            (left, 0.0),
            (right.max(layer.bounds.right + 6.0), 0.0),
        );
    }
}

/// Bars and their posts, straps.
fn hung(layer: &mut Layer, solved: &Solved, pose: &Pose) {
    const CLASS: &str = "figure-grip";
    let Some((x, y)) = pose.hands else { return };
    // Alike for both ends.
    let mut ends = Bounds::NONE;
    for p in solved.poses().map(|pose| &pose.points) {
        [p.vertex, p.hip, p.legs[0].knee, p.legs[0].toes]
            .iter()
            .for_each(|at| ends.include(*at, 0.0));
    }
    if solved.touches.contains(&Touch::Rings) {
        let top = (ends.top + 10.0).max(y + 4.0 * RING);
        layer.line(CLASS, (x, y + 2.0 * RING), (x, top));
    }
    if solved.touches.contains(&Touch::Bars) {
        layer.line(CLASS, (x - 26.0, y), (x + 26.0, y));
        let foot = (ends.bottom - 5.0).min(y - 30.0);
        for post in [x - 20.0, x + 20.0] {
            layer.line(CLASS, (post, y), (post, foot));
        }
    }
}

/// What the near hand is round.
fn grip(layer: &mut Layer, solved: &Solved, pose: &Pose) {
    let Some((x, y)) = pose.hands else { return };
    if solved.touches.contains(&Touch::Bar) {
        layer.circle("figure-grip figure-bar", (x, y), 2.0);
    }
    if solved.touches.contains(&Touch::Rings) {
        layer.circle("figure-grip", (x, y + RING), RING);
    }
}

/// From the centre of mass straight down to what carries the body, or up to what it hangs from.
fn plumb(layer: &mut Layer, pose: &Pose) {
    let end = match (pose.hands, pose.feet) {
        (Some(hands), None) if hands.1 > pose.centre.1 => hands.1,
        (Some(hands), None) => hands.1.min(0.0).max(hands.1 - 4.0),
        _ => 0.0,
    };
    layer.line(
        "figure-mark figure-plumb",
        pose.centre,
        (pose.centre.0, end),
    );
    layer.circle("figure-mark figure-centre", pose.centre, 1.8);
}

fn heights(layer: &mut Layer, solved: &Solved, pose: &Pose, body: Bounds, says: Says<'_>) {
    let feet = solved.feet_at.filter(|height| *height > 0.0);
    let on_floor = solved.touches.contains(&Touch::Hands) || pose.feet.is_some();
    if on_floor && solved.hands_at > 0.0 {
        let hands = pose.hands.map_or(0.0, |at| at.0);
        let (left, right) = (
            layer.bounds.left.min(body.left),
            layer.bounds.right.max(body.right),
        );
        let to_the_left = hands - left < right - hands;
        let x = if to_the_left { left - 3.0 } else { right + 3.0 };
        layer.height(x, solved.hands_at, to_the_left, says);
    }
    if let Some(height) = feet {
        let right = layer.bounds.right.max(body.right);
        layer.height(right + 3.0, height, false, says);
    }
}

/// An arrow behind the back along the way the shoulders go.
fn travel(layer: &mut Layer, pose: &Pose, other: &Pose) {
    let p = &pose.points;
    let (dx, dy) = (
        other.points.shoulder.0 - p.shoulder.0,
        other.points.shoulder.1 - p.shoulder.1,
    );
    let long = (dx * dx + dy * dy).sqrt();
    if long < 5.0 {
        return;
    }
    let (dx, dy) = (dx / long, dy / long);
    let (tx, ty) = (p.hip.0 - p.shoulder.0, p.hip.1 - p.shoulder.1);
    let trunk = (tx * tx + ty * ty).sqrt();
    // The back is to the left of the way from shoulder to hip; where the way leads through the body, the arrow starts in front.
    let (bx, by) = (-ty / trunk, tx / trunk);
    let side = if bx * dx + by * dy < -0.3 { -1.0 } else { 1.0 };
    let from = if side > 0.0 { p.chest } else { p.waist };
    let elbow = side * ((p.elbow.0 - from.0) * bx + (p.elbow.1 - from.1) * by);
    let clear = if side > 0.0 {
        (elbow + 8.0).max(16.0)
    } else {
        14.0
    } * side;
    let start = (from.0 + clear * bx, from.1 + clear * by);
    layer.arrow(start, (start.0 + 19.0 * dx, start.1 + 19.0 * dy));
}

/// An arrow at the hands for what they do to what they touch: turn it towards the hips, or press along the arm.
fn press(layer: &mut Layer, solved: &Solved, pose: &Pose) {
    let (Some((x, y)), Some(turning)) = (pose.hands, pose.turning) else {
        return;
    };
    let p = &pose.points;
    let hanging = y > pose.centre.1;
    if hanging && turning.shoulder > 15.0 && pose.feet.is_none() {
        // Square to the arm, to the side of the hips.
        let (ax, ay) = (x - p.shoulder.0, y - p.shoulder.1);
        let arm = (ax * ax + ay * ay).sqrt();
        let side = if ax * (p.hip.1 - p.shoulder.1) - ay * (p.hip.0 - p.shoulder.0) > 0.0 {
            1.0
        } else {
            -1.0
        };
        let (nx, ny) = (-side * ay / arm, side * ax / arm);
        layer.arrow((x - 20.0 * nx, y - 20.0 * ny), (x - 4.0 * nx, y - 4.0 * ny));
    } else if hanging {
        let beside = if pose.inversion() > 0 { 19.0 } else { 10.0 };
        layer.arrow((x - beside, y + 8.0), (x - beside, y - 8.0));
    } else {
        let (x, top) = if solved.touches.contains(&Touch::Bars) {
            (x + 31.0, y - 2.0)
        } else if grips(solved) {
            (x + RING + 7.0, y - 2.0)
        } else {
            (x, -3.0)
        };
        layer.arrow((x, top), (x, top - 14.0));
    }
}
