//! Why something rests, in words: who paused it, since when, until when.

use crate::curriculum::words::{BodyPart, Word};
use crate::curriculum::{Curriculum, Day, Owner};
use crate::readiness::Cause;
use crate::results::{Pause, Paused, Person};
use crate::words::Words;

/// A cause in words.
pub fn rests(curriculum: &Curriculum, words: &Words, person: &Person, cause: Cause) -> String {
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
    let what = match pause.what {
        Paused::Movement(ix) => curriculum.named(Owner::Movement(ix), words),
        Paused::Part(of) => part(words, of).to_string(),
        Paused::Class(ix) => {
            let name = curriculum.cautions.class(ix).name(words);
            words.fill("rests.class", &[("name", name.into())])
        }
        Paused::Pattern(of) => words
            .say(&format!("pattern.{}", of.word().replace(' ', "_")))
            .to_string(),
    };
    let key = match cause {
        Cause::Restriction(_) => "rests.left_alone",
        _ => "rests.paused",
    };
    let since = pause.on.to_string();
    let values = [("what", (&what).into()), ("day", (&since).into())];
    ends(words, pause, words.fill(key, &values))
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
