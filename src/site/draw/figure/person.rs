//! The outline of a person in a pose: limbs that swell and taper, a trunk with its curve, a head with a face.

use super::pen::{Pen, Swell};
use crate::leverage::{Arm, Leg, Point, Pose, STANDARD};

/// Half thicknesses from the side, as shares of stature: a lean body's, stated, no source.
mod half {
    pub const NECK: f64 = 0.03;
    pub const DELTOID: f64 = 0.034;
    pub const ELBOW: f64 = 0.0205;
    pub const WRIST: f64 = 0.0145;
    pub const FIST: f64 = 0.0215;
    pub const THIGH: f64 = 0.049;
    pub const KNEE: f64 = 0.03;
    pub const ANKLE: f64 = 0.0185;
}

/// The profile of a head that looks ahead, as shares of its height from its middle: ahead and up.
const FACE: [Point; 14] = [
    (0.02, 0.5),
    (0.26, 0.38),
    (0.37, 0.16),
    (0.35, 0.07),
    (0.45, -0.1),
    (0.36, -0.15),
    (0.38, -0.25),
    (0.35, -0.41),
    (0.24, -0.47),
    (0.04, -0.4),
    (-0.2, -0.38),
    (-0.38, -0.12),
    (-0.4, 0.14),
    (-0.24, 0.4),
];

/// The height of a head: Drillis and Contini 1966, 0.130 of stature.
const HEAD: f64 = 0.13;

/// Half the width of a trunk from the front, from the neck to below the hips, as shares of stature: shoulders and hips as wide as
/// Drillis and Contini 1966 have them (0.259, 0.191), a little narrower for the outline's roundness.
const WIDE: [f64; 7] = [0.045, 0.108, 0.097, 0.073, 0.069, 0.084, 0.064];

/// A person as paths, from the back to the front.
pub struct Person {
    pub far: Pen,
    pub body: Pen,
    pub leg: Pen,
    pub arm: Pen,
}

/// How a hand is: flat on the floor, or round something.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HandShape {
    Flat,
    Fist,
    Free,
}

/// How far the far side of a body is seen beside its near one, in centimetres.
pub const DEPTH: Point = (3.6, 1.7);

pub fn beside((x, y): Point, share: f64) -> Point {
    (x + DEPTH.0 * share, y + DEPTH.1 * share)
}

pub fn draw(pose: &Pose, hands: [HandShape; 2]) -> Person {
    let mut person = Person {
        far: Pen::new(),
        body: Pen::new(),
        leg: Pen::new(),
        arm: Pen::new(),
    };
    let p = &pose.points;
    // Legs out of the plane are seen a little from above: the near one lower, the far one higher.
    let fan = libm::tan(pose.legs_apart.to_radians()) * 0.19;
    let depth = if pose.front { 0.0 } else { 1.0 };
    let far = |at: Point| beside(at, depth);
    // From the front one leg lies on the other.
    let over = |at: Point| match pose.front {
        true => (at.0, at.1 + cm(0.052)),
        false => far(at),
    };
    leg(
        &mut person.far,
        over(p.hip),
        &shifted(&fanned(&p.legs[1], p.hip, fan), over),
        pose.front,
    );
    let other = Arm {
        elbow: far(p.other.elbow),
        wrist: far(p.other.wrist),
        fingers: far(p.other.fingers),
    };
    arm(&mut person.far, far(p.root), &other, hands[1]);
    trunk(&mut person.body, pose);
    head(&mut person.body, pose);
    let under = if pose.front { cm(0.03) } else { 0.0 };
    leg(
        &mut person.leg,
        (p.hip.0, p.hip.1 - under),
        &fanned(&p.legs[0], p.hip, -fan),
        pose.front,
    );
    // From the front the arm begins at the lower edge of the shoulders, and the forearm points to who looks.
    let near = p.first();
    match pose.front {
        true => {
            let short = |at: Point| toward(near.elbow, at, 0.45);
            let near = Arm {
                elbow: near.elbow,
                wrist: short(near.wrist),
                fingers: short(near.fingers),
            };
            let root = offset(p.root, unit(p.root, near.elbow), cm(0.085));
            arm(&mut person.arm, root, &near, hands[0]);
        }
        false => arm(&mut person.arm, p.root, &near, hands[0]),
    }
    person
}

pub fn cm(share: f64) -> f64 {
    share * STANDARD.stature_cm
}

fn toward(from: Point, to: Point, share: f64) -> Point {
    (
        from.0 + (to.0 - from.0) * share,
        from.1 + (to.1 - from.1) * share,
    )
}

