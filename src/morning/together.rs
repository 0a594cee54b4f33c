//! Who could work together: people whose next work is the same movement or one of its neighbours.

use crate::curriculum::MovementIx;
use std::cmp::Reverse;
use std::collections::BTreeMap;

/// Groups of at least two, the largest first; everybody is in one at most. A group is around one movement: the others are its
/// neighbours.
pub fn together(
    next: &BTreeMap<MovementIx, Vec<usize>>,
    are_neighbours: &dyn Fn(MovementIx, MovementIx) -> bool,
) -> Vec<(Vec<MovementIx>, Vec<usize>)> {
    let mut left: Vec<MovementIx> = next.keys().copied().collect();
    let mut out = Vec::new();
    loop {
        let around = |middle: MovementIx| -> Vec<MovementIx> {
            let near = |ix: &MovementIx| *ix == middle || are_neighbours(middle, *ix);
            left.iter().copied().filter(near).collect()
        };
        let people = |of: &[MovementIx]| of.iter().map(|ix| next[ix].len()).sum::<usize>();
        let best = left
            .iter()
            .map(|middle| around(*middle))
            .min_by_key(|group| (Reverse(people(group)), group.len(), group.first().copied()));
        let Some(group) = best.filter(|group| people(group) > 1) else {
            return out;
        };
        left.retain(|ix| !group.contains(ix));
        let mut who: Vec<usize> = group.iter().flat_map(|ix| next[ix].clone()).collect();
        who.sort_unstable();
        out.push((group, who));
    }
}

#[cfg(test)]
mod tests {
    use super::together;
    use crate::curriculum::MovementIx;
    use std::collections::BTreeMap;

    /// By hand: 1 and 2 are neighbours, 2 and 3 too. Around 2 there are four people; 9 has one alone, and 7 two.
    #[test]
    fn the_largest_group_first_and_nobody_twice() {
        let next: BTreeMap<MovementIx, Vec<usize>> = [
            (1, vec![0]),
            (2, vec![1, 4]),
            (3, vec![2]),
            (7, vec![5, 6]),
            (9, vec![3]),
        ]
        .map(|(ix, who)| (MovementIx(ix), who))
        .into();
        let near = |a: MovementIx, b: MovementIx| a.0.abs_diff(b.0) == 1 && a.0.max(b.0) < 4;
        let groups = together(&next, &near);
        let plain: Vec<(Vec<u32>, Vec<usize>)> = groups
            .into_iter()
            .map(|(of, who)| (of.iter().map(|ix| ix.0).collect(), who))
            .collect();
        assert_eq!(
            plain,
            [(vec![1, 2, 3], vec![0, 1, 2, 4]), (vec![7], vec![5, 6])]
        );
    }
}
