//! What is new: bests since the saved standing or, without one, of the newest round of tests, and what each opens.

use super::{Look, M, Seen};
use crate::curriculum::{Day, MovementIx};
use crate::history::points;
use crate::readiness::{self, Readiness, State};
use crate::results::{Person, Sides, Tested};

/// A new best.
#[derive(Clone, Debug, PartialEq)]
pub struct Fresh {
    pub movement: MovementIx,
    pub on: Day,
    pub got: Sides,
    /// The best before; `None` for a first result.
    pub was: Option<Sides>,
    /// It was not owned before.
    pub owned: bool,
    /// What was not open before, and asks for it. Nothing where nothing is planned.
    pub opens: Vec<MovementIx>,
}

impl Look<'_, '_> {
    /// The bests that were not seen yet; where nothing was saved, those since the round before, and without an earlier one nothing.
    pub(super) fn fresh(&self, seen: Option<&Seen>) -> Vec<Fresh> {
        let t = self.trainee;
        let past = || t.person.tested.iter().filter(|one| one.on <= t.today);
        let Some(newest) = past().map(|one| one.on).max() else {
            return Vec::new();
        };
        let begins = newest.plus(1 - M.round_days);
        let is_new = |one: &Tested| match seen {
            Some(seen) => !seen.contains(&(one.movement, one.on)),
            None => one.on >= begins,
        };
        let mut movements: Vec<MovementIx> = past()
            .filter(|one| is_new(one))
            .map(|one| one.movement)
            .collect();
        movements.sort_unstable();
        movements.dedup();
        let earlier: Vec<Tested> = past().filter(|one| !is_new(one)).cloned().collect();
        if movements.is_empty() || (seen.is_none() && earlier.is_empty()) {
            return Vec::new();
        }
        let earlier = Person {
            tested: earlier,
            ..t.person.clone()
        };
        let roster = t.roster;
        let before = readiness::assess(roster.curriculum, roster.stages, &earlier, t.today);
        let mut out: Vec<Fresh> = movements
            .into_iter()
            .filter_map(|ix| self.best(ix, &is_new, &before))
            .collect();
        // What opens most stands first, then what is owned now.
        out.sort_by_key(|f| (std::cmp::Reverse((f.opens.len(), f.owned)), f.movement));
        out
    }

    /// The best of a movement among what is new, where it is better than all before or opens something.
    fn best(
        &self,
        ix: MovementIx,
        is_new: &dyn Fn(&Tested) -> bool,
        before: &Readiness,
    ) -> Option<Fresh> {
        let t = self.trainee;
        let facts = t.roster.find(ix)?;
        let at_most = facts.of.standard().at_most();
        let of = |new: bool| -> Vec<&Tested> {
            let list = t.person.tested.iter().filter(|t| t.movement == ix);
            list.filter(|one| one.on <= t.today && is_new(one) == new)
                .collect()
        };
        let best = |tests: &[&Tested]| {
            let all = points(t, ix, tests);
            let above = |a: &&crate::history::Point, b: &&crate::history::Point| match a
                .is_above(b, at_most)
            {
                true => std::cmp::Ordering::Greater,
                false if b.is_above(a, at_most) => std::cmp::Ordering::Less,
                false => std::cmp::Ordering::Equal,
            };
            let best = *all.iter().max_by(above)?;
            let of_it = |one: &&&Tested| points(t, ix, &[**one]).first() == Some(&best);
            tests.iter().find(of_it).map(|one| (best, (*one).clone()))
        };
        let old = of(false);
        let (point, test) = best(&of(true))?;
        if points(t, ix, &old)
            .iter()
            .any(|p| p.covers(&point, at_most))
        {
            return None;
        }
        let was = best(&old).map(|(_, test)| test.sides);
        let opens = self.opens(ix, before);
        let state = |of: &Readiness| of.of(ix).map(|s| s.state);
        let owned =
            state(self.readiness) == Some(State::Owned) && state(before) != Some(State::Owned);
        (was.is_some() || owned || !opens.is_empty()).then_some(Fresh {
            movement: ix,
            on: test.on,
            got: test.sides,
            was,
            owned,
            opens,
        })
    }

    /// What was not open before and asks for a movement.
    fn opens(&self, ix: MovementIx, before: &Readiness) -> Vec<MovementIx> {
        if self.refused.is_some() {
            return Vec::new();
        }
        let waited = |up: MovementIx| {
            let state = before.of(up).map(|s| s.state);
            matches!(
                state,
                Some(State::Almost | State::NotYet | State::TestFirst)
            )
        };
        let asks = |up: MovementIx| {
            let mut asks = false;
            let needs = self.curriculum().movement(up).needs();
            needs.visit(&mut |leaf| asks |= leaf.movement == ix);
            asks
        };
        self.readiness
            .all()
            .filter(|(up, s)| s.state == State::Open && waited(*up) && asks(*up))
            .map(|(up, _)| up)
            .collect()
    }
}
