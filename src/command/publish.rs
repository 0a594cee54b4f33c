//! `publish`: proofread, make every page, write, read back, swap in.

use super::{Common, Form, Status, report};
use crate::curriculum::{Curriculum, Day};
use crate::io::{self, Error, Outcome};
use crate::proof::{Proofread, proofread};
use crate::site::audit::{Auditor, Fault};
use crate::site::{Plan, Theme, ThemeError};
use crate::source::{Findings, Snapshot, legible};
use rayon::prelude::*;
use serde_json::json;
use std::collections::BTreeMap;
use std::io::{IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Instant;

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
    let started = Instant::now();
    let from = &options.common.from;
    let mut snapshot = io::snapshot(from)?;
    let mut proof = proofread(&snapshot);
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
        proof = proofread(&snapshot);
    }
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
    let done = write(&proof, &snapshot, from, (&to, named), ledger.as_deref());
    let status = answer(options, done, &to, started, &proof.findings, &snapshot);
    // The process ends: taking thousands of records apart would only take time.
    std::mem::forget((proof, snapshot));
    status
}

fn answer(
    options: &Options,
    done: Result<Outcome, Refusal>,
    to: &Path,
    started: Instant,
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
    proof: &Proofread,
    snapshot: &Snapshot,
    from: &Path,
    (to, named): (&Path, bool),
    ledger: Option<&str>,
) -> Result<Outcome, Refusal> {
    let curriculum = &proof.curriculum;
    let (theme, mut auditor) = rayon::join(
        || Theme::load(&curriculum.school.theme, snapshot, &curriculum.words),
        || Auditor::new(curriculum),
    );
    let theme = theme?;
    let plan = Plan::new(proof, snapshot, &theme)?;
    auditor.know(&plan.names(), &plan.frame()?.parts());
    let site = io::Site::begin(io::Asked {
        from,
        target: to,
        named,
        school: &curriculum.school.address,
        paths: plan.paths(),
    })?;
    let progress = Progress::new(plan.len());
    let last = plan.last();
    let put = |i: usize| {
        let file = plan.render(i)?;
        let audit = |written: &[u8]| auditor.file(&file.path, written);
        let (hash, faults) = site.put(&file.path, &file.bytes, audit)?;
        progress.step();
        Ok((file.path, hash, faults))
    };
    let written: Result<Vec<(String, String, Vec<Fault>)>, Refusal> = (0..plan.len())
        .into_par_iter()
        // Each file may be taken by whoever is free: the large ones stand together at the front.
        .with_max_len(1)
        .filter(|i| *i != last)
        .map(put)
        .collect();
    let written = written.and_then(|mut all| {
        plan.wrote(
            all.iter()
                .map(|(path, hash, _)| (path.as_str(), hash.as_str())),
        );
        all.push(put(last)?);
        Ok(all)
    });
    progress.end();
    let mut hashes = BTreeMap::new();
    let mut faults = Vec::new();
    for (path, hash, found) in written? {
        hashes.insert(path, hash);
        faults.extend(found);
    }
    if !faults.is_empty() {
        faults.sort();
        return Err(Refusal::Cautions(faults));
    }
    if !theme.own_scripts().is_empty() {
        let list = theme.own_scripts().join(", ");
        let line = curriculum
            .words
            .fill("guard.scripts", &[("list", (&list).into())]);
        anstream::eprintln!("{line}");
    }
    std::mem::forget((plan, auditor));
    let path = from.join(LEDGER);
    Ok(site.finish(hashes, ledger.map(|text| (path.as_path(), text)))?)
}

fn tell(
    form: Form,
    outcome: &Outcome,
    to: &Path,
    started: Instant,
    findings: impl FnOnce() -> serde_json::Value,
) {
    let seconds = started.elapsed().as_secs_f64();
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
