//! A pain never makes a session harder: what stands in it and would not without the pain, beside what would.

use super::client::today;
use super::{person, shipped};
use rungbook::curriculum::words::{BodyPart, Word};
use rungbook::curriculum::{Day, MovementIx};
use rungbook::results::{Paused, Person};
use rungbook::training::{Facts, Roster, Trainee, Training, holds, train};
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// The same person without pains, pauses, and restrictions of anything but a class; `None` where there are none.
fn unhurt(person: &Person) -> Option<Person> {
    let of_class = |what: &Paused| matches!(what, Paused::Class(_));
    let (kept, gone): (Vec<_>, Vec<_>) = person
        .restrictions
        .iter()
        .cloned()
        .partition(|r| of_class(&r.what));
    let some = !(person.pains.is_empty() && person.pauses.is_empty() && gone.is_empty());
    some.then(|| Person {
        pains: Vec::new(),
        pauses: Vec::new(),
        restrictions: kept,
        ..person.clone()
    })
}

/// No higher a rung, and of no caution class that the other has not.
fn is_no_harder(one: &Facts<'_>, than: &Facts<'_>) -> bool {
    let classes = than.of.cautions();
    one.stage <= than.stage && one.of.cautions().iter().all(|c| classes.contains(c))
}

/// The movements of all sessions up to a day.
fn until(training: &Training, on: Day) -> BTreeSet<MovementIx> {
    let sessions = training.sessions.iter().filter(|s| s.on <= on);
    sessions
        .flat_map(|s| s.lines.iter().map(|l| l.movement))
        .collect()
}

/// What stands in a session and in none up to its day without the pain is known or open without it; where nothing is known of it, it
/// is no harder and no graver than something that left.
///
/// # Errors
/// The first line that is not so.
pub fn check(
    roster: &Roster<'_>,
    person: &Person,
    hurt: &Training,
    today: Day,
) -> Result<usize, String> {
    let Some(bare) = unhurt(person).filter(|_| hurt.refused.is_none()) else {
        return Ok(0);
    };
    let free = train(roster, &bare, None, today);
    beside(roster, person, hurt, &bare, &free, today)
}

/// The same, where the plan without the pain is known.
fn beside(
    roster: &Roster<'_>,
    person: &Person,
    hurt: &Training,
    bare: &Person,
    free: &Training,
    today: Day,
) -> Result<usize, String> {
    let trainee = Trainee::new(roster, bare, today);
    let pains = Trainee::new(roster, person, today).newest_pains();
    let aches = |ix: &MovementIx| {
        let bears = |part: BodyPart| roster.find(*ix).is_some_and(|f| f.bears_on(part));
        pains.iter().any(|p| holds(p) && bears(p.part))
    };
    let mut new = 0;
    for session in &hurt.sessions {
        let stood = until(free, session.on);
        let here: BTreeSet<MovementIx> = session.lines.iter().map(|l| l.movement).collect();
        let left: Vec<_> = stood
            .iter()
            .filter(|ix| !here.contains(ix) || aches(ix))
            .collect();
        for ix in here.difference(&stood) {
            new += 1;
            let of = |ix: MovementIx| roster.find(ix).expect("what is trained stands");
            let says = |why: &str| {
                let id = of(*ix).of.id();
                Err(format!(
                    "{id} on {}: {why}, and nothing hurt it would not stand",
                    session.on
                ))
            };
            if !trainee.may(*ix) {
                return says("neither known nor open");
            }
            let known = trainee.now(*ix).is_some();
            if !known && !left.iter().any(|other| is_no_harder(of(*ix), of(**other))) {
                return says("unknown, and harder or graver than what left");
            }
        }
    }
    Ok(new)
}

