//! The ledger: what each publish with a note added, removed, renamed, raised, lowered or recautioned.

use super::Curriculum;
use super::loosening::{Loosening, What};
use super::target::Target;
use std::collections::BTreeMap;
use std::fmt::Write;

/// How things stood for one movement when the ledger was last written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Standing {
    /// Canonical form.
    pub standard: String,
    /// Caution class ids, sorted.
    pub cautions: Vec<String>,
}

/// One change to one movement.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    Added,
    Removed,
    /// From this id.
    Renamed(String),
    Raised {
        from: String,
        to: String,
    },
    Lowered {
        from: String,
        to: String,
    },
    /// The standard measures something else, or neither asks more.
    Standard {
        from: String,
        to: String,
    },
    Cautions {
        from: Vec<String>,
        to: Vec<String>,
    },
}

/// One publish.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Entry {
    /// A day, `2026-11-25`.
    pub on: String,
    pub note: String,
    /// Movement id and what happened to it, sorted by id.
    pub changes: Vec<(String, Change)>,
    /// What asks less of a body since the publish before; the note is about it.
    pub loosened: Vec<Loosening>,
}

/// The whole ledger, oldest entry first.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Ledger {
    pub entries: Vec<Entry>,
    pub stands: BTreeMap<String, Standing>,
}

impl Ledger {
    /// How the published movements of a curriculum stand.
    pub fn standing(curriculum: &Curriculum) -> BTreeMap<String, Standing> {
        let standing = |m: &super::Movement| {
            let mut cautions: Vec<String> = m
                .cautions()
                .iter()
                .map(|c| curriculum.cautions().class(*c).id.to_string())
                .collect();
            cautions.sort();
            (
                m.id().to_string(),
                Standing {
                    standard: m.standard().to_string(),
                    cautions,
                },
            )
        };
        curriculum.published().map(|(_, m)| standing(m)).collect()
    }

    /// The ledger with one more entry for the curriculum as it now stands.
    pub fn with_entry(&self, curriculum: &Curriculum, on: &str, note: &str) -> Ledger {
        let stands = Ledger::standing(curriculum);
        let changes = changes(&self.stands, &stands, curriculum);
        let mut next = self.clone();
        next.entries.push(Entry {
            on: on.into(),
            note: note.trim().into(),
            changes,
            loosened: Vec::new(),
        });
        next.stands = stands;
        next
    }

    /// The last entry that changed a movement.
    pub fn last_change(&self, id: &str) -> Option<(&Entry, Vec<&Change>)> {
        self.entries.iter().rev().find_map(|entry| {
            let of: Vec<&Change> = entry
                .changes
                .iter()
                .filter(|(m, _)| m == id)
                .map(|(_, c)| c)
                .collect();
            (!of.is_empty()).then_some((entry, of))
        })
    }

    /// The text of `content/ledger.yaml`.
    pub fn to_yaml(&self) -> String {
        let mut out = String::from(
            "# Written by the program when it publishes with a note. Kept in the folder, so that publishing needs nothing else.\nledger: 1\npublished:\n",
        );
        for entry in &self.entries {
            let _ = write!(
                out,
                "  - on: {}\n    note: {}\n",
                entry.on,
                quoted(&entry.note)
            );
            if !entry.changes.is_empty() {
                out.push_str("    changes:\n");
            }
            for (id, change) in &entry.changes {
                let _ = writeln!(out, "      - {{ movement: {id}, {} }}", change_yaml(change));
            }
            if !entry.loosened.is_empty() {
                out.push_str("    loosened:\n");
            }
            for loosening in &entry.loosened {
                let _ = writeln!(out, "      - {}", loosening_yaml(loosening));
            }
        }
        out.push_str("stands:\n");
        for (id, standing) in &self.stands {
            let _ = writeln!(
                out,
                "  {id}: {{ standard: {}, cautions: [{}] }}",
                quoted(&standing.standard),
                standing.cautions.join(", ")
            );
        }
        out
    }
}

