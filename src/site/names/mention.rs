//! Mentions: where a text names an inverted or loaded movement without a link.

use crate::curriculum::{Curriculum, MovementIx};
use foldhash::fast::FixedState;
use std::collections::{HashMap, HashSet};
use std::ops::Range;

/// The names to look for, by their first word, the longest first; all in small letters.
#[derive(Default)]
pub struct Mentions {
    by_first: HashMap<String, Vec<(String, MovementIx)>, FixedState>,
    /// For each first byte the lengths of the first words that begin so, as bits; the last bit is any length from there on. Most
    /// words of a text are told from them at a glance.
    lengths: HashMap<u8, u64, FixedState>,
}

impl Mentions {
    /// The names of the guarded movements, but for those that a movement without that guard bears too.
    pub fn new(curriculum: &Curriculum) -> Mentions {
        let published = || {
            curriculum
                .published()
                .map(|(ix, m)| (ix, m, m.name().to_lowercase()))
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
                out.add(first, name, ix);
            }
        }
        for names in out.by_first.values_mut() {
            names.sort_by_key(|(name, ix)| (std::cmp::Reverse(name.len()), *ix));
        }
        out
    }

    fn add(&mut self, first: String, name: String, ix: MovementIx) {
        let begins = first.bytes().next().unwrap_or_default();
        *self.lengths.entry(begins).or_default() |= bit(first.len());
        self.by_first.entry(first).or_default().push((name, ix));
    }

    /// False only for what is no first word of a name, nor the plural of one.
    fn may_begin(&self, word: &str) -> bool {
        let begins = word.bytes().next().unwrap_or_default();
        let lengths = self.lengths.get(&begins).copied().unwrap_or_default();
        lengths & (bit(word.len()) | bit(word.len() - 1)) != 0
    }

    /// Where a text mentions which movements, in order; an English plural is one too. A text whose capitals are longer than
    /// their small letters is left alone.
    pub fn find(&self, text: &str) -> Vec<(Range<usize>, MovementIx)> {
        let mut out: Vec<(Range<usize>, MovementIx)> = Vec::new();
        let small = text.to_lowercase();
        if self.by_first.is_empty() || small.len() != text.len() {
            return out;
        }
        for first in words(&small) {
            if out.last().is_some_and(|(last, _)| first.start < last.end) {
                continue;
            }
            let at = first.start;
            // The plural of a name of one word is another word.
            let word = &small[first];
            if !self.may_begin(word) {
                continue;
            }
            let known = self
                .by_first
                .get(word)
                .or_else(|| self.by_first.get(word.strip_suffix('s')?));
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

fn bit(length: usize) -> u64 {
    1 << length.min(63)
}

/// Where the words of a text stand.
fn words(text: &str) -> impl Iterator<Item = Range<usize>> + '_ {
    let is_ascii = text.is_ascii();
    // How far it is to the first letter that is part of a word, or that is none.
    let find = move |from: usize, part: bool| {
        let rest = &text[from..];
        match is_ascii {
            true => rest.bytes().position(|b| b.is_ascii_alphanumeric() == part),
            false => rest.find(|c: char| c.is_alphanumeric() == part),
        }
    };
    let mut at = 0;
    std::iter::from_fn(move || {
        let start = at + find(at, true)?;
        at = find(start, false).map_or(text.len(), |n| start + n);
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
            mentions.add(first.clone(), name.to_string(), MovementIx(ix));
            let of = mentions.by_first.entry(first).or_default();
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
