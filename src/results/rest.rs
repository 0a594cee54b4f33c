//! What is left alone: pauses, restrictions, clearances and pains of a results file.

use super::entry::{Reader, record_items};
use super::{Clearance, Pain, Pause, Paused};
use crate::curriculum::caution::ClassIx;
use crate::curriculum::words::{BodyPart, PainSign};
use crate::curriculum::{Day, keys};
use crate::reading::fields::{self, Record};
use crate::source::yaml::Node;
use crate::source::{Diagnostic, Rule, suggest};

impl Reader<'_> {
    /// Reads `paused`, `restrict`, `cleared` and `pain`.
    pub fn rests(&mut self, record: &Record<'_>) {
        for item in record_items(record, "paused", self.findings) {
            let read = self.pause(item, "a pause", "paused");
            self.person.pauses.extend(read);
        }
        for item in record_items(record, "restrict", self.findings) {
            let read = self.pause(item, "a restriction", "restricted");
            self.person.restrictions.extend(read);
        }
        for item in record_items(record, "cleared", self.findings) {
            let read = self.clearance(item);
            self.person.cleared.extend(read);
        }
        for item in record_items(record, "pain", self.findings) {
            let read = self.pain(item);
            self.person.pains.extend(read);
        }
        worst_of_each_day(&mut self.person.pains);
    }

    pub(super) fn pause(&mut self, node: &Node, called: &str, word: &str) -> Option<Pause> {
        let record = Record::open(node, called, keys::RESULTS_PAUSED, self.findings)?;
        let on = self.day(&record, "on")?.unwrap_or(self.today);
        let until = self.until(&record, on)?;
        let named = |key| record.get(key).map(|node| (key, node));
        let mut named = ["part", "movement", "class", "pattern"]
            .into_iter()
            .filter_map(named);
        let what = match (named.next(), named.next()) {
            (Some((key, node)), None) => self.spared(key, node, on, word)?,
            _ => {
                let message =
                    format!("{called} names a part, a movement, a class or a pattern, one of them");
                self.findings.push(
                    Diagnostic::new(Rule::BadResult, node.span, message)
                        .label("here")
                        .help("write `part: shoulder`, or `movement: ` and its id, or `class: inverted`"),
                );
                return None;
            }
        };
        Some(Pause {
            what,
            on,
            until,
            by: record.text("by", self.findings),
            because: record.text("because", self.findings),
        })
    }

    fn spared(&mut self, key: &str, node: &Node, on: Day, word: &str) -> Option<Paused> {
        match key {
            "part" => fields::word(node, Rule::UnknownPart, self.findings).map(Paused::Part),
            "pattern" => fields::word(node, Rule::BadValue, self.findings).map(Paused::Pattern),
            "class" => self.class(node).map(Paused::Class),
            _ => {
                let id = fields::text(node, self.findings)?;
                let found = self.known(&id, node.span);
                if found.is_none() {
                    let why = "this curriculum has no such movement";
                    self.aside(&id, word.to_string(), on, why);
                }
                found.map(Paused::Movement)
            }
        }
    }

    /// The last day of an entry; `None` with a finding where it is no day or lies before the first.
    pub(super) fn until(&mut self, record: &Record<'_>, on: Day) -> Option<Option<Day>> {
        let until = self.day(record, "until")?;
        if let (Some(last), Some(node)) = (until, record.get("until"))
            && last < on
        {
            self.findings.push(
                Diagnostic::new(
                    Rule::BadDay,
                    node.span,
                    format!("the last day, {last}, lies before the first, {on}"),
                )
                .label("before it begins")
                .help("give `until` a later day, or delete it"),
            );
            return None;
        }
        Some(until)
    }

    /// A caution class of the program or of the school.
    fn class(&mut self, node: &Node) -> Option<ClassIx> {
        let id = fields::text(node, self.findings)?;
        let book = self.curriculum.cautions();
        let found = book.find(&id);
        if found.is_none() {
            let known: Vec<&str> = book.classes().iter().map(|c| c.id.as_str()).collect();
            let help = suggest::did_you_mean(&id, known.iter().copied())
                .unwrap_or_else(|| format!("type one of {}", suggest::listed(&known, "or")));
            self.findings.push(
                Diagnostic::new(
                    Rule::UnknownCaution,
                    node.span,
                    format!("there is no caution class `{id}`"),
                )
                .label("not in the list")
                .help(help),
            );
        }
        found
    }

    fn clearance(&mut self, node: &Node) -> Option<Clearance> {
        let record = Record::open(node, "a clearance", keys::RESULTS_CLEARED, self.findings)?;
        let on = self.day(&record, "on")?.unwrap_or(self.today);
        let until = self.until(&record, on)?;
        let class = self.class(record.get("class")?)?;
        let by = record.text("by", self.findings);
        Some(Clearance {
            class,
            on,
            until,
            by,
        })
    }

    fn pain(&mut self, node: &Node) -> Option<Pain> {
        let record = Record::open(node, "a pain", keys::RESULTS_PAIN, self.findings)?;
        let on = self.day(&record, "on")?.unwrap_or(self.today);
        let part: BodyPart = fields::word(record.get("part")?, Rule::UnknownPart, self.findings)?;
        let score = self.whole(&record, "score", 0..=10, "a pain")?;
        let next_morning = match record.get("next_morning") {
            Some(_) => Some(self.whole(&record, "next_morning", 0..=10, "a pain")?),
            None => None,
        };
        let signs: Vec<PainSign> = record.get("signs").map_or_else(Vec::new, |node| {
            fields::words(node, Rule::BadValue, self.findings)
        });
        if on > self.today {
            let got = format!(
                "{} {score} of 10",
                crate::curriculum::words::Word::word(part)
            );
            self.aside("pain", got, on, "its day is still to come");
            return None;
        }
        Some(Pain {
            part,
            score,
            next_morning,
            on,
            signs,
        })
    }
}

