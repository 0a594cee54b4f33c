//! Postures that press on the hands or the forearms: push-ups, planks, handstands and the ways into and out of them.

use super::*;
use Touch::{Head, Knees, Wall};

/// Arms square to the trunk: the one assumption under which the published push-ups on the feet come near their values.
const SQUARE: f64 = 90.0;

/// The bottom of a push-up: the forearms upright, the elbows beside and above the back.
const LOWERED: Shape = Shape {
    elbows_out: 65.0,
    ..Shape::new(-50.0, 40.0, 180.0, 180.0).looking_up(25.0)
};

const ON_KNEES: LegAngles = leg(180.0, 70.0, 130.0);

const fn on_knees(shape: Shape) -> Shape {
    Shape {
        legs: [ON_KNEES, ON_KNEES],
        ..shape
    }
}

pub(super) const STRAIGHT: Shape = Shape::new(180.0, 180.0, 180.0, 180.0);

const UP: Shape = Shape::new(SQUARE, 180.0, 180.0, 180.0).looking_up(10.0);

const PIKE: Shape = Shape::new(170.0, 180.0, 85.0, 180.0);

const HANDSTAND: Shape = STRAIGHT.pointed().looking_up(15.0);

/// A long lunge with the arms beside the ears.
const LUNGE: Key = laid(
    &[Toes],
    97.0,
    (2.0, 72.0),
    Shape::new(172.0, 180.0, 180.0, 180.0),
)
.feet(flat(-40.0), tip(48.0, 50.0));

/// The hands have landed, one leg is high, the other foot leaves the floor.
const KICKING: Key = laid(
    &[Hands],
    230.0,
    (-14.4, 92.8),
    Shape::new(170.0, 180.0, 180.0, 180.0)
        .looking_up(15.0)
        .other_leg(192.0, 178.0, 165.0),
)
.hands((-57.0, 3.0))
.feet(tip(-8.0, 55.0), None);

/// The hips are over the hands, one leg upright, the other at the height of the hips.
const SPLIT: Key = laid(
    &[Hands],
    262.0,
    (-57.0, 107.5),
    Shape::new(170.0, 180.0, 92.0, 172.0)
        .pointed()
        .looking_up(15.0)
        .other_leg(186.0, 180.0, 165.0),
)
.hands((-57.0, 3.0));

/// The legs are closed over the same hands.
const ARRIVED: Key = laid(&[Hands], 270.0, (-56.5, 108.0), HANDSTAND).hands((-57.0, 3.0));

/// Heels against a wall at the back.
const HEELS_ON_WALL: Key = laid(
    &[Hands, Wall],
    274.0,
    (-65.0, 107.0),
    Shape::new(175.0, 180.0, 186.0, 180.0)
        .ankles(150.0)
        .looking_up(15.0),
)
.hands((-57.0, 3.0))
.props(&[Prop::WallLeft(-86.0)]);

const HEELS_OFF_WALL: Key = laid(
    &[Hands],
    -88.0,
    (-3.0, 107.5),
    Shape::new(178.0, 180.0, 182.0, 180.0)
        .pointed()
        .looking_up(15.0),
)
.hands((0.0, 3.0))
.props(&[Prop::WallLeft(-29.0)]);

/// So far from the wall that what the heels do is seen.
const PULLED_FROM: Key = laid(
    &[Hands, Wall],
    -85.0,
    (-10.0, 107.0),
    Shape::new(174.0, 180.0, 191.5, 180.0)
        .ankles(146.0)
        .looking_up(15.0),
)
.hands((0.0, 3.0))
.props(&[Prop::WallLeft(-40.0)]);

const ON_WALL: Key = Key {
    touches: &[Hands, Wall],
    ..on_floor(STRAIGHT.pointed().looking_up(12.0))
};

