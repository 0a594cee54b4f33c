//! `proof`: everything that is wrong with a curriculum, in one run.

use super::{Common, Form, Status, report};
use crate::io::{self, Error};
use crate::proof::proofread;
use crate::source::Rule;
use serde_json::json;

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
}

pub fn run(options: &Options) -> Result<Status, Error> {
    if options.rules {
        rules(options.common.form);
        return Ok(Status::Done);
    }
    let snapshot = io::snapshot(&options.common.from)?;
    let proofread = proofread(&snapshot);
    let findings = &proofread.findings;
    match options.common.form {
        Form::Json => report::answer(&json!({ "findings": report::json(findings, &snapshot) })),
        Form::Text => {
            report::print(findings, &snapshot);
            if findings.is_empty() {
                let curriculum = &proofread.curriculum;
                anstream::println!(
                    "Nothing found: {} movements, {} families, {} skills, {} notes.",
                    curriculum.len(),
                    curriculum.families().count(),
                    curriculum.skills().count(),
                    curriculum.notes().count()
                );
            }
        }
    }
    Ok(report::status(findings, options.strict))
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
