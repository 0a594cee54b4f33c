//! Needs as written: combinations over ids that are not looked up yet.

use super::fields;
use crate::curriculum::{Id, Need, Target};
use crate::source::yaml::{Node, Value};
use crate::source::{Diagnostic, Findings, Headline, Rule, Span};

/// A leaf as written.
#[derive(Clone, Debug, PartialEq)]
pub struct RawLeaf {
    pub id: String,
    pub span: Span,
    /// `None`: at its own standard.
    pub target: Option<(Target, Span)>,
    /// `family: id` stands for all members.
    pub family: bool,
}

/// Reads the list under `needs`. Returns the parts and whether all of them could be read.
pub fn read(node: &Node, findings: &mut Findings) -> (Vec<Need<RawLeaf>>, bool) {
    match &node.value {
        Value::List(items) => parts(items, false, findings),
        Value::Scalar { .. } => parts(std::slice::from_ref(node), false, findings),
        _ => {
            findings.push(
                bad(node.span, "needs are a list")
                    .label(format!("this is {}", node.kind()))
                    .help("begin each need with a dash: `- plank: 60 s`"),
            );
            (Vec::new(), false)
        }
    }
}

fn parts(items: &[Node], in_choice: bool, findings: &mut Findings) -> (Vec<Need<RawLeaf>>, bool) {
    let mut good = true;
    let mut out = Vec::new();
    for item in items {
        match part(item, in_choice, findings) {
            Some(need) => out.push(need),
            None => good = false,
        }
    }
    (out, good)
}

fn bad(span: Span, message: impl Into<String>) -> Headline {
    Diagnostic::new(Rule::BadNeed, span, message)
}

fn part(item: &Node, in_choice: bool, findings: &mut Findings) -> Option<Need<RawLeaf>> {
    let pairs = match &item.value {
        Value::Scalar { text, .. } => return plain(item, text, findings),
        Value::Map(pairs) => pairs,
        _ => {
            findings.push(
                bad(
                    item.span,
                    format!(
                        "a need is an id, an id with a target, or a choice; this is {}",
                        item.kind()
                    ),
                )
                .help("write `- plank: 60 s`"),
            );
            return None;
        }
    };
    if let [_, (second, _), ..] = pairs.as_slice() {
        findings.push(
            bad(second.span, "two needs stand in one item")
                .label("a dash is missing before the second")
                .help("begin each need with a dash on a line of its own"),
        );
        return None;
    }
    let (key, value) = pairs.first()?;
    keyed(key, value, in_choice, findings)
}

/// An id alone: at its own standard.
fn plain(item: &Node, text: &str, findings: &mut Findings) -> Option<Need<RawLeaf>> {
    if text.trim().contains([' ', '\n']) {
        findings.push(
            bad(item.span, format!("`{}` is not an id", shortened(text)))
                .label("an id has no blanks")
                .help(spaced(text)),
        );
        return None;
    }
    Some(Need::Leaf(RawLeaf {
        id: text.trim().into(),
        span: item.span,
        target: None,
        family: false,
    }))
}

/// A way to combine needs, or an id at a target.
fn keyed(
    key: &Node,
    value: &Node,
    in_choice: bool,
    findings: &mut Findings,
) -> Option<Need<RawLeaf>> {
    let word = key.text().unwrap_or("").trim();
    let spaced = shortened(word).to_lowercase();
    let count = spaced
        .strip_prefix("at least ")
        .and_then(|r| r.strip_suffix(" of"));
    match (spaced.as_str(), count) {
        ("all of", _) => group(key, value, false, findings).map(Need::All),
        ("any of", _) => group(key, value, true, findings).map(Need::Any),
        ("family", _) => family(key, value, in_choice, findings),
        (_, Some(count)) => at_least(count, key, value, findings),
        (other, None) if matches!(value.value, Value::List(_)) || joint(other).is_some() => {
            let help = joint(other)
                .unwrap_or_else(|| "write `all of:`, `any of:` or `at least 2 of:`".to_string());
            findings.push(
                bad(key.span, format!("`{word}` is not a way to combine needs"))
                    .label("not known")
                    .help(help),
            );
            None
        }
        // A name where an id belongs.
        (other, None) if other.contains(' ') => {
            fields::id(key, findings);
            None
        }
        (_, None) => {
            let target = fields::target(value, findings)?;
            Some(Need::Leaf(RawLeaf {
                id: word.to_string(),
                span: key.span,
                target: Some((target, value.span)),
                family: false,
            }))
        }
    }
}

