//! The postures that ship with the tool, and how a coach's words fill and change them.

mod floor;
mod grip;
mod hands;
mod stand;

use super::balance::{Hold, PostureError, Prop, Setting, Stance};
use super::place::FootAt;
use super::plane::Point;
use super::shape::{LegAngles, Shape};
use crate::curriculum::posture::{Gear, Joints, Posture, Touch};
use Touch::{Bar, Bars, Forearms, Hands, Rings, Toes};

/// A shipped posture. What a figure of it says stands in the words file, under `posture`.
pub(super) struct Named {
    pub name: &'static str,
    /// From the start through what lies between to the other end; one alone is held.
    keys: &'static [Key],
    /// With the feet raised, the hips bend so that the trunk leans as it does from the floor.
    adapts: bool,
}

/// One moment of a posture.
#[derive(Clone, Copy)]
struct Key {
    touches: &'static [Touch],
    stance: Stance,
    hold: Hold,
    /// Centimetres, where the posture needs a height of its own.
    hands_at: f64,
    shape: Shape,
    feet_to: [Option<FootAt>; 2],
    hands_to: [Option<Point>; 2],
    gear: &'static [Gear],
    props: &'static [Prop],
    front: bool,
}

const fn leg(hip: f64, knee: f64, ankle: f64) -> LegAngles {
    LegAngles { hip, knee, ankle }
}

const fn named(name: &'static str, keys: &'static [Key]) -> Named {
    Named {
        name,
        keys,
        adapts: false,
    }
}

/// On hands and the balls of the feet.
const fn on_floor(shape: Shape) -> Key {
    Key {
        touches: &[Hands, Toes],
        stance: Stance::Balls,
        hold: Hold::Above,
        hands_at: 0.0,
        shape,
        feet_to: [None, None],
        hands_to: [None, None],
        gear: &[],
        props: &[],
        front: false,
    }
}

/// Hanging from a bar.
const fn hanging(shape: Shape) -> Key {
    Key {
        touches: &[Bar],
        hold: Hold::Below,
        ..on_floor(shape)
    }
}

/// Above two bars.
const fn over_bars(shape: Shape) -> Key {
    Key {
        touches: &[Bars],
        hold: Hold::Upright,
        ..on_floor(shape)
    }
}

/// On flat feet, balanced.
const fn standing(shape: Shape) -> Key {
    Key {
        touches: &[Toes],
        stance: Stance::Flat,
        ..on_floor(shape)
    }
}

/// Laid where it is said: the way from the hips to the shoulders in degrees, and the place of the hips.
const fn laid(touches: &'static [Touch], trunk: f64, hip: Point, shape: Shape) -> Key {
    Key {
        touches,
        hold: Hold::Placed { trunk, hip },
        ..on_floor(shape)
    }
}

/// A flat foot with its ball so far along the floor.
const fn flat(x: f64) -> Option<FootAt> {
    foot(x, 0.0, 0.0)
}

/// A foot on its ball, the heel raised by so many degrees.
const fn tip(x: f64, heel_up: f64) -> Option<FootAt> {
    foot(x, 0.0, heel_up)
}

const fn foot(x: f64, y: f64, heel_up: f64) -> Option<FootAt> {
    Some(FootAt {
        ball: (x, y),
        heel_up,
    })
}

impl Key {
    const fn on(mut self, touches: &'static [Touch]) -> Key {
        self.touches = touches;
        self
    }

    const fn stance(mut self, stance: Stance) -> Key {
        self.stance = stance;
        self
    }

    const fn hold(mut self, hold: Hold) -> Key {
        self.hold = hold;
        self
    }

    const fn at(mut self, hands_at: f64) -> Key {
        self.hands_at = hands_at;
        self
    }

    /// Where the feet are put; `None` leaves a leg to its angles.
    const fn feet(mut self, first: Option<FootAt>, second: Option<FootAt>) -> Key {
        self.feet_to = [first, second];
        self
    }

    /// Where both hands are put.
    const fn hands(mut self, at: Point) -> Key {
        self.hands_to = [Some(at), None];
        self
    }

    const fn each_hand(mut self, first: Option<Point>, second: Option<Point>) -> Key {
        self.hands_to = [first, second];
        self
    }

    const fn gear(mut self, gear: &'static [Gear]) -> Key {
        self.gear = gear;
        self
    }

    const fn props(mut self, props: &'static [Prop]) -> Key {
        self.props = props;
        self
    }

    const fn seen_from_the_front(mut self) -> Key {
        self.front = true;
        self
    }

    fn placed(&self) -> bool {
        matches!(self.hold, Hold::Placed { .. })
    }
}

/// The shipped postures, from the floor up.
fn all() -> impl Iterator<Item = &'static Named> {
    hands::HANDS
        .iter()
        .chain(floor::FLOOR)
        .chain(stand::STAND)
        .chain(grip::GRIP)
}

/// The names of the shipped postures.
pub fn names() -> Vec<&'static str> {
    all().map(|n| n.name).collect()
}

/// A posture with everything filled in that the coach left open.
pub(super) struct Filled {
    pub named: Option<&'static Named>,
    /// The hips follow the height of the feet.
    pub adapts: bool,
    /// From the start to the other end, one at least.
    pub keys: Vec<(Setting, Shape)>,
    /// Elbow or knee alone, as the coach says them of the other end of a shipped posture: the rest of the body is part of the way.
    pub part_way: Option<Part>,
}

