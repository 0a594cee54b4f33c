//! What Today and Where I stand told last: shown at once while nothing that decides has changed, and answered for without a plan.

use super::webdriver::Browser;
use super::{disk, site};
use serde_json::{Value, json};

/// Somebody with a goal and numbers of two days.
const PERSON: &str = r"
    const { store, results } = rungbook, ago = n => results.dayText(results.today() - n);
    store.put('screened', { says: 'clear', on: ago(1) });
    store.put('goal', 'strict-ring-muscle-up');
    for (const [movement, got] of Object.entries({ 'pull-up': '9 reps', 'push-up': '24 reps', 'bar-dip': '10 reps', squat: '25 reps', 'dead-hang': '60 s' }))
        for (const days of [9, 30]) store.add('tested', { movement, got, on: ago(days) });";

/// Everything of the page as a reader finds it, but for the numbers of its fields.
const READS: &str = r#"
    const all = document.querySelector('main').cloneNode(true);
    all.querySelectorAll('[data-src]').forEach(e => e.remove());
    return all.outerHTML.replace(/number-[0-9]+/g, 'number').replace(/ (?:checked|value|selected|aria-busy)="[^"]*"/g, '');"#;

/// Whether it was told last, and whether anything was planned.
const HOW: &str = "return [rungbook.told.holds(), Boolean(rungbook.aim)]";

fn run(browser: &Browser, script: &str) -> Value {
    browser.run(script, &json!([]))
}

/// Opens a page and waits until nothing is left to be done.
fn open(browser: &Browser, address: &str) {
    browser.open(address);
    browser.wait_until("rungbook.states && (rungbook.aim || rungbook.told.holds()) && !document.querySelector('main[aria-busy], [inert]') && !('telling' in document.documentElement.dataset)");
    browser.wait_until("document.querySelector('#sets .ticks, #history-list .number-line')");
}

fn person(page: &str) -> Option<(Browser, String)> {
    let browser = Browser::start()?;
    browser.width(390);
    let address = format!("{}{page}", disk(&site()));
    browser.open(&address);
    browser.wait_until("rungbook.states");
    run(&browser, PERSON);
    open(&browser, &address);
    browser.wait_until("Object.keys(localStorage).some(key => key.includes(':told:'))");
    Some((browser, address))
}

#[test]
fn what_was_told_last_is_what_would_be_told() {
    for page in ["today.html", "where-i-stand.html"] {
        let Some((browser, address)) = person(page) else {
            return;
        };
        assert_eq!(run(&browser, HOW), json!([false, true]), "{page}");
        let planned = run(&browser, READS);
        open(&browser, &address);
        assert_eq!(run(&browser, HOW), json!([true, false]), "{page}");
        assert_eq!(run(&browser, READS), planned, "{page}");
    }
}

/// A pain, a pause, another answer to the health questions, a number, another day: nothing of before is shown.
#[test]
fn nothing_is_told_of_what_has_changed() {
    let Some((browser, address)) = person("today.html") else {
        return;
    };
    let own = "const put = (key, of) => localStorage.setItem(rungbook.health.prefix + key, JSON.stringify(of)), on = rungbook.results.dayText(rungbook.results.today());";
    for change in [
        "put('pain:000000001-aaaaaaa', { part: 'knee', score: 3, on });",
        "put('paused:000000001-aaaaaaa', { part: 'knee', on });",
        "put('tested:000000001-aaaaaaa', { movement: 'squat', got: '26 reps', on });",
        "put('screened', { says: 'light', on });",
        "put('about', { goal: 'heavy-dip' });",
        "localStorage.setItem(`${rungbook.health.own}units`, '\"imperial\"');",
        // As if it was told on another day.
        "const key = `${rungbook.health.prefix}told:today`, kept = JSON.parse(localStorage.getItem(key)); const { Date: real } = globalThis; globalThis.Date = class extends real { constructor() { super(real.now() - 864e5); } }; kept.key = rungbook.told.keyNow(); globalThis.Date = real; localStorage.setItem(key, JSON.stringify(kept));",
    ] {
        open(&browser, &address);
        browser.wait_until("rungbook.told.holds() || JSON.parse(localStorage.getItem(`${rungbook.health.prefix}told:today`)).key === rungbook.told.keyNow()");
        run(&browser, &format!("{own} {change}"));
        let kept = run(
            &browser,
            "return JSON.parse(localStorage.getItem(`${rungbook.health.prefix}told:today`)).key === rungbook.told.keyNow()",
        );
        assert_eq!(kept, json!(false), "{change}");
        browser.open(&address);
        browser.wait_until("rungbook.states");
        assert_eq!(
            run(&browser, "return rungbook.told.holds()"),
            json!(false),
            "{change}"
        );
    }
}

/// Sets are ticked, kept and taken back, and a number is entered, on what was told last.
#[test]
fn what_was_told_last_answers() {
    let Some((browser, address)) = person("today.html") else {
        return;
    };
    open(&browser, &address);
    run(
        &browser,
        "document.querySelectorAll('#sets article .ticks input[type=checkbox]')[0].click()",
    );
    open(&browser, &address);
    assert_eq!(run(&browser, HOW), json!([true, false]));
    assert_eq!(
        run(
            &browser,
            "return document.querySelectorAll('#sets .ticks input:checked').length"
        ),
        json!(1)
    );
    run(
        &browser,
        "document.querySelector('#sets article:has(:checked) .acts button:not(.hurt)').click()",
    );
    browser.wait_until("rungbook.aim && document.querySelector('#sets article.done')");
    let (browser, address) = person("where-i-stand.html").expect("a browser");
    open(&browser, &address);
    run(
        &browser,
        "const form = document.querySelector('#history .number-line'); form.querySelector('input').value = '26'; form.requestSubmit();",
    );
    browser.wait_until("rungbook.aim && document.querySelector('#notice button')");
}

/// A pause is lifted on what was told last as on a page that planned: how it is now is asked.
#[test]
fn a_pause_that_was_told_is_lifted() {
    for page in ["today.html", "where-i-stand.html"] {
        let Some((browser, address)) = person(page) else {
            return;
        };
        run(
            &browser,
            "const { store, results } = rungbook; store.add('paused', { part: 'knee', on: results.dayText(results.today() - 3), by: 'client' })",
        );
        open(&browser, &address);
        browser.wait_until("JSON.parse(localStorage.getItem(`${rungbook.health.prefix}told:${location.pathname.split('/').pop().split('.')[0]}`)).key === rungbook.told.keyNow()");
        open(&browser, &address);
        assert_eq!(run(&browser, HOW), json!([true, false]), "{page}");
        run(
            &browser,
            "document.querySelector('#rests-today-list button, #rests-list button').click()",
        );
        browser.wait_until("document.querySelector('dialog[open] button[value=\"1\"]')");
        run(
            &browser,
            "document.querySelector('dialog[open] button[value=\"1\"]').click()",
        );
        browser.wait_until("rungbook.store.entries('paused').length === 0");
    }
}
