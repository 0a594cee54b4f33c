'use strict';
// The home page for who was here before: what is next, as the last plan said it. It works nothing out.
(() => {
  const { make, named } = globalThis.rungbook.page;
  const { say, sayNodes } = globalThis.rungbook.words;
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
  const sound = next && ['id', 'name', 'sets', 'goal'].every((key) => typeof next[key] === 'string') && /^[a-z0-9-]+$/.test(next.id);
  if (!sound && !about.goal) return;
  const who = typeof about.name === 'string' && localStorage.getItem(`${globalThis.rungbook.health.own}who`) ? make('p', { class: 'hint', text: say('home.for', { name: about.name }) }) : null;
  const acts = make('p', { class: 'acts' }, make('a', { class: 'act', href: 'today.html', text: say('home.to_today') }), ' ', make('a', { class: 'act quiet', href: 'where-i-stand.html', text: say('home.new_number') }));
  /** A mark as the tables have it: its address is one of this site. @param {any} mark */
  const isMark = (mark) => mark && ['signal', 'word', 'says', 'href'].every((key) => typeof mark[key] === 'string') && /^[a-z0-9-]+[.]html(#[a-z0-9-]+)?$/.test(mark.href) && /^(warning|caution|notice|danger)$/.test(mark.signal);
  if (sound) {
    const tables = /** @type {any} */ ({ ids: [next.id], names: [next.name], marks: isMark(next.mark) ? [next.mark] : [], mark: [isMark(next.mark) ? 0 : -1] });
    const line = sayNodes('home.next', { movement: named(tables, 0), sets: make('span', { class: 'dose', text: next.sets }) });
    place.replaceChildren(make('h2', { text: say('home.next_head') }), ...(who ? [who] : []), make('p', { class: 'lead' }, ...line.filter((part) => part !== null).map((part) => /** @type {Node | string} */ (part))),
      make('p', { class: 'hint', text: next.got ? say('home.last', { got: next.got, goal: next.goal }) : say('home.no_last', { goal: next.goal }) }), acts);
  } else place.replaceChildren(make('h2', { text: say('home.next_head') }), ...(who ? [who] : []), make('p', { text: say('home.go_on') }), acts);
  place.hidden = false;
})();
