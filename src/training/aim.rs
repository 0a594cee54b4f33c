//! What stands between a person and the goal, and the next session alone: for who looks at many people at once.

use super::candidates::Candidates;
use super::facts::Facts;
use super::goal::{Gap, Goal};
use super::line::{Line, Side, sides};
use super::now::Now;
use super::plan::first_session;
use super::reason::Left;
use super::session::Session;
use super::trainee::Trainee;
use crate::curriculum::MovementIx;
use crate::results::Goal as Chosen;

/// The goal, the way to it, and what holds back; without anything, that of who is refused.
#[derive(Default)]
pub struct Aim {
    pub goal: Option<Goal>,
    /// The heaviest first.
    pub gaps: Vec<Gap>,
    /// The place of the gap that holds back; `None` where no gap can be worked on.
    pub limiter: Option<usize>,
    pub session: Option<Session>,
}

impl Aim {
    /// The goal itself is shown.
    pub fn is_reached(&self) -> bool {
        let route = self.goal.as_ref().and_then(|g| g.route.as_ref());
        route.is_some_and(|r| r.movements.is_empty())
    }

    pub fn limiter(&self) -> Option<&Gap> {
        self.gaps.get(self.limiter?)
    }

    /// The lines of the next session.
    pub fn lines(&self) -> &[Line] {
        self.session.as_ref().map_or(&[], |s| &s.lines)
    }

    /// The line of the next session that works on what holds back: its own, else one towards it.
    pub fn line(&self) -> Option<&Line> {
        let movement = self.limiter()?.movement;
        let own = self.lines().iter().find(|l| l.movement == movement);
        own.or_else(|| self.lines().iter().find(|l| l.gap == self.limiter))
    }

    /// Why what holds back has no line in the next session.
    pub fn waits(&self) -> Option<Left> {
        if self.line().is_some() {
            return None;
        }
        let movement = self.limiter()?.movement;
        let left = &self.session.as_ref()?.left;
        left.iter()
            .find(|(ix, _)| *ix == movement)
            .map(|(_, why)| *why)
    }

    /// The gaps that wait for one, directly or through others; not itself.
    pub fn held_back(&self, by: MovementIx) -> Vec<MovementIx> {
        let mut out: Vec<MovementIx> = Vec::new();
        let mut open = vec![by];
        while let Some(ix) = open.pop() {
            let Some(gap) = self.gaps.iter().find(|g| g.movement == ix) else {
                continue;
            };
            for up in &gap.opens {
                if *up != by && !out.contains(up) {
                    out.push(*up);
                    open.push(*up);
                }
            }
        }
        out
    }
}

/// As [`super::train`] finds them. Not for who is to ask a clinician first.
pub fn aim(trainee: &Trainee<'_>, asked: Option<Chosen>) -> Aim {
    let goal = trainee.goal(asked);
    let gaps = goal.as_ref().map_or_else(Vec::new, |g| trainee.gaps(g));
    let found = Candidates::of(trainee, goal.as_ref(), &gaps);
    Aim {
        session: first_session(trainee, &found, &gaps, asked),
        goal,
        gaps,
        limiter: found.limiter,
    }
}

impl Trainee<'_> {
    /// Whether a test may be asked for: it may be trained, what measures it is at hand, it stresses no part that hurts, and under
    /// 18 it is not with weight.
    pub fn may_test(&self, ix: MovementIx) -> bool {
        self.may(ix)
            && self.is_open(ix)
            && self.has_all(ix)
            && self.sore_part(ix).is_none()
            && !(self.is_minor() && self.roster.of(ix).loaded())
    }

    /// The weaker side, where the newest test has them far apart.
    pub fn apart(&self, ix: MovementIx) -> Option<Side> {
        let facts: &Facts<'_> = self.roster.find(ix)?;
        let now: Option<Now> = self.now(ix);
        sides(facts, now.as_ref()).weaker
    }
}
