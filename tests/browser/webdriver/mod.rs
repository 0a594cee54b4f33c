//! A small client of the W3C WebDriver protocol, as far as the tests go: one browser, ended with its driver when dropped.

mod chromium;
mod webkit;

use serde_json::{Value, json};
use std::env;
use std::ffi::OsString;
use std::fs;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};
use std::sync::mpsc;
use std::thread;
use std::time::{Duration, Instant};
use tempfile::TempDir;

/// The key under which the protocol writes a reference to an element.
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";
const START: Duration = Duration::from_secs(60);
const COMMAND: Duration = Duration::from_secs(60);
const WAIT: Duration = Duration::from_secs(60);

pub const TAB: char = '\u{e004}';
pub const ENTER: char = '\u{e007}';
pub const SHIFT: char = '\u{e008}';

/// An element of the page that is open.
pub struct Element(String);

impl Element {
    /// Reads the reference out of what a script gave back.
    pub fn from(value: &Value) -> Option<Element> {
        value[ELEMENT].as_str().map(|id| Element(id.to_string()))
    }
}

/// A tab of the browser.
pub struct Tab(String);

#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Engine {
    Chromium,
    WebKit,
}

pub struct Browser {
    pub engine: Engine,
    driver: Child,
    agent: ureq::Agent,
    session: Option<String>,
    /// The browser's own folder, named on its command line or in its environment and in nobody else's.
    folder: TempDir,
    /// Dropped after the browser has ended.
    _screen: Option<webkit::Screen>,
}

impl Browser {
    /// A browser that has not begun. From here on dropping ends its driver, whatever goes wrong later.
    fn of(
        engine: Engine,
        driver: Child,
        folder: TempDir,
        screen: Option<webkit::Screen>,
    ) -> Browser {
        let agent = ureq::Agent::config_builder()
            .proxy(None)
            .http_status_as_error(false)
            .timeout_global(Some(COMMAND))
            .build()
            .new_agent();
        Browser {
            engine,
            driver,
            agent,
            session: None,
            folder,
            _screen: screen,
        }
    }

    fn begin(&mut self, port: u16, wanted: &Value) {
        let url = format!("http://127.0.0.1:{port}/session");
        let body = json!({ "capabilities": { "alwaysMatch": wanted } });
        let made = self.ask("POST", &url, &body);
        let id = made["sessionId"].as_str().expect("a session has an id");
        self.session = Some(format!("{url}/{id}"));
    }

    /// Opens an address and waits until the page has loaded. The browser shows a page of its own for what it cannot open, so
    /// what was opened is for the caller to look at.
    pub fn open(&self, url: &str) {
        self.post("url", &json!({ "url": url }));
    }

    /// The address of the page, without its fragment.
    pub fn address(&self) -> String {
        let url = self.run("return location.href.split('#')[0]", &json!([]));
        url.as_str().expect("an address is text").to_string()
    }

    /// Loads the page again. What is shown where nothing answers is for the caller to look at.
    pub fn refresh(&self) {
        self.post("refresh", &json!({}));
    }

    pub fn back(&self) {
        self.post("back", &json!({}));
    }

    /// Runs the body of a function in the page, once it has drawn all that it still had to.
    pub fn run(&self, script: &str, args: &Value) -> Value {
        let settled = format!(
            "const act = function () {{ {script}\n }}, of = arguments, busy = () => document.querySelector('main[aria-busy]');
            if (!busy()) return act.apply(this, of);
            const wait = (tell) => (busy() ? setTimeout(() => wait(tell), 5) : tell(act.apply(this, of)));
            return new Promise(wait);"
        );
        self.post("execute/sync", &json!({ "script": settled, "args": args }))
    }

    /// Waits until the page has drawn all that it still had to.
    fn settle(&self) {
        self.wait_until("!document.querySelector('main[aria-busy]')");
    }

    /// Runs the body of a function in the page, once it has drawn all that it still had to, and waits for what it hands to its last
    /// argument, a function.
    pub fn run_async(&self, script: &str, args: &Value) -> Value {
        self.settle();
        self.post("execute/async", &json!({ "script": script, "args": args }))
    }

    /// Waits until an expression in the page is true.
    pub fn wait_until(&self, expression: &str) {
        let url = format!("{}/execute/sync", self.session());
        let body = json!({ "script": format!("return Promise.resolve({expression}).then((said) => !!said)"), "args": [] });
        let until = Instant::now() + WAIT;
        loop {
            // While one page gives way to the next there may be none to answer.
            let said = self.try_ask("POST", &url, &body);
            if said == Ok(json!(true)) {
                break;
            }
            let engine = self.engine;
            assert!(Instant::now() < until, "{engine:?}: {expression}: {said:?}");
            thread::sleep(Duration::from_millis(20));
        }
    }

