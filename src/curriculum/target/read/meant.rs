//! What to write for a target in the shorthand of clocks and notebooks, or with a unit that is none.

use super::{FORMS, Reader, TargetError, Token, UNITS};
use crate::source::suggest::nearest;
use std::ops::Range;

/// Metres that somebody may reach or jump; more is a distance to walk.
const REACH: f64 = 3.0;

/// What to write for a time as a clock shows it, such as `1:30`.
pub(super) fn clock(text: &str) -> Option<String> {
    let (minutes, seconds) = text.trim().split_once(':')?;
    let digits = |t: &str| t.len() <= 3 && t.bytes().all(|b| b.is_ascii_digit());
    let (m, s): (u32, u32) = match digits(minutes) && digits(seconds) {
        true => (minutes.parse().ok()?, seconds.parse().ok()?),
        false => return None,
    };
    Some(match s {
        0 => format!("write `{} s` or `{m} min`", m * 60),
        _ => format!("write `{} s`", m * 60 + s),
    })
}

/// What to write for an amount from one number to another, such as `8-12 reps`: a target is the least that counts.
pub(super) fn span(text: &str, forms: &str) -> Option<String> {
    let (first, rest) = text.split_once(['-', '–', '—'])?;
    let rest = rest.trim_start();
    let digits = rest.len() - rest.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    let ends_in_number = first.trim_end().ends_with(|c: char| c.is_ascii_digit());
    let one = format!("{}{}", first.trim_end(), &rest[digits..]);
    (digits > 0 && ends_in_number).then(|| match forms == FORMS {
        true => format!(
            "a target is one amount, the least that counts: write `{}`",
            one.trim()
        ),
        false => format!(
            "a result is one amount, what was done: write it like `{}`",
            one.trim()
        ),
    })
}

/// What to write for a sign that says a word of a target in the shorthand of notebooks.
pub(super) fn by_sign(text: &str, sign: char, at: Range<usize>) -> Option<String> {
    let (before, behind) = (text[..at.start].trim(), text[at.end..].trim());
    let amount = behind.starts_with(|c: char| c.is_ascii_digit());
    match sign {
        '@' | '+' if amount && !before.is_empty() => {
            Some(format!("write `{before} with {behind}`"))
        }
        '+' | '~' | '>' | '≥' | '=' => {
            let plain = text.replace(['+', '~', '>', '≥', '='], "");
            Some(format!(
                "a target is the least that counts: write `{}`",
                plain.trim()
            ))
        }
        '<' | '≤' => Some(format!(
            "write `at most {}`",
            behind.trim_start_matches('=')
        )),
        '"' | '″' | '”' => Some(format!(
            "write `{before} s` for seconds, `{before} in` for inches"
        )),
        '\'' | '′' | '’' => Some(format!("write `{before} min`")),
        '/' if behind.starts_with("side")
            || behind.starts_with("leg")
            || behind.starts_with("arm") =>
        {
            Some(format!("write `{before} each side`"))
        }
        ',' => Some(format!(
            "write one amount, `{before}`; how it is done stands under `test:`"
        )),
        _ => None,
    }
}

/// What to write for metres: what can be reached is measured in centimetres, what is walked in seconds.
fn metres(typed: &str, word: &str) -> String {
    let walked = "a distance that is walked is not counted, but its time: `40 s`";
    let metres: f64 = typed.parse().unwrap_or(f64::MAX);
    let minutes = match word {
        "m" => format!("; minutes are `{typed} min`"),
        _ => String::new(),
    };
    match metres <= REACH && word != "km" {
        true => format!("write `{} cm`{minutes}; {walked}", (metres * 100.0).round()),
        false => format!("{walked}{minutes}"),
    }
}

/// What to write for a word of a notebook, for sets, sides and what is left to the day; `behind` stands after it, in small letters.
fn by_word(word: &str, typed: &str, behind: &str) -> Option<String> {
    match word {
        "sets" | "set" | "rounds" => {
            let amount: String = behind.chars().filter(char::is_ascii_digit).collect();
            let amount = if amount.is_empty() { "5" } else { &amount };
            let timed = behind.contains("sec") || behind.ends_with('s') && behind.contains(" s");
            let unit = if timed { " s" } else { "" };
            Some(format!("write `{typed}x{amount}{unit}`"))
        }
        "m" | "metres" | "meters" | "metre" | "meter" | "km" => Some(metres(typed, word)),
        "per" | "a" | "on" => Some(format!("write `{typed} reps each side`")),
        _ => None,
    }
}

impl Reader<'_> {
    /// What follows a weight's number and is no unit of mass.
    pub(super) fn no_mass(&self, number: &Range<usize>) -> TargetError {
        let typed = self.text.get(number.clone()).unwrap_or("20").trim();
        let rest = self.text[number.end..].to_lowercase();
        let unit = match rest.trim_start_matches(|c: char| !c.is_alphabetic()) {
            r if r.contains("bodyweight")
                || r.contains("body weight")
                || r.starts_with("of bw") =>
            {
                "bw"
            }
            r if r.starts_with("kilo") || r.starts_with("kgs") || r == "k" => "kg",
            r if r.starts_with("pound") => "lb",
            _ => return self.fault("a weight ends with `kg`, `lb` or `bw`"),
        };
        TargetError {
            at: self.here(),
            message: "a weight ends with `kg`, `lb` or `bw`".into(),
            help: format!("write `with {typed} {unit}`"),
        }
    }

    /// A fault from here on, with what to write by what stands before it.
    pub(super) fn instead(&self, message: &str, help: impl Fn(&str) -> String) -> TargetError {
        let at = self.here().start;
        TargetError {
            at: at..self.end,
            message: message.into(),
            help: help(self.text[..at].trim()),
        }
    }

    /// What follows a number and is no unit of a target.
    pub(super) fn no_unit(&self, number: &Range<usize>) -> TargetError {
        let Some((Token::Word(word), at)) = self.tokens.get(self.at) else {
            return self.fault("this is not a unit");
        };
        let mass = match word.as_str() {
            "kg" => Some("kilograms"),
            "lb" | "lbs" => Some("pounds"),
            "bw" | "bodyweight" => Some("body weights"),
            _ => None,
        };
        let typed = self.text.get(number.clone()).unwrap_or("20").trim();
        let said = by_word(word, typed, &self.text[at.end..].to_lowercase());
        if let Some(help) = said {
            return TargetError {
                at: at.clone(),
                message: "this is not a unit".into(),
                help,
            };
        }
        if let Some(mass) = mass {
            return TargetError {
                at: number.start..at.end,
                message: format!("{mass} alone are not a target"),
                help: format!("say how many reps with it: `5 reps with {typed} {word}`"),
            };
        }
        let known = UNITS.iter().flat_map(|(_, words)| *words).copied();
        let near = nearest(word, known);
        let unit = near.first().and_then(|near| {
            let of = UNITS.iter().find(|(_, words)| words.contains(near));
            of.map(|(unit, _)| unit)
        });
        TargetError {
            at: at.clone(),
            message: "this is not a unit".into(),
            help: unit.map_or_else(
                || self.forms.into(),
                |unit| format!("did you mean `{unit}`?"),
            ),
        }
    }
}
