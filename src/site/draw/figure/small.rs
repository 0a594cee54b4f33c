//! The small figure of a movement: the pose by which it is known, and signs for what its record says.

use super::pen::{Bounds, number};
use super::scene::{self, Marks};
use super::signs::{self, Room};
use super::{PLAIN, as_it_goes, looks, telling};
use crate::curriculum::posture::Touch;
use crate::curriculum::words::End;
use crate::leverage::{Pose, Solved};
use std::borrow::Cow;

/// The least width and height of a small figure, in centimetres: a crouch is not blown up to the size of a hang.
const LEAST: f64 = 150.0;

/// What is told of a movement besides its posture.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Told {
    pub goes: Goes,
    /// Where each rep stands still.
    pub held: Option<End>,
    /// Two plates on the belt, not one.
    pub heavy: bool,
}

/// Which way a movement goes between its two ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Goes {
    /// From its start to its end.
    #[default]
    AsWritten,
    /// A rep: its effort leads up.
    Up,
    /// A way out.
    Down,
    /// Only lowered.
    Lowered,
    /// To where it is held.
    Held,
}

/// A small square figure as a file of its own: the pose by which the movement is known, with its plumb line; behind it, pale, the
/// end it comes from, and beside it an arrow for the way it goes and two short bars where it stands still.
pub fn small(solved: &Solved, told: Told) -> String {
    let turned = as_it_goes(solved, told.goes);
    let leads_out = told.goes == Goes::Down && matches!(turned, Cow::Owned(_));
    let solved = &*turned;
    let pose = match &solved.end {
        Some(end) if told.goes == Goes::Lowered && solved.between.is_empty() => end,
        // A press on the hands is known by its long arms: at its lowest a body lies.
        Some(end)
            if told.goes == Goes::Up
                && presses(&solved.start)
                && end.centre.1 < solved.start.centre.1 =>
        {
            &solved.start
        }
        // A way out that is written the other way round is known by where it begins.
        _ if leads_out => &solved.start,
        _ => telling(solved),
    };
    let moved = solved
        .end
        .as_ref()
        .map(|end| Moved::of(solved, pose, end, told));
    let marks = Marks {
        plumb: true,
        heavy: told.heavy,
        bold: true,
        ..PLAIN
    };
    let mut layer = scene::draw(solved, pose, marks);
    let far = moved.as_ref().filter(|moved| moved.way.far > LITTLE);
    let lowered = told.goes == Goes::Lowered;
    let ghost = far.map(|moved| (moved.ghost, signs::ghost(solved, moved.ghost, lowered)));
    let ghost = ghost
        .filter(|(_, pale)| side(&layer.bounds.with(pale.bounds)) < LARGER * side(&layer.bounds));
    if let Some((_, pale)) = &ghost {
        layer.svg.insert_str(0, &pale.svg);
        layer.bounds = layer.bounds.with(pale.bounds);
    }
    if let Some(moved) = &moved {
        let unit = side(&layer.bounds) / 100.0;
        let room = Room::new(&layer, solved, pose, ghost.map(|(pose, _)| pose));
        match told.goes {
            Goes::Held => signs::still(&mut layer, &room, moved.way, unit),
            _ => signs::arrow(&mut layer, &room, moved.way, told.held, unit),
        }
    }
    let b = layer.bounds;
    let side = side(&b);
    let left = (b.left + b.right - side) / 2.0;
    let high = b.top - b.bottom;
    // What stands or sits on the floor has its floor at one height; all else is in the middle.
    let top = match pose.on_floor() && high > 0.5 * side {
        true => -b.bottom + AROUND * side - side,
        false => -(b.top + b.bottom + side) / 2.0,
    };
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{} {} {side} {side}\" width=\"96\" height=\"96\"><style>{}</style>{}</svg>",
        number(left),
        number(top),
        looks::colours(&layer.svg, true),
        layer.svg,
        side = number(side),
    )
}

/// A way in centimetres that is too short for a pale body behind the dark one.
const LITTLE: f64 = 14.0;

