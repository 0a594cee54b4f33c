//! What is missing for a movement's needs: the cheapest way to close them, and whether one near miss would.

use super::compare::WHOLE;
use super::evidence::{Evidence, Truth};
use super::{Missing, missing_of};
use crate::curriculum::{Leaf, Need};

/// The value of a tree in Kleene's logic.
pub(super) fn truth(need: &Need<Leaf>, of: &dyn Fn(&Leaf) -> Truth) -> Truth {
    match need {
        Need::Leaf(leaf) => of(leaf),
        Need::All(parts) => parts
            .iter()
            .map(|p| truth(p, of))
            .min()
            .unwrap_or(Truth::True),
        Need::Any(parts) => parts
            .iter()
            .map(|p| truth(p, of))
            .max()
            .unwrap_or(Truth::False),
        Need::AtLeast(k, parts) => {
            let values: Vec<Truth> = parts.iter().map(|p| truth(p, of)).collect();
            let count = |least: Truth| values.iter().filter(|v| **v >= least).count();
            match *k as usize {
                k if count(Truth::True) >= k => Truth::True,
                k if count(Truth::Unknown) < k => Truth::False,
                _ => Truth::Unknown,
            }
        }
    }
}

/// A way to make a tree true: how many leaves are missing, their shortfalls in thousandths together, and which they are.
pub(super) struct Repair<'a> {
    leaves: u32,
    shortfall: u32,
    pub which: Vec<&'a Leaf>,
}

/// What a leaf costs: nothing, or 1 with its shortfall; `None` when it is no way at all.
pub(super) type Cost<'a> = &'a dyn Fn(&Leaf) -> Option<(u32, u32)>;

pub(super) fn cheapest<'a>(need: &'a Need<Leaf>, cost: Cost<'_>) -> Option<Repair<'a>> {
    let nothing = Repair {
        leaves: 0,
        shortfall: 0,
        which: Vec::new(),
    };
    let join = |mut a: Repair<'a>, b: Repair<'a>| {
        a.leaves += b.leaves;
        a.shortfall += b.shortfall;
        a.which.extend(b.which);
        a
    };
    let ways = |parts: &'a [Need<Leaf>]| parts.iter().map(|p| cheapest(p, cost));
    match need {
        Need::Leaf(leaf) => cost(leaf).map(|(leaves, shortfall)| Repair {
            leaves,
            shortfall,
            which: if leaves > 0 { vec![leaf] } else { Vec::new() },
        }),
        Need::All(parts) => ways(parts).try_fold(nothing, |all, way| Some(join(all, way?))),
        Need::Any(parts) => ways(parts)
            .flatten()
            .min_by_key(|r| (r.leaves, r.shortfall)),
        Need::AtLeast(k, parts) => {
            let mut least: Vec<(usize, Repair<'a>)> = ways(parts)
                .enumerate()
                .filter_map(|(i, way)| Some((i, way?)))
                .collect();
            if least.len() < *k as usize {
                return None;
            }
            least.sort_by_key(|(_, r)| (r.leaves, r.shortfall));
            least.truncate(*k as usize);
            // Listed as written, whatever they cost.
            least.sort_by_key(|(i, _)| *i);
            Some(least.into_iter().map(|(_, r)| r).fold(nothing, join))
        }
    }
}

/// The cheapest repair of a movement's needs: fewest leaves, then least shortfall, then what is written first. Each demand once.
pub(super) fn missing(evidence: &Evidence<'_>, needs: &Need<Leaf>, guarded: bool) -> Vec<Missing> {
    let cost = |leaf: &Leaf| match evidence.leaf(leaf, guarded) {
        Truth::True => Some((0, 0)),
        _ => {
            let share = evidence.closest(leaf).map_or(0, |c| c.share);
            Some((1, u32::from(WHOLE - share)))
        }
    };
    let which = cheapest(needs, &cost).map_or_else(Vec::new, |r| r.which);
    let mut out: Vec<Missing> = Vec::new();
    for leaf in which {
        if !out.iter().any(|m| m.is(leaf)) {
            out.push(missing_of(evidence, leaf));
        }
    }
    out
}

/// The leaf by which needs that are not true would be, if that movement reached the target it misses by little.
pub(super) fn almost<'a>(
    evidence: &Evidence<'_>,
    needs: &'a Need<Leaf>,
    guarded: bool,
) -> Option<&'a Leaf> {
    needs.leaves().into_iter().find(|near| {
        let reached = |leaf: &Leaf| {
            let with_it = leaf.movement == near.movement && near.target.asks_at_least(&leaf.target);
            match with_it {
                true => Truth::True,
                false => evidence.leaf(leaf, guarded),
            }
        };
        evidence.is_near_miss(near) && truth(needs, &reached) == Truth::True
    })
}
