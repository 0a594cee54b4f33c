//! The words of a way out: text, with links `[words](movement:ID)` to the movements that it is made of.

/// A piece of a way out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Piece<'a> {
    Text(&'a str),
    /// Words that lead to a movement; empty ones take its name.
    Link {
        words: &'a str,
        id: &'a str,
    },
}

const TO: &str = "](movement:";

/// The pieces of a way out, in order. What is no whole link is text.
pub fn pieces(text: &str) -> Vec<Piece<'_>> {
    let mut out = Vec::new();
    let mut rest = text;
    while let Some(at) = rest.find(TO) {
        let after = &rest[at + TO.len()..];
        let (Some(start), Some(end)) = (rest[..at].rfind('['), after.find(')')) else {
            break;
        };
        out.push(Piece::Text(&rest[..start]));
        out.push(Piece::Link {
            words: rest[start + 1..at].trim(),
            id: after[..end].trim(),
        });
        rest = &after[end + 1..];
    }
    out.push(Piece::Text(rest));
    out.retain(|p| *p != Piece::Text(""));
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn links_are_told_from_text() {
        let all = pieces("Tuck and [roll](movement:low-roll), or [](movement:step).");
        let link = |words, id| Piece::Link { words, id };
        let text = Piece::Text;
        assert_eq!(
            all,
            [
                text("Tuck and "),
                link("roll", "low-roll"),
                text(", or "),
                link("", "step"),
                text(".")
            ]
        );
        for plain in [
            "Step down.",
            "[a](movement:b",
            "a](movement:b) c",
            "[x](page:y)",
        ] {
            assert_eq!(pieces(plain), [text(plain)]);
        }
        assert!(pieces("").is_empty());
    }
}
