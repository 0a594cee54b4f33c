'use strict';
// A plan as the program prints it in JSON, from what the page's own scripts work out.
(() => {
  const { results, targets, training } = globalThis.rungbook;
  const { plan, whyOf, nameOf, conditions, isRefused, refusal, isReached } = training;
  const { KILOGRAM } = targets;
  const { say } = globalThis.rungbook.words;

  /** Why a line is as it is, for readers. @param {Trainee} c @param {Line} line */
  const whys = (c, line) => line.why.map((of) => whyOf(c, of)).reduce((why, more) => (why ? say('training.why.both', { why, more }) : more), '');
  /** @param {Trainee} c @param {number} m */
  const gotText = (c, m) => { const got = training.got(c, m); return got && targets.text(got); };
  /** Months of a path: half weeks times thousandths into weeks, to one place. @param {number} path */
  const weeksOf = (path) => Math.round(path / 200) / 10;
  /** @param {Tables} tables @param {WarmUp} warm */
  const warmUpText = (tables, { sore, text, easy }) => [...(sore ? [sore] : []), ...text,
    ...easy.map(({ bare, amount, movement }) => say(bare ? 'training.easy_set_bare' : 'training.easy_set', { amount, movement: nameOf(tables, movement) }))];

  /** What the program answers. @param {Model} model @param {Person} person @param {Assessment} found @param {number} day */
  const answer = (model, person, found, day) => {
    const { tables } = model, id = (/** @type {number} */ m) => tables.ids[m], signal = (/** @type {number} */ m) => (tables.marks[tables.mark[m]] || { signal: null }).signal;
    if (isRefused(person, day)) {
      return { goal: { skill: person.goal, chosen: person.goal !== null, reached: false }, refused: { why: refusal(person, day) }, conditions: [], limiter: null, sessions: [], retest: null, week_sets: {} };
    }
    const of = plan(model, person, found, day), { trainee: c, goal, limiter } = of;
    const asked = (/** @type {Gap} */ gap) => ({ movement: id(gap.movement), target: tables.target_text[tables.leaves[2 * gap.leaf + 1]] });
    const tested = (/** @type {Retest} */ one) => ({ on: results.dayText(one.on), tests: one.tests.map(id) });
    const kind = (/** @type {number} */ n) => `${tables.patterns[n >> 1]}${n & 1 ? ', straight arms' : ''}`;
    return {
      goal: { skill: goal && goal.id, chosen: goal !== null && goal.chosen, reached: isReached(goal) },
      refused: null, conditions: conditions(of),
      limiter: limiter && { ...asked(limiter), got: gotText(c, limiter.movement), weeks: [weeksOf(limiter.low), weeksOf(limiter.high)], opens: limiter.opens.map(id), signal: signal(limiter.movement),
        until: limiter.stop && { movement: id(limiter.stop.at), closed: id(limiter.stop.by), why: limiter.stop.why } },
      sessions: of.sessions.map(({ on, week, name, lighter, minutes: long, warmUp: warm, lines, leftOut }) => ({
        on: results.dayText(on), week, name, lighter, minutes: long, warm_up: warmUpText(tables, warm),
        lines: lines.map((line) => ({
          block: line.block, movement: id(line.movement), signal: signal(line.movement), sets: line.sets, amount: line.amount, unit: line.unit, seconds_each: line.seconds, tempo: (line.unit === 'reps' && tables.tempo[line.movement]) || null, hold: line.unit === 'reps' && tables.hold[line.movement] ? `${tables.hold[line.movement].join(' ')} s` : null,
          with_kg: line.load === null ? null : line.load / KILOGRAM, side: line.side, weaker: line.weaker, rest_s: line.rest, in_reserve: line.left, minutes: line.minutes,
          toward: line.gap && asked(line.gap), instead_of: line.insteadOf === null ? null : id(line.insteadOf), rule: line.rule, why: whys(c, line), then: training.thenOf(line),
        })),
        left_out: leftOut.map(({ movement, why }) => ({ movement: id(movement), why: whyOf(c, why) })),
      })),
      retest: of.retests.length ? { ...tested(of.retests[0]), later: of.retests.length > 1 ? tested(of.retests[1]) : null } : null,
      week_sets: Object.fromEntries([...of.weekSets].map(([n, sets]) => [kind(n), sets])),
    };
  };

  training.answer = answer;
})();
