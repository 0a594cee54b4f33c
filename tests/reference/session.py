"""What a session is made of: which variation stands for each gap, how much of it, and what is taken back for a while.

Part of the reference for training (see training.py), written only from its specification.
"""

import math
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NamedTuple

from client import DAY, GROUPS, LAPSED, MOST_RESERVE, NEVER, OFF_LONGER, ORDER, SEVERAL_SETS, floor
from gaps import WHOLE
from readiness import leaves

FITS_AT_MOST, FITS_AT_LEAST, FITS_HOLD = 5, 2, 5
EASY_REPS, EASY_HOLDS = 6, 3  # reps over R, times R
REPS, HOLD = Fraction(7, 10), Fraction(1, 2)  # shares of now
MOST_REPS, MOST_STRICT_REPS, MOST_HOLD = 12, 8, 45
HELD_IN_ALL = (30, 90)  # s
SETS, ATTEMPTS = (2, 5), (6, 10)
SINGLES, MOST_FOR_SINGLES = 3, 3
FIRST_SETS, AGAIN_SETS, FIRST_REPS, FIRST_CAREFUL_REPS, FIRST_HOLD = 2, 3, 3, 2, 5
FIRST_CARRY = 15  # s
RANGE, RANGE_UNKNOWN, RANGE_LIMITER = (2, 30), (2, 10), 4
SHORT_SETS = 3  # the first time after a session that fell short
KEPT_UP, KEPT_UP_OLDER, OLDER, OLD = 2, 3, 60, 65
OF_BODY, OF_RECORD, OVER_RECORD, CHART_OVER = Fraction(5, 100), Fraction(8, 10), Fraction(11, 10), 3
OF_BODY_SIDE, OF_STANDARD = Fraction(1, 10), Fraction(1, 2)  # of a first load at most
CHART = [100, 95, 93, 90, 87, 85, 83, 80, 77, 75, 72.5, 70]  # per cent for 1 to 12 reps: Baechle & Earle, Essentials
MINOR_REPS = 6
SESSIONS, STRICT_SESSIONS, OVER, LEFT = 2, 3, 2, 2
LEFT_STEP = 1  # what a plan's step of load leaves at least
STEP_REPS, STEP_HOLD, PLATE_SHARE = 1, 2, Fraction(5, 100)
MOST_STEPS = 2
LIGHT, NEARLY = Fraction(8, 10), Fraction(9, 10)
LEAST, PAIN_LEAST = Fraction(5, 10), 5
STEP_BACK, NO_MORE = 7, 28  # days of each step of the way back; days after time off with no more than before it
WEEK = 7  # days
PAUSE_WEEKS = 3
SIDES = {"reps": Fraction(15, 100), "s": Fraction(15, 100), "cm": 2, "deg": 5}
SECONDS_A_REP = 4
REST_GUARDED, REST_EASY, REST_SHORT, REST = 180, 60, 30, 120
SHORT_WORK = 10


@dataclass
class Candidate:
    """What could stand in a session."""

    movement: str
    gap: object  # or None
    block: str
    rule: str
    single: bool = False
    instead_of: str | None = None
    weight: Fraction = Fraction(0)
    first: bool = False  # comes every time
    goes_on: bool = False  # of the goal's chain, and trained lately
    mainstay: bool = False  # what its kind is trained by
    then: str | None = None  # goes on for it once it was shown
    after: str | None = None  # it waits until this was shown


class Ease(NamedTuple):
    """What is taken back on a day."""

    light: bool = False
    easier: bool = False
    rule: str | None = None
    sore: bool = False  # nothing grows
    worse: bool = False  # the next morning
    least: bool = False  # half, and a rung further down
    nearly: bool = False  # light, but nearer to what it was
    most: object = None  # the session before time off, whose amount is not passed
    comes_back: bool = False  # on the way to what it was
    over: bool = False  # for what hurt or rested and is over only lately

    def with_more(self, light, easier, rule, over=False):
        light_again = self.nearly and not light
        return self._replace(light=self.light or light, easier=self.easier or easier, rule=rule, nearly=light_again, comes_back=False, over=over)

    @property
    def share(self):
        return (LEAST if self.least else NEARLY if self.nearly else LIGHT) if self.light else 1

    def and_sore(self, other):
        self = self._replace(most=other.most)
        if not other.sore or self.sore:
            return self
        nearly = self.nearly and not other.worse
        return self._replace(light=self.light or other.worse, rule=other.rule, sore=True, worse=other.worse, nearly=nearly, least=other.least, comes_back=False, over=other.over)


class Line(NamedTuple):
    candidate: Candidate
    movement: str
    sets: int
    amount: int
    unit: str
    kg: Fraction | None
    side: str | None
    weaker: str | None
    rest: int
    reserve: int | None
    rule: str
    eased: bool
    sore: bool
    worse: bool


def one_rep_max(moved, reps):
    """The lowest of seven published formulas; a set of one is the maximum itself."""
    n = float(reps)
    if reps == 1:
        return moved
    factors = [
        1 + n / 30, 100 / (101.3 - 2.67123 * n), n**0.1, 100 / (52.2 + 41.9 * math.exp(-0.055 * n)), 1 + 0.025 * n,
        100 / (48.8 + 53.8 * math.exp(-0.075 * n)),
    ]
    if reps <= 10:
        factors.append(36 / (37 - n))
    return moved * min(factors)


