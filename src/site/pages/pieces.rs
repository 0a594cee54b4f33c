//! What several pages show of one movement, made by the theme once: what it needs, what its number opens, its test on screen and
//! on paper; and the cautions of a class.

use crate::chain::Step;
use crate::curriculum::caution::ClassIx;
use crate::curriculum::page::{Group, PAGES, Place};
use crate::curriculum::{Leaf, Movement, MovementIx, Need, SkillIx};
use crate::site::draw::figure;
use crate::site::feeds::versions;
use crate::site::material::Material;
use crate::site::material::kept::{Frame, Scoped};
use crate::site::names::piece::{Kind, Made, Piece};
use crate::site::pages::view::{self, PaperRow, TestRow, caution};
use crate::site::theme::ThemeError;
use crate::words::key;
use serde::Serialize;
use std::borrow::Cow;
use std::sync::OnceLock;
use tera::Value;

/// Before the name of the place on top to which a page belongs.
const WITHIN: &str = "within ";
pub const WITHIN_MOVEMENTS: &str = "within movements";
pub const WITHIN_TESTS: &str = "within self-test";

/// The frame of one page.
#[derive(Serialize)]
pub struct Framed<'a> {
    links: &'a str,
    top: &'a str,
    foot: &'a str,
}

/// A frame as it stands on a page of this name.
pub fn at<'a>(frame: &'a Frame, here: &str) -> Framed<'a> {
    let top = |name: &str| frame.tops.iter().find(|(of, _)| *of == name);
    Framed {
        links: frame.links.shown(),
        top: top(here)
            .or_else(|| top(""))
            .map_or("", |(_, top)| top.shown()),
        foot: frame.foot.shown(),
    }
}

/// A page in the navigation.
#[derive(Serialize)]
struct Way<'a> {
    href: String,
    name: &'a str,
    /// What `aria-current` says of it: `page` on the page itself, `true` on one that belongs to it, else nothing.
    here: &'static str,
}

/// Pages of the foot that belong together.
#[derive(Serialize)]
struct Ways<'a> {
    name: &'a str,
    ways: Vec<Way<'a>>,
}

/// A line of a needs tree: the part `ui.needs` nests lists by `open` and `close`.
#[derive(Serialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
pub(super) enum NeedLine<'a> {
    Open {
        says: String,
    },
    Close,
    Leaf {
        link: &'a str,
        target: String,
        figure: String,
    },
}

/// One rung of a threshold ladder: "your number opens ...".
#[derive(Serialize)]
pub(super) struct StepView<'a> {
    target: String,
    /// The movements that need nothing else.
    opens: Vec<&'a str>,
    /// Those that need more besides.
    enough_for: Vec<&'a str>,
    /// The small figures of the first, then of the second, where the part shows them.
    figures: Vec<String>,
    /// The skills whose goal it reaches.
    skills: Vec<&'a str>,
    /// How many more movements ask it than are listed.
    more: usize,
}

/// At most so many movements are listed on a rung.
const MOST_OPENS: usize = 60;

pub(super) fn once<T>(
    place: &OnceLock<T>,
    make: impl FnOnce() -> Result<T, ThemeError>,
) -> Result<&T, ThemeError> {
    if let Some(made) = place.get() {
        return Ok(made);
    }
    let made = make()?;
    Ok(place.get_or_init(|| made))
}

