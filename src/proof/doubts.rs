//! What can be read, but is hardly meant.

use crate::curriculum::words::{Pattern, Position};
use crate::curriculum::{Curriculum, Movement, Need};
use crate::source::{Diagnostic, Findings, Rule};

pub fn check(curriculum: &Curriculum, findings: &mut Findings) {
    for (_, movement) in curriculum.movements().filter(|(_, m)| !m.faulty()) {
        dose(movement, findings);
        unprepared(movement, findings);
        place(curriculum, movement, findings);
    }
}

/// A set of the dose is work below the standard, not above it.
fn dose(movement: &Movement, findings: &mut Findings) {
    let standard = movement.standard();
    let Some(dose) = movement.dose() else {
        return;
    };
    let alike = dose.measure() == standard.measure()
        && dose.seconds() == standard.seconds()
        && dose.added() == standard.added()
        && !standard.at_most();
    if alike && dose.amount() > standard.amount() {
        findings.push(
            Diagnostic::new(
                Rule::DoseAboveStandard,
                movement.spans().standard,
                format!(
                    "the dose of `{}`, `{dose}`, asks more of a set than its standard",
                    movement.id()
                ),
            )
            .label("less than a set of the dose")
            .help(
                "lower the dose, or raise the standard: sets of training stay below what is tested",
            ),
        );
    }
}

/// Upside down without anything that must be there first.
fn unprepared(movement: &Movement, findings: &mut Findings) {
    let inverted =
        movement.positions().contains(&Position::Inverted) && movement.pattern() != Pattern::Exit;
    let free = matches!(movement.needs(), Need::All(parts) if parts.is_empty());
    if inverted && free {
        findings.push(
            Diagnostic::new(
                Rule::InvertedWithoutNeeds,
                movement.spans().id,
                format!(
                    "`{}` is upside down, and nothing is needed first",
                    movement.id()
                ),
            )
            .label("open to everybody")
            .help("say under `needs:` what must be strong, and which way out be known, before it"),
        );
    }
}

/// A member that an axis says nothing of stands beside the grid, without neighbours there.
fn place(curriculum: &Curriculum, movement: &Movement, findings: &mut Findings) {
    let Some(place) = movement.place() else {
        return;
    };
    let family = curriculum.family(place.family);
    for (axis, _) in family
        .axes
        .iter()
        .zip(&place.rungs)
        .filter(|(_, rung)| rung.is_none())
    {
        let values: Vec<&str> = axis.values().map(|(_, value)| value).collect();
        findings.push(
            Diagnostic::new(
                Rule::NoAxisValue,
                movement.spans().id,
                format!(
                    "`{}` has no value on the axis `{}`",
                    movement.id(),
                    axis.name
                ),
            )
            .label("no neighbours along it")
            .help(format!("say under `at:` which of {}", values.join(", "))),
        );
    }
}
