//! From a snapshot of files to a curriculum: every record read, every id looked up, every finding in its place.

mod again;
mod asked;
mod assemble;
mod draft;
mod drawing;
pub(crate) mod fields;
mod language;
mod ledger;
mod manner;
mod need;
mod note;
mod picture;
mod place;
mod posture;
mod record;
mod resolve;
mod school;
mod session;
mod spread;

pub use again::{Again, again};
pub use place::{Role, role};

use crate::curriculum::Curriculum;
use crate::curriculum::caution::Book;
use crate::curriculum::ledger::Ledger;
use crate::curriculum::school::School;
use crate::source::snapshot::{LARGEST_MEDIA, LARGEST_TEXT};
use crate::source::{
    Content, Diagnostic, FileId, Findings, Rule, Snapshot, SourceFile, Span, yaml,
};
use crate::words;
use rayon::prelude::*;
use record::{MovementFile, SkillRecord};
use std::collections::HashMap;

/// In bytes.
const MEGABYTE: u64 = 1_000_000;

/// What one file turned out to be.
enum Read {
    School(Box<School>),
    Cautions(Book),
    Ledger(Ledger),
    Words(String, words::Own),
    Movement(MovementFile),
    Skill(Box<SkillRecord>),
    Note {
        id: String,
        page: bool,
    },
    Picture,
    /// Could not be read; its name, so that nobody is told twice.
    Unread(String),
    Nothing,
}

/// Reads a whole curriculum. What is in error is marked so and found; the rest stands.
///
/// # Complexity
/// Linear in the bytes of the folder; files are read in parallel, and the result does not depend on it.
pub fn read(snapshot: &Snapshot) -> (Curriculum, Findings) {
    let files: Vec<(FileId, &SourceFile)> = snapshot.files().collect();
    let read: Vec<(FileId, Read, Findings)> = files
        .par_iter()
        .map(|(id, file)| {
            let mut findings = Findings::default();
            let read = read_file(*id, file, &mut findings);
            (*id, read, findings)
        })
        .collect();
    let mut findings = Findings::default();
    let mut parts = assemble::Parts::default();
    for (file, read, found) in read {
        findings.extend(found);
        match read {
            Read::School(school) => parts.school = Some(*school),
            Read::Cautions(book) => parts.cautions = book,
            Read::Ledger(ledger) => parts.ledger = ledger,
            Read::Words(language, own) => parts.words.push((file, language, own)),
            Read::Movement(movement) => parts.movements.push((file, movement)),
            Read::Skill(skill) => parts.skills.push((file, *skill)),
            Read::Note { id, page } => parts.notes.push((file, id, page)),
            Read::Unread(name) => {
                parts.unread.insert(name);
            }
            Read::Picture | Read::Nothing => {}
        }
    }
    same_names(&files, &mut findings);
    let folder = Span::top(FileId::FOLDER);
    if snapshot.find("content").is_some() {
        // A link that leads out, as was said.
    } else if !snapshot
        .files()
        .any(|(_, f)| f.path.starts_with("content/"))
    {
        let finding = Diagnostic::new(
            Rule::MissingFolder,
            folder,
            "there is no folder `content` with anything in it",
        );
        let inside = snapshot
            .files()
            .any(|(_, f)| f.path == "school.yaml" || f.path.starts_with("movements/"));
        findings.push(finding.help(match inside {
            true => "this looks like the inside of `content`: go one folder up, `cd ..`",
            false => "run `rungbook start DIR` for a new curriculum, or name its folder with `--from DIR`",
        }));
    } else if parts.school.is_none() && !parts.unread.contains("school") {
        let finding = Diagnostic::new(
            Rule::MissingFolder,
            folder,
            "there is no file `content/school.yaml`",
        );
        findings.push(finding.help("write one with the keys school, address, language and units"));
    }
    let curriculum = assemble::assemble(parts, snapshot, &mut findings);
    (curriculum, findings)
}

/// Files whose names differ in letter case alone: where a disk or a host takes no notice of case, one takes the other's place.
fn same_names(files: &[(FileId, &SourceFile)], findings: &mut Findings) {
    let mut seen: HashMap<String, FileId> = HashMap::new();
    let read = files.iter().filter(|(_, f)| role(&f.path) != Role::Ignored);
    for (id, file) in read {
        if let Some(first) = seen.insert(file.path.to_lowercase(), *id) {
            let name = file.path.rsplit('/').next().unwrap_or(&file.path);
            let finding = Diagnostic::new(
                Rule::SameFileName,
                Span::top(*id),
                format!("another file is named like `{name}` but for the case of letters"),
            );
            findings.push(
                finding
                    .related(Span::top(first), "the other one")
                    .help("rename one of them: many disks hold only one of the two"),
            );
        }
    }
}

