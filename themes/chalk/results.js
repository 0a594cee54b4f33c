'use strict';
// A client's results: reading the exported form against the tables, and making it. A file that is not sound is refused whole.
(() => {
  const { readGot, readMass, text, KILOGRAM, DONE } = globalThis.rungbook.targets;
  const { say } = globalThis.rungbook.words;
  const VERSION = 1;
  const LIGHTEST = 10 * KILOGRAM, HEAVIEST = 500 * KILOGRAM;
  /** The largest file that is read, in bytes. */
  const LARGEST_FILE = 1000000;

  /** Days since 1970-01-01; null where it is no day. @param {unknown} written */
  const readDay = (written) => {
    const parts = typeof written === 'string' ? /^\s*([0-9]{4})-([0-9]{2})-([0-9]{2})\s*$/.exec(written) : null;
    if (!parts || Number(parts[1]) < 1900) return null;
    const time = Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3]));
    return new Date(time).toISOString().slice(0, 10) === parts[0].trim() ? time / 86400000 : null;
  };
  /** @param {number} day */
  const dayText = (day) => new Date(day * 86400000).toISOString().slice(0, 10);
  /** A day for readers. @param {number} day */
  const dayWords = (day) => {
    const [year, month, of] = dayText(day).split('-').map(Number);
    return say('date.day', { day: of, month: say(`month.m${month}`), year: new Intl.NumberFormat(globalThis.document ? document.documentElement.lang || 'en' : 'en', { useGrouping: false }).format(year) });
  };
  /** Today where the reader is. */
  const today = () => {
    const now = new Date();
    return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86400000;
  };

  class Refused extends Error {}
  /** @param {boolean} fine @param {string} why @returns {asserts fine} */
  const demand = (fine, why) => {
    if (!fine) throw new Refused(why);
  };
  /** @param {unknown} value @param {string} what @returns {Record<string, unknown>} */
  const record = (value, what) => {
    demand(typeof value === 'object' && value !== null && !Array.isArray(value), say('results.not_a_record', { what }));
    return /** @type {Record<string, unknown>} */ (value);
  };
  /** @param {unknown} value @param {string} what @returns {unknown[]} */
  const list = (value, what) => {
    demand(value === undefined || value === null || Array.isArray(value), say('results.not_a_list', { what }));
    return /** @type {unknown[]} */ (value || []);
  };
  /** @param {unknown} value @param {string} what */
  const words = (value, what) => {
    demand(typeof value === 'string' && value.trim() !== '' && value.length <= 500, say('results.no_text', { what }));
    return String(value).trim();
  };
  /** @param {unknown} value @param {string} what */
  const maybeWords = (value, what) => (value === undefined || value === null ? null : words(value, what));
  /** @param {unknown} value @param {string} what @param {number} usual */
  const dayOr = (value, what, usual) => {
    if (value === undefined || value === null) return usual;
    const day = readDay(value);
    demand(day !== null, say('results.not_a_day', { what, value: String(value) }));
    return Number(day);
  };
  /** @param {unknown} value @param {string} what */
  const weight = (value, what) => {
    if (value === undefined || value === null) return null;
    const read = typeof value === 'string' ? readMass(value) : null;
    demand(read !== null && read >= LIGHTEST && read <= HEAVIEST, say('results.not_a_weight', { what, value: String(value) }));
    return read;
  };
  /** @param {unknown} value @param {string} what */
  const got = (value, what) => {
    const read = typeof value === 'string' ? readGot(value) : null;
    demand(read !== null, say('results.not_a_result', { what, value: String(value) }));
    return /** @type {Got} */ (read);
  };
  /** A set that was trained: a bare number, or one with its unit. @param {string} set @param {string} unit */
  const readSet = (set, unit) => readGot(/^[0-9.]+$/.test(set) ? `${set} ${unit}` : set);
  /** @param {unknown} value @param {string} what */
  const whole = (value, what) => {
    if (value === undefined || value === null) return 0;
    const number = Number(value);
    demand(Number.isInteger(number) && number >= 0 && number <= 1000, say('results.not_in_reserve', { what, value: String(value) }));
    return number;
  };

  /** The keys of the layout, as the program reads it. */
  const KEYS = {
    file: ['results', 'name', 'bodyweight', 'have', 'tested', 'trained', 'sessions', 'paused'],
    tested: ['movement', 'got', 'left', 'right', 'on', 'in_reserve', 'bodyweight'],
    trained: ['movement', 'did', 'with', 'in_reserve', 'on'],
    sessions: ['effort', 'minutes', 'on'],
    paused: ['part', 'movement', 'on', 'until', 'by', 'because'],
  };
  /** A record that has no key but these. @param {unknown} value @param {string} what @param {string[]} keys */
  const keyed = (value, what, keys) => {
    const read = record(value, what);
    const odd = Object.keys(read).find((key) => !keys.includes(key));
    demand(odd === undefined, say('results.unknown_key', { what, key: String(odd) }));
    return read;
  };

  /**
   * Checks an exported record and makes it plain: every entry has its day and its text. Throws `Refused` with the reason.
   * @param {unknown} object @param {number} day the day for entries that say none
   * @returns {Exported}
   */
  const check = (object, day) => {
    const loose = record(object, say('results.file'));
    demand(String(loose.results) === String(VERSION), say('results.version', { version: VERSION, value: String(loose.results) }));
    const root = keyed(object, say('results.file'), KEYS.file);
    const tested = list(root.tested, '“tested”').map((item, i) => {
      const what = say('results.test', { number: i + 1 }), entry = keyed(item, what, KEYS.tested);
      demand(entry.got === undefined || (entry.left === undefined && entry.right === undefined), say('results.got_or_sides', { what }));
      const side = (/** @type {'left' | 'right'} */ name) => (entry[name] === undefined ? {} : { [name]: text(got(entry[name], what)) });
      const sides = entry.got === undefined && (entry.left !== undefined || entry.right !== undefined) ? { ...side('left'), ...side('right') } : { got: text(got(entry.got, what)) };
      const own = entry.bodyweight === undefined ? {} : { bodyweight: (weight(entry.bodyweight, what), String(entry.bodyweight)) };
      const reserve = whole(entry.in_reserve, what);
      return { movement: words(entry.movement, say('results.movement_of', { what })), ...sides, on: dayText(dayOr(entry.on, what, day)), ...(reserve ? { in_reserve: reserve } : {}), ...own };
    });
    const trained = list(root.trained, '“trained”').map((item, i) => {
      const what = say('results.training', { number: i + 1 }), entry = keyed(item, what, KEYS.trained);
      const did = list(entry.did, say('results.did_of', { what })).map((set) => {
        demand((typeof set === 'number' && set >= 0) || (typeof set === 'string' && set.length < 40), say('results.set', { what }));
        demand(readSet(String(set), 'reps') !== null, say('results.set', { what }));
        return /** @type {number | string} */ (set);
      });
      demand(entry.with === undefined || readGot(`1 rep with ${entry.with}`) !== null, say('results.not_a_load', { what, value: String(entry.with) }));
      const kept = { ...(entry.with === undefined ? {} : { with: words(entry.with, what) }), ...(entry.in_reserve === undefined ? {} : { in_reserve: whole(entry.in_reserve, what) }) };
      return { movement: words(entry.movement, say('results.movement_of', { what })), did, ...kept, on: dayText(dayOr(entry.on, what, day)) };
    });
    // Whole sessions decide nothing: they are kept, added up over a week, and handed on.
    const sessions = list(root.sessions, '“sessions”').map((item, i) => {
      const what = say('results.session', { number: i + 1 }), entry = keyed(item, what, KEYS.sessions);
      const number = (/** @type {unknown} */ value, /** @type {number} */ most) => {
        demand(Number.isInteger(Number(value)) && value !== null && value !== '' && Number(value) >= 0 && Number(value) <= most, say('results.not_a_session', { what, value: String(value) }));
        return Number(value);
      };
      return { effort: number(entry.effort, 10), minutes: number(entry.minutes, 1440), on: dayText(dayOr(entry.on, what, day)) };
    });
    const paused = list(root.paused, '“paused”').map((item, i) => {
      const what = say('results.pause', { number: i + 1 }), entry = keyed(item, what, KEYS.paused);
      demand((entry.part === undefined) !== (entry.movement === undefined), say('results.part_or_movement', { what }));
      const name = entry.part === undefined ? { movement: words(entry.movement, what) } : { part: words(entry.part, what) };
      const until = entry.until === undefined || entry.until === null ? {} : { until: dayText(dayOr(entry.until, what, day)) };
      const by = maybeWords(entry.by, what), because = maybeWords(entry.because, what);
      return { ...name, on: dayText(dayOr(entry.on, what, day)), ...until, ...(by ? { by } : {}), ...(because ? { because } : {}) };
    });
    const name = maybeWords(root.name, say('results.name'));
    weight(root.bodyweight, say('results.file'));
    const have = root.have === undefined ? null : list(root.have, '“have”').map((item) => words(item, '“have”'));
    return {
      results: VERSION, ...(name ? { name } : {}), ...(root.bodyweight ? { bodyweight: String(root.bodyweight) } : {}), ...(have ? { have } : {}),
      tested, trained, ...(sessions.length ? { sessions } : {}), paused,
    };
  };

  /** Reads a file's text. Throws `Refused`. @param {string} written @param {number} day */
  const readFile = (written, day) => {
    demand(written.length <= LARGEST_FILE, say('results.too_large'));
    let object;
    try {
      object = JSON.parse(written);
    } catch {
      throw new Refused(say('results.not_json'));
    }
    return check(object, day);
  };

  /**
   * A person as readiness needs it. What this curriculum cannot judge is kept aside with the reason.
   * @param {Exported} exported sound @param {Model} model @param {number} day
   * @returns {{ person: Person, aside: Aside[] }}
   */
  const person = (exported, model, day) => {
    /** @type {Person} */
    const out = { bodyWeight: exported.bodyweight ? readMass(exported.bodyweight) : null, tested: [], trained: [], sessions: [], pauses: [], have: exported.have || null };
    /** @type {Aside[]} */
    const aside = [];
    const otherwise = (/** @type {number} */ movement, /** @type {string} */ on) => on < (model.tables.since[movement] || '');
    exported.tested.forEach((entry, i) => {
      const sides = [entry.got, entry.left, entry.right].filter((side) => side !== undefined).map((side) => /** @type {Got} */ (readGot(String(side))));
      const movement = model.numbers.get(entry.movement);
      const on = Number(readDay(entry.on));
      const keep = (/** @type {string} */ why) => aside.push({ movement: entry.movement, got: sides.map(text).join(', '), on: entry.on, why });
      if (entry.got === undefined && sides.length < 2) keep(say('results.one_side'));
      else if (movement === undefined) keep(say('results.no_such_movement'));
      else if (sides.some((side) => side.measure !== model.target(movement).measure)) keep(say('results.other_measure'));
      else if (on > day) keep(say('results.to_come'));
      else if (otherwise(movement, entry.on)) keep(say('results.measured_otherwise'));
      else out.tested.push({ movement, sides, on, reserve: entry.in_reserve || 0, bodyWeight: entry.bodyweight ? readMass(entry.bodyweight) : null, entry: i });
    });
    exported.trained.forEach((entry) => {
      const movement = model.numbers.get(entry.movement);
      const on = Number(readDay(entry.on));
      if (movement === undefined || on > day) {
        aside.push({ movement: entry.movement, got: entry.did.join(', '), on: entry.on, why: movement === undefined ? say('results.no_such_movement') : say('results.to_come') });
        return;
      }
      const { measure } = model.target(movement);
      const did = entry.did.map((set) => readSet(String(set), ['reps', 's', 'cm', 'deg', 'reps'][measure]));
      if (did.some((set) => set === null || (set.measure !== measure && measure !== DONE))) {
        aside.push({ movement: entry.movement, got: entry.did.join(', '), on: entry.on, why: say('results.other_measure') });
        return;
      }
      if (otherwise(movement, entry.on)) {
        aside.push({ movement: entry.movement, got: entry.did.join(', '), on: entry.on, why: say('results.measured_otherwise') });
        return;
      }
      const load = entry.with === undefined ? null : readGot(`1 rep with ${entry.with}`);
      if (entry.with !== undefined && !load) return;
      out.trained.push({ movement, did: did.map((set) => /** @type {Got} */ (set).amount), unit: load ? load.unit : 0, load: load ? load.load : 0, reserve: entry.in_reserve === undefined ? null : entry.in_reserve, on });
    });
    for (const { effort, minutes, on } of exported.sessions || []) out.sessions.push({ effort, minutes, on: Number(readDay(on)) });
    exported.paused.forEach((entry, i) => {
      const movement = entry.movement === undefined ? null : model.numbers.get(entry.movement);
      const part = entry.part === undefined ? null : model.tables.parts.indexOf(entry.part);
      if (movement === undefined || part === -1) {
        aside.push({ movement: String(entry.movement || entry.part), got: 'paused', on: entry.on, why: say('results.no_such_part') });
        return;
      }
      out.pauses.push({ movement, part, on: Number(readDay(entry.on)), until: entry.until ? Number(readDay(entry.until)) : null, by: entry.by || null, because: entry.because || null, entry: i });
    });
    return { person: out, aside };
  };

  globalThis.rungbook.results = { VERSION, KEYS, LARGEST_FILE, Refused, check, readFile, person, readDay, dayText, dayWords, today };
})();
