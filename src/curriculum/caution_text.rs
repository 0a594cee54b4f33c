//! The shipped caution classes. Their wording stands in the words file, under `caution`; a school may reword any part, and none
//! can be emptied.
//!
//! The wording is common practice in strength coaching; the eye-pressure figures behind "inverted" are Baskaran et al. 2006,
//! Ophthalmology 113(8):1327-1332, and Jasien et al. 2015, PLoS One 10(12):e0144505.

use super::caution::{Class, Signal};
use crate::words::Words;

/// The classes in the order of the cautions page, in English.
pub fn shipped() -> Vec<Class> {
    let class = |(id, signal): &(&str, Signal)| {
        let text = |part: &str| Words::english().say(&key(id, part)).to_string();
        Class {
            id: (*id).into(),
            name: text("name"),
            signal: *signal,
            happens: text("happens"),
            ask_first: text("ask_first"),
            set_up: text("set_up"),
            bail_out: text("bail_out"),
            stop: text("stop"),
        }
    };
    ROWS.iter().map(class).collect()
}

/// The key of a part of a class in the words file.
fn key(id: &str, part: &str) -> String {
    format!("caution.{}.{part}", id.replace('-', "_"))
}

/// A part of a class in another language, where the school left it as it is shipped.
pub fn translated<'a>(id: &str, part: &str, text: &'a str, words: &'a Words) -> &'a str {
    let key = key(id, part);
    match Words::english().entry(&key) {
        Some(_) if Words::english().say(&key) == text => words.say(&key),
        _ => text,
    }
}

const ROWS: &[(&str, Signal)] = &[
    ("inverted", Signal::Warning),
    ("part-inverted", Signal::Caution),
    ("loaded", Signal::Warning),
    ("straight-arm", Signal::Caution),
    ("lowering", Signal::Caution),
    ("overhead", Signal::Caution),
    ("wrist-extension", Signal::Caution),
    ("shoulder-extension", Signal::Caution),
    ("spine-extension", Signal::Caution),
    ("deep-knee-flexion", Signal::Caution),
    ("neck-load", Signal::Warning),
    ("breath-holding", Signal::Caution),
    ("fall-height", Signal::Warning),
    ("momentum", Signal::Caution),
    ("equipment", Signal::Caution),
    ("alone", Signal::Notice),
];
