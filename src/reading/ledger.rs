//! `ledger.yaml`: what each publish with a note changed.

use super::fields::{self, Record};
use super::school::pairs;
use crate::curriculum::caution::Signal;
use crate::curriculum::ledger::{Change, Entry, Ledger, Standing};
use crate::curriculum::loosening::{Loosening, What};
use crate::curriculum::{Day, keys};
use crate::source::yaml::{Node, Value};
use crate::source::{Diagnostic, Findings, Rule, Span};

/// The ledger; unreadable parts are findings, never lost silently.
pub fn ledger(root: &Node, findings: &mut Findings) -> Ledger {
    let mut ledger = Ledger::default();
    let bad = |span: Span, message: &str| {
        Diagnostic::new(Rule::BadLedger, span, message.to_string())
            .help("the program writes this file; take back your last edit of it")
    };
    let Some(record) = Record::open(root, "the ledger", keys::LEDGER, findings) else {
        findings.push(bad(root.span, "the ledger cannot be read"));
        return ledger;
    };
    if record.get("ledger").is_none_or(|n| n.text() != Some("1")) {
        findings.push(bad(
            record.get("ledger").map_or(root.span, |n| n.span),
            "this version of the ledger is not known",
        ));
    }
    for item in record
        .get("published")
        .map_or_else(Vec::new, |n| fields::items(n, findings))
    {
        match entry(item, findings) {
            Some(entry) => ledger.entries.push(entry),
            None => findings.push(bad(item.span, "this entry of the ledger cannot be read")),
        }
    }
    for (key, value) in record.get("stands").map_or(&[][..], |n| {
        pairs(
            n,
            "`stands` is a record by movement",
            "plank: { standard: 60 s }",
            findings,
        )
    }) {
        let Some(record) = Record::open(value, "a standing", keys::LEDGER_STANDING, findings)
        else {
            continue;
        };
        let mut cautions = record.texts("cautions", findings);
        cautions.sort();
        if !key.text().is_some_and(is_id) || !cautions.iter().all(|c| is_id(c)) {
            findings.push(bad(key.span, "an id in the ledger is none"));
            continue;
        }
        if let (Some(id), Some(standard)) = (key.text(), record.text("standard", findings)) {
            ledger
                .stands
                .insert(id.to_string(), Standing { standard, cautions });
        }
    }
    ledger
}

/// What was an id when it was written; since then its word may have been given to a page.
fn is_id(text: &str) -> bool {
    let plain = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
    text.starts_with(|c: char| c.is_ascii_lowercase()) && text.bytes().all(plain)
}

fn entry(node: &Node, findings: &mut Findings) -> Option<Entry> {
    let record = Record::open(node, "an entry", keys::LEDGER_ENTRY, findings)?;
    let on = record
        .text("on", findings)
        .filter(|d| Day::read(d).is_some())?;
    let note = record.text("note", findings)?;
    let mut changes = Vec::new();
    if let Some(list) = record.get("changes") {
        for item in fields::items(list, findings) {
            changes.push(change(item)?);
        }
    }
    let mut loosened = Vec::new();
    if let Some(list) = record.get("loosened") {
        for item in fields::items(list, findings) {
            loosened.push(loosening(item)?);
        }
    }
    Some(Entry {
        on,
        note,
        changes,
        loosened,
    })
}

fn loosening(node: &Node) -> Option<Loosening> {
    let Value::Map(pairs) = &node.value else {
        return None;
    };
    let find = |name: &str| {
        let pair = pairs.iter().find(|(k, _)| k.text() == Some(name));
        pair.map(|(_, v)| v)
    };
    let text = |name: &str| find(name).and_then(Node::text).map(str::to_string);
    let is_head = |k: &str| matches!(k, "of" | "name" | "signal");
    let (word, list) = pairs
        .iter()
        .filter_map(|(k, v)| Some((k.text()?, v)))
        .find(|(k, _)| !is_head(k))?;
    let Value::List(items) = &list.value else {
        return None;
    };
    let texts: Option<Vec<String>> = items.iter().map(|i| i.text().map(str::to_string)).collect();
    let signal = match text("signal") {
        Some(word) => Some(Signal::read(&word)?),
        None => None,
    };
    Some(Loosening {
        of: text("of").filter(|id| is_id(id))?,
        name: text("name")?,
        signal,
        what: what(word, texts?)?,
    })
}

/// What a loosening says of itself.
fn what(word: &str, texts: Vec<String>) -> Option<What> {
    let mut texts = texts.into_iter();
    let mut next = || texts.next();
    Some(match word {
        "gone" => What::Gone,
        "choice" => What::Choice,
        "exit" | "exit_gone" => What::Exit {
            from: next()?,
            to: next()?,
        },
        "class_gone" => What::ClassGone(next()?),
        "need" | "need_gone" => What::Need {
            movement: next()?,
            from: next()?,
            to: next()?,
        },
        "stop_gone" => What::StopGone(next()?),
        "counts_gone" => What::CountsGone(next()?),
        "lowered" => What::Lowered {
            from: next()?,
            to: next()?,
        },
        "weaker" => What::Signal {
            from: Signal::read(&next()?)?,
            to: Signal::read(&next()?)?,
        },
        _ => return None,
    })
}

fn change(node: &Node) -> Option<(String, Change)> {
    let Value::Map(pairs) = &node.value else {
        return None;
    };
    let find = |name: &str| {
        pairs
            .iter()
            .find(|(k, _)| k.text() == Some(name))
            .map(|(_, v)| v)
    };
    let id = |node: &Node| node.text().filter(|t| is_id(t)).map(str::to_string);
    let movement = id(find("movement")?)?;
    let two = |name: &str| match &find(name)?.value {
        Value::List(items) if items.len() == 2 => Some((items[0].clone(), items[1].clone())),
        _ => None,
    };
    let texts = |name: &str| {
        two(name).and_then(|(a, b)| Some((a.text()?.to_string(), b.text()?.to_string())))
    };
    let list = |node: &Node| match &node.value {
        Value::List(items) => items.iter().filter_map(id).collect(),
        _ => Vec::new(),
    };
    let change = if find("added").is_some() {
        Change::Added
    } else if find("removed").is_some() {
        Change::Removed
    } else if let Some(from) = find("renamed") {
        Change::Renamed(id(from)?)
    } else if let Some((from, to)) = texts("raised") {
        Change::Raised { from, to }
    } else if let Some((from, to)) = texts("lowered") {
        Change::Lowered { from, to }
    } else if let Some((from, to)) = texts("standard") {
        Change::Standard { from, to }
    } else {
        let (from, to) = two("cautions")?;
        Change::Cautions {
            from: list(&from),
            to: list(&to),
        }
    };
    Some((movement, change))
}
