//! The keys of a movement, a family and a member, and of the records inside them.

use super::{Key, Shape, may, must};
use crate::curriculum::posture::{Gear, Touch};
use crate::curriculum::words::{Arms, ArmsAt, Load, Pattern, Phase, Position, Word};

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