/// So much larger a square hides what it shows: the pale body is left out.
const LARGER: f64 = 1.4;

/// What is left empty on each side of a small figure, as a share of its side.
const AROUND: f64 = 0.05;

/// The side of the square that a small figure fills.
fn side(b: &Bounds) -> f64 {
    (b.right - b.left).max(b.top - b.bottom).max(LEAST) / (1.0 - 2.0 * AROUND)
}

/// Where a movement comes from, and which way its effort goes.
struct Moved<'a> {
    ghost: &'a Pose,
    way: signs::Way,
}

impl<'a> Moved<'a> {
    fn of(solved: &'a Solved, pose: &Pose, end: &'a Pose, told: Told) -> Moved<'a> {
        let start = &solved.start;
        // A pose on the way to where a movement goes once has that end behind it; a rep has its start.
        let ghost = match pose == start || told.goes == Goes::AsWritten && pose != end {
            true => end,
            false => start,
        };
        let way = signs::way(start, end);
        let way = match told.goes {
            Goes::Up => way.turned(true),
            Goes::Lowered => way.turned(false),
            // A way out goes as it is ordered.
            Goes::Down => way.steep(),
            Goes::AsWritten | Goes::Held => way,
        };
        Moved { ghost, way }
    }
}

/// Face down on hands and feet, or knees.
fn presses(pose: &Pose) -> bool {
    let rests = |touch: &Touch| pose.touches.contains(touch);
    let p = &pose.points;
    let hands = rests(&Touch::Hands) || rests(&Touch::Rings) && p.fingers.1 < p.hip.1;
    let level = (p.shoulder.1 - p.hip.1).abs() < (p.shoulder.0 - p.hip.0).abs();
    hands && (rests(&Touch::Toes) || rests(&Touch::Knees)) && level
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::curriculum::posture::{Gear, Joints, Posture};
    use crate::leverage::solve;
    use crate::source::{FileId, Span};

    fn posed(name: &str, with: &[Gear]) -> Solved {
        let posture = Posture {
            named: Some(name.into()),
            touches: Vec::new(),
            start: Joints::default(),
            end: None,
            hands_at: None,
            feet_at: None,
            with: with.to_vec(),
            span: Span::top(FileId(0)),
        };
        solve(&posture).expect("a shipped posture stands")
    }

    fn told(goes: Goes) -> Told {
        Told {
            goes,
            ..Told::default()
        }
    }

    /// The numbers behind the letters of a sign's path, two and two.
    fn sign(svg: &str) -> Vec<(f64, f64)> {
        let path = svg.split("class=\"figure-sign\" d=\"").nth(1);
        let path = path.and_then(|rest| rest.split('"').next()).unwrap_or("");
        let points = path.split(['M', 'L']).filter(|point| !point.is_empty());
        let number = |text: &str| text.parse::<f64>().expect("a number");
        points
            .map(|point| point.split_once(' ').expect("two numbers"))
            .map(|(x, y)| (number(x), number(y)))
            .collect()
    }

    #[test]
    fn one_posture_is_drawn_as_its_movement_goes() {
        let pull_up = posed("pull-up", &[]);
        let up = small(&pull_up, told(Goes::Up));
        let down = small(&pull_up, told(Goes::Lowered));
        // y is downwards: the first two points are the shaft.
        let shaft = |svg: &str| sign(svg)[1].1 - sign(svg)[0].1;
        assert!(shaft(&up) < 0.0 && shaft(&down) > 0.0);
        let held = small(&posed("bent-arm-hang", &[]), told(Goes::Held));
        assert!(sign(&held).is_empty() && !held.contains("figure-ghost"));
        // Four points of two bars, the two of the shaft, the three of the head.
        assert_eq!(
            sign(&small(&posed("active-hang", &[]), told(Goes::Held))).len(),
            4
        );
        let paused = Told {
            held: Some(End::Top),
            ..told(Goes::Up)
        };
        let paused = sign(&small(&pull_up, paused));
        assert_eq!(paused.len(), 9);
        // The bars stand above the arrow's tip.
        assert!(paused[5..].iter().all(|bar| bar.1 < paused[1].1));
    }

    #[test]
    fn a_longer_way_has_a_longer_arrow() {
        let long = |name: &str| {
            let svg = small(&posed(name, &[]), told(Goes::Up));
            let all = sign(&svg);
            libm::hypot(all[1].0 - all[0].0, all[1].1 - all[0].1)
        };
        assert!(long("pull-up") > 1.4 * long("active-hang"));
    }

    #[test]
    fn what_is_only_lowered_shows_where_it_comes_from() {
        for name in ["dip", "pull-up", "tuck-front-lever-lowering"] {
            let from = |goes| small(&posed(name, &[]), told(goes)).contains("figure-from");
            assert!(from(Goes::Lowered) && !from(Goes::Up), "{name}");
        }
    }

    #[test]
    fn a_way_out_begins_where_it_is_left() {
        let heights = |goes| {
            let solved = posed("pick-up", &[]);
            let turned = as_it_goes(&solved, goes);
            turned.start.centre.1 - turned.end.as_ref().expect("an end").centre.1
        };
        assert!(heights(Goes::Down) > 0.0 && heights(Goes::Up) < 0.0);
        // Whose other end alone is on the floor ends there.
        let rolled = posed("ring-roll-out", &[]);
        let turned = as_it_goes(&rolled, Goes::Down);
        assert_eq!(turned.start.touches, [Touch::Rings]);
        let left = posed("step-off-bar", &[]);
        assert_eq!(*as_it_goes(&left, Goes::Down), left);
    }

    #[test]
    fn what_is_held_is_larger_than_it_is() {
        let hang = posed("false-grip-hang", &[]);
        let radius = |svg: &str| {
            let ring = svg.split("figure-grip\" cx").nth(1).expect("a ring");
            let (_, rest) = ring.split_once(" r=\"").expect("a radius");
            let (radius, _) = rest.split_once('"').expect("its end");
            radius.parse::<f64>().expect("a number")
        };
        let own = scene::draw(&hang, &hang.start, PLAIN).svg;
        assert!(radius(&small(&hang, told(Goes::Held))) > 1.3 * radius(&own));
    }

    #[test]
    fn a_heavy_load_has_two_plates() {
        let dip = posed("dip", &[Gear::Belt]);
        let plates = |heavy| {
            let told = Told {
                heavy,
                ..told(Goes::Up)
            };
            small(&dip, told).matches("class=\"figure-plate\"").count()
        };
        assert_eq!((plates(false), plates(true)), (1, 2));
    }

    #[test]
    fn all_of_it_is_inside_the_square_and_its_middle_in_the_middle() {
        for name in crate::leverage::names() {
            let svg = small(&posed(name, &[]), told(Goes::Up));
            let view = svg.split("viewBox=\"").nth(1).expect("a view");
            let view: Vec<f64> = view
                .split('"')
                .next()
                .expect("its end")
                .split(' ')
                .map(|n| n.parse().expect("a number"))
                .collect();
            let side = view[2];
            for (x, y) in sign(&svg) {
                let inside = |at: f64, from: f64| at > from && at < from + side;
                assert!(inside(x, view[0]) && inside(y, view[1]), "{name}: {x} {y}");
            }
            assert!((side - view[3]).abs() < 1e-9, "{name}");
        }
        // A lever hangs under its bar in the middle, not at the top.
        let lever = posed("front-lever", &[]);
        let b = scene::draw(&lever, &lever.start, PLAIN).bounds;
        let svg = small(&lever, told(Goes::Held));
        let view: Vec<f64> = svg
            .split("viewBox=\"")
            .nth(1)
            .and_then(|rest| rest.split('"').next())
            .expect("a view")
            .split(' ')
            .map(|n| n.parse().expect("a number"))
            .collect();
        let (above, below) = (-b.top - view[1], view[1] + view[3] + b.bottom);
        assert!((above - below).abs() < 4.0, "{above} {below}");
    }
}
