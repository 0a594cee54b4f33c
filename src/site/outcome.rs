//! The front door: a folder's site, for publishing, for rehearsing and for tests. Nobody else puts theme, plan and auditor together.
//!
//! [`build`] proofreads; everything else is made when it is asked for, once. After a change ([`Outcome::changed`]) nothing is kept
//! from before but what cannot differ.

use crate::curriculum::{Curriculum, Day};
use crate::morning::Verdict;
use crate::proof::{Proofread, proofread, proofread_again};
use crate::reading::Again;
use crate::results::Person;
use crate::site::audit::pieces::{Pieces, Verdicts};
use crate::site::audit::{Auditor, Fault};
use crate::site::feeds::tables;
use crate::site::material::{File, Kept, Material, Texts};
use crate::site::names::Links;
use crate::site::pages::history::Histories;
use crate::site::pages::plan::printed;
use crate::site::pages::{self, Rope};
use crate::site::renderer::Renderer;
use crate::site::theme::{Theme, ThemeError};
use crate::source::{Content, FileId, Snapshot};
use crate::training::{Roster, Say, Training};
use crate::weigh::Weighed;
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

/// More changes at once than this are read as a whole folder.
const ONE_BY_ONE: usize = 8;

/// How a site is made.
#[derive(Clone, Default)]
pub struct Options {
    /// A theme that is used whatever the school names; `None`: the school's own.
    pub theme: Option<Arc<Theme>>,
}

/// Made once, by who asks first; shared by those whose state cannot differ in it.
type Once<T> = Arc<OnceLock<Result<Arc<T>, ThemeError>>>;

/// A folder as it stands, and everything that its site is made of.
pub struct Outcome {
    snapshot: Snapshot,
    proof: Proofread,
    theme: Once<Theme>,
    /// Shared with what differs in the text of notes alone: who comes second waits for the first, and makes nothing twice.
    kept: Once<Kept>,
    texts: OnceLock<Texts>,
    /// The rendered names from before a change that left them alone.
    links: Option<Arc<Links>>,
    auditor: OnceLock<Arc<Auditor>>,
}

/// Proofreads a folder; its site can be asked of what comes back.
pub fn build(snapshot: &Snapshot, options: &Options) -> Outcome {
    let theme = OnceLock::new();
    if let Some(given) = &options.theme {
        theme.get_or_init(|| Ok(Arc::clone(given)));
    }
    Outcome {
        proof: proofread(snapshot),
        snapshot: snapshot.clone(),
        theme: Arc::new(theme),
        kept: Arc::default(),
        texts: OnceLock::new(),
        links: None,
        auditor: OnceLock::new(),
    }
}

impl Outcome {
    /// The folder after some of its files changed; none came and none went.
    pub fn changed(&self, files: Vec<(FileId, Content)>) -> Outcome {
        self.changed_and_how(files).0
    }

    /// As [`Outcome::changed`], and whether only the changed files had to be read.
    pub fn changed_and_how(&self, files: Vec<(FileId, Content)>) -> (Outcome, bool) {
        let one_by_one = files.len() <= ONE_BY_ONE;
        let mut now: Option<Outcome> = None;
        let mut whole = !one_by_one;
        let mut snapshot = self.snapshot.clone();
        for (file, content) in files {
            snapshot = snapshot.with(file, content);
            if !whole {
                let before = now.as_ref().unwrap_or(self);
                let after = before.again(snapshot.clone(), file);
                whole = after.is_none();
                now = after;
            }
        }
        match now {
            Some(now) if !whole => (now, true),
            _ => (build(&snapshot, &Options::default()), false),
        }
    }

    fn again(&self, snapshot: Snapshot, file: FileId) -> Option<Outcome> {
        let (proof, again) = proofread_again(&self.proof, &snapshot, file)?;
        let (before, after) = (&self.proof.curriculum, &proof.curriculum);
        // What is read anew keeps its id and its name.
        let marks_stay = before
            .movements()
            .zip(after.movements())
            .all(|((_, a), (_, b))| a.cautions() == b.cautions());
        let links = match (self.kept.get(), marks_stay) {
            (Some(Ok(kept)), true) => Some(Arc::clone(&kept.links)),
            (None, true) => self.links.clone(),
            _ => None,
        };
        let auditor = match marks_stay {
            true => self.auditor.clone(),
            false => OnceLock::new(),
        };
        let kept = match again {
            // Nothing in them depends on the text of a note.
            Again::Note(_) => Arc::clone(&self.kept),
            Again::Movement(_) => Arc::default(),
        };
        Some(Outcome {
            snapshot,
            proof,
            theme: Arc::clone(&self.theme),
            kept,
            texts: OnceLock::new(),
            links,
            auditor,
        })
    }

    pub fn snapshot(&self) -> &Snapshot {
        &self.snapshot
    }

    pub fn proof(&self) -> &Proofread {
        &self.proof
    }

