//! The cautions audit: a site's own files, read back. An inverted or loaded movement, and any other that has cautions, is never
//! named without its mark, whatever the theme or a note does.
//!
//! Reads only what is written in the files: links, `data-movement`, `data-skill`, `data-family`, `data-caution`, titles, names standing alone, data, style sheets.

mod address;
mod known;
mod plain;
mod tokens;
mod walk;

use crate::curriculum::caution::Signal;
use crate::curriculum::naming;
use crate::curriculum::note::NoteOwner;
use crate::curriculum::{Curriculum, Owner};
use crate::site::feeds::search;
use crate::site::feeds::tables;
pub use crate::site::theme::guard::POLICY;
use crate::site::theme::guard::{Guard, unstamped};
use crate::words::escape::escape;
use crate::words::{Words, seen};
use foldhash::fast::FixedState;
use known::Known;
use memchr::{memchr2, memmem};
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
    known: Option<Known>,
    own: address::Own,
    address: String,
    /// Pages that lead on by themselves, and where.
    redirects: HashMap<String, String, FixedState>,
    /// For each signal its word in small letters.
    signals: [(&'static str, String); 3],
    /// The addresses of the guard's sheet and script, below a page's root.
    guard: [String; 2],
}

/// How names begin and how long they are: most texts of a page are told from them at a glance.
struct Openings {
    /// For each first byte in small letters the lengths as bits; the last bit is any length from there on.
    lengths: [u64; 128],
    /// Bytes of the longest name, with room for capitals that are longer than their small letters.
    longest: usize,
}

impl Openings {
    fn of<'n>(names: impl Iterator<Item = &'n str>) -> Openings {
        let mut all = Openings {
            lengths: [0; 128],
            longest: 0,
        };
        for name in names {
            all.longest = all.longest.max(name.len() * 3);
            if let Some(first) = name.bytes().next().filter(u8::is_ascii) {
                all.lengths[usize::from(first)] |= Openings::bit(name);
            }
        }
        all
    }

    fn bit(name: &str) -> u64 {
        1 << name.len().min(63)
    }

    /// False only for what is no name in any capitals.
    fn may_be_name(&self, words: &str) -> bool {
        // Letters that nobody sees make a name longer.
        if words.len() > self.longest * 4 {
            return false;
        }
        if !words.is_ascii() {
            return true;
        }
        if words.len() > self.longest {
            return false;
        }
        let first = words.bytes().next().map(|b| b.to_ascii_lowercase());
        first.is_some_and(|b| self.lengths[usize::from(b)] & Openings::bit(words) != 0)
    }
}

impl Auditor {
    pub fn new(curriculum: &Curriculum) -> Auditor {
        let mut ids: Vec<Bearer> = Vec::new();
        let mut by_id = HashMap::default();
        let mut pages = HashMap::default();
        let mut names: HashMap<String, Vec<Cautioned>, FixedState> = HashMap::default();
        let movements = curriculum.published().map(|(ix, _)| Owner::Movement(ix));
        let families = curriculum.families().filter(|(_, f)| !f.held_back);
        let records = movements
            .chain(curriculum.skills().map(|(ix, _)| Owner::Skill(ix)))
            .chain(families.map(|(ix, _)| Owner::Family(ix)));
        let mut plain: Vec<Owner> = Vec::new();
        for owner in records {
            let Some(signal) = curriculum.signal_of(owner) else {
                plain.push(owner);
                continue;
            };
            let id = curriculum.id_of(owner).to_string();
            let at = ids.len() as Cautioned;
            by_id.insert(id.clone(), at);
            pages.insert(format!("{id}.html"), at);
            // A family's name is a common word, such as “dips”, under which its members are linked too.
            match owner {
                Owner::Family(_) => plain.push(owner),
                _ => {
                    let name = seen::name(curriculum.name_of(owner));
                    names.entry(name).or_default().push(at);
                }
            }
            let signal = beside_a_name(signal, &curriculum.words);
            let attribute = match owner {
                Owner::Skill(_) => "data-skill",
                Owner::Family(_) => "data-family",
                Owner::Movement(_) | Owner::Page(_) => "data-movement",
            };
            ids.push(Bearer {
                id,
                attribute,
                signal,
            });
        }
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
        Auditor {
            openings: Openings::of(names.keys().map(String::as_str)),
            ids,
            by_id,
            pages,
            names,
            known: None,
            own: address::Own::new(&curriculum.school.address),
            redirects: curriculum
                .old_ids()
                .map(|(old, owner)| {
                    (
                        format!("{old}.html"),
                        format!("{}.html", curriculum.id_of(owner)),
                    )
                })
                .collect(),
            signals: SIGNALS.map(|signal| {
                let word = curriculum.words.say(&format!("signal.{signal}"));
                (signal, seen::name(word))
            }),
            guard: Guard::new(&curriculum.words)
                .map(|guard| [guard.sheet_address(), guard.script_address()])
                .unwrap_or_default(),
            address: curriculum.school.address.clone(),
        }
    }

