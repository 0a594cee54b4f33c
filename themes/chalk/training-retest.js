'use strict';
// Training, beside the plan: on which days is tested again, and what. The same as the program's own. No page, no storage, no clock.
(() => {
  const { readiness: { WHOLE }, training } = globalThis.rungbook;
  const { may, heavier } = training, WEEK = 7;

  /** Two days after the last training before it, or on the next training day if that comes first; where the plan goes on, two days before
   * its next session, or in the place of what it tests of one that is nearer. What is more than three on the next training day two days
   * later, strength before practice, these before holds, holds before range.
   * @param {Trainee} c @param {number[]} days of training @param {number} last @param {(on: number) => number[]} tests @returns {Retest[]} */
  const retestDays = (c, days, last, tests) => {
    const { K, facts } = c, trainsFrom = (/** @type {number} */ from) => Math.min(...days.filter((day) => day >= from));
    const rested = last + K.apart, following = trainsFrom(last + 1), goesOn = following < c.day + WEEK * K.weeks && following > rested;
    const on = Math.min(rested, goesOn ? following - K.apart : following), place = (/** @type {number} */ m) => (facts.isMobility(m) ? 4 : 0) + (facts.measure(m) === globalThis.rungbook.targets.REPS ? 0 : 2) + (facts.isPractice(m) ? 1 : 0);
    const all = tests(on).map((m) => ({ m, at: place(m) })).sort((a, b) => a.at - b.at).map(({ m }) => m), later = all.splice(K.tests_day), next = trainsFrom(on + K.apart);
    return [{ on, tests: all }, ...(later.length && Number.isFinite(next) ? [{ on: next, tests: later }] : [])];
  };

  /** Results of the chain that run out within some weeks after a day, the oldest first. @param {Trainee} c @param {TrainingGoal | null} goal @param {number} on */
  const runningOut = ({ K, tables, day, model, tests }, goal, on) => (goal ? goal.chain : model.order).flatMap((m) => {
    const newest = Math.max(...(tests.get(m) || []).map((of) => of.on)), last = tables.results_last_days;
    return day - newest <= last && on - newest + K.tests_ahead > last ? [{ m, newest }] : [];
  }).sort((a, b) => a.newest - b.newest || a.m - b.m).map(({ m }) => m);

  /** Of what had lines before: the form in which the heaviest gap was trained, what has reached its target, what the chain stands on and runs
   * out, the other gaps in theirs. Nothing that was shown in the plan, and nothing known to reach its target where holding the breath is left
   * alone. Up to a day's tests, where nothing asks for care, what was tried and has no number yet, where there is no other what is kept up.
   * @param {Trainee} c @param {TrainingGoal | null} goal @param {Map<number, Gap>} gaps @param {number} on @param {PlannedSession[]} sessions @returns {number[]} */
  const retests = (c, goal, gaps, on, sessions) => {
    const { K } = c, heaviest = [...gaps.values()].sort(heavier);
    // What was shown, or stood twice, in a single week once, in this form.
    const before = sessions.filter((of) => of.on < on), lines = before.flatMap((of) => of.lines), least = Math.min(K.tests_times, Math.max(0, ...before.map(({ week }) => week)));
    const daysWith = (/** @type {(line: Line) => boolean} */ is) => before.filter((of) => of.lines.some(is)).map((of) => of.on);
    const daysOf = (/** @type {number} */ m) => daysWith(({ movement }) => movement === m), times = (/** @type {number} */ m) => daysOf(m).length;
    const wasShown = (/** @type {number} */ m) => daysWith(({ movement, rule }) => movement === m && rule === 'show it').length > 0;
    const isEnough = (/** @type {number} */ m) => times(m) > 0 && (times(m) >= least || wasShown(m));
    // What a gap is tested by: what was trained most often for it, of as much the last, then itself.
    const formOf = (/** @type {Gap} */ gap) => [...new Set([gap.movement, ...lines.filter((line) => line.gap === gap).map(({ movement }) => movement)])].filter(isEnough)
      .sort((a, b) => times(b) - times(a) || Math.max(...daysOf(b)) - Math.max(...daysOf(a)) || Number(b === gap.movement) - Number(a === gap.movement) || a - b).slice(0, 1);
    const often = (/** @type {number[]} */ list) => list.map((m) => ({ m, n: times(m) })).sort((a, b) => b.n - a.n).map(({ m }) => m);
    const stood = (/** @type {(line: Line) => boolean} */ is) => often([...new Set(lines.filter(is).map(({ movement }) => movement))].sort((a, b) => a - b).filter(isEnough));
    const whole = new Set(heaviest.filter(({ share }) => share === WHOLE).map(({ movement }) => movement));
    const isNeeded = (/** @type {number} */ m) => !((whole.has(m) && wasShown(m)) || (training.sparesBreath(c) && (whole.has(m) || training.isOwned(c, m))));
    // The heaviest gap's, then what stood most often.
    const [form, ...others] = heaviest.flatMap(formOf), forms = form === undefined ? [] : [form, ...often(others)];
    let out = someOf(c, [...forms.slice(0, 1), ...[...whole, ...runningOut(c, goal, on)].filter(isEnough), ...forms].filter(isNeeded), on, K.tests, []);
    const ofWay = out.length > 0;
    if (out.length < K.tests_day && !training.asksForCare(c)) out = someOf(c, stood(({ rule, movement }) => rule === 'until it is tested' && training.now(c, movement) === null), on, K.tests_day, out);
    return ofWay || training.asksForCare(c) ? out : someOf(c, stood(() => true).filter(isNeeded), on, K.tests, out);
  };
  /** The first of these that may be tested, beside what is `out` already so many at most, two of a kind, mobility apart.
   * @param {Trainee} c @param {number[]} all @param {number} on @param {number} most @param {number[]} out */
  const someOf = (c, all, on, most, out) => {
    const { K, facts } = c, list = [...out];
    for (const m of new Set(all)) {
      const known = list.filter((other) => facts.kind(other) === facts.kind(m)).length;
      const tests = may(c, m) && training.hasAll(c, m) && !((c.minor || (training.isBack(c) && training.now(c, m) === null)) && facts.has(m, training.TRAITS.LOADED)) && !training.ease(c, m, on, on).sore && training.sorePart(c, m) < 0;
      if (list.length < most && !list.includes(m) && tests && (facts.isMobility(m) || known < K.tests_kind)) list.push(m);
    }
    return list;
  };

  /** What is tested has no line from the first day of tests to the day after its own: its test stands there.
   * @param {Trainee} c @param {PlannedSession[]} sessions @param {Retest[]} days @returns {PlannedSession[]} */
  const makeRoom = ({ K }, sessions, days) => sessions.flatMap((of) => {
    const near = days.filter(({ on }) => of.on >= days[0].on && of.on < on + K.apart), tested = new Set(near.flatMap(({ tests }) => tests));
    const gone = of.lines.filter(({ movement }) => tested.has(movement)), lines = of.lines.filter(({ movement }) => !tested.has(movement));
    if (!gone.length) return [of];
    const leftOut = [...of.leftOut, ...gone.map(({ movement }) => ({ movement, why: { key: 'left.tested', values: {} } }))];
    return lines.length ? [{ ...of, lines, leftOut, minutes: gone.reduce((sum, line) => sum - line.minutes, of.minutes) }] : [];
  });

  Object.assign(training, { retestDays, retests, makeRoom });
})();
