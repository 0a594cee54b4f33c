//! What hurt or rested and is over only lately: with what of it training goes on, and what new still waits. Common practice, no source.

use super::constants::K;
use super::ended::{Ended, Hurt};
use super::line::At;
use super::now::Now;
use super::reason::Reason;
use super::trainee::Trainee;
use crate::curriculum::caution::{Book, Shipped, Signal};
use crate::curriculum::day::WEEK;
use crate::curriculum::words::BodyPart;
use crate::curriculum::{Day, MovementIx};
use crate::results::Paused;
use crate::training::ease::Ease;

/// Something that is over, while less is still asked for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lately {
    pub what: Paused,
    /// The last day of less.
    pub until: Day,
    /// It was long enough to be come back from by steps.
    pub long: bool,
}

impl Trainee<'_> {
    /// All that is over only lately on a day, with whether it reaches a movement.
    fn is_over(&self, on: Day, reaches: impl Fn(Over<'_>) -> bool) -> Vec<Lately> {
        let hurt = self.eased.iter().filter(|h| reaches(Over::Hurt(h)));
        let hurt = hurt.map(|h| Lately {
            what: Paused::Part(h.part),
            until: h.on.plus(K.pain_days),
            long: false,
        });
        let ended = self.ended.iter().filter(|e| reaches(Over::Ended(e)));
        let ended = ended.map(|e| Lately {
            what: e.what,
            until: e.until.plus(WEEK * K.pause_weeks),
            long: true,
        });
        hurt.chain(ended).filter(|l| on <= l.until).collect()
    }

    /// What is over only lately and reaches a movement, on a day.
    pub(super) fn lately(&self, ix: MovementIx, on: Day) -> Vec<Lately> {
        self.is_over(on, |over| match over {
            Over::Hurt(hurt) => self.is_eased_on(hurt, ix),
            Over::Ended(ended) => self.is_back_from(ended, ix),
        })
    }

    /// All that is over only lately today, each once, to its last day.
    pub(super) fn over_lately(&self) -> Vec<Lately> {
        let mut out: Vec<Lately> = Vec::new();
        for one in self.is_over(self.today, |_| true) {
            match out.iter_mut().find(|known| known.what == one.what) {
                Some(known) => known.until = known.until.max(one.until),
                None => out.push(one),
            }
        }
        out
    }

    /// What is over only lately, and for which an unknown movement waits: that was long; or it is heavy on it, of a class with a
    /// warning, moved on slowly as on rings or straight arms, overhead for a shoulder, or harder than what is known of its pattern.
    pub(super) fn waits_lately(&self, ix: MovementIx, on: Day) -> Option<Lately> {
        let facts = self.roster.of(ix);
        if self.now(ix).is_some() || facts.mobility() {
            return None;
        }
        let slow = facts.strict && !facts.upright_balance();
        let grave = self.is_grave(ix) || slow || facts.stage > self.reach(facts.pattern());
        let cautions = facts.of.cautions();
        let overhead = cautions.contains(&Book::shipped(Shipped::Overhead));
        let heavy = |what: Paused| {
            let on = |part: &BodyPart| what == Paused::Part(*part);
            facts.heavy_on.iter().any(on) || overhead && on(&BodyPart::Shoulder)
        };
        let mut lately = self.lately(ix, on).into_iter();
        lately.find(|l| l.long || grave || heavy(l.what))
    }

    /// Of a class with a warning.
    pub(super) fn is_grave(&self, ix: MovementIx) -> bool {
        let book = self.roster.curriculum.cautions();
        let mut all = self.roster.of(ix).of.cautions().iter();
        all.any(|class| book.class(*class).signal == Signal::Warning)
    }

    /// What a first try says of what hurt or rested lately: it is as any other, but goes no further than what is asked.
    pub(super) fn tried_lately(&self, ix: MovementIx, ease: &Ease, at: At) -> Option<Reason> {
        let known: Option<Now> = self.now(ix);
        let (_, why) = ease.by?;
        let over = matches!(why, Reason::Hurt(..) | Reason::AfterPause(_));
        let new = known.is_none() && !self.roster.of(ix).mobility();
        let back = || self.after_time_off(ix, at.on, at.first).by.is_some();
        (over && new && !back()).then_some(why)
    }
}

/// What is over.
enum Over<'e> {
    Hurt(&'e Hurt),
    Ended(&'e Ended),
}
