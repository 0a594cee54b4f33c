//! Reading a target from its text: tokens, then the grammar of the manual.

mod meant;
mod reserve;

use super::{Added, INCH, KILOGRAM, Measure, Micro, ONE, POUND, Target, TargetError, Tries};
use meant::{by_sign, clock, span};
pub use reserve::in_reserve;
use std::ops::Range;

/// The largest number that may be typed.
const LARGEST: i64 = 100_000;

/// Letters of the longest run that is split into words; no sensible run comes near, and each letter may double the ways.
const LONGEST_RUN: usize = 40;

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

#[derive(Clone, Debug, PartialEq)]
enum Token {
    /// A number in hundred-millionths: the finest that a mass is printed in.
    Number(i64),
    Word(String),
}

/// Splits into numbers and words; a dot belongs to the number around it.
fn tokens(text: &str, forms: &'static str) -> Result<Vec<(Token, Range<usize>)>, TargetError> {
    let mut out = Vec::new();
    let mut chars = text.char_indices().peekable();
    while let Some((from, c)) = chars.next() {
        let mut to = from + c.len_utf8();
        let mut more = |accept: &dyn Fn(char) -> bool, to: &mut usize| {
            while let Some((i, c)) = chars.next_if(|(_, c)| accept(*c)) {
                *to = i + c.len_utf8();
            }
        };
        if c.is_whitespace() {
            continue;
        } else if c == '.' && text[from + 1..].trim().is_empty() {
            return Err(TargetError {
                at: from..to,
                message: "`.` does not belong here".into(),
                help: format!("leave it out: `{}`", text[..from].trim()),
            });
        } else if c.is_ascii_digit() || c == '.' {
            more(&|c| c.is_ascii_digit() || c == '.' || c == ',', &mut to);
            out.push((Token::Number(number(&text[from..to], from..to)?), from..to));
        } else if let Some(word) = sign(c) {
            out.push((Token::Word(word.into()), from..to));
        } else if c.is_alphabetic() {
            more(&char::is_alphabetic, &mut to);
            let run = text[from..to].to_lowercase();
            let sensible = run.len() == to - from && run.len() <= LONGEST_RUN;
            match sensible.then(|| split_words(&run)).flatten() {
                Some(words) => {
                    let mut at = from;
                    for word in words {
                        out.push((Token::Word(word.to_string()), at..at + word.len()));
                        at += word.len();
                    }
                }
                None => out.push((Token::Word(run), from..to)),
            }
        } else {
            return Err(TargetError {
                at: from..to,
                message: format!("`{c}` does not belong here"),
                help: clock(text)
                    .or_else(|| span(text, forms))
                    .or_else(|| by_sign(text, c, from..to))
                    .unwrap_or_else(|| forms.into()),
            });
        }
    }
    Ok(out)
}

/// Signs that say a word.
fn sign(c: char) -> Option<&'static str> {
    match c {
        '×' => Some("x"),
        '°' => Some("deg"),
        '%' => Some("%"),
        _ => None,
    }
}

/// Words of a target; written without blanks they run into each other.
const WORDS: &[&str] = &[
    "seconds", "second", "secs", "sec", "minutes", "minute", "mins", "min", "inches", "inch", "in",
    "degrees", "degree", "deg", "reps", "rep", "of", "not", "done", "tries", "try", "with", "help",
    "kg", "lbs", "lb", "bw", "each", "side", "at", "most", "cm", "x", "s",
];

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

/// The only way to read a run of letters as words, longest first.
fn split_words(run: &str) -> Option<Vec<&'static str>> {
    if run.is_empty() {
        return Some(Vec::new());
    }
    WORDS
        .iter()
        .filter(|word| run.starts_with(**word))
        .find_map(|word| {
            let mut rest = split_words(&run[word.len()..])?;
            rest.insert(0, word);
            Some(rest)
        })
}

fn number(text: &str, at: Range<usize>) -> Result<i64, TargetError> {
    let fault = |message: String, help: &str| TargetError {
        at: at.clone(),
        message,
        help: help.into(),
    };
    if text.contains(',') {
        // A comma before three digits may part the thousands; before fewer it is meant as the point.
        let help = match text.rsplit_once(',') {
            Some((whole, part)) if part.len() == 3 && !whole.is_empty() => {
                format!(
                    "write `{}`, or `{whole}.{part}` if a fraction is meant",
                    text.replace(',', "")
                )
            }
            Some((whole, part)) if !whole.is_empty() && !part.is_empty() => {
                format!("write a decimal point: `{whole}.{part}`")
            }
            _ => "write a decimal point, as in `2.5`".to_string(),
        };
        return Err(fault(format!("`{text}` has a comma"), &help));
    }
    let (whole, fraction) = text.split_once('.').unwrap_or((text, ""));
    if whole.is_empty() || fraction.contains('.') || (text.contains('.') && fraction.is_empty()) {
        return Err(fault(
            format!("`{text}` is not a number"),
            "write it like 5 or 2.5",
        ));
    }
    if fraction.len() > 8 {
        return Err(fault(
            format!("`{text}` has more than eight decimals"),
            "round it",
        ));
    }
    let whole: i64 = whole.parse().unwrap_or(i64::MAX);
    if whole > LARGEST {
        return Err(fault(
            format!("`{text}` is larger than {LARGEST}"),
            "write a number that a person can reach",
        ));
    }
    let fraction: i64 = format!("{fraction:0<8}").parse().unwrap_or(0);
    Ok(whole * ONE * FINER + fraction)
}

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
            Added::Mass(number)
        } else if self.unit(&["lb", "lbs"]) {
            let mass = i128::from(number) * i128::from(POUND) / i128::from(KILOGRAM);
            Added::Mass(mass as i64)
        } else if self.word("%") {
            // Hundredths of the body weight.
            if !self.unit(&["bw"]) {
                return Err(self.fault("behind `%` stands `bw`: a share of the body weight"));
            }
            Added::BodyWeight(self.micro(number / 100, at)?)
        } else if self.unit(&["bw"]) {
            Added::BodyWeight(self.micro(number, at)?)
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
