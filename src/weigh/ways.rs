//! Ways: how many weeks pass from the day a movement is open to the day it is owned.

use super::history::{Histories, History};
use super::survival::{Curve, Way};
use super::{PEOPLE, Verdict, WeighedWay};
use crate::curriculum::MovementIx;
use crate::curriculum::Weeks;

/// A week in days.
const WEEK: f64 = crate::curriculum::day::WEEK as f64;

pub fn of(all: &Histories<'_>, ix: MovementIx) -> WeighedWay {
    let movement = all.curriculum.movement(ix);
    let way = |h: &History<'_>| {
        let open = h.first_open(movement.needs())?;
        let owned = h.first_met(ix, &movement.standard());
        let end = owned.or(h.last)?;
        // Who owned it before, or by the day on which it opened, was not seen on the way.
        (end > open).then_some(Way {
            days: end.days_after(open),
            arrived: owned.is_some(),
        })
    };
    let ways: Vec<Way> = all.people.iter().filter_map(way).collect();
    let curve = Curve::of(&ways);
    let weeks = |days: Option<i32>| days.map(|d| f64::from(d) / WEEK);
    let (low, high) = curve.falls_within(0.5);
    let (median, low, high) = (weeks(curve.falls_to(0.5)), weeks(low), weeks(high));
    let verdict = judged(movement.weeks(), &curve, median, low, high);
    let speaks = curve.arrived >= PEOPLE && verdict != Verdict::Holds;
    WeighedWay {
        movement: ix,
        declared: movement.weeks(),
        suggest: speaks.then(|| suggested(&curve)).flatten(),
        curve,
        median,
        low,
        high,
        verdict,
    }
}

fn judged(
    declared: Option<Weeks>,
    curve: &Curve,
    median: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
) -> Verdict {
    if curve.people < PEOPLE || curve.arrived < PEOPLE {
        return Verdict::TooFew;
    }
    let Some(declared) = declared else {
        return Verdict::Unclear;
    };
    let (from, to) = (f64::from(declared.from()), f64::from(declared.to()));
    match (median, low, high) {
        (_, _, Some(high)) if high < from => Verdict::TooHigh,
        (_, Some(low), _) if low > to => Verdict::TooLow,
        (Some(median), _, _) if (from..=to).contains(&median) => Verdict::Holds,
        _ => Verdict::Unclear,
    }
}

/// The weeks in which the middle half of the people arrived.
fn suggested(curve: &Curve) -> Option<Weeks> {
    let (first, last) = (curve.falls_to(0.75)?, curve.falls_to(0.25)?);
    let from = ((f64::from(first) / WEEK).floor() as u32).max(1);
    let to = ((f64::from(last) / WEEK).ceil() as u32).max(from);
    Weeks::new(from, to)
}
