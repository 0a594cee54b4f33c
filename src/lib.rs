//! Rungbook: a checked curriculum of strength skills becomes a published site.
//!
//! ```text
//! files -> source -> reading -> curriculum -> chain, leverage -> proof -> site -> files
//! ```
//!
//! Everything but [`io`] and [`command`] is pure: a snapshot of files goes in, findings and pages come out.

pub mod chain;
pub mod changes;
pub mod command;
pub mod curriculum;
pub mod history;
pub mod io;
pub mod leverage;
pub mod morning;
pub mod placement;
pub mod proof;
pub mod readiness;
pub mod reading;
pub mod rename;
pub mod results;
pub mod screening;
pub mod site;
pub mod source;
pub mod strength;
pub mod training;
pub mod weigh;
pub mod words;
