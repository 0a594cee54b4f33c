//! On the answer a coach acts at once: how light to begin, what waits for an age, what may be trained while the way rests, until
//! when something is less and what ends that, which side, and what has to be shown or measured again.

use super::{root, text};
use serde_json::Value;
use std::process::Command;
use tempfile::TempDir;

const TODAY: &str = "2026-11-28";

pub(super) fn run(command: &str, results: &str, more: &[&str]) -> String {
    let folder = TempDir::new().expect("a folder");
    let file = folder.path().join("c.yaml");
    std::fs::write(&file, format!("results: 1\nname: Cy\n{results}")).expect("written");
    let out = Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args([command, "--today", TODAY, "--from"])
        .arg(root())
        .args(more)
        .arg(&file)
        .output()
        .expect("it runs");
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    text(&out.stdout)
}

pub(super) fn assess(results: &str) -> String {
    run("assess", results, &[])
}

pub(super) fn dose(results: &str) -> String {
    run("dose", results, &[])
}

pub(super) fn says(told: &str, parts: &[&str]) {
    for part in parts {
        assert!(told.contains(part), "{part} is missing: {told}");
    }
}

pub(super) fn says_not(told: &str, parts: &[&str]) {
    for part in parts {
        assert!(!told.contains(part), "{part}: {told}");
    }
}

/// The lines of the first session, by block, rule and movement.
pub(super) fn lines(results: &str) -> Vec<Value> {
    let answer = run("dose", results, &["--as", "json"]);
    let answer: Value = serde_json::from_str(&answer).expect("JSON");
    let lines = answer["sessions"][0]["lines"].as_array();
    lines.expect("lines").clone()
}

/// Ten pull-ups at fourteen.
const YOUNG: &str = "bodyweight: 52 kg
goal: heavy-pull-up
screened: { says: clear, on: 2026-11-20 }
tested:
  - { movement: dead-hang, got: 60 s, on: 2026-11-21 }
  - { movement: active-hang, got: 20 s, on: 2026-11-21 }
  - { movement: pull-up, got: 10 reps, on: 2026-11-21 }
  - { movement: row-hip-high, got: 15 reps, on: 2026-11-21 }
  - { movement: overhead-reach-on-back, got: 4 cm, on: 2026-11-21 }
";

/// How light is what the session asks; before 18 nothing with weight is shown.
#[test]
fn who_is_young_is_told_how_light_and_what_waits() {
    let young = format!("born: 2012\n{YOUNG}");
    let told = assess(&young);
    let first = lines(&young);
    let first = first.iter().find(|l| l["movement"] == "belt-step-down");
    let first = first.expect("a line with weight");
    let (reps, mass) = (&first["amount"], &first["with_kg"]);
    says(
        &told,
        &[
            &format!("begin with sets of {reps} reps with {mass} kg added, not as a test"),
            "Heavy pull-up [warning], shown from 18 on",
            "only with the coach present and a parent’s consent",
            "no single and no test with it before 18",
        ],
    );
    says_not(&told, &["counted as"]);
    says(
        &dose(&young),
        &["No single reps and no tests with weight until you are 18"],
    );
    // From sixteen on no coach has to stand by; without weight on the way nothing is said of it; a man is told nothing.
    let older = assess(&format!("born: 2009\n{YOUNG}"));
    says(
        &older,
        &["16 or 17 years old: any pain in a joint that still grows rests it; weight in sets"],
    );
    says_not(&older, &["coach present"]);
    let bare =
        assess(&format!("born: 2012\n{YOUNG}").replace("heavy-pull-up", "strict-ring-muscle-up"));
    says(&bare, &["13 or 14 years old: only with the coach"]);
    says_not(&bare, &["before 18", "from 18"]);
    let man = assess(&format!("born: 1990\n{YOUNG}"));
    says_not(&man, &["from 18", "years old", "begin with"]);
}

const STRONG: &str = "bodyweight: 72 kg
born: 1994
goal: heavy-pull-up
tested:
  - { movement: dead-hang, got: 50 s, on: 2026-11-18 }
  - { movement: pull-up, got: 9 reps, on: 2026-11-18 }
  - { movement: push-up, got: 20 reps, on: 2026-11-18 }
  - { movement: row-hip-high, got: 14 reps, on: 2026-11-18 }
  - { movement: row-upright, got: 20 reps, on: 2026-11-18 }
  - { movement: squat, got: 25 reps, on: 2026-11-18 }
";

