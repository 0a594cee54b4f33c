//! The worker of a hosted site: which pages are kept beforehand, under which version.

use crate::curriculum::page::PAGES;
use crate::site::feeds::tables::site_key;
use crate::site::{Plan, version};
use serde_json::json;

/// At the root, so that the whole site is in its scope.
pub const PATH: &str = "worker.js";

/// `worker.js`.
pub fn worker(plan: &Plan<'_>) -> Vec<u8> {
    let school = &plan.curriculum.school;
    let versions = plan.versions().to_string();
    let script = version(&plan.theme.asset("offline.js", school));
    let kept = PAGES.iter().filter(|page| page.kept_offline);
    let shell: Vec<String> = kept.map(|page| format!("{}.html", page.name)).collect();
    let about = json!({ "site": site_key(&school.address), "version": version(versions.as_bytes()), "shell": shell });
    format!(
        "globalThis.rungbookOffline = {about};\nimportScripts('theme/offline.js?v={script}');\n"
    )
    .into_bytes()
}
