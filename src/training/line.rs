//! The line of a candidate on a day: what is asked, of which variation, with which rest, and what follows.

use super::amounts::Amounts;
use super::candidates::Candidate;
use super::constants::K;
use super::ease::Ease;
use super::facts::{Facts, Group};
use super::goal::Gap;
use super::now::Now;
use super::reason::{Block, Reason, Rule, Then};
use super::trainee::{Trainee, down};
use crate::curriculum::target::{Added, Got, Measure, ONE};
use crate::curriculum::words::Pattern;
use crate::curriculum::{Day, Mass, MovementIx, Seconds};

/// What the amount counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    Reps,
    Seconds,
}

/// Which side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    Left,
    Right,
}

/// Both sides, where a movement has them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sides {
    /// They are told apart: the weaker first, its amount for both.
    pub weaker_first: bool,
    /// So far apart that this one does one set more.
    pub weaker: Option<Side>,
}

/// A line of a session.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    pub block: Block,
    pub movement: MovementIx,
    pub sets: i64,
    pub amount: i64,
    pub unit: Unit,
    /// Seconds of each rep in millionths, where said.
    pub seconds_each: Option<i64>,
    pub mass: Option<Mass>,
    pub sides: Option<Sides>,
    pub rest: Seconds,
    pub in_reserve: Option<i64>,
    pub minutes: i64,
    /// The place of the gap that it works towards.
    pub gap: Option<usize>,
    pub instead_of: Option<MovementIx>,
    pub rule: Rule,
    pub why: Vec<Reason>,
    pub then: Then,
    /// The candidate that it stands for.
    pub of: usize,
    /// Light or easier.
    pub eased: bool,
    /// Of a part that hurts: nothing grows; and whether it was worse the next morning.
    pub sore: bool,
    pub worse: bool,
}

/// Where in a plan a line is asked for.
#[derive(Clone, Copy, Debug)]
pub struct At {
    pub on: Day,
    /// The day of the plan's first session.
    pub first: Day,
    /// How often the candidate stood in the earlier full weeks of the plan.
    pub times: u32,
    /// It was tried or shown earlier in the plan, and its number is not in.
    pub tried: bool,
    /// It stood earlier in the plan.
    pub again: bool,
    pub is_limiter: bool,
}

/// What is asked of a movement.
#[derive(Debug, Default)]
struct Asked {
    sets: i64,
    amount: i64,
    mass: Option<Mass>,
    rule: Option<Rule>,
    why: Vec<Reason>,
    in_reserve: Option<i64>,
}

