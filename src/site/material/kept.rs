//! What several pages need, made by the rooms above when one of them asks first, and kept. Nothing but [`Texts`] depends on
//! the text of a note.

use super::Item;
use crate::curriculum::caution::ClassIx;
use crate::curriculum::{Curriculum, MovementIx};
use crate::site::names::Links;
use crate::site::names::piece::Made;
use crate::source::FileId;
use std::collections::{BTreeMap, HashMap};
use std::sync::{Arc, Mutex, OnceLock};

/// Each is empty until somebody makes it.
pub struct Kept {
    pub links: Arc<Links>,
    pub pieces: Vec<Pieces>,
    /// Each caution class in full, once for all movements that it tells the same.
    pub cautions: Vec<OnceLock<Made>>,
    /// Which of them, by what it tells.
    pub told: HashMap<(ClassIx, u64), usize>,
    /// With their version.
    pub tables: OnceLock<(Vec<u8>, String)>,
    pub search: OnceLock<Vec<u8>>,
    pub versions: OnceLock<tera::Value>,
    pub school: OnceLock<tera::Value>,
    pub frame: OnceLock<Frame>,
    pub test_order: OnceLock<Vec<MovementIx>>,
    pub ground_up: OnceLock<Vec<MovementIx>>,
    pub sizes: OnceLock<Sizes>,
    pub definitions: OnceLock<Vec<FileId>>,
    pub items: OnceLock<Vec<Item>>,
    pub positions: OnceLock<HashMap<String, usize>>,
    /// A hash of every file but the worker's.
    pub whole: OnceLock<String>,
}

impl Kept {
    pub fn new(curriculum: &Curriculum, links: Arc<Links>) -> Kept {
        let told = told(curriculum);
        Kept {
            links,
            pieces: curriculum.movements().map(|_| Pieces::default()).collect(),
            cautions: told.iter().map(|_| OnceLock::new()).collect(),
            told,
            tables: OnceLock::new(),
            search: OnceLock::new(),
            versions: OnceLock::new(),
            school: OnceLock::new(),
            frame: OnceLock::new(),
            test_order: OnceLock::new(),
            ground_up: OnceLock::new(),
            sizes: OnceLock::new(),
            definitions: OnceLock::new(),
            items: OnceLock::new(),
            positions: OnceLock::new(),
            whole: OnceLock::new(),
        }
    }
}

/// Every class with what of its movements' positions it tells apart, numbered.
fn told(curriculum: &Curriculum) -> HashMap<(ClassIx, u64), usize> {
    let mut all = HashMap::new();
    for (_, movement) in curriculum.movements() {
        for class in movement.cautions() {
            let told = curriculum.cautions().class(*class);
            let next = all.len();
            let key = (*class, told.told_apart(movement.positions()));
            all.entry(key).or_insert(next);
        }
    }
    all
}

/// A picture in a smaller width.
pub struct Smaller {
    pub width: u32,
    /// Below `pictures/`.
    pub name: String,
    pub bytes: Arc<Vec<u8>>,
}

/// The smaller widths of each photograph, by its path below `content/pictures`.
#[derive(Default)]
pub struct Sizes(pub BTreeMap<String, Vec<Smaller>>);

/// What is made of the texts of notes: anew for each state of a folder.
#[derive(Default)]
pub struct Texts(Vec<OfText>);

#[derive(Default)]
struct OfText {
    /// A movement in booklets, where it stands in several.
    article: OnceLock<Made>,
    /// Its note, between its page and the booklet.
    note: Mutex<Option<Box<str>>>,
}

impl Texts {
    pub fn new(curriculum: &Curriculum) -> Texts {
        Texts(curriculum.movements().map(|_| OfText::default()).collect())
    }

    pub fn article(&self, movement: usize) -> Option<&OnceLock<Made>> {
        self.0.get(movement).map(|of| &of.article)
    }

    pub fn note(&self, movement: usize) -> Option<&Mutex<Option<Box<str>>>> {
        self.0.get(movement).map(|of| &of.note)
    }
}

/// The pieces of one movement; empty where there is nothing to show.
#[derive(Default)]
pub struct Pieces {
    pub needs: OnceLock<Made>,
    pub opens: Scoped,
    pub test: Scoped,
    pub on_paper: Scoped,
    pub figure: OnceLock<Made>,
}

/// A piece that shows what a movement's number opens.
#[derive(Default)]
pub struct Scoped {
    pub whole: OnceLock<Made>,
    /// Within the first skill that it is part of; most are part of one.
    pub in_first_skill: OnceLock<Made>,
}

/// What every page has: what it loads, its head and its foot.
pub struct Frame {
    pub links: Made,
    /// By the page of the navigation on which it stands, "" for all other pages.
    pub tops: Vec<(&'static str, Made)>,
    pub foot: Made,
}
