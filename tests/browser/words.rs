//! Languages and units in a real browser: a Hebrew school, drawn from the right, within reach and valid; every word that a script
//! says comes from a words file; the reader's units.

#[path = "../words/marked.rs"]
mod marked;

use super::reach::{Looks, checked};
use super::webdriver::Browser;
use super::{disk, root, texts};
use serde_json::{Value, json};
use std::fs;
use std::path::Path;
use std::process::Command;
use tempfile::TempDir;

/// The small Hebrew curriculum in a folder of its own, published; in another language where a words file is given for it.
fn hebrew(words: Option<(&str, String)>) -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let from = root().join("tests/words/he");
    for entry in walkdir::WalkDir::new(&from) {
        let path = entry.expect("an entry").into_path();
        let to = folder
            .path()
            .join(path.strip_prefix(&from).expect("inside"));
        if path.is_dir() {
            fs::create_dir_all(&to).expect("a folder");
        } else {
            fs::copy(&path, &to).expect("a file");
        }
    }
    if let Some((language, text)) = words {
        let school = folder.path().join("content/school.yaml");
        let old = fs::read_to_string(&school).expect("the school");
        let new = old.replace("language: he", &format!("language: {language}"));
        fs::write(&school, new).expect("the school");
        let words = folder.path().join("content/words");
        fs::create_dir_all(&words).expect("a folder");
        fs::write(words.join(format!("{language}.yaml")), text).expect("the words");
    }
    let done = Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(["publish", "--from"])
        .arg(folder.path())
        .output()
        .expect("it runs");
    assert!(
        done.status.success(),
        "{}",
        String::from_utf8_lossy(&done.stderr)
    );
    folder
}

/// Every page of a site but the unknown-address page, whose styles come from the published address.
fn pages(site: &Path) -> Vec<String> {
    let mut all: Vec<String> = fs::read_dir(site)
        .expect("the site")
        .map(|e| {
            e.expect("an entry")
                .file_name()
                .to_string_lossy()
                .to_string()
        })
        // A redirect leads away while it is looked at.
        .filter(|n| n.ends_with(".html") && n != "404.html" && n != "old-hang.html")
        .collect();
    all.sort();
    assert!(all.len() >= 40, "{}", all.len());
    all
}

/// A client with something of every kind.
const SOME: &str = r"
    const { results, store } = rungbook;
    const today = results.today(), on = results.dayText(today), before = results.dayText(today - 8);
    store.put('screened', { says: 'clear', on });
    store.set('fit', on);
    store.put('bodyweight', '72 kg');
    store.add('tested', { movement: 'dead-hang', got: '25 s', on: before });
    store.add('tested', { movement: 'dead-hang', got: '60 s', on });
    store.add('tested', { movement: 'single-leg-squat', left: '2 reps', right: '3 reps', on });
    store.add('tested', { movement: 'toe-reach', got: '6 cm', on });
    store.add('tested', { movement: 'pull-up', got: '9 reps with 2.5 kg', on: before });
    store.add('tested', { movement: 'nobody-knows', got: '9 reps', on });
    store.add('trained', { movement: 'pull-up', did: [5, 5, 5], on: before });
    store.add('paused', { part: 'knee', on, until: results.dayText(today + 9), by: 'client', because: 'it hurt in a test' });
    store.add('paused', { movement: 'step-out', on: before, by: 'coach' });
    store.add('restrict', { class: 'inverted', on, by: 'screening' });
    store.add('restrict', { pattern: 'squat', on, until: on, by: 'coach', because: 'ᵻ' });
    store.add('cleared', { class: 'inverted', on, until: results.dayText(today + 99) });
    store.add('pain', { part: 'elbow', score: 7, on, signs: ['sharp', 'giving-way'] });
    store.add('pain', { part: 'foot', score: 3, next_morning: 4, on: before });
    store.add('undated', { movement: 'plank', got: '9 s' });
    store.add('tested', { movement: 'plank', got: 'much', on });";

