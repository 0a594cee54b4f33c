//! Necessary leaves: what a needs tree cannot be true without, and what follows from it further down.

use super::reach::Stages;
use crate::curriculum::{Curriculum, Leaf, MovementIx, Need};
use std::collections::HashSet;

/// The leaves necessary to a tree: it is false with that leaf, and every leaf of the same movement that asks at least as much,
/// false and all others true. In the order written; each demand once.
pub fn necessary_leaves(needs: &Need<Leaf>) -> Vec<&Leaf> {
    let leaves = needs.leaves();
    let mut out: Vec<&Leaf> = Vec::new();
    for leaf in &leaves {
        let falls = |other: &Leaf| {
            other.movement == leaf.movement && other.target.asks_at_least(&leaf.target)
        };
        let again = out
            .iter()
            .any(|l| l.movement == leaf.movement && l.target.same_value(&leaf.target));
        if !again && !needs.holds(&|other: &Leaf| !falls(other)) {
            out.push(leaf);
        }
    }
    out
}

/// How `leaf`, a necessary leaf of `of`, already follows from another necessary leaf: the path of leaves from that one down to
/// one that asks at least as much of the same movement. `None` when it does not follow.
///
/// # Complexity
/// A depth-first search bounded by the stage of the leaf's movement; each movement is entered once.
pub fn implied_by<'a>(
    curriculum: &'a Curriculum,
    stages: &Stages,
    of: MovementIx,
    leaf: &Leaf,
) -> Option<Vec<&'a Leaf>> {
    let asked = necessary_leaves(&curriculum.movement(of).needs);
    for other in &asked {
        let stronger = other.movement == leaf.movement && other.target.asks_at_least(&leaf.target);
        if stronger && !other.target.same_value(&leaf.target) {
            return Some(vec![other]);
        }
    }
    let floor = stages.of(leaf.movement)?;
    let mut seen = HashSet::from([of, leaf.movement]);
    for other in asked.into_iter().filter(|o| o.movement != leaf.movement) {
        let mut path = vec![other];
        if descend(curriculum, stages, leaf, floor, &mut seen, &mut path) {
            return Some(path);
        }
    }
    None
}

fn descend<'a>(
    curriculum: &'a Curriculum,
    stages: &Stages,
    leaf: &Leaf,
    floor: u32,
    seen: &mut HashSet<MovementIx>,
    path: &mut Vec<&'a Leaf>,
) -> bool {
    let Some(at) = path.last().map(|l| l.movement) else {
        return false;
    };
    if stages.of(at).is_none_or(|s| s <= floor) || !seen.insert(at) {
        return false;
    }
    for next in necessary_leaves(&curriculum.movement(at).needs) {
        path.push(next);
        if next.movement == leaf.movement && next.target.asks_at_least(&leaf.target) {
            return true;
        }
        if next.movement != leaf.movement && descend(curriculum, stages, leaf, floor, seen, path) {
            return true;
        }
        path.pop();
    }
    false
}
