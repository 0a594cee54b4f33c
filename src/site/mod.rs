//! The published site as pairs of path and bytes. Pure: nothing here comes from the clock, the machine or an earlier site.
//!
//! [`Plan::new`] lists what the site holds; [`Plan::render`] makes one file at a time, so that whoever writes can do so in
//! parallel without holding the whole site.

pub mod audit;
mod draw;
mod feeds;
mod media;
mod outcome;
mod pages;
pub mod theme;
mod version;

pub use draw::{figure, map};
pub use feeds::tables;
pub use outcome::{Options, Outcome, Site, Written, build, printed_plan};
pub use theme::link::escape;
pub use theme::saying::all as all_words;
pub use theme::{Theme, ThemeError};

use crate::chain::{self, Chain, Flat, Stages, Step};
use crate::curriculum::caution::ClassIx;
use crate::curriculum::page::{Made, PAGES, Page};
use crate::curriculum::{
    Curriculum, FamilyIx, Movement, MovementIx, NoteIx, Owner, SkillIx, note::NoteOwner,
};
use crate::leverage::{self, Solved};
use crate::proof::Proofread;
use crate::source::{FileId, Snapshot};
use feeds::{data, definitions, extras, feed, offline, search};
use media::{card, picture};
use pages as page;
use pages::pieces::{self, Pieces};
use pages::plan::printed;
use rayon::prelude::*;
use std::collections::{BTreeMap, HashMap};
use std::ops::Deref;
use std::sync::{Arc, OnceLock};
use theme::guard::{self, stamped};
use theme::link::Links;
use version::version;

/// A file of the site: its path with `/` between the parts, and its content.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct File {
    pub path: String,
    pub bytes: Vec<u8>,
}

/// Rows on one page of a long table.
pub const ROWS_A_PAGE: usize = 500;

/// What one file of the site shows.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Item {
    /// A page that every site has, by its name.
    Fixed(&'static Page),
    /// Part of a long table, counted from 0.
    SelfTest(usize),
    Movements(usize),
    Movement(MovementIx),
    Family(FamilyIx),
    Skill(SkillIx),
    /// The self-test of one skill: guided, in full, and on paper.
    SkillTest(SkillIx),
    /// The booklet of one skill, or of everything.
    Booklet(Option<SkillIx>),
    Page(NoteIx),
    /// An old id and the record that bears it now.
    Redirect(String, Owner),
    NotFound,
    Data,
    DataSchema,
    /// A file of `content/movements` as the coach wrote it.
    Definition(FileId),
    Tables,
    Search,
    Sitemap,
    Robots,
    Feed,
    Manifest,
    /// The script that keeps the site for when there is no network.
    Worker,
    /// What the program itself puts on every page, by its path.
    Guard(&'static str),
    /// A file of the theme, by its path there.
    Asset(String),
    /// A picture of the curriculum, by its path below `content/pictures`.
    Picture(String),
    /// A photograph in a smaller width, by its path below `pictures`.
    Smaller(String),
    /// The picture of a link to a skill, or to anything else.
    Card(Option<SkillIx>),
    /// An icon of the installed site: its size, and whether it may be cut to any shape.
    Icon(u32, bool),
}

/// Everything that pages are made from.
pub struct Plan<'a> {
    curriculum: &'a Curriculum,
    stages: &'a Stages,
    snapshot: &'a Snapshot,
    theme: &'a Theme,
    parts: Arc<Parts>,
}

