//! A client's results: what was tested, trained, paused, restricted and felt. Read from YAML, JSON or a class's CSV against
//! a curriculum.
//!
//! Knows nothing of states: what a result is worth is for `readiness`.

mod about;
mod class;
mod entry;
mod file;
mod limits;
mod named;
mod rest;

pub use file::read;
pub use limits::{LIMITS, Limits};

use crate::curriculum::caution::ClassIx;
use crate::curriculum::target::{Added, Got, Micro};
use crate::curriculum::words::{BodyPart, PainSign, Pattern, Screening, Weekday};
use crate::curriculum::{BodyWeight, Day, MovementIx, SkillIx};

/// The version of the layout that is read and written.
pub const VERSION: u32 = 1;

/// One client. The default one is nobody of whom nothing is known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Person {
    pub name: String,
    pub body_weight: Option<BodyWeight>,
    /// Equipment at hand; `None` when it was not said.
    pub have: Option<Vec<String>>,
    /// In the order written.
    pub tested: Vec<Tested>,
    /// Measured in a way that the curriculum has changed since: kept aside, and asked for anew.
    pub otherwise: Vec<Tested>,
    pub trained: Vec<Trained>,
    pub sessions: Vec<Session>,
    pub pauses: Vec<Pause>,
    /// The year of birth.
    pub born: Option<i32>,
    /// What is trained for; `None` while none is chosen.
    pub goal: Option<Goal>,
    pub train: Train,
    pub screened: Option<Screened>,
    /// What is left alone for the sake of health: like pauses, but what follows from the health questions or was agreed.
    pub restrictions: Vec<Pause>,
    pub cleared: Vec<Clearance>,
    /// In the order written.
    pub pains: Vec<Pain>,
    pub remarks: Vec<Remark>,
    pub aside: Vec<Aside>,
}

impl Person {
    /// What the health questions say on a day; `None` where they were not answered by then. What a clinician allowed instead of
    /// `ask` runs out with its last day, after a year at the latest. Whoever is too young for a page hears `ask` whatever was said.
    pub fn screening_on(&self, day: Day) -> Option<Screening> {
        if self.is_child_on(day) {
            return Some(Screening::Ask);
        }
        let screened = self.screened.as_ref().filter(|s| s.on <= day)?;
        Some(
            match screened.cleared_until().is_some_and(|last| day > last) {
                true => Screening::Ask,
                false => screened.says,
            },
        )
    }

    /// Whole years of age on a day, the birthday still to come; `None` where the year is not said.
    pub fn age_on(&self, day: Day) -> Option<i32> {
        self.born.map(|born| day.year() - born - 1)
    }

    /// Too young to test or train by a page.
    pub fn is_child_on(&self, day: Day) -> bool {
        self.age_on(day).is_some_and(|age| age < LIMITS.alone)
    }

    /// Whether nothing is planned on a day before the health questions are answered: who is not of age, or old, and has no answers
    /// on file by then. Of an unknown age nothing is presumed.
    pub fn must_answer_on(&self, day: Day) -> bool {
        let between = LIMITS.adult..LIMITS.older;
        let must = |age: i32| !between.contains(&age);
        self.age_on(day).is_some_and(must) && self.screening_on(day).is_none()
    }

    /// The person with every text of the client's as a terminal may show it: characters that steer a terminal or turn the
    /// direction of writing become a sign that something stood there.
    fn harmless(mut self) -> Person {
        let steers = |c: char| {
            c.is_control() || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
        };
        let clean = |text: &mut String| {
            if text.contains(steers) {
                *text = text.replace(steers, "\u{fffd}");
            }
        };
        clean(&mut self.name);
        for remark in &mut self.remarks {
            clean(&mut remark.words);
        }
        for of in &mut self.cleared {
            of.by.iter_mut().for_each(clean);
        }
        self.screened
            .iter_mut()
            .for_each(|s| s.by.iter_mut().for_each(clean));
        for pause in self.pauses.iter_mut().chain(&mut self.restrictions) {
            pause.by.iter_mut().for_each(clean);
            pause.because.iter_mut().for_each(clean);
        }
        for aside in &mut self.aside {
            clean(&mut aside.movement);
            clean(&mut aside.got);
        }
        self
    }
}

