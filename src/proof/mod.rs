//! Proof: everything that is wrong with a whole curriculum, found in one run.
//!
//! Reading finds what is wrong with each record; the rules here look at the curriculum as a whole. One file for each group of
//! rules. Nothing stops at the first finding.

mod cautions;
mod loops;
mod needs;
mod notes;
mod postures;
mod teaching;

use crate::chain::{Stages, stages};
use crate::curriculum::Curriculum;
use crate::reading;
use crate::source::{Findings, Snapshot};

/// A curriculum with its stages and everything that was found in it.
pub struct Proofread {
    pub curriculum: Curriculum,
    pub stages: Stages,
    /// Sorted by place.
    pub findings: Findings,
}

/// Reads and proofreads a snapshot.
pub fn proofread(snapshot: &Snapshot) -> Proofread {
    let (curriculum, mut findings) = reading::read(snapshot);
    let stages = stages(&curriculum);
    loops::check(&curriculum, &mut findings);
    needs::check(&curriculum, &stages, &mut findings);
    cautions::check(&curriculum, &stages, &mut findings);
    teaching::check(&curriculum, &stages, &mut findings);
    postures::check(&curriculum, &mut findings);
    notes::check(&curriculum, &mut findings);
    Proofread {
        curriculum,
        stages,
        findings: findings.sorted(),
    }
}
