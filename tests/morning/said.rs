//! What a coach would say aloud, and no more: signs of pain before all else, nothing that bears on a part that stops, numbers that
//! nobody measured said as such, spans with alike ends once, days off, failure, pauses that take nothing away, one sentence for
//! what is alike.

use super::{assess, root, text};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::PathBuf;
use std::process::Command;
use tempfile::TempDir;

/// Tested well on the way to the muscle-up.
const STRONG: &str = "bodyweight: 70 kg
goal: strict-ring-muscle-up
tested:
  - { movement: overhead-reach-on-back, got: 3 cm, on: 2026-11-08 }
  - { movement: shoulder-extension-reach, got: 50 deg, on: 2026-11-08 }
  - { movement: pull-up, got: 7 reps, on: 2026-11-08 }
  - { movement: bar-dip, got: 9 reps, on: 2026-11-08 }
  - { movement: push-up, got: 22 reps, on: 2026-11-08 }
  - { movement: ring-row, got: 12 reps, on: 2026-11-08 }
  - { movement: squat, got: 25 reps, on: 2026-11-08 }
  - { movement: dead-hang, got: 60 s, on: 2026-11-08 }
";

fn client(folder: &TempDir, name: &str, more: &str) -> PathBuf {
    let path = folder.path().join(format!("{name}.yaml"));
    fs::write(&path, format!("results: 1\nname: {name}\n{more}")).expect("written");
    path
}

fn folder() -> TempDir {
    tempfile::tempdir().expect("a folder")
}

fn said(files: &[PathBuf], more: &[&str]) -> String {
    let out = assess(more, files);
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    text(&out.stdout)
}

fn dose(file: &PathBuf, more: &[&str]) -> String {
    let out = Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(["dose", "--today", super::DAY, "--from"])
        .arg(root())
        .args(more)
        .arg(file)
        .output()
        .expect("it runs");
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    text(&out.stdout)
}

/// A clinician comes first with any of the four signs; common practice of musculoskeletal screening, no source.
#[test]
fn signs_are_named_and_come_before_all_else() {
    let folder = folder();
    for (sign, words) in [
        ("sharp", "sharp"),
        ("night", "wakes at night"),
        ("numb", "numb or tingling"),
        ("giving-way", "gives way"),
    ] {
        let pain =
            format!("pain: [ {{ part: shoulder, score: 1, on: 2026-11-20, signs: [{sign}] }} ]\n");
        let file = client(&folder, "Bo", &(pain + STRONG));
        let expected = format!(
            "shoulder hurts 1 of 10 (2026-11-20), {words}. Ask a clinician before you train the shoulder again"
        );
        let (assessed, dosed) = (said(std::slice::from_ref(&file), &[]), dose(&file, &[]));
        let first = |text: &str| text.lines().next().unwrap_or_default().to_string();
        assert!(
            first(&assessed).starts_with(&format!("Bo  {expected}")),
            "{assessed}"
        );
        assert!(
            first(&dosed).starts_with(&format!("Bo: {expected}")),
            "{dosed}"
        );
        assert_eq!(assessed.matches("shoulder hurts").count(), 1, "{assessed}");
    }
    let well = client(&folder, "Bo", STRONG);
    assert!(!said(std::slice::from_ref(&well), &[]).contains("clinician before you train"));
    assert!(!dose(&well, &[]).contains("clinician before you train"));
}

/// The parts of the body that each published movement bears on, from the published tables' source: the definitions themselves.
fn stressed(part: &str) -> BTreeSet<String> {
    let proof = rungbook::proof::proofread(&rungbook::io::snapshot(root()).expect("the example"));
    let c = &proof.curriculum;
    let part = c
        .movements()
        .flat_map(|(_, m)| m.stresses().iter().map(|s| s.part))
        .find(|p| rungbook::curriculum::words::Word::word(*p) == part)
        .expect("some movement bears on it");
    c.movements()
        .filter(|(_, m)| m.stresses_part(part))
        .map(|(_, m)| m.id().to_string())
        .collect()
}

