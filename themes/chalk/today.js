'use strict';
// Today: one card from one's own results. What is ticked is the training log that moving on reads.
(() => {
  const { targets, results, dose, plan, store, page, states, entry } = globalThis.rungbook;
  const { make, named, byId } = page;
  const { say } = globalThis.rungbook.words;
  const { model, mine } = states;
  if (!model) return;
  const { tables } = model;
  /** Seconds between hard sets: 2 to 5 minutes for strength (NSCA Essentials). */
  const REST = 180;
  const choice = /** @type {HTMLSelectElement} */ (byId('of-skill'));
  choice.append(...tables.skills.map(({ name }, i) => make('option', { value: i, text: name })));
  const kept = store.get('skill');
  if (typeof kept === 'number' && tables.skills[kept]) choice.value = String(kept);

  /** What is ticked and not kept yet, by movement: another card, another tab or a reload does not take it away. @param {string} on @returns {Record<string, { ticks: boolean[], amounts: string[], left: string }>} */
  const drafts = (on) => { const kept = store.get('ticks'); return kept && kept.on === on && kept.of ? kept.of : {}; };

  /** A countdown. */
  const rest = () => {
    const face = make('span', { class: 'timer-face', role: 'timer', text: '3:00' });
    let end = 0, ticking = 0;
    const stop = () => { clearInterval(ticking); ticking = 0; };
    const show = () => {
      const left = Math.max(0, Math.ceil((end - performance.now()) / 1000));
      face.textContent = `${Math.floor(left / 60)}:${String(left % 60).padStart(2, '0')}`;
      if (left === 0) stop();
    };
    return make('p', { class: 'timer' }, make('button', { type: 'button', class: 'quiet', text: say('today.rest'), on: { click: () => {
      stop();
      end = performance.now() + REST * 1000;
      ticking = Number(setInterval(show, 250));
      show();
    } } }), ' ', face);
  };

  const timer = rest();

  /** One movement with its sets to tick. @param {WorkingPick} pick @param {string} on */
  const card = (pick, on) => {
    const done = store.entries('trained').find(({ entry: of }) => of.on === on && model.numbers.get(of.movement) === pick.movement);
    const id = tables.ids[pick.movement];
    if (done) {
      return make('article', { class: 'check', 'data-movement': id }, make('h3', {}, named(tables, pick.movement)),
        make('p', { text: say('today.done', { sets: done.entry.did.join(say('list.separator')) }) }), make('p', {}, make('button', { type: 'button', class: 'quiet', text: say('today.take_back'), on: { click: () => store.remove(done.key) } })));
    }
    const draft = drafts(on)[id] || { ticks: [], amounts: [], left: '' };
    const sets = Array.from({ length: pick.sets }, (_, i) => {
      const tick = /** @type {HTMLInputElement} */ (make('input', { type: 'checkbox', id: `tick-${id}-${i}` }));
      const amount = /** @type {HTMLInputElement} */ (make('input', { type: 'text', inputmode: 'decimal', size: 4, value: draft.amounts[i] === undefined ? pick.amount : draft.amounts[i], 'aria-label': say('today.set_done', { number: i + 1 }) }));
      tick.checked = Boolean(draft.ticks[i]);
      return { tick, amount, whole: make('li', {}, tick, ' ', make('label', { for: `tick-${id}-${i}`, text: say('today.set', { number: i + 1 }) }), ' ', amount) };
    });
    const reserve = /** @type {HTMLInputElement} */ (make('input', { type: 'text', inputmode: 'numeric', size: 3, id: `left-${id}`, value: draft.left }));
    const jot = () => store.note('ticks', { on, of: { ...drafts(on), [id]: { ticks: sets.map(({ tick }) => tick.checked), amounts: sets.map(({ amount }) => amount.value), left: reserve.value } } });
    const fault = make('p', { class: 'fault', role: 'alert' });
    return make('article', { class: 'check', 'data-movement': id, on: { input: jot } }, make('h3', {}, named(tables, pick.movement)),
      make('p', { class: 'dose' }, plan.shown(model, pick.movement, pick.text)), make('p', { class: 'hint', text: pick.why }),
      make('ul', { class: 'plain ticks' }, ...sets.map(({ whole }) => whole)),
      make('p', { class: 'field' }, make('label', { for: `left-${id}`, text: say('today.left_in_reserve') }), reserve), fault,
      make('p', { class: 'acts' }, make('button', { type: 'button', text: say('today.keep'), on: { click: () => {
        const did = sets.filter(({ tick }) => tick.checked).map(({ amount }) => Number(amount.value.trim().replace(',', '.')));
        const left = reserve.value.trim() === '' ? null : Number(reserve.value);
        if (!did.length || did.some((n) => !Number.isFinite(n) || n < 0 || n > 100000) || (left !== null && (!Number.isInteger(left) || left < 0))) {
          fault.textContent = say('today.tick');
          return;
        }
        const size = Math.abs(pick.load);
        const load = pick.unit === targets.NO_LOAD ? {} : { with: `${pick.unit === targets.MASS ? `${targets.kilograms(size)} kg` : `${targets.decimal(size)} bw`}${pick.load < 0 ? ' help' : ''}` };
        store.add('trained', { movement: id, did, ...load, ...(left === null ? {} : { in_reserve: left }), on });
      } } }), ' ', make('button', { type: 'button', class: 'hurt', text: say('entry.it_hurt'), on: { click: () => { entry.hurt(pick.movement); } } })));
  };

  const draw = () => {
    const stand = mine();
    byId('nothing-yet').hidden = stand !== null;
    // No work is prescribed before the health questions, nor where they say to ask a clinician first.
    const barred = states.barred() !== '';
    byId('first').hidden = stand === null || !barred;
    byId('card').hidden = stand === null || barred;
    byId('plan').hidden = stand === null || barred;
    if (!stand || barred) return;
    const skill = choice.value === '' ? null : tables.skills[Number(choice.value)];
    const list = skill ? skill.members : model.order;
    const { picks, practice } = dose.working(model, stand.found, stand.person, list, stand.day);
    const on = results.dayText(stand.day);
    const classes = new Set([...picks.map(({ movement }) => movement), ...practice.map(({ movement }) => movement)].flatMap((m) => tables.cautions[m].map((c) => tables.classes[c])));
    const warm = [...new Set(['always', ...tables.classes.filter((c) => classes.has(c))].flatMap((key) => tables.warm_up[key] || []))];
    byId('warm-up').replaceChildren(...warm.map((text) => make('li', { text })));
    for (const when of /** @type {const} */ (['before', 'after'])) {
      const of = practice.filter((p) => p.when === when);
      byId(`practice-${when}`).hidden = of.length === 0;
      byId(`practice-${when}-list`).replaceChildren(...of.map(({ movement, text, why }) => make('li', {}, named(tables, movement), ' ', plan.shown(model, movement, text), make('span', { class: 'hint', text: ` ${why}` }))));
    }
    byId('sets').replaceChildren(...(picks.length ? picks.map((pick) => card(pick, on)) : [make('p', { text: say('today.nothing_open') })]), ...(picks.length ? [timer] : []));
    byId('after-list').replaceChildren(...store.entries('sessions').filter(({ entry: of }) => of.on === on).map(({ key, entry: { effort, minutes } }) => make('li', {}, say('today.session', { effort, minutes }), ' ',
      make('button', { type: 'button', class: 'quiet', text: say('today.take_back'), 'aria-label': say('today.take_back_session', { effort, minutes }), on: { click: () => store.remove(key) } }))));
    const laid = plan.lay(model, picks, stand.day);
    byId('plan-list').replaceChildren(...plan.items(model, laid));
    byId('plan-end').replaceChildren(...plan.end(laid));
  };
  const effort = /** @type {HTMLInputElement} */ (byId('session-effort')), minutes = /** @type {HTMLInputElement} */ (byId('session-minutes'));
  byId('session').addEventListener('submit', (event) => {
    event.preventDefault();
    const whole = (/** @type {HTMLInputElement} */ { value }, /** @type {number} */ most) => (/^\s*[0-9]{1,4}\s*$/.test(value) && Number(value) <= most ? Number(value) : null);
    const said = whole(effort, 10), long = whole(minutes, 1440);
    byId('session-fault').textContent = said === null || !long ? say('today.no_session') : '';
    if (said === null || !long) return;
    effort.value = '';
    minutes.value = '';
    store.add('sessions', { effort: said, minutes: long, on: results.dayText(results.today()) });
  });
  choice.addEventListener('change', () => store.set('skill', choice.value === '' ? null : Number(choice.value)));
  store.onChange(draw);
  draw();
})();
