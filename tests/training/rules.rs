//! What holds of every answer, whoever the client is.

use super::coach::{Case, Line};
use rungbook::curriculum::Day;
use rungbook::curriculum::target::ONE;
use rungbook::curriculum::words::{Phase, Word};
use rungbook::readiness::{self, Readiness, State, Truth};
use serde_json::Value;
use std::collections::BTreeMap;

const HEAVY: [&str; 5] = [
    "lowering",
    "loaded",
    "straight-arm",
    "shoulder-extension",
    "neck-load",
];

/// Push, pull, legs or core.
fn group(pattern: &str) -> Option<&'static str> {
    Some(match pattern {
        "vertical push" | "horizontal push" => "push",
        "vertical pull" | "horizontal pull" => "pull",
        "squat" | "hinge" | "carry" => "legs",
        "core" => "core",
        _ => return None,
    })
}

/// Every invariant.
///
/// # Errors
/// The first that does not hold.
pub fn check(case: &Case<'_>) -> Result<(), String> {
    let on = case.day();
    let answer = &case.answer;
    if !answer["refused"].is_null() {
        let nothing =
            case.sessions().is_empty() && answer["limiter"].is_null() && answer["retest"].is_null();
        return if nothing {
            Ok(())
        } else {
            Err("refused, and yet a plan".into())
        };
    }
    if case
        .person
        .screened
        .as_ref()
        .is_some_and(|s| s.says.word() == "ask")
    {
        return Err("the health questions said to ask first".into());
    }
    let lines = case.lines();
    let readiness = readiness::assess(
        &case.proof.curriculum,
        &case.proof.resolved.stages,
        &case.person,
        on,
    );
    for line in &lines {
        of_line(case, line, &readiness, on).map_err(|why| format!("{why}: {}", line.line))?;
    }
    for session in case.sessions() {
        of_session(case, session, &lines).map_err(|why| format!("{why}: {session:#}"))?;
    }
    apart(case, &lines)?;
    of_week(case, &lines, on)
}

