//! `assess --page` and `--since`: the page is audited, draws what its tables say, and marks every name; in Hebrew its texts are read
//! from the right; what was seen once is not new again.

use super::{DAY, clients, root, text};
use serde_json::Value;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::{Command, Output};

fn assess(from: &Path, args: &[&str], file: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(["assess", "--today", DAY, "--from"])
        .arg(from)
        .args(args)
        .arg(file)
        .output()
        .expect("it runs")
}

/// What stands between two marks, each time.
fn between<'t>(text: &'t str, from: &str, to: &str) -> Vec<&'t str> {
    let parts = text.split(from).skip(1);
    parts
        .filter_map(|p| p.split_once(to).map(|(of, _)| of))
        .collect()
}

fn copy(from: &Path, to: &Path) {
    for entry in walkdir::WalkDir::new(from) {
        let path = entry.expect("an entry").into_path();
        let to = to.join(path.strip_prefix(from).expect("inside"));
        match path.is_dir() {
            true => fs::create_dir_all(&to).expect("a folder"),
            false => fs::copy(&path, &to).map(drop).expect("a file"),
        }
    }
}

#[test]
fn the_page_draws_what_its_tables_say() {
    let dir = tempfile::tempdir().expect("a folder");
    let page = dir.path().join("page.html");
    let args = ["--as", "json", "--page", page.to_str().expect("a path")];
    let out = assess(root(), &args, &clients());
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    let answer: Value = serde_json::from_slice(&out.stdout).expect("JSON");
    let html = fs::read_to_string(&page).expect("a page");
    let sections = between(&html, "<section>", "</section>");
    let people = answer["people"].as_array().expect("people");
    assert_eq!(sections.len(), people.len());
    let mut drawn = 0;
    for (section, person) in sections.iter().zip(people) {
        // Each movement tested on two days and more has its drawing, in the order of the answer.
        let history = person["history"].as_object().expect("histories");
        let rows = history
            .iter()
            .filter(|(_, h)| h["tests"].as_array().is_some_and(|t| t.len() > 1));
        let mut rows: Vec<(&String, usize)> = rows
            .map(|(id, h)| (id, h["tests"].as_array().map_or(0, Vec::len)))
            .collect();
        let articles = between(section, "<article>", "</article>");
        assert_eq!(articles.len(), rows.len(), "{}", person["name"]);
        for article in articles {
            let id = between(article, "data-movement=\"", "\"")[0];
            let at = rows
                .iter()
                .position(|(of, _)| *of == id)
                .expect("a history");
            let (_, tests) = rows.remove(at);
            let table = between(article, "<tbody>", "</tbody>")[0];
            let corners = between(article, "points=\"", "\"")[0]
                .split_whitespace()
                .count();
            let marks = article.matches("<circle").count();
            assert_eq!(
                (tests, tests, tests),
                (table.matches("<tr>").count(), corners, marks),
                "{id}"
            );
            // The number beside the newest mark is that of the table's last row, the day that of its first.
            let newest = between(article, "font-weight=\"bold\">", "<")[0];
            let cells = between(table, "<td>", "</td>");
            assert_eq!(newest, *cells.last().expect("a row"), "{id}");
            let first = between(table, "<th scope=\"row\">", "</th>")[0];
            assert!(
                article.contains(&format!(">{first}</text>")),
                "{id} {first}"
            );
            drawn += 1;
        }
    }
    assert!(drawn > 3, "{drawn}");
}

/// Every name of a guarded movement or skill has its mark, counted by the standing site's own data.
#[test]
fn every_name_has_its_mark() {
    let dir = tempfile::tempdir().expect("a folder");
    let page = dir.path().join("page.html");
    let out = assess(
        root(),
        &["--page", page.to_str().expect("a path")],
        &clients(),
    );
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    let html = fs::read_to_string(&page).expect("a page");
    let data = fs::read_to_string(root().join("site-example/data/curriculum.json")).expect("data");
    let data: Value = serde_json::from_str(&data).expect("JSON");
    let signals: BTreeMap<&str, bool> = data["movements"]
        .as_array()
        .expect("movements")
        .iter()
        .map(|m| (m["id"].as_str().expect("an id"), !m["signal"].is_null()))
        .collect();
    let (mut guarded, mut plain) = (0, 0);
    for part in html.split("data-movement=\"").skip(1) {
        let id = part.split('"').next().expect("an id");
        // Up to the next name.
        let marked = part
            .split("data-skill=")
            .next()
            .is_some_and(|p| p.contains("data-caution"));
        match signals[id] {
            true => assert!(marked, "{id} has no mark: {}", &part[..part.len().min(200)]),
            false => assert!(!marked, "{id} has a mark"),
        }
        guarded += usize::from(signals[id]);
        plain += usize::from(!signals[id]);
    }
    assert!(guarded > 10 && plain > 3, "{guarded} {plain}");
}

