'use strict';
// The self-test page: the guided questions, and the full sheet with a place to enter each number.
(() => {
  const { results, readiness, placement, store, page, states, entry } = globalThis.rungbook;
  const { make, named, namedList, byId } = page;
  const { say, sayNodes } = globalThis.rungbook.words;
  const { model, mine } = states;
  if (!model) return;
  const { tables } = model;
  const skill = tables.skills.find(({ id }) => id === document.body.dataset.skill) || null;
  const sheet = byId('sheet');
  const articles = new Map([.../** @type {NodeListOf<HTMLElement>} */ (sheet.querySelectorAll('article[data-movement]'))]
    .map((article) => [model.numbers.get(article.dataset.movement || ''), article]));
  const nobody = () => readiness.assess(model, results.nobody(), results.today());
  const found = () => { const stand = mine(); return stand ? stand.found : nobody(); };

  // ---- what is kept, and where

  const keptPanel = byId('kept');
  const drawKept = () => {
    const trouble = store.trouble();
    const said = {
      '': say('test.storage'),
      full: say('test.storage_full'),
      forbidden: say('test.storage_forbidden'),
    }[trouble];
    keptPanel.hidden = false;
    keptPanel.classList.toggle('trouble', trouble !== '');
    keptPanel.replaceChildren(make('p', { text: said }), ...(store.isEmpty() ? [] : [make('p', { class: 'acts' }, copyButton(), ' ', make('a', { href: 'where-i-stand.html', text: say('test.where_i_stand') }))]));
  };
  const copyButton = () => make('button', { type: 'button', class: 'quiet', text: say('test.save_a_copy'), on: { click: () => {
    page.download(`results-${results.dayText(results.today())}.json`, `${JSON.stringify(store.all(), null, 2)}\n`, 'application/json');
  } } });

  // ---- before the first test

  const { barred } = states;
  const mayTest = (/** @type {number} */ m) => barred() === '' && isFit() && placement.mayBeTested(model, found(), m, results.today());
  /** Whether a movement rests because of what the health questions said. @param {number} m */
  const waits = (m) => found().pausedBy(m).some(({ kind }) => kind === 'light');
  const isFit = () => store.get('fit') === results.dayText(results.today());

  // ---- one test on the sheet

  /** What is known of a movement, and a way to say more. @param {number} m @param {{ key: string, entry: any }[]} known */
  const drawEntry = (m, known) => {
    const article = articles.get(m);
    const place = article && article.querySelector('.enter');
    if (!place) return;
    const lines = known.slice(-3).map(({ key, entry: of }) => make('p', { class: 'was' },
      ...sayNodes('test.was', { got: states.got(of.got || (of.left && of.right ? { left: of.left, right: of.right } : of.left || of.right)), day: states.day(of.on) }), ' ',
      make('button', { type: 'button', class: 'quiet', text: say('test.take_back'), on: { click: () => store.remove(key) } })));
    const open = make('button', { type: 'button', class: 'quiet', text: say('test.enter'), on: { click: () => {
      if (barred() === 'first' && store.keeps()) {
        byId('guided').scrollIntoView();
        byId('guided').focus();
        return;
      }
      place.replaceChildren(...advice(m, mayTest(m)), entry.form(m, { today: mayTest(m), kept: () => {}, hurt: () => {} }));
      const first = place.querySelector('input');
      if (first) first.focus();
    } } });
    place.replaceChildren(...lines, make('p', {}, open));
  };
  /** What to do now: a test today, or only the number from training. @param {number} m @param {boolean} today */
  const advice = (m, today) => {
    const { reached, needs } = found();
    if (today) return [make('p', { class: 'advice', text: say('test.test_now') })];
    const why = barred() ? (barred() === 'ask' ? say('test.ask_first') : say('test.health_first_why')) : waits(m) ? say('test.waits') : !reached[m] ? say('test.it_rests') : needs[m] !== readiness.TRUE ? say('test.not_shown') : !isFit() ? say('test.not_testing') : say('test.day_is_full');
    return [make('p', { class: 'advice do-not', text: say('test.do_not', { why }) })];
  };
  const drawEntries = () => {
    /** @type {Map<number | undefined, { key: string, entry: any }[]>} */
    const known = new Map();
    for (const of of store.entries('tested')) {
      const m = model.numbers.get(of.entry.movement);
      const list = known.get(m);
      if (list) list.push(of);
      else known.set(m, [of]);
    }
    for (const m of articles.keys()) if (m !== undefined && !guide.isAt(m)) drawEntry(m, known.get(m) || []);
  };

  // ---- the guided test

  const guide = (() => {
    const panel = byId('guided');
    /** Movements asked and left open in this run, and what each step kept. @type {{ m: number, key: string | null }[]} */
    let steps = [];
    let current = -1;
    let isOn = false;
    const asked = () => steps.map(({ m }) => m);
    const isAt = (/** @type {number} */ m) => isOn && current === m;
    const button = (/** @type {string} */ text, /** @type {() => void} */ act, quiet = true) => make('button', { type: 'button', class: quiet ? 'quiet' : null, text, on: { click: act } });

    const show = (/** @type {number} */ m) => {
      current = m;
      document.body.classList.toggle('one-question', m >= 0);
      for (const [of, article] of articles) article.hidden = m >= 0 && of !== m;
      for (const group of /** @type {NodeListOf<HTMLElement>} */ (sheet.querySelectorAll('section.sheet'))) {
        group.hidden = m >= 0 && !group.contains(articles.get(m) || null);
      }
    };
    const speak = (/** @type {string} */ title, /** @type {(Node | null)[]} */ ...inside) => {
      panel.hidden = false;
      panel.replaceChildren(make('h2', { id: 'guided-head', tabindex: -1, text: title }), ...inside.filter((part) => part !== null).map((part) => /** @type {Node} */ (part)));
    };
    const focus = () => byId('guided-head').focus();

    const stop = () => {
      isOn = false;
      show(-1);
      begin();
      drawEntries();
      focus();
    };
    const step = (/** @type {number} */ m, /** @type {string | null} */ key) => {
      steps.push({ m, key });
      next();
    };
    const back = () => {
      const last = steps.pop();
      if (!last) return stop();
      if (last.key) store.remove(last.key);
      return question(last.m);
    };
    const question = (/** @type {number} */ m) => {
      const today = mayTest(m);
      show(m);
      drawEntries();
      const article = articles.get(m);
      const place = article && article.querySelector('.enter');
      const left = skill ? placement.next(model, found(), skill.members, asked(), results.today()) : null;
      const last = steps.length ? articles.get(steps[steps.length - 1].m) : null;
      const rest = today && last && steps[steps.length - 1].key && last.dataset.rest ? make('p', { text: say('test.rest_first', { rest: last.dataset.rest || '' }) }) : null;
      speak(say('test.question', { number: steps.length + 1 }), rest, make('p', {}, ...(left ? sayNodes('test.in_doubt', { movement: named(tables, m), n: left.left }) : [named(tables, m)])), ...advice(m, today),
        make('p', { class: 'acts' }, button(say('test.not_sure'), () => step(m, null)), ' ', button(say('test.back'), back), ' ', button(say('test.another_day'), stop)));
      if (place) place.replaceChildren(entry.form(m, { today, kept: (key) => step(m, key), hurt: () => step(m, null) }));
      else panel.append(entry.form(m, { today, kept: (key) => step(m, key), hurt: () => step(m, null) }));
      focus();
    };
    const next = () => {
      if (!skill) return;
      const following = placement.next(model, found(), skill.members, asked(), results.today());
      if (following) {
        question(following.movement);
        return;
      }
      const at = found();
      const open = skill.members.filter((m) => at.states[m] === readiness.OPEN);
      const yours = skill.members.filter((m) => at.states[m] === readiness.OWNED);
      isOn = false;
      show(-1);
      const answered = steps.filter(({ key }) => key).length;
      speak(say('test.all_for_now'), make('p', { text: say('test.answered', { answered, all: steps.length, n: skill.members.length }) }),
        make('p', {}, yours.length ? `${say('test.yours')} ` : say('test.nothing_yours'), ...namedList(tables, yours)),
        barred() ? null : make('p', {}, open.length ? `${say('test.open_to_you')} ` : say('test.nothing_open'), ...namedList(tables, open)),
        make('p', { class: 'acts' }, make('a', { class: 'act', href: 'where-i-stand.html', text: say('test.where_i_stand') }), ' ', copyButton(), ' ', button(say('test.ask_again'), start)));
      steps = [];
      drawEntries();
      focus();
    };
    const start = () => {
      isOn = true;
      steps = [];
      next();
    };
    /** The way in: health questions first, then today's check, then the questions. */
    const begin = () => {
      if (isOn) return;
      const why = barred();
      // Where nothing can be kept, what the questions said cannot come along from page to page: no test, only numbers from training.
      const lost = why === 'first' && !store.keeps();
      if (why === 'first' && !lost) {
        speak(say('test.before_first'), make('p', { text: say('test.health_first') }),
          make('p', {}, make('a', { class: 'act', href: `before-you-start.html#questions`, text: say('test.before_you_start') })));
        return;
      }
      // Who is to ask first is shown no test, and asked for no number.
      if (why === 'ask') {
        speak(say('test.health_questions'), make('p', { text: say('test.health_answered') }), make('p', { class: 'advice do-not' }, `${say('test.answers_say')} `, make('a', { href: 'before-you-start.html#health', text: say('test.before_you_start') })));
        return;
      }
      const warning = lost ? make('p', { class: 'advice do-not', text: say('test.not_kept') }) : null;
      if (!skill) {
        // As tall as what stands here before they are answered: the page keeps that room while it loads.
        speak(say('test.health_questions'), ...(warning ? [warning] : [make('p', { text: say('test.health_answered') }),
          make('p', {}, make('a', { class: 'act quiet', href: 'before-you-start.html#questions', text: say('test.before_you_start') }))]));
        return;
      }
      if (why === '' && !isFit()) {
        speak(say('test.today'), make('p', { text: say('test.not_today') }), make('ul', {}, ...[say('test.ill'), say('test.hurts'), say('test.drank'), say('test.trained_hard')].map((text) => make('li', { text }))),
          make('p', { class: 'acts' }, button(say('test.ready'), () => { store.set('fit', results.dayText(results.today())); start(); }, false), ' ', button(say('test.only_numbers'), start)));
        return;
      }
      speak(say('test.few_questions'), warning, make('p', { text: say('test.each_asks', { n: skill.members.length }) }),
        make('p', { class: 'acts' }, button(say('test.begin'), start, false)));
    };
    return { begin, isAt };
  })();

  store.onChange(() => {
    drawKept();
    guide.begin();
    drawEntries();
  });
  drawKept();
  guide.begin();
  drawEntries();
  const print = document.getElementById('print');
  if (print) {
    print.hidden = false;
    print.addEventListener('click', () => globalThis.print());
  }
})();
