//! Targets: measured amounts such as `5x5`, `30 s`, `5 reps with 20 kg`, `at most 5 cm`.
//!
//! Quantities are whole numbers of a small unit, so that equal values are equal and every machine agrees.

use super::words::Units;
use std::cmp::Ordering;
use std::fmt;
use std::ops::Range;

/// Millionths: of a rep, a second, a centimetre, a degree, or of the client's body weight.
pub type Micro = i64;
/// One in millionths.
pub const ONE: Micro = 1_000_000;
/// Hundred-millionths of a kilogram in one kilogram; a pound is a whole number of them.
pub const KILOGRAM: i64 = 100_000_000;
/// 1 lb = 0.45359237 kg. Source: the international yard and pound agreement of 1959.
pub const POUND: i64 = 45_359_237;
/// 1 in = 2.54 cm. Source: as above.
const INCH: Micro = 2_540_000;
/// The largest number that may be typed.
const LARGEST: i64 = 100_000;

/// What is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Measure {
    Reps,
    Time,
    Length,
    Angle,
    Done,
}

impl Measure {
    pub fn word(self) -> &'static str {
        match self {
            Measure::Reps => "reps",
            Measure::Time => "time",
            Measure::Length => "length",
            Measure::Angle => "angle",
            Measure::Done => "done",
        }
    }
}

/// Weight added to the body (positive) or taken off it (help, negative).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Added {
    /// Hundred-millionths of a kilogram.
    Mass(i64),
    /// Millionths of the client's own body weight.
    BodyWeight(Micro),
}

impl Added {
    /// The signed number, whatever its unit.
    pub fn signed(self) -> i64 {
        match self {
            Added::Mass(n) | Added::BodyWeight(n) => n,
        }
    }
}

/// Hits out of tries. `1 <= hits <= of`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Tries {
    pub hits: u32,
    pub of: u32,
}

/// A checked target.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Target {
    measure: Measure,
    at_most: bool,
    sets: u32,
    amount: Micro,
    seconds: Micro,
    added: Option<Added>,
    tries: Option<Tries>,
    each_side: bool,
}

/// Why a text is no target: the offending bytes, what is wrong, what to type.
#[derive(Clone, Debug, PartialEq)]
pub struct TargetError {
    pub at: Range<usize>,
    pub message: String,
    pub help: String,
}

const FORMS: &str = "write it like `5x5`, `8 reps`, `30 s`, `3x20 s`, `5 reps of 5 s`, `12 cm`, `170 deg` or `done`";

impl Target {
    /// Reads a target. Spaces are optional, letter case is free, `×` is `x`.
    ///
    /// # Errors
    /// The place in the text, what is wrong and what to type.
    pub fn read(text: &str) -> Result<Target, TargetError> {
        Reader {
            tokens: tokens(text)?,
            at: 0,
            end: text.len(),
        }
        .target()
    }

    pub fn measure(&self) -> Measure {
        self.measure
    }

    /// Smaller is better ("at most").
    pub fn at_most(&self) -> bool {
        self.at_most
    }

    /// Sets, at least 1.
    pub fn sets(&self) -> u32 {
        self.sets
    }

    /// Millionths of a rep, second, centimetre or degree; 1 rep's worth for `done`.
    pub fn amount(&self) -> Micro {
        self.amount
    }

    /// Seconds of each rep in millionths; 0 when not asked.
    pub fn seconds(&self) -> Micro {
        self.seconds
    }

    pub fn added(&self) -> Option<Added> {
        self.added
    }

    pub fn tries(&self) -> Option<Tries> {
        self.tries
    }

    pub fn each_side(&self) -> bool {
        self.each_side
    }

    /// Weight above zero is added.
    pub fn adds_weight(&self) -> bool {
        self.added.is_some_and(|a| a.signed() > 0)
    }

    /// Measures the same thing in the same direction.
    pub fn compares_with(&self, other: &Target) -> bool {
        self.measure == other.measure && self.at_most == other.at_most
    }

