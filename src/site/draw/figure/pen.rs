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

/// Tenths of a centimetre, y downwards: what an outline needs.
type Tenths = (i64, i64);

fn tenths((x, y): Point) -> Tenths {
    let tenth = |value: f64| (value * 10.0).round() as i64;
    (tenth(x), tenth(-y))
}

/// A number of tenths as short as SVG takes it.
fn short(tenths: i64) -> String {
    let (whole, part) = (tenths.unsigned_abs() / 10, tenths.unsigned_abs() % 10);
    let mut out = String::with_capacity(8);
    if tenths < 0 {
        out.push('-');
    }
    if whole > 0 || part == 0 {
        digits(&mut out, whole);
    }
    if part > 0 {
        out.push('.');
        digits(&mut out, part);
    }
    out
}

/// A whole number without the formatter: a figure has thousands.
fn digits(out: &mut String, number: u64) {
    if number >= 10 {
        digits(out, number / 10);
    }
    out.push(char::from(b'0' + (number % 10) as u8));
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
        if other.left > other.right {
            return self;
        }
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

/// One path; everything in it turns the same way, so that overlaps stay filled. Each part begins at its own place and goes on
/// from point to point, so that parts of one shape are written alike wherever they stand.
#[derive(Clone, Debug)]
pub struct Pen {
    pub path: String,
    pub bounds: Bounds,
    at: Tenths,
}

impl Pen {
    pub fn new() -> Pen {
        Pen {
            path: String::new(),
            bounds: Bounds::NONE,
            at: (0, 0),
        }
    }

    /// A number behind a letter or another number.
    fn number(&mut self, tenths: i64) {
        let text = short(tenths);
        let before = self.path.rfind(|c: char| !c.is_ascii_digit());
        let parted = text.starts_with('-')
            || self.path.ends_with(|c: char| c.is_ascii_alphabetic())
            || text.starts_with('.') && before.is_some_and(|at| self.path[at..].starts_with('.'));
        if !parted {
            self.path.push(' ');
        }
        self.path.push_str(&text);
    }

    /// A letter, and points by their way from where the pen is, which goes to the last of them.
    fn on(&mut self, letter: char, points: &[Tenths]) {
        self.path.push(letter);
        let from = self.at;
        for to in points {
            self.number(to.0 - from.0);
            self.number(to.1 - from.1);
            self.at = *to;
        }
    }

    fn begin(&mut self, at: Tenths) {
        self.at = (0, 0);
        self.on('M', &[at]);
    }

    /// Round to a point, by the left.
    fn round(&mut self, radius: f64, large: bool, to: Tenths) {
        let radius = short((radius * 10.0).round() as i64);
        let _ = write!(self.path, "a{radius} {radius} 0 {} 1", u8::from(large));
        self.number(to.0 - self.at.0);
        self.number(to.1 - self.at.1);
        self.at = to;
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
            tenths((
                centre.0 + radius * libm::cos(angle),
                centre.1 + radius * libm::sin(angle),
            ))
        };
        let (left, right) = (direction + open, direction - open);
        let large = |far: bool| (open > PI / 2.0) == far;
        self.begin(touch(from, left));
        self.on('l', &[touch(to, left)]);
        self.round(narrow, large(true), touch(to, right));
        self.on('l', &[touch(from, right)]);
        self.round(wide, large(false), touch(from, left));
        self.path.push('z');
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
            tenths((
                a.0 + x * along * long - y * left,
                a.1 + y * along * long + x * left,
            ))
        };
        let control = |(by, at): (f64, f64), side: f64| {
            let straight = first + (last - first) * at;
            beside(at, side * (straight + 2.0 * by))
        };
        self.begin(beside(0.0, first));
        self.on('q', &[control(swell.left, 1.0), beside(1.0, last)]);
        self.round(last, false, beside(1.0, -last));
        self.on('q', &[control(swell.right, -1.0), beside(0.0, -first)]);
        self.round(first, false, beside(0.0, first));
        self.path.push('z');
    }

    /// Strokes through several circles.
    pub fn chain(&mut self, circles: &[(Point, f64)]) {
        for pair in circles.windows(2) {
            self.stroke(pair[0], pair[1]);
        }
    }

    pub fn circle(&mut self, centre: Point, radius: f64) {
        self.bounds.include(centre, radius);
        let (x, y) = tenths(centre);
        let r = (radius * 10.0).round() as i64;
        self.begin((x - r, y));
        self.round(radius, false, (x + r, y));
        self.round(radius, false, (x - r, y));
        self.path.push('z');
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
        self.begin(tenths(points[0]));
        for i in 0..n {
            let [before, from, to, after] = [n + i - 1, i, i + 1, i + 2].map(|k| points[k % n]);
            let lean = |at: Point, a: Point, b: Point, by: f64| {
                tenths((at.0 + (b.0 - a.0) * by, at.1 + (b.1 - a.1) * by))
            };
            let leave = lean(from, before, to, 1.0 / 6.0);
            let come = lean(to, from, after, -1.0 / 6.0);
            // Behind the first, each leaves a point as it came to it.
            match i {
                0 => self.on('c', &[leave, come, tenths(to)]),
                _ => self.on('s', &[come, tenths(to)]),
            }
        }
        self.path.push('z');
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