/// A theme that leaves the marks out is refused, and the page that stands stays.
#[test]
fn a_page_without_marks_is_refused() {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&root().join("content"), &dir.path().join("content"));
    let theme = dir.path().join("themes/bare");
    fs::create_dir_all(&theme).expect("a folder");
    let html = fs::read_to_string(root().join("themes/chalk/history.html")).expect("a template");
    let bare = html.replace(
        "{{ d.named | safe }}",
        "<span data-movement=\"pull-up\">Pull-up</span>",
    );
    assert_ne!(bare, html);
    fs::write(theme.join("history.html"), bare).expect("written");
    let school = dir.path().join("content/school.yaml");
    let said = fs::read_to_string(&school).expect("the school");
    let page = dir.path().join("page.html");
    let args = ["--page", page.to_str().expect("a path")];
    let out = assess(dir.path(), &args, &clients());
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    let before = fs::read_to_string(&page).expect("a page");
    let said = match said.contains("\ntheme:") {
        true => said.replace("theme: chalk", "theme: bare"),
        false => format!("{said}\ntheme: bare\n"),
    };
    fs::write(&school, said).expect("written");
    let out = assess(dir.path(), &args, &clients());
    assert_eq!(out.status.code(), Some(1), "{}", text(&out.stdout));
    assert!(
        text(&out.stderr).contains("Pull-up") || text(&out.stderr).contains("pull-up"),
        "{}",
        text(&out.stderr)
    );
    assert_eq!(fs::read_to_string(&page).expect("a page"), before);
}

/// Time goes to the right; a Hebrew text begins at its right end, so that day, month and year stand in their order.
#[test]
fn a_hebrew_drawing_is_read_from_the_right() {
    let dir = tempfile::tempdir().expect("a folder");
    let results = dir.path().join("one.yaml");
    fs::write(&results, "results: 1\nname: Noa\ntested:\n  - { movement: dead-hang, got: 25 s, on: 2026-09-20 }\n  - { movement: dead-hang, got: 40 s, on: 2026-11-20 }\n").expect("written");
    let draw = |from: &Path| {
        let page = dir.path().join("page.html");
        let out = assess(from, &["--page", page.to_str().expect("a path")], &results);
        assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
        fs::read_to_string(&page).expect("a page")
    };
    let anchors = |html: &str| -> Vec<String> {
        let texts = between(html, "<text", ">").into_iter();
        texts
            .map(|t| between(t, "text-anchor=\"", "\"")[0].to_string())
            .collect()
    };
    let (left, right) = (draw(root()), draw(&root().join("tests/words/he")));
    assert!(left.contains("direction=\"ltr\"") && right.contains("direction=\"rtl\""));
    let turned = |all: &[String]| -> Vec<String> {
        let turn = |a: &String| match a.as_str() {
            "start" => "end".to_string(),
            "end" => "start".to_string(),
            both => both.to_string(),
        };
        all.iter().rev().take(4).map(turn).collect()
    };
    // The last four texts: the first number, the newest, both days.
    let (a, b) = (anchors(&left), anchors(&right));
    let last: Vec<String> = b.iter().rev().take(4).cloned().collect();
    assert_eq!(turned(&a), last);
    assert!(right.contains("נובמבר"), "the day in Hebrew");
}

/// What `--save` kept is not new again, whatever day it is of; what comes after it is, and what was tested earlier and entered late.
#[test]
fn new_is_what_was_not_seen_yet() {
    let dir = tempfile::tempdir().expect("a folder");
    let results = dir.path().join("ana.yaml");
    let write = |rows: &[(&str, &str, &str)]| {
        let mut all = "results: 1\nname: Ana\ngoal: strict-ring-muscle-up\ntested:\n".to_string();
        for (movement, got, on) in rows {
            all.push_str(&format!(
                "  - {{ movement: {movement}, got: {got}, on: {on} }}\n"
            ));
        }
        fs::write(&results, all).expect("written");
    };
    let file = dir.path().join("standing.json");
    let file = file.to_str().expect("a path");
    let new = |args: &[&str]| {
        let out = assess(root(), args, &results);
        assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
        let said = text(&out.stdout);
        let line = said.lines().find(|l| l.starts_with("  new"));
        line.unwrap_or("")
            .trim_start_matches("  new")
            .trim()
            .to_string()
    };
    let first = [
        ("bar-dip", "4 reps", "2026-10-20"),
        ("bar-dip", "9 reps", "2026-11-22"),
        ("pull-up", "5 reps", "2026-10-20"),
    ];
    write(&first);
    assert!(new(&["--save", file]).contains("9 reps (was 4 reps)"));
    assert_eq!(new(&["--since", file]), "", "all of it was seen");
    assert!(
        new(&[]).contains("9 reps (was 4 reps)"),
        "without a standing the newest round is new"
    );
    let mut rows = first.to_vec();
    // Two later rounds: against the test before only the last would be new.
    rows.extend([
        ("bar-dip", "11 reps", "2026-11-10"),
        ("pull-up", "6 reps", "2026-11-24"),
    ]);
    write(&rows);
    let said = new(&["--since", file]);
    assert!(
        said.contains("11 reps (was 9 reps)") && said.contains("6 reps (was 5 reps)"),
        "{said}"
    );
    let said = new(&[]);
    assert!(!said.contains("11 reps"), "{said}");
    // Nobody that the standing knows: as without one.
    let other = fs::read_to_string(file)
        .expect("kept")
        .replace("\"Ana\"", "\"Ben\"");
    let stranger = dir.path().join("other.json");
    fs::write(&stranger, other).expect("written");
    assert_eq!(
        new(&["--since", stranger.to_str().expect("a path")]),
        new(&[])
    );
    // Anything else is refused, and says what it should be.
    for odd in ["{}", "results: 1", "{\"standing\": 1}"] {
        fs::write(&stranger, odd).expect("written");
        let out = assess(
            root(),
            &["--since", stranger.to_str().expect("a path")],
            &results,
        );
        assert_eq!(out.status.code(), Some(2), "{odd}");
        assert!(
            text(&out.stderr).contains("assess --save"),
            "{}",
            text(&out.stderr)
        );
    }
}
