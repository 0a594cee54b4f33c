//! What keeps a line from standing on a day: 48 hours, pain, breath, first tries and showings by turns.

use super::candidates::Candidate;
use super::constants::K;
use super::diary::is_near;
use super::facts::Group;
use super::line::{Line, Unit};
use super::reason::{Left, Rule};
use super::session::{Draft, Laying, Week, rests_its_group};
use crate::curriculum::words::{BodyPart, Pattern};
use crate::curriculum::{Day, MovementIx};

impl Laying<'_, '_> {
    pub(super) fn in_the_way(
        &self,
        week: &Week,
        draft: &Draft,
        c: &Candidate,
        line: &Line,
    ) -> Option<Left> {
        let facts = self.trainee.roster.of(line.movement);
        let near = |part: &BodyPart| is_near(self.diary.parts.get(part), draft.on);
        if let Some(group) = facts.group()
            && rests_its_group(c, line, facts.turnover)
            && is_near(self.diary.groups.get(&group), draft.on)
        {
            return Some(Left::Apart(group));
        }
        if line.rule == Rule::FirstTry
            && let Some(group) = facts.try_group()
            && is_near(self.diary.groups.get(&group), draft.on)
        {
            return Some(Left::Apart(group));
        }
        if facts.heavy_on.iter().any(near) {
            return Some(Left::Heavy);
        }
        if line.sore
            && let Some(part) = self.trainee.is_overhead_on(line.movement)
        {
            return Some(Left::Overhead(part));
        }
        if line.sore
            && let Some(part) = self.too_much(line.movement, c.movement, draft.on)
        {
            return Some(self.trainee.left_for(line.movement, part));
        }
        if let Some(need) = self.begins_anew_below(c, draft.on.days_after(week.first)) {
            return Some(Left::WaitsFor(need));
        }
        let breath = |l: &Line| {
            let straight = self.trainee.roster.of(l.movement).straight;
            let long = l.unit == Unit::Seconds && l.amount > K.long_hold.into();
            l.block.is_hard() && (straight || long)
        };
        let breaths = draft.lines.iter().filter(|l| breath(l)).count();
        if self.trainee.spares_breath && breath(line) && breaths >= K.breath_lines as usize {
            return Some(Left::Breath);
        }
        match line.rule {
            Rule::Show if self.tried.contains(&c.movement) => Some(Left::Waits),
            Rule::Show if week.lighter || draft.ruled(Rule::Show) >= K.shows as usize => {
                Some(Left::ShowTurns)
            }
            Rule::FirstTry
                if week.lighter
                    || draft.ruled(Rule::FirstTry) + self.to_try(draft, line)
                        >= draft.most_firsts =>
            {
                Some(Left::TryTurns)
            }
            _ => None,
        }
    }

    /// What a way out needs and is tried anew after long off: the way out comes when that number is in, or when it was tried and two
    /// weeks of the plan are over. Common practice, no source.
    fn begins_anew_below(&self, c: &Candidate, days: i32) -> Option<MovementIx> {
        let (t, roster) = (self.trainee, self.trainee.roster);
        let of = roster.of(c.movement);
        if of.pattern() != Pattern::Exit {
            return None;
        }
        let anew = |ix: &MovementIx| {
            let mut all = self.candidates.all.iter();
            let tried = days >= K.exit_from && self.tried.contains(ix);
            !tried
                && roster
                    .find(*ix)
                    .is_some_and(|f| t.long_off(f.pattern()).is_some())
                && all.any(|c| c.movement == *ix && c.rule == Rule::FirstTry)
        };
        let needs = of.of.needs().leaves();
        needs.into_iter().map(|leaf| leaf.movement).find(anew)
    }

    /// A part that hurts and is stressed too much for that by a line, or heavily by what it is easier than.
    fn too_much(&self, ix: MovementIx, than: MovementIx, on: Day) -> Option<BodyPart> {
        let t = self.trainee;
        t.is_too_much(ix, on).or_else(|| t.is_heavy_below(ix, than))
    }

    /// How many first tries are kept free for groups of which nothing is known and that have no line yet today; none where a line is
    /// of such a group itself.
    fn to_try(&self, draft: &Draft, line: &Line) -> usize {
        let group = |ix: MovementIx| self.trainee.roster.of(ix).group();
        let hard = |g: Group| {
            let all = self.candidates.all.iter();
            all.filter(move |c| c.block.is_hard() && group(c.movement) == Some(g))
        };
        let waits = |g: &&Group| {
            let new = |c: &Candidate| c.rule == Rule::FirstTry;
            let untried = |c: &Candidate| !self.tried.contains(&c.movement);
            let mut lines = draft.lines.iter().filter(|l| l.block.is_hard());
            hard(**g).all(new)
                && hard(**g).any(untried)
                && !lines.any(|l| group(l.movement) == Some(**g))
                && !is_near(self.diary.groups.get(*g), draft.on)
        };
        let waiting: Vec<&Group> = Group::ALL.iter().filter(waits).collect();
        let own = group(line.movement).filter(|_| line.block.is_hard());
        match own.is_some_and(|own| waiting.contains(&&own)) {
            true => 0,
            false => waiting.len(),
        }
    }
}
