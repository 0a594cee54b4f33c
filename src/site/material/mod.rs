//! What pages are made from: a curriculum and what is worked out of it, its files, its theme, the rendered names, and what is kept
//! once it is made. The rooms above look here; nothing here knows of them.

mod item;
pub mod kept;

pub use item::{File, Item, ROWS_A_PAGE};
pub use kept::{Kept, Texts};

use crate::chain::{Chains, Resolved};
use crate::curriculum::target::{Added, Measure};
use crate::curriculum::words::Units;
use crate::curriculum::{Curriculum, Owner, Target};
use crate::proof::Proofread;
use crate::site::names::Links;
use crate::site::names::piece::{Kind, Made, Piece};
use crate::site::theme::{Theme, ThemeError};
use crate::source::Snapshot;
use crate::words::Words;
use crate::words::escape::escape;
use tera::{Context, Value};

/// Everything that pages are made from.
#[derive(Clone, Copy)]
pub struct Material<'a> {
    pub curriculum: &'a Curriculum,
    pub resolved: &'a Resolved,
    pub chains: &'a Chains,
    pub snapshot: &'a Snapshot,
    pub theme: &'a Theme,
    /// Every name as a link with its mark.
    pub links: &'a Links,
    pub kept: &'a Kept,
    pub texts: &'a Texts,
}

impl<'a> Material<'a> {
    /// `kept` was made of the same curriculum, but for the texts of notes.
    pub fn new(
        proof: &'a Proofread,
        snapshot: &'a Snapshot,
        theme: &'a Theme,
        kept: &'a Kept,
        texts: &'a Texts,
    ) -> Material<'a> {
        Material {
            curriculum: &proof.curriculum,
            resolved: &proof.resolved,
            chains: proof.resolved.chains(&proof.curriculum),
            snapshot,
            theme,
            links: &kept.links,
            kept,
            texts,
        }
    }

    /// A record's name with its signal word, for texts.
    pub(in crate::site) fn named(&self, owner: Owner) -> String {
        self.curriculum.named(owner, self.say())
    }

    /// What the interface says in the school's language.
    pub(in crate::site) fn say(&self) -> &'a Words {
        self.curriculum.words()
    }

    /// The piece for which a tag stands; other pieces in it may still be tags. None where there is no such piece, or nobody has made
    /// it yet.
    pub(in crate::site) fn piece(&self, piece: Piece) -> Option<&'a str> {
        let of = || self.kept.pieces.get(piece.at);
        let frame = || self.kept.frame.get();
        let made = match piece.kind {
            Kind::Movement | Kind::Skill | Kind::Family => return self.links.piece(piece),
            Kind::Needs => of()?.needs.get(),
            Kind::Opens => of()?.opens.whole.get(),
            Kind::OpensInFirst => of()?.opens.in_first_skill.get(),
            Kind::Test => of()?.test.whole.get(),
            Kind::TestInFirst => of()?.test.in_first_skill.get(),
            Kind::Paper => of()?.on_paper.whole.get(),
            Kind::PaperInFirst => of()?.on_paper.in_first_skill.get(),
            Kind::Figure => of()?.figure.get(),
            Kind::Article => self.texts.article(piece.at)?.get(),
            Kind::Caution => self.kept.cautions.get(piece.at)?.get(),
            Kind::Links => frame().map(|frame| &frame.links),
            Kind::Top => frame()?.tops.get(piece.at).map(|(_, top)| top),
            Kind::Foot => frame().map(|frame| &frame.foot),
        };
        made.map(Made::html)
    }

    /// How many pieces of a kind there are at most.
    pub(in crate::site) fn count(&self, kind: Kind) -> usize {
        match kind {
            Kind::Skill => self.curriculum.skills().count(),
            Kind::Family => self.curriculum.families().count(),
            Kind::Caution => self.kept.cautions.len(),
            Kind::Links | Kind::Foot => 1,
            Kind::Top => self.kept.frame.get().map_or(0, |frame| frame.tops.len()),
            _ => self.kept.pieces.len(),
        }
    }

    /// A target in the school's units as HTML. Where the other units say it otherwise, that stands beside it for the reader's
    /// choice.
    pub(in crate::site) fn words(&self, target: &Target) -> String {
        let units = self.curriculum.school().units;
        let own = target.say(units, self.say());
        let measured =
            target.measure() == Measure::Length || matches!(target.added(), Some(Added::Mass(_)));
        if !measured {
            return escape(&own);
        }
        let other = match units {
            Units::Metric => Units::Imperial,
            Units::Imperial => Units::Metric,
        };
        let other = target.say(other, self.say());
        format!(
            "<bdi data-other=\"{}\">{}</bdi>",
            escape(&other),
            escape(&own)
        )
    }

    /// One part of the theme.
    pub(in crate::site) fn component(
        &self,
        name: &str,
        values: &[(&'static str, Value)],
    ) -> Result<String, ThemeError> {
        let mut context = Context::new();
        for (key, value) in values {
            context.insert_value(*key, value.clone());
        }
        self.theme
            .tera()
            .render_component(name, &context, None, true)
            .map_err(|e| ThemeError {
                message: format!("the part {name} of the theme could not be made"),
                detail: e.to_string(),
            })
    }
}
