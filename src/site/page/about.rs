//! The health questions before the first test, and where every number comes from.

use super::super::Plan;
use crate::leverage::PUBLISHED;
use crate::screening;
use crate::strength::one_rep_max::{FORMULAS, per_cent_of_max};
use serde::Serialize;
use tera::Context;

#[derive(Serialize)]
struct ScreeningRow {
    regular: &'static str,
    disease: &'static str,
    symptoms: &'static str,
    follows: &'static str,
    outcome: &'static str,
}

/// The health questions, and the table by which they are read.
pub fn before(plan: &Plan<'_>, context: &mut Context) {
    let word = |yes: bool| if yes { "yes" } else { "no" };
    let rows: Vec<ScreeningRow> = screening::ROWS
        .iter()
        .map(|row| ScreeningRow {
            regular: word(row.regular),
            disease: row.disease.map_or("either", word),
            symptoms: word(row.symptoms),
            follows: row.follows,
            outcome: row.outcome.word(),
        })
        .collect();
    let ask: Vec<(&str, &str)> = screening::QUESTIONS[1..]
        .iter()
        .chain(screening::ALWAYS_ASK)
        .copied()
        .collect();
    let questions: Vec<(&str, &str)> = screening::QUESTIONS
        .iter()
        .chain(screening::ALWAYS_ASK)
        .copied()
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
struct PublishedRow {
    says: &'static str,
    source: &'static str,
    value: String,
    ours: String,
    difference: String,
}

/// Every formula with its source and range, and the model of leverage against published values.
pub fn numbers(plan: &Plan<'_>, context: &mut Context) {
    let of_hundred = |f: &crate::strength::one_rep_max::Formula, reps| {
        f.estimate(100.0, reps)
            .map_or_else(|_| String::new(), |n| format!("{n:.1}"))
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
    let published: Vec<PublishedRow> = PUBLISHED
        .iter()
        .filter_map(|p| {
            let ours = p.ours()?;
            Some(PublishedRow {
                says: p.says,
                source: p.source,
                value: format!("{:.1} %", p.value * 100.0),
                ours: format!("{:.1} %", ours * 100.0),
                difference: format!("{:+.1}", (ours - p.value) * 100.0),
            })
        })
        .collect();
    let chart: Vec<(u32, f64)> = (1..=12)
        .filter_map(|r| Some((r, per_cent_of_max(r)?)))
        .collect();
    context.insert("formulas", &formulas);
    context.insert("published", &published);
    context.insert("chart", &chart);
    context.insert("results_last", &plan.curriculum.school.results_last_days);
}
