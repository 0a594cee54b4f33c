//! Numbers that are more likely a slip than a result: the same that a page asks about before it keeps one.

use super::Look;
use crate::curriculum::target::{Got, Measure, Micro, ONE};
use crate::curriculum::{Day, MovementIx};
use crate::results::LIMITS;
use crate::training::Roster;
use std::collections::BTreeMap;

/// Whether an amount is: parts of a rep, an angle beyond the widest, or far above all that is asked of the movement.
///
/// # Complexity
/// Linear in all needs where the amount is far above the movement's own standard, else constant.
pub fn doubtful(roster: &Roster<'_>, ix: MovementIx, amount: Micro) -> bool {
    let standard = roster.of(ix).of.standard();
    let far = |asked: Micro| amount > i64::from(LIMITS.far) * asked;
    match standard.measure() {
        Measure::Reps if amount % ONE != 0 => true,
        Measure::Angle => amount > LIMITS.widest,
        Measure::Done => false,
        _ => far(standard.amount()) && far(most(roster, ix)),
    }
}

/// The most that is asked of a movement, by itself, by what needs it, by a skill.
fn most(roster: &Roster<'_>, ix: MovementIx) -> Micro {
    let mut most = roster.of(ix).of.standard().amount();
    for up in &roster.standing {
        roster.of(*up).of.needs().visit(&mut |leaf| {
            if leaf.movement == ix {
                most = most.max(leaf.target.amount());
            }
        });
    }
    let skills = roster.curriculum.skills().map(|(_, s)| &s.goal);
    let goals = skills.filter(|g| g.movement == ix);
    goals.map(|g| g.target.amount()).fold(most, Micro::max)
}

impl Look<'_, '_> {
    /// The largest number of each movement that is, of what still counts: from its newest test on.
    pub(super) fn doubts(&self) -> Vec<(MovementIx, Got)> {
        let t = self.trainee;
        let lasts = self.curriculum().school().results_last.count();
        let counts = |on: Day| on <= t.today && t.today.days_after(on) <= lasts;
        let mut newest: BTreeMap<MovementIx, Day> = BTreeMap::new();
        let tests = t.person.tested.iter().filter(|one| counts(one.on));
        for one in tests.clone() {
            let day = newest.entry(one.movement).or_insert(one.on);
            *day = one.on.max(*day);
        }
        let tests = tests.flat_map(|one| {
            let amounts = one.sides.all().map(|got| got.parts().amount());
            amounts.map(|amount| (one.movement, one.on, amount))
        });
        let log = t.person.trained.iter().filter(|one| counts(one.on));
        let log = log.flat_map(|one| one.did.iter().map(|n| (one.movement, one.on, *n)));
        let mut largest: BTreeMap<MovementIx, Micro> = BTreeMap::new();
        for (ix, on, amount) in tests.chain(log) {
            let stands = newest.get(&ix).is_none_or(|day| on >= *day);
            if stands && t.roster.find(ix).is_some() && doubtful(t.roster, ix, amount) {
                let kept = largest.entry(ix).or_insert(amount);
                *kept = amount.max(*kept);
            }
        }
        let got = |(ix, amount): (MovementIx, Micro)| {
            let measure = self.curriculum().movement(ix).standard().measure();
            (ix, Got::of(measure, 1, amount, 0, None))
        };
        largest.into_iter().map(got).collect()
    }
}
