//! What was meant where a file is no YAML: indentation, a missing colon, a letter that means something else, what was never closed.

use crate::source::{Diagnostic, FileId, Rule, Span};

/// Why the line of a fault does not line up: its indentation, and that of the lines beside it.
pub(super) fn misplaced(text: &str, at: usize) -> Option<String> {
    let start = text[..at].rfind('\n').map_or(0, |i| i + 1);
    let line = text[start..].lines().next()?;
    let indent = |l: &str| l.len() - l.trim_start_matches(' ').len();
    let here = indent(line);
    let dashed = line.trim_start().starts_with("- ");
    let mut columns: Vec<usize> = Vec::new();
    let written = |l: &&str| !l.trim().is_empty() && !l.trim_start().starts_with('#');
    let above: Vec<&str> = text[..start].lines().filter(written).collect();
    for l in above.iter().rev() {
        let mut column = indent(l);
        let mut found = vec![column];
        // What stands behind a dash is a column of its own where it is a key.
        let mut rest = l.trim_start();
        while let Some(behind) = rest.strip_prefix("- ") {
            let body = behind.trim_start();
            column += rest.len() - body.len();
            if body.starts_with("- ") || body.contains(": ") || body.trim_end().ends_with(':') {
                found.push(column);
            }
            rest = body;
        }
        if found.contains(&here) {
            return None;
        }
        // A line below a key that holds nothing yet may begin further in.
        if columns.is_empty() && here > indent(l) && l.trim_end().ends_with(':') {
            return None;
        }
        if !dashed {
            found.reverse();
        }
        columns.extend(found);
    }
    let beside = columns.into_iter().min_by_key(|c| c.abs_diff(here))?;
    let spaces = |n: usize| match n {
        0 => "none".to_string(),
        1 => "1 space".to_string(),
        n => format!("{n} spaces"),
    };
    Some(format!(
        "this line begins with {}, the lines beside it with {}: begin them alike",
        spaces(here),
        spaces(beside)
    ))
}

/// A line above that was meant as a key and its value, but has no colon with a blank behind it.
pub(super) fn keyless(file: FileId, text: &str, at: usize, info: &str) -> Option<Diagnostic> {
    if info.contains("simple key expected") {
        return bare_key(file, text, at);
    }
    if !info.contains("mapping values") {
        return None;
    }
    let start = text[..at].rfind('\n').map_or(0, |i| i + 1);
    // The colon that surprises is the first of its line: the line itself is a sound key.
    let own = &text[start..at];
    let is_key = !own.is_empty()
        && own
            .chars()
            .all(|c| c.is_alphanumeric() || c == '_' || c == ' ');
    let above = text[..start].trim_end_matches('\n');
    let from = above.rfind('\n').map_or(0, |i| i + 1);
    let line = above[from..].trim_end();
    let indent = |l: &str| l.len() - l.trim_start_matches(' ').len();
    let has_key =
        line.contains(": ") || line.ends_with(':') || line.trim_start().starts_with(['-', '#']);
    if !is_key || has_key || line.trim().is_empty() || indent(line) != indent(own) {
        return None;
    }
    let line = line.trim_start();
    let (message, help) = match line.split_once([':', '=']) {
        Some((key, value)) => (
            "this is not YAML: a key ends with a colon and a blank",
            format!("write `{}: {}`", key.trim(), value.trim()),
        ),
        None => match line.split_once(' ') {
            Some((key, value)) => (
                "this is not YAML: this line has no colon",
                format!("write `{key}: {}`", value.trim()),
            ),
            None => (
                "this is not YAML: this line has no colon",
                format!("write `{line}: ...`"),
            ),
        },
    };
    let begin = from + indent(&above[from..]);
    let span = Span::new(file, begin, begin + line.len());
    Some(Diagnostic::new(Rule::NotYaml, span, message).help(help))
}

