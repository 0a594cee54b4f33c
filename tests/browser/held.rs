//! What the pages take and offer agrees with what Today holds back: fields and news, the age, foundations, home's next line, a coach's cells.

use super::flow::press_button;
use super::phone::{run, somebody};
use super::webdriver::Browser;
use super::{disk, site, texts};
use serde_json::{Value, json};

/// What a script says of results on this device; `day(n)` is n days ago.
fn keep(browser: &Browser, script: &str) {
    run(
        browser,
        &format!(
            "const {{ store, results }} = rungbook, day = (ago) => results.dayText(results.today() - ago); {script}"
        ),
    );
}

/// A movement's own page, with what is asked for shown.
fn movement(browser: &Browser, base: &str, id: &str) {
    browser.open(&format!("{base}{id}.html"));
    browser.wait_until("globalThis.rungbook && rungbook.page");
}

/// Who has nothing here is asked by the button of the page.
fn enter(browser: &Browser) {
    assert_eq!(
        run(
            browser,
            "const button = document.querySelector('#number-form button'), says = button.textContent; button.click(); return says"
        ),
        "Enter your number"
    );
}

/// What stands at the number of a movement's page, and what is said of the one that was kept.
fn here(browser: &Browser) -> (String, Value) {
    let said = run(
        browser,
        "const text = (id) => document.getElementById(id).textContent, place = document.getElementById('number-here'), words = [...place.querySelectorAll('button')].map(e => e.textContent);
        return [place.hidden ? '' : text('number-form'), words.includes('Save: done today'), text('number-news')]",
    );
    (said[0].as_str().unwrap_or_default().to_string(), said)
}

/// Opens the field of a page, gives a day so many days ago and the number, and keeps it; what is said of it, or why it is refused.
fn told(browser: &Browser, number: &str, ago: u32) -> (String, String) {
    if run(
        browser,
        "return document.querySelector('#number-form select') === null",
    ) == true
    {
        browser.wait_until("document.querySelector('#number-form button')");
        press_button(browser, "I did this already");
        browser.wait_until("document.querySelector('#number-form input[inputmode]')");
    }
    // The day is asked for first, and no span that reaches to today.
    assert_eq!(
        run(
            browser,
            "const all = [...document.querySelectorAll('#number-form select, #number-form input[inputmode]')]; return [all[0].tagName, [...all[0].options].map(o => o.value)]"
        ),
        json!(["SELECT", ["", "day", "long"]])
    );
    assert_eq!(here(browser).1[1], json!(false), "nothing is tried today");
    run(
        browser,
        &format!(
            "const form = document.querySelector('#number-form form'), [when, on, input] = ['select', '[type=date]', '[inputmode]'].map(s => form.querySelector(s)); when.value = 'day'; when.dispatchEvent(new Event('change')); on.value = rungbook.results.dayText(rungbook.results.today() - {ago}); input.value = '{number}'; form.requestSubmit()"
        ),
    );
    browser.wait_until(
        "document.getElementById('number-news').textContent !== '' || document.querySelector('#number-form .fault').textContent !== ''",
    );
    let fault = run(
        browser,
        "const of = document.querySelector('#number-form .fault'); return of ? of.textContent : ''",
    );
    (
        here(browser).1[2].as_str().unwrap_or_default().to_string(),
        fault.as_str().unwrap_or_default().to_string(),
    )
}

