//! Watching a curriculum's folder: one call that returns what was saved when the saving has come to rest.

use super::Error;
use super::Stopwatch;
use notify::event::{AccessKind, AccessMode, CreateKind, EventKind, ModifyKind, RemoveKind};
use notify::{Event, RecommendedWatcher, RecursiveMode, Watcher};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, channel};
use std::time::{Duration, Instant};

/// Saving has come to rest when nothing happened for so long; an editor's one save is several events.
const QUIET: Duration = Duration::from_millis(15);
/// A writer that never rests is not waited for longer.
const MOST: Duration = Duration::from_millis(500);
/// A folder that vanished is looked for again this often.
const AGAIN: Duration = Duration::from_millis(300);

/// Watches `content/` and `themes/` below a folder, and the folder itself for them to come back.
pub struct Watch {
    from: PathBuf,
    watcher: RecommendedWatcher,
    events: Receiver<(Instant, notify::Result<Event>)>,
}

impl Watch {
    /// # Errors
    /// When the folder cannot be watched.
    pub fn new(from: &Path) -> Result<Watch, Error> {
        let (send, events) = channel();
        let watcher =
            notify::recommended_watcher(move |event| drop(send.send((Instant::now(), event))))
                .map_err(|e| Error::new("watch", from, e))?;
        let mut watch = Watch {
            from: from.to_path_buf(),
            watcher,
            events,
        };
        watch.watch().map_err(|e| Error::new("watch", from, e))?;
        Ok(watch)
    }

    fn watch(&mut self) -> notify::Result<()> {
        self.watcher
            .watch(&self.from, RecursiveMode::NonRecursive)?;
        for part in ["content", "themes"] {
            let path = self.from.join(part);
            if path.is_dir() {
                self.watcher.watch(&path, RecursiveMode::Recursive)?;
            }
        }
        Ok(())
    }

    /// Waits until something was saved. `None` when watching has ended.
    pub fn saved(&mut self) -> Option<Saved> {
        let mut saved = Saved::default();
        loop {
            match self.events.recv() {
                Ok((at, event)) if matters(&event) => {
                    saved.first = Some(Stopwatch::since(at));
                    saved.note(event);
                    break;
                }
                Ok(_) => {}
                Err(_) => return None,
            }
        }
        let first = Instant::now();
        while first.elapsed() < MOST
            && let Ok((_, event)) = self.events.recv_timeout(QUIET)
        {
            if matters(&event) {
                saved.note(event);
            }
        }
        // Folders that were renamed, or vanished and came back, are watched anew.
        if saved.folders {
            while self.watch().is_err() {
                std::thread::sleep(AGAIN);
            }
        }
        Some(saved)
    }
}

/// What was saved.
#[derive(Clone, Debug, Default)]
pub struct Saved {
    pub paths: BTreeSet<PathBuf>,
    /// A folder came, went or was renamed, or events were lost: anything may have changed.
    pub folders: bool,
    /// When the first of it happened.
    pub first: Option<Stopwatch>,
}

impl Saved {
    fn note(&mut self, event: notify::Result<Event>) {
        let Ok(event) = event else {
            self.folders = true;
            return;
        };
        self.folders |= event.paths.is_empty()
            || event.need_rescan()
            || matches!(
                event.kind,
                EventKind::Create(CreateKind::Folder) | EventKind::Remove(RemoveKind::Folder)
            )
            || event.paths.iter().any(|p| p.is_dir());
        self.paths.extend(event.paths);
    }
}

/// Whether an event may have changed what is read. Reading a file is an event too and must not count, or building would never
/// end.
fn matters(event: &notify::Result<Event>) -> bool {
    let Ok(event) = event else { return true };
    let kind = matches!(
        event.kind,
        EventKind::Create(_)
            | EventKind::Remove(_)
            | EventKind::Modify(ModifyKind::Data(_) | ModifyKind::Name(_) | ModifyKind::Any)
            | EventKind::Access(AccessKind::Close(AccessMode::Write))
    );
    let of_an_editor = |path: &PathBuf| {
        let name = path
            .file_name()
            .map_or(String::new(), |n| n.to_string_lossy().into_owned());
        name.ends_with('~')
            || name.starts_with(".#")
            || name.ends_with(".tmp")
            || name.ends_with(".swp")
            || name == "4913"
    };
    kind && (event.paths.is_empty() || !event.paths.iter().all(of_an_editor))
}
