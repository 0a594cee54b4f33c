//! Side views of postures as SVG: the body from its own joint angles, what it touches, its heights, its plumb line.
//!
//! One unit is one centimetre. Colours come from the theme alone, by class: `figure-body` (head and trunk), `figure-near` and
//! `figure-far` (limbs), `figure-ground` (floor, box, wall), `figure-grip` (bar, rings), `figure-mark` (plumb line, arrow,
//! heights). Knows nothing of pages.

mod apparatus;
mod film;
mod front;
mod looks;
mod pen;
mod person;
mod scene;
mod signs;
mod small;
mod words;

use crate::curriculum::posture::Touch;
use crate::curriculum::words::Units;
use crate::leverage::{Pose, Solved};
use crate::words::Words;
use crate::words::escape::escape;
pub use film::{Pace, film};
use pen::Bounds;
pub(in crate::site) use pen::number;
use scene::{Layer, Marks, Way};
pub use small::{Goes, Told, small};
use std::borrow::Cow;
use std::fmt::Write;

/// A drawing and the text that stands in its place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure {
    pub svg: String,
    pub alt: String,
}

/// Empty centimetres round a drawing.
const MARGIN: f64 = 4.0;

/// Screen pixels to a centimetre, for a reader without the theme's styles.
const PIXELS: f64 = 1.5;

/// A posture from the side: its start, and to the right of it what it passes and its end, where it has one. What is only lowered
/// is drawn from its upper end to its lower.
pub fn figure(solved: &Solved, told: Told, words: &Words, units: Units) -> Figure {
    let solved = &*as_it_goes(solved, told.goes);
    let says = words::Says { words, units };
    let (title, description) = (says.title(solved), says.description(solved));
    let marks = |says, way| Marks {
        says,
        way,
        plumb: true,
        room: None,
        heavy: told.heavy,
        bold: false,
    };
    let poses: Vec<&Pose> = solved.poses().collect();
    let scenes: Vec<Layer> = match poses.as_slice() {
        [one] => vec![scene::draw(solved, one, marks(Some(says), Way::Held))],
        [start, end] => {
            // The effort of a rep or a hold leads from the lower end to the higher.
            let effort = matches!(told.goes, Goes::Up | Goes::Held);
            let rises = end.centre.1 > start.centre.1 || !effort;
            let (up, down) = (Way::Towards(end), Way::Towards(start));
            let way = |this: bool, way| if this { way } else { Way::None };
            vec![
                scene::draw(solved, start, marks(Some(says), way(rises, up))),
                scene::draw(solved, end, marks(None, way(!rises, down))),
            ]
        }
        all => all
            .iter()
            .enumerate()
            .map(|(i, pose)| {
                let says = (i == 0).then_some(says);
                scene::draw(solved, pose, marks(says, Way::None))
            })
            .collect(),
    };
    Figure {
        svg: row(&scenes, "figure", PIXELS, &title, &description),
        alt: format!("{title} {description}"),
    }
}

/// What is only lowered goes from its upper end to its lower; a way out ends on the feet or the back, and where both ends do, at
/// the lower.
fn as_it_goes(solved: &Solved, goes: Goes) -> Cow<'_, Solved> {
    let out = |pose: &Pose| {
        let touches = |touch| pose.touches.contains(&touch);
        touches(Touch::Toes) && !touches(Touch::Wall) || touches(Touch::Back)
    };
    let start = &solved.start;
    let turned = |end: &Pose| {
        let rises = end.centre.1 > start.centre.1;
        match goes {
            Goes::Lowered => rises,
            Goes::Down => out(start) && (!out(end) || rises),
            _ => false,
        }
    };
    match &solved.end {
        Some(end) if turned(end) => Cow::Owned(Solved {
            start: end.clone(),
            between: solved.between.iter().rev().cloned().collect(),
            end: Some(solved.start.clone()),
            ..solved.clone()
        }),
        _ => Cow::Borrowed(solved),
    }
}

/// Small figures on one line from easier to harder, each at its hardest end, with the names of what they show. Two of one look
/// are drawn once.
pub fn strip<N: AsRef<str>>(family: &[(N, &Solved)], words: &Words) -> Figure {
    let names: Vec<&str> = family.iter().map(|(name, _)| name.as_ref()).collect();
    let title = words.say("figure.strip");
    let names = words.joined(&names, "list.semicolon");
    let description = words.fill("figure.strip_names", &[("names", (&names).into())]);
    let mut scenes: Vec<Layer> = Vec::new();
    for (_, solved) in family {
        let scene = scene::draw(solved, telling(solved), PLAIN);
        if scenes.iter().all(|drawn| drawn.svg != scene.svg) {
            scenes.push(scene);
        }
    }
    Figure {
        svg: row(
            &scenes,
            "figure figure-strip",
            PIXELS / 2.0,
            title,
            &description,
        ),
        alt: format!("{title} {description}"),
    }
}

