//! What the program answers, in the layout of `dose --as json`, and that without its sentences, as the reference says it.

use rungbook::curriculum::words::Word;
use rungbook::curriculum::{Mass, MovementIx};
use rungbook::results::{Goal, Person};
use rungbook::training::{Line, Roster, Say, Session, Side, Training, Unit};
use serde_json::{Map, Value, json};

/// The whole answer, sentences too.
pub fn told(say: &Say<'_>, t: &Training, person: &Person) -> Value {
    let c = say.roster.curriculum;
    let id = |ix: MovementIx| c.movement(ix).id().as_str();
    let ids = |list: &[MovementIx]| list.iter().map(|ix| id(*ix)).collect::<Vec<_>>();
    let limiter = t.limiter.map(|at| {
        let gap = &t.gaps[at];
        let (low, high) = gap.tenths_of_weeks();
        json!({
            "movement": id(gap.movement), "target": gap.target.to_string(), "got": gap.got.map(|g| g.to_string()),
            "weeks": [low as f64 / 10.0, high as f64 / 10.0], "opens": ids(&gap.opens), "signal": say.signal(gap.movement),
            "until": gap.stop.as_ref().map(|s| json!({ "movement": id(s.at), "closed": id(s.by), "why": s.why.word() })),
        })
    });
    let chosen = person.goal.or(t.goal.as_ref().map(|g| g.of));
    let goal = chosen.map(|goal| match goal {
        Goal::Skill(ix) => c.skill(ix).id.as_str(),
        Goal::Movement(ix) => id(ix),
    });
    let kinds: Map<String, Value> = t
        .week_sets
        .iter()
        .map(|(kind, sets)| (Say::kind(*kind), json!(sets)))
        .collect();
    let day =
        |r: &rungbook::training::Retest| json!({ "on": r.on.to_string(), "tests": ids(&r.tests) });
    let retest = t.retests.first().map(|first| {
        let mut out = day(first);
        out["later"] = t.retests.get(1).map_or(Value::Null, day);
        out
    });
    json!({
        "goal": { "skill": goal, "chosen": person.goal.is_some(), "reached": t.is_reached() },
        "refused": t.refused.map(|why| json!({ "why": say.refusal(why, t.today) })),
        "conditions": t.conditions.iter().map(|c| say.condition(*c)).collect::<Vec<_>>(), "limiter": limiter,
        "sessions": t.sessions.iter().map(|s| session(say, t, s)).collect::<Vec<_>>(),
        "retest": retest, "week_sets": kinds,
    })
}

fn session(say: &Say<'_>, t: &Training, s: &Session) -> Value {
    let id = |ix: MovementIx| say.roster.curriculum.movement(ix).id().as_str();
    let left = s.left.iter();
    let left: Vec<Value> = left
        .map(|(ix, why)| json!({ "movement": id(*ix), "why": say.left(*why) }))
        .collect();
    json!({
        "on": s.on.to_string(), "week": s.week, "name": s.name.map(String::from).unwrap_or_default(), "lighter": s.lighter,
        "minutes": s.minutes, "warm_up": say.warm_up(s, t),
        "lines": s.lines.iter().map(|l| line(say, t, l)).collect::<Vec<_>>(), "left_out": left,
    })
}

fn line(say: &Say<'_>, t: &Training, l: &Line) -> Value {
    let id = |ix: MovementIx| say.roster.curriculum.movement(ix).id().as_str();
    let toward = l.gap.map(|at| {
        json!({ "movement": id(t.gaps[at].movement), "target": t.gaps[at].target.to_string() })
    });
    let (m, is_reps) = (
        say.roster.curriculum.movement(l.movement),
        l.unit == Unit::Reps,
    );
    let unit = match l.unit {
        Unit::Reps => "reps",
        Unit::Seconds => "s",
    };
    let side = l.sides.map(|s| {
        if s.weaker_first {
            "weaker first"
        } else {
            "each"
        }
    });
    let weaker = l.sides.and_then(|s| s.weaker).map(|side| match side {
        Side::Left => "left",
        Side::Right => "right",
    });
    json!({
        "block": l.block.name(), "movement": id(l.movement), "signal": say.signal(l.movement), "sets": l.sets, "amount": l.amount,
        "tempo": m.tempo().filter(|_| is_reps).map(|t| t.to_string()),
        "hold": m.hold().filter(|_| is_reps).map(|h| format!("{} {}", h.at.word(), h.seconds)),
        "unit": unit, "seconds_each": l.seconds_each.map(|micro| micro as f64 / 1e6), "with_kg": l.mass.map(Mass::kilograms),
        "side": side, "weaker": weaker, "rest_s": l.rest, "in_reserve": l.in_reserve, "minutes": l.minutes, "toward": toward,
        "instead_of": l.instead_of.map(id), "rule": l.rule.name(), "why": say.why(&l.why), "then": say.then(l),
    })
}

