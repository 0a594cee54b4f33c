//! From joint angles to points: the body laid out with its shoulder at the origin and its hips ahead, forward of the body down.

use super::body::{ANKLE_ALONG, BALL_ALONG, Body, Segment, rest};
use super::plane::{Point, along, part_way};
use crate::curriculum::posture::Joints;
use std::f64::consts::PI;

/// Angles of one leg in degrees: 180 is straight, at the ankle 90 is square.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct LegAngles {
    pub hip: f64,
    pub knee: f64,
    pub ankle: f64,
}

/// All angles of a body, in degrees, as seen from the side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Shape {
    /// Between arm and trunk: 0 by the side, 90 forward, 180 overhead, less than 0 behind.
    pub shoulder: f64,
    pub elbow: f64,
    /// The leg that is longer, or stands, first.
    pub legs: [LegAngles; 2],
    /// 180 straight, less round, more arched; the trunk is the line from shoulder to hip whatever its curve.
    pub spine: f64,
    /// How far the head is bent back from the line of the chest, in degrees.
    pub neck: f64,
    /// Shoulder and elbow of an arm that is not as the first; the first is the one that touches.
    pub other_arm: Option<(f64, f64)>,
    /// At the wrist of the first arm, or of both alike: 180 straight, more where the back of the hand is bent towards the forearm, less where the palm is.
    pub wrist: f64,
    /// How far the shoulders are drawn up to the ears, in shares of the length from their line to the vertex.
    pub sunk: f64,
    /// How far the upper arms point out of the plane to each side.
    pub elbows_out: f64,
    /// How far the legs point out of the plane to each side.
    pub legs_apart: f64,
}

impl Shape {
    /// Both sides alike, the spine straight, nothing out of the plane, the ankles square.
    pub const fn new(shoulder: f64, elbow: f64, hip: f64, knee: f64) -> Shape {
        let leg = LegAngles {
            hip,
            knee,
            ankle: 90.0,
        };
        Shape {
            shoulder,
            elbow,
            legs: [leg, leg],
            spine: 180.0,
            neck: 0.0,
            other_arm: None,
            wrist: 180.0,
            sunk: 0.0,
            elbows_out: 0.0,
            legs_apart: 0.0,
        }
    }

    /// Feet pointed.
    pub const fn pointed(mut self) -> Shape {
        self.legs[0].ankle = 165.0;
        self.legs[1].ankle = 165.0;
        self
    }

    /// The head bent back by so many degrees.
    pub const fn looking_up(mut self, degrees: f64) -> Shape {
        self.neck = degrees;
        self
    }

    /// The second leg.
    pub const fn other_leg(mut self, hip: f64, knee: f64, ankle: f64) -> Shape {
        self.legs[1] = LegAngles { hip, knee, ankle };
        self
    }

    /// The second arm.
    pub const fn other_arm(mut self, shoulder: f64, elbow: f64) -> Shape {
        self.other_arm = Some((shoulder, elbow));
        self
    }

    /// Both ankles.
    pub const fn ankles(mut self, degrees: f64) -> Shape {
        self.legs[0].ankle = degrees;
        self.legs[1].ankle = degrees;
        self
    }

    pub const fn spine(mut self, degrees: f64) -> Shape {
        self.spine = degrees;
        self
    }

    pub const fn wrist(mut self, degrees: f64) -> Shape {
        self.wrist = degrees;
        self
    }

    pub const fn elbows_out(mut self, degrees: f64) -> Shape {
        self.elbows_out = degrees;
        self
    }

    pub const fn sunk(mut self, share: f64) -> Shape {
        self.sunk = share;
        self
    }

    /// Every angle `share` of the way to another shape.
    pub fn part_way(&self, to: &Shape, share: f64) -> Shape {
        let mix = |from: f64, to: f64| from + (to - from) * share;
        let leg = |i: usize| {
            let (from, to): (&LegAngles, &LegAngles) = (&self.legs[i], &to.legs[i]);
            LegAngles {
                hip: mix(from.hip, to.hip),
                knee: mix(from.knee, to.knee),
                ankle: mix(from.ankle, to.ankle),
            }
        };
        let other = |shape: &Shape| shape.other_arm.unwrap_or((shape.shoulder, shape.elbow));
        let both = self.other_arm.or(to.other_arm).map(|_| {
            let (from, to) = (other(self), other(to));
            (mix(from.0, to.0), mix(from.1, to.1))
        });
        Shape {
            shoulder: mix(self.shoulder, to.shoulder),
            elbow: mix(self.elbow, to.elbow),
            legs: [leg(0), leg(1)],
            spine: mix(self.spine, to.spine),
            neck: mix(self.neck, to.neck),
            other_arm: both,
            wrist: mix(self.wrist, to.wrist),
            sunk: mix(self.sunk, to.sunk),
            elbows_out: mix(self.elbows_out, to.elbows_out),
            legs_apart: mix(self.legs_apart, to.legs_apart),
        }
    }

