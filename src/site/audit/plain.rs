//! The plain HTML that the shipped theme writes, read nine times as fast as any HTML: small letters, double quotes, few entities,
//! no comments. Whatever else a page holds, it is left to [`super::tokens`].

use super::tokens::{Handler, Tag};
use memchr::{memchr, memchr2, memchr3, memmem};
use std::borrow::Cow;

/// Reads a page and tells `to` of its tags and texts, in order. `None` where the page is not plain enough: what was told then
/// counts for nothing.
pub fn read(html: &[u8], to: &mut impl Handler) -> Option<()> {
    let html = std::str::from_utf8(html).ok()?;
    if memchr3(b'\r', b'\0', b'\x0c', html.as_bytes()).is_some() {
        return None;
    }
    let rest = html
        .strip_prefix("<!doctype html>")
        .or_else(|| html.strip_prefix("<!DOCTYPE html>"))
        .unwrap_or(html);
    let mut page = Page {
        rest,
        attributes: Vec::new(),
    };
    while !page.rest.is_empty() {
        page.step(to)?;
    }
    Some(())
}

struct Page<'p> {
    rest: &'p str,
    /// Those of the tag at hand.
    attributes: Vec<(&'p str, Cow<'p, str>)>,
}

impl<'p> Page<'p> {
    fn step(&mut self, to: &mut impl Handler) -> Option<()> {
        let bytes = self.rest.as_bytes();
        let mut open = memchr2(b'<', b'&', bytes).unwrap_or(bytes.len());
        if bytes.get(open) == Some(&b'&') {
            open += memchr(b'<', &bytes[open..]).unwrap_or(bytes.len() - open);
            to.text(&decoded(self.take(open))?);
        } else if open > 0 {
            to.text(self.take(open));
        }
        match self.rest.as_bytes() {
            [] => return Some(()),
            [_, b'/', ..] => {
                self.take(2);
                let name = self.name()?;
                self.expect('>')?;
                to.end(name);
                return Some(());
            }
            _ => {}
        }
        self.take(1);
        let name = self.name()?;
        let self_closing = self.attributes(to)?;
        to.start(&Tag {
            name,
            self_closing,
            attributes: &self.attributes,
        });
        match name {
            "script" | "style" => self.raw(name, to, |text| Some(Cow::Borrowed(text))),
            "title" | "textarea" => self.raw(name, to, decoded),
            _ => Some(()),
        }
    }

    /// What a browser takes as text, up to the end tag.
    fn raw(
        &mut self,
        name: &str,
        to: &mut impl Handler,
        read: impl Fn(&'p str) -> Option<Cow<'p, str>>,
    ) -> Option<()> {
        let end = memmem::find(self.rest.as_bytes(), b"</")?;
        if end > 0 {
            to.text(&read(self.take(end))?);
        }
        self.take(2);
        self.rest.starts_with(name).then_some(())?;
        self.take(name.len());
        self.expect('>')?;
        to.end(name);
        Some(())
    }

    /// The bytes up to `count`, which lie behind then.
    fn take(&mut self, count: usize) -> &'p str {
        let (taken, rest) = self.rest.split_at(count);
        self.rest = rest;
        taken
    }

    fn expect(&mut self, what: char) -> Option<()> {
        self.rest = self.rest.strip_prefix(what)?;
        Some(())
    }

    /// A name of a tag or an attribute.
    fn name(&mut self) -> Option<&'p str> {
        let bytes = self.rest.as_bytes();
        let end = bytes.iter().position(|b| !IN_NAME[usize::from(*b)])?;
        bytes[0].is_ascii_lowercase().then(|| self.take(end))
    }

    /// The attributes up to the end of the tag that the handler heeds, and whether the tag closes itself.
    fn attributes(&mut self, to: &impl Handler) -> Option<bool> {
        self.attributes.clear();
        loop {
            let bytes = self.rest.as_bytes();
            let spaces = bytes.iter().position(|b| !is_space(*b))?;
            match &bytes[spaces..] {
                [b'>', ..] => {
                    self.take(spaces + 1);
                    return Some(false);
                }
                [b'/', b'>', ..] => {
                    self.take(spaces + 2);
                    return Some(true);
                }
                _ if spaces == 0 => return None,
                _ => self.take(spaces),
            };
            let name = match self.rest.starts_with("viewBox=") {
                true => self.take("viewBox".len()),
                false => self.name()?,
            };
            let heeded = to.heeds(name);
            let value = match self.rest.as_bytes() {
                [b'=', b'"', quoted @ ..] => {
                    let end = memchr(b'"', quoted)?;
                    self.take(2);
                    let text = self.take(end);
                    self.take(1);
                    match heeded {
                        true => decoded(text)?,
                        false => continue,
                    }
                }
                [b'>' | b'/', ..] => Cow::Borrowed(""),
                [b, ..] if is_space(*b) => Cow::Borrowed(""),
                _ => return None,
            };
            if heeded {
                self.attributes.push((name, value));
            }
        }
    }
}

