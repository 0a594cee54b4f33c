//! `publish`: proofread, make every page, write, read back, swap in.

use super::{Common, Form, Status, report, since};
use crate::changes::{self, Difference, STANDING};
use crate::curriculum::{Curriculum, Day};
use crate::io::{self, Error, Outcome, Stopwatch};
use crate::proof::Proofread;
use crate::site::audit::Fault;
use crate::site::{self, ThemeError};
use crate::source::{Findings, Snapshot, legible};
use crate::words::Words;
use serde_json::{Value, json};
use std::io::{IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};

const LEDGER: &str = "content/ledger.yaml";

#[derive(clap::Args)]
pub struct Options {
    #[command(flatten)]
    common: Common,
    /// The site's folder (default: publish_to in school.yaml, else `site`)
    #[arg(long, value_name = "DIR")]
    to: Option<PathBuf>,
    /// Refuse to publish with warnings
    #[arg(long)]
    strict: bool,
    /// Record what changed in the ledger, with these words; needed where something asks less of a body than the last publish
    #[arg(long, value_name = "WORDS", value_parser = some_words)]
    note: Option<String>,
    /// The day for the ledger, such as 2026-11-25 (default: today)
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    today: Option<Day>,
    /// Tell first whose states and plans would change, of the people whose results lie here; nothing of it is written
    #[arg(long, value_name = "DIR")]
    people: Option<PathBuf>,
}

/// Why no site was handed over though the curriculum is sound.
enum Refusal {
    Machine(Error),
    Theme(ThemeError),
    Cautions(Vec<Fault>),
}

/// A ledger entry without words would not be read again.
fn some_words(typed: &str) -> Result<String, &'static str> {
    match typed.trim() {
        "" => Err("say in some words what changed"),
        words => Ok(words.to_string()),
    }
}

impl From<Error> for Refusal {
    fn from(error: Error) -> Refusal {
        Refusal::Machine(error)
    }
}

impl From<ThemeError> for Refusal {
    fn from(error: ThemeError) -> Refusal {
        Refusal::Theme(error)
    }
}

/// Says that nothing was published.
fn kept_back(options: &Options, proof: &Proofread, snapshot: &Snapshot) {
    match options.common.form {
        Form::Json => report::answer(
            &json!({ "published": false, "findings": report::json(&proof.findings, snapshot) }),
        ),
        Form::Text => anstream::eprintln!("Nothing was published."),
    }
}

pub fn run(options: &Options) -> Result<Status, Error> {
    let started = Stopwatch::start();
    let from = &options.common.from;
    let mut snapshot = io::snapshot(from)?;
    let mut built = site::build(&snapshot, &site::Options::default());
    let proof = built.proof();
    let status = report::status(&proof.findings, options.strict);
    if options.common.form == Form::Text {
        // What keeps the site back is shown whole.
        match status {
            Status::Done => report::print_briefly(&proof.findings, &snapshot, from),
            _ => report::print(&proof.findings, &snapshot),
        }
    }
    if status != Status::Done {
        kept_back(options, proof, &snapshot);
        return Ok(status);
    }
    let to = place(from, options.to.as_deref(), &proof.curriculum);
    let changed = match changed(options, proof, &snapshot, &to)? {
        Ok(changed) => changed,
        Err(status) => return Ok(status),
    };
    let ledger = options
        .note
        .as_ref()
        .map(|words| ledger(options, words, &proof.curriculum, &changed.all));
    if let Some(text) = &ledger {
        snapshot = snapshot.with_text(LEDGER, text);
        built = site::build(&snapshot, &site::Options::default());
    }
    let proof = built.proof();
    let named = options.to.is_some();
    let standing = since::standing(&proof.curriculum, &snapshot);
    // With a note the ledger is written, and that it stands so now, or neither.
    let mut kept: Vec<(PathBuf, String)> = Vec::new();
    if let Some(text) = ledger {
        kept.push((from.join(LEDGER), text));
        kept.extend(standing.clone().map(|text| (from.join(STANDING), text)));
    }
    let done = write(&built, from, (&to, named), &kept);
    if done.is_ok() && kept.is_empty() {
        keep_standing(from, standing.as_deref(), proof.curriculum.words());
    }
    let status = answer(
        options,
        done,
        &to,
        started,
        &proof.findings,
        (&snapshot, &changed),
    );
    // The process ends: taking thousands of records apart would only take time.
    std::mem::forget((built, snapshot));
    status
}

