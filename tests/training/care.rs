//! Twelve clients more: where care is asked, where time or equipment is short, and what was trained last week. Each file says in
//! words who it is and what is demanded; here the demands are checked.

use super::coach::{Case, Line};
use rungbook::curriculum::MovementIx;
use rungbook::curriculum::target::ONE;
use rungbook::curriculum::words::{BodyPart, Word};
use rungbook::morning::verdict;
use rungbook::readiness::assess;
use rungbook::training::{Roster, Trainee};
use std::collections::BTreeMap;

impl Case<'_> {
    /// What each client's comment demands.
    pub fn demands_of_care(&self) {
        match self.name.as_str() {
            "31-pain-four-trains-often" => {
                self.nothing_new_on(BodyPart::Shoulder);
                self.nothing_grows(BodyPart::Shoulder);
                self.trains(&["pull", "squat"]);
                let dip = |l: &Line<'_>| l.movement.id().as_str() == "bar-dip" && l.week() < 3;
                assert!(!self.lines().iter().any(dip), "{}: no dips", self.name);
            }
            "32-knee-four" => {
                self.nothing_new_on(BodyPart::Knee);
                self.nothing_harder();
                self.trains(&["pull", "push"]);
            }
            "33-pregnant-range" => {
                self.nothing_harder();
                self.trains(&["pull", "push", "squat"]);
                self.little_range_without_time();
            }
            "34-back-numb" | "35-back-sharp" => {
                self.never("on the lower back", &|m| {
                    m.stresses_part(BodyPart::LowerBack)
                });
                self.nothing_proposed_on(BodyPart::LowerBack);
                self.trains(&["pull", "push"]);
            }
            "36-floor-beginner" => {
                self.trains(&["push", "hinge", "core"]);
                assert!(self.left_out("row-upright"), "{}: no pulling", self.name);
                self.some(&self.lines(), "the wrists", &|l| {
                    l.movement.id().as_str() == "wrist-extension-reach"
                });
            }
            "37-floor-some" => {
                self.trains(&["push", "squat", "core"]);
                self.some(&self.lines(), "the wrists", &|l| {
                    l.movement.id().as_str() == "wrist-extension-reach"
                });
            }
            "38-weighted-last-week" => {
                let weighted = |l: &Line<'_>| {
                    l.movement.loaded()
                        && l.says("rule") != "show it"
                        && l.number("with_kg") >= 15.0
                };
                let week = self.of_week(1);
                self.some(&week, "four sets with 15 kg", &|l| {
                    weighted(l) && l.number("sets") == 4.0
                });
                let times = week.iter().filter(|l| weighted(l)).count();
                assert!(times >= 2, "{}: {times} times", self.name);
            }
            "39-fourteen-elbow" => {
                self.never("on the elbow", &|m| m.stresses_part(BodyPart::Elbow));
                self.trains(&["squat", "core"]);
                self.nothing_harder();
            }
            "40-off-forty-push-easy" | "41-off-twenty-push-easy" => {
                self.nothing_harder();
                self.trains(&["pull", "push", "squat", "core"]);
            }
            "42-front-lever-logged" => {
                let tuck = |l: &Line<'_>| l.movement.id().as_str() == "front-lever-tuck";
                let week = self.of_week(1);
                let times = week.iter().filter(|l| tuck(l)).count();
                assert!(times >= 2, "{}: {times} times", self.name);
                self.all(&week, "nine seconds", &|l| {
                    !tuck(l) || (8.0..=11.0).contains(&l.number("amount"))
                });
            }
            name if name.starts_with("load-") => self.demands_of_load(),
            name if name.starts_with("later-") => self.demands_of_later_days(),
            _ => self.demands_of_choice(),
        }
    }

    /// No first try of what stresses a part, and not only lightly, in any week, range too.
    fn nothing_new_on(&self, part: BodyPart) {
        let known = |l: &Line<'_>| {
            let tells = |ix: MovementIx| self.proof.curriculum.movement(ix).id() == l.movement.id();
            self.person.tested.iter().any(|t| tells(t.movement))
        };
        self.all(&self.lines(), "nothing new on it", &|l| {
            let mut of = l.movement.stresses().iter().filter(|s| s.part == part);
            !of.any(|s| s.how.map(Word::word) != Some("light"))
                || !l.is_new() && (l.says("block") != "range" || known(l))
        });
    }

    /// Of what stresses a part no more sets a session and a week, and no more in a set, than in the log; for two weeks.
    fn nothing_grows(&self, part: BodyPart) {
        let c = &self.proof.curriculum;
        let newest = self
            .person
            .pains
            .iter()
            .map(|p| p.on)
            .max()
            .expect("a pain");
        let mut weeks: BTreeMap<(i64, String), f64> = BTreeMap::new();
        for line in self.lines() {
            let logged = self.person.trained.iter();
            let log: Vec<_> = logged
                .filter(|t| c.movement(t.movement).id() == line.movement.id())
                .collect();
            let held = line.day().days_after(newest) <= 14 && line.movement.stresses_part(part);
            if log.is_empty() || !held {
                continue;
            }
            let sets = log.iter().map(|t| t.did.len()).max().unwrap_or(0) as f64;
            let first = log.iter().map(|t| t.did[0] / ONE).max().unwrap_or(0) as f64;
            assert!(
                line.number("sets") <= sets && line.number("amount") <= first,
                "{}: {}",
                self.name,
                line.line
            );
            let key = (line.week(), line.says("movement").to_string());
            *weeks.entry(key).or_default() += line.number("sets");
        }
        for ((week, id), sets) in weeks {
            let of = |t: &&rungbook::results::Trained| {
                c.movement(t.movement).id().as_str() == id.as_str()
            };
            let logged: usize = self
                .person
                .trained
                .iter()
                .filter(of)
                .map(|t| t.did.len())
                .sum();
            assert!(
                sets <= logged as f64,
                "{}: {sets} sets of {id} in week {week}",
                self.name
            );
        }
    }

    /// No first try of a higher rung than anything of its pattern that is known; of what is not known at all, of the lowest.
    fn nothing_harder(&self) {
        let (c, stages) = (&self.proof.curriculum, &self.proof.resolved.stages);
        let roster = Roster::new(c, stages);
        let trainee = Trainee::new(&roster, &self.person, self.today);
        for line in self.lines().into_iter().filter(Line::is_new) {
            let ix = c
                .find_movement(line.movement.id().as_str())
                .expect("a movement");
            let of = c
                .published()
                .filter(|(_, m)| m.pattern() == line.movement.pattern());
            let known = of.filter(|(up, _)| trainee.owns(*up) || trainee.now(*up).is_some());
            let highest = known.filter_map(|(up, _)| stages.of(up)).max();
            assert!(
                highest.is_none_or(|highest| stages.of(ix) <= Some(highest)),
                "{}: {}",
                self.name,
                line.line
            );
        }
    }

    /// Two lines of range at most in a session in which a group is left out for time.
    fn little_range_without_time(&self) {
        let c = &self.proof.curriculum;
        let group = |pattern: &str| match pattern {
            "squat" | "hinge" | "carry" => Some("legs"),
            p if p.ends_with("push") => Some("push"),
            p if p.ends_with("pull") => Some("pull"),
            _ => None,
        };
        for session in self.sessions() {
            let lines: Vec<Line<'_>> = self
                .lines()
                .into_iter()
                .filter(|l| std::ptr::eq(l.session, session))
                .collect();
            let left = session["left_out"].as_array().expect("a list");
            let late = left.iter().filter(|l| l["why"] == "no time today");
            let without = late.filter_map(|l| {
                let ix = c.find_movement(l["movement"].as_str()?)?;
                let of = group(c.movement(ix).pattern().word())?;
                let has = lines.iter().any(|l| group(l.pattern()) == Some(of));
                (!has).then_some(of)
            });
            let range = lines.iter().filter(|l| l.says("block") == "range").count();
            assert!(
                without.count() == 0 || range <= 2,
                "{}: {range} lines of range: {session:#}",
                self.name
            );
        }
    }

    /// What a coach reads in the morning: neither what is next nor a test bears on a part.
    fn nothing_proposed_on(&self, part: BodyPart) {
        let (c, stages) = (&self.proof.curriculum, &self.proof.resolved.stages);
        let roster = Roster::new(c, stages);
        for (skill, _) in c.skills() {
            let asked = Some(rungbook::results::Goal::Skill(skill));
            let readiness = assess(c, stages, &self.person, self.today);
            let verdict = verdict(
                &roster,
                &self.person,
                &readiness,
                asked,
                &[],
                None,
                self.today,
            );
            let tests = verdict.tests.iter().map(|t| t.0);
            for ix in verdict.next_movement().into_iter().chain(tests) {
                let m = c.movement(ix);
                assert!(
                    !m.stresses_part(part),
                    "{}: {} is proposed",
                    self.name,
                    m.id()
                );
            }
        }
    }
}
