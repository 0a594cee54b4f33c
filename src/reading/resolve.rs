//! Looking up the ids of needs and goals.

use super::need::RawLeaf;
use crate::curriculum::target::{Measure, decimal};
use crate::curriculum::{Family, Leaf, Movement, MovementIx, Need, Owner};
use crate::source::suggest::did_you_mean;
use crate::source::{Diagnostic, Findings, Rule, Span};
use std::collections::{BTreeMap, HashMap, HashSet};
use std::sync::Arc;

/// Who bears which id.
pub struct Ids<'a> {
    pub by_id: &'a HashMap<String, Owner>,
    pub old: &'a BTreeMap<String, Owner>,
    /// Names of records that could not be read; nobody is told twice.
    pub unread: &'a HashSet<String>,
    pub movements: &'a [Arc<Movement>],
    pub families: &'a [Family],
}

impl Ids<'_> {
    /// The current id of a record.
    pub fn id_of(&self, owner: Owner) -> &str {
        match owner {
            Owner::Movement(ix) => self.movements[ix.at()].id().as_str(),
            Owner::Family(ix) => self.families[ix.at()].id.as_str(),
            Owner::Skill(_) | Owner::Page(_) => "",
        }
    }

    /// A finding for an id that is not a movement's; `None` when the record merely could not be read.
    pub fn unknown(&self, id: &str, span: Span, what: &str) -> Option<Diagnostic> {
        if self.unread.contains(id) {
            return None;
        }
        let finding = Diagnostic::new(Rule::UnknownId, span, format!("there is no {what} `{id}`"))
            .label("unknown");
        if let Some(Owner::Family(_)) = self.by_id.get(id) {
            return Some(finding.help(format!("`{id}` is a family: write `- family: {id}` inside `any of` or `at least k of`, or name one of its members")));
        }
        if let Some(Owner::Skill(_) | Owner::Page(_)) = self.by_id.get(id) {
            return Some(finding.help(format!(
                "`{id}` is not a movement: name the movement itself"
            )));
        }
        if let Some(owner) = self.old.get(id) {
            return Some(
                finding.help(format!("`{id}` was renamed: type `{}`", self.id_of(*owner))),
            );
        }
        let ids = self
            .by_id
            .iter()
            .filter(|(_, o)| matches!(o, Owner::Movement(_)))
            .map(|(id, _)| id.as_str());
        Some(match did_you_mean(id, ids) {
            Some(help) => finding.help(help),
            None => finding.help(format!(
                "write the movement's file, `content/movements/{id}.yaml`, or name another"
            )),
        })
    }

    /// Resolves a leaf. `Err(())` when it cannot stand; the finding is pushed.
    pub fn leaf(&self, raw: &RawLeaf, findings: &mut Findings) -> Result<Leaf, ()> {
        let Some(Owner::Movement(ix)) = self.by_id.get(&raw.id).copied() else {
            if let Some(finding) = self.unknown(&raw.id, raw.span, "movement") {
                findings.push(finding);
            }
            return Err(());
        };
        let movement = &self.movements[ix.at()];
        let Some((target, span)) = raw.target else {
            return Ok(Leaf {
                movement: ix,
                target: movement.standard(),
                own_standard: true,
                span: raw.span,
            });
        };
        if !movement.faulty() && !target.compares_with(&movement.standard()) {
            findings.push(different_measure(&target, span, movement));
            return Err(());
        }
        Ok(Leaf {
            movement: ix,
            target,
            own_standard: false,
            span: raw.span,
        })
    }

    /// Resolves a tree for the movement at `asker` (or a skill). What cannot stand becomes an empty choice, and the second
    /// value is false.
    pub fn tree(
        &self,
        raw: &Need<RawLeaf>,
        asker: Option<MovementIx>,
        findings: &mut Findings,
    ) -> (Need<Leaf>, bool) {
        match raw {
            Need::Leaf(leaf) => match self.leaf(leaf, findings) {
                Ok(leaf) => (Need::Leaf(leaf), true),
                Err(()) => (Need::Any(Vec::new()), false),
            },
            Need::All(parts) => {
                let (parts, good) = self.parts(parts, asker, findings);
                (Need::All(parts), good)
            }
            Need::Any(parts) => {
                let (parts, good) = self.parts(parts, asker, findings);
                (Need::Any(parts), good)
            }
            Need::AtLeast(k, raw_parts) => {
                let (parts, good) = self.parts(raw_parts, asker, findings);
                if good && *k as usize > parts.len() && !parts.is_empty() {
                    let span = first_span(raw_parts);
                    findings.push(
                        Diagnostic::new(
                            Rule::BadNeed,
                            span,
                            format!("at least {k} of {} parts can never be met", parts.len()),
                        )
                        .label("the first of the parts")
                        .help(format!(
                            "ask at least {} of them, or add parts",
                            parts.len()
                        )),
                    );
                    return (Need::AtLeast(*k, parts), false);
                }
                (Need::AtLeast(*k, parts), good)
            }
        }
    }

    fn parts(
        &self,
        raw: &[Need<RawLeaf>],
        asker: Option<MovementIx>,
        findings: &mut Findings,
    ) -> (Vec<Need<Leaf>>, bool) {
        let mut good = true;
        let mut out = Vec::new();
        for part in raw {
            if let Need::Leaf(leaf) = part
                && leaf.family
            {
                match self.whole_family(leaf, asker, findings) {
                    Some(members) => out.extend(members),
                    None => good = false,
                }
                continue;
            }
            let (need, fine) = self.tree(part, asker, findings);
            good &= fine;
            out.push(need);
        }
        (out, good)
    }

    /// A whole family: its published members at their standards, one part each.
    fn whole_family(
        &self,
        raw: &RawLeaf,
        asker: Option<MovementIx>,
        findings: &mut Findings,
    ) -> Option<Vec<Need<Leaf>>> {
        let Some(Owner::Family(family)) = self.by_id.get(&raw.id).copied() else {
            if !self.unread.contains(&raw.id) {
                let ids = self
                    .by_id
                    .iter()
                    .filter(|(_, o)| matches!(o, Owner::Family(_)))
                    .map(|(id, _)| id.as_str());
                let help = did_you_mean(&raw.id, ids)
                    .unwrap_or_else(|| "name a family of this curriculum".into());
                findings.push(
                    Diagnostic::new(
                        Rule::UnknownId,
                        raw.span,
                        format!("there is no family `{}`", raw.id),
                    )
                    .label("unknown")
                    .help(help),
                );
            }
            return None;
        };
        let own = asker
            .and_then(|ix| self.movements[ix.at()].place())
            .is_some_and(|p| p.family == family);
        if own {
            findings.push(
                Diagnostic::new(
                    Rule::OwnFamily,
                    raw.span,
                    "a member never needs its own family as a whole",
                )
                .label("its own family")
                .help("name the members that come before it, or use `easier_first`"),
            );
            return None;
        }
        let member = |ix: &MovementIx| {
            let movement = &self.movements[ix.at()];
            let leaf = Leaf {
                movement: *ix,
                target: movement.standard(),
                own_standard: true,
                span: raw.span,
            };
            (!movement.held_back()).then_some(Need::Leaf(leaf))
        };
        Some(
            self.families[family.at()]
                .members
                .iter()
                .filter_map(member)
                .collect(),
        )
    }
}

