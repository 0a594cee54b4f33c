'use strict';self.rungbookIs+="home.js=db06065c ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"home.for":"For {name}.","home.go_on":"Your goal is chosen. Go on where you were.","home.last":"Last: {got}. Towards {goal}.","home.new_number":"A new number","home.next":"{movement}, {sets}","home.next_head":"Next","home.no_last":"No number yet. Towards {goal}.","home.to_today":"To the session"});
'use strict';
(() => {
const { make, named } = globalThis.rungbook.page;
const { say, sayNodes } = globalThis.rungbook.words;
const place = document.getElementById('next');
if (!place) return;
const kept = (key) => {
try {
return JSON.parse(localStorage.getItem(globalThis.rungbook.health.prefix + key) || 'null');
} catch {
return null;
}
};
const next = kept('next'), about = kept('about') || {};
const sound = next && ['id', 'name', 'sets', 'goal'].every((key) => typeof next[key] === 'string') && /^[a-z0-9-]+$/.test(next.id);
if (!sound && !about.goal) return;
const who = typeof about.name === 'string' && localStorage.getItem(`${globalThis.rungbook.health.own}who`) ? make('p', { class: 'hint', text: say('home.for', { name: about.name }) }) : null;
const acts = make('p', { class: 'acts' }, make('a', { class: 'act', href: 'today.html', text: say('home.to_today') }), ' ', make('a', { class: 'act quiet', href: 'where-i-stand.html', text: say('home.new_number') }));
const isMark = (mark) => mark && ['signal', 'word', 'says', 'href'].every((key) => typeof mark[key] === 'string') && /^[a-z0-9-]+[.]html(#[a-z0-9-]+)?$/.test(mark.href) && /^(warning|caution|notice|danger)$/.test(mark.signal);
if (sound) {
const tables = ({ ids: [next.id], names: [next.name], marks: isMark(next.mark) ? [next.mark] : [], mark: [isMark(next.mark) ? 0 : -1] });
const line = sayNodes('home.next', { movement: named(tables, 0), sets: make('span', { class: 'dose', text: next.sets }) });
place.replaceChildren(make('h2', { text: say('home.next_head') }), ...(who ? [who] : []), make('p', { class: 'lead' }, ...line.filter((part) => part !== null).map((part) => (part))),
make('p', { class: 'hint', text: next.got ? say('home.last', { got: next.got, goal: next.goal }) : say('home.no_last', { goal: next.goal }) }), acts);
} else place.replaceChildren(make('h2', { text: say('home.next_head') }), ...(who ? [who] : []), make('p', { text: say('home.go_on') }), acts);
place.hidden = false;
})();
