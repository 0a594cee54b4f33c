//! Writing a site: a fresh tree beside the old one, unchanged files linked, swapped in as a whole.

use super::Error;
use super::own::{self, Files, MANIFEST, UNFINISHED, there};
use super::read::fill;
use super::{fixed, lock, modes, replace};
use rustix::fs::{CWD, RenameFlags, renameat_with};
use std::cell::RefCell;
use std::ffi::OsString;
use std::fs::{self, File, Metadata};
use std::io::{Seek, Write};
use std::path::{Path, PathBuf};

thread_local! {
    /// Where files are read back to, one after the other.
    static BACK: RefCell<Vec<u8>> = const { RefCell::new(Vec::new()) };
}

/// What is to be written, for whom, and where.
pub struct Asked<'a> {
    /// The curriculum's folder.
    pub from: &'a Path,
    pub target: &'a Path,
    /// The user named the target: it may lie outside the folder, and hold another school's site.
    pub named: bool,
    /// The school's address: whose site it is.
    pub school: &'a str,
    /// The path of every file that will be written.
    pub paths: Vec<String>,
}

/// A site being written. Dropped before [`Site::finish`], it leaves the old site as it was.
pub struct Site {
    target: PathBuf,
    staging: PathBuf,
    /// Path and hash of every file of the old site.
    before: Files,
    /// Every file of the new one, before its hash is known.
    planned: Files,
    school: String,
    /// Folders of the old site in whose place somebody put a link.
    links: Vec<PathBuf>,
    /// The site's folder as it stood.
    existed: Option<Metadata>,
    finished: bool,
    _locks: (Option<File>, File),
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
    /// Prepares to write a site.
    ///
    /// # Errors
    /// When the target is the curriculum's own folder or lies inside `content` or `themes`, or above them; when it is a link,
    /// or holds files that this program did not write; when nobody named it and it lies outside the curriculum's folder or is
    /// another school's; when another publish is at work; when the disk refuses.
    pub fn begin(asked: Asked<'_>) -> Result<Site, Error> {
        let target = place(asked.target)?;
        guard(&asked, &target)?;
        let parent = target.parent().unwrap_or(Path::new("/"));
        fs::create_dir_all(parent).map_err(|e| Error::new("create", parent, e))?;
        let staging = parent.join(hidden(&target, "new"));
        let mut held = lock::folder(&target, &target)?;
        let left = lock::folder(&staging, &target)?;
        if held.is_none() && put_back(&target)? {
            held = lock::folder(&target, &target)?;
        }
        let before = written(&asked, &target)?;
        recover(&target, &before, &staging)?;
        drop(left);
        let existed = there(&target);
        fs::create_dir(&staging).map_err(|e| Error::new("create", &staging, e))?;
        let lock = lock::folder(&staging, &target)?.ok_or_else(|| lock::at_work(&target))?;
        if existed.is_some() != held.is_some() {
            // Another publish made the site between two looks.
            let _ = fs::remove_dir(&staging);
            return Err(lock::at_work(&target));
        }
        let is_link = |f: &PathBuf| there(&target.join(f)).is_some_and(|m| m.is_symlink());
        let links = own::folders_of(&before).into_iter().filter(is_link);
        let site = Site {
            links: links.collect(),
            planned: asked
                .paths
                .into_iter()
                .map(|p| (p, String::new()))
                .collect(),
            school: asked.school.to_string(),
            existed,
            target,
            staging,
            before,
            finished: false,
            _locks: (held, lock),
        };
        site.prepare()?;
        Ok(site)
    }

    /// Makes every folder, each as the one whose place it takes, and first the mark that lists what will be written.
    fn prepare(&self) -> Result<(), Error> {
        let mark = self.staging.join(UNFINISHED);
        let text = own::listing(&self.planned, &self.school);
        fs::write(&mark, text).map_err(|e| Error::new("write", &mark, e))?;
        if self.existed.is_some() {
            modes::as_the_folder(&self.target, &self.staging);
        }
        for folder in own::folders_of(&self.planned) {
            let made = self.staging.join(&folder);
            fs::create_dir(&made).map_err(|e| Error::new("create", &made, e))?;
            let old = self.target.join(&folder);
            let model = match there(&old).is_some_and(|data| data.is_dir()) {
                true => &old,
                false => &self.target,
            };
            if self.existed.is_some() {
                modes::as_the_folder(model, &made);
            }
        }
        Ok(())
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
        if let Some(folder) = &self.existed {
            let old = there(&self.target.join(path)).filter(Metadata::is_file);
            match old.filter(|_| !self.through_a_link(path)) {
                Some(old) => modes::as_the_file(&old, &file),
                None => modes::as_in_the_folder(folder, &file),
            }
        }
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
        !self.through_a_link(path)
            && there(&old).is_some_and(|m| m.is_file())
            && fs::read(&old).is_ok_and(|b| b == bytes)
            && fs::hard_link(&old, to).is_ok()
    }

