//! One publish at a time: the site's folder itself is locked, and the one where the new site is prepared. Nothing is left
//! behind, and the lock ends with the process, however it ends.

use super::Error;
use rustix::fs::{Mode, OFlags, open};
use std::fs::{File, TryLockError};
use std::os::unix::fs::MetadataExt;
use std::path::Path;

/// Locks a folder; `None` when it is not there. Where the file system cannot lock a folder, it counts as locked.
///
/// # Errors
/// When another publish has it, or it is no folder, or cannot be opened.
pub fn folder(path: &Path, target: &Path) -> Result<Option<File>, Error> {
    let how = OFlags::RDONLY | OFlags::DIRECTORY | OFlags::NOFOLLOW | OFlags::CLOEXEC;
    loop {
        let file: File = match open(path, how, Mode::empty()) {
            Ok(file) => file.into(),
            Err(rustix::io::Errno::NOENT) => return Ok(None),
            Err(error) => return Err(Error::new("open", path, error)),
        };
        if let Err(TryLockError::WouldBlock) = file.try_lock() {
            return Err(at_work(target));
        }
        let same =
            |a: &std::fs::Metadata, b: &std::fs::Metadata| (a.dev(), a.ino()) == (b.dev(), b.ino());
        // Another publish may have put a new folder in its place between the two.
        match (file.metadata(), std::fs::symlink_metadata(path)) {
            (Ok(a), Ok(b)) if same(&a, &b) => return Ok(Some(file)),
            _ => {}
        }
    }
}

pub fn at_work(target: &Path) -> Error {
    Error::new("publish to", target, "another publish is at work there")
}
