//! Clients, and what a coach demands of their sessions. Each file says in words who it is and what is demanded; here the
//! demands are checked.

use super::client::today;
use super::told::told;
use rungbook::curriculum::words::{BodyPart, Phase, Word};
use rungbook::curriculum::{Day, Movement};
use rungbook::proof::Proofread;
use rungbook::results::{self, Person};
use rungbook::source::Snapshot;
use rungbook::training::{Roster, Say, train};
use serde_json::Value;

/// A client with the answer that it gets.
pub struct Case<'a> {
    pub name: String,
    pub proof: &'a Proofread,
    pub person: Person,
    pub results: Value,
    pub answer: Value,
    pub today: Day,
}

/// Every client of the folder, in the order of the names.
pub fn cases(proof: &Proofread) -> Vec<Case<'_>> {
    let folder = super::answerer::root().join("tests/training/clients");
    let entries = std::fs::read_dir(folder).expect("the clients");
    let mut paths: Vec<_> = entries.map(|e| e.expect("a file").path()).collect();
    paths.sort();
    let roster = Roster::new(&proof.curriculum, &proof.resolved.stages);
    let say = Say::of(&roster);
    let one = |path: std::path::PathBuf| {
        let text = std::fs::read_to_string(&path).expect("a client");
        let (mut people, found) = results::read(
            &Snapshot::of_texts([("c.yaml", text.as_str())]),
            &proof.curriculum,
            today(),
        );
        let messages: Vec<_> = found.iter().map(|f| &f.message).collect();
        assert!(!found.has_errors(), "{}: {messages:?}", path.display());
        let person = people.remove(0);
        assert!(
            person.aside.is_empty(),
            "{}: {:?}",
            path.display(),
            person.aside
        );
        let answer = told(&say, &train(&roster, &person, None, today()), &person);
        let name = path
            .file_stem()
            .expect("a name")
            .to_string_lossy()
            .into_owned();
        let results = serde_yaml::from_str(&text).expect("YAML");
        Case {
            name,
            proof,
            person,
            results,
            answer,
            today: today(),
        }
    };
    paths.into_iter().map(one).collect()
}

/// A line with its session.
pub struct Line<'a> {
    pub session: &'a Value,
    pub line: &'a Value,
    pub movement: &'a Movement,
}

impl Line<'_> {
    pub fn says(&self, key: &str) -> &str {
        self.line[key].as_str().unwrap_or("")
    }

    pub fn number(&self, key: &str) -> f64 {
        self.line[key].as_f64().unwrap_or(0.0)
    }

    pub fn day(&self) -> Day {
        Day::read(self.session["on"].as_str().expect("a day")).expect("a day")
    }

    pub fn week(&self) -> i64 {
        self.session["week"].as_i64().expect("a number")
    }

    pub fn on(&self, part: &str) -> bool {
        let part = BodyPart::read(part).expect("a part");
        self.movement.stresses_part(part)
    }

    fn lowering(&self) -> bool {
        self.movement.phase() == Some(Phase::Lowering)
    }

    pub fn is_new(&self) -> bool {
        ["first try", "until it is tested"].contains(&self.says("rule"))
    }

    pub fn pattern(&self) -> &'static str {
        self.movement.pattern().word()
    }
}

