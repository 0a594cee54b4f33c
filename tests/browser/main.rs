//! The written example site in a real browser: from disk and over loopback, on a phone's width and a desk's.
//!
//! Needs chromium and chromedriver, and for a second engine WebKitWebDriver and Xvfb. Where they are missing the tests say so
//! and pass, except under `CI=true`.

mod access;
mod asked;
mod barred;
mod booklet;
mod class;
mod client;
mod face;
mod flow;
#[path = "../scale/generate.rs"]
mod generate;
mod guard;
mod held;
mod inject;
mod paper;
mod phone;
mod reach;
mod serve;
mod take;
mod today;
mod told;
mod way;
mod webdriver;
mod words;

use serde_json::{Value, json};
use serve::Server;
use std::collections::{HashMap, HashSet, VecDeque};
use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::thread;
use std::time::{Duration, Instant};
use webdriver::{Browser, Element, TAB};

const WIDTHS: [u32; 2] = [390, 1440];

const HOME: &str = "index.html";
/// A movement done upside down, whose page must say so.
const INVERTED: &str = "freestanding-handstand.html";
const PAGES: [&str; 8] = [
    HOME,
    "balance-on-hands.html",
    "strict-ring-muscle-up.html",
    "level-front-lever.html",
    "one-leg-to-the-floor.html",
    "heavy-pull-up.html",
    INVERTED,
    "self-test.html",
];

/// What a page says of itself: its heading, its widths, what sticks out to the side, what it loaded from elsewhere, and the
/// cautions that are its own and can be seen.
const LOOK: &str = r"
    const [base, width] = arguments, main = document.querySelector('main');
    const seen = e => e.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && e.getClientRects().length > 0;
    const own = e => e === main || e.dataset.movement === main.dataset.movement;
    const name = e => e.localName + (e.id ? '#' + e.id : '') + [...e.classList].map(c => '.' + c).join('');
    return {
        headings: [...document.querySelectorAll('h1')].filter(seen).map(e => e.innerText.trim()),
        width: document.documentElement.clientWidth,
        scroll: Math.max(document.documentElement.scrollWidth, document.body ? document.body.scrollWidth : 0),
        wide: [...document.querySelectorAll('body *')]
            .filter(e => e.getBoundingClientRect().right > width + 0.5 || e.scrollWidth > width).slice(0, 5).map(name),
        elsewhere: performance.getEntriesByType('resource').map(r => r.name).filter(n => !n.startsWith(base) && !n.startsWith('data:')),
        cautions: main ? [...main.querySelectorAll('[data-caution]')]
            .filter(e => seen(e) && own(e.closest('[data-movement], main')) && e.innerText.trim()).length : 0,
    };";

/// The links of a page that a reader can see and that stay on the site, without fragments, in the order of the page.
const LINKS: &str = r"
    const base = arguments[0], here = location.href.split('#')[0], found = new Map();
    for (const a of document.links) {
        const to = a.href.split('#')[0];
        const plain = !a.hasAttribute('download') && (!a.target || a.target === '_self');
        const seen = a.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && a.getClientRects().length > 0;
        if (plain && seen && to !== here && to.startsWith(base) && to.endsWith('.html') && !found.has(to)) found.set(to, a);
    }
    return [...found];";

const STAGE: &str = "const main = document.querySelector('main'); return main && main.dataset.stage ? Number(main.dataset.stage) : null";

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn site() -> PathBuf {
    let site = root().join("site-example");
    assert!(
        site.join(HOME).is_file(),
        "site-example is missing: publish it first"
    );
    site
}

/// The address of a folder on disk, with a slash at its end.
fn disk(folder: &Path) -> String {
    let folder = folder.canonicalize().expect("the folder is there");
    let mut url = String::from("file://");
    for byte in folder
        .to_str()
        .expect("the folder has a plain name")
        .bytes()
    {
        if byte.is_ascii_alphanumeric() || b"/-._~".contains(&byte) {
            url.push(char::from(byte));
        } else {
            url.push_str(&format!("%{byte:02X}"));
        }
    }
    url.push('/');
    url
}

/// Opens each page at each width and gathers everything that is wrong before failing once.
fn look_at_pages(browser: &Browser, base: &str, place: &str) -> Vec<String> {
    let mut faults = Vec::new();
    for width in WIDTHS {
        browser.width(width);
        for page in PAGES {
            browser.open(&format!("{base}{page}"));
            let found = faults_of(browser, base, page, width);
            if !found.is_empty() {
                let name = format!(
                    "failed-{place}-{}-{width}.png",
                    page.trim_end_matches(".html")
                );
                let file = write_picture(&name, &browser.picture());
                faults.extend(
                    found
                        .into_iter()
                        .map(|fault| format!("{page}, {place}, {width} px: {fault} (see {file})")),
                );
            }
        }
    }
    // A request for an icon may end after the page has loaded.
    thread::sleep(Duration::from_millis(500));
    faults.extend(
        browser
            .complaints()
            .into_iter()
            .map(|line| format!("{place}, afterwards: the console says {line}")),
    );
    faults
}

