'use strict';
// Results on this device. Every entry has a key of its own, so that two open tabs never write over each other. Where storage is
// full or forbidden the entries live as long as the visit, handed from page to page behind the `#` of a link, and the page says so.
(() => {
  const { own: OWN, prefix: PREFIX } = globalThis.rungbook.health;
  const PROBE = `${PREFIX}probe`;
  /** Before the names of what a page told last, which is nothing that was entered. */
  const TOLD = 'told:';
  /** What the health questions came to, and what was allowed since: never handed on in an address, whoever made it. */
  const NEVER_CARRIED = ['screened', 'cleared', 'fit', 'parent', 'coach'];
  const isCarried = (/** @type {string} */ key) => !NEVER_CARRIED.includes(key.split(':')[0]);
  const kinds = () => globalThis.rungbook.results.KINDS;

  /** What storage refused, and what only this page knows. @type {Map<string, string>} */
  const visit = new Map();
  /** Keys that were taken away though storage refused. @type {Set<string>} */
  const gone = new Set();
  let trouble = '';
  /** What is kept, as it was read in this task. @type {{ all: ReturnType<typeof gathered>, facts: ReturnType<typeof facts>, isEmpty: boolean, exported: Exported | null } | null} */
  let seen = null;
  /** @type {(() => void)[]} */
  const listeners = [];
  const changed = () => {
    seen = null;
    listeners.forEach((act) => act());
  };

  const storage = () => {
    try {
      return globalThis.localStorage;
    } catch {
      trouble = 'forbidden';
      return null;
    }
  };

  /** What storage of this tab alone keeps, where the browser's own is full. */
  const ofTab = () => {
    try {
      return globalThis.sessionStorage;
    } catch {
      return null;
    }
  };

  /** @param {string} key */
  const read = (key) => {
    if (visit.has(key)) return visit.get(key) || null;
    if (gone.has(key)) return null;
    try {
      const kept = storage(), tab = isCarried(key) ? null : ofTab();
      return (tab && tab.getItem(PREFIX + key)) || (kept ? kept.getItem(PREFIX + key) : null);
    } catch {
      return null;
    }
  };
  /** Whether it is kept for longer than the visit. @param {string} key @param {string} value */
  const write = (key, value) => {
    seen = null;
    gone.delete(key);
    try {
      const kept = storage();
      if (!kept) throw new Error('forbidden');
      try {
        kept.setItem(PREFIX + key, value);
      } catch {
        // What is only kept to be shown sooner gives way.
        keys().filter((of) => of.startsWith(TOLD)).forEach((of) => kept.removeItem(PREFIX + of));
        kept.setItem(PREFIX + key, value);
      }
      visit.delete(key);
      return true;
    } catch (error) {
      trouble = error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : trouble || 'forbidden';
      visit.set(key, value);
      try {
        const tab = isCarried(key) ? null : ofTab();
        if (tab) tab.setItem(PREFIX + key, value);
      } catch {
        // It lives as long as this page.
      }
      return false;
    }
  };
  /** @param {string} key */
  const remove = (key) => {
    seen = null;
    visit.delete(key);
    try {
      const kept = storage(), tab = isCarried(key) ? null : ofTab();
      if (tab) tab.removeItem(PREFIX + key);
      if (kept) kept.removeItem(PREFIX + key);
    } catch {
      gone.add(key);
    }
  };
  /** Another person's keys, and who is here, are nobody's results. @param {string} key */
  const isMine = (key) => !key.startsWith('@') && key !== 'who' && key !== 'units';
  const keys = () => {
    const out = new Set(visit.keys());
    try {
      const kept = storage();
      for (let i = 0; kept && i < kept.length; i += 1) {
        const key = kept.key(i);
        if (key && key.startsWith(PREFIX) && isMine(key.slice(PREFIX.length)) && !gone.has(key.slice(PREFIX.length))) out.add(key.slice(PREFIX.length));
      }
    } catch {
      // Nothing is kept.
    }
    return [...out].sort();
  };

  /** Names that sort by time, with chance against two in one moment. */
  let last = 0;
  const name = () => {
    last = Math.max(Date.now(), last + 1);
    const chance = globalThis.crypto.getRandomValues(new Uint32Array(1))[0].toString(36).padStart(7, '0');
    return `${last.toString(36).padStart(9, '0')}-${chance}`;
  };

  /** @param {string | null} written @returns {any} */
  const parsed = (written) => {
    try {
      return written === null ? null : JSON.parse(written);
    } catch {
      return null;
    }
  };

  /** What was read before, by what stands there: an entry is checked once. @type {Map<string, { text: string, of: { sound: any, why: string } }>} */
  const checked = new Map();
  /** @param {string} key @param {string} kind @returns {{ sound: any, why: string, text: string }} */
  const readEntry = (key, kind) => {
    const text = read(key) || '', known = checked.get(key);
    if (known && known.text === text) return { ...known.of, text };
    const { results } = globalThis.rungbook;
    const of = results.entry(kind, parsed(text), results.today());
    checked.set(key, { text, of });
    return { ...of, text };
  };
  /** The entries of some kinds, each with its key, oldest day first, then as it was entered; what is no sound entry apart. @param {string[]} which
   * @returns {{ sound: Record<string, { key: string, entry: any }[]>, odd: Odd[] }} */
  const gathered = (which) => {
    /** @type {Record<string, { key: string, entry: any }[]>} */
    const sound = Object.fromEntries(which.map((kind) => [kind, []]));
    /** @type {Odd[]} */
    const odd = [];
    for (const key of keys()) {
      const kind = key.slice(0, key.indexOf(':'));
      if (!Object.hasOwn(sound, kind)) continue;
      const of = readEntry(key, kind);
      if (of.sound) sound[kind].push({ key, entry: of.sound });
      else odd.push({ key, why: of.why, text: of.text });
    }
    for (const kind of which) sound[kind].sort((a, b) => (a.entry.on < b.entry.on ? -1 : a.entry.on > b.entry.on ? 1 : a.key < b.key ? -1 : 1));
    return { sound, odd };
  };
  /** What is kept, read once for all who ask in one task. */
  const now = () => {
    if (!seen) {
      seen = { all: gathered([...kinds(), 'undated']), facts: facts(), isEmpty: !keys().some(globalThis.rungbook.health.isResult), exported: null };
      Promise.resolve().then(() => { seen = null; });
    }
    return seen;
  };
  /** @param {string} kind */
  const entries = (kind) => [...now().all.sound[kind]];
  /** What is kept about the person, as it stands. @returns {Record<string, any>} */
  const aboutMe = () => {
    const kept = parsed(read('about'));
    return kept !== null && typeof kept === 'object' && !Array.isArray(kept) ? kept : {};
  };
  /** The facts about the person that are sound, and those that are not. */
  const facts = () => {
    const { results } = globalThis.rungbook, day = results.today();
    /** @type {Record<string, any>} */
    const said = { ...aboutMe(), screened: parsed(read('screened')) };
    /** @type {Record<string, any>} */
    const sound = {};
    /** @type {Odd[]} */
    const odd = [];
    for (const key of results.FACTS) {
      if (said[key] === undefined || said[key] === null) continue;
      const of = results.fact(key, said[key], day);
      if (of.why === '') sound[key] = of.sound;
      else odd.push({ key: key === 'screened' ? key : `about:${key}`, why: of.why, text: JSON.stringify(said[key]) });
    }
    return { sound, odd };
  };

  /** Under 16 two adults come before any test or session: that a parent agrees is said once, that the coach is in the room on each day. */
  const adults = (() => {
    const { LIMITS, isChild } = globalThis.rungbook.health;
    /** Under which keys of this device it is kept, each with the day on which it was said. */
    const KEYS = /** @type {const} */ (['parent', 'coach']);
    /** Whether one of them is said, the coach today. @param {string} key */
    const isSaid = (key) => { const { results } = globalThis.rungbook, on = parsed(read(key)); return key === 'coach' ? on === results.dayText(results.today()) : typeof on === 'string'; };
    /** Whether somebody is of that age, and one of them is still to be said today; of a child a page asks nothing. */
    const isDue = () => {
      const { results } = globalThis.rungbook, { born } = now().facts.sound, age = results.ageOn(born === undefined ? null : born, results.today());
      return age !== null && age < LIMITS.youth && !isChild(born, results.today()) && !KEYS.every(isSaid);
    };
    return { KEYS, isSaid, isDue };
  })();

  /** What the last plan said is next: no longer so once anything is known anew. */
  const NEXT = 'next';
  /** Where a number of one's own is kept, the browser is asked once to keep it for good. @param {string} kind */
  const askToLast = (kind) => {
    const { storage: lasting } = globalThis.navigator || {};
    if (!['tested', 'trained'].includes(kind) || !lasting || !lasting.persist || read('lasting')) return;
    write('lasting', 'true');
    lasting.persist().catch(() => {});
  };
  /** Several entries at once. @param {[string, object][]} list @param {boolean} [soon] whether those who listen hear of it once what was just done is seen
   * @returns {string[]} their keys */
  const addAll = (list, soon = false) => {
    const made = list.map(([kind, entry]) => {
      const key = `${kind}:${name()}`;
      write(key, JSON.stringify(entry));
      askToLast(kind);
      return key;
    });
    remove(NEXT);
    if (soon) globalThis.rungbook.page.later([changed], 'store');
    else changed();
    return made;
  };
  /** @param {string} kind @param {object} entry @param {boolean} [soon] as in `addAll` @returns {string} its key */
  const add = (kind, entry, soon) => addAll([[kind, entry]], soon)[0];

  /** Everything as it is exported. @returns {Exported} */
  const all = () => {
    const kept = now(), { sound } = kept.all;
    if (kept.exported) return kept.exported;
    /** @type {any} */
    const out = { results: 1, ...kept.facts.sound };
    for (const kind of kinds()) {
      const bare = sound[kind].map(({ entry }) => entry);
      if (bare.length || ['tested', 'trained', 'paused'].includes(kind)) out[kind] = bare;
    }
    kept.exported = out;
    return out;
  };
  /** What is kept here and is no sound entry: it decides nothing, and is not lost. @returns {Odd[]} */
  const odd = () => [...now().facts.odd, ...now().all.odd];

  /** Which entries of one list another does not have: as many equal ones as are there more often. @param {any[]} list @param {any[]} other */
  const beyond = (list, other) => {
    /** @type {Map<string, number>} */
    const known = new Map();
    for (const entry of other) known.set(JSON.stringify(entry), (known.get(JSON.stringify(entry)) || 0) + 1);
    return list.filter((entry) => {
      const text = JSON.stringify(entry), n = known.get(text) || 0;
      known.set(text, n - 1);
      return n <= 0;
    });
  };
  /** Writes what an export holds beside what is kept: in its order, equal entries as often as they are on one side.
   * @param {any} exported sound @param {boolean} weightToo */
  const takeIn = (exported, weightToo) => {
    let added = 0, same = 0, lost = 0;
    /** @type {string[]} */
    const written = [];
    const { sound } = gathered(kinds());
    const put = (/** @type {string} */ kind, /** @type {any} */ entry) => {
      const key = `${kind}:${name()}`, text = JSON.stringify(entry);
      written.push(key);
      if (!write(key, text)) lost += 1;
      // It was read already.
      checked.set(key, { text, of: { sound: entry, why: '' } });
    };
    for (const kind of kinds()) {
      const theirs = exported[kind] || [], fresh = beyond(theirs, sound[kind].map(({ entry }) => entry));
      fresh.forEach((entry) => put(kind, entry));
      added += fresh.length;
      same += theirs.length - fresh.length;
    }
    const about = { ...aboutMe() };
    for (const key of globalThis.rungbook.results.FACTS) {
      if (key !== 'screened' && exported[key] !== undefined && (about[key] === undefined || (key === 'bodyweight' && weightToo))) about[key] = exported[key];
    }
    const before = read('about');
    if (Object.keys(about).length && !write('about', JSON.stringify(about))) lost += 1;
    // Of two outcomes of the health questions the more careful one stands.
    const careful = ['clear', 'light', 'ask'], own = facts().sound.screened, theirs = exported.screened, outcome = read('screened');
    if (theirs && (!own || careful.indexOf(theirs.says) > careful.indexOf(own.says))) write('screened', JSON.stringify(theirs));
    const undo = () => {
      written.forEach(remove);
      for (const [key, text] of /** @type {[string, string | null][]} */ ([['about', before], ['screened', outcome]])) {
        if (text === null) remove(key);
        else write(key, text);
      }
    };
    return { added, same, lost, undo };
  };
  /** A copy is taken in whole, or not at all where storage has no room for it; where nothing may be kept it lives as long as the visit. @param {() => ReturnType<typeof takeIn>} take */
  const whole = (take) => {
    remove(NEXT);
    const was = trouble;
    const { added, same, lost, undo } = take();
    const fits = lost === 0 || trouble !== 'full';
    if (!fits) {
      undo();
      trouble = was;
    }
    changed();
    return { added: fits ? added : 0, same, fits };
  };

  /** How an export stands beside what is kept: entries only there, only here, and tests of one movement and day whose results
   * differ. @param {Exported} exported sound */
  const beside = (exported) => {
    let there = 0, here = 0, unlike = 0;
    const { sound } = gathered(kinds());
    for (const kind of kinds()) {
      const theirs = /** @type {any} */ (exported)[kind] || [], ours = sound[kind].map(({ entry }) => entry);
      const [onlyThere, onlyHere] = [beyond(theirs, ours), beyond(ours, theirs)];
      there += onlyThere.length;
      here += onlyHere.length;
      const day = (/** @type {any} */ of) => `${of.on} ${of.movement}`, days = new Set(onlyHere.map(day));
      if (kind === 'tested') unlike += onlyThere.filter((of) => days.has(day(of))).length;
    }
    return { there, here, unlike };
  };

  // ---- several people on one device

  /** Who has something here: the first one without a number, the others by theirs, each with the name of their copies. @returns {{ who: string, name: string, isHere: boolean }[]} */
  const people = () => {
    const found = new Set(['']);
    try {
      const all = storage();
      for (let i = 0; all && i < all.length; i += 1) {
        const other = /^@([0-9]+):/.exec((all.key(i) || '').startsWith(OWN) ? String(all.key(i)).slice(OWN.length) : '');
        if (other) found.add(other[1]);
      }
      const here = /@([0-9]+):$/.exec(PREFIX);
      if (here) found.add(here[1]);
      return [...found].sort((a, b) => Number(a) - Number(b)).map((who) => {
        const about = parsed(all ? all.getItem(`${OWN}${who ? `@${who}:` : ''}about`) : null);
        return { who, name: about && typeof about.name === 'string' ? about.name : '', isHere: PREFIX === `${OWN}${who ? `@${who}:` : ''}` };
      });
    } catch {
      return [{ who: '', name: '', isHere: true }];
    }
  };
  /** The page is another person's from now on; it loads anew. @param {string} who */
  const become = (who) => {
    const kept = storage();
    if (!kept) return;
    if (who) kept.setItem(`${OWN}who`, who);
    else kept.removeItem(`${OWN}who`);
    location.reload();
  };
  /** Somebody new, by name. @param {string} called */
  const welcome = (called) => {
    const kept = storage(), who = String(Math.max(0, ...people().map(({ who: of }) => Number(of))) + 1);
    if (!kept) return;
    kept.setItem(`${OWN}@${who}:about`, JSON.stringify({ name: called }));
    become(who);
  };

  globalThis.rungbook = Object.assign(globalThis.rungbook || {}, {
    store: {
      adults,
      people, become, welcome,
      entries, add, addAll, all, odd, beside,
      /** Takes in what another export holds beside what is kept. @param {Exported} exported sound @param {boolean} weightToo */
      merge: (exported, weightToo) => whole(() => takeIn(exported, weightToo)),
      /** Everything kept goes, the outcome of the health questions too; an export takes its place. @param {Exported} exported sound */
      replace: (exported) => whole(() => {
        const before = keys().map((key) => /** @type {[string, string | null]} */ ([key, read(key)]));
        before.forEach(([key]) => remove(key));
        const taken = takeIn(exported, true);
        return { ...taken, undo: () => {
          taken.undo();
          before.forEach(([key, text]) => { if (text !== null) write(key, text); });
        } };
      }),
      /** @param {string} key */
      remove: (key) => {
        remove(key);
        remove(NEXT);
        changed();
      },
      erase: () => {
        keys().forEach(remove);
        changed();
      },
      /** Small facts: body weight, the outcome of the health questions. @param {string} key @returns {any} */
      get: (key) => parsed(read(key)),
      /** @param {string} key @param {unknown} value */
      set: (key, value) => {
        write(key, JSON.stringify(value));
        changed();
      },
      /** Keeps what is still being written, and tells no one. @param {string} key @param {unknown} value */
      note: (key, value) => {
        // What was never tried changes what comes first.
        if (key === 'never') remove(NEXT);
        return write(key, JSON.stringify(value));
      },
      /** '', 'full' or 'forbidden'. */
      trouble: () => trouble,
      /** Before the first result there are no states: what is left alone for health's sake is none. */
      isEmpty: () => now().isEmpty,
      /** Whether this browser lets the page keep anything. */
      keeps: () => canKeep('?'),
      /** The facts about the person that are sound. */
      facts: () => now().facts.sound,
      /** Says one of them; null takes it away. @param {string} key @param {unknown} value */
      put: (key, value) => {
        remove(NEXT);
        if (key === 'screened' && value === null) remove(key);
        else if (key === 'screened') write(key, JSON.stringify(value));
        else write('about', JSON.stringify({ ...aboutMe(), [key]: value === null ? undefined : value }));
        changed();
      },
      /** @param {() => void} act */
      onChange: (act) => listeners.push(act),
    },
  });
  // ---- what storage refused goes along when a link of the site is followed; no server sees what stands behind the `#`

  const CARRIED = '#visit=';
  /** Whether this much can be kept; then nothing is taken from an address, whoever made it. @param {string} text */
  const canKeep = (text) => {
    try {
      const kept = storage();
      if (!kept) return false;
      kept.setItem(PROBE, text);
      kept.removeItem(PROBE);
      return true;
    } catch (error) {
      trouble = error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'forbidden';
      return false;
    }
  };
  if (location.hash.startsWith(CARRIED)) {
    const { store, results } = globalThis.rungbook;
    const carried = location.hash.slice(CARRIED.length);
    history.replaceState(null, '', `${location.href.split('#')[0]}#`);
    try {
      if (!canKeep(carried)) {
        JSON.parse(decodeURIComponent(carried)).forEach((/** @type {[string, string]} */ [key, value]) => { if (isCarried(String(key))) visit.set(String(key), String(value)); });
        seen = null;
        results.check(store.all(), results.today());
      }
    } catch {
      visit.clear();
      seen = null;
    }
  }
  /** Every page stands in the site's own folder; another site may stand beside it on one host. @param {{ pathname: string }} address */
  const folder = (address) => address.pathname.slice(0, address.pathname.lastIndexOf('/'));
  document.addEventListener('click', (event) => {
    const link = event.target instanceof Element ? /** @type {HTMLAnchorElement | null} */ (event.target.closest('a[href]')) : null;
    const isOurs = link && link.protocol === location.protocol && link.host === location.host && folder(link) === folder(location);
    const carries = [...visit].filter(([key]) => isCarried(key));
    if (!link || !isOurs || carries.length === 0 || !link.pathname.endsWith('.html') || link.pathname === location.pathname) return;
    const before = link.hash;
    link.hash = CARRIED + encodeURIComponent(JSON.stringify(carries));
    // A link that is copied later says nothing of the visit.
    setTimeout(() => { link.hash = before; });
  }, true);
  // ---- where several people use this device: whose numbers a page shows or takes, below its heading

  const { page, words } = globalThis.rungbook;
  const drawWho = () => {
    const head = document.querySelector('main h1'), all = people(), here = all.find(({ isHere }) => isHere), old = document.getElementById('whose');
    if (old) old.remove();
    if (!head || !here || all.length < 2) return;
    head.after(page.make('p', { class: 'hint', id: 'whose' }, words.say('home.for', { name: here.name || words.say('stand.no_name') }), ' ', page.make('a', { href: 'where-i-stand.html#people', text: words.say('stand.not_me') })));
  };
  if (page && document.querySelector('#guided, #sets, #rests-list, #number-here, #questions, #pain-form')) {
    listeners.push(drawWho);
    drawWho();
  }

  globalThis.addEventListener('storage', (event) => {
    // Another tab's probe is nothing that was kept: two tabs would answer each other for ever.
    if (event.key === null || (event.key.startsWith(PREFIX) && event.key !== PROBE && !event.key.startsWith(PREFIX + TOLD))) changed();
  });
})();