/// A test's result.
#[derive(Clone, Debug, PartialEq)]
pub struct Tested {
    pub movement: MovementIx,
    pub sides: Sides,
    pub on: Day,
    /// Reps (or what else is measured) that could still have been done.
    pub in_reserve: u32,
    /// The body weight of that day, where the entry carries its own.
    pub body_weight: Option<BodyWeight>,
}

/// Both sides together, or each by itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Sides {
    Both(Got),
    Each { left: Got, right: Got },
}

impl Sides {
    /// One result, or left and right.
    pub fn all(&self) -> impl Iterator<Item = &Got> + Clone {
        let (first, second) = match self {
            Sides::Both(got) => (got, None),
            Sides::Each { left, right } => (left, Some(right)),
        };
        std::iter::once(first).chain(second)
    }
}

/// Sets that were trained.
#[derive(Clone, Debug, PartialEq)]
pub struct Trained {
    pub movement: MovementIx,
    /// The amount of each set, in the movement's measure.
    pub did: Vec<Micro>,
    pub added: Option<Added>,
    pub in_reserve: Option<u32>,
    pub on: Day,
}

/// A whole session, as it is rated half an hour after.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Session {
    pub on: Day,
    /// 0 to 10.
    pub effort: u32,
    pub minutes: u32,
}

/// Something that rests.
#[derive(Clone, Debug, PartialEq)]
pub struct Pause {
    pub what: Paused,
    pub on: Day,
    /// The last day of the pause; `None` until it is lifted.
    pub until: Option<Day>,
    pub by: Option<String>,
    pub because: Option<String>,
}

/// What rests.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paused {
    Movement(MovementIx),
    Part(BodyPart),
    /// Everything of a caution class.
    Class(ClassIx),
    Pattern(Pattern),
}

impl Pause {
    /// Whether it holds on a day; both ends count.
    pub fn holds_on(&self, day: Day) -> bool {
        self.on <= day && self.until.is_none_or(|until| day <= until)
    }
}

/// What a client trains for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Goal {
    Skill(SkillIx),
    /// A movement at its standard.
    Movement(MovementIx),
}

/// When there is time to train; what is not said is the school's.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Train {
    /// 1 to 7.
    pub a_week: Option<u32>,
    /// Minutes a session, 10 to 240.
    pub minutes: Option<u32>,
    /// Days of the week, in the week's order; empty when none is fixed.
    pub days: Vec<Weekday>,
}

/// What the health questions came to. The answers themselves are nowhere.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Screened {
    pub says: Screening,
    pub on: Day,
    /// Where a clinician allowed it although the answers said `ask`: the last day.
    pub until: Option<Day>,
    pub by: Option<String>,
    /// What the answers said before a clinician's word was entered.
    pub was: Option<Screening>,
    /// The longest that a clinician's word lasts after these answers, in days, where that is less than a year.
    pub lasts: Option<u32>,
}

impl Screened {
    /// The last day of what a clinician allowed although the answers said `ask`; `None` where nobody was asked.
    pub fn cleared_until(&self) -> Option<Day> {
        let most = self
            .lasts
            .map_or(LIMITS.clearance, |days| (days as i32).min(LIMITS.clearance));
        self.until.map(|until| until.min(self.on.plus(most)))
    }
}

/// A caution class that a clinician allowed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clearance {
    pub class: ClassIx,
    pub on: Day,
    /// As it was written: the last day; it ends after a year at the latest.
    pub until: Option<Day>,
    pub by: Option<String>,
}

/// How much a part hurt.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pain {
    pub part: BodyPart,
    /// 0 to 10.
    pub score: u32,
    /// 0 to 10, the morning after.
    pub next_morning: Option<u32>,
    pub on: Day,
    pub signs: Vec<PainSign>,
}

/// What the coach saw.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Remark {
    pub movement: MovementIx,
    pub on: Day,
    pub words: String,
}

/// An entry that decides nothing, and is never lost.
#[derive(Clone, Debug, PartialEq)]
pub struct Aside {
    /// The movement as it was written.
    pub movement: String,
    /// What was done, as it was written.
    pub got: String,
    pub on: Day,
    pub why: &'static str,
}
