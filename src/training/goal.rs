//! The goal, and the gaps between a person and it.

use super::closed::Stop;
use super::constants::K;
use super::facts::Roster;
use super::now::Now;
use super::trainee::Trainee;
use crate::chain::{Route, below};
use crate::curriculum::target::{Added, Got, Micro};
use crate::curriculum::{Leaf, Mass, MovementIx, Need, SkillIx, Target};
use crate::readiness::{Share, Truth, WHOLE, client_route};
use crate::results::{Goal as Chosen, Sides};
use std::cmp::Reverse;
use std::collections::HashMap;

/// What a person trains for.
#[derive(Clone, Debug)]
pub struct Goal {
    pub of: Chosen,
    pub leaf: Leaf,
    /// Chosen by the person, or the nearest.
    pub chosen: bool,
    /// The movements still to own; `None` where the goal cannot be reached.
    pub route: Option<Route>,
    /// The goal and all that its needs mention, down to the ground.
    pub chain: Vec<MovementIx>,
}

/// A movement on the way to the goal at the easiest target asked of it (the goal at its own).
#[derive(Clone, Debug)]
pub struct Gap {
    pub movement: MovementIx,
    pub target: Target,
    pub now: Option<Now>,
    /// What is known, as a result would be written.
    pub got: Option<Got>,
    /// Where nobody measured it: the movement that it follows from.
    pub from: Option<MovementIx>,
    /// Where nothing is known: what was measured in a way that counts no more.
    pub old: Option<Sides>,
    /// What the target's share of body weight comes to.
    pub mass: Option<Mass>,
    pub share: Share,
    /// The movements that ask for it, by id.
    pub opens: Vec<MovementIx>,
    /// The longest path from here to the goal: half weeks of both ends of each range together, times what is missing in
    /// thousandths. Whole numbers, so that every machine orders gaps alike.
    pub weight: u64,
    /// The same path by its low and its high ends as far as it can be trained, in half weeks times thousandths.
    pub low: u64,
    pub high: u64,
    /// Where it ends for now, if not at the goal.
    pub stop: Option<Stop>,
}

impl Gap {
    /// The heaviest first, then the one that opens more, then by id.
    pub fn order(&self) -> (Reverse<u64>, Reverse<usize>, MovementIx) {
        (
            Reverse(self.weight),
            Reverse(self.opens.len()),
            self.movement,
        )
    }

    pub fn is_whole(&self) -> bool {
        self.share == WHOLE
    }

    /// Left and right, where they were tested apart, differ, and the lesser of them is what is known.
    pub fn apart(&self) -> Option<(Micro, Micro)> {
        let now = self.now?;
        let of = now.sides.filter(|(left, right)| left != right);
        of.filter(|(left, right)| now.amount == *left || now.amount == *right)
    }

    /// The path in weeks, low and high, in tenths, half up.
    pub fn tenths_of_weeks(&self) -> (u64, u64) {
        let tenths = |halves: u64| (halves + 100) / 200;
        (tenths(self.low), tenths(self.high))
    }

    /// The path in months, low and high, up.
    pub fn months(&self) -> (i64, i64) {
        let months = |halves: u64| (halves as f64 / 2000.0 / K.weeks_a_month).ceil() as i64;
        (months(self.low), months(self.high))
    }
}

/// The leaf that a goal asks.
fn leaf_of(roster: &Roster<'_>, of: Chosen) -> Leaf {
    match of {
        Chosen::Skill(ix) => roster.curriculum.skill(ix).goal.clone(),
        Chosen::Movement(ix) => {
            let movement = roster.curriculum.movement(ix);
            Leaf {
                movement: ix,
                target: movement.standard(),
                own_standard: true,
                span: movement.spans().standard,
            }
        }
    }
}

