//! How much: sets, reps or seconds, and the load, by what is known and by what the log says of moving on.

use super::constants::K;
use super::ease::Ease;
use super::facts::Facts;
use super::load::Shown;
use super::now::Now;
use super::reason::{Reason, Rule};
use super::trainee::{Logged, Trainee, down};
use crate::curriculum::target::ONE;
use crate::curriculum::{BodyWeight, Mass, MovementIx};

/// Sets of an amount.
#[derive(Clone, Debug, PartialEq)]
pub struct Amounts {
    pub sets: i64,
    /// Reps, or seconds.
    pub amount: i64,
    pub mass: Option<Mass>,
    /// The rule of moving on or back, where one decided.
    pub rule: Option<Rule>,
    pub why: Option<Reason>,
    pub in_reserve: Option<i64>,
}

/// What the log makes of a load, before what a plan adds.
struct Loaded {
    sets: i64,
    reps: i64,
    mass: Mass,
    /// How often it stood alike.
    times: u32,
    rule: Option<Rule>,
    why: Reason,
    /// A set of a harder member of the family.
    theirs: Option<Shown>,
}

/// What the log since the newest test says of moving on.
enum Last<'t, 'a> {
    Silent,
    /// In full; how many alike, with as much left, end with it.
    Full(&'t Logged<'a>, u32),
    Missed(&'t Logged<'a>),
}

