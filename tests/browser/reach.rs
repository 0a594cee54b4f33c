//! Accessibility and validity: how axe-core looks at a page, text twice as large, 320 px without scrolling sideways, and the W3C
//! checker on every page.

use super::webdriver::Browser;
use super::{disk, root, site, texts};
use serde_json::{Value, json};
use std::collections::HashSet;
use std::fs;
use std::path::Path;
use std::process::Command;

/// Each page kind, but the unknown-address page: its styles come from the published address alone.
pub const KINDS: [&str; 23] = [
    "index.html",
    "before-you-start.html",
    "strict-ring-muscle-up.html",
    "freestanding-handstand.html",
    "push-up.html",
    "front-levers.html",
    "self-test.html",
    "self-test-one-leg-to-the-floor.html",
    "where-i-stand.html",
    "today.html",
    "my-people.html",
    "cautions.html",
    "if-it-hurts.html",
    "if-you-are-stuck.html",
    "about-the-coach.html",
    "about-the-numbers.html",
    "faults.html",
    "equipment.html",
    "words.html",
    "movements.html",
    "search.html",
    "changes.html",
    "data.html",
];

/// The rules of WCAG and what is good practice beside them.
const ALL: [&str; 6] = [
    "wcag2a",
    "wcag2aa",
    "wcag21a",
    "wcag21aa",
    "wcag22aa",
    "best-practice",
];

const SOME: &str = r"
    const on = rungbook.results.dayText(rungbook.results.today());
    rungbook.store.put('screened', { says: 'clear', on });
    rungbook.store.add('tested', { movement: 'knee-to-wall', left: '11 cm', right: '12 cm', on });
    rungbook.store.add('tested', { movement: 'squat', got: '25 reps', on });
    rungbook.store.add('paused', { part: 'wrist', on, by: 'client' });";

/// A package of the page checks; a loud line where it is missing, a failure under `CI=true`.
pub fn package(path: &str) -> Option<String> {
    let file = root().join("target/page/node_modules").join(path);
    if !file.is_file() {
        assert!(
            std::env::var("CI").as_deref() != Ok("true"),
            "{path} is not installed: run tests/run"
        );
        eprintln!("SKIPPED PAGE CHECKS: {path} is not installed; tests/run installs it");
        return None;
    }
    Some(file.display().to_string())
}

/// The rules that colours decide.
pub const COLOURS: [&str; 2] = ["color-contrast", "link-in-text-block"];

/// Everything on the page that axe-core reads, in a number: each element's name, attributes, own words, size and style. What stands
/// at the root alone only counts by what follows from it.
const STANDS: &str = r"
    let hash = 7, other = 11;
    const add = (text) => { for (let i = 0; i < text.length; i++) { hash = (hash * 31 + text.charCodeAt(i)) | 0; other = (other * 37 + text.charCodeAt(i)) | 0; } };
    const { lang, dir } = document.documentElement;
    add([lang, dir, document.title, ...[...document.querySelectorAll('meta')].map((meta) => meta.content)].join('|'));
    for (const e of document.body.querySelectorAll('*')) {
        if (e.localName === 'script') continue;
        const style = getComputedStyle(e), box = e.getBoundingClientRect();
        const words = [...e.childNodes].filter((node) => node.nodeType === 3).map((node) => node.data);
        add([e.localName, ...[...e.attributes].map((a) => a.name + a.value), ...words, e.value ?? '', e.checked ?? '', e.disabled ?? '',
            style.display, style.visibility, style.opacity, style.color, style.backgroundColor, style.backgroundImage, style.fontSize,
            style.fontWeight, style.textDecorationLine, style.position, Math.round(box.width), Math.round(box.height)].join('|'));
    }
    return `${location.pathname.split('/').pop()} ${hash} ${other}`;";

/// axe-core, and what it has looked at: a page that stands in every respect as it stood before is not read again.
pub struct Looks {
    axe: String,
    seen: HashSet<String>,
}

impl Looks {
    /// Nothing where axe-core is not installed.
    pub fn new() -> Option<Looks> {
        let axe = fs::read_to_string(package("axe-core/axe.min.js")?).expect("text");
        let seen = HashSet::new();
        Some(Looks { axe, seen })
    }

    /// What it finds on the open page, unless the page was looked at as it stands.
    pub fn at(&mut self, browser: &Browser) -> Vec<String> {
        let stands = browser.run(STANDS, &json!([]));
        if !self.seen.insert(stands.to_string()) {
            return Vec::new();
        }
        self.violations(browser, &Value::Null, &json!(ALL))
    }

