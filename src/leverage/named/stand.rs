//! Postures on the feet: squats, lunges, hinges, carries.

use super::*;
use Gear::{Stick, Weight};
use Touch::Knees;

const RELAXED: Shape = Shape::new(4.0, 172.0, 180.0, 180.0);

const PISTOL: Shape = Shape {
    legs: [leg(50.0, 48.0, 90.0), leg(68.0, 178.0, 90.0)],
    ..Shape::new(80.0, 180.0, 180.0, 180.0).looking_up(18.0)
};

/// Tall on two flat feet.
const fn tall(shape: Shape) -> Key {
    laid(&[Toes], 90.0, (1.0, 90.0), shape).feet(flat(-11.0), flat(-11.0))
}

/// Tall on the first foot.
const fn on_one(shape: Shape) -> Key {
    laid(&[Toes], 90.0, (1.0, 90.0), shape).feet(flat(-11.0), None)
}

/// On one leg in front of a box, and down on it.
const fn to_box(hip: Point, trunk: f64, leg: f64, props: &'static [Prop]) -> [Key; 2] {
    [
        on_one(Shape::new(40.0, 175.0, 180.0, 180.0).other_leg(155.0, 178.0, 90.0)).props(props),
        laid(
            &[Toes],
            trunk,
            hip,
            Shape::new(92.0, 178.0, 90.0, 90.0).other_leg(leg, 176.0, 90.0),
        )
        .feet(flat(-11.0), None)
        .props(props),
    ]
}

const POST: &[Prop] = &[Prop::Post(-50.0)];
const POST_AND_BOX: &[Prop] = &[Prop::Post(-50.0), Prop::Box(18.0, 58.0, 44.0)];
const HIGH: [Key; 2] = to_box((27.0, 52.5), 118.0, 78.0, &[Prop::Box(18.0, 58.0, 44.0)]);
const LOW: [Key; 2] = to_box((24.0, 29.0), 126.0, 56.0, &[Prop::Box(16.0, 52.0, 20.0)]);

const fn held(key: Key, hand: Point, props: &'static [Prop]) -> Key {
    key.each_hand(Some(hand), None).props(props)
}

const FREE_ARM: (f64, f64) = (20.0, 165.0);

const fn one_hand(mut key: Key) -> Key {
    key.shape.other_arm = Some(FREE_ARM);
    key
}

const CALF: &[Prop] = &[Prop::WallLeft(-46.0), Prop::Box(-44.0, -13.0, 12.0)];
const CALF_SHAPE: Shape = Shape::new(60.0, 150.0, 180.0, 180.0)
    .wrist(105.0)
    .other_arm(4.0, 172.0)
    .other_leg(176.0, 105.0, 130.0);
const STEP_BOX: &[Prop] = &[Prop::Box(-62.0, -14.0, 45.0)];
/// Between the feet.
const PICKED: &[Prop] = &[Prop::Box(-24.0, 6.0, 33.0)];

/// Feet apart in a stride, the hips so high.
const fn stride(trunk: f64, hip: Point) -> Key {
    laid(&[Toes], trunk, hip, RELAXED).feet(flat(-38.0), tip(42.0, 60.0))
}

/// One hand below the navel, the other on the breastbone.
const TELLING_HANDS: Shape = Shape::new(-47.0, 79.0, 180.0, 180.0)
    .elbows_out(25.0)
    .wrist(218.0)
    .other_arm(-52.0, 31.0);

const CHAIR: &[Prop] = &[Prop::Chair(44.0, 84.0, 44.0)];

