//! What is kept up beside the gaps: of each pattern of the chain, of each group, and balance from 65.

use super::{Candidate, Pool};
use crate::curriculum::MovementIx;
use crate::curriculum::words::Pattern;
use crate::training::constants::K;
use crate::training::facts::{Group, ORDER};
use crate::training::goal::Goal;
use crate::training::reason::{Block, Reason, Rule};
use std::cmp::Reverse;

impl Pool<'_, '_> {
    /// What is kept up: each pattern of the chain without a strength line of known amount, then each group without one; of a group
    /// without any line a first try.
    pub(super) fn keep_up(&mut self, goal: Option<&Goal>) {
        let t = self.trainee;
        let roster = t.roster;
        let counts = |c: &&Candidate| {
            c.block == Block::Strength && !matches!(c.rule, Rule::FirstTry | Rule::Show)
        };
        let mut known: Vec<Pattern> = self
            .all
            .iter()
            .filter(counts)
            .map(|c| roster.of(c.movement).pattern())
            .collect();
        let chain: &[MovementIx] = goal.map_or(&roster.standing, |g| &g.chain);
        let can: Vec<MovementIx> = roster
            .standing
            .iter()
            .copied()
            .filter(|ix| {
                let f = roster.of(*ix);
                f.group().is_some() && f.counted && !f.lowering() && !f.practised() && t.may(*ix)
            })
            .collect();
        for pattern in ORDER {
            let of = |ix: &MovementIx| roster.of(*ix).pattern() == pattern;
            if chain.iter().any(of) && !known.contains(&pattern) {
                let list: Vec<MovementIx> = can.iter().copied().filter(of).collect();
                known.extend(self.keep(&list, Reason::NoGap(pattern)));
            }
        }
        for group in Group::ALL {
            self.keep_group(group, &can, &mut known);
            self.name_resting(group);
        }
        self.go_on(&can);
        if self.rests {
            self.fill(&can);
        }
        self.keep_balance(chain);
    }

    /// Of a group without a line of known amount what is highest; where all of it is heavy on a part that hurts, what is not; of a group
    /// without any line a first try.
    fn keep_group(&mut self, group: Group, can: &[MovementIx], known: &mut Vec<Pattern>) {
        let (t, roster) = (self.trainee, self.trainee.roster);
        let of_group = |ix: &MovementIx| roster.of(*ix).group() == Some(group);
        let plain = |ix: &MovementIx| of_group(ix) && !roster.of(*ix).guarded();
        let list: Vec<MovementIx> = can.iter().copied().filter(plain).collect();
        if !known.iter().any(|p| Group::of(*p) == Some(group)) {
            known.extend(self.keep(&list, Reason::WholeBody));
        }
        let has_line = |c: &&Candidate| self.stands(c) && of_group(&c.movement);
        let lines: Vec<MovementIx> = self
            .all
            .iter()
            .filter(has_line)
            .map(|c| c.movement)
            .collect();
        if !lines.is_empty() && lines.iter().all(|ix| t.is_heavy_on_sore(*ix)) {
            let free = list.iter().copied().filter(|ix| !t.is_heavy_on_sore(*ix));
            self.keep(&free.collect::<Vec<_>>(), Reason::WholeBody);
        }
        if lines.is_empty() {
            let mut standing = roster.standing.iter().copied().filter(of_group);
            let why = match standing.any(|ix| t.now(ix).is_some()) {
                true => Reason::NothingKnown,
                false => Reason::NothingOfGroup(group),
            };
            self.try_one(&list, why);
        }
    }

    /// What was trained lately of the chain goes on, if less: it does not make room for others. Common practice, no source.
    fn go_on(&mut self, can: &[MovementIx]) {
        let t = self.trainee;
        let goes_on = |ix: &MovementIx| {
            let itself = t.did_lately(*ix).is_some_and(|did| did.of.movement == *ix);
            itself && t.fits(*ix) == Some(true) && !t.is_too_easy(*ix)
        };
        for ix in can.iter().copied().filter(goes_on) {
            if self.in_chain[ix.at()] && !self.all.iter().any(|c| c.movement == ix && !c.single) {
                self.add(self.kept(ix, Rule::GoesOn, Reason::GoesOn));
            }
        }
    }

