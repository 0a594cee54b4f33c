//! Moving on: what the training log says of a movement that was picked.

use super::best::{log, without_zero};
use super::plan::sets_a_session;
use super::working::{Pick, Prescription, Room, bears};
use crate::curriculum::target::{Added, ONE};
use crate::curriculum::words::{Arms, Pattern, Phase};
use crate::curriculum::{Curriculum, Day, Movement, MovementIx};
use crate::results::Trained;

/// After so many days off, one step easier for a week. Common practice, no source.
const LONG_OFF: i32 = 14;
const A_WEEK: i32 = 7;

/// What the training log says of a pick.
pub(super) enum Log {
    Stay,
    On,
    Easier,
    Return,
}

impl<'a> Room<'a> {
    /// The training of a movement with one load since its last test, oldest first, one entry for each day: what was trained
    /// before was another dose.
    fn sessions(&self, ix: MovementIx, added: Option<Added>) -> Vec<&'a Trained> {
        let tests = self.person.tested.iter().filter(|t| t.movement == ix);
        let tested = tests.map(|t| t.on).filter(|on| *on <= self.today).max();
        let mut out: Vec<&Trained> = Vec::new();
        for t in log(self.person, self.today) {
            let counts = t.movement == ix
                && without_zero(t.added) == added
                && tested.is_none_or(|day| t.on > day)
                && self.counts(t.on);
            if counts && out.iter().all(|o| o.on != t.on) {
                out.push(t);
            }
        }
        out.sort_by_key(|t| t.on);
        out
    }

    fn counts(&self, on: Day) -> bool {
        let lasts = self.curriculum.school.results_last_days as i32;
        (0..=lasts).contains(&self.today.days_after(on))
    }

    /// Two weeks off, and easier for a week, which begins with the first training of the pattern since. A test after them sets
    /// the dose anew.
    fn is_easing(&self, group: &[MovementIx], ix: MovementIx) -> bool {
        let tests = self.person.tested.iter().filter(|t| t.movement == ix);
        let tested = tests.map(|t| t.on).filter(|on| self.counts(*on)).max();
        let trained = log(self.person, self.today).filter(|t| t.movement == ix);
        if trained.clone().next().is_none() {
            return false;
        }
        let since = trained
            .map(|t| t.on)
            .filter(|on| self.counts(*on) && tested.is_none_or(|day| *on > day));
        let mut days: Vec<Day> = tested.into_iter().chain(since).collect();
        days.sort();
        days.push(self.today);
        let is_long = |pair: &&[Day]| pair[1].days_after(pair[0]) > LONG_OFF;
        let Some(left) = days.windows(2).rfind(is_long).map(|pair| pair[0]) else {
            return false;
        };
        log(self.person, self.today)
            .filter(|t| group.contains(&t.movement) && t.on > left)
            .map(|t| self.today.days_after(t.on))
            .max()
            .is_none_or(|days| days < A_WEEK)
    }

    /// Whether a dose was done in full often enough to move on, by the training after a day; a card asks so many sets of it.
    fn is_done(&self, ix: MovementIx, p: &Prescription, asked: u32, after: Option<Day>) -> bool {
        let m = self.movement(ix);
        let strict = m.guarded()
            || m.phase == Some(Phase::Lowering)
            || m.arms == Some(Arms::Straight)
            || is_unstable(m);
        // The half sets of a lighter week count as the dose, but not where three full doses are asked.
        let sets = match strict {
            true => p.sets.min(asked),
            false => p.sets.min(sets_a_session(self.curriculum).0),
        };
        let amount = p.amount * ONE;
        let is_full =
            |t: &&Trained| t.did.len() >= sets as usize && t.did.iter().all(|d| *d >= amount);
        let mut sessions = self.sessions(ix, p.added);
        sessions.retain(|t| after.is_none_or(|day| t.on > day));
        let latest = |count: usize| sessions.len().checked_sub(count).map(|i| &sessions[i..]);
        match strict {
            true => latest(3).is_some_and(|three| {
                let eased = |t: &&Trained| t.in_reserve.unwrap_or(0) >= 2;
                three.iter().all(|t| is_full(t) && eased(t))
            }),
            // Two over the dose in the last set, two sessions running: the "2 for 2" rule (Baechle & Earle, Essentials).
            false => latest(2).is_some_and(|two| {
                let over = |t: &&Trained| t.did.last().is_some_and(|d| *d >= amount + 2 * ONE);
                two.iter().all(|t| is_full(t) && over(t))
            }),
        }
    }

    pub(super) fn log(
        &self,
        group: &[MovementIx],
        pick: &Pick,
        easier: Option<MovementIx>,
        asked: u32,
    ) -> Log {
        let (ix, p) = (pick.movement, &pick.prescription);
        if self.is_easing(group, ix) {
            return Log::Return;
        }
        // Fewer sets are a lighter week; fewer reps with some in reserve were asked so.
        let is_missed = |t: &&Trained| {
            t.in_reserve.unwrap_or(0) == 0 && t.did.iter().any(|d| *d < p.amount * ONE)
        };
        if let [.., before, last] = self.sessions(ix, p.added).as_slice()
            && is_missed(before)
            && is_missed(last)
        {
            // Whoever has since moved on from the easier one is back.
            let is_back = easier.is_some_and(|ix| {
                let dose = self.prescribe(ix).prescription;
                self.is_done(ix, &dose, asked, Some(last.on))
            });
            if !is_back {
                return Log::Easier;
            }
        }
        let m = self.movement(ix);
        let trained = log(self.person, self.today).filter(|t| t.movement == ix);
        let first = trained.map(|t| t.on).min();
        let waits = waits(self.curriculum, m)
            && first.is_none_or(|first| {
                let weeks = m.weeks.map_or(0, |w| w.from);
                self.today.days_after(first) < 7 * weeks as i32
            });
        match !waits && self.is_done(ix, p, asked, None) {
            true => Log::On,
            false => Log::Stay,
        }
    }
}

/// Straight-arm and shoulder-extension work also waits for the low end of its weeks.
pub(crate) fn waits(curriculum: &Curriculum, movement: &Movement) -> bool {
    movement.arms == Some(Arms::Straight) || bears(curriculum, movement, "shoulder-extension")
}

/// On rings, or a matter of balance.
pub(crate) fn is_unstable(movement: &Movement) -> bool {
    movement.pattern == Pattern::Balance
        || movement
            .equipment
            .iter()
            .flatten()
            .any(|word| word.contains("rings"))
}
