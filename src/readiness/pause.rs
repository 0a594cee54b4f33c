//! What rests: what is paused itself, what a pause, a restriction, a pain or the health questions spare, and what cannot be
//! reached without them.

use crate::chain::{Stages, stages_where};
use crate::curriculum::words::{BodyPart, Pattern, Phase, Screening, Word};
use crate::curriculum::{Curriculum, Day, Leaf, Movement, MovementIx, Need};
use crate::results::{LIMITS, Pain, Pause, Paused, Person};

/// Why a movement rests.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Cause {
    /// A pause, by its place in the person's list.
    Pause(usize),
    /// A restriction, by its place in the person's list.
    Restriction(usize),
    /// The newest pain of a part, by its place in the person's list.
    Pain(usize),
    /// The health questions said light: what is guarded or lowering waits.
    Light,
}

impl Cause {
    /// The pause or restriction behind it.
    pub fn pause(self, person: &Person) -> Option<&Pause> {
        match self {
            Cause::Pause(i) => person.pauses.get(i),
            Cause::Restriction(i) => person.restrictions.get(i),
            Cause::Pain(_) | Cause::Light => None,
        }
    }

    /// Its word in JSON.
    pub fn word(self) -> &'static str {
        match self {
            Cause::Pause(_) => "paused",
            Cause::Restriction(_) => "restrict",
            Cause::Pain(_) => "pain",
            Cause::Light => "light",
        }
    }
}

/// Everything that spares movements on a day: pauses and restrictions as written, pains by part, and what the health questions
/// said.
pub fn causes(person: &Person, today: Day) -> Vec<Cause> {
    let holds = |pause: &Pause| pause.holds_on(today) && !lifted(person, pause, today);
    let of = |list: &[Pause], cause: fn(usize) -> Cause| -> Vec<Cause> {
        let places = list.iter().enumerate();
        places
            .filter(|(_, p)| holds(p))
            .map(|(i, _)| cause(i))
            .collect()
    };
    let mut all = of(&person.pauses, Cause::Pause);
    all.extend(of(&person.restrictions, Cause::Restriction));
    all.extend(pausing_pains(person, today).into_iter().map(Cause::Pain));
    if person.screening_on(today) == Some(Screening::Light) {
        all.push(Cause::Light);
    }
    all
}

/// Whether a clearance of its class, of its day or later, lifts a pause. It ends after a year at the latest.
fn lifted(person: &Person, pause: &Pause, today: Day) -> bool {
    let Paused::Class(class) = pause.what else {
        return false;
    };
    person.cleared.iter().any(|clearance| {
        let last = clearance.on.plus(LIMITS.clearance);
        let last = clearance.until.map_or(last, |until| until.min(last));
        clearance.class == class
            && pause.on <= clearance.on
            && clearance.on <= today
            && today <= last
    })
}

/// The newest pain of each part, where it pauses the part; by part.
fn pausing_pains(person: &Person, today: Day) -> Vec<usize> {
    let mut newest: Vec<(BodyPart, usize)> = Vec::new();
    for (i, pain) in person.pains.iter().enumerate().filter(|p| p.1.on <= today) {
        match newest.iter_mut().find(|(part, _)| *part == pain.part) {
            Some((_, at)) if person.pains[*at].on <= pain.on => *at = i,
            Some(_) => {}
            None => newest.push((pain.part, i)),
        }
    }
    let pauses =
        |pain: &Pain| pain.score > goes_on_to(person, pain.part, today) || !pain.signs.is_empty();
    newest.sort_unstable();
    let places = newest.into_iter().map(|(_, i)| i);
    places.filter(|i| pauses(&person.pains[*i])).collect()
}

/// The highest pain, 0 to 10, with which a part goes on; above it the part rests (Silbernagel et al. 2007). None in what still grows,
/// and less in the neck: a nerve or the cord may be behind it. Common practice, no source.
pub fn goes_on_to(person: &Person, part: BodyPart, today: Day) -> u32 {
    let grows = person.age_on(today).is_some_and(|age| age < LIMITS.adult);
    if grows && LIMITS.growing.contains(&part.word()) {
        return 0;
    }
    LIMITS.pain[usize::from(part != BodyPart::Neck)].saturating_sub(1)
}

