//! `chain ID`: everything under a skill or a movement, in stages.

use super::{Common, Form, Status, report};
use crate::chain::{self, Chain, Link, Route, Step};
use crate::curriculum::need::Leaf;
use crate::curriculum::{Curriculum, MovementIx, Owner};
use crate::io::{self, Error};
use crate::proof::{Proofread, proofread};
use crate::source::suggest::did_you_mean;
use serde_json::{Map, Value, json};

#[derive(clap::Args)]
pub struct Options {
    /// The id of a skill or a movement
    #[arg(value_name = "ID")]
    id: String,
    #[command(flatten)]
    common: Common,
}

pub fn run(options: &Options) -> Result<Status, Error> {
    let snapshot = io::snapshot(&options.common.from)?;
    let proof = proofread(&snapshot);
    let curriculum = &proof.curriculum;
    let status = report::status(&proof.findings, false);
    let Some(goal) = goal(curriculum, &options.id) else {
        if options.common.form == Form::Text {
            report::print_errors(&proof.findings, &snapshot, &options.common.from);
        }
        let ids = curriculum.ids().filter(|id| {
            matches!(
                curriculum.find(id),
                Some(Owner::Movement(_) | Owner::Skill(_))
            )
        });
        let help = did_you_mean(&options.id, ids).map_or_else(String::new, |h| format!(" ({h})"));
        anstream::eprintln!(
            "rungbook: no skill or movement has the id `{}`{help}",
            options.id
        );
        return Ok(if status == Status::AtFault {
            status
        } else {
            Status::Failed
        });
    };
    let resolved = chain::resolve(curriculum, &proof.resolved.stages, &goal);
    let route = chain::newcomer_route(curriculum, goal.movement);
    match options.common.form {
        Form::Json => {
            let mut answer = answer(&proof, &resolved, route.as_ref());
            answer.insert("findings".into(), report::json(&proof.findings, &snapshot));
            report::answer(&Value::Object(answer));
        }
        Form::Text => {
            report::print(&proof.findings, &snapshot);
            if status == Status::AtFault {
                anstream::eprintln!(
                    "The curriculum has errors; this is the answer for what stands."
                );
            }
            anstream::print!("{}", text(&proof, &resolved, route.as_ref()));
        }
    }
    Ok(status)
}

/// The goal of a skill, or a movement at its standard. Held-back movements are not answered for.
pub(super) fn goal(curriculum: &Curriculum, id: &str) -> Option<Leaf> {
    let owner = curriculum.find(id).or_else(|| {
        curriculum
            .old_ids()
            .find(|(old, _)| *old == id)
            .map(|(_, o)| o)
    })?;
    match owner {
        Owner::Skill(ix) => Some(curriculum.skill(ix).goal.clone()),
        Owner::Movement(ix) if !curriculum.movement(ix).held_back() => {
            let movement = curriculum.movement(ix);
            Some(Leaf {
                movement: ix,
                target: movement.standard(),
                own_standard: true,
                span: movement.spans().id,
            })
        }
        _ => None,
    }
}

fn ids(curriculum: &Curriculum, list: &[MovementIx]) -> Vec<String> {
    list.iter()
        .map(|ix| curriculum.movement(*ix).id().to_string())
        .collect()
}

fn answer(proof: &Proofread, resolved: &Chain, route: Option<&Route>) -> Map<String, Value> {
    let curriculum = &proof.curriculum;
    let id = |ix: MovementIx| curriculum.movement(ix).id().as_str();
    let movements: Vec<Value> = resolved
        .movements
        .iter()
        .map(|l| json!({ "id": id(l.movement), "stage": l.stage, "essential": l.essential }))
        .collect();
    let mut ladders = Map::new();
    let found = chain::chain_ladders(curriculum, resolved);
    for link in &resolved.movements {
        let steps = found.get(&link.movement).map_or(&[][..], Vec::as_slice);
        let steps: Vec<Value> = steps
            .iter()
            .filter(|s| !s.opens.is_empty())
            .map(|s| json!({ "target": s.target.to_string(), "opens": ids(curriculum, &s.opens) }))
            .collect();
        if !steps.is_empty() {
            ladders.insert(id(link.movement).to_string(), Value::Array(steps));
        }
    }
    let route = route.map(|r| route_json(curriculum, r));
    let mut out = Map::new();
    out.insert("goal".into(), json!(id(resolved.goal.movement)));
    out.insert("target".into(), json!(resolved.goal.target.to_string()));
    out.insert("movements".into(), Value::Array(movements));
    out.insert("ladders".into(), Value::Object(ladders));
    out.insert("route".into(), json!(route));
    out
}

