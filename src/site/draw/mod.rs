//! What is drawn as SVG: figures from their joint angles, and the map of a chain. Knows nothing of pages.

pub mod figure;
pub mod map;
