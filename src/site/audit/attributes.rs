//! What the audit reads of a tag: its attributes.

use super::tokens::Tag;
use super::walk::{About, Walk};

/// The attributes that the audit reads.
#[derive(Default)]
pub struct Attributes<'t> {
    pub caution: Option<&'t str>,
    pub about: Option<About>,
    pub href: Option<&'t str>,
    pub src: Option<&'t str>,
    pub rel: Option<&'t str>,
    pub name: Option<&'t str>,
    pub kind: Option<&'t str>,
    pub hidden: bool,
    pub http_equiv: Option<&'t str>,
    pub content: Option<&'t str>,
}

impl Walk<'_> {
    /// Reads a tag's attributes; those that the policy forbids and what comes from outside are faults.
    pub(super) fn attributes<'t>(&mut self, tag: &'t Tag<'_>) -> Attributes<'t> {
        let mut read = Attributes::default();
        for (key, value) in tag.attributes {
            let (key, value) = (*key, value.as_ref());
            match key {
                "data-caution" => read.caution = Some(value),
                // An element about two is taken for the one that bears cautions.
                "data-movement" | "data-skill" | "data-family"
                    if !matches!(read.about, Some(About::Cautioned(_))) =>
                {
                    read.about = Some(self.about(key, value));
                }
                "href" | "xlink:href" => {
                    if key == "href" || read.href.is_none() {
                        read.href = Some(value);
                    }
                    if tag.name == "link" {
                        self.loads(tag.name, key, value);
                    }
                }
                "src" => {
                    read.src = Some(value);
                    self.loads(tag.name, key, value);
                }
                "srcset" | "imagesrcset" | "poster" | "data" | "background" => {
                    self.loads(tag.name, key, value);
                }
                "rel" => read.rel = Some(value),
                "name" => read.name = Some(value),
                "type" => read.kind = Some(value),
                "hidden" => read.hidden = true,
                "aria-hidden" => read.hidden |= value == "true",
                "http-equiv" => read.http_equiv = Some(value),
                "content" => read.content = Some(value),
                "style" => self.forbidden(tag.name, key),
                _ if key.len() > 2 && key.starts_with("on") => self.forbidden(tag.name, key),
                _ => {}
            }
        }
        read
    }

    fn forbidden(&mut self, name: &str, key: &str) {
        self.faults.push(format!(
            "`{name}` has the attribute `{key}`, which the policy forbids"
        ));
    }

    /// Nothing from outside.
    fn loads(&mut self, name: &str, key: &str, value: &str) {
        let own = &self.auditor.own;
        let outside = match key {
            "srcset" | "imagesrcset" => value
                .split(',')
                .filter_map(|one| one.split_whitespace().next())
                .any(|one| own.is_outside(one)),
            _ => own.is_outside(value),
        };
        if outside {
            self.faults
                .push(format!("`{name}` loads something from outside: {value}"));
        }
    }
}
