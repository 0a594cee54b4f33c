//! The guided self-test over simulated clients: it never asks for a test whose foundations are not shown, it stops when
//! everything is decided, and its questions are counted.
//!
//! `RUNGBOOK_CLIENTS=2000 cargo test --release --test placement -- --nocapture` measures; the usual run takes a few. The bound
//! that it prints is log2 of the number of possible placements where a decision diagram counts them, else the entropy of the
//! simulated clients, and says which.

#[path = "placement/diagram.rs"]
mod diagram;

use diagram::{Place, Placements};
use rungbook::chain::{self, Flat};
use rungbook::curriculum::target::{Got, Measure};
use rungbook::curriculum::{Curriculum, Day, MovementIx, Target};
use rungbook::placement::{Board, P, day_order};
use rungbook::proof::{Proofread, proofread};
use rungbook::readiness::{self, Evidence, State};
use rungbook::results::{Person, Sides, Tested};
use rungbook::source::Snapshot;
use std::collections::{BTreeMap, HashSet};
use std::path::Path;

fn today() -> Day {
    Day::read("2026-11-25").expect("a day")
}

/// A stream of numbers that is the same on every machine (the usual 64-bit shift generator).
struct Dice(u64);

impl Dice {
    fn roll(&mut self, below: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % below
    }
}

/// What a client can do: for each movement the demands that are met, easiest first.
type Client = BTreeMap<MovementIx, Vec<Target>>;

/// A client who is consistent: nothing is met above foundations that are not. `level` runs from the ground to the goal; what
/// lies well below it is mostly there, what lies well above mostly not.
fn client(curriculum: &Curriculum, flat: &Flat, chain: &chain::Chain, dice: &mut Dice) -> Client {
    let top = chain.movements.iter().map(|l| l.stage).max().unwrap_or(0);
    let level = dice.roll(u64::from(top + 2) * 100) as i64;
    let mut met: Client = BTreeMap::new();
    for link in &chain.movements {
        let movement = curriculum.movement(link.movement);
        let holds = |leaf: &rungbook::curriculum::Leaf| {
            met.get(&leaf.movement)
                .is_some_and(|m| m.iter().any(|t| t.asks_at_least(&leaf.target)))
        };
        let mut of = Vec::new();
        if movement.needs().holds(&holds) {
            let chance = (50 + (level - i64::from(link.stage) * 100) * 2 / 5).clamp(4, 96) as u64;
            let mut demands: Vec<Target> = flat
                .demands
                .iter()
                .filter(|(m, _)| flat.movements[*m as usize] == link.movement)
                .map(|(_, t)| *t)
                .collect();
            demands.sort_by(|a, b| a.order(b));
            for demand in demands {
                if dice.roll(100) >= chance {
                    break;
                }
                of.push(demand);
            }
        }
        met.insert(link.movement, of);
    }
    met
}

/// A client's honest answer as results of a day: each demand that is met, and nothing.
fn answer(person: &mut Person, curriculum: &Curriculum, ix: MovementIx, met: &[Target], on: Day) {
    let standard = &curriculum.movement(ix).standard();
    let text = |t: &Target| {
        t.to_string()
            .replace("at most ", "")
            .replace(" each side", "")
    };
    let nothing = match (standard.at_most(), standard.measure()) {
        (true, Measure::Length) => "90000 cm",
        (true, Measure::Angle) => "90000 deg",
        (true, _) => "90000 s",
        (_, Measure::Reps) => "0 reps",
        (_, Measure::Time) => "0 s",
        (_, Measure::Length) => "0 cm",
        (_, Measure::Angle) => "0 deg",
        (_, Measure::Done) => "not done",
    };
    let texts = met.iter().map(text).chain([nothing.to_string()]);
    for text in texts {
        let got = Got::read(&text).unwrap_or_else(|e| panic!("{text}: {e:?}"));
        person.tested.push(Tested {
            movement: ix,
            sides: Sides::Both(got),
            on,
            in_reserve: 0,
            body_weight: None,
        });
    }
}

fn nobody() -> Person {
    Person {
        name: "simulated".into(),
        ..Person::default()
    }
}

fn shipped() -> Proofread {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    proofread(&rungbook::io::snapshot(root).expect("the shipped curriculum"))
}

