//! What a client's results say of a leaf: the latest day of each movement, and what is presumed from what is owned.

use super::compare::{self, Share, Verdict};
use crate::chain::necessary_leaves;
use crate::curriculum::words::Pattern;
use crate::curriculum::{BodyWeight, Curriculum, Day, Leaf, Movement, MovementIx, Target};
use crate::results::{Person, Tested};

/// Kleene's three values, from least to greatest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Truth {
    False,
    Unknown,
    True,
}

/// A person's results, ready to be asked.
pub struct Evidence<'a> {
    pub(super) curriculum: &'a Curriculum,
    person: &'a Person,
    /// For each movement its results of the latest day, as written; none when untested or too old.
    latest: Vec<Vec<&'a Tested>>,
    /// For each movement the targets at which it is presumed, and the owned movement that each follows from.
    presumed: Vec<Vec<(Target, MovementIx)>>,
}

/// The result that comes closest to a target.
pub(super) struct Closest {
    pub share: Share,
    pub text: String,
}

impl<'a> Evidence<'a> {
    pub fn new(curriculum: &'a Curriculum, person: &'a Person, today: Day) -> Evidence<'a> {
        let mut latest: Vec<Vec<&Tested>> = vec![Vec::new(); curriculum.len()];
        let lasts = curriculum.school().results_last.count();
        for tested in &person.tested {
            let age = today.days_after(tested.on);
            if age < 0 || age > lasts {
                continue;
            }
            let of = &mut latest[tested.movement.at()];
            match of.first().map(|first| first.on) {
                Some(day) if day > tested.on => {}
                Some(day) if day == tested.on => of.push(tested),
                _ => *of = vec![tested],
            }
        }
        let mut evidence = Evidence {
            curriculum,
            person,
            latest,
            presumed: vec![Vec::new(); curriculum.len()],
        };
        if curriculum.school().presume {
            evidence.presume();
        }
        evidence
    }

    /// Who owns a movement has what it cannot be reached without, and so on down.
    fn presume(&mut self) {
        let owned: Vec<MovementIx> = self
            .curriculum
            .movements()
            .filter(|(ix, m)| self.of_results(*ix, &m.standard()) == Some(Truth::True))
            .map(|(ix, _)| ix)
            .collect();
        for root in owned {
            let mut open = vec![root];
            while let Some(above) = open.pop() {
                for leaf in necessary_leaves(self.curriculum.movement(above).needs()) {
                    let below = self.curriculum.movement(leaf.movement);
                    let at = leaf.movement.at();
                    let tested = !self.latest[at].is_empty();
                    if never_presumed(below)
                        || tested
                        || self.is_presumed(leaf.movement, &leaf.target)
                    {
                        continue;
                    }
                    self.presumed[at].push((leaf.target, root));
                    open.push(leaf.movement);
                }
            }
        }
    }

    fn body_weight(&self, tested: &Tested) -> Option<BodyWeight> {
        tested.body_weight.or(self.person.body_weight)
    }

    /// What the results of a movement's latest day say of a target; `None` when it is untested.
    pub fn of_results(&self, ix: MovementIx, target: &Target) -> Option<Truth> {
        let latest = &self.latest[ix.at()];
        if latest.is_empty() {
            return None;
        }
        let verdicts: Vec<Verdict> = latest
            .iter()
            .map(|t| compare::verdict(&t.sides, t.in_reserve, target, self.body_weight(t)))
            .collect();
        Some(if verdicts.contains(&Verdict::Meets) {
            Truth::True
        } else if verdicts.contains(&Verdict::Unsure) {
            Truth::Unknown
        } else if verdicts.contains(&Verdict::Misses) {
            Truth::False
        } else {
            Truth::Unknown
        })
    }

    /// Whether a movement has a result that counts.
    pub fn is_tested(&self, ix: MovementIx) -> bool {
        !self.latest[ix.at()].is_empty()
    }

    /// How many sets of a movement were tested on this day, as far as it is the latest: a set for each result, and more where
    /// the result says several sets or tries. Both sides together are one.
    pub fn sets_on(&self, ix: MovementIx, day: Day) -> u32 {
        let sets = |tested: &Tested| {
            let of = tested.sides.all().map(|got| {
                let parts = got.parts();
                parts
                    .sets()
                    .saturating_mul(parts.tries().map_or(1, |t| t.of))
            });
            of.max().unwrap_or(1)
        };
        // What was never done leaves the day as fresh as it was.
        let done = |t: &Tested| t.sides.all().any(|got| got.parts().amount() != 0);
        let results = self.latest[ix.at()].iter().copied();
        let results = results.filter(|t| t.on == day && done(t));
        results.map(sets).fold(0, u32::saturating_add)
    }

    /// Whether an untested movement is presumed at a target or more.
    pub fn is_presumed(&self, ix: MovementIx, target: &Target) -> bool {
        self.presumed_from(ix, target).is_some()
    }

    /// The owned movement from which an untested one is presumed at a target or more.
    pub fn presumed_from(&self, ix: MovementIx, target: &Target) -> Option<MovementIx> {
        let mut presumed = self.presumed[ix.at()].iter();
        presumed
            .find(|(t, _)| t.asks_at_least(target))
            .map(|(_, root)| *root)
    }

    /// A leaf in the needs of a movement; a guarded movement's are judged without presumption.
    pub fn leaf(&self, leaf: &Leaf, guarded: bool) -> Truth {
        let presumed = || match !guarded && self.is_presumed(leaf.movement, &leaf.target) {
            true => Truth::True,
            false => Truth::Unknown,
        };
        self.of_results(leaf.movement, &leaf.target)
            .unwrap_or_else(presumed)
    }

    /// Whether a result of the latest day misses the leaf by little.
    pub fn is_near_miss(&self, leaf: &Leaf) -> bool {
        self.latest[leaf.movement.at()].iter().any(|t| {
            let weight = self.body_weight(t);
            compare::verdict(&t.sides, t.in_reserve, &leaf.target, weight) == Verdict::Misses
                && compare::is_near(&t.sides, &leaf.target, weight)
        })
    }

    /// The result of the latest day with the greatest share of a leaf; of equals the one written first.
    pub(super) fn closest(&self, leaf: &Leaf) -> Option<Closest> {
        let mut best: Option<(Share, &Tested)> = None;
        for tested in &self.latest[leaf.movement.at()] {
            let share = compare::share(&tested.sides, &leaf.target, self.body_weight(tested));
            if best.is_none_or(|(most, _)| share > most) {
                best = Some((share, tested));
            }
        }
        best.map(|(share, tested)| Closest {
            share,
            text: compare::text(&tested.sides, leaf.target.at_most()),
        })
    }
}

/// Mobility, exits and single sides are never presumed, and nothing is presumed through them.
pub fn never_presumed(movement: &Movement) -> bool {
    movement.each_side() || matches!(movement.pattern(), Pattern::Mobility | Pattern::Exit)
}