/// Nothing but body and apparatus.
const PLAIN: Marks<'static> = Marks {
    says: None,
    way: Way::None,
    plumb: false,
    room: None,
    heavy: false,
    bold: false,
};

/// The pose by which a movement is known: what is passed on the way, or else the other end, or else the start; of a movement that
/// ends in plain standing the start.
fn telling(solved: &Solved) -> &Pose {
    let passed = solved.between.first();
    let told = passed.or(solved.end.as_ref()).unwrap_or(&solved.start);
    match is_standing(told) && !is_standing(&solved.start) {
        true => &solved.start,
        false => told,
    }
}

/// Upright on straight legs, on both feet, the hands free.
fn is_standing(pose: &Pose) -> bool {
    let p = &pose.points;
    let upright =
        p.shoulder.1 - p.hip.1 > 0.96 * libm::hypot(p.shoulder.0 - p.hip.0, p.shoulder.1 - p.hip.1);
    let straight = p.legs.iter().all(|leg| {
        let long = libm::hypot(leg.ankle.0 - p.hip.0, leg.ankle.1 - p.hip.1);
        let bent = libm::hypot(leg.knee.0 - p.hip.0, leg.knee.1 - p.hip.1)
            + libm::hypot(leg.ankle.0 - leg.knee.0, leg.ankle.1 - leg.knee.1);
        leg.ankle.1 < p.hip.1 && long > 0.985 * bent
    });
    pose.touches == [Touch::Toes] && upright && straight
}

/// Scenes side by side on one level.
fn row(scenes: &[Layer], class: &str, pixels: f64, title: &str, description: &str) -> String {
    const GAP: f64 = 14.0;
    let mut inner = String::new();
    let mut all = Bounds::NONE;
    let mut left = 0.0;
    for scene in scenes {
        let shift = left - scene.bounds.left;
        let _ = write!(
            inner,
            "<g transform=\"translate({} 0)\">{}</g>",
            number(shift),
            scene.svg
        );
        left += scene.bounds.right - scene.bounds.left + GAP;
        all.include((0.0, scene.bounds.bottom), 0.0);
        all.include((left - GAP, scene.bounds.top), 0.0);
    }
    if scenes.is_empty() {
        all.include((0.0, 0.0), 0.0);
    }
    format!(
        "<svg class=\"{class}\" xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" {}><title>{}</title><desc>{}</desc>{inner}</svg>",
        sheet(&all, pixels),
        escape(title),
        escape(description),
    )
}

