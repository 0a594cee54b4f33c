//! The house rules that can be checked: module docs, who may touch the disk, the code map, file sizes, dependencies.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn sources() -> Vec<(String, String)> {
    let mut out: Vec<PathBuf> = walkdir::WalkDir::new(root().join("src"))
        .into_iter()
        .map(|e| e.expect("an entry").into_path())
        .filter(|p| p.extension().is_some_and(|e| e == "rs"))
        .collect();
    out.sort();
    assert!(out.len() > 40);
    out.into_iter()
        .map(|p| {
            (
                p.strip_prefix(root())
                    .expect("inside")
                    .display()
                    .to_string(),
                fs::read_to_string(&p).expect("text"),
            )
        })
        .collect()
}

/// The part of a file before its tests.
fn before_tests(text: &str) -> &str {
    text.split("#[cfg(test)]").next().unwrap_or(text)
}

#[test]
fn every_file_says_what_it_is() {
    let bare: Vec<String> = sources()
        .into_iter()
        .filter(|(_, t)| !t.starts_with("//! "))
        .map(|s| s.0)
        .collect();
    assert!(bare.is_empty(), "{bare:?}");
}

#[test]
fn only_io_touches_disk_and_clock() {
    let words = [
        "std::fs",
        "fs::read",
        "fs::write",
        "SystemTime::now",
        "Instant",
        "Zoned::now",
        "std::net",
    ];
    for (path, text) in sources().iter().filter(|(p, _)| !p.starts_with("src/io/")) {
        for word in words {
            assert!(!before_tests(text).contains(word), "{path} uses {word}");
        }
    }
}

#[test]
fn nothing_unwraps_or_is_left_to_do() {
    for (path, text) in sources() {
        for word in [".unwrap()", "todo!(", "unimplemented!(", "TODO", "FIXME"] {
            assert!(!before_tests(&text).contains(word), "{path} has {word}");
        }
    }
}

/// Lines of a file, before its tests.
const LONGEST_FILE: usize = 500;

#[test]
fn no_file_is_too_large_to_know() {
    let large: Vec<(String, usize)> = sources()
        .into_iter()
        .map(|(p, t)| (p, before_tests(&t).lines().count()))
        .filter(|(_, n)| *n > LONGEST_FILE)
        .collect();
    assert!(large.is_empty(), "{large:?}");
    let main = fs::read_to_string(root().join("src/main.rs")).expect("text");
    assert!(main.lines().count() <= 40);
}

/// Lines of a function's body, but for empty ones and comments.
const LONGEST_FUNCTION: usize = 60;

/// What may be longer, and why.
const LONG_FUNCTIONS: &[(&str, &str, &str)] = &[
    (
        "src/morning/say_watch.rs",
        "watch",
        "a flat match: one arm for each thing to watch",
    ),
    (
        "src/reading/spread.rs",
        "finish",
        "a draft taken apart and a movement put together, a line for each key",
    ),
];

/// The functions of a formatted source with the lines of their bodies.
fn functions(text: &str) -> Vec<(String, usize)> {
    let lines: Vec<&str> = text.lines().collect();
    let mut out = Vec::new();
    for (i, line) in lines.iter().enumerate() {
        let inner = line.trim_start();
        let plain = [
            "pub(in crate::site) ",
            "pub(super) ",
            "pub(crate) ",
            "pub ",
            "const ",
        ]
        .iter()
        .fold(inner, |rest, word| rest.strip_prefix(word).unwrap_or(rest));
        let Some(name) = plain.strip_prefix("fn ") else {
            continue;
        };
        let name = name.split(['(', '<']).next().unwrap_or(name);
        // The brace that closes it stands where it began.
        let end = format!("{}}}", &line[..line.len() - inner.len()]);
        let head = lines[i..].iter().position(|l| l.ends_with(['{', ';', '}']));
        let Some(first) = head.map(|n| i + n).filter(|at| lines[*at].ends_with('{')) else {
            continue;
        };
        let body = lines[first + 1..].iter().take_while(|l| **l != end);
        let code = |l: &&&str| !l.trim().is_empty() && !l.trim_start().starts_with("//");
        out.push((name.to_string(), body.filter(code).count()));
    }
    out
}

