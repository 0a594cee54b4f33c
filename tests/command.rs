//! The commands as they are typed: exit status, standard output and standard error.

use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

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

fn json(out: &Output) -> Value {
    serde_json::from_slice(&out.stdout).unwrap_or_else(|e| panic!("{e}: {}", text(&out.stdout)))
}

/// A folder with a first curriculum in `c`.
fn started() -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    let out = run(&["start", "c"], dir.path());
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    dir
}

/// Between fourteen hours before and twelve hours behind UTC lie 26: the days there are never the same.
#[test]
fn today_is_the_day_where_the_coach_is() {
    let dir = started();
    fs::write(
        dir.path().join("ana.yaml"),
        "results: 1\ntested:\n  - { movement: dead-hang, got: 41 s, on: 2026-11-20 }\n",
    )
    .expect("a file");
    let today = |zone: &str| {
        let out = Command::new(env!("CARGO_BIN_EXE_rungbook"))
            .args(["assess", "ana.yaml", "--from", "c", "--as", "json"])
            .current_dir(dir.path())
            .env("TZ", zone)
            .output()
            .expect("the program runs");
        json(&out)["today"].as_str().expect("a day").to_string()
    };
    assert!(today("FIRST-14") > today("LAST12"));
}

#[test]
fn every_rule_is_listed_with_what_it_says() {
    let dir = tempfile::tempdir().expect("a folder");
    let out = run(&["proof", "--rules", "--as", "json"], dir.path());
    let said: serde_json::Value = serde_json::from_slice(&out.stdout).expect("JSON");
    let rules = said["rules"].as_array().expect("a list");
    assert_eq!(rules.len(), rungbook::source::Rule::ALL.len());
    for rule in rules {
        let says = rule["says"].as_str().expect("a sentence");
        assert!(says.ends_with('.') && says.len() > 10, "{rule}");
    }
    let out = run(&["proof", "--rules"], dir.path());
    assert_eq!(text(&out.stdout).lines().count(), rules.len());
}

#[test]
fn a_first_curriculum_publishes_as_it_stands() {
    let dir = started();
    let out = run(&["proof", "--strict", "--from", "c"], dir.path());
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    let out = run(&["publish", "--from", "c"], dir.path());
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    assert!(dir.path().join("c/site/index.html").exists());
    // Again: nothing is written.
    let before = fs::metadata(dir.path().join("c/site/index.html"))
        .expect("a page")
        .modified()
        .expect("a time");
    let out = run(&["publish", "--from", "c", "--as", "json"], dir.path());
    let answer = json(&out);
    assert_eq!(answer["written"], 0, "{answer}");
    assert_eq!(answer["findings"], Value::Array(vec![]));
    assert_eq!(
        fs::metadata(dir.path().join("c/site/index.html"))
            .expect("a page")
            .modified()
            .expect("a time"),
        before
    );
    // A second start refuses the folder.
    assert_eq!(run(&["start", "c"], dir.path()).status.code(), Some(2));
}

/// Lays the fences of a text into a curriculum as they are typed there: whole files by the path in their first line. The paths,
/// and what the other fences hold.
fn laid(name: &str, c: &Path) -> (Vec<PathBuf>, String) {
    let text = Path::new(env!("CARGO_MANIFEST_DIR")).join(name);
    let text = fs::read_to_string(text).expect("text");
    let mut needs = String::new();
    let mut files = Vec::new();
    for fence in text.split("```yaml\n").skip(1) {
        let body = fence.split("```").next().expect("it is closed");
        let inwards = body.len() - body.trim_start_matches(' ').len();
        let lines: Vec<&str> = body
            .lines()
            .map(|l| l.get(inwards..).unwrap_or(""))
            .collect();
        let text = lines.join("\n").trim_end().to_string() + "\n";
        match text.strip_prefix("# ").and_then(|t| t.split_once('\n')) {
            Some((path, _)) => {
                let path = c.join(path);
                fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
                fs::write(&path, &text).expect("a file");
                files.push(path);
            }
            None => needs.push_str(&text),
        }
    }
    (files, needs)
}

