//! The text that stands in place of a figure, made from the same pose.

use crate::curriculum::posture::Touch;
use crate::curriculum::target::{ONE, say_length};
use crate::curriculum::words::Units;
use crate::leverage::{Leg, Point, Pose, Solved};
use crate::words::{Value, Words};

/// In which language and units a figure speaks.
#[derive(Clone, Copy)]
pub struct Says<'a> {
    pub words: &'a Words,
    pub units: Units,
}

impl Says<'_> {
    /// "A person in a push-up, from the side: hands and feet on the floor."
    pub fn title(self, solved: &Solved) -> String {
        let supports = self.words.list_and(&self.supports(solved));
        let supports = ("supports", (&supports).into());
        let front = super::front::seen(solved);
        match solved.named {
            None if front => self.words.fill("figure.person_bare_front", &[supports]),
            None => self.words.fill("figure.person_bare", &[supports]),
            Some(name) => {
                let posture = self
                    .words
                    .say(&format!("posture.{}", name.replace('-', "_")));
                let posture = ("posture", posture.into());
                let key = if front {
                    "figure.person_front"
                } else {
                    "figure.person"
                };
                self.words.fill(key, &[posture, supports])
            }
        }
    }

    /// "Start: arms straight, ... End: ..."
    pub fn description(self, solved: &Solved) -> String {
        let start = self.shape(&solved.start);
        let between: Vec<String> = solved.between.iter().map(|pose| self.shape(pose)).collect();
        match solved.end.as_ref().map(|end| self.shape(end)) {
            Some(end) if !between.is_empty() => self.words.fill(
                "figure.by_way_of",
                &[
                    ("start", (&start).into()),
                    ("between", (&between.join("; ")).into()),
                    ("end", (&end).into()),
                ],
            ),
            None => self
                .words
                .fill("figure.one_end", &[("shape", (&capital(&start)).into())]),
            Some(end) => self.words.fill(
                "figure.two_ends",
                &[("start", (&start).into()), ("end", (&end).into())],
            ),
        }
    }

    /// A height in the school's units, and in the other ones: whole centimetres, tenths of an inch.
    pub fn height(self, centimetres: f64) -> (String, String) {
        let micro = centimetres.round() as i64 * ONE;
        let other = match self.units {
            Units::Metric => Units::Imperial,
            Units::Imperial => Units::Metric,
        };
        let say = |units| say_length(micro, true, units, self.words);
        (say(self.units), say(other))
    }

    fn supports(self, solved: &Solved) -> Vec<String> {
        let say = |key: &str| self.words.say(key).to_string();
        let high = |what: &str, height: f64| match height.round() as i64 {
            0 => say(&format!("figure.{what}_on_floor")),
            _ => self.at_height(&format!("figure.{what}_high"), height),
        };
        let feet = solved.feet_at.unwrap_or(0.0);
        let with_feet = solved.start.feet.is_some();
        let grip = |what: &str| match solved.hands_at.round() as i64 {
            height if with_feet && height != 0 => {
                self.at_height(&format!("figure.on_{what}_high"), solved.hands_at)
            }
            _ => say(&format!("figure.on_{what}")),
        };
        let [first, second] = solved.start.points.legs;
        let one_foot = second.ankle.1 - first.ankle.1 > 3.0;
        let flat = solved.hands_at.round() as i64 == 0 && feet.round() as i64 == 0;
        if flat && solved.touches == [Touch::Hands, Touch::Toes] {
            return vec![say("figure.hands_and_feet_on_floor")];
        }
        solved
            .touches
            .iter()
            .map(|touch| match touch {
                Touch::Hands => high("hands", solved.hands_at),
                Touch::Forearms => say("figure.forearms_on_floor"),
                Touch::Toes if one_foot => high("foot", feet),
                Touch::Toes => high("feet", feet),
                Touch::Knees => high("knees", feet),
                Touch::Head => say("figure.head_on_floor"),
                Touch::Back => say("figure.back_on_floor"),
                Touch::Wall if feet.round() > 0.0 => {
                    self.at_height("figure.feet_on_wall_high", feet)
                }
                Touch::Wall => say("figure.feet_on_wall"),
                Touch::Bar => grip("bar"),
                Touch::Bars => grip("bars"),
                Touch::Rings => grip("rings"),
            })
            .collect()
    }

    fn at_height(self, key: &str, height: f64) -> String {
        let height = self.height(height).0;
        self.words.fill(key, &[("height", (&height).into())])
    }

    fn shape(self, pose: &Pose) -> String {
        let p = &pose.points;
        let arms = match angle(p.shoulder, p.elbow, p.wrist) >= 170 {
            true => "figure.arms_straight",
            false => "figure.arms_bent",
        };
        let [first, second] = p.legs.map(|leg| self.legs(pose, &leg, ["hips", "knees"]));
        let legs = if first == second {
            first
        } else {
            let [first, second] = p.legs.map(|leg| self.legs(pose, &leg, ["hip", "knee"]));
            let values = [("first", (&first).into()), ("second", (&second).into())];
            self.words.fill("figure.two_legs", &values)
        };
        let trunk = self.trunk(pose);
        self.words.fill(
            "figure.shape",
            &[
                ("arms", self.words.say(arms).into()),
                ("trunk", (&trunk).into()),
                ("legs", (&legs).into()),
            ],
        )
    }

    fn trunk(self, pose: &Pose) -> String {
        let p = &pose.points;
        let (across, up) = (p.shoulder.0 - p.hip.0, p.shoulder.1 - p.hip.1);
        let slope = libm::atan2(up, across.abs()).to_degrees().round() as i64;
        let at = |key: &str, angle: i64| self.words.fill(key, &[("angle", Value::Whole(angle))]);
        match slope {
            -7..=7 => self.words.say("figure.trunk_level").to_string(),
            75.. => self.words.say("figure.trunk_upright").to_string(),
            ..=-75 => self.words.say("figure.trunk_upside_down").to_string(),
            8.. => at("figure.trunk_head_higher", slope),
            _ => at("figure.trunk_head_lower", -slope),
        }
    }

    /// One leg, or both where they are alike: `[hips, knees]` are the words for it.
    fn legs(self, pose: &Pose, leg: &Leg, [hips, knees]: [&str; 2]) -> String {
        let p = &pose.points;
        let hip = angle(p.shoulder, p.hip, leg.knee);
        let knee = angle(p.hip, leg.knee, leg.ankle);
        // Bodies are turned, never mirrored: a thigh to the left of the trunk's line is bent back.
        let (tx, ty) = (p.hip.0 - p.shoulder.0, p.hip.1 - p.shoulder.1);
        let back = tx * (leg.knee.1 - p.hip.1) - ty * (leg.knee.0 - p.hip.0) > 0.0;
        let at = |key: String, values: &[(&str, Value<'_>)]| self.words.fill(&key, values);
        let says = match hip {
            170.. => at(format!("figure.{hips}_straight"), &[]),
            _ if back => at(format!("figure.{hips}_open"), &[]),
            _ => at(format!("figure.{hips}_at"), &[("angle", Value::Whole(hip))]),
        };
        let says = ("hips", (&says).into());
        match (hip >= 170, knee >= 170) {
            (true, true) => at(format!("figure.{hips}_and_{knees}_straight"), &[]),
            (false, true) => at(format!("figure.{knees}_straight"), &[says]),
            (_, false) => at(
                format!("figure.{knees}_at"),
                &[says, ("angle", Value::Whole(knee))],
            ),
        }
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
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
