//! A client's way: how many touches and words it takes, a goal's pages kept whole, an angle and a hold from one's own picture, and
//! nothing out of reach in any state.

use super::reach::Looks;
use super::serve::Server;
use super::webdriver::Browser;
use super::{disk, root, site, texts};
use serde_json::{Value, json};
use std::process::Command;

/// What each way may take; none of them is from outside: they are what the school asks of its site.
const MOST: [(&str, u64, u64); 5] = [
    ("beginner", 15, 900),
    ("numbers", 15, 1000),
    ("shoulder", 3, 560),
    ("best", 3, 360),
    ("copy", 4, 400),
];

fn run(browser: &Browser, script: &str) -> Value {
    browser.run(script, &json!([]))
}

/// From home: a first session, what holds a goal back, a part that rests, a new best without a network, the copy on its way. Each
/// gets there, and no longer than it may be. The numbers are printed: `-- --nocapture`.
#[test]
fn the_ways_of_a_client_are_short() {
    let Some((driver, browser)) = Browser::installed() else {
        return;
    };
    let done = Command::new("node")
        .arg(root().join("tests/page/journeys.js"))
        .arg(site())
        .env("CHROMEDRIVER", driver)
        .env("CHROMIUM", browser)
        .output();
    let Ok(done) = done else {
        assert!(
            std::env::var("CI").as_deref() != Ok("true"),
            "node is not installed"
        );
        eprintln!("SKIPPED: node is not installed");
        return;
    };
    let said = String::from_utf8_lossy(&done.stdout);
    println!("{said}");
    let of: Value = serde_json::from_str(said.trim()).expect("a line of JSON");
    for (way, touches, words) in MOST {
        let of = &of[way];
        assert_eq!(of["reached"], true, "{way}: {of}");
        assert!(
            of["touches"].as_u64().is_some_and(|n| n <= touches),
            "{way}: {of}"
        );
        assert!(
            of["words"].as_u64().is_some_and(|n| n <= words),
            "{way}: {of}"
        );
    }
}

/// Once a goal is chosen every page of its chain is there without a network, itself and no other; a page outside says that it is not.
#[test]
fn a_chosen_goal_is_kept_whole() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let server = Server::start(&site());
    let base = server.base();
    browser.open(&format!("{base}self-test-heavy-pull-up.html"));
    run(
        &browser,
        "rungbook.store.put('screened', { says: 'clear', on: rungbook.results.dayText(rungbook.results.today()) })",
    );
    browser.open(&format!("{base}index.html"));
    super::flow::click(&browser, "a[href='self-test-heavy-pull-up.html#goal']");
    browser.wait_until("globalThis.rungbook && rungbook.store && rungbook.store.facts().goal");
    assert_eq!(
        run(&browser, "return rungbook.store.facts().goal"),
        "heavy-pull-up"
    );
    let chain = texts(&run(
        &browser,
        "const { tables } = rungbook.states.model; return tables.skills.find(({ id }) => id === 'heavy-pull-up').members.map(m => tables.ids[m])",
    ));
    assert!(chain.len() > 10, "{chain:?}");
    let kept = r"
        const done = arguments[arguments.length - 1], ids = arguments[0], end = Date.now() + 20000;
        const look = async () => {
            const found = await Promise.all(ids.map(id => caches.match(new URL(`${id}.html`, location.href).href)));
            const missing = ids.filter((_, i) => !found[i]);
            if (!missing.length || Date.now() > end) done(missing); else setTimeout(look, 200);
        };
        look();";
    assert_eq!(
        browser.run_async(kept, &json!([chain])),
        json!([]),
        "every page of the chain is kept"
    );
    drop(server);
    for id in &chain {
        browser.open(&format!("{base}{id}.html"));
        let here = run(
            &browser,
            "return [document.querySelector('main').dataset.movement, Boolean(document.querySelector('.kept-from'))]",
        );
        assert_eq!(here, json!([id, true]));
    }
    browser.open(&format!("{base}freestanding-handstand.html"));
    let lost = run(
        &browser,
        "return [Boolean(document.querySelector('main').dataset.movement), document.querySelector('h1').textContent]",
    );
    assert_eq!(lost, json!([false, "This page is not on this device"]));
}

/// Hands a file that the page itself makes to the measuring, as if it were chosen.
const GIVE: &str = r"
    const give = (blob, name) => {
        const all = new DataTransfer(), input = document.getElementById('angle-file');
        all.items.add(new File([blob], name, { type: blob.type }));
        input.files = all.files;
        input.dispatchEvent(new Event('change'));
    };";

/// A touch at a place of the picture, given in its own pixels, on the whole pixel of the screen that is nearest.
fn touch(browser: &Browser, x: f64, y: f64) {
    let at = browser.run(
        r"const c = document.querySelector('.measured');
        c.scrollIntoView({ block: 'center' });
        const box = c.getBoundingClientRect(), scale = box.width / c.width;
        return [Math.round(box.left + arguments[0] * scale), Math.round(box.top + arguments[1] * scale)];",
        &json!([x, y]),
    );
    for kind in ["mousePressed", "mouseReleased"] {
        browser.cdp(
            "Input.dispatchMouseEvent",
            &json!({ "type": kind, "x": at[0], "y": at[1], "button": "left", "clickCount": 1 }),
        );
    }
}

