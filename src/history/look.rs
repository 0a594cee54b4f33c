//! Looking at a row of results alone: its slope, how long it stands still, whether it falls.

use super::H;
use crate::curriculum::Day;
use crate::curriculum::Mass;
use crate::curriculum::target::{Measure, Micro, ONE, Tries};

const WEEK: f64 = crate::curriculum::day::WEEK as f64;

/// The best of one day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    pub on: Day,
    /// Millionths; of two sides the worse, what was left in reserve counted.
    pub amount: Micro,
    /// Added weight, help below 0.
    pub mass: Mass,
    pub tries: Tries,
}

impl Point {
    /// At least as good in every part: what follows it is no new best.
    pub fn covers(&self, other: &Point, at_most: bool) -> bool {
        let amount = match at_most {
            true => self.amount <= other.amount,
            false => self.amount >= other.amount,
        };
        let rate = |a: &Tries, b: &Tries| u64::from(a.hits) * u64::from(b.of);
        amount
            && self.mass >= other.mass
            && rate(&self.tries, &other.tries) >= rate(&other.tries, &self.tries)
    }

    /// The better of one day: by load, then by amount.
    pub fn is_above(&self, other: &Point, at_most: bool) -> bool {
        let amount = match at_most {
            true => other.amount.cmp(&self.amount),
            false => self.amount.cmp(&other.amount),
        };
        self.mass.cmp(&other.mass).then(amount).is_gt()
    }

    /// Well below an earlier one: less of the amount at no more load, or less load at no larger amount.
    fn is_well_below(&self, best: &Point, at_most: bool) -> bool {
        let low =
            |now: i64, then: i64| i128::from(now) * 1000 < i128::from(then) * i128::from(H.falling);
        if at_most {
            return best.amount > 0 && low(best.amount, self.amount);
        }
        (self.mass <= best.mass && low(self.amount, best.amount))
            || (best.mass.is_added()
                && self.amount <= best.amount
                && low(self.mass.units(), best.mass.units()))
    }
}

/// What a trend is counted in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    Amount(Measure),
    /// Kilograms added, where the reps were always the same.
    Load,
}

impl Unit {
    /// As answers for programs say it.
    pub fn word(self) -> &'static str {
        match self {
            Unit::Load => "kg",
            Unit::Amount(Measure::Reps) => "reps",
            Unit::Amount(Measure::Time) => "s",
            Unit::Amount(Measure::Length) => "cm",
            Unit::Amount(Measure::Angle) => "deg",
            Unit::Amount(Measure::Done) => "done",
        }
    }
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trend {
    /// In its unit a week; below 0 it becomes less.
    pub per_week: f64,
    pub unit: Unit,
}

/// The slope of the last twelve weeks by Theil and Sen, from three test days on. Where both load and amount changed there is none:
/// no number would say both.
pub fn trend(points: &[Point], measure: Measure, today: Day) -> Option<Trend> {
    let inside = |p: &&Point| p.on <= today && today.days_after(p.on) <= H.trend_days;
    let recent: Vec<&Point> = points.iter().filter(inside).collect();
    let first = recent.first()?;
    let same = |of: &dyn Fn(&Point) -> bool| recent.iter().all(|p| of(p));
    let unit = if !same(&|p| p.tries == first.tries) || recent.len() < H.tests {
        return None;
    } else if same(&|p| p.mass == first.mass) {
        Unit::Amount(measure)
    } else if same(&|p| p.amount == first.amount) {
        Unit::Load
    } else {
        return None;
    };
    let weeks: Vec<f64> = recent
        .iter()
        .map(|p| f64::from(p.on.days_after(first.on)) / WEEK)
        .collect();
    let values: Vec<f64> = recent
        .iter()
        .map(|p| match unit {
            Unit::Amount(_) => p.amount as f64 / ONE as f64,
            Unit::Load => p.mass.kilograms(),
        })
        .collect();
    let per_week = theil_sen(&weeks, &values)?;
    Some(Trend { per_week, unit })
}

/// Whether a trend loses at least a twentieth of the best within the days of standing still.
pub fn slides(points: &[Point], trend: &Trend, at_most: bool) -> bool {
    let of = |p: &Point| match trend.unit {
        Unit::Amount(_) => p.amount as f64 / ONE as f64,
        Unit::Load => p.mass.kilograms(),
    };
    // Where less is better, what grows is lost.
    let turn = if at_most { -1.0 } else { 1.0 };
    let values = points.iter().map(of);
    let best = values.fold(f64::NEG_INFINITY, |best, v| best.max(turn * v));
    let lost = -turn * trend.per_week * f64::from(H.still_days) / WEEK;
    lost > 0.0 && lost * 1000.0 >= best.abs() * H.sliding as f64
}

/// The median of the slopes of all pairs that differ in `x` (Theil 1950; Sen 1968, J Am Stat Assoc 63(324):1379-1389); `None`
/// where no two do.
pub fn theil_sen(x: &[f64], y: &[f64]) -> Option<f64> {
    let mut slopes: Vec<f64> = Vec::new();
    for (i, (xi, yi)) in x.iter().zip(y).enumerate() {
        for (xj, yj) in x.iter().zip(y).skip(i + 1) {
            if xi != xj {
                slopes.push((yj - yi) / (xj - xi));
            }
        }
    }
    slopes.sort_by(f64::total_cmp);
    let middle = slopes.len() / 2;
    match slopes.len() {
        0 => None,
        n if n % 2 == 0 => Some((slopes[middle - 1] + slopes[middle]) / 2.0),
        _ => Some(slopes[middle]),
    }
}

/// The day of the newest best, long ago.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stall {
    pub best: Day,
    /// Whole weeks since.
    pub weeks: i32,
}

/// No new best for six weeks, and three test days or more in them. A best repeated is none.
pub fn stalled(points: &[Point], at_most: bool, today: Day) -> Option<Stall> {
    let is_best = |(i, p): &(usize, &Point)| !points[..*i].iter().any(|e| e.covers(p, at_most));
    let (_, newest) = points.iter().enumerate().rev().find(is_best)?;
    let days = today.days_after(newest.on);
    let inside = |p: &&Point| p.on <= today && today.days_after(p.on) < H.still_days;
    let tests = points.iter().filter(inside).count();
    (days >= H.still_days && tests >= H.tests).then_some(Stall {
        best: newest.on,
        weeks: days / WEEK as i32,
    })
}

/// The two newest, and the best before them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fallen {
    pub best: Point,
    pub last: [Point; 2],
}

/// The last two bests each below 0.9 of the best before. Of the last twelve weeks: what fell earlier and was not tested since is no
/// news.
pub fn fallen(points: &[Point], at_most: bool, today: Day) -> Option<Fallen> {
    let [before @ .., a, b] = points else {
        return None;
    };
    if today.days_after(a.on) > H.trend_days {
        return None;
    }
    let below = |best: &&Point| a.is_well_below(best, at_most) && b.is_well_below(best, at_most);
    let mut best: Option<&Point> = None;
    for one in before.iter().filter(below) {
        if best.is_none_or(|best| one.is_above(best, at_most)) {
            best = Some(one);
        }
    }
    best.map(|best| Fallen {
        best: *best,
        last: [*a, *b],
    })
}
