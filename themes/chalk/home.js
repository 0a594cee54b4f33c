'use strict';
// The home page for who was here before: what hurts or rests, and what is next, as the last plan said it. It works nothing else out.
(() => {
  const { make, named } = globalThis.rungbook.page;
  const { say } = globalThis.rungbook.words;
  const place = document.getElementById('next');
  if (!place) return;
  /** @returns {any} */
  const kept = (/** @type {string} */ key) => {
    try {
      return JSON.parse(localStorage.getItem(globalThis.rungbook.health.prefix + key) || 'null');
    } catch {
      return null;
    }
  };
  const next = kept('next'), about = kept('about') || {};
  // Under 16 an adult's word comes first, each day: Today asks for it, and what is next is said there.
  const { LIMITS, ageOn, goesOnTo, worstOfDay, prefix } = globalThis.rungbook.health, age = ageOn(about.born, Math.floor(Date.now() / 864e5));

  // ---- what hurts, or rests, stands above all else

  const isDay = (/** @type {unknown} */ on) => typeof on === 'string' && /^[0-9]{4}-[0-9]{2}-[0-9]{2}$/.test(on);
  const dayWords = (/** @type {string} */ on) => { const [year, month, of] = on.split('-').map(Number); return say('date.day', { day: of, month: say(`month.m${month}`), year: String(year) }); };
  const partWord = (/** @type {string} */ part) => say(`body.${part.replace(/-/g, '_')}`);
  /** Entries of a kind about parts, the newest last. @param {string} kind @returns {any[]} */
  const entriesOf = (kind) => {
    try {
      const keys = Object.keys(localStorage).filter((key) => key.startsWith(`${prefix}${kind}:`)).map((key) => key.slice(prefix.length));
      return keys.map((key) => ({ key, of: kept(key) })).filter(({ of }) => of && isDay(of.on) && typeof of.part === 'string' && /^[a-z-]+$/.test(of.part))
        .sort((a, b) => (a.of.on < b.of.on ? -1 : a.of.on > b.of.on ? 1 : a.key < b.key ? -1 : 1)).map(({ of }) => of);
    } catch {
      return [];
    }
  };
  /** What settles, where Today has not said it yet: the parts whose newest pain is low, and whose last one that was not is younger than that takes.
   * @param {string} today @param {(of: any) => boolean} isPausing */
  const settling = (today, isPausing) => {
    const pains = worstOfDay(entriesOf('pain').filter(({ on }) => on <= today)), isBad = (/** @type {any} */ of) => isPausing(of) || of.score >= LIMITS.pain[0];
    const parts = [...new Set(pains.map(({ part }) => String(part)))].filter((part) => {
      const all = pains.filter((of) => of.part === part), bad = all.filter(isBad).pop();
      return bad && !isBad(all[all.length - 1]) && (Date.parse(today) - Date.parse(bad.on)) / 864e5 <= LIMITS.pain_days;
    });
    return parts.length ? [say('home.settles', { parts: parts.map(partWord).join(say('list.separator')) })] : [];
  };
  const now = new Date(), today = new Date(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate())).toISOString().slice(0, 10);
  const drawHurts = () => {
    const hurts = document.getElementById('hurts-now');
    /** @type {Map<string, any>} */
    const newest = new Map(worstOfDay(entriesOf('pain').filter(({ on }) => on <= today)).map((of) => [of.part, of]));
    const isPausing = (/** @type {any} */ { part, score, signs }) => score > goesOnTo(part, age) || (Array.isArray(signs) && signs.length > 0);
    const pains = [...newest.values()], shown = (/** @type {any} */ { part, score, on }) => say('home.hurts_part', { part: partWord(part), score, day: dayWords(on) });
    const paused = entriesOf('paused').filter(({ on, until, part }) => on <= today && !(isDay(until) && until < today) && !(newest.has(part) && isPausing(newest.get(part))));
    const rests = [...pains.filter(isPausing).map(shown), ...new Set(paused.map(({ part, on }) => say('home.rests_part', { part: partWord(part), day: dayWords(on) })))];
    const sore = pains.filter((of) => !isPausing(of) && of.score >= LIMITS.pain[0]).map(shown), between = say('list.separator');
    const settles = next && next.on === today && Array.isArray(next.settles) ? next.settles.map(String) : settling(today, isPausing);
    if (!(rests.length + sore.length)) delete document.documentElement.dataset.hurts;
    if (!hurts || !(rests.length + sore.length + settles.length)) return;
    hurts.replaceChildren(...[[rests, 'home.rests'], [sore, 'home.hurts']].filter(([list]) => list.length).map(([list, key]) => make('p', { text: say(String(key), { parts: /** @type {string[]} */ (list).join(between) }) })),
      ...settles.map((/** @type {string} */ text) => make('p', { text })), make('a', { href: 'if-it-hurts.html#pain', text: say('rests.sore_better') }));
    hurts.hidden = false;
  };
  drawHurts();

  // What Today said of another day may be another session by now.
  const sound = (age === null || age >= LIMITS.youth) && next && next.on === today && ['id', 'name', 'sets', 'goal'].every((key) => typeof next[key] === 'string') && /^[a-z0-9-]+$/.test(next.id);
  if (!sound && !about.goal && !next) return;
  const who = typeof about.name === 'string' && localStorage.getItem(`${globalThis.rungbook.health.own}who`) ? make('p', { class: 'hint', text: say('home.for', { name: about.name }) }) : null;
  const acts = make('p', { class: 'acts' }, make('a', { class: 'act', href: 'today.html', text: say('home.to_today') }), ' ', make('a', { href: 'where-i-stand.html', text: say('home.new_number') }), ' ', make('a', { href: 'if-it-hurts.html', text: say('entry.if_it_hurts') }));
  /** A mark as the tables have it: its address is one of this site. @param {any} mark */
  const isMark = (mark) => mark && ['signal', 'word', 'says', 'href'].every((key) => typeof mark[key] === 'string') && /^[a-z0-9-]+[.]html(#[a-z0-9-]+)?$/.test(mark.href) && /^(warning|caution|notice|danger)$/.test(mark.signal);
  const head = make('h2', { text: say('home.next_head') });
  if (sound) {
    const tables = /** @type {any} */ ({ ids: [next.id], names: [next.name], marks: isMark(next.mark) ? [next.mark] : [], mark: [isMark(next.mark) ? 0 : -1] });
    place.replaceChildren(...(next.drawn === true ? [make('img', { class: 'small-figure', alt: '', width: 144, height: 144, decoding: 'async', src: `figures/${next.id}.svg` })] : []),
      make('div', {}, head, ...(who ? [who] : []), make('p', { class: 'next-name' }, named(tables, 0)), make('p', { class: 'big-target', text: next.sets }),
        make('p', { class: 'hint', text: next.got ? say('home.last', { got: next.got, goal: next.goal }) : say('home.no_last', { goal: next.goal }) }), acts));
    place.dataset.movement = next.id;
  } else place.replaceChildren(make('div', {}, head, ...(who ? [who] : []), next && next.on === today && next.done === true ? make('p', { text: say('home.done') }) : about.goal ? make('p', { text: say('home.go_on') }) : null, acts));
  place.hidden = false;
  const start = document.getElementById('start');
  if (start) start.hidden = true;
  // The goal that was chosen is told from the others.
  const mine = typeof about.goal === 'string' ? [.../** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('.skill-line'))].find(({ dataset }) => dataset.skill === about.goal) : undefined;
  const choose = mine && mine.querySelector('.onward');
  if (choose) choose.replaceChildren(make('b', { text: say('home.your_goal') }));
  // Drawings and lines stand in the same order.
  const lines = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('.skill-line')]), drawings = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('.ground > .skill-draw')]);
  const drawn = mine && drawings[lines.indexOf(mine)];
  if (drawn) drawn.dataset.mine = '';
  // Your place on each drawing: the highest rung of that skill's chain that is yours.
  const places = next && typeof next.places === 'object' && next.places ? next.places : {};
  for (const [i, line] of lines.entries()) {
    const drawing = drawings[i] && /** @type {SVGElement | null} */ (drawings[i].querySelector('.rungs'));
    if (!drawing) continue;
    const goal = Number(drawing.dataset.stage), stage = places[line.dataset.skill || ''], words = line.querySelector('.rungs-up');
    if (!Number.isInteger(stage) || stage < 0 || stage > goal || !words) continue;
    const you = document.createElementNS('http://www.w3.org/2000/svg', 'path');
    you.setAttribute('class', 'rungs-you');
    you.setAttribute('d', `M8 ${(goal - stage) * 10 + (stage ? 4 : 8)}h48`);
    drawing.append(you);
    words.after(make('span', { class: 'rungs-yours', text: stage === goal ? say('home.yours') : say('map.you_are_here', { stage: stage ? say('stage.rungs_up', { n: stage }) : say('stage.ground') }) }));
  }
})();
