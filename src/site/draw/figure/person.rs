//! The outline of a person in a pose: limbs that taper, a trunk with its curve, a head with a face.

use super::pen::Pen;
use crate::leverage::{Leg, Point, Pose, STANDARD};

/// Half thicknesses from the side, as shares of stature: a lean body's, stated, no source.
mod half {
    pub const NECK: f64 = 0.03;
    pub const SHOULDER: f64 = 0.042;
    pub const CHEST: f64 = 0.057;
    pub const WAIST: f64 = 0.046;
    pub const PELVIS: f64 = 0.053;
    pub const UPPER_ARM: f64 = 0.029;
    pub const ELBOW: f64 = 0.022;
    pub const FOREARM: f64 = 0.0235;
    pub const WRIST: f64 = 0.0155;
    pub const KNUCKLES: f64 = 0.0125;
    pub const FIST: f64 = 0.021;
    pub const FINGERTIPS: f64 = 0.007;
    pub const THIGH: f64 = 0.05;
    pub const KNEE: f64 = 0.032;
    pub const CALF: f64 = 0.0325;
    pub const ANKLE: f64 = 0.02;
    pub const HEEL: f64 = 0.016;
    pub const BALL: f64 = 0.013;
    pub const TOES: f64 = 0.0085;
}

/// Half the height of a head: Drillis and Contini 1966, 0.130 of stature. Its half depth: stated, no source.
const HEAD: (f64, f64) = (0.065, 0.052);

/// A person as three paths, from the back to the front.
pub struct Person {
    pub far: Pen,
    pub body: Pen,
    pub near: Pen,
}

/// How the hands are: flat on the floor, or round something.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HandShape {
    Flat,
    Fist,
    Free,
}

pub fn draw(pose: &Pose, hands: HandShape, legs_apart: f64) -> Person {
    let mut person = Person {
        far: Pen::new(),
        body: Pen::new(),
        near: Pen::new(),
    };
    let p = &pose.points;
    // Legs out of the plane are seen a little from above: the near one lower, the far one higher.
    let fan = libm::tan(legs_apart.to_radians()) * 0.19;
    // Arms are alike, and legs mostly: what the near one hides is not drawn.
    if p.legs[0] != p.legs[1] || fan > 0.0 {
        leg(&mut person.far, p.hip, &fanned(&p.legs[1], p.hip, fan));
    }
    trunk(&mut person.body, pose);
    head(&mut person.body, pose);
    leg(&mut person.near, p.hip, &fanned(&p.legs[0], p.hip, -fan));
    arm(&mut person.near, pose, hands);
    person
}

fn cm(share: f64) -> f64 {
    share * STANDARD.stature_cm
}

fn toward(from: Point, to: Point, share: f64) -> Point {
    (
        from.0 + (to.0 - from.0) * share,
        from.1 + (to.1 - from.1) * share,
    )
}

fn length((x, y): Point) -> f64 {
    (x * x + y * y).sqrt()
}

fn unit(from: Point, to: Point) -> Point {
    let (x, y) = (to.0 - from.0, to.1 - from.1);
    let long = length((x, y)).max(1e-9);
    (x / long, y / long)
}

fn offset(from: Point, direction: Point, by: f64) -> Point {
    (from.0 + direction.0 * by, from.1 + direction.1 * by)
}

fn fanned(leg: &Leg, hip: Point, by: f64) -> Leg {
    let place = |p: Point| (p.0, p.1 + by * length((p.0 - hip.0, p.1 - hip.1)));
    Leg {
        knee: place(leg.knee),
        ankle: place(leg.ankle),
        heel: place(leg.heel),
        ball: place(leg.ball),
        toes: place(leg.toes),
    }
}

