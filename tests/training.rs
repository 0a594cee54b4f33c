//! Training: the same sessions, loads, limiter and weeks from the program, from the page's own script run in a JavaScript engine,
//! and from an independent reference in Python, on random curricula and clients; clients read as a coach reads them; and
//! half a year of random lives.
//!
//! `RUNGBOOK_CASES=1000 cargo test --release --test training` throws as many curricula, each with five clients, and as many clients of
//! the shipped one; `RUNGBOOK_LIVES=40`
//! lives as many lives. The constructs that the cases hold are counted; a kind that is too rare fails the test.

mod dice;

#[path = "training/alike.rs"]
mod alike;
#[path = "training/answerer.rs"]
mod answerer;
#[path = "training/back.rs"]
mod back;
#[path = "training/care.rs"]
mod care;
#[path = "training/choice.rs"]
mod choice;
#[path = "training/client.rs"]
mod client;
#[path = "training/coach.rs"]
mod coach;
#[path = "training/facts.rs"]
mod facts;
#[path = "training/first_day.rs"]
mod first_day;
#[path = "training/histories.rs"]
mod histories;
#[path = "training/later.rs"]
mod later;
#[path = "training/lives.rs"]
mod lives;
#[path = "training/loads.rs"]
mod loads;
#[path = "training/old.rs"]
mod old;
#[path = "training/rules.rs"]
mod rules;
#[path = "training/thresholds.rs"]
mod thresholds;
#[path = "training/throw.rs"]
mod throw;
#[path = "training/told.rs"]
mod told;
#[path = "training/unhurt.rs"]
mod unhurt;
#[path = "training/world.rs"]
mod world;

use alike::{Counts, Others, client_of, compare, reduced};
use client::today;
use lives::{Life, Work};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use rungbook::curriculum::{Day, MovementIx};
use rungbook::proof::{Proofread, proofread};
use rungbook::results::{self, Person};
use rungbook::site;
use rungbook::source::Snapshot;
use rungbook::training::{Retest, Roster, Say, Trainee, Training, train};
use serde_json::Value;
use std::cell::RefCell;
use throw::Throw;

/// Random curricula, and random clients of the shipped one.
const WORLDS: u32 = 40;
/// Clients of each random curriculum.
const CLIENTS_EACH: usize = 5;
const CLIENTS: u32 = 15;
/// Lives of half a year: about half a minute of them on a quiet machine.
const LIVES: u64 = 12;
/// One of so many lives, at least, reaches its goal in half a year.
const LIVES_A_GOAL: usize = 4;
/// Each construct stands in at least so many of a thousand cases, and in one.
const LEAST_PER_MILLE: usize = 2;

fn person(proof: &Proofread, results: &Value) -> Person {
    person_on(proof, results, today())
}

fn person_on(proof: &Proofread, results: &Value, today: Day) -> Person {
    let text = results.to_string();
    let files = Snapshot::of_texts([("r.json", text.as_str())]);
    let (mut people, found) = results::read(&files, &proof.curriculum, today);
    let messages: Vec<_> = found.iter().map(|f| &f.message).collect();
    assert!(!found.has_errors(), "{messages:?}\n{results:#}");
    people.remove(0)
}

fn shipped() -> (Proofread, Curricula) {
    let snapshot = rungbook::io::snapshot(answerer::root()).expect("the shipped curriculum");
    let proof = proofread(&snapshot);
    let told = curricula(&proof, &snapshot);
    (proof, told)
}

fn others() -> Others {
    Others {
        page: answerer::page(),
        reference: answerer::reference(),
    }
}

/// A curriculum as the others are told it.
struct Curricula {
    facts: Value,
    tables: Value,
}

fn curricula(proof: &Proofread, snapshot: &Snapshot) -> Curricula {
    let built = site::build(snapshot, &site::Options::default());
    Curricula {
        facts: facts::curriculum(proof),
        tables: built.tables().expect("a site"),
    }
}

/// Asks all of one client; what differs comes back with a small file that shows it.
fn ask(
    proof: &Proofread,
    told: &Curricula,
    results: &Value,
    others: &mut Others,
) -> Result<Value, String> {
    let mut asked = |results: &Value| {
        let person = person(proof, results);
        compare(proof, &told.tables, &told.facts, results, &person, others)
    };
    asked(results).map_err(|found| {
        let small = reduced(results, &mut |less| asked(less).is_err());
        let found = asked(&small).err().unwrap_or(found);
        format!("{found}\n{small:#}")
    })
}

