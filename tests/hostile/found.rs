//! Inputs that once failed, by name.

use super::check;
use rungbook::curriculum::Target;
use rungbook::curriculum::caution::{Book, Part};
use rungbook::proof::proofread;
use rungbook::source::Snapshot;
use std::sync::mpsc;
use std::thread;
use std::time::Duration;

const SCHOOL: (&str, &str) = (
    "content/school.yaml",
    "school: Room\naddress: https://room.example/\nlanguage: en\nunits: metric\n",
);

fn movement(id: &str, rest: &str) -> String {
    format!(
        "movement: {id}\nname: Same\npattern: core\nposition: inverted\nload: body\nequipment: []\nsummary: Hold {id}.\nstandard: 30 s\nexit: Down.\n{rest}"
    )
}

/// The rules of the errors.
fn errors(files: &Snapshot) -> Vec<&'static str> {
    let found = proofread(files).findings;
    let grave = found
        .iter()
        .filter(|f| f.severity() == rungbook::source::Severity::Error);
    grave.map(|f| f.rule.name()).collect()
}

/// Each letter that begins several words doubled the ways to read the rest.
#[test]
fn a_long_run_of_letters_is_no_target_at_once() {
    for run in [
        "seconds".repeat(30),
        "lbs".repeat(60),
        "s".repeat(3_000_000),
    ] {
        // Years, before: a minute only ends the wait.
        let (found, refused) = mpsc::channel();
        thread::spawn(move || found.send(Target::read(&format!("5 {run}z")).is_err()));
        assert_eq!(refused.recv_timeout(Duration::from_secs(60)), Ok(true));
    }
    let longest = Target::read("20secondseachside").expect("words without blanks");
    assert_eq!(longest.to_string(), "20 s each side");
}

/// Minutes and inches became more seconds and centimetres than can be written again.
#[test]
fn an_amount_beyond_the_largest_is_refused_in_every_unit() {
    for text in ["1667 min", "39371 in", "at most 100000 in", "100001 s"] {
        let error = Target::read(text).expect_err(text);
        assert!(!error.help.is_empty());
    }
    for text in ["1666 min", "39370 in"] {
        let target = Target::read(text).expect(text);
        let again = Target::read(&target.to_string()).expect("its own form");
        assert!(again.same_value(&target));
    }
}

/// The old id led to a skill by its number among all skills, those that cannot stand too.
#[test]
fn the_old_id_of_a_skill_that_cannot_stand_leads_nowhere() {
    let one = movement("one", "");
    let files = Snapshot::of_texts([
        SCHOOL,
        ("content/movements/one.yaml", one.as_str()),
        (
            "content/skills/a.yaml",
            "skill: a\nname: A\ngoal: nobody\nwas: [old-a]\n",
        ),
        (
            "content/skills/b.yaml",
            "skill: b\nname: B\ngoal: one\nwas: [old-b]\n",
        ),
    ]);
    assert_eq!(errors(&files), ["unknown-id"]);
    let curriculum = proofread(&files).curriculum;
    let old: Vec<(String, String)> = curriculum
        .old_ids()
        .map(|(old, owner)| (old.to_string(), curriculum.id_of(owner).to_string()))
        .collect();
    assert_eq!(old, [("old-b".to_string(), "b".to_string())]);
    check::curriculum(&files, 1, true).expect("it holds");
}

/// The audit asked for the mark of one of two movements where the other was named.
#[test]
fn two_movements_of_one_name_are_published() {
    let (one, two) = (movement("one", ""), movement("two", ""));
    let files = Snapshot::of_texts([
        SCHOOL,
        ("content/movements/one.yaml", one.as_str()),
        ("content/movements/two.yaml", two.as_str()),
        ("content/skills/s.yaml", "skill: s\nname: S\ngoal: one\n"),
    ]);
    assert!(errors(&files).is_empty());
    check::curriculum(&files, 1, true).expect("it holds");
}

/// The class `equipment` bears the name of a page, which is no id.
#[test]
fn every_shipped_caution_can_be_reworded() {
    let book = Book::default();
    for class in book.classes() {
        let text = format!("{}: {{ ask_first: Ask me. }}\n", class.id);
        let files = Snapshot::of_texts([SCHOOL, ("content/cautions.yaml", text.as_str())]);
        assert!(errors(&files).is_empty(), "{}", class.id);
        let book = proofread(&files).curriculum;
        let ix = book
            .cautions()
            .find(class.id.as_str())
            .expect("it is shipped");
        assert_eq!(book.cautions().class(ix).part(Part::AskFirst), "Ask me.");
    }
}

/// Characters that JSON leaves bare and YAML does not read, and blanks round the words.
#[test]
fn odd_notes_stand_in_the_ledger_as_they_are() {
    let one = movement("one", "");
    let files = Snapshot::of_texts([SCHOOL, ("content/movements/one.yaml", one.as_str())]);
    let curriculum = proofread(&files).curriculum;
    for note in [
        "\u{7f}",
        "a\u{85}b",
        "\u{feff}a",
        "a\u{2028}b",
        " a ",
        "a\n\nb",
        "a\u{0}b",
        "~",
        "null",
        "- a: b #c",
        "\u{1b}[31m",
        "\u{ffff}",
    ] {
        check::ledger(&curriculum, note).expect(note);
    }
}

/// An id in the ledger was written again as it stood there.
#[test]
fn the_ledger_takes_no_id_that_is_none() {
    for line in [
        "stands: { \"p{lank\": { standard: 60 s, cautions: [] } }",
        "stands: { plank: { standard: 60 s, cautions: [\"a, b\"] } }",
        "published: [{ on: 2026-01-01, note: A., changes: [{ movement: \"a}b\", added: true }] }]",
        "published: [{ on: 2026-01-01, note: A., changes: [{ movement: a, renamed: \"b: c\" }] }]",
    ] {
        let text = format!("ledger: 1\n{line}\n");
        let files = Snapshot::of_texts([SCHOOL, ("content/ledger.yaml", text.as_str())]);
        assert_eq!(errors(&files), ["bad-ledger"], "{line}");
        check::curriculum(&files, 1, true).expect("it holds");
    }
}

/// The place within a cell was counted from the row where the cell was not found as it is read.
#[test]
fn a_cell_of_several_lines_has_a_place() {
    for text in [
        "name,movement,got\né,plank,\"x,\né\"\n",
        "name,movement,got\né,plank,\"5 \"\"é,\"\n",
    ] {
        check::results("r.csv", text, &super::PROOF).expect(text);
    }
}