/// For every part of the body, with every client of the tests of training: what is next, who works together and what to test.
#[test]
fn nothing_is_proposed_that_bears_on_a_part_that_stops() {
    let (folder, clients) = (folder(), root().join("tests/training/clients"));
    let mut proposed = 0;
    for part in ["lower-back", "shoulder", "knee", "wrist", "elbow", "hip"] {
        let bears = stressed(part);
        let sub = folder.path().join(part);
        fs::create_dir(&sub).expect("made");
        for entry in fs::read_dir(&clients).expect("clients").flatten() {
            let text = fs::read_to_string(entry.path()).expect("read");
            let kept: Vec<&str> = text.lines().filter(|l| !l.starts_with("pain:")).collect();
            let pain = format!(
                "\npain: [ {{ part: {part}, score: 2, on: 2026-12-20, signs: [numb] }} ]\n"
            );
            fs::write(sub.join(entry.file_name()), kept.join("\n") + &pain).expect("written");
        }
        let out = Command::new(env!("CARGO_BIN_EXE_rungbook"))
            .args(["assess", "--as", "json", "--today", "2026-12-23", "--from"])
            .arg(root())
            .arg(&sub)
            .output()
            .expect("it runs");
        let answer: Value = serde_json::from_slice(&out.stdout).expect("an answer");
        let spared = |at: &str, id: &Value| {
            let id = id.as_str().unwrap_or_default();
            assert!(!bears.contains(id), "{part}: {at} proposes {id}");
        };
        for person in answer["people"].as_array().expect("people") {
            if let Some(id) = person["limiter"].get("movement") {
                spared("next", id);
                proposed += 1;
            }
        }
        for test in answer["class"]["tests"].as_array().expect("tests") {
            spared("to test today", &test["movement"]);
            proposed += 1;
        }
        for group in answer["class"]["together"].as_array().expect("groups") {
            for id in group["movements"].as_array().expect("movements") {
                spared("together", id);
                proposed += 1;
            }
        }
    }
    assert!(proposed > 50, "{proposed}");
}

/// Six chest-to-bar pull-ups were tested, no pull-up: what it counts as is no best set.
#[test]
fn what_nobody_measured_is_said_as_such() {
    let folder = folder();
    let file = client(
        &folder,
        "Hal",
        "bodyweight: 80 kg
goal: heavy-pull-up
tested:
  - { movement: overhead-reach-on-back, got: 3 cm, on: 2026-11-08 }
  - { movement: chest-to-bar-pull-up, got: 6 reps, on: 2026-11-10 }
  - { movement: weighted-pull-up, got: 5 reps with 15 kg, on: 2026-11-10 }
  - { movement: ring-row, got: 14 reps, on: 2026-11-10 }
",
    );
    let (assessed, dosed) = (said(std::slice::from_ref(&file), &[]), dose(&file, &[]));
    let counts = "counts as 6 reps, from Chest-to-bar pull-up [";
    assert!(assessed.contains(counts), "{assessed}");
    assert!(dosed.contains(counts), "{dosed}");
    assert!(!dosed.contains("6 reps in one set"), "{dosed}");
    assert!(dosed.contains("14 reps in one set"), "{dosed}");
}

/// Every step of her way rests; what stands in its place is work for it.
#[test]
fn what_stands_in_the_place_of_the_way_is_not_nothing() {
    let folder = folder();
    let sore = "born: 1986
bodyweight: 82 kg
goal: strict-ring-muscle-up
pain:
  - { part: shoulder, score: 5, on: 2026-11-24 }
tested:
  - { movement: dead-hang, got: 60 s, on: 2026-11-15 }
  - { movement: pull-up, got: 8 reps, on: 2026-11-15 }
  - { movement: push-up, got: 20 reps, on: 2026-11-15 }
  - { movement: bar-support-hold, got: 45 s, on: 2026-11-15 }
  - { movement: row-hip-high, got: 12 reps, on: 2026-11-15 }
";
    let dosed = dose(&client(&folder, "Una", sore), &[]);
    assert!(dosed.contains(", towards "), "{dosed}");
    assert!(
        dosed.contains("what comes nearest stands in its place"),
        "{dosed}"
    );
    assert!(!dosed.contains("Nothing on the way"), "{dosed}");
    let restrict: Vec<String> = ["inverted", "breath-holding", "supine"]
        .map(|class| format!("  - {{ class: {class}, on: 2026-10-29, by: screening }}"))
        .into();
    let strong = STRONG.replace("strict-ring-muscle-up", "level-front-lever");
    let file = client(
        &folder,
        "Ada",
        &format!("restrict:\n{}\n{strong}", restrict.join("\n")),
    );
    // A step of it that nothing bars is trained itself.
    let dosed = dose(&file, &[]);
    assert!(dosed.contains(", towards Arch hold"), "{dosed}");
    assert!(!dosed.contains("Nothing on the way"), "{dosed}");
    // What was restricted on one day for one reason is one sentence.
    let assessed = said(std::slice::from_ref(&file), &[]);
    assert_eq!(
        assessed.matches("left alone since").count(),
        1,
        "{assessed}"
    );
    assert!(
        assessed.contains("what is marked Upside down, Holding the breath, Lying on the back"),
        "{assessed}"
    );
    let all = said(&[file], &["--all"]);
    assert_eq!(all.matches("left alone since").count(), 1, "{all}");
}