/// What the manual shows stands as it is typed there.
#[test]
fn the_manual_can_be_followed() {
    let dir = started();
    let c = dir.path().join("c");
    let (files, rest) = laid("MANUAL.md", &c);
    assert!(files.len() >= 4 && rest.is_empty(), "{files:?} {rest}");
    let manual = Path::new(env!("CARGO_MANIFEST_DIR")).join("MANUAL.md");
    let manual = fs::read_to_string(manual).expect("text");
    let session = manual.split("````\n").nth(1).expect("a session");
    let note = c.join("content/notes/dead-hang.md");
    let before = fs::read_to_string(&note).expect("text");
    fs::write(&note, format!("{before}\n{session}")).expect("written");
    for command in [
        &["proof", "--strict"][..],
        &["assess", "results/ben.yaml"],
        &["dose", "results/ben.yaml"],
        &["publish"],
    ] {
        let out = run(command, &c);
        assert_eq!(
            out.status.code(),
            Some(0),
            "{command:?}: {}",
            text(&out.stderr)
        );
    }
}

/// The README as a new coach follows it: the needs go into a copy of a file.
#[test]
fn the_readme_can_be_followed() {
    let dir = started();
    let c = dir.path().join("c");
    let (files, needs) = laid("README.md", &c);
    assert_eq!(files.len(), 4, "{files:?}");
    let hang = c.join("content/movements/dead-hang.yaml");
    let sound = fs::read_to_string(&hang).expect("text");
    fs::write(&hang, sound.replace("standard: 30 s", "standard: 40 s")).expect("written");
    let copy = sound
        .replace("dead-hang", "towel-hang")
        .replace("Dead hang", "Towel hang");
    let copy = format!("{copy}cautions: [shoulder-extension, wet-floor]\n{needs}");
    fs::write(c.join("content/movements/towel-hang.yaml"), copy).expect("written");
    for command in [
        &["proof", "--strict"][..],
        &["assess", "ana.yaml"],
        &["dose", "ana.yaml"],
        &["publish", "--note", "what is new"],
    ] {
        let out = run(command, &c);
        assert_eq!(
            out.status.code(),
            Some(0),
            "{command:?}: {}",
            text(&out.stderr)
        );
    }
    let page = |name: &str| fs::read_to_string(c.join("site").join(name)).expect("a page");
    let cautions = page("cautions.html");
    for word in ["shoulder-extension", "wet-floor"] {
        assert!(cautions.contains(&format!("<code dir=\"ltr\">{word}</code>")));
    }
    assert!(page("self-test.html").contains("<h1>Try yourself</h1>"));
    assert!(page("towel-hang.html").contains("You can slip as you let go."));
}

#[test]
fn faults_of_the_curriculum_end_with_one() {
    let dir = started();
    let path = dir.path().join("c/content/movements/dead-hang.yaml");
    let broken = fs::read_to_string(&path)
        .expect("a file")
        .replace("standard: 30 s", "standard: 30 y");
    fs::write(&path, broken).expect("a file");
    let out = run(&["proof", "--from", "c"], dir.path());
    assert_eq!(out.status.code(), Some(1));
    let said = text(&out.stderr);
    assert!(
        said.contains("error[bad-target]")
            && said.contains("content/movements/dead-hang.yaml:9:14"),
        "{said}"
    );
    assert!(
        said.contains("standard: 30 y"),
        "the source line is shown: {said}"
    );
    assert_eq!(text(&out.stdout), "", "findings go to standard error");
    let out = run(&["proof", "--from", "c", "--as", "json"], dir.path());
    assert_eq!(out.status.code(), Some(1));
    let finding = &json(&out)["findings"][0];
    assert_eq!(
        (
            finding["rule"].as_str(),
            finding["severity"].as_str(),
            finding["line"].as_u64(),
            finding["column"].as_u64()
        ),
        (Some("bad-target"), Some("error"), Some(9), Some(14))
    );
    let out = run(&["publish", "--from", "c"], dir.path());
    assert_eq!(out.status.code(), Some(1));
    assert!(!dir.path().join("c/site").exists(), "nothing was published");
    // chain answers for what stands, and still ends with one.
    let out = run(
        &["chain", "slow-way-down", "--from", "c", "--as", "json"],
        dir.path(),
    );
    assert_eq!(out.status.code(), Some(1));
    assert_eq!(
        json(&out)["movements"],
        Value::Array(vec![]),
        "everything stood on the broken one"
    );
}

