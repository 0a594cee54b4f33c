//! The cautions audit: a site's own files, read back. An inverted or loaded movement, and any other that has cautions, is never
//! named without its mark, whatever the theme or a note does.
//!
//! Reads only what is written in the files: links, `data-movement`, `data-skill`, `data-family`, `data-caution`, titles, names standing alone, data, style sheets.

mod address;
mod attributes;
mod data;
mod openings;
pub(super) mod pieces;
mod plain;
mod tokens;
mod walk;
mod whole;

use crate::curriculum::caution::Signal;
use crate::curriculum::naming;
use crate::curriculum::note::NoteOwner;
use crate::curriculum::{Curriculum, Owner};
use crate::site::feeds::search;
use crate::site::feeds::tables;
use crate::site::pages::Rope;
use crate::site::theme::guard::Guard;
pub use crate::site::theme::guard::POLICY;
use crate::site::theme::paper;
use crate::words::escape::escape;
use crate::words::{Words, seen};
use data::style_sheet;
use foldhash::fast::FixedState;
use memchr::{memchr2, memmem};
use openings::Openings;
use pieces::Pieces;
use std::collections::HashMap;
use std::fmt;
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

/// What a text says of a signal beside a name, on the side where it stands in this language.
fn beside_a_name(signal: Signal, words: &Words) -> String {
    const NAME: char = '\u{0}';
    let whole = naming::with_signal(&NAME.to_string(), Some(signal), words);
    let (before, after) = whole.split_once(NAME).unwrap_or((whole.as_str(), ""));
    match after.trim().is_empty() {
        true => before.to_string(),
        false => after.to_string(),
    }
}

/// The signals of marks.
const SIGNALS: [&str; 3] = ["notice", "caution", "warning"];

/// A movement, skill or family that bears cautions, by its position among [`Auditor::ids`]. A skill is as guarded as its goal,
/// a family as its members.
type Cautioned = u32;

/// What bears cautions.
struct Bearer {
    id: String,
    /// The attribute of elements that are about it.
    attribute: &'static str,
    /// What stands behind its name in texts, such as " [warning]".
    signal: String,
}

