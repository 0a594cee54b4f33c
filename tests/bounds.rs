//! What is read has bounds: nothing outside the folder, and no work that grows much faster than what is read.

use rungbook::io;
use rungbook::proof::proofread;
use rungbook::readiness::Steps;
use rungbook::site;
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
    let before = site::build(
        &io::snapshot(&from).expect("a folder"),
        &site::Options::default(),
    );
    let file = before.snapshot().find(path).expect("a school");
    fs::remove_file(from.join(path)).expect("gone");
    symlink(dir.path().join("away/a.yaml"), from.join(path)).expect("a link");
    let content = io::content_now(&from, path).expect("it is there");
    assert_eq!(content, Content::Outside);
    let after = before.changed(vec![(file, content)]);
    assert_eq!(found(after.snapshot(), Rule::LinkOutside), [path]);
}

/// So many movements, each with these needs, and a skill at the top.
fn grown(count: usize, needs: &dyn Fn(usize) -> Vec<usize>) -> Snapshot {
    let mut files = vec![
        ("content/school.yaml".to_string(), "school: Test Room\naddress: https://test.example/c/\nlanguage: en\nunits: metric\nequipment:\n  bar: A bar\n".to_string()),
        ("content/skills/top.yaml".to_string(), format!("skill: top\nname: Top\ngoal: m-{:05}\n", count - 1)),
    ];
    for i in 0..count {
        let below: String = needs(i).iter().map(|k| format!("  - m-{k:05}\n")).collect();
        let needs = match below.as_str() {
            "" => String::new(),
            _ => format!("needs:\n{below}"),
        };
        let text = format!(
            "movement: m-{i:05}\nname: Number {i}\npattern: core\nposition: prone\nload: body\nequipment: []\nsummary: Number {i}.\nstandard: 8 reps\n{needs}test: {{ how: Do it }}\ncues: [still]\nfaults: [{{ see: moves }}]\n"
        );
        files.push((format!("content/movements/m-{i:05}.yaml"), text));
    }
    Snapshot::of_texts(files.iter().map(|(p, t)| (p.as_str(), t.as_str())))
}

/// Every need but the last of each follows, by the shortest way; a search of its own for each need of each step took time by
/// the fourth power of the movements.
#[test]
fn needs_that_name_all_movements_below_are_told_apart() {
    let count = 300;
    let snapshot = grown(count, &|i| (0..i).collect());
    let proof = proofread(&snapshot);
    let implied: Vec<_> = proof
        .findings
        .iter()
        .filter(|f| f.rule == Rule::ImpliedNeed)
        .collect();
    assert_eq!(implied.len(), (count - 1) * (count - 2) / 2);
    let implications =
        rungbook::chain::Implications::new(&proof.curriculum, &proof.resolved.stages);
    let top = proof.curriculum.find_movement("m-00299").expect("the top");
    for leaf in implications.necessary(top) {
        let path = implications.by(top, leaf);
        let at = |ix| proof.curriculum.movement(ix).id();
        match at(leaf.movement).as_str() {
            "m-00298" => assert_eq!(path, None),
            _ => assert_eq!(path.map(|p| p.len()), Some(2)),
        }
    }
}

/// Each movement's first step stands at the foot of the chain, however long, and the needs that follow are found on the way.
#[test]
fn a_chain_of_many_rungs_is_judged_from_its_foot() {
    let count = 800;
    // Each needs the one below, and the one below that, which follows.
    let snapshot = grown(count, &|i| (i.saturating_sub(2)..i).rev().collect());
    let proof = proofread(&snapshot);
    let implied = proof
        .findings
        .iter()
        .filter(|f| f.rule == Rule::ImpliedNeed);
    assert_eq!(implied.count(), count - 2);
    let person = rungbook::results::Person::default();
    let today = rungbook::curriculum::Day::read("2026-10-10").expect("a day");
    let steps = Steps::new(&proof.curriculum, &proof.resolved.stages, &person, today);
    let foot = proof.curriculum.find_movement("m-00000").expect("the foot");
    for (ix, _) in proof.curriculum.movements().filter(|(ix, _)| *ix != foot) {
        assert_eq!(steps.to(ix).movements(), [foot]);
    }
}

#[test]
fn a_class_is_read_up_to_its_limit_and_says_so() {
    let snapshot = grown(3, &|i| (0..i).collect());
    let proof = proofread(&snapshot);
    let today = rungbook::curriculum::Day::read("2026-10-10").expect("a day");
    let rows = |count: usize| -> String {
        let row = |i: usize| format!("Client {i},m-00000,8 reps,2026-10-01,0\n");
        let again = "Client 0,m-00001,8 reps,2026-10-01,0\n";
        let head = "name,movement,got,on,in_reserve\n".to_string();
        head + &(0..count).map(row).collect::<String>() + again
    };
    let read = |count: usize| {
        let files = Snapshot::of_texts([("class.csv", rows(count).as_str())]);
        let (people, found) = rungbook::results::read(&files, &proof.curriculum, today);
        let places: Vec<_> = found
            .iter()
            .map(|f| (f.rule, files.slice(f.span).to_string()))
            .collect();
        (people, places)
    };
    let (people, found) = read(1000);
    assert_eq!((people.len(), found), (1000, Vec::new()));
    let (people, found) = read(50_000);
    assert_eq!(people.len(), 1000);
    // Of who is known every row counts.
    assert_eq!(people[0].tested.len(), 2);
    assert_eq!(found, [(Rule::BadClass, "Client 1000".to_string())]);
}

