//! A saved standing: which results a coach has seen already. What comes after it is new.

use crate::curriculum::{Curriculum, Day, MovementIx, Owner};
use crate::results::Person;
use serde_json::{Map, Value, json};
use std::collections::{HashMap, HashSet};

/// The results of one person that were seen: movement and day.
pub type Seen = HashSet<(MovementIx, Day)>;

/// By name; people of one name are taken together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Standing(HashMap<String, Seen>);

impl Standing {
    /// As a file of JSON. What is dated after `today` was not seen yet.
    pub fn text<'p>(
        people: impl Iterator<Item = &'p Person>,
        curriculum: &Curriculum,
        today: Day,
    ) -> String {
        let one = |person: &Person| {
            let mut tested: Map<String, Value> = Map::new();
            for test in person.tested.iter().filter(|t| t.on <= today) {
                let id = curriculum.movement(test.movement).id().as_str();
                let days = tested.entry(id).or_insert_with(|| json!([]));
                let day = json!(test.on.to_string());
                if let Value::Array(days) = days
                    && !days.contains(&day)
                {
                    days.push(day);
                }
            }
            json!({ "name": person.name, "tested": tested })
        };
        let people: Vec<Value> = people.map(one).collect();
        format!(
            "{:#}\n",
            json!({ "standing": 1, "on": today.to_string(), "people": people })
        )
    }

    /// Reads what [`Standing::text`] wrote; `None` for anything else. Movements that are gone are left out, renamed ones found.
    pub fn read(text: &str, curriculum: &Curriculum) -> Option<Standing> {
        let all: Value = serde_json::from_str(text).ok()?;
        (all["standing"] == 1).then_some(())?;
        let old: HashMap<&str, Owner> = curriculum.old_ids().collect();
        let movement = |id: &str| match curriculum.find(id).or_else(|| old.get(id).copied()) {
            Some(Owner::Movement(ix)) => Some(ix),
            _ => None,
        };
        let mut out = Standing::default();
        for person in all["people"].as_array()? {
            let seen = out.0.entry(person["name"].as_str()?.to_string());
            let seen = seen.or_default();
            for (id, days) in person["tested"].as_object()? {
                for day in days.as_array()? {
                    let day = Day::read(day.as_str()?)?;
                    seen.extend(movement(id).map(|ix| (ix, day)));
                }
            }
        }
        Some(out)
    }

    /// What was seen of a person; `None` for who was not there.
    pub fn of(&self, name: &str) -> Option<&Seen> {
        self.0.get(name)
    }
}
