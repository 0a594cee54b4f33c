//! The files of a site: which there are, where each lies, and each made when it is asked for, so that whoever writes can do so in
//! parallel without holding the whole site.

use super::feeds::{data, definitions, extras, feed, offline, search, tables, versions};
use super::material::{File, Item, Material, ROWS_A_PAGE};
use super::media::{card, picture};
use super::pages::{self, Rope};
use super::theme::ThemeError;
use super::theme::guard::{self, stamped};
use crate::curriculum::Owner;
use crate::curriculum::note::NoteOwner;
use crate::curriculum::page::{Made, PAGES};
use rayon::prelude::*;
use std::collections::BTreeMap;

/// Lists and makes the files of one site.
pub struct Renderer<'a> {
    site: Material<'a>,
}

impl<'a> Renderer<'a> {
    pub(super) fn new(site: Material<'a>) -> Renderer<'a> {
        Renderer { site }
    }

    /// What the files are made from.
    pub(super) fn material(&self) -> &Material<'a> {
        &self.site
    }

    /// Makes what is made once and read by many, so that no two threads wait for each other to make it.
    pub fn prepare(&self) {
        versions::of(&self.site);
        self.items();
    }

    fn items(&self) -> &[Item] {
        self.site.kept.items.get_or_init(|| self.list())
    }

    /// The position of the file with this path.
    pub fn position(&self, path: &str) -> Option<usize> {
        let all = self.site.kept.positions.get_or_init(|| {
            let paths = self.items().iter().map(|item| self.path(item));
            paths.enumerate().map(|(i, path)| (path, i)).collect()
        });
        all.get(path).copied()
    }

    fn list(&self) -> Vec<Item> {
        let mut items: Vec<Item> = PAGES
            .iter()
            .filter(|page| page.made == Made::Once)
            .map(Item::Fixed)
            .collect();
        self.list_large(&mut items);
        self.list_records(&mut items);
        items.extend([
            Item::NotFound,
            Item::DataSchema,
            Item::Sitemap,
            Item::Robots,
            Item::Feed,
            Item::Manifest,
            Item::Worker,
            Item::Guard(guard::SHEET),
            Item::Guard(guard::SCRIPT),
        ]);
        self.list_copied(&mut items);
        items
    }

    /// The largest first, so that no thread is left alone with one at the end.
    fn list_large(&self, items: &mut Vec<Item>) {
        let curriculum = self.site.curriculum;
        let skills = || curriculum.skills().map(|(ix, _)| ix);
        let pages = |count: usize| 0..count.div_ceil(ROWS_A_PAGE).max(1);
        let count = curriculum.published().count();
        items.extend(pages(count).map(Item::SelfTest));
        items.extend(pages(count).map(Item::Movements));
        items.push(Item::Booklet(None));
        items.extend(skills().map(|ix| Item::Booklet(Some(ix))));
        items.extend([Item::Data, Item::Tables, Item::Search, Item::Card(None)]);
        items.extend(skills().map(|ix| Item::Card(Some(ix))));
        let icons = card::ICONS.iter();
        items.extend(icons.map(|(size, cut)| Item::Icon(*size, *cut)));
    }

    /// The pages of records, of notes and of old ids.
    fn list_records(&self, items: &mut Vec<Item>) {
        let curriculum = self.site.curriculum;
        let skills = || curriculum.skills().map(|(ix, _)| ix);
        items.extend(skills().map(Item::Skill));
        items.extend(skills().map(Item::SkillTest));
        let families = curriculum.families().filter(|(_, f)| !f.held_back);
        items.extend(families.map(|(ix, _)| Item::Family(ix)));
        items.extend(curriculum.published().map(|(ix, _)| Item::Movement(ix)));
        let drawn = |ix| self.site.resolved.solved(ix).is_some();
        for (ix, _) in curriculum.published().filter(|(ix, _)| drawn(*ix)) {
            items.push(Item::Figure(ix));
            items.extend(pages::moving::moves(&self.site, ix).then_some(Item::Film(ix)));
        }
        let notes = curriculum.notes();
        let pages = notes.filter(|(_, n)| n.owner == NoteOwner::Page);
        items.extend(pages.map(|(ix, _)| Item::Page(ix)));
        let old = curriculum.old_ids();
        let published = old.filter(|(_, o)| curriculum.is_published(*o));
        items.extend(published.map(|(id, o)| Item::Redirect(id.to_string(), o)));
    }

