'use strict';
// Training: how much of a movement, with what load, in which variation, and what is taken back. The same as the program's own,
// on the same tables. No page, no storage, no clock.
(() => {
  const { targets, readiness, training } = globalThis.rungbook;
  const { ONE, REPS, TIME, LENGTH, ANGLE, DONE, KILOGRAM } = targets;
  const { GUARDED, LOWERING, EACH_SIDE, WHOLE } = readiness;
  const { now, whole, down, may, foot, got, heavier, NEVER } = training;
  const { STRAIGHT, STRICT, LOADED, OWN_DOSE, UPRIGHT, OVER_FLOOR } = training.TRAITS;
  const FULL = 4;

  /** @param {string} key under `training` in the words @param {Reason['values']} [values] @returns {Reason} */
  const because = (key, values = {}) => ({ key, values });
  /** @param {Trainee} c @param {number} m @param {string} key said where something is known of it */
  const told = (c, m, key) => { const is = got(c, m); return is ? [because(key, { movement: m, got: is, standard: m })] : []; };
  /** Where a number only follows from another movement's, what is said instead. @type {Record<string, string>} */
  const FOLLOWS = { 'why.show': 'why.show_counts', 'why.easy': 'why.easy_kept' };
  /** The same, said of what only follows as what it counts as. @param {Trainee} c @param {number} m @param {string} key */
  const measured = (c, m, key) => {
    const from = training.followsFrom(c, m), instead_ = FOLLOWS[key] || 'why.counts';
    return from === null ? told(c, m, key) : told(c, m, instead_).map(({ key: of, values }) => because(of, { ...values, movement: instead_ === 'why.easy_kept' ? m : from }));
  };
  /** Why an open movement rests. @param {Trainee} c @param {number} m @returns {Reason} */
  const spared = (c, m) => {
    const [cause] = c.found.pausedBy(m);
    if (!cause) return because('left.below');
    const { kind } = cause, what = training.whatOf(cause);
    if (kind === 'light') return because('left.light');
    return because(kind === 'pain' ? 'left.pain' : kind === 'restrict' ? 'left.restricted' : 'left.paused', what);
  };
  /** Why an open movement may not be trained. @param {Trainee} c @param {number} m @returns {Reason} */
  const whyNot = (c, m) => {
    const part = training.pulledNerve(c, m);
    return c.found.reached[m] !== 1 ? spared(c, m) : part >= 0 ? because('left.pain', { part }) : because('left.equipment');
  };
  /** @param {Trainee} c @param {number} m */
  const isLowering = (c, m) => c.model.is(m, LOWERING);
  /** @param {Trainee} c @param {number} m */
  const isGuarded = (c, m) => c.model.is(m, GUARDED);
  /** @param {Trainee} c @param {number} m */
  const isTimed = (c, m) => c.facts.measure(m) === TIME;
  /** By the higher rung. @param {Trainee} c */
  const higher = ({ tables: { stage } }) => (/** @type {number} */ a, /** @type {number} */ b) => stage[b] - stage[a] || a - b;
  /** @param {Trainee} c */
  const lower = ({ tables: { stage } }) => (/** @type {number} */ a, /** @type {number} */ b) => stage[a] - stage[b] || a - b;
  /** Long off, and unknown since: what stands in the gap starts anew. @param {Trainee} c @param {number} m */
  const isAnew = (c, m) => now(c, m) === null && foot(c, c.tables.pattern[m]) !== NEVER;
  /** @param {Trainee} c @param {number} kilos hundred-millionths of a kilogram */
  const inPlates = (c, kilos) => down(kilos / plateOf(c)) * plateOf(c);
  /** The smallest plate. @param {Trainee} c */
  const plateOf = ({ tables }) => Math.max(1, tables.dose_of_school.smallest_plate);

  // ---- load

  /** @param {Trainee} c @param {number} m */
  const repsLoaded = (c, m) => Math.max(c.facts.dose(m).each, c.minor ? c.K.minor_reps : 1);
  /** The heaviest that is trained, by what was lifted for as many reps. @param {Trainee} c @param {number} m @param {number} reps */
  const bound = (c, m, reps) => {
    const least = reps * ONE, { person } = c;
    const tested = (c.tests.get(m) || []).flatMap(({ sides, bodyWeight }) => sides.filter(({ amount }) => amount >= least)
      .map(({ unit, load }) => readiness.mass(unit, load, bodyWeight === null ? person.bodyWeight : bodyWeight) || 0));
    const lifted = [...tested, ...(c.trained.get(m) || []).filter(({ did }) => Math.max(0, ...did) >= least).map(({ load }) => load)];
    const most = Math.max(...lifted);
    return lifted.length ? Math.max(raised(c, most), loadFromAbove(c, m, reps)) : Infinity;
  };
  /** A tenth more, or a plate if that is more. @param {Trainee} c @param {number} kilos */
  const raised = (c, kilos) => Math.max(kilos * c.K.bound, kilos + plateOf(c));
  /** The most that a plan's steps come to: what the harder step of the family says may be raised too. @param {Trainee} c @param {number} m @param {number} reps */
  const boundOfSteps = (c, m, reps) => {
    const above = loadFromAbove(c, m, reps);
    return Math.max(bound(c, m, reps), above > 0 ? raised(c, above) : 0);
  };
  /** @param {Trainee} c @param {Logged} of the best set with what was left */
  const withReserve = ({ K }, { did, reserve, load: kilos }) => ({ load: kilos, reps: Math.floor(Math.max(0, ...did) / ONE) + Math.min(reserve || 0, K.reserve) });
  /** What sets since the newest test say: added weight, reps with those left; after a session that fell short only what is known now.
   * @param {Trainee} c @param {number} m @returns {ShownSet[]} */
  const shown = (c, m) => {
    const is = now(c, m), from = training.countsFrom(c, m), tests = (c.tests.get(m) || []).filter(({ on }) => on > from && on <= c.day);
    const since = tests.length ? Math.max(...tests.map(({ on }) => on)) : from, log = (c.trained.get(m) || []).filter(({ on }) => on > since);
    const known = is ? [{ load: is.load, reps: whole(is) }] : [], short = log.length > 0 && training.isMissed(log[log.length - 1]);
    const own = [...tests.filter(({ on }) => on === since).map((tested) => training.ofTest(c, m, tested)).map((of) => ({ load: of.load, reps: whole(of) })), ...log.map((of) => withReserve(c, of))];
    return [...known, ...(short ? [] : own)].filter(({ load: kilos }) => kilos > 0);
  };
  /** What of the body moves with it; null where that is not known. @param {Trainee} c @param {number} m */
  const carried = ({ tables, person: { bodyWeight } }, m) => (bodyWeight === null || tables.share[m] === undefined ? null : bodyWeight * tables.share[m]);
  /** The lowest one-rep estimate of what moved. @param {Trainee} c @param {number} moved @param {number} reps */
  const lowest = ({ tables: { one_rep: factors } }, moved, reps) => (reps < 1 ? 0 : moved * factors[Math.min(reps, factors.length) - 1]);
  /** Of the set that says most: of two reps or more; where there is none, of a single. @param {Trainee} c @param {number} body @param {ShownSet[]} sets */
  const oneRep = (c, body, sets) => {
    const several = sets.filter(({ reps }) => reps >= 2);
    return Math.max(0, ...(several.length ? several : sets).map(({ load: kilos, reps }) => lowest(c, body + kilos, reps)));
  };
  /** The heaviest of these two weeks' log since the newest test for as many reps with two left; 0 after falling short. @param {Trainee} c @param {number} m @param {number} reps */
  const heldLately = (c, m, reps) => {
    const { K } = c, tested = Math.max(NEVER, ...(c.tests.get(m) || []).map(({ on }) => on).filter((on) => on <= c.day));
    const log = (c.trained.get(m) || []).filter(({ on }) => c.day - on < K.off[0] && on > tested);
    if (!log.length || training.isMissed(log[log.length - 1])) return 0;
    return Math.max(0, ...log.filter(({ did, reserve }) => did.every((set) => set >= did[0]) && did[0] >= reps * ONE && (reserve || 0) >= K.left).map((of) => of.load));
  };
  /** Of what has none on record. @param {Trainee} c @param {number} m */
  const triedLoad = (c, m) => {
    const { K, person: { bodyWeight }, facts, model, tables } = c, dose = facts.dose(m), asked = readiness.mass(dose.unit, dose.load, bodyWeight);
    const needed = [...new Set(readiness.leavesOf(tables.needs[m]).map(model.of))].filter((low) => facts.isByMax(low) && model.order.includes(low));
    const lifted = needed.flatMap((low) => shown(c, low)).filter(({ reps }) => reps >= K.try_reps).map(({ load: kilos }) => kilos * K.of_record);
    const most = Math.max(...lifted, bodyWeight === null ? -Infinity : bodyWeight * K.of_body), standard = model.target(m), stands = readiness.mass(standard.unit, standard.load, bodyWeight);
    // One side at a time half of the standard's and a tenth of body weight at most.
    const ofSide = !model.is(m, EACH_SIDE) ? [] : [(bodyWeight || 0) * K.of_body_side, ...(stands !== null && stands > 0 ? [stands * K.of_standard] : [])];
    const bounds = [...(asked !== null && asked > 0 ? [asked] : []), ...ofSide];
    const least = Math.min(most > 0 ? most : Infinity, ...bounds);
    return Number.isFinite(least) ? Math.max(plateOf(c), inPlates(c, least)) : plateOf(c);
  };
  /** Weight for sets of so many full reps, of what has weight on record. @param {Trainee} c @param {number} m @param {number} reps */
  const loadOf = (c, m, reps) => {
    const { K, tables: { chart }, person: { bodyWeight } } = c, sets = shown(c, m), body = carried(c, m), dose = c.facts.dose(m), asked = readiness.mass(dose.unit, dose.load, bodyWeight);
    const heaviest = (/** @type {number} */ least) => Math.max(0, ...sets.filter((set) => set.reps >= least).map((set) => set.load));
    const most = body === null ? 0 : oneRep(c, body, sets);
    const worked = body === null ? Math.max(Math.min(heaviest(0) * K.of_record, asked !== null && asked > 0 ? asked : Infinity), heaviest(reps) * K.of_record, plateOf(c))
      : most > 0 ? (most * chart[Math.min(reps + K.load_reps, chart.length) - 1]) / 100 - body : 0;
    const limit = bound(c, m, reps), held = Math.max(heaviest(reps + K.load_reps), heldLately(c, m, reps));
    return Math.max(0, inPlates(c, Math.min(worked, limit)), held <= limit ? held : 0);
  };
  /** Weight on the belt by what is on record; 0 where not even the smallest plate. @param {Trainee} c @param {number} m */
  const load = (c, m) => {
    const { K, person: { bodyWeight }, facts } = c, is = now(c, m), dose = facts.dose(m), asked = readiness.mass(dose.unit, dose.load, bodyWeight);
    if (!is || is.load <= 0) return triedLoad(c, m);
    if (facts.isByMax(m)) return Math.max(loadOf(c, m, repsLoaded(c, m)), loadFromAbove(c, m, repsLoaded(c, m)));
    const record = facts.word(m) === 'exit' ? Math.min(is.load, asked !== null && asked > 0 ? asked : Infinity) : is.load * K.of_record;
    return Math.max(plateOf(c), inPlates(c, record));
  };
  /** What was lifted of the harder step of the family that is not open yet. @param {Trainee} c @param {number} m @returns {ShownSet[]} */
  const shownAbove = (c, m) => c.facts.harder[m].filter((up) => training.wasLifted(c, up) && training.lighterStep(c, up) === m).flatMap((up) => shown(c, up));
  /** Weight for sets of so many by what was lifted of the harder step, a single too. @param {Trainee} c @param {number} m @param {number} reps */
  const loadFromAbove = (c, m, reps) => {
    const { K, tables: { chart } } = c, sets = shownAbove(c, m), body = carried(c, m), most = body === null ? 0 : oneRep(c, body, sets);
    if (body === null || most <= 0) return 0;
    return Math.max(0, Math.min(inPlates(c, (most * chart[Math.min(reps + K.load_reps, chart.length) - 1]) / 100 - body), ...sets.map((set) => set.load).sort((a, b) => b - a).slice(0, 1)));
  };
  /** The set that was done with it, else how it was worked out. @param {Trainee} c @param {number} m @param {number} kilos */
  const whyLoad = (c, m, kilos) => {
    const reps = shown(c, m).filter((set) => set.load === kilos).map((set) => set.reps);
    if (!reps.length) return because(carried(c, m) === null ? 'why.of_record' : 'why.load');
    return because('why.best', { got: { measure: REPS, atMost: false, sets: 1, amount: Math.max(...reps) * ONE, seconds: c.facts.seconds(m), unit: targets.MASS, load: kilos, hits: 0, of: 0 } });
  };
  /** What is said where far more is known than is asked, of strength that bears no weight. @param {Trainee} c @param {number} m @returns {Reason[]} */
  const farAbove = (c, m) => {
    const { facts, tables, K } = c;
    if (facts.has(m, LOADED) || facts.isPractice(m)) return [];
    const ownPace = facts.seconds(m) > 0 || (tables.rep_s[m] || K.rep_s) !== K.rep_s;
    return [...(facts.measure(m) === REPS && !ownPace ? [because('why.slow')] : []), ...(harder(c, m) === undefined ? [because('why.ask_harder')] : [])];
  };
  /** What a set leaves by the records, at most four; null where that is nothing, or not known. @param {Trainee} c @param {number} m @param {number} kilos @param {number} reps @param {ShownSet[]} more */
  const leaves = (c, m, kilos, reps, more) => {
    const { K, tables: { chart, one_rep: factors } } = c, body = carried(c, m), counts = chart.map((_, i) => i + 1);
    /** @type {number[]} */
    const can = [];
    for (const sets of [[...shown(c, m), ...more], shownAbove(c, m)]) {
      can.push(...sets.filter((set) => set.load >= kilos).map((set) => set.reps));
      if (body === null) continue;
      const moved = body + kilos, most = oneRep(c, body, sets), near = 1e-6 * KILOGRAM;
      can.push(...counts.filter((n) => most > 0 && (moved * 100) / chart[n - 1] <= most + near));
      for (const set of sets) {
        if (set.load < kilos) can.push(...counts.filter((n) => set.reps >= 1 && moved * factors[n - 1] <= lowest(c, body + set.load, set.reps) + near));
      }
    }
    const left = can.length ? Math.max(...can) - reps : 0;
    return left > 0 ? Math.min(left, K.reserve) : null;
  };

  // ---- which variation

  /** Strong enough for sets; null where nothing is known. @param {Trainee} c @param {number} m @returns {boolean | null} */
  const fits = (c, m) => {
    const { fits: kept } = c.memo;
    if (kept[m] === undefined) kept[m] = isFitting(c, m);
    return kept[m];
  };
  /** @param {Trainee} c @param {number} m @returns {boolean | null} */
  const isFitting = (c, m) => {
    const is = now(c, m), { K, facts } = c;
    if (!is) return null;
    if (facts.isByMax(m) && is.load > 0) return load(c, m) >= plateOf(c);
    if (c.minor && facts.has(m, LOADED) && facts.measure(m) === REPS && facts.group(m) >= 0) return whole(is) > K.minor_reps;
    return whole(is) >= (isTimed(c, m) ? K.hold_fits : Math.max(K.fits[0], Math.min(facts.dose(m).each, K.fits[1])));
  };
  /** For each movement everything that its needs mention, all the way down, as bits: worked out once, from the ground up, in one pass but
   * where needs run in circles. @param {Model} model @returns {Uint32Array[]} */
  const depths = (model) => {
    const { tables, order } = model, words = Math.ceil(model.count / 32), sets = tables.ids.map(() => new Uint32Array(words));
    const asked = tables.needs.map((need) => [...new Set(readiness.leavesOf(need).map(model.of))]), up = [...order].sort((a, b) => tables.stage[a] - tables.stage[b]);
    for (let changed = true; changed;) {
      changed = false;
      for (const m of up) {
        const set = sets[m];
        for (const low of asked[m]) {
          const more = sets[low];
          for (let w = 0; w < words; w += 1) {
            const all = set[w] | more[w] | (w === low >> 5 ? 1 << (low & 31) : 0);
            if (all >>> 0 !== set[w]) { set[w] = all; changed = true; }
          }
        }
      }
    }
    return sets;
  };
  /** @type {WeakMap<Model, Uint32Array[]>} */
  const known = new WeakMap();
  /** Whether the needs of one of these mention a movement, all the way down. @param {Trainee} c @param {number[]} from @returns {(low: number) => boolean} */
  const isUnder = ({ model }, from) => {
    const sets = known.get(model) || depths(model);
    known.set(model, sets);
    return (low) => from.some((m) => (sets[m][low >> 5] >>> (low & 31)) & 1);
  };
  /** What may build others of its pattern, by the higher rung. @param {Trainee} c @param {number} pattern */
  const builders = (c, pattern) => {
    const { builders: kept } = c.memo, { tables, facts, model } = c;
    if (!kept[pattern]) kept[pattern] = model.order.filter((low) => tables.pattern[low] === pattern && facts.isCounted(low) && !isLowering(c, low) && may(c, low)).sort(higher(c));
    return kept[pattern];
  };
  /** Of the phase that builds another: its own, the full movement for a lowering one. @param {Trainee} c @param {number} m @param {number} low */
  const isAlike = ({ tables: { phase }, model }, m, low) => (phase[low] || FULL) === (model.is(m, LOWERING) ? FULL : phase[m] || FULL);
  /** What may be trained below a movement, nearest first. @param {Trainee} c @param {number} m @returns {number[]} */
  const below = (c, m) => {
    const { below: kept } = c.memo;
    if (kept[m]) return kept[m];
    const { tables, facts, model } = c, fine = builders(c, tables.pattern[m]).filter((low) => low !== m), armed = fine.filter((low) => facts.has(low, STRAIGHT) === facts.has(m, STRAIGHT));
    const named = readiness.leavesOf(tables.needs[m]).map(model.of);
    const all = [...new Set([...fine.filter((low) => tables.easier[m].includes(low)), ...armed.filter((low) => named.includes(low)), ...armed.filter(isUnder(c, [m, ...tables.easier[m]]))])];
    kept[m] = [...all.filter((low) => isAlike(c, m, low)), ...all.filter((low) => !isAlike(c, m, low))];
    return kept[m];
  };
  /** What builds a movement that does not fit yet. @param {Trainee} c @param {number} m @param {boolean} [plain] neither inverted nor loaded */
  const builder = (c, m, plain = false) => {
    const list = below(c, m).filter((low) => !(plain && isGuarded(c, low)) && !training.isTooNew(c, low)), alike = list.filter((low) => isAlike(c, m, low));
    const first = (/** @type {number[]} */ of, /** @type {boolean | null} */ is) => of.find((low) => fits(c, low) === is);
    return [first(alike, true), first(alike, null), first(list, true), first(list, null)].find((low) => low !== undefined);
  };
  /** @param {Trainee} c @param {number} m */
  const isTooEasy = (c, m) => {
    const is = now(c, m), { each } = c.facts.dose(m);
    if (!is || c.facts.has(m, LOADED)) return false;
    return isTimed(c, m) ? whole(is) > c.K.easy_hold * each : whole(is) >= each + c.K.easy;
  };
  /** The lowest open harder neighbour of what is too easy. @param {Trainee} c @param {number} m */
  const harder = (c, m) => (isTooEasy(c, m) ? c.facts.harder[m].filter((up) => may(c, up) && !isLowering(c, up) && fits(c, up) !== false && !training.isTooNew(c, up)).sort(lower(c))[0] : undefined);

  // ---- what is taken back

  /** While a part rests: what bears on it lightly, and what is easier than something known that bears on it, is at most what a pain of 4
   * or 5 leaves. @param {Trainee} c @param {number} m @param {Pain} pain */
  const isLeftOf = (c, m, pain) => !c.facts.isMobility(m) && readiness.isPausing(c.model, c.person, pain, c.day) && (((c.tables.stresses[m] >> pain.part) & 1) === 1
    || (c.facts.isCounted(m) && [...training.above(c, m)].some((up) => training.bearsOn(c, up, pain.part) && now(c, up) !== null)));

  /** @param {Trainee} c @param {number} m @param {number} on @param {number} first the plan's first day @returns {Ease} */
  const ease = (c, m, on, first) => {
    const { K, tables } = c;
    /** @type {Ease} */
    const out = { light: false, nearly: false, easier: false, hold: false, sore: false, worse: false, least: false, rule: null, why: null, most: null, ...training.afterTimeOff(c, m, on, first) };
    if (training.hasSign(c)) out.hold = true;
    for (const of of training.easedPains(c)) {
      if (training.isEasedOn(c, of, m) && on - of.on <= K.pain_days) Object.assign(out, { hold: true, rule: 'pain', why: because('why.hurt', { part: of.part, score: of.score }) });
    }
    for (const pain of training.newestPains(c)) {
      const { part, score, nextMorning } = pain;
      const rests = isLeftOf(c, m, pain);
      if (!rests && !(training.isHolding(pain) && ((tables.stresses[m] >> part) & 1) === 1)) continue;
      const lightly = !training.bearsOn(c, m, part);
      if (lightly && now(c, m) === null) continue;
      const next = nextMorning !== null && nextMorning > score, worse = rests || (!lightly && training.takesBack(c, pain)), least = worse && (rests || score >= K.pain_least);
      const key = least ? 'why.pain_least' : worse && next ? 'why.pain_worse' : worse ? 'why.pain_less' : 'why.pain_hold';
      Object.assign(out, { hold: true, sore: true, worse: out.worse || worse, least: out.least || least, nearly: out.nearly && !worse, light: out.light || worse, easier: out.easier || worse, rule: 'pain', why: because(key, { part, score }) });
    }
    for (const { spares, until } of training.ended(c)) {
      const week = Math.floor((on - until - 1) / 7);
      if (!spares(m) || week >= K.pause_weeks) continue;
      Object.assign(out, { nearly: out.nearly && week === 1, light: out.light || week !== 1, easier: out.easier || week < 2, hold: true, rule: 'after a pause', why: because('why.after_pause', { n: week + 1 }) });
    }
    return out;
  };

  /** With what another movement says of a part that hurts. @param {Ease} of @param {Ease} other @returns {Ease} */
  const andSore = (of, other) => (other.sore && !of.sore ? { ...of, hold: true, sore: true, worse: other.worse, least: other.least, nearly: of.nearly && !other.worse, light: of.light || other.worse, rule: other.rule, why: other.why, most: other.most } : { ...of, most: other.most });

  // ---- how much

  /** The newest session of the last two weeks of a movement, or of a harder member of its family. @param {Trainee} c @param {number} m @returns {Logged | null} */
  const didLately = (c, m) => {
    const { lately: kept } = c.memo;
    if (kept[m] !== undefined) return kept[m];
    const recent = c.log.filter(({ on }) => c.day - on < c.K.off[0]).reverse(), up = recent.length && c.facts.isCounted(m) ? training.above(c, m) : new Set();
    kept[m] = recent.find(({ movement }) => movement === m) || recent.find(({ movement }) => up.has(movement)) || null;
    return kept[m];
  };
  /** A part that hurts and that a movement stresses too much for that: it stretches it, is heavy on it, or began to hurt on that day; -1
   * where there is none. @param {Trainee} c @param {number} m @param {number} day */
  const tooMuchOn = (c, m, day) => {
    const pain = training.newestPains(c).find((one) => training.isHolding(one) && (c.facts.isMobility(m) ? training.stresses(c, m, one.part) : training.bearsOn(c, m, one.part)
      && (((c.tables.heavy_on[m] >> one.part) & 1) === 1 || one.on === day)));
    return pain ? pain.part : -1;
  };
  /** Sets of a logged session, two at least. @param {Trainee} c @param {Logged} of */
  const setsOf = ({ K }, { did }) => Math.max(K.fewest, did.length);

  /** What the log says of moving on, at this load; any where none is given. @param {Trainee} c @param {number} m @param {number | null} at */
  const said = (c, m, at) => {
    const since = Math.max(foot(c, c.tables.pattern[m]), ...(c.tests.get(m) || []).map(({ on }) => on)), strict = c.facts.has(m, STRICT);
    const log = (c.trained.get(m) || []).filter((of) => of.on > since && (at === null || of.load === at)), last = log[log.length - 1];
    if (!last || c.day - last.on >= c.K.off[0] || !last.did.length) return { last: null, full: false, missed: false, earned: false, alike: 0 };
    const full = (/** @type {Trained} */ { did }) => did.every((set) => set >= did[0]);
    const alike = (/** @type {Logged} */ of) => full(of) && of.did[0] === last.did[0] && of.load === last.load;
    const good = (/** @type {Logged} */ of) => alike(of) && (strict ? (of.reserve || 0) >= c.K.left : of.did[of.did.length - 1] >= of.did[0] + c.K.over * ONE);
    const other = [...log].reverse().findIndex((of) => !good(of)), running = other < 0 ? log.length : other;
    return { last, full: full(last), missed: !full(last) && training.isMissed(last), earned: running >= everyOf(c, m), alike: running };
  };

  /** So many times alike give a step. @param {Trainee} c @param {number} m */
  const everyOf = ({ K, facts }, m) => (facts.has(m, STRICT) ? K.three : K.two);
  /** The steps that a plan shows for a line that stood so often alike, by the log and in the plan's earlier full weeks.
   * @param {Trainee} c @param {number} m @param {number} times @param {Ease} taken */
  const planned = (c, m, times, taken) => (taken.hold ? 0 : Math.min(c.K.planned, Math.floor(times / everyOf(c, m))));

  /** Sets to the nearest, half up, so that the volume of the dose is kept. @param {Trainee} c @param {number} m @param {number} amount */
  const setsFor = (c, m, amount) => {
    const { K, facts } = c, practice = facts.isPractice(m), held = isTimed(c, m) && !practice, { all } = facts.dose(m);
    const volume = held ? Math.min(Math.max(all, K.held[0] * ONE), K.held[1] * ONE) : all;
    const [least, most] = practice ? [facts.has(m, OWN_DOSE) ? 1 : K.attempts[0], K.attempts[1]] : K.sets;
    return Math.max(least, Math.min(most, Math.floor((2 * volume + amount * ONE) / (2 * amount * ONE))));
  };

  /** Whether the smallest plate is little enough of what moves. @param {Trainee} c @param {number} kilos */
  const isStep = (c, kilos) => plateOf(c) <= c.K.plate_share * ((c.person.bodyWeight || 0) + kilos) + 1e-6;
  /** Sets, amount and load of a movement with weight on record. @param {Trainee} c @param {number} m @param {number} before how often it stood in the earlier weeks of the plan @param {Ease} taken @returns {Amounts} */
  const byWeight = (c, m, before, taken) => {
    const { K } = c, { last, full, missed, earned, alike } = said(c, m, null), least = repsLoaded(c, m);
    let kilos = load(c, m), each = least, { sets } = c.facts.dose(m), rule = '', why = whyLoad(c, m, kilos), times = before;
    /** @type {ShownSet[]} */
    const more = [];
    if (last && full && last.did[0] >= least * ONE) {
      why = because('why.load_held', { weight: last.load });
      // What was done in full with as much goes on with as many reps as it had.
      if (kilos <= last.load) {
        times += earned ? 0 : alike;
        [kilos, each] = [last.load, Math.max(least, Math.min(K.reps, Math.floor(last.did[0] / ONE)))];
        sets = Math.min(sets, Math.max(setsFor(c, m, each), last.did.length));
      }
      if (earned && !taken.hold && isStep(c, kilos)) [kilos, rule, why] = [kilos + plateOf(c), 'strict', because('why.in_full')];
    } else if (last && missed) {
      [kilos, rule, why] = [Math.min(kilos, last.load), 'what training shows', because('why.fell_short')];
    } else {
      const did = didLately(c, m), inFull = did && did.movement !== m && did.did.every((set) => set >= did.did[0]) && did.did[0] >= least * ONE;
      if (did && inFull && did.load > kilos) {
        [kilos, why] = [did.load, because('why.load_held', { weight: did.load })];
        more.push(withReserve(c, did));
      }
    }
    const lately = taken.sore ? didLately(c, m) : null;
    if (lately) [kilos, sets] = [Math.min(kilos, lately.load), Math.min(sets, setsOf(c, lately))];
    // Back from time off to what was lifted before it at most.
    const { most } = taken, before_ = most && most.load > 0 ? most : null;
    if (before_) sets = Math.min(sets, before_.sets);
    const steps = isStep(c, kilos) ? planned(c, m, times, taken) : 0, is = kilos;
    const asks = Math.min(kilos + steps * plateOf(c), boundOfSteps(c, m, each), before_ ? before_.load : Infinity) * training.shareOf(c, taken);
    // What was lifted need not be of whole plates.
    kilos = Math.max(plateOf(c), asks === kilos || (before_ && asks === before_.load) ? asks : inPlates(c, asks));
    const left = leaves(c, m, kilos, each, more);
    // A plan's step leaves one rep at least: it is taken only if all before it was done in full.
    const least_ = Math.max(K.left_step, left || 0);
    if (steps > 0 && kilos > is) return { sets, amount: each, load: kilos, rule, why: because('why.if_done', { n: least_ }), left: least_ };
    return { sets, amount: each, load: kilos, rule, why, left };
  };

  /** @param {Trainee} c @param {number} m @param {Now} is what can be done now @param {number} before how often it stood in the earlier weeks of the plan @param {Ease} taken @returns {Amounts} */
  const amounts = (c, m, is, before, taken) => {
    const { K, facts } = c, timed = isTimed(c, m), practice = facts.isPractice(m), own = facts.has(m, OWN_DOSE) && practice, dose = facts.dose(m);
    const strict = facts.has(m, STRICT), step = timed ? K.step_s : 1, can = whole(is);
    if (facts.isByMax(m) && is.load > 0) return byWeight(c, m, before, taken);
    const part = (/** @type {number} */ of) => down(can * of);
    let top = 0, amount = 0;
    if (practice) {
      amount = own ? Math.min(dose.each, part(K.share)) : part(K.hold);
      top = timed ? can : can - 1;
    } else {
      top = timed ? K.hold_most : isGuarded(c, m) || isLowering(c, m) || facts.has(m, STRAIGHT) ? K.reps_strict : K.reps;
      amount = Math.min(top, part(timed ? K.hold : K.share));
      top = Math.min(top, timed ? part(K.share) : can - 1);
    }
    const fewest = c.minor && facts.has(m, LOADED) && !timed && facts.group(m) >= 0 ? K.minor_reps : 1;
    amount = Math.max(fewest, amount);
    const { last, full, missed, earned, alike } = said(c, m, is.load), done = last ? Math.floor(last.did[0] / ONE) : 0;
    let rule = '', [why] = measured(c, m, 'why.best'), times = before;
    if (full) {
      amount = Math.max(amount, done);
      if (!earned && amount === done) times += alike;
      if (earned && !taken.hold) [amount, rule, why] = [amount + step, strict ? 'strict' : 'two for two', because(strict ? 'why.in_full' : 'why.two_over')];
    } else if (missed) {
      [amount, rule, why] = [Math.min(amount, done), 'what training shows', because('why.fell_short')];
    }
    amount = Math.max(fewest, Math.min(amount, top));
    amount = Math.max(amount, Math.min(amount + planned(c, m, times, taken) * step, timed || practice ? top : Math.min(top, can - K.left)));
    let sets = setsFor(c, m, amount);
    const lately = taken.sore ? didLately(c, m) : null;
    // Where it hurts nothing grows.
    if (lately) [amount, sets] = [Math.max(fewest, Math.min(amount, Math.floor(lately.did[0] / ONE))), Math.min(sets, setsOf(c, lately))];
    if (taken.most) [amount, sets] = [Math.max(fewest, Math.min(amount, taken.most.amount)), practice ? sets : Math.min(sets, taken.most.sets)];
    if (taken.light) amount = Math.max(fewest, down(amount * training.shareOf(c, taken)));
    return { sets, amount, load: facts.has(m, LOADED) && is.load >= 0 ? load(c, m) : is.load || null, rule, why, left: timed ? null : Math.min(K.reserve, Math.max(0, Math.min(can - amount, training.leavesBack(taken, amount)))) };
  };

  // ---- a line

  /** The amount of a first try, and its load. @param {Trainee} c @param {number} m */
  const triedSet = (c, m) => {
    const { K, facts } = c, dose = facts.dose(m), loaded = facts.has(m, LOADED), few = isGuarded(c, m) || isLowering(c, m) || dose.each <= K.try_dose;
    const amount = isTimed(c, m) ? Math.min(facts.word(m) === 'carry' ? K.try_carry : K.try_s, dose.each) : loaded && c.minor && facts.group(m) >= 0 ? K.minor_reps : Math.min(dose.each, few ? K.try_reps_few : K.try_reps);
    return { amount: Math.max(1, amount), kilos: loaded ? load(c, m) : readiness.mass(dose.unit, dose.load, c.person.bodyWeight) || null };
  };
  /** One set of what has no number yet, as it is tried first; of range the seconds that it is held. @param {Trainee} c @param {number} m @returns {Got} */
  const firstSet = (c, m) => {
    const { K, facts } = c, measure = facts.measure(m), plain = { atMost: false, sets: 1, seconds: 0, unit: targets.NO_LOAD, load: 0, hits: 0, of: 0 };
    if (facts.isMobility(m)) return { ...plain, measure: TIME, amount: (isTimed(c, m) ? K.unknown_s : K.range_s) * ONE };
    const { amount, kilos } = triedSet(c, m);
    return { ...plain, measure, amount: amount * ONE, seconds: measure === REPS ? facts.seconds(m) : 0, unit: kilos ? targets.MASS : targets.NO_LOAD, load: kilos || 0 };
  };

  /** Sets of what has an amount; null where nothing of it is asked today. @param {Trainee} c @param {Candidate} of @param {number} m @param {Ease} taken @param {{ before: number, tried: boolean, again: boolean, isLimiter: boolean }} at
   * @returns {Amounts | null} */
  const asked = (c, of, m, taken, { before, tried: goesOn, again, isLimiter }) => {
    const { K, facts } = c, is = now(c, m), dose = facts.dose(m), timed = isTimed(c, m), loaded = facts.has(m, LOADED);
    if (facts.isMobility(m) && (of.rule !== 'show it' || taken.rule)) {
      const amount = !timed ? K.range_s : !is ? K.unknown_s : Math.max(1, Math.min(dose.each, down(whole(is) * K.share)));
      const old = training.measuredOtherwise(c, m);
      // The line says itself what it works towards.
      const [why] = is ? told(c, m, of.gap ? 'why.so_far' : 'why.asked') : [!training.hasAll(c, m) ? because('why.measure_not') : old ? because('why.measure_again', { sides: old }) : because('why.measure')];
      return { sets: isLimiter && is ? K.range_limiter : timed && is ? dose.sets : K.range_sets, amount, load: null, rule: '', why, left: null };
    }
    if (!is) {
      if (taken.rule) return null;
      const { amount, kilos } = triedSet(c, m);
      // By its number a set more, but no more than its own dose has.
      const more = facts.has(m, OWN_DOSE) ? Math.max(K.fewest, Math.min(K.again, dose.sets)) : K.again;
      return { sets: goesOn ? more : K.try_sets, amount, load: kilos, rule: goesOn ? 'until it is tested' : 'first try', why: goesOn ? because('why.until_number') : null,
        // Of what is plain nobody knows what a few reps leave: the line says when to stop.
        left: !timed && (isGuarded(c, m) || isLowering(c, m) || facts.word(m) === 'exit') ? K.left : null };
    }
    if (of.rule === 'show it' && of.gap) {
      if (taken.rule) return null;
      const target = c.model.target(of.gap.leaf);
      return { sets: target.of || target.sets, amount: Math.floor(target.amount / ONE), load: readiness.mass(target.unit, target.load, c.person.bodyWeight) || (!loaded ? null : is.load > 0 ? is.load : load(c, m)), rule: '', why: facts.isCounted(m) && whole(is) >= K.far * Math.floor(target.amount / ONE) ? because('why.show_far') : null, left: null };
    }
    if (of.single) return taken.rule ? null : { sets: K.single_sets, amount: 1, load: is.load || null, rule: '', why: null, left: null };
    const out = amounts(c, m, is, of.block === 'kept up' ? 0 : before, taken);
    // After a session that fell short three sets at most that once, and nothing of it is said once a later one is done.
    if (out.rule === 'what training shows' && !again) out.sets = Math.min(out.sets, K.short_sets);
    else if (out.rule === 'what training shows') [out.rule, out.why] = ['', facts.isByMax(m) && out.load !== null && out.load > 0 ? whyLoad(c, m, out.load) : measured(c, m, 'why.best')[0]];
    if (!taken.rule && whole(is) >= K.far * out.amount) out.more = farAbove(c, m);
    if (of.block === 'kept up') {
      const lately = taken.sore ? didLately(c, m) : null;
      out.sets = Math.min(K.keep_sets[c.age !== null && c.age >= K.keep_age ? 1 : 0], lately ? setsOf(c, lately) : Infinity);
    }
    return out;
  };

  /** Which side comes first, and which gets one set more. @param {Trainee} c @param {number} m @returns {{ side: Line['side'], weaker: Line['weaker'] }} */
  const sides = (c, m) => {
    if (!c.model.is(m, EACH_SIDE)) return { side: null, weaker: null };
    const is = now(c, m), { atMost } = c.model.target(m), measure = c.facts.measure(m);
    if (!is || is.left === null || is.right === null || is.left === is.right) return { side: 'each', weaker: null };
    const [low, high] = [Math.min(is.left, is.right), Math.max(is.left, is.right)];
    const apart = measure === LENGTH ? c.K.sides_cm * ONE : measure === ANGLE ? c.K.sides_deg * ONE : measure === DONE ? ONE : c.K.sides * high + 1e-6;
    return { side: 'weaker first', weaker: high - low > apart ? ((is.left < is.right) !== atMost ? 'left' : 'right') : null };
  };
  /** Seconds under way in one set of a side. @param {Trainee} c @param {number} m @param {string} unit @param {number} amount */
  const workOfSide = (c, m, unit, amount) => amount * (c.facts.seconds(m) && unit === 'reps' ? c.facts.seconds(m) / ONE : unit === 's' ? 1 : c.tables.rep_s[m] || c.K.rep_s);
  /** Seconds under way in one set. @param {Trainee} c @param {number} m @param {string} unit @param {number} amount */
  const work = (c, m, unit, amount) => workOfSide(c, m, unit, amount) * (c.model.is(m, EACH_SIDE) ? 2 : 1);
  /** @param {Trainee} c @param {number} m @param {string} unit @param {number} amount */
  const restOf = (c, m, unit, amount) => {
    const { K: { rest, short }, facts } = c, word = facts.word(m), grouped = facts.group(m) >= 0;
    if (c.tables.rest_s[m]) return c.tables.rest_s[m];
    if (facts.isMobility(m) || ((word === 'balance' || word === 'exit') && workOfSide(c, m, unit, amount) <= short)) return rest.range;
    if (isGuarded(c, m) && grouped) return rest.guarded;
    return !grouped || word === 'core' || unit === 's' ? rest.easy : rest.strength;
  };
  /** Minutes of a line, rounded up. @param {Trainee} c @param {Line} line */
  const minutes = (c, { movement, unit, amount, sets, weaker, rest }) => Math.ceil(((2 * sets + (weaker ? 1 : 0)) * (work(c, movement, unit, amount) + rest)) / 120 - 1e-9);

  /** What is done in a first try: what is plain goes on while it is clean; under a restriction, and where something hurt or rested lately, no
   * further than what is asked; a hold to its target. Back from time off, on a part that hurts little, from 65 on and with one side at a time to a bound, a
   * hold back from time off to a nearer one. @param {Trainee} c @param {Line} line @param {number} on @returns {Pick<Line, 'then' | 'most'>} */
  const tried = (c, { movement: m, unit, gap, amount }, on) => {
    const { K } = c;
    if (isGuarded(c, m) || isLowering(c, m) || c.facts.word(m) === 'exit' || training.isHeldBack(c) || training.lately(c, m, on).length > 0) return { then: 'did', most: 0 };
    const hurts = training.newestPains(c).some(({ part, score }) => score > 0 && ((c.tables.stresses[m] >> part) & 1) === 1), isBack = training.isBack(c);
    const isBound = isBack || hurts || (c.age !== null && c.age >= K.balance_age) || c.model.is(m, EACH_SIDE), [reps, held] = K.try_back;
    if (unit === 'reps') return isBound ? { then: 'stop_most', most: reps } : { then: 'stop_two', most: 0 };
    const target = c.model.target(gap && gap.movement === m ? gap.leaf : m);
    const most = Math.min(Math.floor(target.amount / ONE), isBound ? held : Infinity, isBack ? K.try_back_s : Infinity);
    return most > amount ? { then: 'hold_most', most } : { then: 'did', most: 0 };
  };

  /** Where lying on the belly is left alone, of what is done over the floor the easier neighbour with the hands raised, if it is known.
   * @param {Trainee} c @param {number} m */
  const handsRaised = (c, m) => {
    if (!training.isRestricted(c, 'prone') || c.facts.group(m) < 0 || !c.facts.has(m, OVER_FLOOR)) return m;
    const [low] = c.tables.easier[m].filter((one) => (may(c, one) || training.isOnlyUnsure(c, one)) && !c.facts.has(one, OVER_FLOOR) && !isGuarded(c, one) && c.facts.isCounted(one) && now(c, one) !== null).sort(higher(c));
    return low === undefined ? m : low;
  };

  /** The line of a candidate on a day, or null. @param {Trainee} c @param {Candidate} of @param {{ on: number, first: number, before: number, tried: boolean, again: boolean, isLimiter: boolean }} at @returns {Line | null} */
  const line = (c, of, at) => {
    const eased = ease(c, of.movement, at.on, at.first);
    let m = of.movement;
    if (eased.easier && !c.facts.isMobility(m)) {
      const plain = (/** @type {number} */ one) => !isGuarded(c, one) && now(c, one) !== null, low = below(c, m).find(plain);
      if (low === undefined && (isGuarded(c, m) || isLowering(c, m))) return null;
      // Where that too is to be as little as can be, the next easier neighbour of it.
      const next = low !== undefined && ease(c, low, at.on, at.first).least ? below(c, low).find((one) => plain(one) && c.tables.easier[low].includes(one)) : undefined;
      if (low !== undefined) m = next === undefined ? low : next;
    }
    const low = of.single || of.rule === 'show it' ? m : handsRaised(c, m), isRaised = low !== m;
    m = low;
    // What stands in may stress what the other does not.
    const both = andSore(eased, ease(c, m, at.on, at.first)), isOver = both.why !== null && ['why.hurt', 'why.after_pause'].includes(both.why.key);
    // Of what hurt or rested lately a first try that need not wait is as any other.
    const late = isOver && now(c, m) === null && !c.facts.isMobility(m) && !training.afterTimeOff(c, m, at.on, at.first).rule ? both.why : null;
    if (late && training.waitsLately(c, m, at.on)) return null;
    const taken = late ? { ...both, light: false, easier: false, nearly: false, rule: null, why: null } : both;
    // What was shown earlier in the plan, or is taken back, is trained on until its result is in, where it fits.
    const shown = of.rule === 'show it' && (at.tried || taken.rule !== null || taken.most !== null);
    const goesOn = of.block === 'range' ? 'range' : of.block === 'practice' ? 'practice' : fits(c, of.movement) ? 'the gap itself' : 'show it';
    const by = shown && goesOn !== 'show it' ? { ...of, rule: goesOn, why: [] } : of;
    const does = asked(c, by, m, taken, at);
    if (!does) return null;
    const { facts, K } = c, unit = facts.measure(m) === REPS && (!facts.isMobility(m) || (by.rule === 'show it' && !taken.rule)) ? 'reps' : 's';
    let { rule } = by;
    if (does.rule === 'first try' || does.rule === 'until it is tested' || ['strict', 'two for two', 'what training shows'].includes(does.rule)) rule = does.rule;
    // What is known of what stands in is said, not that nothing is known of the other.
    const said_ = now(c, m) === null ? by.why : by.why.filter(({ key }) => key !== 'why.nothing_known' && key !== 'why.tried_anew');
    const why = does.rule === 'until it is tested' ? [] : said_.filter(({ key, values }) => !((key === 'why.easy' || key === 'why.easy_kept') && values.movement === m));
    if (does.why) why.push(does.why);
    why.push(...(does.more || []));
    if (isRaised) why.unshift(because('why.raised'));
    if (taken.rule && taken.why) {
      rule = taken.rule;
      why.unshift(training.stresses(c, m, Number(taken.why.values.part)) || !taken.why.key.startsWith('why.pain') ? taken.why : because('why.pain_near', taken.why.values));
    }
    if (late) why.unshift(late);
    const first = rule === 'first try' || rule === 'until it is tested';
    /** @type {Line} */
    const out = {
      block: of.block, movement: m, sets: taken.light ? Math.max(K.fewest, Math.ceil(does.sets / 2)) : does.sets, amount: does.amount, unit, seconds: unit === 'reps' && facts.seconds(m) ? facts.seconds(m) / ONE : null,
      load: does.load, ...sides(c, m), rest: restOf(c, m, unit, does.amount), left: does.left, minutes: 0, gap: of.gap, insteadOf: of.insteadOf, rule, why,
      then: rule === 'show it' ? 'result' : taken.hold ? 'same' : 'step', most: 0, eased: (taken.light || taken.easier) && !training.comesBack(taken), sore: taken.sore, worse: taken.worse, candidate: of,
    };
    if (first) Object.assign(out, tried(c, out, at.on));
    out.minutes = minutes(c, out);
    return out;
  };

  Object.assign(training, { because, told, measured, isLowering, isGuarded, higher, lower, isAnew, fits, builder, isTooEasy, harder, line, firstSet, sides, whyNot, minutes, ease, didLately, setsOf, tooMuchOn });
})();
