//! Pages as ropes. A piece that stands on many pages is read once, alone; a page is read with tags in its pieces' places.
//!
//! A piece is sound if, standing alone, nothing is wrong with it, it closes what it opens and nothing else, and it says nothing of
//! a page as a whole. A sound piece can be wrong in no place but a hidden one, a drawing, an open mark, or one before the guard;
//! all that it does to the elements around it is to mark those that it is about, which its summary says. An address that begins
//! with `#` leads to no page: a sound piece stays sound where its addresses are turned into anchors.
//!
//! So this finds pages right, and never wrong: of a page in which anything is amiss, or not told for certain, the whole is read,
//! as if there were no pieces.

use super::tokens::{Handler, Tag};
use super::walk::{Walk, is_void};
use super::{Auditor, Cautioned, plain};
use crate::site::names::piece::{Kind, Piece};
use std::sync::OnceLock;

/// What a sound piece does to the elements around it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Summary {
    /// Those that a mark in it speaks for: an element around it that is about one of them is marked.
    pub marks: Vec<Cautioned>,
    /// A mark in it speaks for whatever the place it stands in is about.
    pub free: bool,
}

impl Summary {
    pub fn add(&mut self, of: Cautioned) {
        if !self.marks.contains(&of) {
            self.marks.push(of);
        }
    }
}

/// What was found of each piece, by kind and number, when the first page with it was read; none where it is not sound.
pub struct Verdicts(Vec<Vec<OnceLock<Option<Summary>>>>);

impl Verdicts {
    /// With room for as many pieces of each kind.
    pub fn new(count: impl Fn(Kind) -> usize) -> Verdicts {
        let room = |kind: &Kind| (0..count(*kind)).map(|_| OnceLock::new()).collect();
        Verdicts(Kind::ALL.iter().map(room).collect())
    }
}

/// The pieces of a site, and what was found of them.
#[derive(Clone, Copy)]
pub struct Pieces<'a> {
    pub find: &'a dyn Fn(Piece) -> Option<&'a str>,
    pub verdicts: &'a Verdicts,
}

impl<'a> Pieces<'a> {
    /// What a piece does to the elements around it, if it is sound.
    pub fn summary(&self, auditor: &'a Auditor, piece: Piece) -> Option<&'a Summary> {
        let place = self.verdicts.0.get(piece.kind as usize)?.get(piece.at)?;
        let judge = || judge(auditor, self, (self.find)(piece)?);
        place.get_or_init(judge).as_ref()
    }
}

fn judge<'a>(auditor: &'a Auditor, pieces: &Pieces<'a>, html: &str) -> Option<Summary> {
    let mut part = Part::new(Walk::of_part(auditor, *pieces));
    // What is still open, a tag, a comment or a script, takes this for its own.
    let whole = [html, "<", END, ">"].concat();
    plain::read(whole.as_bytes(), &mut part)?;
    part.finish()
}

/// The tag behind a piece while it is read.
const END: &str = "end-of-piece";

/// A walk over a piece alone, and how its elements stand.
struct Part<'a> {
    walk: Walk<'a>,
    open: Vec<String>,
    amiss: bool,
    ended: bool,
}

impl<'a> Part<'a> {
    fn new(walk: Walk<'a>) -> Part<'a> {
        Part {
            walk,
            open: Vec::new(),
            amiss: false,
            ended: false,
        }
    }

    fn finish(self) -> Option<Summary> {
        let sound = self.ended && !self.amiss && self.open.is_empty();
        sound.then_some(())?;
        self.walk.sound_part()
    }
}

impl Handler for Part<'_> {
    fn heeds(&self, key: &str) -> bool {
        self.walk.heeds(key)
    }

    fn start(&mut self, tag: &Tag<'_>) {
        // Nothing stands behind the end.
        self.amiss |= self.ended;
        if tag.name == END {
            self.ended = true;
            return;
        }
        // They speak of the whole page.
        self.amiss |= matches!(tag.name, "meta" | "base" | "html" | "head" | "body");
        if !tag.self_closing && !is_void(tag.name) && Piece::named(tag.name).is_none() {
            self.open.push(tag.name.to_string());
        }
        self.walk.start(tag);
    }

    fn end(&mut self, name: &str) {
        self.amiss |= self.ended || self.open.pop().is_none_or(|open| open != name);
        self.walk.end(name);
    }

