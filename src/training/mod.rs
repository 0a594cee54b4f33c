//! Training: what stands between a person and the goal, which of it can be worked on today, how much, and what has to be
//! left alone.
//!
//! Pure: the day is an input. The page's own script gives the same answers from the published tables.

pub mod constants;

pub use constants::{Constants, K};
