//! Tests as data: `tests/suite/**.md`. A heading is a test; fences labelled with a path are its files, laid over a small sound
//! curriculum; a `findings` fence is the exact expectation, a `chain ID` fence the exact answer, an
//! `assess` fence what the files below `results/` come to on 2026-10-10, a `publish` fence what stops a publish without a note. Everything runs in memory.
//!
//! `REWRITE=1 cargo test --test suite` rewrites the expectations; nothing else does.

use rungbook::chain;
use rungbook::changes;
use rungbook::curriculum::{Day, Owner};
use rungbook::proof::{Proofread, proofread};
use rungbook::readiness;
use rungbook::results;
use rungbook::source::{Content, Findings, Rule, Snapshot, SourceFile, Stray};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// A small curriculum without any finding. A test's files replace or add to it; an empty fence takes a file away.
const BASE: &[(&str, &str)] = &[
    (
        "content/school.yaml",
        "school: Test Room\naddress: https://test.example/c/\nlanguage: en\nunits: metric\nequipment:\n  bar: A bar\n  rings: Two rings\n  tape: A tape\n",
    ),
    (
        "content/movements/ground.yaml",
        "movement: ground\nname: Ground\npattern: core\nposition: prone\nload: body\nequipment: []\nsummary: Lie.\nstandard: 10 reps\ntest: { how: Lie }\ncues: [still]\nfaults: [{ see: moves }]\n",
    ),
    (
        "content/movements/top.yaml",
        "movement: top\nname: Top\npattern: core\nposition: prone\nload: body\nequipment: []\nsummary: Rise.\nneeds:\n  - ground\nstandard: 30 s\ntest: { how: Rise }\ncues: [up]\nfaults: [{ see: falls }]\n",
    ),
    (
        "content/skills/rise.yaml",
        "skill: rise\nname: To rise\ngoal: top\n",
    ),
];

struct Case {
    title: String,
    files: BTreeMap<String, String>,
    /// The fence's label, its body, and the lines it spans in the suite file.
    expectations: Vec<(String, String, std::ops::Range<usize>)>,
}

fn cases(text: &str) -> Vec<Case> {
    let lines: Vec<&str> = text.lines().collect();
    let mut out: Vec<Case> = Vec::new();
    let mut i = 0;
    while i < lines.len() {
        if let Some(title) = lines[i].strip_prefix("## ") {
            out.push(Case {
                title: title.into(),
                files: BTreeMap::new(),
                expectations: Vec::new(),
            });
        }
        if let Some(label) = lines[i]
            .strip_prefix("````")
            .or(lines[i].strip_prefix("```"))
        {
            let fence = if lines[i].starts_with("````") {
                "````"
            } else {
                "```"
            };
            let end = (i + 1..lines.len())
                .find(|j| lines[*j] == fence)
                .expect("every fence is closed");
            let body: String = lines[i + 1..end].iter().map(|l| format!("{l}\n")).collect();
            let case = out.last_mut().expect("a fence stands under a heading");
            let label = label.split_once(' ').map_or(label, |(kind, rest)| {
                if ["yaml", "md", "svg", "json", "csv"].contains(&kind) {
                    rest
                } else {
                    label
                }
            });
            if label.contains('/') && !label.starts_with("chain") {
                case.files.insert(label.into(), body);
            } else {
                case.expectations.push((label.into(), body, i + 1..end));
            }
            i = end;
        }
        i += 1;
    }
    out
}

fn snapshot(case: &Case) -> Snapshot {
    let mut files: BTreeMap<String, Content> = BASE
        .iter()
        .map(|(p, t)| (p.to_string(), Content::Text(t.to_string())))
        .collect();
    if case.files.contains_key("content/") {
        files.clear();
    }
    let laid = |p: &str| p != "content/" && !p.starts_with("results/");
    for (path, text) in case.files.iter().filter(|(p, _)| laid(p)) {
        match text.trim() {
            "" => {
                files.remove(path);
            }
            "(not utf-8)" => {
                files.insert(
                    path.clone(),
                    Content::NotUtf8(Stray::behind(7, b"name: D\xeep")),
                );
            }
            "(33 MB)" => {
                files.insert(path.clone(), Content::TooLarge(32_000_001));
            }
            "(200 MB)" => {
                files.insert(path.clone(), Content::TooLarge(200_000_000));
            }
            "(unreadable)" => {
                files.insert(
                    path.clone(),
                    Content::Unreadable("permission denied".into()),
                );
            }
            "(leads out)" => {
                files.insert(path.clone(), Content::Outside);
            }
            "(empty)" => {
                files.insert(path.clone(), Content::Text(String::new()));
            }
            hex if hex.starts_with("(bytes)") => {
                let bytes = hex
                    .split_whitespace()
                    .skip(1)
                    .map(|b| u8::from_str_radix(b, 16));
                let bytes: Result<Vec<u8>, _> = bytes.collect();
                files.insert(
                    path.clone(),
                    Content::Bytes(bytes.expect("pairs of hex digits")),
                );
            }
            _ => {
                files.insert(path.clone(), Content::Text(text.clone()));
            }
        }
    }
    Snapshot::new(
        files
            .into_iter()
            .map(|(path, content)| SourceFile { path, content })
            .collect(),
    )
}

