//! `school.yaml` and `cautions.yaml`.

use super::fields::{self, Record};
use super::{draft, manner};
use crate::curriculum::caution::{Book, Class, ClassId, Part, Signal, Text, Word};
use crate::curriculum::keys;
use crate::curriculum::quantity::{BodyShare, Days, Mass};
use crate::curriculum::school::{Dose, LeapLimits, School, WarmUpLine};
use crate::curriculum::target::{KILOGRAM, ONE, POUND};
use crate::curriculum::words::Position;
use crate::source::suggest::did_you_mean;
use crate::source::yaml::{Node, Value};
use crate::source::{Diagnostic, Findings, Rule, Span};
use std::collections::BTreeMap;

const DAYS: &[(&str, f64)] = &[
    ("weeks", 7.0),
    ("week", 7.0),
    ("days", 1.0),
    ("day", 1.0),
    ("months", 30.0),
    ("month", 30.0),
];
const WEIGHT: &[(&str, f64)] = &[("kg", KILOGRAM as f64), ("lb", POUND as f64)];

pub fn school(root: &Node, findings: &mut Findings) -> School {
    let mut school = School::default();
    let Some(record) = Record::open(root, "school.yaml", keys::SCHOOL, findings) else {
        return school;
    };
    let usual = School::default();
    school.name = record.name("school", findings).unwrap_or_default();
    school.address = record
        .get("address")
        .and_then(|n| address(n, findings))
        .unwrap_or_default();
    school.language = record.text("language", findings).unwrap_or(usual.language);
    school.units = record.word("units", findings).unwrap_or(usual.units);
    school.licence = record.text("licence", findings);
    school.contact = record.get("contact").and_then(|n| contact(n, findings));
    school.theme = record
        .get("theme")
        .and_then(|n| theme(n, findings))
        .unwrap_or(usual.theme);
    school.publish_to = record
        .get("publish_to")
        .and_then(|n| publish_to(n, findings));
    school.dose = record.get("dose").map_or(usual.dose, |n| dose(n, findings));
    school.results_last = record
        .amount("results_last", DAYS, findings)
        .map_or(usual.results_last, |d| Days::of(d.max(1.0) as u32));
    school.presume = record.flag("presume", findings).unwrap_or(usual.presume);
    school.equipment = record
        .get("equipment")
        .map_or_else(BTreeMap::new, |n| equipment(n, findings));
    school.warm_up = record
        .get("warm_up")
        .map_or_else(BTreeMap::new, |n| warm_up(n, &school, findings));
    school.accent = record.get("accent").and_then(|n| accent(n, findings));
    school.practice = record.word("practice", findings).unwrap_or(usual.practice);
    school.smallest_plate = record
        .amount("smallest_plate", WEIGHT, findings)
        .map_or(usual.smallest_plate, |n| Mass::of_units(n.max(0.0) as i64));
    school.leap = record.get("leap").map_or(usual.leap, |n| leap(n, findings));
    school
}

/// A link for readers: an http or https address, or one for mail.
fn contact(node: &Node, findings: &mut Findings) -> Option<String> {
    let text = fields::text(node, findings)?;
    let plain = |t: &str| {
        !t.contains(|c: char| c.is_whitespace() || c.is_control() || "<>\"'\\:".contains(c))
    };
    let mail = text.strip_prefix("mailto:").unwrap_or(&text);
    match mail.split_once('@') {
        Some((who, host)) if plain(mail) && !who.is_empty() && !host.is_empty() => {
            Some(format!("mailto:{mail}"))
        }
        _ => {
            let before = findings.len();
            address(node, findings);
            (findings.len() == before).then_some(text)
        }
    }
}

fn address(node: &Node, findings: &mut Findings) -> Option<String> {
    let text = fields::text(node, findings)?;
    let rest = text
        .strip_prefix("https://")
        .or_else(|| text.strip_prefix("http://"));
    let host_is_good = rest.is_some_and(|r| {
        r.split('/').next().is_some_and(|h| !h.is_empty())
            && !r.contains(|c: char| c.is_whitespace() || "<>\"'\\".contains(c))
    });
    if !host_is_good {
        findings.push(
            Diagnostic::new(
                Rule::BadAddress,
                node.span,
                format!("`{text}` is not an http or https address"),
            )
            .label("not an address")
            .help("write the whole address, like `https://example.org/curriculum/`"),
        );
        return None;
    }
    Some(if text.ends_with('/') {
        text
    } else {
        format!("{text}/")
    })
}

