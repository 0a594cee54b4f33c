//! `proof`: everything that is wrong with a curriculum, in one run.

use super::{Common, Form, Status, report, since};
use crate::curriculum::Day;
use crate::io::{self, Error};
use crate::proof::{Proofread, proofread};
use crate::source::{Rule, Snapshot};
use serde_json::json;
use std::path::{Path, PathBuf};

#[derive(clap::Args)]
pub struct Options {
    #[command(flatten)]
    common: Common,
    /// Let warnings count like errors
    #[arg(long)]
    strict: bool,
    /// List every rule with what it says, instead of reading a curriculum
    #[arg(long)]
    rules: bool,
    /// Tell whose states and plans would change since the last publish, of the people whose results lie here; nothing is written
    #[arg(long, value_name = "DIR")]
    people: Option<PathBuf>,
    /// The folder of the site that was published last (default: publish_to in school.yaml, else `site`)
    #[arg(long, value_name = "DIR", requires = "people")]
    to: Option<PathBuf>,
    /// The day on which the people are looked at, such as 2026-11-25 (default: today)
    #[arg(long, value_name = "DATE", requires = "people", value_parser = super::day)]
    today: Option<Day>,
}

pub fn run(options: &Options) -> Result<Status, Error> {
    if options.rules {
        rules(options.common.form);
        return Ok(Status::Done);
    }
    let snapshot = io::snapshot(&options.common.from)?;
    let proofread = proofread(&snapshot);
    let findings = &proofread.findings;
    if let Some(folder) = &options.people {
        return people(options, folder, &proofread, &snapshot);
    }
    match options.common.form {
        Form::Json => report::answer(&json!({ "findings": report::json(findings, &snapshot) })),
        Form::Text => {
            report::print(findings, &snapshot);
            if findings.is_empty() {
                let curriculum = &proofread.curriculum;
                let count = |n: usize, one: &str, more: &str| match n {
                    1 => format!("1 {one}"),
                    n => format!("{n} {more}"),
                };
                anstream::println!(
                    "Nothing found: {}, {}, {}, {}.",
                    count(curriculum.len(), "movement", "movements"),
                    count(curriculum.families().count(), "family", "families"),
                    count(curriculum.skills().count(), "skill", "skills"),
                    count(curriculum.notes().count(), "note", "notes")
                );
            }
        }
    }
    Ok(report::status(findings, options.strict))
}

/// The findings, what became other since the last publish, and whom that reaches.
fn people(
    options: &Options,
    folder: &Path,
    proof: &Proofread,
    snapshot: &Snapshot,
) -> Result<Status, Error> {
    let (curriculum, findings) = (&proof.curriculum, &proof.findings);
    let to = super::publish::place(&options.common.from, options.to.as_deref(), curriculum);
    let mut found = findings.clone();
    let all = since::differences(proof, snapshot).unwrap_or_else(|bad| {
        found.extend(bad);
        Vec::new()
    });
    let today = options.today.unwrap_or_else(io::today);
    let people = since::people(folder, &to, proof, snapshot, today)?;
    match options.common.form {
        Form::Json => report::answer(&json!({
            "findings": report::json(&found, snapshot), "changes": since::json(&all, curriculum), "people": people.json(),
        })),
        Form::Text => {
            report::print(&found, snapshot);
            let list = since::list(&all, curriculum, curriculum.words());
            if !list.is_empty() {
                anstream::println!("{list}");
            }
            people.print(&to, curriculum.words());
        }
    }
    Ok(report::status(&found, options.strict))
}

/// Every rule by name, with its weight and one sentence.
fn rules(form: Form) {
    match form {
        Form::Json => {
            let rule = |rule: &Rule| json!({ "rule": rule.name(), "severity": rule.severity().word(), "says": rule.says() });
            let all: Vec<_> = Rule::ALL.iter().map(rule).collect();
            report::answer(&json!({ "rules": all, "findings": [] }));
        }
        Form::Text => {
            for rule in Rule::ALL {
                let severity = rule.severity().word();
                anstream::println!("{:22} {severity:8} {}", rule.name(), rule.says());
            }
        }
    }
}
