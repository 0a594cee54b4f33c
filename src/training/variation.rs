//! Which variation stands for a gap: itself, what builds it, what is harder, what goes in its place.

use super::constants::K;
use super::facts::Facts;
use super::line::At;
use super::trainee::Trainee;
use super::unhurt::is_no_harder;
use crate::curriculum::MovementIx;
use crate::curriculum::words::Phase;
use std::cmp::Reverse;

impl Trainee<'_> {
    /// Strong enough for sets; `None` where nothing is known.
    pub(super) fn fits(&self, ix: MovementIx) -> Option<bool> {
        *self.fits[ix.at()].get_or_init(|| self.find_fits(ix))
    }

    fn find_fits(&self, ix: MovementIx) -> Option<bool> {
        let (facts, now) = (self.roster.of(ix), self.now(ix)?);
        if facts.by_weight() && now.mass.is_added() {
            return Some(self.load(ix) >= self.roster.plate());
        }
        let many = self.is_minor() && facts.loaded() && facts.is_reps() && facts.group().is_some();
        if many {
            return Some(now.whole() > i64::from(K.minor_reps));
        }
        let [least, most] = K.fits.map(i64::from);
        let needed = match facts.is_hold() {
            true => i64::from(K.hold_fits),
            false => facts.each.min(most).max(least),
        };
        Some(now.whole() >= needed)
    }

    /// Far above its dose, and not loaded.
    pub(super) fn is_too_easy(&self, ix: MovementIx) -> bool {
        let facts = self.roster.of(ix);
        let Some(now) = self.now(ix).filter(|_| !facts.loaded()) else {
            return false;
        };
        match facts.is_hold() {
            true => now.whole() > i64::from(K.easy_hold) * facts.each,
            false => now.whole() >= facts.each + i64::from(K.easy),
        }
    }

    /// For what is too easy: the lowest open harder neighbour, not lowering, that fits or is unknown.
    pub(super) fn harder(&self, ix: MovementIx) -> Option<MovementIx> {
        if !self.is_too_easy(ix) {
            return None;
        }
        let fine = |up: &MovementIx| {
            self.may(*up)
                && !self.roster.of(*up).lowering()
                && self.fits(*up) != Some(false)
                && !self.is_too_new(*up)
        };
        let ups = self.roster.of(ix).harder.iter().copied().filter(fine);
        ups.min_by_key(|up| (self.roster.of(*up).stage, *up))
    }

    /// What goes on once a movement was shown: up its harder neighbours, as long as the next is known and fits; where none is, and it
    /// is too easy, the next to be tried, which may wait for nothing but that it is shown; of several
    /// that of the way to the goal, then that with the same equipment. Neither lowering nor with weight.
    pub(super) fn onward(&self, ix: MovementIx, in_chain: &[bool]) -> Option<MovementIx> {
        let facts = self.roster.of(ix);
        if facts.group().is_none() || facts.practised() {
            return None;
        }
        let alike = |up: &MovementIx| {
            let o = self.roster.of(*up);
            o.of.phase() == facts.of.phase() && o.measure() == facts.measure() && !o.loaded()
        };
        let next = |of: MovementIx, fine: &dyn Fn(&MovementIx) -> bool| {
            let ups = self.roster.of(of).harder.iter().copied();
            let ups = ups.filter(|up| alike(up) && fine(up));
            ups.min_by_key(|up| {
                let o = self.roster.of(*up);
                let other = o.of.equipment() != facts.of.equipment();
                (!in_chain[up.at()], other, o.stage, *up)
            })
        };
        let known = |up: &MovementIx| self.may(*up) && self.fits(*up) == Some(true);
        let mut top = ix;
        while let Some(up) = next(top, &known) {
            top = up;
        }
        let new = |up: &MovementIx| {
            let may = self.may(*up) || self.is_only_unsure(*up);
            may && self.fits(*up).is_none() && !self.is_too_new(*up)
        };
        match top != ix {
            true => Some(top),
            false => next(ix, &new).filter(|_| self.is_too_easy(ix)),
        }
    }

    /// What is tried first for a movement: from 65 and in pregnancy the lowest rung of its family that is unknown too and may be tried,
    /// else itself. Common practice, no source.
    pub(super) fn gentlest(&self, ix: MovementIx) -> MovementIx {
        if !(self.is_from(K.balance_age) || self.is_pregnant) {
            return ix;
        }
        let fine = |low: &MovementIx| {
            let o = self.roster.of(*low);
            self.may(*low) && self.now(*low).is_none() && !self.is_too_new(*low) && !o.lowering()
        };
        let lows = self.roster.of(ix).easier.iter().copied().filter(fine);
        let low = lows.min_by_key(|low| (self.roster.of(*low).stage, *low));
        low.map_or(ix, |low| self.gentlest(low))
    }

    /// Of the phase that builds another: its own, the full movement for a lowering one.
    fn is_alike(&self, ix: MovementIx, low: MovementIx) -> bool {
        let wanted = match self.roster.of(ix).lowering() {
            true => Phase::Full,
            false => self.phase(ix),
        };
        self.phase(low) == wanted
    }

    /// What may be trained below a movement, of its pattern, counted and not lowering: its easier neighbours, what its needs name,
    /// all below these (the last two with its arms), each by the higher rung; those of its phase first.
    pub(super) fn below(&self, ix: MovementIx) -> &[MovementIx] {
        self.below[ix.at()].get_or_init(|| self.find_below(ix))
    }

    fn find_below(&self, ix: MovementIx) -> Vec<MovementIx> {
        let facts = self.roster.of(ix);
        let fine = |low: &MovementIx| {
            let other = self.roster.find(*low);
            let fits =
                other.is_some_and(|o| o.pattern() == facts.pattern() && o.counted && !o.lowering());
            *low != ix && fits && self.may(*low)
        };
        let arms = |low: &MovementIx| {
            self.roster
                .find(*low)
                .is_some_and(|o| o.straight == facts.straight)
        };
        let named: Vec<MovementIx> = facts
            .of
            .needs()
            .leaves()
            .iter()
            .map(|l| l.movement)
            .collect();
        let under = self
            .roster
            .under(std::iter::once(ix).chain(facts.easier.iter().copied()));
        let mut out: Vec<MovementIx> = Vec::new();
        for (list, same_arms) in [(&facts.easier, false), (&named, true), (&under, true)] {
            let mut more: Vec<MovementIx> = list
                .iter()
                .copied()
                .filter(|low| fine(low) && (!same_arms || arms(low)) && !out.contains(low))
                .collect();
            more.sort_by_key(|low| (Reverse(self.roster.of(*low).stage), *low));
            more.dedup();
            out.append(&mut more);
        }
        out.sort_by_key(|low| !self.is_alike(ix, *low));
        out
    }

    /// What builds a movement that does not fit yet: of those of its phase what fits, then what is unknown, then of the others.
    pub(super) fn builder(&self, ix: MovementIx, plain: bool) -> Option<MovementIx> {
        let fine =
            |low: &MovementIx| !(self.is_too_new(*low) || plain && self.roster.of(*low).guarded());
        let list: Vec<MovementIx> = self.below(ix).iter().copied().filter(fine).collect();
        for alike in [true, false] {
            for known in [Some(true), None] {
                let found = list
                    .iter()
                    .find(|low| self.is_alike(ix, **low) == alike && self.fits(**low) == known);
                if found.is_some() {
                    return found.copied();
                }
            }
        }
        None
    }

    /// What is trained where a movement is to be easier: the first plain one below that is known, fit or not; else itself if plain
    /// and not lowering; else nothing.
    pub(super) fn easier(&self, ix: MovementIx) -> Option<MovementIx> {
        let facts = self.roster.of(ix);
        let known =
            |low: &&MovementIx| !self.roster.of(**low).guarded() && self.now(**low).is_some();
        let found = self.below(ix).iter().find(known).copied();
        found.or((!facts.guarded() && !facts.lowering()).then_some(ix))
    }

    /// The same on a day; where that too is to be as little as can be, the next easier neighbour of it that is known and plain.
    pub(super) fn eased(&self, ix: MovementIx, at: At) -> Option<MovementIx> {
        let low = self.easier(ix)?;
        if low == ix || !self.ease(low, at.on, at.first).least {
            return Some(low);
        }
        let facts = self.roster.of(low);
        let known = |next: &&MovementIx| {
            let plain = !self.roster.of(**next).guarded() && facts.easier.contains(*next);
            plain && self.now(**next).is_some()
        };
        Some(self.below(low).iter().find(known).copied().unwrap_or(low))
    }

    /// Where lying on the belly is left alone, of what is done over the floor the easier neighbour with the hands raised, if it is known.
    /// Common practice, no source.
    pub(super) fn hands_raised(&self, ix: MovementIx) -> MovementIx {
        let facts = self.roster.of(ix);
        if !self.spares_belly || facts.group().is_none() || !facts.over_floor() {
            return ix;
        }
        let fine = |low: &MovementIx| {
            let o = self.roster.of(*low);
            let may = self.may(*low) || self.is_only_unsure(*low);
            may && !o.over_floor() && !o.guarded() && o.counted && self.now(*low).is_some()
        };
        let lows = facts.easier.iter().copied().filter(fine);
        lows.max_by_key(|low| (self.roster.of(*low).stage, Reverse(*low)))
            .unwrap_or(ix)
    }

    /// In the place of a gap that rests or lacks its equipment: the coach's own; else, of a strength gap, what fits or is unknown,
    /// of the same pattern and arms, of its phase or not lowering, the fewest rungs away, the lower first.
    pub(super) fn instead(&self, ix: MovementIx, in_chain: &[bool]) -> Option<MovementIx> {
        self.instead_by_coach(ix)
            .or_else(|| self.nearest(ix, in_chain))
    }

    /// The first that the coach names for what keeps a movement from being trained, and that may be trained and is not too hard.
    fn instead_by_coach(&self, ix: MovementIx) -> Option<MovementIx> {
        let fine = |other: MovementIx| {
            let counts = |o: &Facts<'_>| {
                (o.mobility() || o.counted && self.fits(other) != Some(false))
                    && (!self.rests(ix) || is_no_harder(o, self.roster.of(ix)))
            };
            self.may(other)
                && !self.is_too_new(other)
                && !self.bears_more(other, ix)
                && self.roster.find(other).is_some_and(counts)
        };
        let named = self.roster.of(ix).of.instead().iter();
        let mut apt = named.filter(|one| self.is_kept_from(ix, &one.when) && fine(one.movement));
        apt.next().map(|one| one.movement)
    }

    /// What is unknown is of the way to the goal or an easier neighbour, and no higher; what is known bears no more on a part that
    /// hurts; for what rests both are no harder and no graver.
    fn nearest(&self, ix: MovementIx, in_chain: &[bool]) -> Option<MovementIx> {
        let facts = self.roster.of(ix);
        if facts.group().is_none() || facts.practised() {
            return None;
        }
        let fine = |other: &MovementIx| {
            let o = self.roster.of(*other);
            o.pattern() == facts.pattern()
                && o.straight == facts.straight
                && o.counted
                && !o.practised()
                && (o.of.phase() == facts.of.phase() || !o.lowering())
                && self.may(*other)
                && self.fits(*other) != Some(false)
                && !self.is_too_new(*other)
                && !self.bears_more(*other, ix)
                && (!self.rests(ix) || is_no_harder(o, facts))
                && (self.fits(*other) == Some(true)
                    || o.stage <= facts.stage
                        && (in_chain[other.at()] || facts.easier.contains(other)))
        };
        let others = self.roster.standing.iter().copied().filter(fine);
        others.min_by_key(|other| {
            let stage = self.roster.of(*other).stage;
            (stage.abs_diff(facts.stage), stage, *other)
        })
    }
}
