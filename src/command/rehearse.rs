//! `rehearse`: the site shown while the coach writes. Every save is proofread; the last good site stays while something is wrong.

use super::{Status, report, since};
use crate::io::{self, Error, Saved, Serving, Shown, Stopwatch, Told, Watch};
use crate::site::{self, Outcome};
use crate::source::{Content, FileId, Findings, Rule, Severity, Snapshot, SourceFile};
use std::collections::HashSet;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

#[derive(clap::Args)]
pub struct Options {
    /// The curriculum's folder
    #[arg(long, value_name = "DIR", default_value = ".")]
    from: PathBuf,
    /// The port on the loopback address (0: any that is free)
    #[arg(long, value_name = "N", default_value_t = 4630)]
    port: u16,
}

const THEMES: &str = "themes/";

impl Shown for Outcome {
    fn file(&self, path: &str) -> Option<Result<Vec<u8>, String>> {
        Outcome::file(self, path)
    }
}

pub fn run(options: &Options) -> Result<Status, Error> {
    let mut watch = Watch::new(&options.from)?;
    let serving = Serving::start(options.port)?;
    anstream::println!("Rehearsing on {} (end it with Ctrl-C)", serving.address);
    let mut stage = Stage {
        from: &options.from,
        serving: Arc::new(serving),
        latest: None,
        newest: Arc::default(),
        doubtful: false,
        untried: Arc::default(),
    };
    stage.open(Stopwatch::start());
    while let Some(saved) = watch.saved() {
        stage.saved(&saved);
    }
    Ok(Status::Failed)
}

struct Stage<'a> {
    from: &'a Path,
    serving: Arc<Serving>,
    /// The folder as it was read last, good or not; `None` when it could not be read.
    latest: Option<Arc<Outcome>>,
    /// Counts what was shown: who works for an earlier state says nothing of it.
    newest: Arc<AtomicUsize>,
    /// The theme as it stands was at fault, or something else was when it came.
    doubtful: bool,
    /// The first site's theme was not tried to its end.
    untried: Arc<AtomicBool>,
}

/// When one page of each kind is made, so that a theme at fault is known.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Trial {
    /// The theme is as it was.
    Never,
    /// The theme may be another: the last good site stays until this one is known to be good.
    Before,
    /// No other site could stay.
    Afterwards,
}

/// What a save comes to.
enum Change {
    /// Other content in files that were there before; none when a file was saved as it was.
    Files(Vec<(FileId, Content)>),
    /// Files came or went.
    Folder,
}

