//! The program: arguments in, exit status out.

use clap::Parser;
use rungbook::command::{Arguments, run};
use std::process::ExitCode;

fn main() -> ExitCode {
    run(Arguments::parse()).into()
}
