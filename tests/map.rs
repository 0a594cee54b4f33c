//! The map of a chain on random chains: boxes keep apart, no line passes through one, few lines cross, same bytes each time.

mod dice;

use proptest::prelude::*;
use rungbook::curriculum::Need;
use rungbook::site;
use rungbook::site::map::layers::{Kind, Layered, layers};
use rungbook::site::map::order::{Order, barycentre, crossings, improve};
use rungbook::site::map::place::{Curve, Placed, place};
use rungbook::site::map::{Member, svg};
use rungbook::source::Snapshot;
use rungbook::words::Words;
use std::collections::BTreeSet;

/// The stage of a tree, as the chain has it: all of the highest, any of the lowest, at least k of the k-th lowest.
fn stage(need: &Need<usize>, stages: &[Option<u32>]) -> Option<u32> {
    let parts = |p: &[Need<usize>]| p.iter().map(|n| stage(n, stages)).collect::<Vec<_>>();
    let nth = |p: &[Need<usize>], k: usize| {
        let mut known: Vec<u32> = parts(p).into_iter().flatten().collect();
        known.sort_unstable();
        known.get(k - 1).copied()
    };
    match need {
        Need::Leaf(i) => stages[*i].map(|s| s + 1),
        Need::All(p) => parts(p).into_iter().try_fold(0, |a, b| b.map(|b| a.max(b))),
        Need::Any(p) => nth(p, 1),
        Need::AtLeast(k, p) => nth(p, *k as usize),
    }
}

fn need(size: usize) -> impl Strategy<Value = Need<usize>> {
    let leaf = (0..size).prop_map(Need::Leaf);
    let tree = leaf.prop_recursive(3, 10, 4, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 1..4).prop_map(Need::All),
            prop::collection::vec(inner.clone(), 1..4).prop_map(Need::Any),
            (prop::collection::vec(inner, 1..4), 0..4u32)
                .prop_map(|(p, k)| Need::AtLeast(1 + k % p.len() as u32, p)),
        ]
    });
    prop::collection::vec(tree, 0..4).prop_map(Need::All)
}

const WORDS: [&str; 6] = [
    "Hold",
    "Tuck <lever> & co",
    "One-leg wall walk with a very long name that does not fit",
    "Überstreckungsübergangshaltungen",
    "前水平支持前水平支持前水平",
    "A-b-c-d-e-f-g-h-i-j-k-l-m-n",
];

/// Movements that can all be reached, by stage, some of them leaning on what stands higher.
fn chains(most: usize) -> impl Strategy<Value = Vec<Member>> {
    (2..most)
        .prop_flat_map(|size| {
            prop::collection::vec(
                (
                    need(size),
                    prop::option::weighted(0.4, 0..3usize),
                    any::<bool>(),
                    0..6usize,
                ),
                size,
            )
        })
        .prop_map(|drawn| {
            // Few stages at the foot: the first quarter needs nothing.
            let needs: Vec<Need<usize>> = drawn
                .iter()
                .enumerate()
                .map(|(i, d)| {
                    if i < drawn.len().div_ceil(4) {
                        Need::nothing()
                    } else {
                        d.0.clone()
                    }
                })
                .collect();
            let mut stages: Vec<Option<u32>> = vec![None; needs.len()];
            loop {
                let next: Vec<Option<u32>> = needs.iter().map(|n| stage(n, &stages)).collect();
                if next == stages {
                    break;
                }
                stages = next;
            }
            let mut kept: Vec<usize> = (0..needs.len()).filter(|i| stages[*i].is_some()).collect();
            kept.sort_by_key(|i| (stages[*i], *i));
            kept.iter()
                .map(|i| Member {
                    id: format!("m{i}"),
                    name: WORDS[drawn[*i].3].to_string(),
                    stage: stages[*i].unwrap_or(0),
                    essential: drawn[*i].2,
                    mark: drawn[*i].1.map(|s| {
                        (
                            ["notice", "caution", "warning"][s],
                            "careful".to_string(),
                            "falls".to_string(),
                        )
                    }),
                    needs: moved(&needs[*i], &kept),
                })
                .collect()
        })
}

