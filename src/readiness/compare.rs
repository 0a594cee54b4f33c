//! A result against a target: whether it meets it, misses it or says nothing, and how much is short.
//!
//! Works part by part: sets, amount, seconds of each rep, load, tries. Of two sides the worse counts in every part.

use crate::curriculum::target::{Added, Got, Measure, Tries};
use crate::curriculum::{BodyWeight, Target};
use crate::results::{LIMITS, Sides};
use std::cmp::Ordering;

/// Thousandths, rounded down; 1000 is all of it.
pub type Share = u16;
/// All of it.
pub const WHOLE: Share = 1000;

/// What a result says of a target.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    Meets,
    Misses,
    /// It says nothing about this target.
    Silent,
    /// It would meet it, if its load compared: the body weight is not known.
    Unsure,
}

/// The verdict of a result.
pub fn verdict(
    sides: &Sides,
    in_reserve: u32,
    target: &Target,
    body_weight: Option<BodyWeight>,
) -> Verdict {
    let amounts_ok = sides.all().all(|got| amount_meets(got, target));
    if target.at_most() {
        return match amounts_ok {
            true => Verdict::Meets,
            false => Verdict::Misses,
        };
    }
    let loads: Vec<Option<Ordering>> = sides
        .all()
        .map(|got| compare_loads(got.parts().added(), target.added(), body_weight))
        .collect();
    let parts = sides.all().map(|got| Parts::of(got.parts(), target));
    let others_ok = amounts_ok && parts.clone().all(|p| p.meets());
    if others_ok && loads.iter().all(|l| l.is_none_or(Ordering::is_ge)) {
        return match loads.iter().all(Option::is_some) {
            true => Verdict::Meets,
            false => Verdict::Unsure,
        };
    }
    // The target asks at least the worse side in every part.
    let load_asked = loads.iter().any(|l| l.is_some_and(Ordering::is_le));
    let amount_asked = sides
        .all()
        .any(|got| target.amount() >= got.parts().amount());
    let asked = |part: fn(&Parts) -> Ordering| parts.clone().any(|p| part(&p).is_le());
    let asks_all = amount_asked
        && load_asked
        && asked(|p| p.sets)
        && asked(|p| p.seconds)
        && asked(|p| p.hits)
        && asked(|p| p.rate);
    match asks_all && in_reserve == 0 {
        true => Verdict::Misses,
        false => Verdict::Silent,
    }
}

fn amount_meets(got: &Got, target: &Target) -> bool {
    match target.at_most() {
        true => got.parts().amount() <= target.amount(),
        false => got.parts().amount() >= target.amount(),
    }
}

/// How one side compares with a target, amount and load left out.
struct Parts {
    sets: Ordering,
    seconds: Ordering,
    hits: Ordering,
    /// Hits per try.
    rate: Ordering,
}

impl Parts {
    fn of(got: &Target, target: &Target) -> Parts {
        let (hits, rate) = match target.tries() {
            None => (Ordering::Equal, Ordering::Equal),
            Some(asked) => {
                let done = tries_of(got);
                let rate = (u64::from(done.hits) * u64::from(asked.of))
                    .cmp(&(u64::from(asked.hits) * u64::from(done.of)));
                (done.hits.cmp(&asked.hits), rate)
            }
        };
        Parts {
            sets: got.sets().cmp(&target.sets()),
            seconds: got.seconds().cmp(&target.seconds()),
            hits,
            rate,
        }
    }

    fn meets(&self) -> bool {
        [self.sets, self.seconds, self.hits, self.rate]
            .iter()
            .all(|o| o.is_ge())
    }
}

/// A result without tries is one hit in one try.
fn tries_of(got: &Target) -> Tries {
    got.tries().unwrap_or(Tries { hits: 1, of: 1 })
}

