//! What to watch: what hurts and rests, what falls or stands still, sides that differ, results that run out, training without a
//! day off, and what decides nothing.

use super::{Look, M};
use crate::curriculum::target::{Got, Micro};
use crate::curriculum::{Day, Mass, MovementIx};
use crate::readiness::{Cause, State, causes};
use crate::results::{LIMITS, Screened, Tested};
use crate::training::{Gap, Group, K, Logged, OneLeg, Side, holds};
use std::collections::BTreeMap;

/// One thing to watch.
#[derive(Clone, Debug, PartialEq)]
pub enum Watch {
    /// The newest pain of a part, by its place in the person's list; whether its part rests for it.
    Pain {
        at: usize,
        stops: bool,
    },
    /// Years, of somebody who still grows or is old enough to ask about falls; whether weight is on the way of who still grows.
    Age {
        years: i32,
        weight: bool,
    },
    /// Numbers that are more likely a slip.
    Doubt(Vec<(MovementIx, Got)>),
    /// Too short on one leg, of somebody of so many years.
    OneLeg {
        years: i32,
        on: OneLeg,
    },
    /// What the way needs and is not at hand: each of several words that would do, and what waits for it.
    Missing(Vec<(Vec<String>, Vec<MovementIx>)>),
    /// Told to ask first, and cleared; the last day.
    Cleared(Day),
    /// The health questions were never answered.
    Unanswered,
    /// A pause, a restriction, or light training.
    Rests(Cause),
    /// By its place among the histories.
    Fallen(usize),
    Still(usize),
    /// Millionths.
    Sides {
        movement: MovementIx,
        left: Micro,
        right: Micro,
        weaker: Side,
        /// It may be trained: it begins with the weaker.
        act: bool,
    },
    /// The newest of yesterday and today on which something was trained with nothing left in reserve.
    ToFailure {
        on: Day,
        movements: Vec<MovementIx>,
    },
    /// So many days without a logged session.
    TimeOff(i32),
    /// The last days on which a group was trained on two days running.
    NoDayOff {
        group: Group,
        first: Day,
        then: Day,
    },
    /// From the first day on.
    RunsOut {
        from: Day,
        movements: Vec<MovementIx>,
    },
    /// Entries of the file that decide nothing.
    Aside,
    /// Results with help where none is allowed.
    Helped(Vec<MovementIx>),
    /// Too old to decide anything, and counted by nothing else.
    OutOfDate(Vec<MovementIx>),
}

/// The rank of a person who has nothing to work on: behind what hurts.
pub(super) const STUCK: u8 = 1;
/// The rank of what is said of a person, and makes nobody come first.
pub(super) const SAID: u8 = 11;

impl Watch {
    /// What needs a look first has the lowest.
    pub fn rank(&self) -> u8 {
        match self {
            Watch::Pain { stops: true, .. } => 0,
            Watch::Pain { .. } | Watch::Doubt(_) | Watch::OneLeg { .. } => 2,
            Watch::Fallen(_) => 3,
            Watch::Still(_) => 4,
            Watch::NoDayOff { .. } | Watch::ToFailure { .. } | Watch::TimeOff(_) => 5,
            Watch::Sides { .. } => 6,
            Watch::RunsOut { .. } => 7,
            Watch::OutOfDate(_) => 8,
            Watch::Helped(_) | Watch::Aside => 9,
            Watch::Rests(_) => 10,
            Watch::Age { .. } | Watch::Cleared(_) | Watch::Unanswered | Watch::Missing(_) => SAID,
        }
    }