impl Trainee<'_> {
    /// The form in which a candidate stands on a day, whether its hands are raised, what is taken back of it, and what a first try says of
    /// what hurt or rested lately.
    fn form(&self, c: &Candidate, at: At) -> Option<(MovementIx, bool, Ease, Option<Reason>)> {
        let ease = self.ease(c.movement, at.on, at.first);
        let eased = match ease.easier && !self.roster.of(c.movement).mobility() {
            true => self.eased(c.movement, at)?,
            false => c.movement,
        };
        let movement = match c.single || c.rule == Rule::Show {
            true => eased,
            false => self.hands_raised(eased),
        };
        // What stands in may stress what the other does not.
        let ease = ease.and_sore(self.ease(movement, at.on, at.first));
        let late = self.tried_lately(movement, &ease, at);
        if late.is_some() && self.waits_lately(movement, at.on).is_some() {
            return None;
        }
        let ease = match late {
            Some(_) => ease.of_a_first(),
            None => ease,
        };
        Some((movement, movement != eased, ease, late))
    }

    /// The line of a candidate; `None` where it has none on that day.
    pub(super) fn line(&self, of: usize, c: &Candidate, gaps: &[Gap], at: At) -> Option<Line> {
        let (movement, raised, ease, late) = self.form(c, at)?;
        let (facts, now) = (self.roster.of(movement), self.now(movement));
        let goes_on = at.tried || ease.by.is_some() || ease.most.is_some();
        let (standing, why) = self.standing(c, goes_on);
        let c = &Candidate {
            rule: standing,
            why,
            ..c.clone()
        };
        let asked = self.asked(movement, c, gaps, at, &ease)?;
        // Range is held for seconds, whatever is measured.
        let shown = c.rule == Rule::Show && ease.by.is_none();
        let unit = match facts.is_reps() && (!facts.mobility() || shown) {
            true => Unit::Reps,
            false => Unit::Seconds,
        };
        let rule = ease.by.map_or(asked.rule.unwrap_or(c.rule), |(by, _)| by);
        let raised = raised.then_some(Reason::Raised);
        let by = ease.by.map(|(_, reason)| reason.on(facts));
        let first = late.into_iter().chain(by).chain(raised);
        let mut line = Line {
            block: c.block,
            movement,
            sets: match ease.light {
                true => half(asked.sets).max(K.fewest.into()),
                false => asked.sets,
            },
            amount: asked.amount,
            unit,
            seconds_each: Some(facts.seconds).filter(|s| *s > 0 && unit == Unit::Reps),
            mass: asked.mass,
            sides: facts.of.each_side().then(|| sides(facts, now.as_ref())),
            rest: Seconds::default(),
            in_reserve: asked.in_reserve,
            minutes: 0,
            gap: c.gap,
            instead_of: c.instead_of,
            rule,
            why: first.chain(self.told(movement, asked.why)).collect(),
            then: self.then(rule, ease.hold),
            of,
            eased: (ease.light || ease.easier) && !ease.comes_back(),
            sore: ease.sore,
            worse: ease.worse,
        };
        if matches!(line.rule, Rule::FirstTry | Rule::UntilTested) {
            line.then = self.then_of_try(&line, gaps, at.on);
        }
        line.rest = self.rest(&line);
        line.minutes = self.minutes_of(&line);
        Some(line)
    }

    /// What is known of what stands in is said, not that nothing is known of the other; and not that it is easy, which is why another
    /// would stand here.
    fn told(&self, ix: MovementIx, mut why: Vec<Reason>) -> Vec<Reason> {
        let is_known = self.now(ix).is_some();
        why.retain(|one| match one {
            Reason::NothingKnown | Reason::TriedAnew => !is_known,
            Reason::Easy(of, _) | Reason::EasyFrom(of) => *of != ix,
            _ => true,
        });
        why
    }

    /// The rule that a candidate stands by: what was shown earlier in the plan, or is taken back, is trained on until its result is in,
    /// where it fits.
    fn standing(&self, c: &Candidate, goes_on: bool) -> (Rule, Vec<Reason>) {
        match (c.rule, c.block) {
            (Rule::Show, Block::Range) if goes_on => (Rule::Range, Vec::new()),
            (Rule::Show, Block::Practice) if goes_on => (Rule::Practice, Vec::new()),
            (Rule::Show, _) if goes_on && self.fits(c.movement) == Some(true) => {
                (Rule::Itself, Vec::new())
            }
            (rule, _) => (rule, c.why.clone()),
        }
    }

    fn asked(
        &self,
        ix: MovementIx,
        c: &Candidate,
        gaps: &[Gap],
        at: At,
        ease: &Ease,
    ) -> Option<Asked> {
        let facts = self.roster.of(ix);
        if facts.mobility() && (c.rule != Rule::Show || ease.by.is_some()) {
            return Some(self.range(ix, c, at.is_limiter));
        }
        let known = self.now(ix);
        // Nothing new, nothing to show and no singles while something is taken back.
        let new = known.is_none() || c.rule == Rule::Show || c.single;
        if new && ease.by.is_some() {
            return None;
        }
        let Some(now) = known else {
            return Some(self.first_try(ix, c, at));
        };
        if c.rule == Rule::Show {
            let target = &gaps[c.gap?].target;
            let tries = target.tries().map_or(target.sets(), |t| t.of);
            return Some(Asked {
                sets: tries.into(),
                amount: target.amount() / ONE,
                mass: self.shown_with(ix, &now, target.added()),
                why: match now.whole() >= i64::from(K.far) * (target.amount() / ONE) {
                    true if facts.counted => with(&c.why, Reason::ShowFar),
                    _ => c.why.clone(),
                },
                ..Asked::default()
            });
        }
        if c.single {
            return Some(Asked {
                sets: K.single_sets.into(),
                amount: 1,
                mass: Some(now.mass).filter(|mass| *mass != Mass::NONE),
                why: c.why.clone(),
                ..Asked::default()
            });
        }
        let kept = c.block == Block::KeptUp;
        let times = if kept { 0 } else { at.times };
        let mut amounts = self.amounts(ix, &now, times, ease);
        if amounts.rule == Some(Rule::Shows) {
            self.after_short(ix, &mut amounts, at.again);
        }
        let mut why = c.why.clone();
        why.extend(amounts.why);
        if ease.by.is_none() && now.whole() >= i64::from(K.far) * amounts.amount {
            why.extend(self.far_above(ix));
        }
        Some(Asked {
            sets: match kept {
                true => self.kept_sets(ix, ease),
                false => amounts.sets,
            },
            amount: amounts.amount,
            mass: amounts.mass,
            rule: amounts.rule,
            why,
            in_reserve: amounts.in_reserve,
        })
    }

    /// After a session that fell short: three sets at most that once, and nothing of it is said once a later one is done. Common
    /// practice, no source.
    fn after_short(&self, ix: MovementIx, amounts: &mut Amounts, again: bool) {
        if !again {
            amounts.sets = amounts.sets.min(K.short_sets.into());
            return;
        }
        let lifted = amounts.mass.filter(|_| self.roster.of(ix).by_weight());
        let load = lifted.filter(|mass| mass.is_added());
        amounts.rule = None;
        amounts.why = match load {
            Some(mass) => Some(self.why_load(ix, mass)),
            None => self.known(ix, Reason::Best),
        };
    }

    /// What a target is shown with: its own load; where it says none, that on record. Load is always said.
    fn shown_with(&self, ix: MovementIx, now: &Now, asked: Option<Added>) -> Option<Mass> {
        let asked = self.mass(asked).filter(|mass| *mass != Mass::NONE);
        let record = || match now.mass.is_added() {
            true => now.mass,
            false => self.load(ix),
        };
        asked.or_else(|| self.roster.of(ix).loaded().then(record))
    }

    /// What is said where far more is known than is asked, of strength that bears no weight.
    fn far_above(&self, ix: MovementIx) -> Vec<Reason> {
        let facts = self.roster.of(ix);
        if facts.loaded() || facts.practised() {
            return Vec::new();
        }
        let own_pace = facts.seconds > 0 || facts.rep_s != K.rep_s;
        let slow = (facts.is_reps() && !own_pace).then_some(Reason::Slow);
        let harder = self.harder(ix).is_none().then_some(Reason::AskHarder);
        slow.into_iter().chain(harder).collect()
    }

    fn kept_sets(&self, ix: MovementIx, ease: &Ease) -> i64 {
        let sets = K.keep_sets[usize::from(self.is_from(K.keep_age))].into();
        let last = self.did_lately(ix).filter(|_| ease.sore);
        last.map_or(sets, |last| last.sets().min(sets))
    }

    /// Range: in seconds the dose, at most 0.7 of now, unknown 10 s; else 30 s; the limiter four sets once its number is known.
    ///
    /// # Source
    /// 60 s in all, in holds of 10 to 30 s: Garber et al. 2011, Med Sci Sports Exerc 43(7):1334-1359.
    fn range(&self, ix: MovementIx, c: &Candidate, is_limiter: bool) -> Asked {
        let (facts, now) = (self.roster.of(ix), self.now(ix));
        let (sets, amount) = match (facts.is_hold(), now) {
            (true, None) => (K.range_sets, K.unknown_s.into()),
            (true, Some(now)) => {
                let most = down(now.whole() as f64 * K.share);
                (facts.dose.sets(), facts.each.min(most).max(1))
            }
            (false, _) => (K.range_sets, K.range_s.into()),
        };
        let mut why = c.why.clone();
        why.push(match (self.got(ix), self.measured_otherwise(ix)) {
            // The line says itself what it works towards.
            (Some(got), _) if c.gap.is_some() => Reason::SoFar(got),
            (Some(got), _) => Reason::Asked(ix, got),
            _ if !self.has_all(ix) => Reason::MeasureNot,
            (None, Some(old)) => Reason::MeasureAgain(old),
            (None, None) => Reason::Measure,
        });
        let limits = is_limiter && now.is_some();
        Asked {
            sets: if limits { K.range_limiter } else { sets }.into(),
            amount,
            why,
            ..Asked::default()
        }
    }

    /// One set of what has no number yet, as it is tried first; of range the seconds that it is held.
    pub fn first_set(&self, ix: MovementIx) -> Got {
        let facts = self.roster.of(ix);
        if facts.mobility() {
            let held = if facts.is_hold() {
                K.unknown_s
            } else {
                K.range_s
            };
            return Got::of(Measure::Time, 1, i64::from(held) * ONE, 0, None);
        }
        let (amount, mass) = self.tried(ix);
        let seconds = if facts.is_reps() { facts.seconds } else { 0 };
        let added = mass.map(Added::Mass);
        Got::of(facts.measure(), 1, amount * ONE, seconds, added)
    }

    /// The amount of a first try, and its load.
    fn tried(&self, ix: MovementIx) -> (i64, Option<Mass>) {
        let facts = self.roster.of(ix);
        let few = facts.guarded() || facts.lowering() || facts.each <= i64::from(K.try_dose);
        let carried = facts.pattern() == Pattern::Carry;
        let amount = if facts.is_hold() {
            let seconds = if carried { K.try_carry } else { K.try_s };
            facts.each.min(seconds.into())
        } else if facts.loaded() && facts.group().is_some() && self.is_minor() {
            K.minor_reps.into()
        } else {
            facts
                .each
                .min(if few { K.try_reps_few } else { K.try_reps }.into())
        };
        let dose = self.mass(facts.dose.added());
        let mass = match facts.loaded() {
            true => Some(self.load(ix)),
            false => dose.filter(|mass| *mass != Mass::NONE),
        };
        (amount.max(1), mass)
    }

    /// What is unknown: two sets of a few; later in the plan three sets by its number, of the same until that is in.
    fn first_try(&self, ix: MovementIx, c: &Candidate, At { tried, .. }: At) -> Asked {
        let facts = self.roster.of(ix);
        let (amount, mass) = self.tried(ix);
        let is_exit = facts.pattern() == Pattern::Exit;
        Asked {
            sets: self.sets_of_try(facts, tried),
            amount,
            mass,
            rule: Some(if tried {
                Rule::UntilTested
            } else {
                Rule::FirstTry
            }),
            why: match tried {
                true => vec![Reason::UntilNumber],
                false => c.why.clone(),
            },
            // Of what is plain nobody knows what a few reps leave: the line says when to stop.
            in_reserve: (facts.is_reps() && (facts.guarded() || facts.lowering() || is_exit))
                .then(|| K.left.into()),
        }
    }

    /// By its number a set more, but no more than its own dose has.
    fn sets_of_try(&self, facts: &Facts<'_>, tried: bool) -> i64 {
        let again = match facts.own_dose {
            true => K.again.min(facts.dose.sets()).max(K.fewest),
            false => K.again,
        };
        if tried { again } else { K.try_sets }.into()
    }

    /// Seconds under way in one set, in millionths, both sides.
    fn work(&self, line: &Line) -> i64 {
        self.work_of_side(line) * if line.sides.is_some() { 2 } else { 1 }
    }

    fn work_of_side(&self, line: &Line) -> i64 {
        let each = match line.unit {
            Unit::Reps => line
                .seconds_each
                .unwrap_or_else(|| i64::from(self.roster.of(line.movement).rep_s) * ONE),
            Unit::Seconds => ONE,
        };
        line.amount * each
    }

    /// The rest between sets: the movement's own, else by what it is. A test's own rest is for tests. Common practice, no source.
    fn rest(&self, line: &Line) -> Seconds {
        let facts = self.roster.of(line.movement);
        if let Some(own) = facts.of.rest() {
            return own;
        }
        let short = matches!(facts.pattern(), Pattern::Balance | Pattern::Exit)
            && self.work_of_side(line) <= i64::from(K.short) * ONE;
        if facts.mobility() || short {
            return Seconds::of(K.rest.range);
        }
        Seconds::of(match facts.group() {
            None => K.rest.easy,
            Some(_) if facts.guarded() => K.rest.guarded,
            Some(Group::Core) => K.rest.easy,
            Some(_) if line.unit == Unit::Seconds => K.rest.easy,
            Some(_) => K.rest.strength,
        })
    }

    /// Sets times work and rest, half a set more for the weaker side, rounded up.
    pub(super) fn minutes_of(&self, line: &Line) -> i64 {
        let more = line.sides.is_some_and(|s| s.weaker.is_some());
        let halves = 2 * line.sets + i64::from(more);
        let each = self.work(line) + line.rest.micro();
        let minute = 2 * 60 * ONE;
        (halves * each + minute - 1) / minute
    }
}

fn with(why: &[Reason], more: Reason) -> Vec<Reason> {
    why.iter().copied().chain([more]).collect()
}

/// Half the sets, up.
pub(super) fn half(sets: i64) -> i64 {
    (sets + 1) / 2
}

/// The weaker side first where they are told apart; one set more for it where they are far apart.
pub(super) fn sides(facts: &Facts<'_>, now: Option<&Now>) -> Sides {
    let Some((left, right)) = now.and_then(|n| n.sides).filter(|(l, r)| l != r) else {
        return Sides {
            weaker_first: false,
            weaker: None,
        };
    };
    let allowed = match facts.measure() {
        Measure::Reps | Measure::Time => (left.max(right) as f64 * K.sides) as i64,
        Measure::Length => i64::from(K.sides_cm) * ONE,
        Measure::Angle => i64::from(K.sides_deg) * ONE,
        Measure::Done => ONE,
    };
    let left_is_weaker = (left < right) != facts.of.standard().at_most();
    let weaker = if left_is_weaker {
        Side::Left
    } else {
        Side::Right
    };
    Sides {
        weaker_first: true,
        weaker: (left.abs_diff(right) as i64 > allowed).then_some(weaker),
    }
}
