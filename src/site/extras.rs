//! Sitemap, robots, pictures without their location.

use super::Plan;
use super::link::escape;
use crate::source::Content;

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
            escape(&plan.curriculum.school.address),
            escape(path)
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

/// A picture as published: a photograph loses the data in which cameras keep the place.
pub fn picture(plan: &Plan<'_>, name: &str) -> Vec<u8> {
    let found = plan
        .snapshot
        .find(&format!("content/pictures/{name}"))
        .and_then(|id| plan.snapshot.file(id));
    match found.map(|f| &f.content) {
        Some(Content::Text(text)) => text.clone().into_bytes(),
        Some(Content::Bytes(bytes)) => without_location(bytes),
        _ => Vec::new(),
    }
}

/// Width and height of a picture in pixels, where they can be read; of an SVG its own, or those of its view box.
pub fn size(plan: &Plan<'_>, name: &str) -> Option<(usize, usize)> {
    let id = plan.snapshot.find(&format!("content/pictures/{name}"))?;
    match &plan.snapshot.file(id)?.content {
        Content::Bytes(bytes) => imagesize::blob_size(bytes)
            .ok()
            .map(|s| (s.width, s.height)),
        Content::Text(text) => {
            let start = text.find("<svg")?;
            let tag = &text[start..start + text[start..].find('>')?];
            let number = |key: &str| {
                let value = tag.split(&format!(" {key}=\"")).nth(1)?.split('"').next()?;
                let digits = value.trim_end_matches("px");
                digits.parse::<f64>().ok().filter(|n| *n >= 1.0 && *n < 1e5)
            };
            let of_box = || {
                let view = tag.split(" viewBox=\"").nth(1)?.split('"').next()?;
                let mut numbers = view
                    .split([' ', ','])
                    .filter_map(|n| n.parse::<f64>().ok())
                    .skip(2);
                Some((numbers.next()?, numbers.next()?))
            };
            let (width, height) = number("width").zip(number("height")).or_else(of_box)?;
            Some((width.round() as usize, height.round() as usize))
        }
        _ => None,
    }
}

/// Those as attributes of an image, with a space before them.
pub fn size_attributes(plan: &Plan<'_>, name: &str) -> String {
    size(plan, name).map_or(String::new(), |(w, h)| {
        format!(" width=\"{w}\" height=\"{h}\"")
    })
}

/// A JPEG without its APP1 to APP15 and comment segments (ITU-T T.81, B.1.1.4), but for the colour profile in APP2 and the
/// colour transform in APP14; anything else unchanged.
fn without_location(bytes: &[u8]) -> Vec<u8> {
    if !bytes.starts_with(&[0xff, 0xd8]) {
        return bytes.to_vec();
    }
    let mut out = vec![0xff, 0xd8];
    let mut at = 2;
    while at + 4 <= bytes.len() && bytes[at] == 0xff {
        let marker = bytes[at + 1];
        let length = usize::from(u16::from_be_bytes([bytes[at + 2], bytes[at + 3]]));
        if marker == 0xda || at + 2 + length > bytes.len() {
            break;
        }
        let drop = matches!(marker, 0xe1 | 0xe3..=0xed | 0xef | 0xfe);
        if !drop {
            out.extend_from_slice(&bytes[at..at + 2 + length]);
        }
        at += 2 + length;
    }
    out.extend_from_slice(&bytes[at..]);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn photographs_lose_their_location() {
        let jpeg = [
            &[0xff, 0xd8][..],
            &[0xff, 0xe0, 0, 4, 1, 2],
            &[0xff, 0xe1, 0, 6, b'E', b'x', b'i', b'f'],
            &[0xff, 0xda, 0, 2, 9, 9],
        ]
        .concat();
        let clean = without_location(&jpeg);
        assert!(!clean.windows(4).any(|w| w == b"Exif"));
        assert!(clean.ends_with(&[0xff, 0xda, 0, 2, 9, 9]));
        assert_eq!(without_location(b"GIF89a"), b"GIF89a");
    }
}
