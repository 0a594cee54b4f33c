//! `publish`: proofread, make every page, write, read back, swap in.

use super::{Common, Form, Status, report};
use crate::curriculum::{Curriculum, Day};
use crate::io::{self, Error, Outcome, Stopwatch};
use crate::site::audit::Fault;
use crate::site::{self, ThemeError};
use crate::source::{Findings, Snapshot, legible};
use serde_json::json;
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
    /// Record what changed in the ledger, with these words
    #[arg(long, value_name = "WORDS", value_parser = some_words)]
    note: Option<String>,
    /// The day for the ledger, such as 2026-11-25 (default: today)
    #[arg(long, value_name = "DATE", requires = "note", value_parser = super::day)]
    today: Option<Day>,
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

pub fn run(options: &Options) -> Result<Status, Error> {
    let started = Stopwatch::start();
    let from = &options.common.from;
    let mut snapshot = io::snapshot(from)?;
    let mut built = site::build(&snapshot, &site::Options::default());
    let proof = built.proof();
    let status = report::status(&proof.findings, options.strict);
    if options.common.form == Form::Text {
        report::print(&proof.findings, &snapshot);
    }
    if status != Status::Done {
        match options.common.form {
            Form::Json => report::answer(
                &json!({ "published": false, "findings": report::json(&proof.findings, &snapshot) }),
            ),
            Form::Text => anstream::eprintln!("Nothing was published."),
        }
        return Ok(status);
    }
    let ledger = options
        .note
        .as_ref()
        .map(|words| ledger(options, words, &proof.curriculum));
    if let Some(text) = &ledger {
        snapshot = snapshot.with_text(LEDGER, text);
        built = site::build(&snapshot, &site::Options::default());
    }
    let proof = built.proof();
    let to = options.to.clone().unwrap_or_else(|| {
        from.join(
            proof
                .curriculum
                .school
                .publish_to
                .as_deref()
                .unwrap_or("site"),
        )
    });
    let named = options.to.is_some();
    let done = write(&built, from, (&to, named), ledger.as_deref());
    let status = answer(options, done, &to, started, &proof.findings, &snapshot);
    // The process ends: taking thousands of records apart would only take time.
    std::mem::forget((built, snapshot));
    status
}

fn answer(
    options: &Options,
    done: Result<Outcome, Refusal>,
    to: &Path,
    started: Stopwatch,
    findings: &Findings,
    snapshot: &Snapshot,
) -> Result<Status, Error> {
    match done {
        Ok(outcome) => {
            tell(options.common.form, &outcome, to, started, || {
                report::json(findings, snapshot)
            });
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
fn ledger(options: &Options, words: &str, curriculum: &Curriculum) -> String {
    let today = options.today.unwrap_or_else(io::today).to_string();
    let ledger = curriculum.ledger.with_entry(curriculum, &today, words);
    ledger.to_yaml()
}

/// Makes, writes and reads back every file in parallel, then writes the ledger and swaps the site in. The site's folder comes
/// with whether the user named it.
fn write(
    built: &site::Outcome,
    from: &Path,
    (to, named): (&Path, bool),
    ledger: Option<&str>,
) -> Result<Outcome, Refusal> {
    let curriculum = &built.proof().curriculum;
    let site = built.site()?;
    let paths = site.paths();
    let progress = Progress::new(paths.len());
    let folder = io::Site::begin(io::Asked {
        from,
        target: to,
        named,
        school: &curriculum.school.address,
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
            .words
            .fill("guard.scripts", &[("list", (&list).into())]);
        anstream::eprintln!("{line}");
    }
    std::mem::forget(site);
    let path = from.join(LEDGER);
    let ledger = ledger.map(|text| (path.as_path(), text));
    Ok(folder.finish(written.hashes, ledger)?)
}

fn tell(
    form: Form,
    outcome: &Outcome,
    to: &Path,
    started: Stopwatch,
    findings: impl FnOnce() -> serde_json::Value,
) {
    let seconds = started.seconds();
    match form {
        Form::Json => report::answer(&json!({
            "published": true, "to": to.to_string_lossy(), "files": outcome.files, "written": outcome.written(),
            "new": outcome.new, "changed": outcome.changed, "removed": outcome.removed, "kept": outcome.kept,
            "seconds": (seconds * 1000.0).round() / 1000.0, "findings": findings(),
        })),
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