    /// A line of strength that need not wait for what is over only lately.
    fn stands(&self, c: &Candidate) -> bool {
        let t = self.trainee;
        c.block.is_hard() && t.waits_lately(c.movement, t.today).is_none()
    }

    fn has_line(&self, group: Group) -> bool {
        let of = |c: &Candidate| self.trainee.roster.of(c.movement).group() == Some(group);
        self.all.iter().any(|c| of(c) && self.stands(c))
    }

    /// Where a gap rests and nothing stands in its place, the rest of the body has the room: a plain line of each pattern without
    /// one, a second of the core, a first try where its group has no line (of legs and core where its pattern has none), a stand
    /// on one leg, and all plain range. Common practice, no source.
    fn fill(&mut self, can: &[MovementIx]) {
        let roster = self.trainee.roster;
        for pattern in ORDER {
            let list: Vec<MovementIx> = can
                .iter()
                .copied()
                .filter(|ix| roster.of(*ix).pattern() == pattern && !roster.of(*ix).guarded())
                .collect();
            let lines = if pattern == Pattern::Core { 2 } else { 1 };
            for _ in 0..lines {
                let of =
                    |c: &&Candidate| self.stands(c) && roster.of(c.movement).pattern() == pattern;
                let full = self.all.iter().filter(of).count() >= lines;
                let group = Group::of(pattern);
                let is_new = !full && self.keep(&list, Reason::WholeBody).is_none();
                let more = matches!(group, Some(Group::Core | Group::Legs));
                if is_new && (more || group.is_none_or(|group| !self.has_line(group))) {
                    self.try_one(&list, Reason::WholeBody);
                }
            }
        }
        self.stand_on_one_leg();
        let range = roster.standing.iter().copied().filter(|ix| {
            let facts = roster.of(*ix);
            let t = self.trainee;
            facts.mobility() && !facts.guarded() && t.may(*ix) && !t.is_too_new(*ix)
        });
        for ix in range.collect::<Vec<_>>() {
            self.add(Candidate {
                block: Block::Range,
                ..self.kept(ix, Rule::Range, Reason::WholeBody)
            });
        }
    }

    /// The lowest upright balance that may be tried, where none has a line, and at most one line is of what is known or none is of the
    /// legs.
    fn stand_on_one_leg(&mut self) {
        let t = self.trainee;
        let upright = |ix: MovementIx| t.roster.of(ix).upright_balance();
        let known = |c: &Candidate| c.block.is_hard() && c.rule != Rule::FirstTry;
        let lines = self.all.iter().filter(|c| known(c)).count();
        if lines > 1 && self.has_line(Group::Legs) || self.all.iter().any(|c| upright(c.movement)) {
            return;
        }
        let fine = |ix: &MovementIx| upright(*ix) && t.may(*ix) && !t.is_too_new(*ix);
        let all = t.roster.standing.iter().copied().filter(fine);
        if let Some(ix) = all.min_by_key(|ix| (t.roster.of(*ix).stage, *ix)) {
            self.add(Candidate {
                block: Block::Practice,
                ..self.kept(ix, Rule::KeptUp, Reason::WholeBody)
            });
        }
    }

    /// Where no gap has a line of balance, the highest rung of the chain that is known stays in practice. Common practice, no
    /// source.
    fn keep_balance(&mut self, chain: &[MovementIx]) {
        let t = self.trainee;
        let of = |ix: MovementIx| t.roster.of(ix).pattern() == Pattern::Balance;
        if self.all.iter().any(|c| of(c.movement)) {
            return;
        }
        let known = |ix: &MovementIx| {
            of(*ix) && t.may(*ix) && t.now(*ix).is_some_and(|now| now.whole() >= 1)
        };
        let known = chain.iter().copied().filter(known);
        if let Some(ix) = known.min_by_key(|ix| (Reverse(t.roster.of(*ix).stage), *ix)) {
            self.add(Candidate {
                block: Block::Practice,
                ..self.kept(ix, Rule::KeptUp, Reason::NoGap(Pattern::Balance))
            });
        }
    }

