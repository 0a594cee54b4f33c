//! What a school's words for equipment are to the rules: a word belongs to a kind by one of its parts, as `low-rings` are rings.
//!
//! # Source
//! Common practice, no source.

use super::Movement;

/// A kind of equipment that some rule asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gear {
    /// Holds the feet or the body upside down.
    Wall,
    /// Give way to every side.
    Rings,
    MeasuresLength,
    MeasuresAngle,
    AddsWeight,
    /// Takes weight off.
    Helps,
}

impl Gear {
    /// The parts of words that are of this kind.
    pub fn words(self) -> &'static [&'static str] {
        match self {
            Gear::Wall => &["wall"],
            Gear::Rings => &["rings"],
            Gear::MeasuresLength => &["tape", "ruler"],
            Gear::MeasuresAngle => &["phone", "goniometer", "protractor", "level"],
            Gear::AddsWeight => &[
                "plates",
                "plate",
                "dumbbell",
                "kettlebell",
                "barbell",
                "weight",
                "vest",
                "backpack",
                "sandbag",
            ],
            Gear::Helps => &["band", "counterweight", "partner", "pulley"],
        }
    }

    /// Whether a word is of what only measures.
    pub fn measures(word: &str) -> bool {
        [Gear::MeasuresLength, Gear::MeasuresAngle]
            .iter()
            .any(|gear| gear.is(word))
    }

    /// Whether a word of a school is of this kind.
    pub fn is(self, word: &str) -> bool {
        word.split('-').any(|part| self.words().contains(&part))
    }
}

impl Movement {
    /// Whether its equipment names something of a kind, be it one of several that will do.
    pub fn names_gear(&self, gear: Gear) -> bool {
        self.equipment().iter().flatten().any(|word| gear.is(word))
    }
}

#[cfg(test)]
mod tests {
    use super::Gear;

    #[test]
    fn a_word_is_of_a_kind_by_one_of_its_parts() {
        for word in ["rings", "low-rings"] {
            assert!(Gear::Rings.is(word), "{word}");
        }
        for word in ["earrings", "ring", "strings-low", "wall"] {
            assert!(!Gear::Rings.is(word), "{word}");
        }
        assert!(Gear::Wall.is("wall") && Gear::Wall.is("wall-bars"));
        assert!(!Gear::Wall.is("wallet"));
    }
}
