//! A client on a phone: health questions, the guided self-test, leaving, coming back without network, export, erase, import.
//! The same in both engines; by keyboard alone and from disk in Chromium.

use super::serve::Server;
use super::webdriver::{Browser, ENTER, Element, TAB};
use super::{disk, root, site, write_picture};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Command;

const SKILL: &str = "one-leg-to-the-floor";

/// Every movement's state as the page shows it, and the numbers behind them.
const STATES: &str = r"
    const stand = rungbook.states ? rungbook.states.mine() : null;
    if (!stand) return null;
    const { tables } = rungbook.states.model;
    return Object.fromEntries(tables.ids.map((id, m) => [id, rungbook.readiness.STATES[stand.found.states[m]]]));";

/// Links to movements with cautions that do not stand beside their mark, as the page is after its scripts have run.
pub const UNMARKED: &str = r"
    const { tables } = rungbook.states.model;
    const cautioned = new Set(tables.ids.filter((_, m) => tables.mark[m] >= 0));
    return [...document.querySelectorAll('a[href]')].map(a => [a, a.getAttribute('href').split(/[#?]/)[0].replace('.html', '')])
        .filter(([, id]) => cautioned.has(id))
        .filter(([a, id]) => { const named = a.closest(`[data-movement='${id}']`); return !(named && named.querySelector('[data-caution]')); })
        .map(([a]) => a.outerHTML);";

pub fn click(browser: &Browser, selector: &str) {
    browser.find(selector);
    // What was found may be drawn anew meanwhile.
    let found = browser.run(
        "const found = document.querySelector(arguments[0]); if (found) found.scrollIntoView({ block: 'center' }); return found",
        &json!([selector]),
    );
    let found = Element::from(&found).unwrap_or_else(|| panic!("there is no `{selector}`"));
    browser.click(&found);
}

/// The button with these words.
pub fn press_button(browser: &Browser, words: &str) {
    let found = browser.run(
        r"
        const seen = e => e.checkVisibility() && e.getClientRects().length > 0;
        const within = document.querySelector('dialog[open]') || document;
        const found = [...within.querySelectorAll('button, a.act')].find(b => seen(b) && b.textContent.trim().startsWith(arguments[0]));
        if (found) found.scrollIntoView({ block: 'center' });
        return found || null;",
        &json!([words]),
    );
    let element = Element::from(&found).unwrap_or_else(|| panic!("there is no button `{words}`"));
    browser.click(&element);
}

/// The health questions that are asked at the age that was written.
const ASKED: &str = "return [...new Set([...document.querySelectorAll('#questions fieldset:not([hidden]) input[type=radio]')].map(i => i.name))]";

/// Answers the health questions: exercises regularly, nothing else.
fn health(browser: &Browser, base: &str) {
    browser.open(&format!("{base}before-you-start.html"));
    browser.write(&browser.find("#born"), "1990");
    let names = browser.run(ASKED, &json!([]));
    for name in super::texts(&names).into_iter().filter(|n| !n.is_empty()) {
        let answer = if name == "regular" { "yes" } else { "no" };
        click(
            browser,
            &format!("#questions input[name={name}][value={answer}]"),
        );
    }
    press_button(browser, "What follows");
    browser.wait_until("!document.getElementById('outcome').hidden");
    let kept = browser.run("return rungbook.store.get('screened').says", &json!([]));
    assert_eq!(kept, "clear");
}

/// What the guided test asks: the movement, whether it may be tested today, and whether its needs are shown.
const QUESTION: &str = r"
    const head = document.getElementById('guided-head');
    if (!head || !head.textContent.startsWith('Question')) return null;
    const { tables } = rungbook.states.model;
    const shown = [...document.querySelectorAll('#sheet article')].filter(a => a.checkVisibility());
    const id = document.querySelector('#guided [data-movement]').dataset.movement, m = tables.ids.indexOf(id);
    const stand = rungbook.states.mine();
    const nobody = rungbook.results.nobody();
    const found = stand ? stand.found : rungbook.readiness.assess(rungbook.states.model, nobody, rungbook.results.today());
    return { id, shown: shown.map(a => a.dataset.movement), standard: tables.target_text[tables.leaves[2 * m + 1]], stage: tables.stage[m],
        today: document.getElementById('guided').dataset.today === 'true', barred: Boolean(document.querySelector('#guided .do-not')),
        folded: Boolean(document.querySelector('#guided details.rules:not([open])')), needs: found.needs[m] === rungbook.readiness.TRUE,
        done: rungbook.states.model.target(m).measure === rungbook.targets.DONE,
        fields: [...document.querySelectorAll('.enter-form .fields input')].filter(i => i.checkVisibility()).length };";

/// Answers the guided questions as a client who owns everything below a stage. Gives back the questions.
fn answer_all(browser: &Browser, below: i64) -> Vec<Value> {
    let mut asked = Vec::new();
    loop {
        let question = browser.run(QUESTION, &json!([]));
        if question.is_null() {
            break;
        }
        assert_eq!(question["shown"], json!([]), "the sheet is put away");
        assert_eq!(
            json!([question["barred"], question["folded"]]),
            json!([question["today"] == false, true]),
            "what may not be tried is said, the rules are folded: {question}"
        );
        assert!(
            question["today"] == false || question["needs"] == true,
            "an unsafe question: {question}"
        );
        if asked.len() == 1 && browser.run("return location.protocol", &json!([])) == "file:" {
            write_picture("flow-question.png", &browser.whole_picture(390));
        }
        let able = question["stage"].as_i64().expect("a stage") < below;
        enter(browser, question["standard"].as_str().expect("text"), able);
        asked.push(question);
        assert!(asked.len() < 40, "it ends");
    }
    asked
}

/// Fills the form of the question with the standard, or with nothing.
fn enter(browser: &Browser, standard: &str, able: bool) {
    let number: String = standard.replace("at most ", "");
    let parts: Vec<&str> = number.split('x').collect();
    let amount: String = parts
        .last()
        .expect("a part")
        .chars()
        .take_while(|c| c.is_ascii_digit() || *c == '.')
        .collect();
    let amount = match (able, standard.starts_with("at most")) {
        (true, _) => amount,
        (false, true) => "90".into(),
        (false, false) => "0".into(),
    };
    let fields = browser.run(
        "return [...document.querySelectorAll('.enter-form > .fields label')].map(l => [l.htmlFor, l.textContent])",
        &json!([]),
    );
    for field in fields.as_array().expect("a list") {
        let (id, says) = (
            field[0].as_str().expect("text"),
            field[1].as_str().expect("text"),
        );
        let element = browser.find(&format!("#{id}"));
        let value = match says {
            "Done" if able => {
                click(browser, &format!("#{id}"));
                continue;
            }
            "Done" | "The weight" | "The day" => continue,
            "When was it?" => {
                // A number that is not of this moment says when it was.
                browser.run(
                    "const of = document.getElementById(arguments[0]); if (of.value === '') { of.value = '6'; of.dispatchEvent(new Event('change')); }",
                    &json!([id]),
                );
                continue;
            }
            "Sets" => {
                browser.clear(&element);
                parts
                    .first()
                    .filter(|_| parts.len() > 1)
                    .unwrap_or(&"1")
                    .to_string()
            }
            "Seconds of each rep" => after(standard, " of "),
            says if says.starts_with("Weight") => after(standard, " with "),
            "Good tries" | "Out of tries" => String::new(),
            _ => amount.clone(),
        };
        if !value.is_empty() {
            browser.write(&element, &value);
        }
    }
    press_button(browser, "Save this number");
    let fault = browser.run(
        "const f = document.querySelector('.enter-form .fault'); return f ? f.textContent : ''",
        &json!([]),
    );
    assert_eq!(fault, "", "{standard}");
}

fn after(text: &str, word: &str) -> String {
    let rest = text.split(word).nth(1).unwrap_or("");
    rest.chars()
        .take_while(|c| c.is_ascii_digit() || *c == '.')
        .collect()
}

fn guided(browser: &Browser, base: &str, below: i64) -> Vec<Value> {
    browser.open(&format!("{base}self-test-{SKILL}.html"));
    press_button(browser, "A few tests first");
    press_button(browser, "None is true");
    let asked = answer_all(browser, below);
    assert!(!asked.is_empty());
    asked
}

/// Export, erase, a bad import, a good one: the same states come back.
fn keep_and_bring_back(browser: &Browser, folder: &Path) {
    let before = browser.run(STATES, &json!([]));
    browser.run(
        "rungbook.page.download = (name, content) => { globalThis.saved = content; }",
        &json!([]),
    );
    click(browser, "#save");
    let saved = browser.run("return globalThis.saved", &json!([]));
    let copy = folder.join("copy.json");
    fs::write(&copy, saved.as_str().expect("text")).expect("a copy");

    click(browser, "#erase");
    press_button(browser, "Erase everything");
    browser.wait_until("globalThis.rungbook?.states?.mine() === null");
    assert_eq!(
        browser.run("return [...document.querySelectorAll('main .state')].filter(s => s.checkVisibility()).length", &json!([])),
        0,
        "no states before the first result"
    );

    for (bad, why) in [
        ("{ \"results\": 1, \"tested\": [", "not JSON"),
        ("{ \"results\": 7 }", "version"),
        (
            "{ \"results\": 1, \"tested\": [{ \"movement\": \"squat\", \"got\": \"many\" }] }",
            "not a result",
        ),
        (
            "{ \"results\": 1, \"tested\": [{ \"movement\": \"squat\", \"got\": \"5 reps\", \"on\": \"2026-02-30\" }] }",
            "not a day",
        ),
        (
            "{ \"results\": 1, \"tested\": [{ \"movement\": \"squat\", \"got\": \"5 reps\", \"left\": \"6 reps\" }] }",
            "or “left” and “right”",
        ),
        (
            "{ \"results\": 1, \"trained\": [{ \"movement\": \"squat\", \"did\": [5, \"many\"] }] }",
            "a set is no number",
        ),
    ] {
        let file = folder.join("bad.json");
        fs::write(&file, bad).expect("a bad copy");
        browser.upload(&browser.find("#open"), &file);
        browser.wait_until(&format!(
            "document.getElementById('take-says').textContent.includes({})",
            json!(why)
        ));
        assert_eq!(
            browser.run(STATES, &json!([])),
            Value::Null,
            "a bad file changes nothing"
        );
    }
    browser.upload(&browser.find("#open"), &copy);
    browser.wait_until("(globalThis.rungbook?.states?.mine() ?? null) !== null");
    assert_eq!(browser.run(STATES, &json!([])), before);
    // Once more: equal entries count once.
    let entries = "return rungbook.store.all().tested.length";
    let count = browser.run(entries, &json!([]));
    browser.upload(&browser.find("#open"), &copy);
    browser.wait_until("document.getElementById('take-says').textContent.includes('Here already')");
    assert_eq!(browser.run(entries, &json!([])), count);
}

/// Nothing is wider than the phone.
pub fn fits(browser: &Browser) {
    let sizes = browser.run(
        "return [document.documentElement.scrollWidth, innerWidth]",
        &json!([]),
    );
    assert!(sizes[0].as_u64() <= sizes[1].as_u64(), "{sizes}");
}

fn whole_flow(browser: &Browser) {
    browser.width(390);
    let server = Server::start(&site());
    let base = server.base();
    browser.open(&format!("{base}{SKILL}.html"));
    assert_eq!(
        browser.run(STATES, &json!([])),
        Value::Null,
        "no states before the first result"
    );
    browser.wait_until("navigator.serviceWorker.controller");
    // The worker keeps the chosen skill's pages.
    browser.wait_until(&format!(
        "(() => {{ caches.match('self-test-{SKILL}.html').then(kept => {{ globalThis.kept = kept; }}); return globalThis.kept; }})()"
    ));
    health(browser, &base);
    fits(browser);
    guided(browser, &base, 2);
    fits(browser);
    browser.open(&format!("{base}where-i-stand.html"));
    browser.wait_until("(globalThis.rungbook?.states?.mine() ?? null) !== null");
    let states = browser.run(STATES, &json!([]));
    assert!(
        states
            .as_object()
            .is_some_and(|s| s.values().any(|v| v == "owned"))
    );
    fits(browser);

    drop(server);
    browser.refresh();
    browser.wait_until("(globalThis.rungbook?.states?.mine() ?? null) !== null");
    assert_eq!(
        browser.run(STATES, &json!([])),
        states,
        "the same without network"
    );
    let folder = tempfile::tempdir().expect("a folder");
    keep_and_bring_back(browser, folder.path());
    // The test itself goes on without network.
    browser.open(&format!("{base}self-test-{SKILL}.html"));
    browser.wait_until("document.querySelector('#sheet article .enter button')");
    assert_eq!(browser.run(STATES, &json!([])), states);
}

#[test]
fn a_client_tests_leaves_and_comes_back() {
    for browser in [Browser::start(), Browser::start_webkit()]
        .into_iter()
        .flatten()
    {
        whole_flow(&browser);
        assert_eq!(
            browser
                .complaints()
                .into_iter()
                .filter(|c| !c.contains("ERR_CONNECTION"))
                .collect::<Vec<_>>(),
            Vec::<String>::new()
        );
    }
}

#[test]
fn a_client_tests_from_disk() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.width(390);
    let base = disk(&site());
    health(&browser, &base);
    guided(&browser, &base, 3);
    for (page, name) in [
        ("where-i-stand.html", "stand"),
        (&format!("{SKILL}.html"), "skill"),
    ] {
        browser.open(&format!("{base}{page}"));
        let bare = browser.run(UNMARKED, &json!([]));
        assert_eq!(
            bare,
            json!([]),
            "{page}: named without a mark by the script"
        );
        // What is folded is shown once it is asked for.
        browser.run("document.querySelectorAll('main details.folded').forEach(fold => { fold.open = true; })", &json!([]));
        browser.wait_until("document.querySelectorAll('main .state').length > 3");
        let drawn = browser.run("return [...document.querySelectorAll('main .state')].filter(s => s.checkVisibility()).length", &json!([]));
        assert!(
            drawn.as_u64().is_some_and(|n| n > 3),
            "{page}: {drawn} states"
        );
        write_picture(&format!("flow-{name}.png"), &browser.whole_picture(390));
    }
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// The engine of the page gives what `assess` gives, on the shipped curriculum, for many clients.
#[test]
fn the_page_and_assess_agree_on_the_shipped_curriculum() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.open(&format!("{}where-i-stand.html", disk(&site())));
    let ids = super::texts(&browser.run("return rungbook.states.model.tables.ids", &json!([])));
    let standards = super::texts(&browser.run(
        "const t = rungbook.states.model.tables; return t.ids.map((_, m) => t.target_text[t.leaves[2 * m + 1]])",
        &json!([]),
    ));
    let mut dice = 20_261_125_u64;
    let mut roll = |below: u64| {
        dice ^= dice << 13;
        dice ^= dice >> 7;
        dice ^= dice << 17;
        dice % below
    };
    let folder = tempfile::tempdir().expect("a folder");
    let mut files = Vec::new();
    let mut cases = Vec::new();
    for i in 0..24 {
        let mut tested = Vec::new();
        for (id, standard) in ids.iter().zip(&standards) {
            if roll(3) > 0 {
                continue;
            }
            let target = standard.replace("at most ", "").replace(" each side", "");
            let got = match roll(3) {
                0 => target,
                _ => target.replacen(|c: char| c.is_ascii_digit(), "1", 1),
            };
            tested.push(json!({ "movement": id, "got": got, "on": "2026-11-20" }));
        }
        let paused = match roll(3) {
            0 => json!([{ "part": "shoulder", "on": "2026-11-20", "by": "client" }]),
            _ => json!([]),
        };
        let results = json!({ "results": 1, "name": format!("c{i:02}"), "bodyweight": "70 kg", "tested": tested, "paused": paused });
        let file = folder.path().join(format!("c{i:02}.json"));
        fs::write(&file, results.to_string()).expect("results");
        files.push(file);
        cases.push(results);
    }
    let assessed = Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(["assess", "--as", "json", "--today", "2026-11-25", "--from"])
        .arg(root())
        .args(&files)
        .output()
        .expect("the program runs");
    assert!(
        assessed.status.success(),
        "{}",
        String::from_utf8_lossy(&assessed.stderr)
    );
    let answer: Value = serde_json::from_slice(&assessed.stdout).expect("an answer");
    let mut states: BTreeMap<String, usize> = BTreeMap::new();
    for (case, person) in cases
        .iter()
        .zip(answer["people"].as_array().expect("people"))
    {
        let page = browser.run(
            r"
            const { results, readiness, states } = rungbook, { model } = states, { tables } = model;
            const day = results.readDay('2026-11-25');
            const found = readiness.assess(model, results.person(results.check(arguments[0], day), model, day).person, day);
            return Object.fromEntries(tables.ids.map((id, m) => [id, {
                state: readiness.STATES[found.states[m]], presumed: found.counted[m] === 1,
                missing: found.missing(m).map(({ leaf, movement, got, share }) => ({ movement: tables.ids[movement],
                    target: tables.target_text[tables.leaves[2 * leaf + 1]], got, share: share === null ? null : share / 1000 })),
            }]));",
            &json!([case]),
        );
        for (id, ours) in person["movements"].as_object().expect("movements") {
            for key in ["state", "presumed", "missing"] {
                assert!(
                    same(&ours[key], &page[id][key]),
                    "{} {id} {key}: {} and {}",
                    person["name"],
                    ours[key],
                    page[id][key]
                );
            }
            *states
                .entry(ours["state"].as_str().expect("text").into())
                .or_default() += 1;
        }
    }
    assert_eq!(states.len(), 6, "every state came up: {states:?}");
}

/// Whether two answers are equal; 1 and 1.0 are one number.
fn same(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Number(a), Value::Number(b)) => a.as_f64() == b.as_f64(),
        (Value::Array(a), Value::Array(b)) => {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(a, b))
        }
        (Value::Object(a), Value::Object(b)) => {
            a.len() == b.len()
                && a.iter()
                    .all(|(key, a)| b.get(key).is_some_and(|b| same(a, b)))
        }
        _ => a == b,
    }
}

