//! What in a site's folder is this program's and what is others': only our own is ever taken away, and no link is followed.

use super::Error;
use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, Metadata};
use std::path::{Path, PathBuf};

/// The file that lists what was written, with hashes. A folder without it was not written by this program.
pub const MANIFEST: &str = "files.json";
/// Stands in a site that is still being written, until its manifest does.
pub const UNFINISHED: &str = ".rungbook-unfinished";
pub const MADE_BY: &str = "rungbook";

/// Path and hash of every file of a site.
pub type Files = BTreeMap<String, String>;

/// What stands at a path, a link as a link.
pub fn there(path: &Path) -> Option<Metadata> {
    fs::symlink_metadata(path).ok()
}

/// What a site's manifest lists; `None` when there is no manifest of this program.
pub fn manifest(dir: &Path) -> Option<Files> {
    let path = dir.join(MANIFEST);
    if !there(&path)?.is_file() {
        return None;
    }
    let value: serde_json::Value = serde_json::from_str(&fs::read_to_string(path).ok()?).ok()?;
    if value["made_by"] != MADE_BY {
        return None;
    }
    let files = value["files"].as_object()?;
    let pair = |(k, v): (&String, &serde_json::Value)| Some((k.clone(), v.as_str()?.to_string()));
    Some(files.iter().filter_map(pair).collect())
}

/// Nothing stands in the folder.
pub fn is_empty(dir: &Path) -> bool {
    fs::read_dir(dir).is_ok_and(|mut entries| entries.next().is_none())
}

/// Every folder that holds one of these files.
pub fn folders(files: &Files) -> BTreeSet<PathBuf> {
    let above = |path: &String| {
        let all = Path::new(path).ancestors().skip(1);
        let inside = all.filter(|a| !a.as_os_str().is_empty());
        inside.map(Path::to_path_buf).collect::<Vec<_>>()
    };
    files.keys().flat_map(above).collect()
}

/// Paths below `dir` that the old site did not write. A folder that neither the old nor the new site uses counts as one.
///
/// # Errors
/// When a folder cannot be read.
pub fn foreign(dir: &Path, old: &Files, new: &Files) -> Result<Vec<PathBuf>, Error> {
    let mut ours = folders(old);
    ours.extend(folders(new));
    let mut out = Vec::new();
    let mut open = vec![PathBuf::new()];
    while let Some(folder) = open.pop() {
        let full = dir.join(&folder);
        let fail = |e| Error::new("read", &full, e);
        for entry in fs::read_dir(&full).map_err(fail)? {
            let entry = entry.map_err(fail)?;
            let path = folder.join(entry.file_name());
            let is_folder = entry.file_type().map_err(fail)?.is_dir();
            let known = path
                .to_str()
                .is_some_and(|p| old.contains_key(p) || p == MANIFEST || p == UNFINISHED);
            match is_folder {
                true if ours.contains(&path) => open.push(path),
                false if known || ours.contains(&path) => {}
                _ => out.push(path),
            }
        }
    }
    out.sort();
    Ok(out)
}

/// The first of others' paths that the new site needs for itself.
pub fn clash<'a>(foreign: &'a [PathBuf], new: &Files) -> Option<&'a Path> {
    let is_file = |p: &Path| {
        p.to_str()
            .is_some_and(|p| new.contains_key(p) || p == MANIFEST)
    };
    let folders = folders(new);
    let clashes = |p: &&PathBuf| p.ancestors().any(is_file) || folders.contains(p.as_path());
    foreign.iter().find(clashes).map(PathBuf::as_path)
}

/// Moves others' files from one folder to the same places in another. What stands there already stays.
///
/// # Errors
/// When the disk refuses.
pub fn carry(paths: &[PathBuf], from: &Path, to: &Path) -> Result<(), Error> {
    for path in paths {
        let (from, to) = (from.join(path), to.join(path));
        if there(&from).is_none() || there(&to).is_some() {
            continue;
        }
        if let Some(folder) = to.parent() {
            fs::create_dir_all(folder).map_err(|e| Error::new("create", folder, e))?;
        }
        fs::rename(&from, &to).map_err(|e| Error::new("keep", &to, e))?;
    }
    Ok(())
}

/// Takes away a folder of this program: its mark goes last, so that a killed run leaves something the next one knows.
///
/// # Errors
/// When the folder bears no mark, or the disk refuses.
pub fn clear(dir: &Path) -> Result<(), Error> {
    let fail = |e| Error::new("clean up", dir, e);
    let marked =
        there(&dir.join(UNFINISHED)).is_some_and(|m| m.is_file()) || manifest(dir).is_some();
    if !there(dir).is_some_and(|m| m.is_dir()) || !(marked || is_empty(dir)) {
        let why = "it stands where the new site is prepared, and this program did not write it; move it away";
        return Err(Error::new("clean up", dir, why));
    }
    for entry in fs::read_dir(dir).map_err(fail)? {
        let entry = entry.map_err(fail)?;
        if entry.file_name() == MANIFEST || entry.file_name() == UNFINISHED {
            continue;
        }
        match entry.file_type().map_err(fail)?.is_dir() {
            true => fs::remove_dir_all(entry.path()).map_err(fail)?,
            false => fs::remove_file(entry.path()).map_err(fail)?,
        }
    }
    for mark in [MANIFEST, UNFINISHED] {
        let mark = dir.join(mark);
        if there(&mark).is_some() {
            fs::remove_file(&mark).map_err(fail)?;
        }
    }
    fs::remove_dir(dir).map_err(fail)
}
