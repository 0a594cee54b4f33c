//! The values of an entry: its day, what was got, what was left, a weight, a set; each finding in its place.

use super::{Aside, LIMITS, Person};
use crate::curriculum::target::{Added, Got, Measure, Micro};
use crate::curriculum::{BodyWeight, Curriculum, Day};
use crate::reading::fields::{self, Record};
use crate::source::yaml::{Node, Value};
use crate::source::{Diagnostic, Findings, Rule, Span};
use std::ops::RangeInclusive;

/// Reads entries against a curriculum and gathers a person.
pub(super) struct Reader<'a> {
    pub curriculum: &'a Curriculum,
    pub today: Day,
    pub findings: &'a mut Findings,
    pub person: Person,
}

impl<'a> Reader<'a> {
    pub fn new(curriculum: &'a Curriculum, today: Day, findings: &'a mut Findings) -> Reader<'a> {
        Reader {
            curriculum,
            today,
            findings,
            person: Person::default(),
        }
    }

    pub fn aside(&mut self, movement: &str, got: String, on: Day, why: &'static str) {
        self.person.aside.push(Aside {
            movement: movement.to_string(),
            got,
            on,
            why,
        });
    }

    /// The day of an entry; today where it says none, `None` with a finding where it is no day.
    pub fn day(&mut self, record: &Record<'_>, key: &str) -> Option<Option<Day>> {
        let Some(node) = record.get(key) else {
            return Some(None);
        };
        self.day_of(node.text().unwrap_or(""), node.span).map(Some)
    }

    pub fn day_of(&mut self, text: &str, span: Span) -> Option<Day> {
        let day = Day::read(text.trim());
        if day.is_none() {
            self.findings.push(
                Diagnostic::new(
                    Rule::BadDay,
                    span,
                    format!("`{}` is not a day", text.trim()),
                )
                .label("here")
                .help(Day::meant(text)),
            );
        }
        day
    }

    pub fn got(&mut self, text: &str, span: impl Fn(usize, usize) -> Span) -> Option<Got> {
        match Got::read(text) {
            Ok(got) => Some(got),
            Err(error) => {
                let at = span(error.at.start, error.at.end.max(error.at.start));
                self.findings.push(
                    Diagnostic::new(
                        Rule::BadResult,
                        at,
                        format!("`{text}` is not a result: {}", error.message),
                    )
                    .label("here")
                    .help(error.help),
                );
                None
            }
        }
    }

    pub fn got_of(&mut self, record: &Record<'_>, key: &str) -> Option<Option<Got>> {
        let Some(node) = record.get(key) else {
            return Some(None);
        };
        let Some(text) = node.text() else {
            self.findings.push(
                Diagnostic::new(Rule::BadResult, node.span, "a result is one amount")
                    .label(format!("this is {}", node.kind()))
                    .help("sides have keys of their own: `left: 5 reps, right: 4 reps` in place of `got`"),
            );
            return None;
        };
        let span = |from: usize, to: usize| match from < to {
            true => node.part(from, to),
            false => node.span,
        };
        self.got(text, span).map(Some)
    }

    pub fn reserve(&mut self, text: &str, span: Span) -> Option<u32> {
        let read = text.trim().parse::<u32>().ok();
        let read = read.filter(|n| *n <= LIMITS.in_reserve);
        if read.is_none() {
            self.findings.push(
                Diagnostic::new(
                    Rule::BadResult,
                    span,
                    format!("`{}` is no number in reserve", text.trim()),
                )
                .label("here")
                .help("write a whole number, such as `in_reserve: 2`"),
            );
        }
        read
    }

    pub fn reserve_of(&mut self, record: &Record<'_>) -> Option<Option<u32>> {
        let Some(node) = record.get("in_reserve") else {
            return Some(None);
        };
        self.reserve(node.text().unwrap_or(""), node.span).map(Some)
    }

    /// A whole number of an entry within its range; `None` where it is not there, and with a finding where it is none.
    pub fn whole(
        &mut self,
        record: &Record<'_>,
        key: &str,
        range: RangeInclusive<u32>,
        of: &str,
    ) -> Option<u32> {
        let node = record.get(key)?;
        let text = node.text().unwrap_or("").trim();
        let read = text.parse().ok().filter(|n| range.contains(n));
        if read.is_none() {
            let message = format!("`{text}` is no {key} of {of}");
            let help = format!(
                "write a whole number from {} to {}",
                range.start(),
                range.end()
            );
            let finding = Diagnostic::new(Rule::BadResult, node.span, message).label("here");
            self.findings.push(finding.help(help));
        }
        read
    }

    /// One set: a bare number in the movement's measure, or an amount with its unit.
    pub fn set(&mut self, text: &str, span: Span, measure: Option<Measure>) -> Option<Micro> {
        let bare = text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
        let unit = match measure {
            Some(Measure::Time) => "s",
            Some(Measure::Length) => "cm",
            Some(Measure::Angle) => "deg",
            _ => "reps",
        };
        let full = match bare {
            true => format!("{text} {unit}"),
            false => text.to_string(),
        };
        let got = self.got(&full, |_, _| span)?;
        let fits = measure.is_none_or(|m| m == got.parts().measure() || m == Measure::Done);
        if !fits {
            self.findings.push(
                Diagnostic::new(
                    Rule::BadResult,
                    span,
                    format!("`{text}` measures another thing than this movement"),
                )
                .label("here")
                .help(format!(
                    "write each set in {unit}, such as `did: [5, 5, 5]`"
                )),
            );
            return None;
        }
        Some(got.parts().amount())
    }
}

pub(super) fn record_items<'a>(
    record: &Record<'a>,
    key: &str,
    findings: &mut Findings,
) -> Vec<&'a Node> {
    match record.get(key).map(|node| (&node.value, node)) {
        Some((Value::List(items), _)) => items.iter().collect(),
        Some((_, node)) => {
            findings.push(
                fields::shape_finding(node, &format!("`{key}` is a list"))
                    .help("begin each entry with a dash on a line of its own"),
            );
            Vec::new()
        }
        None => Vec::new(),
    }
}

/// The body weight of a record.
pub(super) fn body_weight(record: &Record<'_>, findings: &mut Findings) -> Option<BodyWeight> {
    let node = record.get("bodyweight")?;
    let read = added(node.text().unwrap_or(""));
    let weight = match read {
        Some(Added::Mass(mass)) => BodyWeight::new(mass),
        _ => None,
    };
    match weight {
        Some(weight) => Some(weight),
        None => {
            let text = node.text().unwrap_or("").trim();
            findings.push(
                Diagnostic::new(
                    Rule::BadBodyWeight,
                    node.span,
                    format!("`{text}` is not a body weight"),
                )
                .label("here")
                .help(match text.parse::<f64>() {
                    Ok(_) => format!("say the unit: `{text} kg`, or `{text} lb`"),
                    Err(_) => "write it like `72 kg` or `160 lb`, from 10 to 500 kg".to_string(),
                }),
            );
            None
        }
    }
}

/// A weight such as `20 kg`, `0 kg` or `15 kg help`, by the grammar of targets.
pub(super) fn added(text: &str) -> Option<Added> {
    Got::read(&format!("1 rep with {text}"))
        .ok()?
        .parts()
        .added()
}
