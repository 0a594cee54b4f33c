//! What a set says of strength: the one-rep maximum, repetition tables, and the load of sessions.
//!
//! Estimates all of them, and said so wherever they are shown.

pub mod best;
mod estimate;
pub mod load;
pub mod one_rep_max;

pub use best::Best;
pub use estimate::{Estimate, estimates};
