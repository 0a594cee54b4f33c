//! The words of the interface, by language: what the site says that no coach wrote.
//!
//! An entry has a key such as `movement.cues` and a text, or a text for each plural category of its `{n}`. The shipped files
//! stand in `themes/chalk/words/`; a coach's `content/words/<language>.yaml` goes over them entry by entry; what a language
//! lacks is said in English. Knows nothing of pages.

pub mod escape;
mod file;
mod number;
mod safety;
pub mod seen;
mod text;

pub use file::{CATEGORIES, Own, missing, own};
pub use text::{Form, plain_of};

use crate::source::{FileId, Findings, yaml};
use foldhash::fast::FixedState;
use number::Numbers;
use std::collections::{BTreeMap, HashMap};
use std::fmt::Write;
use std::sync::{Arc, LazyLock};

/// The shipped languages.
const SHIPPED: &[(&str, &str)] = &[
    (
        "en",
        include_str!(concat!(
            env!("CARGO_MANIFEST_DIR"),
            "/themes/chalk/words/en.yaml"
        )),
    ),
    (
        "he",
        include_str!(concat!(
            env!("CARGO_MANIFEST_DIR"),
            "/themes/chalk/words/he.yaml"
        )),
    ),
];

static ENGLISH: LazyLock<Words> = LazyLock::new(|| {
    let own = shipped("en").expect("English is shipped");
    Words::new("en", &[own])
});

/// The section with the school's words for equipment, the only one whose keys are free.
pub(crate) const GEAR: &str = "gear";

/// One text, or one for each plural category that it tells apart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Entry {
    Text(String),
    /// By category: `one`, `two`, `few`, `many`, `zero`, `other`; `other` is always there.
    Plural(BTreeMap<String, String>),
}

impl Entry {
    /// All its texts.
    pub fn texts(&self) -> Vec<&str> {
        match self {
            Entry::Text(text) => vec![text],
            Entry::Plural(forms) => forms.values().map(String::as_str).collect(),
        }
    }

    /// The entry with every text changed.
    pub fn map(&self, change: &dyn Fn(&str) -> String) -> Entry {
        match self {
            Entry::Text(text) => Entry::Text(change(text)),
            Entry::Plural(forms) => Entry::Plural(
                forms
                    .iter()
                    .map(|(category, text)| (category.clone(), change(text)))
                    .collect(),
            ),
        }
    }
}

/// Which way a language is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    LeftToRight,
    RightToLeft,
}

impl Direction {
    /// As `dir` says it.
    pub fn word(self) -> &'static str {
        match self {
            Direction::LeftToRight => "ltr",
            Direction::RightToLeft => "rtl",
        }
    }

    fn read(word: &str) -> Option<Direction> {
        match word {
            "ltr" => Some(Direction::LeftToRight),
            "rtl" => Some(Direction::RightToLeft),
            _ => None,
        }
    }
}

/// What goes into a placeholder.
#[derive(Clone, Copy, Debug)]
pub enum Value<'a> {
    Text(&'a str),
    Whole(i64),
    /// Millionths.
    Micro(i64),
}

impl<'a> From<&'a str> for Value<'a> {
    fn from(text: &'a str) -> Value<'a> {
        Value::Text(text)
    }
}

impl<'a> From<&'a String> for Value<'a> {
    fn from(text: &'a String) -> Value<'a> {
        Value::Text(text)
    }
}

impl From<usize> for Value<'_> {
    fn from(n: usize) -> Self {
        Value::Whole(n as i64)
    }
}

impl From<u32> for Value<'_> {
    fn from(n: u32) -> Self {
        Value::Whole(n.into())
    }
}

/// Everything the interface says in one language. Cheap to clone.
#[derive(Clone, Debug)]
pub struct Words(Arc<Inner>);

#[derive(Debug)]
struct Inner {
    language: String,
    direction: Direction,
    entries: HashMap<String, Entry, FixedState>,
    numbers: Numbers,
}

impl Default for Words {
    fn default() -> Words {
        Words::english().clone()
    }
}

impl PartialEq for Words {
    fn eq(&self, other: &Words) -> bool {
        self.0.language == other.0.language && self.0.entries == other.0.entries
    }
}

