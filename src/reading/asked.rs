//! What a movement refers to, looked up: its needs, its easier neighbours first, and what goes in its place.

use super::manner::RawInstead;
use super::need::RawLeaf;
use super::note;
use super::resolve::Ids;
use crate::curriculum::family::{Way, harder_everywhere, neighbours};
use crate::curriculum::manner::{Instead, When};
use crate::curriculum::words::EasierFirst;
use crate::curriculum::{Leaf, Movement, MovementIx, Need};
use crate::source::{Diagnostic, Findings, Rule};

/// What a movement refers to, looked up.
pub struct Asked {
    pub needs: Need<Leaf>,
    pub instead: Vec<Instead>,
    /// All of it was found.
    pub good: bool,
}

/// The needs of one movement, and what goes in its place.
pub fn asked_of(
    ix: MovementIx,
    needs: &[Need<RawLeaf>],
    instead: Vec<RawInstead<When>>,
    ids: &Ids<'_>,
    findings: &mut Findings,
) -> Asked {
    let (needs, mut good) = needs_of(ix, needs, ids, findings);
    let asker = &ids.movements[ix.at()];
    let mut found = Vec::new();
    for RawInstead {
        when,
        span,
        movement: raw,
    } in instead
    {
        let Ok(leaf) = ids.leaf(&raw, findings) else {
            good = false;
            continue;
        };
        let other = &ids.movements[leaf.movement.at()];
        if other.held_back() && !asker.held_back() {
            good = false;
            findings.push(note::held_back_finding(raw.span, other.id().as_str()));
        }
        // A family's word for all its members is none for the member that it names.
        match leaf.movement == ix {
            true if asker.spans().whole.contains(raw.span) => {
                good = false;
                let finding =
                    Diagnostic::new(Rule::BadValue, raw.span, "nothing goes in its own place");
                findings.push(finding.help("name another movement, or take the line out"));
            }
            true => {}
            false => found.push(Instead {
                when,
                movement: leaf.movement,
                span,
            }),
        }
    }
    Asked {
        needs,
        instead: found,
        good,
    }
}

/// The needs of one movement: as written, and its easier neighbours first.
fn needs_of(
    ix: MovementIx,
    raw: &[Need<RawLeaf>],
    ids: &Ids<'_>,
    findings: &mut Findings,
) -> (Need<Leaf>, bool) {
    let movement = &ids.movements[ix.at()];
    let mut good = true;
    let mut parts = Vec::new();
    for need in raw {
        let (need, fine) = ids.tree(need, Some(ix), findings);
        good &= fine;
        parts.push(need);
    }
    parts.extend(easier_first(movement, ids));
    let needs = Need::All(parts);
    for leaf in needs.leaves() {
        let needed = &ids.movements[leaf.movement.at()];
        if needed.held_back() && !movement.held_back() {
            good = false;
            findings.push(note::held_back_finding(leaf.span, needed.id().as_str()));
        }
        if let (Some(ours), Some(theirs)) = (movement.place(), needed.place())
            && ours.family == theirs.family
            && harder_everywhere(&theirs.rungs, &ours.rungs)
        {
            good = false;
            findings.push(
                Diagnostic::new(
                    Rule::HarderSibling,
                    leaf.span,
                    format!(
                        "`{}` needs `{}`, which is harder on every axis that both have",
                        movement.id(),
                        needed.id()
                    ),
                )
                .label("the harder one")
                .related(needed.spans().id, "its place in the family")
                .help("turn the need around, or mend the place of one of them"),
            );
        }
    }
    (needs, good)
}

fn easier_first(movement: &Movement, ids: &Ids<'_>) -> Vec<Need<Leaf>> {
    let Some(place) = movement.place() else {
        return Vec::new();
    };
    let family = &ids.families[place.family.at()];
    let mut out = Vec::new();
    for (index, axis) in family.axes.iter().enumerate() {
        if axis.easier_first == EasierFirst::None {
            continue;
        }
        let members = family.members.iter().filter_map(|ix| {
            let member = &ids.movements[ix.at()];
            (!member.held_back() || movement.held_back()).then_some(())?;
            Some((*ix, member.place()?.rungs.as_slice()))
        });
        let leaf = |ix: MovementIx| {
            Need::Leaf(Leaf {
                movement: ix,
                target: ids.movements[ix.at()].standard(),
                own_standard: true,
                span: movement.spans().id,
            })
        };
        let mut leaves: Vec<Need<Leaf>> = neighbours(index, Way::Easier, &place.rungs, members)
            .into_iter()
            .map(leaf)
            .collect();
        match (axis.easier_first, leaves.len()) {
            (_, 0) => {}
            (_, 1) => out.append(&mut leaves),
            (EasierFirst::Any, _) => out.push(Need::Any(leaves)),
            _ => out.append(&mut leaves),
        }
    }
    out
}