/// Moves the focus by the keyboard until it stands on an element that a test in the page accepts.
fn tab_to(browser: &Browser, wanted: &str) {
    for _ in 0..400 {
        browser.press(TAB);
        let at = browser.run(
            &format!("const e = document.activeElement; return !!({wanted})"),
            &json!([]),
        );
        if at == true {
            return;
        }
    }
    panic!("no tab stop fits {wanted}");
}

/// A whole self-test by keyboard, and what a screen reader is told on the way.
#[test]
fn a_client_tests_by_keyboard_alone() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.width(390);
    let base = disk(&site());
    browser.open(&format!("{base}before-you-start.html"));
    tab_to(&browser, "e.id === 'born'");
    for digit in "1990".chars() {
        browser.press(digit);
    }
    let names = super::texts(&browser.run(ASKED, &json!([])));
    for name in &names {
        tab_to(&browser, &format!("e.name === '{name}'"));
        browser.press(' ');
        if name != "regular" {
            browser.press('\u{e015}');
        }
    }
    tab_to(&browser, "e.textContent === 'What follows'");
    browser.press(ENTER);
    browser.wait_until("document.activeElement.id === 'outcome-head'");
    browser.open(&format!("{base}self-test-{SKILL}.html"));
    tab_to(&browser, "e.textContent === 'A few tests first'");
    browser.press(ENTER);
    tab_to(&browser, "e.textContent.startsWith('None is true')");
    browser.press(ENTER);
    let mut asked = 0;
    loop {
        browser.wait_until("document.activeElement.id === 'guided-head'");
        let roles = browser.run(
            r"
            const guided = document.getElementById('guided');
            const unnamed = [...document.querySelectorAll('main button, main input, main select, main a')].filter(e => e.checkVisibility())
                .filter(e => !(e.textContent.trim() || e.getAttribute('aria-label') || (e.labels && e.labels.length))).map(e => e.outerHTML);
            return { title: document.activeElement.textContent, live: guided.getAttribute('aria-live'), unnamed,
                role: document.activeElement.localName };",
            &json!([]),
        );
        assert_eq!(roles["live"], "polite");
        assert_eq!(roles["unnamed"], json!([]), "every control has a name");
        assert_eq!(roles["role"], "h2");
        if !roles["title"]
            .as_str()
            .is_some_and(|t| t.starts_with("Question"))
        {
            break;
        }
        asked += 1;
        if asked == 2 {
            tab_to(&browser, "e.textContent === 'Not sure'");
            browser.press(ENTER);
            continue;
        }
        tab_to(
            &browser,
            "e.closest('.enter-form') && (e.inputMode === 'decimal' || e.type === 'checkbox')",
        );
        let sided = browser.run(
            "return document.activeElement.labels[0].textContent.includes('left')",
            &json!([]),
        );
        let done = browser.run(
            "return document.activeElement.type === 'checkbox'",
            &json!([]),
        );
        browser.press(if done == true { ' ' } else { '3' });
        if sided == true {
            browser.press(TAB);
            browser.press('3');
        }
        let undated = browser.run(
            "return [...document.querySelectorAll('.enter-form select')].some(e => e.checkVisibility() && e.value === '')",
            &json!([]),
        );
        if undated == true {
            tab_to(&browser, "e.localName === 'select' && e.value === ''");
            browser.press('\u{e015}');
        }
        tab_to(&browser, "e.textContent === 'Save this number'");
        browser.press(ENTER);
        assert!(asked < 30, "it ends");
    }
    assert!(asked > 2);
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Two tabs write at once and lose nothing; where storage is full or forbidden the page says so and goes on.
#[test]
fn storage_loses_nothing_and_says_its_limits() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let server = Server::start(&site());
    let page = format!("{}self-test-{SKILL}.html", server.base());
    browser.open(&page);
    let first = browser.tab();
    let second = browser.open_tab();
    let add =
        "rungbook.store.add('tested', { movement: 'squat', got: arguments[0], on: '2026-11-20' })";
    browser.switch(&second);
    browser.open(&page);
    browser.run(add, &json!(["5 reps"]));
    browser.switch(&first);
    browser.run(add, &json!(["6 reps"]));
    browser.switch(&second);
    browser.run(add, &json!(["7 reps"]));
    let all = "return rungbook.store.all().tested.map(t => t.got)";
    for tab in [&first, &second] {
        browser.switch(tab);
        browser.wait_until("rungbook.store.all().tested.length === 3");
        assert_eq!(
            browser.run(all, &json!([])),
            json!(["5 reps", "6 reps", "7 reps"])
        );
    }
    // Another school on the same host has its own keys.
    let keys = browser.run("return Object.keys(localStorage).every(k => k.startsWith(`rungbook:${document.documentElement.dataset.site}:`))", &json!([]));
    assert_eq!(keys, true);

    for (trouble, words) in [
        ("QuotaExceededError", "full"),
        ("SecurityError", "does not let"),
    ] {
        browser.refresh();
        browser.run(
            "Storage.prototype.setItem = () => { throw new DOMException('no', arguments[0]); }",
            &json!([trouble]),
        );
        browser.run(&add.replace("squat", "deep-squat-sit"), &json!(["40 s"]));
        let said = browser.run(
            "return document.getElementById('kept').textContent",
            &json!([]),
        );
        assert!(
            said.as_str().is_some_and(|t| t.contains(words)),
            "{trouble}: {said}"
        );
        assert_eq!(
            browser.run("return rungbook.store.all().tested.length", &json!([])),
            4,
            "kept for the visit"
        );
        browser.refresh();
        assert_eq!(
            browser.run("return rungbook.store.all().tested.length", &json!([])),
            3,
            "and gone after it"
        );
    }
}

