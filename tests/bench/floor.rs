//! The floor: the same kind of work with the bare libraries. Walk, read, parse, graph, then one parallel pass that makes and
//! writes each page. Nothing is checked.

use petgraph::Direction;
use petgraph::algo::toposort;
use petgraph::graph::{DiGraph, NodeIndex};
use petgraph::visit::{Dfs, Reversed};
use pulldown_cmark::{CowStr, Event, Parser, Tag, TagEnd};
use rayon::prelude::*;
use serde::de::{MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use std::collections::HashMap;
use std::fmt;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::Instant;
use tera::{Context, Tera};

const ROWS_A_PAGE: usize = 1000;

#[derive(Deserialize)]
struct Movement {
    movement: String,
    name: String,
    pattern: String,
    position: String,
    load: String,
    equipment: Vec<String>,
    summary: String,
    standard: String,
    exit: Option<String>,
    #[serde(default)]
    needs: Vec<Need>,
    test: Test,
    stresses: Vec<String>,
    cues: Vec<String>,
    faults: Vec<Fault>,
    weeks: String,
}

#[derive(Deserialize)]
struct Test {
    how: String,
    counts: Vec<String>,
    stop: Vec<String>,
    rest: String,
}

#[derive(Deserialize, Serialize)]
struct Fault {
    see: String,
    because: String,
    r#try: String,
}

#[derive(Deserialize)]
struct Skill {
    skill: String,
    name: String,
    goal: String,
}

/// An item of a list of needs: a movement, a movement at a target, or a group.
enum Need {
    Leaf(String, String),
    Group(Vec<Need>),
}

impl<'de> Deserialize<'de> for Need {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Need, D::Error> {
        struct Item;
        impl<'de> Visitor<'de> for Item {
            type Value = Need;
            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("a need")
            }
            fn visit_str<E>(self, id: &str) -> Result<Need, E> {
                Ok(Need::Leaf(id.to_string(), String::new()))
            }
            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Need, A::Error> {
                let key: String = map.next_key()?.unwrap_or_default();
                Ok(match map.next_value()? {
                    Asked::Target(target) => Need::Leaf(key, target),
                    Asked::Group(needs) => Need::Group(needs),
                })
            }
        }
        from.deserialize_any(Item)
    }
}

enum Asked {
    Target(String),
    Group(Vec<Need>),
}

impl<'de> Deserialize<'de> for Asked {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Asked, D::Error> {
        struct Value;
        impl<'de> Visitor<'de> for Value {
            type Value = Asked;
            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("a target or a list of needs")
            }
            fn visit_str<E>(self, target: &str) -> Result<Asked, E> {
                Ok(Asked::Target(target.to_string()))
            }
            fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Asked, A::Error> {
                let mut needs = Vec::new();
                while let Some(need) = seq.next_element()? {
                    needs.push(need);
                }
                Ok(Asked::Group(needs))
            }
        }
        from.deserialize_any(Value)
    }
}

fn leaves<'a>(needs: &'a [Need], out: &mut Vec<(&'a str, &'a str)>) {
    for need in needs {
        match need {
            Need::Leaf(id, target) => out.push((id, target)),
            Need::Group(needs) => leaves(needs, out),
        }
    }
}

/// The context of a movement's page.
#[derive(Serialize)]
struct Page<'a> {
    id: &'a str,
    name: &'a str,
    summary: &'a str,
    exit: Option<&'a str>,
    pattern: &'a str,
    position: &'a str,
    load: &'a str,
    stage: usize,
    weeks: &'a str,
    equipment: &'a [String],
    stresses: &'a [String],
    standard: &'a str,
    how: &'a str,
    counts: &'a [String],
    stop: &'a [String],
    rest: &'a str,
    cues: &'a [String],
    faults: &'a [Fault],
    note: String,
    skills: Vec<&'a str>,
    needs: Vec<Card<'a>>,
    opens: Vec<Card<'a>>,
}

#[derive(Serialize)]
struct Card<'a> {
    id: &'a str,
    name: &'a str,
    target: &'a str,
    stage: usize,
}

#[derive(Serialize)]
struct Row<'a> {
    id: &'a str,
    name: &'a str,
    pattern: &'a str,
    standard: &'a str,
    stage: usize,
}

