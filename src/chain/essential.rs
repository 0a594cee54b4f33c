//! Essential movements: those without which a goal cannot be reached.

use super::reach::{Stages, below};
use crate::curriculum::{Curriculum, Leaf, MovementIx, Need};
use foldhash::fast::FixedState;
use std::collections::{HashMap, HashSet};

/// How many candidates one pass looks at: a block of 512 bits for each movement, so memory stays linear in the chain.
pub(super) const WORDS: usize = 8;
pub(super) const BITS: usize = WORDS * 64;
pub(super) type Block = [u64; WORDS];

/// The movements without which `goal` cannot be reached, the goal itself included; none when it cannot be reached at all.
///
/// Removing x makes a tree fail exactly when, counting each part as failed that needs x, too few parts are left. So the sets
/// are the greatest solution of: a leaf has its movement's set; `all of` the union; `any of` the intersection; `at least k of`
/// those x for which fewer than k parts do without it.
///
/// # Complexity
/// One pass over the chain for each 512 of its movements; more passes only where needs run in circles.
pub fn essentials(
    curriculum: &Curriculum,
    stages: &Stages,
    goal: MovementIx,
) -> HashSet<MovementIx> {
    if !stages.is_reached(goal) {
        return HashSet::new();
    }
    let mut chain: Vec<MovementIx> = below(curriculum, goal)
        .into_iter()
        .filter(|ix| stages.is_reached(*ix))
        .collect();
    chain.sort_by_key(|ix| (stages.of(*ix), *ix));
    let at: HashMap<MovementIx, usize, FixedState> =
        chain.iter().enumerate().map(|(i, ix)| (*ix, i)).collect();
    let needs: Vec<&Need<Leaf>> = chain
        .iter()
        .map(|ix| curriculum.movement(*ix).needs())
        .collect();
    let place = |leaf: &Leaf| at.get(&leaf.movement).copied();
    let mut out = HashSet::new();
    for first in (0..chain.len()).step_by(BITS) {
        let own = |i: usize| own(i, first);
        let goal_set = sets(&needs, &place, &own)[at[&goal]];
        out.extend(
            (first..chain.len().min(first + BITS))
                .filter(|i| goal_set[(i - first) / 64] >> ((i - first) % 64) & 1 == 1)
                .map(|i| chain[i]),
        );
    }
    out
}

/// The block of the candidates from `first` on with one bit, if it is among them.
pub(super) fn own(bit: usize, first: usize) -> Block {
    let mut block = [0; WORDS];
    if let Some(bit) = bit.checked_sub(first).filter(|b| *b < BITS) {
        block[bit / 64] |= 1 << (bit % 64);
    }
    block
}

/// For each of a closed set of movements, in the order of their stages, the candidates of a block without which it cannot be
/// reached. `own` is its own bit, `place` where a leaf stands in the order; nowhere if it is never reached.
pub(super) fn sets<L>(
    needs: &[&Need<L>],
    place: &impl Fn(&L) -> Option<usize>,
    own: &impl Fn(usize) -> Block,
) -> Vec<Block> {
    let mut sets: Vec<Block> = vec![[u64::MAX; WORDS]; needs.len()];
    loop {
        let mut changed = false;
        for (i, need) in needs.iter().enumerate() {
            let block = union(own(i), tree(need, place, &sets));
            changed |= block != sets[i];
            sets[i] = block;
        }
        if !changed {
            return sets;
        }
    }
}

fn union(a: Block, b: Block) -> Block {
    std::array::from_fn(|i| a[i] | b[i])
}

/// The candidates without which the tree fails. A leaf that can never be reached fails without anybody's help.
fn tree<L>(need: &Need<L>, place: &impl Fn(&L) -> Option<usize>, sets: &[Block]) -> Block {
    let all: Block = [u64::MAX; WORDS];
    let part = |need: &Need<L>| tree(need, place, sets);
    match need {
        Need::Leaf(leaf) => place(leaf).map_or(all, |i| sets[i]),
        Need::All(parts) => parts.iter().map(part).fold([0; WORDS], union),
        Need::Any(parts) => parts
            .iter()
            .map(part)
            .fold(all, |a, b| std::array::from_fn(|i| a[i] & b[i])),
        Need::AtLeast(k, parts) => {
            let parts: Vec<Block> = parts.iter().map(part).collect();
            std::array::from_fn(|word| {
                (0..64).fold(0, |out, bit| {
                    let without = parts.iter().filter(|p| p[word] >> bit & 1 == 0).count();
                    out | u64::from(without < *k as usize) << bit
                })
            })
        }
    }
}
