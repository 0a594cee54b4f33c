//! A client's route: what is still to own on the way to a goal, when what the results show is free.

use super::evidence::{Evidence, Truth};
use crate::chain::{Route, route_where};
use crate::curriculum::{Leaf, MovementIx};

/// The route of a client to a goal. A true leaf is free; any other costs the movement's weeks, once. Empty when the goal
/// itself is shown. `None` when it cannot be reached.
pub fn client_route(evidence: &Evidence<'_>, goal: &Leaf) -> Option<Route> {
    let curriculum = evidence.curriculum;
    let guarded = |ix: MovementIx| curriculum.movement(ix).guarded();
    if evidence.leaf(goal, guarded(goal.movement)) == Truth::True {
        return Some(Route {
            movements: Vec::new(),
            half_weeks: 0,
            exact: true,
            at_least_half_weeks: 0,
            guessed: false,
        });
    }
    route_where(curriculum, goal.movement, &|ix, leaf| {
        evidence.leaf(leaf, guarded(ix)) == Truth::True
    })
}
