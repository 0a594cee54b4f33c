//! What templates see: flat records of words and rendered names. Every name of a movement is HTML made by the theme's own part.

use crate::curriculum::caution::{ClassIx, Part};
use crate::curriculum::ledger::Entry;
use crate::curriculum::loosening::Loosening;
use crate::curriculum::manner::{Stress, When};
use crate::curriculum::movement::Test;
use crate::curriculum::note::{Done, SessionLine};
use crate::curriculum::target::Measure;
use crate::curriculum::words::{How, Pattern, Phase, Position, Units, Word};
use crate::curriculum::{Movement, MovementIx, Owner, SkillIx, Target};
use crate::site::material::Material;
use crate::site::names::{Mark, change_words, named, other_changes, signal_word};
use crate::site::theme::ThemeError;
use crate::training::paced;
use crate::words::escape::escape;
use crate::words::{Value, Words, key};
use serde::Serialize;
use std::borrow::Cow;

/// A caution class in full.
#[derive(Serialize)]
pub struct CautionView<'a> {
    pub id: &'a str,
    pub name: &'a str,
    pub signal: &'static str,
    /// The signal word for readers.
    pub word: &'a str,
    pub happens: String,
    pub ask_first: String,
    pub set_up: String,
    pub bail_out: String,
    pub stop: String,
}

/// A class as it is told to somebody who passes through these positions; without positions all that it says.
pub fn caution<'a>(site: &Material<'a>, ix: ClassIx, positions: &[Position]) -> CautionView<'a> {
    let class = site.curriculum.cautions().class(ix);
    let words = site.say();
    let part = |part: Part| class.fitting(part, positions, words);
    CautionView {
        id: class.id.as_str(),
        name: class.name(words),
        signal: class.signal.word(),
        word: signal_word(words, class.signal.word()),
        happens: part(Part::Happens),
        ask_first: part(Part::AskFirst),
        set_up: part(Part::SetUp),
        bail_out: part(Part::BailOut),
        stop: part(Part::Stop),
    }
}

/// A caution class by name.
#[derive(Serialize)]
pub struct CautionName<'a> {
    pub id: &'a str,
    pub name: &'a str,
    /// The signal word for readers.
    pub word: &'a str,
}

pub fn caution_name<'a>(site: &Material<'a>, ix: ClassIx) -> CautionName<'a> {
    let class = site.curriculum.cautions().class(ix);
    let words = site.say();
    CautionName {
        id: class.id.as_str(),
        name: class.name(words),
        word: signal_word(words, class.signal.word()),
    }
}

/// A page that is no record, or a record under the address of another page.
#[derive(Serialize)]
pub struct Named {
    /// Its name as a link, with the mark that it bears, as HTML.
    pub link: String,
}

impl Named {
    /// A coach's own page.
    pub fn page(id: &str, title: &str) -> Named {
        let (id, title) = (escape(id), escape(title));
        Named {
            link: format!("<a href=\"{id}.html\">{title}</a>"),
        }
    }

    /// A skill under another address than its page's.
    pub fn skill_at(site: &Material<'_>, ix: SkillIx, href: &str) -> Result<Named, ThemeError> {
        let name = escape(&site.curriculum.skill(ix).name);
        let link = named(site.curriculum, site.theme, Owner::Skill(ix), &name, href)?;
        Ok(Named { link })
    }
}

/// The address of a movement's small figure; nothing where no posture is declared.
pub fn figure_of(site: &Material<'_>, ix: MovementIx) -> String {
    match site.resolved.solved(ix) {
        Some(_) => figure_path(site, ix),
        None => String::new(),
    }
}

/// Where the small figure of a movement lies.
pub fn figure_path(site: &Material<'_>, ix: MovementIx) -> String {
    format!("figures/{}.svg", site.curriculum.movement(ix).id())
}

/// A row of a skill's readiness table.
#[derive(Serialize)]
pub struct Row<'a> {
    pub id: &'a str,
    pub link: &'a str,
    /// The address of its small figure, or nothing.
    pub figure: String,
    pub needs: &'a str,
    pub standard: String,
    pub opens: Cow<'a, str>,
    pub mark: Option<&'a Mark>,
    pub bar: Option<Bar>,
    pub essential: bool,
}

