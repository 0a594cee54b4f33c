"""Reference implementation of training, written only from its specification: what stands between a client and the goal, which of
it can be worked on, how much, and four weeks of it.

Reads one case per line (JSON) on standard input and answers each with one line of JSON:

    case   = {"curriculum": {...}, "results": {...}, "today": "YYYY-MM-DD", "skill": id or null,
              "routes": {skill or goal: {"movements": [ids], "half_weeks": n, "chain": [ids]}}}
    answer = {"goal", "refused", "conditions", "limiter", "sessions", "retest", "week_sets"}

The curriculum is that of readiness.py, each movement besides with stage, family, place, phase, straight, load, classes,
positions, inverted, loaded, equipment, weeks, dose and share; the school's dose, plate and warm-up; the skills with their goals.
The answer is that of the program but for its sentences: `conditions` are counted, `warm_up` holds the school's own lines and how
many more there are, `left_out` holds ids. A line that cannot be read is answered with {"error": text}.

client.py says what is known, gaps.py what is missing, session.py what stands for it; here the days are laid out.
"""

import json
import sys
from datetime import date
from fractions import Fraction

from client import DAY, GROWN, LAPSED, MOST_RESERVE, NEVER, OLD, ORDER, Client, Curriculum, floor
from gaps import WHOLE, find_gaps, find_goal
from readiness import leaves
from session import Coach, no_harder

WEEKS, DAYS = 4, 7
WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
WARM_UP, MOST_WARM_UP = Fraction(1, 5), 10
BLOCK = Fraction(1, 4)
LINES, LINES_MOST = 5, 7
FIRST_TRIES, FIRST_TRIES_NEW, FIRST_TRIES_BACK, FEW_KNOWN = 2, 4, 6, 3
LONG_HOLD, BREATH_LINES = 10, 1
OVERDUE, OVERDUE_LINES = 7, 2
SHOWN = 2
APART = 2  # days between two trainings of one group
OUT_FROM = 14  # days of a plan after which a way out comes though what it needs is only tried
KEPT_A_WEEK = 2
IN_TURN = 14  # days
CAP, CAP_TRAINED, TRAINED_DAYS = 10, 15, 84
LOG_DAYS, FIRST_WEEK, RISE = 21, 6, Fraction(4, 3)
TO_COME, HEAVY_SETS = 3, 4
LEAST_EASY, LEAST_EASY_HOLD = 2, 5
FEWEST_SETS, FEWEST_ATTEMPTS = 2, 3
TESTS, TESTS_OF_A_KIND, TESTS_STOOD, RUNS_OUT = 6, 2, 2, 28
TESTS_A_DAY = 3
SECOND_TEN = 16
RANGE_LINES, SORE_LINES = 2, 3
KEPT_SETS = 2
BLOCKS = ("practice", "strength", "kept up", "range")


