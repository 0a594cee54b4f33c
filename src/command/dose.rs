//! `dose RESULTS`: what to train today and why, and the plan over weeks.

use super::assess::worst;
use super::{Common, Form, Status, report};
use crate::curriculum::target::ONE;
use crate::curriculum::words::Word;
use crate::curriculum::{Curriculum, Day, Mass, MovementIx, Owner};
use crate::io::{self, Error};
use crate::proof::proofread;
use crate::results::{self, Goal as Chosen, Person};
use crate::site::printed_plan;
use crate::source::Snapshot;
use crate::strength::load::{WeekLoad, last_week};
use crate::strength::{self, Estimate};
use crate::training::{self, Gap, Line, Retest, Roster, Say, Session, Side, Training, Unit};
use crate::words::Value as Put;
use serde_json::{Map, Value, json};
use std::fmt::Write;
use std::path::PathBuf;

#[derive(clap::Args)]
pub struct Options {
    /// A client's results, YAML or JSON
    #[arg(value_name = "RESULTS")]
    results: PathBuf,
    #[command(flatten)]
    common: Common,
    /// Train for this skill or movement, whatever the results say
    #[arg(long, value_name = "ID")]
    skill: Option<String>,
    /// The first day of the plan, such as 2026-11-25 (default: today)
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    today: Option<Day>,
    /// Print the whole plan, not only today's session
    #[arg(long)]
    weeks: bool,
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
    /// The goal by its id, chosen or nearest.
    goal: Option<String>,
    chosen: bool,
    training: Training,
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
    let asked = match &options.skill {
        Some(id) => match asked(curriculum, id) {
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
    let roster = Roster::new(curriculum, &proof.resolved.stages);
    let say = Say::of(&roster);
    let answers: Vec<Answer> = people
        .into_iter()
        .map(|person| answer_for(&roster, person, asked, today))
        .collect();
    if let Some(status) = write_files(options, &snapshot, &say, &answers)? {
        return Ok(status);
    }
    match options.common.form {
        Form::Json => {
            let mut findings = report::json(&proof.findings, &snapshot);
            if let (Value::Array(all), Value::Array(more)) =
                (&mut findings, report::json(&found, &files))
            {
                all.extend(more);
            }
            report::answer(&whole(&say, &answers, findings));
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
                anstream::print!("{}", text(&say, a, options.weeks));
            }
        }
    }
    Ok(worst(&proof.findings, &found))
}

/// The answer for programs: that of the first client, and of all where there are several.
fn whole(say: &Say<'_>, answers: &[Answer], findings: Value) -> Value {
    let first = answers.first().map(|a| answer(say, a));
    let mut out = first.unwrap_or_else(|| json!({ "sessions": [] }));
    if answers.len() > 1 {
        out["people"] = answers.iter().map(|a| answer(say, a)).collect();
    }
    out["findings"] = findings;
    out
}

/// The skill or movement that was asked for, by old ids too.
pub(super) fn asked(curriculum: &Curriculum, id: &str) -> Result<Chosen, String> {
    let leaf = super::assess::goal(curriculum, id)?;
    let renamed = || {
        let owner = curriculum.old_ids().find(|(old, _)| *old == id);
        owner.map(|(_, owner)| owner)
    };
    Ok(match curriculum.find(id).or_else(renamed) {
        Some(Owner::Skill(ix)) => Chosen::Skill(ix),
        _ => Chosen::Movement(leaf.movement),
    })
}

pub(super) fn id_of(curriculum: &Curriculum, goal: Chosen) -> String {
    match goal {
        Chosen::Skill(ix) => curriculum.skill(ix).id.to_string(),
        Chosen::Movement(ix) => curriculum.movement(ix).id().to_string(),
    }
}

fn answer_for(roster: &Roster<'_>, person: Person, asked: Option<Chosen>, today: Day) -> Answer {
    let curriculum = roster.curriculum;
    let training = training::train(roster, &person, asked, today);
    let chosen = asked.or(person.goal);
    let goal = chosen.or(training.goal.as_ref().map(|g| g.of));
    Answer {
        goal: goal.map(|g| id_of(curriculum, g)),
        chosen: chosen.is_some(),
        training,
        estimates: strength::estimates(curriculum, &person, today),
        load: last_week(&person.sessions, today),
        person,
    }
}

/// Writes calendar and page; a status where the theme or the audit stands against it.
fn write_files(
    options: &Options,
    snapshot: &Snapshot,
    say: &Say<'_>,
    answers: &[Answer],
) -> Result<Option<Status>, Error> {
    let files_too = options.calendar.is_some() || options.page.is_some();
    if let [one, _, ..] = answers
        && files_too
    {
        let (name, n) = (&one.person.name, answers.len());
        anstream::eprintln!("rungbook: the plan is written for {name}, the first of {n} people");
    }
    let Some(one) = answers.first() else {
        return Ok(None);
    };
    if let Some(path) = &options.calendar {
        let text = training::calendar::calendar(say, &one.training, &one.person.name);
        io::replace(path, &text)?;
    }
    if let Some(path) = &options.page {
        match printed_plan(snapshot, say, &one.training, &one.person) {
            Ok(text) => io::replace(path, &text)?,
            Err(why) => {
                anstream::eprintln!("rungbook: {why}");
                return Ok(Some(Status::AtFault));
            }
        }
    }
    Ok(None)
}

fn answer(say: &Say<'_>, a: &Answer) -> Value {
    let t = &a.training;
    let id = |ix: MovementIx| say.roster.curriculum.movement(ix).id().to_string();
    let ids = |list: &[MovementIx]| list.iter().map(|ix| id(*ix)).collect::<Vec<_>>();
    let limiter = t.limiter.map(|at| limiter(say, &t.gaps[at]));
    let conditions: Vec<String> = t.conditions.iter().map(|c| say.condition(*c)).collect();
    let kinds: Map<String, Value> = t
        .week_sets
        .iter()
        .map(|(kind, sets)| (Say::kind(*kind), json!(sets)))
        .collect();
    let day = |r: &Retest| json!({ "on": r.on.to_string(), "tests": ids(&r.tests) });
    let retest = t.retests.first().map(|first| {
        let mut out = day(first);
        out["later"] = t.retests.get(1).map_or(Value::Null, day);
        out
    });
    json!({
        "name": a.person.name, "today": t.today.to_string(),
        "goal": { "skill": a.goal, "chosen": a.chosen, "reached": t.is_reached() },
        "refused": t.refused.map(|why| json!({ "why": say.refusal(why, t.today) })),
        "clinician": say.clinician(&a.person, t.today), "conditions": conditions, "limiter": limiter,
        "sessions": t.sessions.iter().map(|s| session(say, t, s)).collect::<Vec<_>>(),
        "retest": retest, "week_sets": kinds,
        "estimate": true, "strength": strength(say, &a.estimates), "session_load": a.load.map(week_load),
    })
}

/// What holds back, as answers for programs say it.
pub(super) fn limiter(say: &Say<'_>, gap: &Gap) -> Value {
    let id = |ix: MovementIx| say.roster.curriculum.movement(ix).id().to_string();
    let opens: Vec<String> = gap.opens.iter().map(|ix| id(*ix)).collect();
    let (low, high) = gap.tenths_of_weeks();
    json!({
        "movement": id(gap.movement), "target": gap.target.to_string(), "got": gap.got.map(|g| g.to_string()),
        "weeks": [low as f64 / 10.0, high as f64 / 10.0], "opens": opens, "signal": say.signal(gap.movement),
        "until": gap.stop.as_ref().map(|s| json!({ "movement": id(s.at), "closed": id(s.by), "why": s.why.word() })),
    })
}

fn session(say: &Say<'_>, t: &Training, s: &Session) -> Value {
    let id = |ix: MovementIx| say.roster.curriculum.movement(ix).id().as_str();
    let left: Vec<Value> = s
        .left
        .iter()
        .map(|(ix, why)| json!({ "movement": id(*ix), "why": say.left(*why) }))
        .collect();
    json!({
        "on": s.on.to_string(), "week": s.week, "name": s.name.map(String::from).unwrap_or_default(), "lighter": s.lighter,
        "minutes": s.minutes, "warm_up": say.warm_up(s, t), "care": say.care_lines(s),
        "lines": s.lines.iter().map(|l| line(say, t, l)).collect::<Vec<_>>(),
        "left_out": left,
    })
}

fn line(say: &Say<'_>, t: &Training, l: &Line) -> Value {
    let id = |ix: MovementIx| say.roster.curriculum.movement(ix).id().as_str();
    let toward = l.gap.map(|at| {
        let gap = &t.gaps[at];
        json!({ "movement": id(gap.movement), "target": gap.target.to_string() })
    });
    let unit = match l.unit {
        Unit::Reps => "reps",
        Unit::Seconds => "s",
    };
    let side = l.sides.map(|s| match s.weaker_first {
        true => "weaker first",
        false => "each",
    });
    let weaker = l.sides.and_then(|s| s.weaker).map(|side| match side {
        Side::Left => "left",
        Side::Right => "right",
    });
    let m = say.roster.curriculum.movement(l.movement);
    let is_reps = l.unit == Unit::Reps;
    let tempo = m.tempo().filter(|_| is_reps).map(|t| t.to_string());
    let hold = m.hold().filter(|_| is_reps);
    let hold = hold.map(|h| format!("{} {}", h.at.word(), h.seconds));
    json!({
        "block": l.block.name(), "movement": id(l.movement), "signal": say.signal(l.movement), "sets": l.sets, "amount": l.amount,
        "unit": unit, "seconds_each": l.seconds_each.map(number), "tempo": tempo, "hold": hold, "with_kg": l.mass.map(Mass::kilograms), "side": side, "weaker": weaker,
        "rest_s": l.rest, "in_reserve": l.in_reserve, "minutes": l.minutes, "toward": toward,
        "instead_of": l.instead_of.map(id), "rule": l.rule.name(), "why": say.why(&l.why), "then": say.then(l),
    })
}

/// Millionths as a number, whole where it is.
pub(super) fn number(micro: i64) -> Value {
    match micro % ONE {
        0 => json!(micro / ONE),
        _ => json!(micro as f64 / ONE as f64),
    }
}

fn tenth(n: f64) -> f64 {
    (n * 10.0).round() / 10.0
}

fn hundredth(n: f64) -> f64 {
    (n * 100.0).round() / 100.0
}

fn week_load(l: WeekLoad) -> Value {
    json!({ "total": l.total.round(), "monotony": hundredth(l.monotony), "strain": l.strain.round() })
}

fn strength(say: &Say<'_>, estimates: &[Estimate]) -> Vec<Value> {
    let one = |e: &Estimate| {
        let max = e
            .one_rep_max
            .ok()
            .map(|(low, high)| [tenth(low), tenth(high)]);
        let relative = e
            .relative
            .map(|(low, high)| [hundredth(low), hundredth(high)]);
        json!({
            "movement": say.roster.curriculum.movement(e.movement).id().as_str(), "reps": e.reps, "moved_kg": tenth(e.moved),
            "one_rep_max_kg": max, "of_body_weight": relative, "refused": e.one_rep_max.err().map(|why| why.to_string()),
        })
    };
    estimates.iter().map(one).collect()
}

/// Today's session, one line a movement, or the whole plan.
fn text(say: &Say<'_>, a: &Answer, weeks: bool) -> String {
    let t = &a.training;
    let fill =
        |key: &str, values: &[(&str, Put<'_>)]| say.words.fill(&format!("training.{key}"), values);
    let clinician = say.clinician(&a.person, t.today).into_iter();
    let mut out: Vec<String> = clinician
        .map(|pain| format!("{}: {pain}", a.person.name))
        .collect();
    out.push(format!("{}, {}", a.person.name, t.today));
    if let Some(why) = t.refused {
        out.extend([say.refusal(why, t.today), say.say("careful")]);
        return out.join("\n") + "\n";
    }
    out.push(say.goal(t));
    out.extend(t.conditions.iter().map(|c| say.condition(*c)));
    out.extend(say.holds_back(t));
    let shown = if weeks { t.sessions.len() } else { 1 };
    for s in t.sessions.iter().take(shown) {
        out.push(say.head(s));
        let warm_up = say.warm_up(s, t);
        if !weeks && !warm_up.is_empty() {
            out.push(format!("  {}: {}", say.say("warm_up"), warm_up.join(" ")));
        }
        if !weeks {
            out.extend(
                say.care_lines(s)
                    .into_iter()
                    .map(|care| format!("  {care}")),
            );
        }
        out.extend(
            s.lines
                .iter()
                .map(|l| format!("  {}", line_text(say, t, l))),
        );
        out.extend(say.left_out(s).map(|left| format!("  {left}")));
    }
    for retest in t.retests.iter().filter(|r| !r.tests.is_empty()) {
        let tests: Vec<String> = retest.tests.iter().map(|ix| say.named(*ix)).collect();
        let (day, list) = (retest.on.to_string(), say.words.list(&tests));
        out.push(fill(
            "retest",
            &[("day", (&day).into()), ("list", (&list).into())],
        ));
    }
    if weeks {
        out.extend(estimates_text(say, a));
    }
    out.push(say.say("careful"));
    out.join("\n") + "\n"
}

/// A line: block, movement, sets, rest, minutes, what it works towards, its rule and reason.
fn line_text(say: &Say<'_>, t: &Training, l: &Line) -> String {
    let block = say.block(l);
    let mut out = format!(
        "{block:8} {}: {}, {}",
        say.named(l.movement),
        say.sets(l),
        say.rest(l)
    );
    let minutes = [("n", Put::Whole(l.minutes))];
    let _ = write!(
        out,
        " ({})",
        say.words.fill("training.line_minutes", &minutes)
    );
    if let Some(toward) = say.toward(l, t) {
        let _ = write!(out, ", {toward}");
    }
    let _ = write!(out, " [{}: {}]", say.rule(l), say.why_and_then(l));
    out
}

fn estimates_text(say: &Say<'_>, a: &Answer) -> Vec<String> {
    let mass = |n: f64| {
        let whole = Mass::of_kilograms(n.round() as i64);
        crate::curriculum::target::say_mass(whole, say.units, say.words)
    };
    let mut out = Vec::new();
    if !a.estimates.is_empty() {
        out.push(say.say("estimates"));
    }
    for e in &a.estimates {
        let (name, moved) = (say.named(e.movement), mass(e.moved));
        let (low, high) = e.one_rep_max.map_or_else(
            |_| (String::new(), String::new()),
            |(low, high)| (mass(low), mass(high)),
        );
        let values = [
            ("movement", Put::Text(&name)),
            ("moved", Put::Text(&moved)),
            ("reps", e.reps.into()),
            ("low", Put::Text(&low)),
            ("high", Put::Text(&high)),
        ];
        let key = match e.one_rep_max {
            Ok(_) => "training.estimate",
            Err(_) => "training.no_estimate",
        };
        out.push(format!("  {}", say.words.fill(key, &values)));
    }
    if let Some(l) = a.load {
        let micro = |n: f64| Put::Micro((hundredth(n) * ONE as f64).round() as i64);
        let values = [
            ("total", Put::Whole(l.total.round() as i64)),
            ("monotony", micro(l.monotony)),
            ("strain", Put::Whole(l.strain.round() as i64)),
        ];
        out.push(say.words.fill("training.week_load", &values));
    }
    out
}