#[test]
fn no_function_is_too_long_to_see() {
    assert_eq!(
        functions(
            "impl A {\n    pub fn b(\n        c: D,\n    ) {\n        e();\n        // f\n\n        if g {\n            h();\n        }\n    }\n}\n"
        ),
        [("b".to_string(), 4)]
    );
    let mut long = Vec::new();
    for (path, text) in sources() {
        for (name, lines) in functions(before_tests(&text)) {
            if lines > LONGEST_FUNCTION {
                long.push((path.clone(), name, lines));
            }
        }
    }
    let may = |path: &str, name: &str| {
        let mut all = LONG_FUNCTIONS.iter();
        all.any(|(p, n, _)| *p == path && *n == name)
    };
    let over: Vec<_> = long.iter().filter(|(p, n, _)| !may(p, n)).collect();
    assert!(over.is_empty(), "split by meaning: {over:?}");
    for (path, name, _) in LONG_FUNCTIONS {
        let is_long = long.iter().any(|(p, n, _)| p == path && n == name);
        assert!(is_long, "{path}: `{name}` is no exception any more");
    }
}

/// What stands between the braces of a struct.
fn fields<'t>(text: &'t str, name: &str) -> Option<&'t str> {
    let after = text.split_once(&format!("pub struct {name} {{\n"))?.1;
    Some(after.split_once("\n}")?.0)
}

#[test]
fn a_record_is_changed_by_nobody_who_has_it() {
    let sealed = [
        ("src/curriculum/mod.rs", "Curriculum"),
        ("src/curriculum/movement.rs", "Movement"),
    ];
    for (path, name) in sealed {
        let text = fs::read_to_string(root().join(path)).expect(path);
        let own = fields(&text, name).unwrap_or_else(|| panic!("{path} has no {name}"));
        let open = |line: &&str| line.trim_start().starts_with("pub");
        assert_eq!(own.lines().find(open), None, "{name} shows a field");
        for leak in ["DerefMut", "AsMut", "BorrowMut"] {
            let leak = format!("{leak} for {name} ");
            assert!(!text.contains(&leak), "{name} can be changed by {leak}");
        }
        // Its parts are open, and so found as open.
        let parts = fields(&text, &format!("{name}Parts")).expect("its parts");
        assert!(parts.lines().any(|line| open(&line)), "{name}Parts");
    }
}

/// A key of the table that nothing reads would be accepted and do nothing.
#[test]
fn every_key_of_a_movement_is_read() {
    use rungbook::curriculum::keys;
    let read = ["draft", "record", "manner", "posture"].map(|file| {
        fs::read_to_string(root().join(format!("src/reading/{file}.rs"))).expect("text")
    });
    let tables = [
        keys::MOVEMENT,
        keys::FAMILY_ONLY,
        keys::MEMBER_ONLY,
        keys::TEST,
        keys::FAULT,
        keys::INSTEAD,
        keys::PICTURE,
        keys::CLIP,
        keys::JOINTS,
        keys::LEVERAGE,
    ];
    for key in tables.into_iter().flatten() {
        let name = format!("\"{}\"", key.name);
        let is_read = read.iter().any(|text| before_tests(text).contains(&name));
        assert!(is_read, "nothing reads the key `{}`", key.name);
    }
}

/// The rooms of the program: each may use those before it in this list, never those behind it.
const ROOMS: &[&str] = &[
    "source",
    "words",
    "curriculum",
    "leverage",
    "reading",
    "chain",
    "results",
    "readiness",
    "placement",
    "screening",
    "strength",
    "training",
    "history",
    "morning",
    "weigh",
    "proof",
    "rename",
    "site",
    "io",
    "command",
];