/// The measuring of a movement's own page, opened from disk.
fn measuring(page: &str) -> Option<Browser> {
    let browser = Browser::start()?;
    browser.width(390);
    let base = disk(&site());
    browser.open(&format!("{base}self-test.html"));
    run(
        &browser,
        "rungbook.store.put('screened', { says: 'clear', on: rungbook.results.dayText(rungbook.results.today()) })",
    );
    browser.open(&format!("{base}{page}.html"));
    super::flow::press_button(&browser, "Enter your number");
    browser.wait_until("document.querySelector('#number-form input')");
    super::flow::press_button(&browser, "From a ");
    browser.wait_until("document.getElementById('angle-file')");
    Some(browser)
}

/// The number that stands in words, and how far it may be off.
fn said(browser: &Browser) -> (f64, f64) {
    let text = run(
        browser,
        "return document.querySelector('.measured-says').textContent",
    );
    let text = text.as_str().expect("text");
    let mut numbers = text
        .split(|c: char| !c.is_ascii_digit() && c != '.')
        .filter_map(|part| part.parse::<f64>().ok());
    (
        numbers
            .next()
            .unwrap_or_else(|| panic!("no number: {text}")),
        numbers.next().unwrap_or_else(|| panic!("no doubt: {text}")),
    )
}

