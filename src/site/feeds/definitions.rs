//! The coach's own definitions as they were written, so that others can read and reuse them.
//!
//! A file in which any record is held back is not published: what is held back is said nowhere.

use crate::curriculum::MovementIx;
use crate::site::material::Material;
use crate::source::FileId;
use std::collections::BTreeMap;

/// Where the files of `content/movements` stand on the site.
const FOLDER: &str = "data/definitions";

/// The files of all movements that may be read, in order.
pub fn files<'a>(site: &Material<'a>) -> &'a [FileId] {
    site.kept.definitions.get_or_init(|| found(site))
}

fn found(site: &Material<'_>) -> Vec<FileId> {
    let mut published: BTreeMap<FileId, bool> = BTreeMap::new();
    for (_, movement) in site.curriculum.movements() {
        let all = published.entry(movement.spans().whole.file).or_insert(true);
        *all &= !movement.held_back();
    }
    let whole = published.into_iter().filter(|(_, all)| *all);
    whole.map(|(file, _)| file).collect()
}

/// The address of a definition file.
pub fn path(site: &Material<'_>, file: FileId) -> String {
    let path = site.snapshot.path(file);
    let below = path.strip_prefix("content/movements/").unwrap_or(path);
    format!("{FOLDER}/{below}")
}

/// The address of the file that defines a movement, where that is published.
pub fn of(site: &Material<'_>, ix: MovementIx) -> Option<String> {
    let file = site.curriculum.movement(ix).spans().whole.file;
    let is_whole = files(site).binary_search(&file).is_ok();
    is_whole.then(|| path(site, file))
}

/// The file as the coach wrote it.
pub fn text(site: &Material<'_>, file: FileId) -> Vec<u8> {
    site.snapshot.text(file).as_bytes().to_vec()
}
