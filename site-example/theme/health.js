'use strict';self.rungbookIs+="health.js=76eca89d ";
'use strict';
(() => {
const A_YEAR = 366;
const saysOn = (screened, today) => {
if (!screened || screened.on > today) return null;
return screened.until !== null && today > Math.min(screened.until, screened.on + A_YEAR) ? 'ask' : screened.says;
};
const root = globalThis.document ? document.documentElement : null;
const own = `rungbook:${root ? root.dataset.site || '' : ''}:`;
const prefix = () => {
let who = '';
try {
who = localStorage.getItem(`${own}who`) || '';
} catch {
}
return /^[1-9][0-9]{0,2}$/.test(who) ? `${own}@${who}:` : own;
};
const PREFIX = prefix();
const draw = () => {
if (!root) return;
let screened = null;
for (const kept of [() => sessionStorage, () => localStorage]) {
try {
screened = screened || JSON.parse(kept().getItem(`${PREFIX}screened`) || 'null');
} catch {
}
}
const day = (text) => (typeof text === 'string' && Number.isFinite(Date.parse(text)) ? Date.parse(text) / 86400000 : null);
const now = new Date(), today = Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86400000;
const on = screened && day(screened.on), says = on === null ? null : saysOn({ says: screened.says, on, until: day(screened.until) }, today);
root.dataset.health = says || 'none';
};
globalThis.rungbook = Object.assign(globalThis.rungbook || {}, { health: { A_YEAR, saysOn, draw, own, prefix: PREFIX } });
draw();
if (root) globalThis.addEventListener('storage', draw);
})();
