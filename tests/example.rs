//! The shipped curriculum and the site committed from it.

use html5gum::{Token, Tokenizer};
use rungbook::chain::necessary_leaves;
use rungbook::curriculum::Mass;
use rungbook::curriculum::target::{Added, Target};
use rungbook::curriculum::words::{BodyPart, Pattern, Position, Word};
use rungbook::proof::{Proofread, proofread};
use rungbook::site::{self, Renderer};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn files(dir: &Path) -> BTreeMap<String, Vec<u8>> {
    walkdir::WalkDir::new(dir)
        .into_iter()
        .map(|e| e.expect("an entry"))
        .filter(|e| e.file_type().is_file())
        .map(|e| {
            (
                e.path()
                    .strip_prefix(dir)
                    .expect("inside")
                    .to_string_lossy()
                    .into_owned(),
                fs::read(e.path()).expect("a file"),
            )
        })
        .collect()
}

fn shipped() -> Proofread {
    proofread(&rungbook::io::snapshot(root()).expect("the repository is a curriculum"))
}

#[test]
fn site_example_is_what_publish_writes_byte_for_byte() {
    let committed = files(&root().join("site-example"));
    for (threads, language, zone) in [("1", "C", "UTC"), ("4", "tr_TR.UTF-8", "Pacific/Auckland")] {
        let dir = tempfile::tempdir().expect("a folder");
        let to = dir.path().join("site");
        let out = Command::new(env!("CARGO_BIN_EXE_rungbook"))
            .args(["publish", "--from"])
            .arg(root())
            .arg("--to")
            .arg(&to)
            .env("RAYON_NUM_THREADS", threads)
            .env("LANG", language)
            .env("LC_ALL", language)
            .env("TZ", zone)
            .current_dir(dir.path())
            .output()
            .expect("the program runs");
        assert!(
            out.status.success(),
            "{}",
            String::from_utf8_lossy(&out.stderr)
        );
        let written = files(&to);
        let differ: Vec<&String> = committed
            .keys()
            .chain(written.keys())
            .filter(|k| committed.get(*k) != written.get(*k))
            .collect();
        assert!(differ.is_empty(), "publish again and commit: {differ:?}");
    }
}

#[test]
fn every_link_of_every_page_leads_somewhere() {
    let site = files(&root().join("site-example"));
    let mut ids: HashMap<&str, BTreeSet<String>> = HashMap::new();
    let mut links: Vec<(String, String)> = Vec::new();
    for (path, bytes) in site.iter().filter(|(p, _)| p.ends_with(".html")) {
        let text = String::from_utf8(bytes.clone()).expect("pages are UTF-8");
        let page = ids.entry(path).or_default();
        for token in Tokenizer::new(&text) {
            let Ok(Token::StartTag(tag)) = token else {
                continue;
            };
            for (key, value) in &tag.attributes {
                let (key, value) = (
                    String::from_utf8_lossy(key).into_owned(),
                    String::from_utf8_lossy(value).into_owned(),
                );
                match key.as_str() {
                    "id" => assert!(
                        page.insert(value.clone()),
                        "{path} has the id {value} twice"
                    ),
                    "href" | "src" | "poster" => links.push((path.clone(), value)),
                    _ => {}
                }
            }
        }
    }
    assert!(links.len() > 3000, "only {} links", links.len());
    let address = "https://tidewall.example/curriculum/";
    let mut broken = Vec::new();
    for (from, to) in &links {
        let inside = to.strip_prefix(address);
        if inside.is_none() && (to.contains("://") || to.starts_with("mailto:")) {
            continue;
        }
        assert!(
            from == "404.html" || inside.is_none() || to.as_str() == canonical(address, from),
            "{from}: {to} is not relative"
        );
        let (path, fragment) = inside
            .unwrap_or(to)
            .split_once('#')
            .unwrap_or((inside.unwrap_or(to), ""));
        let target = match (path, inside.is_some()) {
            ("", true) => "index.html",
            ("", false) => from.as_str(),
            (path, _) => path
                .trim_start_matches("./")
                .split('?')
                .next()
                .unwrap_or(path),
        };
        let found = site.contains_key(target)
            && (fragment.is_empty() || ids.get(target).is_some_and(|i| i.contains(fragment)));
        if !found {
            broken.push(format!("{from} -> {to}"));
        }
    }
    assert!(broken.is_empty(), "{} broken: {broken:?}", broken.len());
}

