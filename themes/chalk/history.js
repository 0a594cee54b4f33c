'use strict';
'after page.js states.js training.js aim.js';
// What dated results say of a movement, and its drawing: the program's own (`src/history`), on the same tables. Worked out here,
// drawn where a page asks for it. No storage, no clock.
(() => {
  const { targets, readiness, results, training, page } = globalThis.rungbook;
  const { ONE, KILOGRAM, DONE, MASS, NO_LOAD } = targets;
  const { LIMITS } = globalThis.rungbook.health;
  const { LOADED } = training.TRAITS;
  const { say } = globalThis.rungbook.words;
  const WEEK = 7;

  /** @param {Point} a @param {Point} b @param {boolean} atMost */
  const isAbove = (a, b, atMost) => a.load > b.load || (a.load === b.load && (atMost ? a.amount < b.amount : a.amount > b.amount));
  /** @param {Point} a @param {Point} b @param {boolean} atMost */
  const covers = (a, b, atMost) => (atMost ? a.amount <= b.amount : a.amount >= b.amount) && a.load >= b.load && a.hits * b.of >= b.hits * a.of;
  /** The best of each day, by day; loads in shares of an unknown body weight are left out. @param {Trainee} c @param {number} m @param {Tested[]} [of] @returns {Point[]} */
  const points = (c, m, of = c.tests.get(m) || []) => {
    const { atMost } = c.model.target(m);
    /** @type {Map<number, Point>} */
    const byDay = new Map();
    for (const tested of of) {
      const weight = tested.bodyWeight === null ? c.person.bodyWeight : tested.bodyWeight;
      if (tested.on > c.day || tested.sides.some(({ unit, load }) => load !== 0 && readiness.mass(unit, load, weight) === null)) continue;
      const point = { ...training.ofTest(c, m, tested), on: tested.on }, best = byDay.get(tested.on);
      if (!best || isAbove(point, best, atMost)) byDay.set(tested.on, point);
    }
    return [...byDay.values()].sort((a, b) => a.on - b.on);
  };

  /** The median slope of all pairs (Theil 1950, Sen 1968). @param {number[]} x @param {number[]} y */
  const slope = (x, y) => {
    const all = x.flatMap((a, i) => x.slice(i + 1).map((b, j) => (a === b ? null : (y[i + 1 + j] - y[i]) / (b - a)))).filter((n) => n !== null).map(Number).sort((a, b) => a - b);
    const middle = Math.floor(all.length / 2);
    return all.length === 0 ? null : all.length % 2 ? all[middle] : (all[middle - 1] + all[middle]) / 2;
  };
  /** @param {Trainee} c @param {Point[]} all @returns {{ perWeek: number, byLoad: boolean } | null} */
  const trend = ({ day, tables: { history: H } }, all) => {
    const recent = all.filter(({ on }) => on <= day && day - on <= H.trend_days), [first] = recent;
    if (recent.length < H.tests || recent.some(({ hits, of }) => hits !== first.hits || of !== first.of)) return null;
    const byLoad = recent.some(({ load }) => load !== first.load);
    if (byLoad && recent.some(({ amount }) => amount !== first.amount)) return null;
    const perWeek = slope(recent.map(({ on }) => (on - first.on) / WEEK), recent.map(({ amount, load }) => (byLoad ? load / KILOGRAM : amount / ONE)));
    return perWeek === null ? null : { perWeek, byLoad };
  };
  /** Whether a trend loses at least a twentieth of the best within the days of standing still. @param {Trainee} c @param {Point[]} all @param {{ perWeek: number, byLoad: boolean }} of @param {boolean} atMost */
  const slides = ({ tables: { history: H } }, all, { perWeek, byLoad }, atMost) => {
    const turn = atMost ? -1 : 1, best = Math.max(...all.map(({ amount, load }) => turn * (byLoad ? load / KILOGRAM : amount / ONE)));
    const lost = (-turn * perWeek * H.still_days) / WEEK;
    return lost > 0 && lost * 1000 >= Math.abs(best) * H.sliding;
  };
  /** No new best for six weeks, with tests in them. @param {Trainee} c @param {Point[]} all @param {boolean} atMost */
  const stalled = ({ day, tables: { history: H } }, all, atMost) => {
    const bests = all.filter((one, i) => !all.slice(0, i).some((before) => covers(before, one, atMost))), newest = bests[bests.length - 1];
    if (!newest || day - newest.on < H.still_days || all.filter(({ on }) => on <= day && day - on < H.still_days).length < H.tests) return null;
    return { since: newest.on, weeks: Math.floor((day - newest.on) / WEEK) };
  };
  /** The last two each well below the best before. @param {Trainee} c @param {Point[]} all @param {boolean} atMost */
  const fallen = ({ day, tables: { history: H } }, all, atMost) => {
    if (all.length < 3) return null;
    const last = all.slice(-2), before = all.slice(0, -2);
    if (day - last[0].on > H.trend_days) return null;
    const low = (/** @type {number} */ now, /** @type {number} */ then) => BigInt(now) * 1000n < BigInt(then) * BigInt(H.falling);
    const isBelow = (/** @type {Point} */ now, /** @type {Point} */ best) => (atMost ? best.amount > 0 && low(best.amount, now.amount)
      : (now.load <= best.load && low(now.amount, best.amount)) || (best.load > 0 && now.amount <= best.amount && low(now.load, best.load)));
    const above = before.filter((best) => last.every((now) => isBelow(now, best)));
    return above.length ? { best: above.reduce((a, b) => (isAbove(b, a, atMost) ? b : a)), last } : null;
  };

  // ---- what explains a plateau, and what to change

  /** Sets of a kind, or of all, from a day to a day. @param {Trainee} c @param {number | null} kind @param {number} from @param {number} to */
  const inLog = (c, kind, from, to) => c.log.filter((of) => of.on >= from && of.on <= to && (kind === null || c.facts.kind(of.movement) === kind));
  /** @param {{ did: number[] }[]} log */
  const sets = (log) => log.reduce((n, { did }) => n + did.length, 0);
  /** @param {Trainee} c @param {number} m */
  const isExplained = (c, m) => {
    const { K, day, person, model, tables, tables: { history: H } } = c, begins = day + 1 - H.still_days;
    const long = (/** @type {Pause} */ p) => readiness.reaches(model, p, m) && Math.min(p.until === null ? day : p.until, day) - Math.max(p.on, begins) + 1 >= K.pause_days;
    // Who is to ask a clinician first trains nothing.
    if (training.isRefused(person, day)) return true;
    const hurts = person.pains.some((p) => p.on >= begins && p.on <= day && ((tables.stresses[m] >> p.part) & 1) === 1 && (p.score >= LIMITS.pain[0] || readiness.isPausing(model, person, p, day)));
    if (hurts || c.found.states[m] === readiness.PAUSED || person.pauses.some(long)) return true;
    const kind = c.facts.kind(m), before = sets(inLog(c, kind, begins - H.still_days, begins - 1));
    if (before > 0 && 2 * sets(inLog(c, kind, begins, day)) <= before) return true;
    const days = [...(c.daysOf.get(tables.pattern[m]) || []).map(({ on }) => on), day];
    return days.some((on, i) => i > 0 && on > begins && on - Math.max(days[i - 1], begins) >= K.off[0]);
  };
  /** Five weeks of log without a light one. @param {Trainee} c */
  const isLighterDue = (c) => {
    const { day, tables: { history: H } } = c, begins = day - H.lighter_days, weeks = Math.floor(H.lighter_days / WEEK);
    if (!c.log.length || c.log[0].on > begins) return false;
    const total = sets(inLog(c, null, begins, day - 1));
    for (let start = 0; start <= H.lighter_days - WEEK; start += 1) if (2 * weeks * sets(inLog(c, null, begins + start, begins + start + WEEK - 1)) <= total) return false;
    return true;
  };
  /** The lowest harder neighbour that may be trained, else what adds weight. @param {Trainee} c @param {number} m */
  const harder = (c, m) => {
    const { model, tables, facts } = c;
    const lowest = (/** @type {number[]} */ of) => of.filter((up) => training.may(c, up) && (!c.minor || !facts.has(up, LOADED))).sort((a, b) => tables.stage[a] - tables.stage[b] || a - b)[0];
    const up = lowest(facts.harder[m]);
    const asks = (/** @type {number} */ of) => readiness.leavesOf(tables.needs[of]).some((leaf) => model.of(leaf) === m && model.target(leaf).amount >= ONE);
    return up !== undefined ? up : lowest(model.order.filter((of) => facts.has(of, LOADED) && tables.pattern[of] === tables.pattern[m] && asks(of)));
  };
  /** @param {Trainee} c @param {number | null} limiter a movement @param {number} m @param {boolean} falling @returns {{ key: string, movement: number | null }} */
  const advice = (c, limiter, m, falling) => {
    const { K, day, tables: { history: H } } = c, plain = (/** @type {string} */ key) => ({ key, movement: null });
    if (isLighterDue(c)) return plain('lighter_week');
    if (falling) return plain('rest');
    if (limiter !== null && limiter !== m && training.chainOf(c.model, [m]).includes(limiter)) return { key: 'below', movement: limiter };
    const log = inLog(c, c.facts.kind(m), day - K.logged, day), weeks = Math.floor(K.logged / WEEK);
    if (sets(log) < K.cap[0] * weeks) return plain('sets');
    if (new Set(log.map(({ on }) => on)).size < H.days_a_week * weeks) return plain('days');
    const up = harder(c, m);
    return up === undefined ? plain('rest') : { key: 'harder', movement: up };
  };

  /** The histories of all tested movements; `limiter` is the movement that holds back, null where none is said. @param {Trainee} c @param {number | null} limiter @returns {MovementHistory[]} */
  const histories = (c, limiter) => [...c.tests.keys()].sort((a, b) => a - b).filter((m) => c.facts.measure(m) !== DONE).map((m) => {
    const { atMost } = c.model.target(m), all = points(c, m), since = stalled(c, all, atMost), of = trend(c, all), falling = of !== null && slides(c, all, of, atMost);
    return { movement: m, points: all, trend: of, still: since && !isExplained(c, m) ? { ...since, falling, advice: advice(c, limiter, m, falling) } : null, fallen: fallen(c, all, atMost) };
  });
  /** What holds back, where anything may be said of it. @param {Trainee} c */
  const limiterOf = (c) => {
    if (training.isRefused(c.person, c.day)) return null;
    const goal = training.goalOf(c), gaps = goal ? training.gaps(c, goal) : new Map(), { limiter } = training.candidates(c, goal, gaps);
    return limiter ? limiter.movement : null;
  };

  // ---- in words

  const units = () => (page && page.units ? page.units.ofSchool : 'metric');
  /** @param {number} measure @param {number} amount @param {number} load @returns {Got} */
  const gotOf = (measure, amount, load) => ({ measure, atMost: false, sets: 1, amount, seconds: 0, unit: load ? MASS : NO_LOAD, load, hits: 0, of: 0 });
  /** One line: falling, standing still with what to change, or the trend. `name` says a movement. @template T
   * @param {Trainee} c @param {MovementHistory} of @param {(key: string, values: Record<string, any>) => T} say @param {(m: number) => any} name @returns {T} */
  const line = (c, { movement, trend: of, still, fallen: fall }, say, name) => {
    const { tables: { history: H } } = c, measure = c.facts.measure(movement);
    const shown = (/** @type {Point} */ { amount, load }) => targets.words(gotOf(measure, amount, load), units());
    if (fall) return say('history.falls', { first: shown(fall.last[0]), then: shown(fall.last[1]), best: shown(fall.best), day: results.dayWords(fall.best.on) });
    if (still) {
      const of_ = still.advice, values = { n: still.weeks, advice: say(`morning.advice.${of_.key}`, of_.movement === null ? {} : { movement: name(of_.movement) }) };
      return still.falling ? say('history.slides', values) : say('history.still', values);
    }
    if (!of) return say('history.early', { n: H.tests, weeks: Math.floor(H.trend_days / WEEK) });
    const tenths = Math.round(Math.abs(of.perWeek) * 10);
    if (tenths === 0) return say('history.level', {});
    const amount = of.byLoad ? targets.massInWords(tenths * (KILOGRAM / 10), true, units()) : targets.words(gotOf(measure, tenths * (ONE / 10), 0), units());
    return of.perWeek > 0 ? say('history.more', { amount }) : say('history.less', { amount });
  };

  // ---- the drawing

  /** Its numbers: the program's own. @param {Trainee} c @param {MovementHistory} of @returns {HistoryDrawing | null} */
  const drawing = (c, { movement: m, points: all }) => {
    if (!all.length) return null;
    const { left, right, top, foot, apart, narrowest } = c.tables.drawing;
    const { model, person, day } = c, [first] = all, newest = all[all.length - 1], standard = model.target(m);
    const byLoad = all.some(({ load }) => load !== first.load) && all.every(({ amount }) => amount === first.amount);
    const value = (/** @type {{ amount: number, load: number }} */ of) => (byLoad ? of.load : of.amount);
    const asked = [m, ...model.demands[m]].map((leaf) => { const of = model.target(leaf); return { amount: of.amount, load: of.load === 0 ? 0 : readiness.mass(of.unit, of.load, person.bodyWeight) }; })
      .filter(({ amount, load }) => load !== null && (byLoad ? amount <= first.amount : load === newest.load)).map(({ amount, load }) => value({ amount, load: Number(load) }));
    const steps = [...new Set(asked)].sort((a, b) => a - b), values = all.map(value);
    const low = Math.min(0, ...steps, ...values), high = Math.max(low + 1, ...steps, ...values);
    const y = (/** @type {number} */ v) => { const part = Math.floor(((v - low) * (foot - top)) / (high - low)); return standard.atMost ? top + part : foot - part; };
    const span = Math.max(1, day - first.on), x = (/** @type {number} */ on) => left + Math.floor(((on - first.on) * (right - left)) / span);
    const rungs = steps.map((v) => ({ y: y(v), at: byLoad ? gotOf(standard.measure, first.amount, v) : gotOf(standard.measure, v, 0), named: true }));
    let last = /** @type {number | null} */ (null);
    for (const rung of [...rungs].reverse()) {
      rung.named = last === null || Math.abs(last - rung.y) >= apart;
      if (rung.named) last = rung.y;
    }
    const days = [...new Set((c.trained.get(m) || []).map(({ on }) => on))].filter((on) => on >= first.on);
    const kinds = ['paused', 'restrict'], order = (/** @type {Pause} */ p) => kinds.indexOf(p.kind);
    const rests = person.pauses.filter((p) => order(p) >= 0 && readiness.reaches(model, p, m)).sort((a, b) => order(a) - order(b))
      .map((p) => [Math.max(p.on, first.on), p.until === null ? day : Math.min(p.until, day)]).filter(([begins, ends]) => begins <= ends);
    return {
      rungs, marks: all.map((of) => [x(of.on), y(value(of))]), ticks: days.map(x), bands: rests.map(([begins, ends]) => [x(begins), Math.max(x(ends) - x(begins), narrowest)]), from: first.on, to: day, rests,
    };
  };
  /** A movement with its signal word. @param {Tables} tables @param {number} m */
  const inText = (tables, m) => { const mark = tables.marks[tables.mark[m]]; return mark ? say('part.name_with_signal', { name: tables.names[m], signal: mark.word }) : tables.names[m]; };
  /** What the tests compare. @param {Model} model @param {Person} person @param {Assessment} found @param {number} day */
  const answer = (model, person, found, day) => {
    const c = training.begin(model, person, found, day);
    const point = (/** @type {Point} */ { on, amount, load }) => [results.dayText(on), amount, load];
    return Object.fromEntries(histories(c, limiterOf(c)).map((of) => {
      const drawn = drawing(c, of), at = (/** @type {Got} */ got) => targets.words(got, units());
      return [c.tables.ids[of.movement], {
        tests: of.points.map(point), trend: of.trend && Math.round(of.trend.perWeek * 1000) / 1000, by_load: of.trend && of.trend.byLoad,
        still: of.still && [results.dayText(of.still.since), of.still.weeks, of.still.advice.key, of.still.advice.movement === null ? null : c.tables.ids[of.still.advice.movement]],
        fallen: of.fallen && [of.fallen.best, ...of.fallen.last].map(point), says: line(c, of, say, (m) => inText(c.tables, m)),
        drawn: drawn && { rungs: drawn.rungs.map(({ y, at: got, named }) => [y, at(got), named]), marks: drawn.marks, ticks: drawn.ticks, bands: drawn.bands, rests: drawn.rests.map((two) => two.map(results.dayText)) },
      }];
    }));
  };

  // ---- on a page

  const SVG = 'http://www.w3.org/2000/svg';
  /** @param {string} tag @param {Record<string, string | number>} attributes @param {string} [text] */
  const svg = (tag, attributes, text) => {
    const out = document.createElementNS(SVG, tag);
    for (const [key, of] of Object.entries(attributes)) out.setAttribute(key, String(of));
    if (text !== undefined) out.textContent = text;
    return out;
  };
  /** The drawing as an element; the table beside it says the same. @param {Trainee} c @param {MovementHistory} of */
  const picture = (c, of) => {
    const drawn = drawing(c, of);
    if (!drawn) return null;
    const { width, height, left, right, band, tick, days, mark, drop } = c.tables.drawing;
    const measure = c.facts.measure(of.movement), { marks } = drawn, dot = marks[marks.length - 1];
    const label = (/** @type {Got} */ got, /** @type {Record<string, string | number>} */ at) => {
      const own = targets.words(got, page.units.ofSchool), other = targets.words(got, page.units.ofOther);
      return svg('text', own === other ? at : { ...at, 'data-other': other }, own);
    };
    const got = (/** @type {Point} */ { amount, load }) => gotOf(measure, amount, load);
    // Time goes to the right in every language. A text that is read from the right begins at its right end.
    const direction = document.documentElement.dir === 'rtl' ? 'rtl' : 'ltr', [starts, ends] = direction === 'rtl' ? ['end', 'start'] : ['start', 'end'];
    const out = svg('svg', { class: 'history-drawing', viewBox: `0 0 ${width} ${height}`, direction, 'aria-hidden': 'true' });
    out.append(...drawn.bands.map(([x, wide]) => svg('rect', { class: 'rests', x, y: band[0], width: wide, height: band[1] - band[0] })),
      ...drawn.rungs.flatMap(({ y, at, named }) => [svg('path', { class: 'rung', d: `M${left} ${y}H${right}` }), ...(named ? [label(at, { x: left - 40, y: y + drop, 'text-anchor': ends })] : [])]),
      svg('polyline', { points: marks.map(([x, y]) => `${x},${y}`).join(' ') }), ...marks.map(([cx, cy]) => svg('circle', { cx, cy, r: mark })),
      ...drawn.ticks.map((x) => svg('path', { class: 'tick', d: `M${x} ${tick[0]}V${tick[1]}` })),
      ...(marks.length > 1 && !drawn.rungs.some(({ y, named }) => named && y === marks[0][1]) ? [label(got(of.points[0]), { x: marks[0][0] + 20, y: marks[0][1] - 60, 'text-anchor': starts })] : []),
      label(got(of.points[of.points.length - 1]), { class: 'newest', x: right + 50, y: dot[1] + drop, 'text-anchor': starts }),
      svg('text', { x: left, y: days, 'text-anchor': 'middle' }, results.dayWords(drawn.from)), svg('text', { x: right, y: days, 'text-anchor': 'middle' }, results.dayWords(drawn.to)));
    return out;
  };
  /** What the drawing says beside its tests: what is asked, training, pauses. @param {Trainee} c @param {MovementHistory} of @returns {HTMLElement[]} */
  const beside = (c, of) => {
    const drawn = drawing(c, of);
    if (!drawn) return [];
    const list = drawn.rungs.map(({ at }) => targets.words(at, units())).join(say('list.separator'));
    const { make } = page;
    return [...(list ? [make('p', { text: say('history.asked', { list }) })] : []), ...(drawn.ticks.length ? [make('p', { text: say('history.trained', { n: drawn.ticks.length }) })] : []),
      ...drawn.rests.map(([first, last]) => make('p', { text: say('history.rested', { first: results.dayWords(first), last: results.dayWords(last) }) }))];
  };
  /** Its test days and results. @param {Trainee} c @param {MovementHistory} of */
  const table = (c, { movement, points: all }) => {
    const { make } = page, measure = c.facts.measure(movement);
    return make('table', { class: 'history-table' }, make('thead', {}, make('tr', {}, make('th', { scope: 'col', text: say('history.day') }), make('th', { scope: 'col', text: say('history.result') }))),
      make('tbody', {}, ...all.map(({ on, amount, load }) => make('tr', {}, make('th', { scope: 'row', text: results.dayWords(on) }), make('td', { text: targets.words(gotOf(measure, amount, load), units()) })))));
  };
  /** Its line with marked names. @param {Trainee} c @param {MovementHistory} of @returns {HTMLElement} */
  const says = (c, of) => page.make('p', {}, .../** @type {any[]} */ (line(c, of, /** @type {any} */ (globalThis.rungbook.words.sayNodes), (m) => page.named(c.tables, m))));

  globalThis.rungbook.history = { points, isAbove, covers, histories, limiterOf, line, drawing, picture, table, beside, says, answer };
})();
