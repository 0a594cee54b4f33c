//! A civil day, such as `2026-11-25`: counted, compared, printed. Knows no clock.

use super::words::Weekday;
use std::fmt;

/// Days since 1970-01-01 in the proleptic Gregorian calendar; years 1900 to 9999.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Day(i32);

/// Days of a week.
pub const WEEK: i32 = 7;

impl Day {
    /// The day so many days after 1970-01-01.
    pub fn of_count(days: i32) -> Day {
        Day(days)
    }

    /// Reads `2026-11-25`. `None` when it is not a day of the calendar.
    pub fn read(text: &str) -> Option<Day> {
        let parts: Vec<&str> = text.split('-').collect();
        let [year, month, day] = parts.as_slice() else {
            return None;
        };
        let number = |t: &str, len: usize| {
            let digits = t.len() == len && t.bytes().all(|b| b.is_ascii_digit());
            t.parse::<i32>().ok().filter(|_| digits)
        };
        let (year, month, day) = (number(year, 4)?, number(month, 2)?, number(day, 2)?);
        let found = Day(count(year, month, day));
        ((1900..=9999).contains(&year) && found.parts() == (year, month, day)).then_some(found)
    }

    /// What to type for a day that was written in another way: that very day, where it is one.
    pub fn meant(text: &str) -> String {
        match &Day::ways(text)[..] {
            [] => "write year, month and day, such as `2026-11-25`".to_string(),
            [one] => format!("write `{one}`"),
            [one, other, ..] => format!("write `{one}` or `{other}`, whichever is meant"),
        }
    }

    /// The days that a text in another order, with other marks or with the month's English name may mean.
    fn ways(text: &str) -> Vec<Day> {
        const MONTHS: [&str; 12] = [
            "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec",
        ];
        let parts: Vec<&str> = text
            .split(|c: char| !c.is_alphanumeric())
            .filter(|p| !p.is_empty())
            .collect();
        let [first, second, third] = parts[..] else {
            return Vec::new();
        };
        let number = |t: &str| {
            let digits = t.trim_end_matches(|c: char| c.is_ascii_alphabetic());
            (digits.len() <= 4)
                .then(|| digits.parse::<i32>().ok())
                .flatten()
        };
        let month = |t: &str| {
            let lower = t.to_lowercase();
            let named = MONTHS.iter().position(|m| lower.starts_with(m));
            named.map(|at| at as i32 + 1)
        };
        let year = |n: i32| if n < 100 { 2000 + n } else { n };
        let mut out = Vec::new();
        let mut take = |y: Option<i32>, m: Option<i32>, d: Option<i32>| {
            if let (Some(y), Some(m), Some(d)) = (y.map(year), m, d)
                && let Some(day) = Day::read(&format!("{y:04}-{m:02}-{d:02}"))
                && !out.contains(&day)
            {
                out.push(day);
            }
        };
        if month(second).is_some() {
            take(number(third), month(second), number(first));
        } else if month(first).is_some() {
            take(number(third), month(first), number(second));
        } else if first.len() == 4 {
            take(number(first), number(second), number(third));
        } else {
            take(number(third), number(second), number(first));
            // Where days are written with strokes the month may come first.
            if text.contains('/') {
                take(number(third), number(first), number(second));
            }
        }
        out
    }

    /// How many days `self` lies after `other`; negative before it.
    pub fn days_after(self, other: Day) -> i32 {
        self.0 - other.0
    }

    /// The day so many days later.
    pub fn plus(self, days: i32) -> Day {
        Day(self.0 + days)
    }

    pub fn year(self) -> i32 {
        self.parts().0
    }

    pub fn weekday(self) -> Weekday {
        // 1970-01-01 was a Thursday.
        Weekday::ALL[(self.0 + 3).rem_euclid(7) as usize]
    }

    /// Year, month, day of the month.
    fn parts(self) -> (i32, i32, i32) {
        let shifted = self.0 + 719_468;
        let era = shifted.div_euclid(146_097);
        let of_era = shifted.rem_euclid(146_097);
        let year_of_era = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
        let of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
        let month = (5 * of_year + 2) / 153;
        let day = of_year - (153 * month + 2) / 5 + 1;
        let month = if month < 10 { month + 3 } else { month - 9 };
        (year_of_era + era * 400 + i32::from(month <= 2), month, day)
    }
}

/// The days from 1970-01-01 to a date: the usual shift of the year's start to March makes leap days fall at its end.
fn count(year: i32, month: i32, day: i32) -> i32 {
    let year = year - i32::from(month <= 2);
    let era = year.div_euclid(400);
    let year_of_era = year.rem_euclid(400);
    let of_year = (153 * (month + if month > 2 { -3 } else { 9 }) + 2) / 5 + day - 1;
    era * 146_097 + year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + of_year - 719_468
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (year, month, day) = self.parts();
        write!(f, "{year:04}-{month:02}-{day:02}")
    }
}

#[cfg(test)]
mod tests {
    use super::{Day, Weekday};

    #[test]
    fn days_of_the_calendar() {
        // Known days: the epoch, a leap day of a century year, a day of this project's first year.
        for (count, text) in [
            (0, "1970-01-01"),
            (11_016, "2000-02-29"),
            (20_782, "2026-11-25"),
        ] {
            assert_eq!(Day::of_count(count).to_string(), text);
            assert_eq!(Day::read(text), Some(Day::of_count(count)));
        }
        assert_eq!(Day::of_count(-1).to_string(), "1969-12-31");
        for days in (-20_000..90_000).step_by(13) {
            let day = Day::of_count(days);
            assert_eq!(Day::read(&day.to_string()), Some(day));
        }
    }

    #[test]
    fn days_of_the_week() {
        // A Sunday that everybody could look up: the first of January 2023; the leap day of 2000 was a Tuesday.
        for (text, weekday) in [("2023-01-01", Weekday::Sun), ("2000-02-29", Weekday::Tue)] {
            let day = Day::read(text).expect("a day");
            assert_eq!(day.weekday(), weekday);
            assert_eq!(day.plus(7).weekday(), weekday);
            assert_eq!(day.year().to_string(), text[..4]);
        }
    }

    #[test]
    fn what_is_no_day() {
        for text in [
            "2026-02-29",
            "2026-13-01",
            "2026-1-01",
            "26-11-25",
            "2026-11-31",
            "+026-11-25",
            "",
        ] {
            assert_eq!(Day::read(text), None, "{text}");
        }
    }
}