/// What must be marked.
pub struct Auditor {
    /// Those that bear cautions.
    ids: Vec<Bearer>,
    by_id: HashMap<String, Cautioned, FixedState>,
    /// Page file names, each with the cautioned movement that it shows or leads to.
    pages: HashMap<String, Cautioned, FixedState>,
    /// Their names in small letters with all that bear them, where no other kind of record bears the same name.
    names: HashMap<String, Vec<Cautioned>, FixedState>,
    openings: Openings,
    own: address::Own,
    address: String,
    /// Pages that lead on by themselves, and where.
    redirects: HashMap<String, String, FixedState>,
    /// For each signal its word in small letters.
    signals: [(&'static str, String); 3],
    /// The addresses of the guard's sheet and script, below a page's root.
    guard: [String; 2],
}

/// The records that bear cautions, while they are gathered.
#[derive(Default)]
struct Bearers {
    ids: Vec<Bearer>,
    by_id: HashMap<String, Cautioned, FixedState>,
    pages: HashMap<String, Cautioned, FixedState>,
    names: HashMap<String, Vec<Cautioned>, FixedState>,
    /// Whose names are free.
    plain: Vec<Owner>,
}

impl Bearers {
    fn take(&mut self, curriculum: &Curriculum, owner: Owner) {
        let Some(signal) = curriculum.signal_of(owner) else {
            self.plain.push(owner);
            return;
        };
        let id = curriculum.id_of(owner).to_string();
        let at = self.ids.len() as Cautioned;
        self.by_id.insert(id.clone(), at);
        self.pages.insert(format!("{id}.html"), at);
        // A family's name is a common word, such as “dips”, under which its members are linked too.
        match owner {
            Owner::Family(_) => self.plain.push(owner),
            _ => {
                let name = seen::name(curriculum.name_of(owner));
                self.names.entry(name).or_default().push(at);
            }
        }
        let attribute = match owner {
            Owner::Skill(_) => "data-skill",
            Owner::Family(_) => "data-family",
            Owner::Movement(_) | Owner::Page(_) => "data-movement",
        };
        self.ids.push(Bearer {
            id,
            attribute,
            signal: beside_a_name(signal, curriculum.words()),
        });
    }
}

impl Auditor {
    pub fn new(curriculum: &Curriculum) -> Auditor {
        let mut bearers = Bearers::default();
        let movements = curriculum.published().map(|(ix, _)| Owner::Movement(ix));
        let families = curriculum.families().filter(|(_, f)| !f.held_back);
        let records = movements
            .chain(curriculum.skills().map(|(ix, _)| Owner::Skill(ix)))
            .chain(families.map(|(ix, _)| Owner::Family(ix)));
        records.for_each(|owner| bearers.take(curriculum, owner));
        let Bearers {
            ids,
            by_id,
            mut pages,
            mut names,
            plain,
        } = bearers;
        for (old, owner) in curriculum.old_ids() {
            if let Some(at) = by_id.get(curriculum.id_of(owner)) {
                pages.insert(format!("{old}.html"), *at);
            }
        }
        // A page, or a record without cautions, of the same name bears it as its own.
        let pages_of_their_own = curriculum
            .notes()
            .filter(|(_, n)| n.owner == NoteOwner::Page)
            .map(|(ix, _)| Owner::Page(ix));
        for owner in plain.into_iter().chain(pages_of_their_own) {
            names.remove(&seen::name(curriculum.name_of(owner)));
        }
        let redirects = curriculum.old_ids().map(|(old, owner)| {
            let to = format!("{}.html", curriculum.id_of(owner));
            (format!("{old}.html"), to)
        });
        Auditor {
            openings: Openings::of(names.keys().map(String::as_str)),
            ids,
            by_id,
            pages,
            names,
            own: address::Own::new(&curriculum.school().address),
            redirects: redirects.collect(),
            signals: SIGNALS.map(|signal| {
                let word = curriculum.words().say(&format!("signal.{signal}"));
                (signal, seen::name(word))
            }),
            guard: Guard::new(curriculum.words())
                .map(|guard| [guard.sheet_address(), guard.script_address()])
                .unwrap_or_default(),
            address: curriculum.school().address.clone(),
        }
    }

    fn id(&self, bearer: Cautioned) -> &str {
        &self.ids[bearer as usize].id
    }

    fn attribute(&self, bearer: Cautioned) -> &'static str {
        self.ids[bearer as usize].attribute
    }

    /// The title of a record's page, and what it is to programs, say its signal word.
    fn head(&self, path: &str, html: &[u8]) -> Vec<String> {
        let of = ["self-test-", "booklet-"]
            .iter()
            .find_map(|before| path.strip_prefix(before))
            .unwrap_or(path);
        let Some(bearer) = self.pages.get(of) else {
            return Vec::new();
        };
        let bearer = &self.ids[*bearer as usize];
        let signal = bearer.signal.trim();
        // As it stands in HTML, and as it stands in JSON inside a script.
        let json = serde_json::to_string(signal).unwrap_or_default();
        let spelt = [
            escape(signal),
            json.trim_matches('"').replace('<', "\\u003c"),
        ];
        let heads = [
            ("<title>", "</title>", "the title"),
            (
                "property=\"og:title\" content=\"",
                "\"",
                "the title of a link",
            ),
            (
                "<script type=\"application/ld+json\">",
                "</script>",
                "what programs read",
            ),
        ];
        let unmarked = heads.iter().filter(|(start, end, _)| {
            let found = memmem::find(html, start.as_bytes()).map(|at| &html[at + start.len()..]);
            let text =
                found.map(|rest| &rest[..memmem::find(rest, end.as_bytes()).unwrap_or(rest.len())]);
            text.is_some_and(|text| {
                spelt
                    .iter()
                    .all(|signal| memmem::find(text, signal.as_bytes()).is_none())
            })
        });
        unmarked
            .map(|(_, _, what)| {
                format!(
                    "`{}` is named in {what} of its page without its signal word",
                    bearer.id
                )
            })
            .collect()
    }

    /// Reads one written file back.
    pub fn file(&self, path: &str, bytes: &[u8]) -> Vec<Fault> {
        let says: Vec<String> = match path.rsplit('.').next() {
            Some("html") => {
                let mut says = self.page(path, bytes);
                says.extend(self.head(path, bytes));
                says
            }
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

    /// Reads back a page that stands outside the site and loads nothing: what is wrong with it.
    pub fn outside(&self, html: &[u8]) -> Vec<String> {
        let mut walk = Walk::new(self).loading_nothing();
        tokens::read(html, &mut walk);
        walk.finish()
    }

    /// The same of a page to print, which carries this style and no other.
    pub fn printed(&self, html: &str, style: &str) -> Vec<String> {
        let Some(bare) = paper::without(html, style) else {
            return vec![
                "the page does not carry the theme's style, allowed by its hash, once".into(),
            ];
        };
        let mut faults = style_sheet(style);
        if style.contains('<') {
            faults.push("a style to print holds a tag".into());
        }
        faults.extend(self.outside(bare.as_bytes()));
        faults
    }

    fn page(&self, path: &str, html: &[u8]) -> Vec<String> {
        let walk = || {
            let to = self.redirects.get(path).map(String::as_str);
            Walk::new(self).leading_to(to)
        };
        let mut read = walk();
        if plain::read(html, &mut read).is_none() {
            read = walk();
            tokens::read(html, &mut read);
        }
        read.finish()
    }

    /// Whether nothing is wrong with a page, as its rope tells for certain; `whole` is the page as it is written.
    /// [`Auditor::file`] then finds nothing either.
    pub(super) fn is_sound<'a>(
        &'a self,
        path: &str,
        rope: &Rope,
        whole: &[u8],
        pieces: Pieces<'a>,
    ) -> bool {
        let to = self.redirects.get(path).map(String::as_str);
        let mut walk = Walk::new(self).leading_to(to).in_pieces(pieces);
        // A thin page that is not plain is left to the reader of the whole.
        plain::read(rope.thin.as_bytes(), &mut walk).is_some()
            && walk.ends_sound(rope.pieces)
            && self.head(path, whole).is_empty()
    }

    /// The movement that an address of the site leads to, if it has cautions.
    fn leads_to(&self, href: &str) -> Option<Cautioned> {
        let bytes = href.as_bytes();
        let target = &href[..memchr2(b'#', b'?', bytes).unwrap_or(href.len())];
        if target.is_empty() {
            return None;
        }
        // Most are a file's name, as the program writes it.
        let is_plain =
            |b: &u8| b.is_ascii_lowercase() || b.is_ascii_digit() || *b == b'-' || *b == b'.';
        match target.strip_suffix(".html") {
            Some(_) if target.bytes().all(|b| is_plain(&b)) => self.pages.get(target).copied(),
            _ => self.pages.get(&self.own.page(href)?).copied(),
        }
    }
}
