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

/// How many pairs of lines cross.
pub fn crossings(layered: &Layered, order: &Order) -> usize {
    Board::new(layered).crossings(order)
}

/// The best order that plain barycentre sweeps find.
pub fn barycentre(layered: &Layered) -> Order {
    Board::new(layered).sweeps(layered.layers.clone()).1
}

/// Sweeps from four starts, then exchanges of neighbours, again until nothing helps.
pub fn improve(layered: &Layered) -> Order {
    let mut board = Board::new(layered);
    let starts = [layered.layers.clone(), board.walk_from_the_top()];
    let turned = starts.clone().map(|order| {
        let turn = |row: Vec<usize>| row.into_iter().rev().collect();
        order.into_iter().map(turn).collect::<Order>()
    });
    let mut best: Option<(usize, Order)> = None;
    for start in starts.into_iter().chain(turned) {
        let swept = board.sweeps(start);
        let mut order = swept.1.clone();
        // The first start is the one of the sweeps alone.
        let mut now = best.unwrap_or(swept);
        for round in 0..4 {
            board.exchange(&mut order);
            let count = board.crossings(&order);
            if count < now.0 {
                now = (count, order.clone());
            }
            if now.0 == 0 {
                return now.1;
            }
            board.sweep(&mut order, round % 2 == 0);
        }
        best = Some(now);
    }
    let best = best.unwrap_or_default();
    let mut last = best.1.clone();
    board.exchange(&mut last);
    match board.crossings(&last) < best.0 {
        true => last,
        false => best.1,
    }
}

/// Where orders are tried out.
struct Board<'l> {
    layered: &'l Layered,
    near: Near,
    /// Of each node, its place in its row.
    at: Vec<usize>,
    /// Where the lines of a row end above.
    ends: Vec<usize>,
    /// A row by what it is tied to.
    keyed: Vec<(f64, usize)>,
}

impl<'l> Board<'l> {
    fn new(layered: &'l Layered) -> Board<'l> {
        Board {
            layered,
            near: near(layered),
            at: vec![0; layered.nodes.len()],
            ends: Vec::new(),
            keyed: Vec::new(),
        }
    }

    fn lay(&mut self, order: &Order) {
        for row in order {
            for (i, node) in row.iter().enumerate() {
                self.at[*node] = i;
            }
        }
    }

    /// Lines from left to right by their lower end, then their upper end; each is moved past those that it crosses.
    fn crossings(&mut self, order: &Order) -> usize {
        self.lay(order);
        let mut count = 0;
        for row in order {
            self.ends.clear();
            for node in row {
                let first = self.ends.len();
                self.ends
                    .extend(self.near.above[*node].iter().map(|up| self.at[*up]));
                self.ends[first..].sort_unstable();
            }
            for i in 1..self.ends.len() {
                let end = self.ends[i];
                let mut to = i;
                while to > 0 && self.ends[to - 1] > end {
                    self.ends[to] = self.ends[to - 1];
                    to -= 1;
                }
                self.ends[to] = end;
                count += i - to;
            }
        }
        count
    }

    fn sweeps(&mut self, start: Order) -> (usize, Order) {
        let mut order = start;
        let mut best = (self.crossings(&order), order.clone());
        let mut there_and_back = order.clone();
        for i in 0..SWEEPS {
            if best.0 == 0 {
                break;
            }
            self.sweep(&mut order, i % 2 == 0);
            let count = self.crossings(&order);
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
    fn sweep(&mut self, order: &mut Order, upwards: bool) {
        self.lay(order);
        let count = order.len();
        for step in 1..count {
            let (row, ties) = match upwards {
                true => (step, &self.near.below),
                false => (count - 1 - step, &self.near.above),
            };
            self.keyed.clear();
            for node in &order[row] {
                let middle = match ties[*node].len() {
                    0 => self.at[*node] as f64,
                    n => ties[*node].iter().map(|t| self.at[*t]).sum::<usize>() as f64 / n as f64,
                };
                self.keyed.push((middle, *node));
            }
            self.keyed.sort_by(|a, b| a.0.total_cmp(&b.0));
            for (i, (_, node)) in self.keyed.iter().enumerate() {
                order[row][i] = *node;
                self.at[*node] = i;
            }
        }
    }

    /// Exchanges of neighbours in a row as long as that saves a crossing.
    fn exchange(&mut self, order: &mut Order) {
        self.lay(order);
        for _ in 0..SWEEPS {
            let mut better = false;
            for row in order.iter_mut() {
                for i in 1..row.len() {
                    let (left, right) = (row[i - 1], row[i]);
                    let below = self.crossed(&self.near.below[left], &self.near.below[right]);
                    let above = self.crossed(&self.near.above[left], &self.near.above[right]);
                    if below.1 + above.1 < below.0 + above.0 {
                        row.swap(i - 1, i);
                        (self.at[right], self.at[left]) = (i - 1, i);
                        better = true;
                    }
                }
            }
            if !better {
                return;
            }
        }
    }

    /// Crossings between the lines of a node and those of its neighbour further on, as they stand, and exchanged.
    fn crossed(&self, left: &[usize], right: &[usize]) -> (usize, usize) {
        let (mut as_they_stand, mut exchanged) = (0, 0);
        for l in left {
            for r in right {
                as_they_stand += usize::from(self.at[*r] < self.at[*l]);
                exchanged += usize::from(self.at[*l] < self.at[*r]);
            }
        }
        (as_they_stand, exchanged)
    }

    /// Rows in the order in which a walk from the top meets their nodes.
    fn walk_from_the_top(&self) -> Order {
        let mut order: Order = vec![Vec::new(); self.layered.layers.len()];
        let mut met = vec![false; self.layered.nodes.len()];
        let starts = self.layered.layers.iter().rev().flatten();
        for start in starts {
            let mut open = vec![*start];
            while let Some(node) = open.pop() {
                if std::mem::replace(&mut met[node], true) {
                    continue;
                }
                order[self.layered.nodes[node].layer].push(node);
                open.extend(self.near.below[node].iter().rev());
            }
        }
        order
    }
}
