//! Notes as HTML: links into the curriculum with their marks, sessions as tables, raw HTML made harmless, nothing inline that a
//! strict policy would refuse.

use crate::curriculum::exit::{Piece, pieces};
use crate::curriculum::note::{Note, NoteOwner, SessionLine};
use crate::curriculum::{Movement, MovementIx, NoteIx, Owner};
use crate::site::material::Material;
use crate::site::media::picture;
use crate::site::names::named;
use crate::site::pages::highlight;
use crate::site::pages::view;
use crate::site::theme::ThemeError;
use crate::source::markdown::{is_session, options};
use crate::words::escape::{escape, escape_into};
use memchr::memchr;
use pulldown_cmark::{
    Alignment, CodeBlockKind, CowStr, Event, HeadingLevel, Parser, Tag, TagEnd, html,
};
use std::borrow::Cow;
use std::collections::HashMap;

/// Where a note stands.
#[derive(Clone, Copy)]
pub struct Place<'o> {
    /// Headings begin at `<h2>` for `##` when it is 0, one level lower for each step of it.
    pub shift: usize,
    /// On a page with other notes, for paper: the anchor of what the note is of. The note's own anchors begin so, and its pictures
    /// are there at once.
    pub owner: Option<&'o str>,
}

impl Place<'_> {
    /// On the page of what it is of.
    pub const fn own(shift: usize) -> Place<'static> {
        Place { shift, owner: None }
    }
}

/// The note as HTML.
pub fn render(site: &Material<'_>, ix: NoteIx, place: Place<'_>) -> Result<String, ThemeError> {
    Ok(placed(&anywhere(site, ix, place.shift == 0)?, place))
}

/// The note of a movement that has a page and stands in booklets: who comes first leaves it for who comes next.
pub fn of_movement(
    site: &Material<'_>,
    movement: MovementIx,
    place: Place<'_>,
) -> Result<String, ThemeError> {
    let Some(ix) = site.curriculum.movement(movement).note() else {
        return Ok(String::new());
    };
    let left = site.texts.note(movement.at());
    if let Some(made) = left.and_then(|left| left.lock().ok()?.take()) {
        return Ok(placed(&made, place));
    }
    let made = anywhere(site, ix, false)?;
    let out = placed(&made, place);
    if let Some(mut left) = left.and_then(|left| left.lock().ok()) {
        *left = Some(made.into());
    }
    Ok(out)
}

/// Stands before a letter for what depends on the place: what no file holds but by malice, which then spoils its own text alone.
const SLOT: &str = "\0\u{1}\u{fdd0}";
const ANCHOR: &str = "\0\u{1}\u{fdd0}a";
const WAITS: &str = "\0\u{1}\u{fdd0}w";

/// The note as HTML with slots for what depends on its place. `titled`: a title of the note's own stands on the page already.
fn anywhere(site: &Material<'_>, ix: NoteIx, titled: bool) -> Result<String, ThemeError> {
    let note = site.curriculum.note(ix);
    // CommonMark 0.31, 2.3: for security it is replaced.
    let text = site.snapshot.text(note.file);
    let text = match memchr(0, text.as_bytes()) {
        Some(_) => Cow::Owned(text.replace('\0', "\u{fffd}")),
        None => Cow::Borrowed(text),
    };
    let mut writer = Writer {
        site,
        note,
        titled,
        sessions: 0,
        heading_ids: HashMap::new(),
        quoted: 0,
    };
    let mut events = Parser::new_ext(&text, options());
    let mut out = Vec::new();
    writer.events(&mut events, &mut out, &mut |_| false)?;
    let mut page = String::with_capacity(text.len() * 2);
    html::push_html(&mut page, out.into_iter());
    Ok(page)
}

/// A note at its place.
fn placed(made: &str, place: Place<'_>) -> String {
    let mut out = String::with_capacity(made.len() + made.len() / 16);
    let mut parts = made.split(SLOT);
    out.push_str(parts.next().unwrap_or(""));
    for part in parts {
        let Some((slot, rest)) = part.split_at_checked(1) else {
            continue;
        };
        match (slot, place.owner) {
            ("a", Some(owner)) => {
                out.push_str(owner);
                out.push('-');
            }
            ("w", None) => out.push_str(" loading=\"lazy\""),
            ("a" | "w", _) => {}
            (level, _) => {
                let level: usize = level.parse().unwrap_or(6);
                out.push_str(["1", "2", "3", "4", "5", "6"][(level + place.shift).min(6) - 1]);
            }
        }
        out.push_str(rest);
    }
    out
}

