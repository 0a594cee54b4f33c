//! What the page's search looks through: names, other names, cues, faults, summaries, the words of the glossary.

use super::Plan;
use super::view::mark_of;
use crate::curriculum::note::NoteOwner;
use serde_json::{Value, json};

/// The path of the entries, and what stands before them: a page opened from disk can load a script but no data.
pub const PATH: &str = "data/search.js";
pub const PREFIX: &str = "globalThis.rungbookSearch = ";

/// `data/search.js`: one entry a line: address, name, the mark's signal or "", the mark's words, where its mark leads, other
/// names, and everything else that can be found.
pub fn entries(plan: &Plan<'_>) -> Vec<u8> {
    let c = plan.curriculum;
    let plain = |kind: &str, id: &str, name: &str, also: &[String], text: &str| {
        json!([kind, id, name, "", "", "", also, text])
    };
    let mut all: Vec<Value> = Vec::new();
    for (ix, m) in c.published() {
        let mark = mark_of(plan, ix);
        let (signal, says, href) = mark.as_ref().map_or(("", "", ""), |m| {
            (m.signal, m.says.as_str(), m.href.as_str())
        });
        let faults = m
            .faults
            .iter()
            .flat_map(|f| [Some(f.see.as_str()), f.attempt.as_deref()]);
        let text: Vec<&str> = std::iter::once(m.summary.as_str())
            .chain(m.cues.iter().map(String::as_str))
            .chain(faults.flatten())
            .collect();
        all.push(json!([
            "movement",
            m.id.as_str(),
            m.name,
            signal,
            says,
            href,
            m.also,
            text.join(". ")
        ]));
    }
    for (_, f) in c.families().filter(|(_, f)| !f.held_back) {
        let text = f.summary.as_deref().unwrap_or("");
        all.push(plain("family", f.id.as_str(), &f.name, &f.also, text));
    }
    for (_, s) in c.skills() {
        let text = s.summary.as_deref().unwrap_or("");
        all.push(plain("skill", s.id.as_str(), &s.name, &s.also, text));
    }
    for (_, n) in c.notes().filter(|(_, n)| n.owner == NoteOwner::Page) {
        all.push(plain("page", &n.id, &n.title, &[], ""));
    }
    for class in c.cautions.classes() {
        let id = format!("cautions.html#{}", class.id);
        all.push(plain(
            "caution",
            &id,
            class.say("name", plan.say()),
            &[],
            class.say("happens", plan.say()),
        ));
    }
    let mut text = String::from(PREFIX);
    text.push('[');
    for (i, entry) in all.iter().enumerate() {
        text.push_str(if i == 0 { "\n" } else { ",\n" });
        text.push_str(&entry.to_string());
    }
    text.push_str("\n];\n");
    text.into_bytes()
}
