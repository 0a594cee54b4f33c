//! One pose with what it touches and what is marked.

use super::apparatus::{before, behind, ground, held, ring_of, worn};
use super::front;
use super::pen::{Bounds, Pen, number, point};
use super::person::{self, HandShape};
use super::words::Says;
use crate::curriculum::posture::{Gear, Touch};
use crate::leverage::{Point, Pose, Prop, Solved};
use crate::words::escape::escape;
use std::fmt::Write;

/// What the arrow shows.
#[derive(Clone, Copy)]
pub enum Way<'a> {
    /// The way to the other end.
    Towards(&'a Pose),
    /// How the hands press in a hold.
    Held,
    None,
}

/// What is drawn.
pub struct Layer {
    pub svg: String,
    pub bounds: Bounds,
    /// Lines of what stands about.
    pub solid: Vec<(Point, Point)>,
    /// What a body holds and what stands about is drawn larger than it is, to be told in a list.
    pub bold: bool,
}

impl Layer {
    pub fn new() -> Layer {
        Layer {
            svg: String::new(),
            bounds: Bounds::NONE,
            solid: Vec::new(),
            bold: false,
        }
    }

    /// A size as it is, or as it is told in a list.
    pub fn size(&self, own: f64, bold: f64) -> f64 {
        if self.bold { bold } else { own }
    }

    pub fn line(&mut self, class: &str, from: Point, to: Point) {
        self.solid.push((from, to));
        self.bounds.include(from, 0.5);
        self.bounds.include(to, 0.5);
        let _ = write!(
            self.svg,
            "<path class=\"{class}\" d=\"M{}L{}\"/>",
            point(from),
            point(to)
        );
    }

    pub fn circle(&mut self, class: &str, at: Point, radius: f64) {
        let span = [-0.7, 0.7].map(|by| (at.0, at.1 + by * radius));
        self.solid.push((span[0], span[1]));
        self.bounds.include(at, radius);
        let _ = write!(
            self.svg,
            "<circle class=\"{class}\" cx=\"{}\" cy=\"{}\" r=\"{}\"/>",
            number(at.0),
            number(-at.1),
            number(radius)
        );
    }

