//! Random curricula with every construct that training reads: ladders on one and two axes, weight and help, holds and tries,
//! sides, turnovers, exits, balance, ranges in every measure, alternatives, equipment.

use super::client::ago;
use super::throw::Throw;
use rungbook::source::Snapshot;

const GROUPED: [&str; 8] = [
    "vertical pull",
    "vertical push",
    "horizontal pull",
    "horizontal push",
    "squat",
    "hinge",
    "carry",
    "core",
];
const PARTS: [&str; 5] = ["shoulder", "elbow", "wrist", "knee", "lower-back"];
const HOWS: [&str; 5] = ["light", "stretched", "loaded", "straight-arm", "lowering"];
const REPS: [&str; 6] = [
    "5 reps",
    "8 reps",
    "12 reps",
    "20 reps",
    "3x5",
    "4 reps of 5 s",
];
const WEIGHTED: [&str; 5] = [
    "5 reps with 10 kg",
    "5 reps with 0.25 bw",
    "3 reps with 0.5 bw",
    "8 reps with 20 lb",
    "3 reps of 5 s with 0.1 bw",
];
const HELPED: [&str; 3] = [
    "5 reps with 15 kg help",
    "8 reps with 0.2 bw help",
    "3 reps with 20 lb help",
];
const HOLDS: [&str; 7] = [
    "10 s",
    "20 s",
    "45 s",
    "1 min",
    "3x20 s",
    "20 s in 3 of 5 tries",
    "20 s with 0.25 bw",
];
const RANGES: [&str; 7] = [
    "10 cm",
    "at most 5 cm",
    "4 in",
    "70 deg",
    "60 s",
    "done",
    "10 reps",
];

/// One movement before it is written down.
struct Spec {
    /// Its targets, of one measure.
    targets: &'static [&'static str],
    body: String,
}

/// The files of a random curriculum.
pub fn files(throw: &mut Throw) -> Vec<(String, String)> {
    let count = 6 + throw.below(9);
    // Few patterns, so that movements of one stand above one another.
    let grouped = [
        throw.one(&GROUPED),
        throw.one(&GROUPED),
        throw.one(&GROUPED),
    ];
    let mut specs: Vec<Spec> = Vec::new();
    let mut files = vec![("content/school.yaml".to_string(), school(throw))];
    let mut ladders: Vec<(usize, Vec<String>, String)> = Vec::new();
    while specs.len() < count {
        match throw.chance(35) {
            true => ladder(throw, grouped, &mut specs, &mut ladders),
            false => {
                let spec = single(throw, grouped, &specs);
                let id = name(specs.len());
                files.push((
                    format!("content/movements/{id}.yaml"),
                    format!("{{ movement: {id}, {} }}\n", spec.body),
                ));
                specs.push(spec);
            }
        }
    }
    for (at, members, head) in ladders {
        files.push((
            format!("content/movements/f{at}.yaml"),
            format!("{head}movements:\n{}\n", members.join("\n")),
        ));
    }
    for (skill, back) in [("far", 1), ("near", 2)] {
        let at = specs.len() - back;
        let goal = match throw.chance(50) {
            true => name(at),
            false => format!("{{ {}: {} }}", name(at), target(throw, &specs[at])),
        };
        files.push((
            format!("content/skills/{skill}.yaml"),
            format!("skill: {skill}\nname: {skill}\ngoal: {goal}\n"),
        ));
    }
    files
}

pub fn snapshot(files: &[(String, String)]) -> Snapshot {
    Snapshot::of_texts(files.iter().map(|(p, t)| (p.as_str(), t.as_str())))
}

fn name(i: usize) -> String {
    format!("m{i:02}")
}

fn school(throw: &mut Throw) -> String {
    let dose = throw.one(&[
        "{ sets: 5, reps: 5, a_week: 2, lighter_every: 4 weeks, hold: 5x10 s }",
        "{ sets: 4, reps: 6, a_week: 3, lighter_every: 4 weeks, hold: 4x15 s }",
        "{ sets: 3, reps: 8, a_week: 3, lighter_every: 3 weeks, hold: 3x20 s }",
        "{ sets: 5, reps: 5, a_week: 4, lighter_every: 6 weeks, hold: 5x10 s }",
    ]);
    let plate = throw.one(&["1.25 kg", "2.5 kg", "0.5 kg", "5 lb"]);
    format!(
        "school: T\naddress: https://test.example/\nlanguage: en\nunits: metric\npresume: {}\nsmallest_plate: {plate}\ndose: {dose}\nwarm_up:\n  always: [Walk.]\n  inverted: [Roll the wrists.]\n  loaded: [Lift light first.]\n  straight-arm: [Shrug.]\nequipment: {{ rings: R, bar: B, wall: W, partner: P }}\n",
        !throw.chance(15)
    )
}

fn target<'a>(throw: &mut Throw, spec: &Spec) -> &'a str {
    // Easier or harder than the standard: each list has one measure only where it is asked at other values.
    match spec.targets.len() {
        1 => spec.targets[0],
        _ => throw.one(spec.targets),
    }
}

