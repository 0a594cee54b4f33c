"""What is known of a client: the curriculum, the results file, what is spared, and `now`, what can be done today.

Part of the reference for training (see training.py), written only from its specification. Numbers are exact fractions: masses in
kg, times in s, lengths in cm, angles in degrees.
"""

import math
from datetime import date, timedelta
from fractions import Fraction
from typing import NamedTuple

import readiness
from readiness import A_YEAR, GROWN, PAIN_EASES, PAIN_RESTS, is_resting, parse_mass, parse_target

PUSH, PULL = ("vertical push", "horizontal push"), ("vertical pull", "horizontal pull")
LEGS = ("squat", "hinge", "carry")
GROUPS = {**{p: "push" for p in PUSH}, **{p: "pull" for p in PULL}, **{p: "legs" for p in LEGS}, "core": "core"}
ORDER = ("vertical pull", "vertical push", "horizontal pull", "horizontal push", *LEGS, "core")
ARM = ("neck", "shoulder", "elbow", "wrist")  # where its nerves run from the neck on
LEG = ("lower-back", "hamstring")  # and those of a leg
HEAVY_HOW = {"loaded", "straight-arm", "lowering"}
HEAVY = {"lowering", "loaded", "straight-arm", "shoulder-extension", "neck-load"}
UNITS = {"reps": "reps", "time": "s", "length": "cm", "angle": "deg", "done": "done"}
COUNTED = ("reps", "s")

MOST_RESERVE = 4  # reps left that count as reps done
MISSED_BELOW = Fraction(9, 10)
SEVERAL_SETS = (3, 2)  # from so many sets on, so many reps more than the best of them
FORGOTTEN = 56  # days off after which nothing is known
A_PAUSE, A_PAUSE_BACK = 7, 21  # days that make a pause of which one comes back by steps, and days for which
DAY = timedelta(days=1)
MEASURES = {"tape", "ruler", "phone", "goniometer", "protractor", "level"}
LAPSED = 14  # days
REPS_KNOWN, HOLD_KNOWN = 2, 5
PAIN_LESS = 4
OLD, NEAR = 65, 2  # years; days
PAIN_DAYS = 14
OFF_LONGER, COMING_BACK = 28, (7, 14)  # days off, days for which one takes care after it
NEVER = date.min


def floor(number):
    """Down to a whole number; what is whole but for the error of a floating sum stays."""
    return math.floor(number if isinstance(number, (int, Fraction)) else number + 1e-9)


# ---------------------------------------------------------------- the curriculum