/// What several pages need, made once. Nothing here depends on the text of a note.
pub struct Parts {
    links: Arc<Links>,
    ladders: BTreeMap<MovementIx, Vec<Step>>,
    chains: Vec<Chain>,
    flat: Flat,
    /// The posture of each movement that declares one that stands.
    solved: Vec<Option<Box<Solved>>>,
    skills_of: Vec<Vec<SkillIx>>,
    pieces: Vec<Pieces>,
    /// Each caution class in full, as HTML, once for all movements that it tells the same.
    cautions: HashMap<(ClassIx, u64), OnceLock<Box<str>>>,
    /// With their version.
    tables: OnceLock<(Vec<u8>, String)>,
    search: OnceLock<Vec<u8>>,
    versions: OnceLock<tera::Value>,
    school: OnceLock<tera::Value>,
    frame: OnceLock<pieces::Frame>,
    test_order: OnceLock<Vec<MovementIx>>,
    names_order: OnceLock<Vec<MovementIx>>,
    sizes: OnceLock<picture::Sizes>,
    definitions: OnceLock<Vec<FileId>>,
    items: OnceLock<Vec<Item>>,
    positions: OnceLock<HashMap<String, usize>>,
    /// A hash of every file but the worker's.
    whole: OnceLock<String>,
}

impl Deref for Plan<'_> {
    type Target = Parts;

    fn deref(&self) -> &Parts {
        &self.parts
    }
}

impl Parts {
    /// # Errors
    /// When the theme's smallest part, the name of a movement with its mark, cannot be rendered.
    pub fn new(proofread: &Proofread, theme: &Theme) -> Result<Parts, ThemeError> {
        Parts::with_links(proofread, theme, None)
    }

    /// With the rendered names of a curriculum whose movements have the same ids, names and cautions.
    fn with_links(
        proofread: &Proofread,
        theme: &Theme,
        links: Option<Arc<Links>>,
    ) -> Result<Parts, ThemeError> {
        let Proofread {
            curriculum, stages, ..
        } = proofread;
        let (links, (chains, (ladders, (flat, solved)))) = rayon::join(
            || links.map_or_else(|| Links::new(curriculum, theme).map(Arc::new), Ok),
            || {
                rayon::join(
                    || -> Vec<Chain> {
                        let goals: Vec<_> = curriculum.skills().map(|(_, s)| &s.goal).collect();
                        goals
                            .par_iter()
                            .map(|goal| chain::resolve(curriculum, stages, goal))
                            .collect()
                    },
                    || {
                        rayon::join(
                            || chain::ladders(curriculum, &|_| true),
                            || rayon::join(|| Flat::new(curriculum), || solved(curriculum)),
                        )
                    },
                )
            },
        );
        let mut skills_of = vec![Vec::new(); curriculum.len()];
        for (i, chain) in chains.iter().enumerate() {
            chain
                .movements
                .iter()
                .for_each(|l| skills_of[l.movement.at()].push(SkillIx(i as u32)));
        }
        Ok(Parts {
            links: links?,
            ladders,
            chains,
            flat,
            solved,
            skills_of,
            pieces: curriculum.movements().map(|_| Pieces::default()).collect(),
            cautions: told(curriculum),
            tables: OnceLock::new(),
            search: OnceLock::new(),
            versions: OnceLock::new(),
            school: OnceLock::new(),
            frame: OnceLock::new(),
            test_order: OnceLock::new(),
            names_order: OnceLock::new(),
            sizes: OnceLock::new(),
            definitions: OnceLock::new(),
            items: OnceLock::new(),
            positions: OnceLock::new(),
            whole: OnceLock::new(),
        })
    }
}

/// Every class with what of its movements' positions it tells apart.
fn told(curriculum: &Curriculum) -> HashMap<(ClassIx, u64), OnceLock<Box<str>>> {
    let of = |m: &Movement| -> Vec<(ClassIx, u64)> {
        let told = |c: &ClassIx| curriculum.cautions.class(*c).told_apart(&m.positions);
        m.cautions.iter().map(|c| (*c, told(c))).collect()
    };
    let all = curriculum.movements().flat_map(|(_, m)| of(m));
    all.map(|key| (key, OnceLock::new())).collect()
}

fn solved(curriculum: &Curriculum) -> Vec<Option<Box<Solved>>> {
    let of = |m: &Movement| m.posture.as_ref().and_then(|p| leverage::solve(p).ok());
    curriculum
        .movements()
        .map(|(_, m)| of(m).map(Box::new))
        .collect()
}