/// Targets of a pattern: a list of one measure, and which of them is the standard.
fn targets(throw: &mut Throw, pattern: &str) -> (&'static [&'static str], usize) {
    let lists: &[&'static [&'static str]] = match pattern {
        "mobility" => &[
            &RANGES[0..1],
            &RANGES[1..2],
            &RANGES[2..3],
            &RANGES[3..4],
            &RANGES[4..5],
            &RANGES[4..5],
            &RANGES[5..6],
            &RANGES[6..7],
        ],
        "balance" => &[&HOLDS, &HOLDS, &REPS],
        "exit" => &[&REPS, &REPS, &WEIGHTED],
        _ => &[&REPS, &REPS, &REPS, &WEIGHTED, &HELPED, &HOLDS],
    };
    let list = throw.one(lists);
    (list, throw.below(list.len()))
}

fn dose(throw: &mut Throw, target: &str) -> Option<String> {
    if throw.chance(45) {
        return None;
    }
    let load = target
        .find(" with ")
        .map_or(String::new(), |at| target[at..].to_string());
    let each = if target.contains(" of 5 s") {
        " reps of 5 s"
    } else {
        ""
    };
    if target.contains("cm") || target.contains(" in") || target.contains("deg") || target == "done"
    {
        return None;
    }
    let sets = if target.contains("reps") {
        throw.one(&["5x5", "4x3", "3x12", "5x2", "4x1", "4x8"])
    } else {
        throw.one(&["5x10 s", "3x15 s", "4x6 s", "2x30 s", "6x3 s"])
    };
    Some(format!("{sets}{each}{load}"))
}

/// What a movement says besides its id, place and phase.
fn body(
    throw: &mut Throw,
    pattern: &str,
    targets: &'static [&'static str],
    standard: usize,
    phase: Option<&str>,
    below: &[Spec],
) -> String {
    let said = targets[standard];
    let mut out = format!(
        "name: M{}, summary: S, exit: Step down., standard: {said}",
        below.len()
    );
    // Thrown apart, so that the rest of a world stays what it was before these keys.
    let mut apart = Throw::new(throw.clone().next() ^ 0x5EED);
    let mut say = |text: String| {
        out.push_str(", ");
        out.push_str(&text);
    };
    if let Some(dose) = dose(throw, said) {
        say(format!("dose: {dose}"));
    }
    if let Some(phase) = phase {
        say(format!("phase: {phase}"));
    }
    let hanging = pattern == "vertical pull" && throw.chance(60);
    let position = match pattern {
        _ if hanging => "hanging",
        "balance" => throw.one(&["upright", "upright", "inverted", "[support, inverted]"]),
        "vertical push" | "vertical pull" => {
            throw.one(&["support", "hanging", "[hanging, support]", "inverted"])
        }
        _ => throw.one(&[
            "upright",
            "prone",
            "supine",
            "side",
            "support",
            "inverted",
            "[hanging, support]",
        ]),
    };
    say(format!("position: {position}"));
    if hanging {
        say("leverage: { posture: pull-up }".into());
    }
    say(format!(
        "load: {}",
        throw.one(&["body", "body", "none", "assisted"])
    ));
    if throw.chance(25) {
        say(format!("arms: {}", throw.one(&["straight", "bent"])));
    }
    if throw.chance(25) {
        say("each_side: true".into());
    }
    let equipment = throw.one(&[
        "[]",
        "[]",
        "[]",
        "[]",
        "[]",
        "[rings]",
        "[bar]",
        "[[wall, partner]]",
        "[bar, [wall, partner]]",
    ]);
    say(format!("equipment: {equipment}"));
    if throw.chance(60) {
        let (a, b) = (throw.one(&PARTS), throw.one(&PARTS));
        let a = match apart.chance(25) {
            true => format!("{a}: {}", apart.one(&HOWS)),
            false => a.to_string(),
        };
        say(if a.starts_with(b) {
            format!("stresses: [{a}]")
        } else {
            format!("stresses: [{a}, {b}]")
        });
    }
    manner(&mut apart, said, below, &mut say);
    if throw.chance(20) {
        say(format!(
            "cautions: [{}]",
            throw.one(&[
                "shoulder-extension",
                "neck-load",
                "fall-height",
                "breath-holding"
            ])
        ));
    }
    if throw.chance(75) {
        say(format!(
            "weeks: {}",
            throw.one(&["1-3", "2-6", "3-8", "4-12", "8-24", "5"])
        ));
    }
    if throw.chance(8) {
        say(format!(
            "test: {{ how: H, since: {} }}",
            ago(throw.below(30) as i64)
        ));
    }
    let needs = needs(throw, below);
    if !needs.is_empty() {
        say(format!("needs: [{needs}]"));
    }
    out
}

