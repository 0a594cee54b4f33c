//! What the same person would train if nothing hurt and nothing rested: a pain never brings in anything harder.

use super::candidates::{Candidate, Candidates};
use super::facts::{Facts, Roster};
use super::line::Line;
use super::plan::weeks;
use super::session::{Laying, Session};
use super::trainee::Trainee;
use crate::curriculum::caution::Signal;
use crate::curriculum::{Day, MovementIx};
use crate::readiness::{Cause, causes};
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
    /// Whether something that hurts, hurt lately or rests has to do with a movement: it stresses it, or is the next form of one that does.
    fn is_concerned(&self, ix: MovementIx) -> bool {
        let t = self.trainee;
        let hurts = t.newest_pains().into_iter();
        let hurts = hurts.filter(|p| p.score > 0 || !p.signs.is_empty());
        let hurts = hurts.map(|p| Paused::Part(p.part));
        let hurt = t.eased.iter().map(|h| Paused::Part(h.part));
        let rests = causes(t.person, t.today).into_iter();
        // Restrictions of a class are of the person.
        let rests = rests.filter_map(|cause| {
            let what = cause.pause(t.person)?.what;
            let of_person = matches!(cause, Cause::Restriction(_));
            (!(of_person && matches!(what, Paused::Class(_)))).then_some(what)
        });
        let all: Vec<Paused> = hurts.chain(hurt).chain(rests).collect();
        let forms = std::iter::once(ix).chain(t.roster.of(ix).easier.iter().copied());
        let mut forms = forms.flat_map(|form| all.iter().map(move |what| (*what, form)));
        forms.any(|(what, form)| t.reaches(what, form))
    }

    /// What moves on as fast as any, a stand on one leg too; a stretch only without a caution.
    fn is_gentle(&self, ix: MovementIx) -> bool {
        let facts = self.trainee.roster.of(ix);
        let book = self.trainee.roster.curriculum.cautions();
        let mut cautions = facts.of.cautions().iter();
        let free = cautions.all(|class| book.class(*class).signal == Signal::Notice);
        (!facts.strict || facts.upright_balance()) && (free || !facts.mobility())
    }

    /// Whether a line stands in only since something hurts or rests, and may not: nothing is known of it, and it is of a class with a
    /// warning, or harder or graver than all that left for it. What has nothing to do with what hurts or rests is in nobody's place,
    /// where it is gentle and no higher a rung than all that would stand. Common practice, no source.
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
        let highest = stood.clone().map(|l| roster.of(l.movement).stage).max();
        let gentle = own.stage <= highest.unwrap_or(0) && self.is_gentle(line.movement);
        t.is_grave(line.movement)
            || !stood.any(|l| left(&l) && no_harder(l))
                && (!gentle || self.is_concerned(line.movement))
    }
}