    /// What is taken over from the theme and from the coach.
    fn list_copied(&self, items: &mut Vec<Item>) {
        let site = &self.site;
        let assets = site.theme.assets();
        items.extend(assets.map(|path| Item::Asset(path.to_string())));
        let definitions = definitions::files(site).iter();
        items.extend(definitions.map(|file| Item::Definition(*file)));
        let pictures = site
            .snapshot
            .files()
            .filter_map(|(_, f)| f.path.strip_prefix("content/pictures/"))
            .filter(|name| !picture::hidden(name));
        items.extend(pictures.map(|name| Item::Picture(name.to_string())));
        let smaller = picture::sizes(site).names();
        items.extend(smaller.map(|name| Item::Smaller(name.to_string())));
    }

    /// How many files the site has.
    pub fn len(&self) -> usize {
        self.items().len()
    }

    pub fn is_empty(&self) -> bool {
        self.items().is_empty()
    }

    /// The path of every file of the site.
    pub fn paths(&self) -> Vec<String> {
        self.items().iter().map(|item| self.path(item)).collect()
    }

    /// Whether the file at a position is a picture, drawn or made smaller.
    pub fn is_drawn(&self, position: usize) -> bool {
        matches!(
            self.items()[position],
            Item::Card(_)
                | Item::Figure(_)
                | Item::Film(_)
                | Item::Icon(..)
                | Item::Picture(_)
                | Item::Smaller(_)
        )
    }

    /// Whether the file at a position is a page.
    pub(super) fn is_page(&self, position: usize) -> bool {
        self.path(&self.items()[position]).ends_with(".html")
    }

    /// The position of one file of each kind.
    pub(super) fn one_of_each_kind(&self) -> Vec<usize> {
        let mut seen = Vec::new();
        let mut out = Vec::new();
        for (i, item) in self.items().iter().enumerate() {
            let kind = std::mem::discriminant(item);
            // The worker is made of all other files, and never used while rehearsing.
            let is_new = matches!(item, Item::Fixed(_)) || !seen.contains(&kind);
            if is_new && *item != Item::Worker {
                seen.push(kind);
                out.push(i);
            }
        }
        out
    }

    /// Makes the file at a position below [`Renderer::len`].
    ///
    /// # Errors
    /// When a template fails; the error names the page, the template and the line.
    pub fn render(&self, position: usize) -> Result<File, ThemeError> {
        self.made(position).map(|(file, _)| file)
    }

    /// As [`Renderer::render`], with the rope of a page that is one.
    pub(super) fn made(&self, position: usize) -> Result<(File, Option<Rope>), ThemeError> {
        let mut rope = None;
        let item = &self.items()[position];
        let path = self.path(item);
        let bytes = match item {
            Item::Data => data::curriculum(&self.site),
            Item::DataSchema => data::schema(),
            Item::Definition(file) => definitions::text(&self.site, *file),
            Item::Tables => tables::made(&self.site).0.clone(),
            Item::Search => stamped(search::PATH, search::made(&self.site).to_vec()),
            Item::Sitemap => extras::sitemap(&self.site, &self.addresses()),
            Item::Robots => extras::robots(&self.site),
            Item::Feed => feed::atom(&self.site),
            Item::Manifest => feed::manifest(&self.site),
            Item::Worker => offline::worker(&self.site, self.whole()?),
            Item::Guard(guard::SHEET) => stamped(&path, self.site.theme.guard().sheet.clone()),
            Item::Guard(_) => stamped(&path, self.site.theme.guard().script.clone()),
            Item::Asset(path) => stamped(
                path,
                self.site.theme.asset(path, self.site.curriculum.school()),
            ),
            Item::Picture(name) => picture::published(&self.site, name),
            Item::Smaller(name) => picture::sizes(&self.site).bytes(name),
            Item::Figure(ix) => pages::moving::small(&self.site, *ix).into_bytes(),
            Item::Film(ix) => pages::moving::film(&self.site, *ix).into_bytes(),
            Item::Card(of) => card::draw(&self.site, *of),
            Item::Icon(size, maskable) => card::icon(&self.site, *size, *maskable),
            _ => {
                let page = pages::render(&self.site, item, &path)?;
                rope = page.rope;
                page.html.into_bytes()
            }
        };
        Ok((File { path, bytes }, rope))
    }

