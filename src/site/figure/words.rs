//! The text that stands in place of a figure, made from the same pose.

use crate::curriculum::posture::Touch;
use crate::leverage::{Leg, Point, Pose, Solved};
use crate::source::suggest::listed;

/// "A person in a push-up, from the side: hands and feet on the floor."
pub fn title(solved: &Solved) -> String {
    let space = if solved.says.is_empty() { "" } else { " " };
    let on = listed(&supports(solved), "and");
    format!("A person{space}{}, from the side: {on}.", solved.says)
}

/// "Start: arms straight, ... End: ..."
pub fn description(solved: &Solved) -> String {
    match &solved.end {
        None => format!("{}.", capital(&shape(&solved.start))),
        Some(end) => format!("Start: {}. End: {}.", shape(&solved.start), shape(end)),
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

fn supports(solved: &Solved) -> Vec<String> {
    let high = |what: &str, height: f64| match height.round() as i64 {
        0 => format!("{what} on the floor"),
        height => format!("{what} {height} cm high"),
    };
    let feet = solved.feet_at.unwrap_or(0.0);
    let with_feet = solved.start.feet.is_some();
    let grip = |what: &str| match solved.hands_at.round() as i64 {
        height if with_feet && height != 0 => format!("hands on {what} {height} cm high"),
        _ => format!("hands on {what}"),
    };
    let [first, second] = solved.start.points.legs;
    let one_foot = second.ankle.1 - first.ankle.1 > 3.0;
    let flat = solved.hands_at.round() as i64 == 0 && feet.round() as i64 == 0;
    if flat && solved.touches == [Touch::Hands, Touch::Toes] {
        return vec!["hands and feet on the floor".to_string()];
    }
    solved
        .touches
        .iter()
        .map(|touch| match touch {
            Touch::Hands => high("hands", solved.hands_at),
            Touch::Toes if one_foot => high("one foot", feet),
            Touch::Toes => high("feet", feet),
            Touch::Knees => high("knees", feet),
            Touch::Head => "head on the floor".to_string(),
            Touch::Back => "back on the floor".to_string(),
            Touch::Wall if feet > 0.0 => high("feet on a wall,", feet),
            Touch::Wall => "feet on a wall".to_string(),
            Touch::Bar => grip("a bar"),
            Touch::Bars => grip("two bars"),
            Touch::Rings => grip("rings"),
        })
        .collect()
}

/// The angle at a joint between its two neighbours, in whole fives of degrees.
fn angle(from: Point, joint: Point, to: Point) -> i64 {
    let direction = |p: Point| libm::atan2(p.1 - joint.1, p.0 - joint.0).to_degrees();
    let between = (direction(from) - direction(to)).abs();
    let between = if between > 180.0 {
        360.0 - between
    } else {
        between
    };
    (between / 5.0).round() as i64 * 5
}

fn shape(pose: &Pose) -> String {
    let p = &pose.points;
    let arms = if angle(p.shoulder, p.elbow, p.wrist) >= 170 {
        "arms straight"
    } else {
        "arms bent"
    };
    let [first, second] = p.legs.map(|leg| legs(pose, &leg));
    let legs = if first == second {
        first
    } else {
        format!("one leg: {first}; the other: {second}")
            .replace("hips", "hip")
            .replace("knees", "knee")
    };
    format!("{arms}, {}, {legs}", trunk(pose))
}

fn trunk(pose: &Pose) -> String {
    let p = &pose.points;
    let (across, up) = (p.shoulder.0 - p.hip.0, p.shoulder.1 - p.hip.1);
    let slope = libm::atan2(up, across.abs()).to_degrees().round() as i64;
    match slope {
        -7..=7 => "trunk level".to_string(),
        75.. => "trunk upright".to_string(),
        ..=-75 => "trunk upside down".to_string(),
        8.. => format!("trunk {slope} degrees from level, head higher"),
        _ => format!("trunk {} degrees from level, head lower", -slope),
    }
}

fn legs(pose: &Pose, leg: &Leg) -> String {
    let p = &pose.points;
    let hip = angle(p.shoulder, p.hip, leg.knee);
    let knee = angle(p.hip, leg.knee, leg.ankle);
    // Bodies are turned, never mirrored: a thigh to the left of the trunk's line is bent back.
    let (tx, ty) = (p.hip.0 - p.shoulder.0, p.hip.1 - p.shoulder.1);
    let back = tx * (leg.knee.1 - p.hip.1) - ty * (leg.knee.0 - p.hip.0) > 0.0;
    let hips = match hip {
        170.. => "hips straight".to_string(),
        _ if back => "hips open past straight".to_string(),
        _ => format!("hips at {hip} degrees"),
    };
    match (hip >= 170, knee >= 170) {
        (true, true) => "hips and knees straight".to_string(),
        (false, true) => format!("{hips}, knees straight"),
        (_, false) => format!("{hips}, knees at {knee} degrees"),
    }
}
