//! What a reader sees first: quiet marks, the length of pages on a phone, what stands in the margin of a wide screen, and what a browser's
//! own search finds in folds.

use super::serve::Server;
use super::webdriver::Browser;
use super::{disk, site};
use serde_json::{Value, json};

fn run(browser: &Browser, script: &str) -> Value {
    browser.run(script, &json!([]))
}

/// Marks of lists: how large, how many places they stand at from the start of their row, and what is said of each.
const LISTED: &str = r"
    const marks = [...document.querySelectorAll(arguments[0])].filter(m => m.checkVisibility());
    const seen = m => { const { width, height } = m.querySelector('.mark-word').getBoundingClientRect(); return width > 2 && height > 2; };
    const round = n => Math.round(n * 2) / 2;
    return { count: marks.length, words: marks.filter(seen).length, mute: marks.filter(m => !/: ./.test(m.textContent)).length,
        small: marks.filter(m => { const b = m.getBoundingClientRect(); return b.width < 23.9 || b.width > 24.1 || b.height < 23.9 || b.height > 24.1; }).length,
        places: new Set(marks.map(m => round(m.getBoundingClientRect().left - m.closest('li').getBoundingClientRect().left))).size,
        shapes: new Set(marks.map(m => getComputedStyle(m, '::before').content + getComputedStyle(m).borderRadius + getComputedStyle(m).borderStyle)).size,
        signals: new Set(marks.map(m => m.dataset.caution)).size };";

/// In a list a mark is one sign under the other, large enough to touch, told by its shape and its letters, its words for readers alone. Where
/// a movement is opened, tested or trained it says its word.
#[test]
fn marks_in_lists_are_quiet_and_under_one_another() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    for width in [390, 1440] {
        browser.width(width);
        browser.open(&format!("{base}movements.html"));
        let found = browser.run(LISTED, &json!([".roll .mark"]));
        assert!(found["count"].as_u64() > Some(90), "{found}");
        for none in ["words", "mute", "small"] {
            assert_eq!(found[none], json!(0), "{none}: {found}");
        }
        assert_eq!(found["places"], json!(1), "{found}");
        assert_eq!(found["signals"], json!(3), "{found}");
        assert_eq!(found["shapes"], json!(3), "{found}");
        for (page, head) in [
            ("pull-up", "h1 .mark"),
            ("self-test-heavy-dip", "#test-bar-dip h3 .mark"),
        ] {
            browser.open(&format!("{base}{page}.html"));
            let word = format!(
                "document.querySelectorAll('#sheet > details').forEach(d => {{ d.open = true; }}); const b = document.querySelector('{head} .mark-word').getBoundingClientRect(); return b.width > 30 && b.height > 7"
            );
            assert_eq!(run(&browser, &word), json!(true), "{page} at {width}");
        }
    }
}

/// On a phone a skill is at most 6,000 pixels long while its map is folded, the cautions of all classes at most 11,500; a skill's self-test
/// and the equipment are folded by part.
#[test]
fn long_pages_are_bounded_on_a_phone() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    browser.width(390);
    for (page, most) in [
        ("balance-on-hands", 6000),
        ("heavy-dip", 6000),
        ("heavy-pull-up", 6000),
        ("level-front-lever", 6000),
        ("lift-and-carry", 6000),
        ("one-leg-to-the-floor", 6000),
        ("strict-ring-muscle-up", 6000),
        ("cautions", 11_500),
        ("self-test-strict-ring-muscle-up", 2500),
        ("equipment", 5500),
    ] {
        browser.open(&format!("{base}{page}.html"));
        let tall = run(
            &browser,
            "const map = document.getElementById('map-box'); return [document.documentElement.scrollHeight, Boolean(map && map.open)]",
        );
        assert!(tall[0].as_i64() <= Some(most), "{page}: {tall}");
        assert_eq!(tall[1], json!(false), "{page}");
    }
}

