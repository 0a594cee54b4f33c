//! Histories on random rows of tests: the page's script says what the program says, in the same words, with the same drawing.

use super::client::{self, TODAY, today};
use super::throw::Throw;
use super::{answerer, person, shipped};
use rungbook::chain;
use rungbook::curriculum::{MovementIx, Target};
use rungbook::history::{History, Point, Unit, drawing};
use rungbook::morning::{Telling, verdict};
use rungbook::proof::Proofread;
use rungbook::readiness::assess;
use rungbook::results::Person;
use rungbook::training::{Roster, Trainee};
use serde_json::{Map, Value, json};

const CASES: u64 = 60;
/// Movements of each client with a row of tests.
const ROWS: usize = 8;

/// A client with some rows of tests added: flat, rising, falling, as it comes.
fn client(throw: &mut Throw, proof: &Proofread) -> Value {
    let mut out = client::results(throw, &proof.curriculum);
    let movements: Vec<_> = proof.curriculum.published().map(|(_, m)| m).collect();
    for _ in 0..ROWS {
        let m = throw.one(&movements);
        let same = client::test(throw, m, 12);
        let repeats = throw.chance(50);
        for _ in 0..throw.between(2, 9) {
            let mut test = match repeats {
                true => same.clone(),
                false => client::test(throw, m, 12),
            };
            test["on"] = json!(client::ago(throw.between(0, 120)));
            out["tested"].as_array_mut().expect("tests").push(test);
        }
    }
    out
}

fn point(p: &Point) -> Value {
    json!([p.on.to_string(), p.amount, p.mass])
}

fn told(
    roster: &Roster<'_>,
    telling: &Telling<'_>,
    trainee: &Trainee<'_>,
    h: &History,
    asked: &[Target],
) -> Value {
    let id = |ix: MovementIx| roster.curriculum.movement(ix).id().to_string();
    let drawn = drawing(trainee, h, asked).map(|d| {
        let rungs: Vec<Value> = d.rungs.iter().map(|r| json!([r.y, telling.amount_of(&r.at), r.named])).collect();
        let rests: Vec<Value> = d.rests.iter().map(|(a, b)| json!([a.to_string(), b.to_string()])).collect();
        json!({ "rungs": rungs, "marks": d.marks, "ticks": d.ticks, "bands": d.bands, "rests": rests })
    });
    json!({
        "tests": h.points.iter().map(point).collect::<Vec<_>>(),
        "trend": h.trend.map(|t| (t.per_week * 1000.0).round() / 1000.0),
        "by_load": h.trend.map(|t| t.unit == Unit::Load),
        "still": h.still.map(|s| json!([s.since.best.to_string(), s.since.weeks, s.advice.word(), s.advice.movement().map(id)])),
        "fallen": h.fallen.map(|f| json!([point(&f.best), point(&f.last[0]), point(&f.last[1])])),
        "says": telling.history(h), "drawn": drawn,
    })
}

fn ours(proof: &Proofread, person: &Person) -> Value {
    let roster = Roster::new(&proof.curriculum, &proof.resolved.stages);
    let readiness = assess(&proof.curriculum, &proof.resolved.stages, person, today());
    let verdict = verdict(&roster, person, &readiness, None, &[], None, today());
    let telling = Telling::new(&roster, today());
    let trainee = Trainee::new(&roster, person, today());
    let ladders = chain::ladders(&proof.curriculum, &|_| true);
    let one = |h: &History| {
        let m = proof.curriculum.movement(h.movement);
        let steps = ladders.get(&h.movement).into_iter().flatten();
        let asked: Vec<Target> = steps.map(|s| s.target).chain([m.standard()]).collect();
        (
            m.id().to_string(),
            told(&roster, &telling, &trainee, h, &asked),
        )
    };
    Value::Object(verdict.history.iter().map(one).collect::<Map<_, _>>())
}

