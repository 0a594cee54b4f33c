//! Sitemap and robots.

use crate::site::material::Material;
use crate::words::escape::escape_xml;

/// The sitemap, by the protocol of sitemaps.org 0.9.
pub fn sitemap(site: &Material<'_>, addresses: &[String]) -> Vec<u8> {
    let mut out = String::from(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<urlset xmlns=\"http://www.sitemaps.org/schemas/sitemap/0.9\">\n",
    );
    for path in addresses {
        let path = if path == "index.html" {
            ""
        } else {
            path.as_str()
        };
        out.push_str(&format!(
            "  <url><loc>{}{}</loc></url>\n",
            escape_xml(&site.curriculum.school().address),
            escape_xml(path)
        ));
    }
    out.push_str("</urlset>\n");
    out.into_bytes()
}

/// Everyone may read everything (RFC 9309).
pub fn robots(site: &Material<'_>) -> Vec<u8> {
    format!(
        "User-agent: *\nAllow: /\nSitemap: {}sitemap.xml\n",
        site.curriculum.school().address
    )
    .into_bytes()
}
