"""Reference implementation of readiness, written apart from the program.

Reads one case per line (JSON) on standard input and answers each with one line of JSON:

    case   = {"curriculum": {"presume", "results_last_days", "movements": [...]}, "results": {...}, "today": "YYYY-MM-DD"}
    answer = {"movements": {id: {"state", "presumed", "missing": [{"movement", "share", "target"}]}}, "aside": n}

The file follows the order of the pages: targets, results, what a result says, trees, presumption, pauses, states.
It aims at being read beside the text, not at speed. All numbers are exact fractions; masses are in kg, lengths in
cm, times in s. Truth values are Kleene's: FALSE < UNKNOWN < TRUE.
A line that cannot be read is answered with {"error": text}.
"""

import json
import re
import sys
from dataclasses import dataclass, field
from datetime import date, timedelta
from fractions import Fraction
from typing import NamedTuple

FALSE, UNKNOWN, TRUE = 0, 1, 2
NEVER_PRESUMED = ("mobility", "exit")
NEAR_SHARE = Fraction(8, 10)
NEAR_AMOUNT = {"length": Fraction(3), "angle": Fraction(10)}
EQUAL_WITHIN = Fraction(1, 10**6)  # kg, only where bw was converted

# ---------------------------------------------------------------- targets (page 2)

NUMBER = r"\d+(?:\.\d+)?|\.\d+"
TARGET = re.compile(
    rf"""(?P<most>atmost)?
    (?:(?P<sets>\d+)x)?
    (?: (?P<time>{NUMBER})(?P<time_unit>s|min)(?:in(?P<hits>\d+)of(?P<tries>\d+)tr(?:ies|y))?
      | (?P<length>{NUMBER})(?P<length_unit>cm|in)
      | (?P<angle>{NUMBER})deg
      | (?P<reps>{NUMBER})(?:reps?)?(?:of(?P<secs>{NUMBER})s)?
      | (?P<done>done|notdone)
    )
    (?:with(?P<load>{NUMBER})(?P<load_unit>kg|lb|bw)(?P<help>help)?)?
    (?:eachside)?""",
    re.VERBOSE,
)
UNIT = {
    "s": Fraction(1), "min": Fraction(60), "cm": Fraction(1), "in": Fraction("2.54"),
    "kg": Fraction(1), "lb": Fraction("0.45359237"), "bw": Fraction(1),
}

class Load(NamedTuple):
    """Added load; help counts as negative."""
    value: Fraction
    unit: str  # kg or bw

class Target(NamedTuple):
    text: str
    kind: str  # reps, time, length, angle, done
    at_most: bool
    sets: Fraction
    amount: Fraction
    secs: Fraction  # of each rep; 0 where not said
    load: Load
    hits: Fraction | None  # None: without tries
    per_try: Fraction | None

def parse_target(text):
    text = str(text)
    squeezed = re.sub(r"\s+", "", text.lower().replace("×", "x"))
    found = TARGET.fullmatch(squeezed)
    if not found:
        raise ValueError(f"not a target: {text!r}")
    part = found.groupdict()
    for kind in ("time", "length", "angle", "reps", "done"):
        if part[kind] is not None:
            break
    unit = UNIT[part.get(kind + "_unit") or "s"]
    amount = Fraction(part["done"] == "done") if kind == "done" else Fraction(part[kind]) * unit
    load = Load(Fraction(0), "kg")
    if part["load"]:
        value = Fraction(part["load"]) * UNIT[part["load_unit"]] * (-1 if part["help"] else 1)
        load = Load(value, "bw" if part["load_unit"] == "bw" else "kg")
    hits = Fraction(part["hits"]) if part["tries"] else None
    return Target(
        text=text, kind=kind, at_most=bool(part["most"]), sets=Fraction(part["sets"] or 1), amount=amount,
        secs=Fraction(part["secs"] or 0), load=load, hits=hits,
        per_try=hits / Fraction(part["tries"]) if part["tries"] else None,
    )