#[test]
fn the_page_says_and_draws_the_same_histories() {
    let Some(mut page) = answerer::page() else {
        return;
    };
    let (proof, curricula) = shipped();
    let (mut still, mut fallen, mut trends, mut loads, mut bands) = (0, 0, 0, 0, 0);
    for seed in 0..CASES {
        let results = client(&mut Throw::new(seed), &proof);
        let ours = ours(&proof, &person(&proof, &results));
        let theirs = page.ask(&json!({ "tables": curricula.tables, "results": results, "today": TODAY, "history": true }));
        for (id, of) in ours.as_object().expect("a record") {
            let other = &theirs[id];
            // A slope of whole numbers over sevenths of a week: the last place may round apart.
            let near = |a: &Value, b: &Value| match (a.as_f64(), b.as_f64()) {
                (Some(a), Some(b)) => (a - b).abs() < 0.0015,
                _ => a == b,
            };
            assert!(
                near(&of["trend"], &other["trend"]),
                "{seed} {id}: {of} {other}"
            );
            for key in ["tests", "by_load", "still", "fallen", "says", "drawn"] {
                assert_eq!(of[key], other[key], "case {seed}, {id}, {key}");
            }
            still += usize::from(!of["still"].is_null());
            fallen += usize::from(!of["fallen"].is_null());
            trends += usize::from(!of["trend"].is_null());
            loads += usize::from(of["by_load"] == true);
            bands += of["drawn"]["bands"].as_array().map_or(0, Vec::len);
        }
        assert_eq!(
            ours.as_object().map(Map::len),
            theirs.as_object().map(Map::len),
            "case {seed}"
        );
    }
    println!(
        "{still} plateaus, {fallen} falling, {trends} trends, {loads} by load, {bands} pauses"
    );
    assert!(still > 5 && fallen > 5 && trends > 50 && bands > 5);
}

/// What is next, new and kept aside, in the same words; what to watch too, where nothing rests: a pause is told by each in its own.
#[test]
fn the_page_says_the_same_of_a_person() {
    let Some(mut page) = answerer::page() else {
        return;
    };
    let (proof, curricula) = shipped();
    let roster = Roster::new(&proof.curriculum, &proof.resolved.stages);
    let telling = Telling::new(&roster, today());
    let mut counts = std::collections::BTreeMap::<&str, usize>::new();
    let mut kinds = std::collections::BTreeSet::new();
    // Random ones, and those of the sessions' tests: young, sore, spared, back from time off.
    let random = (0..CASES).map(|seed| client(&mut Throw::new(seed), &proof));
    let known = super::coach::cases(&proof).into_iter().map(|c| c.results);
    for (seed, results) in random.chain(known).enumerate() {
        let person = person(&proof, &results);
        let readiness = assess(&proof.curriculum, &proof.resolved.stages, &person, today());
        let verdict = verdict(&roster, &person, &readiness, None, &[], None, today());
        let theirs = page.ask(
            &json!({ "tables": curricula.tables, "results": results, "today": TODAY, "morning": true }),
        );
        let falls = verdict.falls.map(|at| verdict.history[at].movement);
        if let Some(ix) = falls {
            let own = falls_itself(&verdict, ix);
            let key = if own { "falls itself" } else { "falls below" };
            *counts.entry(key).or_default() += 1;
        }
        let rests = verdict
            .watch
            .iter()
            .any(|w| matches!(w, rungbook::morning::Watch::Rests(_)));
        kinds.insert(next_of(&verdict.next));
        let labels = ["ask", "next", "new", "watch", "aside"];
        let lines: std::collections::BTreeMap<_, _> =
            telling.lines(&verdict, &person).into_iter().collect();
        for label in labels {
            let ours = lines.get(label).map_or(Value::Null, |text| json!(text));
            if label != "watch" || !rests {
                assert_eq!(ours, theirs[label], "case {seed}, {label}");
                *counts.entry(label).or_default() += usize::from(!ours.is_null());
            }
        }
    }
    println!("{counts:?}");
    assert!(labels_of(&counts) >= 3, "{counts:?}");
    for next in ["hurts", "blocked", "begins", "test", "work"] {
        assert!(kinds.contains(next), "{next}: {kinds:?}");
    }
    assert!(
        counts["falls itself"] > 1 && counts["falls below"] > 1,
        "{counts:?}"
    );
}

/// What holds back most, who could work together, what to test today: the same lines, with the same numbers, for classes of two to
/// twelve.
#[test]
fn the_page_says_the_same_of_a_class() {
    let Some(mut page) = answerer::page() else {
        return;
    };
    let (proof, curricula) = shipped();
    let roster = Roster::new(&proof.curriculum, &proof.resolved.stages);
    let telling = Telling::new(&roster, today());
    let words = rungbook::words::Words::english();
    let (mut lines, mut groups) = (0, 0);
    for seed in 0..CASES / 3 {
        let mut throw = Throw::new(seed + 1000);
        let people: Vec<Value> = (0..throw.between(2, 12))
            .map(|i| {
                let mut one = client(&mut throw, &proof);
                one["name"] = json!(format!("P{i}"));
                one
            })
            .collect();
        let verdicts: Vec<_> = people
            .iter()
            .map(|results| {
                let person = person(&proof, results);
                let readiness = assess(&proof.curriculum, &proof.resolved.stages, &person, today());
                verdict(&roster, &person, &readiness, None, &[], None, today())
            })
            .collect();
        let names: Vec<&str> = people.iter().filter_map(|p| p["name"].as_str()).collect();
        let class = rungbook::morning::class(&roster, &verdicts);
        let theirs =
            page.ask(&json!({ "tables": curricula.tables, "together": people, "today": TODAY }));
        let theirs = theirs.as_array().expect("three tables");
        let mut told = Vec::new();
        for table in theirs {
            told.push(
                words
                    .say(&format!("morning.{}", table[0].as_str().expect("a key")))
                    .to_string(),
            );
            let list = table[1].as_array().expect("lines");
            match list.is_empty() {
                true => told.push(format!("  {}", words.say("morning.none"))),
                false => told.extend(
                    list.iter()
                        .map(|l| format!("  {}", l.as_str().expect("text"))),
                ),
            }
        }
        assert_eq!(told, telling.class(&class, &names), "class {seed}");
        lines += told.len();
        groups += class.together.len();
    }
    println!("{lines} lines, {groups} groups");
    assert!(lines > 150 && groups > 2, "{lines} {groups}");
}