/// "It hurt" pauses the movement and the part, and everything that stresses it, until it is lifted.
#[test]
fn it_hurt_pauses() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.width(390);
    let base = disk(&site());
    health(&browser, &base);
    browser.open(&format!("{base}self-test-{SKILL}.html"));
    press_button(&browser, "A few tests first");
    press_button(&browser, "None is true");
    let question = browser.run(QUESTION, &json!([]));
    let id = question["id"].as_str().expect("a movement");
    // Training is not a test, and is not said to be one.
    let hurt = match question["today"] == true {
        true => "it hurt in a test",
        false => "it hurt in training",
    };
    assert_eq!(
        browser.run("return rungbook.store.get('fit') !== null", &json!([])),
        true
    );
    press_button(&browser, "It hurt");
    browser.wait_until("document.querySelector('dialog[open]')");
    assert_eq!(
        browser.run("return document.activeElement.id", &json!([])),
        "ask-head",
        "the question is read first"
    );
    browser.run(
        "document.querySelector('dialog details').open = true",
        &json!([]),
    );
    click(&browser, "#part-knee");
    write_picture("flow-hurt.png", &browser.picture());
    press_button(&browser, "Rest ");
    browser.wait_until("globalThis.rungbook?.states?.mine()");
    let paused = browser.run(
        r"
        const { found } = rungbook.states.mine(), { model } = rungbook.states, knee = model.tables.parts.indexOf('knee');
        const stressed = model.tables.stresses.map((bits, m) => [bits, m]).filter(([bits]) => (bits >> knee) & 1).map(([, m]) => m);
        return [found.states[model.tables.ids.indexOf(arguments[0])] === 0, stressed.length, stressed.every(m => found.states[m] === 0)];",
        &json!([id]),
    );
    assert_eq!(paused[0], true);
    assert_eq!(paused[2], true);
    assert!(paused[1].as_u64().is_some_and(|n| n > 5));
    // Nothing more is tested on a day on which something began to hurt.
    let over = browser.run("return [document.getElementById('guided-head').textContent, document.querySelectorAll('#guided form').length]", &json!([]));
    assert_eq!(over, json!(["No more tests today", 0]));
    let open = browser.run(
        "const { found } = rungbook.states.mine(), day = rungbook.results.today(); return rungbook.states.model.order.filter(m => rungbook.placement.mayBeTested(rungbook.states.model, found, m, day)).length",
        &json!([]),
    );
    assert!(
        open.as_u64().is_some_and(|n| n > 0),
        "though foundations are shown"
    );
    let asks = browser.run(
        "return document.querySelectorAll('#sheet .enter button').length",
        &json!([]),
    );
    assert_eq!(asks, 0, "and no field invites to one");
    browser.open(&format!("{base}where-i-stand.html"));
    let said = browser.run(
        "return document.getElementById('rests-list').textContent",
        &json!([]),
    );
    assert!(
        said.as_str()
            .is_some_and(|t| t.contains("by you") && t.contains(hurt)),
        "{said}"
    );
    for _ in 0..2 {
        press_button(&browser, "Lift this pause");
        browser.wait_until("document.querySelector('dialog[open]')");
        click(&browser, "dialog button[value='0']");
        browser.wait_until("!document.querySelector('dialog[open]')");
    }
    browser
        .wait_until("!rungbook.states.mine() || rungbook.states.mine().found.causes.length === 0");
}