/// How a movement is tested.
#[derive(Serialize)]
pub struct TestView<'a> {
    pub how: &'a str,
    pub counts: &'a [String],
    pub stop: &'a [String],
    pub rest: &'a str,
    /// Tempo, and where each rep is held.
    pub paced: String,
    pub back_when: &'a [String],
    /// The first day of this way to measure, or nothing.
    pub since: String,
    /// Tested only when its needs are met: inverted, loaded or lowering.
    pub only_after: bool,
    /// It is held for a time: there is no last rep.
    pub hold: bool,
}

/// Whether a movement may be tested only when its needs are met.
pub fn only_after(movement: &Movement) -> bool {
    movement.guarded() || movement.phase() == Some(Phase::Lowering)
}

pub fn test<'a>(words: &Words, movement: &'a Movement) -> TestView<'a> {
    let test = movement.test();
    let text = |of: fn(&Test) -> &Option<String>| test.and_then(|t| of(t).as_deref()).unwrap_or("");
    TestView {
        how: text(|t| &t.how),
        counts: test.map_or(&[], |t| &t.counts),
        stop: test.map_or(&[], |t| &t.stop),
        rest: text(|t| &t.rest),
        paced: words.list(&paced(words, movement)),
        back_when: movement.back_when(),
        since: test
            .and_then(|t| t.since)
            .map_or(String::new(), |day| day.to_string()),
        only_after: only_after(movement),
        hold: movement.standard().measure() == Measure::Time,
    }
}

/// What goes in a movement's place.
#[derive(Serialize)]
pub struct InsteadView {
    /// "With a sore wrist".
    pub when: String,
    pub link: String,
}

pub fn instead(site: &Material<'_>, movement: &Movement) -> Vec<InsteadView> {
    let words = site.say();
    let when = |when: &When| match when {
        When::Part(part) => words.say(&key("sore", part.word())).to_string(),
        When::Class(class) => {
            let name = site.curriculum.cautions().class(*class).name(words);
            words.fill("movement.instead_of_class", &[("class", name.into())])
        }
        When::Without(gear) => {
            let gear = words.gear(gear);
            words.fill("movement.instead_without", &[("gear", (&gear).into())])
        }
    };
    let shown = movement.instead().iter().map(|one| InsteadView {
        when: when(&one.when),
        link: site.links.of(one.movement).to_string(),
    });
    shown.collect()
}

/// A test of the sheet.
#[derive(Serialize)]
pub struct TestRow<'a> {
    pub id: &'a str,
    pub link: &'a str,
    /// The address of its small figure, or nothing.
    pub figure: String,
    pub standard: String,
    pub each_side: bool,
    pub test: TestView<'a>,
    pub needs: &'a str,
    pub opens: &'a str,
}

/// A test of the sheet for paper.
#[derive(Serialize)]
pub struct PaperRow<'a> {
    pub id: &'a str,
    pub link: &'a str,
    /// The address of its small figure, or nothing.
    pub figure: String,
    pub standard: String,
    pub each_side: bool,
    pub only_after: bool,
    pub opens: &'a str,
}

/// A line of a session.
#[derive(Serialize)]
pub struct SessionRow {
    /// `A1`, or nothing.
    pub pair: String,
    pub warm_up: bool,
    /// The movement, or the coach's words.
    pub link: String,
    pub target: String,
    pub reserve: String,
    pub rest: String,
    pub volume: String,
}

