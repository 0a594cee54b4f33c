//! Standards: whether they tell people apart, and whether meeting one leads on.

use super::history::Histories;
use super::{LEADS_ON, LedTo, PEOPLE, Verdict, WeighedStandard, portion};
use crate::curriculum::{Curriculum, MovementIx};
use std::collections::BTreeSet;

/// Weeks within which something opened should be owned, where its movement does not say.
const WEEKS: i32 = 12;

/// For each movement those whose needs ask no more of it than its standard.
pub fn opened(curriculum: &Curriculum) -> Vec<BTreeSet<MovementIx>> {
    let mut out = vec![BTreeSet::new(); curriculum.len()];
    for (ix, movement) in curriculum.published().filter(|(_, m)| !m.faulty()) {
        movement.needs().visit(&mut |leaf| {
            let standard = &curriculum.movement(leaf.movement).standard();
            if standard.asks_at_least(&leaf.target) {
                out[leaf.movement.at()].insert(ix);
            }
        });
    }
    out
}

pub fn of(all: &Histories<'_>, ix: MovementIx, opens: &BTreeSet<MovementIx>) -> WeighedStandard {
    let standard = &all.curriculum.movement(ix).standard();
    let tested: Vec<_> = all
        .people
        .iter()
        .filter_map(|h| Some((h, h.first_tested(ix)?, h.first_met(ix, standard))))
        .collect();
    let met = tested.iter().filter(|(_, _, met)| met.is_some()).count();
    let met_at_first = tested
        .iter()
        .filter(|(_, first, met)| *met == Some(*first))
        .count();
    let opens: Vec<LedTo> = opens.iter().map(|above| led_to(all, ix, *above)).collect();
    let leads_on = |led: &LedTo| led.people >= PEOPLE && led.portion.share >= LEADS_ON;
    let verdict = match tested.len() {
        n if n < PEOPLE => Verdict::TooFew,
        n if met_at_first == n => Verdict::TooLow,
        _ if met == 0 => Verdict::TooHigh,
        _ if opens.iter().any(leads_on) => Verdict::Holds,
        _ => Verdict::Unclear,
    };
    WeighedStandard {
        movement: ix,
        tested: tested.len(),
        met,
        met_at_first,
        opens,
        verdict,
    }
}

fn led_to(all: &Histories<'_>, ix: MovementIx, above: MovementIx) -> LedTo {
    let standard = &all.curriculum.movement(ix).standard();
    let goal = all.curriculum.movement(above);
    let weeks = goal.weeks().map_or(WEEKS, |w| w.to() as i32);
    let (mut people, mut within) = (0, 0);
    for history in &all.people {
        let Some(met) = history.first_met(ix, standard) else {
            continue;
        };
        let last_day = met.plus(weeks * 7);
        // Who was not followed so long says nothing, also where they were quick.
        if history.last.is_none_or(|last| last < last_day) {
            continue;
        }
        people += 1;
        let owned = history.first_met(above, &goal.standard());
        within += usize::from(owned.is_some_and(|day| day <= last_day));
    }
    LedTo {
        movement: above,
        people,
        within,
        portion: portion(within, people),
    }
}