class Planner:
    def __init__(self, client, coach, unhurt=None):
        self.client, self.coach, self.c, self.unhurt = client, coach, client.c, unhurt
        self.weeks = [self.dates(w) for w in range(WEEKS)]
        self.trained, self.heavy, self.stood = {}, {}, {}
        for s in client.log:
            self.note(self.c[s.movement], s.on, True)
            self.stood.setdefault(s.movement, set()).add(s.on)
        self.tried, self.week_sets, self.has_full = set(), {}, False
        self.full = {}  # of each movement in a block the newest line of a full week
        self.sore = {}  # full weeks in which a kind could not grow
        few = [x for x in coach.candidates if x.rule not in ("first try", "show it", "range")]
        self.few = len(few) < FEW_KNOWN
        long_off = any(client.forgotten(pattern) != NEVER for pattern in (*ORDER, "balance"))
        self.first_tries = (FIRST_TRIES_BACK if long_off else FIRST_TRIES_NEW) if self.few else FIRST_TRIES
        self.warming = min(MOST_WARM_UP, floor(WARM_UP * client.minutes))

    def dates(self, week):
        days = [self.client.today + (DAYS * week + d) * DAY for d in range(DAYS)]
        if self.client.days:
            return [d for d in days if WEEKDAYS[d.weekday()] in self.client.days]
        return [days[DAYS * k // self.client.a_week] for k in range(self.client.a_week)]

    def note(self, m, on, as_strength):
        if as_strength and m.group:
            self.trained.setdefault(m.group, set()).add(on)
        for part in m.heavy_parts:
            self.heavy.setdefault(part, set()).add(on)

    def is_lighter(self, week):
        days = sorted({s.on for s in self.client.log}) + [self.client.today]
        begun = days[0]
        for before, after in zip(days, days[1:]):
            if (after - before).days >= LAPSED:
                begun = after
        since = (self.client.today + DAYS * week * DAY - begun).days // DAYS
        return (since + 1) % self.c.school.lighter_every == 0

    def times(self, id, on, days):
        return sum(0 < (on - d).days <= days for d in self.stood.get(id, ()))

    def ceiling(self, kind, full_weeks, sore):
        """Hard sets of a kind in a week of the plan."""
        client = self.client
        log = [s for s in client.log if self.c[s.movement].kind == kind and (client.today - s.on).days <= LOG_DAYS]
        mean = Fraction(0)
        if log:
            mean = Fraction(sum(len(s.did) for s in log) * DAYS, max(DAYS, (client.today - log[0].on).days))
        trained = client.log and (client.today - client.log[0].on).days >= TRAINED_DAYS
        most = CAP_TRAINED if trained else CAP
        if sore:
            return min(most, floor(max(mean, KEPT_SETS * KEPT_A_WEEK)))
        return min(most, floor(max(FIRST_WEEK, mean * RISE) * RISE ** max(0, full_weeks - self.sore.get(kind, 0))))

    def keeps(self, x, on):
        """Of the goal's chain, trained lately, and not yet twice in seven days."""
        return x.goes_on and self.times(x.movement, on, 6) < KEPT_A_WEEK

    def is_off(self, x):
        """It was shown, and something else goes on; or it waits for what is to be shown."""
        return bool(x.then) and x.movement in self.tried or bool(x.after) and x.after not in self.tried

    def mainstay_due(self, x, on):
        """What its kind is trained by, twice in seven days; one session of the week is left to what is new."""
        return x.mainstay and self.times(x.movement, on, 6) < min(KEPT_A_WEEK, max(0, len(self.weeks[0]) - 1))

    def has_to_come(self, x, on):
        """Two sets of its kind's week are left for it, beyond the share of a session."""
        if x.block not in ("strength", "kept up") or self.is_off(x):
            return False
        tried = x.movement in self.tried or x.rule not in ("first try", "show it")
        late = x.gap is not None and not self.times(x.movement, on, 6)
        return self.keeps(x, on) or tried and (late or self.mainstay_due(x, on))

    # ------------------------------------------------------------ in turn

    def in_turn(self, on):
        weight = lambda x: (-x.weight, x.movement, x.single)
        others = lambda x: not self.keeps(x, on)
        new = lambda x: x.rule == "first try" and x.block in ("strength", "kept up")
        turn = lambda x: (others(x), self.times(x.movement, on, IN_TURN), new(x), *weight(x))
        every_time = [x for x in self.coach.candidates if x.first]
        every_time.sort(key=lambda x: (x is not self.coach.balance, *weight(x)))
        queues, kept = {}, []
        for x in self.coach.candidates:
            if x.first:
                continue
            if x.block == "kept up":
                kept.append(x)
            else:
                queues.setdefault(self.c[x.movement].group if x.block == "strength" else x.block, []).append(x)
        rounds = [(k, x) for queue in queues.values() for k, x in enumerate(sorted(queue, key=turn))]
        rounds.sort(key=lambda kx: (kx[0], self.client.is_back and new(kx[1]), *weight(kx[1])))
        kept.sort(key=lambda x: (others(x), new(x), self.times(x.movement, on, IN_TURN), ORDER.index(self.c[x.movement].pattern), x.movement))
        group = lambda x: self.c[x.movement].group
        place = {id(x): sum(group(y) == group(x) for y in kept[:k]) for k, x in enumerate(kept)}
        kept.sort(key=lambda x: place[id(x)])
        served = {group(x) for x in self.coach.candidates if x.block == "strength"}
        recent = lambda g: any(0 < (on - d).days < DAYS for d in self.trained.get(g, ()))
        early = [x for x in kept if group(x) not in served and not recent(group(x))][:1]
        late = [x for x in kept if not any(x is e for e in early)]
        going_on = [x for x in late if self.keeps(x, on)]
        late = [x for x in late if not self.keeps(x, on)]
        order = every_time + [x for k, x in rounds if k == 0] + early + going_on + [x for k, x in rounds if k > 0] + late
        overdue = [x for x in self.coach.candidates if (x.gap or new(x)) and not x.first and not self.is_off(x) and not self.times(x.movement, on, IN_TURN)]
        overdue = sorted(overdue, key=weight)[:OVERDUE_LINES] if (on - self.client.today).days >= OVERDUE else []
        due = sorted((x for x in self.coach.candidates if self.mainstay_due(x, on)), key=weight)
        return list({id(x): x for x in every_time + due + overdue + order}.values())

    # ------------------------------------------------------------ the plan

    def plan(self):
        sessions, done, before, full_weeks, last = [], {}, {}, 0, None
        first_session = next(d for dates in self.weeks for d in dates)
        for w, dates in enumerate(self.weeks):
            lighter = self.is_lighter(w)
            before = before if lighter else dict(done)
            week = Week(lighter, max(0, full_weeks - lighter), before, first_session)
            for k, on in enumerate(dates):
                session = self.lay(week, on, min(len(dates) - k, TO_COME))
                for line in session["_lines"]:
                    id = line.candidate.movement
                    done[id] = done.get(id, 0) + (0 if lighter or line.sore or line.rule == "time off" else 1)
                session["week"] = w + 1
                if session["_lines"] or not sessions:
                    sessions.append(session)
            full_weeks += 0 if lighter else 1
            for kind in () if lighter else week.sore:
                self.sore[kind] = self.sore.get(kind, 0) + 1
            if lighter and dates:
                last = dates[-1]
        self.count_first_week(sessions)
        return sessions, last and self.retest(last, sessions)

    def make_room(self, sessions, retest):
        """A test stands in the place of its lines, from the first day of tests to the day after its own."""
        days = [of for of in (retest, retest and retest["later"]) if of]
        for session in sessions:
            on = date.fromisoformat(session["on"])
            near = [of for of in days if session["on"] >= days[0]["on"] and on < date.fromisoformat(of["on"]) + APART * DAY]
            session.update(session["_laying"].without({i for of in near for i in of["tests"]}))
        sessions = [session for k, session in enumerate(sessions) if session["_lines"] or not k]
        self.name(sessions)
        return sessions

    def retest(self, last, sessions):
        """Two days after the last training, or on the next day of training if it comes first; what is more than a day's later."""
        days = sorted(day for week in range(WEEKS + 2) for day in self.dates(week))
        following = min((day for day in days if day > last), default=last + APART * DAY)
        rested = last + APART * DAY
        if following < self.client.today + WEEKS * DAYS * DAY and following > rested:
            following -= APART * DAY
        on = min(rested, following)
        place = lambda id: (self.c[id].mobility, self.c[id].unit != "reps", self.c[id].practised)
        tests = sorted(self.tests(on, sessions), key=place)
        later = [day for day in days if day >= on + APART * DAY][:1] if len(tests) > TESTS_A_DAY else []
        rest = {"on": str(later[0]), "tests": tests[TESTS_A_DAY:]} if later else None
        return {"on": str(on), "tests": tests[:TESTS_A_DAY], "later": rest}

    def lay(self, week, on, to_come):
        """A session; less of its range where a group has no time."""
        laid = lambda most, tries=self.first_tries: Laying(self, week, on, to_come, most, tries).lay()
        best = laid(99)
        if best.without_time(False):
            best = laid(RANGE_LINES)
        for most in range(RANGE_LINES - 1, -1, -1):
            if best.without_time(True):
                other = laid(most)
                best = other if other.without_time(True) < best.without_time(True) else best
        known = sum(line.candidate.block != "range" and line.rule not in ("first try", "until it is tested") for line in best.lines)
        if not self.few and best.firsts > max(1, known):
            best = laid(best.most_range, max(1, known))
        thin = len(best.lines) < 2 or not any(best.as_strength(line) or self.c[line.movement].guarded for line in best.lines)
        if thin and self.has_full:
            best.lines, best.sets = [], {}
        self.has_full |= not thin
        return best.close()

    def count_first_week(self, sessions):
        for session in sessions:
            for line in session["_lines"] if session["week"] == 1 else ():
                if line.candidate.block in ("strength", "kept up") and line.rule not in ("first try", "show it"):
                    kind = self.c[line.movement].kind
                    self.week_sets[kind] = self.week_sets.get(kind, 0) + line.sets

    def name(self, sessions):
        letters = {}
        for session in sessions:
            strength = frozenset(line.movement for line in session["_lines"] if line.candidate.block == "strength")
            session["name"] = letters.setdefault(strength, "ABCDEFGH"[min(7, len(letters))])
        if len(letters) < 2:
            for session in sessions:
                session["name"] = ""

    def tests(self, retest, sessions):
        client, goal = self.client, self.coach.goal
        gaps = sorted(self.coach.gaps.values(), key=lambda gap: gap.heaviest_first)
        newest = {}
        for t in client.tests:
            if t.movement in goal.chain:
                newest[t.movement] = max(t.on, newest.get(t.movement, t.on))
        last = client.c.school.results_last
        old = sorted((on, i) for i, on in newest.items() if (client.today - on).days <= last < (retest - on).days + RUNS_OUT)
        before = [session["_lines"] for session in sessions if session["on"] < str(retest)]
        weeks = max((session["week"] for session in sessions if session["on"] < str(retest)), default=0)
        times = lambda id: sum(any(line.movement == id for line in lines) for lines in before)
        shown = {line.movement for lines in before for line in lines if line.rule == "show it"}
        enough = lambda id: id in shown or times(id) >= max(1, min(TESTS_STOOD, weeks))
        last_on = lambda id: max(k for k, lines in enumerate(before) if any(line.movement == id for line in lines))
        forms = []
        for gap in gaps:
            trained = {line.movement for lines in before for line in lines if line.candidate.gap is gap} | {gap.movement}
            trained = [id for id in trained if enough(id)]
            if trained:
                forms.append(min(trained, key=lambda id: (-times(id), -last_on(id), id != gap.movement, id)))
        whole = [gap.movement for gap in gaps if gap.share == WHOLE]
        needed = lambda id: not (id in whole and id in shown or client.spares_breath and (id in whole or client.owns(id)))
        forms[1:] = sorted(forms[1:], key=lambda i: -times(i))
        due = [i for i in whole + [i for _, i in old] if enough(i)]
        out = self.some_of([i for i in forms[:1] + due + forms if needed(i)], retest, TESTS, [])
        often = lambda fine: sorted(sorted({line.movement for lines in before for line in lines if enough(line.movement) and fine(line)}), key=lambda i: -times(i))
        of_way = bool(out)
        if len(out) < TESTS_A_DAY and not client.careful:
            out = self.some_of(often(lambda line: line.rule == "until it is tested" and not client.now(line.movement)), retest, TESTS_A_DAY, out)
        if not of_way and not client.careful:
            out = self.some_of([i for i in often(lambda line: True) if needed(i)], retest, TESTS, out)
        return out

    def some_of(self, due, retest, most, out):
        client, out = self.client, list(out)
        for i in due:
            m = self.c[i]
            room = m.mobility or sum(self.c[j].kind == m.kind for j in out) < TESTS_OF_A_KIND
            fine = client.may(i) and client.has_all(i) and not self.coach.ease(i, retest, retest).sore and not client.is_sore(m)
            weight = m.loaded and (client.minor or client.is_back and client.now(i) is None)
            if i not in out and fine and not weight and room and len(out) < most:
                out.append(i)
        return out


class Week:
    def __init__(self, lighter, full_before, before, first_session):
        self.lighter, self.full_before, self.before, self.first_session = lighter, full_before, before, first_session
        self.sets = {}  # hard sets of a kind in its sessions so far
        self.sore = set()  # kinds that could not grow


class Laying:
    """One session while its lines are laid."""

    def __init__(self, planner, week, on, to_come, most_range, most_firsts):
        self.most_range, self.most_firsts, self.no_time = most_range, most_firsts, []
        self.p, self.week, self.on, self.to_come = planner, week, on, to_come
        self.c, self.coach = planner.c, planner.coach
        self.left = planner.client.minutes - planner.warming
        self.used = {"practice": 0, "range": 0}
        self.firsts = self.shows = 0
        self.sets, self.lines = {}, []
        self.left_out = list(self.coach.left_out)

    def count(self, block):
        return sum(line.candidate.block == block for line in self.lines)

    def near(self, days):
        return any(abs((self.on - d).days) < APART for d in days)

    def lay(self):
        for x in self.p.in_turn(self.on):
            if self.p.is_off(x):
                continue
            tried = x.movement in self.p.tried
            again = self.p.times(x.movement, self.on, (self.on - self.week.first_session).days) > 0
            line = self.coach.line(x, self.on, self.week.first_session, 0 if self.week.lighter else self.week.before.get(x.movement, 0), tried, again)
            if line is None and self.p.client.waits_lately(x.movement, self.on):
                self.left_out.append(x.movement)
            if line is None or any(line.movement == other.movement for other in self.lines):
                continue
            kind = self.c[line.movement].kind
            alike = any(self.c[other.movement].kind == kind for other in self.lines)
            if line.eased and self.c[x.movement].group and alike:
                continue
            self.place(x, line, tried)
        return self

    def without_time(self, only):
        """How many of pulling, pushing and legs have no line for want of time."""
        group = lambda id: self.c[id].group
        recent = lambda g: any(0 < (self.on - d).days < DAYS for d in self.p.trained.get(g, ()))
        there, late = {group(line.movement) for line in self.lines}, {group(id) for id in self.no_time}
        return sum(g in late and g not in there and not (only and recent(g)) for g in ("pull", "push", "legs"))

    def hard(self, line):
        """Whether its sets count."""
        return line.candidate.block in ("strength", "kept up") and line.rule not in ("first try", "show it")

    def as_strength(self, line):
        x = line.candidate
        return x.block in ("strength", "kept up") or x.single or self.c[line.movement].turnover

    def place(self, x, line, tried):
        m = self.c[line.movement]
        if x.block == "kept up":
            room = max(1, LINES - self.count("strength"))
            kept = sum(line.candidate.block == "kept up" and not line.candidate.goes_on for line in self.lines)
            if self.p.times(x.movement, self.on, 6) >= KEPT_A_WEEK or (self.count("strength") + self.count("kept up") >= LINES_MOST if x.goes_on else kept >= room):
                # Left alone without a word, unless something else would have been in the way before.
                if not self.in_the_way(line, m, tried):
                    return
        if self.in_the_way(line, m, tried) or x.block == "strength" and self.count("strength") >= LINES:
            self.left_out.append(line.movement)
            return
        if x.block == "range" and not x.first and self.count("range") >= self.most_range:
            self.no_time.append(line.movement)
            self.left_out.append(line.movement)
            return
        strength = lambda line: line.candidate.block in ("strength", "kept up")
        if line.worse and strength(line) and sum(o.worse and strength(o) for o in self.lines) >= SORE_LINES:
            self.left_out.append(line.movement)
            return
        sets = line.sets
        if self.hard(line):
            rest = self.p.ceiling(m.kind, 0 if self.p.client.has_sign else self.week.full_before, line.sore) - self.week.sets.get(m.kind, 0)
            here = self.sets.get(m.kind, 0)
            share, left = -(-rest // self.to_come) - here, rest - here
            lately = self.p.client.lately(line.movement) if x.goes_on else None
            waiting = sum(self.waits(y, x, m.kind, lately) for y in self.coach.candidates)
            if waiting:
                share = min(share, max(FEWEST_SETS, share - FEWEST_SETS))
            every_time = [y for y in self.coach.candidates if y.first and y.block in ("strength", "kept up")]
            later = FEWEST_SETS * (self.to_come - 1) if any(self.c[y.movement].kind == m.kind for y in every_time) else 0
            if lately:
                free = left - FEWEST_SETS * waiting - later if waiting else left
                share = max(share, min(self.coach.sets_like(lately), free))
            elif self.heavy_line(line, m):
                share = max(share, min(HEAVY_SETS, left))
            elif self.p.has_to_come(x, self.on) and left - later >= FEWEST_SETS:
                share = max(share, FEWEST_SETS)
            if share < FEWEST_SETS:
                self.left_out.append(line.movement)
                return
            sets = min(sets, share)
        line = self.within_minutes(line._replace(sets=sets))
        if line is None:
            return
        if self.p.unhurt and self.p.unhurt.keeps_out(self, line):
            # A stretch that nobody asked for is not missed.
            self.left_out += [line.movement] if x.gap or x.block != "range" else []
            return
        self.left -= self.coach.minutes(line)
        if x.block in self.used:
            self.used[x.block] += self.coach.minutes(line)
        if self.hard(line):
            self.sets[m.kind] = self.sets.get(m.kind, 0) + line.sets
        self.firsts += line.rule == "first try"
        self.shows += line.rule == "show it"
        self.lines.append(line)

    def heavy_line(self, line, m):
        """Lifted with weight for the goal by an adult, with nothing taken back."""
        taken_back = line.eased or line.sore or self.p.client.minor
        return line.candidate.block == "strength" and m.by_weight and bool(line.kg and line.kg > 0) and not taken_back

    def waits(self, x, line_of, kind, lately):
        """Whether it has to come beside another and has no line yet."""
        there = any(line.movement == x.movement for line in self.lines)
        alike = x.movement != line_of.movement and self.c[x.movement].kind == kind
        return alike and not there and self.p.has_to_come(x, self.on) and not (lately and self.p.keeps(x, self.on))

    def in_the_way(self, line, m, tried):
        if self.as_strength(line) and self.near(self.p.trained.get(m.group, ())):
            return True
        if line.rule == "first try" and m.try_group and self.near(self.p.trained.get(m.try_group, ())):
            return True
        if any(self.near(self.p.heavy.get(part, ())) for part in m.heavy_parts):
            return True
        client = self.p.client
        if line.sore and client.overhead_hurts(line.movement):
            return True
        if line.sore and (client.is_too_much(line.movement, self.on) or client.heavy_below(line.movement, line.candidate.movement)):
            return True
        if self.begins_anew_below(self.c[line.candidate.movement]):
            return True
        breath = lambda o: o.candidate.block in ("strength", "kept up") and (self.c[o.movement].straight or o.unit == "s" and o.amount > LONG_HOLD)
        if self.p.client.spares_breath and breath(line) and sum(map(breath, self.lines)) >= BREATH_LINES:
            return True
        if line.rule == "show it" and (self.week.lighter or self.shows >= SHOWN or tried):
            return True
        return line.rule == "first try" and (self.week.lighter or self.firsts + self.to_try(line) >= self.most_firsts)

    def begins_anew_below(self, m):
        """Whether a way out needs what is tried anew after long off."""
        tried = {x.movement for x in self.coach.candidates if x.rule == "first try"}
        late = (self.on - self.week.first_session).days >= OUT_FROM
        anew = lambda i: i in tried and not (late and i in self.p.tried) and self.p.client.forgotten(self.c[i].pattern) != NEVER
        return m.pattern == "exit" and any(anew(leaf.movement) for leaf in leaves(m.needs))

    def to_try(self, line):
        """First tries kept free for groups of which nothing is known and that have no line yet today."""
        hard = lambda x: x.block in ("strength", "kept up")
        group = lambda o: self.c[o.movement].group
        waiting = set()
        for g in ("push", "pull", "legs", "core"):
            of = [x for x in self.coach.candidates if hard(x) and group(x) == g]
            untried = [x for x in of if x.movement not in self.p.tried]
            there = any(group(o) == g for o in self.lines if hard(o.candidate))
            if untried and all(x.rule == "first try" for x in of) and not there and not self.near(self.p.trained.get(g, ())):
                waiting.add(g)
        return 0 if hard(line.candidate) and group(line) in waiting else len(waiting)

    def within_minutes(self, line):
        block = line.candidate.block
        most = Fraction(self.left)
        if block in self.used:
            most = min(most, self.p.client.minutes * BLOCK - self.used[block])
        fewest = FEWEST_ATTEMPTS if block == "practice" else FEWEST_SETS
        others = [x for x in self.coach.candidates if x.block == "practice" and x is not self.coach.balance]
        least = min(most, self.p.client.minutes * BLOCK / 2) if line.candidate is self.coach.balance and others else most
        while self.coach.minutes(line) > least and line.rule != "show it" and line.sets > fewest:
            line = line._replace(sets=line.sets - 1)
        if self.coach.minutes(line) > most:
            self.no_time.append(line.movement)
            self.left_out.append(line.movement)
            return None
        return line

    def close(self):
        for line in self.lines:
            x, m = line.candidate, self.c[line.movement]
            self.p.stood.setdefault(x.movement, set()).add(self.on)
            self.p.note(m, self.on, self.as_strength(line))
            if line.sore and self.hard(line):
                self.week.sore.add(m.kind)
            if line.rule in ("first try", "show it"):
                self.p.tried.add(x.movement)
        for kind, sets in self.sets.items():
            self.week.sets[kind] = self.week.sets.get(kind, 0) + sets
        if self.week.lighter:
            self.lines = [line if line.candidate.block == "range" else self.lightened(line) for line in self.lines]
        else:
            self.p.full.update({(line.movement, line.candidate.block): line for line in self.lines})
        self.lines.sort(key=self.rank)
        self.easy_first()
        if self.on == self.week.first_session:
            self.left_out += self.absent()
        return self.as_told()

    def without(self, tested):
        """The session without these lines."""
        gone = [line.movement for line in self.lines if line.movement in tested]
        self.left_out += gone
        self.lines = [line for line in self.lines if line.movement not in tested]
        return self.as_told()

    def as_told(self):
        there = {line.movement for line in self.lines}
        return {
            "_laying": self, "on": str(self.on), "lighter": self.week.lighter, "_lines": self.lines,
            "minutes": self.p.warming + sum(map(self.coach.minutes, self.lines)),
            "warm_up": self.warm_up(), "lines": [self.told(line) for line in self.lines],
            "left_out": sorted(set(self.left_out) - there),
        }

    def lightened(self, line):
        """Half the sets of the newest full week, and nothing above it."""
        full = self.p.full.get((line.movement, line.candidate.block))
        if full:
            less = max(0, line.amount - full.amount)
            reserve = None if line.reserve is None else min(MOST_RESERVE, line.reserve + less)
            kg = line.kg if line.kg is None or full.kg is None else min(line.kg, full.kg)
            line = line._replace(sets=min(line.sets, full.sets), amount=line.amount - less, reserve=reserve, kg=kg)
        return line._replace(sets=-(-line.sets // 2))

    def easy_first(self):
        """Of what is tried first in one pattern the easier before the harder, in the places that they have."""

        def sort(line):
            m = self.c[line.movement]
            return line.candidate.block, m.pattern, m.straight or m.inverted

        new = [i for i, line in enumerate(self.lines) if line.candidate.block in ("strength", "kept up") and line.rule in ("first try", "until it is tested")]
        for of in {sort(self.lines[i]) for i in new}:
            places = [i for i in new if sort(self.lines[i]) == of]
            easy = sorted((self.lines[i] for i in places), key=lambda line: (self.c[line.movement].stage, line.movement))
            for i, line in zip(places, easy):
                self.lines[i] = line

    def absent(self):
        """On the first day: the limiter, and of each pattern the highest rung with its own number, where nothing is said of it."""
        out, limiter, client = [], self.coach.limiter, self.p.client
        there = lambda line: line.candidate.gap is limiter or line.movement == limiter.movement
        if limiter and not any(map(there, self.lines)) and limiter.movement not in self.left_out:
            out.append(limiter.movement)
        for pattern in ORDER:
            said = [*self.left_out, *out, *(line.movement for line in self.lines)]
            js = [m for m in self.c.movements.values() if m.pattern == pattern and m.counted and not m.practised and client.measured(m.id)]
            if js and all(self.c[i].pattern != pattern for i in said):
                out.append(min(js, key=lambda m: (-m.stage, m.id)).id)
        return out

    def rank(self, line):
        x, m = line.candidate, self.c[line.movement]
        block = BLOCKS.index(x.block)
        if x.block == "practice":
            return block, m.pattern != "exit", x.single, -x.weight, line.movement
        if x.block == "range":
            return block, -x.weight, line.movement
        return block, not (m.straight or m.inverted), ORDER.index(m.pattern), -m.stage, line.movement

    def warm_up(self):
        """The school's lines for all and for the classes of the day, and how many lines more."""
        said = self.c.school.warm_up
        classes = set().union(*(self.c[line.movement].classes for line in self.lines))
        lines = list(said.get("always") or ())
        for name, more in said.items():
            lines += more if name != "always" and name in classes else []
        client = self.p.client
        lines = [line["do"] for line in lines if client.warms_up(line)]
        sore = [part for part, pains in client.pains.items() if pains[-1].score > 0]
        first = next((line for line in self.lines if line.candidate.block in ("strength", "kept up")), None)
        easy, served = 0, set()
        for line in [line for line in self.lines if line.candidate.block in ("strength", "kept up")]:
            m = self.c[line.movement]
            if line is first or m.group not in served | {"core"} and client.is_sore(m):
                served.add(m.group)
                easy += line.amount // 2 >= (LEAST_EASY_HOLD if line.unit == "s" else LEAST_EASY)
        return {"school": sorted(lines), "more": int(bool(sore or client.spared_parts)) + easy}

    def told(self, line):
        x, m = line.candidate, self.c[line.movement]
        toward = x.gap and {"movement": x.gap.movement, "target": x.gap.target.text}
        return {
            "block": x.block, "movement": line.movement, "sets": line.sets, "amount": line.amount, "unit": line.unit,
            "seconds_each": float(m.each) if m.each and line.unit == "reps" else None,
            "tempo": m.tempo if line.unit == "reps" else None, "hold": m.hold if line.unit == "reps" else None,
            "with_kg": None if line.kg is None else float(line.kg), "side": line.side, "weaker": line.weaker,
            "rest_s": line.rest, "in_reserve": None if line.reserve is None else int(line.reserve),
            "minutes": self.coach.minutes(line), "toward": toward, "instead_of": x.instead_of, "rule": line.rule,
        }


class Unhurt:
    """What stood if nothing hurt and nothing rested; a restriction of a class is of the person, and stays."""

    def __init__(self, sessions):
        self.lines = [(session["on"], line.candidate.movement, line.movement) for session in sessions for line in session["_lines"]]

    def keeps_out(self, laying, line):
        """Whether a line would stand for nothing but a pain or a rest, and is harder or graver than what left."""
        coach, client, c = laying.coach, laying.p.client, laying.c
        stood = [(asked, got) for on, asked, got in self.lines if on <= str(laying.on)]
        asked, m = line.candidate.movement, c[line.movement]
        if client.now(m.id) is not None or any(asked == other for other, _ in stood):
            return False
        there = {x.movement for x in coach.candidates}
        left = [c[got] for other, got in stood if other not in there or client.is_sore(c[got])]
        if m.grave:
            return True
        upright = m.pattern == "balance" and set(m.positions) == {"upright"}
        gentle = (not m.strict or upright) and (m.uncautioned or not m.mobility) and m.stage <= max((c[got].stage for _, got in stood), default=0)
        return not any(no_harder(m, o) for o in left) and (self.concerned(client, m) or not gentle)

    def concerned(self, client, m):
        """Whether it stresses something that hurts, hurt or rests, or is the next form of one that does."""
        parts = {part for part, pains in client.pains.items() if pains[-1].score > 0 or pains[-1].signs} | set(client.eased)
        spared = [what for what in client.holding if what.kind != "light" and what not in client.restricted_classes]
        forms = [m, *(client.c[low] for low in client.c.easier[m.id])]
        return any(parts & form.parts or any(client.reaches(what, form) for what in spared) for form in forms)


def without_rests(results):
    """The same results without a pain, a pause, and a restriction of anything but a class; None where there is none."""
    lasting = [entry for entry in results.get("restrict") or () if entry.get("class") is not None]
    if results.get("pain") or results.get("paused") or len(lasting) < len(results.get("restrict") or ()):
        return {**results, "pain": [], "paused": [], "restrict": lasting}
    return None


def planner(case, results, unhurt=None):
    """The goal, the gaps, and who lays the days."""
    client = Client(Curriculum(case["curriculum"]), results, date.fromisoformat(case["today"]))
    goal = find_goal(client, case["routes"], case.get("skill"))
    gaps = find_gaps(client, goal) if goal.name else {}
    return goal, gaps, Planner(client, Coach(client, goal, gaps), unhurt)


def answer(case):
    today = date.fromisoformat(case["today"])
    client = Client(Curriculum(case["curriculum"]), case["results"], today)
    # Who is not of age, or old, has no plan before the health questions are answered.
    must_answer = client.says is None and client.age is not None and not GROWN <= client.age < OLD
    if client.says == "ask" or must_answer:
        asked = case.get("skill") or client.said.get("goal")
        goal = {"skill": asked, "chosen": asked is not None, "reached": False}
        return {"goal": goal, "refused": True, "conditions": 0, "limiter": None, "sessions": [], "retest": None, "week_sets": {}}
    bare, unhurt = without_rests(case["results"]), None
    if bare:
        _, _, free = planner(case, bare)
        unhurt = Unhurt(free.plan()[0])
    goal, gaps, laid = planner(case, case["results"], unhurt)
    client, coach = laid.client, laid.coach
    sessions, retest = laid.plan()
    sessions = laid.make_room(sessions, retest)
    for session in sessions:
        del session["_lines"], session["_laying"]
    limiter = coach.limiter
    conditions = int(not client.said.get("screened"))
    conditions += int(client.age is not None and client.age < SECOND_TEN)
    conditions += int(client.age is not None and client.age >= 65)  # a wall or a rail beside them
    conditions += int(client.spares_breath)
    goes_up = any(not client.stops(part, client.pains[part][-1]) for part in client.sore_parts())  # what rests says so itself
    conditions += int(goes_up) + int(client.has_sign) + len(client.over_lately())
    conditions += int(bool(sessions) and sessions[0]["on"] == str(today) and client.to_failure())
    conditions += int(client.minor and any(client.c[i].loaded for i in gaps))
    return {
        "goal": {"skill": goal.name, "chosen": goal.chosen, "reached": bool(goal.name) and not gaps},
        "refused": False, "conditions": conditions,
        "limiter": limiter and {
            "movement": limiter.movement, "target": limiter.target.text, "weeks": [float(w) for w in limiter.weeks],
            "opens": list(limiter.opens), "until": limiter.until,
        },
        "sessions": sessions, "retest": retest, "week_sets": laid.week_sets,
    }


def main():
    for line in sys.stdin:
        if not line.strip():
            continue
        try:
            said = answer(json.loads(line, parse_float=str))
        except (ValueError, KeyError, TypeError, IndexError) as fault:
            said = {"error": f"{type(fault).__name__}: {fault}"}
        print(json.dumps(said, ensure_ascii=False), flush=True)


if __name__ == "__main__":
    main()
