//! What became other since the last publish: what asks less of a body (loosenings), what asks more, and what is new.
//!
//! Pure. [`Stood`] says how it stood; [`since`] compares; [`refusal`] makes findings of what needs the coach's words.

mod lines;
mod needs;
mod people;
mod stood;

pub use crate::source::snapshot::STANDING;
pub use people::{Ahead, Effect, Moved, effects, world_before};
pub use stood::Stood;

use crate::curriculum::caution::Signal;
use crate::curriculum::ledger::Entry;
use crate::curriculum::loosening::{Loosening, What};
use crate::curriculum::{Curriculum, Movement, Owner};
use crate::source::{Diagnostic, FileId, Findings, Rule, Span};
use crate::words::Words;
use needs::{asks_at_least, implies};
use stood::{StoodMovement, StoodSkill, Tree};

/// What a difference comes to, the gravest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// Asks less of a body that it may hurt: needs the coach's note.
    Loosening,
    Tightening,
    Addition,
    /// Asks less where nothing is guarded, or what is neither more nor less.
    Other,
}

impl Weight {
    pub const ALL: [Weight; 4] = [
        Weight::Loosening,
        Weight::Tightening,
        Weight::Addition,
        Weight::Other,
    ];

    pub fn word(self) -> &'static str {
        match self {
            Weight::Loosening => "loosening",
            Weight::Tightening => "tightening",
            Weight::Addition => "addition",
            Weight::Other => "change",
        }
    }
}

/// One difference.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    pub weight: Weight,
    pub about: Loosening,
    /// Where the record, or its way out, stands now; `None` for what is gone.
    pub span: Option<Span>,
}

impl Difference {
    /// A line for a reader: the record with its signal word, and what became of it.
    pub fn say(&self, curriculum: &Curriculum, words: &Words) -> String {
        let units = curriculum.school().units;
        let (of, says) = (
            self.about.named(words),
            self.about.what.say(curriculum, words, units),
        );
        let values = [("movement", (&of).into()), ("change", (&says).into())];
        words.fill("change.line", &values)
    }
}

/// Every difference, loosenings first, then by id.
pub fn since(stood: &Stood, curriculum: &Curriculum) -> Vec<Difference> {
    if stood.is_nothing() {
        return Vec::new();
    }
    let mut all = Comparing {
        stood,
        curriculum,
        out: Vec::new(),
    };
    all.classes();
    all.movements();
    all.skills();
    all.pages();
    let mut out = all.out;
    out.sort_by(|a, b| (a.weight, &a.about.of).cmp(&(b.weight, &b.about.of)));
    out
}

/// The loosenings among them.
pub fn loosenings(all: &[Difference]) -> impl Iterator<Item = &Difference> {
    all.iter().filter(|d| d.weight == Weight::Loosening)
}

/// Findings that stop a publish without a note: one for each loosening.
pub fn refusal(all: &[Difference], curriculum: &Curriculum) -> Findings {
    let mut findings = Findings::default();
    let words = Words::english();
    for d in loosenings(all) {
        let span = d.span.unwrap_or(Span::top(FileId::FOLDER));
        let put_back = match d.about.what {
            What::Gone => format!(
                "write `was: [{}]` in the record that takes its place, or put it back",
                d.about.of
            ),
            _ => "put it back".to_string(),
        };
        let finding = Diagnostic::new(Rule::Loosening, span, d.say(curriculum, words));
        findings.push(finding.help(format!(
            "{put_back}; if it is meant, publish with `--note \"why\"`: your words stand beside it on the page of changes"
        )));
    }
    findings
}

/// Puts the loosenings beside the note of an entry.
pub fn note(entry: &mut Entry, all: &[Difference]) {
    entry.loosened = loosenings(all).map(|d| d.about.clone()).collect();
}

struct Comparing<'a> {
    stood: &'a Stood,
    curriculum: &'a Curriculum,
    out: Vec<Difference>,
}

/// Who a difference is about.
struct About<'a> {
    id: &'a str,
    name: &'a str,
    signal: Option<Signal>,
    span: Option<Span>,
}

impl<'a> Comparing<'a> {
    fn push(&mut self, weight: Weight, about: &About<'_>, what: What) {
        self.out.push(Difference {
            weight,
            about: Loosening {
                of: about.id.to_string(),
                name: about.name.to_string(),
                signal: about.signal,
                what,
            },
            span: about.span,
        });
    }

    /// The record that bears an id of before now: itself, or who says that it was.
    fn now(&self, id: &str) -> Option<Owner> {
        let renamed = || {
            let of = self.curriculum.bearer(id)?;
            Some(of)
        };
        let owner = self.curriculum.find(id).or_else(renamed)?;
        self.curriculum.is_published(owner).then_some(owner)
    }

    /// Whether an id of now bears what an id of before bore.
    fn same(&self, now: &str, then: &str) -> bool {
        now == then
            || (self.curriculum.find(then).is_none()
                && self.curriculum.bearer(then) == self.curriculum.find(now))
    }

