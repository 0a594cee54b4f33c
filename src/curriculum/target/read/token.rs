//! The text of a target as numbers and words.

use super::meant::{by_sign, clock, span};
use super::{FINER, LARGEST, ONE, TargetError};
use std::ops::Range;

/// Letters of the longest run that is split into words; no sensible run comes near, and each letter may double the ways.
const LONGEST_RUN: usize = 40;

#[derive(Clone, Debug, PartialEq)]
pub(super) enum Token {
    /// A number in hundred-millionths: the finest that a mass is printed in.
    Number(i64),
    Word(String),
}

/// Splits into numbers and words; a dot belongs to the number around it.
pub(super) fn tokens(
    text: &str,
    forms: &'static str,
) -> Result<Vec<(Token, Range<usize>)>, TargetError> {
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
