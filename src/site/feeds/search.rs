//! What the page's search looks through: names, other names, cues, faults, summaries, the words of the glossary.

use crate::curriculum::Owner;
use crate::curriculum::caution::Part;
use crate::curriculum::note::NoteOwner;
use crate::curriculum::words::Word;
use crate::site::material::Material;
use crate::words::key;
use serde::Serialize;

/// The path of the entries, and what stands before them: a page opened from disk can load a script but no data.
pub const PATH: &str = "data/search.js";
pub const PREFIX: &str = "globalThis.rungbookSearch = ";

/// The entries, without their stamp; kept.
pub fn made<'a>(site: &Material<'a>) -> &'a [u8] {
    site.kept.search.get_or_init(|| entries(site))
}

/// `data/search.js`: one entry a line: address, name, the mark's signal or "", the mark's words, where its mark leads, other
/// names, and everything else that can be found.
fn entries(site: &Material<'_>) -> Vec<u8> {
    let c = site.curriculum;
    let mut out = Entries(format!("{PREFIX}[").into_bytes());
    for (ix, m) in c.published() {
        let (signal, says, href) = mark(site, Owner::Movement(ix));
        let faults = m
            .faults()
            .iter()
            .flat_map(|f| [Some(f.see.as_str()), f.attempt.as_deref()]);
        // The parts of the body that it loads are looked for too.
        let parts = m
            .stresses()
            .iter()
            .map(|part| site.say().say(&key("body", part.part.word())));
        let text: Vec<&str> = std::iter::once(m.summary())
            .chain(m.cues().iter().map(String::as_str))
            .chain(faults.flatten())
            .chain(parts)
            .collect();
        let text = text.join(". ");
        out.add(&(
            "movement",
            m.id().as_str(),
            m.name(),
            signal,
            says,
            href,
            m.also(),
            text,
        ));
    }
    for (ix, f) in c.families().filter(|(_, f)| !f.held_back) {
        let text = f.summary.as_deref().unwrap_or("");
        let (signal, says, href) = mark(site, Owner::Family(ix));
        let id = f.id.as_str();
        out.add(&("family", id, &f.name, signal, says, href, &f.also, text));
    }
    for (ix, s) in c.skills() {
        let text = s.summary.as_deref().unwrap_or("");
        let (signal, says, href) = mark(site, Owner::Skill(ix));
        let id = s.id.as_str();
        out.add(&("skill", id, &s.name, signal, says, href, &s.also, text));
    }
    for (_, n) in c.notes().filter(|(_, n)| n.owner == NoteOwner::Page) {
        out.plain("page", &n.id, &n.title, &[], "");
    }
    for class in c.cautions().classes() {
        let id = format!("cautions.html#{}", class.id);
        let words = site.say();
        let (name, happens) = (class.name(words), class.say(Part::Happens, words));
        out.plain("caution", &id, name, &[], happens);
    }
    out.0.extend_from_slice(b"\n];\n");
    out.0
}

/// The signal of a record's mark, what it says, and where it leads; empty where it bears none.
fn mark<'p>(site: &'p Material<'_>, owner: Owner) -> (&'static str, &'p str, &'p str) {
    let mark = site.links.mark_of(owner);
    mark.map_or(("", "", ""), |m| (m.signal, &m.says, &m.href))
}

/// The file as far as it is written.
struct Entries(Vec<u8>);

impl Entries {
    fn add(&mut self, entry: &impl Serialize) {
        let first = self.0.last() == Some(&b'[');
        self.0.extend_from_slice(if first { b"\n" } else { b",\n" });
        serde_json::to_writer(&mut self.0, entry).expect("texts are JSON");
    }

    /// What has no mark.
    fn plain(&mut self, kind: &str, id: &str, name: &str, also: &[String], text: &str) {
        self.add(&(kind, id, name, "", "", "", also, text));
    }
}
