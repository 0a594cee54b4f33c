// What the page keeps and takes in, held in Node.js with a storage of known size: `node keep.js THEME WORDS`. Silent where all is well.
'use strict';
const assert = require('node:assert');
const fs = require('node:fs');
const path = require('node:path');
const vm = require('node:vm');
const [theme, words] = process.argv.slice(2);

/** A storage of so many characters, or one that refuses everything. */
const storageOf = (room) => {
  const kept = new Map();
  const size = () => [...kept].reduce((sum, [key, text]) => sum + key.length + text.length, 0);
  let used = 0, names = null;
  return {
    get length() { return kept.size; },
    key: (i) => {
      names ??= [...kept.keys()];
      return names[i] ?? null;
    },
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => {
      const more = key.length + text.length - (kept.has(key) ? key.length + kept.get(key).length : 0);
      if (used + more > room) throw new DOMException('full', 'QuotaExceededError');
      if (!kept.has(key)) names = null;
      kept.set(key, text);
      used += more;
    },
    removeItem: (key) => {
      kept.delete(key);
      names = null;
      used = size();
    },
    raw: kept,
  };
};

/** What a published script has in its first lines. */
const head = JSON.parse(fs.readFileSync(words, 'utf8'));
/** A page with its own scripts. */
const load = ({ storage = storageOf(5e6), hash = '', navigator = {} } = {}) => {
  let reloads = 0;
  const forbidden = storage === null;
  const context = vm.createContext({
    rungbookLanguage: 'en', rungbookWords: head.words, rungbookLimits: head.limits, DOMException, crypto: globalThis.crypto, Intl, Date, console, navigator,
    location: { hash, href: `https://test.example/x.html${hash}`, pathname: '/x.html', protocol: 'https:', host: 'test.example', reload: () => { reloads += 1; } },
    history: { replaceState: () => {} }, addEventListener: () => {},
  });
  const run = (name) => vm.runInContext(fs.readFileSync(path.join(theme, name), 'utf8'), context, { filename: name });
  run('page.js');
  context.document = { documentElement: { dataset: { site: 't' }, lang: 'en' }, addEventListener: () => {} };
  for (const name of ['localStorage', 'sessionStorage']) {
    Object.defineProperty(context, name, { get: () => {
      if (forbidden) throw new DOMException('no', 'SecurityError');
      return name === 'localStorage' ? storage : null;
    } });
  }
  ['health.js', 'targets.js', 'readiness.js', 'results.js', 'store.js'].forEach(run);
  return { ...context.rungbook, storage, reloads: () => reloads };
};
const plain = (value) => JSON.parse(JSON.stringify(value));
const tested = (n, of = () => 'squat') => Array.from({ length: n }, (_, i) => ({ movement: of(i), got: `${1 + (i % 90)} reps`, on: `2026-0${1 + (i % 9)}-${String(1 + (Math.floor(i / 9) % 28)).padStart(2, '0')}`, in_reserve: 1 + Math.floor(i / 252) }));
const copyOf = (list) => ({ results: 1, tested: list, trained: [], paused: [] });

// A key that stands twice, at any depth and however it is written, and a number with an exponent are refused.
{
  const { results } = load();
  const day = results.readDay('2026-11-28');
  const why = (text) => {
    try {
      results.readFile(text, day);
      return '';
    } catch (error) {
      return error.message;
    }
  };
  for (const text of ['{"results":1,"results":1}', '{"results":1,"tested":[{"movement":"a","movement":"b","got":"5 reps"}]}', '{"results":1,"name":"A","n\\u0061me":"B"}']) {
    assert.match(why(text), /twice/, text);
  }
  for (const number of ['1e3', '1E3', '5e0', '1.0e+1']) assert.match(why(`{"results":1,"trained":[{"movement":"a","did":[${number}]}]}`), /exponent/, number);
  assert.equal(why('{"results":1,"name":"1e3 {\\"results\\":1","tested":[{"movement":"a","got":"5 reps"},{"movement":"a","got":"6 reps"}]}'), '');
  assert.match(why('{"results":1,"sessions":[{"effort":"1e1","minutes":5}]}'), /effort/);
  assert.match(why('{"results":1,"cleared":[{"class":"inverted","on":"2026-11-02","until":"2026-11-01"}]}'), /before the first/);
}

