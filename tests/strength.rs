//! The one-rep maximum against printed formulas, the load of a week, and the calendar read by a library.

use rungbook::curriculum::{Curriculum, Day};
use rungbook::proof::{Proofread, proofread};
use rungbook::results::{self, Person};
use rungbook::source::Snapshot;
use rungbook::strength;
use rungbook::training::{self, Roster, Say};
use serde_json::{Value, json};
use std::path::Path;
use std::process::Command;

const TODAY: &str = "2026-11-25";

fn today() -> Day {
    Day::read(TODAY).expect("a day")
}

fn shipped() -> Proofread {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    proofread(&rungbook::io::snapshot(root).expect("the shipped curriculum"))
}

fn person(curriculum: &Curriculum, results: &Value) -> Person {
    let text = results.to_string();
    let files = Snapshot::of_texts([("r.json", text.as_str())]);
    let (mut people, found) = results::read(&files, curriculum, today());
    assert!(
        !found.has_errors(),
        "{:?}",
        found.iter().map(|f| &f.message).collect::<Vec<_>>()
    );
    people.remove(0)
}

/// A curriculum of three push-ups on a ladder, and a hang.
fn small() -> Proofread {
    let movement = |id: &str, more: &str| {
        (
            format!("content/movements/{id}.yaml"),
            format!(
                "movement: {id}\nname: {id}\nposition: prone\nload: body\nequipment: []\nsummary: S.\n{more}"
            ),
        )
    };
    let files = [
        (
            "content/school.yaml".to_string(),
            "school: T\naddress: https://test.example/\nlanguage: en\nunits: metric\n".to_string(),
        ),
        movement("low", "pattern: horizontal push\nstandard: 10 reps\n"),
        movement(
            "mid",
            "pattern: horizontal push\nstandard: 10 reps\nneeds: [low]\n",
        ),
        movement(
            "top",
            "pattern: horizontal push\nstandard: 10 reps\nneeds: [mid]\n",
        ),
        movement("hang", "pattern: vertical pull\nstandard: 30 s\n"),
        movement(
            "pull",
            "pattern: vertical pull\nstandard: 8 reps\nneeds: [{ hang: 20 s }]\n",
        ),
    ];
    proofread(&Snapshot::of_texts(
        files.iter().map(|(p, t)| (p.as_str(), t.as_str())),
    ))
}

/// A pull-up moves the whole body: 70 kg and 10 kg more for 5 reps are 80 kg; Epley gives 93.3, Brzycki 90, Lander 91.0,
/// Lombardi 94.0, Mayhew 95.2, O'Conner 90, Wathan 93.3, worked by hand from the printed formulas.
#[test]
fn the_load_that_moves() {
    let proof = shipped();
    let curriculum = &proof.curriculum;
    let results = json!({ "results": 1, "bodyweight": "70 kg", "tested": [
        { "movement": "pull-up", "got": "5 reps with 10 kg" }, { "movement": "pull-up-lowering", "got": "5 reps of 8 s" }, { "movement": "push-up", "got": "20 reps" }, { "movement": "plank", "got": "60 s" }, { "movement": "pull-up-band", "got": "8 reps with 15 kg help" } ] });
    let estimates = strength::estimates(curriculum, &person(curriculum, &results), today());
    let ids: Vec<&str> = estimates
        .iter()
        .map(|e| curriculum.movement(e.movement).id().as_str())
        .collect();
    assert_eq!(ids, ["pull-up", "pull-up-band", "push-up"]);
    assert!((estimates[0].moved - 80.0).abs() < 1e-9);
    // A band of 15 kg leaves 55.
    assert!((estimates[1].moved - 55.0).abs() < 1e-9);
    let (low, high) = estimates[0].one_rep_max.expect("five reps are in range");
    assert!(
        (low - 90.0).abs() < 0.01 && (high - 95.21).abs() < 0.01,
        "{low} {high}"
    );
    assert!(estimates[2].one_rep_max.is_err(), "twenty reps are refused");
}

/// An entry's own body weight serves that entry: 60 kg and 10 kg more, beside 70 kg for all and beside none.
#[test]
fn an_entry_has_its_own_weight() {
    let proof = shipped();
    let moved = |weight: Option<&str>| {
        let tested = json!([
            { "movement": "pull-up", "got": "5 reps with 10 kg", "bodyweight": "60 kg", "on": "2026-11-20" },
            { "movement": "pull-up-band", "got": "8 reps with 15 kg help", "on": "2026-11-20" },
        ]);
        let mut results = json!({ "results": 1, "tested": tested });
        if let Some(weight) = weight {
            results["bodyweight"] = json!(weight);
        }
        let person = person(&proof.curriculum, &results);
        let all = strength::estimates(&proof.curriculum, &person, today());
        let relative = all[0].relative.expect("five reps are in range").0;
        // Brzycki, the lowest: 70 x 36 / 32 = 78.75 of 60.
        assert!((relative - 78.75 / 60.0).abs() < 0.001, "{relative}");
        all.iter().map(|e| e.moved).collect::<Vec<f64>>()
    };
    assert_eq!(moved(Some("70 kg")), [70.0, 55.0]);
    assert_eq!(moved(None), [70.0]);
}

