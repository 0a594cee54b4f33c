'use strict';
(() => {
const { readiness, results, store, page } = globalThis.rungbook;
const { make } = page;
const model = globalThis.rungbookTables ? readiness.prepare(globalThis.rungbookTables) : null;
let kept = null;
const current = (ready, day, exported) => {
const { person, aside } = results.person(exported, ready, day);
return { person, aside, exported, day, found: readiness.assess(ready, person, day) };
};
const mine = () => {
if (!model || store.isEmpty()) return null;
const day = results.today(), exported = store.all();
const key = `${day}:${JSON.stringify(exported)}`;
if (!kept || kept.key !== key) kept = { key, value: current(model, day, exported) };
return kept.value;
};
const mark = (state, counted) => {
const word = readiness.STATES[state];
return make('span', { class: `state state-${word.replace(' ', '-')}`, 'data-state': word },
make('span', { class: 'state-shape', 'aria-hidden': 'true' }), make('span', { text: counted ? `${word}, counted` : word }));
};
const draw = () => {
const stand = mine();
for (const slot of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-state-of]'))) {
const m = model ? model.numbers.get(slot.dataset.stateOf || '') : undefined;
slot.replaceChildren(...(stand && m !== undefined ? [mark(stand.found.states[m], stand.found.counted[m] === 1)] : []));
slot.hidden = !stand;
}
};
globalThis.rungbook.states = { model, mine, mark };
store.onChange(draw);
draw();
})();
