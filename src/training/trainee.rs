//! One person on one day: age, time, log, states, what rests, what is at hand.

use super::constants::K;
use super::ended::{Ended, Hurt};
use super::facts::{Facts, Roster};
use super::now::Now;
use super::reason::Left;
use crate::curriculum::caution::{Book, Shipped};
use crate::curriculum::gear::Gear;
use crate::curriculum::manner::When;
use crate::curriculum::target::{Added, ONE};
use crate::curriculum::words::{BodyPart, PainSign, Pattern, Phase, Weekday};
use crate::curriculum::{BodyWeight, Day, Mass, MovementIx};
use crate::readiness::{self, Cause, Evidence, Readiness, State, Truth, causes};
use crate::results::{LIMITS, Paused, Person, Trained};
use std::cell::OnceCell;
use std::collections::BTreeMap;

/// Where the arm's nerves run from the neck on.
const ARM: [BodyPart; 4] = [
    BodyPart::Neck,
    BodyPart::Shoulder,
    BodyPart::Elbow,
    BodyPart::Wrist,
];

/// Where the leg's nerves run from the lower back on.
const LEG: [BodyPart; 2] = [BodyPart::LowerBack, BodyPart::Hamstring];

/// A logged session of a movement, its load in kilograms.
#[derive(Clone, Copy, Debug)]
pub struct Logged<'a> {
    pub of: &'a Trained,
    pub mass: Mass,
}

impl Logged<'_> {
    /// The first set, in millionths.
    pub fn first(&self) -> i64 {
        self.of.did.first().copied().unwrap_or(0)
    }

    pub fn best(&self) -> i64 {
        self.of.did.iter().copied().max().unwrap_or(0)
    }

    /// The best set with what was left, at most four.
    pub fn with_reserve(&self) -> i64 {
        self.best() + i64::from(self.of.in_reserve.unwrap_or(0).min(K.reserve)) * ONE
    }

    /// Sets, two at least.
    pub fn sets(&self) -> i64 {
        (self.of.did.len() as i64).max(K.fewest.into())
    }

    /// No set below the first.
    pub fn full(&self) -> bool {
        self.of.did.iter().all(|set| *set >= self.first())
    }

    /// A set below the first, and nothing, or nothing said, in reserve.
    pub fn missed(&self) -> bool {
        !self.full() && self.of.in_reserve.unwrap_or(0) == 0
    }
}

/// Everything that the training of one person on one day is worked out from.
pub struct Trainee<'a> {
    pub roster: &'a Roster<'a>,
    pub person: &'a Person,
    pub today: Day,
    pub evidence: Evidence<'a>,
    /// Before today, by day. What is trained today has its say from tomorrow on, so that the session stays while it is done.
    pub log: Vec<Logged<'a>>,
    /// In whole years, the birthday of this year still to come.
    pub age: Option<i32>,
    /// Sessions a week.
    pub a_week: u32,
    pub minutes: u32,
    pub days: &'a [Weekday],
    pub ended: Vec<Ended>,
    /// What hurt and is better: nothing on it moves on for a while.
    pub(super) eased: Vec<Hurt>,
    /// A sign that no clinician has seen: nothing moves on.
    pub(super) has_sign: bool,
    /// As if nothing rested: what the route takes no notice of.
    states: Vec<Option<State>>,
    /// A number of their own still counts, though what they need is not shown.
    pub(super) before: Vec<bool>,
    /// Something that they need was never shown, and nothing of it failed.
    pub(super) unsure: Vec<bool>,
    /// Holding the breath is left alone: few long and straight-arm holds.
    pub(super) spares_breath: bool,
    /// Lying on the belly is left alone: what is done over the floor has the hands raised where that is known.
    pub(super) spares_belly: bool,
    /// Lying on the back is restricted, which only pregnancy does: first tries are of the lowest rung.
    pub(super) is_pregnant: bool,
    /// Something is restricted, or only light training is allowed.
    pub(super) is_held_back: bool,
    resting: Readiness,
    pub(super) own: Vec<OnceCell<Option<Now>>>,
    pub(super) now: Vec<OnceCell<Option<Now>>>,
    pub(super) fits: Vec<OnceCell<Option<bool>>>,
    pub(super) below: Vec<OnceCell<Vec<MovementIx>>>,
    /// The place in the log.
    pub(super) lately: Vec<OnceCell<Option<usize>>>,
    pub(super) foot: BTreeMap<Pattern, Option<Day>>,
    /// Nothing harder than what is known is tried first.
    careful: bool,
    /// Back from two weeks off or more: nothing with weight is tried first, and what is known comes first.
    pub(super) is_back: bool,
    reach: BTreeMap<Pattern, OnceCell<u32>>,
}

