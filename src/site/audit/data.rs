//! The audit of files that are no pages: tables, search entries, open data, style sheets.

use super::Auditor;
use crate::site::feeds::{search, tables};
use crate::site::theme::guard::unstamped;
use serde::Deserialize;
use serde::de::IgnoredAny;
use std::borrow::Cow;
use std::ops::Deref;

impl Auditor {
    /// The tables from which the page's script names movements.
    pub(super) fn tables(&self, text: &str) -> Vec<String> {
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
    pub(super) fn search(&self, text: &str) -> Vec<String> {
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

    pub(super) fn data(&self, bytes: &[u8]) -> Vec<String> {
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
pub(super) fn style_sheet(css: &str) -> Vec<String> {
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
