//! The worker of a hosted site: which pages are kept beforehand, under which version.

use crate::site::feeds::tables::site_key;
use crate::site::{Plan, version};
use serde_json::json;

/// At the root, so that the whole site is in its scope.
pub const PATH: &str = "worker.js";

/// Pages that are kept before they are visited: everything a self-test needs but the skill's own pages.
const SHELL: &[&str] = &[
    "index.html",
    "before-you-start.html",
    "self-test.html",
    "where-i-stand.html",
    "today.html",
    "my-people.html",
    "search.html",
    "cautions.html",
    "if-it-hurts.html",
    "if-you-are-stuck.html",
    "words.html",
];

/// `worker.js`.
pub fn worker(plan: &Plan<'_>) -> Vec<u8> {
    let school = &plan.curriculum.school;
    let versions = plan.versions().to_string();
    let script = version(&plan.theme.asset("offline.js", school));
    let about = json!({ "site": site_key(&school.address), "version": version(versions.as_bytes()), "shell": SHELL });
    format!(
        "globalThis.rungbookOffline = {about};\nimportScripts('theme/offline.js?v={script}');\n"
    )
    .into_bytes()
}
