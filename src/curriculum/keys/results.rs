//! The keys of a results file.

use super::{Key, Shape, may, must};
use crate::curriculum::words::{BodyPart, PainSign, Pattern, Screening, Weekday, Word};

pub const RESULTS: &[Key] = &[
    must("results", Shape::Number, "The version of this layout: 1."),
    may("name", Shape::Text, "Whose results they are."),
    may("bodyweight", Shape::Text, "Such as `72 kg`."),
    may("have", Shape::Texts, "Equipment at hand."),
    may(
        "tested",
        Shape::Records(RESULTS_TESTED),
        "What was tested, or done in training.",
    ),
    may(
        "trained",
        Shape::Records(RESULTS_TRAINED),
        "Working sets that were done.",
    ),
    may(
        "sessions",
        Shape::Records(RESULTS_SESSIONS),
        "How hard whole sessions were.",
    ),
    may("paused", Shape::Records(RESULTS_PAUSED), "What rests."),
    may("born", Shape::Number, "The year of birth."),
    may(
        "goal",
        Shape::Id,
        "The skill or movement that is trained for.",
    ),
    may(
        "train",
        Shape::Record(RESULTS_TRAIN),
        "When there is time to train.",
    ),
    may(
        "screened",
        Shape::Record(RESULTS_SCREENED),
        "What the health questions came to; never the answers.",
    ),
    may(
        "restrict",
        Shape::Records(RESULTS_PAUSED),
        "What is left alone for the sake of health.",
    ),
    may(
        "cleared",
        Shape::Records(RESULTS_CLEARED),
        "Caution classes that a clinician allowed.",
    ),
    may(
        "pain",
        Shape::Records(RESULTS_PAIN),
        "What hurt, and how much.",
    ),
    may(
        "remarks",
        Shape::Records(RESULTS_REMARKS),
        "The coach's own remarks.",
    ),
];

pub const RESULTS_TRAIN: &[Key] = &[
    may("a_week", Shape::Number, "Sessions a week, 1 to 7."),
    may("minutes", Shape::Number, "Minutes a session, 10 to 240."),
    may(
        "days",
        Shape::Words(Weekday::WORDS),
        "The days of the week.",
    ),
];

pub const RESULTS_SCREENED: &[Key] = &[
    must("says", Shape::Word(Screening::WORDS), "The outcome."),
    may("on", Shape::Text, "The day; today when left out."),
    may(
        "until",
        Shape::Text,
        "Where a clinician allowed it: the last day, at the latest after a year.",
    ),
    may("by", Shape::Text, "Who allowed it."),
    may(
        "was",
        Shape::Word(Screening::WORDS),
        "What the answers said before what a clinician allowed was entered.",
    ),
    may(
        "lasts",
        Shape::Number,
        "The longest that what a clinician allows lasts after these answers, in days.",
    ),
];

pub const RESULTS_CLEARED: &[Key] = &[
    must("class", Shape::Text, "A caution class."),
    may("on", Shape::Text, "The day; today when left out."),
    may(
        "until",
        Shape::Text,
        "The last day; at the latest after a year.",
    ),
    may("by", Shape::Text, "Who allowed it."),
];

pub const RESULTS_PAIN: &[Key] = &[
    must("part", Shape::Word(BodyPart::WORDS), "The body part."),
    must(
        "score",
        Shape::Number,
        "How much it hurt, 0 to 10; of a part and a day the worst counts.",
    ),
    may(
        "next_morning",
        Shape::Number,
        "How much it hurt the next morning, 0 to 10.",
    ),
    may("on", Shape::Text, "The day; today when left out."),
    may("signs", Shape::Words(PainSign::WORDS), "What came with it."),
];

pub const RESULTS_REMARKS: &[Key] = &[
    must("movement", Shape::Id, "The movement's id."),
    must("words", Shape::Text, "What was seen."),
    may("on", Shape::Text, "The day; today when left out."),
];

pub const RESULTS_SESSIONS: &[Key] = &[
    must(
        "effort",
        Shape::Number,
        "From 0 to 10, asked half an hour after.",
    ),
    must("minutes", Shape::Number, "How long it was."),
    may("on", Shape::Text, "The day; today when left out."),
];

pub const RESULTS_TESTED: &[Key] = &[
    must("movement", Shape::Id, "The movement's id."),
    may("got", Shape::Target, "What was done; each side did it."),
    may("left", Shape::Target, "What the left side did."),
    may("right", Shape::Target, "What the right side did."),
    may("on", Shape::Text, "The day; today when left out."),
    may(
        "until",
        Shape::Text,
        "The last day it may have been, where only a span is known; `on` is its first, and counts.",
    ),
    may("in_reserve", Shape::Number, "Reps that were left."),
    may("bodyweight", Shape::Text, "The body weight of that day."),
];

pub const RESULTS_TRAINED: &[Key] = &[
    must("movement", Shape::Id, "The movement's id."),
    must("did", Shape::Texts, "The amount of each set."),
    may("with", Shape::Text, "Added weight, or help."),
    may("in_reserve", Shape::Number, "Reps left in the last set."),
    may("on", Shape::Text, "The day; today when left out."),
];

pub const RESULTS_PAUSED: &[Key] = &[
    may("part", Shape::Word(BodyPart::WORDS), "A body part."),
    may("movement", Shape::Id, "Or a movement."),
    may("class", Shape::Text, "Or a caution class."),
    may("pattern", Shape::Word(Pattern::WORDS), "Or a pattern."),
    may("on", Shape::Text, "The first day; today when left out."),
    may(
        "until",
        Shape::Text,
        "The last day; until lifted when left out.",
    ),
    may("by", Shape::Text, "Who paused it."),
    may("because", Shape::Text, "Why."),
];
