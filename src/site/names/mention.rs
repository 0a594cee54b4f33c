//! Mentions: where a text names an inverted or loaded movement without a link.

use crate::curriculum::{Curriculum, MovementIx};
use foldhash::fast::FixedState;
use std::collections::{HashMap, HashSet};
use std::ops::Range;

/// The names to look for, by their first word, the longest first; all in small letters.
#[derive(Default)]
pub struct Mentions(HashMap<String, Vec<(String, MovementIx)>, FixedState>);

impl Mentions {
    /// The names of the guarded movements, but for those that a movement without that guard bears too.
    pub fn new(curriculum: &Curriculum) -> Mentions {
        let published = || {
            curriculum
                .published()
                .map(|(ix, m)| (ix, m, m.name.to_lowercase()))
        };
        let plain: HashSet<String> = published()
            .filter(|(_, m, _)| !m.guarded())
            .map(|(_, _, name)| name)
            .collect();
        let mut out = Mentions::default();
        for (ix, _, name) in published().filter(|(_, m, name)| m.guarded() && !plain.contains(name))
        {
            let first = words(&name).next().map(|first| name[first].to_string());
            if let Some(first) = first {
                out.0.entry(first).or_default().push((name, ix));
            }
        }
        for names in out.0.values_mut() {
            names.sort_by_key(|(name, ix)| (std::cmp::Reverse(name.len()), *ix));
        }
        out
    }

    /// Where a text mentions which movements, in order; an English plural is one too. A text whose capitals are longer than
    /// their small letters is left alone.
    pub fn find(&self, text: &str) -> Vec<(Range<usize>, MovementIx)> {
        let mut out: Vec<(Range<usize>, MovementIx)> = Vec::new();
        let small = text.to_lowercase();
        if self.0.is_empty() || small.len() != text.len() {
            return out;
        }
        for first in words(&small) {
            if out.last().is_some_and(|(last, _)| first.start < last.end) {
                continue;
            }
            let at = first.start;
            // The plural of a name of one word is another word.
            let word = &small[first];
            let known = self
                .0
                .get(word)
                .or_else(|| self.0.get(word.strip_suffix('s')?));
            let found = known.into_iter().flatten().find_map(|(name, ix)| {
                let rest = small[at..].strip_prefix(name.as_str())?;
                let ends = |rest: &str| !rest.starts_with(char::is_alphanumeric);
                let plural = rest.strip_prefix('s').filter(|rest| ends(rest));
                let end = match plural {
                    Some(_) => name.len() + 1,
                    None if ends(rest) => name.len(),
                    None => return None,
                };
                Some((at..at + end, *ix))
            });
            out.extend(found);
        }
        out
    }
}

/// Where the words of a text stand.
fn words(text: &str) -> impl Iterator<Item = Range<usize>> + '_ {
    let mut at = 0;
    std::iter::from_fn(move || {
        let start = at + text[at..].find(char::is_alphanumeric)?;
        let length = text[start..].find(|c: char| !c.is_alphanumeric());
        at = length.map_or(text.len(), |n| start + n);
        Some(start..at)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_found_in_running_text() {
        let mut mentions = Mentions::default();
        let names = [
            ("inverted hang", 1),
            ("inverted hang, tucked", 2),
            ("handstand", 3),
        ];
        for (name, ix) in names {
            let first = name.split(' ').next().unwrap_or_default().to_string();
            let of = mentions.0.entry(first).or_default();
            of.push((name.to_string(), MovementIx(ix)));
            of.sort_by_key(|(name, _)| std::cmp::Reverse(name.len()));
        }
        let text = "Inverted hangs come before an inverted hang, tucked. Handstands: uninverted hang, inverted hanger.";
        let found: Vec<(&str, u32)> = mentions
            .find(text)
            .into_iter()
            .map(|(at, ix)| (&text[at], ix.0))
            .collect();
        assert_eq!(
            found,
            [
                ("Inverted hangs", 1),
                ("inverted hang, tucked", 2),
                ("Handstands", 3)
            ]
        );
        assert!(mentions.find("İnverted hang").is_empty());
    }
}
