//! A words file of no language: every English text between marks, so that what comes from nowhere is seen.

use rungbook::words::{Entry, Words};
use serde_json::json;
use std::collections::BTreeMap;

/// A words file in which every text is marked.
pub fn marked() -> String {
    let mark = |text: &str| format!("⟦{text}⟧");
    let mut tree = serde_json::Map::new();
    for (key, entry) in Words::english().entries() {
        let mut at = &mut tree;
        let parts: Vec<&str> = key.split('.').collect();
        let (last, sections) = parts.split_last().expect("a key");
        for section in sections {
            at = at
                .entry(*section)
                .or_insert_with(|| json!({}))
                .as_object_mut()
                .expect("a section");
        }
        let value = match entry {
            Entry::Text(text) => json!(mark(text)),
            Entry::Plural(forms) => {
                json!(
                    forms
                        .iter()
                        .map(|(c, t)| (c, mark(t)))
                        .collect::<BTreeMap<_, _>>()
                )
            }
        };
        at.insert((*last).to_string(), value);
    }
    serde_json::to_string_pretty(&tree).expect("JSON, which is YAML")
}