    /// A link that somebody put in the place of a folder is not followed.
    fn through_a_link(&self, path: &str) -> bool {
        self.links.iter().any(|l| Path::new(path).starts_with(l))
    }

    /// Puts the new site in the place of the old one, in one step where the file system can. The ledger, each of its files with
    /// its text, is written when nothing but that step is left, in the order given.
    ///
    /// # Errors
    /// When others' files stand where the new site needs room or cannot be moved, the ledger cannot be written, or the disk
    /// refuses; the old site and the old ledger then stand.
    pub fn finish(mut self, hashes: Files, ledger: &[(PathBuf, String)]) -> Result<Outcome, Error> {
        let mut outcome = self.compared(&hashes);
        let kept = match self.existed {
            Some(_) => own::foreign(&self.target, &self.before, &hashes)?,
            None => Vec::new(),
        };
        if let Some(path) = own::clash(&kept, &hashes) {
            let why = "the site now has a file of that name, and this one is not the program's; move it away";
            return Err(Error::new("replace", &self.target.join(path), why));
        }
        let name = |p: &PathBuf| p.to_string_lossy().into_owned();
        outcome.kept = kept.iter().map(name).collect();
        let stands = self.existed.is_some();
        let note = || {
            let mut files = ledger.iter();
            files.try_for_each(|(path, text)| replace(path, text))
        };
        if outcome.written() == 0 && outcome.removed.is_empty() && stands {
            note()?;
            return Ok(outcome);
        }
        if stands {
            fixed::check(&self.target, &self.before, &kept)?;
        }
        let path = self.staging.join(MANIFEST);
        fs::write(&path, own::listing(&hashes, &self.school))
            .map_err(|e| Error::new("write", &path, e))?;
        let noted: Vec<(&PathBuf, Option<String>)> = ledger
            .iter()
            .map(|(path, _)| (path, fs::read_to_string(path).ok()))
            .collect();
        if let Err(error) = note().and_then(|()| self.swap(&kept, &hashes)) {
            for (path, text) in noted {
                match text {
                    Some(text) => drop(replace(path, &text)),
                    None => drop(fs::remove_file(path)),
                }
            }
            return Err(error);
        }
        self.finished = true;
        self.clean_up(&kept, &hashes)?;
        Ok(outcome)
    }

