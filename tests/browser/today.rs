//! Today and the goal: the session in cards, ticks, the rest, the log, what holds back, one sheet of paper.

use super::booklet::{poppler, read};
use super::flow::{UNMARKED, click, fits, press_button};
use super::webdriver::{Browser, base64};
use super::{disk, root, site, texts, write_picture};
use serde_json::{Value, json};
use std::fs;

/// Somebody with a goal, some numbers and a week of log.
const PERSON: &str = r"
    const { store, results } = rungbook, ago = n => results.dayText(results.today() - n);
    store.put('screened', { says: 'clear', on: ago(1) });
    store.put('bodyweight', '72 kg');
    store.put('born', 1990);
    store.put('train', { a_week: 3, minutes: 50 });
    store.put('goal', 'strict-ring-muscle-up');
    const tested = { 'pull-up': '9 reps', 'push-up': '24 reps', 'bar-dip': '10 reps', plank: '60 s', 'bar-support-hold': '40 s', squat: '12 reps', 'dead-hang': '50 s', 'false-grip-hang': '8 s' };
    for (const [movement, got] of Object.entries(tested)) store.add('tested', { movement, got, on: ago(9) });
    for (const [movement, first, days] of [['pull-up', 5, 3], ['bar-dip', 6, 3], ['pull-up', 5, 6]]) store.add('trained', { movement, did: [first, first, first + 2], in_reserve: 2, on: ago(days) });";

/// The movements of the cards.
const CARDS: &str =
    "return [...document.querySelectorAll('#sets article')].map(e => e.dataset.movement)";

/// What is hidden of what Today holds.
const SHOWN: &str = "return ['card', 'first', 'ask', 'log'].map(id => document.getElementById(id).checkVisibility())";

fn today() -> Option<(Browser, String)> {
    let browser = Browser::start()?;
    browser.width(390);
    let base = disk(&site());
    browser.open(&format!("{base}today.html"));
    browser.run(PERSON, &json!([]));
    browser.open(&format!("{base}today.html"));
    browser.wait_until(
        "document.querySelector('#sets article') && document.querySelector('#log button')",
    );
    Some((browser, base))
}

fn run(browser: &Browser, script: &str) -> Value {
    browser.run(script, &json!([]))
}

fn text(browser: &Browser, selector: &str) -> String {
    browser.text(&browser.find(selector))
}

/// No session before the health questions, and none for who was told to ask first; what was trained can still be changed.
#[test]
fn who_is_told_to_ask_first_has_no_session() {
    let Some((browser, base)) = today() else {
        return;
    };
    assert_eq!(run(&browser, SHOWN), json!([true, false, false, true]));
    run(&browser, "rungbook.store.put('screened', null)");
    assert_eq!(run(&browser, SHOWN), json!([false, true, false, true]));
    run(
        &browser,
        "rungbook.store.put('screened', { says: 'ask', on: rungbook.results.dayText(rungbook.results.today()) })",
    );
    assert_eq!(run(&browser, SHOWN), json!([false, false, true, true]));
    browser.open(&format!("{base}where-i-stand.html"));
    let shown = "return ['aim', 'plan'].map(id => document.getElementById(id).checkVisibility())";
    assert_eq!(run(&browser, shown), json!([false, false]));
}