impl<'a> Trainee<'a> {
    pub fn new(roster: &'a Roster<'a>, person: &'a Person, today: Day) -> Trainee<'a> {
        let curriculum = roster.curriculum;
        let resting = readiness::assess(curriculum, roster.stages, person, today);
        let spares = person.screened.is_some()
            || !(person.pauses.is_empty()
                && person.restrictions.is_empty()
                && person.pains.is_empty());
        let free = spares.then(|| {
            let bare = Person {
                pauses: Vec::new(),
                restrictions: Vec::new(),
                pains: Vec::new(),
                screened: None,
                ..person.clone()
            };
            readiness::assess(curriculum, roster.stages, &bare, today)
        });
        let free = free.as_ref().unwrap_or(&resting);
        let state = |ix: MovementIx| free.of(ix).map(|s| s.state);
        let states = curriculum.movements().map(|(ix, _)| state(ix)).collect();
        let is_unsure = |ix: &MovementIx| free.of(*ix).is_some_and(|s| s.needs == Truth::Unknown);
        let unsure = roster.standing.iter().copied().filter(is_unsure).collect();
        let count = curriculum.len();
        let mut trainee = Trainee {
            roster,
            person,
            today,
            evidence: Evidence::new(curriculum, person, today),
            age: person.age_on(today),
            a_week: person
                .train
                .a_week
                .unwrap_or(curriculum.school().dose.a_week)
                .clamp(1, 7),
            minutes: person.train.minutes.unwrap_or(K.minutes),
            days: &person.train.days,
            ended: Vec::new(),
            eased: Vec::new(),
            has_sign: false,
            states,
            before: vec![false; count],
            unsure: vec![false; count],
            spares_breath: false,
            spares_belly: false,
            is_pregnant: false,
            is_held_back: false,
            resting,
            own: vec![OnceCell::new(); count],
            now: vec![OnceCell::new(); count],
            fits: vec![OnceCell::new(); count],
            below: vec![OnceCell::new(); count],
            lately: vec![OnceCell::new(); count],
            foot: BTreeMap::new(),
            careful: false,
            is_back: false,
            reach: Pattern::ALL.iter().map(|p| (*p, OnceCell::new())).collect(),
            log: log_of(roster, person, today),
        };
        trainee.settle(unsure);
        trainee
    }

    /// What follows from the log and from what rests. `unsure`: the movements of which something needed is unknown.
    fn settle(&mut self, unsure: Vec<MovementIx>) {
        for pattern in Pattern::ALL {
            let foot = self.last_before_long_off(*pattern);
            self.foot.insert(*pattern, foot);
        }
        self.ended = self.ended_pauses();
        self.eased = self.eased_pains();
        self.has_sign = self.newest_pains().iter().any(|p| !p.signs.is_empty());
        self.is_back = self.is_back_lately();
        self.careful = self.asks_for_care();
        self.is_held_back = self.finds_restriction();
        self.spares_breath = self.is_restricted(Shipped::BreathHolding);
        self.spares_belly = self.is_restricted(Shipped::Prone);
        self.is_pregnant = self.is_restricted(Shipped::Supine);
        for ix in unsure {
            self.unsure[ix.at()] = true;
            self.before[ix.at()] = self.has_number(ix);
        }
    }

    pub fn is_minor(&self) -> bool {
        self.age.is_some_and(|age| age < LIMITS.adult)
    }

    pub fn is_youth(&self) -> bool {
        self.age.is_some_and(|age| age < LIMITS.youth)
    }

    pub fn is_from(&self, years: i32) -> bool {
        self.age.is_some_and(|age| age >= years)
    }

    pub fn owns(&self, ix: MovementIx) -> bool {
        self.states[ix.at()] == Some(State::Owned)
    }

    /// Open or owned, whether it rests or not.
    pub fn is_open(&self, ix: MovementIx) -> bool {
        matches!(self.states[ix.at()], Some(State::Open | State::Owned))
    }

    /// Whether a restriction leaves a class alone.
    fn is_restricted(&self, class: Shipped) -> bool {
        let class = Paused::Class(Book::shipped(class));
        let is_it = |cause: &Cause| {
            matches!(cause, Cause::Restriction(_))
                && cause.pause(self.person).is_some_and(|p| p.what == class)
        };
        causes(self.person, self.today).iter().any(is_it)
    }

    pub fn rests(&self, ix: MovementIx) -> bool {
        self.resting
            .of(ix)
            .is_some_and(|s| s.state == State::Paused)
    }

    /// What only measures is not needed to train range.
    pub(super) fn is_at_hand(&self, ix: MovementIx) -> bool {
        let m = self.roster.curriculum.movement(ix);
        let spare = |word: &String| m.pattern() == Pattern::Mobility && Gear::measures(word);
        let fine = |word: &String| self.has(word) || spare(word);
        m.equipment().iter().all(|one_of| one_of.iter().any(fine))
    }

    pub(super) fn has(&self, word: &String) -> bool {
        self.person.have.as_ref().is_none_or(|h| h.contains(word))
    }

    /// What measures too.
    pub(super) fn has_all(&self, ix: MovementIx) -> bool {
        let needed = self.roster.curriculum.movement(ix).equipment();
        let has = |one_of: &Vec<String>| one_of.iter().any(|word| self.has(word));
        needed.iter().all(has)
    }

    /// Open, owned or done before, resting in no way, and its equipment at hand.
    pub fn may(&self, ix: MovementIx) -> bool {
        self.could(ix) && !self.rests(ix) && self.pulled_nerve(ix).is_none()
    }

    /// The same if nothing rested.
    pub(super) fn could(&self, ix: MovementIx) -> bool {
        self.roster.find(ix).is_some()
            && (self.is_open(ix) || self.was_done(ix))
            && self.is_at_hand(ix)
    }

    /// A numb part that no clinician has seen, where a movement stretches along the nerves of an arm or a leg: that pulls on them up
    /// to the neck, wherever the numbness begins. With a numb neck or arm also what has the arms overhead and bears on them. Common
    /// practice, no source.
    pub(super) fn pulled_nerve(&self, ix: MovementIx) -> Option<BodyPart> {
        let facts = self.roster.of(ix);
        let on = |parts: &[BodyPart]| parts.iter().any(|part| facts.stresses(*part));
        let stretch = facts.mobility() && (on(&ARM) || on(&LEG));
        let overhead = Book::shipped(Shipped::Overhead);
        let lifted = on(&ARM) && facts.of.cautions().contains(&overhead);
        let numb = |p: &&crate::results::Pain| {
            p.signs.contains(&PainSign::Numb) && (stretch || lifted && ARM.contains(&p.part))
        };
        self.newest_pains().into_iter().find(numb).map(|p| p.part)
    }

    /// Unknown, and not to be tried first today: it stresses a part that hurts, however lightly, is with weight after two weeks off, or where care is asked for it is harder than
    /// anything of its pattern that is known or was done, under a restriction also than a known easier neighbour; where nothing of that is known, than the
    /// lowest.
    pub(super) fn is_too_new(&self, ix: MovementIx) -> bool {
        if self.now(ix).is_some() {
            return false;
        }
        let facts = self.roster.of(ix);
        let known_below = || facts.easier.iter().any(|low| self.now(*low).is_some());
        let harder = || {
            !facts.mobility()
                && (facts.stage > self.reach(facts.pattern()) || self.is_held_back && known_below())
        };
        self.touched_part(ix).is_some()
            || self.is_back && facts.loaded()
            || self.careful && harder()
    }

    /// Why something is not tried first.
    pub(super) fn why_not_new(&self, ix: MovementIx) -> Left {
        let sore = self.touched_part(ix);
        sore.map_or(Left::Careful, |part| self.left_for(ix, part))
    }

    /// For a part that hurts: what has a number is left alone, what has none would be new.
    pub(super) fn left_for(&self, ix: MovementIx, part: BodyPart) -> Left {
        match self.now(ix) {
            Some(_) => Left::Spared(part),
            None => Left::Sore(part),
        }
    }

    /// The highest rung of a pattern that is known or was done; where there is none, the lowest that may be trained.
    pub(super) fn reach(&self, pattern: Pattern) -> u32 {
        let find = || {
            let of = self.roster.standing.iter().map(|ix| self.roster.of(*ix));
            let of: Vec<&Facts<'_>> = of.filter(|f| f.pattern() == pattern).collect();
            let done = |f: &&&Facts<'_>| {
                let ix = f.ix;
                self.owns(ix) || self.now(ix).is_some() || self.logged(ix).next().is_some()
            };
            let highest = of.iter().filter(done).map(|f| f.stage).max();
            let open = of.iter().filter(|f| self.may(f.ix)).map(|f| f.stage);
            highest.or(open.min()).unwrap_or(0)
        };
        self.reach.get(&pattern).map_or(0, |r| *r.get_or_init(find))
    }

