//! Proof: everything that is wrong with a whole curriculum, found in one run.
//!
//! Reading finds what is wrong with each record; the rules here look at the curriculum as a whole. One file for each group of
//! rules. Nothing stops at the first finding.

mod cautions;
mod doubts;
mod exits;
mod loops;
mod manner;
mod needs;
mod notes;
mod postures;
mod teaching;

use crate::chain::Resolved;
use crate::curriculum::Curriculum;
use crate::reading::{self, Again};
use crate::source::{FileId, Findings, Rule, Snapshot};
use rayon::prelude::*;
use std::sync::Arc;

/// A curriculum, what is worked out of it, and everything that was found in it.
pub struct Proofread {
    pub curriculum: Curriculum,
    pub resolved: Arc<Resolved>,
    /// Sorted by place.
    pub findings: Findings,
    /// What reading found, and then each group of [`RULES`].
    by_rule: Vec<Findings>,
}

type Check = fn(&Curriculum, &Resolved, &mut Findings);

/// Rules that are checked together.
struct Group {
    check: Check,
    /// Whether they read the texts of notes: only these are checked again when a note changes.
    reads_notes: bool,
}

const fn of_records(check: Check) -> Group {
    Group {
        check,
        reads_notes: false,
    }
}

const fn of_notes(check: Check) -> Group {
    Group {
        check,
        reads_notes: true,
    }
}

/// What may follow from an error of reading alone.
const FOLLOWING: &[Rule] = &[
    Rule::UnusedMovement,
    Rule::UnlinkedNote,
    Rule::NoGroundTest,
    Rule::NoExitMovement,
    Rule::ExitUntaught,
];

const RULES: &[Group] = &[
    of_records(|c, r, f| loops::check(c, &r.stages, f)),
    of_records(|c, r, f| needs::check(c, &r.stages, f)),
    of_records(|c, r, f| cautions::check(c, &r.stages, f)),
    of_records(|c, _, f| exits::check(c, f)),
    of_records(|c, _, f| manner::check(c, f)),
    of_records(|c, r, f| teaching::check(c, &r.stages, f)),
    of_records(postures::check),
    of_records(|c, _, f| doubts::check(c, f)),
    of_notes(|c, _, f| notes::check(c, f)),
];

/// Reads and proofreads a snapshot.
pub fn proofread(snapshot: &Snapshot) -> Proofread {
    let (curriculum, found) = reading::read(snapshot);
    let resolved = Resolved::new(&curriculum);
    judged(curriculum, resolved, found)
}

/// Proofreads again after `file` changed: the snapshot differs in nothing else from the one that `before` was made of. `None`
/// when it must be proofread whole.
pub fn proofread_again(
    before: &Proofread,
    snapshot: &Snapshot,
    file: FileId,
) -> Option<(Proofread, Again)> {
    if !before.by_rule[0].is_empty() {
        return None;
    }
    let (curriculum, again) = reading::again(&before.curriculum, snapshot, file)?;
    let after = match again {
        Again::Movement(ix) => {
            let old = before.curriculum.movement(ix);
            let resolved = before.resolved.after(&curriculum, ix, old);
            judged(curriculum, resolved, Findings::default())
        }
        Again::Note(_) => {
            let mut by_rule = before.by_rule.clone();
            // The first of them is what reading found.
            for (group, of_group) in RULES.iter().zip(&mut by_rule[1..]) {
                if group.reads_notes {
                    *of_group = found(group, &curriculum, &before.resolved);
                }
            }
            together(curriculum, Arc::clone(&before.resolved), by_rule)
        }
    };
    Some((after, again))
}

fn judged(curriculum: Curriculum, resolved: Resolved, in_reading: Findings) -> Proofread {
    let mut by_rule = vec![in_reading];
    by_rule.par_extend(
        RULES
            .par_iter()
            .with_max_len(1)
            .map(|group| found(group, &curriculum, &resolved)),
    );
    together(curriculum, Arc::new(resolved), by_rule)
}

fn found(group: &Group, curriculum: &Curriculum, resolved: &Resolved) -> Findings {
    let mut findings = Findings::default();
    (group.check)(curriculum, resolved, &mut findings);
    findings
}

fn together(curriculum: Curriculum, resolved: Arc<Resolved>, by_rule: Vec<Findings>) -> Proofread {
    let mut findings = Findings::default();
    by_rule.iter().for_each(|f| findings.extend(f.clone()));
    // What cannot be read may be what would have used, linked or taught the rest: nobody is told twice.
    if by_rule[0].has_errors() {
        findings.retain(|f| !FOLLOWING.contains(&f.rule));
    }
    Proofread {
        curriculum,
        resolved,
        findings: findings.sorted(),
        by_rule,
    }
}
