//! What was done before though it is not open: something that it needs was never shown, and nothing of that failed.

use super::constants::K;
use super::trainee::Trainee;
use crate::curriculum::MovementIx;

impl Trainee<'_> {
    /// Not open, since something that it needs was never shown, but nothing of that was tested and failed; and a number of its own
    /// still counts. Neither inverted nor loaded. Common practice, no source.
    pub fn was_done(&self, ix: MovementIx) -> bool {
        self.before[ix.at()] && !self.owns(ix)
    }

    /// Kept from being open by nothing but what was never shown, and free of what rests or hurts. Neither inverted nor loaded.
    pub(super) fn is_only_unsure(&self, ix: MovementIx) -> bool {
        self.unsure[ix.at()]
            && !self.owns(ix)
            && !self.roster.of(ix).guarded()
            && !self.rests(ix)
            && self.is_at_hand(ix)
            && self.sore_part(ix).is_none()
    }

    /// At least two reps, or five seconds, measured or logged.
    pub(super) fn has_number(&self, ix: MovementIx) -> bool {
        let facts = self.roster.of(ix);
        let least = match facts.is_hold() {
            true => K.hold_fits,
            false => K.fits[0],
        };
        facts.counted
            && !facts.guarded()
            && self.has_result(ix)
            && self
                .own_now(ix)
                .is_some_and(|now| now.whole() >= i64::from(least))
    }

    /// Lifted with weight by an adult, though not open, since something that it needs was never shown, but nothing of that failed:
    /// it is not trained itself, but the lighter step of its family is, for it. Common practice, no source.
    pub(super) fn was_lifted(&self, ix: MovementIx) -> bool {
        self.unsure[ix.at()]
            && !self.owns(ix)
            && !self.is_minor()
            && self.roster.of(ix).by_weight()
            && self.has_result(ix)
            && self.own_now(ix).is_some_and(|now| now.mass.is_added())
    }

    /// The highest lighter step of what was lifted: of its family, with weight on record too, and it may be trained.
    pub(super) fn lighter_step(&self, ix: MovementIx) -> Option<MovementIx> {
        let fine = |low: &MovementIx| {
            let weight = || self.now(*low).is_some_and(|now| now.mass.is_added());
            self.roster.of(*low).by_weight() && self.may(*low) && weight()
        };
        let lows = self.roster.of(ix).easier.iter().copied().filter(fine);
        lows.max_by_key(|low| (self.roster.of(*low).stage, std::cmp::Reverse(*low)))
    }
}
