//! Who can be reached at all, in how many steps, and which needs run in a circle.

use super::components::components;
use crate::curriculum::{Curriculum, Leaf, MovementIx, Need};
use std::collections::{HashMap, HashSet};

/// The stage of every movement: how many steps above the ground it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stages(Vec<Option<u32>>);

impl Stages {
    /// `None` when it can never be reached, or cannot stand.
    pub fn of(&self, ix: MovementIx) -> Option<u32> {
        self.0[ix.at()]
    }

    pub fn is_reached(&self, ix: MovementIx) -> bool {
        self.of(ix).is_some()
    }
}

/// The stages of all movements: 0 without needs, else one above the highest part (`all of`), the lowest (`any of`), the k-th
/// lowest (`at least k of`). The least solution where needs run in circles. Faulty movements have none.
///
/// # Complexity
/// Each tree is looked at again when one of its leaves gets a stage: at most the square of a tree's leaves, small in practice.
pub fn stages(curriculum: &Curriculum) -> Stages {
    stages_where(curriculum, &|ix| !curriculum.movement(ix).faulty())
}

/// The stages when only the movements that `stands` accepts exist.
pub fn stages_where(curriculum: &Curriculum, stands: &dyn Fn(MovementIx) -> bool) -> Stages {
    let needs: Vec<&Need<Leaf>> = curriculum.movements().map(|(_, m)| m.needs()).collect();
    let number = |leaf: &Leaf| leaf.movement.at();
    let above = dependants(&needs, &number);
    let stands = |n: usize| stands(MovementIx(n as u32));
    Stages(climb(&needs, &number, &above, &stands))
}

/// The stages of anything numbered, from its needs, what each leaf's number is, and its dependants.
pub(super) fn climb<L>(
    needs: &[&Need<L>],
    number: &impl Fn(&L) -> usize,
    above: &[Vec<usize>],
    stands: &dyn Fn(usize) -> bool,
) -> Vec<Option<u32>> {
    let mut stage: Vec<Option<u32>> = vec![None; needs.len()];
    let is_met =
        |n: usize, stage: &[Option<u32>]| needs[n].holds(&|leaf| stage[number(leaf)].is_some());
    let mut front: Vec<usize> = (0..needs.len())
        .filter(|n| stands(*n) && is_met(*n, &stage))
        .collect();
    let mut level = 0;
    while !front.is_empty() {
        front.iter().for_each(|n| stage[*n] = Some(level));
        let mut next: Vec<usize> = front.iter().flat_map(|n| &above[*n]).copied().collect();
        next.sort_unstable();
        next.dedup();
        next.retain(|n| stage[*n].is_none() && stands(*n) && is_met(*n, &stage));
        front = next;
        level += 1;
    }
    stage
}

/// For each number those whose needs mention it.
pub(super) fn dependants<L>(needs: &[&Need<L>], number: &impl Fn(&L) -> usize) -> Vec<Vec<usize>> {
    let mut out = vec![Vec::new(); needs.len()];
    for (n, need) in needs.iter().enumerate() {
        need.visit(&mut |leaf| out[number(leaf)].push(n));
    }
    out
}

/// A movement and everything that its needs mention, all the way down; sorted.
pub fn below(curriculum: &Curriculum, from: MovementIx) -> Vec<MovementIx> {
    let mut seen = vec![false; curriculum.len()];
    seen[from.at()] = true;
    let mut out = vec![from];
    let mut next = 0;
    while let Some(ix) = out.get(next).copied() {
        next += 1;
        curriculum.movement(ix).needs().visit(&mut |leaf| {
            if !std::mem::replace(&mut seen[leaf.movement.at()], true) {
                out.push(leaf.movement);
            }
        });
    }
    out.sort_unstable();
    out
}

/// A circle of needs that nobody can ever enter.
#[derive(Clone, Debug, PartialEq)]
pub struct Loop {
    /// Each movement with the leaf by which it needs the next; the last needs the first.
    pub steps: Vec<(MovementIx, Leaf)>,
}

/// The circles at fault, and the movements that cannot be reached for another reason. Whoever merely depends on them is not
/// named again: a circle is at fault when it could not be entered even if everything outside it were reached.
pub fn loops(curriculum: &Curriculum, stages: &Stages) -> (Vec<Loop>, Vec<MovementIx>) {
    // Sorted, as the movements are.
    let lost: Vec<MovementIx> = curriculum
        .movements()
        .filter(|(ix, m)| !m.faulty() && !stages.is_reached(*ix))
        .map(|(ix, _)| ix)
        .collect();
    let nodes: HashMap<MovementIx, usize> = lost.iter().copied().zip(0..).collect();
    let edges = |ix: &MovementIx| {
        let mut to = Vec::new();
        let needs = curriculum.movement(*ix).needs();
        needs.visit(&mut |leaf| to.extend(nodes.get(&leaf.movement)));
        to
    };
    let edges: Vec<Vec<usize>> = lost.iter().map(edges).collect();
    let mut circles = Vec::new();
    let mut alone = Vec::new();
    for component in components(&edges) {
        let mut members: Vec<MovementIx> = component.iter().map(|n| lost[*n]).collect();
        members.sort_unstable();
        let inside: HashSet<MovementIx> = members.iter().copied().collect();
        if can_be_entered(curriculum, &members, &inside) {
            continue;
        }
        match circle(curriculum, members[0], &inside) {
            Some(steps) => circles.push(Loop { steps }),
            None => alone.push(members[0]),
        }
    }
    circles.sort_by_key(|c| c.steps[0].0);
    alone.sort_unstable();
    (circles, alone)
}

/// Whether all members could be reached if everything outside were.
fn can_be_entered(
    curriculum: &Curriculum,
    members: &[MovementIx],
    inside: &HashSet<MovementIx>,
) -> bool {
    let mut reached: HashSet<MovementIx> = HashSet::new();
    loop {
        let before = reached.len();
        for ix in members {
            let met =
                |leaf: &Leaf| !inside.contains(&leaf.movement) || reached.contains(&leaf.movement);
            if !reached.contains(ix) && curriculum.movement(*ix).needs().holds(&met) {
                reached.insert(*ix);
            }
        }
        if reached.len() == before {
            return reached.len() == members.len();
        }
    }
}

/// The shortest circle through the first movement of a component, by breadth-first search in the order written.
fn circle(
    curriculum: &Curriculum,
    start: MovementIx,
    inside: &HashSet<MovementIx>,
) -> Option<Vec<(MovementIx, Leaf)>> {
    let mut came: HashMap<MovementIx, (MovementIx, Leaf)> = HashMap::new();
    let mut queue = std::collections::VecDeque::from([start]);
    while let Some(ix) = queue.pop_front() {
        for leaf in curriculum.movement(ix).needs().leaves() {
            if leaf.movement == start {
                let mut steps = vec![(ix, leaf.clone())];
                let mut at = ix;
                while at != start {
                    let (from, by) = came[&at].clone();
                    steps.push((from, by));
                    at = from;
                }
                steps.reverse();
                return Some(steps);
            }
            if inside.contains(&leaf.movement)
                && leaf.movement != start
                && !came.contains_key(&leaf.movement)
            {
                came.insert(leaf.movement, (ix, leaf.clone()));
                queue.push_back(leaf.movement);
            }
        }
    }
    None
}
