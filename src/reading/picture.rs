//! Pictures: SVG without script, photographs and clips that are whole, and names that the notes spell exactly.

use super::drawing;
use crate::source::pixels;
use crate::source::raster::{self, Kind};
use crate::source::suggest::did_you_mean;
use crate::source::{Diagnostic, FileId, Findings, Rule, Snapshot, Span};

/// Refuses an SVG that could run or fetch something.
pub fn check_svg(file: FileId, text: &str, findings: &mut Findings) {
    let lower = text.to_ascii_lowercase();
    let banned = [
        ("<!doctype", "a document type"),
        ("<!entity", "an entity"),
        ("javascript:", "a script address"),
        ("@import", "an import"),
        ("<?xml-stylesheet", "an outside style sheet"),
    ];
    let mut found: Vec<(usize, usize, &str)> = banned
        .iter()
        .filter_map(|(word, what)| lower.find(word).map(|at| (at, word.len(), *what)))
        .collect();
    found.extend(element(&lower));
    found.extend(outside_reference(&lower).map(|(at, len)| (at, len, "an outside reference")));
    found.extend(
        drawing::other_encoding(&lower).map(|(at, len)| (at, len, "another encoding than UTF-8")),
    );
    found.extend(drawing::no_letter(text).map(|(at, len)| (at, len, "a letter that is none")));
    found.extend(
        drawing::too_many_copies(text).map(|(at, len)| (at, len, "too many copies of its parts")),
    );
    found.extend(handler(&lower).map(|(at, len)| (at, len, "an event handler")));
    found.sort();
    if let Some((at, len, what)) = found.first() {
        findings.push(
            Diagnostic::new(
                Rule::UnsafePicture,
                Span::new(file, *at, at + len),
                format!("the picture holds {what}"),
            )
            .label("not allowed in a picture")
            .help("export it again as a plain drawing"),
        );
    }
}

/// Names a photograph or clip that is broken, or of a kind that would be published with the place where it was taken.
pub fn check_raster(file: FileId, path: &str, bytes: &[u8], findings: &mut Findings) {
    let ending = path.rsplit_once('.').map_or("", |(_, e)| e);
    let named = match ending.to_ascii_lowercase().as_str() {
        "jpg" | "jpeg" => Kind::Jpeg,
        "png" => Kind::Png,
        "webp" => Kind::WebP,
        "gif" => Kind::Gif,
        "mp4" | "m4v" | "mov" => Kind::Clip,
        "webm" => Kind::WebM,
        // Subtitles.
        "vtt" => return,
        _ => {
            findings.push(
                Diagnostic::new(
                    Rule::PictureKind,
                    Span::top(file),
                    format!("a picture ending in .{ending} may say where it was taken"),
                )
                .help("export it as .jpg, .png, .webp or .svg, a clip as .mp4"),
            );
            return;
        }
    };
    let cleaned = raster::clean(bytes);
    let broken = if raster::kind(bytes) != Some(named) {
        Some(format!("the file is not what its name says: no .{ending}"))
    } else if !cleaned.whole {
        Some("the file ends too early or is damaged".to_string())
    } else {
        None
    };
    let broken = broken.map(|message| {
        let help = "copy or export it again; it is published as far as it can be read";
        (Rule::BrokenPicture, message, help)
    });
    let found = broken.or_else(|| unseen(bytes)).or_else(|| {
        let message =
            "the clip holds data besides pictures and sound, which may say where it was taken";
        let help = "export it again without them";
        cleaned
            .may_tell
            .then(|| (Rule::PictureKind, message.to_string(), help))
    });
    if let Some((rule, message, help)) = found {
        findings.push(Diagnostic::new(rule, Span::top(file), message).help(help));
    }
}

/// Why a photograph that is whole would not be seen.
fn unseen(bytes: &[u8]) -> Option<(Rule, String, &'static str)> {
    let (message, help) = match pixels::fault(bytes)? {
        pixels::Fault::TooLarge(width, height) => (
            format!("the picture is {width} by {height} pixels: browsers refuse one so large"),
            "export it smaller: 2000 pixels are enough for any page",
        ),
        pixels::Fault::Unreadable => (
            "the picture cannot be read: a browser would show nothing".to_string(),
            "open it, look whether it is the picture you mean, and export it again",
        ),
    };
    Some((Rule::BrokenPicture, message, help))
}

/// The first element that runs, moves or embeds something, whatever prefix its name has.
fn element(text: &str) -> Option<(usize, usize, &'static str)> {
    text.match_indices('<').find_map(|(at, _)| {
        let rest = &text[at + 1..];
        let end = rest.find(|c: char| c.is_whitespace() || matches!(c, '>' | '/' | '<'));
        let name = &rest[..end.unwrap_or(rest.len())];
        let what = match name.rsplit(':').next().unwrap_or(name) {
            "script" => "a script",
            "foreignobject" => "a foreign object",
            "set" | "discard" => "an animation",
            "handler" | "listener" => "a handler",
            "iframe" | "object" | "embed" | "frame" | "link" | "meta" | "base" | "form"
            | "video" | "audio" => "an embedded page",
            animation if animation.starts_with("animate") => "an animation",
            _ => return None,
        };
        Some((at, name.len() + 1, what))
    })
}

/// An `href`, `src` or `url(` that leads outside the file.
fn outside_reference(text: &str) -> Option<(usize, usize)> {
    for key in ["href", "src", "url("] {
        for (at, _) in text.match_indices(key) {
            let rest =
                text[at + key.len()..].trim_start_matches(|c: char| c.is_whitespace() || c == '=');
            let value = rest.trim_start_matches(['"', '\'', ' ']);
            let is_value = key == "url(" || rest.starts_with(['"', '\'']);
            if is_value && !value.starts_with('#') {
                return Some((at, key.len()));
            }
        }
    }
    None
}

/// An attribute that begins with `on`.
fn handler(text: &str) -> Option<(usize, usize)> {
    text.match_indices("on").find_map(|(at, _)| {
        let starts =
            text[..at].ends_with(|c: char| c.is_whitespace() || c == '/' || c == '"' || c == '\'');
        let name_len = text[at..].find(|c: char| !c.is_ascii_alphabetic())?;
        let is_attribute = text[at + name_len..].trim_start().starts_with('=');
        (starts && is_attribute).then_some((at, name_len))
    })
}

/// Whether a picture exists, and a finding where it does not or its name differs in case.
pub fn exists(name: &str, span: Span, snapshot: &Snapshot, findings: &mut Findings) -> bool {
    let path = format!("content/pictures/{name}");
    if snapshot.find(&path).is_some() {
        return true;
    }
    let names: Vec<&str> = snapshot
        .files()
        .filter_map(|(_, f)| f.path.strip_prefix("content/pictures/"))
        .collect();
    let same_but_case = names.iter().find(|n| n.eq_ignore_ascii_case(name));
    let (message, help) = match same_but_case {
        None if name.contains("://") => (
            format!("`{name}` is an address, not a file of this folder"),
            "put the file into content/pictures, as a page asks no other server; to one that lies elsewhere, link from the note".into(),
        ),
        Some(other) => (
            format!("the picture's name differs in case: the file is called `{other}`"),
            format!("type `{other}`"),
        ),
        None => (
            format!("there is no picture `{name}`"),
            did_you_mean(name, names.iter().copied())
                .unwrap_or_else(|| "put the file into content/pictures".into()),
        ),
    };
    findings.push(
        Diagnostic::new(Rule::MissingPicture, span, message)
            .label("not found")
            .help(help),
    );
    false
}
