//! Texts as readers see them, in whatever letters they are written.

use icu_normalizer::ComposingNormalizerBorrowed;
use icu_properties::CodePointSetData;
use icu_properties::props::DefaultIgnorableCodePoint;

/// Blank letters that Unicode does not call ignorable: the empty Braille cell, the fillers of Hangul.
const BLANK: [char; 5] = ['\u{2800}', '\u{115f}', '\u{1160}', '\u{3164}', '\u{ffa0}'];

/// Whether nobody sees a letter.
fn is_unseen(c: char) -> bool {
    match c.is_ascii() {
        true => c.is_control(),
        false => {
            c.is_control()
                || BLANK.contains(&c)
                || CodePointSetData::new::<DefaultIgnorableCodePoint>().contains(c)
        }
    }
}

/// How many letters and digits of a text are seen.
pub fn letters(text: &str) -> usize {
    let seen = |c: &char| c.is_alphanumeric() && !is_unseen(*c);
    text.chars().filter(seen).count()
}

/// Whether anything of a text is seen.
pub fn is_seen(text: &str) -> bool {
    text.chars().any(|c| !c.is_whitespace() && !is_unseen(c))
}

/// A name as two readers compare it: compatible letters are one (Unicode Standard Annex 15, NFKC), small and capital too, what
/// nobody sees is gone, and any space is one space.
pub fn name(text: &str) -> String {
    let seen: String = text
        .chars()
        .filter(|c| c.is_whitespace() || !is_unseen(*c))
        .collect();
    match seen.is_ascii() {
        true => in_ascii(&seen),
        false => in_full(&seen),
    }
}

/// What [`in_full`] gives for these letters, which are all compatible with themselves alone.
fn in_ascii(seen: &str) -> String {
    let small = seen.to_ascii_lowercase();
    small.split_whitespace().collect::<Vec<&str>>().join(" ")
}

fn in_full(seen: &str) -> String {
    let normal = ComposingNormalizerBorrowed::new_nfkc();
    let small = normal.normalize(seen).to_lowercase();
    let words: Vec<&str> = small.split_whitespace().collect();
    normal.normalize(&words.join(" ")).into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    proptest::proptest! {
        #[test]
        fn ascii_is_read_as_every_letter_is(text in "[ -~\\t\\n\\r]{0,40}") {
            proptest::prop_assert_eq!(in_ascii(&text), in_full(&text));
        }
    }

    #[test]
    fn names_are_read_as_readers_do() {
        for other in [
            "Upside\u{a0}stand",
            "Up\u{ad}side stand",
            "UPSIDE  stand",
            "\u{200b}Upside stand\u{2060}",
            "\u{ff35}pside stand",
            "Upside\n stand",
        ] {
            assert_eq!(name(other), "upside stand", "{other}");
        }
        assert_eq!(name("E\u{301}lan"), name("\u{c9}lan"));
        assert_ne!(name("Upside stands"), name("Upside stand"));
        for blank in ["", "\u{200b}", "\u{2800}\u{3164}", " \u{a0}", "\u{e0041}"] {
            assert!(!is_seen(blank) && letters(blank) == 0, "{blank:?}");
        }
        assert!(is_seen("!!") && letters("!!") == 0 && letters("\u{5d0}b1") == 3);
    }
}
