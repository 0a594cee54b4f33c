//! Damage to sound files: to bytes, to lines, and to values where their keys are known.

use super::pieces::{PIECES, VALUES};
use proptest::prelude::*;
use rungbook::source::{Content, SourceFile, Stray};

/// One blow. Numbers are taken modulo what is there.
#[derive(Clone, Debug)]
pub enum Damage {
    /// Some bytes at a place are replaced by a piece.
    Bytes {
        file: usize,
        at: usize,
        cut: usize,
        piece: usize,
    },
    /// A line goes, comes twice, or moves.
    Line {
        file: usize,
        line: usize,
        how: usize,
        to: usize,
    },
    /// A line is indented more or less.
    Indent { file: usize, line: usize, by: usize },
    /// What follows a key is replaced.
    Value {
        file: usize,
        line: usize,
        value: usize,
    },
    /// A line of another file comes in.
    Graft {
        file: usize,
        line: usize,
        from: usize,
        other: usize,
    },
    /// A file goes, or has another's text, or another's path in other letters.
    File {
        file: usize,
        how: usize,
        other: usize,
    },
    /// Any characters at all.
    Text {
        file: usize,
        at: usize,
        text: String,
    },
    /// A piece over and over.
    Flood {
        file: usize,
        line: usize,
        piece: usize,
        times: usize,
    },
}

pub fn damage(most: usize) -> impl Strategy<Value = Vec<Damage>> {
    let n = any::<u16>().prop_map(usize::from);
    let wide = any::<u32>().prop_map(|n| n as usize);
    let one = prop_oneof![
        4 => (n.clone(), wide.clone(), 0..12_usize, n.clone())
            .prop_map(|(file, at, cut, piece)| Damage::Bytes { file, at, cut, piece }),
        3 => (n.clone(), n.clone(), 0..3_usize, n.clone())
            .prop_map(|(file, line, how, to)| Damage::Line { file, line, how, to }),
        2 => (n.clone(), n.clone(), 0..5_usize).prop_map(|(file, line, by)| Damage::Indent { file, line, by }),
        6 => (n.clone(), n.clone(), n.clone()).prop_map(|(file, line, value)| Damage::Value { file, line, value }),
        3 => (n.clone(), n.clone(), n.clone(), n.clone())
            .prop_map(|(file, line, from, other)| Damage::Graft { file, line, from, other }),
        1 => (n.clone(), 0..4_usize, n.clone()).prop_map(|(file, how, other)| Damage::File { file, how, other }),
        1 => (n.clone(), wide, "\\PC{0,12}|[\\x00-\\x7f]{0,8}").prop_map(|(file, at, text)| Damage::Text { file, at, text }),
        1 => (n.clone(), n.clone(), n, 20..400_usize)
            .prop_map(|(file, line, piece, times)| Damage::Flood { file, line, piece, times }),
    ];
    prop::collection::vec(one, 1..most)
}