struct Run {
    questions: usize,
    /// Movements whose state is still `test first` by the letter.
    left: usize,
    placement: Vec<(State, bool)>,
    /// Mobility and balance that might have been tested today, had not a test that follows them in a day come first.
    barred: usize,
}

/// Asks until the guided test stops.
fn run(proof: &Proofread, flat: &Flat, chain: &[MovementIx], client: &Client) -> Run {
    let (curriculum, stages) = (&proof.curriculum, &proof.resolved.stages);
    let mut person = nobody();
    let mut asked = Vec::new();
    let (mut latest, mut barred) = (0, 0);
    loop {
        let evidence = Evidence::new(curriculum, &person, today());
        let readiness = readiness::assess(curriculum, stages, &person, today());
        let board = Board::new(
            curriculum,
            stages,
            flat,
            chain,
            &evidence,
            &readiness,
            today(),
        );
        let Some(question) = board.next(&asked) else {
            let placement: Vec<(State, bool)> = chain
                .iter()
                .map(|ix| readiness.of(*ix).expect("answered for"))
                .map(|s| (s.state, s.presumed))
                .collect();
            return Run {
                questions: asked.len(),
                barred,
                left: placement.iter().filter(|p| p.0 == State::TestFirst).count(),
                placement,
            };
        };
        assert!(
            !asked.contains(&question.movement),
            "nothing is asked twice"
        );
        let state = readiness.of(question.movement).expect("answered for");
        assert!(
            !question.today || state.needs == readiness::Truth::True,
            "a test today only where the needs are shown"
        );
        let order = day_order(curriculum.movement(question.movement));
        if question.today {
            assert!(
                order >= latest,
                "nothing comes after what follows it in a day"
            );
            latest = order;
        } else if state.needs == readiness::Truth::True && order < latest && order < P.strength {
            barred += 1;
        }
        asked.push(question.movement);
        // A number from training is of another day.
        let on = match question.today {
            true => today(),
            false => Day::read("2026-11-18").expect("a day"),
        };
        answer(
            &mut person,
            curriculum,
            question.movement,
            &client[&question.movement],
            on,
        );
    }
}

/// So many nodes a diagram may have.
const MOST_NODES: usize = 1_000_000;

/// Where a client of whom everything is known stands.
fn placement(
    curriculum: &Curriculum,
    stages: &chain::Stages,
    chain: &[MovementIx],
    client: &Client,
) -> Vec<Place> {
    let mut person = nobody();
    for ix in chain {
        answer(&mut person, curriculum, *ix, &client[ix], today());
    }
    let readiness = readiness::assess(curriculum, stages, &person, today());
    let place = |ix: &MovementIx| match readiness.of(*ix).expect("answered for").state {
        State::Owned => Place::Owned,
        State::Open => Place::Open,
        _ => Place::Neither,
    };
    chain.iter().map(place).collect()
}

#[test]
fn few_questions_place_a_client() {
    let clients: usize = std::env::var("RUNGBOOK_CLIENTS")
        .ok()
        .and_then(|n| n.parse().ok())
        .unwrap_or(12);
    let proof = shipped();
    let flat = Flat::new(&proof.curriculum);
    for (_, skill) in proof.curriculum.skills() {
        let chain = chain::resolve(&proof.curriculum, &proof.resolved.stages, &skill.goal);
        let movements: Vec<MovementIx> = chain.movements.iter().map(|l| l.movement).collect();
        let mut dice = Dice(0x5eed_0000_0000_0001 + movements.len() as u64);
        let mut counts = Vec::new();
        let mut left = Vec::new();
        let mut barred = 0;
        let possible = Placements::new(&flat, &movements, MOST_NODES);
        let mut placements: BTreeMap<Vec<Place>, usize> = BTreeMap::new();
        for _ in 0..clients {
            let client = client(&proof.curriculum, &flat, &chain, &mut dice);
            let run = run(&proof, &flat, &movements, &client);
            counts.push(run.questions);
            left.push(run.left);
            barred += run.barred;
            let place = placement(
                &proof.curriculum,
                &proof.resolved.stages,
                &movements,
                &client,
            );
            assert!(
                possible.as_ref().is_none_or(|p| p.holds(&place)),
                "{}: a client stands where none can: {place:?}",
                skill.id
            );
            *placements.entry(place).or_default() += 1;
        }
        counts.sort_unstable();
        left.sort_unstable();
        let entropy: f64 = placements
            .values()
            .map(|n| *n as f64 / clients as f64)
            .map(|p| -p * p.log2())
            .sum();
        let median = counts[clients / 2];
        let bound = match &possible {
            Some(p) => format!(
                "{:.1} bits: log2 of all {} possible placements",
                (p.count as f64).log2(),
                p.count
            ),
            None => format!("{entropy:.1} bits: the entropy of these clients"),
        };
        println!(
            "{}: {} tests on the sheet, median {median} questions ({} %), most {}; {bound}; {} placements seen, entropy {entropy:.1} bits; {} left to test first, {barred} barred",
            skill.id,
            movements.len(),
            median * 100 / movements.len(),
            counts[clients - 1],
            placements.len(),
            left[clients / 2],
        );
        assert_eq!(
            barred, 0,
            "{}: what comes first in a day came first",
            skill.id
        );
        // A few clients tell little; of many the median is a number to hold.
        let most = if clients < 1000 { 100 } else { 50 };
        assert!(
            median * 100 <= most * movements.len() && median < movements.len(),
            "{}: {median} questions",
            skill.id
        );
    }
}

