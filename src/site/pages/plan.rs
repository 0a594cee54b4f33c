//! The plan of one client as a page of its own, to print: made by the theme, in the school's language, outside the site.

use super::outside::{context, render};
use crate::curriculum::{MovementIx, Owner};
use crate::site::names::named_from_outside;
use crate::site::theme::{Theme, ThemeError};
use crate::training::{Line, Say, Session, Training};
use crate::words::Value;
use serde::Serialize;

/// The theme's template.
const TEMPLATE: &str = "plan.html";

#[derive(Serialize)]
struct SessionView {
    head: String,
    warm_up: Vec<String>,
    lines: Vec<LineView>,
}

#[derive(Serialize)]
struct LineView {
    block: String,
    /// As HTML, with its mark.
    named: String,
    sets: String,
    rest: String,
    rule: String,
    /// One for each set, to tick.
    boxes: Vec<i64>,
}

#[derive(Serialize)]
struct RetestView {
    on: String,
    /// As HTML.
    tests: Vec<String>,
}

/// The printed plan. Its links lead to the site's own address; every name bears its mark.
///
/// # Errors
/// When the theme cannot make it.
pub fn printed(
    say: &Say<'_>,
    theme: &Theme,
    training: &Training,
    name: &str,
) -> Result<String, ThemeError> {
    let curriculum = say.roster.curriculum;
    let named = |ix: MovementIx| named_from_outside(curriculum, theme, Owner::Movement(ix));
    let line = |l: &Line| {
        Ok(LineView {
            block: say.say(&format!("block.{}", l.block.key())),
            named: named(l.movement)?,
            sets: say.sets(l),
            rest: say.rest(l),
            rule: say.rule(l),
            boxes: (0..l.sets).collect(),
        })
    };
    let session = |s: &Session| {
        Ok(SessionView {
            head: say.head(s),
            // The easy set names its movement, which stands marked below.
            warm_up: say.warm_up_plain(s, training),
            lines: s
                .lines
                .iter()
                .map(line)
                .collect::<Result<_, ThemeError>>()?,
        })
    };
    let sessions: Vec<SessionView> = training
        .sessions
        .iter()
        .map(session)
        .collect::<Result<_, ThemeError>>()?;
    let retest = match &training.retest {
        Some(r) => Some(RetestView {
            on: r.on.to_string(),
            tests: r
                .tests
                .iter()
                .map(|ix| named(*ix))
                .collect::<Result<_, ThemeError>>()?,
        }),
        None => None,
    };
    let conditions: Vec<String> = training
        .conditions
        .iter()
        .map(|c| say.condition(*c))
        .collect();
    let title = say
        .words
        .fill("training.printed", &[("name", Value::Text(name))]);
    let mut context = context(curriculum, &title);
    context.insert("today", &training.today.to_string());
    context.insert("refused", &training.refused);
    context.insert("conditions", &conditions);
    context.insert("sessions", &sessions);
    context.insert("retest", &retest);
    render(theme, TEMPLATE, &context)
}
