//! The page of a family: its table by axes.

use super::{Made, head};
use crate::chain::{GridCell, Slice, grid};
use crate::curriculum::{Family, FamilyIx, MovementIx, Owner};
use crate::leverage::Solved;
use crate::site::draw::figure;
use crate::site::material::Material;
use crate::site::names::stage_words;
use crate::site::pages::markdown::{self, Place};
use crate::site::pages::view::{self, Bar};
use crate::site::theme::ThemeError;
use serde::Serialize;
use tera::Context;

/// Small figures of a family's members from easier to harder; empty below two.
fn strip(site: &Material<'_>, family: FamilyIx) -> String {
    let of = |ix: &MovementIx| {
        let place = site.curriculum.movement(*ix).place()?;
        (place.family == family).then(|| place.rungs.clone())
    };
    let mut members: Vec<(Vec<_>, MovementIx)> = site
        .curriculum
        .published()
        .filter(|(ix, _)| site.resolved.solved(*ix).is_some())
        .filter_map(|(ix, _)| Some((of(&ix)?, ix)))
        .collect();
    members.sort_by_key(|(rungs, ix)| (site.resolved.stages.of(*ix), rungs.clone(), *ix));
    let shown: Vec<(String, &Solved)> = members
        .iter()
        .filter_map(|(_, ix)| {
            let name = site.named(Owner::Movement(*ix));
            Some((name, site.resolved.solved(*ix)?))
        })
        .collect();
    match shown.len() {
        0 | 1 => String::new(),
        _ => figure::strip(&shown, site.say()).svg,
    }
}

#[derive(Serialize)]
struct SliceView {
    on: String,
    columns: Vec<String>,
    rows: Vec<RowView>,
}

#[derive(Serialize)]
struct RowView {
    value: String,
    cells: Vec<Option<CellView>>,
}

#[derive(Serialize)]
struct CellView {
    id: String,
    figure: String,
    bar: Option<Bar>,
    link: String,
    standard: String,
    stage: String,
}

/// The tables of a family: one for each value of the axes beyond the second.
fn slices(site: &Material<'_>, f: &Family, slices: Vec<Slice>) -> Vec<SliceView> {
    let cell = |cell: GridCell| {
        cell.map(|ix| CellView {
            id: site.curriculum.movement(ix).id().to_string(),
            figure: view::figure_of(site, ix),
            bar: view::bar(site, ix),
            link: site.links.of(ix).to_string(),
            standard: site.words(&site.curriculum.movement(ix).standard()),
            stage: stage_words(site.say(), site.resolved.stages.of(ix).unwrap_or(0)),
        })
    };
    let columns: Vec<String> = f.axes.get(1).map_or_else(
        || vec![site.say().say("shared.movement").into()],
        |a| a.values().map(|(_, v)| plain(v)).collect(),
    );
    slices
        .into_iter()
        .map(|slice| SliceView {
            on: plain(&site.say().list(&slice.on)),
            columns: columns.clone(),
            rows: slice
                .rows
                .into_iter()
                .map(|(value, cells)| RowView {
                    value: plain(&value),
                    cells: cells.into_iter().map(cell).collect(),
                })
                .collect(),
        })
        .collect()
}

fn plain(text: &str) -> String {
    text.replace('-', " ")
}

pub fn family(site: &Material<'_>, ix: FamilyIx) -> Result<Made, ThemeError> {
    let f = site.curriculum.family(ix);
    let grid = grid(site.curriculum, ix);
    let mut context = Context::new();
    let owner = Owner::Family(ix);
    context.insert("id", f.id.as_str());
    context.insert("name", &f.name);
    context.insert("mark", &site.links.mark_of(owner));
    context.insert("summary", &f.summary);
    context.insert("also", &f.also);
    context.insert(
        "axes",
        &f.axes.iter().map(|a| plain(&a.name)).collect::<Vec<_>>(),
    );
    context.insert("slices", &slices(site, f, grid.slices));
    context.insert("strip", &strip(site, ix));
    context.insert(
        "aside",
        &grid
            .aside
            .iter()
            .map(|ix| site.links.of(*ix))
            .collect::<Vec<_>>(),
    );
    context.insert(
        "note",
        &f.note
            .map(|n| markdown::render(site, n, Place::own(1)))
            .transpose()?
            .unwrap_or_default(),
    );
    let summary = f.summary.clone().unwrap_or_else(|| {
        site.say().fill(
            "page.family_description",
            &[("family", (&site.named(owner)).into())],
        )
    });
    Ok((
        "family.html".into(),
        head("family", &site.named(owner), summary),
        context,
    ))
}
