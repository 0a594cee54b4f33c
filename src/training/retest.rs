//! The retest: on which days, and of what.

use super::constants::K;
use super::facts::Kind;
use super::goal::{Gap, Goal};
use super::line::Line;
use super::plan::{Retest, days_of_week};
use super::reason::{Left, Rule};
use super::session::Session;
use super::trainee::Trainee;
use crate::curriculum::day::WEEK;
use crate::curriculum::{Day, MovementIx};
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

impl Trainee<'_> {
    /// Two days after the last training before it, or on the next training day if that comes first; where the plan goes on, two days
    /// before its next session, or in the place of what it tests of one that is nearer. What is more than three on the next training day
    /// two days later, strength before practice, these before holds, holds before range. Common practice, no source.
    pub(super) fn retest_days(
        &self,
        last: Day,
        tests: impl Fn(Day) -> Vec<MovementIx>,
    ) -> Vec<Retest> {
        let trains_from = |from: Day| {
            let days = (0..K.weeks + 2).flat_map(|week| days_of_week(self, week));
            days.filter(|day| *day >= from).min()
        };
        let rested = last.plus(K.apart);
        let goes_on = |next: Day| next.days_after(self.today) < WEEK * K.weeks as i32;
        let on = match trains_from(last.plus(1)) {
            Some(next) if goes_on(next) && next > rested => rested.min(next.plus(-K.apart)),
            Some(next) => rested.min(next),
            None => rested,
        };
        let mut all = tests(on);
        all.sort_by_key(|ix| {
            let facts = self.roster.of(*ix);
            (facts.mobility(), !facts.is_reps(), facts.practised())
        });
        let later = all.split_off(all.len().min(K.tests_day as usize));
        let mut out = vec![Retest { on, tests: all }];
        let next = trains_from(on.plus(K.apart)).filter(|_| !later.is_empty());
        out.extend(next.map(|on| Retest { on, tests: later }));
        out
    }

    /// What is tested again, of what had lines before: the form in which the heaviest gap was trained, showings due, results of the chain
    /// that run out soon after, the other gaps in theirs, what stood most often first; six at most, two of a kind, mobility apart. Nothing
    /// that was shown in the plan, and nothing known to reach its target where holding the breath is left alone. Up to a day's tests, where
    /// nothing asks for care, what was tried and has no number yet, where there is no other what is kept up.
    pub(super) fn retests(
        &self,
        goal: Option<&Goal>,
        gaps: &[Gap],
        on: Day,
        sessions: &[Session],
    ) -> Vec<MovementIx> {
        let stood = Stood::before(on, sessions);
        let is_whole = |ix: MovementIx| gaps.iter().any(|g| g.movement == ix && g.is_whole());
        let needless = |ix: MovementIx| {
            is_whole(ix) && stood.was_shown(ix)
                || self.spares_breath && (is_whole(ix) || self.owns(ix))
        };
        let mut forms: Vec<MovementIx> = (gaps.iter().enumerate())
            .filter_map(|(at, g)| stood.form(at, g))
            .collect();
        // The heaviest gap's, then what stood most often.
        let others = forms.get_mut(1..).unwrap_or_default();
        others.sort_by_cached_key(|ix| Reverse(stood.times(|l| l.movement == *ix)));
        let shows = gaps.iter().filter(|g| g.is_whole()).map(|g| g.movement);
        let due = shows.chain(self.running_out(goal, on));
        let due = due.filter(|ix| stood.is_enough(*ix));
        let first = forms.first().copied();
        let due = first.into_iter().chain(due).chain(forms.iter().copied());
        let mut out = self.some_of(due.filter(|ix| !needless(*ix)), on, K.tests, Vec::new());
        let of_way = !out.is_empty();
        if out.len() < K.tests_day as usize && !self.asks_for_care() {
            let tried =
                stood.often(|l| l.rule == Rule::UntilTested && self.now(l.movement).is_none());
            out = self.some_of(tried.into_iter(), on, K.tests_day, out);
        }
        if !of_way && !self.asks_for_care() {
            let kept = stood.often(|_| true).into_iter();
            out = self.some_of(kept.filter(|ix| !needless(*ix)), on, K.tests, out);
        }
        out
    }

    /// Results of the chain that run out within some weeks after a day, the oldest first.
    fn running_out(
        &self,
        goal: Option<&Goal>,
        on: Day,
    ) -> impl Iterator<Item = MovementIx> + use<> {
        let lasts = self.roster.curriculum.school().results_last.count();
        let mut newest: BTreeMap<MovementIx, Day> = BTreeMap::new();
        let in_chain = |ix: MovementIx| goal.is_none_or(|g| g.chain.contains(&ix));
        for t in self.person.tested.iter().filter(|t| in_chain(t.movement)) {
            let day = newest.entry(t.movement).or_insert(t.on);
            *day = t.on.max(*day);
        }
        let counts = |day: Day| {
            self.today.days_after(day) <= lasts && on.days_after(day) + K.tests_ahead > lasts
        };
        let mut old: Vec<(Day, MovementIx)> = newest
            .into_iter()
            .filter(|(_, day)| counts(*day))
            .map(|(ix, day)| (day, ix))
            .collect();
        old.sort_unstable();
        old.into_iter().map(|(_, ix)| ix)
    }

    /// The first of these that may be tested, beside what is `out` already so many at most, two of a kind, mobility apart.
    fn some_of(
        &self,
        due: impl Iterator<Item = MovementIx>,
        on: Day,
        most: u32,
        mut out: Vec<MovementIx>,
    ) -> Vec<MovementIx> {
        let mut kinds: BTreeMap<Kind, u32> = BTreeMap::new();
        for ix in &out {
            *kinds.entry(self.roster.of(*ix).kind()).or_default() += 1;
        }
        for ix in due {
            if out.len() >= most as usize || out.contains(&ix) || !self.tests_on(ix, on) {
                continue;
            }
            let facts = self.roster.of(ix);
            let count = kinds.entry(facts.kind()).or_default();
            if facts.mobility() || *count < K.tests_kind {
                *count += 1;
                out.push(ix);
            }
        }
        out
    }
}

