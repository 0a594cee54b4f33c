//! Any HTML as the audit reads it: tags with their attributes, and texts, without a copy of each.

use html5gum::{Emitter, Error, State, Tokenizer};
use std::borrow::Cow;

/// Reads a page and tells `to` of its tags and texts, in order.
pub fn read(html: &[u8], to: &mut impl Handler) {
    let Ok(()) = Tokenizer::new_with_emitter(html, Reader::new(to)).finish();
}

/// Who is told what stands on a page.
pub trait Handler {
    fn start(&mut self, tag: &Tag<'_>);
    fn end(&mut self, name: &str);
    /// A text between two tags; never empty.
    fn text(&mut self, text: &str);
    /// Whether an attribute may say something; others need not be told.
    fn heeds(&self, _key: &str) -> bool {
        true
    }
}

/// A start tag, with every attribute and its value, entities read.
pub struct Tag<'t> {
    pub name: &'t str,
    pub self_closing: bool,
    pub attributes: &'t [(&'t str, Cow<'t, str>)],
}

/// Where the name and the value of an attribute stand in the reader's bytes.
#[derive(Clone, Copy)]
struct Attribute {
    name: usize,
    value: usize,
    end: usize,
}

/// The bytes as text. What is no UTF-8 is nobody's name and no address.
fn utf8(bytes: &[u8]) -> &str {
    std::str::from_utf8(bytes).unwrap_or("")
}

struct Reader<'h, H> {
    to: &'h mut H,
    text: Vec<u8>,
    name: Vec<u8>,
    is_start: bool,
    self_closing: bool,
    bytes: Vec<u8>,
    attributes: Vec<Attribute>,
    last_start: Vec<u8>,
}

impl<'h, H: Handler> Reader<'h, H> {
    fn new(to: &'h mut H) -> Self {
        Reader {
            to,
            text: Vec::new(),
            name: Vec::new(),
            is_start: false,
            self_closing: false,
            bytes: Vec::new(),
            attributes: Vec::new(),
            last_start: Vec::new(),
        }
    }

    fn flush(&mut self) {
        if !self.text.is_empty() {
            match std::str::from_utf8(&self.text) {
                Ok(text) => self.to.text(text),
                Err(_) => self.to.text(&String::from_utf8_lossy(&self.text)),
            }
            self.text.clear();
        }
    }

    fn begin(&mut self, is_start: bool) {
        self.flush();
        self.name.clear();
        self.bytes.clear();
        self.attributes.clear();
        self.is_start = is_start;
        self.self_closing = false;
    }
}

impl<H: Handler> Emitter for Reader<'_, H> {
    type Token = std::convert::Infallible;

    fn set_last_start_tag(&mut self, last_start_tag: Option<&[u8]>) {
        self.last_start.clear();
        self.last_start.extend(last_start_tag.unwrap_or_default());
    }

    fn emit_eof(&mut self) {
        self.flush();
    }

    fn emit_error(&mut self, _: Error) {}

    fn should_emit_errors(&mut self) -> bool {
        false
    }

    fn pop_token(&mut self) -> Option<Self::Token> {
        None
    }

    fn emit_string(&mut self, text: &[u8]) {
        self.text.extend_from_slice(text);
    }

    fn init_start_tag(&mut self) {
        self.begin(true);
    }

    fn init_end_tag(&mut self) {
        self.begin(false);
    }

    /// A comment does not part a text: a reader sees its two halves as one.
    fn init_comment(&mut self) {}

    fn emit_current_tag(&mut self) -> Option<State> {
        let name = utf8(&self.name);
        if !self.is_start {
            self.to.end(name);
            return None;
        }
        let part = |from: usize, to: usize| utf8(&self.bytes[from..to]);
        let attributes: Vec<(&str, Cow<'_, str>)> = self
            .attributes
            .iter()
            .map(|a| (part(a.name, a.value), Cow::Borrowed(part(a.value, a.end))))
            .collect();
        self.to.start(&Tag {
            name,
            self_closing: self.self_closing,
            attributes: &attributes,
        });
        // What a browser takes as text, whatever it looks like.
        let state = match name {
            "title" | "textarea" => Some(State::RcData),
            "script" => Some(State::ScriptData),
            "style" => Some(State::RawText),
            _ => None,
        };
        self.last_start.clear();
        self.last_start.extend_from_slice(&self.name);
        state
    }

    fn emit_current_comment(&mut self) {}

    fn emit_current_doctype(&mut self) {}

    fn set_self_closing(&mut self) {
        self.self_closing = true;
    }

    fn set_force_quirks(&mut self) {}

    fn push_tag_name(&mut self, name: &[u8]) {
        self.name.extend_from_slice(name);
    }

    fn push_comment(&mut self, _: &[u8]) {}

    fn push_doctype_name(&mut self, _: &[u8]) {}

    fn init_doctype(&mut self) {
        self.flush();
    }

    fn init_attribute(&mut self) {
        let at = self.bytes.len();
        self.attributes.push(Attribute {
            name: at,
            value: at,
            end: at,
        });
    }

    fn push_attribute_name(&mut self, name: &[u8]) {
        self.bytes.extend_from_slice(name);
        let at = self.bytes.len();
        if let Some(last) = self.attributes.last_mut() {
            (last.value, last.end) = (at, at);
        }
    }

    fn push_attribute_value(&mut self, value: &[u8]) {
        self.bytes.extend_from_slice(value);
        let at = self.bytes.len();
        if let Some(last) = self.attributes.last_mut() {
            last.end = at;
        }
    }

    fn set_doctype_public_identifier(&mut self, _: &[u8]) {}

    fn set_doctype_system_identifier(&mut self, _: &[u8]) {}

    fn push_doctype_public_identifier(&mut self, _: &[u8]) {}

    fn push_doctype_system_identifier(&mut self, _: &[u8]) {}

    fn current_is_appropriate_end_tag_token(&mut self) -> bool {
        !self.is_start && !self.last_start.is_empty() && self.last_start == self.name
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    #[derive(Default)]
    pub struct Told(pub Vec<String>);

    impl Handler for Told {
        fn start(&mut self, tag: &Tag<'_>) {
            let attributes: String = tag
                .attributes
                .iter()
                .map(|(k, v)| format!(" {}={v}", k.to_lowercase()))
                .collect();
            self.0.push(format!("<{}{attributes}>", tag.name));
        }

        fn end(&mut self, name: &str) {
            self.0.push(format!("</{name}>"));
        }

        fn text(&mut self, text: &str) {
            self.0.push(text.to_string());
        }
    }

    #[test]
    fn reads_as_a_browser_does() {
        let mut told = Told::default();
        let html = "<!doctype html><TITLE>a<b></title><a HREF='x&amp;y' hidden>t&eacute;<!-- <i> -->u</a><script>'<b>'</script><br/>z";
        read(html.as_bytes(), &mut told);
        assert_eq!(
            told.0,
            [
                "<title>",
                "a<b>",
                "</title>",
                "<a href=x&y hidden=>",
                "téu",
                "</a>",
                "<script>",
                "'<b>'",
                "</script>",
                "<br>",
                "z"
            ]
        );
    }
}
