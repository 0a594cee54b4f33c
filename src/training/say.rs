//! Training in words: lines, reasons, what is left out. The page's script says the same from the same words.

use super::constants::K;
use super::facts::{Group, Kind, Roster};
use super::lately::Lately;
use super::line::{Line, Side, Sides, Unit};
use super::plan::{Condition, Training};
use super::reason::{Block, Left, Reason, Rule, Then};
use super::session::Session;
use crate::curriculum::target::{Added, Got, Measure, ONE, say_mass};
use crate::curriculum::words::{BodyPart, End, Pattern, Units, Word};
use crate::curriculum::{Mass, Movement, MovementIx};
use crate::results::{LIMITS, Paused};
use crate::words::{Value, Words};

/// Says training in a language.
pub struct Say<'a> {
    pub roster: &'a Roster<'a>,
    pub words: &'a Words,
    pub units: Units,
    /// Names are set down as tokens, for a page to put its marked names in their place.
    pub tokens: bool,
}

/// Stands around a token; no text of a coach's holds it.
pub const TOKEN: char = '\u{1}';

impl<'a> Say<'a> {
    /// In the school's own language and units.
    pub fn of(roster: &'a Roster<'a>) -> Say<'a> {
        Say {
            roster,
            words: roster.curriculum.words(),
            units: roster.curriculum.school().units,
            tokens: false,
        }
    }

    /// An entry of the section `training`.
    pub(super) fn fill(&self, key: &str, values: &[(&str, Value<'_>)]) -> String {
        self.words.fill(&format!("training.{key}"), values)
    }

    pub fn say(&self, key: &str) -> String {
        self.fill(key, &[])
    }

    fn name(&self, ix: MovementIx) -> &str {
        self.roster.curriculum.movement(ix).name()
    }

    /// A movement with the signal word of its mark.
    pub fn named(&self, ix: MovementIx) -> String {
        if self.tokens {
            return format!("{TOKEN}m{}{TOKEN}", ix.0);
        }
        match self.signal(ix) {
            Some(signal) => format!("{} [{signal}]", self.name(ix)),
            None => self.name(ix).to_string(),
        }
    }

    /// The signal word of a movement's mark.
    pub fn signal(&self, ix: MovementIx) -> Option<&'static str> {
        let curriculum = self.roster.curriculum;
        let class = curriculum.movement(ix).cautions().first()?;
        Some(curriculum.cautions().class(*class).signal.word())
    }

    pub fn group(&self, group: Group) -> String {
        self.say(&format!("group.{}", group.word()))
    }

    pub fn pattern(&self, pattern: Pattern) -> &str {
        let key = format!("pattern.{}", pattern.word().replace(' ', "_"));
        self.words.say(&key)
    }

    pub fn part(&self, part: BodyPart) -> &str {
        let key = format!("body.{}", part.word().replace('-', "_"));
        self.words.say(&key)
    }

    fn got(&self, got: &Got) -> String {
        got.say(self.units, self.words)
    }

    fn mass(&self, mass: Mass) -> String {
        say_mass(mass, self.units, self.words)
    }

    /// What is paused or restricted.
    pub fn spared(&self, what: Paused) -> String {
        let book = self.roster.curriculum.cautions();
        match what {
            Paused::Movement(ix) => self.named(ix),
            Paused::Part(part) => self.part(part).to_string(),
            Paused::Class(ix) => book.class(ix).name(self.words).to_string(),
            Paused::Pattern(pattern) => self.pattern(pattern).to_string(),
        }
    }

    /// The reasons of a line, the weightiest first.
    pub fn why(&self, reasons: &[Reason]) -> String {
        let said = reasons.iter().map(|reason| self.reason(reason));
        let both = |why: String, more: String| {
            self.fill(
                "why.both",
                &[("why", (&why).into()), ("more", (&more).into())],
            )
        };
        said.reduce(both).unwrap_or_default()
    }

    fn reason(&self, reason: &Reason) -> String {
        let plain = |key: &str| self.say(&format!("why.{key}"));
        let with =
            |key: &str, values: &[(&str, Value<'_>)]| self.fill(&format!("why.{key}"), values);
        match *reason {
            Reason::NothingKnown => plain("nothing_known"),
            Reason::NothingOfGroup(group) => with(
                "nothing_of_group",
                &[("group", (&self.group(group)).into())],
            ),
            Reason::TriedAnew => plain("tried_anew"),
            Reason::Instead(ix, left) => {
                let (movement, why) = (self.named(ix), self.left(left));
                with(
                    "instead",
                    &[("movement", (&movement).into()), ("why", (&why).into())],
                )
            }
            Reason::Known(got) => with("show", &[("got", (&self.got(&got)).into())]),
            Reason::KnownFrom(got, ix) => self.of_movement("show_counts", ix, &got),
            Reason::Easy(ix, got) => self.of_movement("easy", ix, &got),
            Reason::EasyFrom(ix) => with("easy_kept", &[("movement", (&self.named(ix)).into())]),
            Reason::TooFew(ix, got) => self.of_movement("too_few", ix, &got),
            Reason::NotShown(ix, got) => self.of_movement("not_shown", ix, &got),
            Reason::Single(got) => with("single", &[("got", (&self.got(&got)).into())]),
            Reason::ShortSets => plain("short_sets"),
            Reason::NoGap(pattern) => with("no_gap", &[("pattern", self.pattern(pattern).into())]),
            Reason::WholeBody => plain("whole_body"),
            Reason::Best(got) => with("best", &[("got", (&self.got(&got)).into())]),
            Reason::Counts(got, ix) => self.of_movement("counts", ix, &got),
            Reason::Load => plain("load"),
            Reason::OfRecord => plain("of_record"),
            Reason::Slow => plain("slow"),
            Reason::AskHarder => plain("ask_harder"),
            Reason::ShowFar => plain("show_far"),
            Reason::LoadHeld(mass) => with("load_held", &[("weight", (&self.mass(mass)).into())]),
            Reason::IfDone(n) => with("if_done", &[("n", Value::Whole(n))]),
            Reason::InFull => plain("in_full"),
            Reason::TwoOver => plain("two_over"),
            Reason::FellShort => plain("fell_short"),
            Reason::Asked(..)
            | Reason::SoFar(_)
            | Reason::Measure
            | Reason::MeasureAgain(_)
            | Reason::MeasureNot => self.measured(reason),
            Reason::UntilNumber => plain("until_number"),
            Reason::Before => plain("before"),
            Reason::Raised => plain("raised"),
            Reason::DaysOff(n) => with("days_off", &[("n", Value::Whole(n.into()))]),
            Reason::BackAfter(n) => with("back_after", &[("n", Value::Whole(n.into()))]),
            Reason::Hurts { .. } => self.hurts(reason),
            Reason::Waits(ix) => with("waits", &[("movement", (&self.named(ix)).into())]),
            Reason::GoesOn => plain("goes_on"),
            Reason::Hurt(part, score) => with(
                "hurt",
                &[("part", self.part(part).into()), ("score", score.into())],
            ),
            Reason::AfterPause(n) => with("after_pause", &[("n", Value::Whole(n.into()))]),
        }
    }

    /// What is there of a stretch, or how it comes by a number.
    fn measured(&self, reason: &Reason) -> String {
        let got = |got: &Got| self.got(got);
        match reason {
            Reason::Asked(ix, is) => {
                let standard = self
                    .roster
                    .of(*ix)
                    .of
                    .standard()
                    .say(self.units, self.words);
                let is = got(is);
                let values = [("got", (&is).into()), ("standard", (&standard).into())];
                self.fill("why.asked", &values)
            }
            Reason::SoFar(is) => self.fill("why.so_far", &[("got", (&got(is)).into())]),
            Reason::MeasureAgain(old) => {
                self.fill("why.measure_again", &[("got", (&self.sides(old)).into())])
            }
            Reason::Measure => self.say("why.measure"),
            _ => self.say("why.measure_not"),
        }
    }

    fn of_movement(&self, key: &str, ix: MovementIx, got: &Got) -> String {
        let (movement, got) = (self.named(ix), self.got(got));
        let values = [("movement", (&movement).into()), ("got", (&got).into())];
        self.fill(&format!("why.{key}"), &values)
    }

    /// Why something is left out.
    pub fn left(&self, left: Left) -> String {
        let plain = |key: &str| self.say(&format!("left.{key}"));
        match left {
            Left::Apart(group) => {
                self.fill("left.apart", &[("group", (&self.group(group)).into())])
            }
            Left::Heavy => plain("heavy"),
            Left::Waits => plain("waits"),
            Left::WaitsFor(ix) => {
                self.fill("left.waits_for", &[("movement", (&self.named(ix)).into())])
            }
            Left::ShowTurns => plain("show_turns"),
            Left::TryTurns => plain("try_turns"),
            Left::Turns => plain("turns"),
            Left::Beyond => plain("beyond"),
            Left::Tested => plain("tested"),
            Left::Sets => plain("sets"),
            Left::Time => plain("time"),
            Left::TooHard => plain("too_hard"),
            Left::Minor => plain("minor"),
            Left::Equipment => plain("equipment"),
            Left::Rests(what) => self.fill("left.paused", &[("what", (&self.spared(what)).into())]),
            Left::Restricted(what) => {
                self.fill("left.restricted", &[("what", (&self.spared(what)).into())])
            }
            Left::Pain(part) => {
                let what = self.spared(Paused::Part(part));
                self.fill("left.pain", &[("what", (&what).into())])
            }
            Left::Sore(part) => {
                let what = self.spared(Paused::Part(part));
                self.fill("left.sore", &[("what", (&what).into())])
            }
            Left::Careful => plain("careful"),
            Left::Lately(what) => {
                self.fill("left.lately", &[("what", (&self.spared(what)).into())])
            }
            Left::StandsIn => plain("stands_in"),
            Left::Enough => plain("enough"),
            Left::Breath => plain("breath"),
            Left::Light => plain("light"),
            Left::Below => plain("below"),
            Left::NotShown => plain("not_shown"),
            Left::Served(group) => {
                self.fill("left.served", &[("group", (&self.group(group)).into())])
            }
            Left::Spared(part) | Left::Overhead(part) => {
                let key = match left {
                    Left::Overhead(_) => "left.overhead",
                    _ => "left.spared",
                };
                let what = self.spared(Paused::Part(part));
                self.fill(key, &[("what", (&what).into())])
            }
        }
    }

    pub fn condition(&self, condition: Condition) -> String {
        let lower = [("n", Value::from(LIMITS.pain[0] - 1))];
        if let Condition::Lately(Lately { what, until, .. }) = condition {
            let (what, day) = (self.spared(what), until.to_string());
            return self.fill(
                "lately",
                &[("what", (&what).into()), ("day", (&day).into())],
            );
        }
        let key = match condition {
            Condition::Unanswered => "unanswered",
            Condition::CoachPresent => "coach_present",
            Condition::WallNear => "wall_near",
            Condition::Sixes => "sixes",
            Condition::Breathe => "breathe_through",
            Condition::Lower => "until_lower",
            Condition::Sign | Condition::Lately(_) => "until_seen",
            Condition::RestDay => "rest_day",
        };
        self.fill(key, &lower)
    }

    /// The amount of one set, its load too.
    pub(super) fn one_set(&self, line: &Line, amount: i64, mass: Option<Mass>) -> String {
        let (measure, seconds) = match line.unit {
            Unit::Reps => (Measure::Reps, line.seconds_each.unwrap_or(0)),
            Unit::Seconds => (Measure::Time, 0),
        };
        let added = mass.filter(|mass| *mass != Mass::NONE).map(Added::Mass);
        self.got(&Got::of(measure, 1, amount * ONE, seconds, added))
    }

    /// The tempo of its reps, and where each is held.
    fn paced(&self, line: &Line) -> Vec<String> {
        let m = self.roster.curriculum.movement(line.movement);
        match line.unit {
            Unit::Reps => paced(self.words, m),
            Unit::Seconds => Vec::new(),
        }
    }

    /// Sets, amount, load, tempo and sides: "5 x 3 reps with 10 kg added, each side".
    pub fn sets(&self, line: &Line) -> String {
        let amount = self.one_set(line, line.amount, line.mass);
        let key = match line.rule {
            Rule::UntilTested => "sets_by_number",
            _ => "sets",
        };
        let mut parts = vec![self.fill(
            key,
            &[
                ("sets", Value::Whole(line.sets)),
                ("amount", (&amount).into()),
            ],
        )];
        parts.extend(self.paced(line));
        if let Some(Sides {
            weaker_first,
            weaker,
        }) = line.sides
        {
            parts.push(self.say(match weaker_first {
                true => "weaker_first",
                false => "each_side",
            }));
            parts.extend(weaker.map(|side| {
                self.say(match side {
                    Side::Left => "more_left",
                    Side::Right => "more_right",
                })
            }));
        }
        self.words.list(&parts)
    }

    /// Rest and what is left in reserve: "rest 3 min, 2 left".
    pub fn rest(&self, line: &Line) -> String {
        let (key, n) = match line.rest.minutes() {
            Some(minutes) => ("rest_min", minutes),
            None => ("rest_s", line.rest.count()),
        };
        let mut parts = vec![self.fill(key, &[("n", n.into())])];
        parts.extend(line.in_reserve.map(|n| {
            let key = match n >= i64::from(K.reserve) {
                true => "reserve_most",
                false => "reserve",
            };
            self.fill(key, &[("n", Value::Whole(n))])
        }));
        self.words.list(&parts)
    }

    /// What a line works towards; nothing where something else goes on for what is reached.
    pub fn toward(&self, line: &Line, training: &Training) -> Option<String> {
        let gap = &training.gaps[line.gap?];
        if gap.is_whole() && gap.movement != line.movement {
            return None;
        }
        let target = gap.target.say(self.units, self.words);
        Some(self.fill(
            "toward",
            &[
                ("movement", (&self.named(gap.movement)).into()),
                ("target", (&target).into()),
            ],
        ))
    }

    /// The word of a line's block: what was never done is not kept up.
    pub fn block(&self, line: &Line) -> String {
        let is_new = matches!(line.rule, Rule::FirstTry | Rule::UntilTested);
        match line.block {
            Block::KeptUp if is_new => self.say("block.beside"),
            block => self.say(&format!("block.{}", block.key())),
        }
    }

    pub fn rule(&self, line: &Line) -> String {
        self.say(&format!("rule.{}", line.rule.key()))
    }

    pub fn then(&self, line: &Line) -> String {
        let most = match line.then {
            Then::StopMost(most) | Then::HoldMost(most) => most,
            _ => 0,
        };
        self.fill(
            &format!("then.{}", line.then.key()),
            &[("n", Value::Whole(most))],
        )
    }

    /// Why a line stands; of a first try also what is done in it, for where nothing else says it.
    pub fn why_and_then(&self, line: &Line) -> String {
        let why = self.why(&line.why);
        if line.rule != Rule::FirstTry {
            return why;
        }
        let then = self.then(line);
        self.fill(
            "why.both",
            &[("why", (&why).into()), ("more", (&then).into())],
        )
    }

    /// A session's head: its day, week, name and length.
    pub fn head(&self, session: &Session) -> String {
        let name = session.name.map(String::from).unwrap_or_default();
        let day = session.on.to_string();
        let values = [
            ("day", Value::Text(&day)),
            ("week", session.week.into()),
            ("minutes", Value::Whole(session.minutes)),
            ("name", Value::Text(&name)),
        ];
        let head = match session.name {
            Some(_) => self.fill("session_named", &values),
            None => self.fill("session", &values),
        };
        match session.lighter {
            true => self.fill("lighter", &[("session", (&head).into())]),
            false => head,
        }
    }

    /// What is left out of a session, the movements of one reason together, at most three of them by name.
    pub fn left_out(&self, session: &Session) -> Option<String> {
        let mut by: Vec<(Left, Vec<MovementIx>)> = Vec::new();
        for (ix, why) in &session.left {
            match by.iter_mut().find(|(left, _)| left == why) {
                Some((_, list)) if list.contains(ix) => {}
                Some((_, list)) => list.push(*ix),
                None => by.push((*why, vec![*ix])),
            }
        }
        if by.is_empty() {
            return None;
        }
        let one = |(why, list): &(Left, Vec<MovementIx>)| {
            let names: Vec<String> = list.iter().take(3).map(|ix| self.named(*ix)).collect();
            let more = if list.len() > 3 { " …" } else { "" };
            let movements = format!("{}{more}", self.words.list(&names));
            let why = self.left(*why);
            self.fill(
                "left_of",
                &[("movements", (&movements).into()), ("why", (&why).into())],
            )
        };
        let all: Vec<String> = by.iter().map(one).collect();
        let list = all.join("; ");
        Some(self.fill("left_out", &[("list", (&list).into())]))
    }

    /// A kind as answers for programs name it.
    pub fn kind(kind: Kind) -> String {
        match kind.straight {
            true => format!("{}, straight arms", kind.pattern.word()),
            false => kind.pattern.word().to_string(),
        }
    }
}

/// The tempo of a movement's reps, and where each is held.
pub fn paced(words: &Words, m: &Movement) -> Vec<String> {
    let tempo = m.tempo().map(|tempo| {
        let tempo = tempo.to_string();
        words.fill("target.tempo", &[("tempo", (&tempo).into())])
    });
    let held = m.hold().map(|held| {
        let key = match held.at {
            End::Bottom => "target.held_bottom",
            End::Top => "target.held_top",
        };
        words.fill(key, &[("n", held.seconds.count().into())])
    });
    tempo.into_iter().chain(held).collect()
}
