//! The way back from time off: less and easier first, then a step below the old number, and for a while nothing above the last
//! session before it. Common practice, no source.

use super::constants::K;
use super::ease::Ease;
use super::reason::{Reason, Rule};
use super::trainee::Trainee;
use crate::curriculum::target::ONE;
use crate::curriculum::words::Pattern;
use crate::curriculum::{Day, Mass, MovementIx};

/// The newest time off of two weeks or more.
#[derive(Clone, Copy, Debug)]
struct Off {
    /// The last training before it.
    from: Day,
    /// The first after it; the plan's first day where there is none.
    to: Day,
    /// Known without a log of its pattern.
    tested: bool,
}

impl Off {
    fn days(&self) -> i32 {
        self.to.days_after(self.from)
    }

    /// Four weeks or more.
    fn is_longer(&self) -> bool {
        self.days() >= K.off[1]
    }
}

/// The last session of a movement before time off.
#[derive(Clone, Debug, PartialEq)]
pub struct Most {
    /// Reps or seconds of its first set.
    pub amount: i64,
    pub sets: i64,
    pub mass: Mass,
    /// What its sets left, where that was said.
    left: Option<i64>,
}

impl Most {
    /// What a set of so many leaves, by what this session left.
    pub fn leaves(&self, amount: i64) -> i64 {
        let more = (self.amount - amount).max(0);
        let left = self.left.map(|left| left + more);
        left.unwrap_or(i64::MAX)
    }
}

impl Trainee<'_> {
    /// By the log of the pattern, of what is known without one by the whole log, since it was last forgotten.
    fn time_off(&self, ix: MovementIx, first: Day) -> Option<Off> {
        let pattern = self.roster.of(ix).pattern();
        let foot = self.long_off(pattern);
        let mut days = self.days_of(pattern);
        let tested = days.is_empty() && self.now(ix).is_some();
        if tested {
            days = self.log.iter().map(|t| t.of.on).collect();
            days.dedup();
        }
        days.retain(|day| foot.is_none_or(|foot| *day > foot));
        let ends = days.iter().copied().skip(1);
        let ends = ends.chain([self.today.max(first)]);
        let gaps: Vec<(Day, Day)> = days.iter().copied().zip(ends).collect();
        let long = gaps
            .into_iter()
            .rev()
            .find(|(from, to)| to.days_after(*from) >= K.off[0]);
        long.map(|(from, to)| Off { from, to, tested })
    }

    /// The newest time off has its say after it ended: a week of less, from four weeks off on two that are easier too (not of what has
    /// no log) and one of less of the same; then a week nearer to what it was. What is unknown by then is tried like anything new.
    pub(super) fn after_time_off(&self, ix: MovementIx, on: Day, first: Day) -> Ease {
        let facts = self.roster.of(ix);
        if matches!(facts.pattern(), Pattern::Mobility | Pattern::Exit) {
            return Ease::default();
        }
        let Some(off) = self.time_off(ix, first) else {
            return Ease::default();
        };
        let since = on.days_after(off.to);
        let less = K.off_for[usize::from(off.is_longer())];
        let down = off.is_longer() && !off.tested;
        let step = less + if down { K.back_for } else { 0 };
        let most = self.most_after(ix, off, on);
        let again = since >= less;
        if since >= step + K.back_for || again && self.now(ix).is_none() {
            return Ease {
                most,
                ..Ease::default()
            };
        }
        let why = match again {
            true => Reason::BackAfter(off.days()),
            false => Reason::DaysOff(off.days()),
        };
        Ease {
            light: true,
            nearly: since >= step,
            easier: !again && (down || facts.lowering()),
            hold: true,
            by: Some((Rule::TimeOff, why)),
            most,
            ..Ease::default()
        }
    }

    /// The last session before time off, for some weeks after it, while nothing was tested since and none did as much again.
    fn most_after(&self, ix: MovementIx, off: Off, on: Day) -> Option<Most> {
        if on.days_after(off.to) >= K.back_most {
            return None;
        }
        let foot = self.long_off(self.roster.of(ix).pattern());
        let mut before = self.logged(ix).rev();
        let last =
            before.find(|t| t.of.on <= off.from && foot.is_none_or(|foot| t.of.on > foot))?;
        let mut tests = self.person.tested.iter();
        let tested = tests.any(|t| t.movement == ix && t.on > off.from && t.on <= self.today);
        let again = self.logged(ix).any(|t| {
            t.of.on > off.from && t.full() && t.first() >= last.first() && t.mass >= last.mass
        });
        let (first, left) = (last.first() / ONE, last.of.in_reserve.map(i64::from));
        // To failure once is not asked again: one rep or second less.
        let less = i64::from(left == Some(0) && first > 1);
        (!tested && !again).then(|| Most {
            amount: first - less,
            sets: last.sets(),
            mass: last.mass,
            left: left.map(|left| left + less),
        })
    }
}