/// A theme is a folder's name: no dots or slashes lead out of `themes/`.
fn theme(node: &Node, findings: &mut Findings) -> Option<String> {
    let text = fields::text(node, findings)?;
    if text
        .chars()
        .all(|c| c.is_ascii_alphanumeric() || c == '-' || c == '_')
    {
        return Some(text);
    }
    findings.push(
        Diagnostic::new(
            Rule::BadValue,
            node.span,
            format!("`{text}` is not the name of a theme"),
        )
        .help("write the name of a folder below `themes/`"),
    );
    None
}

/// A folder below the curriculum's own: a file that somebody sent never chooses another place.
fn publish_to(node: &Node, findings: &mut Findings) -> Option<String> {
    let text = fields::text(node, findings)?;
    let plain = |part: &str| !matches!(part, "" | "." | ".." | "~");
    let rest = text.strip_suffix('/').unwrap_or(&text);
    let odd = |c: char| c.is_control() || matches!(c, '\\' | ':');
    if rest.split('/').all(plain) && !text.contains(odd) {
        return Some(text);
    }
    findings.push(
        Diagnostic::new(
            Rule::BadValue,
            node.span,
            format!("`{text}` is not a folder inside the curriculum's"),
        )
        .label("it leads out of the folder")
        .help("write the name of a folder beside `content`, like `site`; another place is named by `rungbook publish --to DIR`"),
    );
    None
}

fn accent(node: &Node, findings: &mut Findings) -> Option<String> {
    let text = fields::text(node, findings)?;
    let good = text
        .strip_prefix('#')
        .is_some_and(|h| h.len() == 6 && h.chars().all(|c| c.is_ascii_hexdigit()));
    if !good {
        findings.push(
            Diagnostic::new(
                Rule::BadValue,
                node.span,
                format!("`{text}` is not a colour"),
            )
            .help("write it in quotes, like `\"#b4472b\"`"),
        );
        return None;
    }
    Some(text.to_lowercase())
}

fn whole(record: &Record<'_>, name: &str, usual: u32, findings: &mut Findings) -> u32 {
    let Some(node) = record.get(name) else {
        return usual;
    };
    match node
        .text()
        .and_then(|t| t.trim().parse::<u32>().ok())
        .filter(|n| (1..=1000).contains(n))
    {
        Some(number) => number,
        None => {
            findings.push(
                Diagnostic::new(
                    Rule::BadValue,
                    node.span,
                    format!("`{name}` is a whole number from 1"),
                )
                .help(format!("write it like `{name}: {usual}`")),
            );
            usual
        }
    }
}

fn dose(node: &Node, findings: &mut Findings) -> Dose {
    let usual = Dose::default();
    let Some(record) = Record::open(node, "a dose", keys::SCHOOL_DOSE, findings) else {
        return usual;
    };
    Dose {
        sets: whole(&record, "sets", usual.sets, findings),
        reps: whole(&record, "reps", usual.reps, findings),
        a_week: whole(&record, "a_week", usual.a_week, findings),
        lighter_every: record
            .amount("lighter_every", DAYS, findings)
            .map_or(usual.lighter_every, |d| Days::of(d.max(7.0) as u32)),
        hold: record.target("hold", findings).map_or(usual.hold, |t| t.0),
    }
}

fn leap(node: &Node, findings: &mut Findings) -> LeapLimits {
    let usual = LeapLimits::default();
    let Some(record) = Record::open(node, "leap", keys::LEAP, findings) else {
        return usual;
    };
    let mut number = |name: &str, usual: i64| {
        record
            .amount(name, &[("", ONE as f64)], findings)
            .map_or(usual, |n| n.max(0.0) as i64)
    };
    LeapLimits {
        share: BodyShare::of_millionths(number("share", usual.share.millionths())),
        turning: number("turning", usual.turning),
        rungs: (number("rungs", i64::from(usual.rungs) * ONE) / ONE) as u32,
    }
}

pub(super) fn pairs<'a>(
    node: &'a Node,
    message: &str,
    example: &str,
    findings: &mut Findings,
) -> &'a [(Node, Node)] {
    match &node.value {
        Value::Map(pairs) => pairs,
        Value::Null => &[],
        _ => {
            let help = format!("write one line for each, such as `{example}`");
            findings.push(fields::shape_finding(node, message).help(help));
            &[]
        }
    }
}

