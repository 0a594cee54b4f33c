//! One record file: a movement, a family with its members, or a skill.

use super::draft::Draft;
use super::fields::{self, Record};
use super::need::RawLeaf;
use crate::curriculum::family::Axis;
use crate::curriculum::keys;
use crate::curriculum::movement::Rung;
use crate::curriculum::words::{EasierFirst, Phase, Word};
use crate::curriculum::{Id, Target};
use crate::source::suggest::did_you_mean;
use crate::source::yaml::{Node, Value};
use crate::source::{Diagnostic, Findings, Rule, Span};

/// A movement that belongs to no family.
#[derive(Debug)]
pub struct MovementRecord {
    pub id: Id,
    pub id_span: Span,
    pub whole: Span,
    pub draft: Draft,
}

/// A family and its members as written.
#[derive(Debug)]
pub struct FamilyRecord {
    pub id: Id,
    pub id_span: Span,
    pub axes: Vec<Axis>,
    pub draft: Draft,
    pub members: Vec<MemberRecord>,
}

#[derive(Debug)]
pub struct MemberRecord {
    pub id: Id,
    pub id_span: Span,
    pub whole: Span,
    pub rungs: Vec<Option<Rung>>,
    pub draft: Draft,
}

#[derive(Debug)]
pub struct SkillRecord {
    pub id: Id,
    pub id_span: Span,
    pub name: String,
    pub also: Vec<String>,
    pub was: Vec<(Id, Span)>,
    pub summary: Option<String>,
    pub goal: RawLeaf,
}

/// What one file of `movements/` holds.
#[derive(Debug)]
pub enum MovementFile {
    Movement(Box<MovementRecord>),
    Family(Box<FamilyRecord>),
}

/// Reads a file below `movements/`.
pub fn movement_file(root: &Node, findings: &mut Findings) -> Option<MovementFile> {
    let has = |key: &str| matches!(&root.value, Value::Map(pairs) if pairs.iter().any(|(k, _)| k.text() == Some(key)));
    if has("family") && !has("movement") {
        return family(root, findings).map(|f| MovementFile::Family(Box::new(f)));
    }
    let record = Record::open(root, "a movement", keys::MOVEMENT, findings)?;
    let id_node = record.get("movement")?;
    let draft = Draft::read(&record, findings);
    let id = fields::id(id_node, findings)?;
    Some(MovementFile::Movement(Box::new(MovementRecord {
        id,
        id_span: id_node.span,
        whole: root.span,
        draft,
    })))
}

fn family(root: &Node, findings: &mut Findings) -> Option<FamilyRecord> {
    let record = Record::open(root, "a family", &keys::family(), findings)?;
    let axes = record
        .get("axes")
        .map_or_else(Vec::new, |n| axes(n, findings));
    let axes = match record.get("easier_first") {
        Some(node) => easier_first(node, axes, findings),
        None => axes,
    };
    let mut draft = Draft::read(&record, findings);
    draft.faulty |= axes.is_empty();
    let id_node = record.get("family")?;
    let id = fields::id(id_node, findings)?;
    let members = record.get("movements").map_or_else(Vec::new, |n| {
        members(n, &axes, draft.standard.is_some(), findings)
    });
    Some(FamilyRecord {
        id,
        id_span: id_node.span,
        axes,
        draft,
        members,
    })
}

fn axes(node: &Node, findings: &mut Findings) -> Vec<Axis> {
    let Value::Map(pairs) = &node.value else {
        findings.push(
            fields::shape_finding(
                node,
                "axes are a record: a name, and its values from easier to harder",
            )
            .help("write `axes: { support: [assisted, free] }`"),
        );
        return Vec::new();
    };
    let mut out = Vec::new();
    for (key, value) in pairs {
        let Value::List(items) = &value.value else {
            findings.push(
                fields::shape_finding(
                    value,
                    "the values of an axis are a list from easier to harder",
                )
                .help("write them in brackets, easier first: `[tuck, straddle, full]`"),
            );
            continue;
        };
        let rungs: Vec<Vec<String>> = items
            .iter()
            .map(|item| {
                fields::texts(item, findings)
                    .into_iter()
                    .map(|(t, _)| value_text(&t))
                    .collect()
            })
            .filter(|r: &Vec<String>| !r.is_empty())
            .collect();
        let mut seen: Vec<&str> = Vec::new();
        for value_word in rungs.iter().flatten() {
            if seen.contains(&value_word.as_str()) {
                findings.push(
                    Diagnostic::new(
                        Rule::BadValue,
                        value.span,
                        format!("`{value_word}` stands twice on this axis"),
                    )
                    .help("keep one of the two"),
                );
            }
            seen.push(value_word);
        }
        out.push(Axis {
            name: key.text().unwrap_or("").to_string(),
            rungs,
            easier_first: EasierFirst::None,
        });
    }
    out
}

