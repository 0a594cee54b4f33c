//! `assess RESULTS...`: one verdict for each client and what they come to together; with `--all` every movement and the reason.

mod all;
mod answer;

use super::{Common, Form, Status, dose, report};
use crate::chain::{self, Route};
use crate::curriculum::{Curriculum, Day, Leaf, MovementIx, Owner};
use crate::io::{self, Error};
use crate::morning::{Standing, Telling, Verdict, class, verdict};
use crate::proof::{Proofread, proofread};
use crate::readiness::{self, Evidence, First, Readiness, State, Steps};
use crate::results::{self, Goal as Chosen, Person};
use crate::site::printed_histories;
use crate::source::suggest::did_you_mean;
use crate::source::{Findings, Snapshot, legible};
use crate::training::{Roster, Say};
use crate::words::Words;
use answer::Answering;
use rayon::prelude::*;
use serde_json::Value;
use std::collections::HashMap;
use std::path::{Path, PathBuf};

#[derive(clap::Args)]
pub struct Options {
    /// Results files, or a folder of them: YAML or JSON for one client, CSV for a class
    #[arg(value_name = "RESULTS", required = true)]
    results: Vec<PathBuf>,
    #[command(flatten)]
    common: Common,
    /// Only what stands under this skill or movement, taken as each client's goal, with the route to it
    #[arg(long, value_name = "ID")]
    skill: Option<String>,
    /// The day of the assessment, such as 2026-11-25 (default: today)
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    today: Option<Day>,
    /// Print every movement with its state and the reason
    #[arg(long)]
    all: bool,
    /// People as given, or first who needs a look first
    #[arg(long, value_name = "ORDER", default_value = "given")]
    by: Order,
    /// Write everybody's lines and the drawings of their histories as a page into this file
    #[arg(long, value_name = "FILE")]
    page: Option<PathBuf>,
    /// Tell as new what is not in this file, which an earlier `--save` wrote (default: what is newer than the test before)
    #[arg(long, value_name = "FILE")]
    since: Option<PathBuf>,
    /// Keep in this file what everybody has shown until today, for `--since`
    #[arg(long, value_name = "FILE")]
    save: Option<PathBuf>,
}

#[derive(Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
enum Order {
    Given,
    Need,
}

/// A client's answer.
struct Answer {
    person: Person,
    readiness: Readiness,
    verdict: Verdict,
    /// What comes first for each movement whose foundations are not shown.
    first: HashMap<MovementIx, First>,
    route: Option<Route>,
}

/// What is asked of every client.
struct Asked<'a> {
    proof: &'a Proofread,
    roster: &'a Roster<'a>,
    goal: Option<(Leaf, Chosen)>,
    rows: Vec<MovementIx>,
    since: Option<Standing>,
    today: Day,
    /// The reasons of every movement too.
    whole: bool,
}

pub fn run(options: &Options) -> Result<Status, Error> {
    let snapshot = io::snapshot(&options.common.from)?;
    let proof = proofread(&snapshot);
    if report::is_no_curriculum(&proof.findings, &snapshot, options.common.form) {
        return Ok(Status::AtFault);
    }
    let today = options.today.unwrap_or_else(io::today);
    let curriculum = &proof.curriculum;
    let asked = options.skill.as_ref().map(|id| chosen(curriculum, id));
    let goal = match asked.transpose() {
        Ok(goal) => goal,
        Err(why) => {
            anstream::eprintln!("rungbook: {why}");
            return Ok(Status::Failed);
        }
    };
    let files = io::results(&options.results)?;
    let (people, found) = results::read(&files, curriculum, today);
    let roster = Roster::new(curriculum, &proof.resolved.stages);
    let mut since = None;
    if let Some(path) = &options.since {
        since = standing(path, curriculum)?;
        if since.is_none() {
            no_standing(path, Say::of(&roster).words);
            return Ok(Status::Failed);
        }
    }
    let asked = Asked {
        proof: &proof,
        roster: &roster,
        rows: rows(&proof, goal.as_ref().map(|g| &g.0)),
        goal,
        since,
        today,
        whole: options.all || options.common.form == Form::Json,
    };
    let mut answers: Vec<Answer> = people.into_par_iter().map(|p| asked.of(p)).collect();
    if options.by == Order::Need {
        answers.sort_by_cached_key(|a| a.verdict.need());
    }
    if let Some(path) = &options.page
        && !write_page(path, &snapshot, &asked, &answers)?
    {
        return Ok(Status::AtFault);
    }
    if let Some(path) = &options.save {
        let people = answers.iter().map(|a| &a.person);
        io::replace(path, &Standing::text(people, curriculum, today))?;
    }
    match options.common.form {
        Form::Json => print_json(&asked, &answers, &snapshot, &files, &found),
        Form::Text => {
            report::print_errors(&proof.findings, &snapshot, &options.common.from);
            print_text(&asked, &answers, options.all, (&files, &found));
        }
    }
    Ok(worst(&proof.findings, &found))
}

