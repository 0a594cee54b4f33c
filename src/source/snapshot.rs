//! A folder of files as one value. Whoever holds a snapshot can build the whole site without a disk.

use foldhash::fast::FixedState;
use rayon::prelude::*;
use std::collections::HashMap;
use std::sync::Arc;

/// Text files above this many bytes are not read.
pub const LARGEST_TEXT: u64 = 4_000_000;
/// The program's own list of how everything stood at the last publish; it may be as large as a picture.
pub const STANDING: &str = "content/standing.json";
/// Pictures and clips above this many bytes are not read. All of them are held in memory while a site is made, and each is
/// loaded over a phone's network.
pub const LARGEST_MEDIA: u64 = 32_000_000;

/// Index of a file in its snapshot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct FileId(pub u32);

impl FileId {
    /// The curriculum's folder itself, for findings that belong to no file.
    pub const FOLDER: FileId = FileId(u32::MAX);
}

/// A range of bytes in one file. `start <= end`; both lie on character boundaries of a text file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Span {
    pub file: FileId,
    pub start: u32,
    pub end: u32,
}

impl Span {
    /// A span of `len` bytes from `start`.
    pub fn new(file: FileId, start: usize, end: usize) -> Span {
        Span {
            file,
            start: start as u32,
            end: end.max(start) as u32,
        }
    }

    /// The first byte of a file: where findings about the file as a whole stand.
    pub fn top(file: FileId) -> Span {
        Span {
            file,
            start: 0,
            end: 0,
        }
    }

    /// The span of the bytes `from..to` counted from this span's start.
    pub fn within(self, from: usize, to: usize) -> Span {
        Span::new(
            self.file,
            self.start as usize + from,
            self.start as usize + to,
        )
    }

    /// Whether another place lies in this one.
    pub fn contains(self, other: Span) -> bool {
        self.file == other.file && self.start <= other.start && other.end <= self.end
    }
}

/// What a file holds, or why it was not read.
#[derive(Clone, Debug, PartialEq)]
pub enum Content {
    Text(String),
    /// Pictures and clips.
    Bytes(Vec<u8>),
    /// A text file that is not UTF-8, and what stops it.
    NotUtf8(Stray),
    /// Above the limit and left unread; its size in bytes.
    TooLarge(u64),
    /// A symbolic link out of the curriculum's folder; what it leads to is not read.
    Outside,
    /// The machine refused; its reason.
    Unreadable(String),
}

/// The first byte of a file that is no UTF-8.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stray {
    /// Its line, from 1.
    pub line: usize,
    pub byte: u8,
}

impl Stray {
    /// The first stray byte, behind so many sound ones.
    pub fn behind(sound: usize, bytes: &[u8]) -> Stray {
        let lines = bytes.iter().take(sound).filter(|b| **b == b'\n').count();
        Stray {
            line: lines + 1,
            byte: bytes.get(sound).copied().unwrap_or_default(),
        }
    }
}

impl std::fmt::Display for Stray {
    /// The letter that it is in the older encoding of western Europe (ISO 8859-1), where it is one.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.byte {
            0xa1.. => write!(
                f,
                "the letter `{}` in line {}",
                char::from(self.byte),
                self.line
            ),
            byte => write!(f, "the byte {byte:02x} in line {}", self.line),
        }
    }
}

/// One file: its path from the curriculum's folder, with `/` between the parts.
#[derive(Clone, Debug, PartialEq)]
pub struct SourceFile {
    pub path: String,
    pub content: Content,
}

/// All files of a curriculum, sorted by path.
///
/// A copy shares what it does not change.
#[derive(Clone, Debug, Default)]
pub struct Snapshot {
    files: Vec<Arc<SourceFile>>,
    by_path: Arc<HashMap<String, FileId, FixedState>>,
}

impl Snapshot {
    /// Sorts the files by path, so that equal folders give equal snapshots.
    pub fn new(mut files: Vec<SourceFile>) -> Snapshot {
        files.par_sort_by(|a, b| a.path.cmp(&b.path));
        let by_path = files
            .iter()
            .enumerate()
            .map(|(i, f)| (f.path.clone(), FileId(i as u32)))
            .collect();
        Snapshot {
            files: files.into_iter().map(Arc::new).collect(),
            by_path: Arc::new(by_path),
        }
    }

    /// The same folder with other content in one of its files.
    pub fn with(&self, id: FileId, content: Content) -> Snapshot {
        let mut changed = self.clone();
        if let Some(file) = changed.files.get_mut(id.0 as usize) {
            *file = Arc::new(SourceFile {
                path: file.path.clone(),
                content,
            });
        }
        changed
    }

    /// A snapshot of text files, for tests and for the first curriculum.
    pub fn of_texts<'a>(texts: impl IntoIterator<Item = (&'a str, &'a str)>) -> Snapshot {
        let file = |(path, text): (&str, &str)| SourceFile {
            path: path.to_string(),
            content: Content::Text(text.to_string()),
        };
        Snapshot::new(texts.into_iter().map(file).collect())
    }

    /// The same files with this text at this path.
    pub fn with_text(&self, path: &str, text: &str) -> Snapshot {
        let content = Content::Text(text.to_string());
        if let Some(id) = self.find(path) {
            return self.with(id, content);
        }
        let others = self.files.iter().map(|f| f.as_ref().clone());
        let path = path.to_string();
        Snapshot::new(others.chain([SourceFile { path, content }]).collect())
    }

    /// Every file with its id, in order of path.
    pub fn files(&self) -> impl Iterator<Item = (FileId, &SourceFile)> {
        self.files
            .iter()
            .enumerate()
            .map(|(i, f)| (FileId(i as u32), f.as_ref()))
    }

    /// The file with this id; `None` for the folder itself.
    pub fn file(&self, id: FileId) -> Option<&SourceFile> {
        self.files.get(id.0 as usize).map(Arc::as_ref)
    }

    /// The path of a file; `content` for the folder itself.
    pub fn path(&self, id: FileId) -> &str {
        self.file(id).map_or("content", |f| f.path.as_str())
    }

    pub fn find(&self, path: &str) -> Option<FileId> {
        self.by_path.get(path).copied()
    }

    /// Whether any file lies below this path.
    pub fn has_folder(&self, path: &str) -> bool {
        let at = self.files.partition_point(|f| f.path.as_str() < path);
        self.files[at..]
            .iter()
            .take_while(|f| f.path.starts_with(path))
            .any(|f| f.path[path.len()..].starts_with('/'))
    }

    /// The text of a file; empty when it is not text.
    pub fn text(&self, id: FileId) -> &str {
        match self.file(id).map(|f| &f.content) {
            Some(Content::Text(text)) => text,
            _ => "",
        }
    }

    /// The text under a span.
    pub fn slice(&self, span: Span) -> &str {
        self.text(span.file)
            .get(span.start as usize..span.end as usize)
            .unwrap_or("")
    }

    /// Line and column of a byte offset, both from 1, the column in characters.
    pub fn place(&self, file: FileId, offset: u32) -> (usize, usize) {
        let text = self.text(file).as_bytes();
        let before = &text[..(offset as usize).min(text.len())];
        let line_start = before
            .iter()
            .rposition(|b| *b == b'\n')
            .map_or(0, |i| i + 1);
        let line = before.iter().filter(|b| **b == b'\n').count() + 1;
        let column = String::from_utf8_lossy(&before[line_start..])
            .trim_start_matches('\u{feff}')
            .chars()
            .count()
            + 1;
        (line, column)
    }
}
