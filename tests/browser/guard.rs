//! Style sheets that hide caution marks, and the guard that keeps them: each trick in a real browser, in the light and in the dark.

use super::disk;
use super::serve::Server;
use super::webdriver::Browser;
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::thread;
use std::time::Duration;

const LOOK: &str = include_str!("guard/look.js");
const TRICKS: &str = include_str!("guard/tricks.css");

const WAYS_ROUND: &str = include_str!("guard/ways_round.json");

fn run(args: &[&str]) -> String {
    let done = Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(args)
        .output()
        .expect("it runs");
    let said = String::from_utf8_lossy(&done.stderr).into_owned();
    assert!(done.status.success(), "{said}");
    said
}

/// The curriculum that `start` writes, published: its folder.
fn published(folder: &Path) -> PathBuf {
    let content = folder.join("c");
    let dir = content.to_str().expect("a name").to_string();
    run(&["start", &dir]);
    run(&["publish", "--from", &dir]);
    content
}

/// Names of tricks and their sheets.
fn tricks() -> Vec<(&'static str, &'static str)> {
    let parts = TRICKS.split("/*# ").skip(1);
    parts.filter_map(|part| part.split_once(" */\n")).collect()
}

fn dark(browser: &Browser, is: bool) {
    let value = if is { "dark" } else { "light" };
    let features = json!([{ "name": "prefers-color-scheme", "value": value }]);
    browser.cdp(
        "Emulation.setEmulatedMedia",
        &json!({ "features": features }),
    );
}

/// Pages that have a cautioned movement's boxes, and names with marks.
fn pages_with_marks(site: &Path) -> Vec<String> {
    let of = |what: &str| {
        let mut pages: Vec<String> = fs::read_dir(site)
            .expect("the site")
            .filter_map(|e| e.expect("an entry").file_name().into_string().ok())
            .filter(|name| name.ends_with(".html") && !PAGES_LEFT_OUT.contains(&name.as_str()))
            .filter(|name| {
                fs::read_to_string(site.join(name))
                    .expect("a page")
                    .contains(what)
            })
            .collect();
        pages.sort();
        pages
    };
    let first = |pages: Vec<String>| pages.into_iter().next().expect("there is one");
    vec![
        first(of("<section id=\"cautions\"")),
        first(of("data-skill=")),
    ]
}

const PAGES_LEFT_OUT: [&str; 2] = ["cautions.html", "booklet.html"];

