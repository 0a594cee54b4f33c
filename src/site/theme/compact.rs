//! The shipped scripts and styles without what only their readers need: comments that fill lines, and indentation.

/// A script or style sheet as it is published. No text of the shipped scripts runs over a line, so every line can be looked at
/// by itself.
pub fn compact(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut in_comment = false;
    for line in text.lines() {
        let mut line = line.trim();
        if in_comment || line.starts_with("/*") {
            let end = line.split_once("*/");
            in_comment = end.is_none();
            line = end.map_or("", |(_, rest)| rest.trim_start());
        }
        if !line.is_empty() && !line.starts_with("//") {
            without_types(line, &mut out);
            out.push('\n');
        }
    }
    out
}

/// A style sheet as it is published: also without the spaces that part nothing.
pub fn compact_sheet(text: &str) -> String {
    let text = compact(text);
    let mut out = String::with_capacity(text.len());
    let mut quote = None;
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        match (quote, c) {
            (Some(open), _) => {
                out.push(c);
                // What a backslash stands before ends no text.
                if c == '\\' {
                    out.extend(chars.next());
                }
                quote = (open != c).then_some(open);
                continue;
            }
            (None, '"' | '\'') => quote = Some(c),
            // Before a colon a space tells what stands in an element from the element itself.
            (None, ' ' | '\n') if chars.peek().is_none_or(|next| "{};!,\n ".contains(*next)) => {
                continue;
            }
            (None, ' ' | '\n') if out.ends_with(['{', '}', ';', ':', ',']) => continue,
            _ => {}
        }
        out.push(if c == '\n' { ' ' } else { c });
    }
    out.push('\n');
    out
}

/// The line without the comments that give a type to what follows them.
fn without_types(line: &str, out: &mut String) {
    let mut rest = line;
    while let Some((before, after)) = rest.split_once("/** @")
        && let Some((_, after)) = after.split_once("*/")
    {
        out.push_str(before);
        rest = after.strip_prefix(' ').unwrap_or(after);
    }
    out.push_str(rest);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spaces_that_part_nothing_go() {
        let sheet = "/* why */\n@media (a: b) {\n  a :is(b, c)::before, d { content: \": { }\" !important; margin: calc(1px + 2px) 0 }\n}\n";
        assert_eq!(
            compact_sheet(sheet),
            "@media (a:b){a :is(b,c)::before,d{content:\": { }\"!important;margin:calc(1px + 2px) 0}}\n"
        );
        let quotes = "a { content: \"x \\\" ; } y\"; b: c }\n";
        assert_eq!(compact_sheet(quotes), "a{content:\"x \\\" ; } y\";b:c}\n");
    }

    #[test]
    fn comments_and_indentation_go() {
        let text = "'use strict';\n// Why.\n(() => {\n  /** @param {string} a */\n  const f = (a) => `//${a}`;\n  /**\n   * More.\n   */\n  /** @type {number} */ let x = /** @type {'a' | 'b'} */ (y); // kept\n})();\n";
        assert_eq!(
            compact(text),
            "'use strict';\n(() => {\nconst f = (a) => `//${a}`;\nlet x = (y); // kept\n})();\n"
        );
        assert_eq!(compact("/* why */\na {\n  b: c;\n}\n"), "a {\nb: c;\n}\n");
    }
}
