//! What could stand in a session: a variation for each gap, what is kept up beside them, and the limiter.

mod kept;

use super::constants::K;
use super::facts::Kind;
use super::goal::{Gap, Goal};
use super::reason::{Block, Left, Reason, Rule};
use super::trainee::Trainee;
use crate::curriculum::MovementIx;
use crate::curriculum::target::Got;
use crate::curriculum::words::Phase;
use std::cmp::Reverse;
use std::collections::BTreeMap;

/// A movement that could stand in a session, for its heaviest gap.
#[derive(Clone, Debug)]
pub struct Candidate {
    pub movement: MovementIx,
    /// The place of its gap, heaviest first; none for what is kept up.
    pub gap: Option<usize>,
    pub block: Block,
    pub rule: Rule,
    pub why: Vec<Reason>,
    /// Single reps, beside what builds the same movement.
    pub single: bool,
    pub instead_of: Option<MovementIx>,
    pub weight: u64,
    /// Comes in every session: the limiter's lines, and from 65 the balance line.
    pub first: bool,
    /// Of the goal's chain, and trained in the last two weeks: it keeps its line.
    pub goes_on: bool,
    /// What a kind is trained by: its heaviest gap with a known number, and what stands highest of the goal's own kind.
    pub mainstay: bool,
    /// It has no line any more once it was shown in the plan: this goes on for its gap.
    pub then: Option<MovementIx>,
    /// It has a line only once this was shown in the plan.
    pub after: Option<MovementIx>,
}

/// All candidates in the order found, what has none, and the place of the limiter's gap.
pub struct Candidates {
    pub all: Vec<Candidate>,
    pub left: Vec<(MovementIx, Left)>,
    pub limiter: Option<usize>,
    /// The place of the balance line from 65.
    pub balance: Option<usize>,
}

impl Candidates {
    pub fn of(trainee: &Trainee<'_>, goal: Option<&Goal>, gaps: &[Gap]) -> Candidates {
        let in_chain = chain_of(trainee, goal);
        let mut pool = Pool {
            trainee,
            gaps,
            in_chain: &in_chain,
            all: Vec::new(),
            left: Vec::new(),
            rests: false,
        };
        for at in 0..gaps.len() {
            pool.for_gap(at);
        }
        let limiter = pool.limiter();
        pool.waits_below(limiter);
        pool.keep_up(goal);
        let balance = pool.upright();
        let Pool { mut all, left, .. } = pool;
        for (i, one) in all.iter_mut().enumerate() {
            one.first = Some(i) == balance || (one.gap.is_some() && one.gap == limiter);
            one.goes_on = in_chain[one.movement.at()] && trainee.did_lately(one.movement).is_some();
        }
        for i in mainstays(trainee, goal, &all) {
            all[i].mainstay = true;
        }
        Candidates {
            all,
            left,
            limiter,
            balance,
        }
    }

    /// Practice beside the balance line from 65.
    pub fn has_other_practice(&self) -> bool {
        let others = self.all.iter().enumerate();
        let mut others = others.filter(|(i, _)| Some(*i) != self.balance);
        others.any(|(_, c)| c.block == Block::Practice)
    }

    /// Lines of a known amount, range apart: few of them, and more first tries fit a session.
    pub fn known(&self) -> usize {
        let counts = |c: &&Candidate| !matches!(c.rule, Rule::FirstTry | Rule::Show | Rule::Range);
        self.all.iter().filter(counts).count()
    }
}

/// For each movement whether it is of the goal's chain; without a goal all are.
fn chain_of(trainee: &Trainee<'_>, goal: Option<&Goal>) -> Vec<bool> {
    let mut out = vec![goal.is_none(); trainee.roster.curriculum.len()];
    let chain = goal.iter().flat_map(|g| &g.chain);
    chain.for_each(|ix| out[ix.at()] = true);
    out
}

/// The places of what each kind is trained by: its heaviest gap with a known number; of the goal's kind also the highest rung with one
/// that the goal itself needs. Common practice, no source.
fn mainstays(trainee: &Trainee<'_>, goal: Option<&Goal>, all: &[Candidate]) -> Vec<usize> {
    let roster = trainee.roster;
    let kind = |c: &Candidate| roster.of(c.movement).kind();
    let known = || {
        let all = all.iter().enumerate();
        all.filter(|(_, c)| c.block.is_hard() && c.rule != Rule::FirstTry && c.then.is_none())
    };
    let mut heaviest: BTreeMap<Kind, usize> = BTreeMap::new();
    for (i, c) in known().filter(|(_, c)| c.block == Block::Strength) {
        let best = heaviest.entry(kind(c)).or_insert(i);
        let weight = |i: usize| (Reverse(all[i].weight), all[i].movement);
        if weight(i) < weight(*best) {
            *best = i;
        }
    }
    let road = goal.map(|g| roster.of(g.leaf.movement)).and_then(|own| {
        let needed = own.of.needs().leaves();
        let needed = |c: &Candidate| needed.iter().any(|leaf| leaf.movement == c.movement);
        let of_kind = known().filter(|(_, c)| kind(c) == own.kind() && needed(c));
        of_kind.min_by_key(|(_, c)| (Reverse(roster.of(c.movement).stage), c.movement))
    });
    heaviest.into_values().chain(road.map(|(i, _)| i)).collect()
}

