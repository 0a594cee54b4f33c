//! Who was told to ask a clinician first sees no test, no training and no invitation to either, on any page kind. What the answers
//! restrict is kept by class, said as it is, lifted by class and day, and acted on at the terminal; the answers are kept nowhere.

use super::reach::KINDS;
use super::webdriver::Browser;
use super::{disk, root, site, texts, write_picture};
use serde_json::{Value, json};
use std::fs;
use std::process::Command;

/// Everything is owned or open: whatever could invite, would.
const ABLE: &str = r"
    const { store, results, targets, states: { model } } = rungbook, { tables } = model, on = results.dayText(results.today() - 2);
    store.erase();
    tables.ids.forEach((id, m) => { if (tables.stage[m] < 3) store.add('tested', { movement: id, got: targets.text(model.target(m)), on }); });
    store.put('bodyweight', '70 kg');
    store.put('goal', tables.skills[0].id);
    store.set('fit', results.dayText(results.today()));";

/// What can be seen on the page and invites: sentences, marks of states, links to tests outside the site's own navigation.
const INVITES: &str = r"
    const seen = e => e.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && e.getClientRects().length > 0;
    const words = /you may start|start training|test it now|none is true|open to you|would decide|to the questions|test yourself|enter a number|next:|train .{3,40} first|your answers raise nothing|nothing in your answers/i;
    const main = document.querySelector('main');
    // What the site is, in its first line, and what its words mean, invites nobody.
    const defines = e => e.closest('.home .lead, body.words');
    const out = [];
    const walker = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        if (seen(node.parentElement) && !defines(node.parentElement) && words.test(node.data)) out.push(node.data.trim().slice(0, 80));
    }
    for (const mark of main.querySelectorAll('[data-state]')) if (['open', 'test first'].includes(mark.dataset.state)) out.push(`a mark: ${mark.textContent}`);
    for (const link of main.querySelectorAll('a[href*=self-test], a[href*=today]')) if (seen(link)) out.push(`a link: ${link.textContent}`);
    for (const of of main.querySelectorAll('.enter-form, #card, #plan, #sets article')) if (seen(of)) out.push(`a form: ${of.id || of.className}`);
    return out;";

fn start(says: &str) -> Option<(Browser, String)> {
    let browser = Browser::start()?;
    browser.width(390);
    let base = disk(&site());
    browser.open(&format!("{base}self-test.html"));
    browser.run(ABLE, &json!([]));
    browser.run(
        "rungbook.store.put('screened', { says: arguments[0], on: rungbook.results.dayText(rungbook.results.today()) })",
        &json!([says]),
    );
    Some((browser, base))
}

