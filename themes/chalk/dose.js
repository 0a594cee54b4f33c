'use strict';
// Working sets from one's own results: which variation fits today, how many, and why; skill practice beside them. The same as
// the program's own, on the same tables. Only what is open or owned, never beyond the best set.
(() => {
  const { text: targetText, ONE, REPS, TIME, DONE, NO_LOAD, MASS, BODY_WEIGHT } = globalThis.rungbook.targets;
  const { OPEN, OWNED, GUARDED, LOWERING } = globalThis.rungbook.readiness;
  const PATTERNS = ['vertical push', 'vertical pull', 'horizontal push', 'horizontal pull', 'squat', 'hinge', 'carry', 'core'];
  const { say } = globalThis.rungbook.words;
  const UNTESTED = 'untested', ABOVE = 'above', KEEP = 'keep', SHORT = 'short', BELOW = 'below';
  const PUSH = ['vertical push', 'horizontal push'], PULL = ['vertical pull', 'horizontal pull'];
  const LONG_OFF = 14, A_WEEK = 7, MOST_SESSIONS = 3, WEEKLY_LEAST = 6, WEEKLY_MOST = 15, HELD_LEAST = 30, HELD_MOST = 90;
  const threeFifths = (/** @type {number} */ part) => Math.floor((part * 3) / 5);

  /** @typedef {{ unit: number, load: number }} Load */
  /** @param {Load} of @returns {Load} a load of 0 is none */
  const plain = ({ unit, load }) => (load === 0 ? { unit: NO_LOAD, load: 0 } : { unit, load });
  /** Help below none below added; of two of one unit by the number, else a share of body weight above a mass. @param {Load} a @param {Load} b */
  const compareLoads = (a, b) => {
    const [x, y] = [plain(a), plain(b)];
    return Math.sign(x.load) - Math.sign(y.load) || (x.unit === BODY_WEIGHT ? 1 : 0) - (y.unit === BODY_WEIGHT ? 1 : 0) || x.load - y.load;
  };

  /**
   * Picks working sets and skill practice among some movements.
   * @param {Model} model @param {Assessment} assessment @param {Person} person @param {number[]} list @param {number} today
   * @returns {{ picks: WorkingPick[], practice: WorkingPractice[] }}
   */
  const working = (model, assessment, person, list, today) => {
    const { tables } = model, school = tables.dose_of_school;
    const sessionsAWeek = Math.min(MOST_SESSIONS, Math.max(1, school.a_week));
    // The sets of a session that keep a pattern's week within its bounds.
    const fewestSets = Math.ceil(WEEKLY_LEAST / sessionsAWeek), mostSets = Math.floor(WEEKLY_MOST / sessionsAWeek);
    // What is trained today has its say from tomorrow on, so that the card stays while it is done.
    const trainedBefore = person.trained.filter(({ on }) => on < today);
    const counts = (/** @type {number} */ on) => today - on >= 0 && today - on <= tables.results_last_days;
    const measure = (/** @type {number} */ m) => model.target(m).measure;
    const state = (/** @type {number} */ m) => assessment.states[m];
    const harder = (/** @type {number} */ a, /** @type {number} */ b) => tables.stage[a] - tables.stage[b] || a - b;

    /** @param {Tested} tested @returns {Best} */
    const ofTest = ({ sides, reserve }) => {
      const load = sides.map((side) => ({ unit: side.unit, load: side.load })).reduce((a, b) => (compareLoads(b, a) < 0 ? b : a));
      const sets = Math.min(...sides.map((side) => side.sets));
      const more = sides[0].measure === REPS ? reserve + (sets >= 3 ? 2 : 0) : 0;
      return { amount: Math.floor(Math.min(...sides.map((side) => side.amount)) / ONE) + more, ...plain(load) };
    };
    /** @type {Map<number, Best | null>} */
    const known = new Map();
    /** The best set of a movement; null when untested. @param {number} m @returns {Best | null} */
    const best = (m) => {
      const kept = known.get(m);
      if (kept !== undefined) return kept;
      const tested = person.tested.filter(({ movement, on }) => movement === m && counts(on));
      const latest = Math.max(...tested.map(({ on }) => on));
      /** @type {Best | null} */
      let found = null;
      for (const one of tested.filter(({ on }) => on === latest).map(ofTest)) {
        const by = found ? compareLoads(one, found) || one.amount - found.amount : 1;
        if (by > 0) found = one;
      }
      if (!found) {
        const trained = trainedBefore.filter(({ movement, on }) => movement === m && counts(on));
        const last = Math.max(...trained.map(({ on }) => on));
        const session = trained.find(({ on }) => on === last);
        if (session) {
          const reserve = measure(m) === REPS ? session.reserve || 0 : 0;
          found = { amount: Math.floor(Math.max(0, ...session.did) / ONE) + reserve, ...plain(session) };
        }
      }
      known.set(m, found);
      return found;
    };

    const isAtHand = (/** @type {number} */ m) => {
      const { have } = person;
      return have === null || tables.equipment[m].every((oneOf) => oneOf.some((word) => have.includes(word)));
    };
    const canDo = (/** @type {number} */ m) => { const b = best(m); return b === null || b.amount > 0; };
    const isTrainable = (/** @type {number} */ m) => (state(m) === OPEN || state(m) === OWNED) && PATTERNS.includes(tables.patterns[tables.pattern[m]])
      && (measure(m) === REPS || measure(m) === TIME) && isAtHand(m) && canDo(m);

    /** Sets, amount and seconds of each rep. @param {number} m */
    const doseOf = (m) => {
      const own = tables.dose[m], each = model.target(m).seconds;
      if (own && own[0] === measure(m)) return { sets: own[1], amount: Math.floor(own[2] / ONE), seconds: own[3] > 0 ? own[3] : each };
      return measure(m) === TIME ? { sets: school.hold_sets, amount: school.hold_seconds, seconds: 0 } : { sets: school.sets, amount: school.reps, seconds: each };
    };
    /** What a first try is done with: the load or the help of the dose, else the help of the standard. @param {number} m @returns {Load} */
    const firstLoad = (m) => {
      const own = tables.dose[m], { unit, load } = model.target(m);
      if (own && own[0] === measure(m) && own[5] !== 0) return { unit: own[4], load: own[5] };
      return load < 0 ? { unit, load } : { unit: NO_LOAD, load: 0 };
    };
    /** @param {number} m */
    const fitOf = (m) => {
      const b = best(m), { amount } = doseOf(m);
      if (!b) return UNTESTED;
      if (measure(m) === TIME) return b.amount > 3 * amount ? ABOVE : b.amount >= 5 ? KEEP : SHORT;
      const over = b.amount - amount;
      return over >= 6 ? ABOVE : over >= 2 ? KEEP : over >= 0 ? SHORT : BELOW;
    };
    /** Sets and seconds of a hold: 30 to 90 seconds in all, in the sets that a week allows; longer ones up to two thirds of the best where those do not make 30. @param {number} b */
    const held = (b) => {
      const hold = Math.max(1, threeFifths(b));
      const sets = Math.min(mostSets, Math.max(fewestSets, Math.ceil(HELD_LEAST / hold)));
      const longer = Math.min(Math.floor((b * 2) / 3), Math.ceil(HELD_LEAST / sets));
      return { sets, hold: Math.min(Math.max(hold, longer), Math.floor(HELD_MOST / sets)) };
    };

    /** A movement by its own fit. @param {number} m @returns {WorkingPick} */
    const prescribe = (m) => {
      const fit = fitOf(m), dose = doseOf(m), at = best(m), b = at ? at.amount : 0;
      const careful = model.is(m, GUARDED) || model.is(m, LOWERING), timed = measure(m) === TIME;
      let { amount } = dose, sets = Math.min(mostSets, Math.max(fewestSets, dose.sets)), why = '';
      if (fit === UNTESTED) {
        sets = 2;
        amount = timed ? (careful ? 3 : 5) : careful ? 2 : 3;
        why = say('dose.never_tested');
      } else if (timed) {
        const of = held(b);
        sets = of.sets;
        amount = of.hold;
        why = say('dose.best_hold', { best: b, amount, all: sets * amount });
        if (2 * amount < b) why = say('dose.short_hold', { why });
      } else if (fit === KEEP) {
        why = say('dose.in_reserve', { best: b, sets, amount, left: b - amount });
      } else if (fit === SHORT) {
        amount = Math.max(1, threeFifths(amount));
        why = say('dose.close', { best: b });
      } else if (fit === ABOVE) {
        amount = Math.min(b - 4, 20);
        why = say('dose.more', { best: b });
      } else {
        amount = Math.max(1, b - 1);
        why = say('dose.below', { best: b });
      }
      return { movement: m, measure: measure(m), sets, amount, seconds: timed ? 0 : dose.seconds, ...(at ? plain(at) : firstLoad(m)), text: '', why, fit };
    };

    /** The training of a movement with one load since its last test, oldest first, one entry for each day: what was trained before was another dose. @param {number} m @param {Load} load */
    const sessionsOf = (m, load) => {
      const tested = Math.max(...person.tested.filter(({ movement, on }) => movement === m && on <= today).map(({ on }) => on));
      /** @type {Trained[]} */
      const out = [];
      for (const of of trainedBefore) {
        const { unit, load: number } = plain(of);
        if (of.movement === m && unit === load.unit && number === load.load && counts(of.on) && of.on > tested && out.every(({ on }) => on !== of.on)) out.push(of);
      }
      return out.sort((a, b) => a.on - b.on);
    };
    /** Two weeks off, and easier for a week, which begins with the first training of the pattern since. A test after them sets the dose anew. @param {number[]} group @param {number} m */
    const isEasing = (group, m) => {
      const trained = trainedBefore.filter(({ movement }) => movement === m).map(({ on }) => on);
      const tested = person.tested.filter(({ movement, on }) => movement === m && counts(on)).map(({ on }) => on);
      const latest = tested.length ? [Math.max(...tested)] : [];
      const days = [...latest, ...trained.filter((on) => counts(on) && latest.every((day) => on > day))].sort((a, b) => a - b);
      const left = days.filter((day, i) => (i + 1 < days.length ? days[i + 1] : today) - day > LONG_OFF);
      if (!trained.length || !left.length) return false;
      const since = trainedBefore.filter(({ movement, on }) => group.includes(movement) && on > left[left.length - 1]).map(({ on }) => on);
      return !since.length || today - Math.min(...since) < A_WEEK;
    };
    /** Whether a dose was done in full often enough to move on, by the training after a day; a card asks so many sets of it. @param {WorkingPick} pick @param {number} asked @param {number} after */
    const isDone = (pick, asked, after) => {
      const m = pick.movement, amount = pick.amount * ONE, sessions = sessionsOf(m, pick).filter(({ on }) => on > after);
      const strict = model.is(m, GUARDED) || model.is(m, LOWERING) || tables.straight[m] || tables.unstable[m];
      // The half sets of a lighter week count as the dose, but not where three full doses are asked.
      const sets = Math.min(pick.sets, strict ? asked : fewestSets), count = strict ? 3 : 2;
      return sessions.length >= count && sessions.slice(-count).every(({ did, reserve }) => did.length >= sets && did.every((set) => set >= amount)
        && (strict ? (reserve || 0) >= 2 : did[did.length - 1] >= amount + 2 * ONE));
    };

    /** What the training log says of a pick. @param {number[]} group @param {WorkingPick} pick @param {number | undefined} easier @param {number} asked @returns {'stay' | 'on' | 'easier' | 'return'} */
    const log = (group, pick, easier, asked) => {
      const m = pick.movement;
      if (isEasing(group, m)) return 'return';
      const two = sessionsOf(m, pick).slice(-2);
      // Fewer sets are a lighter week; fewer reps with some in reserve were asked so.
      const missed = two.length === 2 && two.every(({ did, reserve }) => !reserve && did.some((set) => set < pick.amount * ONE));
      // Whoever has since moved on from the easier one is back.
      if (missed && (easier === undefined || !isDone(prescribe(easier), asked, two[1].on))) return 'easier';
      const first = Math.min(...trainedBefore.filter(({ movement }) => movement === m).map(({ on }) => on));
      const waits = tables.waits[m] && (first === Infinity || today - first < 7 * tables.weeks_from[m]);
      return !waits && isDone(pick, asked, -Infinity) ? 'on' : 'stay';
    };

    /** @param {number[]} group sorted from easier to harder @param {WorkingPick} pick @param {number} asked the sets that a card asks @returns {WorkingPick} */
    const movedOn = (group, pick, asked) => {
      if (pick.fit !== KEEP && pick.fit !== ABOVE) return pick;
      const old = pick.movement, id = tables.ids[old];
      const easier = [...group].reverse().find((m) => tables.stage[m] < tables.stage[old]);
      const says = log(group, pick, easier, asked);
      const instead = (/** @type {number} */ m, /** @type {(why: string) => string} */ before) => { const other = prescribe(m); return { ...other, why: before(other.why) }; };
      if (says === 'stay') return pick;
      if (says === 'on') {
        const next = group.find((m) => tables.stage[m] > tables.stage[old] && fitOf(m) !== BELOW);
        if (next !== undefined) return instead(next, (why) => say('dose.moved_on_from', { movement: id, why }));
        const b = best(old), amount = b ? b.amount : 0, plate = Math.max(1, school.smallest_plate);
        const why = say('dose.moved_on');
        if (pick.unit === MASS && pick.load > 0) return { ...pick, why, load: pick.load + Math.max(plate, Math.floor(Math.floor(pick.load / 10) / plate) * plate) };
        if (pick.unit === BODY_WEIGHT && pick.load > 0) return { ...pick, why, load: pick.load + ONE / 40 };
        if (pick.measure === TIME) return { ...pick, why, amount: Math.max(pick.amount, Math.min(pick.amount + 2, Math.floor((amount * 2) / 3), Math.floor(HELD_MOST / Math.max(1, pick.sets)))) };
        return { ...pick, why, amount: pick.amount + 1 };
      }
      if (easier !== undefined) return instead(easier, (why) => (says === 'easier' ? say('dose.missed_easier', { movement: id, why }) : say('dose.off_easier', { movement: id, why })));
      if (pick.sets > fewestSets) return { ...pick, sets: Math.max(fewestSets, pick.sets - 2), why: says === 'easier' ? say('dose.missed_twice') : say('dose.weeks_off') };
      return { ...pick, amount: Math.max(1, threeFifths(pick.amount)), why: says === 'easier' ? say('dose.missed_shorter') : say('dose.off_shorter') };
    };
    /** @param {number[]} group @param {WorkingPick} pick @param {number} asked */
    const afterTraining = (group, pick, asked) => {
      const of = movedOn(group, pick, asked), { why } = of;
      if (of.measure !== TIME || of.fit === UNTESTED || of.sets * of.amount >= HELD_LEAST) return of;
      return { ...of, why: of.sets === mostSets ? say('dose.few_seconds_sets', { why }) : say('dose.few_seconds', { why }) };
    };

    /** One movement of a group, which is sorted from easier to harder. @param {number[]} group @returns {number | undefined} */
    const choose = (group) => {
      const falling = [...group].reverse();
      const hardest = (/** @type {string} */ fit) => falling.find((m) => fitOf(m) === fit);
      let chosen = hardest(KEEP);
      if (chosen === undefined) chosen = hardest(SHORT);
      const above = hardest(ABOVE);
      // What is above its dose gives way to the next harder one; and what is easier than it gives way to both.
      if (above !== undefined && (chosen === undefined || tables.stage[chosen] < tables.stage[above])) {
        const next = group.find((m) => fitOf(m) === UNTESTED && tables.stage[m] > tables.stage[above]);
        chosen = next === undefined ? above : next;
      }
      // Below its dose: an easier one that is not tested yet, if there is one; never a harder one.
      const below = hardest(BELOW);
      const easier = (/** @type {number} */ m) => fitOf(m) === UNTESTED && (below === undefined || tables.stage[m] < tables.stage[below]);
      if (chosen === undefined) chosen = falling.find((m) => easier(m) && state(m) === OPEN);
      if (chosen === undefined) chosen = falling.find(easier);
      if (chosen === undefined) chosen = below;
      return chosen;
    };

    /** Takes sets from the heavier of push and pull while it is more than a third above the other, but none below a pattern's weekly least. @param {WorkingPick[]} picks */
    const balance = (picks) => {
      const weighed = (/** @type {string[]} */ side) => picks.filter(({ movement, fit, measure: of }) => !tables.straight[movement] && of === REPS && fit !== UNTESTED && side.includes(tables.patterns[tables.pattern[movement]]));
      const [push, pull] = [weighed(PUSH), weighed(PULL)], before = picks.map(({ sets }) => sets);
      const sum = (/** @type {WorkingPick[]} */ of) => of.reduce((all, { sets }) => all + sets, 0);
      while (push.length && pull.length && Math.max(sum(push), sum(pull)) * 3 > Math.min(sum(push), sum(pull)) * 4) {
        const giving = (sum(push) >= sum(pull) ? push : pull).filter(({ sets }) => sets > 1 && (sets - 1) * sessionsAWeek >= WEEKLY_LEAST);
        if (!giving.length) break;
        giving.reduce((most, pick) => (pick.sets >= most.sets ? pick : most)).sets -= 1;
      }
      picks.forEach((pick, i) => { if (pick.sets < before[i]) pick.why = say('dose.even', { why: pick.why, sets: pick.sets }); });
    };

    const members = [...new Set(list)];
    /** @type {number[][]} */
    const groups = [];
    /** @type {WorkingPick[]} */
    const chosen = [];
    for (const pattern of PATTERNS) {
      for (const straight of [0, 1]) {
        const group = members.filter((m) => isTrainable(m) && tables.patterns[tables.pattern[m]] === pattern && tables.straight[m] === straight).sort(harder);
        const first = choose(group);
        if (first === undefined) continue;
        groups.push(group);
        chosen.push(prescribe(first));
      }
    }
    // The full dose is what a card asks: the sets that balance leaves, before the log has its say.
    const asked = chosen.map((pick) => ({ ...pick }));
    balance(asked);
    const picks = chosen.map((pick, i) => afterTraining(groups[i], pick, asked[i].sets));
    balance(picks);
    for (const pick of picks) pick.text = targetText({ ...pick, amount: pick.amount * ONE, atMost: false, hits: 0, of: 0 });

    const picked = new Set(picks.map(({ movement }) => movement));
    const open = members.filter((m) => state(m) === OPEN && !picked.has(m) && tables.patterns[tables.pattern[m]] !== 'mobility' && isAtHand(m) && canDo(m))
      .sort((a, b) => harder(b, a)).slice(0, 2);
    const practice = open.map((m) => {
      const of = measure(m), measured = of === REPS || of === TIME;
      const always = tables.inverted[m] || tables.high[m] || tables.patterns[tables.pattern[m]] === 'balance';
      const text = targetText({
        measure: measured ? of : DONE, atMost: false, sets: measured ? 3 : 1, amount: (of === TIME ? 3 : 1) * ONE, seconds: of === REPS ? model.target(m).seconds : 0,
        unit: NO_LOAD, load: 0, hits: 0, of: 0,
      });
      return { movement: m, text, when: /** @type {'before' | 'after'} */ (always || school.practice === 'before' ? 'before' : 'after'), why: say('dose.next_above') };
    });
    return { picks, practice };
  };

  globalThis.rungbook.dose = { working };
})();
