//! A class as one table: a row a result, or a pause, or what is to be known of a person; rows of one name are one client, since
//! nothing else in a row says who it is: two clients of one name are written apart, as `Ann K.` and `Ann B.`, or each in a file of
//! their own. Columns are parted by commas, semicolons or tabs.

use super::entry::{Reader, body_weight};
use super::{LIMITS, Person};
use crate::curriculum::words::{BodyPart, Pattern, Word};
use crate::curriculum::{Curriculum, Day, keys};
use crate::reading::fields::Record;
use crate::source::yaml::{Node, Value};
use crate::source::{Diagnostic, FileId, Findings, Rule, Span, meant, suggest};
use std::borrow::Cow;
use std::collections::HashMap;

const COLUMNS: &[&str] = &[
    "name",
    "movement",
    "got",
    "left",
    "right",
    "on",
    "in_reserve",
    "bodyweight",
    "with",
    "paused",
    "until",
    "born",
    "goal",
];
/// What a table may be parted by; of equally many the first.
const PARTED_BY: [u8; 3] = *b",;\t";
/// What some programs write before the first letter.
const MARK: &str = "\u{feff}";

type Columns = [Option<usize>; COLUMNS.len()];

/// Reads a class row by row; people in the order of their first row, the first thousand of them.
pub(super) fn read(
    id: FileId,
    text: &str,
    curriculum: &Curriculum,
    today: Day,
    findings: &mut Findings,
) -> Vec<Person> {
    let body = text.strip_prefix(MARK).unwrap_or(text);
    let shift = text.len() - body.len();
    let mut rows = csv::ReaderBuilder::new()
        .flexible(true)
        .delimiter(parted_by(body))
        .trim(csv::Trim::All)
        .from_reader(body.as_bytes());
    let Some(columns) = columns(line(id, text, shift), &mut rows, findings) else {
        return Vec::new();
    };
    let mut class = Class::default();
    for row in rows.records() {
        let at = |p: Option<&csv::Position>| p.map_or(0, |p| p.byte() as usize) + shift;
        match row {
            Ok(row) => {
                let whole = line(id, text, at(row.position()));
                let row = Row {
                    cells: &row,
                    columns: &columns,
                    text,
                    whole,
                };
                row.read(Reader::new(curriculum, today, findings), &mut class);
            }
            Err(error) => findings.push(
                Diagnostic::new(
                    Rule::BadClass,
                    line(id, text, at(error.position())),
                    "this row cannot be read",
                )
                .label("here")
                .help("write one row a result, texts with a comma in double quotes"),
            ),
        }
    }
    class.people
}

/// What the first row has most of, outside quotes.
fn parted_by(text: &str) -> u8 {
    let first = text.lines().next().unwrap_or("");
    let outside = first.split('"').step_by(2);
    let count = |mark: u8| {
        outside
            .clone()
            .map(|t| t.bytes().filter(|b| *b == mark).count())
            .sum()
    };
    let mut best = (PARTED_BY[0], 0);
    for mark in PARTED_BY {
        let n: usize = count(mark);
        if n > best.1 {
            best = (mark, n);
        }
    }
    best.0
}

/// The people read so far, by name.
#[derive(Default)]
struct Class {
    people: Vec<Person>,
    places: HashMap<String, usize>,
    /// The day of each person's body weight.
    weighed: Vec<Option<Day>>,
    /// Somebody came after the last whom a class may have, and it was said.
    crowded: bool,
}

impl Class {
    fn is_full_for(&self, name: &str) -> bool {
        self.people.len() == LIMITS.class && !self.places.contains_key(name)
    }

    /// The year in which somebody was born, as the rows so far have it.
    fn born(&self, name: &str) -> Option<i32> {
        self.people[*self.places.get(name)?].born
    }

