//! Texts with placeholders `{name}`, links `[text](target)` and strong words `**text**`.

use super::escape::escape;
use std::collections::BTreeSet;

/// Where a text is going to stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// In HTML: escaped, with its links and strong words as elements.
    Html,
    /// In a string of a style sheet.
    Css,
}

impl Form {
    /// The text in that form, its placeholders kept.
    pub fn of(self, text: &str) -> String {
        match self {
            Form::Html => html(text),
            // A bare line end would end the string, and the rest would be rules.
            Form::Css => text
                .chars()
                .map(|c| match c {
                    '\\' | '"' => format!("\\{c}"),
                    c if c.is_control() => format!("\\{:x} ", u32::from(c)),
                    c => c.to_string(),
                })
                .collect(),
        }
    }
}

/// Copies a text and lets `put` write each placeholder.
pub(super) fn fill(text: &str, out: &mut String, put: &mut dyn FnMut(&str, &mut String)) {
    let mut rest = text;
    while let Some((before, name, after)) = next(rest) {
        out.push_str(before);
        put(name, out);
        rest = after;
    }
    out.push_str(rest);
}

/// A brace stands in the text that belongs to no placeholder. A template would read it as its own.
pub fn loose_brace(text: &str) -> bool {
    let mut rest = String::new();
    fill(text, &mut rest, &mut |_, _| {});
    rest.contains(['{', '}'])
}

/// The first placeholder: what stands before, its name, what follows.
fn next(text: &str) -> Option<(&str, &str, &str)> {
    let mut from = 0;
    loop {
        let open = from + text[from..].find('{')?;
        let close = open + text[open..].find('}')?;
        let name = &text[open + 1..close];
        let is_name = !name.is_empty() && name.bytes().all(|b| b.is_ascii_lowercase() || b == b'_');
        if is_name {
            return Some((&text[..open], name, &text[close + 1..]));
        }
        from = open + 1;
    }
}

/// The names of a text's placeholders, and where its links lead.
pub fn holes(text: &str) -> BTreeSet<String> {
    let mut out = BTreeSet::new();
    fill(text, &mut String::new(), &mut |name, _| {
        out.insert(name.to_string());
    });
    let mut rest = text;
    while let Some((_, _, target, after)) = link(rest) {
        if !target.starts_with('{') {
            out.insert(target.to_string());
        }
        rest = after;
    }
    out
}

/// The first link: what stands before, its text, its target, what follows.
fn link(text: &str) -> Option<(&str, &str, &str, &str)> {
    let middle = text.find("](")?;
    let open = text[..middle].rfind('[')?;
    let close = middle + text[middle..].find(')')?;
    Some((
        &text[..open],
        &text[open + 1..middle],
        &text[middle + 2..close],
        &text[close + 1..],
    ))
}

/// A text without the marks of links and strong words, for a title or a description.
pub fn plain_of(text: &str) -> String {
    match link(text) {
        Some((before, inner, _, after)) => format!("{before}{inner}{}", plain_of(after)),
        None => text.to_string(),
    }
    .replace("**", "")
}

fn html(text: &str) -> String {
    match link(text) {
        None => strong(text),
        Some((before, inner, target, after)) => {
            let href = match target.split_once('#') {
                _ if target.starts_with('{') => target.to_string(),
                Some((page, at)) => format!("{}.html#{}", escape(page), escape(at)),
                None => format!("{}.html", escape(target)),
            };
            format!(
                "{}<a href=\"{href}\">{}</a>{}",
                strong(before),
                strong(inner),
                html(after)
            )
        }
    }
}

fn strong(text: &str) -> String {
    let mut out = String::new();
    for (i, part) in text.split("**").enumerate() {
        if i > 0 {
            out.push_str(if i % 2 == 1 { "<strong>" } else { "</strong>" });
        }
        out.push_str(&escape(part));
    }
    if text.matches("**").count() % 2 == 1 {
        out.push_str("</strong>");
    }
    out
}

#[cfg(test)]
mod tests {
    use super::{Form, fill, holes, html, loose_brace, plain_of};

    #[test]
    fn placeholders_links_and_strong_words() {
        let mut out = String::new();
        fill("{n} of {all}, {Not one}", &mut out, &mut |name, out| {
            out.push_str(name)
        });
        assert_eq!(out, "n of all, {Not one}");
        assert_eq!(
            html("**A** <b> [the test](self-test), [it]({to}) [q](a#b)"),
            "<strong>A</strong> &lt;b&gt; <a href=\"self-test.html\">the test</a>, <a href=\"{to}\">it</a> <a href=\"a.html#b\">q</a>"
        );
        let found: Vec<String> = holes("{n} [x](self-test) [y]({to})").into_iter().collect();
        assert_eq!(found, ["n", "self-test", "to"]);
        assert_eq!(plain_of("**A** [b](c) d"), "A b d");
        assert!(!loose_brace("{n} of {all}"));
        for text in ["{{ n }}", "{{n}}", "{% raw %}", "{#", "}", "{Not one}"] {
            assert!(loose_brace(text), "{text}");
        }
        assert_eq!(Form::Css.of("a\n\"b\\"), "a\\a \\\"b\\\\");
    }
}
