//! `dose RESULTS`: today's working sets with their reasons, skill practice, and the plan over weeks.

use super::assess::{aside_json, aside_words, goal, rows, worst};
use super::{Common, Form, Status, report};
use crate::curriculum::{Curriculum, Day, MovementIx};
use crate::io::{self, Error};
use crate::proof::proofread;
use crate::readiness;
use crate::results::{self, Person};
use crate::strength::load::{WeekLoad, last_week};
use crate::strength::{self, Estimate, Plan, Prescription, Working};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fmt::Write;
use std::path::PathBuf;

#[derive(clap::Args)]
pub struct Options {
    /// A client's results, YAML or JSON
    #[arg(value_name = "RESULTS")]
    results: PathBuf,
    #[command(flatten)]
    common: Common,
    /// Only what stands under this skill or movement
    #[arg(long, value_name = "ID")]
    skill: Option<String>,
    /// The first day of the plan, such as 2026-11-25 (default: today)
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    today: Option<Day>,
    /// Write the plan as iCalendar into this file
    #[arg(long, value_name = "FILE")]
    calendar: Option<PathBuf>,
    /// Write the plan as a page to print into this file
    #[arg(long, value_name = "FILE")]
    page: Option<PathBuf>,
}

/// A client's answer.
struct Answer {
    person: Person,
    working: Working,
    plan: Plan,
    estimates: Vec<Estimate>,
    load: Option<WeekLoad>,
}

pub fn run(options: &Options) -> Result<Status, Error> {
    let snapshot = io::snapshot(&options.common.from)?;
    let proof = proofread(&snapshot);
    if report::is_no_curriculum(&proof.findings, &snapshot, options.common.form) {
        return Ok(Status::AtFault);
    }
    let curriculum = &proof.curriculum;
    let today = options.today.unwrap_or_else(io::today);
    let goal = match &options.skill {
        Some(id) => match goal(curriculum, id) {
            Ok(goal) => Some(goal),
            Err(help) => {
                anstream::eprintln!("rungbook: no skill or movement has the id `{id}`{help}");
                return Ok(Status::Failed);
            }
        },
        None => None,
    };
    let files = io::results(std::slice::from_ref(&options.results))?;
    let (people, found) = results::read(&files, curriculum, today);
    let list = rows(&proof, goal.as_ref());
    let answers: Vec<Answer> = people
        .into_iter()
        .map(|person| {
            let readiness = readiness::assess(curriculum, &proof.stages, &person, today);
            let working =
                strength::working(curriculum, &proof.stages, &person, &readiness, &list, today);
            Answer {
                plan: strength::plan(curriculum, &working, today),
                estimates: strength::estimates(curriculum, &person, today),
                load: last_week(&person.sessions, today),
                working,
                person,
            }
        })
        .collect();
    let files_too = options.calendar.is_some() || options.page.is_some();
    if let [one, _, ..] = answers.as_slice()
        && files_too
    {
        let (name, n) = (&one.person.name, answers.len());
        anstream::eprintln!("rungbook: the plan is written for {name}, the first of {n} people");
    }
    if let (Some(path), Some(one)) = (&options.calendar, answers.first()) {
        let text = strength::calendar::calendar(
            curriculum,
            &one.working.practice,
            &one.plan,
            &one.person.name,
        );
        io::replace(path, &text)?;
    }
    if let (Some(path), Some(one)) = (&options.page, answers.first()) {
        io::replace(path, &page(curriculum, one, today))?;
    }
    match options.common.form {
        Form::Json => {
            let mut findings = report::json(&proof.findings, &snapshot);
            if let (Value::Array(all), Value::Array(more)) =
                (&mut findings, report::json(&found, &files))
            {
                all.extend(more);
            }
            let mut out = answers.first().map_or(
                json!({ "picks": [], "skill_practice": [], "plan": null }),
                |a| answer(curriculum, a),
            );
            if answers.len() > 1 {
                let named = |a: &Answer| {
                    let mut one = answer(curriculum, a);
                    one["name"] = json!(a.person.name);
                    one
                };
                out["people"] = answers.iter().map(named).collect();
            }
            out["findings"] = findings;
            report::answer(&out);
        }
        Form::Text => {
            report::print_errors(&proof.findings, &snapshot, &options.common.from);
            if proof.findings.has_errors() {
                anstream::eprintln!(
                    "The curriculum has errors; this is the answer for what stands."
                );
            }
            report::print(&found, &files);
            for a in &answers {
                anstream::print!("{}", text(curriculum, a, today));
            }
        }
    }
    Ok(worst(&proof.findings, &found))
}