    fn theme(&self) -> Result<&Arc<Theme>, ThemeError> {
        let load = || of_school(&self.proof.curriculum, &self.snapshot).map(Arc::new);
        self.theme.get_or_init(load).as_ref().map_err(Clone::clone)
    }

    /// The site, each file made when it is asked for.
    ///
    /// # Errors
    /// When the theme is at fault.
    pub fn renderer(&self) -> Result<Renderer<'_>, ThemeError> {
        self.material().map(Renderer::new)
    }

    fn material(&self) -> Result<Material<'_>, ThemeError> {
        let theme = self.theme()?;
        let kept = self.kept.get_or_init(|| {
            let curriculum = &self.proof.curriculum;
            let links = || match &self.links {
                Some(links) => Ok(Arc::clone(links)),
                None => Links::new(curriculum, theme).map(Arc::new),
            };
            let (links, _) = rayon::join(links, || self.proof.resolved.chains(curriculum));
            Ok(Arc::new(Kept::new(curriculum, links?)))
        });
        let kept = kept.as_ref().map_err(Clone::clone)?;
        let curriculum = &self.proof.curriculum;
        let texts = self.texts.get_or_init(|| Texts::new(curriculum));
        Ok(Material::new(
            &self.proof,
            &self.snapshot,
            theme,
            kept,
            texts,
        ))
    }

    /// The tables that the page's script looks up, as one object.
    ///
    /// # Errors
    /// When the theme is at fault.
    pub fn tables(&self) -> Result<serde_json::Value, ThemeError> {
        self.material().map(|site| tables::value(&site))
    }

    /// The site as a whole, for whoever writes all of it.
    ///
    /// # Errors
    /// When the theme is at fault.
    pub fn site(&self) -> Result<Site<'_>, ThemeError> {
        let (theme, auditor) =
            rayon::join(|| self.theme(), || Auditor::new(&self.proof.curriculum));
        theme?;
        let renderer = self.renderer()?;
        renderer.prepare();
        // The first page of all waits for the frame, else each would.
        let site = renderer.material();
        pages::frame(site)?;
        let verdicts = Verdicts::new(|kind| site.count(kind));
        Ok(Site {
            renderer,
            auditor,
            verdicts,
        })
    }

    /// Makes what several pages need, and one page of each kind, so that a template at fault is known before it is shown.
    ///
    /// # Errors
    /// When the theme is at fault.
    pub fn try_out(&self) -> Result<(), ThemeError> {
        let renderer = self.renderer()?;
        renderer.prepare();
        renderer
            .one_of_each_kind()
            .into_iter()
            .try_for_each(|i| renderer.render(i).map(drop))
    }

    /// Reads one file of the site back, as it would be written; every page is taken apart by itself.
    pub fn audit(&self, path: &str, bytes: &[u8]) -> Vec<Fault> {
        let auditor = self
            .auditor
            .get_or_init(|| Arc::new(Auditor::new(&self.proof.curriculum)));
        auditor.file(path, bytes)
    }

    /// The file at a path of the site, read back by the cautions audit; what is wrong with it as text. `None` when the site has
    /// no such file.
    pub fn file(&self, path: &str) -> Option<Result<Vec<u8>, String>> {
        let renderer = match self.renderer() {
            Ok(renderer) => renderer,
            Err(error) => return Some(Err(error.to_string())),
        };
        let made = renderer.render(renderer.position(path)?);
        Some(made.map_err(|e| e.to_string()).and_then(|file| {
            let faults = self.audit(path, &file.bytes);
            match faults.is_empty() {
                true => Ok(file.bytes),
                false => Err(faults
                    .iter()
                    .map(ToString::to_string)
                    .collect::<Vec<_>>()
                    .join("\n")),
            }
        }))
    }
}

/// The theme that the school names.
fn of_school(curriculum: &Curriculum, snapshot: &Snapshot) -> Result<Theme, ThemeError> {
    Theme::load(&curriculum.school().theme, snapshot, curriculum.words())
}

/// The plan of one client as a page of its own, read back as every page of the site is.
///
/// # Errors
/// When the theme is at fault, or the audit stands against the page; in words.
pub fn printed_plan(
    snapshot: &Snapshot,
    say: &Say<'_>,
    training: &Training,
    person: &Person,
) -> Result<String, String> {
    let curriculum = say.roster.curriculum;
    let theme = of_school(curriculum, snapshot).map_err(|e| e.to_string())?;
    let page = printed(say, &theme, training, person).map_err(|e| e.to_string())?;
    let faults = Auditor::new(curriculum).printed(&page.text, &page.style);
    faults.into_iter().next().map_or(Ok(page.text), Err)
}

