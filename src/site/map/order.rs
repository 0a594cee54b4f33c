//! The order of each row: sweeps that follow the middle of each node's neighbours, then exchanges of neighbours that help.
//! Never more crossings than the sweeps alone.

use super::layers::Layered;

/// Nodes of each row from the start side.
pub type Order = Vec<Vec<usize>>;

const SWEEPS: usize = 16;

/// For each node its neighbours in the row below and in the row above.
struct Near {
    below: Vec<Vec<usize>>,
    above: Vec<Vec<usize>>,
}

fn near(layered: &Layered) -> Near {
    let mut near = Near {
        below: vec![Vec::new(); layered.nodes.len()],
        above: vec![Vec::new(); layered.nodes.len()],
    };
    for edge in &layered.edges {
        near.above[edge.low].push(edge.high);
        near.below[edge.high].push(edge.low);
    }
    near
}

fn positions(layered: &Layered, order: &Order) -> Vec<usize> {
    let mut at = vec![0; layered.nodes.len()];
    for row in order {
        for (i, node) in row.iter().enumerate() {
            at[*node] = i;
        }
    }
    at
}

/// How many pairs of lines cross.
pub fn crossings(layered: &Layered, order: &Order) -> usize {
    let at = positions(layered, order);
    let mut between: Vec<Vec<(usize, usize)>> = vec![Vec::new(); order.len()];
    for edge in &layered.edges {
        between[layered.nodes[edge.low].layer].push((at[edge.low], at[edge.high]));
    }
    let mut count = 0;
    for lines in &mut between {
        lines.sort_unstable();
        for (i, (low, high)) in lines.iter().enumerate() {
            let later = lines[i + 1..].iter();
            count += later.filter(|(l, h)| l > low && h < high).count();
        }
    }
    count
}

/// The best order that plain barycentre sweeps find.
pub fn barycentre(layered: &Layered) -> Order {
    sweeps(layered, &near(layered), layered.layers.clone()).1
}

/// Sweeps from four starts, then exchanges of neighbours, again until nothing helps.
pub fn improve(layered: &Layered) -> Order {
    let near = near(layered);
    let mut best = sweeps(layered, &near, layered.layers.clone());
    let starts = [layered.layers.clone(), from_the_top(layered, &near)];
    let turned = starts.clone().map(|order| {
        let turn = |row: Vec<usize>| row.into_iter().rev().collect();
        order.into_iter().map(turn).collect::<Order>()
    });
    for start in starts.into_iter().chain(turned) {
        let mut order = sweeps(layered, &near, start).1;
        for round in 0..4 {
            exchange(layered, &near, &mut order);
            let count = crossings(layered, &order);
            if count < best.0 {
                best = (count, order.clone());
            }
            if best.0 == 0 {
                return best.1;
            }
            sweep(layered, &near, &mut order, round % 2 == 0);
        }
    }
    let mut last = best.1.clone();
    exchange(layered, &near, &mut last);
    match crossings(layered, &last) < best.0 {
        true => last,
        false => best.1,
    }
}

fn sweeps(layered: &Layered, near: &Near, start: Order) -> (usize, Order) {
    let mut order = start;
    let mut best = (crossings(layered, &order), order.clone());
    let mut there_and_back = order.clone();
    for i in 0..SWEEPS {
        sweep(layered, near, &mut order, i % 2 == 0);
        let count = crossings(layered, &order);
        if count < best.0 {
            best = (count, order.clone());
        }
        if i % 2 == 1 {
            // What is the same after a sweep there and back stays so.
            if order == there_and_back {
                break;
            }
            there_and_back.clone_from(&order);
        }
    }
    best
}

/// One sweep: each row by the middle of what it is tied to in the row before; what is tied to nothing keeps its place.
fn sweep(layered: &Layered, near: &Near, order: &mut Order, upwards: bool) {
    let mut at = positions(layered, order);
    let rows: Vec<usize> = if upwards {
        (1..order.len()).collect()
    } else {
        (0..order.len().saturating_sub(1)).rev().collect()
    };
    for row in rows {
        let ties = if upwards { &near.below } else { &near.above };
        let middle = |node: usize| match ties[node].len() {
            0 => at[node] as f64,
            n => ties[node].iter().map(|t| at[*t]).sum::<usize>() as f64 / n as f64,
        };
        let mut keyed: Vec<(f64, usize)> = order[row].iter().map(|n| (middle(*n), *n)).collect();
        keyed.sort_by(|a, b| a.0.total_cmp(&b.0));
        order[row] = keyed.into_iter().map(|k| k.1).collect();
        for (i, node) in order[row].iter().enumerate() {
            at[*node] = i;
        }
    }
}

/// Exchanges of neighbours in a row as long as that saves a crossing.
fn exchange(layered: &Layered, near: &Near, order: &mut Order) {
    let mut at = positions(layered, order);
    for _ in 0..SWEEPS {
        let mut better = false;
        for row in order.iter_mut() {
            for i in 1..row.len() {
                let (left, right) = (row[i - 1], row[i]);
                let cost = |a: usize, b: usize| {
                    crossed(&near.below[a], &near.below[b], &at)
                        + crossed(&near.above[a], &near.above[b], &at)
                };
                if cost(right, left) < cost(left, right) {
                    row.swap(i - 1, i);
                    (at[right], at[left]) = (i - 1, i);
                    better = true;
                }
            }
        }
        if !better {
            return;
        }
    }
}

/// Crossings between the lines of a node and those of its neighbour further on.
fn crossed(left: &[usize], right: &[usize], at: &[usize]) -> usize {
    left.iter()
        .map(|l| right.iter().filter(|r| at[**r] < at[*l]).count())
        .sum()
}

/// Rows in the order in which a walk from the top meets their nodes.
fn from_the_top(layered: &Layered, near: &Near) -> Order {
    let mut order: Order = vec![Vec::new(); layered.layers.len()];
    let mut met = vec![false; layered.nodes.len()];
    let starts = layered.layers.iter().rev().flatten();
    for start in starts {
        let mut open = vec![*start];
        while let Some(node) = open.pop() {
            if std::mem::replace(&mut met[node], true) {
                continue;
            }
            order[layered.nodes[node].layer].push(node);
            open.extend(near.below[node].iter().rev());
        }
    }
    order
}
