'use strict';
(() => {
const { targets, results, readiness, placement, store, page, states } = globalThis.rungbook;
const { make, named, namedList, byId } = page;
const { model, mine, mark } = states;
if (!model) return;
const { tables } = model;
const SVG = 'http://www.w3.org/2000/svg';
const notice = byId('notice');
const tell = (/** @type {string} */ text) => { notice.textContent = text; };
const missingLine = ({ leaf, movement, got, share }) => make('li', {}, named(tables, movement), ` ${tables.target_words[tables.leaves[2 * leaf + 1]]}`,
got === null ? ', untested' : `, you have ${got} (${Math.floor(Number(share) / 10)} %)`);
const pauseWords = (pause) => [pause.movement === null ? tables.parts[Number(pause.part)].replace('-', ' ') : named(tables, pause.movement),
`, paused${pause.by ? ` by ${pause.by}` : ''} since ${results.dayText(pause.on)}${pause.until === null ? '' : ` until ${results.dayText(pause.until)}`}${pause.because ? `: ${pause.because}` : ''}`];
const why = ({ found, person }, m) => {
const lack = () => make('ul', { class: 'lack' }, ...found.missing(m).map(missingLine));
switch (found.states[m]) {
case readiness.PAUSED:
return [make('ul', { class: 'lack' }, ...found.pausedBy(m).map((pause) => make('li', {}, 'Rest: ', ...pauseWords(pause))))];
case readiness.OWNED: {
const root = found.countedBecause(m);
return [...(root >= 0 ? ['counted because you own ', named(tables, root)] : []), ...(found.needs[m] === readiness.FALSE ? [make('p', { text: 'These foundations are missing:' }), lack()] : [])];
}
case readiness.OPEN: return ['you may start training this'];
case readiness.ALMOST: return ['train ', named(tables, model.of(found.nearly(m))), ' first; do not try this yet'];
case readiness.NOT_YET: return [lack()];
default: return person ? ['these tests would show it: ', ...namedList(tables, found.tests(m)).filter((part) => part !== null).map((part) => /** @type {Node | string} */ (part))] : [];
}
};
const summary = (stand) => {
const counts = readiness.STATES.map((_, state) => stand.found.states.filter((s) => s === state).length);
byId('summary').replaceChildren(make('ul', { class: 'plain counts' }, ...counts.map((count, state) => (count ? make('li', {}, mark(state), ` ${count}`) : null)).filter((li) => li !== null)));
};
const changes = (stand) => {
const days = [...new Set(stand.person.tested.map(({ on }) => on))].sort((a, b) => b - a);
const place = byId('changed');
place.hidden = days.length < 2;
if (days.length < 2) return;
const before = readiness.assess(model, { ...stand.person, tested: stand.person.tested.filter(({ on }) => on < days[0]) }, days[1]);
const moved = model.order.filter((m) => before.states[m] !== stand.found.states[m]);
byId('changed-list').replaceChildren(...(moved.length ? moved.map((m) => make('li', {}, named(tables, m), ' ', mark(before.states[m]), ' now ', mark(stand.found.states[m]))) : [make('li', { text: 'Nothing.' })]));
byId('changed-since').textContent = `Since ${results.dayText(days[1])}:`;
};
const skillPart = (stand, skill) => {
const tests = [];
for (let asked = /** @type {number[]} */ ([]); tests.length < 3; asked = tests.map(({ m }) => m)) {
const question = placement.next(model, stand.found, skill.members, asked, stand.day);
if (!question) break;
tests.push({ m: question.movement, today: question.today });
}
const goal = model.of(skill.goal);
const rows = skill.members.map((m) => make('tr', { 'data-movement': tables.ids[m] }, make('th', { scope: 'row' }, named(tables, m)),
make('td', { 'data-label': 'State' }, mark(stand.found.states[m], stand.found.counted[m] === 1)), make('td', { 'data-label': 'Why' }, ...why(stand, m))));
return make('section', { class: 'skill-stand' },
make('h2', {}, make('a', { href: `${skill.id}.html`, text: skill.name })),
make('p', {}, 'The goal: ', named(tables, goal), ` ${tables.target_words[tables.leaves[2 * skill.goal + 1]]} `, mark(stand.found.states[goal], stand.found.counted[goal] === 1)),
tests.length ? make('p', {}, 'The tests that would decide most: ', ...tests.flatMap(({ m, today }, i) => [i ? ', ' : '', named(tables, m), today ? '' : ' (the number from training; do not try it today)']), '. ',
make('a', { href: `self-test-${skill.id}.html`, text: 'To the questions' })) : make('p', { text: 'Nothing here is open to doubt that a question could decide.' }),
make('details', {}, make('summary', { text: `All ${skill.members.length} movements` }),
make('div', { class: 'wide', tabindex: '0' }, make('table', { class: 'list ready-mine' }, make('thead', {}, make('tr', {}, ...['Movement', 'State', 'Why'].map((text) => make('th', { scope: 'col', text })))), make('tbody', {}, ...rows)))));
};
const chart = (points) => {
const width = 240, height = 48, pad = 6;
const days = points.map(({ on }) => on), amounts = points.map(({ amount }) => amount);
const [first, last, low, high] = [Math.min(...days), Math.max(...days), Math.min(0, ...amounts), Math.max(...amounts)];
const x = (/** @type {number} */ on) => (last === first ? width / 2 : pad + ((on - first) / (last - first)) * (width - 2 * pad));
const y = (/** @type {number} */ amount) => (high === low ? height / 2 : height - pad - ((amount - low) / (high - low)) * (height - 2 * pad));
const svg = document.createElementNS(SVG, 'svg');
svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
svg.setAttribute('class', 'chart');
svg.setAttribute('aria-hidden', 'true');
const line = document.createElementNS(SVG, 'polyline');
line.setAttribute('points', points.map((p) => `${x(p.on).toFixed(1)},${y(p.amount).toFixed(1)}`).join(' '));
svg.append(line, ...points.map((p) => {
const dot = document.createElementNS(SVG, 'circle');
dot.setAttribute('cx', x(p.on).toFixed(1));
dot.setAttribute('cy', y(p.amount).toFixed(1));
dot.setAttribute('r', '3');
return dot;
}));
return svg;
};
const history = (stand) => {
const kept = store.entries('tested');
const of = new Map();
for (const tested of [...stand.person.tested].sort((a, b) => a.on - b.on)) of.set(tested.movement, [...(of.get(tested.movement) || []), tested]);
const lines = [...of].sort(([a], [b]) => tables.stage[a] - tables.stage[b] || a - b).map(([m, list]) => make('article', { class: 'past', 'data-movement': tables.ids[m] },
make('h3', {}, named(tables, m)), ...(list.length > 1 ? [chart(list.map(({ on, sides }) => ({ on, amount: Math.min(...sides.map(({ amount }) => amount)) })))] : []),
make('ul', { class: 'plain' }, ...list.map((tested) => make('li', {}, `${results.dayText(tested.on)}: ${readiness.sidesText(tested, model.target(m).atMost)} `,
make('button', { type: 'button', class: 'quiet', text: 'Take back', 'aria-label': `Take back ${results.dayText(tested.on)}`, on: { click: () => store.remove(kept[tested.entry].key) } }))))));
byId('history-list').replaceChildren(...lines);
byId('history').hidden = lines.length === 0;
};
const rests = (stand) => {
const kept = store.entries('paused');
const lines = stand.person.pauses.map((pause) => make('li', {}, ...pauseWords(pause), ' ',
make('button', { type: 'button', class: 'quiet', text: 'Lift this pause', on: { click: () => store.remove(kept[pause.entry].key) } })));
byId('rests').hidden = lines.length === 0;
byId('rests-list').replaceChildren(...lines);
};
const asides = (stand) => {
byId('aside').hidden = stand.aside.length === 0;
byId('aside-list').replaceChildren(...stand.aside.map(({ movement, got, on, why: reason }) => make('li', { text: `${movement}, ${got}, ${on}: ${reason}` })));
};
const draw = () => {
const stand = mine();
byId('nothing-yet').hidden = stand !== null;
for (const id of ['summary', 'skills-mine', 'changed', 'rests', 'history', 'aside']) byId(id).hidden = stand === null;
const trouble = store.trouble();
byId('storage').textContent = trouble === 'full' ? 'This browser’s storage is full: what you enter now is lost when you close the page. Save a copy.'
: trouble === 'forbidden' ? 'This browser does not let the page keep anything: save a copy before you close it.'
: 'Your numbers are kept in this browser, on this device, and go nowhere else. Whoever uses this browser can read them; from disk, so can other pages opened from disk. A browser may clear the storage of a site that is not visited for about a week: save a copy.';
if (!stand) return;
summary(stand);
changes(stand);
byId('skills-mine').replaceChildren(...tables.skills.map((skill) => skillPart(stand, skill)));
rests(stand);
history(stand);
asides(stand);
};
byId('save').addEventListener('click', () => page.download(`results-${results.dayText(results.today())}.json`, `${JSON.stringify(store.all(), null, 2)}\n`, 'application/json'));
const open = /** @type {HTMLInputElement} */ (byId('open'));
open.addEventListener('change', async () => {
const file = open.files && open.files[0];
if (!file) return;
try {
if (file.size > results.LARGEST_FILE) throw new results.Refused('The file is larger than 1 MB');
const exported = results.readFile(await file.text(), results.today());
const about = store.get('about') || {};
const differs = exported.bodyweight !== undefined && about.bodyweight !== undefined && exported.bodyweight !== about.bodyweight;
const answer = differs ? await page.ask('Two body weights', [make('p', { text: `Here stands ${about.bodyweight}, in the file ${exported.bodyweight}. Which one counts from now on?` })], [['mine', `Keep ${about.bodyweight}`], ['theirs', `Take ${exported.bodyweight}`]]) : 'mine';
const { added, same } = store.merge(exported, answer === 'theirs');
tell(`${added} entries taken in${same ? `, ${same} were here already` : ''}.`);
} catch (error) {
tell(error instanceof results.Refused ? `Refused, nothing was changed. ${error.message}.` : 'Refused, nothing was changed. The file cannot be read.');
}
open.value = '';
});
byId('erase').addEventListener('click', async () => {
const answer = await page.ask('Erase everything?', [make('p', { text: 'All your numbers, pauses and the outcome of the health questions are taken from this browser. There is no way back but a copy that you saved.' })], [['', 'Keep them'], ['erase', 'Erase everything']]);
if (answer === 'erase') {
store.erase();
tell('Everything is erased from this browser.');
}
});
byId('share').addEventListener('click', async () => {
const stand = mine();
if (!stand) return;
const lines = tables.skills.map((skill) => {
const of = (/** @type {number} */ state) => skill.members.filter((m) => stand.found.states[m] === state).map((m) => {
const signal = tables.marks[tables.mark[m]];
return `${tables.names[m]}${signal ? ` [${signal.signal}]` : ''}`;
});
return `${skill.name}\n  owned: ${of(readiness.OWNED).join(', ') || 'nothing yet'}\n  open: ${of(readiness.OPEN).join(', ') || 'nothing'}`;
});
const text = `${tables.school}, ${results.dayText(stand.day)}\n${lines.join('\n')}\nNot medical advice. Signal words in brackets: read the cautions first.`;
try {
const canShare = 'share' in navigator;
if (canShare) await navigator.share({ text });
else await /** @type {Navigator} */ (navigator).clipboard.writeText(text);
tell(canShare ? 'Shared.' : 'The text is in your clipboard.');
} catch {
tell('This browser did not share it. Save a copy instead.');
}
});
const weight = /** @type {HTMLFormElement} */ (byId('weight'));
const weightInput = /** @type {HTMLInputElement} */ (byId('weight-input'));
weightInput.value = String((store.get('about') || {}).bodyweight || '');
weight.addEventListener('submit', (event) => {
event.preventDefault();
const unit = tables.units === 'imperial' ? 'lb' : 'kg';
const bare = weightInput.value.trim().replace(',', '.');
const written = /[a-z]/i.test(bare) ? bare : `${bare} ${unit}`;
const mass = targets.readMass(written);
if (mass === null || mass < 10 * targets.KILOGRAM || mass > 500 * targets.KILOGRAM) {
tell(`That is not a body weight. Write it like 72 ${unit}.`);
return;
}
store.set('about', { ...(store.get('about') || {}), bodyweight: written });
weightInput.value = written;
tell('Body weight kept.');
});
const equipment = [...new Set(tables.equipment.flat(2))].sort();
byId('have-list').replaceChildren(...equipment.map((word) => {
const box = /** @type {HTMLInputElement} */ (make('input', { type: 'checkbox', id: `have-${word}`, value: word }));
box.checked = ((store.get('about') || {}).have || []).includes(word);
box.addEventListener('change', () => {
const about = store.get('about') || {}, have = new Set(about.have || []);
if (box.checked) have.add(word);
else have.delete(word);
store.set('about', { ...about, have: have.size ? [...have].sort() : undefined });
});
return make('li', {}, box, ' ', make('label', { for: `have-${word}`, text: word.replace('-', ' ') }));
}));
store.onChange(draw);
draw();
})();
