//! Threshold ladders: each different target asked of a movement, and what it opens.

use super::Chain;
use crate::curriculum::{Curriculum, MovementIx, SkillIx, Target};
use std::collections::BTreeMap;

/// One rung of a movement's ladder: a target, and who asks it.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    pub target: Target,
    /// Movements whose needs ask it, sorted by id, each once.
    pub opens: Vec<MovementIx>,
    /// Skills whose goal asks it.
    pub skills: Vec<SkillIx>,
}

/// The ladder of one movement within the movements that `asks` accepts, from easier to harder.
pub fn ladder(
    curriculum: &Curriculum,
    of: MovementIx,
    asks: &dyn Fn(MovementIx) -> bool,
) -> Vec<Step> {
    ladders(curriculum, asks).remove(&of).unwrap_or_default()
}

/// The ladders of all movements of which something is asked.
pub fn ladders(
    curriculum: &Curriculum,
    asks: &dyn Fn(MovementIx) -> bool,
) -> BTreeMap<MovementIx, Vec<Step>> {
    let mut out: BTreeMap<MovementIx, Vec<Step>> = BTreeMap::new();
    for (asker, movement) in curriculum
        .movements()
        .filter(|(ix, m)| !m.held_back() && !m.faulty() && asks(*ix))
    {
        movement.needs().visit(&mut |leaf| {
            let step = step(out.entry(leaf.movement).or_default(), leaf.target);
            if step.opens.last() != Some(&asker) {
                step.opens.push(asker);
            }
        });
    }
    for (ix, skill) in curriculum.skills().filter(|(_, s)| asks(s.goal.movement)) {
        step(
            out.entry(skill.goal.movement).or_default(),
            skill.goal.target,
        )
        .skills
        .push(ix);
    }
    out.values_mut()
        .for_each(|steps| steps.sort_by(|a, b| a.target.order(&b.target)));
    out
}

/// The ladders within a chain: only what its own movements ask.
pub fn chain_ladders(curriculum: &Curriculum, chain: &Chain) -> BTreeMap<MovementIx, Vec<Step>> {
    let members: std::collections::HashSet<MovementIx> =
        chain.movements.iter().map(|l| l.movement).collect();
    ladders(curriculum, &|ix| members.contains(&ix))
}

fn step(steps: &mut Vec<Step>, target: Target) -> &mut Step {
    let at = steps
        .iter()
        .position(|s| s.target.same_value(&target))
        .unwrap_or_else(|| {
            steps.push(Step {
                target,
                opens: Vec::new(),
                skills: Vec::new(),
            });
            steps.len() - 1
        });
    &mut steps[at]
}
