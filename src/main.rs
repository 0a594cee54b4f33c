//! The program: arguments in, exit status out.

use clap::Parser;
use rungbook::command::{Arguments, run};
use std::process::ExitCode;

fn main() -> ExitCode {
    run(Arguments::parse()).into()
}

/// Pages are made of many small pieces; this allocator takes a fifth of the time off a large publish.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;