/// The rooms inside `site`, in the same order; what stands above them is in none.
const ROOMS_OF_SITE: &[&str] = &[
    "theme", "names", "material", "draw", "media", "feeds", "pages", "audit",
];

/// What a text names below `root` (such as `crate::`), a group in braces taken apart.
fn named_below(root: &str, text: &str) -> BTreeSet<String> {
    let word = |s: &str| -> String {
        let end = s.find(|c: char| !c.is_alphanumeric() && c != '_');
        s[..end.unwrap_or(s.len())].to_string()
    };
    let mut out = BTreeSet::new();
    for (at, _) in text.match_indices(root) {
        let rest = &text[at + root.len()..];
        let Some(group) = rest.strip_prefix('{') else {
            out.insert(word(rest));
            continue;
        };
        let (mut depth, mut from) = (0, 0);
        for (i, c) in group.char_indices() {
            match c {
                '{' => depth += 1,
                ',' | '}' if depth == 0 => {
                    out.insert(word(group[from..i].trim()));
                    from = i + 1;
                    if c == '}' {
                        break;
                    }
                }
                '}' => depth -= 1,
                _ => {}
            }
        }
    }
    out
}

#[test]
fn what_a_text_names_is_seen() {
    let text = "use crate::a::{b, c};\nuse crate::{d::{x, e}, f};\nfn g() { crate::h::i() }";
    let named: Vec<String> = named_below("crate::", text).into_iter().collect();
    assert_eq!(named, ["a", "d", "f", "h"]);
}

/// The room among `rooms` in which a file below `folder` lies: its folder, or its own file.
fn room_of(rooms: &[&str], folder: &str, path: &str) -> Option<usize> {
    let below = path.strip_prefix(folder)?;
    let first = below.split('/').next()?;
    let first = first.strip_suffix(".rs").unwrap_or(first);
    rooms.iter().position(|room| *room == first)
}

#[test]
fn arrows_point_down() {
    for (path, text) in sources() {
        let Some(at) = room_of(ROOMS, "src/", &path) else {
            continue;
        };
        let named = named_below("crate::", before_tests(&text));
        for later in &ROOMS[at + 1..] {
            assert!(!named.contains(*later), "{path} uses the room {later}");
        }
    }
}

/// Inside `site` a room names those before it, itself, and nothing that stands above the rooms.
#[test]
fn arrows_point_down_inside_the_site() {
    for room in ROOMS_OF_SITE {
        let folder = root().join("src/site").join(room);
        assert!(folder.is_dir(), "{room} is no room");
    }
    for (path, text) in sources() {
        let Some(at) = room_of(ROOMS_OF_SITE, "src/site/", &path) else {
            continue;
        };
        let text = before_tests(&text);
        let mut named = named_below("crate::site::", text);
        // What a room calls by way of its parent, which is the site itself in the room's first file.
        if path.ends_with(&format!("site/{}/mod.rs", ROOMS_OF_SITE[at])) {
            named.extend(named_below("super::", text));
        } else {
            named.extend(named_below("super::super::", text));
        }
        for name in named {
            let below = ROOMS_OF_SITE[..=at].contains(&name.as_str());
            assert!(below, "{path} uses site::{name}, which is not below it");
        }
        assert!(
            !text.contains("use crate::site;"),
            "{path} uses all of the site"
        );
    }
}

#[test]
fn the_code_map_is_the_tree() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).expect("text");
    let listed: BTreeSet<String> = text
        .lines()
        .filter_map(|l| l.strip_prefix("| `src/"))
        .filter_map(|l| l.split("/`").next().map(str::to_string))
        .collect();
    let there: BTreeSet<String> = fs::read_dir(root().join("src"))
        .expect("src")
        .map(|e| e.expect("an entry"))
        .filter(|e| e.path().is_dir())
        .map(|e| e.file_name().to_string_lossy().into_owned())
        .collect();
    assert_eq!(listed, there);
}

