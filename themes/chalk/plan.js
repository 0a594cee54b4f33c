'use strict';
// The plan over weeks: today's working sets on the days of a cycle, a lighter week at its end. The same as the program's own.
(() => {
  const { targets, results } = globalThis.rungbook;
  const MOST_WEEKS = 12, MOST_SESSIONS = 3;
  const PUSH = ['vertical push', 'horizontal push'], PULL = ['vertical pull', 'horizontal pull'];

  /** @param {WorkingPick} pick @param {number} sets */
  const text = (pick, sets) => targets.text({
    measure: pick.measure, atMost: false, sets, amount: pick.amount * targets.ONE, seconds: pick.seconds, unit: pick.unit, load: pick.load, hits: 0, of: 0,
  });

  /** Lays working sets over a cycle. @param {Model} model @param {WorkingPick[]} picks @param {number} from @returns {TrainingPlan} */
  const lay = (model, picks, from) => {
    const { tables } = model, school = tables.dose_of_school;
    const count = Math.min(MOST_WEEKS, Math.max(1, Math.floor(school.lighter_every / 7)));
    const times = Math.min(MOST_SESSIONS, Math.max(1, school.a_week));
    const sets = picks.map((pick) => pick.sets);
    const isOf = (/** @type {number} */ i, /** @type {string[]} */ side) => !tables.straight[picks[i].movement] && side.includes(tables.patterns[tables.pattern[picks[i].movement]]);
    const sum = (/** @type {string[]} */ side) => sets.reduce((all, n, i) => all + (isOf(i, side) ? n : 0), 0);
    const weeks = Array.from({ length: count }, (_, week) => {
      const lighter = count > 1 && week + 1 === count;
      return {
        week: week + 1, lighter,
        sessions: Array.from({ length: times }, (__, i) => ({
          on: results.dayText(from + week * 7 + Math.floor((i * 7) / times)),
          sets: picks.map((pick, p) => ({ movement: pick.movement, target: text(pick, lighter ? Math.ceil(sets[p] / 2) : sets[p]) })),
        })),
      };
    });
    return { weeks, retest: results.dayText(from + 7 * count), push: sum(PUSH) * times, pull: sum(PULL) * times };
  };

  /** Sets for readers: of each side where a movement is done side by side. @param {Model} model @param {number} movement @param {string} target */
  const shown = (model, movement, target) => {
    const { states, readiness } = globalThis.rungbook, got = targets.readGot(target);
    return got ? states.shown(got, model.is(movement, readiness.EACH_SIDE)) : target;
  };

  /** The weeks for readers. @param {Model} model @param {TrainingPlan} laid */
  const items = (model, laid) => {
    const { page, states, words } = globalThis.rungbook, { make, named } = page, { say, sayNodes } = words;
    return laid.weeks.map(({ week, lighter, sessions }) => {
      const of = { number: week, days: sessions.flatMap(({ on }, i) => [i ? say('list.separator') : '', states.day(on)]) };
      return make('li', {}, ...(lighter ? sayNodes('today.week_lighter', of) : sayNodes('today.week', of)),
        make('ul', {}, ...sessions[0].sets.map(({ movement, target }) => make('li', {}, named(model.tables, movement), ' ', shown(model, movement, target)))));
    });
  };

  /** What a week comes to. @param {TrainingPlan} laid @returns {(Node | string)[]} */
  const end = (laid) => {
    const { states, words } = globalThis.rungbook;
    return words.sayNodes('today.plan_end', { day: states.day(laid.retest), push: laid.push, pull: laid.pull }).map((part) => /** @type {Node | string} */ (part));
  };

  globalThis.rungbook.plan = { lay, shown, items, end };
})();
