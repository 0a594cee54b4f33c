'use strict';self.rungbookIs+="search.js=543212fa ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"search.caution_class":"caution class","search.count_found":{"one":"{n} found","other":"{n} found"},"search.family":"family","search.nothing_found":"Nothing found. Try fewer or other words.","search.skill":"skill","search.to_read":"to read","signal.caution":"caution","signal.notice":"notice","signal.warning":"warning"});
'use strict';
(() => {
const { make, byId } = globalThis.rungbook.page;
const { say } = globalThis.rungbook.words;
const entries = globalThis.rungbookSearch || [];
const MOST = 40;
const NAME = 9, ALSO = 7, TEXT = 2;
const wordsOf = (text) => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().match(/[\p{L}\p{N}]+/gu) || [];
const index = new Map();
entries.forEach((entry, i) => {
const put = (text, weight) => {
for (const word of wordsOf(text)) {
const of = index.get(word) || new Map();
of.set(i, Math.max(of.get(i) || 0, weight));
index.set(word, of);
}
};
put(entry[2], NAME);
entry[6].forEach((also) => put(also, ALSO));
put(entry[7], TEXT);
});
const vocabulary = [...index.keys()];
const distance = (a, b, most) => {
if (Math.abs(a.length - b.length) > most) return most + 1;
let before = ([]), last = Array.from({ length: b.length + 1 }, (_, i) => i);
for (let i = 1; i <= a.length; i += 1) {
const row = [i];
let least = i;
for (let j = 1; j <= b.length; j += 1) {
const same = a[i - 1] === b[j - 1] ? 0 : 1;
let best = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + same);
if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, before[j - 2] + 1);
row.push(best);
least = Math.min(least, best);
}
if (least > most) return most + 1;
before = last;
last = row;
}
return last[b.length];
};
const answers = (typed, word) => {
if (word === typed) return 6;
if (word.startsWith(typed)) return 5;
const most = typed.length >= 7 ? 2 : typed.length >= 4 ? 1 : 0;
if (most === 0) return 0;
const near = distance(typed, word, most);
if (near <= most) return 4 - near;
return word.length > typed.length && distance(typed, word.slice(0, typed.length), most) <= most ? 1 : 0;
};
const find = (typed) => {
let found = null;
for (const part of wordsOf(typed)) {
const here = new Map();
for (const word of vocabulary) {
const worth = answers(part, word);
if (worth === 0) continue;
for (const [i, weight] of (index.get(word))) here.set(i, Math.max(here.get(i) || 0, worth * weight));
}
const both = new Map();
for (const [i, worth] of here) {
const sofar = found ? found.get(i) : 0;
if (sofar !== undefined) both.set(i, sofar + worth);
}
found = both;
}
const all = found ? [...found] : [];
return all.sort((a, b) => b[1] - a[1] || entries[a[0]][2].length - entries[b[0]][2].length || a[0] - b[0]).map(([i]) => i);
};
globalThis.rungbook.search = { find };
const input = (byId('find'));
const list = byId('found'), said = byId('said');
const KINDS = { movement: '', family: say('search.family'), skill: say('search.skill'), page: say('search.to_read'), caution: say('search.caution_class') };
const draw = () => {
const typed = input.value.trim();
const found = typed === '' ? [] : find(typed);
said.textContent = typed === '' ? '' : found.length === 0 ? say('search.nothing_found') : say('search.count_found', { n: found.length });
list.replaceChildren(...found.slice(0, MOST).map((i) => {
const [kind, id, name, signal, says, href] = entries[i];
const link = make('a', { href: kind === 'caution' ? id : `${id}.html`, text: name });
const mark = signal ? make('a', { class: `mark mark-${signal}`, 'data-caution': signal, href, title: says }, make('span', { class: 'mark-word', text: say(`signal.${signal}`) }), make('span', { class: 'aside', text: `: ${says}` })) : null;
const what = KINDS[(kind)];
return make('li', {}, make('span', ['movement', 'skill', 'family'].includes(kind) ? { class: 'named', [`data-${kind}`]: id } : {}, link, mark ? ' ' : null, mark), what ? make('span', { class: 'hint', text: ` ${what}` }) : null);
}));
};
byId('search').hidden = false;
input.addEventListener('input', draw);
byId('search').addEventListener('submit', (event) => event.preventDefault());
draw();
})();
