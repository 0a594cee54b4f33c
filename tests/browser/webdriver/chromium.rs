//! Chromium by its own driver, without a screen, and what only its own protocol can do.

use super::{Browser, Engine, announced, base64, folder, program, without};
use crate::root;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// Chromium without windows, which a driver cannot begin by itself.
const SHELL: &str = "chromium-headless-shell";

impl Browser {
    /// A new Chromium, or a loud line and nothing where none is installed. Where `CI` is `true` a missing one is a failure.
    pub fn start() -> Option<Browser> {
        let (driver, browser) = Browser::installed()?;
        Some(Browser::chromium(&driver, &browser))
    }

    /// The driver and the browser, or a loud line as for `start`.
    pub fn installed() -> Option<(PathBuf, PathBuf)> {
        let driver = program("CHROMEDRIVER", &["chromedriver"]);
        let browser = program(
            "CHROMIUM",
            &[
                SHELL,
                "chromium",
                "chromium-browser",
                "google-chrome-stable",
                "google-chrome",
            ],
        );
        let missing = match (&driver, &browser) {
            (Some(_), Some(_)) => "",
            (None, None) => "chromium and chromedriver are",
            (None, _) => "chromedriver is",
            _ => "chromium is",
        };
        if !missing.is_empty() {
            without(&format!(
                "SKIPPED BROWSER TESTS: {missing} not installed (Debian: apt-get install chromium-headless-shell chromium-driver)"
            ));
        }
        let begun = |browser: PathBuf| {
            if browser.ends_with(SHELL) {
                return root().join("tests/browser/webdriver/shell");
            }
            browser
        };
        driver.zip(browser.map(begun))
    }

    fn chromium(driver: &Path, browser: &Path) -> Browser {
        let profile = folder();
        let argument = format!("--user-data-dir={}", profile.path().display());
        let mut driver = Command::new(driver)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver starts");
        let output = driver
            .stdout
            .take()
            .expect("chromedriver's output is piped");
        let mut this = Browser::of(Engine::Chromium, driver, profile, None);
        let port = announced(output, |line| {
            let (_, port) = line.split_once("successfully on port ")?;
            port.trim_end_matches('.').parse().ok()
        });
        this.begin(
            port.expect("chromedriver says on which port it listens"),
            &json!({
                "browserName": "chrome",
                "pageLoadStrategy": "normal",
                "timeouts": { "script": 55_000 },
                "goog:loggingPrefs": { "browser": "ALL" },
                "goog:chromeOptions": { "binary": browser, "args": [
                    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                    "--disable-background-networking", "--disable-component-update", "--disable-sync",
                    "--disable-dev-shm-usage", "--no-proxy-server", "--lang=en", argument,
                ] },
            }),
        );
        this
    }

    /// A command of the browser's own protocol.
    pub fn cdp(&self, command: &str, params: &Value) -> Value {
        self.post(
            "goog/cdp/execute",
            &json!({ "cmd": command, "params": params }),
        )
    }

    /// The smallest real window is wider than a phone.
    pub(super) fn emulate(&self, width: u32, height: u32, phone: bool) {
        self.cdp(
            "Emulation.setDeviceMetricsOverride",
            &json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": phone }),
        );
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
}
