//! Half a year of a random client: latent strength that grows with training and forgets without, parts that hurt at random, days
//! missed. The client does what is asked, logs it and enters what a test or a showing comes to.
//!
//! The model is a toy: shares of the standards, falling with the rungs, moved by training. It says nothing about people; it holds
//! the rules to their promises along long lives, and compares ways of choosing under the same assumptions.

use super::throw::Throw;
use rungbook::chain;
use rungbook::curriculum::target::{Measure, ONE, Target};
use rungbook::curriculum::words::{BodyPart, Word};
use rungbook::curriculum::{Curriculum, Day, Leaf, MovementIx};
use rungbook::proof::Proofread;
use rungbook::training::Retest;
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// 26 weeks.
pub const DAYS: i32 = 182;

/// What is done of one line.
pub struct Work {
    pub movement: MovementIx,
    pub sets: i64,
    pub amount: i64,
    pub with_kg: Option<f64>,
    /// A first try or a showing: what it comes to is entered as a test.
    pub tests: bool,
    pub range: bool,
}

/// A client with what nobody sees.
pub struct Life<'a> {
    pub proof: &'a Proofread,
    pub throw: Throw,
    pub results: Value,
    pub goal: Leaf,
    /// Shares of the standards, by movement.
    strength: Vec<f64>,
    /// Days since each pattern was trained.
    idle: BTreeMap<&'static str, i32>,
    /// A part that hurts, and the day on which it is better.
    sore: Option<(BodyPart, i32)>,
    away_until: i32,
    retests: Vec<Retest>,
}

/// A kilogram in the results' hundred-millionths.
const WEIGHT: f64 = 72.0;

impl<'a> Life<'a> {
    pub fn new(proof: &'a Proofread, seed: u64, start: Day) -> Life<'a> {
        let c = &proof.curriculum;
        let mut throw = Throw::new(seed);
        let skills: Vec<_> = c.skills().map(|(_, s)| s).collect();
        let skill = skills[throw.below(skills.len())];
        let top = f64::from(proof.resolved.stages.of(skill.goal.movement).unwrap_or(0));
        let level = top * (0.6 + 0.35 * throw.share());
        let strength = c
            .movements()
            .map(|(ix, _)| {
                let rungs = f64::from(proof.resolved.stages.of(ix).unwrap_or(0));
                (1.0 + 0.2 * (level - rungs) + 0.3 * (throw.share() - 0.5)).clamp(0.05, 2.0)
            })
            .collect();
        let days = throw.one(&[
            &["tue", "fri"][..],
            &["mon", "wed", "fri"],
            &["mon", "tue", "thu", "fri"],
        ]);
        let results = json!({
            "results": 1, "bodyweight": "72 kg", "born": 2026 - throw.one(&[15, 17, 25, 34, 50, 68]), "goal": skill.id.as_str(),
            "screened": { "says": "clear", "on": start.plus(-1).to_string() },
            "train": { "days": days, "minutes": throw.one(&[45, 60, 75]) }, "tested": [], "trained": [], "pain": [],
        });
        let mut life = Life {
            proof,
            throw,
            results,
            goal: skill.goal.clone(),

            strength,
            idle: BTreeMap::new(),
            sore: None,
            away_until: -1,
            retests: Vec::new(),
        };
        life.first_tests(start);
        life
    }

    fn c(&self) -> &'a Curriculum {
        &self.proof.curriculum
    }

    /// The foundations of the goal that a newcomer tests: what stands low in the chain.
    fn first_tests(&mut self, on: Day) {
        let chain = chain::resolve(self.c(), &self.proof.resolved.stages, &self.goal);
        let low: Vec<MovementIx> = chain
            .movements
            .iter()
            .filter(|l| l.stage <= 2)
            .map(|l| l.movement)
            .collect();
        for ix in low {
            if self.throw.chance(60) {
                self.test(ix, on);
            }
        }
    }

