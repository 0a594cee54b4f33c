//! What has a number and no line on the first day, and why: nothing vanishes without a word.

use super::diary::is_near;
use super::facts::ORDER;
use super::line::Line;
use super::reason::Left;
use super::session::Laying;
use crate::curriculum::{Day, MovementIx};
use std::cmp::Reverse;

impl Laying<'_, '_> {
    /// The limiter, and of each pattern of strength the highest rung with a number of its own, where neither a line nor a word is of
    /// it. Common practice, no source.
    pub(super) fn absent(
        &self,
        on: Day,
        lines: &[Line],
        left: &[(MovementIx, Left)],
    ) -> Vec<(MovementIx, Left)> {
        let (t, roster) = (self.trainee, self.trainee.roster);
        let mut out: Vec<(MovementIx, Left)> = Vec::new();
        if let Some(at) = self.candidates.limiter {
            let ix = self.gaps[at].movement;
            let stands = |l: &Line| l.gap == Some(at) || l.movement == ix;
            if !lines.iter().any(stands) && !left.iter().any(|(of, _)| *of == ix) {
                out.push((ix, self.why_absent(ix, on, lines)));
            }
        }
        for pattern in ORDER {
            let of = |ix: MovementIx| roster.of(ix).pattern() == pattern;
            let said = left.iter().chain(&out).any(|(ix, _)| of(*ix));
            if said || lines.iter().any(|l| of(l.movement)) {
                continue;
            }
            let has_number = |ix: &MovementIx| {
                let facts = roster.of(*ix);
                of(*ix) && facts.counted && !facts.practised() && t.has_result(*ix)
            };
            let known = roster.standing.iter().copied().filter(has_number);
            if let Some(ix) = known.max_by_key(|ix| (roster.of(*ix).stage, Reverse(*ix))) {
                out.push((ix, self.why_absent(ix, on, lines)));
            }
        }
        out
    }

    fn why_absent(&self, ix: MovementIx, on: Day, lines: &[Line]) -> Left {
        let (t, roster) = (self.trainee, self.trainee.roster);
        let group = roster.of(ix).group();
        let near = group.filter(|g| is_near(self.diary.groups.get(g), on));
        let served = group.filter(|_| {
            let mut hard = lines.iter().filter(|l| l.block.is_hard());
            hard.any(|l| roster.of(l.movement).group() == group)
        });
        match (t.sore_part(ix), near, served) {
            _ if !(t.is_open(ix) || t.was_done(ix)) => Left::NotShown,
            _ if !t.may(ix) => t.why_not(ix),
            (Some(part), _, _) => Left::Spared(part),
            (_, Some(group), _) => Left::Apart(group),
            _ if t.now(ix).is_none() => Left::Careful,
            (_, _, Some(group)) => Left::Served(group),
            _ => Left::Turns,
        }
    }
}