/// Keeps what is compared at the next publish. The site stands: a folder that cannot be written is told, and no more.
fn keep_standing(from: &Path, standing: Option<&str>, words: &Words) {
    if let Some(text) = standing
        && let Err(error) = io::replace(&from.join(STANDING), text)
    {
        let why = error.to_string();
        let line = words.fill("since.not_kept", &[("why", (&why).into())]);
        anstream::eprintln!("{line}");
    }
}

/// The site's folder.
pub(super) fn place(from: &Path, to: Option<&Path>, curriculum: &Curriculum) -> PathBuf {
    let default = || from.join(curriculum.school().publish_to.as_deref().unwrap_or("site"));
    to.map_or_else(default, Path::to_path_buf)
}

/// What became other since the last publish, and whom it reaches.
struct Changed {
    all: Vec<Difference>,
    /// For programs: `changes`, and `people` where they were asked for.
    json: Value,
    /// Loosenings that stand beside the note, in words.
    noted: Option<String>,
}

/// Tells what became other; the status, where that needs a note and there is none.
fn changed(
    options: &Options,
    proof: &Proofread,
    snapshot: &Snapshot,
    to: &Path,
) -> Result<Result<Changed, Status>, Error> {
    let (form, curriculum) = (options.common.form, &proof.curriculum);
    let words = curriculum.words();
    let refused = |found: &Findings, all: &[Difference], people: &Value| {
        match form {
            Form::Json => report::answer(&json!({
                "published": false, "findings": report::json(found, snapshot), "changes": since::json(all, curriculum), "people": people,
            })),
            Form::Text => {
                report::print(found, snapshot);
                anstream::eprintln!("{}", words.say("since.refused"));
            }
        }
        Ok(Err(Status::AtFault))
    };
    let all = match since::differences(proof, snapshot) {
        Ok(all) => all,
        Err(found) => return refused(&found, &[], &Value::Null),
    };
    let people = match &options.people {
        Some(folder) => {
            let today = options.today.unwrap_or_else(io::today);
            let people = since::people(folder, to, proof, snapshot, today)?;
            if form == Form::Text {
                people.print(to, words);
            }
            people.json()
        }
        None => Value::Null,
    };
    let loosened = changes::loosenings(&all).count();
    if loosened > 0 && options.note.is_none() {
        return refused(&changes::refusal(&all, curriculum), &all, &people);
    }
    let mut json = json!({ "changes": since::json(&all, curriculum) });
    if options.people.is_some() {
        json["people"] = people;
    }
    let noted = (loosened > 0).then(|| words.fill("since.noted", &[("n", loosened.into())]));
    Ok(Ok(Changed { all, json, noted }))
}

fn answer(
    options: &Options,
    done: Result<Outcome, Refusal>,
    to: &Path,
    started: Stopwatch,
    findings: &Findings,
    (snapshot, changed): (&Snapshot, &Changed),
) -> Result<Status, Error> {
    match done {
        Ok(outcome) => {
            tell(options.common.form, &outcome, to, started, || {
                let mut more = changed.json.clone();
                more["findings"] = report::json(findings, snapshot);
                more
            });
            if let (Some(noted), Form::Text) = (&changed.noted, options.common.form) {
                anstream::println!("{noted}");
            }
            Ok(Status::Done)
        }
        Err(Refusal::Machine(error)) => Err(error),
        Err(Refusal::Theme(error)) => Ok(refuse(
            options.common.form,
            &[error.to_string()],
            "the theme is at fault",
        )),
        Err(Refusal::Cautions(faults)) => {
            let lines: Vec<String> = faults.iter().map(Fault::to_string).collect();
            Ok(refuse(
                options.common.form,
                &lines,
                "a movement with a caution is named without its mark",
            ))
        }
    }
}