// Whatever is kept, sound entries are there, the others are said, and what is handed on can be read.
{
  const { store, results, storage } = load();
  store.add('tested', { movement: 'squat', got: '5 reps', on: '2026-11-20' });
  const bad = { 'tested:a': '{"movement":5,"got":"5 reps","on":"2026-11-20"}', 'tested:b': 'not json', 'tested:c': '{"movement":"squat","got":"5 reps"}', 'pain:d': '{"part":"knee","score":99,"on":"2026-11-20"}', 'paused:e': '[]', about: '{"name":"Ada","bodyweight":"much","born":1e9}', screened: '{"says":"fine","on":"2026-11-20"}' };
  for (const [key, text] of Object.entries(bad)) storage.setItem(`rungbook:t:${key}`, text);
  const all = plain(store.all());
  assert.deepEqual(all, { results: 1, name: 'Ada', tested: [{ movement: 'squat', got: '5 reps', on: '2026-11-20' }], trained: [], paused: [] });
  results.check(all, results.today());
  assert.deepEqual(store.odd().map(({ key }) => key).sort(), ['about:bodyweight', 'about:born', 'paused:e', 'pain:d', 'screened', 'tested:a', 'tested:b', 'tested:c'].sort());
  assert.ok(store.odd().every(({ why }) => why !== ''));
}

// Equal entries of one day come along as often, and in their order, as they were kept.
{
  const day = '2026-11-20', pain = (score, signs) => ({ part: 'shoulder', score, on: day, ...(signs ? { signs } : {}) });
  const set = { movement: 'squat', did: [5, 5], on: day };
  const first = load();
  [pain(5), pain(2), pain(5)].forEach((of) => first.store.add('pain', of));
  [set, set].forEach((of) => first.store.add('trained', of));
  const copy = plain(first.store.all());
  const other = load(), taken = () => plain(other.store.merge(other.results.check(copy, other.results.today()), false));
  assert.deepEqual(taken(), { added: 5, same: 0, fits: true });
  assert.deepEqual(plain(other.store.all()), copy);
  assert.deepEqual(taken(), { added: 0, same: 5, fits: true });
  assert.deepEqual(plain(other.store.all()), copy, 'taken in again');
  other.store.replace(other.results.check(copy, other.results.today()));
  assert.deepEqual(plain(other.store.all()), copy);
  assert.deepEqual(plain(first.store.beside(copyOf([]))), { there: 0, here: 5, unlike: 0 });
}

// Of a part that hurt on one day on two devices every entry of both is kept, equal ones as often as on one side, whichever copy is taken
// in where; which of them counts is for who reads them.
for (const [here, there, both] of [
  [[[7]], [[1]], [[7], [1]]], [[[5], [2]], [[1]], [[5], [2], [1]]], [[[5], [2]], [[5]], [[5], [2]]], [[[5]], [[2], [5]], [[5], [2]]],
  [[[8, 'numb']], [[8, 'numb'], [1]], [[8, 'numb'], [1]]], [[], [[8, 'numb'], [1], [8, 'numb']], [[8, 'numb'], [1], [8, 'numb']]],
]) {
  const day = '2026-11-20', what = JSON.stringify([here, there]);
  const pain = ([score, ...signs]) => ({ part: 'shoulder', score, on: day, ...(signs.length ? { signs } : {}) });
  const at = load(), other = [{ part: 'knee', score: 1, on: day }, { part: 'shoulder', score: 10, on: '2026-11-19' }];
  here.forEach((of) => at.store.add('pain', pain(of)));
  const copy = at.results.check({ ...copyOf([]), pain: [...there.map(pain), ...other] }, at.results.today());
  at.store.merge(copy, false);
  const ofDay = plain(at.store.all()).pain.filter(({ part, on }) => part === 'shoulder' && on === day);
  assert.deepEqual(ofDay, both.map(pain), what);
  const kept = plain(at.store.all());
  assert.equal(at.store.merge(copy, false).added, 0, what);
  assert.deepEqual(plain(at.store.all()), kept, `${what} again`);
  assert.equal(kept.pain.filter(({ part }) => part === 'knee').length, 1);
}