/// Start of the character at or before a place.
fn character(text: &str, at: usize) -> usize {
    let mut at = at % (text.len() + 1);
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

fn lines(text: &str) -> Vec<String> {
    text.lines().map(str::to_string).collect()
}

fn pick(files: &[SourceFile], index: usize) -> Option<(usize, String)> {
    let index = index % files.len();
    match &files[index].content {
        Content::Text(text) => Some((index, text.clone())),
        _ => None,
    }
}

pub fn apply(files: &mut Vec<SourceFile>, blows: &[Damage]) {
    for blow in blows {
        if files.is_empty() {
            return;
        }
        let (index, text) = match strike(files, blow) {
            Some(struck) => struck,
            None => continue,
        };
        files[index].content = Content::Text(text);
    }
    // Paths are keys: one file for each.
    files.sort_by(|a, b| a.path.cmp(&b.path));
    files.dedup_by(|a, b| a.path == b.path);
}

/// The file that changes and its new text.
fn strike(files: &mut Vec<SourceFile>, blow: &Damage) -> Option<(usize, String)> {
    match blow {
        Damage::Bytes {
            file,
            at,
            cut,
            piece,
        } => {
            let (index, mut text) = pick(files, *file)?;
            let from = character(&text, *at);
            let mut to = (from + cut).min(text.len());
            while !text.is_char_boundary(to) {
                to += 1;
            }
            text.replace_range(from..to, PIECES[piece % PIECES.len()]);
            Some((index, text))
        }
        Damage::Line {
            file,
            line,
            how,
            to,
        } => {
            let (index, text) = pick(files, *file)?;
            let mut all = lines(&text);
            if all.is_empty() {
                return None;
            }
            let at = line % all.len();
            match how {
                0 => drop(all.remove(at)),
                1 => all.insert(at, all[at].clone()),
                _ => {
                    let moved = all.remove(at);
                    all.insert(to % (all.len() + 1), moved);
                }
            }
            Some((index, all.join("\n") + "\n"))
        }
        Damage::Indent { file, line, by } => {
            let (index, text) = pick(files, *file)?;
            let mut all = lines(&text);
            let at = line % all.len().max(1);
            let old = all.get_mut(at)?;
            *old = match by {
                0 => old.trim_start().to_string(),
                1 => old.strip_prefix("  ").unwrap_or(old).to_string(),
                2 => format!("  {old}"),
                3 => format!("  - {}", old.trim_start()),
                _ => format!("\t{old}"),
            };
            Some((index, all.join("\n") + "\n"))
        }
        Damage::Value { file, line, value } => {
            let (index, text) = pick(files, *file)?;
            let mut all = lines(&text);
            let at = line % all.len().max(1);
            let old = all.get_mut(at)?;
            let key = old.find(": ").map_or(old.len(), |n| n + 2);
            old.truncate(key);
            old.push_str(VALUES[value % VALUES.len()]);
            Some((index, all.join("\n") + "\n"))
        }
        Damage::Graft {
            file,
            line,
            from,
            other,
        } => {
            let (index, text) = pick(files, *file)?;
            let (_, source) = pick(files, *from)?;
            let (mut all, theirs) = (lines(&text), lines(&source));
            let graft = theirs.get(other % theirs.len().max(1))?.clone();
            all.insert(line % (all.len() + 1), graft);
            Some((index, all.join("\n") + "\n"))
        }
        Damage::File { file, how, other } => {
            let (index, text) = pick(files, *file)?;
            match how {
                0 => {
                    files.remove(index);
                    return None;
                }
                1 => {
                    let path = files[index].path.clone();
                    let (stem, ext) = path.rsplit_once('.').unwrap_or((&path, ""));
                    let names = [
                        stem.to_uppercase(),
                        format!("{stem} 2"),
                        format!("{stem}.."),
                        format!("{stem}é"),
                        format!("{stem}\u{202e}"),
                        format!("{stem}{}", "x".repeat(300)),
                        format!("{stem}/deeper/a"),
                        format!("{stem}%2e"),
                        format!("{stem}<b>"),
                        format!("{stem}\"'"),
                        format!("{stem}\n"),
                        stem.replace("movements", "notes"),
                        stem.replace("notes", "movements"),
                        "content/notes/pages/index".into(),
                        "content/notes/constructor".into(),
                    ];
                    let path = format!("{}.{ext}", names[other % names.len()]);
                    files.push(SourceFile {
                        path,
                        content: Content::Text(text),
                    });
                    return None;
                }
                2 => {
                    let (_, theirs) = pick(files, *other)?;
                    return Some((index, theirs));
                }
                _ => {
                    files[index].content = [
                        Content::NotUtf8(Stray::behind(3, b"abc\xe9")),
                        Content::TooLarge(5_000_000),
                        Content::Unreadable("it is locked".into()),
                        Content::Bytes(vec![0xff, 0xd8, 0xff, 0xe1, 0, 9, 1]),
                    ][other % 4]
                        .clone()
                }
            }
            None
        }
        Damage::Text {
            file,
            at,
            text: new,
        } => {
            let (index, mut text) = pick(files, *file)?;
            text.insert_str(character(&text, *at), new);
            Some((index, text))
        }
        Damage::Flood {
            file,
            line,
            piece,
            times,
        } => {
            let (index, text) = pick(files, *file)?;
            let mut all = lines(&text);
            let at = line % (all.len() + 1);
            all.insert(at, PIECES[piece % PIECES.len()].repeat(*times));
            Some((index, all.join("\n") + "\n"))
        }
    }
}
