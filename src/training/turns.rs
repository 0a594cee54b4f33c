//! In which order candidates get their place in a session.

use super::candidates::Candidate;
use super::constants::K;
use super::facts::{Group, place_of};
use super::line::Line;
use super::reason::{Block, Rule};
use super::session::Laying;
use crate::curriculum::Day;
use crate::curriculum::words::Pattern;
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

impl Laying<'_, '_> {
    /// Practice: exits, then balance and turnovers, then singles. Strength: straight-arm or inverted first, then by pattern, then the
    /// higher rung. Range: by weight.
    pub(super) fn place_in_session(&self, line: &Line) -> impl Ord + use<> {
        let facts = self.trainee.roster.of(line.movement);
        let c = &self.candidates.all[line.of];
        let is_exit = facts.pattern() == Pattern::Exit;
        let key = match line.block {
            Block::Practice => (!is_exit, c.single, 0, 0, Reverse(c.weight)),
            Block::Range => (false, false, 0, 0, Reverse(c.weight)),
            Block::Strength | Block::KeptUp => (
                !(facts.straight || facts.of.inverted()),
                false,
                place_of(facts.pattern()),
                u32::MAX - facts.stage,
                Reverse(0),
            ),
        };
        (line.block, key, line.movement)
    }

    /// Of what is tried first in one pattern, straight arms and inverted apart, the easier before the harder, in the places that they
    /// have. Common practice, no source.
    pub(super) fn easy_first(&self, lines: &mut [Line]) {
        let roster = self.trainee.roster;
        let sort = |line: &Line| {
            let facts = roster.of(line.movement);
            let apart = facts.straight || facts.of.inverted();
            (line.block, facts.pattern(), apart)
        };
        let is_new = |l: &Line| matches!(l.rule, Rule::FirstTry | Rule::UntilTested);
        let hard = lines.iter().filter(|l| l.block.is_hard() && is_new(l));
        let sorts: Vec<_> = hard.map(sort).collect();
        for of in sorts {
            let new = |l: &Line| sort(l) == of && is_new(l);
            let places: Vec<usize> = (0..lines.len()).filter(|at| new(&lines[*at])).collect();
            let mut easy: Vec<Line> = places.iter().map(|at| lines[*at].clone()).collect();
            easy.sort_by_key(|l| (roster.of(l.movement).stage, l.movement));
            for (at, line) in places.into_iter().zip(easy) {
                lines[at] = line;
            }
        }
    }

    /// The candidates in the order in which they get their place: what comes every time, then the best of each group, of practice
    /// and of range, then the second of each, and so on; last what is kept up. Common practice, no source.
    pub(super) fn in_turn(&self, on: Day) -> Vec<usize> {
        let all = &self.candidates.all;
        let weight = |i: &usize| (Reverse(all[*i].weight), all[*i].movement, all[*i].single);
        let times = |i: &usize| self.diary.times(all[*i].movement, on, K.turns);
        let mut first: Vec<usize> = (0..all.len()).filter(|i| all[*i].first).collect();
        first.sort_by_key(|i| (Some(*i) != self.candidates.balance, weight(i)));
        let mut queues: BTreeMap<(Block, Option<Group>), Vec<usize>> = BTreeMap::new();
        let mut kept: Vec<usize> = Vec::new();
        for (i, c) in all.iter().enumerate().filter(|(_, c)| !c.first) {
            let group = self.trainee.roster.of(c.movement).group();
            match c.block {
                Block::KeptUp => kept.push(i),
                Block::Strength => queues.entry((c.block, group)).or_default().push(i),
                block => queues.entry((block, None)).or_default().push(i),
            }
        }
        let mut rounds: Vec<(usize, usize)> = Vec::new();
        for mut queue in queues.into_values() {
            let new = |i: &usize| all[*i].rule == Rule::FirstTry && all[*i].block.is_hard();
            queue.sort_by_key(|i| {
                let keeps = self.keeps_its_line(&all[*i], on);
                (!keeps, times(i), new(i), weight(i))
            });
            rounds.extend(queue.into_iter().enumerate());
        }
        // Back from time off what is known comes first.
        let late = |i: &usize| {
            self.trainee.is_back && all[*i].rule == Rule::FirstTry && all[*i].block.is_hard()
        };
        rounds.sort_by_key(|(round, i)| (*round, late(i), weight(i)));
        self.one_of_each_group(&mut kept, on);
        // A group that no gap trains stands once in seven days, before the second of the others, one a session.
        let served: BTreeSet<Group> = all
            .iter()
            .filter(|c| c.block == Block::Strength)
            .filter_map(|c| self.trainee.roster.of(c.movement).group())
            .collect();
        let due = |i: &usize| {
            let group = self.trainee.roster.of(all[*i].movement).group();
            group.is_some_and(|g| !served.contains(&g) && !self.diary.trained(g, on, 6))
        };
        let early = kept.iter().position(due).map(|at| kept.remove(at));
        let of_round = |first: bool| {
            let in_round = rounds
                .iter()
                .filter(move |(round, _)| (*round == 0) == first);
            in_round.map(|(_, i)| *i)
        };
        first.extend(of_round(true));
        first.extend(early);
        let (keeps, kept): (Vec<usize>, Vec<usize>) = kept
            .into_iter()
            .partition(|i| self.keeps_its_line(&all[*i], on));
        first.extend(keeps);
        first.extend(of_round(false));
        first.extend(kept);
        self.due_first(first, on)
    }

