//! `assess RESULTS...`: where each client stands, what is missing and why; for a class, the table and what everyone may train.

use super::{Common, Form, Status, report};
use crate::chain::{self, Route};
use crate::curriculum::words::{BodyPart, Screening, Word};
use crate::curriculum::{Curriculum, Day, Leaf, MovementIx, Owner};
use crate::io::{self, Error};
use crate::proof::{Proofread, proofread};
use crate::readiness::{self, Cause, First, Missing, Readiness, Standing, State, Steps};
use crate::results::{self, Aside, Pause, Paused, Person};
use crate::source::Findings;
use crate::source::suggest::did_you_mean;
use crate::words::Words;
use serde_json::{Map, Value, json};
use std::collections::HashMap;
use std::fmt::Write;
use std::path::PathBuf;

#[derive(clap::Args)]
pub struct Options {
    /// Results files: YAML or JSON for one client, CSV for a class
    #[arg(value_name = "RESULTS", required = true)]
    results: Vec<PathBuf>,
    #[command(flatten)]
    common: Common,
    /// Only what stands under this skill or movement, with each client's route to it
    #[arg(long, value_name = "ID")]
    skill: Option<String>,
    /// The day of the assessment, such as 2026-11-25 (default: today)
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    today: Option<Day>,
}

/// A client's answer.
struct Answer {
    person: Person,
    readiness: Readiness,
    /// What comes first for each movement whose foundations are not shown.
    first: HashMap<MovementIx, First>,
    route: Option<Route>,
}

pub fn run(options: &Options) -> Result<Status, Error> {
    let snapshot = io::snapshot(&options.common.from)?;
    let proof = proofread(&snapshot);
    if report::is_no_curriculum(&proof.findings, &snapshot, options.common.form) {
        return Ok(Status::AtFault);
    }
    let today = options.today.unwrap_or_else(io::today);
    let goal = match &options.skill {
        Some(id) => match goal(&proof.curriculum, id) {
            Ok(goal) => Some(goal),
            Err(help) => {
                anstream::eprintln!("rungbook: no skill or movement has the id `{id}`{help}");
                return Ok(Status::Failed);
            }
        },
        None => None,
    };
    let files = io::results(&options.results)?;
    let (people, found) = results::read(&files, &proof.curriculum, today);
    let rows = rows(&proof, goal.as_ref());
    let answers: Vec<Answer> = people
        .into_iter()
        .map(|person| {
            let readiness = readiness::assess(&proof.curriculum, &proof.stages, &person, today);
            Answer {
                first: first(&proof, &person, &readiness, &rows, today),
                route: goal
                    .as_ref()
                    .and_then(|g| readiness::client_route(&proof.curriculum, &person, today, g)),
                readiness,
                person,
            }
        })
        .collect();
    let status = worst(&proof.findings, &found);
    match options.common.form {
        Form::Json => {
            let mut findings = report::json(&proof.findings, &snapshot);
            if let (Value::Array(all), Value::Array(more)) =
                (&mut findings, report::json(&found, &files))
            {
                all.extend(more);
            }
            report::answer(&answer(&proof.curriculum, &answers, &rows, today, findings));
        }
        Form::Text => {
            report::print_errors(&proof.findings, &snapshot, &options.common.from);
            if proof.findings.has_errors() {
                anstream::eprintln!(
                    "The curriculum has errors; this is the answer for what stands."
                );
            }
            report::print(&found, &files);
            anstream::print!("{}", text(&proof.curriculum, &answers, &rows, today));
        }
    }
    Ok(status)
}

/// The first steps to the movements that a client may not try yet.
fn first(
    proof: &Proofread,
    person: &Person,
    readiness: &Readiness,
    rows: &[MovementIx],
    today: Day,
) -> HashMap<MovementIx, First> {
    let steps = Steps::new(&proof.curriculum, &proof.stages, person, today);
    let waits = |ix: &&MovementIx| {
        readiness
            .of(**ix)
            .is_some_and(|s| s.needs != readiness::Truth::True && s.state != State::Paused)
    };
    rows.iter()
        .filter(waits)
        .map(|ix| (*ix, steps.to(*ix)))
        .collect()
}

pub(super) fn worst(curriculum: &Findings, results: &Findings) -> Status {
    match curriculum.has_errors() || results.has_errors() {
        true => Status::AtFault,
        false => Status::Done,
    }
}

