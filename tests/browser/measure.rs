//! What each page kind weighs and when a slow phone shows it. A bench: `cargo test --release --test browser weights -- --ignored
//! --nocapture` prints one table.

use super::reach::KINDS;
use super::serve::{Line, Server};
use super::site;
use super::webdriver::Browser;
use serde_json::{Value, json};
use std::process::Command;
use std::thread;
use std::time::Duration;

/// The files that the page loaded from its own site, its largest contentful paint (ms after it was asked for), its first paint,
/// and how far it shifted while it loaded.
const SEEN: &str = r"
    const done = arguments[arguments.length - 1], base = arguments[0];
    const all = (type) => new Promise((tell) => {
        const found = [];
        new PerformanceObserver((list) => found.push(...list.getEntries())).observe({ type, buffered: true });
        setTimeout(() => tell(found), 200);
    });
    Promise.all([all('largest-contentful-paint'), all('layout-shift')]).then(([largest, shifts]) => done({
        files: [location.href, ...performance.getEntriesByType('resource').map(r => r.name)]
            .filter(n => n.startsWith(base)).map(n => n.slice(base.length).split(/[?#]/)[0]),
        largest: largest.length ? largest[largest.length - 1].startTime : null,
        first: performance.getEntriesByName('first-contentful-paint').map(e => e.startTime)[0] || null,
        shift: shifts.reduce((sum, s) => sum + s.value, 0),
        shifted: shifts.flatMap(s => s.sources).map(s => s.node && (s.node.id || s.node.className || s.node.nodeName)),
    }));";

/// Bytes of a file of the site after `gzip -9`.
fn weight(file: &str) -> usize {
    let out = Command::new("gzip")
        .args(["-9", "-c"])
        .arg(site().join(file))
        .output();
    out.expect("gzip runs").stdout.len()
}

#[test]
#[ignore = "a bench"]
fn weights_and_paints_of_every_page_kind() {
    let Some(browser) = Browser::start() else {
        return;
    };
    // A slow mobile line: 150 ms there and back, 1.6 Mbit/s.
    let line = Line {
        latency: Duration::from_millis(150),
        bytes_a_second: 200_000,
    };
    let server = Server::start_slow(&site(), line);
    let base = server.base();
    browser.width(390);
    browser.cdp("Network.enable", &json!({}));
    browser.cdp("Emulation.setCPUThrottlingRate", &json!({ "rate": 4 }));
    println!(
        "| page | KB before pictures | KB of pictures | first paint, ms | largest paint, ms | shift |"
    );
    println!("| --- | ---: | ---: | ---: | ---: | ---: |");
    for kind in KINDS.iter().chain(&["booklet-one-leg-to-the-floor.html"]) {
        browser.cdp("Network.clearBrowserCache", &json!({}));
        browser.open(&format!("{base}{kind}"));
        thread::sleep(Duration::from_millis(2500));
        let seen = browser.run_async(SEEN, &json!([base]));
        let mut files: Vec<&str> = seen["files"]
            .as_array()
            .expect("files")
            .iter()
            .filter_map(Value::as_str)
            .map(|f| if f.is_empty() { "index.html" } else { f })
            .collect();
        files.sort_unstable();
        files.dedup();
        let (pictures, rest): (Vec<&str>, Vec<&str>) = files
            .into_iter()
            .filter(|f| site().join(f).is_file())
            .partition(|f| f.starts_with("pictures/"));
        let sum = |files: &[&str]| files.iter().map(|f| weight(f)).sum::<usize>() as f64 / 1000.0;
        println!(
            "| {kind} | {:.1} | {:.1} | {:.0} | {:.0} | {:.3} |",
            sum(&rest),
            sum(&pictures),
            seen["first"].as_f64().unwrap_or(f64::NAN),
            seen["largest"].as_f64().unwrap_or(f64::NAN),
            seen["shift"].as_f64().unwrap_or(f64::NAN),
        );
        if seen["shift"] != 0 {
            println!("shifted: {}", seen["shifted"]);
        }
    }
}
