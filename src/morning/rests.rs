//! Why something rests, in words: who paused it, since when, until when.

use crate::curriculum::words::{BodyPart, Word};
use crate::curriculum::{Curriculum, Day, Owner};
use crate::readiness::Cause;
use crate::results::{Pause, Paused, Person};
use crate::words::Words;

/// Causes that are alike in words, as one.
pub fn rests(curriculum: &Curriculum, words: &Words, person: &Person, causes: &[Cause]) -> String {
    let Some(cause) = causes.first().copied() else {
        return String::new();
    };
    let Some(pause) = cause.pause(person) else {
        return match cause {
            Cause::Pain(i) => {
                let pain = &person.pains[i];
                let (what, since) = (part(words, pain.part), pain.on.to_string());
                let values = [("what", what.into()), ("day", (&since).into())];
                words.fill("rests.pain", &values)
            }
            _ => {
                let since = person.screened.as_ref().map(|s| s.on.to_string());
                let since = since.unwrap_or_default();
                words.fill("rests.light", &[("day", (&since).into())])
            }
        };
    };
    let what = what_rests(curriculum, words, person, causes);
    let key = match cause {
        Cause::Restriction(_) => "rests.left_alone",
        _ => "rests.paused",
    };
    let since = pause.on.to_string();
    let values = [("what", (&what).into()), ("day", (&since).into())];
    ends(words, pause, words.fill(key, &values))
}

/// What rests for some causes, without since when and why.
pub fn what_rests(
    curriculum: &Curriculum,
    words: &Words,
    person: &Person,
    causes: &[Cause],
) -> String {
    let (mut what, mut classes) = (Vec::new(), Vec::new());
    for cause in causes {
        match (cause.pause(person).map(|pause| pause.what), cause) {
            (Some(Paused::Movement(ix)), _) => {
                what.push(curriculum.named(Owner::Movement(ix), words));
            }
            (Some(Paused::Part(of)), _) => what.push(part(words, of).to_string()),
            (Some(Paused::Class(ix)), _) => {
                classes.push(curriculum.cautions().class(ix).name(words).to_string());
            }
            (Some(Paused::Pattern(of)), _) => {
                let key = format!("pattern.{}", of.word().replace(' ', "_"));
                what.push(words.say(&key).to_string());
            }
            (None, Cause::Pain(i)) => what.push(part(words, person.pains[*i].part).to_string()),
            (None, _) => what.push(words.say("training.left.light").to_string()),
        }
    }
    if !classes.is_empty() {
        let list = words.list(&classes);
        what.push(words.fill("rests.classes", &[("list", (&list).into())]));
    }
    words.list(&what)
}

/// Causes that differ only in what rests, together.
pub fn together(person: &Person, causes: &[Cause]) -> Vec<Vec<Cause>> {
    let mut out: Vec<Vec<Cause>> = Vec::new();
    for cause in causes {
        match out.iter_mut().find(|all| alike(person, all[0], *cause)) {
            Some(all) => all.push(*cause),
            None => out.push(vec![*cause]),
        }
    }
    out
}

/// Whether two causes differ only in what rests.
fn alike(person: &Person, a: Cause, b: Cause) -> bool {
    let (Some(one), Some(other)) = (a.pause(person), b.pause(person)) else {
        return a == b;
    };
    a.word() == b.word()
        && (one.on, one.until) == (other.on, other.until)
        && (&one.by, &one.because) == (&other.by, &other.because)
}

/// By whom, and until when.
fn ends(words: &Words, pause: &Pause, mut out: String) -> String {
    if let Some(by) = &pause.by {
        let who = match by.as_str() {
            "coach" => words.say("morning.by_coach"),
            "screening" => words.say("rests.by_screening"),
            other => other,
        };
        let values = [("pause", (&out).into()), ("who", who.into())];
        out = words.fill("rests.by", &values);
    }
    if let Some(last) = pause.until.map(|day: Day| day.to_string()) {
        let values = [("pause", (&out).into()), ("day", (&last).into())];
        out = words.fill("rests.until", &values);
    }
    out
}

fn part(words: &Words, part: BodyPart) -> &str {
    words.say(&format!("body.{}", part.word().replace('-', "_")))
}
