//! How names begin: most texts of a page are told from names at a glance.

/// How names begin and how long they are: most texts of a page are told from them at a glance.
pub struct Openings {
    /// For each first byte in small letters the lengths as bits; the last bit is any length from there on.
    lengths: [u64; 128],
    /// Bytes of the longest name, with room for capitals that are longer than their small letters.
    pub longest: usize,
}

impl Openings {
    pub fn of<'n>(names: impl Iterator<Item = &'n str>) -> Openings {
        let mut all = Openings {
            lengths: [0; 128],
            longest: 0,
        };
        for name in names {
            all.longest = all.longest.max(name.len() * 3);
            if let Some(first) = name.bytes().next().filter(u8::is_ascii) {
                all.lengths[usize::from(first)] |= Openings::bit(name);
            }
        }
        all
    }

    fn bit(name: &str) -> u64 {
        1 << name.len().min(63)
    }

    /// False only for what begins as no name does, however its spaces and capitals are.
    pub fn may_begin(&self, words: &str) -> bool {
        let first = words.bytes().next().map(|b| b.to_ascii_lowercase());
        let of = |b: u8| self.lengths.get(usize::from(b));
        first.is_some_and(|b| of(b).is_none_or(|l| *l != 0)) || !words.is_ascii()
    }

    /// False only for what is no name in any capitals.
    pub fn may_be_name(&self, words: &str) -> bool {
        // Letters that nobody sees make a name longer.
        if words.len() > self.longest * 4 {
            return false;
        }
        if !words.is_ascii() {
            return true;
        }
        if words.len() > self.longest {
            return false;
        }
        let first = words.bytes().next().map(|b| b.to_ascii_lowercase());
        first.is_some_and(|b| self.lengths[usize::from(b)] & Openings::bit(words) != 0)
    }
}

#[cfg(test)]
mod tests {
    use super::Openings;
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(500) })]

        /// No name is overlooked, in whatever capitals; `K` is the Kelvin sign, whose small letter is shorter.
        #[test]
        fn names_may_be_names(name in "[a-zA-ZäöKß -]{1,80}", others in prop::collection::vec("[a-z ]{1,9}", 0..4)) {
            let small = name.to_lowercase();
            let openings = Openings::of(others.iter().map(String::as_str).chain([small.as_str()]));
            for words in [&name, &small, &name.to_uppercase()] {
                if words.to_lowercase() == small {
                    prop_assert!(openings.may_be_name(words), "{}", words);
                }
            }
        }
    }

    #[test]
    fn most_texts_are_no_names() {
        let openings = Openings::of(["wall walk", "hang"].into_iter());
        assert!(openings.may_be_name("Wall Walk") && openings.may_be_name("HANG"));
        for other in ["", "wall", "stop at", "hangs", "1234"] {
            assert!(!openings.may_be_name(other), "{other}");
        }
    }
}
