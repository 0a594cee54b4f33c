//! Every page kind in every state of a client: axe-core, text twice as large, the focus, errors beside their fields, and the
//! contrast of what is drawn in the accent.

use super::reach::{KINDS, Looks};
use super::serve::Server;
use super::webdriver::Browser;
use super::{disk, site, texts};
use serde_json::{Value, json};
use std::collections::HashSet;

/// What stands beside the pages of the client: a booklet, and a note as a page of its own.
const MORE: [&str; 2] = ["booklet-lift-and-carry.html", "training-with-rings.html"];

/// Somebody with a goal, a name, and numbers of three days.
const RESULTS: &str = r"
    const { store, results } = rungbook, today = results.today(), day = (ago) => results.dayText(today - ago);
    store.erase();
    store.put('screened', { says: 'clear', on: day(30) });
    store.put('goal', 'strict-ring-muscle-up');
    store.put('name', 'Ana');
    [['pull-up', '9 reps'], ['bar-dip', '10 reps'], ['dead-hang', '60 s'], ['squat', '25 reps'], ['push-up', '20 reps']].forEach(([movement, got]) =>
        [2, 16, 30].forEach((ago) => store.add('tested', { movement, got, on: day(ago) })));
    store.add('tested', { movement: 'knee-to-wall', left: '11 cm', right: '12 cm', on: day(2) });";

/// What is done to the same somebody.
const STATES: [(&str, &str); 4] = [
    ("empty", "rungbook.store.erase()"),
    ("with results", ""),
    (
        "paused",
        r"const { store, results } = rungbook, day = (ago) => results.dayText(results.today() - ago);
        store.add('paused', { part: 'shoulder', on: day(0), by: 'client', because: 'it hurts' });
        store.add('pain', { part: 'wrist', score: 4, on: day(1) })",
    ),
    (
        "barred",
        "rungbook.store.put('screened', { says: 'ask', on: rungbook.results.dayText(rungbook.results.today()) })",
    ),
];

fn kinds() -> impl Iterator<Item = &'static str> {
    KINDS.into_iter().chain(MORE)
}

fn become_somebody(browser: &Browser, base: &str, state: &str) {
    browser.open(&format!("{base}where-i-stand.html"));
    browser.run(RESULTS, &json!([]));
    if !state.is_empty() {
        browser.run(state, &json!([]));
    }
}

fn look(browser: &Browser, width: u32, feature: &str, value: &str) {
    browser.width(width);
    let features = json!([{ "name": feature, "value": value }]);
    browser.cdp(
        "Emulation.setEmulatedMedia",
        &json!({ "features": features }),
    );
}

/// What axe-core finds on each page kind.
fn found(
    browser: &Browser,
    base: &str,
    how: &str,
    mut look: impl FnMut(&Browser) -> Vec<String>,
) -> Vec<String> {
    let mut faults = Vec::new();
    for page in kinds() {
        browser.open(&format!("{base}{page}"));
        let found = look(browser).into_iter();
        faults.extend(found.map(|f| format!("{page}, {how}: {f}")));
    }
    faults
}

