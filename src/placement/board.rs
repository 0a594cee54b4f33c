//! What is known of one skill, in flat numbers, and what an answer would decide.

use super::{P, Question, day_order};
use crate::chain::Stages;
use crate::chain::flat::{ALL, ANY, AT_LEAST, Flat};
use crate::curriculum::{Curriculum, Day, Movement, MovementIx};
use crate::readiness::{Evidence, Readiness, State, Truth, never_presumed};

/// A skill's movements with everything that is known of them.
#[derive(Clone)]
pub struct Board<'a> {
    curriculum: &'a Curriculum,
    flat: &'a Flat,
    /// The skill's movements by number, in the order of their stages.
    members: Vec<u32>,
    stage: Vec<u32>,
    guarded: Vec<bool>,
    never_presumed: Vec<bool>,
    paused: Vec<bool>,
    /// Has a result that counts.
    tested: Vec<bool>,
    /// For each demand what results say; `Unknown` when untested.
    shown: Vec<Truth>,
    presumed: Vec<bool>,
    /// What was tested on this day, and how many sets of it.
    done_today: Vec<(&'a Movement, u32)>,
}

impl<'a> Board<'a> {
    /// The board of the movements of a chain, after some results.
    pub fn new(
        curriculum: &'a Curriculum,
        stages: &Stages,
        flat: &'a Flat,
        chain: &[MovementIx],
        evidence: &Evidence<'_>,
        readiness: &Readiness,
        today: Day,
    ) -> Board<'a> {
        let all = || {
            flat.movements
                .iter()
                .map(|ix| (*ix, curriculum.movement(*ix)))
        };
        let mut members: Vec<u32> = chain.iter().filter_map(|ix| flat.number(*ix)).collect();
        members.sort_by_key(|m| (stages.of(flat.movements[*m as usize]), *m));
        let ix_of = |movement: u32| flat.movements[movement as usize];
        let done_today: Vec<(&Movement, u32)> = all()
            .map(|(ix, m)| (m, evidence.sets_on(ix, today)))
            .filter(|(_, sets)| *sets > 0)
            .collect();
        Board {
            stage: all().map(|(ix, _)| stages.of(ix).unwrap_or(0)).collect(),
            guarded: all().map(|(_, m)| m.guarded()).collect(),
            never_presumed: all().map(|(_, m)| never_presumed(m)).collect(),
            paused: all()
                .map(|(ix, _)| readiness.of(ix).is_none_or(|s| s.state == State::Paused))
                .collect(),
            tested: all().map(|(ix, _)| evidence.is_tested(ix)).collect(),
            shown: flat
                .demands
                .iter()
                .map(|(m, target)| {
                    evidence
                        .of_results(ix_of(*m), target)
                        .unwrap_or(Truth::Unknown)
                })
                .collect(),
            presumed: flat
                .demands
                .iter()
                .map(|(m, target)| {
                    !evidence.is_tested(ix_of(*m)) && evidence.is_presumed(ix_of(*m), target)
                })
                .collect(),
            done_today,
            curriculum,
            flat,
            members,
        }
    }

    fn demand(&self, demand: u32, guarded: bool) -> Truth {
        let at = demand as usize;
        match self.presumed[at] && !guarded {
            true => Truth::True,
            false => self.shown[at],
        }
    }

    /// The value of a movement's needs, `of` giving that of each demand.
    fn needs(&self, movement: u32, of: &impl Fn(u32) -> Truth) -> Truth {
        let tree = &self.flat.trees[movement as usize];
        match tree.is_empty() {
            true => Truth::True,
            false => value(tree, &mut 0, of),
        }
    }

    /// The movements that a consistent client cannot have: their needs are false, or would be once everything that stands
    /// above something missing is counted as missing too. It runs upwards, decides no state, and only spares questions.
    fn beyond(&self) -> Vec<bool> {
        let mut beyond = vec![false; self.flat.movements.len()];
        loop {
            let mut changed = false;
            for m in &self.members {
                let guarded = self.guarded[*m as usize];
                let of = |demand: u32| match self.demand(demand, guarded) {
                    Truth::Unknown if self.is_beyond(demand, &beyond) => Truth::False,
                    value => value,
                };
                if !beyond[*m as usize] && self.needs(*m, &of) == Truth::False {
                    beyond[*m as usize] = true;
                    changed = true;
                }
            }
            if !changed {
                return beyond;
            }
        }
    }

    fn is_beyond(&self, demand: u32, beyond: &[bool]) -> bool {
        let movement = self.flat.demands[demand as usize].0 as usize;
        beyond[movement] && !self.tested[movement] && !self.presumed[demand as usize]
    }

    fn is_owned(&self, movement: u32) -> bool {
        let at = movement as usize;
        self.shown[at] == Truth::True || self.presumed[at]
    }

    /// The movements whose state a question could still decide.
    fn undecided(&self, beyond: &[bool]) -> Vec<u32> {
        let open = |m: &&u32| {
            let at = **m as usize;
            let guarded = self.guarded[at];
            !self.paused[at]
                && !beyond[at]
                && !self.is_owned(**m)
                && self.needs(**m, &|d| self.demand(d, guarded)) == Truth::Unknown
        };
        self.members.iter().filter(open).copied().collect()
    }

    /// The movements of which a number would still tell something, in the order in which the undecided needs ask them.
    fn useful(&self, undecided: &[u32], beyond: &[bool]) -> Vec<u32> {
        let mut useful: Vec<u32> = Vec::new();
        for m in undecided {
            let guarded = self.guarded[*m as usize];
            for demand in demands(&self.flat.trees[*m as usize]) {
                let of = self.flat.demands[demand as usize].0;
                let tells = self.demand(demand, guarded) == Truth::Unknown
                    && !beyond[of as usize]
                    && !self.paused[of as usize];
                if tells && !useful.contains(&of) {
                    useful.push(of);
                }
            }
        }
        useful
    }

    /// How much is left to do: the states in doubt, and the questions that could still be asked about them.
    fn left(&self) -> i64 {
        let beyond = self.beyond();
        let undecided = self.undecided(&beyond);
        (P.state * undecided.len() + self.useful(&undecided, &beyond).len()) as i64
    }

    /// The place of a movement's test within a day.
    fn order(&self, movement: u32) -> u32 {
        day_order(
            self.curriculum
                .movement(self.flat.movements[movement as usize]),
        )
    }

    /// The movements that may be tested today, whether or not a number of them would tell something; in the order of their
    /// stages.
    pub fn for_today(&self) -> Vec<MovementIx> {
        let may = self.members.iter().filter(|m| self.may_be_tested(**m));
        may.map(|m| self.flat.movements[*m as usize]).collect()
    }

    /// Whether a movement may be tested today: its needs are shown, nothing that comes later in a day was tested, and its
    /// pattern has all-out sets left.
    fn may_be_tested(&self, number: u32) -> bool {
        let guarded = self.guarded[number as usize];
        let of = |demand: u32| self.demand(demand, guarded);
        let movement = self
            .curriculum
            .movement(self.flat.movements[number as usize]);
        let order = day_order(movement);
        let same = self
            .done_today
            .iter()
            .filter(|(m, _)| m.pattern() == movement.pattern())
            .fold(0_u32, |all, (_, sets)| all.saturating_add(*sets));
        let in_order = self.done_today.iter().all(|(m, _)| day_order(m) <= order);
        let fresh = order < P.strength || same < P.all_out_sets;
        !self.paused[number as usize] && in_order && fresh && self.needs(number, &of) == Truth::True
    }

    /// The board after a movement met all that is asked of it, or missed it all.
    fn after(&self, movement: u32, met: bool) -> Board<'a> {
        let mut next = self.clone();
        next.tested[movement as usize] = true;
        for (demand, (of, _)) in self.flat.demands.iter().enumerate() {
            if *of == movement {
                next.presumed[demand] = false;
                next.shown[demand] = if met { Truth::True } else { Truth::False };
            }
        }
        if met && self.curriculum.school().presume {
            next.presume(movement);
        }
        next
    }

    fn presume(&mut self, owned: u32) {
        let mut open = vec![owned];
        while let Some(owner) = open.pop() {
            for demand in &self.flat.necessary[owner as usize] {
                let below = self.flat.demands[*demand as usize].0;
                let at = below as usize;
                if self.never_presumed[at] || self.tested[at] || self.presumed[*demand as usize] {
                    continue;
                }
                self.presumed[*demand as usize] = true;
                for weaker in &self.flat.implied[*demand as usize] {
                    self.presumed[*weaker as usize] = true;
                }
                open.push(below);
            }
        }
    }

    /// The highest stage that is owned, and the lowest that is missing.
    fn level(&self) -> (i64, i64) {
        let stage = |m: &u32| i64::from(self.stage[*m as usize]);
        let owned = self.members.iter().filter(|m| self.is_owned(**m));
        let missing = self
            .members
            .iter()
            .filter(|m| self.shown[**m as usize] == Truth::False);
        (
            owned.map(stage).max().unwrap_or(-1),
            missing.map(stage).min().unwrap_or(i64::MAX),
        )
    }

    /// How likely a movement is met, in tenths: very likely at or below what is owned, unlikely at or above what is missing.
    fn likely(&self, movement: u32, (owned, missing): (i64, i64)) -> i64 {
        let stage = i64::from(self.stage[movement as usize]);
        5 + 4 * i64::from(stage <= owned) - 3 * i64::from(stage >= missing)
    }

    /// The next question, or none when every state is decided or nothing may be asked. `asked` are the movements that were
    /// asked already and left open.
    ///
    /// # Complexity
    /// Each candidate's two answers are played through the skill: at most the square of its movements, times their leaves.
    pub fn next(&self, asked: &[MovementIx]) -> Option<Question> {
        let beyond = self.beyond();
        let undecided = self.undecided(&beyond);
        let mut candidates = self.useful(&undecided, &beyond);
        candidates.retain(|m| !asked.contains(&self.flat.movements[*m as usize]));
        // A test bars for the rest of the day what should have come before it: of the tests for today only the earliest in
        // the day's order are offered.
        let today = |m: &u32| self.may_be_tested(*m).then(|| self.order(*m));
        let earliest = candidates.iter().filter_map(today).min();
        candidates.retain(|m| today(m).is_none_or(|order| Some(order) == earliest));
        // What is left after either answer, squared (an even split beats a lucky guess), by how likely the answer is.
        let left = |m: u32, met: bool| self.after(m, met).left().pow(2);
        let level = self.level();
        let scored = candidates.into_iter().map(|m| {
            let likely = self.likely(m, level);
            (m, likely * left(m, true) + (10 - likely) * left(m, false))
        });
        let rank = |(m, left): &(u32, i64)| (*left, self.order(*m), *m);
        let (best, _) = scored.min_by_key(rank)?;
        Some(Question {
            movement: self.flat.movements[best as usize],
            today: self.may_be_tested(best),
        })
    }
}