fn answer(curriculum: &Curriculum, a: &Answer) -> Value {
    let id = |ix: MovementIx| curriculum.movement(ix).id.as_str();
    let signal = |ix: MovementIx| {
        let class = curriculum.movement(ix).cautions.first();
        class.map(|c| curriculum.cautions.class(*c).signal.word())
    };
    let picks: Vec<Value> = a
        .working
        .picks
        .iter()
        .map(|p| json!({ "movement": id(p.movement), "target": p.prescription.text(), "why": p.why, "signal": signal(p.movement) }))
        .collect();
    let practice: Vec<Value> = a
        .working
        .practice
        .iter()
        .map(|p| {
            let when = if p.before { "before" } else { "after" };
            json!({ "movement": id(p.movement), "target": p.prescription.text(), "when": when, "why": p.why, "signal": signal(p.movement) })
        })
        .collect();
    let sets = |sets: &[(MovementIx, Prescription)]| {
        let one = |(ix, p): &(MovementIx, Prescription)| json!({ "movement": id(*ix), "target": p.text() });
        sets.iter().map(one).collect::<Vec<_>>()
    };
    let weeks: Vec<Value> = a
        .plan
        .weeks
        .iter()
        .map(|w| {
            let sessions: Vec<Value> = w
                .sessions
                .iter()
                .map(|s| json!({ "on": s.on.to_string(), "sets": sets(&s.sets) }))
                .collect();
            json!({ "week": w.number, "lighter": w.lighter, "sessions": sessions })
        })
        .collect();
    let tenth = |n: f64| (n * 10.0).round() / 10.0;
    let hundredth = |n: f64| (n * 100.0).round() / 100.0;
    let strength: Vec<Value> = a
        .estimates
        .iter()
        .map(|e| {
            let max = e.one_rep_max.ok().map(|(low, high)| [tenth(low), tenth(high)]);
            let relative = e.relative.map(|(low, high)| [hundredth(low), hundredth(high)]);
            let refused = e.one_rep_max.err().map(|why| why.to_string());
            json!({
                "movement": id(e.movement), "reps": e.reps, "moved_kg": tenth(e.moved), "one_rep_max_kg": max,
                "of_body_weight": relative, "refused": refused,
            })
        })
        .collect();
    let load = a.load.map(|l| json!({ "total": l.total.round(), "monotony": hundredth(l.monotony), "strain": l.strain.round() }));
    json!({
        "strength": strength, "session_load": load, "estimate": true, "picks": picks, "skill_practice": practice,
        "aside": aside_json(&a.person),
        "plan": {
            "weeks": weeks, "retest": a.plan.retest.to_string(), "volume": a.plan.volume, "straight_arm": a.plan.straight_arm,
            "push": a.plan.push, "pull": a.plan.pull,
        },
    })
}

const CAREFUL: &str = "Estimates. Not medical advice. With pain, illness, pregnancy or an injury, ask a licensed clinician first. Learn inverted and loaded work under a qualified coach.";

fn text(curriculum: &Curriculum, a: &Answer, today: Day) -> String {
    let mut out = String::new();
    let _ = writeln!(out, "\n{}, {today}", a.person.name);
    let practice = |out: &mut String, before: bool| {
        for p in a.working.practice.iter().filter(|p| p.before == before) {
            let _ = writeln!(
                out,
                "  {}: {} ({})",
                report::named(curriculum, p.movement),
                p.prescription.words(curriculum, p.movement),
                p.why
            );
        }
    };
    if a.working.practice.iter().any(|p| p.before) {
        out.push_str("Skill practice, before\n");
        practice(&mut out, true);
    }
    out.push_str("Working sets\n");
    for p in &a.working.picks {
        let _ = writeln!(
            out,
            "  {}: {} ({})",
            report::named(curriculum, p.movement),
            p.prescription.words(curriculum, p.movement),
            p.why
        );
    }
    if a.working.picks.is_empty() {
        out.push_str("  nothing is open to train with the equipment at hand\n");
    }
    if a.working.practice.iter().any(|p| !p.before) {
        out.push_str("Skill practice, after\n");
        practice(&mut out, false);
    }
    if !a.estimates.is_empty() {
        out.push_str("Strength: the load that moved, and the most for one rep by seven formulas\n");
    }
    for e in &a.estimates {
        let max = match e.one_rep_max {
            Ok((low, high)) => format!("{low:.0} to {high:.0} kg for one"),
            Err(why) => format!("no estimate: {why}"),
        };
        let name = report::named(curriculum, e.movement);
        let _ = writeln!(
            out,
            "  {name}: {:.0} kg for {} reps, {max}",
            e.moved, e.reps
        );
    }
    if let Some(l) = a.load {
        let _ = writeln!(
            out,
            "Session load of seven days, effort x minutes: {:.0}; monotony {:.2}, strain {:.0}",
            l.total, l.monotony, l.strain
        );
    }
    let _ = writeln!(out, "Plan");
    for weeks in a.plan.alike() {
        let sessions = weeks.iter().flat_map(|w| &w.sessions);
        let days: Vec<String> = sessions.map(|s| s.on.to_string()).collect();
        let (first, last) = (&weeks[0], &weeks[weeks.len() - 1]);
        let lighter = if first.lighter {
            ", lighter: half the sets"
        } else {
            ""
        };
        let which = match weeks.len() {
            1 => format!("week {}", first.number),
            _ => format!("weeks {} to {}", first.number, last.number),
        };
        let _ = writeln!(out, "  {which}: {}{lighter}", days.join(", "));
    }
    for line in volumes(&a.plan) {
        let _ = writeln!(out, "  {line}");
    }
    let _ = writeln!(out, "  test again from {}", a.plan.retest);
    aside_words(&mut out, &a.person);
    let _ = writeln!(out, "{CAREFUL}");
    out
}