/// The line of the map in which a script of the page is told.
#[test]
fn the_code_map_tells_every_script_and_page() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).expect("text");
    let folders = [("themes/chalk", ".js"), ("src/site/pages", ".rs")];
    let mut missing = Vec::new();
    for (folder, ending) in folders {
        for entry in fs::read_dir(root().join(folder)).expect("a folder") {
            let path = entry.expect("an entry").path();
            let name = path.file_name().map(|n| n.to_string_lossy().into_owned());
            let name = name.filter(|n| n.ends_with(ending) && n != "mod.rs");
            missing.extend(name.filter(|n| !text.contains(&format!("`{n}`"))));
        }
    }
    assert!(
        missing.is_empty(),
        "DEVELOPERS.md says nothing of {missing:?}"
    );
}

/// Every file and folder that DEVELOPERS.md names is there, from the root, a room, the theme, or the room whose line it stands in.
#[test]
fn what_the_manual_names_is_there() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).expect("text");
    let endings = [".rs", ".js", ".html", ".yaml", ".py", "/"];
    let mut seen = 0;
    for line in text.lines() {
        let own = line.strip_prefix("| `").and_then(|l| l.split('`').next());
        let places = [
            "",
            "src",
            "src/site",
            "src/site/pages",
            "themes/chalk",
            "tests/page",
        ];
        for name in line.split('`').skip(1).step_by(2) {
            let is_path = name
                .chars()
                .all(|c| c.is_alphanumeric() || "/-_.".contains(c));
            if !is_path || !endings.iter().any(|e| name.ends_with(e)) {
                continue;
            }
            seen += 1;
            let there = |place: &str| root().join(place).join(name).exists();
            // What `publish` writes, or a coach may have.
            let elsewhere = name.starts_with("themes/<") || name == ".site.new";
            let found = places.into_iter().chain(own).any(there) || elsewhere;
            assert!(found, "DEVELOPERS.md names `{name}`, which is not there");
        }
    }
    assert!(seen > 40, "{seen}");
}

/// Publishing looks at a script line by line when it leaves the comments out.
#[test]
fn no_text_of_a_script_runs_over_a_line() {
    let theme = root().join("themes/chalk");
    for entry in std::fs::read_dir(theme).expect("the theme").flatten() {
        let path = entry.path();
        if path.extension().is_some_and(|e| e == "js") {
            let text = std::fs::read_to_string(&path).expect("a script");
            for (i, line) in text.lines().enumerate() {
                let ticks = line.matches('`').count();
                assert!(ticks.is_multiple_of(2), "{}:{}", path.display(), i + 1);
            }
        }
    }
}

#[test]
fn every_dependency_says_why() {
    let text = fs::read_to_string(root().join("Cargo.toml")).expect("text");
    let section = text
        .split("[dependencies]")
        .nth(1)
        .and_then(|s| s.split("[build-dependencies]").next())
        .expect("dependencies");
    let manual = fs::read_to_string(root().join("DEVELOPERS.md")).expect("text");
    let libraries = manual.split("## Libraries").nth(1).expect("the libraries");
    let libraries = libraries.split("\n## ").next().unwrap_or(libraries);
    let lines: Vec<&str> = section.lines().filter(|l| !l.trim().is_empty()).collect();
    for (i, line) in lines.iter().enumerate() {
        if line.starts_with('#') {
            continue;
        }
        let above = i > 0 && lines[i - 1].starts_with('#');
        assert!(line.contains(" # ") || above, "{line}");
        let name = line.split(' ').next().unwrap_or(line);
        assert!(
            libraries.contains(name),
            "DEVELOPERS.md does not say why `{name}` is there"
        );
    }
}

#[test]
fn the_readme_names_the_test_command_and_ci_runs_it() {
    let readme = fs::read_to_string(root().join("README.md")).expect("text");
    assert!(readme.contains("cargo run --release -- publish") && readme.contains("tests/run"));
    let ci = fs::read_to_string(root().join(".ci/run")).expect("text");
    assert!(ci.contains("tests/run"));
}
