//! Renaming a record: its id wherever it is written, its old id kept under `was`, its note and its own pictures moved.
//!
//! Pure: a snapshot goes in, the files that change come out. Nothing else in them is touched, neither comments nor layout.
//! The result is read again before it is given out: it must be the same curriculum under another id.

mod edit;
mod places;

use crate::curriculum::{Curriculum, Id, Owner};
use crate::proof::{Proofread, proofread};
use crate::source::suggest::did_you_mean;
use crate::source::{Content, Snapshot, SourceFile};
use edit::Edit;
use std::collections::BTreeMap;

/// What a rename does to the folder.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Renamed {
    /// Files with their new text, by the path that they have now.
    pub texts: BTreeMap<String, String>,
    /// Files that move: from path, to path.
    pub moves: Vec<(String, String)>,
    /// How often the id was written.
    pub places: usize,
}

/// Why a record cannot be renamed, and what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    pub why: String,
    pub help: String,
}

fn refuse<T>(why: impl Into<String>, help: impl Into<String>) -> Result<T, Refusal> {
    Err(Refusal {
        why: why.into(),
        help: help.into(),
    })
}

/// Renames a movement, family or skill.
///
/// # Errors
/// When there is no such record, when the new id cannot be one or is taken, when the curriculum has errors, or when the id is
/// written in a way that cannot be changed letter by letter.
pub fn rename(
    snapshot: &Snapshot,
    before: &Proofread,
    old: &str,
    new: &str,
) -> Result<Renamed, Refusal> {
    let owner = asked(before, old, new)?;
    let mut edits: BTreeMap<String, Vec<Edit>> = BTreeMap::new();
    let mut moves = moved(snapshot, old, new);
    for (file, source) in snapshot.files() {
        let Content::Text(text) = &source.content else {
            continue;
        };
        let found = places::of(file, &source.path, text, old, new, &moves);
        if found.unclear {
            return refuse(
                format!(
                    "`{old}` is written in {} in a way that cannot be changed letter by letter",
                    source.path
                ),
                "write it there as one plain word, then rename it again",
            );
        }
        if !found.edits.is_empty() {
            edits.insert(source.path.clone(), found.edits);
        }
    }
    let places = edits.values().map(Vec::len).sum();
    let texts: BTreeMap<String, String> = edits
        .into_iter()
        .map(|(path, edits)| {
            let text = snapshot.find(&path).map_or("", |file| snapshot.text(file));
            (path, edit::apply(text, edits))
        })
        .collect();
    moves.sort();
    let renamed = Renamed {
        texts,
        moves,
        places,
    };
    checked(snapshot, before, owner, old, new, renamed)
}

/// Whether the rename may be tried at all.
fn asked(before: &Proofread, old: &str, new: &str) -> Result<Owner, Refusal> {
    if before.findings.has_errors() {
        return refuse(
            "the curriculum has errors",
            "mend what `rungbook proof` says, then rename",
        );
    }
    let curriculum = &before.curriculum;
    let owner = match curriculum.find(old) {
        Some(Owner::Page(_)) => {
            return refuse(
                format!(
                    "`{old}` is a page of its own, and a page cannot say what it was called before"
                ),
                "keep its address, or leave a short page there that links to the new one",
            );
        }
        Some(owner) => owner,
        None => {
            if let Some(owner) = bearer(curriculum, old) {
                let id = curriculum.id_of(owner);
                return refuse(
                    format!("`{old}` was renamed already"),
                    format!("it is `{id}` now"),
                );
            }
            let help = did_you_mean(old, curriculum.ids());
            return refuse(
                format!("no record has the id `{old}`"),
                help.unwrap_or_else(|| "`rungbook chain` and the site list the ids".into()),
            );
        }
    };
    if let Err((why, help)) = Id::new(new) {
        return refuse(why, help);
    }
    if old == new || curriculum.find(new).is_some() || bearer(curriculum, new).is_some() {
        return refuse(format!("`{new}` is taken"), "type another id");
    }
    Ok(owner)
}

/// The record that bore an id before.
fn bearer(curriculum: &Curriculum, old: &str) -> Option<Owner> {
    let mut all = curriculum.old_ids();
    all.find(|(id, _)| *id == old).map(|(_, owner)| owner)
}

/// The note and the pictures that bear the old id.
fn moved(snapshot: &Snapshot, old: &str, new: &str) -> Vec<(String, String)> {
    let to = |path: &str| {
        let (folder, name) = path.rsplit_once('/')?;
        let (stem, ending) = name.split_once('.')?;
        let theirs = folder.starts_with("content/notes") && folder != "content/notes/pages"
            || folder.starts_with("content/pictures");
        (theirs && stem == old).then(|| format!("{folder}/{new}.{ending}"))
    };
    snapshot
        .files()
        .filter_map(|(_, source)| Some((source.path.clone(), to(&source.path)?)))
        .collect()
}

/// The folder after a rename.
pub fn after(snapshot: &Snapshot, renamed: &Renamed) -> Snapshot {
    let file = |source: &SourceFile| {
        let content = match renamed.texts.get(&source.path) {
            Some(text) => Content::Text(text.clone()),
            None => source.content.clone(),
        };
        let to = renamed.moves.iter().find(|(from, _)| *from == source.path);
        SourceFile {
            path: to.map_or(&source.path, |(_, to)| to).clone(),
            content,
        }
    };
    Snapshot::new(snapshot.files().map(|(_, source)| file(source)).collect())
}

/// Reads the result: the same findings, and every record as it was.
fn checked(
    snapshot: &Snapshot,
    before: &Proofread,
    owner: Owner,
    old: &str,
    new: &str,
    renamed: Renamed,
) -> Result<Renamed, Refusal> {
    let taken = renamed
        .moves
        .iter()
        .find(|(_, to)| snapshot.find(to).is_some());
    if let Some((from, to)) = taken {
        return refuse(
            format!("{from} cannot move: {to} is there already"),
            "move that file away, then rename",
        );
    }
    let read = proofread(&after(snapshot, &renamed));
    let (then, now) = (&before.curriculum, &read.curriculum);
    let same = now.find(new).is_some_and(|found| {
        std::mem::discriminant(&found) == std::mem::discriminant(&owner)
            && bearer(now, old) == Some(found)
            && now.len() == then.len()
            && now.ids().count() == then.ids().count()
            && read.findings.len() == before.findings.len()
            && !read.findings.has_errors()
    });
    if !same {
        let why = read.findings.iter().next().map(|f| f.message.clone());
        return refuse(
            format!("with `{new}` in place of `{old}` the curriculum would not be the same"),
            why.unwrap_or_else(|| "change it by hand, and keep the old id under `was:`".into()),
        );
    }
    Ok(renamed)
}
