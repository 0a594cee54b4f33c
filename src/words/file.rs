//! Reading a words file, with everything that is wrong with it.

use super::safety;
use super::text::{holes, loose_brace};
use super::{Direction, Entry, GEAR, Words};
use crate::source::suggest::{did_you_mean, listed};
use crate::source::yaml::{Node, Value};
use crate::source::{Diagnostic, Findings, Rule};
use std::collections::{BTreeMap, BTreeSet};

/// The plural categories of CLDR.
pub const CATEGORIES: &[&str] = &["zero", "one", "two", "few", "many", "other"];
const DIRECTION: &str = "direction";

/// What one file says.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Own {
    pub direction: Option<Direction>,
    pub entries: Vec<(String, Entry)>,
}

/// A shipped file: every mapping of plural categories is a plural, every other one a section.
pub(super) fn every(root: &Node) -> Own {
    let mut own = Own::default();
    walk_every(root, "", &mut own);
    own
}

fn walk_every(node: &Node, key: &str, own: &mut Own) {
    let Value::Map(pairs) = &node.value else {
        let text = node.text().expect("an entry of a shipped file is a text");
        match key {
            DIRECTION => own.direction = Direction::read(text),
            _ => own
                .entries
                .push((key.to_string(), Entry::Text(text.into()))),
        }
        return;
    };
    let word = |n: &Node| n.text().expect("a key is a text").to_string();
    if pairs.iter().any(|(k, _)| k.text() == Some("other")) {
        let forms = pairs.iter().map(|(k, v)| (word(k), word(v))).collect();
        own.entries.push((key.to_string(), Entry::Plural(forms)));
        return;
    }
    for (k, value) in pairs {
        walk_every(value, &joined(key, &word(k)), own);
    }
}

fn joined(section: &str, key: &str) -> String {
    match section {
        "" => key.to_string(),
        _ => format!("{section}.{key}"),
    }
}

/// Reads a coach's file of a language. What is wrong with an entry is found, and the entry left out.
pub fn own(language: &str, root: &Node, findings: &mut Findings) -> Own {
    let mut reader = Reader {
        language,
        findings,
        own: Own::default(),
    };
    match &root.value {
        Value::Map(_) => reader.section(root, ""),
        _ => reader.shape(
            root,
            "a words file is a record of keys",
            "write sections with entries under them",
        ),
    }
    reader.own
}

struct Reader<'f> {
    language: &'f str,
    findings: &'f mut Findings,
    own: Own,
}

