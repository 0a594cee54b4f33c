//! Pages: the context of each page kind, and the template that shows it.

mod about;
pub mod booklet;
mod family;
pub mod highlight;
pub mod history;
mod index;
pub mod markdown;
pub mod moving;
mod outside;
pub mod pieces;
pub mod plan;
mod record;
mod sheet;
pub mod view;
pub mod weighed;

use crate::curriculum::words::Word;
use crate::curriculum::{NoteIx, Owner};
use crate::site::feeds::{feed, tables, versions};
use crate::site::material::{Item, Material};
use crate::site::media::card::{self, Shared};
use crate::site::names::piece;
use crate::site::theme::ThemeError;
use crate::site::theme::guard::Guard;
use booklet::Anchors;
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

/// A page: as it is written, and as a rope, where it is one.
pub struct Page {
    pub html: String,
    pub rope: Option<Rope>,
}

/// A page whose pieces are still tags.
pub struct Rope {
    pub thin: String,
    /// How many of its tags a piece took the place of.
    pub pieces: usize,
}

/// Makes one HTML page.
pub fn render(site: &Material<'_>, item: &Item, path: &str) -> Result<Page, ThemeError> {
    let (template, head, mut context) = match item {
        Item::Fixed(page) => index::fixed(site, page)?,
        Item::SelfTest(index) => sheet::self_test(site, *index)?,
        Item::Movements(index) => index::movements(site, *index),
        Item::Movement(ix) => record::movement(site, *ix)?,
        Item::Family(ix) => family::family(site, *ix)?,
        Item::Skill(ix) => record::skill(site, *ix)?,
        Item::SkillTest(ix) => sheet::skill_test(site, *ix)?,
        Item::Booklet(of) => booklet::booklet(site, *of)?,
        Item::Page(ix) => page(site, *ix)?,
        Item::Redirect(old, owner) => redirect(site, old, *owner),
        Item::NotFound => not_found(site),
        _ => unreachable!("every other item is no page"),
    };
    let mut head = head;
    head.path = if path == "index.html" {
        String::new()
    } else {
        path.to_string()
    };
    head.json_ld = feed::schema_org(site, item);
    head.card = Some(card::shared(site, item));
    if matches!(item, Item::NotFound) {
        head.root = site.curriculum.school().address.clone();
    }
    let here = match item {
        Item::Fixed(page) if page.name == "faults" => pieces::WITHIN_MOVEMENTS,
        Item::Fixed(page) => page.name,
        Item::SelfTest(_) => "self-test",
        Item::SkillTest(_) => pieces::WITHIN_TESTS,
        Item::Movements(_) => "movements",
        Item::Movement(_) | Item::Family(_) => pieces::WITHIN_MOVEMENTS,
        _ => "",
    };
    match head.root.as_str() {
        "" => context.insert("frame", &pieces::at(site.frame()?, here)),
        root => context.insert("frame", &pieces::at(&site.framed(root)?, here)),
    }
    context.insert("page", &head);
    context.insert_value("school", site.school().clone());
    context.insert_value("v", versions::of(site).clone());
    let thin = site.template(&template, &context, path)?;
    let anchors = match item {
        Item::Booklet(of) => booklet::anchors(site, *of),
        _ => None,
    };
    Ok(written(site, thin, anchors.as_ref(), &head.root))
}

/// The page as it is written: its pieces in place, links that lead to the page itself turned into anchors, the guard behind the
/// policy.
fn written(site: &Material<'_>, thin: String, anchors: Option<&Anchors>, root: &str) -> Page {
    let anchored = |html: String| match anchors {
        Some(anchors) => booklet::anchored(anchors, &html),
        None => html,
    };
    let guarded = |html: &mut String, marks: usize| {
        Guard::put(html, &site.theme.guard().tags(root, marks));
    };
    if !site.theme.is_in_pieces() {
        let mut html = anchored(thin);
        let marks = Guard::marks(&html);
        guarded(&mut html, marks);
        return Page { html, rope: None };
    }
    let mut html = String::with_capacity(thin.len() * 3);
    let pieces = piece::put(&thin, &|piece| site.piece(piece), &mut html);
    let (mut html, mut thin) = (anchored(html), anchored(thin));
    let marks = Guard::marks(&html);
    guarded(&mut html, marks);
    guarded(&mut thin, marks);
    Page {
        html,
        rope: Some(Rope { thin, pieces }),
    }
}

/// Makes what frames every page.
///
/// # Errors
/// When the theme cannot make it.
pub fn frame(site: &Material<'_>) -> Result<(), ThemeError> {
    site.frame().map(drop)
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

/// A coach's own page.
fn page(site: &Material<'_>, ix: NoteIx) -> Result<Made, ThemeError> {
    let note = site.curriculum.note(ix);
    let mut context = Context::new();
    context.insert(
        "note",
        &markdown::render(site, ix, markdown::Place::own(0))?,
    );
    Ok((
        "page.html".into(),
        head(
            "page",
            &note.title,
            site.say().fill(
                "page.of_school",
                &[
                    ("title", (&note.title).into()),
                    ("school", (&site.curriculum.school().name).into()),
                ],
            ),
        ),
        context,
    ))
}

fn not_found(site: &Material<'_>) -> Made {
    (
        "not-found.html".into(),
        head(
            "not-found",
            site.say().say("page.not_found.title"),
            site.say().say("page.not_found.description"),
        ),
        Context::new(),
    )
}

fn redirect(site: &Material<'_>, old: &str, owner: Owner) -> Made {
    let curriculum = site.curriculum;
    let name = &site.named(owner);
    let link = match owner {
        Owner::Movement(_) | Owner::Skill(_) | Owner::Family(_) => {
            site.links.of_owner(owner).unwrap_or_default().to_string()
        }
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
            &site
                .say()
                .fill("page.moved_title", &[("name", name.into())]),
            site.say().fill(
                "page.moved_description",
                &[("old", old.into()), ("name", name.into())],
            ),
        ),
        context,
    )
}

impl Material<'_> {
    /// The school, as every template sees it; kept.
    fn school(&self) -> &Value {
        self.kept.school.get_or_init(|| self.school_view())
    }

    fn school_view(&self) -> Value {
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
        let school = self.curriculum.school();
        Value::from_serializable(&SchoolView {
            name: &school.name,
            address: &school.address,
            language: &school.language,
            direction: self.say().direction().word(),
            licence: school.licence.as_deref(),
            contact: school.contact.as_deref(),
            units: school.units.word(),
            site: tables::site_key(&school.address),
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
}