/// A shoulder that hurt four days ago and is well today: what bears on it takes only a number that was there before, says until when as Today
/// does, praises nothing; the rest of the body is asked as ever. With a pain of four nothing that bears on it takes one.
#[test]
fn what_settled_lately_is_no_invitation() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    keep(
        &browser,
        "store.add('tested', { movement: 'squat', got: '20 reps', on: day(9) }); store.addAll([['pain', { part: 'shoulder', score: 6, on: day(4) }], ['pain', { part: 'shoulder', score: 1, on: day(0) }]]);",
    );
    browser.open(&format!("{base}today.html"));
    browser.wait_until("document.querySelector('#conditions li')");
    let says = run(
        &browser,
        "return [...document.querySelectorAll('#conditions li')].map(e => e.textContent).find(t => t.startsWith('Only just settled: shoulder. Until '))",
    );
    let says = says.as_str().expect("until when").to_string();
    movement(&browser, &base, "pull-up");
    browser.wait_until("document.querySelector('#number-form .hint')");
    assert!(here(&browser).0.contains(&says), "{}", here(&browser).0);
    // Only from before the pain: what came since is not to have been done.
    for ago in [0, 4] {
        let (news, fault) = told(&browser, "12", ago);
        assert!(
            news.is_empty() && fault.contains("before that"),
            "{ago} {fault}"
        );
    }
    // Nor more than the number on file.
    let (news, fault) = told(&browser, "12", 5);
    assert!(
        news.is_empty() && fault.contains("Nothing goes up here"),
        "{fault}"
    );
    let (news, _) = told(&browser, "9", 5);
    assert!(
        news.contains("9 reps: saved.") && news.contains(&says),
        "{news}"
    );
    assert!(
        !["more than", "Opens", "yours", "less on the way"]
            .iter()
            .any(|w| news.contains(w)),
        "{news}"
    );
    movement(&browser, &base, "squat");
    press_button(&browser, "Enter your number");
    browser.wait_until("document.querySelector('#number-form input')");
    assert_eq!(here(&browser).1[1], json!(true));
    browser.open(&format!("{base}where-i-stand.html"));
    browser.wait_until("document.querySelector('#history article .number-line')");
    let today = "return [...document.querySelectorAll('#history article')].map(e => [e.dataset.movement, e.querySelector('button[type=submit]').textContent === 'Save: done today', [...e.querySelectorAll('.hint')].some(h => h.textContent === arguments[0])])";
    let mut fields = browser.run(today, &json!([says]));
    fields
        .as_array_mut()
        .expect("a list")
        .sort_by_key(Value::to_string);
    assert_eq!(
        fields,
        json!([["pull-up", false, true], ["squat", true, false]])
    );
    keep(
        &browser,
        "store.add('pain', { part: 'shoulder', score: 4, on: day(0) }); store.entries('pain').forEach(({ key, entry }) => { if (entry.on === day(0) && entry.score === 4) { store.remove(key); store.add('pain', { part: 'shoulder', score: 4, on: day(1) }); } else if (entry.score === 1) store.remove(key); });",
    );
    browser.open(&format!("{base}where-i-stand.html"));
    browser.wait_until("document.querySelector('#history article')");
    let of = run(
        &browser,
        "const e = document.querySelector('#history article[data-movement=pull-up]'); return [e.querySelectorAll('input, form').length, e.textContent.includes('shoulder, 4 of 10')]",
    );
    assert_eq!(of, json!([0, true]));
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Under 18 no page asks for a test with weight, and says why; no news names one. From 18 on both do.
#[test]
fn tests_with_weight_wait_for_the_age() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    // All that a weighted pull-up needs but the pull-ups.
    let needs = r"const { model } = rungbook.states, { tables } = model, m = model.numbers.get('weighted-pull-up');
        rungbook.readiness.leavesOf(tables.needs[m]).forEach(leaf => { const id = tables.ids[model.of(leaf)]; if (id !== 'pull-up') { const got = tables.target_text[tables.leaves[2 * leaf + 1]].replace('at most ', '').replace(' each side', ''); store.add('tested', { movement: id, ...(model.is(model.of(leaf), rungbook.readiness.EACH_SIDE) ? { left: got, right: got } : { got }), on: day(9) }); } });";
    keep(&browser, needs);
    let mut opens = Vec::new();
    for age in [17, 18] {
        keep(
            &browser,
            &format!("store.put('born', new Date().getFullYear() - {age} - 1)"),
        );
        movement(&browser, &base, "weighted-pull-up");
        browser.wait_until("!document.getElementById('number-here').hidden");
        let said = here(&browser).0;
        let fields = run(
            &browser,
            "return document.querySelectorAll('#number-form button, #number-form input').length",
        );
        assert_eq!(
            (said.contains("until you are 18"), fields == json!(0)),
            (age == 17, age == 17),
            "{said}"
        );
        movement(&browser, &base, "pull-up");
        browser.wait_until("!document.getElementById('number-here').hidden");
        press_button(&browser, "Enter your number");
        browser.wait_until("document.querySelector('#number-form input')");
        run(
            &browser,
            "document.querySelector('#number-form input').value = '14'; document.querySelector('#number-form form').requestSubmit()",
        );
        browser.wait_until("document.getElementById('number-news').textContent !== ''");
        let weighted = run(
            &browser,
            "const { traits, ids } = rungbook.states.model.tables; return [...document.querySelectorAll('#number-news [data-movement]')].filter(e => traits[ids.indexOf(e.dataset.movement)] & rungbook.held.LOADED).length",
        );
        opens.push(weighted.as_u64().expect("a count"));
        press_button(&browser, "Take back");
    }
    assert_eq!(opens[0], 0, "under 18");
    assert!(opens[1] > 0, "from 18 on: {opens:?}");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Who has nothing yet: what stands on nothing may be tried; of all else the page says what comes first, and takes only what was done before.
