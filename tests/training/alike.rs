//! Program, page and reference side by side, and the constructs that the cases hold.

use super::answerer::Answerer;
use super::client::{TODAY, today};
use super::throw::Throw;
use super::told::{difference, plain, told};
use super::{client, facts};
use rungbook::proof::Proofread;
use rungbook::results::Person;
use rungbook::training::{Roster, Rule, Say, train};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// How many smaller files are tried for a message.
const MOST_TRIALS: usize = 60;

/// The others who answer.
pub struct Others {
    pub page: Option<Answerer>,
    pub reference: Option<Answerer>,
}

/// How many cases hold each construct.
#[derive(Default)]
pub struct Counts(BTreeMap<String, usize>);

impl Counts {
    pub fn add(&mut self, what: &str, is: bool) {
        *self.0.entry(what.to_string()).or_default() += usize::from(is);
    }

    /// Fails where a construct is rarer than `least`, in cases.
    pub fn assert_each(&self, least: usize) {
        println!("{:?}", self.0);
        let rare: Vec<_> = self.0.iter().filter(|(_, n)| **n < least).collect();
        assert!(rare.is_empty(), "too rare: {rare:?}");
    }

    /// What a results file and its answer hold.
    pub fn count(&mut self, results: &Value, answer: &Value) {
        for key in [
            "bodyweight",
            "born",
            "goal",
            "train",
            "screened",
            "have",
            "tested",
            "trained",
            "paused",
            "restrict",
            "cleared",
            "pain",
        ] {
            self.add(&format!("file: {key}"), results.get(key).is_some());
            if !["tested"].contains(&key) {
                self.add(&format!("file without {key}"), results.get(key).is_none());
            }
        }
        let born = results["born"].as_i64().map(|born| 2026 - born - 1);
        self.add("under 16", born.is_some_and(|age| age < 16));
        self.add("16 or 17", born.is_some_and(|age| (16..18).contains(&age)));
        self.add("from 60", born.is_some_and(|age| (60..65).contains(&age)));
        self.add("from 65", born.is_some_and(|age| age >= 65));
        let unanswered = results.get("screened").is_none();
        for (name, ages) in [
            ("under 18", 12..18),
            ("18 to 64", 18..65),
            ("from 65", 65..100),
        ] {
            let is = born.is_some_and(|age| ages.contains(&age));
            self.add(&format!("no health answers: {name}"), is && unanswered);
            let refused = answer["refused"] == true;
            let told = refused && is && results["screened"]["says"] != "ask";
            if name != "18 to 64" {
                self.add(&format!("no plan before them: {name}"), told);
            }
        }
        self.add(
            "no health answers: age not known",
            born.is_none() && unanswered,
        );
        for says in ["clear", "light", "ask"] {
            self.add(
                &format!("screened: {says}"),
                results["screened"]["says"] == says,
            );
        }
        self.add("days", results["train"].get("days").is_some());
        let pains = list(&results["pain"]);
        for (name, band) in [("0 to 2", 0..3), ("3 to 5", 3..6), ("above 5", 6..11)] {
            let within = |p: &Value| p["score"].as_i64().is_some_and(|n| band.contains(&n));
            self.add(&format!("pain {name}"), pains.iter().any(within));
        }
        let worse = |p: &Value| p["next_morning"].as_i64() > p["score"].as_i64();
        self.add("pain worse next morning", pains.iter().any(worse));
        let same = |p: &Value, q: &Value| (&p["part"], &p["on"]) == (&q["part"], &q["on"]);
        let mut pairs = pains.windows(2);
        self.add("pain twice a day", pairs.any(|two| same(&two[0], &two[1])));
        self.add(
            "pain with a sign",
            pains.iter().any(|p| p.get("signs").is_some()),
        );
        let log = list(&results["trained"]);
        let missed = |t: &Value| {
            let did = list(&t["did"]);
            did.iter().any(|n| n.as_i64() < did[0].as_i64())
                && t["in_reserve"].as_i64().unwrap_or(0) == 0
        };
        self.add("log: missed", log.iter().any(missed));
        self.add(
            "log: reserve",
            log.iter().any(|t| t.get("in_reserve").is_some()),
        );
        self.add(
            "log: weight",
            log.iter()
                .any(|t| t["with"].as_str().is_some_and(|w| !w.contains("help"))),
        );
        self.add(
            "log: help",
            log.iter()
                .any(|t| t["with"].as_str().is_some_and(|w| w.contains("help"))),
        );
        let newest = log.iter().filter_map(|t| t["on"].as_str()).max();
        let off = newest
            .map(|day| today().days_after(rungbook::curriculum::Day::read(day).expect("a day")));
        for (name, band) in [
            ("14 to 27", 14..28),
            ("28 to 55", 28..56),
            ("from 56", 56..400),
        ] {
            self.add(
                &format!("{name} days off"),
                off.is_some_and(|days| band.contains(&days)),
            );
        }
        for key in ["part", "class", "pattern", "movement"] {
            let has = |list: &[Value]| list.iter().any(|e| e.get(key).is_some());
            self.add(
                &format!("paused or restricted: {key}"),
                has(list(&results["paused"])) || has(list(&results["restrict"])),
            );
        }
        self.answer(answer);
    }

