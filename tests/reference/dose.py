"""Reference implementation of working sets and skill practice, written only from their specification.

Reads one case per line (JSON) on standard input and answers each with one line of JSON:

    case   = {"curriculum": {...}, "school": {...}, "results": {...}, "today": "YYYY-MM-DD", "movements": [ids]}
    answer = {"picks": [{"movement", "target", "why"}], "practice": [{"movement", "target", "when", "why"}],
              "load": {"total", "monotony", "strain"} or null}

The curriculum is that of readiness.py, each movement besides with stage, inverted, lowering, straight, high, waits, unstable,
equipment, weeks_from and dose. The school may also stand inside the curriculum.
The file follows the order of the specification. All numbers prescribed are whole; loads and seconds of each rep are exact
fractions, a load being in kg or in shares of body weight. A line that cannot be read is answered with {"error": text}.
"""

import json
import math
import sys
from datetime import date
from fractions import Fraction
from typing import NamedTuple

import readiness
from readiness import Load, Target, parse_target, sign

MARKS = ("guarded", "inverted", "lowering", "straight", "high", "waits", "unstable")
STEADY = {"guarded", "lowering", "straight", "unstable"}  # moved on by three sessions, not by two
PATTERNS = ("vertical push", "vertical pull", "horizontal push", "horizontal pull", "squat", "hinge", "carry", "core")
KEEP, SHORT, BELOW, ABOVE, UNTESTED = "keep", "short", "below", "above", "untested"
STAY, ON, EASIER, RETURN = "stay", "on", "easier", "return"
NO_LOAD = Load(Fraction(0), "kg")
DAYS_OFF = 14
DAYS_EASIER = 7
MOST_SETS_A_WEEK, FEWEST_SETS_A_WEEK = 15, 6
PRACTISED = 2

# ---------------------------------------------------------------- what comes in

class School(NamedTuple):
    results_last_days: int
    sets: int = 5
    reps: int = 5
    hold_sets: int = 5
    hold_seconds: int = 10
    a_week: int = 2
    practice: str = "after"
    smallest_plate: Fraction = Fraction("1.25")  # kg

class Trained(NamedTuple):
    day: date
    did: list  # whole amounts
    load: Load
    reserve: int

class Best(NamedTuple):
    amount: int
    load: Load

class Movement(NamedTuple):
    """A movement with what the client has done of it."""
    id: str
    stage: int
    pattern: str
    measure: str  # reps, time, other
    marks: frozenset  # those of MARKS that it bears
    at_hand: bool
    weeks_from: int
    dose: Target | None
    secs: Fraction  # of each rep, by the standard
    standard_load: Load
    state: str | None  # None where it has no stage
    best: Best | None
    trained: list  # in written order
    last_tested: date | None

class Prescription(NamedTuple):
    fit: str
    sets: int
    amount: int
    load: Load
    why: str

def whole(number):
    """Rounded down; a number may have come as text to stay exact."""
    return Fraction(str(number or 0)).__floor__()

def load_rank(load):
    """Help below none below added; then kg below bw; then the signed number."""
    return sign(load.value), load.unit == "bw", load.value

def same_load(a, b):
    return a.value == b.value and (a.value == 0 or a.unit == b.unit)

def read_school(case, curriculum):
    said = {"results_last_days": curriculum.get("results_last_days"), **(case.get("school") or curriculum.get("school") or {})}
    school = School(**{name: said[name] for name in School._fields if said.get(name) is not None})
    if school.a_week < 1:
        raise ValueError("a_week is at least 1")
    return school._replace(smallest_plate=Fraction(str(school.smallest_plate)))

def read_trained(present, results, today):
    """Trained entries of each movement, in written order; those of unknown movements, today and days to come count for nothing."""
    trained = {}
    for entry in results.get("trained") or ():
        id, on = present.get(entry["movement"]), entry.get("on")
        day = date.fromisoformat(on) if on else today
        if id is None or day >= today:
            continue
        load = entry.get("with")
        trained.setdefault(id, []).append(Trained(
            day=day, did=[whole(amount) for amount in entry.get("did") or ()],
            load=parse_target(f"1 rep with {load}").load if load else NO_LOAD, reserve=whole(entry.get("in_reserve")),
        ))
    return trained

