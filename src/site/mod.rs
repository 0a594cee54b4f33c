//! The published site as pairs of path and bytes. Pure: nothing here comes from the clock, the machine or an earlier site.
//!
//! [`build`] is the front door. Rooms, each of which knows those before it alone: `theme`, `names`, `material`, `draw`, `media`,
//! `feeds`, `pages`, `audit`; above them the [`Renderer`], which lists the files and makes each, and the [`Outcome`].

pub mod audit;
mod draw;
mod feeds;
mod material;
mod media;
mod names;
mod outcome;
mod pages;
mod renderer;
pub mod theme;

pub use crate::words::escape::escape;
pub use draw::{figure, map};
pub use material::File;
pub use outcome::{
    Options, Outcome, Site, Written, build, printed_histories, printed_plan, printed_weighed,
};
pub use renderer::Renderer;
pub use theme::saying::all as before_scripts;
pub use theme::{Theme, ThemeError};
