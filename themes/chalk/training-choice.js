'use strict';
// Training, between the lines and the plan: what could stand in a session, a variation for each gap and what is kept up beside them. The
// same as the program's own, on the same tables. No page, no storage, no clock.
(() => {
  const { targets: { REPS }, readiness, training } = globalThis.rungbook;
  const { because, told, measured, isLowering, isGuarded, higher, lower, isAnew, fits, builder, isTooEasy, harder, whyNot, didLately, now, whole, may, foot, heavier, NEVER } = training;
  const { STRAIGHT, STRICT, LOADED, UPRIGHT } = training.TRAITS, { WHOLE } = readiness, FULL = 4;

  /** @param {Trainee} c @param {TrainingGoal | null} goal @param {Map<number, Gap>} gaps @returns {{ all: Candidate[], lost: LeftOut[], limiter: Gap | null, balance: Candidate | null }} */
  const candidates = (c, goal, gaps) => {
    /** @type {Map<string, Candidate>} */
    const out = new Map();
    /** @type {Pool} */
    const pool = {
      out, lost: [], rests: false,
      add: (m, gap, rule, more = {}) => {
        const { why = [], single = false, insteadOf = null, block, then = null, after = null } = more, key = `${m} ${single}`;
        if (out.has(key)) return;
        if (gap && training.waitsLately(c, m, c.day)) pool.rests = true;
        const unknown = now(c, m) === null && !c.facts.isMobility(m);
        const first = unknown && !why.length ? [because(foot(c, c.tables.pattern[m]) === NEVER ? 'why.nothing_known' : 'why.tried_anew')] : [];
        const stands = block || (c.facts.isMobility(m) ? 'range' : c.facts.isPractice(m) || single ? 'practice' : 'strength');
        const before = !unknown && (stands === 'strength' || stands === 'kept up') && training.wasDone(c, m);
        out.set(key, {
          movement: m, gap, single, insteadOf, rule: unknown ? 'first try' : before ? 'done before' : rule, why: [...why, ...first, ...(before ? [because('why.before')] : [])],
          weight: gap ? gap.weight : 0, first: false, goesOn: false, mainstay: false, block: stands, then, after,
        });
      },
    };
    const chain = new Set(goal ? goal.chain : c.model.order);
    for (const gap of [...gaps.values()].sort(heavier)) forGap(c, pool, gap, gaps, chain);
    const limiter = training.limiter(c, [...out.values()]);
    // Long off, and what is easier begins anew for the limiter: it waits for that.
    const low = limiter && limiter.now === null && isAnew(c, limiter.movement) ? [...out.values()].find(({ gap, rule }) => gap === limiter && rule === 'first try') : undefined;
    if (limiter && low && low.movement !== limiter.movement) pool.lost.push({ movement: limiter.movement, why: because('left.waits_for', { movement: low.movement }) });
    keptUp(c, pool, goal, chain);
    const balance = upright(c, pool);
    for (const of of out.values()) {
      of.first = (balance !== null && of === balance) || (of.gap !== null && of.gap === limiter);
      of.goesOn = chain.has(of.movement) && didLately(c, of.movement) !== null;
    }
    for (const of of mainstays(c, goal, [...out.values()])) of.mainstay = true;
    return { all: [...out.values()], lost: pool.lost, limiter, balance };
  };

  /** What each kind is trained by: its heaviest gap with a known number; of the goal's kind also the highest rung with one that the goal
   * itself needs. @param {Trainee} c @param {TrainingGoal | null} goal @param {Candidate[]} all @returns {Candidate[]} */
  const mainstays = (c, goal, all) => {
    const { facts, model } = c, known = all.filter(({ block, rule, then }) => (block === 'strength' || block === 'kept up') && rule !== 'first try' && then === null);
    const kinds = training.by(known.filter(({ block }) => block === 'strength'), ({ movement }) => facts.kind(movement));
    const heaviest = [...kinds.values()].map((list) => list.reduce((a, b) => ((b.weight - a.weight || a.movement - b.movement) > 0 ? b : a)));
    if (!goal) return heaviest;
    const own = model.of(goal.leaf), needed = readiness.leavesOf(c.tables.needs[own]).map(model.of);
    const road = known.filter(({ movement }) => facts.kind(movement) === facts.kind(own) && needed.includes(movement)).sort((a, b) => higher(c)(a.movement, b.movement));
    return [...heaviest, ...road.slice(0, 1)];
  };

  /** @param {Trainee} c @param {Pool} pool @param {Gap} gap @param {Map<number, Gap>} gaps @param {Set<number>} inChain */
  const forGap = (c, pool, gap, gaps, inChain) => {
    const m = gap.movement, { facts } = c, loaded = facts.has(m, LOADED);
    if (!training.isOpen(c, m) && !training.wasDone(c, m)) {
      // Of what was lifted and is not open for nothing but what was never shown: the lighter step of its family.
      const low = training.wasLifted(c, m) ? training.lighterStep(c, m) : -1;
      if (low >= 0) pool.add(low, gap, 'builder', { why: told(c, m, 'why.not_shown') });
      return;
    }
    if (!may(c, m)) {
      instead(c, pool, gap, inChain);
      return;
    }
    if (c.minor && loaded && isLowering(c, m)) {
      pool.lost.push({ movement: m, why: because('left.minor') });
      return;
    }
    if (training.isTooNew(c, m)) {
      easedIn(c, pool, gap, gaps);
      return;
    }
    const anew = isAnew(c, m);
    if (gap.share === WHOLE && facts.isCounted(m) && training.isOpen(c, m) && !(c.minor && loaded)) toShow(c, pool, gap, inChain);
    else if (facts.isMobility(m)) pool.add(m, gap, 'range');
    else if (facts.isPractice(m) && !(anew && isLowering(c, m))) pool.add(m, gap, 'practice');
    else if (gap.now === null && !anew) pool.add(training.gentlest(c, m), gap, 'first try');
    else if (!anew && fits(c, m)) {
      const up = harder(c, m);
      if (up === undefined || !fits(c, up)) pool.add(m, gap, 'the gap itself');
      if (up !== undefined) pool.add(up, gap, 'harder', { why: measured(c, m, 'why.easy') });
    } else built(c, pool, gap, anew);
  };
  /** What is to be shown once, and what goes on for its gap from then on. @param {Trainee} c @param {Pool} pool @param {Gap} gap @param {Set<number>} inChain */
  const toShow = (c, pool, gap, inChain) => {
    const m = gap.movement, up = training.onward(c, m, inChain, fits, isTooEasy);
    pool.add(m, gap, 'show it', { why: measured(c, m, 'why.show'), then: up });
    if (up !== null) pool.add(up, gap, 'harder', { why: isTooEasy(c, m) ? measured(c, m, 'why.easy') : [], after: may(c, up) ? null : m });
  };
  /** For a part that hurts: what has a number is left alone, what has none would be new. @param {Trainee} c @param {number} m @param {number} part @returns {Reason} */
  const leftFor = (c, m, part) => because(now(c, m) ? 'left.spared' : 'left.sore', { part });
  /** Why a movement that is asked for may not be trained today, for what hurts or rests; null where it may. @param {Trainee} c @param {number} m @returns {Reason | null} */
  const whyNotToday = (c, m) => { const part = training.touchedPart(c, m); return c.found.reached[m] !== 1 || training.pulledNerve(c, m) >= 0 ? whyNot(c, m) : part >= 0 ? leftFor(c, m, part) : null; };
  /** Why something is not tried first. @param {Trainee} c @param {number} m @returns {Reason} */
  const whyNotNew = (c, m) => { const part = training.touchedPart(c, m); return part >= 0 ? leftFor(c, m, part) : because('left.careful'); };
  /** What is not to be tried first: what is known below it, else nothing. @param {Trainee} c @param {Pool} pool @param {Gap} gap @param {Map<number, Gap>} gaps */
  const easedIn = (c, pool, gap, gaps) => {
    const m = gap.movement, low = c.facts.group(m) >= 0 && !c.facts.isPractice(m) ? builder(c, m, true) : undefined;
    // What is a gap itself has a line of its own.
    if (low !== undefined && !gaps.has(low)) pool.add(low, gap, 'care first', { why: [because('why.waits', { movement: m })] });
    else pool.lost.push({ movement: m, why: whyNotNew(c, m) });
  };
  /** A gap that is too hard for sets. @param {Trainee} c @param {Pool} pool @param {Gap} gap @param {boolean} anew */
  const built = (c, pool, gap, anew) => {
    const m = gap.movement, { facts, K } = c, is = gap.now, reps = is ? whole(is) : 0;
    const itself = !isLowering(c, m) && (anew ? !facts.has(m, LOADED) : !isGuarded(c, m) && reps >= K.itself);
    const low = builder(c, m, anew);
    if (low !== undefined && !(isTooEasy(c, low) && itself)) {
      pool.add(low, gap, 'builder', { why: anew ? [] : measured(c, m, 'why.too_few') });
      const single = !anew && reps >= 1 && reps <= K.singles && facts.measure(m) === REPS && c.tables.phase[m] === FULL && !facts.has(m, STRICT) && !c.minor;
      if (single) pool.add(m, gap, 'singles', { why: measured(c, m, 'why.single'), single: true });
    } else if (itself) {
      pool.add(m, gap, 'the gap itself', { why: [because('why.short_sets')] });
    } else {
      pool.lost.push({ movement: m, why: because('left.too_hard') });
    }
  };
  /** Whether this keeps a movement from being trained: a part or a class of its own that rests, or missing equipment. @param {Trainee} c @param {number} m @param {CoachsInstead} instead */
  const isKeptFrom = (c, m, [kind, which]) => {
    const { tables, found, person } = c;
    if (kind === 2) return tables.equipment[m].flat().includes(String(which)) && person.have !== null && !person.have.includes(String(which)) && !training.isAtHand(c, m);
    const own = kind === 0 ? ((tables.stresses[m] >> Number(which)) & 1) === 1 : tables.cautions[m].includes(Number(which));
    return own && found.states[m] === readiness.PAUSED && found.pausedBy(m).some(({ part, cls }) => (kind === 0 ? part : cls) === which);
  };
  /** No higher a rung than another, and of no caution class that it has not. @param {Trainee} c @param {number} one @param {number} than */
  const isNoHarder = ({ tables: { stage, cautions } }, one, than) => stage[one] <= stage[than] && cautions[one].every((cls) => cautions[than].includes(cls));
  /** Whether it may stand for what rests. @param {Trainee} c @param {number} other @param {number} m */
  const isGentler = (c, other, m) => c.found.reached[m] === 1 || isNoHarder(c, other, m);
  /** The first that the coach names for it, and that may be trained and is not too hard. @param {Trainee} c @param {number} m */
  const byCoach = (c, m) => {
    const of = (c.tables.instead[m] || []).find((one) => isKeptFrom(c, m, one) && may(c, one[2]) && !training.isTooNew(c, one[2]) && !training.bearsMore(c, one[2], m) && isGentler(c, one[2], m) && (c.facts.isMobility(one[2]) || (c.facts.isCounted(one[2]) && fits(c, one[2]) !== false)));
    return of === undefined ? undefined : of[2];
  };
  /** What stands for a gap that rests, or whose equipment is missing: the coach's own first. What is unknown is of the way to the goal or an
   * easier neighbour, and no higher; for what rests nothing harder or graver stands. @param {Trainee} c @param {Pool} pool @param {Gap} gap @param {Set<number>} inChain */
  const instead = (c, pool, gap, inChain) => {
    const m = gap.movement, { tables, facts } = c;
    const why = whyNot(c, m);
    const away = (/** @type {number} */ other) => Math.abs(tables.stage[other] - tables.stage[m]);
    const can = facts.group(m) < 0 || facts.isPractice(m) ? [] : c.model.order.filter((other) => tables.pattern[other] === tables.pattern[m] && facts.has(other, STRAIGHT) === facts.has(m, STRAIGHT)
      && facts.isCounted(other) && !facts.isPractice(other) && (tables.phase[other] === tables.phase[m] || !isLowering(c, other)) && may(c, other) && fits(c, other) !== false && !training.isTooNew(c, other)
      && !training.bearsMore(c, other, m) && isGentler(c, other, m) && (fits(c, other) || (tables.stage[other] <= tables.stage[m] && (inChain.has(other) || tables.easier[m].includes(other)))));
    const own = byCoach(c, m);
    if (!can.length && own === undefined) {
      pool.rests = true;
      pool.lost.push({ movement: m, why });
      return;
    }
    const nearest = own !== undefined ? own : can.reduce((a, b) => ((away(b) - away(a) || lower(c)(b, a)) < 0 ? b : a));
    pool.add(nearest, gap, 'instead', { why: [because('why.instead', { movement: m, why })], insteadOf: m });
  };

  /** What keeps the rest of the body as it is. @param {Trainee} c @param {Pool} pool @param {TrainingGoal | null} goal @param {Set<number>} inChain */
  const keptUp = (c, pool, goal, inChain) => {
    const { tables, facts } = c, all = () => [...pool.out.values()];
    const known = new Set(all().filter(({ block, rule }) => block === 'strength' && rule !== 'first try' && rule !== 'show it').map(({ movement }) => tables.pattern[movement]));
    const chain = new Set((goal ? goal.chain : c.model.order).map((m) => tables.pattern[m]));
    const can = c.model.order.filter((m) => facts.group(m) >= 0 && facts.isCounted(m) && !isLowering(c, m) && !facts.isPractice(m) && may(c, m));
    const straight = (/** @type {number} */ m) => (facts.has(m, STRAIGHT) ? 1 : 0), sore = (/** @type {number} */ m) => (training.sorePart(c, m) >= 0 ? 1 : 0);
    const keep = (/** @type {number[]} */ list, /** @type {Reason} */ why) => {
      const [m] = list.filter((one) => fits(c, one) && !pool.out.has(`${one} false`)).sort((a, b) => sore(a) - sore(b) || straight(a) - straight(b) || higher(c)(a, b));
      if (m === undefined) return false;
      known.add(tables.pattern[m]);
      const up = harder(c, m);
      if (up === undefined || !fits(c, up)) pool.add(m, null, 'kept up', { why: [why], block: 'kept up' });
      if (up !== undefined) pool.add(up, null, 'harder', { why: measured(c, m, 'why.easy'), block: 'kept up' });
      return true;
    };
    const late = (/** @type {number} */ m) => (training.gentlest(c, m) === m ? 0 : 1);
    const tryOne = (/** @type {number[]} */ list, /** @type {Reason} */ why) => {
      const [m] = list.filter((one) => now(c, one) === null && !pool.out.has(`${one} false`) && !training.isTooNew(c, one) && !training.waitsLately(c, one, c.day))
        .sort((a, b) => Number(c.trained.has(b)) - Number(c.trained.has(a)) || late(a) - late(b) || tables.stage[a] - tables.stage[b] || straight(a) - straight(b) || tables.cautions[a].length - tables.cautions[b].length || a - b);
      if (m !== undefined) pool.add(m, null, 'first try', { why: [c.trained.has(m) ? because('why.tried_anew') : why], block: 'kept up' });
    };
    const isHard = (/** @type {Candidate} */ { block }) => block === 'strength' || block === 'kept up', stands = (/** @type {Candidate} */ of) => isHard(of) && !training.waitsLately(c, of.movement, c.day);
    // Where nothing is known of a group, and what would be tried first of it rests: it is named.
    const nameResting = (/** @type {number} */ group) => {
      if (all().some((of) => isHard(of) && of.rule !== 'first try' && facts.group(of.movement) === group)) return;
      const [m] = c.model.order.filter((one) => facts.group(one) === group && facts.isCounted(one) && !isLowering(c, one) && !facts.isPractice(one) && !isGuarded(c, one) && now(c, one) === null && training.could(c, one))
        .sort((a, b) => tables.stage[a] - tables.stage[b] || straight(a) - straight(b) || tables.cautions[a].length - tables.cautions[b].length || a - b);
      if (m !== undefined && !may(c, m)) pool.lost.push({ movement: m, why: whyNot(c, m) });
    };
    for (const pattern of tables.pattern_order) {
      if (chain.has(pattern) && !known.has(pattern)) keep(can.filter((m) => tables.pattern[m] === pattern), because('why.no_gap', { pattern }));
    }
    for (let group = 0; group < tables.group_names.length; group += 1) {
      const plain = can.filter((m) => facts.group(m) === group && !isGuarded(c, m));
      if (![...known].some((pattern) => tables.groups[pattern] === group)) keep(plain, because('why.whole_body'));
      // What is heavy on a part that hurts has no line: where a group has nothing else, what is not.
      const ofGroup = all().filter((of) => facts.group(of.movement) === group && stands(of));
      if (ofGroup.length && ofGroup.every(({ movement }) => training.isHeavyOnSore(c, movement))) keep(plain.filter((m) => !training.isHeavyOnSore(c, m)), because('why.whole_body'));
      if (!ofGroup.length) tryOne(plain, c.model.order.some((m) => facts.group(m) === group && now(c, m) !== null) ? because('why.nothing_known') : because('why.nothing_of_group', { group }));
      nameResting(group);
    }
    // What was trained lately of the chain goes on, if less: it does not make room for others.
    for (const m of can) {
      const did = didLately(c, m);
      if (inChain.has(m) && did && did.movement === m && fits(c, m) && !isTooEasy(c, m)) pool.add(m, null, 'goes on', { why: [because('why.goes_on')], block: 'kept up' });
    }
    // Where a gap rests and nothing stands in its place, the rest of the body has the room.
    for (const pattern of pool.rests ? tables.pattern_order : []) {
      const plain = can.filter((m) => tables.pattern[m] === pattern && !isGuarded(c, m)), lines = tables.patterns[pattern] === 'core' ? 2 : 1;
      for (let i = 0; i < lines; i += 1) {
        const full = all().filter((of) => stands(of) && tables.pattern[of.movement] === pattern).length >= lines;
        const isNew = !full && !keep(plain, because('why.whole_body'));
        if (isNew && (['core', 'legs'].includes(tables.group_names[tables.groups[pattern]]) || !all().some((of) => stands(of) && facts.group(of.movement) === tables.groups[pattern]))) tryOne(plain, because('why.whole_body'));
      }
    }
    // Where at most one line is of what is known, or none of the legs, a stand on one leg too.
    const few = all().filter((of) => isHard(of) && of.rule !== 'first try').length < 2 || !all().some((of) => stands(of) && tables.group_names[facts.group(of.movement)] === 'legs');
    if (pool.rests && few && !all().some((of) => facts.has(of.movement, UPRIGHT))) {
      const [m] = c.model.order.filter((one) => facts.has(one, UPRIGHT) && may(c, one) && !training.isTooNew(c, one)).sort(lower(c));
      if (m !== undefined) pool.add(m, null, 'kept up', { why: [because('why.whole_body')] });
    }
    for (const m of pool.rests ? c.model.order : []) {
      if (facts.isMobility(m) && !isGuarded(c, m) && may(c, m) && !training.isTooNew(c, m)) pool.add(m, null, 'range', { why: [because('why.whole_body')] });
    }
    // Where no gap has a line of balance, the highest rung of the chain that is known stays in practice.
    const balances = (/** @type {number} */ m) => facts.word(m) === 'balance', of = goal ? goal.chain : c.model.order;
    if (all().some(({ movement }) => balances(movement))) return;
    const [still] = of.filter((m) => { const is = now(c, m); return balances(m) && may(c, m) && is !== null && whole(is) >= 1; }).sort(higher(c));
    if (still !== undefined) pool.add(still, null, 'kept up', { why: [because('why.no_gap', { pattern: tables.pattern[still] })] });
  };
  /** From 65 an upright balance movement in every session: of the gaps, else the highest rung. @param {Trainee} c @param {Pool} pool @returns {Candidate | null} */
  const upright = (c, pool) => {
    if (c.age === null || c.age < c.K.balance_age) return null;
    const stands = (/** @type {number} */ m) => c.facts.has(m, UPRIGHT) && may(c, m);
    const of = [...pool.out.values()].find(({ movement, rule }) => stands(movement) && rule !== 'show it');
    if (of) return of;
    const all = c.model.order.filter(stands).sort(higher(c)), m = all.find((one) => !training.isTooNew(c, one));
    if (m === undefined) {
      if (all.length) pool.lost.push({ movement: all[0], why: whyNotNew(c, all[0]) });
      return null;
    }
    pool.out.delete(`${m} false`);
    pool.add(m, null, 'balance from 65');
    return pool.out.get(`${m} false`) || null;
  };

  Object.assign(training, { candidates, whyNotToday, leftFor, isNoHarder });
})();