pub(super) const STAND: &[Named] = &[
    named(
        "squat",
        &[
            standing(Shape::new(0.0, 180.0, 180.0, 180.0)),
            standing(Shape::new(85.0, 180.0, 55.0, 55.0).looking_up(20.0)),
        ],
    ),
    named(
        "deep-squat",
        &[laid(
            &[Toes],
            108.0,
            (14.0, 26.0),
            Shape::new(62.0, 95.0, 50.0, 45.0).looking_up(10.0),
        )
        .feet(flat(-11.0), flat(-11.0))],
    ),
    named(
        "single-leg-squat",
        &[
            standing(Shape {
                legs: [leg(180.0, 180.0, 90.0), leg(150.0, 180.0, 90.0)],
                ..Shape::new(45.0, 180.0, 180.0, 180.0)
            })
            .stance(Stance::OneFlat),
            standing(PISTOL).stance(Stance::OneFlat),
        ],
    ),
    named("single-leg-squat-to-box", &HIGH),
    named("single-leg-squat-to-low-box", &LOW),
    named(
        "held-single-leg-squat",
        &[
            held(one_hand(HIGH[0]), (-47.0, 108.0), POST),
            held(
                one_hand(laid(
                    &[Toes],
                    112.0,
                    (19.0, 30.0),
                    Shape::new(92.0, 178.0, 90.0, 90.0).other_leg(72.0, 172.0, 90.0),
                ))
                .feet(flat(-11.0), None),
                (-47.0, 82.0),
                POST,
            ),
        ],
    ),
    named(
        "held-single-leg-squat-to-box",
        &[
            held(one_hand(HIGH[0]), (-47.0, 108.0), POST_AND_BOX),
            held(one_hand(HIGH[1]), (-40.0, 98.0), POST_AND_BOX),
        ],
    ),
    named(
        "shrimp-squat",
        &[
            on_one(Shape::new(60.0, 175.0, 180.0, 180.0).other_leg(178.0, 36.0, 160.0))
                .each_hand(None, Some((27.0, 94.0)))
                .props(&[Prop::Mat(6.0, 72.0)]),
            laid(
                &[Toes],
                128.0,
                (11.0, 38.0),
                Shape::new(100.0, 175.0, 60.0, 50.0).other_leg(178.0, 30.0, 160.0),
            )
            .feet(flat(-11.0), None)
            .each_hand(None, Some((28.0, 56.0)))
            .props(&[Prop::Mat(6.0, 72.0)]),
        ],
    ),
    named(
        "split-squat",
        &[stride(90.0, (0.0, 79.0)), stride(95.0, (4.0, 42.5))],
    ),
    named(
        "raised-split-squat",
        &[
            laid(&[Toes], 93.0, (0.0, 84.0), RELAXED)
                .feet(flat(-22.0), foot(60.0, 50.0, 170.0))
                .props(CHAIR),
            laid(&[Toes], 106.0, (8.0, 48.0), RELAXED)
                .feet(flat(-22.0), foot(60.0, 50.0, 170.0))
                .props(CHAIR),
        ],
    ),
    named(
        "step-up",
        &[
            laid(&[Toes], 104.0, (2.0, 86.0), RELAXED)
                .feet(foot(-38.0, 45.0, 0.0), flat(6.0))
                .props(STEP_BOX),
            laid(
                &[Toes],
                90.0,
                (-26.0, 135.0),
                RELAXED.other_leg(176.0, 150.0, 110.0),
            )
            .feet(foot(-38.0, 45.0, 0.0), None)
            .props(STEP_BOX),
        ],
    ),
    named(
        "calf-raise",
        &[
            laid(&[Toes], 90.0, (-17.0, 95.0), CALF_SHAPE)
                .feet(foot(-18.0, 12.0, -16.0), None)
                .each_hand(Some((-41.5, 130.0)), None)
                .props(CALF),
            laid(&[Toes], 90.0, (-18.0, 107.5), CALF_SHAPE)
                .feet(foot(-18.0, 12.0, 46.0), None)
                .each_hand(Some((-41.5, 138.0)), None)
                .props(CALF),
        ],
    ),
    named(
        "one-leg-stand",
        &[on_one(
            Shape::new(6.0, 170.0, 180.0, 180.0).other_leg(90.0, 88.0, 100.0),
        )],
    ),
    named(
        "hinge",
        &[
            tall(TELLING_HANDS),
            laid(&[Toes], 135.0, (16.5, 85.0), TELLING_HANDS).feet(flat(-11.0), flat(-11.0)),
        ],
    ),
    named(
        "pick-up",
        &[
            laid(
                &[Toes],
                140.0,
                (25.0, 72.0),
                Shape::new(50.0, 180.0, 70.0, 120.0).looking_up(12.0),
            )
            .feet(flat(-11.0), flat(-11.0))
            .gear(&[Weight])
            .props(PICKED),
            tall(Shape::new(12.0, 180.0, 180.0, 180.0))
                .gear(&[Weight])
                .props(PICKED),
        ],
    ),
    named(
        "single-leg-hinge",
        &[
            on_one(Shape::new(6.0, 178.0, 180.0, 180.0).other_leg(172.0, 138.0, 110.0)),
            laid(
                &[Toes],
                170.0,
                (11.0, 88.0),
                Shape::new(80.0, 180.0, 90.0, 165.0)
                    .other_leg(178.0, 176.0, 110.0)
                    .looking_up(8.0),
            )
            .feet(flat(-11.0), None),
        ],
    ),
    named(
        "carry",
        &[laid(
            &[Toes],
            91.0,
            (0.0, 87.0),
            Shape::new(2.0, 180.0, 180.0, 180.0).other_arm(26.0, 160.0),
        )
        .feet(foot(-30.0, 4.6, -18.0), tip(24.0, 38.0))
        .gear(&[Weight])],
    ),
    named(
        "knee-to-wall",
        &[laid(
            &[Toes, Knees],
            94.0,
            (3.0, 46.0),
            Shape::new(60.0, 130.0, 90.0, 90.0)
                .wrist(112.0)
                .other_leg(192.0, 101.0, 170.0),
        )
        .feet(flat(-22.0), None)
        .hands((-39.5, 92.0))
        .props(&[Prop::WallLeft(-44.0)])],
    ),
    named(
        "reach-behind",
        &[
            tall(Shape::new(-6.0, 180.0, 180.0, 180.0)).gear(&[Stick]),
            tall(Shape::new(-50.0, 180.0, 180.0, 180.0)).gear(&[Stick]),
        ],
    ),
];
