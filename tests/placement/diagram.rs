//! How many placements a skill has, counted exactly by a binary decision diagram.
//!
//! A placement says of each movement of a chain whether it is owned, open, or neither. It is possible where some consistent
//! client stands so: one who meets a demand only with the movement's needs met and with every demand that it implies.

use rungbook::chain::Flat;
use rungbook::chain::flat::{ALL, ANY};
use rungbook::curriculum::MovementIx;
use std::collections::HashMap;

/// Where a movement stands, as far as a placement tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    Owned,
    Open,
    Neither,
}

const NO: u32 = 0;
const YES: u32 = 1;

/// Nodes in the order of their variables, each only once: equal questions are equal numbers.
struct Diagram {
    /// The variable, then the node where it is false and where it is true.
    nodes: Vec<(u32, u32, u32)>,
    known: HashMap<(u32, u32, u32), u32>,
    chosen: HashMap<(u32, u32, u32), u32>,
    most: usize,
}

/// Every step gives `None` once the diagram is larger than it may be.
impl Diagram {
    fn new(most: usize) -> Diagram {
        Diagram {
            nodes: vec![(u32::MAX, NO, NO), (u32::MAX, YES, YES)],
            known: HashMap::new(),
            chosen: HashMap::new(),
            most,
        }
    }

    fn node(&mut self, of: u32, no: u32, yes: u32) -> Option<u32> {
        if no == yes {
            return Some(no);
        }
        if let Some(node) = self.known.get(&(of, no, yes)) {
            return Some(*node);
        }
        if self.nodes.len() >= self.most {
            return None;
        }
        self.nodes.push((of, no, yes));
        let node = self.nodes.len() as u32 - 1;
        self.known.insert((of, no, yes), node);
        Some(node)
    }

    fn variable(&mut self, of: u32) -> Option<u32> {
        self.node(of, NO, YES)
    }

    fn halves(&self, node: u32, of: u32) -> (u32, u32) {
        match self.nodes[node as usize] {
            (variable, no, yes) if variable == of => (no, yes),
            _ => (node, node),
        }
    }

    /// `yes` where `asked` holds, else `no`.
    fn choose(&mut self, asked: u32, yes: u32, no: u32) -> Option<u32> {
        match (asked, yes, no) {
            (YES, ..) => return Some(yes),
            (NO, ..) => return Some(no),
            (_, YES, NO) => return Some(asked),
            _ if yes == no => return Some(yes),
            _ => {}
        }
        if let Some(node) = self.chosen.get(&(asked, yes, no)) {
            return Some(*node);
        }
        let first = |n: u32| self.nodes[n as usize].0;
        let of = first(asked).min(first(yes)).min(first(no));
        let [a, y, n] = [asked, yes, no].map(|node| self.halves(node, of));
        let low = self.choose(a.0, y.0, n.0)?;
        let high = self.choose(a.1, y.1, n.1)?;
        let node = self.node(of, low, high)?;
        self.chosen.insert((asked, yes, no), node);
        Some(node)
    }

    fn and(&mut self, a: u32, b: u32) -> Option<u32> {
        self.choose(a, b, NO)
    }

    fn implies(&mut self, a: u32, b: u32) -> Option<u32> {
        self.choose(a, b, YES)
    }

    fn same(&mut self, a: u32, b: u32) -> Option<u32> {
        let not = self.choose(b, NO, YES)?;
        self.choose(a, b, not)
    }

    /// At least so many of them.
    fn at_least(&mut self, least: usize, parts: &[u32]) -> Option<u32> {
        // By how many are still asked for, of the parts looked at so far.
        let mut wanted = vec![YES];
        wanted.resize(least + 1, NO);
        for part in parts {
            for still in (1..=least).rev() {
                wanted[still] = self.choose(*part, wanted[still - 1], wanted[still])?;
            }
        }
        Some(wanted[least])
    }

