//! Bodies that hang or support themselves upright, from the front: from the side they are posts, their arms before the trunk.

use super::apparatus::ring_of;
use super::pen::Pen;
use super::person::{self, HandShape, Person, cm};
use super::scene::Layer;
use crate::curriculum::posture::Touch;
use crate::leverage::{Arm, Leg, Point, Pose, Solved};

/// Half the width between the shoulder joints, the hip joints and the hands, as shares of stature: the first two narrower than
/// Drillis and Contini 1966 have shoulders and hips (0.259, 0.191), for the limbs' thickness; the others common practice, no source.
mod apart {
    pub const SHOULDERS: f64 = 0.108;
    pub const HIPS: f64 = 0.046;
    pub const ANKLES: f64 = 0.03;
    pub const ON_BAR: f64 = 0.15;
    pub const ON_BARS: f64 = 0.175;
    pub const ON_RINGS: f64 = 0.16;
}

/// Half the width of a bar as it is drawn, in centimetres.
const BAR: f64 = 48.0;

/// Whether a movement is drawn from the front: all of it hangs or is supported by the hands alone, upright or upside down, with
/// straight legs side by side.
pub fn faces(solved: &Solved) -> bool {
    solved.poses().all(is_post)
}

/// Whether all of a movement is seen from the front: drawn so, or declared so.
pub fn seen(solved: &Solved) -> bool {
    faces(solved) || solved.poses().all(|pose| pose.front)
}

fn is_post(pose: &Pose) -> bool {
    let p = &pose.points;
    let [one, other] = &p.legs;
    let way = |from: Point, to: Point| (to.0 - from.0, to.1 - from.1);
    let long = |from, to| {
        let (x, y) = way(from, to);
        libm::hypot(x, y)
    };
    let lean = way(p.shoulder, one.ankle);
    let grips = matches!(
        pose.touches.as_slice(),
        [Touch::Bar | Touch::Bars | Touch::Rings]
    );
    grips
        && !pose.front
        && pose.legs_apart < 1.0
        && long(one.ankle, other.ankle) < 1.0
        && long(p.fingers, p.other.fingers) < 1.0
        && lean.0.abs() < 0.25 * lean.1.abs()
        && long(p.hip, one.ankle) > 0.98 * (long(p.hip, one.knee) + long(one.knee, one.ankle))
}

/// Where the middle of the body is, from side to side.
pub fn middle(pose: &Pose) -> f64 {
    pose.centre.0
}

/// Clear of the hands and of the end of a bar, to one side.
pub fn outside(pose: &Pose) -> f64 {
    let past = match pose.touches.first() {
        Some(Touch::Bar) => BAR,
        _ => grip(pose) + 10.0,
    };
    middle(pose) + past + 8.0
}

/// How far from the middle each hand is.
fn grip(pose: &Pose) -> f64 {
    cm(match pose.touches.first() {
        Some(Touch::Bars) => apart::ON_BARS,
        Some(Touch::Rings) => apart::ON_RINGS,
        _ => apart::ON_BAR,
    })
}

/// The arm to one side: elbows come out as far as the length of the upper arm asks.
pub fn arm(pose: &Pose, side: f64) -> (Point, Arm) {
    let p = &pose.points;
    let x = middle(pose);
    let at = |out: f64, y: f64| (x + side * out, y);
    let (shoulder, hand) = (cm(apart::SHOULDERS), grip(pose));
    let straight = libm::hypot(p.elbow.0 - p.root.0, p.elbow.1 - p.root.1)
        + libm::hypot(p.wrist.0 - p.elbow.0, p.wrist.1 - p.elbow.1)
        < 1.03 * libm::hypot(p.wrist.0 - p.root.0, p.wrist.1 - p.root.1);
    let elbow = if straight {
        shoulder + (hand - shoulder) * 0.55
    } else {
        shoulder + cm(0.095)
    };
    let wrist = elbow + (hand - elbow) * 0.82;
    (
        at(shoulder, p.root.1),
        Arm {
            elbow: at(elbow, p.elbow.1),
            wrist: at(wrist, p.wrist.1),
            fingers: at(hand, p.fingers.1),
        },
    )
}

/// The leg to one side, and where it begins.
pub fn leg(pose: &Pose, side: f64) -> (Point, Leg) {
    let p = &pose.points;
    let x = middle(pose);
    let near = p.legs[0];
    let (hips, ankles) = (cm(apart::HIPS), cm(apart::ANKLES));
    let at = |out: f64, y: f64| (x + side * out, y);
    let knee = hips + (ankles - hips) * 0.5;
    (
        at(hips, p.hip.1),
        Leg {
            knee: at(knee, near.knee.1),
            ankle: at(ankles, near.ankle.1),
            heel: at(ankles, near.heel.1),
            ball: at(ankles + cm(0.006), near.ball.1),
            toes: at(ankles + cm(0.01), near.toes.1),
        },
    )
}

/// The same pose with its trunk and head in the plane that is seen.
pub fn turned(pose: &Pose) -> Pose {
    let x = middle(pose);
    let mut pose = pose.clone();
    pose.front = true;
    let p = &mut pose.points;
    for at in [
        &mut p.vertex,
        &mut p.shoulder,
        &mut p.chest,
        &mut p.waist,
        &mut p.hip,
        &mut p.root,
    ] {
        at.0 = x;
    }
    pose
}

