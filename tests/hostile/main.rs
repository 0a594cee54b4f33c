//! Nothing that is typed makes the program panic, lose a place, or publish what its own audit refuses.
//!
//! The usual run takes a few cases of each property, always the same. `RUNGBOOK_CASES=20000 cargo test --release --test hostile`
//! takes many, `RUNGBOOK_SEED=2` others. What once failed stands in `tests/suite` or as a named case in `found.rs`.

mod check;
mod damage;
#[path = "../dice/mod.rs"]
mod dice;
mod found;
mod pieces;
mod records;
mod size;

use damage::{apply, damage};
use pieces::{PIECES, VALUES};
use proptest::prelude::*;
use proptest::test_runner::{TestCaseError, TestRunner};
use rungbook::curriculum::target::Got;
use rungbook::curriculum::{Id, Target};
use rungbook::proof::{Proofread, proofread};
use rungbook::source::{Content, Snapshot, SourceFile};
use std::path::Path;
use std::sync::LazyLock;

static SHIPPED: LazyLock<Vec<SourceFile>> = LazyLock::new(|| {
    let snapshot = rungbook::io::snapshot(Path::new(env!("CARGO_MANIFEST_DIR")))
        .expect("the repository is a curriculum");
    let own = snapshot
        .files()
        .filter(|(_, f)| f.path.starts_with("content/"));
    own.map(|(_, f)| f.clone()).collect()
});

static PROOF: LazyLock<Proofread> = LazyLock::new(|| proofread(&Snapshot::new(SHIPPED.clone())));

/// A few small files that use every kind of record and key.
fn small() -> Vec<SourceFile> {
    let texts = [records::RECORDS, records::NOTES].concat();
    let filled = records::filled(&texts, |n| format!("Words {n}"));
    let file = |(path, text)| SourceFile {
        path,
        content: Content::Text(text),
    };
    filled.into_iter().map(file).collect()
}

fn sound(result: Result<(), String>) -> Result<(), TestCaseError> {
    result.map_err(TestCaseError::fail)
}

#[test]
fn the_small_curriculum_is_sound() {
    let files = Snapshot::new(small());
    let proof = proofread(&files);
    let errors = rungbook::command::report::some(proof.findings.iter(), &files);
    assert!(!proof.findings.has_errors(), "{errors}");
    check::curriculum(&files, 1, true).expect("it holds");
}

proptest! {
    #![proptest_config(dice::config(60))]

    #[test]
    fn the_shipped_curriculum_damaged(blows in damage(8), share in 29..60_usize) {
        let mut files = SHIPPED.clone();
        apply(&mut files, &blows);
        sound(check::curriculum(&Snapshot::new(files), share, false))?;
    }
}

proptest! {
    #![proptest_config(dice::config(150))]

    #[test]
    fn a_small_curriculum_damaged(blows in damage(10), share in 1..9_usize) {
        let mut files = small();
        // Words of one's own need a theme of their own, which takes time.
        if share == 1 && blows.len() < 3 {
            let (path, text) = records::WORDS;
            files.push(SourceFile { path: path.into(), content: Content::Text(text.into()) });
        }
        apply(&mut files, &blows);
        sound(check::curriculum(&Snapshot::new(files), share, false))?;
    }

    #[test]
    fn records_made_from_the_key_tables(seed in any::<u64>()) {
        sound(check::curriculum(&Snapshot::new(records::random(seed)), 5, true))?;
    }
}