fn refuse(form: Form, lines: &[String], why: &str) -> Status {
    match form {
        Form::Json => report::answer(
            &json!({ "published": false, "why": why, "faults": lines, "findings": [] }),
        ),
        Form::Text => {
            for line in lines.iter().take(20) {
                anstream::eprintln!("{line}");
            }
            if lines.len() > 20 {
                anstream::eprintln!("... and {} more", lines.len() - 20);
            }
            anstream::eprintln!("Nothing was published: {why}. The site is as it was.");
        }
    }
    Status::AtFault
}

/// The ledger with what changed since its last entry.
fn ledger(
    options: &Options,
    words: &str,
    curriculum: &Curriculum,
    changed: &[Difference],
) -> String {
    let today = options.today.unwrap_or_else(io::today).to_string();
    let mut ledger = curriculum.ledger().with_entry(curriculum, &today, words);
    if let Some(entry) = ledger.entries.last_mut() {
        changes::note(entry, changed);
    }
    ledger.to_yaml()
}

/// Makes, writes and reads back every file in parallel, then writes the ledger and swaps the site in. The site's folder comes
/// with whether the user named it.
fn write(
    built: &site::Outcome,
    from: &Path,
    (to, named): (&Path, bool),
    kept: &[(PathBuf, String)],
) -> Result<Outcome, Refusal> {
    let curriculum = &built.proof().curriculum;
    let site = built.site()?;
    let paths = site.paths();
    let progress = Progress::new(paths.len());
    let folder = io::Site::begin(io::Asked {
        from,
        target: to,
        named,
        school: &curriculum.school().address,
        paths,
    })?;
    let written = site.write(|file, audit| {
        let put = folder.put(&file.path, &file.bytes, audit)?;
        progress.step();
        Ok::<_, Refusal>(put)
    });
    progress.end();
    let written = written?;
    if !written.faults.is_empty() {
        return Err(Refusal::Cautions(written.faults));
    }
    if !site.own_scripts().is_empty() {
        let list = site.own_scripts().join(", ");
        let line = curriculum
            .words()
            .fill("guard.scripts", &[("list", (&list).into())]);
        anstream::eprintln!("{line}");
    }
    std::mem::forget(site);
    Ok(folder.finish(written.hashes, kept)?)
}

fn tell(
    form: Form,
    outcome: &Outcome,
    to: &Path,
    started: Stopwatch,
    more: impl FnOnce() -> Value,
) {
    let seconds = started.seconds();
    match form {
        Form::Json => {
            let mut out = json!({
            "published": true, "to": to.to_string_lossy(), "files": outcome.files, "written": outcome.written(),
            "new": outcome.new, "changed": outcome.changed, "removed": outcome.removed, "kept": outcome.kept,
            "seconds": (seconds * 1000.0).round() / 1000.0,
            });
            if let (Value::Object(out), Value::Object(more)) = (&mut out, more()) {
                out.extend(more);
            }
            report::answer(&out);
        }
        Form::Text => {
            anstream::println!(
                "Published {} files to {}: {} new, {} changed, {} removed. {:.2} s.",
                outcome.files,
                legible(&to.to_string_lossy()),
                outcome.new.len(),
                outcome.changed.len(),
                outcome.removed.len(),
                seconds
            );
            if !outcome.kept.is_empty() {
                anstream::println!(
                    "Kept, not written by this program: {}.",
                    legible(&outcome.kept.join(", "))
                );
            }
        }
    }
}

/// One line that counts, on a terminal only.
struct Progress {
    done: AtomicUsize,
    total: usize,
    shown: bool,
}

impl Progress {
    fn new(total: usize) -> Progress {
        Progress {
            done: AtomicUsize::new(0),
            total,
            shown: std::io::stderr().is_terminal(),
        }
    }

    fn step(&self) {
        let done = self.done.fetch_add(1, Ordering::Relaxed) + 1;
        if self.shown && done.is_multiple_of(256) {
            let _ = write!(std::io::stderr(), "\r{done} of {} files", self.total);
        }
    }

    fn end(&self) {
        if self.shown {
            let _ = write!(std::io::stderr(), "\r\x1b[K");
        }
    }
}
