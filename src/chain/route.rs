//! The route: the set of movements still to own on the way to a goal, smallest in total weeks, each counted once.
//!
//! Finding it is hard in general (shared foundations count once), so the search is cut by node count, never by time, and says
//! when its answer may not be the smallest.

use super::essential::essentials;
use super::reach::{Stages, below, stages_where};
use crate::curriculum::{Curriculum, Leaf, MovementIx, Need};
use std::cmp::Reverse;
use std::collections::{BTreeSet, BinaryHeap, HashMap, HashSet};

/// Sets looked at before the search is cut.
const MOST_NODES: usize = 4_000;
/// Chains above this size take options one by one instead of with all they cannot do without.
const LARGE: usize = 600;

/// A route. Weeks are counted in halves, because the middle of 3 to 8 weeks is 5.5.
#[derive(Clone, Debug, PartialEq)]
pub struct Route {
    /// By stage, then id; the goal last or among its stage.
    pub movements: Vec<MovementIx>,
    pub half_weeks: u32,
    /// The search went to its end: no route is shorter.
    pub exact: bool,
    /// No route is shorter than this.
    pub at_least_half_weeks: u32,
    /// Some movement gives no `weeks`; the school's median stands in.
    pub guessed: bool,
}

/// The set being grown, ordered as routes are compared: weeks, number of movements, ids.
type Node = (u32, usize, Vec<MovementIx>);

/// The route of a client who owns nothing yet. `None` when the goal cannot be reached.
pub fn newcomer_route(curriculum: &Curriculum, stages: &Stages, goal: MovementIx) -> Option<Route> {
    Search::new(curriculum, stages, goal)?.run()
}

struct Search<'a> {
    curriculum: &'a Curriculum,
    stages: &'a Stages,
    goal: MovementIx,
    median: u32,
    large: bool,
    without: HashMap<MovementIx, Vec<MovementIx>>,
}

