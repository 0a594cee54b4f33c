'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"body.ankle":"ankle","body.elbow":"elbow","body.fingers":"fingers","body.foot":"foot","body.hamstring":"hamstring","body.hip":"hip","body.knee":"knee","body.lower_back":"lower back","body.neck":"neck","body.shoulder":"shoulder","body.upper_back":"upper back","body.wrist":"wrist","site.load_again":"Load again","site.mixed":"A new version of this site was published while the page was loading, and its parts do not fit together. Load the page again. Your results are safe.","stand.both_sides":"left {left}, right {right}","stand.counted":"{state}, counted","state.almost":"almost","state.not_yet":"not yet","state.open":"open","state.owned":"owned","state.paused":"paused","state.test_first":"test first"});
'use strict';
(() => {
const { readiness, results, store, page } = globalThis.rungbook;
const { make, units } = page;
const { say } = globalThis.rungbook.words;
const { targets } = globalThis.rungbook;
const tables = globalThis.rungbookTables;
const named = (document.querySelector('script[src*="data/tables.js"]'));
const version = /[?&]v=([0-9a-f]+)/.exec(named ? named.src : '');
const isMixed = tables !== undefined && version !== null && tables.version !== version[1];
if (isMixed) {
page.byId('main').prepend(make('div', { class: 'advice do-not', role: 'alert', id: 'mixed' }, make('p', { text: say('site.mixed') }),
make('p', {}, make('button', { type: 'button', text: say('site.load_again'), on: { click: () => location.reload() } }))));
}
const model = tables && !isMixed ? readiness.prepare(tables) : null;
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
const stateWord = (state) => say(`state.${readiness.STATES[state].replace(' ', '_')}`);
const shown = (got, eachSide = false) => {
const own = targets.words(got, units.ofSchool, eachSide), other = targets.words(got, units.ofOther, eachSide);
return make('bdi', { text: own, 'data-other': own === other ? null : other });
};
const target = (leaf) => {
const ready = (model);
return shown(ready.target(leaf), ready.tables.targets[ready.tables.leaves[2 * leaf + 1]][9] === 1);
};
const got = (kept) => {
const sides = typeof kept === 'string' ? /^left (.*), right (.*)$/.exec(kept) : ['', kept.left, kept.right];
const one = (text) => { const read = targets.readGot(text); return read ? shown(read) : text; };
return sides ? globalThis.rungbook.words.sayNodes('stand.both_sides', { left: one(sides[1]), right: one(sides[2]) }) : [one(String(kept))];
};
const partWord = (part) => say(`body.${part.replace('-', '_')}`);
const day = (text) => make('time', { datetime: text, text: results.readDay(text) === null ? text : results.dayWords(Number(results.readDay(text))) });
const mark = (state, counted) => {
const word = readiness.STATES[state];
return make('span', { class: `state state-${word.replace(' ', '-')}`, 'data-state': word },
make('span', { class: 'state-shape', 'aria-hidden': 'true' }), make('span', { text: counted ? say('stand.counted', { state: stateWord(state) }) : stateWord(state) }));
};
const draw = () => {
const stand = mine();
for (const slot of (document.querySelectorAll('[data-state-of]'))) {
const m = model ? model.numbers.get(slot.dataset.stateOf || '') : undefined;
slot.replaceChildren(...(stand && m !== undefined ? [mark(stand.found.states[m], stand.found.counted[m] === 1)] : []));
slot.hidden = !stand;
}
};
globalThis.rungbook.states = { model, mine, mark, stateWord, shown, target, got, partWord, day };
store.onChange(draw);
draw();
})();
