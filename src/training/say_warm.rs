//! The warm-up of a session in words.

use super::constants::K;
use super::facts::Group;
use super::line::{Line, Unit};
use super::plan::{Sore, Training};
use super::say::Say;
use super::session::Session;
use super::trainee::down;
use crate::curriculum::Mass;
use crate::curriculum::school::WarmUpLine;
use crate::curriculum::words::BodyPart;

impl Say<'_> {
    /// The lines of a warm-up: what to leave out, the school's for all and for the classes of the day, one easy set of the first
    /// strength line, and of pulling, pushing and legs besides of the first that bears on a part that hurts: the school's own for that
    /// is left out. Common practice, no source.
    pub fn warm_up(&self, session: &Session, training: &Training) -> Vec<String> {
        let mut out = self.warm_up_plain(session, training);
        let hurts = |line: &Line| {
            let facts = self.roster.of(line.movement);
            let sore =
                |(part, sore): &(BodyPart, Sore)| *sore == Sore::More && facts.bears_on(*part);
            training.sore.iter().any(sore)
        };
        let mut served: Vec<Option<Group>> = Vec::new();
        for line in session.lines.iter().filter(|l| l.block.is_hard()) {
            let group = self.roster.of(line.movement).group();
            let more = group != Some(Group::Core) && !served.contains(&group) && hurts(line);
            if served.is_empty() || more {
                served.push(group);
                out.extend(self.easy_set(line));
            }
        }
        out
    }

    /// Half of a set with half of its weight; nothing where that warms nobody up. Common practice, no source.
    fn easy_set(&self, line: &Line) -> Option<String> {
        let amount = line.amount / 2;
        let least = match line.unit {
            Unit::Reps => K.fits[0],
            Unit::Seconds => K.hold_fits,
        };
        if amount < i64::from(least) {
            return None;
        }
        let plate = self.roster.plate();
        let half = |mass: Mass| plate * down(mass.part(0.5) / plate.part(1.0));
        let mass = line.mass.map(|mass| match mass.is_added() {
            true => half(mass),
            false => mass,
        });
        let key = match mass == Some(Mass::NONE) {
            true => "easy_set_bare",
            false => "easy_set",
        };
        let (amount, movement) = (self.one_set(line, amount, mass), self.named(line.movement));
        let values = [
            ("amount", (&amount).into()),
            ("movement", (&movement).into()),
        ];
        Some(self.fill(key, &values))
    }

    /// The same without the easy set, which names a movement.
    pub fn warm_up_plain(&self, session: &Session, training: &Training) -> Vec<String> {
        let curriculum = self.roster.curriculum;
        let school = &curriculum.school().warm_up;
        let of_today = |class: &str| {
            let bears = |line: &Line| {
                let m = curriculum.movement(line.movement);
                m.cautions()
                    .iter()
                    .any(|c| curriculum.cautions().class(*c).id == class)
            };
            session.lines.iter().any(bears)
        };
        let mut out = Vec::new();
        out.extend(self.gently(training));
        let classes = school
            .iter()
            .filter(|(class, _)| *class != "always" && of_today(class));
        let lines = school.get("always").into_iter();
        let lines = lines.chain(classes.map(|(_, lines)| lines)).flatten();
        // Not what bears on a part that rests or hurts at 3 or more, nor what wants something that is not at hand.
        let spared = training.sore.iter();
        let spared = spared.filter(|(_, sore)| !matches!(sore, Sore::Above(_)));
        let spared: Vec<BodyPart> = spared.map(|(part, _)| *part).collect();
        let fine = |line: &&WarmUpLine| {
            !spared.iter().any(|part| line.bears_on(*part))
                && line.is_at_hand(training.have.as_deref())
        };
        out.extend(lines.filter(fine).map(|line| line.text.clone()));
        out
    }
}
