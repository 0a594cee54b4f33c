//! Postures that cannot stand, go through the floor or themselves, are more inverted than declared, or leap in weight on the hands or in turning load.

use crate::chain::Resolved;
use crate::curriculum::posture::Posture;
use crate::curriculum::target::ONE;
use crate::curriculum::words::{Pattern, Position, Word};
use crate::curriculum::{Curriculum, Leaf, Movement};
use crate::leverage::{PostureError, Solved, Through, names, through};
use crate::source::suggest::{did_you_mean, listed};
use crate::source::{Diagnostic, Findings, Rule};

pub fn check(curriculum: &Curriculum, resolved: &Resolved, findings: &mut Findings) {
    for (ix, movement) in curriculum.movements() {
        let (Some(posture), Some(stands)) = (movement.posture(), resolved.posture(ix)) else {
            continue;
        };
        match stands {
            Err(error) => findings.push(cannot_stand(posture, error)),
            Ok(solved) => inverted(movement, posture, solved, findings),
        }
    }
    for (ix, movement) in curriculum.movements().filter(|(_, m)| !m.faulty()) {
        if let Some(here) = resolved.solved(ix).filter(|here| through(here).is_none()) {
            leaps(curriculum, movement, here, resolved, findings);
        }
    }
}

/// A load of a posture that may not grow by more than the school's limit.
struct Load {
    key: &'static str,
    limit: f64,
    of: fn(&Solved) -> Option<f64>,
    grows: fn(f64) -> String,
}

fn loads(curriculum: &Curriculum) -> [Load; 3] {
    let limits = curriculum.school().leap;
    let turning = limits.turning as f64 / ONE as f64;
    [
        Load {
            key: "share",
            limit: limits.share.fraction(),
            of: |solved| solved.start.hands_carry,
            grows: |more| {
                let points = (more * 100.0).round();
                format!("the hands carry {points} points of body weight more")
            },
        },
        Load {
            key: "turning",
            limit: turning,
            of: |solved| solved.turning().map(|t| t.shoulder),
            grows: |more| format!("the shoulders hold {} body weight x cm more", more.round()),
        },
        Load {
            key: "turning",
            limit: turning,
            of: |solved| solved.turning().map(|t| t.hip),
            grows: |more| format!("the hips hold {} body weight x cm more", more.round()),
        },
    ]
}

/// Judged against the need that comes nearest; no verdict without postures on both sides.
fn leaps(
    curriculum: &Curriculum,
    movement: &Movement,
    here: &Solved,
    resolved: &Resolved,
    findings: &mut Findings,
) {
    for load in loads(curriculum) {
        // Who balances on the hands alone carries everything on them: that is not the step.
        if load.key == "share" && movement.pattern() == Pattern::Balance {
            continue;
        }
        let Some(here) = (load.of)(here) else {
            continue;
        };
        let mut nearest: Option<(f64, &Leaf)> = None;
        for leaf in movement.needs().leaves() {
            // Straight arms hold what bent arms press: the two do not compare.
            let arms = curriculum.movement(leaf.movement).arms();
            if arms.is_some() && movement.arms().is_some() && arms != movement.arms() {
                continue;
            }
            let there = resolved.solved(leaf.movement).and_then(load.of);
            if let Some(there) = there
                && nearest.is_none_or(|(most, _)| there > most)
            {
                nearest = Some((there, leaf));
            }
        }
        let Some((there, leaf)) = nearest.filter(|(there, _)| here - there > load.limit) else {
            continue;
        };
        let needed = curriculum.movement(leaf.movement).id();
        let grows = (load.grows)(here - there);
        let message = format!("from `{needed}` to `{}` {grows}", movement.id());
        let (key, limit) = (load.key, load.limit);
        findings.push(
            Diagnostic::new(Rule::Leap, leaf.span, message)
                .label("too large a step")
                .help(format!("put a movement between them, or raise `leap: {{ {key}: {limit} }}` in school.yaml")),
        );
    }
}

/// More inverted than its position says.
fn inverted(movement: &Movement, posture: &Posture, solved: &Solved, findings: &mut Findings) {
    if let Some(found) = through(solved) {
        findings.push(goes_through(posture, found));
        return;
    }
    let declared = movement.positions().iter().map(|p| match p {
        Position::Inverted => 2,
        // In a bridge the head is low by nature, and its caution says so.
        Position::PartInverted | Position::Bridge => 1,
        _ => 0,
    });
    let (declared, found) = (declared.max().unwrap_or(0), solved.inversion());
    if found > declared {
        let (word, label) = if found == 2 {
            (
                "inverted",
                "the hips are above the head, and no foot carries",
            )
        } else {
            ("part-inverted", "the head is below the hips")
        };
        findings.push(
            Diagnostic::new(
                Rule::PostureInverted,
                posture.span,
                format!(
                    "the posture of `{}` is {word}, but its position does not say so",
                    movement.id()
                ),
            )
            .label(label)
            .related(movement.spans().id, "declared here")
            .help(format!("write `position: {word}`")),
        );
    }
}

fn goes_through(posture: &Posture, found: Through) -> Diagnostic {
    let (message, help) = match found {
        Through::Floor(part, by) => (
            format!("the posture goes through the floor: the {part} lies {by} cm under it"),
            "raise hands_at or feet_at, or bend the joints less",
        ),
        Through::Bar(part) => (
            format!("the posture goes through the bar: the {part} is where it is"),
            "bend the elbows less, or bring the arms further from the trunk",
        ),
        Through::Wall(part, by) => (
            format!("the posture goes through the wall: the {part} is {by} cm behind its face"),
            "mend the joint angles",
        ),
        Through::Itself(part, angle) => (
            format!("the posture goes through itself: the {part} is folded to {angle} deg"),
            "open the joint: a hip folds to about 15 deg, a knee to 22, an elbow to 15",
        ),
    };
    Diagnostic::new(Rule::PostureThrough, posture.span, message)
        .label("no body does this")
        .help(help)
}

fn cannot_stand(posture: &Posture, error: &PostureError) -> Diagnostic {
    let finding = |rule, message: String| Diagnostic::new(rule, posture.span, message);
    match error {
        PostureError::Unknown(name) => {
            let help = did_you_mean(name, names()).unwrap_or_else(|| {
                format!("the postures are {}", listed(&names(), "and"))
            });
            finding(Rule::BadPosture, format!("there is no posture `{name}`"))
                .label("unknown posture")
                .help(help)
        }
        PostureError::Open { short_by } => finding(
            Rule::PostureOpen,
            format!("the posture cannot close: hands and feet are {short_by} cm too far apart in height"),
        )
        .label("does not reach")
        .help("bring hands_at and feet_at closer together, or mend the joint angles"),
        PostureError::Tips { past_by } => finding(
            Rule::PostureOpen,
            format!("the posture tips over: its weight is {past_by} cm past what it stands on"),
        )
        .label("does not balance")
        .help("mend the joint angles, or the heights, until the weight is between the places that are touched"),
        PostureError::OwnHeights(name) => finding(
            Rule::BadPosture,
            format!("the heights of `{name}` belong together"),
        )
        .label("hands_at and feet_at cannot be changed here")
        .help("leave them out, or say a posture that stands at any height, such as `push-up` or `pike`"),
        PostureError::Unsupported(touches) => {
            let words: Vec<&str> = touches.iter().map(|t| t.word()).collect();
            finding(
                Rule::BadPosture,
                format!("the tool cannot stand a body on {}", listed(&words, "and")),
            )
            .label("not a way to stand")
            .help("touch hands or one grip, with toes, knees, wall or head; or toes, knees or back")
        }
    }
}
