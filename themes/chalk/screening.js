'use strict';
// The health questions: the answers are looked up in the page's own table and are not kept; only what follows, the classes that are
// left alone, the year of birth and the day are. What a clinician allowed is kept by class, with the day, by whom, and until when.
(() => {
  const { results, store, page } = globalThis.rungbook;
  const { LIMITS, saysOn } = globalThis.rungbook.health;
  const { make, byId } = page;
  const { say, sayNodes } = globalThis.rungbook.words;
  const questions = /** @type {HTMLFormElement} */ (byId('questions'));
  const clearance = /** @type {HTMLFormElement} */ (byId('clearance'));
  const outcome = byId('outcome');
  const SCREENING = 'screening';
  const field = (/** @type {string} */ id) => /** @type {HTMLInputElement} */ (byId(id));
  const yes = (/** @type {string} */ name) => {
    const chosen = /** @type {HTMLInputElement | null} */ (questions.querySelector(`input[name="${name}"]:checked`));
    return chosen ? chosen.value === 'yes' : null;
  };
  const day = (/** @type {string} */ text) => make('time', { datetime: text, text: results.dayWords(Number(results.readDay(text))) });
  const wordOf = (/** @type {string} */ kind, /** @type {string} */ id) => {
    const found = document.querySelector(kind === 'class' ? `[data-class="${CSS.escape(id)}"] label` : `[data-part="${CSS.escape(id)}"]`);
    return found ? String(found.textContent) : id;
  };

  // ---- what is left alone for health's sake, and what was allowed since

  const left = () => store.entries('restrict').filter(({ entry: of }) => of.by === SCREENING);
  /** The clearance that lifts a class today. @param {{ class?: string, on: string }} of */
  const allowed = (of) => {
    const today = results.today();
    return store.entries('cleared').find(({ entry: { class: id, on, until } }) => {
      const from = Number(results.readDay(on)), last = Math.min(until ? Number(results.readDay(until)) : Infinity, from + LIMITS.clearance);
      return id === of.class && of.on <= on && from <= today && today <= last;
    });
  };
  /** What was allowed, by whom, until when. @param {{ on: string, until?: string, by?: string }} of */
  const allowedBy = ({ on, until, by }) => {
    const last = until || results.dayText(Number(results.readDay(on)) + LIMITS.clearance);
    return by ? sayNodes('screening.allowed_by', { by: make('bdi', { text: by }), day: day(on), until: day(last) }) : sayNodes('screening.allowed', { day: day(on), until: day(last) });
  };
  const leftLines = () => left().map(({ entry: of }) => {
    const lifts = of.class ? allowed(of) : undefined;
    return make('li', {}, make('strong', { text: of.class ? wordOf('class', of.class) : wordOf('part', String(of.part)) }), ' ', ...(lifts ? [...allowedBy(lifts.entry), ' ',
      make('button', { type: 'button', class: 'quiet', text: say('screening.take_back'), on: { click: () => store.remove(lifts.key) } })] : [say('screening.left_alone')]));
  });

  /** What follows, in a sentence: never that the answers raise nothing where they did. @param {NonNullable<Exported['screened']>} screened @param {string | null} says @param {boolean} stale @returns {PagePart[]} */
  const sentence = (screened, says, stale) => {
    if (stale || says === null) return [say('screening.says_again')];
    if (says === 'ask') return [screened.until ? say('screening.says_run_out') : say('screening.says_ask')];
    if (screened.until) {
      return [says === 'clear' ? say('screening.says_allowed_hard') : say('screening.says_allowed_light'), ' ', ...allowedBy(screened), ' ',
        make('button', { type: 'button', class: 'quiet', text: say('screening.take_back'), on: { click: () => store.put('screened', { says: 'ask', on: results.dayText(results.today()) }) } })];
    }
    return [says === 'clear' ? say('screening.says_clear') : say('screening.says_light')];
  };

  /** The questions of the goal, where one is chosen. */
  const onward = () => { const { goal } = store.facts(); return goal && goal === store.get('goal-test') ? `self-test-${goal}.html` : 'self-test.html'; };

  const draw = () => {
    const { screened, born } = store.facts(), today = results.today();
    const lines = leftLines();
    outcome.hidden = !screened;
    clearance.hidden = true;
    globalThis.rungbook.health.draw();
    if (!screened) return;
    const on = Number(results.readDay(screened.on)), age = results.ageOn(born === undefined ? null : born, today);
    const says = saysOn({ says: screened.says, on, until: screened.until ? Number(results.readDay(screened.until)) : null }, today);
    const stale = says !== 'ask' && today > on + LIMITS.clearance;
    outcome.replaceChildren(make('h3', { tabindex: -1, id: 'outcome-head', text: say('screening.what_follows') }),
      make('p', {}, ...sentence(screened, says, stale)), make('p', { class: 'hint' }, ...sayNodes('screening.answered_on', { day: day(screened.on) })),
      ...(age !== null && age < LIMITS.youth ? [make('p', { text: say('screening.young') })] : []),
      ...(age !== null && age < LIMITS.adult ? [make('p', { text: say('screening.growing') })] : []),
      ...(lines.length ? [make('p', { text: say('screening.left') }), make('ul', {}, ...lines)] : []),
      ...(says === 'ask' || stale || says === null ? [] : [make('p', { class: 'invites' }, make('a', { class: 'act', href: onward(), text: say('screening.to_self_test') }))]));
    const open = new Set(left().filter(({ entry: of }) => of.class && !allowed(of)).map(({ entry: of }) => of.class));
    for (const item of /** @type {NodeListOf<HTMLElement>} */ (clearance.querySelectorAll('[data-class]'))) item.hidden = !open.has(item.dataset.class || '');
    byId('clear-effort').hidden = says !== 'ask';
    byId('clear-classes').hidden = open.size === 0;
    clearance.hidden = says !== 'ask' && open.size === 0;
    field('clear-on').max = results.dayText(today);
    if (!field('clear-on').value) field('clear-on').value = results.dayText(today);
  };

  questions.hidden = false;
  // Who has read them all and says no to the rest has answered them; how regularly somebody exercises is said by nothing else.
  byId('no-to-the-rest').addEventListener('click', () => {
    for (const set of /** @type {NodeListOf<HTMLElement>} */ (questions.querySelectorAll('fieldset:not([data-column="regular"])'))) {
      if (!set.querySelector('input:checked')) /** @type {HTMLInputElement} */ (set.querySelector('input[value="no"]')).checked = true;
    }
    questions.requestSubmit();
  });
  questions.addEventListener('submit', (event) => {
    event.preventDefault();
    const sets = [.../** @type {NodeListOf<HTMLElement>} */ (questions.querySelectorAll('fieldset'))];
    const nameOf = (/** @type {HTMLElement} */ set) => /** @type {HTMLInputElement} */ (set.querySelector('input')).name;
    const today = results.today(), born = Number(field('born').value.trim());
    const bornFine = /^\s*[0-9]{4}\s*$/.test(field('born').value) && results.fact('born', born, today).why === '';
    const open = sets.find((set) => yes(nameOf(set)) === null);
    byId('questions-fault').textContent = !bornFine ? say('screening.write_year') : open ? say('screening.answer_each') : '';
    field('born').setAttribute('aria-invalid', String(!bornFine));
    if (!bornFine || open) {
      const first = bornFine && open ? open.querySelector('input') : field('born');
      if (first) {
        first.setAttribute('aria-describedby', 'questions-fault');
        first.focus();
      }
      return;
    }
    const said = (/** @type {string} */ column) => sets.filter((set) => set.dataset.column === column).some((set) => yes(nameOf(set)));
    const rows = [.../** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('tr[data-outcome]'))];
    const word = (/** @type {string} */ column) => (said(column) ? 'yes' : 'no');
    const row = rows.find(({ dataset }) => dataset.regular === word('regular') && dataset.symptoms === word('symptoms') && ['either', word('disease')].includes(dataset.disease || ''));
    const follows = said('other') || !row ? 'ask' : row.dataset.outcome;
    const raised = sets.filter((set) => set.dataset.column !== 'regular' && yes(nameOf(set)));
    const of = (/** @type {'classes' | 'parts'} */ key) => [...new Set(raised.flatMap((set) => (set.dataset[key] || '').split(' ').filter((id) => id !== '')))];
    const on = results.dayText(today);
    const [classes, parts] = [of('classes'), of('parts')];
    questions.reset();
    // New answers take the place of the old ones, and of what those left alone.
    left().forEach(({ key }) => store.remove(key));
    classes.forEach((id) => store.add('restrict', { class: id, on, by: SCREENING }));
    parts.forEach((id) => store.add('restrict', { part: id, on, by: SCREENING }));
    store.put('born', born);
    store.put('screened', { says: follows, on });
    byId('outcome-head').focus();
  });

  clearance.addEventListener('submit', (event) => {
    event.preventDefault();
    const today = results.today(), by = field('clear-by').value.trim();
    const on = results.readDay(field('clear-on').value), until = results.readDay(field('clear-until').value);
    const chosen = /** @type {HTMLInputElement | null} */ (byId('clear-effort').hidden ? null : clearance.querySelector('input[name="effort"]:checked'));
    const classes = [.../** @type {NodeListOf<HTMLInputElement>} */ (clearance.querySelectorAll('[data-class]:not([hidden]) input:checked'))].map(({ value }) => value);
    /** @type {[boolean, string, string][]} */
    const faults = [
      [!chosen && classes.length === 0, say('screening.clear_what'), byId('clear-effort').hidden ? 'clear-by' : ''],
      [by === '', say('screening.clear_who'), 'clear-by'],
      [on === null || on > today, say('screening.clear_day'), 'clear-on'],
      [until === null || on === null || until < today || until > on + LIMITS.clearance, say('screening.clear_until'), 'clear-until'],
    ];
    const fault = faults.find(([wrong]) => wrong);
    byId('clear-fault').textContent = fault ? fault[1] : '';
    if (fault) {
      const at = fault[2] ? field(fault[2]) : clearance.querySelector('input');
      if (at) at.focus();
      return;
    }
    const of = { on: field('clear-on').value, until: field('clear-until').value, by };
    for (const id of classes) {
      // What was allowed was there on that day already: it is left alone from then.
      for (const { key, entry } of left()) {
        if (entry.class !== id || entry.on <= of.on) continue;
        store.remove(key);
        store.add('restrict', { ...entry, on: of.on });
      }
      store.add('cleared', { class: id, ...of });
    }
    if (chosen) store.put('screened', { says: chosen.value, ...of });
    clearance.reset();
    draw();
    byId('outcome-head').focus();
  });
  const { born } = store.facts();
  if (born !== undefined) field('born').value = String(born);
  store.onChange(draw);
  draw();
})();
