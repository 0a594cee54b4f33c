//! A skill: a goal movement that a client works towards.

use super::NoteIx;
use super::id::Id;
use super::need::Leaf;
use crate::source::Span;

/// A skill and its goal.
#[derive(Clone, Debug, PartialEq)]
pub struct Skill {
    pub id: Id,
    pub name: String,
    pub also: Vec<String>,
    pub was: Vec<Id>,
    pub goal: Leaf,
    pub summary: Option<String>,
    pub note: Option<NoteIx>,
    pub span: Span,
}
