//! What the program itself puts on every page, before anything of a theme: a sheet that keeps caution marks in sight, and a
//! script that counts them. No theme replaces these files.

use super::compact::{compact_script, compact_sheet};
use super::{ThemeError, saying, version};
use crate::words::Words;
use memchr::memmem::{self, Finder};
use std::collections::BTreeMap;
use std::sync::LazyLock;

pub const SHEET: &str = "guard.css";
pub const SCRIPT: &str = "guard.js";

/// The policy that every page carries.
pub const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; media-src 'self' blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; trusted-types rungbook-worker";

/// The attribute with which a mark begins, as templates write it.
const MARK: &str = " data-caution=\"";

/// The files as published, and the tags that load them.
pub struct Guard {
    pub sheet: Vec<u8>,
    pub script: Vec<u8>,
    sheet_version: String,
    script_version: String,
}

impl Guard {
    /// # Errors
    /// When a word that the script says is in no words file.
    pub fn new(words: &Words) -> Result<Guard, ThemeError> {
        let sheet = compact_sheet(include_str!("../../../themes/guard/guard.css")).into_bytes();
        let script = compact_script(include_str!("../../../themes/guard/guard.js")).into_bytes();
        let script = saying::asset(SCRIPT, script, words, &BTreeMap::new())?;
        Ok(Guard {
            sheet_version: version(&sheet),
            script_version: version(&script),
            sheet,
            script,
        })
    }

    /// The address of the sheet, below a page's root.
    pub fn sheet_address(&self) -> String {
        format!("{SHEET}?v={}", self.sheet_version)
    }

    /// The address of the script, below a page's root.
    pub fn script_address(&self) -> String {
        format!("{SCRIPT}?v={}", self.script_version)
    }

    /// How many marks a page has.
    pub fn marks(html: &str) -> usize {
        memmem::find_iter(html.as_bytes(), MARK).count()
    }

    /// What loads the guard on a page with so many marks.
    pub fn tags(&self, root: &str, marks: usize) -> String {
        let (sheet, script) = (self.sheet_address(), self.script_address());
        format!(
            "\n<meta name=\"referrer\" content=\"no-referrer\">\n<link rel=\"stylesheet\" href=\"{root}{sheet}\">\n<script defer src=\"{root}{script}\" data-marks=\"{marks}\"></script>"
        )
    }

    /// Puts these tags behind the policy of a page, so that nothing of the theme is loaded before them. A page without a policy is
    /// left to the audit.
    pub fn put(html: &mut String, tags: &str) {
        static FINDER: LazyLock<Finder<'_>> = LazyLock::new(|| Finder::new(POLICY));
        let policy = FINDER.find(html.as_bytes());
        if let Some(end) = policy.and_then(|at| html[at..].find('>').map(|end| at + end + 1)) {
            html.insert_str(end, tags);
        }
    }
}

/// A script or style as published: it says itself of which version it is, since a host sends what it has, whatever was asked.
pub fn stamped(path: &str, bytes: Vec<u8>) -> Vec<u8> {
    let name = path.rsplit('/').next().unwrap_or(path);
    let version = version(&bytes);
    let stamp = match name.rsplit('.').next() {
        Some("js") => {
            format!("'use strict';self.rungbookIs+=\"{name}={version} \";\n")
        }
        Some("css") => format!("/*{name}={version}*/\n"),
        _ => return bytes,
    };
    [stamp.into_bytes(), bytes].concat()
}

/// What stands behind the stamp.
pub fn unstamped(text: &str) -> &str {
    match text.split_once('\n') {
        Some((first, rest)) if first.contains("rungbookIs") => rest,
        _ => text,
    }
}