    /// Holds where it holds for either value of a variable.
    fn either(&mut self, node: u32, of: u32) -> Option<u32> {
        let mut done = HashMap::new();
        self.either_in(node, of, &mut done)
    }

    fn either_in(&mut self, node: u32, of: u32, done: &mut HashMap<u32, u32>) -> Option<u32> {
        let (variable, no, yes) = self.nodes[node as usize];
        if variable > of {
            return Some(node);
        }
        if variable == of {
            return self.choose(no, YES, yes);
        }
        if let Some(node) = done.get(&node) {
            return Some(*node);
        }
        let low = self.either_in(no, of, done)?;
        let high = self.either_in(yes, of, done)?;
        let out = self.node(variable, low, high)?;
        done.insert(node, out);
        Some(out)
    }

    /// In how many ways the variables of a list, in their order, make it true; it asks no other.
    fn count(&self, root: u32, variables: &[u32]) -> u128 {
        let place = |node: u32| {
            let of = self.nodes[node as usize].0;
            variables.partition_point(|v| *v < of)
        };
        let mut ways: HashMap<u32, u128> = HashMap::from([(NO, 0), (YES, 1)]);
        // A node's parts have smaller numbers than the node.
        let mut below = vec![root];
        let mut reached = vec![false; root as usize + 1];
        while let Some(node) = below.pop() {
            if node > YES && !reached[node as usize] {
                reached[node as usize] = true;
                let (_, no, yes) = self.nodes[node as usize];
                below.extend([no, yes]);
            }
        }
        for node in (2..=root).filter(|n| reached[*n as usize]) {
            let (_, no, yes) = self.nodes[node as usize];
            let of = |part: u32| ways[&part] << (place(part) - place(node) - 1);
            ways.insert(node, of(no) + of(yes));
        }
        ways[&root] << place(root)
    }
}

/// The possible placements of a chain.
pub struct Placements {
    diagram: Diagram,
    root: u32,
    /// For each movement of the chain: the variables that say it is owned, and that its needs are met; the second only where
    /// what is owned does not say so.
    of: Vec<(u32, Option<u32>)>,
    pub count: u128,
}

/// What is needed stands before what needs it, and near it.
fn in_order(flat: &Flat, movement: u32, done: &mut Vec<u32>, open: &mut Vec<u32>) {
    if done.contains(&movement) || open.contains(&movement) {
        return;
    }
    open.push(movement);
    for demand in leaves(&flat.trees[movement as usize]) {
        in_order(flat, flat.demands[demand as usize].0, done, open);
    }
    open.pop();
    done.push(movement);
}

fn leaves(tree: &[i32]) -> Vec<u32> {
    let mut out = Vec::new();
    let mut at = 0;
    while at < tree.len() {
        match tree[at] {
            ALL | ANY => at += 1,
            kind if kind < ANY => at += 2,
            demand => out.push(demand as u32),
        }
        at += 1;
    }
    out
}