class Movement(NamedTuple):
    """The facts of a movement, and what follows from them at once."""

    id: str
    stage: int
    pattern: str
    family: str | None
    place: dict  # axis -> rung
    phase: str | None
    straight: bool
    load: str
    classes: frozenset
    positions: tuple
    inverted: bool
    loaded: bool
    each_side: bool
    parts: frozenset
    stressed: frozenset  # of parts, and how
    grave: bool  # of a class with a warning
    uncautioned: bool  # of notices at most
    equipment: tuple  # of alternatives
    tempo: str | None
    hold: str | None
    own_rest: int | None  # seconds
    instead: tuple
    weeks: tuple  # from and to
    standard: object
    dose: object  # its own or the school's
    own_dose: bool
    share: float | None  # of body weight on the hands
    hands_at: float | None  # cm
    needs: object

    @property
    def unit(self):
        return UNITS[self.standard.kind]

    @property
    def counted(self):
        return self.unit in COUNTED

    @property
    def each(self):
        """Seconds of each rep; 0 where none are said."""
        return self.dose.secs or self.standard.secs

    @property
    def of_a_set(self):
        return floor(self.dose.amount)

    @property
    def of_all_sets(self):
        return self.dose.sets * self.dose.amount

    @property
    def guarded(self):
        return self.inverted or self.loaded

    @property
    def lowering(self):
        return self.phase == "lowering"

    @property
    def on_rings(self):
        return any("rings" in word.split("-") for one_of in self.equipment for word in one_of)

    @property
    def strict(self):
        return self.guarded or self.lowering or self.straight or self.pattern == "balance" or self.on_rings

    def bears_on(self, part):
        """Stresses a part, and not only lightly."""
        return any(p == part and how != "light" for p, how in self.stressed)

    @property
    def try_group(self):
        """The group that a first try of an exit or a balance works."""
        if self.pattern in ("exit", "balance") and {"support", "inverted", "part-inverted"} & set(self.positions):
            return "push"
        return "pull" if self.pattern == "exit" and "hanging" in self.positions else None

    @property
    def turnover(self):
        return {"hanging", "support"} <= set(self.positions)

    @property
    def over_floor(self):
        """Face down, the hands no higher than the feet."""
        return "prone" in self.positions and not (self.hands_at or 0) > 0

    @property
    def mobility(self):
        return self.pattern == "mobility"

    @property
    def practised(self):
        return self.pattern in ("balance", "exit") or self.turnover

    @property
    def group(self):
        return GROUPS.get(self.pattern)

    @property
    def kind(self):
        return self.pattern + (", straight arms" if self.straight else "")

    @property
    def heavy_parts(self):
        if self.load == "none" or self.pattern in ("balance", "exit"):
            return frozenset()
        by_class = bool(self.classes & HEAVY)
        return frozenset(part for part, how in self.stressed if (by_class if how is None else how in HEAVY_HOW))

    @property
    def by_weight(self):
        """Full reps that weight is added to."""
        return self.loaded and self.unit == "reps" and not self.lowering and self.pattern != "exit"


class School(NamedTuple):
    sets: int
    reps: int
    hold: object
    a_week: int
    lighter_every: int  # weeks
    plate: Fraction
    results_last: int  # days
    warm_up: dict