    /// Takes in what a row said: the newest body weight, the last year of birth and goal.
    fn take(&mut self, name: &str, mut read: Person, on: Day) {
        let at = *self.places.entry(name.to_string()).or_insert_with(|| {
            self.people.push(Person {
                name: name.to_string(),
                ..Person::default()
            });
            self.weighed.push(None);
            self.people.len() - 1
        });
        let person = &mut self.people[at];
        person.tested.append(&mut read.tested);
        person.otherwise.append(&mut read.otherwise);
        person.aside.append(&mut read.aside);
        person.pauses.append(&mut read.pauses);
        person.born = read.born.or(person.born);
        person.goal = read.goal.or(person.goal);
        if read.body_weight.is_some() && self.weighed[at].is_none_or(|day| day <= on) {
            person.body_weight = read.body_weight;
            self.weighed[at] = Some(on);
        }
    }
}

/// One row of the table.
struct Row<'r> {
    cells: &'r csv::StringRecord,
    columns: &'r Columns,
    text: &'r str,
    whole: Span,
}

impl Row<'_> {
    fn cell(&self, name: &str) -> Option<&str> {
        let at = COLUMNS.iter().position(|c| *c == name)?;
        self.cells.get(self.columns[at]?).filter(|c| !c.is_empty())
    }

    /// A cell as a value with its place. A cell of several lines, or with quotes doubled, is not found as it was read.
    fn value(&self, text: &str) -> Node {
        let inside = self
            .text
            .get(self.whole.start as usize..self.whole.end as usize);
        let found = inside.unwrap_or("").find(text);
        let span = found.map(|at| self.whole.within(at, at + text.len()));
        node(span.unwrap_or(self.whole), text, span.is_some())
    }

    /// The cells of some columns as a record of those keys.
    fn record(&self, names: &[&str]) -> Vec<(Node, Node)> {
        let one = |name: &&str| {
            let value = self.value(self.cell(name)?);
            Some((node(self.whole, name, false), value))
        };
        names.iter().filter_map(one).collect()
    }

    fn read(&self, mut reader: Reader<'_>, class: &mut Class) {
        let has = |name: &str| self.cell(name).is_some();
        let result = has("got") || has("left") || has("right");
        let of_person = ["bodyweight", "paused", "born", "goal"]
            .iter()
            .any(|c| has(c));
        let whole = result == has("movement") && (result || of_person);
        let (Some(name), true) = (self.cell("name"), whole) else {
            let message = "a row needs a name, a movement and what was got";
            let finding = Diagnostic::new(Rule::BadClass, self.whole, message).label("here");
            let help = "fill in the three, or delete the row";
            reader.findings.push(finding.help(help));
            return;
        };
        if class.is_full_for(name) {
            if !std::mem::replace(&mut class.crowded, true) {
                reader.findings.push(crowded(self.value(name).span));
            }
            return;
        }
        if result {
            reader.tested(&self.map(self.result()));
        }
        if let Some(what) = self.cell("paused") {
            let key = spared_by(reader.curriculum, what);
            let mut pause = vec![(node(self.whole, key, false), self.value(what))];
            pause.extend(self.record(&["on", "until"]));
            let pause = reader.pause(&self.map(pause), "a pause", "paused");
            reader.person.pauses.extend(pause);
        }
        let mut about = vec![(
            node(self.whole, "results", false),
            node(self.whole, "1", false),
        )];
        about.extend(self.record(&["bodyweight", "born", "goal"]));
        let about = self.map(about);
        if let Some(record) = Record::open(&about, "a row", keys::RESULTS, reader.findings) {
            reader.about(&record);
            // Beside a result it was read, and told where it is none.
            reader.person.body_weight = match result {
                true => body_weight(&record, &mut Findings::default()),
                false => body_weight(&record, reader.findings),
            };
        }
        if let (Some(one), Some(other)) = (class.born(name), reader.person.born)
            && one != other
        {
            let finding = Diagnostic::new(
                Rule::BadClass,
                self.value(name).span,
                format!("`{name}` is born in {one} and in {other}"),
            )
            .label("one name is one person here");
            let help = "give two people two names, such as a letter more, or mend the year";
            reader.findings.push(finding.help(help));
        }
        let on = self.cell("on").and_then(Day::read).unwrap_or(reader.today);
        class.take(name, reader.person, on);
    }

    /// The record of a test's result, its load from a column of its own.
    fn result(&self) -> Vec<(Node, Node)> {
        let names = [
            "movement",
            "got",
            "left",
            "right",
            "on",
            "in_reserve",
            "bodyweight",
        ];
        let mut out = self.record(&names);
        if let Some(load) = self.cell("with") {
            for (key, value) in &mut out {
                let is_result = matches!(key.text(), Some("got" | "left" | "right"));
                if let (true, Some(text)) = (is_result, value.text()) {
                    *value = node(value.span, &format!("{text} with {load}"), false);
                }
            }
        }
        out
    }

    fn map(&self, entries: Vec<(Node, Node)>) -> Node {
        Node {
            span: self.whole,
            value: Value::Map(entries),
        }
    }
}

