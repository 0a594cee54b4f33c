//! Working sets and plans: worked examples by hand, random clients of the shipped curriculum, an independent reference in
//! Python, and iCalendar read by an outside library.

mod dice;

use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use rungbook::chain;
use rungbook::curriculum::target::{Measure, ONE};
use rungbook::curriculum::words::{Arms, Phase, Word};
use rungbook::curriculum::{Curriculum, Day, Leaf, Movement, MovementIx, Need};
use rungbook::proof::{Proofread, proofread};
use rungbook::readiness::{self, State};
use rungbook::results::{self, Person};
use rungbook::source::Snapshot;
use rungbook::strength::{self, Fit, Working};
use serde_json::{Value, json};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Command, Stdio};

const TODAY: &str = "2026-11-25";

fn today() -> Day {
    Day::read(TODAY).expect("a day")
}

/// The words that the page's scripts say, as a file.
fn english() -> std::path::PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join("strength-words.json");
    let words = rungbook::site::all_words(rungbook::words::Words::english());
    std::fs::write(&path, words.to_string()).expect("the words");
    path
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn shipped() -> Proofread {
    proofread(&rungbook::io::snapshot(root()).expect("the shipped curriculum"))
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

fn all(proof: &Proofread) -> Vec<MovementIx> {
    proof.curriculum.published().map(|(ix, _)| ix).collect()
}

fn working(proof: &Proofread, person: &Person, list: &[MovementIx]) -> Working {
    let readiness = readiness::assess(&proof.curriculum, &proof.stages, person, today());
    strength::working(
        &proof.curriculum,
        &proof.stages,
        person,
        &readiness,
        list,
        today(),
    )
}

/// A curriculum of three push-ups on a ladder, and a hang.
fn small() -> Proofread {
    small_with(&[])
}

/// With movements of its own beside them.
fn small_with(more: &[(&str, &str)]) -> Proofread {
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
    let more: Vec<(String, String)> = more.iter().map(|(id, says)| movement(id, says)).collect();
    let all = files.iter().chain(&more);
    proofread(&Snapshot::of_texts(
        all.map(|(p, t)| (p.as_str(), t.as_str())),
    ))
}

/// Movement, target and reason of every pick.
fn told(proof: &Proofread, results: &Value) -> Vec<(String, String, String)> {
    let person = person(&proof.curriculum, results);
    let working = working(proof, &person, &all(proof));
    let id = |ix| proof.curriculum.movement(ix).id.to_string();
    working
        .picks
        .iter()
        .map(|p| (id(p.movement), p.prescription.text(), p.why.clone()))
        .collect()
}

fn pick(movement: &str, target: &str, why: &str) -> (String, String, String) {
    (movement.into(), target.into(), why.into())
}

/// Worked by hand from the rules: keep at 7 to 10 for five sets of five, shorter sets at 5 or 6, a harder one above.
#[test]
fn three_worked_examples() {
    let proof = small();
    let tested =
        |movement: &str, got: &str| json!({ "movement": movement, "got": got, "on": "2026-11-20" });
    // 12 of the low one owns it, so the middle one is open; 9 there keeps it: 9 - 5 = 4 left.
    // A best hold of 25 s: three fifths are 15 s; two of them make 30 s, but six sets a week are three in each of two sessions.
    assert_eq!(
        told(
            &proof,
            &json!({ "results": 1, "tested": [tested("low", "12 reps"), tested("mid", "9 reps"), tested("hang", "25 s")] })
        ),
        [
            pick(
                "hang",
                "3x15 s",
                "best hold 25 s: sets of 15 s, 45 s in all"
            ),
            pick("mid", "5x5", "9 in one set: 5 sets of 5 leave 4 in reserve"),
        ]
    );
    // 12 is 7 over the dose: the open, untested one above is tried. Nothing is known of the hang: a first try.
    assert_eq!(
        told(
            &proof,
            &json!({ "results": 1, "tested": [tested("low", "12 reps")] })
        ),
        [
            pick(
                "hang",
                "2x5 s",
                "never tested: a first try, then enter the number"
            ),
            pick(
                "mid",
                "2x3",
                "never tested: a first try, then enter the number"
            ),
        ]
    );
    // An easier one that could be kept is no reason to stay below what is owned: 12 of the middle one, the top one is open.
    assert_eq!(
        told(
            &proof,
            &json!({ "results": 1, "tested": [tested("low", "9 reps"), tested("mid", "12 reps"), tested("hang", "25 s")] })
        )[1],
        pick(
            "top",
            "2x3",
            "never tested: a first try, then enter the number"
        )
    );
    // Four with one in reserve are five: close to the limit, so sets of 5 x 3/5 = 3.
    let five = json!({ "movement": "low", "got": "4 reps", "on": "2026-11-20", "in_reserve": 1 });
    assert_eq!(
        told(
            &proof,
            &json!({ "results": 1, "tested": [five, tested("hang", "4 s")] })
        ),
        [
            pick(
                "hang",
                "7x2 s",
                "best hold 4 s: sets of 2 s, 14 s in all; less than 30 s in all, as more sets would be over 15 a week"
            ),
            pick(
                "low",
                "5x3",
                "5 in one set is close to the limit: shorter sets"
            ),
        ]
    );
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
        .map(|e| curriculum.movement(e.movement).id.as_str())
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

/// "2 for 2" (Baechle & Earle, Essentials; the worked example there: goal 3x10, 12 in the last set two sessions running).
#[test]
fn moving_on_reads_what_was_trained() {
    let proof = small();
    let tested = json!([{ "movement": "low", "got": "10 reps", "on": "2026-11-10" }]);
    let session = |on: &str, did: Value| json!({ "movement": "low", "did": did, "on": on });
    let of = |trained: Value| {
        told(
            &proof,
            &json!({ "results": 1, "tested": tested, "trained": trained }),
        )[1]
        .clone()
    };
    let twice = of(json!([
        session("2026-11-20", json!([5, 5, 5, 5, 7])),
        session("2026-11-23", json!([5, 5, 5, 5, 7]))
    ]));
    assert_eq!(
        twice,
        pick(
            "mid",
            "2x3",
            "moved on from low: never tested: a first try, then enter the number"
        )
    );
    let once = of(json!([
        session("2026-11-20", json!([5, 5, 5, 5, 6])),
        session("2026-11-23", json!([5, 5, 5, 5, 7]))
    ]));
    assert_eq!(once.1, "5x5");
    let missed = of(json!([
        session("2026-11-20", json!([5, 5, 4])),
        session("2026-11-23", json!([5, 5, 5, 4, 3]))
    ]));
    assert_eq!(missed, pick("low", "3x5", "missed twice: fewer sets"));
    let off = of(json!([session("2026-11-01", json!([5, 5, 5, 5, 5]))]));
    assert_eq!(off, pick("low", "3x5", "two weeks off: fewer sets"));
    // Two weeks off the middle one: the low one for a week from the first training, then the middle one again.
    let back = |first: &str| {
        let results = json!({ "results": 1,
            "tested": [{ "movement": "low", "got": "12 reps", "on": "2026-10-20" }, { "movement": "mid", "got": "9 reps", "on": "2026-10-20" }],
            "trained": [{ "movement": "mid", "did": [5, 5, 5, 5, 5], "on": "2026-11-01" }, { "movement": "low", "did": [8, 8, 8, 8, 8], "on": first }] });
        told(&proof, &results)[1].0.clone()
    };
    assert_eq!(back("2026-11-19"), "low");
    assert_eq!(back("2026-11-18"), "mid");
    // Where nothing easier exists it lasts a week too, however often it was trained since; a test ends it.
    let full = json!([5, 5, 5, 5, 5]);
    let again = |first: &str, second: &str| {
        of(json!([
            { "movement": "low", "did": full, "on": "2026-11-11" },
            session(first, full.clone()),
            session(second, full.clone())
        ]))
    };
    let fewer = pick("low", "3x5", "two weeks off: fewer sets");
    assert_eq!(again("2026-11-19", "2026-11-22").1, "5x5", "no gap at all");
    let gap = |first: &str, tested: &str| {
        let results = json!({ "results": 1, "tested": [{ "movement": "low", "got": "10 reps", "on": tested }],
            "trained": [session("2026-11-01", full.clone()), session(first, full.clone()), session("2026-11-24", full.clone())] });
        told(&proof, &results)[1].clone()
    };
    assert_eq!(gap("2026-11-19", "2026-10-20"), fewer);
    assert_eq!(gap("2026-11-18", "2026-10-20").1, "5x5");
    assert_eq!(gap("2026-11-19", "2026-11-19").1, "5x5");
}

/// One step easier after two misses, until the easier one is moved on from: then the harder one is back, and a miss more leads
/// down again.
#[test]
fn a_step_down_is_no_dead_end() {
    let proof = small();
    let mid = |on: &str, did: Value| json!({ "movement": "mid", "did": did, "on": on });
    let low =
        |on: &str, last: u32| json!({ "movement": "low", "did": [8, 8, 8, 8, last], "on": on });
    let of = |trained: &[Value]| {
        let results = json!({ "results": 1,
            "tested": [{ "movement": "low", "got": "12 reps", "on": "2026-11-01" }, { "movement": "mid", "got": "9 reps", "on": "2026-11-01" }],
            "trained": trained });
        told(&proof, &results)[1].clone()
    };
    let short = json!([5, 5, 4]);
    let mut log = vec![
        mid("2026-11-12", short.clone()),
        mid("2026-11-13", short.clone()),
    ];
    assert_eq!(of(&log).0, "low");
    assert!(of(&log).2.starts_with("mid was missed twice: "));
    // 12 of the low one ask for sets of 8. Two over in the last of them once is not enough.
    log.extend([low("2026-11-14", 10), low("2026-11-16", 9)]);
    assert_eq!(of(&log).0, "low");
    log.push(low("2026-11-18", 10));
    assert_eq!(of(&log).0, "low");
    log.push(low("2026-11-20", 10));
    let kept = pick("mid", "5x5", "9 in one set: 5 sets of 5 leave 4 in reserve");
    assert_eq!(of(&log), kept);
    log.push(mid("2026-11-23", short));
    assert_eq!(of(&log).0, "low");
}

/// What is trained today has its say from tomorrow on, at the terminal as on the card.
#[test]
fn what_is_trained_today_counts_from_tomorrow() {
    let proof = small();
    let of = |on: &str| {
        let full = |on: &str| json!({ "movement": "low", "did": [5, 5, 5, 5, 7], "on": on });
        let results = json!({ "results": 1, "tested": [{ "movement": "low", "got": "10 reps", "on": "2026-11-10" }],
            "trained": [full("2026-11-20"), full(on), { "movement": "hang", "did": [40], "on": on }] });
        told(&proof, &results)
    };
    let today = of(TODAY);
    assert_eq!((today[0].1.as_str(), today[1].1.as_str()), ("2x5 s", "5x5"));
    let yesterday = of("2026-11-24");
    assert_eq!(yesterday[0].2, "best hold 40 s: sets of 24 s, 72 s in all");
    assert_eq!(yesterday[1].0, "mid");
}

/// Three full sessions with two in reserve move careful work on, in the sets that the card asks: three, where balance or the
/// week takes two of the five away.
#[test]
fn careful_work_moves_on_by_the_sets_that_the_card_asks() {
    let slow = "pattern: vertical push\nstandard: 10 reps\nphase: lowering\n";
    let proof = small_with(&[("press", slow)]);
    let tested =
        |movement: &str, got: &str| json!({ "movement": movement, "got": got, "on": "2026-11-10" });
    let of = |sets: usize, pulls: bool| {
        let mut tests = vec![
            tested("low", "9 reps"),
            tested("press", "8 reps"),
            tested("hang", "30 s"),
        ];
        if pulls {
            tests.push(tested("pull", "7 reps"));
        }
        let session = |on: &str| json!({ "movement": "press", "did": vec![5; sets], "in_reserve": 2, "on": on });
        let trained = ["2026-11-16", "2026-11-19", "2026-11-22"].map(session);
        let results = json!({ "results": 1, "tested": tests, "trained": trained });
        told(&proof, &results)[0].clone()
    };
    let even = "; 3 sets, to keep push and pull even";
    let on = format!("moved on: the dose was done in full{even}");
    assert_eq!(of(3, true), pick("press", "3x6", &on));
    // Two are fewer than asked, and where nothing is taken away three are a lighter week.
    assert_eq!(of(2, true).1, "3x5");
    assert_eq!(of(3, false).1, "5x5");
    assert_eq!(of(5, false).1, "5x6");
}

/// Holds, worked by hand for two sessions a week: three to seven sets in each, 30 to 90 seconds in all.
#[test]
fn holds_keep_both_bounds() {
    let proof = small();
    for (best, target, says) in [
        // Seven of 3 s make 21; two thirds of 7 are 4, and seven of them 28.
        (
            "7 s",
            "7x4 s",
            "; less than 30 s in all, as more sets would be over 15 a week",
        ),
        // Three fifths of 8 are 4, too few; two thirds are 5, and seven of them 35.
        ("8 s", "7x5 s", "35 s in all"),
        ("10 s", "5x6 s", "30 s in all"),
        ("60 s", "3x30 s", "90 s in all"),
        // Half of 75 would make 111 s in three sets.
        (
            "75 s",
            "3x30 s",
            "; less than half of it, to stay within 90 s in all",
        ),
    ] {
        let results = json!({ "results": 1, "tested": [{ "movement": "hang", "got": best, "on": "2026-11-20" }, { "movement": "pull", "got": "3 reps", "on": "2026-11-20" }] });
        let told = told(&proof, &results);
        assert_eq!(told[0].1, target, "{best}");
        assert!(told[0].2.ends_with(says), "{best}: {}", told[0].2);
    }
    // Fewer sets than three would leave the week short: shorter ones.
    let missed = |on: &str| json!({ "movement": "hang", "did": [15, 10, 9], "on": on });
    let results = json!({ "results": 1, "tested": [{ "movement": "hang", "got": "25 s", "on": "2026-11-10" }], "trained": [missed("2026-11-20"), missed("2026-11-22")] });
    assert_eq!(
        told(&proof, &results)[0],
        pick(
            "hang",
            "3x9 s",
            "missed twice: shorter sets; less than 30 s in all"
        )
    );
}

/// What was asked is never a miss: the half sets of a lighter week, a shorter dose before the last test, a first try.
#[test]
fn doing_as_told_is_no_miss() {
    let proof = small();
    let of = |tested: &str, did: Value, in_reserve: Option<u32>| {
        let session = |on: &str| json!({ "movement": "low", "did": did, "on": on, "in_reserve": in_reserve.unwrap_or(0) });
        told(
            &proof,
            &json!({ "results": 1, "tested": [{ "movement": "low", "got": "10 reps", "on": tested }], "trained": [session("2026-11-18"), session("2026-11-20")] }),
        )[1]
        .clone()
    };
    let kept = pick(
        "low",
        "5x5",
        "10 in one set: 5 sets of 5 leave 5 in reserve",
    );
    assert_eq!(of("2026-11-10", json!([5, 5, 5]), None), kept);
    assert_eq!(of("2026-11-23", json!([3, 3, 3, 3, 3]), None), kept);
    assert_eq!(of("2026-11-10", json!([3, 3]), Some(4)), kept);
    // The same three, with nothing left and no test since, are missed.
    assert_eq!(
        of("2026-11-10", json!([3, 3, 3, 3, 3]), None).2,
        "missed twice: fewer sets"
    );
}

/// Two patterns of pushing beside one of pulling, worked by hand: 10 and 5 sets; 3 and 3 leave 6 to 5, within a third.
/// The picks of today are the plan's, and the week keeps six sets of each pattern.
#[test]
fn pushing_gives_way_to_pulling() {
    let proof = small_with(&[("press", "pattern: vertical push\nstandard: 10 reps\n")]);
    let tested =
        |movement: &str, got: &str| json!({ "movement": movement, "got": got, "on": "2026-11-20" });
    let results = json!({ "results": 1, "tested": [tested("low", "9 reps"), tested("press", "8 reps"), tested("hang", "30 s"), tested("pull", "7 reps")] });
    let even = "; 3 sets, to keep push and pull even";
    let picks = told(&proof, &results);
    assert_eq!(
        picks,
        [
            pick(
                "press",
                "3x5",
                &format!("8 in one set: 5 sets of 5 leave 3 in reserve{even}")
            ),
            pick(
                "pull",
                "5x5",
                "7 in one set: 5 sets of 5 leave 2 in reserve"
            ),
            pick(
                "low",
                "3x5",
                &format!("9 in one set: 5 sets of 5 leave 4 in reserve{even}")
            ),
        ]
    );
    let person = person(&proof.curriculum, &results);
    let plan = strength::plan(
        &proof.curriculum,
        &working(&proof, &person, &all(&proof)),
        today(),
    );
    assert_eq!((plan.push, plan.pull), (12, 10));
    let first = &told_plan(&proof, &plan)["weeks"][0]["sessions"][0]["sets"];
    let planned: Vec<&str> = (0..3).filter_map(|i| first[i]["target"].as_str()).collect();
    assert_eq!(planned, ["3x5", "5x5", "3x5"]);
    // The fourth week is lighter, half the sets, and the tests come after it.
    let lighter: Vec<(bool, u32)> = plan
        .weeks
        .iter()
        .map(|w| {
            let sets = w.sessions.iter().flat_map(|s| &s.sets);
            (
                w.lighter,
                sets.filter(|(ix, _)| proof.curriculum.movement(*ix).id.as_str() != "mid")
                    .map(|(_, p)| p.sets)
                    .sum(),
            )
        })
        .collect();
    assert_eq!(lighter, [(false, 22), (false, 22), (false, 22), (true, 14)]);
    assert_eq!(plan.retest.to_string(), "2026-12-23");
    // Three sets are the dose then: two over in the last of them, two sessions running, moves on.
    let session = |on: &str| json!({ "movement": "low", "did": [5, 5, 7], "on": on });
    let mut results = results;
    results["tested"][0]["got"] = json!("10 reps");
    results["trained"] = json!([session("2026-11-21"), session("2026-11-23")]);
    assert_eq!(told(&proof, &results)[2].0, "mid");
}

/// A first try is done with the load or the help of the dose, and a load in shares of body weight rises by a fortieth.
#[test]
fn loads_are_part_of_a_first_try() {
    let proof = small_with(&[
        (
            "press",
            "pattern: vertical push\nstandard: 5 reps with 0.25 bw\ndose: 5x3 with 0.1 bw\n",
        ),
        (
            "row",
            "pattern: horizontal pull\nstandard: 5 reps with 15 kg help\n",
        ),
    ]);
    let first = "never tested: a first try, then enter the number";
    let picks = told(&proof, &json!({ "results": 1, "bodyweight": "70 kg" }));
    assert!(
        picks.contains(&pick("press", "2x2 reps with 0.1 bw", first)),
        "{picks:?}"
    );
    assert!(
        picks.contains(&pick("row", "2x3 reps with 15 kg help", first)),
        "{picks:?}"
    );
    let session = |on: &str| json!({ "movement": "press", "did": [3, 3, 3, 3, 3], "with": "0.1 bw", "in_reserve": 2, "on": on });
    let results = json!({ "results": 1, "bodyweight": "70 kg",
        "tested": [{ "movement": "press", "got": "5 reps with 0.1 bw", "on": "2026-11-10" }],
        "trained": [session("2026-11-16"), session("2026-11-19"), session("2026-11-22")] });
    let moved = told(&proof, &results);
    let by = moved.iter().find(|p| p.0 == "press").expect("the press");
    assert_eq!(by.1, "5x3 reps with 0.125 bw");
}

/// The worse side sets the dose, and the sets are of each side.
#[test]
fn one_side_is_weaker() {
    let proof = small_with(&[(
        "lunge",
        "pattern: squat\nstandard: 8 reps\neach_side: true\n",
    )]);
    let results = json!({ "results": 1, "tested": [{ "movement": "lunge", "left": "12 reps", "right": "8 reps", "on": "2026-11-20" }] });
    let person = person(&proof.curriculum, &results);
    let working = working(&proof, &person, &all(&proof));
    let name = |ix| proof.curriculum.movement(ix).id.as_str();
    let found = working.picks.iter().find(|p| name(p.movement) == "lunge");
    let lunge = found.expect("a pick");
    assert_eq!(lunge.why, "8 in one set: 5 sets of 5 leave 3 in reserve");
    assert_eq!(
        lunge.prescription.words(&proof.curriculum, lunge.movement),
        "5 sets of 5, each side"
    );
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

#[derive(Clone, Debug)]
struct Client {
    /// For each movement: untested, or a share of its standard in tenths.
    done: Vec<Option<u8>>,
    reserve: u32,
    have: Option<Vec<bool>>,
    pause: Option<usize>,
    /// Effort, minutes and days since, of whole sessions.
    sessions: Vec<(u32, u32, i32)>,
    /// Days since the tests.
    tested_ago: i32,
    /// A movement three times: the amount of each set, days since the last, reps left, sets, days between.
    trained: Vec<(usize, u8, u8, u8, usize, [i32; 3])>,
}

fn client(movements: usize, equipment: usize) -> impl Strategy<Value = Client> {
    (
        proptest::collection::vec(
            prop_oneof![2 => Just(None), 3 => (0..22_u8).prop_map(Some)],
            movements,
        ),
        prop_oneof![3 => Just(0_u32), 1 => 1..3_u32],
        proptest::option::weighted(
            0.5,
            proptest::collection::vec(proptest::bool::weighted(0.6), equipment),
        ),
        (
            proptest::option::weighted(0.3, 0..12_usize),
            proptest::collection::vec((0..=10_u32, 0..120_u32, 0..9), 0..9),
        ),
        prop_oneof![Just(3), Just(30)],
        proptest::collection::vec(
            (
                0..movements,
                1..11_u8,
                prop_oneof![4 => 0..5_u8, 1 => 5..26_u8],
                prop_oneof![Just(0), Just(2)],
                prop_oneof![3 => Just(5_usize), 1 => Just(3), 1 => Just(7)],
                prop_oneof![3 => Just([4, 2, 0]), 1 => Just([21, 3, 0])],
            ),
            0..40,
        ),
    )
        .prop_map(
            |(done, reserve, have, (pause, sessions), tested_ago, trained)| Client {
                done,
                reserve,
                have,
                pause,
                sessions,
                tested_ago,
                trained,
            },
        )
}

impl Client {
    fn results(&self, curriculum: &Curriculum) -> Value {
        let epoch = Day::read("1970-01-01").expect("a day");
        let day = |ago: i32| Day::of_count(today().days_after(epoch) - ago).to_string();
        let movements: Vec<&Movement> = curriculum.movements().map(|(_, m)| m).collect();
        let tested: Vec<Value> = self
            .done
            .iter()
            .zip(&movements)
            .filter_map(|(done, m)| {
                let tenths = i64::from((*done)?);
                let standard = &m.standard;
                let amount = standard.amount() / ONE * if standard.at_most() { 20 - tenths.min(20) } else { tenths } / 10;
                let load = standard.added().map_or(String::new(), |_| {
                    let text = standard.to_string();
                    format!(" with {}", text.split(" with ").nth(1).unwrap_or("").replace(" each side", ""))
                });
                let got = match standard.measure() {
                    Measure::Reps => format!("{amount} reps{load}"),
                    Measure::Time => format!("{amount} s{load}"),
                    Measure::Length => format!("{amount} cm"),
                    Measure::Angle => format!("{amount} deg"),
                    Measure::Done => if tenths > 5 { "done".into() } else { "not done".into() },
                };
                Some(json!({ "movement": m.id.as_str(), "got": got, "on": day(self.tested_ago), "in_reserve": self.reserve }))
            })
            .collect();
        let words: Vec<&String> = curriculum.school.equipment.keys().collect();
        let trained: Vec<Value> = self
            .trained
            .iter()
            .filter(|(i, ..)| matches!(movements[*i].standard.measure(), Measure::Reps | Measure::Time))
            .flat_map(|(i, amount, ago, left, sets, between)| {
                let mut did = vec![*amount; *sets];
                did[sets - 1] += 2;
                let id = movements[*i].id.as_str();
                between.map(|before| {
                    json!({ "movement": id, "did": did, "on": day(i32::from(*ago) + before), "in_reserve": left })
                })
            })
            .collect();
        let session = |(effort, minutes, ago): &(u32, u32, i32)| json!({ "effort": effort, "minutes": minutes, "on": day(*ago) });
        let sessions: Vec<Value> = self.sessions.iter().map(session).collect();
        let mut out = json!({ "results": 1, "bodyweight": "70 kg", "tested": tested, "trained": trained, "sessions": sessions });
        if let Some(have) = &self.have {
            out["have"] = words
                .iter()
                .zip(have)
                .filter(|(_, h)| **h)
                .map(|(w, _)| json!(w))
                .collect();
        }
        if let Some(part) = self.pause {
            let parts = rungbook::curriculum::words::BodyPart::WORDS;
            out["paused"] =
                json!([{ "part": parts[part % parts.len()], "on": day(3), "by": "client" }]);
        }
        out
    }
}

/// Holds keep within 30 to 90 seconds in all, or say that they do not, and then nothing within a week's sets would.
fn held(pick: &strength::Pick, a_week: u32) -> Result<(), String> {
    let (p, why) = (&pick.prescription, &pick.why);
    let (sets, most) = (i64::from(p.sets), i64::from(15 / a_week));
    let all = sets * p.amount;
    let less = why.contains("; less than 30 s in all");
    if all > 90 || (all < 30) != less {
        return Err(format!("{all} s in all: {why}"));
    }
    let full = less && why.contains("over 15 a week");
    let eased = why.contains("fewer sets") || why.contains("shorter sets");
    if less && full != (sets == most) || less && !full && !eased {
        return Err(format!("{all} s in all, for no reason: {why}"));
    }
    let best = why
        .split_once("best hold ")
        .and_then(|(_, of)| of.split_once(" s:")?.0.parse::<i64>().ok());
    let Some(best) = best else {
        return Ok(());
    };
    if less && most * (best * 2 / 3) >= 30 {
        return Err(format!("{most} sets could make 30 s: {why}"));
    }
    if (2 * p.amount < best) != why.contains("less than half of it, to stay within 90 s in all") {
        return Err(format!("a hold of {} s: {why}", p.amount));
    }
    Ok(())
}

/// What must hold for every client, whatever is picked.
fn check(
    proof: &Proofread,
    person: &Person,
    list: &[MovementIx],
    working: &Working,
) -> Result<(), String> {
    let curriculum = &proof.curriculum;
    let readiness = readiness::assess(curriculum, &proof.stages, person, today());
    let state = |ix: MovementIx| readiness.of(ix).map(|s| s.state);
    let may = |ix: MovementIx| matches!(state(ix), Some(State::Open | State::Owned));
    let at_hand = |m: &Movement| {
        person.have.as_ref().is_none_or(|have| {
            m.equipment
                .iter()
                .all(|any| any.iter().any(|w| have.contains(w)))
        })
    };
    let best = |ix: MovementIx| {
        let tests = person.tested.iter().filter(|t| t.movement == ix);
        tests
            .flat_map(|t| {
                t.sides
                    .all()
                    .map(|g| g.parts().amount() / ONE + i64::from(t.in_reserve))
            })
            .max()
    };
    for pick in &working.picks {
        let m = curriculum.movement(pick.movement);
        let p = &pick.prescription;
        if !may(pick.movement) || !at_hand(m) || !list.contains(&pick.movement) {
            return Err(format!(
                "{} may not be trained: {:?}",
                m.id,
                state(pick.movement)
            ));
        }
        if p.sets == 0 || p.amount == 0 {
            return Err(format!("{} has an empty set", m.id));
        }
        if let Some(best) = best(pick.movement).filter(|_| pick.fit != Fit::Untested)
            && p.amount > best.max(1)
        {
            return Err(format!(
                "{}: sets of {} with a best of {best}",
                m.id, p.amount
            ));
        }
        let weekly = p.sets * curriculum.school.dose.a_week;
        if pick.fit != Fit::Untested && !(6..=15).contains(&weekly) {
            return Err(format!("{}: {weekly} sets a week", m.id));
        }
        if p.measure == Measure::Time && pick.fit != Fit::Untested {
            held(pick, curriculum.school.dose.a_week).map_err(|why| format!("{}: {why}", m.id))?;
        }
    }
    for practice in &working.practice {
        let m = curriculum.movement(practice.movement);
        if state(practice.movement) != Some(State::Open) || !at_hand(m) {
            return Err(format!("{} may not be practised", m.id));
        }
        if m.inverted() && !practice.before {
            return Err(format!("{} is upside down and comes after the work", m.id));
        }
    }
    let trainable = list.iter().any(|ix| {
        let m = curriculum.movement(*ix);
        let measured = matches!(m.standard.measure(), Measure::Reps | Measure::Time);
        let trained = person.trained.iter().any(|t| t.movement == *ix);
        let work = !["mobility", "balance", "exit"].contains(&m.pattern.word());
        may(*ix)
            && at_hand(m)
            && measured
            && work
            && (best(*ix).is_none_or(|b| b > 0) || (best(*ix).is_none() && trained))
    });
    if trainable && working.picks.is_empty() {
        return Err("something is trainable, and nothing is picked".into());
    }
    Ok(())
}

#[test]
fn random_clients_get_only_what_is_theirs() {
    let proof = shipped();
    let curriculum = &proof.curriculum;
    let lists: Vec<Vec<MovementIx>> = curriculum
        .skills()
        .map(|(_, s)| {
            chain::resolve(curriculum, &proof.stages, &s.goal)
                .movements
                .iter()
                .map(|l| l.movement)
                .collect()
        })
        .collect();
    let fits = RefCell::new(BTreeMap::new());
    let mut runner = TestRunner::new(dice::config(200));
    runner
        .run(
            &client(curriculum.len(), curriculum.school.equipment.len()),
            |client| {
                let person = person(curriculum, &client.results(curriculum));
                for list in &lists {
                    let working = working(&proof, &person, list);
                    check(&proof, &person, list, &working).map_err(TestCaseError::fail)?;
                    let plan = strength::plan(curriculum, &working, today());
                    prop_assert!(plan.volume.values().all(|n| *n <= 15), "{:?}", plan.volume);
                    prop_assert!(plan.straight_arm.values().all(|n| *n <= 15));
                    for pair in plan
                        .weeks
                        .iter()
                        .flat_map(|w| &w.sessions)
                        .collect::<Vec<_>>()
                        .windows(2)
                    {
                        prop_assert!(
                            pair[1].on.days_after(pair[0].on) >= 2,
                            "48 hours between sessions"
                        );
                    }
                    for pick in &working.picks {
                        *fits
                            .borrow_mut()
                            .entry(format!("{:?}", pick.fit))
                            .or_insert(0) += 1;
                    }
                }
                Ok(())
            },
        )
        .expect("every client");
    assert_eq!(
        fits.borrow().len(),
        5,
        "every fit comes up: {:?}",
        fits.borrow()
    );
}

fn tree(curriculum: &Curriculum, need: &Need<Leaf>) -> Value {
    let parts = |p: &[Need<Leaf>]| p.iter().map(|n| tree(curriculum, n)).collect::<Vec<_>>();
    match need {
        Need::Leaf(l) => {
            json!({ "movement": curriculum.movement(l.movement).id.as_str(), "target": l.target.to_string() })
        }
        Need::All(p) => json!({ "all": parts(p) }),
        Need::Any(p) => json!({ "any": parts(p) }),
        Need::AtLeast(k, p) => json!({ "at_least": k, "of": parts(p) }),
    }
}

/// The facts of a movement as the specification of working sets names them.
fn facts(proof: &Proofread, ix: MovementIx) -> Value {
    let curriculum = &proof.curriculum;
    let m = curriculum.movement(ix);
    let bears = |class: &str| {
        m.cautions
            .iter()
            .any(|c| curriculum.cautions.class(*c).id == class)
    };
    json!({
        "id": m.id.as_str(), "pattern": m.pattern.word(), "standard": m.standard.to_string(), "each_side": m.each_side,
        "guarded": m.guarded(), "stresses": m.stresses.iter().map(|p| p.word()).collect::<Vec<_>>(),
        "was": m.was.iter().map(|w| w.as_str()).collect::<Vec<_>>(), "needs": tree(curriculum, &m.needs),
        "stage": proof.stages.of(ix), "inverted": m.inverted(), "lowering": m.phase == Some(Phase::Lowering),
        "straight": m.arms == Some(Arms::Straight), "high": bears("fall-height"),
        "waits": m.arms == Some(Arms::Straight) || bears("shoulder-extension"),
        "unstable": m.pattern.word() == "balance" || m.equipment.iter().flatten().any(|w| w.contains("rings")),
        "equipment": m.equipment, "weeks_from": m.weeks.map_or(0, |w| w.from), "dose": m.dose.map(|d| d.to_string()),
    })
}

fn answer(proof: &Proofread, working: &Working) -> Value {
    let id = |ix| proof.curriculum.movement(ix).id.to_string();
    let picks: Vec<Value> = working
        .picks
        .iter()
        .map(|p| json!({ "movement": id(p.movement), "target": p.prescription.text(), "why": p.why }))
        .collect();
    let practice: Vec<Value> = working
        .practice
        .iter()
        .map(|p| {
            let when = if p.before { "before" } else { "after" };
            json!({ "movement": id(p.movement), "target": p.prescription.text(), "when": when, "why": p.why })
        })
        .collect();
    json!({ "picks": picks, "practice": practice })
}

fn told_plan(proof: &Proofread, plan: &strength::Plan) -> Value {
    let id = |ix| proof.curriculum.movement(ix).id.to_string();
    let session = |s: &strength::Session| {
        let sets: Vec<Value> = s
            .sets
            .iter()
            .map(|(ix, p)| json!({ "movement": id(*ix), "target": p.text() }))
            .collect();
        json!({ "on": s.on.to_string(), "sets": sets })
    };
    let weeks: Vec<Value> = plan
        .weeks
        .iter()
        .map(|w| json!({ "week": w.number, "lighter": w.lighter, "sessions": w.sessions.iter().map(session).collect::<Vec<_>>() }))
        .collect();
    json!({
        "weeks": weeks, "retest": plan.retest.to_string(), "volume": plan.volume, "straight_arm": plan.straight_arm,
        "push": plan.push, "pull": plan.pull,
    })
}

/// The independent calculation in Python, and the page's script in a JavaScript engine, give the same on random clients.
#[test]
fn program_page_and_reference_prescribe_alike() {
    let proof = shipped();
    let curriculum = &proof.curriculum;
    let snapshot = rungbook::io::snapshot(root()).expect("the shipped curriculum");
    let theme = rungbook::site::Theme::load("chalk", &snapshot, rungbook::words::Words::english())
        .expect("the theme");
    let plan = rungbook::site::Plan::new(&proof, &snapshot, &theme).expect("a plan");
    let tables = rungbook::site::tables::value(&plan);
    let start = |mut command: Command| {
        let mut child = command
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("it starts");
        let (input, output) = (
            child.stdin.take().expect("piped"),
            BufReader::new(child.stdout.take().expect("piped")),
        );
        RefCell::new((child, input, output))
    };
    let node = Command::new("node")
        .arg("--version")
        .stdout(Stdio::null())
        .status()
        .is_ok();
    assert!(
        node || std::env::var("CI").as_deref() != Ok("true"),
        "node is not installed"
    );
    let page = node.then(|| {
        let mut command = Command::new("node");
        command
            .arg(root().join("tests/page/answer.js"))
            .arg(root().join("themes/chalk"))
            .arg(english());
        start(command)
    });
    let reference = std::env::var_os("RUNGBOOK_PYTHON").map(|python| {
        let mut command = Command::new(python);
        command.arg(root().join("tests/reference/dose.py"));
        start(command)
    });
    let ask = |of: &RefCell<(
        std::process::Child,
        std::process::ChildStdin,
        BufReader<std::process::ChildStdout>,
    )>,
               question: &Value|
     -> Value {
        let (_, input, output) = &mut *of.borrow_mut();
        writeln!(input, "{question}").expect("it reads");
        let mut line = String::new();
        output.read_line(&mut line).expect("it answers");
        serde_json::from_str(&line).unwrap_or_else(|e| panic!("{e}: {line}"))
    };
    let school = &curriculum.school;
    let facts: Vec<Value> = curriculum
        .published()
        .map(|(ix, _)| facts(&proof, ix))
        .collect();
    let for_reference = json!({
        "presume": school.presume, "results_last_days": school.results_last_days, "movements": facts,
    });
    let of_school = json!({
        "sets": school.dose.sets, "reps": school.dose.reps, "hold_sets": school.dose.hold.sets(), "hold_seconds": school.dose.hold.amount() / ONE,
        "a_week": school.dose.a_week, "practice": school.practice.word(), "smallest_plate": school.smallest_plate as f64 / 1e8,
        "results_last_days": school.results_last_days,
    });
    let skills: Vec<Vec<MovementIx>> = curriculum
        .skills()
        .map(|(_, s)| {
            chain::resolve(curriculum, &proof.stages, &s.goal)
                .movements
                .iter()
                .map(|l| l.movement)
                .collect()
        })
        .collect();
    if let Some(page) = &page {
        ask(
            page,
            &json!({ "tables": tables, "results": { "results": 1 }, "today": TODAY }),
        );
    }
    let whys = RefCell::new(BTreeMap::new());
    let mut runner = TestRunner::new(dice::config(250));
    runner
        .run(&(client(curriculum.len(), school.equipment.len()), 0..skills.len()), |(client, skill)| {
            let results = client.results(curriculum);
            let person = person(curriculum, &results);
            let list = &skills[skill];
            let ids: Vec<&str> = list.iter().map(|ix| curriculum.movement(*ix).id.as_str()).collect();
            let working = working(&proof, &person, list);
            let ours = answer(&proof, &working);
            for pick in ours["picks"].as_array().expect("picks") {
                let why = pick["why"].as_str().expect("text");
                for log in ["moved on", "missed twice", "two weeks off", "push and pull even", "fewer sets", "shorter sets", "less than 30 s", "over 15 a week", "less than half"] {
                    *whys.borrow_mut().entry(log.to_string()).or_insert(0) += usize::from(why.contains(log));
                }
                let kind: String = why.chars().filter(|c| !c.is_ascii_digit()).take(18).collect();
                *whys.borrow_mut().entry(kind).or_insert(0) += 1;
            }
            // The same to nine digits: roots and sums differ in the last ones.
            let load = strength::load::last_week(&person.sessions, today());
            *whys.borrow_mut().entry(format!("a load: {}", load.is_some())).or_insert(0) += 1;
            let load = load.map(|l| [l.total, l.monotony, l.strain]);
            let is_load = |theirs: &Value| match load {
                None => theirs.is_null(),
                Some(ours) => ["total", "monotony", "strain"].iter().zip(ours).all(|(key, ours)| {
                    theirs[key].as_f64().is_some_and(|n| (n - ours).abs() <= 1e-9 * ours)
                }),
            };
            if let Some(page) = &page {
                let mut theirs = ask(page, &json!({ "dose": ids, "results": results, "today": TODAY }));
                let laid = theirs.as_object_mut().expect("a record").remove("plan");
                let added = theirs.as_object_mut().expect("a record").remove("load");
                prop_assert!(added.as_ref().is_some_and(is_load), "the page's load: {:?} {:?}", load, added);
                prop_assert_eq!(&ours, &theirs, "the page: {}", results);
                let plan = strength::plan(curriculum, &working, today());
                prop_assert_eq!(Some(told_plan(&proof, &plan)), laid, "the plan of the page: {}", results);
            }
            if let Some(reference) = &reference {
                let mut theirs = ask(reference, &json!({ "curriculum": for_reference, "school": of_school, "results": results, "today": TODAY, "movements": ids }));
                let added = theirs.as_object_mut().expect("a record").remove("load");
                prop_assert!(added.as_ref().is_some_and(is_load), "the reference's load: {:?} {:?}", load, added);
                prop_assert_eq!(&ours, &theirs, "the reference: {}", results);
            }
            Ok(())
        })
        .expect("all prescribe alike");
    for of in [page, reference].into_iter().flatten() {
        let mut child = of.into_inner().0;
        let _ = child.kill();
        let _ = child.wait();
    }
    println!("{:?}", whys.borrow());
    assert!(
        whys.borrow().len() >= 19 && whys.borrow().values().all(|n| *n > 0),
        "every kind of reason comes up: {:?}",
        whys.borrow()
    );
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
    let working = working(&proof, &person, &all(&proof));
    let plan = strength::plan(&proof.curriculum, &working, today());
    let text =
        strength::calendar::calendar(&proof.curriculum, &working.practice, &plan, &person.name);
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
    // Four weeks of two sessions, and the test again.
    assert_eq!(read[0], 9);
    assert_eq!(read[1][0], TODAY);
    assert_eq!(read[1][8], "2026-12-23");
    assert_eq!(read[2], "Training, week 1 (A, B; \\ C)");
    let says = read[3].as_str().expect("text");
    // A hang is no set of pulling that pushing would give way to.
    assert!(says.contains("low: 5 sets of 5\n"), "{says:?}");
    assert_eq!(read[4], json!([]));
}
