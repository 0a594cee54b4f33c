//! What rests: what is paused itself, what stresses a paused part, and what cannot be reached without them.

use crate::chain::{Stages, stages_where};
use crate::curriculum::{Curriculum, Day, Leaf, MovementIx, Need};
use crate::results::{Paused, Person};

/// The paused movements of a day.
pub(super) struct Rest {
    /// For each movement the pauses that hit it by itself, as positions in the person's list.
    direct: Vec<Vec<usize>>,
    /// Who can still be reached; `None` when nothing is paused.
    reached: Option<Stages>,
}

impl Rest {
    pub fn new(curriculum: &Curriculum, person: &Person, today: Day) -> Rest {
        let mut direct = vec![Vec::new(); curriculum.len()];
        for (i, pause) in person
            .pauses
            .iter()
            .enumerate()
            .filter(|(_, p)| p.holds_on(today))
        {
            match pause.what {
                Paused::Movement(ix) => direct[ix.at()].push(i),
                Paused::Part(part) => curriculum
                    .movements()
                    .filter(|(_, m)| m.stresses.contains(&part))
                    .for_each(|(ix, _)| direct[ix.at()].push(i)),
                Paused::Class(class) => curriculum
                    .movements()
                    .filter(|(_, m)| m.cautions.contains(&class))
                    .for_each(|(ix, _)| direct[ix.at()].push(i)),
                Paused::Pattern(pattern) => curriculum
                    .movements()
                    .filter(|(_, m)| m.pattern == pattern)
                    .for_each(|(ix, _)| direct[ix.at()].push(i)),
            }
        }
        let any = direct.iter().any(|d| !d.is_empty());
        let stands = |ix: MovementIx| direct[ix.at()].is_empty() && !curriculum.movement(ix).faulty;
        Rest {
            reached: any.then(|| stages_where(curriculum, &stands)),
            direct,
        }
    }

    /// Whether a movement rests.
    pub fn holds(&self, ix: MovementIx) -> bool {
        self.reached.as_ref().is_some_and(|r| !r.is_reached(ix))
    }

    /// The pauses behind a resting movement, as positions in the person's list: its own, else those of what it waits for.
    pub fn because(&self, curriculum: &Curriculum, ix: MovementIx) -> Vec<usize> {
        let mut seen = vec![ix];
        let mut open = vec![ix];
        let mut out: Vec<usize> = Vec::new();
        while let Some(at) = open.pop() {
            let own = &self.direct[at.at()];
            if !own.is_empty() {
                out.extend(own);
                continue;
            }
            self.blocking(&curriculum.movement(at).needs, &mut |below| {
                if !seen.contains(&below) {
                    seen.push(below);
                    open.push(below);
                }
            });
        }
        out.sort_unstable();
        out.dedup();
        out
    }

    /// The movements that keep a tree from being reached.
    fn blocking(&self, need: &Need<Leaf>, tell: &mut impl FnMut(MovementIx)) {
        need.visit(&mut |leaf| {
            if self.holds(leaf.movement) {
                tell(leaf.movement);
            }
        });
    }
}