    pub fn block(&mut self, class: &str, left: f64, right: f64, bottom: f64, top: f64) {
        for (from, to) in [
            ((left, bottom), (left, top)),
            ((right, bottom), (right, top)),
            ((left, top), (right, top)),
        ] {
            self.solid.push((from, to));
        }
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

    fn pen(&mut self, class: &str, pen: &Pen) {
        if pen.path.is_empty() {
            return;
        }
        self.bounds = self.bounds.with(pen.bounds);
        let _ = write!(self.svg, "<path class=\"{class}\" d=\"{}\"/>", pen.path);
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

/// What is shown besides the body and what carries it.
#[derive(Clone, Copy)]
pub struct Marks<'a> {
    /// Heights are written where somebody says them.
    pub says: Option<Says<'a>>,
    pub way: Way<'a>,
    /// The plumb line from the centre of mass.
    pub plumb: bool,
    /// The room of all poses of a drawing that plays: floor and wall stay as they are.
    pub room: Option<Bounds>,
    /// The load on a belt is heavy: two plates.
    pub heavy: bool,
    /// Apparatus larger than it is.
    pub bold: bool,
}

/// Draws a pose: what is behind it, the far limbs, the body, the near ones, and what is before it.
pub fn draw(solved: &Solved, pose: &Pose, marks: Marks<'_>) -> Layer {
    let mut layer = Layer::new();
    layer.bold = marks.bold;
    let from_the_front = front::faces(solved);
    let on_edge =
        (pose.front && pose.touches.contains(&Touch::Forearms)).then(|| front::on_edge(pose));
    let pose = on_edge.as_ref().unwrap_or(pose);
    let person = match from_the_front {
        true => front::draw(pose),
        false if pose.front && on_edge.is_none() => front::spread(pose),
        false => person::draw(pose, hand_shapes(pose)),
    };
    let body = around(&person);
    ground(&mut layer, pose, marks.room.unwrap_or(body));
    behind(&mut layer, solved, pose);
    layer.pen("figure-far", &person.far);
    layer.pen("figure-body", &person.body);
    if from_the_front {
        if pose.gear.contains(&Gear::Belt) {
            front::worn(&mut layer, pose, marks.heavy);
        }
        if pose.gear.contains(&Gear::Band) {
            front::band(&mut layer, pose);
        }
        layer.pen("figure-near", &person.arm);
    } else {
        layer.pen("figure-near", &person.leg);
        worn(&mut layer, pose, marks.heavy);
        before(&mut layer, solved, pose);
        layer.pen("figure-near", &person.arm);
        held(&mut layer, pose);
    }
    if marks.plumb {
        plumb(&mut layer, pose);
    }
    if let Some(says) = marks.says {
        heights(&mut layer, pose, body, says);
    }
    match marks.way {
        Way::Towards(other) if from_the_front => {
            let up = (other.points.shoulder.1 - pose.points.shoulder.1).signum();
            // Beside the elbows, clear of arms and grip.
            let (x, y) = (front::middle(pose) + 48.0, pose.points.chest.1);
            layer.arrow((x, y - 9.5 * up), (x, y + 9.5 * up));
        }
        Way::Towards(other) => travel(&mut layer, pose, other),
        Way::Held => press(&mut layer, pose, from_the_front),
        Way::None => {}
    }
    layer
}

/// What a body covers.
pub fn body(pose: &Pose) -> Bounds {
    around(&person::draw(pose, hand_shapes(pose)))
}

fn around(person: &person::Person) -> Bounds {
    [&person.far, &person.body, &person.leg, &person.arm]
        .iter()
        .fold(Bounds::NONE, |all, pen| all.with(pen.bounds))
}

fn grips(pose: &Pose) -> bool {
    [Touch::Bar, Touch::Bars, Touch::Rings]
        .iter()
        .any(|t| pose.touches.contains(t))
}

/// The near hand and the far one: round what it holds, flat on what it presses, or free.
fn hand_shapes(pose: &Pose) -> [HandShape; 2] {
    let p = &pose.points;
    let apart = libm::hypot(
        p.fingers.0 - p.other.fingers.0,
        p.fingers.1 - p.other.fingers.1,
    );
    let holds = [Gear::Weight, Gear::Stick, Gear::Handles]
        .iter()
        .any(|g| pose.gear.contains(g));
    let near = match () {
        () if grips(pose) || holds || pose.touches.contains(&Touch::Forearms) => HandShape::Fist,
        () if pose.touches.contains(&Touch::Hands) => HandShape::Flat,
        () if pose.props.iter().any(|p| matches!(p, Prop::Post(_))) => HandShape::Fist,
        () => HandShape::Free,
    };
    let far = match () {
        () if apart < 1.0 => near,
        () if pose.touches.contains(&Touch::Hands) && p.other.wrist.1 < 6.0 => HandShape::Flat,
        () => HandShape::Free,
    };
    [near, far]
}

/// From the centre of mass straight down to what carries the body, or up to what it hangs from.
fn plumb(layer: &mut Layer, pose: &Pose) {
    let x = pose.centre.0;
    let stood_on = pose.props.iter().find_map(|prop| match *prop {
        Prop::Box(from, to, top) if (from..=to).contains(&x) => pose
            .points
            .legs
            .iter()
            .any(|leg| (leg.ball.1 - top).abs() < 4.0)
            .then_some(top),
        _ => None,
    });
    let end = match (pose.hands, pose.feet) {
        (Some(hands), None) if hands.1 > pose.centre.1 => hands.1,
        (Some(hands), None) => hands.1.min(0.0).max(hands.1 - 4.0),
        _ if pose.on_floor() => stood_on.unwrap_or(0.0),
        (Some(hands), _) => hands.1,
        _ => 0.0,
    };
    layer.line(
        "figure-mark figure-plumb",
        pose.centre,
        (pose.centre.0, end),
    );
    layer.circle("figure-mark figure-centre", pose.centre, 1.8);
}

fn heights(layer: &mut Layer, pose: &Pose, body: Bounds, says: Says<'_>) {
    let feet = pose.feet_at.filter(|height| *height > 0.0);
    if pose.on_floor() && pose.hands_at > 0.0 {
        let hands = pose.hands.map_or(0.0, |at| at.0);
        let (left, right) = (
            layer.bounds.left.min(body.left),
            layer.bounds.right.max(body.right),
        );
        let to_the_left = hands - left < right - hands;
        let x = if to_the_left { left - 3.0 } else { right + 3.0 };
        layer.height(x, pose.hands_at, to_the_left, says);
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
    let knee = |pose: &Pose| pose.points.legs[0].knee;
    let (kx, ky) = (knee(other).0 - knee(pose).0, knee(other).1 - knee(pose).1);
    let knees = libm::hypot(kx, ky);
    if knees > 20.0 && knees > 1.6 * long {
        // It is the legs that move.
        let way = (kx / knees, ky / knees);
        let start = person::offset(knee(pose), way, 12.0);
        layer.arrow(start, person::offset(start, way, 19.0));
        return;
    }
    let (hx, hy) = (other.points.hip.0 - p.hip.0, other.points.hip.1 - p.hip.1);
    let hips = libm::hypot(hx, hy);
    let (tx, ty) = (p.hip.0 - p.shoulder.0, p.hip.1 - p.shoulder.1);
    let trunk = (tx * tx + ty * ty).sqrt();
    // The back is to the left of the way from shoulder to hip.
    let (bx, by) = (-ty / trunk, tx / trunk);
    if hips > 12.0 && hips > 1.25 * long {
        // It is the hips that move: the body turns about its hands.
        let start = person::offset(p.hip, (bx, by), 17.0);
        layer.arrow(start, person::offset(start, (hx / hips, hy / hips), 19.0));
        return;
    }
    if long < 5.0 {
        return;
    }
    let (dx, dy) = (dx / long, dy / long);
    // Where the way leads through the body, the arrow starts in front, and where the legs are folded there, over the hips.
    let side = if bx * dx + by * dy < -0.3 { -1.0 } else { 1.0 };
    let thigh = person::unit(p.hip, p.legs[0].knee);
    let up = (-tx / trunk, -ty / trunk);
    if side < 0.0 && thigh.0 * up.0 + thigh.1 * up.1 > 0.0 {
        let out = person::unit((thigh.0 + up.0, thigh.1 + up.1), (0.0, 0.0));
        let start = person::offset(p.hip, out, 16.0);
        layer.arrow(start, person::offset(start, (dx, dy), 19.0));
        return;
    }
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
fn press(layer: &mut Layer, pose: &Pose, from_the_front: bool) {
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
    } else if from_the_front {
        // Past the hand, on the side where nothing is.
        let x = front::outside(pose);
        let rise = if hanging { 8.0 } else { 0.0 };
        layer.arrow((x, y + rise), (x, y + rise - 16.0));
    } else if hanging {
        let beside = if pose.inversion() > 0 { 19.0 } else { 10.0 };
        layer.arrow((x - beside, y + 8.0), (x - beside, y - 8.0));
    } else {
        let (x, top) = if pose.touches.contains(&Touch::Bars) {
            (x + 31.0, y - 2.0)
        } else if grips(pose) {
            (x + ring_of(layer) + 7.0, y - 2.0)
        } else {
            (x, -3.0)
        };
        layer.arrow((x, top), (x, top - 14.0));
    }
}
