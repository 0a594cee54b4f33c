//! Postures that lie or kneel on the floor.

use super::*;
use Touch::{Back, Knees};

/// Rounded on the back, the shoulder blades off the floor.
const fn hollow(shape: Shape) -> Key {
    laid(
        &[Back],
        13.0,
        (0.0, 11.5),
        shape.spine(152.0).looking_up(-18.0).pointed(),
    )
}

const fn on_back(shape: Shape) -> Key {
    laid(&[Back], 0.0, (0.0, 9.5), shape)
}

/// A side plank seen from the front: the free arm points up.
const SIDE: Shape = Shape::new(82.0, 90.0, 180.0, 180.0).other_arm(-98.0, 180.0);

const KNEELING: LegAngles = leg(100.0, 90.0, 172.0);

pub(super) const FLOOR: &[Named] = &[
    named("hollow", &[hollow(Shape::new(166.0, 180.0, 152.0, 180.0))]),
    named(
        "tuck-hollow",
        &[hollow(Shape::new(12.0, 178.0, 80.0, 80.0))],
    ),
    named(
        "one-leg-hollow",
        &[hollow(
            Shape::new(98.0, 180.0, 152.0, 180.0).other_leg(80.0, 80.0, 165.0),
        )],
    ),
    named(
        "arch",
        &[laid(
            &[Back],
            167.0,
            (0.0, 9.5),
            Shape::new(172.0, 180.0, 205.0, 178.0)
                .spine(212.0)
                .looking_up(12.0)
                .pointed(),
        )],
    ),
    named(
        "arch-arms-back",
        &[laid(
            &[Back],
            167.0,
            (0.0, 9.5),
            Shape::new(-6.0, 178.0, 205.0, 178.0)
                .spine(212.0)
                .looking_up(12.0)
                .pointed(),
        )],
    ),
    named(
        "dead-bug",
        &[
            on_back(Shape::new(90.0, 180.0, 90.0, 90.0)),
            on_back(
                Shape::new(90.0, 180.0, 168.0, 178.0)
                    .other_arm(166.0, 180.0)
                    .other_leg(90.0, 90.0, 90.0),
            ),
        ],
    ),
    named(
        "side-plank",
        &[on_floor(SIDE).on(&[Forearms, Toes]).seen_from_the_front()],
    ),
    named(
        "lying-leg-raise",
        &[
            on_back(Shape::new(4.0, 178.0, 180.0, 180.0)),
            on_back(Shape::new(4.0, 178.0, 98.0, 180.0).other_leg(180.0, 180.0, 90.0)),
        ],
    ),
    named(
        "lying-overhead-reach",
        &[
            on_back(Shape::new(92.0, 180.0, 120.0, 70.0)).feet(flat(-56.0), flat(-56.0)),
            on_back(Shape::new(176.0, 180.0, 120.0, 70.0)).feet(flat(-56.0), flat(-56.0)),
        ],
    ),
    named(
        "shoulder-stand",
        &[laid(
            &[Back],
            -88.0,
            (0.0, 61.0),
            Shape::new(-82.0, 68.0, 180.0, 180.0)
                .looking_up(-84.0)
                .pointed(),
        )],
    ),
    named(
        "hip-bridge",
        &[
            on_back(Shape::new(6.0, 178.0, 120.0, 70.0)).feet(flat(-54.0), flat(-54.0)),
            laid(
                &[Back, Toes],
                -34.0,
                (0.0, 37.0),
                Shape::new(-36.0, 178.0, 180.0, 90.0).looking_up(-30.0),
            )
            .feet(flat(-54.0), flat(-54.0)),
        ],
    ),
    named(
        "single-leg-hip-bridge",
        &[
            on_back(Shape::new(6.0, 178.0, 120.0, 70.0).other_leg(150.0, 178.0, 110.0))
                .feet(flat(-54.0), None),
            laid(
                &[Back, Toes],
                -34.0,
                (0.0, 37.0),
                Shape::new(-36.0, 178.0, 180.0, 90.0)
                    .looking_up(-30.0)
                    .other_leg(172.0, 178.0, 110.0),
            )
            .feet(flat(-54.0), None),
        ],
    ),
    named(
        "roll-back",
        &[
            laid(
                &[Toes],
                118.0,
                (14.0, 27.0),
                Shape::new(75.0, 165.0, 50.0, 45.0)
                    .spine(150.0)
                    .looking_up(-5.0),
            )
            .feet(flat(-11.0), flat(-11.0))
            .props(&[Prop::Mat(10.0, 120.0)]),
            laid(
                &[Back],
                -8.0,
                (24.0, 24.0),
                Shape::new(58.0, 140.0, 44.0, 48.0)
                    .spine(128.0)
                    .looking_up(-26.0),
            )
            .props(&[Prop::Mat(10.0, 120.0)]),
        ],
    ),
    named(
        "kneeling-wrist-reach",
        &[
            laid(
                &[Hands, Knees],
                170.0,
                (10.0, 44.5),
                Shape {
                    legs: [KNEELING, KNEELING],
                    ..Shape::new(80.0, 180.0, 90.0, 90.0)
                }
                .looking_up(12.0),
            )
            .hands((-34.0, 3.0)),
            laid(
                &[Hands, Knees],
                166.0,
                (-4.0, 42.0),
                Shape {
                    legs: [leg(124.7, 110.7, 172.0), leg(124.7, 110.7, 172.0)],
                    ..Shape::new(80.0, 180.0, 90.0, 90.0)
                }
                .looking_up(12.0),
            )
            .hands((-34.0, 3.0)),
        ],
    ),
];
