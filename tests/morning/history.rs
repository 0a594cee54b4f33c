//! Histories: the slope against scipy.stats.theilslopes, each bound on both sides by hand, the advice in its order.

use rungbook::chain::stages;
use rungbook::curriculum::target::{Measure, ONE, Tries};
use rungbook::curriculum::{Curriculum, Day, Mass};
use rungbook::history::{
    Advice, H, History, Point, Unit, fallen, histories, stalled, theil_sen, trend,
};
use rungbook::reading::read;
use rungbook::results::{self, Person};
use rungbook::source::Snapshot;
use rungbook::training::{Roster, Trainee, aim};
use serde_json::{Value, json};
use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

fn today() -> Day {
    Day::read("2026-11-25").expect("a day")
}

/// So many days ago, so many reps, with so many kilograms.
fn point(ago: i32, reps: i64, kg: i64) -> Point {
    Point {
        on: today().plus(-ago),
        amount: reps * ONE,
        mass: Mass::of_kilograms(kg),
        tries: Tries { hits: 1, of: 1 },
    }
}

fn points(list: &[(i32, i64)]) -> Vec<Point> {
    list.iter()
        .map(|(ago, reps)| point(*ago, *reps, 0))
        .collect()
}

/// scipy 1.17: `theilslopes(y, x)`, the median of the slopes of all pairs that differ in x.
#[test]
fn slopes_are_scipys() {
    let Some(python) = std::env::var_os("RUNGBOOK_PYTHON") else {
        eprintln!("skipped: RUNGBOOK_PYTHON is not set");
        return;
    };
    // A linear congruential generator (Knuth, TAOCP volume 2, MMIX); days repeat, so that some pairs have no slope.
    let mut seed = 5u64;
    let mut below = |n: u64| {
        seed = seed
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) % n
    };
    let rows: Vec<(Vec<f64>, Vec<f64>)> = (0..300)
        .map(|_| {
            let n = 3 + below(20);
            let mut x: Vec<f64> = (0..n).map(|_| below(84) as f64 / 7.0).collect();
            x[0] = 13.0;
            let y = (0..n).map(|_| below(400) as f64 / 4.0).collect();
            (x, y)
        })
        .collect();
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference/history.py");
    let mut child = Command::new(python)
        .arg(script)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("Python starts");
    let mut stdin = child.stdin.take().expect("a pipe");
    write!(stdin, "{}", json!(rows)).expect("Python listens");
    drop(stdin);
    let out = child.wait_with_output().expect("Python ends");
    let theirs: Vec<Value> = serde_json::from_slice(&out.stdout).expect("slopes");
    assert_eq!(theirs.len(), rows.len());
    for ((x, y), their) in rows.iter().zip(&theirs) {
        let (our, their) = (
            theil_sen(x, y).expect("a slope"),
            their.as_f64().expect("a number"),
        );
        assert!(
            (our - their).abs() < 1e-9,
            "{x:?} {y:?}: ours {our}, theirs {their}"
        );
    }
}

/// By hand: 5, 6, 9 reps in weeks 0, 1, 2: slopes 1, 3 and 2, the middle 2.
#[test]
fn a_trend_takes_three_days_within_twelve_weeks() {
    let of = |list: &[(i32, i64)]| trend(&points(list), Measure::Reps, today());
    let said = of(&[(14, 5), (7, 6), (0, 9)]).expect("a trend");
    assert_eq!(
        (said.per_week, said.unit),
        (2.0, Unit::Amount(Measure::Reps))
    );
    assert_eq!(of(&[(14, 5), (0, 9)]), None);
    assert!(of(&[(84, 5), (7, 6), (0, 9)]).is_some());
    assert!(of(&[(85, 5), (7, 6), (0, 9)]).is_none());
    assert_eq!(theil_sen(&[1.0, 1.0], &[1.0, 2.0]), None);
    // The same reps with more weight: kilograms a week. Both changed: no number says both.
    let loaded = [point(14, 5, 10), point(7, 5, 12), point(0, 5, 14)];
    let said = trend(&loaded, Measure::Reps, today()).expect("a trend");
    assert_eq!((said.per_week, said.unit), (2.0, Unit::Load));
    let both = [point(14, 5, 10), point(7, 6, 12), point(0, 5, 14)];
    assert_eq!(trend(&both, Measure::Reps, today()), None);
}

