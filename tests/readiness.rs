//! One truth: the same states, presumed flags, pauses, missing lists and questions from the program, from the page's own script
//! run in a JavaScript engine, and from an independent reference in Python, on random curricula and results.
//!
//! The constructs that the cases hold are counted; a kind that is too rare fails the test.

mod dice;

use proptest::prelude::*;
use proptest::test_runner::{TestError, TestRunner};
use rungbook::chain::{self, Flat};
use rungbook::curriculum::target::Got;
use rungbook::curriculum::{Curriculum, Day, Leaf, Need};
use rungbook::placement::Board;
use rungbook::readiness::{self, Evidence, State};
use rungbook::results;
use rungbook::site::{self, Theme};
use rungbook::source::Snapshot;
use serde_json::{Map, Value, json};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};
use std::sync::{Arc, OnceLock};

const TODAY: &str = "2026-10-10";
/// In the usual run; more by `RUNGBOOK_CASES=2600`.
const CASES: u32 = 1300;
/// Each construct stands in at least so many cases.
const LEAST: usize = 50;

const PATTERNS: [&str; 6] = [
    "core",
    "vertical pull",
    "mobility",
    "exit",
    "balance",
    "squat",
];
const PARTS: [&str; 3] = ["neck", "wrist", "knee"];
const CLASSES: [&str; 4] = ["inverted", "wrist-extension", "momentum", "lowering"];
const SIGNS: [&str; 4] = ["sharp", "night", "numb", "giving-way"];

/// The targets of each kind of measure, and results for it.
const TARGETS: [&[&str]; 8] = [
    &[
        "3 reps",
        "5 reps",
        "8 reps",
        "5x5",
        "3x8",
        "5 reps of 5 s",
        "12 reps",
    ],
    &[
        "5 reps with 10 kg",
        "5 reps with 20 lb",
        "5 reps with 0.25 bw",
        "3 reps with 0.5 bw",
        "5 reps",
        "8 reps with 12.5 kg",
    ],
    &[
        "3 reps with 20 kg help",
        "8 reps with 0.1 bw help",
        "5 reps with 10 kg help",
        "5 reps with 30 lb help",
        "5 reps",
    ],
    &[
        "20 s",
        "45 s",
        "1 min",
        "3x20 s",
        "20 s in 3 of 5 tries",
        "20 s in 2 of 3 tries",
        "30 s with 10 kg",
    ],
    &["10 cm", "12 cm", "4 in", "15.5 cm"],
    &[
        "at most 10 cm",
        "at most 3 in",
        "at most 5 cm",
        "at most 8.5 cm",
    ],
    &["30 deg", "45 deg", "90 deg"],
    &["done"],
];
const RESULTS: [&[&str]; 8] = [
    &[
        "0 reps",
        "9.5 reps",
        "2 reps",
        "4 reps",
        "5 reps",
        "7 reps",
        "9 reps",
        "5x5",
        "4x8",
        "5x4",
        "5 reps of 5 s",
        "4 reps of 5 s",
        "15 reps",
        "8 reps with 5 kg",
    ],
    &[
        "5 reps with 10 kg",
        "5 reps with 9 kg",
        "4 reps with 20 lb",
        "5 reps with 0.25 bw",
        "5 reps with 18 kg",
        "3 reps with 36 kg",
        "6 reps",
        "4 reps with 0.24 bw",
        "0 reps",
        "8 reps with 10 kg help",
    ],
    &[
        "3 reps with 20 kg help",
        "3 reps with 25 kg help",
        "8 reps with 0.2 bw help",
        "5 reps with 10 kg",
        "5 reps with 7.2 kg help",
        "2 reps",
        "5 reps with 30 lb help",
        "6 reps",
        "0 reps",
    ],
    &[
        "0 s",
        "17 s",
        "20 s",
        "36 s",
        "35.9 s",
        "48 s",
        "1 min",
        "2x20 s",
        "20 s in 3 of 5 tries",
        "20 s in 2 of 5 tries",
        "20 s in 1 of 1 tries",
        "16 s in 3 of 5 tries",
        "30 s with 5 kg",
        "70 s with 10 kg",
    ],
    &["6 cm", "8 cm", "10 cm", "4 in", "11 cm", "16 cm", "0 cm"],
    &[
        "4 cm", "6 cm", "8.5 cm", "11 cm", "12.9 cm", "3 in", "40 cm",
    ],
    &[
        "0 deg", "25 deg", "36 deg", "34 deg", "45 deg", "81 deg", "95 deg",
    ],
    &["done", "not done"],
];

#[derive(Clone, Debug)]
enum Tree {
    Leaf { of: usize, at: Option<usize> },
    Family,
    All(Vec<Tree>),
    Any(Vec<Tree>),
    AtLeast(usize, Vec<Tree>),
}

#[derive(Clone, Debug)]
struct Spec {
    kind: usize,
    standard: usize,
    pattern: usize,
    each_side: bool,
    inverted: bool,
    lowering: bool,
    stresses: Option<usize>,
    /// A caution class that is declared.
    class: Option<usize>,
    renamed: bool,
    /// How many days ago it began to be measured as now.
    since: Option<i32>,
    needs: Vec<Tree>,
}

#[derive(Clone, Debug)]
struct Entry {
    of: usize,
    got: usize,
    other: Option<usize>,
    /// Days before today; below 0 a day to come; `None` says no day.
    ago: Option<i32>,
    reserve: u32,
    body_weight: Option<usize>,
    /// By the old id, by an id that does not exist, with another measure, or of one side only.
    odd: u8,
}

/// A pause or a restriction of a movement, a part, a class or a pattern.
#[derive(Clone, Debug)]
struct Rest {
    what: u8,
    which: usize,
    ago: i32,
    lasts: Option<i32>,
}

/// A clearance of a class.
#[derive(Clone, Debug)]
struct Cleared {
    class: usize,
    ago: i32,
    lasts: Option<i32>,
}

#[derive(Clone, Debug)]
struct Pain {
    part: usize,
    score: u32,
    ago: i32,
    sign: Option<usize>,
}

