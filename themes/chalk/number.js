'use strict';
'after page.js states.js';
// A number from anywhere: one field for a movement, whether the number is meant, and what is new because of it.
(() => {
  const { targets, results, readiness, store, page, states } = globalThis.rungbook;
  const { make, named, namedList, units, blame } = page;
  const { say, sayNodes } = globalThis.rungbook.words;
  const { REPS, LENGTH, ANGLE, DONE, ONE, NO_LOAD } = targets;
  const model = /** @type {Model} */ (states.model);
  const WEEK = 7;
  /** Names of one kind that are said before the rest is counted. */
  const MOST_NAMES = 4;
  const nodes = (/** @type {PagePart[]} */ parts) => parts.filter((part) => part !== null).map((part) => /** @type {Node | string} */ (part));

  // ---- numbers that are asked about before they are kept

  /** @param {number} m @param {Got} got @returns {Promise<boolean>} */
  const isMeant = async (m, got) => {
    const says = { movement: named(model.tables, m), got: states.shown(got), standard: states.target(m) };
    const part = got.measure === REPS && got.amount % ONE !== 0;
    const answer = await page.ask(say('entry.sure'), [make('p', {}, ...(part ? sayNodes('entry.sure_parts', says) : sayNodes('entry.sure_far', says)))],
      [['change', say('entry.change')], ...(part ? [] : [/** @type {[string, string]} */ (['keep', say('entry.keep_anyway')])])]);
    return answer === 'keep';
  };

  // ---- what is new

  /** What counts of a result: its weaker side. @param {Tested} of */
  const counted = ({ sides, movement }) => [...sides].sort((a, b) => (model.target(movement).atMost ? b.amount - a.amount : a.amount - b.amount))[0];
  /** The best of some results. @param {Tested[]} list @param {boolean} atMost */
  const best = (list, atMost) => [...list].sort((a, b) => (atMost ? counted(a).amount - counted(b).amount : counted(b).amount - counted(a).amount) || b.on - a.on)[0];
  /** How a number stands beside the best one before it. @param {number} m @param {Tested} now @param {Tested[]} earlier */
  const beside = (m, now, earlier) => {
    const { atMost } = model.target(m), got = counted(now);
    const like = earlier.filter((one) => ['unit', 'load', 'sets', 'seconds', 'of'].every((part) => /** @type {any} */ (counted(one))[part] === /** @type {any} */ (got)[part]));
    const shown = { movement: named(model.tables, m), got: states.shown(got) };
    if (!like.length || got.measure === DONE) return sayNodes('number.kept', shown);
    const before = best(like, atMost), by = got.amount - counted(before).amount;
    const all = { ...shown, by: states.shown({ ...got, amount: Math.abs(by), atMost: false }), day: states.when(before) };
    return sayNodes(`number.${by === 0 ? 'same' : by > 0 ? 'more' : 'less'}`, all);
  };
  /** @param {string} key @param {number[]} list @returns {PagePart[]} */
  const listed = (key, list) => (list.length ? [' ', ...sayNodes(key, { list: [...namedList(model.tables, list.slice(0, MOST_NAMES)), ...(list.length > MOST_NAMES ? [' ', say('shared.and_more', { n: list.length - MOST_NAMES })] : [])] })] : []);
  /** What a number changed: how it stands beside the one before, what became one's own, what it opens, and what it is enough for.
   * @param {number} m @param {Stand | null} before @param {string} key under which it is kept @returns {(Node | string)[]} */
  const news = (m, before, key) => {
    const now = states.mine();
    const tests = (/** @type {Stand | null} */ stand) => (stand ? stand.person.tested.filter(({ movement }) => movement === m) : []);
    const kept = store.entries('tested').findIndex((of) => of.key === key), newest = now && tests(now).find(({ entry }) => entry === kept);
    if (!now || !newest) return [];
    // What is held back is kept, and no more: why stands beside it.
    if (states.isHeld(now, m)) return nodes([...sayNodes('number.kept', { movement: named(model.tables, m), got: states.shown(counted(newest)) }), ...states.whyHeld(m).flatMap((why) => [' ', ...why])]);
    const said = [...beside(m, newest, tests(before))];
    const was = before || { found: readiness.assess(model, results.nobody(), now.day) };
    const became = (/** @type {number} */ state) => model.order.filter((of) => now.found.states[of] === state && was.found.states[of] !== state);
    const spared = (/** @type {number} */ of) => states.isHeld(now, of);
    const yours = became(readiness.OWNED), open = states.barred() ? [] : became(readiness.OPEN).filter((of) => was.found.states[of] !== readiness.OWNED && !spared(of));
    const met = model.demands[m].filter((leaf) => now.found.known.shown[leaf] === readiness.TRUE && was.found.known.shown[leaf] !== readiness.TRUE);
    const enough = model.order.filter((of) => of !== m && now.found.states[of] !== readiness.OWNED && !open.includes(of) && !spared(of) && readiness.leavesOf(model.tables.needs[of]).some((leaf) => met.includes(leaf)));
    return nodes([...said, ...listed('number.yours', yours), ...listed('number.opens', open), ...listed('number.enough_for', states.barred() ? [] : enough), ...(states.sore(now).length ? [' ', say('number.sore', { parts: [...new Set(states.sore(now).map(({ part }) => states.partWord(model.tables.parts[part])))].join(say('list.separator')) })] : [])]);
  };

  // ---- one field

  /** Whether one number is all that is asked of a movement. @param {number} m */
  const isPlain = (m) => model.target(m).measure !== DONE && model.demands[m].every((leaf) => { const t = model.target(leaf); return t.seconds === 0 && t.of === 0 && t.unit === NO_LOAD; });
  /** The unit of a movement as it is typed, and as it is kept. @param {number} m @returns {[string, string]} */
  const unitOf = (m) => {
    const { measure } = model.target(m);
    return measure === LENGTH && units.current() === 'imperial' ? [say('number.in'), 'in'] : /** @type {[string, string][]} */ ([[say('today.reps'), 'reps'], [say('today.seconds'), 's'], [say('number.cm'), 'cm'], [say('number.deg'), 'deg'], ['', 'done']])[measure];
  };
  /** What is typed, as a result; null where it is none. @param {number} m @param {string} typed */
  const read = (m, typed) => {
    const bare = typed.trim().replace(',', '.'), withUnit = targets.readGot(bare);
    return targets.readGot(`${bare} ${unitOf(m)[1]}`) || (withUnit && withUnit.measure === model.target(m).measure && withUnit.sets === 1 && withUnit.unit === NO_LOAD ? withUnit : null);
  };
  /** The day or the span that was given, as it is kept: nothing but what was said. Null where it is not known, undefined where nothing is chosen,
   * or not a day before the one that it must be of.
   * @param {string} span @param {string} written the day, where one is given @param {number} today @param {number | null} [before] @returns {{ on: string, until?: string } | null | undefined} */
  const given = (span, written, today, before = null) => {
    if (span === 'long') return null;
    const read = span === 'day' ? results.readDay(written) : span === '' ? null : today - Number(span);
    if (read === null || read > today || (before !== null && (span !== 'day' || read >= before))) return undefined;
    return { on: results.dayText(read), ...(span === 'day' || read === today ? {} : { until: results.dayText(today) }) };
  };
  /** A result under its key, that it is kept, and what is new because of it, which takes longer. @param {number} m @param {Got[]} sides @param {{ on: string, until?: string } | null} when null where the day is not known
   * @returns {{ key: string, kept: (Node | string)[], news: () => (Node | string)[] }} */
  const keep = (m, sides, when) => {
    const before = states.latest(), texts = sides.map((got) => targets.text(got)), id = model.tables.ids[m];
    const entry = { movement: id, ...(texts.length > 1 ? { left: texts[0], right: texts[1] } : { got: texts[0] }) };
    const movement = named(model.tables, m), got = sides.length > 1 ? sayNodes('stand.both_sides', { left: states.shown(sides[0]), right: states.shown(sides[1]) }) : states.shown(sides[0]);
    const key = when === null ? store.add('undated', entry, true) : store.add('tested', { ...entry, ...when }, true);
    const kept = nodes(when === null ? sayNodes('number.undated', { movement }) : sayNodes('number.kept', { movement, got }));
    return { key, kept, news: () => (when === null ? kept : news(m, before, key)) };
  };
  /** What a field is called that has no label in sight. @param {number} m @param {string} [side] */
  const labelOf = (m, side) => (side ? say('number.of_side', { movement: model.tables.names[m], side }) : say('number.of', { movement: model.tables.names[m] }));
  /** A button that measures in a picture of one's own, where the movement is measured so and the page has the script for it; the number
   * goes into the field, and how far it may be off is said. @param {number} m @param {HTMLInputElement} input @returns {HTMLElement | null} */
  const fromPicture = (m, input) => {
    const { measure } = model.target(m);
    if (![targets.TIME, LENGTH, ANGLE].includes(/** @type {any} */ (measure)) || !document.getElementById('angle-here')) return null;
    const off = make('span', { class: 'hint', role: 'status' });
    const open = async () => {
      await page.load('angle-here');
      globalThis.rungbook.angle.open({ measure, unit: unitOf(m)[0], done: (value, by) => {
        // Degrees and seconds in whole numbers, never better than it was; a length to a tenth.
        const down = model.target(m).atMost ? Math.ceil : Math.floor, fine = measure === LENGTH ? 10 : 1;
        input.value = String(measure === targets.TIME ? Math.floor(value) : down(value * fine - (model.target(m).atMost ? 1e-9 : -1e-9)) / fine);
        off.textContent = say('number.off', { off: globalThis.rungbook.words.number(Math.max(0.1, Math.round(by * 10) / 10)), unit: unitOf(m)[0] });
        input.focus();
      } });
    };
    return make('span', {}, make('button', { type: 'button', class: 'plain-button', text: measure === targets.TIME ? say('number.from_clip') : say('number.from_picture'), on: { click: () => { open().catch(() => { off.textContent = say('number.not_loaded'); }); } } }), off);
  };
  let count = 0;
  /** The spans that an earlier number may be of, in days before today; it counts from the first of them, so that it never lasts too long. */
  const SPANS = /** @type {[string, string][]} */ ([[String(WEEK - 1), say('entry.this_week')], [String(4 * WEEK - 1), say('entry.this_month')], ['day', say('entry.a_day')], ['long', say('entry.longer')]]);
  /** The spans that are asked for: of what settles only a day before it began. @param {number} m */
  const spans = (m) => SPANS.filter(([value]) => states.since(m) === null || value === 'day' || value === 'long');
  /** Whether a number is more than any on file, of what settles: nothing that bears on it goes up before it has. @param {number} m @param {Got[]} sides */
  const isMore = (m, sides) => {
    if (states.since(m) === null) return false;
    const texts = store.entries('tested').filter(({ entry }) => entry.movement === model.tables.ids[m]).flatMap(({ entry }) => [entry.got, entry.left, entry.right]);
    const known = texts.flatMap((text) => { const got = text === undefined ? null : targets.readGot(text); return got ? [got] : []; });
    const isOver = (/** @type {Got} */ got, /** @type {Got} */ of) => (got.unit === of.unit && got.load > of.load) || (model.target(m).atMost ? got.amount < of.amount : got.amount > of.amount);
    return known.length > 0 && sides.some((got) => known.every((of) => isOver(got, of)));
  };
  /** What is said where no day is given, or one that is not taken. @param {number} m */
  const noDay = (m) => { const before = states.since(m); return before === null ? say('entry.write_day') : say('number.before', { day: results.dayWords(before) }); };
  /** One line: the field with its unit, kept as done today or on another day. Of what is not to be tried today the day comes first, and why
   * it is not; of what takes no number only that. Null where there is nothing to say. `kept` is told what is new.
   * @param {number} m @param {(of: { key: string, news: (Node | string)[] }) => void} kept @param {boolean} [isOpen] it was asked for: nothing of it is folded @returns {HTMLElement | null} */
  const line = (m, kept, isOpen = false) => {
    const how = states.asks(m), why = how === 'today' ? [] : states.hints(m), isTold = how === 'told';
    if (states.barred() === 'ask' || !isPlain(m) || (!how && (!why.length || store.adults.isDue()))) return null;
    if (!how) return make('div', { class: 'number-line' }, ...why);
    if (states.barred() === 'first' && store.keeps()) return make('p', { class: 'hint' }, make('a', { href: 'before-you-start.html#questions', text: say('number.health_first') }));
    count += 1;
    const id = `number-${count}`, day = results.today();
    const sides = model.is(m, readiness.EACH_SIDE) ? [say('number.left'), say('number.right')] : [''];
    const inputs = sides.map((side, i) => /** @type {HTMLInputElement} */ (make('input', { id: `${id}-${i}`, type: 'text', inputmode: 'decimal', size: 4, autocomplete: 'off', 'aria-label': labelOf(m, side), placeholder: side })));
    const fault = make('p', { class: 'fault', role: 'alert', id: `${id}-fault` }), says = make('p', { class: 'hint', role: 'status' });
    let isKept = false;
    const when = /** @type {HTMLSelectElement} */ (make('select', { id: `${id}-when` }, make('option', { value: '', text: say('entry.choose') }), ...spans(m).map(([value, text]) => make('option', { value, text }))));
    const on = /** @type {HTMLInputElement} */ (make('input', { id: `${id}-on`, type: 'date', max: results.dayText(day), min: results.dayText(day - 3650), 'aria-label': say('entry.on_day'), hidden: true }));
    const keeps = make('button', { type: 'submit', value: 'other', class: isTold ? 'quiet' : null, text: say('entry.keep') });
    const other = make('p', { class: 'fields number-when', hidden: !isTold }, make('label', { for: when.id, text: say('entry.when') }), when, on, isTold ? null : keeps);
    when.addEventListener('change', () => { on.hidden = when.value !== 'day'; });
    const submit = async (/** @type {any} */ event) => {
      event.preventDefault();
      // It is kept once, however often it is pressed before the page has said so.
      if (isKept) return;
      const all = inputs.map(({ value }) => read(m, value)), bad = all.indexOf(null);
      if (bad >= 0) { blame(inputs[bad], fault, say('entry.write_numbers')); return; }
      const of = other.hidden ? given('0', '', day) : given(when.value, on.value, day, states.since(m));
      if (of === undefined) { blame(when.value === 'day' ? on : when, fault, noDay(m)); return; }
      const more = isMore(m, /** @type {Got[]} */ (all));
      blame(inputs[0], fault, more ? say('number.until_settled') : '');
      if (more) return;
      const odd = all.find((got) => readiness.doubtful(model, m, /** @type {Got} */ (got)));
      if (odd && !await isMeant(m, odd)) { inputs[0].focus(); return; }
      isKept = true;
      const done = keep(m, /** @type {Got[]} */ (all), of);
      says.replaceChildren(...done.kept);
      page.later([() => {
        isKept = false;
        says.replaceChildren();
        kept({ key: done.key, news: done.news() });
      }], `${id}-says`);
    };
    const from = inputs.map((input) => fromPicture(m, input));
    if (isTold) {
      const form = make('form', { class: 'number-line', novalidate: true, on: { submit } }, other, ...inputs, make('span', { class: 'unit', text: unitOf(m)[0] }), keeps, ...from, fault, says);
      return make('div', {}, ...why, isOpen ? form : make('details', {}, make('summary', { text: say('number.told') }), form));
    }
    return make('form', { class: 'number-line', novalidate: true, on: { submit } }, ...inputs, make('span', { class: 'unit', text: unitOf(m)[0] }),
      make('button', { type: 'submit', class: 'quiet', text: say('number.today') }),
      make('button', { type: 'button', class: 'plain-button', text: say('number.another_day'), on: { click: () => { other.hidden = false; when.focus(); } } }), ...from, other, fault, says);
  };

  globalThis.rungbook.number = { isMeant, news, isPlain, unitOf, read, given, keep, spans, noDay, isMore, line, labelOf, fromPicture, SPANS };
})();
