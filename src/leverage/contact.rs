//! What of a body presses, and how high it is: hands, head, back, feet or knees, before the body is turned.

use super::balance::{Setting, Stance};
use super::body::rest;
use super::plane::Point;
use super::shape::Points;
use crate::curriculum::posture::Touch;

/// A place that presses, and how high it is.
#[derive(Clone, Copy)]
pub(super) struct Contact {
    pub at: Point,
    pub height: f64,
}

/// Everything that presses, and whether toes lean on a wall.
pub(super) struct Contacts {
    pub hands: Option<Contact>,
    pub head: Option<Contact>,
    pub back: Option<Contact>,
    pub feet: Option<Contact>,
    pub wall: bool,
}

impl Contacts {
    pub fn of(setting: &Setting, laid: &Points, cm: f64) -> Contacts {
        let on_floor = |touch: Touch, at: Point| {
            let touches = setting.touches(touch);
            touches.then_some(Contact { at, height: 0.0 })
        };
        Contacts {
            hands: hands(setting, laid, cm),
            head: on_floor(Touch::Head, laid.vertex),
            back: on_floor(Touch::Back, (0.0, rest::BACK * cm)),
            feet: feet(setting, laid, cm),
            wall: setting.touches(Touch::Wall),
        }
    }

    /// The head, else the back.
    pub fn top(&self) -> Option<Contact> {
        self.head.or(self.back)
    }
}

fn hands(setting: &Setting, laid: &Points, cm: f64) -> Option<Contact> {
    if setting.grip() {
        Some(Contact {
            at: laid.fingers,
            height: setting.hands_at,
        })
    } else if setting.touches(Touch::Forearms) {
        Some(Contact {
            at: laid.elbow,
            height: setting.hands_at + rest::ELBOW * cm,
        })
    } else if setting.touches(Touch::Hands) {
        Some(Contact {
            at: laid.wrist,
            height: setting.hands_at + rest::WRIST * cm,
        })
    } else {
        None
    }
}

fn feet(setting: &Setting, laid: &Points, cm: f64) -> Option<Contact> {
    let floor = setting.feet_at.unwrap_or(0.0);
    let leg = &laid.legs[0];
    let (at, over) = if setting.touches(Touch::Knees) {
        (leg.knee, rest::KNEE)
    } else if setting.touches(Touch::Wall) {
        (leg.toes, 0.0)
    } else if setting.touches(Touch::Toes) {
        match setting.stance {
            Stance::Balls => (leg.ball, rest::BALL),
            Stance::Heels => (leg.heel, 0.0),
            Stance::Flat | Stance::OneFlat => (leg.ankle, rest::ANKLE),
        }
    } else {
        return None;
    };
    Some(Contact {
        at,
        height: floor + over * cm,
    })
}
