//! Reading a target from its text: tokens, then the grammar of the manual.

mod meant;
mod reserve;
mod token;

use super::super::quantity::{BodyShare, Mass};
use super::{Added, INCH, KILOGRAM, Measure, Micro, ONE, POUND, Target, TargetError, Tries};
pub use reserve::in_reserve;
use std::ops::Range;
use token::{Token, tokens};

/// The largest number that may be typed.
const LARGEST: i64 = 100_000;

/// Hundred-millionths in a millionth.
const FINER: i64 = 100;

const FORMS: &str = "write it like `5x5`, `8 reps`, `30 s`, `3x20 s`, `5 reps of 5 s`, `12 cm`, `170 deg` or `done`";

const GOT: &str = "write it like `9 reps`, `3x8`, `45 s`, `5 reps with 20 kg`, `12 cm`, `170 deg`, `done` or `not done`";

/// Reads a whole target.
pub(super) fn target(text: &str) -> Result<Target, TargetError> {
    let read = reader(text, FORMS).and_then(|mut reader| reader.target());
    read.map_err(|error| reserve::instead(text, FORMS).unwrap_or(error))
}

/// Reads what was done: an amount that may be 0, or `not done`; never "at most" or "each side".
pub(super) fn got(text: &str) -> Result<Target, TargetError> {
    done(text).map_err(|error| reserve::instead(text, GOT).unwrap_or(error))
}

fn done(text: &str) -> Result<Target, TargetError> {
    let mut reader = reader(text, GOT)?;
    if reader.word("not") {
        let mut target = reader.target()?;
        if target.measure != Measure::Done {
            return Err(reader.fault("`not` goes with `done` alone"));
        }
        target.amount = 0;
        return Ok(target);
    }
    let read = reader.target()?;
    if read.at_most || read.each_side {
        return Err(TargetError {
            at: 0..text.len(),
            message: "a result never says `at most` or `each side`".into(),
            help: "write the amount that was done; the sides go under `left` and `right`".into(),
        });
    }
    Ok(read)
}

fn reader<'a>(text: &'a str, forms: &'static str) -> Result<Reader<'a>, TargetError> {
    Ok(Reader {
        text,
        tokens: tokens(text, forms)?,
        at: 0,
        end: text.len(),
        forms,
    })
}

/// The units, with the word that is typed for each; a mass goes with reps.
const UNITS: &[(&str, &[&str])] = &[
    ("reps", &["reps", "rep", "repetitions", "times"]),
    ("s", SECONDS),
    ("min", MINUTES),
    ("cm", &["cm", "centimetres", "centimeters"]),
    ("in", &["in", "inch", "inches"]),
    ("deg", &["deg", "degree", "degrees"]),
];

const SECONDS: &[&str] = &["s", "sec", "secs", "second", "seconds"];
const MINUTES: &[&str] = &["min", "mins", "minute", "minutes"];

struct Reader<'a> {
    text: &'a str,
    tokens: Vec<(Token, Range<usize>)>,
    at: usize,
    end: usize,
    /// The forms that help lines show.
    forms: &'static str,
}

