//! The model: a curriculum whose every need leads to a movement that exists. Correct by construction; built by `reading`.

pub mod caution;
mod caution_text;
pub mod day;
pub mod exit;
pub mod family;
pub mod gear;
pub mod id;
pub mod keys;
pub mod ledger;
pub mod loosening;
pub mod manner;
pub mod movement;
pub mod naming;
pub mod need;
pub mod note;
pub mod page;
pub mod posture;
pub mod quantity;
pub mod schema;
pub mod school;
pub mod skill;
pub mod target;
pub mod words;

pub use day::Day;
pub use family::Family;
pub use id::Id;
pub use movement::{Movement, MovementParts};
pub use need::{Leaf, Need};
pub use note::Note;
pub use quantity::{BodyShare, BodyWeight, Days, Mass, Seconds, Weeks};
pub use school::School;
pub use skill::Skill;
pub use target::Target;

use crate::words::Words;
use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

macro_rules! index {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub struct $name(pub u32);

        impl $name {
            pub fn at(self) -> usize {
                self.0 as usize
            }
        }
    };
}

index! {
    /// Position of a movement in its curriculum; movements are sorted by id.
    MovementIx
}
index! {
    /// Position of a family; families are sorted by id.
    FamilyIx
}
index! {
    /// Position of a skill; skills are sorted by id.
    SkillIx
}
index! {
    /// Position of a note; notes are sorted by path.
    NoteIx
}

/// A record that an id names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Owner {
    Movement(MovementIx),
    Family(FamilyIx),
    Skill(SkillIx),
    Page(NoteIx),
}

/// All that a curriculum holds, as `reading` joins it. A copy shares what it does not change.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CurriculumParts {
    pub school: Arc<School>,
    pub cautions: Arc<caution::Book>,
    pub ledger: Arc<ledger::Ledger>,
    /// What the interface says in the school's language.
    pub words: Words,
    pub movements: Vec<Arc<Movement>>,
    pub families: Arc<Vec<Family>>,
    pub skills: Vec<Skill>,
    pub notes: Vec<Arc<Note>>,
    pub by_id: Arc<HashMap<String, Owner>>,
    /// Old ids and the record that bears them now.
    pub old_ids: Arc<BTreeMap<String, Owner>>,
}

/// A whole curriculum. Who has one asks it, and changes nothing in it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Curriculum {
    parts: CurriculumParts,
}

impl From<CurriculumParts> for Curriculum {
    fn from(parts: CurriculumParts) -> Curriculum {
        Curriculum { parts }
    }
}

impl Curriculum {
    /// What it is made of, for who reads one file of it anew.
    pub(crate) fn parts(&self) -> &CurriculumParts {
        &self.parts
    }

    pub fn school(&self) -> &School {
        &self.parts.school
    }

    /// The caution classes.
    pub fn cautions(&self) -> &caution::Book {
        &self.parts.cautions
    }

    pub fn ledger(&self) -> &ledger::Ledger {
        &self.parts.ledger
    }

    /// What the interface says in the school's language.
    pub fn words(&self) -> &Words {
        &self.parts.words
    }

    /// Every movement in order of id, held-back and faulty ones included.
    pub fn movements(&self) -> impl Iterator<Item = (MovementIx, &Movement)> {
        self.parts
            .movements
            .iter()
            .enumerate()
            .map(|(i, m)| (MovementIx(i as u32), m.as_ref()))
    }

    /// Every movement that may be shown.
    pub fn published(&self) -> impl Iterator<Item = (MovementIx, &Movement)> {
        self.movements().filter(|(_, m)| !m.held_back())
    }

    pub fn movement(&self, ix: MovementIx) -> &Movement {
        &self.parts.movements[ix.at()]
    }

    /// How many movements there are; indices run below it.
    pub fn len(&self) -> usize {
        self.parts.movements.len()
    }

    pub fn is_empty(&self) -> bool {
        self.parts.movements.is_empty()
    }

    pub fn families(&self) -> impl Iterator<Item = (FamilyIx, &Family)> {
        self.parts
            .families
            .iter()
            .enumerate()
            .map(|(i, f)| (FamilyIx(i as u32), f))
    }

    pub fn family(&self, ix: FamilyIx) -> &Family {
        &self.parts.families[ix.at()]
    }

    pub fn skills(&self) -> impl Iterator<Item = (SkillIx, &Skill)> {
        self.parts
            .skills
            .iter()
            .enumerate()
            .map(|(i, s)| (SkillIx(i as u32), s))
    }

    pub fn skill(&self, ix: SkillIx) -> &Skill {
        &self.parts.skills[ix.at()]
    }

    pub fn notes(&self) -> impl Iterator<Item = (NoteIx, &Note)> {
        self.parts
            .notes
            .iter()
            .enumerate()
            .map(|(i, n)| (NoteIx(i as u32), n.as_ref()))
    }

    pub fn note(&self, ix: NoteIx) -> &Note {
        &self.parts.notes[ix.at()]
    }

    /// The note that adds words to a page every site has.
    pub fn fixed_page_note(&self, page: &str) -> Option<NoteIx> {
        self.notes()
            .find(|(_, n)| n.owner == note::NoteOwner::FixedPage && n.id == page)
            .map(|(ix, _)| ix)
    }

    /// The record with this id.
    pub fn find(&self, id: &str) -> Option<Owner> {
        self.parts.by_id.get(id).copied()
    }

    pub fn find_movement(&self, id: &str) -> Option<MovementIx> {
        match self.find(id) {
            Some(Owner::Movement(ix)) => Some(ix),
            _ => None,
        }
    }

    /// Old ids with the records that bear them now, sorted.
    pub fn old_ids(&self) -> impl Iterator<Item = (&str, Owner)> {
        self.parts
            .old_ids
            .iter()
            .map(|(id, owner)| (id.as_str(), *owner))
    }

    /// The record that bears an old id now.
    pub fn bearer(&self, old: &str) -> Option<Owner> {
        self.parts.old_ids.get(old).copied()
    }

    /// The id of a record.
    pub fn id_of(&self, owner: Owner) -> &str {
        match owner {
            Owner::Movement(ix) => self.movement(ix).id().as_str(),
            Owner::Family(ix) => self.family(ix).id.as_str(),
            Owner::Skill(ix) => self.skill(ix).id.as_str(),
            Owner::Page(ix) => &self.note(ix).id,
        }
    }

    /// The name of a record as readers see it.
    pub fn name_of(&self, owner: Owner) -> &str {
        match owner {
            Owner::Movement(ix) => self.movement(ix).name(),
            Owner::Family(ix) => &self.family(ix).name,
            Owner::Skill(ix) => &self.skill(ix).name,
            Owner::Page(ix) => &self.note(ix).title,
        }
    }

    /// Whether a record may be shown.
    pub fn is_published(&self, owner: Owner) -> bool {
        match owner {
            Owner::Movement(ix) => !self.movement(ix).held_back(),
            Owner::Family(ix) => !self.family(ix).held_back,
            Owner::Skill(_) | Owner::Page(_) => true,
        }
    }

    /// All ids, for suggestions.
    pub fn ids(&self) -> impl Iterator<Item = &str> {
        self.parts.by_id.keys().map(String::as_str)
    }
}
