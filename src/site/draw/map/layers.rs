//! Rows from the ground up: movements by stage, joints between, and points by which long lines pass a row.

use super::Member;
use crate::curriculum::Need;
use crate::words::Words;
use std::collections::{BTreeMap, BTreeSet};

/// At most so many movements stand beside each other; a stage of more has several rows.
pub const WIDEST: usize = 6;

/// What stands in a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A movement, by its position among the members.
    Movement(usize),
    /// A choice, in words.
    Joint(String),
    /// Where a line passes.
    Point,
}

#[derive(Clone, Debug)]
pub struct Node {
    pub kind: Kind,
    /// The row, from the ground up.
    pub layer: usize,
}

/// A piece of a line, between a row and the next above.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Edge {
    pub low: usize,
    pub high: usize,
    /// Part of the essential path.
    pub heavy: bool,
    /// Read downwards: an alternative that itself stands higher than what it opens.
    pub down: bool,
}

#[derive(Clone, Debug, Default)]
pub struct Layered {
    pub nodes: Vec<Node>,
    /// Nodes of each row, in the order made.
    pub layers: Vec<Vec<usize>>,
    pub edges: Vec<Edge>,
    /// The first row of each stage.
    pub stages: Vec<(u32, usize)>,
}

impl Layered {
    fn add(&mut self, kind: Kind, layer: usize) -> usize {
        self.nodes.push(Node { kind, layer });
        self.layers[layer].push(self.nodes.len() - 1);
        self.nodes.len() - 1
    }
}

/// Rows, joints and lines of a list of members, ordered by stage.
pub fn layers(members: &[Member], words: &Words) -> Layered {
    let needs: Vec<Vec<Need<usize>>> = members
        .iter()
        .enumerate()
        .map(|(i, m)| requirements(&m.needs, i))
        .collect();
    let plain = reduced(members, &needs);
    let mut out = Layered::default();
    let mut boxes = vec![0; members.len()];
    for (stage, rows) in rows(members, &needs) {
        let mut first = None;
        for row in rows {
            let joints = row.iter().flat_map(|i| &needs[*i]).map(height).max();
            for _ in 0..joints.unwrap_or(0) {
                out.layers.push(Vec::new());
            }
            out.layers.push(Vec::new());
            let layer = out.layers.len() - 1;
            first.get_or_insert(layer);
            for i in row {
                boxes[i] = out.add(Kind::Movement(i), layer);
            }
        }
        out.stages.extend(first.map(|layer| (stage, layer)));
    }
    let mut lines: BTreeMap<usize, BTreeMap<usize, bool>> = BTreeMap::new();
    for (i, member) in members.iter().enumerate() {
        for from in &plain[i] {
            let line = lines.entry(boxes[*from]).or_default();
            line.insert(boxes[i], member.essential);
        }
        for need in needs[i].iter().filter(|n| !matches!(n, Need::Leaf(_))) {
            joint(
                &mut out,
                &mut lines,
                &boxes,
                need,
                boxes[i],
                member.essential,
                words,
            );
        }
    }
    for (from, to) in lines {
        trunk(&mut out, from, &to, false);
        trunk(&mut out, from, &to, true);
    }
    out
}

/// A joint below its movement or below another joint, with the lines of its parts.
fn joint(
    out: &mut Layered,
    lines: &mut BTreeMap<usize, BTreeMap<usize, bool>>,
    boxes: &[usize],
    need: &Need<usize>,
    above: usize,
    heavy: bool,
    words: &Words,
) {
    let (says, parts) = match need {
        Need::Leaf(i) => {
            lines.entry(boxes[*i]).or_default().insert(above, heavy);
            return;
        }
        Need::All(parts) if parts.len() == 2 => (words.say("need.joint_both").to_string(), parts),
        Need::All(parts) => (
            words.fill("need.joint_all", &[("n", parts.len().into())]),
            parts,
        ),
        Need::Any(parts) => (words.say("need.joint_any").to_string(), parts),
        Need::AtLeast(k, parts) => (
            words.fill(
                "need.joint_at_least",
                &[("k", (*k).into()), ("all", parts.len().into())],
            ),
            parts,
        ),
    };
    let node = out.add(Kind::Joint(says), out.nodes[above].layer - 1);
    lines.entry(node).or_default().insert(above, heavy);
    for part in parts {
        joint(out, lines, boxes, part, node, false, words);
    }
}

