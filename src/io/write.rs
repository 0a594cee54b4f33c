//! Writing a site: a fresh tree beside the old one, unchanged files linked, swapped in as a whole.

use super::Error;
use super::own::{self, Files, MADE_BY, MANIFEST, UNFINISHED, there};
use super::read::fill;
use rustix::fs::{CWD, RenameFlags, renameat_with};
use std::cell::RefCell;
use std::ffi::OsString;
use std::fs::{self, File};
use std::io::{Seek, Write};
use std::path::{Path, PathBuf};

thread_local! {
    /// Where files are read back to, one after the other.
    static BACK: RefCell<Vec<u8>> = const { RefCell::new(Vec::new()) };
}

/// A site being written. Dropped before [`Site::finish`], it leaves the old site as it was.
pub struct Site {
    target: PathBuf,
    staging: PathBuf,
    /// Path and hash of every file of the old site.
    before: Files,
    /// Folders of the old site in whose place somebody put a link.
    links: Vec<PathBuf>,
    existed: bool,
    finished: bool,
    /// Held while the site is written; a file that is locked is not taken away everywhere.
    mark: Option<File>,
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
        let target = place(target)?;
        guard(from, &target)?;
        let parent = target.parent().unwrap_or(Path::new("/"));
        fs::create_dir_all(parent).map_err(|e| Error::new("create", parent, e))?;
        let lock = lock(&target)?;
        let staging = parent.join(hidden(&target, "new"));
        in_peace(&target, &staging)?;
        put_back(&target)?;
        let before = written(&target)?;
        recover(&target, &before, &staging)?;
        fs::create_dir(&staging).map_err(|e| Error::new("create", &staging, e))?;
        let mark = staging.join(UNFINISHED);
        let marked = File::create(&mark)
            .and_then(|file| file.lock().map(|()| file))
            .map_err(|e| {
                let _ = fs::remove_file(&mark);
                let _ = fs::remove_dir(&staging);
                Error::new("write", &mark, e)
            })?;
        let is_link = |f: &PathBuf| there(&target.join(f)).is_some_and(|m| m.is_symlink());
        let links = own::folders(&before).into_iter().filter(is_link).collect();
        Ok(Site {
            existed: there(&target).is_some(),
            target,
            staging,
            before,
            links,
            finished: false,
            mark: Some(marked),
            _lock: lock,
        })
    }

    /// Writes one file, or links the old one when it is the same, and shows `check` what then stands on the disk. Returns the
    /// file's hash, and what the check says.
    ///
    /// # Errors
    /// When the disk refuses.
    pub fn put<T>(
        &self,
        path: &str,
        bytes: &[u8],
        check: impl FnOnce(&[u8]) -> T,
    ) -> Result<(String, T), Error> {
        let hash = blake3::hash(bytes).to_hex().to_string();
        let to = self.staging.join(path);
        if let Some(folder) = to.parent().filter(|_| path.contains('/')) {
            fs::create_dir_all(folder).map_err(|e| Error::new("create", folder, e))?;
        }
        if self.stood(path, bytes, &hash, &to) {
            return Ok((hash, check(bytes)));
        }
        let mut file = File::options()
            .read(true)
            .write(true)
            .create(true)
            .truncate(true)
            .open(&to)
            .map_err(|e| Error::new("write", &to, e))?;
        file.write_all(bytes)
            .map_err(|e| Error::new("write", &to, e))?;
        BACK.with_borrow_mut(|back| {
            if back.len() < bytes.len() {
                back.resize(bytes.len(), 0);
            }
            file.rewind()
                .and_then(|()| fill(&mut file, &mut back[..bytes.len()]))
                .map(|read| (hash, check(&back[..read])))
                .map_err(|e| Error::new("read back", &to, e))
        })
    }

    /// Whether the old site's file is the same and could be linked.
    fn stood(&self, path: &str, bytes: &[u8], hash: &String, to: &Path) -> bool {
        if self.before.get(path) != Some(hash) {
            return false;
        }
        let old = self.target.join(path);
        // A link that somebody put in the place of a file or a folder is not followed.
        !self.links.iter().any(|l| Path::new(path).starts_with(l))
            && there(&old).is_some_and(|m| m.is_file())
            && fs::read(&old).is_ok_and(|b| b == bytes)
            && fs::hard_link(&old, to).is_ok()
    }

    /// Puts the new site in the place of the old one, in one step where the file system can. `last` is done when nothing but
    /// that step is left.
    ///
    /// # Errors
    /// When others' files stand where the new site needs room, `last` fails, or the disk refuses; the old site then stands.
    pub fn finish(
        mut self,
        hashes: Files,
        last: impl FnOnce() -> Result<(), Error>,
    ) -> Result<Outcome, Error> {
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
        let kept = match self.existed {
            true => own::foreign(&self.target, &self.before, &hashes)?,
            false => Vec::new(),
        };
        if let Some(path) = own::clash(&kept, &hashes) {
            let why = "the site now has a file of that name, and this one is not the program's; move it away";
            return Err(Error::new("replace", &self.target.join(path), why));
        }
        let name = |p: &PathBuf| p.to_string_lossy().into_owned();
        outcome.kept = kept.iter().map(name).collect();
        if outcome.written() == 0 && outcome.removed.is_empty() && self.existed {
            last()?;
            return Ok(outcome);
        }
        let listing = serde_json::json!({ "made_by": MADE_BY, "format": 1, "files": hashes });
        let text = serde_json::to_string_pretty(&listing).expect("a listing is JSON") + "\n";
        let path = self.staging.join(MANIFEST);
        fs::write(&path, text).map_err(|e| Error::new("write", &path, e))?;
        last()?;
        drop(self.mark.take());
        let mark = self.staging.join(UNFINISHED);
        fs::remove_file(&mark).map_err(|e| Error::new("clean up", &mark, e))?;
        self.swap(&kept)?;
        self.finished = true;
        Ok(outcome)
    }

    fn swap(&self, kept: &[PathBuf]) -> Result<(), Error> {
        if !self.existed {
            return fs::rename(&self.staging, &self.target)
                .map_err(|e| Error::new("put in place", &self.target, e));
        }
        let old = self.staging.clone();
        if renameat_with(CWD, &self.staging, CWD, &self.target, RenameFlags::EXCHANGE).is_err() {
            let aside = self.staging.with_file_name(hidden(&self.target, "old"));
            fs::rename(&self.target, &aside)
                .map_err(|e| Error::new("set aside", &self.target, e))?;
            fs::rename(&self.staging, &self.target)
                .map_err(|e| Error::new("put in place", &self.target, e))?;
            fs::rename(&aside, &old).map_err(|e| Error::new("clean up", &aside, e))?;
        }
        own::carry(kept, &old, &self.target)?;
        own::clear(&old)
    }
}

