//! What asks less of a body is refused without a note, what is harmless is not; the note stands on the site; whom a change reaches
//! is told and kept nowhere.

use rungbook::changes::{STANDING, Stood, Weight, loosenings, refusal, since};
use rungbook::proof::{Proofread, proofread};
use rungbook::source::{Snapshot, SourceFile};
use serde_json::Value;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::{Command, Output};

fn shipped() -> Snapshot {
    rungbook::io::snapshot(Path::new(env!("CARGO_MANIFEST_DIR"))).expect("the shipped curriculum")
}

/// One edit of the shipped curriculum: in a file, or in every file where its path is `*`, from and to; an empty text after the
/// path alone takes the file away or adds it.
type Edit<'a> = (&'a str, &'a str, &'a str, &'a str);

const FREE: &str = "content/movements/handstand/freestanding-handstand.yaml";
const PLANK: &str = "content/movements/core/plank.yaml";
const HANG: &str = "content/movements/weighted/weighted-dead-hang.yaml";

/// With the words that the finding must say.
const LOOSENINGS: &[Edit<'_>] = &[
    (
        FREE,
        " If you go over, move one hand, turn a quarter and land one foot after the other.",
        "",
        "the way out is shorter",
    ),
    (
        PLANK,
        "exit: Put both knees down, then sit back on the heels.\n",
        "",
        "the way out is gone",
    ),
    (
        FREE,
        "cautions: [wrist-extension, alone]",
        "cautions: [wrist-extension]",
        "no longer holds",
    ),
    (FREE, "  - free-kick-up\n", "", "no longer needs"),
    (
        HANG,
        "  - dead-hang\n",
        "  - dead-hang: 5 s\n",
        "needs Dead hang",
    ),
    (
        FREE,
        "    - pressure behind the eyes, spots, a headache\n",
        "",
        "the stop sign",
    ),
    (
        PLANK,
        "    - the buttocks are tight and the ribs drawn in\n",
        "",
        "of what counts",
    ),
    (
        FREE,
        "standard: 20 s in 3 of 5 tries",
        "standard: 10 s in 3 of 5 tries",
        "asks less",
    ),
    (
        HANG,
        "standard: 20 s with 0.25 bw",
        "standard: 20 s with 0.2 bw",
        "asks less",
    ),
    (
        "content/skills/lift-and-carry.yaml",
        "",
        "",
        "its page is gone",
    ),
    ("*", "deep-squat-sit", "low-squat-sit", "its page is gone"),
    (
        "content/notes/pages/on-wrists.md",
        "",
        "",
        "its page is gone",
    ),
    (
        HANG,
        "  - any of:\n      - pull-up: 8 reps\n",
        "  - any of:\n      - dead-bug\n      - pull-up: 8 reps\n",
        "less is enough",
    ),
    (
        PLANK,
        "movement: plank\n",
        "movement: plank\nheld_back: true\n",
        "its page is gone",
    ),
];

const HARMLESS: &[Edit<'_>] = &[
    (
        FREE,
        "Twenty seconds on the hands in the open",
        "Twenty still seconds on the hands in the open",
        "",
    ),
    (
        FREE,
        "  - Correct early and small.\n",
        "  - Correct early and small.\n  - Look between the thumbs.\n",
        "",
    ),
    (
        FREE,
        "    - two tries lost without",
        "    - a numb hand\n    - two tries lost without",
        "",
    ),
    (
        FREE,
        "    - elbows straight\n",
        "    - elbows straight\n    - toes pointed\n",
        "",
    ),
    (
        FREE,
        "standard: 20 s in 3 of 5 tries",
        "standard: 25 s in 3 of 5 tries",
        "",
    ),
    (
        FREE,
        "chest-to-wall-handstand: 60 s",
        "chest-to-wall-handstand: 70 s",
        "",
    ),
    (
        FREE,
        "Split the legs and step down the way you went up.",
        "Split your legs, and step down the way that you went up.",
        "",
    ),
    (
        FREE,
        "pressure behind the eyes, spots, a headache",
        "Pressure behind the eyes, spots, or a headache",
        "",
    ),
    (
        FREE,
        "cautions: [wrist-extension, alone]",
        "cautions: [wrist-extension, alone, equipment]",
        "",
    ),
    (PLANK, "standard: 60 s", "standard: 45 s", ""),
    (FREE, "weeks: 12-40", "weeks: 16-52", ""),
    (
        "content/movements/mobility/deep-squat-sit.yaml",
        "movement: deep-squat-sit\n",
        "movement: low-squat-sit\nwas: [deep-squat-sit]\n",
        "",
    ),
    (
        FREE,
        "name: Freestanding handstand\n",
        "name: Handstand in the open\n",
        "",
    ),
];