#[test]
fn spans_with_alike_ends_are_said_once_and_short_ones_in_weeks() {
    let folder = folder();
    let file = client(
        &folder,
        "Ida",
        &STRONG.replace("bar-dip, got: 9", "bar-dip, got: 10"),
    );
    for text in [said(std::slice::from_ref(&file), &[]), dose(&file, &[])] {
        let words: Vec<&str> = text.split_whitespace().collect();
        for at in words.windows(3).filter(|w| w[1] == "to") {
            assert_ne!(at[0], at[2], "{text}");
        }
        assert!(
            !text.contains(" 0 to ") && !text.contains("0 months"),
            "{text}"
        );
    }
    // A plank of 59 s where 60 s are asked: a sixtieth of one to three weeks.
    let near = client(
        &folder,
        "Near",
        "goal: plank\ntested:\n  - { movement: plank, got: 59 s, on: 2026-11-20 }\n",
    );
    let assessed = said(&[near], &[]);
    assert!(assessed.contains("about 1 week."), "{assessed}");
}

#[test]
fn days_off_and_failure_are_watched() {
    let folder = folder();
    let trained = |name: &str, entries: &str| {
        let file = client(&folder, name, &format!("{STRONG}trained:\n{entries}"));
        said(&[file], &[])
    };
    let off = |on: &str| {
        trained(
            "Dana",
            &format!("  - {{ movement: pull-up, did: [4, 4, 4], in_reserve: 2, on: {on} }}\n"),
        )
    };
    assert!(off("2026-11-11").contains("nothing logged for 14 days"));
    assert!(!off("2026-11-12").contains("nothing logged"));
    let failed = |set: &str, on: &str| {
        trained(
            "Emil",
            &format!("  - {{ movement: pull-up, {set}, on: {on} }}\n"),
        )
    };
    let says = "nothing left in reserve on 2026-11-24: Pull-up [";
    assert!(failed("did: [5, 4, 3]", "2026-11-24").contains(says));
    assert!(failed("did: [5, 5, 5], in_reserve: 0", "2026-11-24").contains(says));
    for (set, on) in [
        ("did: [5, 5, 5], in_reserve: 1", "2026-11-24"),
        ("did: [5, 5, 5]", "2026-11-24"),
        ("did: [5, 4, 3]", "2026-11-23"),
    ] {
        assert!(!failed(set, on).contains("nothing left"), "{set} {on}");
    }
}

#[test]
fn a_pause_takes_nothing_away() {
    let folder = folder();
    let count = |text: &str| -> BTreeMap<&'static str, u32> {
        let word = |before: &str| {
            let (head, _) = text.split_once(before).unwrap_or_default();
            let n: String = head
                .chars()
                .rev()
                .take_while(char::is_ascii_digit)
                .collect();
            n.chars().rev().collect::<String>().parse().unwrap_or(0)
        };
        [
            ("owned", word(" of 12")),
            ("paused", word(" of them paused")),
        ]
        .into()
    };
    let free = said(&[client(&folder, "Fay", STRONG)], &[]);
    let pause = "paused: [ { part: knee, on: 2026-11-20, until: 2026-12-10, by: coach } ]\n";
    let paused = said(&[client(&folder, "Fay", &format!("{pause}{STRONG}"))], &[]);
    let (free, paused) = (count(&free), count(&paused));
    assert!(free["owned"] > 5 && free["paused"] == 0, "{free:?}");
    assert_eq!(free["owned"], paused["owned"]);
    assert!(paused["paused"] > 0, "{paused:?}");
}

