//! Notes that nobody is led to.

use crate::curriculum::note::NoteOwner;
use crate::curriculum::{Curriculum, Owner};
use crate::source::{Diagnostic, Findings, Rule, Span};
use foldhash::fast::FixedState;
use std::collections::HashSet;

pub fn check(curriculum: &Curriculum, findings: &mut Findings) {
    let mut linked: HashSet<&str, FixedState> = HashSet::default();
    for (_, note) in curriculum.notes() {
        for link in &note.outline.links {
            if let Some((_, rest)) = link.to.split_once(':') {
                let id = rest.split('#').next().unwrap_or(rest);
                if id != note.id {
                    linked.insert(id);
                }
            }
        }
        for ix in note.sessions.iter().flatten().filter_map(|l| l.movement()) {
            linked.insert(curriculum.movement(ix).id().as_str());
        }
    }
    for (_, note) in curriculum.notes() {
        // A skill stands on the home page; only pages, movements and families depend on being linked.
        let counts = match note.owner {
            NoteOwner::Page => true,
            NoteOwner::Record(owner) => !matches!(owner, Owner::Skill(_)),
            NoteOwner::FixedPage | NoteOwner::Nobody => false,
        };
        if counts && !note.held_back && !linked.contains(note.id.as_str()) {
            findings.push(
                Diagnostic::new(
                    Rule::UnlinkedNote,
                    Span::top(note.file),
                    format!("no other note links `{}`", note.id),
                )
                .help(format!(
                    "paste `[some words]({}:{})` into another note",
                    kind(&note.owner),
                    note.id
                )),
            );
        }
    }
}

/// How a link names what a note belongs to.
fn kind(owner: &NoteOwner) -> &'static str {
    match owner {
        NoteOwner::Record(Owner::Family(_)) => "family",
        NoteOwner::Record(Owner::Skill(_)) => "skill",
        NoteOwner::Record(Owner::Movement(_)) => "movement",
        _ => "page",
    }
}
