//! From a shape and what it touches to a pose in space, by the balance of forces and moments.

use super::body::{ANKLE_ALONG, BALL_ALONG, Body, rest};
use super::contact::{Contact, Contacts};
use super::forces::{forces, turning};
use super::place::{FootAt, placed};
use super::plane::{Point, Turn, length};
use super::shape::{Points, Shape, centre};
use crate::curriculum::posture::{Gear, Touch};
use std::f64::consts::PI;

/// Hands stand this far from a wall unless the height of the feet is given, in shares of stature: common practice, no source.
const FROM_THE_WALL: f64 = 0.18;

/// Why a posture cannot stand.
#[derive(Clone, Debug, PartialEq)]
pub enum PostureError {
    /// No shipped posture has this name.
    Unknown(String),
    /// Hands and feet cannot both be where they are said to be; short by so many centimetres.
    Open { short_by: f64 },
    /// The centre of mass is this many centimetres past the end of the support.
    Tips { past_by: f64 },
    /// Nothing says how a body stands on these.
    Unsupported(Vec<Touch>),
    /// A shipped posture whose places belong together: nothing of it can be raised.
    OwnHeights(String),
}

/// What of the feet is on the ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Stance {
    /// The balls of both feet.
    Balls,
    Heels,
    /// Both feet flat, pressed under the ankles.
    Flat,
    /// One foot flat, the other leg free.
    OneFlat,
}

/// Which of the two ways to balance on the hands is meant: one shape fits both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Hold {
    /// The centre of mass above the hands.
    Above,
    /// The centre of mass below the hands.
    Below,
    /// The shoulders above the hips, as in a support and a dip.
    Upright,
    /// Laid where the posture says, not where balance puts it: the direction from the hips to the shoulders in degrees (90 upright
    /// and facing left, 0 face up, 180 face down) and the place of the hips in centimetres.
    Placed { trunk: f64, hip: Point },
}

/// What stands about a body in a shipped posture, in centimetres of the pose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Prop {
    /// A box from left to right, and its top.
    Box(f64, f64, f64),
    /// A chair from left to right, and its seat; its back stands at the right.
    Chair(f64, f64, f64),
    /// A wall to the left of a face.
    WallLeft(f64),
    /// A wall to the right of a face.
    WallRight(f64),
    /// A wall to the right, where the toes are.
    WallAtFeet,
    /// An upright.
    Post(f64),
    /// A mat from left to right.
    Mat(f64, f64),
    /// A floor under a grip.
    Floor,
}

/// What a posture touches, and where.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Setting {
    pub touches: Vec<Touch>,
    pub stance: Stance,
    pub hold: Hold,
    /// Centimetres above the floor or the grip's own height.
    pub hands_at: f64,
    pub feet_at: Option<f64>,
    /// Where feet and hands are put, in centimetres; the joints between them and the trunk follow. For [`Hold::Placed`] alone.
    pub feet_to: [Option<FootAt>; 2],
    pub hands_to: [Option<Point>; 2],
    pub gear: Vec<Gear>,
    pub props: &'static [Prop],
    /// Seen from the front, not from the side.
    pub front: bool,
}

impl Setting {
    pub fn touches(&self, touch: Touch) -> bool {
        self.touches.contains(&touch)
    }

    /// The feet are on the ground, not the knees.
    pub fn soles(&self) -> bool {
        self.touches(Touch::Toes) && !self.touches(Touch::Knees)
    }

    pub fn grip(&self) -> bool {
        [Touch::Bar, Touch::Bars, Touch::Rings]
            .iter()
            .any(|t| self.touches(*t))
    }
}

/// Body weight x centimetres: what the muscles at a joint must hold, both sides together.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Turning {
    pub shoulder: f64,
    pub elbow: f64,
    /// Nothing where the hands lie on the floor: they press at the wrist.
    pub wrist: f64,
    pub hip: f64,
    pub knee: f64,
}

impl Turning {
    /// The larger at each joint.
    pub fn max(self, other: Turning) -> Turning {
        Turning {
            shoulder: self.shoulder.max(other.shoulder),
            elbow: self.elbow.max(other.elbow),
            wrist: self.wrist.max(other.wrist),
            hip: self.hip.max(other.hip),
            knee: self.knee.max(other.knee),
        }
    }
}

