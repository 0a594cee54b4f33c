//! The old way of choosing, to compare with: of each pattern, straight arms apart, the hardest movement that may be trained and fits its
//! dose, whatever stands between the person and the goal; no balance, no exits, no range.

use super::lives::Work;
use rungbook::curriculum::target::{Measure, ONE};
use rungbook::curriculum::words::{Arms, Phase};
use rungbook::curriculum::{Mass, MovementIx};
use rungbook::training::{ORDER, Trainee};
use std::cmp::Reverse;

/// How a best set fits a dose.
#[derive(Clone, Copy, PartialEq)]
enum Fit {
    Untested,
    Above,
    Keep,
    Short,
    Below,
}

/// What is asked on a day, as many lines as the minutes hold.
pub fn works(t: &Trainee<'_>) -> Vec<Work> {
    let mut left = i64::from(t.minutes) * 60;
    let mut out = Vec::new();
    for pattern in ORDER {
        for straight in [false, true] {
            let of = t.roster.standing.iter().copied().filter(|ix| {
                let m = t.roster.of(*ix);
                m.pattern() == pattern
                    && m.counted
                    && (m.of.arms() == Some(Arms::Straight)) == straight
                    && t.may(*ix)
                    && t.now(*ix).is_none_or(|now| now.whole() > 0)
            });
            let mut group: Vec<MovementIx> = of.collect();
            group.sort_by_key(|ix| (Reverse(t.roster.of(*ix).stage), *ix));
            let Some(ix) = choose(t, &group) else {
                continue;
            };
            let work = prescribe(t, ix);
            let each = if t.roster.of(ix).is_hold() { 1 } else { 4 };
            let seconds = work.sets * (work.amount * each + 120);
            if seconds <= left {
                left -= seconds;
                out.push(work);
            }
        }
    }
    out
}

fn fit(t: &Trainee<'_>, ix: MovementIx) -> Fit {
    let (facts, Some(now)) = (t.roster.of(ix), t.now(ix)) else {
        return Fit::Untested;
    };
    let (best, dose) = (now.whole(), facts.each);
    match facts.is_hold() {
        true if best > 3 * dose => Fit::Above,
        true if best >= 5 => Fit::Keep,
        true => Fit::Short,
        false if best >= dose + 6 => Fit::Above,
        false if best >= dose + 2 => Fit::Keep,
        false if best >= dose => Fit::Short,
        false => Fit::Below,
    }
}

/// Of a group sorted from harder to easier.
fn choose(t: &Trainee<'_>, group: &[MovementIx]) -> Option<MovementIx> {
    let hardest = |is: Fit| group.iter().copied().find(|ix| fit(t, *ix) == is);
    let easiest = |is: Fit| group.iter().rev().copied().find(|ix| fit(t, *ix) == is);
    let kept = hardest(Fit::Keep).or_else(|| hardest(Fit::Short));
    let stage = |ix: MovementIx| t.roster.of(ix).stage;
    if let Some(above) = hardest(Fit::Above).filter(|a| kept.is_none_or(|k| stage(k) < stage(*a))) {
        let up = group.iter().rev().copied();
        let next = up
            .filter(|ix| stage(*ix) > stage(above))
            .find(|ix| matches!(fit(t, *ix), Fit::Untested | Fit::Below));
        return next.or(Some(above));
    }
    kept.or_else(|| easiest(Fit::Untested))
        .or_else(|| easiest(Fit::Below))
}

fn prescribe(t: &Trainee<'_>, ix: MovementIx) -> Work {
    let facts = t.roster.of(ix);
    let now = t.now(ix);
    let best = now.map_or(0, |now| now.whole());
    let sets = i64::from(facts.dose.sets()).clamp(2, 5);
    let careful = facts.guarded() || facts.of.phase() == Some(Phase::Lowering);
    let hold = facts.of.standard().measure() == Measure::Time;
    let (sets, amount) = match (fit(t, ix), hold) {
        (Fit::Untested, true) => (2, if careful { 3 } else { 5 }),
        (Fit::Untested, false) => (2, if careful { 2 } else { 3 }),
        (_, true) => {
            let amount = (best / 2).clamp(1, 45);
            (((60 + amount / 2) / amount).clamp(2, 5), amount)
        }
        (Fit::Keep, _) => (sets, facts.each),
        (Fit::Short, _) => (sets, (facts.each * 3 / 5).max(1)),
        (Fit::Above, _) => (sets, (best - 4).min(20)),
        (Fit::Below, _) => (sets, (best - 1).max(1)),
    };
    let dose = || t.mass(facts.dose.added().or(facts.of.standard().added()));
    let mass = match now {
        Some(now) => Some(now.mass),
        None => dose(),
    };
    Work {
        movement: ix,
        sets,
        amount: amount.max(1).min(facts.of.standard().amount() / ONE * 3),
        with_kg: mass.filter(|mass| *mass != Mass::NONE).map(Mass::kilograms),
        tests: now.is_none(),
        range: false,
    }
}