/// Script in every text of an imported file stays text, on both pages that open files.
#[test]
fn what_is_imported_stays_text() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    let folder = tempfile::tempdir().expect("a folder");
    for (i, payload) in [
        "<img src=x onerror=hacked=1>",
        "<script>hacked=1</script>",
        "javascript:hacked=1",
        "\"><svg onload=hacked=1>",
        "__proto__",
        "constructor",
        "${hacked=1}",
        "</title><body onload=hacked=1>",
    ]
    .into_iter()
    .enumerate()
    {
        let results = json!({ "results": 1, "name": payload, "have": [payload],
            "tested": [{ "movement": payload, "got": "5 reps", "on": "2026-11-20" }, { "movement": "squat", "got": "5 reps", "on": "2026-11-20" }],
            "trained": [{ "movement": payload, "did": [5], "on": "2026-11-20" }],
            "paused": [{ "movement": payload, "on": "2026-11-20", "by": payload, "because": payload }, { "part": "wrist", "on": "2026-11-20", "by": payload, "because": payload }] });
        let file = folder.path().join(format!("{i}.json"));
        fs::write(&file, results.to_string()).expect("a file");
        for page in ["where-i-stand.html", "my-people.html"] {
            browser.open(&format!("{base}{page}"));
            browser.upload(&browser.find("#open"), &file);
            let told = "(document.getElementById('take-says') || document.getElementById('notice')).textContent !== ''";
            let asked = "document.querySelector('dialog[open]')";
            browser.wait_until(&format!("{asked} || {told}"));
            if !browser
                .run(&format!("return {asked}"), &json!([]))
                .is_null()
            {
                // Another name than that of the file before.
                let names = format!("return {asked}.textContent.includes(arguments[0])");
                assert_eq!(browser.run(&names, &json!([payload])), true, "{payload}");
                press_button(&browser, "Put together");
                browser.wait_until(told);
            }
            let said = browser.run(
                "return [typeof hacked, document.querySelectorAll('main img:not([src^=figures]), main script, main svg:not(.bar):not(.history-drawing):not(.rungs)').length, document.body.textContent.includes(arguments[0])]",
                &json!([payload]),
            );
            assert_eq!(said[0], "undefined", "{page}: {payload}");
            assert_eq!(said[1], 0, "{page}: {payload}");
            assert_eq!(said[2], true, "{page}: {payload} is shown as text");
        }
    }
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Who does not exercise regularly yet is offered no inverted, loaded or lowering test, whatever is shown.
#[test]
fn light_effort_waits_with_guarded_tests() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    browser.open(&format!("{base}self-test.html"));
    // Everything is owned, so every needs tree is true.
    browser.run(
        r"
        const { store, states: { model }, targets, results } = rungbook, { tables } = model;
        tables.ids.forEach((id, m) => store.add('tested', { movement: id, got: targets.text(model.target(m)), on: results.dayText(results.today() - 2) }));
        store.set('about', { bodyweight: '70 kg' });
        store.set('fit', results.dayText(results.today()));",
        &json!([]),
    );
    let open = |id: &str| {
        let words = format!("{id} .enter > p:last-child button");
        browser.run(
            "document.querySelector(arguments[0]).click()",
            &json!([words]),
        );
        // What a form needs is loaded with the first.
        browser.wait_until(&format!("document.querySelector('{id} .advice')"));
        browser.run(
            "return document.querySelector(`${arguments[0]} .advice`).className.includes('do-not')",
            &json!([id]),
        )
    };
    let upside_down = browser.run(
        r"
        const { model, mine } = rungbook.states, { tables } = model, { needs } = mine().found;
        return '#test-' + tables.ids.find((_, m) => tables.cautions[m].includes(tables.classes.indexOf('inverted')) && needs[m] === rungbook.readiness.TRUE);",
        &json!([]),
    );
    let upside_down = upside_down
        .as_str()
        .expect("one whose foundations are shown");
    let [guarded, lowering, plain] = [upside_down, "#test-pull-up-lowering", "#test-squat"];
    for (outcome, barred) in [
        ("clear", [false, false, false]),
        ("light", [true, true, false]),
        ("ask", [true, true, true]),
    ] {
        browser.run(
            "rungbook.store.put('screened', { says: arguments[0], on: '2026-11-20' })",
            &json!([outcome]),
        );
        assert_eq!(
            [guarded, lowering, plain].map(&open),
            barred.map(Value::Bool),
            "{outcome}"
        );
    }
}

