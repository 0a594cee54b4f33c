//! Naming a movement, a skill, a family: always a link with its caution mark, always through the theme's one part for it.

use crate::curriculum::caution::ClassIx;
use crate::curriculum::{Curriculum, FamilyIx, MovementIx, Owner, SkillIx};
use crate::site::pages::view::signal_word;
use crate::site::theme::mention::Mentions;
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

/// The mark of what bears these classes, gravest first; none where there are none.
fn mark(curriculum: &Curriculum, classes: &[ClassIx]) -> Option<Mark> {
    let words = &curriculum.words;
    let gravest = curriculum.cautions.class(*classes.first()?);
    let names: Vec<String> = classes
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

/// Rendered names with their marks.
#[derive(Default)]
struct Names {
    named: Vec<String>,
    marks: Vec<Option<Mark>>,
}

impl Names {
    fn of(
        curriculum: &Curriculum,
        theme: &Theme,
        owners: impl Iterator<Item = Owner>,
    ) -> Result<Names, ThemeError> {
        use rayon::prelude::*;
        let owners: Vec<Owner> = owners.collect();
        let both: Result<Vec<(String, Option<Mark>)>, ThemeError> = owners
            .par_iter()
            .map(|owner| {
                let mark = mark(curriculum, &curriculum.cautions_of(*owner));
                let text = escape(curriculum.name_of(*owner));
                let href = format!("{}.html", curriculum.id_of(*owner));
                let named = with_mark(curriculum, mark.as_ref(), theme, *owner, &text, &href)?;
                Ok((named, mark))
            })
            .collect();
        let (named, marks) = both?.into_iter().unzip();
        Ok(Names { named, marks })
    }
}

/// The rendered name of every movement, skill and family, and its mark.
pub struct Links {
    movements: Names,
    skills: Names,
    families: Names,
    mentions: Mentions,
}

impl Links {
    pub fn new(curriculum: &Curriculum, theme: &Theme) -> Result<Links, ThemeError> {
        let movements = curriculum.movements().map(|(ix, _)| Owner::Movement(ix));
        let skills = curriculum.skills().map(|(ix, _)| Owner::Skill(ix));
        let families = curriculum.families().map(|(ix, _)| Owner::Family(ix));
        Ok(Links {
            movements: Names::of(curriculum, theme, movements)?,
            skills: Names::of(curriculum, theme, skills)?,
            families: Names::of(curriculum, theme, families)?,
            mentions: Mentions::new(curriculum),
        })
    }

    /// The movement's mark, if it has cautions.
    pub fn mark(&self, ix: MovementIx) -> Option<&Mark> {
        self.movements.marks[ix.at()].as_ref()
    }

    /// The movement's name as a link with its mark, as HTML.
    pub fn of(&self, ix: MovementIx) -> &str {
        &self.movements.named[ix.at()]
    }

    /// The mark of a record, if it bears cautions.
    pub fn mark_of(&self, owner: Owner) -> Option<&Mark> {
        match owner {
            Owner::Movement(ix) => self.mark(ix),
            Owner::Skill(ix) => self.skills.marks[ix.at()].as_ref(),
            Owner::Family(ix) => self.families.marks[ix.at()].as_ref(),
            Owner::Page(_) => None,
        }
    }

    /// What a running text may mention.
    pub fn mentions(&self) -> &Mentions {
        &self.mentions
    }

    /// The skill's name as a link with its mark, as HTML.
    pub fn skill(&self, ix: SkillIx) -> &str {
        &self.skills.named[ix.at()]
    }

    /// The family's name as a link with its mark, as HTML.
    pub fn family(&self, ix: FamilyIx) -> &str {
        &self.families.named[ix.at()]
    }
}

/// A movement, skill or family under a text of one's own (HTML), leading to an address.
pub fn named(
    curriculum: &Curriculum,
    theme: &Theme,
    owner: Owner,
    text: &str,
    href: &str,
) -> Result<String, ThemeError> {
    let mark = mark(curriculum, &curriculum.cautions_of(owner));
    with_mark(curriculum, mark.as_ref(), theme, owner, text, href)
}

/// A movement's name with its mark for a page that stands outside the site: its links lead to the site's own address.
pub fn named_from_outside(
    curriculum: &Curriculum,
    theme: &Theme,
    ix: MovementIx,
) -> Result<String, ThemeError> {
    let owner = Owner::Movement(ix);
    let address = &curriculum.school.address;
    let mark = mark(curriculum, &curriculum.cautions_of(owner)).map(|mark| Mark {
        href: format!("{address}{}", mark.href),
        ..mark
    });
    let text = escape(curriculum.name_of(owner));
    let href = format!("{address}{}.html", curriculum.id_of(owner));
    with_mark(curriculum, mark.as_ref(), theme, owner, &text, &href)
}

fn with_mark(
    curriculum: &Curriculum,
    mark: Option<&Mark>,
    theme: &Theme,
    owner: Owner,
    text: &str,
    href: &str,
) -> Result<String, ThemeError> {
    let id = curriculum.id_of(owner);
    let mut context = Context::new();
    let kind = match owner {
        Owner::Movement(_) => "movement",
        Owner::Skill(_) => "skill",
        Owner::Family(_) => "family",
        Owner::Page(_) => "page",
    };
    context.insert("kind", kind);
    context.insert("id", id);
    context.insert("text", text);
    context.insert("href", href);
    context.insert("signal", mark.map_or("", |m| m.signal));
    context.insert("word", mark.map_or("", |m| m.word.as_str()));
    context.insert("says", mark.map_or("", |m| m.says.as_str()));
    context.insert("cautions", mark.map_or("", |m| m.href.as_str()));
    theme
        .tera()
        .render_component("ui.named", &context, None, true)
        .map_err(|e| ThemeError {
            message: format!("the name of the {kind} {id} cannot be shown"),
            detail: e.to_string(),
        })
}

/// Text made safe for HTML, attributes included.
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    escape_into(&mut out, text);
    out
}

/// Text made safe for XML 1.0, without the letters that it does not know (2.2): a reader refuses a whole feed for one of them.
pub fn escape_xml(text: &str) -> String {
    let known = |c: &char| matches!(c, '\t' | '\n' | '\r' | ' '..='\u{d7ff}' | '\u{e000}'..='\u{fffd}' | '\u{10000}'..);
    escape(&text.chars().filter(known).collect::<String>())
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