    /// The first element that a CSS selector fits.
    pub fn find(&self, selector: &str) -> Element {
        self.settle();
        let url = format!("{}/element", self.session());
        let wanted = json!({ "using": "css selector", "value": selector });
        match self.try_ask("POST", &url, &wanted) {
            Ok(found) => Element::from(&found).expect("what is found is an element"),
            Err(why) => panic!("{:?}: {selector}: {why}", self.engine),
        }
    }

    /// The words of an element as they are shown.
    pub fn text(&self, element: &Element) -> String {
        let url = format!("{}/element/{}/text", self.session(), element.0);
        let text = self.ask("GET", &url, &Value::Null);
        text.as_str().expect("words are text").to_string()
    }

    /// Clicks, and waits until the page has drawn what follows from it.
    pub fn click(&self, element: &Element) {
        self.touch_alone(element);
        self.settle();
    }

    /// Clicks what opens a dialog of the browser: while it is open no page is asked anything.
    fn touch_alone(&self, element: &Element) {
        self.post(&format!("element/{}/click", element.0), &json!({}));
    }

    /// Types behind what stands in a field. A date field takes its parts in the order of the browser's language.
    pub fn write(&self, element: &Element, text: &str) {
        self.post(
            &format!("element/{}/value", element.0),
            &json!({ "text": text }),
        );
    }

    /// Empties a field; where files are chosen it takes them away.
    pub fn clear(&self, element: &Element) {
        self.post(&format!("element/{}/clear", element.0), &json!({}));
    }

    /// Chooses a file of the disk in a field for files. A field for many keeps those chosen before.
    pub fn upload(&self, element: &Element, file: &Path) {
        let file = file.canonicalize().expect("the file is there");
        self.write(element, file.to_str().expect("the file has a plain name"));
    }

    /// Presses one key and lets it go.
    pub fn press(&self, key: char) {
        self.press_together(&[key]);
    }

    /// Presses keys one after another, then lets the last go first.
    pub fn press_together(&self, keys: &[char]) {
        let action = |kind: &str, key: &char| json!({ "type": kind, "value": key.to_string() });
        let down = keys.iter().map(|key| action("keyDown", key));
        let up = keys.iter().rev().map(|key| action("keyUp", key));
        let actions: Vec<Value> = down.chain(up).collect();
        self.post(
            "actions",
            &json!({ "actions": [{ "type": "key", "id": "keyboard", "actions": actions }] }),
        );
    }

    /// Says yes to the open dialog and gives its words back.
    pub fn accept(&self) -> String {
        self.answer("accept")
    }

    /// Says no to the open dialog and gives its words back.
    pub fn dismiss(&self) -> String {
        self.answer("dismiss")
    }

    fn answer(&self, command: &str) -> String {
        let url = format!("{}/alert/text", self.session());
        let words = self.ask("GET", &url, &Value::Null);
        self.post(&format!("alert/{command}"), &json!({}));
        words.as_str().expect("a dialog has words").to_string()
    }

    /// The tab that commands go to.
    pub fn tab(&self) -> Tab {
        let url = format!("{}/window", self.session());
        let name = self.ask("GET", &url, &Value::Null);
        Tab(name.as_str().expect("a tab has a name").to_string())
    }

    /// Opens a tab beside the others; commands still go to the one before. In Chromium it has no `width` of its own yet, in
    /// WebKit the tabs take some of its height.
    pub fn open_tab(&self) -> Tab {
        let made = self.post("window/new", &json!({ "type": "tab" }));
        let name = made["handle"].as_str().expect("a tab has a name");
        Tab(name.to_string())
    }

    pub fn switch(&self, tab: &Tab) {
        self.post("window", &json!({ "handle": tab.0 }));
    }

    /// Gives the page the width asked for, and a height to suit.
    pub fn width(&self, width: u32) {
        let (height, phone) = if width < 600 {
            (844, true)
        } else {
            (900, false)
        };
        match self.engine {
            Engine::Chromium => self.emulate(width, height, phone),
            Engine::WebKit => self.size(width, height),
        }
    }

    /// What the console has said since the last call: warnings and errors, each with its level. WebKit's driver keeps no log.
    pub fn complaints(&self) -> Vec<String> {
        if self.engine == Engine::WebKit {
            return Vec::new();
        }
        let log = self.post("se/log", &json!({ "type": "browser" }));
        let entries = log.as_array().cloned().unwrap_or_default();
        let text = |entry: &Value, key: &str| entry[key].as_str().unwrap_or_default().to_string();
        entries
            .iter()
            .filter(|entry| matches!(entry["level"].as_str(), Some("SEVERE" | "WARNING")))
            .map(|entry| format!("{}: {}", text(entry, "level"), text(entry, "message")))
            .collect()
    }

