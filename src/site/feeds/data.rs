//! The curriculum as open JSON, and its JSON Schema.

use crate::curriculum::caution::{Class, ClassIx, Part};
use crate::curriculum::movement::Place;
use crate::curriculum::words::Word;
use crate::curriculum::{
    Leaf, Movement, MovementIx, MovementParts, Need, Owner, schema as schemas,
};
use crate::site::material::Material;
use crate::words::Words;
use serde::Serialize;
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;

/// `data/curriculum.json`.
pub fn curriculum(site: &Material<'_>) -> Vec<u8> {
    let c = site.curriculum;
    let skills: Vec<Value> = c
        .skills()
        .map(|(ix, s)| {
            let record =
                json!({ "id": s.id.as_str(), "name": s.name, "goal": demand(site, &s.goal) });
            marked(site, Owner::Skill(ix), record)
        })
        .collect();
    let families: Vec<Value> = c
        .families()
        .filter(|(_, f)| !f.held_back)
        .map(|(ix, f)| {
            let axes: Map<String, Value> = f
                .axes
                .iter()
                .map(|a| (a.name.clone(), json!(a.rungs)))
                .collect();
            let record = json!({ "id": f.id.as_str(), "name": f.name, "axes": axes });
            marked(site, Owner::Family(ix), record)
        })
        .collect();
    let cautions: Vec<Value> = c.cautions().classes().iter().map(caution).collect();
    let mut out = Map::new();
    out.insert("format".into(), json!(1));
    out.insert("school".into(), json!(c.school().name));
    if let Some(licence) = &c.school().licence {
        out.insert("licence".into(), json!(licence));
    }
    out.insert(
        "statement".into(),
        json!(Words::english().say("part.not_medical_advice")),
    );
    out.insert("skills".into(), json!(skills));
    out.insert("families".into(), json!(families));
    out.insert("cautions".into(), json!(cautions));
    let mut text = serde_json::to_vec_pretty(&Value::Object(out)).expect("a value is JSON");
    // One movement a line: a change of one shows as one line.
    text.truncate(text.len() - "\n}".len());
    text.extend_from_slice(b",\n  \"movements\": [");
    for (i, (ix, m)) in c.published().enumerate() {
        let before: &[u8] = if i == 0 { b"\n    " } else { b",\n    " };
        text.extend_from_slice(before);
        serde_json::to_writer(&mut text, &movement(site, ix, m)).expect("a record is JSON");
    }
    text.extend_from_slice(b"\n  ]\n}\n");
    text
}

/// A record with its gravest signal and its classes, where it bears any: a skill those of its goal, a family its members'.
fn marked(site: &Material<'_>, owner: Owner, mut record: Value) -> Value {
    let book = site.curriculum.cautions();
    let classes = site.curriculum.cautions_of(owner);
    let ids: Vec<&str> = classes.iter().map(|c| book.class(*c).id.as_str()).collect();
    if let Some(first) = classes.first() {
        record["signal"] = json!(book.class(*first).signal.word());
    }
    record["cautions"] = json!(ids);
    record
}

/// A class in full; `in_position` holds what is said instead in a position.
fn caution(class: &Class) -> Value {
    let mut out =
        json!({ "id": class.id.as_str(), "name": class.name, "signal": class.signal.word() });
    let mut in_position: BTreeMap<&str, Map<String, Value>> = BTreeMap::new();
    for part in Part::ALL {
        let wording = class.wording(*part);
        out[part.word()] = json!(wording.general.words);
        for (position, text) in &wording.in_position {
            let said = in_position.entry(position.word()).or_default();
            said.insert(part.word().into(), json!(text.words));
        }
    }
    if !in_position.is_empty() {
        out["in_position"] = json!(in_position);
    }
    out
}

/// A movement of the open data.
#[derive(Serialize)]
struct InData<'a> {
    id: &'a str,
    name: &'a str,
    summary: &'a str,
    pattern: &'static str,
    positions: Vec<&'static str>,
    load: &'static str,
    inverted: bool,
    loaded: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    signal: Option<&'static str>,
    cautions: Vec<&'a str>,
    standard: String,
    each_side: bool,
    stage: u32,
    needs: Tree<'a>,
    equipment: &'a [Vec<String>],
    #[serde(skip_serializing_if = "Option::is_none")]
    family: Option<&'a str>,
    also: &'a [String],
    was: Vec<&'a str>,
}

/// A demand of the open data.
#[derive(Serialize)]
struct Demand<'a> {
    movement: &'a str,
    target: String,
}

/// Needs of the open data.
#[derive(Serialize)]
#[serde(untagged)]
enum Tree<'a> {
    Leaf(Demand<'a>),
    All { all: Vec<Tree<'a>> },
    Any { any: Vec<Tree<'a>> },
    AtLeast { at_least: u32, of: Vec<Tree<'a>> },
}

fn movement<'a>(site: &Material<'a>, ix: MovementIx, m: &'a Movement) -> InData<'a> {
    // Taken apart without `..`: of a key that is added it is decided here whether others read it.
    let MovementParts {
        id,
        name,
        also,
        was,
        pattern,
        positions,
        load,
        equipment,
        each_side,
        summary,
        needs,
        standard,
        cautions,
        loaded,
        place,
        // What is taught stands on the pages alone.
        exit: _,
        dose: _,
        instead: _,
        says: _,
        pictures: _,
        clip: _,
        // What it says, not how it was read: `cautions` are the declared and the derived.
        declared: _,
        held_back: _,
        note: _,
        spans: _,
        faulty: _,
    } = m.parts();
    let class = |class: &ClassIx| site.curriculum.cautions().class(*class);
    let family = |p: &Place| site.curriculum.family(p.family).id.as_str();
    InData {
        id: id.as_str(),
        name,
        summary,
        pattern: pattern.word(),
        positions: positions.iter().map(|p| p.word()).collect(),
        load: load.word(),
        inverted: m.inverted(),
        loaded: *loaded,
        signal: cautions.first().map(|c| class(c).signal.word()),
        cautions: cautions.iter().map(|c| class(c).id.as_str()).collect(),
        standard: standard.to_string(),
        each_side: *each_side,
        stage: site.resolved.stages.of(ix).unwrap_or(0),
        needs: tree(site, needs),
        equipment,
        family: place.as_ref().map(family),
        also,
        was: was.iter().map(|w| w.as_str()).collect(),
    }
}

fn demand<'a>(site: &Material<'a>, leaf: &Leaf) -> Demand<'a> {
    Demand {
        movement: site.curriculum.movement(leaf.movement).id().as_str(),
        target: leaf.target.to_string(),
    }
}

fn tree<'a>(site: &Material<'a>, need: &Need<Leaf>) -> Tree<'a> {
    let parts = |parts: &[Need<Leaf>]| parts.iter().map(|p| tree(site, p)).collect();
    match need {
        Need::Leaf(l) => Tree::Leaf(demand(site, l)),
        Need::All(p) => Tree::All { all: parts(p) },
        Need::Any(p) => Tree::Any { any: parts(p) },
        Need::AtLeast(k, p) => Tree::AtLeast {
            at_least: *k,
            of: parts(p),
        },
    }
}

/// `data/curriculum.schema.json`.
pub fn schema() -> Vec<u8> {
    let schema = schemas::schema("data").expect("the data has a schema");
    (serde_json::to_string_pretty(&schema).expect("a value is JSON") + "\n").into_bytes()
}
