//! A movement as written: every key read, nothing looked up, a family's share not yet added.

use super::fields::{self, Record};
use super::manner::{self, RawInstead};
use super::need::{self, RawLeaf};
use super::posture;
use crate::curriculum::keys;
use crate::curriculum::movement::{Clip, Fault, Picture, Says, Test};
use crate::curriculum::target::Measure;
use crate::curriculum::words::{Load, Pattern, Position};
use crate::curriculum::{Id, Need, Target};
use crate::source::yaml::{Node, Value};
use crate::source::{Diagnostic, Findings, Rule, Span};

/// What a movement, a family or a member says. Absent keys are `None` or empty.
#[derive(Clone, Debug, Default)]
pub struct Draft {
    pub name: Option<String>,
    pub also: Vec<String>,
    pub was: Vec<(Id, Span)>,
    pub pattern: Option<Pattern>,
    pub positions: Vec<Position>,
    pub load: Option<Load>,
    pub equipment: Vec<Vec<(String, Span)>>,
    pub each_side: Option<bool>,
    pub summary: Option<String>,
    pub needs: Vec<Need<RawLeaf>>,
    pub standard: Option<(Target, Span)>,
    /// With the place of its words.
    pub exit: Option<(String, Option<Span>)>,
    pub dose: Option<(Target, Span)>,
    pub instead: Vec<RawInstead>,
    pub tempo_at: Option<Span>,
    pub cautions: Vec<(String, Span)>,
    pub pictures: Vec<(Picture, Span)>,
    pub clip: Option<(Clip, Span)>,
    pub held_back: Option<bool>,
    /// What stays as it is read.
    pub says: Says,
    pub faulty: bool,
}

impl Draft {
    /// Reads the keys that movements, families and members share.
    pub fn read(record: &Record<'_>, findings: &mut Findings) -> Draft {
        let before = findings.len();
        let list = |name: &str| record.get(name);
        let (needs, needs_are_good) =
            list("needs").map_or((Vec::new(), true), |n| need::read(n, findings));
        let mut draft = Draft {
            name: record.name("name", findings),
            also: record.texts("also", findings),
            was: ids(record, findings),
            pattern: record.word("pattern", findings),
            positions: list("position")
                .map_or_else(Vec::new, |n| fields::words(n, Rule::BadValue, findings)),
            load: record.word("load", findings),
            equipment: list("equipment").map_or_else(Vec::new, |n| equipment(n, findings)),
            each_side: record.flag("each_side", findings),
            summary: record.text("summary", findings),
            needs,
            standard: record.target("standard", findings),
            // That it is empty is said once, where it stands.
            exit: record
                .safety("exit", findings)
                .or_else(|| record.has("exit").then(String::new))
                .map(|words| (words, record.get("exit").map(|n| n.span))),
            dose: record.target("dose", findings),
            instead: list("instead").map_or_else(Vec::new, |n| manner::instead(n, findings)),
            tempo_at: list("tempo").or(list("hold")).map(|n| n.span),
            cautions: list("cautions").map_or_else(Vec::new, |n| fields::texts(n, findings)),
            pictures: list("pictures").map_or_else(Vec::new, |n| pictures(n, findings)),
            clip: list("clip").and_then(|n| clip(n, findings)),
            held_back: record.flag("held_back", findings),
            says: says(record, findings),
            faulty: record.faulty || !needs_are_good,
        };
        draft.faulty |= findings
            .iter()
            .skip(before)
            .any(|d| d.severity() == crate::source::Severity::Error);
        draft.bare_number(record, findings);
        draft
    }

    /// A bare number is read as reps; beside a dose in seconds it is hardly meant so.
    fn bare_number(&self, record: &Record<'_>, findings: &mut Findings) {
        let Some(node) = record.get("standard") else {
            return;
        };
        let text = node.text().unwrap_or("").trim();
        let bare = !text.is_empty()
            && text
                .bytes()
                .all(|b| b.is_ascii_digit() || b"x. ".contains(&b));
        let timed = |(dose, _): (Target, Span)| dose.measure() == Measure::Time;
        // So many reps in one set are rarer than a hold whose unit was forgotten. Common practice, no source.
        const MANY: u32 = 20;
        let is_large = text.parse().is_ok_and(|n: u32| n > MANY);
        if is_large && self.standard.is_some() && !self.dose.is_some_and(timed) {
            findings.push(
                Diagnostic::new(
                    Rule::BareNumber,
                    node.span,
                    format!("`{text}` is read as {text} reps"),
                )
                .label("no unit")
                .help(format!(
                    "write `{text} s` for a hold, or `{text} reps` if reps are meant"
                )),
            );
        }
        if bare && self.standard.is_some() && self.dose.is_some_and(timed) {
            findings.push(
                Diagnostic::new(
                    Rule::BareNumber,
                    node.span,
                    format!("`{text}` is read as reps, but the dose is in seconds"),
                )
                .label("no unit")
                .help(format!(
                    "write `{text} s`, or `{text} reps` if reps are meant"
                )),
            );
        }
    }

