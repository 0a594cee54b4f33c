//! `proof`: everything that is wrong with a curriculum, in one run.

use super::{Common, Form, Status, report};
use crate::io::{self, Error};
use crate::proof::proofread;
use serde_json::json;

#[derive(clap::Args)]
pub struct Options {
    #[command(flatten)]
    common: Common,
    /// Let warnings count like errors
    #[arg(long)]
    strict: bool,
}

pub fn run(options: &Options) -> Result<Status, Error> {
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
