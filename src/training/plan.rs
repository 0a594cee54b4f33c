//! Four weeks: the days, the lighter week, the retest, and everything that an answer says.

use super::candidates::Candidates;
use super::constants::K;
use super::ended::holds;
use super::facts::{Kind, Roster};
use super::goal::{Gap, Goal};
use super::lately::Lately;
use super::reason::Left;
use super::refusal::Refusal;
use super::retest::make_room;
use super::session::{Laying, Session, Week, counts_as_hard};
use super::trainee::{Logged, Trainee};
use super::unhurt::Unhurt;
use crate::curriculum::day::WEEK;
use crate::curriculum::words::{BodyPart, Word};
use crate::curriculum::{Day, MovementIx};
use crate::readiness::{Cause, causes, goes_on_to};
use crate::results::{Goal as Chosen, LIMITS, Pain, Paused, Person};
use std::collections::{BTreeMap, BTreeSet};

const LETTERS: [char; 8] = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'];

/// The day on which tests are done again, and which.
#[derive(Clone, Debug, PartialEq)]
pub struct Retest {
    pub on: Day,
    pub tests: Vec<MovementIx>,
}

/// What a person is to do.
pub struct Training {
    pub today: Day,
    /// Why there is nothing below.
    pub refused: Option<Refusal>,
    pub goal: Option<Goal>,
    /// The heaviest first.
    pub gaps: Vec<Gap>,
    /// The place of the gap that holds back.
    pub limiter: Option<usize>,
    pub sessions: Vec<Session>,
    /// Where there is one, the second is what does not fit its day.
    pub retests: Vec<Retest>,
    /// Hard sets of the first week.
    pub week_sets: BTreeMap<Kind, i64>,
    pub conditions: Vec<Condition>,
    /// Parts that rest or hurt, by name: warm-ups say it.
    pub sore: Vec<(BodyPart, Sore)>,
    /// The equipment at hand, where it is said.
    pub have: Option<Vec<String>>,
}

/// When a line stops for a part. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sore {
    /// It rests.
    Rests,
    /// Where it hurts little: above this, 0 to 10.
    Above(u32),
    /// Where it hurts more: as soon as it hurts more than it does.
    More,
}

/// What holds for every session.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Condition {
    /// The health questions were never answered.
    Unanswered,
    CoachPresent,
    /// From 65: balance and one-leg work beside a wall or a rail. Common practice, no source.
    WallNear,
    Sixes,
    /// Holding the breath is left alone: nothing is strained. Common practice, no source.
    Breathe,
    /// A part hurts: what bears on it goes up only after a lower entry.
    Lower,
    /// A sign that no clinician has seen: nothing goes up.
    Sign,
    /// Something hurt or rested and is over only lately: until when less is asked.
    Lately(Lately),
    /// Today, where a set fell short with nothing left less than 48 hours ago. Common practice, no source.
    RestDay,
}

impl Training {
    /// The goal itself is shown.
    pub fn is_reached(&self) -> bool {
        let route = self.goal.as_ref().and_then(|g| g.route.as_ref());
        self.refused.is_none() && route.is_some_and(|r| r.movements.is_empty())
    }
}

/// Everything for one person on a day. `asked` goes before the person's own goal.
///
/// # Complexity
/// Linear in the curriculum but for the route; each session looks at every candidate once.
pub fn train(roster: &Roster<'_>, person: &Person, asked: Option<Chosen>, today: Day) -> Training {
    if let Some(why) = Refusal::of(person, today) {
        return refused(why, today);
    }
    let trainee = Trainee::new(roster, person, today);
    let goal = trainee.goal(asked);
    let gaps = goal.as_ref().map_or_else(Vec::new, |g| trainee.gaps(g));
    let candidates = Candidates::of(&trainee, goal.as_ref(), &gaps);
    let unhurt = Unhurt::of(roster, person, asked, today, K.weeks);
    let (mut sessions, retest_after) =
        weeks(&trainee, &candidates, &gaps, K.weeks, unhurt.as_ref());
    let mut week_sets = BTreeMap::new();
    let of_week = sessions.iter().filter(|s| s.week == 1);
    for line in of_week.flat_map(|s| &s.lines).filter(|l| counts_as_hard(l)) {
        let kind = roster.of(line.movement).kind();
        *week_sets.entry(kind).or_default() += line.sets;
    }
    let retests = retest_after.map_or_else(Vec::new, |last| {
        trainee.retest_days(last, |on| {
            trainee.retests(goal.as_ref(), &gaps, on, &sessions)
        })
    });
    make_room(&mut sessions, &retests);
    name(&mut sessions);
    say_beyond(&mut sessions);
    Training {
        today,
        refused: None,
        conditions: conditions(&trainee, &gaps, sessions.first().map(|s| s.on)),
        sore: trainee.sore(),
        have: person.have.clone(),
        limiter: candidates.limiter,
        goal,
        gaps,
        sessions,
        retests,
        week_sets,
    }
}

