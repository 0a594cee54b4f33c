//! Loads: what goes on the belt, never above what was lifted for as many reps and a little.

use super::constants::K;
use super::facts::Facts;
use super::trainee::{Mass, Trainee, down, in_mass, kilograms};
use crate::curriculum::MovementIx;
use crate::curriculum::target::{KILOGRAM, ONE};
use crate::curriculum::words::Pattern;
use crate::strength::one_rep_max::{self, per_cent_of_max, range};

const MOST_REPS: i64 = one_rep_max::MOST_REPS as i64;

impl Trainee<'_> {
    /// Reps of a set with added weight: the dose's; under 18 six or more.
    pub(super) fn reps_loaded(&self, facts: &Facts<'_>) -> i64 {
        let least = if self.is_minor() { K.minor_reps } else { 1 };
        facts.each.max(i64::from(least))
    }

    /// Down to whole plates.
    pub(super) fn in_plates(&self, mass: f64) -> Mass {
        let plate = self.roster.plate();
        down(mass / plate as f64) * plate
    }

    /// Kilograms added, by what is on record; 0 where it is less than the smallest plate.
    ///
    /// Nothing on record: the smaller of the dose's and a twentieth of body weight, at least a plate. Full reps: the load chart's
    /// share for three reps more than are done, of the lowest one-rep estimate, less the body's share. Else the dose's, at most
    /// 0.8 of the record (exits: the record).
    pub(super) fn load(&self, ix: MovementIx) -> Mass {
        let facts = self.roster.of(ix);
        let plate = self.roster.plate();
        let dose = self.mass(facts.dose.added()).filter(|mass| *mass > 0);
        let now = self.now(ix).filter(|now| now.mass > 0);
        let Some(now) = now else {
            let of_body = self.person.body_weight.map(|w| w as f64 * K.of_body);
            let tries = [dose.map(|mass| mass as f64), of_body];
            let least = tries.into_iter().flatten().reduce(f64::min);
            return least.map_or(plate, |mass| self.in_plates(mass).max(plate));
        };
        let moved = self.person.body_weight.zip(facts.share);
        let Some((weight, share)) = moved.filter(|_| facts.by_weight()) else {
            let share = match facts.pattern() {
                Pattern::Exit => 1.0,
                _ => K.of_record,
            };
            let record = now.mass as f64 * share;
            let most = dose.map_or(record, |dose| record.min(dose as f64));
            return self.in_plates(most).max(plate);
        };
        let reps = now.whole().min(MOST_REPS);
        let carried = kilograms(weight) * share;
        let moved = carried + kilograms(now.mass);
        let (Ok((lowest, _)), Some(share)) = (
            range(moved, u32::try_from(reps).unwrap_or(0)),
            per_cent_of_max(
                (self.reps_loaded(facts) + i64::from(K.load_reps)).min(MOST_REPS) as u32,
            ),
        ) else {
            return 0;
        };
        let mass = (lowest * share / 100.0 - carried) * KILOGRAM as f64;
        let most = self.bound(ix).map_or(mass, |bound| mass.min(bound));
        self.in_plates(most).max(0)
    }

    /// The most that is put on: of the heaviest lifted for as many reps a tenth more, or a plate more if that is more.
    pub(super) fn bound(&self, ix: MovementIx) -> Option<f64> {
        let reps = self.reps_loaded(self.roster.of(ix)) * ONE;
        let tested = self.person.tested.iter().filter(|t| t.movement == ix);
        let tested = tested.flat_map(|t| {
            let weight = t.body_weight.or(self.person.body_weight);
            t.sides.all().map(move |got| {
                let mass = in_mass(got.parts().added(), weight).unwrap_or(0);
                (got.parts().amount(), mass)
            })
        });
        let logged = self.logged(ix).map(|t| (t.best(), t.mass));
        let enough = |(amount, _): &(i64, Mass)| *amount >= reps;
        let heaviest = tested.chain(logged).filter(enough).map(|l| l.1).max()?;
        Some((heaviest as f64 * K.bound).max((heaviest + self.roster.plate()) as f64))
    }
}
