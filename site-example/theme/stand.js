'use strict';self.rungbookIs+="stand.js=78fd19d7 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"entry.if_it_hurts":"If it hurts","list.separator":", ","results.too_large":"The file is larger than 1 MB","results.unreadable":"The file cannot be read","shared.movement":"Movement","shared.the_goal":"The goal:","stand.all_movements":{"one":"All {n} movements","other":"All {n} movements"},"stand.allowed":"{pause} (allowed by a clinician)","stand.aside_line":"{movement}, {got}, {day}: {reason}","stand.ask_first":"ask a licensed clinician first","stand.change_nothing":"Change nothing","stand.copy_choice":"Put together only what is one person’s. Replacing erases all that is kept here, the outcome of the health questions too.","stand.copy_named":"The copy is of {file}; the numbers here bear no name.","stand.copy_only":"Entries that stand only in the copy: {there}; only here: {here}.","stand.copy_other_name":"The copy is of {file}; the numbers here are of {here}.","stand.copy_unlike":{"one":"{n} test in the copy has another result here on the same day.","other":"{n} tests in the copy have another result here on the same day."},"stand.counted_because":"counted because you own {movement}","stand.do_not_try":"do not try this yet","stand.ended":"{pause} (ended)","stand.erase_ask":"Erase everything?","stand.erase_everything":"Erase everything","stand.erase_what":"All your numbers, pauses and the outcome of the health questions are taken from this browser. There is no way back but a copy that you saved.","stand.erased":"Everything is erased from this browser.","stand.first":"First:","stand.foundations_missing":"These foundations are missing:","stand.from_training":"(the number from training; do not try it today)","stand.health_first":"answer the health questions first","stand.in_brackets":"({text})","stand.in_clipboard":"The text is in your clipboard.","stand.keep_them":"Keep them","stand.keep_weight":"Keep {weight}","stand.lift":"Lift this pause","stand.load":"Seven days, effort × minutes: {total}; monotony {monotony}, strain {strain}.","stand.may_start":"you may start training this","stand.moved":"{movement} {before} now {now}","stand.no_room":"The copy does not fit into this browser’s storage. Nothing was changed.","stand.no_weight":"That is not a body weight. Write it like {example}.","stand.not_shared":"This browser did not share it. Save a copy instead.","stand.nothing_changed":"Nothing was changed.","stand.nothing_in_doubt":"Nothing here is open to doubt that a question could decide.","stand.nothing_moved":"Nothing.","stand.nothing_open":"nothing","stand.nothing_owned_yet":"nothing yet","stand.nothing_to_ask":"No question would decide more here: what is still to be tested stands above something that is missing.","stand.odd":"Cannot be read: {reason}. {text}","stand.past":"{day}: {got}","stand.put_together":"Put together","stand.refused":"Refused, nothing was changed. {why}.","stand.replace_mine":"Replace what is here","stand.rest":"Rest: {pause}","stand.share_end":"Not medical advice. Signal words in brackets: read the cautions first.","stand.share_open":"open: {list}","stand.share_owned":"owned: {list}","stand.shared":"Shared.","stand.since":"Since {day}:","stand.state":"State","stand.storage":"Your numbers are kept in this browser, on this device, and go nowhere else. Whoever uses this browser can read them; from disk, so can other pages opened from disk. A browser may clear the storage of a site that is not visited for about a week: save a copy.","stand.storage_forbidden":"This browser does not let the page keep anything: save a copy before you close it.","stand.storage_full":"This browser’s storage is full: what you enter now is lost when you close the page. Save a copy.","stand.take_away":"Take away","stand.take_back":"Take back","stand.take_back_of":"Take back {day}","stand.take_weight":"Take {weight}","stand.taken_in":{"one":"{n} entry taken in.","other":"{n} entries taken in."},"stand.taken_in_some":{"one":"{n} entry taken in, {same} were here already.","other":"{n} entries taken in, {same} were here already."},"stand.tests_would_show":"these tests would show it: {tests}","stand.to_come":"{pause} (still to come)","stand.to_the_questions":"To the questions","stand.train_first":"train {movement} first; do not try this yet","stand.two_weights":"Two body weights","stand.undated":"{movement}, {got}: nobody knows the day. It stays on this device and is not in your copy.","stand.untested":"{movement} {target}, untested","stand.weight_kept":"Body weight kept.","stand.which_weight":"Here stands {here}, in the file {file}. Which one counts from now on?","stand.whose_copy":"Whose numbers are these?","stand.why":"Why","stand.would_decide":"The tests that would decide most: {tests}.","stand.you_have":"{movement} {target}, you have {got} ({share} %)","test.before_you_start":"Before you start"});
'use strict';
(() => {
const { targets, results, readiness, placement, training, aim, store, page, states } = globalThis.rungbook;
const { make, named, namedList, byId, units } = page;
const { say, sayNodes } = globalThis.rungbook.words;
const { model, mine, mark } = states;
if (!model) return;
const { tables } = model;
const SVG = 'http://www.w3.org/2000/svg';
const notice = byId('notice');
const tell = (text) => { notice.textContent = text; };
const missingLine = ({ leaf, movement, got, share }) => {
const asked = { movement: named(tables, movement), target: states.target(leaf) };
return make('li', {}, ...(got === null ? sayNodes('stand.untested', asked) : sayNodes('stand.you_have', { ...asked, got: states.got(got), share: Math.floor(Number(share) / 10) })));
};
const under = ({ direct, steps }) => (direct || steps.length === 0 ? [] : [make('p', { text: say('stand.first') }), make('ul', { class: 'lack' }, ...steps.map(missingLine))]);
const why = ({ found, person }, m) => {
const barred = states.barred();
const lack = () => make('ul', { class: 'lack' }, ...found.missing(m).map(missingLine));
switch (found.states[m]) {
case readiness.PAUSED:
return [make('ul', { class: 'lack' }, ...found.pausedBy(m).map((cause) => make('li', {}, ...sayNodes('stand.rest', { pause: states.causeWords(cause) }))))];
case readiness.OWNED: {
const root = found.countedBecause(m);
return [...(root >= 0 ? sayNodes('stand.counted_because', { movement: named(tables, root) }).map((part) => (part)) : []), ...(found.needs[m] === readiness.FALSE ? [make('p', { text: say('stand.foundations_missing') }), lack(), ...(barred ? [] : under(found.first(m)))] : [])];
}
case readiness.OPEN: return [barred === 'ask' ? say('stand.ask_first') : barred ? say('stand.health_first') : say('stand.may_start')];
case readiness.ALMOST: {
if (barred) return [lack()];
const first = found.first(m);
if (!first.direct && first.steps.length) return [make('p', { text: say('stand.do_not_try') }), lack(), ...under(first)];
return [...sayNodes('stand.train_first', { movement: named(tables, model.of(found.nearly(m))) }).map((part) => (part)), lack()];
}
case readiness.NOT_YET: return barred ? [lack()] : [lack(), ...under(found.first(m))];
default: {
if (!person) return [];
if (barred) return [barred === 'ask' ? say('stand.ask_first') : say('stand.health_first')];
const first = found.first(m);
if (!first.direct) return first.steps.length ? under(first) : [lack()];
const tests = [...new Set(first.steps.map(({ movement }) => movement))];
return sayNodes('stand.tests_would_show', { tests: namedList(tables, tests) }).map((part) => (part));
}
}
};
const summary = (stand) => {
const counts = readiness.STATES.map((_, state) => stand.found.states.filter((s) => s === state).length);
byId('summary').replaceChildren(make('ul', { class: 'plain counts' }, ...counts.map((count, state) => (count ? make('li', {}, mark(state), ` ${globalThis.rungbook.words.number(count)}`) : null)).filter((li) => li !== null)));
};
const changes = (stand) => {
const days = [...new Set(stand.person.tested.map(({ on }) => on))].sort((a, b) => b - a);
const place = byId('changed');
place.hidden = days.length < 2;
if (days.length < 2) return;
const before = readiness.assess(model, { ...stand.person, tested: stand.person.tested.filter(({ on }) => on < days[0]) }, days[1]);
const moved = model.order.filter((m) => before.states[m] !== stand.found.states[m]);
byId('changed-list').replaceChildren(...(moved.length ? moved.map((m) => make('li', {}, ...sayNodes('stand.moved', { movement: named(tables, m), before: mark(before.states[m]), now: mark(stand.found.states[m]) }))) : [make('li', { text: say('stand.nothing_moved') })]));
byId('changed-since').replaceChildren(...sayNodes('stand.since', { day: states.day(results.dayText(days[1])) }).map((part) => (part)));
};
const skillPart = (stand, skill) => {
const tests = [];
for (let asked = ([]); !states.barred() && tests.length < 3; asked = tests.map(({ m }) => m)) {
const question = placement.next(model, stand.found, skill.members, asked, stand.day);
if (!question) break;
tests.push({ m: question.movement, today: question.today });
}
const goal = model.of(skill.goal);
const rows = skill.members.map((m) => make('tr', { 'data-movement': tables.ids[m] }, make('th', { scope: 'row' }, named(tables, m)),
make('td', { 'data-label': say('stand.state') }, mark(stand.found.states[m], stand.found.counted[m] === 1)), make('td', { 'data-label': say('stand.why') }, ...why(stand, m))));
return make('section', { class: 'skill-stand' },
make('h2', {}, page.namedSkill(tables, skill, goal)),
make('p', {}, say('shared.the_goal'), ' ', named(tables, goal), ' ', states.target(skill.goal), ' ', mark(stand.found.states[goal], stand.found.counted[goal] === 1)),
tests.length ? make('p', {}, ...sayNodes('stand.would_decide', { tests: tests.flatMap(({ m, today }, i) => [i ? say('list.separator') : '', named(tables, m), today ? '' : ` ${say('stand.from_training')}`]) }), ' ',
make('a', { href: `self-test-${skill.id}.html`, text: say('stand.to_the_questions') })) : states.barred() ? null : make('p', { text: skill.members.some((m) => stand.found.states[m] === readiness.TEST_FIRST) ? say('stand.nothing_to_ask') : say('stand.nothing_in_doubt') }),
make('details', {}, make('summary', { text: say('stand.all_movements', { n: skill.members.length }) }),
make('div', { class: 'wide', tabindex: '0' }, make('table', { class: 'list ready-mine' }, make('thead', {}, make('tr', {}, ...[say('shared.movement'), say('stand.state'), say('stand.why')].map((text) => make('th', { scope: 'col', text })))), make('tbody', {}, ...rows)))));
};
const chart = (points) => {
const width = 240, height = 48, pad = 6;
const days = points.map(({ on }) => on), amounts = points.map(({ amount }) => amount);
const [first, last, low, high] = [Math.min(...days), Math.max(...days), Math.min(0, ...amounts), Math.max(...amounts)];
const x = (on) => (last === first ? width / 2 : pad + ((on - first) / (last - first)) * (width - 2 * pad));
const y = (amount) => (high === low ? height / 2 : height - pad - ((amount - low) / (high - low)) * (height - 2 * pad));
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
for (const tested of [...stand.person.tested].sort((a, b) => a.on - b.on)) {
const list = of.get(tested.movement);
if (list) list.push(tested);
else of.set(tested.movement, [tested]);
}
const lines = [...of].sort(([a], [b]) => tables.stage[a] - tables.stage[b] || a - b).map(([m, list]) => make('article', { class: 'past', 'data-movement': tables.ids[m] },
make('h3', {}, named(tables, m)), ...(list.length > 1 ? [chart(list.map(({ on, sides }) => ({ on, amount: Math.min(...sides.map(({ amount }) => amount)) })))] : []),
make('ul', { class: 'plain' }, ...list.map((tested) => make('li', {}, ...sayNodes('stand.past', { day: states.day(results.dayText(tested.on)), got: states.got(readiness.sidesText(tested, model.target(m).atMost)) }), ' ',
make('button', { type: 'button', class: 'quiet', text: say('stand.take_back'), 'aria-label': say('stand.take_back_of', { day: results.dayWords(tested.on) }), on: { click: () => store.remove(kept[tested.entry].key) } }))))));
byId('history-list').replaceChildren(...lines);
byId('history').hidden = lines.length === 0;
};
const ahead = (stand) => {
const barred = states.barred() !== '';
byId('aim').hidden = barred;
byId('plan').hidden = barred;
if (barred) return;
const of = aim.planOf(stand), way = aim.way(of);
byId('goal').replaceChildren(aim.goalChoice('stand'));
byId('aim-says').replaceChildren(...aim.sentence(of));
byId('how-long').replaceChildren(...aim.howLong(of));
byId('way').replaceChildren(...(way ? [way] : []));
byId('plan-list').replaceChildren(...aim.weeks(of));
byId('plan-end').replaceChildren(...aim.weeksEnd(of));
};
const load = ({ person, day }) => {
const of = training.lastWeek(person.sessions, day);
byId('load').hidden = of === null;
byId('load-says').textContent = of ? say('stand.load', { total: Math.round(of.total), monotony: Math.round(of.monotony * 100) / 100, strain: Math.round(of.strain) }) : '';
};
const rests = ({ found, person, day }) => {
const kept = { paused: store.entries('paused'), restrict: store.entries('restrict') };
const others = person.pauses.filter((pause) => !found.causes.includes(pause));
const button = ({ kind, entry }) => (kind === 'paused' || kind === 'restrict'
? make('button', { type: 'button', class: 'quiet', text: say('stand.lift'), on: { click: () => store.remove(kept[kind][entry].key) } }) : null);
const line = (cause) => {
const by = states.liftedBy(cause);
return make('li', {}, ...states.causeWords(cause), ' ', by === null ? button(cause) : make('span', { class: 'hint' }, ...sayNodes('stand.in_brackets', { text: by }), ' ',
make('a', { href: cause.kind === 'pain' ? 'if-it-hurts.html#pain' : 'before-you-start.html#health', text: cause.kind === 'pain' ? say('entry.if_it_hurts') : say('test.before_you_start') })));
};
const allowed = person.cleared.filter(({ on, until }) => on <= day && (until === null || day <= until));
const said = (pause) => {
const words = { pause: states.causeWords(pause) };
return pause.on > day ? sayNodes('stand.to_come', words) : pause.until !== null && pause.until < day ? sayNodes('stand.ended', words) : sayNodes('stand.allowed', words);
};
const lines = [...found.causes.map(line), ...others.map((pause) => make('li', { class: 'hint' }, ...said(pause), ' ', states.liftedBy(pause) === null ? button(pause) : null))];
byId('rests').hidden = lines.length === 0 && allowed.length === 0;
byId('rests-list').replaceChildren(...lines);
};
const asides = (stand) => {
const undated = store.entries('undated'), odd = store.odd();
const away = (key) => make('button', { type: 'button', class: 'quiet', text: say('stand.take_away'), on: { click: () => store.remove(key) } });
byId('aside').hidden = stand.aside.length + undated.length + odd.length === 0;
byId('aside-list').replaceChildren(...undated.map(({ key, entry: of }) => make('li', {}, ...sayNodes('stand.undated', { movement: make('bdi', { text: of.movement }), got: states.got(of.got || { left: of.left, right: of.right }) }), ' ', away(key))),
...odd.map(({ key, why: reason, text }) => make('li', {}, ...sayNodes('stand.odd', { reason, text: make('bdi', {}, make('code', { text: text.slice(0, 200) })) }), ' ', key.startsWith('about:') ? make('button', { type: 'button', class: 'quiet', text: say('stand.take_away'), on: { click: () => store.put(key.slice(6), null) } }) : away(key))),
...stand.aside.map(({ movement, got, on, why: reason }) => make('li', {}, ...sayNodes('stand.aside_line', { movement: make('bdi', { text: movement }), got: states.asideGot(got), day: states.day(on), reason }))));
};
const draw = () => {
const stand = mine();
byId('nothing-yet').hidden = stand !== null;
for (const id of ['aim', 'summary', 'skills-mine', 'changed', 'rests', 'plan', 'load', 'history', 'aside']) byId(id).hidden = stand === null;
const trouble = store.trouble();
byId('storage').textContent = trouble === 'full' ? say('stand.storage_full')
: trouble === 'forbidden' ? say('stand.storage_forbidden')
: say('stand.storage');
if (!stand) return;
summary(stand);
changes(stand);
byId('skills-mine').replaceChildren(...tables.skills.map((skill) => skillPart(stand, skill)));
rests(stand);
ahead(stand);
load(stand);
history(stand);
asides(stand);
};
byId('save').addEventListener('click', () => page.download(`results-${results.dayText(results.today())}.json`, `${JSON.stringify(store.all(), null, 2)}\n`, 'application/json'));
const howToTake = async (exported) => {
const about = store.facts();
const { there, here, unlike } = store.beside(exported);
const otherName = exported.name !== undefined && exported.name !== about.name && (about.name !== undefined || !store.isEmpty());
if (otherName || (there && here)) {
const names = { file: exported.name || '', here: about.name || '' };
const whose = about.name === undefined ? say('stand.copy_named', names) : say('stand.copy_other_name', names);
const reasons = [otherName ? whose : '', unlike ? say('stand.copy_unlike', { n: unlike }) : '', there || here ? say('stand.copy_only', { there, here }) : '']
.filter((text) => text !== '');
const answer = await page.ask(say('stand.whose_copy'), [make('ul', {}, ...reasons.map((text) => make('li', { text }))), make('p', { text: say('stand.copy_choice') })],
[['', say('stand.change_nothing')], ['merge', say('stand.put_together')], ['replace', say('stand.replace_mine')]]);
if (answer !== 'merge') return answer;
}
if (exported.bodyweight === undefined || about.bodyweight === undefined || exported.bodyweight === about.bodyweight) return 'mine';
return page.ask(say('stand.two_weights'), [make('p', { text: say('stand.which_weight', { here: about.bodyweight, file: exported.bodyweight }) })],
[['mine', say('stand.keep_weight', { weight: about.bodyweight })], ['theirs', say('stand.take_weight', { weight: exported.bodyweight })], ['', say('stand.change_nothing')]]);
};
const open = (byId('open'));
open.addEventListener('change', async () => {
const file = open.files && open.files[0];
if (!file) return;
try {
if (file.size > results.LARGEST_FILE) throw new results.Refused(say('results.too_large'));
const exported = results.readFile(await file.text(), results.today());
const answer = await howToTake(exported);
if (answer === null) tell(say('stand.nothing_changed'));
else {
const { added, same, fits } = answer === 'replace' ? store.replace(exported) : store.merge(exported, answer === 'theirs');
tell(!fits ? say('stand.no_room') : same ? say('stand.taken_in_some', { n: added, same }) : say('stand.taken_in', { n: added }));
}
} catch (error) {
tell(error instanceof results.Refused ? say('stand.refused', { why: error.message }) : say('stand.refused', { why: say('results.unreadable') }));
}
open.value = '';
});
byId('erase').addEventListener('click', async () => {
const answer = await page.ask(say('stand.erase_ask'), [make('p', { text: say('stand.erase_what') })], [['', say('stand.keep_them')], ['erase', say('stand.erase_everything')]]);
if (answer === 'erase') {
store.erase();
tell(say('stand.erased'));
}
});
byId('share').addEventListener('click', async () => {
const stand = mine();
if (!stand) return;
const lines = tables.skills.map((skill) => {
const of = (state) => skill.members.filter((m) => stand.found.states[m] === state).map((m) => page.marked(tables, m));
return `${skill.name}\n  ${say('stand.share_owned', { list: of(readiness.OWNED).join(say('list.separator')) || say('stand.nothing_owned_yet') })}\n  ${say('stand.share_open', { list: of(readiness.OPEN).join(say('list.separator')) || say('stand.nothing_open') })}`;
});
const text = `${tables.school}${say('list.separator')}${results.dayWords(stand.day)}\n${lines.join('\n')}\n${say('stand.share_end')}`;
try {
const canShare = 'share' in navigator;
if (canShare) await navigator.share({ text });
else await (navigator).clipboard.writeText(text);
tell(canShare ? say('stand.shared') : say('stand.in_clipboard'));
} catch {
tell(say('stand.not_shared'));
}
});
const weight = (byId('weight'));
const weightInput = (byId('weight-input'));
weightInput.value = String(store.facts().bodyweight || '');
weight.addEventListener('submit', (event) => {
event.preventDefault();
const unit = units.current() === 'imperial' ? 'lb' : 'kg';
const bare = weightInput.value.trim().replace(',', '.');
const written = /[a-z]/i.test(bare) ? bare : `${bare} ${unit}`;
const mass = targets.readMass(written);
if (mass === null || mass < 10 * targets.KILOGRAM || mass > 500 * targets.KILOGRAM) {
tell(say('stand.no_weight', { example: `72 ${unit}` }));
return;
}
store.put('bodyweight', written);
weightInput.value = written;
tell(say('stand.weight_kept'));
});
const equipment = [...new Set(tables.equipment.flat(2))].sort();
byId('have-list').replaceChildren(...equipment.map((word) => {
const box = (make('input', { type: 'checkbox', id: `have-${word}`, value: word }));
box.checked = (store.facts().have || []).includes(word);
box.addEventListener('change', () => {
const have = new Set(store.facts().have || []);
if (box.checked) have.add(word);
else have.delete(word);
store.put('have', have.size ? [...have].sort() : null);
});
return make('li', {}, box, ' ', make('label', { for: `have-${word}`, text: tables.gear[word] || word.replace(/-/g, ' ') }));
}));
store.onChange(draw);
draw();
})();