    /// Reads what stands on many pages, so that it is taken apart once: the names of movements, given by id, and what frames
    /// every page.
    pub fn know(&mut self, names: &[(&str, &str)], frame: &[&str]) {
        self.known = Some(Known::of(self, names, frame));
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

    fn page(&self, path: &str, html: &[u8]) -> Vec<String> {
        let to = self.redirects.get(path).map(String::as_str);
        let mut walk = Walk::new(self).leading_to(to);
        if plain::read(html, &mut walk).is_none() {
            walk = Walk::new(self).leading_to(to);
            tokens::read(html, &mut walk);
        }
        walk.finish()
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
        let movements = ids
            .filter(|(i, id)| self.by_id.contains_key(id.as_ref()) && !marked(*i))
            .map(|(_, id)| id);
        let skills = tables.skills.iter().filter(|skill| {
            let bearer = self.by_id.get(skill.id.as_ref());
            bearer.is_some_and(|at| !skill.name.ends_with(&self.ids[*at as usize].signal))
        });
        movements
            .chain(skills.map(|skill| &skill.id))
            .map(|id| format!("`{}` stands in the tables without its caution mark", &**id))
            .collect()
    }

    /// The entries from which the page's search names movements.
    fn search(&self, text: &str) -> Vec<String> {
        let body = unstamped(text)
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
        let all = data.movements.iter().chain(&data.skills);
        let unmarked = all.chain(&data.families).filter(|m| {
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
    #[serde(borrow, default)]
    skills: Vec<InData<'a>>,
    #[serde(borrow, default)]
    families: Vec<InData<'a>>,
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
    #[serde(borrow, default)]
    skills: Vec<SkillInTables<'a>>,
}

#[derive(Deserialize)]
struct SkillInTables<'a> {
    #[serde(borrow)]
    id: Text<'a>,
    #[serde(borrow)]
    name: Text<'a>,
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

#[cfg(test)]
mod tests {
    use super::Openings;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(500) })]

        /// No name is overlooked, in whatever capitals; `K` is the Kelvin sign, whose small letter is shorter.
        #[test]
        fn names_may_be_names(name in "[a-zA-ZäöKß -]{1,80}", others in prop::collection::vec("[a-z ]{1,9}", 0..4)) {
            let small = name.to_lowercase();
            let openings = Openings::of(others.iter().map(String::as_str).chain([small.as_str()]));
            for words in [&name, &small, &name.to_uppercase()] {
                if words.to_lowercase() == small {
                    prop_assert!(openings.may_be_name(words), "{}", words);
                }
            }
        }
    }

    #[test]
    fn most_texts_are_no_names() {
        let openings = Openings::of(["wall walk", "hang"].into_iter());
        assert!(openings.may_be_name("Wall Walk") && openings.may_be_name("HANG"));
        for other in ["", "wall", "stop at", "hangs", "1234"] {
            assert!(!openings.may_be_name(other), "{other}");
        }
    }
}
