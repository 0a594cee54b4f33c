//! What in a site's folder is this program's and what is others': only what a list of our own names is ever erased, no link is
//! followed, and no other file system is entered.

use super::Error;
use super::fixed;
use super::modes;
use rustix::fs::{CWD, RenameFlags, renameat_with};
use rustix::io::Errno;
use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, Metadata};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

/// The file that lists what was written, with hashes. A folder without it was not written by this program.
pub const MANIFEST: &str = "files.json";
/// Stands in a site that is still being written, until its manifest does; it lists what will be written.
pub const UNFINISHED: &str = ".rungbook-unfinished";
pub const MADE_BY: &str = "rungbook";

/// Path and hash of every file of a site; the hash is empty where the file is not written yet.
pub type Files = BTreeMap<String, String>;

/// What a list of this program says.
#[derive(Clone, Debug, Default)]
pub struct Listed {
    pub files: Files,
    /// The address of the school whose site it is.
    pub school: Option<String>,
}

/// What stands at a path, a link as a link.
pub fn there(path: &Path) -> Option<Metadata> {
    fs::symlink_metadata(path).ok()
}

/// What a site's manifest lists; `None` when there is no manifest of this program.
pub fn manifest(dir: &Path) -> Option<Listed> {
    listed(&dir.join(MANIFEST))
}

/// What was to be written into a folder before somebody ended the program; `None` when its mark is not there.
pub fn unfinished(dir: &Path) -> Option<Listed> {
    listed(&dir.join(UNFINISHED))
}

fn listed(path: &Path) -> Option<Listed> {
    if !there(path)?.is_file() {
        return None;
    }
    let value: serde_json::Value = serde_json::from_str(&fs::read_to_string(path).ok()?).ok()?;
    if value["made_by"] != MADE_BY {
        return None;
    }
    let pair = |(k, v): (&String, &serde_json::Value)| Some((k.clone(), v.as_str()?.to_string()));
    Some(Listed {
        // A list that was tampered with leads nowhere else.
        files: value["files"]
            .as_object()?
            .iter()
            .filter(|(path, _)| is_inside(path))
            .filter_map(pair)
            .collect(),
        school: value["school"].as_str().map(str::to_string),
    })
}

/// Only plain names between the slashes.
fn is_inside(path: &str) -> bool {
    path.split('/')
        .all(|part| !matches!(part, "" | "." | "..") && !part.contains('\0'))
}

/// The text of a list.
pub fn listing(files: &Files, school: &str) -> String {
    let value =
        serde_json::json!({ "made_by": MADE_BY, "format": 1, "school": school, "files": files });
    serde_json::to_string_pretty(&value).expect("a listing is JSON") + "\n"
}

/// Nothing stands in the folder.
pub fn is_empty(dir: &Path) -> bool {
    fs::read_dir(dir).is_ok_and(|mut entries| entries.next().is_none())
}

/// Nothing stands in the folder but the mark, which a killed run may have left half written.
pub fn is_bare(dir: &Path) -> bool {
    fs::read_dir(dir).is_ok_and(|entries| {
        entries
            .flatten()
            .all(|entry| entry.file_name() == UNFINISHED)
    })
}

/// Every folder above one of these paths, the outer before the inner.
pub fn folders<'a>(paths: impl Iterator<Item = &'a Path>) -> BTreeSet<PathBuf> {
    let mut out = BTreeSet::new();
    for path in paths {
        for above in path.ancestors().skip(1) {
            if above.as_os_str().is_empty() || out.contains(above) {
                break;
            }
            out.insert(above.to_path_buf());
        }
    }
    out
}

/// Every folder that holds one of these files.
pub fn folders_of(files: &Files) -> BTreeSet<PathBuf> {
    folders(files.keys().map(Path::new))
}

