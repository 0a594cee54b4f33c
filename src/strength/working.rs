//! Working sets: which variation fits today, how many, and why; skill practice beside them.
//!
//! Common practice, no source, but where a source is named: about five good reps for about five sets, two to five in reserve.

use super::best::{Best, best, without_zero};
use super::plan::sets_a_session;
use super::progress::Log;
use crate::chain::Stages;
use crate::curriculum::target::{Added, Got, Measure, Micro, ONE};
use crate::curriculum::words::{Arms, Pattern, Phase, Practice as Prefers};
use crate::curriculum::{Curriculum, Day, Movement, MovementIx};
use crate::readiness::{Readiness, State};
use crate::results::Person;
use std::collections::HashSet;

/// The patterns that are trained in working sets, in the order of a session.
pub const PATTERNS: &[Pattern] = &[
    Pattern::VerticalPush,
    Pattern::VerticalPull,
    Pattern::HorizontalPush,
    Pattern::HorizontalPull,
    Pattern::Squat,
    Pattern::Hinge,
    Pattern::Carry,
    Pattern::Core,
];

/// A whole hold is short of half a minute or beyond a minute and a half outside these; seconds a session.
/// Source: total 30 to 90 s (Lum & Barbosa 2019, Int J Sports Med 40(6):363-375; from memory).
const HELD: std::ops::RangeInclusive<i64> = 30..=90;
/// A load in shares of body weight rises by a fortieth of it: 2.5 to 10 % of what moves (NSCA Essentials), smallest step.
const SHARE_STEP: Micro = ONE / 40;
/// How a movement's best set fits its dose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    Untested,
    Above,
    Keep,
    Short,
    Below,
}

/// Sets of an amount.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prescription {
    pub measure: Measure,
    pub sets: u32,
    /// Reps, or seconds of a hold.
    pub amount: i64,
    /// Seconds of each rep, in millionths; 0 where none are asked.
    pub seconds: Micro,
    pub added: Option<Added>,
}

impl Prescription {
    fn got(&self) -> Got {
        Got::of(
            self.measure,
            self.sets,
            self.amount * ONE,
            self.seconds,
            self.added,
        )
    }

    /// In the canonical form of targets.
    pub fn text(&self) -> String {
        self.got().to_string()
    }

    /// For readers: the sets of one movement, of each side where it is done side by side.
    pub fn words(&self, curriculum: &Curriculum, movement: MovementIx) -> String {
        let own = self.got().words(curriculum.school.units);
        match curriculum.movement(movement).each_side {
            true => format!("{own}, each side"),
            false => own,
        }
    }
}

/// A movement to train.
#[derive(Clone, Debug, PartialEq)]
pub struct Pick {
    pub movement: MovementIx,
    pub prescription: Prescription,
    pub fit: Fit,
    pub why: String,
}

/// Skill practice.
#[derive(Clone, Debug, PartialEq)]
pub struct Practice {
    pub movement: MovementIx,
    pub prescription: Prescription,
    /// Before the working sets, while fresh; else after them.
    pub before: bool,
    pub why: &'static str,
}

/// What a client trains today.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Working {
    pub picks: Vec<Pick>,
    pub practice: Vec<Practice>,
}

/// Picks working sets and skill practice among some movements. Only what is open or owned, not paused, and with equipment at
/// hand; never a set beyond the client's best.
pub fn working(
    curriculum: &Curriculum,
    stages: &Stages,
    person: &Person,
    readiness: &Readiness,
    list: &[MovementIx],
    today: Day,
) -> Working {
    let room = Room {
        curriculum,
        stages,
        person,
        readiness,
        today,
    };
    let mut groups: Vec<Vec<MovementIx>> = Vec::new();
    let mut picks = Vec::new();
    for pattern in PATTERNS {
        for straight in [false, true] {
            let mut group: Vec<MovementIx> = list
                .iter()
                .copied()
                .filter(|ix| room.is_trainable(*ix) && room.group(*ix) == (*pattern, straight))
                .collect();
            group.sort_by_key(|ix| room.rank(*ix));
            group.dedup();
            if let Some(chosen) = room.choose(&group) {
                picks.push(room.prescribe(chosen));
                groups.push(group);
            }
        }
    }
    // The full dose is what a card asks: the sets that balance leaves, before the log has its say.
    let mut asked = picks.clone();
    super::plan::balance(curriculum, &mut asked);
    let mut picks: Vec<Pick> = picks
        .into_iter()
        .zip(groups.iter().zip(&asked))
        .map(|(pick, (group, asked))| room.after_training(group, pick, asked.prescription.sets))
        .collect();
    super::plan::balance(curriculum, &mut picks);
    let practice = room.practice(list, &picks);
    Working { picks, practice }
}

