//! The numbers of strength work: one-rep maximum, repetition tables, session load, working sets, the plan over weeks.
//!
//! Estimates all of them, and said so wherever they are shown. Works on readiness: only what is open or owned is ever trained.

mod best;
pub mod calendar;
mod estimate;
pub mod load;
pub mod one_rep_max;
mod plan;
mod progress;
mod working;

pub use best::Best;
pub use estimate::{Estimate, estimates};
pub use plan::{Plan, Session, Week, plan};
pub use working::{Fit, Pick, Practice, Prescription, Working, working};
