//! What was done: a result, in the same parts as a target.

use super::{Added, Measure, Micro, Target, TargetError, read};
use crate::curriculum::words::Units;
use crate::words::Words;
use std::fmt;

/// A result. Its amount may be 0 (`not done` is `done` at 0); it never says "at most" or "each side".
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Got(Target);

impl Got {
    /// Reads a result such as `9 reps`, `5 reps with 20 kg`, `0 s` or `not done`.
    ///
    /// # Errors
    /// The place in the text, what is wrong and what to type.
    pub fn read(text: &str) -> Result<Got, TargetError> {
        read::got(text).map(Got)
    }

    /// Sets of one amount, each rep of so many seconds (0 where none are asked), with a load or none.
    pub fn of(
        measure: Measure,
        sets: u32,
        amount: Micro,
        seconds: Micro,
        added: Option<Added>,
    ) -> Got {
        Got(Target {
            measure,
            at_most: false,
            sets,
            amount,
            seconds,
            added,
            tries: None,
            each_side: false,
        })
    }

    /// The parts. The target's own comparisons do not fit a result: `at_most` is always false in it.
    pub fn parts(&self) -> &Target {
        &self.0
    }

    /// The worse of two results in every part, for "at most" the larger amount; `None` where their loads or tries are of two
    /// kinds.
    pub fn worse_of(&self, other: &Got, at_most: bool) -> Option<Got> {
        let (a, b) = (&self.0, &other.0);
        let added = match (a.added, b.added) {
            (Some(Added::Mass(x)), Some(Added::Mass(y))) => Some(Added::Mass(x.min(y))),
            (Some(Added::BodyWeight(x)), Some(Added::BodyWeight(y))) => {
                Some(Added::BodyWeight(x.min(y)))
            }
            (Some(one), None) | (None, Some(one)) => (one.signed() < 0).then_some(one),
            (None, None) => None,
            _ => return None,
        };
        if a.tries != b.tries {
            return None;
        }
        let amount = match at_most {
            true => a.amount.max(b.amount),
            false => a.amount.min(b.amount),
        };
        Some(Got(Target {
            sets: a.sets.min(b.sets),
            amount,
            seconds: a.seconds.min(b.seconds),
            added,
            ..*a
        }))
    }

    /// The result in words for a reader.
    pub fn words(&self, units: Units) -> String {
        self.say(units, Words::english())
    }

    /// The same in the words of a language. The page's script says the same (`themes/chalk/targets.js`).
    pub fn say(&self, units: Units, words: &Words) -> String {
        match self.is_not_done() {
            true => words.say("target.not_done").to_string(),
            false => self.0.say(units, words),
        }
    }

    fn is_not_done(&self) -> bool {
        self.0.measure == Measure::Done && self.0.amount == 0
    }
}

impl fmt::Display for Got {
    /// The canonical form in metric units; reading it gives an equal result.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.is_not_done() {
            true => f.write_str("not done"),
            false => self.0.fmt(f),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Got;
    use crate::curriculum::words::Units;

    #[test]
    fn what_was_not_done_is_said_so() {
        for text in ["not done", "done"] {
            let got = Got::read(text).expect("a result");
            assert_eq!(got.words(Units::Metric), text);
        }
    }

    #[test]
    fn results_read_and_print_themselves() {
        for text in [
            "0 reps",
            "9 reps",
            "not done",
            "done",
            "5 reps with 20 kg",
            "3x8",
            "0 s",
            "12.5 cm",
            "20 s in 3 of 5 tries",
        ] {
            let got = Got::read(text).unwrap_or_else(|e| panic!("{text}: {e:?}"));
            assert_eq!(got.to_string(), text);
        }
        for text in ["at most 5 cm", "5 reps each side", "not 5 reps", "", "x"] {
            assert!(Got::read(text).is_err(), "{text}");
        }
    }
}