fn of_line(case: &Case<'_>, line: &Line<'_>, readiness: &Readiness, on: Day) -> Result<(), String> {
    let (m, c) = (line.movement, &case.proof.curriculum);
    let ix = c.find_movement(m.id().as_str()).ok_or("no such movement")?;
    let state = readiness.of(ix).map(|s| s.state);
    // Or done before: a number of its own, while nothing that it needs failed; neither inverted nor loaded.
    let measured = case.person.tested.iter().any(|t| t.movement == ix)
        || case.person.trained.iter().any(|t| t.movement == ix);
    let before = matches!(state, Some(State::Almost | State::TestFirst))
        && readiness.of(ix).is_some_and(|s| s.needs == Truth::Unknown)
        && measured
        && !m.guarded()
        && !["first try", "until it is tested", "show it"].contains(&line.says("rule"));
    // Or tried first where what is open of its group rests, and it only lacks what was never shown.
    let of_group =
        |o: &&rungbook::readiness::Standing| o.state == State::Paused && o.needs == Truth::True;
    let rests = c
        .published()
        .filter(|(_, o)| group(o.pattern().word()) == group(m.pattern().word()))
        .filter_map(|(ix, _)| readiness.of(ix))
        .any(|o| of_group(&o));
    let untested = matches!(state, Some(State::Almost | State::TestFirst))
        && readiness.of(ix).is_some_and(|s| s.needs == Truth::Unknown)
        && rests
        && !m.guarded()
        && ["first try", "until it is tested"].contains(&line.says("rule"));
    // Or tried once what it waits for was shown in this plan; or with the hands raised, in the place of what is harder and known.
    let new = ["first try", "until it is tested"].contains(&line.says("rule"));
    let shown = |l: &Line<'_>| {
        l.says("rule") == "show it"
            && line.line["toward"]["movement"] == l.movement.id().as_str()
            && l.day() < line.day()
    };
    let raised = line.says("why").contains("hands raised, since");
    let unsure = readiness.of(ix).is_some_and(|s| s.needs == Truth::Unknown)
        && !m.guarded()
        && (raised || new && case.lines().iter().any(shown));
    if !before && !untested && !unsure && !matches!(state, Some(State::Open | State::Owned)) {
        return Err(format!("neither open nor owned but {state:?}"));
    }
    let measures = ["tape", "phone"];
    let spare = |w: &String| m.pattern().word() == "mobility" && measures.contains(&w.as_str());
    let have = |words: &Vec<String>| {
        case.person
            .have
            .as_ref()
            .is_none_or(|have| words.iter().any(|w| have.contains(w) || spare(w)))
    };
    if !m.equipment().iter().all(have) {
        return Err("its equipment is missing".into());
    }
    if m.loaded() && line.line["with_kg"].as_f64().unwrap_or(0.0) == 0.0 {
        return Err("loaded, and no load".into());
    }
    let rule = line.says("rule");
    if m.phase() == Some(Phase::Lowering) {
        if line.says("block") == "kept up"
            || line.line["toward"]["movement"] != m.id().as_str()
                && line.line["instead_of"].is_null()
        {
            return Err("a lowering that no route asks for".into());
        }
        // In the third week after a pause it is light, and itself again; so it is on the way back from time off.
        let why = line.says("why");
        let again = why.starts_with("week 3 after a pause") || why.contains("on the way back");
        if ["time off", "after a pause"].contains(&rule) && line.week() == 1 && !again {
            return Err("a lowering while something is taken back".into());
        }
    }
    let born = case.results["born"]
        .as_i64()
        .map(|born| i64::from(on.year()) - born - 1);
    if born.is_some_and(|age| age < 18) {
        if rule == "singles" || m.loaded() && rule == "show it" {
            return Err("a single or a showing under 18".into());
        }
        let by_reps =
            m.loaded() && line.says("unit") == "reps" && group(m.pattern().word()).is_some();
        if by_reps && (line.number("amount") < 6.0 || m.phase() == Some(Phase::Lowering)) {
            return Err("weight for fewer than six reps under 18".into());
        }
    }
    if line.number("sets") < 1.0 || line.number("amount") < 1.0 || line.number("rest_s") < 30.0 {
        return Err("an empty set, or no rest".into());
    }
    if line.says("why").is_empty()
        && !["the gap itself", "practice", "kept up", "range", "singles"].contains(&rule)
    {
        return Err("no reason".into());
    }
    within(line)?;
    known(case, line)
}

/// The stated bounds of a set that is no test.
fn within(line: &Line<'_>) -> Result<(), String> {
    let new = ["first try", "until it is tested", "show it"].contains(&line.says("rule"));
    if new || !["strength", "kept up"].contains(&line.says("block")) {
        return Ok(());
    }
    let m = line.movement;
    let careful = m.guarded()
        || m.phase() == Some(Phase::Lowering)
        || m.arms().map(Word::word) == Some("straight");
    let most = match line.says("unit") {
        "s" => 45.0,
        _ if m.loaded() => f64::MAX,
        _ if careful => 8.0,
        _ => 12.0,
    };
    let (amount, sets) = (line.number("amount"), line.number("sets"));
    if amount > most || !m.loaded() && sets > 5.0 {
        return Err(format!(
            "{sets} x {amount}, where {most} in five sets are the most"
        ));
    }
    // Nobody is sent to failure.
    match line.line["in_reserve"].as_i64() {
        Some(left) if left < 1 && amount > 1.0 => Err("nothing is left in reserve".into()),
        _ => Ok(()),
    }
}

/// Never more in a set than was ever shown, but where a target is to be shown.
fn known(case: &Case<'_>, line: &Line<'_>) -> Result<(), String> {
    let new = ["first try", "until it is tested", "show it"].contains(&line.says("rule"));
    if new || line.says("block") == "range" || case.lines().is_empty() {
        return Ok(());
    }
    let c = &case.proof.curriculum;
    let own = c.find_movement(line.movement.id().as_str());
    let family = line.movement.place().map(|p| p.family);
    let tells = |ix| {
        Some(ix) == own || family.is_some() && c.movement(ix).place().map(|p| p.family) == family
    };
    let tested = case.person.tested.iter().filter(|t| tells(t.movement));
    let tested = tested.flat_map(|t| {
        t.sides
            .all()
            .map(|g| g.parts().amount() / ONE + i64::from(t.in_reserve) + 2)
    });
    let logged = case.person.trained.iter().filter(|t| tells(t.movement));
    let logged = logged.flat_map(|t| {
        t.did
            .iter()
            .map(|n| n / ONE + i64::from(t.in_reserve.unwrap_or(0)))
    });
    let standard = line.movement.standard().amount() / ONE;
    let most = tested.chain(logged).max().unwrap_or(0).max(standard);
    match line.number("amount") <= most as f64 {
        true => Ok(()),
        false => Err(format!("sets of more than was ever shown, {most}")),
    }
}