/// A posture in space: centimetres, y upwards from the floor or from the grip's own height, x from the hands (without hands, from
/// what carries the body).
#[derive(Clone, Debug, PartialEq)]
pub struct Pose {
    pub points: Points,
    pub touches: Vec<Touch>,
    /// Centimetres above the floor or the grip's own height.
    pub hands_at: f64,
    /// The same; `None` where nobody says so.
    pub feet_at: Option<f64>,
    /// What is held or worn besides.
    pub gear: Vec<Gear>,
    /// What stands about.
    pub props: &'static [Prop],
    /// Seen from the front, not from the side.
    pub front: bool,
    /// Degrees that each leg points out of the plane.
    pub legs_apart: f64,
    /// The centre of mass of the whole body.
    pub centre: Point,
    /// Where the hands press, if they do.
    pub hands: Option<Point>,
    /// Where feet or knees press, if they do.
    pub feet: Option<Point>,
    /// The share of body weight on the hands, 0 to 1; `None` without hands, or where balance does not decide it.
    pub hands_carry: Option<f64>,
    /// The same for feet or knees.
    pub feet_carry: Option<f64>,
    /// `None` where balance does not decide it.
    pub turning: Option<Turning>,
    pub(super) stature_cm: f64,
}

impl Pose {
    /// Whether the floor is at height 0: something stands, lies or is raised on it.
    pub fn on_floor(&self) -> bool {
        self.touches
            .iter()
            .any(|t| !matches!(t, Touch::Bar | Touch::Bars | Touch::Rings))
            || self.props.contains(&Prop::Floor)
    }

    /// 2 inverted (the head below the hips, and hands or head carry the body), 1 part-inverted (the head below the hips), 0
    /// neither. A head that is lower by less than a twentieth of stature is level.
    pub fn inversion(&self) -> u8 {
        let below = self.points.hip.1 - self.points.vertex.1 > 0.05 * self.stature_cm;
        match below {
            true if self.feet.is_none() || self.feet_carry.is_some_and(|share| share < 0.1) => 2,
            true => 1,
            false => 0,
        }
    }
}

pub(super) fn stand(setting: &Setting, shape: &Shape, body: &Body) -> Result<Pose, PostureError> {
    let cm = body.stature_cm;
    if let Hold::Placed { trunk, hip } = setting.hold {
        return Ok(put(
            setting,
            shape,
            body,
            placed(setting, shape, body, trunk, hip),
        ));
    }
    let mut laid = shape.points(body);
    if setting.touches(Touch::Hands) {
        // A hand on the floor is weighed where it presses; it is laid flat in the end.
        laid.fingers = laid.wrist;
        laid.other.fingers = laid.other.wrist;
    }
    let contacts = Contacts::of(setting, &laid, cm);
    let turn = turned(setting, &contacts, &laid, body)?;
    let points = on_soles(laid.map(|p| turn.of(p)), setting, body);
    let here = |contact: Option<Contact>| contact.map(|c| turn.of(c.at));
    let (hands, head, mut feet) = (
        here(contacts.hands),
        here(contacts.top()),
        here(contacts.feet),
    );
    let (_, centre) = centre(points.masses(body).all());
    if let (None, None, Some(feet)) = (hands, head, &mut feet) {
        // Alone on the feet, the floor presses straight under the centre of mass.
        feet.0 = centre.0;
    }
    let forces = forces(hands, feet, head, contacts.wall, centre)?;
    let turning = forces.map(|forces| turning(&points, body, setting, forces, hands, feet));
    let carried = |force: Option<Point>| force.map(|f| f.1);
    Ok(Pose {
        hands_carry: forces.and_then(|f| carried(f.hands)),
        feet_carry: forces.and_then(|f| carried(f.feet)),
        turning,
        ..pose(setting, shape, body, points, (centre, hands, feet))
    })
}

/// A body that lies as it does, its centre of mass, and where hands and feet are: nothing is said yet of what they carry.
fn pose(
    setting: &Setting,
    shape: &Shape,
    body: &Body,
    points: Points,
    (centre, hands, feet): (Point, Option<Point>, Option<Point>),
) -> Pose {
    Pose {
        points: settled(points, setting, body),
        touches: setting.touches.clone(),
        hands_at: setting.hands_at,
        feet_at: setting.feet_at,
        gear: setting.gear.clone(),
        props: setting.props,
        front: setting.front,
        legs_apart: shape.legs_apart,
        centre,
        hands,
        feet,
        hands_carry: None,
        feet_carry: None,
        turning: None,
        stature_cm: body.stature_cm,
    }
}

