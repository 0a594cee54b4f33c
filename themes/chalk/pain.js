'use strict';
// If it hurts: what hurt is kept by part, with its number, what came with it, and how it was the next morning.
(() => {
  const { results, store, page } = globalThis.rungbook;
  const { make, byId } = page;
  const { say, sayNodes } = globalThis.rungbook.words;
  const { scale } = globalThis.rungbook;
  const { row, wordOf, hurtMore, follows, lift, NUMBERS } = scale;
  const parts = [.../** @type {NodeListOf<HTMLInputElement>} */ (document.querySelectorAll('#pain-part input'))];
  /** Says what became of it, where the reader is. @param {string} text */
  const tell = (text) => {
    byId('pain-notice').textContent = text;
    byId('pain-notice').focus();
  };
  const signWord = (/** @type {string} */ sign) => say(`pain.sign_${sign.replace('-', '_')}`);
  const score = row('pain-score');
  const signs = results.SIGNS.map((sign) => /** @type {HTMLInputElement} */ (make('input', { type: 'checkbox', id: `pain-${sign}`, value: sign })));
  byId('pain-rest').append(score.whole, make('p', { text: say('pain.came_with') }),
    make('ul', { class: 'plain parts' }, ...signs.map((box) => make('li', {}, box, ' ', make('label', { for: box.id, text: signWord(box.value) })))), make('p', { class: 'hint', text: say('pain.what_follows') }));
  const partWord = (/** @type {string} */ part) => {
    const box = parts.find(({ value }) => value === part);
    return box && box.parentElement ? String(box.parentElement.textContent) : part;
  };
  const day = (/** @type {string} */ text) => make('time', { datetime: text, text: results.dayWords(Number(results.readDay(text))) });

  /** @param {{ key: string, entry: any }} of @param {number} i */
  const line = ({ key, entry }, i) => {
    let text = sayNodes('pain.line', { day: day(entry.on), part: partWord(entry.part), score: entry.score });
    if (entry.next_morning !== undefined) text = sayNodes('pain.line_morning', { line: text, morning: entry.next_morning });
    if (entry.signs) text = sayNodes('pain.line_signs', { line: text, signs: entry.signs.map(signWord).join(say('list.separator')) });
    const aimed = String(make('span', {}, ...text.map((part) => part || '')).textContent);
    const id = `morning-${i}`, morning = /** @type {HTMLSelectElement} */ (make('select', { id }, make('option', { value: '', text: '' }), ...NUMBERS.map((n) => make('option', { value: n, text: wordOf(n) }))));
    const fault = make('span', { class: 'fault', role: 'alert', id: `${id}-fault` });
    const keepMorning = (/** @type {Event} */ event) => {
      event.preventDefault();
      page.blame(morning, fault, morning.value === '' ? say('pain.choose_score') : '');
      if (morning.value === '') return;
      tell(scale.morning(key, entry, Number(morning.value)));
    };
    const ask = entry.next_morning === undefined && Number(results.readDay(entry.on)) < results.today()
      ? [make('form', { class: 'morning', novalidate: true, on: { submit: keepMorning } }, make('label', { for: id, text: say('pain.next_morning') }), ' ', morning, ' ', make('button', { type: 'submit', class: 'quiet', text: say('pain.keep_morning') }), ' ', fault)] : [];
    return make('li', {}, ...text.filter((part) => part !== null).map((part) => /** @type {Node | string} */ (part)), ' ', ...ask, ' ',
      make('button', { type: 'button', class: 'quiet', text: say('pain.take_back'), on: { click: async () => { if (await page.ask(say('pain.take_back_ask'), [make('p', { text: aimed }), make('p', { text: say('pain.take_back_says') })], [['back', say('pain.take_back')], ['', say('entry.go_back')]]) === 'back') { store.remove(key); tell(say('number.taken_back')); } } } }));
  };
  const draw = () => {
    const kept = store.entries('pain').reverse();
    byId('pain-kept').hidden = kept.length === 0;
    byId('pain-list').replaceChildren(...kept.map(line));
    const resting = store.entries('paused').filter(({ entry }) => entry.part && !(entry.until && Number(results.readDay(entry.until)) < results.today()));
    byId('pain-resting').hidden = resting.length === 0;
    byId('pain-resting-list').replaceChildren(...resting.map(({ key, entry }) => make('li', {}, ...sayNodes('rests.paused', { what: partWord(entry.part), day: day(entry.on) }).map((part) => /** @type {Node | string} */ (part)), ' ',
      make('button', { type: 'button', class: 'quiet', text: say('stand.lift'), 'aria-label': say('pain.lift_of', { part: partWord(entry.part) }), on: { click: async () => { const says = await lift(key, partWord(entry.part)); if (says) tell(says); } } }))));
  };

  // A touch on the drawing is one on the word of the nearest part, on either side; far from all of them it is none.
  const drawn = document.querySelector('.body-drawn');
  if (drawn) drawn.addEventListener('click', (event) => {
    const { clientX, clientY } = /** @type {MouseEvent} */ (event), whole = drawn.getBoundingClientRect(), middle = whole.x + whole.width / 2;
    const far = (/** @type {Element} */ dot) => { const box = dot.getBoundingClientRect(); return Math.hypot(Math.abs(box.x + box.width / 2 - middle) - Math.abs(clientX - middle), box.y + box.height / 2 - clientY); };
    const [nearest] = [.../** @type {NodeListOf<SVGElement>} */ (drawn.querySelectorAll('[data-at]'))].sort((a, b) => far(a) - far(b));
    const box = nearest && far(nearest) < whole.height / 12 && parts.find(({ value }) => value === nearest.dataset.at);
    if (box) box.click();
  });

  byId('pain').hidden = false;
  /** Keeps what was said; `rests`: the part rests whatever the number. @param {boolean} rests */
  const keep = (rests) => {
    const came = signs.filter(({ checked }) => checked).map(({ value }) => value);
    const part = parts.find(({ checked }) => checked), much = score.value();
    const fault = !part ? say('pain.choose_part') : much === null && !rests ? say('pain.choose_score') : '';
    page.blame((part ? score.boxes : parts)[0], byId('pain-fault'), fault);
    if (!part || fault) return;
    const on = results.dayText(results.today()), kept = much || 0, then = follows([part.value], much, came), isLess = !rests && hurtMore(part.value, kept);
    // Who lets it rest says so whatever the number: the part rests until they or their coach lift it.
    store.addAll([...(much !== null || came.length ? [/** @type {[string, object]} */ (['pain', { part: part.value, score: kept, on, ...(came.length ? { signs: came } : {}) }])] : []),
      ...(rests ? [/** @type {[string, object]} */ (['paused', { part: part.value, on, by: 'client', because: 'it hurts' }])] : [])]);
    // No more tests today, unless the reader says anew that nothing hurts.
    if (rests || kept > 0) store.set('fit', null);
    const what = partWord(part.value);
    tell(rests ? say('pain.paused', { part: what }) : `${say(isLess ? 'pain.less' : 'pain.kept')} ${scale.saysOf(then, [part.value])}`);
    /** @type {HTMLFormElement} */ (byId('pain-form')).reset();
  };
  byId('pain-form').addEventListener('submit', (event) => {
    event.preventDefault();
    keep(false);
  });
  byId('pain-pause').addEventListener('click', () => keep(true));
  store.onChange(() => page.hold(draw, 'pain-notice'));
  draw();
})();