/// How two loads compare; `None` where only the body weight could tell. No load is 0, help is below it.
fn compare_loads(
    ours: Option<Added>,
    theirs: Option<Added>,
    body_weight: Option<BodyWeight>,
) -> Option<Ordering> {
    let (ours, theirs) = (ours.unwrap_or(Added::NONE), theirs.unwrap_or(Added::NONE));
    let (a, b) = (ours.signed(), theirs.signed());
    let one_unit = std::mem::discriminant(&ours) == std::mem::discriminant(&theirs);
    if one_unit || a.signum() != b.signum() || a == 0 {
        return Some(a.cmp(&b));
    }
    let (a, b) = (ours.on_body(body_weight)?, theirs.on_body(body_weight)?);
    Some(match (a - b).abs() <= LIMITS.same_mass {
        true => Ordering::Equal,
        false => a.cmp(&b),
    })
}

/// The share of a target that a result reaches: the least of its parts' ratios.
pub fn share(sides: &Sides, target: &Target, body_weight: Option<BodyWeight>) -> Share {
    let amount = |got: &Got| amount_share(got, target);
    let least = sides
        .all()
        .map(|got| amount(got).min(other_share(got, target, body_weight)));
    least.min().unwrap_or(0)
}

fn amount_share(got: &Got, target: &Target) -> Share {
    let (done, asked) = (got.parts().amount(), target.amount());
    match target.at_most() {
        // Where the target is 0 its ratio counts as whole.
        true if asked == 0 => WHOLE,
        true => ratio(asked, done),
        false => ratio(done, asked),
    }
}

/// The least ratio of all parts but the amount.
fn other_share(got: &Got, target: &Target, body_weight: Option<BodyWeight>) -> Share {
    if target.at_most() {
        return WHOLE;
    }
    let done = got.parts();
    let tries = target.tries().map_or(WHOLE, |asked| {
        let tries = tries_of(done);
        let (hits, of) = (i64::from(tries.hits), i64::from(tries.of));
        ratio(hits, asked.hits.into()).min(ratio(
            hits * i64::from(asked.of),
            of * i64::from(asked.hits),
        ))
    });
    ratio(done.sets().into(), target.sets().into())
        .min(ratio(done.seconds(), target.seconds()))
        .min(load_share(done.added(), target.added(), body_weight))
        .min(tries)
}

/// Less help than asked counts as target over got; help where none is allowed gives nothing.
fn load_share(done: Option<Added>, asked: Option<Added>, body_weight: Option<BodyWeight>) -> Share {
    let (done, asked) = (done.unwrap_or(Added::NONE), asked.unwrap_or(Added::NONE));
    if asked.signed() <= 0 && done.signed() >= 0 {
        return WHOLE;
    }
    if done.signed().signum() != asked.signed().signum() {
        return 0;
    }
    let one_unit = std::mem::discriminant(&done) == std::mem::discriminant(&asked);
    let both = match one_unit {
        true => Some((done.signed(), asked.signed())),
        false => {
            let units = |load: Added| Some(load.on_body(body_weight)?.units());
            units(done).zip(units(asked))
        }
    };
    match both {
        Some((done, asked)) if asked > 0 => ratio(done, asked),
        Some((done, asked)) => ratio(-asked, -done),
        None => 0,
    }
}

/// `part / of` in thousandths, rounded down, at most the whole; the whole where `of` is 0.
fn ratio(part: i64, of: i64) -> Share {
    if of <= 0 || part >= of {
        return WHOLE;
    }
    (i128::from(part.max(0)) * 1000 / i128::from(of)) as Share
}

/// Whether a result that misses is within the limit of a near miss.
pub fn is_near(sides: &Sides, target: &Target, body_weight: Option<BodyWeight>) -> bool {
    let limit = match target.measure() {
        Measure::Length => LIMITS.near_length,
        Measure::Angle => LIMITS.near_angle,
        _ => return share(sides, target, body_weight) >= LIMITS.near,
    };
    sides.all().all(|got| {
        let short = match target.at_most() {
            true => got.parts().amount() - target.amount(),
            false => target.amount() - got.parts().amount(),
        };
        short <= limit && other_share(got, target, body_weight) >= LIMITS.near
    })
}

/// A result as text: of two sides the worse in every part, both where their loads or tries do not compare.
pub fn text(sides: &Sides, at_most: bool) -> String {
    match sides {
        Sides::Both(got) => got.to_string(),
        Sides::Each { left, right } => match left.worse_of(right, at_most) {
            Some(worse) => worse.to_string(),
            None => format!("left {left}, right {right}"),
        },
    }
}
