'use strict';
'after page.js states.js training.js';
// What Today and Where I stand say alike: the goal and its choice, what holds back, a line and a session in words.
(() => {
  const { targets, results, readiness, store, page, states, training } = globalThis.rungbook;
  const { make, named, namedList, byId } = page;
  const { say, sayNodes } = globalThis.rungbook.words;
  const { model } = states;
  if (!model) return;
  const { tables } = model;
  const MINUTE = 60;

  /** Whether it was said today that a line's movement was never tried. @param {Line} line */
  const isNever = ({ movement }) => states.neverTried().includes(tables.ids[movement]);
  /** The blocks of a session, as they follow each other. */
  const BLOCKS = /** @type {const} */ (['practice', 'strength', 'kept up', 'range']);
  /** The lines as they are shown: block by block; what was never tried opens none, it comes after what is known of its kind. @param {Line[]} lines */
  const inOrder = (lines) => [...lines].sort((a, b) => BLOCKS.indexOf(a.block) - BLOCKS.indexOf(b.block) || Number(isNever(a)) - Number(isNever(b)));
  /** Whether a line is done on a day: its sets are logged, or what it asks to be shown is in. @param {Line} line @param {string} on */
  const isDone = ({ movement, rule }, on) => store.entries(rule === 'show it' ? 'tested' : 'trained').some(({ entry: of }) => of.on === on && model.numbers.get(of.movement) === movement);
  /** What is next, for the home page, which works nothing out: the first line of this day's session that is not done, with its last number, the highest rung of each skill
   * that is owned, and what settles. @param {Training} of @param {Stand} stand */
  const noteNext = (of, { found, day }) => {
    const [session] = of.sessions, on = results.dayText(day), lines = session ? inOrder(session.lines) : [];
    const [line] = session && session.on === day ? lines.filter((one) => !isDone(one, on)) : lines, settles = training.latelyWords(of.trainee).map(dated);
    const note = (/** @type {object} */ next) => { if (JSON.stringify(store.get('next')) !== JSON.stringify(next)) store.note('next', next); };
    if (!line || !of.goal) {
      if (lines.length || settles.length) note({ on, done: lines.length > 0 && !line, settles });
      return;
    }
    const m = line.movement, own = training.hasResult(of.trainee, m) && training.followsFrom(of.trainee, m) === null, got = own ? training.got(of.trainee, m) : null, skill = tables.skills.find(({ id }) => of.goal && id === of.goal.id);
    note({ on, settles, id: tables.ids[m], name: tables.names[m], mark: tables.marks[tables.mark[m]] || null, sets: sets(line).textContent, got: got ? states.shown(got).textContent : '',
      goal: skill ? skill.name : page.marked(tables, model.of(of.goal.leaf)), test: skill && skill.id,
      drawn: model.is(m, readiness.DRAWN), places: Object.fromEntries(tables.skills.map(({ id, members }) => [id, Math.max(-1, ...members.filter((one) => found.states[one] === readiness.OWNED).map((one) => tables.stage[one]))])) });
  };
  /** The plan of a stand, worked out once. @type {WeakMap<Stand, Training>} */
  const plans = new WeakMap();
  /** @param {Stand} stand @returns {Training} */
  const planOf = (stand) => {
    const known = plans.get(stand) || training.plan(model, stand.person, stand.found, stand.day);
    plans.set(stand, known);
    if (!training.isRefused(stand.person, stand.day)) noteNext(known, stand);
    return known;
  };

  /** The same without its sessions, which take longest. @type {WeakMap<Stand, Training>} */
  const aims = new WeakMap();
  /** The goal, what holds back and the way there; with sessions only where a sentence speaks of them. @param {Stand} stand @returns {Training} */
  const aimOf = (stand) => {
    const known = plans.get(stand) || aims.get(stand) || training.plan(model, stand.person, stand.found, stand.day, 0), { goal, limiter } = known;
    if (goal && !limiter && !training.isReached(goal)) return planOf(stand);
    aims.set(stand, known);
    return known;
  };
  /** Whether the sessions of a stand are worked out. @param {Stand} stand */
  const isPlanned = (stand) => plans.has(stand);

  /** @param {PagePart[]} parts @returns {(Node | string)[]} */
  const nodes = (parts) => parts.filter((part) => part !== null).map((part) => /** @type {Node | string} */ (part));

  // ---- the goal

  /** The name of a goal as a link; of a movement with its mark. @param {TrainingGoal} goal */
  const goalName = ({ id, leaf }) => {
    const skill = tables.skills.find((one) => one.id === id);
    return skill ? page.namedSkill(tables, skill, model.of(leaf)) : named(tables, model.of(leaf));
  };
  /** The choice of the goal, kept as soon as it is made. @param {string} place the id of its element */
  const goalChoice = (place) => {
    const { goal } = store.facts(), other = goal && !tables.skills.some(({ id }) => id === goal) ? model.numbers.get(goal) : undefined;
    const select = /** @type {HTMLSelectElement} */ (make('select', { id: `${place}-goal` }, make('option', { value: '', text: say('aim.nearest') }),
      ...tables.skills.map(({ id, name }) => make('option', { value: id, text: name })), other === undefined ? null : make('option', { value: tables.ids[other], text: page.marked(tables, other) })));
    select.value = goal && (other !== undefined || tables.skills.some(({ id }) => id === goal)) ? goal : '';
    states.keepsGoal(select);
    return make('p', { class: 'goal-choice screen-only' }, make('label', { for: select.id, text: say('aim.goal') }), ' ', select);
  };

  /** A demand of a gap: the movement, what there is of it, what is asked. @param {Training} of @param {Gap} gap @returns {Record<string, PagePart | PagePart[]>} */
  const asked = ({ trainee }, { movement, leaf }) => {
    const got = training.got(trainee, movement), from = training.followsFrom(trainee, movement), sides = training.apart(trainee, movement), old = training.measuredOtherwise(trainee, movement);
    const there = old ? say('training.why.measure_again', { got: training.sidesInWords(old) }) : !got ? say('training.unknown') : from !== null ? nodes(sayNodes('training.why.counts', { got: states.shown(got), movement: named(tables, from) }))
      : sides ? nodes(sayNodes('morning.left_right', { left: states.shown(sides[0]), right: states.shown(sides[1]) })) : states.shown(got);
    const mass = training.comesTo(trainee, model.target(leaf)), asks = states.target(leaf);
    return { movement: named(tables, movement), got: there, target: mass === null ? asks : nodes(sayNodes('training.comes_to', { target: asks, weight: targets.massInWords(Math.abs(mass), mass >= 0, page.units.ofSchool) })) };
  };
  /** Which of some sentences a gap asks for: what is known, what has to be shown once, what was measured in the old way, nothing. @param {Training} of @param {Gap} gap
   * @param {[string, string, string, string]} keys */
  const keyOf = ({ trainee }, { now, share, movement }, [known, show, old, unknown]) => (now ? (share === readiness.WHOLE ? show : known) : training.measuredOtherwise(trainee, movement) ? old : unknown);
  /** The goal and what holds back, in one sentence. @param {Training} of @returns {(Node | string)[]} */
  const sentence = (of) => {
    const { goal, limiter } = of;
    if (!goal) return [say('training.no_goal')];
    const named_ = { goal: goalName(goal) };
    if (training.isReached(goal)) return nodes(sayNodes('aim.reached', named_));
    if (!limiter) return nodes(sayNodes(of.sessions.some(({ lines }) => lines.some(({ gap }) => gap !== null)) ? 'aim.nothing_but' : 'aim.nothing', named_));
    const key = keyOf(of, limiter, goal.chosen ? ['aim.needs', 'aim.needs_shown', 'aim.needs_again', 'aim.needs_unknown'] : ['aim.nearest_needs', 'aim.nearest_shown', 'aim.nearest_again', 'aim.nearest_unknown']);
    return nodes(sayNodes(key, { ...named_, ...asked(of, limiter) }));
  };
  /** The goal and what holds back, as plain text. @param {Training} of */
  const sentenceText = (of) => states.plain(sentence(of));
  /** About how long it is. @param {Training} of @returns {(Node | string)[]} */
  const howLong = ({ goal, limiter, trainee }) => {
    const told = goal && limiter ? training.howLong(trainee, limiter, { say: (key, values) => nodes(sayNodes(key, values)), name: (m) => named(tables, m) }) : null;
    return told === null ? [] : told;
  };
  /** The way from what holds back up to the goal, each with what there is of it. @param {Training} of
   * @param {(m: number) => HTMLElement | null} [field] where a new number of it is entered */
  const way = (of, field = () => null) => {
    const { limiter, gaps, goal } = of;
    if (!goal || !limiter) return null;
    /** @type {Gap[]} */
    const steps = [];
    for (let at = /** @type {Gap | undefined} */ (limiter); at && !steps.includes(at);) {
      steps.push(at);
      at = at.opens.map((m) => gaps.get(m)).filter((gap) => gap !== undefined).map((gap) => /** @type {Gap} */ (gap)).sort(training.heavier)[0];
    }
    return make('ol', { class: 'ladder way-up' }, ...steps.map((gap) => make('li', { 'data-movement': tables.ids[gap.movement] }, states.figure(gap.movement), named(tables, gap.movement),
      // On a line of its own: it never begins with a stray mark.
      make('div', {}, ...nodes(sayNodes(keyOf(of, gap, ['aim.step', 'aim.step_shown', 'aim.step_again', 'aim.step_unknown']), asked(of, gap)))), field(gap.movement))));
  };

  /** A text with its days as readers write them. @param {string} text */
  const dated = (text) => text.replace(/[0-9]{4}-[0-9]{2}-[0-9]{2}/g, (day) => results.dayWords(Number(results.readDay(day))));

  // ---- what comes before the step, in the order and by the rules of `morning.js`, to whom it is about

  /** So much is said of it at most, and so many movements in one sentence. */
  const MOST_ACTS = 3;
  /** An amount of a movement. @param {Trainee} c @param {number} m @param {number} amount */
  const amountOf = (c, m, amount) => states.shown({ measure: c.facts.measure(m), atMost: false, sets: 1, amount, seconds: 0, unit: targets.NO_LOAD, load: 0, hits: 0, of: 0 });
  /** @param {Trainee} c @param {number} m @param {number} left @param {number} right */
  const bothSides = (c, m, left, right) => nodes(sayNodes('morning.left_right', { left: amountOf(c, m, left), right: amountOf(c, m, right) }));
  /** @param {PagePart[][]} all @returns {PagePart[]} */
  const few = (all) => [...all.slice(0, MOST_ACTS).flatMap((one, i) => [i ? say('list.separator') : null, ...one]), ...(all.length > MOST_ACTS ? [' ', say('shared.and_more', { n: all.length - MOST_ACTS })] : [])];
  /** Numbers that may be slips, the risk of falls, time off. @param {Trainee} c @returns {(Node | string)[][]} */
  const doneBefore = (c) => {
    const slips = training.slips(c), falls = training.falls(c), off = training.daysOff(c), key = ['morning.time_off', 'morning.time_off_longer', 'morning.time_off_long'][c.K.off.filter((days) => off >= days).length - 1];
    return [
      ...(slips.length ? [sayNodes('aim.act_doubt', { list: few(slips.map(([m, amount]) => sayNodes('morning.doubt_of', { got: amountOf(c, m, amount), movement: named(tables, m) }))) })] : []),
      ...(falls ? [sayNodes('aim.act_falls', { movement: named(tables, falls.movement), got: bothSides(c, falls.movement, falls.left, falls.right), least: amountOf(c, falls.movement, c.K.one_leg_s * targets.ONE) })] : []),
      ...(key ? [[say(key, { n: off })]] : []),
    ].map(nodes);
  };
  /** What the way needs and is not at hand, and what it stops. @param {Training} of @returns {(Node | string)[][]} */
  const toBeHad = ({ trainee: c, gaps, limiter }) => {
    const all = training.toBeHad(c, gaps, limiter);
    return all.length ? [nodes(sayNodes('aim.act_missing', { list: few(all.map(({ oneOf, stops }) => sayNodes('morning.missing_of', { gear: training.gearWords(tables, oneOf), list: few(stops.map((m) => [named(tables, m)])) }))) }))] : [];
  };
  /** With which side is begun. @param {Trainee} c @returns {(Node | string)[][]} */
  const weakerSides = (c) => ['left', 'right'].flatMap((side) => {
    const all = [...c.tests.keys()].sort((a, b) => a - b).filter((m) => training.may(c, m) && training.sides(c, m).weaker === side);
    const list = few(all.map((m) => { const { left, right } = training.now(c, m) || {}; return sayNodes('morning.side_of', { movement: named(tables, m), got: bothSides(c, m, Number(left), Number(right)) }); }));
    return all.length ? [nodes(side === 'left' ? sayNodes('morning.begin_left', { list }) : sayNodes('morning.begin_right', { list }))] : [];
  });
  /** What the next session trains all the same, where no step of the way can be. @param {Training} of @returns {(Node | string)[][]} */
  const meanwhile = ({ goal, limiter, sessions: [session] }) => {
    const hard = session && goal && !limiter && !training.isReached(goal) ? session.lines.filter(({ block }) => block === 'strength' || block === 'kept up') : [];
    return hard.length ? [nodes(sayNodes('aim.act_meanwhile', { list: few(hard.map(({ movement }) => [named(tables, movement)])) }))] : [];
  };
  /** What comes before the step, each a sentence: the first three. @param {Training} of */
  const acts = (of) => [...doneBefore(of.trainee), ...toBeHad(of), ...meanwhile(of), ...weakerSides(of.trainee)].slice(0, MOST_ACTS).map((told) => make('li', {}, ...told));

  // ---- a line

  /** A word of the trade, which leads to what it means. @param {string} id @param {string} text */
  const word = (id, text) => make('a', { href: `words.html#${id}`, text });
  /** Sets, amount, load and sides in words. @param {Line} line */
  const sets = (line) => {
    const got = training.gotOf(line), [first, ...others] = training.paceInWords(tables, line), isPaced = line.unit === 'reps' && tables.tempo[line.movement];
    const other = targets.words(got, page.units.ofOther), own = targets.words(got, page.units.ofSchool);
    const pace = first === undefined ? [] : [isPaced ? word('tempo', first) : first, ...others];
    return make('span', {}, make('bdi', { text: own, 'data-other': own === other ? null : other }), ...pace.flatMap((one) => [say('list.separator'), one]));
  };
  /** Rest, and what is left. @param {Line} line @returns {(Node | string)[]} */
  const restWords = ({ rest, left }) => [rest % MINUTE ? say('training.rest_s', { n: rest }) : say('training.rest_min', { n: rest / MINUTE }),
    ...(left === null ? [] : [say('list.separator'), word('in-reserve', say(left >= tables.training.reserve ? 'training.reserve_most' : 'training.reserve', { n: left }))])];
  /** A reason with its movement's mark. @param {Training} of @param {Reason} because @returns {(Node | string)[]} */
  const reason = ({ trainee }, because) => {
    /** @type {Record<string, PagePart>} */
    const it = because.values.movement === undefined ? {} : { movement: named(tables, because.values.movement), what: named(tables, because.values.movement) };
    return nodes(sayNodes(training.wordsOf(because), { ...training.valuesOf(trainee, because.values), ...it }));
  };
  /** The rule of a line, which leads to what it says, and why. @param {Training} of @param {Line} line @returns {(Node | string)[]} */
  const why = (of, line) => {
    const key = tables.rules[line.rule], link = make('a', { href: `about-the-numbers.html#rule-${key.replace(/_/g, '-')}`, text: say(`training.rule.${key}`) });
    const all = line.why.map((one) => reason(of, one)).reduce((before, more) => (before.length ? nodes(sayNodes('training.why.both', { why: before, more })) : more), /** @type {(Node | string)[]} */ ([]));
    return all.length ? nodes(sayNodes('aim.rule_why', { rule: link, why: all })) : [link];
  };
  /** What a line works towards; nothing where something else goes on for what is reached. @param {Training} of @param {Line} line @returns {(Node | string)[] | null} */
  const towards = (of, { gap, movement }) => (gap && !(gap.share === readiness.WHOLE && gap.movement !== movement) ? nodes(sayNodes(gap.movement === movement ? 'aim.towards_itself' : 'aim.towards', { movement: named(tables, gap.movement), target: states.target(gap.leaf) })) : null);

  // ---- a session

  /** Its day, name and length. @param {PlannedSession} of @returns {(Node | string)[]} */
  const head = ({ on, week, name, minutes, lighter }) => {
    const values = { day: states.dayOf(on), n: week, name, minutes };
    return nodes(sayNodes(lighter ? 'aim.session_lighter' : name ? 'aim.session_named' : 'aim.session', values));
  };
  /** @param {Training} of @param {PlannedSession} session @returns {HTMLElement[]} */
  const warmUp = ({ trainee: { tables: { names } } }, { warmUp: { sore, text, easy } }) => [
    ...(sore ? [make('li', { text: sore })] : []), ...text.map((line) => make('li', { text: line })),
    ...(names ? easy : []).map(({ bare, amount, movement }) => make('li', {}, ...nodes(sayNodes(bare ? 'training.easy_set_bare' : 'training.easy_set', { amount, movement: named(tables, movement) })))),
  ];
  /** Who stands by, and how to breathe. @param {Training} of @param {PlannedSession} session @returns {HTMLElement[]} */
  const care = ({ trainee }, session) => training.care(trainee, session).map(({ asks, movements }) => make('li', {}, asks, ': ', ...namedList(tables, movements)));
  /** What is left out, the movements of one reason together. @param {Training} of @param {LeftOut[]} all @returns {HTMLElement[]} */
  const leftOut = (of, all) => {
    /** @type {Map<string, { why: Reason, list: number[] }>} */
    const together = new Map();
    for (const { movement, why: because } of all) {
      const key = training.whyOf(of.trainee, because), known = together.get(key) || { why: because, list: [] };
      if (!known.list.includes(movement)) known.list.push(movement);
      together.set(key, known);
    }
    return [...together.values()].map(({ why: because, list }) => make('li', {}, ...nodes(sayNodes('training.left_of', { movements: namedList(tables, list), why: reason(of, because) }))));
  };
  /** The weeks ahead, the first one open. @param {Training} of @returns {HTMLElement[]} */
  const weeks = (of) => [...new Set(of.sessions.map(({ week }) => week))].map((week, i) => {
    const all = of.sessions.filter((one) => one.week === week);
    return make('details', i ? {} : { open: true }, make('summary', { text: say(all[0].lighter ? 'aim.week_lighter' : 'aim.week', { n: week }) }),
      ...all.map((one) => make('section', { class: 'ahead' }, make('h3', {}, ...head(one)),
        make('ul', { class: 'plain' }, ...one.lines.map((line) => make('li', { 'data-movement': tables.ids[line.movement] }, named(tables, line.movement), ' ', make('span', { class: 'target' }, sets(line))))))));
  });
  /** The days of the retest, and the hard sets of the first week. @param {Training} of @returns {HTMLElement[]} */
  const weeksEnd = ({ retests, weekSets }) => {
    const kinds = [...weekSets].map(([kind, count]) => {
      const pattern = say(`pattern.${tables.patterns[kind >> 1].replace(/ /g, '_')}`);
      return say(kind & 1 ? 'aim.sets_straight' : 'aim.sets_of', { pattern, n: count });
    });
    return [...retests.map(({ on, tests }) => make('p', {}, ...nodes(sayNodes('training.retest', { day: states.dayOf(on), list: namedList(tables, tests) })))),
      ...(kinds.length ? [make('p', { class: 'hint', text: say('training.week_sets', { list: kinds.join(say('list.separator')) }) })] : [])];
  };

  globalThis.rungbook.aim = { BLOCKS, dated, planOf, aimOf, isPlanned, goalName, goalChoice, sentenceText, sentence, howLong, acts, way, inOrder, sets, restWords, reason, why, towards, head, warmUp, care, leftOut, weeks, weeksEnd, nodes };
})();