/// The names that stand behind some words, up to the end of the sentence.
fn named<'t>(told: &'t str, from: &str) -> &'t str {
    let (_, rest) = told
        .split_once(from)
        .unwrap_or_else(|| panic!("{from}: {told}"));
    rest.lines().next().unwrap_or_default()
}

/// Left alone for pregnancy: what the next session trains is what a coach can do now.
#[test]
fn while_the_way_rests_what_may_be_trained_is_said() {
    let classes = [
        "fall-height",
        "inverted",
        "breath-holding",
        "supine",
        "prone",
        "loaded",
    ];
    let restrict: String = classes
        .map(|class| format!("  - {{ class: {class}, on: 2026-11-20, by: screening }}\n"))
        .concat();
    let spared = format!(
        "screened: {{ says: clear, on: 2026-11-20, until: 2026-12-31, by: midwife, was: ask, lasts: 42 }}\nrestrict:\n{restrict}{STRONG}"
    );
    let told = assess(&spared);
    says(
        &told,
        &[
            "Nothing on the way can be trained as it is: ",
            "left alone for: ",
        ],
    );
    let list = named(&told, "Meanwhile train: ");
    says(
        list,
        &[
            "Bar row, standing [caution]",
            "Push-up, hands raised [caution]",
            "Bodyweight squat [caution]",
        ],
    );
    // What stops for pain is not among it.
    let hurt = format!(
        "screened: {{ says: clear, on: 2026-11-10 }}\npain: [ {{ part: elbow, score: 7, on: 2026-11-27 }} ]\n{STRONG}"
    );
    let told = assess(&hurt);
    says(
        &told,
        &[
            "Ask a clinician before you train the elbow again",
            "Meanwhile train: Bodyweight squat",
        ],
    );
    says_not(
        named(&told, "Meanwhile train: "),
        &["Pull-up", "Bar row", "Push-up"],
    );
    // Where there is a next step, that is enough.
    let free = format!("screened: {{ says: clear, on: 2026-11-10 }}\n{STRONG}");
    says_not(&assess(&free), &["Meanwhile"]);
}

/// The elbow at 4, worse in the morning: lighter and easier, on what, and when to ask again. Fourteen days and the number are those
/// of the rule of pain.
#[test]
fn a_pain_of_four_says_what_is_less_and_when_to_ask_again() {
    let with = |pain: &str| {
        let pain = format!("screened: {{ says: clear, on: 2026-11-10 }}\npain: [ {{ {pain} }} ]\n");
        assess(&format!("{pain}{STRONG}"))
    };
    let told = with("part: elbow, score: 4, next_morning: 5, on: 2026-11-26");
    says(
        &told,
        &[
            "Nothing new on the way while this hurts: elbow. Meanwhile train: Pull-up with the feet helping [caution], ",
            "5 next morning: lighter and easier, nothing new on it, until an entry of 2 or less; ask again by 2026-12-10",
        ],
    );
    let three = with("part: elbow, score: 3, on: 2026-11-26");
    says(
        &three,
        &["no more of what bears on it until an entry of 2 or less; ask again by 2026-12-10"],
    );
    says_not(&three, &["lighter"]);
    let two = with("part: elbow, score: 2, on: 2026-11-26");
    says(&two, &["elbow hurts 2 of 10 (2026-11-26)"]);
    says_not(&two, &["until an entry", "Meanwhile"]);
}

/// A wrist that was measured in the way of before: nowhere “not known”, and no more sets than of what is unknown.
#[test]
fn what_was_measured_the_old_way_is_asked_for_again() {
    let with = |on: &str| {
        format!(
            "born: 1990\ngoal: balance-on-hands\nscreened: {{ says: clear, on: 2026-11-20 }}\ntested:
  - {{ movement: push-up, got: 15 reps, on: 2026-11-21 }}
  - {{ movement: plank, got: 75 s, on: 2026-11-21 }}
  - {{ movement: wrist-extension-reach, got: 95 deg, on: {on} }}\n"
        )
    };
    let old = with("2026-11-21");
    let told = dose(&old);
    let again = "95°, measured the old way: measure it again";
    says(
        &told,
        &[
            &format!("Kneeling wrist extension [caution], {again}; 75° is asked"),
            &format!("[range: {again}]"),
        ],
    );
    says_not(&told, &["not known"]);
    says(
        &assess(&old),
        &[
            "95° is on file, measured the old way",
            "measured the old way, measure it again: wrist",
        ],
    );
    let sets = |results: &str| {
        let all = lines(results);
        let line = all
            .iter()
            .find(|l| l["movement"] == "wrist-extension-reach");
        line.map(|l| (l["sets"].clone(), l["amount"].clone()))
    };
    assert_eq!(sets(&old), Some((2.into(), 30.into())));
    // Measured in the new way it counts; what ran out says nothing.
    let new = with("2026-11-28").replace("95 deg", "60 deg");
    says(
        &dose(&new),
        &[
            "Kneeling wrist extension [caution], 60°; 75° is asked",
            "[range: 60° so far]",
        ],
    );
    assert_eq!(
        sets(&new),
        Some((4.into(), 30.into())),
        "what holds back, once it is known"
    );
    says_not(&dose(&with("2026-07-01")), &["the old way: measure"]);
}

