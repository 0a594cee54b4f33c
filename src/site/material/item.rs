//! What the files of a site are.

use crate::curriculum::page::Page;
use crate::curriculum::{FamilyIx, MovementIx, NoteIx, Owner, SkillIx};
use crate::source::FileId;

/// Rows on one page of a long table.
pub const ROWS_A_PAGE: usize = 500;

/// A file of the site: its path with `/` between the parts, and its content.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct File {
    pub path: String,
    pub bytes: Vec<u8>,
}

/// What one file of the site shows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Item {
    /// A page that every site has, by its name.
    Fixed(&'static Page),
    /// Part of a long table, counted from 0.
    SelfTest(usize),
    Movements(usize),
    Movement(MovementIx),
    Family(FamilyIx),
    Skill(SkillIx),
    /// The self-test of one skill: guided, in full, and on paper.
    SkillTest(SkillIx),
    /// The booklet of one skill, or of everything.
    Booklet(Option<SkillIx>),
    Page(NoteIx),
    /// An old id and the record that bears it now.
    Redirect(String, Owner),
    NotFound,
    Data,
    DataSchema,
    /// A file of `content/movements` as the coach wrote it.
    Definition(FileId),
    Tables,
    Search,
    Sitemap,
    Robots,
    Feed,
    Manifest,
    /// The script that keeps the site for when there is no network.
    Worker,
    /// What the program itself puts on every page, by its path.
    Guard(&'static str),
    /// A file of the theme, by its path there.
    Asset(String),
    /// A picture of the curriculum, by its path below `content/pictures`.
    Picture(String),
    /// A photograph in a smaller width, by its path below `pictures`.
    Smaller(String),
    /// The small figure of a movement.
    Figure(MovementIx),
    /// A drawing that plays.
    Film(MovementIx),
    /// The picture of a link to a skill, or to anything else.
    Card(Option<SkillIx>),
    /// An icon of the installed site: its size, and whether it may be cut to any shape.
    Icon(u32, bool),
}
