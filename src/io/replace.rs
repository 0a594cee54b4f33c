//! One file written whole or not at all, and safe from a power cut.

use super::Error;
use std::fs::{self, File, Metadata};
use std::hash::{BuildHasher, Hasher, RandomState};
use std::io::{ErrorKind, Write};
use std::os::unix::fs::{MetadataExt, OpenOptionsExt};
use std::path::{Path, PathBuf};

/// Writes a file whole or not at all. The new text is on the disk before it takes the old one's place. What stands at the path
/// is never written through a link; a pipe or a terminal is written to.
///
/// # Errors
/// When the file beside it cannot be written or put in its place.
pub fn replace(path: &Path, text: &str) -> Result<(), Error> {
    let fail = |e| Error::new("write", path, e);
    let old = fs::metadata(path).ok();
    if old
        .as_ref()
        .is_some_and(|data| !data.is_file() && !data.is_dir())
    {
        let mut file = File::options().write(true).open(path).map_err(fail)?;
        return file.write_all(text.as_bytes()).map_err(fail);
    }
    let (beside, mut file) = beside(path, old.as_ref())?;
    let written = file
        .write_all(text.as_bytes())
        .and_then(|()| match &old {
            Some(old) => file.set_permissions(old.permissions()),
            None => Ok(()),
        })
        .and_then(|()| file.sync_all())
        .map_err(|e| Error::new("write", &beside, e))
        .and_then(|()| fs::rename(&beside, path).map_err(fail));
    match written {
        // The new name is on the disk too, where the file system can say so.
        Ok(()) => drop(File::open(folder(path)).and_then(|folder| folder.sync_all())),
        Err(_) => drop(fs::remove_file(&beside)),
    }
    written
}

fn folder(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    }
}

/// A new file in the same folder, of a name that nobody can know before.
fn beside(path: &Path, old: Option<&Metadata>) -> Result<(PathBuf, File), Error> {
    let mode = old.map_or(0o666, |data| data.mode() & 0o777);
    loop {
        // Keys that the system draws anew for each.
        let chance = RandomState::new().build_hasher().finish();
        let beside = folder(path).join(format!(".rungbook-{chance:016x}.tmp"));
        // New, so no link at that name is followed.
        let mut how = File::options();
        match how.write(true).create_new(true).mode(mode).open(&beside) {
            Ok(file) => return Ok((beside, file)),
            Err(e) if e.kind() == ErrorKind::AlreadyExists => {}
            Err(e) => return Err(Error::new("write", &beside, e)),
        }
    }
}