proptest! {
    #![proptest_config(dice::config(1500))]

    #[test]
    fn any_text_is_a_target_or_an_error_with_a_place(text in words()) {
        match Target::read(&text) {
            Ok(target) => {
                let again = Target::read(&target.to_string());
                prop_assert_eq!(again.as_ref().ok().map(|t| t.same_value(&target)), Some(true), "{}", target);
            }
            Err(error) => {
                prop_assert!(!error.help.is_empty() && !error.message.is_empty());
                prop_assert!(error.at.start <= error.at.end && error.at.end <= text.len());
                prop_assert!(text.is_char_boundary(error.at.start) && text.is_char_boundary(error.at.end));
            }
        }
        if let Ok(got) = Got::read(&text) {
            let shown = got.to_string();
            prop_assert_eq!(Got::read(&shown).map(|g| g.to_string()).ok(), Some(shown));
        }
    }

    #[test]
    fn targets_are_ordered_as_they_ask(a in target(), b in target(), c in target()) {
        prop_assert!(a.asks_at_least(&a));
        if a.asks_at_least(&b) && b.asks_at_least(&c) && a.tries().is_some() == c.tries().is_some() {
            prop_assert!(a.asks_at_least(&c), "{} {} {}", a, b, c);
        }
        if a.compares_with(&b) && a.asks_at_least(&b) && b.asks_at_least(&a) && a.tries().is_some() == b.tries().is_some() {
            prop_assert!(a.tries().is_some() || a.same_value(&b), "{} {}", a, b);
        }
    }

    #[test]
    fn any_text_is_an_id_or_told_what_to_type(text in prop_oneof!["[a-zA-Z0-9 _-]{0,70}", "\\PC{0,20}", words()]) {
        match Id::new(&text) {
            Err((message, help)) => prop_assert!(!message.is_empty() && !help.is_empty()),
            Ok(id) => {
                let plain = id.as_str().bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-');
                prop_assert!(plain && id.as_str() == text && text.len() < 100, "{}", text);
            }
        }
    }
}

proptest! {
    #![proptest_config(dice::config(200))]

    #[test]
    fn any_words_go_into_the_ledger_and_come_back(text in prop_oneof!["\\PC{0,40}", "[\\x00-\\x7f]{0,30}", any::<String>(), words()]) {
        prop_assume!(!text.trim().is_empty());
        sound(check::ledger(&PROOF.curriculum, &text))?;
    }
}

/// Words of targets in any order, and odd ones between.
fn words() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        3 => prop::sample::select(&["5", "x", " reps", " rep", " of ", " s", " min", " in ", "3", " tries", " with ", " kg", " lb", " bw",
            " help", " cm", " deg", "done", "not ", "at most ", " each side", "×", "0.5", "100000", "1.2345678", ".", ",", "-"][..]),
        1 => prop::sample::select(PIECES),
        1 => prop::sample::select(VALUES),
    ];
    prop_oneof![
        6 => prop::collection::vec(piece, 0..8).prop_map(|v| v.concat()),
        1 => ".{0,24}",
        1 => prop::sample::select(VALUES).prop_map(str::to_string),
    ]
}

/// Targets in kilograms or without load, of every measure.
fn target() -> impl Strategy<Value = Target> {
    let text = prop_oneof![
        (1..4u32, 1..9u32).prop_map(|(s, r)| format!("{s}x{r}")),
        (1..9u32, 1..5u32, 0..3u32).prop_map(|(r, s, k)| format!("{r} reps of {s} s with {k} kg")),
        (1..9u32, 0..3u32).prop_map(|(r, k)| format!("{r} reps with {k} kg help")),
        (1..60u32).prop_map(|s| format!("{s} s")),
        (1..60u32, 1..4u32).prop_map(|(s, h)| format!("{s} s in {h} of 4 tries")),
        (0..9u32).prop_map(|c| format!("at most {c} cm")),
        (1..9u32).prop_map(|c| format!("{c} cm")),
    ];
    text.prop_map(|t| Target::read(&t).unwrap_or_else(|e| panic!("{t}: {e:?}")))
}

/// Results files with damage, in all three forms.
#[test]
fn damaged_results_never_panic() {
    let sound_ones: Vec<SourceFile> = records::filled(records::RESULTS, |n| format!("Words {n}"))
        .into_iter()
        .map(|(path, text)| SourceFile {
            path,
            content: Content::Text(text),
        })
        .collect();
    let cases = (0..sound_ones.len(), damage(6));
    TestRunner::new(dice::config(700))
        .run(&cases, |(which, blows)| {
            let mut files = vec![sound_ones[which].clone()];
            apply(&mut files, &blows);
            for file in &files {
                if let Content::Text(text) = &file.content {
                    sound(check::results(&file.path, text, &PROOF))?;
                }
            }
            Ok(())
        })
        .unwrap_or_else(|e| panic!("{e}"));
}