fn faults_of(browser: &Browser, base: &str, page: &str, width: u32) -> Vec<String> {
    let mut faults = Vec::new();
    let address = browser.address();
    if address != format!("{base}{page}") {
        faults.push(format!("another page stands there: {address}"));
    }
    let said = browser.run(LOOK, &json!([base, width]));
    let headings = texts(&said["headings"]);
    if headings.len() != 1 || headings.iter().any(String::is_empty) {
        faults.push(format!(
            "one heading with words is expected, there are {headings:?}"
        ));
    }
    if said["width"]
        .as_u64()
        .is_none_or(|laid_out| laid_out > u64::from(width))
    {
        faults.push(format!(
            "the page is laid out {} px wide: it names no device width",
            said["width"]
        ));
    }
    if said["scroll"]
        .as_u64()
        .is_none_or(|scroll| scroll > u64::from(width))
    {
        faults.push(format!(
            "it scrolls sideways: {} px, {:?} stick out",
            said["scroll"],
            texts(&said["wide"])
        ));
    }
    let elsewhere = texts(&said["elsewhere"]);
    if !elsewhere.is_empty() {
        faults.push(format!("it loads from elsewhere: {elsewhere:?}"));
    }
    if page == INVERTED && said["cautions"].as_u64().is_none_or(|n| n == 0) {
        faults.push("a movement done upside down shows no caution of its own".to_string());
    }
    faults.extend(
        browser
            .complaints()
            .into_iter()
            .map(|line| format!("the console says {line}")),
    );
    faults
}

fn texts(list: &Value) -> Vec<String> {
    list.as_array()
        .into_iter()
        .flatten()
        .filter_map(Value::as_str)
        .map(str::to_string)
        .collect()
}

#[test]
fn pages_stand_from_disk() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let faults = look_at_pages(&browser, &disk(&site()), "disk");
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn pages_stand_over_loopback() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let server = Server::start(&site());
    let mut faults = look_at_pages(&browser, &server.base(), "loopback");
    faults.extend(
        server
            .refused()
            .into_iter()
            .map(|line| format!("asked for what is not there: {line}")),
    );
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn links_lead_from_home_three_rungs_up_and_back() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    let home = format!("{base}{HOME}");
    browser.width(WIDTHS[0]);
    let up = way(&browser, &base, &home, |address| {
        let page = site().join(address.trim_start_matches(&base));
        let html = fs::read_to_string(page).unwrap_or_default();
        let main = html
            .split("<main")
            .nth(1)
            .and_then(|rest| rest.split('>').next());
        let stage = main.and_then(|tag| tag.split("data-stage=\"").nth(1)?.split('"').next());
        stage.is_some_and(|stage| stage.parse::<u32>().is_ok_and(|stage| stage >= 3))
    });
    let up = up.expect("links lead from home to a movement at least three rungs up");
    browser.open(up.last().unwrap_or(&home));
    let stage = browser.run(STAGE, &json!([]));
    assert!(stage.as_f64().is_some_and(|stage| stage >= 3.0), "{stage}");
    let down = way(&browser, &base, up.last().unwrap_or(&home), |address| {
        address == home
    });
    let down = down.expect("links lead back home");
    browser.open(&home);
    for step in up.iter().chain(&down) {
        follow(&browser, &base, step);
    }
    assert_eq!(browser.address(), home);
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// The shortest way by visible links from a page to one that is wanted, found breadth first; the first page is left out.
fn way(
    browser: &Browser,
    base: &str,
    from: &str,
    wanted: impl Fn(&str) -> bool,
) -> Option<Vec<String>> {
    let mut came_from: HashMap<String, String> = HashMap::new();
    let mut met = HashSet::from([from.to_string()]);
    let mut waiting = VecDeque::from([from.to_string()]);
    let mut looked_at = 0;
    while let Some(page) = waiting.pop_front() {
        looked_at += 1;
        if looked_at > 300 {
            return None;
        }
        browser.open(&page);
        for (to, _) in links(browser, base) {
            if !met.insert(to.clone()) {
                continue;
            }
            came_from.insert(to.clone(), page.clone());
            if wanted(&to) {
                let mut way = Vec::new();
                let mut step = to;
                while let Some(before) = came_from.remove(&step) {
                    way.push(step);
                    step = before;
                }
                way.reverse();
                return Some(way);
            }
            waiting.push_back(to);
        }
    }
    None
}

