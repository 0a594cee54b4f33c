//! A folder as a snapshot.

use super::Error;
use crate::source::snapshot::{LARGEST_MEDIA, LARGEST_TEXT, STANDING};
use crate::source::{Content, Snapshot, SourceFile, Stray};
use rayon::prelude::*;
use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::{MAIN_SEPARATOR, Path, PathBuf, absolute};
use walkdir::{DirEntry, WalkDir};

/// How the names of text files end.
const TEXTS: &[&str] = &[
    "yaml", "yml", "md", "html", "css", "js", "svg", "txt", "json",
];

/// Reads `content/` and `themes/` below a folder. Files that cannot be read are kept with the reason; only the folder itself
/// may fail. Links are followed as files, never as folders, and never out of the folder.
///
/// # Errors
/// When the folder is not there.
pub fn snapshot(from: &Path) -> Result<Snapshot, Error> {
    if !from.is_dir() {
        return Err(Error::new("read the folder", from, "it is not there"));
    }
    let inside = Inside::of(from);
    let parts = ["content", "themes"].map(|part| (part, from.join(part)));
    let there = parts.iter().filter(|(_, root)| root.exists());
    let (walks, away): (Vec<_>, Vec<_>) = there.partition(|(_, root)| inside.holds(root));
    // Files are read while the walk goes on.
    let mut files: Vec<SourceFile> = walks
        .iter()
        .flat_map(|(_, root)| WalkDir::new(root).follow_links(false))
        .par_bridge()
        .filter_map(|entry| came_upon(from, &inside, entry))
        .collect();
    files.extend(away.iter().map(|(part, _)| SourceFile {
        path: part.to_string(),
        content: Content::Outside,
    }));
    // Somebody stands inside of `content`: reading says so.
    let school = from.join("school.yaml");
    if !from.join("content").exists() && school.is_file() {
        files.push(SourceFile {
            path: "school.yaml".to_string(),
            content: content("school.yaml", &school),
        });
    }
    Ok(Snapshot::new(files))
}

/// The curriculum's folder, without links on the way to it.
struct Inside(Option<PathBuf>);

impl Inside {
    fn of(from: &Path) -> Inside {
        Inside(from.canonicalize().ok())
    }

    /// Whether a path leads to something in the folder, or nowhere at all.
    fn holds(&self, path: &Path) -> bool {
        match (&self.0, path.canonicalize()) {
            (Some(folder), Ok(real)) => real.starts_with(folder),
            (None, Ok(_)) => false,
            (_, Err(_)) => true,
        }
    }
}

/// The file that a walk came upon; nothing for a folder.
fn came_upon(from: &Path, inside: &Inside, entry: walkdir::Result<DirEntry>) -> Option<SourceFile> {
    let name = |full: &Path| {
        let inside = full.strip_prefix(from).unwrap_or(full);
        let path = inside.to_string_lossy().replace(MAIN_SEPARATOR, "/");
        (path, inside.to_str().is_some())
    };
    let entry = match entry {
        Ok(entry) if entry.file_type().is_dir() => return None,
        Ok(entry) => entry,
        Err(error) => {
            let (path, _) = name(error.path().unwrap_or(from));
            let content = Content::Unreadable(error.to_string());
            return Some(SourceFile { path, content });
        }
    };
    let (path, named) = name(entry.path());
    let content = match entry.file_type().is_file() {
        _ if !named => Content::Unreadable("its name is not Unicode text".into()),
        _ if entry.path_is_symlink() && !inside.holds(entry.path()) => Content::Outside,
        true => content_of_file(&path, entry.path()),
        false => content(&path, entry.path()),
    };
    Some(SourceFile { path, content })
}

/// What a file holds now, by its path from the curriculum's folder; `None` when it is not there.
pub fn content_now(from: &Path, path: &str) -> Option<Content> {
    let full = from.join(path);
    full.exists().then(|| match Inside::of(from).holds(&full) {
        true => content(path, &full),
        false => Content::Outside,
    })
}

/// The path of a file from the curriculum's folder, as a snapshot writes it; `None` for what lies outside. Whoever watches a
/// folder is told whole paths, also where the folder itself was named from here, as `.` is.
pub fn path_within(from: &Path, full: &Path) -> Option<String> {
    let (from, full) = (absolute(from).ok()?, absolute(full).ok()?);
    let parts: Vec<String> = full
        .strip_prefix(from)
        .ok()?
        .components()
        .map(|c| c.as_os_str().to_string_lossy().into_owned())
        .collect();
    Some(parts.join("/"))
}

