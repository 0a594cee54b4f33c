//! The plan of one client as a page of its own, to print: made by the theme, in the school's language, outside the site.

use super::outside::{context, render};
use crate::curriculum::{MovementIx, Owner};
use crate::morning::put_names;
use crate::results::Person;
use crate::site::names::named_from_outside;
use crate::site::theme::{Theme, ThemeError, paper};
use crate::training::{Line, Retest, Say, Session, Training};
use crate::words::{Value, escape};
use serde::Serialize;
use tera::Context;

/// The theme's template.
const TEMPLATE: &str = "plan.html";
/// The theme's own colour, where the school has none.
const ACCENT: &str = "#b4472b";

/// A page and the style that it carries.
pub struct Printed {
    pub text: String,
    pub style: String,
}

/// Texts with names are HTML, each name with its mark.
#[derive(Serialize)]
struct SessionView {
    head: String,
    warm_up: Vec<String>,
    care: Vec<String>,
    lines: Vec<LineView>,
    left: Option<String>,
}

#[derive(Serialize)]
struct LineView {
    block: String,
    named: String,
    sets: String,
    rest: String,
    toward: Option<String>,
    rule: String,
    why: String,
    /// One for each set, to tick.
    boxes: Vec<i64>,
}

#[derive(Serialize)]
struct RetestView {
    on: String,
    tests: Vec<String>,
}

struct Making<'a> {
    /// Its names are tokens.
    say: &'a Say<'a>,
    theme: &'a Theme,
    training: &'a Training,
}

impl Making<'_> {
    fn name(&self, owner: Owner) -> Result<String, ThemeError> {
        named_from_outside(self.say.roster.curriculum, self.theme, owner)
    }

    fn named(&self, ix: MovementIx) -> Result<String, ThemeError> {
        self.name(Owner::Movement(ix))
    }

    fn html(&self, text: &str) -> Result<String, ThemeError> {
        put_names(&escape::escape(text), |owner| self.name(owner))
    }

    fn all(&self, texts: Vec<String>) -> Result<Vec<String>, ThemeError> {
        texts.iter().map(|text| self.html(text)).collect()
    }

    fn line(&self, l: &Line) -> Result<LineView, ThemeError> {
        let say = self.say;
        let toward = say.toward(l, self.training);
        Ok(LineView {
            block: say.block(l),
            named: self.named(l.movement)?,
            sets: say.sets(l),
            rest: say.rest(l),
            toward: toward.map(|text| self.html(&text)).transpose()?,
            rule: say.rule(l),
            why: self.html(&say.why_and_then(l))?,
            boxes: (0..l.sets).collect(),
        })
    }

    /// `before`: the session above it. What both warm up with is not said again, but for the easy set.
    fn session(&self, s: &Session, before: Option<&Session>) -> Result<SessionView, ThemeError> {
        let left = self.say.left_out(s);
        let plain = |s: &Session| self.say.warm_up_plain(s, self.training);
        let said = match before.map(plain) {
            Some(lines) if lines == plain(s) => lines.len(),
            _ => 0,
        };
        let warm_up = self.say.warm_up(s, self.training).split_off(said);
        Ok(SessionView {
            head: self.say.head(s),
            warm_up: self.all(warm_up)?,
            care: self.all(self.say.care_lines(s))?,
            lines: s
                .lines
                .iter()
                .map(|l| self.line(l))
                .collect::<Result<_, ThemeError>>()?,
            left: left.map(|text| self.html(&text)).transpose()?,
        })
    }

    fn sessions(&self) -> Result<Vec<SessionView>, ThemeError> {
        let sessions = &self.training.sessions;
        let before = std::iter::once(None).chain(sessions.iter().map(Some));
        let each = sessions.iter().zip(before);
        each.map(|(s, before)| self.session(s, before)).collect()
    }

    fn retests(&self) -> Result<Vec<RetestView>, ThemeError> {
        let view = |retest: &Retest| {
            let tests = retest.tests.iter().map(|ix| self.named(*ix));
            Ok(RetestView {
                on: retest.on.to_string(),
                tests: tests.collect::<Result<_, ThemeError>>()?,
            })
        };
        self.training.retests.iter().map(view).collect()
    }
}

/// The printed plan. Its links lead to the site's own address; every name bears its mark.
///
/// # Errors
/// When the theme cannot make it.
pub fn printed(
    say: &Say<'_>,
    theme: &Theme,
    training: &Training,
    person: &Person,
) -> Result<Printed, ThemeError> {
    let curriculum = say.roster.curriculum;
    let say = &Say {
        tokens: true,
        ..*say
    };
    let making = Making {
        say,
        theme,
        training,
    };
    let conditions = training.conditions.iter();
    let conditions: Vec<String> = conditions.map(|c| say.condition(*c)).collect();
    let way = match training.refused.is_some() {
        true => Vec::new(),
        false => [say.goal(training)]
            .into_iter()
            .chain(say.holds_back(training))
            .collect(),
    };
    let name = [("name", Value::Text(&person.name))];
    let title = say.words.fill("training.printed", &name);
    let mut of_style = Context::new();
    of_style.insert(
        "accent",
        curriculum.school().accent.as_deref().unwrap_or(ACCENT),
    );
    let style = render(theme, paper::STYLE, &of_style)?;
    let mut context = context(curriculum, &title);
    context.insert("policy", &paper::policy(&style));
    context.insert("style", &style);
    context.insert("today", &training.today.to_string());
    context.insert("clinician", &say.clinician(person, training.today));
    context.insert("way", &making.all(way)?);
    let refused = training.refused.map(|why| say.refusal(why, training.today));
    context.insert("refused", &refused);
    context.insert("conditions", &conditions);
    context.insert("sessions", &making.sessions()?);
    context.insert("retests", &making.retests()?);
    let text = render(theme, TEMPLATE, &context)?;
    Ok(Printed { text, style })
}
