//! The keys of every record: one table that the reader, the JSON Schemas and the manual share.

mod movement;
mod results;

pub use movement::*;
pub use results::*;

use super::caution::Signal;
use super::words::{EasierFirst, Practice, Units, Word};

/// The form of a key's value.
#[derive(Clone, Copy, Debug)]
pub enum Shape {
    Text,
    Texts,
    /// Yes or no.
    Flag,
    Number,
    Id,
    Ids,
    Target,
    /// One of these words.
    Word(&'static [&'static str]),
    /// One of these words, or a list of them.
    Words(&'static [&'static str]),
    /// A record with these keys.
    Record(&'static [Key]),
    /// A list of such records.
    Records(&'static [Key]),
    /// Texts, each alone or a record with these keys.
    Lines(&'static [Key]),
    /// A record whose keys the coach chooses, each with a value of this shape.
    Named(&'static Shape),
    /// Needs: the list and its combinations.
    Needs,
    /// Body parts, each alone or with the way it is stressed.
    Stresses,
    /// Equipment: words, or lists of alternatives.
    Equipment,
    /// Values of an axis: words or numbers with a unit, inner lists share a rung.
    Axes,
    /// A word, or a word for each axis.
    EasierFirst,
    /// A movement, or a movement at a target.
    Goal,
    Anything,
}

/// One key.
#[derive(Clone, Copy, Debug)]
pub struct Key {
    pub name: &'static str,
    pub shape: Shape,
    pub required: bool,
    pub says: &'static str,
}

const fn must(name: &'static str, shape: Shape, says: &'static str) -> Key {
    Key {
        name,
        shape,
        required: true,
        says,
    }
}

const fn may(name: &'static str, shape: Shape, says: &'static str) -> Key {
    Key {
        name,
        shape,
        required: false,
        says,
    }
}

pub const SCHOOL: &[Key] = &[
    must("school", Shape::Text, "The school's name."),
    must(
        "address",
        Shape::Text,
        "Where the site will stand: an absolute http or https address.",
    ),
    must(
        "language",
        Shape::Text,
        "The language of the site, such as en.",
    ),
    must(
        "units",
        Shape::Word(Units::WORDS),
        "The units that readers see first.",
    ),
    may(
        "licence",
        Shape::Text,
        "The licence of the content, such as CC-BY-4.0.",
    ),
    may("contact", Shape::Text, "Where readers reach the coach."),
    may("theme", Shape::Text, "The theme's name."),
    may("publish_to", Shape::Text, "The folder that publish writes."),
    may(
        "dose",
        Shape::Record(SCHOOL_DOSE),
        "The school's usual working sets.",
    ),
    may(
        "results_last",
        Shape::Text,
        "How long a result counts, such as 12 weeks.",
    ),
    may(
        "presume",
        Shape::Flag,
        "Whether foundations are presumed from what is owned.",
    ),
    may(
        "warm_up",
        Shape::Named(&Shape::Lines(WARM_UP_LINE)),
        "Warm-up lines: always, and by caution class; each a text, or a record that says what it stresses and wants.",
    ),
    may(
        "equipment",
        Shape::Named(&Shape::Text),
        "What the school's equipment words mean.",
    ),
    may("accent", Shape::Text, "The accent colour, such as #b4472b."),
    may(
        "practice",
        Shape::Word(Practice::WORDS),
        "Skill practice before or after the working sets.",
    ),
    may(
        "smallest_plate",
        Shape::Text,
        "The smallest plate, such as 1.25 kg.",
    ),
    may(
        "leap",
        Shape::Record(LEAP),
        "The largest step that is still recommended.",
    ),
];

pub const SCHOOL_DOSE: &[Key] = &[
    may("sets", Shape::Number, "Sets."),
    may("reps", Shape::Number, "Reps of each set."),
    may("a_week", Shape::Number, "Sessions a week."),
    may(
        "lighter_every",
        Shape::Text,
        "How often a lighter week comes, such as 4 weeks.",
    ),
    may(
        "hold",
        Shape::Target,
        "Working sets of holds, such as 5x10 s.",
    ),
];

pub const WARM_UP_LINE: &[Key] = &[
    must("do", Shape::Text, "What is done."),
    may(
        "stresses",
        Shape::Stresses,
        "Body parts that it stresses: left out while one of them hurts or rests.",
    ),
    may(
        "equipment",
        Shape::Equipment,
        "What it wants, or lists of alternatives: left out where that is not at hand.",
    ),
];

pub const LEAP: &[Key] = &[
    may(
        "share",
        Shape::Number,
        "Share of body weight on the hands, such as 0.15.",
    ),
    may(
        "turning",
        Shape::Number,
        "Turning load in body weight x centimetres.",
    ),
    may("rungs", Shape::Number, "Rungs."),
];

pub const SKILL: &[Key] = &[
    must("skill", Shape::Id, "The skill's id."),
    must("name", Shape::Text, "The name as readers see it."),
    must(
        "goal",
        Shape::Goal,
        "A movement, or a movement at a target.",
    ),
    may("summary", Shape::Text, "One sentence."),
    may("also", Shape::Texts, "Other names."),
    may("was", Shape::Ids, "Old ids that still lead here."),
];

pub const CAUTION: &[Key] = &[
    may("name", Shape::Text, "The name as readers see it."),
    may("signal", Shape::Word(Signal::WORDS), "How grave it is."),
    may("happens", Shape::Text, "What can happen."),
    may("ask_first", Shape::Text, "Who asks a clinician first."),
    may("set_up", Shape::Text, "How to set up."),
    may("bail_out", Shape::Text, "How to bail out."),
    may("stop", Shape::Text, "When to stop."),
    in_position("upright"),
    in_position("hanging"),
    in_position("support"),
    in_position("prone"),
    in_position("supine"),
    in_position("side"),
    in_position("bridge"),
    in_position("part-inverted"),
    in_position("inverted"),
];

/// What is said instead in one position.
const fn in_position(position: &'static str) -> Key {
    may(
        position,
        Shape::Record(CAUTION_IN_POSITION),
        "What is said instead in this position.",
    )
}

pub const CAUTION_IN_POSITION: &[Key] = &[
    may("happens", Shape::Text, "What can happen."),
    may("ask_first", Shape::Text, "Who asks a clinician first."),
    may("set_up", Shape::Text, "How to set up."),
    may("bail_out", Shape::Text, "How to bail out."),
    may("stop", Shape::Text, "When to stop."),
];

pub const LEDGER: &[Key] = &[
    must("ledger", Shape::Number, "The version of this layout."),
    may(
        "published",
        Shape::Records(LEDGER_ENTRY),
        "Each publish with a note.",
    ),
    may(
        "stands",
        Shape::Named(&Shape::Record(LEDGER_STANDING)),
        "How each movement stood at the last entry.",
    ),
];

pub const LEDGER_ENTRY: &[Key] = &[
    must("on", Shape::Text, "The day."),
    must("note", Shape::Text, "The coach's words."),
    may("changes", Shape::Anything, "What changed."),
    may(
        "loosened",
        Shape::Anything,
        "What asks less of a body than the publish before.",
    ),
];

pub const LEDGER_STANDING: &[Key] = &[
    must("standard", Shape::Target, "The standard."),
    may("cautions", Shape::Texts, "The caution classes."),
];

/// The words of `easier_first`.
pub const EASIER_FIRST: &[&str] = EasierFirst::WORDS;