/// Three paused pull-ups with two in reserve were trained: the target is known, and only has to be shown.
#[test]
fn what_only_has_to_be_shown_says_so() {
    let with = |on: &str| {
        format!(
            "born: 1991\nbodyweight: 66 kg\ngoal: heavy-pull-up\nscreened: {{ says: clear, on: 2026-10-01 }}\ntested:
  - {{ movement: dead-hang, got: 60 s, on: 2026-10-20 }}
  - {{ movement: pull-up, got: 8 reps, on: 2026-10-20 }}
  - {{ movement: row-hip-high, got: 12 reps, on: 2026-10-20 }}
trained:
  - {{ movement: pull-up, did: [6, 6, 5], in_reserve: 2, on: {on} }}
  - {{ movement: paused-pull-up, did: [3, 3, 3], in_reserve: 2, on: {on} }}\n"
        )
    };
    let off = with("2026-10-29");
    says(
        &assess(&off),
        &[
            "4 seconds each has to be shown once, not as a test yet",
            "next   Two weeks of less and easier, no test: nothing logged for 30 days. Train Pull-up [warning]: 2 x 4 reps, towards Paused pull-up [warning]: ",
        ],
    );
    says(
        &dose(&off),
        &[
            "Between you and it, first: Paused pull-up [warning], 5 reps, 4 seconds each; 4 reps, 4 seconds each has to be shown once.",
        ],
    );
    says_not(&dose(&off), &["4 reps, 4 seconds each is asked"]);
    says(
        &assess(&with("2026-11-10")),
        &["next   A week of less, no test: nothing logged for 18 days. "],
    );
    says(
        &assess(&with("2026-09-30")),
        &[
            "next   Begin anew, old numbers of what was trained do not count: nothing logged for 59 days. ",
        ],
    );
}

/// The way is as long as the whole of it; of what a share of body weight comes to, the kilograms; of two sides, both.
#[test]
fn the_way_the_weight_and_the_side_are_said() {
    let begins = "born: 1997\nbodyweight: 74 kg\ngoal: strict-ring-muscle-up\nscreened: { says: clear, on: 2026-11-25 }\ntested: [ { movement: row-upright, got: 6 reps, on: 2026-11-26 } ]\n";
    for told in [assess(begins), dose(begins)] {
        let way = told
            .lines()
            .find(|l| l.contains("he whole way takes about "))
            .unwrap_or_default();
        says(way, &["Bar row, standing [caution]", "12 reps"]);
    }
    let dips = "born: 1991\nbodyweight: 80 kg\ngoal: heavy-dip\nscreened: { says: clear, on: 2026-11-01 }\ntested:
  - { movement: bar-support-hold, got: 60 s, on: 2026-11-16 }
  - { movement: shoulder-extension-reach, got: 50 deg, on: 2026-11-16 }
  - { movement: bar-dip, got: 20 reps, on: 2026-11-16 }
  - { movement: bars-belt-step-down, got: 5 reps with 10 kg, on: 2026-11-16 }
  - { movement: weighted-dip-light, got: 8 reps with 10 kg, on: 2026-11-16 }
  - { movement: weighted-dip, got: 5 reps with 22.5 kg, on: 2026-11-16 }
";
    let kilos = "1 rep with 50 % of body weight added (40 kg)";
    says(&assess(dips), &[kilos]);
    says(&dose(dips), &[kilos]);
    says_not(
        &assess(&dips.replace("bodyweight: 80 kg\n", "")),
        &["(40 kg)"],
    );
    let squat = |left: u32, right: u32| {
        format!(
            "born: 1989\nbodyweight: 77 kg\ngoal: one-leg-to-the-floor\nscreened: {{ says: clear, on: 2026-11-20 }}\ntested:
  - {{ movement: squat, got: 24 reps, on: 2026-11-22 }}
  - {{ movement: split-squat, left: {left} reps, right: {right} reps, on: 2026-11-22 }}
  - {{ movement: single-leg-balance, left: 60 s, right: 60 s, on: 2026-11-22 }}
  - {{ movement: knee-to-wall, left: 9 cm, right: 10 cm, on: 2026-11-22 }}\n"
        )
    };
    let apart = squat(11, 12);
    for told in [assess(&apart), dose(&apart)] {
        says(&told, &["left 11 reps, right 12 reps"]);
    }
    let far = assess(&squat(10, 6));
    assert_eq!(
        far.matches("left 10 reps, right 6 reps").count(),
        1,
        "{far}"
    );
    says_not(&assess(&squat(9, 9)), &["left 9"]);
}

