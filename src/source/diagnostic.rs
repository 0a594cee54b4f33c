//! Findings: what is wrong with what the coach wrote, where, and what to type instead.

use super::rules::{Rule, Severity};
use super::snapshot::Span;

/// One finding. The message is a lower-case headline without a full stop; the help says what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Diagnostic {
    pub rule: Rule,
    pub span: Span,
    pub message: String,
    /// What stands at the marked place.
    pub label: Option<String>,
    pub help: String,
    /// Further places that belong to the finding, each with its words.
    pub related: Vec<(Span, String)>,
}

/// A finding that does not say yet what to do. Only [`Headline::help`] makes it one that can be reported.
#[derive(Clone, Debug)]
#[must_use]
pub struct Headline(Diagnostic);

impl Headline {
    pub fn label(mut self, label: impl Into<String>) -> Headline {
        self.0.label = Some(label.into());
        self
    }

    pub fn related(mut self, span: Span, words: impl Into<String>) -> Headline {
        self.0.related.push((span, words.into()));
        self
    }

    pub fn help(mut self, help: impl Into<String>) -> Diagnostic {
        self.0.help = help.into();
        self.0
    }
}

impl Diagnostic {
    #[expect(clippy::new_ret_no_self, reason = "no finding without a help line")]
    pub fn new(rule: Rule, span: Span, message: impl Into<String>) -> Headline {
        Headline(Diagnostic {
            rule,
            span,
            message: message.into(),
            label: None,
            help: String::new(),
            related: Vec::new(),
        })
    }

    pub fn label(mut self, label: impl Into<String>) -> Diagnostic {
        self.label = Some(label.into());
        self
    }

    pub fn related(mut self, span: Span, words: impl Into<String>) -> Diagnostic {
        self.related.push((span, words.into()));
        self
    }

    pub fn severity(&self) -> Severity {
        self.rule.severity()
    }
}

/// The findings of a pass; nothing that is found stops it.
#[derive(Clone, Debug, Default)]
pub struct Findings(Vec<Diagnostic>);

impl Findings {
    pub fn push(&mut self, diagnostic: Diagnostic) {
        self.0.push(diagnostic);
    }

    pub fn extend(&mut self, other: Findings) {
        self.0.extend(other.0);
    }

    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub fn len(&self) -> usize {
        self.0.len()
    }

    pub fn iter(&self) -> impl Iterator<Item = &Diagnostic> {
        self.0.iter()
    }

    pub fn count(&self, severity: Severity) -> usize {
        self.0.iter().filter(|d| d.severity() == severity).count()
    }

    /// Keeps those of which something holds.
    pub fn retain(&mut self, holds: impl FnMut(&Diagnostic) -> bool) {
        self.0.retain(holds);
    }

    pub fn has_errors(&self) -> bool {
        self.0.iter().any(|d| d.severity() == Severity::Error)
    }

    /// Sorted by place, then rule; equal findings once.
    pub fn sorted(mut self) -> Findings {
        self.0
            .sort_by(|a, b| (a.span, a.rule, &a.message).cmp(&(b.span, b.rule, &b.message)));
        self.0.dedup();
        self
    }
}
