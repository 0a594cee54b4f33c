//! A small curriculum with every kind of record and every key. Where a coach writes free text stands `~T~`.

/// Path and text. `~T~` is a YAML text; the notes hold none.
pub const RECORDS: &[(&str, &str)] = &[
    (
        "content/school.yaml",
        r##"school: ~T~
address: https://room.example/c/
language: en
units: metric
licence: ~T~
contact: https://room.example/reach
theme: chalk
publish_to: site
accent: "#b4472b"
dose: { sets: 5, reps: 5, a_week: 2, lighter_every: 4 weeks, hold: 5x10 s }
practice: before
results_last: 12 weeks
presume: true
smallest_plate: 1.25 kg
warm_up:
  always: [~T~, ~T~, { do: ~T~, stresses: [wrist: stretched], equipment: [wall] }]
  inverted: [~T~]
  own-class: [~T~]
equipment:
  wall: ~T~
  bar: ~T~
  rings: ~T~
  plates: ~T~
  tape: ~T~
leap: { share: 0.9, turning: 90, rungs: 9 }
"##,
    ),
    (
        "content/cautions.yaml",
        r##"own-class: { name: ~T~, signal: warning, happens: ~T~, ask_first: ~T~, set_up: ~T~, bail_out: ~T~, stop: ~T~ }
inverted: { name: ~T~, happens: ~T~, ask_first: ~T~, set_up: ~T~, bail_out: ~T~, stop: ~T~ }
"##,
    ),
    (
        "content/ledger.yaml",
        r##"ledger: 1
published:
  - on: 2026-01-02
    note: ~T~
    changes:
      - { movement: plank, added: true }
      - { movement: plank, standard: [~T~, ~T~] }
      - { movement: gone, removed: true }
stands:
  plank: { standard: "60 s", cautions: [own-class] }
"##,
    ),
    (
        "content/movements/plank.yaml",
        r##"movement: plank
name: ~T~
also: [~T~, ~T~]
was: [board]
pattern: core
position: prone
load: body
arms: straight
equipment: []
summary: ~T~
standard: 60 s
back_when: [~T~, ~T~]
test: { how: ~T~, counts: [~T~, ~T~], stop: [~T~], rest: ~T~ }
exit: ~T~
dose: 4x20 s
stresses: [shoulder]
cautions: [own-class]
cues: [~T~, ~T~]
faults:
  - { see: ~T~, because: ~T~, try: ~T~ }
  - see: ~T~
leverage: { posture: plank }
weeks: 2-4
pictures: [{ file: line.svg, alt: ~T~, credit: ~T~ }]
clip: { file: slow.mp4, poster: line.svg, alt: ~T~ }
sources: [~T~]
"##,
    ),
    (
        "content/movements/stand.yaml",
        r##"movement: stand
name: ~T~
pattern: balance
position: [upright, inverted]
load: body
phase: full
equipment: [[wall, bar], tape]
each_side: yes
summary: ~T~
needs:
  - plank: 30 s
  - any of: [hang, hang-long: 10 s]
  - at least 1 of: [hang, { all of: [hang-long, plank] }]
standard: 20 s in 3 of 5 tries
test: { how: ~T~ }
exit: ~T~
cues: [~T~]
faults: [{ see: ~T~ }]
leverage: { touches: hands, start: { shoulder: 180 deg, hip: 180 deg }, hands_at: 0 cm }
"##,
    ),
    (
        "content/movements/added.yaml",
        r##"movement: added
name: ~T~
pattern: vertical pull
position: hanging
load: added
equipment: [bar, plates]
summary: ~T~
needs: [hang]
standard: 5 reps with 0.25 bw
exit: ~T~
cues: [~T~]
faults: [{ see: ~T~ }]
test: { how: ~T~ }
"##,
    ),
    (
        "content/movements/hangs.yaml",
        r##"family: hangs
name: ~T~
axes: { leverage: [bent, long], phase: [lowering, hold] }
easier_first: { leverage: any, phase: any }
pattern: vertical pull
position: hanging
load: body
equipment: [bar]
summary: ~T~
exit: ~T~
cues: [~T~]
faults: [{ see: ~T~ }]
pictures: [{ file: line.svg, alt: ~T~ }]
movements:
  hang-lowering: { at: { leverage: bent, phase: lowering }, standard: 3 reps of 3 s, test: { how: ~T~ } }
  hang: { at: { leverage: bent, phase: hold }, name: ~T~, standard: 20 s, test: { how: ~T~ } }
  hang-long: { at: { leverage: long, phase: hold }, name: ~T~, standard: 20 s, test: { how: ~T~ }, was: [old-hang] }
"##,
    ),
    (
        "content/movements/later.yaml",
        "movement: later\nname: ~T~\npattern: core\nposition: supine\nload: body\nequipment: []\nsummary: ~T~\nstandard: at most 10 cm\nheld_back: true\n",
    ),
    (
        "content/skills/upside.yaml",
        "skill: upside\nname: ~T~\ngoal: stand\nsummary: ~T~\nalso: [~T~]\nwas: [up]\n",
    ),
    (
        "content/skills/heavy.yaml",
        "skill: heavy\nname: ~T~\ngoal: { added: 1 rep with 0.5 bw }\n",
    ),
    (
        "content/pictures/line.svg",
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><path d=\"M0 0h9\"/></svg>\n",
    ),
    ("content/pictures/slow.mp4", "not really a clip\n"),
];

/// Notes without free text: links, sessions, pictures, tables.
pub const NOTES: &[(&str, &str)] = &[
    (
        "content/notes/plank.md",
        "First words. See [the stand](movement:stand) and [](movement:hang), [the skill](skill:upside), [hangs](family:hangs).\n\n## A heading\n\n![A line](picture:line.svg)\n\n```session\nwarm-up: some words\nA1  hang  3x10 s  rest 2 min  2 in reserve\nA2  plank  4x20 s\n10 min  plank\n```\n\n| a | b |\n|---|---|\n| 1 | [out](https://out.example/x) |\n\n- one\n- `two`\n\n> three[^1]\n\n[^1]: Foot.\n\n```yaml\na: b\n```\n",
    ),
    ("content/notes/stand.md", "Up with [](movement:plank).\n"),
    ("content/notes/upside.md", "The way [up](movement:stand).\n"),
    (
        "content/notes/hangs.md",
        "All [hangs](movement:hang-long).\n",
    ),
    (
        "content/notes/pages/our-room.md",
        "# Our room\n\nCome to the [](page:our-room) and [](skill:heavy).\n",
    ),
];

/// A text as YAML and JSON write it between double quotes.
pub fn quoted(text: &str) -> String {
    serde_json::to_string(text).expect("a text is JSON")
}

/// The records with a text of its own in every field: `text(n)` is the n-th.
pub fn filled(
    files: &[(&str, &str)],
    mut text: impl FnMut(usize) -> String,
) -> Vec<(String, String)> {
    let mut count = 0;
    let mut fill = |old: &str| {
        let mut parts = old.split("~T~");
        let mut out = parts.next().unwrap_or_default().to_string();
        for part in parts {
            let new = text(count);
            // Within quotes stands the bare text.
            let inside = out.ends_with('"');
            out.push_str(&if inside {
                new.replace('"', "\"\"")
            } else {
                quoted(&new)
            });
            out.push_str(part);
            count += 1;
        }
        out
    };
    files
        .iter()
        .map(|(p, t)| (p.to_string(), fill(t)))
        .collect()
}