/// The light, a phone's width, folded as it comes; what is kept offline too, which stands as it stood but for the line of its day.
#[test]
fn every_page_kind_is_within_reach_in_every_state() {
    let (Some(mut looks), Some(browser)) = (Looks::new(), Browser::start()) else {
        return;
    };
    let base = disk(&site());
    look(&browser, 390, "prefers-color-scheme", "light");
    let mut faults = Vec::new();
    for (state, act) in STATES {
        become_somebody(&browser, &base, act);
        faults.extend(found(&browser, &base, state, |b| looks.at(b)));
    }
    faults.extend(found_offline(&browser, &mut looks));
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

fn found_offline(browser: &Browser, looks: &mut Looks) -> Vec<String> {
    let server = Server::start(&site());
    let base = server.base();
    become_somebody(browser, &base, "");
    browser
        .wait_until("navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller)");
    for page in kinds() {
        browser.open(&format!("{base}{page}"));
    }
    drop(server);
    // The line of its day is the same on most.
    let mut lines = HashSet::new();
    let mut faults = found(browser, &base, "offline", |browser| {
        let says = browser.run(KEPT, &json!([]));
        if says != "kept" {
            return vec![says.to_string()];
        }
        let line = browser.run(
            "return document.querySelector('.kept-from').outerHTML",
            &json!([]),
        );
        let mut found = Vec::new();
        if lines.insert(line.to_string()) {
            found.extend(looks.at_part(browser, ".kept-from"));
        }
        browser.run(
            "document.querySelectorAll('.kept-from').forEach((line) => line.remove())",
            &json!([]),
        );
        found.extend(looks.at(browser));
        found
    });
    browser.open(&format!("{base}suitcase-carry.html"));
    let says = browser.run(KEPT, &json!([]));
    if says == "nothing" || says == "kept" {
        faults.push(format!("a page that was never opened, offline: {says}"));
    }
    faults.extend(looks.at(browser));
    faults
}

/// Whether a page is a kept one; else its heading, or that there is nothing.
const KEPT: &str = "return document.querySelector('.kept-from') ? 'kept' : document.querySelector('main') ? document.querySelector('h1').textContent : 'nothing'";

/// A desk's width, everything folded open.
#[test]
fn every_page_kind_is_within_reach_in_the_dark() {
    let (Some(mut looks), Some(browser)) = (Looks::new(), Browser::start()) else {
        return;
    };
    let base = disk(&site());
    become_somebody(&browser, &base, "");
    look(&browser, 1440, "prefers-color-scheme", "dark");
    let faults = found(&browser, &base, "dark", |browser| {
        browser.run(
            "document.querySelectorAll('details').forEach((all) => { all.open = true; })",
            &json!([]),
        );
        // What opens is drawn first.
        browser.run_async(
            "requestAnimationFrame(() => requestAnimationFrame(arguments[0]))",
            &json!([]),
        );
        looks.at(browser)
    });
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// What the reader's own colours change: everything else is as in the light.
#[test]
fn every_page_kind_is_within_reach_in_forced_colours() {
    let (Some(looks), Some(browser)) = (Looks::new(), Browser::start()) else {
        return;
    };
    let base = disk(&site());
    become_somebody(&browser, &base, "");
    look(&browser, 390, "forced-colors", "active");
    let faults = found(&browser, &base, "forced colours", |b| looks.at_colours(b));
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// As a reader sets it in the browser: a size that the page writes over itself would prove nothing.
#[test]
fn text_twice_as_large_scrolls_nothing_sideways() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    become_somebody(&browser, &base, "");
    browser.width(390);
    let mut faults = Vec::new();
    for page in kinds() {
        browser.open(&format!("{base}{page}"));
        for size in [16, 32] {
            browser.cdp(
                "Page.setFontSizes",
                &json!({ "fontSizes": { "standard": size, "fixed": size * 13 / 16 } }),
            );
            // The size that is set counts.
            browser.wait_until(&format!(
                "parseFloat(getComputedStyle(document.documentElement).fontSize) === {size}"
            ));
            let said = browser.run(
                r"
                const all = document.documentElement, wide = all.clientWidth;
                return [all.scrollWidth - wide, [...document.querySelectorAll('body *')]
                    .filter(e => e.getBoundingClientRect().right > wide + 1 && !e.closest('.wide, .posture, .aside, pre, .map-scroll')).slice(0, 3).map(e => e.outerHTML.slice(0, 90))];",
                &json!([]),
            );
            if said[0].as_i64().is_none_or(|over| over > 0) {
                faults.push(format!("{page}, text of {size} px: {said}"));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// The pages on which a client acts.
const ACTS: [&str; 7] = [
    "today.html",
    "where-i-stand.html",
    "self-test-strict-ring-muscle-up.html",
    "if-it-hurts.html",
    "before-you-start.html",
    "my-people.html",
    "pull-up.html",
];

/// Presses the control of a number and says what it is, and whether it left the focus with the whole page; null where there is no
/// control of that number. What leaves the page or asks the system for something is not pressed.
const PRESS: &str = r"
    const [at, done] = arguments, said = new Set();
    const seen = e => e.checkVisibility({ visibilityProperty: true }) && e.getClientRects().length > 0;
    const all = [...document.querySelectorAll('main button, main summary, main select, main input[type=checkbox], main input[type=radio]')].filter(seen)
        .filter(e => !['share', 'save', 'print', 'erase'].includes(e.id))
        .filter(e => { const text = `${e.localName} ${e.type || ''} ${e.className} ${e.textContent.slice(0, 30)}`; const first = !said.has(text); said.add(text); return first; });
    const control = all[at];
    if (!control) { done(null); return; }
    const name = control.outerHTML.slice(0, 100);
    control.focus();
    control.click();
    const say = () => (document.querySelector('main[aria-busy]') ? setTimeout(say, 20) : done(document.activeElement === document.body ? name : ''));
    setTimeout(say, 150);";

#[test]
fn the_focus_never_falls_to_the_whole_page() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    browser.width(390);
    let (mut faults, mut pressed) = (Vec::new(), 0);
    become_somebody(&browser, &base, "");
    browser.run(STATES[2].1, &json!([]));
    let kept = browser.run("return JSON.stringify({ ...localStorage })", &json!([]));
    for page in ACTS {
        for at in 0..40 {
            // As it was before the control that was pressed last.
            browser.run(
                "localStorage.clear(); for (const [key, value] of Object.entries(JSON.parse(arguments[0]))) localStorage.setItem(key, value);",
                &json!([kept]),
            );
            browser.open(&format!("{base}{page}"));
            let said = browser.run_async(PRESS, &json!([at]));
            match said.as_str() {
                None => break,
                Some("") => {}
                Some(name) => faults.push(format!("{page}: {name}")),
            }
            pressed += 1;
        }
    }
    assert!(pressed > 30, "only {pressed} controls were pressed");
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// WCAG 2.2, success criteria 1.4.11 and 2.4.13 (from memory): what tells something by its colour alone, and the ring of what has
/// the focus, has at least 3 to 1 against what is beside it. Relative luminance as WCAG 2.2 defines it.
#[test]
fn accent_and_focus_stand_out_from_their_ground() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    browser.open(&format!("{base}index.html"));
    let script = r"
        const pen = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
        const light = (colour) => {
            pen.fillStyle = '#000';
            pen.fillStyle = colour;
            pen.fillRect(0, 0, 1, 1);
            const [r, g, b] = [...pen.getImageData(0, 0, 1, 1).data].map(v => v / 255).map(v => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4));
            return 0.2126 * r + 0.7152 * g + 0.0722 * b;
        };
        const of = (name) => { const e = document.createElement('p'); e.style.color = `var(${name})`; document.body.append(e); const { color } = getComputedStyle(e); e.remove(); return light(color); };
        const ratio = (a, b) => (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
        document.documentElement.style.setProperty('--accent', arguments[0]);
        const link = [...document.querySelectorAll('main a')].find((one) => one.checkVisibility());
        link.focus({ focusVisible: true });
        const ring = getComputedStyle(link).outlineColor;
        return { 'accent on paper': ratio(of('--tone'), of('--paper')), 'accent on a sheet': ratio(of('--tone'), of('--sheet')), 'ring on paper': ratio(light(ring), of('--paper')) };";
    let mut faults = Vec::new();
    for (scheme, accents) in [
        ("light", &["#b4472b"][..]),
        ("dark", &["#b4472b", "#1a237e", "#3b0a0a", "#f2c94c"][..]),
    ] {
        look(&browser, 390, "prefers-color-scheme", scheme);
        for accent in accents {
            let said = browser.run(script, &json!([accent]));
            for (what, ratio) in said.as_object().expect("ratios") {
                if ratio.as_f64().is_none_or(|of| of < 3.0) {
                    faults.push(format!("{scheme}, accent {accent}: {what} is {ratio} to 1"));
                }
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// The words by which people look for a movement, where the site calls it otherwise, with and without a network.
#[test]
fn search_finds_what_people_call_things() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let server = Server::start(&site());
    let base = server.base();
    browser.open(&format!("{base}search.html"));
    browser
        .wait_until("navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller)");
    let first = |typed: &str| -> Value {
        browser.run(
            "const f = document.getElementById('find'); f.value = arguments[0]; f.dispatchEvent(new Event('input')); return [...document.querySelectorAll('#found a:not(.mark)')].slice(0, 8).map(a => a.getAttribute('href'))",
            &json!([typed]),
        )
    };
    let mut faults = Vec::new();
    let mut ask = |how: &str| {
        for (typed, wanted) in [
            ("pullup", "pull-up.html"),
            ("pull ups", "pull-ups.html"),
            ("chin up", "pull-up.html"),
            ("pistol", "single-leg-squat.html"),
            ("pistol squat", "single-leg-squat.html"),
            ("painful shoulder", "if-it-hurts.html"),
            ("sore wrist", "if-it-hurts.html"),
            ("knee pain", "if-it-hurts.html"),
            ("skin the cat", "skin-the-cat.html"),
            ("muscle up", "ring-muscle-up.html"),
            ("handstnad", "freestanding-handstand.html"),
            ("calf", "single-leg-calf-raise.html"),
        ] {
            let found = first(typed);
            if !texts(&found).iter().any(|href| href == wanted) {
                faults.push(format!("{how}: {typed}: {found}"));
            }
        }
    };
    ask("with a network");
    drop(server);
    browser.open(&format!("{base}search.html"));
    ask("without");
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
