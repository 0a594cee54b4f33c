//! What others read besides pages: the Atom feed of changes, the web manifest, and schema.org data.

use crate::curriculum::{MovementIx, Owner};
use crate::site::media::card;
use crate::site::pages::view::{change_words, mark_of};
use crate::site::theme::link::escape_xml;
use crate::site::{Item, Plan};
use serde::Serialize;
use serde_json::{Value, json};

/// Entries of the feed.
const MOST: usize = 30;
/// Changes in one entry; more are counted.
const MOST_CHANGES: usize = 50;

/// `changes.atom` (RFC 4287), the newest entry first. A movement with cautions bears its signal word.
pub fn atom(plan: &Plan<'_>) -> Vec<u8> {
    let school = &plan.curriculum.school;
    let (address, name) = (escape_xml(&school.address), escape_xml(&school.name));
    let title = [("school", (&school.name).into())];
    let title = escape_xml(&plan.say().fill("page.feed_title", &title));
    let language = escape_xml(&school.language);
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
        let (title, on) = (escape_xml(&entry.note), escape_xml(&entry.on));
        out.push_str(&format!(
            "<entry>\n<title>{title}</title>\n<id>{address}changes.html#{on}-{i}</id>\n<link rel=\"alternate\" type=\"text/html\" href=\"{address}changes.html\"/>\n<updated>{on}T00:00:00Z</updated>\n<content type=\"text\">{}</content>\n</entry>\n",
            escape_xml(&lines.join("\n"))
        ));
    }
    out.push_str("</feed>\n");
    out.into_bytes()
}

/// A movement's name with its signal word; its id where it is gone.
fn named(plan: &Plan<'_>, id: &str) -> String {
    match plan.curriculum.find_movement(id) {
        Some(ix) => plan.named(Owner::Movement(ix)),
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

/// An organisation as schema.org names it.
#[derive(Serialize)]
struct Organisation<'a> {
    #[serde(rename = "@type")]
    kind: &'static str,
    name: &'a str,
    url: &'a str,
}

/// A movement or a skill as schema.org names it.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Resource<'a> {
    #[serde(rename = "@context")]
    context: &'static str,
    #[serde(rename = "@type")]
    kind: &'static str,
    name: String,
    description: &'a str,
    url: String,
    in_language: &'a str,
    provider: Organisation<'a>,
    is_accessible_for_free: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    license: Option<&'a str>,
}

/// The site as schema.org names it.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct WebSite<'a> {
    #[serde(rename = "@context")]
    context: &'static str,
    #[serde(rename = "@type")]
    kind: &'static str,
    name: &'a str,
    url: &'a str,
    in_language: &'a str,
    publisher: Organisation<'a>,
    has_part: Vec<Part>,
}

#[derive(Serialize)]
struct Part {
    #[serde(rename = "@type")]
    kind: &'static str,
    name: String,
    url: String,
}

const CONTEXT: &str = "https://schema.org";
const RESOURCE: &str = "LearningResource";

/// What a page is, in the words of schema.org, safe inside a script element; empty for pages that are nothing of the kind.
pub fn schema_org(plan: &Plan<'_>, item: &Item) -> String {
    let c = plan.curriculum;
    let json = match item {
        Item::Fixed(page) if page.name == "index" => web_site(plan),
        Item::Movement(ix) => resource(plan, Owner::Movement(*ix), *ix, &c.movement(*ix).summary),
        Item::Skill(ix) => {
            let skill = c.skill(*ix);
            let about = skill.summary.as_deref().unwrap_or("");
            resource(plan, Owner::Skill(*ix), skill.goal.movement, about)
        }
        _ => return String::new(),
    };
    json.unwrap_or_default().replace('<', "\\u003c")
}

fn organisation<'a>(plan: &Plan<'a>) -> Organisation<'a> {
    let school = &plan.curriculum.school;
    Organisation {
        kind: "Organization",
        name: &school.name,
        url: &school.address,
    }
}

fn web_site(plan: &Plan<'_>) -> serde_json::Result<String> {
    let school = &plan.curriculum.school;
    let skills = plan.curriculum.skills();
    serde_json::to_string(&WebSite {
        context: CONTEXT,
        kind: "WebSite",
        name: &school.name,
        url: &school.address,
        in_language: &school.language,
        publisher: organisation(plan),
        has_part: skills
            .map(|(ix, s)| Part {
                kind: RESOURCE,
                name: plan.named(Owner::Skill(ix)),
                url: format!("{}{}.html", school.address, s.id),
            })
            .collect(),
    })
}

/// A record; the mark of `marked` stands before what it is about.
fn resource(
    plan: &Plan<'_>,
    owner: Owner,
    marked: MovementIx,
    about: &str,
) -> serde_json::Result<String> {
    let school = &plan.curriculum.school;
    let with_mark = mark_of(plan, marked).map(|mark| {
        plan.say().fill(
            "page.description_with_mark",
            &[
                ("signal", mark.word.to_uppercase().as_str().into()),
                ("says", (&mark.says).into()),
                ("text", about.into()),
            ],
        )
    });
    serde_json::to_string(&Resource {
        context: CONTEXT,
        kind: RESOURCE,
        name: plan.named(owner),
        description: with_mark.as_deref().unwrap_or(about),
        url: format!("{}{}.html", school.address, plan.curriculum.id_of(owner)),
        in_language: &school.language,
        provider: organisation(plan),
        is_accessible_for_free: true,
        license: school.licence.as_deref(),
    })
}

#[cfg(test)]
mod tests {
    use crate::site::theme::link::escape_xml;

    #[test]
    fn letters_that_xml_does_not_know_are_left_out() {
        let text = "A\u{1b}[2J <\u{0}é\u{fffe}\u{1f600}\t&\u{ffff}>";
        assert_eq!(escape_xml(text), "A[2J &lt;é\u{1f600}\t&amp;&gt;");
    }
}