    /// Keeps up the highest rung that fits and does not stand already, off what hurts and with bent arms first; where it is too easy
    /// the next. Gives its pattern.
    fn keep(&mut self, list: &[MovementIx], why: Reason) -> Option<Pattern> {
        let t = self.trainee;
        let stands = |ix: MovementIx| self.all.iter().any(|c| c.movement == ix && !c.single);
        let fitting = list
            .iter()
            .filter(|ix| t.fits(**ix) == Some(true) && !stands(**ix));
        let best = *fitting.min_by_key(|ix| {
            let f = t.roster.of(**ix);
            let sore = t.sore_part(**ix).is_some();
            (sore, f.straight, Reverse(f.stage), **ix)
        })?;
        let up = t.harder(best);
        if up.is_none_or(|up| t.fits(up) != Some(true)) {
            self.add(self.kept(best, Rule::KeptUp, why));
        }
        if let (Some(up), Some(why)) = (up, t.easy(best)) {
            self.add(self.kept(up, Rule::Harder, why));
        }
        Some(t.roster.of(best).pattern())
    }

    /// A first try: after long off what was trained before, else the lowest rung, from 65 and in pregnancy of its family too, bent arms,
    /// the fewest cautions.
    fn try_one(&mut self, list: &[MovementIx], why: Reason) {
        let t = self.trainee;
        let stands = |ix: MovementIx| self.all.iter().any(|c| c.movement == ix && !c.single);
        let unknown = list
            .iter()
            .filter(|ix| t.now(**ix).is_none() && !stands(**ix) && !t.is_too_new(**ix))
            .filter(|ix| t.waits_lately(**ix, t.today).is_none());
        let easiest = unknown.min_by_key(|ix| {
            let f = t.roster.of(**ix);
            let done = t.logged(**ix).next().is_some();
            (
                !done,
                t.gentlest(**ix) != **ix,
                f.stage,
                f.straight,
                f.of.cautions().len(),
                **ix,
            )
        });
        if let Some(ix) = easiest {
            let why = match t.logged(*ix).next() {
                Some(_) => Reason::TriedAnew,
                None => why,
            };
            self.add(self.kept(*ix, Rule::FirstTry, why));
        }
    }

    /// Where nothing is known of a group, and what would be tried first of it rests: it is named.
    fn name_resting(&mut self, group: Group) {
        let (t, roster) = (self.trainee, self.trainee.roster);
        let known = |c: &Candidate| {
            let of_group = roster.of(c.movement).group() == Some(group);
            c.block.is_hard() && c.rule != Rule::FirstTry && of_group
        };
        if self.all.iter().any(known) {
            return;
        }
        let could = |ix: &MovementIx| {
            let f = roster.of(*ix);
            f.group() == Some(group)
                && f.counted
                && !(f.lowering() || f.practised() || f.guarded())
                && t.now(*ix).is_none()
                && t.could(*ix)
        };
        let all = roster.standing.iter().copied().filter(could);
        let lowest = all.min_by_key(|ix| {
            let f = roster.of(*ix);
            (f.stage, f.straight, f.of.cautions().len(), *ix)
        });
        if let Some(ix) = lowest.filter(|ix| !t.may(*ix)) {
            self.left.push((ix, t.why_not(ix)));
        }
    }

    /// From 65 an upright balance movement in every session: of the gaps, else the highest rung.
    pub(super) fn upright(&mut self) -> Option<usize> {
        let t = self.trainee;
        if !t.is_from(K.balance_age) {
            return None;
        }
        let stands = |ix: MovementIx| t.roster.of(ix).upright_balance() && t.may(ix);
        let found = |c: &Candidate| stands(c.movement) && c.rule != Rule::Show;
        if let Some(at) = self.all.iter().position(found) {
            return Some(at);
        }
        let highest = |ix: &MovementIx| (Reverse(t.roster.of(*ix).stage), *ix);
        let all = t.roster.standing.iter().copied().filter(|ix| stands(*ix));
        let best = all.clone().filter(|ix| !t.is_too_new(*ix));
        let Some(best) = best.min_by_key(highest) else {
            let new = all.min_by_key(highest);
            self.left.extend(new.map(|ix| (ix, t.why_not_new(ix))));
            return None;
        };
        self.all.retain(|c| c.movement != best || c.single);
        self.add(Candidate {
            block: Block::Practice,
            why: Vec::new(),
            ..self.kept(best, Rule::Balance, Reason::WholeBody)
        });
        Some(self.all.len() - 1)
    }
}
