//! A curriculum as the reference in Python is told it, and the routes, which are held elsewhere (`tests/chains.rs`).

use rungbook::chain;
use rungbook::curriculum::manner::{Instead, When};
use rungbook::curriculum::posture::Joints;
use rungbook::curriculum::school::WarmUpLine;
use rungbook::curriculum::target::Target;
use rungbook::curriculum::words::{Arms, Word};
use rungbook::curriculum::{Curriculum, Day, Leaf, Movement, MovementIx, Need};
use rungbook::leverage::solve;
use rungbook::proof::Proofread;
use rungbook::readiness;
use rungbook::results::{Goal, Person};
use serde_json::{Map, Value, json};

/// Movements, skills and school.
pub fn curriculum(proof: &Proofread) -> Value {
    let c = &proof.curriculum;
    let school = c.school();
    let movements: Vec<Value> = c.published().map(|(ix, _)| movement(proof, ix)).collect();
    let skills: Vec<Value> = c
        .skills()
        .map(|(_, s)| {
            json!({ "id": s.id.as_str(), "movement": id(c, s.goal.movement), "target": s.goal.target.to_string() })
        })
        .collect();
    json!({
        "presume": school.presume, "results_last_days": school.results_last, "movements": movements, "skills": skills,
        "school": {
            "sets": school.dose.sets, "reps": school.dose.reps, "hold": school.dose.hold.to_string(), "a_week": school.dose.a_week,
            "lighter_every_days": school.dose.lighter_every, "plate_kg": school.smallest_plate.kilograms(),
            "warm_up": school.warm_up.iter().map(|(class, lines)| (class.clone(), lines.iter().map(warm_up).collect::<Vec<_>>())).collect::<std::collections::BTreeMap<_, _>>(),
        },
    })
}

fn id(c: &Curriculum, ix: MovementIx) -> &str {
    c.movement(ix).id().as_str()
}

fn movement(proof: &Proofread, ix: MovementIx) -> Value {
    let c = &proof.curriculum;
    let m = c.movement(ix);
    let place: Option<Map<String, Value>> = m.place().map(|place| {
        let axes = c.family(place.family).axes.iter().zip(&place.rungs);
        axes.filter_map(|(axis, rung)| Some((axis.name.clone(), json!(rung.as_ref()?.rung))))
            .collect()
    });
    let classes: Vec<&str> = m
        .cautions()
        .iter()
        .map(|class| c.cautions().class(*class).id.as_str())
        .collect();
    let signals = m.cautions().iter();
    let signals: Vec<&str> = signals
        .map(|class| c.cautions().class(*class).signal.word())
        .collect();
    json!({
        "signals": signals, "id": m.id().as_str(), "was": m.was().iter().map(|w| w.as_str()).collect::<Vec<_>>(), "stage": proof.resolved.stages.of(ix),
        "pattern": m.pattern().word(), "family": m.place().map(|p| c.family(p.family).id.as_str()), "place": place,
        "phase": m.phase().map(Word::word), "straight": m.arms() == Some(Arms::Straight), "load": m.load().word(), "classes": classes,
        "positions": m.positions().iter().map(|p| p.word()).collect::<Vec<_>>(), "inverted": m.inverted(), "loaded": m.loaded(),
        "guarded": m.guarded(), "each_side": m.each_side(), "stresses": m.stresses().iter().map(|s| s.part.word()).collect::<Vec<_>>(),
        "stressed": m.stresses().iter().map(|s| json!([s.part.word(), s.how.map(Word::word)])).collect::<Vec<_>>(),
        "tempo": m.tempo().map(|t| t.to_string()), "hold": m.hold().map(|h| format!("{} {}", h.at.word(), h.seconds)), "rest": m.rest(),
        "instead": m.instead().iter().map(|i| instead(c, i)).collect::<Vec<_>>(),
        "equipment": m.equipment(), "weeks": m.weeks().map(|w| [w.from(), w.to()]), "standard": m.standard().to_string(),
        "dose": m.dose().as_ref().map(Target::to_string), "share": share(m), "hands_at": m.posture().and_then(|p| p.hands_at),
        "since": m.test().and_then(|t| t.since).map(|day| day.to_string()), "needs": tree(c, m.needs()),
    })
}

fn warm_up(line: &WarmUpLine) -> Value {
    let stressed = line.stresses.iter();
    let stressed: Vec<_> = stressed
        .map(|s| (s.part.word(), s.how.map(Word::word)))
        .collect();
    json!({ "do": line.text, "stressed": stressed, "equipment": line.equipment })
}

fn instead(c: &Curriculum, of: &Instead) -> Value {
    let when = match &of.when {
        When::Part(part) => ("part", part.word()),
        When::Class(class) => ("class", c.cautions().class(*class).id.as_str()),
        When::Without(word) => ("without", word.as_str()),
    };
    json!({ when.0: when.1, "do": id(c, of.movement) })
}

/// The share of body weight on the hands, the larger of both ends, where the posture tells it.
fn share(m: &Movement) -> Option<f64> {
    let posture = m.posture()?;
    // A part of the range is not the whole.
    if posture.start != Joints::default() || posture.end.is_some() {
        return None;
    }
    let solved = solve(posture).ok()?;
    solved
        .poses()
        .filter_map(|pose| pose.hands_carry)
        .reduce(f64::max)
}

fn tree(c: &Curriculum, need: &Need<Leaf>) -> Value {
    let parts = |parts: &[Need<Leaf>]| parts.iter().map(|n| tree(c, n)).collect::<Vec<_>>();
    match need {
        Need::Leaf(leaf) => {
            json!({ "movement": id(c, leaf.movement), "target": leaf.target.to_string() })
        }
        Need::All(of) => json!({ "all": parts(of) }),
        Need::Any(of) => json!({ "any": parts(of) }),
        Need::AtLeast(k, of) => json!({ "at_least": k, "of": parts(of) }),
    }
}

/// The client's route to every skill and to a goal that is a movement, with the chain below it.
pub fn routes(proof: &Proofread, person: &Person, today: Day) -> Value {
    let c = &proof.curriculum;
    let evidence = readiness::Evidence::new(c, person, today);
    let way = |goal: &Leaf| {
        let route = readiness::client_route(&evidence, goal);
        let chain = chain::resolve(c, &proof.resolved.stages, goal);
        let chain: Vec<&str> = chain.movements.iter().map(|l| id(c, l.movement)).collect();
        let movements: Vec<&str> = route
            .iter()
            .flat_map(|r| &r.movements)
            .map(|ix| id(c, *ix))
            .collect();
        json!({ "movements": movements, "half_weeks": route.map_or(0, |r| r.half_weeks), "chain": chain })
    };
    let mut out: Map<String, Value> = c
        .skills()
        .map(|(_, s)| (s.id.to_string(), way(&s.goal)))
        .collect();
    if let Some(Goal::Movement(ix)) = person.goal {
        let m = c.movement(ix);
        let goal = Leaf {
            movement: ix,
            target: m.standard(),
            own_standard: true,
            span: m.spans().id,
        };
        out.insert(m.id().to_string(), way(&goal));
    }
    Value::Object(out)
}