    /// What is new, changed and gone.
    fn compared(&self, hashes: &Files) -> Outcome {
        let mut outcome = Outcome {
            files: hashes.len() + 1,
            ..Outcome::default()
        };
        for (path, hash) in hashes {
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
        let gone = self.before.keys().filter(|p| !hashes.contains_key(*p));
        outcome.removed = gone.cloned().collect();
        outcome
    }

    /// Exchanges the folders and moves others' files over; exchanges them back when one of those cannot be moved.
    fn swap(&mut self, kept: &[PathBuf], hashes: &Files) -> Result<(), Error> {
        let mark = self.staging.join(UNFINISHED);
        fs::remove_file(&mark).map_err(|e| Error::new("clean up", &mark, e))?;
        if self.existed.is_none() {
            return own::rename_anew(&self.staging, &self.target)
                .map_err(|e| Error::new("put in place", &self.target, e));
        }
        self.exchange()?;
        let moved = own::carry(kept, &self.staging, &self.target)
            // What came into the old folder while it was still the site.
            .and_then(|()| own::foreign(&self.staging, &self.before, hashes))
            .and_then(|late| own::carry(&late, &self.staging, &self.target));
        if let Err(error) = moved {
            let undone =
                own::carry(kept, &self.target, &self.staging).and_then(|()| self.exchange());
            // Where not even that succeeds both folders stay as they are, and the next run goes on from there.
            self.finished = undone.is_err();
            return Err(error);
        }
        Ok(())
    }

    /// The two folders change places.
    fn exchange(&self) -> Result<(), Error> {
        let (new, old) = (&self.staging, &self.target);
        if renameat_with(CWD, new, CWD, old, RenameFlags::EXCHANGE).is_ok() {
            return Ok(());
        }
        let aside = new.with_file_name(hidden(old, "old"));
        own::rename_anew(old, &aside).map_err(|e| Error::new("set aside", old, e))?;
        if let Err(error) = own::rename_anew(new, old) {
            let _ = own::rename_anew(&aside, old);
            return Err(Error::new("put in place", old, error));
        }
        own::rename_anew(&aside, new).map_err(|e| Error::new("clean up", &aside, e))
    }

    /// Erases the old site.
    fn clean_up(&self, kept: &[PathBuf], hashes: &Files) -> Result<(), Error> {
        if self.existed.is_none() {
            return Ok(());
        }
        let files = self.before.keys().chain(hashes.keys()).map(Path::new);
        let folders = own::folders(files.chain(kept.iter().map(PathBuf::as_path)));
        own::erase(&self.staging, &self.before, &folders)
    }
}

impl Drop for Site {
    fn drop(&mut self) {
        if !self.finished {
            let _ = own::erase(
                &self.staging,
                &self.planned,
                &own::folders_of(&self.planned),
            );
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
fn guard(asked: &Asked<'_>, target: &Path) -> Result<(), Error> {
    let from = asked.from;
    let refuse = |why: &str| Err(Error::new("publish to", target, why));
    if fs::symlink_metadata(target).is_ok_and(|m| m.file_type().is_symlink()) {
        return refuse("it is a link; name the folder itself");
    }
    let from = from
        .canonicalize()
        .map_err(|e| Error::new("read", from, e))?;
    if !asked.named && !target.starts_with(&from) {
        return refuse(
            "it lies outside the curriculum's folder; if you mean it, name it with --to",
        );
    }
    if there(target).is_some() {
        fixed::mounted(target)?;
    }
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

/// What the old site's manifest lists; nothing for a new or empty folder.
fn written(asked: &Asked<'_>, target: &Path) -> Result<Files, Error> {
    if there(target).is_none() || own::is_empty(target) {
        return Ok(Files::new());
    }
    let refuse = |why: String| Error::new("publish to", target, why);
    let listed = own::manifest(target).ok_or_else(|| {
        refuse(format!(
            "it holds files that this program did not write (there is no {MANIFEST} of its own); name another folder"
        ))
    })?;
    match listed.school {
        Some(school) if school != asked.school && !asked.named => Err(refuse(format!(
            "the site there is of the school at {school}, and this one is at {}; if it is to take its place, name the folder with --to",
            asked.school
        ))),
        _ => Ok(listed.files),
    }
}

/// Puts the old site back where a killed run had set it aside.
fn put_back(target: &Path) -> Result<bool, Error> {
    let aside = target.with_file_name(hidden(target, "old"));
    let was_set_aside = own::manifest(&aside).is_some();
    if was_set_aside {
        own::rename_anew(&aside, target).map_err(|e| Error::new("put back", target, e))?;
    }
    Ok(was_set_aside)
}

/// Cleans up after a run that was killed: what it left is half a new site, or the old one with files to keep. What neither of its
/// lists names comes back to the site.
fn recover(target: &Path, standing: &Files, staging: &Path) -> Result<(), Error> {
    let aside = target.with_file_name(hidden(target, "old"));
    for left in [staging, aside.as_path()] {
        if there(left).is_none() {
            continue;
        }
        let listed = own::unfinished(left).or_else(|| own::manifest(left));
        if listed.is_none() && !own::is_bare(left) {
            let why = "it stands where the new site is prepared, and this program did not write it; move it away";
            return Err(Error::new("clean up", left, why));
        }
        let files = listed.unwrap_or_default().files;
        let foreign = own::foreign(left, &files, standing)?;
        if there(target).is_some() {
            own::carry(&foreign, left, target)?;
        }
        let all = files.keys().chain(standing.keys()).map(Path::new);
        let folders = own::folders(all.chain(foreign.iter().map(PathBuf::as_path)));
        own::erase(left, &files, &folders)?;
    }
    Ok(())
}
