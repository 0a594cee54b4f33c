//! Requirement trees as flat numbers: what the pages' script looks up, and what is walked thousands of times.
//!
//! Movements are numbered by id among those that stand; demands (a movement at a target) are numbered in the order in which
//! they are met, the movements' own standards first, so that a movement's number is also its standard's.

use super::necessary_leaves;
use crate::curriculum::{Curriculum, Leaf, MovementIx, Need, Target};
use foldhash::fast::FixedState;
use std::collections::HashMap;

/// "All of" before its count, in a tree in prefix order; a demand stands as its number.
pub const ALL: i32 = -1;
/// "Any of" before its count.
pub const ANY: i32 = -2;
/// "At least k of" before k and its count.
pub const AT_LEAST: i32 = -3;

/// Every movement that is published and stands.
#[derive(Clone, Debug, Default)]
pub struct Flat {
    /// By number.
    pub movements: Vec<MovementIx>,
    /// For each movement of the curriculum its number.
    numbers: Vec<Option<u32>>,
    /// A demand's movement, by number, and its target.
    pub demands: Vec<(u32, Target)>,
    demand_numbers: HashMap<(u32, Target), u32, FixedState>,
    /// For each movement its tree; empty when it needs nothing.
    pub trees: Vec<Vec<i32>>,
    /// For each movement the demands without which its tree is false.
    pub necessary: Vec<Vec<u32>>,
    /// For each demand the others of its movement that it asks at least.
    pub implied: Vec<Vec<u32>>,
}

impl Flat {
    pub fn new(curriculum: &Curriculum) -> Flat {
        let mut flat = Flat {
            movements: curriculum
                .published()
                .filter(|(_, m)| !m.faulty())
                .map(|(ix, _)| ix)
                .collect(),
            ..Flat::default()
        };
        flat.numbers = vec![None; curriculum.len()];
        for (i, ix) in flat.movements.iter().enumerate() {
            flat.numbers[ix.at()] = Some(i as u32);
        }
        for ix in flat.movements.clone() {
            flat.demand(ix, curriculum.movement(ix).standard());
        }
        for ix in flat.movements.clone() {
            let needs = curriculum.movement(ix).needs();
            let mut tree = Vec::new();
            if !needs.is_nothing() {
                flat.tree(needs, &mut tree);
            }
            flat.trees.push(tree);
            let necessary = necessary_leaves(needs);
            let necessary = necessary
                .into_iter()
                .filter_map(|l| flat.demand(l.movement, l.target));
            let necessary: Vec<u32> = necessary.collect();
            flat.necessary.push(necessary);
        }
        for (_, skill) in curriculum.skills() {
            flat.demand(skill.goal.movement, skill.goal.target);
        }
        flat.implied = flat.all_implied();
        flat
    }

    /// The number of a movement that stands.
    pub fn number(&self, ix: MovementIx) -> Option<u32> {
        self.numbers[ix.at()]
    }

    /// The number of a demand that is made somewhere.
    pub fn find(&self, leaf: &Leaf) -> Option<u32> {
        let movement = self.number(leaf.movement)?;
        self.demand_numbers.get(&(movement, leaf.target)).copied()
    }

    fn demand(&mut self, ix: MovementIx, target: Target) -> Option<u32> {
        let movement = self.number(ix)?;
        let demands = &mut self.demands;
        let number = self
            .demand_numbers
            .entry((movement, target))
            .or_insert_with(|| {
                demands.push((movement, target));
                demands.len() as u32 - 1
            });
        Some(*number)
    }

    fn tree(&mut self, need: &Need<Leaf>, out: &mut Vec<i32>) {
        let parts = match need {
            // A demand that does not stand can never be met: any one of nothing.
            Need::Leaf(leaf) => match self.demand(leaf.movement, leaf.target) {
                Some(number) => return out.push(number as i32),
                None => return out.extend([ANY, 0]),
            },
            Need::All(parts) => {
                out.extend([ALL, parts.len() as i32]);
                parts
            }
            Need::Any(parts) => {
                out.extend([ANY, parts.len() as i32]);
                parts
            }
            Need::AtLeast(k, parts) => {
                out.extend([AT_LEAST, *k as i32, parts.len() as i32]);
                parts
            }
        };
        parts.iter().for_each(|part| self.tree(part, out));
    }

    fn all_implied(&self) -> Vec<Vec<u32>> {
        let mut of: Vec<Vec<u32>> = vec![Vec::new(); self.movements.len()];
        for (i, (movement, _)) in self.demands.iter().enumerate() {
            of[*movement as usize].push(i as u32);
        }
        let asked = |(i, (movement, target)): (usize, &(u32, Target))| {
            let others = of[*movement as usize]
                .iter()
                .copied()
                .filter(|j| *j != i as u32);
            others
                .filter(|j| target.asks_at_least(&self.demands[*j as usize].1))
                .collect()
        };
        self.demands.iter().enumerate().map(asked).collect()
    }
}
