//! What a client is asked, and what follows from the answer: how much it hurt, how it is now, when a number was, and what is known.

use super::flow::{click, press_button};
use super::phone::{run, somebody};
use super::serve::Server;
use super::{site, texts};
use serde_json::{Value, json};
use std::fs;

/// Opens "It hurt" of the first card that bears on the shoulder and says a part and a number.
fn hurts(browser: &super::webdriver::Browser, score: u32) {
    let card = r"
        const { stresses, ids, parts } = rungbook.states.model.tables, at = parts.indexOf('shoulder');
        return [...document.querySelectorAll('#sets article:not(.done)')].find(e => (stresses[ids.indexOf(e.dataset.movement)] >> at) & 1)";
    browser.wait_until(&format!("rungbook.states.model && (() => {{ {card} }})()"));
    run(
        browser,
        &format!("(() => {{ {card} }})().querySelector('.hurt').click()"),
    );
    browser.wait_until("document.querySelector('dialog[open]')");
    run(
        browser,
        "document.getElementById('part-shoulder').click(); document.querySelector(`#hurt-score input[value=\"${arguments[0]}\"]`).click()"
            .replace("${arguments[0]}", &score.to_string())
            .as_str(),
    );
}

/// The button says what follows from the number, and does it; it is in sight, with the emergency line, before anything is scrolled.
#[test]
fn what_hurt_follows_its_number() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let today = format!("{base}today.html");
    let state = r"
        const { store, results } = rungbook, on = results.dayText(results.today());
        return [store.entries('paused').map(({ entry: of }) => [Boolean(of.movement), of.until === on]), store.entries('pain').map(({ entry: of }) => [of.part, of.score])];";
    let seen = r"
        const dialog = document.querySelector('dialog[open]'), out = [dialog.scrollHeight <= 2 * innerHeight];
        dialog.scrollTop = 0;
        for (const e of [dialog.querySelector('.do-not'), dialog.querySelector('button[value=act]')]) {
            const { left, top, width, height } = e.getBoundingClientRect(), hit = document.elementFromPoint(left + width / 2, top + height / 2);
            out.push(top >= 0 && top + height <= innerHeight && (hit === e || e.contains(hit)));
        }
        return out;";
    // Up to 2 go on, 3 to 5 over for today, above 5 paused (Silbernagel et al. 2007: one tendon; the rest common practice).
    for (score, says, follows) in [
        (2, "Enter it, go on", json!([[], [["shoulder", 2]]])),
        (4, "Go lighter", json!([[[true, true]], [["shoulder", 4]]])),
        (
            7,
            "Rest the shoulder",
            json!([[[true, false]], [["shoulder", 7]]]),
        ),
    ] {
        browser.open(&today);
        run(
            &browser,
            "const { store } = rungbook; for (const kind of ['paused', 'pain']) store.entries(kind).forEach(({ key }) => store.remove(key))",
        );
        browser.wait_until("document.querySelector('#sets article .hurt')");
        hurts(&browser, score);
        let button = "return document.querySelector('dialog button[value=act]').textContent";
        assert_eq!(run(&browser, button), says);
        assert_eq!(run(&browser, seen), json!([true, true, true]), "{score}");
        // Any sign rests it, whatever the number.
        click(&browser, "#sign-numb");
        assert_eq!(run(&browser, button), "Rest the shoulder");
        click(&browser, "#sign-numb");
        press_button(&browser, says);
        browser.wait_until("!document.querySelector('dialog[open]')");
        assert_eq!(run(&browser, state), follows, "{score}");
        browser.wait_until("document.getElementById('said').textContent");
        assert_eq!(run(&browser, "return document.activeElement.id"), "said");
    }
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// A pause is lifted by how it is now, in one touch of a number; what still hurts rests on, and the number is kept.
#[test]
fn a_pause_is_lifted_by_a_number() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let left = "return [rungbook.store.entries('paused').length, rungbook.store.entries('pain').map(({ entry: of }) => [of.part, of.score])]";
    let seed = r"const { store, results } = rungbook;
        for (const kind of ['paused', 'pain']) store.entries(kind).forEach(({ key }) => store.remove(key));
        store.add('paused', { part: 'wrist', on: results.dayText(results.today() - 3), by: 'client', because: 'it hurts' })";
    for page in ["today", "where-i-stand", "if-it-hurts"] {
        run(&browser, seed);
        browser.open(&format!("{base}{page}.html"));
        for (touched, after) in [
            ("", json!([1, []])),
            ("4", json!([1, [["wrist", 4]]])),
            ("1", json!([1, [["wrist", 4], ["wrist", 1]]])),
            ("1", json!([0, [["wrist", 1]]])),
        ] {
            // Of one day the worst counts; without the worse one the pause ends.
            if after[0] == 0 {
                run(&browser, seed);
                browser.open(&format!("{base}{page}.html"));
            }
            browser.wait_until("!document.querySelector('main[aria-busy]')");
            press_button(&browser, "Lift this pause");
            browser.wait_until("document.querySelector('dialog[open]')");
            click(&browser, &format!("dialog button[value='{touched}']"));
            browser.wait_until("!document.querySelector('dialog[open]')");
            assert_eq!(run(&browser, left), after, "{page}: {touched}");
        }
    }
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// On a day on which something began to hurt no page asks for a number; the day after, of what bears on it.
#[test]
fn a_hurt_day_invites_to_no_test() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let asks = |page: &str| {
        browser.open(&format!("{base}{page}.html"));
        let count = run(
            &browser,
            "document.querySelectorAll('#sheet > details').forEach(d => { d.open = true; }); return [...document.querySelectorAll('#sheet .enter > p:not(.was) button, #number-form button, .number-line input, #way .number-line')].filter(e => e.checkVisibility({ visibilityProperty: true })).length",
        );
        count.as_u64().expect("a number")
    };
    let pages = ["self-test-heavy-dip", "where-i-stand", "pull-up", "squat"];
    for page in pages {
        assert!(asks(page) > 0, "{page} asks while nothing hurts");
    }
    run(
        &browser,
        "rungbook.store.add('pain', { part: 'shoulder', score: 4, on: rungbook.results.dayText(rungbook.results.today()) })",
    );
    for page in pages {
        assert_eq!(asks(page), 0, "{page}");
    }
    run(
        &browser,
        r"const { store, results } = rungbook;
        store.entries('pain').forEach(({ key }) => store.remove(key));
        store.add('pain', { part: 'shoulder', score: 4, on: results.dayText(results.today() - 1) })",
    );
    assert_eq!(asks("pull-up"), 0);
    assert!(asks("squat") > 0, "what does not bear on it is asked for");
}