/// The outcome of the health questions, with the days that a clinician's word lasts.
#[derive(Clone, Debug)]
struct Screened {
    says: usize,
    ago: i32,
    lasts: Option<i32>,
    /// A clearance lasts six weeks at most.
    six_weeks: bool,
}

#[derive(Clone, Debug)]
struct Case {
    presume: bool,
    movements: Vec<Spec>,
    /// The last three movements are one family.
    family: bool,
    body_weight: Option<usize>,
    tested: Vec<Entry>,
    paused: Vec<Rest>,
    restrict: Vec<Rest>,
    cleared: Vec<Cleared>,
    pains: Vec<Pain>,
    born: Option<i32>,
    screened: Option<Screened>,
}

const SAYS: [&str; 3] = ["clear", "light", "ask"];
const WEIGHTS: [&str; 3] = ["72 kg", "160 lb", "55.5 kg"];

fn tree(depth: u32) -> impl Strategy<Value = Tree> {
    let leaf = prop_oneof![
        8 => (0..14_usize, proptest::option::of(0..7_usize)).prop_map(|(of, at)| Tree::Leaf { of, at }),
        1 => Just(Tree::Family),
    ];
    leaf.prop_recursive(depth, 8, 3, |inner| {
        let parts = || proptest::collection::vec(inner.clone(), 1..4);
        prop_oneof![
            1 => parts().prop_map(Tree::All),
            2 => parts().prop_map(Tree::Any),
            2 => (0..3_usize, parts()).prop_map(|(k, p)| Tree::AtLeast(1 + k % p.len(), p)),
        ]
    })
}

fn spec() -> impl Strategy<Value = Spec> {
    (
        (0..8_usize, 0..7_usize, 0..6_usize),
        (
            proptest::bool::weighted(0.2),
            proptest::bool::weighted(0.2),
            proptest::bool::weighted(0.15),
            proptest::option::weighted(0.4, 0..3_usize),
            proptest::option::weighted(0.3, 1..3_usize),
            proptest::bool::weighted(0.3),
            proptest::option::weighted(0.2, 0..4_i32),
        ),
        proptest::collection::vec(tree(2), 0..3),
    )
        .prop_map(
            |(
                (kind, standard, pattern),
                (each_side, inverted, lowering, stresses, class, renamed, since),
                needs,
            )| Spec {
                kind,
                standard,
                pattern,
                each_side,
                inverted,
                lowering,
                stresses,
                class,
                renamed,
                since,
                needs,
            },
        )
}

fn entry() -> impl Strategy<Value = Entry> {
    (
        (
            0..14_usize,
            0..16_usize,
            proptest::option::weighted(0.25, 0..16_usize),
        ),
        proptest::option::weighted(
            0.9,
            prop_oneof![8 => 0..3_i32, 2 => 80..90_i32, 1 => -3..0_i32],
        ),
        prop_oneof![4 => Just(0_u32), 1 => 1..3_u32],
        proptest::option::weighted(0.15, 0..3_usize),
        prop_oneof![6 => Just(0_u8), 3 => Just(1_u8), 1 => Just(2_u8), 1 => Just(3_u8), 2 => Just(4_u8)],
    )
        .prop_map(|((of, got, other), ago, reserve, body_weight, odd)| Entry {
            of,
            got,
            other,
            ago,
            reserve,
            body_weight,
            odd,
        })
}

fn pause() -> impl Strategy<Value = Rest> {
    (
        prop_oneof![3 => Just(0_u8), 3 => Just(1_u8), 2 => Just(2_u8), 1 => Just(3_u8)],
        0..14_usize,
        -2..20_i32,
        proptest::option::of(0..20_i32),
    )
        .prop_map(|(what, which, ago, lasts)| Rest {
            what,
            which,
            ago,
            lasts,
        })
}

fn cleared() -> impl Strategy<Value = Cleared> {
    (
        0..4_usize,
        prop_oneof![3 => -2..20_i32, 1 => 350..380_i32],
        proptest::option::of(prop_oneof![2 => 0..20_i32, 1 => 300..500_i32]),
    )
        .prop_map(|(class, ago, lasts)| Cleared { class, ago, lasts })
}

/// Most pains of the part of the one before are of its day too.
fn twice_a_day(mut pains: Vec<Pain>) -> Vec<Pain> {
    for i in 1..pains.len() {
        if pains[i].part == pains[i - 1].part && pains[i].score % 4 != 3 {
            pains[i].ago = pains[i - 1].ago;
        }
    }
    pains
}

fn pain() -> impl Strategy<Value = Pain> {
    (
        prop_oneof![1 => Just(0_usize), 2 => Just(1_usize), 1 => Just(2_usize)],
        0..11_u32,
        prop_oneof![8 => 0..6_i32, 1 => -2..0_i32],
        proptest::option::weighted(0.25, 0..4_usize),
    )
        .prop_map(|(part, score, ago, sign)| Pain {
            part,
            score,
            ago,
            sign,
        })
}

fn screened() -> impl Strategy<Value = Screened> {
    (
        0..3_usize,
        prop_oneof![6 => -1..30_i32, 1 => 350..400_i32],
        proptest::option::weighted(0.4, prop_oneof![1 => 0..30_i32, 1 => 300..500_i32]),
        proptest::bool::weighted(0.3),
    )
        .prop_map(|(says, ago, lasts, six_weeks)| Screened {
            says,
            ago: if six_weeks && ago > 300 {
                ago - 310
            } else {
                ago
            },
            lasts,
            six_weeks,
        })
}