    /// What comes every time, then what a kind is trained by and is due, then what is overdue, then the others as they were.
    fn due_first(&self, rest: Vec<usize>, on: Day) -> Vec<usize> {
        let all = &self.candidates.all;
        let weight = |i: &usize| (Reverse(all[*i].weight), all[*i].movement, all[*i].single);
        let mut order: Vec<usize> = rest.iter().copied().filter(|i| all[*i].first).collect();
        let mut due: Vec<usize> = (0..all.len()).collect();
        due.retain(|i| self.is_mainstay_due(&all[*i], on));
        due.sort_by_key(weight);
        for i in due.into_iter().chain(self.overdue(on)).chain(rest) {
            if !order.contains(&i) {
                order.push(i);
            }
        }
        order
    }

    /// From the second week on: of what the goal needs, then of what is tried first beside it, the heaviest that did not stand in two
    /// weeks. Common practice, no source.
    fn overdue(&self, on: Day) -> Vec<usize> {
        let all = &self.candidates.all;
        let never = |c: &Candidate| {
            (c.gap.is_some() || c.rule == Rule::FirstTry && c.block.is_hard())
                && !c.first
                && !self.is_off(c)
                && self.diary.times(c.movement, on, K.turns) == 0
        };
        let mut late: Vec<usize> = (0..all.len()).filter(|i| never(&all[*i])).collect();
        if on.days_after(self.trainee.today) < K.overdue {
            late.clear();
        }
        late.sort_by_key(|i| (Reverse(all[*i].weight), all[*i].movement, all[*i].single));
        late.truncate(K.overdue_lines as usize);
        late
    }

    /// What is kept up: the first of each group, then the second of each.
    fn one_of_each_group(&self, kept: &mut [usize], on: Day) {
        let all = &self.candidates.all;
        kept.sort_by_key(|i| {
            let facts = self.trainee.roster.of(all[*i].movement);
            let keeps = self.keeps_its_line(&all[*i], on);
            (
                !keeps,
                all[*i].rule == Rule::FirstTry,
                self.diary.times(all[*i].movement, on, K.turns),
                place_of(facts.pattern()),
                all[*i].movement,
            )
        });
        let mut seen: BTreeMap<Option<Group>, usize> = BTreeMap::new();
        kept.sort_by_cached_key(|i| {
            let group = self.trainee.roster.of(all[*i].movement).group();
            let round = seen.entry(group).or_default();
            *round += 1;
            *round
        });
    }

    /// It was shown, and something else goes on for it; or it waits for what is to be shown.
    pub(super) fn is_off(&self, c: &Candidate) -> bool {
        c.then.is_some() && self.tried.contains(&c.movement)
            || c.after.is_some_and(|ix| !self.tried.contains(&ix))
    }

    /// Of the goal's chain, trained lately, and not yet twice in these seven days.
    pub(super) fn keeps_its_line(&self, c: &Candidate, on: Day) -> bool {
        c.goes_on && self.diary.times(c.movement, on, 6) < K.keep_week as usize
    }

    /// What a kind is trained by, and not yet twice in these seven days; one session of the week is left to what is new.
    pub(super) fn is_mainstay_due(&self, c: &Candidate, on: Day) -> bool {
        let times = (K.keep_week as usize).min(self.per_week.saturating_sub(1));
        c.mainstay && self.diary.times(c.movement, on, 6) < times
    }

    /// Two sets of its kind's week are left for it, and may go beyond the session's share: what keeps its line, what a kind is
    /// trained by, and a gap that was tried and did not stand in seven days.
    pub(super) fn has_to_come(&self, c: &Candidate, on: Day) -> bool {
        let tried = match c.rule {
            Rule::FirstTry | Rule::Show => self.tried.contains(&c.movement),
            _ => true,
        };
        let is_late = c.gap.is_some() && self.diary.times(c.movement, on, 6) == 0;
        let comes = self.keeps_its_line(c, on) || tried && (is_late || self.is_mainstay_due(c, on));
        c.block.is_hard() && comes && !self.is_off(c)
    }
}
