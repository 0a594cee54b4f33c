//! The cautions audit: a site's own files, read back. An inverted or loaded movement, and any other that has cautions, is never
//! named without its mark, whatever the theme or a note does.
//!
//! Reads only what is written in the files: links, `data-movement`, `data-caution`, names standing alone, data, style sheets.

mod plain;
mod tokens;
mod walk;

use super::{search, tables};
use crate::curriculum::note::NoteOwner;
use crate::curriculum::{Curriculum, Owner};
use serde::Deserialize;
use serde::de::IgnoredAny;
use std::borrow::Cow;
use std::collections::HashMap;
use std::fmt;
use std::ops::Deref;
use walk::Walk;

/// Something that must not be handed over.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Fault {
    pub path: String,
    pub says: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.path, self.says)
    }
}

/// The policy that every page carries.
pub const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; media-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'";

/// A movement that bears cautions, by its position among [`Auditor::ids`].
type Cautioned = u32;

/// What must be marked.
pub struct Auditor {
    /// The ids of the cautioned movements.
    ids: Vec<String>,
    by_id: HashMap<String, Cautioned>,
    /// Page file names, each with the cautioned movement that it shows or leads to.
    pages: HashMap<String, Cautioned>,
    /// Their names in small letters with all that bear them, where no other kind of record bears the same name.
    names: HashMap<String, Vec<Cautioned>>,
    /// Bytes of the longest of those names, with room for capitals that are longer than their small letters.
    longest_name: usize,
    address: String,
}

impl Auditor {
    pub fn new(curriculum: &Curriculum) -> Auditor {
        let mut ids = Vec::new();
        let mut by_id = HashMap::new();
        let mut pages = HashMap::new();
        let mut names: HashMap<String, Vec<Cautioned>> = HashMap::new();
        for (_, m) in curriculum.published() {
            if m.cautions.is_empty() {
                continue;
            }
            let at = ids.len() as Cautioned;
            ids.push(m.id.to_string());
            by_id.insert(m.id.to_string(), at);
            pages.insert(format!("{}.html", m.id), at);
            names.entry(m.name.to_lowercase()).or_default().push(at);
        }
        for (old, owner) in curriculum.old_ids() {
            if let Owner::Movement(ix) = owner
                && let Some(at) = by_id.get(curriculum.movement(ix).id.as_str())
            {
                pages.insert(format!("{old}.html"), *at);
            }
        }
        // A skill, family, page or movement without cautions of the same name bears it as its own.
        let pages_of_their_own = curriculum
            .notes()
            .filter(|(_, n)| n.owner == NoteOwner::Page);
        let plain = curriculum
            .published()
            .filter(|(_, m)| m.cautions.is_empty());
        let others = curriculum
            .skills()
            .map(|(_, s)| &s.name)
            .chain(curriculum.families().map(|(_, f)| &f.name))
            .chain(plain.map(|(_, m)| &m.name));
        for name in others.chain(pages_of_their_own.map(|(_, n)| &n.title)) {
            names.remove(&name.to_lowercase());
        }
        let longest_name = names.keys().map(|n| n.len() * 2).max().unwrap_or(0);
        Auditor {
            longest_name,
            ids,
            by_id,
            pages,
            names,
            address: curriculum.school.address.clone(),
        }
    }

    fn id(&self, movement: Cautioned) -> &str {
        &self.ids[movement as usize]
    }

    /// Reads one written file back.
    pub fn file(&self, path: &str, bytes: &[u8]) -> Vec<Fault> {
        let says: Vec<String> = match path.rsplit('.').next() {
            Some("html") => self.page(bytes),
            Some("json") if path.starts_with("data/") && !path.ends_with(".schema.json") => {
                self.data(bytes)
            }
            Some("js") if path == search::PATH => self.search(&String::from_utf8_lossy(bytes)),
            Some("js") if path == tables::PATH => self.tables(&String::from_utf8_lossy(bytes)),
            Some("css") => style_sheet(&String::from_utf8_lossy(bytes)),
            _ => Vec::new(),
        };
        let mut faults: Vec<Fault> = says
            .into_iter()
            .map(|says| Fault {
                path: path.to_string(),
                says,
            })
            .collect();
        faults.sort();
        faults.dedup();
        faults
    }

    fn page(&self, html: &[u8]) -> Vec<String> {
        let mut walk = Walk::new(self);
        if plain::read(html, &mut walk).is_none() {
            walk = Walk::new(self);
            tokens::read(html, &mut walk);
        }
        walk.finish()
    }

    /// The movement that an address of the site leads to, if it has cautions.
    fn leads_to(&self, href: &str) -> Option<Cautioned> {
        let inside = href.strip_prefix(&self.address).unwrap_or(href);
        let target = inside.split(['#', '?']).next().unwrap_or("");
        if target.contains("://") || target.is_empty() {
            return None;
        }
        let name = target.rsplit('/').next().unwrap_or(target);
        if name.contains('%') {
            let decoded = name.replace("%2D", "-").replace("%2d", "-");
            return self.pages.get(&decoded).copied();
        }
        self.pages.get(name).copied()
    }

