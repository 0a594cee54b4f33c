//! The coach's morning: one verdict for each person (what next, what is new, what to watch) and for all of them together.
//!
//! Pure: the day is an input. Estimates, and said so where they are shown.

mod class;
mod doubt;
mod fresh;
mod rests;
mod say;
mod say_history;
mod say_next;
mod say_watch;
mod standing;
mod together;
mod watch;

pub use class::{Class, Test, class};
pub use doubt::doubtful;
pub use fresh::Fresh;
pub use rests::{rests, together as resting_together, what_rests};
pub use say::{Telling, put_names};
pub use standing::{Seen, Standing};
pub use watch::Watch;

use crate::curriculum::target::Got;
use crate::curriculum::words::BodyPart;
use crate::curriculum::{Curriculum, Day, MovementIx, Target};
use crate::history::{History, histories};
use crate::readiness::{Readiness, State, Steps};
use crate::results::{Goal as Chosen, Person};
use crate::training::{Aim, Left, Refusal, Roster, Trainee, aim};
use serde::Serialize;

/// The numbers of this room. The page's script has them from the tables. Common practice, no source.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Constants {
    /// Tests of so many days are one round: nobody tests everything on one day.
    pub round_days: i32,
    /// Results that run out within so many days are said.
    pub runs_out_days: i32,
    /// Of a class so many tests are named, and so many movements that hold back.
    pub tests: usize,
    /// So many of a list are named, the others counted; so many bests are told.
    pub named: usize,
    pub bests: usize,
}

/// The table.
pub const M: Constants = Constants {
    round_days: 7,
    runs_out_days: 14,
    tests: 5,
    named: 3,
    bests: 3,
};

/// What there is to say of one person.
pub struct Verdict {
    /// Chosen, else the nearest; where nothing is planned only what was chosen.
    pub goal: Option<Chosen>,
    pub chosen: bool,
    /// Resting ones too: nothing is lost by a pause.
    pub owned: usize,
    /// Of these so many rest.
    pub paused: usize,
    /// Of so many movements.
    pub of: usize,
    /// What a list for all may name.
    pub for_all: Vec<MovementIx>,
    /// The newest day with a test.
    pub tested: Option<Day>,
    /// The way to the goal; `None` where nothing is planned.
    pub aim: Option<Aim>,
    pub next: Next,
    /// Where no step of the way can be trained as it is, or what holds back waits: what the next session trains.
    pub meanwhile: Vec<MovementIx>,
    /// The goal is with weight, and so shown from 18 on.
    pub from_adult: bool,
    pub fresh: Vec<Fresh>,
    /// What matters most first.
    pub watch: Vec<Watch>,
    pub history: Vec<History>,
    /// The place of the history of what is next, or of what stands below it, where that falls.
    pub falls: Option<usize>,
    /// The tests that may be asked for, and how many movements wait for each.
    pub tests: Vec<(MovementIx, usize)>,
    /// Just back, or nothing was left yesterday: not tested with the others today.
    pub waits: bool,
}

/// What is next.
#[derive(Clone, Debug, PartialEq)]
pub enum Next {
    /// Nothing is planned: what comes first.
    Refused(Refusal),
    /// The goal is shown.
    Reached,
    /// Every skill is.
    AllOwned,
    /// The gap that holds back is known and worked on.
    Work,
    /// It has no number yet and may not be tested: one set of it, as it is tried first.
    Begin(Got),
    /// One test, and what asks for it; nothing where it is the goal itself.
    Test {
        movement: MovementIx,
        target: Target,
        decides: Vec<MovementIx>,
    },
    /// It only follows from something harder: a test of its own decides.
    Counted,
    /// Training says that the target is reached: it has to be shown.
    Show,
    /// The same, and it may not be tested yet.
    ShowLater,
    /// The nearest thing may not be trained.
    Blocked(MovementIx, Left),
    /// What is on the way waits while these hurt.
    Hurts(Vec<BodyPart>),
    Nothing,
}

