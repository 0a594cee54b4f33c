//! What comes first on the way to a movement: only tests and work whose own foundations are shown.

use super::compare::WHOLE;
use super::evidence::{Evidence, Truth};
use super::pause::Rest;
use super::repair::{self, cheapest};
use super::{Missing, missing_of};
use crate::chain::Stages;
use crate::curriculum::{Curriculum, Day, Leaf, MovementIx};
use crate::results::Person;

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
        let mut out: Vec<MovementIx> = Vec::new();
        for step in &self.steps {
            if !out.contains(&step.movement) {
                out.push(step.movement);
            }
        }
        out
    }
}

/// Finds the first steps of one client on a day.
pub struct Steps<'a> {
    curriculum: &'a Curriculum,
    stages: &'a Stages,
    evidence: Evidence<'a>,
    rest: Rest,
}

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
        }
    }

    /// The first steps to a movement whose needs are not true: its cheapest repair, and for each movement in it that may not
    /// be tried yet, its own, and so on down.
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
        let mut seen = vec![ix];
        let mut at = 0;
        while let Some(above) = seen.get(at).copied() {
            at += 1;
            let (leaves, as_written) = self.chosen(above, lower);
            first.direct &= as_written;
            for leaf in leaves {
                if self.may(leaf.movement) {
                    if !first.steps.iter().any(|s| s.is(leaf)) {
                        first.steps.push(missing_of(&self.evidence, leaf));
                    }
                    continue;
                }
                first.direct = false;
                if !seen.contains(&leaf.movement) {
                    seen.push(leaf.movement);
                }
            }
        }
        first
    }

    /// Whether a movement may be tried: its foundations are shown, and it does not rest.
    fn may(&self, ix: MovementIx) -> bool {
        !self.rest.holds(ix) && self.needs(ix) == Truth::True
    }

    fn needs(&self, ix: MovementIx) -> Truth {
        let movement = self.curriculum.movement(ix);
        let guarded = movement.guarded();
        repair::truth(&movement.needs, &|leaf| self.evidence.leaf(leaf, guarded))
    }

    /// The demands that would make a movement's needs true, and whether they are what its state speaks of.
    fn chosen(&self, ix: MovementIx, lower: bool) -> (Vec<&Leaf>, bool) {
        let movement = self.curriculum.movement(ix);
        let guarded = movement.guarded();
        if let Some(near) = repair::almost(&self.evidence, &movement.needs, guarded)
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
            cheapest(&movement.needs, &cost).map(|repair| repair.which)
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