fn canonical(address: &str, page: &str) -> String {
    if page == "index.html" {
        address.to_string()
    } else {
        format!("{address}{page}")
    }
}

#[test]
fn the_shipped_curriculum_is_without_findings() {
    let proof = shipped();
    let rules: Vec<String> = proof
        .findings
        .iter()
        .map(|f| format!("{}: {}", f.rule.name(), f.message))
        .collect();
    assert!(rules.is_empty(), "{rules:#?}");
}

#[test]
fn the_shipped_curriculum_is_a_real_one() {
    let proof = shipped();
    let curriculum = &proof.curriculum;
    assert!(curriculum.skills().count() >= 5);
    assert!(curriculum.len() >= 60, "{} movements", curriculum.len());
    let two_axes = curriculum
        .families()
        .filter(|(_, f)| f.axes.len() >= 2)
        .count();
    assert!(two_axes >= 4, "{two_axes} families over two axes");
    let choices: usize = curriculum
        .movements()
        .map(|(_, m)| m.needs().choices())
        .sum();
    assert!(choices >= 12, "{choices} choices");
    let mut gates = BTreeSet::new();
    for (_, m) in curriculum.movements() {
        m.needs().visit(&mut |leaf| {
            gates.insert(curriculum.movement(leaf.movement).pattern());
        });
    }
    assert!(gates.contains(&Pattern::Mobility) && gates.contains(&Pattern::Exit));
    for (_, m) in curriculum.movements() {
        assert!(m.note().is_some(), "{} has no note", m.id());
    }
    for (_, s) in curriculum.skills() {
        assert!(
            proof
                .resolved
                .stages
                .of(s.goal.movement)
                .is_some_and(|s| s >= 3)
        );
    }
}

/// Sentences of eight words or more, in small letters, links as their text.
fn sentences(text: &str) -> Vec<String> {
    let outside: String = text.split("```").step_by(2).collect();
    let mut plain = String::new();
    let mut rest = outside.as_str();
    while let Some(at) = rest.find("](") {
        plain.push_str(&rest[..at]);
        rest = rest[at..].find(')').map_or("", |end| &rest[at + end + 1..]);
    }
    plain.push_str(rest);
    let lines: String = plain
        .lines()
        .filter(|l| !l.starts_with('#'))
        .collect::<Vec<_>>()
        .join(" ");
    lines
        .split(['.', '!', '?', ';', ':'])
        .map(|s| {
            s.to_lowercase()
                .split(|c: char| !c.is_alphanumeric() && c != '\'')
                .filter(|w| !w.is_empty())
                .collect::<Vec<_>>()
                .join(" ")
        })
        .filter(|s| s.split(' ').count() >= 8)
        .collect()
}

#[test]
fn notes_have_substance_and_share_no_sentence() {
    let mut seen: HashMap<String, PathBuf> = HashMap::new();
    let mut shared = Vec::new();
    let mut count = 0;
    for (path, bytes) in files(&root().join("content/notes")) {
        let text = String::from_utf8(bytes).expect("notes are UTF-8");
        let words = rungbook::source::markdown::outline(rungbook::source::FileId(0), &text).words;
        if path != "pages/about-the-coach.md" {
            assert!(words >= 60, "{path} has {words} words");
        }
        for sentence in sentences(&text) {
            count += 1;
            if let Some(other) = seen.insert(sentence.clone(), path.clone().into())
                && other != Path::new(&path)
            {
                shared.push(format!("{path} and {}: {sentence}", other.display()));
            }
        }
    }
    assert!(count > 300, "only {count} sentences were found");
    assert!(shared.is_empty(), "{shared:#?}");
}

