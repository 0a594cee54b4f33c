//! What became other since the last publish, and whom it reaches, as `publish`, `proof` and `rehearse` tell it.

use super::report;
use crate::changes::{self, Ahead, Difference, Effect, Moved, STANDING, Stood, Weight};
use crate::curriculum::{Curriculum, Day};
use crate::io::{self, Error};
use crate::proof::Proofread;
use crate::readiness::State;
use crate::results;
use crate::source::{Findings, Snapshot, legible};
use crate::words::Words;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// So many differences of one weight are named in a list; loosenings all.
const NAMED: usize = 20;

/// What became other, against the folder's own list.
///
/// # Errors
/// A finding, where that list cannot be read.
pub fn differences(proof: &Proofread, snapshot: &Snapshot) -> Result<Vec<Difference>, Findings> {
    let stood = Stood::read(snapshot, proof.curriculum.ledger())?;
    Ok(changes::since(&stood, &proof.curriculum))
}

/// How it stands now, as it is kept; `None` where that is what is kept already.
pub fn standing(curriculum: &Curriculum, snapshot: &Snapshot) -> Option<String> {
    let text = Stood::of(curriculum).to_json();
    let kept = snapshot.find(STANDING).map(|file| snapshot.text(file));
    (kept != Some(text.as_str())).then_some(text)
}

/// The list under its heading, loosenings first; empty where nothing became other.
pub fn list(all: &[Difference], curriculum: &Curriculum, words: &Words) -> String {
    if all.is_empty() {
        return String::new();
    }
    let mut lines = vec![words.say("since.heading").to_string()];
    for weight in Weight::ALL {
        let of: Vec<&Difference> = all.iter().filter(|d| d.weight == weight).collect();
        let shown = match weight {
            Weight::Loosening => of.len(),
            _ => of.len().min(NAMED),
        };
        let word = words.say(&format!("since.{}", weight.word()));
        for d in &of[..shown] {
            let text = d.say(curriculum, words);
            lines.push(words.fill(
                "since.line",
                &[("weight", word.into()), ("text", (&text).into())],
            ));
        }
        if of.len() > shown {
            let more = words.fill("since.more", &[("n", (of.len() - shown).into())]);
            lines.push(words.fill(
                "since.line",
                &[("weight", word.into()), ("text", (&more).into())],
            ));
        }
    }
    legible(&lines.join("\n  ")).into_owned()
}

/// For programs.
pub fn json(all: &[Difference], curriculum: &Curriculum) -> Value {
    let one = |d: &Difference| {
        json!({
            "kind": d.weight.word(), "of": d.about.of, "what": d.about.what.word(), "signal": d.about.signal.map(|s| s.word()),
            "says": d.say(curriculum, Words::english()),
        })
    };
    all.iter().map(one).collect()
}

/// Whom it reaches; nothing of it is kept.
pub struct People {
    pub effects: Vec<Effect>,
    /// What was wrong in the results, and the files it stands in.
    pub found: Findings,
    pub files: Snapshot,
    /// The site that was compared with; `None` where there is none.
    pub site: Option<PathBuf>,
}

/// Reads the people's results against the last publish, which is the site that stands, and against the curriculum as it is.
///
/// # Errors
/// When no results can be read.
pub fn people(
    folder: &Path,
    site: &Path,
    proof: &Proofread,
    snapshot: &Snapshot,
    today: Day,
) -> Result<People, Error> {
    let files = io::results(&[folder.to_path_buf()])?;
    let (now, found) = results::read(&files, &proof.curriculum, today);
    let before = io::open_data(site)
        .and_then(|data| changes::world_before(&data, snapshot, &proof.curriculum));
    let effects = before.as_ref().map(|before| {
        let (then, _) = results::read(&files, &before.curriculum, today);
        changes::effects((before, &then), (proof, &now), today)
    });
    Ok(People {
        site: effects.is_some().then(|| site.to_path_buf()),
        effects: effects.unwrap_or_default(),
        found,
        files,
    })
}

impl People {
    pub fn print(&self, site: &Path, words: &Words) {
        report::print(&self.found, &self.files);
        anstream::println!("{}", legible(&self.text(site, words)));
    }