/// What most people know is asked for first: reps before seconds, of each pattern of strength of the goal what most others ask for.
#[test]
fn what_most_know_is_asked_first() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let expected = json!({
        "strict-ring-muscle-up": ["pull-up", "ring-row", "push-up", "hanging-knee-raise", "bar-dip", "bar-support-hold", "plank", "dead-hang"],
        "one-leg-to-the-floor": ["hip-hinge", "squat"],
    });
    run(
        &browser,
        "rungbook.store.entries('tested').forEach(({ key }) => rungbook.store.remove(key))",
    );
    for (skill, first) in expected.as_object().expect("skills") {
        browser.open(&format!("{base}self-test-{skill}.html"));
        browser.wait_until("document.querySelector('.known-list li')");
        let asked = texts(&run(
            &browser,
            "return [...document.querySelectorAll('.known-list li')].map(e => e.dataset.movement)",
        ));
        assert!(asked.len() <= 8, "{asked:?}");
        assert_eq!(&json!(asked[..texts(first).len()]), first, "{skill}");
    }
}

/// A span is kept as it was said and shown so; it counts from its first day.
#[test]
fn a_span_is_kept_as_it_was_said() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    run(
        &browser,
        "rungbook.store.entries('tested').forEach(({ key }) => rungbook.store.remove(key))",
    );
    browser.open(&format!("{base}self-test-strict-ring-muscle-up.html"));
    browser.write(&browser.find("#known-0"), "7");
    click(&browser, ".known .chip:first-child");
    click(&browser, ".known button[type=submit]");
    browser.wait_until("document.querySelector('#history-list .past')");
    let kept = run(
        &browser,
        r"const { results, store } = rungbook, [{ entry: of }] = store.entries('tested'), day = text => results.today() - results.readDay(text);
        return [of.got, day(of.on), day(of.until), store.all().tested[0].until === of.until]",
    );
    assert_eq!(kept, json!(["7 reps", 6, 0, true]));
    let said = run(
        &browser,
        "return document.querySelector('#history-list .past').textContent.includes(`in the week to ${rungbook.results.dayWords(rungbook.results.today())}`)",
    );
    assert_eq!(said, true);
    // The copy is read again as it was written.
    let same = run(
        &browser,
        "const { results, store } = rungbook, all = store.all(); return JSON.stringify(results.check(JSON.parse(JSON.stringify(all)), results.today())) === JSON.stringify(all)",
    );
    assert_eq!(same, true);
}

