//! Weighing: a curriculum held against what people did. Which needs its owners had, how long the way took, what a standard led
//! to.
//!
//! Pure. It changes nothing: it says what the numbers say, and which line they would have otherwise. Every bound here is common
//! practice, no source, but for the intervals.

mod history;
mod needs;
mod say;
mod standards;
mod survival;
mod ways;
mod wilson;

pub use say::{half, sees};
pub use survival::{Curve, Step, Way};
pub use wilson::{Portion, portion};

use crate::curriculum::Weeks;
use crate::curriculum::{Curriculum, MovementIx, Target};
use crate::results::Person;
use crate::source::Span;
use history::Histories;

/// Fewer people than this say nothing.
pub const PEOPLE: usize = 8;
/// A need holds when the upper end of the interval of those who came without it is below this.
pub const RARE: f64 = 0.10;
/// It asks too much when the lower end is above this.
pub const COMMON: f64 = 0.30;
/// What this share of the owners had is proposed in its place.
pub const MOST: f64 = 0.90;
/// A standard leads on when at least this share of those who met it own something that it opens within its weeks.
pub const LEADS_ON: f64 = 0.50;

/// What the numbers say of a line of the curriculum.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Verdict {
    Holds,
    /// It asks more than is needed, or takes less time than it says.
    TooHigh,
    /// It asks less than would tell, or takes longer than it says.
    TooLow,
    Unclear,
    TooFew,
}

impl Verdict {
    pub const ALL: [Verdict; 5] = [
        Verdict::Holds,
        Verdict::TooHigh,
        Verdict::TooLow,
        Verdict::Unclear,
        Verdict::TooFew,
    ];

    /// The word that programs see.
    pub fn word(self) -> &'static str {
        match self {
            Verdict::Holds => "holds",
            Verdict::TooHigh => "too high",
            Verdict::TooLow => "too low",
            Verdict::Unclear => "unclear",
            Verdict::TooFew => "too few",
        }
    }
}

/// A need against the people who own what needs it.
#[derive(Clone, Debug, PartialEq)]
pub struct WeighedNeed {
    pub movement: MovementIx,
    pub needed: MovementIx,
    pub target: Target,
    /// Where it is written.
    pub span: Span,
    /// People who own the movement by a result and had a result for what is needed by then.
    pub owners: usize,
    /// Those of them who had never met the target, nor another branch of the needs, by the day on which they owned it.
    pub below: usize,
    pub portion: Portion,
    pub verdict: Verdict,
    /// The target that [`MOST`] of the owners met.
    pub suggest: Option<Target>,
}

/// The time from open to owned.
#[derive(Clone, Debug, PartialEq)]
pub struct WeighedWay {
    pub movement: MovementIx,
    pub declared: Option<Weeks>,
    pub curve: Curve,
    /// Weeks, with the ends of the 95 % interval.
    pub median: Option<f64>,
    pub low: Option<f64>,
    pub high: Option<f64>,
    pub verdict: Verdict,
    pub suggest: Option<Weeks>,
}

/// What became of those who met a standard.
#[derive(Clone, Debug, PartialEq)]
pub struct WeighedStandard {
    pub movement: MovementIx,
    /// People with a result for it.
    pub tested: usize,
    /// Those who met it, at any time and on the first day on which they were tested.
    pub met: usize,
    pub met_at_first: usize,
    /// For each movement that its standard opens.
    pub opens: Vec<LedTo>,
    pub verdict: Verdict,
}

/// Of those who met a standard and were followed through the weeks of what it opens: how many owned it within them.
#[derive(Clone, Debug, PartialEq)]
pub struct LedTo {
    pub movement: MovementIx,
    pub people: usize,
    pub within: usize,
    pub portion: Portion,
}

/// What the rules for needs can show of so many owners.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sees {
    /// The most of any need.
    pub owners: usize,
    /// A need is called too high once so many of them came without it.
    pub too_high: usize,
    /// Below so many owners no need can be said to hold, though nobody came without it.
    pub least: usize,
}

impl Sees {
    /// `None` where there are too few owners for anything.
    ///
    /// # Complexity
    /// Linear in the owners.
    pub fn of(owners: usize) -> Option<Sees> {
        (owners >= PEOPLE).then_some(())?;
        Some(Sees {
            owners,
            too_high: (0..=owners).find(|hits| portion(*hits, owners).low > COMMON)?,
            least: (PEOPLE..).find(|n| portion(0, *n).high < RARE)?,
        })
    }
}

/// A curriculum weighed; each list in the order of the movements' ids.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighed {
    pub people: usize,
    pub needs: Vec<WeighedNeed>,
    pub movements: Vec<WeighedWay>,
    pub standards: Vec<WeighedStandard>,
}

impl Weighed {
    /// What the need with the most owners could show.
    pub fn sees(&self) -> Option<Sees> {
        Sees::of(self.needs.iter().map(|n| n.owners).max()?)
    }
}

/// Weighs a curriculum by all dated results of these people, however old.
///
/// # Complexity
/// Linear in people times the leaves of all needs, and in the results.
pub fn weigh(curriculum: &Curriculum, people: &[Person]) -> Weighed {
    let histories = Histories::new(curriculum, people);
    let mut order: Vec<MovementIx> = curriculum
        .published()
        .filter(|(_, movement)| !movement.faulty())
        .map(|(ix, _)| ix)
        .collect();
    order.sort_by_key(|ix| curriculum.movement(*ix).id().as_str());
    let needs = order.iter().flat_map(|ix| needs::of(&histories, *ix));
    let opened = standards::opened(curriculum);
    Weighed {
        people: people.len(),
        needs: needs.collect(),
        movements: order.iter().map(|ix| ways::of(&histories, *ix)).collect(),
        standards: order
            .iter()
            .map(|ix| standards::of(&histories, *ix, &opened[ix.at()]))
            .collect(),
    }
}