    /// Whether this target asks at least what `other` asks, in every part. Loads in kilograms and in body weights never
    /// compare here, except through zero.
    pub fn asks_at_least(&self, other: &Target) -> bool {
        if !self.compares_with(other) {
            return false;
        }
        if self.at_most {
            return self.amount <= other.amount;
        }
        self.sets >= other.sets
            && self.amount >= other.amount
            && self.seconds >= other.seconds
            && load_at_least(self.added, other.added)
            && tries_at_least(self.tries, other.tries)
    }

    /// The same demand: equal in every part.
    pub fn same_value(&self, other: &Target) -> bool {
        self.compares_with(other) && self.order(other) == Ordering::Equal
    }

    /// From easier to harder as ladders print it: load (mass before body weight), sets, amount (falling for "at most"),
    /// seconds, hits.
    pub fn order(&self, other: &Target) -> Ordering {
        let key = |t: &Target| {
            let (unit, load) = match t.added.filter(|a| a.signed() != 0) {
                None => (0, 0),
                Some(Added::Mass(n)) => (0, n),
                Some(Added::BodyWeight(n)) => (1, n),
            };
            let amount = if t.at_most { -t.amount } else { t.amount };
            let tries = t.tries.map_or((0, 0), |t| (t.hits, t.of));
            (unit, load, t.sets, amount, t.seconds, tries)
        };
        key(self).cmp(&key(other))
    }

    /// The target in words for a reader: "5 sets of 5", "at most 5 cm".
    pub fn words(&self, units: Units) -> String {
        let mut out = String::new();
        let many = self.sets > 1;
        if self.at_most {
            out.push_str("at most ");
        }
        if many {
            out.push_str(&format!("{} sets of ", self.sets));
        }
        match self.measure {
            Measure::Reps if many => out.push_str(&decimal(self.amount)),
            Measure::Reps => out.push_str(&format!(
                "{} {}",
                decimal(self.amount),
                if self.amount == ONE { "rep" } else { "reps" }
            )),
            Measure::Time => out.push_str(&seconds_in_words(self.amount)),
            Measure::Length => out.push_str(&self.length_in_words(units)),
            Measure::Angle => out.push_str(&format!("{}°", decimal(self.amount))),
            Measure::Done => out.push_str("done"),
        }
        if self.seconds > 0 {
            out.push_str(&format!(", {} each", seconds_in_words(self.seconds)));
        }
        if let Some(added) = self.added {
            out.push_str(&added_in_words(added, units));
        }
        if let Some(tries) = self.tries {
            out.push_str(&format!(", in {} of {} tries", tries.hits, tries.of));
        }
        if self.each_side {
            out.push_str(", each side");
        }
        out
    }

