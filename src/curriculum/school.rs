//! The school: who publishes, where, in which language and units, and the defaults of its coaching.

use super::manner::Stress;
use super::quantity::{BodyShare, Days, Mass};
use super::target::{KILOGRAM, Micro, ONE, Target};
use super::words::{BodyPart, How, Practice, Units};
use std::collections::BTreeMap;

/// Everything `school.yaml` says.
#[derive(Clone, Debug, PartialEq)]
pub struct School {
    pub name: String,
    /// Absolute, ends with a slash.
    pub address: String,
    pub language: String,
    pub units: Units,
    pub licence: Option<String>,
    pub contact: Option<String>,
    pub theme: String,
    pub publish_to: Option<String>,
    pub dose: Dose,
    /// After these a result counts as unknown.
    pub results_last: Days,
    pub presume: bool,
    /// Warm-up lines: for `always` and by caution class.
    pub warm_up: BTreeMap<String, Vec<WarmUpLine>>,
    /// What the school's equipment words mean.
    pub equipment: BTreeMap<String, String>,
    pub accent: Option<String>,
    pub practice: Practice,
    pub smallest_plate: Mass,
    pub leap: LeapLimits,
}

/// A line of a warm-up, and for whom it is none.
#[derive(Clone, Debug, PartialEq)]
pub struct WarmUpLine {
    pub text: String,
    /// Left out while one of these hurts or rests, unless it is stressed only lightly.
    pub stresses: Vec<Stress>,
    /// Left out where this is not at hand: lists of alternatives.
    pub equipment: Vec<Vec<String>>,
}

impl WarmUpLine {
    /// Stresses a part, and not only lightly.
    pub fn bears_on(&self, part: BodyPart) -> bool {
        let mut of = self.stresses.iter().filter(|s| s.part == part);
        of.any(|s| s.how != Some(How::Light))
    }

    /// Whether what it wants is at hand; everything is where nothing is said of it.
    pub fn is_at_hand(&self, have: Option<&[String]>) -> bool {
        let has = |one_of: &Vec<String>| {
            have.is_none_or(|have| one_of.iter().any(|word| have.contains(word)))
        };
        self.equipment.iter().all(has)
    }
}

/// The school's usual working sets.
#[derive(Clone, Debug, PartialEq)]
pub struct Dose {
    pub sets: u32,
    pub reps: u32,
    /// Sessions a week.
    pub a_week: u32,
    /// Between lighter weeks.
    pub lighter_every: Days,
    pub hold: Target,
}

/// The largest step that is still recommended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeapLimits {
    /// On the hands.
    pub share: BodyShare,
    /// Millionths of body weight x centimetres.
    pub turning: Micro,
    pub rungs: u32,
}

impl Default for Dose {
    /// Five sets of five, twice a week, a lighter week after four; holds of ten seconds. Common practice, no source.
    fn default() -> Dose {
        let hold = Target::read("5x10 s").expect("a target of the program's own");
        Dose {
            sets: 5,
            reps: 5,
            a_week: 2,
            lighter_every: Days::of(28),
            hold,
        }
    }
}

impl Default for LeapLimits {
    /// 15 points of body weight, 15 body weight x cm, two rungs. Common practice, no source.
    fn default() -> LeapLimits {
        LeapLimits {
            share: BodyShare::of_millionths(150_000),
            turning: 15 * ONE,
            rungs: 2,
        }
    }
}

impl Default for School {
    fn default() -> School {
        School {
            name: String::new(),
            address: String::new(),
            language: "en".into(),
            units: Units::Metric,
            licence: None,
            contact: None,
            theme: "chalk".into(),
            publish_to: None,
            dose: Dose::default(),
            results_last: Days::of(84),
            presume: true,
            warm_up: BTreeMap::new(),
            equipment: BTreeMap::new(),
            accent: None,
            practice: Practice::Before,
            smallest_plate: Mass::of_units(KILOGRAM * 5 / 4),
            leap: LeapLimits::default(),
        }
    }
}