#[test]
fn two_clients_of_one_name_in_two_files_stay_two() {
    let snapshot = grown(3, &|i| (0..i).collect());
    let proof = proofread(&snapshot);
    let today = rungbook::curriculum::Day::read("2026-10-10").expect("a day");
    let head = "name,movement,got,on,in_reserve\n";
    let first =
        format!("{head}Ann,m-00000,8 reps,2026-10-01,0\nAnn K.,m-00000,1 reps,2026-10-01,0\n");
    let second = format!("{head}Ann,m-00000,2 reps,2026-10-01,0\n");
    let third =
        "results: 1\nname: Ann\ntested:\n  - { movement: m-00000, got: 3 reps, on: 2026-10-01 }\n";
    let files = Snapshot::of_texts([
        ("a.csv", first.as_str()),
        ("b.csv", second.as_str()),
        ("c.yaml", third),
    ]);
    let (people, found) = rungbook::results::read(&files, &proof.curriculum, today);
    assert_eq!(found.iter().count(), 0);
    let read: Vec<(&str, usize)> = people
        .iter()
        .map(|p| (p.name.as_str(), p.tested.len()))
        .collect();
    assert_eq!(read, [("Ann", 1), ("Ann K.", 1), ("Ann", 1), ("Ann", 1)]);
}

/// Room for as many bytes as the largest clip may have is all that a clip beyond it costs: nothing of it is read.
#[test]
fn a_clip_above_the_limit_is_not_read() {
    let (_dir, from) = started();
    let pictures = from.join("content/pictures");
    fs::create_dir_all(&pictures).expect("a folder");
    let clip = fs::File::create(pictures.join("long.mp4")).expect("a file");
    clip.set_len(32_000_001).expect("long");
    let snapshot = io::snapshot(&from).expect("a folder");
    let file = snapshot.find("content/pictures/long.mp4").expect("a clip");
    let content = snapshot.file(file).map(|f| &f.content);
    assert_eq!(content, Some(&Content::TooLarge(32_000_001)));
    assert_eq!(
        found(&snapshot, Rule::FileTooLarge),
        ["content/pictures/long.mp4"]
    );
}

/// The watch says whole paths. Where the folder was named from here, as `.` is unless another is said, each save was taken for one
/// outside it, and everything was read anew.
#[test]
fn a_save_is_known_by_its_path_however_the_folder_was_named() {
    let here = std::env::current_dir().expect("a folder");
    let saved = here.join("./content/notes/a.md");
    for from in [Path::new("."), &here, Path::new(""), Path::new("./")] {
        let path = io::path_within(from, &saved);
        let expected = (!from.as_os_str().is_empty()).then_some("content/notes/a.md");
        assert_eq!(path.as_deref(), expected, "{}", from.display());
    }
    let parts: Vec<_> = here.file_name().into_iter().collect();
    let by_parent = Path::new("..").join(parts[0]);
    let saved = here.join(&by_parent).join("content/a.md");
    assert_eq!(
        io::path_within(&by_parent, &saved).as_deref(),
        Some("content/a.md")
    );
    assert_eq!(io::path_within(Path::new("content"), &saved), None);
}

/// An edit of one definition is read alone: a summary, a standard, the amount of a need, and those of the shipped curriculum.
#[test]
fn an_edit_of_one_definition_reads_that_alone() {
    let grown = grown(60, &|i| (i.saturating_sub(1)..i).collect());
    let path = "content/movements/m-00030.yaml";
    let mut now = site::build(&grown, &site::Options::default());
    for (from, to) in [
        ("summary: Number 30.", "summary: Again."),
        ("standard: 8 reps", "standard: 9 reps"),
        ("- m-00029", "- m-00029: 7 reps"),
        ("- m-00029: 7 reps", "- m-00029: 6 reps"),
        ("cues: [still]", "cues: [still, quiet]"),
        ("position: prone", "position: supine"),
    ] {
        let file = now.snapshot().find(path).expect("a movement");
        let text = now.snapshot().text(file).to_string();
        let new = text.replacen(from, to, 1);
        assert_ne!(text, new, "{from}");
        let (after, alone) = now.changed_and_how(vec![(file, Content::Text(new))]);
        assert!(alone, "{to}");
        now = after;
    }
    let shipped = io::snapshot(Path::new(env!("CARGO_MANIFEST_DIR"))).expect("a folder");
    let mut now = site::build(&shipped, &site::Options::default());
    let files: Vec<_> = now
        .snapshot()
        .files()
        .filter(
            |(_, f)| matches!(&f.content, Content::Text(text) if text.starts_with("movement: ")),
        )
        .map(|(id, _)| id)
        .collect();
    assert!(files.len() > 20);
    for file in files {
        let text = now.snapshot().text(file).to_string();
        let new = text.replacen("summary: ", "summary: Again, ", 1);
        let (after, alone) = now.changed_and_how(vec![(file, Content::Text(new))]);
        assert!(alone, "{}", now.snapshot().path(file));
        now = after;
    }
}
