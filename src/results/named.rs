//! Which movement an entry speaks of, and where it says so.

use super::entry::Reader;
use crate::curriculum::{MovementIx, Owner};
use crate::reading::fields::Record;
use crate::source::yaml::Node;
use crate::source::{Diagnostic, Rule, Span, suggest};

/// Where an entry names its movement.
pub(super) fn place(record: &Record<'_>, entry: &Node) -> Span {
    record.get("movement").map_or(entry.span, |node| node.span)
}

impl Reader<'_> {
    /// The published movement of an id or an old id.
    fn movement(&self, id: &str) -> Option<MovementIx> {
        let renamed = || {
            let owner = self.curriculum.old_ids().find(|(old, _)| *old == id);
            match owner {
                Some((_, Owner::Movement(ix))) => Some(ix),
                _ => None,
            }
        };
        let found = self.curriculum.find_movement(id).or_else(renamed)?;
        let movement = self.curriculum.movement(found);
        (!movement.held_back() && !movement.faulty()).then_some(found)
    }

    /// As [`Reader::movement`], and a finding where there is none.
    pub fn known(&mut self, id: &str, at: Span) -> Option<MovementIx> {
        let found = self.movement(id);
        if found.is_none() {
            let waits = self.curriculum.find_movement(id).is_some();
            let near = || {
                let known = self.curriculum.published();
                suggest::did_you_mean(id, known.map(|(_, m)| m.id().as_str()))
            };
            let help = match waits {
                true => "it is held back or in error: `rungbook proof` says which".to_string(),
                false => near().unwrap_or_else(|| {
                    "the site's page “Movements” lists them; an id stands in its address"
                        .to_string()
                }),
            };
            self.findings.push(
                Diagnostic::new(
                    Rule::UnknownTested,
                    at,
                    format!("this curriculum has no movement `{id}`; the entry is kept aside"),
                )
                .label("no such movement")
                .help(help),
            );
        }
        found
    }
}
