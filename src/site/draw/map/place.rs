//! Coordinates: each row as near to what it is tied to as its order and its room allow; then heights, and curves between rows.
//!
//! One unit is one pixel at scale 1. A curve stays between two rows, and a point has its own room in its row, so that no line
//! passes through a box.

use super::Member;
use super::layers::{Kind, Layered};
use super::order::Order;

/// Room for the words at the plumb line.
pub const GUTTER: f64 = 108.0;
pub const MARGIN: f64 = 8.0;
pub const LINE: f64 = 15.0;
/// Half the width of a movement's box.
const HALF: f64 = 66.0;
/// Above the first line of a name; below the last, for the state and the mark.
pub const HEAD: f64 = 5.0;
pub const FOOT: f64 = 22.0;
const JOINT: f64 = 20.0;
/// Lines arrive so far from a box's corner, and so far from each other.
const PORT_EDGE: f64 = 12.0;
const PORT_STEP: f64 = 14.0;
/// Room for a line of a name, in tenths of a pixel, and lines.
const ROOM: usize = 1180;
const LINES: usize = 3;
const ROUNDS: usize = 32;
const EARLY: usize = 6;
/// How much more a trunk insists than a box.
const STRAIGHT: f64 = 3.0;

/// Where a node stands: its middle from the start side, its upper edge, half its width, its height.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spot {
    pub x: f64,
    pub top: f64,
    pub half: f64,
    pub high: f64,
}

/// A piece of line from a row up to the next; `foot` is where it enters the lower row when it only passes there, or the upper
/// edge of a box that is lower than its row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curve {
    pub foot: Option<f64>,
    pub low: (f64, f64),
    pub high: (f64, f64),
    pub heavy: bool,
    pub down: bool,
    /// The lower end of a line that reads downwards.
    pub arrives: bool,
}

#[derive(Clone, Debug)]
pub struct Placed {
    /// By node.
    pub spots: Vec<Spot>,
    pub curves: Vec<Curve>,
    /// Each stage and the height at which its movements stand.
    pub rungs: Vec<(u32, f64)>,
    /// Nodes from the ground up, each row from the start side.
    pub order: Order,
    /// The lines of each member's name.
    pub names: Vec<Vec<String>>,
    pub width: f64,
    pub height: f64,
}

/// Places the nodes of ordered rows.
pub fn place(layered: &Layered, order: &Order, members: &[Member]) -> Placed {
    let names: Vec<Vec<String>> = members.iter().map(|m| wrap(&m.name)).collect();
    let mut spots: Vec<Spot> = layered
        .nodes
        .iter()
        .map(|node| Spot {
            half: half(&node.kind),
            ..Spot::default()
        })
        .collect();
    let room = across(layered, order, &mut spots);
    let heights: Vec<f64> = order
        .iter()
        .map(|row| {
            let high = |n: &usize| match &layered.nodes[*n].kind {
                Kind::Movement(i) => tall(&names[*i]),
                Kind::Joint(_) => JOINT,
                Kind::Point => 0.0,
            };
            row.iter().map(high).fold(0.0, f64::max)
        })
        .collect();
    // From the ground up, then turned over.
    let mut base = vec![0.0; order.len()];
    for row in 1..order.len() {
        base[row] = base[row - 1] + heights[row - 1] + channel(layered, &spots, row - 1);
    }
    let top = base.last().copied().unwrap_or(0.0) + heights.last().copied().unwrap_or(0.0);
    let height = top + 2.0 * MARGIN + 2.0;
    // Boxes stand on the foot of their row.
    for (node, spot) in spots.iter_mut().enumerate() {
        let row = layered.nodes[node].layer;
        spot.high = match &layered.nodes[node].kind {
            Kind::Movement(i) => tall(&names[*i]),
            _ => heights[row],
        };
        spot.top = MARGIN + top - base[row] - spot.high;
        spot.x += GUTTER;
    }
    let tops: Vec<f64> = (0..order.len())
        .map(|row| MARGIN + top - base[row] - heights[row])
        .collect();
    let rungs = layered
        .stages
        .iter()
        .map(|(stage, row)| (*stage, MARGIN + top - base[*row]))
        .collect();
    Placed {
        curves: curves(layered, &spots, &tops),
        spots,
        rungs,
        order: order.clone(),
        names,
        width: GUTTER + room + MARGIN,
        height,
    }
}

