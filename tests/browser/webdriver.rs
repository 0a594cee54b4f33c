//! A small client of the W3C WebDriver protocol, as far as the tests go: one browser, ended with its driver when dropped.

use serde_json::{Value, json};
use std::env;
use std::ffi::OsString;
use std::fs;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc;
use std::thread;
use std::time::{Duration, Instant};
use tempfile::TempDir;

/// The key under which the protocol writes a reference to an element.
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";
const START: Duration = Duration::from_secs(60);
const COMMAND: Duration = Duration::from_secs(60);

pub const TAB: char = '\u{e004}';

/// An element of the page that is open.
pub struct Element(String);

impl Element {
    /// Reads the reference out of what a script gave back.
    pub fn from(value: &Value) -> Option<Element> {
        value[ELEMENT].as_str().map(|id| Element(id.to_string()))
    }
}

pub struct Browser {
    driver: Child,
    agent: ureq::Agent,
    session: Option<String>,
    /// The browser's own folder, named on its command line and on nobody else's.
    profile: TempDir,
}

impl Browser {
    /// A new browser, or a loud line and nothing where none is installed. Where `CI` is `true` a missing browser is a failure.
    pub fn start() -> Option<Browser> {
        let driver = find("CHROMEDRIVER", &["chromedriver"]);
        let browser = find(
            "CHROMIUM",
            &[
                "chromium",
                "chromium-browser",
                "google-chrome-stable",
                "google-chrome",
            ],
        );
        let (Some(driver), Some(browser)) = (&driver, &browser) else {
            let missing = match (&driver, &browser) {
                (None, None) => "chromium and chromedriver are",
                (None, _) => "chromedriver is",
                _ => "chromium is",
            };
            let line = format!(
                "SKIPPED BROWSER TESTS: {missing} not installed (Debian: apt-get install chromium chromium-driver)"
            );
            assert!(env::var("CI").as_deref() != Ok("true"), "{line}");
            eprintln!("{line}");
            return None;
        };
        Some(Browser::with(driver, browser))
    }

    fn with(driver: &Path, browser: &Path) -> Browser {
        let profile = tempfile::Builder::new()
            .prefix("rungbook-browser-")
            .tempdir()
            .expect("a folder for the browser");
        let mut child = Command::new(driver)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver starts");
        let output = child.stdout.take().expect("chromedriver's output is piped");
        let agent = ureq::Agent::config_builder()
            .proxy(None)
            .http_status_as_error(false)
            .timeout_global(Some(COMMAND))
            .build()
            .new_agent();
        // From here on dropping ends the driver, whatever goes wrong below.
        let mut this = Browser {
            driver: child,
            agent,
            session: None,
            profile,
        };
        let (found, port) = mpsc::channel();
        // The thread reads on after the port: a full pipe would stop the driver.
        thread::spawn(move || {
            for line in BufReader::new(output).lines().map_while(Result::ok) {
                if let Some(port) = line
                    .split_once("successfully on port ")
                    .and_then(|(_, n)| n.trim_end_matches('.').parse::<u16>().ok())
                {
                    let _ = found.send(port);
                }
            }
        });
        let port = port
            .recv_timeout(START)
            .expect("chromedriver says on which port it listens");
        let driver = format!("http://127.0.0.1:{port}");
        let folder = this
            .profile
            .path()
            .to_str()
            .expect("the browser's folder has a plain name");
        let wanted = json!({ "capabilities": { "alwaysMatch": {
            "browserName": "chrome",
            "pageLoadStrategy": "normal",
            "goog:loggingPrefs": { "browser": "ALL" },
            "goog:chromeOptions": { "binary": browser, "args": [
                "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage", "--no-proxy-server", "--lang=en",
                format!("--user-data-dir={folder}"),
            ] },
        } } });
        let made = this.ask("POST", &format!("{driver}/session"), &wanted);
        let id = made["sessionId"].as_str().expect("a session has an id");
        this.session = Some(format!("{driver}/session/{id}"));
        this
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

    /// Runs the body of a function in the page.
    pub fn run(&self, script: &str, args: &Value) -> Value {
        self.post("execute/sync", &json!({ "script": script, "args": args }))
    }

    pub fn click(&self, element: &Element) {
        self.post(&format!("element/{}/click", element.0), &json!({}));
    }

    /// Presses one key and lets it go.
    pub fn press(&self, key: char) {
        let key = key.to_string();
        self.post(
            "actions",
            &json!({ "actions": [{ "type": "key", "id": "keyboard", "actions": [
                { "type": "keyDown", "value": key }, { "type": "keyUp", "value": key },
            ] }] }),
        );
    }

    /// A command of the browser's own protocol.
    pub fn cdp(&self, command: &str, params: &Value) -> Value {
        self.post(
            "goog/cdp/execute",
            &json!({ "cmd": command, "params": params }),
        )
    }

    /// Makes the window as wide as asked: the smallest real window is wider than a phone.
    pub fn width(&self, width: u32) {
        let (height, phone) = if width < 600 {
            (844, true)
        } else {
            (900, false)
        };
        self.cdp(
            "Emulation.setDeviceMetricsOverride",
            &json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": phone }),
        );
    }

    /// What the console has said since the last call: warnings and errors, each with its level.
    pub fn complaints(&self) -> Vec<String> {
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

    /// The page from top to bottom, as PNG, cut where a picture would grow too tall to draw.
    pub fn whole_picture(&self, width: u32) -> Vec<u8> {
        let layout = self.cdp("Page.getLayoutMetrics", &json!({}));
        let height = layout["cssContentSize"]["height"]
            .as_f64()
            .unwrap_or(900.0)
            .min(16_000.0);
        let shot = self.cdp(
            "Page.captureScreenshot",
            &json!({ "format": "png", "captureBeyondViewport": true, "clip": { "x": 0, "y": 0, "width": width, "height": height, "scale": 1 } }),
        );
        base64(shot["data"].as_str().expect("a picture is text"))
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
        // The browser has ended with its session, unless something hung. What still runs in the profile's folder is ours alone.
        let until = Instant::now() + Duration::from_secs(10);
        while Instant::now() < until {
            let left = running_with(self.profile.path());
            if left.is_empty() {
                break;
            }
            let _ = Command::new("sh")
                .arg("-c")
                .arg(format!("kill -KILL {}", left.join(" ")))
                .stderr(Stdio::null())
                .status();
            thread::sleep(Duration::from_millis(50));
        }
    }
}

/// The ids of the processes whose command line names a folder, dead ones left out.
fn running_with(folder: &Path) -> Vec<String> {
    let wanted = format!("--user-data-dir={}", folder.display());
    let Ok(processes) = fs::read_dir("/proc") else {
        return Vec::new();
    };
    processes
        .filter_map(Result::ok)
        .filter(|entry| {
            let line = fs::read(entry.path().join("cmdline")).unwrap_or_default();
            line.split(|b| *b == 0).any(|arg| arg == wanted.as_bytes())
        })
        .filter_map(|entry| entry.file_name().into_string().ok())
        .filter(|name| name.bytes().all(|b| b.is_ascii_digit()))
        .collect()
}

/// A program by the environment, or the first of its names that stands on the PATH.
fn find(variable: &str, names: &[&str]) -> Option<PathBuf> {
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

fn base64(text: &str) -> Vec<u8> {
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
    use super::base64;

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
}
