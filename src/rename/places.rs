//! Where an id is written: in definitions by the table of keys, in notes by their links, pictures and sessions.

use super::edit::Edit;
use crate::curriculum::keys::{self, Key, Shape};
use crate::source::markdown;
use crate::source::yaml::{self, Node, Value};
use crate::source::{FileId, Findings};

/// What changes in one file.
#[derive(Default)]
pub struct Found {
    pub edits: Vec<Edit>,
    /// The id stands where the file does not hold it letter by letter.
    pub unclear: bool,
}

struct Search<'a> {
    text: &'a str,
    old: &'a str,
    new: &'a str,
    /// Pictures that move, by their path below `content/pictures`.
    pictures: Vec<(&'a str, &'a str)>,
    found: Found,
}

/// The places of `old` in a file of the curriculum.
pub fn of(
    file: FileId,
    path: &str,
    text: &str,
    old: &str,
    new: &str,
    moves: &[(String, String)],
) -> Found {
    let below = |path: &'_ str| path.strip_prefix("content/pictures/").map(str::len);
    let pictures = moves.iter().filter_map(|(from, to)| {
        let (a, b) = (below(from)?, below(to)?);
        Some((&from[from.len() - a..], &to[to.len() - b..]))
    });
    let mut search = Search {
        text,
        old,
        new,
        pictures: pictures.collect(),
        found: Found::default(),
    };
    if path.starts_with("content/notes/") && path.ends_with(".md") {
        search.note(file);
    } else if path.ends_with(".yaml") {
        let kind = path.strip_prefix("content/").unwrap_or("");
        let top = [("movements/", keys::MOVEMENT), ("skills/", keys::SKILL)];
        let known = top.iter().find(|(folder, _)| kind.starts_with(folder));
        let root = yaml::read(file, text, &mut Findings::default());
        if let (Some((_, keys)), Some(root)) = (known, root) {
            search.record(&root, &[keys, keys::FAMILY_ONLY]);
        }
        search.links(0, text);
    }
    search.found
}