fn of_session(case: &Case<'_>, session: &Value, lines: &[Line<'_>]) -> Result<(), String> {
    let given = case.results["train"]["minutes"].as_f64().unwrap_or(60.0);
    let here: Vec<&Line<'_>> = lines
        .iter()
        .filter(|l| std::ptr::eq(l.session, session))
        .collect();
    let sum: f64 = here.iter().map(|l| l.number("minutes")).sum();
    let minutes = session["minutes"].as_f64().unwrap_or(f64::MAX);
    if minutes > given || minutes < sum {
        return Err(format!("{minutes} minutes of {given}, the lines {sum}"));
    }
    let of = |block: &str| {
        here.iter()
            .filter(|l| l.says("block") == block)
            .collect::<Vec<_>>()
    };
    for block in ["practice", "range"] {
        let used: f64 = of(block).iter().map(|l| l.number("minutes")).sum();
        if used > given / 4.0 {
            return Err(format!("{used} minutes of {block}"));
        }
    }
    let order = ["practice", "strength", "kept up", "range"];
    let place = |l: &&Line<'_>| order.iter().position(|b| *b == l.says("block"));
    if !here.is_sorted_by_key(place) || of("strength").len() > 5 {
        return Err("blocks out of order, or too many lines of strength".into());
    }
    let logged = |l: &&&Line<'_>| {
        let c = &case.proof.curriculum;
        case.person
            .trained
            .iter()
            .any(|t| c.movement(t.movement).pattern() == l.movement.pattern())
    };
    // What was trained lately stands beside what is kept up.
    let kept = of("kept up").iter().filter(|l| !logged(l)).count();
    if kept > 1.max(5_usize.saturating_sub(of("strength").len())) {
        return Err(format!("{kept} lines kept up"));
    }
    let by = |rule: &str| here.iter().filter(|l| l.says("rule") == rule).count();
    let lighter = session["lighter"] == true;
    // Six only where eight weeks off made unknown what was known of a pattern.
    let mut days: BTreeMap<&str, Vec<Day>> = BTreeMap::new();
    for t in &case.person.trained {
        let pattern = case.proof.curriculum.movement(t.movement).pattern();
        days.entry(pattern.word()).or_default().push(t.on);
    }
    let off = days.values_mut().any(|days| {
        days.push(case.day());
        days.sort_unstable();
        days.windows(2).any(|two| two[1].days_after(two[0]) >= 56)
    });
    let firsts = if off { 6 } else { 4 };
    if by("show it") > 2
        || by("first try") > firsts
        || lighter && by("show it") + by("first try") > 0
    {
        return Err("too many first tries or showings".into());
    }
    let mut ids: Vec<&str> = here.iter().map(|l| l.movement.id().as_str()).collect();
    ids.sort_unstable();
    if ids.windows(2).any(|w| w[0] == w[1]) {
        return Err("a movement stands twice".into());
    }
    for left in session["left_out"].as_array().into_iter().flatten() {
        if left["why"].as_str().is_none_or(str::is_empty)
            || ids
                .binary_search(&left["movement"].as_str().unwrap_or(""))
                .is_ok()
        {
            return Err(format!(
                "left out without a reason, or not left out: {left}"
            ));
        }
    }
    Ok(())
}

