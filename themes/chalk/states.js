'use strict';
// What the results on this device make of the curriculum, and the marks of the states: told by shape and word.
(() => {
  const { readiness, held, results, store, page } = globalThis.rungbook;
  const { make, units } = page;
  const { say, sayNodes } = globalThis.rungbook.words;
  const { targets } = globalThis.rungbook;

  const tables = globalThis.rungbookTables;
  // A publish between a page and its scripts may give it the tables of another version: then nothing is worked out from them.
  const named = /** @type {HTMLScriptElement | null} */ (document.querySelector('script[src*="data/tables.js"]'));
  const version = /[?&]v=([0-9a-f]+)/.exec(named ? named.src : '');
  const isMixed = tables !== undefined && version !== null && tables.version !== version[1];
  if (isMixed) {
    page.byId('main').prepend(make('div', { class: 'advice do-not', role: 'alert', id: 'mixed' }, make('p', { text: say('site.mixed') }),
      make('p', {}, make('button', { type: 'button', text: say('site.load_again'), on: { click: () => location.reload() } }))));
  }

  /** The tables, ready; null on a page that could not load them, or got those of another version. */
  const model = tables && !isMixed ? readiness.prepare(tables) : null;

  /** @type {{ key: string, value: ReturnType<typeof current> } | null} */
  let kept = null;
  /** @param {Model} ready @param {number} day @param {Exported} exported */
  const current = (ready, day, exported) => {
    const { person, aside } = results.person(exported, ready, day);
    return { person, aside, exported, day, found: readiness.assess(ready, person, day) };
  };
  /** Where this device's person stands today, whatever is kept; only with the tables. @returns {Stand} */
  const standing = () => {
    const day = results.today(), exported = store.all();
    if (kept && kept.value.day === day && kept.value.exported === exported) return kept.value;
    const key = `${day}:${JSON.stringify(exported)}`;
    if (!kept || kept.key !== key) kept = { key, value: current(/** @type {Model} */ (model), day, exported) };
    else kept.value.exported = exported;
    return kept.value;
  };
  /** The same; null before the first result and the choice of a goal. @returns {Stand | null} */
  const mine = () => (!model || (store.isEmpty() && !store.facts().goal) ? null : standing());
  /** The stand that was worked out last, without another look at what is kept; else today's. @returns {Stand | null} */
  const latest = () => (kept ? kept.value : mine());
  /** That, and that of whoever has no number yet but is to leave something alone. @returns {Stand | null} */
  const heeding = () => mine() || (model && (store.entries('restrict').length || health() === 'light') ? standing() : null);

  /** A state for readers; who is to ask first is invited to neither training nor testing. @param {number} state */
  const stateWord = (state) => (health() === 'ask' && (state === readiness.OPEN || state === readiness.TEST_FIRST) ? say(isChild() ? 'state.with_coach' : 'state.ask_first') : say(`state.${readiness.STATES[state].replace(' ', '_')}`));

  /** So many movements are named as what comes first. */
  const MOST_FIRST = 3;
  const nodesOf = (/** @type {PagePart[]} */ parts) => parts.map((part) => /** @type {Node | string} */ (part || ''));
  /** A target or a result for readers; where the other units say it otherwise, in both. @param {Got} got @param {boolean} [eachSide] */
  const shown = (got, eachSide = false) => {
    const own = targets.words(got, units.ofSchool, eachSide), other = targets.words(got, units.ofOther, eachSide);
    return make('bdi', { text: own, 'data-other': own === other ? null : other });
  };
  /** The target of a demand. @param {number} leaf */
  const target = (leaf) => {
    const ready = /** @type {Model} */ (model);
    return shown(ready.target(leaf), ready.tables.targets[ready.tables.leaves[2 * leaf + 1]][9] === 1);
  };
  /** A result as it is kept: one side, or both. @param {string | { left: string, right: string }} kept @returns {(Node | string | null)[]} */
  const got = (kept) => {
    const sides = typeof kept === 'string' ? /^left (.*), right (.*)$/.exec(kept) : ['', kept.left, kept.right];
    const one = (/** @type {string} */ text) => { const read = targets.readGot(text); return read ? shown(read) : text; };
    return sides ? globalThis.rungbook.words.sayNodes('stand.both_sides', { left: one(sides[1]), right: one(sides[2]) }) : [one(String(kept))];
  };
  /** What was set aside: a result, or what kind of entry it is. @param {string} got */
  const asideGot = (got) => (['paused', 'restrict', 'cleared', 'pain', 'remark'].includes(got) ? say(`aside.${got}`) : globalThis.rungbook.states.got(got));
  /** A body part for readers. @param {string} part */
  const partWord = (part) => say(`body.${part.replace('-', '_')}`);
  /** A day as an element. @param {string} text as it is kept */
  const day = (text) => make('time', { datetime: text, text: results.readDay(text) === null ? text : results.dayWords(Number(results.readDay(text))) });

  /** @param {number} count */
  const dayOf = (count) => day(results.dayText(count));
  /** When a result was got, as it was said: a day, or a span. @param {{ on: number, until: number | null }} of */
  const when = ({ on, until }) => (until === null ? dayOf(on) : page.make('span', { text: results.spanWords(on, until) }));

  // ---- what the health questions say, and what is left alone

  /** What they say today: none where they are not answered, or were answered more than a year ago. @returns {'none' | 'clear' | 'light' | 'ask'} */
  const health = () => {
    const { screened, born } = store.facts(), today = results.today();
    const on = screened ? Number(results.readDay(screened.on)) : 0;
    const says = globalThis.rungbook.health.saysOn(screened ? { says: screened.says, on, until: screened.until ? Number(results.readDay(screened.until)) : null, lasts: screened.lasts } : null, today, born);
    return says === 'ask' ? 'ask' : says === null || today > on + globalThis.rungbook.health.LIMITS.clearance ? 'none' : says === 'light' ? 'light' : 'clear';
  };
  /** Whether this device's person is too young for a page: what is said then speaks of a coach, of no clinician. */
  const isChild = () => document.documentElement.dataset.age === 'child';
  /** Why nothing may be tested or trained; empty when it may. @returns {'' | 'first' | 'ask'} */
  const barred = () => { const says = health(); return says === 'none' ? 'first' : says === 'ask' ? 'ask' : ''; };

  /** @param {string} by */
  const who = (by) => (['client', 'coach', 'screening'].includes(by) ? say(`rests.by_${by}`) : by);
  /** Own words for what the pages themselves write: an entry is for every reader of the file. @type {Record<string, string>} */
  const BECAUSE = { 'it hurt in a test': say('rests.hurt_in_test'), 'it hurt in training': say('rests.hurt_in_training'), 'it hurts': say('rests.hurts') };
  /** Whether two causes differ only in what rests. @param {Pause} a @param {Pause} b */
  const alike = (a, b) => (a.kind === 'paused' || a.kind === 'restrict') && a.kind === b.kind && a.on === b.on && a.until === b.until && a.by === b.by && a.because === b.because;
  /** Causes that differ only in what rests, together. @param {Pause[]} all @returns {Pause[][]} */
  const together = (all) => {
    /** @type {Pause[][]} */
    const out = [];
    for (const cause of all) {
      const same = out.find(([first]) => alike(first, cause));
      if (same) same.push(cause);
      else out.push([cause]);
    }
    return out;
  };
  /** What a stand is asked of what holds back, once. @type {WeakMap<Stand, Heeded>} */
  const heeds = new WeakMap();
  /** @param {Stand} stand @returns {Heeded} */
  const heedOf = (stand) => {
    const known = heeds.get(stand) || held.begin(/** @type {Model} */ (model), stand.person, stand.found, stand.day);
    heeds.set(stand, known);
    return known;
  };
  /** The newest pain of each part that is not low: nothing is proposed that bears on these parts. @param {Stand} stand @returns {Pain[]} */
  const sore = (stand) => held.sorePains(heedOf(stand));
  /** Whether a movement bears on a part that is sore. @param {Stand} stand @param {number} m */
  const bearsOnSore = (stand, m) => sore(stand).some(({ part }) => held.stresses(heedOf(stand), m, part));
  /** Whether a movement is held back by what rests, hurts or hurt lately, or by the age: no news names it, and no number of it is praised. @param {Stand} stand @param {number} m */
  const isHeld = (stand, m) => { const by = held.heldBy(heedOf(stand), m); return by !== null && by !== 'closed'; };
  /** Whether something began to hurt today: nothing is tested, until less is said of it, or its pause is lifted. */
  const hurtsToday = () => {
    const stand = mine();
    return stand !== null && (sore(stand).some(({ on }) => on === stand.day)
      || stand.found.causes.some(({ kind, on, by, because }) => kind === 'paused' && on === stand.day && by === 'client' && /^it hurt/.test(because || '')));
  };
  /** How a number of a movement is asked for: of `today`, tried now; or only one that was there before (`told`): of what must be shown first,
   * of light training, and of what hurt or rested lately. Not at all before the adults' word, while it rests, is left alone, bears on what hurts
   * or waits for the age, nor on a day on which something began to hurt. @param {number} m @returns {'today' | 'told' | ''} */
  const asks = (m) => {
    if (!model || store.adults.isDue() || hurtsToday()) return '';
    const stand = standing(), by = held.heldBy(heedOf(stand), m), causes = stand.found.pausedBy(m);
    if (by === 'rests') return causes.length && causes.every(({ kind }) => kind === 'light') ? 'told' : '';
    return by === null ? 'today' : by === 'sore' || by === 'age' ? '' : 'told';
  };
  /** @param {number} m */
  const mayAsk = (m) => asks(m) !== '';
  /** The movements of which it was said today that they were never tried. @returns {string[]} */
  const neverTried = () => { const kept = store.get('never'); return kept && kept.on === results.dayText(results.today()) && Array.isArray(kept.movements) ? kept.movements.map(String) : []; };
  /** The sore parts that do not rest, with what to do about each; of a movement those that it bears on. @param {Stand} stand @param {number} [m] */
  const soreLines = (stand, m) => sore(stand).filter(({ part, entry }) => (m === undefined || ((/** @type {Model} */ (model).tables.stresses[m] >> part) & 1) === 1) && !stand.found.causes.some((cause) => cause.kind === 'pain' && cause.entry === entry))
    .map(({ part, score, on }) => make('li', {}, ...sayNodes('rests.sore', { part: partWord(/** @type {Model} */ (model).tables.parts[part]), score, day: dayOf(on) }).map((piece) => /** @type {Node | string} */ (piece)), ' ',
      make('a', { href: 'if-it-hurts.html#pain', text: say('rests.sore_better') })));

  /** What rests, in words. @param {Pause[]} all causes that are alike @returns {(Node | string)[]} */
  const whatRests = (all) => {
    const { tables } = /** @type {Model} */ (model);
    const word = (/** @type {string[]} */ list, /** @type {number | null} */ i) => list[Number(i)];
    const single = all.filter(({ cls }) => cls === null).map(({ movement, part, pattern }) => (movement !== null ? page.named(tables, movement) : part !== null ? partWord(word(tables.parts, part)) : say(`pattern.${word(tables.patterns, pattern).replace(/ /g, '_')}`)));
    const classes = all.flatMap(({ cls }) => (cls === null ? [] : [tables.class_names[cls]]));
    return /** @type {(Node | string)[]} */ ([...single, ...(classes.length ? [sayNodes('rests.classes', { list: classes.join(say('list.separator')) })] : [])].flatMap((one, i) => [...(i ? [say('list.separator')] : []), ...[one].flat()]));
  };
  /** What some nodes say, without what only screen readers are told. @param {PagePart[]} parts @returns {string} */
  const plain = (parts) => parts.map((part) => {
    if (part === null || typeof part === 'string') return part || '';
    const copy = /** @type {HTMLElement} */ (part.cloneNode(true));
    copy.querySelectorAll('.aside').forEach((aside) => aside.remove());
    copy.querySelectorAll('.mark-word').forEach((word) => { word.textContent = `[${word.textContent}]`; });
    return String(copy.textContent);
  }).join('');
  /** What is left alone, by whom, since and until when, and why; of causes that are alike said once. @param {Pause} cause @param {Pause[]} [all] @returns {(Node | string)[]} */
  const causeWords = (cause, all = [cause]) => {
    const since = dayOf(cause.on);
    if (cause.kind === 'light') return /** @type {(Node | string)[]} */ (sayNodes('rests.light', { day: since }));
    const what = whatRests(all);
    if (cause.kind === 'pain') return /** @type {(Node | string)[]} */ (sayNodes('rests.pain', { what, day: since }));
    let out = cause.kind === 'restrict' ? sayNodes('rests.left_alone', { what, day: since }) : sayNodes('rests.paused', { what, day: since });
    if (cause.kind === 'paused' && cause.until === cause.on) out = sayNodes('rests.over_for_today', { what });
    else if (cause.by) out = sayNodes('rests.by', { pause: out, who: who(cause.by) });
    if (cause.until !== null && cause.until !== cause.on) out = sayNodes('rests.until', { pause: out, day: dayOf(cause.until) });
    if (cause.because) out = sayNodes('rests.because', { pause: out, because: BECAUSE[cause.because] || cause.because });
    return /** @type {(Node | string)[]} */ (out);
  };
  /** Why a movement is not tried today, each a sentence, in the words of Today. @param {number} m @returns {(Node | string)[][]} */
  const whyHeld = (m) => {
    const stand = standing(), { found } = stand, c = heedOf(stand), bare = { movement: null, part: null, cls: null, pattern: null };
    switch (held.heldBy(c, m)) {
      case 'rests': {
        const own = found.pausedBy(m), nerve = held.pulledNerve(c, m);
        return (own.length ? own : found.causes.filter(({ kind, part }) => kind === 'pain' && part === nerve)).map((cause) => causeWords(cause));
      }
      case 'sore': return soreLines(stand, m).map((line) => [...line.childNodes]);
      case 'age': return [[say('training.sixes')]];
      case 'lately': {
        // Of a part that hurt and then rested the later day holds.
        const last = new Map(held.lately(c, m, c.day).sort((a, b) => a.until - b.until).map((of) => [JSON.stringify(of.what), of]));
        return [...last.values()].map(({ what, until }) => nodesOf(sayNodes('training.lately', { what: whatRests([/** @type {Pause} */ (/** @type {unknown} */ ({ ...bare, ...what }))]), day: dayOf(until) })));
      }
      case 'closed': {
        const first = [...new Set(found.first(m).steps.map(({ movement }) => movement))].slice(0, MOST_FIRST);
        return [first.length ? nodesOf(sayNodes('number.closed', { list: page.namedList(c.tables, first) })) : [say('test.do_not', { why: say('test.not_shown') })]];
      }
      default: return [];
    }
  };
  /** The first day of what settles of a movement: a number from then on says what is not to be done, none is taken. @param {number} m @returns {number | null} */
  const since = (m) => { const all = held.lately(heedOf(standing()), m, standing().day).map(({ from }) => from); return all.length ? Math.min(...all) : null; };
  /** The same as it stands beside a field. @param {number} m */
  const hints = (m) => {
    const rests = held.heldBy(heedOf(standing()), m) === 'rests' ? [say('rests.this_rests'), ' '] : [];
    return whyHeld(m).map((why) => page.make('p', { class: 'hint' }, ...rests, ...why));
  };
  /** Until what a pain lets its part rest. @param {number} entry */
  const untilOf = (entry) => {
    const stand = mine(), pain = stand && stand.person.pains.find((one) => one.entry === entry);
    return stand && pain ? say('rests.lift_pain', { until: readiness.untilWords(pain, readiness.goesOnTo(/** @type {Model} */ (model), stand.person, pain.part, stand.day)) }) : '';
  };
  /** How what has no button of its own is lifted. @param {Pause} cause */
  const liftedBy = ({ kind, by, entry }) => (kind === 'pain' ? untilOf(entry) : kind === 'light' ? say('rests.lift_light') : by === 'screening' ? say('rests.lift_screening') : null);

  /** @param {number} state @param {boolean} [counted] @param {boolean} [askFirst] whether whose state it is was told to ask a clinician first */
  const mark = (state, counted, askFirst = health() === 'ask') => {
    const word = readiness.STATES[state];
    // Who is to ask first is invited to neither training nor testing.
    const asks = askFirst && (state === readiness.OPEN || state === readiness.TEST_FIRST);
    const own = asks ? say(isChild() ? 'state.with_coach' : 'state.ask_first') : say(`state.${word.replace(' ', '_')}`);
    const text = counted && !asks ? say('stand.counted', { state: own }) : own;
    return make('span', { class: `state state-${asks ? 'paused' : word.replace(' ', '-')}`, 'data-state': asks ? 'ask first' : word },
      make('span', { class: 'state-shape', 'aria-hidden': 'true' }), make('span', { text }));
  };

  /** On a movement's own page: that it rests, why, and where that is lifted. */
  const drawRest = () => {
    const here = document.querySelector('main[data-movement]'), place = document.getElementById('rests-here');
    const m = model && here ? model.numbers.get(/** @type {HTMLElement} */ (here).dataset.movement || '') : undefined;
    if (!place || m === undefined) return;
    const stand = heeding(), by = stand ? held.heldBy(heedOf(stand), m) : null, rests = by === 'rests';
    place.hidden = !rests && by !== 'sore';
    if (!stand || place.hidden) return;
    const lines = whyHeld(m).map((line) => make('li', {}, ...line));
    place.replaceChildren(...(rests ? [make('p', { text: say('rests.this_rests') }), make('ul', { class: 'plain' }, ...lines),
      make('p', {}, make('a', { href: 'where-i-stand.html#rests', text: say('rests.where_lifted') }))] : [make('ul', { class: 'plain' }, ...lines)]));
  };

  /** Under 16, before the adults' word: that it comes first, and where it is said. */
  const adultsFirst = () => make('p', { class: 'advice do-not' }, say('screening.young'), ' ', make('a', { href: 'today.html', text: say('adult.to_ticks') }));
  /** On a movement's own page: a number of it. What that takes is loaded once it is asked for. */
  const number = () => {
    const here = document.querySelector('main[data-movement]'), place = document.getElementById('number-here'), form = document.getElementById('number-form');
    const m = model && here ? model.numbers.get(/** @type {HTMLElement} */ (here).dataset.movement || '') : undefined;
    if (!place || !form || m === undefined) return;
    const tell = (/** @type {{ key: string, news: (Node | string)[] }} */ { key, news }) => {
      const says = page.byId('number-news');
      says.replaceChildren(...news, ' ', make('button', { type: 'button', class: 'quiet', text: say('stand.take_back'), on: { click: () => {
        store.remove(key);
        says.textContent = say('number.taken_back');
        says.focus();
      } } }));
      says.focus();
    };
    const open = async () => {
      // Who had nothing here was shown the button before it was known who it is.
      if (!mayAsk(m)) return;
      await page.load('number-here');
      const { number: of, entry } = globalThis.rungbook;
      const ask = () => {
        const stand = mine();
        const told = asks(m) === 'told', kept = (/** @type {string} */ key) => page.later([() => { tell({ key, news: of.news(m, stand, key) }); ask(); }], 'number-form');
        const field = of.isPlain(m) ? of.line(m, (news) => { tell(news); ask(); }, true) : make('div', {}, ...(told ? hints(m) : []), entry.form(m, { today: false, told, kept, hurt: () => { form.replaceChildren(); } }));
        form.replaceChildren(...(field ? [field] : []));
        return field;
      };
      const field = ask(), first = field && field.querySelector(asks(m) === 'told' ? 'select' : 'input, a');
      if (first instanceof HTMLElement) first.focus();
    };
    const button = form.querySelector('button');
    if (!button) return;
    button.addEventListener('click', () => { open().catch(() => { page.byId('number-news').textContent = say('number.not_loaded'); }); });
    // What stands here before the field is asked for, or instead of it.
    let was = 'today';
    const draw = () => {
      const how = asks(m), now = store.adults.isDue() ? 'due' : held.waitsForAge(heedOf(standing()), m) ? 'age' : how;
      place.hidden = !now;
      if (now === was) return;
      was = now;
      button.textContent = say(how === 'told' ? 'number.told' : 'number.enter');
      form.replaceChildren(...(now === 'due' ? [adultsFirst()] : now === 'age' ? hints(m) : how === 'told' ? [...hints(m), button] : [button]));
    };
    store.onChange(draw);
    draw();
  };

  const drawSlots = () => {
    const slots = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-state-of]'));
    const stand = !slots.length || store.isEmpty() ? null : mine();
    for (const slot of slots) {
      const m = model ? model.numbers.get(slot.dataset.stateOf || '') : undefined;
      slot.replaceChildren(...(stand && m !== undefined ? [mark(stand.found.states[m], stand.found.counted[m] === 1)] : []));
      slot.hidden = !stand;
    }
  };
  const draw = () => {
    drawRest();
    globalThis.rungbook.health.draw();
  };

  /** The pages of the goal's chain, kept for when there is no network. */
  const keepChain = () => {
    const { goal } = store.facts();
    const skill = model && goal ? model.tables.skills.find(({ id }) => id === goal) : undefined;
    if (!model || !goal || (!skill && !model.numbers.has(goal))) return;
    page.keepPages([`${goal}.html`, ...(skill ? [`self-test-${goal}.html`, ...skill.members.map((m) => `${model.tables.ids[m]}.html`)] : [])], true).catch(() => {});
  };
  /** The goal whose pages were asked for. */
  let followed = '';
  const follow = () => {
    const { goal } = store.facts();
    if (!goal || goal === followed) return;
    followed = goal;
    keepChain();
  };

  /** A movement's small figure, which has no text of its own: the name stands beside it. Nothing where none is drawn.
   * @param {number} m @param {number} [size] in pixels */
  const figure = (m, size = 48) => (model && model.is(m, readiness.DRAWN)
    ? page.make('img', { class: 'small-figure', alt: '', width: size, height: size, loading: 'lazy', decoding: 'async', src: `figures/${model.tables.ids[m]}.svg` }) : null);

  /** A choice of the goal is kept as soon as it is made. @param {HTMLSelectElement} select */
  const keepsGoal = (select) => select.addEventListener('change', () => {
    store.put('goal', select.value || null);
    const drawn = document.getElementById(select.id);
    if (drawn) drawn.focus();
  });

  globalThis.rungbook.states = { model, mine, latest, keepsGoal, figure, mark, stateWord, shown, target, got, partWord, day, dayOf, health, isChild, barred, causeWords, sore, bearsOnSore, soreLines, isHeld, whyHeld, hints, since, hurtsToday, asks, mayAsk, adultsFirst, neverTried, when, together, plain, whatRests, liftedBy, asideGot };
  store.onChange(() => { draw(); page.later([drawSlots, follow], 'main'); });
  drawSlots();
  draw();
  number();
  follow();
})();
