//! All people together: what holds back most, who could work together, and the few tests that decide the most.

use super::together::together;
use super::{M, Verdict};
use crate::curriculum::MovementIx;
use crate::training::Roster;
use std::cmp::Reverse;
use std::collections::BTreeMap;

/// People by their place in what was given.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Class {
    /// What is next for how many, most first.
    pub held_back: Vec<(MovementIx, Vec<usize>)>,
    /// Groups of two and more: their movements, and who.
    pub together: Vec<(Vec<MovementIx>, Vec<usize>)>,
    pub tests: Vec<Test>,
    /// Who would have a test, and waits with it.
    pub waiting: Vec<usize>,
}

/// A test worth doing today.
#[derive(Clone, Debug, PartialEq)]
pub struct Test {
    pub movement: MovementIx,
    pub people: Vec<usize>,
    /// How many movements wait for it, over all of them.
    pub decides: usize,
}

/// What all verdicts come to. Nobody who is to ask a clinician first is in any of it: they have nothing next, and no test.
///
/// # Complexity
/// Square in the movements that are next.
pub fn class<'v>(roster: &Roster<'_>, verdicts: impl IntoIterator<Item = &'v Verdict>) -> Class {
    let mut next: BTreeMap<MovementIx, Vec<usize>> = BTreeMap::new();
    let mut tests: BTreeMap<MovementIx, Test> = BTreeMap::new();
    let mut waiting = Vec::new();
    for (person, verdict) in verdicts.into_iter().enumerate() {
        if let Some(ix) = verdict.next_movement() {
            next.entry(ix).or_default().push(person);
        }
        if verdict.waits {
            waiting.extend((!verdict.tests.is_empty()).then_some(person));
            continue;
        }
        for (movement, decides) in &verdict.tests {
            let test = tests.entry(*movement).or_insert_with(|| Test {
                movement: *movement,
                people: Vec::new(),
                decides: 0,
            });
            test.people.push(person);
            test.decides += decides;
        }
    }
    let mut tests: Vec<Test> = tests.into_values().collect();
    tests.sort_by_key(|t| (Reverse(t.decides), t.movement));
    tests.truncate(M.tests);
    let together = together(&next, &|a, b| {
        let facts = roster.of(a);
        facts.easier.contains(&b) || facts.harder.contains(&b)
    });
    let mut held_back: Vec<(MovementIx, Vec<usize>)> = next.into_iter().collect();
    held_back.sort_by_key(|(ix, people)| (Reverse(people.len()), *ix));
    Class {
        held_back,
        together,
        tests,
        waiting,
    }
}
