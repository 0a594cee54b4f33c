//! On a phone: every dialog is reached whole, and every form says at its field what is wrong with it.

use super::flow::{click, press_button};
use super::webdriver::Browser;
use super::{disk, site};
use serde_json::{Value, json};

pub fn run(browser: &Browser, script: &str) -> Value {
    browser.run(script, &json!([]))
}

/// Somebody who may test and train, with a goal and a number, of two who use the device.
const PERSON: &str = r"
    const { store, results } = rungbook, on = results.dayText(results.today());
    store.put('screened', { says: 'clear', on });
    store.put('born', 1990);
    store.put('goal', 'strict-ring-muscle-up');
    store.put('name', 'Ana');
    store.add('tested', { movement: 'pull-up', got: '9 reps', on: results.dayText(results.today() - 9) });
    localStorage.setItem(rungbook.health.own + '@1:about', JSON.stringify({ name: 'Ben' }));";

pub fn somebody() -> Option<(Browser, String)> {
    let browser = Browser::start()?;
    browser.width(390);
    let base = disk(&site());
    browser.open(&format!("{base}today.html"));
    run(&browser, PERSON);
    Some((browser, base))
}

/// Opens a page and presses buttons until a dialog is open.
fn open(browser: &Browser, page: &str, ready: &str, before: &str, buttons: &[&str]) {
    browser.open(page);
    browser.wait_until(ready);
    for (i, words) in buttons.iter().enumerate() {
        press_button(browser, words);
        if i + 1 < buttons.len() {
            browser.wait_until(before);
        }
    }
    browser.wait_until("document.querySelector('dialog[open]')");
}

/// Whether the open dialog lies on the screen, and its heading and its last button are seen once they are scrolled to: as it is, and
/// with more than any screen holds, marked movements among it, under a sheet that would let it grow.
const REACHED: &str = r"
    const dialog = document.querySelector('dialog[open]'), out = [];
    const buttons = dialog.querySelectorAll('button'), last = buttons[buttons.length - 1];
    const seen = (e) => {
        e.scrollIntoView({ block: 'nearest' });
        const box = e.getBoundingClientRect(), hit = document.elementFromPoint(box.left + box.width / 2, box.top + Math.min(box.height, 40) / 2);
        return hit === e || e.contains(hit);
    };
    const look = (how) => {
        const { top, bottom, left, right } = dialog.getBoundingClientRect();
        if (top < 0 || left < 0 || bottom > innerHeight || right > innerWidth) out.push(`${how}: from ${top} to ${bottom}, ${left} to ${right}`);
        if (!seen(dialog.querySelector('h2'))) out.push(`${how}: the heading is out of reach`);
        if (!seen(last)) out.push(`${how}: the last button is out of reach`);
    };
    look('as it is');
    const filler = document.createElement('p'), { tables } = rungbook.states.model, m = tables.mark.findIndex((mark) => mark >= 0);
    for (let i = 0; i < 90; i += 1) filler.append(rungbook.page.named(tables, m), document.createElement('br'));
    dialog.querySelector('h2').after(filler);
    look('full');
    const sheet = new CSSStyleSheet();
    sheet.insertRule('html body dialog[open] { max-block-size: none !important; block-size: 3000px !important; overflow: visible !important; inset-block-start: -400px !important; position: absolute !important }');
    document.adoptedStyleSheets = [sheet];
    look('under a sheet of a theme');
    document.adoptedStyleSheets = [];
    dialog.close();
    return out;";