#[test]
fn program_page_and_reference_train_alike() {
    let others = RefCell::new(others());
    let counts = RefCell::new(Counts::default());
    let config = dice::config(WORLDS);
    let cases = config.cases as usize;
    let mut runner = TestRunner::new(config);
    let outcome = runner.run(&any::<u64>().no_shrink(), |seed| {
        let mut throw = Throw::new(seed);
        let files = world::files(&mut throw);
        let snapshot = world::snapshot(&files);
        let proof = proofread(&snapshot);
        let text = || {
            files
                .iter()
                .map(|f| f.1.as_str())
                .collect::<Vec<_>>()
                .join("\n")
        };
        if proof.findings.has_errors() {
            let found: Vec<_> = proof.findings.iter().map(|f| f.message.clone()).collect();
            return Err(TestCaseError::fail(format!("{found:?}\n{}", text())));
        }
        let told = curricula(&proof, &snapshot);
        for _ in 0..CLIENTS_EACH {
            let results = client_of(&mut throw, &proof);
            let answer = ask(&proof, &told, &results, &mut others.borrow_mut())
                .map_err(|found| TestCaseError::fail(format!("{found}\n{}", text())))?;
            counts.borrow_mut().count(&results, &answer);
            let by_coach = by_coach(&proof, &answer);
            counts
                .borrow_mut()
                .add("instead: the coach's own", by_coach);
        }
        Ok(())
    });
    if let Err(why) = outcome {
        panic!("{why}");
    }
    counts
        .borrow()
        .assert_each((cases * CLIENTS_EACH * LEAST_PER_MILLE / 1000).max(1));
}

/// Whether a line stands in the place of a movement because its definition says so.
fn by_coach(proof: &Proofread, answer: &Value) -> bool {
    let c = &proof.curriculum;
    let list = |value: &Value| value.as_array().cloned().unwrap_or_default();
    let sessions = list(&answer["sessions"]);
    let mut lines = sessions.iter().flat_map(|s| list(&s["lines"]));
    lines.any(|line| {
        let of = line["instead_of"]
            .as_str()
            .and_then(|id| c.find_movement(id));
        let named = of.map_or(&[][..], |ix| c.movement(ix).instead());
        named
            .iter()
            .any(|i| line["movement"] == c.movement(i.movement).id().as_str())
    })
}

#[test]
fn clients_of_the_shipped_curriculum_are_trained_alike() {
    let (proof, told) = shipped();
    let others = RefCell::new(others());
    let mut runner = TestRunner::new(dice::config(CLIENTS));
    let outcome = runner.run(&any::<u64>().no_shrink(), |seed| {
        let results = client_of(&mut Throw::new(seed), &proof);
        ask(&proof, &told, &results, &mut others.borrow_mut()).map_err(TestCaseError::fail)?;
        Ok(())
    });
    if let Err(why) = outcome {
        panic!("{why}");
    }
}

/// The demands stand in words in each client's file, and as checks in `training/coach.rs`.
#[test]
fn a_coach_would_sign_these_sessions() {
    let (proof, told) = shipped();
    let mut others = others();
    let cases = coach::cases(&proof);
    assert!(cases.len() >= 70, "{} clients", cases.len());
    let mut unsigned = Vec::new();
    for case in &cases {
        let signed = std::panic::catch_unwind(|| {
            case.demands();
            rules::check(case).unwrap_or_else(|why| panic!("{}: {why}", case.name));
        });
        if signed.is_err() {
            unsigned.push(case.name.clone());
        }
        if let Err(found) = compare(
            &proof,
            &told.tables,
            &told.facts,
            &case.results,
            &case.person,
            &mut others,
        ) {
            unsigned.push(format!("{}: {found}", case.name));
        }
    }
    assert!(unsigned.is_empty(), "{unsigned:#?}");
}

