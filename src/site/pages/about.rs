//! The health questions before the first test, and where every number comes from.

use crate::leverage::{PUBLISHED, unchecked};
use crate::screening;
use crate::site::Plan;
use crate::strength::one_rep_max::{FORMULAS, per_cent_of_max};
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

/// The health questions, and the table by which they are read.
pub fn before(plan: &Plan<'_>, context: &mut Context) {
    let words = plan.say();
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
    let question = |id: &&'static str| (*id, words.say(&format!("health.{id}")));
    let ask: Vec<(&str, &str)> = screening::QUESTIONS[1..]
        .iter()
        .chain(screening::ALWAYS_ASK)
        .map(question)
        .collect();
    let questions: Vec<(&str, &str)> = screening::QUESTIONS
        .iter()
        .chain(screening::ALWAYS_ASK)
        .map(question)
        .collect();
    context.insert("rows", &rows);
    context.insert("ask", &ask);
    context.insert("questions", &questions);
    context.insert("warm_up", &plan.curriculum.school.warm_up.get("always"));
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

#[derive(Serialize)]
struct PublishedRow<'a> {
    says: &'a str,
    source: &'static str,
    value: String,
    ours: String,
    difference: String,
}

/// Every formula with its source and range, and the model of leverage against published values.
pub fn numbers(plan: &Plan<'_>, context: &mut Context) {
    let words = plan.say();
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
    context.insert("formulas", &formulas);
    context.insert("published", &published);
    context.insert("unchecked", &unchecked);
    context.insert("chart", &chart);
    context.insert("results_last", &plan.curriculum.school.results_last_days);
}