def parse_mass(text):
    found = re.fullmatch(rf"({NUMBER})(kg|lb)", re.sub(r"\s+", "", str(text).lower()))
    if not found:
        raise ValueError(f"not a body weight: {text!r}")
    return Fraction(found[1]) * UNIT[found[2]]

def compare_loads(a, b, bodyweight):
    """-1, 0 or 1; None where bw stands against kg and no body weight is known."""
    if sign(a.value) != sign(b.value):  # no load, or help against added load: needs no body weight
        return sign(sign(a.value) - sign(b.value))
    if a.unit == b.unit or a.value == 0:
        return sign(a.value - b.value)
    if bodyweight is None:
        return None
    difference = in_kg(a, bodyweight) - in_kg(b, bodyweight)
    return 0 if abs(difference) <= EQUAL_WITHIN else sign(difference)

def sign(number):
    return (number > 0) - (number < 0)

def in_kg(load, bodyweight):
    return load.value * bodyweight if load.unit == "bw" else load.value

def asks_at_least(t, u):
    """Between needs: whether T asks at least what U asks. Here bw and kg never compare."""
    if t.kind != u.kind or t.at_most != u.at_most:
        return False
    if u.at_most:
        return t.amount <= u.amount
    if t.sets < u.sets or t.amount < u.amount or t.secs < u.secs:
        return False
    if compare_loads(t.load, u.load, None) not in (0, 1):
        return False
    if u.hits is None:
        return True
    return t.hits is not None and t.hits >= u.hits and t.per_try >= u.per_try

# ---------------------------------------------------------------- results (page 2)

class Result(NamedTuple):
    """One tested entry; of two sides the worse in every part (`high` is the worse amount for "at most").

    `loads` keeps the load of each side, because the smaller may not be known before they meet a target.
    """
    day: date
    sets: Fraction
    low: Fraction
    high: Fraction
    secs: Fraction
    loads: tuple
    hits: Fraction
    per_try: Fraction
    all_out: bool  # nothing left in reserve
    bodyweight: Fraction | None

def read_result(entry, standard, since, person_bodyweight, today):
    """The Result of an entry for a known movement, or None where it is kept aside."""
    on = entry.get("on")
    day = date.fromisoformat(on) if on else today
    if day > today or since is not None and day < since:
        return None
    if entry.get("got") is not None:
        texts = [entry["got"]]
    elif entry.get("left") is not None and entry.get("right") is not None:
        texts = [entry["left"], entry["right"]]
    else:
        return None
    sides = [parse_target(text) for text in texts]
    if any(side.kind != standard.kind for side in sides):
        return None
    own = entry.get("bodyweight")
    return Result(
        day=day,
        sets=min(side.sets for side in sides),
        low=min(side.amount for side in sides),
        high=max(side.amount for side in sides),
        secs=min(side.secs for side in sides),
        loads=tuple(side.load for side in sides),
        hits=min(Fraction(1) if side.hits is None else side.hits for side in sides),
        per_try=min(Fraction(1) if side.hits is None else side.per_try for side in sides),
        all_out=Fraction(str(entry.get("in_reserve") or 0)) == 0,
        bodyweight=parse_mass(own) if own is not None else person_bodyweight,
    )

# ---- what a result says

def plain_parts(result, target):
    """(got, wanted) of every part but the load; a target without tries looks at the other parts only."""
    parts = [(result.sets, target.sets), (result.low, target.amount), (result.secs, target.secs)]
    if target.hits is not None:
        parts += [(result.hits, target.hits), (result.per_try, target.per_try)]
    return parts

def meets(result, target):
    """TRUE, FALSE, or UNKNOWN: it might meet, but its load cannot be compared."""
    if target.at_most:
        return TRUE if result.high <= target.amount else FALSE
    if any(got < wanted for got, wanted in plain_parts(result, target)):
        return FALSE
    orders = [compare_loads(load, target.load, result.bodyweight) for load in result.loads]
    if -1 in orders:
        return FALSE
    return UNKNOWN if None in orders else TRUE