impl Trainee<'_> {
    fn goal_of(&self, of: Chosen, chosen: bool) -> Goal {
        let leaf = leaf_of(self.roster, of);
        Goal {
            of,
            route: client_route(&self.evidence, &leaf),
            chain: self.chain_of(leaf.movement),
            leaf,
            chosen,
        }
    }

    /// A movement and all that its needs mention, down to the ground.
    fn chain_of(&self, goal: MovementIx) -> Vec<MovementIx> {
        let (curriculum, stages) = (self.roster.curriculum, self.roster.stages);
        let mut chain = below(curriculum, goal);
        chain.retain(|ix| stages.is_reached(*ix) && self.roster.find(*ix).is_some());
        chain
    }

    /// The goal that was asked for, else the person's own, else the skill with the largest share owned that is not finished,
    /// of these the one with the shortest route.
    pub fn goal(&self, asked: Option<Chosen>) -> Option<Goal> {
        if let Some(of) = asked.or(self.person.goal) {
            return Some(self.goal_of(of, true));
        }
        let curriculum = self.roster.curriculum;
        let stands = |ix: &SkillIx| {
            let goal = curriculum.skill(*ix).goal.movement;
            self.roster.find(goal).is_some() && self.roster.stages.is_reached(goal)
        };
        let share = |ix: &SkillIx| {
            let chain = self.chain_of(curriculum.skill(*ix).goal.movement);
            let owned = chain.iter().filter(|ix| self.owns(**ix)).count();
            (owned as u64, chain.len().max(1) as u64)
        };
        let more = |(a, of_a): (u64, u64), (b, of_b): (u64, u64)| (b * of_a).cmp(&(a * of_b));
        let mut skills: Vec<(SkillIx, (u64, u64))> = curriculum
            .skills()
            .map(|(ix, _)| ix)
            .filter(stands)
            .map(|ix| (ix, share(&ix)))
            .collect();
        skills.sort_by(|(_, a), (_, b)| more(*a, *b));
        // A route costs more than a share: only those of an equal share are walked, until one is not finished.
        let weeks = |goal: &Goal| goal.route.as_ref().map_or(0, |r| r.half_weeks);
        let alike = skills.chunk_by(|(_, a), (_, b)| more(*a, *b).is_eq());
        alike
            .filter_map(|of| {
                of.iter()
                    .map(|(ix, _)| (ix, self.goal_of(Chosen::Skill(*ix), false)))
                    .filter(|(_, g)| g.route.as_ref().is_some_and(|r| !r.movements.is_empty()))
                    .min_by_key(|(ix, g)| (weeks(g), **ix))
            })
            .map(|(_, goal)| goal)
            .next()
    }

    /// The gaps, the heaviest first: from the goal down, through movements not owned, each untrue leaf under groups not true
    /// whose movement is on the route.
    pub fn gaps(&self, goal: &Goal) -> Vec<Gap> {
        let top = goal.leaf.movement;
        let route = goal.route.as_ref().map_or(&[][..], |r| &r.movements);
        let mut on_route = vec![false; self.roster.curriculum.len()];
        route.iter().for_each(|ix| on_route[ix.at()] = true);
        if !on_route[top.at()] {
            return Vec::new();
        }
        let mut found: Vec<(MovementIx, Vec<Target>, Vec<MovementIx>)> =
            vec![(top, Vec::new(), Vec::new())];
        let mut place: HashMap<MovementIx, usize> = HashMap::from([(top, 0)]);
        let mut open = vec![top];
        while let Some(ix) = open.pop() {
            if self.owns(ix) {
                continue;
            }
            for leaf in self.untrue_of(ix) {
                let below = leaf.movement;
                if !on_route[below.at()] {
                    continue;
                }
                let at = *place.entry(below).or_insert_with(|| {
                    found.push((below, Vec::new(), Vec::new()));
                    open.push(below);
                    found.len() - 1
                });
                found[at].1.push(leaf.target);
                found[at].2.push(ix);
            }
        }
        let mut gaps: Vec<Gap> = found
            .into_iter()
            .map(|(ix, asked, opens)| {
                let target = match ix == top {
                    true => goal.leaf.target,
                    false => self.easiest(&asked).unwrap_or(goal.leaf.target),
                };
                self.gap(ix, target, opens)
            })
            .collect();
        self.weigh(&mut gaps);
        gaps
    }

    fn gap(&self, movement: MovementIx, target: Target, mut opens: Vec<MovementIx>) -> Gap {
        opens.sort_unstable();
        opens.dedup();
        let now = self.now(movement);
        Gap {
            movement,
            target,
            share: self.share(now.as_ref(), &target),
            now,
            got: self.got(movement),
            from: self.follows_from(movement),
            old: self.measured_otherwise(movement),
            mass: match target.added() {
                Some(Added::BodyWeight(_)) => self.mass(target.added()),
                _ => None,
            },
            opens,
            weight: 0,
            low: 0,
            high: 0,
            stop: None,
        }
    }

    fn untrue_of(&self, ix: MovementIx) -> Vec<&Leaf> {
        let movement = self.roster.curriculum.movement(ix);
        let guarded = movement.guarded();
        let is_true = |leaf: &Leaf| self.evidence.leaf(leaf, guarded) == Truth::True;
        let mut out = Vec::new();
        untrue(movement.needs(), &is_true, &mut out);
        out
    }

    /// The easiest of some targets as ladders order them; loads in kilograms.
    fn easiest(&self, asked: &[Target]) -> Option<Target> {
        let hardness = |t: &Target| {
            let amount = if t.at_most() { -t.amount() } else { t.amount() };
            let load = self.mass(t.added()).unwrap_or_default();
            let hits = t.tries().map_or(0, |t| t.hits);
            (load, t.sets(), amount, t.seconds(), hits)
        };
        asked.iter().min_by_key(|t| hardness(t)).copied()
    }

    /// Gives each gap the longest path to the goal, each movement on it counting its weeks times what is missing of it; the heaviest first.
    fn weigh(&self, gaps: &mut [Gap]) {
        let place: HashMap<MovementIx, usize> = gaps
            .iter()
            .enumerate()
            .map(|(i, g)| (g.movement, i))
            .collect();
        let opens: Vec<Vec<usize>> = gaps
            .iter()
            .map(|g| {
                g.opens
                    .iter()
                    .filter_map(|ix| place.get(ix).copied())
                    .collect()
            })
            .collect();
        let own: Vec<Path> = gaps
            .iter()
            .map(|g| {
                let (low, high) = self.roster.of(g.movement).half_weeks;
                let missing = u64::from(WHOLE - g.share);
                let of = |weeks: u32| u64::from(weeks) * missing;
                (of(low) + of(high), of(low), of(high))
            })
            .collect();
        let mut paths = vec![None; gaps.len()];
        for i in 0..gaps.len() {
            longest(i, &opens, &own, &mut vec![false; gaps.len()], &mut paths);
        }
        let mut next: HashMap<MovementIx, MovementIx> = HashMap::new();
        for (i, found) in paths.into_iter().enumerate() {
            let (path, up) = found.unwrap_or_default();
            (gaps[i].weight, gaps[i].low, gaps[i].high) = path;
            next.extend(up.map(|up| (gaps[i].movement, gaps[up].movement)));
        }
        gaps.sort_by_key(Gap::order);
        let at = |ix: &MovementIx| gaps.iter().position(|g| g.movement == *ix);
        let ups = gaps.iter().map(|g| next.get(&g.movement).and_then(at));
        let ups: Vec<Option<usize>> = ups.collect();
        self.stop(gaps, &ups);
    }
}

