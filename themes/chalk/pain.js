'use strict';
// If it hurts: what hurt is kept by part, with its number, what came with it, and how it was the next morning.
(() => {
  const { results, store, page } = globalThis.rungbook;
  const { make, byId } = page;
  const { say, sayNodes, number } = globalThis.rungbook.words;
  /** A pain above this, or one with any sign, pauses its part; up to the other nothing changes. */
  const GOES_ON = 5, FINE = 2;
  const parts = /** @type {HTMLSelectElement} */ (byId('pain-part'));
  const tell = (/** @type {string} */ text) => { byId('pain-notice').textContent = text; };
  const signWord = (/** @type {string} */ sign) => say(`pain.sign_${sign.replace('-', '_')}`);
  const scores = (/** @type {string} */ id) => /** @type {HTMLSelectElement} */ (make('select', { id }, make('option', { value: '', text: '' }),
    ...Array.from({ length: 11 }, (_, n) => make('option', { value: n, text: n === 0 ? say('pain.none') : n === 10 ? say('pain.worst') : number(n) }))));
  const score = scores('pain-score');
  const signs = results.SIGNS.map((sign) => /** @type {HTMLInputElement} */ (make('input', { type: 'checkbox', id: `pain-${sign}`, value: sign })));
  byId('pain-rest').append(make('p', { class: 'field' }, make('label', { for: 'pain-score', text: say('pain.how_much') }), score), make('p', { text: say('pain.came_with') }),
    make('ul', { class: 'plain parts' }, ...signs.map((box) => make('li', {}, box, ' ', make('label', { for: box.id, text: signWord(box.value) })))), make('p', { class: 'hint', text: say('pain.what_follows') }));
  const partWord = (/** @type {string} */ part) => {
    const option = [...parts.options].find(({ value }) => value === part);
    return option ? option.text : part;
  };
  const day = (/** @type {string} */ text) => make('time', { datetime: text, text: results.dayWords(Number(results.readDay(text))) });

  /** @param {{ key: string, entry: any }} of @param {number} i */
  const line = ({ key, entry }, i) => {
    let text = sayNodes('pain.line', { day: day(entry.on), part: partWord(entry.part), score: entry.score });
    if (entry.next_morning !== undefined) text = sayNodes('pain.line_morning', { line: text, morning: entry.next_morning });
    if (entry.signs) text = sayNodes('pain.line_signs', { line: text, signs: entry.signs.map(signWord).join(say('list.separator')) });
    const morning = scores(`morning-${i}`);
    const ask = entry.next_morning === undefined && Number(results.readDay(entry.on)) < results.today()
      ? [make('label', { for: `morning-${i}`, text: say('pain.next_morning') }), ' ', morning, ' ', make('button', { type: 'button', class: 'quiet', text: say('pain.keep_morning'), on: { click: () => {
        if (morning.value === '') return;
        const worse = Number(morning.value) > entry.score;
        store.remove(key);
        store.add('pain', { ...entry, next_morning: Number(morning.value) });
        // What hurts so much the morning after is a pain of its own.
        if (Number(morning.value) > GOES_ON && worse) store.add('pain', { part: entry.part, score: Number(morning.value), on: results.dayText(Number(results.readDay(entry.on)) + 1) });
        tell(Number(morning.value) > GOES_ON ? say('pain.rests_now') : worse ? say('pain.worse') : say('pain.kept'));
      } } })] : [];
    return make('li', {}, ...text.filter((part) => part !== null).map((part) => /** @type {Node | string} */ (part)), ' ', ...ask, ' ',
      make('button', { type: 'button', class: 'quiet', text: say('pain.take_back'), on: { click: () => store.remove(key) } }));
  };
  const draw = () => {
    const kept = store.entries('pain').reverse();
    byId('pain-kept').hidden = kept.length === 0;
    byId('pain-list').replaceChildren(...kept.map(line));
  };

  byId('pain').hidden = false;
  byId('pain-form').addEventListener('submit', (event) => {
    event.preventDefault();
    const came = signs.filter(({ checked }) => checked).map(({ value }) => value);
    const fault = parts.value === '' ? say('pain.choose_part') : score.value === '' ? say('pain.choose_score') : '';
    byId('pain-fault').textContent = fault;
    if (fault) {
      (parts.value === '' ? parts : score).focus();
      return;
    }
    const much = Number(score.value);
    store.add('pain', { part: parts.value, score: much, on: results.dayText(results.today()), ...(came.length ? { signs: came } : {}) });
    // No more tests today, unless the reader says anew that nothing hurts.
    if (much > 0) store.set('fit', null);
    tell(`${say('pain.kept')} ${much > GOES_ON || came.length ? say('pain.rests_now') : much > FINE ? say('pain.goes_on') : say('pain.fine')}`);
    /** @type {HTMLFormElement} */ (byId('pain-form')).reset();
  });
  store.onChange(draw);
  draw();
})();