pub(super) struct Room<'a> {
    pub(super) curriculum: &'a Curriculum,
    stages: &'a Stages,
    pub(super) person: &'a Person,
    readiness: &'a Readiness,
    pub(super) today: Day,
}

impl<'a> Room<'a> {
    pub(super) fn movement(&self, ix: MovementIx) -> &'a Movement {
        self.curriculum.movement(ix)
    }

    fn rank(&self, ix: MovementIx) -> (u32, MovementIx) {
        (self.stages.of(ix).unwrap_or(0), ix)
    }

    fn group(&self, ix: MovementIx) -> (Pattern, bool) {
        let m = self.movement(ix);
        (m.pattern, m.arms == Some(Arms::Straight))
    }

    fn state(&self, ix: MovementIx) -> Option<State> {
        self.readiness.of(ix).map(|s| s.state)
    }

    fn best(&self, ix: MovementIx) -> Option<Best> {
        best(self.curriculum, self.person, self.today, ix)
    }

    fn is_at_hand(&self, ix: MovementIx) -> bool {
        let Some(have) = &self.person.have else {
            return true;
        };
        let needed = &self.movement(ix).equipment;
        needed
            .iter()
            .all(|one_of| one_of.iter().any(|word| have.contains(word)))
    }

    fn is_trainable(&self, ix: MovementIx) -> bool {
        let m = self.movement(ix);
        matches!(self.state(ix), Some(State::Open | State::Owned))
            && PATTERNS.contains(&m.pattern)
            && matches!(m.standard.measure(), Measure::Reps | Measure::Time)
            && self.is_at_hand(ix)
            && self.best(ix).is_none_or(|b| b.amount > 0)
    }

    /// Sets, amount and seconds of each rep.
    fn dose(&self, ix: MovementIx) -> (u32, i64, Micro) {
        let m = self.movement(ix);
        let school = &self.curriculum.school.dose;
        let measure = m.standard.measure();
        let own = m.dose.filter(|dose| dose.measure() == measure);
        match (own, measure) {
            (Some(dose), _) => {
                let seconds = if dose.seconds() > 0 {
                    dose.seconds()
                } else {
                    m.standard.seconds()
                };
                (dose.sets(), dose.amount() / ONE, seconds)
            }
            (None, Measure::Time) => (school.hold.sets(), school.hold.amount() / ONE, 0),
            (None, _) => (school.sets, school.reps.into(), m.standard.seconds()),
        }
    }

    /// What a first try is done with: the load or the help of the dose, else the help of the standard.
    fn first_load(&self, m: &Movement) -> Option<Added> {
        let measure = m.standard.measure();
        let own = m.dose.filter(|dose| dose.measure() == measure);
        let help = || m.standard.added().filter(|added| added.signed() < 0);
        own.and_then(|dose| without_zero(dose.added()))
            .or_else(help)
    }

    fn fit(&self, ix: MovementIx) -> Fit {
        let (_, dose, _) = self.dose(ix);
        let measure = self.movement(ix).standard.measure();
        match (self.best(ix).map(|b| b.amount), measure) {
            (None, _) => Fit::Untested,
            (Some(b), Measure::Time) if b > 3 * dose => Fit::Above,
            (Some(b), Measure::Time) if b >= 5 => Fit::Keep,
            (Some(_), Measure::Time) => Fit::Short,
            (Some(b), _) if b >= dose + 6 => Fit::Above,
            (Some(b), _) if b >= dose + 2 => Fit::Keep,
            (Some(b), _) if b >= dose => Fit::Short,
            _ => Fit::Below,
        }
    }

    /// A movement by its own fit.
    pub(super) fn prescribe(&self, ix: MovementIx) -> Pick {
        let m = self.movement(ix);
        let (sets, dose, seconds) = self.dose(ix);
        let bounds = sets_a_session(self.curriculum);
        let sets = sets.clamp(bounds.0, bounds.1);
        let fit = self.fit(ix);
        let best = self.best(ix);
        let (b, added) = best.map_or((0, self.first_load(m)), |b| (b.amount, b.added));
        let measure = m.standard.measure();
        let careful = m.guarded() || m.phase == Some(Phase::Lowering);
        let (sets, amount, why) = match (fit, measure) {
            (Fit::Untested, measure) => {
                let usual = if measure == Measure::Time { 5 } else { 3 };
                let amount = match (careful, measure) {
                    (false, _) => usual,
                    (true, Measure::Time) => 3,
                    (true, _) => 2,
                };
                (
                    2,
                    amount,
                    "never tested: a first try, then enter the number".to_string(),
                )
            }
            (_, Measure::Time) => {
                let (sets, hold) = held(b, bounds);
                let all = i64::from(sets) * hold;
                let mut why = format!("best hold {b} s: sets of {hold} s, {all} s in all");
                if 2 * hold < b {
                    why.push_str("; less than half of it, to stay within 90 s in all");
                }
                (sets, hold, why)
            }
            (Fit::Keep, _) => (
                sets,
                dose,
                format!(
                    "{b} in one set: {sets} sets of {dose} leave {} in reserve",
                    b - dose
                ),
            ),
            (Fit::Short, _) => (
                sets,
                (dose * 3 / 5).max(1),
                format!("{b} in one set is close to the limit: shorter sets"),
            ),
            (Fit::Above, _) => (
                sets,
                (b - 4).min(20),
                format!(
                    "{b} in one set is more than the dose asks, and nothing harder fits today: more reps"
                ),
            ),
            (Fit::Below, _) => (
                sets,
                (b - 1).max(1),
                format!("{b} in one set is below the dose: sets of what you can do"),
            ),
        };
        Pick {
            movement: ix,
            prescription: Prescription {
                measure,
                sets,
                amount,
                seconds: if measure == Measure::Time { 0 } else { seconds },
                added,
            },
            fit,
            why,
        }
    }

    /// One movement of a group, which is sorted from easier to harder.
    fn choose(&self, group: &[MovementIx]) -> Option<MovementIx> {
        let hardest = |fit: Fit| group.iter().rev().copied().find(|ix| self.fit(*ix) == fit);
        let stage = |ix: MovementIx| self.rank(ix).0;
        let kept = hardest(Fit::Keep).or_else(|| hardest(Fit::Short));
        // What is above its dose gives way to the next harder one; and what is easier than it gives way to both.
        let above = hardest(Fit::Above)
            .filter(|above| kept.is_none_or(|kept| stage(kept) < stage(*above)))
            .map(|above| {
                let harder =
                    |ix: &MovementIx| self.fit(*ix) == Fit::Untested && stage(*ix) > stage(above);
                group.iter().copied().find(harder).unwrap_or(above)
            });
        let first = above.or(kept);
        // Below its dose: an easier one that is not tested yet, if there is one; never a harder one.
        let below = hardest(Fit::Below);
        let untested = |open: bool| {
            let fits = |ix: &MovementIx| {
                self.fit(*ix) == Fit::Untested
                    && (!open || self.state(*ix) == Some(State::Open))
                    && below.is_none_or(|b| stage(*ix) < stage(b))
            };
            group.iter().rev().copied().find(fits)
        };
        first
            .or_else(|| untested(true))
            .or_else(|| untested(false))
            .or(below)
    }

    /// What the log makes of a pick, of which a card asks so many sets.
    fn after_training(&self, group: &[MovementIx], pick: Pick, asked: u32) -> Pick {
        let mut pick = self.moved_on(group, pick, asked);
        let p = &pick.prescription;
        let seconds = i64::from(p.sets) * p.amount;
        if p.measure == Measure::Time && pick.fit != Fit::Untested && seconds < *HELD.start() {
            pick.why.push_str("; less than 30 s in all");
            if p.sets == sets_a_session(self.curriculum).1 {
                pick.why.push_str(", as more sets would be over 15 a week");
            }
        }
        pick
    }

    fn moved_on(&self, group: &[MovementIx], mut pick: Pick, asked: u32) -> Pick {
        if !matches!(pick.fit, Fit::Keep | Fit::Above) {
            return pick;
        }
        let old = pick.movement;
        let stage = self.rank(old).0;
        let id = self.movement(old).id.as_str();
        let below = |ix: &MovementIx| self.rank(*ix).0 < stage;
        let easier = group.iter().rev().copied().find(below);
        let less = |mut pick: Pick, before: &str| {
            let p = &mut pick.prescription;
            let least = sets_a_session(self.curriculum).0;
            let kind = match p.sets > least {
                true => {
                    p.sets = p.sets.saturating_sub(2).max(least);
                    "fewer"
                }
                false => {
                    p.amount = (p.amount * 3 / 5).max(1);
                    "shorter"
                }
            };
            pick.why = format!("{before}: {kind} sets");
            pick
        };
        match self.log(group, &pick, easier, asked) {
            Log::Stay => pick,
            Log::Easier => match easier {
                Some(ix) => self.instead(ix, format!("{id} was missed twice: one step easier. ")),
                None => less(pick, "missed twice"),
            },
            Log::Return => match easier {
                Some(ix) => self.instead(ix, format!("two weeks off {id}: one step easier. ")),
                None => less(pick, "two weeks off"),
            },
            Log::On => {
                let harder =
                    |ix: &MovementIx| self.rank(*ix).0 > stage && self.fit(*ix) != Fit::Below;
                if let Some(ix) = group.iter().copied().find(harder) {
                    return self.instead(ix, format!("moved on from {id}: "));
                }
                self.harder_itself(&mut pick);
                pick.why = "moved on: the dose was done in full".into();
                pick
            }
        }
    }

    fn instead(&self, ix: MovementIx, before: String) -> Pick {
        let mut pick = self.prescribe(ix);
        pick.why.insert_str(0, &before);
        pick
    }

    /// More load where there is some, else more of the amount.
    fn harder_itself(&self, pick: &mut Pick) {
        let best = self.best(pick.movement).map_or(0, |b| b.amount);
        let plate = self.curriculum.school.smallest_plate.max(1);
        let p = &mut pick.prescription;
        match (p.added, p.measure) {
            (Some(Added::Mass(load)), _) if load > 0 => {
                let step = (load / 10 / plate * plate).max(plate);
                p.added = Some(Added::Mass(load + step));
            }
            (Some(Added::BodyWeight(load)), _) if load > 0 => {
                p.added = Some(Added::BodyWeight(load + SHARE_STEP));
            }
            (_, Measure::Time) => {
                let most = (best * 2 / 3).min(HELD.end() / i64::from(p.sets.max(1)));
                p.amount = (p.amount + 2).min(most).max(p.amount);
            }
            _ => p.amount += 1,
        }
    }

    fn practice(&self, list: &[MovementIx], picks: &[Pick]) -> Vec<Practice> {
        let picked: HashSet<MovementIx> = picks.iter().map(|p| p.movement).collect();
        let mut open: Vec<MovementIx> = list
            .iter()
            .copied()
            .filter(|ix| {
                self.state(*ix) == Some(State::Open)
                    && !picked.contains(ix)
                    && self.movement(*ix).pattern != Pattern::Mobility
                    && self.is_at_hand(*ix)
                    && self.best(*ix).is_none_or(|b| b.amount > 0)
            })
            .collect();
        open.sort_by_key(|ix| std::cmp::Reverse(self.rank(*ix)));
        open.dedup();
        open.truncate(2);
        open.into_iter().map(|ix| self.attempts(ix)).collect()
    }

    fn attempts(&self, ix: MovementIx) -> Practice {
        let m = self.movement(ix);
        let measure = m.standard.measure();
        let (measure, sets, amount) = match measure {
            Measure::Reps => (Measure::Reps, 3, 1),
            Measure::Time => (Measure::Time, 3, 3),
            _ => (Measure::Done, 1, 1),
        };
        let always = m.inverted()
            || bears(self.curriculum, m, "fall-height")
            || m.pattern == Pattern::Balance;
        Practice {
            movement: ix,
            prescription: Prescription {
                measure,
                sets,
                amount,
                seconds: if measure == Measure::Reps {
                    m.standard.seconds()
                } else {
                    0
                },
                added: None,
            },
            before: always || self.curriculum.school.practice == Prefers::Before,
            why: "next above what you own: few, fresh attempts",
        }
    }
}

/// Sets and seconds of a hold from its best: three fifths of it, 30 to 90 seconds in all, in the sets that a week allows. Where
/// those do not make 30 seconds the sets grow longer, up to two thirds of the best; where they make more than 90, shorter.
fn held(best: i64, (fewest, most): (u32, u32)) -> (u32, i64) {
    let hold = (best * 3 / 5).max(1);
    let for_least = |by: i64| (HELD.start() + by - 1).div_euclid(by);
    let sets = for_least(hold).clamp(fewest.into(), most.into());
    let longer = for_least(sets).min(best * 2 / 3);
    (sets as u32, hold.max(longer).min(HELD.end() / sets))
}

pub(crate) fn bears(curriculum: &Curriculum, movement: &Movement, class: &str) -> bool {
    movement
        .cautions
        .iter()
        .any(|c| curriculum.cautions.class(*c).id == class)
}
