//! What became other about a record between two publishes, in words; and the part of it that asks less of a body, which the
//! ledger keeps.

use super::caution::Signal;
use super::naming::with_signal;
use super::target::Target;
use super::words::Units;
use super::{Curriculum, Owner};
use crate::words::{Value, Words};

/// One thing that became other about one record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum What {
    /// Its page is there no more, and nothing else bears its id as an old one.
    Gone,
    New,
    /// The words of the way out; empty where there were or are none.
    Exit {
        from: String,
        to: String,
    },
    /// A caution class no longer holds.
    ClassGone(String),
    ClassNew(String),
    /// A needed movement and what was and is asked of it; empty where it is not asked.
    Need {
        movement: String,
        from: String,
        to: String,
    },
    /// All that was needed is still named, but less of it is enough.
    Choice,
    StopGone(String),
    StopNew(String),
    CountsGone(String),
    CountsNew(String),
    /// The standard of a movement, or the goal's target of a skill.
    Lowered {
        from: String,
        to: String,
    },
    Raised {
        from: String,
        to: String,
    },
    /// The signal word of a caution class.
    Signal {
        from: Signal,
        to: Signal,
    },
}

impl What {
    /// Its key below `changed` and, for what asks less, below `means` in the words files.
    pub fn word(&self) -> &'static str {
        match self {
            What::Gone => "gone",
            What::New => "new",
            What::Exit { to, .. } if to.is_empty() => "exit_gone",
            What::Exit { from, .. } if from.is_empty() => "exit_new",
            What::Exit { .. } => "exit",
            What::ClassGone(_) => "class_gone",
            What::ClassNew(_) => "class_new",
            What::Need { to, .. } if to.is_empty() => "need_gone",
            What::Need { from, .. } if from.is_empty() => "need_new",
            What::Need { .. } => "need",
            What::Choice => "choice",
            What::StopGone(_) => "stop_gone",
            What::StopNew(_) => "stop_new",
            What::CountsGone(_) => "counts_gone",
            What::CountsNew(_) => "counts_new",
            What::Lowered { .. } => "lowered",
            What::Raised { .. } => "raised",
            What::Signal { from, to } if to < from => "weaker",
            What::Signal { .. } => "stronger",
        }
    }

    /// In words for a reader.
    pub fn say(&self, curriculum: &Curriculum, words: &Words, units: Units) -> String {
        let key = format!("changed.{}", self.word());
        let target = |text: &str| {
            let read = Target::read(text).ok();
            read.map_or_else(|| text.to_string(), |t| t.say(units, words))
        };
        let fill = |values: &[(&str, &str)]| {
            let values: Vec<(&str, Value<'_>)> =
                values.iter().map(|(k, v)| (*k, (*v).into())).collect();
            words.fill(&key, &values)
        };
        match self {
            What::Gone | What::New | What::Choice => fill(&[]),
            What::Exit { from, to } => {
                let (from, to) = (plain(from), plain(to));
                match (from.is_empty(), to.is_empty()) {
                    (true, _) => fill(&[("now", &to)]),
                    (_, true) => fill(&[("before", &from)]),
                    _ => fill(&[("before", &from), ("now", &to)]),
                }
            }
            What::ClassGone(id) | What::ClassNew(id) => {
                let book = curriculum.cautions();
                let known = book.find(id).map(|ix| book.class(ix).name(words));
                fill(&[("class", known.unwrap_or(id))])
            }
            What::Need { movement, from, to } => {
                let named = named(curriculum, movement, words);
                let (from, to) = (target(from), target(to));
                match self.word() {
                    "need_gone" => fill(&[("movement", &named), ("before", &from)]),
                    "need_new" => fill(&[("movement", &named), ("now", &to)]),
                    _ => fill(&[("movement", &named), ("before", &from), ("now", &to)]),
                }
            }
            What::StopGone(line) | What::CountsGone(line) => fill(&[("before", line)]),
            What::StopNew(line) | What::CountsNew(line) => fill(&[("now", line)]),
            What::Lowered { from, to } | What::Raised { from, to } => {
                fill(&[("before", &target(from)), ("now", &target(to))])
            }
            What::Signal { from, to } => {
                let word = |s: &Signal| words.say(&format!("signal.{}", s.word()));
                fill(&[("before", word(from)), ("now", word(to))])
            }
        }
    }
}

/// A movement's name with its signal word; its id where it is gone.
fn named(curriculum: &Curriculum, id: &str, words: &Words) -> String {
    match curriculum.find(id) {
        Some(owner) => curriculum.named(owner, words),
        None => id.to_string(),
    }
}

/// A way out without its links.
fn plain(exit: &str) -> String {
    let piece = |p: super::exit::Piece<'_>| match p {
        super::exit::Piece::Text(text) => text.to_string(),
        super::exit::Piece::Link { words: "", id } => id.to_string(),
        super::exit::Piece::Link { words, .. } => words.to_string(),
    };
    super::exit::pieces(exit).into_iter().map(piece).collect()
}

/// What asks less of a body than the publish before: kept in the ledger beside the coach's note.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Loosening {
    /// The id of a record, or of a caution class.
    pub of: String,
    /// Its name as it was called last.
    pub name: String,
    /// The graver of the signal words that it bore and bears.
    pub signal: Option<Signal>,
    pub what: What,
}

impl Loosening {
    /// Its name with its signal word.
    pub fn named(&self, words: &Words) -> String {
        with_signal(&self.name, self.signal, words)
    }

    /// What it means for who owned it.
    pub fn means<'a>(&self, words: &'a Words) -> &'a str {
        words.say(&format!("means.{}", self.what.word()))
    }

    /// The movement that it is about, where it may be shown.
    pub fn movement(&self, curriculum: &Curriculum) -> Option<super::MovementIx> {
        let ix = curriculum.find_movement(&self.of)?;
        curriculum.is_published(Owner::Movement(ix)).then_some(ix)
    }
}