impl Next {
    /// Nothing is tested or shown.
    fn works(&self) -> bool {
        matches!(self, Next::Work | Next::ShowLater | Next::Begin(_))
    }

    fn movement(&self, aim: &Aim) -> Option<MovementIx> {
        match self {
            Next::Test { movement, .. } => Some(*movement),
            Next::Work | Next::Counted | Next::Begin(_) | Next::Show | Next::ShowLater => {
                Some(aim.limiter()?.movement)
            }
            _ => None,
        }
    }
}

impl Verdict {
    /// No step of the way can be trained as it is.
    fn is_stuck(&self) -> bool {
        matches!(
            self.next,
            Next::Blocked(..) | Next::Hurts(_) | Next::Nothing
        )
    }

    /// Why nothing is planned.
    pub fn refused(&self) -> Option<Refusal> {
        match self.next {
            Next::Refused(why) => Some(why),
            _ => None,
        }
    }

    /// The movement of what is next.
    pub fn next_movement(&self) -> Option<MovementIx> {
        self.next.movement(self.aim.as_ref()?)
    }

    /// The ranks of what to watch, the gravest first: who has the lower ones, or more of them, needs a look first.
    pub fn need(&self) -> Vec<u8> {
        let stuck = self.is_stuck() || self.refused().is_some();
        let mut ranks: Vec<u8> = self.watch.iter().map(Watch::rank).collect();
        ranks.retain(|rank| *rank < watch::SAID);
        ranks.extend(stuck.then_some(watch::STUCK));
        ranks.sort_unstable();
        ranks.push(u8::MAX);
        ranks
    }
}

/// The verdict on one person. `asked` goes before the person's own goal; `rows` are the movements answered for, `readiness` their
/// standing today; `seen` what was new once already, without which the newest round of tests is new.
///
/// # Complexity
/// That of the way to the goal; without a chosen one, to each skill.
pub fn verdict(
    roster: &Roster<'_>,
    person: &Person,
    readiness: &Readiness,
    asked: Option<Chosen>,
    rows: &[MovementIx],
    seen: Option<&Seen>,
    today: Day,
) -> Verdict {
    let trainee = Trainee::new(roster, person, today);
    let refused = Refusal::of(person, today);
    let aim = refused.is_none().then(|| aim(&trainee, asked));
    let chosen = asked.or(person.goal);
    let nothing = Aim::default();
    let way = aim.as_ref().unwrap_or(&nothing);
    let history = histories(&trainee, way);
    let owned = rows.iter().filter(|ix| trainee.owns(**ix));
    let rests = |ix: &&MovementIx| {
        let state = readiness.of(**ix).map(|s| s.state);
        state == Some(State::Paused)
    };
    let look = Look {
        trainee: &trainee,
        readiness,
        aim: way,
        history: &history,
        refused,
    };
    let next = look.next();
    let watch = look.watch();
    let top = way.goal.as_ref().map(|g| g.leaf.movement);
    let loaded = |ix: MovementIx| roster.find(ix).is_some_and(|f| f.loaded());
    let failed = watch.iter().any(|w| matches!(w, Watch::ToFailure { .. }));
    let mut verdict = Verdict {
        meanwhile: Vec::new(),
        from_adult: trainee.is_minor() && top.is_some_and(loaded),
        waits: trainee.is_back_lately() || failed,
        falls: look.falls(&next),
        goal: chosen.or(way.goal.as_ref().map(|g| g.of)),
        chosen: chosen.is_some(),
        owned: owned.clone().count(),
        paused: owned.filter(rests).count(),
        of: rows.len(),
        for_all: rows
            .iter()
            .copied()
            .filter(|ix| trainee.is_for_all(*ix))
            .collect(),
        tested: person
            .tested
            .iter()
            .map(|t| t.on)
            .filter(|on| *on <= today)
            .max(),
        next,
        fresh: look.fresh(seen),
        watch,
        tests: look.tests(),
        history,
        aim,
    };
    if let Some(aim) = &verdict.aim
        && (verdict.is_stuck() || aim.waits().is_some() && verdict.next.works())
    {
        // Its strength, what is kept up too.
        let hard = aim.lines().iter().filter(|l| l.block.is_hard());
        verdict.meanwhile = hard.map(|l| l.movement).collect();
    }
    verdict
}