fn warm_up(
    node: &Node,
    school: &School,
    findings: &mut Findings,
) -> BTreeMap<String, Vec<WarmUpLine>> {
    let mut out = BTreeMap::new();
    for (key, value) in pairs(
        node,
        "the warm-up is a record: `always`, and caution classes",
        "always: [5 minutes of brisk walking]",
        findings,
    ) {
        let lines = match &value.value {
            Value::Map(_) => vec![value],
            _ => fields::items(value, findings),
        };
        let lines = lines.into_iter();
        let lines = lines.filter_map(|n| warm_up_line(n, school, findings));
        out.insert(key.text().unwrap_or("").to_string(), lines.collect());
    }
    out
}

/// A text, or a record that says what it stresses and wants.
fn warm_up_line(node: &Node, school: &School, findings: &mut Findings) -> Option<WarmUpLine> {
    let Value::Map(_) = &node.value else {
        let text = fields::text(node, findings)?;
        unsaid(node.span, findings);
        return Some(WarmUpLine {
            text,
            stresses: Vec::new(),
            equipment: Vec::new(),
        });
    };
    let record = Record::open(node, "a warm-up line", keys::WARM_UP_LINE, findings)?;
    let wants = record
        .get("equipment")
        .map_or_else(Vec::new, |n| draft::equipment(n, findings));
    for (word, span) in wants.iter().flatten() {
        explained(school, word, *span, findings);
    }
    if record.get("stresses").is_none() {
        unsaid(node.span, findings);
    }
    let words = |one_of: Vec<(String, Span)>| one_of.into_iter().map(|w| w.0).collect();
    Some(WarmUpLine {
        text: record.text("do", findings)?,
        stresses: record
            .get("stresses")
            .map_or_else(Vec::new, |n| manner::stresses(n, findings)),
        equipment: wants.into_iter().map(words).collect(),
    })
}

/// A finding for a line that stands whatever rests.
fn unsaid(span: Span, findings: &mut Findings) {
    let message = "this line of the warm-up stands in every session, whatever hurts or rests";
    findings.push(
        Diagnostic::new(Rule::WarmUpUnsaid, span, message)
            .label("which parts does it stress?")
            .help("write `{ do: ..., stresses: [wrist] }`, or `stresses: []` where it moves nothing that could hurt"),
    );
}

/// A finding where the school does not explain a word of equipment.
pub(super) fn explained(school: &School, word: &str, span: Span, findings: &mut Findings) {
    if school.equipment.contains_key(word) {
        return;
    }
    let known = school.equipment.keys().map(String::as_str);
    let several = word.contains(',') || word.contains(" and ");
    let help = several.then(|| format!("write a list: `[{}]`", word.replace(" and ", ", ")));
    let help = help
        .or_else(|| did_you_mean(word, known))
        .unwrap_or_else(|| match school.equipment.is_empty() {
            true => format!("explain it in school.yaml: `equipment: {{ {word}: ... }}`"),
            false => format!("add the line `  {word}: ...` under `equipment:` in school.yaml"),
        });
    findings.push(
        Diagnostic::new(
            Rule::UnknownEquipment,
            span,
            format!("school.yaml does not explain the equipment `{word}`"),
        )
        .label("unknown equipment")
        .help(help),
    );
}

fn equipment(node: &Node, findings: &mut Findings) -> BTreeMap<String, String> {
    let mut out = BTreeMap::new();
    for (key, value) in pairs(
        node,
        "equipment is a record: a word, and what it means",
        "bar: a bar to hang from",
        findings,
    ) {
        if let (Some(word), Some(meaning)) = (key.text(), fields::text(value, findings)) {
            out.insert(word.to_string(), meaning);
        }
    }
    out
}