def misses(result, target):
    if meets(result, target) != FALSE:
        return False
    if target.at_most:
        return True
    if not result.all_out or any(wanted < got for got, wanted in plain_parts(result, target)):
        return False
    orders = [compare_loads(load, target.load, result.bodyweight) for load in result.loads]
    return -1 in orders or 0 in orders  # the smaller load of the sides is no larger than the target's

def leaf_by_results(results, target):
    """The leaf by the results of the latest day (at least one)."""
    says = [meets(result, target) for result in results]
    if TRUE in says:
        return TRUE
    if UNKNOWN in says:
        return UNKNOWN
    return FALSE if any(misses(result, target) for result in results) else UNKNOWN

def ratio(got, wanted):
    return Fraction(1) if wanted == 0 else got / wanted

def load_ratio(load, target_load, bodyweight):
    order = compare_loads(load, target_load, bodyweight)
    if order is None:
        return Fraction(0)
    if order >= 0:
        return Fraction(1)
    # Less than the target's: with help where none is allowed, or nothing where load is asked, the share is 0.
    if target_load.value == 0 or sign(load.value) != sign(target_load.value):
        return Fraction(0)
    got, wanted = load.value, target_load.value
    if load.unit != target_load.unit:
        got, wanted = in_kg(load, bodyweight), in_kg(target_load, bodyweight)
    return got / wanted if wanted > 0 else wanted / got

def ratios(result, target):
    """(ratio of the amount, ratios of the other parts)."""
    if target.at_most:  # 1 where the target is 0, too
        return (target.amount / result.high if target.amount and result.high else Fraction(1)), []
    sets, amount, *rest = [ratio(got, wanted) for got, wanted in plain_parts(result, target)]
    return amount, [sets, *rest, *(load_ratio(load, target.load, result.bodyweight) for load in result.loads)]

def share(results, target):
    """In whole thousandths, of the result with the greatest share; None where untested."""
    if not results:
        return None
    least = [min(Fraction(1), amount, *others) for amount, others in (ratios(result, target) for result in results)]
    return int(max(least) * 1000)

def near_miss(results, target):
    """Whether a result of the day misses the target, within the limit."""
    for result in results:
        if not misses(result, target):
            continue
        amount, others = ratios(result, target)
        if target.kind in NEAR_AMOUNT:
            short = result.high - target.amount if target.at_most else target.amount - result.low
            near = short <= NEAR_AMOUNT[target.kind]
        else:
            near = amount >= NEAR_SHARE
        if near and all(other >= NEAR_SHARE for other in others):
            return True
    return False

# ---------------------------------------------------------------- trees

class Leaf(NamedTuple):
    movement: str
    target: Target

class Group(NamedTuple):
    """At least k of the parts; `all of` has k = all of them, `any of` k = 1."""
    k: int
    parts: tuple

def parse_tree(tree):
    if "movement" in tree:
        return Leaf(tree["movement"], parse_target(tree["target"]))
    if "all" in tree:
        parts = tuple(parse_tree(part) for part in tree["all"])
        return Group(len(parts), parts)
    if "any" in tree:
        return Group(1, tuple(parse_tree(part) for part in tree["any"]))
    return Group(tree["at_least"], tuple(parse_tree(part) for part in tree["of"]))

def leaves(tree):
    if isinstance(tree, Leaf):
        return [tree]
    return [leaf for part in tree.parts for leaf in leaves(part)]

def judge(tree, value_of):
    """Kleene's value of a tree, `value_of` giving that of a leaf."""
    if isinstance(tree, Leaf):
        return value_of(tree)
    values = [judge(part, value_of) for part in tree.parts]
    if values.count(TRUE) >= tree.k:
        return TRUE
    return UNKNOWN if values.count(TRUE) + values.count(UNKNOWN) >= tree.k else FALSE