/// Four of one reason: the reason once. Of more than four the others are counted.
#[test]
fn what_is_kept_aside_is_grouped_by_reason() {
    let folder = folder();
    let entries: String = ["aa", "bb", "cc", "dd", "ee", "ff"]
        .map(|id| format!("  - {{ movement: x-{id}, got: 3 reps, on: 2026-11-20 }}\n"))
        .concat();
    let assessed = said(
        &[client(&folder, "Gus", &format!("tested:\n{entries}"))],
        &[],
    );
    let why = "this curriculum has no such movement";
    assert_eq!(assessed.matches(why).count(), 1, "{assessed}");
    assert!(assessed.contains("and 3 more"), "{assessed}");
    let all = said(&[folder.path().join("Gus.yaml")], &["--all"]);
    assert_eq!(all.matches(why).count(), 1, "{all}");
    assert!(all.contains("x-ff 3 reps"), "{all}");
}

/// Held up by the arms alone, in support or drawn up to the bar, somebody is higher than they stand; a class of a fall from height
/// spares who must not fall. Common practice, no source.
#[test]
fn who_is_higher_than_standing_can_fall_from_there() {
    use rungbook::curriculum::words::{Arms, Load, Pattern, Position};
    let proof = rungbook::proof::proofread(&rungbook::io::snapshot(root()).expect("the example"));
    let book = proof.curriculum.cautions();
    let mut seen = 0;
    for (_, m) in proof.curriculum.published() {
        let alone = matches!(m.load(), Load::Body | Load::Added);
        let support = m.positions().contains(&Position::Support) && m.pattern() != Pattern::Exit;
        let drawn_up = m.pattern() == Pattern::VerticalPull && m.arms() == Some(Arms::Bent);
        if alone && (support || drawn_up) {
            seen += 1;
            let bears = m
                .cautions()
                .iter()
                .any(|c| book.class(*c).id == "fall-height");
            assert!(bears, "{}", m.id());
        }
    }
    assert!(seen > 15, "{seen}");
}

/// Once a session, above its lines, with the movements for which.
#[test]
fn who_stands_by_and_how_to_breathe_is_said_once_a_session() {
    let folder = folder();
    let file = client(
        &folder,
        "Lev",
        "bodyweight: 67 kg
goal: level-front-lever
tested:
  - { movement: overhead-reach-on-back, got: 3 cm, on: 2026-11-08 }
  - { movement: active-leg-raise, left: 75 deg, right: 74 deg, on: 2026-11-08 }
  - { movement: front-lever-tuck, got: 18 s, on: 2026-11-12 }
  - { movement: tuck-inverted-hang, got: 20 s, on: 2026-11-12 }
  - { movement: lever-shrug, got: 10 reps, on: 2026-11-12 }
  - { movement: ring-roll-out, got: 5 reps, on: 2026-11-12 }
  - { movement: pull-up, got: 9 reps, on: 2026-11-12 }
  - { movement: ring-row, got: 14 reps, on: 2026-11-12 }
",
    );
    let dosed = dose(&file, &[]);
    let breathe = "Breathe out with each effort, do not hold the breath: ";
    assert_eq!(dosed.matches(breathe).count(), 1, "{dosed}");
    assert!(dosed.lines().count() <= 25, "{dosed}");
    // Of every session of four weeks: asked for just where a movement of the class stands.
    let answer: Value = serde_json::from_str(&dose(&file, &["--as", "json"])).expect("an answer");
    let proof = rungbook::proof::proofread(&rungbook::io::snapshot(root()).expect("the example"));
    let classes: BTreeMap<String, Vec<String>> = proof
        .curriculum
        .movements()
        .map(|(_, m)| {
            let ids = m.cautions().iter();
            let ids = ids.map(|c| proof.curriculum.cautions().class(*c).id.to_string());
            (m.id().to_string(), ids.collect())
        })
        .collect();
    let mut asked = 0;
    for session in answer["sessions"].as_array().expect("sessions") {
        let has = |class: &str| {
            let lines = session["lines"].as_array().expect("lines").iter();
            lines
                .filter_map(|l| l["movement"].as_str())
                .any(|id| classes[id].iter().any(|c| c == class))
        };
        let care: Vec<&str> = session["care"]
            .as_array()
            .expect("care")
            .iter()
            .filter_map(Value::as_str)
            .collect();
        let says = |words: &str| care.iter().filter(|line| line.starts_with(words)).count();
        assert_eq!(says("Not alone"), usize::from(has("alone")), "{session}");
        assert_eq!(
            says("Breathe out"),
            usize::from(has("breath-holding")),
            "{session}"
        );
        asked += care.len();
    }
    assert!(asked > 2, "{answer}");
}