fn crowded(span: Span) -> Diagnostic {
    let message = format!(
        "a class has at most {} people; who comes after them is not read",
        LIMITS.class
    );
    Diagnostic::new(Rule::BadClass, span, message)
        .label("one more")
        .help("give the others a file of their own, and assess one file after the other")
}

fn node(span: Span, text: &str, exact: bool) -> Node {
    let text = text.to_string();
    Node {
        span,
        value: Value::Scalar { text, exact },
    }
}

/// What a pause's cell names. Where it could be two things the wider one: more rests.
fn spared_by(curriculum: &Curriculum, what: &str) -> &'static str {
    if BodyPart::ALL.iter().any(|p| p.word() == what) {
        "part"
    } else if curriculum.cautions().find(what).is_some() {
        "class"
    } else if Pattern::ALL.iter().any(|p| p.word() == what) {
        "pattern"
    } else {
        "movement"
    }
}

/// Where each of the known columns stands in the first row.
fn columns(first: Span, rows: &mut csv::Reader<&[u8]>, findings: &mut Findings) -> Option<Columns> {
    let head = rows.headers().ok()?.clone();
    let is_known = |word: &str| {
        let lower = word.to_lowercase();
        COLUMNS.contains(&lower.as_str())
            || meant::instead_of("a class", &lower, COLUMNS.iter().copied()).is_some()
    };
    if !head.iter().any(is_known) {
        findings.push(
            Diagnostic::new(Rule::MissingKey, first, "the first row names no columns")
                .label("read as the names of the columns")
                .help("write `name,movement,got,on` as the first row, above the results"),
        );
        return None;
    }
    let mut out: Columns = Default::default();
    for (at, word) in head.iter().enumerate() {
        let lower = word.to_lowercase();
        match COLUMNS.iter().position(|c| *c == lower) {
            Some(i) => out[i] = Some(at),
            None => findings.push(unknown_column(first, word, &lower)),
        }
    }
    let there = |name: &str| {
        COLUMNS
            .iter()
            .zip(out)
            .any(|(c, at)| *c == name && at.is_some())
    };
    let missing = match (there("name"), there("movement")) {
        (false, _) => Some("name"),
        (_, false) => Some("movement"),
        _ if there("got") || (there("left") && there("right")) => None,
        _ => Some("got"),
    };
    if let Some(name) = missing {
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

fn unknown_column(first: Span, word: &str, lower: &str) -> Diagnostic {
    let help = meant::instead_of("a class", lower, COLUMNS.iter().copied()).map(Cow::into_owned);
    let help = help
        .or_else(|| suggest::did_you_mean(lower, COLUMNS.iter().copied()))
        .unwrap_or_else(|| format!("the columns are {}", suggest::listed(COLUMNS, "and")));
    let message = format!("a class has no column `{word}`");
    Diagnostic::new(Rule::UnknownKey, first, message)
        .label("the first row names the columns")
        .help(help)
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