    /// Whether this keeps a movement from being trained: a part or a class of its own that rests, or missing equipment.
    pub fn is_kept_from(&self, ix: MovementIx, when: &When) -> bool {
        let m = self.roster.curriculum.movement(ix);
        let what = |cause: &Cause| match cause {
            Cause::Pain(i) => Some(Paused::Part(self.person.pains[*i].part)),
            _ => cause.pause(self.person).map(|pause| pause.what),
        };
        let rests = |what_rests: Paused| {
            let by = self.resting.of(ix).map_or(&[][..], |s| &s.paused_by);
            self.rests(ix) && by.iter().any(|cause| what(cause) == Some(what_rests))
        };
        match when {
            When::Part(part) => m.stresses_part(*part) && rests(Paused::Part(*part)),
            When::Class(class) => m.cautions().contains(class) && rests(Paused::Class(*class)),
            When::Without(word) => {
                let needs = m.equipment().iter().flatten().any(|w| w == word);
                let has = self.person.have.as_ref().is_none_or(|h| h.contains(word));
                needs && !has && !self.is_at_hand(ix)
            }
        }
    }

    /// Why an open movement may not be trained.
    pub fn why_not(&self, ix: MovementIx) -> Left {
        match self.rests(ix) {
            true => self.why_it_rests(ix),
            false => self.pulled_nerve(ix).map_or(Left::Equipment, Left::Pain),
        }
    }

