//! Every number of training, with where it comes from and what a client is told just below it, at it and above it. All of it is data:
//! `thresholds/numbers.md`, and the small curriculum beside it. The expected answers are worked out by hand from the rules.

use rungbook::curriculum::{Curriculum, Day};
use rungbook::proof::{Proofread, proofread};
use rungbook::results;
use rungbook::source::Snapshot;
use rungbook::training::{K, Line, Roster, Sides, Training, Unit, train, warm_up_minutes};
use serde_json::Value;
use std::collections::BTreeSet;
use std::path::Path;

const NUMBERS: &str = "tests/training/thresholds/numbers.md";
const TODAY: &str = "2026-11-28";

/// Numbers that stand together.
#[derive(Default)]
struct Section {
    /// Names and values.
    numbers: Vec<(String, Value)>,
    source: String,
    cases: Vec<Case>,
}

/// What a client says of themselves, what is asked, and what must be answered.
struct Case {
    line: usize,
    client: String,
    asked: String,
    answer: String,
}

/// A heading holds names in backticks, each with its value behind it; then the source; then a table, in which `"` stands for the
/// client of the row above.
fn sections(text: &str) -> Vec<Section> {
    let mut out: Vec<Section> = Vec::new();
    for (i, line) in text.lines().enumerate() {
        if let Some(heading) = line.strip_prefix("## ") {
            let parts: Vec<&str> = heading.split('`').collect();
            let numbers = parts[1..].chunks(2).map(|two| {
                let value = two[1].trim().trim_end_matches(',');
                let value = serde_json::from_str(value);
                (
                    two[0].to_string(),
                    value.unwrap_or_else(|e| panic!("{heading}: {e}")),
                )
            });
            out.push(Section {
                numbers: numbers.collect(),
                ..Section::default()
            });
            continue;
        }
        let Some(section) = out.last_mut() else {
            continue;
        };
        let Some(row) = line.strip_prefix("| ") else {
            if section.cases.is_empty() {
                section.source.push_str(line);
            }
            continue;
        };
        let cells: Vec<&str> = row.split('|').map(str::trim).collect();
        if cells[0] == "client" || cells[0].starts_with("---") {
            continue;
        }
        let client = match cells[0] {
            "\"" => section.cases.last().expect("a row above").client.clone(),
            other => other.to_string(),
        };
        section.cases.push(Case {
            line: i + 1,
            client,
            asked: cells[1].to_string(),
            answer: cells[2].to_string(),
        });
    }
    out
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn numbers() -> Vec<Section> {
    sections(&std::fs::read_to_string(root().join(NUMBERS)).expect("the numbers"))
}

fn world() -> Proofread {
    let folder = root().join("tests/training/thresholds");
    let proof = proofread(&rungbook::io::snapshot(&folder).expect("a folder"));
    let found: Vec<&str> = proof.findings.iter().map(|f| f.message.as_str()).collect();
    assert!(!proof.findings.has_errors(), "{found:?}");
    proof
}

fn line(l: &Line) -> String {
    let unit = match l.unit {
        Unit::Reps => "",
        Unit::Seconds => " s",
    };
    let mut out = vec![format!(
        "{}: {} x {}{unit}",
        l.rule.name(),
        l.sets,
        l.amount
    )];
    out.extend(l.mass.map(|mass| format!("{} kg", mass.kilograms())));
    out.extend(l.in_reserve.map(|left| format!("{left} left")));
    if let Some(Sides {
        weaker: Some(side), ..
    }) = l.sides
    {
        out.push(format!("{side:?} more").to_lowercase());
    }
    out.push(format!("rest {}", l.rest));
    out.push(format!("{} min", l.minutes));
    out.join(", ")
}

/// What is answered: to the id of a movement its line, in the first session or, with ` in 2`, another; to `lines` the movements of a
/// session; to `left out`, `sessions`, `sets`, `retest` and `refused` what they say.
fn answer(of: &Training, curriculum: &Curriculum, asked: &str) -> String {
    let (asked, at) = match asked.split_once(" in ") {
        Some((asked, at)) => (asked, at.parse::<usize>().expect("a number") - 1),
        None => (asked, 0),
    };
    let id = |ix| curriculum.movement(ix).id().as_str();
    let session = of.sessions.get(at);
    let lines = session.map_or(&[][..], |s| &s.lines);
    match asked {
        "lines" => lines
            .iter()
            .map(|l| id(l.movement))
            .collect::<Vec<_>>()
            .join(" "),
        "left out" => {
            let left = session.iter().flat_map(|s| &s.left);
            left.map(|(ix, _)| id(*ix)).collect::<Vec<_>>().join(" ")
        }
        "sessions" => of.sessions.len().to_string(),
        "minutes" => session.map_or(0, |s| s.minutes).to_string(),
        "sets" => of.week_sets.values().sum::<i64>().to_string(),
        "refused" => of.refused.is_some().to_string(),
        "retest" => {
            let tests = of
                .retests
                .iter()
                .flat_map(|r| r.tests.iter().map(|ix| id(*ix)));
            tests.collect::<Vec<_>>().join(" ")
        }
        movement => {
            let ix = curriculum.find_movement(movement);
            let ix = ix.unwrap_or_else(|| panic!("`{movement}` is no movement and no question"));
            let found = lines.iter().find(|l| l.movement == ix);
            found.map_or("nothing".into(), line)
        }
    }
}

/// Whether an answer says all that is asked of it: its first part, and of those behind it the ones that are named.
fn says(answer: &str, wanted: &str) -> bool {
    let parts: Vec<&str> = answer.split(", ").collect();
    let mut wanted = wanted.split(", ");
    wanted.next() == parts.first().copied() && wanted.all(|part| parts.contains(&part))
}

/// A client of 80 kg with one session a week of two hours, where nothing else is said.
fn client(case: &Case, proof: &Proofread, roster: &Roster<'_>, today: Day) -> Training {
    let mut text = format!("results: 1\n{}\n", case.client.replace("; ", "\n"));
    for (key, usual) in [
        ("bodyweight", "80 kg"),
        ("train", "{ a_week: 1, minutes: 120 }"),
    ] {
        if !text.contains(&format!("\n{key}:")) {
            text.push_str(&format!("{key}: {usual}\n"));
        }
    }
    let files = Snapshot::of_texts([("ana.yaml", text.as_str())]);
    let (people, findings) = results::read(&files, &proof.curriculum, today);
    let found: Vec<&str> = findings.iter().map(|f| f.message.as_str()).collect();
    assert!(!findings.has_errors(), "{text}{found:?}");
    train(roster, &people[0], None, today)
}

/// Each number is the one that its source gives, and none stands in the program that is not told of.
#[test]
fn each_number_is_that_of_its_source() {
    let table = serde_json::to_value(K).expect("a table");
    let mut left: BTreeSet<&str> = table
        .as_object()
        .expect("a table")
        .keys()
        .map(String::as_str)
        .collect();
    for section in numbers() {
        let names: Vec<&str> = section
            .numbers
            .iter()
            .map(|(name, _)| name.as_str())
            .collect();
        assert!(
            section.source.len() > 20,
            "{names:?}: a source, or that there is none"
        );
        for (name, value) in &section.numbers {
            assert_eq!(&table[name], value, "{name}");
            left.remove(name.as_str());
        }
    }
    assert!(left.is_empty(), "{NUMBERS} says nothing of {left:?}");
}

/// What a client is told on each side of a number.
#[test]
fn each_threshold_has_two_sides() {
    let proof = world();
    let roster = Roster::new(&proof.curriculum, &proof.resolved.stages);
    let today = Day::read(TODAY).expect("a day");
    let (mut wrong, mut count) = (Vec::new(), 0);
    for case in numbers().iter().flat_map(|section| &section.cases) {
        let of = client(case, &proof, &roster, today);
        let found = answer(&of, &proof.curriculum, &case.asked);
        count += 1;
        if !says(&found, &case.answer) {
            wrong.push(format!(
                "{NUMBERS}:{}: {}: {found}\n    instead of {}",
                case.line, case.asked, case.answer
            ));
        }
    }
    assert!(
        wrong.is_empty(),
        "{} of {count}\n{}",
        wrong.len(),
        wrong.join("\n")
    );
    assert!(count > 56, "{count} cases");
}

/// A fifth of the minutes, at most ten. Common practice, no source.
#[test]
fn a_warm_up_is_a_fifth() {
    let of = [4, 5, 44, 45, 49, 50, 54, 55, 120].map(warm_up_minutes);
    assert_eq!(of, [0, 1, 8, 9, 9, 10, 10, 10, 10]);
}
