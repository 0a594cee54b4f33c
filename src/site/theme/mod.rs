//! A theme: templates and assets. `chalk` is built into the program; a folder `themes/<name>` overrides it file by file.

mod bundle;
pub mod compact;
pub mod guard;
pub mod paper;
pub mod saying;
mod version;

pub use version::version;

use crate::curriculum::School;
use crate::source::suggest::did_you_mean;
use crate::source::{Content, Snapshot};
use crate::words::Words;
use compact::{compact_script, compact_sheet};
use guard::Guard;
use std::collections::BTreeMap;
use std::fmt;
use tera::Tera;

/// The shipped theme: paths and bytes, sorted by path.
const CHALK: &[(&str, &[u8])] = include!(concat!(env!("OUT_DIR"), "/chalk.rs"));

/// The name of the shipped theme.
pub const SHIPPED: &str = "chalk";

/// A theme cannot be loaded, or a page cannot be made with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ThemeError {
    /// What failed: names the page where there is one.
    pub message: String,
    /// The template engine's own account, with template, line and column.
    pub detail: String,
}

impl fmt::Display for ThemeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}\n{}", self.message, self.detail)
    }
}

/// A loaded theme.
pub struct Theme {
    tera: Tera,
    assets: BTreeMap<String, Vec<u8>>,
    guard: Guard,
    own_scripts: Vec<String>,
    in_pieces: bool,
}

impl Theme {
    /// The school's theme: the shipped files, then those of `themes/<name>` in the snapshot over them.
    ///
    /// # Errors
    /// A theme that exists nowhere; a template that cannot be read, with its line; a word that no words file has.
    pub fn load(name: &str, snapshot: &Snapshot, words: &Words) -> Result<Theme, ThemeError> {
        let mut files = chalk();
        let prefix = format!("themes/{name}/");
        let mut found = name == SHIPPED;
        for (_, file) in snapshot.files() {
            let Some(inside) = file.path.strip_prefix(&prefix) else {
                continue;
            };
            found = true;
            match &file.content {
                // A copy of a shipped file is published as the shipped one.
                Content::Text(text) if shipped(inside) == Some(text) => None,
                Content::Text(text) => files.insert(inside.to_string(), text.clone().into_bytes()),
                Content::Bytes(bytes) => files.insert(inside.to_string(), bytes.clone()),
                _ => {
                    return Err(ThemeError {
                        message: format!("the theme's file {} cannot be read", file.path),
                        detail: "it is too large, or not UTF-8 text".into(),
                    });
                }
            };
        }
        if !found {
            let known = snapshot
                .files()
                .filter_map(|(_, f)| f.path.strip_prefix("themes/")?.split('/').next());
            let help = did_you_mean(name, known.chain([SHIPPED])).unwrap_or_else(|| {
                format!("make the folder themes/{name}, or write `theme: chalk`")
            });
            return Err(ThemeError {
                message: format!("there is no theme `{name}`"),
                detail: help,
            });
        }
        let may_run = |path: &&String| [".js", ".mjs", ".svg"].iter().any(|e| path.ends_with(e));
        let is_own = |path: &&String| {
            let id = snapshot.find(&format!("{prefix}{path}"));
            let file = id.and_then(|id| snapshot.file(id));
            may_run(path)
                && file.is_some_and(
                    |f| !matches!(&f.content, Content::Text(text) if shipped(path) == Some(text)),
                )
        };
        let own_scripts = files.keys().filter(is_own).cloned().collect();
        let is_shipped = |(path, bytes): (&String, &Vec<u8>)| {
            !path.ends_with(".html") || shipped(path).map(str::as_bytes) == Some(bytes)
        };
        let in_pieces = files.iter().all(is_shipped);
        let theme = Theme::of_files(files, words, own_scripts)?;
        Ok(theme.in_pieces(in_pieces))
    }

