//! The full self-test sheet: every test in the order in which it is done, and what each number opens.

use super::super::view::{self, SheetRow};
use super::super::{Plan, ROWS_A_PAGE};
use super::{Made, head, turn};
use crate::curriculum::MovementIx;
use serde::Serialize;
use tera::Context;

#[derive(Serialize)]
struct Group {
    name: &'static str,
    rows: Vec<SheetRow>,
}

/// All published movements in the order of the sheet: by group, stage, id.
fn order(plan: &Plan<'_>) -> Vec<MovementIx> {
    let mut all: Vec<MovementIx> = plan.curriculum.published().map(|(ix, _)| ix).collect();
    all.sort_by_key(|ix| {
        (
            view::sheet_group(plan.curriculum.movement(*ix).pattern),
            plan.stages.of(*ix),
            *ix,
        )
    });
    all
}

pub fn self_test(plan: &Plan<'_>, index: usize) -> Made {
    let all = order(plan);
    let mut groups: Vec<Group> = Vec::new();
    for ix in all.chunks(ROWS_A_PAGE).nth(index).unwrap_or(&[]) {
        let (_, name) = view::sheet_group(plan.curriculum.movement(*ix).pattern);
        let row = view::sheet_row(plan, *ix);
        match groups.last_mut() {
            Some(group) if group.name == name => group.rows.push(row),
            _ => groups.push(Group {
                name,
                rows: vec![row],
            }),
        }
    }
    let mut context = Context::new();
    context.insert("groups", &groups);
    context.insert(
        "turn",
        &turn("self-test", index, all.len().div_ceil(ROWS_A_PAGE).max(1)),
    );
    context.insert("note", "");
    (
        "self-test.html",
        head(
            "self-test",
            "Self-test sheet",
            "Every test on one sheet: how it is done, what counts, and what your number opens",
        ),
        context,
    )
}
