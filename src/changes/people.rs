//! Whom a change reaches: each person's states and plan under the last publish and under the curriculum as it stands now.
//!
//! The curriculum of the last publish is read again from the site that stands: its own definitions and its open data. The school's
//! own lines (how long results last, presumption) are those of now.

use crate::curriculum::{Curriculum, Day, MovementIx, Owner};
use crate::morning::verdict;
use crate::proof::{Proofread, proofread};
use crate::readiness::{self, State};
use crate::results::{Aside, Goal, Person};
use crate::source::{Content, Snapshot, SourceFile};
use crate::training::Roster;
use rayon::prelude::*;
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// The open data, and where the definitions stand on the site.
const DATA: &str = "data/curriculum.json";
const DEFINITIONS: &str = "data/definitions/";

/// A movement that stands otherwise for one person; `None` where it is not in the curriculum.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// Its id now, else its last one.
    pub movement: String,
    /// With its signal word.
    pub named: String,
    pub from: Option<State>,
    pub to: Option<State>,
}

impl Moved {
    pub fn loses(&self) -> bool {
        self.from == Some(State::Owned) && self.to != Some(State::Owned)
    }

    pub fn gains(&self) -> bool {
        self.to == Some(State::Owned) && self.from != Some(State::Owned)
    }
}

/// What comes next for a person, as a plan has it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ahead {
    pub goal: Option<String>,
    /// The movement that holds back, with its signal word, and its target.
    pub next: Option<(String, String)>,
}

/// What a change does to one person.
#[derive(Clone, Debug, PartialEq)]
pub struct Effect {
    pub name: String,
    pub moved: Vec<Moved>,
    /// Results that would be kept aside, and are not yet.
    pub aside: Vec<Aside>,
    /// Before and now, where they differ.
    pub plan: Option<(Ahead, Ahead)>,
}

impl Effect {
    pub fn is_nothing(&self) -> bool {
        self.moved.is_empty() && self.aside.is_empty() && self.plan.is_none()
    }
}

