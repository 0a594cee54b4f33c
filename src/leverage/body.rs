//! Segment masses, lengths and centres of mass.

/// One segment: share of body mass (both sides together), length and distance of its centre of mass from the end nearer the
/// trunk, both as shares of stature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment {
    pub mass: f64,
    pub length: f64,
    pub centre: f64,
}

/// A body as shares of its own mass and stature.
///
/// # Source
/// de Leva 1996, J Biomech 29(9):1223-1230, Table 4 (stature 1741 mm male, 1735 mm female). Trunk from mid-shoulder to mid-hip;
/// head from the vertex, its base at the cervicale; the foot counts by its mass at the end of the shank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Distance of the head's centre of mass beyond the shoulder, along the trunk's line.
    pub head: Segment,
    pub trunk: Segment,
    pub upper_arm: Segment,
    pub forearm: Segment,
    pub hand: Segment,
    pub thigh: Segment,
    pub shank: Segment,
    pub foot: Segment,
}

const fn segment(
    mass_percent: f64,
    length_mm: f64,
    centre_percent: f64,
    stature_mm: f64,
) -> Segment {
    Segment {
        mass: mass_percent / 100.0,
        length: length_mm / stature_mm,
        centre: length_mm * centre_percent / 100.0 / stature_mm,
    }
}

const fn pair(mass_percent: f64, length_mm: f64, centre_percent: f64, stature_mm: f64) -> Segment {
    segment(2.0 * mass_percent, length_mm, centre_percent, stature_mm)
}

/// The mean male body of the table.
pub const MALE: Body = Body {
    // Cervicale 603.3 - 515.5 mm above the shoulders' line, head 242.9 mm with its centre half way.
    head: segment(6.94, 330.7, 63.3, 1741.0),
    trunk: segment(43.46, 515.5, 43.10, 1741.0),
    upper_arm: pair(2.71, 281.7, 57.72, 1741.0),
    forearm: pair(1.62, 268.9, 45.74, 1741.0),
    hand: pair(0.61, 86.2, 79.00, 1741.0),
    thigh: pair(14.16, 422.2, 40.95, 1741.0),
    shank: pair(4.33, 440.3, 43.95, 1741.0),
    foot: pair(1.37, 155.0, 50.0, 1741.0),
};

/// The mean female body of the table.
pub const FEMALE: Body = Body {
    head: segment(6.68, 360.6, 67.3, 1735.0),
    trunk: segment(42.57, 497.9, 37.82, 1735.0),
    upper_arm: pair(2.55, 275.1, 57.54, 1735.0),
    forearm: pair(1.38, 264.3, 45.59, 1735.0),
    hand: pair(0.56, 78.0, 74.74, 1735.0),
    thigh: pair(14.78, 368.5, 36.12, 1735.0),
    shank: pair(4.81, 438.6, 43.52, 1735.0),
    foot: pair(1.29, 137.0, 50.0, 1735.0),
};

impl Body {
    /// The masses of all segments together: 1 but for the table's rounding.
    pub fn mass(&self) -> f64 {
        [
            self.head,
            self.trunk,
            self.upper_arm,
            self.forearm,
            self.hand,
            self.thigh,
            self.shank,
            self.foot,
        ]
        .iter()
        .map(|s| s.mass)
        .sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn masses_sum_to_the_whole() {
        // de Leva 1996: 100.00 % and 99.99 %; an arm 4.94 and 4.49 %, a leg 19.86 and 20.88 %.
        assert!((MALE.mass() - 1.0).abs() < 5e-5, "{}", MALE.mass());
        assert!((FEMALE.mass() - 0.9999).abs() < 5e-5, "{}", FEMALE.mass());
        for (body, arm, leg) in [(MALE, 0.0494, 0.1986), (FEMALE, 0.0449, 0.2088)] {
            assert!(
                ((body.upper_arm.mass + body.forearm.mass + body.hand.mass) / 2.0 - arm).abs()
                    < 5e-5
            );
            assert!(
                ((body.thigh.mass + body.shank.mass + body.foot.mass) / 2.0 - leg).abs() < 5e-5
            );
        }
    }

    #[test]
    fn the_shank_has_one_centre_whatever_its_end() {
        // Length x centre over the endpoint choices of the table: 193.5 mm male, 190.9 mm female.
        assert!((MALE.shank.centre * 1741.0 - 193.5).abs() < 0.1);
        assert!((FEMALE.shank.centre * 1735.0 - 190.9).abs() < 0.1);
    }
}