/// The height of a movement's box.
fn tall(name: &[String]) -> f64 {
    HEAD + FOOT + LINE * name.len() as f64
}

fn half(kind: &Kind) -> f64 {
    match kind {
        Kind::Movement(_) => HALF,
        Kind::Joint(says) => 10.0 + (says.chars().count() as f64 * 3.0).round(),
        Kind::Point => 2.0,
    }
}

/// The distance that two neighbours keep between their middles.
fn apart(left: &Spot, right: &Spot) -> f64 {
    let gap = if left.half.max(right.half) < 3.0 {
        5.0
    } else {
        12.0
    };
    left.half + right.half + gap
}

/// Middles of all nodes, and the room of the widest row, which all keep to.
fn across(layered: &Layered, order: &Order, spots: &mut [Spot]) -> f64 {
    let offsets: Vec<Vec<f64>> = order
        .iter()
        .map(|row| {
            let mut at = row.first().map_or(0.0, |n| spots[*n].half);
            let mut out = Vec::with_capacity(row.len());
            for (i, node) in row.iter().enumerate() {
                if i > 0 {
                    at += apart(&spots[row[i - 1]], &spots[*node]);
                }
                out.push(at);
            }
            out
        })
        .collect();
    let full: Vec<f64> = order
        .iter()
        .zip(&offsets)
        .map(|(row, offsets)| {
            let last = row.last().map_or(0.0, |n| spots[*n].half);
            offsets.last().copied().unwrap_or(0.0) + last
        })
        .collect();
    let room = full.iter().copied().fold(0.0, f64::max);
    for (row, nodes) in order.iter().enumerate() {
        let shift = ((room - full[row]) / 2.0).floor();
        for (i, node) in nodes.iter().enumerate() {
            spots[*node].x = offsets[row][i] + shift;
        }
    }
    let rows = Rows {
        order,
        offsets: &offsets,
        slack: full.iter().map(|full| room - full).collect(),
    };
    rows.drawn_together(layered, spots);
    room
}

/// The rows of a map while their nodes move: the least distance of each node from its row's first, and the room that is left.
struct Rows<'a> {
    order: &'a Order,
    offsets: &'a [Vec<f64>],
    slack: Vec<f64>,
}

impl Rows<'_> {
    /// Moves every row to what it is tied to, until nothing moves.
    fn drawn_together(&self, layered: &Layered, spots: &mut [Spot]) {
        let ties = ties(layered);
        let is_point = |n: usize| layered.nodes[n].kind == Kind::Point;
        // Rounds in a row that moved nothing; one upwards and one downwards, and nothing ever will.
        let mut still = 0;
        for round in 0..ROUNDS {
            let mut moved = false;
            for step in 0..self.order.len() {
                let up = round % 2 == 0;
                let row = if up {
                    step
                } else {
                    self.order.len() - 1 - step
                };
                // At first each row follows the one before it, later both.
                let counts = |node: usize, other: usize| {
                    let layer = layered.nodes[other].layer;
                    let before = if up { layer < row } else { layer > row };
                    is_point(node) || round >= EARLY || before
                };
                moved |= self.follow(row, &ties, &counts, spots);
            }
            still = if moved || round < EARLY { 0 } else { still + 1 };
            if still == 2 {
                break;
            }
        }
    }

    /// Moves one row to the ties that count; whether a node moved.
    fn follow(
        &self,
        row: usize,
        ties: &[Vec<(usize, f64)>],
        counts: &impl Fn(usize, usize) -> bool,
        spots: &mut [Spot],
    ) -> bool {
        let nodes = || self.order[row].iter().zip(&self.offsets[row]);
        let wanted = |(node, offset): (&usize, &f64)| {
            let near = ties[*node].iter().filter(|t| counts(*node, t.0));
            let (sum, weight) = near.fold((0.0, 0.0), |(sum, weight), (other, pull)| {
                (sum + spots[*other].x * pull, weight + pull)
            });
            match weight > 0.0 {
                true => (sum / weight - offset, weight),
                false => (spots[*node].x - offset, 0.1),
            }
        };
        let wanted: Vec<(f64, f64)> = nodes().map(wanted).collect();
        let mut moved = false;
        for ((node, offset), shift) in nodes().zip(rising(&wanted)) {
            let x = offset + shift.clamp(0.0, self.slack[row]).round();
            moved |= x != spots[*node].x;
            spots[*node].x = x;
        }
        moved
    }
}

