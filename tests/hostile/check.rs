//! What must hold for every folder of files, whatever is in them.

use rungbook::command::report;
use rungbook::curriculum::{Curriculum, Day, Leaf, Target};
use rungbook::proof::proofread;
use rungbook::site::{self, Theme};
use rungbook::source::{Content, Findings, Snapshot, Span};
use rungbook::training::{Roster, train};
use rungbook::{chain, results};
use std::sync::Arc;

/// The built-in theme, read once.
static THEME: std::sync::LazyLock<Arc<Theme>> = std::sync::LazyLock::new(|| {
    let theme = Theme::load(
        "chalk",
        &Snapshot::new(Vec::new()),
        rungbook::words::Words::english(),
    );
    Arc::new(theme.expect("the built-in theme"))
});

/// Every finding says what, where and what to do, in whole characters, and can be printed.
pub fn findings(found: &Findings, files: &Snapshot) -> Result<(), String> {
    for f in found.iter() {
        let fail = |why: &str| Err(format!("{why}: {f:?}"));
        if f.help.trim().is_empty() {
            return fail("no help");
        }
        if f.message.trim().is_empty() || f.message.ends_with('.') {
            return fail("no headline");
        }
        for span in std::iter::once(f.span).chain(f.related.iter().map(|r| r.0)) {
            if !whole(span, files) {
                return fail("a place that is none");
            }
        }
    }
    let said = report::some(found.iter(), files);
    if found.is_empty() != said.is_empty() {
        return Err("findings that are not printed".into());
    }
    report::json(found, files);
    Ok(())
}

fn whole(span: Span, files: &Snapshot) -> bool {
    let (line, column) = files.place(span.file, span.start);
    let (start, end) = (span.start as usize, span.end as usize);
    let sound = match files.file(span.file).map(|f| &f.content) {
        Some(Content::Text(text)) => {
            end <= text.len() && text.is_char_boundary(start) && text.is_char_boundary(end)
        }
        _ => true,
    };
    files.slice(span);
    line >= 1 && column >= 1 && start <= end && sound
}

/// Proofreads; what stands is computed, and with `share` 1 every page of it is made and audited, with `n` each n-th.
///
/// `strict` when no other text is the same as a movement's name.
pub fn curriculum(files: &Snapshot, share: usize, strict: bool) -> Result<(), String> {
    let own = files
        .files()
        .any(|(_, f)| f.path.starts_with("content/words/"));
    let theme = (!own).then(|| Arc::clone(&THEME));
    let built = site::build(files, &site::Options { theme });
    let proof = built.proof();
    findings(&proof.findings, files)?;
    let curriculum = &proof.curriculum;
    canonical(curriculum)?;
    for (ix, m) in curriculum.published() {
        let goal = Leaf {
            movement: ix,
            target: m.standard(),
            own_standard: true,
            span: Span::top(rungbook::source::FileId::FOLDER),
        };
        chain::resolve(curriculum, &proof.resolved.stages, &goal);
    }
    // With an error nothing is published: making the pages may fail, but not panic.
    let stands = !proof.findings.has_errors();
    let said = |error: rungbook::site::ThemeError| match stands {
        true => Err(error.to_string()),
        false => Ok(()),
    };
    let plan = match built.renderer() {
        Ok(plan) => plan,
        Err(error) => return said(error),
    };
    let mut paths = std::collections::HashSet::new();
    for i in (0..plan.len())
        .step_by(share.max(1))
        .filter(|i| *i != plan.last())
    {
        let file = match plan.render(i) {
            Ok(file) => file,
            Err(error) => {
                said(error)?;
                continue;
            }
        };
        let first = paths.insert(file.path.to_lowercase());
        let faults = built.audit(&file.path, &file.bytes);
        if !stands {
            continue;
        }
        if !first {
            return Err(format!("two files for {}", file.path));
        }
        // A text that is exactly some movement's name is refused, wherever it stands: a fault of the coach's.
        let fault = faults
            .iter()
            .find(|f| strict || !f.says.contains("is named as"));
        if let Some(fault) = fault {
            return Err(format!("the audit disagrees: {fault}"));
        }
    }
    Ok(())
}

/// What the program writes it reads again as the same.
fn canonical(curriculum: &Curriculum) -> Result<(), String> {
    for (_, m) in curriculum.published() {
        let text = m.standard().to_string();
        if !Target::read(&text).is_ok_and(|t| t.same_value(&m.standard())) {
            return Err(format!("{text} is read as another target"));
        }
    }
    ledger(curriculum, "A note: \"quoted\" #1")
}

/// The ledger with these words is read again as it was.
pub fn ledger(curriculum: &Curriculum, words: &str) -> Result<(), String> {
    let next = curriculum
        .ledger()
        .with_entry(curriculum, "2026-11-25", words);
    let yaml = next.to_yaml();
    let files = Snapshot::of_texts([("content/ledger.yaml", yaml.as_str())]);
    let again = proofread(&files);
    let again = again.curriculum.ledger();
    match *again == next {
        true => Ok(()),
        false => Err(format!(
            "the ledger reads again as another: {:?}",
            next.entries.last()
        )),
    }
}

/// Reads a results file against a curriculum, and uses what stands in it.
pub fn results(name: &str, text: &str, with: &rungbook::proof::Proofread) -> Result<(), String> {
    let today = Day::read("2026-10-10").expect("a day");
    let files = Snapshot::of_texts([(name, text)]);
    let (people, found) = results::read(&files, &with.curriculum, today);
    findings(&found, &files)?;
    let roster = Roster::new(&with.curriculum, &with.resolved.stages);
    for person in &people {
        train(&roster, person, None, today);
    }
    Ok(())
}