impl<'a> Plan<'a> {
    /// Lists the files of the site.
    ///
    /// # Errors
    /// When the theme's smallest part, the name of a movement with its mark, cannot be rendered.
    pub fn new(
        proofread: &'a Proofread,
        snapshot: &'a Snapshot,
        theme: &'a Theme,
    ) -> Result<Plan<'a>, ThemeError> {
        let parts = Arc::new(Parts::new(proofread, theme)?);
        let plan = Plan::with(proofread, snapshot, theme, parts);
        plan.prepare();
        Ok(plan)
    }

    /// With parts that were made of the same curriculum, but for the texts of notes.
    pub fn with(
        proofread: &'a Proofread,
        snapshot: &'a Snapshot,
        theme: &'a Theme,
        parts: Arc<Parts>,
    ) -> Plan<'a> {
        Plan {
            curriculum: &proofread.curriculum,
            stages: &proofread.stages,
            snapshot,
            theme,
            parts,
        }
    }

    /// Makes what is made once and read by many, so that no two threads wait for each other to make it.
    pub fn prepare(&self) {
        rayon::join(|| self.tables().0.len(), || self.search().len());
        self.versions();
        self.items();
    }

    fn tables(&self) -> &(Vec<u8>, String) {
        self.parts.tables.get_or_init(|| tables::tables(self))
    }

    fn search(&self) -> &[u8] {
        self.parts.search.get_or_init(|| search::entries(self))
    }

    /// The smaller widths of the coach's photographs.
    fn sizes(&self) -> &picture::Sizes {
        self.parts
            .sizes
            .get_or_init(|| picture::Sizes::new(self.snapshot))
    }

    fn school(&self) -> &tera::Value {
        self.parts.school.get_or_init(|| self.school_view())
    }

    /// Every published movement in the order of the tests.
    fn in_test_order(&self) -> &[MovementIx] {
        self.parts
            .test_order
            .get_or_init(|| page::in_test_order(self))
    }

    /// Every published movement by name.
    fn by_name(&self) -> &[MovementIx] {
        self.parts.names_order.get_or_init(|| page::by_name(self))
    }

    /// The definition files that are published, in order.
    fn definitions(&self) -> &[FileId] {
        self.parts
            .definitions
            .get_or_init(|| definitions::files(self))
    }

    fn items(&self) -> &[Item] {
        self.parts.items.get_or_init(|| self.list())
    }

    /// The name of every movement with its mark, as HTML, by id.
    pub fn names(&self) -> Vec<(&str, &str)> {
        let movements = self.curriculum.movements();
        movements
            .map(|(ix, m)| (m.id.as_str(), self.links.of(ix)))
            .collect()
    }

    /// The position of the file with this path.
    pub fn position(&self, path: &str) -> Option<usize> {
        let all = self.parts.positions.get_or_init(|| {
            let paths = self.items().iter().map(|item| self.path(item));
            paths.enumerate().map(|(i, path)| (path, i)).collect()
        });
        all.get(path).copied()
    }

    fn list(&self) -> Vec<Item> {
        let curriculum = self.curriculum;
        let mut items: Vec<Item> = PAGES
            .iter()
            .filter(|page| page.made == Made::Once)
            .map(Item::Fixed)
            .collect();
        let pages = |count: usize| 0..count.div_ceil(ROWS_A_PAGE).max(1);
        let count = curriculum.published().count();
        // The largest first, so that no thread is left alone with one at the end.
        items.extend(pages(count).map(Item::SelfTest));
        items.extend(pages(count).map(Item::Movements));
        items.push(Item::Booklet(None));
        items.extend(curriculum.skills().map(|(ix, _)| Item::Booklet(Some(ix))));
        items.push(Item::Data);
        items.push(Item::Tables);
        items.push(Item::Search);
        items.push(Item::Card(None));
        items.extend(curriculum.skills().map(|(ix, _)| Item::Card(Some(ix))));
        items.extend(
            card::ICONS
                .iter()
                .map(|(size, cut)| Item::Icon(*size, *cut)),
        );
        items.extend(curriculum.skills().map(|(ix, _)| Item::Skill(ix)));
        items.extend(curriculum.skills().map(|(ix, _)| Item::SkillTest(ix)));
        items.extend(
            curriculum
                .families()
                .filter(|(_, f)| !f.held_back)
                .map(|(ix, _)| Item::Family(ix)),
        );
        items.extend(curriculum.published().map(|(ix, _)| Item::Movement(ix)));
        items.extend(
            curriculum
                .notes()
                .filter(|(_, n)| n.owner == NoteOwner::Page)
                .map(|(ix, _)| Item::Page(ix)),
        );
        items.extend(
            curriculum
                .old_ids()
                .filter(|(_, o)| curriculum.is_published(*o))
                .map(|(id, o)| Item::Redirect(id.to_string(), o)),
        );
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
        items.extend(
            self.theme
                .assets()
                .map(|path| Item::Asset(path.to_string())),
        );
        items.extend(
            self.definitions()
                .iter()
                .map(|file| Item::Definition(*file)),
        );
        let pictures = self
            .snapshot
            .files()
            .filter_map(|(_, f)| f.path.strip_prefix("content/pictures/"));
        items.extend(
            pictures
                .filter(|p| !picture::hidden(p))
                .map(|p| Item::Picture(p.to_string())),
        );
        items.extend(self.sizes().names().map(|n| Item::Smaller(n.to_string())));
        items
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
            Item::Card(_) | Item::Icon(..) | Item::Picture(_) | Item::Smaller(_)
        )
    }

    /// The position of one file of each kind.
    fn one_of_each_kind(&self) -> Vec<usize> {
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

    /// Makes the file at a position below [`Plan::len`].
    ///
    /// # Errors
    /// When a template fails; the error names the page, the template and the line.
    pub fn render(&self, position: usize) -> Result<File, ThemeError> {
        let item = &self.items()[position];
        let path = self.path(item);
        let bytes = match item {
            Item::Data => data::curriculum(self),
            Item::DataSchema => data::schema(),
            Item::Definition(file) => definitions::text(self, *file),
            Item::Tables => self.tables().0.clone(),
            Item::Search => stamped(search::PATH, self.search().to_vec()),
            Item::Sitemap => extras::sitemap(self),
            Item::Robots => extras::robots(self),
            Item::Feed => feed::atom(self),
            Item::Manifest => feed::manifest(self),
            Item::Worker => offline::worker(self)?,
            Item::Guard(guard::SHEET) => stamped(&path, self.theme.guard().sheet.clone()),
            Item::Guard(_) => stamped(&path, self.theme.guard().script.clone()),
            Item::Asset(path) => stamped(path, self.theme.asset(path, &self.curriculum.school)),
            Item::Picture(name) => picture::published(self, name),
            Item::Smaller(name) => self.sizes().bytes(name),
            Item::Card(of) => card::draw(self, *of),
            Item::Icon(size, maskable) => card::icon(self, *size, *maskable),
            _ => page::render(self, item, &path)?.into_bytes(),
        };
        Ok(File { path, bytes })
    }

    fn path(&self, item: &Item) -> String {
        let id = |owner: Owner| format!("{}.html", self.curriculum.id_of(owner));
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
            Item::Booklet(of) => page::booklet::path(self, *of),
            Item::Page(ix) => id(Owner::Page(*ix)),
            Item::Redirect(old, _) => format!("{old}.html"),
            Item::NotFound => "404.html".into(),
            Item::Data => "data/curriculum.json".into(),
            Item::DataSchema => "data/curriculum.schema.json".into(),
            Item::Definition(file) => definitions::path(self, *file),
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
            Item::Card(of) => card::path(self, *of),
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
}