/// The shipped cautions with the school's wording and the school's own classes.
pub fn cautions(root: &Node, findings: &mut Findings) -> Book {
    let mut book = Book::default();
    for (key, value) in pairs(
        root,
        "cautions.yaml is a record: a class, and its parts",
        "inverted: { ask_first: ... }",
        findings,
    ) {
        // A shipped class may bear a word that is no id, such as a page's.
        let shipped = key.text().filter(|word| book.find(word).is_some());
        let Some(id) = shipped
            .map(str::to_string)
            .or_else(|| fields::id(key, findings).map(|id| id.to_string()))
        else {
            continue;
        };
        let Some(record) = Record::open(value, "a caution class", keys::CAUTION, findings) else {
            continue;
        };
        let known = book.find(&id);
        let mut class = known.map_or_else(|| own_class(&id), |ix| book.class(ix).clone());
        if let Some(name) = record.name("name", findings) {
            class.name = name;
        }
        if let Some(node) = record.get("signal") {
            let least = known.map(|_| class.signal);
            class.signal = signal(node, &id, least, findings).unwrap_or(class.signal);
        }
        for part in Part::ALL {
            if let Some(text) = reworded(&record, value, *part, &id, findings) {
                class.wording_mut(*part).reword(text);
            }
        }
        for position in Position::ALL {
            in_position(&record, *position, &id, &mut class, findings);
        }
        let missing: Vec<&str> = Part::ALL
            .iter()
            .filter(|p| class.part(**p).trim().is_empty() && !has_key(value, p.word()))
            .map(|p| p.word())
            .collect();
        if !missing.is_empty() {
            findings.push(
                Diagnostic::new(Rule::CautionIncomplete, key.span, format!("the caution `{id}` lacks {}", missing.join(", ")))
                    .label("not complete")
                    .help("a class of your own says what happens, who asks first, how to set up, how to bail out and when to stop"),
            );
        }
        match known {
            Some(ix) => *book.class_mut(ix) = class,
            None => book.add(class),
        }
    }
    book
}

/// The signal word of a class; never less grave than the shipped one's, `least`.
fn signal(node: &Node, id: &str, least: Option<Signal>, findings: &mut Findings) -> Option<Signal> {
    let text = node.text().unwrap_or("");
    let finding = match (Signal::read(text), least) {
        (Some(signal), Some(least)) if signal < least => {
            let least = least.word();
            let message = format!("`{id}` cannot become less grave than `{least}`");
            Diagnostic::new(Rule::CautionIncomplete, node.span, message)
                .help(format!("type `{least}`, or leave the line out"))
        }
        (Some(signal), _) => return Some(signal),
        (None, _) => {
            let help = did_you_mean(text, Signal::WORDS.iter().copied())
                .unwrap_or_else(|| "type warning, caution or notice".into());
            let message = format!("`{text}` is not a signal word");
            Diagnostic::new(Rule::BadValue, node.span, message).help(help)
        }
    };
    findings.push(finding);
    None
}

fn has_key(node: &Node, name: &str) -> bool {
    matches!(&node.value, Value::Map(pairs) if pairs.iter().any(|(k, _)| k.text() == Some(name)))
}

fn own_class(id: &str) -> Class {
    let name = id.replace('-', " ");
    let name = name[..1].to_uppercase() + &name[1..];
    Class::new(ClassId::read(id), name, Signal::Caution)
}

/// What the school says of one position.
fn in_position(
    record: &Record<'_>,
    position: Position,
    id: &str,
    class: &mut Class,
    findings: &mut Findings,
) {
    let Some(node) = record.get(position.word()) else {
        return;
    };
    let keys = keys::CAUTION_IN_POSITION;
    let Some(inner) = Record::open(node, "what is said of a position", keys, findings) else {
        return;
    };
    for part in Part::ALL {
        if let Some(text) = reworded(&inner, node, *part, id, findings) {
            class.wording_mut(*part).reword_in(position, text);
        }
    }
}

/// The school's words for a part, where it has any.
fn reworded(
    record: &Record<'_>,
    node: &Node,
    part: Part,
    id: &str,
    findings: &mut Findings,
) -> Option<Text> {
    let part = part.word();
    fields::finished(record.get(part), findings);
    if !has_key(node, part) {
        return None;
    }
    let words = record
        .get(part)
        .and_then(Node::text)
        .map(str::trim)
        .unwrap_or("");
    if words.is_empty() {
        findings.push(
            Diagnostic::new(
                Rule::CautionIncomplete,
                record.get(part).map_or(node.span, |n| n.span),
                format!("`{part}` of the caution `{id}` is empty"),
            )
            .label("a caution is never emptied")
            .help("write the words, or delete the line to keep the shipped ones"),
        );
        return None;
    }
    Some(Text {
        words: words.to_string(),
        span: record.get(part).map(|n| n.span),
    })
}
