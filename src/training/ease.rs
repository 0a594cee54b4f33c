//! What is taken back on a day: after time off, for pain, after a pause.

use super::back::Most;
use super::constants::K;
use super::ended::{holds, is_worse, takes_back};
use super::reason::{Reason, Rule};
use super::trainee::Trainee;
use crate::curriculum::caution::{Book, Shipped};
use crate::curriculum::day::WEEK;
use crate::curriculum::words::{BodyPart, Screening};
use crate::curriculum::{Day, MovementIx};
use crate::readiness::{Cause, causes};
use crate::results::Pain;

/// How a line is made less.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ease {
    /// Half the sets, 0.8 of the amount.
    pub light: bool,
    /// Light, but nearer to what it was.
    pub nearly: bool,
    /// A rung down, neither inverted nor loaded.
    pub easier: bool,
    /// Nothing moves on.
    pub hold: bool,
    /// Held for a pain of 3 to 5: neither sets nor amounts grow.
    pub sore: bool,
    /// And it is 4 or 5, or worse the next morning.
    pub worse: bool,
    /// And it is 5, or the part itself rests: one rung further down, and less still.
    pub least: bool,
    /// The last rule that took something back, with its reason.
    pub by: Option<(Rule, Reason)>,
    /// Back from time off: no more than before it.
    pub most: Option<Most>,
}

impl Ease {
    /// The share of the amount, or of the load.
    pub(super) fn share(&self) -> f64 {
        match (self.light, self.least, self.nearly) {
            (false, ..) => 1.0,
            (true, true, _) => K.least,
            (true, false, true) => K.back,
            (true, false, false) => K.light,
        }
    }

    /// Back from time off and on the way to what it was.
    pub(super) fn comes_back(&self) -> bool {
        matches!(self.by, Some((_, Reason::BackAfter(_))))
    }

    /// Nothing taken back, but nothing moves on: a first try.
    pub(super) fn of_a_first(self) -> Ease {
        Ease {
            light: false,
            nearly: false,
            easier: false,
            by: None,
            ..self
        }
    }

    /// With what another says of a part that hurts.
    pub(super) fn and_sore(mut self, other: Ease) -> Ease {
        self.most = other.most;
        if other.sore && !self.sore {
            self.hold = true;
            self.sore = true;
            self.nearly &= !other.worse;
            self.light |= other.worse;
            self.worse = other.worse;
            self.least = other.least;
            self.by = other.by;
        }
        self
    }
}

