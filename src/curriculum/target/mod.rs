//! Targets: measured amounts such as `5x5`, `30 s`, `5 reps with 20 kg`, `at most 5 cm`.
//!
//! Quantities are whole numbers of a small unit, so that equal values are equal and every machine agrees.

mod got;
mod read;
mod say;

pub use got::Got;
pub use read::in_reserve;
pub use say::{say_length, say_mass};

use super::quantity::{BodyShare, BodyWeight, Mass};
use std::cmp::Ordering;
use std::fmt;
use std::ops::Range;

/// Millionths: of a rep, a second, a centimetre, a degree, or of the client's body weight.
pub type Micro = i64;
/// One in millionths.
pub const ONE: Micro = 1_000_000;
/// Hundred-millionths of a kilogram in one kilogram; a pound is a whole number of them.
pub const KILOGRAM: i64 = 100_000_000;
/// Hundred-millionths of a kilogram in one gram.
const GRAM: i64 = KILOGRAM / 1000;
/// 1 lb = 0.45359237 kg. Source: the international yard and pound agreement of 1959.
pub const POUND: i64 = 45_359_237;
/// 1 in = 2.54 cm. Source: as above.
const INCH: Micro = 2_540_000;

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
    Mass(Mass),
    /// Of the client's own body weight.
    BodyWeight(BodyShare),
}

impl Added {
    /// What is added where nothing is said.
    pub const NONE: Added = Added::Mass(Mass::NONE);

    /// The signed number, whatever its unit.
    pub fn signed(self) -> i64 {
        match self {
            Added::Mass(mass) => mass.units(),
            Added::BodyWeight(share) => share.millionths(),
        }
    }

    /// On a body of this weight; `None` where only the weight, which is not known, could tell.
    pub fn on_body(self, weight: Option<BodyWeight>) -> Option<Mass> {
        match self {
            Added::Mass(mass) => Some(mass),
            Added::BodyWeight(BodyShare::NONE) => Some(Mass::NONE),
            Added::BodyWeight(share) => weight.map(|weight| weight.share(share)),
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

impl Target {
    /// Reads a target. Spaces are optional, letter case is free, `×` is `x`.
    ///
    /// # Errors
    /// The place in the text, what is wrong and what to type.
    pub fn read(text: &str) -> Result<Target, TargetError> {
        read::target(text)
    }

    /// Sets of reps.
    pub fn of_reps(sets: u32, reps: u32) -> Target {
        Target {
            measure: Measure::Reps,
            at_most: false,
            sets,
            amount: Micro::from(reps) * ONE,
            seconds: 0,
            added: None,
            tries: None,
            each_side: false,
        }
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

    /// The same of one side, where somebody else says that it is asked of each.
    pub fn of_one_side(self) -> Target {
        Target {
            each_side: false,
            ..self
        }
    }

    /// The same at another amount, in millionths, at least 0.
    pub fn with_amount(self, amount: Micro) -> Target {
        Target { amount, ..self }
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
                Some(load @ Added::Mass(_)) => (0, load.signed()),
                Some(load @ Added::BodyWeight(_)) => (1, load.signed()),
            };
            let amount = if t.at_most { -t.amount } else { t.amount };
            let tries = t.tries.map_or((0, 0), |t| (t.hits, t.of));
            (unit, load, t.sets, amount, t.seconds, tries)
        };
        key(self).cmp(&key(other))
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
    let ours = ours.unwrap_or(Added::NONE);
    let theirs = theirs.unwrap_or(Added::NONE);
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
    // Who meets a target without tries may have needed any number of them.
    let Some(ours) = ours else { return false };
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
        if let Some(added) = self.added {
            let number = added.signed().abs();
            let (number, unit) = match added {
                Added::Mass(_) => (mass(number), "kg"),
                Added::BodyWeight(_) => (decimal(number), "bw"),
            };
            let help = if added.signed() < 0 { " help" } else { "" };
            write!(f, " with {number} {unit}{help}")?;
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
            "5 reps with 4.5359237 kg",
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
            ("20 s", "20 s in 1 of 2 tries", false),
            ("5 s in 3 of 5 tries", "5 s in 2 of 3 tries", false),
            ("5 s in 4 of 5 tries", "5 s in 2 of 3 tries", true),
            ("5 reps of 5 s", "5 reps", true),
            ("30 s", "5 reps", false),
        ] {
            assert_eq!(read(a).asks_at_least(&read(b)), expected, "{a} against {b}");
        }
    }
}