/// How the laid body is turned so that what touches lies where it is said to be.
fn turned(
    setting: &Setting,
    contacts: &Contacts,
    laid: &Points,
    body: &Body,
) -> Result<Turn, PostureError> {
    let unsupported = || PostureError::Unsupported(setting.touches.clone());
    let (hands, feet) = (contacts.hands, contacts.feet);
    Ok(match (hands, contacts.top(), feet) {
        (Some(hands), None, Some(feet)) if contacts.wall => {
            against_wall(setting, hands, feet, body.stature_cm)?
        }
        (Some(one), _, Some(feet)) | (None, Some(one), Some(feet)) => {
            closed(one, feet, laid, setting.hold != Hold::Below, body)?
        }
        (Some(hands), Some(head), None) if contacts.back.is_none() => {
            closed(hands, head, laid, true, body)?
        }
        (Some(hands), None, None) => balanced(hands, laid, setting.hold, body),
        // Face up: the body is laid out face down.
        (None, Some(_), None) if contacts.head.is_none() => Turn {
            by: PI,
            about: contacts.back.ok_or_else(unsupported)?.at,
            to: (0.0, 0.0),
        },
        (None, None, Some(feet)) => match setting.stance {
            Stance::Flat | Stance::OneFlat if setting.soles() => {
                on_flat_feet(setting, feet, laid, body)
            }
            _ => balanced(feet, laid, Hold::Above, body),
        },
        _ => return Err(unsupported()),
    })
}

/// A pose that is laid where the posture says: shares are known where hands or feet alone carry.
fn put(setting: &Setting, shape: &Shape, body: &Body, points: Points) -> Pose {
    let (_, centre) = centre(points.masses(body).all());
    let touches = |touch: Touch| setting.touches(touch);
    let on_hands = setting.grip() || touches(Touch::Hands) || touches(Touch::Forearms);
    let on_feet = touches(Touch::Toes) || touches(Touch::Knees);
    let lies = touches(Touch::Back) || touches(Touch::Head);
    let hands = on_hands.then_some(if setting.grip() {
        points.fingers
    } else {
        points.wrist
    });
    let foot = points.legs[0];
    let feet = (on_feet || touches(Touch::Wall)).then_some(match () {
        () if touches(Touch::Knees) => foot.knee,
        () if touches(Touch::Wall) => foot.toes,
        () => foot.ball,
    });
    let alone = |this: bool, other: bool| (this && !other && !lies).then_some(1.0);
    Pose {
        hands_carry: alone(on_hands, on_feet),
        feet_carry: alone(on_feet, on_hands),
        ..pose(setting, shape, body, points, (centre, hands, feet))
    }
}

/// Both contacts at their heights, the body on the upper or the lower side of them.
fn closed(
    one: Contact,
    other: Contact,
    laid: &Points,
    above: bool,
    body: &Body,
) -> Result<Turn, PostureError> {
    let across = (other.at.0 - one.at.0, other.at.1 - one.at.1);
    let slope = libm::asin(rise(one, other, length(across))?);
    let now = libm::atan2(across.1, across.0);
    let (_, centre) = centre(laid.masses(body).all());
    let [first, second] = [slope - now, PI - slope - now].map(|by| Turn {
        by,
        about: one.at,
        to: (0.0, one.height),
    });
    let first_is_higher = first.of(centre).1 >= second.of(centre).1;
    Ok(if first_is_higher == above {
        first
    } else {
        second
    })
}

/// The sine of the slope from one contact to another.
fn rise(one: Contact, other: Contact, reach: f64) -> Result<f64, PostureError> {
    let raised = other.height - one.height;
    if raised.abs() > reach {
        return Err(PostureError::Open {
            short_by: ((raised.abs() - reach) * 10.0).round() / 10.0,
        });
    }
    Ok(if reach > 0.0 { raised / reach } else { 0.0 })
}

