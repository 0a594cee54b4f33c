//! Text for a terminal: names of files and folders may hold what would steer it, or turn what is read around.

use std::borrow::Cow;

/// Whether a terminal would obey a character instead of showing it (C0 and C1 controls, delete), or it changes the direction or
/// the order of what stands beside it, or breaks a line.
///
/// # Source
/// The Unicode Standard: category Cc; Bidi_Control of PropList.txt; U+2028 and U+2029 of category Zl and Zp.
pub fn steers(c: char) -> bool {
    c.is_control()
        || matches!(
            c,
            '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}'
        )
}

/// A name with such characters written out as `\u{1b}`.
pub fn legible(name: &str) -> Cow<'_, str> {
    if !name.contains(steers) {
        return Cow::Borrowed(name);
    }
    let shown = |c: char| match steers(c) {
        true => c.escape_unicode().to_string(),
        false => c.to_string(),
    };
    Cow::Owned(name.chars().map(shown).collect())
}

/// The same JSON, with such characters as `\u001b` in its texts: they stand nowhere else.
pub fn legible_json(json: &str) -> Cow<'_, str> {
    // Between values JSON breaks its own lines.
    let steers = |c: char| steers(c) && c != '\n';
    if !json.contains(steers) {
        return Cow::Borrowed(json);
    }
    let shown = |c: char| match steers(c) {
        true => format!("\\u{:04x}", u32::from(c)),
        false => c.to_string(),
    };
    Cow::Owned(json.chars().map(shown).collect())
}