    /// A member with its family's share: needs, cautions, cues, faults, stresses and equipment add; everything else of the
    /// member replaces the family's. Name, `also` and `was` are each one's own.
    pub fn with_family(self, family: &Draft) -> Draft {
        // Taken apart without `..`: a key that is added is decided on here.
        let Draft {
            name,
            also,
            was,
            pattern,
            positions,
            load,
            equipment,
            each_side,
            summary,
            needs,
            standard,
            exit,
            dose,
            instead,
            tempo_at,
            cautions,
            pictures,
            clip,
            held_back,
            says,
            faulty,
        } = self;
        Draft {
            name,
            also,
            was,
            pattern: pattern.or(family.pattern),
            positions: own_or(positions, &family.positions),
            load: load.or(family.load),
            equipment: joined(equipment, &family.equipment),
            each_side: each_side.or(family.each_side),
            summary: summary.or_else(|| family.summary.clone()),
            needs: joined(needs, &family.needs),
            standard: standard.or(family.standard),
            exit: exit.or_else(|| family.exit.clone()),
            dose: dose.or(family.dose),
            instead: own_or(instead, &family.instead),
            tempo_at: tempo_at.or(family.tempo_at),
            cautions: joined(cautions, &family.cautions),
            pictures: own_or(pictures, &family.pictures),
            clip: clip.or_else(|| family.clip.clone()),
            held_back: held_back.or(family.held_back),
            says: says_with_family(says, &family.says),
            faulty: faulty || family.faulty,
        }
    }
}

/// The keys that stay as they are read.
fn says(record: &Record<'_>, findings: &mut Findings) -> Says {
    let list = |name: &str| record.get(name);
    Says {
        arms: record.word("arms", findings),
        arms_at: record.word("arms_at", findings),
        phase: record.word("phase", findings),
        test: list("test").and_then(|n| test(n, findings)),
        stresses: list("stresses").map_or_else(Vec::new, |n| manner::stresses(n, findings)),
        tempo: list("tempo").and_then(|n| manner::tempo(n, findings)),
        hold: list("hold").and_then(|n| manner::hold(n, findings)),
        rest: list("rest").and_then(|n| manner::rest(n, findings)),
        back_when: {
            fields::finished(list("back_when"), findings);
            record.texts("back_when", findings)
        },
        cues: record.texts("cues", findings),
        faults: list("faults").map_or_else(Vec::new, |n| faults(n, findings)),
        posture: list("leverage").and_then(|n| posture::read(n, findings)),
        weeks: list("weeks").and_then(|n| fields::weeks(n, findings)),
        sources: record.texts("sources", findings),
    }
}

fn says_with_family(ours: Says, family: &Says) -> Says {
    let Says {
        arms,
        arms_at,
        phase,
        test,
        stresses,
        tempo,
        hold,
        rest,
        back_when,
        cues,
        faults,
        posture,
        weeks,
        sources,
    } = ours;
    // Both say how a rep is paced: who says one of them says it whole.
    let paced = tempo.is_some() || hold.is_some();
    Says {
        arms: arms.or(family.arms),
        arms_at: arms_at.or(family.arms_at),
        phase: phase.or(family.phase),
        test: test.or_else(|| family.test.clone()),
        stresses: manner::by_part(joined(stresses, &family.stresses)),
        tempo: if paced { tempo } else { family.tempo },
        hold: if paced { hold } else { family.hold },
        rest: rest.or(family.rest),
        back_when: own_or(back_when, &family.back_when),
        cues: joined(cues, &family.cues),
        faults: joined(faults, &family.faults),
        posture: posture.or_else(|| family.posture.clone()),
        weeks: weeks.or(family.weeks),
        sources: own_or(sources, &family.sources),
    }
}

/// The family's and then the member's.
fn joined<T: Clone>(ours: Vec<T>, theirs: &[T]) -> Vec<T> {
    theirs.iter().cloned().chain(ours).collect()
}

/// The member's, where it says any.
fn own_or<T: Clone>(ours: Vec<T>, theirs: &[T]) -> Vec<T> {
    match ours.is_empty() {
        true => theirs.to_vec(),
        false => ours,
    }
}