fn case() -> impl Strategy<Value = Case> {
    (
        proptest::bool::weighted(0.85),
        proptest::collection::vec(spec(), 4..13),
        proptest::bool::weighted(0.6),
        proptest::option::weighted(0.7, 0..3_usize),
        proptest::collection::vec(entry(), 0..20),
        (
            proptest::collection::vec(pause(), 0..2),
            prop_oneof![1 => Just(Vec::new()), 1 => proptest::collection::vec(pause(), 0..3)],
            prop_oneof![1 => Just(Vec::new()), 1 => proptest::collection::vec(cleared(), 0..3)],
            prop_oneof![1 => Just(Vec::new()), 1 => proptest::collection::vec(pain(), 0..4).prop_map(twice_a_day)],
            proptest::option::weighted(
                0.5,
                prop_oneof![
                    Just(1994),
                    Just(2007),
                    Just(2008),
                    Just(2012),
                    Just(2013),
                    Just(2014),
                    Just(2019)
                ],
            ),
            proptest::option::weighted(0.35, screened()),
            any::<bool>(),
        ),
    )
        .prop_map(
            |(
                presume,
                movements,
                family,
                body_weight,
                tested,
                (paused, mut restrict, mut cleared, pains, born, screened, lifts),
            )| {
                // Half of the clearances are of what is restricted, and of its day or later.
                if let (true, Some(rest), Some(of)) =
                    (lifts, restrict.first_mut(), cleared.first_mut())
                {
                    rest.what = 2;
                    of.class = rest.which % 4;
                    rest.ago = rest.ago.max(of.ago);
                }
                Case {
                    presume,
                    movements,
                    family,
                    body_weight,
                    tested,
                    paused,
                    restrict,
                    cleared,
                    pains,
                    born,
                    screened,
                }
            },
        )
}

fn id(i: usize) -> String {
    format!("m{i:02}")
}

/// The day so many days before today.
fn day(ago: i32) -> String {
    let today = Day::read(TODAY).expect("a day");
    today.plus(-ago).to_string()
}

impl Case {
    fn kind(&self, i: usize) -> usize {
        // Members of a family share nothing that the test depends on but their place.
        self.movements[i].kind
    }

    fn in_family(&self, i: usize) -> bool {
        self.family && i + 3 >= self.movements.len()
    }