/// Part of a table on a page of its own.
struct Part<'a> {
    file: String,
    title: &'a str,
    at: usize,
    of: usize,
    rows: &'a [u32],
}

/// Reads the curriculum in `from`, writes its pages into `to`, and prints what each stage took in milliseconds, as JSON.
pub fn run(from: &Path, to: &Path) {
    let mut stages = serde_json::Map::new();
    let mut since = Instant::now();
    let mut stage = |name: &str| {
        let spent = since.elapsed().as_secs_f64() * 1000.0;
        stages.insert(name.to_string(), spent.into());
        since = Instant::now();
    };

    let (mut definitions, mut skills, mut notes) = (Vec::new(), Vec::new(), Vec::new());
    for entry in walkdir::WalkDir::new(from.join("content")) {
        let path = entry.expect("an entry").into_path();
        match path.extension().and_then(|e| e.to_str()) {
            Some("md") => notes.push(path),
            Some("yaml") if path.parent().is_some_and(|p| p.ends_with("skills")) => {
                skills.push(path);
            }
            Some("yaml") if !path.ends_with("content/school.yaml") => definitions.push(path),
            _ => {}
        }
    }
    definitions.sort();
    skills.sort();
    stage("walk");

    let read = |paths: &[PathBuf]| -> Vec<String> {
        paths
            .par_iter()
            .map(|p| fs::read_to_string(p).expect("text"))
            .collect()
    };
    let (definitions, skills) = (read(&definitions), read(&skills));
    let stems = notes.iter().map(|p| {
        let stem = p.file_stem().unwrap_or_default();
        stem.to_string_lossy().into_owned()
    });
    let notes: HashMap<String, String> = stems.zip(read(&notes)).collect();
    stage("read");

    let movements: Vec<Movement> = definitions
        .par_iter()
        .map(|text| serde_yaml::from_str(text).expect("a movement"))
        .collect();
    let skills: Vec<Skill> = skills
        .par_iter()
        .map(|text| serde_yaml::from_str(text).expect("a skill"))
        .collect();
    drop(definitions);
    stage("yaml");

    let at: HashMap<&str, u32> = movements
        .iter()
        .enumerate()
        .map(|(i, m)| (m.movement.as_str(), i as u32))
        .collect();
    let needs: Vec<Vec<(&str, &str)>> = movements
        .iter()
        .map(|m| {
            let mut out = Vec::new();
            leaves(&m.needs, &mut out);
            out
        })
        .collect();
    let mut graph: DiGraph<(), ()> = DiGraph::with_capacity(movements.len(), movements.len() * 3);
    for _ in &movements {
        graph.add_node(());
    }
    for (i, needs) in needs.iter().enumerate() {
        for (id, _) in needs {
            // A movement that stands twice among the needs is one edge.
            graph.update_edge(NodeIndex::new(at[id] as usize), NodeIndex::new(i), ());
        }
    }
    let mut rungs = vec![0usize; movements.len()];
    for node in toposort(&graph, None).expect("no loop") {
        let below = graph.neighbors_directed(node, Direction::Incoming);
        rungs[node.index()] = below.map(|n| rungs[n.index()] + 1).max().unwrap_or(0);
    }
    let chains: Vec<Vec<u32>> = skills
        .par_iter()
        .map(|skill| {
            let below = Reversed(&graph);
            let mut search = Dfs::new(below, NodeIndex::new(at[skill.goal.as_str()] as usize));
            let mut chain = Vec::new();
            while let Some(node) = search.next(below) {
                chain.push(node.index() as u32);
            }
            chain.sort_unstable_by_key(|i| (rungs[*i as usize], *i));
            chain
        })
        .collect();
    let mut ways: Vec<Vec<&str>> = vec![Vec::new(); movements.len()];
    for (skill, chain) in skills.iter().zip(&chains) {
        for i in chain {
            ways[*i as usize].push(&skill.skill);
        }
    }
    stage("graph");

    fs::create_dir_all(to).expect("a folder");
    let mut templates = Tera::new();
    templates
        .add_raw_templates([
            ("page.html", include_str!("page.html")),
            ("rows.html", include_str!("rows.html")),
        ])
        .expect("two templates");
    let card = |i: usize, target| Card {
        id: &movements[i].movement,
        name: &movements[i].name,
        target,
        stage: rungs[i],
    };
    let page = |i: usize| {
        let m = &movements[i];
        let mut opens: Vec<usize> = graph
            .neighbors(NodeIndex::new(i))
            .map(NodeIndex::index)
            .collect();
        opens.sort_unstable();
        let note = notes.get(&m.movement).map_or("", String::as_str);
        let context = Page {
            id: &m.movement,
            name: &m.name,
            summary: &m.summary,
            exit: m.exit.as_deref(),
            pattern: &m.pattern,
            position: &m.position,
            load: &m.load,
            stage: rungs[i],
            weeks: &m.weeks,
            equipment: &m.equipment,
            stresses: &m.stresses,
            standard: &m.standard,
            how: &m.test.how,
            counts: &m.test.counts,
            stop: &m.test.stop,
            rest: &m.test.rest,
            cues: &m.cues,
            faults: &m.faults,
            note: html(note, &|id| movements[at[id] as usize].name.as_str()),
            skills: ways[i].clone(),
            needs: needs[i]
                .iter()
                .map(|(id, target)| card(at[id] as usize, target))
                .collect(),
            opens: opens
                .into_iter()
                .map(|o| card(o, &movements[o].standard))
                .collect(),
        };
        put(
            &templates,
            "page.html",
            &Context::from_serialize(&context).expect("a context"),
            to.join(format!("{}.html", m.movement)),
        );
    };
    let table = |part: &Part| {
        let rows: Vec<Row> = part
            .rows
            .iter()
            .map(|i| {
                let m = &movements[*i as usize];
                Row {
                    id: &m.movement,
                    name: &m.name,
                    pattern: &m.pattern,
                    standard: &m.standard,
                    stage: rungs[*i as usize],
                }
            })
            .collect();
        let mut context = Context::new();
        context.insert("title", part.title);
        context.insert("part", &(part.at + 1));
        context.insert("parts", &part.of);
        context.insert("rows", &rows);
        put(&templates, "rows.html", &context, to.join(&part.file));
    };
    let all: Vec<u32> = (0..movements.len() as u32).collect();
    let mut parts = cut("movements", "All movements", &all);
    for (skill, chain) in skills.iter().zip(&chains) {
        parts.extend(cut(&skill.skill, &skill.name, chain));
    }
    // The largest first, so that no thread is left alone with one at the end.
    (0..parts.len() + movements.len())
        .into_par_iter()
        .for_each(|i| match parts.get(i) {
            Some(part) => table(part),
            None => page(i - parts.len()),
        });
    stage("pages");
    println!("{}", serde_json::Value::Object(stages));
}

