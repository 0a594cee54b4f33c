//! The plan as iCalendar, each session a whole-day entry.
//!
//! # Source
//! RFC 5545: lines end with CR LF and are folded at 75 octets; commas, semicolons, backslashes and line ends are escaped.

use super::plan::Training;
use super::say::Say;
use crate::words::Value;

const LONGEST_LINE: usize = 75;

/// The plan of a client. The same plan gives the same text: nothing comes from a clock.
pub fn calendar(say: &Say<'_>, training: &Training, name: &str) -> String {
    let mut out = String::new();
    let mut line = |text: String| fold(&mut out, &text);
    let fill = |key: &str, values: &[(&str, Value<'_>)]| {
        say.words.fill(&format!("training.{key}"), values)
    };
    line("BEGIN:VCALENDAR".into());
    line("VERSION:2.0".into());
    line("PRODID:-//Rungbook//Plan//EN".into());
    if let Some(why) = training.refused {
        let title = fill("event_refused", &[("name", Value::Text(name))]);
        let says = [say.refusal(why, training.today), say.say("careful")].join("\n");
        event(&mut line, &compact(training.today), &title, &says);
    }
    for session in &training.sessions {
        let mut says: Vec<String> = session
            .lines
            .iter()
            .map(|l| {
                format!(
                    "{}: {}, {}",
                    say.named(l.movement),
                    say.sets(l),
                    say.rest(l)
                )
            })
            .collect();
        says.push(say.say("careful"));
        let key = match session.lighter {
            true => "event_lighter",
            false => "event",
        };
        let values = [("week", session.week.into()), ("name", Value::Text(name))];
        let title = fill(key, &values);
        event(&mut line, &compact(session.on), &title, &says.join("\n"));
    }
    for retest in &training.retests {
        let tests: Vec<String> = retest.tests.iter().map(|ix| say.named(*ix)).collect();
        let list = say.words.list(&tests);
        let says = fill("event_rested", &[("list", (&list).into())]);
        event(
            &mut line,
            &compact(retest.on),
            &say.say("event_retest"),
            &says,
        );
    }
    line("END:VCALENDAR".into());
    out
}

fn compact(day: crate::curriculum::Day) -> String {
    day.to_string().replace('-', "")
}

fn event(line: &mut impl FnMut(String), day: &str, summary: &str, says: &str) {
    let key = blake3::hash(format!("{day}{summary}{says}").as_bytes()).to_hex();
    line("BEGIN:VEVENT".into());
    line(format!("UID:{}@rungbook", &key[..20]));
    line(format!("DTSTAMP:{day}T000000Z"));
    line(format!("DTSTART;VALUE=DATE:{day}"));
    line(format!("SUMMARY:{}", escape(summary)));
    line(format!("DESCRIPTION:{}", escape(says)));
    line("TRANSP:TRANSPARENT".into());
    line("END:VEVENT".into());
}

fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\\' | ';' | ',' => out.extend(['\\', c]),
            '\n' => out.push_str("\\n"),
            '\r' => {}
            c => out.push(c),
        }
    }
    out
}

/// Writes a line, folded between characters.
fn fold(out: &mut String, line: &str) {
    let mut width = 0;
    for c in line.chars() {
        if width + c.len_utf8() > LONGEST_LINE {
            out.push_str("\r\n ");
            width = 1;
        }
        out.push(c);
        width += c.len_utf8();
    }
    out.push_str("\r\n");
}
