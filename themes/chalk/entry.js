'use strict';
'after page.js states.js number.js scale.js';
// Entering one result: the fields that fit the movement, the hold timer, and "it hurt".
(() => {
  const { targets, results, readiness, store, page, states, scale, number: { isMeant, fromPicture, given, spans, noDay, isMore } } = globalThis.rungbook;
  const { make, named, units, blame } = page;
  const { say, sayNodes } = globalThis.rungbook.words;
  const { TIME, LENGTH, DONE, NO_LOAD } = targets;
  const COUNTDOWN = 5;
  /** The most that is kept as left undone. */
  const MOST_LEFT = globalThis.rungbook.health.LIMITS.in_reserve;
  // By the number of the measure.
  const WORDS = [say('entry.reps'), say('entry.seconds'), say('entry.centimetres'), say('entry.degrees'), say('entry.done')];
  const UNITS = ['reps', 's', 'cm', 'deg', 'done'];

  let count = 0;
  /** A field with its label. @param {string} says @param {Record<string, unknown>} set */
  const field = (says, set) => {
    count += 1;
    const id = `field-${count}`;
    const input = /** @type {HTMLInputElement} */ (make('input', { id, autocomplete: 'off', ...set }));
    return { input, says, whole: make('p', { class: 'field' }, make('label', { for: id, text: says }), input) };
  };
  /** @param {string} says @param {[string, string][]} options value and words */
  const choice = (says, options) => {
    count += 1;
    const id = `field-${count}`;
    const input = /** @type {HTMLSelectElement} */ (make('select', { id }, ...options.map(([value, words]) => make('option', { value, text: words }))));
    return { input, whole: make('p', { class: 'field' }, make('label', { for: id, text: says }), input) };
  };
  const number = { type: 'text', inputmode: 'decimal', size: 6 };

  /** A timer for holds: a countdown to get into place, then the seconds. @param {string} side which one, where there are two @param {(seconds: number) => void} done */
  const timer = (side, done) => {
    count += 1;
    const id = `timer-${count}`;
    const face = make('span', { class: 'timer-face', role: 'timer', text: '0' });
    const button = make('button', { type: 'button', class: 'quiet', text: say('entry.start_timer'), 'aria-describedby': side ? id : null });
    let started = 0, ticking = 0;
    const tick = () => {
      const passed = (performance.now() - started) / 1000 - COUNTDOWN;
      face.textContent = passed < 0 ? say('entry.starts_in', { seconds: Math.ceil(-passed) }) : String(Math.floor(passed));
    };
    button.addEventListener('click', () => {
      if (ticking) {
        clearInterval(ticking);
        ticking = 0;
        const held = Math.max(0, Math.floor((performance.now() - started) / 1000 - COUNTDOWN));
        face.textContent = String(held);
        button.textContent = say('entry.start_timer');
        done(held);
        return;
      }
      started = performance.now();
      ticking = Number(setInterval(tick, 100));
      button.textContent = say('entry.stop');
      tick();
    });
    return make('p', { class: 'timer' }, ...(side ? [make('span', { id, text: side }), ' '] : []), button, ' ', face, make('span', { class: 'hint', text: ` ${say('entry.countdown')}` }));
  };

  /** What the demands of a movement use beside the amount. @param {Model} model @param {number} m */
  const uses = (model, m) => {
    const asked = model.demands[m].map(model.target);
    const some = (/** @type {(target: Got) => boolean} */ has) => asked.some(has);
    return {
      sets: some((t) => t.sets > 1), seconds: some((t) => t.seconds > 0), tries: some((t) => t.of > 0),
      load: some((t) => t.unit !== NO_LOAD), help: some((t) => t.load < 0),
    };
  };

  /**
   * The form of one movement. `kept` is called with the key of the entry that was made.
   * @param {number} m
   * @param {{ today: boolean, told?: boolean, kept: (key: string) => void, hurt: () => void, more?: (HTMLElement | null)[] }} options `today`: it may be tested today; `told`: only what was there before, its
   * day first; `more`: other answers
   */
  const form = (m, options) => {
    const model = /** @type {Model} */ (states.model);
    const { measure } = model.target(m);
    const use = uses(model, m);
    const sided = model.is(m, readiness.EACH_SIDE);
    const day = results.today();
    const inches = measure === LENGTH && units.current() === 'imperial';
    const says = inches ? say('entry.inches') : WORDS[measure];
    const unit = inches ? 'in' : UNITS[measure];
    const amounts = sided
      ? [field(say('entry.of_left', { amount: says }), number), field(say('entry.of_right', { amount: says }), number)]
      : [field(says, measure === DONE ? { type: 'checkbox' } : number)];
    const sets = use.sets ? field(say('entry.sets'), { ...number, value: '1' }) : null;
    const seconds = use.seconds ? field(say('entry.seconds_of_each'), number) : null;
    const hits = use.tries ? [field(say('entry.good_tries'), number), field(say('entry.out_of_tries'), number)] : null;
    const weight = units.current() === 'imperial' ? 'lb' : 'kg';
    const load = use.load ? field(weight === 'lb' ? say('entry.weight_in_pounds') : say('entry.weight_in_kilograms'), number) : null;
    const way = use.load ? choice(say('entry.the_weight'), [...(use.help ? [['help', say('entry.helps')]] : []), ['added', say('entry.is_added')], ...(use.help ? [] : [['help', say('entry.helps')]])].map((o) => /** @type {[string, string]} */ (o))) : null;
    const reserve = field(say('entry.could_have_done'), { ...number, placeholder: '0' });
    // A number has the day or the span that the person gives; nothing is dated by guess.
    const when = choice(say('entry.when'), /** @type {[string, string][]} */ ([...(options.today ? [['0', say('entry.just_now')]] : [['', say('entry.choose')]]),
      ...spans(m)]));
    const on = field(say('entry.on_day'), { type: 'date', max: results.dayText(day), min: results.dayText(day - 3650) });
    on.whole.hidden = true;
    when.input.addEventListener('change', () => { on.whole.hidden = when.input.value !== 'day'; });
    count += 1;
    const fault = make('p', { class: 'fault', role: 'alert', id: `fault-${count}` });
    const written = (/** @type {{ input: HTMLInputElement }} */ of) => of.input.value.trim().replace(',', '.');

    /** @param {{ input: HTMLInputElement }} amount */
    const text = (amount) => {
      if (measure === DONE) return amount.input.checked ? 'done' : 'not done';
      const set = sets && written(sets) !== '' && written(sets) !== '1' ? `${written(sets)}x` : '';
      const each = seconds && written(seconds) !== '' ? ` of ${written(seconds)} s` : '';
      const tried = hits && written(hits[1]) !== '' ? ` in ${written(hits[0])} of ${written(hits[1])} tries` : '';
      const added = load && way && written(load) !== '' && Number(written(load)) !== 0 ? ` with ${written(load)} ${weight}${way.input.value === 'help' ? ' help' : ''}` : '';
      return `${set}${written(amount)} ${unit}${each}${tried}${added}`;
    };
    const days = make('div', { class: 'fields' }, when.whole, on.whole);
    const more = /** @type {HTMLDetailsElement} */ (make('details', { class: 'more' }, make('summary', { text: say('entry.what_was_left') }), make('div', { class: 'fields' }, reserve.whole)));
    const whole = make('form', { class: 'enter-form', novalidate: true, on: {
      submit: (/** @type {Event} */ event) => {
        event.preventDefault();
        const read = amounts.map((amount) => targets.readGot(text(amount)));
        const bad = read.findIndex((got) => got === null);
        const left = Number(written(reserve) || '0');
        if (bad >= 0) {
          blame(amounts[bad].input, fault, say('entry.write_numbers'));
          return;
        }
        if (!Number.isInteger(left) || left < 0 || left > MOST_LEFT) {
          more.open = true;
          blame(reserve.input, fault, say('entry.write_reserve', { most: MOST_LEFT }));
          return;
        }
        const from = given(when.input.value, on.input.value, day, states.since(m));
        if (from === undefined) {
          blame(when.input.value === 'day' ? on.input : when.input, fault, noDay(m));
          return;
        }
        blame(when.input, fault, '');
        if (isMore(m, /** @type {Got[]} */ (read))) {
          blame(amounts[0].input, fault, say('number.until_settled'));
          return;
        }
        const texts = read.map((got) => targets.text(/** @type {Got} */ (got)));
        const sides = sided ? { left: texts[0], right: texts[1] } : { got: texts[0] };
        const keep = () => options.kept(from === null ? store.add('undated', { movement: model.tables.ids[m], ...sides })
          : store.add('tested', { movement: model.tables.ids[m], ...sides, ...from, ...(left ? { in_reserve: left } : {}) }));
        const odd = read.find((got) => readiness.doubtful(model, m, /** @type {Got} */ (got)));
        if (odd) isMeant(m, odd).then((meant) => { if (meant) keep(); else amounts[0].input.focus(); });
        else keep();
      },
    } },
      options.told ? days : null,
      ...(measure === TIME && options.today ? amounts.map((amount) => timer(sided ? amount.says : '', (held) => { amount.input.value = String(held); })) : []),
      make('div', { class: 'fields' }, ...[...amounts, sets, seconds, ...(hits || []), load, way].map((part) => part && part.whole)),
      make('p', { class: 'pictures' }, ...amounts.map(({ input }) => fromPicture(m, input))),
      options.told ? null : days,
      more, fault,
      make('p', { class: 'acts' }, make('button', { type: 'submit', text: say('entry.keep') }), ' ', ...(options.more || []),
        make('button', { type: 'button', class: 'hurt', text: say('entry.it_hurt'), on: { click: () => hurt(m, options.today ? 'test' : 'training').then((then) => { if (then && then.follows === 'on') fault.textContent = then.says; else if (then) options.hurt(); }) } })));
    return whole;
  };

  // ---- "it hurt"

  /** A box to tick. @param {string} id @param {string} value @param {string} says */
  const tick = (id, value, says) => {
    const box = /** @type {HTMLInputElement} */ (make('input', { type: 'checkbox', id, value }));
    return { box, whole: make('label', { class: 'chip' }, box, says) };
  };
  /** "It hurt": where, how much, and what came with it. The button says what follows and does it: the movement goes on, is over for today, or
   * rests. @param {number} m @param {'test' | 'training'} where @returns {Promise<{ follows: 'on' | 'light' | 'rests', says: string } | null>} null where the reader went back */
  const hurt = async (m, where = 'training') => {
    const { tables } = /** @type {Model} */ (states.model);
    const bears = (/** @type {number} */ i) => ((tables.stresses[m] >> i) & 1) === 1;
    const boxes = tables.parts.map((part, i) => ({ ...tick(`part-${part}`, part, states.partWord(part)), stressed: bears(i) }));
    const chips = (/** @type {boolean} */ stressed) => make('div', { class: 'chips' }, ...boxes.filter((of) => of.stressed === stressed).map(({ whole }) => whole));
    const score = scale.row('hurt-score'), signs = results.SIGNS.map((sign) => tick(`sign-${sign}`, sign, say(`pain.sign_${sign.replace('-', '_')}`)));
    const says = make('p', { class: 'hint', role: 'status' });
    const chosen = () => boxes.filter(({ box }) => box.checked).map(({ box }) => box.value), came = () => signs.filter(({ box }) => box.checked).map(({ box }) => box.value);
    /** What was said, and what follows; where no part was chosen all that the movement bears on may be meant. */
    const said = () => {
      const parts = chosen(), all = parts.length ? parts : boxes.filter(({ stressed }) => stressed).map(({ box }) => box.value);
      // What rests sooner than others, the neck, rests by its own entry: who did not say where is told the same as who did.
      const some = all.filter((part) => part !== 'neck'), follows = scale.follows(parts.length || !some.length ? all : some, score.value(), came());
      return { parts: all, isUnsaid: parts.length === 0, signs: came(), score: score.value(), follows };
    };
    /** What the button says: what it does, and to what. @param {ReturnType<typeof said>} of */
    const acts = ({ follows, isUnsaid, parts }) => (follows === 'light' ? say('entry.go_lighter') : follows === 'on' ? say(isUnsaid ? 'entry.go_on' : 'entry.keep_go_on')
      : !parts.length ? say('entry.pause') : isUnsaid && parts.length > 1 ? say('entry.pause_all', { n: parts.length }) : say('entry.pause_part', { parts: scale.partsText(parts) }));
    /** What comes of it, before it is done. @param {ReturnType<typeof said>} of */
    const tells = ({ follows, isUnsaid, parts, score: much, signs: with_ }) => {
      const isOpen = much === null && !with_.length;
      return !parts.length && isOpen ? say('entry.stop_here') : isOpen ? say(isUnsaid ? 'entry.not_sure' : 'entry.no_number', { parts: scale.partsText(parts) }) : scale.saysOf(follows, parts);
    };
    const show = () => {
      const of = said(), dialog = says.closest('dialog'), act = dialog && dialog.querySelector('button[value=act]');
      if (!act) return;
      act.textContent = acts(of);
      says.textContent = tells(of);
      // On a low screen the number comes up from behind the buttons once it is said where it hurts.
      if (!of.isUnsaid && of.score === null) score.whole.scrollIntoView({ block: 'nearest' });
    };
    const inside = make('div', { class: 'hurting', on: { change: show } }, make('p', { class: 'do-not', text: say('entry.emergency') }),
      make('fieldset', {}, make('legend', { text: say('entry.where') }), chips(true), make('details', {}, make('summary', { text: say('entry.other_part') }), chips(false), make('p', {}, say('entry.elsewhere'), ' ', make('a', { href: 'if-it-hurts.html', text: say('entry.if_it_hurts') }), '.'))),
      // The signs come before the number: who reaches that has passed all of them, and who gives none rests.
      make('fieldset', {}, make('legend', { text: say('pain.came_with') }), make('div', { class: 'signs' }, ...signs.map(({ whole }) => whole))), score.whole, says);
    says.textContent = tells(said());
    const title = sayNodes('entry.it_hurt_in', { movement: named(tables, m) }).map((part) => part || '');
    if (await page.ask(title, [inside], [['act', acts(said())], ['', say('entry.go_back')]]) !== 'act') return null;
    const { parts, isUnsaid, signs: with_, score: much, follows } = said();
    const on = results.dayText(results.today()), by = 'client', because = where === 'test' ? 'it hurt in a test' : 'it hurt in training';
    /** @type {[string, object][]} */
    const out = follows === 'on' ? [] : [['paused', { movement: tables.ids[m], on, ...(follows === 'light' ? { until: on } : {}), by, because }]];
    for (const part of parts) {
      // Where it was not said where or how much, what it bears on rests until somebody lifts it.
      if (follows === 'rests' && (isUnsaid || much === null)) out.push(['paused', { part, on, by, because }]);
      if (isUnsaid ? follows === 'light' : much !== null || with_.length) out.push(['pain', { part, score: much || 0, on, ...(with_.length ? { signs: with_ } : {}) }]);
    }
    store.addAll(out);
    // Something hurts that did not before: no more tests today, unless the reader says anew that nothing does.
    if (follows !== 'on') store.set('fit', null);
    return { follows, says: scale.saysOf(follows, parts) };
  };

  globalThis.rungbook.entry = { form, hurt };
})();