    /// What the window shows, as PNG.
    pub fn picture(&self) -> Vec<u8> {
        let url = format!("{}/screenshot", self.session());
        base64(
            self.ask("GET", &url, &Value::Null)
                .as_str()
                .expect("a picture is text"),
        )
    }

    fn session(&self) -> &str {
        self.session.as_deref().expect("the session has begun")
    }

    fn post(&self, command: &str, body: &Value) -> Value {
        self.ask("POST", &format!("{}/{command}", self.session()), body)
    }

    fn ask(&self, method: &str, url: &str, body: &Value) -> Value {
        match self.try_ask(method, url, body) {
            Ok(value) => value,
            Err(why) => panic!("{method} {url}: {why}"),
        }
    }

    fn try_ask(&self, method: &str, url: &str, body: &Value) -> Result<Value, String> {
        let answer = match method {
            "GET" => self.agent.get(url).call(),
            "DELETE" => self
                .agent
                .delete(url)
                .config()
                .timeout_global(Some(Duration::from_secs(10)))
                .build()
                .call(),
            _ => self.agent.post(url).send_json(body),
        };
        let mut answer = answer.map_err(|e| e.to_string())?;
        let status = answer.status().as_u16();
        let mut read: Value = answer
            .body_mut()
            .with_config()
            .limit(256 << 20)
            .read_json()
            .map_err(|e| e.to_string())?;
        let value = read["value"].take();
        if status == 200 {
            Ok(value)
        } else {
            Err(format!(
                "{}: {}",
                value["error"],
                value["message"].as_str().unwrap_or_default()
            ))
        }
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        if let Some(session) = self.session.take() {
            let _ = self.try_ask("DELETE", &session, &Value::Null);
        }
        let _ = self.driver.kill();
        let _ = self.driver.wait();
        // The browser has ended with its session, unless something hung. What still runs in the browser's folder is ours alone.
        let until = Instant::now() + Duration::from_secs(10);
        while Instant::now() < until {
            let left = running_with(self.folder.path());
            if left.is_empty() {
                break;
            }
            signal("KILL", &left);
            thread::sleep(Duration::from_millis(50));
        }
    }
}

fn folder() -> TempDir {
    tempfile::Builder::new()
        .prefix("rungbook-browser-")
        .tempdir()
        .expect("a folder for the browser")
}

/// Says loudly what is left out; where `CI` is `true` nothing may be.
fn without(line: &str) {
    assert!(env::var("CI").as_deref() != Ok("true"), "{line}");
    eprintln!("{line}");
}

/// The number that a program says in its first line that has one.
fn announced(
    output: ChildStdout,
    read: impl Fn(&str) -> Option<u16> + Send + 'static,
) -> Option<u16> {
    let (found, number) = mpsc::channel();
    // The thread reads on after the number: a full pipe would stop the program.
    thread::spawn(move || {
        for line in BufReader::new(output).lines().map_while(Result::ok) {
            if let Some(number) = read(&line) {
                let _ = found.send(number);
            }
        }
    });
    number.recv_timeout(START).ok()
}

fn signal(name: &str, processes: &[String]) {
    let _ = Command::new("sh")
        .arg("-c")
        .arg(format!("kill -{name} {}", processes.join(" ")))
        .stderr(Stdio::null())
        .status();
}

/// The ids of the processes whose command line or environment names a folder, dead ones left out.
fn running_with(folder: &Path) -> Vec<String> {
    let argument = format!("--user-data-dir={}", folder.display());
    let variable = format!("HOME={}", folder.display());
    let wanted = [("cmdline", argument), ("environ", variable)];
    let Ok(processes) = fs::read_dir("/proc") else {
        return Vec::new();
    };
    processes
        .filter_map(Result::ok)
        .filter(|entry| {
            wanted.iter().any(|(file, words)| {
                let list = fs::read(entry.path().join(file)).unwrap_or_default();
                list.split(|b| *b == 0).any(|part| part == words.as_bytes())
            })
        })
        .filter_map(|entry| entry.file_name().into_string().ok())
        .filter(|name| name.bytes().all(|b| b.is_ascii_digit()))
        .collect()
}

/// A program by the environment, or the first of its names that stands on the PATH.
fn program(variable: &str, names: &[&str]) -> Option<PathBuf> {
    if let Some(set) = env::var_os(variable).filter(|set| !set.is_empty()) {
        return Some(PathBuf::from(set)).filter(|path| path.is_file());
    }
    let path: OsString = env::var_os("PATH")?;
    let folders: Vec<PathBuf> = env::split_paths(&path).collect();
    names.iter().find_map(|name| {
        folders
            .iter()
            .map(|folder| folder.join(name))
            .find(|file| file.is_file())
    })
}

