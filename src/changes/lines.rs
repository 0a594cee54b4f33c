//! Texts of before and now: what was taken away from them. Letters may be mended and words moved; what counts is which words of
//! a line are still said in one line.

use crate::source::suggest::edits;

/// This share of a line's words, in percent, must still stand in one line. Common practice, no source.
const STILL_SAID: usize = 75;

fn words(text: &str) -> Vec<String> {
    let word = |w: &str| {
        let letters: String = w.chars().filter(|c| c.is_alphanumeric()).collect();
        letters.to_lowercase()
    };
    let all = text.split_whitespace().map(word);
    all.filter(|w| !w.is_empty()).collect()
}

/// The same word, or one with a mended letter; short words and numbers are the same or not.
fn alike(a: &str, b: &str) -> bool {
    let long = a.chars().count().min(b.chars().count()) >= 4;
    let number = |w: &str| w.chars().any(char::is_numeric);
    a == b || (long && !number(a) && !number(b) && edits(a, b) <= 1)
}

/// How many of the words of one text, each once, stand in another.
fn kept(before: &[String], now: &[String]) -> usize {
    let mut left: Vec<&String> = now.iter().collect();
    let mut take = |word: &&String| {
        let at = left.iter().position(|w| alike(word, w));
        at.map(|at| left.swap_remove(at)).is_some()
    };
    before.iter().filter(|w| take(w)).count()
}

/// The lines of before that no line of now still says.
pub fn gone<'a>(before: &'a [String], now: &[String]) -> Vec<&'a String> {
    // Most lines stand as they stood.
    let changed: Vec<&String> = before.iter().filter(|line| !now.contains(line)).collect();
    if changed.is_empty() {
        return changed;
    }
    let now: Vec<Vec<String>> = now.iter().map(|line| words(line)).collect();
    let said = |line: &&String| {
        let line = words(line);
        now.iter()
            .any(|now| kept(&line, now) * 100 >= line.len() * STILL_SAID)
    };
    changed.into_iter().filter(|line| !said(line)).collect()
}

/// Whether a way out says less than it said: fewer words, or fewer movements named.
pub fn shorter(before: &str, now: &str) -> bool {
    let links = |text: &str| text.matches("](movement:").count();
    let plain = |text: &str| words(&text.replace("](movement:", " ")).len();
    links(now) < links(before) || plain(now) < plain(before)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn mended_lines_are_still_said_and_others_are_gone() {
        let before = ["Stop at dizziness or numb hands.".to_string()];
        let gone_to = |now: &[&str]| {
            let now: Vec<String> = now.iter().map(|l| l.to_string()).collect();
            gone(&before, &now).len()
        };
        assert_eq!(gone_to(&["Stop at diziness, or numb hands"]), 0);
        assert_eq!(gone_to(&["Stop at dizziness, numb hands or a pinch."]), 0);
        assert_eq!(gone_to(&["Numb hands or dizziness: stop at once."]), 0);
        assert_eq!(gone_to(&["Stop at dizziness."]), 1);
        assert_eq!(gone_to(&["Stop at 10 reps."]), 1);
        assert_eq!(gone_to(&[]), 1);
        let reps = ["Stop after 5 reps or 20 s".to_string()];
        assert_eq!(
            gone(&reps, &["Stop after 9 reps or 90 s".to_string()]).len(),
            1
        );
    }

    #[test]
    fn a_way_out_is_shorter_by_a_word_or_a_link() {
        let exit = "Tuck and [roll](movement:low-roll).";
        assert!(!shorter(exit, "Tuck, and [roll](movement:low-roll)"));
        assert!(!shorter(exit, "Tuck well and [roll](movement:low-roll)."));
        assert!(shorter(exit, "Tuck and roll now, and then some more."));
        assert!(shorter(exit, "[roll](movement:low-roll)."));
        assert!(shorter(exit, ""));
    }
}
