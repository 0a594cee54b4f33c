//! The plan as iCalendar, each session a whole-day entry.
//!
//! # Source
//! RFC 5545: lines end with CR LF and are folded at 75 octets; commas, semicolons, backslashes and line ends are escaped.

use super::plan::Plan;
use super::working::Practice;
use crate::curriculum::{Curriculum, MovementIx};
use std::fmt::Write;

const LONGEST_LINE: usize = 75;

/// The plan of a client. The same plan gives the same text: nothing comes from a clock.
pub fn calendar(curriculum: &Curriculum, practice: &[Practice], plan: &Plan, name: &str) -> String {
    let named = |ix: MovementIx| {
        let m = curriculum.movement(ix);
        let mark = m.cautions.first().map_or(String::new(), |c| {
            format!(" [{}]", curriculum.cautions.class(*c).signal.word())
        });
        format!("{}{mark}", m.name)
    };
    let mut out = String::new();
    let mut line = |text: String| fold(&mut out, &text);
    line("BEGIN:VCALENDAR".into());
    line("VERSION:2.0".into());
    line("PRODID:-//Rungbook//Plan//EN".into());
    let sessions = plan
        .weeks
        .iter()
        .flat_map(|w| w.sessions.iter().map(move |s| (w, s)));
    for (week, session) in sessions {
        let mut says = String::new();
        let practise = |says: &mut String, before: bool| {
            for p in practice.iter().filter(|p| p.before == before) {
                let sets = p.prescription.words(curriculum, p.movement);
                let _ = writeln!(says, "Skill practice: {}: {sets}", named(p.movement));
            }
        };
        practise(&mut says, true);
        for (ix, prescription) in &session.sets {
            let _ = writeln!(
                says,
                "{}: {}",
                named(*ix),
                prescription.words(curriculum, *ix)
            );
        }
        practise(&mut says, false);
        says.push_str("An estimate. Not medical advice: with pain, stop, and ask a licensed clinician. Read the cautions first.");
        let day = session.on.to_string().replace('-', "");
        let lighter = if week.lighter { ", lighter" } else { "" };
        event(
            &mut line,
            &day,
            &format!("Training, week {}{lighter} ({name})", week.number),
            &says,
        );
    }
    let day = plan.retest.to_string().replace('-', "");
    event(
        &mut line,
        &day,
        "Test again",
        "A rested day. Read before you start first.",
    );
    line("END:VCALENDAR".into());
    out
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