/// The lines that leave a node upwards (or downwards) share one trunk, from which they branch at the last row.
fn trunk(out: &mut Layered, from: usize, to: &BTreeMap<usize, bool>, down: bool) {
    let start = out.nodes[from].layer;
    let away = |layer: usize| {
        if down {
            start.saturating_sub(layer)
        } else {
            layer.saturating_sub(start)
        }
    };
    let targets: Vec<(usize, usize, bool)> = to
        .iter()
        .map(|(node, heavy)| (away(out.nodes[*node].layer), *node, *heavy))
        .filter(|(rows, ..)| *rows > 0)
        .collect();
    let farthest = targets.iter().map(|t| t.0).max().unwrap_or(0);
    let mut at = from;
    for rows in 1..=farthest {
        let mut link = |next: usize, heavy: bool| {
            let (low, high) = if down { (next, at) } else { (at, next) };
            out.edges.push(Edge {
                low,
                high,
                heavy,
                down,
            });
        };
        for (_, node, heavy) in targets.iter().filter(|t| t.0 == rows) {
            link(*node, *heavy);
        }
        if rows < farthest {
            let heavy = targets.iter().any(|t| t.0 > rows && t.2);
            let next = out.nodes.len();
            link(next, heavy);
            let layer = if down { start - rows } else { start + rows };
            at = out.add(Kind::Point, layer);
        }
    }
}

/// The parts that must all be met, without groups that say nothing.
fn requirements(need: &Need<usize>, of: usize) -> Vec<Need<usize>> {
    match simple(need, of) {
        Some(Need::All(parts)) => parts,
        Some(one) => vec![one],
        None => Vec::new(),
    }
}

/// A tree without groups of one, groups in groups of the same kind, repeated parts, and parts that can never be met.
fn simple(need: &Need<usize>, of: usize) -> Option<Need<usize>> {
    let parts = |parts: &[Need<usize>]| -> Vec<Need<usize>> {
        parts.iter().filter_map(|p| simple(p, of)).collect()
    };
    let (mut kept, any) = match need {
        Need::Leaf(i) => return (*i != of).then_some(Need::Leaf(*i)),
        Need::All(p) => (parts(p), false),
        Need::Any(p) => (parts(p), true),
        Need::AtLeast(k, p) => {
            let kept = parts(p);
            match *k as usize {
                0 | 1 => (kept, true),
                k if k >= kept.len() => (kept, false),
                _ => return Some(Need::AtLeast(*k, kept)),
            }
        }
    };
    let mut flat: Vec<Need<usize>> = Vec::new();
    for part in kept.drain(..) {
        let inner = match part {
            Need::All(inner) if !any => inner,
            Need::Any(inner) if any => inner,
            other => vec![other],
        };
        for one in inner {
            if !flat.contains(&one) {
                flat.push(one);
            }
        }
    }
    match (flat.len(), any) {
        (0, _) => None,
        (1, _) => flat.pop(),
        (_, true) => Some(Need::Any(flat)),
        (_, false) => Some(Need::All(flat)),
    }
}

/// How many joints stand over each other in a tree.
fn height(need: &Need<usize>) -> usize {
    match need {
        Need::Leaf(_) => 0,
        Need::All(p) | Need::Any(p) | Need::AtLeast(_, p) => {
            1 + p.iter().map(height).max().unwrap_or(0)
        }
    }
}

/// For each member what it needs without a choice, less what follows from another of these by a longer path.
fn reduced(members: &[Member], needs: &[Vec<Need<usize>>]) -> Vec<BTreeSet<usize>> {
    let direct: Vec<BTreeSet<usize>> = needs
        .iter()
        .map(|parts| {
            let leaf = |n: &Need<usize>| match n {
                Need::Leaf(i) => Some(*i),
                _ => None,
            };
            parts.iter().filter_map(leaf).collect()
        })
        .collect();
    // Ordered by stage, and a need without a choice stands lower.
    let mut below: Vec<BTreeSet<usize>> = Vec::with_capacity(members.len());
    for (i, of) in direct.iter().enumerate() {
        let mut all = BTreeSet::new();
        for j in of.iter().filter(|j| **j < i) {
            all.insert(*j);
            all.extend(&below[*j]);
        }
        below.push(all);
    }
    direct
        .iter()
        .enumerate()
        .map(|(i, of)| {
            let follows = |a: &usize| {
                let mut others = of.iter().filter(|b| *b != a && **b < i);
                others.any(|b| below[*b].contains(a))
            };
            of.iter().copied().filter(|a| !follows(a)).collect()
        })
        .collect()
}

/// The members of each stage in rows: those from which much rises stand above those on which little rests.
fn rows(members: &[Member], needs: &[Vec<Need<usize>>]) -> Vec<(u32, Vec<Vec<usize>>)> {
    let mut rises = vec![0_i64; members.len()];
    for (i, parts) in needs.iter().enumerate() {
        for part in parts {
            part.visit(&mut |leaf: &usize| {
                rises[*leaf] += 1;
                rises[i] -= 1;
            });
        }
    }
    let mut stages: BTreeMap<u32, Vec<usize>> = BTreeMap::new();
    for (i, member) in members.iter().enumerate() {
        stages.entry(member.stage).or_default().push(i);
    }
    stages
        .into_iter()
        .map(|(stage, mut of)| {
            let rows = of.len().div_ceil(WIDEST);
            if rows > 1 {
                of.sort_by_key(|i| (rises[*i], *i));
            }
            let each = of.len().div_ceil(rows);
            (stage, of.chunks(each).map(<[usize]>::to_vec).collect())
        })
        .collect()
}
