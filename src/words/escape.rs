//! Text made safe for HTML and XML: the one place that knows how.

/// Text made safe for HTML, attributes included.
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    escape_into(&mut out, text);
    out
}

/// Text made safe for XML 1.0, without the letters that it does not know (2.2): a reader refuses a whole feed for one of them.
pub fn escape_xml(text: &str) -> String {
    let known = |c: &char| matches!(c, '\t' | '\n' | '\r' | ' '..='\u{d7ff}' | '\u{e000}'..='\u{fffd}' | '\u{10000}'..);
    escape(&text.chars().filter(known).collect::<String>())
}

/// Adds a text made safe for HTML.
pub fn escape_into(out: &mut String, text: &str) {
    let mut rest = text;
    while let Some(at) = rest
        .bytes()
        .position(|b| matches!(b, b'&' | b'<' | b'>' | b'"' | b'\''))
    {
        out.push_str(&rest[..at]);
        out.push_str(match rest.as_bytes()[at] {
            b'&' => "&amp;",
            b'<' => "&lt;",
            b'>' => "&gt;",
            b'"' => "&quot;",
            _ => "&#39;",
        });
        rest = &rest[at + 1..];
    }
    out.push_str(rest);
}

#[cfg(test)]
mod tests {
    use super::escape_xml;

    #[test]
    fn letters_that_xml_does_not_know_are_left_out() {
        let text = "A\u{1b}[2J <\u{0}é\u{fffe}\u{1f600}\t&\u{ffff}>";
        assert_eq!(escape_xml(text), "A[2J &lt;é\u{1f600}\t&amp;&gt;");
    }
}
