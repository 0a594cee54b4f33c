//! The worker of a hosted site: which pages are kept beforehand, under which version.

use crate::curriculum::page::PAGES;
use crate::site::feeds::tables::site_key;
use crate::site::material::Material;
use crate::site::theme::version;
use serde_json::json;

/// At the root, so that the whole site is in its scope.
pub const PATH: &str = "worker.js";

/// `worker.js`. Its version, `whole`, covers every file of the site, so that whatever changed is kept anew.
pub fn worker(site: &Material<'_>, whole: &str) -> Vec<u8> {
    let school = site.curriculum.school();
    let script = version(&site.theme.asset("offline.js", school));
    let kept = PAGES.iter().filter(|page| page.kept_offline);
    let shell: Vec<String> = kept.map(|page| format!("{}.html", page.name)).collect();
    let about = json!({ "site": site_key(&school.address), "version": whole, "shell": shell, "language": school.language });
    // A host that still has the script of an older publish is asked again later.
    format!(
        "globalThis.rungbookOffline = {about};\nimportScripts('theme/offline.js?v={script}');\nif (!globalThis.rungbookIs.includes('offline.js={script}')) throw new Error('offline.js: of another version');\n"
    )
    .into_bytes()
}
