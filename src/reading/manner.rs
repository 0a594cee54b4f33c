//! How a movement is done and dosed, as written: tempo, hold, rest, stresses, what goes in its place.

use super::fields::{self, Record};
use super::need::RawLeaf;
use crate::curriculum::Seconds;
use crate::curriculum::keys;
use crate::curriculum::manner::{Held, Stress, Tempo};
use crate::curriculum::target::{Measure, ONE, Target};
use crate::curriculum::words::{BodyPart, End, How, Word};
use crate::source::suggest::{did_you_mean, listed};
use crate::source::yaml::{Node, Value};
use crate::source::{Diagnostic, Findings, Rule, Span};

/// Seconds of rest between sets, and of one end of a rep, at most.
const LONGEST_REST: Seconds = Seconds::of(1800);

/// What goes in a movement's place, before anything is looked up.
#[derive(Clone, Debug, PartialEq)]
pub struct RawInstead<W = RawWhen> {
    pub when: W,
    /// Where its reason stands.
    pub span: Span,
    pub movement: RawLeaf,
}

/// When, as written.
#[derive(Clone, Debug, PartialEq)]
pub enum RawWhen {
    For(String),
    Without(String),
}

fn bad(node: &Node, message: String, help: impl Into<String>) -> Diagnostic {
    Diagnostic::new(Rule::BadValue, node.span, message).help(help)
}

pub fn tempo(node: &Node, findings: &mut Findings) -> Option<Tempo> {
    let text = node.text().unwrap_or("").trim();
    let tempo = Tempo::read(text);
    if tempo.is_none() {
        // Four figures side by side or apart; `x` says as fast as can be.
        let fast = text.to_lowercase().contains('x');
        let plain = text.to_lowercase().replace('x', "1");
        let four: Vec<String> = match plain.len() {
            4 => plain.chars().map(String::from).collect(),
            _ => plain
                .split(|c: char| !c.is_ascii_digit())
                .filter(|part| !part.is_empty())
                .map(str::to_string)
                .collect(),
        };
        let typed = four.join("-");
        let help = match (Tempo::read(&typed).is_some(), fast) {
            (true, true) => format!("as fast as can be is 1 second: type `{typed}`"),
            (true, false) => format!("type `{typed}`"),
            _ => "write the seconds of lowering, pause, lifting and pause, each at most 60: `3-1-1-0`".into(),
        };
        findings.push(bad(node, format!("`{text}` is not a tempo"), help));
    }
    tempo
}

/// `bottom 2 s`, or `top 2 s`.
pub fn hold(node: &Node, findings: &mut Findings) -> Option<Held> {
    let text = node.text().unwrap_or("").trim().to_lowercase();
    let (end, time) = text.split_once(char::is_whitespace).unwrap_or((&text, ""));
    let found = End::read(end).zip(seconds(time).filter(|s| *s <= Seconds::of(Tempo::MOST)));
    if found.is_none() {
        findings.push(bad(
            node,
            format!("`{text}` does not say where a rep is held, and for how long"),
            "write `bottom 2 s` or `top 2 s`, at most 60 s",
        ));
    }
    found.map(|(at, seconds)| Held { at, seconds })
}

/// Rest in training.
pub fn rest(node: &Node, findings: &mut Findings) -> Option<Seconds> {
    let text = node.text().unwrap_or("").trim();
    let found = seconds(text).filter(|s| *s <= LONGEST_REST);
    if found.is_none() {
        findings.push(bad(
            node,
            format!("`{text}` is not a rest between sets"),
            "write it like `90 s` or `2 min`, at most 30 min; words about a test's rest belong under `test`",
        ));
    }
    found
}

/// Whole seconds of a time such as `2 min`, at least 1.
fn seconds(text: &str) -> Option<Seconds> {
    let read = Target::read(text).ok()?;
    let plain = read.measure() == Measure::Time
        && !read.at_most()
        && read.sets() == 1
        && read.added().is_none()
        && read.tries().is_none()
        && !read.each_side();
    let whole = plain && read.amount() % ONE == 0 && read.amount() >= ONE;
    let count = u32::try_from(read.amount() / ONE).ok();
    count.filter(|_| whole).map(Seconds::of)
}

/// Parts alone, or each with the way it is stressed.
pub fn stresses(node: &Node, findings: &mut Findings) -> Vec<Stress> {
    let one = match &node.value {
        Value::Map(_) => vec![node],
        _ => fields::items(node, findings),
    };
    let mut out: Vec<Stress> = Vec::new();
    for item in one {
        let mut add = |part: &Node, how: Option<&Node>| {
            let part = fields::word::<BodyPart>(part, Rule::UnknownPart, findings);
            let how = how.map(|how| fields::word::<How>(how, Rule::BadValue, findings));
            if let (Some(part), true) = (part, how != Some(None)) {
                let how = how.flatten();
                out.push(Stress { part, how });
            }
        };
        match &item.value {
            Value::Map(pairs) => pairs.iter().for_each(|(part, how)| add(part, Some(how))),
            _ => add(item, None),
        }
    }
    by_part(out)
}

/// By part, each once: what says how before what does not, the later before the earlier.
pub fn by_part(all: Vec<Stress>) -> Vec<Stress> {
    let mut out: Vec<Stress> = Vec::new();
    for new in all {
        match out.iter_mut().find(|old| old.part == new.part) {
            Some(old) => old.how = new.how.or(old.how),
            None => out.push(new),
        }
    }
    out.sort();
    out
}

pub fn instead(node: &Node, findings: &mut Findings) -> Vec<RawInstead> {
    let entries = match &node.value {
        Value::Map(_) => vec![node],
        _ => fields::items(node, findings),
    };
    let one = |item: &Node, findings: &mut Findings| {
        let record = Record::open(item, "an instead", keys::INSTEAD, findings)?;
        let (of, without) = (record.get("for"), record.get("without"));
        let when = match (of, without) {
            (Some(when), None) | (None, Some(when)) => when,
            _ => {
                let finding = Diagnostic::new(
                    Rule::BadValue,
                    item.span,
                    "an instead says either `for` or `without`",
                );
                findings.push(finding.help(
                    "write `for:` with a body part or a caution class, or `without:` with equipment",
                ));
                return None;
            }
        };
        let word = fields::text(when, findings)?;
        let id = record.get("do")?;
        Some(RawInstead {
            when: match of {
                Some(_) => RawWhen::For(word),
                None => RawWhen::Without(word),
            },
            span: when.span,
            movement: RawLeaf {
                id: fields::text(id, findings)?,
                span: id.span,
                target: None,
                family: false,
            },
        })
    };
    let read = |item| one(item, findings);
    entries.into_iter().filter_map(read).collect()
}

/// A word behind `for` that is neither a body part nor a class of these.
pub fn unknown_reason(word: &str, span: Span, classes: &[&str]) -> Diagnostic {
    let known = || BodyPart::WORDS.iter().chain(classes).copied();
    let help = did_you_mean(word, known())
        .unwrap_or_else(|| format!("the body parts are {}", listed(BodyPart::WORDS, "and")));
    Diagnostic::new(
        Rule::UnknownPart,
        span,
        format!("`{word}` is neither a body part nor a caution class"),
    )
    .label("unknown")
    .help(help)
}
