//! The goal and what holds back, in words.

use super::closed::{Closed, Stop};
use super::constants::K;
use super::goal::Gap;
use super::plan::Training;
use super::reason::Reason;
use super::say::{Say, TOKEN};
use crate::curriculum::Owner;
use crate::curriculum::target::{Got, say_mass};
use crate::results::{Goal as Chosen, LIMITS, Sides};
use crate::words::Value;

impl Say<'_> {
    fn way(&self, key: &str, values: &[(&str, Value<'_>)]) -> String {
        self.words.fill(&format!("training.{key}"), values)
    }

    /// The goal, chosen or the nearest.
    pub fn goal(&self, of: &Training) -> String {
        let Some(goal) = &of.goal else {
            return self.say("no_goal");
        };
        let name = match (goal.of, self.tokens) {
            (Chosen::Movement(ix), _) => self.named(ix),
            (Chosen::Skill(ix), true) => format!("{TOKEN}s{}{TOKEN}", ix.0),
            (Chosen::Skill(ix), false) => {
                self.roster.curriculum.named(Owner::Skill(ix), self.words)
            }
        };
        let key = if goal.chosen { "goal" } else { "goal_nearest" };
        self.way(key, &[("goal", (&name).into())])
    }

    /// What stands between the person and the goal first.
    pub fn holds_back(&self, of: &Training) -> Option<String> {
        let Some(at) = of.limiter else {
            of.goal.as_ref()?;
            // What stands in the place of the way's own is work for it too.
            let mut lines = of.sessions.iter().flat_map(|s| &s.lines);
            return Some(if of.is_reached() {
                self.say("reached")
            } else if lines.any(|l| l.gap.is_some()) {
                self.say("nothing_but")
            } else {
                self.say("nothing")
            });
        };
        let gap = &of.gaps[at];
        let got = self.has(gap).unwrap_or_else(|| self.say("unknown"));
        let (movement, target) = (self.named(gap.movement), self.asks(gap));
        let values = [
            ("movement", Value::Text(&movement)),
            ("got", Value::Text(&got)),
            ("target", Value::Text(&target)),
        ];
        let what = match gap.is_whole() {
            true => self.way("limiter_show", &values),
            false => self.way("limiter", &values),
        };
        Some(match self.how_long(gap) {
            None => what,
            Some(way) => format!("{what} {way}"),
        })
    }

    /// How long the whole way takes, in a sentence; where it is closed, as far as the first step that is, and why. `None` where nothing
    /// of it is left.
    pub fn how_long(&self, gap: &Gap) -> Option<String> {
        let time = self.time(gap);
        let Some(stop) = gap.stop.as_ref().filter(|_| gap.weight > 0) else {
            return Some(self.way("way.whole", &[("time", (&time?).into())]));
        };
        let why = self.closed(stop);
        let Some(time) = time else {
            return Some(self.way("way.none", &[("why", (&why).into())]));
        };
        let movement = self.named(stop.at);
        let values = [
            ("time", (&time).into()),
            ("why", (&why).into()),
            ("movement", (&movement).into()),
        ];
        Some(match stop.at == stop.by {
            true => self.way("way.then", &values[..2]),
            false => self.way("way.then_waits", &values),
        })
    }

    /// Why the way ends.
    fn closed(&self, stop: &Stop) -> String {
        let movement = self.named(stop.by);
        let movement = ("movement", Value::Text(&movement));
        match &stop.why {
            Closed::Age => self.way(
                "way.age",
                &[movement, ("n", LIMITS.adult.unsigned_abs().into())],
            ),
            Closed::Falls => self.say("way.falls"),
            Closed::Gear(all) => {
                let all: Vec<String> = all.iter().map(|words| self.gear(words)).collect();
                let gear = self.words.list_and(&all);
                self.way("way.equipment", &[movement, ("gear", (&gear).into())])
            }
        }
    }

    /// Equipment of which one will do.
    pub fn gear(&self, one_of: &[String]) -> String {
        let words: Vec<String> = one_of.iter().map(|word| self.words.gear(word)).collect();
        self.words.joined(&words, "list.or")
    }

    /// What there is of a gap: what it follows from, left and right where they differ, what was measured in the old way.
    pub fn has(&self, gap: &Gap) -> Option<String> {
        let say = |got: &Got| got.say(self.units, self.words);
        let Some(got) = gap.got else {
            let old = gap.old?;
            return Some(self.why(&[Reason::MeasureAgain(old)]));
        };
        Some(match (gap.from, gap.apart()) {
            (Some(from), _) => self.why(&[Reason::Counts(got, from)]),
            (None, Some((left, right))) => {
                let parts = got.parts();
                let one =
                    |amount| Got::of(parts.measure(), 1, amount, parts.seconds(), parts.added());
                self.sides(&Sides::Each {
                    left: one(left),
                    right: one(right),
                })
            }
            (None, None) => say(&got),
        })
    }

    /// What is asked of a gap; a share of body weight as what it comes to, too.
    pub fn asks(&self, gap: &Gap) -> String {
        let target = gap.target.say(self.units, self.words);
        match gap.mass {
            None => target,
            Some(mass) => {
                let mass = say_mass(mass, self.units, self.words);
                self.way(
                    "comes_to",
                    &[("target", (&target).into()), ("weight", (&mass).into())],
                )
            }
        }
    }

    /// A result, or left and right.
    pub fn sides(&self, sides: &Sides) -> String {
        let say = |got: &Got| got.say(self.units, self.words);
        match sides {
            Sides::Both(got) => say(got),
            Sides::Each { left, right } => {
                let (left, right) = (say(left), say(right));
                let values = [("left", (&left).into()), ("right", (&right).into())];
                self.words.fill("morning.left_right", &values)
            }
        }
    }

    /// About how long a path is, ends that are alike once, below a month in weeks; `None` where nothing of it is left.
    pub fn time(&self, gap: &Gap) -> Option<String> {
        if gap.high == 0 {
            return None;
        }
        let (low, high) = gap.tenths_of_weeks();
        let weeks = |tenths: u64| tenths.div_ceil(10).max(1) as i64;
        let (unit, low, high) = match (weeks(low), weeks(high)) {
            (low, high) if high <= K.said_in_weeks => ("weeks", low, high),
            _ => {
                let (low, high) = gap.months();
                ("months", low.max(1), high)
            }
        };
        let (key, low) = match low == high {
            true => (format!("time.{unit}"), Vec::new()),
            false => (
                format!("time.between.{unit}"),
                vec![("low", Value::Whole(low))],
            ),
        };
        let values: Vec<_> = low.into_iter().chain([("n", Value::Whole(high))]).collect();
        Some(self.way(&key, &values))
    }
}
