//! Postures that cannot stand, are more inverted than declared, or leap in weight on the hands.

use crate::curriculum::words::Position;
use crate::curriculum::{Curriculum, Movement};
use crate::leverage::{MALE, NAMES, Pose, PostureError, pose};
use crate::source::suggest::{did_you_mean, listed};
use crate::source::{Diagnostic, Findings, Rule};

pub fn check(curriculum: &Curriculum, findings: &mut Findings) {
    let poses: Vec<Option<Pose>> = curriculum
        .movements()
        .map(|(_, m)| one(m, findings))
        .collect();
    let limit = curriculum.school.leap.share as f64 / 1e6;
    for (ix, movement) in curriculum.movements().filter(|(_, m)| !m.faulty) {
        let Some(here) = poses[ix.at()].and_then(|p| p.hands_carry) else {
            continue;
        };
        for leaf in movement.needs.leaves() {
            // No verdict without postures on both sides.
            let Some(there) = poses[leaf.movement.at()].and_then(|p| p.hands_carry) else {
                continue;
            };
            let needed = curriculum.movement(leaf.movement);
            if here - there > limit {
                let points = ((here - there) * 100.0).round();
                findings.push(
                    Diagnostic::new(Rule::Leap, leaf.span, format!("from `{}` to `{}` the hands carry {points} points of body weight more", needed.id, movement.id))
                        .label("too large a step")
                        .help(format!("put a movement between them, or raise `leap: {{ share: {limit} }}` in school.yaml")),
                );
            }
        }
    }
}

fn one(movement: &Movement, findings: &mut Findings) -> Option<Pose> {
    let posture = movement.posture.as_ref()?;
    let pose = match pose(posture, &MALE) {
        Ok(pose) => pose,
        Err(PostureError::Unknown(name)) => {
            let help = did_you_mean(&name, NAMES.iter().copied())
                .unwrap_or_else(|| format!("the postures are {}", listed(NAMES, "and")));
            findings.push(
                Diagnostic::new(
                    Rule::BadPosture,
                    posture.span,
                    format!("there is no posture `{name}`"),
                )
                .label("unknown posture")
                .help(help),
            );
            return None;
        }
        Err(PostureError::Open { short_by }) => {
            findings.push(
                Diagnostic::new(Rule::PostureOpen, posture.span, format!("the posture cannot close: hands and feet are {short_by} cm too far apart in height"))
                    .label("does not reach")
                    .help("bring hands_at and feet_at closer together, or mend the joint angles"),
            );
            return None;
        }
    };
    let declared = movement.positions.iter().map(|p| match p {
        Position::Inverted => 2,
        Position::PartInverted => 1,
        _ => 0,
    });
    let (declared, found) = (declared.max().unwrap_or(0), pose.inversion());
    if found > declared {
        let word = if found == 2 {
            "inverted"
        } else {
            "part-inverted"
        };
        findings.push(
            Diagnostic::new(
                Rule::PostureInverted,
                posture.span,
                format!(
                    "the posture of `{}` is {word}, but its position does not say so",
                    movement.id
                ),
            )
            .label(if found == 2 {
                "the hips stand above the head, on the hands"
            } else {
                "the head is below the hips"
            })
            .related(movement.spans.id, "declared here")
            .help(format!("write `position: {word}`")),
        );
    }
    Some(pose)
}