    /// Its kind as answers for programs say it.
    pub fn word(&self) -> &'static str {
        match self {
            Watch::Pain { .. } => "pain",
            Watch::Age { .. } => "age",
            Watch::Doubt(_) => "doubtful",
            Watch::OneLeg { .. } => "one_leg",
            Watch::Missing(_) => "equipment",
            Watch::Cleared(_) => "cleared",
            Watch::Unanswered => "unanswered",
            Watch::Rests(cause) => cause.word(),
            Watch::Fallen(_) => "falling",
            Watch::Still(_) => "plateau",
            Watch::Sides { .. } => "sides",
            Watch::NoDayOff { .. } => "no_day_off",
            Watch::ToFailure { .. } => "to_failure",
            Watch::TimeOff(_) => "time_off",
            Watch::RunsOut { .. } => "runs_out",
            Watch::Aside => "aside",
            Watch::Helped(_) => "helped",
            Watch::OutOfDate(_) => "out_of_date",
        }
    }

    /// A pain for which its part rests.
    pub fn stops(&self) -> bool {
        matches!(self, Watch::Pain { stops: true, .. })
    }

    /// What is said before the step that is next, or behind it.
    pub(super) fn is_act(&self) -> bool {
        match self {
            Watch::Doubt(_) | Watch::OneLeg { .. } | Watch::TimeOff(_) => true,
            Watch::Sides { act, .. } => *act,
            _ => false,
        }
    }

    /// Why something rests.
    pub(super) fn rests(&self) -> Option<Cause> {
        match self {
            Watch::Rests(cause) => Some(*cause),
            _ => None,
        }
    }

    /// Whether it is about entries that decide nothing.
    pub fn is_aside(&self) -> bool {
        matches!(self, Watch::Aside | Watch::Helped(_) | Watch::OutOfDate(_))
    }
}

impl Look<'_, '_> {
    pub(super) fn watch(&self) -> Vec<Watch> {
        let t = self.trainee;
        let mut out = self.pains();
        let doubts = self.doubts();
        out.extend((!doubts.is_empty()).then_some(Watch::Doubt(doubts)));
        let one_leg = t.falls().zip(t.age);
        out.extend(one_leg.map(|(on, years)| Watch::OneLeg { years, on }));
        let told = |age: &i32| *age < LIMITS.adult || *age >= K.balance_age;
        let loaded = |g: &Gap| t.roster.of(g.movement).loaded();
        let weight = t.is_minor() && self.aim.gaps.iter().any(loaded);
        let age = t.person.age_on(t.today).filter(told);
        out.extend(age.map(|years| Watch::Age { years, weight }));
        let screened = t.person.screened.as_ref();
        let cleared = screened.and_then(Screened::cleared_until);
        let holds = |last: &Day| *last >= t.today;
        out.extend(cleared.filter(holds).map(Watch::Cleared));
        // Where nothing is planned, that and what to do stands first of all.
        let unanswered = screened.is_none() && self.refused.is_none();
        out.extend(unanswered.then_some(Watch::Unanswered));
        let missing = self.missing();
        out.extend((!missing.is_empty()).then_some(Watch::Missing(missing)));
        out.extend(self.to_failure());
        out.extend(self.time_off());
        let others = causes(t.person, t.today).into_iter();
        out.extend(
            others
                .filter(|c| !matches!(c, Cause::Pain(_)))
                .map(Watch::Rests),
        );
        let histories = || self.history.iter().enumerate();
        out.extend(
            histories()
                .filter(|(_, h)| h.fallen.is_some())
                .map(|(i, _)| Watch::Fallen(i)),
        );
        // What falls does not stand still, and what is owned and asked by nothing has no need to grow.
        let matters =
            |ix: MovementIx| self.aim.gaps.iter().any(|g| g.movement == ix) || !t.owns(ix);
        let still = histories().filter(|(_, h)| h.still.is_some() && h.fallen.is_none());
        out.extend(
            still
                .filter(|(_, h)| h.falls() || matters(h.movement))
                .map(|(i, _)| Watch::Still(i)),
        );
        out.extend(self.no_day_off());
        out.extend(self.sides());
        out.extend(self.ageing());
        let helped = self.helped();
        out.extend((!helped.is_empty()).then_some(Watch::Helped(helped)));
        out.extend((!t.person.aside.is_empty()).then_some(Watch::Aside));
        out
    }

