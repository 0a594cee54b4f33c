//! Everything under a skill, resolved: stages, essentials, alternatives, loops, routes, ladders, neighbours.
//!
//! Knows the model only; nothing of findings or pages.

mod components;
mod essential;
pub mod flat;
mod ground;
mod ladder;
mod necessary;
mod neighbour;
mod reach;
mod resolved;
mod route;

pub use essential::essentials;
pub use flat::Flat;
pub use ladder::{Step, chain_ladders, ladder, ladders};
pub use necessary::{Implications, necessary_leaves};
pub use neighbour::{Grid, GridCell, Neighbour, Slice, grid, neighbours_of};
pub use reach::{Loop, Stages, below, loops, stages, stages_where};
pub use resolved::{Chains, Resolved};
pub use route::{BOUNDS, Route, median_half_weeks, newcomer_route, route_where};

use crate::curriculum::{Curriculum, Leaf, MovementIx};

/// The chain of a goal.
#[derive(Clone, Debug)]
pub struct Chain {
    pub goal: Leaf,
    /// The goal and everything that its needs mention, all the way down; by stage, then id. Movements without a stage are
    /// left out.
    pub movements: Vec<Link>,
}

/// A movement in a chain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Link {
    pub movement: MovementIx,
    pub stage: u32,
    /// The goal cannot be reached without it.
    pub essential: bool,
}

/// Resolves the chain of a goal.
pub fn resolve(curriculum: &Curriculum, stages: &Stages, goal: &Leaf) -> Chain {
    let members = below(curriculum, goal.movement);
    let essential = essentials(curriculum, stages, goal.movement);
    let mut movements: Vec<Link> = members
        .into_iter()
        .filter_map(|ix| {
            Some(Link {
                movement: ix,
                stage: stages.of(ix)?,
                essential: essential.contains(&ix),
            })
        })
        .collect();
    movements.sort_by_key(|l| (l.stage, l.movement));
    Chain {
        goal: goal.clone(),
        movements,
    }
}