pub fn draw(pose: &Pose) -> Person {
    let mut person = Person {
        far: Pen::new(),
        body: Pen::new(),
        leg: Pen::new(),
        arm: Pen::new(),
    };
    let flat = turned(pose);
    person::trunk(&mut person.body, &flat);
    person::head(&mut person.body, &flat);
    for side in [-1.0, 1.0] {
        let (hip, leg) = leg(pose, side);
        person::long_leg(&mut person.body, hip, &leg);
        person.body.chain(&[
            (leg.ankle, cm(0.0185)),
            (leg.ball, cm(0.02)),
            (leg.toes, cm(0.01)),
        ]);
        let (shoulder, arm) = arm(pose, side);
        person::arm(&mut person.arm, shoulder, &arm, HandShape::Fist);
    }
    person
}

/// A body on its hands alone that is declared from the front, arms and legs spread.
pub fn spread(pose: &Pose) -> Person {
    let mut person = Person {
        far: Pen::new(),
        body: Pen::new(),
        leg: Pen::new(),
        arm: Pen::new(),
    };
    person::trunk(&mut person.body, pose);
    person::head(&mut person.body, pose);
    let p = &pose.points;
    let side = |at: Point, middle: f64| if at.0 < middle { -1.0 } else { 1.0 };
    for leg in &p.legs {
        let hip = (
            p.hip.0 + side(leg.ankle, p.hip.0) * cm(apart::HIPS),
            p.hip.1,
        );
        person::long_leg(&mut person.body, hip, leg);
        person.body.chain(&[
            (leg.ankle, cm(0.0185)),
            (leg.ball, cm(0.019)),
            (leg.toes, cm(0.01)),
        ]);
    }
    for mut arm in [p.first(), p.other] {
        let root = (
            p.root.0 + side(arm.wrist, p.root.0) * cm(apart::SHOULDERS),
            p.root.1,
        );
        arm.elbow = ((root.0 + arm.wrist.0) / 2.0, (root.1 + arm.wrist.1) / 2.0);
        person::arm(&mut person.arm, root, &arm, HandShape::Flat);
    }
    person
}

/// A body on one forearm and the edge of its feet: its middle is half the width of the shoulders above the arm, and its feet lie on
/// the floor. The posture is balanced without that width.
pub fn on_edge(pose: &Pose) -> Pose {
    let mut pose = pose.clone();
    let p = &mut pose.points;
    let (feet, shoulder) = (p.legs[0].ankle, p.shoulder);
    let low = cm(0.045) - feet.1;
    let high = cm(0.085);
    let up = |at: &mut Point| {
        let share = (at.0 - feet.0) / (shoulder.0 - feet.0);
        at.1 += low + (high - low) * share;
    };
    for at in [
        &mut p.vertex,
        &mut p.shoulder,
        &mut p.chest,
        &mut p.waist,
        &mut p.hip,
        &mut p.root,
    ] {
        up(at);
    }
    for at in [&mut p.other.elbow, &mut p.other.wrist, &mut p.other.fingers] {
        at.1 += high + cm(0.085);
    }
    for leg in &mut p.legs {
        for at in [
            &mut leg.knee,
            &mut leg.ankle,
            &mut leg.heel,
            &mut leg.ball,
            &mut leg.toes,
        ] {
            up(at);
        }
    }
    up(&mut pose.centre);
    pose
}

/// The grip behind the body: the bar across, the posts of two bars, the rings on their straps.
pub fn behind(layer: &mut Layer, pose: &Pose, (top, foot): (f64, f64)) {
    let Some((_, y)) = pose.hands else { return };
    let (x, hand) = (middle(pose), grip(pose));
    for touch in &pose.touches {
        match touch {
            Touch::Bar => layer.line("figure-grip figure-rod", (x - BAR, y), (x + BAR, y)),
            Touch::Bars => {
                for at in [x - hand, x + hand] {
                    layer.line("figure-grip", (at, y), (at, foot));
                }
            }
            Touch::Rings => {
                let ring = ring_of(layer);
                for at in [x - hand, x + hand] {
                    layer.line("figure-strap", (at, y + 2.0 * ring), (at, top));
                    layer.circle("figure-grip", (at, y + ring), ring);
                }
            }
            _ => {}
        }
    }
}

/// A band from the bar round one knee.
pub fn band(layer: &mut Layer, pose: &Pose) {
    let Some((_, y)) = pose.hands else { return };
    let x = middle(pose);
    let (_, leg) = leg(pose, 1.0);
    let (from, knee) = ((x + cm(0.07), y), (leg.knee.0, leg.knee.1 - 3.0));
    super::apparatus::loop_of(layer, [from, knee], (2.5, 5.0));
}

/// A belt with its weight between the legs.
pub fn worn(layer: &mut Layer, pose: &Pose, heavy: bool) {
    let p = &pose.points;
    let x = middle(pose);
    let (y, wide) = (p.hip.1 + 5.0, cm(0.086));
    layer.line("figure-belt", (x - wide, y), (x + wide, y));
    layer.line("figure-chain", (x, y), (x, y - 24.0));
    super::apparatus::plates(layer, (x, y - 36.0), heavy);
}