    /// The newest pain of each part: what rests for it or holds it back, else what is younger than the days without steps.
    fn pains(&self) -> Vec<Watch> {
        let t = self.trainee;
        let stopping = causes(t.person, t.today);
        let newest = t.newest_pains();
        let places = t.person.pains.iter().enumerate();
        let mut out: Vec<Watch> = places
            .filter(|(_, p)| p.on <= t.today && newest.iter().any(|n| std::ptr::eq(*n, *p)))
            .filter_map(|(at, p)| {
                let stops = stopping.contains(&Cause::Pain(at));
                let recent = p.score > 0 && t.today.days_after(p.on) < K.pain_days;
                (stops || holds(p) || recent).then_some(Watch::Pain { at, stops })
            })
            .collect();
        out.sort_by_key(Watch::rank);
        out
    }

    /// What was trained today or yesterday until nothing was left.
    fn to_failure(&self) -> Option<Watch> {
        let t = self.trainee;
        let failed = |one: &&crate::results::Trained| {
            let logged = Logged {
                of: one,
                mass: Mass::NONE,
            };
            let ago = t.today.days_after(one.on);
            (0..=1).contains(&ago) && (one.in_reserve == Some(0) || logged.missed())
        };
        let all: Vec<_> = t.person.trained.iter().filter(failed).collect();
        let on = all.iter().map(|one| one.on).max()?;
        let mut movements: Vec<MovementIx> = all
            .iter()
            .filter(|one| one.on == on && t.roster.find(one.movement).is_some())
            .map(|one| one.movement)
            .collect();
        movements.sort_unstable();
        movements.dedup();
        (!movements.is_empty()).then_some(Watch::ToFailure { on, movements })
    }

    /// Since the newest logged session, where that is long enough ago for lighter weeks.
    fn time_off(&self) -> Option<Watch> {
        let t = self.trainee;
        let trained = t.person.trained.iter().map(|one| one.on);
        let days = trained.chain(t.person.sessions.iter().map(|one| one.on));
        let last = days.filter(|on| *on <= t.today).max()?;
        let off = t.today.days_after(last);
        (off >= K.off[0]).then_some(Watch::TimeOff(off))
    }

    fn sides(&self) -> Vec<Watch> {
        let t = self.trainee;
        let of = |h: &crate::history::History| {
            // What a one-sided neighbour shows of it has no sides of its own.
            if !t.roster.of(h.movement).of.each_side() {
                return None;
            }
            let weaker = t.apart(h.movement)?;
            let (left, right) = t.now(h.movement)?.sides?;
            Some(Watch::Sides {
                movement: h.movement,
                left,
                right,
                weaker,
                act: self.refused.is_none() && t.may(h.movement),
            })
        };
        self.history.iter().filter_map(of).collect()
    }

    /// What the way needs and is not at hand, with the gaps that it stops, the lowest first. First what stops the step that is next, then
    /// what stops the lowest, then what stops most.
    fn missing(&self) -> Vec<(Vec<String>, Vec<MovementIx>)> {
        let t = self.trainee;
        let mut out: Vec<(Vec<String>, Vec<MovementIx>)> = Vec::new();
        for gap in &self.aim.gaps {
            for one_of in t.missing(gap.movement) {
                match out.iter_mut().find(|(words, _)| *words == one_of) {
                    Some((_, stops)) => stops.push(gap.movement),
                    None => out.push((one_of, vec![gap.movement])),
                }
            }
        }
        let stage = |ix: &MovementIx| t.roster.of(*ix).stage;
        let next = self.aim.limiter().and_then(|gap| gap.stop.as_ref());
        for (_, stops) in &mut out {
            stops.sort_by_key(|ix| (next.is_none_or(|stop| stop.by != *ix), stage(ix)));
        }
        out.sort_by_key(|(_, stops)| {
            let first = stops[0];
            let is_next = next.is_some_and(|stop| stop.by == first);
            (!is_next, stage(&first), std::cmp::Reverse(stops.len()))
        });
        out
    }

