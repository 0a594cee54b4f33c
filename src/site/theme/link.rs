//! Naming a movement: always a link with its caution mark, always through the theme's one part for it.

use crate::curriculum::{Curriculum, Movement, MovementIx};
use crate::site::pages::view::signal_word;
use crate::site::theme::{Theme, ThemeError};
use serde::Serialize;
use tera::Context;

/// The mark of a movement: its gravest signal word, and what it is about.
#[derive(Clone, Debug, Serialize)]
pub struct Mark {
    pub signal: &'static str,
    /// The signal word for readers.
    pub word: String,
    pub says: String,
    pub href: String,
}

/// The mark of a movement, if it has cautions.
pub fn mark(curriculum: &Curriculum, movement: &Movement) -> Option<Mark> {
    let words = &curriculum.words;
    let gravest = curriculum.cautions.class(*movement.cautions.first()?);
    let names: Vec<String> = movement
        .cautions
        .iter()
        .map(|c| curriculum.cautions.class(*c).name(words).to_lowercase())
        .collect();
    Some(Mark {
        signal: gravest.signal.word(),
        word: signal_word(words, gravest.signal.word()).to_string(),
        says: words.list(&names),
        href: format!("cautions.html#{}", gravest.id),
    })
}

/// The rendered name of every movement, and its mark.
pub struct Links {
    named: Vec<String>,
    marks: Vec<Option<Mark>>,
}

impl Links {
    pub fn new(curriculum: &Curriculum, theme: &Theme) -> Result<Links, ThemeError> {
        use rayon::prelude::*;
        let movements: Vec<&Movement> = curriculum.movements().map(|(_, m)| m).collect();
        let both: Result<Vec<(String, Option<Mark>)>, ThemeError> = movements
            .par_iter()
            .map(|m| {
                let mark = mark(curriculum, m);
                let named = with_mark(mark.as_ref(), theme, m, &escape(&m.name), "")?;
                Ok((named, mark))
            })
            .collect();
        let (named, marks) = both?.into_iter().unzip();
        Ok(Links { named, marks })
    }

    /// The movement's mark, if it has cautions.
    pub fn mark(&self, ix: MovementIx) -> Option<&Mark> {
        self.marks[ix.at()].as_ref()
    }

    /// The movement's name as a link with its mark, as HTML.
    pub fn of(&self, ix: MovementIx) -> &str {
        &self.named[ix.at()]
    }
}

/// A movement under a text of one's own (HTML), with `root` before the addresses.
pub fn named(
    curriculum: &Curriculum,
    theme: &Theme,
    movement: &Movement,
    text: &str,
    root: &str,
) -> Result<String, ThemeError> {
    let mark = mark(curriculum, movement);
    with_mark(mark.as_ref(), theme, movement, text, root)
}

fn with_mark(
    mark: Option<&Mark>,
    theme: &Theme,
    movement: &Movement,
    text: &str,
    root: &str,
) -> Result<String, ThemeError> {
    let mut context = Context::new();
    context.insert("id", movement.id.as_str());
    context.insert("text", text);
    context.insert("href", &format!("{root}{}.html", movement.id));
    context.insert("signal", mark.map_or("", |m| m.signal));
    context.insert("word", mark.map_or("", |m| m.word.as_str()));
    context.insert("says", mark.map_or("", |m| m.says.as_str()));
    context.insert(
        "cautions",
        &mark.map_or(String::new(), |m| format!("{root}{}", m.href)),
    );
    theme
        .tera()
        .render_component("ui.named", &context, None, true)
        .map_err(|e| ThemeError {
            message: format!("the name of the movement {} cannot be shown", movement.id),
            detail: e.to_string(),
        })
}

/// Text made safe for HTML, attributes included.
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    escape_into(&mut out, text);
    out
}

/// Adds a text made safe for HTML.
pub fn escape_into(out: &mut String, text: &str) {
    let mut rest = text;
    while let Some(at) = rest
        .bytes()
        .position(|b| matches!(b, b'&' | b'<' | b'>' | b'"' | b'\''))
    {
        out.push_str(&rest[..at]);
        out.push_str(match rest.as_bytes()[at] {
            b'&' => "&amp;",
            b'<' => "&lt;",
            b'>' => "&gt;",
            b'"' => "&quot;",
            _ => "&#39;",
        });
        rest = &rest[at + 1..];
    }
    out.push_str(rest);
}