impl Material<'_> {
    /// What a movement needs.
    pub(super) fn needs(&self, ix: MovementIx) -> Result<&str, ThemeError> {
        let made = once(&self.kept.pieces[ix.at()].needs, || {
            let lines = stands_on(self, ix);
            let html = match lines.is_empty() {
                true => String::new(),
                false => self.part("ui.needs", "lines", &lines)?,
            };
            Ok(self.made(Kind::Needs, ix.at(), html))
        });
        made.map(Made::shown)
    }

    /// What a movement's number opens, in the whole curriculum or within the chain of a skill.
    pub(super) fn opens(
        &self,
        ix: MovementIx,
        within: Option<SkillIx>,
    ) -> Result<Cow<'_, str>, ThemeError> {
        let kinds = [Kind::Opens, Kind::OpensInFirst];
        let place = &self.kept.pieces[ix.at()].opens;
        self.scoped(ix, within, (place, kinds), |within| {
            self.ladder(ix, within, "ui.opens")
        })
    }

    /// A movement's test on the sheet; `within` narrows what its number opens.
    pub(super) fn test(
        &self,
        ix: MovementIx,
        within: Option<SkillIx>,
    ) -> Result<Cow<'_, str>, ThemeError> {
        let kinds = [Kind::Test, Kind::TestInFirst];
        let place = &self.kept.pieces[ix.at()].test;
        self.scoped(ix, within, (place, kinds), |within| {
            self.test_with(ix, &self.opens(ix, within)?)
        })
    }

    /// The same without what its number opens, which is long where no skill bounds it.
    pub(super) fn test_alone(&self, ix: MovementIx) -> Result<Cow<'_, str>, ThemeError> {
        self.test_with(ix, "").map(Cow::Owned)
    }

    fn test_with(&self, ix: MovementIx, opens: &str) -> Result<String, ThemeError> {
        let movement = self.curriculum.movement(ix);
        let row = TestRow {
            id: movement.id().as_str(),
            link: self.links.of(ix),
            figure: view::figure_of(self, ix),
            standard: self.words(&movement.standard()),
            each_side: movement.each_side(),
            test: view::test(self.say(), movement),
            needs: self.needs(ix)?,
            opens,
        };
        self.part("ui.test", "r", &row)
    }

    /// The same as a row of the table for paper.
    pub(super) fn test_on_paper(
        &self,
        ix: MovementIx,
        within: Option<SkillIx>,
    ) -> Result<Cow<'_, str>, ThemeError> {
        let kinds = [Kind::Paper, Kind::PaperInFirst];
        let place = &self.kept.pieces[ix.at()].on_paper;
        self.scoped(ix, within, (place, kinds), |within| {
            let movement = self.curriculum.movement(ix);
            let row = PaperRow {
                id: movement.id().as_str(),
                link: self.links.of(ix),
                figure: view::figure_of(self, ix),
                standard: self.words(&movement.standard()),
                each_side: movement.each_side(),
                only_after: view::only_after(movement),
                opens: &self.ladder(ix, within, "ui.opens_on_paper")?,
            };
            self.part("ui.paper_row", "r", &row)
        })
    }

    /// A movement's figure; empty where no posture is declared.
    pub(super) fn figure(&self, ix: MovementIx) -> &str {
        let make = || {
            let units = self.curriculum.school().units;
            let solved = self.resolved.solved(ix);
            let html = solved
                .map(|s| figure::figure(s, super::moving::told(self, ix), self.say(), units).svg);
            self.made(Kind::Figure, ix.at(), html.unwrap_or_default())
        };
        self.kept.pieces[ix.at()].figure.get_or_init(make).shown()
    }

    /// A caution class in full, as it is told to who does this movement.
    pub(super) fn caution(&self, class: ClassIx, of: &Movement) -> Result<&str, ThemeError> {
        let told = self
            .curriculum
            .cautions()
            .class(class)
            .told_apart(of.positions());
        let at = self.kept.told[&(class, told)];
        let made = once(&self.kept.cautions[at], || {
            let view = caution(self, class, of.positions());
            let html = self.part("ui.caution", "c", &view)?;
            Ok(self.made(Kind::Caution, at, html))
        });
        made.map(Made::shown)
    }

    /// What stands on every page before and after its own.
    pub(super) fn frame(&self) -> Result<&Frame, ThemeError> {
        once(&self.kept.frame, || self.framed(""))
    }

    /// The same with `root` before every address.
    pub(super) fn framed(&self, root: &str) -> Result<Frame, ThemeError> {
        // Of a frame with another root there is one page.
        let in_pieces = root.is_empty() && self.theme.is_in_pieces();
        let part = |name: &str, kind: Kind, at: usize, values: Vec<(&'static str, Value)>| {
            let root = ("root", Value::from(root));
            let html = self.component(name, &[vec![root], values].concat())?;
            Ok::<_, ThemeError>(Made::new(Piece { kind, at }, html, in_pieces))
        };
        let top = |(at, here): (usize, &'static str)| {
            let ways = Value::from_serializable(&self.ways(Place::Top, here));
            let values = vec![("school", self.school().clone()), ("ways", ways)];
            part("ui.top", Kind::Top, at, values).map(|made| (here, made))
        };
        let named = PAGES.iter().filter(|page| page.place == Place::Top);
        let groups = Group::ALL.map(|group| Ways {
            name: self.say().say(&key("navigation", group.word())),
            ways: self.ways(Place::Foot(group), ""),
        });
        Ok(Frame {
            links: part(
                "ui.links",
                Kind::Links,
                0,
                vec![("v", versions::of(self).clone())],
            )?,
            tops: named
                .map(|page| page.name)
                .chain([WITHIN_MOVEMENTS, WITHIN_TESTS, ""])
                .enumerate()
                .map(top)
                .collect::<Result<_, _>>()?,
            foot: part(
                "ui.foot",
                Kind::Foot,
                0,
                vec![
                    ("school", self.school().clone()),
                    ("groups", Value::from_serializable(&groups)),
                ],
            )?,
        })
    }

    /// The pages that stand at a place of the navigation, seen from the page `here`.
    fn ways(&self, place: Place, here: &str) -> Vec<Way<'_>> {
        let standing = PAGES.iter().filter(|page| page.place == place);
        standing
            .map(|page| Way {
                href: format!("{}.html", page.name),
                name: self.say().say(&key("shared", page.label)),
                here: match here.strip_prefix(WITHIN) {
                    Some(place) if place == page.name => "true",
                    None if here == page.name => "page",
                    _ => "",
                },
            })
            .collect()
    }

    /// A piece, kept where it shows all that the movement's number opens, or what it opens within its first skill.
    fn scoped<'s>(
        &'s self,
        ix: MovementIx,
        within: Option<SkillIx>,
        (place, [whole, in_first]): (&'s Scoped, [Kind; 2]),
        make: impl Fn(Option<SkillIx>) -> Result<String, ThemeError>,
    ) -> Result<Cow<'s, str>, ThemeError> {
        let kept = |place: &'s OnceLock<Made>, kind: Kind, within: Option<SkillIx>| {
            let made = once(place, || Ok(self.made(kind, ix.at(), make(within)?)))?;
            Ok(Cow::Borrowed(made.shown()))
        };
        let asked = self.chains.ladders.get(&ix).into_iter().flatten();
        let mut asking = asked.flat_map(|step| &step.opens);
        if asking.all(|ix| self.is_within(*ix, within)) {
            return kept(&place.whole, whole, None);
        }
        if self.chains.skills_of[ix.at()].first() == within.as_ref() {
            return kept(&place.in_first_skill, in_first, within);
        }
        make(within).map(Cow::Owned)
    }

    pub(super) fn made(&self, kind: Kind, at: usize, html: String) -> Made {
        Made::new(Piece { kind, at }, html, self.theme.is_in_pieces())
    }

    fn is_within(&self, ix: MovementIx, skill: Option<SkillIx>) -> bool {
        skill.is_none_or(|skill| self.chains.skills_of[ix.at()].contains(&skill))
    }

    /// What a movement's number opens, by a part of the theme; empty where it opens nothing.
    fn ladder(
        &self,
        ix: MovementIx,
        within: Option<SkillIx>,
        part: &str,
    ) -> Result<String, ThemeError> {
        let Some(ladder) = self.chains.ladders.get(&ix) else {
            return Ok(String::new());
        };
        let steps = steps(self, ix, ladder, &|ix| self.is_within(*ix, within), false);
        match steps.is_empty() {
            true => Ok(String::new()),
            false => self.part(part, "steps", &steps),
        }
    }

    pub(super) fn part(
        &self,
        name: &str,
        key: &'static str,
        of: &impl Serialize,
    ) -> Result<String, ThemeError> {
        self.component(name, &[(key, Value::from_serializable(of))])
    }
}

