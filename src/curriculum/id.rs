//! Ids: the names that records are addressed by, in the folder and on the site.

use super::page;
use icu_normalizer::DecomposingNormalizerBorrowed;
use std::fmt;
use std::sync::Arc;

/// The longest id, in characters.
pub const LONGEST: usize = 64;

/// Words that YAML or some file system would read as something else.
const REFUSED: &[&str] = &[
    "true", "false", "null", "yes", "no", "on", "off", "y", "n", "family", "con", "prn", "aux",
    "nul",
];

/// A checked id: `[a-z][a-z0-9]*(-[a-z0-9]+)*`, at most 64 characters, none of the refused words. Cheap to clone.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Id(Arc<str>);

impl Id {
    /// # Errors
    /// What is wrong with the text, as a lower-case clause, and what to type instead.
    pub fn new(text: &str) -> Result<Id, (String, String)> {
        let parts_are_good = text.split('-').all(|part| {
            !part.is_empty()
                && part
                    .bytes()
                    .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
        });
        let mended = mend(text);
        let instead = if mended.is_empty() {
            "use small letters, digits and single dashes".into()
        } else {
            format!("type `{mended}`")
        };
        if !parts_are_good || !text.starts_with(|c: char| c.is_ascii_lowercase()) {
            return Err((
                format!(
                    "`{text}` cannot be an id: small letters, digits and single dashes, a letter first"
                ),
                instead,
            ));
        }
        if text.len() > LONGEST {
            return Err((
                format!("`{text}` is longer than {LONGEST} characters"),
                "shorten it".into(),
            ));
        }
        let device = text
            .strip_prefix("com")
            .or(text.strip_prefix("lpt"))
            .is_some_and(|n| n.len() == 1 && ("1"..="9").contains(&n));
        if REFUSED.contains(&text) || device {
            return Err((
                format!("`{text}` cannot be an id: programs read it as something else"),
                format!("type a longer name, like `{text}-hold`"),
            ));
        }
        let numbered = text
            .strip_prefix("movements-")
            .is_some_and(|n| n.bytes().all(|b| b.is_ascii_digit()));
        let of_a_skill = ["self-test-", "booklet-"]
            .iter()
            .any(|p| text.starts_with(p));
        if page::page(text).is_some() || numbered || of_a_skill {
            return Err((
                format!("`{text}` is the address of a page that every site has"),
                format!("type another id, like `the-{text}`"),
            ));
        }
        Ok(Id(text.into()))
    }

    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Letters that are no letter with a mark, as they are commonly written in ASCII.
fn other_letter(c: char) -> &'static str {
    match c {
        'ß' => "ss",
        'æ' => "ae",
        'œ' => "oe",
        'ø' => "o",
        'ł' => "l",
        'đ' => "d",
        _ => "",
    }
}

/// The text with everything outside the alphabet of ids turned into dashes.
fn mend(text: &str) -> String {
    // Letters with their marks apart, so that the letter stays: î is i with a mark (Unicode Standard Annex 15, NFD).
    let plain: String = DecomposingNormalizerBorrowed::new_nfd()
        .normalize(&text.to_lowercase())
        .chars()
        .filter(|c| !('\u{300}'..='\u{36f}').contains(c))
        .flat_map(|c| {
            other_letter(c)
                .chars()
                .chain(other_letter(c).is_empty().then_some(c))
                .collect::<Vec<_>>()
        })
        .collect();
    let lower: String = plain
        .chars()
        .map(|c| if c.is_ascii_alphanumeric() { c } else { '-' })
        .collect();
    let parts: Vec<&str> = lower.split('-').filter(|p| !p.is_empty()).collect();
    parts
        .join("-")
        .trim_start_matches(|c: char| c.is_ascii_digit() || c == '-')
        .to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn good_and_bad_ids() {
        for good in ["a", "push-up", "l-sit-2", "constructor", "com10"] {
            assert!(Id::new(good).is_ok(), "{good}");
        }
        for bad in [
            "",
            "Push-up",
            "push--up",
            "-a",
            "2-step",
            "no",
            "com1",
            "lpt9",
            "index",
            "push_up",
            "self-test-push-up",
            "booklet-push-up",
            "é",
            &"a".repeat(65),
        ] {
            assert!(Id::new(bad).is_err(), "{bad}");
        }
        assert_eq!(
            Id::new("Push Up").expect_err("a blank and capitals").1,
            "type `push-up`"
        );
    }
}