fn edited(snapshot: &Snapshot, (path, from, to, _): &Edit<'_>) -> Snapshot {
    let content =
        |file: &SourceFile| file.path.starts_with("content/") && !file.path.ends_with(".json");
    if *path == "*" || to.contains("was: [") {
        let (old, new) = match *path {
            "*" => (*from, *to),
            _ => ("deep-squat-sit", "low-squat-sit"),
        };
        let mut out = snapshot.clone();
        for (id, file) in snapshot.files().filter(|(_, f)| content(f)) {
            let text = snapshot.text(id);
            if text.contains(old) && !file.path.contains("ledger") {
                out = out.with_text(&file.path, &text.replace(old, new));
            }
        }
        let named = SourceFile {
            path: format!("content/notes/mobility/{new}.md"),
            content: out
                .file(
                    out.find(&format!("content/notes/mobility/{old}.md"))
                        .expect("a note"),
                )
                .expect("a file")
                .content
                .clone(),
        };
        let others = out
            .files()
            .filter(|(_, f)| !f.path.ends_with(&format!("/{old}.md")));
        let out = Snapshot::new(others.map(|(_, f)| f.clone()).chain([named]).collect());
        if *path == "*" {
            return out;
        }
        let text = out.text(out.find(path).expect("a file"));
        let with_was = text.replace(
            &format!("movement: {new}\n"),
            &format!("movement: {new}\nwas: [{old}]\n"),
        );
        return out.with_text(path, &with_was);
    }
    match (from.is_empty(), to.is_empty()) {
        (true, true) => {
            let others = snapshot.files().filter(|(_, f)| f.path != *path);
            Snapshot::new(others.map(|(_, f)| f.clone()).collect())
        }
        (true, false) => snapshot.with_text(path, to),
        _ => {
            let text = snapshot.text(snapshot.find(path).expect(path));
            assert!(text.contains(from), "{path} has no {from:?}");
            snapshot.with_text(path, &text.replacen(from, to, 1))
        }
    }
}

/// The curriculum after an edit, and how it stood before.
fn after(base: &Snapshot, edit: &Edit<'_>) -> Proofread {
    proofread(&edited(base, edit))
}

fn stood() -> (Snapshot, Stood) {
    let base = shipped();
    let proof = proofread(&base);
    assert!(!proof.findings.has_errors());
    // What is kept reads again as what it was.
    let stood = Stood::of(&proof.curriculum);
    let kept = base.with_text(STANDING, &stood.to_json());
    assert_eq!(
        Stood::read(&kept, proof.curriculum.ledger()).expect("it reads"),
        stood
    );
    assert_eq!(since(&stood, &proof.curriculum), []);
    (base, stood)
}

/// Planted one by one in the shipped curriculum.
#[test]
fn each_loosening_is_refused() {
    let (base, stood) = stood();
    for edit in LOOSENINGS {
        let proof = after(&base, edit);
        let all = since(&stood, &proof.curriculum);
        let found = refusal(&all, &proof.curriculum);
        let said: Vec<&str> = found.iter().map(|f| f.message.as_str()).collect();
        assert!(
            said.iter().any(|m| m.contains(edit.3)),
            "{edit:?}: {said:?}"
        );
        assert!(found.has_errors() && found.iter().all(|f| f.help.contains("--note")));
        assert_eq!(all[0].weight, Weight::Loosening, "loosenings stand first");
    }
}