/// Tempo, hold, rest, and what goes in its place.
fn manner(throw: &mut Throw, standard: &str, below: &[Spec], say: &mut impl FnMut(String)) {
    if standard.contains("reps") && throw.chance(30) {
        say(match throw.chance(60) {
            true => format!("tempo: {}", throw.one(&["3-1-1-0", "5-0-1-0", "2-2-2-2"])),
            false => format!("hold: {}", throw.one(&["bottom 2 s", "top 3 s"])),
        });
    }
    if throw.chance(20) {
        say(format!(
            "rest: {}",
            throw.one(&["45 s", "90 s", "2 min", "5 min"])
        ));
    }
    if throw.chance(40) && !below.is_empty() {
        let mut one = || {
            let when = match throw.below(4) {
                0 => format!("without: {}", throw.one(&["rings", "bar", "wall"])),
                1 => format!(
                    "for: {}",
                    throw.one(&["inverted", "loaded", "straight-arm", "neck-load"])
                ),
                _ => format!("for: {}", throw.one(&PARTS)),
            };
            format!("{{ {when}, do: {} }}", name(throw.below(below.len())))
        };
        let all = [one(), one(), one()];
        say(format!("instead: [{}]", all.join(", ")));
    }
}

/// Only what has a lower number, so that nothing loops.
fn needs(throw: &mut Throw, below: &[Spec]) -> String {
    if below.is_empty() {
        return String::new();
    }
    let leaf = |throw: &mut Throw| {
        // Mostly what stands nearby, so that chains grow long.
        let near = if throw.chance(70) { 3 } else { 14 };
        let back = 1 + throw.below(below.len().min(near));
        let at = below.len() - back;
        match throw.chance(50) {
            true => name(at),
            false => format!("{{ {}: {} }}", name(at), target(throw, &below[at])),
        }
    };
    let count = throw.one(&[0, 0, 1, 1, 1, 2]);
    let parts: Vec<String> = (0..count)
        .map(|_| match throw.below(10) {
            0 | 1 => format!("{{ any of: [{}, {}] }}", leaf(throw), leaf(throw)),
            2 => format!(
                "{{ at least 2 of: [{}, {}, {}] }}",
                leaf(throw),
                leaf(throw),
                leaf(throw)
            ),
            _ => leaf(throw),
        })
        .collect();
    parts.join(", ")
}

fn phase_of(throw: &mut Throw, target: &str) -> Option<&'static str> {
    if target.contains("reps") {
        throw.one(&[
            None,
            Some("full"),
            Some("full"),
            Some("lowering"),
            Some("raising"),
        ])
    } else {
        throw.one(&[None, Some("hold")])
    }
}

fn single(throw: &mut Throw, grouped: [&'static str; 3], below: &[Spec]) -> Spec {
    let pattern = match throw.below(20) {
        0..=2 => "mobility",
        3..=4 => "balance",
        5..=6 => "exit",
        _ => throw.one(&grouped),
    };
    let (targets, standard) = targets(throw, pattern);
    let phase = phase_of(throw, targets[standard]);
    let said = body(throw, pattern, targets, standard, phase, below);
    Spec {
        targets,
        body: format!("pattern: {pattern}, {said}"),
    }
}

/// A family of two to four members: rungs of one axis, on some a lowering beside each.
fn ladder(
    throw: &mut Throw,
    grouped: [&'static str; 3],
    specs: &mut Vec<Spec>,
    ladders: &mut Vec<(usize, Vec<String>, String)>,
) {
    let pattern = match throw.below(12) {
        0 => "balance",
        _ => throw.one(&grouped),
    };
    let (targets, _) = targets(throw, pattern);
    let (at, rungs) = (specs.len(), 2 + throw.below(3));
    let by_phase = targets[0].contains("reps") && throw.chance(40);
    let mut members = Vec::new();
    for rung in 0..rungs {
        for phase in [Some("lowering"), Some("full")] {
            if phase == Some("lowering") && !(by_phase && throw.chance(50)) {
                continue;
            }
            let standard = throw.below(targets.len());
            let i = specs.len();
            let said = body(throw, pattern, targets, standard, None, &specs[..at]);
            let place = match (by_phase, phase) {
                (true, Some(phase)) => format!("{{ range: r{rung}, phase: {phase} }}"),
                _ => format!("{{ range: r{rung} }}"),
            };
            members.push(format!("  {}: {{ at: {place}, {said} }}", name(i)));
            specs.push(Spec {
                targets,
                body: said,
            });
        }
    }
    let easier = throw.one(&["none", "any", "all"]);
    let range: Vec<String> = (0..rungs).map(|r| format!("r{r}")).collect();
    let phases = if by_phase {
        ", phase: [lowering, full]"
    } else {
        ""
    };
    let head = format!(
        "family: f{at}\nname: F{at}\npattern: {pattern}\nposition: prone\nload: body\nequipment: []\nsummary: S\naxes: {{ range: [{}]{phases} }}\neasier_first: {easier}\n",
        range.join(", ")
    );
    ladders.push((at, members, head));
}
