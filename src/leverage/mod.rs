//! Leverage: a planar, static, segmented body in a declared posture. Says whether the posture closes on what it touches, how far
//! it is turned upside down, and how much of the body weight the hands carry.
//!
//! Knows bodies and postures only. Assumptions, stated once: one plane; both sides alike; the body does not bend where no angle
//! is given; the ground pushes straight up; hands and feet are points.

mod body;
mod posture;

pub use body::{Body, FEMALE, MALE};
pub use posture::{NAMES, Pose, PostureError, pose};