pub fn session_row(site: &Material<'_>, line: &SessionLine) -> SessionRow {
    let words = site.say();
    let rest = line.rest.as_deref();
    let left = line.in_reserve;
    let (link, target, volume) = match &line.what {
        Done::Words(text) => (escape(text), String::new(), String::new()),
        Done::For(ix, time) => {
            let long = site.words(time);
            (site.links.of(*ix).to_string(), long.clone(), long)
        }
        Done::Sets(ix, target) => {
            let amount = i64::from(target.sets()) * target.amount();
            let (key, n) = match target.measure() {
                Measure::Reps => ("target.reps", Value::Micro(amount)),
                Measure::Time => ("session.seconds", Value::Micro(amount)),
                _ => ("target.times", target.sets().into()),
            };
            let paced = paced(words, site.curriculum.movement(*ix));
            let asked: Vec<String> = std::iter::once(site.words(target))
                .chain(paced.iter().map(|text| escape(text)))
                .collect();
            let volume = escape(&words.fill(key, &[("n", n)]));
            (
                site.links.of(*ix).to_string(),
                words.list_html(&asked),
                volume,
            )
        }
    };
    SessionRow {
        pair: line.pair.clone().unwrap_or_default(),
        warm_up: line.warm_up,
        link,
        target,
        rest: rest.map_or_else(String::new, |r| pause(words, r)),
        reserve: left.map_or_else(String::new, |n| {
            words.fill("training.reserve", &[("n", n.into())])
        }),
        volume,
    }
}

/// How long to rest, in the unit that the coach wrote; what is no time stays as it is.
fn pause(words: &Words, text: &str) -> String {
    let read = Target::read(text).ok();
    let Some(time) = read.filter(|t| t.measure() == Measure::Time && t.sets() == 1) else {
        return text.to_string();
    };
    let (key, n) = match text.to_lowercase().contains("min") {
        true => ("session.minutes", time.amount() / 60),
        false => ("session.seconds", time.amount()),
    };
    words.fill(key, &[("n", Value::Micro(n))])
}

/// What a movement is, in words.
#[derive(Serialize)]
pub struct Fact<'a> {
    pub name: &'a str,
    pub value: String,
}

pub fn facts<'a>(site: &Material<'a>, movement: &Movement) -> Vec<Fact<'a>> {
    let words = site.say();
    let word = |section: &str, word: &str| words.say(&key(section, word)).to_string();
    let positions: Vec<String> = movement
        .positions()
        .iter()
        .map(|p| word("position", p.word()))
        .collect();
    let stresses = stresses(words, movement);
    let mut out = Vec::new();
    let mut add = |name: &str, value: Option<String>| {
        let name = words.say(name);
        out.extend(value.map(|value| Fact { name, value }))
    };
    add(
        "fact.pattern",
        Some(word("pattern", movement.pattern().word())),
    );
    add("fact.position", Some(words.joined(&positions, "list.then")));
    add("fact.load", Some(word("load", movement.load().word())));
    add("fact.arms", movement.arms().map(|a| word("arms", a.word())));
    add(
        "fact.phase",
        movement.phase().map(|p| word("phase", p.word())),
    );
    add(
        "fact.equipment",
        (!movement.equipment().is_empty()).then(|| equipment(words, movement)),
    );
    add(
        "fact.sides",
        movement
            .each_side()
            .then(|| words.say("fact.each_side").to_string()),
    );
    add(
        "fact.stresses",
        (!stresses.is_empty()).then(|| words.list(&stresses)),
    );
    add(
        "fact.usual_time",
        movement.weeks().map(|w| {
            if w.from() == w.to() {
                words.fill("fact.weeks", &[("n", w.from().into())])
            } else {
                let values = [("from", w.from().into()), ("to", w.to().into())];
                words.fill("fact.weeks_from_to", &values)
            }
        }),
    );
    out
}

/// Each part that it stresses, with how.
fn stresses(words: &Words, movement: &Movement) -> Vec<String> {
    let word = |section: &str, word: &str| words.say(&key(section, word)).to_string();
    let one = |s: &Stress| {
        let part = word("body", s.part.word());
        let how = |how: How| {
            let how = word("stressed", how.word());
            let values = [("part", (&part).into()), ("how", (&how).into())];
            words.fill("fact.stressed", &values)
        };
        s.how.map_or(part.clone(), how)
    };
    movement.stresses().iter().map(one).collect()
}

fn equipment(words: &Words, movement: &Movement) -> String {
    let items: Vec<String> = movement
        .equipment()
        .iter()
        .map(|alternatives| {
            let shown: Vec<String> = alternatives.iter().map(|w| words.gear(w)).collect();
            words.joined(&shown, "list.or")
        })
        .collect();
    words.joined(&items, "list.semicolon")
}

