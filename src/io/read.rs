//! A folder as a snapshot.

use super::Error;
use crate::source::{Content, Snapshot, SourceFile};
use rayon::prelude::*;
use std::path::{Path, PathBuf};
use walkdir::WalkDir;

/// Text files above this many bytes are not read.
const LARGEST_TEXT: u64 = 4_000_000;
/// Pictures and clips above this many bytes are not read.
const LARGEST_MEDIA: u64 = 200_000_000;
/// How the names of text files end.
const TEXTS: &[&str] = &[
    "yaml", "yml", "md", "html", "css", "js", "svg", "txt", "json",
];

/// Reads `content/` and `themes/` below a folder. Files that cannot be read are kept with the reason; only the folder itself
/// may fail. Links are followed as files, never as folders.
///
/// # Errors
/// When the folder is not there.
pub fn snapshot(from: &Path) -> Result<Snapshot, Error> {
    if !from.is_dir() {
        return Err(Error::new("read the folder", from, "it is not there"));
    }
    let mut found: Vec<(PathBuf, Option<String>)> = Vec::new();
    for part in ["content", "themes"] {
        let root = from.join(part);
        if !root.exists() {
            continue;
        }
        for entry in WalkDir::new(&root).follow_links(false) {
            match entry {
                Ok(entry) if entry.file_type().is_dir() => {}
                Ok(entry) => found.push((entry.into_path(), None)),
                Err(error) => {
                    let path = error.path().unwrap_or(&root).to_path_buf();
                    found.push((path, Some(error.to_string())));
                }
            }
        }
    }
    let files: Vec<SourceFile> = found
        .into_par_iter()
        .map(|(full, fault)| {
            let inside = full.strip_prefix(from).unwrap_or(&full);
            let named = inside.to_str().is_some();
            let fault = fault.or_else(|| (!named).then(|| "its name is not Unicode text".into()));
            let path = relative(from, &full);
            let content = fault.map_or_else(|| content(&path, &full), Content::Unreadable);
            SourceFile { path, content }
        })
        .collect();
    Ok(Snapshot::new(files))
}

/// What a file holds now, by its path from the curriculum's folder; `None` when it is not there.
pub fn content_now(from: &Path, path: &str) -> Option<Content> {
    let full = from.join(path);
    full.exists().then(|| content(path, &full))
}

/// The path of a file from the curriculum's folder, as a snapshot writes it; `None` for what lies outside.
pub fn path_within(from: &Path, full: &Path) -> Option<String> {
    full.strip_prefix(from).ok()?;
    Some(relative(from, full))
}

/// Reads results files by the paths that were typed. A file that is too large or no text is kept with the reason.
///
/// # Errors
/// When a file is not there or cannot be read.
pub fn results(paths: &[PathBuf]) -> Result<Snapshot, Error> {
    let mut files = Vec::new();
    for path in paths {
        let content = content("results.txt", path);
        if let Content::Unreadable(why) = &content {
            return Err(Error::new("read", path, why));
        }
        files.push(SourceFile {
            path: path.to_string_lossy().into_owned(),
            content,
        });
    }
    Ok(Snapshot::new(files))
}

fn relative(from: &Path, path: &Path) -> String {
    let inside = path.strip_prefix(from).unwrap_or(path);
    let parts: Vec<String> = inside
        .components()
        .map(|c| c.as_os_str().to_string_lossy().into_owned())
        .collect();
    parts.join("/")
}

fn content(path: &str, full: &Path) -> Content {
    let ending = path.rsplit_once('.').map_or("", |(_, e)| e);
    let is_text = TEXTS.iter().any(|e| ending.eq_ignore_ascii_case(e));
    let limit = if is_text { LARGEST_TEXT } else { LARGEST_MEDIA };
    let size = match std::fs::metadata(full) {
        Ok(data) if data.is_file() => data.len(),
        Ok(_) => return Content::Unreadable("it is not a file".into()),
        Err(error) => return Content::Unreadable(error.to_string()),
    };
    if size > limit {
        return Content::TooLarge(size);
    }
    match std::fs::read(full) {
        Ok(bytes) if is_text => match String::from_utf8(bytes) {
            Ok(text) => Content::Text(text),
            Err(error) => Content::NotUtf8(error.utf8_error().valid_up_to()),
        },
        Ok(bytes) => Content::Bytes(bytes),
        Err(error) => Content::Unreadable(error.to_string()),
    }
}
