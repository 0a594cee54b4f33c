//! The steps of the way that no training opens: how long the way takes is told as far as the first of them.

use super::constants::K;
use super::goal::Gap;
use super::trainee::Trainee;
use crate::curriculum::MovementIx;
use crate::curriculum::target::{Micro, ONE};
use std::collections::HashMap;

/// Why a step cannot be shown, however well it is trained for. Common practice, no source.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Closed {
    /// With weight, which is shown from 18 on.
    Age,
    /// What it needs is not at hand: each one of several words that would do.
    Gear(Vec<Vec<String>>),
    /// From 65, too short on one leg: that is talked over first.
    Falls,
}

impl Closed {
    /// As answers for programs say it.
    pub fn word(&self) -> &'static str {
        match self {
            Closed::Age => "age",
            Closed::Gear(_) => "equipment",
            Closed::Falls => "falls",
        }
    }
}

/// Where the way of a gap ends for now: its first step that is closed, or waits for one that is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stop {
    pub at: MovementIx,
    pub by: MovementIx,
    pub why: Closed,
}

/// Seconds on each leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OneLeg {
    pub movement: MovementIx,
    pub left: Micro,
    pub right: Micro,
}

impl Trainee<'_> {
    /// What a movement and its test need that is not at hand.
    pub fn missing(&self, ix: MovementIx) -> Vec<Vec<String>> {
        let needed = self.roster.curriculum.movement(ix).equipment();
        let has = |one_of: &&Vec<String>| one_of.iter().any(|word| self.has(word));
        needed.iter().filter(|one| !has(one)).cloned().collect()
    }

    /// From 65: a balance upright on one leg that was measured and lasts too short on a side.
    pub fn falls(&self) -> Option<OneLeg> {
        if !self.is_from(K.balance_age) {
            return None;
        }
        let short = |ix: &MovementIx| {
            let facts = self.roster.of(*ix);
            if !(facts.upright_balance() && facts.of.each_side() && facts.is_hold()) {
                return None;
            }
            let (left, right) = self.own_now(*ix)?.sides?;
            (left.min(right) < i64::from(K.one_leg_s) * ONE).then_some(OneLeg {
                movement: *ix,
                left,
                right,
            })
        };
        self.roster.standing.iter().find_map(short)
    }

    fn closed(&self, ix: MovementIx, falls: Option<MovementIx>) -> Option<Closed> {
        let missing = self.missing(ix);
        match (falls == Some(ix), missing.is_empty()) {
            (true, _) => Some(Closed::Falls),
            (_, false) => Some(Closed::Gear(missing)),
            _ => (self.is_minor() && self.roster.of(ix).loaded()).then_some(Closed::Age),
        }
    }

    /// Ends the way of each gap where it is closed. `gaps`: the heaviest first; `ups`: for each the place of the next on its way.
    pub(super) fn stop(&self, gaps: &mut [Gap], ups: &[Option<usize>]) {
        let falls = self.falls().map(|one| one.movement);
        let closed: Vec<Option<Closed>> = gaps
            .iter()
            .map(|g| self.closed(g.movement, falls))
            .collect();
        let by = held_by(gaps, &closed);
        let whole: Vec<(u64, u64)> = gaps.iter().map(|g| (g.low, g.high)).collect();
        let is_falls = |c: &Option<Closed>| *c == Some(Closed::Falls);
        let all = closed.iter().position(is_falls);
        for at in 0..gaps.len() {
            let mut open = Some(at);
            while let Some(i) = open.filter(|i| by[*i].is_none()) {
                open = ups[i];
            }
            let stop = match all {
                Some(by) => Some((at, by)),
                None => open.and_then(|i| Some((i, by[i]?))),
            };
            let Some((end, by)) = stop else { continue };
            let Some(why) = closed[by].clone() else {
                continue;
            };
            gaps[at].low -= whole[end].0;
            gaps[at].high -= whole[end].1;
            gaps[at].stop = Some(Stop {
                at: gaps[end].movement,
                by: gaps[by].movement,
                why,
            });
        }
    }
}

/// For each gap the place of what closes it: itself, else the heaviest closed one below it.
fn held_by(gaps: &[Gap], closed: &[Option<Closed>]) -> Vec<Option<usize>> {
    let place: HashMap<MovementIx, usize> = gaps
        .iter()
        .enumerate()
        .map(|(i, g)| (g.movement, i))
        .collect();
    let own = |i: usize| closed[i].is_some().then_some(i);
    let mut by: Vec<Option<usize>> = (0..gaps.len()).map(own).collect();
    for from in (0..gaps.len()).filter(|i| closed[*i].is_some()) {
        let mut open = vec![from];
        while let Some(i) = open.pop() {
            for up in gaps[i].opens.iter().filter_map(|ix| place.get(ix)) {
                if by[*up].is_none() {
                    by[*up] = Some(from);
                    open.push(*up);
                }
            }
        }
    }
    by
}