    /// What colours make of the open page.
    pub fn at_colours(&self, browser: &Browser) -> Vec<String> {
        let rules = json!({ "type": "rule", "values": COLOURS });
        self.violations(browser, &Value::Null, &rules)
    }

    /// What it finds in a part of the open page.
    pub fn at_part(&self, browser: &Browser, selector: &str) -> Vec<String> {
        self.violations(browser, &json!(selector), &json!(ALL))
    }

    fn violations(&self, browser: &Browser, part: &Value, only: &Value) -> Vec<String> {
        browser.run(&self.axe, &json!([]));
        let found = browser.run_async(
            r"
            const [part, only, done] = arguments;
            const rules = Array.isArray(only) ? { 'target-size': { enabled: true } } : {};
            axe.run(part ? { include: [[part]] } : document, { runOnly: only, rules, resultTypes: ['violations'] }).then(result =>
                done(result.violations.map(v => `${v.id}: ${v.nodes.slice(0, 3).map(n => n.html.slice(0, 120)).join(' | ')}`)));",
            &json!([part, only]),
        );
        texts(&found)
    }
}

/// The look finds what is wrong, and a page that has changed in anything is looked at again.
#[test]
fn what_is_wrong_is_found() {
    let (Some(mut looks), Some(browser)) = (Looks::new(), Browser::start()) else {
        return;
    };
    browser.open(&format!("{}data.html", disk(&site())));
    assert_eq!(looks.at(&browser), Vec::<String>::new());
    let change = |script: &str| browser.run(script, &json!([]));
    change("document.querySelector('main p').style.color = '#dedede'");
    let pale = looks.at(&browser);
    assert!(pale.iter().any(|f| f.starts_with(COLOURS[0])), "{pale:?}");
    let pale = looks.at_colours(&browser);
    assert!(pale.iter().any(|f| f.starts_with(COLOURS[0])), "{pale:?}");
    assert_eq!(looks.at(&browser), Vec::<String>::new(), "looked at before");
    change("document.querySelector('main').append(document.createElement('button'))");
    let unnamed = looks.at(&browser);
    assert!(
        unnamed.iter().any(|f| f.starts_with("button-name")),
        "{unnamed:?}"
    );
    change("document.querySelector('main button').className = 'nameless'");
    let part = looks.at_part(&browser, ".nameless");
    assert!(
        part.iter().any(|f| f.starts_with("button-name")),
        "{part:?}"
    );
}

/// Whatever the width, a full stop behind a mark stands on the mark's line, and a caution's name beside its signal word.
#[test]
fn nothing_is_torn_from_its_mark() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let look = r"
        const apart = (a, b) => b.top >= a.bottom || a.top >= b.bottom;
        const torn = [];
        let seen = 0;
        for (const mark of document.querySelectorAll('.note .named .mark')) {
            const after = mark.closest('.named').nextSibling;
            if (!after || after.nodeType !== 3 || !/^[.,;:]/.test(after.data)) continue;
            seen += 1;
            const range = document.createRange();
            range.setStart(after, 0);
            range.setEnd(after, 1);
            if (apart([...mark.getClientRects()].pop(), range.getBoundingClientRect())) torn.push(after.data.slice(0, 20));
        }
        for (const head of document.querySelectorAll('.caution-head')) {
            seen += 1;
            const [word, name] = [...head.children].map((part) => part.getBoundingClientRect());
            if (name.left < word.right) torn.push(head.textContent);
        }
        return [seen, torn];";
    let base = disk(&site());
    let (mut seen, mut torn) = (0, Vec::new());
    for page in ["active-hang", "chest-to-wall-handstand"] {
        browser.open(&format!("{base}{page}.html"));
        for width in (320..480).step_by(6) {
            browser.width(width);
            let found = browser.run(look, &json!([]));
            seen += found[0].as_u64().unwrap_or(0);
            let on = |text: String| format!("{page} at {width}: {text}");
            torn.extend(texts(&found[1]).into_iter().map(on));
        }
    }
    assert!(seen > 100, "only {seen} places were looked at");
    assert!(torn.is_empty(), "{}", torn.join("\n"));
}