/// The goal of a skill, or a movement at its standard.
pub(super) fn goal(curriculum: &Curriculum, id: &str) -> Result<Leaf, String> {
    super::chain::goal(curriculum, id).ok_or_else(|| {
        let known = curriculum.ids().filter(|id| {
            matches!(
                curriculum.find(id),
                Some(Owner::Movement(_) | Owner::Skill(_))
            )
        });
        did_you_mean(id, known).map_or_else(String::new, |help| format!(" ({help})"))
    })
}

/// The movements answered for, by stage, then id.
pub(super) fn rows(proof: &Proofread, goal: Option<&Leaf>) -> Vec<MovementIx> {
    let (curriculum, stages) = (&proof.curriculum, &proof.stages);
    let mut rows: Vec<MovementIx> = match goal {
        Some(goal) => {
            let chain = chain::resolve(curriculum, stages, goal);
            chain.movements.iter().map(|l| l.movement).collect()
        }
        None => curriculum.published().map(|(ix, _)| ix).collect(),
    };
    rows.sort_by_key(|ix| (stages.of(*ix), *ix));
    rows
}

/// What every client may train: owned or open for each of them. Who is to ask a clinician first trains nothing.
fn for_everyone(answers: &[Answer], rows: &[MovementIx], today: Day) -> Vec<MovementIx> {
    let may = |a: &Answer, ix: MovementIx| {
        let state = a.readiness.of(ix).map(|s| s.state);
        matches!(state, Some(State::Owned | State::Open))
            && a.person.screening_on(today) != Some(Screening::Ask)
    };
    rows.iter()
        .copied()
        .filter(|ix| !answers.is_empty() && answers.iter().all(|a| may(a, *ix)))
        .collect()
}

fn answer(
    curriculum: &Curriculum,
    answers: &[Answer],
    rows: &[MovementIx],
    today: Day,
    findings: Value,
) -> Value {
    let id = |ix: MovementIx| curriculum.movement(ix).id.as_str();
    let ids = |list: &[MovementIx]| list.iter().map(|ix| id(*ix)).collect::<Vec<_>>();
    let missing = |m: &Missing| {
        let share = m.share.map(|s| f64::from(s) / 1000.0);
        json!({ "movement": id(m.movement), "target": m.target.to_string(), "got": m.got, "share": share })
    };
    let pause = |p: &Pause| {
        let (key, value) = match p.what {
            Paused::Movement(ix) => ("movement", id(ix)),
            Paused::Part(part) => ("part", part.word()),
            Paused::Class(ix) => ("class", curriculum.cautions.class(ix).id.as_str()),
            Paused::Pattern(pattern) => ("pattern", pattern.word()),
        };
        json!({ key: value, "on": p.on.to_string(), "until": p.until.map(|d| d.to_string()), "by": p.by, "because": p.because })
    };
    let cause = |person: &Person, cause: Cause| {
        let mut out = match cause {
            Cause::Pain(i) => {
                let pain = &person.pains[i];
                json!({ "part": pain.part.word(), "on": pain.on.to_string() })
            }
            Cause::Light => json!({ "on": person.screened.as_ref().map(|s| s.on.to_string()) }),
            _ => cause.pause(person).map_or(Value::Null, pause),
        };
        out["kind"] = json!(cause.word());
        out
    };
    let people: Vec<Value> = answers
        .iter()
        .map(|a| {
            let standing = |ix: MovementIx, s: &Standing| {
                let mut out = json!({
                    "state": s.state.word(), "presumed": s.presumed, "missing": s.missing.iter().map(missing).collect::<Vec<_>>(),
                });
                if !s.paused_by.is_empty() {
                    out["paused_by"] = s.paused_by.iter().map(|of| cause(&a.person, *of)).collect();
                }
                if let Some(ix) = s.counted_because {
                    out["counted_because"] = json!(id(ix));
                }
                if let Some(first) = a.first.get(&ix) {
                    out["first"] = first.steps.iter().map(missing).collect();
                    if let (Some(ix), true) = (s.nearly, first.direct) {
                        out["train_first"] = json!(id(ix));
                    }
                    if s.state == State::TestFirst && first.direct {
                        out["tests"] = json!(ids(&first.movements()));
                    }
                }
                out
            };
            let movements: Map<String, Value> = rows
                .iter()
                .filter_map(|ix| Some((id(*ix).to_string(), standing(*ix, a.readiness.of(*ix)?))))
                .collect();
            let mut out = json!({ "name": a.person.name, "movements": movements, "aside": aside_json(&a.person) });
            if let Some(route) = &a.route {
                out["route"] = super::chain::route_json(curriculum, route);
            }
            out
        })
        .collect();
    json!({
        "today": today.to_string(), "people": people, "everyone": ids(&for_everyone(answers, rows, today)), "findings": findings,
    })
}