#[test]
fn standing_still_is_six_weeks_and_three_tests() {
    let of = |list: &[(i32, i64)]| stalled(&points(list), false, today()).map(|s| s.weeks);
    assert_eq!(of(&[(42, 9), (30, 8), (10, 9), (0, 9)]), Some(6));
    assert_eq!(
        of(&[(41, 9), (30, 8), (10, 9), (0, 9)]),
        None,
        "a day too few"
    );
    assert_eq!(of(&[(42, 9), (10, 9), (0, 9)]), None, "a test too few");
    assert_eq!(
        of(&[(50, 9), (42, 9), (10, 9), (0, 9)]),
        None,
        "42 days ago is before them"
    );
    assert_eq!(of(&[(50, 9), (41, 9), (10, 9), (0, 9)]), Some(7));
    assert_eq!(
        of(&[(50, 9), (30, 8), (10, 10), (0, 9)]),
        None,
        "a new best"
    );
    assert_eq!(of(&[]), None);
    // Smaller is better: 10 cm, then never less.
    let reach = points(&[(60, 10), (30, 11), (10, 12), (0, 10)]);
    assert_eq!(stalled(&reach, true, today()).map(|s| s.weeks), Some(8));
    assert_eq!(
        stalled(
            &points(&[(60, 10), (30, 11), (10, 9), (0, 10)]),
            true,
            today()
        ),
        None
    );
    // More reps than ever with less weight are a best of their kind; more weight too.
    let lighter = [
        point(60, 5, 20),
        point(30, 5, 20),
        point(10, 9, 10),
        point(0, 5, 20),
    ];
    assert_eq!(stalled(&lighter, false, today()), None);
    let same = [
        point(60, 5, 20),
        point(30, 4, 20),
        point(10, 5, 18),
        point(0, 5, 20),
    ];
    assert_eq!(stalled(&same, false, today()).map(|s| s.weeks), Some(8));
}

#[test]
fn falling_is_twice_below_nine_tenths() {
    let of =
        |list: &[(i32, i64)]| fallen(&points(list), false, today()).map(|f| f.best.amount / ONE);
    assert_eq!(of(&[(30, 20), (10, 17), (0, 17)]), Some(20));
    assert_eq!(
        of(&[(30, 20), (10, 18), (0, 17)]),
        None,
        "nine tenths are not below them"
    );
    assert_eq!(of(&[(30, 20), (10, 17), (0, 18)]), None);
    assert_eq!(of(&[(30, 20), (0, 17)]), None, "one alone");
    assert_eq!(of(&[(200, 20), (84, 17), (0, 17)]), Some(20));
    assert_eq!(of(&[(200, 20), (85, 17), (0, 17)]), None, "no news");
    // 10 cm was best; 12 and 12 are more than a ninth over it, 11 and 12 not both.
    let reach = |list: &[(i32, i64)]| fallen(&points(list), true, today()).is_some();
    assert!(reach(&[(30, 10), (10, 12), (0, 12)]));
    assert!(!reach(&[(30, 10), (10, 11), (0, 12)]));
    // Fewer reps with more weight do not fall; less weight at the same reps does.
    let of = |list: [Point; 3]| fallen(&list, false, today()).is_some();
    assert!(!of([point(30, 10, 10), point(10, 5, 20), point(0, 5, 20)]));
    assert!(of([point(30, 5, 20), point(10, 5, 17), point(0, 5, 15)]));
    assert!(!of([point(30, 5, 20), point(10, 5, 18), point(0, 5, 15)]));
}