#[test]
fn who_is_to_ask_first_is_invited_to_nothing() {
    let Some((browser, base)) = start("ask") else {
        return;
    };
    let mut faults: Vec<String> = Vec::new();
    for page in KINDS {
        browser.open(&format!("{base}{page}"));
        let said = browser.run("return document.documentElement.dataset.health", &json!([]));
        assert_eq!(said, "ask", "{page}");
        let found = texts(&browser.run(INVITES, &json!([])));
        faults.extend(found.into_iter().map(|f| format!("{page}: {f}")));
        let name = format!("ask-{}", page.replace(".html", ".png"));
        if [
            "before-you-start.html",
            "where-i-stand.html",
            "if-it-hurts.html",
            "self-test.html",
            "freestanding-handstand.html",
        ]
        .contains(&page)
        {
            write_picture(&name, &browser.whole_picture(390));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    // The same walk finds what invites where nothing is barred: it can see.
    browser.open(&format!("{base}where-i-stand.html"));
    browser.run("rungbook.store.put('screened', { says: 'clear', on: rungbook.results.dayText(rungbook.results.today()) })", &json!([]));
    for page in ["where-i-stand.html", "strict-ring-muscle-up.html"] {
        browser.open(&format!("{base}{page}"));
        let found = texts(&browser.run(INVITES, &json!([])));
        assert!(!found.is_empty(), "{page} invites who may");
    }
}

/// Who is not of age, or from 65 on, has no plan on any page before the health questions are answered, and is led to them; others
/// hear what they heard before.
#[test]
fn health_answers_come_before_a_plan_under_18_and_from_65() {
    let Some((browser, base)) = start("clear") else {
        return;
    };
    let looked = |page: &str| {
        browser.open(&format!("{base}{page}.html"));
        browser.run(
            r"const seen = e => e !== null && e.checkVisibility({ visibilityProperty: true }), of = document.querySelector('.answers-first');
            return { first: seen(of) ? of.innerText : '', to: of.querySelector('a').getAttribute('href'),
                plans: [...document.querySelectorAll('#next, #card, #plan, #aim, #first')].filter(seen).map(e => e.id) };",
            &json!([]),
        )
    };
    let is_now = |age: i32, says: &str| {
        // Home has no store.
        browser.open(&format!("{base}today.html"));
        browser.run(
            "const { store, results } = rungbook; for (const key of ['parent', 'coach']) store.note(key, results.dayText(results.today())); store.put('born', new Date().getFullYear() - arguments[0] - 1); store.put('screened', arguments[1] ? { says: arguments[1], on: results.dayText(results.today()) } : null)",
            &json!([age, says]),
        );
    };
    // The session of who has answered; home keeps what is next.
    for (age, says, parent) in [
        (14, "clear", None),
        (14, "", Some(true)),
        (40, "", None),
        (65, "", Some(false)),
        (65, "clear", None),
    ] {
        is_now(age, says);
        for (page, plan) in [
            ("today", "card"),
            ("where-i-stand", "aim"),
            ("index", "next"),
        ] {
            let of = looked(page);
            let (first, at) = (
                of["first"].as_str().expect("text"),
                format!("{age} {says} {page}: {of}"),
            );
            assert_eq!(
                first.contains(
                    "No health answers are on file. Until they are in, there is no plan."
                ),
                parent.is_some(),
                "{at}"
            );
            assert_eq!(
                first.contains("parent or guardian"),
                parent == Some(true),
                "{at}"
            );
            assert_eq!(of["to"], "before-you-start.html#questions", "{at}");
            let plans = texts(&of["plans"]);
            match (parent, says) {
                (Some(_), _) => assert!(plans.is_empty(), "{at}"),
                (None, "clear") => assert!(plans.iter().any(|id| id == plan), "{at}"),
                (None, _) => assert!(page != "today" || plans == ["first"], "{at}"),
            }
            if parent.is_some() {
                write_picture(
                    &format!("unanswered-{age}-{page}.png"),
                    &browser.whole_picture(390),
                );
            }
        }
    }
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Light: what is guarded or lowering rests, and the page says by what.
#[test]
fn light_rests_what_is_guarded() {
    let Some((browser, base)) = start("light") else {
        return;
    };
    for page in [
        "where-i-stand",
        "before-you-start",
        "freestanding-handstand",
    ] {
        browser.open(&format!("{base}{page}.html"));
        write_picture(&format!("light-{page}.png"), &browser.whole_picture(390));
    }
    let said = browser.run(
        "const of = document.getElementById('rests-here'); return of.hidden ? '' : of.textContent",
        &json!([]),
    );
    assert!(
        said.as_str()
            .is_some_and(|t| t.contains("light training only")),
        "{said}"
    );
    browser.open(&format!("{base}where-i-stand.html"));
    let wrong = browser.run(
        r"
        const { states: { model, mine }, readiness } = rungbook, { found } = mine();
        return model.tables.ids.filter((_, m) => (model.is(m, readiness.GUARDED) || model.is(m, readiness.LOWERING)) && found.states[m] !== readiness.PAUSED);",
        &json!([]),
    );
    assert_eq!(wrong, json!([]));
}

/// Who answered the health questions and kept nothing else is told on a movement's page what is left alone, and no number is asked
/// for of it; a part that hurts is said on every page that bears on it, and no question of the self-test bears on it.
#[test]
fn what_is_left_alone_or_hurts_takes_no_number() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.width(390);
    let base = disk(&site());
    browser.open(&format!("{base}before-you-start.html"));
    browser.write(&browser.find("#born"), "1985");
    browser.run(
        r"document.querySelectorAll('#questions input[type=radio]').forEach(i => { if (i.value === (['regular', 'back'].includes(i.name) ? 'yes' : 'no')) i.click(); });
        document.getElementById('questions').requestSubmit();",
        &json!([]),
    );
    let here = r"
        const rests = document.getElementById('rests-here'), number = document.getElementById('number-here');
        return [rests.hidden ? '' : rests.textContent, !number.hidden];";
    browser.open(&format!("{base}arch-hold.html"));
    browser.wait_until("!document.getElementById('rests-here').hidden");
    let said = browser.run(here, &json!([]));
    assert!(
        said[0]
            .as_str()
            .is_some_and(|t| t.contains("Leave this alone")),
        "{said}"
    );
    assert_eq!(said[1], json!(false), "{said}");
    browser.run(
        r"const { store, results } = rungbook;
        store.add('pain', { part: 'shoulder', score: 4, on: results.dayText(results.today() - 1) });",
        &json!([]),
    );
    browser.open(&format!("{base}dead-hang.html"));
    browser.wait_until("!document.getElementById('rests-here').hidden");
    let said = browser.run(here, &json!([]));
    assert!(
        said[0]
            .as_str()
            .is_some_and(|t| t.contains("shoulder, 4 of 10")),
        "{said}"
    );
    assert_eq!(said[1], json!(false), "{said}");
}

/// Answers become classes, never more; a clearance lifts one class from its day to its last; the terminal acts on the copy.
#[test]
fn answers_become_classes_and_a_clearance_is_by_class() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.width(390);
    let base = disk(&site());
    let page = format!("{base}before-you-start.html");
    browser.open(&page);
    browser.write(&browser.find("#born"), "1990");
    browser.run(
        r"document.querySelectorAll('#questions input[type=radio]').forEach(i => { if (i.value === (['regular', 'pregnancy'].includes(i.name) ? 'yes' : 'no')) i.click(); });
        document.getElementById('questions').requestSubmit();",
        &json!([]),
    );
    let export = "return rungbook.store.all()";
    let kept = browser.run(export, &json!([]));
    let today = browser.run(
        "return rungbook.results.dayText(rungbook.results.today())",
        &json!([]),
    );
    // What a clinician allows lasts six weeks at most; which answer says so is not kept.
    assert_eq!(
        kept["screened"],
        json!({ "says": "ask", "on": today, "lasts": 42 })
    );
    let classes: Vec<&str> = kept["restrict"]
        .as_array()
        .expect("a list")
        .iter()
        .filter_map(|r| r["class"].as_str())
        .collect();
    assert_eq!(
        classes,
        [
            "inverted",
            "part-inverted",
            "fall-height",
            "breath-holding",
            "neck-load",
            "supine",
            "prone",
            "rolling",
            "loaded"
        ]
    );
    // The answers themselves are nowhere: not in storage, not in the copy; on the form until it is left.
    let found = browser.run(
        r"const all = JSON.stringify({ ...localStorage, ...sessionStorage });
        const shown = document.querySelectorAll('#questions input:checked').length;
        dispatchEvent(new PageTransitionEvent('pagehide'));
        return [/pregnan|regular|dizz/i.test(all), shown > 10, document.querySelectorAll('#questions input:checked').length];",
        &json!([]),
    );
    assert_eq!(found, json!([false, true, 0]));
    write_picture("ask-answers.png", &browser.whole_picture(390));

    // A clearance: one class, by whom, until when; without each of them it is not kept.
    let clear = |effort: &str, class: &str, by: &str, on: i32, until: i32| {
        browser.run(
            r"
            const [effort, cls, by, on, until] = arguments, { results, store } = rungbook, day = n => results.dayText(results.today() + n);
            const radio = document.querySelector(`#clear-effort input[value='${effort}']`), box = document.getElementById(`clear-${cls}`);
            document.getElementById('clearance').reset();
            if (radio) radio.checked = true;
            if (box) box.checked = true;
            document.getElementById('clear-by').value = by;
            document.getElementById('clear-on').value = day(on);
            document.getElementById('clear-until').value = day(until);
            document.getElementById('clearance').requestSubmit();
            return [document.getElementById('clear-fault').textContent, store.entries('cleared').length, store.facts().screened.says];",
            &json!([effort, class, by, on, until]),
        )
    };
    for (effort, class, by, on, until) in [
        ("", "", "Dr Ode", 0, 90),
        ("", "inverted", "", 0, 90),
        ("", "inverted", "Dr Ode", 1, 90),
        ("", "inverted", "Dr Ode", 0, 43),
        ("", "inverted", "Dr Ode", -40, -1),
    ] {
        let said = clear(effort, class, by, on, until);
        assert_ne!(said[0], "", "{effort} {class} {by} {on} {until}");
        assert_eq!(said[1], 0);
    }
    assert_eq!(
        clear("", "inverted", "Dr Ode", -3, 39),
        json!(["", 1, "ask"]),
        "one class, and no more"
    );
    assert_eq!(clear("light", "", "Dr Ode", 0, 30), json!(["", 1, "light"]));
    let said = browser.run(
        "return document.getElementById('outcome').textContent",
        &json!([]),
    );
    let said = said.as_str().expect("text");
    assert!(
        said.contains("Dr Ode") && said.contains("left alone until a clinician allows it"),
        "{said}"
    );
    assert!(!said.contains("Nothing in your answers"), "{said}");
    write_picture("ask-cleared.png", &browser.whole_picture(390));

    // The same day at the terminal, and on the day after the last.
    let kept = browser.run(export, &json!([]));
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("copy.json");
    let mut copy = kept.clone();
    copy["tested"] = json!([{ "movement": "dead-hang", "got": "60 s", "on": today }]);
    fs::write(&file, copy.to_string()).expect("a copy");
    let states = |day: &str| -> Value {
        let out = Command::new(env!("CARGO_BIN_EXE_rungbook"))
            .args(["assess", "--as", "json", "--today", day, "--from"])
            .arg(root())
            .arg(&file)
            .output()
            .expect("the program");
        let answer: Value = serde_json::from_slice(&out.stdout).expect("JSON");
        answer["people"][0]["movements"].clone()
    };
    let day = |n: i32| {
        let text = browser.run(
            "return rungbook.results.dayText(rungbook.results.today() + arguments[0])",
            &json!([n]),
        );
        text.as_str().expect("a day").to_string()
    };
    let kinds = |states: &Value, id: &str| -> Vec<String> {
        let by = states[id]["paused_by"]
            .as_array()
            .cloned()
            .unwrap_or_default();
        by.iter()
            .map(|c| {
                format!(
                    "{} {}",
                    c["kind"].as_str().unwrap_or(""),
                    c["class"].as_str().unwrap_or("")
                )
            })
            .collect()
    };
    let now = states(&day(0));
    let upside_down = kinds(&now, "freestanding-handstand");
    assert!(
        !upside_down.contains(&"restrict inverted".to_string()),
        "the class is allowed: {upside_down:?}"
    );
    assert!(
        upside_down.contains(&"light ".to_string()),
        "{upside_down:?}"
    );
    let later = kinds(&states(&day(91)), "freestanding-handstand");
    assert!(
        later.contains(&"restrict inverted".to_string()),
        "and only until its last day: {later:?}"
    );
    // Whoever reads the copy sees what the answers said.
    assert_eq!(kept["screened"]["was"], "ask");
    assert_eq!(kept["screened"]["by"], "Dr Ode");
    // On the page the effort that was allowed runs out too.
    let says = browser.run(
        r"const { screened } = rungbook.store.facts(), { readDay, today } = rungbook.results;
        const of = { says: screened.says, on: readDay(screened.on), until: readDay(screened.until) };
        return [30, 31].map(n => rungbook.health.saysOn(of, today() + n));",
        &json!([]),
    );
    assert_eq!(says, json!(["light", "ask"]));
}

/// What is missing is said under its field, what was answered is not asked anew, and age has its say before all else.
#[test]
fn the_health_form_says_its_word_in_its_place() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.width(390);
    let base = disk(&site());
    browser.open(&format!("{base}before-you-start.html"));
    let answer = |born: &str, yes: &str| {
        browser.run(
            r"const [born, yes] = arguments, form = document.getElementById('questions'), field = document.getElementById('born');
            field.value = born;
            field.dispatchEvent(new Event('input'));
            for (const set of form.querySelectorAll('fieldset:not([hidden])')) {
                const name = set.querySelector('input').name;
                set.querySelector(`input[value=${yes.split(' ').includes(name) ? 'yes' : 'no'}]`).checked = true;
            }
            form.requestSubmit();
            const { store } = rungbook, fault = document.getElementById('born-fault');
            return { born: field.value, says: (store.get('screened') || {}).says || null, health: document.documentElement.dataset.health, at: document.activeElement.id,
                fault: [fault.textContent !== '', fault.getBoundingClientRect().top - field.getBoundingClientRect().bottom < 40],
                left: store.entries('restrict').map(({ entry }) => entry.class || entry.part), said: document.getElementById('outcome').textContent };",
            &json!([born, yes]),
        )
    };
    let year = |age: i32| {
        let text = browser.run(
            "return String(new Date().getFullYear() - 1 - arguments[0])",
            &json!([age]),
        );
        text.as_str().expect("a year").to_string()
    };
    let said = |of: &Value| of["said"].as_str().unwrap_or("").to_string();
    for born in ["", "34", "1034"] {
        let of = answer(born, "regular");
        assert_eq!(
            (&of["says"], &of["at"], &of["fault"]),
            (&Value::Null, &json!("born"), &json!([true, true])),
            "{born}"
        );
    }
    let of = answer(&year(30), "regular");
    assert_eq!((&of["says"], &of["left"]), (&json!("clear"), &json!([])));
    assert!(said(&of).contains("Nothing in your answers"));
    // What follows, pressed once more.
    let again = browser.run(
        r"document.getElementById('questions').requestSubmit();
        return [document.activeElement.id, document.getElementById('born-fault').textContent, document.getElementById('born').value, rungbook.store.get('screened').says];",
        &json!([]),
    );
    assert_eq!(again, json!(["outcome-head", "", year(30), "clear"]));
    // An old dislocation bars what it bears on and no more, and is not called nothing.
    let of = answer(&year(30), "regular dislocation");
    assert_eq!(of["says"], "clear");
    assert!(
        of["left"]
            .as_array()
            .is_some_and(|l| l.contains(&json!("straight-arm")))
    );
    assert!(!said(&of).contains("Nothing in your answers"), "{of}");
    // A parent's consent first; below the age of a page nothing.
    let of = answer(&year(15), "regular");
    assert_eq!(
        (&of["says"], &of["health"]),
        (&json!("clear"), &json!("clear"))
    );
    assert!(!said(&of).contains("Nothing in your answers"), "{of}");
    let consent = said(&of).find("consent");
    assert!(
        consent.is_some() && consent < said(&of).find("fresh head"),
        "{of}"
    );
    let of = answer(&year(11), "regular");
    assert_eq!(of["health"], "ask");
    assert!(said(&of).contains("coach in person"), "{of}");
    assert_eq!(
        browser.run(
            "return document.querySelectorAll('#outcome a.act').length",
            &json!([])
        ),
        0
    );
    // Under eighteen and from sixty-five on more is asked.
    let asked = |age: i32| {
        answer(&year(age), "regular");
        browser.run("return [...document.querySelectorAll('#questions fieldset:not([hidden]) input[value=yes]')].map(i => i.name).filter(n => /growth|falls/.test(n))", &json!([]))
    };
    assert_eq!(asked(16), json!(["growth", "growth_back", "growth_legs"]));
    assert_eq!(asked(40), json!([]));
    assert_eq!(asked(64), json!(["falls"]));
    assert_eq!(asked(70), json!(["falls"]));
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// What is kept for a part, from If it hurts and from a pause, is acted on and said where it is lifted.
#[test]
fn a_pain_pauses_its_part_and_nothing_else() {
    let Some((browser, base)) = start("clear") else {
        return;
    };
    browser.open(&format!("{base}if-it-hurts.html"));
    let keep = |part: &str, score: &str| {
        browser.run(
            r"document.querySelector(`#pain-part [value='${arguments[0]}']`).checked = true;
            document.querySelector(`#pain-score [value='${arguments[1]}']`).checked = true;
            document.getElementById('pain-form').requestSubmit();
            return document.getElementById('pain-notice').textContent;",
            &json!([part, score]),
        )
    };
    let said = keep("wrist", "7");
    assert!(
        said.as_str()
            .is_some_and(|t| t.contains("Rests from now: wrist")),
        "{said}"
    );
    write_picture("pain-if-it-hurts.png", &browser.whole_picture(390));
    browser.open(&format!("{base}where-i-stand.html"));
    write_picture("pain-where-i-stand.png", &browser.whole_picture(390));
    let wrong = |browser: &Browser| {
        browser.run(
            r"
            const { states: { model, mine }, readiness } = rungbook, { tables } = model, { found } = mine(), wrist = tables.parts.indexOf('wrist'), exit = tables.patterns.indexOf('exit');
            const has = m => ((tables.stresses[m] >> wrist) & 1) === 1;
            // An exit that rests is missing to what cannot be left without it.
            const gone = new Set(tables.ids.map((_, m) => m).filter(m => has(m) && tables.pattern[m] === exit));
            const without = m => gone.size > 0 && found.pausedBy(m).length > 0;
            return [tables.ids.filter((_, m) => has(m) && found.states[m] !== readiness.PAUSED), tables.ids.filter((_, m) => !has(m) && found.states[m] === readiness.PAUSED && !without(m)),
                found.states[tables.ids.indexOf('bar-dip')] === readiness.PAUSED, tables.ids.filter((_, m) => found.states[m] === readiness.PAUSED).length];",
            &json!([]),
        )
    };
    let found = wrong(&browser);
    assert_eq!(
        json!([found[0], found[1], found[2]]),
        json!([[], [], true]),
        "a wrist stops what stresses the wrist, a bar dip too"
    );
    assert!(found[3].as_u64().is_some_and(|n| n > 2));
    let rests = browser.run(
        "return document.getElementById('rests-list').textContent",
        &json!([]),
    );
    assert!(
        rests
            .as_str()
            .is_some_and(|t| t.contains("wrist") && t.contains("an entry of 5 or less")),
        "{rests}"
    );
    browser.open(&format!("{base}if-it-hurts.html"));
    let said = keep("wrist", "2");
    assert!(
        said.as_str()
            .is_some_and(|t| t.contains("of one day the worst counts")
                && t.contains("Rests from now: wrist")),
        "{said}"
    );
    browser.open(&format!("{base}where-i-stand.html"));
    assert_eq!(wrong(&browser)[3], found[3], "the same day lifts nothing");
    browser.run(
        r"
        const { store, results } = rungbook, [{ key, entry }] = store.entries('pain').filter(({ entry }) => entry.score === 7);
        store.remove(key);
        store.add('pain', { ...entry, on: results.dayText(results.today() - 1) });",
        &json!([]),
    );
    assert_eq!(
        wrong(&browser)[3],
        0,
        "until an entry of 5 or less another day"
    );
    // Under 18 a wrist rests at any pain.
    browser.run(
        "rungbook.store.put('born', new Date().getFullYear() - 15)",
        &json!([]),
    );
    assert!(wrong(&browser)[3].as_u64().is_some_and(|n| n > 2));
    assert_eq!(browser.complaints(), Vec::<String>::new());
}
