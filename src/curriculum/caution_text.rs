//! The shipped caution classes. Their wording stands in the words file, under `caution`; a school may reword any part, and none
//! can be emptied. `caution.straight_arm.bail_out` is what is said in general, `caution.straight_arm.inverted.bail_out` what is
//! said in that position.
//!
//! The wording is common practice in strength coaching; the eye-pressure figures behind "inverted" are Baskaran et al. 2006,
//! Ophthalmology 113(8):1327-1332, and Jasien et al. 2015, PLoS One 10(12):e0144505. Behind "rolling" and "neck-load" stands
//! Sinaki, Mikkelsen 1984, Arch Phys Med Rehabil 65(10):593-596 (new fractures of the spine in 89 % after exercises that bend it,
//! in 16 % after those that straighten it); behind "supine" ACOG Committee Opinion 804, 2020. That growth plates at wrist and
//! elbow are hurt by load before the bones are grown: DiFiori et al. 2014, Br J Sports Med 48(4):287-288 (from memory).

use super::caution::{Class, ClassId, Signal, Text};
use super::words::{Part, Position, Shipped, Word};
use crate::words::Words;

/// The classes in the order of the cautions page, in English.
pub fn shipped() -> Vec<Class> {
    Shipped::ALL.iter().map(|class| written(*class)).collect()
}

fn written(shipped: Shipped) -> Class {
    let words = Words::english();
    let id = ClassId::Shipped(shipped);
    let text = |part: &str| {
        let key = key(&id, part);
        words.entry(&key).map(|_| Text {
            words: words.say(&key).to_string(),
            span: None,
        })
    };
    let name = words.say(&key(&id, "name")).to_string();
    let mut class = Class::new(id.clone(), name, signal(shipped));
    for part in Part::ALL {
        let wording = class.wording_mut(*part);
        wording.general = text(part.word()).unwrap_or_default();
        for position in Position::ALL {
            if let Some(text) = text(&part_key(*part, Some(*position))) {
                wording.reword_in(*position, text);
            }
        }
    }
    class
}

/// The key of a part of a class in the words file.
fn key(id: &ClassId, part: &str) -> String {
    format!("caution.{}.{part}", id.as_str().replace('-', "_"))
}

/// The key of a part within a class, in general or in one position.
pub(super) fn part_key(part: Part, at: Option<Position>) -> String {
    match at {
        None => part.word().to_string(),
        Some(position) => format!("{}.{}", position.word().replace('-', "_"), part.word()),
    }
}

/// The key of the words that set a position's wording beside another's.
pub(super) fn at_key(at: Option<Position>) -> String {
    let of = at.map_or("otherwise".into(), |p| p.word().replace('-', "_"));
    format!("cautions.at.{of}")
}

/// A part of a class in another language, where the school left it as it is shipped.
pub(super) fn translated<'a>(id: &ClassId, part: &str, text: &'a str, words: &'a Words) -> &'a str {
    let key = key(id, part);
    match Words::english().entry(&key) {
        Some(_) if Words::english().say(&key) == text => words.say(&key),
        _ => text,
    }
}

/// How grave a shipped class is.
fn signal(class: Shipped) -> Signal {
    match class {
        Shipped::Inverted | Shipped::Loaded | Shipped::NeckLoad | Shipped::FallHeight => {
            Signal::Warning
        }
        Shipped::Alone | Shipped::Supine | Shipped::Prone => Signal::Notice,
        _ => Signal::Caution,
    }
}