/// A target that measures something else than the movement's standard.
pub fn different_measure(
    target: &crate::curriculum::Target,
    span: Span,
    movement: &Movement,
) -> Diagnostic {
    let direction = |t: &crate::curriculum::Target| {
        format!(
            "{}{}",
            t.measure().word(),
            if t.at_most() { ", at most" } else { "" }
        )
    };
    Diagnostic::new(
        Rule::DifferentMeasure,
        span,
        format!(
            "`{}` is measured in {}, not in {}",
            movement.id(),
            direction(&movement.standard()),
            direction(target)
        ),
    )
    .label(format!("this measures {}", direction(target)))
    .related(
        movement.spans().standard,
        format!("its standard measures {}", direction(&movement.standard())),
    )
    .help(match (movement.standard().measure(), target.measure()) {
        // Read so where a unit was forgotten.
        (Measure::Reps, Measure::Time) if movement.standard().sets() == 1 => format!(
            "write it like its standard, `{}`; or, if that is a hold, mend the standard: `{} s`",
            movement.standard(),
            decimal(movement.standard().amount())
        ),
        _ => format!("write it like its standard, `{}`", movement.standard()),
    })
}

fn first_span(parts: &[Need<RawLeaf>]) -> Span {
    match &parts[0] {
        Need::Leaf(leaf) => leaf.span,
        Need::All(parts) | Need::Any(parts) | Need::AtLeast(_, parts) => first_span(parts),
    }
}
