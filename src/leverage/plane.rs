//! Points in the plane of the body and how they turn.

/// Centimetres: x to the right, y upwards.
pub type Point = (f64, f64);

pub(super) fn along(from: Point, direction: f64, length: f64) -> Point {
    (
        from.0 + length * libm::cos(direction),
        from.1 + length * libm::sin(direction),
    )
}

/// The point that lies `share` of the way from one to the other.
pub(super) fn part_way(from: Point, to: Point, share: f64) -> Point {
    (
        from.0 + (to.0 - from.0) * share,
        from.1 + (to.1 - from.1) * share,
    )
}

pub(super) fn length(point: Point) -> f64 {
    (point.0 * point.0 + point.1 * point.1).sqrt()
}

/// A turn about one point that is brought to another.
#[derive(Clone, Copy)]
pub(super) struct Turn {
    pub by: f64,
    pub about: Point,
    pub to: Point,
}

impl Turn {
    pub fn of(self, point: Point) -> Point {
        let (x, y) = (point.0 - self.about.0, point.1 - self.about.1);
        let (sine, cosine) = (libm::sin(self.by), libm::cos(self.by));
        (
            self.to.0 + x * cosine - y * sine,
            self.to.1 + x * sine + y * cosine,
        )
    }
}

/// The turning effect of a force about a point, anticlockwise positive.
pub(super) fn moment(about: Point, at: Point, force: Point) -> f64 {
    (at.0 - about.0) * force.1 - (at.1 - about.1) * force.0
}
