//! The booklets on paper: printed by Chromium on A4 and Letter, read back with Poppler.

use super::webdriver::{Browser, base64};
use super::{disk, root, site};
use serde_json::{Value, json};
use std::env;
use std::fs;
use std::path::Path;
use std::process::Command;

/// Paper by name: width and height in inches, and in points as Poppler says them.
const PAPER: [(&str, f64, f64, &str); 2] = [
    ("a4", 8.27, 11.69, "(A4)"),
    ("letter", 8.5, 11.0, "(letter)"),
];

/// What the page itself says is in it, by its sections.
const PARTS: &str = r"
    const all = (s, f) => [...document.querySelectorAll(s)].map(f), own = e => e.firstChild.textContent.trim();
    return {
        title: own(document.querySelector('h1')),
        movements: all('.move h3', e => [own(e), e.querySelector('.rungs-up').textContent.trim()]),
        cautions: all('.part-cautions .caution-head span', own),
        anchors: all('main a[href^=\'#\']', a => a.getAttribute('href').slice(1)).filter(id => !document.getElementById(id)),
        twice: all('[id]', e => e.id).filter((id, i, ids) => ids.indexOf(id) !== i),
    };";

/// What sticks out of a phone's screen, but for what may be moved sideways inside it.
const WIDE: &str = r"
    const all = document.documentElement.scrollWidth;
    return all > 390 ? [`${all} px`] : [...document.querySelectorAll('body *')]
        .filter(e => e.getBoundingClientRect().right > 390.5 && !e.closest('.wide, .aside, pre, .posture'))
        .map(e => `${e.localName}.${e.className}: ${e.textContent.trim().slice(0, 60)}`);";

pub fn poppler() -> bool {
    let there = ["pdftotext", "pdfinfo"]
        .iter()
        .all(|tool| Command::new(tool).arg("-v").output().is_ok());
    if !there {
        assert!(
            env::var("CI").as_deref() != Ok("true"),
            "Poppler is not installed"
        );
        eprintln!("SKIPPED: pdftotext and pdfinfo are not installed");
    }
    there
}

pub fn read(tool: &str, args: &[&str], file: &Path) -> String {
    let mut command = Command::new(tool);
    command.args(args).arg(file);
    if tool == "pdftotext" {
        command.arg("-");
    }
    let done = command.output().expect("Poppler runs");
    assert!(done.status.success(), "{tool} {}", file.display());
    String::from_utf8_lossy(&done.stdout).into_owned()
}

/// A text with single blanks.
fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn texts(list: &Value) -> Vec<String> {
    let texts = list.as_array().into_iter().flatten();
    texts.filter_map(Value::as_str).map(plain).collect()
}

/// Where a movement's own heading stands: its name, at most its mark, and its stage on one or two lines.
fn heading(text: &str, name: &str, stage: &str) -> Option<usize> {
    text.match_indices(name).map(|(at, _)| at).find(|at| {
        let rest = text[at + name.len()..].trim_start();
        let marks = ["!! WARNING", "! CAUTION", "i NOTICE", ""];
        marks.iter().any(|mark| {
            rest.strip_prefix(mark)
                .is_some_and(|r| r.trim_start().starts_with(stage))
        })
    })
}