/// A movement's way out as HTML: what it links bears its mark.
pub fn way_out(site: &Material<'_>, movement: &Movement) -> Result<Option<String>, ThemeError> {
    let Some(text) = movement.exit() else {
        return Ok(None);
    };
    let mut out = String::with_capacity(text.len());
    for piece in pieces(text) {
        match piece {
            Piece::Text(text) => escape_into(&mut out, text),
            Piece::Link { words, id } => match site.curriculum.find_movement(id) {
                Some(to) if words.is_empty() => out.push_str(site.links.of(to)),
                Some(to) => {
                    let (words, href) = (escape(words), format!("{id}.html"));
                    let owner = Owner::Movement(to);
                    out.push_str(&named(site.curriculum, site.theme, owner, &words, &href)?);
                }
                None => escape_into(&mut out, words),
            },
        }
    }
    Ok(Some(out))
}

struct Writer<'a, 'p> {
    site: &'a Material<'p>,
    note: &'a Note,
    titled: bool,
    sessions: usize,
    heading_ids: HashMap<String, usize>,
    /// How deep it stands in links, pictures, code and headings, whose text is taken as it is.
    quoted: usize,
}

impl<'e> Writer<'_, '_> {
    /// Rewrites events into `out` until `ends` says so.
    fn events(
        &mut self,
        events: &mut Parser<'e>,
        out: &mut Vec<Event<'e>>,
        ends: &mut dyn FnMut(&TagEnd) -> bool,
    ) -> Result<(), ThemeError> {
        while let Some(event) = events.next() {
            match event {
                Event::End(end) if ends(&end) => return Ok(()),
                Event::Start(Tag::Link { dest_url, .. }) => {
                    let inner = self.inner(events, |end| matches!(end, TagEnd::Link))?;
                    let mut text = String::new();
                    html::push_html(&mut text, inner.into_iter());
                    out.push(Event::InlineHtml(self.link(&dest_url, &text)?.into()));
                }
                Event::Start(Tag::Image { dest_url, .. }) => {
                    let inner = self.inner(events, |end| matches!(end, TagEnd::Image))?;
                    out.push(Event::InlineHtml(self.picture(&dest_url, &inner).into()));
                }
                Event::Start(Tag::Heading { level, .. }) => self.heading(level, events, out)?,
                Event::Start(Tag::CodeBlock(kind)) => {
                    let inner = self.inner(events, |end| matches!(end, TagEnd::CodeBlock))?;
                    out.push(Event::Html(self.code_block(&kind, &plain(&inner))?.into()));
                }
                Event::Start(Tag::Table(alignments)) => {
                    // Alignment would be written as inline style.
                    out.push(Event::Html("<div class=\"wide\" tabindex=\"0\">".into()));
                    out.push(Event::Start(Tag::Table(vec![
                        Alignment::None;
                        alignments.len()
                    ])));
                }
                Event::End(TagEnd::Table) => {
                    out.push(Event::End(TagEnd::Table));
                    out.push(Event::Html("</div>\n".into()));
                }
                Event::Start(Tag::HtmlBlock) => out.push(Event::Start(Tag::Paragraph)),
                Event::End(TagEnd::HtmlBlock) => out.push(Event::End(TagEnd::Paragraph)),
                Event::Html(text) | Event::InlineHtml(text) => out.push(Event::Text(text)),
                Event::Start(Tag::FootnoteDefinition(label)) => {
                    out.push(Event::Start(Tag::FootnoteDefinition(self.footnote(&label))))
                }
                Event::FootnoteReference(label) => {
                    out.push(Event::FootnoteReference(self.footnote(&label)))
                }
                Event::Text(text) if self.quoted == 0 => self.mentions(text, out)?,
                other => out.push(other),
            }
        }
        Ok(())
    }

    /// A running text: an inverted or loaded movement that it names without a link is named with its mark all the same, but for
    /// the one whose note it is.
    fn mentions(&self, text: CowStr<'e>, out: &mut Vec<Event<'e>>) -> Result<(), ThemeError> {
        let own = |ix| self.note.owner == NoteOwner::Record(Owner::Movement(ix));
        let mut found = self.site.links.mentions().find(&text);
        found.retain(|(_, ix)| !own(*ix));
        if found.is_empty() {
            out.push(Event::Text(text));
            return Ok(());
        }
        let mut last = 0;
        for (at, ix) in found {
            let html = self.named(Owner::Movement(ix), escape(&text[at.clone()]), "")?;
            out.push(Event::Text(text[last..at.start].to_string().into()));
            out.push(Event::InlineHtml(html.into()));
            last = at.end;
        }
        out.push(Event::Text(text[last..].to_string().into()));
        Ok(())
    }

    fn inner(
        &mut self,
        events: &mut Parser<'e>,
        ends: impl Fn(&TagEnd) -> bool,
    ) -> Result<Vec<Event<'e>>, ThemeError> {
        let mut out = Vec::new();
        self.quoted += 1;
        let done = self.events(events, &mut out, &mut |end| ends(end));
        self.quoted -= 1;
        done.map(|()| out)
    }

    /// A heading with an id of its own; the first heading of a page is its title and stands in the page already, as does the
    /// name of the record.
    fn heading(
        &mut self,
        level: HeadingLevel,
        events: &mut Parser<'e>,
        out: &mut Vec<Event<'e>>,
    ) -> Result<(), ThemeError> {
        let inner = self.inner(events, |end| matches!(end, TagEnd::Heading(_)))?;
        let text = plain(&inner);
        let names_its_record = match self.note.owner {
            NoteOwner::Record(owner) => self.site.curriculum.name_of(owner) == text,
            _ => false,
        };
        if level == HeadingLevel::H1 && (self.titled || names_its_record) {
            return Ok(());
        }
        let level = (level as usize).max(2);
        let id = self.heading_id(&text);
        let mut marked = Vec::new();
        for event in inner {
            match event {
                Event::Text(text) => self.mentions(text, &mut marked)?,
                other => marked.push(other),
            }
        }
        let mut body = String::new();
        html::push_html(&mut body, marked.into_iter());
        out.push(Event::Html(
            format!("<h{SLOT}{level} id=\"{id}\">{body}</h{SLOT}{level}>\n").into(),
        ));
        Ok(())
    }

    fn heading_id(&mut self, text: &str) -> String {
        let words: Vec<String> = text
            .to_lowercase()
            .split(|c: char| !c.is_alphanumeric())
            .filter(|w| !w.is_empty())
            .map(str::to_string)
            .collect();
        let base = format!("{ANCHOR}note-{}", words.join("-"));
        let count = self.heading_ids.entry(base.clone()).or_default();
        *count += 1;
        if *count == 1 {
            base
        } else {
            format!("{base}-{count}")
        }
    }

    fn link(&self, to: &str, text: &str) -> Result<String, ThemeError> {
        let (scheme, rest) = to.split_once(':').unwrap_or(("", to));
        let (id, fragment) = rest
            .split_once('#')
            .map_or((rest, String::new()), |(id, f)| (id, format!("#{f}")));
        let curriculum = self.site.curriculum;
        let target = match scheme {
            "movement" | "family" | "skill" | "page" => curriculum.find(id),
            _ => None,
        };
        let name = |owner: Owner| {
            if text.trim().is_empty() {
                escape(curriculum.name_of(owner))
            } else {
                text.to_string()
            }
        };
        if let Some(owner @ (Owner::Movement(_) | Owner::Skill(_) | Owner::Family(_))) = target {
            return self.named(owner, name(owner), &fragment);
        }
        Ok(match target {
            Some(owner) => format!(
                "<a href=\"{}.html{}\">{}</a>",
                escape(id),
                escape(&fragment),
                name(owner)
            ),
            None if scheme == "page" => {
                let text = if text.trim().is_empty() {
                    escape(&id.replace('-', " "))
                } else {
                    text.to_string()
                };
                format!("<a href=\"{}.html\">{text}</a>", escape(id))
            }
            // Proof lets no other scheme through; whatever slips by is shown as text.
            None if matches!(scheme, "http" | "https" | "mailto") || to.starts_with('#') => {
                let text = if text.trim().is_empty() {
                    escape(to)
                } else {
                    text.to_string()
                };
                let rel = if to.starts_with('#') {
                    ""
                } else {
                    " rel=\"noopener\""
                };
                let own = to.strip_prefix('#').filter(|a| is_own(a));
                let to = own.map_or(to.to_string(), |a| format!("#{ANCHOR}{a}"));
                format!("<a href=\"{}\"{rel}>{text}</a>", escape(&to))
            }
            None => text.to_string(),
        })
    }

    /// A record under a text of the note (HTML), leading to a fragment of its page; an old id leads to the page that it has now.
    fn named(&self, owner: Owner, text: String, fragment: &str) -> Result<String, ThemeError> {
        let (site, curriculum) = (self.site, self.site.curriculum);
        let kept = site.links.of_owner(owner);
        if fragment.is_empty()
            && text == escape(curriculum.name_of(owner))
            && let Some(kept) = kept
        {
            return Ok(kept.to_string());
        }
        let href = format!("{}.html{fragment}", curriculum.id_of(owner));
        named(curriculum, site.theme, owner, &text, &href)
    }

    fn code_block(&mut self, kind: &CodeBlockKind<'_>, text: &str) -> Result<String, ThemeError> {
        if is_session(kind) {
            let lines = self
                .note
                .sessions
                .get(self.sessions)
                .map_or(&[][..], Vec::as_slice);
            self.sessions += 1;
            return self.session(lines, text);
        }
        let yaml = matches!(kind, CodeBlockKind::Fenced(info) if info.split([' ', ',']).next() == Some("yaml"));
        let body = if yaml {
            highlight::definition(text)
        } else {
            escape(text)
        };
        Ok(format!(
            "<pre class=\"source\" tabindex=\"0\"><code>{body}</code></pre>\n"
        ))
    }

    fn footnote(&self, label: &str) -> CowStr<'static> {
        format!("{ANCHOR}footnote-{label}").into()
    }

    fn picture(&self, to: &str, inner: &[Event<'_>]) -> String {
        let file = to.strip_prefix("picture:").unwrap_or("");
        format!(
            "<img {} alt=\"{}\" decoding=\"async\"{WAITS}>",
            picture::attributes(self.site, file),
            escape(&plain(inner))
        )
    }

    fn session(&self, lines: &[SessionLine], text: &str) -> Result<String, ThemeError> {
        let rows: Vec<view::SessionRow> = lines
            .iter()
            .map(|line| view::session_row(self.site, line))
            .collect();
        self.site.component(
            "ui.session",
            &[
                ("rows", tera::Value::from_serializable(&rows)),
                ("source", highlight::session(text).into()),
            ],
        )
    }
}

/// Whether an anchor is one that notes have.
fn is_own(anchor: &str) -> bool {
    anchor.starts_with("note-") || anchor.starts_with("footnote-")
}

/// The plain text of events.
fn plain(events: &[Event<'_>]) -> String {
    events
        .iter()
        .filter_map(|e| match e {
            Event::Text(t) | Event::Code(t) => Some(t.as_ref()),
            Event::SoftBreak | Event::HardBreak => Some(" "),
            _ => None,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_note_takes_what_depends_on_its_place() {
        let made =
            "<h\u{0}2 id=\"\0anote-a\">é 2w</h\u{0}2><h\u{0}6>b</h\u{0}6><a href=\"#\0anote-a\"><img\0w>"
                .replace('\0', SLOT);
        let made = made.as_str();
        assert_eq!(
            placed(made, Place::own(1)),
            "<h3 id=\"note-a\">é 2w</h3><h6>b</h6><a href=\"#note-a\"><img loading=\"lazy\">"
        );
        let place = Place {
            shift: 3,
            owner: Some("movement-x"),
        };
        assert_eq!(
            placed(made, place),
            "<h5 id=\"movement-x-note-a\">é 2w</h5><h6>b</h6><a href=\"#movement-x-note-a\"><img>"
        );
    }
}
