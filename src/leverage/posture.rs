//! From a declared posture to its two ends in space.

use super::balance::{Pose, PostureError, Turning, stand};
use super::body::{Body, STANDARD};
use super::named::filled;
use crate::curriculum::posture::{Posture, Touch};

/// A posture that stands: its start, and its other end where the movement has one.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// The shipped posture that it is, if it is one.
    pub named: Option<&'static str>,
    pub touches: Vec<Touch>,
    /// Centimetres above the floor or the grip's own height.
    pub hands_at: f64,
    /// The same; `None` where the coach says nothing.
    pub feet_at: Option<f64>,
    /// Degrees that each leg points out of the plane.
    pub legs_apart: f64,
    pub start: Pose,
    pub end: Option<Pose>,
}

impl Solved {
    pub fn poses(&self) -> impl Iterator<Item = &Pose> {
        std::iter::once(&self.start).chain(&self.end)
    }

    /// The most inverted of its ends; see [`Pose::inversion`].
    pub fn inversion(&self) -> u8 {
        self.poses().map(Pose::inversion).max().unwrap_or(0)
    }

    /// The larger turning load of its ends at each joint, in body weight x centimetres.
    pub fn turning(&self) -> Option<Turning> {
        self.poses()
            .map(|p| p.turning)
            .reduce(|one, other| {
                let (one, other) = (one?, other?);
                Some(Turning {
                    shoulder: one.shoulder.max(other.shoulder),
                    hip: one.hip.max(other.hip),
                })
            })
            .flatten()
    }
}

/// Stands a body in a posture.
///
/// # Errors
/// An unknown name; contacts that cannot be reached; a centre of mass beyond its support; contacts that say nothing.
pub fn solve_for(posture: &Posture, body: &Body) -> Result<Solved, PostureError> {
    let filled = filled(posture)?;
    let at = |shape| stand(&filled.setting, &shape, body);
    let (start, end) = (at(filled.start)?, filled.end.map(at).transpose()?);
    Ok(Solved {
        named: filled.named.map(|n| n.name),
        hands_at: filled.setting.hands_at,
        feet_at: filled.setting.feet_at,
        legs_apart: filled.start.legs_apart,
        touches: filled.setting.touches,
        start,
        end,
    })
}

/// Where a declared posture has the arms, and what it touches: told without standing a body in it.
#[derive(Clone, Debug, PartialEq)]
pub struct ArmsOf {
    /// Degrees between upper arm and trunk at the start, and at the other end where there is one.
    pub angles: Vec<f64>,
    /// Degrees at the elbow, likewise: 180 is straight.
    pub elbows: Vec<f64>,
    pub touches: Vec<Touch>,
}

/// Where a posture has the arms; `None` where its name is unknown.
pub fn arms(posture: &Posture) -> Option<ArmsOf> {
    let filled = filled(posture).ok()?;
    let ends = || std::iter::once(&filled.start).chain(&filled.end);
    Some(ArmsOf {
        angles: ends().map(|shape| shape.shoulder).collect(),
        elbows: ends().map(|shape| shape.elbow).collect(),
        touches: filled.setting.touches,
    })
}

/// Stands the [`STANDARD`] body in a posture: what findings, tables and figures use.
///
/// # Errors
/// As [`solve_for`].
pub fn solve(posture: &Posture) -> Result<Solved, PostureError> {
    solve_for(posture, &STANDARD)
}
