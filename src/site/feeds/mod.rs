//! Files for programs: open data, the tables and search entries of the page's scripts, feed, manifest, sitemap, worker.

pub mod data;
pub mod definitions;
pub mod extras;
pub mod feed;
pub mod offline;
pub mod search;
pub mod tables;
mod training;
pub mod versions;
