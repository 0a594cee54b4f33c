//! Needs that say nothing new, steps too large, and families with a rung missing.

use crate::chain::{Implications, Stages, neighbours_of};
use crate::curriculum::family::{Way, harder_everywhere};
use crate::curriculum::{Curriculum, Leaf, Movement, MovementIx};
use crate::source::{Diagnostic, Findings, Rule};
use rayon::prelude::*;

pub fn check(curriculum: &Curriculum, stages: &Stages, findings: &mut Findings) {
    let sound: Vec<(MovementIx, &Movement)> = curriculum
        .movements()
        .filter(|(ix, m)| !m.faulty() && stages.is_reached(*ix))
        .collect();
    let implications = Implications::new(curriculum, stages);
    let implied: Vec<Diagnostic> = sound
        .par_iter()
        .flat_map_iter(|(ix, m)| implied(curriculum, &implications, *ix, m))
        .collect();
    implied.into_iter().for_each(|d| findings.push(d));
    for (ix, movement) in sound {
        leap_in_rungs(curriculum, movement, findings);
        easier_neighbour(curriculum, ix, movement, findings);
    }
}

fn leaf_words(curriculum: &Curriculum, leaf: &Leaf) -> String {
    let id = curriculum.movement(leaf.movement).id();
    if leaf.own_standard {
        format!("`{id}`")
    } else {
        format!("`{id}: {}`", leaf.target)
    }
}

fn implied(
    curriculum: &Curriculum,
    implications: &Implications<'_>,
    ix: MovementIx,
    movement: &Movement,
) -> Vec<Diagnostic> {
    let mut out = Vec::new();
    for leaf in implications.necessary(ix) {
        // A need that `easier_first` added stands nowhere in the file.
        if leaf.span == movement.spans().id {
            continue;
        }
        let Some(path) = implications.by(ix, leaf) else {
            continue;
        };
        let steps: Vec<String> = path.iter().map(|l| leaf_words(curriculum, l)).collect();
        let mut finding = Diagnostic::new(
            Rule::ImpliedNeed,
            leaf.span,
            format!(
                "the need {} follows from {}",
                leaf_words(curriculum, leaf),
                steps.join(", which needs ")
            ),
        )
        .label("says nothing new");
        for step in &path {
            finding = finding.related(step.span, "follows through here");
        }
        out.push(finding.help("take it out, or ask more of it here than there"));
    }
    out
}

/// A family member that needs a sibling more rungs below it than the school allows, all axes together.
fn leap_in_rungs(curriculum: &Curriculum, movement: &Movement, findings: &mut Findings) {
    let (Some(place), limit) = (movement.place(), curriculum.school().leap.rungs) else {
        return;
    };
    for leaf in movement.needs().leaves() {
        let needed = curriculum.movement(leaf.movement);
        let Some(theirs) = needed.place().filter(|p| p.family == place.family) else {
            continue;
        };
        let jump: u32 = place
            .rungs
            .iter()
            .zip(&theirs.rungs)
            .filter_map(|(ours, theirs)| {
                Some(u32::from(
                    ours.as_ref()?.rung.saturating_sub(theirs.as_ref()?.rung),
                ))
            })
            .sum();
        if jump > limit {
            findings.push(
                Diagnostic::new(Rule::Leap, leaf.span, format!("from `{}` to `{}` is a leap of {jump} rungs", needed.id(), movement.id()))
                    .label("too large a step")
                    .related(movement.spans().id, "from here")
                    .help(format!("put a member between them, or raise `leap: {{ rungs: {limit} }}` in school.yaml")),
            );
        }
    }
}

/// A family member that is not easiest and has no easier neighbour on any axis.
fn easier_neighbour(
    curriculum: &Curriculum,
    ix: MovementIx,
    movement: &Movement,
    findings: &mut Findings,
) {
    let Some(place) = movement.place().filter(|_| !movement.held_back()) else {
        return;
    };
    let family = curriculum.family(place.family);
    let easier = family
        .members
        .iter()
        .map(|m| curriculum.movement(*m))
        .find(|m| {
            !m.held_back()
                && m.place().is_some_and(|p| {
                    harder_everywhere(&place.rungs, &p.rungs)
                        && !harder_everywhere(&p.rungs, &place.rungs)
                })
        });
    let Some(easier) = easier else { return };
    if neighbours_of(curriculum, ix, Way::Easier).is_empty() {
        findings.push(
            Diagnostic::new(
                Rule::NoEasierNeighbour,
                movement.spans().id,
                format!(
                    "`{}` is not the easiest of `{}`, yet no member is one rung easier",
                    movement.id(),
                    family.id
                ),
            )
            .label("no easier neighbour")
            .related(
                easier.spans().id,
                "an easier member, but on more than one axis",
            )
            .help("add the member between them that differs on one axis only"),
        );
    }
}
