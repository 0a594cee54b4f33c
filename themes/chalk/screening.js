'use strict';
// The health questions: the answers are looked up in the page's own table and are not kept; only what follows, the classes that are
// left alone, the year of birth and the day are. What a clinician allowed is kept by class, with the day, by whom, and until when.
(() => {
  const { results, store, page, adult } = globalThis.rungbook;
  const { LIMITS, saysOn, isChild } = globalThis.rungbook.health;
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

  /** The longest that a clearance lasts after these answers. @param {Exported['screened']} screened */
  const most = (screened) => Math.min((screened && screened.lasts) || LIMITS.clearance, LIMITS.clearance);
  /** What follows, in a sentence: never that the answers raise nothing where they did. @param {NonNullable<Exported['screened']>} screened @param {string | null} says @param {boolean} stale @param {boolean} young @returns {PagePart[]} */
  const sentence = (screened, says, stale, young) => {
    if (stale || says === null) return [say('screening.says_again')];
    if (says === 'ask') return [screened.until ? say('screening.says_run_out') : say('screening.says_ask')];
    if (screened.until) {
      return [says === 'clear' ? say('screening.says_allowed_hard') : say('screening.says_allowed_light'), ' ', ...allowedBy(screened), ' ',
        make('button', { type: 'button', class: 'quiet', text: say('screening.take_back'), on: { click: () => store.put('screened', { says: 'ask', on: results.dayText(results.today()), ...lasting(screened) }) } })];
    }
    if (says !== 'clear') return [say('screening.says_light')];
    return [...(young ? [] : [say(left().length ? 'screening.says_spared' : 'screening.says_clear'), ' ']), say('screening.says_fresh')];
  };

  /** How long a clearance lasts, kept where it is less than a year: which answer says so is not. @param {Exported['screened']} screened */
  const lasting = (screened) => (screened && screened.lasts ? { lasts: screened.lasts } : {});
  /** The questions of the goal, where one is chosen. */
  const onward = () => { const { goal } = store.facts(); return goal && goal === store.get('goal-test') ? `self-test-${goal}.html` : 'self-test.html'; };

  const toTest = () => make('a', { class: 'act', href: onward(), text: say('screening.to_self_test') });

  const draw = () => {
    const { screened, born } = store.facts(), today = results.today();
    const lines = leftLines();
    outcome.hidden = !screened;
    clearance.hidden = true;
    globalThis.rungbook.health.draw();
    if (!screened) return;
    const on = Number(results.readDay(screened.on)), age = results.ageOn(born === undefined ? null : born, today);
    const says = saysOn({ says: screened.says, on, until: screened.until ? Number(results.readDay(screened.until)) : null, lasts: screened.lasts }, today, born);
    const stale = says !== 'ask' && today > on + LIMITS.clearance, child = isChild(born, today), young = age !== null && age < LIMITS.youth;
    outcome.replaceChildren(make('h3', { tabindex: -1, id: 'outcome-head', text: say('screening.what_follows') }),
      ...(child ? [make('p', {}, make('strong', { text: say('screening.child') }))] : [...(young ? [make('p', {}, make('strong', { text: say('screening.young') }))] : []), make('p', {}, ...sentence(screened, says, stale, young))]), make('p', { class: 'hint' }, ...sayNodes('screening.answered_on', { day: day(screened.on) })),
      ...(age !== null && age < LIMITS.adult ? [make('p', { text: say('screening.growing') })] : []),
      ...(lines.length ? [make('p', { text: say('screening.left') }), make('ul', {}, ...lines)] : []),
      ...(says === 'ask' || stale || says === null ? [] : [make('div', { class: 'invites' }, young ? adult.ask(toTest) : toTest())]));
    const open = new Set(left().filter(({ entry: of }) => of.class && !allowed(of)).map(({ entry: of }) => of.class));
    for (const item of /** @type {NodeListOf<HTMLElement>} */ (clearance.querySelectorAll('[data-class]'))) item.hidden = !open.has(item.dataset.class || '');
    byId('clear-effort').hidden = says !== 'ask';
    byId('clear-classes').hidden = open.size === 0;
    clearance.hidden = child || (says !== 'ask' && open.size === 0);
    field('clear-on').max = results.dayText(today);
    if (!field('clear-on').value) field('clear-on').value = results.dayText(today);
  };

  /** What follows is seen whole, or from its head on where it is taller than the screen; the focus goes to its head. */
  const toOutcome = () => {
    byId('outcome-head').focus({ preventScroll: true });
    outcome.scrollIntoView({ block: outcome.offsetHeight > globalThis.innerHeight ? 'start' : 'nearest' });
  };
  /** The year that stands in its field; null while it is none. */
  const bornOf = () => { const born = field('born').value.trim(); return /^[0-9]{4}$/.test(born) && results.fact('born', Number(born), results.today()).why === '' ? Number(born) : null; };
  /** Asks by the year of birth, which comes first: what is asked under an age or from one on, and nothing of a child, whom no answer lets train by a page. */
  const askByAge = () => {
    const born = bornOf(), age = results.ageOn(born, results.today()), isAsked = born !== null && !isChild(born, results.today());
    byId('asked').hidden = !isAsked;
    byId('no-to-the-rest').hidden = !isAsked;
    for (const set of /** @type {NodeListOf<HTMLElement>} */ (questions.querySelectorAll('fieldset'))) {
      const { under, from } = set.dataset;
      // The birthday counts as still to come: who is of age only after it is asked both.
      set.hidden = age !== null && ((under !== undefined && age >= Number(under)) || (from !== undefined && age + 1 < Number(from)));
    }
  };
  /** The questions that stand on the page: none before the year, of a child none. */
  const shown = () => (byId('asked').hidden ? [] : [.../** @type {NodeListOf<HTMLElement>} */ (questions.querySelectorAll('fieldset:not([hidden])'))]);
  const nameOf = (/** @type {HTMLElement} */ set) => /** @type {HTMLInputElement} */ (set.querySelector('input')).name;
  questions.hidden = false;
  field('born').addEventListener('input', askByAge);
  // Who has read them all and says no to the rest has answered them; how regularly somebody exercises is said by nothing else.
  byId('no-to-the-rest').addEventListener('click', () => {
    // What is kept as a pain is not answered with no.
    const newest = new Map(store.entries('pain').map(({ entry }) => [entry.part, entry]));
    const hurts = [...newest.values()].some(({ score, signs }) => score >= LIMITS.pain[0] || signs);
    for (const set of shown().filter(({ dataset }) => dataset.column !== 'regular')) {
      if (!set.querySelector('input:checked')) /** @type {HTMLInputElement} */ (set.querySelector(`input[value="${hurts && nameOf(set) === 'injury' ? 'yes' : 'no'}"]`)).checked = true;
    }
    questions.requestSubmit();
  });
  // The answers stay in sight as they were given until the page is left, and are kept nowhere.
  const written = () => JSON.stringify([field('born').value, ...new FormData(questions)]);
  let read = '';
  addEventListener('pagehide', () => {
    const born = field('born').value;
    questions.reset();
    field('born').value = born;
    read = written();
  });
  questions.addEventListener('submit', (event) => {
    event.preventDefault();
    const today = results.today(), born = bornOf(), bornFine = born !== null;
    const sets = shown();
    const open = sets.find((set) => yes(nameOf(set)) === null);
    // What has just been answered is shown again, and nothing is asked anew.
    if (written() === read && !outcome.hidden && bornFine) {
      toOutcome();
      return;
    }
    byId('born-fault').textContent = '';
    byId('questions-fault').textContent = '';
    if (bornFine && open) open.append(byId('questions-fault'));
    const first = open && open.querySelector('input');
    if (!bornFine) page.blame(field('born'), byId('born-fault'), say('screening.write_year'));
    else page.blame(first || field('born'), byId('questions-fault'), first ? say('screening.answer_each') : '');
    if (!bornFine || first) return;
    const said = (/** @type {string} */ column) => sets.filter((set) => set.dataset.column === column).some((set) => yes(nameOf(set)));
    const rows = [.../** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('tr[data-outcome]'))];
    const word = (/** @type {string} */ column) => (said(column) ? 'yes' : 'no');
    const row = rows.find(({ dataset }) => dataset.regular === word('regular') && dataset.symptoms === word('symptoms') && ['either', word('disease')].includes(dataset.disease || ''));
    const follows = said('other') || !row || !sets.length ? 'ask' : row.dataset.outcome;
    const raised = sets.filter((set) => set.dataset.column !== 'regular' && yes(nameOf(set)));
    const of = (/** @type {'classes' | 'parts'} */ key) => [...new Set(raised.flatMap((set) => (set.dataset[key] || '').split(' ').filter((id) => id !== '')))];
    const on = results.dayText(today);
    const [classes, parts] = [of('classes'), of('parts')];
    const lasts = Math.min(...raised.map((set) => Number(set.dataset.lasts || LIMITS.clearance)), LIMITS.clearance);
    read = written();
    // New answers take the place of the old ones, and of what those left alone.
    left().forEach(({ key }) => store.remove(key));
    classes.forEach((id) => store.add('restrict', { class: id, on, by: SCREENING }));
    parts.forEach((id) => store.add('restrict', { part: id, on, by: SCREENING }));
    store.put('born', born);
    store.put('screened', { says: follows, on, ...(lasts < LIMITS.clearance ? { lasts } : {}) });
    toOutcome();
  });

  clearance.addEventListener('submit', (event) => {
    event.preventDefault();
    const today = results.today(), by = field('clear-by').value.trim(), { screened } = store.facts();
    const on = results.readDay(field('clear-on').value), until = results.readDay(field('clear-until').value);
    const chosen = /** @type {HTMLInputElement | null} */ (byId('clear-effort').hidden ? null : clearance.querySelector('input[name="effort"]:checked'));
    const classes = [.../** @type {NodeListOf<HTMLInputElement>} */ (clearance.querySelectorAll('[data-class]:not([hidden]) input:checked'))].map(({ value }) => value);
    /** @type {[boolean, string, string][]} */
    const faults = [
      [!chosen && classes.length === 0, say('screening.clear_what'), ''],
      [by === '', say('screening.clear_who'), 'clear-by'],
      [on === null || on > today, say('screening.clear_day'), 'clear-on'],
      [until === null || on === null || until < today || until > on + most(screened), say('screening.clear_until', { n: most(screened) }), 'clear-until'],
    ];
    const fault = faults.find(([wrong]) => wrong);
    const at = fault && fault[2] ? field(fault[2]) : /** @type {HTMLElement} */ (clearance.querySelector(byId('clear-effort').hidden ? '[data-class]:not([hidden]) input' : 'input'));
    page.blame(at, byId('clear-fault'), fault ? fault[1] : '');
    if (fault) return;
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
    // Who reads the copy sees that the answers said to ask first, and who says that it was allowed.
    if (chosen) store.put('screened', { says: chosen.value, ...of, was: 'ask', ...lasting(screened) });
    clearance.reset();
    draw();
    toOutcome();
  });
  const { born } = store.facts();
  if (born !== undefined) field('born').value = String(born);
  askByAge();
  read = written();
  store.onChange(draw);
  draw();
})();
