//! Reading one value: a text, a list, a word, a target, an id, an amount with its unit; each finding in its place.

use crate::curriculum::Weeks;
use crate::curriculum::words::Word;
use crate::curriculum::{Id, Target};
use crate::source::meant;
use crate::source::suggest::{did_you_mean, listed};
use crate::source::yaml::{Node, Value};
use crate::source::{Diagnostic, Findings, Headline, Rule, Span};

/// A finding about a value of the wrong form.
pub fn shape_finding(node: &Node, message: &str) -> Headline {
    Diagnostic::new(Rule::WrongShape, node.span, message.to_string())
        .label(format!("this is {}", node.kind()))
}

pub fn text(node: &Node, findings: &mut Findings) -> Option<String> {
    match node.text().map(str::trim) {
        Some("..." | "…") => {
            findings.push(
                shape_finding(node, "the dots stand for words of your own")
                    .help("write the words in their place"),
            );
            None
        }
        Some(text) if !text.is_empty() => {
            stray_quotes(node, text, findings);
            fits(node, text, LONGEST_TEXT, findings).then(|| text.to_string())
        }
        Some(_) => {
            findings.push(
                shape_finding(node, "a text is missing here")
                    .help("write some words, or delete the line"),
            );
            None
        }
        None => {
            findings.push(
                shape_finding(node, "a text belongs here")
                    .help("write one text; put it in quotes when it holds a colon"),
            );
            None
        }
    }
}

/// Typographic quotes around a text do not end it, as `"` would: readers see them.
fn stray_quotes(node: &Node, text: &str, findings: &mut Findings) {
    let inner = [('“', '”'), ('„', '“'), ('‘', '’'), ('«', '»'), ('”', '”')]
        .iter()
        .find_map(|(opens, closes)| text.strip_prefix(*opens)?.strip_suffix(*closes));
    if let Some(inner) = inner.filter(|inner| !inner.contains(['“', '”', '‘', '»'])) {
        findings.push(
            Diagnostic::new(
                Rule::StrayQuotes,
                node.span,
                "the quotes are read as a part of the text",
            )
            .label("shown with it")
            .help(format!(
                "write it without quotes, or with plain ones: `\"{inner}\"`"
            )),
        );
    }
}

/// Characters of a name, at most; names stand on buttons, cards and in lists.
pub(super) const LONGEST_NAME: usize = 200;
/// Characters of any other text, at most; what is longer belongs in a note.
const LONGEST_TEXT: usize = 10_000;

/// Whether a text has at most so many characters; a finding where it has more.
pub(super) fn fits(node: &Node, text: &str, most: usize, findings: &mut Findings) -> bool {
    // Bytes first: most texts are short, and a very long one is not counted to its end.
    let fits = text.len() <= most || text.chars().nth(most).is_none();
    if !fits {
        let message = format!("the text has more than {most} characters");
        findings.push(
            Diagnostic::new(Rule::TextTooLong, node.span, message)
                .help("shorten it; what needs more room belongs in a note"),
        );
    }
    fits
}

/// Warns of a safety text that only holds its place.
pub fn finished(node: Option<&Node>, findings: &mut Findings) {
    let nodes = match node.map(|n| (&n.value, n)) {
        Some((Value::List(items), _)) => items.iter().collect(),
        Some((_, node)) => vec![node],
        None => return,
    };
    for node in nodes {
        let text = node.text().unwrap_or("").trim().to_lowercase();
        let words: Vec<&str> = text
            .split(|c: char| !c.is_alphanumeric())
            .filter(|w| !w.is_empty())
            .collect();
        let holds_a_place = match words.as_slice() {
            [] => !text.is_empty(),
            ["todo" | "tbd" | "fixme" | "xxx", ..] | ["to", "do"] => true,
            _ => false,
        };
        if holds_a_place {
            findings.push(
                Diagnostic::new(
                    Rule::UnfinishedText,
                    node.span,
                    format!(
                        "`{}` tells nobody what to do",
                        node.text().unwrap_or("").trim()
                    ),
                )
                .label("not written yet")
                .help("write it before anybody trains by it"),
            );
        }
    }
}

/// A list of texts; one text alone counts as a list of one.
pub fn texts(node: &Node, findings: &mut Findings) -> Vec<(String, Span)> {
    items(node, findings)
        .into_iter()
        .filter_map(|n| text(n, findings).map(|t| (t, n.span)))
        .collect()
}

/// The items of a list; one text alone counts as a list of one.
pub fn items<'a>(node: &'a Node, findings: &mut Findings) -> Vec<&'a Node> {
    match &node.value {
        Value::List(items) => items.iter().collect(),
        Value::Scalar { .. } => vec![node],
        _ => {
            findings.push(
                shape_finding(node, "a list belongs here")
                    .help("begin each item with a dash on a line of its own"),
            );
            Vec::new()
        }
    }
}

