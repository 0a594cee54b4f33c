//! YAML as a tree in which every key and value keeps its place. Collects all that is wrong with the file instead of stopping.

mod hints;

use super::{Diagnostic, FileId, Findings, Rule, Span};
use hints::{beginning, keyless, misplaced, unclosed};
use serde_yaml::granit_parser::{self, Event, Parser, ScalarStyle};
use std::collections::HashMap;

const MAX_DEPTH: usize = 32;
const MAX_NODES: usize = 200_000;

/// A value and where it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Node {
    pub span: Span,
    pub value: Value,
}

/// What a value is. Scalars keep their text: numbers and dates are read by whoever knows what they mean.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A text; `exact` when the source holds it letter by letter, so that a place in the text is a place in the file.
    Scalar {
        text: String,
        exact: bool,
    },
    List(Vec<Node>),
    /// In the order written, each key once.
    Map(Vec<(Node, Node)>),
    Null,
}

impl Node {
    pub fn text(&self) -> Option<&str> {
        match &self.value {
            Value::Scalar { text, .. } => Some(text),
            _ => None,
        }
    }

    /// What the value is, for messages.
    pub fn kind(&self) -> &'static str {
        match self.value {
            Value::Scalar { .. } => "a text",
            Value::List(_) => "a list",
            Value::Map(_) => "a record of keys",
            Value::Null => "nothing",
        }
    }

    /// The span of bytes `from..to` of a scalar's text, or the whole scalar where the source is not letter by letter.
    pub fn part(&self, from: usize, to: usize) -> Span {
        match &self.value {
            Value::Scalar { text, exact: true } => {
                let quoted = (self.span.end - self.span.start) as usize == text.len() + 2;
                let shift = usize::from(quoted);
                self.span.within(from + shift, to + shift)
            }
            _ => self.span,
        }
    }
}

/// Reads one file. `None` when nothing could be read; what could be read before a fault is not returned, because half a
/// record would give false findings.
pub fn read(file: FileId, text: &str, findings: &mut Findings) -> Option<Node> {
    if let Some(at) = leading_tab(text) {
        let here = Span::new(file, at, at + 1);
        findings.push(
            Diagnostic::new(
                Rule::NotYaml,
                here,
                "a tab stands where the indentation should be",
            )
            .label("a tab")
            .help("type spaces instead: two for each step inwards"),
        );
        return None;
    }
    let mut builder = Builder {
        file,
        text,
        findings,
        stack: Vec::new(),
        root: None,
        nodes: 0,
        documents: 0,
        faulty: false,
        told: Vec::new(),
    };
    let options = granit_parser::options! { emit_unresolved_aliases: true };
    for event in Parser::new_from_str_with_options(text, options) {
        match event {
            Ok((event, span)) => {
                let start = span.start.byte_offset().unwrap_or(0);
                let end = span.end.byte_offset().unwrap_or(start);
                if !builder.take(event, start, end) {
                    return None;
                }
            }
            Err(error) => {
                let marker = error.marker();
                let at = marker
                    .byte_offset()
                    .unwrap_or_else(|| offset_of(text, marker.line(), marker.col()));
                builder.scan_error(at, &error.info());
                return None;
            }
        }
    }
    if builder.faulty { None } else { builder.root }
}

/// The offset of the first tab that indents a line.
fn leading_tab(text: &str) -> Option<usize> {
    let mut at = 0;
    for line in text.split_inclusive('\n') {
        let body = line.trim_start_matches(' ');
        if body.starts_with('\t') && !body.trim().is_empty() {
            return Some(at + line.len() - body.len());
        }
        at += line.len();
    }
    None
}

/// The byte offset of a line (from 1) and column (from 0, in characters).
fn offset_of(text: &str, line: usize, column: usize) -> usize {
    let start: usize = text
        .split_inclusive('\n')
        .take(line.saturating_sub(1))
        .map(str::len)
        .sum();
    let rest = &text[start.min(text.len())..];
    start
        + rest
            .char_indices()
            .nth(column)
            .map_or(rest.len(), |(i, _)| i)
}

enum Open {
    List(usize, Vec<Node>),
    Map(usize, Pairs, Option<Node>),
}

/// Pairs of a record, and above [`Pairs::FEW`] of them where each key stands.
#[derive(Default)]
struct Pairs {
    list: Vec<(Node, Node)>,
    places: HashMap<String, usize>,
}

impl Pairs {
    /// So many keys are looked through faster than looked up.
    const FEW: usize = 32;