def read_tested(movements, present, results, results_last, today):
    """(result, in reserve) of the latest day of each movement that counts, in written order."""
    tested = {}
    for entry in results.get("tested") or ():
        id = present.get(entry["movement"])
        result = readiness.read_result(entry, movements[id].standard, None, today) if id else None
        if result is not None and (today - result.day).days <= results_last:
            tested.setdefault(id, []).append((result, whole(entry.get("in_reserve"))))
    for id, kept in tested.items():
        latest = max(result.day for result, _ in kept)
        tested[id] = [(result, reserve) for result, reserve in kept if result.day == latest]
    return tested

def best_set(standard, tested, trained, results_last, today):
    in_reps = standard.kind == "reps"
    if tested:
        bests = []
        for result, reserve in tested:
            amount = whole(result.high if standard.at_most else result.low)
            if in_reps:
                amount += reserve + (2 if result.sets >= 3 else 0)
            bests.append(Best(amount, min(result.loads, key=load_rank)))
        return max(bests, key=lambda best: (load_rank(best.load), best.amount))  # of equals the first written
    recent = [entry for entry in trained if (today - entry.day).days <= results_last]
    if not recent:
        return None
    entry = max(recent, key=lambda entry: entry.day)  # the first written of the latest day
    return Best(max(entry.did, default=0) + (entry.reserve if in_reps else 0), entry.load)

def read_movements(curriculum, results, school, today):
    """Every movement by id, and the present id of each old and present id."""
    plain, present = readiness.read_movements(curriculum)
    client = readiness.read_client(plain, present, results, school.results_last_days, today)
    if curriculum.get("presume", True):
        readiness.presume(plain, client)
    paused = readiness.paused_movements(plain, present, results, today)
    standing = readiness.reachable(plain)
    tested = read_tested(plain, present, results, school.results_last_days, today)
    trained = read_trained(present, results, today)
    have = results.get("have")
    movements = {}
    for said in curriculum["movements"]:
        id = said["id"]
        m, tests, trainings = plain[id], tested.get(id, []), trained.get(id, [])
        state, _ = readiness.state_of(m, client, paused) if id in standing else (None, False)
        movements[id] = Movement(
            id=id, stage=int(said.get("stage") or 0), pattern=m.pattern,
            measure=m.standard.kind if m.standard.kind in ("reps", "time") else "other",
            marks=frozenset(mark for mark in MARKS if said.get(mark)),
            at_hand=have is None or all(any(thing in have for thing in one_of) for one_of in said.get("equipment") or ()),
            weeks_from=int(said.get("weeks_from") or 0),
            dose=parse_target(said["dose"]) if said.get("dose") else None, secs=m.standard.secs,
            standard_load=m.standard.load, state=state,
            best=best_set(m.standard, tests, trainings, school.results_last_days, today),
            trained=trainings, last_tested=tests[0][0].day if tests else None,
        )
    return movements, present

# ---------------------------------------------------------------- dose, fit and prescription

def may_be_trained(m):
    return (
        m.state in ("open", "owned") and m.pattern in PATTERNS and m.measure in ("reps", "time") and m.at_hand
        and (m.best is None or m.best.amount != 0)
    )

def dose_of(m, school):
    """(sets, amount of each set)."""
    if m.dose and m.dose.kind == m.measure:
        return int(m.dose.sets), whole(m.dose.amount)
    return (school.sets, school.reps) if m.measure == "reps" else (school.hold_sets, school.hold_seconds)

def secs_of(m):
    return m.dose.secs if m.dose and m.dose.secs else m.secs

def fit_of(m, school):
    if m.best is None:
        return UNTESTED
    b, amount = m.best.amount, dose_of(m, school)[1]
    if m.measure == "time":
        return ABOVE if b > 3 * amount else KEEP if b >= 5 else SHORT
    if b >= amount + 6:
        return ABOVE
    return KEEP if b >= amount + 2 else SHORT if b >= amount else BELOW

def sessions_a_week(school):
    return min(3, school.a_week)

def within_volume(sets, school):
    """The nearest number of sets a session that makes 6 to 15 a week."""
    fine = [n for n in range(1, MOST_SETS_A_WEEK + 1) if FEWEST_SETS_A_WEEK <= n * sessions_a_week(school) <= MOST_SETS_A_WEEK]
    return min(fine, key=lambda n: abs(n - sets))

