//! Chains against independent references: brute force in plain Rust, networkx from PyPI in another language, and the published
//! AND/OR examples.
//!
//! Sources: Doignon and Falmagne 1985, Int J Man-Machine Studies 23:175-196 (AND/OR graphs are knowledge spaces); example A is
//! the data `xpl` of the R package kstMatrix; example B is Doignon and Falmagne 1999, chapter 7; example D is after Gallo et
//! al. 1993, Discrete Appl Math 42:177-201.

mod dice;

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use rungbook::chain;
use rungbook::curriculum::{Curriculum, Leaf, MovementIx, Need};
use rungbook::proof::{Proofread, proofread};
use rungbook::source::Snapshot;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::io::Write;
use std::process::{Command, Stdio};

const SCHOOL: &str = "school: T\naddress: https://test.example/\nlanguage: en\nunits: metric\n";

/// A tree over numbered movements.
#[derive(Clone, Debug)]
enum Tree {
    Leaf(usize),
    All(Vec<Tree>),
    Any(Vec<Tree>),
    AtLeast(usize, Vec<Tree>),
}

impl Tree {
    fn yaml(&self) -> String {
        let list = |parts: &[Tree]| parts.iter().map(Tree::yaml).collect::<Vec<_>>().join(", ");
        match self {
            Tree::Leaf(i) => name(*i),
            Tree::All(p) => format!("{{ all of: [{}] }}", list(p)),
            Tree::Any(p) => format!("{{ any of: [{}] }}", list(p)),
            Tree::AtLeast(k, p) => format!("{{ at least {k} of: [{}] }}", list(p)),
        }
    }

    fn json(&self) -> Value {
        let list = |parts: &[Tree]| parts.iter().map(Tree::json).collect::<Vec<_>>();
        match self {
            Tree::Leaf(i) => json!({ "movement": name(*i) }),
            Tree::All(p) => json!({ "all": list(p) }),
            Tree::Any(p) => json!({ "any": list(p) }),
            Tree::AtLeast(k, p) => json!({ "least": k, "of": list(p) }),
        }
    }

    /// One more than the value of the design: all of the highest, any of the lowest, at least k of the k-th lowest.
    fn value(&self, stage: &[Option<u32>]) -> Option<u32> {
        let parts = |p: &[Tree]| p.iter().map(|t| t.value(stage)).collect::<Vec<_>>();
        match self {
            Tree::Leaf(i) => stage[*i],
            Tree::All(p) => parts(p).into_iter().try_fold(0, |a, b| b.map(|b| a.max(b))),
            Tree::Any(p) => parts(p).into_iter().flatten().min(),
            Tree::AtLeast(k, p) => {
                let mut known: Vec<u32> = parts(p).into_iter().flatten().collect();
                known.sort_unstable();
                known.get(k - 1).copied()
            }
        }
    }

    fn leaves(&self, out: &mut BTreeSet<usize>) {
        match self {
            Tree::Leaf(i) => {
                out.insert(*i);
            }
            Tree::All(p) | Tree::Any(p) | Tree::AtLeast(_, p) => {
                p.iter().for_each(|t| t.leaves(out))
            }
        }
    }
}

fn name(i: usize) -> String {
    format!("m{i:02}")
}

/// Random needs: movement i mentions any of the movements below `reach(i)`, so that some curricula have loops.
fn trees(size: usize, loops: bool) -> impl Strategy<Value = Vec<Option<Tree>>> {
    let tree = move |below: usize| {
        let leaf = (0..below.max(1)).prop_map(Tree::Leaf);
        leaf.prop_recursive(3, 8, 4, |inner| {
            prop_oneof![
                prop::collection::vec(inner.clone(), 1..4).prop_map(Tree::All),
                prop::collection::vec(inner.clone(), 1..4).prop_map(Tree::Any),
                (prop::collection::vec(inner, 1..4), 0..4usize)
                    .prop_map(|(p, k)| Tree::AtLeast(1 + k % p.len(), p)),
            ]
        })
    };
    let one = move |i: usize| prop::option::weighted(0.75, tree(if loops { size } else { i }));
    (0..size)
        .map(move |i| {
            if i == 0 && !loops {
                Just(None).boxed()
            } else {
                one(i).boxed()
            }
        })
        .collect::<Vec<_>>()
}

