//! A walk over one page: which elements are open, which movement each is about, and whether its mark stands in it.

use super::attributes::Attributes;
use super::pieces::{Pieces, Summary};
use super::tokens::{Handler, Tag};
use super::whole::{Met, Whole};
use super::{Auditor, Cautioned, SIGNALS};
use crate::site::names::piece::Piece;
use crate::words::seen;
use memchr::memchr2;

/// The movement, skill or family that an element is about.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum About {
    Nothing,
    Cautioned(Cautioned),
    /// One without cautions, or an id that nobody bears.
    Another,
}

/// An element that is open while the page is read.
#[derive(Clone, Copy)]
struct Element {
    /// Where its name begins in [`Walk::names`].
    name: usize,
    about: About,
    marked: bool,
    hidden: bool,
    /// In how many closed parts it stands: what is marked in one is not marked outside it.
    folds: u32,
    /// Inside, names are not looked for: source text, titles, scripts. As `hidden`, taken over from what it stands in.
    quiet: bool,
}

pub struct Walk<'a> {
    pub(super) auditor: &'a Auditor,
    open: Vec<Element>,
    /// The names of the open elements, one after the other.
    names: String,
    small_letters: String,
    pub(super) faults: Vec<String>,
    whole: Whole<'a>,
    /// The mark that is open: where among the open elements, its signal, and what it says.
    mark: Option<(usize, usize, String)>,
    /// For what the tags on a rope stand; none where the whole is read.
    pieces: Option<Pieces<'a>>,
    /// How many of them were met.
    met: usize,
    /// One was met that is not sound, or stands where that does not suffice.
    unsure: bool,
    /// What it does to the elements around it, where a part is walked.
    does: Option<Summary>,
}

/// The letters of a mark that are looked at.
const MOST_OF_MARK: usize = 400;

/// Elements whose content a browser does not show, or shows only where it knows no better.
fn is_unshown(tag: &Tag<'_>) -> bool {
    let has = |name: &str| tag.attributes.iter().any(|(key, _)| *key == name);
    match tag.name {
        "template" | "noscript" | "datalist" | "select" | "object" | "video" | "audio"
        | "canvas" | "iframe" | "defs" | "symbol" | "clippath" | "mask" | "pattern" | "marker"
        | "noembed" | "noframes" | "desc" | "metadata" => true,
        "dialog" => !has("open"),
        _ => has("popover"),
    }
}

/// An element that has no end tag.
pub fn is_void(name: &str) -> bool {
    matches!(
        name,
        "area"
            | "base"
            | "br"
            | "col"
            | "embed"
            | "hr"
            | "img"
            | "input"
            | "link"
            | "meta"
            | "source"
            | "track"
            | "wbr"
    )
}

impl<'a> Walk<'a> {
    pub fn new(auditor: &'a Auditor) -> Walk<'a> {
        Walk {
            auditor,
            open: Vec::new(),
            names: String::new(),
            small_letters: String::new(),
            faults: Vec::new(),
            whole: Whole::default(),
            mark: None,
            pieces: None,
            met: 0,
            unsure: false,
            does: None,
        }
    }

    /// For a piece alone, as if it stood in some element behind the guard.
    pub fn of_part(auditor: &'a Auditor, pieces: Pieces<'a>) -> Walk<'a> {
        let mut walk = Walk::new(auditor).in_pieces(pieces);
        walk.whole.behind_the_guard();
        walk.does = Some(Summary::default());
        walk.opened("div", About::Nothing, false, false, false);
        walk
    }