/// `rule file:line:column "marked text" message`
fn findings(found: &Findings, snapshot: &Snapshot) -> String {
    let mut out = String::new();
    for f in found.iter() {
        let (line, column) = snapshot.place(f.span.file, f.span.start);
        let marked = snapshot.slice(f.span).lines().next().unwrap_or("");
        out.push_str(&format!(
            "{} {}:{line}:{column} \"{marked}\" {}\n",
            f.rule.name(),
            snapshot.path(f.span.file),
            f.message
        ));
        out.push_str(&format!("  help: {}\n", f.help));
        for (span, words) in &f.related {
            let (line, column) = snapshot.place(span.file, span.start);
            out.push_str(&format!(
                "  also {}:{line}:{column} {words}\n",
                snapshot.path(span.file)
            ));
        }
    }
    out
}

fn today() -> Day {
    Day::read("2026-10-10").expect("a day")
}

/// The results files of a case.
fn case_results(case: &Case) -> Snapshot {
    let files = case.files.iter().filter(|(p, _)| p.starts_with("results/"));
    Snapshot::of_texts(files.map(|(p, t)| (p.as_str(), t.as_str())))
}

/// What results come to: findings, then each person's states and what was kept aside.
fn assessed(proof: &Proofread, files: &Snapshot) -> String {
    let curriculum = &proof.curriculum;
    let (people, found) = results::read(files, curriculum, today());
    let mut out = findings(&found, files);
    for person in people {
        out.push_str(&format!("{}\n", person.name));
        let readiness = readiness::assess(curriculum, &proof.resolved.stages, &person, today());
        let steps = readiness::Steps::new(curriculum, &proof.resolved.stages, &person, today());
        for (ix, s) in readiness.all() {
            let missing: Vec<String> = s
                .missing
                .iter()
                .map(|m| {
                    let id = curriculum.movement(m.movement).id();
                    let got = m.got.as_deref().unwrap_or("untested");
                    format!("{id} {} has {got} share {:?}", m.target, m.share)
                })
                .collect();
            let counted = if s.presumed { ", counted" } else { "" };
            let colon = if missing.is_empty() { "" } else { ": " };
            let id = curriculum.movement(ix).id();
            out.push_str(&format!(
                "  {id} {}{counted}{colon}{}\n",
                s.state.word(),
                missing.join("; ")
            ));
            let first = steps.to(ix);
            if s.needs != readiness::Truth::True && !first.direct {
                for step in &first.steps {
                    let id = curriculum.movement(step.movement).id();
                    out.push_str(&format!("    first {id} {}\n", step.target));
                }
            }
        }
        for a in &person.aside {
            out.push_str(&format!(
                "  aside {} {} {}: {}\n",
                a.movement, a.got, a.on, a.why
            ));
        }
    }
    out
}

fn chain_of(proof: &Proofread, id: &str) -> String {
    let curriculum = &proof.curriculum;
    let goal = match curriculum.find(id) {
        Some(Owner::Skill(ix)) => curriculum.skill(ix).goal.clone(),
        _ => return format!("no skill {id}\n"),
    };
    let resolved = chain::resolve(curriculum, &proof.resolved.stages, &goal);
    let ladders = chain::chain_ladders(curriculum, &resolved);
    let name = |ix| curriculum.movement(ix).id().to_string();
    let mut out = String::new();
    for link in &resolved.movements {
        out.push_str(&format!(
            "{} {}{}\n",
            link.stage,
            name(link.movement),
            if link.essential { "" } else { " (alternative)" }
        ));
        for step in ladders.get(&link.movement).into_iter().flatten() {
            let opens: Vec<String> = step.opens.iter().map(|ix| name(*ix)).collect();
            let goals: Vec<String> = step
                .skills
                .iter()
                .map(|ix| format!("skill {}", curriculum.skill(*ix).id))
                .collect();
            out.push_str(&format!(
                "  {} -> {}\n",
                step.target,
                [opens, goals].concat().join(", ")
            ));
        }
    }
    if let Some(route) = chain::newcomer_route(curriculum, goal.movement) {
        let names: Vec<String> = route.movements.iter().map(|ix| name(*ix)).collect();
        out.push_str(&format!(
            "route {} half weeks{}: {}\n",
            route.half_weeks,
            if route.exact { "" } else { " at most" },
            names.join(" ")
        ));
    }
    out
}