impl<'a> Trainee<'a> {
    /// The newest session since the newest test, at the same load where one is asked, less than two weeks ago.
    fn last(&self, ix: MovementIx, at: Option<Mass>) -> Last<'_, 'a> {
        let facts = self.roster.of(ix);
        let tests = self.person.tested.iter().filter(|t| t.movement == ix);
        let since = tests
            .map(|t| t.on)
            .filter(|on| *on <= self.today)
            .chain(self.long_off(facts.pattern()))
            .max();
        let counts = |t: &&Logged<'_>| {
            since.is_none_or(|day| t.of.on > day) && at.is_none_or(|mass| t.mass == mass)
        };
        let log: Vec<&Logged<'a>> = self.logged(ix).filter(counts).collect();
        let Some(last) = log.last().copied() else {
            return Last::Silent;
        };
        if self.today.days_after(last.of.on) >= K.off[0] {
            return Last::Silent;
        }
        if last.missed() {
            return Last::Missed(last);
        }
        if !last.full() {
            return Last::Silent;
        }
        let good = |t: &Logged<'_>| {
            let over = match facts.strict {
                true => t.of.in_reserve.unwrap_or(0) >= K.left,
                false => {
                    let final_set = t.of.did.last().copied().unwrap_or(0);
                    final_set >= t.first() + i64::from(K.over) * ONE
                }
            };
            t.full() && over && t.first() == last.first() && t.mass == last.mass
        };
        let alike = log.iter().rev().take_while(|t| good(t)).count();
        Last::Full(last, alike as u32)
    }

    /// The newest session of the last two weeks of a movement, or of a harder member of its family.
    pub(super) fn did_lately(&self, ix: MovementIx) -> Option<&Logged<'a>> {
        let find = || {
            let recent = |at: &usize| self.today.days_after(self.log[*at].of.on) < K.off[0];
            let mut recent = (0..self.log.len()).rev().take_while(recent);
            let of = |at: &usize| self.log[*at].of.movement;
            let own = recent.clone().find(|at| of(at) == ix);
            own.or_else(|| {
                let any = self.roster.of(ix).counted && recent.clone().next().is_some();
                let above = if any {
                    self.roster.above(ix)
                } else {
                    Vec::new()
                };
                recent.find(|at| above.contains(&of(at)))
            })
        };
        self.lately[ix.at()]
            .get_or_init(find)
            .map(|at| &self.log[at])
    }

    /// The steps that a plan shows for a line that stood so often alike, by the log and in the plan's earlier full weeks.
    fn planned(&self, facts: &Facts<'_>, times: u32, ease: &Ease) -> i64 {
        match ease.hold {
            true => 0,
            false => i64::from(K.planned.min(times / every(facts))),
        }
    }

    /// The amounts of what is known; `times`: how often it stood in the earlier full weeks of the plan.
    pub(super) fn amounts(&self, ix: MovementIx, now: &Now, times: u32, ease: &Ease) -> Amounts {
        let facts = self.roster.of(ix);
        match facts.by_weight() && now.mass.is_added() {
            true => self.by_weight(ix, times, ease),
            false => self.by_amount(ix, now, times, ease),
        }
    }

    /// Full reps with weight on record: the dose's sets and reps, the load moves; what was done in full with as much goes on with
    /// as many reps as it had.
    fn loaded(&self, ix: MovementIx, mut times: u32, ease: &Ease) -> Loaded {
        let facts = self.roster.of(ix);
        let plate = self.roster.plate();
        let (least, mut sets) = (self.reps_loaded(facts), i64::from(facts.dose.sets()));
        let (mut reps, mut mass) = (least, self.load(ix));
        let (mut rule, mut why, mut theirs) = (None, self.why_load(ix, mass), None);
        match self.last(ix, None) {
            Last::Full(last, alike) if last.first() >= least * ONE => {
                let earned = alike >= every(facts);
                why = Reason::LoadHeld(last.mass);
                if mass <= last.mass {
                    times += if earned { 0 } else { alike };
                    (mass, reps) = (
                        last.mass,
                        (last.first() / ONE).min(K.reps.into()).max(least),
                    );
                    let kept = sets_of(facts, reps).max(last.of.did.len() as i64);
                    sets = sets.min(kept);
                }
                if earned && !ease.hold && self.is_a_step(mass) {
                    (mass, rule, why) = (mass + plate, Some(Rule::Strict), Reason::InFull);
                }
            }
            Last::Missed(last) => {
                (mass, rule, why) = (mass.min(last.mass), Some(Rule::Shows), Reason::FellShort);
            }
            _ => {
                let harder = self.did_lately(ix).filter(|t| t.of.movement != ix);
                if let Some(t) = harder.filter(|t| t.full() && t.first() >= least * ONE)
                    && t.mass > mass
                {
                    (mass, why) = (t.mass, Reason::LoadHeld(t.mass));
                    theirs = Some(Shown {
                        mass,
                        reps: t.with_reserve() / ONE,
                    });
                }
            }
        }
        Loaded {
            sets,
            reps,
            mass,
            times,
            rule,
            why,
            theirs,
        }
    }

    /// Whether the smallest plate is little enough of what moves.
    fn is_a_step(&self, mass: Mass) -> bool {
        let weight = self.person.body_weight.map(BodyWeight::mass);
        let moves = weight.unwrap_or_default() + mass;
        self.roster.plate().part(1.0) <= moves.part(K.plate_share) + 1.0
    }

    /// Full reps with weight on record. A plan's step leaves one rep at least: it is taken only if all before it was done in full.
    fn by_weight(&self, ix: MovementIx, times: u32, ease: &Ease) -> Amounts {
        let plate = self.roster.plate();
        let of = self.loaded(ix, times, ease);
        let (mut sets, reps, mut mass) = (of.sets, of.reps, of.mass);
        if let Some(last) = self.did_lately(ix).filter(|_| ease.sore) {
            (mass, sets) = (mass.min(last.mass), sets.min(last.sets()));
        }
        let steps = match self.is_a_step(mass) {
            true => self.planned(self.roster.of(ix), of.times, ease),
            false => 0,
        };
        let now = mass;
        let planned = (mass + plate * steps).part(1.0);
        let bound = self.bound_of_steps(ix, reps);
        let bounded = bound.map_or(planned, |bound| planned.min(bound));
        // Back from time off to what was lifted before it at most.
        let before = ease.most.as_ref().filter(|most| most.mass.is_added());
        let bounded = before.map_or(bounded, |most| bounded.min(most.mass.part(1.0)));
        sets = before.map_or(sets, |most| sets.min(most.sets));
        let asked = bounded * ease.share();
        // What was lifted need not be of whole plates.
        let lifted = before.map(|most| most.mass).into_iter().chain([mass]);
        let mut lifted = lifted.filter(|lifted| lifted.part(1.0) == asked);
        let mass = lifted.next().unwrap_or_else(|| self.in_plates(asked));
        let mass = mass.max(plate);
        let left = self.leaves(ix, mass, reps, of.theirs);
        let step = (steps > 0 && mass > now).then(|| left.unwrap_or(0).max(K.left_step.into()));
        Amounts {
            sets,
            amount: reps,
            mass: Some(mass),
            rule: of.rule,
            why: Some(step.map_or(of.why, Reason::IfDone)),
            in_reserve: step.or(left),
        }
    }

    fn by_amount(&self, ix: MovementIx, now: &Now, times: u32, ease: &Ease) -> Amounts {
        let facts = self.roster.of(ix);
        let (hold, practice) = (facts.is_hold(), facts.practised());
        let (start, top) = self.start_and_top(facts, now);
        let mut amount = start;
        let (mut rule, mut why) = (None, self.known(ix, Reason::Best));
        let step = if hold { i64::from(K.step_s) } else { 1 };
        let mut times = times;
        match self.last(ix, Some(now.mass)) {
            Last::Full(last, alike) => {
                let earned = alike >= every(facts);
                amount = amount.max(last.first() / ONE);
                if !earned && amount == last.first() / ONE {
                    times += alike;
                }
                if earned && !ease.hold {
                    amount += step;
                    (rule, why) = match facts.strict {
                        true => (Some(Rule::Strict), Some(Reason::InFull)),
                        false => (Some(Rule::TwoForTwo), Some(Reason::TwoOver)),
                    };
                }
            }
            Last::Missed(last) => {
                amount = amount.min(last.first() / ONE);
                (rule, why) = (Some(Rule::Shows), Some(Reason::FellShort));
            }
            Last::Silent => {}
        }
        amount = amount.min(top).max(self.fewest(facts));
        let steps = self.planned(facts, times, ease);
        let limit = match hold || practice {
            true => top,
            false => top.min(now.whole() - i64::from(K.left)),
        };
        amount = amount.max((amount + steps * step).min(limit));
        let (sets, amount) = self.taken_back(ix, amount, ease);
        let before = ease
            .most
            .as_ref()
            .map_or(i64::MAX, |most| most.leaves(amount));
        let left = (now.whole() - amount).min(before);
        let left = left.clamp(0, i64::from(K.reserve));
        Amounts {
            sets,
            amount,
            mass: match facts.loaded() && now.mass >= Mass::NONE {
                true => Some(self.load(ix)),
                false => Some(now.mass).filter(|mass| *mass != Mass::NONE),
            },
            rule,
            why,
            in_reserve: facts.is_reps().then_some(left),
        }
    }

    /// Sets, and the amount of one: where it hurts nothing grows; back from time off no more than before it; and what is light.
    fn taken_back(&self, ix: MovementIx, mut amount: i64, ease: &Ease) -> (i64, i64) {
        let facts = self.roster.of(ix);
        let fewest = self.fewest(facts);
        let mut sets = sets_of(facts, amount);
        if let Some(last) = self.did_lately(ix).filter(|_| ease.sore) {
            amount = amount.min(last.first() / ONE).max(fewest);
            sets = sets.min(last.sets());
        }
        if let Some(most) = &ease.most {
            amount = amount.min(most.amount).max(fewest);
            sets = match facts.practised() {
                true => sets,
                false => sets.min(most.sets),
            };
        }
        if ease.light {
            amount = down(amount as f64 * ease.share()).max(fewest);
        }
        (sets, amount)
    }

    /// The amount of a set by what is known, and the most that it grows to.
    ///
    /// # Source
    /// Two to four reps left (Zourdos et al. 2016, J Strength Cond Res 30(1):267-275); the rest common practice, no source.
    fn start_and_top(&self, facts: &Facts<'_>, now: &Now) -> (i64, i64) {
        let part = |share: f64| down(now.whole() as f64 * share);
        let hold = facts.is_hold();
        let (mut start, top) = if facts.practised() {
            let start = match facts.own_dose {
                true => facts.each.min(part(K.share)),
                false => part(K.hold),
            };
            (start, if hold { now.whole() } else { now.whole() - 1 })
        } else if hold {
            let most = i64::from(K.hold_most);
            (part(K.hold).min(most), part(K.share).min(most))
        } else {
            let strictly = facts.guarded() || facts.lowering() || facts.straight;
            let most = i64::from(if strictly { K.reps_strict } else { K.reps });
            (part(K.share).min(most), (now.whole() - 1).min(most))
        };
        start = start.max(self.fewest(facts));
        (start, top)
    }

    /// Under 18 added weight is for six reps or more; otherwise one is enough.
    fn fewest(&self, facts: &Facts<'_>) -> i64 {
        let many = self.is_minor() && facts.loaded() && !facts.is_hold();
        match many && facts.group().is_some() {
            true => i64::from(K.minor_reps),
            false => 1,
        }
    }
}

/// So many times alike give a step.
fn every(facts: &Facts<'_>) -> u32 {
    if facts.strict { K.three } else { K.two }
}

/// Sets to the nearest, half up, so that the volume of the dose is kept.
fn sets_of(facts: &Facts<'_>, amount: i64) -> i64 {
    let volume = i64::from(facts.dose.sets()) * facts.dose.amount();
    let within = |[least, most]: [u32; 2], n: i64| n.clamp(least.into(), most.into());
    let nearest = |volume: i64| (2 * volume + amount * ONE).div_euclid(2 * amount * ONE);
    if facts.practised() {
        let least = if facts.own_dose { 1 } else { K.attempts[0] };
        return within([least, K.attempts[1]], nearest(volume));
    }
    let volume = match facts.is_hold() {
        true => volume.clamp(i64::from(K.held[0]) * ONE, i64::from(K.held[1]) * ONE),
        false => volume,
    };
    within(K.sets, nearest(volume))
}
