//! WebKit by its own driver, on a virtual screen of a phone's size.

use super::{Browser, Engine, START, announced, folder, program, signal, without};
use serde_json::json;
use std::collections::HashSet;
use std::env;
use std::fs;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

const WIDTH: u32 = 390;
const HEIGHT: u32 = 844;

impl Browser {
    /// A new WebKit, 390 px wide, or a loud line and nothing where none is installed. Where `CI` is `true` a missing one is a
    /// failure.
    pub fn start_webkit() -> Option<Browser> {
        let driver = program("WEBKITWEBDRIVER", &["WebKitWebDriver"]);
        let screen = program("XVFB", &["Xvfb"]);
        let (Some(driver), Some(screen)) = (&driver, &screen) else {
            let missing = match (&driver, &screen) {
                (None, None) => "WebKitWebDriver and Xvfb are",
                (None, _) => "WebKitWebDriver is",
                _ => "Xvfb is",
            };
            without(&format!(
                "SKIPPED WEBKIT TESTS: {missing} not installed (Debian: apt-get install webkit2gtk-driver xvfb)"
            ));
            return None;
        };
        Some(Browser::webkit(driver, screen))
    }

    fn webkit(driver: &Path, screen: &Path) -> Browser {
        let home = folder();
        let screen = Screen::start(screen);
        // Nothing of the user's own but the PATH. Without a locale the browser speaks en-US; in C.UTF-8 it speaks “C”.
        let driver = Command::new(driver)
            .arg("--port=0")
            .env_clear()
            .env("PATH", env::var_os("PATH").unwrap_or_default())
            .env("HOME", home.path())
            .env("XDG_RUNTIME_DIR", home.path())
            .env("GSETTINGS_BACKEND", "memory")
            .env("DISPLAY", &screen.name)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("WebKitWebDriver starts");
        let mut this = Browser::of(Engine::WebKit, driver, home, Some(screen));
        let port = port_of(&mut this.driver);
        // Without the name of a program the driver starts the browser of its own package. Full screen takes the toolbar away,
        // which would hold the window at 447 px.
        this.begin(
            port,
            &json!({
                "pageLoadStrategy": "normal",
                "webkitgtk:browserOptions": { "args": ["--automation", "--full-screen"] },
            }),
        );
        this.width(WIDTH);
        this
    }

    /// The window may be larger than the screen.
    pub(super) fn size(&self, width: u32, height: u32) {
        self.post(
            "window/rect",
            &json!({ "x": 0, "y": 0, "width": width, "height": height }),
        );
        self.wait_until(&format!("document.documentElement.clientWidth === {width}"));
    }
}

/// A virtual screen of its own, taken away when dropped.
pub(super) struct Screen {
    server: Child,
    name: String,
}

impl Screen {
    fn start(program: &Path) -> Screen {
        let mut server = Command::new(program)
            .args(["-displayfd", "1", "-nolisten", "tcp", "-noreset"])
            .args(["-screen", "0", &format!("{WIDTH}x{HEIGHT}x24")])
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("Xvfb starts");
        let output = server.stdout.take().expect("Xvfb's output is piped");
        let mut this = Screen {
            server,
            name: String::new(),
        };
        let number = announced(output, |line| line.trim().parse().ok());
        this.name = format!(":{}", number.expect("Xvfb says which display is its own"));
        this
    }
}

impl Drop for Screen {
    fn drop(&mut self) {
        // Asked to end it takes its socket away; killed it would leave it in /tmp.
        signal("TERM", &[self.server.id().to_string()]);
        let until = Instant::now() + Duration::from_secs(5);
        while matches!(self.server.try_wait(), Ok(None)) && Instant::now() < until {
            thread::sleep(Duration::from_millis(10));
        }
        let _ = self.server.kill();
        let _ = self.server.wait();
    }
}

/// The port on which the driver listens. It says nothing of it, and a port chosen beforehand may be taken by then.
fn port_of(driver: &mut Child) -> u16 {
    let until = Instant::now() + START;
    while Instant::now() < until {
        if let Ok(Some(status)) = driver.try_wait() {
            panic!("WebKitWebDriver ended at once: {status}");
        }
        if let Some(port) = listening(driver.id()) {
            return port;
        }
        thread::sleep(Duration::from_millis(10));
    }
    panic!("WebKitWebDriver listens on no port");
}

/// The port of 127.0.0.1 on which a process listens, by the sockets that it holds.
fn listening(process: u32) -> Option<u16> {
    let held: HashSet<String> = fs::read_dir(format!("/proc/{process}/fd"))
        .ok()?
        .filter_map(|entry| {
            fs::read_link(entry.ok()?.path())
                .ok()?
                .into_os_string()
                .into_string()
                .ok()
        })
        .collect();
    let table = fs::read_to_string(format!("/proc/{process}/net/tcp")).ok()?;
    table.lines().find_map(|line| {
        let fields: Vec<&str> = line.split_whitespace().collect();
        let (here, state, socket) = (fields.get(1)?, fields.get(3)?, fields.get(9)?);
        let (_, port) = here.split_once(':')?;
        let listens = *state == "0A" && held.contains(&format!("socket:[{socket}]"));
        u16::from_str_radix(port, 16).ok().filter(|_| listens)
    })
}