#[test]
fn warnings_count_only_when_asked() {
    let dir = started();
    fs::write(dir.path().join("c/content/notes/pages/x.md"), "# X\n")
        .or_else(|_| {
            fs::create_dir_all(dir.path().join("c/content/notes/pages"))?;
            fs::write(dir.path().join("c/content/notes/pages/x-page.md"), "# X\n")
        })
        .expect("a note");
    assert_eq!(
        run(&["proof", "--from", "c"], dir.path()).status.code(),
        Some(0)
    );
    assert_eq!(
        run(&["proof", "--strict", "--from", "c"], dir.path())
            .status
            .code(),
        Some(1)
    );
    assert_eq!(
        run(&["publish", "--from", "c"], dir.path()).status.code(),
        Some(0)
    );
}

#[test]
fn faults_of_the_command_line_and_the_disk_end_with_two() {
    let dir = started();
    assert_eq!(run(&["publsh"], dir.path()).status.code(), Some(2));
    assert_eq!(
        run(&["proof", "--from", "nowhere"], dir.path())
            .status
            .code(),
        Some(2)
    );
    assert_eq!(
        run(&["schema", "movment"], dir.path()).status.code(),
        Some(2)
    );
    let out = run(&["chain", "ded-hang", "--from", "c"], dir.path());
    assert_eq!(out.status.code(), Some(2));
    assert!(
        text(&out.stderr).contains("did you mean `dead-hang`?"),
        "{}",
        text(&out.stderr)
    );
    for to in ["c/content", "c/content/site", "c", "."] {
        let out = run(&["publish", "--from", "c", "--to", to], dir.path());
        assert_eq!(out.status.code(), Some(2), "{to}: {}", text(&out.stderr));
    }
    fs::create_dir(dir.path().join("mine")).expect("a folder");
    fs::write(dir.path().join("mine/letter.txt"), "dear").expect("a file");
    let out = run(&["publish", "--from", "c", "--to", "mine"], dir.path());
    assert_eq!(out.status.code(), Some(2));
    assert_eq!(
        fs::read_to_string(dir.path().join("mine/letter.txt")).expect("still there"),
        "dear"
    );
}

#[test]
fn an_empty_folder_is_a_finding() {
    let dir = tempfile::tempdir().expect("a folder");
    let out = run(&["proof", "--as", "json"], dir.path());
    assert_eq!(out.status.code(), Some(1));
    assert_eq!(json(&out)["findings"][0]["rule"], "missing-folder");
}

#[test]
fn an_empty_plan_lists_no_sets_and_a_route_is_about_so_long() {
    let dir = started();
    let write = |text: &str| fs::write(dir.path().join("ana.yaml"), text).expect("a file");
    write("results: 1\nhave: [step]\n");
    let dose = || {
        json(&run(
            &["dose", "ana.yaml", "--from", "c", "--as", "json"],
            dir.path(),
        ))
    };
    let said = dose();
    let empty = |list: &serde_json::Value| list.as_array().is_some_and(Vec::is_empty);
    assert!(empty(&said["sessions"][0]["lines"]), "{said}");
    assert_eq!(said["week_sets"], serde_json::json!({}), "{said}");
    write("results: 1\ntested: [{ movement: dead-hang, got: 41 s }]\n");
    let said = dose();
    // Straight-arm sets are counted apart, and there are no others.
    let kinds: Vec<&String> = said["week_sets"]
        .as_object()
        .expect("kinds")
        .keys()
        .collect();
    assert_eq!(kinds, ["vertical pull, straight arms"], "{said}");
    let skill = [
        "assess",
        "--all",
        "ana.yaml",
        "--skill",
        "slow-way-down",
        "--from",
        "c",
    ];
    let said = text(&run(&skill, dir.path()).stdout);
    assert!(
        said.contains("to own, about 10 weeks of training in all"),
        "{said}"
    );
}

/// Without a curriculum nothing is said of a client's movements.
#[test]
fn a_forgotten_folder_ends_before_the_client_is_read() {
    let dir = started();
    fs::write(
        dir.path().join("ana.yaml"),
        "results: 1\ntested: [{ movement: dead-hang, got: 41 s }]\n",
    )
    .expect("a file");
    for command in ["assess", "dose"] {
        let out = run(&[command, "ana.yaml"], dir.path());
        let said = text(&out.stderr);
        assert_eq!(out.status.code(), Some(1), "{said}");
        assert!(said.contains("missing-folder"), "{said}");
        assert!(!said.contains("no such movement"), "{said}");
        assert_eq!(text(&out.stdout), "");
        let out = run(&[command, "ana.yaml", "--as", "json"], dir.path());
        assert_eq!(json(&out)["findings"][0]["rule"], "missing-folder");
    }
}