/// Weight, low and high.
type Path = (u64, u64, u64);

/// The longest path from a gap to the goal, and the next on it. In circles a gap does not count twice; what was worked out is kept.
fn longest(
    at: usize,
    opens: &[Vec<usize>],
    own: &[Path],
    on_path: &mut [bool],
    paths: &mut [Option<(Path, Option<usize>)>],
) -> Path {
    if let Some((path, _)) = paths[at] {
        return path;
    }
    on_path[at] = true;
    let mut best: Option<(Path, usize)> = None;
    for up in &opens[at] {
        if !on_path[*up] {
            let path = longest(*up, opens, own, on_path, paths);
            if best.is_none_or(|(best, _)| path > best) {
                best = Some((path, *up));
            }
        }
    }
    on_path[at] = false;
    let (above, up) = best.map_or_else(Default::default, |(path, up)| (path, Some(up)));
    let path = (
        own[at].0 + above.0,
        own[at].1 + above.1,
        own[at].2 + above.2,
    );
    paths[at] = Some((path, up));
    path
}

/// The untrue leaves of a tree, under groups that are not true.
fn untrue<'n>(need: &'n Need<Leaf>, is_true: &dyn Fn(&Leaf) -> bool, out: &mut Vec<&'n Leaf>) {
    if need.holds(&|leaf| is_true(leaf)) {
        return;
    }
    match need {
        Need::Leaf(leaf) => out.push(leaf),
        Need::All(parts) | Need::Any(parts) | Need::AtLeast(_, parts) => {
            parts.iter().for_each(|part| untrue(part, is_true, out));
        }
    }
}
