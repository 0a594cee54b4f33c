//! Findings as people and programs read them.

use super::{Form, Status};
use crate::curriculum::naming::with_signal;
use crate::curriculum::{Curriculum, MovementIx, Owner};
use crate::source::{
    Diagnostic, Findings, Rule, Severity, Snapshot, Span, legible, legible_json, steers,
};
use crate::words::Words;
use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use serde_json::{Value, json};
use std::borrow::Cow;
use std::collections::BTreeMap;
use std::io::IsTerminal;
use std::path::Path;

/// Bytes before and after a place, at most, that are printed.
const LONGEST_EXCERPT: usize = 2_000;
/// So many findings of one rule are printed; the others are counted.
const SHOWN_OF_A_KIND: usize = 20;

/// Prints findings to standard error, each with its source line marked, errors before warnings, these by rule; and a last line
/// that counts them.
pub fn print(findings: &Findings, snapshot: &Snapshot) {
    let (errors, mut warnings) = by_severity(findings);
    warnings.sort_by_key(|f| f.rule);
    print_all(errors.into_iter().chain(warnings), snapshot);
    if !findings.is_empty() {
        anstream::eprintln!("{}", counted(findings));
    }
}

/// Prints what publishing has to say: errors whole, of each kind of warning one line.
pub fn print_briefly(findings: &Findings, snapshot: &Snapshot, from: &Path) {
    let (errors, warnings) = by_severity(findings);
    print_all(errors.into_iter(), snapshot);
    let mut kinds: BTreeMap<Rule, Vec<&Diagnostic>> = BTreeMap::new();
    for warning in warnings {
        kinds.entry(warning.rule).or_default().push(warning);
    }
    for (rule, all) in kinds {
        let (line, _) = snapshot.place(all[0].span.file, all[0].span.start);
        let more = match all.len() {
            1 => String::new(),
            n => format!(" (the first of {n})"),
        };
        anstream::eprintln!(
            "warning[{}]: {}:{line}: {}{more}",
            rule.name(),
            legible(snapshot.path(all[0].span.file)),
            shown(&all[0].message)
        );
    }
    count_warnings(findings, from);
}

fn by_severity(findings: &Findings) -> (Vec<&Diagnostic>, Vec<&Diagnostic>) {
    findings
        .iter()
        .partition(|f| f.severity() == Severity::Error)
}

/// Prints what stands in the way of an answer about clients: errors whole, warnings as a count.
pub fn print_errors(findings: &Findings, snapshot: &Snapshot, from: &Path) {
    let errors = |f: &&Diagnostic| f.severity() == Severity::Error;
    print_all(findings.iter().filter(errors), snapshot);
    count_warnings(findings, from);
}

/// How many warnings there are, and what shows them; beside errors, how many of both.
fn count_warnings(findings: &Findings, from: &Path) {
    let from = match from == Path::new(".") {
        true => String::new(),
        false => format!(" --from {}", legible(&from.to_string_lossy())),
    };
    let show = |n: usize| if n == 1 { "shows it" } else { "shows them" };
    match findings.count(Severity::Warning) {
        _ if findings.has_errors() => anstream::eprintln!("{}", counted(findings)),
        0 => {}
        n => anstream::eprintln!(
            "{}: `rungbook proof{from}` {}.",
            count(n, Severity::Warning),
            show(n)
        ),
    }
}

fn print_all<'a>(findings: impl Iterator<Item = &'a Diagnostic>, snapshot: &Snapshot) {
    let renderer = if std::io::stderr().is_terminal() {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    let say = |f: &Diagnostic| anstream::eprintln!("{}\n", text(f, snapshot, &renderer));
    for more in each(findings, say) {
        anstream::eprintln!("{more}\n");
    }
}

/// Says each finding but those of a rule that was said often enough; gives a line for each such rule.
fn each<'a>(
    findings: impl Iterator<Item = &'a Diagnostic>,
    mut say: impl FnMut(&Diagnostic),
) -> Vec<String> {
    let mut of_kind: BTreeMap<Rule, usize> = BTreeMap::new();
    for finding in findings {
        let n = of_kind.entry(finding.rule).or_default();
        *n += 1;
        if *n <= SHOWN_OF_A_KIND {
            say(finding);
        }
    }
    of_kind
        .iter()
        .filter(|(_, n)| **n > SHOWN_OF_A_KIND)
        .map(|(rule, n)| {
            let (more, word) = (n - SHOWN_OF_A_KIND, rule.severity().word());
            format!("... and {more} more of this kind: {word}[{}]", rule.name())
        })
        .collect()
}

