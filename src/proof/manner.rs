//! How movements are done and dosed: tempos that do not fit, and what goes in a movement's place without need or gain.

use crate::curriculum::manner::When;
use crate::curriculum::target::Measure;
use crate::curriculum::words::{How, Word};
use crate::curriculum::{Curriculum, Movement, Target};
use crate::source::{Diagnostic, Findings, Rule};

pub fn check(curriculum: &Curriculum, findings: &mut Findings) {
    for (_, movement) in curriculum.movements().filter(|(_, m)| !m.faulty()) {
        tempo(movement, findings);
        for instead in movement.instead() {
            let other = curriculum.movement(instead.movement);
            let word = match &instead.when {
                When::Part(part) => part.word(),
                When::Class(class) => curriculum.cautions().class(*class).id.as_str(),
                When::Without(word) => word.as_str(),
            };
            if !has(movement, &instead.when) {
                findings.push(
                    Diagnostic::new(
                        Rule::InsteadIdle,
                        instead.span,
                        format!("`{}` does not have `{word}`, so nothing needs to go in its place for that", movement.id()),
                    )
                    .label("not of this movement")
                    .help("add it to the movement, or take this line out"),
                );
            } else if bears(other, &instead.when) {
                findings.push(
                    Diagnostic::new(
                        Rule::InsteadNoBetter,
                        instead.span,
                        format!("`{}` has `{word}` as well", other.id()),
                    )
                    .label("no better")
                    .related(other.spans().id, "what goes in the place")
                    .help("name a movement without it; a part that is hardly loaded reads `wrist: light`"),
                );
            }
        }
    }
}

fn has(movement: &Movement, when: &When) -> bool {
    match when {
        When::Part(part) => movement.stresses_part(*part),
        When::Class(class) => movement.cautions().contains(class),
        When::Without(word) => movement.equipment().iter().flatten().any(|w| w == word),
    }
}

/// Whether it has it so that it matters: a part more than lightly, equipment without an alternative.
fn bears(movement: &Movement, when: &When) -> bool {
    match when {
        When::Part(part) => {
            let stressed = movement.stresses().iter().find(|s| s.part == *part);
            stressed.is_some_and(|s| s.how != Some(How::Light))
        }
        When::Class(_) => has(movement, when),
        When::Without(word) => movement
            .equipment()
            .iter()
            .any(|one_of| one_of.iter().all(|w| w == word)),
    }
}

fn tempo(movement: &Movement, findings: &mut Findings) {
    let Some(span) = movement.spans().tempo else {
        return;
    };
    let unfit = |message: String, help: String| {
        Diagnostic::new(Rule::TempoUnfit, span, message)
            .label("does not fit")
            .help(help)
    };
    if movement.standard().measure() != Measure::Reps {
        findings.push(unfit(
            format!(
                "`{}` is not counted in reps, so no rep has a tempo",
                movement.id()
            ),
            "take it out: what is held or measured has no reps".into(),
        ));
        return;
    }
    if movement.tempo().is_some() && movement.hold().is_some() {
        findings.push(unfit(
            "a tempo says the pauses already, the second and the fourth number".into(),
            "keep `tempo` or `hold`, not both".into(),
        ));
    }
    let Some(whole) = movement.tempo_seconds() else {
        return;
    };
    let targets = [Some(movement.standard()), movement.dose()];
    let other = |t: &Target| t.seconds() > 0 && t.seconds() != whole.micro();
    if let Some(target) = targets.into_iter().flatten().find(other) {
        findings.push(unfit(
            format!("the tempo takes {whole} a rep, `{target}` says otherwise"),
            "make both say the same, or leave the seconds out of the target".into(),
        ));
    }
}
