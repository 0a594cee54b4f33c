//! The coach's morning: slopes against scipy, every bound of the histories by hand, the advice in its order, nine invented clients
//! in at most five lines each, folders, broken files, order by need.

#[path = "morning/acts.rs"]
mod acts;
#[path = "morning/first.rs"]
mod first;
#[path = "morning/history.rs"]
mod history;
#[path = "morning/page.rs"]
mod page;
#[path = "morning/said.rs"]
mod said;
#[path = "morning/table.rs"]
mod table;

use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

const DAY: &str = "2026-11-25";

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn assess(args: &[&str], files: &[PathBuf]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(["assess", "--today", DAY, "--from"])
        .arg(root())
        .args(args)
        .args(files)
        .output()
        .expect("it runs")
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

fn clients() -> PathBuf {
    root().join("tests/morning")
}

/// The paragraphs of the answer on all nine: one a person, then the class, then the last line.
fn paragraphs() -> Vec<Vec<String>> {
    let out = assess(&[], &[clients()]);
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    text(&out.stdout)
        .split("\n\n")
        .map(|p| p.lines().map(str::to_string).collect())
        .collect()
}

/// What a person's lines must say, and must not.
fn check(name: &str, must: &[&str], must_not: &[&str]) {
    let all = paragraphs();
    let of = all.iter().find(|p| p[0].starts_with(name)).expect(name);
    assert!(of.len() <= 5, "{of:#?}");
    let said = of.join("\n");
    for part in must {
        assert!(said.contains(part), "{name}, {part}: {said}");
    }
    for part in must_not {
        assert!(!said.contains(part), "{name}, not {part}: {said}");
    }
}

#[test]
fn nine_people_in_at_most_five_lines_each() {
    let all = paragraphs();
    assert_eq!(all.len(), 11, "nine people, the class, the last line");
    for person in &all[..9] {
        assert!((2..=5).contains(&person.len()), "{person:#?}");
        // Whom to ask first stands before the goal.
        let asks = usize::from(person[0].contains("Ask a clinician before"));
        assert!(person[1 + asks].starts_with("  next  "), "{person:#?}");
    }
    assert!(all[10][0].contains("Not medical advice"));
}

/// Nine of ten reps hold back; the right leg is the weaker; seven pull-ups since 1 October.
#[test]
fn ana_is_told_what_holds_back_and_what_is_new() {
    check(
        "Ana",
        &[
            "Strict ring muscle-up [warning]   ",
            "tested 3 days ago",
            "next   Bar dip [warning]: 9 reps, needs 10 reps. Holds back ",
            "new    Bar dip [warning] 9 reps (was 4 reps), now owned",
            "Pull-up [warning]: no better for 7 weeks (",
            "Begin with the right, one set more of it: Standing balance on one leg (left 31 seconds, right 18 seconds).",
        ],
        &["aside"],
    );
}

#[test]
fn without_a_goal_the_nearest_is_named() {
    check(
        "Ben",
        &["no goal chosen; nearest: ", "Holds back "],
        &["new "],
    );
    check(
        "Ivo",
        &[
            "no goal chosen; nearest: ",
            "never tested",
            "next   Test ",
            "it decides ",
            "watch  no health answers on file",
        ],
        &["new "],
    );
}

/// Who is to ask first: no next, no test, nothing that opens; the numbers stay.
#[test]
fn who_is_to_ask_first_gets_nothing_to_do() {
    check(
        "Cleo",
        &[
            "ask a clinician first",
            "there is no plan and no test",
            "75 seconds (was 60 seconds)",
        ],
        &["needs", "Test ", "opens", "Holds back"],
    );
    let class = paragraphs()[9].join("\n");
    assert!(!class.contains("Cleo"), "{class}");
}

#[test]
fn pains_and_pauses_are_said_with_their_end() {
    check(
        "Dov",
        &[
            "shoulder hurts 7 of 10 (2026-11-21), 8 next morning. Ask a clinician before you train the shoulder again; it rests until an entry of 5 or less.",
            "paused since 2026-11-21 by the coach, until 2026-12-20",
            "Tuck hollow hold [caution]: 35 seconds, needs 45 seconds",
        ],
        &["3 of 10"],
    );
    check(
        "Edna",
        &[
            "left alone since 2026-09-01 by the health questions, until 2027-09-01",
            "results run out from 2026-12-03 on: ",
            "opens Sitting back and rolling out [warning]",
        ],
        &["Knee to wall (left"],
    );
}

/// Under 18 nothing with weight is a test.
#[test]
fn a_boy_is_not_tested_with_weight() {
    check(
        "Finn",
        &["Bar row with straight legs [caution]: 9 reps, needs 10 reps"],
        &["Test "],
    );
    let class = paragraphs()[9].join("\n");
    let weighted = class
        .lines()
        .filter(|l| l.contains("Finn") && l.contains("belt"));
    assert_eq!(weighted.count(), 0, "{class}");
}

#[test]
fn falling_and_training_every_day_are_seen() {
    check(
        "Gil",
        &[
            "Pull-up [warning] falls: 10 reps, then 9 reps; was 12 reps on 2026-10-01",
            "pull on 2026-11-22 and 2026-11-23, no day off between",
        ],
        &["no better for"],
    );
}

/// What is next falls, slowly or at once: it is said there, and nothing more of it is advised.
#[test]
fn next_says_that_it_falls() {
    let dir = tempfile::tempdir().expect("a folder");
    let one = |name: &str, hangs: &[(u32, &str)]| {
        let mut text = format!(
            "results: 1\nname: {name}\ngoal: dead-hang\ntested:\n  - {{ movement: overhead-reach-on-back, got: 4 cm, on: 2026-11-15 }}\n"
        );
        for (got, on) in hangs {
            text.push_str(&format!(
                "  - {{ movement: dead-hang, got: {got} s, on: {on} }}\n"
            ));
        }
        let path = dir.path().join(format!("{name}.yaml"));
        fs::write(&path, text).expect("written");
        path
    };
    let days = [
        "2026-09-20",
        "2026-10-04",
        "2026-10-18",
        "2026-11-01",
        "2026-11-15",
    ];
    let with = |got: [u32; 5]| got.into_iter().zip(days).collect::<Vec<_>>();
    let said = |path: PathBuf| {
        let out = assess(&[], &[path]);
        text(&out.stdout)
    };
    let slow = said(one("Slow", &with([29, 28, 28, 27, 27])));
    assert!(
        slow.contains("It falls: a lighter week before more of it"),
        "{slow}"
    );
    assert!(
        slow.contains("less from test to test, no better for"),
        "{slow}"
    );
    assert!(!slow.contains("more sets a week"), "{slow}");
    let fast = said(one("Fast", &with([29, 28, 28, 22, 21])));
    assert!(
        fast.contains("It falls: a lighter week")
            && fast.contains("falls: 22 seconds, then 21 seconds"),
        "{fast}"
    );
    let still = said(one("Still", &with([29, 28, 29, 28, 29])));
    assert!(
        !still.contains("falls") && still.contains("no better for"),
        "{still}"
    );
    let up = said(one("Up", &with([23, 24, 26, 27, 29])));
    assert!(
        !up.contains("falls") && !up.contains("no better for"),
        "{up}"
    );
}

/// Every entry that decides nothing is said with its reason.
#[test]
fn what_is_kept_aside_is_said() {
    check(
        "Hana",
        &[
            "out of date: Active hang [warning], Dead hang [warning]",
            "done with help where none counts: Pull-up [warning]",
            "it measures another thing than the standard: plank 12 reps (2026-11-20)",
            "this curriculum has no such movement: muscle-upp 2 reps (2026-11-20)",
            "one side only: single-leg-balance 30 s (2026-11-20)",
        ],
        &[],
    );
}

#[test]
fn the_class_says_who_works_together_and_what_to_test() {
    let class = &paragraphs()[9];
    assert_eq!(class[0], "Held back most");
    assert!(class[1].contains("2 people (Ben, Ivo)"), "{class:#?}");
    let at = |head: &str| class.iter().position(|l| l == head).expect(head);
    let (together, tests) = (at("Could work together"), at("To test today"));
    assert!(
        class[together + 1].starts_with("  Ben, Ivo: Front plank"),
        "{class:#?}"
    );
    let tests = &class[tests + 1..];
    assert!((1..=5).contains(&tests.len()), "{class:#?}");
    let count = |line: &String| -> u32 {
        let tail = line.rsplit("decides ").next().expect("a number");
        let digits = tail.split(' ').next().expect("a number");
        digits.parse().expect("a number")
    };
    let decides: Vec<u32> = tests.iter().map(count).collect();
    assert!(decides.is_sorted_by(|a, b| a >= b), "{class:#?}");
}

/// Pain comes before everything, who is to ask first next, and nothing to watch last; as given without it.
#[test]
fn by_need_the_sore_come_first() {
    let names = |args: &[&str]| -> Vec<String> {
        let out = assess(&[args, &["--as", "json"]].concat(), &[clients()]);
        let said: Value = serde_json::from_slice(&out.stdout).expect("JSON");
        let people = said["people"].as_array().expect("people");
        let name = |p: &Value| p["name"].as_str().expect("a name").to_string();
        people.iter().map(name).collect()
    };
    let given = [
        "Ana", "Ben", "Cleo", "Dov", "Edna", "Finn", "Gil", "Hana", "Ivo",
    ];
    assert_eq!(names(&[]), given);
    let by_need = names(&["--by", "need"]);
    assert_eq!(by_need[..4], ["Dov", "Cleo", "Gil", "Ana"]);
    assert_eq!(
        by_need[6..],
        ["Ben", "Finn", "Ivo"],
        "as given where nobody is worse"
    );
}

/// Every movement with `--all`, as before.
#[test]
fn all_prints_every_movement() {
    let out = assess(&["--all"], &[clients().join("1-ana.yaml")]);
    let said = text(&out.stdout);
    assert!(said.contains("Ana, 2026-11-25: "), "{said}");
    assert!(said.lines().count() > 100, "{}", said.lines().count());
    let short = text(&assess(&[], &[clients().join("1-ana.yaml")]).stdout);
    assert!(short.lines().count() <= 7, "{short}");
}

#[test]
fn programs_get_the_same_under_their_keys() {
    let out = assess(&["--as", "json"], &[clients()]);
    let said: Value = serde_json::from_slice(&out.stdout).expect("JSON");
    let person = |name: &str| -> &Value {
        let mut people = said["people"].as_array().expect("people").iter();
        people.find(|p| p["name"] == name).expect(name)
    };
    let ana = person("Ana");
    assert_eq!(ana["goal"]["skill"], "strict-ring-muscle-up");
    assert_eq!(ana["limiter"]["movement"], "bar-dip");
    assert_eq!(ana["limiter"]["got"], "9 reps");
    assert_eq!(ana["new"][0]["was"], "4 reps");
    let pull = &ana["history"]["pull-up"];
    assert_eq!(pull["plateau"]["weeks"], 7);
    // 7, 7, 6, 7 reps on days 0, 19, 33, 52: six pairs, of which three are level.
    assert_eq!(pull["trend"]["per_week"], 0.0);
    assert_eq!(pull["trend"]["unit"], "reps");
    assert!(ana["history"]["dead-hang"]["trend"].is_null());
    let cleo = person("Cleo");
    assert!(cleo["limiter"].is_null(), "{}", cleo["limiter"]);
    let kinds: Vec<&str> = person("Gil")["watch"]
        .as_array()
        .expect("a list")
        .iter()
        .map(|w| w["kind"].as_str().expect("a kind"))
        .collect();
    assert_eq!(kinds, ["unanswered", "falling", "no_day_off"]);
    assert_eq!(person("Hana")["aside"].as_array().expect("a list").len(), 3);
    for key in ["held_back", "together", "tests"] {
        assert!(said["class"][key].is_array(), "{key}");
    }
    assert_eq!(
        said["class"]["together"][0]["people"],
        serde_json::json!(["Ben", "Ivo"])
    );
}

/// A folder stands for the results files in it; what is broken is a finding, and the others are answered.
#[test]
fn a_folder_with_broken_files_is_answered() {
    let folder = tempfile::tempdir().expect("a folder");
    let write = |name: &str, bytes: &[u8]| fs::write(folder.path().join(name), bytes).expect(name);
    let ana = fs::read(clients().join("1-ana.yaml")).expect("Ana");
    write("ana.yaml", &ana);
    write("b.yaml", b"results: [1\n");
    write("c.json", b"{\"results\": 1, \"name\": \"Cy\"}");
    write("d.yaml", &[0xff, 0xfe, 0]);
    write("notes.txt", b"not results");
    write(".hidden.yaml", b"results: [");
    fs::create_dir(folder.path().join("old.yaml")).expect("a folder");
    let of = |paths: &[PathBuf]| {
        let out = assess(&["--as", "json"], paths);
        let said: Value = serde_json::from_slice(&out.stdout).expect("JSON");
        (out.status.code(), said)
    };
    let (code, said) = of(&[folder.path().to_path_buf()]);
    assert_eq!(code, Some(1));
    let names: Vec<&Value> = said["people"]
        .as_array()
        .expect("people")
        .iter()
        .map(|p| &p["name"])
        .collect();
    assert_eq!(names, ["Ana", "Cy"]);
    let about: Vec<&str> = said["findings"]
        .as_array()
        .expect("findings")
        .iter()
        .filter_map(|f| f["file"].as_str())
        .filter_map(|f| f.rsplit('/').next())
        .collect();
    assert!(
        about.contains(&"b.yaml") && about.contains(&"d.yaml"),
        "{about:?}"
    );
    assert!(
        !about.contains(&"notes.txt") && !about.contains(&".hidden.yaml"),
        "{about:?}"
    );
    // A name mistyped among others is a finding; alone it is the disk's fault.
    let missing = folder.path().join("nobody.yaml");
    let (code, said) = of(&[missing.clone(), folder.path().join("ana.yaml")]);
    assert_eq!(
        (code, said["people"].as_array().map(Vec::len)),
        (Some(1), Some(1))
    );
    assert_eq!(assess(&[], &[missing]).status.code(), Some(2));
    let empty = tempfile::tempdir().expect("a folder");
    let out = assess(&[], &[empty.path().to_path_buf()]);
    assert_eq!(out.status.code(), Some(2));
    assert!(
        text(&out.stderr).contains("no results file is in it"),
        "{}",
        text(&out.stderr)
    );
}

/// Three hundred people at the shipped curriculum. `RUNGBOOK_MEASURE=1` says how long it took.
#[test]
fn three_hundred_people_are_answered() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut files: Vec<PathBuf> = fs::read_dir(clients())
        .expect("clients")
        .map(|e| e.expect("an entry").path())
        .filter(|p| p.extension().is_some_and(|e| e == "yaml"))
        .collect();
    files.sort();
    for i in 0..300 {
        let text = fs::read_to_string(&files[i % files.len()]).expect("a client");
        let text = match i % 50 {
            49 => "results: [1".to_string(),
            _ => text.replace("name: ", &format!("name: {i} ")),
        };
        fs::write(folder.path().join(format!("p{i:03}.yaml")), text).expect("written");
    }
    let start = std::time::Instant::now();
    let out = assess(&[], &[folder.path().to_path_buf()]);
    let took = start.elapsed();
    if std::env::var_os("RUNGBOOK_MEASURE").is_some() {
        println!("300 files in {took:?}");
    }
    let said = text(&out.stdout);
    assert_eq!(out.status.code(), Some(1));
    assert_eq!(
        said.lines()
            .filter(|l| l.contains(" of 120 owned") || l.contains(" owned   "))
            .count(),
        294
    );
    assert!(
        text(&out.stderr).contains("6 errors"),
        "{}",
        text(&out.stderr)
    );
}