fn read_file(id: FileId, file: &SourceFile, findings: &mut Findings) -> Read {
    let role = role(&file.path);
    // Said of a theme's files too, which are read elsewhere.
    let leads_out = file.content == Content::Outside && !place::is_passed_over(&file.path);
    if role == Role::Ignored && !leads_out {
        return Read::Nothing;
    }
    let stem = file
        .path
        .rsplit('/')
        .next()
        .and_then(|n| n.rsplit_once('.'))
        .map_or("", |(s, _)| s)
        .to_string();
    if let Some(finding) = not_read(id, file, &role, leads_out) {
        findings.push(finding);
        return Read::Unread(stem);
    }
    match &file.content {
        Content::Text(text) => read_text(id, text, role, stem, findings),
        Content::Bytes(bytes) => {
            if role == Role::Picture {
                picture::check_raster(id, &file.path, bytes, findings);
            }
            Read::Picture
        }
        _ => Read::Unread(stem),
    }
}

/// Why nothing of a file is read, where nothing is.
fn not_read(id: FileId, file: &SourceFile, role: &Role, leads_out: bool) -> Option<Diagnostic> {
    let top = Span::top(id);
    if leads_out {
        let message = "this link leads out of the curriculum's folder, and is not read";
        let help = "put a copy of what it leads to in its place, or take the link away: only what lies in the folder is published";
        return Some(Diagnostic::new(Rule::LinkOutside, top, message).help(help));
    }
    if let Content::Unreadable(why) = &file.content {
        let message = format!("the file cannot be read: {why}");
        let help = "check that the file is there and that you may read it";
        return Some(Diagnostic::new(Rule::UnreadableFile, top, message).help(help));
    }
    if let Role::Nobody(help) = role {
        let message = "nothing reads a file here";
        return Some(Diagnostic::new(Rule::UnknownPlace, top, message).help(*help));
    }
    match &file.content {
        Content::NotUtf8(stray) => {
            let message = format!("the file is not UTF-8 text: {stray} cannot be read");
            let help = "save it in your editor with the encoding UTF-8";
            Some(Diagnostic::new(Rule::NotUtf8, top, message).help(help))
        }
        Content::TooLarge(bytes) => {
            let (limit, help) = match role {
                Role::Picture => (
                    LARGEST_MEDIA,
                    "make it shorter or smaller: a client loads it over a phone's network",
                ),
                _ => (
                    LARGEST_TEXT,
                    "a movement or a note is a few kilobytes: is this the right file?",
                ),
            };
            let (size, limit) = (bytes.div_ceil(MEGABYTE), limit / MEGABYTE);
            let message =
                format!("the file has {size} MB and is not read; the limit is {limit} MB");
            Some(Diagnostic::new(Rule::FileTooLarge, top, message).help(help))
        }
        // Said above, wherever the file lies.
        Content::Unreadable(_) | Content::Outside => None,
        Content::Text(_) | Content::Bytes(_) => None,
    }
}

fn read_text(id: FileId, text: &str, role: Role, stem: String, findings: &mut Findings) -> Read {
    match role {
        Role::Note(note) => {
            return Read::Note {
                id: note,
                page: false,
            };
        }
        Role::Page(note) => {
            return Read::Note {
                id: note,
                page: true,
            };
        }
        Role::Picture => {
            picture::check_svg(id, text, findings);
            return Read::Picture;
        }
        _ => {}
    }
    let before = findings.len();
    let Some(root) = yaml::read(id, text, findings) else {
        if findings.len() == before {
            findings.push(
                Diagnostic::new(Rule::NotYaml, Span::top(id), "the file is empty")
                    .help("write the record, or delete the file"),
            );
        }
        return Read::Unread(stem);
    };
    match role {
        Role::School => Read::School(Box::new(school::school(&root, findings))),
        Role::Cautions => Read::Cautions(school::cautions(&root, findings)),
        Role::Ledger => Read::Ledger(ledger::ledger(&root, findings)),
        Role::Words(language) => {
            let own = words::own(&language, &root, findings);
            Read::Words(language, own)
        }
        Role::Movement => {
            record::movement_file(&root, findings).map_or(Read::Unread(stem), Read::Movement)
        }
        Role::Skill => {
            record::skill(&root, findings).map_or(Read::Unread(stem), |s| Read::Skill(Box::new(s)))
        }
        _ => Read::Nothing,
    }
}
