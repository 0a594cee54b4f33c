//! The drawing of one movement's history as whole numbers of its box: time across, the movement's own thresholds up. What draws it
//! (the theme's template, the theme's script) only puts these numbers down; the script works out the same ones.

use super::History;
use crate::curriculum::target::{Added, Got, Micro, Target};
use crate::curriculum::{Day, Mass, MovementIx};
use crate::results::Pause;
use crate::training::{Trainee, in_mass};
use serde::Serialize;

/// Where all of a drawing stands, in tenths of a pixel from the top left. What draws it has these too: the theme's template and,
/// from the tables, its script.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Sheet {
    pub width: i64,
    pub height: i64,
    /// The plot: left and right of it stand the names of rungs and the newest number.
    pub left: i64,
    pub right: i64,
    pub top: i64,
    pub foot: i64,
    /// Names of rungs closer than this would lie on each other.
    pub apart: i64,
    /// What rests for a day is still seen.
    pub narrowest: i64,
    /// Bands of rest and ticks of training: from and to.
    pub band: [i64; 2],
    pub tick: [i64; 2],
    /// The first and the last day stand on this line, under the ends of the plot.
    pub days: i64,
    /// Half the width of a mark.
    pub mark: i64,
    /// A number's line is so much below the middle of what it stands beside.
    pub drop: i64,
}

/// The table.
pub const SHEET: Sheet = Sheet {
    width: 3600,
    height: 1300,
    left: 950,
    right: 2850,
    top: 160,
    foot: 980,
    apart: 120,
    narrowest: 12,
    band: [60, 1120],
    tick: [1040, 1110],
    days: 1250,
    mark: 32,
    drop: 35,
};

impl Sheet {
    /// Where a day stands, so many of all days behind the first.
    fn across(&self, days: i64, of: i64) -> i64 {
        self.left + (days * (self.right - self.left)).div_euclid(of)
    }

    /// Where a value stands, so much of all above the lowest; what should be little goes down.
    fn up(&self, value: i64, of: i64, at_most: bool) -> i64 {
        let part = (value * (self.foot - self.top)).div_euclid(of);
        match at_most {
            true => self.top + part,
            false => self.foot - part,
        }
    }
}

/// One threshold.
#[derive(Clone, Debug, PartialEq)]
pub struct Rung {
    pub y: i64,
    pub at: Got,
    /// Whether there is room for its name.
    pub named: bool,
}

#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    pub movement: MovementIx,
    /// From the easiest up.
    pub rungs: Vec<Rung>,
    /// Each test day: x, y.
    pub marks: Vec<(i64, i64)>,
    /// Training days.
    pub ticks: Vec<i64>,
    /// Pauses: x and width.
    pub bands: Vec<(i64, i64)>,
    /// The first test day.
    pub from: Day,
    pub to: Day,
    /// What rested, by its first and last day within these.
    pub rests: Vec<(Day, Day)>,
}

/// Draws a history; `asked` are the targets asked of its movement, its standard among them. Where the reps were always the same and
/// the load was not, up is the load.
pub fn drawing(trainee: &Trainee<'_>, of: &History, asked: &[Target]) -> Option<Drawing> {
    let (first, newest) = (of.points.first()?, of.points.last()?);
    let same_mass = of.points.iter().all(|p| p.mass == first.mass);
    let by_load = !same_mass && of.points.iter().all(|p| p.amount == first.amount);
    let value = |amount: Micro, mass: Mass| if by_load { mass.units() } else { amount };
    let facts = trainee.roster.of(of.movement);
    let fits = |t: &&Target| match in_mass(t.added(), trainee.person.body_weight) {
        Some(_) if by_load => t.amount() <= first.amount,
        Some(mass) => mass == newest.mass,
        None => false,
    };
    let mass = |t: &Target| in_mass(t.added(), trainee.person.body_weight).unwrap_or_default();
    let mut steps: Vec<i64> = asked
        .iter()
        .filter(fits)
        .map(|t| value(t.amount(), mass(t)))
        .collect();
    steps.sort_unstable();
    steps.dedup();
    let values: Vec<i64> = of.points.iter().map(|p| value(p.amount, p.mass)).collect();
    let all = || steps.iter().chain(&values).copied();
    let low = all().min().unwrap_or(0).min(0);
    let high = all().max().unwrap_or(0).max(low + 1);
    let at_most = facts.of.standard().at_most();
    let y = |v: i64| SHEET.up(v - low, high - low, at_most);
    let to = trainee.today;
    let span = i64::from(to.days_after(first.on)).max(1);
    let x = |day: Day| SHEET.across(day.days_after(first.on).into(), span);
    let got = |v: i64| match by_load {
        true => {
            let load = Some(Added::Mass(Mass::of_units(v)));
            Got::of(facts.measure(), 1, first.amount, 0, load)
        }
        false => Got::of(facts.measure(), 1, v, 0, None),
    };
    let rungs = rungs(steps.iter().map(|v| (y(*v), got(*v))));
    let rests = rests(trainee, of.movement, first.on);
    let band =
        |(begins, ends): &(Day, Day)| (x(*begins), (x(*ends) - x(*begins)).max(SHEET.narrowest));
    Some(Drawing {
        movement: of.movement,
        marks: of
            .points
            .iter()
            .zip(&values)
            .map(|(p, v)| (x(p.on), y(*v)))
            .collect(),
        ticks: trained(trainee, of.movement, first.on).map(x).collect(),
        bands: rests.iter().map(band).collect(),
        from: first.on,
        to,
        rests,
        rungs,
    })
}

/// The days from one on at which a movement was trained, each once.
fn trained(trainee: &Trainee<'_>, ix: MovementIx, from: Day) -> impl Iterator<Item = Day> {
    let mut days: Vec<Day> = trainee.logged(ix).map(|l| l.of.on).collect();
    days.retain(|day| *day >= from);
    days.dedup();
    days.into_iter()
}

/// The rungs from their heights and amounts. Names that would touch are left out; the hardest keeps its own.
fn rungs(all: impl Iterator<Item = (i64, Got)>) -> Vec<Rung> {
    let rung = |(y, at)| Rung { y, at, named: true };
    let mut rungs: Vec<Rung> = all.map(rung).collect();
    let mut last: Option<i64> = None;
    for rung in rungs.iter_mut().rev() {
        rung.named = last.is_none_or(|y| (y - rung.y).abs() >= SHEET.apart);
        if rung.named {
            last = Some(rung.y);
        }
    }
    rungs
}

/// What rested of a movement from a day on: first and last day, until today.
fn rests(trainee: &Trainee<'_>, movement: MovementIx, from: Day) -> Vec<(Day, Day)> {
    let to = trainee.today;
    let clipped = |p: &Pause| {
        let (begins, ends) = (p.on.max(from), p.until.map_or(to, |until| until.min(to)));
        (begins <= ends && trainee.reaches(p.what, movement)).then_some((begins, ends))
    };
    let pauses = trainee.person.pauses.iter();
    pauses
        .chain(&trainee.person.restrictions)
        .filter_map(clipped)
        .collect()
}