/// A key whose colon is missing, its values on the lines below or beside it.
fn bare_key(file: FileId, text: &str, at: usize) -> Option<Diagnostic> {
    let start = text[..at].rfind('\n').map_or(0, |i| i + 1);
    let line = text[start..].lines().next()?.trim_end();
    let body = line.trim_start();
    let (key, value) = body.split_once(' ').unwrap_or((body, ""));
    let is_key = !key.is_empty() && key.chars().all(|c| c.is_alphanumeric() || c == '_');
    if !is_key || body.contains(':') {
        return None;
    }
    let below = text[start + line.len()..]
        .lines()
        .find(|l| !l.trim().is_empty());
    let indent = |l: &str| l.len() - l.trim_start_matches(' ').len();
    let has_values =
        below.is_some_and(|l| indent(l) > indent(line) || l.trim_start().starts_with('-'));
    let help = match value.trim() {
        "" if has_values => format!("write a colon behind it: `{key}:`"),
        "" => format!("write `{key}: ...`"),
        value => format!("write a colon behind `{key}`: `{key}: {value}`"),
    };
    let begin = start + indent(line);
    let span = Span::new(file, begin, start + line.len());
    let message = "this is not YAML: this line has no colon";
    Some(Diagnostic::new(Rule::NotYaml, span, message).help(help))
}

/// What to do about a value whose first letter YAML reads as something else, in the line of a place.
pub(super) fn beginning(text: &str, at: usize) -> Option<String> {
    let start = text[..at.min(text.len())].rfind('\n').map_or(0, |i| i + 1);
    let line = text[start..].lines().next()?;
    let body = line.trim_start();
    if let Some(rest) = body.strip_prefix(['*', '•', '–', '—'])
        && rest.starts_with(' ')
    {
        return Some("begin each part of a list with a dash, `- `".to_string());
    }
    let value = match body.split_once(": ") {
        Some((_, value)) => value.trim_start(),
        None => body.strip_prefix("- ")?.trim_start(),
    };
    let first = value.chars().next()?;
    let odd = "@%*&!|>`".contains(first) || value.starts_with("- ");
    odd.then(|| {
        format!(
            "put the text in quotes: a value that begins with `{first}` is something else in YAML"
        )
    })
}

/// The first quote, bracket or brace that a line opens and does not close, up to the line of a place where reading stopped.
pub(super) fn unclosed(text: &str, at: usize) -> Option<usize> {
    let mut from = 0;
    for line in text.split_inclusive('\n') {
        if from > at {
            return None;
        }
        if let Some(open) = left_open(line)
            && !is_closed_below(&line[open..], &text[from + line.len()..])
        {
            return Some(from + open);
        }
        from += line.len();
    }
    None
}

/// Whether what is opened at the start of a text is closed further down, before the next key or the next part of a list: a text or
/// a list over several lines is sound.
fn is_closed_below(opened: &str, below: &str) -> bool {
    let closes = match opened.chars().next() {
        Some('[') => ']',
        Some('{') => '}',
        Some(quote) => quote,
        None => return false,
    };
    let goes_on = |line: &&str| {
        let body = line.trim_start();
        !body.starts_with("- ") && !body.contains(": ") && !body.trim_end().ends_with(':')
    };
    below
        .lines()
        .take_while(goes_on)
        .any(|l| l.contains(closes))
}

/// What a line opens and does not close, where the next lines are no part of it: a value that ends with its line.
fn left_open(line: &str) -> Option<usize> {
    let mut open: Vec<(usize, char)> = Vec::new();
    let mut quote: Option<(usize, char)> = None;
    // Quotes and brackets count where a value begins.
    let mut begins = true;
    for (at, c) in line.char_indices() {
        match (quote, c) {
            (Some((_, mark)), c) if c == mark => quote = None,
            (Some(_), _) => {}
            (None, '#') if line[..at].ends_with([' ', '\t']) || at == 0 => break,
            (None, '"' | '\'') if begins => quote = Some((at, c)),
            (None, '[' | '{') if begins => open.push((at, c)),
            (None, ']' | '}') => {
                open.pop();
            }
            _ => {}
        }
        begins = match c {
            ' ' | '\t' => begins,
            _ => matches!(c, ':' | '-' | '[' | '{' | ','),
        };
    }
    // A list may go on in the next line behind a comma or an opening bracket.
    let goes_on = line.trim_end().ends_with([',', '[', '{']);
    let unclosed = quote.or(open.last().copied().filter(|_| !goes_on));
    unclosed.map(|(at, _)| at)
}