#[test]
fn a_hebrew_school_is_within_reach() {
    let (Some(mut looks), Some(browser)) = (Looks::new(), Browser::start()) else {
        return;
    };
    let folder = hebrew(None);
    let site = folder.path().join("site");
    let base = disk(&site);
    browser.open(&format!("{base}where-i-stand.html"));
    browser.run(SOME, &json!([]));
    let mut faults = Vec::new();
    for page in pages(&site) {
        browser.width(320);
        browser.open(&format!("{base}{page}"));
        let said = browser.run(
            r"
            const wide = document.documentElement.clientWidth;
            return { lang: document.documentElement.lang, dir: getComputedStyle(document.body).direction,
                over: document.documentElement.scrollWidth - wide, out: [...document.querySelectorAll('main *')]
                    .filter(e => e.getBoundingClientRect().left < -1 && !e.closest('.wide, .posture, .aside, pre, .map-scroll')).slice(0, 3).map(e => e.outerHTML.slice(0, 90)) };",
            &json!([]),
        );
        if said["lang"] != "he"
            || said["dir"] != "rtl"
            || said["over"].as_i64().is_none_or(|n| n > 0)
            || said["out"] != json!([])
        {
            faults.push(format!("{page}: {said}"));
        }
        // Booklets are for paper: their marks are as small as its type.
        if page.starts_with("booklet") {
            continue;
        }
        browser.width(390);
        faults.extend(
            looks
                .at(&browser)
                .into_iter()
                .map(|v| format!("{page}: {v}")),
        );
    }
    faults.extend(checked(&site).unwrap_or_default());
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// The map of a school that writes from the right: the plumb line stands at the right, and nothing leaves the drawing.
#[test]
fn the_map_is_drawn_from_the_right() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = hebrew(None);
    let base = disk(&folder.path().join("site"));
    browser.width(1440);
    browser.open(&format!("{base}handstand.html"));
    let said = browser.run(
        r"
        const map = document.querySelector('svg.map'), box = map.getBoundingClientRect();
        const plumb = map.querySelector('.map-plumb').getBoundingClientRect();
        const inside = (e, of) => { const [a, b] = [e.getBoundingClientRect(), of.getBoundingClientRect()]; return a.left >= b.left - 1 && a.right <= b.right + 1; };
        return { plumb: (plumb.left - box.left) / box.width,
            out: [...map.querySelectorAll('.map-movement text, .map-joint text')].filter(t => t.textContent && !inside(t, t.closest('.map-movement, .map-joint').querySelector('rect'))).map(t => t.textContent),
            off: [...map.querySelectorAll('rect, text, path')].filter(e => !inside(e, map)).map(e => e.outerHTML.slice(0, 80)) };",
        &json!([]),
    );
    assert!(said["plumb"].as_f64().is_some_and(|x| x > 0.9), "{said}");
    assert_eq!(
        (&said["out"], &said["off"]),
        (&json!([]), &json!([])),
        "{said}"
    );
}

