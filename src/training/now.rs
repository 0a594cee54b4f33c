//! What a person can do today: the best set of the newest test day and of the log since, or what a harder member of the family
//! shows.

use super::constants::K;
use super::facts::Facts;
use super::trainee::{Logged, Trainee, in_mass};
use crate::curriculum::target::{Added, Got, Micro, ONE, Target, Tries};
use crate::curriculum::{Day, Mass, MovementIx};
use crate::readiness::{Share, WHOLE};
use crate::results::{Sides, Tested};
use std::cmp::Ordering;

/// What is known of a movement.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Now {
    /// In millionths; reps and seconds are whole.
    pub amount: Micro,
    /// Added weight, help below 0.
    pub mass: Mass,
    /// Left and right, where they were tested by themselves.
    pub sides: Option<(Micro, Micro)>,
    pub tries: Tries,
}

const ONE_OF_ONE: Tries = Tries { hits: 1, of: 1 };

impl Now {
    fn plain(amount: Micro, mass: Mass) -> Now {
        Now {
            amount,
            mass,
            sides: None,
            tries: ONE_OF_ONE,
        }
    }

    /// Whole reps or seconds.
    pub fn whole(&self) -> i64 {
        self.amount / ONE
    }
}

impl Trainee<'_> {
    /// What is known of a movement: its own, and at least what a harder member of its family shows. `None`: nothing.
    pub fn now(&self, ix: MovementIx) -> Option<Now> {
        *self.now[ix.at()].get_or_init(|| self.find_now(ix))
    }

    fn find_now(&self, ix: MovementIx) -> Option<Now> {
        let facts = self.roster.of(ix);
        let clipped = |now: Now| match facts.counted && !facts.loaded() {
            true => Now {
                mass: now.mass.min(Mass::NONE),
                ..now
            },
            false => now,
        };
        let own = self.own_now(ix);
        // What is only presumed stands back behind what a harder member shows.
        let measured = self.has_result(ix);
        let mut best = own;
        let above = match facts.counted {
            true => self.roster.above(ix),
            false => Vec::new(),
        };
        for theirs in above.into_iter().filter_map(|up| self.own_now(up)) {
            let one = match own.filter(|_| measured) {
                Some(own) if theirs.mass < own.mass => continue,
                Some(own) => Now {
                    amount: own.amount.max(theirs.amount),
                    ..own
                },
                None => clipped(theirs),
            };
            if best.is_none_or(|best| better(facts, &one, &best)) {
                best = Some(one);
            }
        }
        best
    }

    /// The day after which results and log of a movement count.
    pub(super) fn counts_from(&self, ix: MovementIx) -> Day {
        let foot = self.long_off(self.roster.of(ix).pattern());
        let lasts = self.roster.curriculum.school().results_last.count();
        let since = self.today.plus(-lasts - 1);
        foot.map_or(since, |foot| foot.max(since))
    }

    /// Whether a result or the log speaks of a movement itself.
    pub(super) fn has_result(&self, ix: MovementIx) -> bool {
        let from = self.counts_from(ix);
        let counts = |on: Day| on > from && on <= self.today;
        let tested = |t: &Tested| t.movement == ix && counts(t.on);
        self.person.tested.iter().any(tested) || self.logged(ix).any(|t| counts(t.of.on))
    }

    /// Where nothing is known: the newest result of what is measured in another way by now.
    pub(super) fn measured_otherwise(&self, ix: MovementIx) -> Option<Sides> {
        if self.now(ix).is_some() {
            return None;
        }
        let from = self.counts_from(ix);
        let of = self.person.otherwise.iter();
        let of = of.filter(|t| t.movement == ix && t.on > from);
        of.max_by_key(|t| t.on).map(|t| t.sides)
    }

    /// A movement's own results and log.
    pub(super) fn own_now(&self, ix: MovementIx) -> Option<Now> {
        *self.own[ix.at()].get_or_init(|| self.find_own_now(ix))
    }

    fn find_own_now(&self, ix: MovementIx) -> Option<Now> {
        let facts = self.roster.of(ix);
        let foot = self.long_off(facts.pattern());
        let from = self.counts_from(ix);
        let mut since = from;
        let counts = |t: &&Tested| t.movement == ix && t.on > from && t.on <= self.today;
        let tests = self.person.tested.iter().filter(counts);
        let mut best: Option<Now> = None;
        if let Some(day) = tests.clone().map(|t| t.on).max() {
            since = day;
            for one in tests
                .filter(|t| t.on == day)
                .map(|t| self.of_test(facts, t))
            {
                if best.is_none_or(|best| better(facts, &one, &best)) {
                    best = Some(one);
                }
            }
        }
        if facts.counted {
            let log: Vec<&Logged<'_>> = self.logged(ix).filter(|t| t.of.on > since).collect();
            best = with_log(facts, best, &log);
        }
        if best.is_none() && self.owns(ix) && foot.is_none() {
            let standard = &facts.of.standard();
            let mass = self.mass(standard.added()).unwrap_or_default();
            best = Some(Now::plain(standard.amount(), mass));
        }
        best.map(|now| match facts.counted {
            true => Now {
                amount: now.whole() * ONE,
                mass: if facts.loaded() {
                    now.mass
                } else {
                    now.mass.min(Mass::NONE)
                },
                ..now
            },
            false => now,
        })
    }

    /// A test's result as one set: what was left counts as done; sets recorded together hide some.
    pub fn of_test(&self, facts: &Facts<'_>, tested: &Tested) -> Now {
        let weight = tested.body_weight.or(self.person.body_weight);
        let amount = |got: &Got| {
            let more = match facts.is_reps() {
                true if got.parts().sets() >= K.several => tested.in_reserve + K.sets_hide,
                true => tested.in_reserve,
                false => 0,
            };
            got.parts().amount() + Micro::from(more) * ONE
        };
        let amounts = tested.sides.all().map(amount);
        let all = match facts.of.standard().at_most() {
            true => amounts.max(),
            false => amounts.min(),
        };
        let masses = tested
            .sides
            .all()
            .map(|got| in_mass(got.parts().added(), weight).unwrap_or_default());
        let tries = tested
            .sides
            .all()
            .map(|got| got.parts().tries().unwrap_or(ONE_OF_ONE));
        let sides = match &tested.sides {
            Sides::Each { left, right } => Some((amount(left), amount(right))),
            Sides::Both(_) => None,
        };
        Now {
            amount: all.unwrap_or(0),
            mass: masses.min().unwrap_or_default(),
            sides,
            tries: tries
                .reduce(|a, b| if b.hits * a.of < a.hits * b.of { b } else { a })
                .unwrap_or(ONE_OF_ONE),
        }
    }

    /// How much of a target is reached, in thousandths, rounded down: the least of amount, tries and load.
    pub fn share(&self, now: Option<&Now>, target: &Target) -> Share {
        let Some(now) = now else {
            return 0;
        };
        if target.at_most() {
            return ratio(target.amount(), now.amount);
        }
        let tries = target.tries().map_or(WHOLE, |asked| {
            let (hits, of) = (i64::from(now.tries.hits), i64::from(now.tries.of));
            ratio(hits * i64::from(asked.of), of * i64::from(asked.hits))
        });
        let load = match self.mass(target.added()) {
            Some(asked) => load_share(now.mass, asked),
            None => 0,
        };
        ratio(now.amount, target.amount()).min(tries).min(load)
    }

    /// What is known, as a result would be written.
    pub fn got(&self, ix: MovementIx) -> Option<Got> {
        let now = self.now(ix)?;
        let facts = self.roster.of(ix);
        let seconds = if facts.is_reps() { facts.seconds } else { 0 };
        let added = (now.mass != Mass::NONE).then_some(Added::Mass(now.mass));
        Some(Got::of(facts.measure(), 1, now.amount, seconds, added))
    }
}

