//! What a movement's drawings show besides its posture, and the drawing that plays it between its two ends.

use crate::curriculum::MovementIx;
use crate::curriculum::quantity::Mass;
use crate::curriculum::target::{Added, ONE, Target};
use crate::curriculum::words::{End, Pattern, Phase};
use crate::leverage::{STANDARD, on_the_way};
use crate::site::draw::figure::{self, Goes, Pace, Told};
use crate::site::material::Material;

/// What a movement's own record says of the way it goes, of where it stands still, and of its load.
pub fn told(site: &Material<'_>, ix: MovementIx) -> Told {
    let m = site.curriculum.movement(ix);
    let goes = match (m.phase(), m.pattern()) {
        (Some(Phase::Hold), _) => Goes::Held,
        (Some(Phase::Lowering), _) => Goes::Lowered,
        (_, Pattern::Exit) => Goes::Down,
        (None, Pattern::Balance | Pattern::Mobility) => Goes::AsWritten,
        _ => Goes::Up,
    };
    let ends = site.resolved.solved(ix);
    let far = ends.and_then(|solved| {
        let end = solved.end.as_ref()?;
        let rises = end.centre.1 > solved.start.centre.1;
        Some(if rises { End::Top } else { End::Bottom })
    });
    let timed = m.standard().seconds() > 0 && goes == Goes::Up;
    Told {
        goes,
        held: m.hold().map(|held| held.at).or(far.filter(|_| timed)),
        heavy: heavy(&m.standard()),
    }
}

/// A fifth of body weight, or 15 kg: from here on two plates are drawn.
fn heavy(standard: &Target) -> bool {
    standard.added().is_some_and(|added| match added {
        Added::BodyWeight(share) => share.millionths() >= ONE / 5,
        Added::Mass(mass) => mass >= Mass::of_kilograms(15),
    })
}

/// A movement's small figure.
pub fn small(site: &Material<'_>, ix: MovementIx) -> String {
    let solved = site.resolved.solved(ix);
    solved.map_or_else(String::new, |solved| figure::small(solved, told(site, ix)))
}

/// Whether a movement has two ends between which its drawing plays.
pub fn moves(site: &Material<'_>, ix: MovementIx) -> bool {
    let solved = site.resolved.solved(ix);
    solved.is_some_and(|solved| solved.end.is_some())
}

/// Where the drawing lies that plays a movement.
pub fn film_path(site: &Material<'_>, ix: MovementIx) -> String {
    format!("figures/moves/{}.svg", site.curriculum.movement(ix).id())
}

/// Poses between each two that are declared.
const BETWEEN: usize = 4;

/// The drawing that plays a movement, at its own tempo; where none is said, at an even one.
pub fn film(site: &Material<'_>, ix: MovementIx) -> String {
    let m = site.curriculum.movement(ix);
    let (Some(solved), Some(posture)) = (site.resolved.solved(ix), m.posture()) else {
        return String::new();
    };
    let mut poses = on_the_way(posture, BETWEEN, &STANDARD);
    let (Some(first), Some(last)) = (poses.first(), poses.last()) else {
        return String::new();
    };
    let rises = last.centre.1 > first.centre.1;
    let lowering = m.phase() == Some(Phase::Lowering);
    if lowering && rises {
        poses.reverse();
    }
    let pace = match m.tempo() {
        // What starts low is lifted first.
        Some(tempo) if rises && !lowering => Pace {
            there: tempo.lifting,
            held: tempo.top,
            back: tempo.lowering,
            rest: tempo.bottom,
        },
        Some(tempo) => Pace {
            there: tempo.lowering,
            held: tempo.bottom,
            back: tempo.lifting,
            rest: tempo.top,
        },
        None if lowering => Pace {
            there: 4,
            held: 1,
            back: 1,
            rest: 1,
        },
        None => Pace {
            there: 2,
            held: 1,
            back: 2,
            rest: 1,
        },
    };
    let least = |seconds: u32| seconds.max(1);
    figure::film(
        solved,
        &poses,
        Pace {
            there: least(pace.there),
            back: least(pace.back),
            rest: least(pace.rest),
            ..pace
        },
        heavy(&m.standard()),
    )
}