/// To failure: what may not come again, and from which day on it may.
#[test]
fn after_failure_the_day_is_said() {
    let told = assess(&format!(
        "screened: {{ says: clear, on: 2026-11-10 }}\n{STRONG}trained: [ {{ movement: pull-up, did: [9, 6, 4], in_reserve: 0, on: 2026-11-27 }} ]\n"
    ));
    says(
        &told,
        &["nothing left in reserve on 2026-11-27: Pull-up [warning]; not again before 2026-11-29"],
    );
}

/// What was never done is not kept up, and a reason does not speak of the line it stands at.
#[test]
fn what_was_never_done_is_not_kept_up() {
    let told = dose(&format!(
        "screened: {{ says: clear, on: 2026-11-10 }}\n{STRONG}"
    ));
    let kept: Vec<&str> = told
        .lines()
        .filter(|l| l.starts_with("  kept up"))
        .collect();
    let beside: Vec<&str> = told.lines().filter(|l| l.starts_with("  beside")).collect();
    assert!(!kept.is_empty() && !beside.is_empty(), "{told}");
    assert!(kept.iter().all(|l| !l.contains("[try it: ")), "{kept:#?}");
    assert!(
        beside.iter().all(|l| l.contains("[try it: ")),
        "{beside:#?}"
    );
    // The easier rung for a sore back is easy: that is no reason for it.
    let sore = dose(&format!(
        "screened: {{ says: clear, on: 2026-11-10 }}\npain: [ {{ part: lower-back, score: 4, on: 2026-11-27 }} ]\n{STRONG}"
    ));
    for line in sore.lines().filter(|l| l.contains("Kneeling push-up")) {
        says_not(line, &["Kneeling push-up [caution] is easy"]);
    }
    assert!(sore.contains("Kneeling push-up"), "{sore}");
}

/// With a floor and nothing else, no line needs a stick, a wall or a frame: each says what else will do.
#[test]
fn who_has_a_floor_alone_is_asked_for_nothing_else() {
    let clients = [
        "born: 1988\nbodyweight: 90 kg\ngoal: balance-on-hands\nscreened: { says: light, on: 2026-11-20 }\ntrain: { a_week: 2, minutes: 30 }\ntested:
  - { movement: push-up-kneeling, got: 8 reps, on: 2026-11-21 }
  - { movement: plank, got: 30 s, on: 2026-11-21 }
",
        "born: 1985\nbodyweight: 68 kg\ngoal: one-leg-to-the-floor\nscreened: { says: clear, on: 2026-11-20 }\ntrain: { a_week: 2, minutes: 30 }\ntested:
  - { movement: squat, got: 16 reps, on: 2026-11-22 }
  - { movement: push-up-kneeling, got: 12 reps, on: 2026-11-22 }
",
    ];
    let mut seen = 0;
    for (client, have) in clients.iter().flat_map(|c| [(c, "[]"), (c, "[mat]")]) {
        let told = dose(&format!("have: {have}\n{client}"));
        // What is left out for want of equipment is named, and what the way waits for.
        let asked: Vec<&str> = told
            .lines()
            .filter(|l| !l.starts_with("  Left out") && !l.starts_with("Between you and it"))
            .collect();
        for sentence in asked.join("\n").split(['.', '\n', ';']) {
            let words = ["wall", "stick", "frame", "rail", "chair", "table", "bar "];
            if words.iter().any(|word| sentence.contains(word)) {
                let names_another =
                    sentence.contains(" or ") || sentence.contains(" if there is one");
                assert!(names_another, "{have}: {sentence}");
                seen += 1;
            }
        }
        says(&told, &["Warm-up: "]);
    }
    assert!(seen > 0, "{seen}");
}

