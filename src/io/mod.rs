//! The only room with a disk and a clock.

mod change;
mod clock;
mod fixed;
mod http;
mod lock;
mod modes;
mod own;
mod read;
mod replace;
mod serve;
mod watch;
mod write;

pub use change::change;
pub use clock::{Stopwatch, today};
pub use read::{content_now, open_data, path_within, results, snapshot};
pub use replace::replace;
pub use serve::{Serving, Shown, Told};
pub use watch::{Saved, Watch};
pub use write::{Asked, Outcome, Site};

use crate::source::legible;
use std::fmt;
use std::path::{Path, PathBuf};

/// The environment failed: what was being done, where, and the system's reason.
#[derive(Debug)]
pub struct Error {
    pub doing: &'static str,
    pub path: PathBuf,
    pub why: String,
}

impl Error {
    pub fn new(doing: &'static str, path: &Path, why: impl fmt::Display) -> Error {
        Error {
            doing,
            path: path.to_path_buf(),
            why: why.to_string(),
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "cannot {} {}: {}",
            self.doing,
            legible(&self.path.to_string_lossy()),
            legible(&self.why)
        )
    }
}

impl std::error::Error for Error {}

/// Creates files in a new folder; refuses a folder that holds anything.
///
/// # Errors
/// When the folder is not empty, or the disk refuses.
pub fn create_folder(dir: &Path, files: &[(&str, &str)]) -> Result<(), Error> {
    if dir
        .read_dir()
        .is_ok_and(|mut entries| entries.next().is_some())
    {
        return Err(Error::new(
            "start a curriculum in",
            dir,
            "the folder is not empty",
        ));
    }
    for (path, text) in files {
        let path = dir.join(path);
        let folder = path.parent().unwrap_or(dir);
        std::fs::create_dir_all(folder).map_err(|e| Error::new("create", folder, e))?;
        std::fs::write(&path, text).map_err(|e| Error::new("write", &path, e))?;
    }
    Ok(())
}
