//! How a curriculum stood at its last publish: `content/standing.json`, the ledger's other half. One record a line, so that a
//! change of one shows as one line. Without it the ledger's own `stands` is compared, which knows standards and cautions alone.

use crate::curriculum::caution::ClassIx;
use crate::curriculum::ledger::Ledger;
use crate::curriculum::note::NoteOwner;
use crate::curriculum::{Curriculum, Leaf, Movement, MovementParts, Need, Owner};
use crate::source::snapshot::STANDING;
use crate::source::{Diagnostic, FileId, Findings, Rule, Snapshot, Span};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

const VERSION: u32 = 1;

/// Everything published, by id.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stood {
    pub standing: u32,
    /// The signal word of each caution class.
    pub classes: BTreeMap<String, String>,
    pub families: BTreeSet<String>,
    pub pages: BTreeSet<String>,
    pub skills: BTreeMap<String, StoodSkill>,
    pub movements: BTreeMap<String, StoodMovement>,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StoodSkill {
    pub name: String,
    pub goal: Asked,
    #[serde(default, skip_serializing_if = "is_false")]
    pub guarded: bool,
}

/// A movement at a target.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Asked {
    pub movement: String,
    pub target: String,
}

/// What is compared of a movement; `None` where the ledger alone is known, which does not keep it.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StoodMovement {
    pub name: String,
    pub standard: String,
    /// Inverted or loaded.
    #[serde(default, skip_serializing_if = "is_false")]
    pub guarded: bool,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub needs: Option<Tree>,
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub exit: String,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub counts: Vec<String>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stop: Vec<String>,
}

/// Needs as they are kept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Tree {
    Leaf(Asked),
    All { all: Vec<Tree> },
    Any { any: Vec<Tree> },
    AtLeast { at_least: u32, of: Vec<Tree> },
}

fn families(curriculum: &Curriculum) -> impl Iterator<Item = String> {
    let families = curriculum.families().filter(|(_, f)| !f.held_back);
    families.map(|(_, f)| f.id.to_string())
}

fn pages(curriculum: &Curriculum) -> impl Iterator<Item = String> {
    let notes = curriculum.notes();
    let pages = notes.filter(|(_, n)| n.owner == NoteOwner::Page && !n.held_back);
    pages.map(|(_, n)| n.id.clone())
}

fn is_false(b: &bool) -> bool {
    !b
}

impl Stood {
    /// How the published part of a curriculum stands now.
    pub fn of(curriculum: &Curriculum) -> Stood {
        let signal =
            |c: &crate::curriculum::caution::Class| (c.id.to_string(), c.signal.word().to_string());
        let skill = |s: &crate::curriculum::Skill| StoodSkill {
            name: s.name.clone(),
            goal: asked(curriculum, &s.goal),
            guarded: curriculum.movement(s.goal.movement).guarded(),
        };
        Stood {
            standing: VERSION,
            classes: curriculum.cautions().classes().iter().map(signal).collect(),
            families: families(curriculum).collect(),
            pages: pages(curriculum).collect(),
            skills: curriculum
                .skills()
                .map(|(_, s)| (s.id.to_string(), skill(s)))
                .collect(),
            movements: curriculum
                .published()
                .map(|(_, m)| (m.id().to_string(), movement(curriculum, m)))
                .collect(),
        }
    }

    /// The ids of the published families and pages.
    pub(super) fn of_pages(curriculum: &Curriculum) -> Vec<String> {
        families(curriculum).chain(pages(curriculum)).collect()
    }

    /// How the folder says that it stood; from the ledger alone where it was published before there was more.
    ///
    /// # Errors
    /// A finding, where the file cannot be read.
    pub fn read(snapshot: &Snapshot, ledger: &Ledger) -> Result<Stood, Findings> {
        let Some(file) = snapshot.find(STANDING) else {
            return Ok(Stood::of_ledger(ledger));
        };
        match serde_json::from_str::<Stood>(snapshot.text(file)) {
            Ok(stood) if stood.standing == VERSION => Ok(stood),
            Ok(_) => Err(bad(file, 1, snapshot, "this version of it is not known")),
            Err(error) => Err(bad(file, error.line(), snapshot, &error.to_string())),
        }
    }

