//! What a history says in one line, beside its drawing.

use super::say::Telling;
use crate::curriculum::Mass;
use crate::curriculum::target::{Got, ONE};
use crate::history::{H, History, Point, Unit};
use crate::words::Value;

impl Telling<'_> {
    /// Falling, standing still with what to change, or the trend; else that it is too early. The page's script says the same.
    pub fn history(&self, of: &History) -> String {
        if let Some(fallen) = &of.fallen {
            let [first, then] = fallen.last.each_ref().map(|p| self.point(of.movement, p));
            let best = self.point(of.movement, &fallen.best);
            let day = self.day(fallen.best.on);
            let values = [
                ("first", (&first).into()),
                ("then", (&then).into()),
                ("best", (&best).into()),
                ("day", (&day).into()),
            ];
            return self.say.words.fill("history.falls", &values);
        }
        if let Some(still) = &of.still {
            let advice = self.advice(still.advice);
            let values = [
                ("n", Value::Whole(still.since.weeks.into())),
                ("advice", (&advice).into()),
            ];
            let key = match still.falling {
                true => "history.slides",
                false => "history.still",
            };
            return self.say.words.fill(key, &values);
        }
        let Some(trend) = of.trend else {
            let values = [
                ("n", H.tests.into()),
                ("weeks", Value::Whole((H.trend_days / 7).into())),
            ];
            return self.say.words.fill("history.early", &values);
        };
        let tenths = (trend.per_week.abs() * 10.0).round() as i64;
        if tenths == 0 {
            return self.say.words.say("history.level").to_string();
        }
        let amount = match trend.unit {
            Unit::Amount(measure) => self.got(&Got::of(measure, 1, tenths * ONE / 10, 0, None)),
            Unit::Load => {
                let mass = Mass::of_units(tenths * crate::curriculum::target::KILOGRAM / 10);
                crate::curriculum::target::say_mass(mass, self.say.units, self.say.words)
            }
        };
        let key = match trend.per_week > 0.0 {
            true => "history.more",
            false => "history.less",
        };
        self.say.words.fill(key, &[("amount", (&amount).into())])
    }

    /// One test day's best.
    pub fn result(&self, of: &History, point: &Point) -> String {
        self.point(of.movement, point)
    }

    /// A result or a threshold in words.
    pub fn amount_of(&self, got: &Got) -> String {
        self.got(got)
    }
}
