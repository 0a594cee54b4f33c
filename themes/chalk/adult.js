'use strict';
'after page.js results.js store.js';
// Under 16: that a parent agrees is said once, that the coach is in the room on each day, before anything is tested or trained.
(() => {
  const { results, store, page } = globalThis.rungbook;
  const { make } = page;
  const { say } = globalThis.rungbook.words;
  const { KEYS, isSaid, isDue } = store.adults;
  /** Both, to be ticked, and what goes on once they are. @param {() => HTMLElement} onward what is shown then */
  const ask = (onward) => {
    const place = make('div', { class: 'acts' });
    const draw = () => place.replaceChildren(...(isDue() ? [make('p', { class: 'hint', text: say('adult.both_first') })] : [onward()]));
    const boxes = KEYS.map((key) => {
      const box = /** @type {HTMLInputElement} */ (make('input', { type: 'checkbox', id: `adult-${key}` }));
      box.checked = isSaid(key);
      box.addEventListener('change', () => { store.note(key, box.checked ? results.dayText(results.today()) : null); draw(); });
      return make('label', { class: 'chip' }, box, say(`adult.${key}`));
    });
    draw();
    return make('div', { class: 'adult' }, make('div', { class: 'chips' }, ...boxes), place);
  };

  globalThis.rungbook.adult = { isDue, ask };
})();