    /// How much of a movement one set is, at most, with so many kilograms (its standard's where none are said).
    fn most(&self, ix: MovementIx, with_kg: Option<f64>) -> f64 {
        let m = self.c().movement(ix);
        let standard = (m.standard().amount() / ONE) as f64;
        let share = self.strength[ix.at()];
        let asked = kilograms(&m.standard());
        let given = with_kg.unwrap_or(asked);
        // A tenth of body weight more is a quarter of the strength.
        standard * (share - (given - asked) / WEIGHT * 2.5).max(0.0)
    }

    /// Enters a test's result.
    pub fn test(&mut self, ix: MovementIx, on: Day) {
        let m = self.c().movement(ix);
        let share = self.strength[ix.at()];
        let amount = self.most(ix, None).floor().max(0.0);
        let load = m.standard().added().map_or(String::new(), |_| {
            let text = m.standard().to_string();
            format!(
                " with {}",
                text.split(" with ")
                    .nth(1)
                    .unwrap_or("")
                    .replace(" each side", "")
            )
        });
        let each = match m.standard().seconds() {
            0 => String::new(),
            n => format!(" of {} s", n / ONE),
        };
        let got = match m.standard().measure() {
            Measure::Reps => format!("{amount} reps{each}{load}"),
            Measure::Time => match m.standard().tries() {
                Some(t) => format!(
                    "{} s in {} of {} tries{load}",
                    m.standard().amount() / ONE,
                    ((share * f64::from(t.hits)) as u32).min(t.of),
                    t.of
                ),
                None => format!("{amount} s{load}"),
            },
            Measure::Length if m.standard().at_most() => {
                format!("{:.0} cm", (m.standard().amount() / ONE) as f64 / share)
            }
            Measure::Length => format!("{amount} cm"),
            Measure::Angle => format!("{amount} deg"),
            Measure::Done => {
                if share >= 1.0 {
                    "done".into()
                } else {
                    "not done".into()
                }
            }
        };
        self.push(
            "tested",
            json!({ "movement": m.id().as_str(), "got": got, "on": on.to_string() }),
        );
    }

    fn push(&mut self, key: &str, entry: Value) {
        if let Some(list) = self.results[key].as_array_mut() {
            list.push(entry);
        }
    }

    /// A night: what hurt is entered, heals; what is not trained is forgotten.
    pub fn night(&mut self, day: i32, on: Day) {
        for (pattern, days) in &mut self.idle {
            *days += 1;
            if *days > 10 {
                for (ix, m) in self.proof.curriculum.movements() {
                    if m.pattern().word() == *pattern {
                        self.strength[ix.at()] = (self.strength[ix.at()] - 0.002).max(0.05);
                    }
                }
            }
        }
        match self.sore {
            Some((part, until)) if day >= until => {
                self.sore = None;
                self.push(
                    "pain",
                    json!({ "part": part.word(), "score": 1, "on": on.to_string() }),
                );
            }
            None if self.throw.chance(2) => {
                let part = self.throw.one(BodyPart::ALL);
                let score = self.throw.one(&[2, 3, 4, 4, 5, 7]);
                let morning = (score + self.throw.between(-2, 2)).clamp(0, 10);
                self.sore = Some((part, day + self.throw.between(5, 16) as i32));
                self.push("pain", json!({ "part": part.word(), "score": score, "next_morning": morning, "on": on.to_string() }));
            }
            _ => {}
        }
        if day >= self.away_until && self.throw.chance(1) {
            self.away_until = day + self.throw.one(&[5, 10, 18, 32]);
        }
    }

    /// Whether a day is one of the client's.
    pub fn is_a_day(&self, on: Day) -> bool {
        let monday = Day::read("2026-11-30").expect("a Monday");
        let names = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
        let name = names[on.days_after(monday).rem_euclid(7) as usize];
        self.results["train"]["days"]
            .as_array()
            .is_some_and(|days| days.iter().any(|d| d == name))
    }

