//! Renaming: every record of the shipped curriculum under another id, and back by hand; comments and layout stay.

use rungbook::curriculum::Owner;
use rungbook::proof::proofread;
use rungbook::rename::{after, rename};
use rungbook::source::Snapshot;
use std::path::Path;

fn shipped() -> Snapshot {
    rungbook::io::snapshot(Path::new(env!("CARGO_MANIFEST_DIR"))).expect("the shipped curriculum")
}

/// Every movement, family and skill can be renamed: the result has the same findings, knows the old id, and differs from the
/// files before in nothing but the id and `was`.
#[test]
fn every_shipped_record_can_be_renamed() {
    let snapshot = shipped();
    let proof = proofread(&snapshot);
    let curriculum = &proof.curriculum;
    let ids: Vec<String> = curriculum
        .ids()
        .filter(|id| !matches!(curriculum.find(id), Some(Owner::Page(_)) | None))
        .map(str::to_string)
        .collect();
    assert!(ids.len() > 100, "only {} records", ids.len());
    // Every fifth in the usual run: each is proofread whole.
    let step = if std::env::var_os("RUNGBOOK_CASES").is_some() {
        1
    } else {
        5
    };
    for id in ids.iter().step_by(step) {
        let new = format!("zz-{id}-zz");
        let renamed = rename(&snapshot, &proof, id, &new)
            .unwrap_or_else(|r| panic!("{id}: {} ({})", r.why, r.help));
        assert!(renamed.places > 0, "{id}");
        for (path, text) in &renamed.texts {
            let old = snapshot.text(snapshot.find(path).expect("a file"));
            let back = text
                .replace(&format!("\nwas: [{id}]\n"), "\n")
                .replace(&format!("was: [{id}], "), "")
                .replace(&format!("[{id}, "), "[")
                .replace(&new, id);
            let back: String = back
                .lines()
                .filter(|line| line.trim() != format!("was: [{id}]"))
                .map(|l| format!("{l}\n"))
                .collect();
            let old: String = old.lines().map(|l| format!("{l}\n")).collect();
            assert_eq!(back, old, "{id} in {path}");
        }
        let folder = after(&snapshot, &renamed);
        for (_, file) in folder.files() {
            let name = file.path.rsplit('/').next().expect("a name");
            let kept = file.path.starts_with("content/notes/pages/")
                || file.path.starts_with("content/movements")
                || file.path.starts_with("content/skills");
            assert!(
                kept || !name.starts_with(&format!("{id}.")),
                "{} did not move",
                file.path
            );
        }
    }
}

const MOVEMENTS: &str = "# the family\nfamily: holds\nname: Holds\npattern: core\nposition: prone\nload: body\nequipment: []   # nothing\nsummary: Two holds.\naxes:\n  support: [knees, free]\nmovements:\n  # the easy one\n  knee-hold: { at: { support: knees }, standard: 30 s }\n  free-hold:\n    at: { support: free }\n    standard: 20 s   # common practice\n    was: [old-hold]\n    needs:\n      - knee-hold: 20 s\n      - any of: [knee-hold, family: others]\n";

fn small() -> Snapshot {
    Snapshot::of_texts([
        (
            "content/school.yaml",
            "school: S\naddress: https://s.example/\nlanguage: en\nunits: metric\n",
        ),
        ("content/movements/holds.yaml", MOVEMENTS),
        (
            "content/movements/others.yaml",
            "family: others\nname: Others\npattern: core\nposition: prone\nload: body\nequipment: []\nsummary: One.\naxes: { a: [x] }\nmovements:\n  other-hold: { at: { a: x }, standard: 10 s }\n",
        ),
        (
            "content/skills/hold-well.yaml",
            "skill: hold-well\nname: knee-hold\ngoal: { free-hold: 25 s }\n",
        ),
        (
            "content/notes/knee-hold.md",
            "First [this](movement:knee-hold), not [that](movement:knee-hold-x \"t\").\n\n```session\nknee-hold  3x10 s\n```\n",
        ),
        (
            "content/notes/free-hold.md",
            "After the [knees](movement:knee-hold).\n",
        ),
    ])
}

#[test]
fn comments_layout_and_names_stay() {
    let snapshot = small();
    let mut proof = proofread(&snapshot);
    // A link to nothing is an error of its own; here only places count.
    proof.findings = Default::default();
    let renamed = rename(&snapshot, &proof, "knee-hold", "kneeling-hold");
    // The broken link of the note is still broken, so the result is not sound and is not given out.
    assert!(renamed.is_err());
    let sound = snapshot.with_text(
        "content/notes/knee-hold.md",
        "First [this](movement:knee-hold).\n\n```session\nknee-hold  3x10 s\n```\n",
    );
    let proof = proofread(&sound);
    let renamed = rename(&sound, &proof, "knee-hold", "kneeling-hold").expect("it can be renamed");
    assert_eq!(
        renamed.texts["content/movements/holds.yaml"],
        MOVEMENTS
            .replace(
                "  knee-hold: { at",
                "  kneeling-hold: { was: [knee-hold], at"
            )
            .replace("- knee-hold: 20 s", "- kneeling-hold: 20 s")
            .replace("any of: [knee-hold,", "any of: [kneeling-hold,")
    );
    assert_eq!(
        renamed.texts["content/notes/free-hold.md"],
        "After the [knees](movement:kneeling-hold).\n"
    );
    assert_eq!(
        renamed.texts["content/notes/knee-hold.md"],
        "First [this](movement:kneeling-hold).\n\n```session\nkneeling-hold  3x10 s\n```\n"
    );
    assert_eq!(
        renamed.moves,
        [(
            "content/notes/knee-hold.md".to_string(),
            "content/notes/kneeling-hold.md".to_string()
        )]
    );
    // The skill's name is a text, not an id.
    assert!(!renamed.texts.contains_key("content/skills/hold-well.yaml"));
    let renamed = rename(&sound, &proof, "free-hold", "hold-free").expect("it can be renamed");
    assert!(renamed.texts["content/movements/holds.yaml"].contains("was: [free-hold, old-hold]"));
    assert!(renamed.texts["content/skills/hold-well.yaml"].contains("goal: { hold-free: 25 s }"));
    let renamed = rename(&sound, &proof, "others", "the-others").expect("it can be renamed");
    assert!(renamed.texts["content/movements/holds.yaml"].contains("family: the-others]"));
    assert!(
        renamed.texts["content/movements/others.yaml"]
            .starts_with("family: the-others\nwas: [others]\n")
    );
}

#[test]
fn what_cannot_be_renamed_says_why() {
    let sound = small().with_text("content/notes/knee-hold.md", "Nothing.\n");
    let proof = proofread(&sound);
    for (old, new, says) in [
        ("knee-holt", "x-hold", "no record has the id"),
        ("old-hold", "x-hold", "was renamed already"),
        ("knee-hold", "free-hold", "is taken"),
        ("knee-hold", "old-hold", "is taken"),
        ("knee-hold", "today", "is the address of a page"),
        ("knee-hold", "Knee Hold", "cannot be an id"),
    ] {
        let refusal = rename(&sound, &proof, old, new).expect_err(old);
        assert!(
            refusal.why.contains(says),
            "{old} to {new}: {}",
            refusal.why
        );
        assert!(!refusal.help.is_empty());
    }
}
