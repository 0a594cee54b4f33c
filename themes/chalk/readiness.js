'use strict';
// Readiness in the page: compares results with the tables that were made when the site was published, and looks up. The same
// answers as the program's own. No page, no storage, no clock.
(() => {
  const { text, ONE, REPS, LENGTH, ANGLE, DONE, NO_LOAD, BODY_WEIGHT } = globalThis.rungbook.targets;
  const { LIMITS, saysOn } = globalThis.rungbook.health;
  const FALSE = 0, UNKNOWN = 1, TRUE = 2, UNTESTED = 3;
  const MEETS = 0, MISSES = 1, SILENT = 2, UNSURE = 3;
  const EACH_SIDE = 1, GUARDED = 2, NEVER_PRESUMED = 4, LOWERING = 8, DRAWN = 16;
  const STATES = ['paused', 'owned', 'open', 'almost', 'not yet', 'test first'];
  const PAUSED = 0, OWNED = 1, OPEN = 2, ALMOST = 3, NOT_YET = 4, TEST_FIRST = 5;
  const ALL = -1, ANY = -2;
  const WHOLE = 1000;

  /** The tables with what is worked out from them once. @param {Tables} tables @returns {Model} */
  const prepare = (tables) => {
    const targets = tables.targets.map(([measure, atMost, sets, amount, seconds, unit, load, hits, of]) =>
      ({ measure, atMost: atMost === 1, sets, amount, seconds, unit, load, hits, of }));
    const count = tables.ids.length;
    /** @type {number[][]} */
    const demands = tables.ids.map(() => []);
    for (let leaf = 0; 2 * leaf < tables.leaves.length; leaf += 1) demands[tables.leaves[2 * leaf]].push(leaf);
    const order = tables.ids.map((_, m) => m).sort((a, b) => tables.stage[a] - tables.stage[b] || a - b);
    const numbers = new Map(tables.ids.map((id, m) => [id, m]));
    for (const [old, m] of Object.entries(tables.old)) if (!numbers.has(old)) numbers.set(old, m);
    return {
      tables, count, demands, order, numbers,
      /** @param {number} leaf */
      target: (leaf) => targets[tables.leaves[2 * leaf + 1]],
      /** @param {number} leaf */
      of: (leaf) => tables.leaves[2 * leaf],
      /** @param {number} m @param {number} flag */
      is: (m, flag) => (tables.flags[m] & flag) !== 0,
    };
  };

  /** A load as mass, rounded half up. @param {number} unit @param {number} load @param {number | null} bodyWeight */
  const mass = (unit, load, bodyWeight) => {
    if (unit !== BODY_WEIGHT) return load;
    if (bodyWeight === null) return null;
    const twice = BigInt(load) * BigInt(bodyWeight) * 2n + BigInt(ONE), by = BigInt(ONE) * 2n;
    const cut = twice / by;
    return Number(twice % by !== 0n && twice < 0n ? cut - 1n : cut);
  };

  /** How two loads compare: below, 0, above; null where only the body weight could tell.
   * @param {Got} got @param {Got} target @param {number | null} bodyWeight @returns {number | null} */
  const compareLoads = (got, target, bodyWeight) => {
    const kind = (/** @type {Got} */ side) => (side.unit === BODY_WEIGHT ? 1 : 0);
    const [a, b] = [got.load, target.load];
    if (kind(got) === kind(target) || Math.sign(a) !== Math.sign(b) || a === 0) return a - b;
    const [x, y] = [mass(got.unit, a, bodyWeight), mass(target.unit, b, bodyWeight)];
    if (x === null || y === null) return null;
    return Math.abs(x - y) <= LIMITS.same_mass ? 0 : x - y;
  };

  /** @param {Got} got */
  const tries = (got) => (got.of > 0 ? got : { hits: 1, of: 1 });

  /** How one side compares in sets, seconds, hits and hits per try. @param {Got} got @param {Got} target */
  const others = (got, target) => {
    const done = tries(got);
    const asked = target.of > 0;
    return [
      got.sets - target.sets, got.seconds - target.seconds,
      asked ? done.hits - target.hits : 0, asked ? done.hits * target.of - target.hits * done.of : 0,
    ];
  };

  /** @param {Tested} tested @param {Got} target @param {number | null} bodyWeight */
  const verdict = ({ sides, reserve }, target, bodyWeight) => {
    if (target.atMost) return sides.every((got) => got.amount <= target.amount) ? MEETS : MISSES;
    const loads = sides.map((got) => compareLoads(got, target, bodyWeight));
    const parts = sides.map((got) => [got.amount - target.amount, ...others(got, target)]);
    if (parts.every((side) => side.every((by) => by >= 0)) && loads.every((by) => by === null || by >= 0)) {
      return loads.every((by) => by !== null) ? MEETS : UNSURE;
    }
    const asksAll = parts[0].every((_, i) => parts.some((side) => side[i] <= 0)) && loads.some((by) => by !== null && by <= 0);
    return asksAll && reserve === 0 ? MISSES : SILENT;
  };

  /** `part / of` in thousandths, rounded down, at most the whole. @param {number} part @param {number} of */
  const ratio = (part, of) => {
    if (of <= 0 || part >= of) return WHOLE;
    const done = Math.max(part, 0);
    return done < 9e12 ? Math.floor((done * 1000) / of) : Number((BigInt(done) * 1000n) / BigInt(of));
  };

  /** @param {Got} got @param {Got} target @param {number | null} bodyWeight */
  const loadShare = (got, target, bodyWeight) => {
    if (target.load <= 0 && got.load >= 0) return WHOLE;
    if (Math.sign(got.load) !== Math.sign(target.load)) return 0;
    const one = (got.unit === BODY_WEIGHT) === (target.unit === BODY_WEIGHT);
    const done = one ? got.load : mass(got.unit, got.load, bodyWeight);
    const asked = one ? target.load : mass(target.unit, target.load, bodyWeight);
    if (done === null || asked === null) return 0;
    return asked > 0 ? ratio(done, asked) : ratio(-asked, -done);
  };

  /** The least ratio of all parts but the amount. @param {Got} got @param {Got} target @param {number | null} bodyWeight */
  const otherShare = (got, target, bodyWeight) => {
    if (target.atMost) return WHOLE;
    const done = tries(got);
    const tried = target.of > 0 ? Math.min(ratio(done.hits, target.hits), ratio(done.hits * target.of, done.of * target.hits)) : WHOLE;
    return Math.min(ratio(got.sets, target.sets), ratio(got.seconds, target.seconds), loadShare(got, target, bodyWeight), tried);
  };

  /** @param {Got} got @param {Got} target */
  const amountShare = (got, target) => {
    if (!target.atMost) return ratio(got.amount, target.amount);
    return target.amount === 0 ? WHOLE : ratio(target.amount, got.amount);
  };

  /** @param {Tested} tested @param {Got} target @param {number | null} bodyWeight */
  const share = (tested, target, bodyWeight) =>
    Math.min(...tested.sides.map((got) => Math.min(amountShare(got, target), otherShare(got, target, bodyWeight))));

  /** @param {Tested} tested @param {Got} target @param {number | null} bodyWeight */
  const isNear = (tested, target, bodyWeight) => {
    if (target.measure !== LENGTH && target.measure !== ANGLE) return share(tested, target, bodyWeight) >= LIMITS.near;
    const limit = target.measure === LENGTH ? LIMITS.near_length : LIMITS.near_angle;
    return tested.sides.every((got) => {
      const short = target.atMost ? got.amount - target.amount : target.amount - got.amount;
      return short <= limit && otherShare(got, target, bodyWeight) >= LIMITS.near;
    });
  };

  /** Of two sides the worse in every part, as text. @param {Tested} tested @param {boolean} atMost */
  const sidesText = ({ sides }, atMost) => {
    if (sides.length === 1) return text(sides[0]);
    const [a, b] = sides;
    const kinds = a.unit !== NO_LOAD && b.unit !== NO_LOAD && a.unit !== b.unit;
    if (kinds || a.hits !== b.hits || a.of !== b.of) return `left ${text(a)}, right ${text(b)}`;
    let loaded = a.load <= b.load ? a : b;
    if ((a.unit === NO_LOAD) !== (b.unit === NO_LOAD)) {
      const one = a.unit === NO_LOAD ? b : a;
      loaded = one.load < 0 ? one : a.unit === NO_LOAD ? a : b;
    }
    return text({
      ...a, sets: Math.min(a.sets, b.sets), amount: atMost ? Math.max(a.amount, b.amount) : Math.min(a.amount, b.amount),
      seconds: Math.min(a.seconds, b.seconds), unit: loaded.unit, load: loaded.load,
    });
  };

  /** The value of a tree in prefix order in Kleene's logic. @param {number[]} tree @param {(leaf: number) => number} of */
  const value = (tree, of) => {
    let at = 0;
    const node = () => {
      const kind = tree[at++];
      if (kind >= 0) return of(kind);
      let least = kind === ANY ? 1 : tree[at++];
      const parts = kind === ALL ? least : tree[at++];
      let met = 0, possible = 0;
      for (let i = 0; i < parts; i += 1) {
        const part = node();
        if (part === TRUE) met += 1;
        if (part !== FALSE) possible += 1;
      }
      return met >= least ? TRUE : possible >= least ? UNKNOWN : FALSE;
    };
    return tree.length === 0 ? TRUE : node();
  };

  /** The cheapest way to make a tree true; `cost` gives a leaf's count and shortfall, or null where it is no way at all.
   * @param {number[]} tree @param {(leaf: number) => [number, number] | null} cost @returns {Repair | null} */
  const cheapest = (tree, cost) => {
    let at = 0;
    const less = (/** @type {Repair} */ a, /** @type {Repair} */ b) => a.leaves - b.leaves || a.shortfall - b.shortfall;
    /** @returns {Repair | null} */
    const node = () => {
      const kind = tree[at++];
      if (kind >= 0) {
        const paid = cost(kind);
        return paid && { leaves: paid[0], shortfall: paid[1], which: paid[0] > 0 ? [kind] : [] };
      }
      const least = kind === ANY ? 1 : tree[at++];
      const parts = kind === ALL ? least : tree[at++];
      /** @type {{ i: number, way: Repair }[]} */
      const ways = [];
      for (let i = 0; i < parts; i += 1) {
        const way = node();
        if (way) ways.push({ i, way });
      }
      if (ways.length < least) return null;
      ways.sort((a, b) => less(a.way, b.way) || a.i - b.i);
      ways.length = least;
      ways.sort((a, b) => a.i - b.i);
      return {
        leaves: ways.reduce((sum, { way }) => sum + way.leaves, 0), shortfall: ways.reduce((sum, { way }) => sum + way.shortfall, 0),
        which: ways.flatMap(({ way }) => way.which),
      };
    };
    return tree.length === 0 ? { leaves: 0, shortfall: 0, which: [] } : node();
  };

  /** The demands of a tree, as written. @param {number[]} tree */
  const leavesOf = (tree) => {
    const out = [];
    for (let at = 0; at < tree.length; at += tree[at] >= 0 ? 1 : tree[at] >= ANY ? 2 : 3) if (tree[at] >= 0) out.push(tree[at]);
    return out;
  };

  /** What the results say of every demand. @param {Model} model @param {Person} person @param {number} today */
  const evidence = (model, person, today) => {
    const { tables } = model;
    /** @type {Map<number, Tested[]>} */
    const latest = new Map();
    for (const tested of person.tested) {
      const age = today - tested.on;
      if (age < 0 || age > tables.results_last_days) continue;
      const of = latest.get(tested.movement);
      if (!of || tested.on > of[0].on) latest.set(tested.movement, [tested]);
      else if (tested.on === of[0].on) of.push(tested);
    }
    const shown = new Uint8Array(tables.leaves.length / 2).fill(UNTESTED);
    const presumed = new Uint8Array(shown.length);
    const bodyWeight = (/** @type {Tested} */ tested) => (tested.bodyWeight === null ? person.bodyWeight : tested.bodyWeight);
    for (const [m, results] of latest) {
      for (const leaf of model.demands[m]) {
        const verdicts = results.map((tested) => verdict(tested, model.target(leaf), bodyWeight(tested)));
        shown[leaf] = verdicts.includes(MEETS) ? TRUE : verdicts.includes(UNSURE) ? UNKNOWN : verdicts.includes(MISSES) ? FALSE : UNKNOWN;
      }
    }
    const owned = [...latest.keys()].filter((m) => shown[m] === TRUE).sort((a, b) => a - b);
    /** The owned movement that each presumed demand follows from. @type {Map<number, number>} */
    const roots = new Map();
    if (tables.presume) owned.forEach((root) => presume(model, [root], (m) => latest.has(m), presumed, (leaf) => roots.set(leaf, root)));
    return { latest, shown, presumed, roots, bodyWeight };
  };

  /** Who owns a movement has what it cannot be reached without, and so on down.
   * @param {Model} model @param {number[]} owned @param {(m: number) => boolean} isTested @param {Uint8Array} presumed
   * @param {(leaf: number) => void} [tell] */
  const presume = (model, owned, isTested, presumed, tell = () => {}) => {
    const open = [...owned];
    for (let owner = open.pop(); owner !== undefined; owner = open.pop()) {
      for (const leaf of model.tables.necessary[owner]) {
        const below = model.of(leaf);
        if (model.is(below, NEVER_PRESUMED) || isTested(below) || presumed[leaf]) continue;
        for (const follows of [leaf, ...model.tables.implied[leaf]]) {
          if (!presumed[follows]) tell(follows);
          presumed[follows] = 1;
        }
        open.push(below);
      }
    }
  };

  /** The highest pain with which a part goes on; above it the part rests. @param {Model} model @param {Person} person @param {number} part @param {number} today */
  const goesOnTo = (model, person, part, today) => globalThis.rungbook.health.goesOnTo(model.tables.parts[part], globalThis.rungbook.results.ageOn(person.born, today));
  /** Until what a part rests: a sign is for a clinician, a number for a lower one. @param {Pain} pain @param {number} above @returns {string} */
  const untilWords = ({ signs }, above) => {
    const { say } = globalThis.rungbook.words;
    return signs.length ? say('rests.until_sign') : above === 0 ? say('rests.until_none') : say('rests.until_entry', { n: above });
  };
  /** Whether a pain pauses its part. @param {Model} model @param {Person} person @param {Pain} pain @param {number} today */
  const isPausing = (model, person, { part, score, signs }, today) => {
    return score > goesOnTo(model, person, part, today) || signs.length > 0;
  };

  /** The newest pain of each part, where it pauses the part. @param {Model} model @param {Person} person @param {number} today */
  const pausingPains = (model, person, today) => {
    /** @type {Map<number, Pain>} */
    const newest = new Map();
    for (const pain of person.pains) {
      const known = newest.get(pain.part);
      if (pain.on <= today && (!known || pain.on >= known.on)) newest.set(pain.part, pain);
    }
    return [...newest.values()].filter((pain) => isPausing(model, person, pain, today)).sort((a, b) => a.part - b.part);
  };

  /** What keeps movements from being trained today, in this order: pauses, restrictions, pains, and what the health questions said.
   * @param {Model} model @param {Person} person @param {number} today @returns {Pause[]} */
  const causes = (model, person, today) => {
    const nothing = { movement: null, part: null, cls: null, pattern: null, until: null, by: null, because: null };
    const lifted = (/** @type {Pause} */ { cls, on }) => cls !== null && person.cleared.some((of) => of.cls === cls && on <= of.on && of.on <= today
      && today <= Math.min(of.until === null ? Infinity : of.until, of.on + LIMITS.clearance));
    const holding = person.pauses.filter((pause) => pause.on <= today && (pause.until === null || today <= pause.until) && !lifted(pause));
    const pains = pausingPains(model, person, today).map(({ part, on, entry }) => ({ ...nothing, kind: /** @type {const} */ ('pain'), part, on, entry }));
    const screened = saysOn(person.screened, today, person.born) === 'light' && person.screened
      ? [{ ...nothing, kind: /** @type {const} */ ('light'), on: person.screened.on, entry: 0 }] : [];
    return [...holding, ...pains, ...screened];
  };

  /** Whether a cause reaches a movement by itself. @param {Model} model @param {Pause} cause @param {number} m */
  const reaches = ({ tables, is }, { kind, movement, part, cls, pattern }, m) => (kind === 'light' ? is(m, GUARDED) || is(m, LOWERING)
    : movement !== null ? movement === m : part !== null ? ((tables.stresses[m] >> part) & 1) === 1
      : cls !== null ? tables.cautions[m].includes(cls) : pattern === tables.pattern[m]);

  /** What rests today: the causes, those of each movement, and who is spared none. What a part, a class or a pattern spares are the
   * movements that have it; a movement that is paused itself, and an exit, are missing to what cannot be reached without them.
   * @param {Model} model @param {Person} person @param {number} today */
  const rest = (model, person, today) => {
    const { tables } = model;
    const all = causes(model, person, today);
    const exit = tables.patterns.indexOf('exit');
    /** @type {Map<number, number[]>} */
    const direct = new Map();
    /** What is taken out for others too, with the causes that do. @type {Map<number, number[]>} */
    const gone = new Map();
    const hit = (/** @type {Map<number, number[]>} */ of, /** @type {number} */ m, /** @type {number} */ i) => of.set(m, [...(of.get(m) || []), i]);
    all.forEach((cause, i) => {
      for (let m = 0; m < model.count; m += 1) {
        if (!reaches(model, cause, m)) continue;
        hit(direct, m, i);
        if (cause.movement !== null || tables.pattern[m] === exit) hit(gone, m, i);
      }
    });
    const standing = new Uint8Array(model.count).fill(gone.size ? 0 : 1);
    for (let changed = gone.size > 0; changed;) {
      changed = false;
      for (const m of model.order) {
        if (standing[m] || gone.has(m)) continue;
        if (value(tables.needs[m], (leaf) => (standing[model.of(leaf)] ? TRUE : FALSE)) === TRUE) {
          standing[m] = 1;
          changed = true;
        }
      }
    }
    const reached = standing.map((is, m) => (is && !direct.has(m) ? 1 : 0));
    return { all, direct, gone, standing, reached };
  };

  /**
   * Where a person stands with every movement on a day.
   * @param {Model} model @param {Person} person @param {number} today days since 1970-01-01
   */
  const assess = (model, person, today) => {
    const { tables } = model;
    const known = evidence(model, person, today);
    const { latest, shown, presumed, bodyWeight } = known;
    const { all, direct, gone, standing, reached } = rest(model, person, today);
    const open = (/** @type {number} */ leaf) => (presumed[leaf] && shown[leaf] === UNTESTED ? TRUE : shown[leaf] === UNTESTED ? UNKNOWN : shown[leaf]);
    const guarded = (/** @type {number} */ leaf) => (shown[leaf] === UNTESTED ? UNKNOWN : shown[leaf]);
    /** A demand's value in the needs of a movement. @param {number} m */
    const judge = (m) => (model.is(m, GUARDED) ? guarded : open);
    /** @type {Map<number, number[]>} demands missed by little, by movement */
    const near = new Map();
    for (const [m, results] of latest) {
      const missed = model.demands[m].filter((leaf) => results.some((tested) => {
        const target = model.target(leaf), weight = bodyWeight(tested);
        return verdict(tested, target, weight) === MISSES && isNear(tested, target, weight);
      }));
      if (missed.length) near.set(m, missed);
    }
    /** The demand by which needs that are not true would be. @param {number} m */
    const nearly = (m) => {
      if (near.size === 0) return -1;
      const of = judge(m);
      const found = leavesOf(tables.needs[m]).find((leaf) => {
        const missed = near.get(model.of(leaf));
        if (!missed || !missed.includes(leaf)) return false;
        const reachedNow = tables.implied[leaf];
        return value(tables.needs[m], (other) => (other === leaf || reachedNow.includes(other) ? TRUE : of(other))) === TRUE;
      });
      return found === undefined ? -1 : found;
    };
    const states = new Uint8Array(model.count);
    const needs = new Uint8Array(model.count);
    const counted = new Uint8Array(model.count);
    for (let m = 0; m < model.count; m += 1) {
      needs[m] = value(tables.needs[m], judge(m));
      const byPresumption = shown[m] === UNTESTED && presumed[m] === 1;
      if (!reached[m]) states[m] = PAUSED;
      else if (shown[m] === TRUE || byPresumption) states[m] = OWNED;
      else if (needs[m] === TRUE) states[m] = OPEN;
      else if (nearly(m) >= 0) states[m] = ALMOST;
      else states[m] = needs[m] === FALSE ? NOT_YET : TEST_FIRST;
      counted[m] = states[m] === OWNED && byPresumption ? 1 : 0;
    }
    /** The result of the latest day that comes closest to a demand. @param {number} leaf */
    const closest = (leaf) => {
      /** @type {{ share: number, tested: Tested } | null} */
      let best = null;
      for (const tested of latest.get(model.of(leaf)) || []) {
        const reachedShare = share(tested, model.target(leaf), bodyWeight(tested));
        if (!best || reachedShare > best.share) best = { share: reachedShare, tested };
      }
      return best;
    };
    /** What is missing for a movement's needs: the cheapest repair. @param {number} m @returns {Missing[]} */
    const missing = (m) => {
      const of = judge(m);
      const repair = cheapest(tables.needs[m], (leaf) => {
        if (of(leaf) === TRUE) return [0, 0];
        const best = closest(leaf);
        return [1, WHOLE - (best ? best.share : 0)];
      });
      const leaves = [...new Set(repair ? repair.which : [])];
      return leaves.map(lack);
    };
    /** A demand that is not met, with what there is of it. @param {number} leaf @returns {Missing} */
    const lack = (leaf) => {
      const best = closest(leaf);
      return { leaf, movement: model.of(leaf), got: best && sidesText(best.tested, model.target(leaf).atMost), share: best && best.share };
    };
    /** Whether a movement may be tried: its foundations are shown, and it does not rest. @param {number} m */
    const may = (m) => reached[m] === 1 && needs[m] === TRUE;
    /** The demands that would make a movement's needs true, and whether they are what its state speaks of.
     * @param {number} m @param {boolean} lower @returns {{ which: number[], asWritten: boolean }} */
    const chosen = (m, lower) => {
      const near = nearly(m);
      if (near >= 0 && !lower && reached[model.of(near)]) return { which: [near], asWritten: true };
      const of = judge(m);
      const barred = (/** @type {number} */ below) => !reached[below] || (lower && !may(below) && tables.stage[below] >= tables.stage[m]);
      const way = (/** @type {boolean} */ tests, /** @type {(m: number) => boolean} */ bar) => cheapest(tables.needs[m], (leaf) => {
        const shows = of(leaf);
        if (shows === TRUE) return [0, 0];
        if (bar(model.of(leaf))) return null;
        if (tests) return shows === UNKNOWN ? [1, 0] : null;
        const best = closest(leaf);
        return [1, WHOLE - (best ? best.share : 0)];
      });
      const doubtful = needs[m] === UNKNOWN;
      const written = way(doubtful, () => false);
      if (written && !written.which.some((leaf) => barred(model.of(leaf)))) return { which: written.which, asWritten: true };
      const round = way(doubtful, barred) || way(false, barred);
      return { which: round ? round.which : [], asWritten: false };
    };
    /** @param {number} m @param {boolean} lower */
    const down = (m, lower) => {
      const seen = [m], steps = /** @type {number[]} */ ([]);
      let direct = !lower;
      for (let at = 0; at < seen.length; at += 1) {
        const { which, asWritten } = chosen(seen[at], lower);
        direct = direct && asWritten;
        for (const leaf of which) {
          const below = model.of(leaf);
          if (may(below)) {
            if (!steps.includes(leaf)) steps.push(leaf);
            continue;
          }
          direct = false;
          if (!seen.includes(below)) seen.push(below);
        }
      }
      return { direct, steps: steps.map(lack) };
    };
    /** What comes first on the way to a movement whose needs are not true: only tests and work whose own foundations are shown.
     * `direct`: they are the movement's own demands. @param {number} m */
    const first = (m) => {
      const found = down(m, false);
      return found.steps.length ? found : down(m, true);
    };
    /** What is behind a resting movement: its own causes, else those of what it cannot be reached without. @param {number} m */
    const pausedBy = (m) => {
      const own = direct.get(m);
      if (own) return own.map((i) => all[i]);
      const seen = new Set([m]), found = new Set(), waiting = [m];
      for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
        const missed = gone.get(at);
        if (missed) {
          missed.forEach((i) => found.add(i));
          continue;
        }
        for (const leaf of leavesOf(tables.needs[at])) {
          const below = model.of(leaf);
          if (!standing[below] && !seen.has(below)) {
            seen.add(below);
            waiting.push(below);
          }
        }
      }
      // Pains as written, as the program sorts them: `all` has them by part.
      return [...found].sort((a, b) => (all[a].kind === 'pain' && all[b].kind === 'pain' ? all[a].entry - all[b].entry : a - b)).map((i) => all[i]);
    };
    /** The owned movement because of which another is counted; -1 where it is not. @param {number} m */
    const countedBecause = (m) => (counted[m] ? Number(known.roots.get(m)) : -1);
    return { states, needs, counted, countedBecause, known, judge, reached, causes: all, missing, first, nearly, pausedBy, closest };
  };

  /** Whether a number is more likely a slip than a result: parts of a rep, an angle beyond the widest, or far above all that is asked. Asked
   * about before it is kept, and where a person's numbers are read. @param {Model} of @param {number} m @param {{ measure: number, amount: number }} got */
  const doubtful = (of, m, { measure, amount }) => {
    if (measure === REPS && amount % ONE !== 0) return true;
    if (measure === ANGLE) return amount > LIMITS.widest;
    const most = Math.max(...of.demands[m].map((leaf) => of.target(leaf).amount));
    return measure !== DONE && amount > LIMITS.far * most;
  };

  globalThis.rungbook.readiness = {
    prepare, assess, doubtful, evidence, presume, value, leavesOf, sidesText, verdict, mass, reaches, isPausing, goesOnTo, untilWords, WHOLE, STATES, TRUE, UNKNOWN, FALSE, UNTESTED, MEETS, MISSES, EACH_SIDE, GUARDED, LOWERING, DRAWN,
    PAUSED, OWNED, OPEN, ALMOST, NOT_YET, TEST_FIRST,
  };
})();
