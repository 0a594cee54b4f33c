//! The best set: what a client can do in one set of a movement, with which load.

use crate::curriculum::target::{Added, Got, Measure, Micro, ONE};
use crate::curriculum::{BodyWeight, Curriculum, Day, MovementIx};
use crate::results::{Person, Tested, Trained};
use std::cmp::Ordering;

/// Sets recorded together leave so many reps in reserve from so many sets on. Common practice, no source.
pub const SEVERAL_SETS: u32 = 3;
pub const SETS_HIDE: u32 = 2;

/// A best set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Best {
    /// Whole reps, or whole seconds; reps in reserve count as done.
    pub amount: i64,
    /// `None` for no load or one of 0.
    pub added: Option<Added>,
    /// The body weight of that day, where the entry carries its own.
    pub body_weight: Option<BodyWeight>,
}

/// The best set of a movement, by its latest tests, else by its latest training; `None` when there is neither.
pub fn best(curriculum: &Curriculum, person: &Person, today: Day, ix: MovementIx) -> Option<Best> {
    let lasts = curriculum.school().results_last.count();
    let counts = |on: Day| (0..=lasts).contains(&today.days_after(on));
    let tested: Vec<&Tested> = person
        .tested
        .iter()
        .filter(|t| t.movement == ix && counts(t.on))
        .collect();
    let latest = tested.iter().map(|t| t.on).max();
    let mut out: Option<Best> = None;
    for one in tested
        .iter()
        .filter(|t| Some(t.on) == latest)
        .map(|t| of_test(t))
    {
        let better = |best: &Best| {
            compare(one.added, best.added)
                .then(one.amount.cmp(&best.amount))
                .is_gt()
        };
        if out.as_ref().is_none_or(better) {
            out = Some(one);
        }
    }
    out.or_else(|| {
        let trained: Vec<&Trained> = log(person, today)
            .filter(|t| t.movement == ix && counts(t.on))
            .collect();
        let latest = trained.iter().map(|t| t.on).max()?;
        let session = trained.into_iter().find(|t| t.on == latest)?;
        let reps = curriculum.movement(ix).standard().measure() == Measure::Reps;
        let most = session.did.iter().max().copied().unwrap_or(0) / ONE;
        let reserve = if reps {
            i64::from(session.in_reserve.unwrap_or(0))
        } else {
            0
        };
        Some(Best {
            amount: most + reserve,
            added: without_zero(session.added),
            body_weight: None,
        })
    })
}

/// The training that counts today: what is trained today has its say from tomorrow on, so that the card stays while it is done.
pub(super) fn log(person: &Person, today: Day) -> impl Iterator<Item = &Trained> + Clone {
    person.trained.iter().filter(move |t| t.on < today)
}

fn of_test(tested: &Tested) -> Best {
    let sides = || tested.sides.all().map(Got::parts);
    let amount: Micro = sides().map(|p| p.amount()).min().unwrap_or(0);
    let sets = sides().map(|p| p.sets()).min().unwrap_or(1);
    let added = sides()
        .map(|p| p.added())
        .reduce(|a, b| if compare(b, a).is_lt() { b } else { a })
        .flatten();
    let reps = sides().all(|p| p.measure() == Measure::Reps);
    let more = match reps {
        true if sets >= SEVERAL_SETS => (tested.in_reserve + SETS_HIDE).into(),
        true => tested.in_reserve.into(),
        false => 0,
    };
    Best {
        amount: amount / ONE + more,
        added: without_zero(added),
        body_weight: tested.body_weight,
    }
}

pub(super) fn without_zero(added: Option<Added>) -> Option<Added> {
    added.filter(|a| a.signed() != 0)
}

/// Help below none below added; of two of one unit by the number, else a share of body weight above a mass.
fn compare(a: Option<Added>, b: Option<Added>) -> Ordering {
    let key = |added: Option<Added>| match without_zero(added) {
        None => (0, 0, 0),
        Some(load) => {
            let of_body = matches!(load, Added::BodyWeight(_));
            (load.signed().signum(), u8::from(of_body), load.signed())
        }
    };
    key(a).cmp(&key(b))
}