/// The school had made a class graver, and takes that back.
#[test]
fn a_weaker_signal_word_is_refused() {
    let graver = shipped().with_text(
        "content/cautions.yaml",
        "wrist-extension:\n  signal: warning\n",
    );
    let stood = Stood::of(&proofread(&graver).curriculum);
    let proof = proofread(&shipped());
    let all = since(&stood, &proof.curriculum);
    let found = refusal(&all, &proof.curriculum);
    let said: Vec<&str> = found.iter().map(|f| f.message.as_str()).collect();
    assert_eq!(said.len(), 1, "{said:?}");
    assert!(said[0].contains("the signal word is weaker"), "{said:?}");
}

#[test]
fn no_harmless_edit_is_refused() {
    let (base, stood) = stood();
    for edit in HARMLESS {
        let proof = after(&base, edit);
        assert!(
            !proof.findings.has_errors(),
            "{edit:?}: {:?}",
            proof
                .findings
                .iter()
                .map(|f| &f.message)
                .collect::<Vec<_>>()
        );
        let all = since(&stood, &proof.curriculum);
        let of: Vec<_> = loosenings(&all).collect();
        assert!(of.is_empty(), "{edit:?}: {of:?}");
    }
}

/// A ledger from before there was more: standards and caution classes are compared, and ids that are gone.
#[test]
fn a_ledger_of_old_is_read() {
    let base = shipped();
    let others = base.files().filter(|(_, f)| f.path != STANDING);
    let base = Snapshot::new(others.map(|(_, f)| f.clone()).collect());
    let curriculum = proofread(&base).curriculum;
    let ledger = curriculum
        .ledger()
        .with_entry(&curriculum, "2026-11-25", "As it stands.");
    let base = base.with_text("content/ledger.yaml", &ledger.to_yaml());
    let before = proofread(&base);
    let ledger = before.curriculum.ledger();
    let stood = Stood::read(&base, ledger).expect("it reads");
    let refused =
        |edit: &Edit<'_>| loosenings(&since(&stood, &after(&base, edit).curriculum)).count();
    let of = |words: &str| {
        LOOSENINGS
            .iter()
            .find(|e| e.3.contains(words))
            .expect("an edit")
    };
    assert_eq!(refused(of("asks less")), 1);
    assert_eq!(refused(of("no longer holds")), 1);
    assert_eq!(
        refused(LOOSENINGS.iter().find(|e| e.0 == "*").expect("an edit")),
        1
    );
    assert_eq!(
        refused(of("the stop sign")),
        0,
        "it does not know of stop signs"
    );
    assert_eq!(refused(&HARMLESS[0]), 0);
}

fn run(arguments: &[&str], dir: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(arguments)
        .current_dir(dir)
        .env("NO_COLOR", "1")
        .output()
        .expect("the program runs")
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// A first curriculum in `c`, published.
fn published() -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    assert_eq!(run(&["start", "c"], dir.path()).status.code(), Some(0));
    let out = run(&["publish", "--from", "c"], dir.path());
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    assert!(dir.path().join("c").join(STANDING).is_file());
    dir
}

fn change(dir: &Path, file: &str, from: &str, to: &str) {
    let path = dir.join("c/content").join(file);
    let old = fs::read_to_string(&path).expect("a file");
    assert!(old.contains(from), "{old}");
    fs::write(path, old.replace(from, to)).expect("written");
}

/// Every file below a folder.
fn tree(dir: &Path) -> BTreeMap<String, Vec<u8>> {
    let files = walkdir::WalkDir::new(dir)
        .into_iter()
        .filter_map(Result::ok);
    let files = files.filter(|e| e.file_type().is_file());
    let read = |e: walkdir::DirEntry| {
        (
            e.path().display().to_string(),
            fs::read(e.path()).expect("a file"),
        )
    };
    files.map(read).collect()
}

const SIGN: &str = "stop: [the pace is no longer yours, pain in an elbow]";
const LESS: &str = "stop: [the pace is no longer yours]";

