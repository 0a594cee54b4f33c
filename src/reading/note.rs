//! Notes: whose they are, and whether all they refer to exists.

use super::assemble::NotePart;
use super::resolve::Ids;
use super::{picture, session};
use crate::curriculum::note::{Note, NoteOwner};
use crate::curriculum::{Owner, page};
use crate::source::markdown::{Outline, Reference};
use crate::source::suggest::did_you_mean;
use crate::source::{Diagnostic, FileId, Findings, Rule, Snapshot, Span};

/// The owner of a note, with a finding where there is none.
pub fn owner(
    file: FileId,
    id: &str,
    page: bool,
    ids: &Ids<'_>,
    findings: &mut Findings,
) -> NoteOwner {
    if page {
        if page::is_extendable(id) {
            return NoteOwner::FixedPage;
        }
        if let Err((message, help)) = crate::curriculum::Id::new(id) {
            findings.push(
                Diagnostic::new(Rule::BadId, Span::top(file), message)
                    .help(format!("rename the file; {help}")),
            );
            return NoteOwner::Nobody;
        }
        return NoteOwner::Page;
    }
    match ids.by_id.get(id) {
        Some(Owner::Page(_)) | None => {
            if !ids.unread.contains(id) {
                let records = ids.by_id.keys().map(String::as_str);
                let help = ids
                    .old
                    .get(id)
                    .map(|o| {
                        format!(
                            "`{id}` was renamed: rename the file to `{}.md`",
                            ids.id_of(*o)
                        )
                    })
                    .or_else(|| did_you_mean(id, records).map(|h| format!("rename the file; {h}")))
                    .unwrap_or_else(|| {
                        format!(
                            "write the movement `{id}`, or move the file to content/notes/pages"
                        )
                    });
                findings.push(
                    Diagnostic::new(
                        Rule::NoteWithoutOwner,
                        Span::top(file),
                        format!("no record has the id `{id}`, so nobody reads this note"),
                    )
                    .help(help),
                );
            }
            NoteOwner::Nobody
        }
        Some(owner) => NoteOwner::Record(*owner),
    }
}

/// The title of a page: its first heading, or its id in words.
pub fn title(id: &str, text: &str) -> String {
    let heading = text
        .lines()
        .find_map(|l| l.strip_prefix("# "))
        .map(str::trim)
        .filter(|t| !t.is_empty());
    heading.map_or_else(|| capital(&id.replace('-', " ")), str::to_string)
}

/// The text with a capital first letter.
pub fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars
        .next()
        .map_or_else(String::new, |c| c.to_uppercase().chain(chars).collect())
}

/// Builds the note; session lines that cannot be read are found and left out.
pub fn build(
    part: NotePart,
    outline: Outline,
    owner: NoteOwner,
    title: String,
    ids: &Ids<'_>,
    findings: &mut Findings,
) -> Note {
    let (file, id, _) = part;
    let held_back = matches!(owner, NoteOwner::Record(Owner::Movement(ix)) if ids.movements[ix.at()].held_back())
        || matches!(owner, NoteOwner::Record(Owner::Family(ix)) if ids.families[ix.at()].held_back);
    let mut sessions = Vec::new();
    for block in &outline.sessions {
        sessions.push(session::read(block, held_back, ids, findings));
    }
    Note {
        id,
        title,
        owner,
        file,
        outline,
        sessions,
        held_back,
    }
}

pub fn held_back_finding(span: Span, id: &str) -> Diagnostic {
    Diagnostic::new(
        Rule::HeldBack,
        span,
        format!("`{id}` is held back, but this is published"),
    )
    .label("held back")
    .help("take it out here, or publish it: delete its line `held_back: true`")
}

/// The file that a picture's address ends in, where it can be one of a folder.
fn picture_name(to: &str) -> &str {
    let name = to.rsplit(['/', '\\']).next().unwrap_or("");
    match name.contains('.') && !name.contains([' ', '?', '#']) {
        true => name,
        false => "name.svg",
    }
}

/// Checks links, pictures, references and raw HTML of a note.
pub fn check(
    note_outline: &Outline,
    held_back: bool,
    ids: &Ids<'_>,
    snapshot: &Snapshot,
    findings: &mut Findings,
) {
    for link in &note_outline.links {
        check_link(link, held_back, ids, findings);
    }
    for picture in &note_outline.pictures {
        check_picture(picture, snapshot, findings);
    }
    for reference in &note_outline.undefined {
        findings.push(
            Diagnostic::new(
                Rule::BrokenReference,
                reference.span,
                format!(
                    "the reference `[{}]` is defined nowhere in this note",
                    reference.to
                ),
            )
            .label("not defined")
            .help("write the address behind the text: `[text](movement:some-id)`"),
        );
    }
    for span in &note_outline.html {
        findings.push(
            Diagnostic::new(Rule::RawHtml, *span, "HTML in a note is shown as text")
                .label("HTML")
                .help("write it in Markdown, or put it between backticks"),
        );
    }
}

