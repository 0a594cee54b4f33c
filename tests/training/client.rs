//! Random clients of any curriculum: tests, logs with steps earned and missed, time off, pain, health, equipment, time.

use super::throw::Throw;
use rungbook::curriculum::manner::{Instead, When};
use rungbook::curriculum::target::{Measure, ONE};
use rungbook::curriculum::words::{BodyPart, Phase, Word};
use rungbook::curriculum::{Curriculum, Day, Movement};
use serde_json::{Map, Value, json};

pub const TODAY: &str = "2026-12-23";

pub fn today() -> Day {
    Day::read(TODAY).expect("a day")
}

/// So many days before today.
pub fn ago(days: i64) -> String {
    today().plus(-days as i32).to_string()
}

const CLASSES: [&str; 9] = [
    "inverted",
    "loaded",
    "lowering",
    "straight-arm",
    "breath-holding",
    "shoulder-extension",
    "fall-height",
    "neck-load",
    "part-inverted",
];
const PATTERNS: [&str; 6] = [
    "vertical pull",
    "vertical push",
    "squat",
    "core",
    "balance",
    "exit",
];

/// In a hundred clients so many are aimed at a rare rule.
const AIMED: u64 = 45;

/// The results file of a random client.
pub fn results(throw: &mut Throw, c: &Curriculum) -> Value {
    let movements: Vec<&Movement> = c.published().map(|(_, m)| m).collect();
    let mut out = Map::new();
    out.insert("results".into(), json!(1));
    about(throw, c, &movements, &mut out);
    if throw.chance(50) {
        rests(throw, &movements, &mut out);
    }
    let known = throw.one(&[30, 70, 90, 100]);
    let level = throw.one(&[4, 8, 12, 20, 30]);
    let mut tested = Vec::new();
    for m in &movements {
        let times = usize::from(throw.chance(known)) + usize::from(throw.chance(8));
        for _ in 0..times {
            tested.push(test(throw, m, level));
        }
    }
    out.insert("tested".into(), tested.into());
    let log = log(throw, &movements, level);
    if !log.is_empty() {
        out.insert("trained".into(), log.into());
    }
    if throw.chance(AIMED) {
        aim(throw, c, &movements, &mut out);
    }
    // Without health answers these have no plan; sometimes they come only tomorrow. Thrown apart, so that all others stay.
    let mut apart = throw.clone();
    let old = out.get("born").and_then(Value::as_i64) < Some(1990);
    let answered = if old { 65 } else { 30 };
    if must_answer(&out) && !out.contains_key("screened") && apart.chance(answered) {
        let on = ago(apart.one(&[0, 20, 20, 20, -1]));
        out.insert("screened".into(), json!({ "says": "clear", "on": on }));
    }
    Value::Object(out)
}