    fn why_it_rests(&self, ix: MovementIx) -> Left {
        let by = self.resting.of(ix).map_or(&[][..], |s| &s.paused_by);
        match by.first() {
            Some(Cause::Pain(i)) => Left::Pain(self.person.pains[*i].part),
            Some(Cause::Light) => Left::Light,
            Some(Cause::Pause(i)) => Left::Rests(self.person.pauses[*i].what),
            Some(Cause::Restriction(i)) => Left::Restricted(self.person.restrictions[*i].what),
            None => Left::Below,
        }
    }

    /// A load in kilograms; `None` where the body weight would be needed and is not known.
    pub fn mass(&self, added: Option<Added>) -> Option<Mass> {
        in_mass(added, self.person.body_weight)
    }

    /// Of one movement, by day.
    pub fn logged(&self, ix: MovementIx) -> impl DoubleEndedIterator<Item = &Logged<'a>> + Clone {
        self.log.iter().filter(move |t| t.of.movement == ix)
    }

    /// The days on which a pattern was trained, each once, by day.
    pub fn days_of(&self, pattern: Pattern) -> Vec<Day> {
        let of = |t: &&Logged<'_>| self.roster.of(t.of.movement).pattern() == pattern;
        let mut days: Vec<Day> = self.log.iter().filter(of).map(|t| t.of.on).collect();
        days.dedup();
        days
    }

    /// The last training of a pattern before so long off that what was known before is unknown now. Exits and mobility are not
    /// forgotten. Common practice, no source.
    fn last_before_long_off(&self, pattern: Pattern) -> Option<Day> {
        if matches!(pattern, Pattern::Exit | Pattern::Mobility) {
            return None;
        }
        let mut days = self.days_of(pattern);
        days.push(self.today);
        days.windows(2)
            .filter(|two| two[1].days_after(two[0]) >= K.off[2])
            .map(|two| two[0])
            .max()
    }

    /// Whether some pattern was left so long that what was known before is unknown now.
    pub(super) fn was_long_off(&self) -> bool {
        self.foot.values().any(Option::is_some)
    }

    /// As computed once for each pattern.
    pub fn long_off(&self, pattern: Pattern) -> Option<Day> {
        self.foot.get(&pattern).copied().flatten()
    }

    /// Whether what is paused or restricted reaches a movement by itself.
    pub fn reaches(&self, what: Paused, ix: MovementIx) -> bool {
        let m = self.roster.curriculum.movement(ix);
        match what {
            Paused::Movement(of) => of == ix,
            Paused::Part(part) => m.stresses_part(part),
            Paused::Class(class) => m.cautions().contains(&class),
            Paused::Pattern(pattern) => m.pattern() == pattern,
        }
    }

    /// The newest pain of each part, by part.
    pub fn newest_pains(&self) -> Vec<&'a crate::results::Pain> {
        let mut newest: BTreeMap<BodyPart, &crate::results::Pain> = BTreeMap::new();
        for pain in &self.person.pains {
            let kept = newest.entry(pain.part).or_insert(pain);
            if pain.on >= kept.on {
                *kept = pain;
            }
        }
        newest.into_values().collect()
    }

    /// Whether an entry pauses its part, as wherever a pain is judged.
    pub fn stops(&self, pain: &crate::results::Pain) -> bool {
        pain.score > readiness::goes_on_to(self.person, pain.part, self.today)
            || !pain.signs.is_empty()
    }

    /// The phase that counts when variations are compared: a whole rep where none is said.
    pub fn phase(&self, ix: MovementIx) -> Phase {
        self.roster.of(ix).of.phase().unwrap_or(Phase::Full)
    }
}

/// What a person trained before a day, by day.
fn log_of<'a>(roster: &Roster<'_>, person: &'a Person, today: Day) -> Vec<Logged<'a>> {
    let mass = |t: &Trained| in_mass(t.added, person.body_weight).unwrap_or_default();
    let stands = |t: &&Trained| t.on < today && roster.find(t.movement).is_some();
    let done = person.trained.iter().filter(|t| !t.did.is_empty());
    let logged = |of| Logged { of, mass: mass(of) };
    let mut log: Vec<Logged<'a>> = done.filter(stands).map(logged).collect();
    log.sort_by_key(|t| t.of.on);
    log
}

/// A load on a body; none where nothing is added.
pub fn in_mass(added: Option<Added>, weight: Option<BodyWeight>) -> Option<Mass> {
    added.unwrap_or(Added::NONE).on_body(weight)
}

/// Down to a whole number; what is whole but for the error of a fraction stays.
pub fn down(n: f64) -> i64 {
    (n + 1e-9).floor() as i64
}