/// Sessions that a coach logs: the week worked by hand in `strength/load.rs`, the older and the unreadable apart.
#[test]
fn a_logged_week_has_its_load() {
    let proof = small();
    let session = |effort: u32, minutes: u32, on: &str| json!({ "effort": effort, "minutes": minutes, "on": on });
    let week = [
        session(7, 60, "2026-11-19"),
        session(5, 45, "2026-11-21"),
        session(8, 75, "2026-11-22"),
        session(6, 60, "2026-11-24"),
        session(6, 30, "2026-11-24"),
        session(3, 30, "2026-11-25"),
        session(10, 90, "2026-11-18"),
    ];
    let person = person(
        &proof.curriculum,
        &json!({ "results": 1, "sessions": week }),
    );
    let load = strength::load::last_week(&person.sessions, today()).expect("a load");
    assert_eq!(load.total, 1875.0);
    assert!((load.monotony - 1.1429).abs() < 0.0001, "{load:?}");
    assert!((load.strain - 2142.9).abs() < 0.1, "{load:?}");
    let bad = r#"{ "results": 1, "sessions": [{ "effort": 11, "minutes": 60 }] }"#;
    let files = Snapshot::of_texts([("r.json", bad)]);
    let (_, found) = results::read(&files, &proof.curriculum, today());
    assert!(found.has_errors(), "an effort of 11");
}

/// The plan as iCalendar, read by the library `icalendar` from PyPI.
#[test]
fn a_calendar_is_read_by_others() {
    let Some(python) = std::env::var_os("RUNGBOOK_PYTHON") else {
        return;
    };
    let proof = small();
    let person = person(
        &proof.curriculum,
        &json!({ "results": 1, "name": "A, B; \\ C", "tested": [{ "movement": "low", "got": "9 reps" }] }),
    );
    let roster = Roster::new(&proof.curriculum, &proof.resolved.stages);
    let plan = training::train(&roster, &person, None, today());
    let text = training::calendar::calendar(&Say::of(&roster), &plan, &person.name);
    assert!(text.split("\r\n").all(|l| l.len() <= 75));
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("plan.ics");
    std::fs::write(&file, &text).expect("a calendar");
    let script = "import icalendar, json, sys\nc = icalendar.Calendar.from_ical(open(sys.argv[1], newline='').read())\ne = [x for x in c.walk('VEVENT')]\nprint(json.dumps([len(e), [str(x['DTSTART'].dt) for x in e], str(e[0]['SUMMARY']), str(e[0]['DESCRIPTION']), [str(p) for x in e for p in x.errors]]))";
    let out = Command::new(python)
        .arg("-c")
        .arg(script)
        .arg(&file)
        .output()
        .expect("python runs");
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    let read: Value = serde_json::from_slice(&out.stdout).expect("an answer");
    // Four weeks of two sessions, and two days after the last the test again.
    assert_eq!(read[0], 9);
    assert_eq!(read[1][0], TODAY);
    assert_eq!(read[1][8], "2026-12-21");
    assert_eq!(read[2], "Training, week 1 (A, B; \\ C)");
    let says = read[3].as_str().expect("text");
    assert!(
        says.contains("low: ") && says.contains(" reps, rest 2 min"),
        "{says:?}"
    );
    assert_eq!(read[4], json!([]));
}

/// Reps in reserve count as done; seconds have none. Three sets recorded together hide two reps, two sets none (common practice, no
/// source).
#[test]
fn the_best_set_counts_reps_in_reserve() {
    let proof = small();
    let curriculum = &proof.curriculum;
    let on = "2026-11-24";
    let best = |movement: &str, results: Value| {
        let person = person(curriculum, &results);
        let ix = curriculum.find_movement(movement).expect("it is there");
        let best = strength::best::best(curriculum, &person, today(), ix);
        best.expect("a result").amount
    };
    let trained = |movement: &str, did: Value| json!({ "results": 1, "trained": [{ "movement": movement, "did": did, "in_reserve": 2, "on": on }] });
    assert_eq!(best("low", trained("low", json!([8, 6]))), 10);
    assert_eq!(best("hang", trained("hang", json!([20, 15]))), 20);
    let tested = |movement: &str, got: &str| json!({ "results": 1, "tested": [{ "movement": movement, "got": got, "in_reserve": 1, "on": on }] });
    assert_eq!(best("low", tested("low", "2x5")), 6);
    assert_eq!(best("low", tested("low", "3x5")), 8);
    assert_eq!(best("hang", tested("hang", "3x20 s")), 20);
}