    fn text(&mut self, text: &str) {
        self.amiss |= self.ended;
        self.walk.text(text);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::proof::proofread;
    use crate::site::audit::POLICY;
    use crate::site::names::piece;
    use crate::site::pages::Rope;
    use crate::source::Snapshot;
    use proptest::prelude::*;
    use proptest::test_runner::TestRunner;
    use std::cell::Cell;

    fn auditor() -> Auditor {
        let texts = [
            (
                "content/school.yaml",
                "school: Room\naddress: https://room.example/\nlanguage: en\nunits: metric\n",
            ),
            (
                "content/movements/hang.yaml",
                "movement: hang\nname: Hang\npattern: vertical pull\nposition: inverted\nload: body\nequipment: []\nsummary: s\nstandard: 5 reps\nexit: Step down.\n",
            ),
            (
                "content/movements/squat.yaml",
                "movement: squat\nname: Squat\npattern: squat\nposition: upright\nload: body\nequipment: []\nsummary: s\nstandard: 5 reps\n",
            ),
        ];
        Auditor::new(&proofread(&Snapshot::of_texts(texts)).curriculum)
    }

    const MARK: &str = "<a data-caution=\"warning\" href=\"c.html\">Warning</a>";
    const MARKED: &str = "<span data-movement=\"hang\"><a href=\"hang.html\">Hang</a> <a data-caution=\"warning\" href=\"c.html\">Warning</a></span>";
    const FREE: &str = "<section data-caution=\"warning\"><p><b>Warning</b></p></section>";
    const FRAME: &str =
        "<header><a href=\"index.html\">Hung</a></header>\n<link rel=\"icon\" href=\"icon.svg\">";

    /// Whether a page with these pieces, in whose body tags stand for them, is told to be sound; and what the whole is found to be.
    fn judge(auditor: &Auditor, pieces: &[&str], body: &str) -> (bool, Vec<String>) {
        let [sheet, script] = &auditor.guard;
        let head = format!(
            "<meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\"><meta name=\"referrer\" content=\"no-referrer\">"
        );
        let guard =
            format!("<link rel=\"stylesheet\" href=\"{sheet}\"><script src=\"{script}\"></script>");
        let thin = match body.contains("GUARD") {
            true => format!("{head}{}", body.replace("GUARD", &guard)),
            false => format!("{head}{guard}{body}"),
        };
        let find = |piece: Piece| match piece.kind {
            Kind::Needs => pieces.get(piece.at).copied(),
            _ => None,
        };
        let mut whole = String::new();
        let count = piece::put(&thin, &find, &mut whole);
        let verdicts = Verdicts::new(|_| pieces.len());
        let of = Pieces {
            find: &find,
            verdicts: &verdicts,
        };
        let rope = Rope {
            thin,
            pieces: count,
        };
        let sound = auditor.is_sound("a.html", &rope, whole.as_bytes(), of);
        let faults = auditor.file("a.html", whole.as_bytes());
        (sound, faults.into_iter().map(|f| f.says).collect())
    }

    fn is_told_sound(auditor: &Auditor, pieces: &[&str], body: &str) -> bool {
        let (sound, faults) = judge(auditor, pieces, body);
        assert!(!sound || faults.is_empty(), "{pieces:?} {body}: {faults:?}");
        sound
    }

    #[test]
    fn a_sound_piece_is_sound_on_a_page() {
        let auditor = auditor();
        for body in [
            "<p><piece-d0></p>",
            "<p data-movement=\"hang\">x <piece-d0></p>",
            "<details><p data-movement=\"hang\">x <piece-d0></p></details>",
            "<main data-movement=\"hang\"><piece-d1></main>",
            "<main data-movement=\"hang\"><p data-movement=\"squat\">x</p><piece-d1></main>",
            "<piece-d2><p><piece-d0>, <piece-d0></p><piece-d2>",
            "<piece-d3><p data-movement=\"hang\"><piece-d3></p>",
        ] {
            let nested = format!("<ul><li>{MARKED} x</li><li><piece-d0></li></ul>");
            assert!(
                is_told_sound(&auditor, &[MARKED, FREE, FRAME, &nested], body),
                "{body}"
            );
        }
    }

    #[test]
    fn what_is_wrong_with_a_page_is_told_by_the_whole() {
        let auditor = auditor();
        for body in [
            "<p data-movement=\"hang\">x</p><piece-d0>",
            "<p hidden><piece-d0></p>",
            "<p data-movement=\"hang\"><i hidden><piece-d1></i></p>",
            "<p data-movement=\"hang\">x<details><piece-d0></details></p>",
            "<p data-movement=\"hang\"><i data-movement=\"squat\"><piece-d1></i></p>",
            "<p data-movement=\"hang\"><details><piece-d1></details></p>",
            "<i data-caution=\"warning\"><piece-d0>Warning</i>",
            "<i data-caution=\"warning\"><piece-d0></i>",
            "<p>Hang</p><piece-d0>",
            "<piece-d2>GUARD",
            "<a href=\"hang.html\"><piece-d0></a>",
        ] {
            let (sound, faults) = judge(&auditor, &[MARKED, FREE, FRAME], body);
            assert!(!sound && !faults.is_empty(), "{body}");
        }
    }

    /// A place where a tag is no tag, or where its piece is not taken as what it is alone.
    #[test]
    fn where_a_piece_is_no_piece_the_whole_is_read() {
        let auditor = auditor();
        for body in [
            "<title>x<piece-d0></title>",
            "<p title=\"<piece-d0>\">x</p>",
            "<textarea><piece-d0></textarea>",
            "<svg><piece-d0></svg>",
            "<piece-d0 class=\"x\">",
            "<p><piece-d0></p><piece-d9>",
        ] {
            assert!(!is_told_sound(&auditor, &[MARKED], body), "{body}");
        }
    }

    #[test]
    fn only_what_is_sound_alone_is_a_sound_piece() {
        let auditor = auditor();
        assert!(is_told_sound(&auditor, &[MARKED], "<p><piece-d0></p>"));
        for piece in [
            MARKED.replace("data-caution", "data-note").as_str(),
            MARKED.replace("</span>", "").as_str(),
            MARKED.replace("</a> ", "</span> ").as_str(),
            format!("{MARKED}</div>").as_str(),
            format!("</p>{MARKED}").as_str(),
            MARKED
                .replace("<a data-caution", "<a hidden data-caution")
                .as_str(),
            MARKED.replace("\">Hang", "\">Hang <i title=\"").as_str(),
            "<p>Hang</p>",
            "<p>a",
            "<p><b>a</p></b>",
            "<meta name=\"a\" content=\"b\">",
            "<title>Hang</title>",
            "<body>",
            "<p><a href=\"hang.html\">a</a></p>",
            "<p style=\"color: red\">a</p>",
            "<p data-movement=\"hang\">a</p>",
            "<script>a",
            "<style>a</style>",
            "<p>a</p><b title=\"",
            "<svg><desc>Hang.</desc></svg>",
            "<P>a</P>",
            "<p>a</p><!-- b",
        ] {
            assert!(
                !is_told_sound(&auditor, &[piece], "<p><piece-d0></p>"),
                "{piece}"
            );
        }
    }

    /// Whatever pieces and pages hold: what is told to be sound is found right by who reads the whole.
    #[test]
    fn what_is_told_to_be_sound_is() {
        let auditor = auditor();
        let config = ProptestConfig {
            failure_persistence: None,
            ..ProptestConfig::with_cases(6000)
        };
        let mut runner = TestRunner::new(config);
        let pieces = prop::collection::vec(prop::collection::vec(part(), 1..4), 3);
        let body = prop::collection::vec(part(), 0..5);
        let told = Cell::new(0);
        let done = runner.run(&(pieces, body), |(pieces, body)| {
            // A piece holds those before it alone, and has a tag at its ends.
            let piece = |(n, parts): (usize, &Vec<&str>)| -> String {
                let kept = |part: &&str| (n..3).all(|n| !part.contains(&format!("<piece-d{n}>")));
                let html: String = parts.iter().copied().filter(kept).collect();
                let alone = html.starts_with('<') && !html.starts_with("</") && html.ends_with('>');
                match alone {
                    true => html,
                    false => format!("<b>{html}</b>"),
                }
            };
            let pieces: Vec<String> = pieces.iter().enumerate().map(piece).collect();
            let pieces: Vec<&str> = pieces.iter().map(String::as_str).collect();
            let (sound, faults) = judge(&auditor, &pieces, &body.concat());
            told.set(told.get() + usize::from(sound && body.iter().any(|b| b.contains("piece-"))));
            prop_assert!(
                !sound || faults.is_empty(),
                "{:?} {:?}: {:?}",
                pieces,
                body,
                faults
            );
            Ok(())
        });
        assert_eq!(done.map_err(|e| e.to_string()), Ok(()));
        assert!(
            told.get() > 300,
            "only {} pages with pieces are told to be sound",
            told.get()
        );
    }

    fn part() -> impl Strategy<Value = &'static str> {
        let loose = prop::sample::select(vec![
            "<p>",
            "</p>",
            "<p data-movement=\"hang\">",
            "<i data-movement=\"squat\">",
            "</i>",
            "<details>",
            "</details>",
            "<i hidden>",
            "<svg>",
            "</svg>",
            "<desc>",
            "<title>",
            "</title>",
            "Hang",
            "x",
            " ",
            "<i data-caution=\"warning\">",
            "Warning",
            "<br data-movement=\"hang\">",
            "<a href=\"hang.html\">",
            "</a>",
            "<script>",
            "<p title=\"",
            "\">",
            "<template>",
            "</template>",
            "</div>",
        ]);
        let whole = prop::sample::select(vec![
            MARK,
            MARKED,
            FREE,
            FRAME,
            "<piece-d0>",
            "<piece-d1>",
            "<piece-d2>",
            "<p>x</p>",
            "<p>x <piece-d0> x</p>",
            "<details><piece-d0></details>",
            "<details open><piece-d0></details>",
            "<i hidden>x</i>",
            "<i hidden><piece-d0></i>",
            "<p data-movement=\"hang\">x <piece-d0></p>",
            "<p data-movement=\"hang\"><details>x <piece-d1></details></p>",
            "<p data-movement=\"hang\"><piece-d1></p>",
            "<i data-movement=\"squat\"><piece-d0></i>",
            "<i data-caution=\"warning\">Warning <piece-d0></i>",
            "<p data-movement=\"hang\">Hang <a data-caution=\"warning\" href=\"c.html\">Warning</a></p>",
            "<svg><piece-d0></svg>",
        ]);
        prop_oneof![1 => loose, 6 => whole]
    }
}
