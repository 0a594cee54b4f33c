//! Writing a site: a fresh tree beside the old one, unchanged files linked, swapped in as a whole.

use super::Error;
use rustix::fs::{CWD, RenameFlags, renameat_with};
use std::collections::BTreeMap;
use std::ffi::OsString;
use std::fs::{self, File};
use std::path::{Path, PathBuf};

/// The file that lists what was written, with hashes. A folder without it was not written by this program.
pub const MANIFEST: &str = "files.json";
const MADE_BY: &str = "rungbook";

/// A site being written. Dropped before [`Site::finish`], it leaves the old site as it was.
pub struct Site {
    target: PathBuf,
    staging: PathBuf,
    /// Path and hash of every file of the old site.
    before: BTreeMap<String, String>,
    existed: bool,
    finished: bool,
    _lock: File,
}

/// What publishing changed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Outcome {
    pub files: usize,
    pub new: Vec<String>,
    pub changed: Vec<String>,
    pub removed: Vec<String>,
    /// Files of others in the site's folder, kept.
    pub kept: Vec<String>,
}

impl Outcome {
    pub fn written(&self) -> usize {
        self.new.len() + self.changed.len()
    }
}

impl Site {
    /// Prepares to write a site to `target`, for the curriculum in `from`.
    ///
    /// # Errors
    /// When the target is the curriculum's own folder or lies inside `content` or `themes`, or above them; when it is a link,
    /// or holds files that this program did not write; when another publish is at work; when the disk refuses.
    pub fn begin(from: &Path, target: &Path) -> Result<Site, Error> {
        let parent = target
            .parent()
            .filter(|p| !p.as_os_str().is_empty())
            .unwrap_or(Path::new("."));
        fs::create_dir_all(parent).map_err(|e| Error::new("create", parent, e))?;
        let parent = parent
            .canonicalize()
            .map_err(|e| Error::new("read", parent, e))?;
        let name = target
            .file_name()
            .ok_or_else(|| Error::new("publish to", target, "it is not the name of a folder"))?;
        let target = parent.join(name);
        guard(from, &target)?;
        let lock = lock(&target)?;
        let before = manifest(&target)?;
        let staging = parent.join(hidden(name, "new"));
        recover(&target, &staging)?;
        fs::create_dir(&staging).map_err(|e| Error::new("create", &staging, e))?;
        Ok(Site {
            existed: target.exists(),
            target,
            staging,
            before,
            finished: false,
            _lock: lock,
        })
    }

    /// Writes one file, or links the old one when it is the same. Returns the file's hash.
    ///
    /// # Errors
    /// When the disk refuses.
    pub fn put(&self, path: &str, bytes: &[u8]) -> Result<String, Error> {
        let hash = blake3::hash(bytes).to_hex().to_string();
        let to = self.staging.join(path);
        if let Some(folder) = to.parent() {
            fs::create_dir_all(folder).map_err(|e| Error::new("create", folder, e))?;
        }
        let old = self.target.join(path);
        let same = self.before.get(path) == Some(&hash) && fs::read(&old).is_ok_and(|b| b == bytes);
        if !(same && fs::hard_link(&old, &to).is_ok()) {
            fs::write(&to, bytes).map_err(|e| Error::new("write", &to, e))?;
        }
        Ok(hash)
    }

    /// Reads back a file that was put.
    ///
    /// # Errors
    /// When it cannot be read.
    pub fn read_back(&self, path: &str) -> Result<Vec<u8>, Error> {
        let path = self.staging.join(path);
        fs::read(&path).map_err(|e| Error::new("read back", &path, e))
    }

    /// Puts the new site in the place of the old one, in one step where the file system can.
    ///
    /// # Errors
    /// When the disk refuses; the old site then stands.
    pub fn finish(mut self, hashes: BTreeMap<String, String>) -> Result<Outcome, Error> {
        let mut outcome = Outcome {
            files: hashes.len() + 1,
            ..Outcome::default()
        };
        for (path, hash) in &hashes {
            match self.before.get(path) {
                None => outcome.new.push(path.clone()),
                // A file that somebody changed behind our back was written anew.
                Some(old)
                    if old != hash
                        || !same_file(&self.target.join(path), &self.staging.join(path)) =>
                {
                    outcome.changed.push(path.clone())
                }
                Some(_) => {}
            }
        }
        outcome.removed = self
            .before
            .keys()
            .filter(|p| !hashes.contains_key(*p))
            .cloned()
            .collect();
        outcome.kept = self.foreign()?;
        if outcome.written() == 0 && outcome.removed.is_empty() && self.existed {
            return Ok(outcome);
        }
        let listing = serde_json::json!({ "made_by": MADE_BY, "format": 1, "files": hashes });
        let text = serde_json::to_string_pretty(&listing).expect("a listing is JSON") + "\n";
        let path = self.staging.join(MANIFEST);
        fs::write(&path, text).map_err(|e| Error::new("write", &path, e))?;
        self.swap(&outcome.kept)?;
        self.finished = true;
        Ok(outcome)
    }

    /// Names in the target that the old site did not write.
    fn foreign(&self) -> Result<Vec<String>, Error> {
        if !self.existed {
            return Ok(Vec::new());
        }
        let mut own: std::collections::HashSet<&str> = self
            .before
            .keys()
            .filter_map(|p| p.split('/').next())
            .collect();
        own.insert(MANIFEST);
        let entries =
            fs::read_dir(&self.target).map_err(|e| Error::new("read", &self.target, e))?;
        let mut out: Vec<String> = entries
            .filter_map(|e| e.ok()?.file_name().into_string().ok())
            .filter(|name| !own.contains(name.as_str()))
            .collect();
        out.sort();
        Ok(out)
    }

