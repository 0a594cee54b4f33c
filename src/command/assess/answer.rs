//! What `assess --as json` answers. Keys are added, never renamed.

use super::super::{chain, dose};
use super::Answer;
use super::all::for_everyone;
use crate::curriculum::target::{Got, Micro};
use crate::curriculum::words::Word;
use crate::curriculum::{Curriculum, Day, MovementIx};
use crate::history::{History, Point};
use crate::morning::{Class, Fresh, Watch};
use crate::readiness::{Cause, Missing, Standing, State};
use crate::results::{Aside, Pause, Paused, Person, Sides};
use crate::training::Say;
use serde_json::{Map, Value, json};

/// Answers for one curriculum on a day.
pub struct Answering<'a> {
    pub say: Say<'a>,
    pub rows: &'a [MovementIx],
    pub today: Day,
}

impl Answering<'_> {
    fn curriculum(&self) -> &Curriculum {
        self.say.roster.curriculum
    }

    fn id(&self, ix: MovementIx) -> &str {
        self.curriculum().movement(ix).id().as_str()
    }

    fn ids(&self, list: &[MovementIx]) -> Vec<&str> {
        list.iter().map(|ix| self.id(*ix)).collect()
    }

    pub fn whole(&self, answers: &[Answer], class: &Class, findings: Value) -> Value {
        let people: Vec<Value> = answers.iter().map(|a| self.person(a)).collect();
        json!({
            "today": self.today.to_string(), "people": people, "everyone": self.ids(&for_everyone(answers, self.rows)),
            "class": self.class(answers, class), "findings": findings,
        })
    }

    fn person(&self, a: &Answer) -> Value {
        let movements: Map<String, Value> = self
            .rows
            .iter()
            .filter_map(|ix| {
                let standing = self.standing(a, *ix, a.readiness.of(*ix)?);
                Some((self.id(*ix).to_string(), standing))
            })
            .collect();
        let v = &a.verdict;
        let aim = v.aim.as_ref();
        let goal = v.goal.map(|goal| dose::id_of(self.curriculum(), goal));
        let limiter = aim.and_then(|aim| Some(dose::limiter(&self.say, aim.limiter()?)));
        let watch: Vec<Value> = v.watch.iter().map(|w| self.watch(a, w)).collect();
        let new: Vec<Value> = v.fresh.iter().map(|f| self.fresh(f)).collect();
        let history: Map<String, Value> = v
            .history
            .iter()
            .map(|h| (self.id(h.movement).to_string(), self.history(h)))
            .collect();
        let mut out = json!({
            "name": a.person.name, "movements": movements, "aside": aside(&a.person),
            "goal": { "skill": goal, "chosen": v.chosen, "reached": aim.is_some_and(|aim| aim.is_reached()) },
            "clinician": self.say.clinician(&a.person, self.today),
            "refused": v.refused().map(|why| json!({ "why": self.say.refusal(why, self.today) })),
            "limiter": limiter, "falls": v.falls.map(|at| self.id(v.history[at].movement)), "new": new, "watch": watch, "history": history,
        });
        if let Some(route) = &a.route {
            out["route"] = chain::route_json(self.curriculum(), route);
        }
        out
    }

    fn missing(&self, m: &Missing) -> Value {
        let share = m.share.map(|s| f64::from(s) / 1000.0);
        json!({ "movement": self.id(m.movement), "target": m.target.to_string(), "got": m.got, "share": share })
    }

    fn standing(&self, a: &Answer, ix: MovementIx, s: &Standing) -> Value {
        let missing = |list: &[Missing]| list.iter().map(|m| self.missing(m)).collect::<Vec<_>>();
        let mut out = json!({ "state": s.state.word(), "presumed": s.presumed, "missing": missing(&s.missing) });
        if !s.paused_by.is_empty() {
            let causes = s.paused_by.iter().map(|of| self.cause(&a.person, *of));
            out["paused_by"] = causes.collect();
        }
        if let Some(ix) = s.counted_because {
            out["counted_because"] = json!(self.id(ix));
        }
        if let Some(first) = a.first.get(&ix) {
            out["first"] = json!(missing(&first.steps));
            if let (Some(ix), true) = (s.nearly, first.direct) {
                out["train_first"] = json!(self.id(ix));
            }
            if s.state == State::TestFirst && first.direct {
                out["tests"] = json!(self.ids(&first.movements()));
            }
        }
        out
    }

    fn pause(&self, p: &Pause) -> Value {
        let (key, value) = match p.what {
            Paused::Movement(ix) => ("movement", self.id(ix)),
            Paused::Part(part) => ("part", part.word()),
            Paused::Class(ix) => {
                let class = self.curriculum().cautions().class(ix);
                ("class", class.id.as_str())
            }
            Paused::Pattern(pattern) => ("pattern", pattern.word()),
        };
        json!({ key: value, "on": p.on.to_string(), "until": p.until.map(|d| d.to_string()), "by": p.by, "because": p.because })
    }

    fn cause(&self, person: &Person, cause: Cause) -> Value {
        let mut out = match cause {
            Cause::Pain(i) => {
                let pain = &person.pains[i];
                json!({ "part": pain.part.word(), "on": pain.on.to_string() })
            }
            Cause::Light => json!({ "on": person.screened.as_ref().map(|s| s.on.to_string()) }),
            _ => cause
                .pause(person)
                .map_or(Value::Null, |pause| self.pause(pause)),
        };
        out["kind"] = json!(cause.word());
        out
    }

    fn fresh(&self, f: &Fresh) -> Value {
        json!({
            "movement": self.id(f.movement), "on": f.on.to_string(), "got": sides(&f.got), "was": f.was.as_ref().map(sides),
            "owned": f.owned, "opens": self.ids(&f.opens),
        })
    }

    fn watch(&self, a: &Answer, watch: &Watch) -> Value {
        let of = |at: &usize| self.id(a.verdict.history[*at].movement);
        let mut out = match watch {
            Watch::Pain { at, stops } => {
                let pain = &a.person.pains[*at];
                json!({
                    "part": pain.part.word(), "score": pain.score, "next_morning": pain.next_morning, "on": pain.on.to_string(),
                    "signs": pain.signs.iter().map(|s| s.word()).collect::<Vec<_>>(),
                    "rests": stops,
                })
            }
            Watch::Rests(cause) => self.cause(&a.person, *cause),
            Watch::Fallen(at) | Watch::Still(at) => json!({ "movement": of(at) }),
            Watch::Sides {
                movement,
                left,
                right,
                ..
            } => self.two_sides(*movement, *left, *right),
            Watch::Doubt(all) => {
                let one = |(ix, got): &(MovementIx, Got)| json!({ "movement": self.id(*ix), "got": got.to_string() });
                json!({ "entries": all.iter().map(one).collect::<Vec<_>>() })
            }
            Watch::OneLeg { on, .. } => self.two_sides(on.movement, on.left, on.right),
            Watch::Missing(all) => {
                let one = |(words, stops): &(Vec<String>, Vec<MovementIx>)| json!({ "one_of": words, "stops": self.ids(stops) });
                json!({ "missing": all.iter().map(one).collect::<Vec<_>>() })
            }
            Watch::NoDayOff { group, first, then } => {
                json!({ "group": group.word(), "days": [first.to_string(), then.to_string()] })
            }
            Watch::ToFailure { on, movements } => {
                json!({ "on": on.to_string(), "movements": self.ids(movements) })
            }
            Watch::Age { years, .. } => json!({ "years": years }),
            Watch::Cleared(last) => {
                let by = a.person.screened.as_ref().and_then(|s| s.by.as_deref());
                json!({ "until": last.to_string(), "by": by })
            }
            Watch::Unanswered => json!({}),
            Watch::TimeOff(days) => json!({ "days": days }),
            Watch::RunsOut { from, movements } => {
                json!({ "from": from.to_string(), "movements": self.ids(movements) })
            }
            Watch::OutOfDate(movements) | Watch::Helped(movements) => {
                json!({ "movements": self.ids(movements) })
            }
            Watch::Aside => json!({ "entries": a.person.aside.len() }),
        };
        out["kind"] = json!(watch.word());
        out
    }

    fn two_sides(&self, movement: MovementIx, left: Micro, right: Micro) -> Value {
        let (left, right) = (dose::number(left), dose::number(right));
        json!({ "movement": self.id(movement), "left": left, "right": right })
    }

    fn history(&self, h: &History) -> Value {
        let trend = h.trend.map(|t| {
            let thousandth = (t.per_week * 1000.0).round() / 1000.0;
            json!({ "per_week": thousandth, "unit": t.unit.word() })
        });
        let plateau = h.still.map(|s| {
            let about = s.advice.movement().map(|ix| self.id(ix));
            json!({
                "since": s.since.best.to_string(), "weeks": s.since.weeks, "falling": s.falling,
                "advice": s.advice.word(), "movement": about,
            })
        });
        let falling = h.fallen.map(|f| {
            json!({ "best": point(&f.best), "last": f.last.iter().map(point).collect::<Vec<_>>() })
        });
        json!({
            "tests": h.points.iter().map(point).collect::<Vec<_>>(), "trend": trend, "plateau": plateau, "falling": falling,
        })
    }

    fn class(&self, answers: &[Answer], class: &Class) -> Value {
        let names = |list: &[usize]| {
            let name = |i: &usize| answers[*i].person.name.as_str();
            list.iter().map(name).collect::<Vec<_>>()
        };
        let held_back = class.held_back.iter().map(|(ix, who)| {
            json!({ "movement": self.id(*ix), "signal": self.say.signal(*ix), "people": names(who) })
        });
        let together = class
            .together
            .iter()
            .map(|(of, who)| json!({ "movements": self.ids(of), "people": names(who) }));
        let tests = class.tests.iter().map(|t| {
            json!({ "movement": self.id(t.movement), "signal": self.say.signal(t.movement), "people": names(&t.people), "decides": t.decides })
        });
        json!({
            "held_back": held_back.collect::<Vec<_>>(), "together": together.collect::<Vec<_>>(), "tests": tests.collect::<Vec<_>>(),
            "waiting": names(&class.waiting),
        })
    }
}

/// As results are written.
fn sides(sides: &Sides) -> Value {
    match sides {
        Sides::Both(got) => json!(got.to_string()),
        Sides::Each { left, right } => {
            json!({ "left": left.to_string(), "right": right.to_string() })
        }
    }
}

fn point(p: &Point) -> Value {
    json!({ "on": p.on.to_string(), "amount": dose::number(p.amount), "with_kg": p.mass.kilograms() })
}

/// What a person's file says and nothing here can judge.
fn aside(person: &Person) -> Vec<Value> {
    let one = |a: &Aside| json!({ "movement": a.movement, "got": a.got, "on": a.on.to_string(), "why": a.why });
    person.aside.iter().map(one).collect()
}
