//! `rehearse`: the site shown while the coach writes. Every save is proofread; the last good site stays while something is wrong.

use super::{Status, report};
use crate::io::{self, Error, Preview, Serving, Watch};
use crate::proof::proofread;
use crate::site::audit::{Auditor, Fault};
use crate::site::{Plan, Theme};
use rayon::prelude::*;
use std::path::{Path, PathBuf};
use std::time::Instant;

#[derive(clap::Args)]
pub struct Options {
    /// The curriculum's folder
    #[arg(long, value_name = "DIR", default_value = ".")]
    from: PathBuf,
    /// The port on the loopback address (0: any that is free)
    #[arg(long, value_name = "N", default_value_t = 4630)]
    port: u16,
}

pub fn run(options: &Options) -> Result<Status, Error> {
    let mut watch = Watch::new(&options.from)?;
    let serving = Serving::start(options.port)?;
    anstream::println!("Rehearsing on {} (end it with Ctrl-C)", serving.address);
    loop {
        let started = Instant::now();
        let preview = build(&options.from);
        let seconds = started.elapsed().as_secs_f64();
        match (preview.trouble.is_empty(), preview.files.len()) {
            (true, count) => anstream::println!("{count} files, {seconds:.2} s"),
            (false, _) => anstream::eprintln!("The last good site stays until this is mended."),
        }
        serving.show(preview);
        if !watch.saved() {
            return Ok(Status::Failed);
        }
    }
}

/// The whole site in memory, or what keeps it from being shown.
fn build(from: &Path) -> Preview {
    let trouble = |text: String| {
        anstream::eprintln!("{text}");
        Preview {
            trouble: text,
            ..Preview::default()
        }
    };
    let snapshot = match io::snapshot(from) {
        Ok(snapshot) => snapshot,
        Err(error) => return trouble(error.to_string()),
    };
    let proof = proofread(&snapshot);
    let findings = report::texts(&proof.findings, &snapshot);
    if !findings.is_empty() {
        anstream::eprintln!("{findings}");
    }
    if proof.findings.has_errors() {
        return Preview {
            trouble: findings,
            ..Preview::default()
        };
    }
    let rendered = Theme::load(&proof.curriculum.school.theme, &snapshot).and_then(|theme| {
        let plan = Plan::new(&proof, &snapshot, &theme)?;
        (0..plan.len())
            .into_par_iter()
            .map(|i| plan.render(i))
            .collect::<Result<Vec<_>, _>>()
    });
    let files = match rendered {
        Ok(files) => files,
        Err(error) => return trouble(error.to_string()),
    };
    let auditor = Auditor::new(&proof.curriculum);
    let faults: Vec<Fault> = files
        .par_iter()
        .flat_map_iter(|f| auditor.file(&f.path, &f.bytes))
        .collect();
    if let Some(first) = faults.first() {
        return trouble(format!(
            "a movement with a caution is named without its mark\n{first}"
        ));
    }
    Preview {
        files: files.into_iter().map(|f| (f.path, f.bytes)).collect(),
        trouble: String::new(),
    }
}