fn moved(need: &Need<usize>, kept: &[usize]) -> Need<usize> {
    let all = |p: &[Need<usize>]| p.iter().map(|n| moved(n, kept)).collect();
    match need {
        Need::Leaf(i) => match kept.iter().position(|k| k == i) {
            Some(at) => Need::Leaf(at),
            None => Need::Any(Vec::new()),
        },
        Need::All(p) => Need::All(all(p)),
        Need::Any(p) => Need::Any(all(p)),
        Need::AtLeast(k, p) => Need::AtLeast(*k, all(p)),
    }
}

/// Crossings by the definition, every pair of pieces between the same rows.
fn crossed(layered: &Layered, order: &Order) -> usize {
    let at = |node: usize| {
        order[layered.nodes[node].layer]
            .iter()
            .position(|n| *n == node)
    };
    let edges = &layered.edges;
    let pairs = (0..edges.len()).flat_map(|i| (0..i).map(move |j| (i, j)));
    pairs
        .filter(|(i, j)| {
            let (a, b) = (&edges[*i], &edges[*j]);
            layered.nodes[a.low].layer == layered.nodes[b.low].layer
                && ((at(a.low) < at(b.low) && at(a.high) > at(b.high))
                    || (at(a.low) > at(b.low) && at(a.high) < at(b.high)))
        })
        .count()
}

/// Points along a piece of line.
fn along(c: &Curve) -> Vec<(f64, f64)> {
    let mut out: Vec<(f64, f64)> = c.foot.map(|y| (c.low.0, y)).into_iter().collect();
    let middle = (c.low.1 + c.high.1) / 2.0;
    for i in 0..=32 {
        let t = f64::from(i) / 32.0;
        let u = 1.0 - t;
        let cubic = |a: f64, b: f64, c: f64, d: f64| {
            a * u * u * u + 3.0 * b * u * u * t + 3.0 * c * u * t * t + d * t * t * t
        };
        out.push((
            cubic(c.low.0, c.low.0, c.high.0, c.high.0),
            cubic(c.low.1, middle, middle, c.high.1),
        ));
    }
    out
}

fn drawn(members: &[Member]) -> (Layered, Placed) {
    let layered = layers(members, Words::english());
    let order = improve(&layered);
    let placed = place(&layered, &order, members);
    (layered, placed)
}

fn solid(layered: &Layered) -> Vec<usize> {
    (0..layered.nodes.len())
        .filter(|n| layered.nodes[*n].kind != Kind::Point)
        .collect()
}

/// Left, right, upper and lower edge.
fn edges_of(placed: &Placed, node: usize) -> [f64; 4] {
    let s = &placed.spots[node];
    [s.x - s.half, s.x + s.half, s.top, s.top + s.high]
}

