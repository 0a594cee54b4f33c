//! The health questions before the first test: what follows from the answers.
//!
//! # Source
//! Riebe et al. 2015, Medicine & Science in Sports & Exercise 47(11):2473-2479: regular exercise, known disease of heart,
//! vessels, metabolism or kidneys, and signs or symptoms decide. The signs are the nine of table 2.1 in the same college's
//! guidelines for exercise testing and prescription, 9th edition 2014 (seen in a public copy). What other questions restrict
//! names its source beside it; that they lead to a clinician first is common practice, no source.

use crate::results::LIMITS;

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
    /// Not in the table: yes leaves its classes alone until a clinician has cleared them, and bars nothing else.
    Spares,
}

impl Column {
    pub fn word(self) -> &'static str {
        match self {
            Column::Regular => "regular",
            Column::Disease => "disease",
            Column::Symptoms => "symptoms",
            Column::Other => "other",
            Column::Spares => "spares",
        }
    }
}

/// Who is asked a question.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asked {
    Everybody,
    /// Under this age.
    Under(i32),
    /// From this age on.
    From(i32),
}

/// A question. Its words stand in the words file, under `health`.
#[derive(Clone, Copy, Debug)]
pub struct Question {
    pub id: &'static str,
    pub column: Column,
    pub asked: Asked,
    /// The caution classes that yes restricts until a clinician has cleared them: those, and no others, whose "ask a clinician
    /// first" names what is asked.
    pub classes: &'static [&'static str],
    /// The body parts that yes restricts.
    pub parts: &'static [&'static str],
    /// The longest that a clearance lasts after yes, in days, where that is less than a year.
    pub lasts: Option<i32>,
}

const fn question(id: &'static str, column: Column, classes: &'static [&'static str]) -> Question {
    Question {
        id,
        column,
        asked: Asked::Everybody,
        classes,
        parts: &[],
        lasts: None,
    }
}

/// A question to those whose bones still grow: yes rests the parts, and the classes.
const fn growing(
    id: &'static str,
    classes: &'static [&'static str],
    parts: &'static [&'static str],
) -> Question {
    Question {
        asked: Asked::Under(LIMITS.adult),
        parts,
        ..question(id, Column::Other, classes)
    }
}

/// From this age falls are asked about (Montero-Odasso et al. 2022, Age and Ageing 51(9):afac205: each year from 65; from memory).
pub const FALLS_FROM: i32 = 65;
/// The longest that a clearance lasts in what changes from week to week, in days. Common practice, no source.
pub const SIX_WEEKS: i32 = 42;

/// Every question, in the order asked. The one table of which answer leaves which classes alone: the cautions' own words name
/// the same (held by a test over all of both, in each language).
///
/// # Source
/// Pregnancy: ACOG Committee Opinion 804 (2020). Bones: bending the spine forwards brought new fractures in 89 %, bending
/// backwards in 16 % (Sinaki & Mikkelsen 1984, Arch Phys Med Rehabil 65:593-596, pages from memory). Concussion: nothing with
/// a risk of a blow to the head before a clinician allows it (Patricios et al. 2023, Br J Sports Med 57:695-711, from memory).
/// All the rest, and the weeks after a birth: common practice, no source.
pub const QUESTIONS: &[Question] = &[
    question("regular", Column::Regular, &[]),
    question("heart", Column::Disease, PRESSURE),
    question("metabolism", Column::Disease, &[]),
    question("symptoms", Column::Symptoms, &[]),
    question("pressure", Column::Other, PRESSURE),
    question(
        "eyes",
        Column::Other,
        &["inverted", "part-inverted", "breath-holding"],
    ),
    question(
        "fits",
        Column::Other,
        &[
            "inverted",
            "part-inverted",
            "neck-load",
            "fall-height",
            "momentum",
            "loaded",
            "alone",
        ],
    ),
    question(
        "dizziness",
        Column::Other,
        &[
            "inverted",
            "part-inverted",
            "fall-height",
            "supine",
            "alone",
        ],
    ),
    Question {
        lasts: Some(SIX_WEEKS),
        ..question(
            "concussion",
            Column::Other,
            &[
                "inverted",
                "part-inverted",
                "rolling",
                "neck-load",
                "breath-holding",
                "fall-height",
                "momentum",
                "loaded",
            ],
        )
    },
    question(
        "bleeding",
        Column::Other,
        &[
            "inverted",
            "rolling",
            "neck-load",
            "fall-height",
            "momentum",
            "loaded",
            "equipment",
        ],
    ),
    Question {
        lasts: Some(SIX_WEEKS),
        ..question(
            "pregnancy",
            Column::Other,
            &[
                "inverted",
                "part-inverted",
                "fall-height",
                "breath-holding",
                "neck-load",
                "supine",
                "prone",
                "rolling",
                "loaded",
            ],
        )
    },
    question(
        "bones",
        Column::Other,
        &[
            "inverted",
            "neck-load",
            "fall-height",
            "rolling",
            "loaded",
            "equipment",
        ],
    ),
    question(
        "hernia",
        Column::Other,
        &["loaded", "breath-holding", "prone"],
    ),
    question(
        "neck",
        Column::Other,
        &["inverted", "part-inverted", "neck-load", "rolling"],
    ),
    question(
        "back",
        Column::Spares,
        &["inverted", "loaded", "spine-extension", "rolling"],
    ),
    question(
        "dislocation",
        Column::Spares,
        &[
            "shoulder-extension",
            "loaded",
            "straight-arm",
            "overhead",
            "momentum",
            "deep-knee-flexion",
        ],
    ),
    question(
        "mobile",
        Column::Spares,
        &["straight-arm", "shoulder-extension"],
    ),
    question("injury", Column::Other, &["loaded", "momentum"]),
    growing("growth", &[], &["wrist", "elbow"]),
    growing("growth_back", &["spine-extension"], &["lower-back"]),
    growing("growth_legs", &[], &["hip", "knee", "ankle", "foot"]),
    Question {
        asked: Asked::From(FALLS_FROM),
        ..question(
            "falls",
            Column::Other,
            &["inverted", "fall-height", "momentum", "equipment"],
        )
    },
];

/// Head down, the breath held, and weight: what raises the pressure in the head and the vessels.
const PRESSURE: &[&str] = &["inverted", "part-inverted", "breath-holding", "loaded"];

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
mod tests;
