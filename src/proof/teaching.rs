//! What a client would miss: tests, cues, faults, a standard that can be measured, a use, a ground to start from.

use crate::chain::{Stages, below};
use crate::curriculum::gear::Gear;
use crate::curriculum::target::{Added, Measure};
use crate::curriculum::{Curriculum, Movement, MovementIx};
use crate::source::{Diagnostic, Findings, Rule};
use foldhash::fast::FixedState;
use std::collections::HashMap;
use std::collections::hash_map::Entry;

pub fn check(curriculum: &Curriculum, stages: &Stages, findings: &mut Findings) {
    let mut used = vec![false; curriculum.len()];
    for (_, skill) in curriculum.skills() {
        let chain = below(curriculum, skill.goal.movement);
        let grounded = chain
            .iter()
            .any(|ix| stages.of(*ix) == Some(0) && curriculum.movement(*ix).test().is_some());
        if !grounded && stages.is_reached(skill.goal.movement) {
            findings.push(
                Diagnostic::new(
                    Rule::NoGroundTest,
                    skill.span,
                    format!("the chain of `{}` holds no test at the ground", skill.id),
                )
                .label("nobody can begin to test")
                .help("give a movement without needs a `test:`"),
            );
        }
        chain.iter().for_each(|ix| used[ix.at()] = true);
    }
    // What goes in the place of a used one is used.
    let in_place: Vec<MovementIx> = curriculum
        .movements()
        .filter(|(ix, _)| used[ix.at()])
        .flat_map(|(_, m)| m.instead().iter().map(|i| i.movement))
        .collect();
    in_place.into_iter().for_each(|ix| used[ix.at()] = true);
    same_names(curriculum, findings);
    // A record in error may be what would have used or taught something: nobody is told twice.
    let all_sound = curriculum.movements().all(|(_, m)| !m.faulty());
    for (ix, movement) in curriculum.movements().filter(|(_, m)| !m.faulty()) {
        lacks(movement, findings);
        measurable(movement, findings);
        if all_sound && !used[ix.at()] && !movement.held_back() {
            findings.push(
                Diagnostic::new(
                    Rule::UnusedMovement,
                    movement.spans().id,
                    format!("no skill uses `{}`", movement.id()),
                )
                .label("in no chain")
                .help("make it the goal of a skill or a need of something, or hold it back with `held_back: true`"),
            );
        }
    }
}

/// Readers know a movement by its name.
fn same_names(curriculum: &Curriculum, findings: &mut Findings) {
    let mut first: HashMap<String, &Movement, FixedState> = HashMap::default();
    for (_, movement) in curriculum.published() {
        match first.entry(movement.name().trim().to_lowercase()) {
            Entry::Vacant(free) => {
                free.insert(movement);
            }
            Entry::Occupied(taken) => {
                let other = taken.get();
                findings.push(
                    Diagnostic::new(
                        Rule::SameName,
                        movement.spans().id,
                        format!(
                            "`{}` and `{}` have the same name",
                            other.id(),
                            movement.id()
                        ),
                    )
                    .label(format!("`{}` too", movement.name()))
                    .related(other.spans().id, "the other one")
                    .help("say in one `name:` what sets it apart, as in `with a band`"),
                );
            }
        }
    }
}

fn lacks(movement: &Movement, findings: &mut Findings) {
    let has_test = movement
        .test()
        .is_some_and(|t| t.how.is_some() || !t.counts.is_empty());
    let mut need = |there: bool, rule: Rule, what: &str, help: &str| {
        if !there {
            let message = format!("`{}` has no {what}", movement.id());
            findings.push(
                Diagnostic::new(rule, movement.spans().id, message)
                    .label(format!("no {what}"))
                    .help(help),
            );
        }
    };
    need(
        has_test,
        Rule::NoTest,
        "test",
        "add `test:` with `how:` and `counts:`",
    );
    need(
        !movement.cues().is_empty(),
        Rule::NoCue,
        "cue",
        "add `cues:` with what to think of",
    );
    need(
        !movement.faults().is_empty(),
        Rule::NoFault,
        "fault",
        "add `faults:` with what is seen, why, and what to try",
    );
}

fn measurable(movement: &Movement, findings: &mut Findings) {
    let standard = &movement.standard();
    let by_measure = match standard.measure() {
        Measure::Length => Some(("a length", Gear::MeasuresLength)),
        Measure::Angle => Some(("an angle", Gear::MeasuresAngle)),
        _ => None,
    };
    let by_load = match standard.added().map(Added::signed) {
        Some(n) if n > 0 => Some(("an added weight", Gear::AddsWeight)),
        Some(n) if n < 0 => Some(("help", Gear::Helps)),
        _ => None,
    };
    for (what, gear) in by_measure.into_iter().chain(by_load) {
        if !movement.names_gear(gear) {
            findings.push(
                Diagnostic::new(
                    Rule::UnmeasurableStandard,
                    movement.spans().standard,
                    format!(
                        "the standard of `{}` is {what}, but its equipment cannot measure it",
                        movement.id()
                    ),
                )
                .label("cannot be measured")
                .help(format!(
                    "add one of {} to its equipment",
                    gear.words().join(", ")
                )),
            );
        }
    }
}