    fn length_in_words(&self, units: Units) -> String {
        match units {
            Units::Metric => format!("{} cm", decimal(self.amount)),
            // A tenth of an inch, rounded so that who meets the shown number meets the target.
            Units::Imperial => format!(
                "{} in",
                decimal(towards(self.amount * 10, INCH, !self.at_most) * ONE / 10)
            ),
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

fn seconds_in_words(amount: Micro) -> String {
    if amount >= 120 * ONE && amount % (60 * ONE) == 0 {
        return format!("{} minutes", decimal(amount / 60));
    }
    format!(
        "{} {}",
        decimal(amount),
        if amount == ONE { "second" } else { "seconds" }
    )
}

fn added_in_words(added: Added, units: Units) -> String {
    let (number, help) = (added.signed().abs(), added.signed() < 0);
    let weight = match (added, units) {
        (Added::BodyWeight(_), _) => format!("{} % of body weight", decimal(number * 100)),
        (Added::Mass(_), Units::Metric) => format!("{} kg", decimal(number / 100)),
        // A tenth of a pound, up for load and down for help: meeting the shown number meets the target.
        (Added::Mass(_), Units::Imperial) => format!(
            "{} lb",
            decimal(towards(number * 10, POUND, !help) * ONE / 10)
        ),
    };
    if help {
        format!(" with {weight} of help")
    } else {
        format!(" with {weight} added")
    }
}

/// A number of millionths without needless zeros.
pub fn decimal(micro: Micro) -> String {
    let (sign, micro) = if micro < 0 {
        ("-", -micro)
    } else {
        ("", micro)
    };
    let fraction = format!("{:06}", micro % ONE);
    let fraction = fraction.trim_end_matches('0');
    let dot = if fraction.is_empty() { "" } else { "." };
    format!("{sign}{}{dot}{fraction}", micro / ONE)
}

fn load_at_least(ours: Option<Added>, theirs: Option<Added>) -> bool {
    let ours = ours.unwrap_or(Added::Mass(0));
    let theirs = theirs.unwrap_or(Added::Mass(0));
    let (a, b) = (ours.signed(), theirs.signed());
    let one_unit = std::mem::discriminant(&ours) == std::mem::discriminant(&theirs);
    if one_unit || a.signum() != b.signum() || a == 0 {
        a >= b
    } else {
        false
    }
}

fn tries_at_least(ours: Option<Tries>, theirs: Option<Tries>) -> bool {
    let Some(theirs) = theirs else { return true };
    let ours = ours.unwrap_or(Tries { hits: 1, of: 1 });
    let by_share =
        u64::from(ours.hits) * u64::from(theirs.of) >= u64::from(theirs.hits) * u64::from(ours.of);
    ours.hits >= theirs.hits && by_share
}

impl fmt::Display for Target {
    /// The one canonical form, in metric units; reading it gives an equal target.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.at_most {
            f.write_str("at most ")?;
        }
        if self.sets > 1 {
            write!(f, "{}x", self.sets)?;
        }
        match self.measure {
            Measure::Reps if self.sets > 1 && self.seconds == 0 && self.added.is_none() => {
                f.write_str(&decimal(self.amount))?
            }
            Measure::Reps => write!(
                f,
                "{} {}",
                decimal(self.amount),
                if self.amount == ONE { "rep" } else { "reps" }
            )?,
            Measure::Time => write!(f, "{} s", decimal(self.amount))?,
            Measure::Length => write!(f, "{} cm", decimal(self.amount))?,
            Measure::Angle => write!(f, "{} deg", decimal(self.amount))?,
            Measure::Done => f.write_str("done")?,
        }
        if self.seconds > 0 {
            write!(f, " of {} s", decimal(self.seconds))?;
        }
        if let Some(tries) = self.tries {
            write!(f, " in {} of {} tries", tries.hits, tries.of)?;
        }
        match self.added {
            Some(Added::Mass(n)) => write!(
                f,
                " with {} kg{}",
                mass(n.abs()),
                if n < 0 { " help" } else { "" }
            )?,
            Some(Added::BodyWeight(n)) => write!(
                f,
                " with {} bw{}",
                decimal(n.abs()),
                if n < 0 { " help" } else { "" }
            )?,
            None => {}
        }
        f.write_str(if self.each_side { " each side" } else { "" })
    }
}

fn mass(amount: i64) -> String {
    let fraction = format!("{:08}", amount % KILOGRAM);
    let fraction = fraction.trim_end_matches('0');
    let dot = if fraction.is_empty() { "" } else { "." };
    format!("{}{dot}{fraction}", amount / KILOGRAM)
}

#[derive(Clone, Debug, PartialEq)]
enum Token {
    /// A number in millionths.
    Number(Micro),
    Word(String),
}

/// Splits into numbers and words; a dot belongs to the number around it.
fn tokens(text: &str) -> Result<Vec<(Token, Range<usize>)>, TargetError> {
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
        } else if c.is_ascii_digit() || c == '.' {
            more(&|c| c.is_ascii_digit() || c == '.' || c == ',', &mut to);
            out.push((Token::Number(number(&text[from..to], from..to)?), from..to));
        } else if c == '×' {
            out.push((Token::Word("x".into()), from..to));
        } else if c.is_alphabetic() {
            more(&char::is_alphabetic, &mut to);
            let run = text[from..to].to_lowercase();
            match split_words(&run).filter(|_| run.len() == to - from) {
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
                message: format!("`{c}` does not belong in a target"),
                help: FORMS.into(),
            });
        }
    }
    Ok(out)
}

