//! Reading a results file: YAML or JSON, one client; findings in their places, as in proof.

use super::named::place;
use super::{Aside, LIMITS, Person, Session, Sides, Tested, Trained, VERSION, class};
use crate::curriculum::keys;
use crate::curriculum::target::{Added, Got, Measure, Micro};
use crate::curriculum::{Curriculum, Day};
use crate::reading::fields::{self, Record};
use crate::source::yaml::{self, Node, Value};
use crate::source::{
    Content, Diagnostic, FileId, Findings, Rule, Snapshot, SourceFile, Span, suggest,
};
use std::ops::RangeInclusive;

/// Why a result from before `test.since` is kept aside.
const OTHERWISE: &str = "since then it is measured in another way";

/// Reads every file of a snapshot as results: `.csv` as a class, anything else as one client. A file in error gives findings
/// and whatever of it stands.
pub fn read(snapshot: &Snapshot, curriculum: &Curriculum, today: Day) -> (Vec<Person>, Findings) {
    let mut findings = Findings::default();
    let mut people = Vec::new();
    for (id, file) in snapshot.files() {
        let Some(text) = text_of(id, file, &mut findings) else {
            continue;
        };
        let name = file.path.rsplit('/').next().unwrap_or(&file.path);
        let (stem, extension) = name.rsplit_once('.').unwrap_or((name, ""));
        match extension.to_ascii_lowercase().as_str() {
            "csv" => people.extend(class::read(id, text, curriculum, today, &mut findings)),
            // In JSON a tab is only ever white space; for YAML it is none.
            "json" => {
                let spaced = text.replace('\t', " ");
                people.extend(one(id, &spaced, stem, curriculum, today, &mut findings));
            }
            _ => people.extend(one(id, text, stem, curriculum, today, &mut findings)),
        }
    }
    let people = people.into_iter().map(Person::harmless).collect();
    (people, findings.sorted())
}

fn text_of<'a>(id: FileId, file: &'a SourceFile, findings: &mut Findings) -> Option<&'a str> {
    let (rule, message) = match &file.content {
        Content::Text(text) => return Some(text),
        Content::Bytes(_) => (Rule::NotUtf8, "this is no text".to_string()),
        Content::NotUtf8(stray) => (
            Rule::NotUtf8,
            format!("{stray} is not UTF-8 text: save it with the encoding UTF-8"),
        ),
        Content::TooLarge(size) => (Rule::FileTooLarge, format!("{size} bytes are above 4 MB")),
        Content::Outside => (Rule::LinkOutside, "it is a link that leads away".into()),
        Content::Unreadable(why) => (Rule::UnreadableFile, format!("it cannot be read: {why}")),
    };
    findings.push(
        Diagnostic::new(rule, Span::top(id), message)
            .help("name a results file in YAML, JSON or CSV"),
    );
    None
}

fn one(
    id: FileId,
    text: &str,
    stem: &str,
    curriculum: &Curriculum,
    today: Day,
    findings: &mut Findings,
) -> Option<Person> {
    let before = findings.len();
    let Some(root) = yaml::read(id, text, findings) else {
        if findings.len() == before {
            let empty = Diagnostic::new(Rule::MissingKey, Span::top(id), "the file is empty");
            findings.push(empty.help("begin with `results: 1`"));
        }
        return None;
    };
    let record = Record::open(&root, "a results file", keys::RESULTS, findings)?;
    version(&record, findings)?;
    let mut reader = Reader::new(curriculum, today, findings);
    reader.person.name = record
        .text("name", reader.findings)
        .unwrap_or_else(|| stem.to_string());
    reader.person.body_weight = body_weight(&record, reader.findings);
    reader.person.have = record.get("have").map(|node| reader.have(node));
    for item in record_items(&record, "tested", reader.findings) {
        reader.tested(item);
    }
    for item in record_items(&record, "trained", reader.findings) {
        reader.trained(item);
    }
    for item in record_items(&record, "sessions", reader.findings) {
        reader.session(item);
    }
    reader.rests(&record);
    reader.about(&record);
    Some(reader.person)
}