    fn text(&self, site: &Path, words: &Words) -> String {
        let mut lines = vec![words.say("since.people").to_string()];
        if self.site.is_none() {
            let folder = site.to_string_lossy();
            lines.push(words.fill("since.no_site", &[("folder", folder.as_ref().into())]));
        } else if self.effects.is_empty() {
            lines.push(words.say("since.nobody").to_string());
        }
        for effect in &self.effects {
            lines.push(effect.name.clone());
            lines.extend(told(effect, words).into_iter().map(|l| format!("  {l}")));
        }
        lines.push(words.say("since.kept_nowhere").to_string());
        lines.join("\n  ")
    }

    /// For programs: `null` where there is nothing to compare with.
    pub fn json(&self) -> Value {
        match self.site {
            Some(_) => self.effects.iter().map(effect_json).collect(),
            None => Value::Null,
        }
    }
}

/// What is lost first, then what is gained, then all else.
fn told(effect: &Effect, words: &Words) -> Vec<String> {
    let state = |s: Option<State>| match s {
        Some(s) => words.say(&format!("state.{}", s.word().replace(' ', "_"))),
        None => words.say("since.not_there"),
    };
    let moved = |m: &Moved| {
        let (before, now) = (state(m.from).into(), state(m.to).into());
        let movement = ("movement", (&m.named).into());
        if m.loses() {
            words.fill("since.loses", &[movement, ("now", now)])
        } else if m.gains() {
            words.fill("since.gains", &[movement, ("before", before)])
        } else {
            words.fill("since.moves", &[movement, ("before", before), ("now", now)])
        }
    };
    let mut of: Vec<&Moved> = effect.moved.iter().collect();
    of.sort_by_key(|m| (!m.loses(), !m.gains()));
    let mut lines: Vec<String> = of.into_iter().map(moved).collect();
    lines.extend(effect.aside.iter().map(|a| {
        let values = [
            ("movement", (&a.movement).into()),
            ("got", (&a.got).into()),
            ("why", a.why.into()),
        ];
        words.fill("since.aside", &values)
    }));
    if let Some((then, now)) = &effect.plan {
        lines.extend(plan(then, now, words));
    }
    lines
}

fn plan(then: &Ahead, now: &Ahead, words: &Words) -> Vec<String> {
    let nothing = || words.say("since.nothing").to_string();
    let goal = |a: &Ahead| a.goal.clone().unwrap_or_else(nothing);
    let next = |a: &Ahead| match &a.next {
        Some((movement, target)) => words.fill(
            "since.at",
            &[("movement", movement.into()), ("target", target.into())],
        ),
        None => nothing(),
    };
    let pairs = [
        ("since.goal", goal(then), goal(now)),
        ("since.next", next(then), next(now)),
    ];
    let differ = pairs.iter().filter(|(_, a, b)| a != b);
    differ
        .map(|(key, a, b)| words.fill(key, &[("before", a.into()), ("now", b.into())]))
        .collect()
}

fn effect_json(effect: &Effect) -> Value {
    let state = |s: Option<State>| s.map(State::word);
    let moved = |all: &[Moved], which: &dyn Fn(&Moved) -> bool| -> Value {
        let of = all.iter().filter(|m| which(m));
        of.map(|m| json!({ "movement": m.movement, "before": state(m.from), "now": state(m.to) }))
            .collect()
    };
    let ahead = |a: &Ahead| json!({ "goal": a.goal, "next": a.next.as_ref().map(|(m, t)| json!({ "movement": m, "target": t })) });
    let aside = effect.aside.iter().map(
        |a| json!({ "movement": a.movement, "got": a.got, "on": a.on.to_string(), "why": a.why }),
    );
    json!({
        "name": effect.name,
        "loses": moved(&effect.moved, &Moved::loses), "gains": moved(&effect.moved, &Moved::gains),
        "moves": moved(&effect.moved, &|m| !m.loses() && !m.gains()),
        "aside": aside.collect::<Vec<_>>(),
        "plan": effect.plan.as_ref().map(|(a, b)| json!({ "before": ahead(a), "now": ahead(b) })),
    })
}