/// What the first session asks.
fn works(training: &Training) -> Vec<Work> {
    let Some(session) = training.sessions.first() else {
        return Vec::new();
    };
    let work = |l: &rungbook::training::Line| Work {
        movement: l.movement,
        sets: l.sets,
        amount: l.amount,
        with_kg: l.mass.map(rungbook::curriculum::Mass::kilograms),
        tests: ["first try", "show it"].contains(&l.rule.name()),
        range: l.block.name() == "range",
    };
    session.lines.iter().map(work).collect()
}

/// How a life is trained.
#[derive(Clone, Copy, PartialEq)]
enum Way {
    Planned,
    Old,
}

/// Old lives test what they trained every so many days.
const OLD_RETEST: i32 = 28;

/// One life; the week in which the goal was reached.
///
/// # Errors
/// The first answer in which something does not hold.
fn live(proof: &Proofread, seed: u64, way: Way) -> Result<Option<i32>, String> {
    let start = today();
    let mut trained: Vec<MovementIx> = Vec::new();
    let mut life = Life::new(proof, seed, start);
    let roster = Roster::new(&proof.curriculum, &proof.resolved.stages);
    let say = Say::of(&roster);
    for day in 0..lives::DAYS {
        let on = start.plus(day);
        life.night(day, on);
        life.retests(on);
        if life.has_reached() {
            return Ok(Some(day / 7));
        }
        if !life.is_a_day(on) {
            continue;
        }
        let person = person_on(proof, &life.results, on);
        if way == Way::Old {
            let works = old::works(&Trainee::new(&roster, &person, on));
            if day % OLD_RETEST >= OLD_RETEST - 7 && !trained.is_empty() {
                let tests = std::mem::take(&mut trained);
                life.plan_retests(&[Retest {
                    on: on.plus(1),
                    tests,
                }]);
            }
            if life.comes(day) {
                for work in &works {
                    life.does(work, on);
                    trained.retain(|ix| *ix != work.movement);
                    trained.push(work.movement);
                }
            }
            continue;
        }
        let training = train(&roster, &person, None, on);
        let Some(session) = training.sessions.first().filter(|s| s.on == on) else {
            continue;
        };
        if session.lighter {
            life.plan_retests(&training.retests);
        }
        let answer = told::told(&say, &training, &person);
        let case = coach::Case {
            name: format!("life {seed}, {on}"),
            proof,
            person,
            results: life.results.clone(),
            answer,
            today: on,
        };
        rules::check(&case)
            .and_then(|()| unhurt::check(&roster, &case.person, &training, on).map(|_| ()))
            .map_err(|why| format!("life {seed}, day {day}, {on}: {why}\n{:#}", life.results))?;
        if life.comes(day) {
            for work in works(&training) {
                life.does(&work, on);
            }
        }
    }
    Ok(None)
}

#[test]
fn half_a_year_of_random_lives() {
    let (proof, _) = shipped();
    let lives = match std::env::var("RUNGBOOK_LIVES") {
        Ok(n) => n.parse().expect("a whole number"),
        Err(_) => LIVES,
    };
    let all = |way: Way| -> Vec<Option<i32>> {
        let one = |seed| live(&proof, seed, way).unwrap_or_else(|why| panic!("{why}"));
        (0..lives).map(one).collect()
    };
    let (planned, old) = std::thread::scope(|both| {
        let old = both.spawn(|| all(Way::Old));
        (all(Way::Planned), old.join().expect("the old lives"))
    });
    let reached = |weeks: &[Option<i32>]| weeks.iter().flatten().count();
    // Who does not reach it in half a year counts as half a year.
    let mean = |weeks: &[Option<i32>]| {
        let sum: i32 = weeks
            .iter()
            .map(|week| week.unwrap_or(lives::DAYS / 7))
            .sum();
        f64::from(sum) / weeks.len() as f64
    };
    println!(
        "{lives} lives: planned {} reached the goal, week {:.1} in the mean; the old way {}, week {:.1}\n{planned:?}\n{old:?}",
        reached(&planned),
        mean(&planned),
        reached(&old),
        mean(&old)
    );
    assert!(
        reached(&planned) >= reached(&old) && mean(&planned) <= mean(&old),
        "the old way comes further"
    );
    assert!(
        reached(&planned) * LIVES_A_GOAL >= planned.len(),
        "few reach their goal"
    );
}