def necessary(leaf, tree):
    """The tree is false with that leaf, and every leaf of its movement that asks at least as much, false; others true."""
    def value_of(other):
        harder = other.movement == leaf.movement and asks_at_least(other.target, leaf.target)
        return FALSE if harder else TRUE
    return judge(tree, value_of) == FALSE

def repair(tree, value_of, share_of):
    """The cheapest repair: (number of leaves, total shortfall in thousandths, leaves in written order)."""
    if isinstance(tree, Leaf):
        if value_of(tree) == TRUE:
            return 0, 0, []
        return 1, 1000 - (share_of(tree) or 0), [tree]
    costs = [repair(part, value_of, share_of) for part in tree.parts]
    by_cost = sorted(range(len(costs)), key=lambda i: costs[i][:2])  # stable: then what is written first
    chosen = [costs[i] for i in sorted(by_cost[:tree.k])]
    return sum(c[0] for c in chosen), sum(c[1] for c in chosen), [leaf for c in chosen for leaf in c[2]]

# ---------------------------------------------------------------- the curriculum and the client

class Movement(NamedTuple):
    id: str
    pattern: str
    standard: Target
    each_side: bool
    guarded: bool  # inverted or loaded
    lowering: bool
    stresses: frozenset
    classes: frozenset  # of caution
    needs: Group
    since: date | None  # the first day of today's way to measure it

def read_movements(curriculum):
    """(movements by id, present id of each old and present id)."""
    movements, present = {}, {}
    for m in curriculum["movements"]:
        movements[m["id"]] = Movement(
            id=m["id"], pattern=m.get("pattern", ""), standard=parse_target(m["standard"]),
            each_side=bool(m.get("each_side")), guarded=bool(m.get("guarded")),
            lowering=bool(m.get("lowering")), stresses=frozenset(m.get("stresses") or ()), classes=frozenset(m.get("classes") or ()),
            needs=parse_tree(m.get("needs") or {"all": []}),
            since=date.fromisoformat(m["since"]) if m.get("since") else None,
        )
        for old in m.get("was") or ():
            present[old] = m["id"]
    present.update({id: id for id in movements})
    return movements, present

def reachable(movements, without=frozenset()):
    """The movements that have a stage once those in `without` are taken out: the least solution."""
    reached, grew = set(), True
    while grew:
        grew = False
        for m in movements.values():
            if m.id in reached or m.id in without:
                continue
            if judge(m.needs, lambda leaf: TRUE if leaf.movement in reached else FALSE) == TRUE:
                reached.add(m.id)
                grew = True
    return reached

@dataclass
class Client:
    """What the latest day of each movement says, and what is presumed from it."""
    latest: dict = field(default_factory=dict)  # movement -> results of its latest day within results_last
    presumed: dict = field(default_factory=dict)  # movement -> targets presumed
    aside: int = 0

    def owns_by_result(self, m):
        return m.id in self.latest and leaf_by_results(self.latest[m.id], m.standard) == TRUE

    def presumed_at(self, movement, target):
        return any(asks_at_least(t, target) for t in self.presumed.get(movement, ()))

    def leaf_value(self, leaf, guarded):
        """A leaf in the needs of a movement; under a guarded one presumption does not count."""
        if leaf.movement in self.latest:
            return leaf_by_results(self.latest[leaf.movement], leaf.target)
        if not guarded and self.presumed_at(leaf.movement, leaf.target):
            return TRUE
        return UNKNOWN

