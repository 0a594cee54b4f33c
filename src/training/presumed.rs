//! What of a person's numbers nobody measured: they follow from a harder movement.

use super::reason::Reason;
use super::trainee::Trainee;
use crate::curriculum::MovementIx;
use crate::curriculum::target::Got;

impl Trainee<'_> {
    /// The movement from which the number of another follows; `None` where its own results or log say it, or nothing does.
    pub fn follows_from(&self, ix: MovementIx) -> Option<MovementIx> {
        let now = self.now(ix)?;
        let measured = self.has_result(ix);
        let own = self.own_now(ix).filter(|own| own.whole() == now.whole());
        if measured && own.is_some() {
            return None;
        }
        let standard = |of: MovementIx| self.roster.of(of).of.standard();
        let root = |of: MovementIx| self.evidence.presumed_from(of, &standard(of));
        if let (Some(_), Some(root)) = (own, root(ix)) {
            return Some(root);
        }
        if !self.roster.of(ix).counted {
            return None;
        }
        let shows = |up: &MovementIx| {
            let theirs = self.own_now(*up);
            theirs.is_some_and(|theirs| theirs.whole() == now.whole())
        };
        let above = self.roster.above(ix).into_iter().filter(shows);
        let up = above.min_by_key(|up| (!self.has_result(*up), *up))?;
        match self.has_result(up) {
            true => Some(up),
            false => root(up),
        }
    }

    /// What is known of a movement as a reason: in `plain` words where it was measured, else as what it counts as.
    pub(super) fn known(
        &self,
        ix: MovementIx,
        plain: impl FnOnce(Got) -> Reason,
    ) -> Option<Reason> {
        let got = self.got(ix)?;
        Some(match self.follows_from(ix) {
            Some(from) => Reason::Counts(got, from),
            None => plain(got),
        })
    }

    /// That a movement is easy, and by what; not by a number that nobody measured.
    pub(super) fn easy(&self, ix: MovementIx) -> Option<Reason> {
        Some(match self.known(ix, |got| Reason::Easy(ix, got))? {
            Reason::Counts(..) => Reason::EasyFrom(ix),
            measured => measured,
        })
    }
}
