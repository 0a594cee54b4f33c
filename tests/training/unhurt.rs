//! A pain never makes a session harder: what stands in it and would not without the pain, beside what would.

use super::client::today;
use super::{person, shipped};
use rungbook::curriculum::caution::Signal;
use rungbook::curriculum::words::{BodyPart, Word};
use rungbook::curriculum::{Day, MovementIx};
use rungbook::results::{Paused, Person};
use rungbook::training::{Block, Facts, Roster, Session, Trainee, Training, holds, train};
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

/// What stands in a session and in none up to its day without the pain is known or open without it. Where nothing of it is known, it
/// stresses nothing that hurts at 3 or more, is of no class with a warning, and either is no harder and no graver than something that
/// left, or has nothing to do with what hurts: then it stands in nobody's place, where it moves on as fast as any and is no higher a
/// rung than all that would stand.
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
    let of = |ix: MovementIx| roster.find(ix).expect("what is trained stands");
    let aches = |ix: &MovementIx| pains.iter().any(|p| holds(p) && of(*ix).bears_on(p.part));
    let touched = |ix: MovementIx| pains.iter().any(|p| holds(p) && of(ix).stresses(p.part));
    let mut new = 0;
    for session in &hurt.sessions {
        let stood = until(free, session.on);
        let highest = stood.iter().map(|ix| of(*ix).stage).max().unwrap_or(0);
        let here: BTreeSet<MovementIx> = session.lines.iter().map(|l| l.movement).collect();
        let left: Vec<_> = stood
            .iter()
            .filter(|ix| !here.contains(ix) || aches(ix))
            .collect();
        let says = |ix: MovementIx, why: &str| {
            let id = of(ix).of.id();
            Err(format!("{id} on {}: {why}", session.on))
        };
        for ix in here.iter().filter(|ix| trainee.now(**ix).is_none()) {
            if touched(*ix) {
                return says(*ix, "unknown, and it stresses what hurts");
            }
        }
        for ix in here.difference(&stood) {
            new += 1;
            if !trainee.may(*ix) {
                return says(
                    *ix,
                    "neither known nor open, and nothing hurt it would not stand",
                );
            }
            if trainee.now(*ix).is_some() {
                continue;
            }
            if worst(roster, *ix) == Some(Signal::Warning) {
                return says(
                    *ix,
                    "unknown, with a warning, and nothing hurt it would not stand",
                );
            }
            let free_of_it = !concerns(roster, person, *ix)
                && is_gentle(roster, *ix)
                && of(*ix).stage <= highest;
            if !free_of_it && !left.iter().any(|other| is_no_harder(of(*ix), of(**other))) {
                return says(*ix, "unknown, and harder or graver than what left");
            }
        }
    }
    Ok(new)
}

/// The gravest signal of its classes.
fn worst(roster: &Roster<'_>, ix: MovementIx) -> Option<Signal> {
    let book = roster.curriculum.cautions();
    let all = roster.curriculum.movement(ix).cautions().iter();
    all.map(|class| book.class(*class).signal).max()
}

/// Whether anything on file hurts or rests that it, or what it is the next form of, has to do with.
fn concerns(roster: &Roster<'_>, person: &Person, ix: MovementIx) -> bool {
    let of = |ix: MovementIx| roster.find(ix).expect("it stands");
    let pauses = person.pauses.iter().chain(&person.restrictions);
    let reached = |form: MovementIx| {
        let hurt = person.pains.iter().any(|p| of(form).stresses(p.part));
        let spared = |what: &Paused| match what {
            Paused::Part(part) => of(form).stresses(*part),
            Paused::Pattern(pattern) => of(form).pattern() == *pattern,
            Paused::Movement(other) => *other == form,
            Paused::Class(_) => false,
        };
        hurt || pauses.clone().any(|p| spared(&p.what))
    };
    reached(ix) || of(ix).easier.iter().any(|low| reached(*low))
}