    /// Whether pages are made as ropes of pieces. Else every page is made and read back as one text: what templates of one's own
    /// do with a piece is not known. The bytes are the same.
    pub fn in_pieces(self, in_pieces: bool) -> Theme {
        Theme { in_pieces, ..self }
    }

    pub(in crate::site) fn is_in_pieces(&self) -> bool {
        self.in_pieces
    }

    /// The scripts, and the drawings that may hold some, which are the curriculum's own: nothing checks what they do.
    pub fn own_scripts(&self) -> &[String] {
        &self.own_scripts
    }

    fn of_files(
        files: BTreeMap<String, Vec<u8>>,
        words: &Words,
        own_scripts: Vec<String>,
    ) -> Result<Theme, ThemeError> {
        let mut tera = Tera::new();
        saying::register(&mut tera, words);
        tera.autoescape_on(vec![".html"]);
        let mut templates = Vec::new();
        let mut assets = BTreeMap::new();
        for (path, bytes) in &files {
            if path.ends_with(".md")
                || path.starts_with("words/")
                || path.split('/').any(|p| p.starts_with('.'))
            {
                continue;
            }
            match path.ends_with(".html") {
                true => {
                    let text = saying::template(path, &String::from_utf8_lossy(bytes), words)?;
                    templates.push((path.clone(), text));
                }
                false if bundle::is_part(path) => {}
                false => {
                    let bytes = saying::asset(path, bytes.clone(), words, &files)?;
                    assets.insert(path.clone(), bytes);
                }
            }
        }
        for (name, parts) in bundle::all() {
            assets.insert(name.into(), saying::bundle(parts, words, &files)?);
        }
        tera.add_raw_templates(templates).map_err(|e| ThemeError {
            message: "the theme's templates cannot be read".into(),
            detail: e.to_string(),
        })?;
        let guard = Guard::new(words)?;
        Ok(Theme {
            tera,
            assets,
            guard,
            own_scripts,
            in_pieces: false,
        })
    }

    pub(in crate::site) fn tera(&self) -> &Tera {
        &self.tera
    }

    /// A page with what the program itself puts on every page.
    pub fn guarded(&self, html: &str) -> String {
        let mut html = html.to_string();
        let tags = self.guard.tags("", Guard::marks(&html));
        Guard::put(&mut html, &tags);
        html
    }

    /// What the program itself puts on every page.
    pub(in crate::site) fn guard(&self) -> &Guard {
        &self.guard
    }

    /// The paths of the theme's style sheets, scripts and pictures.
    pub(in crate::site) fn assets(&self) -> impl Iterator<Item = &str> {
        self.assets.keys().map(String::as_str)
    }

    /// An asset; the style sheet that has the tokens takes the school's accent.
    pub(in crate::site) fn asset(&self, path: &str, school: &School) -> Vec<u8> {
        let bytes = self.assets.get(path).cloned().unwrap_or_default();
        match &school.accent {
            Some(accent) if path.ends_with(".css") => String::from_utf8_lossy(&bytes)
                .replace("--accent: #b4472b", &format!("--accent: {accent}"))
                .replace("--accent:#b4472b", &format!("--accent:{accent}"))
                .into_bytes(),
            _ => bytes,
        }
    }
}

/// The text of a shipped file.
fn shipped(path: &str) -> Option<&'static str> {
    let found = CHALK.iter().find(|(of, _)| *of == path)?;
    std::str::from_utf8(found.1).ok()
}

/// The shipped theme as it is published.
fn chalk() -> BTreeMap<String, Vec<u8>> {
    let published = |(path, bytes): &(&str, &[u8])| {
        let published = match std::str::from_utf8(bytes) {
            Ok(text) if path.ends_with(".js") => compact_script(text).into_bytes(),
            Ok(text) if path.ends_with(".css") => compact_sheet(text).into_bytes(),
            _ => bytes.to_vec(),
        };
        (path.to_string(), published)
    };
    CHALK.iter().map(published).collect()
}
