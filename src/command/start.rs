//! `start DIR`: a new curriculum that publishes as it stands.

use super::Status;
use crate::io::{self, Error};
use crate::source::legible;
use std::path::PathBuf;

/// What it writes: paths and bytes.
const FIRST: &[(&str, &[u8])] = include!(concat!(env!("OUT_DIR"), "/first.rs"));

#[derive(clap::Args)]
pub struct Options {
    /// The folder to make
    #[arg(value_name = "DIR")]
    dir: PathBuf,
}

/// The files of a first curriculum: path and text.
pub fn files() -> Vec<(&'static str, &'static str)> {
    let text = |(path, bytes): &(&'static str, &'static [u8])| {
        let text = std::str::from_utf8(bytes).ok()?;
        Some((*path, text))
    };
    FIRST.iter().filter_map(text).collect()
}

pub fn run(options: &Options) -> Result<Status, Error> {
    io::create_folder(&options.dir, &files())?;
    let dir = legible(&options.dir.to_string_lossy()).into_owned();
    anstream::println!("Made a first curriculum in {dir}. Next:");
    anstream::println!("  cd {dir}");
    anstream::println!("  rungbook rehearse");
    anstream::println!(
        "then open the address that it prints, and change the files in content: the page follows each save."
    );
    anstream::println!("`rungbook publish` writes the site into site.");
    Ok(Status::Done)
}