/// Where storage is forbidden a whole visit still works, from page to page; where it is not, an address brings nothing in.
#[test]
fn a_visit_works_without_storage() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    let carried = "#visit=%5B%5B%22screened%22%2C%22%7B%5C%22says%5C%22%3A%5C%22clear%5C%22%2C%5C%22on%5C%22%3A%5C%222026-11-20%5C%22%7D%22%5D%5D";
    browser.open(&format!("{base}self-test-{SKILL}.html{carried}"));
    let screening = "return rungbook.store.get('screened')";
    assert_eq!(browser.run(screening, &json!([])), Value::Null);
    browser.cdp(
        "Page.addScriptToEvaluateOnNewDocument",
        &json!({ "source": "Object.defineProperty(globalThis, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } })" }),
    );
    browser.open(&format!("{base}before-you-start.html"));
    browser.write(&browser.find("#born"), "1990");
    browser.run(
        "document.querySelectorAll('#questions input[type=radio]').forEach(i => { if (i.value === (i.name === 'regular' ? 'yes' : 'no')) i.click(); })",
        &json!([]),
    );
    press_button(&browser, "What follows");
    browser.wait_until("!document.getElementById('outcome').hidden");
    click(&browser, "#outcome a.act");
    browser.wait_until("document.querySelector('ul.choose')");
    click(&browser, &format!("ul.choose a[href^='self-test-{SKILL}']"));
    browser.wait_until("document.body.dataset.skill");
    press_button(&browser, "A few tests first");
    press_button(&browser, "None is true");
    answer_all(&browser, 2);
    let states = browser.run(STATES, &json!([]));
    assert_ne!(states, Value::Null);
    press_button(&browser, "Where I stand");
    browser.wait_until("document.getElementById('skills-mine')");
    assert_eq!(browser.run(STATES, &json!([])), states);
    assert_eq!(
        browser.run("return location.hash", &json!([])),
        "",
        "the address keeps nothing"
    );
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// A hold of each side has a timer a side, and each says which.
#[test]
fn timers_say_their_side() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    health(&browser, &base);
    browser.open(&format!("{base}self-test-{SKILL}.html"));
    browser.run(
        "rungbook.store.set('fit', rungbook.results.dayText(rungbook.results.today())); document.querySelector('#test-single-leg-balance .enter > p:last-child button').click()",
        &json!([]),
    );
    let said = browser.run(
        "return [...document.querySelectorAll('.timer button')].map(b => document.getElementById(b.getAttribute('aria-describedby')).textContent)",
        &json!([]),
    );
    assert_eq!(said, json!(["Seconds, left", "Seconds, right"]));
}

