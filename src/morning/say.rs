//! A verdict in words: at most five lines a person, then the class.

use super::{Class, Fresh, M, Verdict, Watch};
use crate::curriculum::target::{Got, Target};
use crate::curriculum::{Curriculum, Day, MovementIx, Owner, SkillIx};
use crate::results::{Goal as Chosen, Person, Sides};
use crate::training::{Roster, Say, TOKEN};
use crate::words::Value;

/// Lines on one person at the terminal.
const LINES: usize = 5;

/// Tells verdicts in the school's language and units.
pub struct Telling<'a> {
    pub(super) say: Say<'a>,
    pub(super) today: Day,
    /// Names are set down as tokens, for a page to put its marked names in their place.
    tokens: bool,
}

/// A text with each token made by `name`.
///
/// # Errors
/// Those of `name`.
pub fn put_names<E>(
    text: &str,
    mut name: impl FnMut(Owner) -> Result<String, E>,
) -> Result<String, E> {
    let mut out = String::new();
    for (i, part) in text.split(TOKEN).enumerate() {
        let token = (i % 2 == 1).then(|| part.split_at_checked(1)).flatten();
        match token.and_then(|(kind, n)| Some((kind, n.parse().ok()?))) {
            Some(("s", n)) => out.push_str(&name(Owner::Skill(SkillIx(n)))?),
            Some((_, n)) => out.push_str(&name(Owner::Movement(MovementIx(n)))?),
            None => out.push_str(part),
        }
    }
    Ok(out)
}