fn print(browser: &Browser, page: &str, paper: (&str, f64, f64, &str)) -> Vec<String> {
    let mut faults = Vec::new();
    let mut fault = |says: String| faults.push(format!("{page} on {}: {says}", paper.0));
    browser.open(&format!("{}{page}", disk(&site())));
    let parts = browser.run(PARTS, &json!([]));
    let printed = browser.cdp(
        "Page.printToPDF",
        &json!({ "preferCSSPageSize": true, "printBackground": true, "paperWidth": paper.1, "paperHeight": paper.2 }),
    );
    let pdf = base64(printed["data"].as_str().expect("a document"));
    let shots = root().join("target/shots");
    fs::create_dir_all(&shots).expect("a folder");
    let file = shots.join(format!(
        "{}-{}.pdf",
        page.trim_end_matches(".html"),
        paper.0
    ));
    fs::write(&file, pdf).expect("a document");

    let about = read("pdfinfo", &[], &file);
    if !about.contains(paper.3) {
        fault(format!("another paper:\n{about}"));
    }
    let text = read("pdftotext", &["-layout"], &file);
    let pages: Vec<&str> = text.trim_end_matches('\u{c}').split('\u{c}').collect();
    if pages.len() <= 5 {
        fault(format!("{} pages", pages.len()));
    }
    let title = parts["title"].as_str().map(plain).unwrap_or_default();
    let cover = plain(pages[0]);
    if !cover.contains(&title) || cover.ends_with(" 1") || !cover.contains("Not medical advice") {
        fault(format!("the cover says: {cover}"));
    }
    let movements: Vec<(String, String)> = parts["movements"]
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|m| Some((plain(m[0].as_str()?), plain(m[1].as_str()?))))
        .collect();
    for (i, words) in pages.iter().enumerate().skip(1) {
        let lines: Vec<String> = words.lines().map(plain).filter(|l| !l.is_empty()).collect();
        let number = (i + 1).to_string();
        if lines.last() != Some(&number) {
            fault(format!("page {number} ends with {:?}", lines.last()));
        }
        let heads = ["Contents", "Cautions", "Skills", "Movements", "Tests"];
        if !heads.contains(&lines[0].as_str()) {
            fault(format!("page {number} begins with {:?}", lines[0]));
        }
        let end = lines.iter().rev().nth(1).map_or("", String::as_str);
        let alone = movements
            .iter()
            .any(|(name, stage)| end.starts_with(name.as_str()) && end.ends_with(stage.as_str()));
        if alone || lines.len() < 3 {
            fault(format!("page {number} ends with a heading alone: {end}"));
        }
    }
    let whole = plain(&text);
    let places: Vec<Option<usize>> = movements
        .iter()
        .map(|(name, stage)| heading(&whole, name, stage))
        .collect();
    for ((name, _), at) in movements.iter().zip(&places) {
        if at.is_none() {
            fault(format!("{name} is missing"));
        }
    }
    let first = places.iter().flatten().min().copied().unwrap_or(0);
    for caution in texts(&parts["cautions"]) {
        // Once in the contents, once in full.
        if whole[..first].matches(caution.as_str()).count() < 2 {
            fault(format!("“{caution}” does not stand before the movements"));
        }
    }
    for word in ["anchors", "twice"] {
        if parts[word] != json!([]) {
            fault(format!("{word}: {}", parts[word]));
        }
    }
    if movements.len() < 5 || parts["cautions"] == json!([]) {
        fault("it is nearly empty".into());
    }
    faults
}

#[test]
fn booklets_print_on_a4_and_letter() {
    if !poppler() {
        return;
    }
    let Some(browser) = Browser::start() else {
        return;
    };
    let pages = ["booklet-one-leg-to-the-floor.html", "booklet.html"];
    let faults: Vec<String> = pages
        .iter()
        .flat_map(|page| PAPER.map(|paper| print(&browser, page, paper)))
        .flatten()
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// Who reads in the dark prints on white.
#[test]
fn the_dark_prints_on_white() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.cdp(
        "Emulation.setEmulatedMedia",
        &json!({ "media": "print", "features": [{ "name": "prefers-color-scheme", "value": "dark" }] }),
    );
    browser.open(&format!("{}booklet.html", disk(&site())));
    let look = browser.run(
        "const s = getComputedStyle(document.body); return [s.backgroundColor, s.color, getComputedStyle(document.documentElement).colorScheme];",
        &json!([]),
    );
    assert_eq!(look, json!(["rgb(255, 255, 255)", "rgb(0, 0, 0)", "light"]));
}

/// It reads on a phone too: nothing but its own tables is wider than the screen.
#[test]
fn booklets_fit_a_phone() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.width(390);
    for page in ["booklet-level-front-lever.html", "booklet.html"] {
        browser.open(&format!("{}{page}", disk(&site())));
        let wide = browser.run(WIDE, &json!([]));
        assert_eq!(wide, json!([]), "{page}");
    }
}
