//! One session: which lines stand in it, how many sets of each, what is left out and why.

use super::candidates::{Candidate, Candidates};
use super::constants::K;
use super::diary::Diary;
use super::facts::{Group, Kind};
use super::goal::Gap;
use super::line::{At, Line};
use super::reason::{Block, Left, Rule};
use super::trainee::{Trainee, down};
use super::unhurt::Unhurt;
use crate::curriculum::{Day, Mass, MovementIx};
use std::collections::{BTreeMap, BTreeSet};

/// A training day.
#[derive(Clone, Debug, PartialEq)]
pub struct Session {
    pub on: Day,
    /// From 1.
    pub week: u32,
    /// A letter where sessions differ in strength.
    pub name: Option<char>,
    /// Half the sets.
    pub lighter: bool,
    pub minutes: i64,
    pub lines: Vec<Line>,
    pub left: Vec<(MovementIx, Left)>,
}

/// A week of the plan while it is laid.
#[derive(Debug)]
pub struct Week {
    /// From 1.
    pub number: u32,
    pub lighter: bool,
    /// Full weeks of the plan that count for what its sets may rise to.
    pub full: u32,
    /// For each candidate how often it stood in earlier full weeks.
    pub before: Vec<u32>,
    /// Hard sets of a kind so far.
    pub sets: BTreeMap<Kind, i64>,
    /// Kinds with a line that could not grow.
    pub sore: BTreeSet<Kind>,
    pub first: Day,
}

/// Everything that lays sessions.
pub struct Laying<'t, 'a> {
    pub trainee: &'t Trainee<'a>,
    pub candidates: &'t Candidates,
    pub gaps: &'t [Gap],
    pub diary: Diary,
    /// Tried or shown earlier in the plan.
    pub tried: BTreeSet<MovementIx>,
    /// For each candidate how often it stood in full weeks so far.
    pub done: Vec<u32>,
    /// Full weeks in which a kind could not grow.
    pub sore: BTreeMap<Kind, u32>,
    most_firsts: usize,
    /// Fewer lines are known than a session should have.
    few: bool,
    /// Sessions of a week.
    pub(super) per_week: usize,
    /// A session with more than range or one line was laid.
    has_full: bool,
    /// Of each movement in a block the newest line of a full week.
    pub(super) full: BTreeMap<(MovementIx, Block), Line>,
    /// The same plan if nothing hurt and nothing rested.
    pub(super) unhurt: Option<&'t Unhurt>,
}

/// A session while it is laid.
pub(super) struct Draft {
    pub on: Day,
    to_come: i64,
    left_minutes: i64,
    used: BTreeMap<Block, i64>,
    sets: BTreeMap<Kind, i64>,
    pub lines: Vec<Line>,
    left: Vec<(MovementIx, Left)>,
    /// Lines of range at most.
    most_range: usize,
    /// First tries at most.
    pub most_firsts: usize,
}

impl Draft {
    fn count(&self, block: Block) -> usize {
        self.lines.iter().filter(|l| l.block == block).count()
    }

    pub fn ruled(&self, rule: Rule) -> usize {
        self.lines.iter().filter(|l| l.rule == rule).count()
    }

    /// Lines of a known amount, range apart.
    fn known(&self) -> usize {
        let tries = |l: &&Line| matches!(l.rule, Rule::FirstTry | Rule::UntilTested);
        let lines = self.lines.iter().filter(|l| l.block != Block::Range);
        lines.filter(|l| !tries(l)).count()
    }
}

/// Whether a line's sets are counted as hard ones.
pub fn counts_as_hard(line: &Line) -> bool {
    line.block.is_hard() && !matches!(line.rule, Rule::FirstTry | Rule::Show)
}

/// The minutes of a warm-up: a fifth, at most ten.
pub fn warm_up_minutes(minutes: u32) -> i64 {
    down(f64::from(minutes) * K.warm_up).min(K.warm_up_most.into())
}

impl<'t, 'a> Laying<'t, 'a> {
    pub fn new(
        trainee: &'t Trainee<'a>,
        candidates: &'t Candidates,
        gaps: &'t [Gap],
        per_week: usize,
        unhurt: Option<&'t Unhurt>,
    ) -> Laying<'t, 'a> {
        let few = candidates.known() < K.known as usize;
        Laying {
            trainee,
            candidates,
            gaps,
            diary: Diary::of(trainee),
            tried: BTreeSet::new(),
            done: vec![0; candidates.all.len()],
            sore: BTreeMap::new(),
            most_firsts: match (few, trainee.was_long_off()) {
                (false, _) => K.first,
                (true, false) => K.first_new,
                (true, true) => K.first_back,
            } as usize,
            few,
            per_week,
            has_full: false,
            full: BTreeMap::new(),
            unhurt,
        }
    }