/// By load, then by amount.
fn better(facts: &Facts<'_>, a: &Now, b: &Now) -> bool {
    let amount = match facts.of.standard().at_most() {
        true => b.amount.cmp(&a.amount),
        false => a.amount.cmp(&b.amount),
    };
    a.mass.cmp(&b.mass).then(amount) == Ordering::Greater
}

/// What the log since a test makes of it. Sets at its load or more raise it, with what was left; the two latest failing well
/// below it say what training shows. Failing never raises anything. Common practice, no source.
fn with_log(facts: &Facts<'_>, tested: Option<Now>, log: &[&Logged<'_>]) -> Option<Now> {
    let Some(newest) = log.last() else {
        return tested;
    };
    let said = |t: &Logged<'_>| {
        let left = t.of.in_reserve.unwrap_or(0).min(K.reserve);
        t.best()
            + if facts.is_reps() {
                Micro::from(left) * ONE
            } else {
                0
            }
    };
    let mut best = tested.unwrap_or_else(|| Now::plain(said(newest), newest.mass));
    let counting: Vec<&&Logged<'_>> = log.iter().filter(|t| t.mass >= best.mass).collect();
    let most = counting.iter().map(|t| said(t)).max();
    best.amount = most.map_or(best.amount, |most| most.max(best.amount));
    if let [.., a, b] = counting.as_slice() {
        let limit = K.missed * best.amount as f64 - 1e-3;
        let low = |t: &Logged<'_>| t.missed() && (t.best() as f64) < limit;
        if low(a) && low(b) {
            best.amount = a.best().max(b.best());
        }
    }
    Some(best)
}

/// Less help than asked counts as target over got; help where none is allowed gives nothing.
fn load_share(done: Mass, asked: Mass) -> Share {
    let (done, asked) = (done.units(), asked.units());
    if asked <= 0 && done >= 0 {
        return WHOLE;
    }
    if done.signum() != asked.signum() {
        return 0;
    }
    match asked > 0 {
        true => ratio(done, asked),
        false => ratio(-asked, -done),
    }
}

/// `part / of` in thousandths, rounded down, at most the whole; the whole where `of` is 0.
fn ratio(part: i64, of: i64) -> Share {
    if of <= 0 || part >= of {
        return WHOLE;
    }
    (i128::from(part.max(0)) * i128::from(WHOLE) / i128::from(of)) as Share
}