/// Of a part and a day the worst counts, whatever was said last: what hurt at noon is not over because it is quiet an hour later
/// (common practice, no source). Each pain of that day says the highest numbers and every sign.
fn worst_of_each_day(pains: &mut [Pain]) {
    for at in 0..pains.len() {
        let (before, rest) = pains.split_at_mut(at);
        let Some(later) = rest.first_mut() else {
            return;
        };
        for pain in before {
            if (pain.part, pain.on) != (later.part, later.on) {
                continue;
            }
            let score = pain.score.max(later.score);
            let next_morning = pain.next_morning.max(later.next_morning);
            let both = pain.signs.iter().chain(&later.signs).copied();
            let mut signs: Vec<PainSign> = both.collect();
            signs.sort_unstable();
            signs.dedup();
            for one in [&mut *pain, &mut *later] {
                one.score = score;
                one.next_morning = next_morning;
                one.signs.clone_from(&signs);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn of_a_day_the_worst_counts() {
        let day = |text| Day::read(text).expect("a day");
        let pain = |part, score, on, signs: &[PainSign]| Pain {
            part,
            score,
            next_morning: None,
            on: day(on),
            signs: signs.to_vec(),
        };
        let (noon, next) = ("2026-11-20", "2026-11-21");
        let mut pains = [
            pain(BodyPart::Wrist, 8, noon, &[]),
            pain(BodyPart::Wrist, 1, noon, &[PainSign::Numb]),
            pain(BodyPart::Knee, 2, noon, &[]),
            pain(BodyPart::Wrist, 1, next, &[]),
        ];
        worst_of_each_day(&mut pains);
        assert_eq!(pains.each_ref().map(|p| p.score), [8, 8, 2, 1]);
        let signs = pains.each_ref().map(|p| p.signs.len());
        assert_eq!(signs, [1, 1, 0, 0]);
    }
}