def hold_of(b, school):
    """(sets, seconds): three fifths of the best; not 30 s in all: up to two thirds of it; more than 90 s in all: shorter."""
    hold = max(1, b * 3 // 5)
    sets = within_volume(next(n for n in range(1, 31) if n * hold >= 30), school)
    while sets * hold < 30 and 3 * (hold + 1) <= 2 * b:
        hold += 1
    while sets * hold > 90:
        hold -= 1
    return sets, hold

def prescribe(m, school):
    """The prescription of a movement by its own fit."""
    fit = fit_of(m, school)
    if fit == UNTESTED:
        load = NO_LOAD
        if m.dose and m.dose.kind == m.measure and m.dose.load.value:
            load = m.dose.load
        elif m.standard_load.value < 0:
            load = m.standard_load
        gentle = m.marks & {"guarded", "lowering"}
        amount = (2 if gentle else 3) if m.measure == "reps" else (3 if gentle else 5)
        return Prescription(fit, 2, amount, load, "never tested: a first try, then enter the number")
    b, load = m.best
    if m.measure == "time":
        sets, hold = hold_of(b, school)
        why = f"best hold {b} s: sets of {hold} s, {sets * hold} s in all"
        if hold < Fraction(b, 2):
            why += "; less than half of it, to stay within 90 s in all"
        return Prescription(fit, sets, hold, load, why)
    sets, reps = dose_of(m, school)
    sets = within_volume(sets, school)
    if fit == KEEP:
        return Prescription(fit, sets, reps, load, f"{b} in one set: {sets} sets of {reps} leave {b - reps} in reserve")
    if fit == SHORT:
        return Prescription(fit, sets, max(1, reps * 3 // 5), load, f"{b} in one set is close to the limit: shorter sets")
    if fit == BELOW:
        return Prescription(fit, sets, max(1, b - 1), load, f"{b} in one set is below the dose: sets of what you can do")
    why = f"{b} in one set is more than the dose asks, and nothing harder fits today: more reps"
    return Prescription(fit, sets, min(b - 4, 20), load, why)

# ---------------------------------------------------------------- one pick for each group

def hardness(m):
    return m.stage, m.id

def pick_of(group, school):
    """The pick of a group before what was trained; `group` has at least one trainable movement."""
    by_fit = {}
    for m in sorted(group, key=hardness):
        by_fit.setdefault(fit_of(m, school), []).append(m)
    kept = next((by_fit[fit][-1] for fit in (KEEP, SHORT) if fit in by_fit), None)
    untested = by_fit.get(UNTESTED, [])
    hardest = by_fit[ABOVE][-1] if ABOVE in by_fit else None
    if kept and not (hardest and hardest.stage > kept.stage):
        return kept
    if hardest:
        return next((m for m in untested if m.stage > hardest.stage), hardest)
    if BELOW in by_fit:
        untested = [m for m in untested if m.stage < by_fit[BELOW][-1].stage]
    still_open = [m for m in untested if m.state == "open"]
    return (still_open or untested or by_fit[BELOW])[-1]

# ---------------------------------------------------------------- what was trained

def sessions_of(m, load, school, today):
    """The first session of each day after the last test with a load, oldest first."""
    by_day = {}
    for entry in m.trained:
        if same_load(entry.load, load) and not (m.last_tested and entry.day <= m.last_tested) and (today - entry.day).days <= school.results_last_days:
            by_day.setdefault(entry.day, entry)
    return [by_day[day] for day in sorted(by_day)]

def easing(m, group, today, school):
    """Easier for a week from the first training of the group after the last two weeks off; a test since then ends it."""
    if not m.trained:
        return False
    days = sorted({entry.day for entry in m.trained if (today - entry.day).days <= school.results_last_days})
    if m.last_tested:
        days = [m.last_tested] + [day for day in days if day > m.last_tested]
    before = [day for day, after in zip(days, days[1:] + [today]) if (after - day).days > DAYS_OFF]
    if not before:
        return False
    since = [entry.day for x in group for entry in x.trained if entry.day > before[-1]]
    return not since or (today - min(since)).days < DAYS_EASIER

def moved_on_from(m, said, sessions, sets_asked, school):
    def full(session, sets):
        return len(session.did) >= sets and all(amount >= said.amount for amount in session.did)

    if m.marks & STEADY:
        easy = [full(session, min(said.sets, sets_asked)) and session.reserve >= 2 for session in sessions[-3:]]
        return len(easy) == 3 and all(easy)
    least = min(said.sets, least_a_session(school))
    over = [full(session, least) and session.did[-1] >= said.amount + 2 for session in sessions[-2:]]
    return len(over) == 2 and all(over)

def verdict(m, group, said, easier, sets_asked, school, today):
    """What the sessions say of a picked movement that is to be kept or is above its dose."""
    def missed(session):
        return not session.reserve and any(amount < said.amount for amount in session.did)

    if easing(m, group, today, school):
        return RETURN
    sessions = sessions_of(m, said.load, school, today)
    if len(sessions) >= 2 and all(missed(session) for session in sessions[-2:]):
        if easier is None:
            return EASIER
        own = prescribe(easier, school)
        later = [session for session in sessions_of(easier, own.load, school, today) if session.day > sessions[-1].day]
        if not moved_on_from(easier, own, later, sets_asked, school):
            return EASIER
    if not moved_on_from(m, said, sessions, sets_asked, school):
        return STAY
    if "waits" in m.marks and (today - min(entry.day for entry in m.trained)).days < 7 * m.weeks_from:
        return STAY
    return ON

def more(m, said, school):
    """The same movement, moved on."""
    why = "moved on: the dose was done in full"
    if said.load.unit == "kg" and said.load.value > 0:
        plates = max(1, (said.load.value / 10 / school.smallest_plate).__floor__())
        return said._replace(load=Load(said.load.value + plates * school.smallest_plate, "kg"), why=why)
    if said.load.unit == "bw" and said.load.value > 0:
        return said._replace(load=Load(said.load.value + Fraction(1, 40), "bw"), why=why)
    if m.measure == "reps":
        return said._replace(amount=said.amount + 1, why=why)
    return said._replace(amount=max(said.amount, min(said.amount + 2, m.best.amount * 2 // 3, 90 // said.sets)), why=why)

def after_training(m, group, sets_asked, school, today):
    """(movement, prescription) once what was trained has had its say, and what is held too briefly is said."""
    m, said = after_log(m, group, sets_asked, school, today)
    if m.measure == "time" and said.fit != UNTESTED and said.sets * said.amount < 30:
        cause = ", as more sets would be over 15 a week" if (said.sets + 1) * sessions_a_week(school) > MOST_SETS_A_WEEK else ""
        said = said._replace(why=f"{said.why}; less than 30 s in all{cause}")
    return m, said

def after_log(m, group, sets_asked, school, today):
    said = prescribe(m, school)
    easier = max((x for x in group if x.stage < m.stage), key=hardness, default=None)
    says = verdict(m, group, said, easier, sets_asked, school, today) if said.fit in (KEEP, ABOVE) else STAY
    if says == STAY:
        return m, said
    if says == ON:
        others = [x for x in group if x.stage > m.stage and fit_of(x, school) != BELOW]
        other = min(others, key=hardness, default=None)
    else:
        other = easier
    if other is not None:
        own = prescribe(other, school)
        why = {
            ON: f"moved on from {m.id}: {own.why}",
            EASIER: f"{m.id} was missed twice: one step easier. {own.why}",
            RETURN: f"two weeks off {m.id}: one step easier. {own.why}",
        }
        return other, own._replace(why=why[says])
    if says == ON:
        return m, more(m, said, school)
    why = "missed twice" if says == EASIER else "two weeks off"
    if said.sets == least_a_session(school):
        return m, said._replace(amount=max(1, said.amount * 3 // 5), why=f"{why}: shorter sets")
    return m, said._replace(sets=max(least_a_session(school), said.sets - 2), why=f"{why}: fewer sets")

def least_a_session(school):
    return -(-FEWEST_SETS_A_WEEK // sessions_a_week(school))

def even(picks, school):
    """Sets of push and pull in reps, first tries apart, within a third of each other where a week's least allows."""
    counted = [
        i for i, (m, said) in enumerate(picks)
        if m.measure == "reps" and "straight" not in m.marks and said.fit != UNTESTED
    ]
    sides = [[i for i in counted if picks[i][0].pattern.endswith(side)] for side in ("push", "pull")]
    sets = [said.sets for _, said in picks]
    while all(sides):
        push, pull = (sum(sets[i] for i in side) for side in sides)
        if 3 * max(push, pull) <= 4 * min(push, pull):
            break
        heavy = sides[0] if push >= pull else sides[1]
        able = [i for i in heavy if sets[i] > 1 and (sets[i] - 1) * sessions_a_week(school) >= FEWEST_SETS_A_WEEK]
        if not able:
            break
        sets[max(able, key=lambda i: (sets[i], i))] -= 1
    return [
        (m, said if n == said.sets else said._replace(sets=n, why=f"{said.why}; {n} sets, to keep push and pull even"))
        for (m, said), n in zip(picks, sets)
    ]

def practice_of(listed, picked, school):
    fresh = [
        m for m in listed
        if m.state == "open" and m.id not in picked and m.at_hand and m.pattern != "mobility"
        and (m.best is None or m.best.amount != 0)
    ]
    said = []
    for m in sorted(fresh, key=hardness, reverse=True)[:PRACTISED]:
        early = school.practice == "before" or m.marks & {"inverted", "high"} or m.pattern == "balance"
        sets, amount = {"reps": (3, 1), "time": (3, 3), "other": (1, 1)}[m.measure]
        said.append({
            "movement": m.id, "target": target_text(m.measure, sets, amount, m.secs, NO_LOAD),
            "when": "before" if early else "after", "why": "next above what you own: few, fresh attempts",
        })
    return said

# ---------------------------------------------------------------- the load of a week of sessions

def load_of(results, today):
    """Effort times minutes of the last seven days; their mean over their deviation, at most 10; the product."""
    days = [Fraction(0)] * 7
    for session in results.get("sessions") or ():
        ago = (today - (date.fromisoformat(session["on"]) if session.get("on") else today)).days
        if ago in range(7):
            days[ago] += Fraction(session["effort"]) * Fraction(session["minutes"])
    total = sum(days)
    if not total:
        return None
    variance = sum(day * day for day in days) / 7 - (total / 7) ** 2
    monotony = min(10.0, float(total / 7) / math.sqrt(variance)) if variance else 10.0
    return {"total": float(total), "monotony": monotony, "strain": float(total) * monotony}

# ---------------------------------------------------------------- target text

def number_text(number):
    """A finite decimal, exactly, without trailing zeros."""
    digits = 0
    while number * 10**digits % 1:
        digits += 1
    tens = str(int(number * 10**digits)).rjust(digits + 1, "0")
    return f"{tens[:-digits]}.{tens[-digits:]}" if digits else tens

def target_text(measure, sets, amount, secs, load):
    if measure == "other":
        return "done"
    text = f"{sets}x{amount}" if sets > 1 else f"{amount}"
    if measure == "time":
        text += " s"
    elif sets == 1 or secs or load.value:
        text += " rep" if amount == 1 else " reps"
        if secs:
            text += f" of {number_text(secs)} s"
    if load.value:
        text += f" with {number_text(abs(load.value))} {load.unit}" + (" help" if load.value < 0 else "")
    return text

# ---------------------------------------------------------------- the answer

def answer(case):
    curriculum, results = case["curriculum"], case["results"] or {}
    today = date.fromisoformat(case["today"])
    school = read_school(case, curriculum)
    movements, present = read_movements(curriculum, results, school, today)
    listed = [movements[id] for id in dict.fromkeys(present.get(id) for id in case["movements"]) if id]
    groups, chosen = [], []
    for pattern in PATTERNS:
        for straight in (False, True):
            group = [m for m in listed if m.pattern == pattern and ("straight" in m.marks) == straight and may_be_trained(m)]
            if group:
                m = pick_of(group, school)
                groups.append(group)
                chosen.append((m, prescribe(m, school)))
    asked = [said.sets for _, said in even(chosen, school)]
    chosen = [after_training(m, group, sets, school, today) for (m, _), group, sets in zip(chosen, groups, asked)]
    picks = [
        {"movement": m.id, "target": target_text(m.measure, said.sets, said.amount, secs_of(m), said.load), "why": said.why}
        for m, said in even(chosen, school)
    ]
    return {
        "picks": picks, "practice": practice_of(listed, {pick["movement"] for pick in picks}, school),
        "load": load_of(results, today),
    }

def main():
    for line in sys.stdin:
        if not line.strip():
            continue
        try:
            said = answer(json.loads(line, parse_float=str))
        except (ValueError, KeyError, TypeError, ArithmeticError) as fault:
            said = {"error": f"{type(fault).__name__}: {fault}"}
        print(json.dumps(said, ensure_ascii=False), flush=True)

if __name__ == "__main__":
    main()