fn next_of(next: &rungbook::morning::Next) -> &'static str {
    use rungbook::morning::Next;
    match next {
        Next::Hurts(_) => "hurts",
        Next::Blocked(..) => "blocked",
        Next::Begin(_) => "begins",
        Next::Test { .. } => "test",
        Next::Work => "work",
        _ => "other",
    }
}

fn falls_itself(verdict: &rungbook::morning::Verdict, ix: MovementIx) -> bool {
    let tested =
        matches!(&verdict.next, rungbook::morning::Next::Test { movement, .. } if *movement == ix);
    let limiter = verdict.aim.as_ref().and_then(|aim| aim.limiter());
    tested || limiter.is_some_and(|gap| gap.movement == ix)
}

fn labels_of(counts: &std::collections::BTreeMap<&str, usize>) -> usize {
    counts.values().filter(|n| **n > 5).count()
}

/// One class in every way of writing it: the page reads the people that the program reads.
#[test]
fn the_page_reads_the_tables_that_the_program_reads() {
    let Some(mut page) = answerer::page() else {
        return;
    };
    let (proof, curricula) = shipped();
    let rows = [
        "name|movement|got|left|right|on|in_reserve|bodyweight|with|paused|until|born|goal",
        "Ann|dead-hang|41 s|||2026-12-01|||||||pull-up",
        "\"Ben, the younger\"|single-leg-balance||20 s|31 s|2026-12-02|||||||",
        "Ann|pull-up|5 reps|||2026-12-02|1|62 kg|5 kg|||1990|",
        "Ann|||||2026-12-03||||wrist|2026-12-30||",
    ];
    for (mark, bom) in [(",", ""), (";", "\u{feff}"), ("\t", "")] {
        let text = format!(
            "{bom}{}\r\n",
            rows.map(|r| r.replace('|', mark)).join("\r\n")
        );
        let files = rungbook::source::Snapshot::of_texts([("c.csv", text.as_str())]);
        let (people, found) = rungbook::results::read(&files, &proof.curriculum, today());
        assert_eq!((people.len(), found.len()), (2, 0), "{text}");
        let theirs = page.ask(
            &json!({ "tables": curricula.tables, "class": text, "name": "c.csv", "today": TODAY }),
        );
        let copies = theirs["copies"]
            .as_array()
            .unwrap_or_else(|| panic!("{theirs}"));
        for (ours, copy) in people.iter().zip(copies) {
            assert_eq!(copy["name"], ours.name.as_str());
            let again = person(&proof, copy);
            assert_eq!(&again, ours);
        }
        assert_eq!(copies.len(), people.len());
        assert_eq!(theirs["notes"], json!([]));
    }
    let mut ask = |name: &str, text: &str| {
        page.ask(
            &json!({ "tables": curricula.tables, "class": text, "name": name, "today": TODAY }),
        )
    };
    let odd = ask(
        "c.csv",
        "name,movment,movement,got\nAnn,,dead-hang,41 s\n,,dead-hang,3 s\n",
    );
    assert_eq!(odd["notes"].as_array().map(Vec::len), Some(2), "{odd}");
    assert!(
        odd["notes"][0]
            .as_str()
            .is_some_and(|n| n.contains("movement")),
        "{odd}"
    );
    for text in [
        "results: 1\nname: |\n  Ann\n",
        "results: 1\nname: &a Ann\n",
        "results: 1\nname: Ann\nname: Ben\n",
        "results: 1\ntested: [\n",
    ] {
        let refused = ask("a.yaml", text);
        assert!(
            refused["refused"]
                .as_str()
                .is_some_and(|why| why.contains("line ")),
            "{text} {refused}"
        );
    }
}