/// Letters on the open page that no words file says and that are not the coach's, who writes Hebrew here.
const STRAYS: &str = r"
    const read = ['title', 'aria-label', 'aria-description', 'alt', 'placeholder', 'data-label', 'data-other'];
    const outside = text => { let depth = 0; return [...text].filter(c => { depth += (c === '⟦') - (c === '⟧'); return depth === 0 && c !== '⟧'; }).join(''); };
    const stray = text => outside(text).match(/[A-Za-z][A-Za-z '’-]*/g) || [];
    const found = [];
    for (const e of document.querySelectorAll('*')) for (const key of read) if (e.hasAttribute(key)) found.push(...stray(e.getAttribute(key)).map(s => `${key}: ${s}`));
    const body = document.body.cloneNode(true);
    body.querySelectorAll('script, style, pre, code, [lang=en], .file, .address').forEach(e => e.remove());
    found.push(...stray(body.textContent), ...stray(document.title));
    // What the reader typed or a file is called, and ids that this curriculum does not know.
    return found.filter(s => !['nobody-knows', 'mine', 'bad', 'json', 'kg'].some(w => s.trim() === w));";

#[test]
fn every_word_that_a_script_says_comes_from_a_words_file() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = hebrew(Some(("qps", marked::marked())));
    let base = disk(&folder.path().join("site"));
    let mut faults: Vec<String> = Vec::new();
    let mut look = |place: &str| {
        let found: Value = browser.run(STRAYS, &json!([]));
        faults.extend(texts(&found).into_iter().map(|s| format!("{place}: {s}")));
    };
    browser.open(&format!("{base}before-you-start.html"));
    browser.run(
        "document.querySelector('#questions button').click()",
        &json!([]),
    );
    look("before you start, not answered");
    for screened in [
        json!({ "says": "ask" }),
        json!({ "says": "light" }),
        json!({ "says": "clear" }),
        json!({ "says": "light", "until": "2026-12-31" }),
        json!({ "says": "clear", "until": "2026-03-01" }),
    ] {
        browser.run(
            r"const { store, results } = rungbook, on = results.dayText(results.today() - 1), until = arguments[0].until;
            store.erase();
            store.put('born', 2011);
            store.add('restrict', { class: 'inverted', on, by: 'screening' });
            store.add('restrict', { part: 'wrist', on, by: 'screening' });
            store.put('screened', { on, ...arguments[0], ...(until ? { until: results.dayText(results.today() + (until > '2026-06' ? 9 : -1)) } : {}) });",
            &json!([screened]),
        );
        look(&screened.to_string());
        browser.run(
            "document.querySelector('#clearance button').click()",
            &json!([]),
        );
        look("a clearance without its day");
    }
    browser.run(
        "rungbook.store.erase(); rungbook.store.put('screened', { says: 'clear', on: rungbook.results.dayText(rungbook.results.today()) })",
        &json!([]),
    );
    browser.open(&format!("{base}if-it-hurts.html"));
    browser.run(SOME, &json!([]));
    browser.run(
        "document.querySelector('#pain-form button').click()",
        &json!([]),
    );
    look("if it hurts");
    browser.run("rungbook.store.erase(); rungbook.store.put('screened', { says: 'clear', on: rungbook.results.dayText(rungbook.results.today()) })", &json!([]));
    browser.open(&format!("{base}self-test-handstand.html"));
    look("what is known already");
    for of in ["the check of the day", "the first question"] {
        browser.run(
            "document.querySelector('#guided button').click()",
            &json!([]),
        );
        look(of);
    }
    browser.run(
        "document.querySelector('.enter-form button[type=submit]').click()",
        &json!([]),
    );
    look("a number that is none");
    browser.run(
        "document.querySelector('.enter-form .hurt').click()",
        &json!([]),
    );
    browser.wait_until("document.querySelector('dialog')");
    look("it hurt");
    browser.open(&format!("{base}where-i-stand.html"));
    browser.run(SOME, &json!([]));
    browser.wait_until("document.querySelector('#history-list li')");
    look("where I stand");
    browser.run("document.getElementById('weight-input').value = 'x'; document.querySelector('#weight button').click()", &json!([]));
    look("no body weight");
    browser.run("document.getElementById('erase').click()", &json!([]));
    browser.wait_until("document.querySelector('dialog')");
    look("erase");
    for page in [
        "self-test-handstand",
        "self-test-strong-pull",
        "today",
        "handstand",
        "push-ups",
    ] {
        browser.open(&format!("{base}{page}.html"));
        look(page);
    }
    browser.run(
        "document.querySelectorAll('#sheet .enter button').forEach(b => b.click())",
        &json!([]),
    );
    browser.width(390);
    browser.open(&format!("{base}handstand.html"));
    look("you are here");
    browser.open(&format!("{base}search.html"));
    for typed in ["ה", "qqqqq"] {
        browser.run("const i = document.getElementById('find'); i.value = arguments[0]; i.dispatchEvent(new Event('input'))", &json!([typed]));
        look(typed.trim_start_matches('q'));
    }
    let sound = folder.path().join("mine.json");
    let text = json!({ "results": 1, "tested": [{ "movement": "dead-hang", "got": "60 s", "on": "2026-03-01" }, { "movement": "nobody-knows", "got": "9 reps", "on": "2026-03-01" }] });
    fs::write(&sound, text.to_string()).expect("a file");
    let bad = folder.path().join("bad.json");
    fs::write(
        &bad,
        json!({ "results": 1, "tested": [{ "movement": "dead-hang", "got": "x" }] }).to_string(),
    )
    .expect("a file");
    browser.open(&format!("{base}my-people.html"));
    for file in [&sound, &bad] {
        browser.upload(&browser.find("#open"), file);
        browser.wait_until("document.getElementById('notice').textContent && !document.getElementById('open').value");
        look("my people");
        browser.run(
            "document.getElementById('notice').textContent = ''",
            &json!([]),
        );
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// The reader chooses units; the choice is kept, reaches what scripts draw, and lasts for the page where nothing may be kept.
#[test]
fn the_reader_chooses_units() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = hebrew(Some(("en", String::from("direction: ltr\n"))));
    let base = disk(&folder.path().join("site"));
    let shown = |selector: &str| {
        let text = browser.run(
            "return document.querySelector(arguments[0]).textContent",
            &json!([selector]),
        );
        text.as_str().unwrap_or("").to_string()
    };
    let choose = |units: &str| {
        browser.run(
            "document.querySelector(`#units button[value=${arguments[0]}]`).click()",
            &json!([units]),
        )
    };
    browser.open(&format!("{base}index.html"));
    assert_eq!(
        browser.run("return document.getElementById('units').hidden", &json!([])),
        true,
        "nothing there changes"
    );
    browser.open(&format!("{base}weighted-pull-up.html"));
    assert_eq!(
        browser.run("return document.getElementById('units').hidden", &json!([])),
        false
    );
    assert_eq!(shown(".big-target"), "3 reps with 20 kg added");
    choose("imperial");
    assert_eq!(shown(".big-target"), "3 reps with 44.1 lb added");
    assert_eq!(shown("#units [aria-pressed=true]"), "imperial");
    browser.open(&format!("{base}where-i-stand.html"));
    browser.run(SOME, &json!([]));
    browser.wait_until("document.querySelector('#history-list [data-movement=toe-reach] bdi')");
    browser.wait_until("document.querySelector('#history-list [data-movement=toe-reach] bdi').textContent === '2.4 in'");
    choose("metric");
    assert_eq!(shown("#history-list [data-movement=toe-reach] bdi"), "6 cm");
    choose("imperial");
    browser.open(&format!("{base}booklet.html"));
    assert!(shown("#movement-weighted-pull-up .move-target").contains("44.1 lb"));
    // What is asked for is asked in the reader's units too, once nothing hurts.
    browser.open(&format!("{base}self-test-strong-pull.html"));
    browser.run(
        "const { store } = rungbook; for (const kind of ['paused', 'pain']) store.entries(kind).forEach(({ key }) => store.remove(key))",
        &json!([]),
    );
    let asked = browser.run(
        r"
        [...document.querySelectorAll('article[data-movement=weighted-pull-up] .enter button')].pop().click();
        return document.querySelector('article[data-movement=weighted-pull-up] .enter-form').textContent;",
        &json!([]),
    );
    assert!(
        asked.as_str().is_some_and(|t| t.contains("Weight (lb)")),
        "{asked}"
    );
    // Where the browser forbids to keep anything.
    browser.run("localStorage.clear()", &json!([]));
    browser.open(&format!("{base}weighted-pull-up.html"));
    browser.run(
        "Storage.prototype.setItem = () => { throw new Error('forbidden'); }",
        &json!([]),
    );
    choose("imperial");
    assert_eq!(shown(".big-target"), "3 reps with 44.1 lb added");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}