/// It moves on as fast as any, a stand on one leg too; a stretch bears no caution.
fn is_gentle(roster: &Roster<'_>, ix: MovementIx) -> bool {
    let facts = roster.find(ix).expect("it stands");
    let free = worst(roster, ix).is_none_or(|worst| worst == Signal::Notice);
    (!facts.strict || facts.upright_balance()) && (free || !facts.mobility())
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

/// A part that hurts so much; each of some days in turn.
fn pains(part: BodyPart, scores: &[u32]) -> Value {
    let on = |at: usize| format!("2026-12-{}", 23 + at);
    let entry = |(at, score)| json!({ "part": part.word(), "score": score, "on": on(at) });
    json!({ "pain": scores.iter().enumerate().map(entry).collect::<Vec<_>>() })
}

/// Lines of practice and strength.
fn lines(session: &Session) -> usize {
    let lines = session.lines.iter();
    lines.filter(|l| l.block != Block::Range).count()
}

/// Strength that does not stress a part stands with a pain of it too, if any stood; and where it is over, a day is no thinner than
/// while it hurt and than it would have been without it.
fn is_full_enough(
    roster: &Roster<'_>,
    part: BodyPart,
    hurt: &Training,
    free: &Training,
    over: &Training,
) -> Result<(), String> {
    let strength = |t: &Training, of: &dyn Fn(MovementIx) -> bool| {
        let lines = t.sessions.iter().flat_map(|s| &s.lines);
        lines
            .filter(|l| l.block.is_hard() && of(l.movement))
            .count()
    };
    let off = |ix: MovementIx| roster.find(ix).is_some_and(|f| !f.stresses(part));
    if strength(free, &off) > 0 && strength(hurt, &|_| true) == 0 {
        return Err("no line of strength".into());
    }
    let (hurt, free, over) = (&hurt.sessions[0], &free.sessions[0], &over.sessions[0]);
    let least = lines(hurt).min(lines(free));
    match lines(over) < least {
        true => Err(format!("over, and {} lines of {least}", lines(over))),
        false => Ok(()),
    }
}

/// Of each case one goal in turn; all of them with `RUNGBOOK_SWEEP` set, which takes minutes.
#[test]
fn a_pain_never_makes_a_session_harder() {
    let (proof, _) = shipped();
    let roster = Roster::new(&proof.curriculum, &proof.resolved.stages);
    let goals: Vec<String> = proof
        .curriculum
        .skills()
        .map(|(_, s)| s.id.to_string())
        .collect();
    let all = std::env::var_os("RUNGBOOK_SWEEP").is_some();
    let (mut new, mut broken) = (0, Vec::new());
    for (who, (name, plain)) in people().into_iter().enumerate() {
        for (which, goal) in goals.iter().enumerate() {
            let with = |hurts: &Value| {
                let mut results = plain.clone();
                results["goal"] = json!(goal);
                for (key, value) in hurts.as_object().expect("a record") {
                    results[key] = value.clone();
                }
                person(&proof, &results)
            };
            let bare = with(&json!({}));
            let free = train(&roster, &bare, None, today());
            for (at, part) in BodyPart::ALL.iter().enumerate() {
                if !all && (who + at + which) % goals.len() != 0 {
                    continue;
                }
                let rest = json!({ "paused": [{ "part": part.word(), "on": "2026-12-23", "by": "client" }] });
                let cases = [2, 4, 5, 7].map(|score| pains(*part, &[score]));
                let mut say = |hurts: &Value, why: String| {
                    broken.push(format!("{name}, {goal}, {hurts}: {why}"));
                };
                for hurts in cases.into_iter().chain([rest]) {
                    let person = with(&hurts);
                    let training = train(&roster, &person, None, today());
                    match beside(&roster, &person, &training, &bare, &free, today()) {
                        Ok(n) => new += n,
                        Err(why) => say(&hurts, why),
                    }
                }
                let hurt = train(&roster, &with(&pains(*part, &[5])), None, today());
                let over = pains(*part, &[5, 0]);
                let after = train(&roster, &with(&over), None, today());
                if let Err(why) = is_full_enough(&roster, *part, &hurt, &free, &after) {
                    say(&over, why);
                }
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
