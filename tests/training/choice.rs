//! Seventeen clients more: which lines a session has, where a number is known though what it needs was never shown, where a part hurts,
//! where a class is left alone, and after time off. Each file says in words who it is and what is demanded.

use super::coach::{Case, Line};
use rungbook::curriculum::words::{BodyPart, Word};

/// The group of a line of strength or of what is kept up.
fn group(line: &Line<'_>) -> Option<&'static str> {
    match line.pattern() {
        "squat" | "hinge" | "carry" => Some("legs"),
        "core" => Some("core"),
        p if p.ends_with("push") => Some("push"),
        p if p.ends_with("pull") => Some("pull"),
        _ => None,
    }
}

fn is(line: &Line<'_>, id: &str) -> bool {
    line.movement.id().as_str() == id
}

impl Case<'_> {
    /// Today a movement is left out, as what it waits for begins anew.
    fn waits_today(&self, id: &str) {
        let left = self.sessions()[0]["left_out"].as_array();
        let why = left.into_iter().flatten().find(|l| l["movement"] == id);
        let said = why.map(|l| l["why"].to_string()).unwrap_or_default();
        assert!(said.contains("begins anew"), "{}: {id}: {said}", self.name);
    }

    /// What each client's comment demands.
    pub fn demands_of_choice(&self) {
        let (all, first) = (self.lines(), self.first_session());
        match self.name.as_str() {
            "43-fourteen-four-pull-ups" => {
                for id in ["pull-up", "push-up"] {
                    self.some(&first, id, &|l| {
                        is(l, id) && l.says("rule") == "done before"
                    });
                }
                self.whole_body(&self.of_week(1));
                self.few_tries();
                let later = |l: &&Line<'_>| l.day() > first[0].day();
                let later: Vec<Line<'_>> = self.lines().into_iter().filter(|l| later(&l)).collect();
                self.all(&later, "what was shown is over", &|l| {
                    !is(l, "push-up-kneeling")
                });
                self.some(&later, "the harder one goes on and grows", &|l| {
                    is(l, "push-up") && l.number("amount") >= 9.0
                });
                self.tests_again("pull-up");
            }
            "44-seventy-twelve-squats" => {
                self.some(&first, "squats", &|l| is(l, "squat") && !l.is_new());
                self.trains(&["push", "pull"]);
                self.tests_again("squat");
            }
            "45-shoulder-five" => {
                let sore = self.sore(&all, BodyPart::Shoulder);
                self.all(&sore, "light and easier", &|l| {
                    l.says("rule") == "pain" && l.number("sets") <= 3.0 && !l.movement.guarded()
                });
                self.all(&sore, "no free pull-up", &|l| !is(l, "pull-up"));
                self.all(&sore, "a push lower than at 4", &|l| {
                    l.pattern() != "horizontal push"
                        || is(l, "push-up-kneeling-hands-raised") && l.number("amount") <= 6.0
                });
                self.all(&sore, "half of what a healthy shoulder has", &|l| {
                    !is(l, "row-upright") || l.number("amount") <= 4.0
                });
                self.trains(&["pull", "push"]);
                self.tests_nothing_on(BodyPart::Shoulder);
            }
            "46-shoulder-seven" => {
                self.never("on the shoulder", &|m| m.stresses_part(BodyPart::Shoulder));
                // A stick with a hand behind the neck is told off to whose shoulder hurts.
                self.never("the stick", &|m| {
                    let how = m.test().and_then(|t| t.how.as_deref()).unwrap_or("");
                    how.contains("stick") && !how.contains("not with a shoulder that hurts")
                });
                self.never("a squat that nothing has opened", &|m| {
                    m.id().as_str() == "squat"
                });
            }
            "47-beginner-twelve-second-hang" => {
                self.some(&first, "the hang", &|l| is(l, "dead-hang") && !l.is_new());
                self.tests_again("dead-hang");
                self.some(&first, "squats", &|l| is(l, "squat") && !l.is_new());
            }
            "48-seventy-wants-to-lift" => {
                let soon = |l: &Line<'_>| l.week() <= 2 && is(l, "load-set-down");
                self.some(&all, "picks up within two weeks", &soon);
                self.every_session("stands on one leg", &|l| l.pattern() == "balance");
            }
            "49-pregnant-cleared" => {
                self.never("a hang", &|m| {
                    m.positions().iter().any(|p| p.word() == "hanging")
                });
                self.trains(&["horizontal pull", "horizontal push", "squat"]);
                self.all(&all, "the hands raised", &|l| {
                    l.pattern() != "horizontal push" || is(l, "push-up-hands-raised")
                });
            }
            "50-blood-pressure-known-numbers" => {
                self.one_long_hold();
                self.some(&first, "push-ups", &|l| {
                    is(l, "push-up-hands-raised") && !l.is_new()
                });
                self.some(&first, "squats", &|l| is(l, "squat") && !l.is_new());
            }
            "51-back-seven" => {
                self.never("on the back", &|m| m.stresses_part(BodyPart::LowerBack));
                self.never("a push-up", &|m| m.id().as_str() == "push-up");
                self.never("a row lying under it", &|m| {
                    m.id().as_str().contains("row-hip-high")
                });
                self.never("a leg tried anew where squats are on file", &|m| {
                    m.id().as_str().contains("split-squat") || m.id().as_str() == "step-up"
                });
                self.some(&first, "rows standing", &|l| is(l, "row-upright"));
                self.at_most_as_at_four(&first);
            }
            "61-away-thirty-tested" => {
                self.some(&first, "the row is halved", &|l| {
                    l.says("rule") == "time off"
                        && l.pattern() == "horizontal pull"
                        && l.number("sets") == 2.0
                        && l.number("amount") <= 6.0
                });
                self.never_above_before();
                self.comes_back("paused-pull-up", &[(3, 2), (4, 2)]);
                self.comes_back("row-hip-high", &[(1, 6), (2, 6), (3, 7), (4, 7)]);
                let mut tests = self.retests().into_iter();
                assert!(tests.any(|m| m.id().as_str() == "paused-pull-up"));
            }
            "64-knee-two-step-up" => {
                let tried = |l: &Line<'_>| l.says("rule") == "first try";
                let bounded = |l: &Line<'_>| l.says("then").contains("8 reps at most");
                self.some(&first, "the step-up", &|l| is(l, "step-up") && tried(l));
                let open = all.iter().filter(|l| {
                    tried(l) && l.says("unit") == "reps" && l.says("then").contains("second set")
                });
                for line in open {
                    let knee = line.movement.stresses_part(BodyPart::Knee);
                    assert_eq!(bounded(line), knee, "{}: {}", self.name, line.line);
                }
            }
            "63-off-eighty-rings" => {
                self.some(&first, "the support", &|l| is(l, "bar-support-hold"));
                let way_out = |l: &Line<'_>| is(l, "ring-step-down");
                self.all(&all, "the way out after two weeks", &|l| {
                    !way_out(l) || l.week() >= 3
                });
                self.some(&self.of_week(3), "the way out", &|l| {
                    way_out(l) && l.says("rule") == "first try"
                });
                for waits in ["ring-step-down", "ring-support-feet-assisted"] {
                    self.waits_today(waits);
                }
                let at = |id: &str| first.iter().position(|l| is(l, id));
                let (easy, hard) = (at("row-upright"), at("row-hip-high"));
                assert!(
                    easy.is_some() && easy < hard,
                    "{}: {easy:?} {hard:?}",
                    self.name
                );
            }
            "62-fifteen-back-three" => {
                self.at_most_as_at_four(&first);
                let said = self.answer["conditions"].to_string();
                assert!(!said.contains("newer entry of 2"), "{}: {said}", self.name);
            }
            "52-neck-numb" => {
                self.never("on the neck", &|m| m.stresses_part(BodyPart::Neck));
                self.never("a pull-up or a push-up", &|m| {
                    ["pull-up", "push-up"].contains(&m.id().as_str())
                });
                self.never("a stretch of the arm", &|m| {
                    let arm = [BodyPart::Shoulder, BodyPart::Elbow, BodyPart::Wrist];
                    m.pattern().word() == "mobility" && arm.iter().any(|p| m.stresses_part(*p))
                });
                self.never("a straight leg or the arms overhead", &|m| {
                    ["active-leg-raise", "dead-bug"].contains(&m.id().as_str())
                });
                self.trains(&["squat"]);
                self.some(&first, "a stand on one leg", &|l| {
                    is(l, "single-leg-balance")
                });
            }
            "53-off-thirty-weight" => {
                self.never("new with weight", &|m| m.loaded());
                for id in ["pull-up", "row-hip-high"] {
                    self.some(&first, id, &|l| is(l, id) && !l.is_new());
                }
            }
            "54-off-eighty-whole-body" => {
                self.whole_body(&first);
                self.some(&first, "squats", &|l| is(l, "squat"));
            }
            "55-push-failed-yesterday" => {
                self.all(&first, "no push, no pull", &|l| {
                    !matches!(group(l), Some("push" | "pull")) && !is(l, "ring-step-down")
                });
                self.some(&first, "squats", &|l| is(l, "squat"));
            }
            "56-floor-side-plank" => {
                self.some(&first, "the side plank", &|l| {
                    is(l, "side-plank") && !l.is_new()
                });
                let tries = |l: &Line<'_>| group(l) == Some("core") && l.is_new();
                assert!(!first.iter().any(tries), "{}: another plank", self.name);
            }
            "57-back-four" => {
                self.all(&first, "no hinge", &|l| l.pattern() != "hinge");
                for session in self.sessions() {
                    let left = session["left_out"].as_array().into_iter().flatten();
                    for of in left.filter(|of| of["movement"] == "hip-hinge") {
                        let why = of["why"].as_str().unwrap_or_default();
                        assert!(
                            why.starts_with("left alone while it hurts"),
                            "{}: {why}",
                            self.name
                        );
                    }
                }
                assert!(
                    self.left_out("hip-hinge"),
                    "{}: the hinge is named",
                    self.name
                );
                self.some(&first, "a light squat", &|l| {
                    is(l, "squat") && l.says("rule") == "pain" && l.number("amount") <= 9.0
                });
                self.some(&first, "a light plank", &|l| {
                    is(l, "plank") && l.says("rule") == "pain" && l.number("amount") < 40.0
                });
            }
            "58-shoulder-three" => {
                self.some(&first, "pull-ups as before", &|l| {
                    is(l, "pull-up") && l.number("amount") == 5.0
                });
                let sore = self.sore(&all, BodyPart::Shoulder);
                self.all(&sore, "nothing new", &|l| {
                    l.says("rule") == "pain" && !l.is_new()
                });
            }
            "59-elbow-four-pulls" => {
                for id in ["push-up-kneeling", "row-upright"] {
                    self.some(&first, id, &|l| {
                        is(l, id) && l.says("rule") == "pain" && l.number("sets") == 2.0
                    });
                }
                let sore = self.sore(&all, BodyPart::Elbow);
                self.all(&sore, "light, nothing new", &|l| {
                    l.says("rule") == "pain" && !l.is_new()
                });
                self.every_session("a line", &|_| true);
                self.tests_nothing_on(BodyPart::Elbow);
            }
            "60-carries-first" => {
                self.trains(&["pull", "push", "core"]);
                self.tests_again("push-up");
            }
            other => panic!("{other}: nothing is demanded of it"),
        }
    }

    /// What bears on a part, and not only lightly, in the two weeks after it began to hurt; range apart.
    fn sore<'l>(&self, lines: &'l [Line<'l>], part: BodyPart) -> Vec<Line<'l>> {
        let newest = self
            .person
            .pains
            .iter()
            .map(|p| p.on)
            .max()
            .expect("a pain");
        let bears = |l: &&Line<'_>| {
            let stresses = l.movement.stresses().iter();
            let mut of = stresses.filter(|s| s.part == part);
            of.any(|s| s.how.map(Word::word) != Some("light"))
                && l.says("block") != "range"
                && l.day().days_after(newest) <= 14
        };
        let of = lines.iter().filter(bears);
        of.map(|l| Line {
            session: l.session,
            line: l.line,
            movement: l.movement,
        })
        .collect()
    }

    /// It is tested again.
    fn tests_again(&self, id: &str) {
        let found = self.retests().iter().any(|m| m.id().as_str() == id);
        assert!(found, "{}: {}", self.name, self.answer["retest"]);
    }

    /// What is tested again bears on a part not at all, or lightly.
    fn tests_nothing_on(&self, part: BodyPart) {
        for m in self.retests() {
            let mut of = m.stresses().iter().filter(|s| s.part == part);
            let bears = of.any(|s| s.how.map(Word::word) != Some("light"));
            assert!(!bears, "{}: {} is tested again", self.name, m.id());
        }
    }

    /// A line of each group.
    fn whole_body(&self, lines: &[Line<'_>]) {
        for of in ["push", "pull", "legs", "core"] {
            self.some(lines, of, &|l| group(l) == Some(of));
        }
    }

    /// In no session more first tries than lines that are known.
    fn few_tries(&self) {
        for session in self.sessions() {
            let lines = self.lines();
            let here = lines.iter().filter(|l| std::ptr::eq(l.session, session));
            let (new, known): (Vec<&Line<'_>>, Vec<_>) = here
                .filter(|l| l.says("block") != "range" && l.says("rule") != "until it is tested")
                .partition(|l| l.is_new());
            assert!(
                new.len() <= known.len().max(1),
                "{}: {session:#}",
                self.name
            );
        }
    }

    /// What is left while a part rests: two sets, of rows no more than where it hurts 4 of 10, of pushes than where it hurts 5.
    fn at_most_as_at_four(&self, first: &[Line<'_>]) {
        let horizontal = |l: &&Line<'_>| l.pattern().starts_with("horizontal");
        for line in first.iter().filter(horizontal) {
            let asked = (line.number("sets"), line.number("amount"));
            let most = if line.pattern() == "horizontal push" {
                6.0
            } else {
                9.0
            };
            assert!(
                asked.0 <= 2.0 && asked.1 <= most,
                "{}: {asked:?}",
                self.name
            );
        }
    }

    /// Of long holds and of straight arms one line a session.
    fn one_long_hold(&self) {
        for session in self.sessions() {
            let lines = self.lines();
            let long = lines.iter().filter(|l| {
                let straight = l.movement.arms().map(Word::word) == Some("straight");
                let held = l.says("unit") == "s" && l.number("amount") > 10.0;
                std::ptr::eq(l.session, session)
                    && ["strength", "kept up"].contains(&l.says("block"))
                    && (straight || held)
            });
            assert!(long.count() <= 1, "{}: {session:#}", self.name);
        }
    }
}
