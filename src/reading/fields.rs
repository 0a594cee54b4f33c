//! Reading the keys of one record: unknown keys, missing keys, and their values, each finding in its place.

mod values;

pub use values::{
    amount, finished, id, items, shape_finding, target, text, texts, weeks, word, words,
};

use crate::curriculum::keys::{Key, MOVEMENT};
use crate::curriculum::words::Word;
use crate::curriculum::{Day, Target};
use crate::source::meant;
use crate::source::suggest::{did_you_mean, listed};
use crate::source::yaml::{Node, Value};
use crate::source::{Diagnostic, Findings, Rule, Span};
use values::{LONGEST_NAME, fits};

/// Records that stand inside a movement.
const INSIDE_A_MOVEMENT: &[&str] = &["a test", "a fault", "a picture", "a clip", "leverage"];

/// A record whose keys were checked against a table.
pub struct Record<'a> {
    pairs: &'a [(Node, Node)],
    /// The keys of its table: one that is read and does not stand there is ours to mend.
    #[cfg(debug_assertions)]
    keys: Vec<&'static str>,
    /// An unknown or missing key was found.
    pub faulty: bool,
}

impl<'a> Record<'a> {
    /// Opens a mapping. `what` names the record in messages: "a movement".
    pub fn open(
        node: &'a Node,
        what: &str,
        keys: &[Key],
        findings: &mut Findings,
    ) -> Option<Record<'a>> {
        let Value::Map(pairs) = &node.value else {
            let help = keys.iter().find(|k| k.required).or(keys.first());
            findings.push(
                shape_finding(node, &format!("{what} is a record of keys")).help(help.map_or_else(
                    || "write keys with values, one a line".to_string(),
                    |k| {
                        format!(
                            "write keys with values, one a line, such as `{}: ...`",
                            k.name
                        )
                    },
                )),
            );
            return None;
        };
        let mut record = Record {
            pairs,
            #[cfg(debug_assertions)]
            keys: keys.iter().map(|k| k.name).collect(),
            faulty: false,
        };
        for (key, value) in pairs {
            record.check_key(key, value, what, keys, findings);
        }
        for key in keys.iter().filter(|k| k.required) {
            if !pairs
                .iter()
                .any(|(k, v)| k.text() == Some(key.name) && v.value != Value::Null)
            {
                record.faulty = true;
                if let Some(finding) = commented(pairs, key.name) {
                    findings.push(finding);
                    continue;
                }
                let span = pairs.first().map_or(node.span, |(k, _)| k.span);
                findings.push(
                    Diagnostic::new(
                        Rule::MissingKey,
                        span,
                        format!("{what} needs the key `{}`", key.name),
                    )
                    .label(format!("`{}` is missing in this record", key.name))
                    .help(format!(
                        "add a line `{}: ...` ({})",
                        key.name,
                        key.says.trim_end_matches('.').to_lowercase()
                    )),
                );
            }
        }
        Some(record)
    }

    fn check_key(
        &mut self,
        key: &Node,
        value: &Node,
        what: &str,
        keys: &[Key],
        findings: &mut Findings,
    ) {
        let word = key.text().unwrap_or("");
        let known = keys.iter().find(|k| k.name == word);
        if let Some(known) = known {
            if value.value == Value::Null && !known.required {
                self.faulty = true;
                findings.push(commented(self.pairs, word).unwrap_or_else(|| {
                    Diagnostic::new(Rule::WrongShape, key.span, format!("`{word}` has no value"))
                        .label("nothing follows")
                        .help("write the value, or delete the line")
                }));
            }
            return;
        }
        self.faulty = true;
        let names = keys.iter().map(|k| k.name);
        let outside = INSIDE_A_MOVEMENT.contains(&what) && MOVEMENT.iter().any(|k| k.name == word);
        let help = outside.then(|| {
            format!("`{word}` belongs to the movement: move it left, until it begins under the movement’s other keys")
        });
        let help = help
            .or_else(|| meant::instead_of(what, word, names.clone()).map(Into::into))
            .or_else(|| did_you_mean(word, names.clone()))
            .unwrap_or_else(|| {
                let all: Vec<&str> = names.collect();
                format!("the keys of {what} are {}", listed(&all, "and"))
            });
        findings.push(
            Diagnostic::new(
                Rule::UnknownKey,
                key.span,
                format!("{what} has no key `{word}`"),
            )
            .label("unknown key")
            .help(help),
        );
    }

    /// The value of a key, if there is one.
    pub fn get(&self, name: &str) -> Option<&'a Node> {
        #[cfg(debug_assertions)]
        assert!(self.keys.contains(&name), "no key table has `{name}`");
        self.pairs
            .iter()
            .find(|(k, v)| k.text() == Some(name) && v.value != Value::Null)
            .map(|(_, v)| v)
    }

    /// Whether the key stands there, with a value or without.
    pub fn has(&self, name: &str) -> bool {
        self.pairs.iter().any(|(k, _)| k.text() == Some(name))
    }

    /// A text on which somebody's safety hangs; that it is not written yet is said.
    pub fn safety(&self, name: &str, findings: &mut Findings) -> Option<String> {
        finished(self.get(name), findings);
        self.text(name, findings)
    }

    pub fn text(&self, name: &str, findings: &mut Findings) -> Option<String> {
        text(self.get(name)?, findings)
    }

    /// A name: one that fits where names stand.
    pub fn name(&self, name: &str, findings: &mut Findings) -> Option<String> {
        let node = self.get(name)?;
        let text = text(node, findings)?;
        fits(node, &text, LONGEST_NAME, findings).then_some(text)
    }

    pub fn texts(&self, name: &str, findings: &mut Findings) -> Vec<String> {
        self.get(name).map_or_else(Vec::new, |n| {
            texts(n, findings).into_iter().map(|t| t.0).collect()
        })
    }

    pub fn word<W: Word>(&self, name: &str, findings: &mut Findings) -> Option<W> {
        word(self.get(name)?, Rule::BadValue, findings)
    }

    pub fn flag(&self, name: &str, findings: &mut Findings) -> Option<bool> {
        let node = self.get(name)?;
        match node.text().map(str::to_lowercase).as_deref() {
            Some("true" | "yes") => Some(true),
            Some("false" | "no") => Some(false),
            _ => {
                let message = format!("`{name}` is true or false");
                findings.push(
                    Diagnostic::new(Rule::BadValue, node.span, message)
                        .help("type `true` or `false`"),
                );
                None
            }
        }
    }

    pub fn day(&self, name: &str, findings: &mut Findings) -> Option<Day> {
        let node = self.get(name)?;
        let text = node.text().unwrap_or("").trim();
        let day = Day::read(text);
        if day.is_none() {
            findings.push(
                Diagnostic::new(
                    Rule::BadDay,
                    node.span,
                    format!("`{text}` is not a day of the calendar"),
                )
                .help(Day::meant(text)),
            );
        }
        day
    }

    pub fn target(&self, name: &str, findings: &mut Findings) -> Option<(Target, Span)> {
        let node = self.get(name)?;
        target(node, findings).map(|t| (t, node.span))
    }

    /// A number with a unit out of a few, such as `40 cm`: the number in the first unit.
    pub fn amount(
        &self,
        name: &str,
        units: &[(&str, f64)],
        findings: &mut Findings,
    ) -> Option<f64> {
        amount(self.get(name)?, name, units, findings)
    }
}

/// A key whose value is a comment: what was meant to be its text begins with `#`.
fn commented(pairs: &[(Node, Node)], name: &str) -> Option<Diagnostic> {
    let (_, value) = pairs.iter().find(|(k, _)| k.text() == Some(name))?;
    let is_comment = value.value == Value::Null && value.span.start < value.span.end;
    is_comment.then(|| {
        Diagnostic::new(
            Rule::MissingKey,
            value.span,
            format!("`{name}` has no value: `#` begins a comment"),
        )
        .label("read by nobody")
        .help(format!(
            "put the text in quotes: `{name}: \"# ...\"`, or leave the `#` out"
        ))
    })
}