/// A number from training has the day that the person gives; what has none is kept aside, and nothing is dated by guess. What is
/// more likely a slip is asked about.
#[test]
fn a_number_from_training_has_its_day() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    health(&browser, &base);
    browser.open(&format!("{base}self-test-heavy-pull-up.html"));
    let open = |id: &str| {
        browser.run(
            "document.querySelectorAll('#sheet article').forEach(a => { a.hidden = false; }); document.querySelector(`#test-${arguments[0]} .enter > p:last-child button`).click()",
            &json!([id]),
        );
    };
    let enter = |amount: &str, when: &str, day: i32| {
        browser.run(
            r"
            const form = document.querySelector('.enter-form'), { store, results } = rungbook;
            form.querySelector(':scope > .fields input').value = arguments[0];
            const when = form.querySelector('.fields select:has(option[value=long])');
            when.value = arguments[1];
            when.dispatchEvent(new Event('change'));
            form.querySelector('input[type=date]').value = results.dayText(results.today() - arguments[2]);
            form.requestSubmit();
            const day = of => results.today() - results.readDay(of.on);
            return [form.querySelector('.fault').textContent, store.entries('tested').map(({ entry }) => [entry.got, day(entry)]), store.entries('undated').map(({ entry }) => entry.got)];",
            &json!([amount, when, day]),
        )
    };
    open("pull-up");
    assert_eq!(
        enter("7", "", 0),
        json!(["Say when it was. Nothing is dated by guess.", [], []])
    );
    assert_eq!(
        enter("7", "day", -1)[0],
        "Say when it was. Nothing is dated by guess."
    );
    // A span counts from its first day; a day that is known stands; no day is kept aside.
    let kept = |amount: &str, when: &str, day: i32| {
        let said = enter(amount, when, day);
        open("pull-up");
        json!([said[1], said[2]])
    };
    assert_eq!(kept("7", "6", 0), json!([[["7 reps", 6]], []]));
    assert_eq!(
        kept("8", "27", 0),
        json!([[["8 reps", 27], ["7 reps", 6]], []])
    );
    assert_eq!(
        kept("9", "day", 2)[0],
        json!([["8 reps", 27], ["7 reps", 6], ["9 reps", 2]])
    );
    assert_eq!(kept("10", "long", 0)[1], json!(["10 reps"]));
    let state = browser.run("return rungbook.store.all().tested.length", &json!([]));
    assert_eq!(state, 3, "what has no day is not in the copy");
    for (amount, says) in [("900", "Do you mean it?"), ("7.5", "only whole reps count")] {
        enter(amount, "6", 0);
        browser.wait_until("document.querySelector('dialog[open]')");
        let asked = browser.run(
            "return document.querySelector('dialog[open]').textContent",
            &json!([]),
        );
        assert!(asked.as_str().is_some_and(|t| t.contains(says)), "{asked}");
        // A far number may be meant; half a rep is none.
        assert_eq!(
            asked.as_str().map(|t| t.contains("It is right")),
            Some(amount == "900"),
            "{asked}"
        );
        press_button(&browser, "Change it");
        browser.wait_until("!document.querySelector('dialog[open]')");
        assert_eq!(
            browser.run("return rungbook.store.all().tested.length", &json!([])),
            3
        );
    }
    enter("900", "6", 0);
    browser.wait_until("document.querySelector('dialog[open]')");
    press_button(&browser, "It is right");
    browser.wait_until("rungbook.store.all().tested.length === 4");
    browser.open(&format!("{base}where-i-stand.html"));
    let aside = browser.run(
        "return document.getElementById('aside-list').textContent",
        &json!([]),
    );
    assert!(
        aside
            .as_str()
            .is_some_and(|t| t.contains("10 reps") && t.contains("nobody knows the day")),
        "{aside}"
    );
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Search forgives typing errors and keeps the marks; it works from disk.
#[test]
fn search_forgives() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.width(390);
    browser.open(&format!("{}search.html", disk(&site())));
    for (typed, first) in [
        ("handstnad", "freestanding-handstand"),
        ("pull-up", "pull-up"),
        ("Front levr", "front-lever"),
        ("singel leg squat", "single-leg-squat"),
        ("knee to wal", "knee-to-wall"),
        ("pullup", "pull-up"),
        ("pushups", "push-up"),
        ("pistol", "single-leg-squat"),
        ("pistol squats", "single-leg-squat"),
        ("chin-up", "pull-up"),
    ] {
        let field = browser.find("#find");
        browser.clear(&field);
        browser.write(&field, typed);
        let found = browser.run("return [...document.querySelectorAll('#found [data-movement]')].map(e => e.dataset.movement)", &json!([]));
        let found = super::texts(&found);
        assert!(
            found.iter().take(3).any(|id| id == first),
            "{typed}: {found:?}"
        );
        let bare = browser.run(
            "return rungbookSearch.filter(e => e[3]).map(e => e[1]).filter(id => { const n = document.querySelector(`#found [data-movement='${id}']`); return n && !n.querySelector('[data-caution]'); })",
            &json!([]),
        );
        assert_eq!(bare, json!([]));
    }
    // What hurts leads to the page for it, a part of the body to what loads it.
    let of = |typed: &str| {
        let ask = "const i = document.getElementById('find'); i.value = arguments[0]; i.dispatchEvent(new Event('input')); return [...document.querySelectorAll('#found li')].map(l => l.querySelector('a').getAttribute('href'))";
        super::texts(&browser.run(ask, &json!([typed])))
    };
    for typed in ["painful shoulder", "sore wrists", "knee hurts"] {
        assert_eq!(
            of(typed).first().map(String::as_str),
            Some("if-it-hurts.html"),
            "{typed}"
        );
    }
    assert!(of("elbow").contains(&"bar-dip.html".to_string()));
    fits(&browser);
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// The room of the health questions is no blank once they are answered, and nothing shifts whatever the answers are.
#[test]
fn the_health_questions_leave_no_blank() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    for width in [390, 1440] {
        browser.width(width);
        for outcome in ["", "clear", "light", "ask"] {
            browser.open(&format!("{base}before-you-start.html"));
            browser.run(
                "rungbook.store.put('screened', arguments[0] ? { says: arguments[0], on: '2026-11-20' } : null)",
                &json!([outcome]),
            );
            browser.open(&format!("{base}self-test.html"));
            let found = browser.run_async(
                r"
                const done = arguments[arguments.length - 1];
                let sum = 0;
                const moved = [];
                const told = e => e.sources.forEach(s => moved.push([String(s.node && s.node.outerHTML).slice(0, 60), Math.round(s.previousRect.top), Math.round(s.currentRect.top), Math.round(s.currentRect.height)]));
                new PerformanceObserver(list => list.getEntries().forEach(e => { if (!e.hadRecentInput) { sum += e.value; told(e); } })).observe({ type: 'layout-shift', buffered: true });
                const panel = document.getElementById('guided'), last = panel.lastElementChild;
                const shown = panel.checkVisibility({ visibilityProperty: true });
                const blank = panel.getBoundingClientRect().height - (last ? last.getBoundingClientRect().bottom - panel.getBoundingClientRect().top : 0);
                setTimeout(() => done({ sum, shown, blank, moved }), 150);",
                &json!([]),
            );
            println!("{width} {outcome:5} {found}");
            assert!(found["shown"] == true, "{width} {outcome}: {found}");
            assert!(
                found["blank"].as_f64().is_some_and(|b| b < 70.0),
                "{width} {outcome}: {found}"
            );
            assert!(
                found["sum"].as_f64().is_some_and(|s| s <= 0.02),
                "{width} {outcome}: {found}"
            );
        }
    }
}

