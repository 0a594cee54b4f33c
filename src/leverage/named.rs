//! The postures that ship with the tool, and how a coach's words fill and change them.

use super::balance::{Hold, PostureError, Setting, Stance};
use super::shape::{LegAngles, Shape};
use crate::curriculum::posture::{Posture, Touch};
use Touch::{Bar, Bars, Hands, Head, Knees, Rings, Toes, Wall};

/// A shipped posture. What a figure of it says stands in the words file, under `posture`.
pub(super) struct Named {
    pub name: &'static str,
    touches: &'static [Touch],
    stance: Stance,
    hold: Hold,
    /// Centimetres, where the posture needs a height of its own.
    hands_at: f64,
    start: Shape,
    end: Option<Shape>,
}

const fn leg(hip: f64, knee: f64, ankle: f64) -> LegAngles {
    LegAngles { hip, knee, ankle }
}

/// A posture on hands and the balls of the feet.
const fn on_floor(name: &'static str, start: Shape) -> Named {
    Named {
        name,
        touches: &[Hands, Toes],
        stance: Stance::Balls,
        hold: Hold::Above,
        hands_at: 0.0,
        start,
        end: None,
    }
}

/// A posture that hangs from a bar.
const fn hanging(name: &'static str, start: Shape) -> Named {
    Named {
        touches: &[Bar],
        hold: Hold::Below,
        ..on_floor(name, start)
    }
}

/// A posture above two bars.
const fn over_bars(name: &'static str, start: Shape) -> Named {
    Named {
        touches: &[Bars],
        hold: Hold::Upright,
        ..on_floor(name, start)
    }
}

const fn standing(name: &'static str, start: Shape) -> Named {
    Named {
        touches: &[Toes],
        stance: Stance::Flat,
        ..on_floor(name, start)
    }
}

/// Arms square to the trunk: the one assumption under which the published push-ups on the feet come near their values.
const SQUARE: f64 = 90.0;

/// The bottom of a push-up: the forearms upright, the elbows beside and above the back.
const LOWERED: Shape = Shape {
    elbows_out: 65.0,
    ..Shape::new(-50.0, 40.0, 180.0, 180.0).looking_up(25.0)
};

const ON_KNEES: LegAngles = leg(180.0, 70.0, 130.0);

const STRAIGHT: Shape = Shape::new(180.0, 180.0, 180.0, 180.0);

const BENT_ARM_HANG: Shape = Shape {
    elbows_out: 30.0,
    ..Shape::new(20.0, 22.0, 180.0, 180.0).pointed()
};