/// The curriculum of the last publish: of a site's files those below `data/`, and of the folder the school as it stands. `None`
/// where the site has no open data.
pub fn world_before(site: &Snapshot, now: &Snapshot, curriculum: &Curriculum) -> Option<Proofread> {
    let data: Value = serde_json::from_str(site.text(site.find(DATA)?)).ok()?;
    let mut files: Vec<SourceFile> = site
        .files()
        .filter_map(|(_, f)| {
            let below = f.path.strip_prefix(DEFINITIONS)?;
            let path = format!("content/movements/{below}");
            let content = f.content.clone();
            Some(SourceFile { path, content })
        })
        .collect();
    let mut text = |path: String, text: String| {
        let content = Content::Text(text);
        files.push(SourceFile { path, content });
    };
    let kept = |path: &str| now.find(path).map(|file| now.text(file).to_string());
    text("content/school.yaml".into(), kept("content/school.yaml")?);
    let own = kept("content/cautions.yaml").unwrap_or_default();
    text(
        "content/cautions.yaml".into(),
        with_classes(own, &data, curriculum),
    );
    for skill in list(&data["skills"]) {
        let (id, goal) = (&skill["id"], &skill["goal"]);
        let (Some(name), Some(movement)) = (id.as_str(), goal["movement"].as_str()) else {
            continue;
        };
        let record =
            json!({ "skill": id, "name": skill["name"], "goal": { movement: goal["target"] } });
        text(format!("content/skills/{name}.yaml"), record.to_string());
    }
    let defined = proofread(&Snapshot::new(files.clone())).curriculum;
    // A file of which a part is held back is not on the site: of its published part the open data tells.
    for movement in list(&data["movements"]) {
        let id = movement["id"].as_str().unwrap_or_default();
        if defined.find(id).is_none() && !id.is_empty() {
            let path = format!("content/movements/{id}.yaml");
            let content = Content::Text(record(movement).to_string());
            files.push(SourceFile { path, content });
        }
    }
    Some(proofread(&Snapshot::new(files)))
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

/// The school's caution classes, and those that it had and has no more.
fn with_classes(own: String, data: &Value, now: &Curriculum) -> String {
    let book = now.cautions();
    let mut out = own;
    for class in list(&data["cautions"]) {
        let id = class["id"].as_str().unwrap_or_default();
        if book.find(id).is_some() {
            continue;
        }
        let parts = [
            "signal",
            "happens",
            "ask_first",
            "set_up",
            "bail_out",
            "stop",
        ];
        let record: serde_json::Map<String, Value> = parts
            .iter()
            .map(|p| (p.to_string(), class[*p].clone()))
            .collect();
        out.push_str(&format!("\n{id}: {}\n", Value::Object(record)));
    }
    out
}

/// A movement's record from the open data.
fn record(movement: &Value) -> Value {
    let mut out = json!({
        "movement": movement["id"], "name": movement["name"], "pattern": movement["pattern"], "position": movement["positions"],
        "load": movement["load"], "equipment": movement["equipment"], "summary": movement["summary"],
        "standard": movement["standard"], "cautions": movement["cautions"], "each_side": movement["each_side"],
    });
    let needs = &movement["needs"];
    out["needs"] = match needs["all"].as_array() {
        Some(all) => all.iter().map(need).collect(),
        None => json!([need(needs)]),
    };
    out
}

/// Needs as a definition writes them.
fn need(tree: &Value) -> Value {
    let parts = |key: &str| list(&tree[key]).iter().map(need).collect::<Vec<_>>();
    if tree["all"].is_array() {
        return json!({ "all of": parts("all") });
    }
    if tree["any"].is_array() {
        return json!({ "any of": parts("any") });
    }
    if let Some(k) = tree["at_least"].as_u64() {
        return json!({ format!("at least {k} of"): parts("of") });
    }
    let movement = tree["movement"].as_str().unwrap_or_default();
    json!({ movement: tree["target"] })
}

/// What becomes of each person: the same people, read against both curricula. Who is not reached by the change is left out.
///
/// # Complexity
/// Two assessments and two ways to the goal for each person.
pub fn effects(
    before: (&Proofread, &[Person]),
    now: (&Proofread, &[Person]),
    today: Day,
) -> Vec<Effect> {
    let sides =
        [before, now].map(|(proof, _)| Roster::new(&proof.curriculum, &proof.resolved.stages));
    let pairs: Vec<(&Person, &Person)> = now
        .1
        .iter()
        .enumerate()
        .filter_map(|(i, person)| {
            let same = |p: &&Person| p.name == person.name;
            let there = before.1.get(i).filter(same);
            Some((there.or_else(|| before.1.iter().find(same))?, person))
        })
        .collect();
    let all: Vec<Effect> = pairs
        .into_par_iter()
        .map(|(then, person)| {
            let (a, b) = (
                Side::of(&sides[0], then, today),
                Side::of(&sides[1], person, today),
            );
            effect(&a, &b)
        })
        .collect();
    all.into_iter().filter(|e| !e.is_nothing()).collect()
}

struct Side<'a> {
    curriculum: &'a Curriculum,
    person: &'a Person,
    states: Vec<(MovementIx, State)>,
    ahead: Ahead,
    /// The ids of what is ahead, to compare.
    ids: (Option<String>, Option<(String, String)>),
}