/// Hands on the floor, toes against a wall that the front of the body faces.
fn against_wall(
    setting: &Setting,
    hands: Contact,
    feet: Contact,
    cm: f64,
) -> Result<Turn, PostureError> {
    let across = (feet.at.0 - hands.at.0, feet.at.1 - hands.at.1);
    let reach = length(across);
    let slope = match setting.feet_at {
        Some(_) => libm::asin(rise(hands, feet, reach)?),
        None => libm::acos((FROM_THE_WALL * cm / reach).min(1.0)),
    };
    Ok(Turn {
        by: slope - libm::atan2(across.1, across.0),
        about: hands.at,
        to: (0.0, hands.height),
    })
}

/// The centre of mass straight above or below one contact.
fn balanced(contact: Contact, laid: &Points, hold: Hold, body: &Body) -> Turn {
    let (_, centre) = centre(laid.masses(body).all());
    let now = libm::atan2(centre.1 - contact.at.1, centre.0 - contact.at.0);
    let [above, below] = [PI / 2.0 - now, -PI / 2.0 - now].map(|by| Turn {
        by,
        about: contact.at,
        to: (0.0, contact.height),
    });
    let upright = above.of(laid.shoulder).1 > above.of(laid.hip).1;
    match hold {
        Hold::Above => above,
        Hold::Upright if upright => above,
        Hold::Below | Hold::Upright | Hold::Placed { .. } => below,
    }
}

/// Standing: everything above the flat feet leans about the ankle until the centre of mass is above the middle of the foot.
fn on_flat_feet(setting: &Setting, feet: Contact, laid: &Points, body: &Body) -> Turn {
    let cm = body.stature_cm;
    let masses = laid.masses(body);
    let flat = if setting.stance == Stance::OneFlat {
        1
    } else {
        2
    };
    let soles: f64 = masses.legs[..flat].iter().map(|leg| leg[2].0).sum();
    let above = masses
        .trunk
        .iter()
        .chain(masses.arms.iter().flatten())
        .chain(masses.legs.iter().enumerate().flat_map(
            |(i, leg)| {
                if i < flat { &leg[..2] } else { &leg[..] }
            },
        ))
        .copied();
    let (mass, centre) = centre(above);
    // Toes point to the left; both places count from the ankle.
    let forward = |share: f64| (ANKLE_ALONG - share) * body.foot.length * cm;
    let middle = forward(BALL_ALONG / 2.0);
    let sole = forward(body.foot.centre / body.foot.length);
    let wanted = (middle * (mass + soles) - sole * soles) / mass;
    let from = (centre.0 - feet.at.0, centre.1 - feet.at.1);
    let lean = libm::acos((wanted / length(from)).clamp(-1.0, 1.0));
    Turn {
        by: lean - libm::atan2(from.1, from.0),
        about: feet.at,
        to: (0.0, feet.height),
    }
}

/// Feet that stand flat do so whatever the ankle must bend to.
fn on_soles(mut points: Points, setting: &Setting, body: &Body) -> Points {
    let flat = match setting.stance {
        Stance::Flat if setting.soles() => 2,
        Stance::OneFlat if setting.soles() => 1,
        _ => 0,
    };
    for leg in &mut points.legs[..flat] {
        *leg = leg.flat(body);
    }
    points
}

/// Hands and toes that lie flat, for the eye alone.
fn settled(mut points: Points, setting: &Setting, body: &Body) -> Points {
    let cm = body.stature_cm;
    if setting.touches(Touch::Hands) {
        // Fingers point away from a body that is face down or upside down, and to the feet of one that is face up. Bodies are
        // turned, never mirrored: that is to the left.
        let flat = |wrist: Point| {
            (
                wrist.0 - body.hand.length * cm,
                wrist.1 - rest::WRIST * cm / 2.0,
            )
        };
        let floor = setting.hands_at + 2.0 * rest::WRIST * cm;
        points.fingers = flat(points.wrist);
        if points.other.wrist.1 < floor {
            points.other.fingers = flat(points.other.wrist);
        }
    }
    if setting.stance == Stance::Balls && setting.soles() {
        for leg in &mut points.legs {
            let toes = (1.0 - BALL_ALONG) * body.foot.length * cm;
            leg.toes = (leg.ball.0 - toes, leg.ball.1);
        }
    }
    points
}
