'use strict';
// Training, first part: what is known of a person. What they can do now of each movement, how much of a target that is, and what
// may be trained today at all. The same as the program's own, on the same tables. No page, no storage, no clock.
(() => {
  const { targets, readiness } = globalThis.rungbook;
  const { by, isOwned, isOpen, isHolding, takesBack, stresses, bearsOn, whatOf, newestPains, ended, easedPains, isEasedOn, lately, pulledNerve, waitsForAge, LOADED } = globalThis.rungbook.held;
  const { ONE, REPS, TIME } = targets;
  const { LIMITS } = globalThis.rungbook.health;
  const { UNKNOWN, GUARDED, LOWERING, WHOLE } = readiness;
  const STRAIGHT = 1, STRICT = 2, TURNOVER = 4, OWN_DOSE = 32, UPRIGHT = 64, INVERTED = 128, OVER_FLOOR = 256;
  const NEVER = -Infinity;

  // ---- the movements

  /** What follows from the tables alone. @param {Model} model @returns {TrainingFacts} */
  const facts = (model) => {
    const { tables } = model, school = tables.dose_of_school;
    const measure = (/** @type {number} */ m) => model.target(m).measure;
    const has = (/** @type {number} */ m, /** @type {number} */ trait) => (tables.traits[m] & trait) !== 0;
    const word = (/** @type {number} */ m) => tables.patterns[tables.pattern[m]];
    /** @type {number[][]} */
    const harder = tables.ids.map(() => []);
    tables.easier.forEach((list, m) => list.forEach((low) => harder[low].push(m)));
    const dose = tables.dose.map((own, m) => {
      if (own) return { sets: own[1], each: Math.floor(own[2] / ONE), all: own[1] * own[2], seconds: own[3], unit: own[4], load: own[5] };
      const [sets, each] = measure(m) === TIME ? [school.hold_sets, school.hold_seconds] : [school.sets, school.reps];
      return { sets, each, all: sets * each * ONE, seconds: 0, unit: 0, load: 0 };
    });
    return {
      measure, has, harder, word,
      dose: (m) => dose[m],
      seconds: (m) => dose[m].seconds || model.target(m).seconds,
      isCounted: (m) => measure(m) === REPS || measure(m) === TIME,
      isMobility: (m) => word(m) === 'mobility',
      isPractice: (m) => word(m) === 'balance' || word(m) === 'exit' || has(m, TURNOVER),
      group: (m) => tables.groups[tables.pattern[m]],
      kind: (m) => 2 * tables.pattern[m] + (has(m, STRAIGHT) ? 1 : 0),
      isByMax: (m) => has(m, LOADED) && measure(m) === REPS && !model.is(m, LOWERING) && word(m) !== 'exit',
    };
  };
  /** @type {WeakMap<Model, TrainingFacts>} */
  const known = new WeakMap();
  /** @param {Model} model */
  const factsOf = (model) => {
    const kept = known.get(model) || facts(model);
    known.set(model, kept);
    return kept;
  };

  // ---- the person

  /** Everything that the training of one person on one day is worked out from.
   * @param {Model} model @param {Person} person @param {Assessment} found @param {number} day @returns {Trainee} */
  const begin = (model, person, found, day) => {
    const { tables } = model, K = tables.training;
    // What is trained today has its say from tomorrow on, so that the session stays while it is done.
    const log = person.trained.filter(({ on, did }) => on < day && did.length > 0).sort((a, b) => a.on - b.on)
      .map((of) => ({ ...of, load: readiness.mass(of.unit, of.load, person.bodyWeight) || 0 }));
    const school = tables.dose_of_school, train = person.train || {};
    const age = globalThis.rungbook.results.ageOn(person.born, day);
    const under = (/** @type {number} */ years) => age !== null && age < years;
    /** @type {Trainee} */
    const c = {
      model, tables, K, person, found, day, log,
      facts: factsOf(model),
      tests: by(person.tested, ({ movement }) => movement), trained: by(log, ({ movement }) => movement),
      daysOf: by(log, ({ movement }) => tables.pattern[movement]),
      aWeek: Math.min(7, Math.max(1, train.a_week || school.a_week)), minutes: train.minutes || K.minutes, weekdays: train.days || [],
      age, minor: under(LIMITS.adult), young: under(LIMITS.youth), memo: { own: [], now: [], foot: [], fits: [], below: [], builders: [], ended: null, care: null, back: null, before: [], reach: [], lately: [] },
    };
    return c;
  };

  /** The last training of a pattern before so long off that what was before is unknown. @param {Trainee} c @param {number} pattern */
  const foot = (c, pattern) => {
    const { foot: kept } = c.memo;
    if (kept[pattern] !== undefined) return kept[pattern];
    const word = c.tables.patterns[pattern];
    const days = word === 'exit' || word === 'mobility' ? [] : [...(c.daysOf.get(pattern) || []).map(({ on }) => on), c.day];
    kept[pattern] = days.reduce((last, on, i) => (i + 1 < days.length && days[i + 1] - on >= c.K.off[2] ? on : last), NEVER);
    return kept[pattern];
  };

  /** What measures too. @param {Trainee} c @param {number} m */
  const hasAll = ({ tables, person: { have } }, m) => have === null || tables.equipment[m].every((oneOf) => oneOf.some((word) => have.includes(word)));
  /** What only measures is not needed to train range. @param {Trainee} c @param {number} m */
  const isAtHand = ({ tables, facts: of, person: { have } }, m) => have === null || tables.equipment[m].every((oneOf) => oneOf.some((word) => have.includes(word) || (of.isMobility(m) && tables.measures.includes(word))));
  /** Not open, since something that it needs was never shown, but nothing of that was tested and failed; and a number of its own still
   * counts: at least two reps, or five seconds. Neither inverted nor loaded. @param {Trainee} c @param {number} m */
  const wasDone = (c, m) => {
    const { memo: { before: kept }, K, facts: of, model } = c;
    if (kept[m] === undefined) {
      const asked = c.found.needs[m] === UNKNOWN && of.isCounted(m) && !model.is(m, GUARDED) && !isOwned(c, m) && hasResult(c, m), is = asked ? own(c, m) : null;
      kept[m] = is !== null && whole(is) >= (of.measure(m) === TIME ? K.hold_fits : K.fits[0]);
    }
    return kept[m];
  };
  /** Lifted with weight by an adult, though not open, since something that it needs was never shown, but nothing of that failed: the
   * lighter step of its family is trained for it. @param {Trainee} c @param {number} m */
  const wasLifted = (c, m) => {
    if (c.found.needs[m] !== UNKNOWN || isOwned(c, m) || c.minor || !c.facts.isByMax(m) || !hasResult(c, m)) return false;
    const is = own(c, m);
    return is !== null && is.load > 0;
  };
  /** The highest lighter step of what was lifted; -1 where there is none. @param {Trainee} c @param {number} m */
  const lighterStep = (c, m) => {
    const fine = (/** @type {number} */ low) => { const is = c.facts.isByMax(low) && may(c, low) ? now(c, low) : null; return is !== null && is.load > 0; };
    const [low] = c.tables.easier[m].filter(fine).sort((a, b) => c.tables.stage[b] - c.tables.stage[a] || a - b);
    return low === undefined ? -1 : low;
  };
  /** Open, owned or done before, resting in no way, and its equipment at hand. @param {Trainee} c @param {number} m */
  const may = (c, m) => c.found.reached[m] === 1 && could(c, m) && pulledNerve(c, m) < 0;
  /** The same if nothing rested. @param {Trainee} c @param {number} m */
  const could = (c, m) => (isOpen(c, m) || wasDone(c, m)) && isAtHand(c, m);
  /** Kept from being open by nothing but what was never shown, and free of what rests or hurts. Neither inverted nor loaded.
   * @param {Trainee} c @param {number} m */
  const isOnlyUnsure = (c, m) => c.found.needs[m] === UNKNOWN && !isOwned(c, m) && !c.model.is(m, GUARDED) && c.found.reached[m] === 1 && isAtHand(c, m) && sorePart(c, m) < 0;

  // ---- what is not tried first

  /** Whether no clinician has seen a sign yet: nothing moves on. @param {Trainee} c */
  const hasSign = (c) => newestPains(c).some(({ signs }) => signs.length > 0);
  /** A part that a movement stresses and on which nothing grows today; -1 where there is none. @param {Trainee} c @param {number} m */
  const sorePart = (c, m) => {
    const pain = newestPains(c).find((one) => bearsOn(c, m, one.part) && isHolding(one));
    return pain ? pain.part : -1;
  };
  /** A part that hurts and that a movement stresses, however lightly: nothing new on it; -1 where there is none. @param {Trainee} c @param {number} m */
  const touchedPart = (c, m) => {
    const pain = newestPains(c).find((one) => stresses(c, m, one.part) && isHolding(one));
    return pain ? pain.part : -1;
  };
  /** A part that hurts today, that a movement stresses and another is heavy on, in whose place it would stand; -1 where there is none.
   * @param {Trainee} c @param {number} m @param {number} than */
  const heavyBelow = (c, m, than) => {
    const pain = newestPains(c).find((one) => isHolding(one) && bearsOn(c, m, one.part) && ((c.tables.heavy_on[than] >> one.part) & 1) === 1);
    return pain ? pain.part : -1;
  };
  /** Heavy on a part that hurts today: it has no line, and nothing easier in its place has one. @param {Trainee} c @param {number} m */
  const isHeavyOnSore = (c, m) => heavyBelow(c, m, m) >= 0;
  /** A shoulder at 4 or 5, or worse the next morning, where a movement has the arms overhead and bears on it; -1 where there is none.
   * @param {Trainee} c @param {number} m */
  const overheadOn = (c, m) => {
    const { tables, K } = c, part = tables.parts.indexOf('shoulder');
    if (!tables.cautions[m].includes(tables.classes.indexOf('overhead')) || !bearsOn(c, m, part)) return -1;
    const less = newestPains(c).some((pain) => pain.part === part && isHolding(pain) && takesBack(c, pain));
    return less ? part : -1;
  };
  /** Whether one movement bears more than another on a part that hurts today: a stand-in must not. @param {Trainee} c @param {number} m @param {number} than */
  const bearsMore = (c, m, than) => {
    const heavy = (/** @type {number} */ of, /** @type {number} */ part) => ((c.tables.heavy_on[of] >> part) & 1) === 1;
    return newestPains(c).some((pain) => isHolding(pain) && ((bearsOn(c, m, pain.part) && !bearsOn(c, than, pain.part)) || (heavy(m, pain.part) && !heavy(than, pain.part))));
  };
  /** By the whole log: two weeks off or more, now or ended less than a week ago, from four weeks on less than two. @param {Trainee} c */
  const isBackLately = ({ log, day, K }) => {
    const days = [...log.map(({ on }) => on), day];
    for (let i = days.length - 1; i > 0; i -= 1) if (days[i] - days[i - 1] >= K.off[0]) return day - days[i] < K.off_for[days[i] - days[i - 1] >= K.off[1] ? 1 : 0];
    return false;
  };
  /** The same, once. @param {Trainee} c */
  const isBack = (c) => {
    if (c.memo.back === null) c.memo.back = isBackLately(c);
    return c.memo.back;
  };
  /** Whether some pattern was left so long that what was known before is unknown now. @param {Trainee} c */
  const wasLongOff = (c) => c.tables.patterns.some((_, pattern) => foot(c, pattern) !== NEVER);
  /** Whether a restriction leaves a class alone. @param {Trainee} c @param {string} name */
  const isRestricted = ({ found, tables }, name) => found.causes.some(({ kind, cls }) => kind === 'restrict' && cls !== null && tables.classes[cls] === name);
  /** @param {Trainee} c */
  const sparesBreath = (c) => isRestricted(c, 'breath-holding');
  /** What is tried first for a movement: from 65 and in pregnancy the lowest rung of its family that is unknown too and may be tried. Only
   * pregnancy leaves lying on the back alone. @param {Trainee} c @param {number} m @returns {number} */
  const gentlest = (c, m) => {
    if (!((c.age !== null && c.age >= c.K.balance_age) || isRestricted(c, 'supine'))) return m;
    const fine = (/** @type {number} */ low) => may(c, low) && now(c, low) === null && !isTooNew(c, low) && !c.model.is(low, LOWERING);
    const [low] = c.tables.easier[m].filter(fine).sort((a, b) => c.tables.stage[a] - c.tables.stage[b] || a - b);
    return low === undefined ? m : gentlest(c, low);
  };
  /** Something is restricted, or only light training is allowed. @param {Trainee} c */
  const isHeldBack = ({ found }) => found.causes.some(({ kind }) => kind === 'restrict' || kind === 'light');
  /** Something is restricted or paused for pain, a part hurts, or training has only begun again. @param {Trainee} c */
  const asksForCare = (c) => {
    if (c.memo.care === null) c.memo.care = c.found.causes.some(({ kind }) => kind !== 'paused') || newestPains(c).some((pain) => isHolding(pain)) || isBack(c);
    return c.memo.care;
  };
  /** The highest rung of a pattern that is known or was done; where there is none, the lowest that may be trained. @param {Trainee} c @param {number} pattern */
  const reachOf = (c, pattern) => {
    const { reach: kept } = c.memo, { tables, model } = c;
    if (kept[pattern] === undefined) {
      const of = model.order.filter((m) => tables.pattern[m] === pattern), stages = (/** @type {number[]} */ list) => list.map((m) => tables.stage[m]);
      const done = of.filter((m) => isOwned(c, m) || now(c, m) !== null || c.trained.has(m)), open = done.length ? [] : of.filter((m) => may(c, m));
      kept[pattern] = done.length ? Math.max(...stages(done)) : open.length ? Math.min(...stages(open)) : 0;
    }
    return kept[pattern];
  };
  /** Unknown, and not to be tried first today: it stresses a part that hurts, however lightly, is with weight after two weeks off, or where care is asked for it is harder than anything of its
   * pattern that is known or was done, under a restriction also than a known easier neighbour. @param {Trainee} c @param {number} m */
  const isTooNew = (c, m) => now(c, m) === null && (touchedPart(c, m) >= 0 || (isBack(c) && c.facts.has(m, LOADED)) || (asksForCare(c) && !c.facts.isMobility(m) && (c.tables.stage[m] > reachOf(c, c.tables.pattern[m]) || (isHeldBack(c) && c.tables.easier[m].some((low) => now(c, low) !== null)))));
  /** Whether a list of what all may train may name it: the health questions are answered, it is open or owned, nothing of it hurts or rests, and
   * nothing of it is too new: a stretch never where it has no number. @param {Trainee} c @param {number} m */
  const isForAll = (c, m) => {
    const says = globalThis.rungbook.health.saysOn(c.person.screened, c.day, c.person.born), isNew = now(c, m) === null && c.facts.isMobility(m);
    return says !== null && says !== 'ask' && c.found.reached[m] === 1 && isOpen(c, m) && pulledNerve(c, m) < 0 && sorePart(c, m) < 0 && !isNew && !isTooNew(c, m);
  };
  /** The largest number of each movement that is more likely a slip, of what still counts: from its newest test on. @param {Trainee} c @returns {[number, number][]} */
  const slips = (c) => {
    const { model, person, day, tables } = c, counts = (/** @type {number} */ on) => on <= day && day - on <= tables.results_last_days;
    const tested = person.tested.filter(({ on }) => counts(on)), newest = (/** @type {number} */ m) => Math.max(...tested.filter(({ movement }) => movement === m).map(({ on }) => on));
    const all = [...tested.flatMap(({ movement, on, sides }) => sides.map(({ amount }) => ({ movement, on, amount }))), ...person.trained.filter(({ on }) => counts(on)).flatMap(({ movement, on, did }) => did.map((amount) => ({ movement, on, amount })))];
    /** @type {Map<number, number>} */
    const largest = new Map();
    for (const { movement: m, on, amount } of all) {
      if (on >= newest(m) && readiness.doubtful(model, m, { measure: c.facts.measure(m), amount })) largest.set(m, Math.max(largest.get(m) || 0, amount));
    }
    return [...largest].sort(([a], [b]) => a - b);
  };
  /** Days since the newest logged session; none where there is no log. @param {Trainee} c */
  const daysOff = ({ person, day }) => {
    const last = Math.max(...[...person.trained, ...person.sessions].map(({ on }) => on).filter((on) => on <= day));
    return Number.isFinite(last) ? day - last : 0;
  };
  /** Whether a test may be asked for. @param {Trainee} c @param {number} m */
  const mayTest = (c, m) => may(c, m) && isOpen(c, m) && hasAll(c, m) && sorePart(c, m) < 0 && !waitsForAge(c, m);

  // ---- what a person can do

  /** @param {Trainee} c @param {number} m @param {Now} a @param {Now} b */
  const isBetter = (c, m, a, b) => a.load > b.load || (a.load === b.load && (c.model.target(m).atMost ? a.amount < b.amount : a.amount > b.amount));
  /** @param {Trained & { load: number }} of @param {number} reserve */
  const said = ({ did }, reserve) => Math.max(0, ...did) + reserve * ONE;
  /** A set below its first, and nothing, or nothing said, in reserve. @param {Trained} of */
  const isMissed = ({ did, reserve }) => !reserve && did.some((set) => set < did[0]);

  /** A test's result as one set. @param {Trainee} c @param {number} m @param {Tested} tested @returns {Now} */
  const ofTest = (c, m, { sides, reserve, bodyWeight }) => {
    const reps = c.facts.measure(m) === REPS, { atMost } = c.model.target(m), weight = bodyWeight === null ? c.person.bodyWeight : bodyWeight;
    const amounts = sides.map((side) => side.amount + (reps ? (reserve + (side.sets >= c.K.several ? c.K.sets_hide : 0)) * ONE : 0));
    const tries = sides.map(({ hits, of }) => (of > 0 ? { hits, of } : { hits: 1, of: 1 })).reduce((a, b) => (b.hits * a.of < a.hits * b.of ? b : a));
    return {
      amount: atMost ? Math.max(...amounts) : Math.min(...amounts), load: Math.min(...sides.map((side) => readiness.mass(side.unit, side.load, weight) || 0)),
      left: amounts.length > 1 ? amounts[0] : null, right: amounts.length > 1 ? amounts[1] : null, ...tries,
    };
  };
  /** @param {number} amount @param {number} load @returns {Now} */
  const plainly = (amount, load) => ({ amount, load, left: null, right: null, hits: 1, of: 1 });

  /** What the log since makes of what a test showed. @param {Trainee} c @param {number} m @param {Now | null} shown @param {number} since @returns {Now | null} */
  const withLog = (c, m, shown, since) => {
    const log = c.facts.isCounted(m) ? (c.trained.get(m) || []).filter(({ on }) => on > since) : [];
    if (!log.length) return shown;
    const reps = c.facts.measure(m) === REPS;
    const all = (/** @type {Trained & { load: number }} */ of) => said(of, reps ? Math.min(of.reserve || 0, c.K.reserve) : 0);
    const newest = log[log.length - 1];
    const best = shown ? { ...shown } : plainly(all(newest), newest.load);
    const counting = log.filter(({ load }) => load >= best.load);
    best.amount = Math.max(best.amount, ...counting.map(all));
    const two = counting.slice(-2);
    if (two.length === 2 && two.every((of) => isMissed(of) && said(of, 0) < c.K.missed * best.amount - 1e-6)) best.amount = Math.max(...two.map((of) => said(of, 0)));
    return best;
  };

  /** A movement's own results and log; null where nothing is known. @param {Trainee} c @param {number} m @returns {Now | null} */
  const own = (c, m) => {
    const { own: kept } = c.memo;
    if (kept[m] !== undefined) return kept[m];
    const { model } = c, last = foot(c, c.tables.pattern[m]), standard = model.target(m);
    let since = Math.max(last, c.day - c.tables.results_last_days - 1);
    const tests = (c.tests.get(m) || []).filter(({ on }) => on > since && on <= c.day);
    /** @type {Now | null} */
    let best = null;
    if (tests.length) {
      since = Math.max(...tests.map(({ on }) => on));
      for (const tested of tests) {
        const one = tested.on === since ? ofTest(c, m, tested) : null;
        if (one && (!best || isBetter(c, m, one, best))) best = one;
      }
    }
    best = withLog(c, m, best, since);
    if (!best && isOwned(c, m) && last === NEVER) best = plainly(standard.amount, readiness.mass(standard.unit, standard.load, c.person.bodyWeight) || 0);
    if (best && c.facts.isCounted(m)) best = { ...best, amount: Math.floor(best.amount / ONE) * ONE };
    kept[m] = best;
    return best;
  };

  /** The day after which results and log of a movement count. @param {Trainee} c @param {number} m */
  const countsFrom = (c, m) => Math.max(foot(c, c.tables.pattern[m]), c.day - c.tables.results_last_days - 1);
  /** Whether a result or the log speaks of a movement itself. @param {Trainee} c @param {number} m */
  const hasResult = (c, m) => {
    const from = countsFrom(c, m);
    const counts = (/** @type {{ on: number }} */ { on }) => on > from && on <= c.day;
    return (c.tests.get(m) || []).some(counts) || (c.trained.get(m) || []).some(counts);
  };

  /** Reached by going up easier neighbours of the same phase and measure. @param {Trainee} c @param {number} m */
  const above = ({ facts: of, tables }, m) => {
    const seen = new Set([m]), todo = [m];
    for (let low = todo.pop(); low !== undefined; low = todo.pop()) {
      for (const up of of.harder[low]) {
        if (seen.has(up) || tables.phase[up] !== tables.phase[m] || of.measure(up) !== of.measure(m) || of.seconds(up) !== of.seconds(m)) continue;
        seen.add(up);
        todo.push(up);
      }
    }
    seen.delete(m);
    return seen;
  };

  /** What a person can do of a movement: its own, or at least what a harder member of its family shows. Added weight counts for
   * loaded movements only; help is a load below 0. @param {Trainee} c @param {number} m @returns {Now | null} */
  const now = (c, m) => {
    const { now: kept } = c.memo;
    if (kept[m] !== undefined) return kept[m];
    const clip = (/** @type {Now | null} */ of) => of && (c.facts.has(m, LOADED) || !c.facts.isCounted(m) ? of : { ...of, load: Math.min(0, of.load) });
    const mine = clip(own(c, m));
    // What is only presumed stands back behind what a harder member shows.
    const measured = hasResult(c, m);
    let best = mine;
    if (c.facts.isCounted(m)) {
      for (const up of above(c, m)) {
        const theirs = clip(own(c, up));
        if (!theirs || (mine && measured && theirs.load < mine.load)) continue;
        const one = mine && measured ? { ...mine, amount: Math.max(mine.amount, theirs.amount) } : theirs;
        if (!best || isBetter(c, m, one, best)) best = one;
      }
    }
    kept[m] = best;
    return best;
  };
  /** Whole reps or seconds. @param {Now} of */
  const whole = (of) => Math.floor(of.amount / ONE);
  /** Down to a whole number; what is whole but for the error of a fraction stays. @param {number} n */
  const down = (n) => Math.floor(n + 1e-9);

  // ---- how much of a target that is

  /** In thousandths, rounded down. @param {number} part @param {number} of */
  const ratio = (part, of) => (of <= 0 || part >= of ? WHOLE : Math.floor((Math.max(part, 0) * WHOLE) / of));
  /** Less help than asked counts as target over got; help where none is allowed gives nothing. @param {number} done @param {number | null} asked */
  const loadShare = (done, asked) => {
    if (asked === null) return 0;
    if (asked <= 0 && done >= 0) return WHOLE;
    if (Math.sign(done) !== Math.sign(asked)) return 0;
    return asked > 0 ? ratio(done, asked) : ratio(-asked, -done);
  };
  /** The share of a target that is reached, in thousandths. @param {Trainee} c @param {Now | null} of @param {Got} target */
  const share = (c, of, target) => {
    if (!of) return 0;
    if (target.atMost) return ratio(target.amount, of.amount);
    const tries = target.of > 0 ? ratio(of.hits * target.of, target.hits * of.of) : WHOLE;
    return Math.min(ratio(of.amount, target.amount), tries, loadShare(of.load, readiness.mass(target.unit, target.load, c.person.bodyWeight)));
  };

  /** What there is, as a result; null where nothing is known. @param {Trainee} c @param {number} m @returns {Got | null} */
  const got = (c, m) => {
    const of = now(c, m), measure = c.facts.measure(m);
    if (!of) return null;
    return { measure, atMost: false, sets: 1, amount: of.amount, seconds: measure === REPS ? c.facts.seconds(m) : 0, unit: of.load ? targets.MASS : targets.NO_LOAD, load: of.load, hits: 0, of: 0 };
  };

  /** Where nothing is known: the newest result, a side each, of what is measured in another way by now; null where there is none. @param {Trainee} c @param {number} m @returns {Got[] | null} */
  const measuredOtherwise = (c, m) => {
    if (now(c, m)) return null;
    const all = c.person.otherwise.filter(({ movement, on }) => movement === m && on > countsFrom(c, m)).sort((a, b) => a.on - b.on), newest = all[all.length - 1];
    return newest ? newest.sides : null;
  };
  /** Left and right, where they were tested apart, differ, and the lesser of them is what is known. @param {Trainee} c @param {number} m @returns {Got[] | null} */
  const apart = (c, m) => {
    const of = now(c, m), is = got(c, m);
    if (!of || !is || of.left === null || of.right === null || of.left === of.right || (of.amount !== of.left && of.amount !== of.right)) return null;
    return [{ ...is, amount: of.left }, { ...is, amount: of.right }];
  };
  /** What a target's share of body weight comes to; null where it has none, or the weight is not known. @param {Trainee} c @param {Got} target */
  const comesTo = (c, target) => (target.unit === targets.BODY_WEIGHT ? readiness.mass(target.unit, target.load, c.person.bodyWeight) : null);

  /** The movement from which the number of another follows; null where its own results or log say it, or nothing does. @param {Trainee} c @param {number} m @returns {number | null} */
  const followsFrom = (c, m) => {
    const is = now(c, m), alike = (/** @type {Now | null} */ of) => of !== null && is !== null && whole(of) === whole(is);
    if (!is) return null;
    const mine = alike(own(c, m)), { presumed, roots } = c.found.known, root = (/** @type {number} */ of) => (presumed[of] ? Number(roots.get(of)) : null);
    if (mine && hasResult(c, m)) return null;
    if (mine && root(m) !== null) return root(m);
    if (!c.facts.isCounted(m)) return null;
    const [up] = [...above(c, m)].filter((of) => alike(own(c, of))).sort((a, b) => Number(hasResult(c, b)) - Number(hasResult(c, a)) || a - b);
    return up === undefined ? null : hasResult(c, up) ? up : root(up);
  };

  globalThis.rungbook.training = /** @type {any} */ ({
    begin, by, lately, foot, countsFrom, above, ofTest, isOwned, isOpen, wasDone, wasLifted, lighterStep, isBack, wasLongOff, isHeldBack, isRestricted, sparesBreath, gentlest, reachOf, whatOf, overheadOn, hasResult, bearsOn, bearsMore, heavyBelow, isHeavyOnSore, isAtHand, hasAll, may, could, isHolding, sorePart, touchedPart, stresses, pulledNerve, isOnlyUnsure, isTooNew, isForAll, asksForCare, isBackLately, mayTest, slips, daysOff, isMissed, now, own, whole, down, share, got, measuredOtherwise, apart, comesTo, followsFrom, newestPains, ended, easedPains, isEasedOn, takesBack, hasSign, NEVER,
    TRAITS: { STRAIGHT, STRICT, TURNOVER, LOADED, OWN_DOSE, UPRIGHT, INVERTED, OVER_FLOOR },
  });
})();
