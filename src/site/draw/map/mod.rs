//! The map of a chain as SVG: stages as levels from the ground up, needs as lines from below, joints where there is a choice.
//!
//! Four steps: [`layers`] makes rows, joints and long lines; [`order`] arranges each row so that few lines cross; [`place`]
//! gives coordinates; [`draw`] writes. Classes alone, `map-*`; the theme has the colours.

pub mod draw;
pub mod layers;
pub mod order;
pub mod place;

use crate::curriculum::{Leaf, MovementIx, Need, Owner, SkillIx};
use crate::site::material::Material;
use crate::words::Words;
use serde::Serialize;
use std::collections::{BTreeSet, HashMap};

/// A larger chain is drawn by its essential movements alone, and where these are more there is no map.
pub const MOST: usize = 150;

/// A movement as the map knows it.
#[derive(Clone, Debug)]
pub struct Member {
    pub id: String,
    pub name: String,
    pub stage: u32,
    pub essential: bool,
    /// The signal of its mark, its word for readers, and what that is about.
    pub mark: Option<(&'static str, String, String)>,
    /// Over positions in the list of members.
    pub needs: Need<usize>,
}

/// What the page of a skill shows.
#[derive(Debug, Serialize)]
pub struct View {
    /// Empty where even the essential movements are too many.
    pub svg: String,
    pub only_essential: bool,
    /// It has lines that read downwards.
    pub down: bool,
}

/// The map of a skill's chain.
pub(in crate::site) fn of_skill(site: &Material<'_>, ix: SkillIx) -> View {
    let all = members(site, ix);
    let only_essential = all.len() > MOST;
    let shown = if only_essential {
        essentials_of(&all)
    } else {
        all
    };
    let name = site.named(Owner::Skill(ix));
    let label = site.say().fill("map.label", &[("skill", (&name).into())]);
    let svg = match shown.len() {
        1..=MOST => svg(&shown, &label, site.say()),
        _ => String::new(),
    };
    View {
        down: svg.contains(draw::DOWN),
        svg,
        only_essential,
    }
}

/// The drawing of a list of members, ordered by stage.
pub fn svg(members: &[Member], label: &str, words: &Words) -> String {
    let layered = layers::layers(members, words);
    let order = order::improve(&layered);
    let placed = place::place(&layered, &order, members);
    draw::draw(&layered, &placed, members, label, words)
}

fn members(site: &Material<'_>, ix: SkillIx) -> Vec<Member> {
    let chain = &site.chains.of_skills[ix.at()];
    let positions: HashMap<MovementIx, usize> = chain
        .movements
        .iter()
        .enumerate()
        .map(|(i, link)| (link.movement, i))
        .collect();
    chain
        .movements
        .iter()
        .map(|link| {
            let m = site.curriculum.movement(link.movement);
            Member {
                id: m.id().to_string(),
                name: m.name().to_owned(),
                stage: link.stage,
                essential: link.essential,
                mark: site
                    .links
                    .mark(link.movement)
                    .map(|mark| (mark.signal, mark.word.clone(), mark.says.clone())),
                needs: positioned(m.needs(), &positions),
            }
        })
        .collect()
}

/// A tree over positions; what has none (it can never be met) becomes "any one of nothing".
fn positioned(need: &Need<Leaf>, positions: &HashMap<MovementIx, usize>) -> Need<usize> {
    let all = |parts: &[Need<Leaf>]| parts.iter().map(|p| positioned(p, positions)).collect();
    match need {
        Need::Leaf(leaf) => positions
            .get(&leaf.movement)
            .map_or(Need::Any(Vec::new()), |i| Need::Leaf(*i)),
        Need::All(parts) => Need::All(all(parts)),
        Need::Any(parts) => Need::Any(all(parts)),
        Need::AtLeast(k, parts) => Need::AtLeast(*k, all(parts)),
    }
}

/// The essential members alone: each needs all those essential ones that it cannot be reached without.
fn essentials_of(all: &[Member]) -> Vec<Member> {
    let essential: Vec<usize> = (0..all.len()).filter(|i| all[*i].essential).collect();
    if essential.len() > MOST {
        return Vec::new();
    }
    let mut under: Vec<BTreeSet<usize>> = Vec::with_capacity(all.len());
    for member in all {
        let found = without_fail(&member.needs, &under, &|i| all[i].essential);
        under.push(found);
    }
    let number: HashMap<usize, usize> = essential.iter().copied().zip(0..).collect();
    let needs = |i: &usize| {
        under[*i]
            .iter()
            .filter_map(|j| number.get(j).copied().map(Need::Leaf))
            .collect()
    };
    essential
        .iter()
        .map(|i| Member {
            needs: Need::All(needs(i)),
            ..all[*i].clone()
        })
        .collect()
}

/// Essential movements without which a tree cannot be met, given those of the movements before. What stands later counts for
/// none: too few lines, never a wrong one.
fn without_fail(
    need: &Need<usize>,
    under: &[BTreeSet<usize>],
    essential: &dyn Fn(usize) -> bool,
) -> BTreeSet<usize> {
    let (least, parts) = match need {
        Need::Leaf(i) => {
            let mut found = under.get(*i).cloned().unwrap_or_default();
            if *i < under.len() && essential(*i) {
                found.insert(*i);
            }
            return found;
        }
        Need::All(parts) => (parts.len(), parts),
        Need::Any(parts) => (1, parts),
        Need::AtLeast(k, parts) => (*k as usize, parts),
    };
    let mut times: HashMap<usize, usize> = HashMap::new();
    for part in parts {
        for i in without_fail(part, under, essential) {
            *times.entry(i).or_default() += 1;
        }
    }
    // Every choice of so many parts holds one of those that have it.
    times
        .into_iter()
        .filter(|(_, n)| least > 0 && parts.len() - n < least)
        .map(|(i, _)| i)
        .collect()
}