/// The demands of a tree in prefix order.
fn demands(tree: &[i32]) -> Vec<u32> {
    let mut out = Vec::new();
    let mut at = 0;
    while let Some(kind) = tree.get(at) {
        if *kind >= 0 {
            out.push(*kind as u32);
        }
        at += match *kind {
            ALL | ANY => 2,
            AT_LEAST => 3,
            _ => 1,
        };
    }
    out
}

/// The value of a tree in prefix order, from a place in it.
fn value(tree: &[i32], at: &mut usize, of: &impl Fn(u32) -> Truth) -> Truth {
    let kind = tree[*at];
    *at += 1;
    if kind >= 0 {
        return of(kind as u32);
    }
    let mut take = || {
        *at += 1;
        tree[*at - 1]
    };
    let (least, count) = match kind {
        ALL => {
            let count = take();
            (count, count)
        }
        ANY => (1, take()),
        _ => {
            let least = take();
            (least, take())
        }
    };
    let (mut met, mut possible) = (0, 0);
    for _ in 0..count {
        let part = value(tree, at, of);
        met += i32::from(part == Truth::True);
        possible += i32::from(part >= Truth::Unknown);
    }
    match (met >= least, possible >= least) {
        (true, _) => Truth::True,
        (false, true) => Truth::Unknown,
        (false, false) => Truth::False,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::{resolve, stages};
    use crate::readiness::assess;
    use crate::reading::read;
    use crate::results;
    use crate::source::Snapshot;

    /// Whether `below` is presumed once `top`, which needs it, was met: `more` is what `below` says, `tested` what was tested.
    fn presumed(more: &str, tested: &str) -> bool {
        let movement = |id: &str, more: &str| {
            let path = format!("content/movements/{id}.yaml");
            let text = format!(
                "movement: {id}\nname: {id}\npattern: core\nload: body\nequipment: []\nsummary: S.\nstandard: 5 reps\n{more}\n"
            );
            (path, text)
        };
        let files = [
            movement("below", more),
            movement("top", "position: prone\nneeds: [below]"),
            ("content/school.yaml".into(), "school: S\naddress: https://s.example/\nlanguage: en\nunits: metric\npresume: true\n".into()),
            ("content/skills/s.yaml".into(), "skill: s\nname: S\ngoal: top\n".into()),
            ("ana.yaml".into(), format!("results: 1\ntested: [{tested}]\n")),
        ];
        let files = files.iter().map(|(p, t)| (p.as_str(), t.as_str()));
        let (of_school, of_ana): (Vec<_>, Vec<_>) =
            files.partition(|(path, _)| path.starts_with("content/"));
        let (curriculum, findings) = read(&Snapshot::of_texts(of_school));
        assert!(!findings.has_errors());
        let today = Day::read("2026-11-28").expect("a day");
        let (people, findings) = results::read(&Snapshot::of_texts(of_ana), &curriculum, today);
        assert!(!findings.has_errors());
        let (stages, flat) = (stages(&curriculum), Flat::new(&curriculum));
        let goal = &curriculum.skills().next().expect("a skill").1.goal;
        let chain = resolve(&curriculum, &stages, goal);
        let members: Vec<MovementIx> = chain.movements.iter().map(|l| l.movement).collect();
        let evidence = Evidence::new(&curriculum, &people[0], today);
        let readiness = assess(&curriculum, &stages, &people[0], today);
        let board = Board::new(
            &curriculum,
            &stages,
            &flat,
            &members,
            &evidence,
            &readiness,
            today,
        );
        let number = |id: &str| {
            let ix = curriculum.find_movement(id).expect("it is there");
            flat.number(ix).expect("it has a number")
        };
        let below = number("below");
        let after = board.after(number("top"), true);
        let mut demands = flat.demands.iter().zip(&after.presumed);
        demands.any(|((of, _), presumed)| *of == below && *presumed)
    }

    /// What stands below something owned is presumed; but not what is done one side at a time, nor what was tested.
    #[test]
    fn what_is_never_presumed_and_what_was_tested_is_not_presumed() {
        assert!(presumed("position: prone", ""));
        assert!(!presumed("position: prone\neach_side: true", ""));
        let missed = "{ movement: below, got: 1 rep, on: 2026-11-27 }";
        assert!(!presumed("position: prone", missed));
    }
}
