'use strict';self.rungbookIs+="people.js=0b6fdebe ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"people.another":"Another person","people.aside_line":"{name}: {movement}, {got}, {day}: {reason}","people.barred":"{name} (ask first)","people.count":{"one":"{n} person.","other":"{n} people."},"people.nobody":"Nobody is open.","people.nothing_for_all":"Nothing that is open to all.","people.numbered":"{name} ({n})","people.refused":"Refused: {list}.","people.same_name":"Two of one name","people.same_name_says":"{name} is open already. Is this the same person, with a newer copy?","people.same_person":"The same: take the newer","people.too_large":"it is larger than 1 MB","people.unreadable":"it cannot be read","shared.movement":"Movement"});
'use strict';
(() => {
const { results, readiness, page, states } = globalThis.rungbook;
const { make, named, byId } = page;
const { say, sayNodes } = globalThis.rungbook.words;
const { model, mark } = states;
if (!model) return;
const { tables } = model;
let people = [];
const choice = (byId('of-skill'));
choice.append(...tables.skills.map(({ name }, i) => make('option', { value: i, text: name })));
const draw = () => {
const skill = choice.value === '' ? null : tables.skills[Number(choice.value)];
const rows = skill ? skill.members : model.order;
byId('class').hidden = people.length === 0;
const called = (i) => {
const { name, barred } = people[i], alike = people.filter((of) => of.name === name), n = alike.indexOf(people[i]) + 1;
const numbered = alike.length > 1 ? say('people.numbered', { name, n }) : name;
return barred ? say('people.barred', { name: numbered }) : numbered;
};
const may = rows.filter((m) => people.length && people.every(({ found, barred }) => !barred && (found.states[m] === readiness.OWNED || found.states[m] === readiness.OPEN)));
byId('everyone').replaceChildren(...(may.length ? may.map((m) => make('li', {}, named(tables, m))) : [make('li', { text: say('people.nothing_for_all') })]));
byId('class-table').replaceChildren(
make('thead', {}, make('tr', {}, make('th', { scope: 'col', text: say('shared.movement') }), ...people.map((_, i) => make('th', { scope: 'col', text: called(i) })))),
make('tbody', {}, ...rows.map((m) => make('tr', { 'data-movement': tables.ids[m] }, make('th', { scope: 'row' }, named(tables, m)),
...people.map(({ found, barred }) => make('td', {}, mark(found.states[m], found.counted[m] === 1, barred)))))));
byId('class-aside').replaceChildren(...people.flatMap(({ aside }, i) => aside.map((of) => make('li', {}, ...sayNodes('people.aside_line', { name: called(i), movement: make('bdi', { text: of.movement }), got: states.asideGot(of.got), day: states.day(of.on), reason: of.why })))));
};
const open = (byId('open'));
open.addEventListener('change', async () => {
const day = results.today();
const refused = [];
for (const file of open.files || []) {
try {
if (file.size > results.LARGEST_FILE) throw new results.Refused(say('people.too_large'));
const exported = results.readFile(await file.text(), day);
const { person, aside } = results.person(exported, model, day);
const of = { name: exported.name || file.name.replace(/\.json$/i, ''), found: readiness.assess(model, person, day), aside, barred: globalThis.rungbook.health.saysOn(person.screened, day) === 'ask' };
const known = people.findIndex(({ name }) => name === of.name);
const same = known >= 0 && await page.ask(say('people.same_name'), [make('p', {}, ...sayNodes('people.same_name_says', { name: make('bdi', { text: of.name }) }))], [['same', say('people.same_person')], ['', say('people.another')]]) === 'same';
if (same) people[known] = of;
else people.push(of);
} catch (error) {
refused.push(`${file.name}: ${error instanceof results.Refused ? error.message : say('people.unreadable')}`);
}
}
byId('notice').textContent = refused.length ? say('people.refused', { list: refused.join('; ') }) : say('people.count', { n: people.length });
open.value = '';
draw();
});
byId('close-all').addEventListener('click', () => {
people = [];
byId('notice').textContent = say('people.nobody');
draw();
});
choice.addEventListener('change', draw);
})();
