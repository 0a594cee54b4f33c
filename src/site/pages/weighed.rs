//! What `weigh` found as a page of its own: needs, weeks with their curves, standards; made by the theme, outside the site.

use super::outside::{context, render};
use crate::curriculum::{Curriculum, MovementIx, Owner, Weeks};
use crate::site::names::named_from_outside;
use crate::site::theme::{Theme, ThemeError};
use crate::weigh::{Portion, Step, Verdict, Weighed, WeighedWay, half, sees};
use crate::words::Value;
use serde::Serialize;

/// The theme's template.
const TEMPLATE: &str = "weighed.html";

/// The box of a curve and its plot, in tenths of a pixel.
const BOX: (i64, i64) = (3600, 1500);
const LEFT: i64 = 400;
const RIGHT: i64 = 3500;
const TOP: i64 = 100;
const FOOT: i64 = 1200;
const WEEK: i64 = crate::curriculum::day::WEEK as i64;

#[derive(Serialize)]
struct NeedView {
    movement: String,
    needed: String,
    target: String,
    owners: usize,
    below: usize,
    share: String,
    verdict: String,
    suggest: String,
}

#[derive(Serialize)]
struct WayView {
    named: String,
    declared: String,
    says: String,
    verdict: String,
    suggest: String,
    /// The corners of the step line, and of the band around it.
    line: String,
    band: String,
    /// The weeks that the curriculum says: x and width.
    weeks: Option<(i64, i64)>,
    /// Weeks under the plot, each with its x.
    scale: Vec<(i64, i64)>,
    /// Week, share still on the way, interval.
    rows: Vec<(String, String)>,
}

#[derive(Serialize)]
struct StandardView {
    named: String,
    target: String,
    tested: usize,
    met: usize,
    met_at_first: usize,
    /// For each movement that it opens: its name, how many of how many.
    opens: Vec<(String, usize, usize)>,
    verdict: String,
}

/// The page.
///
/// # Errors
/// When the theme cannot make it.
pub fn page(curriculum: &Curriculum, theme: &Theme, of: &Weighed) -> Result<String, ThemeError> {
    let view = View { curriculum, theme };
    let needs: Vec<NeedView> = collected(of.needs.iter().filter(|n| n.owners > 0).map(|n| {
        Ok(NeedView {
            movement: view.named(n.movement)?,
            needed: view.named(n.needed)?,
            target: n.target.say(curriculum.school().units, curriculum.words()),
            owners: n.owners,
            below: n.below,
            share: view.share(&n.portion),
            verdict: view.verdict(n.verdict),
            suggest: n.suggest.map_or_else(String::new, |t| {
                t.say(curriculum.school().units, curriculum.words())
            }),
        })
    }))?;
    let ways: Vec<WayView> = collected(
        of.movements
            .iter()
            .filter(|w| w.curve.people > 0)
            .map(|w| view.way(w)),
    )?;
    let standards: Vec<StandardView> =
        collected(of.standards.iter().filter(|s| s.tested > 0).map(|s| {
            let opens = s
                .opens
                .iter()
                .map(|l| Ok((view.named(l.movement)?, l.within, l.people)));
            let standard = curriculum.movement(s.movement).standard();
            Ok(StandardView {
                named: view.named(s.movement)?,
                target: standard.say(curriculum.school().units, curriculum.words()),
                tested: s.tested,
                met: s.met,
                met_at_first: s.met_at_first,
                opens: collected(opens)?,
                verdict: view.verdict(s.verdict),
            })
        }))?;
    let mut context = context(curriculum, curriculum.words().say("weigh.page"));
    let n = [("n", Value::Whole(of.people as i64))];
    let early = of.people < crate::weigh::PEOPLE;
    let people = if early {
        "weigh.too_early"
    } else {
        "weigh.people"
    };
    context.insert("people", &curriculum.words().fill(people, &n));
    context.insert("early", &early);
    let seen = of.sees().map(|s| sees(curriculum.words(), &s));
    context.insert("sees", &seen.unwrap_or_default());
    context.insert("needs", &needs);
    context.insert("ways", &ways);
    context.insert("standards", &standards);
    context.insert("box", &BOX);
    context.insert("plot", &[LEFT, RIGHT, TOP, FOOT]);
    render(theme, TEMPLATE, &context)
}

fn collected<T>(all: impl Iterator<Item = Result<T, ThemeError>>) -> Result<Vec<T>, ThemeError> {
    all.collect()
}