/// Aims a client at a rule that chance alone seldom meets: rested, of age, its goal one movement, and of that movement what the
/// rule asks for.
fn aim(throw: &mut Throw, c: &Curriculum, movements: &[&Movement], out: &mut Map<String, Value>) {
    for key in [
        "paused", "restrict", "cleared", "pain", "have", "screened", "trained",
    ] {
        out.remove(key);
    }
    out.insert("born".into(), json!(1990));
    out.insert("train".into(), json!({ "a_week": 3, "minutes": 90 }));
    let reps = |m: &&Movement| m.standard().measure() == Measure::Reps;
    let counted: Vec<&Movement> = movements.iter().copied().filter(reps).collect();
    if counted.is_empty() {
        return;
    }
    // Single reps stand beside what builds them: plain full reps with something of their pattern below.
    let single = |m: &&Movement| {
        let leaves = m.needs().leaves();
        let mut below = leaves.iter().map(|leaf| c.movement(leaf.movement));
        m.phase() == Some(Phase::Full)
            && !m.guarded()
            && below.any(|low| low.pattern() == m.pattern())
    };
    let singles: Vec<&Movement> = counted.iter().copied().filter(single).collect();
    // What a coach names for a part, a class or equipment that a movement has, and the other has not.
    let apt = |m: &Movement, one: &Instead| {
        let other = c.movement(one.movement);
        let has = |of: &Movement| match &one.when {
            When::Part(part) => of.stresses_part(*part),
            When::Class(class) => of.cautions().contains(class),
            When::Without(word) => of.equipment().contains(&vec![word.clone()]),
        };
        has(m) && !has(other)
    };
    let named = |m: &&Movement| m.instead().iter().any(|one| apt(m, one));
    let named: Vec<&Movement> = counted.iter().copied().filter(named).collect();
    // What goes on though a part hurts: it bears on one, and is not heavy on it.
    let plain = |m: &&Movement| {
        let mut stresses = m.stresses().iter();
        stresses.any(|s| s.how.is_none()) && !m.guarded() && m.phase() != Some(Phase::Lowering)
    };
    let borne: Vec<&Movement> = counted.iter().copied().filter(plain).collect();
    let kind = throw.one(&[
        0, 0, 0, 0, 1, 2, 3, 3, 4, 5, 5, 5, 5, 6, 7, 7, 7, 8, 8, 8, 9, 9, 9, 9,
    ]);
    let from = match kind {
        0 | 1 | 7 if !singles.is_empty() => &singles,
        8 if !borne.is_empty() => &borne,
        9 if !named.is_empty() => &named,
        _ => &counted,
    };
    let m = from[throw.below(from.len())];
    let (standard, load) = (m.standard().amount() / ONE, load(throw, m));
    let mut tested: Vec<Value> = movements
        .iter()
        .filter(|other| other.id() != m.id())
        .map(|other| {
            let plenty = match other.standard().measure() {
                Measure::Done => "done".into(),
                _ => other
                    .standard()
                    .to_string()
                    .replace(" each side", "")
                    .replace("at most ", ""),
            };
            json!({ "movement": other.id().as_str(), "got": plenty, "on": ago(5) })
        })
        .collect();
    let known = |tested: &mut Vec<Value>, reps: i64| {
        let got = format!("{reps} reps{load}");
        tested.push(json!({ "movement": m.id().as_str(), "got": got, "on": ago(9) }));
    };
    let mut log = |days: &[i64], did: Value, reserve: i64| {
        let one = |day: &i64| {
            let mut of = json!({ "movement": m.id().as_str(), "did": did, "on": ago(*day), "in_reserve": reserve });
            if !load.is_empty() {
                of["with"] = json!(load.trim_start_matches(" with "));
            }
            of
        };
        let all: Vec<Value> = days.iter().map(one).collect();
        out.insert("trained".into(), all.into());
    };
    let sets = (standard / 2).max(2);
    let mut born = None;
    match kind {
        0 | 1 => known(&mut tested, throw.one(&[1, 1, 1, 2, 3])),
        2 => {
            known(&mut tested, (standard - 1).max(3));
            log(&[6, 3], json!([sets, sets, sets + 2]), 2);
        }
        3 => {
            known(&mut tested, (standard - 1).max(3));
            log(&[8, 5, 2], json!([sets, sets, sets]), 3);
        }
        4 => {
            known(&mut tested, (standard - 1).max(3));
            log(&[6, 3], json!([sets, sets, 1]), 0);
        }
        5 => born = Some(1950),
        6 => {
            // Trained lately, and owned: it goes on.
            known(&mut tested, standard + 2);
            log(&[6, 3], json!([sets, sets, sets]), 2);
        }
        7 => {
            // Something harder than what is known waits.
            let harder = |other: &Movement| other.pattern() == m.pattern() && other.id() >= m.id();
            let kept = movements.iter().filter(|other| !harder(other));
            let kept: Vec<&str> = kept.map(|other| other.id().as_str()).collect();
            tested.retain(|one| {
                one["movement"]
                    .as_str()
                    .is_some_and(|id| kept.contains(&id))
            });
            out.insert(
                "restrict".into(),
                json!([{ "class": throw.one(&CLASSES), "on": ago(20), "by": "screening" }]),
            );
        }
        9 => {
            // What rests or is missing, and what the coach names for it.
            let spare = |key: &str, of: &str| json!([{ key: of, "on": ago(4), "by": "coach" }]);
            let one = m.instead().iter().find(|one| apt(m, one));
            match one.map(|one| &one.when) {
                Some(When::Part(part)) => {
                    out.insert("paused".into(), spare("part", part.word()));
                }
                Some(When::Class(class)) => {
                    let id = c.cautions().class(*class).id.as_str();
                    out.insert("paused".into(), spare("class", id));
                }
                Some(When::Without(word)) => {
                    let words = c.school().equipment.keys();
                    let rest: Vec<&String> = words.filter(|one| *one != word).collect();
                    out.insert("have".into(), json!(rest));
                }
                None => {}
            }
        }
        _ => {
            // One short of its target, so that it has a line: what only is kept up stands off what hurts.
            known(&mut tested, (standard - 1).max(3));
            log(&[6, 3], json!([sets, sets, sets + 2]), 2);
            let mut stresses = m.stresses().iter();
            let plain = stresses.find(|s| s.how.is_none());
            let part = plain.map_or("shoulder", |s| s.part.word());
            let (score, morning) = (throw.one(&[3, 3, 4]), throw.one(&[2, 3, 5, 6]));
            out.insert(
                "pain".into(),
                json!([{ "part": part, "score": score, "next_morning": morning, "on": ago(2) }]),
            );
        }
    }
    out.insert("goal".into(), json!(m.id().as_str()));
    if let Some(born) = born {
        out.insert("born".into(), json!(born));
        let screened = json!({ "says": "clear", "on": ago(20) });
        out.insert("screened".into(), screened);
    }
    out.insert("tested".into(), tested.into());
}

