//! What is read has bounds: nothing outside the folder.

use rungbook::io;
use rungbook::proof::proofread;
use rungbook::site::rehearsal::Rehearsal;
use rungbook::source::{Content, Rule, Snapshot};
use std::fs;
use std::os::unix::fs::symlink;
use std::path::{Path, PathBuf};
use std::process::Command;

const PROGRAM: &str = env!("CARGO_BIN_EXE_rungbook");

/// A first curriculum in `c`, and beside it a folder `away` with what nobody should see.
fn started() -> (tempfile::TempDir, PathBuf) {
    let dir = tempfile::tempdir().expect("a folder");
    let from = dir.path().join("c");
    let made = Command::new(PROGRAM).arg("start").arg(&from).output();
    assert!(made.expect("it runs").status.success());
    let away = dir.path().join("away");
    fs::create_dir_all(away.join("below")).expect("a folder");
    for name in [
        "a.svg",
        "a.png",
        "a.md",
        "a.yaml",
        "a.css",
        "a.html",
        "below/a.md",
    ] {
        fs::write(away.join(name), "a secret").expect("written");
    }
    (dir, from)
}

fn found(snapshot: &Snapshot, rule: Rule) -> Vec<String> {
    let proof = proofread(snapshot);
    let of_rule = proof.findings.iter().filter(|f| f.rule == rule);
    of_rule
        .map(|f| snapshot.path(f.span.file).to_string())
        .collect()
}

fn tells_a_secret(snapshot: &Snapshot) -> bool {
    snapshot.files().any(|(_, f)| match &f.content {
        Content::Text(text) => text.contains("a secret"),
        Content::Bytes(bytes) => bytes == b"a secret",
        _ => false,
    })
}

#[test]
fn links_out_of_the_folder_are_findings_and_never_read() {
    let (dir, from) = started();
    let away = dir.path().join("away");
    fs::create_dir_all(from.join("content/pictures")).expect("a folder");
    fs::create_dir_all(from.join("themes/own")).expect("a folder");
    let mut links = vec![
        ("content/movements/mine.yaml", "../../../away/a.yaml"),
        ("content/notes/below", "../../../away/below"),
        ("content/notes/mine.md", "../../../away/a.md"),
        ("content/pictures/mine.png", "../../../away/a.png"),
        ("content/pictures/mine.svg", "../../../away/a.svg"),
        ("content/skills/mine.yaml", "../../../away/a.yaml"),
        ("themes/own/page.html", "../../../away/a.html"),
        ("themes/own/parts", "../../../away/below"),
        ("themes/own/style.css", "../../../away/a.css"),
    ];
    for (path, to) in &links {
        symlink(to, from.join(path)).expect("a link");
    }
    // By its whole path, and through a second link that stays inside.
    symlink(away.join("a.md"), from.join("content/notes/whole.md")).expect("a link");
    symlink("whole.md", from.join("content/notes/second.md")).expect("a link");
    links.extend([
        ("content/notes/whole.md", ""),
        ("content/notes/second.md", ""),
    ]);
    // An editor's own are passed over, wherever they lead.
    symlink(away.join("a.md"), from.join("content/notes/.#mine.md")).expect("a link");
    let mut paths: Vec<&str> = links.iter().map(|(path, _)| *path).collect();
    paths.sort_unstable();
    let snapshot = io::snapshot(&from).expect("a folder");
    assert_eq!(found(&snapshot, Rule::LinkOutside), paths);
    assert!(!tells_a_secret(&snapshot));
    let out = Command::new(PROGRAM)
        .args(["publish", "--from"])
        .arg(&from)
        .output();
    let out = out.expect("it runs");
    assert_eq!(out.status.code(), Some(1));
    assert!(!from.join("site").exists());
}

#[test]
fn links_that_stay_in_the_folder_are_read() {
    let (_dir, from) = started();
    fs::create_dir_all(from.join("kept/notes")).expect("a folder");
    let note = from.join("content/notes");
    let first = fs::read_dir(&note)
        .expect("notes")
        .map(|e| e.expect("an entry").path())
        .find(|p| p.extension().is_some_and(|e| e == "md"))
        .expect("a note");
    let name = first.file_name().expect("a name");
    let kept = from.join("kept/notes").join(name);
    fs::rename(&first, &kept).expect("moved");
    symlink(Path::new("../../kept/notes").join(name), &first).expect("a link");
    let snapshot = io::snapshot(&from).expect("a folder");
    let path = format!("content/notes/{}", name.to_string_lossy());
    let id = snapshot.find(&path).expect("the note");
    assert_eq!(
        snapshot.text(id),
        fs::read_to_string(&kept).expect("a text")
    );
    assert!(!proofread(&snapshot).findings.has_errors());
    // The folder itself may be reached by a link.
    let by_link = from.with_file_name("by-link");
    symlink(&from, &by_link).expect("a link");
    let again = io::snapshot(&by_link).expect("a folder");
    assert!(found(&again, Rule::LinkOutside).is_empty());
}

#[test]
fn a_whole_folder_that_lies_elsewhere_is_one_finding() {
    let (dir, from) = started();
    let moved = dir.path().join("away/content");
    fs::rename(from.join("content"), &moved).expect("moved");
    symlink(&moved, from.join("content")).expect("a link");
    let snapshot = io::snapshot(&from).expect("a folder");
    assert_eq!(found(&snapshot, Rule::LinkOutside), ["content"]);
    let told = proofread(&snapshot);
    assert_eq!(
        told.findings
            .iter()
            .filter(|f| f.rule == Rule::MissingFolder)
            .count(),
        0
    );
}

/// While rehearsing, a file that becomes a link, or whose folder does.
#[test]
fn a_file_that_becomes_a_link_is_not_read_again() {
    let (dir, from) = started();
    let path = "content/school.yaml";
    let before = Rehearsal::new(io::snapshot(&from).expect("a folder"));
    let file = before.snapshot().find(path).expect("a school");
    fs::remove_file(from.join(path)).expect("gone");
    symlink(dir.path().join("away/a.yaml"), from.join(path)).expect("a link");
    let content = io::content_now(&from, path).expect("it is there");
    assert_eq!(content, Content::Outside);
    let after = before.changed(vec![(file, content)]);
    assert_eq!(found(after.snapshot(), Rule::LinkOutside), [path]);
}
