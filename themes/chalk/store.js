'use strict';
// Results on this device. Every entry has a key of its own, so that two open tabs never write over each other. Where storage is
// full or forbidden the entries live as long as the visit, handed from page to page behind the `#` of a link, and the page says so.
(() => {
  const site = document.documentElement.dataset.site || '';
  const PREFIX = `rungbook:${site}:`;
  const KINDS = ['tested', 'trained', 'sessions', 'paused'];

  /** What storage refused, and what only this page knows. @type {Map<string, string>} */
  const visit = new Map();
  /** Keys that were taken away though storage refused. @type {Set<string>} */
  const gone = new Set();
  let trouble = '';
  /** @type {(() => void)[]} */
  const listeners = [];
  const changed = () => listeners.forEach((act) => act());

  const storage = () => {
    try {
      return globalThis.localStorage;
    } catch {
      trouble = 'forbidden';
      return null;
    }
  };

  /** @param {string} key */
  const read = (key) => {
    if (visit.has(key)) return visit.get(key) || null;
    if (gone.has(key)) return null;
    try {
      const kept = storage();
      return kept ? kept.getItem(PREFIX + key) : null;
    } catch {
      return null;
    }
  };
  /** @param {string} key @param {string} value */
  const write = (key, value) => {
    gone.delete(key);
    try {
      const kept = storage();
      if (!kept) throw new Error('forbidden');
      kept.setItem(PREFIX + key, value);
      visit.delete(key);
    } catch (error) {
      trouble = error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : trouble || 'forbidden';
      visit.set(key, value);
    }
  };
  /** @param {string} key */
  const remove = (key) => {
    visit.delete(key);
    try {
      const kept = storage();
      if (kept) kept.removeItem(PREFIX + key);
    } catch {
      gone.add(key);
    }
  };
  const keys = () => {
    const out = new Set(visit.keys());
    try {
      const kept = storage();
      for (let i = 0; kept && i < kept.length; i += 1) {
        const key = kept.key(i);
        if (key && key.startsWith(PREFIX) && !gone.has(key.slice(PREFIX.length))) out.add(key.slice(PREFIX.length));
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

  /** Every entry of a kind with its key, oldest day first, then as it was entered. @param {string} kind @returns {{ key: string, entry: any }[]} */
  const entries = (kind) => keys()
    .filter((key) => key.startsWith(`${kind}:`))
    .map((key) => ({ key, entry: parsed(read(key)) }))
    .filter(({ entry }) => entry !== null && typeof entry === 'object')
    .sort((a, b) => (a.entry.on < b.entry.on ? -1 : a.entry.on > b.entry.on ? 1 : a.key < b.key ? -1 : 1));

  /** @param {string} kind @param {object} entry @returns {string} its key */
  const add = (kind, entry) => {
    const key = `${kind}:${name()}`;
    write(key, JSON.stringify(entry));
    changed();
    return key;
  };

  /** Everything as it is exported. @returns {Exported} */
  const all = () => {
    const bare = (/** @type {string} */ kind) => entries(kind).map(({ entry }) => entry);
    const about = parsed(read('about')) || {};
    const sessions = bare('sessions');
    return { results: 1, ...about, tested: bare('tested'), trained: bare('trained'), ...(sessions.length ? { sessions } : {}), paused: bare('paused') };
  };

  /** Takes in what another export holds; equal entries once. @param {Exported} exported sound @param {boolean} weightToo
   * @returns {{ added: number, same: number }} */
  const merge = (exported, weightToo) => {
    let added = 0, same = 0;
    for (const kind of KINDS) {
      const known = new Set(entries(kind).map(({ entry }) => JSON.stringify(entry)));
      for (const entry of /** @type {any} */ (exported)[kind] || []) {
        const written = JSON.stringify(entry);
        if (known.has(written)) {
          same += 1;
          continue;
        }
        known.add(written);
        write(`${kind}:${name()}`, written);
        added += 1;
      }
    }
    const about = parsed(read('about')) || {};
    for (const key of /** @type {const} */ (['name', 'have', 'bodyweight'])) {
      if (exported[key] !== undefined && (about[key] === undefined || (key === 'bodyweight' && weightToo))) about[key] = exported[key];
    }
    if (Object.keys(about).length) write('about', JSON.stringify(about));
    changed();
    return { added, same };
  };

  /** How an export stands beside what is kept: entries only there, only here, and tests of one movement and day whose results
   * differ. @param {Exported} exported sound */
  const beside = (exported) => {
    const written = (/** @type {any[]} */ list) => new Map(list.map((entry) => [JSON.stringify(entry), entry]));
    let there = 0, here = 0, unlike = 0;
    for (const kind of KINDS) {
      const theirs = written(/** @type {any} */ (exported)[kind] || []), ours = written(entries(kind).map(({ entry }) => entry));
      const only = (/** @type {Map<string, any>} */ of, /** @type {Map<string, any>} */ other) => [...of].filter(([text]) => !other.has(text)).map(([, entry]) => entry);
      const [onlyThere, onlyHere] = [only(theirs, ours), only(ours, theirs)];
      there += onlyThere.length;
      here += onlyHere.length;
      if (kind === 'tested') unlike += onlyThere.filter((a) => onlyHere.some((b) => a.movement === b.movement && a.on === b.on)).length;
    }
    return { there, here, unlike };
  };

  globalThis.rungbook = Object.assign(globalThis.rungbook || {}, {
    store: {
      entries, add, all, merge, beside,
      /** Everything kept goes, the outcome of the health questions too; an export takes its place. @param {Exported} exported sound */
      replace: (exported) => {
        keys().forEach(remove);
        return merge(exported, true);
      },
      /** @param {string} key */
      remove: (key) => {
        remove(key);
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
      note: (key, value) => write(key, JSON.stringify(value)),
      /** '', 'full' or 'forbidden'. */
      trouble: () => trouble,
      isEmpty: () => KINDS.every((kind) => entries(kind).length === 0),
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
      kept.setItem(`${PREFIX}probe`, text);
      kept.removeItem(`${PREFIX}probe`);
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
        JSON.parse(decodeURIComponent(carried)).forEach((/** @type {[string, string]} */ [key, value]) => visit.set(String(key), String(value)));
        results.check(store.all(), results.today());
      }
    } catch {
      visit.clear();
    }
  }
  /** Every page stands in the site's own folder; another site may stand beside it on one host. @param {{ pathname: string }} address */
  const folder = (address) => address.pathname.slice(0, address.pathname.lastIndexOf('/'));
  document.addEventListener('click', (event) => {
    const link = event.target instanceof Element ? /** @type {HTMLAnchorElement | null} */ (event.target.closest('a[href]')) : null;
    const isOurs = link && link.protocol === location.protocol && link.host === location.host && folder(link) === folder(location);
    if (!link || !isOurs || visit.size === 0 || !link.pathname.endsWith('.html') || link.pathname === location.pathname) return;
    const before = link.hash;
    link.hash = CARRIED + encodeURIComponent(JSON.stringify([...visit]));
    // A link that is copied later says nothing of the visit.
    setTimeout(() => { link.hash = before; });
  }, true);
  globalThis.addEventListener('storage', (event) => {
    if (event.key === null || event.key.startsWith(PREFIX)) changed();
  });
})();
