//! Needs: trees of "all of", "any of" and "at least k of" over leaves.

use super::MovementIx;
use super::target::Target;
use crate::source::Span;

/// A requirement tree. An empty `All` asks nothing; an empty `Any` can never be met.
#[derive(Clone, Debug, PartialEq)]
pub enum Need<L> {
    Leaf(L),
    All(Vec<Need<L>>),
    Any(Vec<Need<L>>),
    /// At least so many of the parts; from 1 to their number when it was written well.
    AtLeast(u32, Vec<Need<L>>),
}

/// A movement at a target.
#[derive(Clone, Debug, PartialEq)]
pub struct Leaf {
    pub movement: MovementIx,
    pub target: Target,
    /// Written without a target: the movement's own standard.
    pub own_standard: bool,
    pub span: Span,
}

impl<L> Need<L> {
    /// Asks nothing.
    pub fn nothing() -> Need<L> {
        Need::All(Vec::new())
    }

    pub fn is_nothing(&self) -> bool {
        matches!(self, Need::All(parts) if parts.is_empty())
    }

    /// Every leaf, in the order written.
    pub fn leaves(&self) -> Vec<&L> {
        let mut out = Vec::new();
        self.visit(&mut |leaf| out.push(leaf));
        out
    }

    /// Calls `f` for every leaf, in the order written.
    pub fn visit<'a>(&'a self, f: &mut impl FnMut(&'a L)) {
        match self {
            Need::Leaf(leaf) => f(leaf),
            Need::All(parts) | Need::Any(parts) | Need::AtLeast(_, parts) => {
                parts.iter().for_each(|p| p.visit(f))
            }
        }
    }

    /// Calls `f` for every leaf, in the order written, to change it.
    pub fn change(&mut self, f: &mut impl FnMut(&mut L)) {
        match self {
            Need::Leaf(leaf) => f(leaf),
            Need::All(parts) | Need::Any(parts) | Need::AtLeast(_, parts) => {
                parts.iter_mut().for_each(|p| p.change(f))
            }
        }
    }

    /// The same joints over other leaves; a leaf may become a tree.
    pub fn map<M>(&self, f: &mut impl FnMut(&L) -> Need<M>) -> Need<M> {
        let mut parts = |parts: &[Need<L>]| parts.iter().map(|p| p.map(f)).collect();
        match self {
            Need::All(all) => Need::All(parts(all)),
            Need::Any(any) => Need::Any(parts(any)),
            Need::AtLeast(k, of) => Need::AtLeast(*k, parts(of)),
            Need::Leaf(leaf) => f(leaf),
        }
    }

    /// Whether the tree is true when exactly the leaves that `f` accepts are true.
    pub fn holds(&self, f: &impl Fn(&L) -> bool) -> bool {
        match self {
            Need::Leaf(leaf) => f(leaf),
            Need::All(parts) => parts.iter().all(|p| p.holds(f)),
            Need::Any(parts) => parts.iter().any(|p| p.holds(f)),
            Need::AtLeast(k, parts) => parts.iter().filter(|p| p.holds(f)).count() >= *k as usize,
        }
    }

    /// Whether another tree has the same joints, and leaves that are alike one by one.
    pub fn is_like(&self, other: &Need<L>, alike: &impl Fn(&L, &L) -> bool) -> bool {
        let both = |a: &[Need<L>], b: &[Need<L>]| {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| a.is_like(b, alike))
        };
        match (self, other) {
            (Need::Leaf(a), Need::Leaf(b)) => alike(a, b),
            (Need::All(a), Need::All(b)) | (Need::Any(a), Need::Any(b)) => both(a, b),
            (Need::AtLeast(k, a), Need::AtLeast(l, b)) => k == l && both(a, b),
            _ => false,
        }
    }

    /// How many joints (`any of`, `at least k of`) the tree has.
    pub fn choices(&self) -> usize {
        match self {
            Need::Leaf(_) => 0,
            Need::All(parts) => parts.iter().map(Need::choices).sum(),
            Need::Any(parts) | Need::AtLeast(_, parts) => {
                1 + parts.iter().map(Need::choices).sum::<usize>()
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Need::{All, Any, AtLeast, Leaf};

    #[test]
    fn trees_are_alike_joint_by_joint() {
        let alike = |a: &i32, b: &i32| a / 10 == b / 10;
        let tree = All(vec![
            Leaf(11),
            AtLeast(1, vec![Leaf(21), Any(vec![Leaf(31)])]),
        ]);
        let same = All(vec![
            Leaf(12),
            AtLeast(1, vec![Leaf(29), Any(vec![Leaf(30)])]),
        ]);
        assert!(tree.is_like(&same, &alike));
        for other in [
            All(vec![Leaf(12)]),
            All(vec![
                Leaf(12),
                AtLeast(2, vec![Leaf(29), Any(vec![Leaf(30)])]),
            ]),
            All(vec![
                Leaf(12),
                AtLeast(1, vec![Leaf(29), All(vec![Leaf(30)])]),
            ]),
            All(vec![
                Leaf(12),
                AtLeast(1, vec![Leaf(29), Any(vec![Leaf(40)])]),
            ]),
            All(vec![
                AtLeast(1, vec![Leaf(29), Any(vec![Leaf(30)])]),
                Leaf(12),
            ]),
        ] {
            assert!(!tree.is_like(&other, &alike), "{other:?}");
        }
    }
}