/// Words of a target; written without blanks they run into each other.
const WORDS: &[&str] = &[
    "seconds", "second", "sec", "minutes", "minute", "min", "inches", "inch", "in", "degrees",
    "degree", "deg", "reps", "rep", "of", "done", "tries", "try", "with", "help", "kg", "lbs",
    "lb", "bw", "each", "side", "at", "most", "cm", "x", "s",
];

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

fn number(text: &str, at: Range<usize>) -> Result<Micro, TargetError> {
    let fault = |message: String, help: &str| TargetError {
        at: at.clone(),
        message,
        help: help.into(),
    };
    if text.contains(',') {
        return Err(fault(
            format!("`{text}` has a comma"),
            "write a decimal point: 2.5",
        ));
    }
    let (whole, fraction) = text.split_once('.').unwrap_or((text, ""));
    if whole.is_empty() || fraction.contains('.') || (text.contains('.') && fraction.is_empty()) {
        return Err(fault(
            format!("`{text}` is not a number"),
            "write it like 5 or 2.5",
        ));
    }
    if fraction.len() > 6 {
        return Err(fault(
            format!("`{text}` has more than six decimals"),
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
    let fraction: i64 = format!("{fraction:0<6}").parse().unwrap_or(0);
    Ok(whole * ONE + fraction)
}

struct Reader {
    tokens: Vec<(Token, Range<usize>)>,
    at: usize,
    end: usize,
}

impl Reader {
    fn target(&mut self) -> Result<Target, TargetError> {
        let at_most = if self.word("at") {
            if !self.word("most") {
                return Err(self.fault("`at` stands without `most`"));
            }
            true
        } else {
            false
        };
        let mut target = Target {
            measure: Measure::Reps,
            at_most,
            sets: 1,
            amount: ONE,
            seconds: 0,
            added: None,
            tries: None,
            each_side: false,
        };
        let start = self.here();
        if self.word("done") {
            target.measure = Measure::Done;
        } else {
            self.amount(&mut target)?;
        }
        let amount_end = self
            .tokens
            .get(self.at.wrapping_sub(1))
            .map_or(self.end, |t| t.1.end);
        if self.word("with") {
            target.added = Some(self.added()?);
        }
        if self.word("each") {
            if !self.word("side") {
                return Err(self.fault("`each` stands without `side`"));
            }
            target.each_side = true;
        }
        if self.at < self.tokens.len() {
            let at = self.here();
            return Err(TargetError {
                at,
                message: "this does not belong in a target".into(),
                help: FORMS.into(),
            });
        }
        if at_most
            && (!matches!(
                target.measure,
                Measure::Length | Measure::Angle | Measure::Time
            ) || target.added.is_some())
        {
            let at = start.start..amount_end;
            let message =
                "`at most` goes with cm, in, deg, s and min, and with nothing added".into();
            return Err(TargetError {
                at,
                message,
                help: "leave out `at most`, or write a length, an angle or a time".into(),
            });
        }
        Ok(target)
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
        let amount_at = at.start
            ..self
                .tokens
                .get(self.at.wrapping_sub(1))
                .map_or(self.end, |t| t.1.end);
        target.amount = number;
        if self.unit(&["reps", "rep"])
            || self.next_is("of")
            || self.next_is("with")
            || self.next_is("each")
            || self.at == self.tokens.len()
        {
            if self.word("of") {
                target.seconds = self.number("the seconds of each rep")?;
                if !self.unit(&["s", "sec", "second", "seconds"]) {
                    return Err(self.fault("the seconds of each rep end with `s`"));
                }
            }
        } else if self.unit(&["s", "sec", "second", "seconds"]) {
            target.measure = Measure::Time;
            self.tries(target)?;
        } else if self.unit(&["min", "minute", "minutes"]) {
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
            return Err(self.fault("this is not a unit"));
        }
        if target.amount == 0 && !target.at_most {
            return Err(TargetError {
                at: amount_at,
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
        let at = start..self.tokens.get(self.at - 1).map_or(self.end, |t| t.1.end);
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
        let number = self.number("the weight")?;
        let mass = |unit: i64| ((i128::from(number) * i128::from(unit)) / i128::from(ONE)) as i64;
        let added = if self.unit(&["kg"]) {
            Added::Mass(mass(KILOGRAM))
        } else if self.unit(&["lb", "lbs"]) {
            Added::Mass(mass(POUND))
        } else if self.unit(&["bw"]) {
            Added::BodyWeight(number)
        } else {
            return Err(self.fault("a weight ends with `kg`, `lb` or `bw`"));
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
            help: FORMS.into(),
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
        match self.tokens.get(self.at) {
            Some((Token::Number(n), _)) => {
                self.at += 1;
                Ok(*n)
            }
            _ => Err(self.fault(&format!("{what} is missing here"))),
        }
    }

    fn whole(&mut self, what: &str) -> Result<u32, TargetError> {
        let at = self.here();
        let number = self.number(what)?;
        if number % ONE != 0 || number < ONE {
            return Err(TargetError {
                at,
                message: format!("{what} is whole and at least 1"),
                help: FORMS.into(),
            });
        }
        Ok((number / ONE) as u32)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Target {
        Target::read(text).unwrap_or_else(|e| panic!("{text}: {e:?}"))
    }

    #[test]
    fn every_form_reads_and_prints_itself() {
        for text in [
            "5x5",
            "8 reps",
            "1 rep",
            "30 s",
            "3x20 s",
            "5 reps of 5 s",
            "3x5 reps of 5 s",
            "20 s in 3 of 5 tries",
            "5 reps with 0.25 bw",
            "5 reps with 20 kg help",
            "12 cm",
            "at most 5 cm",
            "170 deg",
            "done",
            "8 reps each side",
            "20 s with 0.25 bw",
            "5 reps with 2.5 kg",
        ] {
            assert_eq!(read(text).to_string(), text);
            assert_eq!(
                read(&text.to_uppercase().replace(' ', "")),
                read(text),
                "spaces and case of {text}"
            );
        }
        assert_eq!(read("5×5"), read("5x5"));
        assert_eq!(read("12"), read("12 reps"));
        assert_eq!(read("2 min").to_string(), "120 s");
        assert_eq!(read("4 in").to_string(), "10.16 cm");
        // 1 lb = 0.45359237 kg exactly.
        assert_eq!(
            read("5 reps with 10 lb").to_string(),
            "5 reps with 4.5359237 kg"
        );
    }

    #[test]
    fn faults_name_their_place() {
        for (text, at) in [
            ("5y5", 1..2),
            ("0x5", 0..1),
            ("8 rps", 2..5),
            ("20 s in 6 of 5 tries", 8..14),
            ("at most 5 reps", 8..14),
            ("", 0..0),
            ("1.5x5", 0..3),
            ("2,5 cm", 0..3),
            ("5 reps with 20", 14..14),
            ("0 reps", 0..1),
            ("5x", 2..2),
            ("9999999 s", 0..7),
        ] {
            assert_eq!(Target::read(text).expect_err(text).at, at, "{text}");
        }
    }

    #[test]
    fn asking_at_least() {
        for (a, b, expected) in [
            ("8 reps", "5 reps", true),
            ("9 reps", "5x5", false),
            ("5x5", "8 reps", false),
            ("5x5", "5 reps", true),
            ("at most 5 cm", "at most 8 cm", true),
            ("at most 8 cm", "at most 5 cm", false),
            ("5 reps with 20 kg", "5 reps", true),
            ("5 reps", "5 reps with 20 kg help", true),
            ("5 reps with 10 kg help", "5 reps with 20 kg help", true),
            ("5 reps with 20 kg", "5 reps with 0.1 bw", false),
            ("5 reps with 0.1 bw", "5 reps with 20 kg help", true),
            ("20 s in 3 of 5 tries", "20 s", true),
            ("20 s", "20 s in 3 of 5 tries", false),
            ("5 s in 3 of 5 tries", "5 s in 2 of 3 tries", false),
            ("5 s in 4 of 5 tries", "5 s in 2 of 3 tries", true),
            ("5 reps of 5 s", "5 reps", true),
            ("30 s", "5 reps", false),
        ] {
            assert_eq!(read(a).asks_at_least(&read(b)), expected, "{a} against {b}");
        }
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