    /// Lays a session. `to_come`: sessions of its week from this one on.
    pub fn session(&mut self, week: &mut Week, on: Day, to_come: u32) -> Session {
        let warm_up = warm_up_minutes(self.trainee.minutes);
        let order = self.in_turn(on);
        let firsts = self.most_firsts;
        let lay = |most, firsts| self.draft(week, on, to_come, &order, (most, firsts));
        let mut draft = lay(usize::MAX, firsts);
        // Two lines of range where a group has no time for any, and fewer where that is its only one in seven days.
        let most = K.range_lines as usize;
        if self.without_time(&draft, false) > 0 {
            draft = lay(most, firsts);
        }
        for fewer in (0..most).rev() {
            let without = self.without_time(&draft, true);
            if without == 0 {
                break;
            }
            let other = lay(fewer, firsts);
            if self.without_time(&other, true) < without {
                draft = other;
            }
        }
        // Not more first tries than lines of a known amount, where enough are known.
        let known = draft.known().max(1);
        if !self.few && draft.ruled(Rule::FirstTry) > known {
            draft = lay(draft.most_range, known);
        }
        // A day of nothing but range and plain practice, or of one line, is left to its neighbours. Common practice, no source.
        let is_thin = draft.lines.len() < 2 || !draft.lines.iter().any(|l| self.is_training(l));
        if is_thin && self.has_full {
            draft.lines.clear();
            draft.sets.clear();
        }
        self.has_full |= !is_thin;
        // What nobody would look for in vain: said of the first day.
        if on == week.first {
            let absent = self.absent(on, &draft.lines, &draft.left);
            draft.left.extend(absent);
        }
        self.close(week, draft, warm_up)
    }

    /// What makes a day a training day.
    fn is_training(&self, line: &Line) -> bool {
        let facts = self.trainee.roster.of(line.movement);
        rests_its_group(&self.candidates.all[line.of], line, facts.turnover) || facts.guarded()
    }

    /// How many of pulling, pushing and legs have no line for want of time; `only` those that were not trained in six days.
    fn without_time(&self, draft: &Draft, only: bool) -> usize {
        let group = |ix: MovementIx| self.trainee.roster.of(ix).group();
        let lacks = |g: &&Group| {
            let late =
                |(ix, why): &(MovementIx, Left)| *why == Left::Time && group(*ix) == Some(**g);
            draft.left.iter().any(late)
                && !draft.lines.iter().any(|l| group(l.movement) == Some(**g))
                && !(only && self.diary.trained(**g, draft.on, 6))
        };
        let groups = [Group::Pull, Group::Push, Group::Legs];
        groups.iter().filter(lacks).count()
    }

    /// `most`: lines of range, and first tries.
    fn draft(
        &self,
        week: &Week,
        on: Day,
        to_come: u32,
        order: &[usize],
        most: (usize, usize),
    ) -> Draft {
        let warm_up = warm_up_minutes(self.trainee.minutes);
        let mut draft = Draft {
            on,
            to_come: to_come.min(K.per_week).into(),
            left_minutes: i64::from(self.trainee.minutes) - warm_up,
            used: BTreeMap::new(),
            sets: BTreeMap::new(),
            lines: Vec::new(),
            left: self.candidates.left.clone(),
            most_range: most.0,
            most_firsts: most.1,
        };
        let all = &self.candidates.all;
        for &of in order.iter().filter(|of| !self.is_off(&all[**of])) {
            let c = &all[of];
            let at = At {
                on,
                first: week.first,
                // In a lighter week nothing moves on.
                times: if week.lighter { 0 } else { week.before[of] },
                tried: self.tried.contains(&c.movement),
                again: self.diary.stood_since(c.movement, week.first),
                is_limiter: c.gap.is_some() && c.gap == self.candidates.limiter,
            };
            let line = self.trainee.line(of, c, self.gaps, at);
            let late = || self.trainee.waits_lately(c.movement, on);
            match (line, late) {
                (Some(line), _) => self.place(week, &mut draft, c, line),
                (None, late) => {
                    let late = late().map(|l| (c.movement, Left::Lately(l.what)));
                    draft.left.extend(late);
                }
            }
        }
        draft
    }