class Curriculum:
    def __init__(self, said):
        school = said["school"]
        self.school = School(
            sets=school["sets"], reps=school["reps"], hold=parse_target(school["hold"]), a_week=school["a_week"],
            lighter_every=school["lighter_every_days"] // 7, plate=Fraction(str(school["plate_kg"])),
            results_last=said["results_last_days"], warm_up=school.get("warm_up") or {},
        )
        self.presume = said.get("presume", True)
        self.plain, self.present = readiness.read_movements(said)
        sums = sorted(sum(m["weeks"]) for m in said["movements"] if m.get("weeks"))
        middle = Fraction(sums[len(sums) // 2] if sums else 8, 2)
        self.movements = {m["id"]: self.read(m, middle) for m in said["movements"]}
        self.skills = {s["id"]: s for s in said["skills"]}
        self.easier = {i: self.neighbours(m) for i, m in self.movements.items()}
        self.harder = {i: [j for j in self.movements if i in self.easier[j]] for i in self.movements}
        self.above = {i: self.up(i) for i in self.movements}

    def __getitem__(self, id):
        return self.movements[id]

    def read(self, m, middle):
        standard, own = parse_target(m["standard"]), m.get("dose") is not None
        dose = parse_target(m["dose"]) if own else None
        if dose is None:
            dose = self.school.hold if standard.kind == "time" else parse_target(f"{self.school.sets}x{self.school.reps}")
        return Movement(
            id=m["id"], stage=m["stage"] or 0, pattern=m["pattern"], family=m.get("family"), place=m.get("place") or {},
            phase=m.get("phase"), straight=bool(m.get("straight")), load=m["load"], classes=frozenset(m["classes"]),
            positions=tuple(m["positions"]), inverted=bool(m["inverted"]), loaded=bool(m["loaded"]),
            each_side=bool(m["each_side"]), parts=frozenset(m["stresses"]), stressed=frozenset((part, how) for part, how in m["stressed"]),
            grave="warning" in m["signals"], uncautioned=set(m["signals"]) <= {"notice"}, equipment=tuple(m["equipment"]),
            weeks=tuple(Fraction(w) for w in m["weeks"]) if m.get("weeks") else (middle, middle),
            standard=standard, dose=dose, own_dose=own, share=None if m.get("share") is None else float(m["share"]), hands_at=None if m.get("hands_at") is None else float(m["hands_at"]), needs=self.plain[m["id"]].needs,
            tempo=m.get("tempo"), hold=m.get("hold"), own_rest=m.get("rest"), instead=tuple(m.get("instead") or ()),
        )

    def neighbours(self, m):
        """The easier neighbours: on each axis the nearest lower rung that has any, all other axes being equal."""
        found = []
        for axis in m.place:
            others = {a: r for a, r in m.place.items() if a != axis}
            row = [
                o for o in self.movements.values()
                if m.family and o.family == m.family and axis in o.place and o.place[axis] < m.place[axis]
                and {a: r for a, r in o.place.items() if a != axis} == others
            ]
            nearest = max((o.place[axis] for o in row), default=None)
            found += [o.id for o in row if o.place[axis] == nearest]
        return found

    def up(self, id):
        """The harder members of the family: up easier neighbours of the same phase and measure."""
        m, found, queue = self[id], [], [id]
        while queue:
            for j in self.harder[queue.pop()]:
                o = self[j]
                if j not in found and (o.phase, o.unit, o.each) == (m.phase, m.unit, m.each):
                    found.append(j)
                    queue.append(j)
        return found

    def below(self, ids):
        """All that the needs of these mention, down to the ground."""
        found, queue = [], list(ids)
        while queue:
            for leaf in readiness.leaves(self[queue.pop(0)].needs):
                if leaf.movement not in found:
                    found.append(leaf.movement)
                    queue.append(leaf.movement)
        return found


# ---------------------------------------------------------------- the results file


class Test(NamedTuple):
    movement: str
    on: date
    sides: tuple  # of targets: one, or left and right
    reserve: int
    bodyweight: Fraction | None


class Session(NamedTuple):
    """What was logged of one movement on one day."""

    movement: str
    on: date
    did: tuple
    kg: Fraction
    reserve: int | None

    @property
    def best(self):
        return max(self.did)

    @property
    def full(self):
        return min(self.did) >= self.did[0]

    @property
    def missed(self):
        return not self.full and not self.reserve


class Now(NamedTuple):
    amount: Fraction
    kg: Fraction
    left: Fraction | None = None
    right: Fraction | None = None
    tries: Fraction = Fraction(1)


class Pain(NamedTuple):
    score: int
    next_morning: int
    on: date
    signs: tuple


class Spared(NamedTuple):
    """One thing that is left alone: its kind (part, class, pattern, movement, guarded) and name."""

    kind: str
    name: str


def read_day(text, today):
    return date.fromisoformat(text) if text else today


class Client:
    def __init__(self, curriculum, results, today):
        self.c, self.today, self.said = curriculum, today, results
        mass = results.get("bodyweight")
        self.bodyweight = parse_mass(mass) if mass is not None else None
        self.have = results.get("have")
        train = results.get("train") or {}
        self.a_week = train.get("a_week") or curriculum.school.a_week
        self.minutes = train.get("minutes") or 60
        self.days = train.get("days") or []
        born = results.get("born")
        # The birthday counts as still to come.
        self.age = today.year - born - 1 if born else None
        self.says = readiness.screening(results, today)
        self.tests = self.read_tests(results.get("tested") or ())
        self.log = self.read_log(results.get("trained") or ())
        self.pains = self.read_pains(results.get("pain") or ())
        self.judge()
        self.spare()
        self.memory, self.rungs = {}, {}
        self.is_back = self.is_back_lately()
        self.careful = self.restricted or any(self.holds(pains[-1]) for pains in self.pains.values()) or self.is_back

    @property
    def minor(self):
        return self.age is not None and self.age < GROWN

    def kg(self, load, bodyweight=None):
        """A load of a target in kg; None where the body weight would be needed and is not known."""
        if load.unit != "bw" or load.value == 0:
            return load.value
        weight = bodyweight or self.bodyweight
        return None if weight is None else load.value * weight

    def read_tests(self, entries):
        out = []
        for entry in entries:
            id = self.c.present.get(entry["movement"])
            plain = self.c.plain.get(id)
            if plain is None or readiness.read_result(entry, plain.standard, plain.since, None, self.today) is None:
                continue
            texts = [entry["got"]] if entry.get("got") is not None else [entry["left"], entry["right"]]
            mass = entry.get("bodyweight")
            out.append(Test(
                id, read_day(entry.get("on"), self.today), tuple(parse_target(t) for t in texts),
                int(entry.get("in_reserve") or 0), parse_mass(mass) if mass is not None else None,
            ))
        return out

    def read_log(self, entries):
        """Of reps and seconds, oldest first; today's speaks tomorrow."""
        out = []
        for entry in entries:
            id, on = self.c.present.get(entry["movement"]), read_day(entry.get("on"), self.today)
            if id is None or on >= self.today or not self.c[id].counted:
                continue
            if self.c.plain[id].since is not None and on < self.c.plain[id].since:
                continue
            load = parse_target(f"1 rep with {entry['with']}").load if entry.get("with") else readiness.Load(Fraction(0), "kg")
            did = tuple(Fraction(str(amount)) for amount in entry["did"])
            if did:
                out.append(Session(id, on, did, self.kg(load) or Fraction(0), entry.get("in_reserve")))
        return sorted(out, key=lambda session: session.on)

    def read_pains(self, entries):
        """Of each part, oldest first."""
        out = {}
        for on, part, score, next_morning, signs in readiness.worst_of_days(entries, self.today):
            if on <= self.today:
                out.setdefault(part, []).append(Pain(score, next_morning, on, signs))
        for pains in out.values():
            pains.sort(key=lambda pain: pain.on)
        return out

    # ------------------------------------------------------------ states, but for what is spared

    def judge(self):
        c = self.c
        tested = {**self.said, "paused": [], "restrict": [], "cleared": [], "pain": [], "screened": None}
        self.evidence = readiness.read_client(c.plain, c.present, tested, c.school.results_last, self.today)
        if c.presume:
            readiness.presume(c.plain, self.evidence)
        standing = readiness.reachable(c.plain)
        self.states = {i: readiness.state_of(m, self.evidence, set())[0] for i, m in c.plain.items() if i in standing}

    def owns(self, id):
        return self.states.get(id) == "owned"

    def truth(self, leaf, asker):
        return self.evidence.leaf_value(leaf, self.c[asker].guarded)

    # ------------------------------------------------------------ what is spared

    def reaches(self, what, m):
        return {
            "part": lambda: what.name in m.parts, "heavily": lambda: m.bears_on(what.name), "class": lambda: what.name in m.classes,
            "pattern": lambda: what.name == m.pattern, "movement": lambda: what.name == m.id,
            "light": lambda: m.guarded or m.lowering,
        }[what.kind]()

    def takes_back(self, pain):
        return pain.score >= PAIN_LESS or pain.next_morning > pain.score

    @property
    def has_sign(self):
        """One that no clinician has seen."""
        return any(pains[-1].signs for pains in self.pains.values())

    def stops(self, part, pain):
        """Whether an entry pauses its part."""
        return is_resting(part, pain.score, pain.signs, self.minor)

    def spare(self):
        """What is paused or restricted today, and the pauses of a week or more that have ended."""
        holding, self.ended, self.spared_parts, self.eased = [], [], [], {}
        self.restricted_classes = []  # they are of the person
        self.restricted = self.says == "light"
        self.spares_breath = self.spares_belly = self.pregnant = False
        self.held_back = self.says == "light"
        cleared = {}
        for entry in self.said.get("cleared") or ():
            on = read_day(entry.get("on"), self.today)
            last = on + A_YEAR * DAY
            if entry.get("until"):
                last = min(last, date.fromisoformat(entry["until"]))
            if on <= self.today <= last:
                cleared[entry["class"]] = max(on, cleared.get(entry["class"], on))
        for key in ("paused", "restrict"):
            for entry in self.said.get(key) or ():
                kind = next(k for k in ("part", "class", "pattern", "movement") if entry.get(k) is not None)
                name = self.c.present.get(entry[kind]) if kind == "movement" else entry[kind]
                on, until = read_day(entry.get("on"), self.today), entry.get("until")
                until = date.fromisoformat(until) if until else None
                lifted = key == "restrict" and kind == "class" and on <= cleared.get(name, NEVER)
                if name is None or on > self.today or lifted:
                    continue
                if until is None or until >= self.today:
                    holding.append(Spared(kind, name))
                    self.spared_parts += [name] if kind == "part" else []
                    self.restricted |= key == "restrict"
                    self.restricted_classes += [holding[-1]] if (key, kind) == ("restrict", "class") else []
                    self.spares_breath |= (key, kind, name) == ("restrict", "class", "breath-holding")
                    self.spares_belly |= (key, kind, name) == ("restrict", "class", "prone")
                    self.pregnant |= (key, kind, name) == ("restrict", "class", "supine")
                    self.held_back |= key == "restrict"
                elif key == "paused" and (until - on).days + 1 >= A_PAUSE:
                    self.ended.append((Spared(kind, name), until))
        for part, pains in self.pains.items():
            self.spare_pain(part, pains, holding)
        if self.says == "light":
            holding.append(Spared("light", ""))
        self.holding = holding
        self.spared = self.spread(holding)

    def spare_pain(self, part, pains, holding):
        bad = [self.stops(part, pain) for pain in pains]
        hurt = [b or self.holds(pain) for b, pain in zip(bad, pains)]
        run = [k for k, b in enumerate(hurt) if b]
        if run and not hurt[-1]:
            last = first = run[-1]
            while first > 0 and hurt[first - 1]:
                first -= 1
            self.eased[part] = pains[last].on, any(bad[first : last + 1])
            less = any(self.stops(part, p) or self.takes_back(p) for p in pains[first : last + 1])
            if less and (pains[last + 1].on - pains[first].on).days >= A_PAUSE:
                self.ended.append((Spared("heavily", part), pains[last + 1].on - DAY))
        if bad[-1]:
            holding.append(Spared("part", part))
            self.spared_parts.append(part)
            self.restricted = True
        elif any(bad):
            last = max(k for k, b in enumerate(bad) if b)
            first = last
            while first > 0 and bad[first - 1]:
                first -= 1
            end = pains[last + 1].on
            if (end - pains[first].on).days >= A_PAUSE:
                self.ended.append((Spared("part", part), end - DAY))

    def spread(self, holding):
        """All that is spared: what a thing reaches, and below a movement or an exit what cannot be reached without it."""
        direct, roots = set(), set()
        for what in holding:
            for m in self.c.movements.values():
                if self.reaches(what, m):
                    direct.add(m.id)
                    if what.kind == "movement" or m.pattern == "exit":
                        roots.add(m.id)
        if roots:
            lost = readiness.reachable(self.c.plain) - readiness.reachable(self.c.plain, without=roots)
            direct |= lost
        return direct

    def has_equipment(self, id):
        """What only measures is not needed to train range."""
        measures = lambda word: self.c[id].mobility and bool(set(word.split("-")) & MEASURES)
        return self.have is None or all(any(word in self.have or measures(word) for word in one_of) for one_of in self.c[id].equipment)

    def has_all(self, id):
        return self.have is None or all(any(word in self.have for word in one_of) for one_of in self.c[id].equipment)

    def is_kept_from(self, m, one):
        """Whether what the coach names keeps a movement from being trained."""
        if one.get("without"):
            word = one["without"]
            lacks = self.have is not None and word not in self.have
            return lacks and any(word in one_of for one_of in m.equipment) and not self.has_equipment(m.id)
        kind = "part" if one.get("part") else "class"
        return m.id in self.spared and any(what.kind == kind and what.name == one[kind] and self.reaches(what, m) for what in self.holding)

    def is_open(self, id):
        return self.states.get(id) in ("open", "owned")

    def was_done(self, id):
        """Not open, since something below was never shown, none of it failed; and a number of its own still counts."""
        m = self.c[id]
        if self.owns(id) or id not in self.states or m.guarded or not m.counted or not self.measured(id):
            return False
        if readiness.judge(m.needs, lambda leaf: self.truth(leaf, id)) != readiness.UNKNOWN:
            return False
        return floor(self.own_now(id).amount) >= (HOLD_KNOWN if m.unit == "s" else REPS_KNOWN)

    def only_unsure(self, id):
        """Not open for nothing but what was never shown, and free of what rests or hurts."""
        m = self.c[id]
        if self.owns(id) or id not in self.states or m.guarded or id in self.spared or self.is_sore(m) or not self.has_equipment(id):
            return False
        return readiness.judge(m.needs, lambda leaf: self.truth(leaf, id)) == readiness.UNKNOWN

    def was_lifted(self, id):
        """With weight, by an adult, though not open for nothing but what was never shown."""
        m = self.c[id]
        if self.owns(id) or id not in self.states or self.minor or not m.by_weight or not self.measured(id):
            return False
        unknown = readiness.judge(m.needs, lambda leaf: self.truth(leaf, id)) == readiness.UNKNOWN
        return unknown and self.own_now(id).kg > 0

    def lighter_step(self, id):
        """The highest easier neighbour with weight on record that may be trained."""
        js = [j for j in self.c.easier[id] if self.c[j].by_weight and self.may(j) and self.now(j) and self.now(j).kg > 0]
        return min(js, key=lambda j: (-self.c[j].stage, j), default=None)

    def gentlest(self, id):
        """What is tried first for it: from 65 and in pregnancy the lowest unknown rung of its family."""
        if not (self.pregnant or self.age is not None and self.age >= OLD):
            return id
        js = [j for j in self.c.easier[id] if self.may(j) and self.now(j) is None and not self.too_new(j) and not self.c[j].lowering]
        return self.gentlest(min(js, key=lambda j: (self.c[j].stage, j))) if js else id

    def could(self, id):
        """Whether it might be trained if nothing rested."""
        return (self.is_open(id) or self.was_done(id)) and self.has_equipment(id)

    def may(self, id):
        return self.could(id) and id not in self.spared and not self.pulls_on_numb(self.c[id])

    def pulls_on_numb(self, m):
        """Whether it stretches along the nerves of an arm or a leg while anything is numb, or has the arms up while the neck or an arm is."""
        numb = {part for part, pains in self.pains.items() if "numb" in pains[-1].signs}
        if m.mobility and any(part in (*ARM, *LEG) for part in m.parts):
            return bool(numb)
        return bool(numb & set(ARM)) and "overhead" in m.classes and any(part in ARM for part in m.parts)

    # ------------------------------------------------------------ what is not tried first

    def holds(self, pain):
        """Whether a pain is one under which nothing grows, until a newer entry is lower."""
        return PAIN_EASES <= pain.score < PAIN_RESTS

    def sore_parts(self):
        return [part for part, pains in self.pains.items() if self.holds(pains[-1])]

    def is_sore(self, m):
        return any(m.bears_on(part) for part in self.sore_parts())

    def is_touched(self, m):
        """Whether it stresses a part that hurts, however lightly."""
        return any(part in m.parts for part in self.sore_parts())

    def eased_on(self, m, on):
        """The parts that are better, less than two weeks, where m bears on them, or waited while they rested."""
        eased = [(part, rested) for part, (last, rested) in self.eased.items() if (on - last).days <= PAIN_DAYS]
        return [part for part, rested in eased if m.bears_on(part) or rested and part in m.parts]

    def over_on(self, m, on):
        """What hurt or rested and is over only lately, where it reaches a movement: pains, and what was long."""
        return self.eased_on(m, on), [what for what, last in self.ended if self.reaches(what, m) and (on - last).days <= A_PAUSE_BACK]

    def waits_lately(self, id, on):
        """Whether what is new waits: it is too much for what is over only lately."""
        m = self.c[id]
        if self.now(id) is not None or m.mobility:
            return False
        upright = m.pattern == "balance" and set(m.positions) == {"upright"}
        grave = m.grave or m.strict and not upright or m.stage > self.reach(m.pattern)

        hurt, rested = self.over_on(m, on)
        heavy = lambda part: part in m.heavy_parts or part == "shoulder" and "overhead" in m.classes
        return bool(rested) or any(grave or heavy(part) for part in hurt)

    def over_lately(self):
        """What is over only lately, each once."""
        hurt = {("part", part) for part, (last, _) in self.eased.items() if (self.today - last).days <= PAIN_DAYS}
        rested = {("part" if what.kind == "heavily" else what.kind, what.name) for what, last in self.ended if (self.today - last).days <= A_PAUSE_BACK}
        return hurt | rested

    def heavy_below(self, id, than):
        """Whether it bears on a part that hurts and that the other is heavy on."""
        return any(self.c[id].bears_on(part) and part in self.c[than].heavy_parts for part in self.sore_parts())

    def bears_more(self, id, than):
        """Whether one movement bears more than another on a part that hurts."""
        m, other = self.c[id], self.c[than]
        return any(
            m.bears_on(part) and not other.bears_on(part) or part in m.heavy_parts and part not in other.heavy_parts
            for part in self.sore_parts()
        )

    def is_too_much(self, id, on):
        """Whether it is a stretch of a part that hurts, heavy on it, or on it on the day it began."""
        m = self.c[id]
        parts = {part for part in self.sore_parts() if m.bears_on(part)}
        if m.mobility:
            return self.is_touched(m)
        return bool(parts) and bool(parts & m.heavy_parts or any(self.pains[part][-1].on == on for part in parts))

    def overhead_hurts(self, id):
        """Arms overhead on a shoulder at 4 or 5, or worse the next morning."""
        m = self.c[id]
        if "overhead" not in m.classes or not m.bears_on("shoulder") or "shoulder" not in self.sore_parts():
            return False
        pain = self.pains["shoulder"][-1]
        return pain.score >= PAIN_LESS or pain.next_morning > pain.score

    def warms_up(self, line):
        """Whether a line of the warm-up is for them: nothing that rests or hurts from 3 on, and what it wants is at hand."""
        spared = {part for part, pains in self.pains.items() if pains[-1].score >= PAIN_EASES} | set(self.spared_parts)
        free = not any(part in spared and how != "light" for part, how in line["stressed"])
        return free and (self.have is None or all(any(word in self.have for word in one_of) for one_of in line["equipment"]))

    def to_failure(self):
        """Whether a session of less than 48 hours ago fell short with nothing left."""
        return any((self.today - s.on).days < NEAR and s.reserve == 0 and not s.full for s in self.log)

    def is_back_lately(self):
        """Two weeks off or more, now or ended lately."""
        days = sorted({s.on for s in self.log}) + [self.today]
        for before, after in reversed(list(zip(days, days[1:]))):
            off = (after - before).days
            if off >= LAPSED:
                return (self.today - after).days < COMING_BACK[off >= OFF_LONGER]
        return False

    def reach(self, pattern):
        """The highest rung of a pattern that is known or was done, else the lowest that may be trained."""
        if pattern not in self.rungs:
            of = [m for m in self.c.movements.values() if m.pattern == pattern]
            done = [m.stage for m in of if self.owns(m.id) or self.now(m.id) or any(s.movement == m.id for s in self.log)]
            self.rungs[pattern] = max(done) if done else min((m.stage for m in of if self.may(m.id)), default=0)
        return self.rungs[pattern]

    def too_new(self, id):
        """Unknown, and not to be tried first today."""
        m = self.c[id]
        if self.now(id) is not None:
            return False
        known_below = self.held_back and any(self.now(j) for j in self.c.easier[id])
        harder = not m.mobility and (m.stage > self.reach(m.pattern) or known_below)
        return self.is_touched(m) or self.is_back and m.loaded or self.careful and harder

    def lately(self, id):
        """The newest session of the last two weeks of a movement, or of a harder member of its family."""
        log = [s for s in self.log if (self.today - s.on).days < LAPSED]
        own = [s for s in log if s.movement == id]
        harder = [s for s in log if self.c[id].counted and s.movement in self.c.above[id]]
        return own[-1] if own else harder[-1] if harder else None

    # ------------------------------------------------------------ now

    def forgotten(self, pattern):
        """The last day of training before 56 days or more off; what was before it is unknown. No day where there were none."""
        if pattern in ("exit", "mobility"):
            return NEVER
        days = sorted({s.on for s in self.log if self.c[s.movement].pattern == pattern}) + [self.today]
        return max((a for a, b in zip(days, days[1:]) if (b - a).days >= FORGOTTEN), default=NEVER)

    def now(self, id):
        """What is known of a movement: by itself, and by what a harder member of its family shows. None: nothing."""
        if id not in self.memory:
            self.memory[id] = self.find_now(id)
        return self.memory[id]

    def measured(self, id):
        """Whether a result or the log speaks of it."""
        since = max(self.forgotten(self.c[id].pattern), self.today - (self.c.school.results_last + 1) * DAY)
        return any(x.movement == id and since < x.on for x in [*self.tests, *self.log])

    def find_now(self, id):
        m, own = self.c[id], self.own_now(id)
        known = [own] if own else []
        measured = self.measured(id)
        if m.counted:
            for j in self.c.above[id]:
                shown = self.own_now(j)
                if shown and (own is None or not measured):
                    known.append(shown._replace(kg=shown.kg if m.loaded else min(Fraction(0), shown.kg)))
                elif shown and shown.kg >= own.kg:
                    known.append(own._replace(amount=max(own.amount, shown.amount)))
        return max(known, key=lambda now: (now.kg, now.amount), default=None)

    def best_test(self, id, since):
        """The day of the newest tests and the best set of it."""
        m = self.c[id]
        tests = [t for t in self.tests if t.movement == id and since < t.on]
        if not tests:
            return since, None
        day, best = max(t.on for t in tests), None
        for test in tests:
            if test.on != day:
                continue
            reps = m.unit == "reps"
            more = [
                side.amount + (test.reserve + (SEVERAL_SETS[1] if side.sets >= SEVERAL_SETS[0] else 0) if reps else 0)
                for side in test.sides
            ]
            two = len(more) == 2
            kg = min(self.kg(side.load, test.bodyweight) or Fraction(0) for side in test.sides)
            tries = min(Fraction(1) if side.hits is None else side.per_try for side in test.sides)
            worse = max(more) if m.standard.at_most else min(more)
            found = Now(worse, kg, more[0] if two else None, more[1] if two else None, tries)
            rank = lambda now: (now.kg, -now.amount if m.standard.at_most else now.amount)
            if best is None or rank(found) > rank(best):
                best = found
        return day, best

    def own_now(self, id):
        m = self.c[id]
        foot = self.forgotten(m.pattern)
        since, best = self.best_test(id, max(foot, self.today - (self.c.school.results_last + 1) * DAY))
        log = [s for s in self.log if s.movement == id and s.on > since]
        reps = m.unit == "reps"

        def showed(session):
            return session.best + (min(session.reserve or 0, MOST_RESERVE) if reps else 0)

        if log:
            best = best or Now(showed(log[-1]), log[-1].kg)
            log = [s for s in log if s.kg >= best.kg]
            best = best._replace(amount=max([best.amount, *map(showed, log)]))
            latest = log[-2:]
            if len(latest) == 2 and all(s.missed and s.best < MISSED_BELOW * best.amount for s in latest):
                best = best._replace(amount=max(s.best for s in latest))
        if best is None and self.owns(id) and foot == NEVER:
            best = Now(m.standard.amount, self.kg(m.standard.load) or Fraction(0))
        if best and m.counted:
            best = best._replace(amount=Fraction(floor(best.amount)), kg=best.kg if m.loaded else min(Fraction(0), best.kg))
        return best
