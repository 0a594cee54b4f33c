//! Clients whose later days are demanded: what the calendar alone may not bring back, and what has to come. Each file says in words who
//! it is and what is demanded; here the demands are checked.

use super::coach::{Case, Line};
use rungbook::curriculum::Day;
use rungbook::curriculum::words::{BodyPart, Word};
use std::collections::BTreeMap;

fn is(line: &Line<'_>, id: &str) -> bool {
    line.movement.id().as_str() == id
}

fn is_hard(line: &Line<'_>) -> bool {
    ["strength", "kept up"].contains(&line.says("block"))
}

/// Stresses a part, and not only lightly.
fn bears_on(line: &Line<'_>, part: BodyPart) -> bool {
    let mut of = line.movement.stresses().iter().filter(|s| s.part == part);
    of.any(|s| s.how.map(Word::word) != Some("light"))
}

impl Case<'_> {
    /// What each client's comment demands.
    pub fn demands_of_later_days(&self) {
        let all = self.lines();
        let conditions = self.answer["conditions"].to_string();
        match self.name.as_str() {
            "later-elbow-four" => {
                let sore = |l: &&Line<'_>| is_hard(l) && bears_on(l, BodyPart::Elbow);
                let sore: Vec<Line<'_>> = all.into_iter().filter(|l| sore(&l)).collect();
                self.all(&sore, "light and easier to the last week", &|l| {
                    l.says("rule") == "pain" && !l.movement.guarded() && l.number("sets") <= 2.0
                });
                self.all(&sore, "no step is promised", &|l| {
                    l.says("then") == "the same again"
                });
                self.same_every_week(&sore);
                assert!(
                    conditions.contains("newer entry of 2 or less"),
                    "{}: {conditions}",
                    self.name
                );
            }
            "later-elbow-better" => {
                let sore = |l: &&Line<'_>| is_hard(l) && bears_on(l, BodyPart::Elbow);
                let sore: Vec<Line<'_>> = all.into_iter().filter(|l| sore(&l)).collect();
                self.all(&sore, "by steps", &|l| match l.week() {
                    1 | 2 => l.says("rule") == "after a pause" && !l.movement.guarded(),
                    3 => l.says("rule") == "after a pause" || l.session["lighter"] == true,
                    _ => l.says("rule") != "after a pause",
                });
                self.some(&sore, "as it was", &|l| {
                    is(l, "pull-up") && l.week() == 4 && l.number("amount") == 6.0
                });
                assert!(!conditions.contains("newer entry"), "{}", self.name);
            }
            "later-wrist-better" => {
                let grips = |l: &&Line<'_>| is_hard(l) && l.movement.stresses_part(BodyPart::Wrist);
                let grips: Vec<Line<'_>> = all.into_iter().filter(|l| grips(&l)).collect();
                let is_early = |l: &Line<'_>| l.session["on"].as_str() <= Some("2027-01-01");
                self.all(&grips, "no step for two weeks", &|l| {
                    !is_early(l) || l.says("rule") == "pain" && l.says("then") == "the same again"
                });
                self.some(&grips, "what bears on it lightly, early", &|l| {
                    is(l, "pull-up") && is_early(l)
                });
                self.some(&grips, "then on", &|l| {
                    is(l, "pull-up") && !is_early(l) && l.says("then").contains("a little more")
                });
            }
            "later-neck-numb" => {
                let known = |l: &Line<'_>| !l.is_new();
                let known: Vec<Line<'_>> = all.into_iter().filter(known).collect();
                self.same_every_week(&known);
                assert!(conditions.contains("clinician"), "{}", self.name);
            }
            "later-off-twenty" => {
                for week in [2, 3, 4] {
                    self.stands("pull-up", week, 2);
                }
                self.some(&self.of_week(2), "first tries too", &|l| l.is_new());
                self.never_above_before();
                self.comes_back("pull-up", &[(1, 5), (2, 6), (3, 7), (4, 7)]);
                self.some(&self.of_week(2), "three left", &|l| {
                    is(l, "pull-up") && l.number("in_reserve") == 3.0
                });
            }
            "later-weighted-known" => {
                for week in [1, 2, 3, 4] {
                    self.stands("weighted-pull-up-light", week, 2);
                }
                let most = |week| self.most("weighted-pull-up-light", "with_kg", week);
                assert!(most(3) > most(1), "{}: a plate more", self.name);
            }
            "later-dip-twice-done" => {
                assert_eq!(self.most("weighted-dip", "with_kg", 1), 18.75);
                assert_eq!(self.most("weighted-dip", "with_kg", 2), 20.0);
                assert_eq!(self.most("weighted-dip", "with_kg", 4), 21.25);
                // The plan goes on after its lighter week: two days before its next session.
                let on = |at: &serde_json::Value| at["on"].as_str().and_then(Day::read);
                let test = on(&self.answer["retest"]).expect("a test");
                let after = |s: &serde_json::Value| on(s).map_or(0, |d| d.days_after(test));
                let next = self.sessions().iter().map(after).find(|days| *days >= 0);
                assert_eq!(next, Some(2), "{}: {test}", self.name);
                let dips = |l: &Line<'_>| is(l, "weighted-dip");
                self.all(&all, "leaves one at least", &|l| {
                    !dips(l) || l.number("in_reserve") >= 1.0
                });
                self.all(&all, "says what a step hangs on", &|l| {
                    !dips(l) || (l.number("with_kg") > 18.75) == l.says("why").contains("if all")
                });
            }
            "later-dips-to-failure" => {
                let mut dips = all.iter().filter(|l| is(l, "bar-dip"));
                let first = dips.next().expect("dips");
                let short = |l: &Line<'_>| l.says("why").contains("fell short");
                assert!(
                    short(first) && first.number("sets") <= 3.0,
                    "{}",
                    first.line
                );
                assert!(
                    dips.clone().count() > 1 && !dips.any(short),
                    "{}",
                    self.name
                );
            }
            "later-dip-unknown-weight" => {
                // A plate of 1.25 kg is more than 5 % of the 10 kg that are known to move.
                let dips = |l: &Line<'_>| is(l, "weighted-dip-light");
                self.some(&self.of_week(3), "dips with weight", &dips);
                self.all(&all, "no step of load", &|l| {
                    !dips(l) || l.number("with_kg") == 10.0
                });
            }
            "later-tests-what-stood" => {
                let tests = |id: &str| self.retests().iter().any(|m| m.id().as_str() == id);
                assert!(!tests("push-up-kneeling"), "{}", self.name);
            }
            "later-two-squats" => {
                let tests_again = |id: &str| self.retests().iter().any(|m| m.id().as_str() == id);
                for week in [1, 2, 3, 4] {
                    self.stands("step-up", week, 1);
                }
                assert!(tests_again("step-up"));
            }
            "later-off-eighty" => {
                let tried = |l: &Line<'_>| l.says("rule") == "until it is tested";
                let tried: Vec<Line<'_>> = all.into_iter().filter(tried).collect();
                self.some(&tried, "tried once", &|l| is(l, "squat"));
                self.all(&tried, "by its number, three sets at most", &|l| {
                    l.number("sets") <= 3.0 && l.says("why").contains("by its number")
                });
            }
            "later-back-seven" => {
                for session in self.sessions() {
                    let lines = session["lines"].as_array().map_or(&[][..], Vec::as_slice);
                    let only_range = lines.iter().all(|l| l["block"] == "range");
                    assert!(lines.len() > 1 && !only_range, "{}: {session:#}", self.name);
                    let hard =
                        |l: &serde_json::Value| l["block"] == "strength" || l["block"] == "kept up";
                    assert!(lines.iter().any(hard), "{}: {session:#}", self.name);
                }
            }
            other => panic!("{other}: nothing is demanded of it"),
        }
    }

    /// What is tested again was shown, or stood twice in that form, in a plan whose lighter week is its first once.
    pub fn tests_what_stood(&self) {
        let on = self.answer["retest"]["on"].as_str().unwrap_or_default();
        for test in self.retests() {
            let lines = self.lines().into_iter();
            let of = lines.filter(|l| l.movement.id() == test.id());
            let of: Vec<Line<'_>> = of.filter(|l| l.session["on"].as_str() < Some(on)).collect();
            let enough = of.len() >= 2
                || of
                    .iter()
                    .any(|l| l.says("rule") == "show it" || l.session["lighter"] == true);
            assert!(
                enough,
                "{}: {} is tested and stood {} times",
                self.name,
                test.id(),
                of.len()
            );
        }
    }

    /// What is tested has no line on the day of its test and the next: a test counts for the 48 hours. Common practice, no source.
    pub fn tests_stand_alone(&self) {
        let day = |of: &serde_json::Value| Day::read(of.as_str()?);
        let first = &self.answer["retest"];
        for test in [first, &first["later"]] {
            let Some(on) = day(&test["on"]) else { continue };
            let tests = test["tests"].as_array().expect("a list");
            for line in self.lines() {
                let after = day(&line.session["on"]).map(|d| d.days_after(on));
                let is_tested = tests.contains(&line.line["movement"]);
                let near = matches!(after, Some(0 | 1));
                assert!(!(is_tested && near), "{}: {}", self.name, line.line);
            }
        }
    }

    /// The most that a movement's lines ask in a week.
    fn most(&self, id: &str, what: &str, week: i64) -> f64 {
        let of = self.of_week(week).into_iter().filter(|l| is(l, id));
        of.map(|l| l.number(what)).fold(0.0, f64::max)
    }

    /// A movement stands in so many sessions of a week.
    fn stands(&self, id: &str, week: i64, times: usize) {
        let found = self.of_week(week).iter().filter(|l| is(l, id)).count();
        assert!(
            found >= times,
            "{}: {id} stands {found} times in week {week}",
            self.name
        );
    }

    /// No line asks more, in sets or in one set, than the first time it stood.
    fn same_every_week(&self, lines: &[Line<'_>]) {
        let mut first: BTreeMap<&str, (f64, f64)> = BTreeMap::new();
        for line in lines {
            let asks = (line.number("sets"), line.number("amount"));
            let (sets, amount) = *first.entry(line.movement.id().as_str()).or_insert(asks);
            assert!(
                asks.0 <= sets && asks.1 <= amount,
                "{}: more than {sets} x {amount}: {}",
                self.name,
                line.line
            );
        }
    }
}
