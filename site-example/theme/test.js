'use strict';
(() => {
const { results, readiness, placement, store, page, states, entry } = globalThis.rungbook;
const { make, named, namedList, byId } = page;
const { model, mine } = states;
if (!model) return;
const { tables } = model;
const skill = tables.skills.find(({ id }) => id === document.body.dataset.skill) || null;
const sheet = byId('sheet');
const articles = new Map([.../** @type {NodeListOf<HTMLElement>} */ (sheet.querySelectorAll('article[data-movement]'))]
.map((article) => [model.numbers.get(article.dataset.movement || ''), article]));
const nobody = () => readiness.assess(model, { bodyWeight: null, tested: [], trained: [], pauses: [], have: null }, results.today());
const found = () => { const stand = mine(); return stand ? stand.found : nobody(); };
const keptPanel = byId('kept');
const drawKept = () => {
const trouble = store.trouble();
const said = {
'': 'Your numbers stay in this browser, on this device; nobody else gets them. A browser may clear the storage of a site that is not visited for about a week, so keep a copy.',
full: 'This browser’s storage is full: new numbers are kept only until you close this page. Save a copy now.',
forbidden: 'This browser does not let the page keep anything: your numbers are lost when you close it. Save a copy before you do.',
}[trouble];
keptPanel.hidden = false;
keptPanel.classList.toggle('trouble', trouble !== '');
keptPanel.replaceChildren(make('p', { text: said }), ...(store.isEmpty() ? [] : [make('p', { class: 'acts' }, copyButton(), ' ', make('a', { href: 'where-i-stand.html', text: 'Where I stand' }))]));
};
const copyButton = () => make('button', { type: 'button', class: 'quiet', text: 'Save a copy', on: { click: () => {
page.download(`results-${results.dayText(results.today())}.json`, `${JSON.stringify(store.all(), null, 2)}\n`, 'application/json');
} } });
const barred = () => {
const screening = store.get('screening');
if (!screening) return 'first';
return screening.outcome === 'ask' ? 'ask' : '';
};
const waits = (m) => (store.get('screening') || {}).outcome === 'light' && (model.is(m, readiness.GUARDED) || model.is(m, readiness.LOWERING));
const mayTest = (/** @type {number} */ m) => barred() === '' && isFit() && !waits(m) && placement.mayBeTested(model, found(), m, results.today());
const isFit = () => store.get('fit') === results.dayText(results.today());
const drawEntry = (m, known) => {
const article = articles.get(m);
const place = article && article.querySelector('.enter');
if (!place) return;
const lines = known.slice(-3).map(({ key, entry: of }) => make('p', { class: 'was' },
`${of.got || `left ${of.left}, right ${of.right}`}, ${of.on} `,
make('button', { type: 'button', class: 'quiet', text: 'Take back', on: { click: () => store.remove(key) } })));
const open = make('button', { type: 'button', class: 'quiet', text: 'Enter a number', on: { click: () => {
if (barred() === 'first') {
byId('guided').scrollIntoView();
byId('guided').focus();
return;
}
place.replaceChildren(...advice(m, mayTest(m)), entry.form(m, { today: mayTest(m), kept: () => {}, hurt: () => {} }));
const first = place.querySelector('input');
if (first) first.focus();
} } });
place.replaceChildren(...lines, make('p', {}, open));
};
const advice = (m, today) => {
const { reached, needs } = found();
if (today) return [make('p', { class: 'advice', text: 'Test it now, or give the most you did in the last four weeks, counted in the same way.' })];
const why = !reached[m] ? 'it rests' : needs[m] !== readiness.TRUE ? 'what must be there first is not shown' : barred() ? 'ask a clinician first' : waits(m) ? 'it waits until you have exercised regularly for three months' : 'this day has had its tests of this kind';
return [make('p', { class: 'advice do-not', text: `Do not try it today: ${why}. Give only the most you did in the last four weeks, counted in the same way.` })];
};
const drawEntries = () => {
const known = new Map();
for (const of of store.entries('tested')) {
const m = model.numbers.get(of.entry.movement);
known.set(m, [...(known.get(m) || []), of]);
}
for (const m of articles.keys()) if (m !== undefined && !guide.isAt(m)) drawEntry(m, known.get(m) || []);
};
const guide = (() => {
const panel = byId('guided');
let steps = [];
let current = -1;
let isOn = false;
const asked = () => steps.map(({ m }) => m);
const isAt = (/** @type {number} */ m) => isOn && current === m;
const button = (/** @type {string} */ text, /** @type {() => void} */ act, quiet = true) => make('button', { type: 'button', class: quiet ? 'quiet' : null, text, on: { click: act } });
const show = (/** @type {number} */ m) => {
current = m;
document.body.classList.toggle('one-question', m >= 0);
for (const [of, article] of articles) article.hidden = m >= 0 && of !== m;
for (const group of /** @type {NodeListOf<HTMLElement>} */ (sheet.querySelectorAll('section.sheet'))) {
group.hidden = m >= 0 && !group.contains(articles.get(m) || null);
}
};
const speak = (/** @type {string} */ title, /** @type {(Node | null)[]} */ ...inside) => {
panel.hidden = false;
panel.replaceChildren(make('h2', { id: 'guided-head', tabindex: -1, text: title }), ...inside.filter((part) => part !== null).map((part) => /** @type {Node} */ (part)));
};
const focus = () => byId('guided-head').focus();
const stop = () => {
isOn = false;
show(-1);
begin();
drawEntries();
focus();
};
const step = (/** @type {number} */ m, /** @type {string | null} */ key) => {
steps.push({ m, key });
next();
};
const back = () => {
const last = steps.pop();
if (!last) return stop();
if (last.key) store.remove(last.key);
return question(last.m);
};
const question = (/** @type {number} */ m) => {
const today = mayTest(m);
show(m);
drawEntries();
const article = articles.get(m);
const place = article && article.querySelector('.enter');
const left = skill ? placement.next(model, found(), skill.members, asked(), results.today()) : null;
const last = steps.length ? articles.get(steps[steps.length - 1].m) : null;
const rest = today && last && steps[steps.length - 1].key && last.dataset.rest ? make('p', { text: `Rest first, if you tested just now: ${last.dataset.rest}.` }) : null;
speak(`Question ${steps.length + 1}`, rest, make('p', {}, named(tables, m), left ? `: ${left.left} movements are still open to doubt.` : ''), ...advice(m, today),
make('p', { class: 'acts' }, button('Not sure', () => step(m, null)), ' ', button('Back', back), ' ', button('Go on another day', stop)));
if (place) place.replaceChildren(entry.form(m, { today, kept: (key) => step(m, key), hurt: () => step(m, null) }));
else panel.append(entry.form(m, { today, kept: (key) => step(m, key), hurt: () => step(m, null) }));
focus();
};
const next = () => {
if (!skill) return;
const following = placement.next(model, found(), skill.members, asked(), results.today());
if (following) {
question(following.movement);
return;
}
const at = found();
const open = skill.members.filter((m) => at.states[m] === readiness.OPEN);
const yours = skill.members.filter((m) => at.states[m] === readiness.OWNED);
isOn = false;
show(-1);
const answered = steps.filter(({ key }) => key).length;
speak('That is all for now', make('p', { text: `${answered} of ${steps.length} questions answered; the full sheet has ${skill.members.length} tests. What stands above something that is missing was not asked.` }),
make('p', {}, yours.length ? 'Yours: ' : 'Nothing is yours yet.', ...namedList(tables, yours)),
make('p', {}, open.length ? 'Open to you, start training here: ' : 'Nothing new is open.', ...namedList(tables, open)),
make('p', { class: 'acts' }, make('a', { class: 'act', href: 'where-i-stand.html', text: 'Where I stand' }), ' ', copyButton(), ' ', button('Ask again', start)));
steps = [];
drawEntries();
focus();
};
const start = () => {
isOn = true;
steps = [];
next();
};
const begin = () => {
if (isOn) return;
const why = barred();
if (why === 'first') {
speak('Before the first test', make('p', { text: 'A few questions on your health come first. They take two minutes and stay on this device.' }),
make('p', {}, make('a', { class: 'act', href: `before-you-start.html#questions`, text: 'Before you start' })));
return;
}
const warning = why === 'ask' ? make('p', { class: 'advice do-not' }, 'Your answers say: ask a licensed clinician first. Until then no test is offered here, only numbers from your training. ', make('a', { href: 'before-you-start.html#questions', text: 'Before you start' })) : null;
if (!skill) {
panel.hidden = warning === null;
panel.replaceChildren(...(warning ? [warning] : []));
return;
}
if (why === '' && !isFit()) {
speak('Today?', make('p', { text: 'Not today if one of these is true:' }), make('ul', {}, ...['You are ill, feverish, or slept badly.', 'Something hurts that did not hurt last week.', 'You drank alcohol today.', 'You trained the same pattern hard in the last two days.'].map((text) => make('li', { text }))),
make('p', { class: 'acts' }, button('None is true: I am warm and ready', () => { store.set('fit', results.dayText(results.today())); start(); }, false), ' ', button('Only numbers from training today', start)));
return;
}
speak('A few questions', warning, make('p', { text: `Each asks for one number. They stop as soon as every state is decided: usually less than half of the ${skill.members.length} tests.` }),
make('p', { class: 'acts' }, button('Begin', start, false)));
};
return { begin, isAt };
})();
store.onChange(() => {
drawKept();
guide.begin();
drawEntries();
});
drawKept();
guide.begin();
drawEntries();
const print = document.getElementById('print');
if (print) {
print.hidden = false;
print.addEventListener('click', () => globalThis.print());
}
})();
