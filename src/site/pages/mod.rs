//! Pages: the context of each page kind, and the template that shows it.

mod about;
pub mod booklet;
pub mod highlight;
mod index;
pub mod markdown;
pub mod pieces;
pub mod plan;
mod record;
mod sheet;
pub mod view;

pub use index::by_name;
pub use sheet::all as in_test_order;

use crate::curriculum::target::{Added, Measure};
use crate::curriculum::words::{Units, Word};
use crate::curriculum::{Owner, Target};
use crate::site::media::card::{self, Shared};
use crate::site::theme::ThemeError;
use crate::site::theme::link::escape;
use crate::site::{Item, Plan};
use crate::words::Words;
use serde::Serialize;
use std::borrow::Cow;
use tera::{Context, Value};

/// What every page says of itself.
#[derive(Serialize)]
struct Head {
    /// The page kind, as a class of the body.
    kind: &'static str,
    title: String,
    description: String,
    path: String,
    /// schema.org data, where the page has any.
    json_ld: String,
    /// The picture of a link to the page.
    card: Option<Shared>,
    /// Before every address: empty, but on the unknown-address page, which any path may show.
    root: String,
}

/// The pages of a long table.
#[derive(Serialize)]
struct Turn {
    number: usize,
    count: usize,
    before: Option<String>,
    after: Option<String>,
}

fn turn(name: &str, index: usize, count: usize) -> Turn {
    let path = |i: usize| {
        if i == 0 {
            format!("{name}.html")
        } else {
            format!("{name}-{}.html", i + 1)
        }
    };
    Turn {
        number: index + 1,
        count,
        before: index.checked_sub(1).map(path),
        after: (index + 1 < count).then(|| path(index + 1)),
    }
}

/// Makes one HTML page.
pub fn render(plan: &Plan<'_>, item: &Item, path: &str) -> Result<String, ThemeError> {
    let (template, head, mut context) = match item {
        Item::Fixed(page) => index::fixed(plan, page)?,
        Item::SelfTest(index) => sheet::self_test(plan, *index)?,
        Item::Movements(index) => index::movements(plan, *index),
        Item::Movement(ix) => record::movement(plan, *ix)?,
        Item::Family(ix) => record::family(plan, *ix)?,
        Item::Skill(ix) => record::skill(plan, *ix)?,
        Item::SkillTest(ix) => sheet::skill_test(plan, *ix)?,
        Item::Booklet(of) => booklet::booklet(plan, *of)?,
        Item::Page(ix) => {
            let note = plan.curriculum.note(*ix);
            let mut context = Context::new();
            context.insert("note", &markdown::render(plan, *ix, 0)?);
            (
                "page.html".into(),
                head(
                    "page",
                    &note.title,
                    plan.say().fill(
                        "page.of_school",
                        &[
                            ("title", (&note.title).into()),
                            ("school", (&plan.curriculum.school.name).into()),
                        ],
                    ),
                ),
                context,
            )
        }
        Item::Redirect(old, owner) => redirect(plan, old, *owner),
        Item::NotFound => (
            "not-found.html".into(),
            head(
                "not-found",
                plan.say().say("page.not_found.title"),
                plan.say().say("page.not_found.description"),
            ),
            Context::new(),
        ),
        _ => unreachable!("every other item is no page"),
    };
    let mut head = head;
    head.path = if path == "index.html" {
        String::new()
    } else {
        path.to_string()
    };
    head.json_ld = crate::site::feeds::feed::schema_org(plan, item);
    head.card = Some(card::shared(plan, item));
    if matches!(item, Item::NotFound) {
        head.root = plan.curriculum.school.address.clone();
    }
    let here = match item {
        Item::Fixed(page) => page.name,
        Item::SelfTest(_) | Item::SkillTest(_) => "self-test",
        Item::Movements(_) => "movements",
        _ => "",
    };
    match head.root.as_str() {
        "" => context.insert("frame", &plan.frame()?.at(here)),
        root => context.insert("frame", &plan.framed(root)?.at(here)),
    }
    context.insert("page", &head);
    context.insert_value("school", plan.school().clone());
    context.insert_value("v", plan.versions().clone());
    let html = plan.template(&template, &context, path)?;
    let html = match item {
        Item::Booklet(of) => booklet::anchored(plan, *of, &html),
        _ => html,
    };
    Ok(plan.theme.guard().guarded(html, &head.root))
}

fn head(kind: &'static str, title: &str, description: impl Into<String>) -> Head {
    Head {
        kind,
        title: title.to_string(),
        description: description.into(),
        path: String::new(),
        json_ld: String::new(),
        card: None,
        root: String::new(),
    }
}

/// The template of a page, what it says of itself, and the rest of its context.
type Made = (Cow<'static, str>, Head, Context);

fn redirect(plan: &Plan<'_>, old: &str, owner: Owner) -> Made {
    let curriculum = plan.curriculum;
    let name = &plan.named(owner);
    let link = match owner {
        Owner::Movement(ix) => plan.links.of(ix).to_string(),
        Owner::Skill(ix) => plan.links.skill(ix).to_string(),
        Owner::Family(ix) => plan.links.family(ix).to_string(),
        Owner::Page(ix) => {
            let note = curriculum.note(ix);
            view::Named::page(&note.id, &note.title).link
        }
    };
    let mut context = Context::new();
    context.insert("to", &format!("{}.html", curriculum.id_of(owner)));
    context.insert("link", &link);
    context.insert("old", old);
    (
        "redirect.html".into(),
        head(
            "redirect",
            &plan
                .say()
                .fill("page.moved_title", &[("name", name.into())]),
            plan.say().fill(
                "page.moved_description",
                &[("old", old.into()), ("name", name.into())],
            ),
        ),
        context,
    )
}

impl<'a> Plan<'a> {
    /// A record's name with its signal word, for texts.
    pub(in crate::site) fn named(&self, owner: Owner) -> String {
        self.curriculum.named(owner, self.say())
    }

    /// What the interface says in the school's language.
    pub(in crate::site) fn say(&self) -> &'a Words {
        &self.curriculum.words
    }

    /// A target in the school's units as HTML. Where the other units say it otherwise, that stands beside it for the reader's
    /// choice.
    pub(in crate::site) fn words(&self, target: &Target) -> String {
        let units = self.curriculum.school.units;
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

    /// The school, as every template sees it.
    pub(in crate::site) fn school_view(&self) -> Value {
        #[derive(Serialize)]
        struct SchoolView<'s> {
            name: &'s str,
            address: &'s str,
            language: &'s str,
            direction: &'static str,
            licence: Option<&'s str>,
            contact: Option<&'s str>,
            units: &'static str,
            site: String,
        }
        let school = &self.curriculum.school;
        Value::from_serializable(&SchoolView {
            name: &school.name,
            address: &school.address,
            language: &school.language,
            direction: self.say().direction().word(),
            licence: school.licence.as_deref(),
            contact: school.contact.as_deref(),
            units: school.units.word(),
            site: crate::site::feeds::tables::site_key(&school.address),
        })
    }

    fn template(
        &self,
        template: &str,
        context: &Context,
        page: &str,
    ) -> Result<String, ThemeError> {
        let mut out = Vec::with_capacity(16 * 1024);
        self.theme
            .tera()
            .render_to(template, context, &mut out)
            .map_err(|e| ThemeError {
                message: format!("the page {page} could not be made with the template {template}"),
                detail: e.to_string(),
            })?;
        Ok(String::from_utf8(out)
            .unwrap_or_else(|e| String::from_utf8_lossy(e.as_bytes()).into_owned()))
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