#[test]
fn warnings_of_the_curriculum_do_not_bury_an_answer() {
    let dir = started();
    let notes = dir.path().join("c/content/notes/pages");
    fs::create_dir_all(&notes).expect("a folder");
    for i in 0..23 {
        fs::write(notes.join(format!("page-{i}.md")), "# X\n").expect("a note");
    }
    fs::write(dir.path().join("ana.yaml"), "results: 1\n").expect("a file");
    for command in ["assess", "dose"] {
        let out = run(&[command, "ana.yaml", "--from", "c"], dir.path());
        let said = text(&out.stderr);
        assert_eq!(
            said.trim(),
            "23 warnings: `rungbook proof --from c` shows them.",
            "{command}"
        );
    }
    let said = text(&run(&["proof", "--from", "c"], dir.path()).stderr);
    assert_eq!(
        said.matches("warning[unlinked-note]: ").count(),
        20,
        "{said}"
    );
    assert!(
        said.contains("... and 3 more of this kind: warning[unlinked-note]"),
        "{said}"
    );
    assert!(said.trim_end().ends_with("0 errors, 23 warnings"), "{said}");
}

#[test]
fn hostile_files_are_findings_and_stop_nothing() {
    let dir = started();
    let movements = dir.path().join("c/content/movements");
    fs::write(movements.join("binary.yaml"), [0xff, 0xfe, 0x00]).expect("a file");
    let huge = fs::File::create(movements.join("huge.yaml")).expect("a file");
    huge.set_len(200_000_000).expect("200 MB");
    fs::write(
        dir.path().join("c/content/notes/dead-hang.md"),
        "[a](b) [c](movement:d) ![](e)\n[[[[((((\n",
    )
    .expect("a note");
    let out = run(&["proof", "--from", "c", "--as", "json"], dir.path());
    assert_eq!(out.status.code(), Some(1), "{}", text(&out.stderr));
    let answer = json(&out);
    let rules: Vec<&str> = answer["findings"]
        .as_array()
        .expect("findings")
        .iter()
        .filter_map(|f| f["rule"].as_str())
        .collect();
    for rule in [
        "not-utf8",
        "file-too-large",
        "link-scheme",
        "broken-link",
        "missing-alt",
    ] {
        assert!(rules.contains(&rule), "{rule} in {rules:?}");
    }
}

#[test]
fn other_peoples_files_in_the_site_folder_are_kept() {
    let dir = started();
    assert_eq!(
        run(&["publish", "--from", "c"], dir.path()).status.code(),
        Some(0)
    );
    let site = dir.path().join("c/site");
    fs::write(site.join("CNAME"), "room.example").expect("a file");
    fs::create_dir(site.join(".git")).expect("a folder");
    fs::write(site.join(".git/HEAD"), "ref").expect("a file");
    let school = dir.path().join("c/content/school.yaml");
    fs::write(
        &school,
        fs::read_to_string(&school)
            .expect("a file")
            .replace("My Movement Room", "Our Room"),
    )
    .expect("a file");
    let out = run(&["publish", "--from", "c"], dir.path());
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    assert!(
        text(&out.stdout).contains(".git, CNAME"),
        "{}",
        text(&out.stdout)
    );
    assert!(
        fs::read_to_string(site.join("index.html"))
            .expect("a page")
            .contains("Our Room")
    );
    assert_eq!(
        fs::read_to_string(site.join("CNAME")).expect("kept"),
        "room.example"
    );
    assert_eq!(
        fs::read_to_string(site.join(".git/HEAD")).expect("kept"),
        "ref"
    );
}