/// A publish between a page and its scripts: the page says so, works nothing out, keeps every result, and is not kept so.
#[test]
fn a_page_says_when_its_tables_are_of_another_version() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    let content = folder.path().join("c");
    let dir = content.to_str().expect("a name");
    let run = |args: &[&str]| {
        let done = Command::new(env!("CARGO_BIN_EXE_rungbook"))
            .args(args)
            .output()
            .expect("it runs");
        let said = String::from_utf8_lossy(&done.stderr);
        assert!(done.status.success(), "{said}");
    };
    run(&["start", dir]);
    run(&["publish", "--from", dir]);
    let page = content.join("site/where-i-stand.html");
    let old = fs::read(&page).expect("the page");
    let file = content.join("content/movements/dead-hang.yaml");
    let text = fs::read_to_string(&file).expect("the movement");
    fs::write(&file, text.replace("standard: 30 s", "standard: 55 s")).expect("the movement");
    run(&["publish", "--from", dir]);
    let new = fs::read(&page).expect("the page");
    assert_ne!(old, new);
    fs::write(&page, &old).expect("the page");

    let server = Server::start(&content.join("site"));
    browser.open(&format!("{}before-you-start.html", server.base()));
    browser.run(
        "rungbook.store.add('tested', { movement: 'dead-hang', got: '40 s', on: '2026-11-20' })",
        &json!([]),
    );
    let kept = "return rungbook.store.all()";
    let before = browser.run(kept, &json!([]));
    browser.open(&format!("{}where-i-stand.html", server.base()));
    let seen = "const said = document.querySelector('#mixed'); return [said ? said.innerText : '', rungbook.states.model === null]";
    let said = browser.run(seen, &json!([]));
    assert!(
        said[0]
            .as_str()
            .is_some_and(|t| t.contains("Load the page again") && t.contains("results are safe"))
            && said[1] == true,
        "{said}"
    );
    assert_eq!(browser.run(kept, &json!([])), before);
    // No cache holds tables under the name of others.
    browser.wait_until("(() => { caches.keys().then(names => { globalThis.names = names; }); return globalThis.names; })()");
    let mixed = browser.run_async(
        r"
        const done = arguments[arguments.length - 1];
        (async () => {
            const out = [];
            for (const name of await caches.keys()) {
                const cache = await caches.open(name);
                for (const { url } of await cache.keys()) {
                    const named = /tables\.js\?v=([0-9a-f]+)$/.exec(url);
                    if (named && !(await (await cache.match(url)).text()).includes(named[1])) out.push(url);
                    if (url.endsWith('where-i-stand.html')) out.push(url);
                }
            }
            done(out);
        })();",
        &json!([]),
    );
    assert_eq!(mixed, json!([]));
    fs::write(&page, &new).expect("the page");
    press_button(&browser, "Load again");
    browser.wait_until("globalThis.rungbook && rungbook.states && rungbook.states.model !== null");
    assert_eq!(browser.run(seen, &json!([])), json!(["", false]));
    assert_eq!(browser.run(kept, &json!([])), before);
}

