//! What an SVG says of its own text and of its own parts: one encoding, and no more copies than a browser draws at once.

use std::collections::HashMap;

/// Copies of elements that a drawing may ask for by `use`, patterns, markers and masks. Ten nested tens would be ten milliards.
const MOST_COPIES: u64 = 10_000;

/// The encoding that the drawing declares, where it is not UTF-8: its place. A browser would read other letters, and other
/// elements, than were looked at here.
pub fn other_encoding(text: &str) -> Option<(usize, usize)> {
    let mut from = 0;
    while let Some(at) = text[from..].find("<?").map(|at| from + at) {
        let end = text[at..].find("?>").map_or(text.len(), |end| at + end);
        let declaration = &text[at..end];
        if let Some(key) = declaration.find("encoding") {
            let value = declaration[key + "encoding".len()..].trim_start();
            let value = value.strip_prefix('=').unwrap_or(value).trim_start();
            let value = value.trim_start_matches(['"', '\'']);
            let value = value.split(['"', '\'']).next().unwrap_or("");
            if !value.eq_ignore_ascii_case("utf-8") {
                return Some((at + key, "encoding".len()));
            }
        }
        from = end;
    }
    None
}

/// The first letter that XML 1.0 (2.2) does not know. Escapes of older encodings are among them.
pub fn no_letter(text: &str) -> Option<(usize, usize)> {
    let known = |c: char| matches!(c, '\t' | '\n' | '\r' | ' '..='\u{7e}' | '\u{a0}'..='\u{fffd}' | '\u{10000}'..);
    let (at, c) = text.char_indices().find(|(_, c)| !known(*c))?;
    Some((at, c.len_utf8()))
}

/// One element: the elements in it, and the ids that it refers to.
#[derive(Default)]
struct Element<'t> {
    at: usize,
    inside: Vec<usize>,
    refers: Vec<&'t str>,
}

/// The place of the element from which more copies are drawn than a browser can; or of one that is a copy of itself.
pub fn too_many_copies(text: &str) -> Option<(usize, usize)> {
    let (elements, by_id) = elements(text);
    if let Some(place) = copied_by_a_sheet(text, &elements, &by_id) {
        return Some(place);
    }
    if let Some(first) = spelt_oddly(&elements, &by_id) {
        return Some((first, 1));
    }
    // What is drawn with each: the elements in it, and those that it refers to.
    let referred: Vec<Vec<usize>> = elements
        .iter()
        .map(|of| {
            of.refers
                .iter()
                .filter_map(|id| by_id.get(id).copied())
                .collect()
        })
        .collect();
    let mut drawn: Vec<Option<u64>> = vec![None; elements.len()];
    let mut is_open = vec![false; elements.len()];
    // Depth first, without calls: a file may nest a hundred thousand elements.
    let mut way: Vec<(usize, usize)> = Vec::new();
    for root in 0..elements.len() {
        way.push((root, 0));
        while let Some((element, next)) = way.pop() {
            let of = &elements[element];
            if drawn[element].is_some() {
                continue;
            }
            is_open[element] = true;
            let below = of.inside.iter().chain(&referred[element]).nth(next);
            if let Some(other) = below {
                if is_open[*other] {
                    return Some((of.at, 1));
                }
                way.push((element, next + 1));
                way.push((*other, 0));
                continue;
            }
            let sum = |list: &[usize]| {
                let sizes = list.iter().map(|at| drawn[*at].unwrap_or(0));
                sizes.fold(0u64, u64::saturating_add)
            };
            let copied = sum(&referred[element]);
            if copied > MOST_COPIES {
                return Some((of.at, 1));
            }
            drawn[element] = Some(sum(&of.inside).saturating_add(copied).saturating_add(1));
            is_open[element] = false;
        }
    }
    // Many elements may each ask for a few: together they are drawn too.
    let total = |root: usize| drawn[root].unwrap_or(0);
    let most = (0..elements.len()).map(total).max().unwrap_or(0);
    let own = elements.len() as u64;
    (most.saturating_sub(own) > MOST_COPIES).then_some((0, 1))
}