/// Nothing is known, nothing may be done: the first questions stand on the ground, or ask for numbers from training.
#[test]
fn a_newcomer_begins_on_the_ground() {
    let text = |i: usize, needs: &str| {
        (
            format!("content/movements/m{i}.yaml"),
            format!(
                "movement: m{i}\nname: M{i}\npattern: core\nposition: prone\nload: body\nequipment: []\nsummary: S.\nstandard: 10 reps\n{needs}"
            ),
        )
    };
    let mut files = vec![
        (
            "content/school.yaml".to_string(),
            "school: T\naddress: https://test.example/\nlanguage: en\nunits: metric\n".to_string(),
        ),
        (
            "content/skills/s.yaml".to_string(),
            "skill: s\nname: S\ngoal: m7\n".to_string(),
        ),
        text(0, ""),
    ];
    (1..8).for_each(|i| files.push(text(i, &format!("needs: [m{}]\n", i - 1))));
    let snapshot = Snapshot::of_texts(files.iter().map(|(p, t)| (p.as_str(), t.as_str())));
    let proof = proofread(&snapshot);
    let flat = Flat::new(&proof.curriculum);
    let goal = &proof.curriculum.skills().next().expect("a skill").1.goal;
    let chain: Vec<MovementIx> = chain::resolve(&proof.curriculum, &proof.resolved.stages, goal)
        .movements
        .iter()
        .map(|l| l.movement)
        .collect();
    // On a ladder of eight, halving finds any of the eight places in at most three questions.
    let mut seen = HashSet::new();
    for owned in 0..8 {
        let standard = Target::read("10 reps").expect("a target");
        let client: Client = chain
            .iter()
            .enumerate()
            .map(|(i, ix)| (*ix, if i < owned { vec![standard] } else { vec![] }))
            .collect();
        let run = run(&proof, &flat, &chain, &client);
        assert!(run.questions <= 3, "{owned}: {}", run.questions);
        seen.insert(run.placement);
    }
    assert_eq!(seen.len(), 8, "each place is told apart");
}

/// A curriculum of movements `m0`, `m1` and so on with these needs; the last one is the goal.
fn with_needs(needs: &[String]) -> Proofread {
    with_patterns(needs, |_| "core")
}

fn with_patterns(needs: &[String], pattern: impl Fn(usize) -> &'static str) -> Proofread {
    let mut files = vec![
        (
            "content/school.yaml".to_string(),
            "school: T\naddress: https://test.example/\nlanguage: en\nunits: metric\n".to_string(),
        ),
        (
            "content/skills/s.yaml".to_string(),
            format!("skill: s\nname: S\ngoal: m{}\n", needs.len() - 1),
        ),
    ];
    for (i, needs) in needs.iter().enumerate() {
        files.push((
            format!("content/movements/m{i}.yaml"),
            format!(
                "movement: m{i}\nname: M{i}\npattern: {}\nposition: prone\nload: body\nequipment: []\nsummary: S.\nstandard: 5 reps\nneeds: [{needs}]\n",
                pattern(i)
            ),
        ));
    }
    proofread(&Snapshot::of_texts(
        files.iter().map(|(p, t)| (p.as_str(), t.as_str())),
    ))
}