/// Schemas and data against the Python package jsonschema, an outside library.
#[test]
fn definitions_and_data_fit_their_schemas() {
    let python = std::env::var("RUNGBOOK_PYTHON")
        .unwrap_or_else(|_| root().join("target/venv/bin/python").display().to_string());
    let script = root().join("tests/reference/schemas.py");
    let child = Command::new(&python)
        .arg(&script)
        .arg(env!("CARGO_BIN_EXE_rungbook"))
        .current_dir(root())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn();
    let Ok(child) = child else {
        eprintln!("SKIPPED SCHEMA TESTS: {python} cannot be run; tests/run makes it");
        assert!(
            std::env::var("CI").as_deref() != Ok("true"),
            "the schemas must be checked under CI"
        );
        return;
    };
    let out = child.wait_with_output().expect("the reference ends");
    let said =
        String::from_utf8_lossy(&out.stdout).into_owned() + &String::from_utf8_lossy(&out.stderr);
    assert!(out.status.success(), "{said}");
    assert!(said.contains("checked"), "{said}");
}

/// The feed by feedparser, schema.org data by PyLD, the manifest as JSON.
#[test]
fn feed_and_data_are_read_by_others() {
    let Some(python) = std::env::var_os("RUNGBOOK_PYTHON") else {
        return;
    };
    let script = r#"
import feedparser, json, pathlib, re, sys
from pyld import jsonld
site = pathlib.Path(sys.argv[1])
feed = feedparser.parse((site / "changes.atom").read_bytes())
assert not feed.bozo, feed.bozo_exception
assert feed.version == "atom10" and feed.entries and all(e.id and e.updated_parsed and e.title for e in feed.entries)
manifest = json.loads((site / "manifest.webmanifest").read_text())
assert manifest["name"] and manifest["icons"] and manifest["start_url"] == "index.html"
count = 0
for page in sorted(site.glob("*.html")):
    for text in re.findall(r'<script type="application/ld\+json">(.*?)</script>', page.read_text(), re.S):
        data = json.loads(text)
        data["@context"] = {"@vocab": "https://schema.org/"}
        expanded = jsonld.expand(data)
        assert expanded and expanded[0]["@type"][0].startswith("https://schema.org/"), page
        assert "https://schema.org/name" in expanded[0], page
        count += 1
print(count)
"#;
    let out = std::process::Command::new(python)
        .args(["-c", script])
        .arg(Path::new(env!("CARGO_MANIFEST_DIR")).join("site-example"))
        .output()
        .expect("python runs");
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    let count: usize = String::from_utf8_lossy(&out.stdout)
        .trim()
        .parse()
        .expect("a number");
    assert!(count > 100, "{count} pages carry data");
}

/// What a movement cannot be open without: necessary needs, and theirs, each at the hardest target asked.
fn certain(proof: &Proofread, id: &str) -> Vec<(String, Target)> {
    let curriculum = &proof.curriculum;
    let mut open = vec![curriculum.find_movement(id).expect(id)];
    let mut seen = BTreeSet::from([open[0]]);
    let mut found = Vec::new();
    while let Some(ix) = open.pop() {
        for leaf in necessary_leaves(curriculum.movement(ix).needs()) {
            let id = curriculum.movement(leaf.movement).id().to_string();
            found.push((id, leaf.target));
            if seen.insert(leaf.movement) {
                open.push(leaf.movement);
            }
        }
    }
    found
}

