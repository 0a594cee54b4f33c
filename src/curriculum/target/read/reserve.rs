//! What is left in reserve, in the shorthand of notebooks, where a target or a result stands.

use super::{FORMS, TargetError};
use std::ops::Range;

/// Reps that could still have been done (RIR), and the rating of effort that counts them down from ten (RPE).
///
/// # Source
/// Zourdos et al. 2016, J Strength Cond Res 30(1):267-275: an effort of 10 is nothing left, of 8 two.
const WORDS: [(&str, bool); 2] = [("rir", false), ("rpe", true)];

/// Where it stands in a text, and how many are left, if a number stands beside it.
pub fn in_reserve(text: &str) -> Option<(Range<usize>, Option<u32>)> {
    let lower = text.to_ascii_lowercase();
    let (at, counts_down) = WORDS.iter().find_map(|(word, down)| {
        let from = lower.find(word)?;
        let to = from + word.len();
        let alone = !lower[..from].ends_with(char::is_alphabetic)
            && !lower[to..].starts_with(char::is_alphabetic);
        alone.then_some((from..to, *down))
    })?;
    let (before, behind) = (&text[..at.start], &text[at.end..]);
    let mut place = at.clone();
    let digits = |word: &str| word.trim_matches(['@', '=', ':', ',']).parse::<u32>().ok();
    let next = behind
        .split_whitespace()
        .next()
        .and_then(|w| Some((w, digits(w)?)));
    let last = before
        .split_whitespace()
        .next_back()
        .or_else(|| before.rsplit('@').next())
        .and_then(|w| Some((w, digits(w)?)));
    let number = match (next, last) {
        (Some((word, n)), _) => {
            place.end += behind.find(word).unwrap_or(0) + word.len();
            Some(n)
        }
        (None, Some((word, n))) => {
            place.start = before.rfind(word).unwrap_or(place.start);
            Some(n)
        }
        (None, None) => None,
    };
    // A sign before it belongs to it.
    place.start = text[..place.start]
        .trim_end()
        .trim_end_matches(['@', ','])
        .trim_end()
        .len();
    place.start += text[place.start..].len() - text[place.start..].trim_start().len();
    let left = |n: u32| {
        if counts_down {
            10u32.saturating_sub(n)
        } else {
            n
        }
    };
    Some((place, number.map(left)))
}

/// What to write instead: a target has none, a result says it beside.
pub(super) fn instead(text: &str, forms: &str) -> Option<TargetError> {
    let (at, left) = in_reserve(text)?;
    let rest = format!("{} {}", text[..at.start].trim(), text[at.end..].trim());
    let rest = rest.trim();
    let help = match (forms == FORMS, left) {
        (true, _) => format!("leave it out: `{rest}`"),
        (false, left) => {
            let n = left.unwrap_or(2);
            format!("write `{rest}`, and beside it `in_reserve: {n}`")
        }
    };
    Some(TargetError {
        at,
        message: "what is left in reserve does not stand here".into(),
        help,
    })
}
