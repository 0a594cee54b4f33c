//! The goal and what holds back, in words.

use super::plan::Training;
use super::reason::Reason;
use super::say::{Say, TOKEN};
use crate::curriculum::Owner;
use crate::results::Goal as Chosen;
use crate::words::Value;

impl Say<'_> {
    fn way(&self, key: &str, values: &[(&str, Value<'_>)]) -> String {
        self.words.fill(&format!("training.{key}"), values)
    }

    /// The goal, chosen or the nearest.
    pub fn goal(&self, of: &Training) -> String {
        let Some(goal) = &of.goal else {
            return self.say("no_goal");
        };
        let name = match (goal.of, self.tokens) {
            (Chosen::Movement(ix), _) => self.named(ix),
            (Chosen::Skill(ix), true) => format!("{TOKEN}s{}{TOKEN}", ix.0),
            (Chosen::Skill(ix), false) => {
                self.roster.curriculum.named(Owner::Skill(ix), self.words)
            }
        };
        let key = if goal.chosen { "goal" } else { "goal_nearest" };
        self.way(key, &[("goal", (&name).into())])
    }

    /// What stands between the person and the goal first.
    pub fn holds_back(&self, of: &Training) -> Option<String> {
        let Some(at) = of.limiter else {
            of.goal.as_ref()?;
            // What stands in the place of the way's own is work for it too.
            let mut lines = of.sessions.iter().flat_map(|s| &s.lines);
            return Some(if of.is_reached() {
                self.say("reached")
            } else if lines.any(|l| l.gap.is_some()) {
                self.say("nothing_but")
            } else {
                self.say("nothing")
            });
        };
        let gap = &of.gaps[at];
        let got = match (gap.got, gap.from) {
            (None, _) => self.say("unknown"),
            (Some(got), Some(from)) => self.why(&[Reason::Counts(got, from)]),
            (Some(got), None) => got.parts().say(self.units, self.words),
        };
        let target = gap.target.say(self.units, self.words);
        let movement = self.named(gap.movement);
        let values = [
            ("movement", Value::Text(&movement)),
            ("got", Value::Text(&got)),
            ("target", Value::Text(&target)),
        ];
        if gap.is_whole() {
            let show = self.way("limiter_show", &values);
            return Some(match self.time(gap) {
                Some(time) => {
                    let values = [("why", (&show).into()), ("more", (&time).into())];
                    self.way("why.both", &values)
                }
                None => show,
            });
        }
        let Some(time) = self.time(gap) else {
            return Some(self.way("limiter_close", &values));
        };
        let time = [("time", Value::Text(&time))];
        let values: Vec<_> = values.into_iter().chain(time).collect();
        Some(self.way("limiter", &values))
    }
}
