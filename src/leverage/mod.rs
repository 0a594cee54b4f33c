//! Leverage: a planar, static, segmented body in a declared posture. Says whether the posture closes on what it touches and
//! stands, whether it goes through the floor or itself, how far it is turned upside down, how much of the body weight the hands
//! carry, and the turning load at shoulder, elbow, wrist, hip and knee. Some shipped postures are laid where they are said to be,
//! for the eye: of those no load is told but what hands or feet carry alone.
//!
//! Knows bodies and postures only. Assumptions, stated once:
//! - one plane; arms alike; angles as seen from the side; limbs that point out of the plane are shorter in it;
//! - the body does not bend where no angle is given; the shoulder joint stays where it is in the trunk;
//! - floor, forearms, grip, box and head push straight up; a wall pushes sideways; a flat foot is pressed under its ankle, but standing
//!   freely the centre of mass is over the middle of the foot;
//! - hands press at the wrist, or at the knuckles round a grip; balls of the feet, knees and wrists lie their half thickness high;
//! - a body on its hands alone balances: its centre of mass is straight above them, or hangs straight below.

mod balance;
mod body;
mod contact;
mod forces;
mod named;
mod place;
mod plane;
mod posture;
mod published;
mod shape;
mod through;

pub use balance::{Pose, PostureError, Prop, Turning};
pub use body::{Body, FEMALE, MALE, STANDARD, Segment};
pub use named::names;
pub use plane::Point;
pub use posture::{ArmsOf, Solved, arms, on_the_way, solve, solve_for};
pub use published::{PUBLISHED, Published, pulled_along_the_arms, unchecked};
pub use shape::{Arm, Leg, Points};
pub use through::{Through, through};