impl Words {
    /// The words that the program's own answers use, whatever language a school has.
    pub fn english() -> &'static Words {
        &ENGLISH
    }

    /// The words of a language: English, over it the shipped file of the language, over that the coach's own files.
    pub fn of(language: &str, own: &[(String, Own)]) -> Words {
        let mut layers = vec![shipped("en").expect("English is shipped")];
        for tag in tags(language) {
            layers.extend(shipped(tag).filter(|_| tag != "en"));
        }
        for tag in tags(language) {
            layers.extend(own.iter().filter(|(l, _)| l == tag).map(|(_, o)| o.clone()));
        }
        Words::new(language, &layers)
    }

    fn new(language: &str, layers: &[Own]) -> Words {
        let mut entries = HashMap::default();
        let mut direction = Direction::LeftToRight;
        for layer in layers {
            direction = layer.direction.unwrap_or(direction);
            entries.extend(layer.entries.iter().cloned());
        }
        Words(Arc::new(Inner {
            language: language.to_string(),
            direction,
            entries,
            numbers: Numbers::new(language),
        }))
    }

    pub fn language(&self) -> &str {
        &self.0.language
    }

    pub fn direction(&self) -> Direction {
        self.0.direction
    }

    /// Whether the page is drawn from the right.
    pub fn is_right_to_left(&self) -> bool {
        self.0.direction == Direction::RightToLeft
    }

    pub fn entry(&self, key: &str) -> Option<&Entry> {
        self.0.entries.get(key)
    }

    /// Every key with its entry, in order.
    pub fn entries(&self) -> impl Iterator<Item = (&str, &Entry)> {
        let all = self.0.entries.iter().map(|(k, e)| (k.as_str(), e));
        all.collect::<BTreeMap<_, _>>().into_iter()
    }

    /// Every key that begins so, in no order.
    pub fn keys_from<'w>(&'w self, prefix: &'w str) -> impl Iterator<Item = &'w str> {
        let keys = self.0.entries.keys().map(String::as_str);
        keys.filter(move |key| key.starts_with(prefix))
    }

    /// The text of an entry without placeholders.
    ///
    /// # Panics
    /// When there is no such entry: the program asks only for what `en.yaml` has, which the tests check.
    pub fn say(&self, key: &str) -> &str {
        match self.entry(key) {
            Some(Entry::Text(text)) => text,
            Some(Entry::Plural(forms)) => &forms["other"],
            None => panic!("en.yaml has the entry {key}"),
        }
    }

    /// The text of an entry with its placeholders filled; a number `n` chooses the plural form.
    ///
    /// # Panics
    /// As [`Words::say`].
    pub fn fill(&self, key: &str, values: &[(&str, Value<'_>)]) -> String {
        let entry = self
            .entry(key)
            .unwrap_or_else(|| panic!("en.yaml has the entry {key}"));
        self.fill_entry(entry, values)
    }

    /// The same for an entry at hand.
    pub fn fill_entry(&self, entry: &Entry, values: &[(&str, Value<'_>)]) -> String {
        let n = values.iter().find(|(name, _)| *name == "n").map(|v| v.1);
        let text = match entry {
            Entry::Text(text) => text,
            Entry::Plural(forms) => {
                let category = n.map_or("other", |n| self.0.numbers.category(n));
                forms.get(category).unwrap_or(&forms["other"])
            }
        };
        let mut out = String::with_capacity(text.len() + 16);
        text::fill(text, &mut out, &mut |name, out| {
            let found = values.iter().find(|(n, _)| *n == name);
            match found.map(|v| v.1) {
                Some(Value::Text(text)) => out.push_str(text),
                Some(number) => out.push_str(&self.0.numbers.show(number)),
                None => {
                    let _ = write!(out, "{{{name}}}");
                }
            }
        });
        out
    }

    /// A whole number with the language's digits and marks.
    pub fn whole(&self, n: i64) -> String {
        self.0.numbers.show(Value::Whole(n))
    }

    /// A number of millionths with the language's digits and marks, without needless zeros.
    pub fn decimal(&self, micro: i64) -> String {
        self.0.numbers.show(Value::Micro(micro))
    }

    /// A number with exactly one decimal.
    pub fn tenth(&self, n: f64) -> String {
        self.0.numbers.show_tenth(n)
    }

    /// The same with its sign, plus or minus.
    pub fn signed_tenth(&self, n: f64) -> String {
        let rounded = (n * 10.0).round();
        match rounded >= 0.0 && n.is_sign_positive() {
            true => format!("+{}", self.tenth(n)),
            false => format!("-{}", self.tenth(-n)),
        }
    }

    /// A word for equipment as readers see it: the file's, else the school's own word.
    pub fn gear(&self, word: &str) -> String {
        match self.entry(&format!("{GEAR}.{word}")) {
            Some(Entry::Text(text)) => text.clone(),
            _ => word.replace('-', " "),
        }
    }

    /// Several in one list: "a, b, c".
    pub fn list<S: AsRef<str>>(&self, items: &[S]) -> String {
        self.joined(items, "list.comma")
    }

    /// As [`Words::list`] of HTML, as HTML.
    pub fn list_html<S: AsRef<str>>(&self, items: &[S]) -> String {
        let mut items = items.iter().map(|s| s.as_ref().to_string());
        let first = items.next().unwrap_or_default();
        items.fold(first, |before, next| {
            let values = [("before", (&before).into()), ("next", (&next).into())];
            self.fill_html("list.comma", &values)
        })
    }

    /// As [`Words::fill`] with values that are HTML, as HTML.
    ///
    /// # Panics
    /// As [`Words::say`].
    pub fn fill_html(&self, key: &str, values: &[(&str, Value<'_>)]) -> String {
        let entry = self
            .entry(key)
            .unwrap_or_else(|| panic!("en.yaml has the entry {key}"));
        self.fill_entry(&entry.map(&|text| Form::Html.of(text)), values)
    }

    /// "a, b and c".
    pub fn list_and<S: AsRef<str>>(&self, items: &[S]) -> String {
        match items {
            [head @ .., last] if !head.is_empty() => self.fill(
                "list.and",
                &[
                    ("before", self.list(head).as_str().into()),
                    ("last", last.as_ref().into()),
                ],
            ),
            _ => self.list(items),
        }
    }

    /// Several joined by an entry with `{before}` and `{next}`.
    pub fn joined<S: AsRef<str>>(&self, items: &[S], key: &str) -> String {
        let mut items = items.iter();
        let first = items
            .next()
            .map_or_else(String::new, |s| s.as_ref().to_string());
        items.fold(first, |before, next| {
            let values = [
                ("before", Value::Text(&before)),
                ("next", Value::Text(next.as_ref())),
            ];
            self.fill(key, &values)
        })
    }

    /// A day such as "3 March 2026"; what is no day stays as it is.
    pub fn day(&self, iso: &str) -> String {
        let parts: Vec<i64> = iso.split('-').filter_map(|p| p.parse().ok()).collect();
        let [year, month @ 1..=12, day] = parts[..] else {
            return iso.to_string();
        };
        let month = self.say(&format!("month.m{month}"));
        // A year is never grouped.
        let year = self.0.numbers.show_year(year);
        self.fill(
            "date.day",
            &[
                ("day", Value::Whole(day)),
                ("month", month.into()),
                ("year", year.as_str().into()),
            ],
        )
    }
}

/// A language tag from the general to the particular: `he`, `he-IL`.
fn tags(language: &str) -> Vec<&str> {
    let general = language.split('-').next().unwrap_or(language);
    if general == language {
        vec![language]
    } else {
        vec![general, language]
    }
}

/// The key of a trade word: `part-inverted` is `position.part_inverted`.
pub fn key(section: &str, word: &str) -> String {
    let mut key = String::with_capacity(section.len() + 1 + word.len());
    key.push_str(section);
    key.push('.');
    key.extend(
        word.chars()
            .map(|c| if matches!(c, '-' | ' ') { '_' } else { c }),
    );
    key
}

/// Whether the program brings the language, or what it is a kind of.
pub fn is_shipped(language: &str) -> bool {
    tags(language)
        .iter()
        .any(|tag| SHIPPED.iter().any(|(l, _)| l == tag))
}

/// The shipped file of a language as it was read.
pub fn shipped(language: &str) -> Option<Own> {
    let (_, text) = SHIPPED.iter().find(|(l, _)| *l == language)?;
    let mut findings = Findings::default();
    let root = yaml::read(FileId::FOLDER, text, &mut findings).expect("a shipped file is YAML");
    Some(file::every(&root))
}
