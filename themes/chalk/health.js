'use strict';
// What the health questions say, before anything of the page is shown: who was told to ask a clinician first is invited to nothing,
// on any page. The style sheet hides what invites.
(() => {
  /** The numbers by which results are judged: the program's own, put into the first line when this is published. */
  const LIMITS = globalThis.rungbookLimits;
  /** Whole years, the birthday still to come; null where the year is not known. @param {unknown} born the year @param {number} today */
  const ageOn = (born, today) => (Number.isInteger(born) ? new Date(today * 86400000).getUTCFullYear() - Number(born) - 1 : null);
  /** Too young for a page. @param {unknown} born the year @param {number} today */
  const isChild = (born, today) => { const age = ageOn(born, today); return age !== null && age < LIMITS.alone; };
  /** What the health questions say on a day, counted from 1970-01-01: what a clinician allowed until a day runs out, at the latest after a year;
   * null where they were not answered. Whoever is too young hears ask whatever was said.
   * @param {{ says: string, on: number, until: number | null, lasts?: number | null } | null} screened @param {number} today @param {number | null | undefined} born */
  const saysOn = (screened, today, born) => {
    if (isChild(born, today)) return 'ask';
    if (!screened || screened.on > today) return null;
    return screened.until !== null && today > Math.min(screened.until, screened.on + Math.min(screened.lasts || LIMITS.clearance, LIMITS.clearance)) ? 'ask' : screened.says;
  };
  /** Whether nothing is planned before the health questions are answered: who is not of age, or old, and has no answers on file by that day.
   * @param {{ says: string, on: number, until: number | null, lasts?: number | null } | null} screened @param {number} today @param {number | null | undefined} born */
  const mustAnswer = (screened, today, born) => { const age = ageOn(born, today); return age !== null && (age < LIMITS.adult || age >= LIMITS.older) && saysOn(screened, today, born) === null; };
  /** The highest pain, 0 to 10, with which a part goes on; above it the part rests. @param {string} part @param {number | null} age in whole years, null where it is not known */
  const goesOnTo = (part, age) => (age !== null && age < LIMITS.adult && LIMITS.growing.includes(part) ? 0 : LIMITS.pain[part === 'neck' ? 0 : 1] - 1);
  const root = globalThis.document ? document.documentElement : null;
  const own = `rungbook:${root ? root.dataset.site || '' : ''}:`;
  /** Before the keys of whom this page is for: of several people on one device all but the first have a number. @returns {string} */
  const prefix = () => {
    let who = '';
    try {
      who = localStorage.getItem(`${own}who`) || '';
    } catch {
      // Where nothing is kept there is one person.
    }
    return /^[1-9][0-9]{0,2}$/.test(who) ? `${own}@${who}:` : own;
  };
  const PREFIX = prefix();
  /** Whether what is kept under a name says something of a body. @param {string} key */
  const isResult = (key) => /^(?:tested|trained|sessions|paused|pain|remarks):/.test(key);
  const draw = () => {
    if (!root) return;
    let screened = null, born = null, known = '', hurts = false, heeds = false;
    for (const kept of [() => sessionStorage, () => localStorage]) {
      try {
        screened = screened || JSON.parse(kept().getItem(`${PREFIX}screened`) || 'null');
        const about = JSON.parse(kept().getItem(`${PREFIX}about`) || 'null');
        born = born || (about && about.born);
        const keys = Object.keys(kept()).filter((key) => key.startsWith(PREFIX)).map((key) => key.slice(PREFIX.length)), hasResults = () => keys.some(isResult);
        known = known || (kept().getItem(`${PREFIX}next`) ? 'next' : about && about.goal ? 'goal' : hasResults() ? 'numbers' : '');
        heeds = heeds || Boolean(screened && screened.says === 'light') || keys.some((key) => key.startsWith('restrict:'));
        // Only room is kept by it: what hurts and rests is worked out by the page.
        const last = keys.filter((key) => key.startsWith('pain:')).sort().pop(), pain = last && JSON.parse(kept().getItem(PREFIX + last) || 'null');
        hurts = hurts || keys.some((key) => key.startsWith('paused:')) || Boolean(pain && (pain.score >= LIMITS.pain[0] || pain.signs));
      } catch {
        // Nothing is kept there, or nothing that can be read: the pages that ask look again.
      }
    }
    const day = (/** @type {unknown} */ text) => (typeof text === 'string' && Number.isFinite(Date.parse(text)) ? Date.parse(text) / 86400000 : null);
    const now = new Date(), today = Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 86400000;
    const on = screened && day(screened.on), answers = on === null ? null : { says: screened.says, on, until: day(screened.until), lasts: screened.lasts };
    const health = saysOn(answers, today, born) || (mustAnswer(answers, today, born) ? 'unanswered' : 'none'), years = ageOn(born, today);
    const age = isChild(born, today) ? 'child' : years !== null && years < LIMITS.adult ? 'minor' : '';
    // The whole page hangs on these: they are written only where they change.
    if (root.dataset.health !== health) root.dataset.health = health;
    if (root.dataset.age !== age) root.dataset.age = age;
    if (!hurts) delete root.dataset.hurts;
    else if (root.dataset.hurts !== 'true') root.dataset.hurts = 'true';
    // Whoever is to leave something alone is told so on every page, without a number too.
    if (!heeds) delete root.dataset.heeds;
    else if (root.dataset.heeds !== 'true') root.dataset.heeds = 'true';
    // Pages keep room for what is drawn of somebody who was here before.
    if (known === '') delete root.dataset.known;
    else if (root.dataset.known !== known) root.dataset.known = known;
  };
  /** Of a part and a day the worst counts, whatever was said last: each pain with the highest number and every sign of its day.
   * @template {{ part: unknown, on: unknown, score: number, signs?: unknown }} P @param {P[]} pains */
  const worstOfDay = (pains) => pains.map((of) => {
    const same = pains.filter(({ part, on }) => part === of.part && on === of.on);
    return { ...of, score: Math.max(...same.map(({ score }) => score)), signs: [...new Set(same.flatMap(({ signs }) => (Array.isArray(signs) ? signs : [])))] };
  });
  globalThis.rungbook = Object.assign(globalThis.rungbook || {}, { health: { LIMITS, ageOn, saysOn, mustAnswer, isChild, isResult, goesOnTo, worstOfDay, draw, own, prefix: PREFIX } });
  draw();
  if (root) globalThis.addEventListener('storage', draw);
})();
