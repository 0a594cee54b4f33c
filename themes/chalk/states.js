'use strict';
// What the results on this device make of the curriculum, and the marks of the states: told by shape and word.
(() => {
  const { readiness, results, store, page } = globalThis.rungbook;
  const { make, units } = page;
  const { say } = globalThis.rungbook.words;
  const { targets } = globalThis.rungbook;

  const tables = globalThis.rungbookTables;
  // A publish between a page and its scripts may give it the tables of another version: then nothing is worked out from them.
  const named = /** @type {HTMLScriptElement | null} */ (document.querySelector('script[src*="data/tables.js"]'));
  const version = /[?&]v=([0-9a-f]+)/.exec(named ? named.src : '');
  const isMixed = tables !== undefined && version !== null && tables.version !== version[1];
  if (isMixed) {
    page.byId('main').prepend(make('div', { class: 'advice do-not', role: 'alert', id: 'mixed' }, make('p', { text: say('site.mixed') }),
      make('p', {}, make('button', { type: 'button', text: say('site.load_again'), on: { click: () => location.reload() } }))));
  }

  /** The tables, ready; null on a page that could not load them, or got those of another version. */
  const model = tables && !isMixed ? readiness.prepare(tables) : null;

  /** @type {{ key: string, value: ReturnType<typeof current> } | null} */
  let kept = null;
  /** @param {Model} ready @param {number} day @param {Exported} exported */
  const current = (ready, day, exported) => {
    const { person, aside } = results.person(exported, ready, day);
    return { person, aside, exported, day, found: readiness.assess(ready, person, day) };
  };
  /** Where this device's person stands today; null before the first result. */
  const mine = () => {
    if (!model || store.isEmpty()) return null;
    const day = results.today(), exported = store.all();
    const key = `${day}:${JSON.stringify(exported)}`;
    if (!kept || kept.key !== key) kept = { key, value: current(model, day, exported) };
    return kept.value;
  };

  /** A state for readers. @param {number} state */
  const stateWord = (state) => say(`state.${readiness.STATES[state].replace(' ', '_')}`);

  /** A target or a result for readers; where the other units say it otherwise, in both. @param {Got} got @param {boolean} [eachSide] */
  const shown = (got, eachSide = false) => {
    const own = targets.words(got, units.ofSchool, eachSide), other = targets.words(got, units.ofOther, eachSide);
    return make('bdi', { text: own, 'data-other': own === other ? null : other });
  };
  /** The target of a demand. @param {number} leaf */
  const target = (leaf) => {
    const ready = /** @type {Model} */ (model);
    return shown(ready.target(leaf), ready.tables.targets[ready.tables.leaves[2 * leaf + 1]][9] === 1);
  };
  /** A result as it is kept: one side, or both. @param {string | { left: string, right: string }} kept @returns {(Node | string | null)[]} */
  const got = (kept) => {
    const sides = typeof kept === 'string' ? /^left (.*), right (.*)$/.exec(kept) : ['', kept.left, kept.right];
    const one = (/** @type {string} */ text) => { const read = targets.readGot(text); return read ? shown(read) : text; };
    return sides ? globalThis.rungbook.words.sayNodes('stand.both_sides', { left: one(sides[1]), right: one(sides[2]) }) : [one(String(kept))];
  };
  /** A body part for readers. @param {string} part */
  const partWord = (part) => say(`body.${part.replace('-', '_')}`);
  /** A day as an element. @param {string} text as it is kept */
  const day = (text) => make('time', { datetime: text, text: results.readDay(text) === null ? text : results.dayWords(Number(results.readDay(text))) });

  /** @param {number} state @param {boolean} [counted] */
  const mark = (state, counted) => {
    const word = readiness.STATES[state];
    return make('span', { class: `state state-${word.replace(' ', '-')}`, 'data-state': word },
      make('span', { class: 'state-shape', 'aria-hidden': 'true' }), make('span', { text: counted ? say('stand.counted', { state: stateWord(state) }) : stateWord(state) }));
  };

  const draw = () => {
    const stand = mine();
    for (const slot of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-state-of]'))) {
      const m = model ? model.numbers.get(slot.dataset.stateOf || '') : undefined;
      slot.replaceChildren(...(stand && m !== undefined ? [mark(stand.found.states[m], stand.found.counted[m] === 1)] : []));
      slot.hidden = !stand;
    }
  };

  globalThis.rungbook.states = { model, mine, mark, stateWord, shown, target, got, partWord, day };
  store.onChange(draw);
  draw();
})();