struct Pool<'t, 'a> {
    trainee: &'t Trainee<'a>,
    gaps: &'t [Gap],
    in_chain: &'t [bool],
    all: Vec<Candidate>,
    left: Vec<(MovementIx, Left)>,
    /// A gap rests, waits for what is over only lately or lacks its equipment, and nothing stands in its place.
    rests: bool,
}

impl Pool<'_, '_> {
    /// A movement stands once: what comes first stays. What is unknown is tried first, mobility apart.
    fn add(&mut self, of: Candidate) {
        let known = |c: &Candidate| c.movement == of.movement && c.single == of.single;
        if self.all.iter().any(known) {
            return;
        }
        let t = self.trainee;
        self.rests |= of.gap.is_some() && t.waits_lately(of.movement, t.today).is_some();
        let facts = t.roster.of(of.movement);
        let mut of = of;
        if t.now(of.movement).is_none() && !facts.mobility() {
            of.rule = Rule::FirstTry;
            if of.why.is_empty() {
                of.why.push(match t.long_off(facts.pattern()) {
                    None => Reason::NothingKnown,
                    Some(_) => Reason::TriedAnew,
                });
            }
        } else if t.was_done(of.movement) && of.block.is_hard() {
            of.rule = Rule::Before;
            of.why.push(Reason::Before);
        }
        self.all.push(of);
    }

    /// A candidate for a gap, in the block that its movement belongs to.
    fn of_gap(&self, movement: MovementIx, gap: usize, rule: Rule, why: Vec<Reason>) -> Candidate {
        let facts = self.trainee.roster.of(movement);
        Candidate {
            movement,
            gap: Some(gap),
            block: if facts.mobility() {
                Block::Range
            } else if facts.practised() {
                Block::Practice
            } else {
                Block::Strength
            },
            rule,
            why,
            single: false,
            instead_of: None,
            weight: self.gaps[gap].weight,
            first: false,
            goes_on: false,
            mainstay: false,
            then: None,
            after: None,
        }
    }

    fn kept(&self, movement: MovementIx, rule: Rule, why: Reason) -> Candidate {
        Candidate {
            movement,
            gap: None,
            block: Block::KeptUp,
            rule,
            why: vec![why],
            single: false,
            instead_of: None,
            weight: 0,
            first: false,
            goes_on: false,
            mainstay: false,
            then: None,
            after: None,
        }
    }

    fn for_gap(&mut self, at: usize) {
        let (t, gap) = (self.trainee, &self.gaps[at]);
        let (ix, facts) = (gap.movement, self.trainee.roster.of(gap.movement));
        if !(t.is_open(ix) || t.was_done(ix)) {
            return self.step_below(at);
        }
        if !t.may(ix) {
            let why = t.why_not(ix);
            match t.instead(ix, self.in_chain) {
                Some(other) => {
                    let one = self.of_gap(other, at, Rule::Instead, vec![Reason::Instead(ix, why)]);
                    self.add(Candidate {
                        instead_of: Some(ix),
                        ..one
                    });
                }
                None => {
                    self.rests = true;
                    self.left.push((ix, why));
                }
            }
            return;
        }
        if t.is_minor() && facts.loaded() && facts.lowering() {
            return self.left.push((ix, Left::Minor));
        }
        if t.is_too_new(ix) {
            return self.eased_in(at);
        }
        let anew = gap.now.is_none() && t.long_off(facts.pattern()).is_some();
        let shown = gap.is_whole() && facts.counted && t.is_open(ix);
        let simple = if shown && !(t.is_minor() && facts.loaded()) {
            let known = t.known(ix, Reason::Known).map(Reason::to_show);
            Some((Rule::Show, known.into_iter().collect()))
        } else if facts.mobility() {
            Some((Rule::Range, Vec::new()))
        } else if facts.practised() && !(anew && facts.lowering()) {
            Some((Rule::Practice, Vec::new()))
        } else if gap.now.is_none() && !anew {
            Some((Rule::FirstTry, Vec::new()))
        } else {
            None
        };
        if let Some((rule, why)) = simple {
            let tried = match rule {
                Rule::FirstTry => t.gentlest(ix),
                _ => ix,
            };
            let one = self.of_gap(tried, at, rule, why);
            return match rule {
                Rule::Show => self.show(one, at),
                _ => self.add(one),
            };
        }
        match !anew && t.fits(ix) == Some(true) {
            true => self.itself_or_harder(at),
            false => self.build_up(at, anew),
        }
    }

