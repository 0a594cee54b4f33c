//! Families spread over their members, and every draft made a movement: all but its needs, which wait for the ids.

use super::assemble::{Claims, told, with_findings};
use super::draft::Draft;
use super::manner::{self, RawInstead, RawWhen};
use super::need::RawLeaf;
use super::record::{FamilyRecord, MovementFile};
use super::school::explained;
use super::{note, picture};
use crate::curriculum::caution::{Book, ClassIx};
use crate::curriculum::manner::When;
use crate::curriculum::movement::{Clip, Picture, Place, Rung, Spans};
use crate::curriculum::school::School;
use crate::curriculum::words::{BodyPart, Load, Pattern, Position, Word};
use crate::curriculum::{Family, FamilyIx, Id, Movement, MovementParts, Need, Target};
use crate::source::suggest::{did_you_mean, listed};
use crate::source::{Diagnostic, FileId, Findings, Rule, Snapshot, Span};
use rayon::prelude::*;
use std::sync::Arc;

/// A movement before its needs are looked up.
pub struct Waiting {
    pub movement: Arc<Movement>,
    pub needs: Vec<Need<RawLeaf>>,
    pub instead: Vec<RawInstead<When>>,
    pub was: Vec<(Id, Span)>,
}

/// A family before its members are known.
pub struct WaitingFamily {
    pub family: Family,
    pub was: Vec<(Id, Span)>,
}

/// A movement whose id is its own, before anything that it says is looked up.
struct Claimed {
    id: Id,
    id_span: Span,
    whole: Span,
    draft: Draft,
    /// For a member its rungs, and its family in the order read.
    place: Option<(Vec<Option<Rung>>, usize)>,
}

/// Single movements and family members as one list sorted by id, and the families sorted by id.
pub fn spread(
    records: Vec<(FileId, MovementFile)>,
    cautions: &Book,
    school: &School,
    school_was_read: bool,
    snapshot: &Snapshot,
    claims: &mut Claims,
    findings: &mut Findings,
) -> (Vec<Waiting>, Vec<WaitingFamily>) {
    let (mut claimed, families) = claimed(records, claims, findings);
    let mut order: Vec<usize> = (0..families.len()).collect();
    order.sort_by(|a, b| families[*a].id.cmp(&families[*b].id));
    let mut rank = vec![0u32; families.len()];
    order
        .iter()
        .enumerate()
        .for_each(|(new, old)| rank[*old] = new as u32);
    claimed.sort_by(|a, b| a.id.cmp(&b.id));
    let finished: Vec<(Waiting, Findings)> = claimed
        .into_par_iter()
        .map(|claimed| {
            with_findings(|findings| {
                let mut context = Finish {
                    cautions,
                    school,
                    school_was_read,
                    snapshot,
                    findings,
                };
                context.finish(*claimed, &rank)
            })
        })
        .collect();
    let mut families: Vec<WaitingFamily> = families.into_iter().map(family).collect();
    families.sort_by(|a, b| a.family.id.cmp(&b.family.id));
    (told(finished, findings), families)
}

/// Who claims an id that nobody else has: single movements and members, each with its family's share, and the families in the
/// order read.
#[expect(clippy::vec_box, reason = "they are large, and sorted")]
fn claimed(
    records: Vec<(FileId, MovementFile)>,
    claims: &mut Claims,
    findings: &mut Findings,
) -> (Vec<Box<Claimed>>, Vec<FamilyRecord>) {
    let mut claimed: Vec<Box<Claimed>> = Vec::with_capacity(records.len());
    let mut families: Vec<FamilyRecord> = Vec::new();
    for (_, record) in records {
        match record {
            MovementFile::Movement(record) => {
                if claims.claim(&record.id, record.id_span, findings) {
                    claimed.push(Box::new(Claimed {
                        id: record.id,
                        id_span: record.id_span,
                        whole: record.whole,
                        draft: record.draft,
                        place: None,
                    }));
                }
            }
            MovementFile::Family(mut record) => {
                if !claims.claim(&record.id, record.id_span, findings) {
                    continue;
                }
                for member in std::mem::take(&mut record.members) {
                    if !claims.claim(&member.id, member.id_span, findings) {
                        continue;
                    }
                    let mut draft = member.draft.with_family(&record.draft);
                    draft.name = draft.name.or_else(|| {
                        record
                            .draft
                            .name
                            .as_ref()
                            .map(|n| member_name(n, &record, &member.rungs))
                    });
                    claimed.push(Box::new(Claimed {
                        id: member.id,
                        id_span: member.id_span,
                        whole: member.whole,
                        draft,
                        place: Some((member.rungs, families.len())),
                    }));
                }
                families.push(*record);
            }
        }
    }
    (claimed, families)
}

fn family(record: FamilyRecord) -> WaitingFamily {
    let draft = record.draft;
    let family = Family {
        name: draft
            .name
            .unwrap_or_else(|| note::capital(&record.id.as_str().replace('-', " "))),
        id: record.id,
        also: draft.also,
        was: draft.was.iter().map(|w| w.0.clone()).collect(),
        summary: draft.summary,
        axes: record.axes,
        members: Vec::new(),
        note: None,
        span: record.id_span,
        held_back: draft.held_back.unwrap_or(false),
    };
    WaitingFamily {
        family,
        was: draft.was,
    }
}

/// "Family name, value, value".
fn member_name(family: &str, record: &FamilyRecord, rungs: &[Option<Rung>]) -> String {
    let values = record
        .axes
        .iter()
        .zip(rungs)
        .filter_map(|(axis, rung)| rung.map(|r| axis.value(r).replace('-', " ")));
    std::iter::once(family.to_string())
        .chain(values)
        .collect::<Vec<_>>()
        .join(", ")
}