    /// The tables from which the page's script names movements.
    fn tables(&self, text: &str) -> Vec<String> {
        let body = text.strip_prefix(tables::PREFIX);
        let body = body.map(|b| b.trim_end().trim_end_matches(';'));
        let Some(tables) = body.and_then(|b| serde_json::from_str::<InTables<'_>>(b).ok()) else {
            return vec!["the tables are not JSON".into()];
        };
        let marked = |i: usize| {
            let number = tables.mark.get(i).and_then(|n| usize::try_from(*n).ok());
            let mark = number.and_then(|n| tables.marks.get(n));
            mark.is_some_and(|m| m.signal.is_some())
        };
        let ids = tables.ids.iter().enumerate();
        ids.filter(|(i, id)| self.by_id.contains_key(id.as_ref()) && !marked(*i))
            .map(|(_, id)| format!("`{}` stands in the tables without its caution mark", &**id))
            .collect()
    }

    /// The entries from which the page's search names movements.
    fn search(&self, text: &str) -> Vec<String> {
        let body = text
            .strip_prefix(search::PREFIX)
            .map(|b| b.trim_end().trim_end_matches(';'));
        let Some(entries) = body.and_then(|b| serde_json::from_str::<Vec<InSearch<'_>>>(b).ok())
        else {
            return vec!["the search entries are not JSON".into()];
        };
        entries
            .iter()
            .filter(|e| self.by_id.contains_key(e.1.as_ref()) && e.3.is_empty())
            .map(|e| format!("`{}` stands in the search without its caution mark", &*e.1))
            .collect()
    }

    fn data(&self, bytes: &[u8]) -> Vec<String> {
        let Ok(data) = serde_json::from_slice::<Data<'_>>(bytes) else {
            return vec!["the data is not JSON".into()];
        };
        let unmarked = data.movements.iter().filter(|m| {
            let marked = m.signal.is_some() && m.cautions.as_ref().is_some_and(|c| !c.is_empty());
            !marked && self.by_id.contains_key(m.id.as_ref())
        });
        unmarked
            .map(|m| format!("`{}` stands in the data without its cautions", &*m.id))
            .collect()
    }
}

/// What the audit reads of the open data.
#[derive(Deserialize)]
struct Data<'a> {
    #[serde(borrow, default)]
    movements: Vec<InData<'a>>,
}

#[derive(Deserialize)]
struct InData<'a> {
    #[serde(borrow, default)]
    id: Text<'a>,
    #[serde(borrow)]
    signal: Option<Text<'a>>,
    #[serde(borrow)]
    cautions: Option<Vec<Text<'a>>>,
}

/// A text that is borrowed where it holds no escape.
#[derive(Default, Deserialize)]
struct Text<'a>(#[serde(borrow)] Cow<'a, str>);

impl Deref for Text<'_> {
    type Target = str;

    fn deref(&self) -> &str {
        &self.0
    }
}

impl AsRef<str> for Text<'_> {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

/// What the audit reads of the tables.
#[derive(Deserialize)]
struct InTables<'a> {
    #[serde(borrow)]
    ids: Vec<Text<'a>>,
    #[serde(borrow)]
    marks: Vec<InMark<'a>>,
    mark: Vec<i64>,
}

#[derive(Deserialize)]
struct InMark<'a> {
    #[serde(borrow)]
    signal: Option<Text<'a>>,
}

/// What the audit reads of an entry of the search: the second text is the address, the fourth the signal.
#[derive(Deserialize)]
struct InSearch<'a>(
    IgnoredAny,
    #[serde(borrow)] Text<'a>,
    IgnoredAny,
    #[serde(borrow)] Text<'a>,
    IgnoredAny,
    IgnoredAny,
    IgnoredAny,
    IgnoredAny,
);

/// A style sheet that hides the marks, or loads from outside.
fn style_sheet(css: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let compact: String = css
        .chars()
        .filter(|c| !c.is_whitespace())
        .collect::<String>()
        .to_lowercase();
    if compact.contains("@import") {
        faults.push("a style sheet imports another".into());
    }
    for (at, _) in compact.match_indices("url(") {
        let value = compact[at + 4..].trim_start_matches(['"', '\'']);
        if value.starts_with("http") || value.starts_with("//") {
            faults.push("a style sheet loads something from outside".into());
        }
    }
    for rule in compact.split('}') {
        let Some((selector, body)) = rule.rsplit_once('{') else {
            continue;
        };
        let hides = [
            "display:none",
            "visibility:hidden",
            "opacity:0;",
            "font-size:0;",
            "font-size:0px;",
        ]
        .iter()
        .any(|h| format!("{body};").contains(h));
        if hides
            && (selector.contains("data-caution")
                || selector.contains(".mark")
                || selector.contains(".caution"))
        {
            faults.push(format!("the rule `{selector}` hides caution marks"));
        }
    }
    faults
}
