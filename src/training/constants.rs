//! Every number of the training rules, once, with its source. The page's tables carry the same table. What results are judged by
//! before there is a plan (pain, ages, clearances) is `results/limits.rs`.

use crate::results::LIMITS;
use crate::strength::best;
use serde::Serialize;

/// The numbers. Pairs are lowest and highest, or first and then, as each line says; shares are of one.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Constants {
    // What a person can do.
    /// Reps left in reserve that a logged set is credited with at most: beyond four the rating is a guess (Zourdos et al. 2016,
    /// J Strength Cond Res 30(1):267-275; Hackett et al. 2017, J Strength Cond Res 31(8):2162-2168).
    pub reserve: u32,
    /// Below this share of what is known, two failing sessions say what training shows. Common practice, no source.
    pub missed: f64,
    /// Sets at most the first time after a session that fell short. Common practice, no source.
    pub short_sets: u32,
    /// From the first many sets recorded together, a single one would have had the second more reps. Common practice, no source.
    pub several: u32,
    pub sets_hide: u32,

    // Which variation.
    /// As many reps fit sets: at least the first, at most the second. Common practice, no source.
    pub fits: [u32; 2],
    /// A hold of so many seconds fits sets. Common practice, no source.
    pub hold_fits: u32,
    /// From 1 to so many full reps, singles are practised. Common practice, no source.
    pub singles: u32,
    /// Singles are so many sets of one.
    pub single_sets: u32,
    /// Too easy: so many reps above the dose, or a hold so many times the dose. Common practice, no source.
    pub easy: u32,
    pub easy_hold: u32,
    /// From so many times what a set asks the line says that it is easy. Common practice, no source.
    pub far: u32,
    /// A gap is trained itself from so many, where nothing easier serves. Common practice, no source.
    pub itself: u32,

    // How much.
    /// Reps, range and practice: this share of the best set, so two to four are left (Zourdos et al. 2016).
    pub share: f64,
    /// Holds, and practice without a dose of its own: this share. Common practice, no source.
    pub hold: f64,
    /// Reps a set at most; of guarded, lowering and straight-arm work. Common practice, no source.
    pub reps: u32,
    pub reps_strict: u32,
    /// Sets, fewest and most. Common practice, no source.
    pub sets: [u32; 2],
    /// Seconds held in all, least and most, and the longest single hold. Common practice, no source.
    pub held: [u32; 2],
    pub hold_most: u32,
    /// Attempts of practice without a dose: fewest, most. Common practice, no source.
    pub attempts: [u32; 2],
    /// Practice gives sets up to so many, others to `fewest`. Common practice, no source.
    pub practice_fewest: u32,
    pub fewest: u32,

    // First tries and showings.
    /// Reps of a first try; where guarded, lowering or of a dose of `try_dose` reps or fewer; seconds. Common practice, no source.
    pub try_reps: u32,
    pub try_reps_few: u32,
    pub try_dose: u32,
    pub try_s: u32,
    /// Seconds of a first try that is carried. Common practice, no source.
    pub try_carry: u32,
    /// Back from time off, on a part that hurts, from 65 on and with one side at a time a first try goes on to so many reps, or seconds,
    /// at most; a hold never beyond its target, and back from time off not beyond the last. Common practice, no source.
    pub try_back: [u32; 2],
    pub try_back_s: u32,
    pub try_sets: u32,
    /// Sets by its number, of the same until that is in.
    pub again: u32,
    /// First tries a session; with fewer than `known` lines known. Common practice, no source.
    pub first: u32,
    pub first_new: u32,
    /// Of these where long off made unknown what was known. Common practice, no source.
    pub first_back: u32,
    pub known: u32,
    /// Showings a session.
    pub shows: u32,
    /// Reps that a set is left with in a first try, in strict steps and in what is planned.
    pub left: u32,
    /// Reps that a plan's step of load is left with at least. Common practice, no source.
    pub left_step: u32,

    // Blocks.
    /// Strength lines a session. Common practice, no source.
    pub lines: u32,
    /// Lines of strength and of what is kept up, at most, where what goes on adds to them. Common practice, no source.
    pub lines_most: u32,
    /// Lines kept up at least, sets (under `keep_age`, from it), times in seven days: a third of the volume keeps what was built
    /// (Bickel, Cross & Bamman 2011, Med Sci Sports Exerc 43(7):1177-1187).
    pub keep_lines: u32,
    pub keep_sets: [u32; 2],
    pub keep_age: i32,
    pub keep_week: u32,
    /// Range: seconds and sets, sets of the limiter; 60 s in all in holds of 10 to 30 s (Garber et al. 2011, Med Sci Sports Exerc
    /// 43(7):1334-1359). `unknown_s` while nothing is known.
    pub range_s: u32,
    pub range_sets: u32,
    pub range_limiter: u32,
    pub unknown_s: u32,
    /// Lines of range at most while pulling, pushing or legs have no time. Common practice, no source.
    pub range_lines: u32,
    /// The share of the minutes of practice, and of range.
    pub block: f64,
    /// Warm-up: share of the minutes, minutes at most. Common practice, no source.
    pub warm_up: f64,
    pub warm_up_most: u32,
    /// Minutes of a session where none are said, and sessions a week at most.
    pub minutes: u32,
    /// An upright balance movement in every session from this age. Common practice, no source (balance training at
    /// older age: Sherrington et al. 2019, Cochrane CD012424, from memory).
    pub balance_age: i32,
    /// From this age fewer seconds on one leg than this are talked over before a goal is: who could not stand ten died 1.84 times as often
    /// within seven years (Araujo et al. 2022, Br J Sports Med, doi 10.1136/bjsports-2021-105360: 1702 people of 51 to 75). That it is a
    /// sign for falls: common practice, no source.
    pub one_leg_s: u32,

    // Rest, seconds, and time under work.
    /// Guarded; others in reps; holds, core, balance, exits; range and short balance. Common practice, no source.
    pub rest: Rest,
    /// Seconds of a rep.
    pub rep_s: u32,
    /// Balance and exits of at most so many seconds rest like range.
    pub short: u32,

    // Loads.
    /// Of body weight, where nothing is known of a load. Common practice, no source.
    pub of_body: f64,
    /// The most of it with one side at a time, and of the standard's load then. Common practice, no source; that one hand is another
    /// matter: McGill, Marshall & Andersen 2013, Ergonomics 56(2):293-302.
    pub of_body_side: f64,
    pub of_standard: f64,
    /// Of the heaviest on record. Common practice, no source.
    pub of_record: f64,
    /// The chart is read at so many reps more than are done.
    pub load_reps: u32,
    /// Never above so many times what was lifted for as many reps. Common practice, no source.
    pub bound: f64,
    /// A plate is a step while it is at most this share of what moves. Common practice, no source.
    pub plate_share: f64,

    // Moving on.
    /// Sessions alike that earn a step, of strict movements; reps over in the last set (Baechle & Earle, Essentials).
    pub two: u32,
    pub three: u32,
    pub over: u32,
    /// Seconds of a step of a hold.
    pub step_s: u32,
    /// Steps that a plan shows at most.
    pub planned: u32,

    // Backing off.
    /// Days off: light; light and easier; unknown. Common practice, no source.
    pub off: [i32; 3],
    /// Days for which the first two last.
    pub off_for: [i32; 2],
    /// Days of each step of the way back that follows: less of the same after what was easier, then this share of the amount.
    /// Common practice, no source.
    pub back_for: i32,
    pub back: f64,
    /// Days after time off in which nothing asks more than before it. Common practice, no source.
    pub back_most: i32,
    /// Days of a plan after which a way out comes though what it needs is tried anew and its number is not in. Common practice, no
    /// source.
    pub exit_from: i32,
    /// Light: this share of the amount.
    pub light: f64,
    /// Days without steps after a pain that goes on.
    pub pain_days: i32,
    /// Lines of strength on parts that were worse the next morning, at most. Common practice, no source.
    pub sore_lines: u32,
    /// From this score of pain on light and easier, as after a worse next morning. Common practice, no source.
    pub pain_less: u32,
    /// From this score of pain on one rung further down where one is known, and this share of the amount instead of `light`. Common
    /// practice, no source.
    pub pain_least: u32,
    pub least: f64,
    /// Seconds: a longer hold is a long one where holding the breath is left alone; so many lines of these and with straight arms.
    /// Common practice, no source.
    pub long_hold: u32,
    pub breath_lines: u32,
    /// A pause of so many days is come back from in `pause_weeks` weeks. Common practice, no source.
    pub pause_days: i32,
    pub pause_weeks: i32,
    /// Sides apart by more than this share of the better are evened; centimetres, degrees. Common practice, no source.
    pub sides: f64,
    pub sides_cm: u32,
    pub sides_deg: u32,

    // Age.
    /// Reps with added weight of who is no adult yet, at least.
    pub minor_reps: u32,

    // The week.
    pub weeks: u32,
    /// 365.25 days a year, twelve months, seven days a week.
    pub weeks_a_month: f64,
    /// A path of at most so many weeks is said in weeks, a longer one in months.
    pub said_in_weeks: i64,
    /// Days between two trainings of a group (Garber et al. 2011; tendon: Magnusson, Langberg & Kjaer 2010, Nat Rev Rheumatol
    /// 6:262-268, from memory).
    pub apart: i32,
    /// Days of log and plan in which turns are counted.
    pub turns: i32,
    /// From this day of a plan what the goal needs and did not stand in all these turns comes before the others, so many a session.
    /// Common practice, no source.
    pub overdue: i32,
    pub overdue_lines: u32,
    /// Hard sets of a kind a week at most; after `cap_days` days of log. Common practice, no source.
    pub cap: [u32; 2],
    pub cap_days: i32,
    /// A week's hard sets without a log; how much more a week may be; days of log behind the mean. Common practice, no source.
    pub week_one: u32,
    pub rise: [u32; 2],
    pub logged: i32,
    /// Sessions to come among which a kind's sets are shared, at most.
    pub per_week: u32,
    /// Sets at once, while the week has them, of what is lifted with weight for the goal. Common practice, no source.
    pub heavy_sets: u32,
    /// Retests at most, on one day, of a kind; how often what is tested has to have stood; days ahead in which results run out.
    pub tests: u32,
    pub tests_day: u32,
    pub tests_kind: u32,
    pub tests_times: u32,
    pub tests_ahead: i32,
}