fn cut<'a>(name: &str, title: &'a str, rows: &'a [u32]) -> Vec<Part<'a>> {
    let of = rows.len().div_ceil(ROWS_A_PAGE);
    rows.chunks(ROWS_A_PAGE)
        .enumerate()
        .map(|(at, rows)| Part {
            file: match at {
                0 => format!("{name}.html"),
                at => format!("{name}-{}.html", at + 1),
            },
            title,
            at,
            of,
            rows,
        })
        .collect()
}

fn put(templates: &Tera, template: &str, context: &Context, path: PathBuf) {
    let text = templates.render(template, context).expect("a page");
    fs::write(path, text).expect("a file is written");
}

/// Markdown as HTML, with links to movements looked up.
fn html<'a>(text: &'a str, name: &dyn Fn(&str) -> &'a str) -> String {
    let mut bare: Option<&str> = None;
    let events = Parser::new(text).flat_map(|event| {
        let mut before = None;
        let event = match event {
            Event::Start(Tag::Link {
                link_type,
                dest_url,
                title,
                id,
            }) => {
                let movement = dest_url.strip_prefix("movement:");
                bare = movement.map(name);
                Event::Start(Tag::Link {
                    link_type,
                    dest_url: movement.map_or(dest_url.clone(), |m| format!("{m}.html").into()),
                    title,
                    id,
                })
            }
            Event::End(TagEnd::Link) => {
                before = bare.take().map(|n| Event::Text(CowStr::Borrowed(n)));
                event
            }
            event => {
                bare = None;
                event
            }
        };
        before.into_iter().chain([event])
    });
    let mut out = String::with_capacity(text.len() * 2);
    pulldown_cmark::html::push_html(&mut out, events);
    out
}