impl<'a> Telling<'a> {
    pub fn new(roster: &'a Roster<'a>, today: Day) -> Telling<'a> {
        Telling {
            say: Say::of(roster),
            today,
            tokens: false,
        }
    }

    /// With names as tokens: see [`put_names`].
    pub fn in_tokens(mut self) -> Telling<'a> {
        self.tokens = true;
        self
    }

    pub(super) fn curriculum(&self) -> &'a Curriculum {
        self.say.roster.curriculum
    }

    /// An entry of the section `morning`.
    pub(super) fn fill(&self, key: &str, values: &[(&str, Value<'_>)]) -> String {
        self.say.words.fill(&format!("morning.{key}"), values)
    }

    pub(super) fn plain(&self, key: &str) -> &'a str {
        self.say.words.say(&format!("morning.{key}"))
    }

    /// What a line of [`Telling::lines`] is called.
    pub fn label(&self, key: &str) -> &'a str {
        self.plain(key)
    }

    /// A movement with its mark.
    pub(super) fn named(&self, ix: MovementIx) -> String {
        self.owner(Owner::Movement(ix))
    }

    fn owner(&self, owner: Owner) -> String {
        match (owner, self.tokens) {
            (Owner::Movement(ix), true) => format!("{TOKEN}m{}{TOKEN}", ix.0),
            (Owner::Skill(ix), true) => format!("{TOKEN}s{}{TOKEN}", ix.0),
            _ => self.curriculum().named(owner, self.say.words),
        }
    }

    pub(super) fn day(&self, day: Day) -> String {
        self.say.words.day(&day.to_string())
    }

    pub(super) fn got(&self, got: &Got) -> String {
        got.say(self.say.units, self.say.words)
    }

    pub(super) fn target(&self, target: &Target) -> String {
        target.say(self.say.units, self.say.words)
    }

    pub(super) fn sides(&self, sides: &Sides) -> String {
        self.say.sides(sides)
    }

    /// The first few, and how many more.
    pub(super) fn few(&self, all: &[String]) -> String {
        // One more takes no more room than its number.
        let shown = if all.len() == M.named + 1 {
            all.len()
        } else {
            M.named
        };
        let list = self.say.words.list(&all[..all.len().min(shown)]);
        match all.len().saturating_sub(shown) {
            0 => list,
            n => self.fill("more", &[("list", (&list).into()), ("n", n.into())]),
        }
    }

    pub(super) fn few_named(&self, all: &[MovementIx]) -> String {
        let names: Vec<String> = all.iter().map(|ix| self.named(*ix)).collect();
        self.few(&names)
    }

    /// At most five lines on one person; whom to ask first before all else. `width`: that of the longest name.
    pub fn person(&self, of: &Verdict, person: &Person, width: usize) -> Vec<String> {
        let head = self.head(of).join("   ");
        let mut lines = self.lines(of, person);
        let mut out = Vec::new();
        let mut name = person.name.as_str();
        if lines.first().is_some_and(|(key, _)| *key == "ask") {
            out.push(format!("{name:<width$}  {}", lines.remove(0).1));
            name = "";
        }
        out.push(format!("{name:<width$}  {head}"));
        // The last two share a line where there would be six.
        if out.len() + lines.len() > LINES
            && let (Some((_, aside)), Some((_, watch))) = (lines.pop(), lines.last_mut())
        {
            *watch = format!("{watch}; {aside}");
        }
        let keys = ["next", "new", "watch", "aside"];
        let wide = keys.map(|key| self.plain(key).chars().count());
        let wide = wide.into_iter().max().unwrap_or(0);
        for (key, text) in lines {
            out.push(format!("  {:<wide$}  {text}", self.plain(key)));
        }
        out
    }

    /// Whom to ask first, what is next, new, to watch and kept aside: its key under `morning`, and its text, where there is one.
    pub fn lines(&self, of: &Verdict, person: &Person) -> Vec<(&'static str, String)> {
        let told = |which: fn(&Watch) -> bool| {
            let all = of.watch.iter().filter(|w| which(w));
            all.map(|w| self.watch(of, person, w)).collect::<Vec<_>>()
        };
        let (ask, aside) = (told(Watch::stops), told(Watch::is_aside));
        let watch = self.watches(of, person);
        let lines = [
            ("ask", ask.join(" ")),
            ("next", self.acts(of)),
            ("new", self.bests(&of.fresh)),
            ("watch", watch.join("; ")),
            ("aside", aside.join("; ")),
        ];
        let said = lines.into_iter().filter(|(_, text)| !text.is_empty());
        said.collect()
    }

    /// The goal, what is owned, and when the last test was.
    pub fn head(&self, of: &Verdict) -> [String; 3] {
        let goal = match of.goal {
            Some(goal) => {
                let owner = match goal {
                    Chosen::Skill(ix) => Owner::Skill(ix),
                    Chosen::Movement(ix) => Owner::Movement(ix),
                };
                let mut name = self.owner(owner);
                if of.from_adult {
                    name = self.fill("from_adult", &[("goal", (&name).into())]);
                }
                match of.chosen {
                    true => name,
                    false => self.fill("nearest", &[("goal", (&name).into())]),
                }
            }
            None => self.plain("no_goal").to_string(),
        };
        let values = [
            ("n", of.owned.into()),
            ("all", of.of.into()),
            ("paused", of.paused.into()),
        ];
        let owned = match of.paused {
            0 => self.fill("owned", &values[..2]),
            _ => self.fill("owned_paused", &values),
        };
        let tested = match of.tested.map(|on| self.today.days_after(on)) {
            None => self.plain("untested").to_string(),
            Some(0) => self.plain("tested_today").to_string(),
            Some(n) => self.fill("tested", &[("n", Value::Whole(n.into()))]),
        };
        [goal, owned, tested]
    }

    fn bests(&self, all: &[Fresh]) -> String {
        let told: Vec<String> = all.iter().take(M.bests).map(|f| self.best(f)).collect();
        let list = told.join("; ");
        match all.len().saturating_sub(M.bests) {
            0 => list,
            n => self.fill("more_bests", &[("list", (&list).into()), ("n", n.into())]),
        }
    }

    fn best(&self, of: &Fresh) -> String {
        let (movement, got) = (self.named(of.movement), self.sides(&of.got));
        let mut values = vec![("movement", (&movement).into()), ("got", (&got).into())];
        let was = of.was.map(|was| self.sides(&was));
        let mut out = match &was {
            Some(was) => {
                values.push(("was", was.into()));
                self.fill("best", &values)
            }
            None => self.fill("first", &values),
        };
        if of.owned {
            out = self.fill("now_owned", &[("best", (&out).into())]);
        }
        if !of.opens.is_empty() {
            let list = self.few_named(&of.opens);
            out = self.fill(
                "opens",
                &[("best", (&out).into()), ("list", (&list).into())],
            );
        }
        out
    }

    /// What all of them come to: three short tables.
    pub fn class(&self, of: &Class, people: &[&str]) -> Vec<String> {
        let who = |list: &[usize]| {
            let names: Vec<String> = list.iter().map(|i| people[*i].to_string()).collect();
            self.few(&names)
        };
        let held = of.held_back.iter().take(super::M.tests).map(|(ix, list)| {
            let (movement, who) = (self.named(*ix), who(list));
            let values = [
                ("movement", (&movement).into()),
                ("n", list.len().into()),
                ("people", (&who).into()),
            ];
            self.fill("held", &values)
        });
        let together = of.together.iter().map(|(movements, list)| {
            let (movements, who) = (self.few_named(movements), who(list));
            let values = [
                ("movements", (&movements).into()),
                ("people", (&who).into()),
            ];
            self.fill("group", &values)
        });
        let tests = of.tests.iter().map(|t| {
            let (movement, who) = (self.named(t.movement), who(&t.people));
            let values = [
                ("movement", (&movement).into()),
                ("n", t.decides.into()),
                ("people", (&who).into()),
            ];
            self.fill("decides", &values)
        });
        let waiting = (!of.waiting.is_empty())
            .then(|| self.fill("wait", &[("people", (&who(&of.waiting)).into())]));
        let tests = tests.chain(waiting);
        let tables: [(&str, Vec<String>); 3] = [
            ("held_back", held.collect()),
            ("together", together.collect()),
            ("to_test", tests.collect()),
        ];
        let mut out = Vec::new();
        for (head, lines) in tables {
            out.push(self.plain(head).to_string());
            if lines.is_empty() {
                out.push(format!("  {}", self.plain("none")));
            }
            out.extend(lines.into_iter().map(|line| format!("  {line}")));
        }
        out
    }

    /// The last line of every answer.
    pub fn careful(&self) -> String {
        self.say.say("careful")
    }
}
