//! The published table and signs, and the agreement of the health questions with the cautions.

use super::{Asked, Column, Outcome, QUESTIONS, ROWS, SIGNS, fitting};
use crate::curriculum::caution::{Book, Part};
use crate::curriculum::words::{BodyPart, Word};
use crate::results::LIMITS;
use crate::words::Words;

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

/// The nine signs of table 2.1 (source: the head of the file above).
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

/// Each answer restricts classes and parts that exist, each once.
#[test]
fn answers_restrict_what_exists() {
    let book = Book::default();
    for question in QUESTIONS {
        for (i, class) in question.classes.iter().enumerate() {
            assert!(book.find(class).is_some(), "{class}");
            assert!(
                !question.classes[..i].contains(class),
                "{}: {class} twice",
                question.id
            );
        }
        for part in question.parts {
            assert!(BodyPart::WORDS.contains(part), "{part}");
            assert_eq!(
                question.asked,
                Asked::Under(LIMITS.adult),
                "{}",
                question.id
            );
        }
        assert!(
            question.column != Column::Spares || !question.classes.is_empty(),
            "{} spares nothing",
            question.id
        );
    }
}

/// What the answers restrict at the least.
///
/// # Source
/// Pregnancy: ACOG Committee Opinion 804 (2020), of which lying on the back, the breath held and falls; the rest and the other
/// rows: common practice, no source. Written by hand beside the table, so that no row loses a class unseen.
#[test]
fn what_each_answer_leaves_alone_at_the_least() {
    for (id, least) in [
        (
            "pregnancy",
            "inverted part-inverted fall-height breath-holding neck-load supine prone rolling loaded",
        ),
        ("heart", "inverted part-inverted breath-holding loaded"),
        ("pressure", "inverted part-inverted breath-holding loaded"),
        ("eyes", "inverted part-inverted breath-holding"),
        ("bones", "inverted neck-load fall-height rolling loaded"),
        (
            "dislocation",
            "shoulder-extension loaded straight-arm overhead momentum",
        ),
        ("hernia", "loaded breath-holding prone"),
        ("neck", "inverted part-inverted neck-load rolling"),
        ("dizziness", "inverted part-inverted fall-height supine"),
        ("fits", "inverted fall-height neck-load alone"),
        ("bleeding", "inverted fall-height rolling"),
        ("concussion", "inverted fall-height rolling momentum"),
        ("mobile", "straight-arm shoulder-extension"),
        ("growth_back", "spine-extension"),
        ("falls", "fall-height"),
    ] {
        let question = QUESTIONS.iter().find(|q| q.id == id).expect(id);
        for class in least.split(' ') {
            assert!(question.classes.contains(&class), "{id}: {class}");
        }
    }
}

/// How the cautions name what is asked: any of the words, in English and in Hebrew. What bears on one part alone (a broken
/// wrist, an operated knee) is asked as an injury, or kept as a pain of its part, and restricts no class.
const NAMED: &[(&str, &[&str], &[&str])] = &[
    (
        "heart",
        &["heart disease", "stroke", "aneurysm"],
        &["מחלת לב", "שבץ", "מפרצת"],
    ),
    ("pressure", &["high blood pressure"], &["לחץ דם גבוה"]),
    (
        "eyes",
        &["eye disease", "eye surgery", "glaucoma"],
        &["מחלת עיניים", "ניתוח עיניים", "גלאוקומה"],
    ),
    ("fits", &["fits"], &["פרכוס"]),
    (
        "dizziness",
        &["dizz", "balance disorder"],
        &["סחרחור", "הפרעת שיווי משקל"],
    ),
    ("concussion", &["concussion"], &["זעזוע מוח"]),
    (
        "bleeding",
        &["blood thinner", "bleeding disorder"],
        &["מדללי דם", "הפרעת דימום"],
    ),
    ("pregnancy", &["pregnan", "gave birth"], &["היריון"]),
    (
        "bones",
        &["brittle bones", "osteoporosis", "cortisone"],
        &["עצמות שבירות", "בריחת סידן", "קורטיזון"],
    ),
    (
        "hernia",
        &["hernia", "operation on the belly"],
        &["בקע", "ניתוח בבטן"],
    ),
    (
        "neck",
        &["neck", "numbness in the arms"],
        &["צוואר", "חוסר תחושה בזרועות"],
    ),
    (
        "back",
        &[
            "slipped disc",
            "slipped vertebra",
            "spine",
            "back injury",
            "pain down a leg",
        ],
        &["פריצת דיסק", "חוליה שהחליקה", "עמוד השדרה", "פציעה בגב"],
    ),
    (
        "dislocation",
        &["out of place", "dislocat", "unstable"],
        &["יצאה ממקומה", "פריק", "לא יציבה"],
    ),
    ("mobile", &["very mobile"], &["גמישים מאוד", "גמישות מאוד"]),
    (
        "injury",
        &[
            "injury or operation in the last year",
            "recent injury",
            "recent joint injury",
        ],
        &[
            "פציעה או ניתוח בשנה האחרונה",
            "פציעה לאחרונה",
            "פציעת מפרק לאחרונה",
        ],
    ),
    ("growth_back", &["under 18"], &["מתחת לגיל 18"]),
    ("falls", &["fell in the last year"], &["נפל בשנה האחרונה"]),
];

/// Over all classes and all health questions, in both languages: a class's "ask a clinician first" names what is asked where,
/// and only where, yes leaves the class alone.
#[test]
fn questions_and_cautions_say_the_same() {
    let book = Book::default();
    for (language, at) in [("en", 0), ("he", 1)] {
        let words = Words::of(language, &[]);
        for class in book.classes() {
            let text = class.say(Part::AskFirst, &words);
            for question in QUESTIONS {
                let named = NAMED.iter().find(|n| n.0 == question.id);
                let named = named.map_or(&[][..], |n| [n.1, n.2][at]);
                let names = named.iter().any(|phrase| text.contains(phrase));
                let restricts = question.classes.contains(&class.id.as_str());
                assert_eq!(
                    names, restricts,
                    "{language}: {} and {}: {text}",
                    question.id, class.id
                );
            }
        }
    }
}

/// Each language has the words of each question.
#[test]
fn each_question_has_words() {
    for language in ["en", "he"] {
        let words = Words::of(language, &[]);
        for question in QUESTIONS {
            assert!(!words.say(&format!("health.{}", question.id)).is_empty());
        }
    }
}
