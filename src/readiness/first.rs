//! What comes first on the way to a movement: only tests and work whose own foundations are shown.

use super::compare::WHOLE;
use super::evidence::{Evidence, Truth};
use super::pause::Rest;
use super::repair::{self, cheapest};
use super::{Missing, missing_of};
use crate::chain::Stages;
use crate::curriculum::{Curriculum, Day, Leaf, MovementIx, Target};
use crate::results::Person;
use foldhash::fast::FixedState;
use std::cell::OnceCell;
use std::collections::HashSet;

/// What a client does first.
#[derive(Clone, Debug, PartialEq)]
pub struct First {
    /// Whether the steps are the movement's own demands; otherwise they stand further down.
    pub direct: bool,
    /// Each may be tested or trained now. Empty where loops and pauses leave none.
    pub steps: Vec<Missing>,
}

impl First {
    /// The movements of the steps, each once.
    pub fn movements(&self) -> Vec<MovementIx> {
        let mut seen: HashSet<MovementIx, FixedState> = HashSet::default();
        let steps = self.steps.iter().map(|step| step.movement);
        steps.filter(|ix| seen.insert(*ix)).collect()
    }
}

/// Finds the first steps of one client on a day.
pub struct Steps<'a> {
    curriculum: &'a Curriculum,
    stages: &'a Stages,
    evidence: Evidence<'a>,
    rest: Rest,
    /// For each movement what was found of it: many ways lead through one.
    known: Vec<Known<'a>>,
}

/// What is the same on whatever way a movement is met.
#[derive(Default)]
struct Known<'a> {
    may: OnceCell<bool>,
    /// Chosen freely, and only downwards.
    chosen: [OnceCell<Chosen<'a>>; 2],
}

/// The demands that would make a movement's needs true, and whether they are what its state speaks of.
type Chosen<'a> = (Vec<&'a Leaf>, bool);

impl<'a> Steps<'a> {
    pub fn new(
        curriculum: &'a Curriculum,
        stages: &'a Stages,
        person: &'a Person,
        today: Day,
    ) -> Steps<'a> {
        Steps {
            curriculum,
            stages,
            evidence: Evidence::new(curriculum, person, today),
            rest: Rest::new(curriculum, person, today),
            known: curriculum.movements().map(|_| Known::default()).collect(),
        }
    }

    /// The first steps to a movement whose needs are not true: its cheapest repair, and for each movement in it that may not
    /// be tried yet, its own, and so on down.
    ///
    /// # Complexity
    /// Linear in the demands chosen on the way. Asked for every movement, the answers together are as long as the ways: who
    /// stands at the ground of a long chain has the same first steps told for each movement of it.
    pub fn to(&self, ix: MovementIx) -> First {
        let found = self.down(ix, false);
        match found.steps.is_empty() {
            // Round a loop: only downwards then.
            true => self.down(ix, true),
            false => found,
        }
    }

    fn down(&self, ix: MovementIx, lower: bool) -> First {
        let mut first = First {
            direct: !lower,
            steps: Vec::new(),
        };
        let mut steps: HashSet<(MovementIx, Target), FixedState> = HashSet::default();
        let mut seen: HashSet<MovementIx, FixedState> = HashSet::default();
        seen.insert(ix);
        let mut open = vec![ix];
        let mut at = 0;
        while let Some(above) = open.get(at).copied() {
            at += 1;
            let (leaves, as_written) = self.chosen(above, lower);
            first.direct &= *as_written;
            for leaf in leaves {
                if self.may(leaf.movement) {
                    if steps.insert((leaf.movement, leaf.target)) {
                        first.steps.push(missing_of(&self.evidence, leaf));
                    }
                    continue;
                }
                first.direct = false;
                if seen.insert(leaf.movement) {
                    open.push(leaf.movement);
                }
            }
        }
        first
    }

    /// Whether a movement may be tried: its foundations are shown, and it does not rest.
    fn may(&self, ix: MovementIx) -> bool {
        let may = || !self.rest.holds(ix) && self.needs(ix) == Truth::True;
        *self.known[ix.at()].may.get_or_init(may)
    }

    fn needs(&self, ix: MovementIx) -> Truth {
        let movement = self.curriculum.movement(ix);
        let guarded = movement.guarded();
        repair::truth(movement.needs(), &|leaf| self.evidence.leaf(leaf, guarded))
    }

    fn chosen(&self, ix: MovementIx, lower: bool) -> &Chosen<'a> {
        let known = &self.known[ix.at()].chosen[usize::from(lower)];
        known.get_or_init(|| self.choose(ix, lower))
    }

    fn choose(&self, ix: MovementIx, lower: bool) -> Chosen<'a> {
        let movement = self.curriculum.movement(ix);
        let guarded = movement.guarded();
        if let Some(near) = repair::almost(&self.evidence, movement.needs(), guarded)
            && !lower
            && !self.rest.holds(near.movement)
        {
            return (vec![near], true);
        }
        let doubtful = self.needs(ix) == Truth::Unknown;
        let stage = |ix: MovementIx| self.stages.of(ix).unwrap_or(0);
        let way = |tests: bool, barred: &dyn Fn(MovementIx) -> bool| {
            let cost = |leaf: &Leaf| match self.evidence.leaf(leaf, guarded) {
                Truth::True => Some((0, 0)),
                _ if barred(leaf.movement) => None,
                Truth::Unknown if tests => Some((1, 0)),
                Truth::False if tests => None,
                _ => {
                    let share = self.evidence.closest(leaf).map_or(0, |c| c.share);
                    Some((1, u32::from(WHOLE - share)))
                }
            };
            cheapest(movement.needs(), &cost).map(|repair| repair.which)
        };
        let barred = |below: MovementIx| {
            self.rest.holds(below) || (lower && !self.may(below) && stage(below) >= stage(ix))
        };
        match way(doubtful, &|_| false) {
            Some(which) if !which.iter().any(|leaf| barred(leaf.movement)) => (which, true),
            _ => (
                way(doubtful, &barred)
                    .or_else(|| way(false, &barred))
                    .unwrap_or_default(),
                false,
            ),
        }
    }
}
