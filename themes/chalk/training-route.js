'use strict';
// Training, second part: the goal, the route to it, what is missing on it, and what holds the person back. The same as the
// program's own, on the same tables. No page, no storage, no clock.
(() => {
  const { readiness, training } = globalThis.rungbook;
  const { TRUE, WHOLE } = readiness, { ONE, TIME } = globalThis.rungbook.targets;
  const ALL = -1, ANY = -2;

  // ---- trees

  /** @type {Tree} */
  const NOTHING = { k: 0, leaf: -1, all: true, parts: [] };
  /** A tree in prefix order as a nested one; what is true already asks nothing. @param {number[]} flat @param {(leaf: number) => boolean} isTrue @returns {Tree} */
  const nested = (flat, isTrue) => {
    let at = 0;
    /** @returns {Tree} */
    const node = () => {
      const kind = flat[at++];
      if (kind >= 0) return isTrue(kind) ? NOTHING : { k: 1, leaf: kind, all: false, parts: [] };
      const first = flat[at++], count = kind < ANY ? flat[at++] : first;
      return { k: kind === ALL ? count : kind === ANY ? 1 : first, leaf: -1, all: kind === ALL, parts: Array.from({ length: count }, () => node()) };
    };
    return flat.length ? node() : NOTHING;
  };
  /** @param {Tree} tree @param {(leaf: number) => boolean} of @returns {boolean} */
  const holds = (tree, of) => {
    if (tree.leaf >= 0) return of(tree.leaf);
    let met = 0;
    for (const part of tree.parts) if (met < tree.k && holds(part, of)) met += 1;
    return met >= tree.k;
  };
  /** @param {Tree} tree @returns {number[]} */
  const leaves = (tree) => (tree.leaf >= 0 ? [tree.leaf] : tree.parts.flatMap(leaves));

  // ---- the route: the movements still to own, smallest in total weeks

  /** @param {Trainee} c @param {number} goal a movement */
  const searcher = (c, goal) => {
    const { model, tables } = c;
    /** @type {Map<number, Tree>} */
    const trees = new Map();
    const todo = [goal];
    for (let m = todo.pop(); m !== undefined; m = todo.pop()) {
      if (trees.has(m)) continue;
      const of = c.found.judge(m), tree = nested(tables.needs[m], (leaf) => of(leaf) === TRUE);
      trees.set(m, tree);
      todo.push(...leaves(tree).map(model.of));
    }
    const chain = [...trees.keys()].sort((a, b) => a - b), place = new Map(chain.map((m, i) => [m, i]));
    /** By their places in the chain. */
    const needs = chain.map((m) => /** @type {Tree} */ (trees.get(m)));
    const at = (/** @type {number} */ leaf) => Number(place.get(model.of(leaf)));
    /** @type {number[][]} */
    const above = chain.map(() => []);
    needs.forEach((tree, i) => leaves(tree).forEach((leaf) => above[at(leaf)].push(i)));
    /** Which are reached where only some exist. @param {(i: number) => boolean} stands */
    const reached = (stands) => {
      const out = new Uint8Array(chain.length);
      const isReached = (/** @type {number} */ leaf) => out[at(leaf)] === 1;
      let front = chain.map((_, i) => i).filter((i) => stands(i) && holds(needs[i], isReached));
      while (front.length) {
        front.forEach((i) => { out[i] = 1; });
        front = [...new Set(front.flatMap((i) => above[i]))].filter((i) => !out[i] && stands(i) && holds(needs[i], isReached));
      }
      return out;
    };
    // From the ground up, so that one pass is enough but where needs run in circles.
    const fromGround = chain.map((_, i) => i).sort((a, b) => tables.stage[chain[a]] - tables.stage[chain[b]]);
    return { chain, place, needs, at, reached, fromGround, cost: chain.map((m) => tables.weeks[2 * m] + tables.weeks[2 * m + 1]) };
  };

  /** For each movement of a chain those without which it cannot be reached, as bits; `first` is the first of the candidates that are looked at.
   * @param {ReturnType<typeof searcher>} of @param {Uint8Array} isReached @param {number} first @param {number} count */
  const essentials = (of, isReached, first, count) => {
    const words = Math.ceil(count / 32), whole = () => new Uint32Array(words).fill(0xffffffff);
    /** @type {Uint32Array[]} */
    const sets = of.chain.map(whole);
    const full = whole();
    /** @param {Tree} tree @returns {Uint32Array} */
    const without = (tree) => {
      if (tree.leaf >= 0) return isReached[of.at(tree.leaf)] ? sets[of.at(tree.leaf)] : full;
      const { parts, k } = tree;
      if (k === 0) return new Uint32Array(words);
      // All of them: what any of them cannot do without. Any of them: what none can do without.
      if (parts.length > 0 && (k === parts.length || k === 1)) {
        const out = Uint32Array.from(without(parts[0]));
        for (let p = 1; p < parts.length; p += 1) {
          const more = without(parts[p]);
          if (k === 1) for (let w = 0; w < words; w += 1) out[w] &= more[w];
          else for (let w = 0; w < words; w += 1) out[w] |= more[w];
        }
        return out;
      }
      // Fewer than k parts do without a candidate: counted for all bits at once.
      const enough = Array.from({ length: k + 1 }, (_, i) => new Uint32Array(words).fill(i ? 0 : 0xffffffff));
      for (const part of parts) {
        const lacks = without(part);
        for (let n = k; n > 0; n -= 1) for (let w = 0; w < words; w += 1) enough[n][w] |= enough[n - 1][w] & ~lacks[w];
      }
      return enough[k].map((word) => ~word);
    };
    const order = of.fromGround.filter((i) => isReached[i]);
    for (let changed = true; changed;) {
      changed = false;
      for (const i of order) {
        const bits = without(of.needs[i]), set = of.needs[i].leaf >= 0 ? Uint32Array.from(bits) : bits;
        if (i >= first && i < first + count) set[(i - first) >> 5] |= 1 << ((i - first) & 31);
        if (set.some((word, w) => word !== sets[i][w])) {
          sets[i] = set;
          changed = true;
        }
      }
    }
    return (/** @type {number} */ i) => {
      const out = [];
      for (let bit = 0; bit < count; bit += 1) if ((sets[i][bit >> 5] >>> (bit & 31)) & 1 && isReached[first + bit]) out.push(first + bit);
      return out;
    };
  };

  /** A set being grown, ordered as routes are compared: weeks, number, ids. Below `from` nothing lacks; the key is a sum over the members
   * of numbers drawn for each, so that a set is told from others without being walked. @typedef {{ cost: number, set: Uint32Array, from: number, key: number }} Grown */
  /** A number below 2^52 for each member, the same every time: their sum stays exact modulo that. @param {number} i */
  const drawn = (i) => {
    const mix = (/** @type {number} */ n) => {
      const a = Math.imul(n ^ (n >>> 16), 0x45d9f3b), b = Math.imul(a ^ (a >>> 16), 0x45d9f3b);
      return (b ^ (b >>> 16)) >>> 0;
    };
    return mix(2 * i + 1) * 0x100000 + (mix(2 * i + 0x5eed) >>> 12);
  };
  const MODULUS = 2 ** 52;
  /** @param {Grown} a @param {Grown} b */
  const shorter = (a, b) => {
    const by = a.cost - b.cost || a.set.length - b.set.length;
    if (by) return by;
    for (let i = 0; i < a.set.length; i += 1) if (a.set[i] !== b.set[i]) return a.set[i] - b.set[i];
    return 0;
  };
  /** The least first. @template T @param {(a: T, b: T) => number} compare */
  const heap = (compare) => {
    /** @type {T[]} */
    const all = [];
    const swap = (/** @type {number} */ a, /** @type {number} */ b) => { [all[a], all[b]] = [all[b], all[a]]; };
    return {
      /** @param {T} one */
      push: (one) => {
        all.push(one);
        for (let i = all.length - 1; i > 0 && compare(all[i], all[(i - 1) >> 1]) < 0; i = (i - 1) >> 1) swap(i, (i - 1) >> 1);
      },
      pop: () => {
        if (all.length) swap(0, all.length - 1);
        const top = all.pop();
        for (let i = 0; ;) {
          const [left, right] = [2 * i + 1, 2 * i + 2];
          let least = left < all.length && compare(all[left], all[i]) < 0 ? left : i;
          if (right < all.length && compare(all[right], all[least]) < 0) least = right;
          if (least === i) return top;
          swap(i, least);
          i = least;
        }
      },
    };
  };

  /** The movements still to own on the way to a demand, and their half weeks; none where it is shown, null where it cannot be reached.
   * Pauses do not count. @param {Trainee} c @param {number} leaf @returns {{ movements: number[], cost: number } | null} */
  const route = (c, leaf) => {
    const goal = c.model.of(leaf);
    if (c.found.judge(goal)(leaf) === TRUE) return { movements: [], cost: 0 };
    const of = searcher(c, goal), { chain, needs, at } = of, n = chain.length, top = Number(of.place.get(goal));
    const isReached = of.reached(() => true);
    if (!isReached[top]) return null;
    const { looked_at: most, large: block } = c.tables.route, large = n > block;
    const blocks = Array.from({ length: Math.ceil(n / block) }, (_, i) => i * block);
    const essential = (/** @type {number} */ first) => essentials(of, isReached, first, Math.min(block, n - first));
    /** @type {number[][]} */
    const kept = [];
    const all = large ? null : essential(0);
    kept[top] = all ? all(top) : blocks.flatMap((first) => essential(first)(top));
    const without = (/** @type {number} */ i) => (kept[i] || (kept[i] = all ? all(i) : [i]));
    /** Where a member of a sorted set stands, or would. @param {Uint32Array} set @param {number} i */
    const placeIn = (set, i) => {
      let low = 0, high = set.length;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (set[middle] < i) low = middle + 1;
        else high = middle;
      }
      return low;
    };
    /** @param {Uint32Array} set @param {number} i */
    const has = (set, i) => set[placeIn(set, i)] === i;
    /** Only what comes new is looked at. @param {Grown} from @param {number[]} option @returns {Grown} */
    const grown = ({ cost, set, from, key }, option) => {
      const more = [...new Set(option.flatMap(without))].filter((i) => !has(set, i)).sort((a, b) => a - b);
      const all = new Uint32Array(set.length + more.length);
      let at = 0, taken = 0, weeks = cost, sum = key;
      for (const i of more) {
        let end = taken;
        while (end < set.length && set[end] < i) end += 1;
        all.set(set.subarray(taken, end), at);
        at += end - taken;
        taken = end;
        all[at] = i;
        at += 1;
        weeks += of.cost[i];
        sum = (sum + drawn(i)) % MODULUS;
      }
      all.set(set.subarray(taken), at);
      return { cost: weeks, set: all, from: Math.min(from, more.length ? more[0] : Infinity), key: sum };
    };
    /** The movements that would bring a tree one part closer to true. @param {Tree} tree @param {(leaf: number) => boolean} has @returns {number[][]} */
    const ways = (tree, has) => {
      if (tree.leaf >= 0) return isReached[at(tree.leaf)] ? [[at(tree.leaf)]] : [];
      const open = tree.parts.filter((part) => !holds(part, has));
      return (tree.all ? open.slice(0, 1) : open).flatMap((part) => ways(part, has));
    };
    const inside = new Uint8Array(n);
    /** The ways on from a set; null when it is a whole route already. @param {Grown} node */
    const options = (node) => {
      const { set } = node, isIn = (/** @type {number} */ l) => has(set, at(l));
      let first = placeIn(set, node.from);
      while (first < set.length && holds(needs[set[first]], isIn)) first += 1;
      node.from = first < set.length ? set[first] : Infinity;
      if (first < set.length) return ways(needs[set[first]], isIn);
      inside.fill(0);
      set.forEach((i) => { inside[i] = 1; });
      const derived = of.reached((i) => inside[i] === 1);
      if (derived[top]) return null;
      // The set only supports itself in a circle: bring in something from outside it.
      const outside = [...set].filter((i) => !derived[i]).flatMap((i) => leaves(needs[i]).map(at)).filter((i) => !inside[i] && isReached[i]);
      return [...new Set(outside)].sort((a, b) => a - b).map((i) => [i]);
    };
    const found = search(grown({ cost: 0, set: new Uint32Array(), from: Infinity, key: 0 }, [top]), options, grown, most);
    return found && { movements: [...found.set].map((i) => chain[i]), cost: found.cost };
  };
  /** @param {Grown} start @param {(node: Grown) => number[][] | null} options @param {(from: Grown, option: number[]) => Grown} grown
   * @param {number} most sets looked at before it is cut @returns {Grown | null} */
  const search = (start, options, grown, most) => {
    const open = heap(shorter), seen = new Set();
    open.push(start);
    let looked = 0;
    for (let node = open.pop(); node; node = open.pop()) {
      let ways = options(node);
      if (!ways) return node;
      if (looked >= most) {
        // Cut: the rest by always taking the cheapest next option.
        for (let best = node; ; ways = options(best)) {
          if (!ways) return best;
          const set = best, larger = ways.map((way) => grown(set, way)).sort(shorter);
          if (!larger.length) return null;
          best = larger[0];
        }
      }
      looked += 1;
      for (const way of ways) {
        const larger = grown(node, way);
        if (seen.has(larger.key)) continue;
        seen.add(larger.key);
        open.push(larger);
      }
    }
    return null;
  };

  // ---- the goal

  /** Some movements and what their needs mention, all the way down. @param {Model} model @param {number[]} from */
  const chainOf = (model, from) => {
    const seen = new Set(from), todo = [...from];
    for (let m = todo.pop(); m !== undefined; m = todo.pop()) {
      for (const leaf of readiness.leavesOf(model.tables.needs[m])) {
        const below = model.of(leaf);
        if (seen.has(below)) continue;
        seen.add(below);
        todo.push(below);
      }
    }
    return [...seen];
  };
  /** @param {Trainee} c @param {Skill} skill @param {boolean} chosen @returns {TrainingGoal} */
  const ofSkill = (c, skill, chosen) => ({ id: skill.id, leaf: skill.goal, chain: skill.members, chosen, route: route(c, skill.goal) });
  /** The goal of a person, or the skill that is nearest: with the largest share owned that is not finished, then the shortest route.
   * @param {Trainee} c @returns {TrainingGoal | null} */
  const goalOf = (c) => {
    const { tables, model, person: { goal } } = c;
    const skill = tables.skills.find(({ id }) => id === goal);
    if (skill) return ofSkill(c, skill, true);
    const movement = goal ? model.numbers.get(goal) : undefined;
    if (goal && movement !== undefined) return { id: tables.ids[movement], leaf: movement, chain: chainOf(model, [movement]), chosen: true, route: route(c, movement) };
    const owned = (/** @type {Skill} */ { members }) => members.filter((m) => training.isOwned(c, m)).length;
    const open = tables.skills.filter((one) => c.found.judge(model.of(one.goal))(one.goal) !== TRUE)
      .map((one) => ({ one, part: owned(one), of: one.members.length })).sort((a, b) => b.part * a.of - a.part * b.of);
    while (open.length) {
      const [first] = open, alike = open.filter(({ part, of }) => part * first.of === first.part * of);
      const reached = alike.map(({ one }) => ofSkill(c, one, false)).filter((one) => one.route);
      if (reached.length) return reached.reduce((a, b) => (Number(b.route && b.route.cost) < Number(a.route && a.route.cost) ? b : a));
      open.splice(0, alike.length);
    }
    return null;
  };

  // ---- the gaps

  /** The demands of a tree that are not true, under groups that are not. @param {Tree} tree @param {(leaf: number) => boolean} isTrue @returns {number[]} */
  const untrue = (tree, isTrue) => {
    if (holds(tree, isTrue)) return [];
    return tree.leaf >= 0 ? [tree.leaf] : tree.parts.flatMap((part) => untrue(part, isTrue));
  };
  /** How hard a target is. @param {Trainee} c @param {Got} target */
  const hardness = (c, { sets, amount, seconds, unit, load, hits, atMost }) => [readiness.mass(unit, load, c.person.bodyWeight) || 0, sets, atMost ? -amount : amount, seconds, hits];
  /** @param {Trainee} c @param {number[]} asked demands */
  const easiest = (c, asked) => asked.map((leaf) => ({ leaf, hard: hardness(c, c.model.target(leaf)) }))
    .reduce((a, b) => (b.hard[b.hard.findIndex((n, i) => n !== a.hard[i])] < a.hard[b.hard.findIndex((n, i) => n !== a.hard[i])] ? b : a)).leaf;

  /** The heaviest first: weight, then the one that opens more, then by id. @param {Gap} a @param {Gap} b */
  const heavier = (a, b) => b.weight - a.weight || b.opens.length - a.opens.length || a.movement - b.movement;

  /** Every gap between a person and a goal, with its weight: the longest path to the goal, in half weeks times thousandths.
   * @param {Trainee} c @param {TrainingGoal} goal @returns {Map<number, Gap>} */
  const gaps = (c, goal) => {
    const { model, tables } = c, top = model.of(goal.leaf);
    const onRoute = new Set(goal.route ? goal.route.movements : []);
    /** @type {Map<number, { asked: number[], over: Set<number> }>} */
    const all = new Map();
    if (!onRoute.has(top)) return new Map();
    all.set(top, { asked: [], over: new Set() });
    const todo = [top];
    for (let m = todo.pop(); m !== undefined; m = todo.pop()) {
      if (training.isOwned(c, m)) continue;
      const of = c.found.judge(m);
      for (const leaf of untrue(nested(tables.needs[m], () => false), (l) => of(l) === TRUE)) {
        const below = model.of(leaf);
        if (!onRoute.has(below)) continue;
        const known = all.get(below) || { asked: [], over: new Set() };
        if (!all.has(below)) todo.push(below);
        all.set(below, known);
        known.asked.push(leaf);
        known.over.add(m);
      }
    }
    /** @type {Map<number, Gap>} */
    const out = new Map();
    for (const [m, { asked, over }] of all) {
      const leaf = m === top ? goal.leaf : easiest(c, asked), now = training.now(c, m);
      out.set(m, { movement: m, leaf, now, share: training.share(c, now, model.target(leaf)), opens: [...over].sort((a, b) => a - b), weight: 0, low: 0, high: 0, stop: null });
    }
    weigh(c, out);
    return out;
  };
  /** @param {Trainee} c @param {Map<number, Gap>} all */
  const weigh = (c, all) => {
    const { weeks } = c.tables;
    /** @typedef {[number, number, number]} Path weight, low, high */
    /** @type {Map<number, Path>} */
    const paths = new Map();
    /** The next on the path. @type {Map<number, number>} */
    const next = new Map();
    const more = (/** @type {Path} */ a, /** @type {Path} */ b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2];
    /** @param {number} m @param {Set<number>} seen @returns {Path} */
    const longest = (m, seen) => {
      const kept = paths.get(m);
      if (kept) return kept;
      const { opens, share } = /** @type {Gap} */ (all.get(m)), left = WHOLE - share, [low, high] = [weeks[2 * m], weeks[2 * m + 1]];
      seen.add(m);
      /** @type {Path} */
      let best = [-1, 0, 0];
      for (const up of opens) {
        if (seen.has(up)) continue;
        const path = longest(up, seen);
        if (more(path, best) > 0) { best = path; next.set(m, up); }
      }
      if (best[0] < 0) best = [0, 0, 0];
      seen.delete(m);
      /** @type {Path} */
      const path = [(low + high) * left + best[0], low * left + best[1], high * left + best[2]];
      paths.set(m, path);
      return path;
    };
    for (const gap of all.values()) [gap.weight, gap.low, gap.high] = longest(gap.movement, new Set());
    stop(c, all, next);
  };

  // ---- where the way ends for now

  /** What a movement and its test need that is not at hand. @param {Trainee} c @param {number} m @returns {string[][]} */
  const missing = ({ tables, person: { have } }, m) => (have === null ? [] : tables.equipment[m].filter((oneOf) => !oneOf.some((word) => have.includes(word))));
  /** What the way needs and is not at hand, each with the gaps that it stops, the lowest first: first what stops the step that is next, then
   * what stops the lowest, then what stops most. @param {Trainee} c @param {Map<number, Gap>} all @param {Gap | null} next @returns {{ oneOf: string[], stops: number[] }[]} */
  const toBeHad = (c, all, next) => {
    /** @type {Map<string, { oneOf: string[], stops: number[] }>} */
    const by = new Map(), stop = next && next.stop ? next.stop.by : -1, place = (/** @type {number} */ m) => (m === stop ? -1 : c.tables.stage[m]);
    for (const { movement: m } of [...all.values()].sort(training.heavier)) {
      for (const oneOf of missing(c, m)) {
        const key = oneOf.join(), of = by.get(key) || { oneOf, stops: [] };
        of.stops.push(m);
        by.set(key, of);
      }
    }
    for (const { stops } of by.values()) stops.sort((a, b) => place(a) - place(b));
    return [...by.values()].sort((a, b) => place(a.stops[0]) - place(b.stops[0]) || b.stops.length - a.stops.length);
  };
  /** From 65: a balance upright on one leg that was measured and lasts too short on a side. @param {Trainee} c @returns {{ movement: number, left: number, right: number } | null} */
  const falls = (c) => {
    const { K, age, model, facts } = c;
    if (age === null || age < K.balance_age) return null;
    for (let m = 0; m < model.count; m += 1) {
      if (!facts.has(m, training.TRAITS.UPRIGHT) || !model.is(m, readiness.EACH_SIDE) || facts.measure(m) !== TIME) continue;
      const is = training.own(c, m);
      if (is && is.left !== null && is.right !== null && Math.min(is.left, is.right) < K.one_leg_s * ONE) return { movement: m, left: is.left, right: is.right };
    }
    return null;
  };
  /** Ends the way of each gap where it is closed: itself, or by the heaviest that is closed below it. @param {Trainee} c @param {Map<number, Gap>} all @param {Map<number, number>} next */
  const stop = (c, all, next) => {
    const order = [...all.values()].sort(heavier), short = falls(c);
    /** @type {Map<number, { by: number, why: Stop['why'], missing: string[][] }>} */
    const closed = new Map();
    for (const { movement: m } of order) {
      const lacks = missing(c, m);
      if (short && short.movement === m) closed.set(m, { by: m, why: 'falls', missing: [] });
      else if (lacks.length) closed.set(m, { by: m, why: 'equipment', missing: lacks });
      else if (c.minor && c.facts.has(m, training.TRAITS.LOADED)) closed.set(m, { by: m, why: 'age', missing: [] });
    }
    const held = new Map(closed), whole = new Map(order.map(({ movement, low, high }) => [movement, [low, high]]));
    for (const [from, why] of closed) {
      const open = [from];
      for (let m = open.pop(); m !== undefined; m = open.pop()) {
        const gap = all.get(m);
        for (const up of gap ? gap.opens : []) if (all.has(up) && !held.has(up)) { held.set(up, why); open.push(up); }
      }
    }
    const first = short ? closed.get(short.movement) : undefined;
    for (const gap of order) {
      let at = /** @type {number | undefined} */ (gap.movement);
      while (at !== undefined && !held.has(at)) at = next.get(at);
      const end = first ? gap.movement : at, why = first || (at === undefined ? undefined : held.get(at));
      if (end === undefined || !why) continue;
      const [low, high] = /** @type {number[]} */ (whole.get(end));
      gap.low -= low;
      gap.high -= high;
      gap.stop = { at: end, ...why };
    }
  };

  /** What holds a person back: the heaviest gap that has a line of its own, unknown ones and those whose target is reached last.
   * @param {Trainee} c @param {Candidate[]} candidates @returns {Gap | null} */
  const limiter = (c, candidates) => {
    /** @type {Gap[]} */
    const worked = candidates.flatMap(({ gap, insteadOf, rule }) => (gap && insteadOf === null && rule !== 'care first' ? [gap] : []));
    // What was only done before comes after what is open.
    const last = (/** @type {Gap} */ { now, share, movement }) => (now === null || share === WHOLE ? 2 : 0) + (training.isOpen(c, movement) ? 0 : 1);
    return worked.sort((a, b) => last(a) - last(b) || heavier(a, b))[0] || null;
  };

  /** What goes on once a movement was shown: up its harder neighbours, as long as the next is known and fits; where none is, and it is too
   * easy, the next to be tried, which may wait for nothing but that it is shown. Neither lowering nor with weight; null where there is
   * nothing. @param {Trainee} c @param {number} m @param {Set<number>} inChain @param {(c: Trainee, m: number) => boolean | null} fits @param {(c: Trainee, m: number) => boolean} isTooEasy */
  const onward = (c, m, inChain, fits, isTooEasy) => {
    const { facts, tables } = c;
    if (facts.group(m) < 0 || facts.isPractice(m)) return null;
    const other = (/** @type {number} */ up) => (JSON.stringify(tables.equipment[up]) === JSON.stringify(tables.equipment[m]) ? 0 : 1);
    const next = (/** @type {number} */ of, /** @type {(up: number) => boolean} */ is) => facts.harder[of]
      .filter((up) => tables.phase[up] === tables.phase[m] && facts.measure(up) === facts.measure(m) && !facts.has(up, training.TRAITS.LOADED) && is(up))
      .sort((a, b) => Number(inChain.has(b)) - Number(inChain.has(a)) || other(a) - other(b) || tables.stage[a] - tables.stage[b] || a - b)[0];
    const known = (/** @type {number} */ up) => training.may(c, up) && fits(c, up) === true;
    let top = m;
    for (let up = next(m, known); up !== undefined; up = next(up, known)) top = up;
    if (top !== m) return top;
    const fresh = (/** @type {number} */ up) => (training.may(c, up) || training.isOnlyUnsure(c, up)) && fits(c, up) === null && !training.isTooNew(c, up);
    const first = isTooEasy(c, m) ? next(m, fresh) : undefined;
    return first === undefined ? null : first;
  };

  Object.assign(training, { onward, goalOf, gaps, heavier, limiter, chainOf, missing, toBeHad, falls });
})();
