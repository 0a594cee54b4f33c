//! The keys of every record: one table that the reader, the JSON Schemas and the manual share.

mod results;

pub use results::*;

use super::caution::Signal;
use super::posture::{Gear, Touch};
use super::words::{
    Arms, ArmsAt, EasierFirst, Load, Pattern, Phase, Position, Practice, Units, Word,
};

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
        Shape::Named(&Shape::Texts),
        "Warm-up lines: always, and by caution class.",
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

pub const TEST: &[Key] = &[
    may("how", Shape::Text, "How the test is done."),
    may(
        "counts",
        Shape::Texts,
        "What must hold for a result to count.",
    ),
    may("stop", Shape::Texts, "Signs that end the test."),
    may("rest", Shape::Text, "Rest before the next attempt."),
    may(
        "since",
        Shape::Text,
        "The day since which it is measured so; earlier results are kept aside.",
    ),
];

pub const FAULT: &[Key] = &[
    must("see", Shape::Text, "What is seen."),
    may("because", Shape::Text, "Why it happens."),
    may("try", Shape::Text, "What to try."),
];

pub const INSTEAD: &[Key] = &[
    may(
        "for",
        Shape::Text,
        "A body part or a caution class: when it is sore or not to be trained.",
    ),
    may("without", Shape::Text, "Equipment: when it is not at hand."),
    must("do", Shape::Id, "The movement that goes in its place."),
];

pub const PICTURE: &[Key] = &[
    must("file", Shape::Text, "A file below content/pictures."),
    may("alt", Shape::Text, "What the picture shows, in words."),
    may("credit", Shape::Text, "Whose picture it is."),
];

pub const CLIP: &[Key] = &[
    must("file", Shape::Text, "A file below content/pictures."),
    may(
        "poster",
        Shape::Text,
        "The still picture shown before it plays.",
    ),
    may("alt", Shape::Text, "What the clip shows, in words."),
];

pub const JOINTS: &[Key] = &[
    may(
        "shoulder",
        Shape::Text,
        "Angle between arm and trunk, such as 90 deg.",
    ),
    may("elbow", Shape::Text, "180 deg is straight."),
    may("hip", Shape::Text, "180 deg is straight."),
    may("knee", Shape::Text, "180 deg is straight."),
];

pub const LEVERAGE: &[Key] = &[
    may("posture", Shape::Text, "A named posture."),
    may(
        "touches",
        Shape::Words(Touch::WORDS),
        "What touches the ground or is held.",
    ),
    may("start", Shape::Record(JOINTS), "Joint angles at the start."),
    may(
        "end",
        Shape::Record(JOINTS),
        "Joint angles at the other end.",
    ),
    may(
        "hands_at",
        Shape::Text,
        "Height of the hands, such as 30 cm.",
    ),
    may("feet_at", Shape::Text, "Height of the feet, such as 40 cm."),
    may(
        "with",
        Shape::Words(Gear::WORDS),
        "What is held or worn besides, for the figure.",
    ),
];

/// What a movement, a family and a member may all say.
const EQUIPMENT: Key = must(
    "equipment",
    Shape::Equipment,
    "What is needed; an inner list holds alternatives.",
);