/// A route as programs read it.
pub(super) fn route_json(curriculum: &Curriculum, route: &Route) -> Value {
    json!({
        "movements": ids(curriculum, &route.movements), "weeks": weeks(route.half_weeks), "exact": route.exact,
        "at_least": weeks(route.at_least_half_weeks), "guessed": route.guessed,
    })
}

/// A route as people read it: how much, then which.
pub(super) fn route_words(curriculum: &Curriculum, route: &Route) -> String {
    if route.movements.is_empty() {
        return "nothing left to own: the goal is reached".to_string();
    }
    let s = if route.movements.len() == 1 { "" } else { "s" };
    let guess = if route.guessed {
        ", some weeks guessed"
    } else {
        ""
    };
    let exact = if route.exact {
        String::new()
    } else {
        format!(
            " (perhaps not the shortest; at least {})",
            weeks(route.at_least_half_weeks)
        )
    };
    format!(
        "{} movement{s} to own, about {} week{} of training in all{guess}{exact}: {}",
        route.movements.len(),
        weeks(route.half_weeks),
        if route.half_weeks == 2 { "" } else { "s" },
        report::marked_ids(curriculum, &route.movements)
    )
}

fn weeks(half_weeks: u32) -> f64 {
    f64::from(half_weeks) / 2.0
}

fn text(proof: &Proofread, resolved: &Chain, route: Option<&Route>) -> String {
    use std::fmt::Write;
    let curriculum = &proof.curriculum;
    let units = curriculum.school().units;
    let goal = report::named(curriculum, resolved.goal.movement);
    let mut out = String::new();
    let _ = writeln!(out, "{goal}: {}", resolved.goal.target.words(units));
    if resolved.movements.is_empty() {
        out.push_str("This goal cannot be reached as the curriculum stands.\n");
        return out;
    }
    let ladders = chain::chain_ladders(curriculum, resolved);
    let mut stage = None;
    for link in &resolved.movements {
        if stage != Some(link.stage) {
            stage = Some(link.stage);
            let says = match link.stage {
                0 => "On the ground".to_string(),
                1 => "1 rung up".to_string(),
                n => format!("{n} rungs up"),
            };
            let _ = writeln!(out, "\n{says}");
        }
        let steps = ladders.get(&link.movement).map_or(&[][..], Vec::as_slice);
        out.push_str(&movement(curriculum, link, steps));
    }
    if let Some(route) = route {
        let _ = writeln!(
            out,
            "\nShortest route for a newcomer: {}.",
            route_words(curriculum, route)
        );
        out.push_str(
            "  An order to work through, not a forecast: several are trained side by side.\n",
        );
    }
    out
}

/// A movement of a chain, and what its amounts open.
fn movement(curriculum: &Curriculum, link: &Link, steps: &[Step]) -> String {
    let units = curriculum.school().units;
    let movement = curriculum.movement(link.movement);
    let part = match link.essential {
        true => "essential",
        false => "an alternative",
    };
    let mut out = format!(
        "  {} ({}): {}, {part}\n",
        report::named(curriculum, link.movement),
        movement.id(),
        movement.standard().words(units)
    );
    for step in steps.iter().filter(|s| !s.opens.is_empty()) {
        let opens = report::marked_ids(curriculum, &step.opens);
        let target = step.target.words(units);
        out.push_str(&format!("      {target} opens {opens}\n"));
    }
    out
}