/// The year comes first: until then nothing else is asked, of a child nothing, and of everybody else what concerns that age.
#[test]
fn the_year_decides_what_is_asked() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    run(&browser, "rungbook.store.erase()");
    let asked = |born: i64| {
        browser.open(&format!("{base}before-you-start.html"));
        let field = browser.find("#born");
        browser.clear(&field);
        if born > 0 {
            browser.write(&field, &born.to_string());
        }
        texts(&run(
            &browser,
            "return [...document.querySelectorAll('#questions fieldset')].filter(e => e.checkVisibility()).map(e => e.querySelector('input').name)",
        ))
    };
    let year = run(&browser, "return new Date().getFullYear()");
    let year = year.as_i64().expect("a year");
    assert_eq!(asked(0), Vec::<String>::new());
    // Nobody says no to what does not stand on the page, however it is pressed.
    let rest = "document.getElementById('no-to-the-rest')";
    let pressed = format!(
        "{rest}.click(); return [{rest}.checkVisibility(), document.querySelectorAll('#questions input:checked').length, document.getElementById('born-fault').textContent !== '']"
    );
    assert_eq!(run(&browser, &pressed), json!([false, 0, true]));
    assert_eq!(asked(year - 9), Vec::<String>::new());
    press_button(&browser, "What follows");
    browser.wait_until("!document.getElementById('outcome').hidden");
    let said = run(
        &browser,
        "return [rungbook.store.get('screened').says, document.getElementById('outcome').textContent.includes('under 12')]",
    );
    assert_eq!(said, json!(["ask", true]));
    let has = |names: &[String], one: &str| names.iter().any(|name| name == one);
    let (young, grown, old) = (asked(year - 14), asked(year - 40), asked(year - 70));
    for name in ["heart", "symptoms", "fits", "pregnancy", "concussion"] {
        assert!(
            has(&young, name) && has(&grown, name) && has(&old, name),
            "{name}"
        );
    }
    assert!(has(&young, "growth") && !has(&grown, "growth") && !has(&old, "growth"));
    assert!(!has(&young, "falls") && !has(&grown, "falls") && has(&old, "falls"));
}

/// Where nothing of the goal's own pattern can be trained, the session says what comes first.
#[test]
fn a_session_without_the_goal_says_why() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    run(
        &browser,
        "const { store } = rungbook; store.entries('tested').forEach(({ key }) => store.remove(key)); store.put('goal', 'one-leg-to-the-floor')",
    );
    browser.open(&format!("{base}today.html"));
    browser.wait_until("document.querySelector('#sets article')");
    let said = run(
        &browser,
        r"const { tables } = rungbook.states.model, squat = tables.patterns.indexOf('squat');
        const trained = [...document.querySelectorAll('#sets article')].some(e => tables.pattern[tables.ids.indexOf(e.dataset.movement)] === squat);
        const place = document.getElementById('none-for-goal');
        return [trained, place.checkVisibility(), place.textContent.startsWith('No squat today: '), place.querySelectorAll('[data-movement]').length > 0]",
    );
    assert_eq!(said, json!([false, true, true, true]));
}

/// A coach who was here once opens copies without a network too.
#[test]
fn a_class_is_looked_at_without_a_network() {
    let Some((browser, _)) = somebody() else {
        return;
    };
    let server = Server::start(&site());
    let page = format!("{}my-people.html", server.base());
    browser.open(&page);
    browser.run_async(
        "const done = arguments[arguments.length - 1]; navigator.serviceWorker.ready.then(() => done(true))",
        &json!([]),
    );
    browser.open(&page);
    let kept = r"
        const done = arguments[arguments.length - 1], end = Date.now() + 20000;
        const names = [location.href.split('#')[0], ...[...document.querySelectorAll('#class-here [data-src]')].map(e => new URL(e.dataset.src, location.href).href)];
        const look = async () => {
            const found = await Promise.all(names.map(name => caches.match(name)));
            const missing = names.filter((_, i) => !found[i]);
            if (!missing.length || Date.now() > end) done(missing); else setTimeout(look, 200);
        };
        look();";
    assert_eq!(browser.run_async(kept, &json!([])), json!([]));
    drop(server);
    browser.open(&page);
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("ana.json");
    let copy = json!({ "results": 1, "name": "Ana", "born": 1990, "tested": [{ "movement": "pull-up", "got": "9 reps" }] });
    fs::write(&file, copy.to_string()).expect("a file");
    browser.upload(&browser.find("#open"), &file);
    browser.wait_until("document.getElementById('each').textContent.includes('Ana')");
    let notice = run(
        &browser,
        "return document.getElementById('notice').textContent",
    );
    assert!(notice.as_str().is_some_and(|t| t.contains('1')), "{notice}");
}

