//! A movement between its two ends, as a drawing that plays: there, a pause, and back, at its own tempo. Who wants less movement
//! sees the first pose alone.

use super::looks::colours;
use super::pen::{Bounds, number};
use super::{PIXELS, PLAIN, scene, sheet};
use crate::leverage::{Pose, Solved};
use std::fmt::Write;

/// Seconds of the way there, at the other end, of the way back, and before the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pace {
    pub there: u32,
    pub held: u32,
    pub back: u32,
    pub rest: u32,
}

impl Pace {
    fn seconds(self) -> u32 {
        self.there + self.held + self.back + self.rest
    }
}

/// A drawing of its own that plays the poses of a movement from its start; nothing of fewer than two.
pub fn film(solved: &Solved, poses: &[Pose], pace: Pace, heavy: bool) -> String {
    let total = f64::from(pace.seconds());
    if poses.len() < 2 || total <= 0.0 {
        return String::new();
    }
    let bodies = poses.iter().map(scene::body);
    let room = bodies.fold(Bounds::NONE, Bounds::with);
    let marks = || super::Marks {
        room: Some(room),
        heavy,
        ..PLAIN
    };
    let mut bounds = Bounds::NONE;
    let mut frames = String::new();
    let mut times = String::new();
    let last = (poses.len() - 1) as f64;
    // From the middle between a pose and the one before to the middle between it and the next; the ends stay.
    let share = |at: f64| (at.clamp(0.0, 1.0), 1.0 - at.clamp(0.0, 1.0));
    for (i, pose) in poses.iter().enumerate() {
        let scene = scene::draw(solved, pose, marks());
        bounds = bounds.with(scene.bounds);
        let _ = write!(frames, "<g class=\"f{i}\">{}</g>", scene.svg);
        let (from, from_back) = share((i as f64 - 0.5) / last);
        let (to, to_back) = share((i as f64 + 0.5) / last);
        let there = |share: f64| share * f64::from(pace.there) / total;
        let back =
            |share: f64| (f64::from(pace.there + pace.held) + share * f64::from(pace.back)) / total;
        let windows = match i {
            0 => [(0.0, there(to)), (back(to_back), 1.0)],
            _ if i + 1 == poses.len() => [(there(from), back(from_back)); 2],
            _ => [(there(from), there(to)), (back(to_back), back(from_back))],
        };
        keyframes(&mut times, i, windows, total);
    }
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" {}><style>{}g{{visibility:hidden}}.f0{{visibility:visible}}@media(prefers-reduced-motion:no-preference){{{times}}}</style>{frames}</svg>",
        sheet(&bounds, PIXELS),
        colours(&frames, false),
    )
}

/// When a pose is seen: two stretches of the whole.
fn keyframes(out: &mut String, i: usize, windows: [(f64, f64); 2], total: f64) {
    let _ = write!(
        out,
        ".f{i}{{animation:a{i} {}s step-end infinite}}@keyframes a{i}{{",
        number(total)
    );
    let mut seen = String::from("0%{visibility:hidden}");
    for (from, to) in windows {
        let _ = write!(
            seen,
            "{}%{{visibility:visible}}{}%{{visibility:hidden}}",
            number(from * 100.0),
            number(to * 100.0)
        );
    }
    out.push_str(&seen);
    out.push('}');
}
