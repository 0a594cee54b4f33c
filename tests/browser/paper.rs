//! What is printed: the self-test's sheet, a skill, and the signs beside names, on A4, read back with Poppler.

use super::booklet::{poppler, read};
use super::webdriver::{Browser, base64};
use super::{disk, root, site, texts};
use rungbook::curriculum::words::Pattern;
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};

const SKILLS: [&str; 7] = [
    "balance-on-hands",
    "heavy-dip",
    "heavy-pull-up",
    "level-front-lever",
    "lift-and-carry",
    "one-leg-to-the-floor",
    "strict-ring-muscle-up",
];

fn run(browser: &Browser, script: &str) -> Value {
    browser.run(script, &json!([]))
}

/// The open page on A4, kept as a file.
fn printed(browser: &Browser, name: &str) -> PathBuf {
    let done = browser.cdp(
        "Page.printToPDF",
        &json!({ "preferCSSPageSize": true, "paperWidth": 8.27, "paperHeight": 11.69 }),
    );
    let folder = root().join("target/shots");
    fs::create_dir_all(&folder).expect("a folder");
    let file = folder.join(format!("{name}.pdf"));
    fs::write(&file, base64(done["data"].as_str().expect("a document"))).expect("a document");
    file
}

/// Each page of a document as lines of text.
fn pages(file: &Path) -> Vec<String> {
    let text = read("pdftotext", &["-raw"], file);
    let pages = text.trim_end_matches('\u{c}').split('\u{c}');
    pages.map(str::to_string).collect()
}

/// Of each test on paper: what of its method, standard, places to write and of its name is not to be seen.
const TESTS: &str = r"
    const seen = (of, part) => [...of.querySelectorAll(part)].some(e => e.checkVisibility() && e.textContent.trim() !== '');
    const all = [...document.querySelectorAll('#sheet article')];
    return { tests: all.map(a => a.dataset.movement), groups: [...document.querySelectorAll('#sheet h2')].map(h => h.textContent),
        write: all.map(a => [...a.querySelectorAll('.write > span')].filter(s => s.checkVisibility()).length),
        missing: all.flatMap(a => ['h3 .named', '.check-line .target', '.how', '.method strong', '.write'].filter(part => !seen(a, part)).map(part => `${a.dataset.movement}: ${part}`)),
        shown: [...document.querySelectorAll('#sheet :is(button, .state-slot)')].filter(e => e.checkVisibility()).length };";

/// What a class says of when to stop, on the page of cautions; and what a page for paper says.
const STOPS: &str = "return Object.fromEntries([...document.querySelectorAll('.class')].map(c => [c.id, c.querySelector('.facts dd:last-of-type').textContent]))";
const SIGNS: &str = "return [...document.querySelectorAll('.stop-signs li')].filter(l => l.checkVisibility()).map(l => [l.dataset.class, l.lastChild.textContent.trim()])";

/// Who has a sheet of paper alone can test: each test with its standard, its method and lines to write on; every stop sign whole; a page for
/// ten tests, and one more. No head of a group ends a page.
#[test]
fn the_sheet_on_paper_is_enough() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    browser.open(&format!("{base}cautions.html"));
    let stops = run(&browser, STOPS);
    for skill in SKILLS {
        browser.cdp("Emulation.setEmulatedMedia", &json!({ "media": "print" }));
        browser.open(&format!("{base}self-test-{skill}.html"));
        let found = run(&browser, TESTS);
        assert_eq!(found["missing"], json!([]), "{skill}");
        assert_eq!(found["shown"], json!(0), "{skill}");
        let lines = found["write"].as_array().expect("numbers");
        assert!(lines.iter().all(|n| n.as_u64() >= Some(2)), "{lines:?}");
        let signs = run(&browser, SIGNS);
        let signs = signs.as_array().expect("signs");
        assert!(signs.len() > 3, "{skill}: {signs:?}");
        for sign in signs {
            let class = sign[0].as_str().expect("a class");
            assert_eq!(sign[1], stops[class], "{skill}: {class}");
        }
        if !poppler() {
            continue;
        }
        let pages = pages(&printed(&browser, &format!("sheet-{skill}")));
        let tests = found["tests"].as_array().map_or(0, Vec::len);
        let most = 1 + tests.div_ceil(10);
        assert!(
            pages.len() <= most,
            "{skill}: {} pages, {tests} tests",
            pages.len()
        );
        for page in &pages {
            let last = page.lines().rev().find(|l| !l.trim().is_empty());
            let last = last.unwrap_or_default().trim().to_string();
            assert!(!texts(&found["groups"]).contains(&last), "{skill}: {last}");
        }
    }
}

