//! What comes before the step: whether a number is true, a short balance, time off, the weaker side, what is not at hand; and that the
//! step is what the next session trains, and no months are told beyond what can be trained.

use super::acts::{assess, dose, lines, run, says, says_not};
use serde_json::Value;

/// The line of what is next.
fn next(told: &str) -> &str {
    let line = told.lines().find(|l| l.starts_with("  next"));
    line.unwrap_or_else(|| panic!("no next: {told}"))
}

/// The limiter of `dose`, as programs get it.
fn limiter(results: &str) -> Value {
    let answer = run("dose", results, &["--as", "json"]);
    let answer: Value = serde_json::from_str(&answer).expect("JSON");
    answer["limiter"].clone()
}

/// Twelve reps are the most that is asked of a standing row: from six times that on the page asks before it keeps a number, and this
/// does where one stands (common practice, no source).
#[test]
fn a_number_far_above_all_that_is_asked_is_asked_about_first() {
    let logged = |reps: u32, more: &str| {
        assess(&format!(
            "born: 1990\ngoal: heavy-pull-up\nscreened: {{ says: clear, on: 2026-11-20 }}\ntrained:
  - {{ movement: row-upright, did: [{reps}, {reps}], in_reserve: 2, on: 2026-11-25 }}\n{more}"
        ))
    };
    let far = logged(73, "");
    let asked = "Ask first whether this is true: 73 reps of Bar row, standing [caution]. ";
    assert!(
        next(&far).contains(&format!("next   {asked}Test ")),
        "{far}"
    );
    says_not(&logged(72, ""), &["Ask first"]);
    // A test as much as a log; of two the larger. A newer test settles it, an older one does not; what ran out says nothing.
    let tested = |list: &str| logged(8, &format!("tested: [ {list} ]\n"));
    says(
        &tested(
            "{ movement: plank, got: 999 s, on: 2026-11-22 }, { movement: plank, got: 60 s, on: 2026-11-20 }",
        ),
        &["Ask first whether this is true: 999 seconds of Front plank"],
    );
    says_not(
        &tested(
            "{ movement: plank, got: 999 s, on: 2026-11-20 }, { movement: plank, got: 60 s, on: 2026-11-22 }",
        ),
        &["Ask first"],
    );
    says_not(
        &tested("{ movement: plank, got: 999 s, on: 2026-05-20 }"),
        &["Ask first"],
    );
    // 450 s is six times the longest plank that is asked.
    says_not(
        &tested("{ movement: plank, got: 450 s, on: 2026-11-22 }"),
        &["Ask first"],
    );
    // No joint makes more than a half turn.
    let wrist = |deg: u32| {
        tested(&format!(
            "{{ movement: wrist-extension-reach, got: {deg} deg, on: 2026-11-28 }}"
        ))
    };
    says(&wrist(190), &["Ask first whether this is true: 190°"]);
    says_not(&wrist(180), &["Ask first"]);
}

fn strong(off: u32) -> String {
    let day = |ago: u32| {
        let today = rungbook::curriculum::Day::read("2026-11-28").expect("a day");
        today.plus(-(ago as i32)).to_string()
    };
    let (tested, trained) = (day(off + 3), day(off));
    let test =
        |id: &str, got: &str| format!("  - {{ movement: {id}, got: {got}, on: {tested} }}\n");
    let log = |id: &str, did: &str| {
        format!("  - {{ movement: {id}, did: {did}, in_reserve: 2, on: {trained} }}\n")
    };
    let tests = [
        test("dead-hang", "60 s"),
        test("pull-up", "10 reps"),
        test("bar-dip", "10 reps"),
        test("push-up", "25 reps"),
        test("row-hip-high", "15 reps"),
        test("bar-support-hold", "50 s"),
        test("shoulder-extension-reach", "45 deg"),
        test("squat", "30 reps"),
    ];
    let logs = [
        log("pull-up", "[7, 7, 7, 6]"),
        log("bar-dip", "[7, 7, 7]"),
        log("push-up", "[14, 14]"),
        log("row-hip-high", "[10, 10, 10]"),
        log("squat", "[12, 12, 12]"),
    ];
    format!(
        "born: 1990\nbodyweight: 76 kg\ngoal: strict-ring-muscle-up\nscreened: {{ says: clear, on: 2026-09-01 }}\ntrain: {{ a_week: 3, minutes: 60 }}\ntested:\n{}trained:\n{}",
        tests.concat(),
        logs.concat()
    )
}

