//! A client's route: what is still to own on the way to a goal, when what the results show is free.

use super::evidence::{Evidence, Truth};
use crate::chain::{Route, newcomer_route, stages};
use crate::curriculum::{Curriculum, Day, Leaf, Need};
use crate::results::Person;
use std::sync::Arc;

/// The route of a client to a goal. A true leaf is free; any other costs the movement's weeks, once. Empty when the goal
/// itself is shown. `None` when it cannot be reached.
pub fn client_route(
    curriculum: &Curriculum,
    person: &Person,
    today: Day,
    goal: &Leaf,
) -> Option<Route> {
    let evidence = Evidence::new(curriculum, person, today);
    if evidence.leaf(goal, curriculum.movement(goal.movement).guarded()) == Truth::True {
        return Some(Route {
            movements: Vec::new(),
            half_weeks: 0,
            exact: true,
            at_least_half_weeks: 0,
            guessed: false,
        });
    }
    let mut ahead = curriculum.clone();
    for movement in &mut ahead.movements {
        let movement = Arc::make_mut(movement);
        let guarded = movement.guarded();
        movement.needs = without_true(&movement.needs, &|leaf| {
            evidence.leaf(leaf, guarded) == Truth::True
        });
    }
    newcomer_route(&ahead, &stages(&ahead), goal.movement)
}

/// A tree in which every leaf that is true asks nothing.
fn without_true(need: &Need<Leaf>, is_true: &dyn Fn(&Leaf) -> bool) -> Need<Leaf> {
    let parts = |parts: &[Need<Leaf>]| parts.iter().map(|p| without_true(p, is_true)).collect();
    match need {
        Need::Leaf(leaf) if is_true(leaf) => Need::nothing(),
        Need::Leaf(leaf) => Need::Leaf(leaf.clone()),
        Need::All(all) => Need::All(parts(all)),
        Need::Any(any) => Need::Any(parts(any)),
        Need::AtLeast(k, of) => Need::AtLeast(*k, parts(of)),
    }
}
