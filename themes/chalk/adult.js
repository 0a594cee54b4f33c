'use strict';
'after page.js results.js store.js';
// Under 16: that a parent agrees is said once, that the coach is in the room on each day, before anything is tested or trained.
(() => {
  const { results, store, page } = globalThis.rungbook;
  const { LIMITS, isChild } = globalThis.rungbook.health;
  const { make } = page;
  const { say } = globalThis.rungbook.words;
  /** Under which keys of this device it is kept, each with the day on which it was said. */
  const SAID = /** @type {const} */ (['parent', 'coach']);
  const today = () => results.dayText(results.today());
  /** Whether one of them is said, the coach today. @param {string} key */
  const isSaid = (key) => { const on = store.get(key); return key === 'coach' ? on === today() : typeof on === 'string'; };
  /** Whether somebody is of the age at which both are asked; of a child a page asks nothing. */
  const isAsked = () => {
    const { born } = store.facts(), age = results.ageOn(born === undefined ? null : born, results.today());
    return age !== null && age < LIMITS.youth && !isChild(born, results.today());
  };
  /** Whether one of them is still to be said today. */
  const isDue = () => isAsked() && !SAID.every(isSaid);
  /** Both, to be ticked, and what goes on once they are. @param {() => HTMLElement} onward what is shown then */
  const ask = (onward) => {
    const place = make('div', { class: 'acts' });
    const draw = () => place.replaceChildren(...(isDue() ? [make('p', { class: 'hint', text: say('adult.both_first') })] : [onward()]));
    const boxes = SAID.map((key) => {
      const box = /** @type {HTMLInputElement} */ (make('input', { type: 'checkbox', id: `adult-${key}` }));
      box.checked = isSaid(key);
      box.addEventListener('change', () => { store.note(key, box.checked ? today() : null); draw(); });
      return make('label', { class: 'chip' }, box, say(`adult.${key}`));
    });
    draw();
    return make('div', { class: 'adult' }, make('div', { class: 'chips' }, ...boxes), place);
  };

  globalThis.rungbook.adult = { isAsked, isDue, ask };
})();
