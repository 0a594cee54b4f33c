//! What is said for safety before a session: pains that stop their part, somebody who stands by, and the breath.

use super::plan::{Sore, Training};
use super::reason::Reason;
use super::say::Say;
use super::session::Session;
use crate::curriculum::caution::{Book, Shipped, Word};
use crate::curriculum::words::BodyPart;
use crate::curriculum::{Day, MovementIx};
use crate::readiness::{Cause, causes, goes_on_to};
use crate::results::{Pain, Person};

/// The classes of which a session says once what they ask, and the word that says it.
const ASKED: [(Shipped, &str); 2] = [
    (Shipped::Alone, "not_alone"),
    (Shipped::BreathHolding, "breathe"),
];

/// Something to keep to in a session, and the movements for which.
pub struct Care {
    /// What, in words.
    pub asks: String,
    pub movements: Vec<MovementIx>,
}

/// The parts of the spine that a pain can be in.
const SPINE: [BodyPart; 3] = [BodyPart::Neck, BodyPart::UpperBack, BodyPart::LowerBack];

impl Say<'_> {
    /// A part that hurts, and what follows for today.
    pub(super) fn hurts(&self, reason: &Reason) -> String {
        let Reason::Hurts {
            part,
            score,
            next,
            less,
            least,
            near,
        } = *reason
        else {
            return String::new();
        };
        let key = match (next, less) {
            _ if near => "why.pain_near",
            _ if least => "why.pain_least",
            (true, _) => "why.pain_worse",
            (_, true) => "why.pain_less",
            _ => "why.pain_hold",
        };
        let values = [("part", self.part(part).into()), ("score", score.into())];
        self.fill(key, &values)
    }

    /// What hurt, when, with its signs; where the part rests for it (`rests_above` a number from 0 to 10), whom to ask before it is
    /// trained again, and until when.
    pub fn pain(&self, pain: &Pain, rests_above: Option<u32>) -> String {
        let fill = |key: &str, values: &[(&str, crate::words::Value<'_>)]| {
            self.words.fill(&format!("morning.{key}"), values)
        };
        let (part, day) = (self.part(pain.part), pain.on.to_string());
        let values = [
            ("part", part.into()),
            ("score", pain.score.into()),
            ("day", (&day).into()),
        ];
        let mut out = fill("pain", &values);
        if let Some(n) = pain.next_morning.filter(|m| *m > pain.score) {
            out = fill("pain_morning", &[("pain", (&out).into()), ("n", n.into())]);
        }
        if !pain.signs.is_empty() {
            let sign = |sign: &crate::curriculum::words::PainSign| {
                self.say(&format!("sign.{}", sign.word().replace('-', "_")))
            };
            let signs: Vec<String> = pain.signs.iter().map(sign).collect();
            let signs = self.words.list(&signs);
            let values = [("pain", (&out).into()), ("signs", (&signs).into())];
            out = fill("pain_signs", &values);
        }
        let Some(above) = rests_above else {
            return out;
        };
        let until = self.until(pain, above);
        let values = [
            ("pain", (&out).into()),
            ("part", part.into()),
            ("until", (&until).into()),
        ];
        fill("pain_stops", &values)
    }

    /// Until what a part rests: a sign is for a clinician, a number for a lower one.
    fn until(&self, pain: &Pain, above: u32) -> String {
        match above {
            _ if !pain.signs.is_empty() => self.words.say("rests.until_sign").to_string(),
            0 => self.words.say("rests.until_none").to_string(),
            n => self.words.fill("rests.until_entry", &[("n", n.into())]),
        }
    }

    /// What to leave out, with what to go gently, and when to stop a line: once a session. Common practice, no source.
    pub fn gently(&self, training: &Training) -> Option<String> {
        let parts = |rest: bool| {
            let of = training.sore.iter();
            let of = of.filter(|s| (s.1 == Sore::Rests) == rest);
            let of: Vec<&str> = of.map(|s| self.part(s.0)).collect();
            self.words.list(&of)
        };
        let fill = |key: &str, values: &[(&str, crate::words::Value<'_>)]| {
            self.words.fill(&format!("training.{key}"), values)
        };
        let mut out = Vec::new();
        let rests = parts(true);
        if !rests.is_empty() {
            out.push(fill("leave_out", &[("parts", (&rests).into())]));
        }
        let hurts = parts(false);
        let stops = training.sore.iter().map(|s| s.1);
        let above = stops.clone().filter_map(|stop| match stop {
            Sore::Above(n) => Some(n),
            Sore::Rests | Sore::More => None,
        });
        if stops.clone().any(|stop| stop == Sore::More) {
            out.push(fill("go_gently_more", &[("parts", (&hurts).into())]));
        } else if let Some(above) = above.min() {
            let values = [("parts", (&hurts).into()), ("n", above.into())];
            out.push(fill("go_gently", &values));
        }
        (!out.is_empty()).then(|| out.join(" "))
    }

    /// A pain that stops its part on a day. For the back and the neck with the signs of a pressed spinal cord or cauda equina, which are
    /// for the same hour (Greenhalgh et al. 2018, Musculoskelet Sci Pract 37:69-74).
    pub fn stopping(&self, person: &Person, pain: &Pain, today: Day) -> String {
        let said = self.pain(pain, Some(goes_on_to(person, pain.part, today)));
        let sign = self.words.say("hurts.now_spine");
        let values = [("pain", (&said).into()), ("sign", sign.into())];
        match SPINE.contains(&pain.part) {
            true => self.words.fill("morning.emergency_for", &values),
            false => said,
        }
    }

    /// The pains that stop their part on a day: what is said before all else.
    pub fn clinician(&self, person: &Person, today: Day) -> Vec<String> {
        let stopping = causes(person, today).into_iter();
        let pains = stopping.filter_map(|cause| match cause {
            Cause::Pain(at) => person.pains.get(at),
            _ => None,
        });
        pains
            .map(|pain| self.stopping(person, pain, today))
            .collect()
    }

    /// Who stands by, and how to breathe: once a session, with the movements for which.
    pub fn care(&self, session: &Session) -> Vec<Care> {
        let of = |(class, key): (Shipped, &str)| {
            let bears = |ix: &MovementIx| {
                let m = self.roster.curriculum.movement(*ix);
                m.cautions().contains(&Book::shipped(class))
            };
            let mut movements: Vec<MovementIx> = Vec::new();
            for ix in session.lines.iter().map(|l| l.movement).filter(bears) {
                if !movements.contains(&ix) {
                    movements.push(ix);
                }
            }
            (!movements.is_empty()).then(|| Care {
                asks: self.say(key),
                movements,
            })
        };
        ASKED.into_iter().filter_map(of).collect()
    }

    /// The same as lines.
    pub fn care_lines(&self, session: &Session) -> Vec<String> {
        let line = |care: Care| {
            let names: Vec<String> = care.movements.iter().map(|ix| self.named(*ix)).collect();
            format!("{}: {}", care.asks, self.words.list(&names))
        };
        self.care(session).into_iter().map(line).collect()
    }
}
