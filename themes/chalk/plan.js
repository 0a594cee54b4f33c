'use strict';
// The plan over weeks: today's working sets on the days of a cycle, a lighter week at its end; and what the sessions of seven
// days add up to. The same as the program's own.
(() => {
  const { targets, results } = globalThis.rungbook;
  const MOST_WEEKS = 12, MOST_SESSIONS = 3, MOST_MONOTONY = 10;
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
    /** Sets a week by pattern. @param {number} straight */
    const volume = (straight) => {
      /** @type {Record<string, number>} */
      const out = {};
      for (const { movement, sets: of } of picks) {
        const pattern = tables.patterns[tables.pattern[movement]];
        if (tables.straight[movement] === straight) out[pattern] = (out[pattern] || 0) + of * times;
      }
      return out;
    };
    return { weeks, retest: results.dayText(from + 7 * count), volume: volume(0), straight_arm: volume(1), push: sum(PUSH) * times, pull: sum(PULL) * times };
  };

  /**
   * The load of the last seven days, today the last of them: effort times minutes, the mean of the days over their deviation,
   * and the two multiplied; null without a session in them.
   * @param {{ effort: number, minutes: number, on: number }[]} sessions @param {number} today
   * @returns {WeekLoad | null}
   */
  const lastWeek = (sessions, today) => {
    const days = [0, 0, 0, 0, 0, 0, 0];
    for (const { effort, minutes, on } of sessions) if (on <= today && today - on < 7) days[today - on] += effort * minutes;
    const total = days.reduce((all, day) => all + day, 0);
    if (total <= 0) return null;
    const mean = total / 7, variance = days.reduce((all, day) => all + (day - mean) * (day - mean), 0) / 7;
    const monotony = variance > 0 ? Math.min(MOST_MONOTONY, mean / Math.sqrt(variance)) : MOST_MONOTONY;
    return { total, monotony, strain: total * monotony };
  };

  /** Sets for readers: of each side where a movement is done side by side. @param {Model} model @param {number} movement @param {string} target */
  const shown = (model, movement, target) => {
    const { states, readiness } = globalThis.rungbook, got = targets.readGot(target);
    return got ? states.shown(got, model.is(movement, readiness.EACH_SIDE)) : target;
  };

  /** The weeks for readers, those that are alike together. @param {Model} model @param {TrainingPlan} laid */
  const items = (model, laid) => {
    const { page, states, words } = globalThis.rungbook, { make, named } = page, { say, sayNodes } = words;
    const asks = (/** @type {TrainingPlan['weeks'][0]} */ { lighter, sessions }) => JSON.stringify([lighter, sessions[0].sets]);
    /** @type {TrainingPlan['weeks'][]} */
    const alike = [];
    for (const week of laid.weeks) {
      const last = alike[alike.length - 1];
      if (last && asks(last[0]) === asks(week)) last.push(week);
      else alike.push([week]);
    }
    return alike.map((weeks) => {
      const [{ week, lighter, sessions }] = weeks;
      const of = { number: week, last: weeks[weeks.length - 1].week, days: weeks.flatMap((one) => one.sessions).flatMap(({ on }, i) => [i ? say('list.separator') : '', states.day(on)]) };
      const head = lighter ? sayNodes('today.week_lighter', of) : weeks.length > 1 ? sayNodes('today.weeks', of) : sayNodes('today.week', of);
      return make('li', {}, ...head, make('ul', {}, ...sessions[0].sets.map(({ movement, target }) => make('li', {}, named(model.tables, movement), ' ', shown(model, movement, target)))));
    });
  };

  /** What a week comes to. @param {TrainingPlan} laid @returns {(Node | string)[]} */
  const end = (laid) => {
    const { states, words } = globalThis.rungbook, { say, sayNodes } = words;
    const joined = (/** @type {Record<string, number>} */ of) => Object.keys(of).sort()
      .map((pattern) => say('today.volume_of', { pattern: say(`pattern.${pattern.replace(/ /g, '_')}`), sets: of[pattern] })).join(say('list.separator'));
    const bent = joined(laid.volume), straight = joined(laid.straight_arm);
    const volume = [...(bent ? [say('today.volume', { list: bent }), ' '] : []), ...(straight ? [say('today.volume_straight', { list: straight }), ' '] : [])];
    const sides = laid.push + laid.pull > 0 ? [say('today.plan_sides', { push: laid.push, pull: laid.pull }), ' '] : [];
    return [...volume, ...sides, ...sayNodes('today.plan_end', { day: states.day(laid.retest) })].map((part) => /** @type {Node | string} */ (part));
  };

  globalThis.rungbook.plan = { lay, lastWeek, shown, items, end };
})();