fn snapshot(needs: &[Option<Tree>]) -> Snapshot {
    let mut texts = vec![("content/school.yaml".to_string(), SCHOOL.to_string())];
    for (i, tree) in needs.iter().enumerate() {
        let list = tree
            .as_ref()
            .map_or(String::new(), |t| format!("needs: [{}]\n", t.yaml()));
        let weeks = 1 + (i * 7) % 5;
        texts.push((
            format!("content/movements/{}.yaml", name(i)),
            format!("movement: {0}\nname: {0}\npattern: core\nposition: prone\nload: none\nequipment: []\nsummary: x\nstandard: 5 reps\nweeks: {weeks}\n{list}", name(i)),
        ));
    }
    texts.push((
        "content/skills/goal.yaml".into(),
        format!("skill: goal\nname: G\ngoal: {}\n", name(needs.len() - 1)),
    ));
    Snapshot::of_texts(texts.iter().map(|(p, t)| (p.as_str(), t.as_str())))
}

fn read(needs: &[Option<Tree>]) -> Proofread {
    proofread(&snapshot(needs))
}

/// The stages by the definition, over and over until nothing changes.
fn brute_stages(needs: &[Option<Tree>], without: Option<usize>) -> Vec<Option<u32>> {
    let mut stage: Vec<Option<u32>> = vec![None; needs.len()];
    loop {
        let next: Vec<Option<u32>> = needs
            .iter()
            .enumerate()
            .map(|(i, tree)| {
                if Some(i) == without {
                    None
                } else {
                    tree.as_ref()
                        .map_or(Some(0), |t| t.value(&stage).map(|v| v + 1))
                }
            })
            .collect();
        if next == stage {
            return stage;
        }
        stage = next;
    }
}

fn brute_below(needs: &[Option<Tree>], goal: usize) -> BTreeSet<usize> {
    let mut out = BTreeSet::from([goal]);
    loop {
        let mut more = out.clone();
        out.iter()
            .filter_map(|i| needs[*i].as_ref())
            .for_each(|t| t.leaves(&mut more));
        if more == out {
            return out;
        }
        out = more;
    }
}

fn index(curriculum: &Curriculum, i: usize) -> MovementIx {
    curriculum
        .find_movement(&name(i))
        .expect("every movement is there")
}