/// What a client looks for by other words is found, and the text in the clipboard says where it goes.
#[test]
fn words_lead_on() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    browser.open(&format!("{base}search.html"));
    for (typed, page) in [
        ("beginner", "self-test"),
        ("my coach", "where-i-stand"),
        ("erase", "where-i-stand"),
    ] {
        let found = run(
            &browser,
            &format!(
                "const input = document.getElementById('find'); input.value = '{typed}'; input.dispatchEvent(new Event('input')); return [...document.querySelectorAll('#found li')].slice(0, 3).map(e => e.querySelector('a').getAttribute('href'))"
            ),
        );
        assert!(
            texts(&found).contains(&format!("{page}.html")),
            "{typed}: {found}"
        );
    }
    browser.open(&format!("{base}where-i-stand.html"));
    run(
        &browser,
        "delete Navigator.prototype.share; delete Navigator.prototype.canShare; Object.defineProperty(navigator, 'clipboard', { value: { writeText: () => Promise.resolve() } })",
    );
    click(&browser, "#share");
    browser.wait_until("document.getElementById('copy-says').textContent");
    let said = run(
        &browser,
        "return document.getElementById('copy-says').textContent",
    );
    assert_eq!(
        said,
        Value::from("The text is in your clipboard. Paste it into a message to your coach.")
    );
}

/// What was never tried is no number: it is not asked again today, and a first session gives it its first try.
#[test]
fn what_was_never_tried_is_no_number() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    run(
        &browser,
        "rungbook.store.entries('tested').forEach(({ key }) => rungbook.store.remove(key))",
    );
    let skill = format!("{base}self-test-strict-ring-muscle-up.html");
    browser.open(&skill);
    browser.wait_until("document.querySelector('.known-list li')");
    let word = run(
        &browser,
        "const row = document.querySelector('.known-list li'); row.querySelector('button').click(); return [row.dataset.movement, row.querySelector('input').value]",
    );
    assert_eq!(word, json!(["pull-up", "never"]));
    press_button(&browser, "Save these numbers");
    browser.wait_until("location.pathname.endsWith('today.html') && globalThis.rungbook && document.querySelector('#sets article')");
    let kept = "const { store } = rungbook; return [store.all().tested, store.entries('undated').length, store.get('never').movements]";
    assert_eq!(run(&browser, kept), json!([[], 0, ["pull-up"]]));
    browser.open(&skill);
    press_button(&browser, "None is true");
    let asked =
        "const of = document.querySelector('#guided .asked'); return of ? of.dataset.movement : ''";
    let mut never = vec!["pull-up".to_string()];
    while let Some(movement) = run(&browser, asked)
        .as_str()
        .filter(|m| !m.is_empty())
        .map(String::from)
    {
        assert!(!never.contains(&movement), "{movement} again: {never:?}");
        // What stops a test stands open above its field.
        let stop = run(
            &browser,
            "const stop = document.querySelector('#guided > .stop'), form = document.querySelector('#guided form'); return Boolean(stop) && stop.checkVisibility() && Boolean(stop.compareDocumentPosition(form) & Node.DOCUMENT_POSITION_FOLLOWING)",
        );
        assert_eq!(stop, true, "{movement}");
        let can = run(
            &browser,
            "return [...document.querySelectorAll('#guided button')].some((b) => b.textContent === 'Never tried it')",
        );
        press_button(
            &browser,
            if can == true {
                "Never tried it"
            } else {
                "Not sure"
            },
        );
        never.push(movement);
        assert!(never.len() < 40, "it ends");
    }
    assert!(never.len() > 3, "{never:?}");
    let kept = run(&browser, kept);
    assert_eq!(json!([kept[0], kept[1]]), json!([[], 0]));
    browser.open(&format!("{base}today.html"));
    browser.wait_until("document.querySelector('#sets article')");
    let said = run(
        &browser,
        "return document.getElementById('main').textContent",
    );
    assert!(!said.as_str().expect("text").contains("too hard"), "{said}");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Under 16 an adult's word comes before any test or session: a parent's once, the coach's on each day.
