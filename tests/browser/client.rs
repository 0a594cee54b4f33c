//! What a client is told and asked on the way, on a phone's width: true, where it is looked for, and in words that say what is done.

use super::flow::{click, press_button};
use super::phone::{run, somebody};
use super::texts;
use serde_json::json;

/// Where it hurts is asked first. With nothing chosen the button counts what it rests, and the sentence beside it names all of that; the
/// signs and every number are in sight on a phone, under no button, on a small one once a part is touched; two touches rest.
#[test]
fn what_hurt_asks_where_first() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let open = r"
        const { stresses, parts } = rungbook.states.model.tables, { ids } = rungbook.states.model.tables, bears = (id) => parts.filter((_, i) => (stresses[ids.indexOf(id)] >> i) & 1);
        const card = [...document.querySelectorAll('#sets article:not(.done)')].find(e => bears(e.dataset.movement).length > 3);
        card.querySelector('.hurt').click();
        return [card.dataset.movement, bears(card.dataset.movement)];";
    let hidden = r"
        const dialog = document.querySelector('dialog[open]'), foot = dialog.querySelector('.acts:last-child').getBoundingClientRect();
        return [...dialog.querySelectorAll('#hurt-score label, .signs label')].filter(e => { const { top, bottom } = e.getBoundingClientRect(); return top < 0 || bottom > foot.top + 0.5; }).length;";
    for (width, height, first) in [(390, 844, true), (360, 640, false)] {
        browser.cdp(
            "Emulation.setDeviceMetricsOverride",
            &json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": true }),
        );
        browser.open(&format!("{base}today.html"));
        browser.wait_until("document.querySelector('#sets article .hurt')");
        let of = run(&browser, open);
        browser.wait_until("document.querySelector('dialog[open]')");
        let parts = texts(&of[1]);
        let (button, tall) = (
            "return document.querySelector('dialog button[value=act]').textContent",
            "return document.querySelector('dialog button[value=act]').offsetHeight",
        );
        assert_eq!(
            run(&browser, button),
            format!("Rest all {} parts", parts.len())
        );
        assert!(
            run(&browser, tall).as_f64().is_some_and(|px| px < 60.0),
            "one line"
        );
        let said = run(
            &browser,
            "return document.querySelector('dialog [role=status]').textContent",
        );
        for part in &parts {
            assert!(
                said.as_str()
                    .is_some_and(|s| s.contains(&part.replace('-', " "))),
                "{said}: {part}"
            );
        }
        assert!(!first || run(&browser, hidden) == 0, "{width}");
        click(&browser, &format!("#part-{}", parts[0]));
        assert_eq!(run(&browser, hidden), 0, "{width}");
        assert_eq!(
            run(&browser, button),
            format!("Rest the {}", parts[0].replace('-', " "))
        );
        click(&browser, &format!("#part-{}", parts[0]));
        press_button(&browser, "Rest all");
        browser.wait_until("!document.querySelector('dialog[open]')");
        let rests = run(
            &browser,
            "return rungbook.store.entries('paused').map(({ key, entry: of }) => { rungbook.store.remove(key); return of.part || of.movement; })",
        );
        let mut rests = texts(&rests);
        rests.sort();
        let mut all: Vec<String> = parts
            .iter()
            .cloned()
            .chain(texts(&json!([of[0]])))
            .collect();
        all.sort();
        assert_eq!(rests, all);
    }
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Home says what hurts and what rests, above all else, and where that is changed; of a pain that was lower since, nothing.
#[test]
fn home_says_what_hurts() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let home = format!("{base}index.html");
    let said = "const of = document.getElementById('hurts-now'); return of.checkVisibility() ? [[...of.querySelectorAll('p')].map(e => e.textContent), of.querySelectorAll('[href=\"if-it-hurts.html#pain\"]').length, of.getBoundingClientRect().top < document.getElementById('next').getBoundingClientRect().top] : null";
    browser.open(&home);
    assert_eq!(run(&browser, said), json!(null));
    browser.open(&format!("{base}today.html"));
    run(
        &browser,
        r"const { store, results } = rungbook, day = (before) => results.dayText(results.today() - before);
        store.addAll([['pain', { part: 'knee', score: 8, on: day(9) }], ['pain', { part: 'shoulder', score: 8, on: day(3) }], ['pain', { part: 'hip', score: 3, on: day(2) }],
            ['pain', { part: 'knee', score: 1, on: day(1) }], ['paused', { part: 'wrist', on: day(1), by: 'client' }], ['paused', { part: 'elbow', on: day(5), until: day(2), by: 'client' }]]);",
    );
    browser.open(&home);
    let all = run(&browser, said);
    let lines = texts(&all[0]);
    let room = "return document.documentElement.dataset.hurts";
    assert_eq!(
        run(&browser, room),
        "true",
        "room is kept before it is drawn"
    );
    assert_eq!(json!([all[1], all[2]]), json!([1, true]), "{all}");
    assert!(
        lines[0].starts_with("At rest: shoulder, 8 of 10 on "),
        "{lines:?}"
    );
    assert!(
        lines[0].contains("wrist, since ") && lines[0].contains("licensed clinician"),
        "{lines:?}"
    );
    assert!(
        lines[1].starts_with("It hurts: hip, 3 of 10 on "),
        "{lines:?}"
    );
    let others = lines[..2].iter().any(|l| l.contains("knee"));
    let ended = lines.iter().any(|l| l.contains("elbow"));
    assert!(!others && !ended && lines.len() == 3, "{lines:?}");
    assert!(
        lines[2].starts_with("Only just settled: knee. "),
        "{lines:?}"
    );
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// What `assess` tells the coach first stands on Where I stand for the client too, three lines of it at most; nothing for whom none of it is.
#[test]
fn where_i_stand_says_what_comes_first() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let stand = format!("{base}where-i-stand.html");
    let acts = "return [...document.querySelectorAll('#acts li')].filter(e => e.checkVisibility()).map(e => e.textContent)";
    browser.open(&stand);
    browser.wait_until("document.querySelector('#way li')");
    assert_eq!(run(&browser, acts), json!([]));
    run(
        &browser,
        r"const { store, results } = rungbook, day = (before) => results.dayText(results.today() - before);
        store.put('born', new Date().getFullYear() - 70);
        store.put('have', ['box']);
        store.addAll([['tested', { movement: 'single-leg-balance', left: '5 s', right: '8 s', on: day(30) }], ['trained', { movement: 'push-up', did: [8, 8], on: day(20) }], ['tested', { movement: 'squat', got: '900 reps', on: day(30) }]]);",
    );
    browser.open(&stand);
    browser.wait_until("document.querySelector('#acts li')");
    let first = texts(&run(&browser, acts));
    assert_eq!(first.len(), 3, "{first:?}");
    assert!(
        first[0].contains("900 reps of Bodyweight squat"),
        "{first:?}"
    );
    assert!(
        first[1].contains("risk of falls") && first[1].contains("left 5 seconds, right 8 seconds"),
        "{first:?}"
    );
    assert!(first[2].contains("20 days"), "{first:?}");
    // Without the slip and the time off: what must be had first, and the weaker side.
    run(
        &browser,
        "const { store } = rungbook; store.put('born', 1990); store.entries('tested').filter(({ entry }) => entry.movement === 'squat').concat(store.entries('trained')).forEach(({ key }) => store.remove(key))",
    );
    browser.open(&stand);
    browser.wait_until("document.querySelector('#acts li')");
    let then = texts(&run(&browser, acts));
    assert!(then[0].starts_with("To be had first: "), "{then:?}");
    assert!(
        then.iter()
            .any(|l| l.starts_with("Begin with the left")
                && l.contains("Standing balance on one leg")),
        "{then:?}"
    );
    // Whoever was told to ask first reads none of it.
    run(
        &browser,
        "rungbook.store.put('screened', { says: 'ask', on: rungbook.results.dayText(rungbook.results.today()) })",
    );
    browser.open(&stand);
    assert_eq!(run(&browser, acts), json!([]));
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// What was never tried is no place to start: it opens no session, and is named apart, with how it is tried.
#[test]
fn what_was_never_tried_opens_nothing() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let today = format!("{base}today.html");
    run(
        &browser,
        "rungbook.store.entries('tested').forEach(({ key }) => rungbook.store.remove(key))",
    );
    browser.open(&today);
    browser.wait_until("document.querySelector('#sets article')");
    let order =
        "return [...document.querySelectorAll('#sets article')].map(e => e.dataset.movement)";
    let before = texts(&run(&browser, order));
    let never = format!(
        "const {{ store, results }} = rungbook; store.note('never', {{ on: results.dayText(results.today()), movements: ['{}'] }})",
        before[0]
    );
    run(&browser, &never);
    browser.open(&today);
    browser.wait_until("document.querySelector('#sets article')");
    let after = texts(&run(&browser, order));
    assert_ne!(after[0], before[0], "{after:?}");
    let sorted = |list: &[String]| {
        let mut out = list.to_vec();
        out.sort();
        out
    };
    assert_eq!(sorted(&before), sorted(&after), "nothing is lost");
    let next = run(&browser, "return rungbook.store.get('next').id");
    assert_ne!(next, before[0].as_str(), "home names another");
    // At the end of the questions it is told from what is open.
    run(
        &browser,
        "const { store, results } = rungbook, on = results.dayText(results.today()); store.note('fit', on); store.note('known', { 'strict-ring-muscle-up': true });",
    );
    browser.open(&format!("{base}self-test-strict-ring-muscle-up.html"));
    press_button(&browser, "Begin");
    browser.wait_until("document.querySelector('#guided form')");
    let (mut asked, mut heads) = (0, Vec::new());
    while run(
        &browser,
        "return Boolean(document.querySelector('#guided form'))",
    ) == true
        && asked < 30
    {
        heads.extend(
            run(
                &browser,
                "return document.getElementById('guided-head').textContent",
            )
            .as_str()
            .map(str::to_string),
        );
        let words = if run(
            &browser,
            "return [...document.querySelectorAll('#guided button')].some(e => e.textContent === 'Never tried it')",
        ) == true
        {
            "Never tried it"
        } else {
            "Not sure"
        };
        press_button(&browser, words);
        asked += 1;
    }
    let counted: Vec<String> = (1..=asked).map(|n| format!("Question {n}")).collect();
    assert_eq!(
        heads, counted,
        "the questions are counted, and nothing else is"
    );
    let ends = run(
        &browser,
        "const own = (start) => [...document.querySelectorAll('#guided > p')].filter(e => e.textContent.startsWith(start)).flatMap(e => [...e.querySelectorAll('[data-movement]')].map(m => m.dataset.movement)); return [own('Open to you'), own('Open, but never tried'), rungbook.states.neverTried()]",
    );
    let (open, untried, said) = (texts(&ends[0]), texts(&ends[1]), texts(&ends[2]));
    assert!(
        !untried.is_empty() && untried.iter().all(|m| said.contains(m)),
        "{ends}"
    );
    assert!(open.iter().all(|m| !said.contains(m)), "{ends}");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Links land where they say, answers stay as they were given, and lists stand in line.