#[test]
fn the_ledger_tells_what_changed() {
    let dir = started();
    let publish = |note: &str, day: &str| {
        run(
            &["publish", "--from", "c", "--note", note, "--today", day],
            dir.path(),
        )
    };
    assert_eq!(publish("First.", "2026-03-01").status.code(), Some(0));
    let hang = dir.path().join("c/content/movements/dead-hang.yaml");
    fs::write(
        &hang,
        fs::read_to_string(&hang)
            .expect("a file")
            .replace("standard: 30 s", "standard: 40 s"),
    )
    .expect("a file");
    let pull = fs::read_to_string(dir.path().join("c/content/movements/shoulder-pull.yaml"))
        .expect("a file");
    let renamed = pull.replace(
        "movement: shoulder-pull",
        "movement: shoulder-lift\nwas: [shoulder-pull]",
    );
    fs::remove_file(dir.path().join("c/content/movements/shoulder-pull.yaml")).expect("gone");
    fs::write(
        dir.path().join("c/content/movements/shoulder-lift.yaml"),
        renamed,
    )
    .expect("a file");
    for (path, from, to) in [
        (
            "c/content/movements/pull-up-lowering.yaml",
            "- shoulder-pull",
            "- shoulder-lift",
        ),
        (
            "c/content/notes/dead-hang.md",
            "movement:shoulder-pull",
            "movement:shoulder-lift",
        ),
        (
            "c/content/notes/pull-up-lowering.md",
            "movement:shoulder-pull",
            "movement:shoulder-lift",
        ),
        (
            "c/content/notes/shoulder-pull.md",
            "shoulder-pull  4x5",
            "shoulder-lift  4x5",
        ),
    ] {
        let path = dir.path().join(path);
        fs::write(
            &path,
            fs::read_to_string(&path).expect("a file").replace(from, to),
        )
        .expect("a file");
    }
    fs::rename(
        dir.path().join("c/content/notes/shoulder-pull.md"),
        dir.path().join("c/content/notes/shoulder-lift.md"),
    )
    .expect("moved");
    let out = publish("Longer hangs.", "2026-04-01");
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    let changes = fs::read_to_string(dir.path().join("c/site/changes.html")).expect("a page");
    for words in [
        "Longer hangs.",
        "standard raised from 30 seconds to 40 seconds",
        "renamed, was shoulder-pull",
        "2026-04-01",
    ] {
        assert!(changes.contains(words), "{words}");
    }
    // The old address leads on, with the mark.
    let old = fs::read_to_string(dir.path().join("c/site/shoulder-pull.html")).expect("a redirect");
    assert!(
        old.contains("url=shoulder-lift.html") && old.contains("data-caution"),
        "{old}"
    );
    assert_eq!(publish("x", "yesterday").status.code(), Some(2));
    assert_eq!(publish(" \n", "2026-05-01").status.code(), Some(2));
}

#[test]
fn help_has_an_example_and_completions_are_printed() {
    let dir = tempfile::tempdir().expect("a folder");
    for command in [
        "start",
        "proof",
        "publish",
        "chain",
        "schema",
        "completions",
    ] {
        let out = run(&[command, "--help"], dir.path());
        assert!(
            text(&out.stdout).contains("Example:\n  rungbook "),
            "{command}"
        );
    }
    assert!(text(&run(&["--help"], dir.path()).stdout).contains("Not medical advice"));
    for shell in ["bash", "zsh", "fish"] {
        let out = run(&["completions", shell], dir.path());
        assert!(
            out.status.success() && text(&out.stdout).contains("rungbook"),
            "{shell}"
        );
    }
}

/// What a new coach types next is what the first ten minutes say, one skill is one skill, and the examples of help are answered.
#[test]
fn the_first_steps_are_said_as_they_are_taken() {
    let dir = tempfile::tempdir().expect("a folder");
    let said = text(&run(&["start", "x"], dir.path()).stdout);
    assert!(said.contains("  cd x\n  rungbook rehearse\n"), "{said}");
    let home = dir.path().join("x");
    let said = text(&run(&["proof"], &home).stdout);
    assert!(
        said.contains("3 movements, 0 families, 1 skill, 3 notes."),
        "{said}"
    );
    fs::write(home.join("ana.yaml"), "results: 1\nname: Ana\n").expect("written");
    for command in ["dose", "chain"] {
        let help = text(&run(&[command, "--help"], dir.path()).stdout);
        let example = help.rsplit("rungbook ").next().unwrap_or_default().trim();
        let typed: Vec<&str> = example.split_whitespace().collect();
        let out = run(&typed, &home);
        assert!(out.status.success(), "{example}: {}", text(&out.stderr));
    }
}