/// Whether a cause reaches a movement by itself.
fn reaches(cause: Cause, person: &Person, ix: MovementIx, movement: &Movement) -> bool {
    match (cause, cause.pause(person).map(|pause| pause.what)) {
        (Cause::Light, _) => movement.guarded() || movement.phase() == Some(Phase::Lowering),
        (Cause::Pain(i), _) => movement.stresses_part(person.pains[i].part),
        (_, Some(Paused::Movement(paused))) => paused == ix,
        (_, Some(Paused::Part(part))) => movement.stresses_part(part),
        (_, Some(Paused::Class(class))) => movement.cautions().contains(&class),
        (_, Some(Paused::Pattern(pattern))) => movement.pattern() == pattern,
        (_, None) => false,
    }
}

/// The movements that rest on a day. What a part, a class or a pattern spares are the movements that have it and no others; a
/// movement that is paused itself, and an exit that is spared, are missing to what cannot be reached without them.
pub(super) struct Rest {
    /// For each movement the causes that reach it by itself.
    direct: Vec<Vec<Cause>>,
    /// For each movement the causes for which it is missing to others too.
    gone: Vec<Vec<Cause>>,
    /// Who can still be reached; `None` when nothing is missing to others.
    standing: Option<Stages>,
}

impl Rest {
    pub fn new(curriculum: &Curriculum, person: &Person, today: Day) -> Rest {
        let mut direct = vec![Vec::new(); curriculum.len()];
        let mut gone = vec![Vec::new(); curriculum.len()];
        for cause in causes(person, today) {
            let itself = matches!(
                cause.pause(person).map(|p| p.what),
                Some(Paused::Movement(_))
            );
            for (ix, movement) in curriculum.movements() {
                if reaches(cause, person, ix, movement) {
                    direct[ix.at()].push(cause);
                    if itself || movement.pattern() == Pattern::Exit {
                        gone[ix.at()].push(cause);
                    }
                }
            }
        }
        let any = gone.iter().any(|causes| !causes.is_empty());
        let stands = |ix: MovementIx| gone[ix.at()].is_empty() && !curriculum.movement(ix).faulty();
        Rest {
            standing: any.then(|| stages_where(curriculum, &stands)),
            direct,
            gone,
        }
    }

    /// Whether a movement rests.
    pub fn holds(&self, ix: MovementIx) -> bool {
        !self.direct[ix.at()].is_empty() || self.is_missing(ix)
    }

    /// Whether a movement is missing to what needs it.
    fn is_missing(&self, ix: MovementIx) -> bool {
        self.standing.as_ref().is_some_and(|s| !s.is_reached(ix))
    }

    /// What is behind a resting movement: its own causes, else those of what it cannot be reached without.
    pub fn because(&self, curriculum: &Curriculum, ix: MovementIx) -> Vec<Cause> {
        let own = &self.direct[ix.at()];
        if !own.is_empty() {
            return own.clone();
        }
        let mut seen = vec![ix];
        let mut open = vec![ix];
        let mut out: Vec<Cause> = Vec::new();
        while let Some(at) = open.pop() {
            let missed = &self.gone[at.at()];
            if !missed.is_empty() {
                out.extend(missed);
                continue;
            }
            self.blocking(curriculum.movement(at).needs(), &mut |below| {
                if !seen.contains(&below) {
                    seen.push(below);
                    open.push(below);
                }
            });
        }
        out.sort_unstable();
        out.dedup();
        out
    }

    /// The movements that keep a tree from being reached.
    fn blocking(&self, need: &Need<Leaf>, tell: &mut impl FnMut(MovementIx)) {
        need.visit(&mut |leaf| {
            if self.is_missing(leaf.movement) {
                tell(leaf.movement);
            }
        });
    }
}