/// Common practice, no source, but for: 90 degrees of wrist under an upright forearm (geometry), 50 degrees of arm behind the trunk
/// at the bottom of a dip (the model's posture `dip`).
#[test]
fn nothing_opens_without_what_keeps_it_safe() {
    let proof = shipped();
    for (id, need, target) in [
        ("pike-hold-on-box", "wrist-extension-reach", "90 deg"),
        ("crow-hold", "wrist-extension-reach", "90 deg"),
        ("freestanding-handstand", "wrist-extension-reach", "90 deg"),
        ("push-up", "wrist-extension-reach", "80 deg"),
        ("cartwheel-exit", "pike-hold-on-box", "20 s"),
        ("bar-dip-lowering", "shoulder-extension-reach", "50 deg"),
        ("bar-dip", "shoulder-extension-reach", "50 deg"),
        ("ring-dip-lowering", "shoulder-extension-reach", "50 deg"),
        ("weighted-dip-light", "shoulder-extension-reach", "50 deg"),
        ("single-leg-squat-low-box", "roll-back-exit", "3 reps"),
        ("single-leg-squat", "roll-back-exit", "5 reps"),
        ("ring-muscle-up", "false-grip-pull-up", "4 reps"),
        ("weighted-pull-up-top-half", "pull-up", "8 reps"),
        ("weighted-dip-light", "bar-dip", "10 reps"),
        (
            "weighted-pull-up-lowering",
            "weighted-pull-up-light",
            "5 reps with 0.1 bw",
        ),
    ] {
        let asked = Target::read(target).expect(target);
        let enough = certain(&proof, id)
            .into_iter()
            .any(|(n, t)| n == need && t.asks_at_least(&asked));
        assert!(enough, "{id} opens without {need}: {target}");
    }
    for (_, m) in proof.curriculum.movements() {
        let guarded = (m.inverted() || m.loaded()) && m.pattern() != Pattern::Exit;
        let way_out = |(id, _): &(String, Target)| {
            let ix = proof.curriculum.find_movement(id).expect(id);
            proof.curriculum.movement(ix).pattern() == Pattern::Exit
        };
        assert!(
            !guarded || certain(&proof, m.id().as_str()).iter().any(way_out),
            "{} is upside down or loaded, and no way out is asked before it",
            m.id()
        );
        assert!(
            !matches!(m.standard().added(), Some(Added::Mass(mass)) if mass < Mass::NONE),
            "{}: help in kilograms is not the same for everybody",
            m.id()
        );
    }
}

/// A sore part spares what bears on it, so that each movement has to say so. Common practice, no source.
#[test]
fn what_bears_on_a_part_says_so() {
    use BodyPart::*;
    let proof = shipped();
    for (_, m) in proof.curriculum.movements() {
        let on = |position: Position| m.positions().contains(&position);
        let hangs = on(Position::Hanging);
        let stands_on_hands = !hangs
            && (on(Position::Inverted) || on(Position::PartInverted) || on(Position::Bridge));
        let of = |is: bool, parts: &'static [BodyPart]| parts.iter().filter(move |_| is);
        let parts = of(hangs, &[Shoulder, Elbow, Fingers])
            .chain(of(on(Position::Support), &[Shoulder, Elbow]))
            .chain(of(stands_on_hands, &[Shoulder, Elbow, Wrist]))
            .chain(of(m.pattern() == Pattern::Squat, &[Knee, Hip, Ankle]));
        for part in parts {
            let says = m.stresses().iter().any(|s| s.part == *part);
            assert!(
                says,
                "{} bears on {} and does not say so",
                m.id(),
                part.word()
            );
        }
    }
}

#[test]
fn one_page_says_what_pain_means() {
    let rule = "page:if-it-hurts";
    for (path, bytes) in files(&root().join("content/notes")) {
        let text = String::from_utf8(bytes).expect("notes are UTF-8");
        if path == "pages/if-it-hurts.md" {
            assert!(text.contains("Silbernagel"), "the scale has its source");
            continue;
        }
        for sentence in text.split(['.', '\n']) {
            let words: Vec<&str> = sentence.split(|c: char| !c.is_alphanumeric()).collect();
            let says = |of: &[&str]| words.iter().any(|w| of.contains(w));
            let hurts = says(&["pain", "pains", "ache", "aches", "hurts", "hurt"]);
            let how_long = says(&["week", "weeks", "month", "months", "morning"]);
            assert!(
                !(hurts && how_long) || text.contains(rule),
                "{path} has a rule for pain of its own: {sentence}"
            );
        }
    }
}

/// The site of the shipped curriculum, as its pages are written.
fn rendered(renderer: &Renderer<'_>, path: &str) -> String {
    let at = renderer.position(path).expect(path);
    let file = renderer.render(at).expect("a page");
    String::from_utf8(file.bytes).expect("text")
}