/// Values are compared without regard to blanks.
fn value_text(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn easier_first(node: &Node, mut axes: Vec<Axis>, findings: &mut Findings) -> Vec<Axis> {
    match &node.value {
        Value::Map(pairs) => {
            for (key, value) in pairs {
                let name = key.text().unwrap_or("");
                let word = fields::word::<EasierFirst>(value, Rule::BadValue, findings);
                match axes.iter_mut().find(|a| a.name == name) {
                    Some(axis) => axis.easier_first = word.unwrap_or(EasierFirst::None),
                    None => findings.push(unknown_axis(key, name, &axes)),
                }
            }
        }
        _ => {
            if let Some(word) = fields::word::<EasierFirst>(node, Rule::BadValue, findings) {
                axes.iter_mut().for_each(|axis| axis.easier_first = word);
            }
        }
    }
    axes
}

fn unknown_axis(key: &Node, name: &str, axes: &[Axis]) -> Diagnostic {
    let names: Vec<&str> = axes.iter().map(|a| a.name.as_str()).collect();
    let help = did_you_mean(name, names.iter().copied())
        .unwrap_or_else(|| format!("the axes of this family are {}", names.join(", ")));
    Diagnostic::new(
        Rule::UnknownAxisValue,
        key.span,
        format!("the family has no axis `{name}`"),
    )
    .label("unknown axis")
    .help(help)
}

fn members(
    node: &Node,
    axes: &[Axis],
    family_has_standard: bool,
    findings: &mut Findings,
) -> Vec<MemberRecord> {
    let Value::Map(pairs) = &node.value else {
        findings.push(
            fields::shape_finding(node, "the members of a family are a record by id").help(
                "write `movements:` and below it `some-id: { at: { ... }, standard: 8 reps }`",
            ),
        );
        return Vec::new();
    };
    let keys = keys::member();
    let mut out: Vec<MemberRecord> = Vec::new();
    for (key, value) in pairs {
        let Some(record) = Record::open(value, "a member", &keys, findings) else {
            continue;
        };
        let mut draft = Draft::read(&record, findings);
        let rungs = record.get("at").map_or_else(
            || vec![None; axes.len()],
            |n| place(n, axes, &mut draft, findings),
        );
        let Some(id) = fields::id(key, findings) else {
            continue;
        };
        if draft.standard.is_none() && !family_has_standard && record.get("standard").is_none() {
            draft.faulty = true;
            findings.push(no_standard(key.span));
        }
        if let Some(other) = out
            .iter()
            .find(|m| m.rungs == rungs && record.get("at").is_some())
        {
            findings.push(same_place(key.span, &id, other));
        }
        let whole = Span::new(
            key.span.file,
            key.span.start as usize,
            value.span.end as usize,
        );
        out.push(MemberRecord {
            id,
            id_span: key.span,
            whole,
            rungs,
            draft,
        });
    }
    out
}

fn no_standard(span: Span) -> Diagnostic {
    Diagnostic::new(Rule::MissingKey, span, "a member needs the key `standard`")
        .label("neither it nor its family says one")
        .help("add `standard: ...`: the target at which it counts as owned")
}

fn same_place(span: Span, id: &Id, other: &MemberRecord) -> Diagnostic {
    let message = format!("`{id}` stands at the same place as `{}`", other.id);
    Diagnostic::new(Rule::DuplicatePlace, span, message)
        .label("second at this place")
        .related(other.id_span, "first at this place")
        .help("give one of them another value on an axis")
}

/// The place of a member; an axis called `phase` sets the phase.
fn place(
    node: &Node,
    axes: &[Axis],
    draft: &mut Draft,
    findings: &mut Findings,
) -> Vec<Option<Rung>> {
    let mut rungs = vec![None; axes.len()];
    let Value::Map(pairs) = &node.value else {
        draft.faulty = true;
        findings.push(
            fields::shape_finding(
                node,
                "the place of a member is a record: a value for each axis",
            )
            .help("write `at: { support: free }`"),
        );
        return rungs;
    };
    for (key, value) in pairs {
        let name = key.text().unwrap_or("");
        let Some(index) = axes.iter().position(|a| a.name == name) else {
            draft.faulty = true;
            findings.push(unknown_axis(key, name, axes));
            continue;
        };
        let word = value_text(value.text().unwrap_or(""));
        match axes[index].find(&word) {
            Some(rung) => {
                rungs[index] = Some(rung);
                if name == "phase" && draft.says.phase.is_none() {
                    draft.says.phase = Phase::read(&word);
                }
            }
            None => {
                draft.faulty = true;
                let words: Vec<&str> = axes[index].values().map(|(_, w)| w).collect();
                let help = did_you_mean(&word, words.iter().copied())
                    .unwrap_or_else(|| format!("the values are {}", words.join(", ")));
                findings.push(
                    Diagnostic::new(
                        Rule::UnknownAxisValue,
                        value.span,
                        format!("the axis `{name}` has no value `{word}`"),
                    )
                    .label("unknown value")
                    .help(help),
                );
            }
        }
    }
    rungs
}

/// Reads a file below `skills/`.
pub fn skill(root: &Node, findings: &mut Findings) -> Option<SkillRecord> {
    let record = Record::open(root, "a skill", keys::SKILL, findings)?;
    let name = record.name("name", findings);
    let also = record.texts("also", findings);
    let summary = record.text("summary", findings);
    let was = record.get("was").map_or_else(Vec::new, |n| {
        fields::items(n, findings)
            .into_iter()
            .filter_map(|n| fields::id(n, findings).map(|id| (id, n.span)))
            .collect()
    });
    let goal = record.get("goal").and_then(|n| goal(n, findings));
    let id_node = record.get("skill")?;
    let id = fields::id(id_node, findings)?;
    Some(SkillRecord {
        id,
        id_span: id_node.span,
        name: name?,
        also,
        was,
        summary,
        goal: goal?,
    })
}

fn goal(node: &Node, findings: &mut Findings) -> Option<RawLeaf> {
    match &node.value {
        Value::Scalar { text, .. } => Some(RawLeaf {
            id: text.trim().into(),
            span: node.span,
            target: None,
            family: false,
        }),
        Value::Map(pairs) if pairs.len() == 1 => {
            let (key, value) = pairs.first()?;
            let target: Target = fields::target(value, findings)?;
            Some(RawLeaf {
                id: key.text()?.trim().into(),
                span: key.span,
                target: Some((target, value.span)),
                family: false,
            })
        }
        _ => {
            findings.push(
                fields::shape_finding(node, "a goal is one movement, or one movement at a target")
                    .help("write `goal: some-movement` or `goal: { some-movement: 5 reps }`"),
            );
            None
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::curriculum::keys::{FAMILY_ONLY, MEMBER_ONLY, MOVEMENT};
    use crate::reading::read;
    use crate::source::Snapshot;

    /// Nobody reads a key whose nonsense is taken without a word.
    #[test]
    fn every_key_of_the_tables_is_read() {
        let nonsense = "[[[{ a: [b] }]]]";
        let found = |text: &str| {
            let school = "school: S\naddress: https://s.example/\nlanguage: en\nunits: metric\n";
            let files = [
                ("content/school.yaml", school),
                ("content/movements/x.yaml", text),
            ];
            let (_, findings) = read(&Snapshot::of_texts(files));
            let at = |line: usize| text.lines().take(line).map(|l| l.len() + 1).sum::<usize>();
            let start = at(text.lines().count() - 1) as u32;
            findings.iter().any(|d| d.span.start > start)
        };
        for key in MOVEMENT.iter().filter(|k| k.name != "movement") {
            let text = format!("movement: x\n{}: {nonsense}", key.name);
            assert!(found(&text), "movement: {}", key.name);
        }
        for key in FAMILY_ONLY.iter().filter(|k| k.name != "family") {
            let text = format!("family: x\n{}: {nonsense}", key.name);
            assert!(found(&text), "family: {}", key.name);
        }
        for key in MEMBER_ONLY {
            let head = "family: x\naxes: { a: [b] }\nmovements:\n  y:\n";
            let text = format!("{head}    {}: {nonsense}", key.name);
            assert!(found(&text), "member: {}", key.name);
        }
    }
}