/// Who has no plan before health answers are on file: by age, the birthday still to come.
fn must_answer(results: &Map<String, Value>) -> bool {
    let age = results
        .get("born")
        .and_then(Value::as_i64)
        .map(|born| 2026 - born - 1);
    age.is_some_and(|age| !(18..65).contains(&age))
}

fn about(throw: &mut Throw, c: &Curriculum, movements: &[&Movement], out: &mut Map<String, Value>) {
    if throw.chance(85) {
        out.insert(
            "bodyweight".into(),
            json!(throw.one(&["72 kg", "160 lb", "55.5 kg", "90 kg"])),
        );
    }
    if throw.chance(60) {
        let ages = [
            11, 12, 14, 15, 16, 17, 18, 19, 25, 40, 59, 60, 61, 64, 65, 66, 67, 80,
        ];
        out.insert("born".into(), json!(2026 - throw.one(&ages)));
    }
    match throw.below(10) {
        0..=5 => {
            let skills: Vec<&str> = c.skills().map(|(_, s)| s.id.as_str()).collect();
            out.insert("goal".into(), json!(throw.one(&skills)));
        }
        6 => {
            let at = throw.below(movements.len());
            out.insert("goal".into(), json!(movements[at].id().as_str()));
        }
        _ => {}
    }
    if throw.chance(70) {
        let mut train = Map::new();
        if throw.chance(70) {
            train.insert("a_week".into(), json!(throw.between(1, 6)));
        }
        if throw.chance(70) {
            train.insert(
                "minutes".into(),
                json!(throw.one(&[20, 30, 45, 60, 90, 120])),
            );
        }
        if throw.chance(40) {
            let days = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
            let mut chosen: Vec<&str> = days.into_iter().filter(|_| throw.chance(40)).collect();
            if chosen.is_empty() {
                chosen.push("sat");
            }
            train.insert("days".into(), json!(chosen));
        }
        out.insert("train".into(), train.into());
    }
    if throw.chance(20) {
        let says = throw.one(&["clear", "clear", "clear", "light", "light", "light", "ask"]);
        out.insert("screened".into(), json!({ "says": says, "on": ago(20) }));
    }
    if throw.chance(25) {
        let words = c.school().equipment.keys();
        let have: Vec<&String> = words.filter(|_| throw.chance(75)).collect();
        out.insert("have".into(), json!(have));
    }
}

fn part(throw: &mut Throw, movements: &[&Movement]) -> &'static str {
    let with: Vec<BodyPart> = movements
        .iter()
        .flat_map(|m| m.stresses().iter().map(|s| s.part))
        .collect();
    match with.is_empty() {
        true => "shoulder",
        false => throw.one(&with).word(),
    }
}

