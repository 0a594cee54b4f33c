//! No text that a coach or a client writes becomes an element, an attribute or an address: for each payload, put into every text
//! of a curriculum, the pages have the structure of their twin with plain words.

#[path = "../dice/mod.rs"]
mod dice;
mod fields;
mod markdown;
mod payloads;

use fields::{NOTES, RECORDS, filled};
use html5gum::{Token, Tokenizer};
use markdown::MARKDOWN;
use payloads::PAYLOADS;
use rungbook::site;
use rungbook::source::{Severity, Snapshot};
use std::collections::{BTreeMap, BTreeSet};

/// Every file of the site, or with places in the plan those alone.
fn site(
    files: &[(String, String)],
    places: Option<&[usize]>,
) -> Result<BTreeMap<String, (usize, Vec<u8>)>, String> {
    let texts = files.iter().map(|(p, t)| (p.as_str(), t.as_str()));
    let snapshot = Snapshot::of_texts(texts);
    let built = site::build(&snapshot, &site::Options::default());
    let mut grave = built
        .proof()
        .findings
        .iter()
        .filter(|f| f.severity() == Severity::Error);
    if let Some(first) = grave.next() {
        return Err(format!("{}: {}", first.rule.name(), first.message));
    }
    let plan = built.renderer().expect("a site");
    let mut out = BTreeMap::new();
    let all: Vec<usize> = (0..plan.len()).collect();
    for i in places.unwrap_or(&all) {
        let file = plan.render(*i).expect("a page");
        let faults = built.audit(&file.path, &file.bytes);
        assert!(faults.is_empty(), "{faults:?}");
        out.insert(file.path, (*i, file.bytes));
    }
    Ok(out)
}

/// The notes, whose words the payloads must not meet.
fn with_notes(mut files: Vec<(String, String)>) -> Vec<(String, String)> {
    files.extend(NOTES.iter().map(|(p, t)| (p.to_string(), t.to_string())));
    files
}

/// What an element is made of: its name, its attributes, and those of their values that steer something.
fn shape(page: &[u8]) -> Vec<String> {
    let steering = [
        "class",
        "rel",
        "type",
        "http-equiv",
        "name",
        "role",
        "tabindex",
        "loading",
        "method",
        "for",
    ];
    let mut out = Vec::new();
    for Ok(token) in Tokenizer::new(page) {
        match token {
            Token::StartTag(tag) => {
                let name = String::from_utf8_lossy(&tag.name).into_owned();
                let mut keys = Vec::new();
                for (key, value) in &tag.attributes {
                    let key = String::from_utf8_lossy(key).into_owned();
                    let value = String::from_utf8_lossy(value);
                    keys.push(match steering.contains(&key.as_str()) {
                        true => format!("{key}={value}"),
                        false => key,
                    });
                }
                // Colours of a definition and lines of a map's box depend on the letters.
                let coloured = keys.iter().any(|k| k.starts_with("class=hl-"));
                if !coloured && name != "tspan" {
                    out.push(format!("{name} {}", keys.join(" ")));
                }
            }
            Token::Comment(_) => out.push("comment".into()),
            Token::Doctype(_) => out.push("doctype".into()),
            _ => {}
        }
    }
    out
}

/// Addresses that a page leads to or loads; scripts' data is no address.
fn addresses(page: &[u8]) -> BTreeSet<String> {
    let mut out = BTreeSet::new();
    for Ok(token) in Tokenizer::new(page) {
        if let Token::StartTag(tag) = token {
            let refreshes = tag.attributes.contains_key(&b"http-equiv"[..]);
            let content = refreshes.then_some("content");
            let keys = [
                "href",
                "src",
                "srcset",
                "action",
                "poster",
                "data",
                "xlink:href",
            ];
            for key in keys.into_iter().chain(content) {
                if let Some(value) = tag.attributes.get(key.as_bytes()) {
                    out.insert(String::from_utf8_lossy(value).trim().to_lowercase());
                }
            }
        }
    }
    out
}

