//! A site whose every text would like to be a script, opened page by page: nothing runs, nothing is asked for from elsewhere.

use super::serve::Server;
use super::texts;
use super::webdriver::Browser;
use serde_json::{Value, json};
use std::fs;
use std::process::Command;

#[path = "../inject/fields.rs"]
mod fields;
#[path = "../inject/payloads.rs"]
mod payloads;

use payloads::PAYLOADS;

/// What a payload would call, and what a browser would tell of, noted before any script of the page.
const WATCH: &str = r"
    window.ran = [];
    window.pwned = () => { window.ran.push('pwned'); };
    window.alert = window.confirm = window.prompt = () => { window.ran.push('dialog'); };
    addEventListener('securitypolicyviolation', e => { window.ran.push('policy: ' + e.violatedDirective + ' ' + e.blockedURI); });";

const SAY: &str = r"
    const own = performance.getEntriesByType('resource').map(r => r.name).filter(n => !n.startsWith(arguments[0]));
    const marks = [...document.querySelectorAll('*')].flatMap(e => [...e.attributes].filter(a => a.name.startsWith('on')).map(a => e.localName + ' ' + a.name));
    const leads = [...document.querySelectorAll('[href], [src]')].map(e => e.href || e.src).filter(a => typeof a === 'string' && /^(javascript|data|vbscript):/i.test(a));
    return [...window.ran, ...own, ...marks, ...leads];";

#[test]
fn texts_that_would_be_scripts_run_nothing() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.cdp(
        "Page.addScriptToEvaluateOnNewDocument",
        &json!({ "source": WATCH }),
    );
    let dir = tempfile::tempdir().expect("a folder");
    let mut faults = Vec::new();
    let mut pages = 0;
    for turn in [0, 25, 50] {
        let from = dir.path().join(turn.to_string());
        let records = fields::filled(fields::RECORDS, |n| {
            format!("{} {n}", PAYLOADS[(n + turn) % PAYLOADS.len()])
        });
        let notes = fields::NOTES
            .iter()
            .map(|(p, t)| (p.to_string(), t.to_string()));
        for (path, text) in records.into_iter().chain(notes) {
            let path = from.join(path);
            fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
            fs::write(path, text).expect("written");
        }
        let done = Command::new(env!("CARGO_BIN_EXE_rungbook"))
            .args(["publish", "--from"])
            .arg(&from)
            .output()
            .expect("it runs");
        assert!(
            done.status.success(),
            "{}",
            String::from_utf8_lossy(&done.stderr)
        );
        let server = Server::start(&from.join("site"));
        let base = server.base();
        let mut names: Vec<String> = fs::read_dir(from.join("site"))
            .expect("a site")
            .map(|e| {
                e.expect("an entry")
                    .file_name()
                    .to_string_lossy()
                    .into_owned()
            })
            .filter(|n| n.ends_with(".html") && n != "404.html")
            .collect();
        names.sort();
        for name in &names {
            browser.open(&format!("{base}{name}"));
            if name == "search.html" {
                let field = browser.find("#find");
                for typed in ["pwned", "script", "img", "{{"] {
                    browser.clear(&field);
                    browser.write(&field, typed);
                }
            }
            let said = browser.run(SAY, &json!([base]));
            faults.extend(
                texts(&said)
                    .into_iter()
                    .map(|f| format!("{turn}: {name}: {f}")),
            );
            pages += 1;
        }
        // The watch itself works.
        let heard = browser.run("pwned(); alert(1); return window.ran", &json!([]));
        assert_eq!(heard, json!(["pwned", "dialog"]));
        assert_ne!(
            browser.run("return typeof rungbook", &json!([])),
            Value::Null
        );
    }
    faults.extend(browser.complaints());
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(pages > 100, "{pages} pages");
}