pub fn unit(from: Point, to: Point) -> Point {
    let (x, y) = (to.0 - from.0, to.1 - from.1);
    let long = libm::hypot(x, y).max(1e-9);
    (x / long, y / long)
}

pub fn offset(from: Point, direction: Point, by: f64) -> Point {
    (from.0 + direction.0 * by, from.1 + direction.1 * by)
}

/// A quarter turn to the right.
fn right((x, y): Point) -> Point {
    (y, -x)
}

fn shifted(leg: &Leg, place: impl Fn(Point) -> Point) -> Leg {
    Leg {
        knee: place(leg.knee),
        ankle: place(leg.ankle),
        heel: place(leg.heel),
        ball: place(leg.ball),
        toes: place(leg.toes),
    }
}

fn fanned(leg: &Leg, hip: Point, by: f64) -> Leg {
    shifted(leg, |p| {
        (p.0, p.1 + by * libm::hypot(p.0 - hip.0, p.1 - hip.1))
    })
}

pub fn trunk(pen: &mut Pen, pose: &Pose) {
    let p = &pose.points;
    let [upper, middle, lower] = [
        unit(p.shoulder, p.chest),
        unit(p.chest, p.waist),
        unit(p.waist, p.hip),
    ];
    // From the neck to below the hips: where, along which part, and how thick in front and behind.
    let flat = pose.front;
    let stations = [
        (offset(p.shoulder, upper, -cm(0.026)), upper, 0.026, 0.03),
        (offset(p.shoulder, upper, cm(0.012)), upper, 0.043, 0.05),
        (toward(p.shoulder, p.chest, 0.75), upper, 0.062, 0.055),
        (toward(p.chest, p.waist, 0.45), middle, 0.05, 0.046),
        (toward(p.waist, p.hip, 0.1), lower, 0.045, 0.043),
        (toward(p.waist, p.hip, 0.78), lower, 0.046, 0.058),
        (offset(p.hip, lower, cm(0.022)), lower, 0.038, 0.05),
    ];
    let side = |front: bool| {
        let mut wide = WIDE.iter();
        stations.map(|(at, way, ahead, behind)| {
            let wide = wide.next().copied().unwrap_or_default();
            let thick = match (flat, front) {
                (true, _) => wide,
                (false, true) => ahead,
                (false, false) => behind,
            };
            let sign = if front { 1.0 } else { -1.0 };
            offset(at, right(way), sign * cm(thick))
        })
    };
    let mut outline = side(true).to_vec();
    outline.push(offset(p.hip, lower, cm(0.046)));
    outline.extend(side(false).iter().rev());
    pen.outline(&outline);
}

pub fn head(pen: &mut Pen, pose: &Pose) {
    let p = &pose.points;
    let up = unit(p.shoulder, p.vertex);
    // The face looks to the left of the way up.
    let ahead = (-up.1, up.0);
    let middle = offset(
        offset(p.vertex, up, -cm(HEAD / 2.0)),
        ahead,
        if pose.front { 0.0 } else { cm(0.01) },
    );
    let neck = unit(p.chest, p.shoulder);
    let wide = if pose.front { 1.15 } else { 1.0 };
    pen.stroke(
        (offset(p.shoulder, neck, cm(0.006)), cm(half::NECK * 1.25)),
        (
            offset(offset(middle, up, -cm(0.036)), ahead, -cm(0.006)),
            cm(half::NECK * wide),
        ),
    );
    let height = cm(HEAD);
    let face = FACE.map(|(x, y)| {
        // From the front both sides are round.
        let x = match pose.front {
            true => x.clamp(-0.34, 0.34) * if y < -0.2 { 0.8 } else { 1.0 },
            false => x,
        };
        offset(offset(middle, up, y * height), ahead, x * height)
    });
    pen.outline(&face);
}

pub fn arm(pen: &mut Pen, shoulder: Point, arm: &Arm, hand: HandShape) {
    pen.limb(
        (shoulder, cm(half::DELTOID)),
        (arm.elbow, cm(half::ELBOW)),
        Swell {
            left: (cm(0.0035), 0.5),
            right: (cm(0.0045), 0.55),
        },
    );
    pen.limb(
        (arm.elbow, cm(half::ELBOW)),
        (arm.wrist, cm(half::WRIST)),
        Swell {
            left: (cm(0.0055), 0.28),
            right: (cm(0.004), 0.3),
        },
    );
    self::hand(pen, arm, hand);
}

