//! What stands on many pages is made once. Until a page is written a tag stands in a piece's place: a page is a rope of its own
//! text and pieces.

use memchr::memmem;

/// What a piece shows; what it is of is a number beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The name of a record as a link with its mark.
    Movement,
    Skill,
    Family,
    /// What a movement needs.
    Needs,
    /// What its number opens: all of it, and within its first skill.
    Opens,
    OpensInFirst,
    /// Its test on the sheet, with all that its number opens, and with that of its first skill.
    Test,
    TestInFirst,
    /// The same on paper.
    Paper,
    PaperInFirst,
    /// A caution class as it is told to some positions.
    Caution,
    /// The figure of a movement.
    Figure,
    /// A movement in booklets.
    Article,
    /// What frames every page.
    Links,
    Top,
    Foot,
}

impl Kind {
    pub const ALL: [Kind; 16] = [
        Kind::Movement,
        Kind::Skill,
        Kind::Family,
        Kind::Needs,
        Kind::Opens,
        Kind::OpensInFirst,
        Kind::Test,
        Kind::TestInFirst,
        Kind::Paper,
        Kind::PaperInFirst,
        Kind::Caution,
        Kind::Figure,
        Kind::Article,
        Kind::Links,
        Kind::Top,
        Kind::Foot,
    ];
}

/// A piece of pages.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Piece {
    pub kind: Kind,
    pub at: usize,
}

/// How the name of a tag begins that stands for a piece. No text of a coach holds one: there `<` is always `&lt;`.
const NAME: &str = "piece-";
const OPEN: &str = "<piece-";

impl Piece {
    fn tag(self) -> String {
        let letter = char::from(b'a' + self.kind as u8);
        format!("{OPEN}{letter}{}>", self.at)
    }

    /// The piece for which a tag of this name stands.
    pub fn named(name: &str) -> Option<Piece> {
        let bytes = name.strip_prefix(NAME)?.as_bytes();
        let (letter, digits) = bytes.split_first()?;
        let kind = *Kind::ALL.get(usize::from(letter.checked_sub(b'a')?))?;
        // Written as `tag` writes it, and no other way.
        let sound =
            !digits.is_empty() && digits.len() < 10 && (digits[0] != b'0' || digits == b"0");
        let at = digits.iter().try_fold(0, |n, d| {
            d.is_ascii_digit().then(|| n * 10 + usize::from(d - b'0'))
        })?;
        sound.then_some(Piece { kind, at })
    }
}

/// A piece as it is kept.
#[derive(Debug, Default)]
pub struct Made {
    html: Box<str>,
    /// None where the piece itself is to stand on pages from the start.
    tag: Option<Box<str>>,
}

impl Made {
    /// `in_pieces`: whether pages are ropes at all.
    pub fn new(piece: Piece, html: String, in_pieces: bool) -> Made {
        let tag = in_pieces && stands_alone(&html);
        Made {
            html: html.into(),
            tag: tag.then(|| piece.tag().into()),
        }
    }

    /// The piece itself; other pieces in it may still be tags.
    pub fn html(&self) -> &str {
        &self.html
    }

    /// What stands for it on a page.
    pub fn shown(&self) -> &str {
        self.tag.as_deref().unwrap_or(&self.html)
    }
}

/// Whether a piece begins and ends with a tag: its text never joins the text around it.
fn stands_alone(html: &str) -> bool {
    let begins = matches!(html.as_bytes(), [b'<', b, ..] if b.is_ascii_lowercase());
    begins && html.ends_with('>') && !html.ends_with("-->")
}

/// Puts the pieces in the place of their tags; returns how many there were. A tag for which there is no piece stays.
pub fn put<'p>(thin: &str, find: &dyn Fn(Piece) -> Option<&'p str>, out: &mut String) -> usize {
    let (mut count, mut copied) = (0, 0);
    for at in memmem::find_iter(thin.as_bytes(), OPEN) {
        let name = &thin[at + 1..];
        let Some((name, _)) = name.split_once('>') else {
            break;
        };
        if let Some(html) = Piece::named(name).and_then(find) {
            out.push_str(&thin[copied..at]);
            put(html, find, out);
            copied = at + name.len() + 2;
            count += 1;
        }
    }
    out.push_str(&thin[copied..]);
    count
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tags_are_read_as_they_are_written() {
        for kind in Kind::ALL {
            for at in [0, 7, 10, 123_456] {
                let (piece, tag) = (Piece { kind, at }, Piece { kind, at }.tag());
                assert_eq!(Piece::named(&tag[1..tag.len() - 1]), Some(piece));
            }
        }
        for name in [
            "piece-",
            "piece-a",
            "piece-a01",
            "piece-z1",
            "piece-A1",
            "piece-a1b",
            "piece-a1 ",
            "piece-a9999999999",
            "piec-a1",
        ] {
            assert_eq!(Piece::named(name), None, "{name}");
        }
    }

    #[test]
    fn pieces_take_the_place_of_their_tags() {
        let find = |piece: Piece| match (piece.kind, piece.at) {
            (Kind::Needs, 1) => Some("<ul><piece-a2></ul>"),
            (Kind::Movement, 2) => Some("<b>x</b>"),
            _ => None,
        };
        let mut out = String::new();
        let count = put("a<piece-d1>b<piece-a2><piece-a3><piece-d1", &find, &mut out);
        assert_eq!(out, "a<ul><b>x</b></ul>b<b>x</b><piece-a3><piece-d1");
        assert_eq!(count, 2);
    }

    #[test]
    fn only_what_stands_alone_has_a_tag() {
        let piece = Piece {
            kind: Kind::Foot,
            at: 0,
        };
        let shown = |html: &str| Made::new(piece, html.into(), true).shown().to_string();
        assert_eq!(shown("<b>x</b>"), "<piece-p0>");
        for html in [
            "",
            "x",
            "<b>x</b> ",
            " <b>x</b>",
            "<!-- --><b>x</b>",
            "<b>x</b><!-- -->",
        ] {
            assert_eq!(shown(html), html);
        }
        assert_eq!(
            Made::new(piece, "<b>x</b>".into(), false).shown(),
            "<b>x</b>"
        );
    }
}
