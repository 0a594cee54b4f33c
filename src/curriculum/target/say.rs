//! Targets in words for a reader. The page's script says the same (`themes/chalk/targets.js`).

use super::super::quantity::Mass;
use super::{Added, GRAM, INCH, KILOGRAM, Measure, Micro, ONE, POUND, Target};
use crate::curriculum::words::Units;
use crate::words::{Value, Words};

impl Target {
    /// The target in English words: "5 sets of 5", "at most 5 cm".
    pub fn words(&self, units: Units) -> String {
        self.say(units, Words::english())
    }

    /// The target in words for a reader. The page's script says the same (`themes/chalk/targets.js`).
    pub fn say(&self, units: Units, words: &Words) -> String {
        let mut out = match self.measure {
            Measure::Reps if self.sets > 1 => words.decimal(self.amount),
            Measure::Reps => words.fill("target.reps", &[("n", Value::Micro(self.amount))]),
            Measure::Time => say_seconds(self.amount, words),
            Measure::Length => say_length(self.amount, !self.at_most, units, words),
            Measure::Angle => words.fill("target.degrees", &[("n", Value::Micro(self.amount))]),
            Measure::Done => words.say("target.done").to_string(),
        };
        let mut wrap = |key: &str, more: &[(&str, Value<'_>)]| {
            let mut values = vec![("amount", Value::Text(&out))];
            values.extend_from_slice(more);
            out = words.fill(key, &values);
        };
        if self.sets > 1 {
            wrap("target.sets", &[("n", self.sets.into())]);
        }
        if self.at_most {
            wrap("target.at_most", &[]);
        }
        if self.seconds > 0 {
            let seconds = say_seconds(self.seconds, words);
            wrap("target.each_rep", &[("seconds", (&seconds).into())]);
        }
        if let Some(added) = self.added {
            let weight = say_weight(added, units, words);
            let key = match added.signed() < 0 {
                true => "target.help",
                false => "target.added",
            };
            wrap(key, &[("weight", (&weight).into())]);
        }
        if let Some(tries) = self.tries {
            wrap(
                "target.tries",
                &[("hits", tries.hits.into()), ("of", tries.of.into())],
            );
        }
        if self.each_side {
            wrap("target.each_side", &[]);
        }
        out
    }
}

/// A length of millionths of a centimetre; in inches a tenth, rounded up or down so that who meets the shown number meets the
/// target.
pub fn say_length(amount: Micro, up: bool, units: Units, words: &Words) -> String {
    match units {
        Units::Metric => words.fill("target.centimetres", &[("n", Value::Micro(amount))]),
        Units::Imperial => {
            let inches = towards(amount * 10, INCH, up) * ONE / 10;
            words.fill("target.inches", &[("n", Value::Micro(inches))])
        }
    }
}

/// `numerator / denominator` as a whole number, upwards or downwards.
fn towards(numerator: i64, denominator: i64, up: bool) -> i64 {
    if up {
        (numerator + denominator - 1).div_euclid(denominator)
    } else {
        numerator.div_euclid(denominator)
    }
}

fn say_seconds(amount: Micro, words: &Words) -> String {
    if amount >= 120 * ONE && amount % (60 * ONE) == 0 {
        return words.fill("target.minutes", &[("n", Value::Micro(amount / 60))]);
    }
    words.fill("target.seconds", &[("n", Value::Micro(amount))])
}

/// A mass in kilograms or pounds without its sign.
pub fn say_mass(mass: Mass, units: Units, words: &Words) -> String {
    say_weight(Added::Mass(mass), units, words)
}

/// A weight without its sign. A tenth of a pound, and a tenth of a kilogram for what is finer than a gram, up for load and down
/// for help: meeting the shown number meets the target.
fn say_weight(added: Added, units: Units, words: &Words) -> String {
    let (number, up) = (added.signed().abs(), added.signed() >= 0);
    let (key, n) = match (added, units) {
        (Added::BodyWeight(_), _) => ("target.body_weight", number * 100),
        (Added::Mass(_), Units::Metric) if number % GRAM == 0 => ("target.kilograms", number / 100),
        (Added::Mass(_), Units::Metric) => (
            "target.kilograms",
            towards(number * 10, KILOGRAM, up) * ONE / 10,
        ),
        (Added::Mass(_), Units::Imperial) => {
            ("target.pounds", towards(number * 10, POUND, up) * ONE / 10)
        }
    };
    words.fill(key, &[("n", Value::Micro(n))])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Target {
        Target::read(text).unwrap_or_else(|e| panic!("{text}: {e:?}"))
    }

    #[test]
    fn words_for_readers() {
        for (text, words) in [
            ("5x5", "5 sets of 5"),
            ("3x20 s", "3 sets of 20 seconds"),
            ("1 rep", "1 rep"),
            ("5 reps of 5 s", "5 reps, 5 seconds each"),
            (
                "5 reps with 0.25 bw",
                "5 reps with 25 % of body weight added",
            ),
            ("5 reps with 20 kg help", "5 reps with 20 kg of help"),
            ("at most 5 cm", "at most 5 cm"),
        ] {
            assert_eq!(read(text).words(Units::Metric), words);
        }
        // Rounded so that who meets the shown number meets the target.
        assert_eq!(read("10 cm").words(Units::Imperial), "4 in");
        assert_eq!(
            read("at most 5 cm").words(Units::Imperial),
            "at most 1.9 in"
        );
        assert_eq!(
            read("5 reps with 20 kg").words(Units::Imperial),
            "5 reps with 44.1 lb added"
        );
    }
}