impl Reader<'_> {
    fn section(&mut self, node: &Node, section: &str) {
        let Value::Map(pairs) = &node.value else {
            return;
        };
        for (key, value) in pairs {
            let word = key.text().unwrap_or("");
            let full = joined(section, word);
            if full == DIRECTION {
                self.direction(value);
            } else if section == GEAR && Words::english().entry(&full).is_none() {
                let free = Entry::Text(String::new());
                self.entry(&full, &free, value);
            } else if let Some(known) = Words::english().entry(&full) {
                self.entry(&full, known, value);
            } else if is_section(&full) {
                match value.value {
                    Value::Map(_) => self.section(value, &full),
                    _ => self.shape(
                        value,
                        &format!("`{full}` is a section of entries"),
                        "indent its entries under it",
                    ),
                }
            } else {
                self.unknown(key, section, word);
            }
        }
    }

    fn direction(&mut self, value: &Node) {
        self.own.direction = value.text().and_then(Direction::read);
        if self.own.direction.is_none() {
            let message = "`direction` is how the language is written";
            self.findings.push(
                Diagnostic::new(Rule::BadValue, value.span, message)
                    .help("type `ltr` for left to right, `rtl` for right to left"),
            );
        }
    }

    fn unknown(&mut self, key: &Node, section: &str, word: &str) {
        let siblings = names_under(section);
        let help = did_you_mean(word, siblings.iter().map(String::as_str))
            .unwrap_or_else(|| "`rungbook schema words` lists all keys".to_string());
        let what = match section {
            "" => "a words file".to_string(),
            _ => format!("the section `{section}`"),
        };
        self.findings.push(
            Diagnostic::new(
                Rule::UnknownKey,
                key.span,
                format!("{what} has no key `{word}`"),
            )
            .label("unknown key")
            .help(help),
        );
    }

    fn entry(&mut self, key: &str, known: &Entry, value: &Node) {
        let entry = match &value.value {
            Value::Scalar { text, .. } if !text.trim().is_empty() => self
                .placeholders(known, text, value)
                .then(|| Entry::Text(text.clone())),
            Value::Map(pairs) if matches!(known, Entry::Plural(_)) => {
                self.plural(known, value, pairs)
            }
            _ => {
                let help = match known {
                    Entry::Text(_) => "write the text after the colon",
                    Entry::Plural(_) => {
                        "write the text after the colon, or one under each plural category: one, other"
                    }
                };
                self.shape(value, &format!("`{key}` is a text"), help);
                None
            }
        };
        let entry = entry.filter(|e| self.keeps_safe(key, e, value));
        self.own.entries.extend(entry.map(|e| (key.to_string(), e)));
    }

    /// Whether a text about safety can be seen, and a signal word says what it signals.
    fn keeps_safe(&mut self, key: &str, entry: &Entry, value: &Node) -> bool {
        let Some(fault) = safety::fault(self.language, key, entry) else {
            return true;
        };
        self.findings.push(
            Diagnostic::new(Rule::SignalWord, value.span, fault.message)
                .label("cautions must be read")
                .help(fault.help),
        );
        false
    }

    fn plural(&mut self, known: &Entry, node: &Node, pairs: &[(Node, Node)]) -> Option<Entry> {
        let mut forms = BTreeMap::new();
        let mut sound = true;
        for (category, value) in pairs {
            let word = category.text().unwrap_or("");
            if !CATEGORIES.contains(&word) {
                let help = did_you_mean(word, CATEGORIES.iter().copied())
                    .unwrap_or_else(|| format!("the categories are {}", listed(CATEGORIES, "and")));
                self.findings.push(
                    Diagnostic::new(
                        Rule::UnknownKey,
                        category.span,
                        format!("there is no plural category `{word}`"),
                    )
                    .label("unknown category")
                    .help(help),
                );
                sound = false;
                continue;
            }
            match value.text().filter(|t| !t.trim().is_empty()) {
                Some(text) => {
                    sound &= self.placeholders(known, text, value);
                    forms.insert(word.to_string(), text.to_string());
                }
                None => {
                    self.shape(
                        value,
                        &format!("`{word}` is a text"),
                        "write the text after the colon",
                    );
                    sound = false;
                }
            }
        }
        if !forms.contains_key("other") {
            self.findings.push(
                Diagnostic::new(
                    Rule::MissingKey,
                    node.span,
                    "a plural needs the category `other`",
                )
                .label("`other` is missing here")
                .help("add a line `other: ...`: it stands for every number that no other category names"),
            );
            sound = false;
        }
        sound.then_some(Entry::Plural(forms))
    }

    /// Whether a text has the placeholders and links of the English one, and no others. `{n}` may be left out of a form
    /// that says its number in words.
    fn placeholders(&mut self, known: &Entry, text: &str, node: &Node) -> bool {
        let asked: BTreeSet<String> = known.texts().into_iter().flat_map(holes).collect();
        let has = holes(text);
        let show = |name: &String| match name.bytes().all(|b| b.is_ascii_lowercase() || b == b'_') {
            true => format!("`{{{name}}}`"),
            false => format!("the link to `{name}`"),
        };
        let before = self.findings.len();
        if loose_brace(text) {
            self.findings.push(
                Diagnostic::new(
                    Rule::UnknownPlaceholder,
                    node.span,
                    "a brace stands where no placeholder is",
                )
                .help("leave braces out, but for placeholders such as `{n}`"),
            );
        }
        for name in has.difference(&asked) {
            let names: Vec<String> = asked.iter().map(show).collect();
            let help =
                did_you_mean(name, asked.iter().map(String::as_str)).unwrap_or_else(|| match names
                    .is_empty()
                {
                    true => "this text has no placeholders".to_string(),
                    false => format!("this text has {}", listed(&names, "and")),
                });
            self.findings.push(
                Diagnostic::new(
                    Rule::UnknownPlaceholder,
                    node.span,
                    format!("nothing fills {}", show(name)),
                )
                .help(help),
            );
        }
        let may_lack = |name: &str| name == "n" && matches!(known, Entry::Plural(_));
        for name in asked.difference(&has).filter(|n| !may_lack(n)) {
            self.findings.push(
                Diagnostic::new(
                    Rule::MissingPlaceholder,
                    node.span,
                    format!("the text leaves out {}", show(name)),
                )
                .help("say it too: without it the reader misses what it stands for"),
            );
        }
        self.findings.len() == before
    }

    fn shape(&mut self, node: &Node, message: &str, help: &str) {
        self.findings.push(
            Diagnostic::new(Rule::WrongShape, node.span, message)
                .label(format!("this is {}", node.kind()))
                .help(help),
        );
    }
}

/// The keys that a language which is not shipped leaves to English.
pub fn missing(language: &str, own: &[(String, Own)]) -> Vec<String> {
    if super::is_shipped(language) {
        return Vec::new();
    }
    let has: BTreeSet<&str> = own
        .iter()
        .filter(|(of, _)| super::tags(language).contains(&of.as_str()))
        .flat_map(|(_, own)| own.entries.iter().map(|(key, _)| key.as_str()))
        .collect();
    Words::english()
        .entries()
        .map(|(key, _)| key)
        .filter(|key| !has.contains(key))
        .map(str::to_string)
        .collect()
}

fn is_section(key: &str) -> bool {
    let prefix = format!("{key}.");
    Words::english()
        .entries()
        .any(|(k, _)| k.starts_with(&prefix))
}

/// The keys that may stand in a section.
fn names_under(section: &str) -> Vec<String> {
    let prefix = match section {
        "" => String::new(),
        _ => format!("{section}."),
    };
    let mut out: Vec<String> = Words::english()
        .entries()
        .filter_map(|(k, _)| k.strip_prefix(&prefix)?.split('.').next().map(String::from))
        .collect();
    out.dedup();
    out
}
