//! Postures that hang from, stand on or turn about a bar, two bars or rings.

use super::hands::STRAIGHT;
use super::*;

const BENT_ARM_HANG: Shape = Shape {
    elbows_out: 30.0,
    ..Shape::new(20.0, 22.0, 180.0, 180.0).pointed()
};

const HANG: Shape = STRAIGHT.pointed();

const SUPPORT: Shape = Shape::new(0.0, 180.0, 180.0, 180.0).pointed();

/// Upper arms level, forearms upright, the trunk leaning forward.
const DIP: Shape = Shape {
    elbows_out: 35.0,
    ..Shape::new(-58.0, 87.0, 157.0, 78.0)
        .pointed()
        .looking_up(15.0)
};

const DIP_TOP: Shape = Shape::new(-1.0, 180.0, 180.0, 120.0).pointed();

const ROWED: Shape = Shape {
    elbows_out: 30.0,
    ..Shape::new(-40.0, 55.0, 180.0, 180.0)
};

const fn rowing(shape: Shape, stance: Stance) -> Key {
    hanging(shape).on(&[Bar, Toes]).stance(stance).at(95.0)
}

const fn on_rings(shape: Shape) -> Key {
    hanging(shape).on(&[Rings])
}

const fn over_rings(shape: Shape) -> Key {
    over_bars(shape).on(&[Rings])
}

/// In rings so high, the toes on the floor.
const fn rings_and_toes(height: f64, trunk: f64, hip: Point, feet: Option<FootAt>) -> Key {
    laid(&[Rings, Toes], trunk, hip, SUPPORT.elbows_out(35.0))
        .at(height)
        .feet(feet, feet)
}

const LOW_SUPPORT: Key =
    rings_and_toes(84.0, 93.0, (2.5, 92.2), tip(24.0, 70.0)).hands((0.0, 90.5));
/// The shoulders stop a palm above the elbows.
const LOW_DIP: Key = rings_and_toes(84.0, 126.0, (11.5, 84.0), tip(24.0, 64.0)).hands((0.0, 90.5));

/// The pull ends with the rings at the breastbone, wrists over them.
const PULLED: Shape = Shape {
    elbows_out: 20.0,
    ..Shape::new(-22.0, 38.0, 176.0, 172.0)
        .pointed()
        .wrist(115.0)
        .looking_up(12.0)
};

/// The pull ends with the bar at the breastbone, the elbows behind the back.
const AT_THE_BAR: Shape = Shape {
    elbows_out: 25.0,
    ..Shape::new(-51.0, 48.0, 178.0, 174.0)
        .pointed()
        .wrist(104.0)
        .looking_up(18.0)
};

/// Half way round: the shoulders over the rings, the elbows behind and high.
const TURNED: Shape = Shape {
    elbows_out: 15.0,
    ..Shape::new(-68.0, 48.0, 140.0, 150.0)
        .pointed()
        .looking_up(12.0)
};

const FALSE_GRIP: Shape = Shape::new(176.0, 165.0, 125.0, 75.0).wrist(112.0).pointed();

const TUCKED_HANG: Shape = Shape::new(160.0, 180.0, 52.0, 42.0).spine(155.0).pointed();
const TUCKED_UPSIDE_DOWN: Shape = Shape::new(34.0, 180.0, 42.0, 40.0)
    .spine(150.0)
    .looking_up(-15.0)
    .pointed();
const TUCKED_BEHIND: Shape = Shape::new(-88.0, 180.0, 55.0, 45.0).spine(150.0).pointed();

const UPSIDE_DOWN: Shape = Shape::new(0.0, 180.0, 180.0, 180.0).pointed();
/// So far that the bar lies before the thighs.
const BEHIND_THE_BAR: Shape = Shape::new(5.0, 180.0, 180.0, 180.0).pointed();
const TUCK_LEVER: Shape = Shape::new(66.0, 180.0, 50.0, 40.0).spine(140.0).pointed();
const ADVANCED_LEVER: Shape = Shape::new(59.0, 180.0, 90.0, 90.0).pointed();
const STRADDLE_LEVER: Shape = Shape {
    legs_apart: 45.0,
    ..Shape::new(52.0, 180.0, 180.0, 180.0).pointed()
};
const LEVER: Shape = Shape::new(48.0, 180.0, 180.0, 180.0).pointed();