/// The answer as the reference gives it: no sentences; of a warm-up the school's own lines and how many more; of what is left
/// out the ids.
pub fn plain(roster: &Roster<'_>, mut told: Value) -> Value {
    let school = &roster.curriculum.school().warm_up;
    let mut own: Vec<&String> = school.values().flatten().map(|line| &line.text).collect();
    own.sort_unstable();
    told["refused"] = json!(!told["refused"].is_null());
    told["conditions"] = json!(told["conditions"].as_array().map_or(0, Vec::len));
    if let Some(limiter) = told["limiter"].as_object_mut() {
        limiter.remove("got");
        limiter.remove("signal");
    }
    for session in told["sessions"].as_array_mut().expect("a list") {
        let lines = session["warm_up"].as_array().expect("a list");
        let text = |line: &Value| line.as_str().expect("text").to_string();
        let (mut said, more): (Vec<String>, Vec<String>) = lines
            .iter()
            .map(text)
            .partition(|l| own.binary_search(&l).is_ok());
        said.sort_unstable();
        session["warm_up"] = json!({ "school": said, "more": more.len() });
        let mut left: Vec<String> = session["left_out"]
            .as_array()
            .expect("a list")
            .iter()
            .map(|l| text(&l["movement"]))
            .collect();
        left.sort_unstable();
        session["left_out"] = json!(left);
        for line in session["lines"].as_array_mut().expect("a list") {
            let line = line.as_object_mut().expect("a record");
            for key in ["signal", "why", "then"] {
                line.remove(key);
            }
        }
    }
    told
}

/// Where two answers first differ, or `None`. Weeks may differ by the rounding of a tenth, kilograms by a millionth.
pub fn difference(ours: &Value, theirs: &Value, path: &str) -> Option<String> {
    let unlike = || Some(format!("{path}: ours {ours}, theirs {theirs}"));
    match (ours, theirs) {
        (Value::Object(a), Value::Object(b)) => {
            let mut keys: Vec<&String> = a.keys().chain(b.keys()).collect();
            keys.sort_unstable();
            keys.dedup();
            keys.into_iter().find_map(|key| {
                let (a, b) = (
                    a.get(key).unwrap_or(&Value::Null),
                    b.get(key).unwrap_or(&Value::Null),
                );
                difference(a, b, &format!("{path}.{key}"))
            })
        }
        (Value::Array(a), Value::Array(b)) => {
            let named = |list: &[Value]| {
                let of = |v: &Value| v.get("movement").map(ToString::to_string);
                list.iter().map(of).collect::<Option<Vec<String>>>()
            };
            match (named(a), named(b)) {
                (Some(a), Some(b)) if a != b => {
                    return Some(format!("{path}: ours {a:?}, theirs {b:?}"));
                }
                _ if a.len() != b.len() => return unlike(),
                _ if a.iter().all(Value::is_string) && a != b => return unlike(),
                _ => {}
            }
            let mut pairs = a.iter().zip(b).enumerate();
            pairs.find_map(|(i, (a, b))| difference(a, b, &format!("{path}.{i}")))
        }
        (Value::Number(a), Value::Number(b)) => {
            let within = if path.contains(".weeks.") {
                0.051
            } else {
                1e-6
            };
            let (a, b) = (
                a.as_f64().unwrap_or(f64::NAN),
                b.as_f64().unwrap_or(f64::NAN),
            );
            if (a - b).abs() <= within {
                None
            } else {
                unlike()
            }
        }
        _ if ours == theirs => None,
        _ => unlike(),
    }
}
