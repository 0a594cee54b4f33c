//! A body laid where a posture says, with hands and feet put on their places: two-link limbs, solved backwards.

use super::balance::{Setting, Stance};
use super::body::{ANKLE_ALONG, BALL_ALONG, Body, STANDARD, rest};
use super::plane::{Point, Turn, along, length};
use super::shape::{Arm, Leg, Points, Shape};
use std::f64::consts::PI;

/// Where the ball of a foot is put, and how far the heel is raised over it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct FootAt {
    /// Centimetres, of the sole under the ball.
    pub ball: Point,
    /// Degrees between the sole and the floor: 0 flat, 90 on the tip; less than 0 on the heel.
    pub heel_up: f64,
}

/// Lays the body with its hips and trunk where they are said to be.
pub(super) fn placed(
    setting: &Setting,
    shape: &Shape,
    body: &Body,
    trunk: f64,
    hip: Point,
) -> Points {
    // Places are written for the body of mean build.
    let scale = body.stature_cm / STANDARD.stature_cm;
    let scaled = |(x, y): Point| (x * scale, y * scale);
    let laid = shape.points(body);
    let turn = Turn {
        by: trunk.to_radians() - PI,
        about: laid.hip,
        to: scaled(hip),
    };
    let mut points = laid.map(|p| turn.of(p));
    if let [Some(hand), _] = setting.hands_to {
        let arm = reach(points.shoulder, scaled(hand), shape, body);
        (points.elbow, points.wrist, points.fingers) = (arm.elbow, arm.wrist, arm.fingers);
        if shape.other_arm.is_none() {
            points.other = arm;
        }
    }
    if let [_, Some(hand)] = setting.hands_to {
        points.other = reach(points.shoulder, scaled(hand), shape, body);
    }
    for (leg, foot) in points.legs.iter_mut().zip(setting.feet_to) {
        if let Some(foot) = foot {
            *leg = step(points.hip, foot, scaled(foot.ball), body);
        }
    }
    if setting.stance == Stance::Flat && setting.feet_to == [None, None] {
        points.legs = points.legs.map(|leg| leg.flat(body));
    }
    points
}

/// The joint between two links, on the side to which `turn` turns.
fn between(from: Point, to: Point, first: f64, second: f64, turn: f64) -> Point {
    let way = (to.0 - from.0, to.1 - from.1);
    let far = length(way).clamp((first - second).abs() + 1e-6, first + second - 1e-6);
    let cosine = (first * first + far * far - second * second) / (2.0 * first * far);
    let open = libm::acos(cosine.clamp(-1.0, 1.0));
    along(from, libm::atan2(way.1, way.0) + turn * open, first)
}

/// From a joint so far towards a place.
fn towards(from: Point, to: Point, long: f64) -> Point {
    along(from, libm::atan2(to.1 - from.1, to.0 - from.0), long)
}

/// An arm whose wrist is at a place, or as near as it comes.
fn reach(shoulder: Point, at: Point, shape: &Shape, body: &Body) -> Arm {
    let cm = body.stature_cm;
    let (upper, lower) = (
        body.upper_arm.length * cm * libm::cos(shape.elbows_out.to_radians()),
        body.forearm.length * cm,
    );
    let elbow = between(shoulder, at, upper, lower, 1.0);
    let wrist = towards(elbow, at, lower);
    let fore = libm::atan2(wrist.1 - elbow.1, wrist.0 - elbow.0);
    let hand = fore + (shape.wrist - 180.0).to_radians();
    Arm {
        elbow,
        wrist,
        fingers: along(wrist, hand, body.hand.length * cm),
    }
}

/// A leg whose foot is at a place, or as near as it comes.
fn step(hip: Point, foot: FootAt, ball: Point, body: &Body) -> Leg {
    let cm = body.stature_cm;
    // Toes point to the left.
    let forward = PI + foot.heel_up.to_radians();
    let thick = rest::BALL * cm * libm::sin(foot.heel_up.to_radians()).abs();
    let ball = (ball.0, ball.1 + thick);
    let under = along(
        ball,
        forward,
        -(BALL_ALONG - ANKLE_ALONG) * body.foot.length * cm,
    );
    let wanted = along(under, forward - PI / 2.0, rest::ANKLE * cm);
    let knee = between(
        hip,
        wanted,
        body.thigh.length * cm,
        body.shank.length * cm,
        -1.0,
    );
    let ankle = towards(knee, wanted, body.shank.length * cm);
    let mut leg = Leg::with_foot(knee, ankle, forward, body);
    if foot.heel_up > 20.0 {
        // Toes bend: they stay on the floor.
        let toes = (1.0 - BALL_ALONG) * body.foot.length * cm;
        let bent = forward - foot.heel_up.min(90.0).to_radians();
        leg.toes = along(leg.ball, bent, toes);
    }
    leg
}
