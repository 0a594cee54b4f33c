//! Needs: how many people own a movement though they had never met what it needs.

use super::history::{Histories, History};
use super::{COMMON, MOST, PEOPLE, RARE, Verdict, WeighedNeed, portion};
use crate::curriculum::{Day, Leaf, MovementIx, Target};

/// Each demand of a movement once, in the order written.
pub fn of(all: &Histories<'_>, ix: MovementIx) -> Vec<WeighedNeed> {
    let movement = all.curriculum.movement(ix);
    let owners: Vec<(&History<'_>, Day)> = all
        .people
        .iter()
        .filter_map(|h| Some((h, h.first_met(ix, &movement.standard())?)))
        .collect();
    let mut seen: Vec<&Leaf> = Vec::new();
    for leaf in movement.needs().leaves() {
        let again = |other: &&Leaf| {
            other.movement == leaf.movement && other.target.same_value(&leaf.target)
        };
        if !seen.iter().any(again) {
            seen.push(leaf);
        }
    }
    seen.into_iter()
        .map(|leaf| weighed(all, ix, leaf, &owners))
        .collect()
}

fn weighed(
    all: &Histories<'_>,
    ix: MovementIx,
    leaf: &Leaf,
    owners: &[(&History<'_>, Day)],
) -> WeighedNeed {
    let needs = all.curriculum.movement(ix).needs();
    let known: Vec<(&History<'_>, Day, bool)> = owners
        .iter()
        .filter_map(|(h, day)| Some((*h, *day, h.met_by(leaf.movement, &leaf.target, *day)?)))
        .collect();
    // Who came by another branch of a choice does not speak against this one.
    let came_without =
        |h: &History<'_>, day: Day| h.first_open(needs).is_none_or(|open| open > day);
    let below = known
        .iter()
        .filter(|(h, day, met)| !met && came_without(h, *day))
        .count();
    let portion = portion(below, known.len());
    let verdict = match known.len() {
        n if n < PEOPLE => Verdict::TooFew,
        _ if portion.high < RARE => Verdict::Holds,
        _ if portion.low > COMMON => Verdict::TooHigh,
        _ => Verdict::Unclear,
    };
    WeighedNeed {
        movement: ix,
        needed: leaf.movement,
        target: leaf.target,
        span: leaf.span,
        owners: known.len(),
        below,
        portion,
        verdict,
        suggest: match verdict {
            Verdict::TooHigh => suggested(leaf, &known),
            _ => None,
        },
    }
}

/// The hardest amount, all else being as it is asked, that most of the owners had met.
fn suggested(leaf: &Leaf, known: &[(&History<'_>, Day, bool)]) -> Option<Target> {
    let mut amounts: Vec<i64> = known
        .iter()
        .flat_map(|(h, day, _)| h.amounts(leaf.movement, *day))
        .collect();
    amounts.sort_unstable();
    amounts.dedup();
    let at_most = leaf.target.at_most();
    if !at_most {
        amounts.reverse();
    }
    let easier = |amount: &i64| match at_most {
        true => *amount > leaf.target.amount(),
        false => *amount < leaf.target.amount() && *amount > 0,
    };
    let enough = (MOST * known.len() as f64).ceil() as usize;
    amounts
        .into_iter()
        .filter(easier)
        .map(|amount| leaf.target.with_amount(amount))
        .find(|target| {
            let met = |(h, day, _): &&(&History<'_>, Day, bool)| {
                h.met_by(leaf.movement, target, *day) == Some(true)
            };
            known.iter().filter(met).count() >= enough
        })
}