    fn answer(&mut self, answer: &Value) {
        self.add("refused", answer["refused"] == true);
        self.add("no goal chosen", answer["goal"]["chosen"] == false);
        self.add("reached", answer["goal"]["reached"] == true);
        self.add("a condition", answer["conditions"].as_i64() > Some(0));
        self.add("a limiter", answer["limiter"].is_object());
        let sessions = list(&answer["sessions"]);
        let lines: Vec<&Value> = sessions.iter().flat_map(|s| list(&s["lines"])).collect();
        let mut any =
            |what: &str, is: &dyn Fn(&Value) -> bool| self.add(what, lines.iter().any(|l| is(l)));
        for rule in Rule::ALL {
            any(&format!("rule: {}", rule.name()), &|l| {
                l["rule"] == rule.name()
            });
        }
        for block in ["practice", "strength", "kept up", "range"] {
            any(&format!("block: {block}"), &|l| l["block"] == block);
        }
        any("line: weight", &|l| {
            l["with_kg"].as_f64().is_some_and(|kg| kg > 0.0)
        });
        any("line: help", &|l| {
            l["with_kg"].as_f64().is_some_and(|kg| kg < 0.0)
        });
        any("line: each side", &|l| l["side"] == "each");
        any("line: weaker first", &|l| l["side"] == "weaker first");
        any("line: left has one set more", &|l| l["weaker"] == "left");
        any("line: right has one set more", &|l| l["weaker"] == "right");
        any("line: seconds of each rep", &|l| {
            !l["seconds_each"].is_null()
        });
        any("line: a tempo", &|l| !l["tempo"].is_null());
        any("line: held at an end", &|l| !l["hold"].is_null());
        any("line: a rest of its own", &|l| l["rest_s"] == 45);
        any("line: a hold", &|l| {
            l["unit"] == "s" && l["block"] == "strength"
        });
        for rest in [30, 60, 120, 180] {
            any(&format!("rest {rest} s"), &|l| l["rest_s"] == rest);
        }
        let mut of =
            |what: &str, is: &dyn Fn(&Value) -> bool| self.add(what, sessions.iter().any(is));
        of("a lighter session", &|s| s["lighter"] == true);
        of("a named session", &|s| s["name"] != "");
        of("left out", &|s| !list(&s["left_out"]).is_empty());
        of("no line", &|s| list(&s["lines"]).is_empty());
        self.add("no retest", answer["retest"].is_null());
        self.add(
            "a retest with tests",
            !list(&answer["retest"]["tests"]).is_empty(),
        );
    }
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

/// One client of a curriculum, asked of all.
///
/// # Errors
/// The first difference.
pub fn compare(
    proof: &Proofread,
    tables: &Value,
    facts: &Value,
    results: &Value,
    person: &Person,
    others: &mut Others,
) -> Result<Value, String> {
    let roster = Roster::new(&proof.curriculum, &proof.resolved.stages);
    let say = Say::of(&roster);
    let whole = told(&say, &train(&roster, person, None, today()), person);
    if let Some(page) = &mut others.page {
        let question =
            json!({ "tables": tables, "results": results, "today": TODAY, "train": true });
        let mut theirs = page.ask(&question);
        if let Some(theirs) = theirs.as_object_mut() {
            theirs.retain(|key, _| whole.get(key).is_some());
        }
        if let Some(found) = difference(&whole, &theirs, "the page") {
            return Err(found);
        }
    }
    let ours = plain(&roster, whole);
    if let Some(reference) = &mut others.reference {
        let routes = facts::routes(proof, person, today());
        let case =
            json!({ "curriculum": facts, "results": results, "today": TODAY, "routes": routes });
        let theirs = reference.ask(&case);
        if let Some(found) = difference(&ours, &theirs, "the reference") {
            return Err(found);
        }
    }
    Ok(ours)
}

/// A results file with less in it that still fails, for the message: entries and keys are taken out while they can be.
pub fn reduced(results: &Value, fails: &mut dyn FnMut(&Value) -> bool) -> Value {
    let mut smallest = results.clone();
    let mut left = MOST_TRIALS;
    let mut fails = |less: &Value| {
        left = left.saturating_sub(1);
        left > 0 && fails(less)
    };
    for key in ["tested", "trained", "paused", "restrict", "cleared", "pain"] {
        let mut at = 0;
        while at < list(&smallest[key]).len() {
            let mut less = smallest.clone();
            if let Some(entries) = less[key].as_array_mut() {
                entries.remove(at);
            }
            match fails(&less) {
                true => smallest = less,
                false => at += 1,
            }
        }
    }
    for key in ["born", "train", "screened", "have", "bodyweight"] {
        let mut less = smallest.clone();
        let taken = less.as_object_mut().and_then(|o| o.remove(key));
        if taken.is_some() && fails(&less) {
            smallest = less;
        }
    }
    smallest
}

/// The results of one throw.
pub fn client_of(throw: &mut Throw, proof: &Proofread) -> Value {
    client::results(throw, &proof.curriculum)
}