struct Finish<'a, 'f> {
    cautions: &'a Book,
    school: &'a School,
    school_was_read: bool,
    snapshot: &'a Snapshot,
    findings: &'f mut Findings,
}

impl Finish<'_, '_> {
    /// The movement of a claim, with `rank` giving each family its position.
    fn finish(&mut self, claimed: Claimed, rank: &[u32]) -> Waiting {
        let Claimed {
            id,
            id_span,
            whole,
            draft,
            place,
        } = claimed;
        // Taken apart without `..`: of a key that is added it is decided here what becomes of it.
        let Draft {
            name,
            also,
            was,
            pattern,
            positions,
            load,
            equipment,
            each_side,
            summary,
            needs,
            standard,
            exit,
            dose,
            instead,
            tempo_at,
            cautions,
            pictures,
            clip,
            held_back,
            says,
            faulty,
        } = draft;
        let complete =
            standard.is_some() && pattern.is_some() && load.is_some() && !positions.is_empty();
        let (standard, standard_span) = standard.unwrap_or((placeholder(), id_span));
        let (exit, exit_span) = exit.unzip();
        let equipment = self.equipment(equipment);
        let classes = cautions.iter();
        let declared = classes.filter_map(|(word, span)| self.caution(word, *span));
        let declared = declared.collect();
        self.media(&pictures, clip.as_ref());
        let instead = self.instead(instead);
        let called = || note::capital(&id.as_str().replace('-', " "));
        let movement = MovementParts {
            name: name.unwrap_or_else(called),
            also,
            was: was.iter().map(|w| w.0.clone()).collect(),
            pattern: pattern.unwrap_or(Pattern::Core),
            positions: match positions.is_empty() {
                true => vec![Position::Upright],
                false => positions,
            },
            load: load.unwrap_or(Load::Body),
            equipment,
            each_side: each_side.unwrap_or(false) || standard.each_side(),
            summary: summary.unwrap_or_default(),
            needs: Need::nothing(),
            // The movement says the sides once.
            standard: standard.of_one_side(),
            exit,
            dose: dose.map(|d| d.0),
            instead: Vec::new(),
            says,
            declared,
            cautions: Vec::new(),
            loaded: false,
            pictures: pictures.into_iter().map(|p| p.0).collect(),
            clip: clip.map(|c| c.0),
            held_back: held_back.unwrap_or(false),
            place: place.map(|(rungs, family)| Place {
                family: FamilyIx(rank[family]),
                rungs,
            }),
            note: None,
            spans: Spans {
                id: id_span,
                whole,
                standard: standard_span,
                exit: exit_span.flatten(),
                tempo: tempo_at,
            },
            faulty: faulty || !complete,
            id,
        };
        Waiting {
            movement: Arc::new(movement.into()),
            needs,
            instead,
            was,
        }
    }

    /// Whether the pictures, the clip and its poster are in the folder.
    fn media(&mut self, pictures: &[(Picture, Span)], clip: Option<&(Clip, Span)>) {
        let mut exists = |file: &str, span| {
            picture::exists(file, span, self.snapshot, self.findings);
        };
        for (picture, span) in pictures {
            exists(&picture.file, *span);
        }
        if let Some((clip, span)) = clip {
            exists(&clip.file, *span);
            if let Some(poster) = &clip.poster {
                exists(poster, *span);
            }
        }
    }

    /// What goes in its place: parts, classes and equipment looked up, the movements not yet.
    fn instead(&mut self, raw: Vec<RawInstead>) -> Vec<RawInstead<When>> {
        let mut found = Vec::new();
        for one in raw {
            let when = match one.when {
                RawWhen::For(word) => {
                    let class = || self.cautions.find(&word).map(When::Class);
                    let when = BodyPart::read(&word).map(When::Part).or_else(class);
                    if when.is_none() {
                        let finding = manner::unknown_reason(&word, one.span, &self.classes());
                        self.findings.push(finding);
                    }
                    when
                }
                RawWhen::Without(word) => {
                    self.known_equipment(&word, one.span);
                    Some(When::Without(word))
                }
            };
            found.extend(when.map(|when| RawInstead {
                when,
                span: one.span,
                movement: one.movement,
            }));
        }
        found
    }

    /// The ids of all caution classes.
    fn classes(&self) -> Vec<&str> {
        let classes = self.cautions.classes().iter();
        classes.map(|c| c.id.as_str()).collect()
    }

    fn equipment(&mut self, equipment: Vec<Vec<(String, Span)>>) -> Vec<Vec<String>> {
        let mut out: Vec<Vec<String>> = Vec::new();
        for alternatives in equipment {
            for (word, span) in &alternatives {
                self.known_equipment(word, *span);
            }
            let words: Vec<String> = alternatives.into_iter().map(|a| a.0).collect();
            if !out.contains(&words) {
                out.push(words);
            }
        }
        out
    }

    /// A finding where the school does not explain a word of equipment.
    fn known_equipment(&mut self, word: &str, span: Span) {
        if self.school_was_read {
            explained(self.school, word, span, self.findings);
        }
    }

    fn caution(&mut self, word: &str, span: Span) -> Option<ClassIx> {
        let found = self.cautions.find(word);
        if found.is_none() {
            let known = self.classes();
            let help = did_you_mean(word, known.iter().copied())
                .unwrap_or_else(|| format!("the classes are {}", listed(&known, "and")));
            self.findings.push(
                Diagnostic::new(
                    Rule::UnknownCaution,
                    span,
                    format!("there is no caution class `{word}`"),
                )
                .label("unknown class")
                .help(help),
            );
        }
        found
    }
}

/// Stands where a standard could not be read; the movement is faulty and nothing is computed from it.
fn placeholder() -> Target {
    Target::read("done").expect("a target of the program's own")
}
