//! The interface words of the school's language: the shipped ones with the coach's own over them, and what is still missing.

use crate::source::{Diagnostic, FileId, Findings, Rule, Snapshot, Span};
use crate::words::{self, Own, Words};

/// The words of a language, with one finding for all that it lacks.
pub fn language(
    language: &str,
    files: Vec<(FileId, String, Own)>,
    snapshot: &Snapshot,
    findings: &mut Findings,
) -> Words {
    let place = files
        .iter()
        .find(|(_, of, _)| language.starts_with(of.as_str()))
        .map(|(file, ..)| *file);
    let own: Vec<(String, Own)> = files.into_iter().map(|(_, of, own)| (of, own)).collect();
    let found = Words::of(language, &own);
    let missing = words::missing(language, &own);
    let Some(first) = missing.first() else {
        return found;
    };
    let (file, message) = match (place, snapshot.find("content/school.yaml")) {
        (Some(file), _) => {
            let count = missing.len();
            let entries = if count == 1 { "entry" } else { "entries" };
            let message = format!("{count} {entries} are missing, the first is `{first}`");
            (file, message)
        }
        (None, Some(school)) => (
            school,
            format!("the interface has no words in the language `{language}`"),
        ),
        // A folder without a school has findings enough.
        (None, None) => return found,
    };
    findings.push(
        Diagnostic::new(Rule::MissingWords, Span::top(file), message).help(match place {
            Some(_) => "they are said in English; `rungbook schema words` lists all of them".to_string(),
            None if language.chars().count() > 3 && !language.contains('-') => {
                "write the language's tag: `en` for English, `he` for Hebrew".to_string()
            }
            None => format!(
                "it speaks English until there is a file content/words/{language}.yaml with the keys that `rungbook schema words` lists"
            ),
        }),
    );
    found
}
