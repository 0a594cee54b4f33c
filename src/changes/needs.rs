//! Whether needs still ask all that they asked, and which leaf of them does not.

use super::stood::{Asked, Tree};
use crate::curriculum::Target;

/// Whether a target asks at least what another one asked; of targets that cannot be read or compared only the same one does.
pub fn asks_at_least(now: &str, then: &str) -> bool {
    now == then
        || matches!((Target::read(now), Target::read(then)), (Ok(now), Ok(then)) if now.asks_at_least(&then))
}

/// Whether whoever meets `now` also meets `then`. Yes is always right; no may be said of trees that are written in quite another
/// way.
///
/// # Complexity
/// The product of both trees' leaves.
pub fn implies(now: &Tree, then: &Tree, same: &impl Fn(&str, &str) -> bool) -> bool {
    let whole = match then {
        Tree::All { all } => return all.iter().all(|part| implies(now, part, same)),
        Tree::Leaf(asked) => now.asks(asked, same),
        Tree::Any { any } => any.iter().any(|part| implies(now, part, same)),
        Tree::AtLeast { at_least, of } => {
            let met = of.iter().filter(|part| implies(now, part, same)).count();
            met >= *at_least as usize || now.asks_as_many(*at_least, of, same)
        }
    };
    whole
        || match now {
            Tree::Leaf(_) => false,
            Tree::All { all } => all.iter().any(|part| implies(part, then, same)),
            Tree::Any { any } => any.iter().all(|part| implies(part, then, same)),
            Tree::AtLeast { at_least, of } => {
                let not = of.iter().filter(|part| !implies(part, then, same)).count();
                not < *at_least as usize
            }
        }
}

impl Tree {
    fn asks(&self, then: &Asked, same: &impl Fn(&str, &str) -> bool) -> bool {
        matches!(self, Tree::Leaf(now) if same(&now.movement, &then.movement) && asks_at_least(&now.target, &then.target))
    }

    /// At least as many of parts each of which implies another part of `then`.
    fn asks_as_many(&self, k: u32, then: &[Tree], same: &impl Fn(&str, &str) -> bool) -> bool {
        let Tree::AtLeast { at_least, of } = self else {
            return false;
        };
        let mut left: Vec<&Tree> = then.iter().collect();
        let mut take = |part: &Tree| {
            let at = left.iter().position(|old| implies(part, old, same));
            at.map(|at| left.swap_remove(at)).is_some()
        };
        *at_least >= k && of.iter().all(&mut take)
    }

    /// Every leaf, in the order written.
    pub fn leaves(&self) -> Vec<&Asked> {
        match self {
            Tree::Leaf(asked) => vec![asked],
            Tree::All { all: parts }
            | Tree::Any { any: parts }
            | Tree::AtLeast { of: parts, .. } => parts.iter().flat_map(Tree::leaves).collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tree(text: &str) -> Tree {
        serde_json::from_str(&text.replace('\'', "\"")).expect(text)
    }

    /// Every assignment of two amounts to three movements, by brute force: a yes is never wrong, and every tree asks itself.
    #[test]
    fn a_yes_holds_for_every_client() {
        let leaf = |m: &str, n: u32| format!("{{'movement': '{m}', 'target': '{n} reps'}}");
        let (a, b, c) = (leaf("a", 5), leaf("b", 5), leaf("c", 5));
        let mut texts = vec![
            a.clone(),
            b.clone(),
            leaf("a", 9),
            "{'all': []}".into(),
            "{'any': []}".into(),
        ];
        for [x, y] in [[&a, &b], [&b, &c], [&leaf("a", 9), &b]] {
            texts.push(format!("{{'all': [{x}, {y}]}}"));
            texts.push(format!("{{'any': [{x}, {y}]}}"));
            texts.push(format!("{{'all': [{{'any': [{x}, {y}]}}, {c}]}}"));
            for k in 1..=3 {
                texts.push(format!("{{'at_least': {k}, 'of': [{x}, {y}, {c}]}}"));
            }
        }
        fn met(tree: &Tree, has: &[u32; 3]) -> bool {
            match tree {
                Tree::Leaf(l) => {
                    let asked: u32 = l
                        .target
                        .split(' ')
                        .next()
                        .expect("a number")
                        .parse()
                        .expect("a number");
                    has[usize::from(l.movement.as_bytes()[0] - b'a')] >= asked
                }
                Tree::All { all } => all.iter().all(|p| met(p, has)),
                Tree::Any { any } => any.iter().any(|p| met(p, has)),
                Tree::AtLeast { at_least, of } => {
                    of.iter().filter(|p| met(p, has)).count() >= *at_least as usize
                }
            }
        }
        let trees: Vec<Tree> = texts.iter().map(|t| tree(t)).collect();
        let same = |a: &str, b: &str| a == b;
        let (mut yes, mut missed) = (0, 0);
        for now in &trees {
            assert!(implies(now, now, &same), "{now:?}");
            for then in &trees {
                let mut all =
                    (0..27).map(|n| [n % 3, n / 3 % 3, n / 9].map(|d| [0, 5, 9][d as usize]));
                let truth = all.all(|has| !met(now, &has) || met(then, &has));
                let said = implies(now, then, &same);
                assert!(truth || !said, "{now:?} does not ask {then:?}");
                yes += usize::from(said);
                missed += usize::from(truth && !said);
            }
        }
        assert!(
            yes > 100 && missed * 10 < yes,
            "{yes} found, {missed} missed"
        );
    }
}