/// The bytes of names of tags and attributes.
const IN_NAME: [bool; 256] = {
    let mut table = [false; 256];
    let mut byte = 0;
    while byte < 256 {
        let b = byte as u8;
        table[byte] = b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-' || b == b':';
        byte += 1;
    }
    table
};

fn is_space(byte: u8) -> bool {
    matches!(byte, b' ' | b'\n' | b'\t')
}

/// The text with its entities read; `None` for one that is not known here.
fn decoded(text: &str) -> Option<Cow<'_, str>> {
    if memchr(b'&', text.as_bytes()).is_none() {
        return Some(Cow::Borrowed(text));
    }
    let mut out = String::with_capacity(text.len());
    let mut pieces = text.split('&');
    out.push_str(pieces.next().unwrap_or(""));
    for piece in pieces {
        let (entity, rest) = piece.split_once(';')?;
        out.push(match entity {
            "amp" => '&',
            "lt" => '<',
            "gt" => '>',
            "quot" | "#34" | "#x22" => '"',
            "#39" | "#x27" => '\'',
            "#x2F" => '/',
            _ => return None,
        });
        out.push_str(rest);
    }
    Some(Cow::Owned(out))
}

#[cfg(test)]
mod tests {
    use crate::site::audit::tokens::{self, tests::Told};
    use proptest::prelude::*;

    fn told(html: &str) -> Option<Vec<String>> {
        let mut told = Told::default();
        super::read(html.as_bytes(), &mut told)?;
        Some(told.0)
    }

    fn told_by_tokens(html: &str) -> Vec<String> {
        let mut told = Told::default();
        tokens::read(html.as_bytes(), &mut told);
        told.0
    }

    #[test]
    fn plain_pages_are_read_and_others_are_left() {
        let plain = "<!doctype html><title>a &amp; b</title><a href=\"x&amp;y\" hidden>t&#39;s</a>\n<svg viewBox=\"0 0 1 1\"><path d=\"M0 0\"/></svg><script src=\"a.js\"></script>end";
        assert_eq!(told(plain), Some(told_by_tokens(plain)));
        for odd in [
            "<A href=\"x\">",
            "<a href='x'>",
            "<a href=x>",
            "a<!-- b -->c",
            "&nbsp;",
            "a < b",
            "<a href=\"x\"",
            "<script>a</b></script>",
            "a\r\nb",
        ] {
            assert_eq!(told(odd), None, "{odd}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(3000) })]

        /// What is read here at all is read as by any reader of HTML.
        #[test]
        fn read_alike(pieces in prop::collection::vec(prop::sample::select(vec![
            "<a", "<b>", "</a>", "</b>", ">", "/>", " ", "\n", "href=\"x\"", " hidden", " id=\"1\"", " =", "\"", "'", "x", "&amp;", "&", ";", "&#39;",
            "<script>", "</script>", "<title>", "</title>", "<textarea>", "</textarea>", "<br/>", "<!", "--", "<p class=\"a b\">", "é", "a/b", "<svg viewBox=\"0\">",
            "<style>", "</style>", "</", "<", "=\"y\"", "</script >", "<x-y:z>",
        ]), 0..14)) {
            let html = pieces.concat();
            if let Some(ours) = told(&html) {
                prop_assert_eq!(ours, told_by_tokens(&html), "{}", html);
            }
        }
    }
}
