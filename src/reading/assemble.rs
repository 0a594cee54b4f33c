//! Joining the records of all files: ids claimed, families spread over their members, needs looked up, cautions derived.

use super::asked::{Asked, asked_of};
use super::language::language;
use super::manner::RawInstead;
use super::need::RawLeaf;
use super::note;
use super::record::{MovementFile, SkillRecord};
use super::resolve::Ids;
use super::spread::{Waiting, WaitingFamily, spread};
use crate::curriculum::caution::{Book, ClassIx, Traits, derived};
use crate::curriculum::ledger::Ledger;
use crate::curriculum::manner::When;
use crate::curriculum::note::{Note, NoteOwner};
use crate::curriculum::page;
use crate::curriculum::posture::Touch;
use crate::curriculum::school::School;
use crate::curriculum::words::Load;
use crate::curriculum::{
    Curriculum, CurriculumParts, Family, FamilyIx, Id, Movement, MovementIx, Need, NoteIx, Owner,
    Skill, SkillIx,
};
use crate::leverage;
use crate::source::markdown::{self, Outline};
use crate::source::{Diagnostic, FileId, Findings, Rule, Snapshot, Span};
use crate::words;
use rayon::prelude::*;
use std::collections::{BTreeMap, HashMap, HashSet};
use std::sync::Arc;

/// What a movement asks for, as it stands in its file.
type Raw = (Vec<Need<RawLeaf>>, Vec<RawInstead<When>>);

/// A note as found: its file, its id, whether it is a page.
pub type NotePart = (FileId, String, bool);

/// All that was read, before anything is looked up.
#[derive(Default)]
pub struct Parts {
    pub school: Option<School>,
    pub cautions: Book,
    pub ledger: Ledger,
    /// Interface words as read, by language.
    pub words: Vec<(FileId, String, words::Own)>,
    pub movements: Vec<(FileId, MovementFile)>,
    pub skills: Vec<(FileId, SkillRecord)>,
    pub notes: Vec<NotePart>,
    pub unread: HashSet<String>,
}

/// Builds the curriculum. While the records are joined, the notes are read: neither needs the other.
pub fn assemble(parts: Parts, snapshot: &Snapshot, findings: &mut Findings) -> Curriculum {
    let Parts {
        school,
        cautions,
        ledger,
        words,
        movements,
        skills,
        notes,
        unread,
    } = parts;
    let school_was_read = school.is_some();
    let school = school.unwrap_or_default();
    let (mut records, (said, outlines)) = rayon::join(
        || {
            let mut claims = Claims::default();
            let (waiting, families) = spread(
                movements,
                &cautions,
                &school,
                school_was_read,
                snapshot,
                &mut claims,
                findings,
            );
            joined(waiting, families, skills, &notes, unread, claims, findings)
        },
        || {
            let said = with_findings(|f| language(&school.language, words, snapshot, f));
            let outlines: Vec<Outline> = notes
                .par_iter()
                .map(|(file, ..)| markdown::outline(*file, snapshot.text(*file)))
                .collect();
            (said, outlines)
        },
    );
    let notes = self::notes(notes, outlines, &records.ids(), snapshot, findings);
    records.settle();
    let (words, found) = said;
    findings.extend(found);
    let mut parts = CurriculumParts {
        school: Arc::new(school),
        cautions: Arc::new(cautions),
        ledger: Arc::new(ledger),
        words,
        movements: records.movements,
        families: Arc::new(records.families),
        skills: records.skills,
        notes,
        by_id: Arc::new(records.by_id),
        old_ids: Arc::new(records.old_ids),
    };
    give_notes(&mut parts);
    derive_cautions(&mut parts);
    parts.into()
}

/// The records that found their place, and what leads to them.
struct Records {
    movements: Vec<Arc<Movement>>,
    families: Vec<Family>,
    skills: Vec<Skill>,
    by_id: HashMap<String, Owner>,
    old_ids: BTreeMap<String, Owner>,
    unread: HashSet<String>,
    /// The ids of all skills, also those that could not stand.
    said: Vec<String>,
}