/// The sheet on paper has a way out before what one leaves by it.
#[test]
fn a_way_out_stands_before_what_needs_it() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    let shipped = rungbook::io::snapshot(root()).expect("the shipped curriculum");
    let curriculum = &rungbook::proof::proofread(&shipped).curriculum;
    // Movements, and the ways out that they need.
    let exits: Vec<(String, String)> = curriculum
        .movements()
        .flat_map(|(_, m)| {
            m.needs()
                .leaves()
                .into_iter()
                .map(move |l| (m, curriculum.movement(l.movement)))
        })
        .filter(|(_, needed)| needed.pattern() == Pattern::Exit)
        .map(|(m, needed)| (m.id().to_string(), needed.id().to_string()))
        .collect();
    let mut pairs = 0;
    for skill in SKILLS {
        browser.open(&format!("{base}self-test-{skill}.html"));
        let rows = texts(&run(&browser, TESTS)["tests"]);
        let place = |id: &String| rows.iter().position(|row| row == id);
        for (movement, exit) in &exits {
            if let (Some(at), Some(out)) = (place(movement), place(exit)) {
                pairs += 1;
                assert!(out < at, "{skill}: {movement} before its way out {exit}");
            }
        }
    }
    assert!(pairs > 5, "{pairs}");
}

/// A skill is two sheets; its map is printed where its letters are at least 7 points high; nothing is wider than the sheet; the signs beside
/// names are explained.
#[test]
fn a_skill_prints_on_two_pages() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    // As wide as the sheet within its margins, in the pixels of CSS.
    browser.width(695);
    let mut maps = 0;
    for skill in SKILLS {
        browser.cdp("Emulation.setEmulatedMedia", &json!({ "media": "print" }));
        browser.open(&format!("{base}{skill}.html"));
        let found = run(
            &browser,
            r"
            const map = document.querySelector('svg.map'), box = document.getElementById('map-box');
            box.open = true;
            const letters = map.checkVisibility() ? 12 * map.getBoundingClientRect().width / map.viewBox.baseVal.width * 72 / 96 : null;
            const wide = document.documentElement.clientWidth;
            return { letters, out: [...document.querySelectorAll('main *, .foot *')].filter(e => e.checkVisibility() && e.getBoundingClientRect().right > wide + 1 && !e.closest('.aside, .mark-word')).map(e => e.outerHTML.slice(0, 80)).slice(0, 3) };",
        );
        assert_eq!(found["out"], json!([]), "{skill}");
        if let Some(points) = found["letters"].as_f64() {
            maps += 1;
            assert!(points >= 7.0, "{skill}: {points} points");
        }
        if !poppler() {
            continue;
        }
        let pages = pages(&printed(&browser, &format!("skill-{skill}")));
        assert_eq!(pages.len(), 2, "{skill}");
        let all = pages.join(" ");
        for part in ["!!", "warning, !", "caution, i", "Not medical advice"] {
            assert!(all.contains(part), "{skill}: {part}");
        }
        // No page is nearly blank.
        assert!(
            pages.iter().all(|page| page.lines().count() > 12),
            "{skill}"
        );
    }
    assert!(maps > 0, "a small map is printed");
}
