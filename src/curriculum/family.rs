//! A family: movements that differ only along named axes.

use super::id::Id;
use super::movement::Rung;
use super::words::EasierFirst;
use super::{MovementIx, NoteIx};
use crate::source::Span;

/// A family with its members.
#[derive(Clone, Debug, PartialEq)]
pub struct Family {
    pub id: Id,
    pub name: String,
    pub also: Vec<String>,
    pub was: Vec<Id>,
    pub summary: Option<String>,
    pub axes: Vec<Axis>,
    /// In the order written.
    pub members: Vec<MovementIx>,
    pub note: Option<NoteIx>,
    pub span: Span,
    pub held_back: bool,
}

/// One dimension of difficulty: its rungs from easier to harder, each with the values that share it.
#[derive(Clone, Debug, PartialEq)]
pub struct Axis {
    pub name: String,
    pub rungs: Vec<Vec<String>>,
    pub easier_first: EasierFirst,
}

impl Axis {
    /// The rung of a value.
    pub fn find(&self, value: &str) -> Option<Rung> {
        self.rungs.iter().enumerate().find_map(|(rung, values)| {
            let value = values.iter().position(|v| v == value)?;
            Some(Rung {
                rung: rung as u16,
                value: value as u16,
            })
        })
    }

    pub fn value(&self, rung: Rung) -> &str {
        &self.rungs[rung.rung as usize][rung.value as usize]
    }

    /// Every value, from easier to harder.
    pub fn values(&self) -> impl Iterator<Item = (Rung, &str)> {
        self.rungs.iter().enumerate().flat_map(|(r, values)| {
            values.iter().enumerate().map(move |(v, word)| {
                (
                    Rung {
                        rung: r as u16,
                        value: v as u16,
                    },
                    word.as_str(),
                )
            })
        })
    }
}

/// Whether two places have the same rung, or both none.
pub fn same_rung(a: Option<Rung>, b: Option<Rung>) -> bool {
    a.map(|r| r.rung) == b.map(|r| r.rung)
}

/// Which way along an axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    Easier,
    Harder,
}

/// The neighbours of a place on one axis: the members on the nearest rung that way which has any, all their other axes being
/// equal to its own (the same rung, or left out by both).
pub fn neighbours<'a>(
    axis: usize,
    way: Way,
    own: &[Option<Rung>],
    members: impl Iterator<Item = (MovementIx, &'a [Option<Rung>])>,
) -> Vec<MovementIx> {
    let Some(here) = own.get(axis).copied().flatten() else {
        return Vec::new();
    };
    let on_line: Vec<(u16, MovementIx)> = members
        .filter(|(_, place)| {
            place
                .iter()
                .zip(own)
                .enumerate()
                .all(|(i, (theirs, ours))| i == axis || same_rung(*theirs, *ours))
        })
        .filter_map(|(ix, place)| Some((place[axis]?.rung, ix)))
        .filter(|(rung, _)| {
            if way == Way::Easier {
                *rung < here.rung
            } else {
                *rung > here.rung
            }
        })
        .collect();
    let nearest = match way {
        Way::Easier => on_line.iter().map(|m| m.0).max(),
        Way::Harder => on_line.iter().map(|m| m.0).min(),
    };
    on_line
        .into_iter()
        .filter(|(rung, _)| Some(*rung) == nearest)
        .map(|(_, ix)| ix)
        .collect()
}

/// Whether the place `a` stands at or above `b` on every axis that both have, and above on one.
pub fn harder_everywhere(a: &[Option<Rung>], b: &[Option<Rung>]) -> bool {
    let shared: Vec<(u16, u16)> = a
        .iter()
        .zip(b)
        .filter_map(|(a, b)| Some((a.as_ref()?.rung, b.as_ref()?.rung)))
        .collect();
    shared.iter().all(|(a, b)| a >= b) && shared.iter().any(|(a, b)| a > b)
}