impl Drop for Site {
    fn drop(&mut self) {
        drop(self.mark.take());
        if !self.finished {
            let _ = own::clear(&self.staging);
        }
    }
}

/// The name of a folder beside the target.
fn hidden(target: &Path, suffix: &str) -> OsString {
    let mut out = OsString::from(".");
    out.push(target.file_name().unwrap_or_default());
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

/// Where a target really lies, without making anything: what exists of its path is looked up, links and all.
fn place(target: &Path) -> Result<PathBuf, Error> {
    let refuse = |why: &str| Error::new("publish to", target, why);
    let name = target
        .file_name()
        .ok_or_else(|| refuse("it is not the name of a folder"))?;
    let mut above = match target.parent() {
        Some(p) if !p.as_os_str().is_empty() => p,
        _ => Path::new("."),
    };
    let mut rest = vec![name];
    while there(above).is_none() {
        rest.push(
            above
                .file_name()
                .ok_or_else(|| refuse("a folder before `..` is not there"))?,
        );
        above = match above.parent() {
            Some(p) if !p.as_os_str().is_empty() => p,
            _ => Path::new("."),
        };
    }
    let found = above
        .canonicalize()
        .map_err(|e| Error::new("read", above, e))?;
    Ok(rest.iter().rev().fold(found, |path, part| path.join(part)))
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
        // The folder may be a link to where it really lies.
        for own in [own.canonicalize().unwrap_or_else(|_| own.clone()), own] {
            if target.starts_with(&own) {
                return refuse("it lies inside the curriculum's own files");
            }
            if own.starts_with(target) {
                return refuse("the curriculum itself lies in it");
            }
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
    file.try_lock().map_err(|_| at_work(target))?;
    Ok(file)
}

/// Refuses where another publish, which may keep its temporary files elsewhere, has its mark locked.
fn in_peace(target: &Path, staging: &Path) -> Result<(), Error> {
    match File::open(staging.join(UNFINISHED)) {
        Ok(mark) if mark.try_lock().is_err() => Err(at_work(target)),
        _ => Ok(()),
    }
}

fn at_work(target: &Path) -> Error {
    Error::new("publish to", target, "another publish is at work there")
}

/// What the old site's manifest lists; nothing for a new or empty folder.
fn written(target: &Path) -> Result<Files, Error> {
    if there(target).is_none() || own::is_empty(target) {
        return Ok(Files::new());
    }
    own::manifest(target).ok_or_else(|| {
        Error::new(
            "publish to",
            target,
            format!(
                "it holds files that this program did not write (there is no {MANIFEST} of its own); name another folder"
            ),
        )
    })
}

/// Puts the old site back where a killed run had set it aside.
fn put_back(target: &Path) -> Result<(), Error> {
    let aside = target.with_file_name(hidden(target, "old"));
    if there(target).is_none() && own::manifest(&aside).is_some() {
        fs::rename(&aside, target).map_err(|e| Error::new("put back", target, e))?;
    }
    Ok(())
}

/// Cleans up after a run that was killed: what it left is half a new site, or the old one with files to keep.
fn recover(target: &Path, standing: &Files, staging: &Path) -> Result<(), Error> {
    let aside = target.with_file_name(hidden(target, "old"));
    for left in [staging, aside.as_path()] {
        if there(left).is_none() {
            continue;
        }
        let half = there(&left.join(UNFINISHED)).is_some();
        if let Some(old) = own::manifest(left).filter(|_| !half) {
            own::carry(&own::foreign(left, &old, standing)?, left, target)?;
        }
        own::clear(left)?;
    }
    Ok(())
}
