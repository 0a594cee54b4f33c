//! The coach's pictures and clips as published: without their location, and photographs in smaller widths beside the original.

mod scale;

use crate::site::material::Material;
use crate::site::material::kept::{Sizes, Smaller};
use crate::source::clip;
use crate::source::raster::{self, Kind};
use crate::source::{Content, Snapshot};
use crate::words::escape::escape;
use rayon::prelude::*;
use std::collections::{BTreeMap, BTreeSet};

/// The widths in pixels beside the original's own.
const WIDTHS: [u32; 2] = [480, 960];

/// How wide a picture stands on a page: all of a phone, else the column of text (42rem in the theme).
const SIZES: &str = "(max-width: 42rem) 100vw, 42rem";

/// Makes the smaller widths of every photograph; they are kept.
pub fn sizes<'a>(site: &Material<'a>) -> &'a Sizes {
    site.kept.sizes.get_or_init(|| Sizes::new(site.snapshot))
}

impl Sizes {
    /// Makes them. A picture that cannot be read, is very large, moves, or would be no smaller has none: it stands as it is.
    fn new(snapshot: &Snapshot) -> Sizes {
        let pictures: Vec<(&str, &[u8])> = snapshot
            .files()
            .filter_map(|(_, f)| {
                let name = f.path.strip_prefix("content/pictures/")?;
                match &f.content {
                    Content::Bytes(bytes) if !hidden(name) => Some((name, bytes.as_slice())),
                    _ => None,
                }
            })
            .collect();
        let made: Vec<Vec<scale::Scaled>> = pictures
            .par_iter()
            .map(|(_, bytes)| scale::scaled(bytes, &WIDTHS))
            .collect();
        // A file of the coach's own goes before one that is made here, on disks that tell capitals apart and on those that do not.
        let mut taken: BTreeSet<String> = snapshot
            .files()
            .filter_map(|(_, f)| f.path.strip_prefix("content/pictures/"))
            .map(str::to_lowercase)
            .collect();
        let mut out = BTreeMap::new();
        for ((name, _), scaled) in pictures.into_iter().zip(made) {
            let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
            let mut smaller = Vec::new();
            for one in scaled {
                let name = format!("{stem}-{}.{}", one.width, one.ending);
                if taken.insert(name.to_lowercase()) {
                    smaller.push(Smaller {
                        width: one.width,
                        name,
                        bytes: one.bytes,
                    });
                }
            }
            if !smaller.is_empty() {
                out.insert(name.to_string(), smaller);
            }
        }
        Sizes(out)
    }

    /// Every file made, by its path below `pictures/`.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.0.values().flatten().map(|s| s.name.as_str())
    }

    /// The content of a file made.
    pub fn bytes(&self, name: &str) -> Vec<u8> {
        let found = self.0.values().flatten().find(|s| s.name == name);
        found.map_or_else(Vec::new, |s| s.bytes.to_vec())
    }
}

/// Whether a file is no part of the site.
pub fn hidden(name: &str) -> bool {
    name.split('/').any(|part| part.starts_with('.'))
}

fn content<'a>(site: &Material<'a>, name: &str) -> Option<&'a Content> {
    let id = site.snapshot.find(&format!("content/pictures/{name}"))?;
    site.snapshot.file(id).map(|f| &f.content)
}

/// A picture as published: a photograph and a clip lose the data in which cameras keep the place.
pub fn published(site: &Material<'_>, name: &str) -> Vec<u8> {
    match content(site, name) {
        Some(Content::Text(text)) => text.clone().into_bytes(),
        Some(Content::Bytes(bytes)) => raster::clean(bytes).bytes,
        _ => Vec::new(),
    }
}

/// A picture's address below `pictures/`: spaces and commas would part it from the next in a list of sizes.
pub fn address(name: &str) -> String {
    let mut out = String::with_capacity(name.len());
    for c in name.chars() {
        match c {
            ' ' | ',' | '%' | '#' | '?' | '"' | '<' | '>' | '\\' => {
                out.push_str(&format!("%{:02X}", c as u32))
            }
            _ => out.push(c),
        }
    }
    out
}

/// A photograph for those who show a link with a picture: its address from the site's root, width, height and media type. The
/// widest of the smaller ones, where there are any: they need no more, and some refuse a heavy file.
pub fn for_links(site: &Material<'_>, name: &str) -> Option<(String, usize, usize, &'static str)> {
    let Some(Content::Bytes(bytes)) = content(site, name) else {
        return None;
    };
    let own = match raster::kind(bytes)? {
        Kind::Jpeg => "image/jpeg",
        Kind::Png => "image/png",
        Kind::WebP => "image/webp",
        Kind::Gif => "image/gif",
        Kind::Clip | Kind::WebM => return None,
    };
    let (width, height) = size(site, name)?;
    let of = |name: &str| format!("pictures/{}", address(name));
    let Some(smaller) = sizes(site).0.get(name).and_then(|s| s.last()) else {
        return Some((of(name), width, height, own));
    };
    let kind = match smaller.name.rsplit('.').next() {
        Some("jpg") => "image/jpeg",
        Some("png") => "image/png",
        _ => "image/webp",
    };
    let to = smaller.width as usize;
    Some((
        of(&smaller.name),
        to,
        scale::other_side(height, to, width),
        kind,
    ))
}

/// Width and height of a picture or clip as it is seen, in pixels, where they can be read; of an SVG its own, or those of its
/// view box.
pub fn size(site: &Material<'_>, name: &str) -> Option<(usize, usize)> {
    match content(site, name)? {
        Content::Bytes(bytes) if raster::kind(bytes) == Some(Kind::Clip) => clip::size(bytes),
        Content::Bytes(bytes) => scale::seen_size(bytes),
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

/// Everything of an image but its alternative text, as attributes: its address, its sizes, its room on the page.
pub fn attributes(site: &Material<'_>, name: &str) -> String {
    let address = |name: &str| escape(&self::address(name));
    let mut out = format!("src=\"pictures/{}\"", address(name));
    let Some((width, height)) = size(site, name) else {
        return out;
    };
    if let Some(smaller) = sizes(site).0.get(name) {
        let list: Vec<String> = smaller
            .iter()
            .map(|s| format!("pictures/{} {}w", address(&s.name), s.width))
            .collect();
        out.push_str(&format!(
            " srcset=\"{}, pictures/{} {width}w\" sizes=\"{SIZES}\"",
            list.join(", "),
            address(name)
        ));
    }
    out.push_str(&format!(" width=\"{width}\" height=\"{height}\""));
    out
}

/// Width and height as attributes of a clip, with a space before them: its own, else those of its poster.
pub fn clip_room(site: &Material<'_>, clip: &str, poster: Option<&str>) -> String {
    size(site, clip)
        .or_else(|| size(site, poster?))
        .map_or(String::new(), |(w, h)| {
            format!(" width=\"{w}\" height=\"{h}\"")
        })
}
