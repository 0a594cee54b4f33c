//! Naming a record in text: whatever bears cautions is never named without its signal word. A skill is as guarded as its goal,
//! a family as its members.

use super::caution::{ClassIx, Signal};
use super::{Curriculum, Owner};
use crate::words::Words;
use std::borrow::Cow;

impl Curriculum {
    /// The caution classes that a record bears, gravest first.
    pub fn cautions_of(&self, owner: Owner) -> Cow<'_, [ClassIx]> {
        match owner {
            Owner::Movement(ix) => Cow::Borrowed(self.movement(ix).cautions()),
            Owner::Skill(ix) => self.cautions_of(Owner::Movement(self.skill(ix).goal.movement)),
            Owner::Family(ix) => {
                let members = self.family(ix).members.iter().map(|m| self.movement(*m));
                let mut all: Vec<ClassIx> = members
                    .filter(|m| !m.held_back())
                    .flat_map(|m| m.cautions().iter().copied())
                    .collect();
                all.sort();
                all.dedup();
                Cow::Owned(self.cautions().sorted(all))
            }
            Owner::Page(_) => Cow::Borrowed(&[]),
        }
    }

    /// The gravest signal that a record bears.
    pub fn signal_of(&self, owner: Owner) -> Option<Signal> {
        let first = self.cautions_of(owner).first().copied();
        first.map(|class| self.cautions().class(class).signal)
    }

    /// A record's name with its signal word, for texts: a title, a line of the terminal, a feed.
    pub fn named(&self, owner: Owner, words: &Words) -> String {
        with_signal(self.name_of(owner), self.signal_of(owner), words)
    }
}

/// A name with a signal word behind it.
pub fn with_signal(name: &str, signal: Option<Signal>, words: &Words) -> String {
    match signal {
        None => name.to_string(),
        Some(signal) => {
            let word = words.say(&format!("signal.{}", signal.word()));
            let values = [("name", name.into()), ("signal", word.into())];
            words.fill("part.name_with_signal", &values)
        }
    }
}