proptest! {
    #![proptest_config(dice::config(300))]

    #[test]
    fn stages_and_essentials_by_brute_force(needs in prop_oneof![trees(12, false), trees(9, true)]) {
        let proof = read(&needs);
        let expected = brute_stages(&needs, None);
        for (i, stage) in expected.iter().enumerate() {
            prop_assert_eq!(proof.resolved.stages.of(index(&proof.curriculum, i)), *stage, "stage of {}", name(i));
        }
        let goal = needs.len() - 1;
        if expected[goal].is_none() {
            return Ok(());
        }
        let skill = proof.curriculum.skills().next().expect("the skill").1;
        let resolved = chain::resolve(&proof.curriculum, &proof.resolved.stages, &skill.goal);
        let chain: BTreeSet<String> = resolved.movements.iter().map(|l| proof.curriculum.movement(l.movement).id().to_string()).collect();
        let below: BTreeSet<String> = brute_below(&needs, goal).into_iter().filter(|i| expected[*i].is_some()).map(name).collect();
        prop_assert_eq!(&chain, &below);
        for link in &resolved.movements {
            let i = (0..needs.len()).find(|i| index(&proof.curriculum, *i) == link.movement).expect("known");
            let essential = i == goal || brute_stages(&needs, Some(i))[goal].is_none();
            prop_assert_eq!(link.essential, essential, "essential {}", name(i));
        }
    }

    #[test]
    fn routes_by_brute_force(needs in prop_oneof![trees(9, false), trees(8, true)]) {
        let proof = read(&needs);
        let goal = needs.len() - 1;
        let route = chain::newcomer_route(&proof.curriculum, index(&proof.curriculum, goal));
        let weeks = |set: u32| (0..needs.len()).filter(|i| set >> i & 1 == 1).map(|i| 2 * (1 + (i * 7) % 5) as u32).sum::<u32>();
        // Every set of movements that reaches the goal by itself; the smallest.
        let best = (0..1u32 << needs.len())
            .filter(|set| set >> goal & 1 == 1)
            .filter(|set| {
                let held: Vec<Option<Tree>> =
                    needs.iter().enumerate().map(|(i, t)| if set >> i & 1 == 1 { t.clone() } else { Some(Tree::Any(vec![])) }).collect();
                brute_stages(&held, None)[goal].is_some()
            })
            .map(weeks)
            .min();
        prop_assert_eq!(route.as_ref().map(|r| r.half_weeks), best);
        if let Some(route) = route {
            prop_assert!(route.exact);
            prop_assert_eq!(route.at_least_half_weeks, route.half_weeks);
        }
    }

    #[test]
    fn loops_are_found_exactly_where_nobody_can_begin(needs in trees(8, true)) {
        let proof = read(&needs);
        let (circles, alone) = chain::loops(&proof.curriculum, &proof.resolved.stages);
        let lost = brute_stages(&needs, None).iter().filter(|s| s.is_none()).count();
        prop_assert_eq!(circles.is_empty() && alone.is_empty(), lost == 0);
        for circle in &circles {
            for (i, (from, leaf)) in circle.steps.iter().enumerate() {
                let to = circle.steps[(i + 1) % circle.steps.len()].0;
                prop_assert_eq!(leaf.movement, to);
                prop_assert!(proof.curriculum.movement(*from).needs().leaves().contains(&leaf));
            }
        }
    }

    #[test]
    fn implied_needs_follow_and_others_do_not(needs in trees(9, false)) {
        let proof = read(&needs);
        let goal = index(&proof.curriculum, needs.len() - 1);
        let tree = proof.curriculum.movement(goal).needs();
        let implications = chain::Implications::new(&proof.curriculum, &proof.resolved.stages);
        for leaf in chain::necessary_leaves(tree) {
            // Taking a necessary leaf's movement out of the world makes the goal unreachable.
            let i = (0..needs.len()).find(|i| index(&proof.curriculum, *i) == leaf.movement).expect("known");
            if brute_stages(&needs, None)[needs.len() - 1].is_some() {
                prop_assert!(brute_stages(&needs, Some(i))[needs.len() - 1].is_none());
            }
            if let Some(path) = implications.by(goal, leaf) {
                prop_assert_eq!(path.last().map(|l| l.movement), Some(leaf.movement));
                let mut at: &Need<Leaf> = tree;
                for step in path {
                    prop_assert!(chain::necessary_leaves(at).contains(&step));
                    at = proof.curriculum.movement(step.movement).needs();
                }
            }
        }
    }
}

