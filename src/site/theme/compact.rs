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

/// A script as it is published: also without the spaces beside what parts words by itself. Lines stay lines.
pub fn compact_script(text: &str) -> String {
    let text = compact(text);
    let mut out = String::with_capacity(text.len());
    let mut inside = vec![Inside::Code(0)];
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        let in_code = matches!(inside.last(), Some(Inside::Code(_)));
        if in_code && c == ' ' {
            let next = chars.peek().copied().unwrap_or('\n');
            if parts(out.chars().next_back(), next) {
                continue;
            }
        } else if in_code && c == '/' && chars.peek() == Some(&'/') {
            while chars.next_if(|c| *c != '\n').is_some() {}
            continue;
        } else if in_code && c == '/' && is_pattern(&out) {
            inside.push(Inside::Pattern);
        } else if c == '\\' && !in_code {
            out.push(c);
            out.extend(chars.next());
            continue;
        } else {
            follow(&mut inside, c, chars.peek() == Some(&'{'));
        }
        out.push(c);
    }
    out
}

/// What a place of a script is inside of.
#[derive(Clone, Copy, PartialEq)]
enum Inside {
    /// Code, so many braces deep.
    Code(u32),
    Quoted(char),
    Template,
    /// A regular expression, and a class of one.
    Pattern,
    Class,
}

/// What the next place is inside of, after a character; `opens`: a brace follows it.
fn follow(inside: &mut Vec<Inside>, c: char, opens: bool) {
    let ends = match (inside.last().copied(), c) {
        (Some(Inside::Quoted(open)), _) => c == open,
        (Some(Inside::Template), '`') | (Some(Inside::Class), ']') => true,
        (Some(Inside::Pattern), '/') | (Some(Inside::Code(0)), '}') => true,
        (Some(Inside::Template), '$') if opens => {
            // Its own brace is counted next.
            inside.push(Inside::Code(u32::MAX));
            return;
        }
        (Some(Inside::Pattern), '[') => {
            inside.push(Inside::Class);
            return;
        }
        (Some(Inside::Code(_)), '`') => {
            inside.push(Inside::Template);
            return;
        }
        (Some(Inside::Code(_)), '"' | '\'') => {
            inside.push(Inside::Quoted(c));
            return;
        }
        (Some(Inside::Code(deep)), '{' | '}') => {
            let deep = if c == '{' {
                deep.wrapping_add(1)
            } else {
                deep - 1
            };
            if let Some(last) = inside.last_mut() {
                *last = Inside::Code(deep);
            }
            return;
        }
        _ => false,
    };
    if ends && inside.len() > 1 {
        inside.pop();
    }
}

/// Whether what stands beside a space keeps its neighbours apart without it.
fn parts(before: Option<char>, after: char) -> bool {
    const ALONE: &str = "{}()[];,=<>?:&|*!";
    let is_alone = |c: char| ALONE.contains(c);
    before.is_none_or(|c| is_alone(c) || c == '\n') || is_alone(after) || after == '\n'
}

/// Whether a slash begins a regular expression: nothing stands before it that could be divided.
fn is_pattern(before: &str) -> bool {
    let before = before.trim_end_matches(' ');
    before.ends_with("return")
        || before
            .chars()
            .next_back()
            .is_none_or(|c| "(,=:[!&|?{;>\n".contains(c))
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
    fn spaces_in_texts_and_patterns_stay() {
        for (written, published) in [
            (
                "const a = b + c, d = (e) => { return e; };",
                "const a=b + c,d=(e)=>{return e;};",
            ),
            (
                "say(' a = b ', `x = ${ y === 1 ? `( ${z} )` : '' } = `);",
                "say(' a = b ',`x = ${y===1?`( ${z} )`:''} = `);",
            ),
            (
                "const r = /[/ ] = '/u.test(a) && a / b / c;",
                "const r=/[/ ] = '/u.test(a)&&a / b / c;",
            ),
            (
                "const t = 'it\\'s = ', u = `\\` = ${{ a: 1 }.a} = `;",
                "const t='it\\'s = ',u=`\\` = ${{a:1}.a} = `;",
            ),
            ("f(x); // it's `so`", "f(x);"),
            (
                "for (const x of [1]) y ??= x in z;",
                "for(const x of[1])y??=x in z;",
            ),
        ] {
            assert_eq!(
                compact_script(written),
                format!("{published}\n"),
                "{written}"
            );
        }
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