    /// What the coach says overrides; of two legs that differ, the first.
    pub fn with(mut self, joints: &Joints) -> Shape {
        self.shoulder = joints.shoulder.unwrap_or(self.shoulder);
        self.elbow = joints.elbow.unwrap_or(self.elbow);
        let alike = self.legs[0] == self.legs[1];
        self.legs[0].hip = joints.hip.unwrap_or(self.legs[0].hip);
        self.legs[0].knee = joints.knee.unwrap_or(self.legs[0].knee);
        if alike {
            self.legs[1] = self.legs[0];
        }
        self
    }

    /// The direction of the straight line from shoulder to hand, in degrees from the trunk, forward positive; upper arm and
    /// forearm counted as equally long.
    pub fn reach(&self) -> f64 {
        self.shoulder + (180.0 - self.elbow) / 2.0
    }

    pub fn points(&self, body: &Body) -> Points {
        let cm = body.stature_cm;
        let walk = |from: Point, direction: f64, segment: Segment, seen: f64| {
            along(from, direction, segment.length * seen * cm)
        };
        let shoulder = (0.0, 0.0);
        // The trunk's three parts bend alike at two places; what they make is turned so that the hips lie straight ahead.
        let bend = (180.0 - self.spine).to_radians() / 2.0;
        let trunk = |level: f64| {
            let chest = walk(shoulder, bend - level, body.chest, 1.0);
            let waist = walk(chest, -level, body.waist, 1.0);
            (chest, waist, walk(waist, -bend - level, body.pelvis, 1.0))
        };
        let raw = trunk(0.0).2;
        let level = libm::atan2(raw.1, raw.0);
        let (chest, waist, hip) = trunk(level);
        let vertex = walk(
            shoulder,
            PI + bend - level - self.neck.to_radians(),
            body.head,
            1.0,
        );
        let root = part_way(shoulder, vertex, self.sunk);
        let out = libm::cos(self.elbows_out.to_radians());
        let arm = |shoulder_angle: f64, elbow_angle: f64, bent: f64| {
            let upper = -shoulder_angle.to_radians();
            let lower = upper - (180.0 - elbow_angle).to_radians();
            let elbow = walk(root, upper, body.upper_arm, out);
            let wrist = walk(elbow, lower, body.forearm, 1.0);
            let hand = lower + (bent - 180.0).to_radians();
            let fingers = walk(wrist, hand, body.hand, 1.0);
            Arm {
                elbow,
                wrist,
                fingers,
            }
        };
        let first = arm(self.shoulder, self.elbow, self.wrist);
        let other = self.other_arm.map_or(first, |(s, e)| arm(s, e, 180.0));
        Points {
            vertex,
            shoulder,
            chest,
            waist,
            hip,
            root,
            elbow: first.elbow,
            wrist: first.wrist,
            fingers: first.fingers,
            other,
            legs: self.legs_from(hip, body),
        }
    }

    fn legs_from(&self, hip: Point, body: &Body) -> [Leg; 2] {
        let (cm, seen) = (body.stature_cm, libm::cos(self.legs_apart.to_radians()));
        self.legs.map(|angles| {
            let thigh = -(180.0 - angles.hip).to_radians();
            let shank = thigh + (180.0 - angles.knee).to_radians();
            let knee = along(hip, thigh, body.thigh.length * seen * cm);
            let ankle = along(knee, shank, body.shank.length * seen * cm);
            let forward = shank - (180.0 - angles.ankle).to_radians();
            Leg::with_foot(knee, ankle, forward, body)
        })
    }
}

/// Points of one leg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    pub knee: Point,
    pub ankle: Point,
    pub heel: Point,
    pub ball: Point,
    pub toes: Point,
}

impl Leg {
    /// A leg whose sole points in a direction: facing along it, the ankle lies to the right of the sole.
    pub(super) fn with_foot(knee: Point, ankle: Point, forward: f64, body: &Body) -> Leg {
        let cm = body.stature_cm;
        let under = along(ankle, forward + PI / 2.0, rest::ANKLE * cm);
        let sole = |share: f64| {
            along(
                under,
                forward,
                (share - ANKLE_ALONG) * body.foot.length * cm,
            )
        };
        Leg {
            knee,
            ankle,
            heel: sole(0.0),
            ball: sole(BALL_ALONG),
            toes: sole(1.0),
        }
    }