fn scheme_is_plain(address: &str) -> bool {
    let squeezed: String = address
        .chars()
        .filter(|c| !c.is_whitespace() && !c.is_control())
        .collect();
    !["javascript:", "data:", "vbscript:", "//"]
        .iter()
        .any(|s| squeezed.starts_with(s))
}

/// A text of the same length and blanks, of letters alone.
fn plain(text: &str) -> String {
    text.chars()
        .map(|c| if c.is_whitespace() { c } else { 'o' })
        .collect()
}

/// Each field with a payload of its own, turned by `turn`: over all turns each field has had each payload. With `harmless`
/// plain words of the same length.
fn curriculum(turn: usize, harmless: bool) -> Vec<(String, String)> {
    with_notes(filled(RECORDS, |n| {
        let payload = PAYLOADS[(n + turn) % PAYLOADS.len()];
        match harmless {
            true => format!("{} {n}", plain(payload)),
            false => format!("{payload} {n}"),
        }
    }))
}

/// Every entry of the interface's words with a text behind it: `text(n)` is the n-th.
fn interface(mut text: impl FnMut(usize) -> String) -> String {
    let mut out = String::new();
    let shipped = include_str!("../../themes/chalk/words/en.yaml");
    // Signal words are agreed for a language: any other is refused.
    let mut agreed = false;
    for (n, line) in shipped.lines().enumerate() {
        if !line.starts_with(' ') {
            agreed = line == "signal:";
        }
        if agreed {
            out.push_str(&format!("{line}\n"));
            continue;
        }
        let (key, value) = line.split_once(": ").unwrap_or((line, ""));
        if key.trim_start().starts_with('#') || value.is_empty() || key == "direction" {
            out.push_str(&format!("{line}\n"));
            continue;
        }
        let said = match value.starts_with('"') {
            true => serde_json::from_str(value).expect("a quoted text"),
            false => value.to_string(),
        };
        let said = fields::quoted(&format!("{said} {}", text(n)));
        out.push_str(&format!("{key}: {said}\n"));
    }
    out
}

#[test]
fn no_word_of_the_interface_becomes_structure() {
    let with = |words: String| {
        let mut files = with_notes(filled(RECORDS, |n| format!("Words {n}")));
        files.push(("content/words/en.yaml".into(), words));
        files
    };
    // Braces and links have a meaning here: such texts are refused, or what is left of them is plain.
    let sound: Vec<&str> = PAYLOADS
        .iter()
        .copied()
        .filter(|p| site(&with(interface(|_| p.to_string())), Some(&[])).is_ok())
        .collect();
    assert!(sound.len() > 50, "{} of {}", sound.len(), PAYLOADS.len());
    let turns = (dice::config(2).cases as usize).min(sound.len());
    let mut wrong = Vec::new();
    for i in 0..turns {
        let turn = i * sound.len() / turns;
        let payload = |n: usize| sound[(n + turn) % sound.len()];
        let twin = site(&with(interface(|n| plain(payload(n)))), None).expect("plain words");
        let found = site(&with(interface(|n| payload(n).to_string())), None).expect("odd words");
        for (path, (_, bytes)) in &found {
            compare(path, bytes, &twin[path].1, turn, &mut wrong);
        }
    }
    assert!(
        wrong.is_empty(),
        "{} faults\n{}",
        wrong.len(),
        wrong[..wrong.len().min(30)].join("\n")
    );
}

