//! Whether anything says a key of the words files: its whole name stands in a source, or the sources put it together.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

/// Sections whose keys are put together from enumerations alone: that a source names the section is all that can be seen.
const COMPOSED: [&str; 3] = ["figure", "gear", "month"];

/// Rooms whose own functions put a section's name before a key.
const ROOMS: [(&str, &str); 3] = [
    ("src/training", "training"),
    ("src/morning", "morning"),
    ("src/command/dose.rs", "training"),
];

/// The texts in quotes of some files: whole ones, and the beginnings of those that are completed.
#[derive(Default)]
struct Quoted {
    whole: BTreeSet<String>,
    begun: BTreeSet<String>,
}

pub struct Sources {
    all: Quoted,
    rooms: Vec<(&'static str, Quoted)>,
}

fn collect(path: &Path, out: &mut String) {
    if path.is_dir() {
        let mut below: Vec<_> = fs::read_dir(path).expect("a folder").flatten().collect();
        below.sort_by_key(fs::DirEntry::path);
        below.iter().for_each(|entry| collect(&entry.path(), out));
        return;
    }
    let ending = path.extension().and_then(|e| e.to_str()).unwrap_or("");
    if ["rs", "js", "html", "css", "svg"].contains(&ending) {
        out.push_str(&fs::read_to_string(path).expect("a source"));
        out.push('\n');
    }
}

fn of_key(c: char) -> bool {
    c.is_ascii_lowercase() || c.is_ascii_digit() || matches!(c, '.' | '_' | '-' | ' ')
}

impl Quoted {
    fn read(text: &str) -> Quoted {
        let mut out = Quoted::default();
        let mut begins = |at: usize, is_template: bool| {
            let word: String = text[at..].chars().take_while(|c| of_key(*c)).collect();
            let behind = &text[at + word.len()..];
            if behind.starts_with('{') || behind.starts_with("${") || behind.starts_with('[') {
                let dot = if behind.starts_with('[') { "." } else { "" };
                out.begun.insert(word.clone() + dot);
            }
            match is_template {
                true => out
                    .whole
                    .insert(word.split(' ').next().unwrap_or_default().into()),
                false => out.whole.insert(word),
            };
        };
        for (at, quote) in text.match_indices(['"', '\'', '`']) {
            begins(at + quote.len(), false);
        }
        // Templates name words by `w.section.key`.
        for (at, w) in text.match_indices("w.") {
            begins(at + w.len(), true);
        }
        // `key("section", word)` puts the two together.
        for call in ["key(\"", "word(\""] {
            for (at, call) in text.match_indices(call) {
                let rest = &text[at + call.len()..];
                let section = rest.split('"').next().unwrap_or_default();
                if rest[section.len()..].starts_with("\",") {
                    out.begun.insert(format!("{section}."));
                }
            }
        }
        out
    }

    /// Whether a name stands whole, or a beginning of it with words that are in quotes somewhere.
    fn says(&self, name: &str, all: &Quoted) -> bool {
        let is_word = |word: &str| {
            let forms = [
                word.to_string(),
                word.replace('_', "-"),
                word.replace('_', " "),
            ];
            forms.iter().any(|form| all.whole.contains(form))
        };
        let tail = |part: &str| {
            let begun = all.begun.iter().filter(|begun| begun.ends_with('_'));
            let mut rests = begun.filter_map(|begun| part.strip_prefix(begun.as_str()));
            rests.any(is_word)
        };
        let composed = |prefix: &String| {
            let rest = name.strip_prefix(prefix.as_str()).unwrap_or_default();
            let mut parts = rest.split('.');
            !prefix.is_empty() && !rest.is_empty() && parts.all(|part| is_word(part) || tail(part))
        };
        self.whole.contains(name) || self.begun.iter().any(composed)
    }
}

impl Sources {
    pub fn read(root: &Path) -> Sources {
        let of = |paths: &[&str]| {
            let mut out = String::new();
            paths
                .iter()
                .for_each(|path| collect(&root.join(path), &mut out));
            Quoted::read(&out)
        };
        let mut all = of(&["src", "themes"]);
        // That a room puts its section before whatever it says tells of no key.
        for (_, section) in ROOMS {
            all.begun.remove(&format!("{section}."));
        }
        Sources {
            all,
            rooms: ROOMS.map(|(path, section)| (section, of(&[path]))).into(),
        }
    }

    /// Whether a key is said.
    pub fn use_key(&self, key: &str) -> bool {
        let Some((section, rest)) = key.split_once('.') else {
            return true;
        };
        let begun = format!("{section}.");
        let named = |of: &&String| of.starts_with(&begun);
        if COMPOSED.contains(&section) {
            let begun = self.all.begun.iter().any(|of| named(&of));
            return begun || self.all.whole.iter().any(|of| named(&of) || of == section);
        }
        let own = |(of, room): &(&str, Quoted)| *of == section && room.says(rest, &self.all);
        self.all.says(key, &self.all) || self.rooms.iter().any(own)
    }
}