const SCHOOL: &str = "school: Room\naddress: https://room.example/\nlanguage: en\nunits: metric\nsmallest_plate: 1.25 kg\nequipment: { bar: A bar }\n";

/// A row, the pull-up above it, the pull-up with weight above that.
fn curriculum() -> Curriculum {
    let movement = |id: &str, rest: &str| {
        format!(
            "movement: {id}\nname: {id}\nposition: hanging\nequipment: [bar]\nsummary: Pull.\npattern: vertical pull\nphase: full\nstresses: [shoulder]\n{rest}"
        )
    };
    let row = movement("row", "load: body\nstandard: 8 reps\n");
    let pull = movement(
        "pull",
        "load: body\nstandard: 10 reps\nneeds: [{ row: 6 reps }]\n",
    );
    let heavy = movement(
        "heavy",
        "load: added\nstandard: 5 reps with 20 kg\nneeds: [{ pull: 6 reps }]\n",
    );
    let goal = "skill: up\nname: Up\ngoal: heavy\n";
    let texts = [
        ("content/school.yaml", SCHOOL),
        ("content/movements/row.yaml", row.as_str()),
        ("content/movements/pull.yaml", &pull),
        ("content/movements/heavy.yaml", &heavy),
        ("content/skills/up.yaml", goal),
    ];
    read(&Snapshot::of_texts(texts)).0
}

fn person(curriculum: &Curriculum, text: &str) -> Person {
    let files = Snapshot::of_texts([("p.yaml", text)]);
    let (mut people, found) = results::read(&files, curriculum, today());
    let messages: Vec<&String> = found.iter().map(|f| &f.message).collect();
    assert!(messages.is_empty(), "{messages:?}\n{text}");
    people.remove(0)
}

fn history(more: &str, of: &str) -> History {
    let curriculum = curriculum();
    let stages = stages(&curriculum);
    let roster = Roster::new(&curriculum, &stages);
    let text = format!("results: 1\nbodyweight: 80 kg\n{more}");
    let person = person(&curriculum, &text);
    let trainee = Trainee::new(&roster, &person, today());
    let all = histories(&trainee, &aim(&trainee, None));
    let ix = curriculum.find_movement(of).expect("a movement");
    all.into_iter()
        .find(|h| h.movement == ix)
        .expect("a history")
}

/// Results of a movement so many days ago.
fn tested(id: &str, list: &[(i32, u32)]) -> String {
    let one = |(ago, reps): &(i32, u32)| {
        format!(
            "  - {{ movement: {id}, got: {reps} reps, on: {} }}\n",
            today().plus(-ago)
        )
    };
    list.iter().map(one).collect()
}

/// Eight reps since seven weeks, and six rows: the row is owned by nothing but enough.
const STILL: &[(i32, u32)] = &[(50, 8), (30, 8), (15, 8), (2, 8)];

fn log(days: impl Iterator<Item = i32>, sets: &dyn Fn(i32) -> usize) -> String {
    let one = |ago: i32| {
        let did = vec!["6"; sets(ago)].join(", ");
        format!(
            "  - {{ movement: pull, did: [{did}], on: {} }}\n",
            today().plus(-ago)
        )
    };
    days.filter(|ago| sets(*ago) > 0).map(one).collect()
}

/// The advice, where it is a plateau: rows that are good enough, pulls that stand still, and a log.
fn advice(rows: u32, log: &str, more: &str) -> Option<Advice> {
    let mut text = format!(
        "{more}tested:\n{}{}",
        tested("row", &[(3, rows)]),
        tested("pull", STILL)
    );
    if !log.is_empty() {
        text.push_str(&format!("trained:\n{log}"));
    }
    history(&text, "pull").still.map(|s| s.advice)
}