#[test]
fn a_figure_stands_where_a_movement_is_chosen() {
    let snapshot = rungbook::io::snapshot(root()).expect("the repository is a curriculum");
    let built = site::build(&snapshot, &site::Options::default());
    let renderer = built.renderer().expect("a site");
    // How many at least: each skill's goal, each row, each test.
    let pages = [
        ("index.html", 7),
        ("self-test.html", 100),
        ("movements.html", 100),
        ("faults.html", 50),
        ("strict-ring-muscle-up.html", 40),
        ("self-test-strict-ring-muscle-up.html", 50),
        ("push-ups.html", 5),
        ("ring-dip.html", 5),
    ];
    for (page, least) in pages {
        let html = rendered(&renderer, page);
        let figures: Vec<&str> = html
            .split("<img class=\"small-figure\"")
            .skip(1)
            .map(|rest| rest.split('>').next().expect("a tag"))
            .collect();
        assert!(figures.len() >= least, "{page}: {} figures", figures.len());
        for tag in figures {
            // It keeps its room, waits until it is seen, and says nothing beside the name.
            for part in [" alt=\"\"", " width=\"", " height=\"", " loading=\"lazy\""] {
                assert!(tag.contains(part), "{page}: no{part} in {tag}");
            }
            let src = tag
                .split("src=\"")
                .nth(1)
                .and_then(|rest| rest.split('"').next());
            let src = src.expect("an address");
            assert!(
                renderer.position(src).is_some(),
                "{page}: {src} is not published"
            );
        }
    }
}

/// What sets two movements apart is drawn: way, pause, load.
#[test]
fn no_two_movements_have_one_drawing() {
    let snapshot = rungbook::io::snapshot(root()).expect("the repository is a curriculum");
    let built = site::build(&snapshot, &site::Options::default());
    let renderer = built.renderer().expect("a site");
    let mut drawn = std::collections::BTreeMap::new();
    for (_, movement) in built.proof().curriculum.movements() {
        let path = format!("figures/{}.svg", movement.id());
        if renderer.position(&path).is_none() {
            continue;
        }
        if let Some(other) = drawn.insert(rendered(&renderer, &path), path.clone()) {
            panic!("{path} is drawn as {other} is");
        }
    }
    assert!(drawn.len() > 100, "{} figures", drawn.len());
}

#[test]
fn what_has_two_ends_can_be_seen_moving() {
    let snapshot = rungbook::io::snapshot(root()).expect("the repository is a curriculum");
    let built = site::build(&snapshot, &site::Options::default());
    let renderer = built.renderer().expect("a site");
    let page = rendered(&renderer, "ring-dip.html");
    let folded = page.split("<details class=\"plays").nth(1).expect("a fold");
    let folded = folded.split("</details>").next().expect("its end");
    assert!(
        folded.contains("src=\"figures/moves/ring-dip.svg\"")
            && folded.contains("loading=\"lazy\"")
    );
    // Its tempo is 3-0-1-1: three seconds down, one up, one at the top.
    let svg = rendered(&renderer, "figures/moves/ring-dip.svg");
    assert!(svg.contains("animation:a0 5s step-end infinite"), "{svg}");
    assert!(svg.contains("@media(prefers-reduced-motion:no-preference)"));
    assert!(!rendered(&renderer, "plank.html").contains("figures/moves/"));
}

#[test]
fn the_navigation_says_where_one_is() {
    let snapshot = rungbook::io::snapshot(root()).expect("the repository is a curriculum");
    let built = site::build(&snapshot, &site::Options::default());
    let renderer = built.renderer().expect("a site");
    for (page, place, says) in [
        ("self-test.html", "self-test", "page"),
        ("today.html", "today", "page"),
        ("where-i-stand.html", "where-i-stand", "page"),
        ("movements.html", "movements", "page"),
        ("self-test-heavy-dip.html", "self-test", "true"),
        ("ring-dip.html", "movements", "true"),
        ("push-ups.html", "movements", "true"),
        ("faults.html", "movements", "true"),
    ] {
        let html = rendered(&renderer, page);
        let said = format!("<a href=\"{place}.html\" aria-current=\"{says}\">");
        assert!(html.contains(&said), "{page}: no {said}");
        assert_eq!(html.matches("aria-current=").count(), 1, "{page}");
    }
}
