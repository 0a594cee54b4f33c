//! What a results file says of the client besides numbers: year of birth, goal, time to train, the health questions'
//! outcome, the coach's remarks.

use super::entry::{Reader, record_items};
use super::named::place;
use super::{Goal, Remark, Screened, Train};
use crate::curriculum::words::Weekday;
use crate::curriculum::{Owner, keys};
use crate::reading::fields::Record;
use crate::source::yaml::Node;
use crate::source::{Diagnostic, Rule, suggest};

/// The earliest year of birth that is read.
const EARLIEST: i32 = 1900;

impl Reader<'_> {
    /// Reads `born`, `goal`, `train`, `screened` and `remarks`.
    pub fn about(&mut self, record: &Record<'_>) {
        self.person.born = self.born(record);
        self.person.goal = record.get("goal").and_then(|node| self.goal(node));
        if let Some(node) = record.get("train") {
            self.person.train = self.train(node).unwrap_or_default();
        }
        self.person.screened = record.get("screened").and_then(|node| self.screened(node));
        for item in record_items(record, "remarks", self.findings) {
            let read = self.remark(item);
            self.person.remarks.extend(read);
        }
    }

    fn born(&mut self, record: &Record<'_>) -> Option<i32> {
        let node = record.get("born")?;
        let text = node.text().unwrap_or("").trim();
        let this_year = self.today.year();
        let read = text.parse().ok();
        let born = read.filter(|year| (EARLIEST..=this_year).contains(year));
        if born.is_none() {
            let message = format!("`{text}` is not a year of birth");
            let finding = Diagnostic::new(Rule::BadResult, node.span, message).label("here");
            self.findings.push(finding.help(format!(
                "write the year alone, from {EARLIEST} to {this_year}, such as `born: 1994`"
            )));
        }
        born
    }

    /// A skill, or a movement at its standard; old ids too. A goal that is held back or unknown is none.
    fn goal(&mut self, node: &Node) -> Option<Goal> {
        let id = crate::reading::fields::text(node, self.findings)?;
        let curriculum = self.curriculum;
        let renamed = || curriculum.old_ids().find(|(old, _)| *old == id);
        let found = curriculum
            .find(&id)
            .or_else(|| renamed().map(|(_, owner)| owner));
        let goal = match found {
            Some(Owner::Skill(ix)) => Some(Goal::Skill(ix)),
            Some(Owner::Movement(ix)) => {
                let movement = curriculum.movement(ix);
                (!movement.held_back() && !movement.faulty()).then_some(Goal::Movement(ix))
            }
            _ => None,
        };
        if goal.is_none() {
            let skills: Vec<&str> = curriculum.skills().map(|(_, s)| s.id.as_str()).collect();
            let movements = curriculum.published().map(|(_, m)| m.id().as_str());
            let help = suggest::did_you_mean(&id, skills.iter().copied().chain(movements))
                .unwrap_or_else(|| format!("the skills are {}", suggest::listed(&skills, "and")));
            self.findings.push(
                Diagnostic::new(
                    Rule::UnknownGoal,
                    node.span,
                    format!("`{id}` is no skill and no movement of this curriculum"),
                )
                .label("no such goal")
                .help(help),
            );
        }
        goal
    }

    fn train(&mut self, node: &Node) -> Option<Train> {
        let record = Record::open(node, "`train`", keys::RESULTS_TRAIN, self.findings)?;
        let a_week = self.whole(&record, "a_week", 1..=7, "`train`");
        let minutes = self.whole(&record, "minutes", 10..=240, "`train`");
        let mut days: Vec<Weekday> = record.get("days").map_or_else(Vec::new, |node| {
            crate::reading::fields::words(node, Rule::BadValue, self.findings)
        });
        days.sort_unstable();
        days.dedup();
        Some(Train {
            a_week,
            minutes,
            days,
        })
    }

    fn screened(&mut self, node: &Node) -> Option<Screened> {
        let record = Record::open(node, "`screened`", keys::RESULTS_SCREENED, self.findings)?;
        let says = record.word("says", self.findings)?;
        let on = self.day(&record, "on")?.unwrap_or(self.today);
        let until = self.until(&record, on)?;
        let by = record.text("by", self.findings);
        let was = record.word("was", self.findings);
        let lasts = self.whole(
            &record,
            "lasts",
            1..=super::LIMITS.clearance as u32,
            "`screened`",
        );
        Some(Screened {
            says,
            on,
            until,
            by,
            was,
            lasts,
        })
    }

    fn remark(&mut self, node: &Node) -> Option<Remark> {
        let record = Record::open(node, "a remark", keys::RESULTS_REMARKS, self.findings)?;
        let id = record.text("movement", self.findings)?;
        let words = record.text("words", self.findings)?;
        let on = self.day(&record, "on")?.unwrap_or(self.today);
        let Some(movement) = self.known(&id, place(&record, node)) else {
            self.aside(&id, words, on, "this curriculum has no such movement");
            return None;
        };
        Some(Remark {
            movement,
            on,
            words,
        })
    }
}