#[test]
fn a_refused_publish_leaves_everything_and_a_note_stands_beside_the_change() {
    let dir = published();
    change(dir.path(), "movements/pull-up-lowering.yaml", SIGN, LESS);
    let before = tree(dir.path());
    let out = run(&["publish", "--from", "c"], dir.path());
    let said = text(&out.stderr);
    assert_eq!(out.status.code(), Some(1), "{said}");
    for words in [
        "error[loosening]",
        "pull-up-lowering.yaml:1",
        "“pain in an elbow” is gone",
        "--note \"why\"",
        "The site is as it was",
    ] {
        assert!(said.contains(words), "{words}: {said}");
    }
    assert_eq!(tree(dir.path()), before, "nothing was written");
    let out = run(&["publish", "--from", "c", "--as", "json"], dir.path());
    assert_eq!(out.status.code(), Some(1));
    let answer: Value = serde_json::from_slice(&out.stdout).expect("JSON");
    assert_eq!(answer["published"], false);
    assert_eq!(answer["findings"][0]["rule"], "loosening");
    assert_eq!(answer["changes"][0]["kind"], "loosening");

    let out = run(
        &[
            "publish",
            "--from",
            "c",
            "--note",
            "Elbows are seen by the coach.",
            "--today",
            "2026-11-25",
        ],
        dir.path(),
    );
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    assert!(
        text(&out.stdout).contains("One change that asks less"),
        "{}",
        text(&out.stdout)
    );
    let site = dir.path().join("c/site");
    let page = fs::read_to_string(site.join("changes.html")).expect("a page");
    let at = |words: &str| {
        page.find(words)
            .unwrap_or_else(|| panic!("{words}\n{page}"))
    };
    let note = at("Elbows are seen by the coach.");
    let entry = &page[at("class=\"loosened\"")..];
    assert!(note < at("class=\"loosened\""));
    for words in [
        "data-movement=\"pull-up-lowering\"",
        "data-caution",
        "pain in an elbow",
        "stop at this sign all the same",
    ] {
        assert!(entry.contains(words), "{words}");
    }
    let feed = fs::read_to_string(site.join("changes.atom")).expect("a feed");
    for words in [
        "Elbows are seen",
        "[caution]: the stop sign",
        "stop at this sign all the same",
    ] {
        assert!(
            feed.to_lowercase().contains(&words.to_lowercase()),
            "{words}: {feed}"
        );
    }
    // It is told once.
    assert_eq!(
        run(&["publish", "--from", "c"], dir.path()).status.code(),
        Some(0)
    );
    // Taken up again it is an addition.
    change(dir.path(), "movements/pull-up-lowering.yaml", LESS, SIGN);
    let out = run(&["publish", "--from", "c", "--as", "json"], dir.path());
    let answer: Value = serde_json::from_slice(&out.stdout).expect("JSON");
    assert_eq!(
        (
            answer["published"].as_bool(),
            answer["changes"][0]["kind"].as_str()
        ),
        (Some(true), Some("addition"))
    );
}

#[test]
fn what_was_kept_and_is_broken_is_said_with_its_line() {
    let dir = published();
    let path = dir.path().join("c").join(STANDING);
    let kept = fs::read_to_string(&path).expect("a file");
    fs::write(&path, kept.replacen("\"standard\"", "\"standart\"", 1)).expect("written");
    let out = run(&["publish", "--from", "c"], dir.path());
    let said = text(&out.stderr);
    assert_eq!(out.status.code(), Some(1), "{said}");
    assert!(
        said.contains("bad-ledger") && said.contains("standing.json"),
        "{said}"
    );
}