    fn target(&self, i: usize, pick: usize) -> &'static str {
        let of = TARGETS[self.kind(i)];
        of[pick % of.len()]
    }

    /// Needs as YAML. A movement mostly needs what has a lower number; the few others make loops.
    fn needs(&self, asker: usize, tree: &Tree, inside: bool) -> String {
        let list = |parts: &[Tree], inside: bool| {
            parts
                .iter()
                .map(|p| self.needs(asker, p, inside))
                .collect::<Vec<_>>()
                .join(", ")
        };
        match tree {
            Tree::Family if self.family && inside && !self.in_family(asker) => {
                "{ family: f }".into()
            }
            Tree::Family => id(0),
            Tree::Leaf { of, at } => {
                let count = self.movements.len();
                let of = if of % 5 == 4 && !self.in_family(asker) {
                    of % count
                } else {
                    of % asker.max(1)
                };
                let of = if of == asker { 0 } else { of };
                match at {
                    Some(at) => format!("{{ {}: {} }}", id(of), self.target(of, *at)),
                    None => id(of),
                }
            }
            Tree::All(p) => format!("{{ all of: [{}] }}", list(p, false)),
            Tree::Any(p) => format!("{{ any of: [{}] }}", list(p, true)),
            Tree::AtLeast(k, p) => format!("{{ at least {k} of: [{}] }}", list(p, true)),
        }
    }

    fn body(&self, i: usize) -> String {
        let spec = &self.movements[i];
        let mut out = format!(
            "name: M{i}, pattern: {}, load: body, equipment: [], summary: S, standard: {}",
            PATTERNS[spec.pattern],
            self.target(i, spec.standard)
        );
        out.push_str(if spec.inverted {
            ", position: inverted, exit: out"
        } else {
            ", position: prone"
        });
        if spec.pattern == 3 {
            out.push_str(", exit: out");
            out = out.replacen(", exit: out, exit: out", ", exit: out", 1);
        }
        if spec.each_side {
            out.push_str(", each_side: true");
        }
        if spec.lowering {
            out.push_str(", phase: lowering");
            if !out.contains("exit: out") {
                out.push_str(", exit: out");
            }
        }
        if let Some(class) = spec.class {
            out.push_str(&format!(", cautions: [{}]", CLASSES[class]));
        }
        if let Some(part) = spec.stresses {
            out.push_str(&format!(", stresses: [{}]", PARTS[part]));
        }
        if let Some(ago) = spec.since {
            out.push_str(&format!(", test: {{ how: H, since: {} }}", day(ago)));
        }
        if spec.renamed {
            out.push_str(&format!(", was: [old-{i}]"));
        }
        if !spec.needs.is_empty() && i > 0 {
            let needs: Vec<String> = spec.needs.iter().map(|t| self.needs(i, t, false)).collect();
            out.push_str(&format!(", needs: [{}]", needs.join(", ")));
        }
        out
    }

    fn files(&self) -> Vec<(String, String)> {
        let mut files = vec![(
            "content/school.yaml".to_string(),
            format!(
                "school: T\naddress: https://test.example/\nlanguage: en\nunits: metric\npresume: {}\n",
                self.presume
            ),
        )];
        let mut members = Vec::new();
        for i in 0..self.movements.len() {
            if self.in_family(i) {
                members.push(format!(
                    "  {}: {{ at: {{ range: r{i} }}, {} }}",
                    id(i),
                    self.body(i)
                ));
            } else {
                files.push((
                    format!("content/movements/{}.yaml", id(i)),
                    format!("{{ movement: {}, {} }}\n", id(i), self.body(i)),
                ));
            }
        }
        if !members.is_empty() {
            let values: Vec<String> = (0..self.movements.len())
                .filter(|i| self.in_family(*i))
                .map(|i| format!("r{i}"))
                .collect();
            files.push((
                "content/movements/f.yaml".into(),
                format!(
                    "family: f\nname: F\npattern: core\nposition: prone\nload: body\nequipment: []\nsummary: S\naxes: {{ range: [{}] }}\nmovements:\n{}\n",
                    values.join(", "),
                    members.join("\n")
                ),
            ));
        }
        let goal = id(self.movements.len() - 1);
        files.push((
            "content/skills/s.yaml".into(),
            format!("skill: s\nname: S\ngoal: {goal}\n"),
        ));
        files
    }

    fn results(&self) -> Value {
        let tested: Vec<Value> = self
            .tested
            .iter()
            .map(|entry| {
                let of = entry.of % self.movements.len();
                let kind = if entry.odd == 3 {
                    (self.kind(of) + 3) % 8
                } else {
                    self.kind(of)
                };
                let text = |pick: usize| RESULTS[kind][pick % RESULTS[kind].len()];
                let mut out = Map::new();
                let name = match entry.odd {
                    1 if self.movements[of].renamed => format!("old-{of}"),
                    2 => "nothing-of-the-kind".into(),
                    _ => id(of),
                };
                out.insert("movement".into(), json!(name));
                match entry.other {
                    None => out.insert("got".into(), json!(text(entry.got))),
                    Some(_) if entry.odd == 4 => out.insert("left".into(), json!(text(entry.got))),
                    Some(other) => {
                        out.insert("left".into(), json!(text(entry.got)));
                        out.insert("right".into(), json!(text(other)))
                    }
                };
                if let Some(ago) = entry.ago {
                    out.insert("on".into(), json!(day(ago)));
                }
                if entry.reserve > 0 {
                    out.insert("in_reserve".into(), json!(entry.reserve));
                }
                if let Some(weight) = entry.body_weight {
                    out.insert("bodyweight".into(), json!(WEIGHTS[weight]));
                }
                Value::Object(out)
            })
            .collect();
        let spared = |list: &[Rest]| -> Vec<Value> {
            let one = |rest: &Rest| {
                let mut out = json!({ "on": day(rest.ago), "by": "client" });
                let which = rest.which;
                let (key, name) = match rest.what {
                    0 => ("movement", id(which % self.movements.len())),
                    1 => ("part", PARTS[which % 3].into()),
                    2 => ("class", CLASSES[which % 4].into()),
                    _ => ("pattern", PATTERNS[which % 6].into()),
                };
                out[key] = json!(name);
                if let Some(lasts) = rest.lasts {
                    out["until"] = json!(day(rest.ago - lasts));
                }
                out
            };
            list.iter().map(one).collect()
        };
        let mut out = json!({ "results": 1, "tested": tested, "paused": spared(&self.paused) });
        if !self.restrict.is_empty() {
            out["restrict"] = json!(spared(&self.restrict));
        }
        let until = |mut of: Value, ago: i32, lasts: Option<i32>| {
            if let Some(lasts) = lasts {
                of["until"] = json!(day(ago - lasts));
            }
            of
        };
        let cleared = self.cleared.iter().map(|c| {
            until(
                json!({ "class": CLASSES[c.class], "on": day(c.ago) }),
                c.ago,
                c.lasts,
            )
        });
        out["cleared"] = cleared.collect();
        let pains = self.pains.iter().map(|p| {
            let signs: Vec<&str> = p.sign.map(|s| SIGNS[s]).into_iter().collect();
            json!({ "part": PARTS[p.part], "score": p.score, "on": day(p.ago), "signs": signs })
        });
        out["pain"] = pains.collect();
        if let Some(born) = self.born {
            out["born"] = json!(born);
        }
        if let Some(s) = &self.screened {
            out["screened"] = until(
                json!({ "says": SAYS[s.says], "on": day(s.ago) }),
                s.ago,
                s.lasts,
            );
            if s.six_weeks {
                out["screened"]["lasts"] = json!(42);
            }
        }
        if let Some(weight) = self.body_weight {
            out["bodyweight"] = json!(WEIGHTS[weight]);
        }
        out
    }

    /// Whether a unit stands in a movement's standard or in a demand that the needs make of it.
    fn asks(&self, of: usize, unit: &str, text: &str) -> bool {
        let i = of % self.movements.len();
        let unit = format!(" {unit}");
        let named = format!("{{ {}: ", id(i));
        let demands = text.split(&named).skip(1);
        let mut demands = demands.filter_map(|rest| rest.split(" }").next());
        self.target(i, self.movements[i].standard).contains(&unit)
            || demands.any(|d| d.contains(&unit))
    }

    /// Whether a movement's test is neither mobility, nor balance, nor an exit.
    fn is_all_out(&self, of: usize) -> bool {
        let spec = &self.movements[of % self.movements.len()];
        !matches!(PATTERNS[spec.pattern], "mobility" | "balance" | "exit")
    }

    fn count(&self, counts: &mut BTreeMap<&'static str, usize>) {
        let text: String = self.files().iter().map(|f| f.1.as_str()).collect();
        let tested = self.results()["tested"].to_string();
        let mut has =
            |name: &'static str, is: bool| *counts.entry(name).or_default() += usize::from(is);
        for (kind, name) in [
            "reps",
            "added load",
            "help",
            "time",
            "length",
            "at most",
            "angle",
            "done",
        ]
        .into_iter()
        .enumerate()
        {
            let asked = |e: &Entry| self.kind(e.of % self.movements.len()) == kind;
            has(name, self.tested.iter().any(asked));
        }
        // Of one movement: a unit that is asked of it, beside a result in that unit that is not kept aside.
        let results = self.results();
        let counted =
            |e: &Entry| !matches!(e.odd, 2..=4) && e.ago.is_none_or(|a| (0..=84).contains(&a));
        let mut with_unit = |name: &'static str, unit: &str| {
            let written = results["tested"].as_array().into_iter().flatten();
            let mut both = self.tested.iter().zip(written).filter(|(e, result)| {
                counted(e)
                    && result.to_string().contains(&format!(" {unit}"))
                    && self.asks(e.of, unit, &text)
            });
            has(name, both.next().is_some());
        };
        with_unit("kilograms", "kg");
        with_unit("pounds", "lb");
        with_unit("body weights", "bw");
        // Sets of one day: a strength test more than once, or with several sets.
        let today = |e: &&Entry| counted(e) && e.ago.unwrap_or(0) == 0 && self.is_all_out(e.of);
        let of = |e: &Entry| e.of % self.movements.len();
        has(
            "one test twice in a day",
            self.tested.iter().enumerate().any(|(i, e)| {
                today(&e) && self.tested[..i].iter().any(|b| today(&b) && of(b) == of(e))
            }),
        );
        has("inches", text.contains(" in,") || tested.contains(" in\""));
        has(
            "minutes",
            text.contains("1 min") || tested.contains("1 min"),
        );
        has("tries", text.contains("tries") && tested.contains("tries"));
        has(
            "seconds of each rep",
            text.contains("of 5 s") || tested.contains("of 5 s"),
        );
        has("sides", self.tested.iter().any(|e| e.other.is_some()));
        has(
            "one side only",
            self.tested.iter().any(|e| e.other.is_some() && e.odd == 4),
        );
        has("reserve", self.tested.iter().any(|e| e.reserve > 0));
        has(
            "expiry",
            self.tested.iter().any(|e| e.ago.is_some_and(|a| a > 84)),
        );
        has(
            "a day to come",
            self.tested.iter().any(|e| e.ago.is_some_and(|a| a < 0)),
        );
        has(
            "own body weight",
            self.tested.iter().any(|e| e.body_weight.is_some()),
        );
        let since = |e: &Entry| self.movements[e.of % self.movements.len()].since;
        let old = |e: &Entry| since(e).is_some_and(|s| e.ago.is_some_and(|a| a > s && a <= 84));
        has(
            "measured otherwise",
            self.tested
                .iter()
                .any(|e| !matches!(e.odd, 2..=4) && old(e)),
        );
        has(
            "measured as now",
            self.tested
                .iter()
                .any(|e| e.odd == 0 && since(e).is_some() && !old(e)),
        );
        has("no body weight", self.body_weight.is_none());
        has("rename", tested.contains("old-"));
        has("pause", !self.paused.is_empty());
        let of_kind = |what| move |rest: &Rest| rest.what == what;
        has("restriction", !self.restrict.is_empty());
        has("restricted class", self.restrict.iter().any(of_kind(2)));
        has("restricted pattern", self.restrict.iter().any(of_kind(3)));
        has("paused part", self.paused.iter().any(of_kind(1)));
        has(
            "clearance of a restricted class",
            self.restrict.iter().any(|r| {
                r.what == 2
                    && self
                        .cleared
                        .iter()
                        .any(|c| c.class == r.which % 4 && c.ago <= r.ago)
            }),
        );
        has(
            "clearance beyond a year",
            self.cleared.iter().any(|c| c.ago > 366),
        );
        has("pain above five", self.pains.iter().any(|p| p.score > 5));
        has("a pain's sign", self.pains.iter().any(|p| p.sign.is_some()));
        has(
            "two pains of a part",
            self.pains
                .iter()
                .enumerate()
                .any(|(i, p)| self.pains[..i].iter().any(|q| q.part == p.part)),
        );
        has(
            "a lower pain of a part later on the same day",
            self.pains.iter().enumerate().any(|(i, p)| {
                let earlier = &self.pains[..i];
                earlier
                    .iter()
                    .any(|q| (q.part, q.ago) == (p.part, p.ago) && q.score > p.score)
            }),
        );
        has(
            "a wrist that grows",
            self.born.is_some_and(|b| b >= 2008)
                && self.pains.iter().any(|p| p.part == 1 && p.score > 0),
        );
        has(
            "light",
            self.screened
                .as_ref()
                .is_some_and(|s| s.says == 1 && s.ago >= 0),
        );
        has(
            "a clinician's word that ran out",
            self.screened
                .as_ref()
                .is_some_and(|s| s.lasts.is_some_and(|l| s.ago > l)),
        );
        has("lowering", self.movements.iter().any(|m| m.lowering));
        has("class", self.movements.iter().any(|m| m.class.is_some()));
        has("k of", text.contains("at least "));
        has("any of", text.contains("any of"));
        has("whole family", text.contains("family: f }"));
        has("no presumption", !self.presume);
        has("inverted", self.movements.iter().any(|m| m.inverted));
    }
}

