//! The closed lists of trade words: patterns, positions, loads, arms, phases, body parts.

/// A closed list of words.
pub trait Word: Sized + Copy + 'static {
    /// The words that may be typed.
    const WORDS: &'static [&'static str];
    /// What such a word is called in messages.
    const WHAT: &'static str;

    fn word(self) -> &'static str;

    fn read(text: &str) -> Option<Self>;
}

macro_rules! words {
    ($(#[$doc:meta])* $name:ident $what:literal { $($id:ident $word:literal),* $(,)? }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum $name { $($id),* }

        impl $name {
            pub const ALL: &'static [$name] = &[$($name::$id),*];
        }

        impl Word for $name {
            const WORDS: &'static [&'static str] = &[$($word),*];
            const WHAT: &'static str = $what;

            fn word(self) -> &'static str {
                match self { $($name::$id => $word),* }
            }

            fn read(text: &str) -> Option<$name> {
                match text { $($word => Some($name::$id),)* _ => None }
            }
        }
    };
}

words! {
    /// What a movement trains, by the direction of its effort.
    Pattern "pattern" {
        VerticalPush "vertical push", VerticalPull "vertical pull", HorizontalPush "horizontal push", HorizontalPull "horizontal pull",
        Squat "squat", Hinge "hinge", Carry "carry", Core "core", Balance "balance", Mobility "mobility", Exit "exit",
    }
}

words! {
    /// How the body stands to gravity. Part-inverted: the head below the hips. Inverted: the hips above the head, and hands or
    /// head carry the body; an inverted hang too.
    Position "position" {
        Upright "upright", Hanging "hanging", Support "support", Prone "prone", Supine "supine", Side "side", Bridge "bridge",
        PartInverted "part-inverted", Inverted "inverted",
    }
}

words! {
    /// What is moved besides the body.
    Load "load" { None "none", Assisted "assisted", Body "body", Added "added" }
}

words! {
    /// How the arms carry load.
    Arms "arms" { Straight "straight", Bent "bent" }
}

words! {
    /// Which part of a repetition is done.
    Phase "phase" { Hold "hold", Lowering "lowering", Raising "raising", Full "full" }
}

words! {
    /// Where the arms are to the trunk, for a movement without a posture.
    ArmsAt "place of the arms" { Overhead "overhead", Front "front", Side "side", Behind "behind" }
}

words! {
    /// The caution classes that ship with the tool, in the order of the cautions page.
    Shipped "caution class" {
        Inverted "inverted", PartInverted "part-inverted", Supine "supine", Prone "prone", Loaded "loaded", StraightArm "straight-arm",
        Lowering "lowering", Overhead "overhead", WristExtension "wrist-extension", ShoulderExtension "shoulder-extension",
        SpineExtension "spine-extension", DeepKneeFlexion "deep-knee-flexion", Rolling "rolling", NeckLoad "neck-load",
        BreathHolding "breath-holding", FallHeight "fall-height", Momentum "momentum", Equipment "equipment", Alone "alone",
    }
}

words! {
    /// The parts of a caution class that a school may reword, by the key that `cautions.yaml` uses.
    Part "part of a caution" {
        Happens "happens", AskFirst "ask_first", SetUp "set_up", BailOut "bail_out", Stop "stop",
    }
}

words! {
    /// Parts of the body that a movement stresses and that a pause may name.
    BodyPart "body part" {
        Neck "neck", Shoulder "shoulder", Elbow "elbow", Wrist "wrist", Fingers "fingers", UpperBack "upper-back",
        LowerBack "lower-back", Hip "hip", Hamstring "hamstring", Knee "knee", Ankle "ankle", Foot "foot",
    }
}

words! {
    /// How a movement stresses a part. The last three are heavy.
    How "way to stress a part" {
        Light "light", Stretched "stretched", Loaded "loaded", StraightArm "straight-arm", Lowering "lowering",
    }
}

words! {
    /// Where a rep is held.
    End "end of a rep" { Bottom "bottom", Top "top" }
}

words! {
    /// What a pain may come with that sends to a clinician whatever its number.
    PainSign "sign" { Sharp "sharp", Night "night", Numb "numb", GivingWay "giving-way" }
}

words! {
    /// The days of the week, as a results file names them.
    Weekday "day of the week" { Mon "mon", Tue "tue", Wed "wed", Thu "thu", Fri "fri", Sat "sat", Sun "sun" }
}

words! {
    /// What the health questions came to: train, train lightly, or ask a clinician first.
    Screening "word for what the health questions came to" { Clear "clear", Light "light", Ask "ask" }
}

words! {
    /// The reader's units.
    Units "units" { Metric "metric", Imperial "imperial" }
}

words! {
    /// When skill practice comes: before or after the working sets.
    Practice "practice" { Before "before", After "after" }
}

words! {
    /// How the easier neighbours of a family member become needs.
    EasierFirst "easier_first" { All "all", Any "any", None "none" }
}