pub(super) const HANDS: &[Named] = &[
    named("plank", &[on_floor(UP)]),
    named(
        "forearm-plank",
        &[on_floor(Shape::new(82.0, 90.0, 180.0, 180.0).looking_up(8.0)).on(&[Forearms, Toes])],
    ),
    named("push-up", &[on_floor(UP), on_floor(LOWERED)]),
    named(
        "knee-push-up",
        &[
            on_floor(on_knees(UP)).on(&[Hands, Knees]),
            on_floor(on_knees(LOWERED)).on(&[Hands, Knees]),
        ],
    ),
    named(
        "ring-push-up",
        &[
            on_floor(UP).on(&[Rings, Toes]).at(14.0),
            on_floor(LOWERED).on(&[Rings, Toes]).at(14.0),
        ],
    ),
    Named {
        adapts: true,
        ..named("pike", &[on_floor(PIKE)])
    },
    Named {
        adapts: true,
        ..named(
            "pike-push-up",
            &[
                on_floor(Shape::new(168.0, 180.0, 70.0, 180.0)),
                on_floor(Shape::new(45.0, 72.0, 100.0, 180.0).elbows_out(55.0)),
            ],
        )
    },
    named(
        "pike-shrug",
        &[on_floor(PIKE.sunk(0.14)), on_floor(PIKE.sunk(-0.05))],
    ),
    named(
        "pike-step-down",
        &[
            laid(
                &[Hands, Toes],
                -101.0,
                (19.0, 106.0),
                Shape::new(175.0, 180.0, 90.0, 180.0),
            )
            .hands((0.0, 3.0))
            .feet(foot(93.0, 50.0, 65.0), foot(93.0, 50.0, 65.0))
            .props(&[Prop::Box(78.0, 128.0, 50.0)]),
            laid(
                &[Hands, Toes],
                -140.0,
                (45.0, 90.0),
                Shape::new(170.0, 180.0, 90.0, 180.0),
            )
            .hands((0.0, 3.0))
            .feet(flat(36.0), foot(93.0, 50.0, 55.0))
            .props(&[Prop::Box(78.0, 128.0, 50.0)]),
        ],
    ),
    named(
        "crow",
        &[laid(
            &[Hands],
            196.0,
            (18.0, 56.0),
            Shape::new(60.0, 110.0, 19.0, 36.0)
                .spine(158.0)
                .pointed()
                .looking_up(38.0),
        )
        .hands((0.0, 3.0))],
    ),
    named("handstand", &[on_floor(HANDSTAND).on(&[Hands])]),
    named("wall-handstand", &[ON_WALL]),
    named(
        "one-foot-wall-handstand",
        &[Key {
            shape: STRAIGHT
                .pointed()
                .looking_up(12.0)
                .other_leg(205.0, 178.0, 165.0),
            ..ON_WALL
        }],
    ),
    named(
        "wall-toe-pull",
        &[
            laid(
                &[Hands, Wall],
                -99.0,
                (11.0, 106.8),
                Shape::new(175.0, 180.0, 177.0, 180.0)
                    .pointed()
                    .looking_up(12.0),
            )
            .hands((0.0, 3.0))
            .props(&[Prop::WallAtFeet]),
            laid(
                &[Hands],
                -93.0,
                (4.0, 107.4),
                Shape::new(178.0, 180.0, 178.0, 180.0)
                    .pointed()
                    .looking_up(12.0),
            )
            .hands((0.0, 3.0))
            .props(&[Prop::WallRight(32.0)]),
        ],
    ),
    named(
        "wall-heel-pull",
        &[PULLED_FROM, HEELS_OFF_WALL.props(&[Prop::WallLeft(-40.0)])],
    ),
    named(
        "wall-walk",
        &[
            on_floor(UP).props(&[Prop::WallAtFeet]),
            laid(
                &[Hands, Wall],
                -152.0,
                (92.0, 53.0),
                Shape::new(178.0, 180.0, 176.0, 180.0)
                    .ankles(120.0)
                    .looking_up(12.0),
            )
            .hands((0.0, 3.0))
            .props(&[Prop::WallAtFeet]),
        ],
    ),
    named("lunge-kick", &[LUNGE, KICKING.on(&[Hands, Toes])]),
    named("kick-up", &[LUNGE, SPLIT, ARRIVED]),
    named(
        "wall-kick-up",
        &[
            LUNGE.props(&[Prop::WallLeft(-86.0)]),
            SPLIT.props(&[Prop::WallLeft(-86.0)]),
            HEELS_ON_WALL,
        ],
    ),
    named(
        "quarter-turn-exit",
        &[
            on_floor(HANDSTAND).on(&[Hands]),
            laid(
                &[Hands],
                -90.0,
                (4.0, 105.0),
                Shape::new(175.0, 180.0, 150.0, 180.0)
                    .pointed()
                    .other_leg(205.0, 180.0, 165.0),
            )
            .each_hand(Some((-16.0, 3.0)), Some((20.0, 3.0)))
            .seen_from_the_front(),
            laid(
                &[Hands, Toes],
                -160.0,
                (40.0, 73.0),
                Shape::new(160.0, 180.0, 90.0, 176.0)
                    .pointed()
                    .other_leg(237.0, 180.0, 165.0),
            )
            .each_hand(Some((-22.0, 3.0)), Some((5.0, 3.0)))
            .feet(foot(66.0, 3.3, 0.0), None)
            .seen_from_the_front(),
            laid(
                &[Toes],
                176.0,
                (22.0, 87.0),
                Shape::new(84.0, 178.0, 90.0, 175.0),
            )
            .feet(flat(-11.0), flat(-11.0)),
        ],
    ),
    named(
        "headstand",
        &[on_floor(Shape::new(100.0, 86.0, 180.0, 180.0).pointed()).on(&[Hands, Head])],
    ),
    named(
        "table-bridge",
        &[on_floor(Shape::new(-90.0, 180.0, 180.0, 90.0)).stance(Stance::Flat)],
    ),
    named(
        "bridge",
        &[on_floor(Shape::new(225.0, 180.0, 215.0, 105.0).spine(245.0)).stance(Stance::Flat)],
    ),
];