/// A program that answers one JSON line with another.
struct Answerer {
    child: Child,
    input: ChildStdin,
    output: BufReader<ChildStdout>,
}

impl Answerer {
    fn start(mut command: Command) -> Answerer {
        let mut child = command
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("it starts");
        Answerer {
            input: child.stdin.take().expect("piped"),
            output: BufReader::new(child.stdout.take().expect("piped")),
            child,
        }
    }

    fn ask(&mut self, question: &Value) -> Value {
        writeln!(self.input, "{question}").expect("it reads");
        let mut line = String::new();
        self.output.read_line(&mut line).expect("it answers");
        serde_json::from_str(&line).unwrap_or_else(|e| panic!("{e}: {line}"))
    }
}

impl Drop for Answerer {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// The words that the page's scripts say, as a file; written once, for all tests of this run.
fn english() -> &'static Path {
    static FILE: OnceLock<PathBuf> = OnceLock::new();
    FILE.get_or_init(|| {
        let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join("readiness-words.json");
        let words = rungbook::site::before_scripts(rungbook::words::Words::english());
        std::fs::write(&path, words.to_string()).expect("the words");
        path
    })
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The page's script in a JavaScript engine; a loud line where there is none, a failure under `CI=true`.
fn page() -> Option<Answerer> {
    if Command::new("node")
        .arg("--version")
        .stdout(Stdio::null())
        .status()
        .is_err()
    {
        assert!(
            std::env::var("CI").as_deref() != Ok("true"),
            "node is not installed"
        );
        eprintln!(
            "SKIPPED PAGE SCRIPT TESTS: node is not installed (Debian: apt-get install nodejs)"
        );
        return None;
    }
    let mut command = Command::new("node");
    command
        .arg(root().join("tests/page/answer.js"))
        .arg(root().join("themes/chalk"))
        .arg(english());
    Some(Answerer::start(command))
}

/// What the page keeps, takes in, hands on and refuses; its checks stand in `tests/page/keep.js`.
#[test]
fn the_page_keeps_and_takes_in() {
    // Says loudly where there is no Node.js.
    if page().is_none() {
        return;
    }
    let out = Command::new("node")
        .arg(root().join("tests/page/keep.js"))
        .arg(root().join("themes/chalk"))
        .arg(english())
        .output()
        .expect("node");
    println!("{}", String::from_utf8_lossy(&out.stdout));
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
}

/// The reference in Python, where the environment names one.
fn reference() -> Option<Answerer> {
    let python = std::env::var_os("RUNGBOOK_PYTHON")?;
    let mut command = Command::new(python);
    command.arg(root().join("tests/reference/readiness.py"));
    Some(Answerer::start(command))
}

fn resolved(curriculum: &Curriculum, need: &Need<Leaf>) -> Value {
    let parts = |p: &[Need<Leaf>]| {
        p.iter()
            .map(|n| resolved(curriculum, n))
            .collect::<Vec<_>>()
    };
    match need {
        Need::Leaf(l) => {
            json!({ "movement": curriculum.movement(l.movement).id().as_str(), "target": l.target.to_string() })
        }
        Need::All(p) => json!({ "all": parts(p) }),
        Need::Any(p) => json!({ "any": parts(p) }),
        Need::AtLeast(k, p) => json!({ "at_least": k, "of": parts(p) }),
    }
}

fn for_reference(curriculum: &Curriculum) -> Value {
    let movements: Vec<Value> = curriculum
        .movements()
        .map(|(_, m)| {
            use rungbook::curriculum::words::Word;
            json!({
                "id": m.id().as_str(), "pattern": m.pattern().word(), "standard": m.standard().to_string(), "each_side": m.each_side(),
                "guarded": m.guarded(), "lowering": m.phase() == Some(rungbook::curriculum::words::Phase::Lowering),
                "classes": m.cautions().iter().map(|c| curriculum.cautions().class(*c).id.as_str()).collect::<Vec<_>>(), "stresses": m.stresses().iter().map(|p| p.part.word()).collect::<Vec<_>>(),
                "was": m.was().iter().map(|w| w.as_str()).collect::<Vec<_>>(), "needs": resolved(curriculum, m.needs()),
                "since": m.test().and_then(|t| t.since).map(|day| day.to_string()),
            })
        })
        .collect();
    json!({ "presume": curriculum.school().presume, "results_last_days": curriculum.school().results_last, "movements": movements })
}

fn compare(
    case: &Case,
    theme: &Arc<Theme>,
    page: &mut Option<Answerer>,
    reference: &mut Option<Answerer>,
    states: &mut BTreeMap<&'static str, usize>,
) -> Result<(), String> {
    let today = Day::read(TODAY).expect("a day");
    let files = case.files();
    let snapshot = Snapshot::of_texts(files.iter().map(|(p, t)| (p.as_str(), t.as_str())));
    let theme = Some(Arc::clone(theme));
    let built = site::build(&snapshot, &site::Options { theme });
    let proof = built.proof();
    let curriculum = &proof.curriculum;
    if let Some((_, m)) = curriculum.movements().find(|(_, m)| m.faulty()) {
        let found: Vec<String> = proof.findings.iter().map(|f| f.message.clone()).collect();
        return Err(format!("{} is faulty: {found:?}", m.id()));
    }
    let unreached = curriculum
        .movements()
        .any(|(ix, _)| !proof.resolved.stages.is_reached(ix));
    *states.entry("unreached").or_default() += usize::from(unreached);
    let in_loop = !unreached && has_loop(curriculum);
    *states.entry("loop").or_default() += usize::from(in_loop);
    let written = case.results();
    let text = written.to_string();
    let (people, found) = results::read(
        &Snapshot::of_texts([("r.json", text.as_str())]),
        curriculum,
        today,
    );
    if found.has_errors() {
        return Err(format!(
            "{:?}",
            found.iter().map(|f| f.message.clone()).collect::<Vec<_>>()
        ));
    }
    let person = &people[0];
    let ours = readiness::assess(curriculum, &proof.resolved.stages, person, today);
    let steps = readiness::Steps::new(curriculum, &proof.resolved.stages, person, today);
    let mut answer = Map::new();
    for (ix, s) in ours.all() {
        *states.entry(s.state.word()).or_default() += 1;
        *states.entry("presumed").or_default() += usize::from(s.presumed);
        let id = |ix| curriculum.movement(ix).id().to_string();
        let line = |m: &readiness::Missing| json!({ "movement": id(m.movement), "target": m.target.to_string(), "got": m.got, "share": m.share });
        let missing: Vec<Value> = s.missing.iter().map(line).collect();
        let waits = s.needs != readiness::Truth::True && s.state != State::Paused;
        let first = waits.then(|| steps.to(ix));
        if let Some(first) = &first {
            *states.entry("first further down").or_default() +=
                usize::from(!first.direct && !first.steps.is_empty());
            for step in &first.steps {
                let below = ours.of(step.movement);
                if below
                    .is_some_and(|b| b.needs != readiness::Truth::True || b.state == State::Paused)
                {
                    return Err(format!(
                        "{} begins with {}, which may not be tried",
                        id(ix),
                        id(step.movement)
                    ));
                }
            }
            let spared = readiness::causes(person, today);
            if first.steps.is_empty() && !unreached && spared.is_empty() {
                return Err(format!("{} has nothing to begin with", id(ix)));
            }
        }
        let (direct, first): (bool, Vec<Value>) = first.map_or((true, Vec::new()), |f| {
            (f.direct, f.steps.iter().map(line).collect())
        });
        answer.insert(
            id(ix),
            json!({ "state": s.state.word(), "presumed": s.presumed, "missing": missing, "first": { "direct": direct, "steps": first }, "paused": s.paused_by.iter().map(|c| cause(*c)).collect::<Vec<_>>(), "nearly": s.nearly.map(id), "root": s.counted_because.map(id) }),
        );
    }
    if let Some(page) = page {
        let tables = built.tables().map_err(|e| e.to_string())?;
        let theirs = page.ask(&json!({ "tables": tables, "results": written, "today": TODAY }));
        differ(
            &answer,
            &theirs["movements"],
            &[
                "state", "presumed", "missing", "first", "paused", "nearly", "root",
            ],
            "the page",
        )?;
        let aside: Vec<&str> = theirs["aside"]
            .as_array()
            .expect("a list")
            .iter()
            .map(|a| a["movement"].as_str().expect("text"))
            .collect();
        let ours: Vec<&str> = person.aside.iter().map(|a| a.movement.as_str()).collect();
        if aside != ours {
            return Err(format!("aside: the page {aside:?}, ours {ours:?}"));
        }
        let (question, for_today) = question(proof, person, today);
        if !unreached && theirs["forToday"][0] != for_today {
            return Err(format!(
                "what may be tested today: the page {}, ours {for_today}",
                theirs["forToday"][0]
            ));
        }
        if !unreached && theirs["questions"][0] != question {
            return Err(format!(
                "the next question: the page {}, ours {question}",
                theirs["questions"][0]
            ));
        }
    }
    if let Some(reference) = reference {
        let theirs = reference.ask(
            &json!({ "curriculum": for_reference(curriculum), "results": written, "today": TODAY }),
        );
        // It gives no texts of results, no first steps and no reasons.
        for value in answer.values_mut() {
            for missing in value["missing"].as_array_mut().expect("a list") {
                missing.as_object_mut().expect("a record").remove("got");
            }
        }
        differ(
            &answer,
            &theirs["movements"],
            &["state", "presumed", "missing"],
            "the reference",
        )?;
        if theirs["aside"] != json!(person.aside.len()) {
            return Err(format!(
                "aside: the reference {}, ours {}",
                theirs["aside"],
                person.aside.len()
            ));
        }
    }
    Ok(())
}

/// A cause as the page names it: its kind, and its place among the entries of that kind.
fn cause(cause: readiness::Cause) -> Value {
    use readiness::Cause;
    let at = match cause {
        Cause::Pause(i) | Cause::Restriction(i) | Cause::Pain(i) => i,
        Cause::Light => 0,
    };
    json!([cause.word(), at])
}

fn has_loop(curriculum: &Curriculum) -> bool {
    curriculum.movements().any(|(ix, m)| {
        m.needs()
            .leaves()
            .iter()
            .any(|l| chain::below(curriculum, l.movement).contains(&ix))
    })
}

/// The next question, and the ids of what may be tested today.
fn question(
    proof: &rungbook::proof::Proofread,
    person: &results::Person,
    today: Day,
) -> (Value, Value) {
    let curriculum = &proof.curriculum;
    let flat = Flat::new(curriculum);
    let goal = &curriculum.skills().next().expect("a skill").1.goal;
    let resolved = chain::resolve(curriculum, &proof.resolved.stages, goal);
    let members: Vec<_> = resolved.movements.iter().map(|l| l.movement).collect();
    let evidence = Evidence::new(curriculum, person, today);
    let readiness = readiness::assess(curriculum, &proof.resolved.stages, person, today);
    let board = Board::new(
        curriculum,
        &proof.resolved.stages,
        &flat,
        &members,
        &evidence,
        &readiness,
        today,
    );
    let id = |ix| curriculum.movement(ix).id().to_string();
    let mut for_today: Vec<String> = board.for_today().into_iter().map(id).collect();
    for_today.sort();
    let question = board.next(&[]);
    let question = question.map(|q| json!([id(q.movement), q.today]));
    (question.unwrap_or_default(), json!(for_today))
}

fn differ(
    ours: &Map<String, Value>,
    theirs: &Value,
    keys: &[&str],
    whose: &str,
) -> Result<(), String> {
    for (id, answer) in ours {
        for key in keys {
            if answer[*key] != theirs[id][*key] {
                return Err(format!(
                    "{id} {key}: ours {}, {whose} {}",
                    answer[*key], theirs[id][*key]
                ));
            }
        }
    }
    Ok(())
}

#[test]
fn program_page_and_reference_agree() {
    let snapshot = Snapshot::of_texts([("content/school.yaml", "")]);
    let theme = Theme::load("chalk", &snapshot, rungbook::words::Words::english());
    let theme = Arc::new(theme.expect("the shipped theme"));
    let mut page = page();
    let mut reference = reference();
    let counts = RefCell::new(BTreeMap::new());
    let states = RefCell::new(BTreeMap::new());
    let both = RefCell::new((page.take(), reference.take()));
    let mut runner = TestRunner::new(dice::config(CASES));
    let outcome = runner.run(&case(), |case| {
        case.count(&mut counts.borrow_mut());
        let (page, reference) = &mut *both.borrow_mut();
        compare(&case, &theme, page, reference, &mut states.borrow_mut())
            .map_err(TestCaseError::fail)
    });
    if let Err(TestError::Fail(why, case)) = &outcome {
        let files: Vec<String> = case.files().iter().map(|f| f.1.clone()).collect();
        panic!("{why}\n{}\n{:#}", files.join("\n"), case.results());
    }
    outcome.expect("no case was given up");
    let mut rare: Vec<String> = counts
        .borrow()
        .iter()
        .filter(|c| *c.1 < LEAST)
        .map(|c| format!("{c:?}"))
        .collect();
    rare.extend(
        states
            .borrow()
            .iter()
            .filter(|c| *c.0 != "unreached" && *c.1 < LEAST)
            .map(|c| format!("{c:?}")),
    );
    println!("{:?}\n{:?}", counts.borrow(), states.borrow());
    assert!(rare.is_empty(), "too rare: {rare:?}");
    for state in State::ALL {
        assert!(
            states.borrow().contains_key(state.word()),
            "{}",
            state.word()
        );
    }
}

/// What people type as results reads and prints the same in the program and in the page.
#[test]
fn results_read_alike() {
    let Some(mut page) = page() else { return };
    let words = [
        "5",
        "0",
        "2.5",
        "x",
        "reps",
        "rep",
        "of",
        "s",
        "secs",
        "min",
        "mins",
        "in",
        "3",
        "tries",
        "with",
        "kg",
        "lb",
        "bw",
        "help",
        "cm",
        "deg",
        "done",
        "not",
        "at most",
        "each side",
        "×",
        "100001",
        "1.2345678",
        "S",
        "KG",
        ",",
        "-",
        "10",
        "1667",
        "39371",
        "kghelpeachside",
        "secondssecondssecondssecondssecondsseconds",
        "\u{85}",
        "\u{a0}",
        "\u{feff}",
        "\u{212a}g",
        "\u{17f}",
        "\u{660}",
    ];
    let strategy = prop_oneof![
        3 => proptest::collection::vec((0..words.len(), any::<bool>()), 1..7).prop_map(move |picks| {
            picks.iter().map(|(i, space)| format!("{}{}", words[*i], if *space { " " } else { "" })).collect::<String>()
        }),
        2 => (0..8_usize, 0..16_usize).prop_map(|(kind, pick)| RESULTS[kind][pick % RESULTS[kind].len()].to_string()),
        1 => "[ -~×é]{0,12}",
    ];
    let mut runner = TestRunner::new(dice::config(3000));
    let page = RefCell::new(&mut page);
    let sound = RefCell::new(0);
    runner
        .run(&strategy, |text| {
            use rungbook::curriculum::target::{Added, Measure};
            let ours = Got::read(&text).ok().map(|got| {
                let p = got.parts();
                let measure = [
                    Measure::Reps,
                    Measure::Time,
                    Measure::Length,
                    Measure::Angle,
                    Measure::Done,
                ]
                .iter()
                .position(|m| *m == p.measure());
                let (unit, load) = match p.added() {
                    None => (0, 0),
                    Some(load @ Added::Mass(_)) => (1, load.signed()),
                    Some(load @ Added::BodyWeight(_)) => (2, load.signed()),
                };
                let (hits, of) = p.tries().map_or((0, 0), |t| (t.hits, t.of));
                json!([
                    measure,
                    p.sets(),
                    p.amount(),
                    p.seconds(),
                    unit,
                    load,
                    hits,
                    of,
                    got.to_string()
                ])
            });
            *sound.borrow_mut() += usize::from(ours.is_some());
            let theirs = page.borrow_mut().ask(&json!({ "read": [text] }));
            prop_assert_eq!(json!(ours), theirs[0].clone(), "{}", text);
            Ok(())
        })
        .expect("both read alike");
    assert!(
        *sound.borrow() > 800,
        "{} of them are results",
        sound.borrow()
    );
}

/// The page knows the keys of the layout that the program knows, and no other.
#[test]
fn results_have_the_same_keys() {
    use rungbook::curriculum::keys;
    let Some(mut page) = page() else { return };
    let names = |keys: &[keys::Key]| keys.iter().map(|k| k.name).collect::<Vec<_>>();
    let ours = json!({
        "file": names(keys::RESULTS), "tested": names(keys::RESULTS_TESTED), "trained": names(keys::RESULTS_TRAINED),
        "sessions": names(keys::RESULTS_SESSIONS), "paused": names(keys::RESULTS_PAUSED),
        "train": names(keys::RESULTS_TRAIN), "screened": names(keys::RESULTS_SCREENED),
        "cleared": names(keys::RESULTS_CLEARED), "pain": names(keys::RESULTS_PAIN), "remarks": names(keys::RESULTS_REMARKS),
    });
    assert_eq!(page.ask(&json!({ "keys": true })), ours);
}

/// What the program finds at fault in a file the page refuses, or keeps aside and says.
#[test]
fn the_page_reports_what_the_program_finds() {
    let Some(mut page) = page() else { return };
    let movement = |id: &str, standard: &str| {
        (
            format!("content/movements/{id}.yaml"),
            format!(
                "movement: {id}\nname: M\npattern: core\nposition: prone\nload: body\nequipment: []\nsummary: S\nstandard: {standard}\n"
            ),
        )
    };
    let files = [
        (
            "content/school.yaml".to_string(),
            "school: T\naddress: https://test.example/\nlanguage: en\nunits: metric\n".to_string(),
        ),
        (
            "content/skills/s.yaml".to_string(),
            "skill: s\nname: S\ngoal: hold\n".to_string(),
        ),
        movement("hold", "20 s"),
        movement("reach", "done"),
    ];
    let snapshot = Snapshot::of_texts(files.iter().map(|(p, t)| (p.as_str(), t.as_str())));
    let built = site::build(&snapshot, &site::Options::default());
    let proof = built.proof();
    let tables = built.tables().expect("a site");
    let on = "2026-10-01";
    let trained = |sets: Value| json!({ "results": 1, "trained": [{ "movement": "hold", "did": sets, "on": on }] });
    let faults = [
        (trained(json!([20, "25 s"])), ""),
        (trained(json!([20, "5 reps"])), "aside"),
        (trained(json!(["10 cm"])), "aside"),
        (
            json!({ "results": 1, "trained": [{ "movement": "reach", "did": ["10 cm"], "on": on }] }),
            "",
        ),
        (json!({ "results": 1, "colour": "red" }), "colour"),
        (
            json!({ "results": 1, "tested": [{ "movement": "hold", "got": "20 s", "goot": "20 s" }] }),
            "goot",
        ),
        (
            json!({ "results": 1, "trained": [{ "movement": "hold", "did": [20], "reps": 5 }] }),
            "reps",
        ),
        (
            json!({ "results": 1, "sessions": [{ "effort": 5, "minutes": 50, "mood": 1 }] }),
            "mood",
        ),
        (
            json!({ "results": 1, "paused": [{ "part": "knee", "side": "left" }] }),
            "side",
        ),
        (
            json!({ "results": 1, "cleared": [{ "class": "inverted", "for": "ever" }] }),
            "for",
        ),
        (
            json!({ "results": 1, "screened": { "says": "clear", "answers": "none" } }),
            "answers",
        ),
    ];
    for (results, fault) in faults {
        let text = results.to_string();
        let snapshot = Snapshot::of_texts([("r.json", text.as_str())]);
        let today = Day::read(TODAY).expect("a day");
        let (_, found) = results::read(&snapshot, &proof.curriculum, today);
        assert_eq!(found.has_errors(), !fault.is_empty(), "{text}");
        let theirs = page.ask(&json!({ "tables": tables, "results": results, "today": TODAY }));
        let refused = theirs["refused"].as_str().unwrap_or("");
        match fault {
            "" => assert_eq!((refused, &theirs["aside"]), ("", &json!([])), "{text}"),
            "aside" => assert_eq!(theirs["aside"][0]["movement"], "hold", "{text}: {theirs}"),
            key => assert!(refused.contains(&format!("“{key}”")), "{text}: {theirs}"),
        }
    }
}
