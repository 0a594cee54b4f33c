//! Coaching notes and pages: Markdown with links into the curriculum.

use super::MovementIx;
use super::target::Target;
use crate::source::FileId;
use crate::source::markdown::Outline;

/// Whose note it is.
#[derive(Clone, Debug, PartialEq)]
pub enum NoteOwner {
    Record(super::Owner),
    /// A page of its own.
    Page,
    /// More words for a page that every site has.
    FixedPage,
    Nobody,
}

/// A note.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// The file's name without `.md`: the id of its owner, or of the page.
    pub id: String,
    /// The first heading of a page; the owner's name otherwise.
    pub title: String,
    pub owner: NoteOwner,
    pub file: FileId,
    pub outline: Outline,
    /// The checked lines of its session blocks, block by block.
    pub sessions: Vec<Vec<SessionLine>>,
    pub held_back: bool,
}

/// A line of a training session: a movement, how much, how long to rest.
#[derive(Clone, Debug, PartialEq)]
pub struct SessionLine {
    pub movement: MovementIx,
    pub target: Target,
    pub rest: Option<String>,
}
