"""What stands between a client and the goal: the gaps, what they weigh, and the goal where none is chosen.

Part of the reference for training (see training.py), written only from its specification. The routes are given: how they are
found is held elsewhere.
"""

from fractions import Fraction
from typing import NamedTuple

import readiness
from readiness import TRUE, Group, judge, parse_target

BALANCE_AGE = 65
ONE_LEG = 10  # seconds

WHOLE = 1000  # shares are whole thousandths, rounded down


class Goal(NamedTuple):
    name: str | None  # of the skill, or of the movement
    chosen: bool
    movement: str | None
    target: object
    route: frozenset
    chain: frozenset


class Gap(NamedTuple):
    movement: str
    target: object
    share: int  # of 1000
    known: bool
    opens: tuple  # what asks for it
    weight: Fraction  # weeks to the goal on the longest path, the middle
    weeks: tuple  # the same path, low and high, as far as it can be trained
    until: dict | None  # where it ends for now, and why

    @property
    def heaviest_first(self):
        return -self.weight, -len(self.opens), self.movement


def find_goal(client, routes, asked):
    """The goal asked for, else the client's, else the skill with the largest share owned that is not finished."""
    c = client.c
    name = asked or client.said.get("goal")
    if name is None:
        rest = [s for s in c.skills if routes[s]["movements"]]
        return read_goal(client, routes, min(rest, key=lambda s: nearness(client, routes, s)), False) if rest else no_goal(client)
    return read_goal(client, routes, c.present.get(name, name), True)


def no_goal(client):
    """Every skill is finished: the whole curriculum is what is kept up."""
    return Goal(None, False, None, None, frozenset(), frozenset(client.states))


def nearness(client, routes, skill):
    chain = routes[skill]["chain"]
    owned = sum(client.owns(i) for i in chain)
    return -Fraction(owned, len(chain)), routes[skill]["half_weeks"], skill


def read_goal(client, routes, name, chosen):
    c = client.c
    if name in c.skills:
        movement, target = c.skills[name]["movement"], parse_target(c.skills[name]["target"])
    else:
        movement, target = name, c[name].standard
    way = routes[name]
    return Goal(name, chosen, movement, target, frozenset(way["movements"]), frozenset(way["chain"]))


def untrue(client, tree, asker):
    """The untrue leaves under groups that are not true."""
    if judge(tree, lambda leaf: client.truth(leaf, asker)) == TRUE:
        return []
    if isinstance(tree, Group):
        return [leaf for part in tree.parts for leaf in untrue(client, part, asker)]
    return [tree]


def hardness(client, target):
    """Targets in the order of a ladder, easiest first."""
    amount = -target.amount if target.at_most else target.amount
    return client.kg(target.load) or 0, target.sets, amount, target.secs, target.hits or 0


def share(client, now, target):
    """How much of a target is reached, in thousandths: the least of amount, tries and load."""
    if now is None:
        return 0
    wanted, got = target.amount, now.amount
    if target.at_most:
        parts = [wanted / got if got else Fraction(1)]
    else:
        parts = [got / wanted if wanted else Fraction(1)]
    if target.hits is not None:
        parts.append(now.tries / target.per_try)
    load = client.kg(target.load)
    if load is None:
        parts.append(Fraction(0))
    elif now.kg < load:
        # Less than asked; with help where none is allowed, or none where load is asked, it is 0.
        parts.append(now.kg / load if load > 0 and now.kg > 0 else load / now.kg if load < 0 else Fraction(0))
    return max(0, min(WHOLE, int(min(parts) * WHOLE)))


def find_gaps(client, goal):
    """The gaps by movement."""
    if goal.movement not in goal.route:
        return {}
    asked, askers, queue = {}, {goal.movement: []}, [goal.movement]
    while queue:
        i = queue.pop(0)
        if client.owns(i):
            continue
        for leaf in untrue(client, client.c[i].needs, i):
            j = leaf.movement
            if j not in goal.route:
                continue
            if j not in askers:
                queue.append(j)
            askers.setdefault(j, [])
            asked.setdefault(j, []).append(leaf.target)
            if i not in askers[j]:
                askers[j].append(i)
    target = {i: min(asked.get(i, ()), key=lambda t: hardness(client, t), default=None) for i in askers}
    target[goal.movement] = goal.target
    shares = {i: share(client, client.now(i), target[i]) for i in askers}
    paths, ups = {}, {}

    def longest(i, under=()):
        """Weeks to the goal by the middle, and by both ends along the same path."""
        if i not in paths:
            low, high = client.c[i].weeks
            left = Fraction(WHOLE - shares[i], WHOLE)
            above, ups[i] = (Fraction(0),) * 3, None
            for j in sorted(askers[i]):
                if j not in (*under, i):
                    path = longest(j, (*under, i))
                    if ups[i] is None or path > above:
                        above, ups[i] = path, j
            paths[i] = tuple(a + b for a, b in zip(((low + high) / 2 * left, low * left, high * left), above))
        return paths[i]

    gaps = {
        i: Gap(i, target[i], shares[i], client.now(i) is not None, tuple(sorted(askers[i])), longest(i)[0], longest(i)[1:], None)
        for i in askers
    }
    return {i: ended(client, gaps, ups, gap) for i, gap in gaps.items()}


def short_on_one_leg(client):
    """From 65: what is balanced upright on one leg, by a number below ten seconds on a side."""
    if client.age is None or client.age < BALANCE_AGE:
        return None
    for i in sorted(client.c.movements):
        m = client.c[i]
        if m.pattern == "balance" and set(m.positions) == {"upright"} and m.each_side and m.standard.kind == "time":
            now = client.own_now(i)
            if now and now.left is not None and now.right is not None and min(now.left, now.right) < ONE_LEG:
                return i
    return None


def closed(client, id, short):
    """Why a step cannot be shown, however well it is trained for."""
    if id == short:
        return "falls"
    if not client.has_all(id):
        return "equipment"
    return "age" if client.minor and client.c[id].loaded else None


def ended(client, gaps, ups, gap):
    """The way as far as the first step that is closed, or waits for one that is."""
    short = short_on_one_leg(client)
    order = sorted(gaps.values(), key=lambda g: g.heaviest_first)
    shut = {g.movement: why for g in order if (why := closed(client, g.movement, short))}
    by = {i: i for i in shut}
    for i in shut:
        queue = [i]
        while queue:
            for up in gaps[queue.pop()].opens:
                if up in gaps and up not in by:
                    by[up] = i
                    queue.append(up)
    at = gap.movement
    while at is not None and at not in by:
        at = ups[at]
    if short in shut:
        at, cause = gap.movement, short
    elif at is None:
        return gap
    else:
        cause = by[at]
    weeks = tuple(a - b for a, b in zip(gap.weeks, gaps[at].weeks))
    return gap._replace(weeks=weeks, until={"movement": at, "closed": cause, "why": shut[cause]})