/// A wide screen has what belongs to a text beside it, in the order in which it is read.
#[test]
fn the_margin_of_a_wide_screen_is_used() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    browser.width(1440);
    browser.open(&format!("{base}today.html"));
    run(
        &browser,
        r"
        const { store, results } = rungbook, day = n => results.dayText(results.today() - n);
        store.put('screened', { says: 'clear', on: day(0) });
        store.put('born', 1990);
        store.put('goal', 'strict-ring-muscle-up');
        store.add('tested', { movement: 'pull-up', got: '9 reps', on: day(40) });
        store.add('tested', { movement: 'bar-dip', got: '8 reps', on: day(9) });",
    );
    for (page, left, right) in [
        (
            "self-test-strict-ring-muscle-up",
            "#test-pull-up .method",
            "#test-pull-up .answer",
        ),
        ("self-test-strict-ring-muscle-up", "#guided", ".whole-sheet"),
        ("self-test", ".chooses", ".how-to"),
        ("where-i-stand", "#aim", "#changed"),
        ("today", "#aim", "#warm"),
        ("pull-up", ".anchors", ".posture"),
        ("strict-ring-muscle-up", ".opening-head", ".opening-side"),
    ] {
        browser.open(&format!("{base}{page}.html"));
        browser.wait_until(&format!("document.querySelector('{right}')"));
        let look = format!(
            "document.querySelectorAll('#sheet > details').forEach(d => {{ d.open = true; }}); const a = document.querySelector('{left}').getBoundingClientRect(), b = document.querySelector('{right}').getBoundingClientRect(); return [a.width > 100 && b.width > 200, b.left >= a.right, b.top < a.bottom]"
        );
        assert_eq!(
            run(&browser, &look),
            json!([true, true, true]),
            "{page}: {right} beside {left}"
        );
    }
}

/// What the browser looks for in a page is found in a closed fold, and the fold opens.
#[test]
fn what_is_folded_is_found() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let server = Server::start(&site());
    for (page, words, fold) in [
        ("cautions", "Clear two metres around you", ".class details"),
        (
            "pull-up",
            "Hands can slip and the body drops",
            "section[data-caution] details",
        ),
        ("faults", "aim the collarbones at the bar", "details.folded"),
    ] {
        browser.open(&format!("{}{page}.html", server.base()));
        let there =
            format!("return [...document.querySelectorAll('{fold}')].filter(d => d.open).length");
        assert_eq!(run(&browser, &there), json!(0), "{page}");
        let words = words.replace(' ', "%20").replace(',', "%2C");
        browser.open(&format!(
            "{}{page}.html?again#:~:text={words}",
            server.base()
        ));
        browser.wait_until(&format!(
            "[...document.querySelectorAll('{fold}')].filter(d => d.open).length === 1"
        ));
    }
}

/// If it hurts: every part is a word of its own, large enough to touch, and a touch on a part of the drawing chooses that word.
#[test]
fn a_touch_on_the_body_is_one_on_its_word() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let server = Server::start(&site());
    browser.width(390);
    browser.open(&format!("{}if-it-hurts.html", server.base()));
    browser.wait_until("!document.getElementById('pain').hidden");
    let found = run(
        &browser,
        r"
        const words = [...document.querySelectorAll('#pain-part .chip')], dots = [...document.querySelectorAll('.body-drawn [data-at]')];
        const drawn = document.querySelector('.body-drawn'), whole = drawn.getBoundingClientRect();
        const touch = (clientX, clientY) => {
            document.querySelectorAll('#pain-part :checked').forEach(box => { box.checked = false; });
            drawn.dispatchEvent(new MouseEvent('click', { bubbles: true, clientX, clientY }));
            return document.querySelector('#pain-part :checked')?.value ?? null;
        };
        // On either side of the body.
        const missed = dots.flatMap(dot => {
            const { x, y, width, height } = dot.getBoundingClientRect(), across = x + width / 2, down = y + height / 2;
            return [touch(across, down), touch(2 * whole.x + whole.width - across, down)].map(got => got === dot.dataset.at ? null : dot.dataset.at);
        });
        const beside = touch(whole.x + 2, whole.y + whole.height - 2);
        return { words: words.length, dots: dots.length, missed: missed.filter(Boolean), beside,
            small: words.filter(w => w.getBoundingClientRect().height < 44 || w.getBoundingClientRect().width < 44).length };",
    );
    assert_eq!(found["words"], found["dots"], "{found}");
    assert!(found["dots"].as_u64() > Some(5), "{found}");
    assert_eq!(found["missed"], json!([]), "{found}");
    assert_eq!(found["beside"], json!(null), "{found}");
    assert_eq!(found["small"], json!(0), "{found}");
}

/// On a wide screen the goals of home stand on one ground, the one with more rungs under it higher.
#[test]
fn goals_stand_on_one_ground() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    browser.width(1440);
    browser.open(&format!("{base}index.html"));
    let found = run(
        &browser,
        r"
        const draws = [...document.querySelectorAll('.skill-draw')].map(d => [d.getBoundingClientRect().bottom, d.querySelector('.rungs-goal').getBoundingClientRect().top]);
        return { count: draws.length, grounds: new Set(draws.map(d => Math.round(d[0]))).size, rises: draws.every((d, i) => i === 0 || d[1] <= draws[i - 1][1]) };",
    );
    assert!(found["count"].as_u64() > Some(2), "{found}");
    assert_eq!(found["grounds"], json!(1), "{found}");
    assert_eq!(found["rises"], json!(true), "{found}");
}
