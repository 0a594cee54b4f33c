//! Sessions and definitions as HTML with class names, by two small grammars of our own.
//!
//! Definitions repeat many of their keys and lines, and most lines mean the same wherever they stand: those are read once a
//! thread.

use crate::words::escape::escape_into;
use foldhash::fast::FixedState;
use memchr::{memchr, memchr3};
use std::cell::RefCell;
use std::collections::HashMap;
use std::sync::LazyLock;
use syntect::dumps::from_uncompressed_data;
use syntect::html::{ClassStyle, line_tokens_to_classed_spans};
use syntect::parsing::{ParseState, ScopeStack, SyntaxSet};
use syntect::util::LinesWithEndings;

static SYNTAXES: LazyLock<SyntaxSet> = LazyLock::new(|| {
    from_uncompressed_data(include_bytes!(concat!(env!("OUT_DIR"), "/grammars.bin")))
        .expect("the grammars were compiled with the program")
});

static SESSION: LazyLock<Option<Grammar>> = LazyLock::new(|| Grammar::new("Session"));
static DEFINITION: LazyLock<Option<Grammar>> = LazyLock::new(|| Grammar::new("Definition"));

const STYLE: ClassStyle = ClassStyle::SpacedPrefixed { prefix: "hl-" };
/// Lines that a thread remembers.
const REMEMBERED: usize = 4096;

/// Lines or keys with their HTML.
type Lines = HashMap<String, String, FixedState>;

/// A grammar as it stands between two lines that have nothing to do with each other.
struct Grammar {
    /// Each line stands for itself, and the key at its beginning has nothing to do with what follows.
    has_keys: bool,
    between: At,
    /// What opens the text.
    opening: String,
}

/// Where reading stands.
#[derive(Clone, PartialEq)]
struct At {
    state: ParseState,
    stack: ScopeStack,
    /// Elements that are open.
    open: isize,
}

impl At {
    /// The line as HTML, and reading after it.
    fn line(&mut self, line: &str) -> Option<String> {
        let ops = self.state.parse_line(line, &SYNTAXES).ok()?;
        let (html, opened) =
            line_tokens_to_classed_spans(line, &ops, STYLE, &mut self.stack).ok()?;
        self.open += opened;
        Some(html)
    }
}

impl Grammar {
    fn new(name: &str) -> Option<Grammar> {
        let mut between = At {
            state: ParseState::new(SYNTAXES.find_syntax_by_name(name)?),
            stack: ScopeStack::new(),
            open: 0,
        };
        let opening = between.line("\n")?.trim_end().to_string();
        Some(Grammar {
            has_keys: name == "Definition",
            between,
            opening,
        })
    }

    fn html(&self, text: &str, known: &mut Lines) -> Option<String> {
        let mut out = String::with_capacity(text.len() * 5);
        out.push_str(&self.opening);
        let mut at: Option<At> = None;
        for line in LinesWithEndings::from(text) {
            if at.is_none()
                && self.has_keys
                && let Some((key, rest)) = key_and_rest(line)
            {
                match known.get(key) {
                    Some(html) => out.push_str(html),
                    None => {
                        let alone = self.between.clone().line(&format!("{key}\n"))?;
                        let html = alone.trim_end_matches('\n');
                        out.push_str(html);
                        known.insert(key.to_string(), html.to_string());
                    }
                }
                escape_into(&mut out, rest);
                continue;
            }
            if at.is_none()
                && let Some(html) = known.get(line)
            {
                out.push_str(html);
                continue;
            }
            let stood_between = at.is_none();
            let mut now = at.unwrap_or_else(|| self.between.clone());
            let html = now.line(line)?;
            out.push_str(&html);
            at = (now != self.between).then_some(now);
            if stood_between && at.is_none() && known.len() < REMEMBERED {
                known.insert(line.to_string(), html);
            }
        }
        let open = at.map_or(self.between.open, |a| a.open);
        (0..open).for_each(|_| out.push_str("</span>"));
        Some(out)
    }
}

/// A line of a definition as its key with the colon, and what follows, where that is nothing but text; a line without a colon
/// is all text. Nothing where a comment, a quote or a second colon may mean more.
fn key_and_rest(line: &str) -> Option<(&str, &str)> {
    if memchr3(b'#', b'"', b'\'', line.as_bytes()).is_some() {
        return None;
    }
    let Some((key, rest)) = line.split_once(':') else {
        return Some(("", line));
    };
    let ends = rest.starts_with([' ', '\n']) && memchr(b':', rest.as_bytes()).is_none();
    ends.then(|| line.split_at(key.len() + 1))
}

thread_local! {
    static KNOWN: RefCell<[Lines; 2]> = RefCell::default();
}

/// The text of a session as HTML spans whose classes begin with `hl-`.
pub fn session(text: &str) -> String {
    html(&SESSION, 0, text)
}

/// The text of a definition as HTML spans whose classes begin with `hl-`.
pub fn definition(text: &str) -> String {
    html(&DEFINITION, 1, text)
}

fn html(grammar: &LazyLock<Option<Grammar>>, which: usize, text: &str) -> String {
    if text.is_empty() {
        return String::new();
    }
    let made = KNOWN.with_borrow_mut(|known| {
        let grammar = grammar.as_ref();
        grammar.and_then(|g| g.html(text, &mut known[which]))
    });
    made.unwrap_or_else(|| crate::words::escape::escape(text))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use syntect::html::ClassedHTMLGenerator;

    /// The library's own way, without memory.
    fn plainly(name: &str, text: &str) -> String {
        let syntax = SYNTAXES.find_syntax_by_name(name).expect("a grammar");
        let mut generator = ClassedHTMLGenerator::new_with_class_style(syntax, &SYNTAXES, STYLE);
        for line in LinesWithEndings::from(text) {
            generator
                .parse_html_for_line_which_includes_newline(line)
                .expect("a line");
        }
        generator.finalize()
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(2000) })]

        #[test]
        fn keys_apart_change_nothing(pieces in prop::collection::vec(prop::sample::select(vec![
            "a", "any of", "at least 2 of", "at least x of", ":", ": ", "- ", "  ", "\n", "{", "}", ",", "[", "]", "#", "\"", "'", "x-y_9", "é", "<", "&", "5x5", "\t", "|",
        ]), 0..24)) {
            let text = pieces.concat();
            prop_assert_eq!(definition(&text), plainly("Definition", &text), "{}", text);
        }
    }

    #[test]
    fn memory_changes_nothing() {
        let odd = "a: |\n  text: # no\n\n# c\nb: \"x\n  y\"\n- [1, {c: d}]\ne: 'f'";
        let usual =
            "movement: hang\nname: Hang # why\nneeds:\n  - pull: 5x5\n  - any of:\n      - a\n";
        for text in [usual, odd, usual, "", "x", "# only\n"] {
            for _ in 0..2 {
                assert_eq!(definition(text), plainly("Definition", text));
                assert_eq!(session(text), plainly("Session", text));
            }
        }
    }
}
