//! The clock: today's day, and how long something takes.

use crate::curriculum::Day;
use std::time::Instant;

/// Today by the machine's clock, where the machine says it is (`TZ`, else the system's zone; UTC where neither is known).
pub fn today() -> Day {
    let date = jiff::Zoned::now().date().to_string();
    Day::read(&date).expect("a date of the calendar is a day")
}

/// Runs from a moment on.
#[derive(Clone, Copy, Debug)]
pub struct Stopwatch(Instant);

impl Stopwatch {
    /// From now on.
    pub fn start() -> Stopwatch {
        Stopwatch(Instant::now())
    }

    /// From when something happened.
    pub(super) fn since(at: Instant) -> Stopwatch {
        Stopwatch(at)
    }

    pub fn seconds(self) -> f64 {
        self.0.elapsed().as_secs_f64()
    }

    pub fn milliseconds(self) -> f64 {
        self.seconds() * 1000.0
    }
}