fn refused(why: Refusal, today: Day) -> Training {
    Training {
        today,
        refused: Some(why),
        goal: None,
        gaps: Vec::new(),
        limiter: None,
        sessions: Vec::new(),
        retests: Vec::new(),
        week_sets: BTreeMap::new(),
        conditions: Vec::new(),
        sore: Vec::new(),
        have: None,
    }
}

fn conditions(trainee: &Trainee<'_>, gaps: &[Gap], first: Option<Day>) -> Vec<Condition> {
    let loaded = |g: &Gap| trainee.roster.of(g.movement).loaded();
    let sixes = trainee.is_minor() && gaps.iter().any(loaded);
    let mut out = Vec::new();
    if trainee.person.screened.is_none() {
        out.push(Condition::Unanswered);
    }
    if trainee.is_youth() {
        out.push(Condition::CoachPresent);
    }
    if trainee.is_from(K.balance_age) {
        out.push(Condition::WallNear);
    }
    if sixes {
        out.push(Condition::Sixes);
    }
    if trainee.spares_breath {
        out.push(Condition::Breathe);
    }
    // Where a part rests its own line says until when.
    let lower = |p: &&Pain| holds(p) && !trainee.stops(p);
    if trainee.newest_pains().iter().any(lower) {
        out.push(Condition::Lower);
    }
    if trainee.has_sign {
        out.push(Condition::Sign);
    }
    out.extend(trainee.over_lately().into_iter().map(Condition::Lately));
    let today = trainee.today;
    let to_failure = |t: &Logged<'_>| {
        today.days_after(t.of.on) < K.apart && t.of.in_reserve == Some(0) && !t.full()
    };
    if first == Some(today) && trainee.log.iter().any(to_failure) {
        out.push(Condition::RestDay);
    }
    out
}

/// The first session of the plan.
pub(super) fn first_session(
    trainee: &Trainee<'_>,
    candidates: &Candidates,
    gaps: &[Gap],
    asked: Option<Chosen>,
) -> Option<Session> {
    let unhurt = Unhurt::of(trainee.roster, trainee.person, asked, trainee.today, 1);
    let (sessions, _) = weeks(trainee, candidates, gaps, 1, unhurt.as_ref());
    sessions.into_iter().next()
}

/// The sessions of so many weeks, and the last day of training before the retest: of the last lighter week.
pub(super) fn weeks(
    trainee: &Trainee<'_>,
    candidates: &Candidates,
    gaps: &[Gap],
    count: u32,
    unhurt: Option<&Unhurt>,
) -> (Vec<Session>, Option<Day>) {
    let dates: Vec<Vec<Day>> = (0..count).map(|w| days_of_week(trainee, w)).collect();
    let first = dates.iter().flatten().next().copied();
    let first = first.unwrap_or(trainee.today);
    let start = start_of(trainee);
    let every = (trainee
        .roster
        .curriculum
        .school()
        .dose
        .lighter_every
        .weeks())
    .max(1);
    let mut laying = Laying::new(trainee, candidates, gaps, dates[0].len(), unhurt);
    let mut before = laying.done.clone();
    let (mut sessions, mut full, mut last) = (Vec::<Session>::new(), 0, None);
    for (number, days) in (1..).zip(&dates) {
        let begins = trainee.today.plus(WEEK * (number as i32 - 1));
        let lighter = (begins.days_after(start).div_euclid(WEEK) + 1) % every == 0;
        if !lighter {
            before.clone_from(&laying.done);
        }
        let mut week = Week {
            number,
            lighter,
            full: if lighter && full > 0 { full - 1 } else { full },
            before: before.clone(),
            sets: BTreeMap::new(),
            sore: BTreeSet::new(),
            first,
        };
        for (i, on) in days.iter().enumerate() {
            let to_come = (days.len() - i) as u32;
            let session = laying.session(&mut week, *on, to_come);
            // A day without a line is no session; the first stays, it says what is left out.
            if sessions.is_empty() || !session.lines.is_empty() {
                sessions.push(session);
            }
        }
        full += u32::from(!lighter);
        for kind in week.sore.into_iter().filter(|_| !lighter) {
            *laying.sore.entry(kind).or_default() += 1;
        }
        if lighter {
            last = Some(days.last().copied().unwrap_or(begins));
        }
    }
    (sessions, last)
}