/// What `assess` says of people as a page of its own, with their histories drawn.
///
/// # Errors
/// When the theme is at fault, or the audit stands against the page; in words.
pub fn printed_histories(
    snapshot: &Snapshot,
    roster: &Roster<'_>,
    people: &[(&Person, &Verdict)],
    today: Day,
) -> Result<String, String> {
    let theme = of_school(roster.curriculum, snapshot).map_err(|e| e.to_string())?;
    let of = Histories {
        roster,
        theme: &theme,
        today,
    };
    audited(roster.curriculum, of.page(people))
}

/// What `weigh` found as a page of its own.
///
/// # Errors
/// When the theme is at fault, or the audit stands against the page; in words.
pub fn printed_weighed(
    snapshot: &Snapshot,
    curriculum: &Curriculum,
    weighed: &Weighed,
) -> Result<String, String> {
    let theme = of_school(curriculum, snapshot).map_err(|e| e.to_string())?;
    audited(
        curriculum,
        pages::weighed::page(curriculum, &theme, weighed),
    )
}

fn audited(curriculum: &Curriculum, page: Result<String, ThemeError>) -> Result<String, String> {
    let text = page.map_err(|e| e.to_string())?;
    let faults = Auditor::new(curriculum).outside(text.as_bytes());
    faults.into_iter().next().map_or(Ok(text), Err)
}

/// Everything that a site holds, ready to be written.
pub struct Site<'a> {
    renderer: Renderer<'a>,
    auditor: Auditor,
    verdicts: Verdicts,
}

/// What was written: the hash of each file by its path, and what the audit says.
#[derive(Debug, Default)]
pub struct Written {
    pub hashes: BTreeMap<String, String>,
    /// Sorted.
    pub faults: Vec<Fault>,
}

impl Site<'_> {
    /// The path of every file.
    pub fn paths(&self) -> Vec<String> {
        self.renderer.paths()
    }

    /// The scripts of the theme, and its drawings that may hold some, which are the curriculum's own.
    pub fn own_scripts(&self) -> &[String] {
        self.renderer.material().theme.own_scripts()
    }

    /// Whether nothing is wrong with what was written, as the pieces of its rope tell for certain.
    fn is_sound(&self, file: &File, rope: Option<&Rope>, written: &[u8]) -> bool {
        let Some(rope) = rope.filter(|_| written == file.bytes) else {
            return false;
        };
        let find = |piece| self.renderer.material().piece(piece);
        let pieces = Pieces {
            find: &find,
            verdicts: &self.verdicts,
        };
        self.auditor.is_sound(&file.path, rope, written, pieces)
    }

    /// Every page with what its pieces tell of it, and what reading the whole of it finds, in the order of the paths: whether it is
    /// told to be sound, and its faults. For tests.
    ///
    /// # Errors
    /// When a template is at fault.
    pub fn both_ways(&self) -> Result<Vec<(String, bool, Vec<Fault>)>, ThemeError> {
        let read = |i: usize| {
            let (file, rope) = self.renderer.made(i)?;
            let sound = self.is_sound(&file, rope.as_ref(), &file.bytes);
            let faults = self.auditor.file(&file.path, &file.bytes);
            Ok((file.path, sound, faults))
        };
        let pages = (0..self.renderer.len()).filter(|i| self.renderer.is_page(*i));
        let mut all: Vec<_> = pages.map(read).collect::<Result<_, ThemeError>>()?;
        all.sort_by(|a, b| a.0.cmp(&b.0));
        Ok(all)
    }

    /// Makes every file, in parallel, and gives it to `put` with who reads it back: it answers with the hash of what it wrote
    /// and what the reader said. The worker comes last: its version covers the others.
    ///
    /// # Errors
    /// When a template is at fault, or `put` fails.
    pub fn write<E: From<ThemeError> + Send>(
        &self,
        put: impl Fn(&File, &dyn Fn(&[u8]) -> Vec<Fault>) -> Result<(String, Vec<Fault>), E> + Sync,
    ) -> Result<Written, E> {
        let renderer = &self.renderer;
        let last = renderer.last();
        let put = |i: usize| {
            let (file, rope) = renderer.made(i)?;
            let audit = |written: &[u8]| match self.is_sound(&file, rope.as_ref(), written) {
                true => Vec::new(),
                false => self.auditor.file(&file.path, written),
            };
            let (hash, faults) = put(&file, &audit)?;
            Ok((file.path, hash, faults))
        };
        let written: Result<Vec<(String, String, Vec<Fault>)>, E> = (0..renderer.len())
            .into_par_iter()
            // Each file may be taken by whoever is free: the large ones stand together at the front.
            .with_max_len(1)
            .filter(|i| *i != last)
            .map(put)
            .collect();
        let mut all = written?;
        renderer.wrote(
            all.iter()
                .map(|(path, hash, _)| (path.as_str(), hash.as_str())),
        );
        all.push(put(last)?);
        let mut out = Written::default();
        for (path, hash, found) in all {
            out.hashes.insert(path, hash);
            out.faults.extend(found);
        }
        out.faults.sort();
        Ok(out)
    }
}