// Storage that is full: a copy is taken in whole or not at all, and is said to be.
{
  const few = tested(277);
  const { store, results } = load({ storage: storageOf(60000) });
  assert.deepEqual(plain(store.merge(results.check(copyOf(few), results.today()), false)), { added: 277, same: 0, fits: true });
  store.put('screened', { says: 'ask', on: '2026-11-20' });
  const before = plain(store.all());
  const many = results.check(copyOf(tested(3000, (i) => `other-${i % 7}`)), results.today());
  for (const act of ['replace', 'merge']) {
    assert.deepEqual([store[act](many, false).fits, store[act](many, false).added], [false, 0], act);
    assert.deepEqual(plain(store.all()), before, act);
  }
  assert.equal(store.replace(results.check(copyOf(few.slice(0, 9)), results.today())).fits, true);
  assert.equal(store.all().tested.length, 9);
}

// Of two outcomes of the health questions the more careful one stands.
for (const [here, there, stands] of [['ask', 'clear', 'ask'], ['clear', 'light', 'light'], ['light', 'ask', 'ask'], ['', 'clear', 'clear']]) {
  const { store } = load();
  if (here) store.put('screened', { says: here, on: '2026-11-20' });
  store.merge({ ...copyOf([]), screened: { says: there, on: '2026-11-21' } }, false);
  assert.equal(store.facts().screened.says, stands, `${here} ${there}`);
}

// An address brings in what was entered on the visit, never a health outcome, a clearance or the check of the day.
{
  const carried = [['screened', '{"says":"clear","on":"2026-11-20"}'], ['about', '{"name":"Ada","screened":{"says":"clear","on":"2026-11-20"}}'], ['cleared:a', '{"class":"inverted","on":"2026-11-20"}'], ['fit', '"2026-11-28"'], ['tested:a', '{"movement":"squat","got":"5 reps","on":"2026-11-20"}']];
  const hash = `#visit=${encodeURIComponent(JSON.stringify(carried))}`;
  const { store } = load({ storage: null, hash });
  assert.deepEqual(plain(store.all()), { results: 1, name: 'Ada', tested: [{ movement: 'squat', got: '5 reps', on: '2026-11-20' }], trained: [], paused: [] });
  assert.equal(store.get('fit'), null);
  assert.equal(store.get('screened'), null);
  const kept = load({ hash }).store;
  assert.equal(kept.all().tested.length, 0, 'where something can be kept, nothing comes from an address');
}

// Growth: what the storage is asked and told grows as the entries do, whatever is there already.
{
  const asked = (count) => {
    const storage = storageOf(5e6), { store, results } = load({ storage });
    let calls = 0;
    for (const name of ['key', 'getItem', 'setItem', 'removeItem']) {
      const act = storage[name];
      storage[name] = (...of) => {
        calls += 1;
        return act(...of);
      };
    }
    const steps = [];
    const step = (act) => {
      const before = calls;
      act();
      steps.push(calls - before);
    };
    const large = results.check(copyOf(tested(count)), results.today());
    step(() => assert.equal(store.merge(large, false).added, count));
    step(() => assert.equal(store.merge(large, false).added, 0));
    step(() => store.beside(large));
    step(() => store.all());
    step(() => assert.equal(load({ storage }).store.all().tested.length, count));
    return steps;
  };
  const few = asked(1700), many = asked(17000);
  assert.ok(few.some((calls) => calls > 0), String(few));
  many.forEach((calls, i) => assert.ok(calls <= few[i] * 10 + 10, `${few} of 1,700, ${many} of 17,000 entries`));
  console.log(`1,700 entries: ${few}; 17,000: ${many} calls of the storage (taken in, again, beside, read, read on another page)`);
}

