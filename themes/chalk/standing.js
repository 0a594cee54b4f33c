'use strict';
// Where I stand over all skills: every movement's state, and why. Loaded only when it is looked at.
(() => {
  const { readiness, placement, states, page } = globalThis.rungbook;
  const { make, named, namedList, byId } = page;
  const { say, sayNodes } = globalThis.rungbook.words;
  const { mark } = states;
  const model = /** @type {Model} */ (states.model);
  const { tables } = model;

  /** A demand in words, and what there is of it. @param {Missing} of */
  const missingLine = ({ leaf, movement, got, share }) => {
    const asked = { movement: named(tables, movement), target: states.target(leaf) };
    return make('li', {}, ...(got === null ? sayNodes('stand.untested', asked) : sayNodes('stand.you_have', { ...asked, got: states.got(got), share: Math.floor(Number(share) / 10) })));
  };
  /** What comes first, where what is missing may not be tried itself. @param {{ direct: boolean, steps: Missing[] }} first */
  const under = ({ direct, steps }) => (direct || steps.length === 0 ? [] : [make('p', { text: say('stand.first') }), make('ul', { class: 'lack' }, ...steps.map(missingLine))]);
  /** Why a movement stands as it does. @param {Stand} stand @param {number} m @returns {(Node | string)[]} */
  const why = (stand, m) => {
    const { found, person } = stand;
    // Who is to ask first reads what is missing, and is told to do nothing about it.
    const barred = states.barred();
    const lack = () => make('ul', { class: 'lack' }, ...found.missing(m).map(missingLine));
    switch (found.states[m]) {
      case readiness.PAUSED:
        return [make('ul', { class: 'lack' }, ...found.pausedBy(m).map((cause) => make('li', {}, ...sayNodes('stand.rest', { pause: states.causeWords(cause) }))))];
      case readiness.OWNED: {
        const root = found.countedBecause(m);
        return [...(root >= 0 ? sayNodes('stand.counted_because', { movement: named(tables, root) }).map((part) => /** @type {Node | string} */ (part)) : []), ...(found.needs[m] === readiness.FALSE ? [make('p', { text: say('stand.foundations_missing') }), lack(), ...(barred ? [] : under(found.first(m)))] : [])];
      }
      case readiness.OPEN:
        if (barred) return [barred === 'ask' ? (states.isChild() ? say('state.with_coach') : say('stand.ask_first')) : say('stand.health_first')];
        return states.isHeld(stand, m) ? states.hints(m) : [say('stand.may_start')];
      case readiness.ALMOST: {
        if (barred) return [lack()];
        const first = found.first(m);
        if (!first.direct && first.steps.length) return [make('p', { text: say('stand.do_not_try') }), lack(), ...under(first)];
        return [...sayNodes('stand.train_first', { movement: named(tables, model.of(found.nearly(m))) }).map((part) => /** @type {Node | string} */ (part)), lack()];
      }
      case readiness.NOT_YET: return barred ? [lack()] : [lack(), ...under(found.first(m))];
      default: {
        if (!person) return [];
        if (barred) return [barred === 'ask' ? (states.isChild() ? say('state.with_coach') : say('stand.ask_first')) : say('stand.health_first')];
        const first = found.first(m);
        if (!first.direct) return first.steps.length ? under(first) : [lack()];
        const tests = [...new Set(first.steps.map(({ movement }) => movement))];
        return sayNodes('stand.tests_would_show', { tests: namedList(tables, tests) }).map((part) => /** @type {Node | string} */ (part));
      }
    }
  };

  /** @param {Stand} stand */
  const summary = (stand) => {
    const counts = readiness.STATES.map((_, state) => stand.found.states.filter((s) => s === state).length);
    byId('summary').replaceChildren(make('ul', { class: 'plain counts' }, ...counts.map((count, state) => (count ? make('li', {}, mark(state), ` ${globalThis.rungbook.words.number(count)}`) : null)).filter((li) => li !== null)));
  };

  /** @param {Stand} stand @param {Skill} skill */
  const skillPart = (stand, skill) => {
    /** @type {{ m: number, today: boolean }[]} */
    const tests = [];
    const isHeld = skill.members.filter((m) => states.isHeld(stand, m));
    for (let asked = isHeld; !states.barred() && tests.length < 3; asked = [...isHeld, ...tests.map(({ m }) => m)]) {
      const question = placement.next(model, stand.found, skill.members, asked, stand.day);
      if (!question) break;
      tests.push({ m: question.movement, today: question.today });
    }
    const goal = model.of(skill.goal);
    const rows = skill.members.map((m) => make('tr', { 'data-movement': tables.ids[m] }, make('th', { scope: 'row' }, named(tables, m)),
      make('td', { 'data-label': say('stand.state') }, mark(stand.found.states[m], stand.found.counted[m] === 1)), make('td', { 'data-label': say('stand.why') }, ...why(stand, m))));
    return make('section', { class: 'skill-stand' },
      make('h2', {}, page.namedSkill(tables, skill, goal)),
      make('p', {}, say('shared.the_goal'), ' ', named(tables, goal), ' ', states.target(skill.goal), ' ', mark(stand.found.states[goal], stand.found.counted[goal] === 1)),
      tests.length ? make('p', {}, ...sayNodes('stand.would_decide', { tests: tests.flatMap(({ m, today }, i) => [i ? say('list.separator') : '', named(tables, m), today ? '' : ` ${say('stand.from_training')}`]) }), ' ',
        make('a', { href: `self-test-${skill.id}.html`, text: say('stand.to_the_questions') })) : states.barred() ? null : make('p', { text: skill.members.some((m) => stand.found.states[m] === readiness.TEST_FIRST) ? say('stand.nothing_to_ask') : say('stand.nothing_in_doubt') }),
      make('details', {}, make('summary', { text: say('stand.all_movements', { n: skill.members.length }) }),
        make('div', { class: 'wide', tabindex: '0' }, make('table', { class: 'list ready-mine' }, make('thead', {}, make('tr', {}, ...[say('shared.movement'), say('stand.state'), say('stand.why')].map((text) => make('th', { scope: 'col', text })))), make('tbody', {}, ...rows)))));
  };

  let drawing = 0;
  /** One skill after the other, so that the page answers meanwhile. @param {Stand} stand */
  const draw = (stand) => {
    const place = byId('skills-mine'), skills = [...tables.skills];
    summary(stand);
    place.replaceChildren();
    clearTimeout(drawing);
    const next = () => {
      const skill = skills.shift();
      if (!skill) return;
      place.append(skillPart(stand, skill));
      drawing = Number(setTimeout(next));
    };
    next();
  };
  globalThis.rungbook.standing = { draw };
})();
