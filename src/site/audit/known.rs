//! What the audit has read once: where the same bytes stand in a page again, it need not take them apart again.
//!
//! What frames every page is known if it names no movement, closes what it opens, and has no fault. A movement's name with its
//! mark, as it stands on many pages, is known if, standing alone, it is about that movement and no other, closes what it opens,
//! and has no fault: then nothing can be wrong with it in any place, unless it is hidden there.

use super::tokens::{Handler, Tag};
use super::walk::{Walk, is_void};
use super::{Auditor, Cautioned, plain};
use foldhash::fast::FixedState;
use rayon::prelude::*;
use std::collections::HashMap;

/// What stands before the id of a movement.
const ABOUT: &str = "data-movement=\"";

pub struct Known {
    /// The letters with which the tags of what is known begin: most tags are told from them at a glance.
    letters: [bool; 256],
    /// How they begin, up to the id.
    opening: String,
    /// By id: the whole, and the movement if it has cautions.
    by_id: HashMap<String, (String, Option<Cautioned>), FixedState>,
    /// What stands on every page and names no movement.
    frame: Vec<String>,
}

impl Known {
    /// Those that are sound among the names of movements, given by id.
    pub fn of(auditor: &Auditor, names: &[(&str, &str)], frame: &[&str]) -> Known {
        let frame = frame.iter().filter(|html| {
            html.starts_with('<') && read(auditor, html).is_some_and(|nest| nest.is_frame())
        });
        let frame: Vec<String> = frame.map(|html| html.to_string()).collect();
        let first = names.first().and_then(|(_, html)| opening(html));
        let opening = first.unwrap_or_default();
        let sound = |(id, html): &(&str, &str)| {
            let behind = html.strip_prefix(opening)?.strip_prefix(id)?;
            let known = (html.to_string(), auditor.by_id.get(*id).copied());
            let nest = read(auditor, html)?;
            (behind.starts_with('"') && nest.is_name()).then(|| (id.to_string(), known))
        };
        let mut letters = [false; 256];
        for known in frame.iter().map(String::as_str).chain([opening]) {
            letters[letter(known)] = !known.is_empty();
        }
        Known {
            letters,
            opening: opening.to_string(),
            by_id: names.par_iter().filter_map(sound).collect(),
            frame,
        }
    }

    /// The length of what is known at the beginning of a page's rest, and its movement if that has cautions. A name is known
    /// only where it is not `hidden`.
    pub fn at(&self, rest: &str, hidden: bool) -> Option<(usize, Option<Cautioned>)> {
        if !self.letters[letter(rest)] {
            return None;
        }
        if let Some(part) = self
            .frame
            .iter()
            .find(|part| rest.starts_with(part.as_str()))
        {
            return Some((part.len(), None));
        }
        if hidden || self.opening.is_empty() {
            return None;
        }
        let behind = rest.strip_prefix(self.opening.as_str())?;
        let id = &behind[..memchr::memchr(b'"', behind.as_bytes())?];
        let (html, cautioned) = self.by_id.get(id)?;
        rest.starts_with(html.as_str())
            .then_some((html.len(), *cautioned))
    }
}

/// The letter behind the bracket of a tag.
fn letter(tag: &str) -> usize {
    tag.as_bytes().get(1).map_or(0, |b| usize::from(*b))
}

/// How a name begins, up to the id.
fn opening(html: &str) -> Option<&str> {
    Some(&html[..html.find(ABOUT)? + ABOUT.len()])
}

/// How its elements stand, where nothing is wrong with it.
fn read(auditor: &Auditor, html: &str) -> Option<Nest> {
    let mut nest = Nest::default();
    plain::read(html.as_bytes(), &mut nest)?;
    let mut walk = Walk::of_part(auditor);
    plain::read(html.as_bytes(), &mut walk)?;
    walk.is_faultless().then_some(nest)
}

/// Whether elements are closed as they are opened, and what speaks for movements in them.
#[derive(Default)]
struct Nest {
    open: Vec<String>,
    crossed: bool,
    outermost: usize,
    movements: usize,
    marks: usize,
    metas: usize,
    loose: bool,
}

impl Nest {
    fn closed(&self) -> bool {
        self.open.is_empty() && !self.crossed
    }

    /// One element about one movement.
    fn is_name(&self) -> bool {
        self.closed() && self.outermost == 1 && self.movements == 1 && !self.loose
    }

    /// Elements that say nothing of movements, nor of the page.
    fn is_frame(&self) -> bool {
        self.closed() && self.movements + self.marks + self.metas == 0 && !self.loose
    }
}

impl Handler for Nest {
    fn start(&mut self, tag: &Tag<'_>) {
        self.outermost += usize::from(self.open.is_empty());
        let count = |name| {
            tag.attributes
                .iter()
                .filter(|(key, _)| *key == name)
                .count()
        };
        self.movements += count("data-movement") + count("data-skill") + count("data-family");
        self.marks += count("data-caution");
        self.metas += usize::from(tag.name == "meta");
        if !tag.self_closing && !is_void(tag.name) {
            self.open.push(tag.name.to_string());
        }
    }

