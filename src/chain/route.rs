//! The route: the set of movements still to own on the way to a goal, smallest in total weeks, each counted once.
//!
//! Finding it is hard in general (shared foundations count once), so the search is cut by node count, never by time, and says
//! when its answer may not be the smallest.

use super::ground::{Ground, Set};
use crate::curriculum::{Curriculum, Leaf, MovementIx, Need, Weeks};
use foldhash::fast::FixedState;
use serde::Serialize;
use std::cmp::Reverse;
use std::collections::{BTreeSet, BinaryHeap, HashSet};

/// How far the search goes. The page's script has these from the tables.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Bounds {
    /// Sets looked at before the search is cut.
    pub looked_at: usize,
    /// Chains above this size take options one by one instead of with all they cannot do without.
    pub large: usize,
}

/// The table.
pub const BOUNDS: Bounds = Bounds {
    looked_at: 4_000,
    large: 600,
};

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

/// The set being grown, ordered as routes are compared: weeks, number of movements, ids; and those of it whose needs are not known
/// to hold in it. What holds in a set holds in every larger one.
type Node = (u32, usize, Set, Set);

/// The route of a client who owns nothing yet. `None` when the goal cannot be reached.
pub fn newcomer_route(curriculum: &Curriculum, goal: MovementIx) -> Option<Route> {
    route_where(curriculum, goal, &|_, _| false)
}

/// The route where some leaves of some movements' needs are free: they ask nothing. `None` when the goal cannot be reached.
pub fn route_where(
    curriculum: &Curriculum,
    goal: MovementIx,
    is_free: &dyn Fn(MovementIx, &Leaf) -> bool,
) -> Option<Route> {
    let ground = Ground::new(curriculum, goal, is_free);
    ground.is_reached(ground.goal).then_some(())?;
    Search::new(curriculum, ground).run(BOUNDS.looked_at)
}

/// The middle of the weeks of those that say them, twice: what stands in for the others.
pub fn median_half_weeks(curriculum: &Curriculum) -> u32 {
    let mut given: Vec<u32> = curriculum
        .published()
        .filter_map(|(_, m)| m.weeks())
        .map(Weeks::middle_in_half_weeks)
        .collect();
    given.sort_unstable();
    given.get(given.len() / 2).copied().unwrap_or(8)
}

struct Search<'a> {
    curriculum: &'a Curriculum,
    ground: Ground,
    /// In half weeks, by number.
    costs: Vec<u32>,
    large: bool,
    essentials: Vec<Set>,
}