/// The usual run takes a few turns; `RUNGBOOK_CASES=100` takes all.
#[test]
fn no_text_becomes_structure() {
    let usual = dice::config(4).cases as usize;
    let turns = usual.min(PAYLOADS.len());
    let mut wrong = Vec::new();
    for i in 0..turns {
        let turn = i * PAYLOADS.len() / turns;
        let twin = site(&curriculum(turn, true), None).expect("plain words are published");
        let found = site(&curriculum(turn, false), None).expect("odd words are published");
        assert!(found.keys().eq(twin.keys()), "turn {turn}");
        for (path, (_, bytes)) in &found {
            compare(path, bytes, &twin[path].1, turn, &mut wrong);
        }
    }
    assert!(
        wrong.is_empty(),
        "{} faults\n{}",
        wrong.len(),
        wrong[..wrong.len().min(30)].join("\n")
    );
}

/// A style sheet without what stands in its strings. A string ends with its line, as in a browser.
fn rules(css: &[u8]) -> String {
    let text = String::from_utf8_lossy(css);
    // The first line says the version, which depends on every letter.
    let text = match text.split_once("*/\n") {
        Some((stamp, rest)) if stamp.starts_with("/*") && stamp.contains(".css=") => rest,
        _ => &text,
    };
    let mut out = String::new();
    let mut chars = text.chars();
    while let Some(c) = chars.next() {
        out.push(c);
        if c != '"' {
            continue;
        }
        while let Some(c) = chars.next() {
            match c {
                '\\' => drop(chars.next()),
                '"' => break,
                '\n' | '\r' | '\u{c}' => {
                    out.push_str("broken");
                    break;
                }
                _ => {}
            }
        }
    }
    out
}

/// The one text that becomes a link by itself.
#[test]
fn a_contact_is_an_address_or_refused() {
    let with = |contact: &str| {
        let files = with_notes(filled(RECORDS, |n| format!("Words {n}")));
        let new = format!("contact: {}\n", fields::quoted(contact));
        let swap = |(p, t): (String, String)| {
            (p, t.replace("contact: https://room.example/reach\n", &new))
        };
        site(&files.into_iter().map(swap).collect::<Vec<_>>(), Some(&[0]))
    };
    for payload in PAYLOADS.iter().chain(&[
        "javascript://a/%0apwned()",
        "ana@b.example:x",
        "Ask at the desk",
    ]) {
        let why = with(payload).expect_err(payload);
        assert!(why.starts_with("bad-address: "), "{payload}: {why}");
    }
    for (sound, link) in [
        ("https://a.example/x?y=1&z", "https://a.example/x?y=1&amp;z"),
        ("ana@b.example", "mailto:ana@b.example"),
        ("mailto:ana@b.example", "mailto:ana@b.example"),
    ] {
        let found = with(sound).expect(sound);
        let (_, page) = found.values().next().expect("a page");
        let page = String::from_utf8_lossy(page);
        assert!(
            page.contains(&format!("<a href=\"{link}\">Contact</a>")),
            "{sound}"
        );
    }
}

fn compare(path: &str, bytes: &[u8], twin: &[u8], turn: usize, wrong: &mut Vec<String>) {
    let kind = path.rsplit('.').next().unwrap_or("");
    match kind {
        "html" | "xml" | "atom" | "svg" => {
            // Other words stand in another order.
            let (mut ours, mut theirs) = (shape(bytes), shape(twin));
            ours.sort();
            theirs.sort();
            if ours != theirs {
                let at = ours
                    .iter()
                    .zip(&theirs)
                    .position(|(a, b)| a != b)
                    .unwrap_or(ours.len().min(theirs.len()));
                wrong.push(format!(
                    "turn {turn}: {path}: {:?} and not {:?}",
                    ours.get(at),
                    theirs.get(at)
                ));
            }
            for address in addresses(bytes).iter().filter(|a| !scheme_is_plain(a)) {
                wrong.push(format!("turn {turn}: {path} leads to {address}"));
            }
        }
        "json" | "webmanifest" => {
            if let Err(error) = serde_json::from_slice::<serde_json::Value>(bytes) {
                wrong.push(format!("turn {turn}: {path}: {error}"));
            }
        }
        "css" => {
            let (ours, theirs) = (rules(bytes), rules(twin));
            let same = ours.chars().zip(theirs.chars()).take_while(|(a, b)| a == b);
            let at = same.count();
            let from = |text: &str| {
                text.chars()
                    .skip(at.saturating_sub(20))
                    .take(60)
                    .collect::<String>()
            };
            if ours != theirs {
                wrong.push(format!(
                    "turn {turn}: {path} differs: {:?}, {:?}",
                    from(&ours),
                    from(&theirs)
                ));
            }
        }
        _ => {}
    }
}

