//! Sessions and definitions as HTML with class names. Each line is read by itself: from the left, whatever is first.

use crate::words::escape::escape_into;

/// Part of a line: how long it is, and the class it is shown with, if any.
type Part = (usize, Option<&'static str>);

/// Reads what begins at a place of a line; nothing where nothing does.
type Reader = fn(line: &str, at: usize) -> Option<Vec<Part>>;

/// The text of a session as HTML spans whose classes begin with `hl-`.
pub fn session(text: &str) -> String {
    html("session", in_session, text)
}

/// The text of a definition as HTML spans whose classes begin with `hl-`.
pub fn definition(text: &str) -> String {
    html("definition", in_definition, text)
}

fn html(class: &str, read: Reader, text: &str) -> String {
    if text.is_empty() {
        return String::new();
    }
    let mut out = String::with_capacity(text.len() * 3);
    out.push_str(&format!("<span class=\"hl-{class}\">"));
    for whole in text.split_inclusive('\n') {
        let line = whole.strip_suffix('\n').unwrap_or(whole);
        let mut at = 0;
        while let Some(c) = line[at..].chars().next() {
            let parts = read(line, at).unwrap_or_else(|| vec![(c.len_utf8(), None)]);
            for (length, class) in parts.into_iter().filter(|(length, _)| *length > 0) {
                let part = &line[at..at + length];
                match class {
                    Some(class) => {
                        out.push_str(&format!("<span class=\"hl-{class}\">"));
                        escape_into(&mut out, part);
                        out.push_str("</span>");
                    }
                    None => escape_into(&mut out, part),
                }
                at += length;
            }
        }
        out.push_str(&whole[line.len()..]);
    }
    out.push_str("</span>");
    out
}

/// The length of what all letters of a text's beginning are.
fn span(text: &str, is: impl Fn(char) -> bool) -> usize {
    text.find(|c| !is(c)).unwrap_or(text.len())
}

fn spaces(text: &str) -> usize {
    span(text, char::is_whitespace)
}

fn digits(text: &str) -> usize {
    span(text, |c| c.is_ascii_digit())
}

/// The length of a key, such as `any of` or `standard`, with a colon behind it; the colon is not counted.
fn key(text: &str) -> Option<usize> {
    let begins = text.starts_with(|c: char| c.is_ascii_alphabetic());
    let word = span(text, |c| {
        c.is_ascii_alphanumeric() || matches!(c, '_' | '-')
    });
    begins
        .then_some(word)
        .filter(|n| text[*n..].starts_with(':'))
}

/// The length of a key of several words.
fn key_of_needs(text: &str) -> Option<usize> {
    let plain = ["any of", "all of"]
        .into_iter()
        .find(|k| text.starts_with(k));
    let counted = || {
        let count = digits(text.strip_prefix("at least ")?);
        let end = "at least ".len() + count;
        (count > 0 && text[end..].starts_with(" of")).then_some(end + " of".len())
    };
    let end = plain.map(str::len).or_else(counted)?;
    text[end..].starts_with(':').then_some(end)
}

/// A comment, a key, a text in quotes.
fn in_definition(line: &str, at: usize) -> Option<Vec<Part>> {
    let rest = &line[at..];
    if at == 0 {
        let mut before = spaces(rest);
        while rest[before..].starts_with("- ") {
            before += 2;
        }
        let of = &rest[before..];
        let ends = |n: &usize| of[n + 1..].chars().next().is_none_or(char::is_whitespace);
        if let Some(length) = key_of_needs(of).or_else(|| key(of)).filter(ends) {
            return Some(vec![(before, None), (length, Some("key")), (1, None)]);
        }
    }
    match rest.as_bytes()[0] {
        b'#' => Some(vec![(rest.len(), Some("comment"))]),
        b'{' | b',' => {
            let before = 1 + spaces(&rest[1..]);
            let length = key(&rest[before..])?;
            // A line's end is space too.
            let after = rest[before + length + 1..].chars().next();
            let ends = after.is_none_or(char::is_whitespace);
            ends.then(|| vec![(before, None), (length, Some("key")), (1, None)])
        }
        quote @ (b'"' | b'\'') => {
            let end = rest[1..].find(char::from(quote))?;
            Some(vec![(end + 2, Some("string"))])
        }
        _ => None,
    }
}

const UNITS: [&str; 19] = [
    "reps", "rep", "s", "min", "cm", "in", "deg", "kg", "lb", "bw", "with", "help", "of", "each",
    "side", "at", "most", "tries", "x",
];

/// A pair, a movement, numbers and their units, rests, what stays in reserve.
fn in_session(line: &str, at: usize) -> Option<Vec<Part>> {
    let rest = &line[at..];
    if at == 0
        && let Some(parts) = beginning(rest)
    {
        return Some(parts);
    }
    let number = digits(rest);
    if number > 0 {
        let of_one = rest[number..].strip_prefix('.').map_or(0, digits);
        let fraction = if of_one > 0 { 1 + of_one } else { 0 };
        return Some(vec![(number + fraction, Some("numeric"))]);
    }
    let is_word = |c: char| c.is_alphanumeric() || c == '_';
    if line[..at].ends_with(is_word) {
        return None;
    }
    match &rest[..span(rest, is_word)] {
        "reserve" => Some(vec![("reserve".len(), Some("rest"))]),
        word @ "rest" => {
            let behind = &rest[word.len()..];
            let mut ends = behind.char_indices().map(|(i, _)| i);
            let end = ends.find(|i| is_reserve(&behind[*i..]));
            let pause = end.unwrap_or(behind.len());
            Some(vec![(word.len(), Some("rest")), (pause, Some("pause"))])
        }
        word if UNITS.contains(&word) => Some(vec![(word.len(), Some("unit"))]),
        _ => None,
    }
}

/// Whether a text begins as `2 in reserve` does.
fn is_reserve(text: &str) -> bool {
    let behind =
        |text: &str| -> Option<usize> { Some(span(text, |c| c == ' ')).filter(|n| *n > 0) };
    let of = || {
        let number = Some(digits(text)).filter(|n| *n > 0)?;
        let text = &text[number..];
        let text = text[behind(text)?..].strip_prefix("in")?;
        text[behind(text)?..].strip_prefix("reserve")
    };
    of().is_some()
}

/// The beginning of a line, up to the movement: `A1 warm-up: 2 min hang`, each part but the last left out at will.
fn beginning(line: &str) -> Option<Vec<Part>> {
    // What is left out is tried last.
    (0..8).find_map(|left_out| {
        let mut parts = vec![(spaces(line), None)];
        let mut at = parts[0].0;
        let mut take = |length: usize, class: Option<&'static str>| {
            parts.push((length, class));
            at += length;
            &line[at..]
        };
        let mut rest = take(0, None);
        if left_out & 4 == 0 {
            let number = digits(rest.strip_prefix(|c: char| c.is_ascii_uppercase())?);
            rest = take(1 + number, Some("unit"));
            let space = spaces(rest);
            (number > 0 && space > 0).then_some(())?;
            rest = take(space, None);
        }
        if left_out & 2 == 0 {
            rest.strip_prefix("warm-up:")?;
            rest = take("warm-up:".len(), Some("rest"));
            rest = take(spaces(rest), None);
        }
        if left_out & 1 == 0 {
            let number = span(rest, |c| c.is_ascii_digit() || c == '.');
            (number > 0).then_some(())?;
            rest = take(number, Some("numeric"));
            rest = take(spaces(rest), None);
            let unit = ["min", "s"]
                .into_iter()
                .find(|unit| rest.starts_with(unit))?;
            rest = take(unit.len(), Some("unit"));
            let space = spaces(rest);
            (space > 0).then_some(())?;
            rest = take(space, None);
        }
        let movement = span(rest, |c| {
            c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-'
        });
        rest.starts_with(|c: char| c.is_ascii_lowercase())
            .then_some(())?;
        take(movement, Some("movement"));
        Some(parts)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_definition_shows_its_keys_texts_and_comments() {
        let text = "movement: hang # why\nneeds:\n  - at least 2 of:\n      - { for: \"a: b\", do: 'c' }\nat:x\n<";
        assert_eq!(
            definition(text),
            "<span class=\"hl-definition\"><span class=\"hl-key\">movement</span>: hang <span class=\"hl-comment\"># why</span>\n\
             <span class=\"hl-key\">needs</span>:\n  - <span class=\"hl-key\">at least 2 of</span>:\n      - { <span class=\"hl-key\">for</span>: \
             <span class=\"hl-string\">&quot;a: b&quot;</span>, <span class=\"hl-key\">do</span>: <span class=\"hl-string\">&#39;c&#39;</span> }\nat:x\n&lt;</span>"
        );
        assert_eq!(definition(""), "");
    }

    #[test]
    fn a_session_shows_its_parts() {
        let text =
            "A1 warm-up: 2 min hang 3x8.5 reps, rest 90 s 2 in reserve\nresting restful rest";
        assert_eq!(
            session(text),
            "<span class=\"hl-session\"><span class=\"hl-unit\">A1</span> <span class=\"hl-rest\">warm-up:</span> <span class=\"hl-numeric\">2</span> \
             <span class=\"hl-unit\">min</span> <span class=\"hl-movement\">hang</span> <span class=\"hl-numeric\">3</span>x<span class=\"hl-numeric\">8.5</span> \
             <span class=\"hl-unit\">reps</span>, <span class=\"hl-rest\">rest</span><span class=\"hl-pause\"> 90 s </span><span class=\"hl-numeric\">2</span> \
             <span class=\"hl-unit\">in</span> <span class=\"hl-rest\">reserve</span>\n<span class=\"hl-movement\">resting</span> restful <span class=\"hl-rest\">rest</span></span>"
        );
    }
}
