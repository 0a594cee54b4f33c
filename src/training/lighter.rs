//! The lighter week: less of everything.

use super::constants::K;
use super::line::{Line, half};
use super::session::Laying;

impl Laying<'_, '_> {
    /// Half the sets of the newest full week, and nothing above it.
    pub(super) fn lighten(&self, line: &mut Line) {
        if let Some(full) = self.full.get(&(line.movement, line.block)) {
            let less = (line.amount - full.amount).max(0);
            line.sets = line.sets.min(full.sets);
            line.amount -= less;
            let masses = line.mass.zip(full.mass);
            line.mass = masses.map_or(line.mass, |(is, was)| Some(is.min(was)));
            line.in_reserve = (line.in_reserve).map(|left| (left + less).min(K.reserve.into()));
        }
        line.sets = half(line.sets);
        line.minutes = self.trainee.minutes_of(line);
    }
}
