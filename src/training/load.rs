//! Loads: what goes on the belt, never above what was lifted for as many reps and a little.

use super::constants::K;
use super::facts::Facts;
use super::reason::Reason;
use super::trainee::{Logged, Trainee, down, in_mass};
use crate::curriculum::target::{Added, Got, KILOGRAM, Measure, ONE};
use crate::curriculum::words::Pattern;
use crate::curriculum::{Mass, MovementIx};
use crate::results::Tested;
use crate::strength::one_rep_max::{self, per_cent_of_max, range};

const MOST_REPS: i64 = one_rep_max::MOST_REPS as i64;

/// A set: what is added, and whole reps, those left counted.
#[derive(Clone, Copy, Debug)]
pub(super) struct Shown {
    pub mass: Mass,
    pub reps: i64,
}

/// The lowest one-rep estimate of what moved for so many reps, more than the chart's read as its most.
fn lowest(moved: f64, reps: i64) -> Option<f64> {
    let reps = u32::try_from(reps.min(MOST_REPS)).ok()?;
    range(moved, reps).ok().map(|(lowest, _)| lowest)
}

impl Trainee<'_> {
    /// Reps of a set with added weight: the dose's; under 18 six or more.
    pub(super) fn reps_loaded(&self, facts: &Facts<'_>) -> i64 {
        let least = if self.is_minor() { K.minor_reps } else { 1 };
        facts.each.max(i64::from(least))
    }

    /// Hundred-millionths of a kilogram, down to whole plates.
    pub(super) fn in_plates(&self, units: f64) -> Mass {
        let plate = self.roster.plate();
        plate * down(units / plate.units() as f64)
    }

    /// Kilograms added, by what is on record; 0 where it is less than the smallest plate.
    ///
    /// Nothing on record: see [`Trainee::tried_load`]. Full reps: [`Trainee::load_of`] the dose. Else 0.8 of the record; exits the
    /// dose's, at most the record.
    pub(super) fn load(&self, ix: MovementIx) -> Mass {
        let facts = self.roster.of(ix);
        let Some(now) = self.now(ix).filter(|now| now.mass.is_added()) else {
            return self.tried_load(ix);
        };
        if facts.by_weight() {
            let reps = self.reps_loaded(facts);
            return self.load_of(ix, reps).max(self.load_from_above(ix, reps));
        }
        let record = match (facts.pattern(), self.dosed_load(facts)) {
            (Pattern::Exit, Some(dose)) => now.mass.min(dose).part(1.0),
            (Pattern::Exit, None) => now.mass.part(1.0),
            _ => now.mass.part(K.of_record),
        };
        self.in_plates(record).max(self.roster.plate())
    }

    fn dosed_load(&self, facts: &Facts<'_>) -> Option<Mass> {
        self.mass(facts.dose.added()).filter(|mass| mass.is_added())
    }

    /// Of what has none on record: a twentieth of body weight, or 0.8 of what was lifted for three reps of what it needs if that is
    /// more; never more than the dose's, nor with one side at a time than half of the standard's or a tenth of body weight; at least a
    /// plate. Common practice, no source.
    ///
    /// # Source
    /// That one hand is another matter: 30 kg in one hand pressed the lower back with 2800 N, split between both with 1570 N (McGill,
    /// Marshall & Andersen 2013, Ergonomics 56(2):293-302).
    fn tried_load(&self, ix: MovementIx) -> Mass {
        let (facts, plate) = (self.roster.of(ix), self.roster.plate());
        let leaves = facts.of.needs().leaves();
        let needed = leaves.iter().map(|leaf| leaf.movement);
        let lifted = needed.filter(|low| self.roster.find(*low).is_some_and(Facts::by_weight));
        let lifted = lifted.flat_map(|low| self.shown(low));
        let lifted = lifted.filter(|set| set.reps >= K.try_reps.into());
        let lifted = lifted.map(|set| set.mass.part(K.of_record));
        let of_body = self.person.body_weight.map(|w| w.mass().part(K.of_body));
        let most = lifted.chain(of_body).reduce(f64::max);
        let dose = self.dosed_load(facts).map(|mass| mass.part(1.0));
        let bounds = dose.into_iter().chain(self.first_bounds(facts));
        let least = most.into_iter().chain(bounds).reduce(f64::min);
        least.map_or(plate, |units| self.in_plates(units).max(plate))
    }

    /// What a first load with one side at a time is bound by.
    fn first_bounds(&self, facts: &Facts<'_>) -> impl Iterator<Item = f64> + use<> {
        let standard = self.mass(facts.of.standard().added());
        let standard = standard.filter(|mass| mass.is_added());
        let standard = standard.map(|mass| mass.part(K.of_standard));
        let weight = self.person.body_weight;
        let of_side = weight.map_or(0.0, |weight| weight.mass().part(K.of_body_side));
        let sided = facts.of.each_side();
        standard.into_iter().chain([of_side]).filter(move |_| sided)
    }

    /// What sets since the newest test say, added weight on them, reps with those left; after a session that fell short only what
    /// is known now.
    pub(super) fn shown(&self, ix: MovementIx) -> Vec<Shown> {
        let facts = self.roster.of(ix);
        let now = self.now(ix).map(|now| Shown {
            mass: now.mass,
            reps: now.whole(),
        });
        let from = self.counts_from(ix);
        let counts = |t: &&Tested| t.movement == ix && t.on > from && t.on <= self.today;
        let tests = self.person.tested.iter().filter(counts);
        let newest = tests.clone().map(|t| t.on).max();
        let since = newest.unwrap_or(from);
        let log: Vec<&Logged<'_>> = self.logged(ix).filter(|t| t.of.on > since).collect();
        let fell_short = log.last().is_some_and(|t| t.missed());
        let tests = tests.filter(|t| Some(t.on) == newest).map(|t| {
            let one = self.of_test(facts, t);
            Shown {
                mass: one.mass,
                reps: one.whole(),
            }
        });
        let log = log.into_iter().map(|t| Shown {
            mass: t.mass,
            reps: t.with_reserve() / ONE,
        });
        let own = tests.chain(log).filter(|_| !fell_short);
        now.into_iter()
            .chain(own)
            .filter(|s| s.mass.is_added())
            .collect()
    }

    /// What of the body moves with it, in kilograms; `None` where that is not known.
    fn carried(&self, ix: MovementIx) -> Option<f64> {
        let (weight, share) = self.person.body_weight.zip(self.roster.of(ix).share)?;
        Some(weight.mass().kilograms() * share)
    }

    /// The lowest one-rep estimate of the set that says most, in kilograms moved: of sets of two reps or more; where there is none,
    /// of a single.
    fn one_rep(&self, carried: f64, sets: &[Shown]) -> Option<f64> {
        let estimate = |set: &Shown| lowest(carried + set.mass.kilograms(), set.reps);
        let several = sets.iter().filter(|set| set.reps >= 2);
        let most = several.filter_map(estimate).reduce(f64::max);
        most.or_else(|| sets.iter().filter_map(estimate).reduce(f64::max))
    }

    /// Kilograms for sets of so many full reps, of what has weight on record: the load chart's share for three reps more of the
    /// lowest one-rep estimate, less the body's share, but never less than what was lifted for three reps more, or is logged of
    /// these two weeks for as many with two left. Where it is not known what of the body moves: 0.8 of what was lifted for as many.
    pub(super) fn load_of(&self, ix: MovementIx, reps: i64) -> Mass {
        let sets = self.shown(ix);
        let heaviest = |least: i64| {
            let enough = sets.iter().filter(move |set| set.reps >= least);
            enough.map(|set| set.mass).max().unwrap_or_default()
        };
        let carried = self.carried(ix);
        let worked =
            match carried.and_then(|carried| Some((carried, self.one_rep(carried, &sets)?))) {
                Some((carried, most)) => {
                    let at = (reps + i64::from(K.load_reps)).min(MOST_REPS);
                    let share = per_cent_of_max(at as u32).unwrap_or(0.0);
                    (most * share / 100.0 - carried) * KILOGRAM as f64
                }
                None if carried.is_some() => 0.0,
                None => {
                    let facts = self.roster.of(ix);
                    let record = heaviest(0).part(K.of_record);
                    let dose = self
                        .dosed_load(facts)
                        .map_or(record, |dose| record.min(dose.part(1.0)));
                    dose.max(heaviest(reps).part(K.of_record))
                        .max(self.roster.plate().part(1.0))
                }
            };
        let most = self.bound(ix, reps).unwrap_or(f64::INFINITY);
        let held = heaviest(reps + i64::from(K.load_reps)).max(self.held_lately(ix, reps));
        self.in_plates(worked.min(most))
            .max(if held.part(1.0) <= most {
                held
            } else {
                Mass::NONE
            })
            .max(Mass::NONE)
    }

    /// What was lifted of the harder step of the family that is not open yet.
    fn shown_above(&self, ix: MovementIx) -> Vec<Shown> {
        let ups = self.roster.of(ix).harder.iter().copied();
        let lifted = ups.filter(|up| self.was_lifted(*up) && self.lighter_step(*up) == Some(ix));
        lifted.flat_map(|up| self.shown(up)).collect()
    }

    /// Kilograms for sets of so many by what was lifted of the harder step, a single too: the load chart's share for three reps more.
    fn load_from_above(&self, ix: MovementIx, reps: i64) -> Mass {
        let sets = self.shown_above(ix);
        let Some((carried, most)) = self
            .carried(ix)
            .and_then(|carried| Some((carried, self.one_rep(carried, &sets)?)))
        else {
            return Mass::NONE;
        };
        let at = (reps + i64::from(K.load_reps)).min(MOST_REPS);
        let share = per_cent_of_max(at as u32).unwrap_or(0.0);
        let worked = (most * share / 100.0 - carried) * KILOGRAM as f64;
        let heaviest = sets.iter().map(|set| set.mass).max().unwrap_or_default();
        self.in_plates(worked).min(heaviest).max(Mass::NONE)
    }

    /// The set that was done with it, else how it was worked out.
    pub(super) fn why_load(&self, ix: MovementIx, mass: Mass) -> Reason {
        let sets = self.shown(ix);
        let with_it = sets.iter().filter(|set| set.mass == mass);
        match (with_it.map(|set| set.reps).max(), self.carried(ix)) {
            (Some(reps), _) => {
                let seconds = self.roster.of(ix).seconds;
                let added = Some(Added::Mass(mass));
                Reason::Best(Got::of(Measure::Reps, 1, reps * ONE, seconds, added))
            }
            (None, None) => Reason::OfRecord,
            (None, Some(_)) => Reason::Load,
        }
    }

    /// The heaviest of these two weeks' log since the newest test for as many reps with two left; none after falling short.
    fn held_lately(&self, ix: MovementIx, reps: i64) -> Mass {
        let tests = self.person.tested.iter().filter(|t| t.movement == ix);
        let tested = tests.map(|t| t.on).filter(|on| *on <= self.today).max();
        let counts = |t: &&Logged<'_>| {
            self.today.days_after(t.of.on) < K.off[0] && tested.is_none_or(|day| t.of.on > day)
        };
        let log: Vec<&Logged<'_>> = self.logged(ix).filter(counts).collect();
        if log.last().is_some_and(|t| t.missed()) {
            return Mass::NONE;
        }
        let good = |t: &&&Logged<'_>| {
            t.full() && t.first() >= reps * ONE && t.of.in_reserve.unwrap_or(0) >= K.left
        };
        log.iter()
            .filter(good)
            .map(|t| t.mass)
            .max()
            .unwrap_or_default()
    }

    /// Reps that the records say are possible with so much added: of a set at least as heavy its own; by the chart; of a lighter
    /// set by the lowest formula. `None` where nothing says it.
    pub(super) fn possible(&self, ix: MovementIx, mass: Mass, sets: &[Shown]) -> Option<i64> {
        let heavier = sets
            .iter()
            .filter(|set| set.mass >= mass)
            .map(|set| set.reps);
        let by_set = heavier.max();
        let Some(carried) = self.carried(ix) else {
            return by_set;
        };
        let moved = carried + mass.kilograms();
        let within = |share: &dyn Fn(i64) -> Option<f64>, most: f64| {
            let fits = |n: &i64| share(*n).is_some_and(|moved| moved <= most + 1e-6);
            (1..=MOST_REPS).filter(fits).max()
        };
        let chart = self.one_rep(carried, sets).and_then(|most| {
            let max = |n: i64| Some(moved * 100.0 / per_cent_of_max(n as u32)?);
            within(&max, most)
        });
        let lighter = sets.iter().filter(|set| set.mass < mass).filter_map(|set| {
            let most = lowest(carried + set.mass.kilograms(), set.reps)?;
            within(&|n| lowest(moved, n), most)
        });
        by_set.into_iter().chain(chart).chain(lighter).max()
    }

    /// What a set of so many leaves by the records, at most four; nothing is said where that is nothing, or not known.
    pub(super) fn leaves(
        &self,
        ix: MovementIx,
        mass: Mass,
        reps: i64,
        more: Option<Shown>,
    ) -> Option<i64> {
        let mut sets = self.shown(ix);
        sets.extend(more);
        let above = self.shown_above(ix);
        let own = self.possible(ix, mass, &sets);
        let possible = own.max(self.possible(ix, mass, &above))?;
        let left = possible - reps;
        (left > 0).then_some(left.min(K.reserve.into()))
    }

    /// The most that is put on, in hundred-millionths of a kilogram: of the heaviest lifted for as many reps a tenth more, or a plate more if that is more;
    /// or what the harder step of the family says.
    pub(super) fn bound(&self, ix: MovementIx, reps: i64) -> Option<f64> {
        let (count, reps) = (reps, reps * ONE);
        let tested = self.person.tested.iter().filter(|t| t.movement == ix);
        let tested = tested.flat_map(|t| {
            let weight = t.body_weight.or(self.person.body_weight);
            t.sides.all().map(move |got| {
                let mass = in_mass(got.parts().added(), weight).unwrap_or_default();
                (got.parts().amount(), mass)
            })
        });
        let logged = self.logged(ix).map(|t| (t.best(), t.mass));
        let enough = |(amount, _): &(i64, Mass)| *amount >= reps;
        let heaviest = tested.chain(logged).filter(enough).map(|l| l.1).max()?;
        Some(
            self.raised(heaviest)
                .max(self.load_from_above(ix, count).part(1.0)),
        )
    }

    /// The most that a plan's steps come to: what the harder step of the family says may be raised too.
    pub(super) fn bound_of_steps(&self, ix: MovementIx, reps: i64) -> Option<f64> {
        let bound = self.bound(ix, reps)?;
        let above = Some(self.load_from_above(ix, reps)).filter(|mass| mass.is_added());
        Some(above.map_or(bound, |above| bound.max(self.raised(above))))
    }

    /// A tenth more, or a plate if that is more.
    fn raised(&self, mass: Mass) -> f64 {
        let a_plate_more = mass + self.roster.plate();
        mass.part(K.bound).max(a_plate_more.part(1.0))
    }
}
