'use strict';
(() => {
const make = (name, set = {}, ...inside) => {
const element = document.createElement(name);
for (const [key, value] of Object.entries(set)) {
if (value === null || value === undefined || value === false) continue;
if (key === 'on') Object.entries(/** @type {Record<string, EventListener>} */ (value)).forEach(([event, act]) => element.addEventListener(event, act));
else if (key === 'text') element.textContent = String(value);
else element.setAttribute(key, value === true ? '' : String(value));
}
element.append(...inside.filter((part) => part !== null).map((part) => /** @type {Node | string} */ (part)));
return element;
};
const named = (tables, m) => {
const mark = tables.marks[tables.mark[m]];
const marked = mark && make('a', { class: `mark mark-${mark.signal}`, 'data-caution': mark.signal, href: mark.href, title: mark.says },
make('span', { class: 'mark-word', text: mark.signal }), make('span', { class: 'aside', text: `: ${mark.says}` }));
return make('span', { class: 'named', 'data-movement': tables.ids[m] },
make('a', { href: `${tables.ids[m]}.html`, text: tables.names[m] }), mark ? ' ' : null, marked || null);
};
const namedList = (tables, list) => list.flatMap((m, i) => [i ? ', ' : null, named(tables, m)]);
const byId = (id) => {
const found = document.getElementById(id);
if (!found) throw new Error(`the page has no element ${id}`);
return found;
};
const download = (name, content, type) => {
const url = URL.createObjectURL(new Blob([content], { type }));
const link = make('a', { href: url, download: name, hidden: true });
document.body.append(link);
link.click();
link.remove();
setTimeout(() => URL.revokeObjectURL(url), 60000);
};
const ask = (title, inside, choices) => new Promise((resolve) => {
const head = make('h2', { id: 'ask-head', text: title });
const buttons = choices.map(([value, says]) => make('button', { value, type: 'submit', class: value === '' ? 'quiet' : null, text: says }));
const dialog = /** @type {HTMLDialogElement} */ (make('dialog', { 'aria-labelledby': 'ask-head' },
make('form', { method: 'dialog' }, head, ...inside, make('p', { class: 'acts' }, ...buttons))));
dialog.addEventListener('close', () => {
dialog.remove();
resolve(dialog.returnValue || null);
});
document.body.append(dialog);
dialog.showModal();
});
globalThis.rungbook = Object.assign(globalThis.rungbook || {}, { page: { make, named, namedList, byId, download, ask } });
const worker = document.documentElement.dataset.worker;
if (worker && location.protocol.startsWith('http')) document.head.append(make('link', { rel: 'manifest', href: 'manifest.webmanifest' }));
if (worker && 'serviceWorker' in navigator && location.protocol.startsWith('http')) {
const tt = /** @type {any} */ (globalThis).trustedTypes;
const policy = tt ? tt.createPolicy('rungbook-worker', { createScriptURL: (/** @type {string} */ url) => url }) : null;
const had = Boolean(navigator.serviceWorker.controller);
navigator.serviceWorker.register(policy ? policy.createScriptURL(worker) : worker).then(async () => {
const ready = await navigator.serviceWorker.ready;
const skill = document.body.dataset.skill;
if (ready.active && skill) ready.active.postMessage({ keep: [`${skill}.html`, `self-test-${skill}.html`] });
}, () => {});
navigator.serviceWorker.addEventListener('controllerchange', () => { if (had) document.body.dataset.newer = 'true'; });
}
})();