    /// The key of this text that stands already.
    fn find(&self, key: &Node) -> Option<&Node> {
        let text = key.text()?;
        let few = self.list.iter().take(Pairs::FEW);
        few.map(|(k, _)| k)
            .find(|k| k.text() == Some(text))
            .or_else(|| self.places.get(text).map(|at| &self.list[*at].0))
    }

    fn push(&mut self, key: Node, value: Node) {
        if self.list.len() >= Pairs::FEW
            && let Some(text) = key.text()
        {
            self.places.insert(text.to_string(), self.list.len());
        }
        self.list.push((key, value));
    }
}

struct Builder<'a> {
    file: FileId,
    text: &'a str,
    findings: &'a mut Findings,
    stack: Vec<Open>,
    root: Option<Node>,
    nodes: usize,
    documents: usize,
    faulty: bool,
    /// What of YAML was found that is not used here; each kind is told once a file.
    told: Vec<&'static str>,
}

impl Builder<'_> {
    /// Takes one event; false when the file is to be given up.
    fn take(&mut self, event: Event<'_>, start: usize, end: usize) -> bool {
        self.nodes += 1;
        let here = Span::new(self.file, start, end);
        if self.nodes > MAX_NODES || self.stack.len() > MAX_DEPTH {
            let what = if self.stack.len() > MAX_DEPTH {
                "nests more than 32 deep"
            } else {
                "holds more than 200000 values"
            };
            self.findings.push(
                Diagnostic::new(Rule::YamlTooDeep, here, format!("the file {what}"))
                    .help("split it into several files, one record each"),
            );
            return false;
        }
        match event {
            Event::Scalar(text, style, anchor, tag) => {
                self.features(anchor, tag.is_some(), here);
                self.scalar(&text, style, here);
            }
            Event::SequenceStart(_, anchor, tag) => {
                self.features(anchor, tag.is_some(), here);
                self.stack.push(Open::List(start, Vec::new()));
            }
            Event::MappingStart(_, anchor, tag) => {
                self.features(anchor, tag.is_some(), here);
                self.stack.push(Open::Map(start, Pairs::default(), None));
            }
            Event::SequenceEnd | Event::MappingEnd => self.close(end),
            Event::Alias(_) | Event::UnresolvedAlias(_) => {
                self.feature(here, "an alias (`*name`)");
                self.place(Node {
                    span: here,
                    value: Value::Null,
                });
            }
            Event::DocumentStart(..) => {
                self.documents += 1;
                if self.documents == 2 {
                    self.feature(here, "a second document (`---`)");
                    return false;
                }
            }
            _ => {}
        }
        true
    }

    fn scalar(&mut self, text: &str, style: ScalarStyle, here: Span) {
        let plain = matches!(style, ScalarStyle::Plain);
        let value = if plain
            && (here.start == here.end || matches!(text, "~" | "null" | "Null" | "NULL" | ""))
        {
            Value::Null
        } else {
            let body = self
                .text
                .get(here.start as usize..here.end as usize)
                .unwrap_or("");
            let exact = body == text || body.get(1..body.len().saturating_sub(1)) == Some(text);
            Value::Scalar {
                text: text.to_string(),
                exact,
            }
        };
        // A plain scalar's span may run into the blanks behind it.
        let written = self
            .text
            .get(here.start as usize..here.end as usize)
            .unwrap_or("")
            .trim_end()
            .len();
        let span = match value {
            Value::Null if written == 0 => self.comment(here).unwrap_or(here),
            _ if plain => here.within(0, written),
            _ => here,
        };
        self.place(Node { span, value });
    }

    /// The comment that stands where a value should.
    fn comment(&self, here: Span) -> Option<Span> {
        let rest = self.text.get(here.start as usize..)?;
        let line = rest.lines().next().unwrap_or("");
        let blank = line.len() - line.trim_start_matches([' ', '\t', ':']).len();
        let is_comment = line[blank..].starts_with('#');
        is_comment.then(|| {
            let start = here.start as usize + blank;
            Span::new(here.file, start, start + line[blank..].trim_end().len())
        })
    }

    /// Whether a finding stands in the same line as a place, or reaches it.
    fn is_above(&self, finding: &Diagnostic, at: usize) -> bool {
        let start = finding.span.start as usize;
        finding.span.file == self.file
            && start <= at
            && !self.text.get(start..at).unwrap_or("").contains('\n')
    }

    fn features(&mut self, anchor: usize, tag: bool, here: Span) {
        if anchor != 0 {
            self.feature(here, "an anchor (`&name`)");
        }
        if tag {
            self.feature(here, "a tag (`!name`)");
        }
    }

    fn feature(&mut self, here: Span, what: &'static str) {
        self.faulty = true;
        if self.told.contains(&what) {
            return;
        }
        self.told.push(what);
        self.findings.push(
            Diagnostic::new(
                Rule::YamlFeature,
                here,
                format!("{what} is not used in a curriculum"),
            )
            .help("write the value out where it belongs, or put it in quotes where it is text"),
        );
    }

    fn close(&mut self, end: usize) {
        match self.stack.pop() {
            Some(Open::List(start, items)) => {
                let end = items.last().map_or(end, |n| {
                    (n.span.end as usize).max(end.min(self.trimmed(end)))
                });
                self.place(Node {
                    span: Span::new(self.file, start, end),
                    value: Value::List(items),
                });
            }
            Some(Open::Map(start, Pairs { list: pairs, .. }, _)) => {
                let end = pairs.last().map_or(end, |(_, v)| {
                    (v.span.end as usize).max(end.min(self.trimmed(end)))
                });
                self.place(Node {
                    span: Span::new(self.file, start, end),
                    value: Value::Map(pairs),
                });
            }
            None => {}
        }
    }

    /// The end of what is written before `end`.
    fn trimmed(&self, end: usize) -> usize {
        self.text.get(..end).map_or(end, |t| t.trim_end().len())
    }

    fn place(&mut self, node: Node) {
        match self.stack.last_mut() {
            None => {
                if self.root.is_none() {
                    self.root = Some(node);
                }
            }
            Some(Open::List(_, items)) => items.push(node),
            Some(Open::Map(_, pairs, waiting)) => match waiting.take() {
                None => *waiting = Some(node),
                Some(key) => {
                    if key.text() == Some("<<") {
                        self.feature(key.span, "a merge key (`<<`)");
                    } else if let Some(first) = pairs.find(&key) {
                        let word = key.text().unwrap_or("?");
                        self.findings.push(
                            Diagnostic::new(
                                Rule::DuplicateKey,
                                key.span,
                                format!("`{word}` stands twice in one record"),
                            )
                            .label("second time")
                            .related(first.span, "first time")
                            .help("keep one of the two"),
                        );
                    } else {
                        pairs.push(key, node);
                    }
                }
            },
        }
    }

    fn scan_error(&mut self, at: usize, info: &str) {
        let at = at.min(self.text.len());
        let rest = self.text[at..].chars().next().map_or(0, char::len_utf8);
        if self.faulty && self.findings.iter().any(|f| self.is_above(f, at)) {
            // A feature that is none of ours, such as an alias, may have been meant as text: that was said of this line.
            return;
        }
        if let Some(finding) = keyless(self.file, self.text, at, info) {
            self.findings.push(finding);
            return;
        }
        let indent = misplaced(self.text, at);
        let odd = beginning(self.text, at);
        let help = match info {
            _ if indent.is_some() => indent.as_deref().unwrap_or_default(),
            _ if odd.is_some() => odd.as_deref().unwrap_or_default(),
            i if i.contains("trailing content") => {
                "the quote ended before: put a text that holds one in quotes of the other kind, \"so it's whole\""
            }
            i if i.contains("expected ',' or") => {
                "inside brackets and braces a comma parts what stands there: `[a, b]`, `{ key: value, key: value }`"
            }
            i if i.contains("expected '-'") => {
                "this stands in a list: begin it with a dash, or move it to where its record begins"
            }
            i if i.contains("mapping values") => {
                "put the text in quotes when it holds a colon and a space: \"like: this\""
            }
            i if i.contains("end of stream") || i.contains("unexpected end") => {
                "a quote or bracket that was opened is never closed"
            }
            _ => "look at this line and the one above: indentation, quotes and dashes must line up",
        };
        if indent.is_none()
            && let Some(open) = unclosed(self.text, at)
        {
            let (what, closes) = match &self.text[open..=open] {
                "[" => ("bracket", "]"),
                "{" => ("brace", "}"),
                other => ("quote", other),
            };
            let here = Span::new(self.file, open, open + 1);
            let message = format!("this is not YAML: a {what} is opened here and never closed");
            self.findings.push(
                Diagnostic::new(Rule::NotYaml, here, message)
                    .label(format!("`{closes}` is missing"))
                    .help(format!("write `{closes}` where it ends, in this line")),
            );
            return;
        }
        let here = Span::new(self.file, at, at + rest);
        self.findings.push(
            Diagnostic::new(Rule::NotYaml, here, format!("this is not YAML: {info}")).help(help),
        );
    }
}