/// The attributes that give a drawing its room and its size.
fn sheet(all: &Bounds, pixels: f64) -> String {
    let wide = all.right - all.left + 2.0 * MARGIN;
    let high = all.top - all.bottom + 2.0 * MARGIN;
    format!(
        "viewBox=\"{} {} {} {}\" width=\"{}\" height=\"{}\"",
        number(all.left - MARGIN),
        number(-all.top - MARGIN),
        number(wide),
        number(high),
        (wide * pixels).round(),
        (high * pixels).round()
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn figure(solved: &Solved) -> Figure {
        super::figure(solved, Told::default(), Words::english(), Units::Metric)
    }

    fn strip(family: &[(&str, &Solved)]) -> Figure {
        super::strip(family, Words::english())
    }

    use crate::curriculum::posture::{Joints, Posture};
    use crate::leverage::{names, solve};
    use crate::source::{FileId, Span};

    fn named(name: &str, touches: &[Touch], hands_at: Option<f64>, feet_at: Option<f64>) -> Solved {
        solve(&Posture {
            named: Some(name.into()),
            touches: touches.to_vec(),
            start: Joints::default(),
            end: None,
            hands_at,
            feet_at,
            with: Vec::new(),
            span: Span::top(FileId(0)),
        })
        .expect("a shipped posture stands")
    }

    /// Numbers of at most two decimals, only the classes of the contract, nothing inline.
    fn sound(figure: &Figure) {
        let svg = &figure.svg;
        for word in ["style=", "NaN", "inf", " -0 ", "fill=", "stroke="] {
            assert!(!svg.contains(word), "{word} in {svg}");
        }
        for number in svg.split(|c: char| !(c.is_ascii_digit() || c == '.')) {
            // Two points are two numbers: `.5.5`.
            assert!(number.split('.').skip(1).all(|d| d.len() <= 2), "{number}");
        }
        for class in svg.split("class=\"").skip(1) {
            let names = class.split('"').next().expect("a class");
            assert!(names.split(' ').all(|n| n.starts_with("figure")), "{names}");
        }
        assert_eq!(svg.matches("<g ").count(), svg.matches("</g>").count());
        assert!(svg.contains("role=\"img\"") && svg.contains("<title>") && svg.contains("<desc>"));
        assert!(svg.len() < 16_000, "{} bytes", svg.len());
    }

    #[test]
    fn every_shipped_posture_is_drawn() {
        for name in names() {
            let figure = figure(&named(name, &[], None, None));
            sound(&figure);
            assert!(figure.alt.len() < 520, "{}", figure.alt);
        }
    }

    #[test]
    fn heights_and_grips_are_drawn_and_said() {
        let decline = figure(&named("push-up", &[], None, Some(40.0)));
        sound(&decline);
        assert_eq!(decline.svg.matches("40 cm</text>").count(), 1);
        assert!(decline.alt.starts_with(
            "A person in a push-up, from the side: hands on the floor and feet 40 cm high. Start: arms straight,"
        ), "{}", decline.alt);
        let rings = figure(&named("support", &[Touch::Rings], None, None));
        sound(&rings);
        assert!(rings.alt.contains("hands on rings"), "{}", rings.alt);
        let wall = figure(&named("wall-handstand", &[], None, Some(120.0)));
        sound(&wall);
        assert!(
            wall.alt.contains("feet on a wall, 120 cm high"),
            "{}",
            wall.alt
        );
        assert!(wall.svg.contains("120 cm</text>"));
    }

    #[test]
    fn what_the_words_say_is_what_is_drawn() {
        let alt = |name: &str| figure(&named(name, &[], None, None)).alt;
        assert_eq!(
            alt("front-lever"),
            "A person in a front lever, straight, from the side: hands on a bar. Arms straight, trunk level, hips and knees straight."
        );
        assert!(alt("handstand").contains("trunk upside down"));
        assert!(alt("bridge").contains("hips open past straight"));
        assert!(
            alt("one-leg-front-lever")
                .contains("one leg: hip and knee straight; the other: hip at 60")
        );
    }

    #[test]
    fn what_has_two_ends_plays_between_them() {
        let of = |name: &str| Posture {
            named: Some(name.into()),
            touches: Vec::new(),
            start: Joints::default(),
            end: None,
            hands_at: None,
            feet_at: None,
            with: Vec::new(),
            span: Span::top(FileId(0)),
        };
        let pace = Pace {
            there: 3,
            held: 1,
            back: 1,
            rest: 1,
        };
        for name in names() {
            let (posture, solved) = (of(name), named(name, &[], None, None));
            let poses = crate::leverage::on_the_way(&posture, 4, &crate::leverage::STANDARD);
            let svg = super::film(&solved, &poses, pace, false);
            if solved.end.is_none() {
                assert!(svg.is_empty(), "{name}");
                continue;
            }
            assert!(poses.len() >= 4, "{name}: {} poses", poses.len());
            assert_eq!(poses.first(), Some(&solved.start), "{name}");
            assert_eq!(poses.last(), solved.end.as_ref(), "{name}");
            assert!(
                !svg.contains("NaN") && !svg.replace("infinite", "").contains("inf"),
                "{name}"
            );
            assert!(svg.contains("prefers-reduced-motion:no-preference"));
            // Every pose is seen, and at any time one alone: what one leaves the next takes up.
            assert_eq!(svg.matches("@keyframes").count(), poses.len());
            assert!(svg.len() < 60_000, "{name}: {} bytes", svg.len());
        }
    }

    #[test]
    fn a_family_is_one_strip() {
        let (easy, hard) = (
            named("tuck-front-lever", &[], None, None),
            named("front-lever", &[], None, None),
        );
        let strip = strip(&[("Tuck <lever>", &easy), ("Full lever", &hard)]);
        sound(&strip);
        assert_eq!(
            strip.alt,
            "Side views, from easier to harder. Tuck <lever>; Full lever."
        );
        let again = self::strip(&[("Lowering", &easy), ("Hold", &easy), ("Full", &hard)]);
        assert_eq!(again.svg.matches("<g transform").count(), 2);
        assert!(again.svg.contains("Lowering; Hold; Full"));
        assert!(strip.svg.contains("Tuck &lt;lever&gt;"));
        sound(&super::strip::<&str>(&[], Words::english()));
    }
}
