//! Nothing that is typed makes the program panic: shipped files with random damage, and random texts as targets and ids.

mod dice;

use proptest::prelude::*;
use rungbook::curriculum::{Id, Target};
use rungbook::proof::proofread;
use rungbook::site::{Plan, Theme};
use rungbook::source::{Content, Snapshot, SourceFile};
use std::path::Path;
use std::sync::LazyLock;

static SHIPPED: LazyLock<Vec<SourceFile>> = LazyLock::new(|| {
    let snapshot = rungbook::io::snapshot(Path::new(env!("CARGO_MANIFEST_DIR")))
        .expect("the repository is a curriculum");
    snapshot.files().map(|(_, f)| f.clone()).collect()
});

/// Pieces that hurt: structure, odd characters, half words.
const PIECES: &[&str] = &[
    "\n",
    ":",
    "- ",
    "  ",
    "[",
    "]",
    "{",
    "}",
    "\"",
    "'",
    "#",
    "&a",
    "*a",
    "!t",
    "<<: ",
    "---\n",
    "\t",
    "é",
    "\u{feff}",
    "\u{0}",
    "5x5",
    "at most",
    "needs:",
    "any of:",
    "at least 9 of:",
    "family: rows",
    "x",
    "~",
    "null",
    "|",
    ">",
    "](movement:",
    "```session\n",
    "<b>",
    "🙂",
    "%",
    "\r\n",
    "1e9",
    "-1",
];

#[derive(Clone, Debug)]
struct Damage {
    file: usize,
    at: usize,
    cut: usize,
    piece: usize,
}

fn damage() -> impl Strategy<Value = Vec<Damage>> {
    let one = (any::<usize>(), any::<usize>(), 0..12usize, any::<usize>()).prop_map(
        |(file, at, cut, piece)| Damage {
            file,
            at,
            cut,
            piece,
        },
    );
    prop::collection::vec(one, 1..8)
}

fn apply(all: &[Damage]) -> Snapshot {
    let mut files = SHIPPED.clone();
    for d in all {
        let index = d.file % files.len();
        let Content::Text(text) = &mut files[index].content else {
            continue;
        };
        let mut from = d.at % (text.len() + 1);
        while !text.is_char_boundary(from) {
            from -= 1;
        }
        let mut to = (from + d.cut).min(text.len());
        while !text.is_char_boundary(to) {
            to += 1;
        }
        text.replace_range(from..to, PIECES[d.piece % PIECES.len()]);
    }
    Snapshot::new(files)
}

proptest! {
    #![proptest_config(dice::config(150))]

    #[test]
    fn damaged_curricula_give_findings_with_places(all in damage()) {
        let snapshot = apply(&all);
        let proof = proofread(&snapshot);
        for finding in proof.findings.iter() {
            let (line, column) = snapshot.place(finding.span.file, finding.span.start);
            prop_assert!(line >= 1 && column >= 1);
            prop_assert!(!finding.message.is_empty() && !finding.message.ends_with('.'));
            prop_assert!(!finding.help.is_empty(), "{} has no help", finding.rule.name());
            let text = snapshot.text(finding.span.file);
            prop_assert!(text.is_char_boundary((finding.span.start as usize).min(text.len())), "{:?}", finding);
        }
        // What stands can be rendered, or the theme says why not.
        if let Ok(theme) = Theme::load("chalk", &snapshot)
            && let Ok(plan) = Plan::new(&proof, &snapshot, &theme)
        {
            for i in (all[0].at % 7..plan.len()).step_by(37) {
                let _ = plan.render(i);
            }
        }
    }

    #[test]
    fn any_text_is_a_target_or_an_error_with_a_place(text in ".{0,24}") {
        match Target::read(&text) {
            Ok(target) => {
                let again = Target::read(&target.to_string());
                prop_assert_eq!(again.as_ref().ok().map(|t| t.same_value(&target)), Some(true), "{}", target);
            }
            Err(error) => {
                prop_assert!(error.at.start <= error.at.end && error.at.end <= text.len());
                prop_assert!(text.is_char_boundary(error.at.start) && text.is_char_boundary(error.at.end));
            }
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
    fn any_text_is_an_id_or_told_what_to_type(text in "[a-zA-Z0-9 _-]{0,70}") {
        if let Err((message, help)) = Id::new(&text) {
            prop_assert!(!message.is_empty() && !help.is_empty());
        }
    }
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

/// Results files with random damage, in all three forms.
#[test]
fn damaged_results_never_panic() {
    use rungbook::curriculum::Day;
    use rungbook::{readiness, results, strength};
    let snapshot = Snapshot::new(SHIPPED.clone());
    let proof = proofread(&snapshot);
    let today = Day::read("2026-10-10").expect("a day");
    let sound = [
        (
            "r.yaml",
            "results: 1\nname: A\nbodyweight: 72 kg\nhave: [bar]\ntested:\n  - { movement: push-up, got: 9 reps, on: 2026-10-01 }\n  - { movement: single-leg-squat, left: 5 reps, right: 3 reps }\ntrained:\n  - { movement: bar-dip, did: [5, 5, 5], with: 2.5 kg, in_reserve: 2, on: 2026-10-05 }\npaused:\n  - { part: shoulder, on: 2026-10-06, until: 2026-10-20 }\n",
        ),
        (
            "r.json",
            "{ \"results\": 1, \"bodyweight\": \"160 lb\", \"tested\": [ { \"movement\": \"pull-up\", \"got\": \"5 reps with 0.25 bw\", \"on\": \"2026-10-03\", \"in_reserve\": 1 } ], \"paused\": [ { \"movement\": \"dead-hang\" } ] }",
        ),
        (
            "r.csv",
            "name,movement,got,on,in_reserve\nAna,push-up,12 reps,2026-10-09,\nBen,plank,\"60 s\",2026-10-09,1\n",
        ),
    ];
    let damage = (
        0..sound.len(),
        proptest::collection::vec((0..400_usize, 0..PIECES.len(), 0..6_usize), 1..6),
    );
    let mut runner = proptest::test_runner::TestRunner::new(dice::config(600));
    runner
        .run(&damage, |(which, wounds)| {
            let (name, text) = sound[which];
            let mut text = text.to_string();
            for (at, piece, gone) in wounds {
                let mut start = at % (text.len() + 1);
                while !text.is_char_boundary(start) {
                    start -= 1;
                }
                let mut end = (start + gone).min(text.len());
                while !text.is_char_boundary(end) {
                    end += 1;
                }
                text.replace_range(start..end, PIECES[piece]);
            }
            let files = Snapshot::of_texts([(name, text.as_str())]);
            let (people, found) = results::read(&files, &proof.curriculum, today);
            for finding in found.iter() {
                let _ = files.place(finding.span.file, finding.span.start);
                let _ = files.slice(finding.span);
            }
            for person in &people {
                let list: Vec<_> = proof.curriculum.published().map(|(ix, _)| ix).collect();
                let standing = readiness::assess(&proof.curriculum, &proof.stages, person, today);
                let working = strength::working(
                    &proof.curriculum,
                    &proof.stages,
                    person,
                    &standing,
                    &list,
                    today,
                );
                strength::plan(&proof.curriculum, &working, today);
            }
            Ok(())
        })
        .expect("nothing panics");
}
