//! What follows a line: what is entered, when an open set ends, when more is asked.

use super::constants::K;
use super::goal::Gap;
use super::line::{Line, Unit};
use super::reason::{Rule, Then};
use super::trainee::Trainee;
use crate::curriculum::Day;
use crate::curriculum::target::ONE;
use crate::curriculum::words::Pattern;

impl Trainee<'_> {
    /// What follows a line.
    pub(super) fn then(&self, rule: Rule, holds: bool) -> Then {
        match rule {
            Rule::Show => Then::Result,
            _ if holds => Then::Same,
            _ => Then::Step,
        }
    }

    /// What follows a first try. What is plain goes on while it is clean: under a restriction, and where something hurt or rested
    /// lately, no further than what is asked; a hold to its target. Back from time off, on a part that hurts little, from 65 on and with
    /// one side at a time to a bound, a hold back from time off to a nearer one. Common practice, no source.
    pub(super) fn then_of_try(&self, line: &Line, gaps: &[Gap], on: Day) -> Then {
        let ix = line.movement;
        let facts = self.roster.of(ix);
        let is_exit = facts.pattern() == Pattern::Exit;
        if facts.guarded() || facts.lowering() || is_exit || self.goes_no_further(ix, on) {
            return Then::Did;
        }
        let bound = |most: u32| match self.goes_to_a_bound(ix) {
            true => most.into(),
            false => i64::MAX,
        };
        if line.unit == Unit::Reps {
            return match bound(K.try_back[0]) {
                i64::MAX => Then::StopTwo,
                most => Then::StopMost(most),
            };
        }
        let gap = line.gap.map(|at| &gaps[at]).filter(|g| g.movement == ix);
        let target = gap.map_or(facts.of.standard(), |gap| gap.target);
        let off = if self.is_back {
            K.try_back_s.into()
        } else {
            i64::MAX
        };
        let most = (target.amount() / ONE).min(bound(K.try_back[1])).min(off);
        match most > line.amount {
            true => Then::HoldMost(most),
            false => Then::Did,
        }
    }
}
