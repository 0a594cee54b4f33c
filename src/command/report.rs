//! Findings as people and programs read them.

use super::Status;
use crate::curriculum::{Curriculum, MovementIx};
use crate::source::{Diagnostic, Findings, Severity, Snapshot, Span};
use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use serde_json::{Value, json};
use std::io::IsTerminal;

/// Prints findings to standard error, each with its source line marked, and a last line that counts them.
pub fn print(findings: &Findings, snapshot: &Snapshot) {
    let renderer = if std::io::stderr().is_terminal() {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    for finding in findings.iter() {
        anstream::eprintln!("{}\n", text(finding, snapshot, &renderer));
    }
    if !findings.is_empty() {
        anstream::eprintln!("{}", counted(findings));
    }
}

/// All findings as plain text, with a last line that counts them; empty when there are none.
pub fn texts(findings: &Findings, snapshot: &Snapshot) -> String {
    match findings.is_empty() {
        true => String::new(),
        false => format!(
            "{}\n\n{}",
            some(findings.iter(), snapshot),
            counted(findings)
        ),
    }
}

/// Findings as plain text.
pub fn some<'a>(findings: impl Iterator<Item = &'a Diagnostic>, snapshot: &Snapshot) -> String {
    let renderer = Renderer::plain();
    let all: Vec<String> = findings.map(|f| text(f, snapshot, &renderer)).collect();
    all.join("\n\n")
}

/// "2 errors, 1 warning".
pub fn counted(findings: &Findings) -> String {
    let count = |severity: Severity| {
        let n = findings.count(severity);
        format!("{n} {}{}", severity.word(), if n == 1 { "" } else { "s" })
    };
    format!("{}, {}", count(Severity::Error), count(Severity::Warning))
}

/// One finding as text.
fn text(finding: &Diagnostic, snapshot: &Snapshot, renderer: &Renderer) -> String {
    let level = match finding.severity() {
        Severity::Error => Level::ERROR,
        Severity::Warning => Level::WARNING,
    };
    let label = finding.label.clone().unwrap_or_default();
    let excerpts: Vec<Excerpt> = std::iter::once((finding.span, label, AnnotationKind::Primary))
        .chain(
            finding
                .related
                .iter()
                .map(|(span, words)| (*span, words.clone(), AnnotationKind::Context)),
        )
        .map(|(span, label, kind)| excerpt(span, label, kind, snapshot))
        .collect();
    let mut group = Group::with_title(
        level
            .primary_title(finding.message.as_str())
            .id(finding.rule.name()),
    );
    for e in &excerpts {
        let annotation = e.kind.span(e.at.clone()).label(e.label.as_str());
        group = group.element(
            Snippet::source(e.text)
                .path(e.path)
                .line_start(e.line)
                .annotation(annotation),
        );
    }
    let help = Level::HELP.secondary_title(finding.help.as_str());
    let text = renderer.render(&[group, Group::with_title(help)]);
    // The renderer shows the other characters that would steer a terminal.
    text.replace(|c| matches!(c, '\u{80}'..='\u{9f}'), "\u{fffd}")
}

struct Excerpt<'a> {
    text: &'a str,
    path: &'a str,
    line: usize,
    at: std::ops::Range<usize>,
    label: String,
    kind: AnnotationKind,
}

/// The lines under a span, so that a large file is not scanned for each finding; at most the first four.
fn excerpt(span: Span, label: String, kind: AnnotationKind, snapshot: &Snapshot) -> Excerpt<'_> {
    let text = snapshot.text(span.file);
    let (start, end) = (
        (span.start as usize).min(text.len()),
        (span.end as usize).min(text.len()),
    );
    let from = text[..start].rfind('\n').map_or(0, |i| i + 1);
    let to = text[start..]
        .match_indices('\n')
        .map(|(i, _)| start + i)
        .nth(if end > start { 3 } else { 0 })
        .unwrap_or(text.len());
    let to = text[end.min(to)..]
        .find('\n')
        .map_or(text.len(), |i| end.min(to) + i)
        .min(to.max(from));
    let (line, _) = snapshot.place(span.file, span.start);
    Excerpt {
        text: &text[from..to],
        path: snapshot.path(span.file),
        line,
        at: start - from..end.min(to) - from,
        label,
        kind,
    }
}

/// Findings as JSON.
pub fn json(findings: &Findings, snapshot: &Snapshot) -> Value {
    let finding = |f: &Diagnostic| {
        let (line, column) = snapshot.place(f.span.file, f.span.start);
        json!({
            "rule": f.rule.name(), "severity": f.severity().word(), "file": snapshot.path(f.span.file),
            "line": line, "column": column, "message": f.message, "help": f.help,
        })
    };
    Value::Array(findings.iter().map(finding).collect())
}

/// A movement's name with its signal word: it is never named without.
pub fn named(curriculum: &Curriculum, ix: MovementIx) -> String {
    let m = curriculum.movement(ix);
    let mark = m.cautions.first().map_or(String::new(), |c| {
        format!(" [{}]", curriculum.cautions.class(*c).signal.word())
    });
    format!("{}{mark}", m.name)
}

/// Prints an answer to standard output.
pub fn answer(value: &Value) {
    anstream::println!(
        "{}",
        serde_json::to_string_pretty(value).expect("a value is JSON")
    );
}

/// How a run over a curriculum ended.
pub fn status(findings: &Findings, strict: bool) -> Status {
    if findings.has_errors() || (strict && !findings.is_empty()) {
        Status::AtFault
    } else {
        Status::Done
    }
}
