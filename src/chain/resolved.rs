//! What is worked out of a curriculum once, for the rules of proof and for the site alike: stages and postures, and when somebody
//! asks for them, chains.

use super::{Chain, Flat, Stages, Step, ladders, resolve, stages};
use crate::curriculum::{Curriculum, Movement, MovementIx, SkillIx};
use crate::leverage::{PostureError, Solved, solve};
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

/// A posture that stands, or why it cannot; nothing where a movement declares none. Few declare one.
type Posture = Option<Arc<Result<Solved, PostureError>>>;

/// Stages, postures and chains of one curriculum.
pub struct Resolved {
    pub stages: Stages,
    postures: Vec<Posture>,
    /// Shared with a curriculum in which nothing asks otherwise.
    chains: Arc<OnceLock<Chains>>,
}

/// Everything under the skills, and what each number opens.
pub struct Chains {
    /// The chain of each skill, in their order.
    pub of_skills: Vec<Chain>,
    /// The skills in whose chains each movement stands.
    pub skills_of: Vec<Vec<SkillIx>>,
    /// What the number of a movement opens, over the whole curriculum.
    pub ladders: BTreeMap<MovementIx, Vec<Step>>,
    /// The published movements in numbers.
    pub flat: Flat,
}

impl Resolved {
    pub fn new(curriculum: &Curriculum) -> Resolved {
        Resolved {
            stages: stages(curriculum),
            postures: curriculum.movements().map(|(_, m)| posture(m)).collect(),
            chains: Arc::default(),
        }
    }

    /// After one movement was read anew, which was `before`; what cannot differ is kept.
    pub fn after(&self, curriculum: &Curriculum, ix: MovementIx, before: &Movement) -> Resolved {
        let now = curriculum.movement(ix);
        let mut postures = self.postures.clone();
        postures[ix.at()] = posture(now);
        let stands_alike = before.faulty() == now.faulty() && before.held_back() == now.held_back();
        // Stages depend on which movements are needed, not on what is asked of them.
        let climbs_alike = before
            .needs()
            .is_like(now.needs(), &|a, b| a.movement == b.movement);
        let asks_alike = before.standard() == now.standard()
            && before.needs().is_like(now.needs(), &|a, b| {
                a.movement == b.movement && a.target == b.target
            });
        let stages = match stands_alike && climbs_alike {
            true => self.stages.clone(),
            false => stages(curriculum),
        };
        let chains = match stands_alike && asks_alike {
            true => Arc::clone(&self.chains),
            false => Arc::default(),
        };
        Resolved {
            stages,
            postures,
            chains,
        }
    }

    /// How a movement's posture stands, or why it cannot; `None` where it declares none.
    pub fn posture(&self, ix: MovementIx) -> Option<Result<&Solved, &PostureError>> {
        self.postures[ix.at()].as_deref().map(Result::as_ref)
    }

    /// How a movement's posture stands, if it does.
    pub fn solved(&self, ix: MovementIx) -> Option<&Solved> {
        self.posture(ix)?.ok()
    }

    /// The chains of the curriculum that this was made of, worked out when they are asked for first.
    pub fn chains(&self, curriculum: &Curriculum) -> &Chains {
        self.chains
            .get_or_init(|| Chains::new(curriculum, &self.stages))
    }
}

fn posture(movement: &Movement) -> Posture {
    movement.posture().map(|p| Arc::new(solve(p)))
}

impl Chains {
    fn new(curriculum: &Curriculum, stages: &Stages) -> Chains {
        let of_skills = || -> Vec<Chain> {
            let goals: Vec<_> = curriculum.skills().map(|(_, s)| &s.goal).collect();
            goals
                .par_iter()
                .map(|goal| resolve(curriculum, stages, goal))
                .collect()
        };
        let (of_skills, (ladders, flat)) = rayon::join(of_skills, || {
            rayon::join(|| ladders(curriculum, &|_| true), || Flat::new(curriculum))
        });
        let mut skills_of = vec![Vec::new(); curriculum.len()];
        for (i, chain) in of_skills.iter().enumerate() {
            let skill = SkillIx(i as u32);
            for link in &chain.movements {
                skills_of[link.movement.at()].push(skill);
            }
        }
        Chains {
            of_skills,
            skills_of,
            ladders,
            flat,
        }
    }
}
