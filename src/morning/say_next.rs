//! What is next, in words: what is to be done first, in its order, then the step.

use super::say::Telling;
use super::{Next, Verdict, Watch};
use crate::curriculum::MovementIx;
use crate::curriculum::target::{Got, Micro, ONE, Target};
use crate::training::{Gap, K, Left, OneLeg, Side};
use crate::words::Value;

impl Telling<'_> {
    /// What is next: the acts before the step, the step, and which side it begins with.
    pub(super) fn acts(&self, of: &Verdict) -> String {
        if of.refused().is_some() {
            return self.next(of);
        }
        let before = of.watch.iter().filter_map(|watch| match watch {
            Watch::Doubt(all) => Some(self.doubt(all)),
            Watch::OneLeg { years, on } => Some(self.one_leg(*years, on)),
            Watch::TimeOff(days) => Some(self.time_off(*days)),
            _ => None,
        });
        let mut parts: Vec<String> = before.collect();
        parts.push(self.next_and_falls(of));
        parts.extend(self.sides_act(of));
        parts.join(" ")
    }

    /// Whether numbers are true.
    fn doubt(&self, all: &[(MovementIx, Got)]) -> String {
        let one = |(ix, got): &(MovementIx, Got)| {
            let (movement, got) = (self.named(*ix), self.got(got));
            let values = [("movement", (&movement).into()), ("got", (&got).into())];
            self.fill("doubt_of", &values)
        };
        let all: Vec<String> = all.iter().map(one).collect();
        let list = self.few(&all);
        self.fill("doubt", &[("list", (&list).into())])
    }

    /// A short balance of who is older.
    fn one_leg(&self, years: i32, of: &OneLeg) -> String {
        let one = |amount| self.amount(of.movement, amount);
        let sides = self.left_right(&one(of.left), &one(of.right));
        let movement = self.named(of.movement);
        let least = self.amount(of.movement, i64::from(K.one_leg_s) * ONE);
        let values = [
            ("movement", (&movement).into()),
            ("got", (&sides).into()),
            ("least", (&least).into()),
            ("n", Value::Whole(years.into())),
            ("next", Value::Whole((years + 1).into())),
        ];
        self.fill("one_leg", &values)
    }

    fn left_right(&self, left: &str, right: &str) -> String {
        let values = [("left", left.into()), ("right", right.into())];
        self.fill("left_right", &values)
    }

    fn time_off(&self, days: i32) -> String {
        let reached = K.off.iter().filter(|off| days >= **off).count();
        let key = ["time_off", "time_off_longer", "time_off_long"][reached.clamp(1, 3) - 1];
        self.fill(key, &[("n", Value::Whole(days.into()))])
    }

    /// With which side is begun, of what may be trained, and where an old injury is asked about.
    fn sides_act(&self, of: &Verdict) -> Vec<String> {
        let mut out = Vec::new();
        for (side, key) in [(Side::Left, "begin_left"), (Side::Right, "begin_right")] {
            let apart = of.watch.iter().filter_map(|watch| match watch {
                Watch::Sides {
                    movement,
                    left,
                    right,
                    weaker,
                    act: true,
                    ..
                } if *weaker == side => Some((*movement, *left, *right)),
                _ => None,
            });
            let all: Vec<(MovementIx, Micro, Micro)> = apart.collect();
            if all.is_empty() {
                continue;
            }
            let list: Vec<String> = all.iter().map(|one| self.side_of(of, one)).collect();
            let list = self.few(&list);
            out.push(self.fill(key, &[("list", (&list).into())]));
            let joint = |ix: MovementIx| self.say.roster.find(ix)?.joint();
            let part = all.iter().find_map(|one| joint(one.0));
            out.extend(part.map(|part| {
                let part = self.say.part(part);
                self.fill("old_injury", &[("part", part.into())])
            }));
        }
        out
    }

    /// A movement and its sides, which what is next says itself.
    fn side_of(&self, of: &Verdict, (ix, left, right): &(MovementIx, Micro, Micro)) -> String {
        let movement = self.named(*ix);
        if of.next == Next::Work && of.next_movement() == Some(*ix) {
            return movement;
        }
        let sides = self.left_right(&self.amount(*ix, *left), &self.amount(*ix, *right));
        let values = [("movement", (&movement).into()), ("got", (&sides).into())];
        self.fill("side_of", &values)
    }

    /// What is next, and that it falls: nothing is done more of before the reason is known.
    fn next_and_falls(&self, of: &Verdict) -> String {
        let next = self.next(of);
        match of.falls.map(|at| of.history[at].movement) {
            None => next,
            Some(ix) if of.next_movement() == Some(ix) => {
                self.fill("next_falls", &[("next", (&next).into())])
            }
            Some(ix) => {
                let movement = self.named(ix);
                let values = [("movement", (&movement).into()), ("next", (&next).into())];
                self.fill("below_falls", &values)
            }
        }
    }

    fn next(&self, of: &Verdict) -> String {
        let say = &self.say;
        let limiter = || of.aim.as_ref().and_then(|aim| aim.limiter());
        match (&of.next, limiter()) {
            (Next::Refused(why), _) => say.refusal(*why, self.today),
            (Next::Reached, _) => self.plain("reached").to_string(),
            (Next::AllOwned, _) => say.say("no_goal"),
            (
                Next::Test {
                    movement,
                    target,
                    decides,
                },
                _,
            ) => {
                let gap = of.aim.iter().flat_map(|aim| &aim.gaps);
                let gap = gap.into_iter().find(|g| g.movement == *movement);
                self.test(*movement, target, decides, gap)
            }
            (Next::Blocked(ix, left), _) => {
                let (movement, why) = (self.named(*ix), say.left(*left));
                let values = [("movement", (&movement).into()), ("why", (&why).into())];
                self.meanwhile(of, self.fill("blocked", &values))
            }
            (Next::Hurts(parts), _) => {
                let parts: Vec<&str> = parts.iter().map(|part| say.part(*part)).collect();
                let list = say.words.list(&parts);
                self.meanwhile(of, self.fill("hurts", &[("parts", (&list).into())]))
            }
            (
                Next::Work | Next::Show | Next::ShowLater | Next::Counted | Next::Begin(_),
                Some(gap),
            ) => self.gap(of, gap),
            _ => self.meanwhile(of, say.say("nothing")),
        }
    }

    /// A test, what it decides, where the way behind it ends for now, and what was measured of it in the old way.
    fn test(
        &self,
        movement: MovementIx,
        target: &Target,
        decides: &[MovementIx],
        gap: Option<&Gap>,
    ) -> String {
        let (movement, target) = (self.named(movement), self.target(target));
        let list = self.few_named(decides);
        let values = [
            ("movement", (&movement).into()),
            ("target", (&target).into()),
            ("list", (&list).into()),
        ];
        let test = match decides.is_empty() {
            true => self.fill("test_goal", &values[..2]),
            false => self.fill("test", &values),
        };
        let closed = gap.filter(|gap| gap.stop.is_some());
        let test = match closed.and_then(|gap| self.say.how_long(gap)) {
            Some(way) => format!("{test} {way}"),
            None => test,
        };
        let Some(old) = gap.and_then(|gap| gap.old.as_ref()) else {
            return test;
        };
        let got = self.sides(old);
        let values = [("test", (&test).into()), ("got", (&got).into())];
        self.fill("test_again", &values)
    }

    /// With what the next session trains all the same.
    fn meanwhile(&self, of: &Verdict, next: String) -> String {
        if of.meanwhile.is_empty() {
            return next;
        }
        let names: Vec<String> = of.meanwhile.iter().map(|ix| self.named(*ix)).collect();
        let list = self.say.words.list(&names);
        let values = [("next", (&next).into()), ("list", (&list).into())];
        self.fill("meanwhile", &values)
    }

    /// What there is of a gap, what it asks, what the next session does for it, and what waits for it.
    fn gap(&self, of: &Verdict, gap: &Gap) -> String {
        let Some(aim) = &of.aim else {
            return String::new();
        };
        let what = self.step(of, gap);
        let what = match (aim.line(), aim.waits()) {
            (Some(line), _) if line.movement != gap.movement && of.next.works() => {
                let (movement, sets) = (self.named(line.movement), self.say.sets(line));
                let values = [
                    ("movement", (&movement).into()),
                    ("sets", (&sets).into()),
                    ("next", (&what).into()),
                ];
                self.fill("by_way", &values)
            }
            (None, Some(why)) if of.next.works() => {
                let is_back = of.watch.iter().any(|w| matches!(w, Watch::TimeOff(_)));
                let reason = self.say.left(why);
                let values = [("next", (&what).into()), ("why", (&reason).into())];
                let waits = match is_back && why == Left::Careful {
                    true => self.fill("waits_back", &values[..1]),
                    false => self.fill("waits", &values),
                };
                self.meanwhile(of, waits)
            }
            _ => what,
        };
        let Some(way) = self.say.how_long(gap) else {
            return what;
        };
        let way = match aim.held_back(gap.movement).len() {
            0 => match self.say.time(gap).filter(|_| gap.stop.is_none()) {
                Some(time) => self.fill("goal_itself", &[("time", (&time).into())]),
                None => self.fill("goal_closed", &[("way", (&way).into())]),
            },
            n => self.fill("holds_back", &[("n", n.into()), ("way", (&way).into())]),
        };
        format!("{what} {way}")
    }

    /// What there is of a gap, and what it asks.
    fn step(&self, of: &Verdict, gap: &Gap) -> String {
        let movement = self.named(gap.movement);
        let target = self.say.asks(gap);
        let got = self.say.has(gap).unwrap_or_default();
        let mut values = vec![
            ("movement", (&movement).into()),
            ("target", (&target).into()),
            ("got", (&got).into()),
        ];
        let line = of.aim.as_ref().and_then(|aim| aim.line());
        let is_own = line.is_some_and(|line| line.movement == gap.movement);
        match &of.next {
            Next::Show => self.fill("show", &values),
            Next::ShowLater => self.fill("show_later", &values),
            Next::Counted => self.fill("counted", &values),
            Next::Begin(set) if is_own => {
                let begin = self.got(set);
                values.push(("begin", (&begin).into()));
                self.fill("begin", &values)
            }
            Next::Begin(_) => self.fill("no_number", &values[..2]),
            _ if gap.from.is_some() => self.fill("counts", &values),
            _ => self.fill("work", &values),
        }
    }
}
