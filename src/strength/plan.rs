//! The plan over weeks: the working sets of today on the days of a cycle, a lighter week at its end, then a test again.
//!
//! An estimate: the picks are made anew from each result. Common practice, no source, but where one is named.

use super::working::{Fit, Pick, Prescription, Working};
use crate::curriculum::target::Measure;
use crate::curriculum::words::{Arms, Pattern};
use crate::curriculum::{Curriculum, Day, MovementIx};
use std::collections::BTreeMap;
use std::fmt::Write;

/// The longest cycle that is planned, in weeks.
const MOST_WEEKS: u32 = 12;
/// At least 48 hours lie between sessions, so at most so many fit a week.
const MOST_SESSIONS: u32 = 3;
/// Hard sets of a pattern in a week. Common practice; more sets, more gain up to there (Schoenfeld et al. 2017, J Sports Sci
/// 35(11):1073-1082).
const LEAST_WEEKLY: u32 = 6;
const MOST_WEEKLY: u32 = 15;

/// One training day.
#[derive(Clone, Debug, PartialEq)]
pub struct Session {
    pub on: Day,
    pub sets: Vec<(MovementIx, Prescription)>,
}

/// One week.
#[derive(Clone, Debug, PartialEq)]
pub struct Week {
    /// From 1.
    pub number: u32,
    /// Half the sets, the same movements.
    pub lighter: bool,
    pub sessions: Vec<Session>,
}

/// A cycle.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    pub weeks: Vec<Week>,
    /// The day from which the tests are done again.
    pub retest: Day,
    /// Hard sets of a usual week by pattern, bent arms and everything else; straight-arm sets stand apart.
    pub volume: BTreeMap<&'static str, u32>,
    pub straight_arm: BTreeMap<&'static str, u32>,
    pub push: u32,
    pub pull: u32,
}

impl Plan {
    /// Weeks in a row that ask the same of every session.
    pub fn alike(&self) -> impl Iterator<Item = &[Week]> {
        let asks = |week: &Week| week.sessions.first().map(|s| s.sets.clone());
        self.weeks
            .chunk_by(move |a, b| a.lighter == b.lighter && asks(a) == asks(b))
    }
}

/// Lays working sets over a cycle that begins on a day.
pub fn plan(curriculum: &Curriculum, working: &Working, from: Day) -> Plan {
    let school = &curriculum.school.dose;
    let count = (school.lighter_every_days / 7).clamp(1, MOST_WEEKS);
    let times = sessions_a_week(curriculum);
    let picks = &working.picks;
    let weeks = (0..count).map(|week| {
        let lighter = count > 1 && week + 1 == count;
        let sessions = (0..times).map(|i| Session {
            on: from.plus((week * 7 + i * 7 / times) as i32),
            sets: picks
                .iter()
                .map(|p| (p.movement, lightened(p.prescription, lighter)))
                .collect(),
        });
        Week {
            number: week + 1,
            lighter,
            sessions: sessions.collect(),
        }
    });
    let (mut volume, mut straight_arm) = (BTreeMap::new(), BTreeMap::new());
    for pick in picks {
        let m = curriculum.movement(pick.movement);
        let of = match m.arms == Some(Arms::Straight) {
            true => &mut straight_arm,
            false => &mut volume,
        };
        *of.entry(crate::curriculum::words::Word::word(m.pattern))
            .or_insert(0) += pick.prescription.sets * times;
    }
    Plan {
        weeks: weeks.collect(),
        retest: from.plus(7 * count as i32),
        push: side(curriculum, picks, PUSH) * times,
        pull: side(curriculum, picks, PULL) * times,
        volume,
        straight_arm,
    }
}

const PUSH: [Pattern; 2] = [Pattern::VerticalPush, Pattern::HorizontalPush];
const PULL: [Pattern; 2] = [Pattern::VerticalPull, Pattern::HorizontalPull];

fn is_of(curriculum: &Curriculum, pick: &Pick, side: [Pattern; 2]) -> bool {
    let m = curriculum.movement(pick.movement);
    side.contains(&m.pattern) && m.arms != Some(Arms::Straight)
}

fn side(curriculum: &Curriculum, picks: &[Pick], side: [Pattern; 2]) -> u32 {
    picks
        .iter()
        .filter(|p| is_of(curriculum, p, side))
        .map(|p| p.prescription.sets)
        .sum()
}

fn sessions_a_week(curriculum: &Curriculum) -> u32 {
    curriculum.school.dose.a_week.clamp(1, MOST_SESSIONS)
}

/// The sets of a session that keep a pattern's week within its bounds, from the fewest to the most.
pub(super) fn sets_a_session(curriculum: &Curriculum) -> (u32, u32) {
    let times = sessions_a_week(curriculum);
    (LEAST_WEEKLY.div_ceil(times), MOST_WEEKLY / times)
}

/// Takes sets from the heavier of push and pull while it is more than a third above the other, but none below a pattern's
/// weekly least. Only sets of reps are weighed, and no first tries. Where one side has none, nothing is taken.
pub(super) fn balance(curriculum: &Curriculum, picks: &mut [Pick]) {
    let times = sessions_a_week(curriculum);
    let before: Vec<u32> = picks.iter().map(|p| p.prescription.sets).collect();
    loop {
        let weighed = |of| {
            let sets = picks.iter().filter(|p| is_weighed(curriculum, p, of));
            sets.map(|p| p.prescription.sets).sum::<u32>()
        };
        let (push, pull) = (weighed(PUSH), weighed(PULL));
        let heavier = if push >= pull { PUSH } else { PULL };
        if push.min(pull) == 0 || push.max(pull) * 3 <= push.min(pull) * 4 {
            break;
        }
        let can_give = |p: &&mut Pick| {
            let sets = p.prescription.sets;
            is_weighed(curriculum, p, heavier) && sets > 1 && (sets - 1) * times >= LEAST_WEEKLY
        };
        let most = picks
            .iter_mut()
            .filter(can_give)
            .max_by_key(|p| p.prescription.sets);
        match most {
            Some(pick) => pick.prescription.sets -= 1,
            None => break,
        }
    }
    for (pick, before) in picks.iter_mut().zip(before) {
        let sets = pick.prescription.sets;
        if sets < before {
            let _ = write!(pick.why, "; {sets} sets, to keep push and pull even");
        }
    }
}

fn is_weighed(curriculum: &Curriculum, pick: &Pick, side: [Pattern; 2]) -> bool {
    is_of(curriculum, pick, side)
        && pick.prescription.measure == Measure::Reps
        && pick.fit != Fit::Untested
}

fn lightened(prescription: Prescription, lighter: bool) -> Prescription {
    match lighter {
        true => Prescription {
            sets: prescription.sets.div_ceil(2),
            ..prescription
        },
        false => prescription,
    }
}
