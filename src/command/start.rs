//! `start DIR`: a new curriculum that publishes as it stands.

use super::Status;
use crate::io::{self, Error};
use crate::source::legible;
use include_dir::{Dir, include_dir};
use std::path::PathBuf;

static FIRST: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/src/command/first");

#[derive(clap::Args)]
pub struct Options {
    /// The folder to make
    #[arg(value_name = "DIR")]
    dir: PathBuf,
}

/// The files of a first curriculum: path and text.
pub fn files() -> Vec<(&'static str, &'static str)> {
    fn collect(dir: &'static Dir<'static>, out: &mut Vec<(&'static str, &'static str)>) {
        out.extend(
            dir.files()
                .filter_map(|f| Some((f.path().to_str()?, f.contents_utf8()?))),
        );
        dir.dirs().for_each(|d| collect(d, out));
    }
    let mut out = Vec::new();
    collect(&FIRST, &mut out);
    out
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
