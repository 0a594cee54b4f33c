//! What each person had shown by which day. A result counts from its day on, for ever: what was done once was possible.

use crate::curriculum::{Curriculum, Day, Leaf, MovementIx, Need, Target};
use crate::readiness::{Verdict, verdict};
use crate::results::{Person, Tested};

/// All people's results by movement.
pub struct Histories<'a> {
    pub curriculum: &'a Curriculum,
    pub people: Vec<History<'a>>,
}

/// One person's results by movement, by day.
pub struct History<'a> {
    person: &'a Person,
    by_movement: Vec<Vec<&'a Tested>>,
    /// The last day with a result.
    pub last: Option<Day>,
}

impl<'a> Histories<'a> {
    pub fn new(curriculum: &'a Curriculum, people: &'a [Person]) -> Histories<'a> {
        let history = |person: &'a Person| {
            let mut by_movement: Vec<Vec<&Tested>> = vec![Vec::new(); curriculum.len()];
            for tested in &person.tested {
                by_movement[tested.movement.at()].push(tested);
            }
            by_movement
                .iter_mut()
                .for_each(|of| of.sort_by_key(|t| t.on));
            History {
                person,
                by_movement,
                last: person.tested.iter().map(|t| t.on).max(),
            }
        };
        Histories {
            curriculum,
            people: people.iter().map(history).collect(),
        }
    }
}

impl History<'_> {
    /// The first day with any result for a movement.
    pub fn first_tested(&self, ix: MovementIx) -> Option<Day> {
        self.by_movement[ix.at()].first().map(|t| t.on)
    }

    /// The first day with any result at all.
    pub fn first(&self) -> Option<Day> {
        self.person.tested.iter().map(|t| t.on).min()
    }

    /// The first day on which a result meets a target.
    pub fn first_met(&self, ix: MovementIx, target: &Target) -> Option<Day> {
        let meets = |t: &&&Tested| self.verdict(t, target) == Verdict::Meets;
        self.by_movement[ix.at()].iter().find(meets).map(|t| t.on)
    }

    /// Whether the results up to a day say that a target was met, or that it was not; `None` where they say nothing.
    pub fn met_by(&self, ix: MovementIx, target: &Target, day: Day) -> Option<bool> {
        let so_far = self.by_movement[ix.at()].iter().filter(|t| t.on <= day);
        let mut missed = None;
        for tested in so_far {
            match self.verdict(tested, target) {
                Verdict::Meets => return Some(true),
                Verdict::Misses => missed = Some(false),
                Verdict::Silent | Verdict::Unsure => {}
            }
        }
        missed
    }

    /// The amounts of a movement's results up to a day, in millionths; of two sides the smaller.
    pub fn amounts(&self, ix: MovementIx, day: Day) -> impl Iterator<Item = i64> {
        let so_far = self.by_movement[ix.at()]
            .iter()
            .filter(move |t| t.on <= day);
        so_far.filter_map(|t| t.sides.all().map(|got| got.parts().amount()).min())
    }

    /// The first day on which these needs are true, each result counting from its day; without needs the first day of all.
    pub fn first_open(&self, needs: &Need<Leaf>) -> Option<Day> {
        if needs.is_nothing() {
            return self.first();
        }
        self.first_true(needs)
    }

    fn first_true(&self, needs: &Need<Leaf>) -> Option<Day> {
        let kth = |k: usize, parts: &[Need<Leaf>]| {
            let mut days: Vec<Day> = parts.iter().filter_map(|p| self.first_true(p)).collect();
            days.sort_unstable();
            match k {
                0 => self.first(),
                k => days.get(k - 1).copied(),
            }
        };
        match needs {
            Need::Leaf(leaf) => self.first_met(leaf.movement, &leaf.target),
            Need::All(parts) => kth(parts.len(), parts),
            Need::Any(parts) => kth(1, parts),
            Need::AtLeast(k, parts) => kth(*k as usize, parts),
        }
    }

    fn verdict(&self, tested: &Tested, target: &Target) -> Verdict {
        let weight = tested.body_weight.or(self.person.body_weight);
        verdict(&tested.sides, tested.in_reserve, target, weight)
    }
}