impl Reader<'_> {
    fn target(&mut self) -> Result<Target, TargetError> {
        let mut target = Target {
            measure: Measure::Reps,
            at_most: self.at_most()?,
            sets: 1,
            amount: ONE,
            seconds: 0,
            added: None,
            tries: None,
            each_side: false,
        };
        let start = self.here().start;
        if self.word("done") {
            target.measure = Measure::Done;
        } else {
            self.amount(&mut target)?;
        }
        let amount = start..self.end_of_last();
        if self.word("with") {
            target.added = Some(self.added()?);
        }
        target.each_side = self.each_side()?;
        if self.at < self.tokens.len() {
            return Err(self.instead("this does not belong here", |before| {
                format!("leave it out: `{before}`")
            }));
        }
        let lasts = matches!(
            target.measure,
            Measure::Length | Measure::Angle | Measure::Time
        );
        if target.at_most && (!lasts || target.added.is_some()) {
            return Err(TargetError {
                at: amount,
                message: "`at most` goes with cm, in, deg, s and min, and with nothing added"
                    .into(),
                help: "leave out `at most`, or write a length, an angle or a time".into(),
            });
        }
        Ok(target)
    }

    /// `["at most"]`
    fn at_most(&mut self) -> Result<bool, TargetError> {
        if !self.word("at") {
            return Ok(false);
        }
        if self.next_is("least") {
            self.at += 1;
            let rest = self.text[self.here().start..].trim();
            return Err(TargetError {
                at: 0..self.here().start,
                message: "`at least` is said of every target".into(),
                help: format!("leave it out: `{rest}`"),
            });
        }
        if !self.word("most") {
            return Err(self.fault("`at` stands without `most`"));
        }
        Ok(true)
    }

    /// `["each side"]`
    fn each_side(&mut self) -> Result<bool, TargetError> {
        if self.next_is("per") || self.next_is("a") {
            return Err(self.instead("the sides are said in another way", |before| {
                format!("write `{before} each side`")
            }));
        }
        let each = self.word("each");
        if each && !self.word("side") {
            return Err(self.fault("`each` stands without `side`"));
        }
        for side in ["left", "right"] {
            if self.next_is(side) {
                return Err(self.instead("one side has a key of its own", |before| {
                    format!("write `{side}: {before}`, and the other side beside it")
                }));
            }
        }
        Ok(each)
    }

    /// Where the part that was read last ends.
    fn end_of_last(&self) -> usize {
        let last = self.tokens.get(self.at.wrapping_sub(1));
        last.map_or(self.end, |t| t.1.end)
    }

    /// `[sets "x"] number unit ...`
    fn amount(&mut self, target: &mut Target) -> Result<(), TargetError> {
        let at = self.here();
        let mut number = self.number("a number")?;
        if self.word("x") {
            if number % ONE != 0 || number < ONE {
                return Err(TargetError {
                    at,
                    message: "sets are whole and at least 1".into(),
                    help: "write it like `5x5`".into(),
                });
            }
            target.sets = (number / ONE) as u32;
            number = self.number("the amount of each set")?;
        }
        let amount_at = at.start..self.end_of_last();
        target.amount = number;
        if self.unit(&["reps", "rep"])
            || self.next_is("of")
            || self.next_is("with")
            || self.next_is("each")
            || self.at == self.tokens.len()
        {
            if self.word("of") {
                target.seconds = self.number("the seconds of each rep")?;
                if !self.unit(SECONDS) {
                    return Err(self.fault("the seconds of each rep end with `s`"));
                }
            }
        } else if self.unit(SECONDS) {
            target.measure = Measure::Time;
            self.tries(target)?;
        } else if self.unit(MINUTES) {
            target.measure = Measure::Time;
            target.amount *= 60;
            self.tries(target)?;
        } else if self.unit(&["cm"]) {
            target.measure = Measure::Length;
        } else if self.unit(&["in", "inch", "inches"]) {
            target.measure = Measure::Length;
            target.amount = ((i128::from(number) * i128::from(INCH)) / i128::from(ONE)) as i64;
        } else if self.unit(&["deg", "degree", "degrees"]) {
            target.measure = Measure::Angle;
        } else {
            return Err(self.no_unit(&amount_at));
        }
        self.asks_something(target, amount_at)
    }

    fn asks_something(&self, target: &Target, at: Range<usize>) -> Result<(), TargetError> {
        if target.amount > LARGEST * ONE {
            return Err(TargetError {
                at,
                message: format!("this is more than {LARGEST} seconds or centimetres"),
                help: "write a number that a person can reach".into(),
            });
        }
        if target.amount == 0 && !target.at_most && self.forms == FORMS {
            return Err(TargetError {
                at,
                message: "a target of 0 asks nothing".into(),
                help: "write the amount that counts".into(),
            });
        }
        Ok(())
    }

    /// `["in" number "of" number "tries"]`
    fn tries(&mut self, target: &mut Target) -> Result<(), TargetError> {
        if !self.next_is("in") {
            return Ok(());
        }
        self.at += 1;
        let start = self.here().start;
        let hits = self.whole("the number of hits")?;
        if !self.word("of") {
            return Err(self.fault("tries are written `3 of 5 tries`"));
        }
        let of = self.whole("the number of tries")?;
        let at = start..self.end_of_last();
        if !self.unit(&["tries", "try"]) {
            return Err(self.fault("tries are written `3 of 5 tries`"));
        }
        if hits > of {
            return Err(TargetError {
                at,
                message: format!("{hits} hits cannot come of {of} tries"),
                help: format!("write `{of} of {hits} tries`?"),
            });
        }
        target.tries = Some(Tries { hits, of });
        Ok(())
    }

    fn added(&mut self) -> Result<Added, TargetError> {
        let at = self.here();
        let number = self.fine("the weight")?;
        let added = if self.unit(&["kg"]) {
            Added::Mass(Mass::of_units(number))
        } else if self.unit(&["lb", "lbs"]) {
            let mass = i128::from(number) * i128::from(POUND) / i128::from(KILOGRAM);
            Added::Mass(Mass::of_units(mass as i64))
        } else if self.word("%") {
            // Hundredths of the body weight.
            if !self.unit(&["bw"]) {
                return Err(self.fault("behind `%` stands `bw`: a share of the body weight"));
            }
            Added::BodyWeight(BodyShare::of_millionths(self.micro(number / 100, at)?))
        } else if self.unit(&["bw"]) {
            Added::BodyWeight(BodyShare::of_millionths(self.micro(number, at)?))
        } else {
            return Err(self.no_mass(&at));
        };
        Ok(match (self.word("help"), added) {
            (true, Added::Mass(n)) => Added::Mass(-n),
            (true, Added::BodyWeight(n)) => Added::BodyWeight(-n),
            (false, added) => added,
        })
    }

    fn here(&self) -> Range<usize> {
        self.tokens
            .get(self.at)
            .map_or(self.end..self.end, |t| t.1.clone())
    }

    fn fault(&self, message: &str) -> TargetError {
        TargetError {
            at: self.here(),
            message: message.into(),
            help: self.forms.into(),
        }
    }

    fn next_is(&self, word: &str) -> bool {
        matches!(self.tokens.get(self.at), Some((Token::Word(w), _)) if w == word)
    }

    fn word(&mut self, word: &str) -> bool {
        let found = self.next_is(word);
        self.at += usize::from(found);
        found
    }

    fn unit(&mut self, words: &[&str]) -> bool {
        words.iter().any(|w| self.word(w))
    }

    fn number(&mut self, what: &str) -> Result<Micro, TargetError> {
        let at = self.here();
        let number = self.fine(what)?;
        self.micro(number, at)
    }

    fn fine(&mut self, what: &str) -> Result<i64, TargetError> {
        match self.tokens.get(self.at) {
            Some((Token::Number(n), _)) => {
                self.at += 1;
                Ok(*n)
            }
            _ => Err(self.fault(&format!("{what} is missing here"))),
        }
    }

    fn micro(&self, number: i64, at: Range<usize>) -> Result<Micro, TargetError> {
        if number % FINER == 0 {
            return Ok(number / FINER);
        }
        Err(TargetError {
            at,
            message: "only a mass has more than six decimals".into(),
            help: "round it".into(),
        })
    }

    fn whole(&mut self, what: &str) -> Result<u32, TargetError> {
        let at = self.here();
        let number = self.number(what)?;
        if number % ONE != 0 || number < ONE {
            return Err(TargetError {
                at,
                message: format!("{what} is whole and at least 1"),
                help: self.forms.into(),
            });
        }
        Ok((number / ONE) as u32)
    }
}