/// Three touches on pictures whose angle is known, drawn in many directions and sizes: off by at most one degree, and by no more than
/// is said; the number goes into the field.
#[test]
fn an_angle_is_measured_in_ones_own_picture() {
    let Some(browser) = measuring("wrist-extension-reach") else {
        return;
    };
    let draw = format!(
        r"{GIVE}
        const [done, [turn, angle, wide, high]] = [arguments[arguments.length - 1], arguments[0]];
        const c = document.createElement('canvas'), pen = c.getContext('2d'), arm = 0.38 * Math.min(wide, high);
        Object.assign(c, {{ width: wide, height: high }});
        pen.fillStyle = '#ccc';
        pen.fillRect(0, 0, wide, high);
        const joint = [wide / 2, high / 2], end = of => [joint[0] + arm * Math.cos(of * Math.PI / 180), joint[1] + arm * Math.sin(of * Math.PI / 180)];
        const all = [end(turn), joint, end(turn + angle)];
        pen.lineWidth = 12;
        pen.beginPath();
        all.forEach(p => pen.lineTo(...p));
        pen.stroke();
        c.toBlob(blob => {{ give(blob, 'mine.png'); const wait = () => document.querySelector('.measured').width === wide ? done(all) : setTimeout(wait, 30); wait(); }}, 'image/png');"
    );
    let mut worst: f64 = 0.0;
    for (i, angle) in [
        12.0, 30.0, 45.5, 60.0, 74.0, 90.0, 118.0, 135.0, 160.0, 175.0,
    ]
    .into_iter()
    .enumerate()
    {
        let turn = 37.0 * f64::from(u32::try_from(i).expect("small"));
        let (wide, high) = if i % 2 == 0 { (1200, 900) } else { (900, 1300) };
        let all = browser.run_async(&draw, &json!([[turn, angle, wide, high]]));
        for point in all.as_array().expect("points") {
            touch(
                &browser,
                point[0].as_f64().expect("x"),
                point[1].as_f64().expect("y"),
            );
        }
        let (got, off) = said(&browser);
        worst = worst.max((got - angle).abs());
        assert!((got - angle).abs() <= 1.0, "{angle}: measured {got}");
        assert!(
            (got - angle).abs() <= off + 0.1,
            "{angle}: measured {got}, give or take {off}"
        );
        assert!(off <= 3.0, "{angle}: give or take {off}");
    }
    println!("worst angle off by {worst:.2} degrees");
    // A key moves a point by a pixel; the number goes into the field, and nothing of the picture is kept.
    let before = said(&browser).0;
    run(&browser, "document.getElementById('angle-point-0').focus()");
    for _ in 0..40 {
        browser.press('\u{e015}');
    }
    assert!((said(&browser).0 - before).abs() > 1.0, "{before}");
    let got = said(&browser).0;
    super::flow::press_button(&browser, "Take this number");
    let field = run(
        &browser,
        "return [document.querySelector('#number-form input').value, document.querySelector('#number-form .hint').textContent, document.activeElement.tagName]",
    );
    assert_eq!(field[0], format!("{}", got.floor()));
    assert!(
        field[1]
            .as_str()
            .is_some_and(|t| t.contains("give or take")),
        "{field}"
    );
    assert_eq!(field[2], "INPUT");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// A known length in the picture gives any other one.
#[test]
fn a_length_is_measured_by_a_known_one() {
    let Some(browser) = measuring("overhead-reach-on-back") else {
        return;
    };
    let draw = format!(
        r"{GIVE}
        const done = arguments[arguments.length - 1], c = Object.assign(document.createElement('canvas'), {{ width: 1000, height: 800 }}), pen = c.getContext('2d');
        pen.fillRect(0, 0, 10, 10);
        c.toBlob(blob => {{ give(blob, 'mine.png'); const wait = () => document.querySelector('.measured').width === 1000 ? done(true) : setTimeout(wait, 30); wait(); }}, 'image/png');"
    );
    browser.run_async(&draw, &json!([]));
    browser.write(&browser.find("#angle-known"), "30");
    // 600 pixels are 30 cm; what is measured is 260 pixels long.
    for (x, y) in [
        (100.0, 700.0),
        (700.0, 700.0),
        (300.0, 200.0),
        (400.0, 440.0),
    ] {
        touch(&browser, x, y);
    }
    let (got, off) = said(&browser);
    assert!(
        (got - 13.0).abs() <= 0.4 && (got - 13.0).abs() <= off + 0.1,
        "{got}, give or take {off}"
    );
}

/// A clip is stepped through, and its two marks give the seconds between them.
#[test]
fn a_hold_is_measured_in_ones_own_clip() {
    let Some(browser) = measuring("dead-hang") else {
        return;
    };
    let film = format!(
        r"{GIVE}
        const done = arguments[arguments.length - 1], c = Object.assign(document.createElement('canvas'), {{ width: 160, height: 120 }}), pen = c.getContext('2d');
        let n = 0;
        const paint = setInterval(() => {{ n += 1; pen.fillStyle = n % 2 ? '#333' : '#ddd'; pen.fillRect(0, 0, 160, 120); }}, 40);
        const film = new MediaRecorder(c.captureStream(25)), parts = [];
        film.ondataavailable = e => parts.push(e.data);
        film.onstop = () => {{ clearInterval(paint); give(new Blob(parts, {{ type: 'video/webm' }}), 'mine.webm'); const wait = () => document.querySelector('.measured').width === 160 ? done(true) : setTimeout(wait, 50); wait(); }};
        film.start();
        setTimeout(() => film.stop(), 3500);"
    );
    browser.run_async(&film, &json!([]));
    super::flow::press_button(&browser, "The hold begins here");
    for _ in 0..2 {
        super::flow::press_button(&browser, "1 s on");
        std::thread::sleep(std::time::Duration::from_millis(400));
    }
    super::flow::press_button(&browser, "It ends here");
    let (got, _) = said(&browser);
    assert!((got - 2.0).abs() <= 0.1, "{got}");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// axe-core finds nothing on a client's pages in the states between those of every page kind, and the focus never falls to the whole
/// page when a list is drawn anew.
#[test]
fn no_state_is_out_of_reach() {
    let (Some(mut looks), Some(browser)) = (Looks::new(), Browser::start()) else {
        return;
    };
    browser.width(390);
    let server = Server::start(&site());
    let base = server.base();
    let states = [
        (
            "a goal alone",
            "rungbook.store.put('screened', { says: 'clear', on }); rungbook.store.put('goal', 'one-leg-to-the-floor')",
        ),
        (
            "a session done",
            "rungbook.store.addAll([['tested', { movement: 'squat', got: '25 reps', on: day(9) }], ['tested', { movement: 'squat', got: '27 reps', on }], ['trained', { movement: 'split-squat', did: [5, 5], on }]])",
        ),
    ];
    let pages = [
        "index",
        "self-test-one-leg-to-the-floor",
        "where-i-stand",
        "today",
        "if-it-hurts",
        "before-you-start",
        "squat",
    ];
    let mut faults = Vec::new();
    for (state, make) in states {
        browser.open(&format!("{base}today.html"));
        run(
            &browser,
            &format!(
                "const {{ dayText, today }} = rungbook.results, on = dayText(today()), day = n => dayText(today() - n); {make}"
            ),
        );
        for page in pages {
            browser.open(&format!("{base}{page}.html"));
            let found = looks.at(&browser);
            faults.extend(found.into_iter().map(|f| format!("{page}, {state}: {f}")));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    // What is taken back, lifted or deleted leaves the focus on something, without a network too.
    run(
        &browser,
        r"const { store, results } = rungbook, day = n => results.dayText(results.today() - n);
        store.add('paused', { part: 'knee', on: day(0), by: 'client', because: 'it hurts' });
        store.add('pain', { part: 'wrist', score: 4, on: day(1) })",
    );
    drop(server);
    for (page, selector) in [
        ("where-i-stand", "#history-list button"),
        ("where-i-stand", "#rests-list button"),
        ("today", "#log-list button:last-of-type"),
        ("if-it-hurts", "#pain-list button:last-of-type"),
    ] {
        browser.open(&format!("{base}{page}.html"));
        browser.wait_until(&format!("document.querySelector('{selector}')"));
        let held = browser.run(
            "const b = document.querySelector(arguments[0]); if (!b) return 'nothing to press'; b.focus(); b.click(); return document.activeElement === document.body ? 'the whole page' : ''",
            &json!([selector]),
        );
        assert_eq!(held, "", "{page}: {selector}");
    }
}