/// The reference's answers, one for each object; `None` where Python or networkx is missing (a failure under CI).
fn reference(objects: &[Value]) -> Option<Vec<Value>> {
    let python = std::env::var("RUNGBOOK_PYTHON")
        .unwrap_or_else(|_| concat!(env!("CARGO_MANIFEST_DIR"), "/target/venv/bin/python").into());
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/chains.py");
    let child = Command::new(&python)
        .arg(script)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn();
    let Ok(mut child) = child else {
        eprintln!("SKIPPED REFERENCE TESTS: {python} cannot be run; tests/run makes it");
        assert!(
            std::env::var("CI").as_deref() != Ok("true"),
            "the reference must run under CI"
        );
        return None;
    };
    let mut input = child.stdin.take().expect("a pipe");
    let text: String = objects.iter().map(|o| format!("{o}\n")).collect();
    let writer = std::thread::spawn(move || input.write_all(text.as_bytes()));
    let out = child.wait_with_output().expect("the reference ends");
    writer
        .join()
        .expect("a thread")
        .expect("the reference reads");
    assert!(out.status.success(), "the reference failed");
    Some(
        String::from_utf8(out.stdout)
            .expect("text")
            .lines()
            .map(|l| serde_json::from_str(l).expect("JSON"))
            .collect(),
    )
}

fn object(needs: &[Option<Tree>], states: bool) -> Value {
    let movements: Vec<Value> = needs
        .iter()
        .enumerate()
        .map(|(i, t)| json!({ "id": name(i), "needs": t.as_ref().map(Tree::json) }))
        .collect();
    json!({ "movements": movements, "goal": name(needs.len() - 1), "states": states })
}

#[test]
fn chains_agree_with_networkx() {
    let mut runner = proptest::test_runner::TestRunner::new(dice::config(1));
    let mut all = Vec::new();
    for round in 0..250 {
        let strategy = trees(6 + round % 9, round % 3 == 0);
        all.push(
            strategy
                .new_tree(&mut runner)
                .expect("a curriculum")
                .current(),
        );
    }
    let objects: Vec<Value> = all.iter().map(|needs| object(needs, false)).collect();
    let Some(answers) = reference(&objects) else {
        return;
    };
    assert_eq!(answers.len(), all.len());
    let mut compared = BTreeMap::new();
    for (needs, answer) in all.iter().zip(answers) {
        let proof = read(needs);
        for i in 0..needs.len() {
            let stage = proof.resolved.stages.of(index(&proof.curriculum, i));
            assert_eq!(
                json!(stage),
                answer["stages"][name(i)],
                "stage of {} in {needs:?}",
                name(i)
            );
        }
        let goal = index(&proof.curriculum, needs.len() - 1);
        let below: Vec<String> = chain::below(&proof.curriculum, goal)
            .iter()
            .map(|ix| proof.curriculum.movement(*ix).id().to_string())
            .collect();
        assert_eq!(json!(below), answer["chain"], "{needs:?}");
        let mut essential: Vec<String> =
            chain::essentials(&proof.curriculum, &proof.resolved.stages, goal)
                .iter()
                .map(|ix| proof.curriculum.movement(*ix).id().to_string())
                .collect();
        essential.sort();
        assert_eq!(json!(essential), answer["essential"], "{needs:?}");
        *compared.entry(essential.len().min(5)).or_insert(0) += 1;
    }
    assert!(compared.len() >= 4, "the cases are too alike: {compared:?}");
}

/// The states of a curriculum: sets reached from nothing by adding one movement whose needs are met. Counted by the program's
/// own trees.
fn states(curriculum: &Curriculum) -> (BTreeSet<u32>, u64) {
    let mut paths: BTreeMap<u32, u64> = BTreeMap::from([(0, 1)]);
    let mut seen = BTreeSet::new();
    while let Some((set, ways)) = paths.pop_first() {
        seen.insert(set);
        if set.count_ones() as usize == curriculum.len() {
            return (seen, ways);
        }
        for (ix, m) in curriculum.movements() {
            if set >> ix.0 & 1 == 0 && m.needs().holds(&|l: &Leaf| set >> l.movement.0 & 1 == 1) {
                *paths.entry(set | 1 << ix.0).or_insert(0) += ways;
            }
        }
    }
    (seen, 0)
}

