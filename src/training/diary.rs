//! What was trained on which day: by group, by part that was loaded heavily, and by movement; the log, and what is planned so far.

use super::constants::K;
use super::facts::Group;
use super::trainee::Trainee;
use crate::curriculum::words::BodyPart;
use crate::curriculum::{Day, MovementIx};
use std::collections::{BTreeMap, BTreeSet};

/// What was done, and is planned so far.
#[derive(Debug, Default)]
pub struct Diary {
    pub(super) groups: BTreeMap<Group, BTreeSet<Day>>,
    pub(super) parts: BTreeMap<BodyPart, BTreeSet<Day>>,
    pub(super) stood: BTreeMap<MovementIx, BTreeSet<Day>>,
}

impl Diary {
    /// The log.
    pub fn of(trainee: &Trainee<'_>) -> Diary {
        let mut diary = Diary::default();
        for t in &trainee.log {
            diary.did(trainee, t.of.movement, t.of.on, true);
            diary.stand(t.of.movement, t.of.on);
        }
        diary
    }

    pub fn did(&mut self, trainee: &Trainee<'_>, ix: MovementIx, on: Day, hard: bool) {
        let facts = trainee.roster.of(ix);
        if let Some(group) = facts.group().filter(|_| hard) {
            self.groups.entry(group).or_default().insert(on);
        }
        for part in &facts.heavy_on {
            self.parts.entry(*part).or_default().insert(on);
        }
    }

    pub fn stand(&mut self, ix: MovementIx, on: Day) {
        self.stood.entry(ix).or_default().insert(on);
    }

    /// Whether a group was trained in the days before.
    pub fn trained(&self, group: Group, on: Day, days: i32) -> bool {
        let mut trained = self.groups.get(&group).into_iter().flatten();
        trained.any(|day| (1..=days).contains(&on.days_after(*day)))
    }

    /// Whether a movement stood on a day or after it.
    pub fn stood_since(&self, ix: MovementIx, first: Day) -> bool {
        let mut stood = self.stood.get(&ix).into_iter().flatten();
        stood.any(|day| *day >= first)
    }

    /// How often a movement stood in the days before.
    pub fn times(&self, ix: MovementIx, on: Day, days: i32) -> usize {
        let stood = self.stood.get(&ix).into_iter().flatten();
        stood
            .filter(|day| (1..=days).contains(&on.days_after(**day)))
            .count()
    }
}

/// Whether one of the days is too near.
pub fn is_near(days: Option<&BTreeSet<Day>>, on: Day) -> bool {
    days.is_some_and(|days| days.iter().any(|d| on.days_after(*d).abs() < K.apart))
}