fn version(record: &Record<'_>, findings: &mut Findings) -> Option<()> {
    let node = record.get("results")?;
    let Some(text) = node.text().map(str::trim) else {
        findings.push(
            fields::shape_finding(node, "`results` is the version of the layout").help(format!(
                "write `results: {VERSION}`, and each result below `tested:`: `- {{ movement: dead-hang, got: 41 s }}`"
            )),
        );
        return None;
    };
    if text == VERSION.to_string() {
        return Some(());
    }
    findings.push(
        Diagnostic::new(
            Rule::ResultsVersion,
            node.span,
            format!("`{text}` is not a version of the results layout that is read here"),
        )
        .label("unknown version")
        .help(format!(
            "this program reads `results: {VERSION}`; a newer file needs a newer program"
        )),
    );
    None
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

/// The body weight of a record, in hundred-millionths of a kilogram.
pub(super) fn body_weight(record: &Record<'_>, findings: &mut Findings) -> Option<i64> {
    let node = record.get("bodyweight")?;
    let read = added(node.text().unwrap_or(""));
    let [lightest, heaviest] = LIMITS.body_weight;
    match read {
        Some(Added::Mass(mass)) if (lightest..=heaviest).contains(&mass) => Some(mass),
        _ => {
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
fn added(text: &str) -> Option<Added> {
    Got::read(&format!("1 rep with {text}"))
        .ok()?
        .parts()
        .added()
}

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

    fn have(&mut self, node: &Node) -> Vec<String> {
        let known = &self.curriculum.school.equipment;
        let said = fields::texts(node, self.findings);
        for (word, span) in said.iter().filter(|(w, _)| !known.contains_key(w)) {
            let help = suggest::did_you_mean(word, known.keys().map(String::as_str));
            self.findings.push(
                Diagnostic::new(
                    Rule::UnknownHave,
                    *span,
                    format!("this school has no equipment `{word}`"),
                )
                .label("not in the school's list")
                .help(
                    help.unwrap_or_else(|| "the page “What do you have?” lists the words".into()),
                ),
            );
        }
        said.into_iter().map(|s| s.0).collect()
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

    fn got_of(&mut self, record: &Record<'_>, key: &str) -> Option<Option<Got>> {
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
        let read = text.trim().parse::<u32>().ok().filter(|n| *n <= 1000);
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

    fn reserve_of(&mut self, record: &Record<'_>) -> Option<Option<u32>> {
        let Some(node) = record.get("in_reserve") else {
            return Some(None);
        };
        self.reserve(node.text().unwrap_or(""), node.span).map(Some)
    }

    pub fn tested(&mut self, node: &Node) -> Option<()> {
        let record = Record::open(node, "a test’s entry", keys::RESULTS_TESTED, self.findings)?;
        let id = record.text("movement", self.findings)?;
        let on = self.day(&record, "on")?.unwrap_or(self.today);
        let in_reserve = self.reserve_of(&record)?.unwrap_or(0);
        let got = self.got_of(&record, "got")?;
        let (left, right) = (
            self.got_of(&record, "left")?,
            self.got_of(&record, "right")?,
        );
        let own_weight = body_weight(&record, self.findings);
        let sides = match (got, left, right) {
            (Some(got), None, None) => Sides::Both(got),
            (None, Some(left), Some(right)) => Sides::Each { left, right },
            (None, Some(one), None) | (None, None, Some(one)) => {
                let side = if left.is_some() { "right" } else { "left" };
                self.findings.push(
                    Diagnostic::new(
                        Rule::OneSide,
                        node.span,
                        format!("the {side} side is missing"),
                    )
                    .label("one side only")
                    .help(format!(
                        "add `{side}: ...`; until then the entry is kept aside and decides nothing"
                    )),
                );
                self.aside(&id, one.to_string(), on, "one side only");
                return None;
            }
            _ => {
                self.findings.push(
                    Diagnostic::new(
                        Rule::BadResult,
                        node.span,
                        "an entry says `got`, or `left` and `right`",
                    )
                    .label("here")
                    .help("write `got: 9 reps`, or `left: 5 reps` and `right: 4 reps`"),
                );
                return None;
            }
        };
        self.take(&id, place(&record, node), sides, on, in_reserve, own_weight);
        Some(())
    }

    /// Takes a test's result in, or keeps it aside with the reason.
    pub fn take(
        &mut self,
        id: &str,
        at: Span,
        sides: Sides,
        on: Day,
        in_reserve: u32,
        body_weight: Option<i64>,
    ) {
        let text = match sides {
            Sides::Both(got) => got.to_string(),
            Sides::Each { left, right } => format!("left {left}, right {right}"),
        };
        let Some(movement) = self.known(id, at) else {
            return self.aside(id, text, on, "this curriculum has no such movement");
        };
        let measure = self.curriculum.movement(movement).standard.measure();
        if sides.all().any(|got| got.parts().measure() != measure) {
            return self.aside(id, text, on, "it measures another thing than the standard");
        }
        if on > self.today {
            return self.aside(id, text, on, "its day is still to come");
        }
        if self.curriculum.movement(movement).measured_otherwise_on(on) {
            return self.aside(id, text, on, OTHERWISE);
        }
        self.person.tested.push(Tested {
            movement,
            sides,
            on,
            in_reserve,
            body_weight,
        });
    }

    pub fn aside(&mut self, movement: &str, got: String, on: Day, why: &'static str) {
        self.person.aside.push(Aside {
            movement: movement.to_string(),
            got,
            on,
            why,
        });
    }

    fn trained(&mut self, node: &Node) -> Option<()> {
        let record = Record::open(
            node,
            "a training entry",
            keys::RESULTS_TRAINED,
            self.findings,
        )?;
        let id = record.text("movement", self.findings)?;
        let on = self.day(&record, "on")?.unwrap_or(self.today);
        let in_reserve = self.reserve_of(&record)?;
        let sets = record.get("did")?;
        let texts = fields::texts(sets, self.findings);
        let written: Vec<&str> = texts.iter().map(|t| t.0.as_str()).collect();
        let written = written.join(", ");
        let movement = self.known(&id, place(&record, node));
        let measure = movement.map(|ix| self.curriculum.movement(ix).standard.measure());
        let mut did: Vec<Micro> = Vec::new();
        for (text, span) in &texts {
            let amount = self.set(text, *span, measure)?;
            did.push(amount);
        }
        let added = match record.get("with") {
            Some(node) => {
                let text = node.text().unwrap_or("");
                let read = added(text);
                if read.is_none() {
                    self.findings.push(
                        Diagnostic::new(
                            Rule::BadResult,
                            node.span,
                            format!("`{text}` is not a weight"),
                        )
                        .label("here")
                        .help("write it like `10 kg`, `20 lb`, `0.25 bw` or `15 kg help`"),
                    );
                    return None;
                }
                read
            }
            None => None,
        };
        let Some(movement) = movement else {
            self.aside(&id, written, on, "this curriculum has no such movement");
            return None;
        };
        if on > self.today {
            self.aside(&id, written, on, "its day is still to come");
            return None;
        }
        if self.curriculum.movement(movement).measured_otherwise_on(on) {
            self.aside(&id, written, on, OTHERWISE);
            return None;
        }
        self.person.trained.push(Trained {
            movement,
            did,
            added: added.filter(|a| a.signed() != 0),
            in_reserve,
            on,
        });
        Some(())
    }

    fn session(&mut self, node: &Node) -> Option<()> {
        let record = Record::open(node, "a session", keys::RESULTS_SESSIONS, self.findings)?;
        let on = self.day(&record, "on")?.unwrap_or(self.today);
        let effort = self.whole(&record, "effort", 0..=10, "a session");
        let minutes = self.whole(&record, "minutes", 0..=1440, "a session");
        let session = Session {
            on,
            effort: effort?,
            minutes: minutes?,
        };
        match on > self.today {
            true => {
                let got = format!("{} x {} min", session.effort, session.minutes);
                self.aside("session", got, on, "its day is still to come");
            }
            false => self.person.sessions.push(session),
        }
        Some(())
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
    fn set(&mut self, text: &str, span: Span, measure: Option<Measure>) -> Option<Micro> {
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