/// No dialog is taller than the screen, whatever it names.
#[test]
fn every_dialog_is_reached_whole() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let cards = "document.querySelector('#sets article .hurt')";
    let number = "document.querySelector('#number-form input')";
    let erase = "document.getElementById('erase').checkVisibility()";
    let dialogs: [(&str, &str, &str, &[&str]); 4] = [
        ("today", cards, "true", &["It hurt"]),
        (
            "pull-up",
            "document.querySelector('#number-form button')",
            number,
            &["Enter your number"],
        ),
        (
            "dead-hang",
            "document.querySelector('#number-form button')",
            number,
            &["I did this already", "From a clip"],
        ),
        ("where-i-stand", erase, "true", &["Erase"]),
    ];
    let mut faults = Vec::new();
    for (page, ready, before, buttons) in dialogs {
        let address = format!("{base}{page}.html");
        if page == "pull-up" {
            browser.open(&address);
            browser.wait_until(ready);
            press_button(&browser, buttons[0]);
            browser.wait_until(before);
            browser.write(&browser.find("#number-form input"), "900");
            press_button(&browser, "Save: done today");
            browser.wait_until("document.querySelector('dialog[open]')");
        } else {
            open(&browser, &address, ready, before, buttons);
        }
        let found = run(&browser, REACHED);
        faults.extend(
            super::texts(&found)
                .into_iter()
                .map(|f| format!("{page}: {f}")),
        );
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// What a field says of itself after its form was refused: that it is wrong, why, and that it has the focus.
const BLAMED: &str = r"
    const at = document.activeElement, says = document.getElementById(at.getAttribute('aria-describedby'));
    if (!at.matches('input, select')) return `the focus is on ${at.outerHTML.slice(0, 80)}`;
    if (at.getAttribute('aria-invalid') !== 'true') return `${at.id} is not said to be wrong`;
    if (!says || !says.textContent.trim() || !says.checkVisibility()) return `${at.id} names no sentence`;
    const others = [...(at.closest('form, article') || document).querySelectorAll('[aria-invalid=true]')].filter((e) => e !== at);
    return others.length ? `${others[0].id} is still said to be wrong` : '';";

/// A form that is refused says why at its field, and the focus is there: of each page, what is pressed, and the field that it goes to.
#[test]
fn what_is_wrong_is_said_at_its_field() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let ask = "rungbook.store.put('screened', { says: 'ask', on: rungbook.results.dayText(rungbook.results.today()) })";
    let due = "rungbook.store.put('screened', { says: 'clear', on: rungbook.results.dayText(rungbook.results.today()) })";
    let log = "const { store, results } = rungbook; if (!store.entries('trained').length) store.add('trained', { movement: 'pull-up', did: [5, 5], on: results.dayText(results.today() - 1) });
        if (!store.entries('pain').length) store.add('pain', { part: 'foot', score: 1, on: results.dayText(results.today() - 1) })";
    let change = |place: usize, value: &str| {
        format!(
            "[...document.querySelectorAll('#log button')].find(b => b.textContent === 'Change').click(); document.querySelectorAll('.log-form input')[{place}].value = '{value}'"
        )
    };
    let logged = [
        change(0, "5, five"),
        change(1, "heavy"),
        change(2, "-1"),
        change(3, ""),
    ];
    let cases: [(&str, &str, &str, &str, &str); 18] = [
        (
            "before-you-start",
            due,
            "document.getElementById('born').value = 'x'",
            "#questions button[type=submit]",
            "born",
        ),
        (
            "before-you-start",
            due,
            "document.querySelector('[name=heart][value=no]').checked = true",
            "#questions button[type=submit]",
            "regular",
        ),
        (
            "before-you-start",
            ask,
            "",
            "#clearance button[type=submit]",
            "effort",
        ),
        (
            "before-you-start",
            ask,
            "document.querySelector('[name=effort]').checked = true",
            "#clearance button[type=submit]",
            "clear-by",
        ),
        ("today", due, "", "#sets article .acts button", "tick-"),
        (
            "today",
            due,
            "const set = document.querySelector('#sets article .ticks'); set.querySelector('[type=checkbox]').checked = true; set.querySelector('[type=text]').value = '-3'",
            "#sets article .acts button",
            "Set 1",
        ),
        (
            "today",
            due,
            "document.getElementById('session-effort').value = '11'",
            "#session button",
            "session-effort",
        ),
        (
            "today",
            due,
            "document.getElementById('session-effort').value = '7'",
            "#session button",
            "session-minutes",
        ),
        (
            "where-i-stand",
            due,
            "document.getElementById('weight-input').value = 'x'",
            "#weight button",
            "weight-input",
        ),
        (
            "where-i-stand",
            due,
            "",
            "#history .number-line button[type=submit]",
            "number-",
        ),
        (
            "if-it-hurts",
            due,
            "",
            "#pain-form button[type=submit]",
            "pain-part",
        ),
        (
            "self-test-one-leg-to-the-floor",
            due,
            "",
            ".known button[type=submit]",
            "known-0",
        ),
        (
            "today",
            log,
            &logged[0],
            ".log-form button[type=submit]",
            "log-1",
        ),
        (
            "today",
            log,
            &logged[1],
            ".log-form button[type=submit]",
            "log-2",
        ),
        (
            "today",
            log,
            &logged[2],
            ".log-form button[type=submit]",
            "log-3",
        ),
        (
            "today",
            log,
            &logged[3],
            ".log-form button[type=submit]",
            "log-4",
        ),
        (
            "if-it-hurts",
            log,
            "",
            "#pain-list .morning button[type=submit]",
            "morning-0",
        ),
        (
            "where-i-stand",
            log,
            "document.getElementById('people').open = true",
            "#people-list button[type=submit]",
            "new-person",
        ),
    ];
    let mut faults = Vec::new();
    for (page, state, make, button, field) in cases {
        browser.open(&format!("{base}{page}.html"));
        run(&browser, state);
        browser.open(&format!("{base}{page}.html"));
        // What few have is loaded once the page stands.
        if make.contains("#log") {
            browser.wait_until("document.querySelector('#log button')");
        }
        run(&browser, make);
        browser.wait_until(&format!("document.querySelector('{button}')"));
        click(&browser, button);
        let said = run(&browser, BLAMED);
        let at = run(
            &browser,
            "const { id, name, ariaLabel } = document.activeElement; return `${id} ${name} ${ariaLabel}`",
        );
        if said != "" || !at.as_str().is_some_and(|at| at.contains(field)) {
            faults.push(format!("{page}, {field}: {said}, at {at}"));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Where two use a device, every page that shows or takes numbers says whose they are; erased, no field holds them any longer.
#[test]
fn whose_numbers_they_are_is_said() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    for page in [
        "today",
        "self-test",
        "where-i-stand",
        "pull-up",
        "before-you-start",
        "if-it-hurts",
    ] {
        browser.open(&format!("{base}{page}.html"));
        let said = run(
            &browser,
            "return (document.getElementById('whose') || document.body).textContent.slice(0, 60)",
        );
        assert!(
            said.as_str().is_some_and(|t| t.starts_with("For Ana")),
            "{page}: {said}"
        );
    }
    browser.open(&format!("{base}where-i-stand.html"));
    press_button(&browser, "Erase");
    browser.wait_until("document.querySelector('dialog[open]')");
    click(&browser, "dialog button[value=erase]");
    browser.wait_until("!document.querySelector('dialog[open]')");
    assert_eq!(
        run(
            &browser,
            "return document.getElementById('name-mine').value"
        ),
        ""
    );
}

/// Who is too young for a page hears of a coach, and of no clinician that nothing asks for.
#[test]
fn a_child_hears_of_a_coach() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    run(
        &browser,
        "rungbook.store.put('born', new Date().getFullYear() - 9)",
    );
    for page in ["self-test-heavy-dip", "self-test", "where-i-stand", "today"] {
        browser.open(&format!("{base}{page}.html"));
        let said = run(
            &browser,
            "return document.querySelector('main').innerText.replace(/Not medical advice.*/g, '')",
        );
        let said = said.as_str().expect("text");
        assert!(said.contains("coach in person"), "{page}: {said}");
        assert!(
            !said.contains("clinician first") && !said.contains("ask first"),
            "{page}: {said}"
        );
    }
}

/// What hurts today ends the tests of every skill, said so or by a pause alone.
#[test]
fn what_hurts_ends_the_tests_of_all_skills() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    run(
        &browser,
        "const on = rungbook.results.dayText(rungbook.results.today());
        rungbook.store.note('known', { 'heavy-dip': true, 'lift-and-carry': true });
        rungbook.store.add('paused', { movement: 'pull-up', on, by: 'client', because: 'it hurt in a test' })",
    );
    for page in ["self-test-strict-ring-muscle-up", "self-test-heavy-dip"] {
        browser.open(&format!("{base}{page}.html"));
        let head = run(
            &browser,
            "return document.getElementById('guided-head').textContent",
        );
        assert_eq!(head, "No more tests today", "{page}");
    }
}

/// What follows from the health questions is seen whole, where the reader is.
#[test]
fn what_follows_is_seen() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.width(390);
    browser.open(&format!("{}before-you-start.html", disk(&site())));
    browser.write(&browser.find("#born"), "1990");
    click(&browser, "#questions input[name=regular][value=yes]");
    click(&browser, "#no-to-the-rest");
    browser.wait_until("!document.getElementById('outcome').hidden");
    let seen = run(
        &browser,
        "const { top, bottom } = document.getElementById('outcome').getBoundingClientRect();
        return [top >= 0 && bottom <= innerHeight, document.activeElement.id]",
    );
    assert_eq!(seen, json!([true, "outcome-head"]));
}
