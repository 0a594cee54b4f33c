'use strict';
// Training, between the route and the lines: the way back from time off, and from what hurt or rested. Less and easier first, then a step below the old number, and
// for a while nothing above the last session before it. The same as the program's own. No page, no storage, no clock.
(() => {
  const { targets: { ONE }, readiness: { LOWERING }, training } = globalThis.rungbook;
  const { now, foot } = training, WEEK = 7;

  /** The newest time off of two weeks or more, by the log of the pattern, of what is known without one by the whole log: the last day
   * before it, the first after it. @param {Trainee} c @param {number} m @param {number} first the plan's first day */
  const timeOff = (c, m, first) => {
    const pattern = c.tables.pattern[m], own = c.daysOf.get(pattern) || [], tested = own.length === 0 && now(c, m) !== null, since = foot(c, pattern);
    const days = [...new Set((tested ? c.log : own).map(({ on }) => on))].filter((day) => day > since), ends = [...days.slice(1), Math.max(c.day, first)];
    for (let i = days.length - 1; i >= 0; i -= 1) if (ends[i] - days[i] >= c.K.off[0]) return { from: days[i], to: ends[i], tested };
    return null;
  };

  /** The last session before time off, for some weeks after it, while nothing was tested since and none did as much again.
   * @param {Trainee} c @param {number} m @param {{ from: number, to: number }} off @param {number} on @returns {Most | null} */
  const mostAfter = (c, m, { from, to }, on) => {
    if (on - to >= c.K.back_most) return null;
    const since = foot(c, c.tables.pattern[m]), log = c.trained.get(m) || [], last = log.filter((of) => of.on <= from && of.on > since).pop();
    if (!last || (c.tests.get(m) || []).some((test) => test.on > from && test.on <= c.day)) return null;
    const again = log.some((of) => of.on > from && of.did.every((set) => set >= of.did[0]) && of.did[0] >= last.did[0] && of.load >= last.load);
    // To failure once is not asked again: one rep or second less.
    const whole = Math.floor(last.did[0] / ONE), less = last.reserve === 0 && whole > 1 ? 1 : 0;
    return again ? null : { amount: whole - less, sets: Math.max(c.K.fewest, last.did.length), load: last.load, reserve: last.reserve === null ? null : last.reserve + less };
  };

  /** What time off takes back on a day: a week of less, from four weeks off on two that are easier too (not of what has no log) and one of
   * less of the same; then a week nearer to what it was. What is unknown by then is tried like anything new.
   * @param {Trainee} c @param {number} m @param {number} on @param {number} first @returns {Partial<Ease>} */
  const afterTimeOff = (c, m, on, first) => {
    const { K, facts } = c, off = facts.isMobility(m) || facts.word(m) === 'exit' ? null : timeOff(c, m, first);
    if (!off) return {};
    const days = off.to - off.from, longer = days >= K.off[1], since = on - off.to, less = K.off_for[longer ? 1 : 0], down = longer && !off.tested;
    const step = less + (down ? K.back_for : 0), again = since >= less, most = mostAfter(c, m, off, on);
    if (since >= step + K.back_for || (again && now(c, m) === null)) return { most };
    const why = { key: again ? 'why.back_after' : 'why.days_off', values: { n: days } };
    return { light: true, nearly: since >= step, easier: !again && (down || c.model.is(m, LOWERING)), hold: true, rule: 'time off', why, most };
  };
  /** On the way to what it was. @param {Ease} taken */
  const comesBack = ({ why }) => why !== null && why.key === 'why.back_after';
  /** The share of the amount, or of the load. @param {Trainee} c @param {Ease} taken */
  const shareOf = ({ K }, { light, least, nearly }) => (!light ? 1 : least ? K.least : nearly ? K.back : K.light);
  /** What a set of so many leaves at most, by what the last session before time off left. @param {Ease} taken @param {number} amount */
  const leavesBack = ({ most }, amount) => (most === null || most.reserve === null ? Infinity : most.reserve + Math.max(0, most.amount - amount));

  /** What is over only lately, and for which an unknown movement waits: that was long; or it is heavy on it, of a class with a warning, moved on slowly as on rings or straight
   * arms, overhead for a shoulder, or harder than what is known of its pattern; null where it need not. @param {Trainee} c @param {number} m @param {number} on @returns {Lately | null} */
  const waitsLately = (c, m, on) => {
    const { tables, facts } = c, { STRICT, UPRIGHT } = training.TRAITS;
    if (now(c, m) !== null || facts.isMobility(m)) return null;
    const grave = training.isGrave(c, m) || (facts.has(m, STRICT) && !facts.has(m, UPRIGHT)) || tables.stage[m] > training.reachOf(c, tables.pattern[m]), overhead = tables.cautions[m].includes(tables.classes.indexOf('overhead'));
    const heavy = (/** @type {number | undefined} */ part) => part !== undefined && (((tables.heavy_on[m] >> part) & 1) === 1 || (overhead && tables.parts[part] === 'shoulder'));
    return training.lately(c, m, on).find(({ what, why }) => why.key === 'why.after_pause' || grave || heavy(what.part)) || null;
  };
  /** Of a class with a warning. @param {Trainee} c @param {number} m */
  const isGrave = ({ tables }, m) => (tables.marks[tables.mark[m]] || { signal: null }).signal === 'warning';

  Object.assign(training, { waitsLately, isGrave, afterTimeOff, comesBack, shareOf, leavesBack });
})();
