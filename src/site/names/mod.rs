//! Naming a movement, a skill, a family: always a link with its caution mark, always through the theme's one part for it.

pub mod mention;
pub mod piece;

use crate::curriculum::caution::ClassIx;
use crate::curriculum::ledger::{Change, Entry};
use crate::curriculum::words::Units;
use crate::curriculum::{Curriculum, FamilyIx, MovementIx, Owner, SkillIx, Target};
use crate::site::theme::{Theme, ThemeError};
use crate::words::escape::escape;
use crate::words::{Words, key};
use mention::Mentions;
use piece::{Kind, Made, Piece};
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

/// The signal word of a caution for readers.
pub fn signal_word<'a>(words: &'a Words, signal: &str) -> &'a str {
    words.say(&key("signal", signal))
}

/// The mark of what bears these classes, gravest first; none where there are none.
fn mark(curriculum: &Curriculum, classes: &[ClassIx]) -> Option<Mark> {
    let words = curriculum.words();
    let gravest = curriculum.cautions().class(*classes.first()?);
    let names: Vec<String> = classes
        .iter()
        .map(|c| curriculum.cautions().class(*c).name(words).to_lowercase())
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
    named: Vec<Made>,
    marks: Vec<Option<Mark>>,
}

impl Names {
    fn of(
        curriculum: &Curriculum,
        theme: &Theme,
        kind: Kind,
        owners: impl Iterator<Item = Owner>,
    ) -> Result<Names, ThemeError> {
        use rayon::prelude::*;
        let owners: Vec<Owner> = owners.collect();
        let both: Result<Vec<(Made, Option<Mark>)>, ThemeError> = owners
            .par_iter()
            .enumerate()
            .map(|(at, owner)| {
                let mark = mark(curriculum, &curriculum.cautions_of(*owner));
                let text = escape(curriculum.name_of(*owner));
                let href = format!("{}.html", curriculum.id_of(*owner));
                let named = with_mark(curriculum, mark.as_ref(), theme, *owner, &text, &href)?;
                let piece = Piece { kind, at };
                Ok((Made::new(piece, named, theme.is_in_pieces()), mark))
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
            movements: Names::of(curriculum, theme, Kind::Movement, movements)?,
            skills: Names::of(curriculum, theme, Kind::Skill, skills)?,
            families: Names::of(curriculum, theme, Kind::Family, families)?,
            mentions: Mentions::new(curriculum),
        })
    }

    /// The movement's mark, if it has cautions.
    pub fn mark(&self, ix: MovementIx) -> Option<&Mark> {
        self.movements.marks[ix.at()].as_ref()
    }

    /// The movement's name as a link with its mark, as HTML.
    pub fn of(&self, ix: MovementIx) -> &str {
        self.movements.named[ix.at()].shown()
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

    /// The rendered name of a record; none for a page.
    pub fn of_owner(&self, owner: Owner) -> Option<&str> {
        match owner {
            Owner::Movement(ix) => Some(self.of(ix)),
            Owner::Skill(ix) => Some(self.skill(ix)),
            Owner::Family(ix) => Some(self.family(ix)),
            Owner::Page(_) => None,
        }
    }

    /// The name for which a tag stands; none for another kind of piece.
    pub fn piece(&self, piece: Piece) -> Option<&str> {
        let names = match piece.kind {
            Kind::Movement => &self.movements,
            Kind::Skill => &self.skills,
            Kind::Family => &self.families,
            _ => return None,
        };
        names.named.get(piece.at).map(Made::html)
    }

    /// What a running text may mention.
    pub fn mentions(&self) -> &Mentions {
        &self.mentions
    }

    /// The skill's name as a link with its mark, as HTML.
    pub fn skill(&self, ix: SkillIx) -> &str {
        self.skills.named[ix.at()].shown()
    }

    /// The family's name as a link with its mark, as HTML.
    pub fn family(&self, ix: FamilyIx) -> &str {
        self.families.named[ix.at()].shown()
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
    owner: Owner,
) -> Result<String, ThemeError> {
    let address = &curriculum.school().address;
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

/// Where a movement stands: "first rung", "3 rungs up".
pub fn stage_words(words: &Words, stage: u32) -> String {
    match stage {
        0 => words.say("stage.ground").into(),
        n => words.fill("stage.rungs_up", &[("n", n.into())]),
    }
}

/// The changes that no loosening of the same record says more fully.
pub fn other_changes(entry: &Entry) -> impl Iterator<Item = &(String, Change)> {
    let told = |(id, change): &&(String, Change)| {
        let of = |word: &str| {
            let mut all = entry.loosened.iter();
            all.any(|l| l.of == *id && l.what.word() == word)
        };
        match change {
            Change::Removed => of("gone"),
            Change::Lowered { .. } | Change::Standard { .. } => of("lowered"),
            _ => false,
        }
    };
    entry.changes.iter().filter(move |change| !told(change))
}

/// A change in words. A standard is said as the ledger keeps it, in metric units.
pub fn change_words(curriculum: &Curriculum, change: &Change) -> String {
    let words = curriculum.words();
    let from_to = |key: &str, from: &str, to: &str| {
        words.fill(key, &[("before", from.into()), ("now", to.into())])
    };
    let standard = |text: &str| {
        let read = Target::read(text).ok();
        read.map_or_else(|| text.to_string(), |t| t.say(Units::Metric, words))
    };
    let class = |id: &String| {
        let book = curriculum.cautions();
        let known = book.find(id).map(|ix| book.class(ix).name(words));
        known.map_or_else(|| id.replace('-', " "), str::to_lowercase)
    };
    let without = |ids: &[String], others: &[String]| {
        let only = ids.iter().filter(|id| !others.contains(id));
        words.list(&only.map(class).collect::<Vec<_>>())
    };
    match change {
        Change::Added => words.say("change.added").into(),
        Change::Removed => words.say("change.removed").into(),
        Change::Renamed(from) => words.fill("change.renamed", &[("before", from.into())]),
        Change::Raised { from, to } => from_to("change.raised", &standard(from), &standard(to)),
        Change::Lowered { from, to } => from_to("change.lowered", &standard(from), &standard(to)),
        Change::Standard { from, to } => from_to("change.standard", &standard(from), &standard(to)),
        // What stays is not said again.
        Change::Cautions { from, to } => {
            let (gone, new) = (without(from, to), without(to, from));
            match (gone.is_empty(), new.is_empty()) {
                (true, _) => words.fill("change.cautions_added", &[("what", (&new).into())]),
                (_, true) => words.fill("change.cautions_gone", &[("what", (&gone).into())]),
                _ => from_to("change.cautions", &gone, &new),
            }
        }
    }
}
