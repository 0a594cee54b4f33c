//! Needs that run in a circle, and movements that nobody can ever reach.

use crate::chain::{Loop, Stages, loops};
use crate::curriculum::Curriculum;
use crate::source::{Diagnostic, Findings, Rule};

pub fn check(curriculum: &Curriculum, stages: &Stages, findings: &mut Findings) {
    let (circles, alone) = loops(curriculum, stages);
    for circle in circles {
        findings.push(finding(curriculum, &circle));
    }
    for ix in alone {
        let movement = curriculum.movement(ix);
        findings.push(
            Diagnostic::new(Rule::Unreachable, movement.spans().id, format!("nobody can ever reach `{}`: its needs cannot be met", movement.id()))
                .label("never open")
                .help("look at its choices: a part that is held back, or a whole family without published members, counts as nothing"),
        );
    }
}

/// The whole circle, place by place.
fn finding(curriculum: &Curriculum, circle: &Loop) -> Diagnostic {
    let id = |i: usize| {
        curriculum
            .movement(circle.steps[i % circle.steps.len()].0)
            .id()
            .as_str()
    };
    let path: Vec<String> = (0..=circle.steps.len())
        .map(|i| format!("`{}`", id(i)))
        .collect();
    let first = &circle.steps[0].1;
    let message = match circle.steps.len() {
        1 => format!("{} needs itself", path[0]),
        _ => format!("the needs run in a circle: {}", path.join(" needs ")),
    };
    let mut out = Diagnostic::new(Rule::Loop, first.span, message).label(format!(
        "`{}` needs `{}`",
        id(0),
        id(1)
    ));
    for (i, (_, leaf)) in circle.steps.iter().enumerate().skip(1) {
        out = out.related(leaf.span, format!("`{}` needs `{}`", id(i), id(i + 1)));
    }
    out.help(
        "take one of these needs out, or give one of the movements another way in with `any of`",
    )
}