fn trunk(pen: &mut Pen, pose: &Pose) {
    let p = &pose.points;
    // The front of a part of the trunk, seen along it from the shoulder: to its right.
    let front = |from: Point, to: Point| {
        let d = unit(from, to);
        (d.1, -d.0)
    };
    let (upper, lower) = (front(p.shoulder, p.chest), front(p.waist, p.hip));
    let chest = offset(toward(p.shoulder, p.chest, 0.7), upper, cm(0.008));
    let waist = toward(p.chest, p.waist, 0.75);
    let pelvis = offset(toward(p.waist, p.hip, 0.8), lower, -cm(0.006));
    pen.chain(&[
        (p.shoulder, cm(half::SHOULDER)),
        (chest, cm(half::CHEST)),
        (waist, cm(half::WAIST)),
        (pelvis, cm(half::PELVIS)),
        (p.hip, cm(half::THIGH)),
    ]);
}

fn head(pen: &mut Pen, pose: &Pose) {
    let p = &pose.points;
    let up = unit(p.shoulder, p.vertex);
    // The face looks to the left of the way up.
    let front = (-up.1, up.0);
    let middle = offset(offset(p.vertex, up, -cm(HEAD.0)), front, cm(0.012));
    pen.stroke(
        (offset(p.shoulder, up, cm(0.01)), cm(half::NECK * 1.15)),
        (offset(middle, up, -cm(0.03)), cm(half::NECK)),
    );
    pen.ellipse(middle, cm(HEAD.0), cm(HEAD.1), libm::atan2(up.1, up.0));
    let jaw = offset(offset(middle, up, -cm(0.038)), front, cm(0.024));
    pen.stroke((middle, cm(0.04)), (jaw, cm(0.022)));
    let nose = offset(offset(middle, up, -cm(0.008)), front, cm(0.05));
    pen.stroke((middle, cm(0.02)), (nose, cm(0.0075)));
}

fn arm(pen: &mut Pen, pose: &Pose, hands: HandShape) {
    let p = &pose.points;
    pen.chain(&[
        (p.shoulder, cm(half::UPPER_ARM * 1.12)),
        (toward(p.shoulder, p.elbow, 0.4), cm(half::UPPER_ARM)),
        (p.elbow, cm(half::ELBOW)),
        (toward(p.elbow, p.wrist, 0.25), cm(half::FOREARM)),
        (p.wrist, cm(half::WRIST)),
    ]);
    match hands {
        HandShape::Fist => pen.stroke((p.wrist, cm(half::WRIST)), (p.fingers, cm(half::FIST))),
        HandShape::Flat | HandShape::Free => {
            let tips = offset(p.fingers, unit(p.wrist, p.fingers), cm(0.052));
            let tips = if hands == HandShape::Flat {
                (tips.0, p.fingers.1 - cm(0.001))
            } else {
                tips
            };
            pen.chain(&[
                (p.wrist, cm(half::WRIST)),
                (p.fingers, cm(half::KNUCKLES)),
                (tips, cm(half::FINGERTIPS)),
            ]);
        }
    }
}

fn leg(pen: &mut Pen, hip: Point, leg: &Leg) {
    pen.chain(&[
        (hip, cm(half::THIGH)),
        (toward(hip, leg.knee, 0.35), cm(half::THIGH * 0.9)),
        (leg.knee, cm(half::KNEE)),
        (toward(leg.knee, leg.ankle, 0.3), cm(half::CALF)),
        (leg.ankle, cm(half::ANKLE)),
    ]);
    // The foot's points lie on its sole; its outline is drawn inside it.
    let under = toward(leg.heel, leg.toes, 0.25);
    let up = unit(under, leg.ankle);
    let heel = offset(leg.heel, up, cm(half::HEEL));
    let heel = toward(heel, leg.ankle, 0.18);
    let ball = offset(leg.ball, up, cm(half::BALL));
    let toes = offset(leg.toes, up, cm(half::TOES));
    let toes = toward(toes, ball, 0.1);
    let middle = toward(heel, ball, 0.45);
    pen.stroke((leg.ankle, cm(half::ANKLE)), (heel, cm(half::HEEL)));
    pen.stroke((leg.ankle, cm(half::ANKLE)), (middle, cm(half::HEEL)));
    pen.chain(&[
        (heel, cm(half::HEEL)),
        (middle, cm(half::HEEL)),
        (ball, cm(half::BALL)),
        (toes, cm(half::TOES)),
    ]);
    pen.stroke((leg.ankle, cm(half::ANKLE * 0.9)), (ball, cm(half::BALL)));
}