#[test]
fn no_style_sheet_takes_a_mark_out_of_sight() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    let site = published(folder.path()).join("site");
    let pages = pages_with_marks(&site);
    for page in &pages {
        let path = site.join(page);
        let html = fs::read_to_string(&path).expect("a page");
        let link = "<link rel=\"stylesheet\" href=\"theme/trick.css\"></head>";
        fs::write(&path, html.replacen("</head>", link, 1)).expect("a page");
    }
    let base = disk(&site);
    browser.width(1000);
    let mut faults = Vec::new();
    let tricks = tricks();
    assert!(tricks.len() >= 40, "{}", tricks.len());
    // Without a trick nothing is wrong; without the guard, the tricks work.
    for (name, sheet) in [("none", "")].into_iter().chain(tricks) {
        fs::write(site.join("theme/trick.css"), sheet).expect("a sheet");
        for page in &pages {
            browser.open(&format!("{base}{page}"));
            for is_dark in [false, true] {
                dark(&browser, is_dark);
                let found = browser.run(LOOK, &json!([]));
                assert!(
                    found["marks"].as_u64() > Some(0) || found["boxes"].as_u64() > Some(0),
                    "{page}: {found}"
                );
                if found["faults"] != json!([]) {
                    faults.push(format!(
                        "{name}, {page}, dark {is_dark}: {}",
                        found["faults"]
                    ));
                }
                if name == "none" {
                    assert_eq!(found["said"], json!(false), "{page}");
                }
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    let sheet = site.join("guard.css");
    fs::write(&sheet, "").expect("a sheet");
    fs::write(site.join("theme/trick.css"), ".mark { opacity: 0 }").expect("a sheet");
    browser.open(&format!("{base}{}", pages[0]));
    browser.wait_until("document.getElementById('guard-gone')");
    assert_ne!(
        browser.run(LOOK, &json!([]))["faults"],
        json!([]),
        "the looking finds what is hidden"
    );
}

/// A theme's script that removes marks, or puts a bare name: the page says so.
#[test]
fn a_script_that_takes_marks_away_is_told() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    let site = published(folder.path()).join("site");
    let page = pages_with_marks(&site).remove(0);
    let path = site.join(&page);
    let html = fs::read_to_string(&path).expect("a page");
    let link = "<script defer src=\"theme/trick.js\"></script></head>";
    fs::write(&path, html.replacen("</head>", link, 1)).expect("a page");
    let base = disk(&site);
    let one = "document.querySelector('h1 [data-caution]')";
    for script in [
        format!("{one}.remove();"),
        format!("setTimeout(() => {one}.remove(), 1500);"),
        format!("{one}.style.setProperty('display', 'none', 'important');"),
        format!("{one}.style.setProperty('margin-left', '-9999px', 'important');"),
        format!(
            "{one}.replaceWith(Object.assign(document.createElement('i'), {{ textContent: 'safe' }}));"
        ),
        format!(
            "{one}.style.setProperty('font-size', '1px', 'important'); {one}.style.setProperty('min-width', '0', 'important'); {one}.style.setProperty('min-height', '0', 'important'); {one}.style.setProperty('padding', '0', 'important'); {one}.style.setProperty('border', '0', 'important');"
        ),
    ] {
        fs::write(site.join("theme/trick.js"), &script).expect("a script");
        browser.open(&format!("{base}{page}"));
        browser.wait_until("document.getElementById('guard-gone')");
        let text = browser.run(
            "return document.getElementById('guard-gone').innerText",
            &json!([]),
        );
        assert!(
            text.as_str().is_some_and(|t| t.contains("caution mark")),
            "{text}"
        );
    }
    fs::write(site.join("theme/trick.js"), "document.title;").expect("a script");
    browser.open(&format!("{base}{page}"));
    thread::sleep(Duration::from_millis(2500));
    assert_eq!(
        browser.run(
            "return document.getElementById('guard-gone') === null",
            &json!([])
        ),
        json!(true)
    );
}

/// Every shipped page as it is: the guard has nothing to say.
#[test]
fn the_guard_is_silent_on_the_shipped_pages() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    let site = published(folder.path()).join("site");
    let base = disk(&site);
    let mut pages: Vec<String> = fs::read_dir(&site)
        .expect("the site")
        .filter_map(|e| e.expect("an entry").file_name().into_string().ok())
        .filter(|name| name.ends_with(".html") && name != "404.html")
        .collect();
    pages.sort();
    for page in pages {
        browser.width(390);
        browser.open(&format!("{base}{page}"));
        browser.wait_until("document.readyState === 'complete'");
        thread::sleep(Duration::from_millis(100));
        let said = browser.run(
            "const e = document.querySelector('.guard-gone'); return e ? e.innerText : ''",
            &json!([]),
        );
        assert_eq!(said, json!(""), "{page}");
    }
}

/// A host that answers `/x.html` by leading to `/x`: every page is reached again, with and without network.
#[test]
fn a_host_that_leads_to_addresses_without_their_ending() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    let site = published(folder.path()).join("site");
    let server = Server::start_leading(&site);
    let base = server.base();
    let heading = "return (document.querySelector('h1') || {}).innerText || ''";
    browser.open(&format!("{base}if-it-hurts.html"));
    let first = browser.run(heading, &json!([]));
    browser.wait_until("navigator.serviceWorker.controller");
    for address in [
        "if-it-hurts.html",
        "if-it-hurts",
        "if-it-hurts.html",
        "cautions.html",
        "cautions",
        "",
    ] {
        browser.open(&format!("{base}{address}"));
        let seen = browser.run(heading, &json!([]));
        assert_ne!(seen, json!(""), "{address}: {}", browser.address());
        if address.starts_with("if-it") {
            assert_eq!(seen, first, "{address}");
        }
    }
    let kept = "(() => { caches.match('if-it-hurts.html').then(k => { globalThis.kept = Boolean(k); }); return globalThis.kept; })()";
    browser.wait_until(kept);
    drop(server);
    for address in ["if-it-hurts.html", "if-it-hurts"] {
        browser.open(&format!("{base}{address}"));
        assert_eq!(
            browser.run(heading, &json!([])),
            first,
            "{address} without network"
        );
    }
    browser.open(&format!("{base}data.html"));
    let text = browser.run("return document.body.innerText", &json!([]));
    assert!(
        text.as_str()
            .is_some_and(|t| t.contains("not on this device")),
        "{text}"
    );
}

