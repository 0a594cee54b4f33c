'use strict';
'after page.js states.js training.js aim.js history.js';
// One verdict on a person: what is next, new, to watch, kept aside. The program's own (`src/morning`), on the same tables. No storage,
// no clock.
(() => {
  const { targets, readiness, results, training, history, page } = globalThis.rungbook;
  const { MASS, NO_LOAD } = targets;
  const { LIMITS } = globalThis.rungbook.health;
  const { words } = globalThis.rungbook;

  const units = () => (page && page.units ? page.units.ofSchool : 'metric');
  const text = (/** @type {Got} */ got) => targets.words(got, units());

  /** Everything that is looked at. @param {Model} model @param {Person} person @param {Assessment} found @param {Aside[]} aside @param {number} day @returns {MorningLook} */
  const look = (model, person, found, aside, day) => {
    const c = training.begin(model, person, found, day), isRefused = training.isRefused(person, day);
    const goal = isRefused ? null : training.goalOf(c), gaps = goal ? training.gaps(c, goal) : new Map();
    const { limiter, all } = isRefused ? { limiter: null, all: [] } : training.candidates(c, goal, gaps);
    return { c, isRefused, goal, gaps, limiter, instead: all.filter(({ insteadOf }) => insteadOf !== null), aside, histories: history.histories(c, limiter && limiter.movement) };
  };

  // ---- what is new

  /** A result in words of both sides. @param {Tested} tested @param {Saying} say */
  const sidesOf = ({ sides }, { say }) => (sides.length > 1 ? say('morning.left_right', { left: text(sides[0]), right: text(sides[1]) }) : text(sides[0]));
  /** @param {MorningLook} of @returns {FreshBest[]} */
  const fresh = ({ c, isRefused }) => {
    const { model, person, found, day, tables } = c, past = person.tested.filter(({ on }) => on <= day);
    const begins = Math.max(...past.map(({ on }) => on)) + 1 - tables.morning.round_days, earlier = person.tested.filter(({ on }) => on < begins);
    if (!past.length || !earlier.length) return [];
    const before = readiness.assess(model, { ...person, tested: earlier }, day);
    const opens = (/** @type {number} */ m) => (isRefused ? [] : model.order.filter((up) => found.states[up] === readiness.OPEN
      && [readiness.ALMOST, readiness.NOT_YET, readiness.TEST_FIRST].some((state) => state === before.states[up]) && readiness.leavesOf(tables.needs[up]).some((leaf) => model.of(leaf) === m)).sort((a, b) => a - b));
    const best = (/** @type {number} */ m, /** @type {Tested[]} */ list) => {
      const { atMost } = model.target(m), all = history.points(c, m, list);
      if (!all.length) return null;
      const point = all.reduce((a, b) => (history.isAbove(a, b, atMost) ? a : b)), same = (/** @type {Point} */ a) => a.on === point.on && a.amount === point.amount && a.load === point.load && a.hits === point.hits && a.of === point.of;
      const test = list.find((one) => history.points(c, m, [one]).some(same));
      return test ? { point, test } : null;
    };
    return [...new Set(past.filter(({ on }) => on >= begins).map(({ movement }) => movement))].sort((a, b) => a - b).flatMap((m) => {
      const { atMost } = model.target(m), of = (/** @type {boolean} */ isNew) => past.filter(({ movement, on }) => movement === m && (on >= begins) === isNew);
      const now = best(m, of(true)), old = of(false), was = best(m, old);
      if (!now || history.points(c, m, old).some((one) => history.covers(one, now.point, atMost))) return [];
      const opened = opens(m), owned = found.states[m] === readiness.OWNED && before.states[m] !== readiness.OWNED;
      return was || owned || opened.length ? [{ movement: m, test: now.test, was: was && was.test, owned, opens: opened }] : [];
    }).sort((a, b) => b.opens.length - a.opens.length || Number(b.owned) - Number(a.owned) || a.movement - b.movement);
  };

  // ---- what is next

  /** @param {MorningLook} of @param {number} m */
  const heldBack = ({ gaps }, m) => {
    /** @type {number[]} */
    const out = [];
    const open = [m];
    for (let at = open.pop(); at !== undefined; at = open.pop()) {
      const gap = gaps.get(at);
      for (const up of gap ? gap.opens : []) if (up !== m && !out.includes(up)) { out.push(up); open.push(up); }
    }
    return out.length;
  };
  const { mayTest } = training;
  /** The first few, and how many more. @param {any[]} all @param {Saying} saying @param {Tables} tables */
  const few = (all, { say, join }, { morning: { named } }) => {
    const shown = all.length === named + 1 ? all.length : named, list = join(all.slice(0, shown), words.say('list.separator'));
    return all.length > shown ? say('morning.more', { list, n: all.length - shown }) : list;
  };
  /** What is next, in words, and its movement. @param {MorningLook} of @param {Saying} saying @returns {{ told: any, movement: number | null }} */
  const next = (of, saying) => {
    const { c, goal, limiter, isRefused } = of, { say, name } = saying, { tables, model, found } = c;
    const target = (/** @type {number} */ leaf) => targets.words(model.target(leaf), units(), tables.targets[tables.leaves[2 * leaf + 1]][9] === 1);
    const plain = (/** @type {any} */ told) => ({ told, movement: null });
    if (isRefused) return plain(say('training.ask', {}));
    if (!goal) return plain(say('training.no_goal', {}));
    if (training.isReached(goal)) return plain(say('morning.reached', {}));
    const test = (/** @type {number} */ movement, /** @type {number} */ leaf, /** @type {number[]} */ decides) => ({ movement, told: decides.length
      ? say('morning.test', { movement: name(movement), target: target(leaf), list: few(decides.map(name), saying, tables) }) : say('morning.test_goal', { movement: name(movement), target: target(leaf) }) });
    if (!limiter) {
      const { steps } = found.first(model.of(goal.leaf)), step = steps.find(({ got, movement }) => got === null && mayTest(c, movement));
      if (!step) {
        const gap = [...of.gaps.values()].sort(training.heavier).find(({ movement: m }) => training.isOpen(c, m) && !training.may(c, m));
        if (!gap) return plain(say('training.nothing', {}));
        const blocked = say('morning.blocked', { movement: name(gap.movement), why: training.whyOf(c, training.whyNot(c, gap.movement)) });
        const stands = of.instead.find(({ insteadOf }) => insteadOf === gap.movement);
        return plain(stands ? say('morning.blocked_instead', { blocked, movement: name(stands.movement) }) : blocked);
      }
      const gap = of.gaps.get(step.movement);
      return test(step.movement, step.leaf, gap ? gap.opens : [model.of(goal.leaf)]);
    }
    const { movement, leaf, now, share, opens } = limiter, may = mayTest(c, movement) && !training.isBackLately(c);
    if (!now && may) return test(movement, leaf, opens);
    const had = training.got(c, movement), values = { movement: name(movement), target: target(leaf), got: had ? text(had) : '' };
    const from = training.followsFrom(c, movement);
    const what = !now ? say(c.minor && c.facts.isByMax(movement) ? 'morning.begin' : 'morning.begin_held', values) : share === readiness.WHOLE && may ? say('morning.show', values) : from === null ? say('morning.work', values) : say('morning.counts', { ...values, from: name(from) });
    const months = training.timeOf(c.tables, limiter), held = heldBack(of, movement);
    if (months === null) return { told: what, movement };
    return { movement, told: saying.join([what, held ? say('morning.holds_back', { n: held, months }) : say('morning.goal_itself', { months })], ' ') };
  };

  /** And that it falls: nothing is done more of before the reason is known. @param {MorningLook} of @param {Saying} saying */
  const nextAndFalls = (of, saying) => {
    const { told, movement } = next(of, saying), falls = of.histories.filter(({ fallen, still }) => fallen || (still && still.falling)).map(({ movement: m }) => m);
    if (movement === null || !falls.length) return told;
    if (falls.includes(movement)) return saying.say('morning.next_falls', { next: told });
    const below = training.chainOf(of.c.model, [movement]), first = falls.find((m) => below.includes(m));
    return first === undefined ? told : saying.say('morning.below_falls', { movement: saying.name(first), next: told });
  };

  // ---- what to watch

  /** @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const watch = (of, saying) => {
    const { c, goal, gaps, histories } = of, { say, name } = saying, { model, tables, person, found, day, K } = c;
    const shown = (/** @type {number} */ m, /** @type {Point} */ { amount, load }) => text({ measure: c.facts.measure(m), atMost: false, sets: 1, amount, seconds: 0, unit: load ? MASS : NO_LOAD, load, hits: 0, of: 0 });
    const stopping = found.causes.filter(({ kind }) => kind === 'pain');
    const pains = training.newestPains(c).map((pain) => ({ pain, stops: stopping.some(({ entry }) => entry === pain.entry) })).filter(({ pain, stops }) => stops || training.isHolding(pain) || (pain.score > 0 && day - pain.on < K.pain_days))
      .filter(({ stops }) => !stops).map(({ pain }) => training.painWords(tables, pain, null));
    const rests = saying.causes(found.causes.filter(({ kind }) => kind !== 'pain'));
    const falls = histories.flatMap(({ movement: m, fallen }) => (fallen ? [say('morning.falls', { movement: name(m), first: shown(m, fallen.last[0]), then: shown(m, fallen.last[1]), best: shown(m, fallen.best), day: results.dayText(fallen.best.on) })] : []));
    const still = histories.filter(({ movement: m, still: of_, fallen }) => of_ && !fallen && (of_.falling || gaps.has(m) || !training.isOwned(c, m))).map(({ movement, still: is }) => {
      const advice = is && is.advice;
      if (!is || !advice) return '';
      const values = { movement: name(movement), n: is.weeks, advice: say(`morning.advice.${advice.key}`, advice.movement === null ? {} : { movement: name(advice.movement) }) };
      return is.falling ? say('morning.slides', values) : say('morning.still', values);
    });
    const sides = histories.flatMap(({ movement: m }) => {
      const now = training.now(c, m), { weaker } = training.sides(c, m);
      const one = (/** @type {number} */ amount) => text({ measure: c.facts.measure(m), atMost: false, sets: 1, amount, seconds: 0, unit: NO_LOAD, load: 0, hits: 0, of: 0 });
      return weaker && now && now.left !== null && now.right !== null ? [say('morning.sides_differ', { movement: name(m), left: one(now.left), right: one(now.right) })] : [];
    });
    const age = results.ageOn(person.born, day), years = age !== null && (age < LIMITS.adult || age >= K.balance_age) ? [say(age >= K.balance_age ? 'morning.age_old' : 'morning.age', { n: age, next: age + 1 })] : [];
    const last = person.screened && person.screened.until !== null ? Math.min(person.screened.until, person.screened.on + Math.min(person.screened.lasts || LIMITS.clearance, LIMITS.clearance)) : -Infinity;
    const cleared = person.screened && last >= day ? [say('morning.cleared', { who: person.screened.by || words.say('morning.a_clinician'), day: results.dayText(last) })] : [];
    return [...pains, ...years, ...cleared, ...(person.screened ? [] : [say('morning.unanswered', {})]), ...toFailure(of, saying), ...timeOff(of, saying), ...rests, ...falls, ...still, ...noDayOff(of, saying), ...sides, ...(goal ? ageing(of, saying, goal.chain).soon : ageing(of, saying, null).soon)];
  };
  /** What was trained today or yesterday until nothing was left. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const toFailure = ({ c: { person, day, tables } }, saying) => {
    const all = person.trained.filter((one) => one.on <= day && day - one.on <= 1 && (one.reserve === 0 || training.isMissed(one))), on = Math.max(...all.map((one) => one.on));
    const movements = [...new Set(all.filter((one) => one.on === on).map(({ movement }) => movement))].sort((a, b) => a - b);
    return movements.length ? [saying.say('morning.to_failure', { day: results.dayText(on), list: few(movements.map(saying.name), saying, tables) })] : [];
  };
  /** Since the newest logged session, where that is long enough ago for lighter weeks. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const timeOff = ({ c: { person, day, K } }, { say }) => {
    const last = Math.max(...[...person.trained, ...person.sessions].map(({ on }) => on).filter((on) => on <= day));
    return Number.isFinite(last) && day - last >= K.off[0] ? [say('morning.time_off', { n: day - last })] : [];
  };
  /** The newest two days running of each group. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const noDayOff = ({ c }, { say }) => {
    const { tables, person, day, K } = c;
    return tables.group_names.flatMap((word, group) => {
      const days = [...new Set(person.trained.filter(({ on, movement }) => on <= day && day - on < K.turns && c.facts.group(movement) === group).map(({ on }) => on))].sort((a, b) => a - b);
      const at = days.reduce((found, on, i) => (i > 0 && on - days[i - 1] < K.apart ? i : found), -1);
      return at < 0 ? [] : [say('morning.no_day_off', { group: words.say(`training.group.${word}`), first: results.dayText(days[at - 1]), then: results.dayText(days[at]) })];
    });
  };
  /** Results about to run out, and those out of date. @param {MorningLook} of @param {Saying} saying @param {number[] | null} chain */
  const ageing = ({ c }, saying, chain) => {
    const { day, tables, found } = c, { say, name } = saying;
    const newest = [...c.tests].filter(([m]) => chain === null || chain.includes(m)).map(([m, list]) => ({ m, from: Math.max(...list.map(({ on }) => on)) + tables.results_last_days + 1 }));
    const soon = newest.filter(({ from }) => from - day >= 1 && from - day <= tables.morning.runs_out_days).sort((a, b) => a.from - b.from || a.m - b.m);
    const old = newest.filter(({ m, from }) => from <= day && found.states[m] !== readiness.OWNED).sort((a, b) => a.m - b.m);
    return {
      soon: soon.length ? [say('morning.runs_out', { day: results.dayText(soon[0].from), list: few(soon.map(({ m }) => name(m)), saying, tables) })] : [],
      old: old.length ? [say('morning.out_of_date', { list: few(old.map(({ m }) => name(m)), saying, tables) })] : [],
    };
  };
  /** Movements whose newest results all had help that their standard does not allow. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const helped = ({ c }, saying) => {
    const all = [...c.tests].filter(([m, list]) => {
      const counting = list.filter(({ on }) => c.day - on <= c.tables.results_last_days), last = Math.max(...counting.map(({ on }) => on));
      return counting.length && c.model.target(m).load >= 0 && counting.filter(({ on }) => on === last).every(({ sides }) => sides.some(({ load }) => load < 0));
    }).map(([m]) => m).sort((a, b) => a - b);
    return all.length ? [saying.say('morning.helped', { list: few(all.map(saying.name), saying, c.tables) })] : [];
  };
  /** Every entry that decides nothing, those of one reason together. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const keptAside = ({ aside, c: { tables } }, saying) => {
    const { say } = saying;
    /** @type {Map<string, any[]>} */
    const by = new Map();
    for (const { movement, got, on, why } of aside) by.set(why, [...(by.get(why) || []), say('morning.entry', { movement, got, day: on })]);
    return [...by].map(([why, list]) => say('morning.because', { list: few(list, saying, tables), why }));
  };

  /** The lines on a person, those with something to say: their key under `morning` and what they say. @param {MorningLook} of @param {Saying} saying @returns {[string, any][]} */
  const lines = (of, saying) => {
    const { say, name, join } = saying, all = fresh(of), { tables } = of.c;
    const bests = all.slice(0, tables.morning.bests).map(({ movement, test, was, owned, opens }) => {
      const values = { movement: name(movement), got: sidesOf(test, saying) };
      let out = was ? say('morning.best', { ...values, was: sidesOf(was, saying) }) : say('morning.first', values);
      if (owned) out = say('morning.now_owned', { best: out });
      return opens.length ? say('morning.opens', { best: out, list: few(opens.map(name), saying, tables) }) : out;
    });
    const told = join(bests, '; '), goal = of.goal ? of.goal.chain : null;
    const first = training.clinician(of.c);
    return [
      ...(first.length ? [/** @type {[string, any]} */ (['ask', first.join(' ')])] : []), ['next', nextAndFalls(of, saying)], ...(all.length ? [/** @type {[string, any]} */ (['new', all.length > tables.morning.bests ? say('morning.more_bests', { list: told, n: all.length - tables.morning.bests }) : told])] : []),
      ...[/** @type {[string, any[]]} */ (['watch', watch(of, saying)]), /** @type {[string, any[]]} */ (['aside', [...ageing(of, saying, goal).old, ...helped(of, saying), ...keptAside(of, saying)]])]
        .filter(([, list]) => list.length).map(([key, list]) => /** @type {[string, any]} */ ([key, join(list, '; ')])),
    ];
  };
  /** What is owned, and when the last test was. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const head = ({ c }, { say }) => {
    const { found, model, person, day } = c;
    const last = Math.max(...person.tested.map(({ on }) => on)), n = day - last;
    const owned = model.order.filter((m) => training.isOwned(c, m)), paused = owned.filter((m) => found.states[m] === readiness.PAUSED).length;
    return [say(paused ? 'morning.owned_paused' : 'morning.owned', { n: owned.length, all: model.count, paused }),
      person.tested.length === 0 ? say('morning.untested', {}) : n === 0 ? say('morning.tested_today', {}) : say('morning.tested', { n })];
  };

  // ---- all of them together

  /** Just back, or nothing was left yesterday: not tested with the others today. @param {MorningLook} of */
  const waits = ({ c }) => training.isBackLately(c) || c.person.trained.some((one) => one.on <= c.day && c.day - one.on <= 1 && (one.reserve === 0 || training.isMissed(one)));

  /** The tests that may be asked for: those of gaps without a number, or with one that has to be shown. @param {MorningLook} of */
  const testsOf = ({ c, gaps }) => [...gaps.values()].filter(({ movement, now, share }) => (!now || share === readiness.WHOLE) && mayTest(c, movement));
  /** Groups of at least two, the largest first, each around one movement and its neighbours; nobody in two. @param {number[][]} easier @param {Map<number, number[]>} next */
  const groups = (easier, next) => {
    /** @type {{ movements: number[], who: number[] }[]} */
    const out = [];
    let left = [...next.keys()].sort((a, b) => a - b);
    for (;;) {
      const around = left.map((m) => left.filter((of) => of === m || easier[m].includes(of) || easier[of].includes(m))).map((movements) => ({ movements, who: movements.flatMap((m) => next.get(m) || []).sort((a, b) => a - b) }));
      const [best] = around.sort((a, b) => b.who.length - a.who.length || a.movements.length - b.movements.length || a.movements[0] - b.movements[0]);
      if (!best || best.who.length < 2) return out;
      out.push(best);
      left = left.filter((m) => !best.movements.includes(m));
    }
  };
  /** Three short tables: what holds back most, who could work together, the tests that decide most; each a heading and its lines.
   * @param {MorningLook[]} all @param {(i: number) => any} called @param {Saying} saying @returns {[string, any[]][]} */
  const together = (all, called, saying) => {
    const { say, name } = saying, [{ c: { tables } }] = all, who = (/** @type {number[]} */ list) => few(list.map((i) => called(i)), saying, tables);
    /** @type {Map<number, number[]>} */
    const held = new Map();
    /** @type {Map<number, { people: number[], decides: number }>} */
    const tests = new Map();
    /** @type {number[]} */
    const waiting = [];
    all.forEach((of, i) => {
      const { movement } = next(of, saying);
      if (movement !== null) held.set(movement, [...(held.get(movement) || []), i]);
      if (waits(of)) {
        if (testsOf(of).length) waiting.push(i);
        return;
      }
      for (const { movement: m } of testsOf(of)) {
        const { people, decides } = tests.get(m) || { people: [], decides: 0 };
        tests.set(m, { people: [...people, i], decides: decides + Math.max(heldBack(of, m), 1) });
      }
    });
    const most = [...held].sort(([a, of], [b, with_]) => with_.length - of.length || a - b).slice(0, tables.morning.tests);
    const first = [...tests].sort(([a, of], [b, with_]) => with_.decides - of.decides || a - b).slice(0, tables.morning.tests);
    const near = groups(tables.easier, held);
    return [['held_back', most.map(([m, list]) => say('morning.held', { movement: name(m), n: list.length, people: who(list) }))],
      ['together', near.map(({ movements, who: list }) => say('morning.group', { movements: few(movements.map(name), saying, tables), people: who(list) }))],
      ['to_test', first.map(([m, { people, decides }]) => say('morning.decides', { movement: name(m), n: decides, people: who(people) })).concat(waiting.length ? [say('morning.wait', { people: who(waiting) })] : [])]];
  };

  globalThis.rungbook.morning = { look, lines, head, together };
})();