#[test]
fn under_sixteen_an_adult_comes_first() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let born = "rungbook.store.put('born', new Date().getFullYear() - 15)";
    run(&browser, born);
    let today = format!("{base}today.html");
    let seen = "return [document.getElementById('card').checkVisibility(), document.getElementById('adult').checkVisibility()]";
    browser.open(&today);
    assert_eq!(run(&browser, seen), json!([false, true]));
    let goes = "[...document.querySelectorAll('.adult button, .adult a')].length";
    click(&browser, "#adult-parent");
    assert_eq!(run(&browser, &format!("return {goes}")), 0);
    click(&browser, "#adult-coach");
    press_button(&browser, "Go on");
    assert_eq!(run(&browser, seen), json!([true, false]));
    // The next day the coach is asked about anew.
    run(
        &browser,
        "rungbook.store.note('coach', rungbook.results.dayText(rungbook.results.today() - 1))",
    );
    browser.open(&today);
    assert_eq!(run(&browser, seen), json!([false, true]));
    let ticked =
        "return ['parent', 'coach'].map((key) => document.getElementById(`adult-${key}`).checked)";
    assert_eq!(run(&browser, ticked), json!([true, false]));
    // Home leads to where they are asked, and names no movement.
    browser.open(&format!("{base}index.html"));
    let home = "const next = document.getElementById('next'); return [next.checkVisibility(), next.querySelectorAll('[data-movement], .big-target').length, next.querySelectorAll('[href=\"today.html\"]').length]";
    assert_eq!(run(&browser, home), json!([true, 0, 1]));
    // No page has a field or a button for a number before it, and each says so, or asks.
    let asks = "return [document.querySelectorAll('#guided form, #sheet .enter > p:not(.was) button, #number-form button, .number-line input').length, [...document.querySelectorAll('#guided .adult, main a[href=\"today.html\"]')].some(e => e.checkVisibility())]";
    for page in [
        "self-test-strict-ring-muscle-up",
        "self-test",
        "plank",
        "where-i-stand",
    ] {
        browser.open(&format!("{base}{page}.html"));
        assert_eq!(run(&browser, asks), json!([0, true]), "{page}");
    }
    browser.open(&format!("{base}before-you-start.html"));
    assert_eq!(run(&browser, &format!("return {goes}")), 0);
    // Nobody else is asked, and a child is not either: no tick lets them train by a page.
    for (age, card) in [(17, true), (11, false)] {
        run(
            &browser,
            &format!("rungbook.store.put('born', new Date().getFullYear() - {age} - 1)"),
        );
        browser.open(&today);
        assert_eq!(run(&browser, seen), json!([card, false]), "{age}");
    }
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// While a clearance of six weeks holds, Today says who allowed what until when, and the signs that end it, in the words of If it hurts.
#[test]
fn a_short_clearance_says_its_stop_signs() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let keep = |more: &str| {
        run(
            &browser,
            &format!(
                "const {{ store, results }} = rungbook, day = results.today(); store.put('screened', {{ says: 'clear', was: 'ask', by: 'Dr Lee', on: results.dayText(day), until: results.dayText(day + 20) {more} }})"
            ),
        )
    };
    let said = "const of = document.getElementById('allowed'); return of.checkVisibility() ? of.textContent : ''";
    keep("");
    browser.open(&format!("{base}today.html"));
    assert_eq!(run(&browser, said), "");
    keep(", lasts: 42");
    browser.open(&format!("{base}today.html"));
    let said = run(&browser, said).as_str().expect("text").to_string();
    browser.open(&format!("{base}if-it-hurts.html"));
    let signs = texts(&run(
        &browser,
        "return [...document.querySelectorAll('main section li')].map((e) => e.textContent)",
    ));
    let pregnant = signs.iter().find(|s| s.starts_with("In pregnancy"));
    assert!(
        pregnant.is_some_and(|s| said.contains(s.as_str())) && said.contains("by Dr Lee"),
        "{said}"
    );
}
