//! Reading a results file: YAML or JSON, one client; findings in their places, as in proof.

use super::entry::{Reader, added, body_weight, record_items};
use super::named::place;
use super::{LIMITS, Person, Session, Sides, Tested, Trained, VERSION, class};
use crate::curriculum::keys;
use crate::curriculum::target::{Added, Micro};
use crate::curriculum::{BodyWeight, Curriculum, Day};
use crate::reading::fields::{self, Record};
use crate::source::yaml::{self, Node};
use crate::source::{
    Content, Diagnostic, FileId, Findings, Rule, Snapshot, SourceFile, Span, suggest,
};

/// Why a result from before `test.since` is kept aside.
const OTHERWISE: &str = "measured the old way, measure it again";

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

impl Reader<'_> {
    fn have(&mut self, node: &Node) -> Vec<String> {
        let known = &self.curriculum.school().equipment;
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

    pub fn tested(&mut self, node: &Node) -> Option<()> {
        let record = Record::open(node, "a test’s entry", keys::RESULTS_TESTED, self.findings)?;
        let id = record.text("movement", self.findings)?;
        // Of a span the first day counts, so that a result never lasts too long; the last is for who reads the file.
        let on = self.day(&record, "on")?.unwrap_or(self.today);
        self.until(&record, on)?;
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
        body_weight: Option<BodyWeight>,
    ) {
        let text = match sides {
            Sides::Both(got) => got.to_string(),
            Sides::Each { left, right } => format!("left {left}, right {right}"),
        };
        let Some(movement) = self.known(id, at) else {
            return self.aside(id, text, on, "this curriculum has no such movement");
        };
        let measure = self.curriculum.movement(movement).standard().measure();
        if sides.all().any(|got| got.parts().measure() != measure) {
            return self.aside(id, text, on, "it measures another thing than the standard");
        }
        if on > self.today {
            return self.aside(id, text, on, "its day is still to come");
        }
        let tested = Tested {
            movement,
            sides,
            on,
            in_reserve,
            body_weight,
        };
        if self.curriculum.movement(movement).measured_otherwise_on(on) {
            self.person.otherwise.push(tested);
            return self.aside(id, text, on, OTHERWISE);
        }
        self.person.tested.push(tested);
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
        let measure = movement.map(|ix| self.curriculum.movement(ix).standard().measure());
        let mut did: Vec<Micro> = Vec::new();
        for (text, span) in &texts {
            let amount = self.set(text, *span, measure)?;
            did.push(amount);
        }
        let added = self.with(&record)?;
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

    /// The weight of a training entry; `None` with a finding where it is none.
    fn with(&mut self, record: &Record<'_>) -> Option<Option<Added>> {
        let Some(node) = record.get("with") else {
            return Some(None);
        };
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
        }
        read.map(Some)
    }

    fn session(&mut self, node: &Node) -> Option<()> {
        let record = Record::open(node, "a session", keys::RESULTS_SESSIONS, self.findings)?;
        let on = self.day(&record, "on")?.unwrap_or(self.today);
        let effort = self.whole(&record, "effort", 0..=LIMITS.effort, "a session");
        let minutes = self.whole(&record, "minutes", 0..=LIMITS.minutes, "a session");
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
}
