//! The health questions before the first test, and where every number comes from.

use crate::curriculum::words::{BodyPart, Word};
use crate::leverage::{PUBLISHED, unchecked};
use crate::screening::{self, Asked, Column};
use crate::site::material::Material;
use crate::site::pages::view;
use crate::strength::one_rep_max::{FORMULAS, per_cent_of_max};
use crate::training::Rule;
use crate::words::Words;
use serde::Serialize;
use tera::Context;

/// The answers as the page's script reads them, and as people do.
#[derive(Serialize)]
struct ScreeningRow<'a> {
    regular: &'static str,
    disease: &'static str,
    symptoms: &'static str,
    says_regular: &'a str,
    says_disease: &'a str,
    says_symptoms: &'a str,
    follows: &'a str,
    outcome: &'static str,
}

/// A health question, and what yes to it restricts.
#[derive(Serialize)]
struct HealthQuestion<'a> {
    id: &'static str,
    says: &'a str,
    column: &'static str,
    classes: String,
    parts: String,
    /// Asked under this age alone, or from it on.
    under: Option<i32>,
    from: Option<i32>,
    /// The longest that a clearance lasts after yes, in days, where that is less than a year.
    lasts: Option<i32>,
    /// The published signs, where it asks for any of them.
    signs: Vec<&'a str>,
}

/// A class or a part with the word for it.
#[derive(Serialize)]
struct Named<'a> {
    id: &'a str,
    name: &'a str,
}

/// The health questions, and the table by which they are read.
pub fn before(site: &Material<'_>, context: &mut Context) {
    let words = site.say();
    let word = |yes: bool| if yes { "yes" } else { "no" };
    let says = |word: &str| match word {
        "yes" => words.say("answer.is_yes"),
        "no" => words.say("answer.is_no"),
        _ => words.say("answer.either"),
    };
    let rows: Vec<ScreeningRow<'_>> = screening::ROWS
        .iter()
        .map(|row| {
            let disease = row.disease.map_or("either", word);
            ScreeningRow {
                regular: word(row.regular),
                disease,
                symptoms: word(row.symptoms),
                says_regular: says(word(row.regular)),
                says_disease: says(disease),
                says_symptoms: says(word(row.symptoms)),
                follows: words.say(&format!("health.follows_{}", row.follows)),
                outcome: row.outcome.word(),
            }
        })
        .collect();
    let classes: Vec<Named<'_>> = site
        .curriculum
        .cautions()
        .classes()
        .iter()
        .map(|class| Named {
            id: class.id.as_str(),
            name: class.name(words),
        })
        .collect();
    context.insert("classes", &classes);
    context.insert("parts", &parts(site));
    context.insert("rows", &rows);
    context.insert("figure", &beside(site));
    context.insert("questions", &questions(words));
    let always = site.curriculum.school().warm_up.get("always");
    let always = always.map(|lines| lines.iter().map(|l| l.text.as_str()).collect::<Vec<_>>());
    context.insert("warm_up", &always);
}

/// The small figure beside the questions: of the first movement that needs no caution, or nothing.
fn beside(site: &Material<'_>) -> String {
    let of = |(ix, _)| match site.links.mark(ix) {
        None => view::figure_of(site, ix),
        Some(_) => String::new(),
    };
    let mut figures = site.curriculum.movements().map(of);
    figures.find(|src| !src.is_empty()).unwrap_or_default()
}

fn questions(words: &Words) -> Vec<HealthQuestion<'_>> {
    screening::QUESTIONS
        .iter()
        .map(|q| HealthQuestion {
            id: q.id,
            says: words.say(&format!("health.{}", q.id)),
            column: q.column.word(),
            classes: q.classes.join(" "),
            parts: q.parts.join(" "),
            under: match q.asked {
                Asked::Under(age) => Some(age),
                _ => None,
            },
            from: match q.asked {
                Asked::From(age) => Some(age),
                _ => None,
            },
            lasts: q.lasts,
            signs: match q.column {
                Column::Symptoms => screening::SIGNS
                    .iter()
                    .map(|sign| words.say(&format!("health.sign_{sign}")))
                    .collect(),
                _ => Vec::new(),
            },
        })
        .collect()
}

/// The body parts that pain is kept for.
fn parts<'p>(site: &'p Material<'_>) -> Vec<Named<'p>> {
    let named = |id: &&'static str| Named {
        id,
        name: site.say().say(&format!("body.{}", id.replace('-', "_"))),
    };
    BodyPart::WORDS.iter().map(named).collect()
}

/// What hurts: the parts that can be named.
pub fn hurts(site: &Material<'_>, context: &mut Context) {
    context.insert("parts", &parts(site));
}

#[derive(Serialize)]
struct FormulaRow {
    name: &'static str,
    says: &'static str,
    source: &'static str,
    most_reps: u32,
    /// Of 100, for five and for eight reps.
    five: String,
    eight: String,
}

/// A rule of training.
#[derive(Serialize)]
struct RuleRow<'a> {
    id: String,
    name: &'a str,
    says: &'a str,
    source: Option<&'static str>,
}

#[derive(Serialize)]
struct PublishedRow<'a> {
    says: &'a str,
    source: &'static str,
    value: String,
    ours: String,
    difference: String,
}

/// Every formula with its source and range, and the model of leverage against published values.
pub fn numbers(site: &Material<'_>, context: &mut Context) {
    let words = site.say();
    // One decimal, always: a column of measured values.
    let tenth = |n: f64| words.tenth(n);
    let of_hundred = |f: &crate::strength::one_rep_max::Formula, reps| {
        f.estimate(100.0, reps)
            .map_or_else(|_| String::new(), tenth)
    };
    let formulas: Vec<FormulaRow> = FORMULAS
        .iter()
        .map(|f| FormulaRow {
            name: f.name,
            says: f.says,
            source: f.source,
            most_reps: f.most_reps,
            five: of_hundred(f, 5),
            eight: of_hundred(f, 8),
        })
        .collect();
    let published: Vec<PublishedRow<'_>> = PUBLISHED
        .iter()
        .filter_map(|p| {
            let ours = p.ours()?;
            Some(PublishedRow {
                says: words.say(&format!("measured.{}", p.key)),
                source: p.source,
                value: format!("{} %", tenth(p.value * 100.0)),
                ours: format!("{} %", tenth(ours * 100.0)),
                difference: words.signed_tenth((ours - p.value) * 100.0),
            })
        })
        .collect();
    let unchecked: Vec<&str> = unchecked()
        .map(|name| words.say(&format!("posture.{}", name.replace('-', "_"))))
        .collect();
    let chart: Vec<(String, String)> = (1..=12)
        .filter_map(|r| Some((words.whole(r.into()), tenth(per_cent_of_max(r)?))))
        .collect();
    let rules: Vec<RuleRow<'_>> = Rule::ALL
        .iter()
        .map(|rule| RuleRow {
            id: rule.key().replace('_', "-"),
            name: words.say(&format!("training.rule.{}", rule.key())),
            says: words.say(&format!("training.says.{}", rule.key())),
            source: rule.source(),
        })
        .collect();
    context.insert("rules", &rules);
    context.insert("formulas", &formulas);
    context.insert("published", &published);
    context.insert("unchecked", &unchecked);
    context.insert("chart", &chart);
    context.insert("results_last", &site.curriculum.school().results_last);
}