/// After time off: first that it is less, then what the next session trains for what holds back, or why that waits.
#[test]
fn after_time_off_next_is_what_the_session_trains() {
    for (off, act) in [
        (20, "A week of less, no test: nothing logged for 20 days. "),
        (
            40,
            "Two weeks of less and easier, no test: nothing logged for 40 days. ",
        ),
        (
            80,
            "Begin anew, old numbers of what was trained do not count: nothing logged for 80 days. ",
        ),
    ] {
        let client = strong(off);
        let told = assess(&client);
        let told = next(&told);
        assert!(told.contains(&format!("next   {act}")), "{told}");
        says(
            told,
            &["Ring support with feet on the floor [caution]: no number yet, needs 45 seconds."],
        );
        says_not(told, &["begin with sets"]);
        let held = limiter(&client)["movement"].clone();
        let all = lines(&client);
        let towards = all
            .iter()
            .find(|l| l["movement"] == held || l["toward"]["movement"] == held);
        match towards {
            None => says(told, &["It waits until that is over.", "Meanwhile train: "]),
            Some(line) => {
                assert_eq!(line["movement"], "bar-support-hold", "{line}");
                let amount = format!("{} x {} seconds", line["sets"], line["amount"]);
                says(
                    told,
                    &[&format!(
                        "Train Bar support hold [warning]: {amount}, towards Ring support"
                    )],
                );
            }
        }
        assert_eq!(towards.is_none(), off == 20, "{off}");
    }
    // Who trains on is tested, and nothing stands before it.
    let told = assess(&strong(10));
    assert!(next(&told).contains("next   Test Ring support"), "{told}");
}

/// Less than 48 hours after: it waits, and what else is trained is said.
#[test]
fn what_was_trained_yesterday_waits() {
    let told = assess(&strong(1).replace("bar-dip, got: 10 reps", "bar-dip, got: 8 reps"));
    says(
        next(&told),
        &[
            "Bar dip [warning]: 9 reps, needs 10 reps. It waits: push was trained less than 48 h before. Meanwhile train: ",
        ],
    );
}

/// One act for all sides: with which to begin, and where an old injury is asked about; nothing of what may not be trained.
#[test]
fn sides_apart_are_one_act() {
    let with = |more: &str| {
        assess(&format!(
            "born: 1995\nbodyweight: 70 kg\ngoal: one-leg-to-the-floor\nscreened: {{ says: clear, on: 2026-11-10 }}\ntested:
  - {{ movement: squat, got: 30 reps, on: 2026-11-22 }}
  - {{ movement: split-squat, left: 10 reps, right: 6 reps, on: 2026-11-22 }}
  - {{ movement: single-leg-balance, left: 50 s, right: 30 s, on: 2026-11-22 }}
  - {{ movement: knee-to-wall, left: 10 cm, right: 6 cm, on: 2026-11-22 }}\n{more}"
        ))
    };
    let told = with("");
    let told = next(&told);
    let (_, act) = told
        .split_once("Begin with the right, one set more of it: ")
        .expect(told);
    says(
        act,
        &[
            "Split squat. Ask about an old injury of the ankle.",
            "Knee to wall (left 10 cm, right 6 cm)",
            "Standing balance on one leg (left 50 seconds, right 30 seconds)",
        ],
    );
    says_not(told, &["the sides differ", "Begin with the left"]);
    // A knee that stops is not begun with: there the numbers are told, and nothing more.
    let sore = with("pain: [ { part: knee, score: 7, on: 2026-11-27 } ]\n");
    says(
        &sore,
        &["Split squat, the sides differ: left 10 reps, right 6 reps"],
    );
    says_not(
        &sore,
        &["Begin with the right, one set more of it: Split squat"],
    );
}

/// What only follows from something harder is tested; back from time off it is not.
#[test]
fn what_only_counts_is_tested() {
    let with = |more: &str| {
        assess(&format!(
            "born: 1971\nbodyweight: 88 kg\ngoal: heavy-pull-up\nscreened: {{ says: clear, on: 2026-11-20 }}\ntested:
  - {{ movement: dead-hang, got: 35 s, on: 2026-11-22 }}
  - {{ movement: row-hip-high, got: 9 reps, on: 2026-11-22 }}\n{more}"
        ))
    };
    let follows = "counts as 9 reps, from Bar row with bent knees [caution]";
    says(
        &with(""),
        &[&format!(
            "next   Test Bar row, standing [caution], 12 reps is asked: so far it only {follows}. Holds back "
        )],
    );
    let off = with("trained: [ { movement: push-up, did: [5, 5], on: 2026-11-08 } ]\n");
    says(
        &off,
        &[&format!(
            "Bar row, standing [caution] {follows}; it needs 12 reps."
        )],
    );
    says_not(&off, &["Test Bar row"]);
}

const FLOOR: &str = "born: 1988\nbodyweight: 90 kg\ngoal: balance-on-hands\nscreened: { says: light, on: 2026-11-20 }\ntested:
  - { movement: push-up-kneeling, got: 8 reps, on: 2026-11-21 }
  - { movement: plank, got: 30 s, on: 2026-11-21 }
";

