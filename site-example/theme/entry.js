'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"entry.centimetres":"Centimetres","entry.could_have_done":"Could have done more","entry.countdown":"five seconds to get into place","entry.day_and_left":"The day, and what was left","entry.degrees":"Degrees","entry.done":"Done","entry.emergency":"Chest pain, fainting, numbness, a joint out of place: call the emergency number. Anything else that hurts: ask a licensed clinician.","entry.go_back":"Go back","entry.good_tries":"Good tries","entry.helps":"helps me","entry.if_it_hurts":"If it hurts","entry.inches":"Inches","entry.is_added":"is added","entry.it_hurt":"It hurt","entry.keep":"Keep this number","entry.of_left":"{amount}, left","entry.of_right":"{amount}, right","entry.on_about":"On, about","entry.on_day":"On","entry.out_of_tries":"Out of tries","entry.pause":"Pause it","entry.reps":"Reps","entry.seconds":"Seconds","entry.seconds_of_each":"Seconds of each rep","entry.sets":"Sets","entry.start_timer":"Start the hold timer","entry.starts_in":"in {seconds}","entry.stop":"Stop","entry.stop_here":"Stop here. {movement} rests from now, and so does everything that stresses what hurts, until you or your coach lift it.","entry.the_weight":"The weight","entry.weight_in_kilograms":"Weight (kg)","entry.weight_in_pounds":"Weight (lb)","entry.where":"Where did it hurt?","entry.write_numbers":"Write numbers, such as 9 or 2.5. If you cannot do one yet, write 0.","entry.write_recent":"Give a day of the last four weeks.","entry.write_reserve":"Write a whole number for what you could have done more, and a day up to today."});
'use strict';
(() => {
const { targets, results, readiness, store, page, states } = globalThis.rungbook;
const { make, named, units } = page;
const { say, sayNodes } = globalThis.rungbook.words;
const { TIME, LENGTH, DONE, NO_LOAD } = targets;
const FOUR_WEEKS = 28;
const COUNTDOWN = 5;
const WORDS = [say('entry.reps'), say('entry.seconds'), say('entry.centimetres'), say('entry.degrees'), say('entry.done')];
const UNITS = ['reps', 's', 'cm', 'deg', 'done'];
let count = 0;
const field = (says, set) => {
count += 1;
const id = `field-${count}`;
const input = (make('input', { id, autocomplete: 'off', ...set }));
return { input, says, whole: make('p', { class: 'field' }, make('label', { for: id, text: says }), input) };
};
const choice = (says, options) => {
count += 1;
const id = `field-${count}`;
const input = (make('select', { id }, ...options.map(([value, words]) => make('option', { value, text: words }))));
return { input, whole: make('p', { class: 'field' }, make('label', { for: id, text: says }), input) };
};
const number = { type: 'text', inputmode: 'decimal', size: 6 };
const timer = (side, done) => {
count += 1;
const id = `timer-${count}`;
const face = make('span', { class: 'timer-face', role: 'timer', text: '0' });
const button = make('button', { type: 'button', class: 'quiet', text: say('entry.start_timer'), 'aria-describedby': side ? id : null });
let started = 0, ticking = 0;
const tick = () => {
const passed = (performance.now() - started) / 1000 - COUNTDOWN;
face.textContent = passed < 0 ? say('entry.starts_in', { seconds: Math.ceil(-passed) }) : String(Math.floor(passed));
};
button.addEventListener('click', () => {
if (ticking) {
clearInterval(ticking);
ticking = 0;
const held = Math.max(0, Math.floor((performance.now() - started) / 1000 - COUNTDOWN));
face.textContent = String(held);
button.textContent = say('entry.start_timer');
done(held);
return;
}
started = performance.now();
ticking = Number(setInterval(tick, 100));
button.textContent = say('entry.stop');
tick();
});
return make('p', { class: 'timer' }, ...(side ? [make('span', { id, text: side }), ' '] : []), button, ' ', face, make('span', { class: 'hint', text: ` ${say('entry.countdown')}` }));
};
const uses = (model, m) => {
const asked = model.demands[m].map(model.target);
const some = (has) => asked.some(has);
return {
sets: some((t) => t.sets > 1), seconds: some((t) => t.seconds > 0), tries: some((t) => t.of > 0),
load: some((t) => t.unit !== NO_LOAD), help: some((t) => t.load < 0),
};
};
const form = (m, options) => {
const model = (states.model);
const { measure } = model.target(m);
const use = uses(model, m);
const sided = model.is(m, readiness.EACH_SIDE);
const day = results.today();
const inches = measure === LENGTH && units.current() === 'imperial';
const says = inches ? say('entry.inches') : WORDS[measure];
const unit = inches ? 'in' : UNITS[measure];
const amounts = sided
? [field(say('entry.of_left', { amount: says }), number), field(say('entry.of_right', { amount: says }), number)]
: [field(says, measure === DONE ? { type: 'checkbox' } : number)];
const sets = use.sets ? field(say('entry.sets'), { ...number, value: '1' }) : null;
const seconds = use.seconds ? field(say('entry.seconds_of_each'), number) : null;
const hits = use.tries ? [field(say('entry.good_tries'), number), field(say('entry.out_of_tries'), number)] : null;
const weight = units.current() === 'imperial' ? 'lb' : 'kg';
const load = use.load ? field(weight === 'lb' ? say('entry.weight_in_pounds') : say('entry.weight_in_kilograms'), number) : null;
const way = use.load ? choice(say('entry.the_weight'), [...(use.help ? [['help', say('entry.helps')]] : []), ['added', say('entry.is_added')], ...(use.help ? [] : [['help', say('entry.helps')]])].map((o) => (o))) : null;
const reserve = field(say('entry.could_have_done'), { ...number, placeholder: '0' });
const on = field(options.today ? say('entry.on_day') : say('entry.on_about'), {
type: 'date', value: results.dayText(options.today ? day : day - 7), max: results.dayText(day), min: results.dayText(day - (options.today ? 3650 : FOUR_WEEKS)),
});
const fault = make('p', { class: 'fault', role: 'alert' });
const written = (of) => of.input.value.trim().replace(',', '.');
const text = (amount) => {
if (measure === DONE) return amount.input.checked ? 'done' : 'not done';
const set = sets && written(sets) !== '' && written(sets) !== '1' ? `${written(sets)}x` : '';
const each = seconds && written(seconds) !== '' ? ` of ${written(seconds)} s` : '';
const tried = hits && written(hits[1]) !== '' ? ` in ${written(hits[0])} of ${written(hits[1])} tries` : '';
const added = load && way && written(load) !== '' && Number(written(load)) !== 0 ? ` with ${written(load)} ${weight}${way.input.value === 'help' ? ' help' : ''}` : '';
return `${set}${written(amount)} ${unit}${each}${tried}${added}`;
};
const whole = make('form', { class: 'enter-form', novalidate: true, on: {
submit: (event) => {
event.preventDefault();
const read = amounts.map((amount) => targets.readGot(text(amount)));
const bad = read.findIndex((got) => got === null);
const left = Number(written(reserve) || '0');
if (bad >= 0) {
fault.textContent = say('entry.write_numbers');
amounts[bad].input.focus();
return;
}
if (!Number.isInteger(left) || left < 0 || results.readDay(on.input.value) === null || Number(results.readDay(on.input.value)) > day) {
fault.textContent = say('entry.write_reserve');
return;
}
if (!options.today && Number(results.readDay(on.input.value)) < day - FOUR_WEEKS) {
fault.textContent = say('entry.write_recent');
return;
}
const texts = read.map((got) => targets.text((got)));
const sides = sided ? { left: texts[0], right: texts[1] } : { got: texts[0] };
options.kept(store.add('tested', { movement: model.tables.ids[m], ...sides, on: on.input.value, ...(left ? { in_reserve: left } : {}) }));
},
} },
...(measure === TIME && options.today ? amounts.map((amount) => timer(sided ? amount.says : '', (held) => { amount.input.value = String(held); })) : []),
make('div', { class: 'fields' }, ...[...amounts, sets, seconds, ...(hits || []), load, way].map((part) => part && part.whole)),
make('details', { class: 'more' }, make('summary', { text: say('entry.day_and_left') }), make('div', { class: 'fields' }, on.whole, reserve.whole)),
fault,
make('p', { class: 'acts' }, make('button', { type: 'submit', text: say('entry.keep') }), ' ',
make('button', { type: 'button', class: 'hurt', text: say('entry.it_hurt'), on: { click: () => hurt(m).then((paused) => { if (paused) options.hurt(); }) } })));
return whole;
};
const hurt = async (m) => {
const { tables } = (states.model);
const boxes = tables.parts.map((part, i) => {
const box = (make('input', { type: 'checkbox', value: part, id: `part-${part}` }));
return { box, stressed: ((tables.stresses[m] >> i) & 1) === 1, whole: make('li', {}, box, ' ', make('label', { for: `part-${part}`, text: states.partWord(part) })) };
}).sort((a, b) => Number(b.stressed) - Number(a.stressed));
const answer = await page.ask(say('entry.it_hurt'), [
make('p', {}, ...sayNodes('entry.stop_here', { movement: named(tables, m) })),
make('p', { text: say('entry.where') }), make('ul', { class: 'plain parts' }, ...boxes.map(({ whole }) => whole)),
make('p', {}, say('entry.emergency'), ' ', make('a', { href: 'if-it-hurts.html', text: say('entry.if_it_hurts') })),
], [['pause', say('entry.pause')], ['', say('entry.go_back')]]);
if (answer !== 'pause') return false;
const on = results.dayText(results.today());
store.add('paused', { movement: tables.ids[m], on, by: 'client', because: 'it hurt in a test' });
for (const { box } of boxes) if (box.checked) store.add('paused', { part: box.value, on, by: 'client', because: 'it hurt in a test' });
store.set('fit', null);
return true;
};
globalThis.rungbook.entry = { form, hurt };
})();
