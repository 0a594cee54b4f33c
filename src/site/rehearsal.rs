//! The site while it is written: proofread after each change, each page made when somebody looks at it.
//!
//! What a page shows is what [`Plan`] makes of the same folder; nothing is kept from before a change but what cannot differ.

use crate::proof::{Proofread, proofread, proofread_again};
use crate::reading::Again;
use crate::site::audit::Auditor;
use crate::site::theme::Theme;
use crate::site::theme::ThemeError;
use crate::site::theme::link::Links;
use crate::site::{Parts, Plan};
use crate::source::{Content, FileId, Snapshot};
use std::sync::{Arc, OnceLock};

/// More changes at once than this are read as a whole folder.
const ONE_BY_ONE: usize = 8;

/// A folder as it stands, and everything that its site is made of.
pub struct Rehearsal {
    snapshot: Snapshot,
    proof: Proofread,
    theme: Result<Arc<Theme>, ThemeError>,
    /// Shared with what differs in the text of notes alone: who comes second waits for the first, and makes nothing twice.
    parts: Arc<OnceLock<Result<Arc<Parts>, ThemeError>>>,
    /// The rendered names from before a change that left them alone.
    links: Option<Arc<Links>>,
    auditor: OnceLock<Arc<Auditor>>,
}

impl Rehearsal {
    /// Proofreads a whole folder.
    pub fn new(snapshot: Snapshot) -> Rehearsal {
        let proof = proofread(&snapshot);
        let theme = Theme::load(
            &proof.curriculum.school.theme,
            &snapshot,
            &proof.curriculum.words,
        )
        .map(Arc::new);
        Rehearsal {
            snapshot,
            proof,
            theme,
            parts: Arc::default(),
            links: None,
            auditor: OnceLock::new(),
        }
    }

    /// The folder after some of its files changed; none came and none went.
    pub fn changed(&self, files: Vec<(FileId, Content)>) -> Rehearsal {
        self.changed_and_how(files).0
    }

    /// As [`Rehearsal::changed`], and whether only the changed files had to be read.
    pub fn changed_and_how(&self, files: Vec<(FileId, Content)>) -> (Rehearsal, bool) {
        let one_by_one = files.len() <= ONE_BY_ONE;
        let mut now: Option<Rehearsal> = None;
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
            _ => (Rehearsal::new(snapshot), false),
        }
    }

    fn again(&self, snapshot: Snapshot, file: FileId) -> Option<Rehearsal> {
        let (proof, again) = proofread_again(&self.proof, &snapshot, file)?;
        let (before, after) = (&self.proof.curriculum, &proof.curriculum);
        // What is read anew keeps its id and its name.
        let marks_stay = before
            .movements()
            .zip(after.movements())
            .all(|((_, a), (_, b))| a.cautions == b.cautions);
        let links = match (self.parts.get(), marks_stay) {
            (Some(Ok(parts)), true) => Some(Arc::clone(&parts.links)),
            (None, true) => self.links.clone(),
            _ => None,
        };
        let auditor = match marks_stay {
            true => self.auditor.clone(),
            false => OnceLock::new(),
        };
        let parts = match again {
            // Nothing in them depends on the text of a note.
            Again::Note(_) => Arc::clone(&self.parts),
            Again::Movement(_) => Arc::default(),
        };
        Some(Rehearsal {
            snapshot,
            proof,
            theme: self.theme.clone(),
            parts,
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

    /// The site, if its theme can be loaded.
    ///
    /// # Errors
    /// When the theme is at fault.
    pub fn plan(&self) -> Result<Plan<'_>, ThemeError> {
        let theme = self.theme.as_ref().map_err(Clone::clone)?;
        let parts = self
            .parts
            .get_or_init(|| Parts::with_links(&self.proof, theme, self.links.clone()).map(Arc::new))
            .clone()?;
        Ok(Plan::with(&self.proof, &self.snapshot, theme, parts))
    }

    /// Makes what several pages need, and one page of each kind, so that a template at fault is known before it is shown.
    ///
    /// # Errors
    /// When the theme is at fault.
    pub fn try_out(&self) -> Result<(), ThemeError> {
        let plan = self.plan()?;
        plan.prepare();
        plan.one_of_each_kind()
            .into_iter()
            .try_for_each(|i| plan.render(i).map(drop))
    }

    /// The file at a path of the site, read back by the cautions audit; what is wrong with it as text. `None` when the site has
    /// no such file.
    pub fn file(&self, path: &str) -> Option<Result<Vec<u8>, String>> {
        let plan = match self.plan() {
            Ok(plan) => plan,
            Err(error) => return Some(Err(error.to_string())),
        };
        let made = plan.render(plan.position(path)?);
        Some(made.map_err(|e| e.to_string()).and_then(|file| {
            let auditor = self
                .auditor
                .get_or_init(|| Arc::new(Auditor::new(&self.proof.curriculum)));
            let faults = auditor.file(path, &file.bytes);
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
