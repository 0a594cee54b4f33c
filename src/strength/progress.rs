//! Moving on: what the training log says of a movement that was picked.

use super::best::without_zero;
use super::plan::least_a_session;
use super::working::{Pick, Room, bears};
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
        let lasts = self.curriculum.school.results_last_days as i32;
        let tests = self.person.tested.iter().filter(|t| t.movement == ix);
        let tested = tests.map(|t| t.on).filter(|on| *on <= self.today).max();
        let mut out: Vec<&Trained> = Vec::new();
        for t in &self.person.trained {
            let counts = t.movement == ix
                && without_zero(t.added) == added
                && tested.is_none_or(|day| t.on > day)
                && (0..=lasts).contains(&self.today.days_after(t.on));
            if counts && out.iter().all(|o| o.on != t.on) {
                out.push(t);
            }
        }
        out.sort_by_key(|t| t.on);
        out
    }

    pub(super) fn log(&self, group: &[MovementIx], pick: &Pick) -> Log {
        let ix = pick.movement;
        let m = self.movement(ix);
        let p = &pick.prescription;
        let lasts = self.curriculum.school.results_last_days as i32;
        let trained = || {
            self.person
                .trained
                .iter()
                .filter(|t| t.movement == ix)
                .map(|t| t.on)
        };
        let tested = self
            .person
            .tested
            .iter()
            .filter(|t| t.movement == ix)
            .map(|t| t.on);
        let counted = |day: &Day| (0..=lasts).contains(&self.today.days_after(*day));
        let last = trained().chain(tested).filter(counted).max();
        let logs = trained().next().is_some();
        // Easier for a week, which begins with the first training of the pattern since.
        let is_off = |day: Day| {
            let since = self
                .person
                .trained
                .iter()
                .filter(|t| group.contains(&t.movement) && t.on > day && t.on <= self.today);
            let back = since.map(|t| self.today.days_after(t.on)).max();
            self.today.days_after(day) > LONG_OFF && back.is_none_or(|days| days < A_WEEK)
        };
        if logs && last.is_some_and(is_off) {
            return Log::Return;
        }
        let sessions = self.sessions(ix, p.added);
        let asked = p.amount * ONE;
        let strict = m.guarded()
            || m.phase == Some(Phase::Lowering)
            || m.arms == Some(Arms::Straight)
            || is_unstable(m);
        // Sets that were taken away for balance still count as the dose, but not where three full doses are asked.
        let sets = match strict {
            true => p.sets,
            false => p.sets.min(least_a_session(self.curriculum)),
        };
        let is_full =
            |t: &&&Trained| t.did.len() >= sets as usize && t.did.iter().all(|d| *d >= asked);
        // Fewer sets are a lighter week; fewer reps with some in reserve were asked so.
        let is_missed =
            |t: &&Trained| t.in_reserve.unwrap_or(0) == 0 && t.did.iter().any(|d| *d < asked);
        let latest =
            |count: usize| (sessions.len() >= count).then(|| &sessions[sessions.len() - count..]);
        if latest(2).is_some_and(|two| two.iter().all(is_missed)) {
            return Log::Easier;
        }
        let ready = match strict {
            true => latest(3).is_some_and(|three| {
                three
                    .iter()
                    .all(|t| is_full(&t) && t.in_reserve.unwrap_or(0) >= 2)
            }),
            // Two over the dose in the last set, two sessions running: the "2 for 2" rule (Baechle & Earle, Essentials).
            false => latest(2).is_some_and(|two| {
                let over = |t: &&Trained| t.did.last().is_some_and(|d| *d >= asked + 2 * ONE);
                two.iter().all(|t| is_full(&t) && over(t))
            }),
        };
        let waits = waits(self.curriculum, m)
            && trained().min().is_none_or(|first| {
                let weeks = m.weeks.map_or(0, |w| w.from);
                self.today.days_after(first) < 7 * weeks as i32
            });
        match ready && !waits {
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
