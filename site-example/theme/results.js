'use strict';
(() => {
const { readGot, readMass, text, KILOGRAM } = globalThis.rungbook.targets;
const VERSION = 1;
const LIGHTEST = 10 * KILOGRAM, HEAVIEST = 500 * KILOGRAM;
const LARGEST_FILE = 1000000;
const readDay = (written) => {
const parts = typeof written === 'string' ? /^\s*([0-9]{4})-([0-9]{2})-([0-9]{2})\s*$/.exec(written) : null;
if (!parts || Number(parts[1]) < 1900) return null;
const time = Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3]));
return new Date(time).toISOString().slice(0, 10) === parts[0].trim() ? time / 86400000 : null;
};
const dayText = (day) => new Date(day * 86400000).toISOString().slice(0, 10);
const today = () => {
const now = new Date();
return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86400000;
};
class Refused extends Error {}
const demand = (fine, why) => {
if (!fine) throw new Refused(why);
};
const record = (value, what) => {
demand(typeof value === 'object' && value !== null && !Array.isArray(value), `${what} is not a record`);
return /** @type {Record<string, unknown>} */ (value);
};
const list = (value, what) => {
demand(value === undefined || value === null || Array.isArray(value), `${what} is not a list`);
return /** @type {unknown[]} */ (value || []);
};
const words = (value, what) => {
demand(typeof value === 'string' && value.trim() !== '' && value.length <= 500, `${what} is missing or is no text`);
return String(value).trim();
};
const maybeWords = (value, what) => (value === undefined || value === null ? null : words(value, what));
const dayOr = (value, what, usual) => {
if (value === undefined || value === null) return usual;
const day = readDay(value);
demand(day !== null, `${what}: “${String(value)}” is not a day`);
return Number(day);
};
const weight = (value, what) => {
if (value === undefined || value === null) return null;
const read = typeof value === 'string' ? readMass(value) : null;
demand(read !== null && read >= LIGHTEST && read <= HEAVIEST, `${what}: “${String(value)}” is not a body weight`);
return read;
};
const got = (value, what) => {
const read = typeof value === 'string' ? readGot(value) : null;
demand(read !== null, `${what}: “${String(value)}” is not a result`);
return /** @type {Got} */ (read);
};
const whole = (value, what) => {
if (value === undefined || value === null) return 0;
const number = Number(value);
demand(Number.isInteger(number) && number >= 0 && number <= 1000, `${what}: “${String(value)}” is no number in reserve`);
return number;
};
const check = (object, day) => {
const root = record(object, 'The file');
demand(String(root.results) === String(VERSION), `This page reads results of version ${VERSION}; the file says “${String(root.results)}”`);
const tested = list(root.tested, '“tested”').map((item, i) => {
const what = `Test ${i + 1}`, entry = record(item, what);
const sides = entry.got === undefined ? { left: text(got(entry.left, what)), right: text(got(entry.right, what)) } : { got: text(got(entry.got, what)) };
const own = entry.bodyweight === undefined ? {} : { bodyweight: (weight(entry.bodyweight, what), String(entry.bodyweight)) };
const reserve = whole(entry.in_reserve, what);
return { movement: words(entry.movement, `${what}: the movement`), ...sides, on: dayText(dayOr(entry.on, what, day)), ...(reserve ? { in_reserve: reserve } : {}), ...own };
});
const trained = list(root.trained, '“trained”').map((item, i) => {
const what = `Training ${i + 1}`, entry = record(item, what);
const did = list(entry.did, `${what}: “did”`).map((set) => {
demand(typeof set === 'number' ? Number.isFinite(set) && set >= 0 : typeof set === 'string' && set.length < 40, `${what}: a set is no number`);
return /** @type {number | string} */ (set);
});
const kept = { ...(entry.with === undefined ? {} : { with: words(entry.with, what) }), ...(entry.in_reserve === undefined ? {} : { in_reserve: whole(entry.in_reserve, what) }) };
return { movement: words(entry.movement, `${what}: the movement`), did, ...kept, on: dayText(dayOr(entry.on, what, day)) };
});
const paused = list(root.paused, '“paused”').map((item, i) => {
const what = `Pause ${i + 1}`, entry = record(item, what);
demand((entry.part === undefined) !== (entry.movement === undefined), `${what} names a part or a movement, one of them`);
const name = entry.part === undefined ? { movement: words(entry.movement, what) } : { part: words(entry.part, what) };
const until = entry.until === undefined || entry.until === null ? {} : { until: dayText(dayOr(entry.until, what, day)) };
const by = maybeWords(entry.by, what), because = maybeWords(entry.because, what);
return { ...name, on: dayText(dayOr(entry.on, what, day)), ...until, ...(by ? { by } : {}), ...(because ? { because } : {}) };
});
const name = maybeWords(root.name, 'The name');
weight(root.bodyweight, 'The file');
const have = root.have === undefined ? null : list(root.have, '“have”').map((item) => words(item, '“have”'));
return {
results: VERSION, ...(name ? { name } : {}), ...(root.bodyweight ? { bodyweight: String(root.bodyweight) } : {}), ...(have ? { have } : {}),
tested, trained, paused,
};
};
const readFile = (written, day) => {
demand(written.length <= LARGEST_FILE, 'The file is larger than 1 MB');
let object;
try {
object = JSON.parse(written);
} catch {
throw new Refused('The file is not JSON, or was cut off');
}
return check(object, day);
};
const person = (exported, model, day) => {
const out = { bodyWeight: exported.bodyweight ? readMass(exported.bodyweight) : null, tested: [], trained: [], pauses: [], have: exported.have || null };
const aside = [];
exported.tested.forEach((entry, i) => {
const sides = (entry.got === undefined ? [entry.left, entry.right] : [entry.got]).map((side) => /** @type {Got} */ (readGot(String(side))));
const movement = model.numbers.get(entry.movement);
const on = Number(readDay(entry.on));
const keep = (/** @type {string} */ why) => aside.push({ movement: entry.movement, got: sides.map(text).join(', '), on: entry.on, why });
if (movement === undefined) keep('this curriculum has no such movement');
else if (sides.some((side) => side.measure !== model.target(movement).measure)) keep('it measures another thing than the standard');
else if (on > day) keep('its day is still to come');
else out.tested.push({ movement, sides, on, reserve: entry.in_reserve || 0, bodyWeight: entry.bodyweight ? readMass(entry.bodyweight) : null, entry: i });
});
exported.trained.forEach((entry) => {
const movement = model.numbers.get(entry.movement);
const on = Number(readDay(entry.on));
if (movement === undefined || on > day) {
aside.push({ movement: entry.movement, got: entry.did.join(', '), on: entry.on, why: movement === undefined ? 'this curriculum has no such movement' : 'its day is still to come' });
return;
}
const { measure } = model.target(movement);
const did = entry.did.map((set) => readGot(/^[0-9.]+$/.test(String(set)) ? `${set} ${['reps', 's', 'cm', 'deg', 'reps'][measure]}` : String(set)));
const load = entry.with === undefined ? null : readGot(`1 rep with ${entry.with}`);
if (did.some((set) => set === null) || (entry.with !== undefined && !load)) return;
out.trained.push({ movement, did: did.map((set) => /** @type {Got} */ (set).amount), unit: load ? load.unit : 0, load: load ? load.load : 0, reserve: entry.in_reserve === undefined ? null : entry.in_reserve, on });
});
exported.paused.forEach((entry, i) => {
const movement = entry.movement === undefined ? null : model.numbers.get(entry.movement);
const part = entry.part === undefined ? null : model.tables.parts.indexOf(entry.part);
if (movement === undefined || part === -1) {
aside.push({ movement: String(entry.movement || entry.part), got: 'paused', on: entry.on, why: 'this curriculum has no such movement or part' });
return;
}
out.pauses.push({ movement, part, on: Number(readDay(entry.on)), until: entry.until ? Number(readDay(entry.until)) : null, by: entry.by || null, because: entry.because || null, entry: i });
});
return { person: out, aside };
};
globalThis.rungbook.results = { VERSION, LARGEST_FILE, Refused, check, readFile, person, readDay, dayText, today };
})();