/// What is tested has no line from the first day of tests to the day after its own: its test stands there. Common practice, no source.
pub(super) fn make_room(sessions: &mut Vec<Session>, retests: &[Retest]) {
    let Some(first) = retests.first().map(|r| r.on) else {
        return;
    };
    for session in sessions.iter_mut().filter(|s| s.on >= first) {
        let near = retests.iter().filter(|r| session.on < r.on.plus(K.apart));
        let tested: BTreeSet<MovementIx> = near.flat_map(|r| r.tests.iter().copied()).collect();
        let (gone, stays): (Vec<Line>, Vec<Line>) = std::mem::take(&mut session.lines)
            .into_iter()
            .partition(|l| tested.contains(&l.movement));
        session.minutes -= gone.iter().map(|l| l.minutes).sum::<i64>();
        let gone = gone.iter().map(|l| (l.movement, Left::Tested));
        session.left.extend(gone);
        session.lines = stays;
    }
    sessions.retain(|s| s.on < first || !s.lines.is_empty());
}

/// The sessions before a day, and how often a movement has to stand in them to be tested: twice, in a single week once. Common practice,
/// no source.
struct Stood<'s> {
    sessions: Vec<&'s Session>,
    least: usize,
}

impl Stood<'_> {
    fn before(on: Day, sessions: &[Session]) -> Stood<'_> {
        let sessions: Vec<&Session> = sessions.iter().filter(|s| s.on < on).collect();
        let weeks = sessions.iter().map(|s| s.week).max().unwrap_or(0);
        Stood {
            sessions,
            least: K.tests_times.min(weeks) as usize,
        }
    }

    fn times(&self, is: impl Fn(&Line) -> bool) -> usize {
        let stands = |s: &&&Session| s.lines.iter().any(&is);
        self.sessions.iter().filter(stands).count()
    }

    /// All that stood often enough, in some line of this sort, most often first.
    fn often(&self, is: impl Fn(&Line) -> bool) -> Vec<MovementIx> {
        let lines = self.sessions.iter().flat_map(|s| &s.lines);
        let lines = lines.filter(|l| is(l));
        let all: BTreeSet<MovementIx> = lines.map(|l| l.movement).collect();
        let mut all: Vec<MovementIx> = all.into_iter().filter(|ix| self.is_enough(*ix)).collect();
        all.sort_by_cached_key(|ix| Reverse(self.times(|l| l.movement == *ix)));
        all
    }

    fn was_shown(&self, ix: MovementIx) -> bool {
        self.times(|l| l.movement == ix && l.rule == Rule::Show) > 0
    }

    /// It was shown, or stood often enough, in this form.
    fn is_enough(&self, ix: MovementIx) -> bool {
        let times = self.times(|l| l.movement == ix);
        times > 0 && (times >= self.least || self.was_shown(ix))
    }

    /// What a gap is tested by: what was trained most often for it, of as much the last, then itself.
    fn form(&self, at: usize, gap: &Gap) -> Option<MovementIx> {
        let lines = self.sessions.iter().flat_map(|s| &s.lines);
        let of_gap = lines.filter(|l| l.gap == Some(at)).map(|l| l.movement);
        let last = |ix: MovementIx| {
            let of = |s: &&&Session| s.lines.iter().any(|l| l.movement == ix);
            self.sessions.iter().filter(of).map(|s| s.on).max()
        };
        of_gap
            .chain([gap.movement])
            .filter(|ix| self.is_enough(*ix))
            .max_by_key(|ix| {
                let times = self.times(|l| l.movement == *ix);
                (times, last(*ix), *ix == gap.movement, Reverse(*ix))
            })
    }
}
