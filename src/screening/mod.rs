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
    row(
        false,
        Some(false),
        false,
        Outcome::Light,
        "No clearance needed. Start light to moderate, build up from there.",
    ),
    row(
        false,
        Some(true),
        false,
        Outcome::Ask,
        "Clearance first, then light to moderate, build up as it is tolerated.",
    ),
    row(
        false,
        None,
        true,
        Outcome::Ask,
        "Clearance first, then light to moderate, build up as it is tolerated.",
    ),
    row(
        true,
        Some(false),
        false,
        Outcome::Clear,
        "No clearance needed. Go on at moderate or hard effort.",
    ),
    row(
        true,
        Some(true),
        false,
        Outcome::Ask,
        "Moderate effort without clearance. Before hard effort: clearance within the last twelve months, if nothing changed.",
    ),
    row(
        true,
        None,
        true,
        Outcome::Ask,
        "Stop, and get clearance first.",
    ),
];

/// Questions that lead to a clinician first whatever the rest says.
pub const ALWAYS_ASK: &[(&str, &str)] = &[
    (
        "pressure",
        "You have high blood pressure, or were told not to strain or to hang upside down.",
    ),
    (
        "eyes",
        "You have glaucoma, another eye disease, or had an eye operation.",
    ),
    (
        "pregnancy",
        "You are pregnant, or gave birth in the last months.",
    ),
    (
        "injury",
        "You had an injury, an operation or a dislocation in the last year, or anything hurts now.",
    ),
    (
        "dizziness",
        "You get dizzy, lose balance, or take medicine that makes you so.",
    ),
    (
        "age",
        "You are under 16: train only with a parent’s consent and a coach in the room.",
    ),
];

/// The three questions of the published table.
pub const QUESTIONS: &[(&str, &str)] = &[
    (
        "regular",
        "You exercise regularly: planned exercise, moderate or harder, at least 30 minutes on three days a week for the last three months.",
    ),
    (
        "disease",
        "You have, or had, a disease of the heart or the blood vessels, a stroke, diabetes or another disease of metabolism, or a kidney disease.",
    ),
    (
        "symptoms",
        "You have chest pain on effort, get short of breath at rest or on light effort, faint, have swollen ankles, or feel your heart race without cause.",
    ),
];

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
