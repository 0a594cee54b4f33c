//! The cautions audit: a site's own files, read back. An inverted or loaded movement, and any other that has cautions, is never
//! named without its mark, whatever the theme or a note does.
//!
//! Reads only what is written in the files: links, `data-movement`, `data-caution`, names standing alone, data, style sheets.

use super::{search, tables};
use crate::curriculum::note::NoteOwner;
use crate::curriculum::{Curriculum, Owner};
use html5gum::{Token, Tokenizer};
use serde_json::Value;
use std::collections::{HashMap, HashSet};
use std::fmt;

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

/// What must be marked.
pub struct Auditor {
    /// Page file name and the id of the cautioned movement that it shows or leads to.
    pages: HashMap<String, String>,
    /// Cautioned movements by id.
    cautioned: HashSet<String>,
    /// Their names in small letters, where no other record bears the same name.
    names: HashMap<String, String>,
    /// Bytes of the longest of those names, with room for capitals that are longer than their small letters.
    longest_name: usize,
    address: String,
}

impl Auditor {
    pub fn new(curriculum: &Curriculum) -> Auditor {
        let mut pages = HashMap::new();
        let mut cautioned = HashSet::new();
        let mut names = HashMap::new();
        let bears_caution = |ix| !curriculum.movement(ix).cautions.is_empty();
        for (_, m) in curriculum.published().filter(|(ix, _)| bears_caution(*ix)) {
            cautioned.insert(m.id.to_string());
            pages.insert(format!("{}.html", m.id), m.id.to_string());
            names.insert(m.name.to_lowercase(), m.id.to_string());
        }
        for (old, owner) in curriculum.old_ids() {
            if let Owner::Movement(ix) = owner
                && bears_caution(ix)
            {
                pages.insert(
                    format!("{old}.html"),
                    curriculum.movement(ix).id.to_string(),
                );
            }
        }
        // A skill, family or page of the same name is that record's own name.
        let pages_of_their_own = curriculum
            .notes()
            .filter(|(_, n)| n.owner == NoteOwner::Page);
        let others = curriculum
            .skills()
            .map(|(_, s)| &s.name)
            .chain(curriculum.families().map(|(_, f)| &f.name));
        for name in others.chain(pages_of_their_own.map(|(_, n)| &n.title)) {
            names.remove(&name.to_lowercase());
        }
        let longest_name = names.keys().map(|n| n.len() * 2).max().unwrap_or(0);
        Auditor {
            longest_name,
            pages,
            cautioned,
            names,
            address: curriculum.school.address.clone(),
        }
    }