/// What a site keeps of the curriculum that it was made from: the files below `data/`, by their paths on the site; `None` where
/// there is no site.
pub fn open_data(site: &Path) -> Option<Snapshot> {
    let root = site.join("data");
    root.is_dir().then_some(())?;
    let inside = Inside::of(site);
    let files = WalkDir::new(root).follow_links(false).into_iter();
    Some(Snapshot::new(
        files
            .filter_map(|entry| came_upon(site, &inside, entry))
            .collect(),
    ))
}

/// How results files end.
const RESULTS: &[&str] = &["yaml", "yml", "json", "csv"];

/// Reads results files by the paths that were typed; of a folder the results files right in it, by name. What cannot be read, is
/// too large or no text is kept with the reason, so that the others are answered.
///
/// # Errors
/// When none of the files can be read, or a folder holds none.
pub fn results(paths: &[PathBuf]) -> Result<Snapshot, Error> {
    let mut files = Vec::new();
    for path in paths {
        match path.is_dir() {
            true => files.extend(results_in(path)?),
            false => files.push(path.clone()),
        }
    }
    let files: Vec<SourceFile> = files
        .par_iter()
        .map(|path| SourceFile {
            path: path.to_string_lossy().into_owned(),
            content: content("results.txt", path),
        })
        .collect();
    let why = |file: &SourceFile| match &file.content {
        Content::Unreadable(why) => Some(why.clone()),
        _ => None,
    };
    if let Some(first) = files.first()
        && files.iter().all(|file| why(file).is_some())
    {
        let why = why(first).unwrap_or_default();
        return Err(Error::new("read", Path::new(&first.path), why));
    }
    Ok(Snapshot::new(files))
}

/// The results files right in a folder, by name; what begins with a dot is none.
fn results_in(folder: &Path) -> Result<Vec<PathBuf>, Error> {
    let fails = |why: std::io::Error| Error::new("read the folder", folder, why);
    let mut out = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(fails)? {
        let path = entry.map_err(fails)?.path();
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        let ending = name.rsplit_once('.').map_or("", |(_, ending)| ending);
        let is_one = RESULTS.iter().any(|e| ending.eq_ignore_ascii_case(e));
        if is_one && !name.starts_with('.') && !path.is_dir() {
            out.push(path);
        }
    }
    out.sort();
    match out.is_empty() {
        true => {
            let why = format!("no results file is in it (.{})", RESULTS.join(", ."));
            Err(Error::new("read the folder", folder, why))
        }
        false => Ok(out),
    }
}

fn content(path: &str, full: &Path) -> Content {
    match std::fs::metadata(full) {
        Ok(data) if data.is_file() => content_of_file(path, full),
        // Opening a pipe would wait for whoever fills it.
        Ok(_) => Content::Unreadable("it is not a file".into()),
        Err(error) => Content::Unreadable(error.to_string()),
    }
}

fn content_of_file(path: &str, full: &Path) -> Content {
    let ending = path.rsplit_once('.').map_or("", |(_, e)| e);
    let is_text = TEXTS.iter().any(|e| ending.eq_ignore_ascii_case(e));
    // The program's own list of a large curriculum is longer than what people write.
    let limit = match is_text && path != STANDING {
        true => LARGEST_TEXT,
        false => LARGEST_MEDIA,
    };
    match bytes(full, limit) {
        Ok(Err(size)) => Content::TooLarge(size),
        Ok(Ok(bytes)) if is_text => match String::from_utf8(bytes) {
            Ok(text) => Content::Text(text),
            Err(error) => Content::NotUtf8(Stray::behind(
                error.utf8_error().valid_up_to(),
                error.as_bytes(),
            )),
        },
        Ok(Ok(bytes)) => Content::Bytes(bytes),
        Err(error) => Content::Unreadable(error.to_string()),
    }
}

/// What a file holds, or its size where that is above the limit.
fn bytes(full: &Path, limit: u64) -> std::io::Result<Result<Vec<u8>, u64>> {
    let mut file = File::open(full)?;
    let size = file.metadata()?.len();
    if size > limit {
        return Ok(Err(size));
    }
    let mut bytes = vec![0; size as usize];
    let read = fill(&mut file, &mut bytes)?;
    bytes.truncate(read);
    Ok(Ok(bytes))
}

/// Reads until the room is full or the file ends; how many bytes there were.
pub(super) fn fill(file: &mut File, room: &mut [u8]) -> std::io::Result<usize> {
    let mut at = 0;
    while at < room.len() {
        match file.read(&mut room[at..]) {
            Ok(0) => break,
            Ok(n) => at += n,
            Err(error) if error.kind() == ErrorKind::Interrupted => {}
            Err(error) => return Err(error),
        }
    }
    Ok(at)
}