    /// What is to be shown once, and what goes on for its gap from then on. Common practice, no source.
    fn show(&mut self, one: Candidate, at: usize) {
        let t = self.trainee;
        let ix = one.movement;
        let on = t.onward(ix, self.in_chain);
        self.add(Candidate { then: on, ..one });
        if let Some(up) = on {
            let why = t.easy(ix).filter(|_| t.is_too_easy(ix));
            let next = self.of_gap(up, at, Rule::Harder, why.into_iter().collect());
            self.add(Candidate {
                after: (!t.may(up)).then_some(ix),
                ..next
            });
        }
    }

    /// Of what was lifted and is not open for nothing but what was never shown: the lighter step of its family.
    fn step_below(&mut self, at: usize) {
        let t = self.trainee;
        let ix = self.gaps[at].movement;
        let low = t.lighter_step(ix).filter(|_| t.was_lifted(ix));
        if let Some((low, got)) = low.zip(t.got(ix)) {
            self.add(self.of_gap(low, at, Rule::Builder, vec![Reason::NotShown(ix, got)]));
        }
    }

    /// What is not to be tried first: what is known below it, else nothing.
    fn eased_in(&mut self, at: usize) {
        let t = self.trainee;
        let ix = self.gaps[at].movement;
        let strength = t.roster.of(ix).group().is_some() && !t.roster.of(ix).practised();
        // What is a gap itself has a line of its own.
        let is_gap = |low: &MovementIx| self.gaps.iter().any(|g| g.movement == *low);
        let low = t.builder(ix, true).filter(|low| strength && !is_gap(low));
        match low {
            Some(low) => self.add(self.of_gap(low, at, Rule::Care, vec![Reason::Waits(ix)])),
            None => self.left.push((ix, t.why_not_new(ix))),
        }
    }

    fn itself_or_harder(&mut self, at: usize) {
        let t = self.trainee;
        let ix = self.gaps[at].movement;
        let up = t.harder(ix);
        if up.is_none_or(|up| t.fits(up) != Some(true)) {
            self.add(self.of_gap(ix, at, Rule::Itself, Vec::new()));
        }
        if let Some(up) = up {
            let why = t.easy(ix);
            self.add(self.of_gap(up, at, Rule::Harder, why.into_iter().collect()));
        }
    }

    /// What builds a gap that does not fit, or is tried anew after long off.
    fn build_up(&mut self, at: usize, anew: bool) {
        let t = self.trainee;
        let (ix, now) = (self.gaps[at].movement, self.gaps[at].now);
        let facts = t.roster.of(ix);
        let amount = now.map_or(0, |now| now.whole());
        let itself = !facts.lowering()
            && match anew {
                true => !facts.loaded(),
                false => !facts.guarded() && amount >= i64::from(K.itself),
            };
        let known = |plain: &dyn Fn(Got) -> Reason| t.known(ix, plain).filter(|_| !anew);
        match t.builder(ix, anew) {
            Some(low) if !(itself && t.is_too_easy(low)) => {
                let why = known(&|got| Reason::TooFew(ix, got));
                self.add(self.of_gap(low, at, Rule::Builder, why.into_iter().collect()));
                let few = (1..=i64::from(K.singles)).contains(&amount);
                let full = facts.is_reps() && facts.of.phase() == Some(Phase::Full);
                if !anew && few && full && !facts.strict && !t.is_minor() {
                    let why = known(&Reason::Single);
                    let one = self.of_gap(ix, at, Rule::Singles, why.into_iter().collect());
                    self.add(Candidate {
                        single: true,
                        block: Block::Practice,
                        ..one
                    });
                }
            }
            _ if itself => {
                self.add(self.of_gap(ix, at, Rule::Itself, vec![Reason::ShortSets]));
            }
            _ => self.left.push((ix, Left::TooHard)),
        }
    }

    /// Long off, and what is easier begins anew for the limiter: it waits for that.
    fn waits_below(&mut self, limiter: Option<usize>) {
        let Some(at) = limiter else {
            return;
        };
        let (ix, t) = (self.gaps[at].movement, self.trainee);
        let anew = self.gaps[at].now.is_none() && t.long_off(t.roster.of(ix).pattern()).is_some();
        let new = |c: &&Candidate| c.gap == limiter && c.rule == Rule::FirstTry;
        let low = self.all.iter().find(new).map(|c| c.movement);
        if let Some(low) = low.filter(|low| anew && *low != ix) {
            self.left.push((ix, Left::WaitsFor(low)));
        }
    }

    /// The heaviest gap that has a line of its own; what was only done before after what is open, unknown ones and those whose target
    /// is reached last.
    fn limiter(&self) -> Option<usize> {
        let own = self.all.iter();
        let own = own.filter(|c| c.instead_of.is_none() && c.rule != Rule::Care);
        own.filter_map(|c| c.gap).min_by_key(|at| {
            let gap = &self.gaps[*at];
            let unknown = gap.now.is_none() || gap.is_whole();
            (unknown, !self.trainee.is_open(gap.movement), *at)
        })
    }
}
