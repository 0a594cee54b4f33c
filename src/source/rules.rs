//! Every rule of proof by name, with its weight and what it guards. One table; the manual and the tests read it.

/// How grave a finding is: errors stop publishing, warnings only under `--strict`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Severity {
    Error,
    Warning,
}

impl Severity {
    pub fn word(self) -> &'static str {
        match self {
            Severity::Error => "error",
            Severity::Warning => "warning",
        }
    }
}

macro_rules! rules {
    ($($id:ident $severity:ident $name:literal $says:literal;)*) => {
        /// A rule of proof.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Rule { $($id),* }

        impl Rule {
            /// All rules, in the order of the manual.
            pub const ALL: &'static [Rule] = &[$(Rule::$id),*];

            /// The name in kebab case, as findings print it.
            pub fn name(self) -> &'static str {
                match self { $(Rule::$id => $name),* }
            }

            pub fn severity(self) -> Severity {
                match self { $(Rule::$id => Severity::$severity),* }
            }

            /// One sentence for the manual.
            pub fn says(self) -> &'static str {
                match self { $(Rule::$id => $says),* }
            }
        }
    };
}

rules! {
    MissingFolder Error "missing-folder" "The folder holds no curriculum.";
    UnreadableFile Error "unreadable-file" "A file could not be read.";
    LinkOutside Error "link-outside" "A symbolic link that leads out of the curriculum's folder.";
    FileTooLarge Error "file-too-large" "A text above 4 MB, or a picture or clip above 32 MB; it is not read.";
    NotUtf8 Error "not-utf8" "A text file is not UTF-8.";
    SameFileName Error "same-file-name" "Two files whose names differ in the case of letters alone.";
    UnknownPlace Error "unknown-place" "A file lies where nothing reads it, or ends in .yml.";
    NotYaml Error "not-yaml" "A file cannot be read as YAML.";
    YamlFeature Error "yaml-feature" "Anchors, aliases, tags, merge keys and second documents are not used here.";
    YamlTooDeep Error "yaml-too-deep" "A file nests too deeply or holds too many values.";
    DuplicateKey Error "duplicate-key" "A key stands twice in one record.";
    UnknownKey Error "unknown-key" "A key that does not exist here.";
    MissingKey Error "missing-key" "A key that every such record must have.";
    WrongShape Error "wrong-shape" "A list where a text belongs, or the like.";
    TextTooLong Error "text-too-long" "A name above 200 characters, or another text above 10,000.";
    BadValue Error "bad-value" "A value that is not one of the possible ones.";
    BadId Error "bad-id" "An id of the wrong form, or a reserved one.";
    DuplicateId Error "duplicate-id" "Two records share one id.";
    OldIdInUse Error "old-id-in-use" "An old id is in use again, or claimed twice.";
    DuplicatePlace Error "duplicate-place" "Two members of a family stand at the same place.";
    UnknownAxisValue Error "unknown-axis-value" "A member names an axis or a value that its family does not have.";
    UnknownEquipment Error "unknown-equipment" "Equipment that school.yaml does not explain.";
    UnknownPart Error "unknown-part" "A body part that is not in the list.";
    UnknownCaution Error "unknown-caution" "A caution class that neither the tool nor the school has.";
    BadTarget Error "bad-target" "A target that cannot be read.";
    DifferentMeasure Error "different-measure" "Targets of one movement measure different things.";
    BadWeeks Error "bad-weeks" "A range of weeks that cannot be read or runs backwards.";
    BadAddress Error "bad-address" "An address that is not http or https.";
    BadNeed Error "bad-need" "A need of the wrong form: two keys, an empty group, a count out of range.";
    UnknownId Error "unknown-id" "An id that no record has.";
    OwnFamily Error "own-family" "A member needs its own family as a whole, or a family stands outside a choice.";
    HarderSibling Error "harder-sibling" "A member needs a sibling that is harder on every shared axis.";
    HeldBack Error "held-back" "Something published needs or links a record that is held back.";
    Loop Error "loop" "Needs run in a circle and nobody can ever start.";
    Unreachable Error "unreachable" "A movement whose needs can never be met.";
    CautionIncomplete Error "caution-incomplete" "A caution class without all its parts.";
    ExitMissing Error "exit-missing" "An inverted, lowering-only or fall-height movement without an exit.";
    BentArmsInverted Error "bent-arms-inverted" "A way out that bends the arms of a body upside down on straight arms; read in English.";
    PostureInverted Error "posture-inverted" "A posture that is more inverted than the position declared.";
    PostureOpen Error "posture-open" "A posture that cannot close on what it touches.";
    PostureThrough Error "posture-through" "A posture that goes through the floor, the bar, a wall or itself.";
    BadPosture Error "bad-posture" "A posture that cannot be read.";
    BrokenLink Error "broken-link" "A link in a note that leads nowhere.";
    BrokenReference Error "broken-reference" "A Markdown reference without its definition.";
    LinkScheme Error "link-scheme" "A link that is neither to the curriculum nor to an outside page.";
    MissingPicture Error "missing-picture" "A picture that is not in the folder, or whose name differs in case.";
    MissingAlt Error "missing-alt" "A picture or clip without alternative text.";
    UnsafePicture Error "unsafe-picture" "An SVG picture with script, handlers, outside references, an encoding but UTF-8, or too many copies of a part.";
    BrokenPicture Warning "broken-picture" "A photograph or clip that ends too early, cannot be shown, or is not what its name says.";
    PictureKind Warning "picture-kind" "A picture or clip from which the place it was taken cannot be removed.";
    ClipPoster Warning "clip-poster" "A clip without a still picture to show before it plays.";
    NoteWithoutOwner Error "note-without-owner" "A note that belongs to no record.";
    TwoNotes Error "two-notes" "Two notes for one id.";
    TempoUnfit Warning "tempo-unfit" "A tempo or a hold on what is not counted in reps, beside each other, or beside seconds of a rep that say otherwise.";
    WarmUpUnsaid Warning "warm-up-unsaid" "A line of a warm-up that does not say which parts it stresses: it would stand whatever rests.";
    InsteadIdle Warning "instead-idle" "Something goes in a movement's place for a part, a class or equipment that it does not have.";
    InsteadNoBetter Warning "instead-no-better" "What goes in a movement's place for a part, a class or equipment has it as well.";
    BadSession Error "bad-session" "A session line that cannot be read.";
    UnknownPlaceholder Error "unknown-placeholder" "A text of the interface with a placeholder or link that nothing fills.";
    SignalWord Error "signal-word" "A signal word that is not agreed for its language, or a text about safety that nobody sees.";
    MissingPlaceholder Error "missing-placeholder" "A text of the interface that leaves out what it should say.";
    BadLedger Error "bad-ledger" "The ledger cannot be read.";
    Loosening Error "loosening" "Something asks less of a body than the last publish, and no note says why.";
    ResultsVersion Error "results-version" "A results file of an unknown version.";
    BadResult Error "bad-result" "A result, a set or a pause that cannot be read.";
    BadDay Error "bad-day" "A day that is not in the calendar.";
    BadBodyWeight Error "bad-body-weight" "A body weight of 0, or one that cannot be read.";
    BadClass Error "bad-class" "A row of a class that cannot be read.";
    OneSide Warning "one-side" "A result with one side only; it is kept aside.";
    UnknownTested Warning "unknown-tested" "A result or a pause of a movement that this curriculum does not have; it is kept aside.";
    UnknownGoal Warning "unknown-goal" "A goal that is neither a skill nor a movement; none counts as chosen.";
    UnknownHave Warning "unknown-have" "Equipment at hand that the school has no word for.";
    UnfinishedText Warning "unfinished-text" "A text on which somebody’s safety hangs that still says `todo`.";
    BareNumber Warning "bare-number" "A standard without a unit, which is read as reps: a large one, or one beside a dose in seconds.";
    StrayQuotes Warning "stray-quotes" "Typographic quotes around a whole text, which are a part of it.";
    DoseAboveStandard Warning "dose-above-standard" "A set of the dose that asks more than a set of the standard.";
    InvertedWithoutNeeds Warning "inverted-without-needs" "A movement upside down that needs nothing first.";
    NoAxisValue Warning "no-axis-value" "A member of a family without a value on one of its axes.";
    ImpliedNeed Warning "implied-need" "A need that another need already implies.";
    Leap Warning "leap" "A step too large to recommend.";
    NoEasierNeighbour Warning "no-easier-neighbour" "A family member that is not easiest and has no easier neighbour.";
    UnusedMovement Warning "unused-movement" "A movement that no skill uses.";
    SameName Warning "same-name" "Two movements of one name.";
    UnmeasurableStandard Warning "unmeasurable-standard" "A standard that the listed equipment cannot measure.";
    NoTest Warning "no-test" "A movement without a test.";
    NoCue Warning "no-cue" "A movement without a cue.";
    NoFault Warning "no-fault" "A movement without a fault.";
    UnlinkedNote Warning "unlinked-note" "A note that no other note links.";
    NoGroundTest Warning "no-ground-test" "A skill whose chain holds no test at the ground.";
    NoExitMovement Warning "no-exit-movement" "Free inverted work whose chain holds no exit movement.";
    ExitUntaught Warning "exit-untaught" "A way out that is a skill of its own, such as a roll, which nothing needed teaches; read in English.";
    MissingWords Warning "missing-words" "The interface says something in English, because the language has no word for it.";
    RawHtml Warning "raw-html" "HTML in a note; it is shown as text.";
}