/// Paths below `dir` that the old site did not write. A folder that neither the old nor the new site uses counts as one.
///
/// # Errors
/// When a folder cannot be read, or another file system is mounted in the place of one.
pub fn foreign(dir: &Path, old: &Files, new: &Files) -> Result<Vec<PathBuf>, Error> {
    let mut ours = folders_of(old);
    ours.extend(folders_of(new));
    let mut out = Vec::new();
    let mut open = vec![PathBuf::new()];
    while let Some(folder) = open.pop() {
        let full = dir.join(&folder);
        let fail = |e| Error::new("read", &full, e);
        if !folder.as_os_str().is_empty() {
            fixed::mounted(&full)?;
        }
        for entry in fs::read_dir(&full).map_err(fail)? {
            let entry = entry.map_err(fail)?;
            let path = folder.join(entry.file_name());
            let kind = entry.file_type().map_err(fail)?;
            let known = path
                .to_str()
                .is_some_and(|p| old.contains_key(p) || p == MANIFEST || p == UNFINISHED);
            match kind.is_dir() {
                true if ours.contains(&path) => open.push(path),
                false if known || (kind.is_symlink() && ours.contains(&path)) => {}
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
    let folders = folders_of(new);
    let clashes = |p: &&PathBuf| p.ancestors().any(is_file) || folders.contains(p.as_path());
    foreign.iter().find(clashes).map(PathBuf::as_path)
}

/// Moves others' files from one folder to the same places in another: all of them, or none.
///
/// # Errors
/// When one cannot be moved, or something else stands where it belongs.
pub fn carry(paths: &[PathBuf], from: &Path, to: &Path) -> Result<(), Error> {
    for (n, path) in paths.iter().enumerate() {
        if let Err(error) = move_one(path, from, to) {
            for back in paths[..n].iter().rev() {
                // What cannot go back stays where it is: nothing that is not listed is ever erased.
                let _ = move_one(back, to, from);
            }
            return Err(error);
        }
    }
    Ok(())
}

fn move_one(path: &Path, from: &Path, to: &Path) -> Result<(), Error> {
    let (old, new) = (from.join(path), to.join(path));
    if there(&old).is_none() {
        return Ok(());
    }
    for folder in folders([path].into_iter()) {
        let made = to.join(&folder);
        match fs::create_dir(&made) {
            Ok(()) => modes::as_the_folder(&from.join(&folder), &made),
            Err(e) if e.kind() == ErrorKind::AlreadyExists => {}
            Err(e) => return Err(Error::new("create", &made, e)),
        }
    }
    rename_anew(&old, &new).map_err(|e| match e.kind() {
        ErrorKind::AlreadyExists => Error::new(
            "keep",
            &old,
            "something of that name stands where it belongs; move it away",
        ),
        _ => Error::new("keep", &old, e),
    })
}

/// Renames, and takes nothing's place.
pub fn rename_anew(from: &Path, to: &Path) -> std::io::Result<()> {
    match renameat_with(CWD, from, CWD, to, RenameFlags::NOREPLACE) {
        Err(Errno::INVAL | Errno::NOSYS | Errno::OPNOTSUPP) => match there(to) {
            Some(_) => Err(ErrorKind::AlreadyExists.into()),
            None => fs::rename(from, to),
        },
        done => Ok(done?),
    }
}

/// Erases the listed files of a folder, the folders that this leaves empty, and the folder itself; its marks go last, so that a
/// killed run leaves something the next one knows. Whatever else is in it stays.
///
/// # Errors
/// When the disk refuses, or something that is not listed stays.
pub fn erase(dir: &Path, files: &Files, folders: &BTreeSet<PathBuf>) -> Result<(), Error> {
    let mut real: BTreeSet<&Path> = BTreeSet::from([Path::new("")]);
    for folder in folders {
        let above = folder.parent().unwrap_or(Path::new(""));
        let full = dir.join(folder);
        match there(&full).filter(|_| real.contains(above)) {
            Some(data) if data.is_dir() && fixed::mounted(&full).is_ok() => {
                real.insert(folder);
            }
            Some(data) if data.is_symlink() => remove(&full)?,
            _ => {}
        }
    }
    for path in files.keys() {
        let above = Path::new(path).parent().unwrap_or(Path::new(""));
        let full = dir.join(path);
        if real.contains(above) && there(&full).is_some_and(|data| !data.is_dir()) {
            remove(&full)?;
        }
    }
    for folder in real.iter().rev().filter(|f| !f.as_os_str().is_empty()) {
        // One that holds something else stays.
        let _ = fs::remove_dir(dir.join(folder));
    }
    let fail = |e| Error::new("clean up", dir, e);
    let marks = [MANIFEST, UNFINISHED].map(|mark| dir.join(mark));
    for entry in fs::read_dir(dir).map_err(fail)? {
        let path = entry.map_err(fail)?.path();
        if !marks.contains(&path) {
            let why = "this program did not write it; move it away";
            return Err(Error::new("clean up", &path, why));
        }
    }
    for mark in marks.iter().filter(|mark| there(mark).is_some()) {
        remove(mark)?;
    }
    fs::remove_dir(dir).map_err(fail)
}

fn remove(path: &Path) -> Result<(), Error> {
    fs::remove_file(path).map_err(|e| Error::new("clean up", path, e))
}
