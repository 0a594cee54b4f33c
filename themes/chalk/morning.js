'use strict';
'after page.js states.js training.js aim.js history.js';
// One verdict on a person: what is next, new, to watch, kept aside. The program's own (`src/morning`), on the same tables. No storage,
// no clock.
(() => {
  const { targets, readiness, results, training, history, page } = globalThis.rungbook;
  const { MASS, NO_LOAD } = targets;
  const { LIMITS } = globalThis.rungbook.health, { LOADED } = training.TRAITS;
  const { words } = globalThis.rungbook;
  const { mayTest, daysOff } = training;

  const units = () => (page && page.units ? page.units.ofSchool : 'metric');
  const text = (/** @type {Got} */ got) => targets.words(got, units());

  /** Where no gap can be worked on: the one test that the goal waits for. @param {MorningLook} of */
  const firstTest = ({ c, goal }) => (goal ? c.found.first(c.model.of(goal.leaf)).steps.find(({ got, movement }) => got === null && mayTest(c, movement)) : undefined);
  /** The line of the next session that works on what holds back: its own, else one towards it. @param {MorningLook} of */
  const lineOf = ({ limiter, session }) => {
    const lines = session ? session.lines : [], m = limiter ? limiter.movement : -1;
    return lines.find(({ movement }) => movement === m) || lines.find(({ gap }) => gap !== null && gap.movement === m);
  };
  /** Why what holds back has no line in the next session. @param {MorningLook} of */
  const waitsFor = (of) => (of.limiter && of.session && !lineOf(of) ? of.session.leftOut.find(({ movement }) => of.limiter && movement === of.limiter.movement) : undefined);
  /** What is done with what holds back: tested, shown, or worked on. @param {MorningLook} of @returns {{ key: string, works: boolean }} */
  const stepOf = (of) => {
    const { c, limiter } = of, { movement, now, share } = /** @type {Gap} */ (limiter), may = mayTest(c, movement) && !training.isBackLately(c), line = lineOf(of);
    if (!now) return may ? { key: '', works: false } : { key: line && line.movement === movement ? 'begin' : 'no_number', works: true };
    if (share === readiness.WHOLE) return may ? { key: 'show', works: false } : { key: 'show_later', works: true };
    const follows = training.followsFrom(c, movement) !== null;
    return follows && may ? { key: 'counted', works: false } : { key: follows ? 'counts' : 'work', works: true };
  };
  /** The strength of a session, what is kept up too. @param {PlannedSession | null} session */
  const hardOf = (session) => (session ? session.lines.filter(({ block }) => block === 'strength' || block === 'kept up').map(({ movement }) => movement) : []);
  /** Everything that is looked at. @param {Model} model @param {Person} person @param {Assessment} found @param {Aside[]} aside @param {number} day @returns {MorningLook} */
  const look = (model, person, found, aside, day) => {
    const c = training.begin(model, person, found, day), isRefused = training.isRefused(person, day);
    const goal = isRefused ? null : training.goalOf(c), gaps = goal ? training.gaps(c, goal) : new Map();
    const { limiter } = isRefused ? { limiter: null } : training.candidates(c, goal, gaps);
    const sessions = isRefused ? [] : training.plan(model, person, found, day, 1).sessions, [session = null] = sessions;
    /** @type {MorningLook} */
    const of = { c, isRefused, goal, gaps, limiter, session, trains: new Set(sessions.flatMap(({ lines }) => lines.map((line) => line.movement))), meanwhile: [], aside, histories: history.histories(c, limiter && limiter.movement) };
    const isStuck = goal && !limiter && !training.isReached(goal) && !firstTest(of);
    if (isStuck || (waitsFor(of) && stepOf(of).works)) of.meanwhile = hardOf(session);
    return of;
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
  /** The first few, and how many more. @param {any[]} all @param {Saying} saying @param {Tables} tables */
  const few = (all, { say, join }, { morning: { named } }) => {
    const shown = all.length === named + 1 ? all.length : named, list = join(all.slice(0, shown), words.say('list.separator'));
    return all.length > shown ? say('morning.more', { list, n: all.length - shown }) : list;
  };
  /** A test, what it decides, and where the way behind it ends for now, and what was measured of it in the old way. @param {MorningLook} of @param {Saying} saying @param {number} m @param {number} leaf @param {number[]} decides */
  const test = ({ c, gaps }, saying, m, leaf, decides) => {
    const { say, name } = saying, { tables, model } = c, gap = gaps.get(m), old = gap ? training.measuredOtherwise(c, m) : null;
    const target = targets.words(model.target(leaf), units(), tables.targets[tables.leaves[2 * leaf + 1]][9] === 1);
    const bare = decides.length ? say('morning.test', { movement: name(m), target, list: few(decides.map(name), saying, tables) }) : say('morning.test_goal', { movement: name(m), target });
    const way = gap && gap.stop ? training.howLong(c, gap, saying) : null, told = way === null ? bare : saying.join([bare, way], ' ');
    return old ? say('morning.test_again', { test: told, got: training.sidesInWords(old) }) : told;
  };
  /** What there is of a gap: what it follows from, left and right where they differ. @param {MorningLook} of @param {Saying} saying @param {number} m */
  const has = ({ c }, { say, name }, m) => {
    const got = training.got(c, m), from = training.followsFrom(c, m), sides = training.apart(c, m);
    if (!got) return '';
    return from !== null ? say('training.why.counts', { got: text(got), movement: name(from) }) : training.sidesInWords(sides || [got]);
  };
  /** What is next, in words, and its movement. @param {MorningLook} of @param {Saying} saying @returns {{ told: any, movement: number | null }} */
  const next = (of, saying) => {
    const { c, goal, limiter, isRefused } = of, { say, name } = saying, { tables, model } = c;
    const plain = (/** @type {any} */ told) => ({ told, movement: null });
    /** With what the next session trains all the same. @param {any} told */
    const meanwhile = (told) => plain(of.meanwhile.length ? say('morning.meanwhile', { next: told, list: saying.join(of.meanwhile.map(name), words.say('list.separator')) }) : told);
    if (isRefused) return plain(training.refusal(c.person, c.day));
    if (!goal) return plain(say('training.no_goal', {}));
    if (training.isReached(goal)) return plain(say('morning.reached', {}));
    if (!limiter) {
      const step = firstTest(of);
      if (step) return { movement: step.movement, told: test(of, saying, step.movement, step.leaf, (of.gaps.get(step.movement) || { opens: [model.of(goal.leaf)] }).opens) };
      const gap = [...of.gaps.values()].sort(training.heavier).find(({ movement: m }) => training.isOpen(c, m) && !training.may(c, m));
      if (gap) return meanwhile(say('morning.blocked', { movement: name(gap.movement), why: training.whyOf(c, training.whyNot(c, gap.movement)) }));
      const hurts = training.newestPains(c).filter(training.isHolding).map(({ part }) => say(`body.${tables.parts[part].replace('-', '_')}`, {}));
      return meanwhile(hurts.length ? say('morning.hurts', { parts: saying.join(hurts, words.say('list.separator')) }) : say('training.nothing', {}));
    }
    const { movement, leaf, opens } = limiter, { key, works } = stepOf(of);
    if (!key) return { movement, told: test(of, saying, movement, leaf, opens) };
    const values = { movement: name(movement), target: training.asksInWords(c, leaf), got: has(of, saying, movement), ...(key === 'begin' ? { begin: text(training.firstSet(c, movement)) } : {}) };
    const step = say(`morning.${key}`, values), line = works ? lineOf(of) : undefined, waiting = works ? waitsFor(of) : undefined;
    const what = line && line.movement !== movement ? say('morning.by_way', { movement: name(line.movement), sets: training.setsInWords(tables, line), next: step })
      : waiting ? meanwhile(waiting.why.key === 'left.careful' && daysOff(c) >= tables.training.off[0] ? say('morning.waits_back', { next: step }) : say('morning.waits', { next: step, why: training.whyOf(c, waiting.why) })).told : step;
    const way = training.howLong(c, limiter, saying), held = heldBack(of, movement);
    if (way === null) return { told: what, movement };
    const time = limiter.stop ? null : training.timeOf(tables, limiter);
    return { movement, told: saying.join([what, held ? say('morning.holds_back', { n: held, way }) : time === null ? say('morning.goal_closed', { way }) : say('morning.goal_itself', { time })], ' ') };
  };

  /** What is done before the step, and behind it; nothing before a clinician was asked. @param {MorningLook} of @param {Saying} saying */
  const acts = (of, saying) => (of.isRefused ? next(of, saying).told : saying.join([...doubts(of, saying), ...oneLeg(of, saying), ...timeOff(of, saying), nextAndFalls(of, saying), ...sidesActs(of, saying)], ' '));
  /** An amount of a movement, as its results are written. @param {Trainee} c @param {number} m @param {number} amount */
  const amountOf = (c, m, amount) => text({ measure: c.facts.measure(m), atMost: false, sets: 1, amount, seconds: 0, unit: NO_LOAD, load: 0, hits: 0, of: 0 });
  /** The largest number of each movement that is more likely a slip, of what still counts: from its newest test on. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const doubts = ({ c }, saying) => {
    const { tables } = c, { say, name } = saying, list = training.slips(c).map(([m, amount]) => say('morning.doubt_of', { movement: name(m), got: amountOf(c, m, amount) }));
    return list.length ? [say('morning.doubt', { list: few(list, saying, tables) })] : [];
  };
  /** A short balance of who is older. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const oneLeg = ({ c }, { say, name }) => {
    const of = training.falls(c), n = Number(c.age);
    if (!of) return [];
    const [left, right, least] = [of.left, of.right, c.K.one_leg_s * targets.ONE].map((amount) => amountOf(c, of.movement, amount));
    return [say('morning.one_leg', { movement: name(of.movement), got: say('morning.left_right', { left, right }), least, n, next: n + 1 })];
  };
  /** The histories whose sides are far apart, and which is weaker. @param {MorningLook} of */
  const apart = ({ c, histories }) => histories.flatMap(({ movement: m }) => {
    const now = training.now(c, m), { weaker } = training.sides(c, m);
    return weaker && now && now.left !== null && now.right !== null ? [{ m, weaker, left: amountOf(c, m, now.left), right: amountOf(c, m, now.right) }] : [];
  });
  /** With which side is begun, of what may be trained, and where an old injury is asked about. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const sidesActs = (of, saying) => ['left', 'right'].flatMap((side) => {
    const { c } = of, { say, name } = saying, { tables } = c, all = apart(of).filter(({ m, weaker }) => weaker === side && training.may(c, m));
    if (!all.length) return [];
    // What is next says its sides itself.
    const isTold = (/** @type {number} */ m) => of.limiter !== null && of.limiter.movement === m && stepOf(of).key === 'work';
    const [range] = all.filter(({ m }) => tables.joint[m] !== undefined), list = few(all.map(({ m, left, right }) => (isTold(m) ? name(m) : say('morning.side_of', { movement: name(m), got: say('morning.left_right', { left, right }) }))), saying, tables);
    return [side === 'left' ? say('morning.begin_left', { list }) : say('morning.begin_right', { list }),
      ...(range ? [say('morning.old_injury', { part: say(`body.${tables.parts[tables.joint[range.m]].replace('-', '_')}`, {}) })] : [])];
  });

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
    const { c, goal, gaps, histories } = of, { say, name } = saying, { person, found, day, K } = c;
    const shown = (/** @type {number} */ m, /** @type {Point} */ { amount, load }) => text({ measure: c.facts.measure(m), atMost: false, sets: 1, amount, seconds: 0, unit: load ? MASS : NO_LOAD, load, hits: 0, of: 0 });
    const stopping = found.causes.filter(({ kind }) => kind === 'pain');
    const pains = training.newestPains(c).map((pain) => ({ pain, stops: stopping.some(({ entry }) => entry === pain.entry) })).filter(({ pain, stops }) => stops || training.isHolding(pain) || (pain.score > 0 && day - pain.on < K.pain_days))
      .filter(({ stops }) => !stops).map(({ pain }) => held(of, saying, pain));
    const rests = saying.causes(found.causes.filter(({ kind }) => kind !== 'pain'));
    const falls = histories.flatMap(({ movement: m, fallen }) => (fallen ? [say('morning.falls', { movement: name(m), first: shown(m, fallen.last[0]), then: shown(m, fallen.last[1]), best: shown(m, fallen.best), day: results.dayText(fallen.best.on) })] : []));
    const still = histories.filter(({ movement: m, still: of_, fallen }) => of_ && !fallen && (of_.falling || gaps.has(m) || !training.isOwned(c, m))).map(({ movement, still: is }) => {
      const advice = is && is.advice;
      if (!is || !advice) return '';
      const values = { movement: name(movement), n: is.weeks, advice: say(`morning.advice.${advice.key}`, advice.movement === null ? {} : { movement: name(advice.movement) }) };
      return is.falling ? say('morning.slides', values) : say('morning.still', values);
    });
    // What begins with a side is said with what is next.
    const sides = apart(of).filter(({ m }) => of.isRefused || !training.may(c, m)).map(({ m, left, right }) => say('morning.sides_differ', { movement: name(m), left, right }));
    const years = age(of, saying);
    const last = person.screened && person.screened.until !== null ? Math.min(person.screened.until, person.screened.on + Math.min(person.screened.lasts || LIMITS.clearance, LIMITS.clearance)) : -Infinity;
    const cleared = person.screened && last >= day ? [say('morning.cleared', { who: person.screened.by || words.say('morning.a_clinician'), day: results.dayText(last) })] : [];
    return [...pains, ...years, ...cleared, ...(person.screened || of.isRefused ? [] : [say('morning.unanswered', {})]), ...lacks(of, saying), ...toFailure(of, saying), ...rests, ...falls, ...still, ...noDayOff(of, saying), ...sides, ...(goal ? ageing(of, saying, goal.chain).soon : ageing(of, saying, null).soon)];
  };
  /** What the way needs and is not at hand, each with what it stops. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const lacks = ({ c, gaps, limiter }, saying) => {
    const { say, name } = saying, { tables } = c;
    const all = training.toBeHad(c, gaps, limiter).map(({ oneOf, stops: [first, ...others] }) => say('morning.missing_of', { gear: training.gearWords(tables, oneOf), list: others.length ? say('morning.more', { list: name(first), n: others.length }) : name(first) }));
    return all.length ? [say('morning.missing', { list: saying.join(all, words.say('list.separator')) })] : [];
  };
  /** A pain, and of 3 to 5 what follows, and when to ask again. @param {MorningLook} of @param {Saying} saying @param {Pain} pain @returns {any} */
  const held = ({ c }, { say }, pain) => {
    const told = training.painWords(c.tables, pain, null), { K, day } = c, less = training.takesBack(c, pain);
    if (!training.isHolding(pain)) return told;
    return say(less ? 'morning.pain_less' : 'morning.pain_hold', { pain: told, n: LIMITS.pain[0] - 1, day: results.dayText(Math.max(day, pain.on + K.pain_days)) });
  };
  /** Old or young, and what follows from it. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const age = ({ c, gaps }, { say }) => {
    const n = results.ageOn(c.person.born, c.day), values = { n, next: Number(n) + 1 };
    if (n === null || (n >= LIMITS.adult && n < c.K.balance_age)) return [];
    if (n >= c.K.balance_age) return [say('morning.age_old', values)];
    const told = say(n < LIMITS.youth ? 'morning.age_youth' : 'morning.age', values), weight = [...gaps.keys()].some((m) => c.facts.has(m, LOADED));
    return [weight ? say('morning.age_weight', { age: told }) : told];
  };
  /** What was trained today or yesterday until nothing was left. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const toFailure = ({ c: { person, day, tables, K } }, saying) => {
    const all = person.trained.filter((one) => one.on <= day && day - one.on <= 1 && (one.reserve === 0 || training.isMissed(one))), on = Math.max(...all.map((one) => one.on));
    const movements = [...new Set(all.filter((one) => one.on === on).map(({ movement }) => movement))].sort((a, b) => a - b);
    return movements.length ? [saying.say('morning.to_failure', { day: results.dayText(on), then: results.dayText(on + K.apart), list: few(movements.map(saying.name), saying, tables) })] : [];
  };
  /** Since the newest logged session, where that is long enough ago for lighter weeks. @param {MorningLook} of @param {Saying} saying @returns {any[]} */
  const timeOff = ({ c }, { say }) => {
    const n = daysOff(c), keys = ['morning.time_off', 'morning.time_off_longer', 'morning.time_off_long'], reached = c.K.off.filter((off) => n >= off).length;
    return reached ? [say(keys[reached - 1], { n })] : [];
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
      ...(first.length ? [/** @type {[string, any]} */ (['ask', first.join(' ')])] : []), ['next', acts(of, saying)], ...(all.length ? [/** @type {[string, any]} */ (['new', all.length > tables.morning.bests ? say('morning.more_bests', { list: told, n: all.length - tables.morning.bests }) : told])] : []),
      ...[/** @type {[string, any[]]} */ (['watch', watch(of, saying)]), /** @type {[string, any[]]} */ (['aside', [...ageing(of, saying, goal).old, ...helped(of, saying), ...keptAside(of, saying)]])]
        .filter(([, list]) => list.length).map(([key, list]) => /** @type {[string, any]} */ ([key, join(list, '; ')])),
    ];
  };
  /** The goal with what waits for the age: with weight it is shown from 18 on. @param {MorningLook} of @param {any} goal @param {Saying} saying */
  const goalOf = ({ c, goal: of }, goal, { say }) => (of && c.minor && c.facts.has(c.model.of(of.leaf), LOADED) ? say('morning.from_adult', { goal }) : goal);
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
  const testsOf = ({ c, gaps }) => [...gaps.values()].filter(({ movement, now, share }) => (!now || share === readiness.WHOLE || training.followsFrom(c, movement) !== null) && mayTest(c, movement));
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

  globalThis.rungbook.morning = { look, lines, head, goalOf, together };
})();