impl Case<'_> {
    pub fn day(&self) -> Day {
        self.today
    }

    pub fn sessions(&self) -> &[Value] {
        self.answer["sessions"]
            .as_array()
            .map_or(&[], Vec::as_slice)
    }

    pub fn lines<'a>(&'a self) -> Vec<Line<'a>> {
        let c = &self.proof.curriculum;
        let of = |session: &'a Value| {
            let lines: &Value = &session["lines"];
            lines.as_array().expect("lines").iter().map(move |line| {
                let id = line["movement"].as_str().expect("an id");
                let ix = c.find_movement(id).expect("a movement");
                Line {
                    session,
                    line,
                    movement: c.movement(ix),
                }
            })
        };
        self.sessions().iter().flat_map(of).collect()
    }

    pub fn of_week(&self, week: i64) -> Vec<Line<'_>> {
        self.lines()
            .into_iter()
            .filter(|l| l.week() == week)
            .collect()
    }

    fn bears(&self, movement: &Movement, class: &str) -> bool {
        let book = self.proof.curriculum.cautions();
        movement
            .cautions()
            .iter()
            .any(|ix| book.class(*ix).id == class)
    }

    pub fn retests(&self) -> Vec<&Movement> {
        let c = &self.proof.curriculum;
        let retest = &self.answer["retest"];
        let days = [&retest["tests"], &retest["later"]["tests"]];
        let ids = days.into_iter().filter_map(|day| day.as_array()).flatten();
        ids.map(|id| {
            c.movement(
                c.find_movement(id.as_str().expect("an id"))
                    .expect("a movement"),
            )
        })
        .collect()
    }

    /// No line and no test of a kind.
    pub fn never(&self, what: &str, is: &dyn Fn(&Movement) -> bool) {
        for line in self.lines() {
            assert!(
                !is(line.movement),
                "{}: {what}: {} on {}",
                self.name,
                line.movement.id(),
                line.day()
            );
        }
        for test in self.retests() {
            assert!(
                !is(test),
                "{}: {what}: {} is to be tested",
                self.name,
                test.id()
            );
        }
    }

    pub fn all(&self, lines: &[Line<'_>], what: &str, is: &dyn Fn(&Line<'_>) -> bool) {
        for line in lines {
            assert!(is(line), "{}: {what}: {}", self.name, line.line);
        }
    }

    pub fn some(&self, lines: &[Line<'_>], what: &str, is: &dyn Fn(&Line<'_>) -> bool) {
        assert!(
            lines.iter().any(is),
            "{}: {what}: {:#}",
            self.name,
            self.sessions().first().unwrap_or(&Value::Null)
        );
    }

    /// Lines of these patterns stand in the first week.
    pub fn trains(&self, patterns: &[&str]) {
        for pattern in patterns {
            self.some(&self.of_week(1), pattern, &|l| {
                l.pattern().contains(pattern)
            });
        }
    }

    /// In every session, first and later.
    pub fn every_session(&self, what: &str, is: &dyn Fn(&Line<'_>) -> bool) {
        for session in self.sessions() {
            let on = session["on"].as_str();
            let there = self
                .lines()
                .into_iter()
                .any(|l| l.session["on"].as_str() == on && is(&l));
            assert!(there, "{}: {what} on {on:?}: {session:#}", self.name);
        }
    }

    pub fn limiter(&self) -> &str {
        self.answer["limiter"]["movement"].as_str().unwrap_or("")
    }

    pub fn first_session(&self) -> Vec<Line<'_>> {
        let on = self.sessions()[0]["on"].as_str();
        self.lines()
            .into_iter()
            .filter(|l| l.session["on"].as_str() == on)
            .collect()
    }

    pub fn left_out(&self, id: &str) -> bool {
        let named = |s: &Value| {
            s["left_out"]
                .as_array()
                .is_some_and(|l| l.iter().any(|l| l["movement"] == id))
        };
        self.sessions().iter().all(named)
    }

    /// What each client's comment demands.
    pub fn demands(&self) {
        self.demands_of_today();
        self.tests_what_stood();
        self.tests_stand_alone();
        let (all, week) = (self.lines(), |n| self.of_week(n));
        match self.name.as_str() {
            "01-never-trained" => {
                self.never("guarded or lowering", &|m| {
                    m.guarded() || m.phase() == Some(Phase::Lowering)
                });
                let first = self.first_session();
                self.all(&first, "a first try or range, two sets", &|l| {
                    l.says("block") == "range"
                        || l.says("rule") == "first try" && l.number("sets") == 2.0
                });
                let tries = first
                    .iter()
                    .filter(|l| l.says("rule") == "first try")
                    .count();
                assert!(
                    (1..=4).contains(&tries),
                    "{}: {tries} first tries",
                    self.name
                );
                self.all(&first, "says what follows", &|l| !l.says("then").is_empty());
            }
            "02-fourteen" => {
                assert!(
                    !self.answer["conditions"]
                        .as_array()
                        .expect("a list")
                        .is_empty(),
                    "the coach is there"
                );
                self.never("loaded", &|m| m.loaded());
                self.all(&all, "no single", &|l| l.says("rule") != "singles");
                self.all(&all, "short of the last rep", &|l| {
                    l.says("block") == "range"
                        || l.line["in_reserve"].is_null()
                        || l.number("in_reserve") >= 2.0
                });
            }
            "03-fifteen-wants-weight" => {
                self.some(&all, "works with weight", &|l| l.movement.loaded());
                self.all(&all, "six reps or more with weight", &|l| {
                    !l.movement.loaded() || l.number("amount") >= 6.0 && l.says("rule") != "show it"
                });
                self.never("a lowering with weight", &|m| {
                    m.loaded() && m.phase() == Some(Phase::Lowering)
                });
                self.all(&all, "no single", &|l| l.says("rule") != "singles");
                assert!(
                    self.retests().iter().all(|m| !m.loaded()),
                    "{}: no test with weight",
                    self.name
                );
            }
            "04-sixteen-sore-wrist" => {
                // Every pull holds on to something: it waits with the wrist.
                self.never("on the wrist", &|m| m.stresses_part(BodyPart::Wrist));
                self.trains(&["squat", "core"]);
            }
            "05-strong-thirty-five" => {
                self.every_session("the limiter", &|l| {
                    l.line["toward"]["movement"] == self.limiter()
                });
                assert!(
                    self.limiter().starts_with("turnover"),
                    "{}: {}",
                    self.name,
                    self.limiter()
                );
                self.all(&all, "few slow reps", &|l| {
                    !l.lowering() || l.number("amount") <= 5.0
                });
                self.trains(&["pull", "push", "squat", "core"]);
            }
            "06-seventy" => {
                self.every_session("stands on one leg", &|l| l.pattern() == "balance");
                let full = |l: &&Line<'_>| {
                    l.says("block") == "kept up" && l.session["lighter"] == false && !l.is_new()
                };
                let kept: Vec<Line<'_>> = week(1).into_iter().filter(|l| full(&l)).collect();
                self.some(&kept, "three sets where there is time", &|l| {
                    l.number("sets") == 3.0
                });
                self.never("guarded", &Movement::guarded);
            }
            "07-pregnant" => {
                for class in [
                    "inverted",
                    "fall-height",
                    "breath-holding",
                    "neck-load",
                    "supine",
                    "prone",
                ] {
                    self.never(class, &|m| self.bears(m, class));
                }
                self.trains(&["pull", "push", "squat"]);
            }
            "08-blood-pressure" => {
                for class in ["inverted", "part-inverted", "breath-holding"] {
                    self.never(class, &|m| self.bears(m, class));
                }
                self.trains(&["pull", "push", "squat", "core"]);
                let first = self.first_session();
                let out = self.sessions()[0]["left_out"]
                    .as_array()
                    .expect("a list")
                    .len();
                let instead = first
                    .iter()
                    .filter(|l| !l.line["instead_of"].is_null())
                    .count();
                assert!(
                    out + instead > 0,
                    "{}: what is left out is named",
                    self.name
                );
            }
            "09-pain-two" => {
                self.all(&all, "goes on", &|l| l.says("rule") != "pain");
                self.some(&all, "on the shoulder", &|l| l.on("shoulder"));
                let warm = self.sessions()[0]["warm_up"].to_string();
                assert!(warm.contains("shoulder"), "{}: {warm}", self.name);
            }
            "10-pain-four" => {
                let sore: Vec<Line<'_>> = week(1)
                    .into_iter()
                    .filter(|l| l.on("shoulder") && l.says("block") != "range")
                    .collect();
                self.all(&sore, "says pain, nothing new", &|l| {
                    l.says("rule") == "pain"
                });
                self.all(&sore, "less and easier", &|l| {
                    l.movement.id().as_str() != "pull-up" && l.number("sets") <= 3.0
                });
                self.all(&sore, "no dips, they are heavy on it", &|l| {
                    l.movement.id().as_str() != "bar-dip"
                });
                self.trains(&["pull"]);
            }
            "11-pain-four-worse" => {
                let two_weeks = |l: &Line<'_>| {
                    l.week() <= 2
                        && l.on("shoulder")
                        && l.says("block") != "range"
                        && l.day() <= Day::read("2027-01-03").expect("a day")
                };
                let sore: Vec<Line<'_>> =
                    self.lines().into_iter().filter(|l| two_weeks(l)).collect();
                self.all(&sore, "light and easier", &|l| {
                    l.says("rule") == "pain" && !l.lowering() && !l.movement.guarded()
                });
                self.all(&sore, "no free pull-up", &|l| {
                    l.movement.id().as_str() != "pull-up"
                });
                self.all(&sore, "half the sets", &|l| l.number("sets") <= 3.0);
                self.some(&week(1), "the core as it was", &|l| {
                    l.pattern() == "core" && l.says("rule") != "pain"
                });
            }
            "12-pain-seven" => {
                self.never("on the shoulder", &|m| m.stresses_part(BodyPart::Shoulder));
                self.trains(&["squat", "core"]);
                assert!(
                    self.left_out("pull-up"),
                    "{}: the pull-up is named",
                    self.name
                );
            }
            "13-numb-elbow" => {
                self.never("on the elbow", &|m| m.stresses_part(BodyPart::Elbow));
                self.trains(&["squat", "core"]);
            }
            "14-off-ten-days" => self.all(&all, "no break", &|l| l.says("rule") != "time off"),
            "15-off-twenty-days" => {
                let trained = [
                    "vertical pull",
                    "vertical push",
                    "horizontal push",
                    "squat",
                    "horizontal pull",
                ];
                let back: Vec<Line<'_>> = week(1)
                    .into_iter()
                    .filter(|l| trained.contains(&l.pattern()))
                    .collect();
                self.all(&back, "light", &|l| {
                    l.says("rule") == "time off"
                        && l.number("sets") <= 3.0
                        && !l.lowering()
                        && !l.is_new()
                });
                // Not as before at once: more careful than it was demanded first.
                self.is_on_the_way(2, &trained);
                self.all(&week(3), "itself", &|l| l.says("rule") != "time off");
                self.never_above_before();
                self.comes_back("push-up", &[(1, 9), (2, 10), (3, 12)]);
            }
            "16-off-forty-days" => {
                let trained = [
                    "vertical pull",
                    "vertical push",
                    "horizontal push",
                    "squat",
                    "horizontal pull",
                ];
                for n in [1, 2] {
                    let back: Vec<Line<'_>> = week(n)
                        .into_iter()
                        .filter(|l| trained.contains(&l.pattern()))
                        .collect();
                    self.all(&back, "light and easier", &|l| {
                        l.says("rule") == "time off" && !l.lowering() && !l.movement.guarded()
                    });
                    self.all(&back, "not the dip", &|l| {
                        l.movement.id().as_str() != "bar-dip"
                    });
                }
                // Not as before at once: itself, as little as in the two weeks before, and in the lighter week no more.
                self.is_on_the_way(3, &trained);
                self.is_on_the_way(4, &trained);
                self.never_above_before();
                self.comes_back("push-up", &[(3, 9), (4, 9)]);
            }
            "17-off-eighty-days" => {
                let trained = ["vertical pull", "vertical push", "horizontal push"];
                let back: Vec<Line<'_>> = week(1)
                    .into_iter()
                    .filter(|l| trained.contains(&l.pattern()))
                    .collect();
                self.some(&back, "starts anew", &|l| l.says("rule") == "first try");
                self.all(&back, "tried anew, plain, no lowering", &|l| {
                    l.is_new() && !l.lowering() && !l.movement.guarded()
                });
            }
            "18-sides-apart" => {
                let low = |l: &Line<'_>| l.line["toward"]["movement"] == "single-leg-squat-low-box";
                self.some(&all, "left first, one more", &|l| {
                    low(l) && l.says("side") == "weaker first" && l.says("weaker") == "left"
                });
                self.all(&all, "the left one’s number", &|l| {
                    l.movement.id().as_str() != "single-leg-squat-low-box"
                        || l.says("rule") == "show it"
                        || l.number("amount") <= 3.0
                });
            }
            "19-to-failure-yesterday" => {
                let today = self.first_session();
                self.all(&today, "no pulling, no pushing", &|l| {
                    let word = l.pattern();
                    !word.contains("pull") && !word.contains("push")
                });
                self.all(&all, "no more than was done", &|l| {
                    l.movement.id().as_str() != "pull-up" || l.number("amount") <= 5.0
                });
                self.some(&all, "what training shows", &|l| {
                    l.says("rule") == "what training shows"
                });
            }
            "20-twice-thirty-minutes" => {
                for session in self.sessions() {
                    assert!(
                        session["minutes"].as_i64() <= Some(30),
                        "{}: {session:#}",
                        self.name
                    );
                    let day = Day::read(session["on"].as_str().expect("a day")).expect("a day");
                    let since = day.days_after(Day::read("2026-12-22").expect("a Tuesday")) % 7;
                    assert!(
                        since == 0 || since == 3,
                        "{}: {day} is no Tuesday and no Friday",
                        self.name
                    );
                }
                self.every_session("the limiter", &|l| {
                    l.line["toward"]["movement"] == self.limiter()
                        || l.session["week"].as_i64() > Some(1)
                });
                self.trains(&["pull", "push"]);
            }
            "21-nothing-but-a-floor" => {
                let only_measures = |words: &Vec<String>| {
                    words
                        .iter()
                        .any(|w| ["tape", "phone"].contains(&w.as_str()))
                };
                self.never("equipment", &|m| !m.equipment().iter().all(only_measures));
                self.trains(&["push", "squat", "core"]);
                assert!(
                    self.left_out("pull-up"),
                    "{}: the pull-up is named",
                    self.name
                );
            }
            "22-weighted-pull-up" => {
                let loaded: Vec<Line<'_>> = self
                    .lines()
                    .into_iter()
                    .filter(|l| l.movement.loaded())
                    .collect();
                self.some(&loaded, "weight", &|l| l.number("with_kg") >= 1.25);
                self.all(
                    &loaded,
                    "says its load, a tenth or a plate over 15 at most",
                    &|l| {
                        l.number("with_kg") > 0.0
                            && (l.says("rule") == "show it" || l.number("with_kg") <= 16.5)
                    },
                );
                self.all(&loaded, "three minutes", &|l| {
                    l.number("rest_s") == 180.0 || l.pattern() == "exit"
                });
            }
            "23-band" => {
                self.some(&all, "the band", &|l| {
                    l.movement.id().as_str() == "pull-up-band"
                });
                self.all(&all, "help is said, never more than on record", &|l| {
                    l.movement.id().as_str() != "pull-up-band"
                        || (-20.0..0.0).contains(&l.number("with_kg"))
                });
                self.all(&all, "no free pull-up", &|l| {
                    l.movement.id().as_str() != "pull-up"
                });
                self.trains(&["horizontal pull"]);
            }
            "24-front-lever" => {
                let straight =
                    |l: &Line<'_>| l.movement.arms().is_some_and(|a| a.word() == "straight");
                let strength: Vec<Line<'_>> = self
                    .first_session()
                    .into_iter()
                    .filter(|l| l.says("block") == "strength")
                    .collect();
                assert!(
                    straight(&strength[0]) || strength[0].movement.inverted(),
                    "{}: straight arms first",
                    self.name
                );
                let sets: f64 = week(1)
                    .iter()
                    .filter(|l| {
                        l.says("block") == "strength"
                            && straight(l)
                            && l.pattern() == "horizontal pull"
                    })
                    .map(|l| l.number("sets"))
                    .sum();
                assert!(
                    (1.0..=10.0).contains(&sets),
                    "{}: {sets} sets of straight-arm pulling",
                    self.name
                );
                self.some(&week(1), "bent-arm pulling", &|l| {
                    l.movement.id().as_str() == "pull-up"
                });
            }
            "25-handstand" => {
                let practice: Vec<Line<'_>> = self
                    .first_session()
                    .into_iter()
                    .filter(|l| l.says("block") == "practice")
                    .collect();
                assert!(!practice.is_empty(), "{}: practice", self.name);
                let minutes: f64 = practice.iter().map(|l| l.number("minutes")).sum();
                assert!(
                    minutes <= 15.0,
                    "{}: {minutes} minutes of practice",
                    self.name
                );
                let exits_first = practice
                    .windows(2)
                    .all(|w| w[0].pattern() == "exit" || w[1].pattern() != "exit");
                assert!(
                    exits_first && self.first_session()[0].says("block") == "practice",
                    "{}: the ways out first",
                    self.name
                );
                let warm = self.sessions()[0]["warm_up"].to_string();
                assert!(
                    warm.contains("flat hands"),
                    "{}: warm wrists: {warm}",
                    self.name
                );
            }
            "26-one-rep-short" => {
                let shows: Vec<Line<'_>> = self
                    .lines()
                    .into_iter()
                    .filter(|l| l.says("rule") == "show it")
                    .collect();
                assert_eq!(shows.len(), 1, "{}: once", self.name);
                assert_eq!(shows[0].movement.id().as_str(), "ring-muscle-up");
                assert_eq!(self.limiter(), "ring-muscle-up");
                self.trains(&["vertical push", "squat", "core"]);
            }
            "27-stiff-office" => {
                self.every_session("the knees to the wall", &|l| {
                    l.movement.id().as_str() == "knee-to-wall"
                });
                self.never("a single-leg squat", &|m| {
                    m.id().as_str().starts_with("single-leg-squat")
                });
                self.trains(&["squat", "pull", "push"]);
            }
            "28-after-a-pause" => {
                for n in [1, 2, 3] {
                    let back: Vec<Line<'_>> = week(n)
                        .into_iter()
                        .filter(|l| {
                            l.on("shoulder")
                                && l.says("block") != "range"
                                && l.day() <= Day::read("2027-01-08").expect("a day")
                        })
                        .collect();
                    self.all(&back, "comes back by steps", &|l| {
                        l.says("rule") == "after a pause" && !l.is_new()
                    });
                    if n <= 2 {
                        self.all(&back, "plain", &|l| !l.lowering() && !l.movement.guarded());
                    }
                }
                self.some(&week(1), "legs as they were", &|l| {
                    l.pattern() == "squat" && l.says("rule") != "after a pause"
                });
            }
            "29-five-times-ninety" => {
                assert_eq!(self.sessions().len(), 20);
                assert!(
                    self.sessions().iter().any(|s| s["lighter"] == true),
                    "{}: a lighter week",
                    self.name
                );
                // Twelve sets of pull-ups a week in the last weeks; a third more is 14, and ten is the cap.
                let pulls: f64 = week(1)
                    .iter()
                    .filter(|l| l.pattern() == "vertical pull" && l.says("rule") != "first try")
                    .map(|l| l.number("sets"))
                    .sum();
                assert!(
                    (4.0..=15.0).contains(&pulls),
                    "{}: {pulls} sets of vertical pulling",
                    self.name
                );
            }
            "30-ask-first" => {
                assert!(
                    !self.answer["refused"].is_null() && self.sessions().is_empty(),
                    "{}",
                    self.name
                );
                assert!(
                    self.answer["limiter"].is_null() && self.answer["retest"].is_null(),
                    "{}",
                    self.name
                );
            }
            _ => self.demands_of_care(),
        }
    }
}