/// What a week comes to, line by line.
fn volumes(plan: &Plan) -> Vec<String> {
    let joined = |of: &BTreeMap<&str, u32>| {
        let all: Vec<String> = of.iter().map(|(p, n)| format!("{p} {n}")).collect();
        all.join(", ")
    };
    let mut out = Vec::new();
    if !plan.volume.is_empty() {
        out.push(format!("sets a week: {}", joined(&plan.volume)));
    }
    if !plan.straight_arm.is_empty() {
        let straight = joined(&plan.straight_arm);
        out.push(format!("straight-arm sets a week: {straight}"));
    }
    if plan.push + plan.pull > 0 {
        let (push, pull) = (plan.push, plan.pull);
        out.push(format!("pushing sets a week {push}, pulling sets {pull}"));
    }
    out
}

/// The plan as a page of its own, to print.
fn page(curriculum: &Curriculum, a: &Answer, today: Day) -> String {
    use crate::site::escape;
    let mut out = format!(
        "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Plan: {name}</title>\n<style>body {{ font: 11pt/1.4 sans-serif; margin: 2rem; }} table {{ border-collapse: collapse; width: 100%; margin-block: 1rem; }} th, td {{ border: 1px solid #999; padding: 0.3rem 0.5rem; text-align: start; }} tr {{ break-inside: avoid; }} @page {{ margin: 15mm; }}</style></head>\n<body><h1>{name}</h1><p>{school}, from {today}. {CAREFUL}</p>\n",
        name = escape(&a.person.name),
        school = escape(&curriculum.school.name),
    );
    let list = |out: &mut String, title: &str, lines: &[String]| {
        let _ = write!(out, "<h2>{title}</h2>\n<ul>");
        for line in lines {
            let _ = write!(out, "<li>{}</li>", escape(line));
        }
        out.push_str("</ul>\n");
    };
    let line = |ix, p: &Prescription, why: &str| {
        format!(
            "{}: {} ({why})",
            report::named(curriculum, ix),
            p.words(curriculum, ix)
        )
    };
    for (before, title) in [
        (true, "Skill practice, before"),
        (false, "Skill practice, after"),
    ] {
        let practice = a.working.practice.iter().filter(|p| p.before == before);
        let lines: Vec<String> = practice
            .map(|p| line(p.movement, &p.prescription, p.why))
            .collect();
        if !lines.is_empty() {
            list(&mut out, title, &lines);
        }
    }
    let picks = a.working.picks.iter();
    let lines: Vec<String> = picks
        .map(|p| line(p.movement, &p.prescription, &p.why))
        .collect();
    list(&mut out, "Working sets", &lines);
    list(&mut out, "A week", &volumes(&a.plan));
    for week in &a.plan.weeks {
        let lighter = if week.lighter { ", lighter" } else { "" };
        let _ = write!(
            out,
            "<h2>Week {}{lighter}</h2>\n<table><thead><tr><th>Movement</th>",
            week.number
        );
        for session in &week.sessions {
            let _ = write!(out, "<th>{}</th>", session.on);
        }
        out.push_str("</tr></thead><tbody>\n");
        for (i, (ix, _)) in week
            .sessions
            .first()
            .map_or(&[][..], |s| &s.sets)
            .iter()
            .enumerate()
        {
            let _ = write!(
                out,
                "<tr><th>{}</th>",
                escape(&report::named(curriculum, *ix))
            );
            for session in &week.sessions {
                let _ = write!(
                    out,
                    "<td>{} ☐</td>",
                    escape(&session.sets[i].1.words(curriculum, *ix))
                );
            }
            out.push_str("</tr>\n");
        }
        out.push_str("</tbody></table>\n");
    }
    let _ = writeln!(
        out,
        "<p>Test again from {}.</p></body></html>",
        a.plan.retest
    );
    out
}
