//! Sitemap and robots.

use crate::site::Plan;
use crate::site::theme::link::escape_xml;

/// The sitemap, by the protocol of sitemaps.org 0.9.
pub fn sitemap(plan: &Plan<'_>) -> Vec<u8> {
    let mut out = String::from(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<urlset xmlns=\"http://www.sitemaps.org/schemas/sitemap/0.9\">\n",
    );
    for path in plan.addresses() {
        let path = if path == "index.html" {
            ""
        } else {
            path.as_str()
        };
        out.push_str(&format!(
            "  <url><loc>{}{}</loc></url>\n",
            escape_xml(&plan.curriculum.school.address),
            escape_xml(path)
        ));
    }
    out.push_str("</urlset>\n");
    out.into_bytes()
}

/// Everyone may read everything (RFC 9309).
pub fn robots(plan: &Plan<'_>) -> Vec<u8> {
    format!(
        "User-agent: *\nAllow: /\nSitemap: {}sitemap.xml\n",
        plan.curriculum.school.address
    )
    .into_bytes()
}