/// Seconds of rest.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Rest {
    pub guarded: u32,
    pub strength: u32,
    pub easy: u32,
    pub range: u32,
}

/// The table.
pub const K: Constants = Constants {
    reserve: 4,
    missed: 0.9,
    short_sets: 3,
    several: best::SEVERAL_SETS,
    sets_hide: best::SETS_HIDE,
    fits: [2, 5],
    hold_fits: 5,
    singles: 3,
    single_sets: 3,
    easy: 6,
    easy_hold: 3,
    far: 3,
    itself: 2,
    share: 0.7,
    hold: 0.5,
    reps: 12,
    reps_strict: 8,
    sets: [2, 5],
    held: [30, 90],
    hold_most: 45,
    attempts: [6, 10],
    practice_fewest: 3,
    fewest: 2,
    try_reps: 3,
    try_reps_few: 2,
    try_dose: 3,
    try_s: 5,
    try_carry: 15,
    try_back: [8, 30],
    try_back_s: 10,
    try_sets: 2,
    again: 3,
    first: 2,
    first_new: 4,
    first_back: 6,
    known: 3,
    shows: 2,
    left: 2,
    left_step: 1,
    lines: 5,
    lines_most: 7,
    keep_lines: 1,
    keep_sets: [2, 3],
    keep_age: 60,
    keep_week: 2,
    range_s: 30,
    range_sets: 2,
    range_limiter: 4,
    unknown_s: 10,
    range_lines: 2,
    block: 0.25,
    warm_up: 0.2,
    warm_up_most: 10,
    minutes: 60,
    balance_age: LIMITS.older,
    one_leg_s: 10,
    rest: Rest {
        guarded: 180,
        strength: 120,
        easy: 60,
        range: 30,
    },
    rep_s: 4,
    short: 10,
    of_body: 0.05,
    of_body_side: 0.1,
    of_standard: 0.5,
    of_record: 0.8,
    load_reps: 3,
    bound: 1.1,
    plate_share: 0.05,
    two: 2,
    three: 3,
    over: 2,
    step_s: 2,
    planned: 2,
    off: [14, 28, 56],
    off_for: [7, 14],
    back_for: 7,
    back: 0.9,
    back_most: 28,
    exit_from: 14,
    light: 0.8,
    pain_days: 14,
    sore_lines: 3,
    pain_less: 4,
    pain_least: 5,
    least: 0.5,
    long_hold: 10,
    breath_lines: 1,
    pause_days: 7,
    pause_weeks: 3,
    sides: 0.15,
    sides_cm: 2,
    sides_deg: 5,
    minor_reps: 6,
    weeks: 4,
    weeks_a_month: 4.35,
    said_in_weeks: 4,
    apart: 2,
    turns: 14,
    overdue: 7,
    overdue_lines: 2,
    cap: [10, 15],
    cap_days: 84,
    week_one: 6,
    rise: [4, 3],
    logged: 21,
    per_week: 3,
    heavy_sets: 4,
    tests: 6,
    tests_day: 3,
    tests_kind: 2,
    tests_times: 2,
    tests_ahead: 28,
};

#[cfg(test)]
mod tests {
    use super::K;

    /// Garber et al. 2011: stretches of 10 to 30 s, 60 s in all for each exercise.
    #[test]
    fn range_is_garbers() {
        assert_eq!(K.range_s * K.range_sets, 60);
        assert!((10..=30).contains(&K.unknown_s) && (10..=30).contains(&K.range_s));
    }

    /// Bickel, Cross & Bamman 2011: a third of the volume kept what was built; from 60 it took more than a ninth.
    #[test]
    fn kept_up_is_bickels_third() {
        let usual = 6;
        assert!(K.keep_sets[0] * 3 >= usual && K.keep_sets[1] > K.keep_sets[0] && K.keep_age == 60);
    }

    /// Zourdos et al. 2016: their scale counts reps in reserve up to four (a rating of 5 to 6 is four to six).
    #[test]
    fn reserve_is_counted_where_it_can_be() {
        assert_eq!(K.reserve, 4);
    }

    #[test]
    fn the_table_is_one_flat_record() {
        let table = serde_json::to_value(K).expect("a table");
        assert!(table.as_object().is_some_and(|t| t.len() > 65));
    }
}