impl Records {
    fn ids(&self) -> Ids<'_> {
        Ids {
            by_id: &self.by_id,
            old: &self.old_ids,
            unread: &self.unread,
            movements: &self.movements,
            families: &self.families,
        }
    }

    /// A skill that could not stand leaves its ids behind, so that what names it is no second finding. Takes them out, and sets
    /// the positions of those that stand.
    fn settle(&mut self) {
        let by_id = &mut self.by_id;
        by_id.retain(|_, owner| !matches!(owner, Owner::Skill(_)));
        by_id.extend(
            self.skills
                .iter()
                .enumerate()
                .map(|(i, s)| (s.id.to_string(), Owner::Skill(SkillIx(i as u32)))),
        );
        let standing = |(old, owner)| match owner {
            Owner::Skill(ix) => by_id.get(&self.said[ix.at()]).map(|now| (old, *now)),
            other => Some((old, other)),
        };
        let old_ids = std::mem::take(&mut self.old_ids);
        self.old_ids = old_ids.into_iter().filter_map(standing).collect();
    }
}

/// Every id claimed, and every need and goal looked up.
fn joined(
    waiting: Vec<Waiting>,
    waiting_families: Vec<WaitingFamily>,
    skills: Vec<(FileId, SkillRecord)>,
    notes: &[NotePart],
    mut unread: HashSet<String>,
    mut claims: Claims,
    findings: &mut Findings,
) -> Records {
    let (mut skills, faulty_skills): (Vec<_>, Vec<_>) = skills
        .into_iter()
        .map(|(_, s)| s)
        .partition(|s| claims.claim(&s.id, s.id_span, findings));
    unread.extend(faulty_skills.into_iter().map(|s| s.id.to_string()));
    skills.sort_by(|a, b| a.id.cmp(&b.id));

    let owners = Owners {
        movements: &waiting,
        families: &waiting_families,
        skills: &skills,
    };
    let mut by_id = owners.by_id();
    by_id.extend(pages(notes, &mut claims, findings));
    let old_ids = old_ids(owners.were(), &by_id, findings);

    let asks = |w: Waiting| (w.movement, (w.needs, w.instead));
    let (movements, raw): (Vec<Arc<Movement>>, Vec<_>) = waiting.into_iter().map(asks).unzip();
    let families = waiting_families.into_iter().map(|w| w.family).collect();
    let mut records = Records {
        families: with_members(families, &movements),
        movements,
        skills: Vec::new(),
        by_id,
        old_ids,
        unread,
        said: Vec::new(),
    };
    let ids = records.ids();
    let resolved = asked(raw, &ids, findings);
    let said: Vec<String> = skills.iter().map(|s| s.id.to_string()).collect();
    let skills: Vec<Skill> = skills
        .into_iter()
        .filter_map(|s| skill(s, &ids, findings))
        .collect();
    for (movement, asked) in records.movements.iter_mut().zip(resolved) {
        let movement = Arc::make_mut(movement);
        movement.asks(asked.needs);
        movement.is_replaced_by(asked.instead);
        if !asked.good {
            movement.is_in_error();
        }
    }
    records.skills = skills;
    records.said = said;
    records
}

/// Needs and substitutes of all movements, looked up.
fn asked(raw: Vec<Raw>, ids: &Ids<'_>, findings: &mut Findings) -> Vec<Asked> {
    let resolved: Vec<(Asked, Findings)> = raw
        .into_par_iter()
        .enumerate()
        .map(|(i, (needs, instead))| {
            let ix = MovementIx(i as u32);
            with_findings(|f| asked_of(ix, &needs, instead, ids, f))
        })
        .collect();
    told(resolved, findings)
}

/// The pages among the notes that claim an id of their own.
fn pages<'n>(
    notes: &'n [NotePart],
    claims: &'n mut Claims,
    findings: &'n mut Findings,
) -> impl Iterator<Item = (String, Owner)> {
    let own = (0..).zip(notes);
    let own = own.filter(|(_, (_, id, page))| *page && !page::is_extendable(id));
    own.filter_map(move |(i, (file, id, _))| {
        let checked = Id::new(id).ok()?;
        let is_free = claims.claim(&checked, Span::top(*file), findings);
        is_free.then(|| (id.clone(), Owner::Page(NoteIx(i))))
    })
}

/// The records that claimed their ids, each sorted by id: their places are their positions.
struct Owners<'r> {
    movements: &'r [Waiting],
    families: &'r [WaitingFamily],
    skills: &'r [SkillRecord],
}

