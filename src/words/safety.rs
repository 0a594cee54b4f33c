//! Texts about safety: what a coach's own words may not take away.

use super::{Entry, seen};

/// The signal words agreed for the shipped languages: those of ANSI Z535.6, and for Hebrew common practice, no source.
const AGREED: &[(&str, &str, &[&str])] = &[
    ("en", "warning", &["warning", "danger"]),
    ("en", "caution", &["caution"]),
    ("en", "notice", &["notice"]),
    ("he", "warning", &["אזהרה", "סכנה"]),
    ("he", "caution", &["זהירות"]),
    ("he", "notice", &["הערה", "שימו לב"]),
];

/// Entries of which something must be seen, by how their keys begin.
const SEEN: &[&str] = &[
    "caution.",
    "signal.",
    "map.sign_",
    "part.not_medical_advice",
    "guard.",
    "means.",
    "offline.kept_from",
];

/// What is wrong with a text about safety.
pub struct Fault {
    pub message: String,
    pub help: String,
}

/// Whether a coach's own text takes a caution away.
pub fn fault(language: &str, key: &str, entry: &Entry) -> Option<Fault> {
    if !SEEN.iter().any(|begins| key.starts_with(begins)) {
        return None;
    }
    let texts = entry.texts();
    let enough = |text: &&str| match key.starts_with("map.sign_") {
        true => seen::is_seen(text),
        false => seen::letters(text) >= 2,
    };
    if !texts.iter().all(enough) {
        return Some(Fault {
            message: format!("of `{key}` nobody would see anything"),
            help: "write it in letters that are seen, or leave the line out".into(),
        });
    }
    let signal = key.strip_prefix("signal.")?;
    let short = language.split('-').next().unwrap_or(language);
    let agreed = AGREED
        .iter()
        .find(|(of, for_signal, _)| *of == short && *for_signal == signal);
    let (_, _, words) = agreed?;
    let is_agreed = |text: &&str| {
        words
            .iter()
            .any(|word| seen::name(word) == seen::name(text))
    };
    (!texts.iter().all(is_agreed)).then(|| Fault {
        message: format!(
            "`{}` is no signal word for a {signal}",
            texts.first().unwrap_or(&"")
        ),
        help: format!("type `{}`", words.join("` or `")),
    })
}
