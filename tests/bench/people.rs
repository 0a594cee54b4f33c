//! `assess` on a folder of people: some with a goal and some without, some files broken.

use super::run::{median, run};
use std::fmt::Write as _;
use std::fs;
use std::path::Path;

const TODAY: &str = "2026-11-25";
const RUNS: usize = 5;
/// One file in so many is broken off in its middle.
const BROKEN: usize = 30;
/// Results of a person, and sessions.
const TESTED: usize = 40;
const TRAINED: usize = 20;

/// Writes the results of so many people for a generated curriculum of `count` movements. `goals`: all, none, or every other.
fn write(dir: &Path, people: usize, count: usize, has_goal: &dyn Fn(usize) -> bool) {
    let mut random = 99_991u64;
    let mut next = |below: usize| {
        random = random
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (random >> 33) as usize % below.max(1)
    };
    let skills = (count / 100).max(1);
    for i in 0..people {
        // What lies below is owned, the layer at the level is not yet.
        let level = (2 + next(15)) * count / 20;
        let mut text = format!("results: 1\nname: Person {i}\nbodyweight: 70 kg\n");
        let goal = next(skills);
        if has_goal(i) {
            let _ = writeln!(text, "goal: skill-{goal:03}");
        }
        text.push_str("tested:\n");
        for _ in 0..TESTED {
            let movement = next(level + count / 20);
            let reps = if movement < level {
                8 + next(5)
            } else {
                2 + next(6)
            };
            let (month, day) = (8 + next(3), 1 + next(28));
            let _ = writeln!(
                text,
                "  - {{ movement: movement-{movement:05}, got: {reps} reps, on: 2026-{month:02}-{day:02} }}"
            );
        }
        text.push_str("trained:\n");
        for _ in 0..TRAINED {
            let (movement, day) = (next(level), 1 + next(24));
            let _ = writeln!(
                text,
                "  - {{ movement: movement-{movement:05}, did: [6, 6, 5], on: 2026-11-{day:02} }}"
            );
        }
        if i % BROKEN == BROKEN - 1 {
            text.truncate(text.len() / 2);
            text.push_str("\n  - { movement: [");
        }
        fs::write(dir.join(format!("{i:04}.yaml")), text).expect("written");
    }
}

/// A row for each mix of people.
pub fn rows(
    program: &Path,
    from: &Path,
    scratch: &Path,
    people: usize,
    count: usize,
) -> Vec<String> {
    let mixes: [(&str, &dyn Fn(usize) -> bool); 3] = [
        ("all with a goal", &|_| true),
        ("none with a goal", &|_| false),
        ("every other", &|i| i % 2 == 0),
    ];
    let mut out = Vec::new();
    for (name, has_goal) in mixes {
        let dir = scratch.join("people");
        fs::create_dir_all(&dir).expect("a folder");
        write(&dir, people, count, has_goal);
        let text = |path: &Path| path.to_str().expect("a path in UTF-8").to_string();
        let args = [
            "assess",
            "--today",
            TODAY,
            "--from",
            &text(from),
            &text(&dir),
        ]
        .map(String::from);
        let nobody = ["proof", "--from", &text(from)].map(String::from);
        let (mut times, mut work, mut floor) = (Vec::new(), Vec::new(), Vec::new());
        for _ in 0..RUNS {
            // A broken file is said by the exit status.
            let ran = run(Path::new("/bin/sh"), &shell(program, &args), scratch);
            assert!(ran.out.contains("Person 1 "), "{}", ran.out);
            times.push(ran.ms);
            work.extend(ran.cpu_ms);
            floor.push(run(program, &nobody, scratch).ms);
        }
        let cpu = if work.is_empty() {
            f64::NAN
        } else {
            median(&work)
        };
        out.push(format!(
            "| {name} | {people} | {:.0} | {cpu:.0} | {:.0} |",
            median(&times),
            median(&floor)
        ));
        fs::remove_dir_all(&dir).expect("removed");
    }
    out
}

/// The command whose exit status of 1 is one of success.
fn shell(program: &Path, args: &[String]) -> Vec<String> {
    let script = "\"$0\" \"$@\" 2>/dev/null; [ $? -le 1 ]";
    let program = program.to_string_lossy().into_owned();
    [vec!["-c".into(), script.into(), program], args.to_vec()].concat()
}
