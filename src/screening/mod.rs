//! The health questions before the first test: what follows from the answers.
//!
//! # Source
//! Riebe et al. 2015, Medicine & Science in Sports & Exercise 47(11):2473-2479: regular exercise, known disease of heart,
//! vessels, metabolism or kidneys, and signs or symptoms decide. The signs are the nine of table 2.1 in the same college's
//! guidelines for exercise testing and prescription, 9th edition 2014 (seen in a public copy). What other questions restrict
//! names its source beside it; that they lead to a clinician first is common practice, no source.

/// What may be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Hard effort: every test.
    Clear,
    /// Light to moderate effort, built up: no inverted, loaded or lowering test, and no test to the limit.
    Light,
    /// A clinician's clearance comes first: no test and no plan.
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

/// What an answer counts as in the published table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Column {
    Regular,
    Disease,
    Symptoms,
    /// Not in the table: yes leads to a clinician first whatever the rest says.
    Other,
}

impl Column {
    pub fn word(self) -> &'static str {
        match self {
            Column::Regular => "regular",
            Column::Disease => "disease",
            Column::Symptoms => "symptoms",
            Column::Other => "other",
        }
    }
}

/// A question. Its words stand in the words file, under `health`.
#[derive(Clone, Copy, Debug)]
pub struct Question {
    pub id: &'static str,
    pub column: Column,
    /// The caution classes that yes restricts until a clinician has cleared them.
    pub classes: &'static [&'static str],
    /// The body parts that yes restricts.
    pub parts: &'static [&'static str],
}

const fn question(
    id: &'static str,
    column: Column,
    classes: &'static [&'static str],
    parts: &'static [&'static str],
) -> Question {
    Question {
        id,
        column,
        classes,
        parts,
    }
}

/// Head down and the breath held: what raises the pressure in the head, the eyes and the vessels.
const PRESSURE: &[&str] = &["inverted", "part-inverted", "breath-holding"];

/// Every question, in the order asked.
///
/// # Source
/// Pregnancy: ACOG Committee Opinion 804 (2020). Bones: bending the spine forwards brought new fractures in 89 %, bending
/// backwards in 16 % (Sinaki & Mikkelsen 1984, Arch Phys Med Rehabil 65:593-596, pages from memory). Growth plates, pressure,
/// hernia, neck, balance, dislocation: common practice, no source.
pub const QUESTIONS: &[Question] = &[
    question("regular", Column::Regular, &[], &[]),
    question("heart", Column::Disease, PRESSURE, &[]),
    question("metabolism", Column::Disease, &[], &[]),
    question("symptoms", Column::Symptoms, &[], &[]),
    question("pressure", Column::Other, PRESSURE, &[]),
    question("eyes", Column::Other, PRESSURE, &[]),
    question(
        "pregnancy",
        Column::Other,
        &[
            "inverted",
            "fall-height",
            "breath-holding",
            "neck-load",
            "supine",
            "prone",
        ],
        &[],
    ),
    question(
        "bones",
        Column::Other,
        &["inverted", "neck-load", "fall-height", "rolling"],
        &[],
    ),
    question("hernia", Column::Other, &["loaded", "breath-holding"], &[]),
    question(
        "neck",
        Column::Other,
        &["inverted", "neck-load", "rolling"],
        &[],
    ),
    question(
        "dislocation",
        Column::Other,
        &["shoulder-extension", "loaded"],
        &[],
    ),
    question("injury", Column::Other, &[], &[]),
    question(
        "dizziness",
        Column::Other,
        &["inverted", "part-inverted", "fall-height"],
        &[],
    ),
    question("growth", Column::Other, &[], &["wrist", "elbow"]),
];

/// The published signs and symptoms, one of which is enough. Their words stand in the words file, under `health.sign`.
pub const SIGNS: &[&str] = &[
    "chest",
    "breath",
    "faint",
    "lying",
    "ankles",
    "heartbeat",
    "cramp",
    "murmur",
    "fatigue",
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
    use super::{Column, Outcome, QUESTIONS, ROWS, SIGNS, fitting};
    use crate::curriculum::words::{BodyPart, Word};

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

    /// The nine signs of table 2.1 (source: the head of this file).
    #[test]
    fn the_published_signs() {
        assert_eq!(SIGNS.len(), 9);
        let asked = |column| QUESTIONS.iter().filter(|q| q.column == column).count();
        assert_eq!(
            (
                asked(Column::Regular),
                asked(Column::Disease),
                asked(Column::Symptoms)
            ),
            (1, 2, 1)
        );
    }

    /// Each answer restricts classes and parts that exist, and the published column by itself restricts nothing.
    #[test]
    fn answers_restrict_what_exists() {
        let book = crate::curriculum::caution::Book::default();
        for question in QUESTIONS {
            for class in question.classes {
                assert!(book.find(class).is_some(), "{class}");
            }
            for part in question.parts {
                assert!(BodyPart::WORDS.contains(part), "{part}");
            }
        }
        let of = |id: &str| {
            QUESTIONS
                .iter()
                .find(|q| q.id == id)
                .map_or(&[][..], |q| q.classes)
        };
        assert!(of("pregnancy").contains(&"inverted") && of("pregnancy").contains(&"supine"));
        assert!(of("pregnancy").contains(&"prone"));
        assert!(of("bones").contains(&"rolling"));
        assert_eq!(of("dislocation"), ["shoulder-extension", "loaded"]);
        assert_eq!(of("eyes"), of("pressure"));
    }
}