#[test]
fn one_thing_to_change_in_its_order() {
    let curriculum = curriculum();
    let id = |id: &str| curriculum.find_movement(id).expect("a movement");
    // Without a log: nothing below holds back, so sets.
    assert_eq!(advice(9, "", ""), Some(Advice::Sets));
    // Rows too few for the pull's need: they hold back, and stand below it.
    assert_eq!(
        advice(4, "", "goal: pull\n"),
        Some(Advice::Below(id("row")))
    );
    // Every third day three sets for ten weeks: no week is lighter.
    let steady = log((1..70).step_by(3), &|_| 3);
    assert_eq!(advice(9, &steady, ""), Some(Advice::LighterWeek));
    // A week without in the last five: seven to nine sets a week are fewer than ten.
    let rested = |sets: usize| move |ago: i32| if (8..15).contains(&ago) { 0 } else { sets };
    let some = log((1..70).step_by(3), &rested(3));
    assert_eq!(advice(9, &some, ""), Some(Advice::Sets));
    // Thirty sets and more in three weeks, on fewer than nine days: one more day.
    let many = log((1..70).step_by(3), &rested(8));
    assert_eq!(advice(9, &many, ""), Some(Advice::Days));
    // On more days: the same with weight, which is open.
    let daily = log((1..70).step_by(1), &rested(4));
    assert_eq!(advice(9, &daily, ""), Some(Advice::Harder(id("heavy"))));
    // Under 18 nothing heavier; nothing else is there.
    assert_eq!(
        advice(9, &daily, "born: 2011\nscreened: { says: clear }\n"),
        Some(Advice::Rest)
    );
}

#[test]
fn what_explains_a_plateau_is_not_called_one() {
    let on = |ago: i32| today().plus(-ago);
    let paused = |from: i32, to: i32| {
        format!(
            "paused: [{{ part: shoulder, on: {}, until: {} }}]\n",
            on(from),
            on(to)
        )
    };
    assert_eq!(
        advice(9, "", &paused(30, 25)),
        Some(Advice::Sets),
        "six days"
    );
    assert_eq!(advice(9, "", &paused(30, 24)), None, "a week");
    assert_eq!(
        advice(9, "", &paused(60, 42)),
        Some(Advice::Sets),
        "before the six weeks"
    );
    let wrist = paused(30, 10).replace("shoulder", "wrist");
    assert_eq!(advice(9, "", &wrist), Some(Advice::Sets), "another part");
    let pain = |score: u32| {
        format!(
            "pain: [{{ part: shoulder, score: {score}, on: {} }}]\n",
            on(20)
        )
    };
    assert_eq!(advice(9, "", &pain(2)), Some(Advice::Sets));
    assert_eq!(advice(9, "", &pain(3)), None);
    // Half the sets of the six weeks before are a lighter spell; more are none.
    let then = |less: usize| move |ago: i32| if ago < H.still_days { less } else { 4 };
    assert_eq!(advice(9, &log((1..84).step_by(3), &then(2)), ""), None);
    assert!(advice(9, &log((1..84).step_by(3), &then(3)), "").is_some());
    // Two weeks off explain it, thirteen days do not.
    let off = |days: i32| move |ago: i32| if (5..4 + days).contains(&ago) { 0 } else { 4 };
    assert!(advice(9, &log(1..84, &off(13)), "").is_some());
    assert_eq!(advice(9, &log(1..84, &off(14)), ""), None);
}

/// Shares of a body weight that nobody knows compare with nothing.
#[test]
fn unknown_loads_are_left_out() {
    let curriculum = curriculum();
    let stages = stages(&curriculum);
    let roster = Roster::new(&curriculum, &stages);
    let text = |weight: &str| {
        format!(
            "results: 1\n{weight}tested:\n  - {{ movement: heavy, got: 5 reps with 0.2 bw, on: 2026-11-01 }}\n"
        )
    };
    for (weight, points) in [("", 0), ("bodyweight: 80 kg\n", 1)] {
        let person = person(&curriculum, &text(weight));
        let trainee = Trainee::new(&roster, &person, today());
        let all = histories(&trainee, &aim(&trainee, None));
        assert_eq!(all[0].points.len(), points);
    }
}