/// A caution that changed is seen as soon as the network brings it; a copy says of which day it is.
#[test]
fn an_old_caution_does_not_stay() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    let content = published(folder.path());
    let dir = content.to_str().expect("a name");
    let server = Server::start(&content.join("site"));
    let base = server.base();
    let text = |browser: &Browser| {
        let said = browser.run(
            "return document.querySelector('main').innerText",
            &json!([]),
        );
        said.as_str().unwrap_or_default().to_string()
    };
    browser.open(&format!("{base}cautions.html?v=1"));
    browser.wait_until("navigator.serviceWorker.controller");
    browser.open(&format!("{base}cautions.html?v=1"));
    let worker = fs::read_to_string(content.join("site/worker.js")).expect("the worker");
    let words = content.join("content/words");
    fs::create_dir_all(&words).expect("a folder");
    let changed = "caution:\n  inverted:\n    happens: Something new that can happen.\n";
    fs::write(words.join("en.yaml"), changed).expect("words");
    run(&["publish", "--from", dir]);
    assert_ne!(
        worker,
        fs::read_to_string(content.join("site/worker.js")).expect("the worker"),
        "the version covers every page"
    );
    browser.open(&format!("{base}cautions.html?v=1"));
    assert!(
        text(&browser).contains("Something new"),
        "from the network first"
    );
    // The worker of this publish takes over before the next one is made.
    browser.run(
        "return navigator.serviceWorker.getRegistration().then((found) => found.update()).then(() => true)",
        &json!([]),
    );
    browser.wait_until(
        "navigator.serviceWorker.getRegistration().then((found) => found.active && found.active.state === 'activated' && !found.installing && !found.waiting)",
    );
    // A slow host: after a short wait the copy, with its day; the next visit has what came meanwhile.
    fs::write(words.join("en.yaml"), changed.replace("new", "newer")).expect("words");
    run(&["publish", "--from", dir]);
    server.slow(Duration::from_secs(5));
    browser.open(&format!("{base}cautions.html"));
    let first = text(&browser);
    assert!(
        first.contains("The network did not answer. This is the copy of "),
        "{first}"
    );
    assert!(first.contains("Something new "), "{first}");
    thread::sleep(Duration::from_secs(12));
    browser.open(&format!("{base}cautions.html"));
    let second = text(&browser);
    assert!(second.contains("Something newer"), "{second}");
}

/// A half-finished upload: new pages, old scripts. The page says so, the worker keeps nothing of it.
#[test]
fn a_script_of_another_version_is_told_and_not_kept() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    let site = published(folder.path()).join("site");
    let script = site.join("theme/page.js");
    let right = fs::read_to_string(&script).expect("a script");
    let (_, rest) = right
        .split_once('\n')
        .expect("its first line says its version");
    let old = format!("'use strict';self.rungbookIs+=\"page.js=00000000 \";\n{rest}");
    fs::write(&script, old).expect("a script");
    let server = Server::start(&site);
    let page = format!("{}cautions.html", server.base());
    browser.open(&page);
    browser.wait_until("document.getElementById('mixed')");
    thread::sleep(Duration::from_secs(2));
    let kept = browser.run_async(
        "const done = arguments[arguments.length - 1]; caches.match('cautions.html').then(k => done(Boolean(k)));",
        &json!([]),
    );
    assert_eq!(kept, Value::Bool(false));
    fs::write(&script, right).expect("a script");
    browser.open(&page);
    browser.wait_until("document.readyState === 'complete' && globalThis.rungbook");
    thread::sleep(Duration::from_millis(300));
    assert_eq!(
        browser.run(
            "return document.getElementById('mixed') === null",
            &json!([])
        ),
        json!(true)
    );
}

/// The links that the audit takes for a movement's lead there in a browser too, and the names read as its name: the address and
/// the letters that nobody sees are the browser's own (URL standard; Default_Ignorable_Code_Point of Unicode).
#[test]
fn the_audit_reads_links_and_names_as_the_browser_does() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.open("about:blank");
    let ways: Value = serde_json::from_str(WAYS_ROUND).expect("JSON");
    let wrong = browser.run(include_str!("guard/ways_round.js"), &json!([ways]));
    assert_eq!(wrong, json!([]));
}