/// What `--skill` names, as a goal and as a person chooses it; why there is none.
fn chosen(curriculum: &Curriculum, id: &str) -> Result<(Leaf, Chosen), String> {
    let found = goal(curriculum, id).and_then(|g| Ok((g, dose::asked(curriculum, id)?)));
    found.map_err(|help| format!("no skill or movement has the id `{id}`{help}"))
}

/// The page of histories; whether the theme could make it.
fn write_page(
    path: &Path,
    snapshot: &Snapshot,
    asked: &Asked<'_>,
    answers: &[Answer],
) -> Result<bool, Error> {
    let people: Vec<_> = answers.iter().map(|a| (&a.person, &a.verdict)).collect();
    let made = printed_histories(snapshot, asked.roster, &people, asked.today);
    if let Err(why) = &made {
        anstream::eprintln!("rungbook: {why}");
    }
    let Ok(text) = made else {
        return Ok(false);
    };
    io::replace(path, &text)?;
    Ok(true)
}

/// The answers in words, below what was found in the results.
fn print_text(
    asked: &Asked<'_>,
    answers: &[Answer],
    all: bool,
    (files, found): (&Snapshot, &Findings),
) {
    if asked.proof.findings.has_errors() {
        anstream::eprintln!("The curriculum has errors; this is the answer for what stands.");
    }
    report::print(found, files);
    let curriculum = &asked.proof.curriculum;
    match all {
        true => anstream::print!(
            "{}",
            all::text(curriculum, answers, &asked.rows, asked.today)
        ),
        false => anstream::print!("{}", text(asked, answers)),
    }
}

/// Tells that a file is no saved standing.
fn no_standing(path: &Path, words: &Words) {
    let file = path.to_string_lossy();
    let said = words.fill("morning.no_standing", &[("file", file.as_ref().into())]);
    anstream::eprintln!("rungbook: {}", legible(&said));
}

/// What a file says was seen; `None` where it is no saved standing.
fn standing(path: &Path, curriculum: &Curriculum) -> Result<Option<Standing>, Error> {
    let files = io::results(&[path.to_path_buf()])?;
    let text = files.files().next().map_or("", |(id, _)| files.text(id));
    Ok(Standing::read(text, curriculum))
}

impl Asked<'_> {
    fn of(&self, person: Person) -> Answer {
        let (curriculum, stages) = (&self.proof.curriculum, &self.proof.resolved.stages);
        let readiness = readiness::assess(curriculum, stages, &person, self.today);
        let asked = self.goal.as_ref().map(|g| g.1);
        let verdict = verdict(
            self.roster,
            &person,
            &readiness,
            asked,
            &self.rows,
            self.since.as_ref().and_then(|s| s.of(&person.name)),
            self.today,
        );
        let goal = self.goal.as_ref().filter(|_| self.whole);
        Answer {
            first: match self.whole {
                true => first(self.proof, &person, &readiness, &self.rows, self.today),
                false => HashMap::new(),
            },
            route: goal.and_then(|g| {
                let evidence = Evidence::new(curriculum, &person, self.today);
                readiness::client_route(&evidence, &g.0)
            }),
            verdict,
            readiness,
            person,
        }
    }
}

/// The answers' verdicts, without the people they are of.
fn verdicts(answers: &[Answer]) -> impl Iterator<Item = &Verdict> + Clone {
    answers.iter().map(|a| &a.verdict)
}

fn print_json(
    asked: &Asked<'_>,
    answers: &[Answer],
    snapshot: &Snapshot,
    files: &Snapshot,
    found: &Findings,
) {
    let mut findings = report::json(&asked.proof.findings, snapshot);
    if let (Value::Array(all), Value::Array(more)) = (&mut findings, report::json(found, files)) {
        all.extend(more);
    }
    let answering = Answering {
        say: Say::of(asked.roster),
        rows: &asked.rows,
        today: asked.today,
    };
    let class = class(asked.roster, verdicts(answers));
    report::answer(&answering.whole(answers, &class, findings));
}

/// At most five lines a client, then the class.
fn text(asked: &Asked<'_>, answers: &[Answer]) -> String {
    let telling = Telling::new(asked.roster, asked.today);
    let names: Vec<&str> = answers.iter().map(|a| a.person.name.as_str()).collect();
    let width = names.iter().map(|n| n.chars().count()).max().unwrap_or(0);
    let mut lines: Vec<String> = Vec::new();
    for a in answers {
        lines.extend(telling.person(&a.verdict, &a.person, width));
        lines.push(String::new());
    }
    if answers.len() > 1 {
        lines.extend(telling.class(&class(asked.roster, verdicts(answers)), &names));
        lines.push(String::new());
    }
    lines.push(telling.careful());
    lines.join("\n") + "\n"
}

/// The first steps to the movements that a client may not try yet.
fn first(
    proof: &Proofread,
    person: &Person,
    readiness: &Readiness,
    rows: &[MovementIx],
    today: Day,
) -> HashMap<MovementIx, First> {
    let steps = Steps::new(&proof.curriculum, &proof.resolved.stages, person, today);
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
    let (curriculum, stages) = (&proof.curriculum, &proof.resolved.stages);
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
