//! The curriculum as open JSON, and its JSON Schema.

use super::Plan;
use crate::curriculum::words::Word;
use crate::curriculum::{Leaf, Movement, MovementIx, Need, schema as schemas};
use crate::words::Words;
use serde_json::{Map, Value, json};

/// `data/curriculum.json`.
pub fn curriculum(plan: &Plan<'_>) -> Vec<u8> {
    let c = plan.curriculum;
    let skills: Vec<Value> = c
        .skills()
        .map(|(_, s)| json!({ "id": s.id.as_str(), "name": s.name, "goal": leaf(plan, &s.goal) }))
        .collect();
    let families: Vec<Value> = c
        .families()
        .filter(|(_, f)| !f.held_back)
        .map(|(_, f)| {
            let axes: Map<String, Value> = f
                .axes
                .iter()
                .map(|a| (a.name.clone(), json!(a.rungs)))
                .collect();
            json!({ "id": f.id.as_str(), "name": f.name, "axes": axes })
        })
        .collect();
    let cautions: Vec<Value> = c
        .cautions
        .classes()
        .iter()
        .map(|k| {
            json!({ "id": k.id, "name": k.name, "signal": k.signal.word(), "happens": k.happens, "ask_first": k.ask_first, "set_up": k.set_up, "bail_out": k.bail_out, "stop": k.stop })
        })
        .collect();
    let mut out = Map::new();
    out.insert("format".into(), json!(1));
    out.insert("school".into(), json!(c.school.name));
    if let Some(licence) = &c.school.licence {
        out.insert("licence".into(), json!(licence));
    }
    out.insert(
        "statement".into(),
        json!(Words::english().say("part.not_medical_advice")),
    );
    out.insert("skills".into(), json!(skills));
    out.insert("families".into(), json!(families));
    out.insert("cautions".into(), json!(cautions));
    let mut text = serde_json::to_string_pretty(&Value::Object(out)).expect("a value is JSON");
    // One movement a line: a change of one shows as one line.
    text.truncate(text.len() - "\n}".len());
    text.push_str(",\n  \"movements\": [");
    for (i, (ix, m)) in c.published().enumerate() {
        text.push_str(if i == 0 { "\n    " } else { ",\n    " });
        text.push_str(&movement(plan, ix, m).to_string());
    }
    text.push_str("\n  ]\n}\n");
    text.into_bytes()
}

fn movement(plan: &Plan<'_>, ix: MovementIx, m: &Movement) -> Value {
    let mut out = Map::new();
    let mut put = |key: &str, value: Value| out.insert(key.to_string(), value);
    put("id", json!(m.id.as_str()));
    put("name", json!(m.name));
    put("summary", json!(m.summary));
    put("pattern", json!(m.pattern.word()));
    put(
        "positions",
        json!(m.positions.iter().map(|p| p.word()).collect::<Vec<_>>()),
    );
    put("load", json!(m.load.word()));
    put("inverted", json!(m.inverted()));
    put("loaded", json!(m.loaded));
    if let Some(class) = m.cautions.first() {
        put(
            "signal",
            json!(plan.curriculum.cautions.class(*class).signal.word()),
        );
    }
    put(
        "cautions",
        json!(
            m.cautions
                .iter()
                .map(|c| plan.curriculum.cautions.class(*c).id.as_str())
                .collect::<Vec<_>>()
        ),
    );
    put("standard", json!(m.standard.to_string()));
    put("each_side", json!(m.each_side));
    put("stage", json!(plan.stages.of(ix).unwrap_or(0)));
    put("needs", tree(plan, &m.needs));
    put("equipment", json!(m.equipment));
    if let Some(place) = &m.place {
        put(
            "family",
            json!(plan.curriculum.family(place.family).id.as_str()),
        );
    }
    put("also", json!(m.also));
    put(
        "was",
        json!(m.was.iter().map(|w| w.as_str()).collect::<Vec<_>>()),
    );
    Value::Object(out)
}

fn leaf(plan: &Plan<'_>, leaf: &Leaf) -> Value {
    json!({ "movement": plan.curriculum.movement(leaf.movement).id.as_str(), "target": leaf.target.to_string() })
}

fn tree(plan: &Plan<'_>, need: &Need<Leaf>) -> Value {
    let parts = |parts: &[Need<Leaf>]| parts.iter().map(|p| tree(plan, p)).collect::<Vec<_>>();
    match need {
        Need::Leaf(l) => leaf(plan, l),
        Need::All(p) => json!({ "all": parts(p) }),
        Need::Any(p) => json!({ "any": parts(p) }),
        Need::AtLeast(k, p) => json!({ "at_least": k, "of": parts(p) }),
    }
}

/// `data/curriculum.schema.json`.
pub fn schema() -> Vec<u8> {
    let schema = schemas::schema("data").expect("the data has a schema");
    (serde_json::to_string_pretty(&schema).expect("a value is JSON") + "\n").into_bytes()
}