    /// Whether the client comes to train.
    pub fn comes(&mut self, day: i32) -> bool {
        day >= self.away_until && !self.throw.chance(12)
    }

    pub fn plan_retests(&mut self, days: &[Retest]) {
        self.retests = days.to_vec();
    }

    /// The tests of a day, where they are due.
    pub fn retests(&mut self, on: Day) {
        for retest in std::mem::take(&mut self.retests) {
            match retest.on <= on {
                true => retest.tests.into_iter().for_each(|ix| self.test(ix, on)),
                false => self.retests.push(retest),
            }
        }
    }

    /// Does a line, logs it, and grows by it.
    pub fn does(&mut self, work: &Work, on: Day) {
        let m = self.c().movement(work.movement);
        let counted = matches!(m.standard().measure(), Measure::Reps | Measure::Time);
        let most = self.most(work.movement, work.with_kg);
        if work.tests || !counted {
            if work.tests || self.throw.chance(10) {
                self.test(work.movement, on);
            }
        } else {
            self.log(work, most, on);
        }
        self.grow(work, most);
    }

    fn log(&mut self, work: &Work, most: f64, on: Day) {
        let m = self.c().movement(work.movement);
        let form = most * (0.9 + 0.2 * self.throw.share());
        let did: Vec<i64> = (0..work.sets)
            .map(|k| {
                let here = (form - 0.25 * k as f64).floor().max(0.0) as i64;
                let last = k + 1 == work.sets && here >= work.amount + 2;
                here.min(work.amount + if last { 2 } else { 0 })
            })
            .collect();
        let least = did.iter().copied().min().unwrap_or(0);
        let left = (form as i64 - least).clamp(0, 5);
        let mut entry = json!({ "movement": m.id().as_str(), "did": did, "in_reserve": left, "on": on.to_string() });
        if let Some(kg) = work.with_kg.filter(|kg| *kg != 0.0) {
            entry["with"] = json!(format!(
                "{} kg{}",
                kg.abs(),
                if kg < 0.0 { " help" } else { "" }
            ));
        }
        self.push("trained", entry);
    }

    /// Sets near what one can do make stronger, in the movement itself most, in what shares its pattern and stands near less.
    fn grow(&mut self, work: &Work, most: f64) {
        let (c, stages) = (self.c(), &self.proof.resolved.stages);
        let m = c.movement(work.movement);
        self.idle.insert(m.pattern().word(), 0);
        let hard = if work.range {
            0.6
        } else {
            (work.amount as f64 / most.max(1.0)).min(1.0)
        };
        let gain = 0.018 * (work.sets as f64).min(6.0) / 3.0 * hard;
        let rung = stages.of(work.movement).unwrap_or(0);
        for (ix, other) in c.movements() {
            let near = stages.of(ix).unwrap_or(0).abs_diff(rung) <= 2;
            let share = match ix == work.movement {
                true => 1.0,
                false if other.pattern() == m.pattern() && near => 0.35,
                false => continue,
            };
            let room = ((2.2 - self.strength[ix.at()]) / 1.2).max(0.0);
            self.strength[ix.at()] += gain * share * room;
        }
    }

    /// Whether a result meets the goal.
    pub fn has_reached(&self) -> bool {
        let m = self.c().movement(self.goal.movement);
        let amount = (self.goal.target.amount() / ONE) as f64;
        let asked = kilograms(&self.goal.target);
        self.most(self.goal.movement, Some(asked)) >= amount
            && m.standard().measure() == self.goal.target.measure()
    }
}

/// The added load of a target at 72 kg; help below 0.
fn kilograms(target: &Target) -> f64 {
    use rungbook::curriculum::target::Added;
    match target.added() {
        None => 0.0,
        Some(Added::Mass(n)) => n.kilograms(),
        Some(Added::BodyWeight(n)) => n.fraction() * WEIGHT,
    }
}