/// The shipped postures, from the floor up.
pub(super) const NAMED: &[Named] = &[
    on_floor(
        "plank",
        Shape::new(SQUARE, 180.0, 180.0, 180.0).looking_up(10.0),
    ),
    Named {
        end: Some(LOWERED),
        ..on_floor(
            "push-up",
            Shape::new(SQUARE, 180.0, 180.0, 180.0).looking_up(10.0),
        )
    },
    Named {
        touches: &[Hands, Knees],
        end: Some(Shape {
            legs: [ON_KNEES, ON_KNEES],
            ..LOWERED
        }),
        ..on_floor(
            "knee-push-up",
            Shape {
                legs: [ON_KNEES, ON_KNEES],
                ..Shape::new(SQUARE, 180.0, 180.0, 180.0).looking_up(10.0)
            },
        )
    },
    on_floor("pike", Shape::new(170.0, 180.0, 85.0, 180.0)),
    Named {
        end: Some(Shape {
            elbows_out: 55.0,
            ..Shape::new(45.0, 72.0, 100.0, 180.0)
        }),
        ..on_floor("pike-push-up", Shape::new(168.0, 180.0, 70.0, 180.0))
    },
    Named {
        touches: &[Hands],
        ..on_floor("handstand", STRAIGHT.pointed().looking_up(15.0))
    },
    Named {
        touches: &[Hands, Wall],
        ..on_floor("wall-handstand", STRAIGHT.pointed().looking_up(12.0))
    },
    Named {
        touches: &[Hands, Head],
        ..on_floor("headstand", Shape::new(100.0, 86.0, 180.0, 180.0).pointed())
    },
    Named {
        stance: Stance::Flat,
        ..on_floor("table-bridge", Shape::new(-90.0, 180.0, 180.0, 90.0))
    },
    Named {
        stance: Stance::Flat,
        ..on_floor(
            "bridge",
            Shape {
                spine: 245.0,
                ..Shape::new(225.0, 180.0, 215.0, 105.0)
            },
        )
    },
    Named {
        end: Some(Shape::new(85.0, 180.0, 55.0, 55.0).looking_up(20.0)),
        ..standing("squat", Shape::new(0.0, 180.0, 180.0, 180.0))
    },
    Named {
        stance: Stance::OneFlat,
        end: Some(Shape {
            legs: [leg(50.0, 48.0, 90.0), leg(68.0, 178.0, 90.0)],
            ..Shape::new(80.0, 180.0, 180.0, 180.0).looking_up(18.0)
        }),
        ..standing(
            "single-leg-squat",
            Shape {
                legs: [leg(180.0, 180.0, 90.0), leg(150.0, 180.0, 90.0)],
                ..Shape::new(45.0, 180.0, 180.0, 180.0)
            },
        )
    },
    over_bars("support", Shape::new(0.0, 180.0, 180.0, 180.0).pointed()),
    over_bars("l-sit", Shape::new(12.0, 180.0, 90.0, 180.0).pointed()),
    Named {
        end: Some(Shape {
            elbows_out: 20.0,
            ..Shape::new(-50.0, 90.0, 160.0, 110.0)
                .pointed()
                .looking_up(15.0)
        }),
        ..over_bars("dip", Shape::new(-1.0, 180.0, 180.0, 150.0).pointed())
    },
    hanging("hang", STRAIGHT.pointed()),
    hanging("bent-arm-hang", BENT_ARM_HANG),
    Named {
        end: Some(BENT_ARM_HANG),
        ..hanging("pull-up", STRAIGHT.pointed())
    },
    Named {
        touches: &[Bar, Toes],
        stance: Stance::Heels,
        hands_at: 95.0,
        end: Some(Shape {
            elbows_out: 30.0,
            ..Shape::new(-40.0, 55.0, 180.0, 180.0)
        }),
        ..hanging("row", Shape::new(90.0, 180.0, 180.0, 180.0))
    },
    hanging(
        "inverted-hang",
        Shape::new(0.0, 180.0, 180.0, 180.0).pointed(),
    ),
    hanging(
        "tuck-front-lever",
        Shape {
            spine: 140.0,
            ..Shape::new(66.0, 180.0, 50.0, 40.0).pointed()
        },
    ),
    hanging(
        "advanced-tuck-front-lever",
        Shape::new(59.0, 180.0, 90.0, 90.0).pointed(),
    ),
    hanging(
        "one-leg-front-lever",
        Shape {
            legs: [leg(180.0, 180.0, 165.0), leg(60.0, 45.0, 165.0)],
            ..Shape::new(56.0, 180.0, 180.0, 180.0)
        },
    ),
    hanging(
        "straddle-front-lever",
        Shape {
            legs_apart: 45.0,
            ..Shape::new(52.0, 180.0, 180.0, 180.0).pointed()
        },
    ),
    hanging(
        "front-lever",
        Shape::new(48.0, 180.0, 180.0, 180.0).pointed(),
    ),
];

/// The names of the shipped postures.
pub fn names() -> Vec<&'static str> {
    NAMED.iter().map(|n| n.name).collect()
}

/// A posture with everything filled in that the coach left open.
pub(super) struct Filled {
    pub named: Option<&'static Named>,
    pub setting: Setting,
    pub start: Shape,
    pub end: Option<Shape>,
}

pub(super) fn filled(posture: &Posture) -> Result<Filled, PostureError> {
    let named = match posture.named.as_deref() {
        None => None,
        Some(name) => Some(
            NAMED
                .iter()
                .find(|n| n.name == name)
                .ok_or_else(|| PostureError::Unknown(name.to_string()))?,
        ),
    };
    let shape = named.map_or(Shape::new(180.0, 180.0, 180.0, 180.0), |n| n.start);
    let start = shape.with(&posture.start);
    let end = match (named.and_then(|n| n.end), &posture.end) {
        (Some(end), joints) => Some(joints.as_ref().map_or(end, |j| end.with(j))),
        (None, Some(joints)) => Some(start.with(joints)),
        (None, None) => None,
    };
    let touches = match named {
        Some(named) if posture.touches.is_empty() => named.touches.to_vec(),
        _ => posture.touches.clone(),
    };
    let hold = match named {
        Some(named) => named.hold,
        None => hold(&touches, &start),
    };
    let feet_only = !touches.iter().any(|t| !matches!(t, Toes));
    Ok(Filled {
        named,
        setting: Setting {
            stance: match named {
                Some(named) => named.stance,
                None if feet_only => Stance::Flat,
                None => Stance::Balls,
            },
            hold,
            hands_at: posture
                .hands_at
                .unwrap_or_else(|| named.map_or(0.0, |n| n.hands_at)),
            feet_at: posture.feet_at,
            touches,
        },
        start,
        end,
    })
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