fn ids(record: &Record<'_>, findings: &mut Findings) -> Vec<(Id, Span)> {
    let Some(node) = record.get("was") else {
        return Vec::new();
    };
    fields::items(node, findings)
        .into_iter()
        .filter_map(|n| fields::id(n, findings).map(|id| (id, n.span)))
        .collect()
}

pub(super) fn equipment(node: &Node, findings: &mut Findings) -> Vec<Vec<(String, Span)>> {
    fields::items(node, findings)
        .into_iter()
        .map(|item| match &item.value {
            Value::List(_) => fields::texts(item, findings),
            _ => fields::text(item, findings)
                .map(|t| (t, item.span))
                .into_iter()
                .collect(),
        })
        .filter(|alternatives: &Vec<_>| !alternatives.is_empty())
        .collect()
}

fn test(node: &Node, findings: &mut Findings) -> Option<Test> {
    let record = Record::open(node, "a test", keys::TEST, findings)?;
    Some(Test {
        how: record.text("how", findings),
        counts: record.texts("counts", findings),
        stop: {
            fields::finished(record.get("stop"), findings);
            record.texts("stop", findings)
        },
        rest: record.get("rest").and_then(|n| rest(n, findings)),
        since: record.day("since", findings),
    })
}

fn faults(node: &Node, findings: &mut Findings) -> Vec<Fault> {
    let fault = |n: &&Node, findings: &mut Findings| {
        let record = Record::open(n, "a fault", keys::FAULT, findings)?;
        let see = record.text("see", findings)?;
        Some(Fault {
            see,
            because: record.text("because", findings),
            attempt: record.text("try", findings),
        })
    };
    fields::items(node, findings)
        .iter()
        .filter_map(|n| fault(n, findings))
        .collect()
}

fn missing_alt(span: Span, what: &str) -> Diagnostic {
    Diagnostic::new(
        Rule::MissingAlt,
        span,
        format!("a {what} has no alternative text"),
    )
    .label("no `alt`")
    .help("add `alt: ...`: what it shows, for readers who cannot see it")
}

fn pictures(node: &Node, findings: &mut Findings) -> Vec<(Picture, Span)> {
    let mut out = Vec::new();
    for item in fields::items(node, findings) {
        if let Some(name) = item.text() {
            let picture = format!("{{ file: {name}, alt: what it shows }}");
            let help = match node.text() {
                Some(_) => format!("write `pictures: [{picture}]`"),
                None => format!("write `{picture}`"),
            };
            findings.push(
                fields::shape_finding(
                    item,
                    "a picture has a file, and words for who does not see it",
                )
                .help(help),
            );
            continue;
        }
        let Some(record) = Record::open(item, "a picture", keys::PICTURE, findings) else {
            continue;
        };
        let Some(file) = record.get("file") else {
            continue;
        };
        let Some(name) = fields::text(file, findings) else {
            continue;
        };
        let alt = record.text("alt", findings);
        if alt.is_none() {
            findings.push(missing_alt(file.span, "picture"));
        }
        out.push((
            Picture {
                file: name,
                alt: alt.unwrap_or_default(),
                credit: record.text("credit", findings),
            },
            file.span,
        ));
    }
    out
}

fn clip(node: &Node, findings: &mut Findings) -> Option<(Clip, Span)> {
    let record = Record::open(node, "a clip", keys::CLIP, findings)?;
    let file = record.get("file")?;
    let name = fields::text(file, findings)?;
    let alt = record.text("alt", findings);
    if alt.is_none() {
        findings.push(missing_alt(file.span, "clip"));
    }
    if record.get("poster").is_none() {
        findings.push(
            Diagnostic::new(Rule::ClipPoster, file.span, "a clip has no poster")
                .label("nothing to see before it plays")
                .help("add `poster: ...`: a still of it, or a drawing, in content/pictures"),
        );
    }
    Some((
        Clip {
            file: name,
            poster: record.text("poster", findings),
            alt: alt.unwrap_or_default(),
        },
        file.span,
    ))
}

/// How long to rest: words, but never a time below nothing.
fn rest(node: &Node, findings: &mut Findings) -> Option<String> {
    let text = fields::text(node, findings)?;
    let below_nothing = text
        .strip_prefix(['-', '\u{2212}', '\u{2013}'])
        .is_some_and(|t| t.trim_start().starts_with(|c: char| c.is_ascii_digit()));
    if below_nothing {
        findings.push(
            Diagnostic::new(
                Rule::BadValue,
                node.span,
                format!("a rest of `{text}` ends before it begins"),
            )
            .label("below nothing")
            .help("write how long to rest, like `3 min`"),
        );
        return None;
    }
    Some(text)
}