impl Search<'_> {
    fn edit(&mut self, from: usize, to: usize, text: String) {
        self.found.edits.push(Edit { from, to, text });
    }

    fn is_old(&self, node: &Node) -> bool {
        node.text() == Some(self.old)
    }

    /// A scalar that names a record.
    fn id(&mut self, node: &Node) {
        if !self.is_old(node) {
            return;
        }
        let span = node.part(0, self.old.len());
        let (from, to) = (span.start as usize, span.end as usize);
        match self.text.get(from..to) == Some(self.old) {
            true => self.edit(from, to, self.new.to_string()),
            false => self.found.unclear = true,
        }
    }

    fn record(&mut self, node: &Node, all: &[&[Key]]) {
        let Value::Map(entries) = &node.value else {
            return;
        };
        for (name, value) in entries {
            let Some(key) = name.text().and_then(|name| {
                all.iter()
                    .flat_map(|keys| keys.iter())
                    .find(|key| key.name == name)
            }) else {
                continue;
            };
            match (key.name, key.shape) {
                // Old ids stay what they were.
                ("was", _) => {}
                ("movement" | "family" | "skill", Shape::Id) => {
                    self.id(value);
                    if self.is_old(value) {
                        self.was(node, name);
                    }
                }
                ("movements", _) => self.members(value),
                ("file" | "poster", _) => self.picture(value),
                (_, Shape::Id | Shape::Ids) => self.ids(value),
                (_, Shape::Needs | Shape::Goal) => self.needs(value),
                (_, Shape::Record(keys) | Shape::Records(keys)) => match &value.value {
                    Value::List(items) => items.iter().for_each(|item| self.record(item, &[keys])),
                    _ => self.record(value, &[keys]),
                },
                _ => {}
            }
        }
    }

    fn ids(&mut self, node: &Node) {
        match &node.value {
            Value::List(items) => items.iter().for_each(|item| self.id(item)),
            _ => self.id(node),
        }
    }

    /// A list of needs, a goal, or any combination: ids stand alone, or as keys before their target.
    fn needs(&mut self, node: &Node) {
        match &node.value {
            Value::List(items) => items.iter().for_each(|item| self.needs(item)),
            Value::Map(entries) => {
                for (key, value) in entries {
                    self.id(key);
                    match key.text() == Some("family") {
                        true => self.id(value),
                        false => self.needs_below(value),
                    }
                }
            }
            _ => self.id(node),
        }
    }

    /// What stands behind a key of needs: a list is a group, a text a target.
    fn needs_below(&mut self, node: &Node) {
        if let Value::List(_) = node.value {
            self.needs(node);
        }
    }

    fn members(&mut self, node: &Node) {
        let Value::Map(members) = &node.value else {
            return;
        };
        for (id, member) in members {
            self.id(id);
            if self.is_old(id) {
                self.was_of_member(id, member);
            }
            self.record(member, &[keys::MOVEMENT, keys::MEMBER_ONLY]);
        }
    }

    /// The old id under `was` of a record whose id stands behind the key `name`.
    fn was(&mut self, record: &Node, name: &Node) {
        if self.was_is_there(record) {
            return;
        }
        let at = name.span.start as usize;
        let line = self.line_of(at);
        let indent = &self.text[line..at];
        let end = self.text[at..]
            .find('\n')
            .map_or(self.text.len(), |i| at + i);
        let text = match indent.trim().is_empty() {
            true => format!("\n{indent}was: [{}]", self.old),
            // A record between braces.
            false => return self.edit(at, at, format!("was: [{}], ", self.old)),
        };
        self.edit(end, end, text);
    }

    fn was_of_member(&mut self, id: &Node, member: &Node) {
        if self.was_is_there(member) {
            return;
        }
        let Value::Map(entries) = &member.value else {
            self.found.unclear = true;
            return;
        };
        let Some((first, _)) = entries.first() else {
            self.found.unclear = true;
            return;
        };
        let at = first.span.start as usize;
        let line = self.line_of(at);
        let own_line = self.text[line..at].trim().is_empty() && at > id.span.end as usize;
        let text = match own_line {
            true => format!("was: [{}]\n{}", self.old, &self.text[line..at]),
            false => format!("was: [{}], ", self.old),
        };
        self.edit(at, at, text);
    }

    /// Puts the old id into a `was` that the record has.
    fn was_is_there(&mut self, record: &Node) -> bool {
        let Value::Map(entries) = &record.value else {
            return false;
        };
        let Some((_, was)) = entries.iter().find(|(key, _)| key.text() == Some("was")) else {
            return false;
        };
        match &was.value {
            Value::List(items) if !items.is_empty() => {
                let first = items[0].span.start as usize;
                let line = self.line_of(first);
                let dash = self.text[line..first].trim() == "-";
                let text = match dash {
                    true => format!("{}\n{}", self.old, &self.text[line..first]),
                    false => format!("{}, ", self.old),
                };
                self.edit(first, first, text);
            }
            Value::List(_) => {
                let inside = was.span.start as usize + 1;
                self.edit(inside, inside, self.old.to_string());
            }
            _ => self.found.unclear = true,
        }
        true
    }

    fn line_of(&self, at: usize) -> usize {
        self.text[..at].rfind('\n').map_or(0, |i| i + 1)
    }

    fn picture(&mut self, node: &Node) {
        let moved = self
            .pictures
            .iter()
            .find(|(from, _)| node.text() == Some(from));
        if let Some((from, to)) = moved.copied() {
            let span = node.part(0, from.len());
            self.edit(span.start as usize, span.end as usize, to.to_string());
        }
    }

    fn note(&mut self, file: FileId) {
        let outline = markdown::outline(file, self.text);
        for link in &outline.links {
            self.links(
                link.span.start as usize,
                &self.text[link.span.start as usize..link.span.end as usize],
            );
        }
        for picture in &outline.pictures {
            let (start, end) = (picture.span.start as usize, picture.span.end as usize);
            for (from, to) in self.pictures.clone() {
                if picture.to.strip_prefix("picture:") == Some(from)
                    && let Some(at) = self.text[start..end].find(from)
                {
                    self.edit(start + at, start + at + from.len(), to.to_string());
                }
            }
        }
        for line in outline.sessions.iter().flatten() {
            let start = line.span.start as usize;
            let end = line.span.end as usize;
            for (at, word) in words(&self.text[start..end]) {
                if word == self.old {
                    self.edit(start + at, start + at + word.len(), self.new.to_string());
                }
            }
        }
    }

    /// Links to the record in a piece of text that begins at `start`.
    fn links(&mut self, start: usize, piece: &str) {
        for scheme in ["movement:", "family:", "skill:"] {
            let sought = format!("{scheme}{}", self.old);
            for (at, _) in piece.match_indices(&sought) {
                let (id, end) = (at + scheme.len(), at + sought.len());
                let goes_on =
                    piece[end..].starts_with(|c: char| c.is_ascii_alphanumeric() || c == '-');
                if !goes_on {
                    self.edit(start + id, start + end, self.new.to_string());
                }
            }
        }
    }
}

/// Words between spaces with their places.
fn words(text: &str) -> impl Iterator<Item = (usize, &str)> {
    text.split_whitespace()
        .map(|word| (word.as_ptr() as usize - text.as_ptr() as usize, word))
}