/// What each node wants to be near to, and how much. All points of a trunk want to be near to all its ends, and more so to each
/// other: it stands straight where there is room, and where there is none it bends once.
fn ties(layered: &Layered) -> Vec<Vec<(usize, f64)>> {
    let count = layered.nodes.len();
    let is_point = |n: usize| layered.nodes[n].kind == Kind::Point;
    let mut near: Vec<Vec<usize>> = vec![Vec::new(); count];
    for edge in &layered.edges {
        near[edge.low].push(edge.high);
        near[edge.high].push(edge.low);
    }
    let mut ties: Vec<Vec<(usize, f64)>> = (0..count)
        .map(|n| near[n].iter().map(|other| (*other, 1.0)).collect())
        .collect();
    let mut done = vec![false; count];
    for start in (0..count).filter(|n| is_point(*n)) {
        let (mut trunk, mut ends, mut open) = (Vec::new(), Vec::new(), vec![start]);
        while let Some(node) = open.pop() {
            if !is_point(node) {
                ends.push(node);
            } else if !std::mem::replace(&mut done[node], true) {
                trunk.push(node);
                open.extend(&near[node]);
            }
        }
        let share = STRAIGHT / ends.len().max(1) as f64;
        for node in trunk {
            let beside = near[node].iter().filter(|n| is_point(**n));
            let beside = beside.map(|n| (*n, 2.0 * STRAIGHT));
            ties[node] = beside.chain(ends.iter().map(|n| (*n, share))).collect();
        }
    }
    ties
}

/// The rising sequence that is nearest to what is wanted, by weighted squares: neighbours that would fall are pooled.
fn rising(wanted: &[(f64, f64)]) -> Vec<f64> {
    let mut pools: Vec<(f64, f64, usize)> = Vec::new();
    for (value, weight) in wanted {
        pools.push((*value, *weight, 1));
        while let [.., a, b] = pools.as_slice() {
            if a.0 <= b.0 {
                break;
            }
            let weight = a.1 + b.1;
            let pool = ((a.0 * a.1 + b.0 * b.1) / weight, weight, a.2 + b.2);
            pools.truncate(pools.len() - 2);
            pools.push(pool);
        }
    }
    pools
        .iter()
        .flat_map(|(value, _, count)| std::iter::repeat_n(*value, *count))
        .collect()
}

/// The height between a row and the next: the more, the farther its lines lead aside.
fn channel(layered: &Layered, spots: &[Spot], row: usize) -> f64 {
    let aside = layered
        .edges
        .iter()
        .filter(|e| layered.nodes[e.low].layer == row)
        .map(|e| (spots[e.low].x - spots[e.high].x).abs())
        .fold(0.0, f64::max);
    (26.0 + aside * 0.08).min(72.0).round()
}