fn hand(pen: &mut Pen, arm: &Arm, shape: HandShape) {
    let along = unit(arm.wrist, arm.fingers);
    match shape {
        HandShape::Fist => {
            pen.stroke((arm.wrist, cm(half::WRIST)), (arm.fingers, cm(half::FIST)));
        }
        HandShape::Flat => {
            // The palm lies on the floor, fingers and thumb level.
            let ahead = along.0.signum();
            let tips = (arm.fingers.0 + ahead * cm(0.05), arm.fingers.1 - cm(0.002));
            pen.chain(&[
                (arm.wrist, cm(half::WRIST)),
                (arm.fingers, cm(0.0125)),
                (tips, cm(0.007)),
            ]);
            pen.stroke(
                (toward(arm.wrist, arm.fingers, 0.4), cm(0.011)),
                (
                    (arm.fingers.0 - ahead * cm(0.003), tips.1 - cm(0.001)),
                    cm(0.0065),
                ),
            );
        }
        HandShape::Free => {
            let palm = right(along);
            let knuckle = offset(arm.fingers, palm, -cm(0.003));
            let middle = offset(offset(knuckle, along, cm(0.028)), palm, -cm(0.006));
            let tips = offset(offset(middle, along, cm(0.02)), palm, -cm(0.014));
            pen.chain(&[
                (arm.wrist, cm(half::WRIST)),
                (toward(arm.wrist, knuckle, 0.8), cm(0.0175)),
                (middle, cm(0.0115)),
                (tips, cm(0.0075)),
            ]);
            let thumb = offset(toward(arm.wrist, arm.fingers, 0.95), palm, cm(0.021));
            pen.stroke(
                (toward(arm.wrist, arm.fingers, 0.3), cm(0.011)),
                (thumb, cm(0.0065)),
            );
        }
    }
}

fn leg(pen: &mut Pen, hip: Point, leg: &Leg, front: bool) {
    long_leg(pen, hip, leg);
    foot(pen, leg, front);
}

/// A leg without its foot.
pub fn long_leg(pen: &mut Pen, hip: Point, leg: &Leg) {
    pen.limb(
        (hip, cm(half::THIGH)),
        (leg.knee, cm(half::KNEE)),
        Swell {
            left: (cm(0.004), 0.5),
            right: (cm(0.007), 0.5),
        },
    );
    pen.limb(
        (leg.knee, cm(half::KNEE)),
        (leg.ankle, cm(half::ANKLE)),
        Swell {
            left: (cm(0.0125), 0.3),
            right: (cm(0.002), 0.4),
        },
    );
}

/// The foot's points lie on its sole; its outline stands on them.
fn foot(pen: &mut Pen, leg: &Leg, front: bool) {
    let along = unit(leg.heel, leg.ball);
    let under = toward(leg.heel, leg.toes, 0.25);
    let up = {
        let (x, y) = (-along.1, along.0);
        let ankle = (leg.ankle.0 - under.0, leg.ankle.1 - under.1);
        if x * ankle.0 + y * ankle.1 >= 0.0 {
            (x, y)
        } else {
            (-x, -y)
        }
    };
    let at = |from: Point, ahead: f64, high: f64| offset(offset(from, along, ahead), up, high);
    if front {
        // Seen from the toes: short.
        let ankle = offset(leg.ankle, along, 0.0);
        pen.stroke(
            (ankle, cm(half::ANKLE)),
            (at(under, cm(0.02), cm(0.017)), cm(0.017)),
        );
        return;
    }
    let toe = unit(leg.ball, leg.toes);
    let toe_up = if toe.0 * along.0 + toe.1 * along.1 > 0.999 {
        up
    } else {
        let (x, y) = (-toe.1, toe.0);
        if x * up.0 + y * up.1 >= 0.0 {
            (x, y)
        } else {
            (-x, -y)
        }
    };
    pen.outline(&[
        at(leg.ankle, -3.1, 2.0),
        at(leg.heel, 0.4, 4.4),
        at(leg.heel, 0.2, 1.4),
        at(leg.heel, 2.4, 0.0),
        at(leg.heel, 10.0, 0.7),
        at(leg.ball, -0.6, 0.0),
        offset(leg.toes, toe, -1.4),
        offset(offset(leg.toes, toe, 0.0), toe_up, 1.4),
        offset(offset(leg.toes, toe, -2.4), toe_up, 3.0),
        at(leg.ball, -1.2, 4.6),
        at(leg.ankle, 5.4, -0.4),
        at(leg.ankle, 3.0, 2.6),
    ]);
    pen.circle(leg.ankle, cm(half::ANKLE));
}