/// A new publish never mixes with the old one: a page and the tables it loads are of one version, whatever the network does.
#[test]
fn an_update_never_mixes_two_versions() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    let content = folder.path().join("c");
    let run = |args: &[&str]| {
        let done = Command::new(env!("CARGO_BIN_EXE_rungbook"))
            .args(args)
            .output()
            .expect("it runs");
        assert!(
            done.status.success(),
            "{}",
            String::from_utf8_lossy(&done.stderr)
        );
    };
    let dir = content.to_str().expect("a name");
    run(&["start", dir]);
    run(&["publish", "--from", dir]);
    let server = Server::start(&content.join("site"));
    // Tables are loaded by who has a number.
    browser.open(&format!("{}before-you-start.html", server.base()));
    browser.run(
        "rungbook.store.add('tested', { movement: 'dead-hang', got: '40 s', on: '2026-11-20' })",
        &json!([]),
    );
    let page = format!("{}slow-way-down.html", server.base());
    browser.open(&page);
    browser.wait_until("navigator.serviceWorker.controller");
    // The standard of the page's own row, and the one in the tables that it loaded.
    let both = r"
        const t = rungbook.states.model.tables, m = t.ids.indexOf('dead-hang');
        return [document.querySelector('tr[data-movement=dead-hang] .cell-standard').textContent, rungbook.states.target(m).textContent];";
    let old = browser.run(both, &json!([]));
    assert_eq!(old[0], old[1]);
    let file = content.join("content/movements/dead-hang.yaml");
    let text = fs::read_to_string(&file).expect("the movement");
    assert!(text.contains("standard: 30 s"), "{text}");
    fs::write(&file, text.replace("standard: 30 s", "standard: 55 s")).expect("the movement");
    run(&["publish", "--from", dir]);
    // The new worker keeps the chosen skill's pages, though only another page is opened after the publish.
    browser.open(&format!("{}cautions.html", server.base()));
    browser.wait_until(
        "(() => { caches.keys().then(names => { globalThis.names = names; }); caches.match('self-test-slow-way-down.html').then(page => page ? page.text() : '').then(text => { globalThis.kept = text; }); return (globalThis.names || []).length === 1 && (globalThis.kept || '').includes('55 seconds'); })()",
    );
    browser.open(&page);
    let new = browser.run(both, &json!([]));
    assert_eq!(new, json!(["55 seconds", "55 seconds"]));
    browser.wait_until("navigator.serviceWorker.controller");
    drop(server);
    browser.refresh();
    let kept = browser.run(both, &json!([]));
    assert_eq!(kept[0], kept[1], "of one version without network: {kept}");
}

/// Measures: `cargo test --release --test browser verdicts -- --ignored --nocapture`. Readiness of 10,000 movements in the page,
/// and the first paint of a self-test page beside that of an empty page.
#[test]
#[ignore = "measures; needs the release build to publish 10,000 movements"]
fn verdicts_of_ten_thousand_movements() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    super::generate::write(folder.path(), super::generate::Shape::tangled(10_000));
    let done = Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(["publish", "--from"])
        .arg(folder.path())
        .output()
        .expect("it runs");
    assert!(done.status.success());
    let base = disk(&folder.path().join("site"));
    browser.open(&format!("{base}my-people.html"));
    let times = browser.run(
        r"
        const { readiness, states } = rungbook, { model } = states, { tables } = model;
        const tested = tables.ids.map((_, m) => m).filter(m => m % 10 === 0).map(m => ({ movement: m, sides: [model.target(m)], on: 100, reserve: 0, bodyWeight: null, entry: 0 }));
        const person = { bodyWeight: null, tested, pauses: [] };
        const text = JSON.stringify(tables), out = { prepare: [], assess: [], parse: [] };
        for (let i = 0; i < 15; i += 1) {
            let start = performance.now();
            const again = JSON.parse(text);
            out.parse.push(performance.now() - start);
            start = performance.now();
            const fresh = readiness.prepare(again);
            out.prepare.push(performance.now() - start);
            start = performance.now();
            readiness.assess(fresh, person, 101);
            out.assess.push(performance.now() - start);
        }
        return { ...out, count: model.count, bytes: text.length };",
        &json!([]),
    );
    let median = |key: &str| {
        let mut all: Vec<f64> = times[key]
            .as_array()
            .expect("times")
            .iter()
            .filter_map(Value::as_f64)
            .collect();
        all.sort_by(f64::total_cmp);
        all[all.len() / 2]
    };
    println!(
        "{} movements, {} bytes of tables: parse {:.1} ms, prepare {:.1} ms, assess {:.1} ms",
        times["count"],
        times["bytes"],
        median("parse"),
        median("prepare"),
        median("assess")
    );
    let empty = folder.path().join("empty.html");
    fs::write(&empty, "<!doctype html><title>Empty</title><p>Nothing").expect("a page");
    let paint = |url: &str| {
        browser.width(390);
        let mut all: Vec<f64> = (0..9)
            .filter_map(|_| {
                browser.open(url);
                browser.wait_until("performance.getEntriesByName('first-contentful-paint').length");
                browser.run("return performance.getEntriesByName('first-contentful-paint')[0].startTime", &json!([])).as_f64()
            })
            .collect();
        all.sort_by(f64::total_cmp);
        all[all.len() / 2]
    };
    println!(
        "first paint: empty page {:.0} ms, self-test of the shipped curriculum {:.0} ms, of the large one {:.0} ms",
        paint(&format!("{}empty.html", disk(folder.path()))),
        paint(&format!("{}self-test-{SKILL}.html", disk(&site()))),
        paint(&format!("{base}self-test-skill-000.html")),
    );
}
