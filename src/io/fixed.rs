//! What cannot be moved or erased, told before anything is: a mounted file system, an immutable file, a folder that may not be
//! written to. What is overlooked here is met when it is moved, and the site is put back then.

use super::Error;
use super::own::{self, Files, there};
use rustix::fs::{Access, AtFlags, CWD, accessat};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

const MOUNTED: &str = "a file system is mounted there, and the site's folder is exchanged as a whole; unmount it, or publish to another folder with --to";
const IMMUTABLE: &str = "it is immutable or may only grow (chattr +i, +a), and the site's folder is exchanged as a whole; take that off it, or publish to another folder with --to";

/// Why nothing can take this path's place, however much the user may do.
#[cfg(target_os = "linux")]
fn why(path: &Path) -> Option<&'static str> {
    use rustix::fs::{StatxAttributes, StatxFlags, statx};
    let data = statx(CWD, path, AtFlags::SYMLINK_NOFOLLOW, StatxFlags::TYPE).ok()?;
    let has = |attribute| data.stx_attributes.contains(attribute);
    if has(StatxAttributes::MOUNT_ROOT) || is_another_disk(path) {
        return Some(MOUNTED);
    }
    (has(StatxAttributes::IMMUTABLE) || has(StatxAttributes::APPEND)).then_some(IMMUTABLE)
}

#[cfg(not(target_os = "linux"))]
fn why(path: &Path) -> Option<&'static str> {
    is_another_disk(path).then_some(MOUNTED)
}

/// The path lies on another disk than the folder that it is in.
fn is_another_disk(path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt;
    let disk = |p: &Path| there(p).map(|data| data.dev());
    path.parent().and_then(disk) != disk(path)
}

/// Refuses a folder or file on which another file system is mounted.
///
/// # Errors
/// When one is.
pub fn mounted(path: &Path) -> Result<(), Error> {
    match why(path) {
        Some(why) if why == MOUNTED => Err(Error::new("exchange", path, why)),
        _ => Ok(()),
    }
}

/// Looks whether the old site can be taken away and all of others' files be moved.
///
/// # Errors
/// The first path that stands in the way, and why.
pub fn check(site: &Path, old: &Files, foreign: &[PathBuf]) -> Result<(), Error> {
    let stays = |path: &Path| match why(path) {
        Some(why) => Err(Error::new("exchange", path, why)),
        None => Ok(()),
    };
    let all = old.keys().map(Path::new);
    let folders = own::folders(all.chain(foreign.iter().map(PathBuf::as_path)));
    let mut real = BTreeSet::from([PathBuf::new()]);
    stays(site)?;
    writable(site)?;
    for folder in folders {
        let full = site.join(&folder);
        let above = folder.parent().unwrap_or(Path::new(""));
        if real.contains(above) && there(&full).is_some_and(|data| data.is_dir()) {
            stays(&full)?;
            writable(&full)?;
            real.insert(folder);
        }
    }
    for file in old.keys().map(Path::new) {
        if real.contains(file.parent().unwrap_or(Path::new(""))) {
            stays(&site.join(file))?;
        }
    }
    for path in foreign {
        let full = site.join(path);
        stays(&full)?;
        // What a folder lies in is written in the folder.
        if there(&full).is_some_and(|data| data.is_dir()) {
            writable(&full)?;
        }
    }
    Ok(())
}

fn writable(folder: &Path) -> Result<(), Error> {
    let access = Access::WRITE_OK | Access::EXEC_OK;
    accessat(CWD, folder, access, AtFlags::EACCESS)
        .or_else(|e| match e {
            // Not every system can ask for the effective user.
            rustix::io::Errno::INVAL | rustix::io::Errno::NOSYS => {
                accessat(CWD, folder, access, AtFlags::empty())
            }
            e => Err(e),
        })
        .map_err(|e| {
            let why = format!(
                "you may not change it ({e}), and the site's folder is exchanged as a whole"
            );
            Error::new("exchange", folder, why)
        })
}