#[test]
fn what_is_not_open_invites_to_no_try() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.width(390);
    let base = disk(&site());
    browser.open(&format!("{base}self-test.html"));
    keep(
        &browser,
        "store.put('screened', { says: 'clear', on: day(0) }); store.put('born', 1990);",
    );
    movement(&browser, &base, "ring-muscle-up");
    enter(&browser);
    browser.wait_until("document.querySelector('#number-form .hint')");
    let said = here(&browser).0;
    assert!(said.starts_with("Do not try it today. First: "), "{said}");
    assert_eq!(here(&browser).1[1], json!(false), "{said}");
    movement(&browser, &base, "overhead-reach-on-back");
    enter(&browser);
    browser.wait_until("document.querySelector('#number-form input')");
    assert_eq!(here(&browser).1[1], json!(true));
    // A number of the past counts as ever.
    movement(&browser, &base, "bar-dip");
    enter(&browser);
    browser.wait_until("document.querySelector('#number-form select')");
    run(
        &browser,
        "document.querySelector('#number-form select').value = '6'; document.querySelector('#number-form input[inputmode]').value = '10'; document.querySelector('#number-form form').requestSubmit()",
    );
    browser.wait_until("document.getElementById('number-news').textContent !== ''");
    let news = here(&browser).1[2].clone();
    assert!(
        news.as_str()
            .is_some_and(|n| n.contains("10 reps") && n.contains("Now yours: ")),
        "{news}"
    );
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Home says the first line of this day's session, whatever hurts; after anything new, and on another day, it names none.
#[test]
fn home_says_the_first_line_of_today() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    let today = format!("{base}today.html");
    let home = format!("{base}index.html");
    let first = "const of = document.querySelector('#sets article'); return [of.dataset.movement, of.querySelector('.dose').textContent]";
    let next = "const of = document.getElementById('next'), sets = of.querySelector('.big-target'); return [of.dataset.movement || null, sets && sets.textContent]";
    let mut seen = Vec::new();
    for (part, score) in [
        ("", 0),
        ("ankle", 5),
        ("knee", 4),
        ("wrist", 6),
        ("wrist", 8),
        ("shoulder", 4),
    ] {
        browser.open(&format!("{base}self-test.html"));
        keep(
            &browser,
            "store.entries('pain').forEach(({ key }) => store.remove(key))",
        );
        if score > 0 {
            keep(
                &browser,
                &format!("store.add('pain', {{ part: '{part}', score: {score}, on: day(1) }})"),
            );
        }
        if score > 0 {
            browser.open(&home);
            assert_eq!(
                run(&browser, next),
                json!([null, null]),
                "{part} {score}: not worked out yet"
            );
        }
        browser.open(&today);
        browser.wait_until("document.querySelector('#sets article')");
        let line = run(&browser, first);
        // What rests is in no line.
        if score > 5 {
            let bears = format!(
                "const {{ stresses, ids, parts }} = rungbook.states.model.tables; return [...document.querySelectorAll('#sets article')].map(e => e.dataset.movement).filter(id => (stresses[ids.indexOf(id)] >> parts.indexOf('{part}')) & 1)"
            );
            assert_eq!(run(&browser, &bears), json!([]), "{part} {score}");
        }
        browser.open(&home);
        assert_eq!(run(&browser, next), line, "{part} {score}");
        seen.push(line);
    }
    assert!(seen[1..].iter().any(|l| *l != seen[0]), "{seen:?}");
    // What is done is next no more.
    browser.open(&today);
    browser.wait_until("document.querySelectorAll('#sets article').length > 1");
    let all = texts(&run(
        &browser,
        "return [...document.querySelectorAll('#sets article')].map(e => e.dataset.movement)",
    ));
    for (i, id) in all.iter().enumerate() {
        keep(
            &browser,
            &format!("store.add('trained', {{ movement: '{id}', did: [1], on: day(0) }})"),
        );
        browser.open(&today);
        browser.wait_until("document.querySelector('#sets article')");
        browser.open(&home);
        let said = run(&browser, next);
        match all.get(i + 1) {
            Some(then) => assert_eq!(said[0], json!(then)),
            None => assert_eq!(said, json!([null, null])),
        }
        browser.open(&today);
    }
    run(
        &browser,
        "const key = rungbook.health.prefix + 'next', of = JSON.parse(localStorage.getItem(key)); localStorage.setItem(key, JSON.stringify({ ...of, on: '2026-01-01' }))",
    );
    browser.open(&home);
    assert_eq!(run(&browser, next), json!([null, null]), "another day");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// A wrist at eight carries no weight of the body in a grip: neither a hang nor a row is offered, nor a number of them.