/// What a client's file holds does not steer the coach's terminal.
#[test]
fn results_do_not_steer_the_terminal() {
    let dir = started();
    let hurt = "\\e]0;x\\a\\u202e\\r\\x9b5m";
    let yaml = format!(
        "results: 1\nname: \"{hurt}\"\ntested:\n  - {{ movement: \"no{hurt}\", got: 5 reps }}\n  - {{ movement: dead-hang, got: \"{hurt}\" }}\npaused:\n  - {{ movement: dead-hang, by: \"{hurt}\", because: \"{hurt}\" }}\n"
    );
    fs::write(dir.path().join("r.yaml"), yaml).expect("written");
    fs::write(
        dir.path().join("r.csv"),
        "name,movement,got\n\u{1b}[31mA\u{9b},dead-hang,9 s\n\u{202e}B,no\u{1b}[5m,9 s\n",
    )
    .expect("written");
    for file in ["r.yaml", "r.csv"] {
        for command in ["assess", "dose"] {
            let out = run(&[command, file, "--from", "c"], dir.path());
            let said = text(&out.stdout) + &text(&out.stderr);
            let steers = |c: char| (c.is_control() && c != '\n') || c == '\u{202e}';
            assert!(!said.contains(steers), "{command} {file}: {said:?}");
            assert!(
                said.contains("]0;x") || said.contains("[31mA"),
                "{command} {file}: {said}"
            );
        }
    }
}

/// `dose` prints today's session in few lines and the plan on request, writes page and calendar, and says whose plan it wrote
/// where a file holds several people.
#[test]
fn a_plan_is_written_whole() {
    let root = env!("CARGO_MANIFEST_DIR");
    let folder = tempfile::tempdir().expect("a folder");
    let dose = |file: &str, results: &str, more: &[&str]| {
        fs::write(folder.path().join(file), results).expect("results");
        let args = ["dose", file, "--from", root, "--today", "2026-11-25"];
        run(&[&args[..], more].concat(), folder.path())
    };
    let files = ["--page", "p.html", "--calendar", "p.ics"];
    let client = "results: 1\nname: Ana <i>\ntrain: { a_week: 3, minutes: 50 }\ntested: [{ movement: squat, got: 9 reps }, { movement: dead-hang, got: 40 s }]\nsessions: [{ effort: 5, minutes: 60 }]\n";
    let said = text(&dose("a.yaml", client, &files).stdout);
    assert!(said.lines().count() <= 25, "{said}");
    assert_eq!(said.matches("week 1").count(), 1, "{said}");
    assert!(said.contains("Not medical advice"), "{said}");
    let plan = text(&dose("a.yaml", client, &["--weeks"]).stdout);
    for part in [
        "week 4",
        "lighter",
        "Test on 2026-12-22",
        "Session load of seven days, effort x minutes: 300; monotony 0.41, strain 122",
    ] {
        assert!(plan.contains(part), "{part} is missing: {plan}");
    }
    let page = fs::read_to_string(folder.path().join("p.html")).expect("a page");
    for part in [
        "Plan for Ana &lt;i&gt;",
        "data-movement=",
        "data-caution=",
        "☐",
    ] {
        assert!(page.contains(part), "{part} is missing: {page}");
    }
    assert!(!page.contains("style="), "{page}");
    // As `dose` says it: what a line works towards, its rule and its reason; the warm-up of all sessions once.
    for part in [
        "size: A4",
        "style-src 'sha256-",
        "try it: you have no number of",
        "towards ",
        "Between you and it, first: ",
    ] {
        assert!(page.contains(part), "{part} is missing: {page}");
    }
    let session = page.matches("<section>").count();
    assert!(session > 10, "{page}");
    assert!(page.matches("brisk walking").count() < session, "{page}");
    let calendar = fs::read_to_string(folder.path().join("p.ics")).expect("a calendar");
    assert_eq!(calendar.matches("BEGIN:VEVENT").count(), 13, "{calendar}");
    let two = dose(
        "b.csv",
        "name,movement,got\nAda,squat,9\nBo,squat,20\n",
        &files,
    );
    assert!(text(&two.stderr).contains("written for Ada, the first of 2 people"));
}

/// Who is told to ask a clinician first gets no session, no test and no number to train towards.
#[test]
fn nothing_is_asked_of_who_is_to_ask_first() {
    let dir = started();
    let client =
        "results: 1\nscreened: { says: ask }\ntested: [{ movement: dead-hang, got: 41 s }]\n";
    fs::write(dir.path().join("ana.yaml"), client).expect("a file");
    let out = run(
        &["dose", "ana.yaml", "--from", "c", "--as", "json"],
        dir.path(),
    );
    let said = json(&out);
    assert!(
        said["refused"]["why"]
            .as_str()
            .is_some_and(|w| w.contains("clinician"))
    );
    for key in ["limiter", "retest"] {
        assert!(said[key].is_null(), "{said}");
    }
    assert_eq!(said["sessions"], serde_json::json!([]));
    let told = text(&run(&["dose", "ana.yaml", "--from", "c"], dir.path()).stdout);
    assert_eq!(told.lines().count(), 3, "{told}");
}