impl Placements {
    /// Of a chain, by a diagram of at most so many nodes; `None` where it takes more.
    pub fn new(flat: &Flat, chain: &[MovementIx], most: usize) -> Option<Placements> {
        let members: Vec<u32> = chain.iter().filter_map(|ix| flat.number(*ix)).collect();
        let mut order = Vec::new();
        for member in members.iter().rev() {
            in_order(flat, *member, &mut order, &mut Vec::new());
        }
        let asked: Vec<u32> = order
            .iter()
            .flat_map(|m| leaves(&flat.trees[*m as usize]))
            .collect();
        // A movement's number is also its standard's.
        let is_standard = |demand: u32| (demand as usize) < flat.movements.len();
        let mut demand_variables: HashMap<u32, u32> = HashMap::new();
        let mut needs_variables: HashMap<u32, u32> = HashMap::new();
        let mut next = 0_u32;
        let mut fresh = || {
            next += 1;
            next - 1
        };
        for m in &order {
            let of = |d: &u32| {
                flat.demands[*d as usize].0 == *m && (is_standard(*d) || asked.contains(d))
            };
            for demand in (0..flat.demands.len() as u32).filter(of) {
                demand_variables.insert(demand, fresh());
            }
            if !leaves(&flat.trees[*m as usize])
                .into_iter()
                .all(is_standard)
            {
                needs_variables.insert(*m, fresh());
            }
        }
        let mut diagram = Diagram::new(most);
        let mut root = YES;
        for (i, m) in order.iter().enumerate() {
            let tree = &flat.trees[*m as usize];
            let needs = match tree.is_empty() {
                true => YES,
                false => tree_node(&mut diagram, tree, &mut 0, &demand_variables)?,
            };
            for (demand, variable) in &demand_variables {
                if flat.demands[*demand as usize].0 != *m {
                    continue;
                }
                let met = diagram.variable(*variable)?;
                let mut follows = needs;
                for other in &flat.implied[*demand as usize] {
                    if let Some(other) = demand_variables.get(other) {
                        let other = diagram.variable(*other)?;
                        follows = diagram.and(follows, other)?;
                    }
                }
                let rule = diagram.implies(met, follows)?;
                root = diagram.and(root, rule)?;
            }
            if let Some(variable) = needs_variables.get(m) {
                let said = diagram.variable(*variable)?;
                let rule = diagram.same(said, needs)?;
                root = diagram.and(root, rule)?;
            }
            // What no placement tells is given up as soon as no later rule speaks of it.
            let later = |demand: &u32| {
                let of = flat.demands[*demand as usize].0;
                let rest = &order[i + 1..];
                rest.contains(&of)
                    || rest
                        .iter()
                        .any(|m| leaves(&flat.trees[*m as usize]).contains(demand))
            };
            let mut spent: Vec<u32> = demand_variables.keys().copied().collect();
            spent.retain(|d| !is_standard(*d) && !later(d));
            for demand in spent {
                if let Some(variable) = demand_variables.remove(&demand) {
                    root = diagram.either(root, variable)?;
                }
            }
        }
        let mut variables: Vec<u32> = demand_variables
            .values()
            .chain(needs_variables.values())
            .copied()
            .collect();
        variables.sort_unstable();
        let of = members
            .iter()
            .map(|m| (demand_variables[m], needs_variables.get(m).copied()));
        Some(Placements {
            of: of.collect(),
            count: diagram.count(root, &variables),
            diagram,
            root,
        })
    }

    /// Whether a placement, in the order of the chain, is one of them.
    pub fn holds(&self, placement: &[Place]) -> bool {
        let mut said: HashMap<u32, bool> = HashMap::new();
        for ((owned, needs), place) in self.of.iter().zip(placement) {
            said.insert(*owned, *place == Place::Owned);
            if let Some(needs) = needs {
                said.insert(*needs, *place != Place::Neither);
            }
        }
        let mut node = self.root;
        while node > YES {
            let (of, no, yes) = self.diagram.nodes[node as usize];
            node = if said[&of] { yes } else { no };
        }
        node == YES
    }
}

/// A tree in prefix order as a node.
fn tree_node(
    diagram: &mut Diagram,
    tree: &[i32],
    at: &mut usize,
    variables: &HashMap<u32, u32>,
) -> Option<u32> {
    let mut take = || {
        *at += 1;
        tree[*at - 1]
    };
    let kind = take();
    if kind >= 0 {
        return diagram.variable(variables[&(kind as u32)]);
    }
    let (least, count) = match kind {
        ALL => {
            let count = take();
            (count, count)
        }
        ANY => (1, take()),
        _ => (take(), take()),
    };
    let mut parts = Vec::new();
    for _ in 0..count {
        parts.push(tree_node(diagram, tree, at, variables)?);
    }
    diagram.at_least(least as usize, &parts)
}
