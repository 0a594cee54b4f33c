'use strict';
'after page.js results.js store.js';
// The scale of pain, 0 to 10: its row to touch, what follows from a number, and the pause that one lifts.
(() => {
  const { results, store, page } = globalThis.rungbook;
  const { LIMITS, goesOnTo, worstOfDay } = globalThis.rungbook.health;
  const { make } = page;
  const { say, number } = globalThis.rungbook.words;
  const NUMBERS = Array.from({ length: 11 }, (_, n) => n);
  /** From this number on a pain is felt in training. */
  const [FELT] = LIMITS.pain;
  /** @param {number} n */
  const wordOf = (n) => (n === 0 ? say('pain.none') : n === 10 ? say('pain.worst') : number(n));

  /** The numbers side by side, one of them to touch. @param {string} name */
  const row = (name) => {
    const boxes = NUMBERS.map((n) => /** @type {HTMLInputElement} */ (make('input', { type: 'radio', name, value: n, 'aria-label': wordOf(n) })));
    return {
      boxes, whole: make('fieldset', { id: name }, make('legend', { text: say('pain.how_much') }), make('div', { class: 'chips scale' }, ...boxes.map((box, n) => make('label', { class: 'chip' }, box, number(n))))),
      /** What was touched; null while nothing was. */
      value: () => { const chosen = boxes.find(({ checked }) => checked); return chosen ? Number(chosen.value) : null; },
    };
  };
  /** Whether a part hurt more earlier today: of one day the worst counts. @param {string} part @param {number} score */
  const hurtMore = (part, score) => store.entries('pain').some(({ entry }) => entry.part === part && entry.on === results.dayText(results.today()) && (entry.score > score || entry.signs));
  /** What follows from a pain of some parts today: they go on, they go on with less, or they rest. A number that was not said rests them.
   * @param {string[]} parts @param {number | null} score @param {string[]} signs @returns {'on' | 'light' | 'rests'} */
  const follows = (parts, score, signs) => {
    const { born } = store.facts(), age = results.ageOn(born === undefined ? null : born, results.today());
    if (score === null || signs.length) return 'rests';
    const on = results.dayText(results.today()), all = worstOfDay([...store.entries('pain').map(({ entry }) => entry), ...parts.map((part) => ({ part, on, score, signs }))]);
    const worst = all.filter((of) => of.on === on && parts.includes(of.part));
    if (worst.some((of) => of.signs.length || of.score > goesOnTo(of.part, age))) return 'rests';
    return score >= FELT || worst.some((of) => of.score >= FELT) ? 'light' : 'on';
  };
  /** Body parts for readers, in a row. @param {string[]} parts */
  const partsText = (parts) => parts.map((part) => say(`body.${part.replace('-', '_')}`)).join(say('list.separator'));
  /** What follows from a pain of some parts, in a sentence. @param {'on' | 'light' | 'rests'} what @param {string[]} parts */
  const saysOf = (what, parts) => (what === 'on' ? say('pain.fine') : say(what === 'light' ? 'pain.goes_on' : 'pain.rests_now', { parts: partsText(parts) }));
  /** Keeps how it was the morning after a pain. @param {string} key @param {any} entry @param {number} much @returns {string} what follows, in words */
  const morning = (key, entry, much) => {
    const worse = much > entry.score, rests = follows([entry.part], much, []) === 'rests';
    store.addAll([['pain', { ...entry, next_morning: much }],
      // What hurts so much the morning after is a pain of its own.
      ...(rests && worse ? [/** @type {[string, object]} */ (['pain', { part: entry.part, score: much, on: results.dayText(Number(results.readDay(entry.on)) + 1) }])] : [])]);
    store.remove(key);
    return rests ? saysOf('rests', [entry.part]) : worse ? say('pain.worse') : say('pain.kept');
  };
  /** The parts that a pause is about: its own, or those that were said to hurt on its day. @param {{ part?: string, on: string }} pause */
  const partsOf = ({ part, on }) => (part ? [part] : [...new Set(store.entries('pain').filter(({ entry }) => entry.on === on && (entry.score >= FELT || entry.signs)).map(({ entry }) => String(entry.part)))]);
  /** Lifts a pause once it is said how it is now: the number that is touched is kept, and lifts it where it lets the part go on.
   * @param {string} key the entry that pauses @param {string} what it is, in words @returns {Promise<string>} what became of it, in words; empty where nothing was said */
  const lift = async (key, what) => {
    const pause = [...store.entries('paused'), ...store.entries('restrict')].find((of) => of.key === key);
    if (!pause) return '';
    const answer = await page.ask(say('pain.now_ask', { what }), [make('p', { text: say('pain.now_says') }),
      make('div', { class: 'chips scale' }, ...NUMBERS.map((n) => make('button', { type: 'submit', value: n, class: 'quiet', 'aria-label': wordOf(n), text: number(n) })))], [['', say('entry.go_back')]]);
    if (answer === null) return '';
    const parts = partsOf(pause.entry), score = Number(answer), on = results.dayText(results.today());
    store.addAll(parts.map((part) => ['pain', { part, score, on }]));
    if (follows(parts, score, []) !== 'on') return say('pain.rests_on');
    store.remove(key);
    return say('pain.lifted');
  };

  globalThis.rungbook.scale = { row, wordOf, hurtMore, follows, partsText, saysOf, morning, lift, NUMBERS };
})();