    fn swap(&self, kept: &[String]) -> Result<(), Error> {
        if !self.existed {
            return fs::rename(&self.staging, &self.target)
                .map_err(|e| Error::new("put in place", &self.target, e));
        }
        let old = self.staging.clone();
        if renameat_with(CWD, &self.staging, CWD, &self.target, RenameFlags::EXCHANGE).is_err() {
            let aside = self
                .staging
                .with_file_name(hidden(self.target.file_name().unwrap_or_default(), "old"));
            fs::rename(&self.target, &aside)
                .map_err(|e| Error::new("set aside", &self.target, e))?;
            fs::rename(&self.staging, &self.target)
                .map_err(|e| Error::new("put in place", &self.target, e))?;
            fs::rename(&aside, &old).map_err(|e| Error::new("clean up", &aside, e))?;
        }
        for name in kept {
            let (from, to) = (old.join(name), self.target.join(name));
            if !to.exists() {
                fs::rename(&from, &to).map_err(|e| Error::new("keep", &to, e))?;
            }
        }
        fs::remove_dir_all(&old).map_err(|e| Error::new("clean up", &old, e))
    }
}

impl Drop for Site {
    fn drop(&mut self) {
        if !self.finished {
            let _ = fs::remove_dir_all(&self.staging);
        }
    }
}

fn hidden(name: &std::ffi::OsStr, suffix: &str) -> OsString {
    let mut out = OsString::from(".");
    out.push(name);
    out.push(".");
    out.push(suffix);
    out
}

/// The two paths are one file, linked.
#[cfg(unix)]
fn same_file(a: &Path, b: &Path) -> bool {
    use std::os::unix::fs::MetadataExt;
    match (fs::metadata(a), fs::metadata(b)) {
        (Ok(a), Ok(b)) => a.ino() == b.ino() && a.dev() == b.dev(),
        _ => false,
    }
}

#[cfg(not(unix))]
fn same_file(a: &Path, b: &Path) -> bool {
    fs::read(a).ok() == fs::read(b).ok()
}

/// Refuses targets that would overwrite the coach's own work.
fn guard(from: &Path, target: &Path) -> Result<(), Error> {
    let refuse = |why: &str| Err(Error::new("publish to", target, why));
    if fs::symlink_metadata(target).is_ok_and(|m| m.file_type().is_symlink()) {
        return refuse("it is a link; name the folder itself");
    }
    let from = from
        .canonicalize()
        .map_err(|e| Error::new("read", from, e))?;
    for own in ["content", "themes"] {
        let own = from.join(own);
        if target.starts_with(&own) {
            return refuse("it lies inside the curriculum's own files");
        }
        if own.starts_with(target) {
            return refuse("the curriculum itself lies in it");
        }
    }
    Ok(())
}

/// One publish at a time for a target. The lock is released when the process ends, however it ends.
fn lock(target: &Path) -> Result<File, Error> {
    let name = blake3::hash(target.to_string_lossy().as_bytes()).to_hex();
    let path = std::env::temp_dir().join(format!("rungbook-{}.lock", &name[..16]));
    let file = File::options()
        .create(true)
        .append(true)
        .open(&path)
        .map_err(|e| Error::new("open", &path, e))?;
    file.try_lock()
        .map_err(|_| Error::new("publish to", target, "another publish is at work there"))?;
    Ok(file)
}

/// What the old site's manifest lists; nothing for a new or empty folder.
fn manifest(target: &Path) -> Result<BTreeMap<String, String>, Error> {
    if !target.exists() || fs::read_dir(target).is_ok_and(|mut d| d.next().is_none()) {
        return Ok(BTreeMap::new());
    }
    let path = target.join(MANIFEST);
    let refuse = || {
        Error::new(
            "publish to",
            target,
            format!(
                "it holds files that this program did not write (there is no {MANIFEST} of its own); name another folder"
            ),
        )
    };
    let text = fs::read_to_string(&path).map_err(|_| refuse())?;
    let value: serde_json::Value = serde_json::from_str(&text).map_err(|_| refuse())?;
    if value["made_by"] != MADE_BY {
        return Err(refuse());
    }
    let files = value["files"].as_object().ok_or_else(refuse)?;
    Ok(files
        .iter()
        .filter_map(|(k, v)| Some((k.clone(), v.as_str()?.to_string())))
        .collect())
}

/// Cleans up after a run that was killed: what it left is half a new site, or the old one with files to keep.
fn recover(target: &Path, staging: &Path) -> Result<(), Error> {
    let aside = staging.with_file_name(hidden(target.file_name().unwrap_or_default(), "old"));
    if aside.exists() && !target.exists() {
        fs::rename(&aside, target).map_err(|e| Error::new("put back", target, e))?;
    }
    for left in [staging, aside.as_path()] {
        if !left.exists() {
            continue;
        }
        let own = manifest(left).unwrap_or_default();
        let is_old_site = left.join(MANIFEST).exists();
        for entry in fs::read_dir(left)
            .map_err(|e| Error::new("read", left, e))?
            .flatten()
        {
            let name = entry.file_name();
            let text = name.to_string_lossy().into_owned();
            let foreign = is_old_site
                && text != MANIFEST
                && !own
                    .keys()
                    .any(|p| p.split('/').next() == Some(text.as_str()));
            if foreign && !target.join(&name).exists() {
                fs::rename(entry.path(), target.join(&name))
                    .map_err(|e| Error::new("keep", &target.join(&name), e))?;
            }
        }
        fs::remove_dir_all(left).map_err(|e| Error::new("clean up", left, e))?;
    }
    Ok(())
}