proptest! {
    #![proptest_config(dice::config(160))]

    #[test]
    fn crossings_are_at_most_those_of_plain_barycentre(members in chains(40)) {
        let layered = layers(&members, Words::english());
        let (plain, ours) = (barycentre(&layered), improve(&layered));
        prop_assert_eq!(crossings(&layered, &ours), crossed(&layered, &ours));
        prop_assert!(crossed(&layered, &ours) <= crossed(&layered, &plain));
        for (row, nodes) in ours.iter().enumerate() {
            let (a, b): (BTreeSet<_>, BTreeSet<_>) = (nodes.iter().collect(), layered.layers[row].iter().collect());
            prop_assert_eq!(a, b);
        }
    }

    #[test]
    fn boxes_keep_apart_and_within(members in chains(60)) {
        let (layered, placed) = drawn(&members);
        let solid = solid(&layered);
        for (i, a) in solid.iter().enumerate() {
            let [al, ar, at, ab] = edges_of(&placed, *a);
            prop_assert!(al >= 90.0 && ar <= placed.width && at >= 0.0 && ab <= placed.height);
            for b in &solid[..i] {
                let [bl, br, bt, bb] = edges_of(&placed, *b);
                prop_assert!(ar + 4.0 <= bl || br + 4.0 <= al || ab + 4.0 <= bt || bb + 4.0 <= at);
            }
        }
    }

    #[test]
    fn no_line_passes_through_a_box(members in chains(60)) {
        let (layered, placed) = drawn(&members);
        let boxes: Vec<[f64; 4]> = solid(&layered).iter().map(|n| edges_of(&placed, *n)).collect();
        for c in &placed.curves {
            let points = along(c);
            for [left, right, top, bottom] in &boxes {
                for pair in points.windows(2) {
                    let (x0, x1) = (pair[0].0.min(pair[1].0), pair[0].0.max(pair[1].0));
                    let (y0, y1) = (pair[0].1.min(pair[1].1), pair[0].1.max(pair[1].1));
                    let apart = x1 <= *left || x0 >= *right || y1 <= *top + 0.01 || y0 >= *bottom - 0.01;
                    prop_assert!(apart, "{:?} in {:?}", pair, [left, right, top, bottom]);
                }
            }
        }
    }

    /// What a movement needs is below it by lines alone: nothing is lost by leaving out what follows.
    #[test]
    fn every_need_is_tied_to_its_movement(members in chains(40)) {
        let layered = layers(&members, Words::english());
        let node = |i: usize| layered.nodes.iter().position(|n| n.kind == Kind::Movement(i)).expect("a box");
        let mut over: Vec<Vec<usize>> = vec![Vec::new(); layered.nodes.len()];
        for e in &layered.edges {
            prop_assert_eq!(layered.nodes[e.low].layer + 1, layered.nodes[e.high].layer);
            let (from, to) = if e.down { (e.high, e.low) } else { (e.low, e.high) };
            over[from].push(to);
        }
        for (i, member) in members.iter().enumerate() {
            for leaf in member.needs.leaves() {
                let mut met = vec![false; layered.nodes.len()];
                let mut open = vec![node(*leaf)];
                while let Some(at) = open.pop() {
                    if !std::mem::replace(&mut met[at], true) {
                        open.extend(&over[at]);
                    }
                }
                prop_assert!(met[node(i)] || *leaf == i, "{} to {}", leaf, i);
            }
        }
    }

    #[test]
    fn the_same_chain_is_the_same_bytes(members in chains(40)) {
        let one = svg(&members, "Map", Words::english());
        prop_assert_eq!(&one, &svg(&members, "Map", Words::english()));
        for word in ["style=", "NaN", "inf", "<lever>", " -0"] {
            prop_assert!(!one.contains(word), "{} in {}", word, one);
        }
        prop_assert_eq!(one.matches("<a href=").count(), members.len());
        prop_assert_eq!(one.matches("data-state-map=").count(), members.len());
        let marked = members.iter().filter(|m| m.mark.is_some()).count();
        prop_assert_eq!(one.matches("data-caution=").count(), marked);
        for number in one.split(|c: char| !(c.is_ascii_digit() || c == '.')) {
            prop_assert!(number.split_once('.').is_none_or(|(_, d)| d.len() <= 2), "{}", number);
        }
    }
}

fn member(id: &str, stage: u32, needs: Vec<Need<usize>>) -> Member {
    Member {
        id: id.into(),
        name: id.into(),
        stage,
        essential: true,
        mark: None,
        needs: Need::All(needs),
    }
}

