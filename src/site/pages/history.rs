//! What `assess` says of some people as a page of its own, with the drawings of their histories: made by the theme, outside the site.

use super::outside::{context, render};
use crate::chain;
use crate::curriculum::{Day, MovementIx};
use crate::curriculum::{Owner, Target};
use crate::history::{Drawing, History, SHEET, drawing};
use crate::morning::{Telling, Verdict, put_names};
use crate::results::Person;
use crate::site::names::named_from_outside;
use crate::site::theme::{Theme, ThemeError};
use crate::training::{Roster, Trainee};
use crate::words::escape;
use serde::Serialize;
use std::collections::BTreeMap;

/// The theme's template.
const TEMPLATE: &str = "history.html";

/// Texts as HTML, names with their marks.
#[derive(Serialize)]
struct PersonView {
    name: String,
    head: [String; 3],
    lines: Vec<(String, String)>,
    /// Tested on one day alone, so without a drawing: name, day, result.
    once: Vec<(String, String, String)>,
    drawings: Vec<DrawingView>,
}

#[derive(Serialize)]
struct DrawingView {
    named: String,
    says: String,
    rungs: Vec<RungView>,
    marks: Vec<(i64, i64)>,
    line: String,
    ticks: Vec<i64>,
    bands: Vec<(i64, i64)>,
    from: String,
    to: String,
    first: String,
    newest: String,
    /// Day and result.
    rows: Vec<(String, String)>,
    asked: String,
    trained: usize,
    rests: Vec<(String, String)>,
}

#[derive(Serialize)]
struct RungView {
    y: i64,
    /// Empty where there is no room.
    name: String,
}

/// Makes the pages of one curriculum on a day.
pub struct Histories<'a> {
    pub roster: &'a Roster<'a>,
    pub theme: &'a Theme,
    pub today: Day,
}

impl Histories<'_> {
    /// The page. Its links lead to the site's own address; every name bears its mark.
    ///
    /// # Errors
    /// When the theme cannot make it.
    pub fn page(&self, people: &[(&Person, &Verdict)]) -> Result<String, ThemeError> {
        let telling = Telling::new(self.roster, self.today).in_tokens();
        let ladders = chain::ladders(self.roster.curriculum, &|_| true);
        let asked: BTreeMap<MovementIx, Vec<Target>> = ladders
            .into_iter()
            .map(|(ix, steps)| (ix, steps.into_iter().map(|s| s.target).collect()))
            .collect();
        let people: Vec<PersonView> = people
            .iter()
            .map(|(person, verdict)| self.person(&telling, &asked, person, verdict))
            .collect::<Result<_, ThemeError>>()?;
        let words = self.roster.curriculum.words();
        let mut context = context(self.roster.curriculum, words.say("history.page"));
        context.insert("today", &self.today.to_string());
        context.insert("people", &people);
        context.insert("sheet", &SHEET);
        // Time goes to the right in every language. A text that is read from the right begins at its right end.
        let anchor = match self.roster.curriculum.words().is_right_to_left() {
            true => ["end", "start"],
            false => ["start", "end"],
        };
        context.insert("anchor", &anchor);
        render(self.theme, TEMPLATE, &context)
    }

    fn named(&self, ix: MovementIx) -> Result<String, ThemeError> {
        named_from_outside(self.roster.curriculum, self.theme, Owner::Movement(ix))
    }

    fn html(&self, text: &str) -> Result<String, ThemeError> {
        put_names(&escape::escape(text), |owner| {
            named_from_outside(self.roster.curriculum, self.theme, owner)
        })
    }

    fn person(
        &self,
        telling: &Telling<'_>,
        asked: &BTreeMap<MovementIx, Vec<Target>>,
        person: &Person,
        verdict: &Verdict,
    ) -> Result<PersonView, ThemeError> {
        let trainee = Trainee::new(self.roster, person, self.today);
        let [goal, owned, tested] = telling.head(verdict);
        let (mut once, mut drawings) = (Vec::new(), Vec::new());
        for history in &verdict.history {
            if let [only] = &history.points[..] {
                let day = self.roster.curriculum.words().day(&only.on.to_string());
                let named = self.named(history.movement)?;
                once.push((named, day, telling.result(history, only)));
                continue;
            }
            let standard = self.roster.curriculum.movement(history.movement).standard();
            let mut targets = asked.get(&history.movement).cloned().unwrap_or_default();
            targets.push(standard);
            if let Some(drawn) = drawing(&trainee, history, &targets) {
                drawings.push(self.drawing(telling, history, &drawn)?);
            }
        }
        let lines = telling.lines(verdict, person).into_iter();
        Ok(PersonView {
            name: person.name.clone(),
            head: [
                self.html(&goal)?,
                escape::escape(&owned),
                escape::escape(&tested),
            ],
            lines: lines
                .map(|(key, text)| Ok((telling.label(key).to_string(), self.html(&text)?)))
                .collect::<Result<_, ThemeError>>()?,
            once,
            drawings,
        })
    }

    fn drawing(
        &self,
        telling: &Telling<'_>,
        of: &History,
        drawn: &Drawing,
    ) -> Result<DrawingView, ThemeError> {
        let words = self.roster.curriculum.words();
        let result = |p| telling.result(of, p);
        let day = |day: Day| words.day(&day.to_string());
        let rows: Vec<(String, String)> =
            of.points.iter().map(|p| (day(p.on), result(p))).collect();
        let asked: Vec<String> = drawn
            .rungs
            .iter()
            .map(|r| telling.amount_of(&r.at))
            .collect();
        let rungs = drawn.rungs.iter().zip(&asked).map(|(r, name)| RungView {
            y: r.y,
            name: if r.named { name.clone() } else { String::new() },
        });
        // A first number on a named rung has its name already.
        let on_rung = |(_, y): &(i64, i64)| drawn.rungs.iter().any(|r| r.named && r.y == *y);
        let first = match drawn.marks.first() {
            Some(mark) if drawn.marks.len() > 1 && !on_rung(mark) => rows.first(),
            _ => None,
        };
        let corners = drawn.marks.iter().map(|(x, y)| format!("{x},{y}"));
        Ok(DrawingView {
            named: self.named(of.movement)?,
            says: self.html(&telling.history(of))?,
            rungs: rungs.collect(),
            line: corners.collect::<Vec<_>>().join(" "),
            marks: drawn.marks.clone(),
            ticks: drawn.ticks.clone(),
            bands: drawn.bands.clone(),
            from: day(drawn.from),
            to: day(drawn.to),
            first: first.map(|r| r.1.clone()).unwrap_or_default(),
            newest: rows.last().map(|r| r.1.clone()).unwrap_or_default(),
            asked: words.list(&asked),
            trained: drawn.ticks.len(),
            rests: drawn
                .rests
                .iter()
                .map(|(a, b)| (day(*a), day(*b)))
                .collect(),
            rows,
        })
    }
}