pub fn base64(text: &str) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(text.len() / 4 * 3);
    let (mut held, mut bits) = (0_u32, 0);
    for letter in text.bytes() {
        let six = match letter {
            b'A'..=b'Z' => letter - b'A',
            b'a'..=b'z' => letter - b'a' + 26,
            b'0'..=b'9' => letter - b'0' + 52,
            b'+' => 62,
            b'/' => 63,
            _ => continue,
        };
        held = (held << 6 | u32::from(six)) & 0xffff;
        bits += 6;
        if bits >= 8 {
            bits -= 8;
            bytes.push((held >> bits & 0xff) as u8);
        }
    }
    bytes
}

#[cfg(test)]
mod tests {
    use super::{Browser, ENTER, SHIFT, TAB, base64};
    use crate::serve::Server;
    use serde_json::json;
    use std::fs;

    #[test]
    fn base64_is_read_back() {
        for (text, bytes) in [
            ("", &b""[..]),
            ("TQ==", b"M"),
            ("TWE=", b"Ma"),
            ("TWFu", b"Man"),
            ("+/+/AP8=", b"\xfb\xff\xbf\x00\xff"),
        ] {
            assert_eq!(base64(text), bytes, "{text}");
        }
    }

    const PAGE: &str = r#"<!doctype html><html lang="en"><meta charset="utf-8"><title>Desk</title>
        <meta name="viewport" content="width=device-width, initial-scale=1"><link rel="icon" href="data:,">
        <p id="said">nothing</p><input id="field"><button id="ask">Ask</button><input id="file" type="file">
        <a id="away" href="away.html">Away</a><script>
        const said = document.querySelector('#said');
        document.querySelector('#ask').onclick = () => { said.textContent = confirm('Really?') ? 'yes' : 'no'; };
        document.querySelector('#file').onchange = async e => { said.textContent = await e.target.files[0].text(); };
        </script></html>"#;

    #[test]
    fn both_engines_take_the_same_commands() {
        for browser in [Browser::start(), Browser::start_webkit()]
            .into_iter()
            .flatten()
        {
            take_all_commands(&browser);
        }
    }

    fn take_all_commands(browser: &Browser) {
        let engine = browser.engine;
        let site = tempfile::tempdir().expect("a folder for the test");
        fs::write(site.path().join("index.html"), PAGE).expect("a page");
        fs::write(site.path().join("away.html"), PAGE).expect("a page");
        fs::write(site.path().join("note.txt"), "from the disk").expect("a file to choose");
        let server = Server::start(site.path());
        let home = server.base();
        let value = |script: &str| browser.run(script, &json!([]));
        let focus = || value("return document.activeElement.id");

        browser.width(390);
        browser.open(&home);
        assert_eq!(
            value("return document.documentElement.clientWidth"),
            json!(390),
            "{engine:?}"
        );
        let said = browser.find("#said");
        assert_eq!(browser.text(&said), "nothing", "{engine:?}");

        let field = browser.find("#field");
        browser.write(&field, "gone");
        browser.clear(&field);
        browser.write(&field, "twelve ½");
        let written = value("return document.querySelector('#field').value");
        assert_eq!(written, json!("twelve ½"), "{engine:?}");
        browser.press(TAB);
        assert_eq!(focus(), json!("ask"), "{engine:?}");
        browser.press_together(&[SHIFT, TAB]);
        assert_eq!(focus(), json!("field"), "{engine:?}");

        for yes in [true, false] {
            browser.touch_alone(&browser.find("#ask"));
            let words = if yes {
                browser.accept()
            } else {
                browser.dismiss()
            };
            assert_eq!(words, "Really?", "{engine:?}");
            let answer = if yes { "yes" } else { "no" };
            assert_eq!(browser.text(&said), answer, "{engine:?}");
        }
        browser.upload(&browser.find("#file"), &site.path().join("note.txt"));
        browser.wait_until("said.textContent === 'from the disk'");

        let later = "const done = arguments[1]; setTimeout(() => done(arguments[0] + 1), 20);";
        assert_eq!(
            browser.run_async(later, &json!([4])),
            json!(5),
            "{engine:?}"
        );

        value("localStorage.setItem('kept', 'here'); document.querySelector('#away').focus()");
        browser.press(ENTER);
        browser.wait_until("location.pathname === '/away.html'");
        browser.back();
        browser.wait_until("location.pathname === '/'");
        browser.refresh();
        assert_eq!(
            browser.text(&browser.find("#said")),
            "nothing",
            "{engine:?}"
        );

        let first = browser.tab();
        let second = browser.open_tab();
        browser.switch(&second);
        browser.width(390);
        browser.open(&format!("{home}away.html"));
        assert_eq!(
            value("return [localStorage.getItem('kept'), document.documentElement.clientWidth]"),
            json!(["here", 390]),
            "{engine:?}"
        );
        browser.switch(&first);
        assert_eq!(browser.address(), home, "{engine:?}");
        assert_eq!(browser.complaints(), Vec::<String>::new());
    }
}