/// Why a movement rests, in words.
fn rests(curriculum: &Curriculum, person: &Person, cause: Cause) -> String {
    let words = Words::english();
    let day = |on: Day| on.to_string();
    let part = |part: BodyPart| words.say(&format!("body.{}", part.word().replace('-', "_")));
    let Some(pause) = cause.pause(person) else {
        return match cause {
            Cause::Pain(i) => {
                let pain = &person.pains[i];
                let (what, since) = (part(pain.part), day(pain.on));
                let values = [("what", what.into()), ("day", (&*since).into())];
                words.fill("rests.pain", &values)
            }
            _ => {
                let since = person
                    .screened
                    .as_ref()
                    .map_or(String::new(), |s| day(s.on));
                words.fill("rests.light", &[("day", (&*since).into())])
            }
        };
    };
    let what = match pause.what {
        Paused::Movement(ix) => report::named(curriculum, ix),
        Paused::Part(of) => part(of).to_string(),
        Paused::Class(ix) => {
            let name = curriculum.cautions.class(ix).name(words);
            words.fill("rests.class", &[("name", name.into())])
        }
        Paused::Pattern(of) => words
            .say(&format!("pattern.{}", of.word().replace(' ', "_")))
            .to_string(),
    };
    let key = match cause {
        Cause::Restriction(_) => "rests.left_alone",
        _ => "rests.paused",
    };
    let mut out = words.fill(
        key,
        &[("what", (&*what).into()), ("day", (&*day(pause.on)).into())],
    );
    if let Some(by) = &pause.by {
        let who = match by.as_str() {
            "coach" | "screening" => words.say(&format!("rests.by_{by}")),
            other => other,
        };
        out = words.fill(
            "rests.by",
            &[("pause", (&*out).into()), ("who", who.into())],
        );
    }
    if let Some(until) = pause.until {
        let last = day(until);
        out = words.fill(
            "rests.until",
            &[("pause", (&*out).into()), ("day", (&*last).into())],
        );
    }
    out
}

fn text(curriculum: &Curriculum, answers: &[Answer], rows: &[MovementIx], today: Day) -> String {
    let mut out = String::new();
    for a in answers {
        person(&mut out, curriculum, a, rows, today);
    }
    if answers.len() > 1 {
        class(&mut out, curriculum, answers, rows, today);
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
    for (ix, standing) in &standings {
        let movement = curriculum.movement(*ix);
        let name = report::named(curriculum, *ix);
        let why = why(curriculum, &a.person, standing, a.first.get(ix));
        let dash = if why.is_empty() { "" } else { ": " };
        let _ = writeln!(
            out,
            "  {:<10}  {name} ({}){dash}{why}",
            standing.state.word(),
            movement.id
        );
    }
    aside_words(out, &a.person);
    if let Some(route) = &a.route {
        let _ = writeln!(out, "  {}", super::chain::route_words(curriculum, route));
    }
}

/// What a person's file says and nothing here can judge.
pub(super) fn aside_json(person: &Person) -> Vec<Value> {
    let one = |a: &Aside| json!({ "movement": a.movement, "got": a.got, "on": a.on.to_string(), "why": a.why });
    person.aside.iter().map(one).collect()
}

/// The same, line by line.
pub(super) fn aside_words(out: &mut String, person: &Person) {
    for a in &person.aside {
        let _ = writeln!(
            out,
            "  kept aside  {} {}, {}: {}",
            a.movement, a.got, a.on, a.why
        );
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
        let units = curriculum.school.units;
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
        State::Paused => {
            let one = |cause: &Cause| rests(curriculum, person, *cause);
            standing
                .paused_by
                .iter()
                .map(one)
                .collect::<Vec<_>>()
                .join("; ")
        }
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
fn class(
    out: &mut String,
    curriculum: &Curriculum,
    answers: &[Answer],
    rows: &[MovementIx],
    today: Day,
) {
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
    let all = for_everyone(answers, rows, today);
    for ix in &all {
        let movement = curriculum.movement(*ix);
        let name = report::named(curriculum, *ix);
        let _ = writeln!(out, "  {name} ({})", movement.id);
    }
    if all.is_empty() {
        out.push_str("  nothing that is open to all\n");
    }
}