/// An entry of the ledger.
#[derive(Serialize)]
pub struct EntryView {
    pub on: String,
    pub note: String,
    /// What asks less of a body, each with what it means for who owned it.
    pub loosened: Vec<ChangeView>,
    pub changes: Vec<ChangeView>,
}

#[derive(Serialize)]
pub struct ChangeView {
    /// The movement's rendered name; its old id as text where it is gone.
    pub link: String,
    pub gone: String,
    pub says: String,
    pub means: String,
}

pub fn entry(site: &Material<'_>, entry: &Entry) -> EntryView {
    let changes = other_changes(entry).map(|(id, change)| {
        let ix = site
            .curriculum
            .find_movement(id)
            .filter(|ix| !site.curriculum.movement(*ix).held_back());
        ChangeView {
            link: ix.map_or_else(String::new, |ix| site.links.of(ix).to_string()),
            gone: if ix.is_none() {
                id.clone()
            } else {
                String::new()
            },
            says: change_words(site.curriculum, change),
            means: String::new(),
        }
    });
    let loosened = entry.loosened.iter().map(|l| loosening(site, l));
    EntryView {
        on: entry.on.clone(),
        note: entry.note.clone(),
        loosened: loosened.collect(),
        changes: changes.collect(),
    }
}

fn loosening(site: &Material<'_>, loosening: &Loosening) -> ChangeView {
    let (curriculum, words) = (site.curriculum, site.say());
    let owner = curriculum.find(&loosening.of);
    let published = owner.filter(|o| curriculum.is_published(*o));
    let link = published.and_then(|owner| site.links.of_owner(owner));
    let link = link.unwrap_or_default().to_string();
    ChangeView {
        gone: match link.is_empty() {
            true => loosening.named(words),
            false => String::new(),
        },
        link,
        says: loosening.what.say(curriculum, words, Units::Metric),
        means: loosening.means(words).to_string(),
    }
}

/// The group of a movement on the test sheet, in the order in which one day's tests are done, and the key of its name. What is
/// tested only when its needs are met comes after everything that it may stand on.
pub fn sheet_group(movement: &Movement) -> (usize, &'static str) {
    if only_after(movement) {
        return (9, "group.only_after");
    }
    match movement.pattern() {
        Pattern::Mobility => (0, "group.mobility"),
        // A way out is shown before the balance that needs it.
        Pattern::Exit => (1, "group.exit"),
        Pattern::Balance => (2, "group.balance"),
        Pattern::Squat | Pattern::Hinge | Pattern::Carry => (3, "group.legs"),
        Pattern::HorizontalPush => (4, "group.horizontal_push"),
        Pattern::VerticalPush => (5, "group.vertical_push"),
        Pattern::HorizontalPull => (6, "group.horizontal_pull"),
        Pattern::VerticalPull => (7, "group.vertical_pull"),
        Pattern::Core => (8, "group.core"),
    }
}

/// A bar of leverage: how full it is, of 100, and what it says.
#[derive(Serialize)]
pub struct Bar {
    pub full: u32,
    pub says: String,
}

/// The weight on the hands where a posture tells it; where the hands carry everything, which tells nothing, the turning load at
/// the shoulder, full at 50 body weight x centimetres.
pub fn bar(site: &Material<'_>, ix: MovementIx) -> Option<Bar> {
    let solved = site.resolved.solved(ix)?;
    let share = solved
        .poses()
        .filter_map(|p| p.hands_carry)
        .reduce(f64::max)?;
    let hundredths = (share * 100.0).round() as u32;
    if hundredths < 100 {
        return Some(Bar {
            full: hundredths,
            says: site
                .say()
                .fill("bar.hands", &[("share", hundredths.into())]),
        });
    }
    let turning = solved.turning()?.shoulder.round() as u32;
    (turning > 0).then(|| Bar {
        full: (turning * 2).min(100),
        says: site
            .say()
            .fill("bar.turning", &[("turning", turning.into())]),
    })
}