class Coach:
    """All that is decided before the days are laid out."""

    def __init__(self, client, goal, gaps):
        self.client, self.c, self.goal, self.gaps = client, client.c, goal, gaps
        self.plate = client.c.school.plate
        self.left_out = []  # movement ids that no candidate stands for, whatever the day
        self.found = {}
        self.rests = False
        self.from_gaps()
        known = [x for x in self.found.values() if not x.instead_of and x.gap and x.rule != "care first"]
        last = lambda gap: not gap.known or gap.share == WHOLE
        closed = lambda gap: not client.is_open(gap.movement)
        self.limiter = min((x.gap for x in known), key=lambda gap: (last(gap), closed(gap), *gap.heaviest_first), default=None)
        self.waits_below()
        self.keep_up()
        self.balance = self.from_65()
        for x in self.found.values():
            x.weight = x.gap.weight if x.gap else Fraction(0)
            x.first = x is self.balance or x.gap is not None and x.gap is self.limiter
            x.goes_on = x.movement in goal.chain and self.client.lately(x.movement) is not None
        self.find_mainstays()

    def waits_below(self):
        """Long off, and what is easier begins anew for the limiter: it waits for that."""
        gap = self.limiter
        if gap and not gap.known and self.client.forgotten(self.c[gap.movement].pattern) != NEVER:
            low = next((x for x in self.found.values() if x.gap is gap and x.rule == "first try"), None)
            if low and low.movement != gap.movement:
                self.left_out.append(gap.movement)

    @property
    def candidates(self):
        return list(self.found.values())

    def find_mainstays(self):
        """Of each kind the heaviest gap with a known number; of the goal's kind also the highest rung with one that the goal needs."""
        kind = lambda x: self.c[x.movement].kind
        known = [x for x in self.candidates if x.block in ("strength", "kept up") and x.rule != "first try" and not x.then]
        for of in {kind(x) for x in known}:
            gaps = [x for x in known if kind(x) == of and x.block == "strength"]
            if gaps:
                min(gaps, key=lambda x: (-x.weight, x.movement)).mainstay = True
        if self.goal.movement in self.c.movements:
            own = self.c[self.goal.movement]
            needed = {leaf.movement for leaf in leaves(own.needs)}
            road = [x for x in known if kind(x) == own.kind and x.movement in needed]
            if road:
                min(road, key=lambda x: (-self.c[x.movement].stage, x.movement)).mainstay = True

    # ------------------------------------------------------------ which variation

    def fits(self, id):
        """Strong enough for sets of it; None where nothing is known."""
        m, client, now = self.c[id], self.client, self.client.now(id)
        if now is None:
            return None
        if m.by_weight and now.kg > 0:
            return self.load(id) >= self.plate
        if client.minor and m.loaded and m.unit == "reps" and m.group:
            return now.amount > MINOR_REPS
        return now.amount >= (FITS_HOLD if m.unit == "s" else max(FITS_AT_LEAST, min(m.of_a_set, FITS_AT_MOST)))

    def too_easy(self, id):
        m, now = self.c[id], self.client.now(id)
        if now is None or m.loaded:
            return False
        return now.amount > EASY_HOLDS * m.of_a_set if m.unit == "s" else now.amount >= m.of_a_set + EASY_REPS

    def harder(self, id):
        """In place of a too easy one: the lowest harder neighbour that fits or is unknown."""
        if not self.too_easy(id):
            return None
        fine = [
            j for j in self.c.harder[id]
            if self.client.may(j) and not self.c[j].lowering and self.fits(j) is not False and not self.client.too_new(j)
        ]
        return min(fine, key=lambda j: (self.c[j].stage, j), default=None)

    def onward(self, id):
        """What goes on once it was shown: the highest known neighbour above it; of what is too easy else the next, to be tried."""
        m, client = self.c[id], self.client
        if not m.group or m.practised:
            return None

        def up(of, fine):
            alike = lambda o: o.phase == m.phase and o.unit == m.unit and not o.loaded
            return min((j for j in self.c.harder[of] if alike(self.c[j]) and fine(j)), key=lambda j: (j not in self.goal.chain, self.c[j].equipment != m.equipment, self.c[j].stage, j), default=None)

        top, known = id, lambda j: client.may(j) and self.fits(j)
        while j := up(top, known):
            top = j
        if top != id:
            return top
        new = lambda j: (client.may(j) or client.only_unsure(j)) and self.fits(j) is None and not client.too_new(j)
        return up(id, new) if self.too_easy(id) else None

    def same_phase(self, id, j):
        wanted = "full" if self.c[id].lowering else self.c[id].phase or "full"
        return (self.c[j].phase or "full") == wanted

    def builders(self, id, plain=False):
        """What could build a movement, nearest first."""
        m, c = self.c[id], self.c

        def fine(j, arms):
            o = c[j]
            return (
                j != id and self.client.may(j) and o.pattern == m.pattern and o.counted and not o.lowering
                and not (plain and o.guarded) and (not arms or o.straight == m.straight)
            )

        named = [leaf.movement for leaf in leaves(m.needs)]
        out = []
        for js, arms in ((c.easier[id], False), (named, True), (c.below([id, *c.easier[id]]), True)):
            out += sorted({j for j in js if fine(j, arms)} - set(out), key=lambda j: (-c[j].stage, j))
        return sorted(out, key=lambda j: not self.same_phase(id, j))

    def builder(self, id, plain=False):
        js = [j for j in self.builders(id, plain) if not self.client.too_new(j)]
        for alike in (True, False):
            for known in (True, None):
                for j in js:
                    if self.same_phase(id, j) == alike and self.fits(j) is known:
                        return j
        return None

    # ------------------------------------------------------------ candidates

    def add(self, id, gap, rule, *, single=False, instead_of=None, block=None, then=None, after=None):
        """A movement stands once: what comes first stays."""
        m = self.c[id]
        if self.client.now(id) is None and not m.mobility:
            rule = "first try"
        self.rests |= gap is not None and (id, single) not in self.found and self.client.waits_lately(id, self.client.today)
        block = block or ("range" if m.mobility else "practice" if m.practised or single else "strength")
        if rule != "first try" and block in ("strength", "kept up") and self.client.was_done(id):
            rule = "done before"
        return self.found.setdefault((id, single), Candidate(id, gap, block, rule, single, instead_of, then=then, after=after))

    def from_gaps(self):
        for gap in sorted(self.gaps.values(), key=lambda gap: gap.heaviest_first):
            if self.client.is_open(gap.movement) or self.client.was_done(gap.movement):
                self.from_gap(gap)
            elif self.client.was_lifted(gap.movement) and (low := self.client.lighter_step(gap.movement)):
                self.add(low, gap, "builder")

    def from_gap(self, gap):
        client, i, m = self.client, gap.movement, self.c[gap.movement]
        now = client.now(i)
        if not client.may(i):
            return self.instead(gap)
        if client.minor and m.loaded and m.lowering:
            return self.left_out.append(i)
        if client.too_new(i):
            return self.eased_in(gap)
        anew = now is None and client.forgotten(m.pattern) != NEVER
        if gap.share == WHOLE and m.counted and client.is_open(i) and not (client.minor and m.loaded):
            up = self.onward(i)
            self.add(i, gap, "show it", then=up)
            return up and self.add(up, gap, "harder", after=None if client.may(up) else i)
        if m.mobility:
            return self.add(i, gap, "range")
        if m.practised and not (anew and m.lowering):
            return self.add(i, gap, "practice")
        if now is None and not anew:
            return self.add(client.gentlest(i), gap, "first try")
        if not anew and self.fits(i):
            j = self.harder(i)
            if not (j and self.fits(j)):
                self.add(i, gap, "the gap itself")
            return j and self.add(j, gap, "harder")
        return self.from_below(gap, anew)

    def eased_in(self, gap):
        """What is not to be tried first: what is known below it, else nothing."""
        m = self.c[gap.movement]
        j = self.builder(m.id, plain=True) if m.group and not m.practised else None
        return self.add(j, gap, "care first") if j and j not in self.gaps else self.left_out.append(m.id)

    def from_below(self, gap, anew):
        i, m, now = gap.movement, self.c[gap.movement], self.client.now(gap.movement)
        itself = not m.lowering and (not m.loaded if anew else not m.guarded and now.amount >= FITS_AT_LEAST)
        j = self.builder(i, plain=anew)
        if j and not (self.too_easy(j) and itself):
            self.add(j, gap, "builder")
            full = m.unit == "reps" and m.phase == "full"
            if not anew and full and 1 <= now.amount <= MOST_FOR_SINGLES and not m.strict and not self.client.minor:
                self.add(i, gap, "singles", single=True)
        elif itself:
            self.add(i, gap, "the gap itself")
        else:
            self.left_out.append(i)

    def instead(self, gap):
        """Of a gap that is spared or without its equipment: the coach's own; of a strength gap else what is nearest."""
        i, m = gap.movement, self.c[gap.movement]
        gentler = lambda o: i not in self.client.spared or no_harder(o, m)

        def fine(j, o):
            return (
                o.pattern == m.pattern and o.straight == m.straight and self.client.may(j) and o.counted and not o.practised
                and (o.phase == m.phase or not o.lowering) and self.fits(j) is not False and not self.client.too_new(j)
                and not self.client.bears_more(j, i) and gentler(o)
                and (self.fits(j) or o.stage <= m.stage and (j in self.goal.chain or j in self.c.easier[i]))
            )

        for one in m.instead:
            j, o = one["do"], self.c.movements.get(one["do"])
            can = o and (o.mobility or o.counted and self.fits(j) is not False) and gentler(o)
            if can and self.client.may(j) and not self.client.too_new(j) and not self.client.bears_more(j, i) and self.client.is_kept_from(m, one):
                return self.add(j, gap, "instead", instead_of=i)
        js = [j for j, o in self.c.movements.items() if fine(j, o)] if m.group and not m.practised else []
        if not js:
            self.rests = True
            return self.left_out.append(i)
        nearest = min(js, key=lambda j: (abs(self.c[j].stage - m.stage), self.c[j].stage, j))
        return self.add(nearest, gap, "instead", instead_of=i)

    def keep_up(self):
        c, client = self.c, self.client
        strength = [x for x in self.found.values() if x.block == "strength"]
        known = {c[x.movement].pattern for x in strength if x.rule not in ("first try", "show it")}
        chain = {c[i].pattern for i in self.goal.chain}
        can = [j for j, m in c.movements.items() if m.group and client.may(j) and m.counted and not m.lowering and not m.practised]
        for pattern in ORDER:
            if pattern in chain and pattern not in known:
                known |= self.keep([j for j in can if c[j].pattern == pattern])
        for group in ("pull", "push", "legs", "core"):
            js = [j for j in can if c[j].group == group and not c[j].guarded]
            if all(GROUPS[pattern] != group for pattern in known):
                known |= self.keep(js)
            of = [x.movement for x in self.found.values() if c[x.movement].group == group and self.stands(x)]
            if of and all(client.heavy_below(j, j) for j in of):  # heavy on what hurts: they have no line
                self.keep([j for j in js if not client.heavy_below(j, j)])
            if not of:
                self.try_one(js)
            self.name_resting(group)
        for j in can:
            did = client.lately(j)
            if j in self.goal.chain and did and did.movement == j and self.fits(j) and not self.too_easy(j):
                self.add(j, None, "goes on", block="kept up")
        if self.rests:
            self.fill(can)
        self.keep_balance()

    def stands(self, x):
        """A line of strength that need not wait for what is over only lately."""
        return x.block in ("strength", "kept up") and not self.client.waits_lately(x.movement, self.client.today)

    def try_one(self, js):
        c = self.c
        unknown = [j for j in js if self.client.now(j) is None and (j, False) not in self.found and not self.client.too_new(j)]
        unknown = [j for j in unknown if not self.client.waits_lately(j, self.client.today)]
        if unknown:
            done = {s.movement for s in self.client.log}
            j = min(unknown, key=lambda j: (j not in done, self.client.gentlest(j) != j, c[j].stage, c[j].straight, len(c[j].classes), j))
            self.add(j, None, "first try", block="kept up")

    def name_resting(self, group):
        """Nothing is known of a group, and what would be tried first of it rests: it is left out by name."""
        c, client = self.c, self.client
        if any(c[x.movement].group == group and x.block in ("strength", "kept up") and x.rule != "first try" for x in self.found.values()):
            return
        plain = [m for m in c.movements.values() if m.group == group and m.counted and not (m.lowering or m.practised or m.guarded)]
        js = [m for m in plain if client.now(m.id) is None and client.could(m.id)]
        lowest = min(js, key=lambda m: (m.stage, m.straight, len(m.classes), m.id), default=None)
        if lowest and not client.may(lowest.id):
            self.left_out.append(lowest.id)

    def fill(self, can):
        """A gap rests and nothing stands in for it: other patterns, a second core line and all plain range have the room."""
        c = self.c
        for pattern in ORDER:
            js = [j for j in can if c[j].pattern == pattern and not c[j].guarded]
            there = lambda: sum(c[x.movement].pattern == pattern and self.stands(x) for x in self.found.values())
            lines = 2 if pattern == "core" else 1
            for _ in range(lines):
                alone = lambda: GROUPS[pattern] in ("core", "legs") or not any(c[x.movement].group == GROUPS[pattern] and self.stands(x) for x in self.found.values())
                if there() < lines and not self.keep(js) and alone():
                    self.try_one(js)
        upright = lambda m: m.pattern == "balance" and set(m.positions) == {"upright"}
        known = lambda x: x.block in ("strength", "kept up") and x.rule != "first try"
        few = sum(map(known, self.found.values())) < 2 or not any(c[x.movement].group == "legs" and self.stands(x) for x in self.found.values())
        if few and not any(upright(c[x.movement]) for x in self.found.values()):
            js = [m for m in c.movements.values() if upright(m) and self.client.may(m.id) and not self.client.too_new(m.id)]
            if js:
                self.add(min(js, key=lambda m: (m.stage, m.id)).id, None, "kept up")
        for j, m in c.movements.items():
            if m.mobility and not m.guarded and self.client.may(j) and not self.client.too_new(j):
                self.add(j, None, "range")

    def keep_balance(self):
        c, client = self.c, self.client
        if any(c[x.movement].pattern == "balance" for x in self.found.values()):
            return
        can = lambda j: client.may(j) and client.now(j) is not None and client.now(j).amount >= 1
        js = [j for j in self.goal.chain if c[j].pattern == "balance" and can(j)]
        if js:
            self.add(min(js, key=lambda j: (-c[j].stage, j)), None, "kept up")

    def keep(self, js):
        """The highest rung that fits and does not stand already, bent arms first; where it is too easy the next. Its pattern."""
        js = [j for j in js if self.fits(j) and (j, False) not in self.found]
        if not js:
            return set()
        j = min(js, key=lambda j: (self.client.is_sore(self.c[j]), self.c[j].straight, -self.c[j].stage, j))
        h = self.harder(j)
        if not (h and self.fits(h)):
            self.add(j, None, "kept up", block="kept up")
        if h:
            self.add(h, None, "harder", block="kept up")
        return {self.c[j].pattern}

    def from_65(self):
        """The upright balance movement of every session."""
        client = self.client
        if client.age is None or client.age < OLD:
            return None
        upright = lambda m: m.pattern == "balance" and set(m.positions) == {"upright"} and client.may(m.id)
        for x in self.found.values():
            if upright(self.c[x.movement]) and x.rule != "show it":
                return x
        all = [m for m in self.c.movements.values() if upright(m)]
        js = [m for m in all if not client.too_new(m.id)]
        if not js:
            self.left_out += [min(all, key=lambda m: (-m.stage, m.id)).id] if all else []
            return None
        j = min(js, key=lambda m: (-m.stage, m.id)).id
        self.found.pop((j, False), None)
        return self.add(j, None, "balance from 65")

    # ------------------------------------------------------------ load

    def reps_loaded(self, m):
        return max(m.of_a_set, MINOR_REPS if self.client.minor else 1)

    def in_plates(self, kg):
        return floor(kg / self.plate) * self.plate

    def load(self, id):
        """Kilograms to add; below one plate only by what is on record of full reps."""
        m, now = self.c[id], self.client.now(id)
        if now is None or now.kg <= 0:
            return self.tried_load(m)
        if m.by_weight:
            return max(self.load_of(id, self.reps_loaded(m)), self.load_from_above(id, self.reps_loaded(m)))
        dose = self.dosed_load(m)
        record = min(now.kg, dose or now.kg) if m.pattern == "exit" else now.kg * OF_RECORD
        return max(self.plate, self.in_plates(record))

    def dosed_load(self, m):
        dose = self.client.kg(m.dose.load)
        return dose if dose and dose > 0 else None

    def tried_load(self, m):
        """Nothing on record: a twentieth of the body, or most of what was lifted of what it needs, at most the dose's, with one side half the standard's and a tenth of the body."""
        client = self.client
        tries = [OF_BODY * client.bodyweight] if client.bodyweight else []
        for leaf in leaves(m.needs):
            if leaf.movement in self.c.movements and self.c[leaf.movement].by_weight:
                tries += [OF_RECORD * kg for kg, reps in self.shown(leaf.movement) if reps >= FIRST_REPS]
        bounds = [dose] if (dose := self.dosed_load(m)) else []
        standard = client.kg(m.standard.load)
        if m.each_side:
            bounds.append(OF_BODY_SIDE * (client.bodyweight or 0))
        if m.each_side and standard and standard > 0:
            bounds.append(OF_STANDARD * standard)
        if not tries and not bounds:
            return self.plate
        return max(self.plate, self.in_plates(min([max(tries), *bounds] if tries else bounds)))

    def shown(self, id):
        """(kg, reps with those left) of the sets since the newest test; after a session that fell short what is known now."""
        client, now = self.client, self.client.now(id)
        since = max(client.forgotten(self.c[id].pattern), client.today - (self.c.school.results_last + 1) * DAY)
        tests = [t for t in client.tests if t.movement == id and since < t.on]
        found = [(now.kg, floor(now.amount))] if now else []
        day = max((t.on for t in tests), default=since)
        log = [s for s in client.log if s.movement == id and s.on > day]
        if not (log and log[-1].missed):
            for t in tests:
                if t.on == day:
                    more = t.reserve
                    reps = min(side.amount + more + (SEVERAL_SETS[1] if side.sets >= SEVERAL_SETS[0] else 0) for side in t.sides)
                    found.append((min(client.kg(side.load, t.bodyweight) or 0 for side in t.sides), floor(reps)))
            found += [(s.kg, self.with_reserve(s)) for s in log]
        return [(kg, reps) for kg, reps in found if kg > 0]

    def with_reserve(self, session):
        return floor(session.best) + min(session.reserve or 0, MOST_RESERVE)

    def carried(self, m):
        """Kilograms of the body that move with it; None where that is not known."""
        return m.share * float(self.client.bodyweight) if self.client.bodyweight and m.share is not None else None

    def one_rep(self, carried, sets):
        sets = [(kg, reps) for kg, reps in sets if reps >= 1]
        sets = [s for s in sets if s[1] >= 2] or sets
        return max((one_rep_max(carried + float(kg), min(reps, len(CHART))) for kg, reps in sets), default=None)

    def load_of(self, id, reps):
        m, sets = self.c[id], self.shown(id)
        heaviest = lambda least: max((kg for kg, n in sets if n >= least), default=0)
        carried, bound = self.carried(m), self.bound(id, reps)
        most = self.one_rep(carried, sets) if carried is not None else None
        if carried is None:
            record, dose = OF_RECORD * heaviest(0), self.dosed_load(m)
            kg = max(min(record, dose) if dose else record, OF_RECORD * heaviest(reps), self.plate)
        else:
            kg = most * CHART[min(reps + CHART_OVER, len(CHART)) - 1] / 100 - carried if most else 0
        steps = floor(kg / (float(self.plate) if isinstance(kg, float) else self.plate))
        held = max(heaviest(reps + CHART_OVER), self.held_lately(id, reps))
        if bound is not None:
            steps = min(steps, floor(bound / self.plate))
            held = held if held <= bound else 0
        return max(0, steps * self.plate, held)

    def shown_above(self, id):
        """What was lifted of the harder step of the family that is not open yet."""
        client = self.client
        ups = [j for j in self.c.harder[id] if client.was_lifted(j) and client.lighter_step(j) == id]
        return [pair for j in ups for pair in self.shown(j)]

    def load_from_above(self, id, reps):
        sets, carried = self.shown_above(id), self.carried(self.c[id])
        most = self.one_rep(carried, sets) if carried is not None else None
        if not most:
            return 0
        kg = most * CHART[min(reps + CHART_OVER, len(CHART)) - 1] / 100 - carried
        return max(0, min(floor(kg / float(self.plate)) * self.plate, max(kg for kg, _ in sets)))

    def held_lately(self, id, reps):
        """The heaviest of two weeks since the test, for as many reps in full with two left; nothing once one fell short."""
        client = self.client
        tested = max((t.on for t in client.tests if t.movement == id), default=NEVER)
        log = [s for s in client.log if s.movement == id and s.on > tested and (client.today - s.on).days < LAPSED]
        if log and log[-1].missed:
            return 0
        return max((s.kg for s in log if s.full and s.did[0] >= reps and (s.reserve or 0) >= LEFT), default=0)

    def leaves(self, id, kg, reps, more=()):
        """Reps that a set leaves by the records; None where that is nothing or not known."""
        can, carried = [], self.carried(self.c[id])
        for sets in ([*self.shown(id), *more], self.shown_above(id)):
            can += [n for known, n in sets if known >= kg]
            if carried is None:
                continue
            moved, most = carried + float(kg), self.one_rep(carried, sets)
            counts = range(1, len(CHART) + 1)
            can += [n for n in counts if most and moved / CHART[n - 1] * 100 <= most + 1e-6]
            for known, done in sets:
                if known < kg and done >= 1:
                    own = one_rep_max(carried + float(known), min(done, len(CHART)))
                    can += [n for n in counts if one_rep_max(moved, n) <= own + 1e-6]
        left = max(can, default=0) - reps
        return min(left, MOST_RESERVE) if left > 0 else None

    def bound(self, id, reps):
        """Never above the heaviest lifted for as many reps times 1.1, or plus a plate if that is more."""
        client = self.client
        sides = [(client.kg(s.load, t.bodyweight) or 0, s.amount) for t in client.tests if t.movement == id for s in t.sides]
        lifted = [kg for kg, n in sides + [(s.kg, s.best) for s in client.log if s.movement == id] if n >= reps]
        return max(self.raised(max(lifted)), self.load_from_above(id, reps)) if lifted else None

    def raised(self, kg):
        return max(OVER_RECORD * kg, kg + self.plate)

    def bound_of_steps(self, id, reps):
        """Of a plan's steps: what the harder step says may be raised too."""
        bound, above = self.bound(id, reps), self.load_from_above(id, reps)
        return max(bound, self.raised(above)) if bound is not None and above else bound

    # ------------------------------------------------------------ what is taken back

    def ease(self, id, on, first_session):
        m, client = self.c[id], self.client
        found = self.back(m, on, first_session)
        if client.eased_on(m, on):
            found = found._replace(rule="pain", comes_back=False, over=True)
        for part in sorted(client.pains):
            pain = client.pains[part][-1]
            known_above = m.counted and any(self.c[up].bears_on(part) and client.now(up) for up in self.c.above[id])
            left = client.stops(part, pain) and not m.mobility  # at most what 4 or 5 of 10 would leave
            rests = left and (part in m.parts or known_above)
            if rests or client.holds(pain) and part in m.parts:
                lightly = not m.bears_on(part)
                if lightly and client.now(id) is None:
                    continue
                worse = rests or not lightly and client.takes_back(pain)
                least = worse and (rests or pain.score >= PAIN_LEAST)
                found = found.with_more(worse, worse, "pain")._replace(sore=True, worse=found.worse or worse, least=found.least or least)
        for what, last in client.ended:
            week = ((on - last).days - 1) // WEEK + 1
            if client.reaches(what, m) and week <= PAUSE_WEEKS:
                found = found.with_more(week != 2, week <= 2, "after a pause", over=True)
        return found

    def back(self, m, on, first_session):
        return Ease() if m.pattern in ("mobility", "exit") else self.after_time_off(m, on, first_session)

    def after_time_off(self, m, on, first_session):
        client = self.client
        foot = client.forgotten(m.pattern)
        own = [s for s in client.log if self.c[s.movement].pattern == m.pattern]
        tested = not own and client.now(m.id) is not None
        log = client.log if tested else own
        days = sorted({s.on for s in log if s.on > foot})
        pairs = list(zip(days, [*days[1:], max(client.today, first_session)]))
        for before, after in reversed(pairs):
            off = (after - before).days
            if off >= LAPSED:
                longer = off >= OFF_LONGER
                since, down = (on - after).days, longer and not tested
                less = (2 if longer else 1) * WEEK
                step = less + (STEP_BACK if down else 0)
                last = self.before_time_off(m.id, foot, before, after, on)
                again = since >= less
                if since >= step + STEP_BACK or again and client.now(m.id) is None:
                    return Ease(most=last)
                easier = not again and (down or m.lowering)
                return Ease(True, easier, "time off", nearly=since >= step, most=last, comes_back=again)
        return Ease()

    def before_time_off(self, id, foot, before, after, on):
        """The last session before time off, unless as much was done again since, or it was tested."""
        client = self.client
        log = [s for s in client.log if s.movement == id]
        old = [s for s in log if foot < s.on <= before]
        if not old or (on - after).days >= NO_MORE or any(t.movement == id and before < t.on <= client.today for t in client.tests):
            return None
        last = old[-1]
        again = any(s.on > before and s.full and s.did[0] >= last.did[0] and s.kg >= last.kg for s in log)
        if last.reserve == 0 and floor(last.did[0]) > 1:  # to failure once is not asked again
            last = last._replace(did=(last.did[0] - 1, *last.did[1:]), reserve=1)
        return None if again else last

    # ------------------------------------------------------------ how much

    def logged(self, id, kg):
        """The newest session since the last test with that load (None: with any), and how many alike, with as much left, end with it."""
        m, client = self.c[id], self.client
        since = max([t.on for t in client.tests if t.movement == id] + [client.forgotten(m.pattern)])
        sessions = [s for s in client.log if s.movement == id and s.on > since and (kg is None or s.kg == kg)]
        if not sessions or (client.today - sessions[-1].on).days >= LAPSED:
            return None, 0
        last, alike = sessions[-1], 0

        def good(s):
            over = (s.reserve or 0) >= LEFT if m.strict else s.did[-1] >= s.did[0] + OVER
            return s.full and over and (s.did[0], s.kg) == (last.did[0], last.kg)

        for s in reversed(sessions):
            if not good(s):
                break
            alike += 1
        return last, alike

    def every(self, m):
        return STRICT_SESSIONS if m.strict else SESSIONS

    def holds_all(self, ease):
        """Nothing moves on."""
        return ease.rule or self.client.has_sign

    def planned_steps(self, m, times, ease):
        return 0 if self.holds_all(ease) else min(MOST_STEPS, times // self.every(m))

    def by_weight(self, id, times, ease):
        """(sets, reps, kg, rule or None, reserve) of full reps with weight on record."""
        m, client = self.c[id], self.client
        kg, least, rule, more = self.load(id), self.reps_loaded(m), None, ()
        reps, sets = least, int(m.dose.sets)
        last, alike = self.logged(id, None)
        earned = alike >= self.every(m)
        if last and last.full and last.did[0] >= least:
            if kg <= last.kg:  # it goes on as it was
                times += 0 if earned else alike
                kg, reps = last.kg, max(least, min(MOST_REPS, floor(last.did[0])))
                sets = min(sets, max(self.sets_of(m, reps, False), len(last.did)))
            if earned and not self.holds_all(ease) and self.is_step(kg):
                kg, rule = kg + self.plate, "strict"
        elif last and last.missed:
            kg, rule = min(kg, last.kg), "what training shows"
        elif (did := client.lately(id)) and did.movement != id and did.full and did.did[0] >= least and did.kg > kg:
            kg, more = did.kg, ((did.kg, self.with_reserve(did)),)
        lately = client.lately(id) if ease.sore else None
        if lately:
            kg, sets = min(kg, lately.kg), min(sets, self.sets_like(lately))
        steps = self.planned_steps(m, times, ease) if self.is_step(kg) else 0
        now, asked, bound = kg, kg + steps * self.plate, self.bound_of_steps(id, reps)
        asked = min(asked, bound) if bound is not None else asked
        old = ease.most if ease.most and ease.most.kg > 0 else None
        if old:
            asked, sets = min(asked, old.kg), min(sets, self.sets_like(old))
        asked *= ease.share
        kg = max(self.plate, asked if asked == kg or old and asked == old.kg else self.in_plates(asked))
        left = self.leaves(id, kg, reps, more)
        if steps and kg > now:  # a plan's step, if all before it was done in full
            left = max(LEFT_STEP, left or 0)
        return sets, reps, kg, rule, left

    def is_step(self, kg):
        """Whether the smallest plate is little enough of what moves."""
        return self.plate <= PLATE_SHARE * ((self.client.bodyweight or 0) + kg)

    def sets_like(self, session):
        return max(SETS[0], len(session.did))

    def amounts(self, id, times, ease):
        """(sets, amount, kg, rule or None, reserve) of a known movement, that stood so often in the weeks before."""
        m, client, now = self.c[id], self.client, self.client.now(id)
        if m.by_weight and now.kg > 0:
            return self.by_weight(id, times, ease)
        hold, below = m.unit == "s", now.amount - 1
        if m.practised:
            amount = min(m.of_a_set, floor(REPS * now.amount)) if m.own_dose else floor(HOLD * now.amount)
            top = now.amount if hold else below
            planned_top = top
        else:
            careful = m.guarded or m.lowering or m.straight
            most = MOST_HOLD if hold else MOST_STRICT_REPS if careful else MOST_REPS
            amount = min(most, floor((HOLD if hold else REPS) * now.amount))
            top = min(most, floor(REPS * now.amount) if hold else below)
            planned_top = top if hold else min(top, now.amount - LEFT)
        fewest = MINOR_REPS if client.minor and m.loaded and not hold and m.group else 1
        step = STEP_HOLD if hold else STEP_REPS
        kg = self.load(id) if m.loaded and now.kg >= 0 else now.kg or None
        last, alike = self.logged(id, now.kg)
        earned = alike >= self.every(m)
        amount, rule = max(fewest, amount), None
        if last and last.full:
            amount = max(amount, floor(last.did[0]))
            if not earned and amount == floor(last.did[0]):
                times += alike
            if earned and not self.holds_all(ease):
                amount, rule = amount + step, "strict" if m.strict else "two for two"
        elif last and last.missed:
            amount, rule = min(amount, floor(last.did[0])), "what training shows"
        amount = max(fewest, min(amount, top))
        steps = self.planned_steps(m, times, ease)
        amount = max(amount, min(amount + steps * step, planned_top))
        sets, lately = self.sets_of(m, amount, hold), client.lately(id) if ease.sore else None
        if lately:
            amount, sets = max(fewest, min(amount, floor(lately.did[0]))), min(sets, self.sets_like(lately))
        old = ease.most
        if old:
            amount = max(fewest, min(amount, floor(old.did[0])))
            sets = sets if m.practised else min(sets, self.sets_like(old))
        if ease.light:
            amount = max(fewest, floor(amount * ease.share))
        left = now.amount - amount
        if old and old.reserve is not None:
            left = min(left, old.reserve + max(0, floor(old.did[0]) - amount))
        reserve = None if hold else min(MOST_RESERVE, max(0, left))
        return sets, amount, kg, rule, reserve

    def sets_of(self, m, amount, hold):
        in_all = m.of_all_sets
        if m.practised:
            low, high = (1 if m.own_dose else ATTEMPTS[0]), ATTEMPTS[1]
        else:
            low, high = SETS
            in_all = min(max(in_all, HELD_IN_ALL[0]), HELD_IN_ALL[1]) if hold else in_all
        return max(low, min(high, floor(Fraction(in_all) / amount + Fraction(1, 2))))

    # ------------------------------------------------------------ a line

    def line(self, x, on, first_session, times, tried, again):
        """The line of a candidate on a day, or None where it has none. `again`: it stood earlier in the plan."""
        id = x.movement
        ease = self.ease(id, on, first_session)
        if ease.easier and not self.c[id].mobility:
            known = [j for j in self.builders(id, plain=True) if self.client.now(j)]
            if not known and (self.c[id].guarded or self.c[id].lowering):
                return None
            if known and self.ease(known[0], on, first_session).least:
                known = [j for j in self.builders(known[0], plain=True) if self.client.now(j) and j in self.c.easier[known[0]]] or known
            id = known[0] if known else id
        id = id if x.single or x.rule == "show it" else self.hands_raised(id)
        m, now = self.c[id], self.client.now(id)
        ease = ease.and_sore(self.ease(id, on, first_session))
        if ease.over and now is None and not m.mobility and not self.back(m, on, first_session).rule:
            if self.client.waits_lately(id, on):
                return None
            ease = ease._replace(light=False, easier=False, nearly=False, rule=None)
        candidate = x
        if x.rule == "show it" and (tried or ease.rule or ease.most):  # trained on until the result is in
            on_with = {"range": "range", "practice": "practice"}.get(x.block) or self.fits(x.movement) and "the gap itself"
            x = replace(x, rule=on_with or x.rule)
        if ease.rule and not m.mobility and (now is None or x.rule == "show it" or x.single):
            return None
        rule, kg, reserve, unit = x.rule, None, None, m.unit
        if m.mobility:
            sets, amount, unit = self.range(x, m, now)
            if x.rule == "show it" and not ease.rule:
                (sets, amount, kg), unit = self.show(x), m.unit
        elif now is None:
            sets, amount, kg, reserve = self.first_try(id, tried)
            rule = "until it is tested" if tried else "first try"
        elif x.rule == "show it":
            sets, amount, kg = self.show(x)
        elif x.single:
            sets, amount, kg = SINGLES, 1, now.kg or None
        else:
            sets, amount, kg, said, reserve = self.amounts(id, 0 if x.block == "kept up" else times, ease)
            if said == "what training shows":
                said, sets = (None, sets) if again else (said, min(sets, SHORT_SETS))
            rule = said or rule
            if x.block == "kept up":
                sets, lately = KEPT_UP_OLDER if self.client.age is not None and self.client.age >= OLDER else KEPT_UP, self.client.lately(id)
                if lately and ease.sore:
                    sets = min(sets, self.sets_like(lately))
        if ease.light:
            sets = max(2, -(-sets // 2))
        rule = ease.rule or rule
        side, weaker = self.sides(m, now)
        return Line(
            candidate, id, int(sets), int(amount), unit, kg, side, weaker, self.rest(m, unit, amount, side), reserve, rule,
            (ease.light or ease.easier) and not ease.comes_back, ease.sore, ease.worse,
        )

    def hands_raised(self, id):
        """Where lying on the belly is left alone: the easier neighbour with the hands raised."""
        m = self.c[id]
        if not (self.client.spares_belly and m.group and m.over_floor):
            return id
        client = self.client
        fine = lambda j, o: (client.may(j) or client.only_unsure(j)) and not o.over_floor and not o.guarded and o.counted and client.now(j)
        js = [j for j in self.c.easier[id] if fine(j, self.c[j])]
        return min(js, key=lambda j: (-self.c[j].stage, j), default=id)

    def range(self, x, m, now):
        if m.unit != "s":
            (sets, amount), unit = RANGE, "s"
        elif now is None:
            (sets, amount), unit = RANGE_UNKNOWN, "s"
        else:
            sets, amount, unit = int(m.dose.sets), max(1, min(m.of_a_set, floor(REPS * now.amount))), "s"
        is_limiter = x.gap is not None and x.gap is self.limiter and now is not None
        return RANGE_LIMITER if is_limiter else sets, amount, unit

    def show(self, x):
        target = x.gap.target
        tries = target.hits / target.per_try if target.hits is not None else None
        kg = self.client.kg(target.load) or None
        if kg is None and self.c[x.movement].loaded:
            now = self.client.now(x.movement)
            kg = now.kg if now.kg > 0 else self.load(x.movement)
        return int(tries or target.sets), target.amount, kg

    def first_try(self, id, tried):
        m, client = self.c[id], self.client
        if m.unit == "s":
            amount, reserve = min(FIRST_CARRY if m.pattern == "carry" else FIRST_HOLD, m.of_a_set), None
        else:
            careful = m.guarded or m.lowering or m.of_a_set <= FIRST_REPS
            amount = min(m.of_a_set, FIRST_CAREFUL_REPS if careful else FIRST_REPS)
            reserve = LEFT if m.guarded or m.lowering or m.pattern == "exit" else None
            if m.loaded and m.group and client.minor:
                amount = MINOR_REPS
        kg = self.load(id) if m.loaded else client.kg(m.dose.load) or None
        again = max(FIRST_SETS, min(AGAIN_SETS, int(m.dose.sets))) if m.own_dose else AGAIN_SETS
        return again if tried else FIRST_SETS, amount, kg, reserve

    def sides(self, m, now):
        if not m.each_side:
            return None, None
        if now is None or now.left is None or now.left == now.right:
            return "each", None
        apart = abs(now.left - now.right)
        better = max(now.left, now.right)
        allowed = SIDES.get(m.unit, 1) * (better if m.counted else 1)
        left_is_weaker = (now.left < now.right) != m.standard.at_most
        return "weaker first", ("left" if left_is_weaker else "right") if apart > allowed else None

    def work(self, m, unit, amount, side):
        """Seconds of one set."""
        each = 1 if unit == "s" else m.each or (sum(map(int, m.tempo.split("-"))) if m.tempo else SECONDS_A_REP + held(m))
        return amount * each * (2 if side else 1)

    def rest(self, m, unit, amount, side):
        if m.own_rest:
            return m.own_rest
        if m.mobility or m.pattern in ("balance", "exit"):
            short = m.mobility or self.work(m, unit, amount, None) <= SHORT_WORK
            return REST_SHORT if short else REST_EASY
        if m.guarded:
            return REST_GUARDED
        return REST_EASY if unit == "s" or m.group == "core" else REST

    def minutes(self, line):
        """Whole minutes of a line, rounded up."""
        m = self.c[line.movement]
        sets = line.sets + (Fraction(1, 2) if line.weaker else 0)
        return math.ceil(sets * (self.work(m, line.unit, line.amount, line.side) + line.rest) / 60)


def no_harder(one, than):
    """No higher a rung than another, and of no caution class that it has not."""
    return one.stage <= than.stage and one.classes <= than.classes


def held(m):
    """Seconds for which each rep is held at one end."""
    return int(m.hold.split()[1]) if m.hold else 0