    /// For a page whose pieces are still tags.
    pub fn in_pieces(self, pieces: Pieces<'a>) -> Walk<'a> {
        Walk {
            pieces: Some(pieces),
            ..self
        }
    }

    /// For the page of an old id, which leads to this one.
    pub fn leading_to(mut self, leads_to: Option<&'a str>) -> Walk<'a> {
        self.whole.leads_to = leads_to;
        self
    }

    /// For a page that stands outside the site and loads nothing: the guard cannot stand before anything.
    pub fn loading_nothing(mut self) -> Self {
        self.whole.behind_the_guard();
        self
    }

    /// What is wrong with the page that was walked.
    pub fn finish(mut self) -> Vec<String> {
        self.close_to(0);
        self.whole.finish(&mut self.faults);
        self.faults
    }

    /// What a part does to the elements around it, if nothing was wrong with it.
    pub fn sound_part(self) -> Option<Summary> {
        let sound = self.open.len() == 1 && self.faults.is_empty() && self.mark.is_none();
        self.does.filter(|_| sound && !self.unsure)
    }

    /// Whether nothing is wrong with a rope in which so many tags stand for pieces.
    pub fn ends_sound(self, pieces: usize) -> bool {
        !self.unsure && self.met == pieces && self.finish().is_empty()
    }

    /// A tag that stands for a piece.
    fn piece(&mut self, pieces: Pieces<'a>, piece: Piece) {
        self.met += 1;
        let place = self.open.last();
        let suffices = self.whole.is_behind_the_guard()
            && self.mark.is_none()
            && !place.is_some_and(|e| e.hidden || e.quiet);
        let summary = pieces.summary(self.auditor, piece);
        let Some(summary) = summary.filter(|_| suffices) else {
            self.unsure = true;
            return;
        };
        for of in &summary.marks {
            self.speaks_for(About::Cautioned(*of));
        }
        if summary.free {
            self.speaks_here();
        }
    }

    pub(super) fn about(&self, attribute: &str, id: &str) -> About {
        let found = self.auditor.by_id.get(id).copied();
        let found = found.filter(|at| self.auditor.attribute(*at) == attribute);
        found.map_or(About::Another, About::Cautioned)
    }

    fn stands_in(&self, movement: Cautioned) -> bool {
        self.open
            .iter()
            .any(|e| e.about == About::Cautioned(movement))
    }

    fn opened(&mut self, name: &str, about: About, marked: bool, hidden: bool, folded: bool) {
        let folds = self.folds() + u32::from(folded);
        let quiet = matches!(name, "pre" | "title" | "script" | "style" | "svg")
            || self.open.last().is_some_and(|e| e.quiet);
        self.open.push(Element {
            name: self.names.len(),
            about,
            marked,
            hidden,
            folds,
            quiet,
        });
        self.names.push_str(name);
    }

    fn folds(&self) -> u32 {
        self.open.last().map_or(0, |e| e.folds)
    }

    fn close_to(&mut self, count: usize) {
        if self.mark.as_ref().is_some_and(|(at, ..)| *at >= count) {
            self.mark_ends();
        }
        while self.open.len() > count
            && let Some(element) = self.open.pop()
        {
            let name = &self.names[element.name..];
            unmarked(
                self.auditor,
                name,
                element.about,
                element.marked,
                &mut self.faults,
            );
            self.names.truncate(element.name);
        }
    }
}

impl Walk<'_> {
    /// What a drawing says of itself: a list of names, each with its signal word.
    fn drawing(&mut self, says: &str) {
        for part in says.split(';') {
            let words = seen::name(part.trim().trim_end_matches('.'));
            if let Some(first) = self.auditor.names.get(&words).and_then(|all| all.first()) {
                let id = self.auditor.id(*first);
                self.faults.push(format!(
                    "`{id}` is named as \"{}\" in a drawing without its signal word",
                    part.trim()
                ));
            }
        }
    }

    /// A mark begins: it speaks for the movement it stands in, not for those around it.
    fn mark_begins(&mut self, signal: usize) {
        self.mark_ends();
        self.mark = Some((self.open.len(), signal, String::new()));
        self.speaks_here();
    }

    /// A mark speaks for what the place it stands in is about.
    fn speaks_here(&mut self) {
        let mut around = self.open.iter().rev().map(|e| e.about);
        let of = around.find(|about| *about != About::Nothing);
        let folds = self.folds();
        if let (Some(does), None, 0) = (&mut self.does, of, folds) {
            does.free = true;
        }
        self.speaks_for(of.unwrap_or(About::Nothing));
    }

    fn speaks_for(&mut self, of: About) {
        let folds = self.folds();
        if let (Some(does), About::Cautioned(of), 0) = (&mut self.does, of, folds) {
            does.add(of);
        }
        self.open
            .iter_mut()
            .filter(|e| e.about == of && e.folds == folds)
            .for_each(|e| e.marked = true);
    }

    /// A link to what bears cautions stands in an element about it.
    fn link(&mut self, name: &str, read: &Attributes<'_>, about: About) {
        if matches!(name, "a" | "area")
            && let Some(to) = read.href.and_then(|href| self.auditor.leads_to(href))
            && about != About::Cautioned(to)
            && !self.stands_in(to)
        {
            let id = self.auditor.id(to);
            self.faults.push(format!(
                "a link leads to `{id}` outside an element with {}=\"{id}\" and its mark",
                self.auditor.attribute(to)
            ));
        }
    }

    /// A mark that ends has said its signal word; in a drawing, its sign.
    fn mark_ends(&mut self) {
        let Some((_, signal, says)) = self.mark.take() else {
            return;
        };
        let (_, word) = &self.auditor.signals[signal];
        let said = match self.open.last().is_some_and(|e| e.quiet) {
            true => seen::is_seen(&says),
            false => seen::letters(word) > 0 && seen::name(&says).contains(word.as_str()),
        };
        if !said {
            self.faults.push(format!(
                "a caution mark does not say its signal word, which is \"{word}\""
            ));
        }
    }
}

fn unmarked(auditor: &Auditor, name: &str, about: About, marked: bool, faults: &mut Vec<String>) {
    if let About::Cautioned(movement) = about
        && !marked
    {
        let id = auditor.id(movement);
        faults.push(format!(
            "`{id}` is named in a <{name}> without its caution mark"
        ));
    }
}

impl Handler for Walk<'_> {
    /// All but those that are on most tags and that [`Walk::attributes`] does not know.
    fn heeds(&self, key: &str) -> bool {
        !matches!(
            key,
            "class" | "id" | "scope" | "title" | "tabindex" | "data-label"
        )
    }

