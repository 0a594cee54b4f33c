//! `completions SHELL`.

use super::{Arguments, Status};
use crate::io::Error;
use clap::CommandFactory;
use clap_complete::Shell;

#[derive(clap::Args)]
pub struct Options {
    shell: Shell,
}

pub fn run(options: &Options) -> Result<Status, Error> {
    clap_complete::generate(
        options.shell,
        &mut Arguments::command(),
        "rungbook",
        &mut std::io::stdout(),
    );
    Ok(Status::Done)
}
