//! Segment masses, lengths and centres of mass.

/// One segment: share of body mass (both sides together), length and distance of its centre of mass from the end nearer the
/// trunk (the foot's: from the heel; a part of the trunk: from its upper end), both as shares of stature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment {
    pub mass: f64,
    pub length: f64,
    pub centre: f64,
}

/// A body: segments as shares of its own mass and stature, and the stature in centimetres.
///
/// # Source
/// de Leva 1996, J Biomech 29(9):1223-1230, Table 4. The trunk runs from the middle between the shoulder joints to the middle
/// between the hip joints, in its three parts (ends at the lower end of the breastbone and at the navel), so that it can be
/// round or arched; the head from the vertex, its base at the cervicale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    pub stature_cm: f64,
    /// From the shoulders' line to the vertex.
    pub head: Segment,
    /// From the shoulders' line to the lower end of the breastbone.
    pub chest: Segment,
    pub waist: Segment,
    pub pelvis: Segment,
    pub upper_arm: Segment,
    pub forearm: Segment,
    /// From the wrist to the knuckles.
    pub hand: Segment,
    pub thigh: Segment,
    pub shank: Segment,
    /// From the heel to the tip of the toes.
    pub foot: Segment,
}

const fn segment(
    mass_percent: f64,
    length_mm: f64,
    centre_percent: f64,
    stature_mm: f64,
) -> Segment {
    measured(
        mass_percent,
        length_mm,
        length_mm * centre_percent / 100.0,
        stature_mm,
    )
}

const fn pair(mass_percent: f64, length_mm: f64, centre_percent: f64, stature_mm: f64) -> Segment {
    segment(2.0 * mass_percent, length_mm, centre_percent, stature_mm)
}

const fn measured(mass_percent: f64, length_mm: f64, centre_mm: f64, stature_mm: f64) -> Segment {
    Segment {
        mass: mass_percent / 100.0,
        length: length_mm / stature_mm,
        centre: centre_mm / stature_mm,
    }
}

/// The mean male body of the table.
pub const MALE: Body = Body {
    stature_cm: 174.1,
    // The cervicale lies 603.3 - 515.5 mm above the shoulders' line, the head is 242.9 mm with its centre half way.
    head: measured(6.94, 330.7, 87.8 + 242.9 * (1.0 - 0.5002), 1741.0),
    // The suprasternale of the table's upper part lies 531.9 - 515.5 mm above the shoulders' line.
    chest: measured(15.96, 154.3, 170.7 * 0.2999 - 16.4, 1741.0),
    waist: segment(16.33, 215.5, 45.02, 1741.0),
    pelvis: segment(11.17, 145.7, 61.15, 1741.0),
    upper_arm: pair(2.71, 281.7, 57.72, 1741.0),
    forearm: pair(1.62, 268.9, 45.74, 1741.0),
    hand: pair(0.61, 86.2, 79.00, 1741.0),
    thigh: pair(14.16, 422.2, 40.95, 1741.0),
    shank: pair(4.33, 440.3, 43.95, 1741.0),
    foot: pair(1.37, 258.1, 44.15, 1741.0),
};

/// The mean female body of the table.
pub const FEMALE: Body = Body {
    stature_cm: 173.5,
    head: measured(6.68, 360.6, 116.9 + 243.7 * (1.0 - 0.4841), 1735.0),
    chest: measured(15.45, 111.1, 142.5 * 0.2077 - 31.4, 1735.0),
    waist: segment(14.65, 205.3, 45.12, 1735.0),
    pelvis: segment(12.47, 181.5, 49.20, 1735.0),
    upper_arm: pair(2.55, 275.1, 57.54, 1735.0),
    forearm: pair(1.38, 264.3, 45.59, 1735.0),
    hand: pair(0.56, 78.0, 74.74, 1735.0),
    thigh: pair(14.78, 368.5, 36.12, 1735.0),
    shank: pair(4.81, 438.6, 43.52, 1735.0),
    foot: pair(1.29, 228.3, 40.14, 1735.0),
};

/// The body that findings, tables and figures use: half way between the two of the table, 173.8 cm tall.
pub const STANDARD: Body = Body {
    stature_cm: (MALE.stature_cm + FEMALE.stature_cm) / 2.0,
    head: between(MALE.head, FEMALE.head),
    chest: between(MALE.chest, FEMALE.chest),
    waist: between(MALE.waist, FEMALE.waist),
    pelvis: between(MALE.pelvis, FEMALE.pelvis),
    upper_arm: between(MALE.upper_arm, FEMALE.upper_arm),
    forearm: between(MALE.forearm, FEMALE.forearm),
    hand: between(MALE.hand, FEMALE.hand),
    thigh: between(MALE.thigh, FEMALE.thigh),
    shank: between(MALE.shank, FEMALE.shank),
    foot: between(MALE.foot, FEMALE.foot),
};

const fn between(one: Segment, other: Segment) -> Segment {
    Segment {
        mass: (one.mass + other.mass) / 2.0,
        length: (one.length + other.length) / 2.0,
        centre: (one.centre + other.centre) / 2.0,
    }
}

/// Heights of joints over what they rest on, as shares of stature.
///
/// # Source
/// The ankle: Drillis and Contini 1966, NYU Technical Report 1166.03 (0.039 of stature). The others are half thicknesses of
/// hand, ball of the foot, knee and back: stated, no source; equal ones cancel.
pub mod rest {
    pub const WRIST: f64 = 0.018;
    pub const ELBOW: f64 = 0.022;
    pub const BALL: f64 = 0.012;
    pub const KNEE: f64 = 0.03;
    pub const ANKLE: f64 = 0.039;
    pub const BACK: f64 = 0.06;
}

/// Where along the foot, from the heel, the ankle and the ball of the foot lie, as shares of its length: stated, no source.
pub const ANKLE_ALONG: f64 = 0.25;
pub const BALL_ALONG: f64 = 0.72;

impl Body {
    /// The masses of all segments together: 1 but for the table's rounding.
    pub fn mass(&self) -> f64 {
        [
            self.head,
            self.chest,
            self.waist,
            self.pelvis,
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

    #[test]
    fn the_parts_of_the_trunk_make_the_whole() {
        // The table's whole trunk: 515.5 mm with its centre at 43.10 %, 497.9 mm at 37.82 %. The male parts lie 3 mm lower.
        for (body, stature, length, centre) in [
            (MALE, 1741.0, 515.5, 0.4310),
            (FEMALE, 1735.0, 497.9, 0.3782),
        ] {
            let parts = [body.chest, body.waist, body.pelvis];
            let whole: f64 = parts.iter().map(|p| p.length).sum();
            assert!((whole * stature - length).abs() < 0.05);
            let (mut start, mut moment, mut mass) = (0.0, 0.0, 0.0);
            for part in parts {
                moment += part.mass * (start + part.centre);
                mass += part.mass;
                start += part.length;
            }
            assert!((moment / mass * stature - length * centre).abs() < 3.2);
        }
    }
}
