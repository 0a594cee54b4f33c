//! Necessary leaves: what a needs tree cannot be true without, and what follows from it further down.

use super::reach::Stages;
use crate::curriculum::{Curriculum, Leaf, MovementIx, Need, Target};
use foldhash::fast::FixedState;
use rayon::prelude::*;
use std::collections::{HashMap, HashSet};

/// The leaves necessary to a tree: it is false with that leaf, and every leaf of the same movement that asks at least as much,
/// false and all others true. In the order written; each demand once.
///
/// # Complexity
/// For each joint, its leaves sorted; n log n in the leaves, but that the different targets of one movement, which are few, are
/// each held against each other.
pub fn necessary_leaves(needs: &Need<Leaf>) -> Vec<&Leaf> {
    let leaves = needs.leaves();
    let demands = Demands::of(&leaves);
    let fallen = demands.fallen(needs);
    let mut taken: HashMap<MovementIx, Vec<&Target>, FixedState> = HashMap::default();
    let mut out: Vec<&Leaf> = Vec::new();
    for leaf in leaves {
        let necessary = match &fallen {
            Fallen::Always => true,
            Fallen::With(which) => which.binary_search(&demands.number(leaf)).is_ok(),
        };
        if !necessary {
            continue;
        }
        let of = taken.entry(leaf.movement).or_default();
        if !of.iter().any(|t| t.same_value(&leaf.target)) {
            of.push(&leaf.target);
            out.push(leaf);
        }
    }
    out
}

/// The different demands of a tree, numbered as written.
struct Demands {
    numbers: HashMap<(MovementIx, Target), u32, FixedState>,
    /// For each demand those that fall where it falls away, itself among them: of its movement, and asking no more.
    with: Vec<Vec<u32>>,
}

/// Where a part of a tree is false: whatever stands, or with each of these demands; sorted.
enum Fallen {
    Always,
    With(Vec<u32>),
}

impl Demands {
    fn of(leaves: &[&Leaf]) -> Demands {
        let mut numbers = HashMap::default();
        let mut of_movement: HashMap<MovementIx, Vec<(u32, Target)>, FixedState> =
            HashMap::default();
        let mut with: Vec<Vec<u32>> = Vec::new();
        for leaf in leaves {
            let next = with.len() as u32;
            let number = *numbers.entry((leaf.movement, leaf.target)).or_insert(next);
            if number == next {
                with.push(Vec::new());
                let of = of_movement.entry(leaf.movement).or_default();
                of.push((number, leaf.target));
            }
        }
        for of in of_movement.values() {
            for (number, target) in of {
                let asked = of.iter().filter(|(_, t)| target.asks_at_least(t));
                with[*number as usize] = asked.map(|(n, _)| *n).collect();
            }
        }
        Demands { numbers, with }
    }

    fn number(&self, leaf: &Leaf) -> u32 {
        self.numbers[&(leaf.movement, leaf.target)]
    }

    fn fallen(&self, need: &Need<Leaf>) -> Fallen {
        match need {
            Need::Leaf(leaf) => Fallen::With(self.with[self.number(leaf) as usize].clone()),
            Need::All(parts) => self.fewer(parts.len(), parts),
            Need::Any(parts) => self.fewer(1, parts),
            Need::AtLeast(k, parts) => self.fewer(*k as usize, parts),
        }
    }

    /// Where fewer than so many of the parts are left.
    fn fewer(&self, than: usize, parts: &[Need<Leaf>]) -> Fallen {
        let mut standing = 0;
        let mut all: Vec<u32> = Vec::new();
        for part in parts {
            if let Fallen::With(which) = self.fallen(part) {
                standing += 1;
                all.extend(which);
            }
        }
        if standing < than {
            return Fallen::Always;
        }
        all.sort_unstable();
        let same = all.chunk_by(|a, b| a == b);
        let fell = same.filter(|of| standing - of.len() < than);
        Fallen::With(fell.map(|of| of[0]).collect())
    }
}

/// What every movement cannot do without, worked out once, and ready to be asked what follows from what.
pub struct Implications<'a> {
    stages: &'a Stages,
    /// For each movement its necessary leaves by stage, then movement, then as written.
    necessary: Vec<Vec<&'a Leaf>>,
}

impl<'a> Implications<'a> {
    pub fn new(curriculum: &'a Curriculum, stages: &'a Stages) -> Implications<'a> {
        let of = |movement: &'a crate::curriculum::Movement| {
            let mut leaves = necessary_leaves(movement.needs());
            leaves.sort_by_key(|l| (stages.of(l.movement), l.movement));
            leaves
        };
        let movements: Vec<_> = curriculum.movements().map(|(_, m)| m).collect();
        Implications {
            stages,
            necessary: movements.into_par_iter().map(of).collect(),
        }
    }

    /// The necessary leaves of a movement, by stage and movement.
    pub fn necessary(&self, of: MovementIx) -> &[&'a Leaf] {
        &self.necessary[of.at()]
    }

    /// How `leaf`, a necessary leaf of `of`, already follows from another necessary leaf: the path of leaves from that one down
    /// to one that asks at least as much of the same movement. `None` when it does not follow.
    ///
    /// # Complexity
    /// The search goes down no further than the stage of the leaf's movement, begins just above it, where most needs follow
    /// from, and enters each movement once. A need that does not follow costs what lies between it and the movement: whether
    /// one place leads to another has no quicker answer that holds for every shape of needs.
    pub fn by(&self, of: MovementIx, leaf: &Leaf) -> Option<Vec<&'a Leaf>> {
        let stronger = self.same(of, leaf.movement).iter().copied().find(|other| {
            other.target.asks_at_least(&leaf.target) && !other.target.same_value(&leaf.target)
        });
        if let Some(stronger) = stronger {
            return Some(vec![stronger]);
        }
        let floor = self.stages.of(leaf.movement)?;
        let mut seen: HashSet<MovementIx, FixedState> = HashSet::default();
        seen.extend([of, leaf.movement]);
        let mut path: Vec<&Leaf> = Vec::new();
        let mut open = vec![self.above(of, floor).iter()];
        while let Some(parts) = open.last_mut() {
            let Some(next) = parts.next() else {
                open.pop();
                path.pop();
                continue;
            };
            if !seen.insert(next.movement) {
                continue;
            }
            path.push(next);
            let mut same = self.same(next.movement, leaf.movement).iter();
            if let Some(last) = same.find(|l| l.target.asks_at_least(&leaf.target)) {
                path.push(last);
                return Some(path);
            }
            open.push(self.above(next.movement, floor).iter());
        }
        None
    }

    /// The necessary leaves of a movement that stand above a stage.
    fn above(&self, of: MovementIx, floor: u32) -> &[&'a Leaf] {
        let leaves = self.necessary(of);
        let from = leaves.partition_point(|l| self.stages.of(l.movement) <= Some(floor));
        &leaves[from..]
    }

    /// The necessary leaves of a movement that ask for one other.
    fn same(&self, of: MovementIx, movement: MovementIx) -> &[&'a Leaf] {
        let leaves = self.necessary(of);
        let key = (self.stages.of(movement), movement);
        let of_leaf = |l: &Leaf| (self.stages.of(l.movement), l.movement);
        let from = leaves.partition_point(|l| of_leaf(l) < key);
        let to = leaves.partition_point(|l| of_leaf(l) <= key);
        &leaves[from..to]
    }
}