#[test]
fn a_grip_bears_on_the_wrist() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    keep(
        &browser,
        "['dead-hang', 'row-hip-high', 'ring-row-hip-high'].forEach(movement => store.add('tested', { movement, got: movement === 'dead-hang' ? '40 s' : '8 reps', on: day(9) })); store.add('pain', { part: 'wrist', score: 8, on: day(1) });",
    );
    browser.open(&format!("{base}where-i-stand.html"));
    browser.wait_until("document.querySelectorAll('#history article').length === 4");
    let asked = "return [...document.querySelectorAll('#history article, #way li')].filter(e => e.querySelector('input')).map(e => e.dataset.movement).filter(id => /pull-up|hang|row/.test(id))";
    assert_eq!(run(&browser, asked), json!([]));
    let rests = run(
        &browser,
        "const { ids } = rungbook.states.model.tables, { found } = rungbook.states.mine(); return ids.filter((id, m) => /(^|-)(row|hang)(-|$)/.test(id) && found.reached[m])",
    );
    assert_eq!(rests, json!([]));
    for id in ["dead-hang", "ring-row-hip-high"] {
        movement(&browser, &base, id);
        browser.wait_until("!document.getElementById('rests-here').hidden");
        assert_eq!(here(&browser).0, "", "{id}");
    }
    // What rested at eight settles at one.
    keep(
        &browser,
        "store.add('pain', { part: 'wrist', score: 1, on: day(0) });",
    );
    for id in ["dead-hang", "ring-row-hip-high"] {
        movement(&browser, &base, id);
        browser.wait_until("document.querySelector('#number-form .hint')");
        let (news, fault) = told(&browser, "90", 1);
        assert!(
            news.is_empty() && fault.contains("before that"),
            "{id} {fault}"
        );
    }
    // Home says it, before and after Today has worked it out, and then as Today does.
    let hurts = "return document.getElementById('hurts-now').textContent";
    browser.open(&format!("{base}index.html"));
    let home = run(&browser, hurts);
    assert!(
        home.as_str()
            .is_some_and(|h| h.contains("Only just settled: wrist.")),
        "{home}"
    );
    browser.open(&format!("{base}today.html"));
    browser.wait_until("document.querySelector('#sets article')");
    let says = run(
        &browser,
        "return [...document.querySelectorAll('#conditions li')].map(e => e.textContent).find(t => t.startsWith('Only just settled'))",
    );
    browser.open(&format!("{base}index.html"));
    let home = run(&browser, hurts);
    let says = says.as_str().expect("until when");
    assert!(home.as_str().is_some_and(|h| h.contains(says)), "{home}");
}