#[test]
fn links_land_and_answers_stay() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    browser.open(&format!("{base}today.html"));
    browser.wait_until("document.querySelector('#sets article')");
    let left = "const lists = ['warm-up', 'care'].map(id => document.getElementById(id)); lists[1].hidden = false; if (!lists[1].firstChild) lists[1].append(rungbook.page.make('li', { text: 'x' })); return lists.map(e => e.querySelector('li').getBoundingClientRect().left)";
    let left = run(&browser, left);
    assert_eq!(left[0], left[1], "warm-up and care stand in line");
    run(
        &browser,
        "document.querySelector('a[href=\"where-i-stand.html#plan\"]').click()",
    );
    browser.wait_until("document.querySelectorAll('#plan-list .ahead li').length");
    let seen = "const { top } = document.getElementById('plan').getBoundingClientRect(); return [document.getElementById('plan').open, top >= 0 && top < innerHeight / 2]";
    assert_eq!(run(&browser, seen), json!([true, true]));
    // No step of the way begins a line with a stray mark.
    let stray = "return [...document.querySelectorAll('#way li')].filter(e => /^\\s*[:;,]/.test(e.querySelector('.named').nextElementSibling.textContent)).length";
    assert_eq!(run(&browser, stray), 0);
    run(&browser, "rungbook.store.put('screened', null)");
    browser.open(&format!("{base}self-test-strict-ring-muscle-up.html#goal"));
    browser.wait_until("location.pathname.endsWith('before-you-start.html') && !document.getElementById('questions').hidden");
    // The heading is in sight, and the year below it.
    browser.wait_until("(() => { const { top } = document.querySelector('#health h2').getBoundingClientRect(); return top >= 0 && top < innerHeight / 3; })()");
    assert_eq!(
        run(
            &browser,
            "return [scrollY > 0, document.getElementById('born').getBoundingClientRect().bottom < innerHeight]"
        ),
        json!([true, true])
    );
    click(&browser, "#questions input[name=regular][value=yes]");
    click(&browser, "#no-to-the-rest");
    browser.wait_until("!document.getElementById('outcome').hidden");
    let answered = "const sets = [...document.querySelectorAll('#questions fieldset:not([hidden])')]; return [sets.length > 10, sets.filter(e => !e.querySelector('input:checked')).length, sets.filter(e => e.querySelector('input[value=yes]:checked')).length]";
    assert_eq!(run(&browser, answered), json!([true, 0, 1]));
    // Whoever leaves the page leaves no answer on it.
    run(
        &browser,
        "dispatchEvent(new PageTransitionEvent('pagehide'))",
    );
    assert_eq!(
        run(
            &browser,
            "return document.querySelectorAll('#questions input:checked').length"
        ),
        0
    );
    // What was allowed is ticked in a plain list.
    let bullets = "return [...document.querySelectorAll('#clear-classes ul')].map(e => getComputedStyle(e).listStyleType)";
    assert_eq!(run(&browser, bullets), json!(["none"]));
    assert_eq!(browser.complaints(), Vec::<String>::new());
}
