//! Curricula to damage: a small one with every key, and random ones from the key tables.

use super::pieces::VALUES;
use rungbook::curriculum::keys::{self, Key, Shape};
use rungbook::source::{Content, SourceFile};

#[path = "../inject/fields.rs"]
mod fields;
pub use fields::{NOTES, RECORDS, filled};

/// Results files in the three forms; `~T~` as in the records.
pub const RESULTS: &[(&str, &str)] = &[
    (
        "r.yaml",
        "results: 1\nname: ~T~\nbodyweight: 72 kg\nhave: [bar, ~T~]\ntested:\n  - { movement: push-up, got: 9 reps, on: 2026-10-01 }\n  - { movement: single-leg-squat, left: 5 reps, right: 3 reps, bodyweight: 70 kg }\n  - { movement: ~T~, got: ~T~ }\ntrained:\n  - { movement: bar-dip, did: [5, 5, 5], with: 2.5 kg, in_reserve: 2, on: 2026-10-05 }\npaused:\n  - { part: shoulder, on: 2026-10-06, until: 2026-10-20, by: ~T~, because: ~T~ }\n",
    ),
    (
        "r.json",
        "{ \"results\": 1, \"name\": ~T~, \"bodyweight\": \"160 lb\", \"tested\": [ { \"movement\": \"pull-up\", \"got\": \"5 reps with 0.25 bw\", \"on\": \"2026-10-03\", \"in_reserve\": 1 } ], \"paused\": [ { \"movement\": \"dead-hang\", \"because\": ~T~ } ] }",
    ),
    (
        "r.csv",
        "name,movement,got,on,in_reserve\nAna,push-up,12 reps,2026-10-09,\nBen,plank,\"60 s\",2026-10-09,1\n\"~T~\",dead-hang,30 s,2026-10-08,\n",
    ),
];

/// Words of the interface: plain, with a placeholder, with a link, in plural forms.
pub const WORDS: (&str, &str) = (
    "content/words/en.yaml",
    "direction: ltr\nsite:\n  contact: Reach us\nshared:\n  today: Now\n  movements: { one: \"{n} way\", other: \"{n} ways\" }\n  signal_words: \"**Warning**: take care.\"\nlist:\n  comma: \"{before}; {next}\"\ngear:\n  bar: A bar\n",
);

/// Small dice; the same seed gives the same throws.
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Dice {
        Dice(seed ^ 0x9e37_79b9_7f4a_7c15)
    }

    pub fn below(&mut self, n: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) % n.max(1) as u64) as usize
    }

    fn one_in(&mut self, n: usize) -> bool {
        self.below(n) == 0
    }

    fn of<'a>(&mut self, all: &[&'a str]) -> &'a str {
        all[self.below(all.len())]
    }
}

const IDS: &[&str] = &[
    "alpha", "beta", "gamma", "delta", "epsilon", "rows", "rows-a", "rows-b", "skill-a",
];
const TEXTS: &[&str] = &[
    "Plain words",
    "'Alfa'",
    "\"Größe: 'x' #1\"",
    "'betta'",
    "\"🙂\"",
    "\"\\u202eabc\"",
    "Straße",
    "İI",
    "a",
];
const TARGETS: &[&str] = &[
    "5x5",
    "8 reps",
    "30 s",
    "10 s each side",
    "3x5 with 20 kg",
    "1 rep with 0.5 bw",
    "at most 5 cm",
    "20 deg",
    "done",
    "5 reps of 3 s",
    "20 s in 3 of 5 tries",
    "5 reps with 10 kg help",
    "3x20 s",
    "100000 reps",
    "1000 kg",
];
const POSTURES: &[&str] = &[
    "{ posture: plank }",
    "{ posture: push-up }",
    "{ posture: handstand }",
    "{ touches: hands, start: { shoulder: 90 deg } }",
    "{ touches: [hands, feet], start: { shoulder: 90 deg, hip: 180 deg }, hands_at: 30 cm }",
    "{ start: { hip: 0 deg, knee: 0 deg, elbow: 0 deg } }",
];
const AMOUNTS: &[(&str, &[&str])] = &[
    (
        "address",
        &[
            "https://a.example/",
            "http://b.example/x/y",
            "https://c.example",
        ],
    ),
    ("language", &["en", "de", "en-GB", "x"]),
    ("theme", &["chalk"]),
    ("publish_to", &["site", "../out"]),
    ("accent", &["\"#b4472b\"", "\"#fff\""]),
    (
        "results_last",
        &["12 weeks", "1 day", "3000 weeks", "90 days"],
    ),
    ("smallest_plate", &["1.25 kg", "2.5 lb", "0.001 kg"]),
    ("lighter_every", &["4 weeks", "1 week", "900 weeks"]),
    ("weeks", &["3-8", "4", "1-1000"]),
    ("file", &["line.svg", "none.svg"]),
    ("poster", &["line.svg"]),
    ("on", &["2026-01-01", "1970-01-01", "9999-12-31"]),
    ("share", &["0.15", "0", "9"]),
];

