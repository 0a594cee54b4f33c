'use strict';
'after page.js states.js';
// Training, last part: the sessions of four weeks, today's first of them, and what is said of them. The same as the program's own, on
// the same tables. No page, no storage, no clock.
(() => {
  const { targets, results, readiness, training } = globalThis.rungbook;
  const { WHOLE } = readiness;
  const { may, down, heavier, minutes } = training;
  const { TURNOVER, LOADED, STRAIGHT, STRICT, UPRIGHT, INVERTED } = training.TRAITS;
  const { say } = globalThis.rungbook.words;
  const BLOCKS = ['practice', 'strength', 'kept up', 'range'];
  const WEEK = 7, DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
  const LETTERS = 'ABCDEFGH', { LIMITS } = globalThis.rungbook.health, MOST_MONOTONY = LIMITS.monotony;
  /** First tries and showings stand beside the sets that are counted. @param {string} rule */
  const isTrial = (rule) => rule === 'first try' || rule === 'show it';
  /** @param {string} block */
  const isHard = (block) => block === 'strength' || block === 'kept up';

  // ---- the days

  /** The days of each of so many weeks. @param {Trainee} c @param {number} count @returns {number[][]} */
  const daysOf = ({ day, aWeek, weekdays }, count) => Array.from({ length: count }, (_, week) => {
    const all = Array.from({ length: WEEK }, (__, i) => day + WEEK * week + i);
    // 1970-01-01 was a Thursday.
    return weekdays.length ? all.filter((on) => weekdays.includes(DAYS[(((on + 3) % WEEK) + WEEK) % WEEK])) : Array.from({ length: aWeek }, (__, k) => all[Math.floor((WEEK * k) / aWeek)]);
  });
  /** The day from which lighter weeks are counted: the log's first after its last time off. @param {Trainee} c */
  const startOf = ({ log, day, K }) => {
    const days = [...new Set(log.map(({ on }) => on)), day];
    for (let i = days.length - 1; i > 0; i -= 1) if (days[i] - days[i - 1] >= K.off[0]) return days[i];
    return days[0];
  };

  // ---- what was done, and is planned

  /** @param {Trainee} c @returns {Diary} */
  const diary = (c) => {
    const { tables, facts, K } = c;
    /** @type {Map<number, Set<number>>} */
    const groups = new Map(), parts = new Map(), movements = new Map();
    const note = (/** @type {Map<number, Set<number>>} */ of, /** @type {number} */ key, /** @type {number} */ on) => of.set(key, (of.get(key) || new Set()).add(on));
    const did = (/** @type {number} */ m, /** @type {number} */ on, /** @type {boolean} */ hard) => {
      if (hard && facts.group(m) >= 0) note(groups, facts.group(m), on);
      tables.parts.forEach((_, part) => { if ((tables.heavy_on[m] >> part) & 1) note(parts, part, on); });
    };
    const near = (/** @type {Map<number, Set<number>>} */ of, /** @type {number} */ key, /** @type {number} */ on) => [...(of.get(key) || [])].some((day) => Math.abs(on - day) < K.apart);
    for (const { movement, on } of c.log) {
      did(movement, on, true);
      note(movements, movement, on);
    }
    return {
      did, stood: (m, on) => note(movements, m, on),
      times: (m, on, days) => [...(movements.get(m) || [])].filter((day) => day < on && on - day <= days).length,
      trained: (group, on, days) => [...(groups.get(group) || [])].some((day) => day < on && on - day <= days),
      groupIsNear: (group, on) => near(groups, group, on),
      partIsNear: (m, on) => tables.parts.some((_, part) => ((tables.heavy_on[m] >> part) & 1) === 1 && near(parts, part, on)),
    };
  };

  /** Hard sets of a kind in a week. @param {Trainee} c @param {number} kind @param {number} full how many full weeks of the plan came before @param {boolean} sore of what hurts the mean itself, or twice what is kept up */
  const ceiling = (c, kind, full, sore) => {
    const { log, day, K, facts } = c, of = log.filter(({ movement, on }) => facts.kind(movement) === kind && day - on <= K.logged);
    const sets = of.reduce((sum, { did }) => sum + did.length, 0);
    const [more, than] = K.rise, risen = of.length ? (sets * WEEK * more) / (Math.max(WEEK, day - of[0].on) * than) : 0;
    const most = K.cap[log.length && day - log[0].on >= K.cap_days ? 1 : 0];
    if (sore) return Math.min(most, down(Math.max((risen * than) / more, K.keep_sets[0] * K.keep_week)));
    return Math.min(most, down(Math.max(K.week_one, risen) * (more / than) ** full));
  };

  /** It was shown, and something else goes on for it; or it waits for what is to be shown. @param {Work} work @param {Candidate} of */
  const isOff = ({ tried }, { movement, then, after }) => (then !== null && tried.has(movement)) || (after !== null && !tried.has(after));
  /** Of the goal's chain, trained lately, and not yet twice in these seven days. @param {Trainee} c @param {Work} work @param {Candidate} of @param {number} on */
  const keepsItsLine = ({ K }, { diary: log }, of, on) => of.goesOn && log.times(of.movement, on, WEEK - 1) < K.keep_week;

  /** What a kind is trained by, and not yet twice in these seven days; one session of the week is left to what is new.
   * @param {Trainee} c @param {Work} work @param {Candidate} of @param {number} on */
  const isMainstayDue = ({ K }, { diary: log, perWeek }, of, on) => of.mainstay && log.times(of.movement, on, WEEK - 1) < Math.min(K.keep_week, Math.max(0, perWeek - 1));
  /** Two sets of its kind's week are left for it, and may go beyond the session's share: what keeps its line, what a kind is trained by, and
   * a gap that was tried and did not stand in seven days. @param {Trainee} c @param {Work} work @param {Candidate} of @param {number} on */
  const hasToCome = (c, work, of, on) => {
    const tried = !isTrial(of.rule) || work.tried.has(of.movement), isLate = of.gap !== null && work.diary.times(of.movement, on, WEEK - 1) === 0;
    return isHard(of.block) && !isOff(work, of) && (keepsItsLine(c, work, of, on) || (tried && (isLate || isMainstayDue(c, work, of, on))));
  };

  /** First what comes every time, then the groups in rounds, then what is kept up. @param {Trainee} c @param {Work} work @param {(m: number) => number} times @param {(group: number) => boolean} trained in the last seven days @param {(of: Candidate) => boolean} keeps its line @param {(of: Candidate) => boolean} isDue what a kind is trained by @param {boolean} isLater from the second week on */
  const inTurn = (c, work, times, trained, keeps, isDue, isLater) => {
    const { facts, tables } = c, { all, balance } = work;
    const byWeight = (/** @type {Candidate} */ a, /** @type {Candidate} */ b) => b.weight - a.weight || a.movement - b.movement || Number(a.single) - Number(b.single);
    const first = all.filter((of) => of.first).sort((a, b) => Number(b === balance) - Number(a === balance) || byWeight(a, b));
    const rest = all.filter((of) => !of.first && of.block !== 'kept up');
    const queues = training.by(rest, (of) => (of.block === 'strength' ? facts.group(of.movement) : -1 - BLOCKS.length + BLOCKS.indexOf(of.block)));
    const late = (/** @type {Candidate} */ { rule, block }) => (rule === 'first try' && isHard(block) ? 1 : 0), isBack = training.isBack(c) ? 1 : 0;
    const rounds = [...queues.values()].flatMap((queue) => queue.sort((a, b) => Number(keeps(b)) - Number(keeps(a)) || times(a.movement) - times(b.movement) || late(a) - late(b) || byWeight(a, b)).map((of, round) => ({ of, round })));
    // Back from time off what is known comes first.
    rounds.sort((a, b) => a.round - b.round || isBack * (late(a.of) - late(b.of)) || byWeight(a.of, b.of));
    const place = (/** @type {Candidate} */ { movement }) => tables.pattern_order.indexOf(tables.pattern[movement]);
    const kept = all.filter((of) => !of.first && of.block === 'kept up').sort((a, b) => Number(keeps(b)) - Number(keeps(a)) || late(a) - late(b) || times(a.movement) - times(b.movement) || place(a) - place(b) || a.movement - b.movement);
    // The first of each group, then the second of each.
    const inGroup = [...training.by(kept, ({ movement }) => facts.group(movement)).values()], round = new Map(inGroup.flatMap((list) => list.map((of, i) => [of, i])));
    kept.sort((a, b) => Number(round.get(a)) - Number(round.get(b)));
    // A group that no gap trains stands once in seven days, before the second of the others, one a session.
    const served = new Set(all.filter(({ block }) => block === 'strength').map(({ movement }) => facts.group(movement)));
    const early = kept.find(({ movement }) => !served.has(facts.group(movement)) && !trained(facts.group(movement)));
    const of = (/** @type {boolean} */ isFirst) => rounds.filter(({ round }) => (round === 0) === isFirst).map((one) => one.of);
    const later = kept.filter((one) => one !== early);
    const order = [...first, ...of(true), ...(early ? [early] : []), ...later.filter(keeps), ...of(false), ...later.filter((one) => !keeps(one))];
    // From the second week on: of what the goal needs, then of what is tried first beside it, the heaviest that did not stand in two weeks.
    const overdue = !isLater ? [] : all.filter((one) => (one.gap || late(one)) && !one.first && !isOff(work, one) && times(one.movement) === 0).sort(byWeight).slice(0, c.K.overdue_lines);
    // What a kind is trained by comes before what is new, then what is overdue.
    return [...new Set([...first, ...all.filter(isDue).sort(byWeight), ...overdue, ...order])];
  };

  // ---- one session

  /** The lines of a day, with so many of range and so many first tries at most beside what comes every time.
   * @param {Trainee} c @param {Work} work @param {Planned} week @param {number} on @param {InTurn[]} order @param {number} mostRange @param {number} mostFirst @returns {DayDraft} */
  const draftOf = (c, work, week, on, order, mostRange, mostFirst) => {
    const { K, facts } = c, { diary: log } = work;
    const warm = Math.min(K.warm_up_most, down(K.warm_up * c.minutes));
    const state = { left: c.minutes - warm, used: new Map(), sets: new Map(), firsts: 0, shows: 0, mostRange, mostFirst };
    /** @type {Line[]} */
    const lines = [];
    const lost = [...work.lost];
    for (const { movement, asked, late } of order) {
      if (!asked) {
        if (late) lost.push({ movement, why: { key: 'left.lately', values: late.what } });
        continue;
      }
      const line = { ...asked }, of = line.candidate;
      if (lines.some(({ movement }) => movement === line.movement)) continue;
      const sameKind = (/** @type {Line} */ { movement }) => facts.kind(movement) === facts.kind(line.movement);
      if (line.eased && facts.group(of.movement) >= 0 && lines.some(sameKind)) continue;
      const no = barred(c, work, week, { on, line, lines, state });
      if (no === '') continue;
      const unfit = no || fitted(c, work, week, { on, line, lines, state }), stepped = !unfit && stepsIn(c, work, line, on);
      // A stretch that nobody asked for is not missed.
      if (stepped && !of.gap && line.block === 'range') continue;
      const why = unfit || (stepped ? { key: 'left.stands_in', values: {} } : null);
      if (why) {
        lost.push({ movement: line.movement, why });
        continue;
      }
      const counted = isHard(line.block) && !isTrial(line.rule), kind = facts.kind(line.movement);
      state.left -= line.minutes;
      state.firsts += line.rule === 'first try' ? 1 : 0;
      state.shows += line.rule === 'show it' ? 1 : 0;
      state.used.set(line.block, (state.used.get(line.block) || 0) + line.minutes);
      if (counted) state.sets.set(kind, (state.sets.get(kind) || 0) + line.sets);
      lines.push(line);
    }
    return { lines, lost, state, without: (only) => withoutTime(c, log, on, { lines, lost }, only) };
  };
  /** How many of pulling, pushing and legs have no line for want of time; `only` those that were not trained in six days.
   * @param {Trainee} c @param {Diary} log @param {number} on @param {{ lines: Line[], lost: LeftOut[] }} of @param {boolean} only */
  const withoutTime = ({ facts, tables }, log, on, { lines, lost }, only) => ['pull', 'push', 'legs'].filter((name) => {
    const group = tables.group_names.indexOf(name), is = (/** @type {{ movement: number }} */ { movement }) => facts.group(movement) === group;
    return lost.some((one) => is(one) && one.why.key === 'left.time') && !lines.some(is) && !(only && log.trained(group, on, WEEK - 1));
  }).length;
  /** @param {Trainee} c @param {Work} work @param {Planned} week @param {number} on @returns {PlannedSession} */
  const session = (c, work, week, on) => {
    const { K, facts } = c, { diary: log, tried } = work;
    const order = inTurn(c, work, (m) => log.times(m, on, K.turns), (group) => log.trained(group, on, WEEK - 1), (of) => keepsItsLine(c, work, of, on), (of) => isMainstayDue(c, work, of, on), on - c.day >= K.overdue).filter((of) => !isOff(work, of)).map((of) => {
      const asked = training.line(c, of, { on, first: work.first, before: week.lighter ? 0 : week.before.get(of) || 0, tried: tried.has(of.movement), again: log.times(of.movement, on, on - work.first) > 0, isLimiter: of.gap !== null && of.gap === work.limiter });
      return { movement: of.movement, asked, late: asked ? null : training.waitsLately(c, of.movement, on) };
    });
    const lay = (/** @type {number} */ most, mostFirst = work.mostFirst) => draftOf(c, work, week, on, order, most, mostFirst);
    let draft = lay(Infinity);
    // Two lines of range where a group has no time for any, and fewer where that is its only one in seven days.
    if (draft.without(false)) draft = lay(K.range_lines);
    for (let fewer = K.range_lines - 1; fewer >= 0 && draft.without(true); fewer -= 1) {
      const other = lay(fewer);
      if (other.without(true) < draft.without(true)) draft = other;
    }
    // Not more first tries than lines of a known amount, where enough are known.
    const known = Math.max(1, draft.lines.filter(({ block, rule }) => block !== 'range' && rule !== 'first try' && rule !== 'until it is tested').length);
    if (!work.few && draft.state.firsts > known) draft = lay(draft.state.mostRange, known);
    // A day of nothing but range and plain practice, or of one line, is left to its neighbours.
    const isTraining = (/** @type {Line} */ { block, movement: m, candidate: { single } }) => isHard(block) || single || facts.has(m, TURNOVER) || facts.has(m, LOADED) || facts.has(m, INVERTED);
    const isThin = draft.lines.length < 2 || !draft.lines.some(isTraining);
    if (isThin && work.hasFull) {
      draft.lines.length = 0;
      draft.state.sets.clear();
    }
    work.hasFull = work.hasFull || !isThin;
    const { lines, lost, state } = draft;
    // What nobody would look for in vain: said of the first day.
    if (on === work.first) lost.push(...absent(c, work, on, lines, lost));
    for (const line of lines) {
      const { candidate } = line, { movement, single } = candidate, m = line.movement;
      log.stood(movement, on);
      if (!week.lighter && !line.sore && line.rule !== 'time off') work.done.set(candidate, (work.done.get(candidate) || 0) + 1);
      if (line.sore && isHard(line.block) && !isTrial(line.rule)) week.sore.add(facts.kind(m));
      if (isTrial(line.rule)) tried.add(movement);
      log.did(m, on, isHard(line.block) || single || facts.has(m, TURNOVER));
    }
    for (const [kind, sets] of state.sets) week.sets.set(kind, (week.sets.get(kind) || 0) + sets);
    for (const line of lines) {
      const key = `${line.movement} ${line.block}`;
      state.left += line.minutes;
      if (week.lighter && line.block !== 'range') lighten(c, line, work.full.get(key));
      else if (!week.lighter) work.full.set(key, { ...line });
      state.left -= line.minutes;
    }
    lines.sort(inOrder(c));
    easyFirst(c, lines);
    // Each once, for the first reason.
    const said = new Set(lines.map(({ movement }) => movement));
    return { on, week: week.number, name: '', lighter: week.lighter, minutes: c.minutes - state.left, warmUp: warmUp(c, lines), lines, leftOut: lost.filter(({ movement }) => { const isNew = !said.has(movement); said.add(movement); return isNew; }) };
  };

  /** Half the sets of the newest full week, and nothing above it. @param {Trainee} c @param {Line} line @param {Line | undefined} full */
  const lighten = (c, line, full) => {
    if (full) {
      const less = Math.max(0, line.amount - full.amount);
      line.sets = Math.min(line.sets, full.sets);
      line.amount -= less;
      if (line.load !== null && full.load !== null) line.load = Math.min(line.load, full.load);
      if (line.left !== null) line.left = Math.min(c.K.reserve, line.left + less);
    }
    line.sets = Math.ceil(line.sets / 2);
    line.minutes = minutes(c, line);
  };

  /** The limiter, and of each pattern of strength the highest rung with a number of its own, where neither a line nor a word is of it.
   * @param {Trainee} c @param {Work} work @param {number} on @param {Line[]} lines @param {LeftOut[]} lost @returns {LeftOut[]} */
  const absent = (c, { limiter, diary: log }, on, lines, lost) => {
    const { tables, facts, model } = c;
    /** @type {LeftOut[]} */
    const out = [];
    const say_ = (/** @type {number} */ m) => out.push({ movement: m, why: whyAbsent(c, log, m, on, lines) });
    if (limiter && !lines.some(({ gap, movement }) => gap === limiter || movement === limiter.movement) && !lost.some(({ movement }) => movement === limiter.movement)) say_(limiter.movement);
    for (const pattern of tables.pattern_order) {
      const of = (/** @type {{ movement: number }} */ { movement }) => tables.pattern[movement] === pattern;
      if (lost.some(of) || out.some(of) || lines.some(of)) continue;
      const [known] = model.order.filter((m) => of({ movement: m }) && facts.isCounted(m) && !facts.isPractice(m) && training.hasResult(c, m)).sort((a, b) => tables.stage[b] - tables.stage[a] || a - b);
      if (known !== undefined) say_(known);
    }
    return out;
  };
  /** @param {Trainee} c @param {Diary} log @param {number} m @param {number} on @param {Line[]} lines @returns {Reason} */
  const whyAbsent = (c, log, m, on, lines) => {
    const group = c.facts.group(m), part = training.sorePart(c, m), because = (/** @type {string} */ key, values = {}) => ({ key, values });
    if (!training.isOpen(c, m) && !training.wasDone(c, m)) return because('left.not_shown');
    if (!may(c, m)) return training.whyNot(c, m);
    if (part >= 0) return because('left.spared', { part });
    if (group >= 0 && log.groupIsNear(group, on)) return because('left.apart', { group });
    if (training.now(c, m) === null) return because('left.careful');
    if (group >= 0 && lines.some(({ block, movement }) => isHard(block) && c.facts.group(movement) === group)) return because('left.served', { group });
    return because('left.turns');
  };

  /** What a way out needs and is tried anew after long off: the way out comes when that number is in, or when it was tried and two
   * weeks of the plan are over. @param {Trainee} c @param {Work} work @param {number} m @param {number} days of the plan so far */
  const beginsAnewBelow = (c, { all, tried }, m, days) => (c.facts.word(m) !== 'exit' ? undefined : readiness.leavesOf(c.tables.needs[m]).map(c.model.of)
    .find((low) => !(days >= c.K.exit_from && tried.has(low)) && training.foot(c, c.tables.pattern[low]) !== training.NEVER && all.some(({ movement, rule }) => movement === low && rule === 'first try')));

  /** Why a line does not stand today: a reason, '' where nothing is said of it, null where it may.
   * @param {Trainee} c @param {Work} work @param {Planned} week @param {Entry} at @returns {Reason | '' | null} */
  const barred = (c, work, week, { on, line, lines, state }) => {
    const { K, facts } = c, { diary: log } = work, { block, rule, movement: m, candidate: of } = line, hard = isHard(block);
    const count = (/** @type {string} */ name) => lines.filter((other) => other.block === name).length;
    if ((hard || of.single || facts.has(m, TURNOVER)) && facts.group(m) >= 0 && log.groupIsNear(facts.group(m), on)) return { key: 'left.apart', values: { group: facts.group(m) } };
    const tried = rule === 'first try' ? c.tables.try_group[m] : -1;
    if (tried >= 0 && log.groupIsNear(tried, on)) return { key: 'left.apart', values: { group: tried } };
    if (log.partIsNear(m, on)) return { key: 'left.heavy', values: {} };
    const overhead = line.sore ? training.overheadOn(c, m) : -1;
    if (overhead >= 0) return { key: 'left.overhead', values: { part: overhead } };
    const itself = line.sore ? training.tooMuchOn(c, m, on) : -1, sore = line.sore && itself < 0 ? training.heavyBelow(c, m, of.movement) : itself;
    if (sore >= 0) return training.leftFor(c, m, sore);
    const need = beginsAnewBelow(c, work, of.movement, on - work.first);
    if (need !== undefined) return { key: 'left.waits_for', values: { movement: need } };
    const isBreath = (/** @type {Line} */ one) => isHard(one.block) && (facts.has(one.movement, STRAIGHT) || (one.unit === 's' && one.amount > K.long_hold));
    if (training.sparesBreath(c) && isBreath(line) && lines.filter(isBreath).length >= K.breath_lines) return { key: 'left.breath', values: {} };
    if (rule === 'show it' && work.tried.has(of.movement)) return { key: 'left.waits', values: {} };
    if (rule === 'show it' && (week.lighter || state.shows >= K.shows)) return { key: 'left.show_turns', values: {} };
    if (rule === 'first try' && (week.lighter || state.firsts + toTry(c, work, { on, line, lines, state }) >= state.mostFirst)) return { key: 'left.try_turns', values: {} };
    if (block === 'kept up' && (log.times(of.movement, on, WEEK - 1) >= K.keep_week || (of.goesOn ? count('strength') + count('kept up') >= K.lines_most : lines.filter((other) => other.block === 'kept up' && !other.candidate.goesOn).length >= Math.max(K.keep_lines, K.lines - count('strength'))))) return '';
    if (block === 'strength' && count('strength') >= K.lines) return { key: 'left.turns', values: {} };
    if (block === 'range' && !of.first && count('range') >= state.mostRange) return { key: 'left.time', values: {} };
    if (line.worse && hard && lines.filter((other) => other.worse && isHard(other.block)).length >= K.sore_lines) return { key: 'left.enough', values: {} };
    return null;
  };
  /** Whether something that hurts, hurt lately or rests has to do with a movement: it stresses it, or is the next form of one that does.
   * @param {Trainee} c @param {number} m */
  const isConcerned = (c, m) => {
    const parts = new Set([...training.newestPains(c).filter(({ score, signs }) => score > 0 || signs.length > 0), ...training.easedPains(c)].map(({ part }) => part));
    const causes = c.found.causes.filter(({ kind, cls }) => kind !== 'light' && !(kind === 'restrict' && cls !== null));
    return [m, ...c.tables.easier[m]].some((of) => [...parts].some((part) => training.stresses(c, of, part)) || causes.some((cause) => readiness.reaches(c.model, cause, of)));
  };
  /** What moves on as fast as any, a stand on one leg too; a stretch only without a caution. @param {Trainee} c @param {number} m */
  const isGentle = ({ facts, tables }, m) => {
    const mark = tables.marks[tables.mark[m]], isFree = !mark || mark.signal === 'notice';
    return (!facts.has(m, STRICT) || facts.has(m, UPRIGHT)) && (isFree || !facts.isMobility(m));
  };
  /** Whether a line stands in only since something hurts or rests, and may not: nothing is known of it, and it is of a class with a warning, or
   * harder or graver than all that left for it. What has nothing to do with what hurts or rests is in nobody's place, where it is gentle and no
   * higher a rung than all that would stand. @param {Trainee} c @param {Work} work @param {Line} line @param {number} on */
  const stepsIn = (c, { unhurt, all }, { movement: m, candidate: { movement: asked } }, on) => {
    const stood = unhurt ? unhurt.lines.filter((of) => of.on <= on) : [];
    if (!unhurt || training.now(c, m) !== null || stood.some(({ of }) => of === asked)) return false;
    const left = stood.filter(({ of, movement }) => !all.some((other) => other.movement === of) || training.sorePart(c, movement) >= 0);
    if (training.isGrave(c, m)) return true;
    const { stage } = c.tables, gentle = stage[m] <= Math.max(0, ...stood.map(({ movement }) => stage[movement])) && isGentle(c, m);
    return !left.some(({ movement }) => training.isNoHarder(c, m, movement)) && (isConcerned(c, m) || !gentle);
  };
  /** How many first tries are kept free for groups of which nothing is known and that have no line yet today; none where a line is of such a
   * group itself. @param {Trainee} c @param {Work} work @param {Entry} at */
  const toTry = ({ facts, tables }, { all, tried, diary: log }, { on, line, lines }) => {
    const waiting = tables.group_names.map((_, group) => group).filter((group) => {
      const hard = all.filter(({ block, movement }) => isHard(block) && facts.group(movement) === group);
      return hard.every(({ rule }) => rule === 'first try') && hard.some(({ movement }) => !tried.has(movement)) && !log.groupIsNear(group, on)
        && !lines.some(({ block, movement }) => isHard(block) && facts.group(movement) === group);
    });
    return isHard(line.block) && waiting.includes(facts.group(line.movement)) ? 0 : waiting.length;
  };
  /** Takes sets from a line until it fits the week and the day; the reason where two do not.
   * @param {Trainee} c @param {Work} work @param {Planned} week @param {Entry} at @returns {Reason | null} */
  const fitted = (c, work, week, { on, line, lines, state }) => {
    const { K, facts } = c, hard = isHard(line.block), kind = facts.kind(line.movement);
    if (hard && !isTrial(line.rule)) {
      const full = training.hasSign(c) ? 0 : Math.max(0, Math.max(0, week.full - (week.lighter ? 1 : 0)) - (work.sore.get(kind) || 0)), here = state.sets.get(kind) || 0;
      const rest = ceiling(c, kind, full, line.sore) - (week.sets.get(kind) || 0), left_ = rest - here, lately = line.candidate.goesOn ? training.didLately(c, line.movement) : null;
      // Two sets are left for what has to come and has none yet.
      const waiting = work.all.filter((of) => of.movement !== line.candidate.movement && facts.kind(of.movement) === kind && hasToCome(c, work, of, on) && !(lately && keepsItsLine(c, work, of, on)) && !lines.some((other) => other.movement === of.movement)).length;
      const toCome = Math.min(week.toCome, K.per_week), whole = Math.ceil(rest / toCome) - here, share = waiting ? Math.min(whole, Math.max(K.fewest, whole - K.fewest)) : whole;
      // What comes every time keeps its sets in the sessions to come.
      const later = work.all.some((of) => of.first && isHard(of.block) && facts.kind(of.movement) === kind) ? K.fewest * (toCome - 1) : 0;
      // Lifted with weight for the goal by an adult: a few sets at once are worth more than two a day.
      const heavy = line.block === 'strength' && facts.isByMax(line.movement) && line.load !== null && line.load > 0 && !line.eased && !line.sore && !c.minor;
      const room = lately ? Math.max(share, Math.min(training.setsOf(c, lately), waiting ? left_ - K.fewest * waiting - later : left_))
        : heavy ? Math.max(share, Math.min(K.heavy_sets, left_)) : hasToCome(c, work, line.candidate, on) && left_ - later >= K.fewest ? Math.max(share, K.fewest) : share;
      if (room < K.fewest) return { key: 'left.sets', values: {} };
      line.sets = Math.min(line.sets, room);
    }
    const cap = hard ? state.left : Math.min(state.left, c.minutes * K.block - (state.used.get(line.block) || 0));
    const least = line.block === 'practice' ? K.practice_fewest : K.fewest;
    // From 65 the balance line leaves half of practice to what else is practised.
    const shares = line.candidate === work.balance && work.all.some((of) => of.block === 'practice' && of !== work.balance), most = shares ? Math.min(cap, (c.minutes * K.block) / 2) : cap;
    while (minutes(c, line) > most && line.rule !== 'show it' && line.sets > least) line.sets -= 1;
    line.minutes = minutes(c, line);
    return line.minutes > cap ? { key: 'left.time', values: {} } : null;
  };

  /** The order in which a session is trained. @param {Trainee} c @returns {(a: Line, b: Line) => number} */
  const inOrder = (c) => {
    const { facts, tables } = c;
    /** @param {Line} of @returns {number[]} */
    const key = ({ block, movement: m, candidate: { single, weight } }) => {
      const at = BLOCKS.indexOf(block);
      if (block === 'practice') return [at, facts.word(m) === 'exit' ? 0 : 1, single ? 1 : 0, -weight, m];
      if (block === 'range') return [at, -weight, m];
      return [at, facts.has(m, STRAIGHT) || facts.has(m, INVERTED) ? 0 : 1, tables.pattern_order.indexOf(tables.pattern[m]), -tables.stage[m], m];
    };
    return (a, b) => {
      const [x, y] = [key(a), key(b)], i = x.findIndex((n, at) => n !== y[at]);
      return i < 0 ? 0 : x[i] - y[i];
    };
  };

  /** Of what is tried first in one pattern, straight arms and inverted apart, the easier before the harder, in the places that they have.
   * @param {Trainee} c @param {Line[]} lines */
  const easyFirst = ({ facts, tables }, lines) => {
    const sort = (/** @type {Line} */ { block, movement: m }) => (BLOCKS.indexOf(block) * tables.patterns.length + tables.pattern[m]) * 2 + (facts.has(m, STRAIGHT) || facts.has(m, INVERTED) ? 1 : 0);
    const places = lines.flatMap(({ block, rule }, at) => (isHard(block) && (rule === 'first try' || rule === 'until it is tested') ? [at] : []));
    for (const of of training.by(places, (at) => sort(lines[at])).values()) {
      const easy = of.map((at) => lines[at]).sort((a, b) => tables.stage[a.movement] - tables.stage[b.movement] || a.movement - b.movement);
      of.forEach((at, i) => { lines[at] = easy[i]; });
    }
  };

  /** What to leave out, with what to go gently, and when to stop a line: once a session. @param {Trainee} c @returns {string} */
  const gently = (c) => {
    const { tables, found } = c, rests = new Set(found.causes.flatMap(({ part }) => (part === null ? [] : [part])));
    const pains = training.newestPains(c).filter(({ score, part }) => score > 0 && !rests.has(part)), hurts = pains.map(({ part }) => part);
    const named = (/** @type {number[]} */ all) => all.map((part) => tables.parts[part]).sort().map((part) => say(`body.${part.replace('-', '_')}`)).join(say('list.separator'));
    // From 3 on as soon as it hurts more, below that one above the pain, never above what goes on.
    const more = pains.some(({ score }) => score >= LIMITS.pain[0]), above = Math.min(...pains.map(({ part, score }) => Math.min(score + 1, readiness.goesOnTo(c.model, c.person, part, c.day))));
    return [...(rests.size ? [say('training.leave_out', { parts: named([...rests]) })] : []),
      ...(hurts.length ? [more ? say('training.go_gently_more', { parts: named(hurts) }) : say('training.go_gently', { parts: named(hurts), n: above })] : [])].join(' ');
  };
  /** What to leave out, the school's lines for all and for the classes of the day, one easy set of the first strength line.
   * @param {Trainee} c @param {Line[]} lines @returns {WarmUp} */
  const warmUp = (c, lines) => {
    const { tables } = c, classes = new Set(lines.flatMap(({ movement }) => tables.cautions[movement].map((i) => tables.classes[i])));
    const of = Object.keys(tables.warm_up).filter((key) => key !== 'always' && classes.has(key)).sort();
    // Not what bears on a part that rests or hurts at 3 or more, nor what wants something that is not at hand.
    const { person: { have } } = c, spared = new Set([...c.found.causes.flatMap(({ part }) => (part === null ? [] : [part])), ...training.newestPains(c).filter(({ score }) => score >= LIMITS.pain[0]).map(({ part }) => part)]);
    const isFine = (/** @type {WarmUpLine} */ [, parts, wants]) => ![...spared].some((part) => (parts >> part) & 1) && (have === null || wants.every((oneOf) => oneOf.some((word) => have.includes(word))));
    const text = ['always', ...of].flatMap((key) => tables.warm_up[key] || []).filter(isFine).map(([said]) => said);
    return { sore: gently(c), text, easy: toEaseIn(c, lines).flatMap((line) => easySet(c, line)) };
  };
  /** The first strength line, and of pulling, pushing and legs besides the first that bears on a part that hurts: its own warm-up is left out.
   * @param {Trainee} c @param {Line[]} lines @returns {Line[]} */
  const toEaseIn = (c, lines) => {
    const hard = lines.filter(({ block }) => isHard(block)), group = (/** @type {Line} */ { movement }) => c.tables.group_names[c.facts.group(movement)], served = new Set(hard.slice(0, 1).map(group));
    return hard.filter((line, i) => {
      if (i === 0) return true;
      if (served.has(group(line)) || group(line) === 'core' || training.sorePart(c, line.movement) < 0) return false;
      served.add(group(line));
      return true;
    });
  };
  /** Half of a set with half of its weight; nothing where that warms nobody up. @param {Trainee} c @param {Line} line @returns {WarmUp['easy']} */
  const easySet = ({ K, tables }, line) => {
    const half = Math.floor(line.amount / 2), plate = Math.max(1, tables.dose_of_school.smallest_plate);
    const load = line.load !== null && line.load > 0 ? down((line.load * 0.5) / plate) * plate : line.load;
    return half < (line.unit === 's' ? K.hold_fits : K.fits[0]) ? [] : [{ movement: line.movement, bare: load === 0, amount: inWords({ ...line, sets: 1, amount: half, load: load || null, side: null }) }];
  };

  // ---- the weeks

  /** Everything that is to be done: the goal, what holds back, the sessions of four weeks, the retest.
   * @param {Model} model @param {Person} person @param {Assessment} found @param {number} day @param {number} [count] the first weeks alone; 0: without sessions @returns {Training} */
  const plan = (model, person, found, day, count) => {
    const of = laid(training.begin(model, person, found, day), unhurtOf(model, person, day, count), count), c = of.trainee;
    const sessions = training.makeRoom(c, of.sessions, of.retests).map((one) => ({ ...one, warmUp: warmUp(c, one.lines) }));
    named(sessions);
    sayBeyond(sessions);
    return { ...of, sessions };
  };
  /** The plan without pains, pauses, and restrictions of a part, a pattern or a movement; null where nothing of that is on file. Those of a
   * class are of the person, and stay. @param {Model} model @param {Person} person @param {number} day @param {number} [count] @returns {Unhurt | null} */
  const unhurtOf = (model, person, day, count) => {
    const pauses = person.pauses.filter(({ kind, cls }) => kind === 'restrict' && cls !== null);
    if (!person.pains.length && pauses.length === person.pauses.length) return null;
    const bare = { ...person, pains: [], pauses }, { sessions } = laid(training.begin(model, bare, readiness.assess(model, bare, day), day), null, count);
    return { lines: sessions.flatMap(({ on, lines }) => lines.map(({ candidate: { movement: of }, movement }) => ({ on, of, movement }))) };
  };
  /** @param {Trainee} c @param {Unhurt | null} unhurt @param {number} [count] @returns {Training} */
  const laid = (c, unhurt, count) => {
    const { K, tables, day } = c;
    const goal = training.goalOf(c), gaps = goal ? training.gaps(c, goal) : new Map();
    const { all, lost, limiter, balance } = training.candidates(c, goal, gaps);
    const weeks = daysOf(c, K.weeks).slice(0, count), start = startOf(c), every = Math.max(1, Math.floor(tables.dose_of_school.lighter_every / WEEK));
    const known = all.filter(({ rule }) => !isTrial(rule) && rule !== 'range').length;
    /** @type {Work} */
    const work = { all, lost, limiter, balance, first: (weeks.flat()[0] || day), mostFirst: known >= K.known ? K.first : training.wasLongOff(c) ? K.first_back : K.first_new, few: known < K.known, perWeek: weeks.length ? weeks[0].length : 0, hasFull: false, diary: diary(c), tried: new Set(), done: new Map(), sore: new Map(), full: new Map(), unhurt };
    /** @type {PlannedSession[]} */
    const sessions = [];
    /** @type {Map<number, number>} */
    const weekSets = new Map();
    let before = new Map(), full = 0, last = /** @type {number | null} */ (null);
    weeks.forEach((days, w) => {
      const lighter = (Math.floor((day + WEEK * w - start) / WEEK) + 1) % every === 0;
      if (!lighter) before = new Map(work.done);
      /** @type {Planned} */
      const week = { number: w + 1, lighter, before, full, sets: new Map(), sore: new Set(), toCome: 0 };
      // A day without a line is no session; the first stays, it says what is left out.
      days.forEach((on, i) => { const of = session(c, work, { ...week, toCome: days.length - i }, on); if (!sessions.length || of.lines.length) sessions.push(of); });
      if (!lighter) full += 1;
      if (!lighter) for (const kind of week.sore) work.sore.set(kind, (work.sore.get(kind) || 0) + 1);
      if (lighter) last = days.length ? days[days.length - 1] : day + WEEK * w;
    });
    for (const { movement: m, sets, block, rule } of sessions.filter(({ week }) => week === 1).flatMap(({ lines }) => lines)) {
      if (isHard(block) && !isTrial(rule)) weekSets.set(c.facts.kind(m), (weekSets.get(c.facts.kind(m)) || 0) + sets);
    }
    return { trainee: c, goal, gaps, limiter, sessions, retests: last === null ? [] : training.retestDays(c, daysOf(c, K.weeks + 2).flat(), last, (on) => training.retests(c, goal, gaps, on, sessions)), weekSets };
  };
  /** What is said to come in another session, and comes in none, is said to have no room. @param {PlannedSession[]} sessions */
  const sayBeyond = (sessions) => {
    const toCome = new Set(), promised = ['left.turns', 'left.try_turns', 'left.show_turns'];
    for (const of of [...sessions].reverse()) {
      of.leftOut = of.leftOut.map((one) => (promised.includes(one.why.key) && !toCome.has(one.movement) ? { ...one, why: { key: 'left.beyond', values: {} } } : one));
      for (const { movement } of of.lines) toCome.add(movement);
    }
  };
  /** Sessions that differ in strength are A, B and so on. @param {PlannedSession[]} sessions */
  const named = (sessions) => {
    /** @type {Map<string, string>} */
    const letters = new Map();
    for (const of of sessions) {
      const key = of.lines.filter(({ block }) => block === 'strength').map(({ movement }) => movement).sort((a, b) => a - b).join();
      if (!letters.has(key)) letters.set(key, LETTERS[Math.min(LETTERS.length - 1, letters.size)]);
      of.name = String(letters.get(key));
    }
    if (letters.size < 2) for (const of of sessions) of.name = '';
  };
  // ---- in words

  /** Sets, amount and load of a line as a target. @param {Line} line @returns {Got} */
  const gotOf = ({ sets, amount, unit, seconds, load }) => ({
    measure: unit === 'reps' ? targets.REPS : targets.TIME, atMost: false, sets, amount: amount * targets.ONE, seconds: unit === 'reps' && seconds ? seconds * targets.ONE : 0,
    unit: load === null ? targets.NO_LOAD : targets.MASS, load: load || 0, hits: 0, of: 0,
  });
  /** A line for readers: "5 sets of 5". @param {Line} line */
  const inWords = (line) => targets.words(gotOf(line), units(), line.side !== null);
  const units = () => (globalThis.rungbook.page ? globalThis.rungbook.page.units.ofSchool : 'metric');
  /** A movement with its signal word, as a text names it. @param {Tables} tables @param {number} m */
  const nameOf = (tables, m) => { const mark = tables.marks[tables.mark[m]]; return `${tables.names[m]}${mark ? ` [${mark.signal}]` : ''}`; };
  /** A result, or left and right. @param {Got[]} sides */
  const sidesInWords = ([one, other]) => (other ? say('morning.left_right', { left: targets.words(one, units()), right: targets.words(other, units()) }) : targets.words(one, units()));
  /** What a reason speaks of, in words. @param {Trainee} c @param {Reason['values']} values @returns {Record<string, string | number>} */
  const valuesOf = (c, { movement, part, pattern, group, cls, got, sides, standard, weight, why, ...rest }) => {
    const { tables, model } = c;
    const what = [movement === undefined ? '' : nameOf(tables, movement), part === undefined ? '' : say(`body.${tables.parts[part].replace(/[ -]/g, '_')}`),
      pattern === undefined ? '' : say(`pattern.${tables.patterns[pattern].replace(/[ -]/g, '_')}`), cls === undefined ? '' : tables.class_names[cls]].find((of) => of !== '') || '';
    return {
      ...rest, what, movement: what, part: what, pattern: what, group: group === undefined ? '' : say(`training.group.${tables.group_names[group]}`), got: sides ? sidesInWords(sides) : got ? targets.words(got, units()) : '',
      standard: standard === undefined ? '' : targets.words(model.target(standard), units()), weight: weight === undefined ? '' : targets.massInWords(weight, true, units()), why: why ? whyOf(c, why) : '',
    };
  };
  /** Why a line stands as it does, or why a movement has none. @param {Trainee} c @param {Reason} of @returns {string} */
  const whyOf = (c, { key, values }) => {
    const [kind, which] = key.split('.'), of = valuesOf(c, values);
    return kind === 'left' ? say(`training.left.${which}`, of) : say(`training.why.${which}`, of);
  };
  /** Where the words of a reason stand. @param {Reason} of */
  const wordsOf = ({ key }) => `training.${key}`;

  /** What follows a line. @param {Line} line */
  const thenOf = ({ then, most }) => say(`training.then.${then}`, { n: most });

  /** @param {TrainingGoal | null} goal */
  const isReached = (goal) => goal !== null && goal.route !== null && goal.route.movements.length === 0;
  /** Whether nothing may be planned: a clinician comes first, or the health questions do. @param {Person} person @param {number} day */
  const isRefused = ({ screened, born }, day) => { const { saysOn, mustAnswer } = globalThis.rungbook.health; return saysOn(screened, day, born) === 'ask' || mustAnswer(screened, day, born); };
  /** Why nothing may be planned: too young for a page, a clinician first, or the health questions. @param {Person} person @param {number} day @returns {string} */
  const refusal = ({ screened, born }, day) => {
    const { isChild, mustAnswer } = globalThis.rungbook.health;
    if (isChild(born, day)) return say('training.child');
    if (!mustAnswer(screened, day, born)) return say('training.ask');
    const first = Number(results.ageOn(born, day)) < LIMITS.adult ? say('training.answer_with_parent') : say('training.answer_first');
    // As a results file says it; the outcome that, copied as it stands, lets nobody train.
    return [say('training.no_answers'), first, say('training.write_answers', { example: `screened: { says: ask, on: ${results.dayText(day)} }` })].join(' ');
  };
  /** What hurt or rested and is over only lately, each once with the last day of less. @param {Trainee} c @returns {{ what: Reason['values'], until: number }[]} */
  const overLately = (c) => {
    /** @type {Map<string, { what: Reason['values'], until: number }>} */
    const out = new Map(), hurt = training.easedPains(c).map(({ part, on }) => ({ what: { part }, until: on + c.K.pain_days }));
    const rested = training.ended(c).map(({ what, until }) => ({ what, until: until + WEEK * c.K.pause_weeks }));
    for (const one of [...hurt, ...rested].filter(({ until }) => until >= c.day)) {
      const key = JSON.stringify(one.what), known = out.get(key);
      if (!known) out.set(key, one);
      else known.until = Math.max(known.until, one.until);
    }
    return [...out.values()];
  };
  /** The same in words. @param {Trainee} c @returns {string[]} */
  const latelyWords = (c) => overLately(c).map(({ what, until }) => say('training.lately', { ...valuesOf(c, what), day: results.dayText(until) }));
  /** @param {Training} of @returns {string[]} */
  const conditions = ({ trainee: c, gaps }) => [
    ...(c.person.screened ? [] : [say('training.unanswered')]),
    ...(c.young ? [say('training.coach_present')] : []),
    ...(c.age !== null && c.age >= c.K.balance_age ? [say('training.wall_near')] : []),
    ...(c.minor && [...gaps.keys()].some((m) => c.facts.has(m, LOADED)) ? [say('training.sixes')] : []),
    ...(training.sparesBreath(c) ? [say('training.breathe_through')] : []),
    ...(training.newestPains(c).some((pain) => training.isHolding(pain) && !readiness.isPausing(c.model, c.person, pain, c.day)) ? [say('training.until_lower', { n: globalThis.rungbook.health.LIMITS.pain[0] - 1 })] : []),
    ...(training.hasSign(c) ? [say('training.until_seen')] : []),
    ...latelyWords(c),
    ...(daysOf(c, c.K.weeks).flat()[0] === c.day && c.log.some(({ on, did, reserve }) => c.day - on < c.K.apart && reserve === 0 && did.some((set) => set < did[0])) ? [say('training.rest_day')] : []),
  ];

  /** A target in words; a share of body weight as what it comes to, too. @param {Trainee} c @param {number} leaf */
  const asksInWords = (c, leaf) => {
    const { tables, model } = c, target = model.target(leaf), mass = training.comesTo(c, target);
    const words = targets.words(target, units(), tables.targets[tables.leaves[2 * leaf + 1]][9] === 1);
    return mass === null ? words : say('training.comes_to', { target: words, weight: targets.massInWords(Math.abs(mass), mass >= 0, units()) });
  };
  /** About how long a path is, ends that are alike once, below a month in weeks; null where nothing of it is left. @param {Tables} tables @param {Gap} gap */
  const timeOf = ({ training: K }, { low: from, high: to }) => {
    const months = (/** @type {number} */ path) => Math.ceil(path / 2000 / K.weeks_a_month);
    if (to === 0) return null;
    const [few, many] = [from, to].map((path) => Math.max(1, Math.ceil(Math.floor((path + 100) / 200) / 10)));
    const [unit, low, n] = many <= K.said_in_weeks ? ['weeks', few, many] : ['months', Math.max(1, months(from)), months(to)];
    return low === n ? say(`training.time.${unit}`, { n }) : say(`training.time.between.${unit}`, { low, n });
  };
  /** Equipment of which one will do. @param {Tables} tables @param {string[]} oneOf @returns {string} */
  const gearWords = ({ gear }, oneOf) => oneOf.map((word) => gear[word] || word.replace(/-/g, ' ')).reduce((before, next) => say('list.or', { before, next }));
  /** How long the whole way takes, in a sentence; where it is closed, as far as the first step that is, and why. Null where nothing of it is
   * left. @param {Trainee} c @param {Gap} gap @param {Pick<Saying, 'say' | 'name'>} saying @returns {any} */
  const howLong = ({ tables }, gap, { say: tell, name }) => {
    const time = timeOf(tables, gap), { stop } = gap;
    if (!stop || gap.weight === 0) return time === null ? null : tell('training.way.whole', { time });
    const movement = name(stop.by), all = stop.missing.map((oneOf) => gearWords(tables, oneOf)), last = all.pop() || '';
    const why = stop.why === 'age' ? tell('training.way.age', { movement, n: LIMITS.adult }) : stop.why === 'falls' ? tell('training.way.falls', {})
      : tell('training.way.equipment', { movement, gear: all.length ? say('list.and', { before: all.join(say('list.separator')), last }) : last });
    if (time === null) return tell('training.way.none', { why });
    return stop.at === stop.by ? tell('training.way.then', { time, why }) : tell('training.way.then_waits', { time, movement: name(stop.at), why });
  };
  /** How a line's reps are paced, and its sides. @param {Tables} tables @param {Line} line @returns {string[]} */
  const paceInWords = (tables, line) => {
    const side = line.side === null ? [] : [say(line.side === 'each' ? 'training.each_side' : 'training.weaker_first'), ...(line.weaker ? [say(`training.more_${line.weaker}`)] : [])];
    const [end, held] = tables.hold[line.movement] || ['', 0], tempo = tables.tempo[line.movement];
    const paced = line.unit !== 'reps' ? [] : [...(tempo ? [say('target.tempo', { tempo })] : []), ...(held ? [say(end === 'top' ? 'target.held_top' : 'target.held_bottom', { n: held })] : [])];
    return [...paced, ...side];
  };
  /** Sets, amount and load of a line, its pace and its sides, as the program says it. @param {Tables} tables @param {Line} line */
  const setsInWords = (tables, line) => {
    const values = { sets: line.sets, amount: targets.words(gotOf({ ...line, sets: 1 }), units()) };
    return [line.rule === 'until it is tested' ? say('training.sets_by_number', values) : say('training.sets', values), ...paceInWords(tables, line)].join(say('list.separator'));
  };
  /** What hurt, when, with its signs; where the part rests for it, above a number, whom to ask before it is trained again, and until when. @param {Tables} tables @param {Pain} pain @param {number | null} above @returns {string} */
  const painWords = (tables, pain, above) => {
    const { part, score, on, signs, nextMorning } = pain;
    const name = say(`body.${tables.parts[part].replace('-', '_')}`);
    let out = say('morning.pain', { part: name, score, day: results.dayText(on) });
    if (nextMorning !== null && nextMorning > score) out = say('morning.pain_morning', { pain: out, n: nextMorning });
    if (signs.length) out = say('morning.pain_signs', { pain: out, signs: signs.map((sign) => say(`training.sign.${sign.replace('-', '_')}`)).join(say('list.separator')) });
    return above === null ? out : say('morning.pain_stops', { pain: out, part: name, until: readiness.untilWords(pain, above) });
  };
  /** The parts of the spine that a pain can be in. */
  const SPINE = ['neck', 'upper-back', 'lower-back'];
  /** The pains that stop their part today: what is said before all else; of the spine with the signs that are for the same hour. @param {Trainee} c @returns {string[]} */
  const clinician = (c) => c.found.causes.filter(({ kind }) => kind === 'pain').flatMap(({ entry }) => c.person.pains.filter((pain) => pain.entry === entry)).map((pain) => {
    const said = painWords(c.tables, pain, readiness.goesOnTo(c.model, c.person, pain.part, c.day));
    return SPINE.includes(c.tables.parts[pain.part]) ? say('morning.emergency_for', { pain: said, sign: say('hurts.now_spine') }) : said;
  });
  /** Who stands by, and how to breathe: once a session, with the movements for which. @param {Trainee} c @param {PlannedSession} session @returns {{ asks: string, movements: number[] }[]} */
  const care = ({ tables }, { lines }) => [['alone', say('training.not_alone')], ['breath-holding', say('training.breathe')]].flatMap(([id, asks]) => {
    const cls = tables.classes.indexOf(id), movements = [...new Set(lines.map(({ movement }) => movement).filter((m) => tables.cautions[m].includes(cls)))];
    return movements.length ? [{ asks, movements }] : [];
  });

  /** The load of the last seven days, today the last of them: effort times minutes, the mean of the days over their deviation,
   * and the two multiplied; null without a session in them.
   * @param {{ effort: number, minutes: number, on: number }[]} sessions @param {number} today @returns {WeekLoad | null} */
  const lastWeek = (sessions, today) => {
    const days = [0, 0, 0, 0, 0, 0, 0];
    for (const { effort, minutes: long, on } of sessions) if (on <= today && today - on < WEEK) days[today - on] += effort * long;
    const total = days.reduce((all, day) => all + day, 0);
    if (total <= 0) return null;
    const mean = total / WEEK, variance = days.reduce((all, day) => all + (day - mean) * (day - mean), 0) / WEEK;
    const monotony = variance > 0 ? Math.min(MOST_MONOTONY, mean / Math.sqrt(variance)) : MOST_MONOTONY;
    return { total, monotony, strain: total * monotony };
  };

  Object.assign(training, { lastWeek, sidesInWords, asksInWords, howLong, timeOf, gearWords, paceInWords, setsInWords, thenOf, painWords, clinician, care, latelyWords, plan, gotOf, inWords, whyOf, wordsOf, valuesOf, conditions, isRefused, refusal, isReached, nameOf });
})();
