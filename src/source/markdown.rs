//! The outline of a note: its links, pictures, sessions and raw HTML, each with its place. Rendering is the site's.

use super::{FileId, Span};
use pulldown_cmark::{BrokenLink, CowStr, Event, LinkType, Options, Parser, Tag, TagEnd};
use std::ops::Range;

/// CommonMark with tables, footnotes and strikethrough.
pub fn options() -> Options {
    Options::ENABLE_TABLES | Options::ENABLE_FOOTNOTES | Options::ENABLE_STRIKETHROUGH
}

/// A link or a picture: where it leads, its text, and the place of the address.
#[derive(Clone, Debug, PartialEq)]
pub struct Reference {
    pub to: String,
    pub text: String,
    pub span: Span,
}

/// A line of a `session` block that is not blank.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    pub text: String,
    pub span: Span,
}

/// What a note refers to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outline {
    pub links: Vec<Reference>,
    pub pictures: Vec<Reference>,
    pub sessions: Vec<Vec<Line>>,
    /// Raw HTML, block or inline.
    pub html: Vec<Span>,
    /// References like `[text][name]` whose name is defined nowhere.
    pub undefined: Vec<Reference>,
    pub words: usize,
}

/// Reads a note's outline. Never fails: every text is CommonMark.
pub fn outline(file: FileId, text: &str) -> Outline {
    let mut undefined = Vec::new();
    let on_broken = |link: BrokenLink<'_>| -> Option<(CowStr<'_>, CowStr<'_>)> {
        undefined.extend(meant_as_link(file, &link));
        None
    };
    let mut out = Outline::default();
    // The link or picture being read, innermost last, and the session block if one is open.
    let mut open: Vec<(bool, Reference)> = Vec::new();
    let mut session: Option<Vec<Line>> = None;
    let parser = Parser::new_with_broken_link_callback(text, options(), Some(on_broken));
    for (event, range) in parser.into_offset_iter() {
        match event {
            Event::Start(Tag::Link { dest_url, .. }) => {
                open.push((false, reference(file, text, &dest_url, &range)))
            }
            Event::Start(Tag::Image { dest_url, .. }) => {
                open.push((true, reference(file, text, &dest_url, &range)))
            }
            Event::End(TagEnd::Link | TagEnd::Image) => {
                if let Some((picture, reference)) = open.pop() {
                    if picture {
                        out.pictures.push(reference)
                    } else {
                        out.links.push(reference)
                    }
                }
            }
            Event::Start(Tag::CodeBlock(kind)) if is_session(&kind) => session = Some(Vec::new()),
            Event::End(TagEnd::CodeBlock) => out.sessions.extend(session.take()),
            Event::Text(words) => match &mut session {
                Some(lines) => lines.extend(session_lines(file, text, &range)),
                None => {
                    out.words += words.split_whitespace().count();
                    for (_, reference) in &mut open {
                        reference.text.push_str(&words);
                    }
                }
            },
            Event::Code(words) => {
                for (_, reference) in &mut open {
                    reference.text.push_str(&words);
                }
            }
            Event::Html(_) | Event::InlineHtml(_) => {
                out.html.push(Span::new(file, range.start, range.end))
            }
            _ => {}
        }
    }
    out.undefined = undefined;
    out
}

/// `[word]` alone is ordinary text in brackets; only the written-out forms are meant as links.
fn meant_as_link(file: FileId, link: &BrokenLink<'_>) -> Option<Reference> {
    let meant = matches!(
        link.link_type,
        LinkType::Reference
            | LinkType::ReferenceUnknown
            | LinkType::Collapsed
            | LinkType::CollapsedUnknown
    );
    meant.then(|| Reference {
        to: link.reference.to_string(),
        text: String::new(),
        span: Span::new(file, link.span.start, link.span.end),
    })
}

/// Whether a fenced block is a training session.
pub fn is_session(kind: &pulldown_cmark::CodeBlockKind<'_>) -> bool {
    match kind {
        pulldown_cmark::CodeBlockKind::Fenced(info) => {
            info.split([' ', ',']).next() == Some("session")
        }
        pulldown_cmark::CodeBlockKind::Indented => false,
    }
}

/// The address inside a link's source, or the whole link when it is defined elsewhere.
fn reference(file: FileId, text: &str, to: &str, range: &Range<usize>) -> Reference {
    let source = &text[range.clone()];
    let span = match source.rfind(to) {
        Some(at) if !to.is_empty() => {
            Span::new(file, range.start + at, range.start + at + to.len())
        }
        _ => Span::new(file, range.start, range.end),
    };
    Reference {
        to: to.to_string(),
        text: String::new(),
        span,
    }
}

fn session_lines(file: FileId, text: &str, range: &Range<usize>) -> Vec<Line> {
    let mut at = range.start;
    let mut lines = Vec::new();
    for line in text[range.clone()].split_inclusive('\n') {
        let body = line.trim();
        if !body.is_empty() {
            let from = at + line.find(body).unwrap_or(0);
            lines.push(Line {
                text: body.to_string(),
                span: Span::new(file, from, from + body.len()),
            });
        }
        at += line.len();
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_of_links_and_sessions() {
        let text = "Go [on](movement:plank) or [x][nowhere].\n\n```session\nplank  3x20 s\n```\n<b>hi</b>\n";
        let out = outline(FileId(0), text);
        let span = out.links[0].span;
        assert_eq!(
            &text[span.start as usize..span.end as usize],
            "movement:plank"
        );
        assert_eq!(out.links[0].text, "on");
        assert_eq!(out.undefined[0].to, "nowhere");
        assert_eq!(out.sessions[0][0].text, "plank  3x20 s");
        assert!(!out.html.is_empty());
    }
}
