'use strict';
// The program's own script: on every page, before any of the theme. It counts the caution marks as the page was written and as
// it stands, and says so where one is gone; and it looks whether the page's scripts are those that it names.
(() => {
  const words = globalThis.rungbookWords || {};
  const say = (/** @type {string} */ key) => String(words[key]);
  const script = document.currentScript;
  const expected = script ? Number(script.dataset.marks) : 0;
  const cautioned = new Set();
  /** @type {{ mark: Element, around: Element }[]} */
  const written = [];

  /** Whether an element takes up room where it can be seen. @param {Element} element */
  const isSeen = (element) => {
    if (!element.checkVisibility({ opacityProperty: true, visibilityProperty: true, contentVisibilityAuto: true })) return false;
    const { left, right, top, bottom, width, height } = element.getBoundingClientRect();
    if (width < 4 || height < 4 || right < 0 || left > Math.max(innerWidth, document.documentElement.scrollWidth) || bottom + scrollY < 0) return false;
    const x = (left + right) / 2, y = (top + bottom) / 2;
    if (x < 0 || y < 0 || x > innerWidth || y > innerHeight) return true;
    // In sight: what lies over it may only be what stays in its place while the page moves.
    const over = document.elementFromPoint(x, y);
    for (let at = over; at; at = at.parentElement) if (/sticky|fixed/.test(getComputedStyle(at).position)) return innerHeight > 2 * at.clientHeight;
    return !over || element.contains(over) || over.contains(element) || !element.parentElement || !element.parentElement.contains(over);
  };
  const isFolded = (/** @type {Element} */ element) => Boolean(element.closest('details:not([open]), dialog:not([open]), svg'));

  /** An element that names a cautioned movement without a mark that is seen. @returns {boolean} */
  const isGone = () => written.some(({ mark, around }) => around.isConnected && !isFolded(around) && !isFolded(mark) && isSeen(around) && !(mark.isConnected && isSeen(mark)))
    || [...document.querySelectorAll('[data-movement]')].some((element) => cautioned.has(element.getAttribute('data-movement'))
      && !element.querySelector('[data-caution]') && !element.closest('svg') && isSeen(element));

  /** @param {string} text @param {string} name @param {Node[]} more */
  const tell = (text, name, ...more) => {
    if (document.getElementById(name)) return;
    const note = document.createElement('p');
    note.className = 'guard-gone';
    note.id = name;
    note.setAttribute('role', 'alert');
    note.append(text, ' ', ...more);
    document.body.prepend(note);
  };

  const look = () => {
    if (!isGone()) return;
    const link = document.createElement('a');
    link.href = new URL('cautions.html', script ? /** @type {HTMLScriptElement} */ (script).src : location.href).href;
    link.textContent = 'cautions.html';
    tell(say('guard.gone'), 'guard-gone', link);
  };

  const begin = () => {
    const marks = document.querySelectorAll('[data-caution]');
    for (const mark of marks) {
      // A mark of a skill or a family within a movement's page is not the movement's.
      const about = mark.closest('[data-movement], [data-skill], [data-family]');
      if (about && about.hasAttribute('data-movement')) cautioned.add(about.getAttribute('data-movement'));
      if (mark.parentElement && !mark.closest('svg')) written.push({ mark, around: mark.parentElement });
    }
    if (marks.length < expected) tell(say('guard.gone'), 'guard-gone');
  };

  const end = () => {
    const is = String(/** @type {any} */ (globalThis).rungbookIs);
    for (const { src } of document.scripts) {
      const named = /([^/]+[.]js)[?]v=([0-9a-f]+)$/.exec(src);
      if (named && named[1] !== 'tables.js' && !is.includes(`${named[1]}=${named[2]}`) && !document.getElementById('mixed')) tell(say('guard.mixed'), 'mixed');
    }
    look();
    let waits = false;
    new MutationObserver(() => {
      if (waits) return;
      waits = true;
      setTimeout(() => { waits = false; look(); }, 500);
    }).observe(document.documentElement, { childList: true, subtree: true, attributes: true, attributeFilter: ['class', 'style', 'hidden', 'data-caution'] });
  };
  begin();
  addEventListener('load', () => setTimeout(end, 0));
})();
