//! The health questions before the first test: what follows from the answers.
//!
//! # Source
//! Riebe et al. 2015, Medicine & Science in Sports & Exercise 47(11):2473-2479: regular exercise, known disease of heart,
//! vessels, metabolism or kidneys, and signs or symptoms decide. The other questions are common practice, no source: they
//! always lead to a clinician first.

/// What may be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Hard effort: every test.
    Clear,
    /// Light to moderate effort, built up: no inverted, loaded or lowering test, and no test to the limit.
    Light,
    /// A clinician's clearance comes first: numbers from training alone.
    Ask,
}

impl Outcome {
    pub const ALL: &'static [Outcome] = &[Outcome::Clear, Outcome::Light, Outcome::Ask];

    pub fn word(self) -> &'static str {
        match self {
            Outcome::Clear => "clear",
            Outcome::Light => "light",
            Outcome::Ask => "ask",
        }
    }
}

/// A row of the published table. `None` where the answer does not matter.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    pub regular: bool,
    pub disease: Option<bool>,
    pub symptoms: bool,
    /// What follows in words: its key in the words file, under `health.follows`.
    pub follows: &'static str,
    pub outcome: Outcome,
}

const fn row(
    regular: bool,
    disease: Option<bool>,
    symptoms: bool,
    outcome: Outcome,
    follows: &'static str,
) -> Row {
    Row {
        regular,
        disease,
        symptoms,
        follows,
        outcome,
    }
}

/// The six rows; every combination of answers fits exactly one.
pub const ROWS: &[Row] = &[
    row(false, Some(false), false, Outcome::Light, "light_none"),
    row(false, Some(true), false, Outcome::Ask, "ask_build_up"),
    row(false, None, true, Outcome::Ask, "ask_build_up"),
    row(true, Some(false), false, Outcome::Clear, "clear_none"),
    row(true, Some(true), false, Outcome::Ask, "ask_before_hard"),
    row(true, None, true, Outcome::Ask, "ask_stop"),
];

/// Questions that lead to a clinician first whatever the rest says. Their words stand in the words file, under `health`.
pub const ALWAYS_ASK: &[&str] = &[
    "pressure",
    "eyes",
    "pregnancy",
    "injury",
    "dizziness",
    "age",
];

/// The three questions of the published table.
pub const QUESTIONS: &[&str] = &["regular", "disease", "symptoms"];

/// The row that fits.
pub fn fitting(regular: bool, disease: bool, symptoms: bool) -> &'static Row {
    let fits = |row: &&Row| {
        row.regular == regular
            && row.symptoms == symptoms
            && row.disease.is_none_or(|asked| asked == disease)
    };
    ROWS.iter()
        .find(fits)
        .expect("every combination has its row")
}

#[cfg(test)]
mod tests {
    use super::{Outcome, ROWS, fitting};

    /// The six-row outcome table of Riebe et al. 2015.
    #[test]
    fn the_published_table() {
        for (regular, disease, symptoms, outcome) in [
            (false, false, false, Outcome::Light),
            (false, true, false, Outcome::Ask),
            (false, false, true, Outcome::Ask),
            (false, true, true, Outcome::Ask),
            (true, false, false, Outcome::Clear),
            (true, true, false, Outcome::Ask),
            (true, false, true, Outcome::Ask),
            (true, true, true, Outcome::Ask),
        ] {
            assert_eq!(fitting(regular, disease, symptoms).outcome, outcome);
        }
        assert_eq!(ROWS.len(), 6);
    }
}
