//! What a new file or folder of a site may be read by: as the one whose place it takes, and else as the site's folder, whatever
//! the user's umask is. What the user may not give is left as it is.

use rustix::fs::{
    IFlags, XattrFlags, getxattr, ioctl_getflags, ioctl_setflags, listxattr, setxattr,
};
use std::fs::{self, File, Metadata, Permissions};
use std::os::unix::fs::{MetadataExt, PermissionsExt, chown, fchown};
use std::path::Path;

/// Names and values of extended attributes above this size are not copied.
const LARGEST: usize = 65_536;

/// Gives a new folder the owner, mode, extended attributes and flags of another.
pub fn as_the_folder(model: &Path, new: &Path) {
    let (Ok(old), Ok(now)) = (fs::metadata(model), fs::metadata(new)) else {
        return;
    };
    if (old.uid(), old.gid()) != (now.uid(), now.gid()) {
        let _ = chown(new, Some(old.uid()), Some(old.gid()))
            .or_else(|_| chown(new, None, Some(old.gid())));
    }
    let mut names = vec![0; LARGEST];
    let length = listxattr(model, names.as_mut_slice()).unwrap_or(0);
    for name in names[..length].split(|b| *b == 0).filter(|n| !n.is_empty()) {
        let mut value = vec![0; LARGEST];
        if let Ok(length) = getxattr(model, name, value.as_mut_slice()) {
            let _ = setxattr(new, name, &value[..length], XattrFlags::empty());
        }
    }
    if let (Ok(from), Ok(to)) = (File::open(model), File::open(new))
        && let (Ok(flags), Ok(now)) = (ioctl_getflags(&from), ioctl_getflags(&to))
        && flags != now
    {
        let _ = ioctl_setflags(&to, flags - IFlags::IMMUTABLE - IFlags::APPEND);
    }
    // Last: a new owner takes some modes away. Who makes the folder writes in it.
    let mode = old.mode() & 0o7777 | 0o700;
    let _ = fs::set_permissions(new, Permissions::from_mode(mode));
}

/// Gives a new file the owner and mode of the one whose place it takes.
pub fn as_the_file(model: &Metadata, new: &File) {
    with(model, model.mode() & 0o7777, new);
}

/// Gives a new file the owner of the site's folder: who may enter that may read this, who may write there may write here.
pub fn as_in_the_folder(model: &Metadata, new: &File) {
    let (enter, rest) = (model.mode() & 0o111, model.mode() & 0o666);
    with(model, rest | enter << 2, new);
}

fn with(model: &Metadata, mode: u32, new: &File) {
    let Ok(now) = new.metadata() else { return };
    if (model.uid(), model.gid()) != (now.uid(), now.gid()) {
        let _ = fchown(new, Some(model.uid()), Some(model.gid()))
            .or_else(|_| fchown(new, None, Some(model.gid())));
    }
    if now.mode() & 0o7777 != mode {
        let _ = new.set_permissions(Permissions::from_mode(mode));
    }
}