def read_client(movements, present, results, results_last_days, today):
    client = Client()
    bodyweight = results.get("bodyweight")
    bodyweight = parse_mass(bodyweight) if bodyweight is not None else None
    for entry in results.get("tested") or ():
        id = present.get(entry["movement"])
        result = read_result(entry, movements[id].standard, movements[id].since, bodyweight, today) if id else None
        if result is None:
            client.aside += 1
            continue
        if (today - result.day).days > results_last_days:
            continue
        kept = client.latest.setdefault(id, [])
        if kept and result.day > kept[0].day:
            kept.clear()
        if not kept or result.day == kept[0].day:
            kept.append(result)
    for pain in results.get("pain") or ():
        client.aside += day_or(pain.get("on"), today) > today
    return client

def presume(movements, client):
    """From each movement owned by a result, and through each one presumed, down the necessary leaves."""
    queue = [m for m in movements.values() if client.owns_by_result(m)]
    seen = {m.id for m in queue}
    while queue:
        tree = queue.pop(0).needs
        for leaf in leaves(tree):
            x = movements.get(leaf.movement)
            if x is None or x.id in client.latest or x.each_side or x.pattern in NEVER_PRESUMED:
                continue
            if not necessary(leaf, tree):
                continue
            client.presumed.setdefault(x.id, []).append(leaf.target)
            if x.id not in seen:
                seen.add(x.id)
                queue.append(x)

A_YEAR = 366  # days: the longest that a clearance lasts
GROWN = 18  # years
GROWTH_PLATES = ("wrist", "elbow", "lower-back", "hip", "knee", "ankle", "foot")
PAIN_EASES, PAIN_RESTS = 3, 6  # from so much on, out of 10; the neck rests from the first
ALONE_FROM = 12  # years: younger ones neither test nor train by a page

def day_or(text, usual):
    return date.fromisoformat(text) if text else usual

def is_cleared(entry, results, today):
    """A clearance of its class, of the day of the entry or later, that has not run out."""
    for of in results.get("cleared") or ():
        on = day_or(of.get("on"), today)
        last = min(day_or(of.get("until"), date.max), on + timedelta(days=A_YEAR))
        if of["class"] == entry.get("class") and day_or(entry.get("on"), today) <= on <= today <= last:
            return True
    return False

def is_resting(part, score, signs, growing):
    """Whether a part rests at this pain: at any where it still grows."""
    from_ = PAIN_EASES if part == "neck" else PAIN_RESTS
    return score >= from_ or bool(signs) or growing and part in GROWTH_PLATES and score > 0

def worst_of_days(pains, today):
    """(day, part, score, next morning, signs) of each pain: of a part and a day the highest numbers and every sign count."""
    of_day = {}
    for pain in pains:
        of_day.setdefault((day_or(pain.get("on"), today), pain["part"]), []).append(pain)
    out = []
    for pain in pains:
        key = day_or(pain.get("on"), today), pain["part"]
        same = of_day[key]
        mornings = [p["next_morning"] for p in same if p.get("next_morning") is not None]
        signs = {sign for p in same for sign in p.get("signs") or ()}
        out.append((*key, max(p["score"] for p in same), max(mornings, default=0), tuple(sorted(signs))))
    return out

def hurting_parts(results, today):
    """The parts whose newest pain is above 5, in the neck above 2, came with a sign, or is above 0 in what still grows."""
    born = results.get("born")
    growing = born is not None and today.year - int(born) - 1 < GROWN
    newest = {}
    for on, part, score, _, signs in sorted(worst_of_days(results.get("pain") or (), today)):
        if on <= today:
            newest[part] = score, signs
    return {part for part, (score, signs) in newest.items() if is_resting(part, score, signs, growing)}

def screening(results, today):
    """What the health questions say: a clinician's word runs out, and then they say ask again."""
    born = results.get("born")
    if born is not None and today.year - int(born) - 1 < ALONE_FROM:
        return "ask"
    of = results.get("screened")
    if not of or day_or(of.get("on"), today) > today:
        return None
    if of.get("until") and today > min(date.fromisoformat(of["until"]), day_or(of.get("on"), today) + timedelta(days=min(of.get("lasts") or A_YEAR, A_YEAR))):
        return "ask"
    return of["says"]