fn chain_of(proof: &Proofread) -> Vec<MovementIx> {
    let goal = &proof.curriculum.skills().next().expect("a skill").1.goal;
    let resolved = chain::resolve(&proof.curriculum, &proof.resolved.stages, goal);
    resolved.movements.iter().map(|l| l.movement).collect()
}

/// The different placements of every consistent client there is, each assessed by the program.
fn by_brute_force(proof: &Proofread, flat: &Flat, chain: &[MovementIx]) -> HashSet<Vec<Place>> {
    let demands: Vec<(MovementIx, Target)> = flat
        .demands
        .iter()
        .map(|(m, target)| (flat.movements[*m as usize], *target))
        .filter(|(ix, _)| chain.contains(ix))
        .collect();
    assert!(demands.len() <= 16, "{} demands", demands.len());
    let mut out = HashSet::new();
    for bits in 0..1_u32 << demands.len() {
        let mut client: Client = chain.iter().map(|ix| (*ix, Vec::new())).collect();
        for (i, (ix, target)) in demands.iter().enumerate() {
            if bits >> i & 1 == 1 {
                client.entry(*ix).or_default().push(*target);
            }
        }
        let meets = |ix: MovementIx, target: &Target| client[&ix].contains(target);
        let consistent = demands
            .iter()
            .filter(|(ix, t)| meets(*ix, t))
            .all(|(ix, t)| {
                let implied = demands
                    .iter()
                    .filter(|(other, weaker)| other == ix && t.asks_at_least(weaker))
                    .all(|(_, weaker)| meets(*ix, weaker));
                let needs = proof.curriculum.movement(*ix).needs();
                implied && needs.holds(&|leaf| meets(leaf.movement, &leaf.target))
            });
        if consistent {
            out.insert(placement(
                &proof.curriculum,
                &proof.resolved.stages,
                chain,
                &client,
            ));
        }
    }
    out
}

/// The count of possible placements is that of brute force: by hand, and on random curricula with demands below and above the
/// standard, alternatives, and at least k of.
#[test]
fn possible_placements_are_counted_exactly() {
    let texts = |needs: &[&str]| needs.iter().map(|n| n.to_string()).collect::<Vec<_>>();
    // On a ladder one owns nothing, or up to a rung. Of two movements on the ground each is owned or open, and the goal above
    // both tells two more where both are.
    for (needs, count) in [
        (texts(&["", "m0", "m1", "m2"]), 5),
        (texts(&["", "", "m0, m1"]), 5),
        (texts(&["", "", "any of: [m0, m1]"]), 7),
        (texts(&["", "m0: 8 reps"]), 4),
    ] {
        let proof = with_needs(&needs);
        let flat = Flat::new(&proof.curriculum);
        let found = Placements::new(&flat, &chain_of(&proof), MOST_NODES).expect("it is small");
        assert_eq!(found.count, count, "{needs:?}");
    }
    let mut dice = Dice(0x5eed_0000_0000_0007);
    let targets = ["", ": 8 reps", ": 3x5", ": 3 reps"];
    let (mut unlike, mut beside) = (HashSet::new(), 0);
    for _ in 0..60 {
        let size = 3 + dice.roll(4) as usize;
        let needs: Vec<String> = (0..size)
            .map(|i| {
                let leaf = |dice: &mut Dice| {
                    let target = targets[dice.roll(6).saturating_sub(2) as usize];
                    let of = dice.roll(i.max(1) as u64);
                    match target {
                        "" => format!("m{of}"),
                        target => format!("{{ m{of}{target} }}"),
                    }
                };
                match (i, dice.roll(4)) {
                    (0, _) => String::new(),
                    (_, 0) => leaf(&mut dice),
                    (_, 1) => format!("{}, {}", leaf(&mut dice), leaf(&mut dice)),
                    (_, 2) => format!("any of: [{}, {}]", leaf(&mut dice), leaf(&mut dice)),
                    _ => format!(
                        "at least 2 of: [{}, {}, {}]",
                        leaf(&mut dice),
                        leaf(&mut dice),
                        leaf(&mut dice)
                    ),
                }
            })
            .collect();
        let proof = with_needs(&needs);
        assert!(
            proof.curriculum.movements().all(|(_, m)| !m.faulty()),
            "{needs:?}"
        );
        let flat = Flat::new(&proof.curriculum);
        let chain = chain_of(&proof);
        let found = Placements::new(&flat, &chain, MOST_NODES).expect("it is small");
        let all = by_brute_force(&proof, &flat, &chain);
        assert_eq!(found.count, all.len() as u128, "{needs:?}");
        assert!(all.iter().all(|p| found.holds(p)), "{needs:?}");
        unlike.insert(found.count);
        beside += usize::from(flat.demands.len() > flat.movements.len());
    }
    assert!(unlike.len() > 10 && beside > 20, "{unlike:?}, {beside}");
    // A diagram that may hold next to nothing says so.
    let proof = with_needs(&texts(&["", "m0", "m1", "m2"]));
    let flat = Flat::new(&proof.curriculum);
    assert!(Placements::new(&flat, &chain_of(&proof), 6).is_none());
}