/// A value of this shape as flow YAML, now and then any value at all.
fn value(dice: &mut Dice, key: &str, shape: Shape, depth: usize) -> String {
    if key == "name" {
        return format!("\"Name {}\"", dice.below(1_000_000));
    }
    if dice.one_in(60) {
        return dice.of(VALUES).to_string();
    }
    if let Some((_, all)) = AMOUNTS.iter().find(|(name, _)| *name == key) {
        return dice.of(all).to_string();
    }
    match shape {
        _ if depth > 5 => "x".into(),
        Shape::Text => dice.of(TEXTS).into(),
        Shape::Texts => list(dice, |d| d.of(TEXTS).into()),
        Shape::Flag => dice.of(&["true", "false", "yes", "no"]).into(),
        Shape::Number => dice.of(&["1", "0", "5", "100", "0.5", "999999"]).into(),
        Shape::Id => dice.of(IDS).into(),
        Shape::Ids => list(dice, |d| format!("old-{}", d.below(9))),
        Shape::Target => dice.of(TARGETS).into(),
        Shape::Word(words) => dice.of(words).into(),
        Shape::Words(words) => list(dice, |d| d.of(words).into()),
        Shape::Record(keys) => format!("{{ {} }}", record(dice, keys, depth + 1).join(", ")),
        Shape::Records(keys) => list(dice, |d| {
            format!("{{ {} }}", record(d, keys, depth + 1).join(", "))
        }),
        Shape::Lines(keys) => list(dice, |d| match d.one_in(2) {
            true => format!("{{ {} }}", record(d, keys, depth + 1).join(", ")),
            false => d.of(TEXTS).into(),
        }),
        Shape::Named(inner) => {
            let mut names: Vec<&str> = (0..dice.below(4))
                .map(|_| dice.of(&["bar", "rings", "always", "inverted", "loaded", "alpha"]))
                .collect();
            names.sort_unstable();
            names.dedup();
            let pairs: Vec<String> = names
                .iter()
                .map(|n| format!("{n}: {}", value(dice, n, *inner, depth + 1)))
                .collect();
            format!("{{ {} }}", pairs.join(", "))
        }
        Shape::Needs => list(dice, |d| need(d, depth)),
        Shape::Stresses => dice
            .of(&[
                "[]",
                "wrist",
                "[wrist, shoulder: loaded]",
                "{ knee: light }",
                "[wrist: [x]]",
            ])
            .into(),
        Shape::Equipment => dice
            .of(&["[]", "[bar]", "[[bar, rings]]", "[bar, rings]", "bar"])
            .into(),
        Shape::Axes => dice
            .of(&[
                "{ leverage: [a, b, c] }",
                "{ leverage: [a, [b, c]], phase: [lowering, hold] }",
                "{ height: [60 cm, 30 cm] }",
            ])
            .into(),
        Shape::EasierFirst => dice.of(&["any", "all", "no", "{ leverage: any }"]).into(),
        Shape::Goal => match dice.below(3) {
            0 => format!("{{ {}: {} }}", dice.of(IDS), dice.of(TARGETS)),
            _ => dice.of(IDS).into(),
        },
        Shape::Anything => dice.of(VALUES).into(),
    }
}

fn list(dice: &mut Dice, mut one: impl FnMut(&mut Dice) -> String) -> String {
    let items: Vec<String> = (0..dice.below(4)).map(|_| one(dice)).collect();
    format!("[{}]", items.join(", "))
}