fn curves(layered: &Layered, spots: &[Spot], tops: &[f64]) -> Vec<Curve> {
    let mut under: Vec<Vec<usize>> = vec![Vec::new(); layered.nodes.len()];
    for (i, edge) in layered.edges.iter().enumerate() {
        under[edge.high].push(i);
    }
    let mut port = vec![0.0; layered.edges.len()];
    for (node, edges) in under.iter_mut().enumerate() {
        edges.sort_by(|a, b| {
            let x = |e: &usize| spots[layered.edges[*e].low].x;
            x(a).total_cmp(&x(b)).then(a.cmp(b))
        });
        // As near below its line as the box is wide, a step from the next.
        let widest = (2.0 * (spots[node].half - PORT_EDGE)).max(0.0);
        let steps = edges.len().saturating_sub(1);
        let step = (widest / steps.max(1) as f64).min(PORT_STEP);
        let from = spots[node].x - widest / 2.0;
        let wanted: Vec<(f64, f64)> = edges
            .iter()
            .enumerate()
            .map(|(i, e)| (spots[layered.edges[*e].low].x - from - i as f64 * step, 1.0))
            .collect();
        let slack = widest - steps as f64 * step;
        for (i, (edge, shift)) in edges.iter().zip(rising(&wanted)).enumerate() {
            port[*edge] = from + i as f64 * step + shift.clamp(0.0, slack.max(0.0));
        }
    }
    layered
        .edges
        .iter()
        .enumerate()
        .map(|(i, edge)| {
            let (low, high) = (&spots[edge.low], &spots[edge.high]);
            let passes = layered.nodes[edge.low].kind == Kind::Point;
            let arrives = edge.down && !passes;
            let aside = if arrives { low.half - 8.0 } else { 0.0 };
            let top = tops[layered.nodes[edge.low].layer];
            let foot = if passes { low.top + low.high } else { low.top };
            Curve {
                foot: (foot > top).then_some(foot),
                low: (low.x + aside, top),
                high: (port[i], high.top + high.high),
                heavy: edge.heavy,
                down: edge.down,
                arrives,
            }
        })
        .collect()
}

/// A name on at most three lines; what does not fit ends in an ellipsis.
fn wrap(name: &str) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in name.split_whitespace() {
        let mut rest: Vec<char> = word.chars().collect();
        if !line.is_empty() && width(&line) + letter(' ') + width(word) > ROOM {
            lines.push(std::mem::take(&mut line));
        }
        if !line.is_empty() {
            line.push(' ');
        }
        while rest.iter().map(|c| letter(*c)).sum::<usize>() > ROOM {
            // After a hyphen of the word's own, or else with one more.
            let mut room = ROOM - letter('-');
            let fits = |c: &&char| {
                let fits = letter(**c) <= room;
                room = room.saturating_sub(letter(**c));
                fits
            };
            let most = rest.iter().take_while(fits).count().max(1);
            let own = rest[..most].iter().rposition(|c| *c == '-');
            let cut = own.map_or(most, |at| at + 1);
            line.extend(rest.drain(..cut));
            if own.is_none() {
                line.push('-');
            }
            lines.push(std::mem::take(&mut line));
        }
        line.extend(rest);
    }
    lines.push(line);
    if lines.len() > LINES {
        lines.truncate(LINES);
        if let Some(last) = lines.last_mut() {
            while width(last) + letter('…') > ROOM {
                last.pop();
            }
            last.push('…');
        }
    }
    lines
}

/// The room that a letter takes in a wide type of 12 pixels, in tenths of a pixel.
fn letter(c: char) -> usize {
    match c {
        'i' | 'j' | 'l' | '.' | ',' | '\'' | '|' | ':' | ' ' => 38,
        'f' | 't' | 'r' | '-' | '(' | ')' => 49,
        'm' | 'w' | 'M' | 'W' | '…' | '%' => 118,
        'a'..='z' | '0'..='9' => 76,
        c if c < '\u{1100}' => 88,
        _ => 125,
    }
}

fn width(text: &str) -> usize {
    text.chars().map(letter).sum()
}