/// The first act with who is not of age, or from 65 on, and has no health answers on file: that they are asked. Nothing is planned
/// and nothing tested before. Common practice, no source.
#[test]
fn health_answers_come_first_under_18_and_from_65() {
    const NUMBERS: &str = "goal: heavy-pull-up\ntrain: { a_week: 2 }\ntested:\n  - { movement: dead-hang, got: 60 s, on: 2026-11-21 }\n  - { movement: row-hip-high, got: 9 reps, on: 2026-11-21 }\n";
    let none = "No health answers are on file. Until they are in, there is no plan.";
    let written = "clear, light or ask, into the results file, such as: screened: { says: ask, on: 2026-11-28 }";
    let parent = "on the page “Before you start” first, together with a parent or guardian.";
    let of = |said: &str| format!("{said}{NUMBERS}");
    let json = |command: &str, said: &str| -> Value {
        serde_json::from_str(&run(command, &of(said), &["--as", "json"])).expect("JSON")
    };
    for (said, with_parent) in [
        ("born: 2012\n", true),
        ("born: 2008\n", true),
        ("born: 1960\n", false),
    ] {
        let told = assess(&of(said));
        let next = told.lines().nth(1).expect("a second line");
        assert!(
            next.trim_start().starts_with(&format!("next   {none}")),
            "{told}"
        );
        says(&told, &[none, written]);
        says_not(&told, &["Test:", "before the first set"]);
        assert_eq!(told.contains(parent), with_parent, "{told}");
        for more in [&[][..], &["--weeks"]] {
            let told = run("dose", &of(said), more);
            says(&told, &[none, written, "Not medical advice"]);
            says_not(
                &told,
                &[
                    "week 1",
                    "Goal:",
                    "Test on 2",
                    "Warm-up",
                    "before the first set",
                ],
            );
            assert_eq!(told.contains(parent), with_parent, "{told}");
            assert_eq!(told.lines().count(), 3, "{told}");
        }
        let answer = json("dose", said);
        let why = answer["refused"]["why"].as_str().expect("a reason");
        says(why, &[none, written]);
        assert_eq!(answer["sessions"], serde_json::json!([]));
        assert!(answer["limiter"].is_null() && answer["retest"].is_null());
        let person = json("assess", said)["people"][0].clone();
        assert_eq!(person["refused"]["why"], why);
        assert!(person["limiter"].is_null());
    }
    // What is written down as the sentence shows it is read, and is still no leave to train.
    let ask = "born: 2012\nscreened: { says: ask, on: 2026-11-28 }\n";
    says(&dose(&of(ask)), &["ask a clinician first"]);
    let clear = "born: 2012\nscreened: { says: clear, on: 2026-11-28 }\n";
    for said in ["born: 2007\n", "born: 1961\n", "", clear] {
        let told = dose(&of(said));
        says(&told, &["week 1"]);
        says_not(&told, &[none]);
        // Others hear of it first, and are left to answer before the first set.
        assert_eq!(
            told.contains("answer them before the first set"),
            said != clear,
            "{told}"
        );
        assert!(json("assess", said)["people"][0]["refused"].is_null());
    }
}

/// Calendar and printed plan say the same, and hold no session.
#[test]
fn files_say_that_health_answers_come_first() {
    let folder = TempDir::new().expect("a folder");
    let [calendar, page] = ["p.ics", "p.html"].map(|name| folder.path().join(name));
    let paths = [&calendar, &page].map(|path| path.to_string_lossy().into_owned());
    let more = ["--calendar", &paths[0], "--page", &paths[1]];
    run("dose", "born: 2012\ngoal: heavy-pull-up\n", &more);
    let calendar = std::fs::read_to_string(&calendar).expect("a calendar");
    let calendar = calendar.replace("\r\n ", "");
    assert_eq!(calendar.matches("BEGIN:VEVENT").count(), 1, "{calendar}");
    says(
        &calendar,
        &[
            "SUMMARY:No session yet (Cy)",
            "Until they are in\\, there is no plan.",
            "DTSTART;VALUE=DATE:20261128",
        ],
    );
    let page = std::fs::read_to_string(&page).expect("a page");
    says(
        &page,
        &[
            "Until they are in, there is no plan.",
            "with a parent or guardian",
        ],
    );
    says_not(&page, &["<section>", "☐ ", "data-movement"]);
}
