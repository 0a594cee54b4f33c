//! What explains a plateau, and what to change at one.

use super::H;
use crate::curriculum::day::WEEK;
use crate::curriculum::target::ONE;
use crate::curriculum::{Day, MovementIx};
use crate::results::{LIMITS, Pause, Paused};
use crate::training::{Aim, K, Kind, Logged, Refusal, Trainee};

/// The one thing to change. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Advice {
    /// There was none for five weeks.
    LighterWeek,
    /// What holds back stands below it.
    Below(MovementIx),
    /// Fewer hard sets of its kind a week than the most there may be.
    Sets,
    /// Its kind is trained on few days.
    Days,
    /// A harder or weighted neighbour for fewer reps.
    Harder(MovementIx),
    /// Nothing of these is left: a lighter week, then the same.
    Rest,
}

impl Advice {
    /// As answers for programs say it, and its key under `morning.advice`.
    pub fn word(self) -> &'static str {
        match self {
            Advice::LighterWeek => "lighter_week",
            Advice::Below(_) => "below",
            Advice::Sets => "sets",
            Advice::Days => "days",
            Advice::Harder(_) => "harder",
            Advice::Rest => "rest",
        }
    }

    pub fn movement(self) -> Option<MovementIx> {
        match self {
            Advice::Below(ix) | Advice::Harder(ix) => Some(ix),
            _ => None,
        }
    }
}

/// Whether a lighter spell, time off, a pause or a pain explains that nothing grew.
pub fn is_explained(t: &Trainee<'_>, ix: MovementIx) -> bool {
    let begins = t.today.plus(1 - H.still_days);
    let long = |p: &&Pause| {
        let last = p.until.map_or(t.today, |until| until.min(t.today));
        t.reaches(p.what, ix) && last.days_after(p.on.max(begins)) + 1 >= K.pause_days
    };
    let hurts = t.person.pains.iter().any(|p| {
        (begins..=t.today).contains(&p.on)
            && t.reaches(Paused::Part(p.part), ix)
            && (p.score >= LIMITS.pain[0] || t.stops(p))
    });
    let mut rests = t.person.pauses.iter().chain(&t.person.restrictions);
    // For whom nothing is planned, trains nothing.
    hurts
        || Refusal::of(t.person, t.today).is_some()
        || t.rests(ix)
        || rests.any(|p| long(&p))
        || was_lighter(t, ix, begins)
}

/// Two weeks off in these weeks, or at most half the sets of as many days before.
fn was_lighter(t: &Trainee<'_>, ix: MovementIx, begins: Day) -> bool {
    let kind = t.roster.of(ix).kind();
    let before = sets(t, Some(kind), begins.plus(-H.still_days), begins.plus(-1));
    let within = sets(t, Some(kind), begins, t.today);
    if before > 0 && 2 * within <= before {
        return true;
    }
    let mut days = t.days_of(kind.pattern);
    days.push(t.today);
    let off = |two: &[Day]| two[1] > begins && two[1].days_after(two[0].max(begins)) >= K.off[0];
    days.windows(2).any(off)
}

/// The log's sets of a kind, or of all, from a day to a day.
fn sets(t: &Trainee<'_>, kind: Option<Kind>, from: Day, to: Day) -> usize {
    in_log(t, kind, from, to).map(|l| l.of.did.len()).sum()
}

fn in_log<'t>(
    t: &'t Trainee<'_>,
    kind: Option<Kind>,
    from: Day,
    to: Day,
) -> impl Iterator<Item = &'t Logged<'t>> {
    t.log.iter().filter(move |l| {
        let is = |kind| t.roster.of(l.of.movement).kind() == kind;
        (from..=to).contains(&l.of.on) && kind.is_none_or(is)
    })
}

/// What to change at a plateau: the first that applies. Of what falls nothing is done more of.
pub fn advice(t: &Trainee<'_>, aim: &Aim, ix: MovementIx, falling: bool) -> Advice {
    if lighter_is_due(t) {
        return Advice::LighterWeek;
    }
    if falling {
        return Advice::Rest;
    }
    let below = t.roster.under([ix]);
    if let Some(limiter) = aim.limiter().map(|g| g.movement)
        && limiter != ix
        && below.contains(&limiter)
    {
        return Advice::Below(limiter);
    }
    let kind = t.roster.of(ix).kind();
    let (from, weeks) = (t.today.plus(-K.logged), (K.logged / WEEK) as usize);
    if sets(t, Some(kind), from, t.today) < K.cap[0] as usize * weeks {
        return Advice::Sets;
    }
    let mut days: Vec<Day> = in_log(t, Some(kind), from, t.today)
        .map(|l| l.of.on)
        .collect();
    days.dedup();
    if days.len() < H.days_a_week * weeks {
        return Advice::Days;
    }
    harder(t, ix).map_or(Advice::Rest, Advice::Harder)
}

/// Five weeks of log without a week of at most half the usual sets.
fn lighter_is_due(t: &Trainee<'_>) -> bool {
    let begins = t.today.plus(-H.lighter_days);
    if t.log.first().is_none_or(|l| l.of.on > begins) {
        return false;
    }
    let total = sets(t, None, begins, t.today.plus(-1));
    let weeks = (H.lighter_days / WEEK) as usize;
    let is_light = |start: i32| {
        let from = begins.plus(start);
        2 * weeks * sets(t, None, from, from.plus(WEEK - 1)) <= total
    };
    !(0..=H.lighter_days - WEEK).any(is_light)
}

/// The lowest harder neighbour that may be trained, else what adds weight to it.
fn harder(t: &Trainee<'_>, ix: MovementIx) -> Option<MovementIx> {
    let facts = t.roster.of(ix);
    let may = |up: &MovementIx| t.may(*up) && (!t.is_minor() || !t.roster.of(*up).loaded());
    let lowest = |of: &mut dyn Iterator<Item = MovementIx>| {
        of.filter(may)
            .min_by_key(|up| (t.roster.of(*up).stage, *up))
    };
    let weighted = |up: &MovementIx| {
        let other = t.roster.of(*up);
        let mut asks = false;
        let asked =
            |leaf: &crate::curriculum::Leaf| leaf.movement == ix && leaf.target.amount() >= ONE;
        other.of.needs().visit(&mut |leaf| asks |= asked(leaf));
        asks && other.loaded() && other.pattern() == facts.pattern()
    };
    lowest(&mut facts.harder.iter().copied())
        .or_else(|| lowest(&mut t.roster.standing.iter().copied().filter(weighted)))
}