impl<'a> Side<'a> {
    fn of(roster: &Roster<'a>, person: &'a Person, today: Day) -> Side<'a> {
        let curriculum = roster.curriculum;
        let readiness = readiness::assess(curriculum, roster.stages, person, today);
        let v = verdict(roster, person, &readiness, None, &[], None, today);
        let target = |ix: MovementIx| {
            let gaps = v.aim.iter().flat_map(|aim| &aim.gaps);
            let gap = gaps.into_iter().find(|g| g.movement == ix);
            gap.map(|g| g.target)
                .unwrap_or(curriculum.movement(ix).standard())
        };
        let (words, units) = (curriculum.words(), curriculum.school().units);
        let owner = |goal: Goal| match goal {
            Goal::Skill(ix) => Owner::Skill(ix),
            Goal::Movement(ix) => Owner::Movement(ix),
        };
        let next = v.next_movement();
        let goal = v.goal.map(owner);
        Side {
            ids: (
                goal.map(|g| curriculum.id_of(g).to_string()),
                next.map(|ix| {
                    (
                        curriculum.movement(ix).id().to_string(),
                        target(ix).to_string(),
                    )
                }),
            ),
            ahead: Ahead {
                goal: goal.map(|g| curriculum.named(g, words)),
                next: next.map(|ix| {
                    let named = curriculum.named(Owner::Movement(ix), words);
                    (named, target(ix).say(units, words))
                }),
            },
            states: readiness.all().map(|(ix, s)| (ix, s.state)).collect(),
            curriculum,
            person,
        }
    }

    /// Who bears an id, or bore it once.
    fn stands(&self, id: &str) -> Option<Owner> {
        let old = || self.curriculum.bearer(id);
        self.curriculum.find(id).or_else(old)
    }

    fn named(&self, ix: MovementIx) -> (String, String) {
        let named = self
            .curriculum
            .named(Owner::Movement(ix), self.curriculum.words());
        (self.curriculum.movement(ix).id().to_string(), named)
    }
}

/// The movements that stand otherwise than before.
fn moved(then: &Side<'_>, now: &Side<'_>) -> Vec<Moved> {
    let mut moved = Vec::new();
    let mut seen = BTreeSet::new();
    for (ix, from) in &then.states {
        let (id, name) = then.named(*ix);
        let there = match now.stands(&id) {
            Some(Owner::Movement(now)) => Some(now),
            _ => None,
        };
        let found = there.and_then(|there| now.states.iter().find(|(ix, _)| *ix == there));
        seen.extend(found.map(|(ix, _)| *ix));
        let to = found.map(|(_, state)| *state);
        if to != Some(*from) {
            let (movement, named) = found.map_or((id, name), |(ix, _)| now.named(*ix));
            moved.push(Moved {
                movement,
                named,
                from: Some(*from),
                to,
            });
        }
    }
    // What is new is told where it is owned at once: the rest is new to everybody.
    let new = now.states.iter().filter(|(ix, _)| !seen.contains(ix));
    for (ix, state) in new.filter(|(_, state)| *state == State::Owned) {
        let (movement, named) = now.named(*ix);
        moved.push(Moved {
            movement,
            named,
            from: None,
            to: Some(*state),
        });
    }
    // What nobody of theirs had is no loss: a movement that is gone is told where it was owned or open.
    moved.retain(|m| {
        m.to.is_some() || matches!(m.from, Some(State::Owned | State::Open | State::Almost))
    });
    moved
}

fn effect(then: &Side<'_>, now: &Side<'_>) -> Effect {
    let after = now.curriculum;
    let known = |a: &&Aside| !then.person.aside.contains(a);
    let renamed = |id: &Option<String>| -> Option<String> {
        let id = id.as_ref()?;
        let owner = now.stands(id);
        Some(owner.map_or_else(|| id.clone(), |o| after.id_of(o).to_string()))
    };
    let (goal, next) = &then.ids;
    let was = (
        renamed(goal),
        next.as_ref()
            .map(|(id, t)| (renamed(&Some(id.clone())).unwrap_or_default(), t.clone())),
    );
    Effect {
        name: now.person.name.clone(),
        moved: moved(then, now),
        aside: now.person.aside.iter().filter(known).cloned().collect(),
        plan: (was != now.ids).then(|| (then.ahead.clone(), now.ahead.clone())),
    }
}