/// The first element whose name, or a name it refers to, may be spelt in two ways: it would not be recognised. Where nothing
/// refers to anything names do not matter.
fn spelt_oddly(elements: &[Element<'_>], by_id: &HashMap<&str, usize>) -> Option<usize> {
    let is_odd = |id: &str| id.contains(['&', '%']);
    let mut refers = elements.iter().filter(|e| !e.refers.is_empty()).peekable();
    refers.peek()?;
    let odd = refers.filter(|e| e.refers.iter().any(|id| is_odd(id)));
    let named = by_id.iter().filter(|(id, _)| is_odd(id));
    let named = named.map(|(_, at)| elements[*at].at);
    odd.map(|e| e.at).chain(named).min()
}

/// A style sheet's reference to more than a run of colours: a rule fits any number of elements, so its copies are not counted
/// but refused, and so is what a sheet spells with escapes.
fn copied_by_a_sheet(
    text: &str,
    elements: &[Element<'_>],
    by_id: &HashMap<&str, usize>,
) -> Option<(usize, usize)> {
    let sheets = elements
        .iter()
        .filter(|e| is_named(&text[e.at..], &["style"]));
    sheets.into_iter().find_map(|element| {
        let sheet = &text[element.at..];
        let ends = sheet
            .match_indices("</")
            .find(|(at, _)| is_named(&sheet[at + 2..], &["style"]));
        let sheet = &sheet[..ends.map_or(sheet.len(), |(at, _)| at)];
        let is_colour = |id: &str| {
            by_id.get(id).is_some_and(|at| {
                is_named(
                    &text[elements[*at].at..],
                    &["linearGradient", "radialGradient"],
                )
            })
        };
        let odd = ["\\", "&", "<!--"]
            .iter()
            .find_map(|way| sheet.find(way).map(|at| (at, way.len())));
        // Style sheets spell their words in any case, ids in one.
        let lower = sheet.to_ascii_lowercase();
        let copied = lower.match_indices("url(").find_map(|(at, key)| {
            let id = sheet[at + key.len()..].trim_start_matches([' ', '"', '\'', '#']);
            let id = id.split([' ', '"', '\'', ')']).next().unwrap_or("");
            (!is_colour(id)).then_some((at, key.len()))
        });
        odd.or(copied).map(|(at, length)| (element.at + at, length))
    })
}

/// Whether a tag's name, without its prefix, is one of these.
fn is_named(tag: &str, names: &[&str]) -> bool {
    let name = tag.trim_start_matches('<');
    let end = name.find(|c: char| c.is_whitespace() || matches!(c, '>' | '/'));
    let name = &name[..end.unwrap_or(name.len())];
    names.contains(&name.rsplit(':').next().unwrap_or(name))
}

/// Every element of a drawing, and which bears an id.
fn elements(text: &str) -> (Vec<Element<'_>>, HashMap<&str, usize>) {
    let (mut all, mut by_id, mut open): (Vec<Element<'_>>, _, Vec<usize>) =
        (Vec::new(), HashMap::new(), Vec::new());
    let mut from = 0;
    while let Some(at) = text[from..].find('<').map(|at| from + at) {
        let rest = &text[at..];
        let skipped = [("<!--", "-->"), ("<![CDATA[", "]]>"), ("<?", "?>")];
        if let Some((_, end)) = skipped.iter().find(|(start, _)| rest.starts_with(start)) {
            from = rest.find(end).map_or(text.len(), |i| at + i + end.len());
            continue;
        }
        let tag = &rest[..tag_end(rest)];
        from = at + tag.len();
        if tag.starts_with("</") {
            open.pop();
            continue;
        }
        let number = all.len();
        if let Some(around) = open.last() {
            let around: &mut Element<'_> = &mut all[*around];
            around.inside.push(number);
        }
        let refers = ["href", "url("]
            .iter()
            .flat_map(|key| values(tag, key))
            .filter_map(|value| value.strip_prefix('#'));
        all.push(Element {
            at,
            inside: Vec::new(),
            refers: refers.collect(),
        });
        for id in values(tag, "id") {
            by_id.entry(id).or_insert(number);
        }
        if !tag.ends_with("/>") {
            open.push(number);
        }
    }
    (all, by_id)
}

/// What stands behind each occurrence of a key: in quotes behind an equals sign, or in brackets.
fn values<'t>(tag: &'t str, key: &str) -> impl Iterator<Item = &'t str> {
    tag.match_indices(key).filter_map(move |(at, _)| {
        let behind = tag[at + key.len()..].trim_start();
        let value = match key {
            "url(" => behind,
            _ => behind.strip_prefix('=')?.trim_start(),
        };
        value
            .trim_start_matches(['"', '\''])
            .split(['"', '\'', ')'])
            .next()
    })
}

/// Where a tag ends: behind the first `>` outside quotes.
fn tag_end(tag: &str) -> usize {
    let mut quote = None;
    for (i, byte) in tag.bytes().enumerate() {
        match (quote, byte) {
            (None, b'"' | b'\'') => quote = Some(byte),
            (Some(open), byte) if open == byte => quote = None,
            (None, b'>') => return i + 1,
            _ => {}
        }
    }
    tag.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_encoding() {
        for fine in [
            "<svg/>",
            "<?xml version=\"1.0\"?><svg/>",
            "<?xml version='1.0' encoding = 'utf-8' ?><svg/>",
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?><svg>encoding=\"x\"</svg>",
        ] {
            assert_eq!(other_encoding(fine), None, "{fine}");
        }
        for other in [
            "ISO-2022-JP",
            "utf-16",
            "UTF-7",
            "utf8",
            "",
            "x-user-defined",
        ] {
            let text = format!("<?xml version=\"1.0\" encoding=\"{other}\"?><svg/>");
            assert_eq!(other_encoding(&text), Some((20, 8)), "{other}");
        }
        assert_eq!(no_letter("<svg>é\u{1f600}\t</svg>"), None);
        assert_eq!(no_letter("<svg>\u{1b}$B</svg>"), Some((5, 1)));
        assert_eq!(no_letter("<svg>\0"), Some((5, 1)));
    }

    #[test]
    fn copies_have_a_limit() {
        let nested = |times: usize, levels: usize| {
            let level = |i: usize| {
                let copies = format!("<use href=\"#a{}\"/>", i - 1).repeat(times);
                format!("<g id=\"a{i}\">{copies}</g>")
            };
            let levels: String = (1..=levels).map(level).collect();
            format!("<svg><defs><path id=\"a0\"/>{levels}</defs></svg>")
        };
        assert_eq!(too_many_copies(&nested(10, 3)), None);
        let bomb = nested(10, 9);
        assert!(bomb.len() < 2500 && too_many_copies(&bomb).is_some());
        // As written by other hands.
        for (from, to) in [
            ("href=\"#", "xlink:href = '#"),
            ("id=\"", "\n\tid= '"),
            ("#a1", "#&#97;1"),
            ("<use href=\"#", "<path fill=\"url(#"),
        ] {
            let text = bomb.replace(from, to);
            let text = match to.contains('\'') {
                true => text.replace('"', "'"),
                false => text,
            };
            let text = match to.contains("url") {
                true => text.replace("\"/>", ")\"/>").replace("a0)\"/>", "a0\"/>"),
                false => text,
            };
            assert!(too_many_copies(&text).is_some(), "{text}");
        }
        let sheet = |rule: &str| {
            format!("<svg><style>{rule}</style><pattern id=\"p\"/><linearGradient id=\"g\"/></svg>")
        };
        assert!(too_many_copies(&sheet("*{fill:url(#p)}")).is_some());
        assert!(too_many_copies(&sheet("*{mask:url( '#gone' )}")).is_some());
        assert!(too_many_copies(&sheet("*{fill:u\\72l(#p)}")).is_some());
        assert!(too_many_copies(&sheet("*{fill:URL(#p)}")).is_some());
        assert!(too_many_copies(&sheet("*{fill:u&#114;l(#p)}")).is_some());
        assert!(too_many_copies(&sheet("<!-- </style> -->*{fill:url(#p)}")).is_some());
        assert_eq!(too_many_copies(&sheet("*{fill:url(\"#g\")}")), None);
        let own = "<svg><g id=\"a\"><use href=\"#a\"/></g></svg>";
        assert!(too_many_copies(own).is_some());
        let wide = format!(
            "<svg><g id=\"a\">{}</g>{}</svg>",
            "<path/>".repeat(200),
            "<use href=\"#a\"/>".repeat(200)
        );
        assert!(too_many_copies(&wide).is_some());
        let plain = format!("<svg>{}</svg>", "<path d=\"M0 0>\"/>".repeat(30_000));
        assert_eq!(too_many_copies(&plain), None);
        let deep = format!("<svg>{}", "<g>".repeat(100_000));
        assert_eq!(too_many_copies(&deep), None);
    }
}
