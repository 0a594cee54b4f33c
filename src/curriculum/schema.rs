//! JSON Schemas of the file kinds, made from the key tables, for editors.

use super::caution::Signal;
use super::keys::{self, Key, Shape};
use super::words::{BodyPart, How, Word};
use crate::words::{CATEGORIES, Entry, GEAR, Words};
use serde_json::{Map, Value, json};

/// The file kinds that have a schema, with the schema's title.
pub const KINDS: &[(&str, &str)] = &[
    ("school", "school.yaml"),
    ("cautions", "cautions.yaml"),
    ("movement", "A movement"),
    ("family", "A family of movements"),
    ("skill", "A skill"),
    ("ledger", "ledger.yaml"),
    ("results", "A client's results"),
    ("words", "content/words/LANGUAGE.yaml"),
    ("data", "The published curriculum data"),
];

/// The JSON Schema (draft 2020-12) of a file kind, or `None` for an unknown one.
pub fn schema(kind: &str) -> Option<Value> {
    let title = KINDS.iter().find(|(name, _)| *name == kind)?.1;
    let mut body = match kind {
        "school" => record(keys::SCHOOL),
        "cautions" => named(record(keys::CAUTION)),
        "movement" => record(keys::MOVEMENT),
        "family" => family(),
        "skill" => record(keys::SKILL),
        "ledger" => record(keys::LEDGER),
        "results" => record(keys::RESULTS),
        "words" => words(),
        _ => data(),
    };
    let object = body.as_object_mut().expect("a schema is an object");
    let mut out = Map::new();
    out.insert(
        "$schema".into(),
        json!("https://json-schema.org/draft/2020-12/schema"),
    );
    out.insert("title".into(), json!(title));
    out.append(object);
    out.insert(
        "$defs".into(),
        json!({ "id": id(), "target": target(), "need": need(), "tree": tree() }),
    );
    Some(Value::Object(out))
}

fn record(keys: &[Key]) -> Value {
    let properties: Map<String, Value> = keys
        .iter()
        .map(|key| (key.name.to_string(), described(key)))
        .collect();
    let required: Vec<&str> = keys.iter().filter(|k| k.required).map(|k| k.name).collect();
    json!({ "type": "object", "properties": properties, "required": required, "additionalProperties": false })
}

/// Every key of a words file, with what it says in English.
fn words() -> Value {
    let section = || json!({ "type": "object", "properties": {}, "additionalProperties": false });
    let mut root = section();
    root["properties"]["direction"] = json!({ "enum": ["ltr", "rtl"] });
    for (key, entry) in Words::english().entries() {
        let mut at = &mut root;
        let (sections, last) = key.rsplit_once('.').unwrap_or(("", key));
        for name in sections.split('.') {
            let inner = &mut at["properties"][name];
            if inner.is_null() {
                *inner = section();
            }
            at = inner;
        }
        let english = entry.texts().join(" / ");
        at["properties"][last] = match entry {
            Entry::Text(_) => json!({ "type": "string", "description": english }),
            Entry::Plural(_) => json!({
                "description": english,
                "oneOf": [{ "type": "string" }, {
                    "type": "object", "required": ["other"],
                    "propertyNames": { "enum": CATEGORIES }, "additionalProperties": { "type": "string" },
                }],
            }),
        };
    }
    root["properties"][GEAR]["additionalProperties"] = json!({ "type": "string" });
    root
}

fn described(key: &Key) -> Value {
    let mut value = shape(&key.shape);
    if let Some(object) = value.as_object_mut() {
        object.insert("description".into(), json!(key.says));
    }
    value
}

fn named(of: Value) -> Value {
    json!({ "type": "object", "additionalProperties": of })
}

fn shape(shape: &Shape) -> Value {
    let one_or_many =
        |one: Value| json!({ "anyOf": [one.clone(), { "type": "array", "items": one }] });
    match shape {
        Shape::Text => json!({ "type": ["string", "number"] }),
        Shape::Texts => one_or_many(json!({ "type": ["string", "number"] })),
        Shape::Flag => json!({ "enum": [true, false, "yes", "no"] }),
        Shape::Number => json!({ "type": ["number", "string"] }),
        Shape::Id => json!({ "$ref": "#/$defs/id" }),
        Shape::Ids => one_or_many(json!({ "$ref": "#/$defs/id" })),
        Shape::Target => json!({ "$ref": "#/$defs/target" }),
        Shape::Word(words) => json!({ "enum": words }),
        Shape::Words(words) => one_or_many(json!({ "enum": words })),
        Shape::Record(keys) => record(keys),
        Shape::Records(keys) => json!({ "type": "array", "items": record(keys) }),
        Shape::Lines(keys) => {
            one_or_many(json!({ "anyOf": [{ "type": ["string", "number"] }, record(keys)] }))
        }
        Shape::Named(of) => named(self::shape(of)),
        Shape::Needs => json!({ "type": "array", "items": { "$ref": "#/$defs/need" } }),
        Shape::Stresses => one_or_many(json!({ "anyOf": [
            { "enum": BodyPart::WORDS },
            { "type": "object", "minProperties": 1, "maxProperties": 1,
              "propertyNames": { "enum": BodyPart::WORDS }, "additionalProperties": { "enum": How::WORDS } },
        ] })),
        Shape::Equipment => {
            json!({ "type": "array", "items": one_or_many(json!({ "type": "string" })) })
        }
        Shape::Axes => named(
            json!({ "type": "array", "items": one_or_many(json!({ "type": ["string", "number"] })) }),
        ),
        Shape::EasierFirst => {
            json!({ "anyOf": [{ "enum": keys::EASIER_FIRST }, named(json!({ "enum": keys::EASIER_FIRST }))] })
        }
        Shape::Goal => {
            json!({ "anyOf": [{ "$ref": "#/$defs/id" }, { "type": "object", "minProperties": 1, "maxProperties": 1 }] })
        }
        Shape::Anything => json!({}),
    }
}