    /// The graver of what a movement bore and bears.
    fn signal(&self, then: &[String], now: Option<Owner>) -> Option<Signal> {
        let of = |id: &String| Signal::read(self.stood.classes.get(id)?);
        let shipped = |id: &String| {
            let book = self.curriculum.cautions();
            book.find(id).map(|ix| book.class(ix).signal)
        };
        let then = then.iter().filter_map(|id| of(id).or_else(|| shipped(id)));
        let now = now.and_then(|owner| self.curriculum.signal_of(owner));
        then.chain(now).max()
    }

    fn classes(&mut self) {
        for class in self.curriculum.cautions().classes() {
            let id = class.id.as_str();
            let before = self.stood.classes.get(id).and_then(|w| Signal::read(w));
            let Some(from) = before.filter(|s| *s != class.signal) else {
                continue;
            };
            let to = class.signal;
            let weight = match to < from {
                true => Weight::Loosening,
                false => Weight::Tightening,
            };
            let about = About {
                id,
                name: class.name(self.curriculum.words()),
                signal: Some(from.max(to)),
                span: None,
            };
            self.push(weight, &about, What::Signal { from, to });
        }
    }

    fn movements(&mut self) {
        let (stood, curriculum) = (self.stood, self.curriculum);
        for (id, then) in &stood.movements {
            let owner = self.now(id);
            let signal = self.signal(&then.cautions, owner);
            match owner {
                None => {
                    let held = curriculum.find_movement(id);
                    let about = About {
                        id,
                        name: &then.name,
                        signal,
                        span: held.map(|ix| curriculum.movement(ix).spans().id),
                    };
                    self.push(Weight::Loosening, &about, What::Gone);
                }
                Some(Owner::Movement(ix)) => {
                    let m = curriculum.movement(ix);
                    // What took the place of another that was there already is not compared with it.
                    if m.id().as_str() != id && stood.movements.contains_key(m.id().as_str()) {
                        continue;
                    }
                    let about = About {
                        id: m.id().as_str(),
                        name: m.name(),
                        signal,
                        span: Some(m.spans().id),
                    };
                    self.movement(&about, then, m);
                }
                Some(_) => {}
            }
        }
        for (ix, m) in curriculum.published() {
            let known = |id: &str| stood.movements.contains_key(id);
            if !known(m.id().as_str()) && !m.was().iter().any(|w| known(w.as_str())) {
                let about = About {
                    id: m.id().as_str(),
                    name: m.name(),
                    signal: curriculum.signal_of(Owner::Movement(ix)),
                    span: Some(m.spans().id),
                };
                self.push(Weight::Addition, &about, What::New);
            }
        }
    }

    fn movement(&mut self, about: &About<'_>, then: &StoodMovement, m: &Movement) {
        let guarded = then.guarded || m.guarded();
        let standard = m.standard().to_string();
        let of_standard = About {
            span: Some(m.spans().standard),
            ..*about
        };
        self.target(&of_standard, guarded, &then.standard, &standard);
        let class = |c: &crate::curriculum::caution::ClassIx| {
            self.curriculum.cautions().class(*c).id.to_string()
        };
        let classes: Vec<String> = m.cautions().iter().map(class).collect();
        for gone in then.cautions.iter().filter(|c| !classes.contains(c)) {
            self.push(Weight::Loosening, about, What::ClassGone(gone.clone()));
        }
        for new in classes.iter().filter(|c| !then.cautions.contains(c)) {
            self.push(Weight::Tightening, about, What::ClassNew(new.clone()));
        }
        // What follows is not known of who was published by the ledger alone.
        let Some(needs) = &then.needs else {
            return;
        };
        self.needs(
            about,
            guarded,
            needs,
            &stood::tree(self.curriculum, m.needs()),
        );
        self.exit(about, then, m);
        let test = m.test().cloned().unwrap_or_default();
        for line in lines::gone(&then.stop, &test.stop) {
            self.push(Weight::Loosening, about, What::StopGone(line.clone()));
        }
        for line in lines::gone(&test.stop, &then.stop) {
            self.push(Weight::Addition, about, What::StopNew(line.clone()));
        }
        for line in lines::gone(&then.counts, &test.counts) {
            self.push(Weight::Loosening, about, What::CountsGone(line.clone()));
        }
        for line in lines::gone(&test.counts, &then.counts) {
            self.push(Weight::Addition, about, What::CountsNew(line.clone()));
        }
    }

    fn exit(&mut self, about: &About<'_>, then: &StoodMovement, m: &Movement) {
        let now = m.exit().map(str::to_owned).unwrap_or_default();
        let about = About {
            span: m.spans().exit.or(about.span),
            ..*about
        };
        let weight = match (then.exit.is_empty(), lines::shorter(&then.exit, &now)) {
            (true, _) if !now.is_empty() => Weight::Addition,
            (false, true) => Weight::Loosening,
            (false, false) if lines::shorter(&now, &then.exit) => Weight::Tightening,
            _ => return,
        };
        let from = then.exit.clone();
        self.push(weight, &about, What::Exit { from, to: now });
    }

