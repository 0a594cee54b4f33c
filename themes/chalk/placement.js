'use strict';
// The guided self-test: which question next. The same rule as the program's own, on the same tables.
(() => {
  const { value, leavesOf, presume, TRUE, UNKNOWN, FALSE, UNTESTED, GUARDED } = globalThis.rungbook.readiness;
  /** How much an answer leaves to do, worked out once for a chain as it stands: first the answer met, then missed.
   * @type {WeakMap<Assessment, Map<number[], Map<number, [number, number]>>>} */
  const worked = new WeakMap();

  /**
   * The next question for a skill, or null when everything is decided or nothing may be asked.
   * @param {Model} model @param {Assessment} assessment @param {number[]} chain the skill's movements
   * @param {number[]} asked movements that were asked already and left open @param {number} today
   * @returns {{ movement: number, today: boolean, left: number } | null}
   */
  const next = (model, assessment, chain, asked, today) => {
    const { tables } = model, { state } = tables.placement;
    const members = [...chain].sort((a, b) => tables.stage[a] - tables.stage[b] || a - b);
    const paused = (/** @type {number} */ m) => !assessment.reached[m];
    /** @type {Board} */
    const now = {
      shown: assessment.known.shown, presumed: assessment.known.presumed,
      isTested: (m) => assessment.known.latest.has(m),
    };
    const judge = (/** @type {Board} */ board, /** @type {number} */ leaf, /** @type {boolean} */ guarded) => {
      if (board.shown[leaf] !== UNTESTED) return board.shown[leaf];
      return board.presumed[leaf] && !guarded ? TRUE : UNKNOWN;
    };
    const needs = (/** @type {Board} */ board, /** @type {number} */ m) => value(tables.needs[m], (leaf) => judge(board, leaf, model.is(m, GUARDED)));
    /** What a consistent client cannot have: it stands above something that is missing. @param {Board} board */
    const beyond = (board) => {
      const out = new Uint8Array(model.count);
      for (let changed = true; changed;) {
        changed = false;
        for (const m of members) {
          if (out[m]) continue;
          const guarded = model.is(m, GUARDED);
          const worth = value(tables.needs[m], (leaf) => {
            const judged = judge(board, leaf, guarded), of = model.of(leaf);
            return judged === UNKNOWN && out[of] && !board.isTested(of) && !board.presumed[leaf] ? FALSE : judged;
          });
          if (worth === FALSE) {
            out[m] = 1;
            changed = true;
          }
        }
      }
      return out;
    };
    const isOwned = (/** @type {Board} */ board, /** @type {number} */ m) => board.shown[m] === TRUE || (board.shown[m] === UNTESTED && board.presumed[m] === 1);
    const undecided = (/** @type {Board} */ board, /** @type {Uint8Array} */ past) =>
      members.filter((m) => !paused(m) && !past[m] && !isOwned(board, m) && needs(board, m) === UNKNOWN);
    /** The board after a movement met all that is asked of it, or missed it all. @param {number} m @param {boolean} met */
    const after = (m, met) => {
      const shown = now.shown.slice(), presumed = now.presumed.slice();
      const isTested = (/** @type {number} */ other) => other === m || now.isTested(other);
      for (const leaf of model.demands[m]) {
        presumed[leaf] = 0;
        shown[leaf] = met ? TRUE : FALSE;
      }
      if (met && tables.presume) presume(model, [m], isTested, presumed);
      return { shown, presumed, isTested };
    };
    /** The movements of which a number would still tell something. @param {Board} board @param {number[]} open @param {Uint8Array} past */
    const useful = (board, open, past) => {
      /** @type {Set<number>} */
      const out = new Set();
      for (const m of open) {
        const guarded = model.is(m, GUARDED);
        for (const leaf of leavesOf(tables.needs[m])) {
          const of = model.of(leaf);
          if (judge(board, leaf, guarded) === UNKNOWN && !past[of] && !paused(of)) out.add(of);
        }
      }
      return out;
    };
    /** How much an answer leaves to do: the states in doubt, and the questions that could still be asked about them. @param {number} m @param {boolean} met */
    const left = (m, met) => {
      const board = after(m, met), above = beyond(board), doubt = undecided(board, above);
      return (state * doubt.length + useful(board, doubt, above).size) ** 2;
    };
    const chains = worked.get(assessment) || new Map(), known = chains.get(chain) || new Map();
    worked.set(assessment, chains.set(chain, known));
    const lefts = (/** @type {number} */ m) => {
      const both = known.get(m) || [left(m, true), left(m, false)];
      known.set(m, both);
      return both;
    };
    const past = beyond(now);
    const open = undecided(now, past);
    const unasked = [...useful(now, open, past)].filter((m) => !asked.includes(m));
    // A test bars for the rest of the day what should have come before it: of the tests for today only the earliest in the
    // day's order are offered.
    const forToday = unasked.filter((m) => mayBeTested(model, assessment, m, today));
    const earliest = Math.min(...forToday.map((m) => tables.day_order[m]));
    const candidates = unasked.filter((m) => !forToday.includes(m) || tables.day_order[m] === earliest);
    const stages = (/** @type {number[]} */ list) => list.map((m) => tables.stage[m]);
    const owned = Math.max(-1, ...stages(members.filter((m) => isOwned(now, m))));
    const missing = Math.min(Infinity, ...stages(members.filter((m) => now.shown[m] === FALSE)));
    const likely = (/** @type {number} */ m) => 5 + (tables.stage[m] <= owned ? 4 : 0) - (tables.stage[m] >= missing ? 3 : 0);
    /** @type {number[] | null} */
    let best = null;
    for (const m of candidates) {
      const [met, missed] = lefts(m), rank = [likely(m) * met + (10 - likely(m)) * missed, tables.day_order[m], m];
      if (!best || rank[0] - best[0] < 0 || (rank[0] === best[0] && (rank[1] - best[1] || rank[2] - best[2]) < 0)) best = rank;
    }
    return best && { movement: best[2], today: mayBeTested(model, assessment, best[2], today), left: unasked.length };
  };

  /** Whether a result took any work: what was never done leaves the day as fresh as it was. @param {Tested} of */
  const isDone = ({ sides }) => sides.some(({ amount }) => amount !== 0);
  /** Whether a movement may be tested today: its needs are shown, and the day has room for it.
   * @param {Model} model @param {Assessment} assessment @param {number} m @param {number} today */
  const mayBeTested = (model, assessment, m, today) => {
    const { tables } = model, { strength, all_out_sets: most } = tables.placement;
    const done = [...assessment.known.latest].filter(([, results]) => results[0].on === today && results.some(isDone));
    const inOrder = done.every(([of]) => tables.day_order[of] <= tables.day_order[m]);
    // A set for each result, and more where it says several sets or tries; both sides together are one.
    const sets = (/** @type {Tested} */ { sides }) => Math.max(...sides.map((got) => got.sets * Math.max(got.of, 1)));
    const same = done.filter(([of]) => tables.pattern[of] === tables.pattern[m]).flatMap(([, results]) => results).filter(isDone).reduce((all, tested) => all + sets(tested), 0);
    const fresh = tables.day_order[m] < strength || same < most;
    return Boolean(assessment.reached[m]) && inOrder && fresh && assessment.needs[m] === TRUE;
  };

  globalThis.rungbook.placement = { next, mayBeTested };
})();
