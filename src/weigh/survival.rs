//! How long something takes when not everybody has got there yet: the Kaplan-Meier estimate.

use super::wilson::Z;

/// One person's days on the way, and whether they arrived at the end of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Way {
    pub days: i32,
    pub arrived: bool,
}

/// The curve after an arrival: the share still on the way, with its 95 % interval; all from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    pub days: i32,
    pub share: f64,
    pub low: f64,
    pub high: f64,
}

/// The estimate for a group of people.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Curve {
    pub people: usize,
    pub arrived: usize,
    pub steps: Vec<Step>,
}

/// Shares so near to each other are one: a half by many steps is a half.
const SAME: f64 = 1e-12;

impl Curve {
    /// The estimate of Kaplan & Meier 1958 (J Am Stat Assoc 53:457-481), its interval by Greenwood's variance on the scale
    /// log(-log) (Kalbfleisch & Prentice, The Statistical Analysis of Failure Time Data).
    ///
    /// # Complexity
    /// That of sorting the ways.
    pub fn of(ways: &[Way]) -> Curve {
        let mut sorted = ways.to_vec();
        sorted.sort_by_key(|way| way.days);
        let (mut share, mut variance) = (1.0, 0.0);
        let mut steps = Vec::new();
        let mut on_the_way = sorted.len();
        for same_day in sorted.chunk_by(|a, b| a.days == b.days) {
            let arrived = same_day.iter().filter(|way| way.arrived).count();
            if arrived > 0 {
                let (n, d) = (on_the_way as f64, arrived as f64);
                share *= 1.0 - d / n;
                variance += d / (n * (n - d));
                let (low, high) = interval(share, variance);
                steps.push(Step {
                    days: same_day[0].days,
                    share,
                    low,
                    high,
                });
            }
            on_the_way -= same_day.len();
        }
        Curve {
            people: ways.len(),
            arrived: ways.iter().filter(|way| way.arrived).count(),
            steps,
        }
    }

    /// The first day on which at most this share is still on the way; `None` if the curve stays above it.
    pub fn falls_to(&self, share: f64) -> Option<i32> {
        self.first(|step| step.share <= share + SAME)
    }

    /// The ends of the 95 % interval of [`Curve::falls_to`]; an end that the curve does not reach is `None`.
    pub fn falls_within(&self, share: f64) -> (Option<i32>, Option<i32>) {
        (
            self.first(|step| step.low <= share + SAME),
            self.first(|step| step.high <= share + SAME),
        )
    }

    fn first(&self, holds: impl Fn(&Step) -> bool) -> Option<i32> {
        self.steps.iter().find(|step| holds(step)).map(|s| s.days)
    }
}

/// Of a curve that has come to the ground nothing is known but that.
fn interval(share: f64, variance: f64) -> (f64, f64) {
    if share <= 0.0 {
        return (0.0, 1.0);
    }
    let log = share.ln();
    let spread = Z * variance.sqrt() / log.abs();
    let end = |sign: f64| (log * (sign * spread).exp()).exp();
    (end(1.0), end(-1.0))
}

#[cfg(test)]
mod tests {
    use super::{Curve, Way};

    /// Freireich et al. 1963 (Blood 21:699-716), the 21 patients under 6-mercaptopurine, weeks of remission, as in many
    /// textbooks: 0.857 at 6, 0.807 at 7, 0.753 at 10, 0.690 at 13, 0.627 at 16, 0.538 at 22, 0.448 at 23; median 23.
    #[test]
    fn a_textbook_curve() {
        let arrived = [6, 6, 6, 7, 10, 13, 16, 22, 23];
        let still = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35];
        let way = |arrived: bool| {
            move |days: &i32| Way {
                days: *days,
                arrived,
            }
        };
        let ways: Vec<Way> = arrived
            .iter()
            .map(way(true))
            .chain(still.iter().map(way(false)))
            .collect();
        let curve = Curve::of(&ways);
        let shares: Vec<i64> = curve
            .steps
            .iter()
            .map(|s| (s.share * 1000.0).round() as i64)
            .collect();
        assert_eq!(shares, [857, 807, 753, 690, 627, 538, 448]);
        assert_eq!((curve.people, curve.arrived), (21, 9));
        assert_eq!(curve.falls_to(0.5), Some(23));
    }

    #[test]
    fn nobody_gives_no_curve() {
        let curve = Curve::of(&[]);
        assert_eq!((curve.falls_to(0.5), curve.steps.len()), (None, 0));
        assert_eq!(curve.falls_within(0.5), (None, None));
    }
}