    fn place(&self, week: &Week, draft: &mut Draft, c: &Candidate, line: Line) {
        let roster = self.trainee.roster;
        let kind = roster.of(line.movement).kind();
        let stands = |l: &Line| l.movement == line.movement;
        let alike = |l: &Line| roster.of(l.movement).kind() == kind;
        // What is light or easier stands once of a kind.
        let crowded =
            line.eased && roster.of(c.movement).group().is_some() && draft.lines.iter().any(alike);
        if crowded || draft.lines.iter().any(stands) {
            return;
        }
        if let Some(why) = self.in_the_way(week, draft, c, &line) {
            return draft.left.push((line.movement, why));
        }
        if c.block == Block::KeptUp {
            let room = (K.lines as usize).saturating_sub(draft.count(Block::Strength));
            let often = self.diary.times(c.movement, draft.on, 6) >= K.keep_week as usize;
            let goes_on = |l: &&Line| self.candidates.all[l.of].goes_on;
            let kept = draft
                .lines
                .iter()
                .filter(|l| l.block == Block::KeptUp && !goes_on(l));
            let hard = draft.count(Block::Strength) + draft.count(Block::KeptUp);
            let full = match c.goes_on {
                true => hard >= K.lines_most as usize,
                false => kept.count() >= room.max(K.keep_lines as usize),
            };
            if often || full {
                return;
            }
        }
        if c.block == Block::Strength && draft.count(Block::Strength) >= K.lines as usize {
            return draft.left.push((line.movement, Left::Turns));
        }
        if c.block == Block::Range && !c.first && draft.count(Block::Range) >= draft.most_range {
            return draft.left.push((line.movement, Left::Time));
        }
        let worse = draft.lines.iter().filter(|l| l.worse && l.block.is_hard());
        if line.worse && line.block.is_hard() && worse.count() >= K.sore_lines as usize {
            return draft.left.push((line.movement, Left::Enough));
        }
        let movement = line.movement;
        match self.fitted(week, draft, c, line) {
            Ok(line) if self.steps_in(c, &line, draft.on) => {
                // A stretch that nobody asked for is not missed.
                if c.gap.is_some() || line.block != Block::Range {
                    draft.left.push((movement, Left::StandsIn));
                }
            }
            Ok(line) => {
                draft.left_minutes -= line.minutes;
                *draft.used.entry(line.block).or_default() += line.minutes;
                if counts_as_hard(&line) {
                    *draft.sets.entry(kind).or_default() += line.sets;
                }
                draft.lines.push(line);
            }
            Err(why) => draft.left.push((movement, why)),
        }
    }

    /// The line with as many sets as the week and the day have room for.
    fn fitted(
        &self,
        week: &Week,
        draft: &Draft,
        c: &Candidate,
        mut line: Line,
    ) -> Result<Line, Left> {
        let t = self.trainee;
        if counts_as_hard(&line) {
            let room = self.room(week, draft, c, &line);
            if room < i64::from(K.fewest) {
                return Err(Left::Sets);
            }
            line.sets = line.sets.min(room);
        }
        let used = draft.used.get(&line.block).copied().unwrap_or(0);
        let of_block = f64::from(t.minutes) * K.block - used as f64;
        let fits = |line: &Line| {
            let minutes = t.minutes_of(line);
            minutes <= draft.left_minutes
                && (line.block.is_hard() || minutes as f64 <= of_block + 1e-9)
        };
        let fewest = match line.block {
            Block::Practice => K.practice_fewest,
            _ => K.fewest,
        };
        // From 65 the balance line leaves half of practice to what else is practised.
        let shares =
            Some(line.of) == self.candidates.balance && self.candidates.has_other_practice();
        let half_of_block = f64::from(t.minutes) * K.block / 2.0;
        let too_long = |line: &Line| shares && t.minutes_of(line) as f64 > half_of_block + 1e-9;
        while (!fits(&line) || too_long(&line))
            && line.rule != Rule::Show
            && line.sets > i64::from(fewest)
        {
            line.sets -= 1;
        }
        line.minutes = t.minutes_of(&line);
        match fits(&line) {
            true => Ok(line),
            false => Err(Left::Time),
        }
    }

    /// Lifted with weight for the goal by an adult, with nothing taken back: a few sets of it at once are worth more than two a day.
    /// Common practice, no source.
    fn is_heavy(&self, line: &Line) -> bool {
        line.block == Block::Strength
            && self.trainee.roster.of(line.movement).by_weight()
            && line.mass.is_some_and(Mass::is_added)
            && !(line.eased || line.sore || self.trainee.is_minor())
    }