fn family() -> Value {
    let mut value = record(&keys::family());
    value["properties"]["movements"] = named(record(&keys::member()));
    value
}

fn id() -> Value {
    json!({ "type": "string", "pattern": "^[a-z][a-z0-9]*(-[a-z0-9]+)*$", "maxLength": super::id::LONGEST })
}

fn target() -> Value {
    json!({ "type": ["string", "number"], "examples": ["5x5", "8 reps", "30 s", "3x20 s", "5 reps of 5 s", "20 s in 3 of 5 tries", "5 reps with 20 kg", "12 cm", "at most 5 cm", "170 deg", "done"] })
}

fn need() -> Value {
    json!({ "anyOf": [
        { "$ref": "#/$defs/id" },
        { "type": "object", "minProperties": 1, "maxProperties": 1,
          "patternProperties": {
              "^(all of|any of|at least [0-9]+ of)$": { "type": "array", "minItems": 1, "items": { "$ref": "#/$defs/need" } },
              "^[a-z][a-z0-9]*(-[a-z0-9]+)*$": { "$ref": "#/$defs/target" }
          },
          "additionalProperties": false }
    ] })
}

/// The layout of `data/curriculum.json`.
fn data() -> Value {
    let text = json!({ "type": "string" });
    let texts = json!({ "type": "array", "items": text });
    let movement = json!({ "type": "object",
        "required": ["id", "name", "pattern", "positions", "load", "loaded", "inverted", "standard", "stage", "needs", "cautions"],
        "properties": {
            "id": { "$ref": "#/$defs/id" }, "name": text, "summary": text, "pattern": text, "positions": texts, "load": text,
            "loaded": { "type": "boolean" }, "inverted": { "type": "boolean" }, "standard": text, "stage": { "type": "integer", "minimum": 0 },
            "needs": { "$ref": "#/$defs/tree" }, "signal": { "enum": Signal::WORDS }, "cautions": texts,
            "family": { "$ref": "#/$defs/id" }, "each_side": { "type": "boolean" }, "was": texts, "also": texts, "equipment": { "type": "array", "items": texts }
        }, "additionalProperties": false });
    json!({ "type": "object", "required": ["format", "school", "movements", "skills", "cautions"],
        "properties": {
            "format": { "const": 1 }, "school": text, "licence": text, "statement": text,
            "movements": { "type": "array", "items": movement },
            "skills": { "type": "array", "items": { "type": "object", "required": ["id", "name", "goal", "cautions"], "properties": { "id": { "$ref": "#/$defs/id" }, "name": text, "goal": leaf(), "signal": { "enum": Signal::WORDS }, "cautions": texts }, "additionalProperties": false } },
            "families": { "type": "array", "items": { "type": "object", "required": ["id", "name", "axes", "cautions"], "properties": { "id": { "$ref": "#/$defs/id" }, "name": text, "axes": { "type": "object" }, "signal": { "enum": Signal::WORDS }, "cautions": texts }, "additionalProperties": false } },
            "cautions": { "type": "array", "items": { "type": "object", "required": ["id", "name", "signal", "happens", "ask_first", "set_up", "bail_out", "stop"] } }
        }, "additionalProperties": false })
}

fn leaf() -> Value {
    json!({ "type": "object", "required": ["movement", "target"], "additionalProperties": false,
        "properties": { "movement": { "$ref": "#/$defs/id" }, "target": { "type": "string" } } })
}

/// A resolved requirement tree, as the data file writes it.
fn tree() -> Value {
    let parts = json!({ "type": "array", "items": { "$ref": "#/$defs/tree" } });
    let joint = |required: Value, properties: Value| json!({ "type": "object", "required": required, "properties": properties, "additionalProperties": false });
    json!({ "anyOf": [
        leaf(),
        joint(json!(["all"]), json!({ "all": parts })),
        joint(json!(["any"]), json!({ "any": parts })),
        joint(json!(["at_least", "of"]), json!({ "at_least": { "type": "integer", "minimum": 1 }, "of": parts }))
    ] })
}
