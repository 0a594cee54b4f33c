//! Readiness: a client's results and the needs of the movements give a state for each movement, and what is missing.
//!
//! Pure: the day is an input. The page's own script gives the same answers from tables made at publish time.

mod compare;
mod evidence;
mod first;
mod pause;
mod repair;
mod route;

pub use compare::{Share, Verdict, WHOLE, verdict};
pub use evidence::{Evidence, Truth, never_presumed};
pub use first::{First, Steps};
pub use pause::{Cause, causes, goes_on_to};
pub use route::client_route;

use crate::chain::Stages;
use crate::curriculum::{Curriculum, Day, Leaf, MovementIx, Target};
use crate::results::Person;
use pause::Rest;

/// Where a client stands with a movement; the first that fits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum State {
    Paused,
    Owned,
    Open,
    Almost,
    NotYet,
    TestFirst,
}

impl State {
    pub const ALL: &'static [State] = &[
        State::Paused,
        State::Owned,
        State::Open,
        State::Almost,
        State::NotYet,
        State::TestFirst,
    ];

    /// The word that readers and programs see.
    pub fn word(self) -> &'static str {
        match self {
            State::Paused => "paused",
            State::Owned => "owned",
            State::Open => "open",
            State::Almost => "almost",
            State::NotYet => "not yet",
            State::TestFirst => "test first",
        }
    }
}

/// A client's standing with one movement.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    pub state: State,
    /// Owned only because something above it is.
    pub presumed: bool,
    /// That movement.
    pub counted_because: Option<MovementIx>,
    pub needs: Truth,
    /// The cheapest way to make the needs true, whatever the state; empty when they are.
    pub missing: Vec<Missing>,
    /// What is behind a movement that rests.
    pub paused_by: Vec<Cause>,
    /// For `almost`: the movement whose target is missed by little.
    pub nearly: Option<MovementIx>,
}

/// A demand that is not met.
#[derive(Clone, Debug, PartialEq)]
pub struct Missing {
    pub movement: MovementIx,
    pub target: Target,
    /// The closest result of the latest day; `None` when untested.
    pub got: Option<String>,
    /// Its share of the target.
    pub share: Option<Share>,
}

impl Missing {
    fn is(&self, leaf: &Leaf) -> bool {
        self.movement == leaf.movement && self.target == leaf.target
    }
}

/// A demand with what there is of it.
fn missing_of(evidence: &Evidence<'_>, leaf: &Leaf) -> Missing {
    let closest = evidence.closest(leaf);
    Missing {
        movement: leaf.movement,
        target: leaf.target,
        share: closest.as_ref().map(|c| c.share),
        got: closest.map(|c| c.text),
    }
}

/// A client's standing with every movement that is answered for: published, and reachable as the curriculum stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Readiness(Vec<Option<Standing>>);

impl Readiness {
    pub fn of(&self, ix: MovementIx) -> Option<&Standing> {
        self.0[ix.at()].as_ref()
    }

    /// The movements answered for, by id.
    pub fn all(&self) -> impl Iterator<Item = (MovementIx, &Standing)> {
        let standings = self.0.iter().enumerate();
        standings.filter_map(|(i, s)| Some((MovementIx(i as u32), s.as_ref()?)))
    }
}

/// Assesses one client on a day.
///
/// # Complexity
/// Linear in the leaves of all needs, but for `almost`, which looks at a tree once for each of its near misses.
pub fn assess(curriculum: &Curriculum, stages: &Stages, person: &Person, today: Day) -> Readiness {
    let evidence = Evidence::new(curriculum, person, today);
    let rest = Rest::new(curriculum, person, today);
    let standings = curriculum.movements().map(|(ix, movement)| {
        let answered = !movement.held_back() && !movement.faulty() && stages.is_reached(ix);
        answered.then(|| standing(curriculum, &evidence, &rest, ix))
    });
    Readiness(standings.collect())
}

fn standing(
    curriculum: &Curriculum,
    evidence: &Evidence<'_>,
    rest: &Rest,
    ix: MovementIx,
) -> Standing {
    let movement = curriculum.movement(ix);
    let guarded = movement.guarded();
    let needs = repair::truth(movement.needs(), &|leaf| evidence.leaf(leaf, guarded));
    let by_result = evidence.of_results(ix, &movement.standard());
    let root = evidence
        .presumed_from(ix, &movement.standard())
        .filter(|_| by_result.is_none());
    let nearly = match needs {
        Truth::True => None,
        _ => repair::almost(evidence, movement.needs(), guarded).map(|leaf| leaf.movement),
    };
    let state = if rest.holds(ix) {
        State::Paused
    } else if by_result == Some(Truth::True) || root.is_some() {
        State::Owned
    } else {
        match (needs, nearly) {
            (Truth::True, _) => State::Open,
            (_, Some(_)) => State::Almost,
            (Truth::False, None) => State::NotYet,
            (Truth::Unknown, None) => State::TestFirst,
        }
    };
    Standing {
        state,
        presumed: root.is_some() && state == State::Owned,
        counted_because: root.filter(|_| state == State::Owned),
        needs,
        missing: repair::missing(evidence, movement.needs(), guarded),
        paused_by: match state {
            State::Paused => rest.because(curriculum, ix),
            _ => Vec::new(),
        },
        nearly: nearly.filter(|_| state == State::Almost),
    }
}
