//! Families: easier and harder neighbours, and the grid over two axes.

use crate::curriculum::family::{Way, neighbours};
use crate::curriculum::movement::Rung;
use crate::curriculum::{Curriculum, FamilyIx, MovementIx};

/// A member one rung away on one axis.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Neighbour {
    pub axis: usize,
    pub movement: MovementIx,
}

/// The easier or harder neighbours of a movement on every axis of its family.
pub fn neighbours_of(curriculum: &Curriculum, of: MovementIx, way: Way) -> Vec<Neighbour> {
    let Some(place) = curriculum.movement(of).place() else {
        return Vec::new();
    };
    let family = curriculum.family(place.family);
    let mut out = Vec::new();
    for axis in 0..family.axes.len() {
        let found = neighbours(axis, way, &place.rungs, members(curriculum, place.family));
        out.extend(
            found
                .into_iter()
                .map(|movement| Neighbour { axis, movement }),
        );
    }
    out
}

/// The published members of a family with their places.
pub fn members(
    curriculum: &Curriculum,
    family: FamilyIx,
) -> impl Iterator<Item = (MovementIx, &[Option<Rung>])> {
    curriculum.family(family).members.iter().filter_map(|ix| {
        let movement = curriculum.movement(*ix);
        (!movement.held_back()).then_some((*ix, movement.place()?.rungs.as_slice()))
    })
}

/// A family over its first two axes; one slice for each combination of values on the others.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Grid {
    pub slices: Vec<Slice>,
    /// Members that leave out one of the first two axes: they have no cell.
    pub aside: Vec<MovementIx>,
}

/// One table: rows are the values of the first axis, columns those of the second (one column where there is one axis).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Slice {
    /// The values on the further axes, as words.
    pub on: Vec<String>,
    pub rows: Vec<(String, Vec<GridCell>)>,
}

/// The members in one cell: one, or none.
pub type GridCell = Option<MovementIx>;

/// The grid of a family.
pub fn grid(curriculum: &Curriculum, family_ix: FamilyIx) -> Grid {
    let has_cell = |rungs: &[Option<Rung>]| rungs.iter().take(2).all(Option::is_some);
    let mut keys: Vec<Vec<Option<Rung>>> = members(curriculum, family_ix)
        .filter(|(_, r)| has_cell(r))
        .map(|(_, r)| r.get(2..).unwrap_or(&[]).to_vec())
        .collect();
    keys.sort();
    keys.dedup();
    let slices = keys
        .into_iter()
        .map(|key| slice(curriculum, family_ix, &key))
        .collect();
    let aside = members(curriculum, family_ix)
        .filter(|(_, r)| !has_cell(r))
        .map(|(ix, _)| ix)
        .collect();
    Grid { slices, aside }
}

fn slice(curriculum: &Curriculum, family_ix: FamilyIx, key: &[Option<Rung>]) -> Slice {
    let family = curriculum.family(family_ix);
    let cell = |row: Rung, column: Option<Rung>| {
        members(curriculum, family_ix)
            .find(|(_, r)| {
                r.first().copied().flatten() == Some(row)
                    && r.get(1).copied().flatten() == column
                    && r.get(2..).unwrap_or(&[]) == key
            })
            .map(|(ix, _)| ix)
    };
    let columns: Vec<Option<Rung>> = match family.axes.get(1) {
        Some(axis) => axis.values().map(|(r, _)| Some(r)).collect(),
        None => vec![None],
    };
    let rows = family.axes.first().map_or_else(Vec::new, |axis| {
        axis.values()
            .map(|(row, word)| {
                (
                    word.to_string(),
                    columns.iter().map(|column| cell(row, *column)).collect(),
                )
            })
            .collect()
    });
    let on = family
        .axes
        .iter()
        .skip(2)
        .zip(key)
        .filter_map(|(axis, rung)| rung.map(|r| format!("{}: {}", axis.name, axis.value(r))))
        .collect();
    Slice { on, rows }
}
