'use strict';
// What every page shares: making elements, naming a movement with its mark, and keeping the site for when there is no network.
(() => {
  const root = globalThis.document ? document.documentElement : null;
  const language = root ? root.lang || 'en' : globalThis.rungbookLanguage || 'en';
  const plural = new Intl.PluralRules(language);
  const numbers = new Intl.NumberFormat(language, /** @type {any} */ ({ useGrouping: 'min2', maximumFractionDigits: 6 }));
  /** A number as the language writes it. @param {number} n */
  const number = (n) => numbers.format(n);

  /** The entry of a key in the plural form that `n` asks for. @param {string} key @param {Record<string, unknown>} values */
  const form = (key, values) => {
    const entry = (globalThis.rungbookWords || {})[key];
    if (entry === undefined) return key;
    return typeof entry === 'string' ? entry : entry[plural.select(Number(values.n))] || entry.other;
  };
  /** An entry of the words file with its placeholders filled. The words that a script says stand in its first line when it is
   * published. @param {string} key @param {Record<string, string | number>} [values] */
  const say = (key, values = {}) => form(key, values).replace(/\{([a-z_]+)\}/g, (hole, name) => {
    const value = values[name];
    return value === undefined ? hole : typeof value === 'number' ? number(value) : value;
  });
  /** The same with elements in the placeholders. @typedef {Node | string | null} Part
   * @param {string} key @param {Record<string, number | Part | Part[]>} values @returns {Part[]} */
  const sayNodes = (key, values) => form(key, values).split(/(\{[a-z_]+\})/).flatMap((part) => {
    const value = /^\{/.test(part) ? values[part.slice(1, -1)] : part;
    return value === undefined ? part : typeof value === 'number' ? number(value) : value;
  }).filter((part) => part !== '' && part !== null);
  globalThis.rungbook = Object.assign(globalThis.rungbook || {}, { words: { say, sayNodes, number } });
  if (!root) return;

  // ---- the reader's units: what differs says the other in `data-other`

  const UNITS = ['metric', 'imperial'];
  const UNITS_KEY = `rungbook:${root.dataset.site}:units`;
  const ofSchool = root.dataset.units || 'metric';
  const ofOther = UNITS[1 - UNITS.indexOf(ofSchool)];
  let chosen = ofSchool;
  try {
    const kept = JSON.parse(localStorage.getItem(UNITS_KEY) || 'null');
    if (UNITS.includes(kept)) chosen = kept;
  } catch {
    // Nothing is kept here: the school's units stand until the reader chooses on this page.
  }
  /** @type {(() => void)[]} */
  const onUnits = [];
  const drawUnits = () => {
    const differing = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-other]'));
    for (const element of differing) {
      const { dataset } = element;
      if (dataset.own === undefined && chosen === ofSchool) continue;
      if (dataset.own === undefined) dataset.own = element.textContent || '';
      const text = chosen === ofSchool ? dataset.own : dataset.other || '';
      if (element.textContent !== text) element.textContent = text;
    }
    const place = document.getElementById('units');
    if (!place) return;
    if (differing.length) place.hidden = false;
    for (const button of place.querySelectorAll('button')) {
      const pressed = String(button.value === chosen);
      if (button.getAttribute('aria-pressed') !== pressed) button.setAttribute('aria-pressed', pressed);
    }
  };
  /** @param {string} units */
  const choose = (units) => {
    chosen = units;
    try {
      localStorage.setItem(UNITS_KEY, JSON.stringify(units));
    } catch {
      // The choice lasts as long as the page.
    }
    drawUnits();
    onUnits.forEach((act) => act());
  };
  for (const button of document.querySelectorAll('#units button')) button.addEventListener('click', () => choose(/** @type {HTMLButtonElement} */ (button).value));
  drawUnits();
  let waiting = false;
  new MutationObserver(() => {
    if (waiting) return;
    waiting = true;
    queueMicrotask(() => { waiting = false; drawUnits(); });
  }).observe(document.body, { childList: true, subtree: true });
  const units = {
    ofSchool, ofOther, current: () => chosen,
    /** @param {() => void} act */
    onChange: (act) => onUnits.push(act),
  };

  /**
   * Makes an element. Text becomes text nodes: nothing that a reader typed or imported is ever read as HTML.
   * @param {string} name @param {Record<string, unknown>} [set] attributes; `on` holds listeners, `class` and `text` as they say
   * @param {(Node | string | null)[]} inside @returns {HTMLElement}
   */
  const make = (name, set = {}, ...inside) => {
    const element = document.createElement(name);
    for (const [key, value] of Object.entries(set)) {
      if (value === null || value === undefined || value === false) continue;
      if (key === 'on') Object.entries(/** @type {Record<string, EventListener>} */ (value)).forEach(([event, act]) => element.addEventListener(event, act));
      else if (key === 'text') element.textContent = String(value);
      else element.setAttribute(key, value === true ? '' : String(value));
    }
    element.append(...inside.filter((part) => part !== null).map((part) => /** @type {Node | string} */ (part)));
    return element;
  };

  /** A space that does not break: a mark stays beside the last word of its name. */
  const TIE = '\u00a0';
  /** A movement's caution mark, if it has one. @param {Tables} tables @param {number} m */
  const markOf = (tables, m) => {
    const mark = tables.marks[tables.mark[m]];
    return mark ? make('a', { class: `mark mark-${mark.signal}`, 'data-caution': mark.signal, href: mark.href, title: mark.says },
      make('span', { class: 'mark-word', text: mark.word }), make('span', { class: 'aside', text: `: ${mark.says}` })) : null;
  };

  /** A movement's name with its signal word, for texts. @param {Tables} tables @param {number} m */
  const marked = (tables, m) => {
    const mark = tables.marks[tables.mark[m]];
    return mark ? say('part.name_with_signal', { name: tables.names[m], signal: mark.word }) : tables.names[m];
  };

  /** A movement's name as a link with its caution mark. @param {Tables} tables @param {number} m */
  const named = (tables, m) => {
    const mark = markOf(tables, m);
    return make('span', { class: 'named', 'data-movement': tables.ids[m] },
      make('a', { href: `${tables.ids[m]}.html`, text: tables.names[m] }), mark ? TIE : null, mark);
  };

  /** A skill's name as a link with its goal's mark. @param {Tables} tables @param {Skill} skill @param {number} goal */
  const namedSkill = (tables, skill, goal) => make('span', { class: 'named', 'data-skill': skill.id },
    make('a', { href: `${skill.id}.html`, text: skill.plain }), TIE, markOf(tables, goal));

  /** Names with commas between. @param {Tables} tables @param {number[]} list */
  const namedList = (tables, list) => list.flatMap((m, i) => [i ? say('list.separator') : null, named(tables, m)]);

  /** The element with an id that the page's template is sure to have. @param {string} id */
  const byId = (id) => {
    const found = document.getElementById(id);
    if (!found) throw new Error(`the page has no element ${id}`);
    return found;
  };

  /** Offers a text as a file. @param {string} name @param {string} content @param {string} type */
  const download = (name, content, type) => {
    const url = URL.createObjectURL(new Blob([content], { type }));
    const link = make('a', { href: url, download: name, hidden: true });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(url), 60000);
  };

  /** Asks in the page's own words; resolves to what was chosen, or null. @param {string | (Node | string)[]} title @param {(Node | string)[]} inside @param {[string, string][]} choices value and words
   * @returns {Promise<string | null>} */
  const ask = (title, inside, choices) => new Promise((resolve) => {
    const head = make('h2', { id: 'ask-head', tabindex: '-1', autofocus: true, }, ...[title].flat());
    const buttons = choices.map(([value, says], i) => make('button', { value, type: 'submit', class: value === '' || (i > 0 && choices.every(([any]) => any !== '')) ? 'quiet' : null, text: says }));
    const dialog = /** @type {HTMLDialogElement} */ (make('dialog', { 'aria-labelledby': 'ask-head' },
      make('form', { method: 'dialog' }, head, ...inside, make('p', { class: 'acts' }, ...buttons))));
    dialog.addEventListener('close', () => {
      dialog.remove();
      resolve(dialog.returnValue || null);
    });
    document.body.append(dialog);
    dialog.showModal();
  });

  /** Says what is wrong with a field where it stands: the field names the sentence, and has the focus. Without a reason all of its form
   * is well again. @param {Element} input @param {HTMLElement} fault with an id @param {string} why */
  const blame = (input, fault, why) => {
    fault.textContent = why;
    (input.closest('form, article') || document).querySelectorAll('[aria-invalid]').forEach((field) => field.removeAttribute('aria-invalid'));
    if (why === '') return;
    input.setAttribute('aria-invalid', 'true');
    input.setAttribute('aria-describedby', fault.id);
    /** @type {HTMLElement} */ (input).focus();
  };

  /** Draws anew, and leaves the focus with the same control, or else with what is said to be its place: never with the whole page.
   * @param {() => void} draw @param {string} place the id of an element that can have it */
  const hold = (draw, place) => {
    const was = document.activeElement;
    draw();
    if (!was || was === document.body || document.activeElement !== document.body) return;
    const to = (was.id && document.getElementById(was.id)) || document.getElementById(place);
    if (to) to.focus({ preventScroll: true });
    const head = document.querySelector('h1');
    if (document.activeElement !== document.body || !head) return;
    head.tabIndex = -1;
    head.focus({ preventScroll: true });
  };

  /** What is still to be drawn, by whom. @type {{ place: string, step: () => void }[]} */
  let steps = [];
  const busy = document.querySelector('main');
  const takeStep = () => {
    const first = steps.shift();
    if (busy && !steps.length) busy.removeAttribute('aria-busy');
    if (first) hold(first.step, first.place);
  };
  const takeSteps = () => {
    try {
      takeStep();
    } finally {
      if (steps.length) setTimeout(takeSteps);
    }
  };
  /** Draws once what was just done is seen, each step in a task of its own, so that the page answers meanwhile; the page is busy until the
   * last. What the same place still had to draw gives way. A page that is left is drawn to the end first. @param {(() => void)[]} all @param {string} place as in `hold` */
  const later = (all, place) => {
    const isUnderWay = steps.length > 0;
    steps = [...steps.filter((one) => one.place !== place), ...all.map((step) => ({ step, place }))];
    if (isUnderWay) return;
    if (busy) busy.setAttribute('aria-busy', 'true');
    if (document.hidden) setTimeout(takeSteps);
    else requestAnimationFrame(() => setTimeout(takeSteps));
  };
  addEventListener('pagehide', () => { while (steps.length) takeStep(); });

  /** Follows a link of the site, so that what storage refused goes along. @param {string} href */
  const go = (href) => {
    const link = make('a', { href, hidden: true });
    document.body.append(link);
    link.click();
  };

  // ---- scripts and styles that a page loads only when they are asked for, and the worker

  /** @type {any} */
  let policy = null;
  /** Our own script's address, as the page's policy demands it. @param {string} url @returns {any} */
  const trusted = (url) => {
    const tt = /** @type {any} */ (globalThis).trustedTypes;
    if (tt && !policy) policy = tt.createPolicy('rungbook-worker', { createScriptURL: (/** @type {string} */ of) => of });
    return policy ? policy.createScriptURL(url) : url;
  };
  /** What was asked for, by its address: each is loaded once. @type {Map<string, Promise<unknown>>} */
  const loads = new Map();
  /** @param {string} src */
  const loaded = (src) => {
    const known = loads.get(src);
    if (known) return known;
    const waits = new Promise((resolve, reject) => {
      const on = { load: resolve, error: () => { loads.delete(src); reject(new Error(src)); } };
      const script = /** @type {HTMLScriptElement} */ (make('script', { on }));
      if (src.includes('.js?')) script.src = trusted(src);
      document.head.append(script.src ? script : make('link', { rel: 'stylesheet', href: src, on }));
    });
    loads.set(src, waits);
    return waits;
  };
  /** Whether somebody's results are here, or come along in the address. */
  const isKnown = () => Boolean(document.documentElement.dataset.known || document.documentElement.dataset.heeds) || location.hash.startsWith('#visit=');
  /** Whether what a page told last still holds: then nothing is planned for it. */
  const isTold = () => Boolean(globalThis.rungbook.told && globalThis.rungbook.told.holds());
  /** Loads what an element's parts name in `data-src`, to run one after the other; what only plans use waits for who has something to plan.
   * @param {string} id @returns {Promise<void>} */
  const load = async (id) => {
    const parts = /** @type {HTMLElement[]} */ ([...document.querySelectorAll(`#${id} [data-src]`)]), known = isKnown();
    const plans = id !== 'mine' || (known && !isTold()), all = parts.filter((part) => plans || !part.closest('#plan-here')).map(({ dataset: { src = '' } }) => src)
      .filter((src) => /^(?:theme|data)[/][a-z-]+[.](?:js|css)[?]v=[0-9a-f]+$/.test(src) && !document.querySelector(`script[defer][src="${src}"], link[rel=stylesheet][href="${src}"]`));
    // All are on their way at once.
    for (const href of all.slice(1).filter((src) => src.includes('.js?') && !loads.has(src))) document.head.append(make('link', { rel: 'preload', as: 'script', href }));
    for (const src of all) await loaded(src);
  };
  /** The same, with the page busy until it is there. @param {string} id @returns {Promise<void>} */
  const bring = async (id) => {
    if (busy) busy.setAttribute('aria-busy', 'true');
    try {
      await load(id);
    } finally {
      if (busy && !steps.length) busy.removeAttribute('aria-busy');
    }
  };
  /** What waits for one's own results being worked out here. @type {(() => void)[]} */
  const forWork = [];
  /** @type {Promise<void> | null} */
  let working = null;
  /** Loads what works out one's own results, once. */
  const work = () => {
    if (working) return working;
    working = bring('mine').then(() => { forWork.splice(0).forEach((act) => act()); });
    // What did not come is asked for anew the next time.
    working.catch(() => { working = null; });
    return working;
  };
  /** Calls back once one's own results are worked out here: at once where that is done. @param {() => void} act */
  const onWork = (act) => { if (globalThis.rungbook.states) act(); else forWork.push(act); };
  /** Who has results here gets them worked out at once; who has none on a page that is about them once it is painted, and elsewhere when a
   * number is entered. */
  const begin = () => {
    const mine = document.getElementById('mine'), button = document.querySelector('#number-form button');
    if (!mine) return;
    const start = () => { work().catch(() => {}); };
    const whenKnown = () => { if (isKnown()) start(); };
    // Until then nothing that is shown can be pressed.
    const oncePainted = () => {
      if (busy) busy.setAttribute('aria-busy', 'true');
      if (document.hidden) setTimeout(start); else requestAnimationFrame(() => setTimeout(start));
    };
    // What was told last is shown by a script after this one.
    if (isKnown()) document.addEventListener('DOMContentLoaded', () => (isTold() ? oncePainted : start)());
    else if (mine.classList.contains('for-all')) oncePainted();
    else if (button instanceof HTMLElement) {
      byId('number-here').hidden = false;
      const first = () => { if (!globalThis.rungbook.states) work().then(() => { button.removeEventListener('click', first); button.click(); }, () => { byId('number-news').textContent = say('number.not_loaded'); }); };
      button.addEventListener('click', first);
    }
    addEventListener('storage', whenKnown);
    addEventListener('pageshow', whenKnown);
  };
  /** Has the worker keep pages for when there is no network; `whole` with the figures that they show. @param {string[]} pages @param {boolean} [whole] */
  const keepPages = async (pages, whole = false) => {
    if (!document.documentElement.dataset.worker || !('serviceWorker' in navigator) || !location.protocol.startsWith('http')) return;
    const { active } = await navigator.serviceWorker.ready;
    if (active) active.postMessage({ keep: pages, whole });
  };

  globalThis.rungbook = Object.assign(globalThis.rungbook || {}, { page: { make, named, namedSkill, namedList, marked, byId, download, ask, blame, hold, later, go, load, bring, onWork, keepPages, units } });
  begin();

  const worker = document.documentElement.dataset.worker;
  // From disk a browser may not read the manifest, and would complain.
  if (worker && location.protocol.startsWith('http')) document.head.append(make('link', { rel: 'manifest', href: 'manifest.webmanifest' }));

  // Paper shows what a screen folds, also where styles cannot open it.
  if (!CSS.supports('selector(::details-content)')) addEventListener('beforeprint', () => document.querySelectorAll('details.unroll').forEach((part) => { /** @type {HTMLDetailsElement} */ (part).open = true; }));

  // Kept pages: only on a hosted site, and never where the coach rehearses.
  if (worker && 'serviceWorker' in navigator && location.protocol.startsWith('http')) {
    const had = Boolean(navigator.serviceWorker.controller);
    navigator.serviceWorker.register(trusted(worker), { updateViaCache: 'none' }).then(() => {
      const { skill } = document.body.dataset;
      return skill ? keepPages([`${skill}.html`, `self-test-${skill}.html`]) : null;
    }).catch(() => {});
    navigator.serviceWorker.addEventListener('controllerchange', () => { if (had) document.body.dataset.newer = 'true'; });
  }
})();