pub fn word<W: Word>(node: &Node, rule: Rule, findings: &mut Findings) -> Option<W> {
    let Some(text) = node.text() else {
        findings.push(
            shape_finding(node, &format!("a {} is one word or phrase", W::WHAT))
                .help(format!("type one of {}", listed(W::WORDS, "or"))),
        );
        return None;
    };
    let found = W::read(&text.to_lowercase());
    if found.is_none() {
        let help = meant::value_of(text, W::WORDS)
            .or_else(|| did_you_mean(text, W::WORDS.iter().copied()))
            .unwrap_or_else(|| format!("type one of {}", listed(W::WORDS, "or")));
        let message = match W::WHAT.ends_with('s') && !W::WHAT.contains(' ') {
            true => format!("`{text}` is no word for {}", W::WHAT),
            false => format!("`{text}` is not a {}", W::WHAT),
        };
        findings.push(
            Diagnostic::new(rule, node.span, message)
                .label("not in the list")
                .help(help),
        );
    }
    found
}

pub fn words<W: Word>(node: &Node, rule: Rule, findings: &mut Findings) -> Vec<W> {
    items(node, findings)
        .into_iter()
        .filter_map(|n| word(n, rule, findings))
        .collect()
}

pub fn target(node: &Node, findings: &mut Findings) -> Option<Target> {
    let Some(text) = node.text() else {
        findings.push(
            shape_finding(node, "a target belongs here")
                .help("write it like `5x5`, `8 reps` or `30 s`"),
        );
        return None;
    };
    match Target::read(text) {
        Ok(target) => Some(target),
        Err(error) => {
            let span = if error.at.is_empty() {
                node.span
            } else {
                node.part(error.at.start, error.at.end)
            };
            findings.push(
                Diagnostic::new(
                    Rule::BadTarget,
                    span,
                    format!("`{text}` is not a target: {}", error.message),
                )
                .label("here")
                .help(error.help),
            );
            None
        }
    }
}

pub fn id(node: &Node, findings: &mut Findings) -> Option<Id> {
    let Some(text) = node.text() else {
        findings.push(
            Diagnostic::new(Rule::BadId, node.span, "an id belongs here")
                .help("write small letters, digits and dashes"),
        );
        return None;
    };
    match Id::new(text) {
        Ok(id) => Some(id),
        Err((message, help)) => {
            findings.push(
                Diagnostic::new(Rule::BadId, node.span, message)
                    .label("not an id")
                    .help(help),
            );
            None
        }
    }
}

/// A range of weeks such as `3-8`, or one number.
pub fn weeks(node: &Node, findings: &mut Findings) -> Option<Weeks> {
    let text = node
        .text()
        .unwrap_or("")
        .trim()
        .trim_end_matches("weeks")
        .trim();
    let (from, to) = text.split_once(['-', '–']).unwrap_or((text, text));
    match (from.trim().parse::<u32>(), to.trim().parse::<u32>()) {
        (Ok(from), Ok(to)) if Weeks::new(from, to).is_some() => Weeks::new(from, to),
        (Ok(from), Ok(to)) if from > to => {
            let message = format!("the weeks run backwards: {from} to {to}");
            findings.push(
                Diagnostic::new(Rule::BadWeeks, node.span, message)
                    .help(format!("type `{to}-{from}`")),
            );
            None
        }
        _ => {
            findings.push(
                Diagnostic::new(
                    Rule::BadWeeks,
                    node.span,
                    format!("`{text}` is not a range of weeks"),
                )
                .help("write it like `3-8`"),
            );
            None
        }
    }
}

/// A number with a unit: the number times the unit's size.
pub fn amount(
    node: &Node,
    what: &str,
    units: &[(&str, f64)],
    findings: &mut Findings,
) -> Option<f64> {
    let text = node.text().unwrap_or("").trim().to_lowercase();
    let split = text.find(|c: char| c.is_alphabetic()).unwrap_or(text.len());
    let unit = text[split..].trim();
    let size = if unit.is_empty() {
        units.iter().find(|u| u.0.is_empty()).map(|u| u.1)
    } else {
        units.iter().find(|u| u.0 == unit).map(|u| u.1)
    };
    let number = text[..split]
        .trim()
        .parse::<f64>()
        .ok()
        .filter(|n| n.is_finite() && n.abs() < 1e6);
    match (number, size) {
        (Some(number), Some(size)) => Some(number * size),
        _ => {
            let names: Vec<&str> = units
                .iter()
                .map(|u| u.0)
                .filter(|u| !u.is_empty())
                .collect();
            let example = format!(
                "write a number{}",
                if names.is_empty() {
                    String::new()
                } else {
                    format!(" with {}", listed(&names, "or"))
                }
            );
            findings.push(
                Diagnostic::new(
                    Rule::BadValue,
                    node.span,
                    format!("`{text}` cannot be read as {what}"),
                )
                .help(example),
            );
            None
        }
    }
}