/// A tick starts the rest; neither a reload nor what another tab keeps takes the ticks away; what is kept is the log, and it speaks
/// from tomorrow on.
#[test]
fn what_is_ticked_is_the_log() {
    let Some((browser, base)) = today() else {
        return;
    };
    assert_eq!(run(&browser, UNMARKED), json!([]));
    fits(&browser);
    write_picture("today.png", &browser.whole_picture(390));
    let cards = run(&browser, CARDS);
    let id = "false-grip-hang";
    assert!(texts(&cards).contains(&id.to_string()), "{cards}");
    let card = format!("#sets article[data-movement={id}]");
    assert_eq!(
        text(&browser, &format!("{card} .dose")),
        "3 sets of 4 seconds"
    );
    assert_eq!(
        run(
            &browser,
            "return document.querySelector('.timer').checkVisibility()"
        ),
        false
    );
    for i in 0..3 {
        click(&browser, &format!("#tick-{id}-{i}"));
    }
    let at = "const at = document.querySelector('.timer').getBoundingClientRect(); return [at.height > 0, at.top >= 0 && at.bottom <= innerHeight + 1]";
    assert_eq!(
        run(&browser, at),
        json!([true, true]),
        "the rest is at hand"
    );
    browser.write(&browser.find(&format!("#left-{id}")), "2");
    browser.open(&format!("{base}today.html"));
    browser.wait_until("document.querySelector('#sets article')");
    run(&browser, "rungbook.store.set('other', 1)");
    let ticked = "return [...document.querySelectorAll('#sets article[data-movement=false-grip-hang] input')].map(e => e.type === 'checkbox' ? e.checked : e.value)";
    assert_eq!(
        run(&browser, ticked),
        json!([true, "4", true, "4", true, "4", "2"])
    );
    click(&browser, &format!("{card} .acts button"));
    browser.wait_until(&format!(
        "document.querySelector('{card}').textContent.includes('Done today')"
    ));
    let on_body = run(&browser, "return document.activeElement === document.body");
    assert_eq!(on_body, false, "focus stays on the card");
    let newest = "const all = rungbook.store.all().trained, { movement, did, in_reserve } = all[all.length - 1]; return [movement, did, in_reserve]";
    assert_eq!(run(&browser, newest), json!([id, [4, 4, 4], 2]));
    assert_eq!(run(&browser, CARDS), cards, "it speaks tomorrow");
    click(&browser, &format!("{card} .acts button"));
    browser.wait_until(&format!("document.querySelector('#tick-{id}-0')"));
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Half a session, or letters, are not kept.
#[test]
fn what_is_no_number_is_not_kept() {
    let Some((browser, _)) = today() else {
        return;
    };
    let card = "#sets article[data-movement=false-grip-hang]";
    let refused = |set: &str, left: &str| {
        let amount = browser.find(&format!("{card} .ticks input[type=text]"));
        browser.clear(&amount);
        browser.write(&amount, set);
        let reserve = browser.find("#left-false-grip-hang");
        browser.clear(&reserve);
        browser.write(&reserve, left);
        click(&browser, &format!("{card} .acts button"));
        text(&browser, &format!("{card} .fault"))
    };
    assert!(refused("4", "").starts_with("Tick the sets"));
    click(&browser, "#tick-false-grip-hang-0");
    assert!(refused("four", "").contains("write what you did as a number"));
    assert!(refused("4", "1.5").starts_with("Write a whole number"));
    let kept = "return rungbook.store.all().trained.length";
    assert_eq!(run(&browser, kept), 3);
}

/// The goal is chosen in one touch, goes into the copy, and Where I stand says the same of it.
#[test]
fn one_goal_everywhere() {
    let Some((browser, base)) = today() else {
        return;
    };
    let choose = |id: &str| {
        browser.run(
            "const of = document.getElementById('today-goal'); of.value = arguments[0]; of.dispatchEvent(new Event('change'))",
            &json!([id]),
        );
    };
    let before = text(&browser, "#aim");
    assert!(before.contains("Strict ring muscle-up"), "{before}");
    choose("heavy-pull-up");
    browser.wait_until("document.getElementById('aim').textContent.includes('Heavy pull-up')");
    assert_eq!(
        run(&browser, "return rungbook.store.all().goal"),
        "heavy-pull-up"
    );
    let on = run(&browser, "return document.activeElement.id");
    assert_eq!(on, "today-goal", "focus stays on the choice");
    let says = text(&browser, "#aim");
    browser.open(&format!("{base}where-i-stand.html"));
    browser.wait_until("document.getElementById('aim').checkVisibility()");
    assert_eq!(text(&browser, "#aim-says"), says);
    assert_eq!(run(&browser, UNMARKED), json!([]));
    // The weeks ahead are those of the same plan, the first one open.
    run(&browser, "document.getElementById('plan').open = true");
    browser.wait_until("document.querySelector('#plan-list details')");
    let weeks = "return [...document.querySelectorAll('#plan-list details')].map(e => [e.open, e.querySelectorAll('section').length])";
    assert_eq!(
        run(&browser, weeks),
        json!([[true, 3], [false, 3], [false, 3], [false, 3]])
    );
    fits(&browser);
    write_picture("today-stand.png", &browser.whole_picture(390));
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// Earlier days are changed and deleted; a change that is none is refused.
#[test]
fn the_log_is_changed_and_deleted() {
    let Some((browser, _)) = today() else {
        return;
    };
    let log = "return rungbook.store.all().trained.map(({ movement, did, with: load, in_reserve }) => [movement, did, load || '', in_reserve])";
    let button = |words: &str, n: usize| {
        browser.run(
            "[...document.querySelectorAll('#log button')].filter(b => b.textContent === arguments[0])[arguments[1]].click()",
            &json!([words, n]),
        );
    };
    button("Change", 0);
    let fill = |place: usize, says: &str| {
        browser.run(
            "document.querySelectorAll('.log-form input')[arguments[0]].value = arguments[1]",
            &json!([place, says]),
        );
    };
    fill(0, "5, five, 4");
    press_button(&browser, "Save the change");
    assert_ne!(text(&browser, ".log-form .fault"), "");
    fill(0, "5 5 4");
    fill(1, "2.5");
    fill(2, "1");
    press_button(&browser, "Save the change");
    browser.wait_until("!document.querySelector('.log-form')");
    assert_eq!(
        run(&browser, log),
        json!([
            ["pull-up", [5, 5, 7], "", 2],
            ["bar-dip", [6, 6, 8], "", 2],
            ["pull-up", [5, 5, 4], "2.5 kg", 1]
        ])
    );
    button("Delete", 0);
    assert_eq!(
        run(&browser, "return rungbook.store.all().trained.length"),
        2
    );
    assert_eq!(
        run(&browser, "return document.activeElement.id"),
        "log-head"
    );
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// "It hurt" from a line: the movement rests, is said on top, and stands on no card.
#[test]
fn it_hurt_stands_on_every_card() {
    let Some((browser, _)) = today() else {
        return;
    };
    let without = "return [...document.querySelectorAll('#sets article')].filter(e => !e.querySelector('.hurt')).length";
    assert_eq!(run(&browser, without), 0);
    click(
        &browser,
        "#sets article[data-movement=false-grip-hang] .hurt",
    );
    browser.wait_until("document.querySelector('dialog[open]')");
    // All of it can be reached: it is no higher than the screen, and scrolls.
    let within = "const { top, bottom } = document.querySelector('dialog[open]').getBoundingClientRect(); return top >= 0 && bottom <= innerHeight";
    assert_eq!(run(&browser, within), true);
    press_button(&browser, "Rest ");
    browser.wait_until("document.getElementById('rests-today').checkVisibility()");
    assert!(text(&browser, "#rests-today-list").contains("False-grip hang"));
    let cards = run(&browser, CARDS);
    assert!(
        !texts(&cards).contains(&"false-grip-hang".to_string()),
        "{cards}"
    );
    // Where it was not said where it hurt, all that the movement bears on rests, and so does what bears on that.
    let bears = "const { ids, stresses } = rungbook.states.model.tables, of = stresses[ids.indexOf('false-grip-hang')];
        return [of > 0, [...document.querySelectorAll('#sets article')].filter(e => stresses[ids.indexOf(e.dataset.movement)] & of).length]";
    assert_eq!(run(&browser, bears), json!([true, 0]));
    assert_eq!(run(&browser, UNMARKED), json!([]));
}

/// A sore part that does not rest is said on top, and no news names what bears on it.
#[test]
fn what_is_sore_is_said_and_is_no_news() {
    let Some((browser, _)) = today() else {
        return;
    };
    run(
        &browser,
        "rungbook.store.add('pain', { part: 'shoulder', score: 4, on: rungbook.results.dayText(rungbook.results.today()) })",
    );
    browser.wait_until("document.getElementById('rests-today').checkVisibility()");
    let said = text(&browser, "#rests-today-list");
    assert!(said.contains("4 of 10"), "{said}");
    let sore = "const { states } = rungbook, stand = states.mine(), { ids } = states.model.tables;
        return ['pull-up', 'single-leg-balance'].map(id => states.bearsOnSore(stand, ids.indexOf(id)))";
    assert_eq!(run(&browser, sore), json!([true, false]));
}

/// How hard the whole session was: refused beyond 10 and without minutes, kept, exported, taken back.
#[test]
fn the_whole_session_is_rated() {
    let Some((browser, base)) = today() else {
        return;
    };
    let sessions = "return (rungbook.store.all().sessions || []).map(({ effort, minutes }) => [effort, minutes])";
    let rate = |effort: &str, minutes: &str| {
        for (field, says) in [("#session-effort", effort), ("#session-minutes", minutes)] {
            let field = browser.find(field);
            browser.clear(&field);
            browser.write(&field, says);
        }
        click(&browser, "#session button");
        text(&browser, "#session-fault")
    };
    assert_ne!(rate("11", "45"), "");
    assert_ne!(rate("6", ""), "");
    assert_eq!(run(&browser, sessions), json!([]));
    assert_eq!(rate("6", "45"), "");
    assert_eq!(rate("0", "9"), "");
    assert_eq!(run(&browser, sessions), json!([[6, 45], [0, 9]]));
    click(&browser, "#after-list li:nth-child(2) button");
    assert_eq!(run(&browser, sessions), json!([[6, 45]]));
    browser.open(&format!("{base}where-i-stand.html"));
    // One day of 270 in seven: mean 38.57, deviation 94.48.
    browser.wait_until("document.getElementById('load').checkVisibility()");
    assert_eq!(
        text(&browser, "#load-says"),
        "Seven days, effort × minutes: 270; monotony 0.41, strain 110."
    );
}

/// What is touched is at least 44 px high (WCAG 2.2 asks for 24; 44 is its enhanced level, 2.5.5), text in running lines apart.
#[test]
fn what_is_touched_is_large_enough() {
    let Some((browser, _)) = today() else {
        return;
    };
    let small = "return [...document.querySelectorAll('#card button, #card select, #card input, #log button')].filter(e => e.checkVisibility()).map(e => [e, (e.type === 'checkbox' && e.closest('li') ? e.closest('li') : e).getBoundingClientRect()]).filter(([, at]) => at.height < 43.9 || at.width < 43.9).map(([e, at]) => `${e.id || e.textContent} ${at.width} x ${at.height}`)";
    assert_eq!(run(&browser, small), json!([]));
}

/// One A4 page with the goal, every line and its empty boxes.
#[test]
fn today_prints_on_one_sheet() {
    let Some((browser, _)) = today() else {
        return;
    };
    let cards = texts(&run(&browser, CARDS)).len();
    let boxes = "return [...document.querySelectorAll('#paper tbody tr')].map(row => row.querySelectorAll('.box').length)";
    let all = run(&browser, boxes);
    let all = all.as_array().expect("rows");
    assert_eq!(all.len(), cards);
    // A box for each set, and one for what was left.
    assert!(all.iter().all(|n| n.as_u64() >= Some(2)), "{all:?}");
    // When to stop stands there, once of each class that something of the session bears, and of no other.
    let signs = r"
        const { tables, numbers } = rungbook.states.model;
        const borne = new Set([...document.querySelectorAll('#paper tr[data-movement]')].flatMap(row => tables.cautions[numbers.get(row.dataset.movement)].map(i => tables.classes[i])));
        const said = [...document.querySelectorAll('.stop-signs [data-class]')].filter(sign => !sign.hidden && sign.textContent.length > 20).map(sign => sign.dataset.class);
        return [said.length, said.length === borne.size && said.every(one => borne.has(one))];";
    let signs = run(&browser, signs);
    assert!(
        signs[0].as_u64() > Some(2) && signs[1] == json!(true),
        "{signs}"
    );
    if !poppler() {
        return;
    }
    let printed = browser.cdp(
        "Page.printToPDF",
        &json!({ "preferCSSPageSize": true, "paperWidth": 8.27, "paperHeight": 11.69 }),
    );
    let file = root().join("target/shots/today.pdf");
    fs::create_dir_all(root().join("target/shots")).expect("a folder");
    fs::write(&file, base64(printed["data"].as_str().expect("a document"))).expect("a document");
    assert!(read("pdfinfo", &[], &file).contains("Pages:           1"));
    let words = read("pdftotext", &["-layout"], &file);
    for part in [
        "Strict ring muscle-up",
        "False-grip hang",
        "3 sets of 4 seconds",
        "Not medical advice",
    ] {
        assert!(words.contains(part), "{part}: {words}");
    }
}

/// What the browser offers is kept back until there is a session, shown once, and never again once it was answered.
#[test]
fn installing_is_offered_once_after_the_first_session() {
    let Some((browser, base)) = today() else {
        return;
    };
    let address = format!("{base}today.html");
    let offer = r"
        const event = new Event('beforeinstallprompt', { cancelable: true });
        event.prompt = () => { globalThis.prompted = (globalThis.prompted || 0) + 1; };
        globalThis.dispatchEvent(event);
        const place = document.getElementById('install');
        return [event.defaultPrevented, place.hidden, place.querySelectorAll('button').length];";
    run(&browser, "rungbook.store.erase()");
    browser.open(&address);
    assert_eq!(
        run(&browser, offer),
        json!([true, true, 0]),
        "no session yet"
    );
    let train = "rungbook.store.add('trained', { movement: rungbook.states.model.tables.ids[0], did: [5], on: rungbook.results.dayText(rungbook.results.today()) })";
    run(&browser, train);
    let shown = "return document.getElementById('install').hidden";
    assert_eq!(run(&browser, shown), json!(false), "after the first one");
    run(
        &browser,
        "document.querySelector('#install button').click()",
    );
    assert_eq!(
        run(
            &browser,
            "return [globalThis.prompted, document.getElementById('install').hidden]"
        ),
        json!([1, true])
    );
    run(&browser, train);
    browser.open(&address);
    assert_eq!(
        run(&browser, offer),
        json!([true, true, 0]),
        "it was answered"
    );
}
