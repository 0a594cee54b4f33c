//! One file changed: the curriculum with its record read anew, where nothing else can have changed by it.
//!
//! Only from a curriculum in which reading found nothing to one in which it finds nothing; only for a note, or a movement outside
//! a family, that keeps what others refer to. Everything else is read whole.

use super::asked::asked_of;
use super::assemble::{Claims, derive_cautions};
use super::record::MovementFile;
use super::resolve::Ids;
use super::spread::spread;
use super::{Read, note, read_file};
use crate::curriculum::note::NoteOwner;
use crate::curriculum::{
    Curriculum, CurriculumParts, Movement, MovementIx, MovementParts, Need, NoteIx, Target,
};
use crate::source::{FileId, Findings, Snapshot, markdown};
use std::collections::HashSet;
use std::sync::Arc;

/// What was read anew.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Again {
    Note(NoteIx),
    Movement(MovementIx),
}

/// The curriculum after one file of the folder changed; `None` when the folder must be read whole. `before` was read without
/// a finding from a snapshot that differs from this one in `file` alone.
///
/// # Complexity
/// One pass over the records; one file is parsed.
pub fn again(
    before: &Curriculum,
    snapshot: &Snapshot,
    file: FileId,
) -> Option<(Curriculum, Again)> {
    let mut findings = Findings::default();
    let read = read_file(file, snapshot.file(file)?, &mut findings);
    let read = findings.is_empty().then_some(read)?;
    let (none, parts) = (HashSet::new(), before.parts());
    let ids = Ids {
        by_id: &parts.by_id,
        old: &parts.old_ids,
        unread: &none,
        movements: &parts.movements,
        families: &parts.families,
    };
    let mut anew = Anew {
        before,
        ids,
        snapshot,
        file,
        findings,
    };
    match read {
        Read::Note { id, page } => anew.note(id, page),
        Read::Movement(record @ MovementFile::Movement(_)) => anew.movement(record),
        _ => None,
    }
}

/// One file read anew, with what it is read against.
struct Anew<'a> {
    before: &'a Curriculum,
    ids: Ids<'a>,
    snapshot: &'a Snapshot,
    file: FileId,
    findings: Findings,
}

impl Anew<'_> {
    fn note(&mut self, id: String, page: bool) -> Option<(Curriculum, Again)> {
        let (file, text) = (self.file, self.snapshot.text(self.file));
        let (ix, old) = self.before.notes().find(|(_, n)| n.file == file)?;
        let title = note::title(&id, text);
        // Pages are listed by their titles.
        if old.title != title && old.owner == NoteOwner::Page {
            return None;
        }
        let outline = markdown::outline(file, text);
        let (part, ids, findings) = ((file, id, page), &self.ids, &mut self.findings);
        let new = note::build(part, outline, old.owner.clone(), title, ids, findings);
        note::check(&new.outline, new.held_back, ids, self.snapshot, findings);
        let mut after = self.before.parts().clone();
        after.notes[ix.at()] = Arc::new(new);
        findings
            .is_empty()
            .then_some((after.into(), Again::Note(ix)))
    }

    fn movement(&mut self, record: MovementFile) -> Option<(Curriculum, Again)> {
        let (before, findings) = (self.before, &mut self.findings);
        let mut of_this_file = before
            .movements()
            .filter(|(_, m)| m.spans().whole.file == self.file);
        let (ix, old) = of_this_file.next()?;
        let (mut waiting, _) = spread(
            vec![(self.file, record)],
            before.cautions(),
            before.school(),
            true,
            self.snapshot,
            &mut Claims::default(),
            findings,
        );
        let waiting = waiting.pop()?;
        let mut new = Arc::unwrap_or_clone(waiting.movement);
        new.has_note(old.note());
        if !refers_alike(old, &new) {
            return None;
        }
        let mut after = before.parts().clone();
        let standard = new.standard();
        after.movements[ix.at()] = Arc::new(new);
        let ids = Ids {
            movements: &after.movements,
            ..self.ids
        };
        let asked = asked_of(ix, &waiting.needs, waiting.instead, &ids, findings);
        if !asked.good || !findings.is_empty() {
            return None;
        }
        let movement = Arc::make_mut(&mut after.movements[ix.at()]);
        movement.asks(asked.needs);
        movement.is_replaced_by(asked.instead);
        own_standards(&mut after, ix, standard);
        derive_cautions(&mut after);
        Some((after.into(), Again::Movement(ix)))
    }
}

/// Whether all that others can refer to is the same, so that no other record reads differently.
fn refers_alike(old: &Movement, new: &Movement) -> bool {
    // Taken apart without `..`: of a key that is added it is decided here whether others refer to it.
    let MovementParts {
        id,
        name,
        was,
        held_back,
        each_side,
        standard,
        dose,
        place,
        faulty,
        // Its own, and read or worked out anew.
        also: _,
        pattern: _,
        positions: _,
        load: _,
        equipment: _,
        summary: _,
        needs: _,
        exit: _,
        instead: _,
        says: _,
        declared: _,
        cautions: _,
        loaded: _,
        pictures: _,
        clip: _,
        note: _,
        spans: _,
    } = old.parts();
    let new = new.parts();
    let doses = match (dose, &new.dose) {
        (None, None) => true,
        (Some(old), Some(new)) => compares(old, new),
        _ => false,
    };
    let alike = *id == new.id
        && *name == new.name
        && *was == new.was
        && *held_back == new.held_back
        && *each_side == new.each_side;
    alike && doses && compares(standard, &new.standard) && place.is_none() && !faulty && !new.faulty
}

fn compares(old: &Target, new: &Target) -> bool {
    old == new || old.compares_with(new) && new.compares_with(old)
}

/// Needs and goals without a target of their own ask for the standard as it is now.
fn own_standards(parts: &mut CurriculumParts, ix: MovementIx, standard: Target) {
    let stale = |need: &Need<crate::curriculum::Leaf>| {
        let mut found = false;
        need.visit(&mut |l| {
            found |= l.movement == ix && l.own_standard && l.target != standard;
        });
        found
    };
    for movement in &mut parts.movements {
        if stale(movement.needs()) {
            let mut needs = movement.needs().clone();
            needs.change(&mut |leaf| {
                if leaf.movement == ix && leaf.own_standard {
                    leaf.target = standard;
                }
            });
            Arc::make_mut(movement).asks(needs);
        }
    }
    for skill in &mut parts.skills {
        if skill.goal.movement == ix && skill.goal.own_standard {
            skill.goal.target = standard;
        }
    }
}