const BAND: &[Gear] = &[Gear::Band];

/// One knee in a band, the shank behind it; the other leg hangs.
const IN_A_BAND: Shape = Shape {
    legs: [leg(148.0, 78.0, 150.0), leg(176.0, 150.0, 160.0)],
    ..HANG
};
const BANDED_TOP: Shape = Shape {
    legs: IN_A_BAND.legs,
    ..BENT_ARM_HANG
};

const BOX_OF_BAR: &[Prop] = &[Prop::Floor, Prop::Box(-48.0, -16.0, 45.0)];
const BOX_OF_BARS: &[Prop] = &[Prop::Floor, Prop::Box(22.0, 62.0, 50.0)];
const BOX_UNDER: &[Prop] = &[Prop::Floor, Prop::Box(-30.0, 22.0, 30.0)];

pub(super) const GRIP: &[Named] = &[
    named("support", &[over_bars(SUPPORT)]),
    named(
        "support-shrug",
        &[
            over_bars(SUPPORT.sunk(0.16)),
            over_bars(SUPPORT.sunk(-0.04)),
        ],
    ),
    named("ring-support", &[over_rings(SUPPORT)]),
    named("ring-support-feet-down", &[LOW_SUPPORT]),
    named(
        "tuck-sit",
        &[over_bars(Shape::new(6.0, 180.0, 78.0, 62.0).pointed())],
    ),
    named(
        "l-sit",
        &[over_bars(Shape::new(12.0, 180.0, 90.0, 180.0).pointed())],
    ),
    named("dip", &[over_bars(DIP_TOP), over_bars(DIP)]),
    named("ring-dip", &[over_rings(DIP_TOP), over_rings(DIP)]),
    named(
        "dip-feet-on-box",
        &[
            laid(&[Bars, Toes], 91.0, (1.0, 128.5), SUPPORT)
                .at(118.0)
                .hands((0.0, 125.0))
                .feet(foot(36.0, 50.0, 72.0), foot(36.0, 50.0, 72.0))
                .props(BOX_OF_BARS),
            laid(
                &[Bars, Toes],
                126.0,
                (11.5, 118.0),
                SUPPORT.elbows_out(35.0).looking_up(12.0),
            )
            .at(118.0)
            .hands((0.0, 125.0))
            .feet(foot(36.0, 50.0, 66.0), foot(36.0, 50.0, 66.0))
            .props(BOX_OF_BARS),
        ],
    ),
    named("ring-dip-feet-down", &[LOW_SUPPORT, LOW_DIP]),
    named(
        "ring-step-down",
        &[
            laid(
                &[Rings],
                92.0,
                (1.0, 101.5),
                Shape::new(0.0, 180.0, 168.0, 105.0).pointed(),
            )
            .at(92.0)
            .each_hand(Some((0.0, 98.5)), Some((0.0, 98.5)))
            .props(&[Prop::Floor]),
            laid(
                &[Rings, Toes],
                92.0,
                (2.0, 89.5),
                Shape::new(0.0, 180.0, 180.0, 180.0).other_arm(6.0, 170.0),
            )
            .at(92.0)
            .each_hand(Some((0.0, 98.5)), Some((9.0, 88.0)))
            .feet(flat(-11.0), flat(-11.0)),
        ],
    ),
    named(
        "step-off-bars",
        &[
            laid(
                &[Bars],
                92.0,
                (1.0, 131.5),
                Shape::new(0.0, 180.0, 176.0, 100.0).pointed(),
            )
            .at(122.0)
            .hands((0.0, 128.5))
            .props(BOX_UNDER),
            laid(&[Bars, Toes], 93.0, (2.0, 119.5), SUPPORT)
                .at(122.0)
                .hands((0.0, 128.5))
                .feet(foot(-11.0, 30.0, 0.0), foot(-11.0, 30.0, 0.0))
                .props(BOX_UNDER),
        ],
    ),
    named("hang", &[hanging(HANG)]),
    named(
        "active-hang",
        &[hanging(HANG.sunk(0.16)), hanging(HANG.sunk(-0.03))],
    ),
    named("false-grip-hang", &[on_rings(FALSE_GRIP)]),
    named(
        "knee-raise",
        &[
            hanging(HANG),
            hanging(Shape::new(160.0, 180.0, 40.0, 62.0).spine(148.0).pointed()),
        ],
    ),
    named(
        "leg-raise",
        &[
            hanging(HANG),
            hanging(Shape::new(166.0, 180.0, 92.0, 180.0).spine(168.0).pointed()),
        ],
    ),
    named("bent-arm-hang", &[hanging(BENT_ARM_HANG)]),
    named("pull-up", &[hanging(HANG), hanging(BENT_ARM_HANG)]),
    named(
        "chest-to-bar-pull-up",
        &[hanging(HANG), hanging(AT_THE_BAR)],
    ),
    named(
        "band-pull-up",
        &[
            hanging(IN_A_BAND).gear(BAND),
            hanging(BANDED_TOP).gear(BAND),
        ],
    ),
    named(
        "false-grip-pull-up",
        &[on_rings(HANG.wrist(115.0)), on_rings(PULLED)],
    ),
    named(
        "pull-up-feet-on-box",
        &[
            laid(&[Bar, Toes], 88.0, (4.0, 94.0), HANG)
                .at(206.0)
                .hands((0.0, 198.0))
                .feet(foot(-21.0, 45.0, 50.0), foot(-21.0, 45.0, 50.0))
                .props(BOX_OF_BAR),
            laid(&[Bar, Toes], 84.0, (5.0, 140.5), HANG.elbows_out(25.0))
                .at(206.0)
                .hands((0.0, 198.0))
                .feet(foot(-21.0, 45.0, 66.0), foot(-21.0, 45.0, 66.0))
                .props(BOX_OF_BAR),
        ],
    ),
    named(
        "step-off-bar",
        &[
            laid(
                &[Bar],
                89.0,
                (1.0, 107.0),
                Shape::new(180.0, 180.0, 178.0, 105.0).pointed(),
            )
            .at(220.0)
            .hands((0.0, 212.0))
            .props(BOX_UNDER),
            laid(&[Bar, Toes], 90.0, (1.0, 119.8), HANG)
                .at(220.0)
                .hands((0.0, 212.0))
                .feet(foot(-11.0, 30.0, 0.0), foot(-11.0, 30.0, 0.0))
                .props(BOX_UNDER),
        ],
    ),
    named(
        "row",
        &[
            rowing(Shape::new(90.0, 180.0, 180.0, 180.0), Stance::Heels),
            rowing(ROWED, Stance::Heels),
        ],
    ),
    named(
        "upright-row",
        &[
            laid(&[Bar, Toes], 60.0, (41.7, 78.8), SUPPORT)
                .at(133.0)
                .hands((14.0, 132.0))
                .feet(flat(-11.0), flat(-11.0)),
            laid(&[Bar, Toes], 72.0, (25.8, 86.0), SUPPORT)
                .at(133.0)
                .hands((14.0, 132.0))
                .feet(flat(-11.0), flat(-11.0)),
        ],
    ),
    named(
        "bent-knee-row",
        &[
            rowing(
                Shape::new(90.0, 180.0, 180.0, 88.0).looking_up(-22.0),
                Stance::Flat,
            )
            .at(98.0),
            rowing(
                Shape {
                    legs: [leg(180.0, 96.0, 90.0), leg(180.0, 96.0, 90.0)],
                    ..ROWED
                },
                Stance::Flat,
            )
            .at(98.0),
        ],
    ),
    named(
        "false-grip-row",
        &[
            rowing(
                Shape::new(90.0, 172.0, 180.0, 180.0).wrist(112.0),
                Stance::Heels,
            )
            .on(&[Rings, Toes]),
            rowing(ROWED.wrist(112.0), Stance::Heels).on(&[Rings, Toes]),
        ],
    ),
    named("inverted-hang", &[hanging(UPSIDE_DOWN)]),
    named("tuck-inverted-hang", &[hanging(TUCKED_UPSIDE_DOWN)]),
    named(
        "lever-shrug",
        &[
            hanging(TUCKED_HANG),
            hanging(Shape::new(112.0, 180.0, 50.0, 40.0).spine(152.0).pointed()),
        ],
    ),
    named("tuck-front-lever", &[hanging(TUCK_LEVER)]),
    named("advanced-tuck-front-lever", &[hanging(ADVANCED_LEVER)]),
    named(
        "one-leg-front-lever",
        &[hanging(Shape {
            legs: [leg(180.0, 180.0, 165.0), leg(60.0, 45.0, 165.0)],
            ..Shape::new(56.0, 180.0, 180.0, 180.0)
        })],
    ),
    named("straddle-front-lever", &[hanging(STRADDLE_LEVER)]),
    named("front-lever", &[hanging(LEVER)]),
    named(
        "tuck-front-lever-lowering",
        &[hanging(TUCKED_UPSIDE_DOWN), hanging(TUCK_LEVER)],
    ),
    named(
        "advanced-tuck-front-lever-lowering",
        &[
            hanging(Shape::new(37.0, 180.0, 104.0, 90.0).pointed()),
            hanging(ADVANCED_LEVER),
        ],
    ),
    named(
        "straddle-front-lever-lowering",
        &[
            hanging(Shape {
                legs_apart: 45.0,
                ..BEHIND_THE_BAR
            }),
            hanging(STRADDLE_LEVER),
        ],
    ),
    named(
        "front-lever-lowering",
        &[hanging(BEHIND_THE_BAR), hanging(LEVER)],
    ),
    named(
        "german-hang",
        &[on_rings(Shape::new(-92.0, 180.0, 168.0, 172.0).pointed())],
    ),
    named(
        "german-hang-feet-down",
        &[
            laid(
                &[Rings, Toes],
                100.0,
                (-39.0, 78.0),
                SUPPORT.looking_up(8.0),
            )
            .at(110.0)
            .hands((2.0, 108.0))
            .feet(flat(-66.0), flat(-66.0)),
            laid(
                &[Rings, Toes],
                138.0,
                (-6.0, 46.0),
                SUPPORT.looking_up(24.0),
            )
            .at(110.0)
            .hands((2.0, 108.0))
            .feet(flat(-38.0), flat(-38.0)),
        ],
    ),
    named(
        "ring-roll-out",
        &[
            laid(&[Rings, Toes], 76.0, (26.0, 25.0), SUPPORT.looking_up(-8.0))
                .at(118.0)
                .hands((0.0, 112.0))
                .feet(flat(-1.0), flat(-1.0)),
            on_rings(TUCKED_UPSIDE_DOWN).at(118.0).props(&[Prop::Floor]),
        ],
    ),
    named(
        "skin-the-cat",
        &[
            on_rings(TUCKED_HANG),
            on_rings(TUCKED_UPSIDE_DOWN),
            on_rings(TUCKED_BEHIND),
        ],
    ),
    named(
        "muscle-up-turnover",
        &[on_rings(PULLED), over_rings(TURNED), over_rings(DIP)],
    ),
    named(
        "turnover-feet-down",
        &[
            laid(
                &[Rings, Toes],
                74.0,
                (22.0, 46.0),
                SUPPORT.elbows_out(15.0).wrist(130.0),
            )
            .at(84.0)
            .hands((2.0, 77.0))
            .feet(flat(-22.0), flat(-22.0)),
            laid(
                &[Rings, Toes],
                126.0,
                (20.0, 60.0),
                SUPPORT.elbows_out(15.0).looking_up(16.0),
            )
            .at(84.0)
            .hands((1.0, 91.0))
            .feet(flat(-2.0), flat(-2.0)),
            LOW_SUPPORT,
        ],
    ),
    named(
        "muscle-up",
        &[
            on_rings(HANG.wrist(115.0)),
            over_rings(TURNED),
            over_rings(SUPPORT),
        ],
    ),
];
