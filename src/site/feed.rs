//! What others read besides pages: the Atom feed of changes, the web manifest, and schema.org data.

use super::link::escape;
use super::view::{change_words, mark_of};
use super::{Item, Plan, card};
use crate::curriculum::{MovementIx, Owner};
use serde_json::{Value, json};

/// Entries of the feed.
const MOST: usize = 30;
/// Changes in one entry; more are counted.
const MOST_CHANGES: usize = 50;

/// `changes.atom` (RFC 4287), the newest entry first. A movement with cautions bears its signal word.
pub fn atom(plan: &Plan<'_>) -> Vec<u8> {
    let school = &plan.curriculum.school;
    let (address, name) = (escape(&school.address), escape(&school.name));
    let title = [("school", (&school.name).into())];
    let title = escape(&plan.say().fill("page.feed_title", &title));
    let language = escape(&school.language);
    let entries = &plan.curriculum.ledger.entries;
    let updated = entries.last().map_or("1970-01-01", |e| e.on.as_str());
    let mut out = format!(
        "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<feed xmlns=\"http://www.w3.org/2005/Atom\" xml:lang=\"{language}\">\n<title>{title}</title>\n<id>{address}changes.atom</id>\n<link rel=\"self\" href=\"{address}changes.atom\"/>\n<link rel=\"alternate\" type=\"text/html\" href=\"{address}changes.html\"/>\n<updated>{updated}T00:00:00Z</updated>\n<author><name>{name}</name></author>\n"
    );
    for (i, entry) in entries.iter().enumerate().rev().take(MOST) {
        let mut lines: Vec<String> = entry
            .changes
            .iter()
            .take(MOST_CHANGES)
            .map(|(id, change)| {
                let (movement, change) = (named(plan, id), change_words(plan, change));
                let values = [
                    ("movement", (&movement).into()),
                    ("change", (&change).into()),
                ];
                plan.say().fill("change.line", &values)
            })
            .collect();
        if entry.changes.len() > MOST_CHANGES {
            lines.push(plan.say().fill(
                "shared.and_more",
                &[("n", (entry.changes.len() - MOST_CHANGES).into())],
            ));
        }
        lines.push(plan.say().say("part.not_medical_advice").to_string());
        let (title, on) = (escape(&entry.note), escape(&entry.on));
        out.push_str(&format!(
            "<entry>\n<title>{title}</title>\n<id>{address}changes.html#{on}-{i}</id>\n<link rel=\"alternate\" type=\"text/html\" href=\"{address}changes.html\"/>\n<updated>{on}T00:00:00Z</updated>\n<content type=\"text\">{}</content>\n</entry>\n",
            escape(&lines.join("\n"))
        ));
    }
    out.push_str("</feed>\n");
    out.into_bytes()
}

/// A movement's name with its signal word; its id where it is gone.
fn named(plan: &Plan<'_>, id: &str) -> String {
    match plan.curriculum.find_movement(id) {
        Some(ix) => {
            let mark = mark_of(plan, ix).map_or(String::new(), |m| format!(" [{}]", m.word));
            format!("{}{mark}", plan.curriculum.movement(ix).name)
        }
        None => id.to_string(),
    }
}

/// `manifest.webmanifest` (W3C Web Application Manifest).
pub fn manifest(plan: &Plan<'_>) -> Vec<u8> {
    let school = &plan.curriculum.school;
    let short: String = school.name.chars().take(24).collect();
    let drawn = card::ICONS.iter().map(|(size, maskable)| {
        let purpose = if *maskable { "maskable" } else { "any" };
        json!({ "src": card::icon_path(*size, *maskable), "sizes": format!("{size}x{size}"), "type": "image/png", "purpose": purpose })
    });
    let icons: Vec<Value> = std::iter::once(json!({ "src": "theme/icon.svg", "sizes": "any", "type": "image/svg+xml", "purpose": "any" }))
        .chain(drawn)
        .collect();
    let manifest = json!({
        "name": school.name, "short_name": short.trim(), "lang": school.language, "dir": plan.say().direction().word(), "start_url": "index.html", "scope": "./",
        "display": "standalone", "background_color": "#f7f5f0", "theme_color": "#20262b",
        "icons": icons,
    });
    (serde_json::to_string_pretty(&manifest).expect("a value is JSON") + "\n").into_bytes()
}

/// What a page is, in the words of schema.org, safe inside a script element; empty for pages that are nothing of the kind.
pub fn schema_org(plan: &Plan<'_>, item: &Item) -> String {
    let school = &plan.curriculum.school;
    let c = plan.curriculum;
    let organisation =
        json!({ "@type": "Organization", "name": school.name, "url": school.address });
    let resource = |owner: Owner, about: &str, parts: Vec<Value>| {
        let mut out = json!({
            "@context": "https://schema.org", "@type": "LearningResource", "name": c.name_of(owner), "description": about,
            "url": format!("{}{}.html", school.address, c.id_of(owner)), "inLanguage": school.language, "provider": organisation,
            "isAccessibleForFree": true,
        });
        if let Some(licence) = &school.licence {
            out["license"] = json!(licence);
        }
        if !parts.is_empty() {
            out["hasPart"] = Value::Array(parts);
        }
        out
    };
    let cautioned = |ix: MovementIx, text: &str| match mark_of(plan, ix) {
        Some(mark) => plan.say().fill(
            "page.description_with_mark",
            &[
                ("signal", mark.word.to_uppercase().as_str().into()),
                ("says", (&mark.says).into()),
                ("text", text.into()),
            ],
        ),
        None => text.to_string(),
    };
    let value = match item {
        Item::Fixed("index") => {
            let skills: Vec<Value> = c
                .skills()
                .map(|(_, s)| json!({ "@type": "LearningResource", "name": s.name, "url": format!("{}{}.html", school.address, s.id) }))
                .collect();
            json!({
                "@context": "https://schema.org", "@type": "WebSite", "name": school.name, "url": school.address,
                "inLanguage": school.language, "publisher": organisation, "hasPart": skills,
            })
        }
        Item::Movement(ix) => {
            let about = cautioned(*ix, &c.movement(*ix).summary);
            resource(Owner::Movement(*ix), &about, Vec::new())
        }
        Item::Skill(ix) => {
            let skill = c.skill(*ix);
            let about = cautioned(skill.goal.movement, skill.summary.as_deref().unwrap_or(""));
            resource(Owner::Skill(*ix), &about, Vec::new())
        }
        _ => return String::new(),
    };
    value.to_string().replace('<', "\\u003c")
}