impl Stage<'_> {
    /// Reads the whole folder.
    fn open(&mut self, started: Stopwatch) {
        match io::snapshot(self.from) {
            Ok(snapshot) => {
                let trial = match &self.latest {
                    None => Trial::Afterwards,
                    Some(latest) if same_themes(latest.snapshot(), &snapshot) => Trial::Never,
                    Some(_) => Trial::Before,
                };
                self.show(
                    site::build(&snapshot, &site::Options::default()),
                    trial,
                    started,
                );
            }
            Err(error) => {
                self.latest = None;
                self.refuse(error.to_string());
            }
        }
    }

    fn saved(&mut self, saved: &Saved) {
        let started = saved.first.unwrap_or_else(Stopwatch::start);
        let Some(latest) = self.latest.clone() else {
            return self.open(started);
        };
        match self.change(&latest, saved) {
            Change::Folder => self.open(started),
            Change::Files(files) if files.is_empty() => {}
            Change::Files(files) => {
                let is_theme =
                    |(f, _): &(FileId, Content)| latest.snapshot().path(*f).starts_with(THEMES);
                let trial = match files.iter().any(is_theme) {
                    true => Trial::Before,
                    false => Trial::Never,
                };
                self.show(latest.changed(files), trial, started);
            }
        }
    }

    fn change(&self, latest: &Outcome, saved: &Saved) -> Change {
        if saved.folders {
            return Change::Folder;
        }
        let snapshot = latest.snapshot();
        let mut files = Vec::new();
        for full in &saved.paths {
            let Some(path) = io::path_within(self.from, full) else {
                return Change::Folder;
            };
            let content = io::content_now(self.from, &path);
            match (snapshot.find(&path), content) {
                (Some(file), Some(content)) => {
                    if snapshot.file(file).is_some_and(|f| f.content != content) {
                        files.push((file, content));
                    }
                }
                (None, None) if !snapshot.has_folder(&path) => {}
                _ => return Change::Folder,
            }
        }
        Change::Files(files)
    }

    /// Shows the site, or says why the last good one stays.
    fn show(&mut self, site: Outcome, trial: Trial, started: Stopwatch) {
        let trial = match trial {
            _ if self.doubtful => Trial::Before,
            Trial::Never if self.untried.load(Ordering::Relaxed) => Trial::Afterwards,
            trial => trial,
        };
        let afterwards = trial == Trial::Afterwards;
        self.untried.store(afterwards, Ordering::Relaxed);
        let before = self.latest.take();
        let said: HashSet<(_, &str)> = before.iter().flat_map(|b| known(b)).collect();
        let (snapshot, findings) = (site.snapshot(), &site.proof().findings);
        let errors = findings.has_errors();
        let news = findings
            .iter()
            .filter(|f| errors || !said.contains(&(f.rule, f.message.as_str())));
        let text = report::some(news, snapshot);
        if !text.is_empty() {
            anstream::eprintln!("{text}\n\n{}", report::counted(findings));
        }
        let mut told = as_shown(findings, snapshot);
        if !errors {
            let proof = site.proof();
            told.changes = match since::differences(proof, snapshot) {
                Ok(all) => since::list(&all, &proof.curriculum, proof.curriculum.words()),
                Err(found) => report::some(found.iter(), snapshot),
            };
        }
        if !errors
            && trial == Trial::Before
            && let Err(error) = site.try_out()
        {
            anstream::eprintln!("{error}");
            told.errors = error.to_string();
        }
        self.doubtful = trial != Trial::Never && !told.errors.is_empty();
        let site = Arc::new(site);
        self.latest = Some(Arc::clone(&site));
        if !told.errors.is_empty() {
            return self.refuse_told(told);
        }
        self.serving.show(Arc::clone(&site) as Arc<dyn Shown>, told);
        let number = self.newest.fetch_add(1, Ordering::Relaxed) + 1;
        self.prepare(site, trial, number, started);
    }

    /// Makes what pages need, beside the watching: who saves meanwhile does not wait for it. It is shown when that is done.
    fn prepare(&self, site: Arc<Outcome>, trial: Trial, number: usize, started: Stopwatch) {
        let (newest, serving) = (Arc::clone(&self.newest), Arc::clone(&self.serving));
        let untried = Arc::clone(&self.untried);
        let work = move || {
            let is_newest = || newest.load(Ordering::Relaxed) == number;
            // A fault is said in the place of the page.
            if let Ok(renderer) = site.renderer()
                && is_newest()
            {
                renderer.prepare();
            }
            if is_newest() {
                let spent = started.milliseconds();
                anstream::println!("Shown after {spent:.1} ms");
            }
            if trial != Trial::Afterwards || !is_newest() {
                return;
            }
            let tried = site.try_out();
            if !is_newest() {
                return;
            }
            untried.store(false, Ordering::Relaxed);
            if let Err(error) = tried {
                anstream::eprintln!("{error}");
                serving.trouble(Told {
                    errors: error.to_string(),
                    ..Told::default()
                });
            }
        };
        std::thread::spawn(work);
    }

    fn refuse(&self, trouble: String) {
        anstream::eprintln!("{trouble}");
        self.refuse_told(Told {
            errors: trouble,
            ..Told::default()
        });
    }

    fn refuse_told(&self, told: Told) {
        self.serving.trouble(told);
        anstream::eprintln!("The last good site stays until this is mended.");
    }
}

/// Every file of every theme is the same.
fn same_themes(before: &Snapshot, after: &Snapshot) -> bool {
    let of = |snapshot: &Snapshot| -> Vec<SourceFile> {
        let files = snapshot.files().map(|(_, file)| file);
        files
            .filter(|f| f.path.starts_with(THEMES))
            .cloned()
            .collect()
    };
    of(before) == of(after)
}

/// The findings as a page shows them.
fn as_shown(findings: &Findings, snapshot: &Snapshot) -> Told {
    let of = |severity: Severity| {
        report::some(
            findings.iter().filter(|f| f.severity() == severity),
            snapshot,
        )
    };
    Told {
        errors: of(Severity::Error),
        warnings: of(Severity::Warning),
        changes: String::new(),
        counted: report::counted(findings),
    }
}

fn known(site: &Outcome) -> impl Iterator<Item = (Rule, &str)> {
    let findings = site.proof().findings.iter();
    findings.map(|f| (f.rule, f.message.as_str()))
}