pub const MOVEMENT: &[Key] = &[
    must("movement", Shape::Id, "The movement's id."),
    must("name", Shape::Text, "The name as readers see it."),
    must("pattern", Shape::Word(Pattern::WORDS), "What it trains."),
    must(
        "position",
        Shape::Words(Position::WORDS),
        "The position, or the positions in the order passed through.",
    ),
    must(
        "load",
        Shape::Word(Load::WORDS),
        "What is moved besides the body.",
    ),
    EQUIPMENT,
    must("summary", Shape::Text, "One sentence."),
    must(
        "standard",
        Shape::Target,
        "The target at which it counts as owned.",
    ),
    may("also", Shape::Texts, "Other names."),
    may("was", Shape::Ids, "Old ids that still lead here."),
    may("arms", Shape::Word(Arms::WORDS), "How the arms carry load."),
    may(
        "arms_at",
        Shape::Word(ArmsAt::WORDS),
        "Where the arms are to the trunk, where no posture tells.",
    ),
    may(
        "phase",
        Shape::Word(Phase::WORDS),
        "Which part of a repetition is done.",
    ),
    may("each_side", Shape::Flag, "Done and tested on each side."),
    may(
        "needs",
        Shape::Needs,
        "What must be owned or reached first.",
    ),
    may("test", Shape::Record(TEST), "How the standard is tested."),
    may("exit", Shape::Text, "How to get out safely."),
    may(
        "dose",
        Shape::Target,
        "Working sets, where they differ from the school's.",
    ),
    may(
        "tempo",
        Shape::Text,
        "Seconds of each rep: lowering, pause, lifting, pause, such as 3-1-1-0.",
    ),
    may(
        "hold",
        Shape::Text,
        "Where each rep is held, and for how long, such as bottom 2 s.",
    ),
    may(
        "rest",
        Shape::Text,
        "Rest between sets in training, such as 2 min.",
    ),
    may(
        "back_when",
        Shape::Texts,
        "When to go back to the movement before it.",
    ),
    may(
        "instead",
        Shape::Records(INSTEAD),
        "What goes in its place, and when.",
    ),
    may(
        "stresses",
        Shape::Stresses,
        "Body parts that it stresses, and how: shoulder, or shoulder: straight-arm.",
    ),
    may(
        "cautions",
        Shape::Texts,
        "Caution classes beyond those that follow by themselves.",
    ),
    may("cues", Shape::Texts, "What to think of."),
    may(
        "faults",
        Shape::Records(FAULT),
        "What goes wrong, why, and what to try.",
    ),
    may(
        "leverage",
        Shape::Record(LEVERAGE),
        "A named posture, or joint angles.",
    ),
    may(
        "weeks",
        Shape::Text,
        "Usual weeks from open to owned, such as 3-8.",
    ),
    may("pictures", Shape::Records(PICTURE), "Pictures."),
    may("clip", Shape::Record(CLIP), "A clip."),
    may("sources", Shape::Texts, "Published sources."),
    may("held_back", Shape::Flag, "Proofread, but not published."),
];

/// The keys a family has besides a movement's.
pub const FAMILY_ONLY: &[Key] = &[
    must("family", Shape::Id, "The family's id."),
    must(
        "axes",
        Shape::Axes,
        "The axes, their values from easier to harder.",
    ),
    may(
        "easier_first",
        Shape::EasierFirst,
        "How easier neighbours become needs.",
    ),
    must(
        "movements",
        Shape::Named(&Shape::Anything),
        "The members by id.",
    ),
];

/// The key a member has besides a movement's.
pub const MEMBER_ONLY: &[Key] = &[must(
    "at",
    Shape::Named(&Shape::Text),
    "Its place: a value for each axis.",
)];

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

/// A family's keys: a movement's, but for the id, and its own; a family need not say the standard.
pub fn family() -> Vec<Key> {
    let shared = MOVEMENT.iter().filter(|k| k.name != "movement");
    let relaxed = shared.map(|k| {
        if k.name == "standard" {
            Key {
                required: false,
                ..*k
            }
        } else {
            *k
        }
    });
    FAMILY_ONLY.iter().copied().chain(relaxed).collect()
}

/// A member's keys: all optional but its place.
pub fn member() -> Vec<Key> {
    let shared = MOVEMENT
        .iter()
        .filter(|k| k.name != "movement")
        .map(|k| Key {
            required: false,
            ..*k
        });
    MEMBER_ONLY.iter().copied().chain(shared).collect()
}

/// The words of `easier_first`.
pub const EASIER_FIRST: &[&str] = EasierFirst::WORDS;