def paused_movements(movements, present, results, today):
    """What is paused, restricted, hurting or waits for regular exercise, and what cannot be reached without it.

    A part, a class or a pattern reaches the movements that have it and no others; a movement, and an exit that is so
    reached, also what cannot be reached without it.
    """
    direct, missing = set(), set()

    def spare(reaches, itself=False):
        for m in movements.values():
            if reaches(m):
                direct.add(m.id)
                if itself or m.pattern == "exit":
                    missing.add(m.id)
    for entry in [*(results.get("paused") or ()), *(results.get("restrict") or ())]:
        on, until = day_or(entry.get("on"), today), day_or(entry.get("until"), date.max)
        if not on <= today <= until or is_cleared(entry, results, today):
            continue
        if entry.get("movement") is not None:
            spare(lambda m: m.id == present.get(entry["movement"]), itself=True)
        elif entry.get("part") is not None:
            spare(lambda m: entry["part"] in m.stresses)
        elif entry.get("class") is not None:
            spare(lambda m: entry["class"] in m.classes)
        else:
            spare(lambda m: entry["pattern"] == m.pattern)
    for part in hurting_parts(results, today):
        spare(lambda m: part in m.stresses)
    if screening(results, today) == "light":
        spare(lambda m: m.guarded or m.lowering)
    return direct | (set(movements) - reachable(movements, without=missing))

# ---- states

def almost(m, client, value_of):
    """Whether the needs would be true if one movement with a near miss reached the target that it misses."""
    for near in leaves(m.needs):
        results = client.latest.get(near.movement, [])
        if value_of(near) == TRUE or not near_miss(results, near.target):
            continue

        def reached(leaf):
            if leaf.movement == near.movement and asks_at_least(near.target, leaf.target):
                return TRUE
            return value_of(leaf)
        if judge(m.needs, reached) == TRUE:
            return True
    return False

def state_of(m, client, paused):
    """(state, whether owned only by presumption)."""
    def value_of(leaf):
        return client.leaf_value(leaf, m.guarded)
    if m.id in paused:
        return "paused", False
    if client.owns_by_result(m):
        return "owned", False
    if client.presumed_at(m.id, m.standard):
        return "owned", True
    needs = judge(m.needs, value_of)
    if needs == TRUE:
        return "open", False
    if almost(m, client, value_of):
        return "almost", False
    return ("not yet" if needs == FALSE else "test first"), False

def missing_of(m, client):
    def share_of(leaf):
        return share(client.latest.get(leaf.movement, []), leaf.target)
    missing = {}
    for leaf in repair(m.needs, lambda leaf: client.leaf_value(leaf, m.guarded), share_of)[2]:
        missing.setdefault((leaf.movement, leaf.target.text), {
            "movement": leaf.movement, "share": share_of(leaf), "target": leaf.target.text,
        })
    return list(missing.values())

def answer(case):
    curriculum, results = case["curriculum"], case["results"] or {}
    today = date.fromisoformat(case["today"])
    movements, present = read_movements(curriculum)
    client = read_client(movements, present, results, curriculum["results_last_days"], today)
    if curriculum.get("presume", True):
        presume(movements, client)
    paused = paused_movements(movements, present, results, today)
    standing = reachable(movements)
    said = {}
    for m in movements.values():
        if m.id in standing:
            state, presumed = state_of(m, client, paused)
            said[m.id] = {"state": state, "presumed": presumed, "missing": missing_of(m, client)}
    return {"movements": said, "aside": client.aside}

def main():
    for line in sys.stdin:
        if not line.strip():
            continue
        try:
            said = answer(json.loads(line, parse_float=str))
        except (ValueError, KeyError, TypeError) as fault:
            said = {"error": f"{type(fault).__name__}: {fault}"}
        print(json.dumps(said, ensure_ascii=False), flush=True)

if __name__ == "__main__":
    main()