fn shortened(text: &str) -> String {
    let line: Vec<&str> = text.split_whitespace().collect();
    line.join(" ")
}

/// What was meant by an id with blanks in it.
fn spaced(text: &str) -> String {
    let text = shortened(text);
    let id = |text: &str| {
        let lower = text.trim().to_lowercase();
        Id::new(&lower).map_or_else(
            |(_, instead)| instead.trim_start_matches("type ").replace('`', ""),
            |id| id.to_string(),
        )
    };
    if text.contains(" - ") || text.starts_with('-') {
        return "give each need a line of its own, with a dash and a blank before it".to_string();
    }
    if let Some((one, other)) = text.split_once(" or ") {
        return format!("write `any of: [{}, {}]`", id(one), id(other));
    }
    if let Some((one, other)) = text.split_once(" and ") {
        return format!(
            "give each a line of its own: `- {}` and `- {}`",
            id(one),
            id(other)
        );
    }
    // An amount behind it, with or without a word between.
    let amount = text
        .split(' ')
        .position(|w| w.starts_with(|c: char| c.is_ascii_digit()));
    if let Some(at) = amount.filter(|at| *at > 0) {
        let words: Vec<&str> = text.split(' ').collect();
        let target = words[at..].join(" ");
        let linking = ["for", "at", "x", "with", "of", "to", "="];
        let before: Vec<&str> = words[..at]
            .iter()
            .copied()
            .filter(|w| !linking.contains(w))
            .collect();
        if Target::read(&target).is_ok() {
            return format!(
                "write a colon between them: `{}: {target}`",
                id(&before.join(" "))
            );
        }
    }
    format!("type `{}`", id(&text))
}

/// What was meant by a key that holds a list.
fn joint(word: &str) -> Option<String> {
    let letters: String = word.chars().filter(|c| c.is_alphanumeric()).collect();
    let of = letters
        .strip_prefix("atleast")
        .and_then(|r| r.strip_suffix("of"));
    let meant = match letters.as_str() {
        "anyof" | "any" | "oneof" | "or" => Some("any of".to_string()),
        "allof" | "all" | "and" => Some("all of".to_string()),
        _ => of
            .filter(|k| !k.is_empty() && k.bytes().all(|b| b.is_ascii_digit()))
            .map(|k| format!("at least {k} of")),
    };
    meant.map(|meant| format!("did you mean `{meant}`?"))
}

fn group(
    key: &Node,
    value: &Node,
    in_choice: bool,
    findings: &mut Findings,
) -> Option<Vec<Need<RawLeaf>>> {
    match &value.value {
        Value::List(items) if !items.is_empty() => {
            let (parts, good) = parts(items, in_choice, findings);
            good.then_some(parts)
        }
        Value::List(_) | Value::Null => {
            findings.push(
                bad(key.span, format!("`{}` is empty", key.text().unwrap_or("")))
                    .label("nothing to choose from")
                    .help("list the parts below it, each with a dash"),
            );
            None
        }
        _ => {
            let message = format!("the parts of `{}` are a list", key.text().unwrap_or(""));
            findings.push(
                bad(value.span, message)
                    .label(format!("this is {}", value.kind()))
                    .help(match value.text() {
                        Some(text) if text.contains(',') => {
                            format!("put them in brackets: `[{}]`", text.trim())
                        }
                        _ => "begin each part with a dash".to_string(),
                    }),
            );
            None
        }
    }
}

fn at_least(
    count: &str,
    key: &Node,
    value: &Node,
    findings: &mut Findings,
) -> Option<Need<RawLeaf>> {
    match count.trim().parse::<u32>() {
        Ok(k) if k >= 1 => group(key, value, true, findings).map(|parts| Need::AtLeast(k, parts)),
        _ => {
            findings.push(
                bad(key.span, format!("`{count}` is not a count from 1"))
                    .help("write `at least 2 of:`"),
            );
            None
        }
    }
}

fn family(
    key: &Node,
    value: &Node,
    in_choice: bool,
    findings: &mut Findings,
) -> Option<Need<RawLeaf>> {
    if !in_choice {
        findings.push(
            Diagnostic::new(
                Rule::OwnFamily,
                key.span,
                "a whole family stands only inside a choice",
            )
            .label("not inside `any of` or `at least k of`")
            .help("write `- any of:` above it, and move it one step inwards"),
        );
        return None;
    }
    let text = value.text()?.trim().to_string();
    Some(Need::Leaf(RawLeaf {
        id: text,
        span: value.span,
        target: None,
        family: true,
    }))
}