impl<'r> Owners<'r> {
    fn by_id(&self) -> HashMap<String, Owner> {
        let mut by_id = HashMap::with_capacity(self.movements.len() * 2);
        let movements = (0..).zip(self.movements);
        by_id.extend(movements.map(|(i, w)| (w.movement.id().to_string(), movement(i))));
        let families = (0..).zip(self.families);
        by_id.extend(families.map(|(i, f)| (f.family.id.to_string(), family(i))));
        let skills = (0..).zip(self.skills);
        by_id.extend(skills.map(|(i, s)| (s.id.to_string(), Owner::Skill(SkillIx(i)))));
        by_id
    }

    /// The old ids, each with the record that bears it.
    fn were(&self) -> impl Iterator<Item = (&'r (Id, Span), Owner)> + use<'r> {
        fn of(was: &[(Id, Span)], owner: Owner) -> impl Iterator<Item = (&(Id, Span), Owner)> {
            was.iter().map(move |old| (old, owner))
        }
        let movements = (0..).zip(self.movements);
        let families = (0..).zip(self.families);
        let skills = (0..).zip(self.skills);
        movements
            .flat_map(|(i, w)| of(&w.was, movement(i)))
            .chain(families.flat_map(|(i, f)| of(&f.was, family(i))))
            .chain(skills.flat_map(|(i, s)| of(&s.was, Owner::Skill(SkillIx(i)))))
    }
}

fn movement(at: u32) -> Owner {
    Owner::Movement(MovementIx(at))
}

fn family(at: u32) -> Owner {
    Owner::Family(FamilyIx(at))
}

/// Who claimed which id first.
#[derive(Default)]
pub struct Claims(HashMap<Id, Span>);

impl Claims {
    pub fn claim(&mut self, id: &Id, span: Span, findings: &mut Findings) -> bool {
        if let Some(first) = self.0.get(id) {
            findings.push(
                Diagnostic::new(Rule::DuplicateId, span, format!("the id `{id}` is taken"))
                    .label("second record with this id")
                    .related(*first, "first record with this id")
                    .help("give one of them another id; ids are unique over movements, families, skills and pages"),
            );
            return false;
        }
        self.0.insert(id.clone(), span);
        true
    }
}

/// The members of each family, in the order written.
fn with_members(mut families: Vec<Family>, movements: &[Arc<Movement>]) -> Vec<Family> {
    let mut members: Vec<Vec<(Span, MovementIx)>> = vec![Vec::new(); families.len()];
    for (i, movement) in movements.iter().enumerate() {
        if let Some(place) = movement.place() {
            members[place.family.at()].push((movement.spans().id, MovementIx(i as u32)));
        }
    }
    for (family, mut list) in families.iter_mut().zip(members) {
        list.sort();
        family.members = list.into_iter().map(|m| m.1).collect();
    }
    families
}

/// Old ids with the records that bear them now.
fn old_ids<'a>(
    was: impl Iterator<Item = (&'a (Id, Span), Owner)>,
    by_id: &HashMap<String, Owner>,
    findings: &mut Findings,
) -> BTreeMap<String, Owner> {
    let mut out: BTreeMap<String, Owner> = BTreeMap::new();
    let mut places: HashMap<&str, Span> = HashMap::new();
    for ((id, span), owner) in was {
        let bad =
            |message: String| Diagnostic::new(Rule::OldIdInUse, *span, message).label("old id");
        if by_id.contains_key(id.as_str()) {
            findings.push(
                bad(format!("the old id `{id}` is in use again"))
                    .help("old addresses must lead to one place: give the new record another id"),
            );
        } else if let Some(first) = places.get(id.as_str()) {
            findings.push(
                bad(format!("the old id `{id}` is claimed twice"))
                    .related(*first, "first claim")
                    .help("keep it at the record that took its place"),
            );
        } else {
            places.insert(id.as_str(), *span);
            out.insert(id.to_string(), owner);
        }
    }
    out
}

fn skill(record: SkillRecord, ids: &Ids<'_>, findings: &mut Findings) -> Option<Skill> {
    let goal = ids.leaf(&record.goal, findings).ok()?;
    let movement = &ids.movements[goal.movement.at()];
    if movement.held_back() {
        findings.push(note::held_back_finding(goal.span, movement.id().as_str()));
        return None;
    }
    Some(Skill {
        id: record.id,
        name: record.name,
        also: record.also,
        was: record.was.into_iter().map(|w| w.0).collect(),
        goal,
        summary: record.summary,
        note: None,
        span: record.id_span,
    })
}

fn notes(
    parts: Vec<NotePart>,
    outlines: Vec<Outline>,
    ids: &Ids<'_>,
    snapshot: &Snapshot,
    findings: &mut Findings,
) -> Vec<Arc<Note>> {
    let mut seen: HashMap<String, FileId> = HashMap::new();
    let mut owned = Vec::with_capacity(parts.len());
    for (part, outline) in parts.into_iter().zip(outlines) {
        let (file, id, page) = (part.0, part.1.clone(), part.2);
        let mut owner = note::owner(file, &id, page, ids, findings);
        if let Some(first) = seen.get(&id).filter(|_| owner != NoteOwner::Nobody) {
            findings.push(
                Diagnostic::new(
                    Rule::TwoNotes,
                    Span::top(file),
                    format!("`{id}` has two notes"),
                )
                .related(Span::top(*first), "the other note")
                .help("join them in one file"),
            );
            owner = NoteOwner::Nobody;
        } else {
            seen.insert(id, file);
        }
        owned.push((part, outline, owner));
    }
    let made: Vec<(Arc<Note>, Findings)> = owned
        .into_par_iter()
        .map(|(part, outline, owner)| {
            with_findings(|f| {
                let title = note::title(&part.1, snapshot.text(part.0));
                let note = note::build(part, outline, owner, title, ids, f);
                note::check(&note.outline, note.held_back, ids, snapshot, f);
                Arc::new(note)
            })
        })
        .collect();
    told(made, findings)
}

pub fn with_findings<T>(make: impl FnOnce(&mut Findings) -> T) -> (T, Findings) {
    let mut findings = Findings::default();
    (make(&mut findings), findings)
}

/// What was made side by side, its findings in order.
pub fn told<T>(made: Vec<(T, Findings)>, findings: &mut Findings) -> Vec<T> {
    let tell = |(made, found)| {
        findings.extend(found);
        made
    };
    made.into_iter().map(tell).collect()
}

/// Tells each record which note is its own.
fn give_notes(parts: &mut CurriculumParts) {
    let families = Arc::make_mut(&mut parts.families);
    for (i, note) in parts.notes.iter().enumerate() {
        let ix = Some(NoteIx(i as u32));
        match note.owner {
            NoteOwner::Record(Owner::Movement(m)) => {
                Arc::make_mut(&mut parts.movements[m.at()]).has_note(ix);
            }
            NoteOwner::Record(Owner::Family(f)) => families[f.at()].note = ix,
            NoteOwner::Record(Owner::Skill(_)) => {
                let of = |s: &&mut Skill| s.id.as_str() == note.id;
                if let Some(skill) = parts.skills.iter_mut().find(of) {
                    skill.note = ix;
                }
            }
            _ => {}
        }
    }
}

/// Which movements are loaded, and every class that holds for each. Touches only those for which that has changed.
pub fn derive_cautions(parts: &mut CurriculumParts) {
    let mut loaded: Vec<bool> = parts
        .movements
        .iter()
        .map(|m| {
            m.load() == Load::Added
                || m.standard().adds_weight()
                || m.dose().is_some_and(|d| d.adds_weight())
        })
        .collect();
    let askers = parts.movements.iter().filter(|m| !m.held_back());
    for movement in askers {
        movement
            .needs()
            .visit(&mut |leaf| loaded[leaf.movement.at()] |= leaf.target.adds_weight());
    }
    for skill in &parts.skills {
        loaded[skill.goal.movement.at()] |= skill.goal.target.adds_weight();
    }
    let book = &parts.cautions;
    let all = parts.movements.par_iter_mut().zip(loaded);
    all.for_each(|(shared, loaded)| {
        if !shared.cautions().is_empty() && shared.loaded() == loaded {
            return;
        }
        let mut classes = shared.declared().to_vec();
        classes.extend(following(shared, loaded));
        let cautions = book.sorted(classes);
        if shared.loaded() != loaded || shared.cautions() != cautions {
            Arc::make_mut(shared).bears(cautions, loaded);
        }
    });
}

/// The classes that follow from what a movement is.
fn following(movement: &Movement, loaded: bool) -> Vec<ClassIx> {
    let posture = movement.posture().and_then(leverage::arms);
    derived(&Traits {
        positions: movement.positions(),
        load: movement.load(),
        loaded,
        arms: movement.arms(),
        phase: movement.phase(),
        arms_at: movement.arms_at(),
        arm_angles: posture.as_ref().map_or(&[], |p| &p.angles),
        on_head: posture
            .as_ref()
            .is_some_and(|p| p.touches.contains(&Touch::Head)),
        declared: movement.declared(),
    })
}