#[test]
fn nothing_is_cut_at_320_px_or_with_large_text() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    browser.open(&format!("{base}where-i-stand.html"));
    browser.run(SOME, &json!([]));
    let mut faults = Vec::new();
    for page in KINDS {
        browser.width(320);
        browser.open(&format!("{base}{page}"));
        for (width, size) in [(320, "100%"), (390, "200%")] {
            browser.width(width);
            let over = browser.run(
                r"
                document.documentElement.style.fontSize = arguments[0];
                const wide = document.documentElement.clientWidth;
                return [document.documentElement.scrollWidth - wide, [...document.querySelectorAll('main *')]
                    .filter(e => e.getBoundingClientRect().right > wide + 1 && !e.closest('.wide, .posture, .aside, pre')).slice(0, 3).map(e => e.outerHTML.slice(0, 90))];",
                &json!([size]),
            );
            if over[0].as_i64().is_none_or(|n| n > 0) {
                faults.push(format!("{page} {width} px, text {size}: {over}"));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_w3c_checker_finds_nothing() {
    if let Some(said) = checked(&site()) {
        assert!(said.is_empty(), "{}", said.join("\n"));
    }
}

/// What the W3C checker says of a site; nothing where it is not installed.
pub fn checked(site: &Path) -> Option<Vec<String>> {
    let checker = package("vnu-jar/build/dist/vnu.jar")?;
    let out = Command::new("java")
        .args([
            "-Xss4m",
            "-jar",
            &checker,
            "--skip-non-html",
            "--stdout",
            "--format",
            "json",
        ])
        // It doubts the policy of pages from disk; the audit reads the policy word by word.
        .args(["--filterpattern", ".*Content Security Policy.*"])
        .arg(site)
        .output();
    let Ok(out) = out else {
        assert!(
            std::env::var("CI").as_deref() != Ok("true"),
            "java is not installed"
        );
        eprintln!(
            "SKIPPED THE W3C CHECKER: java is not installed (Debian: apt-get install default-jre-headless)"
        );
        return None;
    };
    let read: Value = serde_json::from_slice(&out.stdout).expect("the checker answers");
    let said: Vec<String> = read["messages"]
        .as_array()
        .expect("messages")
        .iter()
        .map(|m| format!("{} {}: {}", m["url"], m["lastLine"], m["message"]))
        .collect();
    Some(said)
}

/// What works out results is loaded by who has some: nobody's movement, skill and family come without it, and a page about results
/// without what plans.
#[test]
fn who_has_no_numbers_loads_nothing_for_them() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    let names = "return ['data/tables', 'theme/kept', 'theme/ready', 'theme/plan'].filter(name => [...document.scripts].some(({ src }) => src.includes(`${name}.js`)))";
    let loaded = |page: &str| {
        browser.open(&format!("{base}{page}.html"));
        browser.run(names, &json!([]))
    };
    let ready = json!(["data/tables", "theme/kept", "theme/ready"]);
    let whole = json!(["data/tables", "theme/kept", "theme/ready", "theme/plan"]);
    let apart = ["bar-dip", "bar-dips", "heavy-dip"];
    for page in apart {
        assert_eq!(loaded(page), json!([]), "{page}");
    }
    for page in ["today", "where-i-stand"] {
        assert_eq!(loaded(page), ready, "{page}");
    }
    // The first number brings the rest, on the page where it is kept too.
    browser.run(SOME, &json!([]));
    browser.wait_until("rungbook.aim && !document.getElementById('aim').hidden");
    assert_eq!(browser.run(names, &json!([])), whole);
    for page in apart {
        assert_eq!(loaded(page), ready, "{page}");
    }
    assert_eq!(loaded("today"), whole);
}

/// Nothing moves while a page loads, states of a client included. Weights by gzip -9 are printed: `-- --nocapture`.
#[test]
fn nothing_shifts_while_loading() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    browser.open(&format!("{base}where-i-stand.html"));
    browser.run(SOME, &json!([]));
    browser.width(390);
    let mut faults = Vec::new();
    for page in KINDS {
        browser.open(&format!("{base}{page}"));
        let shift = browser.run_async(
            r"
            const done = arguments[arguments.length - 1];
            let sum = 0;
            new PerformanceObserver(list => list.getEntries().forEach(e => { if (!e.hadRecentInput) sum += e.value; })).observe({ type: 'layout-shift', buffered: true });
            setTimeout(() => done(sum), 150);",
            &json!([]),
        );
        if shift.as_f64().is_none_or(|s| s > 0.02) {
            faults.push(format!("{page}: {shift}"));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