fn need(dice: &mut Dice, depth: usize) -> String {
    match dice.below(if depth > 3 { 2 } else { 5 }) {
        0 => format!("{{ {}: {} }}", dice.of(IDS), dice.of(TARGETS)),
        1 => dice.of(IDS).into(),
        2 => format!("{{ any of: {} }}", list(dice, |d| need(d, depth + 1))),
        3 => format!("{{ all of: {} }}", list(dice, |d| need(d, depth + 1))),
        _ => format!(
            "{{ at least {} of: {} }}",
            dice.below(4),
            list(dice, |d| need(d, depth + 1))
        ),
    }
}

/// `key: value` for the required keys and some of the others.
fn record(dice: &mut Dice, keys: &[Key], depth: usize) -> Vec<String> {
    let mut out = Vec::new();
    for key in keys {
        let wanted = if key.required {
            !dice.one_in(80)
        } else {
            dice.one_in(4)
        };
        if wanted {
            let value = match key.name {
                "leverage" => dice.of(POSTURES).to_string(),
                "held_back" if !dice.one_in(5) => "false".into(),
                name => value(dice, name, key.shape, depth),
            };
            out.push(format!("{}: {value}", key.name));
        }
    }
    out
}

/// A curriculum that the key tables allow, but for a few values; most of its sense is chance.
pub fn random(seed: u64) -> Vec<SourceFile> {
    let mut dice = Dice::new(seed);
    let mut files: Vec<(String, String)> = Vec::new();
    let mut add = |path: &str, lines: Vec<String>| {
        files.push((format!("content/{path}.yaml"), lines.join("\n") + "\n"))
    };
    add("school", record(&mut dice, keys::SCHOOL, 0));
    for id in &IDS[..1 + dice.below(5)] {
        let mut lines = record(&mut dice, keys::MOVEMENT, 0);
        lines.retain(|l| !l.starts_with("movement:"));
        lines.insert(0, format!("movement: {id}"));
        add(&format!("movements/{id}"), lines);
    }
    if dice.one_in(2) {
        let mut lines = record(&mut dice, &keys::family(), 0);
        lines.retain(|l| {
            !["family:", "axes:", "movements:"]
                .iter()
                .any(|k| l.starts_with(k))
        });
        lines.push("family: rows\naxes: { leverage: [a, [b, c], d] }\nmovements:".into());
        for (i, id) in ["rows-a", "rows-b", "rows-c"].iter().enumerate() {
            let own = record(&mut dice, &keys::member(), 1);
            let own: Vec<String> = own.into_iter().filter(|l| !l.starts_with("at:")).collect();
            let place = ["a", "b", "c", "d"][(i + dice.below(2)) % 4];
            lines.push(
                format!(
                    "  {id}: {{ at: {{ leverage: {place} }}, standard: 30 s, {} }}",
                    own.join(", ")
                )
                .replace(", standard: 30 s,  }", ", standard: 30 s }"),
            );
        }
        add("movements/rows", lines);
    }
    for _ in 0..dice.below(3) {
        let mut lines = record(&mut dice, keys::SKILL, 0);
        lines.retain(|l| !l.starts_with("skill:"));
        lines.insert(0, "skill: skill-a".into());
        add("skills/skill-a", lines);
    }
    if dice.one_in(3) {
        let class = record(&mut dice, keys::CAUTION, 1).join(", ");
        add(
            "cautions",
            vec![
                format!("own: {{ {class} }}"),
                format!("inverted: {{ name: {} }}", dice.of(TEXTS)),
            ],
        );
    }
    if dice.one_in(3) {
        add(
            "ledger",
            vec![
                "ledger: 1".into(),
                format!(
                    "published: [{{ {} }}]",
                    record(&mut dice, keys::LEDGER_ENTRY, 1).join(", ")
                ),
            ],
        );
    }
    for id in ["alpha", "rows", "skill-a", "pages/own", "about"] {
        if dice.one_in(3) {
            let (_, text) = NOTES[dice.below(NOTES.len())];
            let names = [
                ("movement:plank", "movement:alpha"),
                ("movement:stand", "movement:beta"),
                ("skill:upside", "skill:skill-a"),
            ];
            let text = names
                .iter()
                .fold(text.to_string(), |t, (from, to)| t.replace(from, to));
            files.push((format!("content/notes/{id}.md"), text));
        }
    }
    files.push((
        "content/pictures/line.svg".into(),
        RECORDS[10].1.to_string(),
    ));
    files.sort();
    files.dedup_by(|a, b| a.0 == b.0);
    files
        .into_iter()
        .map(|(path, text)| SourceFile {
            path,
            content: Content::Text(text),
        })
        .collect()
}
