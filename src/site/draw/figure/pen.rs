//! Paths from limbs that taper and swell, and from smooth outlines, with what they cover.

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

/// The same to a tenth of a centimetre: what an outline needs.
fn short((x, y): Point) -> String {
    let tenth = |value: f64| number((value * 10.0).round() / 10.0);
    let (x, y) = (tenth(x), tenth(-y));
    let between = if y.starts_with('-') { "" } else { " " };
    format!("{x}{between}{y}")
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

/// How far a limb swells past the straight line between its two ends, and where along it: on the left of the way and on its
/// right.
#[derive(Clone, Copy)]
pub struct Swell {
    pub left: (f64, f64),
    pub right: (f64, f64),
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
        let apart = libm::hypot(dx, dy);
        if apart <= (wide - narrow).abs() + 1e-6 {
            let (centre, radius) = if wide >= narrow { from } else { to };
            self.circle(centre, radius);
            return;
        }
        let direction = libm::atan2(dy, dx);
        let open = libm::acos((wide - narrow) / apart);
        let touch = |(centre, radius): (Point, f64), angle: f64| {
            short((
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

    /// A limb from one round end to another, its sides curved.
    pub fn limb(&mut self, from: (Point, f64), to: (Point, f64), swell: Swell) {
        let ((a, first), (b, last)) = (from, to);
        self.bounds.include(a, first);
        self.bounds.include(b, last);
        let way = (b.0 - a.0, b.1 - a.1);
        let long = libm::hypot(way.0, way.1).max(1e-9);
        let (x, y) = (way.0 / long, way.1 / long);
        // To the left of the way, and so far along it.
        let beside = |along: f64, left: f64| {
            (
                a.0 + x * along * long - y * left,
                a.1 + y * along * long + x * left,
            )
        };
        let control = |(by, at): (f64, f64), side: f64| {
            let straight = first + (last - first) * at;
            beside(at, side * (straight + 2.0 * by))
        };
        let _ = write!(
            self.path,
            "M{}Q{} {}A{r} {r} 0 0 1 {}Q{} {}A{w} {w} 0 0 1 {}Z",
            short(beside(0.0, first)),
            short(control(swell.left, 1.0)),
            short(beside(1.0, last)),
            short(beside(1.0, -last)),
            short(control(swell.right, -1.0)),
            short(beside(0.0, -first)),
            short(beside(0.0, first)),
            r = number(last),
            w = number(first),
        );
    }

    /// Strokes through several circles.
    pub fn chain(&mut self, circles: &[(Point, f64)]) {
        for pair in circles.windows(2) {
            self.stroke(pair[0], pair[1]);
        }
    }

    pub fn circle(&mut self, centre: Point, radius: f64) {
        self.bounds.include(centre, radius);
        let at = |x: f64| short((centre.0 + x, centre.1));
        let _ = write!(
            self.path,
            "M{left}A{r} {r} 0 0 1 {right}A{r} {r} 0 0 1 {left}Z",
            left = at(-radius),
            right = at(radius),
            r = number(radius),
        );
    }

    /// A closed smooth line through points; it is turned so that it fills with the rest.
    pub fn outline(&mut self, points: &[Point]) {
        let turned: Vec<Point>;
        let points = if area(points) > 0.0 {
            turned = points.iter().rev().copied().collect();
            &turned
        } else {
            points
        };
        let n = points.len();
        for at in points {
            self.bounds.include(*at, 0.5);
        }
        let _ = write!(self.path, "M{}C", short(points[0]));
        for i in 0..n {
            let [before, from, to, after] = [n + i - 1, i, i + 1, i + 2].map(|k| points[k % n]);
            let lean = |at: Point, a: Point, b: Point, by: f64| {
                (at.0 + (b.0 - a.0) * by, at.1 + (b.1 - a.1) * by)
            };
            let _ = write!(
                self.path,
                "{}{} {} {}",
                if i == 0 { "" } else { " " },
                short(lean(from, before, to, 1.0 / 6.0)),
                short(lean(to, from, after, -1.0 / 6.0)),
                short(to)
            );
        }
        self.path.push('Z');
    }
}

/// Twice the area inside, positive where the points turn to the left.
fn area(points: &[Point]) -> f64 {
    let n = points.len();
    (0..n)
        .map(|i| {
            let (a, b) = (points[i], points[(i + 1) % n]);
            a.0 * b.1 - b.0 * a.1
        })
        .sum()
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

    #[test]
    fn outlines_turn_alike_whichever_way_they_are_written() {
        let square = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)];
        let (mut one, mut other) = (Pen::new(), Pen::new());
        one.outline(&square);
        other.outline(&[square[3], square[2], square[1], square[0]]);
        assert_eq!(one.path, other.path);
        assert!((one.bounds.right - 10.5).abs() < 1e-9);
    }
}