    /// Reads one written file back.
    pub fn file(&self, path: &str, bytes: &[u8]) -> Vec<Fault> {
        let says: Vec<String> = match path.rsplit('.').next() {
            Some("html") => self.page(&String::from_utf8_lossy(bytes)),
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

    fn page(&self, html: &str) -> Vec<String> {
        let mut walk = Walk {
            auditor: self,
            open: Vec::new(),
            text: String::new(),
            faults: Vec::new(),
            policy: false,
        };
        for token in Tokenizer::new(html) {
            let Ok(token) = token;
            match token {
                Token::StartTag(tag) => walk.start(&tag),
                Token::EndTag(tag) => walk.end(&tag.name),
                Token::String(text) => walk.text.push_str(&String::from_utf8_lossy(&text)),
                _ => {}
            }
        }
        while let Some(element) = walk.open.pop() {
            walk.close(element);
        }
        if !walk.policy {
            walk.faults
                .push("the page does not carry the content security policy".into());
        }
        walk.faults
    }

    /// The movement that an address of the site leads to, if it has cautions.
    fn leads_to(&self, href: &str) -> Option<&str> {
        let inside = href.strip_prefix(&self.address).unwrap_or(href);
        let target = inside.split(['#', '?']).next().unwrap_or("");
        if target.contains("://") || target.is_empty() {
            return None;
        }
        let decoded = target.replace("%2D", "-").replace("%2d", "-");
        let name = decoded.rsplit('/').next().unwrap_or(&decoded);
        self.pages.get(name).map(String::as_str)
    }

    /// The tables from which the page's script names movements.
    fn tables(&self, text: &str) -> Vec<String> {
        let body = text.strip_prefix(tables::PREFIX);
        let body = body.map(|b| b.trim_end().trim_end_matches(';'));
        let Some(value) = body.and_then(|b| serde_json::from_str::<Value>(b).ok()) else {
            return vec!["the tables are not JSON".into()];
        };
        let mark =
            |i: usize| &value["marks"][value["mark"][i].as_u64().unwrap_or(u64::MAX) as usize];
        let ids = value["ids"].as_array().into_iter().flatten().enumerate();
        ids.filter_map(|(i, id)| Some((i, id.as_str()?)))
            .filter(|(i, id)| self.cautioned.contains(*id) && !mark(*i)["signal"].is_string())
            .map(|(_, id)| format!("`{id}` stands in the tables without its caution mark"))
            .collect()
    }

    /// The entries from which the page's search names movements.
    fn search(&self, text: &str) -> Vec<String> {
        let body = text
            .strip_prefix(search::PREFIX)
            .map(|b| b.trim_end().trim_end_matches(';'));
        let Some(Value::Array(entries)) = body.and_then(|b| serde_json::from_str(b).ok()) else {
            return vec!["the search entries are not JSON".into()];
        };
        entries
            .iter()
            .filter_map(|e| Some((e[1].as_str()?, e[3].as_str()?)))
            .filter(|(id, signal)| self.cautioned.contains(*id) && signal.is_empty())
            .map(|(id, _)| format!("`{id}` stands in the search without its caution mark"))
            .collect()
    }

    fn data(&self, bytes: &[u8]) -> Vec<String> {
        let Ok(value) = serde_json::from_slice::<Value>(bytes) else {
            return vec!["the data is not JSON".into()];
        };
        let none = Vec::new();
        let movements = value["movements"].as_array().unwrap_or(&none);
        let mut faults = Vec::new();
        for movement in movements {
            let id = movement["id"].as_str().unwrap_or("");
            let marked = movement["signal"].is_string()
                && movement["cautions"]
                    .as_array()
                    .is_some_and(|c| !c.is_empty());
            if self.cautioned.contains(id) && !marked {
                faults.push(format!("`{id}` stands in the data without its cautions"));
            }
        }
        faults
    }
}

/// An element that is open while the page is read.
struct Element {
    name: String,
    movement: Option<String>,
    marked: bool,
    hidden: bool,
    /// Inside, names are not looked for: source text, titles, scripts. As `hidden`, taken over from what it stands in.
    quiet: bool,
}

struct Walk<'a> {
    auditor: &'a Auditor,
    open: Vec<Element>,
    text: String,
    faults: Vec<String>,
    policy: bool,
}

const VOID: &[&str] = &[
    "area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track",
    "wbr",
];

impl Walk<'_> {
    fn start(&mut self, tag: &html5gum::StartTag<()>) {
        self.flush();
        let name = String::from_utf8_lossy(&tag.name).into_owned();
        if tag.attributes.is_empty() && !matches!(name.as_str(), "script" | "style") {
            return self.open_plain(name, tag.self_closing);
        }
        let attribute = |key: &str| {
            tag.attributes
                .get(key.as_bytes())
                .map(|v| String::from_utf8_lossy(v).into_owned())
        };
        self.policy |= name == "meta"
            && attribute("http-equiv")
                .is_some_and(|h| h.eq_ignore_ascii_case("content-security-policy"))
            && attribute("content").as_deref() == Some(POLICY);
        let of_interest = |key: &[u8]| {
            key == b"style"
                || key.starts_with(b"on")
                || key == b"href"
                || [&b"src"[..], b"srcset", b"poster", b"data"].contains(&key)
        };
        for (key, value) in tag.attributes.iter().filter(|(k, _)| of_interest(k)) {
            self.policy_of(
                &name,
                &String::from_utf8_lossy(key),
                &String::from_utf8_lossy(value),
            );
        }
        if name == "script"
            && attribute("src").is_none()
            && attribute("type").as_deref() != Some("application/ld+json")
        {
            self.faults
                .push("a script stands in the page itself".into());
        }
        if name == "style" {
            self.faults.push("a style stands in the page itself".into());
        }
        let hidden = attribute("hidden").is_some()
            || attribute("aria-hidden").as_deref() == Some("true")
            || self.open.last().is_some_and(|e| e.hidden);
        if let Some(signal) = attribute("data-caution")
            && !hidden
            && ["notice", "caution", "warning"].contains(&signal.as_str())
        {
            // A mark speaks for the movement it stands in, not for those around it.
            let of = self.open.iter().rev().find_map(|e| e.movement.clone());
            self.open
                .iter_mut()
                .filter(|e| e.movement == of)
                .for_each(|e| e.marked = true);
        }
        let movement = attribute("data-movement");
        let own_mark = attribute("data-caution").is_some() && !hidden;
        if matches!(name.as_str(), "a" | "area")
            && let Some(href) = attribute("href").or_else(|| attribute("xlink:href"))
            && let Some(id) = self.auditor.leads_to(&href)
            && !self.open.iter().any(|e| e.movement.as_deref() == Some(id))
            && movement.as_deref() != Some(id)
        {
            self.faults.push(format!(
                "a link leads to `{id}` outside an element with data-movement=\"{id}\" and its mark"
            ));
        }
        let void = VOID.contains(&name.as_str()) || tag.self_closing;
        let quiet = matches!(name.as_str(), "pre" | "title" | "script" | "style" | "svg")
            || self.open.last().is_some_and(|e| e.quiet);
        let element = Element {
            name,
            movement,
            marked: own_mark,
            hidden,
            quiet,
        };
        if void {
            self.close(element)
        } else {
            self.open.push(element)
        }
    }

