//! Changes one after the other: after each, the site and the findings are those of a fresh start, byte for byte.

mod dice;

use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use rungbook::site::{self, Outcome};
use rungbook::source::{Content, FileId, Snapshot};
use std::cell::Cell;
use std::path::Path;

/// How a file is edited.
#[derive(Clone, Debug)]
struct Edit {
    file: usize,
    at: usize,
    how: usize,
}

fn edits() -> impl Strategy<Value = Vec<Edit>> {
    let edit = (any::<usize>(), any::<usize>(), any::<usize>());
    let edit = edit.prop_map(|(file, at, how)| Edit { file, at, how });
    prop::collection::vec(edit, 1..12)
}

/// The lines of a text, one of them changed; what a coach may do, right or wrong.
fn edited(text: &str, edit: &Edit) -> String {
    let mut lines: Vec<String> = text.lines().map(str::to_string).collect();
    let at = edit.at % lines.len().max(1);
    let change = |from: &str, to: &str| text.replacen(from, to, 1);
    match edit.how % 20 {
        0 => change("standard: ", "standard: 1"),
        1 => change(" reps", " reps with 5 kg"),
        2 => change("weeks: 2", "weeks: 3"),
        3 => change("summary: ", "summary: Again, "),
        4 => change("load: body", "load: added"),
        5 => change("position: prone", "position: inverted"),
        6 => change("cues:\n", "cues:\n  - One cue more.\n"),
        7 => change("any of:", "all of:"),
        8 => change("stresses: [", "stresses: [neck, "),
        9 => format!("{text}\n\nA line more, see [](movement:dead-hang).\n"),
        10 => format!("{text}\n\n## A part more\n\nWords.\n"),
        11 => change("movement:", "movment:"),
        12 => {
            lines.remove(at);
            lines.join("\n") + "\n"
        }
        13 => {
            let line = lines[at].clone();
            lines.insert(at, line);
            lines.join("\n") + "\n"
        }
        14 => change("name: ", "name: New "),
        15 => change("weeks: ", "rest: 90 s\nweeks: "),
        16 => change("tempo: 3-1", "tempo: 2-2"),
        17 => change("{ for: wrist, do: ", "{ for: elbow, do: "),
        18 => change("stresses: [shoulder", "stresses: [shoulder: loaded"),
        _ => change(": 5 ", ": 6 "),
    }
}

fn shipped() -> Snapshot {
    let from = Path::new(env!("CARGO_MANIFEST_DIR"));
    rungbook::io::snapshot(from).expect("the repository is a curriculum")
}

/// Every file of the site as a fresh publish makes it, against what the rehearsal shows; but for pictures, which take long and
/// are made of the same parts.
fn same_site(now: &Outcome) -> Result<(), TestCaseError> {
    let snapshot = now.snapshot();
    let built = site::build(snapshot, &site::Options::default());
    let fresh = built.proof();
    let findings = |p: &rungbook::proof::Proofread| p.findings.iter().cloned().collect::<Vec<_>>();
    prop_assert_eq!(findings(now.proof()), findings(fresh));
    prop_assert!(now.proof().curriculum == fresh.curriculum);
    prop_assert!(now.proof().resolved.stages == fresh.resolved.stages);
    if fresh.findings.has_errors() {
        return Ok(());
    }
    let plan = built.renderer().expect("a site");
    let again = now.renderer().expect("a site");
    prop_assert_eq!(plan.len(), again.len());
    // The worker is made of all other files, the drawn ones too: they are compared one by one.
    let compared = |i: &usize| !plan.is_drawn(*i) && *i != plan.last();
    for i in (0..plan.len()).filter(compared) {
        let (one, other) = (
            plan.render(i).expect("a file"),
            again.render(i).expect("a file"),
        );
        prop_assert!(one == other, "{} differs", one.path);
    }
    Ok(())
}

#[test]
fn after_any_edits_the_site_is_that_of_a_fresh_start() {
    let snapshot = shipped();
    let text_files: Vec<FileId> = snapshot
        .files()
        .filter(|(_, f)| matches!(&f.content, Content::Text(_)) && f.path.starts_with("content/"))
        .map(|(id, _)| id)
        .collect();
    let movements: Vec<FileId> = text_files
        .iter()
        .copied()
        .filter(|id| snapshot.path(*id).starts_with("content/movements/"))
        .collect();
    let mut runner = TestRunner::new(dice::config(6));
    // How often one file was read anew, and how often the whole folder.
    let (quick, whole) = (Cell::new(0usize), Cell::new(0usize));
    let result = runner.run(&edits(), |edits| {
        let mut now = site::build(&snapshot, &site::Options::default());
        let mut undo: Vec<(FileId, Content)> = Vec::new();
        for edit in &edits {
            // Definitions are edited as often as everything else together.
            let of = [&text_files, &movements][edit.at % 2];
            let file = of[edit.file % of.len()];
            let text = now.snapshot().text(file).to_string();
            let new = edited(&text, edit);
            let step = match undo.pop() {
                // A mistake is mended by the next save.
                Some(mend) if now.proof().findings.has_errors() => vec![mend],
                _ => {
                    undo = vec![(file, Content::Text(text))];
                    vec![(file, Content::Text(new))]
                }
            };
            let (after, was_quick) = now.changed_and_how(step);
            now = after;
            let count = if was_quick { &quick } else { &whole };
            count.set(count.get() + 1);
            same_site(&now)?;
        }
        Ok(())
    });
    if let Err(error) = result {
        panic!("{error}");
    }
    println!(
        "{} files read anew, {} whole folders",
        quick.get(),
        whole.get()
    );
    assert!(quick.get() > 10 && whole.get() > 10);
}
