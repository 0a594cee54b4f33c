'use strict';
// A client's results: reading the exported form against the tables, and making it. A file that is not sound is refused whole.
(() => {
  const { readGot, readMass, text, DONE } = globalThis.rungbook.targets;
  const { say } = globalThis.rungbook.words;
  const VERSION = 1;
  const WEEK = 7;
  const { LIMITS, ageOn, worstOfDay } = globalThis.rungbook.health, [LIGHTEST, HEAVIEST] = LIMITS.body_weight;
  /** The largest file that is read, in bytes. */
  const LARGEST_FILE = 1000000;

  /** Days since 1970-01-01; null where it is no day. @param {unknown} written */
  const readDay = (written) => {
    const parts = typeof written === 'string' ? /^\s*([0-9]{4})-([0-9]{2})-([0-9]{2})\s*$/.exec(written) : null;
    if (!parts || Number(parts[1]) < 1900) return null;
    const time = Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3]));
    return new Date(time).toISOString().slice(0, 10) === parts[0].trim() ? time / 86400000 : null;
  };
  /** The kinds that every copy has, empty ones too. */
  const ALWAYS = ['tested', 'trained', 'paused'];
  /** @param {number} day */
  const yearOf = (day) => Number(dayText(day).slice(0, 4));
  /** @param {number} day */
  const dayText = (day) => new Date(day * 86400000).toISOString().slice(0, 10);
  const years = new Intl.NumberFormat(globalThis.document ? document.documentElement.lang || 'en' : 'en', { useGrouping: false });
  /** A day for readers. @param {number} day */
  const dayWords = (day) => {
    const [year, month, of] = dayText(day).split('-').map(Number);
    return say('date.day', { day: of, month: say(`month.m${month}`), year: years.format(year) });
  };
  /** A span for readers, as it was said: of whole weeks by its last day. @param {number} on @param {number} until */
  const spanWords = (on, until) => {
    const days = until - on + 1, weeks = days / WEEK, said = { from: dayWords(on), to: dayWords(until), n: weeks };
    return days === WEEK ? say('date.week_to', said) : days % WEEK === 0 ? say('date.weeks_to', said) : say('date.span', said);
  };
  /** Today where the reader is. */
  const today = () => {
    const now = new Date();
    return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86400000;
  };

  class Refused extends Error {}
  /** @param {boolean} fine @param {() => string} why @returns {asserts fine} */
  const demand = (fine, why) => {
    if (!fine) throw new Refused(why());
  };
  /** @param {unknown} value @param {string} what @returns {Record<string, unknown>} */
  const record = (value, what) => {
    demand(typeof value === 'object' && value !== null && !Array.isArray(value), () => say('results.not_a_record', { what }));
    return /** @type {Record<string, unknown>} */ (value);
  };
  /** @param {unknown} value @param {string} what @returns {unknown[]} */
  const list = (value, what) => {
    demand(value === undefined || value === null || Array.isArray(value), () => say('results.not_a_list', { what }));
    return /** @type {unknown[]} */ (value || []);
  };
  /** @param {unknown} value @param {string} what */
  const words = (value, what) => {
    demand(typeof value === 'string' && value.trim() !== '' && value.length <= 500, () => say('results.no_text', { what }));
    return String(value).trim();
  };
  /** @param {unknown} value @param {string} what */
  const movementOf = (value, what) => {
    demand(typeof value === 'string' && value.trim() !== '' && value.length <= 500, () => say('results.no_text', { what: say('results.movement_of', { what }) }));
    return String(value).trim();
  };
  /** @param {unknown} value @param {string} what */
  const maybeWords = (value, what) => (value === undefined || value === null ? null : words(value, what));
  /** @param {unknown} value @param {string} what @param {number} usual */
  const dayOr = (value, what, usual) => {
    if (value === undefined || value === null) return usual;
    const day = readDay(value);
    demand(day !== null, () => say('results.not_a_day', { what, value: String(value) }));
    return Number(day);
  };
  /** @param {unknown} value @param {string} what */
  const weight = (value, what) => {
    if (value === undefined || value === null) return null;
    const read = typeof value === 'string' ? readMass(value) : null;
    demand(read !== null && read >= LIGHTEST && read <= HEAVIEST, () => say('results.not_a_weight', { what, value: String(value) }));
    return read;
  };
  /** @param {unknown} value @param {string} what */
  const got = (value, what) => {
    const read = typeof value === 'string' ? readGot(value) : null;
    demand(read !== null, () => say('results.not_a_result', { what, value: String(value) }));
    return /** @type {Got} */ (read);
  };
  /** Results as they are kept, by how they were written: many are alike. @type {Map<string, string>} */
  const written = new Map();
  /** @param {unknown} value @param {string} what */
  const gotText = (value, what) => {
    const known = typeof value === 'string' ? written.get(value) : undefined;
    if (known !== undefined) return known;
    const kept = text(got(value, what));
    if (written.size < 10000) written.set(String(value), kept);
    return kept;
  };
  /** A set that was trained: a bare number, or one with its unit. @param {string} set @param {string} unit */
  const readSet = (set, unit) => readGot(/^[0-9.]+$/.test(set) ? `${set} ${unit}` : set);
  /** A whole number within bounds, as a number or in digits. @param {unknown} value @param {number} least @param {number} most @param {() => string} why */
  const wholeOf = (value, least, most, why) => {
    const fine = (typeof value === 'number' || typeof value === 'string') && /^\s*[0-9]{1,4}\s*$/.test(String(value));
    demand(fine && Number(value) >= least && Number(value) <= most, why);
    return Number(value);
  };
  /** @param {unknown} value @param {string} what */
  const reserveOf = (value, what) => (value === undefined || value === null ? 0 : wholeOf(value, 0, LIMITS.in_reserve, () => say('results.not_in_reserve', { what, value: String(value) })));
  /** One of some words. @param {unknown} value @param {string[]} of @param {string} what */
  const oneOf = (value, of, what) => {
    demand(typeof value === 'string' && of.includes(value), () => say('results.not_one_of', { what, value: String(value), words: of.join(', ') }));
    return String(value);
  };

  /** The keys of the layout, as the program reads it. */
  const KEYS = {
    file: ['results', 'name', 'bodyweight', 'have', 'tested', 'trained', 'sessions', 'paused', 'born', 'goal', 'train', 'screened', 'restrict', 'cleared', 'pain', 'remarks'],
    tested: ['movement', 'got', 'left', 'right', 'on', 'until', 'in_reserve', 'bodyweight'],
    trained: ['movement', 'did', 'with', 'in_reserve', 'on'],
    sessions: ['effort', 'minutes', 'on'],
    paused: ['part', 'movement', 'class', 'pattern', 'on', 'until', 'by', 'because'],
    train: ['a_week', 'minutes', 'days'],
    screened: ['says', 'on', 'until', 'by', 'was', 'lasts'],
    cleared: ['class', 'on', 'until', 'by'],
    pain: ['part', 'score', 'next_morning', 'on', 'signs'],
    remarks: ['movement', 'words', 'on'],
  };
  const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
  const SIGNS = ['sharp', 'night', 'numb', 'giving-way'];
  const SAYS = ['clear', 'light', 'ask'];
  /** A record that has no key but these. @param {unknown} value @param {string} what @param {string[]} keys */
  const keyed = (value, what, keys) => {
    const read = record(value, what);
    const odd = Object.keys(read).find((key) => !keys.includes(key));
    demand(odd === undefined, () => say('results.unknown_key', { what, key: String(odd) }));
    return read;
  };
  /** The optional last day of an entry. @param {Record<string, unknown>} entry @param {string} what @param {number} day */
  const untilOf = (entry, what, day) => {
    if (entry.until === undefined || entry.until === null) return {};
    const until = dayOr(entry.until, what, day);
    demand(until >= dayOr(entry.on, what, day), () => say('results.before_it_begins', { what }));
    return { until: dayText(until) };
  };
  /** Optional words of an entry. @param {Record<string, unknown>} entry @param {string} what @param {string[]} keys */
  const saidOf = (entry, what, keys) => Object.fromEntries(keys.map((key) => [key, maybeWords(entry[key], what)]).filter(([, text]) => text !== null));

  /** What rests or is restricted: one of a part, a class, a pattern, a movement. @param {unknown} item @param {string} what @param {number} day */
  const pauseOf = (item, what, day) => {
    const entry = keyed(item, what, KEYS.paused);
    const named = ['part', 'movement', 'class', 'pattern'].filter((key) => entry[key] !== undefined);
    demand(named.length === 1, () => say('results.part_or_movement', { what }));
    return { [named[0]]: words(entry[named[0]], what), on: dayText(dayOr(entry.on, what, day)), ...untilOf(entry, what, day), ...saidOf(entry, what, ['by', 'because']) };
  };

  /** How one entry of each kind is read: checked, with its day, in one order of keys. Throws `Refused`.
   * @type {Record<string, (item: unknown, what: string, day: number) => Record<string, any>>} */
  const ENTRY = {
    tested: (item, what, day) => {
      const entry = keyed(item, what, KEYS.tested);
      demand(entry.got === undefined || (entry.left === undefined && entry.right === undefined), () => say('results.got_or_sides', { what }));
      const side = (/** @type {'left' | 'right'} */ name) => (entry[name] === undefined ? {} : { [name]: gotText(entry[name], what) });
      const sides = entry.got === undefined && (entry.left !== undefined || entry.right !== undefined) ? { ...side('left'), ...side('right') } : { got: gotText(entry.got, what) };
      const own = entry.bodyweight === undefined ? {} : { bodyweight: (weight(entry.bodyweight, what), String(entry.bodyweight)) };
      const reserve = reserveOf(entry.in_reserve, what);
      return { movement: movementOf(entry.movement, what), ...sides, on: dayText(dayOr(entry.on, what, day)), ...untilOf(entry, what, day), ...(reserve ? { in_reserve: reserve } : {}), ...own };
    },
    trained: (item, what, day) => {
      const entry = keyed(item, what, KEYS.trained);
      const did = list(entry.did, say('results.did_of', { what })).map((set) => {
        demand((typeof set === 'number' && set >= 0) || (typeof set === 'string' && set.length < 40), () => say('results.set', { what }));
        demand(readSet(String(set), 'reps') !== null, () => say('results.set', { what }));
        return /** @type {number | string} */ (set);
      });
      demand(entry.with === undefined || readGot(`1 rep with ${entry.with}`) !== null, () => say('results.not_a_load', { what, value: String(entry.with) }));
      const kept = { ...(entry.with === undefined ? {} : { with: words(entry.with, what) }), ...(entry.in_reserve === undefined ? {} : { in_reserve: reserveOf(entry.in_reserve, what) }) };
      return { movement: movementOf(entry.movement, what), did, ...kept, on: dayText(dayOr(entry.on, what, day)) };
    },
    // Whole sessions decide nothing: they are kept, added up over a week, and handed on.
    sessions: (item, what, day) => {
      const entry = keyed(item, what, KEYS.sessions);
      const number = (/** @type {unknown} */ value, /** @type {number} */ most) => wholeOf(value, 0, most, () => say('results.not_a_session', { what, value: String(value) }));
      return { effort: number(entry.effort, LIMITS.effort), minutes: number(entry.minutes, LIMITS.minutes), on: dayText(dayOr(entry.on, what, day)) };
    },
    paused: pauseOf,
    restrict: pauseOf,
    cleared: (item, what, day) => {
      const entry = keyed(item, what, KEYS.cleared);
      return { class: words(entry.class, what), on: dayText(dayOr(entry.on, what, day)), ...untilOf(entry, what, day), ...saidOf(entry, what, ['by']) };
    },
    pain: (item, what, day) => {
      const entry = keyed(item, what, KEYS.pain);
      const score = (/** @type {unknown} */ value) => wholeOf(value, 0, 10, () => say('results.not_a_score', { what, value: String(value) }));
      const signs = list(entry.signs, what).map((sign) => oneOf(sign, SIGNS, what));
      return {
        part: words(entry.part, what), score: score(entry.score), ...(entry.next_morning === undefined || entry.next_morning === null ? {} : { next_morning: score(entry.next_morning) }),
        on: dayText(dayOr(entry.on, what, day)), ...(signs.length ? { signs } : {}),
      };
    },
    remarks: (item, what, day) => {
      const entry = keyed(item, what, KEYS.remarks);
      return { movement: movementOf(entry.movement, what), on: dayText(dayOr(entry.on, what, day)), words: words(entry.words, what) };
    },
  };
  /** The kinds of entries, in the order of the layout. */
  const KINDS = Object.keys(ENTRY);
  /** A result whose day nobody knows: kept on this device, for nothing; the layout has no place for it. @param {unknown} item @param {string} what */
  const undated = (item, what) => {
    const read = keyed(item, what, ['movement', 'got', 'left', 'right']);
    const sides = ['got', 'left', 'right'].filter((side) => read[side] !== undefined).map((side) => [side, gotText(read[side], what)]);
    demand(sides.length > 0, () => say('results.no_text', { what }));
    return { movement: words(read.movement, what), ...Object.fromEntries(sides) };
  };
  /** @type {Record<string, string>} */
  const NAMES = { tested: 'test', trained: 'training', sessions: 'session', paused: 'pause', restrict: 'restriction', cleared: 'clearance', pain: 'pain', remarks: 'remark' };
  /** What an entry is called in a message: its kind and its place, from 1. @param {string} kind @param {number} number */
  const nameOf = (kind, number) => say(`results.${NAMES[kind]}`, { number });

  /** How each fact about the person is read. Throws `Refused`. @type {Record<string, (value: unknown, what: string, day: number) => any>} */
  const FACT = {
    name: (value, what) => words(value, what),
    bodyweight: (value, what) => (weight(value, what), String(value)),
    have: (value, what) => list(value, what).map((item) => words(item, what)),
    born: (value, what, day) => wholeOf(value, 1900, yearOf(day), () => say('results.not_a_year', { what, value: String(value) })),
    goal: (value, what) => words(value, what),
    train: (value, what) => {
      const entry = keyed(value, what, KEYS.train);
      const number = (/** @type {string} */ key, /** @type {number} */ least, /** @type {number} */ most) => (entry[key] === undefined ? {} : { [key]: wholeOf(entry[key], least, most, () => say('results.not_between', { what, key, least, most })) });
      const days = entry.days === undefined ? {} : { days: list(entry.days, what).map((name) => oneOf(name, DAYS, what)) };
      return { ...number('a_week', 1, 7), ...number('minutes', 10, 240), ...days };
    },
    screened: (value, what, day) => {
      const entry = keyed(value, what, KEYS.screened);
      const { was, lasts } = entry;
      return { says: oneOf(entry.says, SAYS, what), on: dayText(dayOr(entry.on, what, day)), ...untilOf(entry, what, day), ...saidOf(entry, what, ['by']),
        ...(was === undefined ? {} : { was: oneOf(was, SAYS, what) }), ...(lasts === undefined ? {} : { lasts: wholeOf(lasts, 1, 366, () => say('results.not_between', { what, key: 'lasts', least: 1, most: 366 })) }) };
    },
  };

  /** Reads one fact or entry. @template T @param {() => T} read @returns {{ sound: T, why: '' } | { sound: null, why: string }} */
  const tried = (read) => {
    try {
      return { sound: read(), why: '' };
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      return { sound: null, why: error.message };
    }
  };
  const THE_ENTRY = say('results.entry');
  /** One kept entry, or why it is none. @param {string} kind @param {unknown} item @param {number} day */
  const entry = (kind, item, day) => tried(() => {
    const what = THE_ENTRY;
    if (kind === 'undated') return undated(item, what);
    // What is kept has its day: one without would move along with today.
    demand(readDay(record(item, what).on) !== null, () => say('results.no_day'));
    return ENTRY[kind](item, what, day);
  });
  /** One kept fact, or why it is none. @param {string} key @param {unknown} value @param {number} day */
  const fact = (key, value, day) => tried(() => FACT[key](value, `“${key}”`, day));

  /**
   * Checks an exported record and makes it plain: every entry has its day and its text. Throws `Refused` with the reason.
   * @param {unknown} object @param {number} day the day for entries that say none
   * @returns {Exported}
   */
  const check = (object, day) => {
    const loose = record(object, say('results.file'));
    demand(String(loose.results) === String(VERSION), () => say('results.version', { version: VERSION, value: String(loose.results) }));
    const root = keyed(object, say('results.file'), KEYS.file);
    /** @type {Record<string, any>} */
    const out = { results: VERSION };
    for (const [key, read] of Object.entries(FACT)) if (root[key] !== undefined && root[key] !== null) out[key] = read(root[key], key === 'name' ? say('results.name') : `“${key}”`, day);
    for (const kind of KINDS) {
      const read = list(root[kind], `“${kind}”`).map((item, i) => ENTRY[kind](item, nameOf(kind, i + 1), day));
      if (read.length || ALWAYS.includes(kind)) out[kind] = read;
    }
    return /** @type {Exported} */ (out);
  };

  /** Refuses what JSON readers take in silence: a key that stands twice in one record, and a number with an exponent. The text is
   * sound JSON. @param {string} written */
  const strict = (written) => {
    /** @type {(Set<string> | null)[]} */
    const open = [];
    let isKey = false;
    for (const [token] of written.matchAll(/"(?:[^"\\]|\\.)*"|[{}[\],:]|[^\s{}[\],:"]+/g)) {
      if (token === '{' || token === '[') open.push(token === '{' ? new Set() : null);
      else if (token === '}' || token === ']') open.pop();
      else if (token[0] === '"' && isKey) {
        const keys = open[open.length - 1], key = JSON.parse(token);
        demand(!keys || !keys.has(key), () => say('results.key_twice', { key }));
        if (keys) keys.add(key);
      } else demand(!/^-?[0-9.]+[eE]/.test(token), () => say('results.exponent', { value: token }));
      isKey = token === '{' || (token === ',' && Boolean(open[open.length - 1]));
    }
  };

  /** Reads a file's text. Throws `Refused`. @param {string} written @param {number} day */
  const readFile = (written, day) => {
    demand(written.length <= LARGEST_FILE, () => say('results.too_large'));
    let object;
    try {
      object = JSON.parse(written);
    } catch {
      throw new Refused(say('results.not_json'));
    }
    strict(written);
    return check(object, day);
  };

  /** Somebody of whom nothing is known. @returns {Person} */
  const nobody = () => ({ bodyWeight: null, tested: [], otherwise: [], trained: [], sessions: [], pauses: [], have: null, born: null, goal: null, train: null, screened: null, cleared: [], pains: [], remarks: [] });
  /** @param {{ until?: string }} entry */
  const lastDay = ({ until }) => (until === undefined ? null : Number(readDay(until)));
  /** The number of a word in a list: null where none is said, -1 where the list has none such. @param {string[]} words @param {string | undefined} word */
  const of = (words, word) => (word === undefined ? null : words.indexOf(word));

  /**
   * A person as readiness needs it. What this curriculum cannot judge is kept aside with the reason.
   * @param {Exported} exported sound @param {Model} model @param {number} day
   * @returns {{ person: Person, aside: Aside[] }}
   */
  const person = (exported, model, day) => {
    const out = nobody();
    out.bodyWeight = exported.bodyweight ? readMass(exported.bodyweight) : null;
    out.have = exported.have || null;
    out.born = exported.born === undefined ? null : exported.born;
    out.goal = exported.goal || null;
    out.train = exported.train || null;
    if (exported.screened) out.screened = { says: exported.screened.says, on: Number(readDay(exported.screened.on)), until: lastDay(exported.screened), by: exported.screened.by || null, lasts: exported.screened.lasts || null };
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
      else {
        const old = otherwise(movement, entry.on);
        (old ? out.otherwise : out.tested).push({ movement, sides, on, until: lastDay(entry), reserve: entry.in_reserve || 0, bodyWeight: entry.bodyweight ? readMass(entry.bodyweight) : null, entry: i });
        if (old) keep(say('results.measured_otherwise'));
      }
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
    /** @param {'paused' | 'restrict'} kind */
    const pauses = (kind) => (exported[kind] || []).forEach((entry, i) => {
      const movement = entry.movement === undefined ? null : model.numbers.get(entry.movement);
      const [part, cls, pattern] = [of(model.tables.parts, entry.part), of(model.tables.classes, entry.class), of(model.tables.patterns, entry.pattern)];
      if (movement === undefined || part === -1 || cls === -1 || pattern === -1) {
        aside.push({ movement: String(entry.movement || entry.part || entry.class || entry.pattern), got: kind, on: entry.on, why: say('results.no_such_part') });
        return;
      }
      out.pauses.push({ kind, movement, part, cls, pattern, on: Number(readDay(entry.on)), until: lastDay(entry), by: entry.by || null, because: entry.because || null, entry: i });
    });
    pauses('paused');
    pauses('restrict');
    (exported.cleared || []).forEach((entry, i) => {
      const cls = model.tables.classes.indexOf(entry.class), on = Number(readDay(entry.on));
      if (cls === -1) aside.push({ movement: entry.class, got: 'cleared', on: entry.on, why: say('results.no_such_part') });
      else out.cleared.push({ cls, on, until: lastDay(entry), by: entry.by || null, entry: i });
    });
    (exported.pain || []).forEach((entry, i) => {
      const part = model.tables.parts.indexOf(entry.part), on = Number(readDay(entry.on));
      if (part === -1 || on > day) aside.push({ movement: 'pain', got: `${entry.part} ${entry.score}`, on: entry.on, why: part === -1 ? say('results.no_such_part') : say('results.to_come') });
      else out.pains.push({ part, score: entry.score, nextMorning: entry.next_morning === undefined ? null : entry.next_morning, signs: entry.signs || [], on, entry: i });
    });
    out.pains = worstOfDay(out.pains).map((of) => {
      const mornings = out.pains.flatMap(({ part, on, nextMorning }) => (part === of.part && on === of.on && nextMorning !== null ? [nextMorning] : []));
      return { ...of, signs: SIGNS.filter((sign) => of.signs.includes(sign)), nextMorning: mornings.length ? Math.max(...mornings) : null };
    });
    (exported.remarks || []).forEach((entry) => {
      const movement = model.numbers.get(entry.movement);
      if (movement === undefined) aside.push({ movement: entry.movement, got: 'remark', on: entry.on, why: say('results.no_such_movement') });
      else out.remarks.push({ movement, on: Number(readDay(entry.on)), words: entry.words });
    });
    return { person: out, aside };
  };

  globalThis.rungbook.results = { VERSION, KEYS, KINDS, FACTS: Object.keys(FACT), SIGNS, LARGEST_FILE, Refused, check, entry, fact, nobody, readFile, person, ageOn, readDay, dayText, dayWords, spanWords, today };
})();