    fn end(&mut self, name: &str) {
        self.crossed |= self.open.pop().is_none_or(|open| open != name);
    }

    /// Words outside any element would join those around them.
    fn text(&mut self, text: &str) {
        self.loose |= self.open.is_empty() && !text.trim().is_empty();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::proof::proofread;
    use crate::source::Snapshot;

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

    const FRAME: &str =
        "<header><a href=\"index.html\">Hung</a></header>\n<link rel=\"icon\" href=\"icon.svg\">";
    const MARKED: &str = "<span data-movement=\"hang\"><a href=\"hang.html\">Hang</a> <a data-caution=\"warning\" href=\"c.html\">Warning</a></span>";

    #[test]
    fn only_what_is_sound_alone_is_known() {
        let auditor = auditor();
        let plain = "<span data-movement=\"squat\"><a href=\"squat.html\">Squat</a></span>";
        let known = |id: &str, html: &str| {
            let known = Known::of(&auditor, &[(id, html)], &[]);
            known
                .at(&format!("{html} and on"), false)
                .map(|(length, of)| (length == html.len(), of.is_some()))
        };
        assert_eq!(known("hang", MARKED), Some((true, true)));
        assert_eq!(known("squat", plain), Some((true, false)));
        for (id, html) in [
            ("hang", MARKED.replace("data-caution", "data-note").as_str()),
            ("hang", MARKED.replace("</span>", "").as_str()),
            ("hang", MARKED.replace("</a> ", "</span> ").as_str()),
            ("hang", format!("{MARKED}</div>").as_str()),
            ("hang", format!("{MARKED}{MARKED}").as_str()),
            (
                "hang",
                MARKED
                    .replace("<a data-caution", "<a hidden data-caution")
                    .as_str(),
            ),
            ("squat", MARKED),
            ("hang", plain.replace("squat\"", "hang\"").as_str()),
            (
                "hang",
                MARKED
                    .replace("Hang", "<i data-movement=\"squat\">Hang</i>")
                    .as_str(),
            ),
        ] {
            assert_eq!(known(id, html), None, "{html}");
        }
    }

    #[test]
    fn only_a_frame_that_says_nothing_of_movements_is_known() {
        let auditor = auditor();
        let known = |html: &str| Known::of(&auditor, &[], &[html]).at(html, true);
        assert_eq!(known(FRAME), Some((FRAME.len(), None)));
        for html in [
            MARKED,
            "<p>a</p> b",
            "<p>Hang</p>",
            "<p>a",
            "<p><b>a</p></b>",
            "<p data-caution=\"notice\">a</p>",
            "<meta name=\"a\" content=\"b\">",
            "<p><a href=\"hang.html\">a</a></p>",
            "<p style=\"color: red\">a</p>",
            "",
        ] {
            assert_eq!(known(html), None, "{html}");
        }
    }

    /// A page is judged alike, whether its names are known or taken apart.
    #[test]
    fn what_is_known_is_judged_alike() {
        let plain = auditor();
        let mut knowing = auditor();
        knowing.know(&[("hang", MARKED)], &[FRAME]);
        let [sheet, script] = &plain.guard;
        let policy = format!(
            "<meta http-equiv=\"Content-Security-Policy\" content=\"{}\"><meta name=\"referrer\" content=\"no-referrer\"><link rel=\"stylesheet\" href=\"{sheet}\"><script src=\"{script}\"></script>",
            crate::site::audit::POLICY
        );
        for page in [
            format!("{policy}<p>{MARKED}</p>"),
            format!("{policy}<p data-movement=\"hang\">{MARKED}</p>"),
            format!("{policy}<p data-movement=\"hang\">x</p>{MARKED}"),
            format!("{policy}<p hidden>{MARKED}</p>"),
            format!("{policy}<pre aria-hidden=\"true\">{MARKED}</pre>"),
            format!(
                "{policy}<p data-movement=\"squat\"><i data-movement=\"hang\">{MARKED}</i></p>"
            ),
            format!("{policy}<p>Hang</p>{MARKED}"),
            format!("{MARKED}<a href=\"hang.html\">x</a>"),
            format!("{policy}{FRAME}<p data-movement=\"hang\">{FRAME}{MARKED}</p>{FRAME}"),
            format!("{policy}<p data-movement=\"hang\">{FRAME}</p>{FRAME}"),
        ] {
            assert_eq!(
                knowing.file("a.html", page.as_bytes()),
                plain.file("a.html", page.as_bytes()),
                "{page}"
            );
        }
        let hidden = format!("{policy}<p hidden>{MARKED}</p>");
        let faults = plain.file("a.html", hidden.as_bytes());
        let says: Vec<&str> = faults.iter().map(|f| f.says.as_str()).collect();
        assert_eq!(
            says,
            ["`hang` is named in a <span> without its caution mark"]
        );
    }
}
