//! Safety: complete cautions, exits, and a way out among the foundations of free inverted work.

use crate::chain::{Stages, below};
use crate::curriculum::caution::{Book, Shipped};
use crate::curriculum::gear::Gear;
use crate::curriculum::words::{Load, Pattern, Phase};
use crate::curriculum::{Curriculum, Movement, MovementIx};
use crate::source::{Diagnostic, Findings, Rule};

pub fn check(curriculum: &Curriculum, stages: &Stages, findings: &mut Findings) {
    for (_, movement) in curriculum.movements() {
        complete(curriculum, movement, findings);
        exit(movement, findings);
    }
    for (_, skill) in curriculum.skills() {
        let chain: Vec<MovementIx> = below(curriculum, skill.goal.movement)
            .into_iter()
            .filter(|ix| stages.is_reached(*ix))
            .collect();
        let free = chain
            .iter()
            .map(|ix| curriculum.movement(*ix))
            .find(|m| is_free_inverted(m));
        let has_exit = chain
            .iter()
            .any(|ix| curriculum.movement(*ix).pattern() == Pattern::Exit);
        if let Some(free) = free.filter(|_| !has_exit) {
            findings.push(
                Diagnostic::new(
                    Rule::NoExitMovement,
                    skill.span,
                    format!(
                        "the chain of `{}` holds `{}`, but no exit movement",
                        skill.id,
                        free.id()
                    ),
                )
                .label("nobody is taught the way out")
                .related(free.spans().id, "inverted and free")
                .help("add a movement with `pattern: exit`, and make it a need"),
            );
        }
    }
}

/// An inverted or loaded movement must have at least one class, and every class all its parts.
fn complete(curriculum: &Curriculum, movement: &Movement, findings: &mut Findings) {
    let incomplete = movement
        .cautions()
        .iter()
        .map(|ix| curriculum.cautions().class(*ix))
        .find(|c| !c.is_complete());
    let bare = movement.guarded() && movement.cautions().is_empty();
    if incomplete.is_some() || bare {
        let class = incomplete.map_or("its caution", |c| c.id.as_str());
        findings.push(
            Diagnostic::new(
                Rule::CautionIncomplete,
                movement.spans().id,
                format!(
                    "`{}` cannot be published: the caution `{class}` is not complete",
                    movement.id()
                ),
            )
            .help("complete the class in cautions.yaml"),
        );
    }
}

/// An exit is required when a movement is inverted, lowering-only, or cautioned for a fall from height.
fn exit(movement: &Movement, findings: &mut Findings) {
    let from_height = movement
        .cautions()
        .contains(&Book::shipped(Shipped::FallHeight));
    let why = if movement.inverted() {
        "inverted"
    } else if movement.phase() == Some(Phase::Lowering) {
        "lowering only"
    } else if from_height {
        "done at a height"
    } else {
        return;
    };
    if movement.exit().is_none() {
        findings.push(
            Diagnostic::new(
                Rule::ExitMissing,
                movement.spans().id,
                format!("`{}` is {why} and has no exit", movement.id()),
            )
            .label("no `exit`")
            .help("add a line `exit: ...`: how to get out of it safely"),
        );
    }
}

/// Inverted without anything that holds the feet or the body.
fn is_free_inverted(movement: &Movement) -> bool {
    movement.inverted()
        && movement.pattern() != Pattern::Exit
        && !movement.names_gear(Gear::Wall)
        && movement.load() != Load::Assisted
}