    fn start(&mut self, tag: &Tag<'_>) {
        let name = tag.name;
        if let Some(pieces) = self.pieces
            && let Some(piece) = Piece::named(name)
        {
            return self.piece(pieces, piece);
        }
        if tag.attributes.is_empty() && !matches!(name, "script" | "style") {
            if !tag.self_closing && !is_void(name) {
                let hidden = is_unshown(tag) || self.open.last().is_some_and(|e| e.hidden);
                self.opened(name, About::Nothing, false, hidden, name == "details");
            }
            return;
        }
        let read = self.attributes(tag);
        let shown = !self.open.last().is_some_and(|e| e.hidden);
        let met = Met {
            name,
            read: &read,
            shown,
        };
        self.whole.hears(&met, self.auditor, &mut self.faults);
        let closes = tag.self_closing || is_void(name);
        let hidden = read.hidden || is_unshown(tag) || self.open.last().is_some_and(|e| e.hidden);
        let folded = name == "details" && !tag.attributes.iter().any(|(key, _)| *key == "open");
        let signal = read
            .caution
            .and_then(|s| SIGNALS.iter().position(|known| *known == s));
        if let Some(signal) = signal
            && !hidden
            && !closes
        {
            self.mark_begins(signal);
        }
        let about = read.about.unwrap_or(About::Nothing);
        self.link(name, &read, about);
        let marked = signal.is_some() && !hidden && !closes;
        if closes {
            unmarked(self.auditor, name, about, marked, &mut self.faults);
        } else {
            self.opened(name, about, marked, hidden, folded);
        }
    }

    fn end(&mut self, name: &str) {
        let mut to = self.names.len();
        for (at, element) in self.open.iter().enumerate().rev() {
            if &self.names[element.name..to] == name {
                return self.close_to(at);
            }
            to = element.name;
        }
    }

    /// A text that is exactly the name of a cautioned movement stands inside that movement's element.
    fn text(&mut self, text: &str) {
        if let Some((.., says)) = &mut self.mark
            && says.len() < MOST_OF_MARK
        {
            says.push_str(text);
        }
        // Most texts have nothing to trim.
        let bare = match text.as_bytes() {
            [first, .., last] => first.is_ascii_graphic() && last.is_ascii_graphic(),
            _ => false,
        };
        let words = if bare { text } else { text.trim() };
        if let Some(element) = self.open.last().filter(|e| e.quiet) {
            let drawn = matches!(&self.names[element.name..], "title" | "desc");
            if drawn && self.open.len() > 1 {
                self.drawing(words);
            }
            return;
        }
        if !self.auditor.openings.may_begin(words) {
            return;
        }
        // A browser shows any space between words as one.
        let wide = words.len() <= self.auditor.openings.longest * 4
            && (memchr2(b'\n', b'\t', words.as_bytes()).is_some() || words.contains("  "));
        let one_space;
        let words = match wide {
            true => {
                one_space = words.split_whitespace().collect::<Vec<_>>().join(" ");
                one_space.as_str()
            }
            false => words,
        };
        if !self.auditor.openings.may_be_name(words) {
            return;
        }
        self.small_letters.clear();
        if words.is_ascii() {
            self.small_letters.push_str(words);
            self.small_letters.make_ascii_lowercase();
        } else {
            self.small_letters.push_str(&seen::name(words));
        }
        if let Some(named) = self.auditor.names.get(&self.small_letters)
            && !named.iter().any(|m| self.stands_in(*m))
            && let Some(first) = named.first()
        {
            let id = self.auditor.id(*first);
            let attribute = self.auditor.attribute(*first);
            self.faults.push(format!("`{id}` is named as \"{words}\" outside an element with {attribute}=\"{id}\" and its mark"));
        }
    }
}