// A name is the person's own: it is in every copy, and another's copy does not take its place.
{
  const { store, results } = load();
  assert.equal(store.all().name, undefined);
  store.put('name', 'Ada');
  assert.equal(plain(store.all()).name, 'Ada');
  store.merge(results.check({ ...copyOf(tested(2)), name: 'Ben' }, results.today()), false);
  assert.deepEqual([store.facts().name, store.all().tested.length], ['Ada', 2]);
  assert.equal(results.readFile(JSON.stringify(store.all()), results.today()).name, 'Ada');
  store.put('name', null);
  assert.equal(store.all().name, undefined);
}

// Two people on one device: each has a name and numbers of their own, whoever adds, exports, takes in or erases.
{
  const ada = load(), { storage } = ada;
  ada.store.put('name', 'Ada');
  ada.store.put('screened', { says: 'ask', on: '2026-11-20' });
  ada.store.add('tested', { movement: 'squat', got: '5 reps', on: '2026-11-20' });
  const hers = plain(ada.store.all());
  assert.deepEqual(plain(ada.store.people()), [{ who: '', name: 'Ada', isHere: true }]);
  ada.store.welcome('Ben');
  assert.equal(ada.reloads(), 1, 'the page is read anew');
  const ben = load({ storage });
  assert.deepEqual(plain(ben.store.people()), [{ who: '', name: 'Ada', isHere: false }, { who: '1', name: 'Ben', isHere: true }]);
  assert.deepEqual(plain(ben.store.all()), { results: 1, name: 'Ben', tested: [], trained: [], paused: [] });
  assert.equal(ben.store.facts().screened, undefined, 'what another answered is not his');
  ben.store.merge(ben.results.check(copyOf(tested(3)), ben.results.today()), false);
  ben.store.add('pain', { part: 'knee', score: 4, on: '2026-11-20' });
  const his = plain(ben.store.all());
  assert.deepEqual([his.tested.length, his.pain.length], [3, 1]);
  ben.store.welcome('Cy');
  const cy = load({ storage });
  assert.deepEqual(plain(cy.store.people()).map(({ who, name, isHere }) => [who, name, isHere]), [['', 'Ada', false], ['1', 'Ben', false], ['2', 'Cy', true]]);
  cy.store.become('');
  const again = load({ storage });
  assert.deepEqual(plain(again.store.all()), hers, 'hers are as they were');
  assert.deepEqual(plain(again.store.odd()), []);
  again.store.erase();
  assert.equal(again.store.isEmpty(), true);
  again.store.become('1');
  const left = load({ storage });
  assert.deepEqual(plain(left.store.all()), his, 'erasing takes one person away alone');
  left.store.replace(left.results.check(copyOf([]), left.results.today()));
  left.store.become('2');
  assert.equal(load({ storage }).store.facts().name, 'Cy');
}

// With the first number of one's own, and then never again, the browser is asked to keep it for good; a refusal loses nothing.
for (const persist of [async () => true, async () => { throw new Error('no'); }]) {
  let asked = 0;
  const navigator = { storage: { persist: () => { asked += 1; return persist(); } } }, first = load({ navigator }), { storage } = first;
  first.store.put('name', 'Ada');
  first.store.add('paused', { part: 'knee', on: '2026-11-20' });
  assert.equal(asked, 0, 'nothing of worth is kept yet');
  first.store.add('tested', { movement: 'squat', got: '5 reps', on: '2026-11-20' });
  assert.equal(asked, 1);
  first.store.add('trained', { movement: 'squat', did: [5], on: '2026-11-20' });
  load({ storage, navigator }).store.add('tested', { movement: 'squat', got: '6 reps', on: '2026-11-21' });
  assert.equal(asked, 1, 'nobody is asked twice');
  assert.deepEqual(plain(load({ storage }).store.odd()), [], 'that it was asked is no entry');
}
load().store.add('tested', { movement: 'squat', got: '5 reps', on: '2026-11-20' });

// The day is that of the device, east and west of Greenwich.
for (const zone of ['Pacific/Kiritimati', 'Pacific/Niue', 'UTC', 'America/St_Johns']) {
  process.env.TZ = zone;
  const { results } = load();
  const local = new Intl.DateTimeFormat('en-CA', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(new Date());
  assert.equal(results.dayText(results.today()), local, zone);
}
