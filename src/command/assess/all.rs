//! `assess --all`: every movement of every client with its state and the reason, the class table, what everyone may train.

use super::super::{chain, report};
use super::Answer;
use crate::curriculum::{Curriculum, Day, MovementIx};
use crate::morning::{resting_together, rests, what_rests};
use crate::readiness::{self, First, Missing, Standing, State, causes};
use crate::results::Person;
use crate::words::Words;
use std::fmt::Write;

pub(super) fn text(
    curriculum: &Curriculum,
    answers: &[Answer],
    rows: &[MovementIx],
    today: Day,
) -> String {
    let mut out = String::new();
    for a in answers {
        person(&mut out, curriculum, a, rows, today);
    }
    if answers.len() > 1 {
        class(&mut out, curriculum, answers, rows);
    }
    out.push_str("\nNot medical advice. With pain, illness, pregnancy or an injury, ask a licensed clinician first.\n");
    out
}

fn person(out: &mut String, curriculum: &Curriculum, a: &Answer, rows: &[MovementIx], today: Day) {
    let standings: Vec<(MovementIx, &Standing)> = rows
        .iter()
        .filter_map(|ix| Some((*ix, a.readiness.of(*ix)?)))
        .collect();
    let counts: Vec<String> = State::ALL
        .iter()
        .map(|state| {
            (
                state,
                standings.iter().filter(|(_, s)| s.state == *state).count(),
            )
        })
        .filter(|(_, count)| *count > 0)
        .map(|(state, count)| format!("{count} {}", state.word()))
        .collect();
    let _ = writeln!(out, "\n{}, {today}: {}", a.person.name, counts.join(", "));
    // Since when, by whom and until when is said once, what rests beside each movement.
    for causes in resting_together(&a.person, &causes(&a.person, today)) {
        let text = rests(curriculum, Words::english(), &a.person, &causes);
        let _ = writeln!(out, "  {:<10}  {text}", State::Paused.word());
    }
    for (ix, standing) in &standings {
        let movement = curriculum.movement(*ix);
        let name = report::named(curriculum, *ix);
        let why = why(curriculum, &a.person, standing, a.first.get(ix));
        let dash = if why.is_empty() { "" } else { ": " };
        let _ = writeln!(
            out,
            "  {:<10}  {name} ({}){dash}{why}",
            standing.state.word(),
            movement.id()
        );
    }
    aside_words(out, &a.person);
    if let Some(route) = &a.route {
        let _ = writeln!(out, "  {}", chain::route_words(curriculum, route));
    }
}

/// What decides nothing, a line for each reason.
fn aside_words(out: &mut String, person: &Person) {
    let mut by: Vec<(&str, Vec<String>)> = Vec::new();
    for a in &person.aside {
        let one = format!("{} {}, {}", a.movement, a.got, a.on);
        match by.iter_mut().find(|(why, _)| *why == a.why) {
            Some((_, list)) => list.push(one),
            None => by.push((a.why, vec![one])),
        }
    }
    for (why, list) in by {
        let _ = writeln!(out, "  kept aside  {}: {why}", list.join("; "));
    }
}

/// A state explained in one line.
fn why(
    curriculum: &Curriculum,
    person: &Person,
    standing: &Standing,
    first: Option<&First>,
) -> String {
    let name = |ix: MovementIx| report::named(curriculum, ix);
    let lines = |list: &[Missing]| {
        let units = curriculum.school().units;
        let one = |m: &Missing| {
            let has = match (&m.got, m.share) {
                (Some(got), Some(share)) => format!(", has {got} ({} %)", share / 10),
                _ => ", untested".to_string(),
            };
            format!("{} {}{has}", name(m.movement), m.target.words(units))
        };
        list.iter().map(one).collect::<Vec<_>>().join("; ")
    };
    // Where what is missing may not be tried itself, what stands under it.
    let under = first.filter(|f| !f.direct && !f.steps.is_empty());
    let first_of = |f: &First| format!("first: {}", lines(&f.steps));
    let missing = || match under {
        Some(f) => format!("{}; {}", lines(&standing.missing), first_of(f)),
        None => lines(&standing.missing),
    };
    match standing.state {
        State::Paused => what_rests(curriculum, Words::english(), person, &standing.paused_by),
        State::Owned => {
            let root = standing.counted_because.map(name);
            let counted = root.map(|root| format!("counted because {root} is owned"));
            let lack = (standing.needs == readiness::Truth::False)
                .then(|| format!("these foundations are missing: {}", missing()));
            let both: Vec<String> = counted.into_iter().chain(lack).collect();
            both.join("; ")
        }
        State::Open => String::new(),
        State::Almost => match under {
            Some(_) => format!("do not try this yet: {}", missing()),
            None => {
                let first = standing.nearly.map_or(String::new(), name);
                format!("train {first} first; do not try this yet: {}", missing())
            }
        },
        State::NotYet => missing(),
        State::TestFirst => match (under, first) {
            (Some(f), _) => first_of(f),
            (None, Some(f)) if f.direct => {
                let tests: Vec<String> = f.movements().into_iter().map(name).collect();
                format!("test {}", tests.join(", "))
            }
            _ => lines(&standing.missing),
        },
    }
}

/// Movements by clients, and what everyone may train.
fn class(out: &mut String, curriculum: &Curriculum, answers: &[Answer], rows: &[MovementIx]) {
    let wide = |text: &str| text.chars().count();
    let names: Vec<String> = rows
        .iter()
        .map(|ix| report::named(curriculum, *ix))
        .collect();
    let first = names.iter().map(|n| wide(n)).max().unwrap_or(0);
    let columns: Vec<usize> = answers
        .iter()
        .map(|a| wide(&a.person.name).max(10))
        .collect();
    let _ = write!(out, "\nThe class\n  {:<first$}", "");
    for (a, width) in answers.iter().zip(&columns) {
        let _ = write!(out, "  {:<width$}", a.person.name);
    }
    for (ix, name) in rows.iter().zip(&names) {
        let _ = write!(out, "\n  {name:<first$}");
        for (a, width) in answers.iter().zip(&columns) {
            let word = a.readiness.of(*ix).map_or("", |s| s.state.word());
            let _ = write!(out, "  {word:<width$}");
        }
    }
    out.push_str("\n\nEveryone here may train today\n");
    let all = for_everyone(answers, rows);
    for ix in &all {
        let movement = curriculum.movement(*ix);
        let name = report::named(curriculum, *ix);
        let _ = writeln!(out, "  {name} ({})", movement.id());
    }
    if all.is_empty() {
        out.push_str("  nothing that is open to all\n");
    }
}

/// What every client may train. Who is to ask a clinician first, or has not answered the health questions, trains nothing.
pub(super) fn for_everyone(answers: &[Answer], rows: &[MovementIx]) -> Vec<MovementIx> {
    let may = |a: &Answer, ix: MovementIx| a.verdict.for_all.contains(&ix);
    rows.iter()
        .copied()
        .filter(|ix| !answers.is_empty() && answers.iter().all(|a| may(a, *ix)))
        .collect()
}