    /// The newest two days running of each group within the days in which turns are counted.
    fn no_day_off(&self) -> Vec<Watch> {
        let t = self.trainee;
        let mut days: BTreeMap<Group, Vec<Day>> = BTreeMap::new();
        for one in &t.person.trained {
            let recent = one.on <= t.today && t.today.days_after(one.on) < K.turns;
            let group = t.roster.find(one.movement).and_then(|f| f.group());
            if let Some(group) = group.filter(|_| recent) {
                days.entry(group).or_default().push(one.on);
            }
        }
        let newest = |(group, mut days): (Group, Vec<Day>)| {
            days.sort_unstable();
            days.dedup();
            let two = days
                .windows(2)
                .rev()
                .find(|d| d[1].days_after(d[0]) < K.apart)?;
            Some(Watch::NoDayOff {
                group,
                first: two[0],
                then: two[1],
            })
        };
        days.into_iter().filter_map(newest).collect()
    }

    /// Results on the way to the goal that are about to run out, and those that are out of date.
    fn ageing(&self) -> Vec<Watch> {
        let t = self.trainee;
        let lasts = self.curriculum().school().results_last.count();
        let in_chain = |ix: MovementIx| {
            let goal = self.aim.goal.as_ref();
            goal.is_none_or(|g| g.chain.contains(&ix))
        };
        let (mut soon, mut old): (Vec<(Day, MovementIx)>, Vec<MovementIx>) = Default::default();
        let mut newest: BTreeMap<MovementIx, Day> = BTreeMap::new();
        for one in t.person.tested.iter().filter(|one| in_chain(one.movement)) {
            let day = newest.entry(one.movement).or_insert(one.on);
            *day = one.on.max(*day);
        }
        for (ix, day) in newest {
            let from = day.plus(lasts + 1);
            let left = from.days_after(t.today);
            let owned = self
                .readiness
                .of(ix)
                .is_some_and(|s| s.state == State::Owned);
            match left {
                ..=0 if !owned => old.push(ix),
                left if (1..=M.runs_out_days).contains(&left) => soon.push((from, ix)),
                _ => {}
            }
        }
        soon.sort_unstable();
        let mut out = Vec::new();
        if let Some((from, _)) = soon.first().copied() {
            let movements = soon.into_iter().map(|(_, ix)| ix).collect();
            out.push(Watch::RunsOut { from, movements });
        }
        out.extend((!old.is_empty()).then_some(Watch::OutOfDate(old)));
        out
    }

    /// Movements whose newest results were all done with help that their standard does not allow.
    fn helped(&self) -> Vec<MovementIx> {
        let t = self.trainee;
        let lasts = self.curriculum().school().results_last.count();
        let helped = |one: &Tested| {
            let added = |got: &crate::curriculum::target::Got| got.parts().added();
            one.sides
                .all()
                .any(|got| added(got).is_some_and(|a| a.signed() < 0))
        };
        let mut by: BTreeMap<MovementIx, (Day, bool)> = BTreeMap::new();
        let counts = |one: &&Tested| one.on <= t.today && t.today.days_after(one.on) <= lasts;
        for one in t.person.tested.iter().filter(counts) {
            let here = helped(one);
            let kept = by.entry(one.movement).or_insert((one.on, here));
            match one.on.cmp(&kept.0) {
                std::cmp::Ordering::Greater => *kept = (one.on, here),
                std::cmp::Ordering::Equal => kept.1 &= here,
                std::cmp::Ordering::Less => {}
            }
        }
        let allowed = |ix: MovementIx| {
            let standard = self.curriculum().movement(ix).standard();
            standard.added().is_some_and(|a| a.signed() < 0)
        };
        let none = by
            .into_iter()
            .filter(|(ix, (_, all))| *all && !allowed(*ix));
        none.map(|(ix, _)| ix).collect()
    }
}
