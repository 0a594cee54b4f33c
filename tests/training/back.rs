//! The way back from time off. It was the old number straight after the easier sessions, which a coach and a physiotherapist would
//! not sign: now a step stands between, and nothing is above the last session before the pause. Common practice, no source.

use super::coach::{Case, Line};
use rungbook::curriculum::target::ONE;

impl Case<'_> {
    /// No known line asks more than the last session of its movement in the log: in a set, in sets, in weight; and none is shown.
    pub fn never_above_before(&self) {
        let c = &self.proof.curriculum;
        for line in self.lines().iter().filter(|l| l.says("block") != "range") {
            let id = line.movement.id();
            let mut log = self.person.trained.iter();
            let last = log.rfind(|t| c.movement(t.movement).id() == id);
            let Some(last) = last.filter(|_| !line.is_new()) else {
                continue;
            };
            assert_ne!(line.says("rule"), "show it", "{}: {}", self.name, line.line);
            let first = (last.did[0] / ONE) as f64;
            assert!(
                line.number("amount") <= first && line.number("sets") <= last.did.len() as f64,
                "{}: above {first} x {}: {}",
                self.name,
                last.did.len(),
                line.line
            );
        }
    }

    /// What a movement's lines ask in a set in each of these weeks, all alike.
    pub fn comes_back(&self, id: &str, weeks: &[(i64, i64)]) {
        for (week, amount) in weeks {
            let of = self.of_week(*week).into_iter();
            let of: Vec<Line<'_>> = of.filter(|l| l.movement.id().as_str() == id).collect();
            self.some(&of, &format!("{id} in week {week}"), &|_| true);
            self.all(&of, &format!("{amount} in week {week}"), &|l| {
                l.number("amount") == *amount as f64
            });
        }
    }

    /// Of these patterns the known lines of a week are less and say why.
    pub fn is_on_the_way(&self, week: i64, patterns: &[&str]) {
        let of = self.of_week(week).into_iter();
        let of: Vec<Line<'_>> = of
            .filter(|l| patterns.contains(&l.pattern()) && !l.is_new())
            .collect();
        self.some(&of, "comes back", &|_| true);
        self.all(&of, "on the way back", &|l| {
            l.says("rule") == "time off"
                && l.says("why").contains("on the way back")
                && l.number("sets") <= 3.0
        });
    }
}
