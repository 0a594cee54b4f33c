//! Paths from round-ended strokes of changing width, with what they cover.

use crate::leverage::Point;
use std::f64::consts::PI;
use std::fmt::Write;

/// A number as SVG has it: two decimals at most, the same bytes everywhere.
pub fn number(value: f64) -> String {
    let hundredths = (value * 100.0).round() as i64;
    let (whole, part) = (hundredths.abs() / 100, hundredths.abs() % 100);
    let sign = if hundredths < 0 { "-" } else { "" };
    match (part / 10, part % 10) {
        (0, 0) => format!("{sign}{whole}"),
        (tens, 0) => format!("{sign}{whole}.{tens}"),
        (tens, ones) => format!("{sign}{whole}.{tens}{ones}"),
    }
}

/// A point with y downwards, as SVG has it.
pub fn point((x, y): Point) -> String {
    format!("{} {}", number(x), number(-y))
}

/// The smallest upright rectangle round everything drawn.
#[derive(Clone, Copy, Debug)]
pub struct Bounds {
    pub left: f64,
    pub right: f64,
    pub bottom: f64,
    pub top: f64,
}

impl Bounds {
    pub const NONE: Bounds = Bounds {
        left: f64::INFINITY,
        right: f64::NEG_INFINITY,
        bottom: f64::INFINITY,
        top: f64::NEG_INFINITY,
    };

    pub fn include(&mut self, (x, y): Point, around: f64) {
        self.left = self.left.min(x - around);
        self.right = self.right.max(x + around);
        self.bottom = self.bottom.min(y - around);
        self.top = self.top.max(y + around);
    }

    pub fn with(mut self, other: Bounds) -> Bounds {
        self.include((other.left, other.bottom), 0.0);
        self.include((other.right, other.top), 0.0);
        self
    }
}

/// One path; everything in it turns the same way, so that overlaps stay filled.
#[derive(Clone, Debug)]
pub struct Pen {
    pub path: String,
    pub bounds: Bounds,
}

impl Pen {
    pub fn new() -> Pen {
        Pen {
            path: String::new(),
            bounds: Bounds::NONE,
        }
    }

    /// A stroke from one circle to another, with the straight lines that touch both.
    pub fn stroke(&mut self, from: (Point, f64), to: (Point, f64)) {
        let ((a, wide), (b, narrow)) = (from, to);
        self.bounds.include(a, wide);
        self.bounds.include(b, narrow);
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let apart = (dx * dx + dy * dy).sqrt();
        if apart <= (wide - narrow).abs() + 1e-6 {
            let (centre, radius) = if wide >= narrow { from } else { to };
            self.ellipse(centre, radius, radius, 0.0);
            return;
        }
        let direction = libm::atan2(dy, dx);
        let open = libm::acos((wide - narrow) / apart);
        let touch = |(centre, radius): (Point, f64), angle: f64| {
            point((
                centre.0 + radius * libm::cos(angle),
                centre.1 + radius * libm::sin(angle),
            ))
        };
        let (left, right) = (direction + open, direction - open);
        let large = |far: bool| u8::from((open > PI / 2.0) == far);
        let _ = write!(
            self.path,
            "M{}L{}A{r} {r} 0 {} 1 {}L{}A{w} {w} 0 {} 1 {}Z",
            touch(from, left),
            touch(to, left),
            large(true),
            touch(to, right),
            touch(from, right),
            large(false),
            touch(from, left),
            r = number(narrow),
            w = number(wide),
        );
    }

    /// Strokes through several circles.
    pub fn chain(&mut self, circles: &[(Point, f64)]) {
        for pair in circles.windows(2) {
            self.stroke(pair[0], pair[1]);
        }
    }

    /// An ellipse: half its length along a direction in radians, half its width across.
    pub fn ellipse(&mut self, centre: Point, along: f64, across: f64, direction: f64) {
        self.bounds.include(centre, along.max(across));
        let (x, y) = (along * libm::cos(direction), along * libm::sin(direction));
        let (one, other) = (
            point((centre.0 + x, centre.1 + y)),
            point((centre.0 - x, centre.1 - y)),
        );
        let radii = format!(
            "{} {} {}",
            number(along),
            number(across),
            number(-direction.to_degrees())
        );
        let _ = write!(self.path, "M{one}A{radii} 0 1 {other}A{radii} 0 1 {one}Z");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_never_minus_nothing() {
        for (value, text) in [
            (0.0, "0"),
            (-0.001, "0"),
            (1.5, "1.5"),
            (-2.346, "-2.35"),
            (3.04, "3.04"),
            (10.0, "10"),
        ] {
            assert_eq!(number(value), text);
        }
    }
}