/// What a verdict is made from.
struct Look<'l, 'a> {
    trainee: &'l Trainee<'a>,
    readiness: &'l Readiness,
    aim: &'l Aim,
    history: &'l [History],
    refused: Option<Refusal>,
}

impl Look<'_, '_> {
    fn curriculum(&self) -> &Curriculum {
        self.trainee.roster.curriculum
    }

    fn next(&self) -> Next {
        if let Some(why) = self.refused {
            return Next::Refused(why);
        }
        let Some(goal) = &self.aim.goal else {
            return Next::AllOwned;
        };
        if self.aim.is_reached() {
            return Next::Reached;
        }
        let Some(gap) = self.aim.limiter() else {
            return self.waits_for(goal.leaf.movement);
        };
        // Who is just back works first, and is tested when that is over.
        let may = self.trainee.may_test(gap.movement) && !self.trainee.is_back_lately();
        match (gap.now.is_none(), gap.is_whole()) {
            (true, _) if !may => Next::Begin(self.trainee.first_set(gap.movement)),
            (true, _) => Next::Test {
                movement: gap.movement,
                target: gap.target,
                decides: gap.opens.clone(),
            },
            (false, true) => match may {
                true => Next::Show,
                false => Next::ShowLater,
            },
            _ if may && gap.from.is_some() => Next::Counted,
            _ => Next::Work,
        }
    }

    /// What falls among what is next and what stands below that: the thing itself first.
    fn falls(&self, next: &Next) -> Option<usize> {
        let mut fall = self.history.iter().enumerate().filter(|(_, h)| h.falls());
        fall.clone().next()?;
        let ix = next.movement(self.aim)?;
        let own = fall.clone().find(|(_, h)| h.movement == ix);
        let below = self.trainee.roster.under([ix]);
        own.or_else(|| fall.find(|(_, h)| below.contains(&h.movement)))
            .map(|(at, _)| at)
    }

    /// Where no gap can be worked on: the one test that the goal waits for, else what stands in the way.
    fn waits_for(&self, goal: MovementIx) -> Next {
        let t = self.trainee;
        let steps = Steps::new(t.roster.curriculum, t.roster.stages, t.person, t.today);
        let first = steps.to(goal);
        let test = first
            .steps
            .iter()
            .find(|s| s.got.is_none() && t.may_test(s.movement));
        if let Some(step) = test {
            let gap = self.aim.gaps.iter().find(|g| g.movement == step.movement);
            return Next::Test {
                movement: step.movement,
                target: step.target,
                decides: gap.map_or_else(|| vec![goal], |g| g.opens.clone()),
            };
        }
        let mut open = self.aim.gaps.iter().filter(|g| t.is_open(g.movement));
        match open.find(|g| !t.may(g.movement)) {
            Some(gap) => Next::Blocked(gap.movement, t.why_not(gap.movement)),
            None => match t.holding_parts() {
                parts if parts.is_empty() => Next::Nothing,
                parts => Next::Hurts(parts),
            },
        }
    }

    /// Of the gaps those whose number is missing, follows from something harder or has to be shown, by how many movements wait for them.
    fn tests(&self) -> Vec<(MovementIx, usize)> {
        let due = self
            .aim
            .gaps
            .iter()
            .filter(|g| g.now.is_none() || g.is_whole() || g.from.is_some())
            .filter(|g| self.trainee.may_test(g.movement));
        let count = |g: &crate::training::Gap| self.aim.held_back(g.movement).len();
        due.map(|g| (g.movement, count(g).max(1))).collect()
    }
}
