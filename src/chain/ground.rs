//! What stands under a goal, in numbers of its own and with the needs as they count for one person: what a route is looked for in.

use super::essential::{BITS, own, sets};
use super::reach::{climb, dependants};
use crate::curriculum::{Curriculum, Leaf, MovementIx, Need};
use std::cmp::Ordering;

/// The movements that the needs under a goal mention, numbered by id.
pub(super) struct Ground {
    pub movements: Vec<MovementIx>,
    pub needs: Vec<Need<usize>>,
    pub stages: Vec<Option<u32>>,
    pub goal: usize,
    above: Vec<Vec<usize>>,
}

impl Ground {
    /// A leaf that is free asks nothing, and nothing is looked for under it.
    pub fn new(
        curriculum: &Curriculum,
        goal: MovementIx,
        is_free: &dyn Fn(MovementIx, &Leaf) -> bool,
    ) -> Ground {
        let mut seen = vec![false; curriculum.len()];
        seen[goal.at()] = true;
        let mut met: Vec<(MovementIx, Need<MovementIx>)> = Vec::new();
        let mut open = vec![goal];
        while let Some(ix) = open.pop() {
            let asked = curriculum.movement(ix).needs().map(&mut |leaf| {
                if is_free(ix, leaf) {
                    return Need::nothing();
                }
                if !std::mem::replace(&mut seen[leaf.movement.at()], true) {
                    open.push(leaf.movement);
                }
                Need::Leaf(leaf.movement)
            });
            met.push((ix, asked));
        }
        met.sort_unstable_by_key(|(ix, _)| *ix);
        let mut numbers = vec![0; curriculum.len()];
        for (n, (ix, _)) in met.iter().enumerate() {
            numbers[ix.at()] = n;
        }
        let numbered = |need: &Need<MovementIx>| need.map(&mut |ix| Need::Leaf(numbers[ix.at()]));
        let needs: Vec<Need<usize>> = met.iter().map(|(_, need)| numbered(need)).collect();
        let movements: Vec<MovementIx> = met.into_iter().map(|(ix, _)| ix).collect();
        let all: Vec<&Need<usize>> = needs.iter().collect();
        let above = dependants(&all, &|n: &usize| *n);
        let stands = |n: usize| !curriculum.movement(movements[n]).faulty();
        Ground {
            stages: climb(&all, &|n: &usize| *n, &above, &stands),
            goal: numbers[goal.at()],
            movements,
            needs,
            above,
        }
    }

    pub fn is_reached(&self, n: usize) -> bool {
        self.stages[n].is_some()
    }

    /// The stages when only a set exists.
    pub fn stages_of(&self, set: &Set) -> Vec<Option<u32>> {
        let needs: Vec<&Need<usize>> = self.needs.iter().collect();
        climb(&needs, &|n: &usize| *n, &self.above, &|n| set.has(n))
    }

    /// For each of some movements those without which it cannot be reached, itself among them; nothing for what is never reached.
    pub fn essentials(&self, wanted: &dyn Fn(usize) -> bool) -> Vec<Set> {
        let mut order: Vec<usize> = (0..self.movements.len())
            .filter(|n| self.is_reached(*n))
            .collect();
        order.sort_by_key(|n| (self.stages[*n], *n));
        let mut places = vec![None; self.movements.len()];
        for (i, n) in order.iter().enumerate() {
            places[*n] = Some(i);
        }
        let needs: Vec<&Need<usize>> = order.iter().map(|n| &self.needs[*n]).collect();
        let mut out = vec![Set::default(); self.movements.len()];
        for first in (0..self.movements.len()).step_by(BITS) {
            let blocks = sets(&needs, &|n: &usize| places[*n], &|i| own(order[i], first));
            for (n, block) in order.iter().zip(blocks) {
                if wanted(*n) {
                    out[*n].0.extend(block);
                }
            }
        }
        out
    }
}

/// A set of numbers, a bit for each. Sets of one size are ordered as the lists of their numbers are.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub(super) struct Set(Vec<u64>);

impl Set {
    pub fn has(&self, n: usize) -> bool {
        self.0
            .get(n / 64)
            .is_some_and(|word| word >> (n % 64) & 1 == 1)
    }

    pub fn with(&self, n: usize) -> Set {
        let mut out = self.clone();
        out.0.resize(out.0.len().max(n / 64 + 1), 0);
        out.0[n / 64] |= 1 << (n % 64);
        out
    }

    pub fn with_all(&self, other: &Set) -> Set {
        let (long, short) = match self.0.len() >= other.0.len() {
            true => (self, other),
            false => (other, self),
        };
        let mut out = long.clone();
        out.0.iter_mut().zip(&short.0).for_each(|(a, b)| *a |= b);
        out
    }

    pub fn without(&self, other: &Set) -> Set {
        let mut out = self.clone();
        out.0.iter_mut().zip(&other.0).for_each(|(a, b)| *a &= !b);
        out
    }

    /// Takes away what is below a number; everything where there is none.
    pub fn keep_from(&mut self, n: Option<usize>) {
        let Some(n) = n else {
            return self.0.clear();
        };
        self.0[..n / 64].fill(0);
        self.0[n / 64] &= u64::MAX << (n % 64);
    }

    pub fn iter(&self) -> impl Iterator<Item = usize> + '_ {
        let bits = |word: u64| {
            std::iter::successors(Some(word), |w| Some(w & w.wrapping_sub(1)))
                .take_while(|w| *w != 0)
        };
        let words = self.0.iter().enumerate();
        words.flat_map(move |(i, word)| {
            bits(*word).map(move |w| i * 64 + w.trailing_zeros() as usize)
        })
    }
}

impl Ord for Set {
    fn cmp(&self, other: &Set) -> Ordering {
        let words = self.0.len().max(other.0.len());
        let word = |of: &Set, i: usize| of.0.get(i).copied().unwrap_or(0);
        for i in 0..words {
            let (a, b) = (word(self, i), word(other, i));
            if a != b {
                // The smallest number that only one of them has: its list has a smaller number there.
                return match a >> (a ^ b).trailing_zeros() & 1 {
                    1 => Ordering::Less,
                    _ => Ordering::Greater,
                };
            }
        }
        Ordering::Equal
    }
}

impl PartialOrd for Set {
    fn partial_cmp(&self, other: &Set) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

#[cfg(test)]
mod tests {
    use super::Set;

    #[test]
    fn sets_of_one_size_are_ordered_as_their_lists() {
        let lists = [
            [1, 64, 200],
            [1, 65, 70],
            [0, 3, 199],
            [2, 3, 4],
            [1, 64, 199],
        ];
        let mut kept = [3, 64, 200]
            .iter()
            .fold(Set::default(), |set, n| set.with(*n));
        kept.keep_from(Some(64));
        assert_eq!(kept.iter().collect::<Vec<_>>(), [64, 200]);
        assert_eq!(
            kept.without(&Set::default().with(200))
                .iter()
                .collect::<Vec<_>>(),
            [64]
        );
        let set = |list: &[usize; 3]| list.iter().fold(Set::default(), |set, n| set.with(*n));
        for a in &lists {
            assert_eq!(set(a).iter().collect::<Vec<_>>(), a);
            for b in &lists {
                assert_eq!(set(a).cmp(&set(b)), a.cmp(b), "{a:?} {b:?}");
            }
        }
    }
}
