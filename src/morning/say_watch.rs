//! What to watch, in words.

use super::say::Telling;
use super::{Verdict, Watch, rests};
use crate::curriculum::target::{Added, Got, Micro};
use crate::curriculum::{Mass, MovementIx};
use crate::history::{Advice, Fallen, Point, Still};
use crate::readiness::Cause;
use crate::results::{LIMITS, Pain, Person};
use crate::training::{K, holds, takes_back};

impl Telling<'_> {
    pub(super) fn watch(&self, of: &Verdict, person: &Person, watch: &Watch) -> String {
        match watch {
            Watch::Pain { at, stops } => {
                let pain = &person.pains[*at];
                match stops {
                    true => self.say.stopping(person, pain, self.today),
                    false if holds(pain) => self.held(pain, &self.say.pain(pain, None)),
                    false => self.say.pain(pain, None),
                }
            }
            Watch::Rests(cause) => self.rests(person, &[*cause]),
            Watch::Age { years, weight } => self.age(*years, *weight),
            Watch::Cleared(last) => {
                let by = person.screened.as_ref().and_then(|s| s.by.as_deref());
                let who = by.unwrap_or(self.plain("a_clinician"));
                let day = last.to_string();
                self.fill("cleared", &[("who", who.into()), ("day", (&day).into())])
            }
            Watch::Unanswered => self.fill("unanswered", &[]),
            Watch::ToFailure { on, movements } => {
                let (list, day) = (self.few_named(movements), on.to_string());
                let then = on.plus(K.apart).to_string();
                let values = [
                    ("list", (&list).into()),
                    ("day", (&day).into()),
                    ("then", (&then).into()),
                ];
                self.fill("to_failure", &values)
            }
            Watch::Missing(all) => self.missing(all),
            // Said with what is next.
            Watch::Doubt(_) | Watch::OneLeg { .. } | Watch::TimeOff(_) => String::new(),
            Watch::Fallen(at) => {
                let history = &of.history[*at];
                let fallen = history.fallen.as_ref();
                fallen.map_or_else(String::new, |f| self.fallen(history.movement, f))
            }
            Watch::Still(at) => {
                let history = &of.history[*at];
                let still = history.still.as_ref();
                still.map_or_else(String::new, |s| self.still(history.movement, s))
            }
            Watch::Sides {
                movement,
                left,
                right,
                ..
            } => {
                let (name, left) = (self.named(*movement), self.amount(*movement, *left));
                let right = self.amount(*movement, *right);
                let values = [
                    ("movement", (&name).into()),
                    ("left", (&left).into()),
                    ("right", (&right).into()),
                ];
                self.fill("sides_differ", &values)
            }
            Watch::NoDayOff { group, first, then } => {
                let group = self.say.group(*group);
                let (first, then) = (first.to_string(), then.to_string());
                let values = [
                    ("group", (&group).into()),
                    ("first", (&first).into()),
                    ("then", (&then).into()),
                ];
                self.fill("no_day_off", &values)
            }
            Watch::RunsOut { from, movements } => {
                let (list, day) = (self.few_named(movements), from.to_string());
                self.fill(
                    "runs_out",
                    &[("list", (&list).into()), ("day", (&day).into())],
                )
            }
            Watch::OutOfDate(movements) => {
                let list = self.few_named(movements);
                self.fill("out_of_date", &[("list", (&list).into())])
            }
            Watch::Helped(movements) => {
                let list = self.few_named(movements);
                self.fill("helped", &[("list", (&list).into())])
            }
            Watch::Aside => self.kept_aside(person),
        }
    }

    /// What follows from a pain of 3 to 5, and when to ask for it again.
    fn held(&self, pain: &Pain, said: &str) -> String {
        let key = match takes_back(pain) {
            true => "pain_less",
            false => "pain_hold",
        };
        let due = pain.on.plus(K.pain_days).max(self.today).to_string();
        let lower = LIMITS.pain[0] - 1;
        let values = [
            ("pain", said.into()),
            ("n", lower.into()),
            ("day", (&due).into()),
        ];
        self.fill(key, &values)
    }

    /// What is not at hand, each with what it stops.
    fn missing(&self, all: &[(Vec<String>, Vec<MovementIx>)]) -> String {
        let one = |(words, stops): &(Vec<String>, Vec<MovementIx>)| {
            let (gear, first) = (self.say.gear(words), self.named(stops[0]));
            let list = match stops.len() - 1 {
                0 => first,
                n => self.fill("more", &[("list", (&first).into()), ("n", n.into())]),
            };
            let values = [("gear", (&gear).into()), ("list", (&list).into())];
            self.fill("missing_of", &values)
        };
        let all: Vec<String> = all.iter().map(one).collect();
        let list = self.say.words.list(&all);
        self.fill("missing", &[("list", (&list).into())])
    }

    /// Old or young, and what follows from it.
    fn age(&self, years: i32, weight: bool) -> String {
        let whole = |n: i32| crate::words::Value::Whole(n.into());
        let values = [("n", whole(years)), ("next", whole(years + 1))];
        let age = match years {
            _ if years >= K.balance_age => return self.fill("age_old", &values),
            _ if years < LIMITS.youth => self.fill("age_youth", &values),
            _ => self.fill("age", &values),
        };
        match weight {
            true => self.fill("age_weight", &[("age", (&age).into())]),
            false => age,
        }
    }

    /// What to watch, but what hurts so that its part stops: that is said before all else. What rests alike is said once.
    pub(super) fn watches(&self, of: &Verdict, person: &Person) -> Vec<String> {
        let causes: Vec<Cause> = of.watch.iter().filter_map(Watch::rests).collect();
        let rests = super::rests::together(person, &causes);
        let mut out = Vec::new();
        let told = of.watch.iter().filter(|w| !w.is_aside() && !w.stops());
        for watch in told.filter(|w| !w.is_act()) {
            match watch.rests() {
                None => out.push(self.watch(of, person, watch)),
                Some(cause) => {
                    let all = rests.iter().find(|all| all[0] == cause);
                    out.extend(all.map(|all| self.rests(person, all)));
                }
            }
        }
        out
    }

    fn rests(&self, person: &Person, causes: &[Cause]) -> String {
        let out = rests(self.curriculum(), self.say.words, person, causes);
        let of = causes.first().and_then(|cause| cause.pause(person));
        match of.is_some_and(|p| p.until.is_none()) {
            true => self.fill("no_end", &[("pause", (&out).into())]),
            false => out,
        }
    }

    /// An amount of a movement, as its results are written.
    pub(super) fn amount(&self, ix: MovementIx, amount: Micro) -> String {
        let measure = self.curriculum().movement(ix).standard().measure();
        self.got(&Got::of(measure, 1, amount, 0, None))
    }

    pub(super) fn point(&self, ix: MovementIx, point: &Point) -> String {
        let measure = self.curriculum().movement(ix).standard().measure();
        let added = (point.mass != Mass::NONE).then_some(Added::Mass(point.mass));
        self.got(&Got::of(measure, 1, point.amount, 0, added))
    }

    fn fallen(&self, ix: MovementIx, fallen: &Fallen) -> String {
        let name = self.named(ix);
        let [first, then] = fallen.last.each_ref().map(|p| self.point(ix, p));
        let (best, day) = (self.point(ix, &fallen.best), fallen.best.on.to_string());
        let values = [
            ("movement", (&name).into()),
            ("first", (&first).into()),
            ("then", (&then).into()),
            ("best", (&best).into()),
            ("day", (&day).into()),
        ];
        self.fill("falls", &values)
    }

    fn still(&self, ix: MovementIx, still: &Still) -> String {
        let (name, advice) = (self.named(ix), self.advice(still.advice));
        let values = [
            ("movement", (&name).into()),
            ("n", crate::words::Value::Whole(still.since.weeks.into())),
            ("advice", (&advice).into()),
        ];
        let key = if still.falling { "slides" } else { "still" };
        self.fill(key, &values)
    }

    pub(super) fn advice(&self, advice: Advice) -> String {
        let key = format!("advice.{}", advice.word());
        match advice.movement().map(|ix| self.named(ix)) {
            Some(movement) => self.fill(&key, &[("movement", (&movement).into())]),
            None => self.plain(&key).to_string(),
        }
    }

    /// Every entry that decides nothing, those of one reason together.
    fn kept_aside(&self, person: &Person) -> String {
        let mut by: Vec<(&str, Vec<String>)> = Vec::new();
        for aside in &person.aside {
            let day = aside.on.to_string();
            let values = [
                ("movement", (&aside.movement).into()),
                ("got", (&aside.got).into()),
                ("day", (&day).into()),
            ];
            let one = self.fill("entry", &values);
            match by.iter_mut().find(|(why, _)| *why == aside.why) {
                Some((_, list)) => list.push(one),
                None => by.push((aside.why, vec![one])),
            }
        }
        let one = |(why, list): &(&str, Vec<String>)| {
            let list = self.few(list);
            self.fill(
                "because",
                &[("list", (&list).into()), ("why", (*why).into())],
            )
        };
        by.iter().map(one).collect::<Vec<_>>().join("; ")
    }
}