/// The one angle that says how deep a coach goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Part {
    Elbow(f64),
    Knee(f64),
}

fn part_of(joints: Option<&Joints>) -> Option<Part> {
    match joints? {
        Joints {
            shoulder: None,
            elbow: Some(elbow),
            hip: None,
            knee: None,
        } => Some(Part::Elbow(*elbow)),
        Joints {
            shoulder: None,
            elbow: None,
            hip: None,
            knee: Some(knee),
        } => Some(Part::Knee(*knee)),
        _ => None,
    }
}

/// The moments of a shipped posture, with what the coach says of its two ends.
fn moments(named: &Named, posture: &Posture) -> Vec<(Setting, Shape)> {
    let own = named.keys[0].touches;
    let last = named.keys.len() - 1;
    let moment = |(i, key): (usize, &Key)| {
        let mut setting = setting(key, posture);
        if !posture.touches.is_empty() && key.touches == own {
            setting.touches.clone_from(&posture.touches);
        }
        let joints = match (i, &posture.end) {
            (0, _) => Some(&posture.start),
            (i, Some(joints)) if i == last => Some(joints),
            _ => None,
        };
        let shape = joints.map_or(key.shape, |joints| {
            free(&mut setting, joints);
            key.shape.with(joints)
        });
        (setting, shape)
    };
    named.keys.iter().enumerate().map(moment).collect()
}

pub(super) fn filled(posture: &Posture) -> Result<Filled, PostureError> {
    let Some(name) = posture.named.as_deref() else {
        return Ok(bare(posture));
    };
    let named = all()
        .find(|n| n.name == name)
        .ok_or_else(|| PostureError::Unknown(name.to_string()))?;
    let raised = posture.hands_at.is_some() || posture.feet_at.is_some();
    if raised && named.keys.iter().any(Key::placed) {
        return Err(PostureError::OwnHeights(name.to_string()));
    }
    let last = named.keys.len() - 1;
    let mut keys = moments(named, posture);
    let mut part_way = None;
    match part_of(posture.end.as_ref()) {
        Some(part) if last > 0 => {
            keys[last].1 = named.keys[last].shape;
            keys[last].0 = Setting {
                touches: keys[last].0.touches.clone(),
                ..setting(&named.keys[last], posture)
            };
            part_way = Some(part);
        }
        _ => {}
    }
    if last == 0
        && let Some(joints) = &posture.end
    {
        let (mut setting, shape) = keys[0].clone();
        free(&mut setting, joints);
        keys.push((setting, shape.with(joints)));
    }
    let says_hip = posture.start.hip.is_some() || posture.end.is_some_and(|end| end.hip.is_some());
    Ok(Filled {
        named: Some(named),
        adapts: named.adapts && !says_hip && posture.feet_at.is_some_and(|height| height > 0.0),
        keys,
        part_way,
    })
}

/// Limbs whose angles the coach says are not put anywhere.
fn free(setting: &mut Setting, joints: &Joints) {
    if joints.shoulder.is_some() || joints.elbow.is_some() {
        setting.hands_to = [None, None];
    }
    if joints.hip.is_some() || joints.knee.is_some() {
        setting.feet_to = [None, None];
    }
}

fn setting(key: &Key, posture: &Posture) -> Setting {
    let mut gear = key.gear.to_vec();
    gear.extend(posture.with.iter().filter(|g| !key.gear.contains(g)));
    Setting {
        touches: key.touches.to_vec(),
        stance: key.stance,
        hold: key.hold,
        hands_at: posture.hands_at.unwrap_or(key.hands_at),
        feet_at: posture.feet_at,
        feet_to: key.feet_to,
        hands_to: key.hands_to,
        gear,
        props: key.props,
        front: key.front,
    }
}

/// Joint angles and what is touched, without a name.
fn bare(posture: &Posture) -> Filled {
    let start = Shape::new(180.0, 180.0, 180.0, 180.0).with(&posture.start);
    let feet_only = !posture.touches.iter().any(|t| !matches!(t, Toes));
    let stance = if feet_only {
        Stance::Flat
    } else {
        Stance::Balls
    };
    let key = on_floor(start)
        .hold(hold(&posture.touches, &start))
        .stance(stance);
    let mut setting = setting(&key, posture);
    setting.touches.clone_from(&posture.touches);
    let end = posture.end.as_ref().map(|joints| start.with(joints));
    Filled {
        named: None,
        adapts: false,
        keys: std::iter::once(start)
            .chain(end)
            .map(|shape| (setting.clone(), shape))
            .collect(),
        part_way: None,
    }
}

/// One shape can hang below a grip or stand above it. With the straight line from shoulder to hand within 30 degrees of the trunk
/// it is a support; otherwise it hangs from `bar` and `rings`, and stands on `bars` unless the arms are raised.
fn hold(touches: &[Touch], shape: &Shape) -> Hold {
    let grip = [Bar, Bars, Rings].iter().any(|t| touches.contains(t));
    if !grip {
        Hold::Above
    } else if shape.reach().abs() <= 30.0 {
        Hold::Upright
    } else if touches.contains(&Bars) && shape.shoulder <= 90.0 {
        Hold::Above
    } else {
        Hold::Below
    }
}