/// The terminal names no movement with cautions without its signal word, in states, reasons, the class and the dose.
#[test]
fn the_terminal_keeps_the_marks() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    let folder = tempfile::tempdir().expect("a folder");
    let mut files = Vec::new();
    for (name, got) in [("a", "9 reps"), ("b", "25 reps")] {
        let file = folder.path().join(format!("{name}.yaml"));
        let text = format!(
            "results: 1\ntested: [{{ movement: push-up, got: {got} }}, {{ movement: dead-hang, got: 40 s }}]\n"
        );
        std::fs::write(&file, text).expect("results");
        files.push(file);
    }
    let told = |args: &[&str], files: &[std::path::PathBuf]| {
        let out = std::process::Command::new(env!("CARGO_BIN_EXE_rungbook"))
            .args(args)
            .arg("--from")
            .arg(root)
            .args(files)
            .output()
            .expect("it runs");
        assert!(
            out.status.success(),
            "{}",
            String::from_utf8_lossy(&out.stderr)
        );
        String::from_utf8_lossy(&out.stdout).into_owned()
    };
    let goals = [
        "balance-on-hands",
        "freestanding-handstand",
        "heavy-pull-up",
    ];
    let chains: String = goals.map(|id| told(&["chain", id], &[])).concat();
    // The goal's line is the first.
    assert!(
        chains.starts_with("Freestanding handstand [warning]: "),
        "{chains}"
    );
    let said = told(&["assess"], &files)
        + &told(&["assess", "--all"], &files)
        + &told(&["dose"], &files[..1])
        + &chains;
    let proof = rungbook::proof::proofread(&rungbook::io::snapshot(root).expect("a folder"));
    let mut named = 0;
    for (_, m) in proof.curriculum.published().filter(|(_, m)| m.guarded()) {
        // A name inside a longer one is that one's.
        for (at, _) in said.match_indices(m.name()) {
            let rest = &said[at + m.name().len()..];
            let whole = !rest.starts_with([',', ' ']) || rest.starts_with(" [");
            named += usize::from(whole);
            assert!(
                !whole || rest.starts_with(" ["),
                "{}: {}",
                m.id(),
                &said[at..(at + 80).min(said.len())].escape_debug()
            );
        }
    }
    assert!(named > 50, "{named} names were looked at");
}

/// Each state says why in numbers: what is nearly met, what is counted though its foundations are missing, a goal that is reached.
#[test]
fn assess_says_by_how_much() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let folder = tempfile::tempdir().expect("a folder");
    let told = |skill: &str, tested: &str| {
        let file = folder.path().join("jo.yaml");
        let results = format!("results: 1\nbodyweight: 80 kg\ntested:\n{tested}");
        fs::write(&file, results).expect("results");
        let file = file.to_str().expect("a name");
        let day = ["--today", "2026-11-25"];
        let out = run(
            &[&["assess", "--all", "--skill", skill, file], &day[..]].concat(),
            root,
        );
        assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
        text(&out.stdout)
    };
    let said = told(
        "one-leg-to-the-floor",
        "  - { movement: knee-to-wall, got: 9 cm, on: 2026-11-20 }
  - { movement: deep-squat-sit, got: 60 s, on: 2026-11-20 }
  - { movement: single-leg-squat-hand-held-high-box, got: 12 reps, on: 2026-11-20 }\n",
    );
    assert!(
        said.contains(
            "train Knee to wall first; do not try this yet: Knee to wall 10 cm, has 9 cm (90 %)"
        ),
        "{said}"
    );
    let said = told(
        "pull-up",
        "  - { movement: pull-up, got: 9 reps, on: 2026-11-20 }
  - { movement: active-hang, got: 0 s, on: 2026-11-20 }\n",
    );
    assert!(
        said.lines().any(|l| l.contains("counted because Pull-up")
            && l.contains("; these foundations are missing: Active hang")),
        "{said}"
    );
    let said = told(
        "heavy-pull-up",
        "  - { movement: weighted-pull-up, got: 1 rep with 0.5 bw, on: 2026-11-20 }\n",
    );
    assert!(
        said.contains("nothing left to own: the goal is reached"),
        "{said}"
    );
}