    fn of_ledger(ledger: &Ledger) -> Stood {
        let movement = |(id, s): (&String, &crate::curriculum::ledger::Standing)| {
            let inverted_or_loaded = |c: &String| c == "inverted" || c == "loaded";
            let stood = StoodMovement {
                name: id.clone(),
                standard: s.standard.clone(),
                guarded: s.cautions.iter().any(inverted_or_loaded),
                cautions: s.cautions.clone(),
                ..StoodMovement::default()
            };
            (id.clone(), stood)
        };
        Stood {
            movements: ledger.stands.iter().map(movement).collect(),
            ..Stood::default()
        }
    }

    /// Nothing was published so far, as far as the folder knows.
    pub fn is_nothing(&self) -> bool {
        self.movements.is_empty() && self.pages.is_empty()
    }

    /// The text of `content/standing.json`.
    pub fn to_json(&self) -> String {
        let mut out = format!(
            "{{\n\"standing\": {VERSION},\n\"classes\": {},\n\"families\": {},\n\"pages\": {},\n",
            line(&self.classes),
            line(&self.families),
            line(&self.pages)
        );
        let records = |records: Vec<String>| records.join(",\n");
        let of = |id: &String, record: String| format!("{}: {record}", line(id));
        let skills = self.skills.iter().map(|(id, s)| of(id, line(s)));
        out.push_str(&format!(
            "\"skills\": {{\n{}\n}},\n",
            records(skills.collect())
        ));
        let movements = self.movements.iter().map(|(id, m)| of(id, line(m)));
        out.push_str(&format!(
            "\"movements\": {{\n{}\n}}\n}}\n",
            records(movements.collect())
        ));
        out
    }
}

fn line(value: &impl Serialize) -> String {
    serde_json::to_string(value).expect("texts are JSON")
}

fn bad(file: FileId, line: usize, snapshot: &Snapshot, why: &str) -> Findings {
    let before: usize = snapshot
        .text(file)
        .split_inclusive('\n')
        .take(line.saturating_sub(1))
        .map(str::len)
        .sum();
    let mut findings = Findings::default();
    let finding = Diagnostic::new(
        Rule::BadLedger,
        Span::new(file, before, before),
        format!("what was published last cannot be read: {why}"),
    );
    findings
        .push(finding.help(
            "the program writes this file when it publishes; take back your last edit of it",
        ));
    findings
}

fn asked(curriculum: &Curriculum, leaf: &Leaf) -> Asked {
    Asked {
        movement: curriculum.id_of(Owner::Movement(leaf.movement)).to_string(),
        target: leaf.target.to_string(),
    }
}

fn movement(curriculum: &Curriculum, m: &Movement) -> StoodMovement {
    // Taken apart without `..`: of a key that is added it is decided here whether a change of it is told.
    let MovementParts {
        name,
        standard,
        cautions,
        needs,
        exit,
        says,
        // The record it is kept under.
        id: _,
        // In what follows from them: the cautions, and who is guarded.
        positions: _,
        load: _,
        loaded: _,
        declared: _,
        // Neither asks more of a body nor less.
        also: _,
        was: _,
        pattern: _,
        equipment: _,
        each_side: _,
        summary: _,
        dose: _,
        instead: _,
        pictures: _,
        clip: _,
        held_back: _,
        place: _,
        note: _,
        spans: _,
        faulty: _,
    } = m.parts();
    let class = |c: &ClassIx| curriculum.cautions().class(*c).id.to_string();
    let test = says.test.as_ref();
    StoodMovement {
        name: name.clone(),
        standard: standard.to_string(),
        guarded: m.guarded(),
        cautions: cautions.iter().map(class).collect(),
        needs: Some(tree(curriculum, needs)),
        exit: exit.clone().unwrap_or_default(),
        counts: test.map_or_else(Vec::new, |t| t.counts.clone()),
        stop: test.map_or_else(Vec::new, |t| t.stop.clone()),
    }
}

pub(super) fn tree(curriculum: &Curriculum, needs: &Need<Leaf>) -> Tree {
    let all = |parts: &[Need<Leaf>]| parts.iter().map(|p| tree(curriculum, p)).collect();
    match needs {
        Need::Leaf(leaf) => Tree::Leaf(asked(curriculum, leaf)),
        Need::All(parts) => Tree::All { all: all(parts) },
        Need::Any(parts) => Tree::Any { any: all(parts) },
        Need::AtLeast(k, parts) => Tree::AtLeast {
            at_least: *k,
            of: all(parts),
        },
    }
}
