//! Loads: what a set moves, and what a week of sessions adds up to.

use crate::curriculum::target::Added;
use crate::curriculum::{BodyWeight, Day};
use crate::results::{LIMITS, Session};

/// The load that a set moves, in kilograms: a share of body weight (0 to 1), plus what is added, less what helps. Never below 0.
pub fn moved(share: f64, weight: BodyWeight, added: Option<Added>) -> f64 {
    let weight = weight.mass().kilograms();
    let added = match added {
        None => 0.0,
        Some(Added::Mass(mass)) => mass.kilograms(),
        Some(Added::BodyWeight(more)) => more.fraction() * weight,
    };
    (share * weight + added).max(0.0)
}

/// The load of a session: rating of effort (0 to 10, asked about 30 minutes after) times minutes.
///
/// # Source
/// Foster et al. 2001, J Strength Cond Res 15(1):109-115.
pub fn session(effort: f64, minutes: f64) -> f64 {
    effort * minutes
}

/// A week of daily loads, rest days as 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WeekLoad {
    pub total: f64,
    /// Mean daily load over its standard deviation; at most [`MOST_MONOTONY`].
    pub monotony: f64,
    /// Total times monotony.
    pub strain: f64,
}

/// Where all days are nearly equal the deviation vanishes; the quotient is capped (practice of some, no one source).
pub const MOST_MONOTONY: f64 = LIMITS.monotony as f64;

/// The load of the last seven days, `today` the last of them; `None` without a session in them.
pub fn last_week(sessions: &[Session], today: Day) -> Option<WeekLoad> {
    let mut days = [0.0; 7];
    for s in sessions {
        let ago = usize::try_from(today.days_after(s.on)).ok();
        if let Some(day) = ago.and_then(|ago| days.get_mut(ago)) {
            *day += session(s.effort.into(), s.minutes.into());
        }
    }
    week(&days)
}

/// Monotony and strain of seven days, by the standard deviation of the population: the papers do not say which they mean, and
/// these seven days are the whole week. `None` for a week without load.
///
/// # Source
/// Foster 1998, Med Sci Sports Exerc 30(7):1164-1168.
pub fn week(days: &[f64; 7]) -> Option<WeekLoad> {
    let total: f64 = days.iter().sum();
    if total <= 0.0 {
        return None;
    }
    let mean = total / 7.0;
    let variance = days.iter().map(|d| (d - mean) * (d - mean)).sum::<f64>() / 7.0;
    let monotony = match variance > 0.0 {
        true => (mean / libm::sqrt(variance)).min(MOST_MONOTONY),
        false => MOST_MONOTONY,
    };
    Some(WeekLoad {
        total,
        monotony,
        strain: total * monotony,
    })
}

#[cfg(test)]
mod tests {
    use super::{moved, session, week};
    use crate::curriculum::target::Added;
    use crate::curriculum::{BodyShare, BodyWeight, Mass};

    /// A week worked by hand: effort x minutes of 7x60, rest, 5x45, 8x75, rest, 6x90, 3x30 (Foster 1998 prints none that was
    /// seen): total 1875, mean 267.857, population deviation 234.366.
    #[test]
    fn a_worked_week() {
        let days = [
            session(7.0, 60.0),
            0.0,
            session(5.0, 45.0),
            session(8.0, 75.0),
            0.0,
            session(6.0, 90.0),
            session(3.0, 30.0),
        ];
        let load = week(&days).expect("a load");
        assert_eq!(load.total, 1875.0);
        assert!((load.monotony - 1.1429).abs() < 0.0001, "{load:?}");
        assert!((load.strain - 2142.9).abs() < 0.1, "{load:?}");
        assert_eq!(week(&[0.0; 7]), None);
        assert_eq!(week(&[5.0; 7]).expect("a load").monotony, 10.0);
    }

    #[test]
    fn what_is_moved() {
        // A push-up of 0.64 body weight (Ebben et al. 2011) with a 10 kg vest for 70 kg: 54.8 kg, worked by hand.
        let weight = BodyWeight::new(Mass::of_kilograms(70)).expect("somebody weighs that");
        let with = |kilograms| Some(Added::Mass(Mass::of_kilograms(kilograms)));
        assert!((moved(0.64, weight, with(10)) - 54.8).abs() < 1e-9);
        // The same with a quarter of body weight, 17.5 kg: 62.3 kg.
        let quarter = Some(Added::BodyWeight(BodyShare::of_millionths(250_000)));
        assert!((moved(0.64, weight, quarter) - 62.3).abs() < 1e-9);
        // A pull-up with 80 kg of help for 70 kg moves nothing.
        assert_eq!(moved(1.0, weight, with(-80)), 0.0);
    }
}
