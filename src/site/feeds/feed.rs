//! What others read besides pages: the Atom feed of changes, the web manifest, and schema.org data.

use crate::curriculum::loosening::Loosening;
use crate::curriculum::words::Units;
use crate::curriculum::{MovementIx, Owner};
use crate::site::material::{Item, Material};
use crate::site::media::card;
use crate::site::names::{change_words, other_changes};
use crate::words::escape::escape_xml;
use serde::Serialize;
use serde_json::{Value, json};

/// Entries of the feed.
const MOST: usize = 30;
/// Changes in one entry; more are counted.
const MOST_CHANGES: usize = 50;

/// `changes.atom` (RFC 4287), the newest entry first. A movement with cautions bears its signal word.
pub fn atom(site: &Material<'_>) -> Vec<u8> {
    let school = site.curriculum.school();
    let (address, name) = (escape_xml(&school.address), escape_xml(&school.name));
    let title = [("school", (&school.name).into())];
    let title = escape_xml(&site.say().fill("page.feed_title", &title));
    let language = escape_xml(&school.language);
    let entries = &site.curriculum.ledger().entries;
    let updated = entries.last().map_or("1970-01-01", |e| e.on.as_str());
    let mut out = format!(
        "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<feed xmlns=\"http://www.w3.org/2005/Atom\" xml:lang=\"{language}\">\n<title>{title}</title>\n<id>{address}changes.atom</id>\n<link rel=\"self\" href=\"{address}changes.atom\"/>\n<link rel=\"alternate\" type=\"text/html\" href=\"{address}changes.html\"/>\n<updated>{updated}T00:00:00Z</updated>\n<author><name>{name}</name></author>\n"
    );
    for (i, entry) in entries.iter().enumerate().rev().take(MOST) {
        let loosened = entry.loosened.iter().map(|l| loosened(site, l));
        let mut lines: Vec<String> = loosened.collect();
        let count = other_changes(entry).count();
        let others = other_changes(entry).take(MOST_CHANGES).map(|(id, change)| {
            let (movement, change) = (named(site, id), change_words(site.curriculum, change));
            let values = [
                ("movement", (&movement).into()),
                ("change", (&change).into()),
            ];
            site.say().fill("change.line", &values)
        });
        lines.extend(others);
        if count > MOST_CHANGES {
            lines.push(
                site.say()
                    .fill("shared.and_more", &[("n", (count - MOST_CHANGES).into())]),
            );
        }
        lines.push(site.say().say("part.not_medical_advice").to_string());
        let (title, on) = (escape_xml(&entry.note), escape_xml(&entry.on));
        out.push_str(&format!(
            "<entry>\n<title>{title}</title>\n<id>{address}changes.html#{on}-{i}</id>\n<link rel=\"alternate\" type=\"text/html\" href=\"{address}changes.html\"/>\n<updated>{on}T00:00:00Z</updated>\n<content type=\"text\">{}</content>\n</entry>\n",
            escape_xml(&lines.join("\n"))
        ));
    }
    out.push_str("</feed>\n");
    out.into_bytes()
}

/// What asks less, and what that means for who owned it; never shortened.
fn loosened(site: &Material<'_>, loosening: &Loosening) -> String {
    let words = site.say();
    let change = loosening.what.say(site.curriculum, words, Units::Metric);
    let named = loosening.named(words);
    let values = [("movement", (&named).into()), ("change", (&change).into())];
    let line = words.fill("change.line", &values);
    let means = loosening.means(words);
    words.fill(
        "since.beside",
        &[("line", (&line).into()), ("means", means.into())],
    )
}

/// A movement's name with its signal word; its id where it is gone.
fn named(site: &Material<'_>, id: &str) -> String {
    match site.curriculum.find_movement(id) {
        Some(ix) => site.named(Owner::Movement(ix)),
        None => id.to_string(),
    }
}

/// `manifest.webmanifest` (W3C Web Application Manifest).
pub fn manifest(site: &Material<'_>) -> Vec<u8> {
    let school = site.curriculum.school();
    let short: String = school.name.chars().take(24).collect();
    let drawn = card::ICONS.iter().map(|(size, maskable)| {
        let purpose = if *maskable { "maskable" } else { "any" };
        json!({ "src": card::icon_path(*size, *maskable), "sizes": format!("{size}x{size}"), "type": "image/png", "purpose": purpose })
    });
    let icons: Vec<Value> = std::iter::once(json!({ "src": "theme/icon.svg", "sizes": "any", "type": "image/svg+xml", "purpose": "any" }))
        .chain(drawn)
        .collect();
    let manifest = json!({
        "name": school.name, "short_name": short.trim(), "lang": school.language, "dir": site.say().direction().word(), "start_url": "index.html", "scope": "./",
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
pub fn schema_org(site: &Material<'_>, item: &Item) -> String {
    let c = site.curriculum;
    let json = match item {
        Item::Fixed(page) if page.name == "index" => web_site(site),
        Item::Movement(ix) => resource(site, Owner::Movement(*ix), *ix, c.movement(*ix).summary()),
        Item::Skill(ix) => {
            let skill = c.skill(*ix);
            let about = skill.summary.as_deref().unwrap_or("");
            resource(site, Owner::Skill(*ix), skill.goal.movement, about)
        }
        _ => return String::new(),
    };
    json.unwrap_or_default().replace('<', "\\u003c")
}

fn organisation<'a>(site: &Material<'a>) -> Organisation<'a> {
    let school = site.curriculum.school();
    Organisation {
        kind: "Organization",
        name: &school.name,
        url: &school.address,
    }
}

fn web_site(site: &Material<'_>) -> serde_json::Result<String> {
    let school = site.curriculum.school();
    let skills = site.curriculum.skills();
    serde_json::to_string(&WebSite {
        context: CONTEXT,
        kind: "WebSite",
        name: &school.name,
        url: &school.address,
        in_language: &school.language,
        publisher: organisation(site),
        has_part: skills
            .map(|(ix, s)| Part {
                kind: RESOURCE,
                name: site.named(Owner::Skill(ix)),
                url: format!("{}{}.html", school.address, s.id),
            })
            .collect(),
    })
}

/// A record; the mark of `marked` stands before what it is about.
fn resource(
    site: &Material<'_>,
    owner: Owner,
    marked: MovementIx,
    about: &str,
) -> serde_json::Result<String> {
    let school = site.curriculum.school();
    let with_mark = site.links.mark(marked).map(|mark| {
        site.say().fill(
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
        name: site.named(owner),
        description: with_mark.as_deref().unwrap_or(about),
        url: format!("{}{}.html", school.address, site.curriculum.id_of(owner)),
        in_language: &school.language,
        provider: organisation(site),
        is_accessible_for_free: true,
        license: school.licence.as_deref(),
    })
}
