//! A class as one CSV: name, movement, got, on, in_reserve. One row a result; rows of one name are one client, since nothing else
//! in a row says who it is: two clients of one name are kept apart by writing them apart, as `Ann K.` and `Ann B.`, or each in a
//! file of their own.

use super::file::Reader;
use super::{Person, Sides};
use crate::curriculum::{Curriculum, Day};
use crate::source::{Diagnostic, FileId, Findings, Rule, Span, suggest};
use std::collections::HashMap;

const COLUMNS: &[&str] = &["name", "movement", "got", "on", "in_reserve"];

/// More people than this are no class, and one answer for all of them would fill the memory. Common practice, no source.
const MOST_PEOPLE: usize = 1000;

/// Reads a class row by row; people in the order of their first row, the first thousand of them.
pub(super) fn read(
    id: FileId,
    text: &str,
    curriculum: &Curriculum,
    today: Day,
    findings: &mut Findings,
) -> Vec<Person> {
    let mut rows = csv::ReaderBuilder::new()
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let Some(columns) = columns(id, text, &mut rows, findings) else {
        return Vec::new();
    };
    let mut people: Vec<Person> = Vec::new();
    let mut known: HashMap<String, usize> = HashMap::new();
    let mut crowded = false;
    for row in rows.records() {
        let row = match row {
            Ok(row) => row,
            Err(error) => {
                let at = error.position().map_or(0, |p| p.byte() as usize);
                findings.push(
                    Diagnostic::new(
                        Rule::BadClass,
                        line(id, text, at),
                        "this row cannot be read",
                    )
                    .label("here")
                    .help("write one row a result, texts with a comma in double quotes"),
                );
                continue;
            }
        };
        let start = row.position().map_or(0, |p| p.byte() as usize);
        let cell = |name: &str| {
            let column = COLUMNS
                .iter()
                .position(|c| *c == name)
                .and_then(|i| columns[i])?;
            row.get(column).filter(|c| !c.is_empty())
        };
        let whole = line(id, text, start);
        // A cell of several lines, or with quotes doubled, is not found as it was read.
        let found = |value: &str| {
            let inside = text
                .get(whole.start as usize..whole.end as usize)
                .unwrap_or("");
            let at = inside.find(value)?;
            Some(whole.within(at, at + value.len()))
        };
        let place = |value: &str| found(value).unwrap_or(whole);
        let (Some(name), Some(movement), Some(got)) = (cell("name"), cell("movement"), cell("got"))
        else {
            findings.push(
                Diagnostic::new(
                    Rule::BadClass,
                    whole,
                    "a row needs a name, a movement and what was got",
                )
                .label("here")
                .help("fill in the three, or delete the row"),
            );
            continue;
        };
        if people.len() == MOST_PEOPLE && !known.contains_key(name) {
            if !std::mem::replace(&mut crowded, true) {
                findings.push(
                    Diagnostic::new(
                        Rule::BadClass,
                        place(name),
                        format!("a class has at most {MOST_PEOPLE} people; who comes after them is not read"),
                    )
                    .label("one more")
                    .help("give the others a file of their own, and assess one file after the other"),
                );
            }
            continue;
        }
        let mut reader = Reader::new(curriculum, today, findings);
        let on = match cell("on") {
            Some(text) => reader.day_of(text, place(text)),
            None => Some(today),
        };
        let in_reserve = match cell("in_reserve") {
            Some(text) => reader.reserve(text, place(text)),
            None => Some(0),
        };
        let got = reader.got(got, |from, to| match found(got) {
            Some(cell) if from < to => cell.within(from, to),
            other => other.unwrap_or(whole),
        });
        if let (Some(on), Some(in_reserve), Some(got)) = (on, in_reserve, got) {
            let at = place(movement);
            reader.take(movement, at, Sides::Both(got), on, in_reserve, None);
        }
        let mut read = reader.person;
        read.name = name.to_string();
        match known.get(name) {
            Some(at) => {
                let person = &mut people[*at];
                person.tested.append(&mut read.tested);
                person.aside.append(&mut read.aside);
            }
            None => {
                known.insert(name.to_string(), people.len());
                people.push(read);
            }
        }
    }
    people
}

/// Where each of the known columns stands in the first row.
fn columns(
    id: FileId,
    text: &str,
    rows: &mut csv::Reader<&[u8]>,
    findings: &mut Findings,
) -> Option<[Option<usize>; 5]> {
    let first = line(id, text, 0);
    let head = rows.headers().ok()?.clone();
    let mut out = [None; 5];
    for (at, word) in head.iter().enumerate() {
        let lower = word.trim_start_matches('\u{feff}').to_lowercase();
        match COLUMNS.iter().position(|c| *c == lower) {
            Some(i) => out[i] = Some(at),
            None => findings.push(
                Diagnostic::new(
                    Rule::UnknownKey,
                    first,
                    format!("a class has no column `{word}`"),
                )
                .label("the first row names the columns")
                .help(
                    suggest::did_you_mean(&lower, COLUMNS.iter().copied()).unwrap_or_else(|| {
                        format!("the columns are {}", suggest::listed(COLUMNS, "and"))
                    }),
                ),
            ),
        }
    }
    let missing = COLUMNS.iter().zip(out).take(3).find(|(_, at)| at.is_none());
    if let Some((name, _)) = missing {
        findings.push(
            Diagnostic::new(
                Rule::MissingKey,
                first,
                format!("the column `{name}` is missing"),
            )
            .label("the first row names the columns")
            .help("begin with the row `name,movement,got,on,in_reserve`"),
        );
        return None;
    }
    Some(out)
}

/// The line that holds a byte.
fn line(id: FileId, text: &str, at: usize) -> Span {
    let at = at.min(text.len());
    let start = at + text[at..].len() - text[at..].trim_start_matches(['\r', '\n']).len();
    let end = text[start..]
        .find(['\r', '\n'])
        .map_or(text.len(), |i| start + i);
    Span::new(id, start, end)
}