impl<'a> Search<'a> {
    fn new(curriculum: &'a Curriculum, ground: Ground) -> Search<'a> {
        let median = median_half_weeks(curriculum);
        let cost = |ix: &MovementIx| {
            let weeks = curriculum.movement(*ix).weeks();
            weeks.map_or(median, Weeks::middle_in_half_weeks)
        };
        let large = ground.movements.len() > BOUNDS.large;
        Search {
            curriculum,
            costs: ground.movements.iter().map(cost).collect(),
            large,
            essentials: ground.essentials(&|n| !large || n == ground.goal),
            ground,
        }
    }

    /// The route, after so many sets were looked at at most.
    fn run(self, most: usize) -> Option<Route> {
        let start = self.grown(&Node::default(), self.ground.goal);
        let mut open: BinaryHeap<Reverse<Node>> = BinaryHeap::from([Reverse(start)]);
        let mut seen: HashSet<Set, FixedState> = HashSet::default();
        let mut looked_at = 0;
        while let Some(Reverse(mut node)) = open.pop() {
            match self.options(&mut node) {
                None => return Some(self.route(&node.2, node.0, true)),
                Some(_) if looked_at >= most => {
                    let cost = node.0;
                    let greedy = self.greedy(node)?;
                    return Some(self.route(&greedy, cost, false));
                }
                Some(options) => {
                    looked_at += 1;
                    for option in options {
                        let larger = self.grown(&node, option);
                        if seen.insert(larger.2.clone()) {
                            open.push(Reverse(larger));
                        }
                    }
                }
            }
        }
        None
    }

    fn route(&self, set: &Set, at_least: u32, exact: bool) -> Route {
        let mut numbers: Vec<usize> = set.iter().collect();
        numbers.sort_by_key(|n| (self.ground.stages[*n], *n));
        let movements: Vec<MovementIx> =
            numbers.iter().map(|n| self.ground.movements[*n]).collect();
        let guessed = movements
            .iter()
            .any(|ix| self.curriculum.movement(*ix).weeks().is_none());
        Route {
            movements,
            half_weeks: set.iter().map(|n| self.costs[n]).sum(),
            exact,
            at_least_half_weeks: at_least,
            guessed,
        }
    }

    /// The node with a movement and all that it cannot be reached without.
    fn grown(&self, node: &Node, n: usize) -> Node {
        let (weeks, count, set, open) = node;
        let larger = self.with(set, n);
        let added = larger.without(set);
        let (more, many) = added.iter().fold((0, 0), |(weeks, count), n| {
            (weeks + self.costs[n], count + 1)
        });
        (weeks + more, count + many, larger, open.with_all(&added))
    }

    /// The set with a movement and all that it cannot be reached without.
    fn with(&self, set: &Set, n: usize) -> Set {
        match self.large && n != self.ground.goal {
            true => set.with(n),
            false => set.with_all(&self.essentials[n]),
        }
    }

    /// The ways on from a set: each a movement to add. `None` when it is a whole route already.
    fn options(&self, node: &mut Node) -> Option<Vec<usize>> {
        let (_, _, set, open) = node;
        let needs = &self.ground.needs;
        let lacking = open
            .iter()
            .find(|n| !needs[*n].holds(&|below: &usize| set.has(*below)));
        open.keep_from(lacking);
        if let Some(n) = lacking {
            let mut out = Vec::new();
            self.ways(&needs[n], set, &mut out);
            return Some(out);
        }
        let derived = self.ground.stages_of(set);
        if derived[self.ground.goal].is_some() {
            return None;
        }
        // The set only supports itself in a circle: bring in something from outside it.
        let stuck = set.iter().filter(|n| derived[*n].is_none());
        let outside: BTreeSet<usize> = stuck
            .flat_map(|n| needs[n].leaves())
            .copied()
            .filter(|n| !set.has(*n) && self.ground.is_reached(*n))
            .collect();
        Some(outside.into_iter().collect())
    }

    /// The movements that would bring a tree one part closer to true; one option for each part of its first open choice.
    fn ways(&self, need: &Need<usize>, set: &Set, out: &mut Vec<usize>) {
        let holds = |need: &Need<usize>| need.holds(&|n: &usize| set.has(*n));
        match need {
            Need::Leaf(n) if self.ground.is_reached(*n) => out.push(*n),
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
    fn greedy(&self, mut node: Node) -> Option<Set> {
        while let Some(options) = self.options(&mut node) {
            node = options.iter().map(|n| self.grown(&node, *n)).min()?;
        }
        Some(node.2)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reading::read;
    use crate::source::Snapshot;

    const SCHOOL: &str = "school: S\naddress: https://s.example/\nlanguage: en\nunits: metric\n";

    /// Movements by id, weeks and needs.
    fn world(movements: &[(&str, u32, &str)]) -> Curriculum {
        let text = |(id, weeks, needs): &(&str, u32, &str)| {
            let path = format!("content/movements/{id}.yaml");
            let text = format!(
                "movement: {id}\nname: {id}\npattern: core\nposition: prone\nload: body\nequipment: []\nsummary: S.\nstandard: 5 reps\nweeks: {weeks}\nneeds: [{needs}]\n"
            );
            (path, text)
        };
        let mut files: Vec<(String, String)> = movements.iter().map(text).collect();
        files.push(("content/school.yaml".into(), SCHOOL.into()));
        let files = files.iter().map(|(p, t)| (p.as_str(), t.as_str()));
        let (curriculum, findings) = read(&Snapshot::of_texts(files));
        let found: Vec<&str> = findings.iter().map(|f| f.message.as_str()).collect();
        assert!(!findings.has_errors(), "{found:?}");
        curriculum
    }

    fn ids<'a>(curriculum: &'a Curriculum, route: &Route) -> Vec<&'a str> {
        let id = |ix: &MovementIx| curriculum.movement(*ix).id().as_str();
        route.movements.iter().map(id).collect()
    }

    /// Where a set only holds itself up, in a circle, the cheapest that holds it up from outside is brought in.
    #[test]
    fn a_circle_is_held_up_from_outside() {
        let curriculum = world(&[
            ("goal", 1, "here, there"),
            ("here", 1, "any of: [there, dear]"),
            ("there", 1, "any of: [here, cheap]"),
            ("dear", 3, ""),
            ("cheap", 2, ""),
        ]);
        let goal = curriculum.find_movement("goal").expect("it is there");
        let route = newcomer_route(&curriculum, goal).expect("it can be reached");
        // By stage, then id: each of the two could stand on its own way first.
        assert_eq!(ids(&curriculum, &route), ["cheap", "here", "there", "goal"]);
        // Of 1, 1, 1 and 2 weeks.
        assert_eq!((route.half_weeks, route.exact), (10, true));
    }

    /// The search looks at as many sets as it may, and not at one more: what is then left is said not to be certain.
    #[test]
    fn the_search_is_cut_where_it_is_said() {
        let curriculum = world(&[
            ("goal", 1, "any of: [one, two]"),
            ("one", 2, ""),
            ("two", 3, ""),
        ]);
        let goal = curriculum.find_movement("goal").expect("it is there");
        let cut = |most: usize| {
            let ground = Ground::new(&curriculum, goal, &|_, _| false);
            Search::new(&curriculum, ground).run(most).expect("a route")
        };
        // The goal alone is looked at; the goal and `one` are a whole route.
        let whole = cut(1);
        assert_eq!((whole.exact, whole.at_least_half_weeks), (true, 6));
        let cut = cut(0);
        assert_eq!((cut.exact, cut.at_least_half_weeks), (false, 2));
        for route in [whole, cut] {
            assert_eq!(ids(&curriculum, &route), ["one", "goal"]);
            assert_eq!(route.half_weeks, 6);
        }
    }
}
