//! The coach's own definitions as they were written, so that others can read and reuse them.
//!
//! A file in which any record is held back is not published: what is held back is said nowhere.

use crate::curriculum::MovementIx;
use crate::site::Plan;
use crate::source::FileId;
use std::collections::BTreeMap;

/// Where the files of `content/movements` stand on the site.
const FOLDER: &str = "data/definitions";

/// The files of all movements that may be read, in order.
pub fn files(plan: &Plan<'_>) -> Vec<FileId> {
    let mut published: BTreeMap<FileId, bool> = BTreeMap::new();
    for (_, movement) in plan.curriculum.movements() {
        let all = published.entry(movement.spans.whole.file).or_insert(true);
        *all &= !movement.held_back;
    }
    let whole = published.into_iter().filter(|(_, all)| *all);
    whole.map(|(file, _)| file).collect()
}

/// The address of a definition file.
pub fn path(plan: &Plan<'_>, file: FileId) -> String {
    let path = plan.snapshot.path(file);
    let below = path.strip_prefix("content/movements/").unwrap_or(path);
    format!("{FOLDER}/{below}")
}

/// The address of the file that defines a movement, where that is published.
pub fn of(plan: &Plan<'_>, ix: MovementIx) -> Option<String> {
    let file = plan.curriculum.movement(ix).spans.whole.file;
    let is_whole = plan.definitions().binary_search(&file).is_ok();
    is_whole.then(|| path(plan, file))
}

/// The file as the coach wrote it.
pub fn text(plan: &Plan<'_>, file: FileId) -> Vec<u8> {
    plan.snapshot.text(file).as_bytes().to_vec()
}