/// What is not at hand, and what that stops, in one line; months as far as the first step that needs it.
#[test]
fn what_is_not_at_hand_is_said_and_no_months_beyond_it() {
    let with = |have: &str| format!("have: [{have}]\n{FLOOR}");
    let told = assess(&with("mat, box"));
    let (_, missing) = told.split_once("to be had first: ").expect(&told);
    let missing = missing.split(['\n']).next().unwrap_or_default();
    says(
        missing,
        &["wall (stops ", "phone (stops Kneeling wrist extension"],
    );
    says(next(&told), &["not at hand"]);
    says_not(&told, &["The whole way takes"]);
    // What stops the next step stands first, though more needs the wall.
    assert!(
        missing.starts_with("phone (stops Kneeling wrist extension"),
        "{missing}"
    );
    says_not(&dose(&with("mat, box")), &["The whole way takes"]);
    let held = limiter(&with("mat, box"));
    assert_eq!(held["until"]["why"], "equipment", "{held}");
    // With all of it, and where nothing is said of it, the whole way is told, and it is longer.
    let all = limiter(&with("wall, mat, box, stick, phone, tape"));
    assert!(all["until"].is_null(), "{all}");
    assert_eq!(all, limiter(FLOOR));
    let high = |of: &Value| of["weeks"][1].as_f64().expect("weeks");
    assert!(high(&held) < high(&all), "{held} {all}");
    says_not(&assess(FLOOR), &["not at hand"]);
    says(&assess(FLOOR), &["The whole way takes about "]);
}

/// Weight is shown from 18 on: no months to it, at 18 as ever.
#[test]
fn no_months_are_told_to_what_waits_for_an_age() {
    let with = |born: u32| {
        format!(
            "born: {born}\nbodyweight: 63 kg\ngoal: lift-and-carry\nscreened: {{ says: clear, on: 2026-11-20 }}\ntested:
  - {{ movement: hip-hinge, got: 9 reps, on: 2026-11-21 }}
  - {{ movement: push-up, got: 22 reps, on: 2026-11-21 }}\n"
        )
    };
    let (young, grown) = (limiter(&with(2010)), limiter(&with(2007)));
    assert_eq!(young["movement"], "hip-hinge");
    assert_eq!(young["until"]["why"], "age", "{young}");
    assert!(grown["until"].is_null(), "{grown}");
    let high = |of: &Value| of["weeks"][1].as_f64().expect("weeks");
    assert!(high(&young) < high(&grown), "{young} {grown}");
    for told in [assess(&with(2010)), dose(&with(2010))] {
        says(
            &told,
            &["It takes about ", ", then ", " is shown from 18 on."],
        );
        says_not(&told, &["The whole way takes"]);
    }
    says(&assess(&with(2007)), &["The whole way takes about "]);
}

/// Ten seconds: Araujo et al. 2022, Br J Sports Med, doi 10.1136/bjsports-2021-105360 (51 to 75 years). From 65, as the balance line is.
#[test]
fn a_short_balance_from_65_is_talked_over_first() {
    let with = |born: u32, right: u32| {
        format!(
            "born: {born}\nbodyweight: 64 kg\ngoal: one-leg-to-the-floor\nscreened: {{ says: clear, on: 2026-11-20 }}\ntested:
  - {{ movement: squat, got: 12 reps, on: 2026-11-21 }}
  - {{ movement: single-leg-balance, left: 11 s, right: {right} s, on: 2026-11-21 }}\n"
        )
    };
    let act = "next   Talk over the risk of falls first, with a clinician too: Standing balance on one leg left 11 seconds, right 9 seconds at ";
    for (born, right, is) in [
        (1956, 9, true),
        (1960, 9, true),
        (1961, 9, true),
        (1962, 9, false),
        (1956, 10, false),
    ] {
        let told = assess(&with(born, right));
        let age = 2026 - born - 1;
        assert_eq!(
            told.contains(act),
            is && age >= 65,
            "{born} {right}: {told}"
        );
        assert_eq!(
            told.contains("The whole way takes"),
            !(is && age >= 65),
            "{born} {right}: {told}"
        );
    }
    let held = limiter(&with(1956, 9));
    assert_eq!(
        (&held["until"]["why"], &held["weeks"][1]),
        (&"falls".into(), &0.0.into())
    );
}

/// A back or a neck that rests: the signs for which nobody waits for an appointment stand beside it, in the session, in the verdict and
/// for programs; a knee has none of them.
#[test]
fn a_back_that_rests_names_what_is_for_the_same_hour() {
    let of = |part: &str, score: u32| {
        let pain = format!("pain:\n  - {{ part: {part}, score: {score}, on: 2026-11-27 }}\n");
        format!("have: []\n{FLOOR}{pain}")
    };
    let signs = [
        "Call the emergency number for this: ",
        "numbness between the legs",
    ];
    for (part, score) in [("lower-back", 7), ("upper-back", 6), ("neck", 3)] {
        let of = of(part, score);
        let answer: Value =
            serde_json::from_str(&run("assess", &of, &["--as", "json"])).expect("JSON");
        let listed = answer["people"][0]["clinician"][0]
            .as_str()
            .expect("a line")
            .to_string();
        for told in [dose(&of), assess(&of), listed] {
            says(&told, &signs);
        }
    }
    for (part, score) in [("knee", 7), ("lower-back", 4)] {
        let of = of(part, score);
        for told in [dose(&of), assess(&of)] {
            says_not(&told, &["emergency number"]);
        }
    }
}
