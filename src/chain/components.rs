//! Which nodes of a directed graph lie on common circles.

/// The strongly connected components: nodes that can each reach each other, every node in one of them. `edges[n]` are the nodes to
/// which `n` leads.
///
/// # Complexity
/// Linear in nodes and edges; no recursion, so that a chain may be as long as it likes.
///
/// # Source
/// Tarjan 1972, Depth-first search and linear graph algorithms, SIAM J Comput 1(2):146-160.
pub(super) fn components(edges: &[Vec<usize>]) -> Vec<Vec<usize>> {
    const NEW: usize = usize::MAX;
    // The order in which each was found, and the earliest that it leads back to.
    let (mut found, mut back) = (vec![NEW; edges.len()], vec![NEW; edges.len()]);
    let mut is_open = vec![false; edges.len()];
    let (mut open, mut out, mut count) = (Vec::new(), Vec::new(), 0);
    for root in 0..edges.len() {
        let mut way = vec![(root, 0)];
        while let Some((node, next)) = way.pop() {
            if next == 0 {
                if found[node] != NEW {
                    continue;
                }
                (found[node], back[node]) = (count, count);
                (count, is_open[node]) = (count + 1, true);
                open.push(node);
            } else {
                let below = edges[node][next - 1];
                if is_open[below] {
                    back[node] = back[node].min(back[below]);
                }
            }
            if let Some(below) = edges[node].get(next) {
                way.push((node, next + 1));
                way.push((*below, 0));
            } else if back[node] == found[node] {
                let from = open.iter().rposition(|n| *n == node).unwrap_or(0);
                let members = open.split_off(from);
                members.iter().for_each(|n| is_open[*n] = false);
                out.push(members);
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::components;
    use petgraph::algo::tarjan_scc;
    use petgraph::graph::DiGraph;
    use proptest::prelude::*;

    fn sorted(mut all: Vec<Vec<usize>>) -> Vec<Vec<usize>> {
        all.iter_mut().for_each(|one| one.sort_unstable());
        all.sort();
        all
    }

    proptest! {
        /// The library petgraph finds the same.
        #[test]
        fn the_same_as_another_librarys(edges in proptest::collection::vec(proptest::collection::vec(0_usize..12, 0..4), 12)) {
            let pairs = edges.iter().enumerate();
            let pairs = pairs.flat_map(|(n, to)| to.iter().map(move |m| (n as u32, *m as u32)));
            let mut graph: DiGraph<(), ()> = DiGraph::from_edges(pairs);
            while graph.node_count() < edges.len() {
                graph.add_node(());
            }
            let theirs = tarjan_scc(&graph).into_iter();
            let theirs = theirs.map(|c| c.into_iter().map(|n| n.index()).collect()).collect();
            prop_assert_eq!(sorted(components(&edges)), sorted(theirs));
        }
    }

    #[test]
    fn a_long_chain_is_no_deep_call() {
        let edges: Vec<Vec<usize>> = (0..200_000).map(|n| vec![(n + 1) % 200_000]).collect();
        assert_eq!(components(&edges).len(), 1);
    }
}