impl Trainee<'_> {
    /// What is taken back of a movement on a day of a plan that begins on `first`.
    pub(super) fn ease(&self, ix: MovementIx, on: Day, first: Day) -> Ease {
        let facts = self.roster.of(ix);
        let mut ease = self.after_time_off(ix, on, first);
        ease.hold |= self.has_sign;
        for hurt in &self.eased {
            if self.is_eased_on(hurt, ix) && on.days_after(hurt.on) <= K.pain_days {
                ease.hold = true;
                ease.by = Some((Rule::Pain, Reason::Hurt(hurt.part, hurt.score)));
            }
        }
        for pain in self.newest_pains() {
            let rests = self.is_left_of(ix, pain);
            if !(rests || holds(pain) && facts.stresses(pain.part)) {
                continue;
            }
            let lightly = facts.stresses_lightly(pain.part);
            if lightly && self.now(ix).is_none() {
                continue;
            }
            let next = is_worse(pain);
            let worse = rests || !lightly && takes_back(pain);
            ease.hold = true;
            ease.sore = true;
            let least = worse && (rests || pain.score >= K.pain_least);
            ease.worse |= worse;
            ease.least |= least;
            ease.nearly &= !worse;
            ease.light |= worse;
            ease.easier |= worse;
            let why = Reason::Hurts {
                part: pain.part,
                score: pain.score,
                next: worse && next,
                less: worse,
                least,
                near: false,
            };
            ease.by = Some((Rule::Pain, why));
        }
        for ended in &self.ended {
            let week = (on.days_after(ended.until) - 1).div_euclid(WEEK) + 1;
            if week > K.pause_weeks || !self.is_back_from(ended, ix) {
                continue;
            }
            // Week 1 light and easier, week 2 easier, week 3 light.
            ease.hold = true;
            ease.nearly &= week == 2;
            ease.light |= week != 2;
            ease.easier |= week <= 2;
            ease.by = Some((Rule::Pause, Reason::AfterPause(week)));
        }
        ease
    }

    /// While a part rests: what bears on it lightly, and what is easier than something known that bears on it, is at most what a pain of
    /// 5 leaves. More pain never gets more. Common practice, no source.
    fn is_left_of(&self, ix: MovementIx, pain: &Pain) -> bool {
        let facts = self.roster.of(ix);
        let known =
            |up: &MovementIx| self.roster.of(*up).bears_on(pain.part) && self.now(*up).is_some();
        self.stops(pain)
            && !facts.mobility()
            && (facts.stresses(pain.part)
                || facts.counted && self.roster.above(ix).iter().any(known))
    }

    /// The parts that hurt so that what bears on them is held back.
    pub fn holding_parts(&self) -> Vec<BodyPart> {
        let hurts = self.newest_pains().into_iter();
        let hurts = hurts.filter(|p| holds(p));
        hurts.map(|p| p.part).collect()
    }

    /// A part that a movement stresses and on which nothing grows today.
    pub(super) fn sore_part(&self, ix: MovementIx) -> Option<BodyPart> {
        let facts = self.roster.of(ix);
        let hurts = |p: &&Pain| facts.bears_on(p.part) && holds(p);
        self.newest_pains().into_iter().find(hurts).map(|p| p.part)
    }

    /// A part that hurts and that a movement stresses, however lightly: nothing new on it. Common practice, no source.
    pub(super) fn touched_part(&self, ix: MovementIx) -> Option<BodyPart> {
        let facts = self.roster.of(ix);
        let hurts = |p: &&Pain| facts.stresses(p.part) && holds(p);
        self.newest_pains().into_iter().find(hurts).map(|p| p.part)
    }

    /// A part that hurts and that a movement stresses too much for that: it stretches it, is heavy on it, or began to hurt on that day.
    /// Common practice, no source.
    pub(super) fn is_too_much(&self, ix: MovementIx, on: Day) -> Option<BodyPart> {
        let facts = self.roster.of(ix);
        let on_it = |pain: &&Pain| {
            let too_much = || facts.heavy_on.contains(&pain.part) || pain.on == on;
            holds(pain)
                && match facts.mobility() {
                    true => facts.stresses(pain.part),
                    false => facts.bears_on(pain.part) && too_much(),
                }
        };
        self.newest_pains().into_iter().find(on_it).map(|p| p.part)
    }

    /// A shoulder at 4 or 5, or worse the next morning, where a movement has the arms overhead and bears on it. Common practice, no
    /// source.
    pub(super) fn is_overhead_on(&self, ix: MovementIx) -> Option<BodyPart> {
        let facts = self.roster.of(ix);
        let overhead = facts
            .of
            .cautions()
            .contains(&Book::shipped(Shipped::Overhead));
        let less = |p: &&Pain| {
            p.part == BodyPart::Shoulder && facts.bears_on(p.part) && holds(p) && takes_back(p)
        };
        let mut pains = self.newest_pains().into_iter().filter(|_| overhead);
        pains.find(less).map(|p| p.part)
    }

    /// Heavy on a part that hurts today: it has no line, and nothing easier in its place has one.
    pub(super) fn is_heavy_on_sore(&self, ix: MovementIx) -> bool {
        let facts = self.roster.of(ix);
        let pains = self.newest_pains().into_iter().filter(|p| holds(p));
        let mut on = pains.map(|p| p.part);
        on.any(|part| facts.bears_on(part) && facts.heavy_on.contains(&part))
    }

    /// A part that hurts today, that a movement stresses and another is heavy on, in whose place it would stand.
    pub(super) fn is_heavy_below(&self, ix: MovementIx, than: MovementIx) -> Option<BodyPart> {
        let (of, than) = (self.roster.of(ix), self.roster.of(than));
        let heavy = |p: &&Pain| of.bears_on(p.part) && than.heavy_on.contains(&p.part);
        let mut pains = self.newest_pains().into_iter().filter(heavy);
        pains.find(|p| holds(p)).map(|p| p.part)
    }

    /// Whether one movement bears more than another on a part that hurts today: a stand-in must not.
    pub(super) fn bears_more(&self, other: MovementIx, than: MovementIx) -> bool {
        let (other, than) = (self.roster.of(other), self.roster.of(than));
        let more = |p: &Pain| {
            other.bears_on(p.part) && !than.bears_on(p.part)
                || other.heavy_on.contains(&p.part) && !than.heavy_on.contains(&p.part)
        };
        let pains = self.newest_pains();
        pains.iter().any(|p| holds(p) && more(p))
    }

    /// Something is restricted or paused for pain, a part hurts, or training has only begun again: nothing harder is tried first.
    pub(super) fn asks_for_care(&self) -> bool {
        let spared = causes(self.person, self.today);
        spared.iter().any(|cause| !matches!(cause, Cause::Pause(_)))
            || self.newest_pains().iter().any(|p| holds(p))
            || self.is_back
    }

    /// Whether a list of what all may train may name it: the health questions are answered, it is open or owned, nothing of it hurts
    /// or rests, and nothing of it is too new: a stretch never where it has no number. Common practice, no source.
    pub fn is_for_all(&self, ix: MovementIx) -> bool {
        let says = self.person.screening_on(self.today);
        let new = || self.now(ix).is_none() && self.roster.of(ix).mobility();
        says.is_some_and(|says| says != Screening::Ask)
            && self.is_open(ix)
            && !self.rests(ix)
            && self.pulled_nerve(ix).is_none()
            && self.sore_part(ix).is_none()
            && !(new() || self.is_too_new(ix))
    }

    /// Whether a first try goes no further than what is asked: something is restricted, or hurt or rested lately.
    pub(super) fn goes_no_further(&self, ix: MovementIx, on: Day) -> bool {
        self.is_held_back || !self.lately(ix, on).is_empty()
    }

    /// Whether an open set of a first try has a bound: back from time off, on a part that hurts, however little, from 65 on, and with one
    /// side at a time.
    pub(super) fn goes_to_a_bound(&self, ix: MovementIx) -> bool {
        let facts = self.roster.of(ix);
        let hurts = |p: &&Pain| p.score > 0 && facts.stresses(p.part);
        self.is_back
            || self.is_from(K.balance_age)
            || facts.of.each_side()
            || self.newest_pains().iter().any(hurts)
    }

    /// Something is restricted, or only light training is allowed.
    pub(super) fn finds_restriction(&self) -> bool {
        let restricted = |cause: &Cause| matches!(cause, Cause::Restriction(_) | Cause::Light);
        causes(self.person, self.today).iter().any(restricted)
    }

    /// By the whole log: two weeks off or more, now or ended less than a week ago, from four weeks on less than two.
    pub fn is_back_lately(&self) -> bool {
        let mut days: Vec<Day> = self.log.iter().map(|t| t.of.on).collect();
        days.push(self.today);
        let long = days
            .windows(2)
            .rev()
            .find(|two| two[1].days_after(two[0]) >= K.off[0]);
        long.is_some_and(|two| {
            let longer = two[1].days_after(two[0]) >= K.off[1];
            self.today.days_after(two[1]) < K.off_for[usize::from(longer)]
        })
    }
}
