'use strict';self.rungbookIs+="test.js=fb7112b7 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"test.all_for_now":"That is all for now","test.another_day":"Go on another day","test.answered":{"one":"{answered} of {all} questions answered; the full sheet has {n} test. What stands above something that is missing was not asked.","other":"{answered} of {all} questions answered; the full sheet has {n} tests. What stands above something that is missing was not asked."},"test.answers_say":"Your answers say: ask a licensed clinician first. Until then no test is offered here.","test.ask_again":"Ask again","test.ask_first":"ask a clinician first","test.back":"Back","test.before_first":"Before the first test","test.before_you_start":"Before you start","test.begin":"Begin","test.day_is_full":"this day has had its tests of this kind","test.do_not":"Do not try it today: {why}. Give only the most you did in the last four weeks, counted in the same way.","test.drank":"You drank alcohol today.","test.each_asks":{"one":"Each asks for one number. They stop as soon as every state is decided: usually less than half of the {n} test.","other":"Each asks for one number. They stop as soon as every state is decided: usually less than half of the {n} tests."},"test.enter":"Enter a number","test.few_questions":"A few questions","test.health_answered":"They are answered on this device. Answer them again when your health has changed.","test.health_first":"A few questions on your health come first. They take two minutes and stay on this device.","test.health_first_why":"the health questions come first","test.health_questions":"The health questions","test.hurts":"Something hurts that did not hurt last week.","test.ill":"You are ill, feverish, or slept badly.","test.in_doubt":{"one":"{movement}: {n} movement is still open to doubt.","other":"{movement}: {n} movements are still open to doubt."},"test.it_rests":"it rests","test.not_kept":"This browser does not let the page keep anything, so what the health questions said cannot come along from page to page. No test is offered here, only numbers from your training.","test.not_shown":"what must be there first is not shown","test.not_sure":"Not sure","test.not_testing":"today is for numbers from training only","test.not_today":"Not today if one of these is true:","test.nothing_open":"Nothing new is open.","test.nothing_yours":"Nothing is yours yet.","test.only_numbers":"Only numbers from training today","test.open_to_you":"Open to you, start training here:","test.question":"Question {number}","test.ready":"None is true: I am warm and ready","test.rest_first":"Rest first, if you tested just now: {rest}.","test.save_a_copy":"Save a copy","test.storage":"Your numbers stay in this browser, on this device; nobody else gets them. A browser may clear the storage of a site that is not visited for about a week, so keep a copy.","test.storage_forbidden":"This browser does not let the page keep anything: your numbers are lost when you close it. Save a copy before you do.","test.storage_full":"This browser’s storage is full: new numbers are kept only until you close this page. Save a copy now.","test.take_back":"Take back","test.test_now":"Test it now, or give the most you did in the last four weeks, counted in the same way.","test.today":"Today?","test.trained_hard":"You trained the same pattern hard in the last two days.","test.waits":"it waits until you have exercised regularly for three months","test.was":"{got}, {day}","test.where_i_stand":"Where I stand","test.yours":"Yours:"});
'use strict';
(() => {
const { results, readiness, placement, store, page, states, entry } = globalThis.rungbook;
const { make, named, namedList, byId } = page;
const { say, sayNodes } = globalThis.rungbook.words;
const { model, mine } = states;
if (!model) return;
const { tables } = model;
const skill = tables.skills.find(({ id }) => id === document.body.dataset.skill) || null;
const sheet = byId('sheet');
const articles = new Map([...(sheet.querySelectorAll('article[data-movement]'))]
.map((article) => [model.numbers.get(article.dataset.movement || ''), article]));
const nobody = () => readiness.assess(model, results.nobody(), results.today());
const found = () => { const stand = mine(); return stand ? stand.found : nobody(); };
const keptPanel = byId('kept');
const drawKept = () => {
const trouble = store.trouble();
const said = {
'': say('test.storage'),
full: say('test.storage_full'),
forbidden: say('test.storage_forbidden'),
}[trouble];
keptPanel.hidden = false;
keptPanel.classList.toggle('trouble', trouble !== '');
keptPanel.replaceChildren(make('p', { text: said }), ...(store.isEmpty() ? [] : [make('p', { class: 'acts' }, copyButton(), ' ', make('a', { href: 'where-i-stand.html', text: say('test.where_i_stand') }))]));
};
const copyButton = () => make('button', { type: 'button', class: 'quiet', text: say('test.save_a_copy'), on: { click: () => {
page.download(`results-${results.dayText(results.today())}.json`, `${JSON.stringify(store.all(), null, 2)}\n`, 'application/json');
} } });
const { barred } = states;
const mayTest = (m) => barred() === '' && isFit() && placement.mayBeTested(model, found(), m, results.today());
const waits = (m) => found().pausedBy(m).some(({ kind }) => kind === 'light');
const isFit = () => store.get('fit') === results.dayText(results.today());
const drawEntry = (m, known) => {
const article = articles.get(m);
const place = article && article.querySelector('.enter');
if (!place) return;
const lines = known.slice(-3).map(({ key, entry: of }) => make('p', { class: 'was' },
...sayNodes('test.was', { got: states.got(of.got || (of.left && of.right ? { left: of.left, right: of.right } : of.left || of.right)), day: states.day(of.on) }), ' ',
make('button', { type: 'button', class: 'quiet', text: say('test.take_back'), on: { click: () => store.remove(key) } })));
const open = make('button', { type: 'button', class: 'quiet', text: say('test.enter'), on: { click: () => {
if (barred() === 'first' && store.keeps()) {
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
if (today) return [make('p', { class: 'advice', text: say('test.test_now') })];
const why = barred() ? (barred() === 'ask' ? say('test.ask_first') : say('test.health_first_why')) : waits(m) ? say('test.waits') : !reached[m] ? say('test.it_rests') : needs[m] !== readiness.TRUE ? say('test.not_shown') : !isFit() ? say('test.not_testing') : say('test.day_is_full');
return [make('p', { class: 'advice do-not', text: say('test.do_not', { why }) })];
};
const drawEntries = () => {
const known = new Map();
for (const of of store.entries('tested')) {
const m = model.numbers.get(of.entry.movement);
const list = known.get(m);
if (list) list.push(of);
else known.set(m, [of]);
}
for (const m of articles.keys()) if (m !== undefined && !guide.isAt(m)) drawEntry(m, known.get(m) || []);
};
const guide = (() => {
const panel = byId('guided');
let steps = [];
let current = -1;
let isOn = false;
const asked = () => steps.map(({ m }) => m);
const isAt = (m) => isOn && current === m;
const button = (text, act, quiet = true) => make('button', { type: 'button', class: quiet ? 'quiet' : null, text, on: { click: act } });
const show = (m) => {
current = m;
document.body.classList.toggle('one-question', m >= 0);
for (const [of, article] of articles) article.hidden = m >= 0 && of !== m;
for (const group of (sheet.querySelectorAll('section.sheet'))) {
group.hidden = m >= 0 && !group.contains(articles.get(m) || null);
}
};
const speak = (title, ...inside) => {
panel.hidden = false;
panel.replaceChildren(make('h2', { id: 'guided-head', tabindex: -1, text: title }), ...inside.filter((part) => part !== null).map((part) => (part)));
};
const focus = () => byId('guided-head').focus();
const stop = () => {
isOn = false;
show(-1);
begin();
drawEntries();
focus();
};
const step = (m, key) => {
steps.push({ m, key });
next();
};
const back = () => {
const last = steps.pop();
if (!last) return stop();
if (last.key) store.remove(last.key);
return question(last.m);
};
const question = (m) => {
const today = mayTest(m);
show(m);
drawEntries();
const article = articles.get(m);
const place = article && article.querySelector('.enter');
const left = skill ? placement.next(model, found(), skill.members, asked(), results.today()) : null;
const last = steps.length ? articles.get(steps[steps.length - 1].m) : null;
const rest = today && last && steps[steps.length - 1].key && last.dataset.rest ? make('p', { text: say('test.rest_first', { rest: last.dataset.rest || '' }) }) : null;
speak(say('test.question', { number: steps.length + 1 }), rest, make('p', {}, ...(left ? sayNodes('test.in_doubt', { movement: named(tables, m), n: left.left }) : [named(tables, m)])), ...advice(m, today),
make('p', { class: 'acts' }, button(say('test.not_sure'), () => step(m, null)), ' ', button(say('test.back'), back), ' ', button(say('test.another_day'), stop)));
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
speak(say('test.all_for_now'), make('p', { text: say('test.answered', { answered, all: steps.length, n: skill.members.length }) }),
make('p', {}, yours.length ? `${say('test.yours')} ` : say('test.nothing_yours'), ...namedList(tables, yours)),
barred() ? null : make('p', {}, open.length ? `${say('test.open_to_you')} ` : say('test.nothing_open'), ...namedList(tables, open)),
make('p', { class: 'acts' }, make('a', { class: 'act', href: 'where-i-stand.html', text: say('test.where_i_stand') }), ' ', copyButton(), ' ', button(say('test.ask_again'), start)));
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
const lost = why === 'first' && !store.keeps();
if (why === 'first' && !lost) {
speak(say('test.before_first'), make('p', { text: say('test.health_first') }),
make('p', {}, make('a', { class: 'act', href: `before-you-start.html#questions`, text: say('test.before_you_start') })));
return;
}
if (why === 'ask') {
speak(say('test.health_questions'), make('p', { text: say('test.health_answered') }), make('p', { class: 'advice do-not' }, `${say('test.answers_say')} `, make('a', { href: 'before-you-start.html#health', text: say('test.before_you_start') })));
return;
}
const warning = lost ? make('p', { class: 'advice do-not', text: say('test.not_kept') }) : null;
if (!skill) {
speak(say('test.health_questions'), ...(warning ? [warning] : [make('p', { text: say('test.health_answered') }),
make('p', {}, make('a', { class: 'act quiet', href: 'before-you-start.html#questions', text: say('test.before_you_start') }))]));
return;
}
if (why === '' && !isFit()) {
speak(say('test.today'), make('p', { text: say('test.not_today') }), make('ul', {}, ...[say('test.ill'), say('test.hurts'), say('test.drank'), say('test.trained_hard')].map((text) => make('li', { text }))),
make('p', { class: 'acts' }, button(say('test.ready'), () => { store.set('fit', results.dayText(results.today())); start(); }, false), ' ', button(say('test.only_numbers'), start)));
return;
}
speak(say('test.few_questions'), warning, make('p', { text: say('test.each_asks', { n: skill.members.length }) }),
make('p', { class: 'acts' }, button(say('test.begin'), start, false)));
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
