//! What older results say: whether a movement grows, stands still or falls, and the one thing to change. The newest day alone
//! decides about states; this looks back.
//!
//! Pure: the day is an input.

mod advice;
mod drawing;
mod look;

pub use advice::Advice;
pub use drawing::{Drawing, Rung, SHEET, Sheet, drawing};
pub use look::{Fallen, Point, Stall, Trend, Unit, fallen, slides, stalled, theil_sen, trend};

use crate::curriculum::MovementIx;
use crate::curriculum::target::Measure;
use crate::results::Tested;
use crate::training::{Aim, Trainee, in_mass};
use serde::Serialize;
use std::collections::BTreeMap;

/// The numbers of this room. Days are counted back from today. The page's script has them from the tables.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Constants {
    /// A trend is of so many days. Common practice, no source.
    pub trend_days: i32,
    /// No new best for so many days is standing still. Common practice, no source.
    pub still_days: i32,
    /// Neither is said of fewer test days than this. Common practice, no source.
    pub tests: usize,
    /// Thousandths: below this share of the best before, twice, is falling. Common practice, no source.
    pub falling: i64,
    /// Thousandths of the best, lost by the trend in the days of standing still: from there on it falls, if slowly. Common practice,
    /// no source.
    pub sliding: i64,
    /// A lighter week is due after so many days without one. Common practice, no source.
    pub lighter_days: i32,
    /// A kind trained on fewer days a week has room for one more: with 48 h between, three fit a week.
    pub days_a_week: usize,
}

/// The table.
pub const H: Constants = Constants {
    trend_days: 84,
    still_days: 42,
    tests: 3,
    falling: 900,
    sliding: 50,
    lighter_days: 35,
    days_a_week: 3,
};

/// What one person's results of a movement say.
#[derive(Clone, Debug)]
pub struct History {
    pub movement: MovementIx,
    /// The best of each day, by day.
    pub points: Vec<Point>,
    pub trend: Option<Trend>,
    pub still: Option<Still>,
    pub fallen: Option<Fallen>,
}

/// A plateau.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Still {
    pub since: Stall,
    pub advice: Advice,
    /// Its trend points away from the best.
    pub falling: bool,
}

impl History {
    /// Twice well below the best, or less from test to test for weeks.
    pub fn falls(&self) -> bool {
        self.fallen.is_some() || self.still.is_some_and(|s| s.falling)
    }
}

/// The histories of all tested movements, by id. What is only done or not done has none.
///
/// # Complexity
/// Square in the test days of a movement, linear in the log for each plateau.
pub fn histories(trainee: &Trainee<'_>, aim: &Aim) -> Vec<History> {
    let mut tests: BTreeMap<MovementIx, Vec<&Tested>> = BTreeMap::new();
    for tested in trainee.person.tested.iter() {
        if tested.on <= trainee.today {
            tests.entry(tested.movement).or_default().push(tested);
        }
    }
    let of = |(ix, tests): (MovementIx, Vec<&Tested>)| history(trainee, aim, ix, &tests);
    tests.into_iter().filter_map(of).collect()
}

fn history(trainee: &Trainee<'_>, aim: &Aim, ix: MovementIx, tests: &[&Tested]) -> Option<History> {
    let facts = trainee.roster.find(ix)?;
    if facts.measure() == Measure::Done {
        return None;
    }
    let at_most = facts.of.standard().at_most();
    let points = points(trainee, ix, tests);
    let trend = trend(&points, facts.measure(), trainee.today);
    let falling = trend.is_some_and(|t| slides(&points, &t, at_most));
    let still = stalled(&points, at_most, trainee.today)
        .filter(|_| !advice::is_explained(trainee, ix))
        .map(|since| Still {
            since,
            advice: advice::advice(trainee, aim, ix, falling),
            falling,
        });
    Some(History {
        movement: ix,
        trend,
        still,
        fallen: fallen(&points, at_most, trainee.today),
        points,
    })
}

/// The best of each day. A load in shares of a body weight that is not known compares with nothing and is left out.
pub fn points(trainee: &Trainee<'_>, ix: MovementIx, tests: &[&Tested]) -> Vec<Point> {
    let facts = trainee.roster.of(ix);
    let at_most = facts.of.standard().at_most();
    let mut by_day: BTreeMap<_, Point> = BTreeMap::new();
    for tested in tests {
        let weight = tested.body_weight.or(trainee.person.body_weight);
        let known =
            |got: &crate::curriculum::target::Got| in_mass(got.parts().added(), weight).is_some();
        if !tested.sides.all().all(known) {
            continue;
        }
        let now = trainee.of_test(facts, tested);
        let point = Point {
            on: tested.on,
            amount: now.amount,
            mass: now.mass,
            tries: now.tries,
        };
        by_day
            .entry(tested.on)
            .and_modify(|best| {
                if point.is_above(best, at_most) {
                    *best = point;
                }
            })
            .or_insert(point);
    }
    by_day.into_values().collect()
}
