//! What a page says as a whole: its policy, what it loads before anything else, and where it leads by itself.

use super::attributes::Attributes;
use super::{Auditor, POLICY};

/// What was met of it so far.
#[derive(Default)]
pub struct Whole<'a> {
    policy: bool,
    referrer: bool,
    /// The guard's sheet and script were met, before anything else was loaded.
    guarded: [bool; 2],
    /// Where the page leads by itself, if it is one of those that do.
    pub leads_to: Option<&'a str>,
}

/// A tag that was met.
pub struct Met<'t> {
    pub name: &'t str,
    pub read: &'t Attributes<'t>,
    /// It does not stand in anything hidden.
    pub shown: bool,
}

impl Whole<'_> {
    /// Nothing can be loaded before the guard from here on.
    pub fn behind_the_guard(&mut self) {
        self.guarded = [true; 2];
    }

    pub fn is_behind_the_guard(&self) -> bool {
        self.guarded == [true; 2]
    }

    /// Hears a tag.
    pub fn hears(&mut self, tag: &Met<'_>, auditor: &Auditor, faults: &mut Vec<String>) {
        self.guard(tag, auditor, faults);
        let read = tag.read;
        match tag.name {
            "meta" => self.meta(read, tag.shown, faults),
            "script" if read.src.is_none() && read.kind != Some("application/ld+json") => {
                faults.push("a script stands in the page itself".into());
            }
            "style" => faults.push("a style stands in the page itself".into()),
            _ => {}
        }
    }

    fn meta(&mut self, read: &Attributes<'_>, shown: bool, faults: &mut Vec<String>) {
        let is = |what: &str| {
            let header = read.http_equiv.map(str::trim);
            header.is_some_and(|h| h.eq_ignore_ascii_case(what))
        };
        // A browser heeds a policy whose header's name stands alone.
        let bare = read.http_equiv.is_some_and(|h| h == h.trim());
        self.policy |=
            shown && bare && is("content-security-policy") && read.content == Some(POLICY);
        self.referrer |= read.name == Some("referrer") && read.content == Some("no-referrer");
        if is("refresh") {
            self.refresh(read.content, faults);
        }
    }

    /// The guard's sheet, then its script, stand before anything else that is loaded.
    fn guard(&mut self, tag: &Met<'_>, auditor: &Auditor, faults: &mut Vec<String>) {
        let Met { name, read, shown } = *tag;
        if self.is_behind_the_guard() {
            return;
        }
        let [sheet, script] = &auditor.guard;
        let is = |address: Option<&str>, of: &str| {
            address.is_some_and(|a| a.strip_prefix(&*auditor.address).unwrap_or(a) == of)
        };
        match name {
            "link" if read.rel == Some("stylesheet") && is(read.href, sheet) && shown => {
                self.guarded[0] = true;
            }
            "script" if self.guarded[0] && is(read.src, script) && shown => {
                self.guarded[1] = true;
            }
            "link" | "script" | "style" => {
                faults.push(format!(
                    "`{name}` is loaded before the guard's sheet and script"
                ));
                self.behind_the_guard();
            }
            _ => {}
        }
    }

    /// A page leads elsewhere by itself only from an old id to the new one.
    fn refresh(&self, content: Option<&str>, faults: &mut Vec<String>) {
        let to = content
            .and_then(|c| c.split_once("url="))
            .map(|(_, to)| to.trim());
        if to.is_none() || to != self.leads_to {
            faults.push("the page leads elsewhere by itself".into());
        }
    }

    /// What the page never said.
    pub fn finish(&self, faults: &mut Vec<String>) {
        let lacks = [
            (
                self.policy,
                "the page does not carry the content security policy",
            ),
            (
                self.referrer,
                "the page may tell other sites where its readers come from",
            ),
            (
                self.is_behind_the_guard(),
                "the guard's sheet and script are not the first that the page loads",
            ),
        ];
        let lacks = lacks.iter().filter(|(said, _)| !said);
        faults.extend(lacks.map(|(_, why)| why.to_string()));
    }
}