    /// An element without attributes says nothing by itself; it may only be hidden or quiet by what it stands in.
    fn open_plain(&mut self, name: String, self_closing: bool) {
        if self_closing || VOID.contains(&name.as_str()) {
            return;
        }
        let above = self.open.last();
        let quiet =
            matches!(name.as_str(), "pre" | "title" | "svg") || above.is_some_and(|e| e.quiet);
        let hidden = above.is_some_and(|e| e.hidden);
        self.open.push(Element {
            name,
            movement: None,
            marked: false,
            hidden,
            quiet,
        });
    }

    /// Nothing inline, nothing from outside.
    fn policy_of(&mut self, name: &str, key: &str, value: &str) {
        if key == "style" || (key.starts_with("on") && key.len() > 2) {
            self.faults.push(format!(
                "`{name}` has the attribute `{key}`, which the policy forbids"
            ));
        }
        let loads = matches!(key, "src" | "srcset" | "poster" | "data")
            || (name == "link" && key == "href");
        let own = value.starts_with(&self.auditor.address);
        if loads && (value.contains("://") || value.trim_start().starts_with("//")) && !own {
            self.faults
                .push(format!("`{name}` loads something from outside: {value}"));
        }
    }

    fn end(&mut self, name: &[u8]) {
        self.flush();
        let name = String::from_utf8_lossy(name).into_owned();
        let Some(at) = self.open.iter().rposition(|e| e.name == name) else {
            return;
        };
        for element in self.open.split_off(at).into_iter().rev() {
            self.close(element);
        }
    }

    fn close(&mut self, element: Element) {
        if let Some(id) = element
            .movement
            .filter(|id| self.auditor.cautioned.contains(id))
            && !element.marked
        {
            self.faults.push(format!(
                "`{id}` is named in a <{}> without its caution mark",
                element.name
            ));
        }
    }

    /// A text that is exactly the name of a cautioned movement stands inside that movement's element.
    fn flush(&mut self) {
        let text = std::mem::take(&mut self.text);
        let words = text.trim();
        let possible = !words.is_empty() && words.len() <= self.auditor.longest_name;
        if !possible || self.open.last().is_some_and(|e| e.quiet) {
            return;
        }
        if let Some(id) = self.auditor.names.get(&words.to_lowercase())
            && !self.open.iter().any(|e| e.movement.as_deref() == Some(id))
        {
            self.faults.push(format!("`{id}` is named as \"{words}\" outside an element with data-movement=\"{id}\" and its mark"));
        }
    }
}

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