/// Pauses, restrictions, clearances and pains.
fn rests(throw: &mut Throw, movements: &[&Movement], out: &mut Map<String, Value>) {
    let what = |throw: &mut Throw, out: &mut Value| match throw.below(10) {
        0..=3 => out["part"] = json!(part(throw, movements)),
        4..=5 => out["movement"] = json!(movements[throw.below(movements.len())].id().as_str()),
        6..=8 => out["class"] = json!(throw.one(&CLASSES)),
        _ => out["pattern"] = json!(throw.one(&PATTERNS)),
    };
    let mut paused = Vec::new();
    for _ in 0..throw.one(&[0, 0, 0, 1, 2]) {
        let on = throw.between(-1, 40);
        let mut entry = json!({ "on": ago(on), "by": "client" });
        what(throw, &mut entry);
        if throw.chance(75) {
            entry["until"] = json!(ago(on - throw.between(0, 35)));
        }
        paused.push(entry);
    }
    let mut restricted = Vec::new();
    for _ in 0..throw.one(&[0, 0, 0, 1, 1]) {
        let on = throw.between(0, 40);
        let mut entry = json!({ "on": ago(on), "by": "screening" });
        what(throw, &mut entry);
        if throw.chance(40) {
            entry["until"] = json!(ago(on - throw.between(0, 60)));
        }
        restricted.push(entry);
    }
    let mut cleared = Vec::new();
    if !restricted.is_empty() && throw.chance(50) {
        let class = restricted[0]["class"].as_str().unwrap_or("inverted");
        let on = throw.one(&[0, 10, 30, 366, 367, 400]);
        let mut entry = json!({ "class": class, "on": ago(on) });
        if throw.chance(50) {
            entry["until"] = json!(ago(on - throw.between(0, 400)));
        }
        cleared.push(entry);
    }
    let mut pains = Vec::new();
    for _ in 0..throw.one(&[0, 0, 1, 1, 2]) {
        let part = part(throw, movements);
        let mut before = None;
        for _ in 0..throw.one(&[1, 1, 2, 3]) {
            let score = throw.one(&[0, 1, 2, 3, 4, 5, 5, 6, 8]);
            let thrown = throw.between(0, 24);
            // One in four is of the day of the one before.
            let day = before.filter(|_| thrown % 4 == 0).unwrap_or(thrown);
            before = Some(day);
            let mut entry = json!({ "part": part, "score": score, "on": ago(day) });
            if throw.chance(50) {
                entry["next_morning"] = json!(throw.between(0, 9));
            }
            if throw.chance(12) {
                entry["signs"] = json!([throw.one(&["sharp", "night", "numb", "giving-way"])]);
            }
            pains.push(entry);
        }
    }
    for (key, entries) in [
        ("paused", paused),
        ("restrict", restricted),
        ("cleared", cleared),
        ("pain", pains),
    ] {
        if !entries.is_empty() {
            out.insert(key.into(), entries.into());
        }
    }
}

/// The load that a target of the movement says, more or less of it, or none.
fn load(throw: &mut Throw, m: &Movement) -> String {
    let text = m.standard().to_string();
    let said = text
        .split_once(" with ")
        .map(|(_, load)| load.replace(" each side", ""));
    match said {
        Some(load) if load.contains("help") => throw
            .one(&[
                "",
                " with 10 kg help",
                " with 15 kg help",
                " with 25 kg help",
            ])
            .into(),
        Some(load) => match throw.below(5) {
            0 | 1 => format!(" with {load}"),
            2 => " with 5 kg".into(),
            3 => " with 20 kg".into(),
            _ => String::new(),
        },
        None if m.loaded() => throw.one(&["", " with 7.5 kg", " with 0.2 bw"]).into(),
        None => String::new(),
    }
}

fn amount(throw: &mut Throw, m: &Movement, level: i64) -> i64 {
    let standard = m.standard().amount() / ONE;
    match throw.below(6) {
        0 => throw.between(0, level),
        1 => standard,
        2 => throw.between(1, 3),
        _ => (standard * throw.between(2, 18) / 10).max(i64::from(throw.chance(90))),
    }
}

