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

/// A line of a training session.
#[derive(Clone, Debug, PartialEq)]
pub struct SessionLine {
    /// `A1`, `A2`: lines of one letter are done in turn.
    pub pair: Option<String>,
    pub warm_up: bool,
    pub what: Done,
    pub rest: Option<String>,
    /// Reps, or seconds, left at the end of a set.
    pub in_reserve: Option<u32>,
}

/// What a line asks for.
#[derive(Clone, Debug, PartialEq)]
pub enum Done {
    Sets(MovementIx, Target),
    /// Practice for a time.
    For(MovementIx, Target),
    /// A line of a warm-up in the coach's words.
    Words(String),
}

impl SessionLine {
    /// The movement that it names.
    pub fn movement(&self) -> Option<MovementIx> {
        match self.what {
            Done::Sets(ix, _) | Done::For(ix, _) => Some(ix),
            Done::Words(_) => None,
        }
    }
}