#[test]
fn joints_say_the_choice_and_what_follows_is_left_out() {
    let leaf = Need::Leaf;
    let chain = [
        member("a", 0, vec![]),
        member("b", 0, vec![]),
        member("c", 1, vec![leaf(0), Need::Any(vec![leaf(1)])]),
        member(
            "d",
            2,
            vec![
                leaf(0),
                leaf(2),
                Need::Any(vec![leaf(1), Need::All(vec![leaf(0), leaf(2)]), leaf(4)]),
                Need::AtLeast(2, vec![leaf(0), leaf(1), leaf(2)]),
            ],
        ),
        member("e", 3, vec![leaf(3)]),
    ];
    let layered = layers(&chain, Words::english());
    let joints: Vec<&str> = layered
        .nodes
        .iter()
        .filter_map(|n| match &n.kind {
            Kind::Joint(says) => Some(says.as_str()),
            _ => None,
        })
        .collect();
    assert_eq!(joints, ["any one", "both", "2 of 3"]);
    let drawing = svg(&chain, "Map", Words::english());
    assert!(drawing.contains(">any one</text>") && drawing.contains(">2 of 3</text>"));
    assert!(
        drawing.contains("map-down"),
        "the higher alternative reads downwards"
    );
    // a is needed by d, but c needs it already: only the joints draw it again.
    let plain = [
        chain[0].clone(),
        member("b", 1, vec![leaf(0)]),
        member("c", 2, vec![leaf(0), leaf(1)]),
    ];
    assert_eq!(layers(&plain, Words::english()).edges.len(), 2);
}

#[test]
fn the_keyboard_goes_from_the_ground_up() {
    let chain = [
        member("a", 0, vec![]),
        member("b", 1, vec![Need::Leaf(0)]),
        member("c", 2, vec![Need::Leaf(1)]),
    ];
    let drawing = svg(&chain, "Map", Words::english());
    let at = |id: &str| {
        drawing
            .find(&format!("href=\"{id}.html\""))
            .expect("a link")
    };
    assert!(at("a") < at("b") && at("b") < at("c"));
    assert!(drawing.contains(">first rung</text>") && drawing.contains(">2 rungs up</text>"));
}

/// The page of a skill whose goal is the last of so many movements, each with its needs.
fn page(count: usize, needs: &dyn Fn(usize) -> String) -> String {
    let mut texts = vec![(
        "content/school.yaml".to_string(),
        "school: T\naddress: https://test.example/\nlanguage: en\nunits: metric\n".to_string(),
    )];
    for i in 0..count {
        texts.push((
            format!("content/movements/m{i:03}.yaml"),
            format!("movement: m{i:03}\nname: Move {i}\npattern: core\nposition: prone\nload: none\nequipment: []\nsummary: x\nstandard: 5 reps\nneeds: [{}]\n", needs(i)),
        ));
    }
    texts.push((
        "content/skills/goal.yaml".into(),
        format!("skill: goal\nname: G\ngoal: m{:03}\n", count - 1),
    ));
    let snapshot = Snapshot::of_texts(texts.iter().map(|(p, t)| (p.as_str(), t.as_str())));
    let built = site::build(&snapshot, &site::Options::default());
    let plan = built.renderer().expect("a site");
    let file = (0..plan.len())
        .map(|i| plan.render(i).expect("a file"))
        .find(|f| f.path == "goal.html")
        .expect("the skill's page");
    assert_eq!(built.audit(&file.path, &file.bytes), []);
    String::from_utf8(file.bytes).expect("text")
}

#[test]
fn a_large_chain_shows_what_is_essential_and_a_larger_one_no_map() {
    let boxes = |html: &str| html.matches("data-state-map=").count();
    let line = |i: usize| match i {
        0 => String::new(),
        i => format!("m{:03}", i - 1),
    };
    let small = page(20, &line);
    assert_eq!(boxes(&small), 20);
    // A line of ten at the foot, a choice between all of the others, and the goal.
    let wide = page(170, &|i| match i {
        0..10 => line(i),
        169 => {
            let all: Vec<String> = (10..169).map(|j| format!("m{j:03}")).collect();
            format!("{{ any of: [{}] }}", all.join(", "))
        }
        _ => "m009".into(),
    });
    assert_eq!(boxes(&wide), 11);
    assert!(wide.contains("shows its essential movements alone"));
    // Each step of the foot has a line of its own, which can be lit.
    assert_eq!(wide.matches("map-heavy").count(), 10);
    let tall = page(160, &line);
    assert_eq!(boxes(&tall), 0);
    assert!(tall.contains("too large for a map"));
}