/// Findings as plain text, at most so many of one rule.
pub fn some<'a>(findings: impl Iterator<Item = &'a Diagnostic>, snapshot: &Snapshot) -> String {
    let renderer = Renderer::plain();
    let mut all = Vec::new();
    each(findings, |f| all.push(text(f, snapshot, &renderer)))
        .into_iter()
        .for_each(|more| all.push(more));
    all.join("\n\n")
}

/// "2 errors, 1 warning".
pub fn counted(findings: &Findings) -> String {
    let of = |severity: Severity| count(findings.count(severity), severity);
    format!("{}, {}", of(Severity::Error), of(Severity::Warning))
}

fn count(n: usize, severity: Severity) -> String {
    format!("{n} {}{}", severity.word(), if n == 1 { "" } else { "s" })
}

/// One finding as text.
fn text(finding: &Diagnostic, snapshot: &Snapshot, renderer: &Renderer) -> String {
    let level = match finding.severity() {
        Severity::Error => Level::ERROR,
        Severity::Warning => Level::WARNING,
    };
    let label = shown(finding.label.as_deref().unwrap_or_default());
    let excerpts: Vec<Excerpt> = std::iter::once((finding.span, label, AnnotationKind::Primary))
        .chain(
            finding
                .related
                .iter()
                .map(|(span, words)| (*span, shown(words), AnnotationKind::Context)),
        )
        .map(|(span, label, kind)| excerpt(span, label, kind, snapshot))
        .collect();
    let mut group = Group::with_title(
        level
            .primary_title(shown(&finding.message))
            .id(finding.rule.name()),
    );
    for e in &excerpts {
        let annotation = e.kind.span(e.at.clone()).label(e.label.as_str());
        group = group.element(
            Snippet::source(e.text)
                .path(e.path.as_ref())
                .line_start(e.line)
                .annotation(annotation),
        );
    }
    let help = Level::HELP.secondary_title(shown(&finding.help));
    let text = renderer.render(&[group, Group::with_title(help)]);
    // Colours and line breaks are the renderer's own; it shows most of what would steer a terminal, here is the rest.
    text.replace(|c| steers(c) && !matches!(c, '\n' | '\u{1b}'), "\u{fffd}")
}

/// Words of a finding, in which names of files may stand.
fn shown(words: &str) -> String {
    let lines: Vec<_> = words.split('\n').map(legible).collect();
    lines.join("\n")
}

struct Excerpt<'a> {
    text: &'a str,
    path: Cow<'a, str>,
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
    // Of a line without end, what stands about the place.
    let from = text.floor_char_boundary(from.max(start.saturating_sub(LONGEST_EXCERPT)));
    let to = text.floor_char_boundary(to.min(start + LONGEST_EXCERPT));
    let (line, _) = snapshot.place(span.file, span.start);
    Excerpt {
        text: &text[from..to],
        path: legible(snapshot.path(span.file)),
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
    curriculum.named(Owner::Movement(ix), Words::english())
}

/// Ids of movements, each with its signal word.
pub fn marked_ids(curriculum: &Curriculum, list: &[MovementIx]) -> String {
    let id = |ix: &MovementIx| {
        let signal = curriculum.signal_of(Owner::Movement(*ix));
        with_signal(
            curriculum.movement(*ix).id().as_str(),
            signal,
            Words::english(),
        )
    };
    list.iter().map(id).collect::<Vec<_>>().join(", ")
}

/// Prints an answer to standard output.
pub fn answer(value: &Value) {
    anstream::println!(
        "{}",
        legible_json(&serde_json::to_string_pretty(value).expect("a value is JSON"))
    );
}

/// Whether the folder holds no curriculum at all; said, and nothing else is answered then.
pub(super) fn is_no_curriculum(findings: &Findings, snapshot: &Snapshot, form: Form) -> bool {
    let none = findings.iter().any(|f| f.rule == Rule::MissingFolder);
    if none {
        match form {
            Form::Json => answer(&json!({ "findings": json(findings, snapshot) })),
            Form::Text => print(findings, snapshot),
        }
    }
    none
}

/// How a run over a curriculum ended.
pub fn status(findings: &Findings, strict: bool) -> Status {
    if findings.has_errors() || (strict && !findings.is_empty()) {
        Status::AtFault
    } else {
        Status::Done
    }
}
