'use strict';
// What holds a movement back on a day: what hurts, what hurt or rested lately, the age, foundations that are not shown. Plans, fields and
// news ask here alike, so that none invites to what another leaves alone. The same as the program's own, on the same tables. No page, no
// storage, no clock.
(() => {
  const { readiness } = globalThis.rungbook;
  const { LIMITS, ageOn } = globalThis.rungbook.health;
  const { TRUE, UNTESTED } = readiness;
  const WEEK = 7;
  /** Of a movement's traits: with weight. */
  const LOADED = 16;
  /** Where the nerves of an arm run from the neck on, and those of a leg from the lower back on. */
  const ARM = ['neck', 'shoulder', 'elbow', 'wrist'], LEG = ['lower-back', 'hamstring'];

  /** @template T @param {T[]} list @param {(one: T) => number} key @returns {Map<number, T[]>} */
  const by = (list, key) => {
    /** @type {Map<number, T[]>} */
    const out = new Map();
    for (const one of list) {
      const at = out.get(key(one));
      if (at) at.push(one);
      else out.set(key(one), [one]);
    }
    return out;
  };

  /** What this is asked of: a person on a day. @param {Model} model @param {Person} person @param {Assessment} found @param {number} day @returns {Heeded} */
  const begin = (model, person, found, day) => {
    const age = ageOn(person.born, day);
    return { model, tables: model.tables, K: model.tables.training, person, found, day, minor: age !== null && age < LIMITS.adult, memo: { ended: null } };
  };

  /** Owned, whether it rests or not. @param {Heeded} c @param {number} m */
  const isOwned = ({ found: { known: { shown, presumed } } }, m) => shown[m] === TRUE || (shown[m] === UNTESTED && presumed[m] === 1);
  /** Open or owned, whether it rests or not. @param {Heeded} c @param {number} m */
  const isOpen = (c, m) => c.found.needs[m] === TRUE || isOwned(c, m);

  // ---- what hurts, and what hurt or rested lately

  /** A pain of 3 to 5: what bears on its part stays as it is until a newer entry is lower. @param {Pain} pain */
  const isHolding = ({ score }) => score >= LIMITS.pain[0] && score < LIMITS.pain[1];
  /** Of such a pain: light and easier, from 4 on as after a worse next morning. @param {Heeded} c @param {Pain} pain */
  const takesBack = ({ K }, { score, nextMorning }) => score >= K.pain_less || (nextMorning !== null && nextMorning > score);
  /** Stresses a part, however lightly. @param {Heeded} c @param {number} m @param {number} part */
  const stresses = ({ tables }, m, part) => ((tables.stresses[m] >> part) & 1) === 1;
  /** Stresses a part, and not only lightly. @param {Heeded} c @param {number} m @param {number} part */
  const bearsOn = ({ tables }, m, part) => (((tables.stresses[m] & ~tables.light_on[m]) >> part) & 1) === 1;
  /** What a cause spares, as a reason names it. @param {Pick<Pause, 'movement' | 'part' | 'cls' | 'pattern'>} cause @returns {Reason['values']} */
  const whatOf = ({ movement, part, cls, pattern }) => (movement !== null ? { movement } : part !== null ? { part } : cls !== null ? { cls } : { pattern: Number(pattern) });
  /** The newest pain of each part. @param {Heeded} c @returns {Pain[]} */
  const newestPains = ({ person, day }) => {
    /** @type {Map<number, Pain>} */
    const newest = new Map();
    for (const pain of [...person.pains].sort((a, b) => a.on - b.on)) if (pain.on <= day) newest.set(pain.part, pain);
    return [...newest.values()].sort((a, b) => a.part - b.part);
  };
  /** Pauses of a week or more that have ended, pains too: what they spared, and their last day. @param {Heeded} c @returns {Ended[]} */
  const ended = (c) => {
    if (c.memo.ended) return c.memo.ended;
    const { model, person, day, K } = c;
    /** @type {Ended[]} */
    const out = [];
    for (const pause of person.pauses) {
      if (pause.kind !== 'paused' || pause.until === null || pause.until >= day || pause.until - pause.on + 1 < K.pause_days) continue;
      out.push({ spares: (m) => readiness.reaches(model, pause, m), from: pause.on, until: pause.until, what: whatOf(pause) });
    }
    for (const [part, all] of [...painsByPart(c)].sort(([a], [b]) => a - b)) {
      const stops = (/** @type {Pain} */ pain) => readiness.isPausing(model, person, pain, day);
      const rested = longRun(c, all, stops), hurt = longRun(c, all, (pain) => stops(pain) || isHolding(pain));
      if (rested) out.push({ spares: (m) => stresses(c, m, part), from: rested.run[0].on, until: rested.until, what: { part } });
      // What was trained on, light and easier: what bears on it only lightly was never less.
      if (hurt && hurt.run.some((pain) => stops(pain) || takesBack(c, pain))) out.push({ spares: (m) => bearsOn(c, m, part), from: hurt.run[0].on, until: hurt.until, what: { part } });
    }
    c.memo.ended = out;
    return out;
  };
  /** @param {Heeded} c by part, each by day */
  const painsByPart = ({ person, day }) => by([...person.pains].filter(({ on }) => on <= day).sort((a, b) => a.on - b.on), (pain) => pain.part);
  /** The last run of bad entries that a better one ended, a week or more after its first, with its last day.
   * @param {Heeded} c @param {Pain[]} all @param {(pain: Pain) => boolean} is @returns {{ run: Pain[], until: number } | null} */
  const longRun = ({ K }, all, is) => {
    const bad = all.map(is), last = bad.lastIndexOf(true);
    if (last < 0 || last === bad.length - 1) return null;
    const first = bad.lastIndexOf(false, last) + 1, end = all[last + 1].on;
    return end - all[first].on >= K.pause_days ? { run: all.slice(first, last + 1), until: end - 1 } : null;
  };
  /** The parts whose newest entry is low again, each with the last one that was not, the first day of all these, and whether it rested meanwhile. @param {Heeded} c @returns {Eased[]} */
  const easedPains = (c) => [...painsByPart(c)].sort(([a], [b]) => a - b).flatMap(([part, all]) => {
    const stops = all.map((pain) => readiness.isPausing(c.model, c.person, pain, c.day)), bad = all.map((pain, i) => stops[i] || isHolding(pain)), last = bad.lastIndexOf(true);
    const first = bad.lastIndexOf(false, last) + 1;
    return last >= 0 && last < all.length - 1 ? [{ part, score: all[last].score, on: all[last].on, from: all[first].on, rested: stops.slice(first, last + 1).includes(true) }] : [];
  });
  /** Whether a pain that is better reaches a movement: it bears on the part, or waited while that rested. @param {Heeded} c @param {Eased} of @param {number} m */
  const isEasedOn = (c, { part, rested }, m) => bearsOn(c, m, part) || (rested && stresses(c, m, part));
  /** What hurt or rested and is over, where it reaches a movement on a day: its first day, the last day of less, and what a line says of it.
   * @param {Heeded} c @param {number} m @param {number} on @returns {Lately[]} */
  const lately = (c, m, on) => {
    const { K } = c, hurt = easedPains(c).filter((of) => isEasedOn(c, of, m));
    return [...hurt.map(({ part, score, from, on: day }) => ({ what: { part }, from, until: day + K.pain_days, why: { key: 'why.hurt', values: { part, score } } })),
      ...ended(c).filter(({ spares }) => spares(m)).map(({ what, from, until }) => ({ what, from, until: until + WEEK * K.pause_weeks, why: { key: 'why.after_pause', values: { n: Math.floor((on - until - 1) / WEEK) + 1 } } }))].filter(({ until }) => on <= until);
  };
  /** The newest pain of each part that is not low: nothing new goes on these parts. @param {Heeded} c @returns {Pain[]} */
  const sorePains = (c) => newestPains(c).filter((pain) => readiness.isPausing(c.model, c.person, pain, c.day) || pain.score >= LIMITS.pain[0]);
  /** A numb part that no clinician has seen, where a movement stretches along the nerves of an arm or a leg: that pulls on them up to the
   * neck, wherever the numbness begins. With a numb neck or arm also what has the arms overhead and bears on them; -1 where there is none. @param {Heeded} c @param {number} m */
  const pulledNerve = (c, m) => {
    const { parts, stresses, cautions, classes } = c.tables, on = (/** @type {string[]} */ of) => parts.some((word, part) => of.includes(word) && ((stresses[m] >> part) & 1) === 1);
    const stretch = c.tables.patterns[c.tables.pattern[m]] === 'mobility' && on([...ARM, ...LEG]), lifted = on(ARM) && cautions[m].includes(classes.indexOf('overhead'));
    const pain = newestPains(c).find(({ part, signs }) => signs.includes('numb') && (stretch || (lifted && ARM.includes(parts[part]))));
    return pain ? pain.part : -1;
  };

  // ---- what a number of a movement is asked for

  /** With weight, which is tested from 18 on. @param {Heeded} c @param {number} m */
  const waitsForAge = (c, m) => c.minor && (c.tables.traits[m] & LOADED) !== 0;
  /** Why a movement is not tried anew on a day: `rests`; it stresses what hurts (`sore`), or what hurt or rested only `lately`; it waits for
   * the `age`; what it needs is not shown (`closed`). Null where it may be. @param {Heeded} c @param {number} m @returns {'rests' | 'sore' | 'lately' | 'age' | 'closed' | null} */
  const heldBy = (c, m) => {
    if (c.found.reached[m] !== 1 || pulledNerve(c, m) >= 0) return 'rests';
    if (sorePains(c).some(({ part }) => stresses(c, m, part))) return 'sore';
    if (waitsForAge(c, m)) return 'age';
    if (lately(c, m, c.day).length) return 'lately';
    return isOpen(c, m) ? null : 'closed';
  };

  globalThis.rungbook = Object.assign(globalThis.rungbook, { held: { by, begin, isOwned, isOpen, isHolding, takesBack, stresses, bearsOn, whatOf, newestPains, ended, easedPains, isEasedOn, lately, sorePains, pulledNerve, waitsForAge, heldBy, LOADED } });
})();
