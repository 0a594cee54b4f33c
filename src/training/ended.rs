//! What was paused or hurt, and is over: how it is come back from.

use super::constants::K;
use super::trainee::Trainee;
use crate::curriculum::words::BodyPart;
use crate::curriculum::{Day, MovementIx};
use crate::results::{LIMITS, Pain, Paused};

/// A pause of a week or more that has ended, or a pain.
#[derive(Clone, Copy, Debug)]
pub struct Ended {
    pub what: Paused,
    /// Its last day.
    pub until: Day,
    /// Trained on, light and easier: what bears on it only lightly was never less.
    pub heavily: bool,
}

/// A part that hurt and is better.
#[derive(Clone, Copy, Debug)]
pub struct Hurt {
    pub part: BodyPart,
    pub score: u32,
    /// The day of the last entry that held it back.
    pub on: Day,
    /// Meanwhile it rested: what bears on it only lightly waited too.
    pub rested: bool,
}

/// A pain of 3 to 5: what bears on its part stays as it is until a newer entry is lower.
pub fn holds(pain: &Pain) -> bool {
    (LIMITS.pain[0]..LIMITS.pain[1]).contains(&pain.score)
}

/// Of such a pain: light and easier, from 4 on as after a worse next morning. Common practice, no source.
pub fn takes_back(pain: &Pain) -> bool {
    pain.score >= K.pain_less || is_worse(pain)
}

/// Worse the next morning.
pub(super) fn is_worse(pain: &Pain) -> bool {
    pain.next_morning.unwrap_or(0) > pain.score
}

impl Trainee<'_> {
    /// The pains of a part, by day.
    fn pains_of(&self, part: BodyPart) -> Vec<&Pain> {
        let all = self.person.pains.iter();
        let mut pains: Vec<&Pain> = all.filter(|p| p.part == part).collect();
        pains.sort_by_key(|p| p.on);
        pains
    }

    /// The pauses of a week or more that have ended, pains too: those that rested their part, and those with which it was trained
    /// light and easier until a lower entry.
    pub(super) fn ended_pauses(&self) -> Vec<Ended> {
        let pauses = self.person.pauses.iter().filter_map(|p| {
            let until = p.until.filter(|until| *until < self.today)?;
            let long = until.days_after(p.on) + 1 >= K.pause_days;
            long.then_some(Ended {
                what: p.what,
                until,
                heavily: false,
            })
        });
        let mut out: Vec<Ended> = pauses.collect();
        for part in BodyPart::ALL {
            let pains = self.pains_of(*part);
            let ends = |until: Day, heavily| Ended {
                what: Paused::Part(*part),
                until,
                heavily,
            };
            let rests: Vec<bool> = pains.iter().map(|p| self.stops(p)).collect();
            out.extend(long_run(&pains, &rests).map(|(_, until)| ends(until, false)));
            let hurts: Vec<bool> = pains.iter().map(|p| self.stops(p) || holds(p)).collect();
            let less = long_run(&pains, &hurts)
                .filter(|(run, _)| run.iter().any(|p| self.stops(p) || takes_back(p)));
            out.extend(less.map(|(_, until)| ends(until, true)));
        }
        out
    }

    /// The parts whose newest entry is low again, each with the last one that was not.
    pub(super) fn eased_pains(&self) -> Vec<Hurt> {
        let newest = |part: &BodyPart| {
            let pains = self.pains_of(*part);
            let bad = |p: &&Pain| self.stops(p) || holds(p);
            let last = pains.iter().rposition(bad)?;
            let first = pains[..last].iter().rposition(|p| !bad(p));
            let run = &pains[first.map_or(0, |i| i + 1)..=last];
            (last + 1 < pains.len()).then(|| Hurt {
                part: *part,
                score: pains[last].score,
                on: pains[last].on,
                rested: run.iter().any(|p| self.stops(p)),
            })
        };
        BodyPart::ALL.iter().filter_map(newest).collect()
    }

    /// Whether a pain that is better reaches a movement: it bears on the part, or waited while that rested.
    pub(super) fn is_eased_on(&self, hurt: &Hurt, ix: MovementIx) -> bool {
        let facts = self.roster.of(ix);
        facts.bears_on(hurt.part) || hurt.rested && facts.stresses(hurt.part)
    }

    /// Whether something that is over reaches a movement.
    pub(super) fn is_back_from(&self, ended: &Ended, ix: MovementIx) -> bool {
        let heavily = |part| self.roster.of(ix).bears_on(part);
        match ended.what {
            Paused::Part(part) if ended.heavily => heavily(part),
            what => self.reaches(what, ix),
        }
    }
}

/// The last run of bad entries that a better one ended, a week or more after its first, with its last day.
fn long_run<'p, 'a>(pains: &'p [&'a Pain], bad: &[bool]) -> Option<(&'p [&'a Pain], Day)> {
    let last = bad.iter().rposition(|b| *b)?;
    let after = pains.get(last + 1)?;
    let first = bad[..last].iter().rposition(|b| !b).map_or(0, |i| i + 1);
    let long = after.on.days_after(pains[first].on) >= K.pause_days;
    long.then(|| (&pains[first..=last], after.on.plus(-1)))
}