impl<'a> Search<'a> {
    fn new(curriculum: &'a Curriculum, stages: &'a Stages, goal: MovementIx) -> Option<Search<'a>> {
        stages.of(goal)?;
        let mut given: Vec<u32> = curriculum
            .published()
            .filter_map(|(_, m)| m.weeks)
            .map(|w| w.from + w.to)
            .collect();
        given.sort_unstable();
        let median = given.get(given.len() / 2).copied().unwrap_or(8);
        let large = below(curriculum, goal).len() > LARGE;
        Some(Search {
            curriculum,
            stages,
            goal,
            median,
            large,
            without: HashMap::new(),
        })
    }

    fn run(mut self) -> Option<Route> {
        let start = self.with(&BTreeSet::new(), self.goal);
        let mut open: BinaryHeap<Reverse<Node>> = BinaryHeap::from([Reverse(self.node(&start))]);
        let mut seen: HashSet<Vec<MovementIx>> = HashSet::new();
        let mut looked_at = 0;
        while let Some(Reverse((cost, _, set))) = open.pop() {
            let set: BTreeSet<MovementIx> = set.into_iter().collect();
            let options = self.options(&set);
            match options {
                None => return Some(self.route(&set, cost, true)),
                Some(_) if looked_at >= MOST_NODES => {
                    let greedy = self.greedy(set)?;
                    return Some(self.route(&greedy, cost, false));
                }
                Some(options) => {
                    looked_at += 1;
                    for option in options {
                        let larger = self.with_all(&set, &option);
                        let node = self.node(&larger);
                        if seen.insert(node.2.clone()) {
                            open.push(Reverse(node));
                        }
                    }
                }
            }
        }
        None
    }

    fn route(&self, set: &BTreeSet<MovementIx>, at_least: u32, exact: bool) -> Route {
        let mut movements: Vec<MovementIx> = set.iter().copied().collect();
        movements.sort_by_key(|ix| (self.stages.of(*ix), *ix));
        let half_weeks = movements.iter().map(|ix| self.cost(*ix)).sum();
        let guessed = movements
            .iter()
            .any(|ix| self.curriculum.movement(*ix).weeks.is_none());
        Route {
            movements,
            half_weeks,
            exact,
            at_least_half_weeks: at_least,
            guessed,
        }
    }

    fn cost(&self, ix: MovementIx) -> u32 {
        self.curriculum
            .movement(ix)
            .weeks
            .map_or(self.median, |w| w.from + w.to)
    }

    fn node(&self, set: &BTreeSet<MovementIx>) -> Node {
        (
            set.iter().map(|ix| self.cost(*ix)).sum(),
            set.len(),
            set.iter().copied().collect(),
        )
    }

    /// The set with a movement and all that it cannot be reached without.
    fn with(&mut self, set: &BTreeSet<MovementIx>, ix: MovementIx) -> BTreeSet<MovementIx> {
        if !self.without.contains_key(&ix) {
            let all = if self.large && ix != self.goal {
                vec![ix]
            } else {
                essentials(self.curriculum, self.stages, ix)
                    .into_iter()
                    .collect()
            };
            self.without.insert(ix, all);
        }
        set.iter()
            .copied()
            .chain(self.without[&ix].iter().copied())
            .collect()
    }

    fn with_all(
        &mut self,
        set: &BTreeSet<MovementIx>,
        option: &[MovementIx],
    ) -> BTreeSet<MovementIx> {
        option
            .iter()
            .fold(set.clone(), |set, ix| self.with(&set, *ix))
    }

    /// The ways on from a set: each a group of movements to add. `None` when it is a whole route already.
    fn options(&self, set: &BTreeSet<MovementIx>) -> Option<Vec<Vec<MovementIx>>> {
        let lacking = set.iter().find(|ix| {
            !self
                .needs(**ix)
                .holds(&|leaf: &Leaf| set.contains(&leaf.movement))
        });
        if let Some(ix) = lacking {
            let mut out = Vec::new();
            self.ways(self.needs(*ix), set, &mut out);
            return Some(out);
        }
        let derived = stages_where(self.curriculum, &|ix| set.contains(&ix));
        if derived.is_reached(self.goal) {
            return None;
        }
        // The set only supports itself in a circle: bring in something from outside it.
        let stuck = set.iter().filter(|ix| !derived.is_reached(**ix));
        let outside: BTreeSet<MovementIx> = stuck
            .flat_map(|ix| self.needs(*ix).leaves())
            .map(|l| l.movement)
            .filter(|ix| !set.contains(ix) && self.stages.is_reached(*ix))
            .collect();
        Some(outside.into_iter().map(|ix| vec![ix]).collect())
    }

    fn needs(&self, ix: MovementIx) -> &'a Need<Leaf> {
        &self.curriculum.movement(ix).needs
    }

    /// The movements that would bring a tree one part closer to true; one option for each part of its first open choice.
    fn ways(&self, need: &Need<Leaf>, set: &BTreeSet<MovementIx>, out: &mut Vec<Vec<MovementIx>>) {
        let holds = |need: &Need<Leaf>| need.holds(&|leaf: &Leaf| set.contains(&leaf.movement));
        match need {
            Need::Leaf(leaf) if self.stages.is_reached(leaf.movement) => {
                out.push(vec![leaf.movement])
            }
            Need::Leaf(_) => {}
            Need::All(parts) => {
                if let Some(part) = parts.iter().find(|p| !holds(p)) {
                    self.ways(part, set, out);
                }
            }
            Need::Any(parts) | Need::AtLeast(_, parts) => parts
                .iter()
                .filter(|p| !holds(p))
                .for_each(|p| self.ways(p, set, out)),
        }
    }

    /// A whole route by always taking the cheapest next option.
    fn greedy(&mut self, mut set: BTreeSet<MovementIx>) -> Option<BTreeSet<MovementIx>> {
        while let Some(options) = self.options(&set) {
            let sets: Vec<BTreeSet<MovementIx>> =
                options.iter().map(|o| self.with_all(&set, o)).collect();
            set = sets.into_iter().min_by_key(|s| self.node(s))?;
        }
        Some(set)
    }
}