struct View<'v> {
    curriculum: &'v Curriculum,
    theme: &'v Theme,
}

impl View<'_> {
    fn named(&self, ix: MovementIx) -> Result<String, ThemeError> {
        named_from_outside(self.curriculum, self.theme, Owner::Movement(ix))
    }

    fn verdict(&self, of: Verdict) -> String {
        let key = of.word().replace(' ', "_");
        self.curriculum
            .words()
            .say(&format!("weigh.verdict.{key}"))
            .to_string()
    }

    /// Weeks ask nothing: they are longer or shorter than they say.
    fn of_weeks(&self, of: Verdict) -> String {
        let words = self.curriculum.words();
        match of {
            Verdict::TooHigh => words.say("weigh.took_less").to_string(),
            Verdict::TooLow => words.say("weigh.took_more").to_string(),
            _ => self.verdict(of),
        }
    }

    /// In whole percent, the interval rounded outwards.
    fn share(&self, of: &Portion) -> String {
        self.percents(of.share, of.low, of.high)
    }

    fn percents(&self, share: f64, low: f64, high: f64) -> String {
        let values = [
            ("n", Value::Whole((share * 100.0).round() as i64)),
            ("low", Value::Whole((low * 100.0).floor() as i64)),
            ("high", Value::Whole((high * 100.0).ceil() as i64)),
        ];
        self.curriculum.words().fill("weigh.share", &values)
    }

    fn way(&self, of: &WeighedWay) -> Result<WayView, ThemeError> {
        let words = self.curriculum.words();
        let written = |w: Weeks| w.to_string();
        let half = half(words, of);
        let values = [
            ("n", Value::Whole(of.curve.people as i64)),
            ("arrived", Value::Whole(of.curve.arrived as i64)),
            ("half", (&half).into()),
        ];
        let steps = &of.curve.steps;
        let declared = of.declared.map_or(0, |w| i64::from(w.to()) * WEEK);
        let newest = steps.last().map_or(0, |s| i64::from(s.days));
        let end = declared.max(newest).max(WEEK);
        let x = |days: i64| LEFT + days * (RIGHT - LEFT) / end;
        let weeks = end / WEEK;
        let every = [1, 2, 4, 8, 13, 26, 52]
            .into_iter()
            .find(|e| weeks / e <= 8)
            .unwrap_or(104);
        let row = |s: &Step| {
            let week = words.tenth(f64::from(s.days) / WEEK as f64);
            (week, self.percents(s.share, s.low, s.high))
        };
        Ok(WayView {
            named: self.named(of.movement)?,
            declared: of.declared.map_or_else(String::new, written),
            says: words.fill("weigh.curve", &values),
            verdict: self.of_weeks(of.verdict),
            suggest: of.suggest.map_or_else(String::new, written),
            line: corners(&edge(steps, &x, end, |s| s.share)),
            band: corners(&band(steps, &x, end)),
            weeks: of.declared.map(|w| {
                let (from, to) = (x(i64::from(w.from()) * WEEK), x(i64::from(w.to()) * WEEK));
                (from, (to - from).max(12))
            }),
            scale: (0..=weeks / every)
                .map(|i| (i * every, x(i * every * WEEK)))
                .collect(),
            rows: steps.iter().map(row).collect(),
        })
    }
}

/// A step line from the first day to the last, from 1 down.
fn edge(
    steps: &[Step],
    x: &dyn Fn(i64) -> i64,
    end: i64,
    of: impl Fn(&Step) -> f64,
) -> Vec<(i64, i64)> {
    let y = |share: f64| FOOT - (share * (FOOT - TOP) as f64).round() as i64;
    let mut out = vec![(x(0), y(1.0))];
    let mut now = y(1.0);
    for step in steps {
        let at = x(step.days.into());
        out.push((at, now));
        now = y(of(step));
        out.push((at, now));
    }
    out.push((x(end), now));
    out
}

/// Along the upper end of the interval, and back along the lower.
fn band(steps: &[Step], x: &dyn Fn(i64) -> i64, end: i64) -> Vec<(i64, i64)> {
    let mut out = edge(steps, x, end, |s| s.high);
    out.extend(edge(steps, x, end, |s| s.low).into_iter().rev());
    out
}

fn corners(points: &[(i64, i64)]) -> String {
    let all: Vec<String> = points.iter().map(|(x, y)| format!("{x},{y}")).collect();
    all.join(" ")
}
