//! The only room with a disk and a clock.

mod read;
mod write;

pub use read::snapshot;
pub use write::{Outcome, Site};

use std::fmt;
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

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
            self.path.display(),
            self.why
        )
    }
}

impl std::error::Error for Error {}

/// Today by the machine's clock, in UTC, as `2026-11-25`.
pub fn today() -> String {
    let seconds = SystemTime::now()
        .duration_since(UNIX_EPOCH)
        .map_or(0, |d| d.as_secs());
    day_of((seconds / 86_400) as i64)
}

/// The civil date of a day counted from 1970-01-01, by the proleptic Gregorian calendar (the usual shift of the year's start to
/// March makes leap days fall at its end).
fn day_of(days: i64) -> String {
    let shifted = days + 719_468;
    let era = shifted.div_euclid(146_097);
    let day_of_era = shifted.rem_euclid(146_097);
    let year_of_era =
        (day_of_era - day_of_era / 1460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let month_index = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * month_index + 2) / 5 + 1;
    let month = if month_index < 10 {
        month_index + 3
    } else {
        month_index - 9
    };
    let year = year_of_era + era * 400 + i64::from(month <= 2);
    format!("{year:04}-{month:02}-{day:02}")
}

/// Writes a file of the curriculum's folder whole or not at all.
///
/// # Errors
/// When the file beside it cannot be written or put in its place.
pub fn replace(path: &Path, text: &str) -> Result<(), Error> {
    let beside = path.with_extension("tmp");
    std::fs::write(&beside, text).map_err(|e| Error::new("write", &beside, e))?;
    std::fs::rename(&beside, path).map_err(|e| Error::new("write", path, e))
}

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

#[cfg(test)]
mod tests {
    use super::day_of;

    #[test]
    fn days_of_the_calendar() {
        // Known days: the epoch, a leap day of a century year, a day of this project's first year.
        assert_eq!(day_of(0), "1970-01-01");
        assert_eq!(day_of(11_016), "2000-02-29");
        assert_eq!(day_of(20_782), "2026-11-25");
        assert_eq!(day_of(-1), "1969-12-31");
    }
}