fn suites() -> Vec<(PathBuf, String)> {
    let dir = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/suite");
    let mut out: Vec<(PathBuf, String)> = std::fs::read_dir(dir)
        .expect("tests/suite is there")
        .map(|e| e.expect("an entry").path())
        .filter(|p| p.extension().is_some_and(|e| e == "md"))
        .map(|p| {
            (
                p.clone(),
                std::fs::read_to_string(p).expect("a suite is text"),
            )
        })
        .collect();
    out.sort();
    out
}

/// Whether an answer is what a case expects, to the letter; `{a number}` in the expectation stands for any whole number.
fn matches(expected: &str, got: &str) -> bool {
    let mut parts = expected.split("{a number}");
    let Some(mut rest) = parts.next().and_then(|first| got.strip_prefix(first)) else {
        return false;
    };
    for part in parts {
        let number = rest.trim_start_matches(|c: char| c.is_ascii_digit());
        match number.strip_prefix(part) {
            Some(behind) if number.len() < rest.len() => rest = behind,
            _ => return false,
        }
    }
    rest.is_empty()
}

/// What publishing without a note finds besides.
fn changed(proof: &Proofread, snapshot: &Snapshot) -> Findings {
    let stood = match changes::Stood::read(snapshot, proof.curriculum.ledger()) {
        Ok(stood) => stood,
        Err(found) => return found,
    };
    let all = changes::since(&stood, &proof.curriculum);
    changes::refusal(&all, &proof.curriculum)
}

#[test]
fn every_case_gives_exactly_what_it_says() {
    let rewrite = std::env::var("REWRITE").is_ok();
    let mut failures = Vec::new();
    let mut count = 0;
    for (path, text) in suites() {
        let mut lines: Vec<String> = text.lines().map(str::to_string).collect();
        for case in cases(&text).iter().rev() {
            count += 1;
            let snapshot = snapshot(case);
            let proof = proofread(&snapshot);
            assert!(
                !case.expectations.is_empty(),
                "{}: `{}` expects nothing",
                path.display(),
                case.title
            );
            for (label, expected, range) in case.expectations.iter().rev() {
                let got = match label.split_once(' ') {
                    Some(("chain", id)) => chain_of(&proof, id),
                    _ if label == "findings" => findings(&proof.findings, &snapshot),
                    _ if label == "publish" => findings(&changed(&proof, &snapshot), &snapshot),
                    _ if label == "assess" => assessed(&proof, &case_results(case)),
                    _ => panic!("{}: `{label}` is no expectation", path.display()),
                };
                if !matches(expected, &got) {
                    failures.push(format!(
                        "{}: {}\nexpected:\n{expected}\ngot:\n{got}",
                        path.display(),
                        case.title
                    ));
                    lines.splice(range.clone(), got.lines().map(str::to_string));
                }
            }
        }
        if rewrite {
            std::fs::write(&path, lines.join("\n") + "\n").expect("a suite can be written");
        }
    }
    assert!(count > 40, "only {count} cases were found");
    assert!(
        rewrite || failures.is_empty(),
        "{} cases differ\n\n{}",
        failures.len(),
        failures.join("\n\n")
    );
}

#[test]
fn every_rule_has_a_case_that_fires_it() {
    let mut fired = std::collections::BTreeSet::new();
    for (_, text) in suites() {
        for case in cases(&text) {
            let snapshot = snapshot(&case);
            let proof = proofread(&snapshot);
            fired.extend(proof.findings.iter().map(|f| f.rule.name()));
            let (_, found) = results::read(&case_results(&case), &proof.curriculum, today());
            fired.extend(found.iter().map(|f| f.rule.name()));
            fired.extend(changed(&proof, &snapshot).iter().map(|f| f.rule.name()));
        }
    }
    let silent: Vec<&str> = Rule::ALL
        .iter()
        .map(|r| r.name())
        .filter(|n| !fired.contains(n))
        .collect();
    assert!(silent.is_empty(), "no case fires {silent:?}");
}

#[test]
fn the_base_is_without_findings() {
    let snapshot = Snapshot::of_texts(BASE.iter().copied());
    let proof = proofread(&snapshot);
    assert!(
        proof.findings.is_empty(),
        "{}",
        findings(&proof.findings, &snapshot)
    );
}