    /// The sets that the week and its sessions to come leave a line today.
    fn room(&self, week: &Week, draft: &Draft, c: &Candidate, line: &Line) -> i64 {
        let (t, fewest) = (self.trainee, i64::from(K.fewest));
        let kind_of = |ix: MovementIx| t.roster.of(ix).kind();
        let kind = kind_of(line.movement);
        let done = |sets: &BTreeMap<Kind, i64>| sets.get(&kind).copied().unwrap_or(0);
        let week_left = self.ceiling(kind, week.full, line.sore) - done(&week.sets);
        let left = week_left - done(&draft.sets);
        let mut room =
            (week_left + draft.to_come - 1).div_euclid(draft.to_come) - done(&draft.sets);
        let last = t.did_lately(line.movement).filter(|_| c.goes_on);
        // Two sets are left for what has to come and has none yet.
        let waits = |o: &&Candidate| {
            o.movement != c.movement
                && kind_of(o.movement) == kind
                && self.has_to_come(o, draft.on)
                && !(last.is_some() && self.keeps_its_line(o, draft.on))
                && !draft.lines.iter().any(|l| l.movement == o.movement)
        };
        let waiting = self.candidates.all.iter().filter(waits).count() as i64;
        if waiting > 0 {
            room = room.min((room - fewest).max(fewest));
        }
        // What comes every time keeps its sets in the sessions to come.
        let every_time =
            |o: &Candidate| o.first && o.block.is_hard() && kind_of(o.movement) == kind;
        let later = match self.candidates.all.iter().any(every_time) {
            true => fewest * (draft.to_come - 1),
            false => 0,
        };
        match last {
            Some(last) if waiting > 0 => room.max(last.sets().min(left - fewest * waiting - later)),
            Some(last) => room.max(last.sets().min(left)),
            None if self.is_heavy(line) => room.max(i64::from(K.heavy_sets).min(left)),
            None if self.has_to_come(c, draft.on) && left - later >= fewest => room.max(fewest),
            None => room,
        }
    }

    /// Hard sets of a kind in a week: a third above the mean of what was logged in three weeks, or six if more, a third more after
    /// each full week, at most ten, after twelve weeks of log fifteen. Of what hurts the mean itself, or twice what is kept up.
    /// Common practice, no source.
    pub fn ceiling(&self, kind: Kind, full: u32, sore: bool) -> i64 {
        let t = self.trainee;
        let of_kind = t.log.iter().filter(|l| {
            t.roster.of(l.of.movement).kind() == kind && t.today.days_after(l.of.on) <= K.logged
        });
        let sets: usize = of_kind.clone().map(|l| l.of.did.len()).sum();
        let rise = f64::from(K.rise[0]) / f64::from(K.rise[1]);
        let held = match t.has_sign {
            true => full,
            false => self.sore.get(&kind).copied().unwrap_or(0),
        };
        let full = full.saturating_sub(held);
        let risen = of_kind.clone().next().map_or(0.0, |first| {
            let days = t.today.days_after(first.of.on).max(7);
            (sets * 7) as f64 * f64::from(K.rise[0]) / f64::from(days * K.rise[1] as i32)
        });
        let begun = t.log.first().map(|l| t.today.days_after(l.of.on));
        let most = K.cap[usize::from(begun.is_some_and(|days| days >= K.cap_days))];
        if sore {
            let kept = f64::from(K.keep_sets[0] * K.keep_week);
            return down((risen / rise).max(kept)).min(most.into());
        }
        down(risen.max(K.week_one.into()) * rise.powi(full as i32)).min(most.into())
    }

    /// Writes a session down; in a lighter week it is a full one with half its sets, range apart.
    fn close(&mut self, week: &mut Week, draft: Draft, warm_up: i64) -> Session {
        let Draft {
            on,
            sets,
            mut lines,
            mut left,
            ..
        } = draft;
        for line in &lines {
            let c = &self.candidates.all[line.of];
            self.diary.stand(c.movement, on);
            let counts = !(week.lighter || line.sore || line.rule == Rule::TimeOff);
            self.done[line.of] += u32::from(counts);
            if line.sore && counts_as_hard(line) {
                week.sore
                    .insert(self.trainee.roster.of(line.movement).kind());
            }
            if matches!(line.rule, Rule::FirstTry | Rule::Show) {
                self.tried.insert(c.movement);
            }
            let turnover = self.trainee.roster.of(line.movement).turnover;
            let hard = rests_its_group(c, line, turnover);
            self.diary.did(self.trainee, line.movement, on, hard);
        }
        for (kind, sets) in sets {
            *week.sets.entry(kind).or_default() += sets;
        }
        for line in &mut lines {
            match week.lighter {
                true if line.block != Block::Range => self.lighten(line),
                true => {}
                false => {
                    self.full.insert((line.movement, line.block), line.clone());
                }
            }
        }
        lines.sort_by_cached_key(|line| self.place_in_session(line));
        self.easy_first(&mut lines);
        // Each once, for the first reason.
        let mut said = BTreeSet::new();
        left.retain(|(ix, _)| !lines.iter().any(|l| l.movement == *ix) && said.insert(*ix));
        Session {
            on,
            week: week.number,
            name: None,
            lighter: week.lighter,
            minutes: warm_up + lines.iter().map(|l| l.minutes).sum::<i64>(),
            lines,
            left,
        }
    }
}

/// Strength, what is kept up, turnovers and singles of a group lie 48 hours apart.
pub(super) fn rests_its_group(c: &Candidate, line: &Line, turnover: bool) -> bool {
    line.block.is_hard() || c.single || turnover
}