fn links(browser: &Browser, base: &str) -> Vec<(String, Element)> {
    let found = browser.run(LINKS, &json!([base]));
    let pair = |pair: &Value| Some((pair[0].as_str()?.to_string(), Element::from(&pair[1])?));
    found
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(pair)
        .collect()
}

/// Clicks the link to a page, as a reader would, and waits for that page.
fn follow(browser: &Browser, base: &str, to: &str) {
    let from = browser.address();
    let Some((_, link)) = links(browser, base)
        .into_iter()
        .find(|(address, _)| address == to)
    else {
        panic!("{from} has no link to {to}");
    };
    browser.click(&link);
    let until = Instant::now() + Duration::from_secs(60);
    while browser.address() != to {
        assert!(
            Instant::now() < until,
            "the link on {from} leads to {}, not to {to}",
            browser.address()
        );
        thread::sleep(Duration::from_millis(50));
    }
}

#[test]
fn the_first_tab_stop_leads_to_the_content() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let base = disk(&site());
    browser.width(WIDTHS[1]);
    for page in [HOME, INVERTED, "self-test.html"] {
        browser.open(&format!("{base}{page}"));
        browser.press(TAB);
        let said = browser.run(
            r"
            const at = document.activeElement, to = at.hash ? document.getElementById(at.hash.slice(1)) : null;
            const box = at.getBoundingClientRect();
            return { text: at.innerText, main: !!to && !!to.closest('main'), shown: box.width > 1 && box.height > 1 && box.left >= 0 && box.top >= 0 };",
            &json!([]),
        );
        assert!(
            said["main"] == true && said["shown"] == true,
            "{page}: the first tab stop is {said}"
        );
    }
}

#[test]
fn webkit_opens_the_site() {
    let Some(browser) = Browser::start_webkit() else {
        return;
    };
    let server = Server::start(&site());
    let base = server.base();
    let mut faults = Vec::new();
    for page in [HOME, INVERTED, "self-test.html"] {
        browser.open(&format!("{base}{page}"));
        let found = faults_of(&browser, &base, page, WIDTHS[0]);
        faults.extend(found.into_iter().map(|fault| format!("{page}: {fault}")));
    }
    faults.extend(server.refused());
    assert!(faults.is_empty(), "{}", faults.join("\n"));

    let kept = || browser.run("return localStorage.getItem('kept')", &json!([]));
    browser.run("localStorage.setItem('kept', 'here')", &json!([]));
    browser.refresh();
    assert_eq!(kept(), "here");
    drop(server);
    assert_eq!(kept(), "here");
    browser.refresh();
    assert_eq!(browser.run("return 1 + 1", &json!([])), 2);
}

/// Writes pictures for the eye: `cargo nextest run --test browser --run-ignored only shots`.
///
/// `RUNGBOOK_SHOTS` names other pages, with commas between; `RUNGBOOK_SHOTS_SITE` another folder.
#[test]
#[ignore = "writes pictures to target/shots for the eye"]
fn shots() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let site = env::var_os("RUNGBOOK_SHOTS_SITE").map_or_else(site, PathBuf::from);
    let base = disk(&site);
    let named = env::var("RUNGBOOK_SHOTS").unwrap_or_else(|_| PAGES.join(","));
    for page in named
        .split(',')
        .map(str::trim)
        .filter(|page| !page.is_empty())
    {
        for width in WIDTHS {
            browser.width(width);
            for (look, media, scheme) in [
                ("light", "screen", "light"),
                ("dark", "screen", "dark"),
                ("print", "print", "light"),
            ] {
                let features = json!([{ "name": "prefers-color-scheme", "value": scheme }]);
                browser.cdp(
                    "Emulation.setEmulatedMedia",
                    &json!({ "media": media, "features": features }),
                );
                browser.open(&format!("{base}{page}"));
                let name = format!(
                    "{}-{width}-{look}.png",
                    page.trim_end_matches(".html").replace('/', "-")
                );
                eprintln!("{}", write_picture(&name, &browser.whole_picture(width)));
            }
        }
    }
}

/// Writes a picture to `target/shots` and gives its place back.
fn write_picture(name: &str, picture: &[u8]) -> String {
    let folder = root().join("target/shots");
    fs::create_dir_all(&folder).expect("target/shots can be made");
    let file = folder.join(name);
    fs::write(&file, picture).expect("the picture can be written");
    file.display().to_string()
}
