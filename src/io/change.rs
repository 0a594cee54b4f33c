//! Several files of the coach's folder changed together.

use super::{Error, replace};
use std::fs;
use std::path::Path;

/// Writes texts (path, as it was, as it shall be) and moves files, all or none: what was done is undone when something fails.
/// Each file by itself is whole at any moment; a power cut may leave some changed and others not.
///
/// # Errors
/// When a file cannot be written or moved, or a place is taken; the folder is as it was then, as far as the disk lets it.
pub fn change(
    folder: &Path,
    texts: &[(&str, &str, &str)],
    moves: &[(String, String)],
) -> Result<(), Error> {
    let mut written = 0;
    let mut moved = 0;
    let mut done = || -> Result<(), Error> {
        for (path, _, text) in texts {
            replace(&folder.join(path), text)?;
            written += 1;
        }
        for (from, to) in moves {
            let (from, to) = (folder.join(from), folder.join(to));
            if to.exists() {
                return Err(Error::new(
                    "move a file to",
                    &to,
                    "something is there already",
                ));
            }
            fs::rename(&from, &to).map_err(|e| Error::new("move", &from, e))?;
            moved += 1;
        }
        Ok(())
    };
    let result = done();
    if result.is_err() {
        for (from, to) in moves[..moved].iter().rev() {
            let _ = fs::rename(folder.join(to), folder.join(from));
        }
        for (path, before, _) in &texts[..written] {
            let _ = replace(&folder.join(path), before);
        }
    }
    result
}