/// A coach's card, cells and the session of the same person say the same: what the session trains is left alone in no cell.
#[test]
fn a_card_and_its_cells_say_what_today_does() {
    let Some((browser, base)) = somebody() else {
        return;
    };
    keep(
        &browser,
        "['plank', 'squat'].forEach(movement => store.add('tested', { movement, got: movement === 'plank' ? '60 s' : '25 reps', on: day(2) })); [['push-up', '20 reps'], ['bar-dip', '10 reps'], ['dead-hang', '60 s']].forEach(([movement, got]) => store.add('tested', { movement, got, on: day(2) })); store.add('pain', { part: 'shoulder', score: 4, on: day(2) });",
    );
    browser.open(&format!("{base}today.html"));
    browser.wait_until("document.querySelector('#sets article')");
    let lines = texts(&run(
        &browser,
        "return [...document.querySelectorAll('#sets article')].map(e => e.dataset.movement)",
    ));
    let copy = run(&browser, "return rungbook.store.all()").to_string();
    browser.open(&format!("{base}my-people.html"));
    browser.wait_until("globalThis.rungbook && rungbook.states");
    browser.run(
        "const all = new DataTransfer(), input = document.getElementById('open'); all.items.add(new File([arguments[0]], 'ana.json', { type: 'application/json' })); input.files = all.files; input.dispatchEvent(new Event('change'));",
        &json!([copy]),
    );
    browser.wait_until("document.querySelector('#each section')");
    let cells = run(
        &browser,
        "return [...document.querySelectorAll('#class-table tbody tr')].map(e => [e.dataset.movement, e.querySelector('td').textContent])",
    );
    let said: Vec<(&str, &str)> = cells
        .as_array()
        .expect("rows")
        .iter()
        .map(|c| {
            (
                c[0].as_str().unwrap_or_default(),
                c[1].as_str().unwrap_or_default(),
            )
        })
        .collect();
    let of = |id: &str| said.iter().find(|(m, _)| *m == id).map_or("", |(_, s)| *s);
    for id in &lines {
        assert!(!of(id).contains("left alone"), "{id}: {}", of(id));
    }
    assert!(lines.iter().any(|id| id == "plank"), "{lines:?}");
    assert!(
        of("plank").ends_with("less and easier while it hurts: shoulder"),
        "{}",
        of("plank")
    );
    assert!(
        of("pull-up").ends_with("left alone while it hurts: shoulder"),
        "{}",
        of("pull-up")
    );
    let named = texts(&run(
        &browser,
        "const head = [...document.querySelectorAll('#each dt')].find(e => e.textContent === 'next'); return [...head.nextElementSibling.querySelectorAll('[data-movement]')].map(e => e.dataset.movement)",
    ));
    assert!(
        !named.is_empty() && named.iter().all(|id| !of(id).contains("left alone")),
        "{named:?}"
    );
}