/// What a movement needs, line by line.
pub(super) fn stands_on<'a>(site: &'a Material<'_>, ix: MovementIx) -> Vec<NeedLine<'a>> {
    let mut lines = Vec::new();
    if let Need::All(parts) = site.curriculum.movement(ix).needs() {
        parts.iter().for_each(|p| need_lines(site, p, &mut lines));
    }
    lines
}

/// What a movement's number opens in the whole curriculum, with the small figures of what it opens.
pub(super) fn opens_above<'a>(site: &'a Material<'_>, ix: MovementIx) -> Vec<StepView<'a>> {
    let ladder = site.chains.ladders.get(&ix);
    ladder.map_or_else(Vec::new, |ladder| steps(site, ix, ladder, &|_| true, true))
}

fn need_lines<'a>(site: &'a Material<'_>, need: &Need<Leaf>, out: &mut Vec<NeedLine<'a>>) {
    let (says, parts) = match need {
        Need::Leaf(leaf) => {
            out.push(NeedLine::Leaf {
                link: site.links.of(leaf.movement),
                target: site.words(&leaf.target),
                figure: view::figure_of(site, leaf.movement),
            });
            return;
        }
        Need::All(parts) => (site.say().say("need.all_of").to_string(), parts),
        Need::Any(parts) => (site.say().say("need.any_of").to_string(), parts),
        Need::AtLeast(k, parts) => {
            let values = [("k", (*k).into()), ("all", parts.len().into())];
            (site.say().fill("need.at_least", &values), parts)
        }
    };
    out.push(NeedLine::Open { says });
    parts.iter().for_each(|p| need_lines(site, p, out));
    out.push(NeedLine::Close);
}

/// The ladder of a movement in words, of those movements that are `inside`; `drawn` with their figures.
fn steps<'a>(
    site: &'a Material<'_>,
    of: MovementIx,
    ladder: &[Step],
    inside: &dyn Fn(&MovementIx) -> bool,
    drawn: bool,
) -> Vec<StepView<'a>> {
    let view = |step: &Step| {
        let asked: Vec<MovementIx> = step.opens.iter().copied().filter(|ix| inside(ix)).collect();
        let reached = |leaf: &Leaf| leaf.movement == of && step.target.asks_at_least(&leaf.target);
        let (opens, enough): (Vec<MovementIx>, Vec<MovementIx>) = asked
            .iter()
            .take(MOST_OPENS)
            .partition(|ix| site.curriculum.movement(**ix).needs().holds(&reached));
        let figures = opens.iter().chain(&enough).filter(|_| drawn);
        let figures = figures.map(|ix| view::figure_of(site, *ix)).collect();
        let links = |list: Vec<MovementIx>| list.into_iter().map(|ix| site.links.of(ix)).collect();
        StepView {
            target: site.words(&step.target),
            more: asked.len().saturating_sub(MOST_OPENS),
            figures,
            opens: links(opens),
            enough_for: links(enough),
            skills: step.skills.iter().map(|s| site.links.skill(*s)).collect(),
        }
    };
    ladder
        .iter()
        .map(view)
        .filter(|s| !s.opens.is_empty() || !s.enough_for.is_empty() || !s.skills.is_empty())
        .collect()
}