fn got(throw: &mut Throw, m: &Movement, level: i64, load: &str) -> String {
    let amount = amount(throw, m, level);
    let standard = m.standard().to_string();
    let each = if standard.contains(" of 5 s") {
        " of 5 s"
    } else {
        ""
    };
    let sets = throw.one(&["", "", "", "", "3x", "2x"]);
    match m.standard().measure() {
        Measure::Reps => format!("{sets}{amount} reps{each}{load}"),
        Measure::Time if standard.contains("tries") => {
            format!("{amount} s in {} of 5 tries{load}", throw.between(1, 5))
        }
        Measure::Time => format!("{sets}{amount} s{load}"),
        Measure::Length => format!("{amount} cm"),
        Measure::Angle => format!("{amount} deg"),
        Measure::Done => throw.one(&["done", "not done"]).into(),
    }
}

pub fn test(throw: &mut Throw, m: &Movement, level: i64) -> Value {
    let days = throw.one(&[0, 1, 3, 9, 20, 20, 40, 60, 80, 84, 85]);
    let mut out = json!({ "movement": m.id().as_str(), "on": ago(days) });
    let load = load(throw, m);
    if m.each_side() && throw.chance(70) {
        out["left"] = json!(got(throw, m, level, &load));
        out["right"] = json!(got(throw, m, level, &load));
    } else {
        out["got"] = json!(got(throw, m, level, &load));
    }
    if throw.chance(25) {
        out["in_reserve"] = json!(throw.between(1, 6));
    }
    out
}

/// Days ago of the sessions of one movement.
fn days(throw: &mut Throw, mode: usize) -> Vec<i64> {
    let every = throw.between(2, 5);
    let run = |from: i64, n: i64| (0..n).map(|k| from + every * k).collect::<Vec<i64>>();
    match mode {
        // Trained until lately; one of them for months.
        0 => run(throw.between(0, 3), throw.between(1, 7)),
        1 => run(throw.between(1, 3), throw.between(10, 24)),
        // Time off, some of it ended since.
        2 => run(throw.between(14, 27), throw.between(2, 6)),
        3 => run(throw.between(28, 55), throw.between(2, 6)),
        4 => run(throw.between(56, 80), throw.between(2, 6)),
        _ => {
            let back = throw.between(1, 10);
            let mut out = run(back, 1 + back / 4);
            out.retain(|d| *d <= back);
            let off = throw.one(&[14, 20, 27, 28, 40, 55, 56, 70]);
            out.extend(run(back + off, 4));
            out
        }
    }
}

fn log(throw: &mut Throw, movements: &[&Movement], level: i64) -> Vec<Value> {
    let mode = throw.below(8);
    if mode > 5 {
        return Vec::new();
    }
    let share = throw.one(&[20, 50, 80]);
    let mut out = Vec::new();
    for m in movements {
        let counted = matches!(m.standard().measure(), Measure::Reps | Measure::Time);
        if !counted || !throw.chance(share) {
            continue;
        }
        let own = if throw.chance(80) {
            mode
        } else {
            throw.below(6)
        };
        let load = load(throw, m);
        let first = (amount(throw, m, level) * throw.between(5, 10) / 10).max(1);
        let steady = throw.chance(70);
        let reserve = throw.one(&[None, None, Some(0), Some(2), Some(3), Some(6)]);
        let over = throw.one(&[0, 0, 2, 3, -1, -2]);
        for day in days(throw, own) {
            let first = if steady {
                first
            } else {
                (first + throw.between(-1, 1)).max(1)
            };
            let sets = throw.between(1, 5) as usize;
            let mut did = vec![first; sets];
            did[sets - 1] = (first + over).max(0);
            let mut entry = json!({ "movement": m.id().as_str(), "did": did, "on": ago(day) });
            if !load.is_empty() {
                entry["with"] = json!(load.trim_start_matches(" with "));
            }
            if let Some(reserve) = reserve {
                entry["in_reserve"] = json!(reserve);
            }
            out.push(entry);
        }
    }
    out
}
