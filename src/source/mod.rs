//! What the coach wrote, with every place in it: a snapshot of files, byte spans, YAML trees, Markdown outlines and findings.
//!
//! Knows nothing of movements. Pure: the files arrive as values, from `io` or from a test.

pub mod clip;
pub mod diagnostic;
mod legible;
pub mod markdown;
pub mod meant;
pub mod pixels;
pub mod raster;
pub mod rules;
pub mod snapshot;
pub mod suggest;
pub mod yaml;

pub use diagnostic::{Diagnostic, Findings, Headline};
pub use legible::{legible, legible_json, steers};
pub use rules::{Rule, Severity};
pub use snapshot::{Content, FileId, Snapshot, SourceFile, Span, Stray};
