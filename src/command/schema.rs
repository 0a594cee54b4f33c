//! `schema NAME`: the JSON Schema of a file kind.

use super::{Status, report};
use crate::curriculum::schema::{KINDS, schema};
use crate::io::Error;
use crate::source::suggest::{did_you_mean, listed};

#[derive(clap::Args)]
pub struct Options {
    /// school, cautions, movement, family, skill, ledger, results, words or data
    #[arg(value_name = "NAME")]
    name: String,
}

pub fn run(options: &Options) -> Result<Status, Error> {
    if let Some(schema) = schema(&options.name) {
        report::answer(&schema);
        return Ok(Status::Done);
    }
    let names: Vec<&str> = KINDS.iter().map(|k| k.0).collect();
    let help = did_you_mean(&options.name, names.iter().copied())
        .unwrap_or_else(|| format!("name one of {}", listed(&names, "or")));
    anstream::eprintln!("rungbook: there is no file kind `{}`: {help}", options.name);
    Ok(Status::Failed)
}