/// In notes a payload is Markdown: it may be refused, and what is published has only what Markdown makes.
#[test]
fn no_note_becomes_more_than_markdown() {
    let wraps: [fn(&str) -> String; 8] = [
        |t| t.to_string(),
        |t| format!("# {t}\n\n## {t}\n\ntext\n"),
        |t| format!("- {t}\n\n1. {t}\n"),
        |t| format!("> {t}\n"),
        |t| format!("[{t}](movement:stand) and [{t}](https://room.example/)\n"),
        |t| format!("![{t}](picture:line.svg)\n"),
        |t| format!("`{t}`\n\n```\n{t}\n```\n\n```yaml\n{t}\n```\n"),
        |t| format!("| a |\n|---|\n| {t} |\n\ntext[^1]\n\n[^1]: {t}\n"),
    ];
    // What Markdown, links with their marks and pictures are made of.
    let benign = with_notes(filled(RECORDS, |n| format!("Words {n}")));
    let with_note = |text: String| {
        let mut files = benign.clone();
        files.retain(|(p, _)| p != "content/notes/stand.md");
        files.push(("content/notes/stand.md".into(), text));
        files
    };
    let extra = "# a\n\n### b\n\n#### c\n\n*a* **b** ~~c~~ `d`\n\n- [ ] a\n\n1. a\n\n---\n\na  \nb\n\n<https://a.example/>\n\n![x](picture:line.svg)\n\n```\na\n```\n";
    let first = site(&benign, None).expect("it stands");
    let more = site(&with_note(extra.into()), None).expect("it stands");
    let pages = first
        .iter()
        .chain(&more)
        .filter(|(p, _)| p.ends_with("html"));
    let known: BTreeSet<String> = pages.flat_map(|(_, (_, b))| shape(b)).collect();
    assert!(known.len() > 40);
    let (mut published, mut refused, mut wrong) = (0, 0, Vec::new());
    let all = PAYLOADS.iter().chain(MARKDOWN);
    // The usual run turns through the ways, `RUNGBOOK_CASES=8` takes every one.
    let ways = (dice::config(1).cases as usize).min(wraps.len());
    let places = match ways {
        1 => vec![first["stand.html"].0],
        _ => vec![first["stand.html"].0, first["booklet.html"].0],
    };
    for (i, payload) in all.enumerate() {
        for wrap in (i..i + ways).map(|i| &wraps[i % wraps.len()]) {
            let Ok(found) = site(&with_note(wrap(payload)), Some(&places)) else {
                refused += 1;
                continue;
            };
            published += 1;
            for (path, (_, bytes)) in &found {
                for part in shape(bytes) {
                    // Syntax is coloured by class; alignment and numbers are Markdown's own.
                    let coloured = part.starts_with("span class=");
                    let plain_list =
                        part == "ol start" || part.starts_with("li id") || part.starts_with("h");
                    if !known.contains(&part) && !coloured && !plain_list {
                        wrong.push(format!("{:?}: {path} has <{part}>", wrap(payload)));
                    }
                }
                for address in addresses(bytes).iter().filter(|a| !scheme_is_plain(a)) {
                    wrong.push(format!("{:?}: {path} leads to {address}", wrap(payload)));
                }
            }
        }
    }
    assert!(
        wrong.is_empty(),
        "{} faults\n{}",
        wrong.len(),
        wrong[..wrong.len().min(30)].join("\n")
    );
    assert!(
        published > 80 * ways,
        "{published} published, {refused} refused"
    );
}
