//! The command line: one file for each command. Arguments come in, answers go out; everything between is elsewhere.

mod assess;
mod chain;
mod completions;
mod dose;
mod proof;
mod publish;
mod rehearse;
mod rename;
pub mod report;
mod schema;
mod since;
mod start;
mod weigh;

use crate::curriculum::Day;
use crate::io;
use clap::{Parser, Subcommand, ValueEnum};
use std::path::PathBuf;

const ABOUT: &str = "A folder of YAML movement definitions and Markdown coaching notes becomes a checked, cross-linked static site.";

const AFTER: &str = "Not medical advice. With pain, illness, pregnancy or an injury, ask a licensed clinician first. Learn inverted and loaded work under a qualified coach. Local rules come first.

Example:
  rungbook start my-curriculum
  rungbook proof --from my-curriculum
  rungbook publish --from my-curriculum";

/// What was typed.
#[derive(Parser)]
#[command(name = "rungbook", version, about = ABOUT, after_help = AFTER)]
pub struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Make a new curriculum folder that publishes as it stands
    #[command(after_help = "Example:\n  rungbook start my-curriculum")]
    Start(start::Options),
    /// Proofread the whole curriculum and list everything found
    #[command(after_help = "Example:\n  rungbook proof --strict --from my-curriculum")]
    Proof(proof::Options),
    /// Proofread, then write the site
    #[command(after_help = "Example:\n  rungbook publish --to public --note \"Ring dips added\"")]
    Publish(publish::Options),
    /// Show the site while you write: every save is proofread and shown
    #[command(after_help = "Example:\n  rungbook rehearse --from my-curriculum")]
    Rehearse(rehearse::Options),
    /// Show everything under a skill or a movement, in stages
    #[command(after_help = "Example:\n  rungbook chain slow-way-down")]
    Chain(chain::Options),
    /// Read clients' results: for each what is next, what is new and what to watch; with `--all` every movement and why
    #[command(
        after_help = "Examples:\n  rungbook assess ana.yaml\n  rungbook assess --by need results/\n  rungbook assess --all --skill slow-way-down ana.yaml ben.json"
    )]
    Assess(assess::Options),
    /// Pick today's working sets from a client's results, and a plan over weeks
    #[command(after_help = "Example:\n  rungbook dose ana.yaml --skill slow-way-down")]
    Dose(dose::Options),
    /// Give a movement, family or skill another id in every file; the old one stays under `was`
    #[command(after_help = "Example:\n  rungbook rename shoulder-pull shoulder-lift")]
    Rename(rename::Options),
    /// Hold the curriculum against what people did: needs, weeks and standards, with the lines to change
    #[command(after_help = "Example:\n  rungbook weigh results/*.json")]
    Weigh(weigh::Options),
    /// Print the JSON Schema of a file kind, for editors
    #[command(after_help = "Example:\n  rungbook schema movement > movement.schema.json")]
    Schema(schema::Options),
    /// Print completions for a shell
    #[command(
        after_help = "Example:\n  rungbook completions bash > ~/.local/share/bash-completion/completions/rungbook"
    )]
    Completions(completions::Options),
}

/// Which curriculum, and how to answer.
#[derive(clap::Args)]
struct Common {
    /// The curriculum's folder
    #[arg(long, value_name = "DIR", default_value = ".")]
    from: PathBuf,
    /// Answer in words, or as JSON on standard output
    #[arg(long = "as", value_name = "FORM", default_value = "text")]
    form: Form,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Form {
    Text,
    Json,
}

/// A day on the command line.
fn day(text: &str) -> Result<Day, String> {
    Day::read(text).ok_or_else(|| "it is not a day; write it like 2026-11-25".to_string())
}

/// How a command ended; the process says it by its exit status.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// 0
    Done,
    /// 1: the curriculum is at fault; the findings were printed.
    AtFault,
    /// 2: the command line, the disk or the machine is.
    Failed,
}

impl From<Status> for std::process::ExitCode {
    fn from(status: Status) -> std::process::ExitCode {
        std::process::ExitCode::from(status as u8)
    }
}

/// Runs what was typed.
pub fn run(arguments: Arguments) -> Status {
    let done = match arguments.command {
        Command::Start(options) => start::run(&options),
        Command::Proof(options) => proof::run(&options),
        Command::Publish(options) => publish::run(&options),
        Command::Rehearse(options) => rehearse::run(&options),
        Command::Chain(options) => chain::run(&options),
        Command::Assess(options) => assess::run(&options),
        Command::Dose(options) => dose::run(&options),
        Command::Rename(options) => rename::run(&options),
        Command::Weigh(options) => weigh::run(&options),
        Command::Schema(options) => schema::run(&options),
        Command::Completions(options) => completions::run(&options),
    };
    done.unwrap_or_else(|error: io::Error| {
        anstream::eprintln!("rungbook: {error}");
        Status::Failed
    })
}