/// By the standards of before Ana owns the hang and may pull; raised to 60 s she loses it. Ben has nothing to lose.
#[test]
fn whom_a_change_reaches_is_told_and_kept_nowhere() {
    let dir = published();
    let people = dir.path().join("people");
    fs::create_dir(&people).expect("a folder");
    let rows = |name: &str, hang: u32, pull: u32| {
        format!(
            "results: 1\nname: {name}\ntested:\n  - {{ movement: dead-hang, got: {hang} s, on: 2026-11-20 }}\n  - {{ movement: shoulder-pull, got: {pull} reps, on: 2026-11-20 }}\n"
        )
    };
    fs::write(people.join("ana.yaml"), rows("Ana", 41, 12)).expect("written");
    fs::write(people.join("ben.yaml"), rows("Ben", 5, 2)).expect("written");
    let ask = |command: &str, more: &[&str]| {
        let all = [
            &[
                command,
                "--from",
                "c",
                "--people",
                "people",
                "--today",
                "2026-11-25",
            ],
            more,
        ]
        .concat();
        run(&all, dir.path())
    };
    let quiet = ask("proof", &[]);
    assert!(
        text(&quiet.stdout).contains("Nobody’s states or plan change."),
        "{}",
        text(&quiet.stdout)
    );
    change(
        dir.path(),
        "movements/dead-hang.yaml",
        "standard: 30 s",
        "standard: 60 s",
    );
    let before = tree(dir.path());
    let out = ask("proof", &["--as", "json"]);
    let answer: Value = serde_json::from_slice(&out.stdout).expect("JSON");
    let all = answer["people"].as_array().expect("people");
    let ana = all
        .iter()
        .find(|p| p["name"] == "Ana")
        .unwrap_or_else(|| panic!("{answer}"));
    assert_eq!(ana["loses"][0]["movement"], "dead-hang", "{answer}");
    assert_eq!(ana["loses"][0]["before"], "owned");
    assert!(
        ana["plan"]["now"]["next"]["movement"]
            .as_str()
            .is_some_and(|m| m.starts_with("Dead hang")),
        "{answer}"
    );
    assert!(
        all.iter()
            .all(|p| p["name"] != "Ben" || p["loses"].as_array().is_some_and(Vec::is_empty)),
        "{answer}"
    );
    let said = text(&ask("proof", &[]).stdout);
    assert!(
        said.contains("Ana") && said.contains("loses Dead hang"),
        "{said}"
    );
    assert_eq!(tree(dir.path()), before, "nothing was written");
    // An id that is gone: her results of it would be kept aside.
    let published = ask("publish", &[]);
    assert!(
        text(&published.stdout).contains("loses Dead hang"),
        "{}",
        text(&published.stdout)
    );
    assert_eq!(
        published.status.code(),
        Some(0),
        "{}",
        text(&published.stderr)
    );
    let known = ["Ana", "ana.yaml", "people"];
    for (path, bytes) in tree(&dir.path().join("c")) {
        let all = String::from_utf8_lossy(&bytes);
        assert!(
            !known[..2].iter().any(|k| all.contains(&format!(" {k} "))),
            "{path}"
        );
    }
    for file in [
        "movements/pull-up-lowering.yaml",
        "movements/shoulder-pull.yaml",
        "notes/dead-hang.md",
        "notes/pull-up-lowering.md",
    ] {
        let path = dir.path().join("c/content").join(file);
        let old = fs::read_to_string(&path).expect("a file");
        fs::write(path, old.replace("shoulder-pull", "shoulder-lift")).expect("written");
    }
    fs::rename(
        dir.path().join("c/content/notes/shoulder-pull.md"),
        dir.path().join("c/content/notes/shoulder-lift.md"),
    )
    .expect("renamed");
    let out = ask("proof", &["--as", "json"]);
    let answer: Value = serde_json::from_slice(&out.stdout).expect("JSON");
    let ana = answer["people"]
        .as_array()
        .and_then(|all| all.iter().find(|p| p["name"] == "Ana"))
        .unwrap_or_else(|| panic!("{answer}"));
    assert_eq!(ana["aside"][0]["movement"], "shoulder-pull", "{answer}");
    assert_eq!(ana["loses"][0]["now"], Value::Null, "{answer}");
}

#[test]
fn without_an_earlier_site_it_is_said() {
    let dir = tempfile::tempdir().expect("a folder");
    run(&["start", "c"], dir.path());
    fs::write(dir.path().join("ana.yaml"), "results: 1\nname: Ana\n").expect("written");
    let out = run(
        &["proof", "--from", "c", "--people", "ana.yaml"],
        dir.path(),
    );
    assert!(
        text(&out.stdout).contains("There is no earlier site in c/site"),
        "{}{}",
        text(&out.stdout),
        text(&out.stderr)
    );
    let out = run(
        &[
            "proof", "--from", "c", "--people", "ana.yaml", "--as", "json",
        ],
        dir.path(),
    );
    let answer: Value = serde_json::from_slice(&out.stdout).expect("JSON");
    assert_eq!(answer["people"], Value::Null);
}