/// 48 hours: dates of one group, and of heavy work on one part, in the log and in the plan.
fn apart(case: &Case<'_>, lines: &[Line<'_>]) -> Result<(), String> {
    let c = &case.proof.curriculum;
    let heavy = |m: &rungbook::curriculum::Movement, how: Option<&str>| {
        let of_class = m
            .cautions()
            .iter()
            .any(|ix| HEAVY.contains(&c.cautions().class(*ix).id.as_str()));
        let heavily = how.map_or(of_class, |how| !["light", "stretched"].contains(&how));
        heavily && m.load().word() != "none" && !["balance", "exit"].contains(&m.pattern().word())
    };
    let mut planned: BTreeMap<String, Vec<Day>> = BTreeMap::new();
    let mut note = |key: String, day: Day| planned.entry(key).or_default().push(day);
    for line in lines {
        let positions: Vec<&str> = line.movement.positions().iter().map(|p| p.word()).collect();
        let turnover = positions.contains(&"hanging") && positions.contains(&"support");
        let counts = ["strength", "kept up"].contains(&line.says("block"))
            || line.says("rule") == "singles"
            || turnover;
        if let Some(group) = group(line.movement.pattern().word()).filter(|_| counts) {
            note(group.into(), line.day());
        }
        for stress in line.movement.stresses() {
            if heavy(line.movement, stress.how.map(Word::word)) {
                note(format!("heavy {}", stress.part.word()), line.day());
            }
        }
    }
    let first = |key: &str| planned.get(key).and_then(|days| days.iter().min().copied());
    for t in case.person.trained.iter().filter(|t| t.on < case.day()) {
        let m = c.movement(t.movement);
        let parts = m
            .stresses()
            .iter()
            .filter(|stress| heavy(m, stress.how.map(Word::word)))
            .map(|stress| format!("heavy {}", stress.part.word()));
        for key in group(m.pattern().word())
            .map(String::from)
            .into_iter()
            .chain(parts)
        {
            if first(&key).is_some_and(|day| day.days_after(t.on) < 2) {
                return Err(format!(
                    "{key} on {:?}, and in the log on {}",
                    first(&key),
                    t.on
                ));
            }
        }
    }
    for (key, mut days) in planned {
        days.sort_unstable();
        days.dedup();
        if let Some(w) = days.windows(2).find(|w| w[1].days_after(w[0]) < 2) {
            return Err(format!("{key} on {} and {}", w[0], w[1]));
        }
    }
    Ok(())
}

/// Caps of a week, and not more than a third above what was done.
fn of_week(case: &Case<'_>, lines: &[Line<'_>], on: Day) -> Result<(), String> {
    let c = &case.proof.curriculum;
    let kind = |m: &rungbook::curriculum::Movement| {
        (
            m.pattern().word(),
            m.arms().map(Word::word) == Some("straight"),
        )
    };
    let log: Vec<_> = case.person.trained.iter().filter(|t| t.on < on).collect();
    let months = log.iter().any(|t| on.days_after(t.on) >= 84);
    let cap: f64 = if months { 15.0 } else { 10.0 };
    let mut sets: BTreeMap<(i64, (&str, bool)), f64> = BTreeMap::new();
    for line in lines {
        let hard = ["strength", "kept up"].contains(&line.says("block"))
            && !["first try", "show it"].contains(&line.says("rule"));
        if hard {
            *sets.entry((line.week(), kind(line.movement))).or_default() += line.number("sets");
        }
    }
    for ((week, kind_of), done) in &sets {
        let lately: Vec<_> = log
            .iter()
            .filter(|t| kind(c.movement(t.movement)) == *kind_of && on.days_after(t.on) <= 21)
            .collect();
        let first = lately
            .iter()
            .map(|t| on.days_after(t.on))
            .max()
            .unwrap_or(0)
            .max(7);
        let mean =
            lately.iter().map(|t| t.did.len()).sum::<usize>() as f64 * 7.0 / f64::from(first);
        let rise = (4.0_f64 / 3.0).powi(*week as i32 - 1);
        let most = cap.min((6.0_f64).max(mean * 4.0 / 3.0) * rise) + 1e-9;
        if *done > most {
            return Err(format!(
                "{done} sets of {kind_of:?} in week {week}, {most} at most"
            ));
        }
    }
    let days: Vec<i32> = log.iter().map(|t| on.days_after(t.on)).collect();
    let lighter = case.sessions().iter().any(|s| s["lighter"] == true);
    let every = c.school().dose.lighter_every.weeks();
    if every <= 4 && !lighter {
        return Err(format!("no lighter week in four: {days:?}"));
    }
    Ok(())
}
