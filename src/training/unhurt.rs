//! What the same person would train if nothing hurt and nothing rested: a pain never brings in anything harder.

use super::candidates::{Candidate, Candidates};
use super::facts::{Facts, Roster};
use super::line::Line;
use super::plan::weeks;
use super::session::{Laying, Session};
use super::trainee::Trainee;
use crate::curriculum::{Day, MovementIx};
use crate::results::{Goal as Chosen, Paused, Person};

/// The plan without pains, pauses, and restrictions of a part, a pattern or a movement. Those of a class are of the person, and stay.
pub(super) struct Unhurt {
    lines: Vec<Stood>,
}

/// A line of that plan.
struct Stood {
    on: Day,
    /// What it was laid for.
    of: MovementIx,
    movement: MovementIx,
}

impl Unhurt {
    /// Of so many weeks; `None` where nothing of that is on file.
    pub fn of(
        roster: &Roster<'_>,
        person: &Person,
        asked: Option<Chosen>,
        today: Day,
        count: u32,
    ) -> Option<Unhurt> {
        let of_class = |what: &Paused| matches!(what, Paused::Class(_));
        let lasting = person.restrictions.iter();
        let lasting: Vec<_> = lasting.filter(|r| of_class(&r.what)).cloned().collect();
        let nothing = person.pains.is_empty() && person.pauses.is_empty();
        if nothing && lasting.len() == person.restrictions.len() {
            return None;
        }
        let person = Person {
            pains: Vec::new(),
            pauses: Vec::new(),
            restrictions: lasting,
            ..person.clone()
        };
        let trainee = Trainee::new(roster, &person, today);
        let goal = trainee.goal(asked);
        let gaps = goal.as_ref().map_or_else(Vec::new, |g| trainee.gaps(g));
        let candidates = Candidates::of(&trainee, goal.as_ref(), &gaps);
        let (sessions, _) = weeks(&trainee, &candidates, &gaps, count, None);
        let stood = |s: &Session, l: &Line| Stood {
            on: s.on,
            of: candidates.all[l.of].movement,
            movement: l.movement,
        };
        let lines = sessions.iter();
        let lines = lines.flat_map(|s| s.lines.iter().map(move |l| stood(s, l)));
        Some(Unhurt {
            lines: lines.collect(),
        })
    }
}

/// No higher a rung than another, and of no caution class that it has not.
pub(super) fn is_no_harder(one: &Facts<'_>, than: &Facts<'_>) -> bool {
    let of = than.of.cautions();
    one.stage <= than.stage && one.of.cautions().iter().all(|class| of.contains(class))
}

impl Laying<'_, '_> {
    /// Whether a line stands in only since something hurts or rests, and may not: nothing is known of it, and it is harder or graver
    /// than all that left for it. Common practice, no source.
    pub(super) fn steps_in(&self, c: &Candidate, line: &Line, on: Day) -> bool {
        let Some(unhurt) = self.unhurt else {
            return false;
        };
        let (t, roster) = (self.trainee, self.trainee.roster);
        let mut stood = unhurt.lines.iter().filter(|l| l.on <= on);
        let known = t.now(line.movement).is_some();
        if known || stood.clone().any(|l| l.of == c.movement) {
            return false;
        }
        let left = |l: &&Stood| {
            let mut all = self.candidates.all.iter();
            !all.any(|other| other.movement == l.of) || t.sore_part(l.movement).is_some()
        };
        let own = roster.of(line.movement);
        let no_harder = |l: &Stood| is_no_harder(own, roster.of(l.movement));
        !stood.any(|l| left(&l) && no_harder(l))
    }
}