    /// The same leg with its foot flat on a level floor. Bodies are turned, never mirrored: toes then point to the left.
    pub(super) fn flat(self, body: &Body) -> Leg {
        Leg::with_foot(self.knee, self.ankle, PI, body)
    }

    fn map(self, place: &impl Fn(Point) -> Point) -> Leg {
        Leg {
            knee: place(self.knee),
            ankle: place(self.ankle),
            heel: place(self.heel),
            ball: place(self.ball),
            toes: place(self.toes),
        }
    }
}

/// Points of one arm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arm {
    pub elbow: Point,
    pub wrist: Point,
    /// The knuckles.
    pub fingers: Point,
}

/// The points of a body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Points {
    pub vertex: Point,
    /// Middle of the line between the shoulder joints.
    pub shoulder: Point,
    /// Lower end of the breastbone.
    pub chest: Point,
    /// Height of the navel.
    pub waist: Point,
    pub hip: Point,
    /// Where the arms begin: the shoulder, but for shoulders drawn up or down.
    pub root: Point,
    /// Of the arm that touches, or of both.
    pub elbow: Point,
    pub wrist: Point,
    /// The knuckles.
    pub fingers: Point,
    /// The second arm; as the first where both are alike.
    pub other: Arm,
    /// The leg that is longer, or stands, first.
    pub legs: [Leg; 2],
}

impl Points {
    pub(super) fn map(self, place: impl Fn(Point) -> Point) -> Points {
        Points {
            vertex: place(self.vertex),
            shoulder: place(self.shoulder),
            chest: place(self.chest),
            waist: place(self.waist),
            hip: place(self.hip),
            root: place(self.root),
            elbow: place(self.elbow),
            wrist: place(self.wrist),
            fingers: place(self.fingers),
            other: Arm {
                elbow: place(self.other.elbow),
                wrist: place(self.other.wrist),
                fingers: place(self.other.fingers),
            },
            legs: self.legs.map(|leg| leg.map(&place)),
        }
    }

    /// The arm that touches.
    pub fn first(&self) -> Arm {
        Arm {
            elbow: self.elbow,
            wrist: self.wrist,
            fingers: self.fingers,
        }
    }

    /// Masses as shares of the body, each where its centre lies.
    pub(super) fn masses(&self, body: &Body) -> Masses {
        let whole = body.mass();
        let one = |segment: Segment, from: Point, to: Point, share: f64| {
            (
                segment.mass * share / whole,
                part_way(from, to, segment.centre / segment.length),
            )
        };
        Masses {
            trunk: [
                one(body.head, self.shoulder, self.vertex, 1.0),
                one(body.chest, self.shoulder, self.chest, 1.0),
                one(body.waist, self.chest, self.waist, 1.0),
                one(body.pelvis, self.waist, self.hip, 1.0),
            ],
            arms: [self.first(), self.other].map(|arm| {
                [
                    one(body.upper_arm, self.root, arm.elbow, 0.5),
                    one(body.forearm, arm.elbow, arm.wrist, 0.5),
                    one(body.hand, arm.wrist, arm.fingers, 0.5),
                ]
            }),
            legs: self.legs.map(|leg| {
                let (share, sole) = one(body.foot, leg.heel, leg.toes, 0.5);
                // Half way between the sole and the height of the ankle.
                let under = part_way(leg.heel, leg.toes, ANKLE_ALONG);
                let up = part_way(
                    (0.0, 0.0),
                    (leg.ankle.0 - under.0, leg.ankle.1 - under.1),
                    0.5,
                );
                [
                    one(body.thigh, self.hip, leg.knee, 0.5),
                    one(body.shank, leg.knee, leg.ankle, 0.5),
                    (share, (sole.0 + up.0, sole.1 + up.1)),
                ]
            }),
        }
    }
}

/// Shares of body mass with their places, by part of the body.
pub(super) struct Masses {
    pub trunk: [(f64, Point); 4],
    /// Upper arm, forearm and hand of each arm.
    pub arms: [[(f64, Point); 3]; 2],
    /// Thigh, shank and foot of each leg.
    pub legs: [[(f64, Point); 3]; 2],
}

impl Masses {
    pub fn all(&self) -> impl Iterator<Item = (f64, Point)> + '_ {
        self.trunk
            .iter()
            .chain(self.arms.iter().flatten())
            .chain(self.legs.iter().flatten())
            .copied()
    }
}

/// The whole of some masses and where its centre lies.
pub(super) fn centre(masses: impl Iterator<Item = (f64, Point)>) -> (f64, Point) {
    let (mass, x, y) = masses.fold((0.0, 0.0, 0.0), |(mass, x, y), (share, at)| {
        (mass + share, x + share * at.0, y + share * at.1)
    });
    (mass, (x / mass, y / mass))
}