fn board<'a>(proof: &'a Proofread, flat: &'a Flat, person: &'a Person) -> Board<'a> {
    let (curriculum, stages) = (&proof.curriculum, &proof.resolved.stages);
    let evidence = Evidence::new(curriculum, person, today());
    let readiness = readiness::assess(curriculum, stages, person, today());
    Board::new(
        curriculum,
        stages,
        flat,
        &chain_of(proof),
        &evidence,
        &readiness,
        today(),
    )
}

/// A day holds two all-out sets of a pattern, whether of one test or of two, in one result or in several.
#[test]
fn sets_of_a_day_are_counted() {
    let needs: Vec<String> = ["", "", "", "m0, m1, m2"].map(String::from).into();
    let proof = with_patterns(&needs, |i| ["core", "core", "mobility", "squat"][i]);
    let flat = Flat::new(&proof.curriculum);
    let ix = |id: &str| proof.curriculum.find_movement(id).expect("it is there");
    let allowed = |results: &[(&str, &str, Day)]| {
        let mut person = nobody();
        for (id, got, on) in results {
            person.tested.push(Tested {
                movement: ix(id),
                sides: Sides::Both(Got::read(got).expect("a result")),
                on: *on,
                in_reserve: 0,
                body_weight: None,
            });
        }
        board(&proof, &flat, &person)
            .for_today()
            .contains(&ix("m1"))
    };
    let yesterday = Day::read("2026-11-24").expect("a day");
    for (results, may) in [
        (vec![], true),
        (vec![("m0", "3 reps", today())], true),
        (
            vec![("m0", "3 reps", today()), ("m1", "3 reps", today())],
            false,
        ),
        (
            vec![("m0", "3 reps", today()), ("m0", "4 reps", today())],
            false,
        ),
        (vec![("m0", "2x5", today())], false),
        (vec![("m0", "10 s in 1 of 2 tries", today())], false),
        (
            vec![("m0", "3x5", yesterday), ("m0", "4 reps", yesterday)],
            true,
        ),
        (vec![("m2", "3x5", today())], true),
    ] {
        assert_eq!(allowed(&results), may, "{results:?}");
    }
}

/// Strength would decide more, but mobility comes before it in a day.
#[test]
fn mobility_is_asked_before_strength() {
    let needs: Vec<String> = ["", "", "m0", "m2", "m3", "m4, m1"]
        .map(String::from)
        .into();
    let asked = |pattern: &'static str| {
        let proof = with_patterns(&needs, |i| if i == 1 { pattern } else { "core" });
        let flat = Flat::new(&proof.curriculum);
        let nobody = nobody();
        let board = board(&proof, &flat, &nobody);
        let (mut asked, mut today) = (Vec::new(), Vec::new());
        while let Some(question) = board.next(&asked) {
            asked.push(question.movement);
            if question.today {
                today.push(
                    proof
                        .curriculum
                        .movement(question.movement)
                        .id()
                        .to_string(),
                );
            }
        }
        today
    };
    assert_eq!(asked("core"), ["m0", "m1"]);
    assert_eq!(asked("balance"), ["m1", "m0"]);
    assert_eq!(asked("mobility"), ["m1", "m0"]);
}