/// On the days that are said, else spread over the week.
pub(super) fn days_of_week(trainee: &Trainee<'_>, week: u32) -> Vec<Day> {
    let begins = trainee.today.plus(WEEK * week as i32);
    let all = (0..WEEK).map(|i| begins.plus(i));
    match trainee.days.is_empty() {
        true => (0..trainee.a_week as i32)
            .map(|k| begins.plus(WEEK * k / trainee.a_week as i32))
            .collect(),
        false => all
            .filter(|day| trainee.days.contains(&day.weekday()))
            .collect(),
    }
}

/// The day from which lighter weeks are counted: the log's first after its last two weeks off; today without a log.
fn start_of(trainee: &Trainee<'_>) -> Day {
    let mut days: Vec<Day> = trainee.log.iter().map(|t| t.of.on).collect();
    days.dedup();
    days.push(trainee.today);
    let after_time_off = days
        .windows(2)
        .rev()
        .find(|two| two[1].days_after(two[0]) >= K.off[0]);
    after_time_off.map_or(days[0], |two| two[1])
}

/// What is said to come in another session, and comes in none, is said to have no room.
fn say_beyond(sessions: &mut [Session]) {
    let mut to_come: BTreeSet<MovementIx> = BTreeSet::new();
    for session in sessions.iter_mut().rev() {
        for (ix, why) in &mut session.left {
            let promised = matches!(why, Left::Turns | Left::TryTurns | Left::ShowTurns);
            if promised && !to_come.contains(ix) {
                *why = Left::Beyond;
            }
        }
        to_come.extend(session.lines.iter().map(|l| l.movement));
    }
}

/// Sessions that differ in strength are A, B and so on.
fn name(sessions: &mut [Session]) {
    let mut kinds: Vec<Vec<MovementIx>> = Vec::new();
    let mut places = Vec::new();
    for session in sessions.iter() {
        let strength = session
            .lines
            .iter()
            .filter(|l| l.block == super::reason::Block::Strength);
        let mut set: Vec<MovementIx> = strength.map(|l| l.movement).collect();
        set.sort_unstable();
        let at = kinds.iter().position(|k| *k == set).unwrap_or(kinds.len());
        if at == kinds.len() {
            kinds.push(set);
        }
        places.push(at);
    }
    if kinds.len() < 2 {
        return;
    }
    for (session, at) in sessions.iter_mut().zip(places) {
        session.name = Some(LETTERS[at.min(LETTERS.len() - 1)]);
    }
}

impl Trainee<'_> {
    /// Whether a test may be asked for on a day to come: of what bears on a part that hurts today, not.
    pub(super) fn tests_on(&self, ix: MovementIx, on: Day) -> bool {
        let new = self.is_back && self.now(ix).is_none();
        let minor = (self.is_minor() || new) && self.roster.of(ix).loaded();
        self.may(ix)
            && self.has_all(ix)
            && !minor
            && !self.ease(ix, on, on).sore
            && self.sore_part(ix).is_none()
    }

    /// The parts that rest, and those that hurt, with when a line stops: from 3 on as soon as it hurts more, below that one above the
    /// pain, never above what goes on. Common practice, no source.
    fn sore(&self) -> Vec<(BodyPart, Sore)> {
        let part = |cause: Cause| match (cause, cause.pause(self.person).map(|p| p.what)) {
            (Cause::Pain(at), _) => Some(self.person.pains[at].part),
            (_, Some(Paused::Part(part))) => Some(part),
            _ => None,
        };
        let rests = causes(self.person, self.today).into_iter();
        let rests = rests.filter_map(part).map(|part| (part, Sore::Rests));
        let hurts = self.newest_pains().into_iter().filter(|p| p.score > 0);
        let most = |part: BodyPart| goes_on_to(self.person, part, self.today);
        let stop = |pain: &Pain| match pain.score < LIMITS.pain[0] {
            true => Sore::Above((pain.score + 1).min(most(pain.part))),
            false => Sore::More,
        };
        let hurts = hurts.map(|p| (p.part, stop(p)));
        let mut out: Vec<_> = rests.chain(hurts).collect();
        // What rests comes first of its part.
        out.sort_by_key(|(part, above)| (part.word(), *above));
        out.dedup_by_key(|(part, _)| *part);
        out
    }
}