/// What a link writes before the id of a record.
fn kind(owner: &Owner) -> &'static str {
    match owner {
        Owner::Movement(_) => "movement",
        Owner::Family(_) => "family",
        Owner::Skill(_) => "skill",
        Owner::Page(_) => "page",
    }
}

/// What to write for a link that names no kind of thing.
fn whole_address(address: &str, ids: &Ids<'_>) -> String {
    let name = address
        .trim_end_matches(".html")
        .trim_end_matches(".md")
        .trim_end_matches('/');
    let name = name.rsplit('/').next().unwrap_or(name);
    match ids.by_id.get(name).map(kind) {
        Some(kind) => format!("write `{kind}:{name}`"),
        None if address.starts_with("www.") => format!("write `https://{address}`"),
        None => "write `movement:some-id`, `family:some-id`, `skill:some-id`, `page:some-id` or `https://...`".to_string(),
    }
}

fn check_picture(picture: &Reference, snapshot: &Snapshot, findings: &mut Findings) {
    match picture.to.strip_prefix("picture:") {
        Some(name) => {
            picture::exists(name, picture.span, snapshot, findings);
        }
        None => findings.push(
            Diagnostic::new(
                Rule::LinkScheme,
                picture.span,
                "a picture in a note begins with `picture:`",
            )
            .label("not a picture of content/pictures")
            .help(format!(
                "put the file into content/pictures and write `![{}](picture:{})`",
                match picture.text.trim() {
                    "" => "what it shows",
                    text => text,
                },
                picture_name(&picture.to),
            )),
        ),
    }
    if picture.text.trim().is_empty() {
        findings.push(
            Diagnostic::new(
                Rule::MissingAlt,
                picture.span,
                "a picture has no alternative text",
            )
            .label("no words between the brackets")
            .help("write what it shows: `![what it shows](picture:name.svg)`"),
        );
    }
}

fn check_link(link: &Reference, held_back: bool, ids: &Ids<'_>, findings: &mut Findings) {
    let address = link.to.as_str();
    let (scheme, rest) = address.split_once(':').unwrap_or(("", address));
    let id = rest.split('#').next().unwrap_or(rest);
    let expected = match scheme {
        "movement" | "family" | "skill" | "page" => scheme,
        "http" | "https" | "mailto" => return,
        "" if address.starts_with('#') && address.len() > 1 => return,
        _ => {
            findings.push(
                Diagnostic::new(
                    Rule::LinkScheme,
                    link.span,
                    format!(
                        "`{address}` is neither a link into the curriculum nor to an outside page"
                    ),
                )
                .label("not a link that works")
                .help(whole_address(address, ids)),
            );
            return;
        }
    };
    let owner = ids.by_id.get(id);
    let hidden = match owner {
        Some(Owner::Movement(ix)) => ids.movements[ix.at()].held_back(),
        Some(Owner::Family(ix)) => ids.families[ix.at()].held_back,
        _ => false,
    };
    let fits = match owner {
        Some(owner) => kind(owner) == expected,
        None => expected == "page" && page::is_linkable(id),
    };
    if fits && hidden && !held_back {
        findings.push(held_back_finding(link.span, id));
    }
    if fits || ids.unread.contains(id) {
        return;
    }
    findings.push(
        Diagnostic::new(
            Rule::BrokenLink,
            link.span,
            format!("there is no {expected} `{id}`"),
        )
        .label("leads nowhere")
        .help(instead(expected, id, ids)),
    );
}

/// What to write for a link whose id is none of its kind.
fn instead(expected: &str, id: &str, ids: &Ids<'_>) -> String {
    if let Some(owner) = ids.by_id.get(id) {
        let kind = kind(owner);
        return format!("`{id}` is a {kind}: write `{kind}:{id}`");
    }
    if let Some(owner) = ids.old.get(id) {
        let (kind, now) = (kind(owner), ids.id_of(*owner));
        return format!("`{id}` was renamed: type `{kind}:{now}`");
    }
    let same_kind = ids.by_id.iter().filter(|(_, o)| kind(o) == expected);
    did_you_mean(id, same_kind.map(|(id, _)| id.as_str()))
        .unwrap_or_else(|| format!("name a {expected} of this curriculum"))
}
