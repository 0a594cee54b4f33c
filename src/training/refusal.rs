//! Why nothing is planned for a person, and what to do first.

use super::say::Say;
use crate::curriculum::Day;
use crate::curriculum::words::Screening;
use crate::results::{LIMITS, Person};

/// Why there is no session, no weeks and no test.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// Too young for a page, whatever was answered.
    Child,
    /// The health questions said: a clinician first.
    Ask,
    /// No health answers are on file, of somebody who is not of age, or old.
    Unanswered { with_parent: bool },
}

impl Refusal {
    /// `None` for whom a plan may be made on that day.
    pub fn of(person: &Person, today: Day) -> Option<Refusal> {
        match person.screening_on(today) {
            _ if person.is_child_on(today) => Some(Refusal::Child),
            Some(Screening::Ask) => Some(Refusal::Ask),
            _ => person.must_answer_on(today).then(|| Refusal::Unanswered {
                with_parent: person.age_on(today).is_some_and(|age| age < LIMITS.adult),
            }),
        }
    }
}

impl Say<'_> {
    /// Why nothing may be planned: too young for a page, a clinician first, or the health questions.
    pub fn refusal(&self, why: Refusal, today: Day) -> String {
        let ask = match why {
            Refusal::Child => return self.say("child"),
            Refusal::Ask => return self.say("ask"),
            Refusal::Unanswered { with_parent: true } => "answer_with_parent",
            Refusal::Unanswered { with_parent: false } => "answer_first",
        };
        // As a results file says it; the outcome that, copied as it stands, lets nobody train.
        let example = format!("screened: {{ says: ask, on: {today} }}");
        [
            self.say("no_answers"),
            self.say(ask),
            self.fill("write_answers", &[("example", (&example).into())]),
        ]
        .join(" ")
    }
}