#[test]
fn published_example_a() {
    // a, b on the ground; c after a or b; d after a and b: 9 states, 6 learning paths; the fringes as published.
    let needs = [
        None,
        None,
        Some(Tree::Any(vec![Tree::Leaf(0), Tree::Leaf(1)])),
        Some(Tree::All(vec![Tree::Leaf(0), Tree::Leaf(1)])),
    ];
    let proof = read(&needs);
    let (found, paths) = states(&proof.curriculum);
    let expected: BTreeSet<u32> = [
        0b0000, 0b0001, 0b0010, 0b0011, 0b0101, 0b0110, 0b0111, 0b1011, 0b1111,
    ]
    .into();
    assert_eq!(found, expected);
    assert_eq!(paths, 6);
    // Wrong readings give other counts: the choice read as "all of" 7, dropped 10.
    let all = [
        None,
        None,
        Some(Tree::All(vec![Tree::Leaf(0), Tree::Leaf(1)])),
        needs[3].clone(),
    ];
    assert_eq!(states(&read(&all).curriculum).0.len(), 7);
    let dropped = [None, None, None, needs[3].clone()];
    assert_eq!(states(&read(&dropped).curriculum).0.len(), 10);
    if let Some(answers) = reference(&[object(&needs, true)]) {
        assert_eq!(answers[0]["states"], 9);
        assert_eq!(answers[0]["paths"], 6);
    }
}

#[test]
fn published_example_b() {
    // c and d after a and b; e after a, b and c: 9 states, 6 paths.
    let both = || Tree::All(vec![Tree::Leaf(0), Tree::Leaf(1)]);
    let needs = [
        None,
        None,
        Some(both()),
        Some(both()),
        Some(Tree::All(vec![Tree::Leaf(0), Tree::Leaf(1), Tree::Leaf(2)])),
    ];
    let (found, paths) = states(&read(&needs).curriculum);
    let expected: BTreeSet<u32> =
        [0, 0b1, 0b10, 0b11, 0b111, 0b1011, 0b1111, 0b10111, 0b11111].into();
    assert_eq!(found, expected);
    assert_eq!(paths, 6);
}

#[test]
fn published_example_c() {
    // The union closure of {a, ab, ac, de} has 10 states; as needs: b and c after a; d and e only together are no needs at all,
    // so d and e become one movement here. The trace on {a, b, c} and the joint movement: 5 x 2 states.
    let needs = [None, Some(Tree::Leaf(0)), Some(Tree::Leaf(0)), None];
    assert_eq!(states(&read(&needs).curriculum).0.len(), 10);
}

#[test]
fn published_example_d() {
    // s->x, s->{x,y}, s->z, {x,y,z}->{u,t}, a->{u,t}, x->s, {b,t}->a, s->t. From s everything but a and b is reached;
    // plain reachability would reach a as well. s is the ground here; b is nowhere to be had.
    let (s, x, y, z, u, t, a, b) = (0, 1, 2, 3, 4, 5, 6, 7);
    let xyz = || Tree::All(vec![Tree::Leaf(x), Tree::Leaf(y), Tree::Leaf(z)]);
    let needs = [
        None,
        Some(Tree::Leaf(s)),
        Some(Tree::Leaf(s)),
        Some(Tree::Leaf(s)),
        Some(Tree::Any(vec![xyz(), Tree::Leaf(a)])),
        Some(Tree::Any(vec![xyz(), Tree::Leaf(a), Tree::Leaf(s)])),
        Some(Tree::All(vec![Tree::Leaf(b), Tree::Leaf(t)])),
        Some(Tree::Leaf(b)),
    ];
    let proof = read(&needs);
    let reached: Vec<bool> = (0..8)
        .map(|i| {
            proof
                .resolved
                .stages
                .is_reached(index(&proof.curriculum, i))
        })
        .collect();
    assert_eq!(reached, [true, true, true, true, true, true, false, false]);
    // u: s, then x, y and z side by side, then u.
    assert_eq!(
        proof.resolved.stages.of(index(&proof.curriculum, u)),
        Some(2)
    );
}