fn change_yaml(change: &Change) -> String {
    let pair =
        |word: &str, from: &str, to: &str| format!("{word}: [{}, {}]", quoted(from), quoted(to));
    match change {
        Change::Added => "added: true".into(),
        Change::Removed => "removed: true".into(),
        Change::Renamed(from) => format!("renamed: {from}"),
        Change::Raised { from, to } => pair("raised", from, to),
        Change::Lowered { from, to } => pair("lowered", from, to),
        Change::Standard { from, to } => pair("standard", from, to),
        Change::Cautions { from, to } => {
            format!("cautions: [[{}], [{}]]", from.join(", "), to.join(", "))
        }
    }
}

fn loosening_yaml(loosening: &Loosening) -> String {
    let Loosening {
        of,
        name,
        signal,
        what,
    } = loosening;
    let signal = signal.map_or_else(String::new, |s| format!(", signal: {}", s.word()));
    let all = |texts: &[&str]| {
        let texts: Vec<String> = texts.iter().map(|t| quoted(t)).collect();
        format!("[{}]", texts.join(", "))
    };
    let texts = match what {
        What::Gone | What::New | What::Choice => "[]".to_string(),
        What::Exit { from, to } | What::Lowered { from, to } | What::Raised { from, to } => {
            all(&[from, to])
        }
        What::ClassGone(text)
        | What::ClassNew(text)
        | What::StopGone(text)
        | What::StopNew(text)
        | What::CountsGone(text)
        | What::CountsNew(text) => all(&[text]),
        What::Need { movement, from, to } => all(&[movement, from, to]),
        What::Signal { from, to } => all(&[from.word(), to.word()]),
    };
    format!(
        "{{ of: {of}, name: {}{signal}, {}: {texts} }}",
        quoted(name),
        what.word()
    )
}

/// A YAML text in double quotes. JSON leaves some characters bare that YAML does not read so.
pub fn quoted(text: &str) -> String {
    let json = serde_json::to_string(text).expect("a text is JSON");
    let bare = |c: char| {
        matches!(
            c,
            '\u{7f}'..='\u{9f}' | '\u{2028}' | '\u{2029}' | '\u{feff}' | '\u{fffe}' | '\u{ffff}'
        )
    };
    json.chars()
        .map(|c| match bare(c) {
            true => format!("\\u{:04x}", u32::from(c)),
            false => c.to_string(),
        })
        .collect()
}

fn changes(
    before: &BTreeMap<String, Standing>,
    after: &BTreeMap<String, Standing>,
    curriculum: &Curriculum,
) -> Vec<(String, Change)> {
    let mut out = Vec::new();
    let mut renamed_from = Vec::new();
    for (id, now) in after {
        let old_id = curriculum.find_movement(id).and_then(|ix| {
            curriculum
                .movement(ix)
                .was()
                .iter()
                .map(|w| w.to_string())
                .find(|w| before.contains_key(w) && !after.contains_key(w))
        });
        let (then, renamed) = match (before.get(id), old_id) {
            (Some(then), _) => (then, None),
            (None, Some(old)) => (&before[&old], Some(old)),
            (None, None) => {
                out.push((id.clone(), Change::Added));
                continue;
            }
        };
        if let Some(old) = renamed {
            renamed_from.push(old.clone());
            out.push((id.clone(), Change::Renamed(old)));
        }
        if then.standard != now.standard {
            out.push((id.clone(), standard_change(&then.standard, &now.standard)));
        }
        if then.cautions != now.cautions {
            out.push((
                id.clone(),
                Change::Cautions {
                    from: then.cautions.clone(),
                    to: now.cautions.clone(),
                },
            ));
        }
    }
    for id in before
        .keys()
        .filter(|id| !after.contains_key(*id) && !renamed_from.contains(id))
    {
        out.push((id.clone(), Change::Removed));
    }
    out.sort_by(|a, b| a.0.cmp(&b.0));
    out
}

fn standard_change(from: &str, to: &str) -> Change {
    let (from, to) = (from.to_string(), to.to_string());
    match (Target::read(&from), Target::read(&to)) {
        (Ok(then), Ok(now)) if now.asks_at_least(&then) => Change::Raised { from, to },
        (Ok(then), Ok(now)) if then.asks_at_least(&now) => Change::Lowered { from, to },
        _ => Change::Standard { from, to },
    }
}