/// Nothing is known; some reps of all that is plain; strong.
fn people() -> [(&'static str, Value); 5] {
    let known = |born: i32, tested: &[(&str, &str)]| {
        let tested: Vec<_> = tested
            .iter()
            .map(|(id, got)| json!({ "movement": id, "got": got, "on": "2026-12-20" }))
            .collect();
        json!({ "results": 1, "born": born, "bodyweight": "70 kg", "screened": { "says": "clear", "on": "2026-12-01" }, "tested": tested })
    };
    [
        ("fifteen", known(2011, &[])),
        ("beginner", known(1990, &[])),
        ("older beginner", known(1955, &[])),
        (
            "some",
            known(
                1990,
                &[
                    ("kneeling-push-up", "14 reps"),
                    ("bodyweight-squat", "15 reps"),
                    ("dead-hang", "25 s"),
                ],
            ),
        ),
        (
            "ten pull-ups",
            known(
                1990,
                &[
                    ("pull-up", "10 reps"),
                    ("push-up", "20 reps"),
                    ("bar-dip", "8 reps"),
                ],
            ),
        ),
    ]
}

#[test]
fn a_pain_never_makes_a_session_harder() {
    let (proof, _) = shipped();
    let roster = Roster::new(&proof.curriculum, &proof.resolved.stages);
    let goals: Vec<String> = proof
        .curriculum
        .skills()
        .map(|(_, s)| s.id.to_string())
        .collect();
    let (mut new, mut broken) = (0, Vec::new());
    for (name, plain) in people() {
        for goal in &goals {
            let mut bare = plain.clone();
            bare["goal"] = json!(goal);
            let bare = super::person(&proof, &bare);
            let free = train(&roster, &bare, None, today());
            let mut case = |hurts: Value| {
                let mut results = plain.clone();
                results["goal"] = json!(goal);
                for (key, value) in hurts.as_object().expect("a record") {
                    results[key] = value.clone();
                }
                let person = person(&proof, &results);
                let training = train(&roster, &person, None, today());
                match beside(&roster, &person, &training, &bare, &free, today()) {
                    Ok(n) => new += n,
                    Err(why) => broken.push(format!("{name}, {goal}, {hurts}: {why}")),
                }
            };
            for part in BodyPart::ALL {
                for score in [2, 4, 6, 8] {
                    case(
                        json!({ "pain": [{ "part": part.word(), "score": score, "on": "2026-12-23" }] }),
                    );
                }
                case(
                    json!({ "paused": [{ "part": part.word(), "on": "2026-12-23", "by": "client" }] }),
                );
            }
        }
    }
    assert!(new > 0, "nothing stands in");
    assert!(
        broken.is_empty(),
        "{} of them\n{:#?}",
        broken.len(),
        &broken[..broken.len().min(12)]
    );
}

#[test]
fn the_page_and_the_reference_keep_out_the_same() {
    let (proof, told) = shipped();
    let mut others = super::others();
    let pain =
        |part: &str, score: u32| json!([{ "part": part, "score": score, "on": "2026-12-23" }]);
    let rest = json!([{ "part": "shoulder", "on": "2026-12-23", "by": "client" }]);
    let cases = [
        (2011, "pain", pain("knee", 2), "push-up-kneeling"),
        (1991, "pain", pain("knee", 6), "push-up-kneeling"),
        (1991, "pain", pain("upper-back", 6), "row-upright"),
        (1991, "pain", pain("lower-back", 6), "hip-hinge"),
        (1991, "pain", pain("hamstring", 6), "hip-hinge"),
        (1991, "pain", pain("neck", 6), "row-upright"),
        (1991, "paused", rest, "row-upright"),
    ];
    for (born, key, value, named) in cases {
        let results = json!({
            "results": 1, "born": born, "goal": "heavy-pull-up", key: value,
            "screened": { "says": "clear", "on": "2026-12-01" },
        });
        let answer = super::ask(&proof, &told, &results, &mut others);
        let answer = answer.unwrap_or_else(|why| panic!("{why}"));
        let first = answer["sessions"][0].to_string();
        for id in ["bar-support-hold", "dead-hang", "split-squat", "\"squat\""] {
            assert!(!first.contains(id), "{results}: {id}\n{first}");
        }
        let left = answer["sessions"][0]["left_out"].to_string();
        assert!(
            left.contains(named),
            "{results}: {named} is not named\n{left}"
        );
    }
}