    fn path(&self, item: &Item) -> String {
        let id = |owner: Owner| format!("{}.html", self.site.curriculum.id_of(owner));
        let numbered = |name: &str, i: usize| {
            if i == 0 {
                format!("{name}.html")
            } else {
                format!("{name}-{}.html", i + 1)
            }
        };
        match item {
            Item::Fixed(page) => format!("{}.html", page.name),
            Item::SelfTest(i) => numbered("self-test", *i),
            Item::Movements(i) => numbered("movements", *i),
            Item::Movement(ix) => id(Owner::Movement(*ix)),
            Item::Family(ix) => id(Owner::Family(*ix)),
            Item::Skill(ix) => id(Owner::Skill(*ix)),
            Item::SkillTest(ix) => format!("self-test-{}", id(Owner::Skill(*ix))),
            Item::Booklet(of) => pages::booklet::path(&self.site, *of),
            Item::Page(ix) => id(Owner::Page(*ix)),
            Item::Redirect(old, _) => format!("{old}.html"),
            Item::NotFound => "404.html".into(),
            Item::Data => "data/curriculum.json".into(),
            Item::DataSchema => "data/curriculum.schema.json".into(),
            Item::Definition(file) => definitions::path(&self.site, *file),
            Item::Tables => tables::PATH.into(),
            Item::Search => search::PATH.into(),
            Item::Sitemap => "sitemap.xml".into(),
            Item::Robots => "robots.txt".into(),
            Item::Feed => "changes.atom".into(),
            Item::Manifest => "manifest.webmanifest".into(),
            Item::Worker => offline::PATH.into(),
            Item::Guard(path) => path.to_string(),
            Item::Asset(path) => format!("theme/{path}"),
            Item::Picture(name) | Item::Smaller(name) => format!("pictures/{name}"),
            Item::Figure(ix) => pages::view::figure_path(&self.site, *ix),
            Item::Film(ix) => pages::moving::film_path(&self.site, *ix),
            Item::Card(of) => card::path(&self.site, *of),
            Item::Icon(size, maskable) => card::icon_path(*size, *maskable),
        }
    }

    /// The addresses of all pages, for the sitemap: in order, without redirects and the unknown-address page.
    fn addresses(&self) -> Vec<String> {
        let mut out: Vec<String> = self
            .items()
            .iter()
            .filter(|i| !matches!(i, Item::Redirect(..) | Item::NotFound))
            .map(|i| self.path(i))
            .filter(|p| p.ends_with(".html"))
            .collect();
        out.sort();
        out
    }

    /// Says the hashes of all files but the worker's, by path, which whoever wrote them knows: the worker's version covers them.
    pub fn wrote<'h>(&self, hashes: impl Iterator<Item = (&'h str, &'h str)>) {
        self.site.kept.whole.get_or_init(|| of_hashes(hashes));
    }

    /// The position of the worker, which is made last.
    pub fn last(&self) -> usize {
        let worker = self.items().iter().position(|i| *i == Item::Worker);
        worker.unwrap_or_default()
    }

    /// A hash of every file but the worker's: what was said, else worked out by making them all.
    fn whole(&self) -> Result<&str, ThemeError> {
        if let Some(said) = self.site.kept.whole.get() {
            return Ok(said);
        }
        let last = self.last();
        let made: Result<Vec<(String, String)>, ThemeError> = (0..self.len())
            .into_par_iter()
            .filter(|i| *i != last)
            .map(|i| {
                let file = self.render(i)?;
                Ok((file.path, blake3::hash(&file.bytes).to_hex().to_string()))
            })
            .collect();
        let made = made?;
        self.wrote(
            made.iter()
                .map(|(path, hash)| (path.as_str(), hash.as_str())),
        );
        Ok(self.site.kept.whole.get().map_or("", String::as_str))
    }
}

/// One hash of many, in the order of their paths.
fn of_hashes<'h>(hashes: impl Iterator<Item = (&'h str, &'h str)>) -> String {
    let sorted: BTreeMap<&str, &str> = hashes.collect();
    let mut all = blake3::Hasher::new();
    for (path, hash) in sorted {
        all.update(path.as_bytes())
            .update(b"\n")
            .update(hash.as_bytes());
    }
    all.finalize().to_hex()[..16].to_string()
}
