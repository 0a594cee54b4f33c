//! `rename OLD NEW`: a record's id in every file, the old one kept under `was`.

use super::{Form, Status, report};
use crate::io::{self, Error};
use crate::proof::proofread;
use crate::rename;
use crate::words::Value;
use serde_json::json;
use std::path::PathBuf;

#[derive(clap::Args)]
pub struct Options {
    /// The id as it is
    #[arg(value_name = "OLD")]
    old: String,
    /// The id as it shall be
    #[arg(value_name = "NEW")]
    new: String,
    /// The curriculum's folder
    #[arg(long, value_name = "DIR", default_value = ".")]
    from: PathBuf,
    /// Answer in words, or as JSON on standard output
    #[arg(long = "as", value_name = "FORM", default_value = "text")]
    form: Form,
}

pub fn run(options: &Options) -> Result<Status, Error> {
    let snapshot = io::snapshot(&options.from)?;
    let proof = proofread(&snapshot);
    if report::is_no_curriculum(&proof.findings, &snapshot, options.form) {
        return Ok(Status::AtFault);
    }
    let renamed = match rename::rename(&snapshot, &proof, &options.old, &options.new) {
        Ok(renamed) => renamed,
        Err(refusal) => {
            match options.form {
                Form::Json => report::answer(
                    &json!({ "renamed": false, "why": refusal.why, "help": refusal.help, "findings": [] }),
                ),
                Form::Text => {
                    anstream::eprintln!("rungbook: {}\n  {}", refusal.why, refusal.help);
                }
            }
            return Ok(Status::AtFault);
        }
    };
    let before = |path: &String| snapshot.find(path).map_or("", |file| snapshot.text(file));
    let texts: Vec<(&str, &str, &str)> = renamed
        .texts
        .iter()
        .map(|(path, text)| (path.as_str(), before(path), text.as_str()))
        .collect();
    io::change(&options.from, &texts, &renamed.moves)?;
    match options.form {
        Form::Json => report::answer(&json!({
            "renamed": true, "places": renamed.places, "files": renamed.texts.keys().collect::<Vec<_>>(),
            "moved": renamed.moves, "findings": [],
        })),
        Form::Text => {
            let words = proof.curriculum.words();
            let values = [
                ("before", options.old.as_str().into()),
                ("now", options.new.as_str().into()),
                ("places", Value::Whole(renamed.places as i64)),
                ("files", Value::Whole(renamed.texts.len() as i64)),
            ];
            anstream::println!("{}", words.fill("rename.done", &values));
            for (from, to) in &renamed.moves {
                anstream::println!("  {from} -> {to}");
            }
        }
    }
    Ok(Status::Done)
}