    /// A standard or a goal.
    fn target(&mut self, about: &About<'_>, guarded: bool, from: &str, to: &str) {
        let (up, down) = (asks_at_least(to, from), asks_at_least(from, to));
        let (from, to) = (from.to_string(), to.to_string());
        match (up, down) {
            (true, true) => {}
            (true, false) => self.push(Weight::Tightening, about, What::Raised { from, to }),
            _ if guarded => self.push(Weight::Loosening, about, What::Lowered { from, to }),
            _ => self.push(Weight::Other, about, What::Lowered { from, to }),
        }
    }

    fn needs(&mut self, about: &About<'_>, guarded: bool, then: &Tree, now: &Tree) {
        let weaker = match guarded {
            true => Weight::Loosening,
            false => Weight::Other,
        };
        let same = |now: &str, then: &str| self.same(now, then);
        if !implies(now, then, &same) {
            let mut lost = self.unlike(then, now, false);
            if lost.is_empty() {
                lost.push(What::Choice);
            }
            for what in lost {
                self.push(weaker, about, what);
            }
        } else {
            let same = |then: &str, now: &str| self.same(now, then);
            if !implies(then, now, &same) {
                for what in self.unlike(now, then, true) {
                    self.push(Weight::Tightening, about, what);
                }
            }
        }
    }

    /// The leaves of one tree that the other one names with less, or not at all; `newer` where the first is of now.
    fn unlike(&self, of: &Tree, other: &Tree, newer: bool) -> Vec<What> {
        let mut out: Vec<What> = Vec::new();
        let others = other.leaves();
        for leaf in of.leaves() {
            let same = |o: &&&stood::Asked| match newer {
                true => self.same(&leaf.movement, &o.movement),
                false => self.same(&o.movement, &leaf.movement),
            };
            let alike: Vec<&&stood::Asked> = others.iter().filter(same).collect();
            if alike.iter().any(|o| asks_at_least(&o.target, &leaf.target)) {
                continue;
            }
            let other = alike.first().map_or_else(String::new, |o| o.target.clone());
            let (from, to) = match newer {
                true => (other, leaf.target.clone()),
                false => (leaf.target.clone(), other),
            };
            let what = What::Need {
                movement: leaf.movement.clone(),
                from,
                to,
            };
            if !out.contains(&what) {
                out.push(what);
            }
        }
        out
    }

    fn skills(&mut self) {
        let (stood, curriculum) = (self.stood, self.curriculum);
        for (id, then) in &stood.skills {
            let owner = self.now(id);
            let about = About {
                id,
                name: &then.name,
                signal: owner.and_then(|o| curriculum.signal_of(o)),
                span: None,
            };
            match owner {
                None => self.push(Weight::Loosening, &about, What::Gone),
                Some(Owner::Skill(ix)) => self.skill(then, curriculum.skill(ix), owner),
                Some(_) => {}
            }
        }
        let known = |id: &str| stood.skills.contains_key(id);
        for (ix, skill) in curriculum.skills() {
            // What was published by the ledger alone is not told of new skills.
            let new = !known(skill.id.as_str()) && !skill.was.iter().any(|w| known(w.as_str()));
            if new && !stood.skills.is_empty() {
                let about = About {
                    id: skill.id.as_str(),
                    name: &skill.name,
                    signal: curriculum.signal_of(Owner::Skill(ix)),
                    span: Some(skill.span),
                };
                self.push(Weight::Addition, &about, What::New);
            }
        }
    }

    fn skill(&mut self, then: &StoodSkill, skill: &crate::curriculum::Skill, owner: Option<Owner>) {
        let goal = self.curriculum.movement(skill.goal.movement);
        let about = About {
            id: skill.id.as_str(),
            name: &skill.name,
            signal: owner.and_then(|o| self.curriculum.signal_of(o)),
            span: Some(skill.span),
        };
        if self.same(goal.id().as_str(), &then.goal.movement) {
            let guarded = then.guarded || goal.guarded();
            self.target(
                &about,
                guarded,
                &then.goal.target,
                &skill.goal.target.to_string(),
            );
        }
    }

    /// Families and the coach's own pages.
    fn pages(&mut self) {
        let stood = self.stood;
        for id in stood.families.iter().chain(&stood.pages) {
            if self.now(id).is_none() {
                let about = About {
                    id,
                    name: id,
                    signal: None,
                    span: None,
                };
                self.push(Weight::Loosening, &about, What::Gone);
            }
        }
        let now = Stood::of_pages(self.curriculum);
        let known = |id: &String| stood.families.contains(id) || stood.pages.contains(id);
        if stood.standing == 0 {
            return;
        }
        for id in now.iter().filter(|id| !known(id)) {
            let owner = self.curriculum.find(id);
            let was = stood.families.iter().any(|old| self.same(id, old));
            if let Some(owner) = owner.filter(|_| !was) {
                let name = self.curriculum.name_of(owner).to_string();
                let about = About {
                    id,
                    name: &name,
                    signal: self.curriculum.signal_of(owner),
                    span: None,
                };
                self.push(Weight::Addition, &about, What::New);
            }
        }
    }
}
