'use strict';
// How heavy and how fast a published site is on a slow phone: 390 x 844, the processor slowed four times, plain files from the
// loopback. Of each page kind what it loads (KB after gzip -9), its largest contentful paint as a share of a blank page's (the least
// of all runs of each: other work on the machine only adds), and how far it shifts; of pages that show at once what they told last also when
// they are opened again; then the slowest of each touch, by the browser's own event timing. Run by hand:
//   node tests/page/speed.js SITE [--runs N] [--only paints|touches] [--page NAME] [--ticks [--answer]]
const fs = require('fs');
const path = require('path');
const zlib = require('zlib');
const { Person, serve } = require('./drive.js');

const site = path.resolve(process.argv[2]);
/** @param {string} name @param {string} otherwise */
const option = (name, otherwise) => { const at = process.argv.indexOf(`--${name}`); return at > 0 ? process.argv[at + 1] : otherwise; };
const runs = Number(option('runs', '3')), only = option('only', ''), page = option('page', '');
const SKILL = 'strict-ring-muscle-up';
const BLANK = 'blank.html';
/** So many pages between two looks at the blank one. */
const BETWEEN = 4;
const ticks = process.argv.includes('--ticks');
/** Only what stands before the next paint: what the page draws after it is held back. */
const answer = process.argv.includes('--answer');
/** The processor of a slow phone beside this one. */
const SLOWER = 4;
/** Milliseconds between two touches. */
const PACE = 700;

const KINDS = ['index', 'before-you-start', SKILL, 'bar-dip', 'front-levers', 'self-test', `self-test-${SKILL}`, 'where-i-stand', 'today', 'my-people', 'movements', 'search', 'if-it-hurts',
  'cautions', 'faults', 'equipment', 'words', 'about-the-coach', 'about-the-numbers', 'if-you-are-stuck', 'changes', 'data', 'booklet-heavy-dip'].map((kind) => `${kind}.html`);

/** Pages that show at once what they told last. */
const AGAIN = ['where-i-stand.html', 'today.html'];

/** What a page loaded and showed. */
const SEEN = `
  const all = (type) => new Promise((tell) => {
    const found = [];
    new PerformanceObserver((list) => found.push(...list.getEntries())).observe({ type, buffered: true });
    setTimeout(() => tell(found), 100);
  });
  const done = arguments[0];
  Promise.all([all('largest-contentful-paint'), all('layout-shift')]).then(([paints, shifts]) => done({
    files: [location.href, ...performance.getEntriesByType('resource').map((r) => r.name)],
    largest: paints.length ? paints[paints.length - 1].startTime : NaN,
    what: paints.length && paints[paints.length - 1].element ? paints[paints.length - 1].element.outerHTML.slice(0, 60) : '',
    shift: shifts.reduce((sum, s) => sum + (s.hadRecentInput ? 0 : s.value), 0),
    moved: shifts.flatMap((s) => s.sources).map((s) => s.node && (s.node.id || s.node.className || s.node.nodeName)),
  }));`;

/** Somebody who was here before: screened, with a goal and numbers. */
const KNOWN = `
  const put = (key, value) => localStorage.setItem(rungbook.health.own + key, JSON.stringify(value));
  const day = (before) => new Date(Date.now() - before * 864e5).toISOString().slice(0, 10);
  put('screened', { says: 'clear', on: day(30) });
  put('about', { goal: '${SKILL}', born: 1990, name: 'Ana' });
  [['pull-up', '9 reps'], ['bar-dip', '10 reps'], ['dead-hang', '60 s'], ['push-up', '25 reps'], ['squat', '25 reps'], ['ring-row', '12 reps']].forEach(([movement, got], i) => {
    for (const ago of [15, 30, 45]) put('tested:00000' + ago + i + '-aaaaaaa', { movement, got: ago === 15 ? got : '5' + got.slice(got.indexOf(' ')), on: day(ago) });
  });`;

/** @param {string} file */
const gzip = (file) => zlib.gzipSync(fs.readFileSync(file), { level: 9 }).length;
/** @param {string} name */
const part = (name) => (/tables[.]js$/.test(name) ? 'tables' : /search[.]js$/.test(name) && name.startsWith('data') ? 'index' : (/[.](html|js|css|svg)$/.exec(name) || ['', 'pictures'])[1]);

/** @param {number[]} list */
const spread = (list) => { const of = [...list].sort((a, b) => a - b); return { low: of[0], middle: of[of.length >> 1], high: of[of.length - 1] }; };

/** A browser that has never been here; `known` makes it somebody's. @param {string} base @param {boolean} known @param {number} [rate] */
const visitor = async (base, known, rate = SLOWER) => {
  const p = await new Person(base).start();
  await p.cdp('Network.enable', {});
  if (known) {
    await p.open('index.html');
    await p.run(KNOWN);
  }
  await p.cdp('Emulation.setCPUThrottlingRate', { rate });
  return p;
};
/** @param {any} p @param {string} of */
const seen = async (p, of) => {
  await p.cdp('Network.clearBrowserCache', {});
  await p.open(of);
  await new Promise((go) => { setTimeout(go, 1500); });
  return p.send('POST', '/execute/async', { script: SEEN, args: [] });
};

/** The touches whose answer is waited for: the way to them, then each touch with what it does. A step is a place to press, or keys.
 * @type {Record<string, { before: (p: any) => Promise<void>, steps: { press?: string, keys?: string, wait?: string }[] }>} */
const TOUCHES = {
  'guided test: none known': {
    before: async (p) => {
      await p.run("Object.keys(localStorage).filter((key) => key.includes(':tested:')).forEach((key) => localStorage.removeItem(key))");
      await p.open(`self-test-${SKILL}.html`);
    },
    steps: [{ press: '#guided .known .acts button' }, { press: '#guided .acts button', wait: "document.querySelector('#guided .enter-form')" }],
  },
  'guided test: answer': {
    before: (p) => p.open(`self-test-${SKILL}.html`),
    steps: [{ press: '#guided .acts button', wait: "document.querySelector('#guided .enter-form')" }, { press: '#guided .enter-form input' }, { keys: '3' }, ...[0, 1, 2, 3].map(() => ({ press: '#guided .enter-form .acts button.quiet' }))],
  },
  'where I stand: a number': { before: (p) => p.open('where-i-stand.html'), steps: [{ press: '#history article[data-movement=pull-up] .number-line input' }, { keys: '11' }, { press: '#history article[data-movement=pull-up] .number-line button[type=submit]' }] },
  'where I stand: all skills': { before: (p) => p.open('where-i-stand.html'), steps: [{ press: '#all > summary', wait: "document.getElementById('skills-mine').children.length" }] },
  'today: a set ticked': { before: (p) => p.open('today.html'), steps: [{ press: '#sets .ticks input' }, { press: '#sets article:nth-of-type(2) .ticks input' }] },
  'today: a line kept': { before: (p) => p.open('today.html'), steps: [{ press: '#sets article:has(.ticks) .ticks input' }, { press: '#sets article:has(.ticks) .acts button:not(.hurt)', wait: "document.querySelector('#sets article.done')" }] },
  'today: an hour rated': { before: (p) => p.open('today.html'), steps: [{ press: '#session-effort' }, { keys: '6' }, { press: '#session-minutes' }, { keys: '60' }, { press: '#session button[type=submit]' }] },
  'movement: a number': { before: (p) => p.open('bar-dip.html'), steps: [{ press: '#number-form button', wait: "document.querySelector('#number-form input')" }, { press: '#number-form input' }, { keys: '11' }, { press: '#number-form button[type=submit]' }] },
  'search: typing': { before: (p) => p.open('search.html'), steps: [{ press: '#find' }, { keys: 'painful shoulder' }] },
  'movements: narrowing': { before: (p) => p.open('movements.html'), steps: [{ press: '#narrow-by' }, { keys: 'pull' }] },
  'faults: narrowing': { before: (p) => p.open('faults.html'), steps: [{ press: '#narrow-by' }, { keys: 'hips' }] },
  'skill: the map': { before: (p) => p.open(`${SKILL}.html`), steps: [{ press: '#map-box > summary' }] },
  'if it hurts: a part': { before: (p) => p.open('if-it-hurts.html'), steps: [{ press: '#pain-part label:has([value=shoulder])' }, { press: '#pain-form button[value=pause]' }] },
};

/** A place is pressed, or one key after the other, at a person's pace and without a script of the driver's in between; after each
 * `each` is called. @param {any} p @param {{ press?: string, keys?: string, wait?: string }} step @param {() => Promise<void>} each */
const take = async (p, { press, keys, wait }, each) => {
  const rest = () => new Promise((go) => { setTimeout(go, PACE); });
  if (press) {
    const [x, y] = await p.run(`
      const seen = [...document.querySelectorAll(arguments[0])].find((e) => e.checkVisibility({ visibilityProperty: true }) && e.getClientRects().length > 0);
      if (!seen) return [NaN, NaN];
      seen.scrollIntoView({ block: 'center', behavior: 'instant' });
      const box = seen.getBoundingClientRect();
      return [box.left + Math.min(box.width, 200) / 2, box.top + box.height / 2];`, press);
    if (!Number.isFinite(x)) throw new Error(`nothing to press: ${press}`);
    await rest();
    await each();
    for (const type of ['mousePressed', 'mouseReleased']) await p.cdp('Input.dispatchMouseEvent', { type, x, y, button: 'left', clickCount: 1 });
    await rest();
    await each();
  }
  for (const key of keys || '') {
    await p.cdp('Input.dispatchKeyEvent', { type: 'keyDown', text: key, key });
    await p.cdp('Input.dispatchKeyEvent', { type: 'keyUp', key });
    await rest();
    await each();
  }
  if (wait) await p.until(wait);
};

const TIMING = `
  globalThis.timed = [];
  new PerformanceObserver((list) => list.getEntries().forEach((e) => globalThis.timed.push([e.name, e.duration, e.processingEnd - e.processingStart]))).observe({ type: 'event', durationThreshold: 16 });`;

/** The slowest answer of each touch. By the browser's event timing with the processor slowed; with `--ticks` four times the time that
 * the page's own thread was busy, which other work on the machine does not lengthen. @param {string} base */
const touches = async (base) => {
  process.stdout.write(`\n| touch | slowest, ms${ticks ? ', by the page\u2019s own time' : ''} | step by step |\n| --- | ---: | --- |\n`);
  for (const [name, { before, steps }] of Object.entries(TOUCHES)) {
    if (page && !name.startsWith(page)) continue;
    /** @type {number[]} */
    const slowest = [];
    /** @type {Record<string, number>} */
    const each = {};
    let fault = '';
    for (let run = 0; run < runs; run += 1) {
      const p = await visitor(base, true, ticks ? 1 : 4);
      try {
        await before(p);
        await new Promise((go) => { setTimeout(go, 1200); });
        await p.run(TIMING);
        if (answer) await p.run('if (rungbook.page.later) rungbook.page.later = () => {}');
        if (ticks) await p.cdp('Performance.enable', { timeDomain: 'threadTicks' });
        let last = 0, most = 0;
        /** @type {Record<string, number>} */
        let parts = {};
        const busy = async () => {
          const now = Object.fromEntries((await p.cdp('Performance.getMetrics', {})).metrics.map((/** @type {{ name: string, value: number }} */ m) => [m.name, m.value * 1000 * SLOWER]));
          if (process.env.PARTS) process.stdout.write(`    ${['Task', 'Script', 'RecalcStyle', 'Layout'].map((k) => `${k} ${Math.round(now[`${k}Duration`] - (parts[`${k}Duration`] || 0))}`).join(' ')}\n`);
          parts = now;
          return now.TaskDuration;
        };
        for (const [i, step] of steps.entries()) {
          let seenEvents = 0, n = 0;
          await take(p, step, async () => {
            n += 1;
            let long = 0;
            if (ticks) {
              const now = await busy();
              long = now - last;
              last = now;
              if (step.press && n === 1) return;
            } else {
              const timed = await p.run('return globalThis.timed');
              long = Math.max(0, ...timed.slice(seenEvents).map((/** @type {[string, number]} */ of) => of[1]));
              seenEvents = timed.length;
            }
            most = Math.max(most, long);
            const of = `${i + 1} ${step.press ? 'press' : 'key'}`;
            each[of] = Math.max(each[of] || 0, Math.round(long));
          });
          if (ticks) last = await busy();
        }
        slowest.push(Math.round(most));
      } catch (error) {
        fault = String(error);
      }
      await p.end();
    }
    const { low, middle, high } = spread(slowest);
    process.stdout.write(`| ${name} | ${middle} (${low} to ${high}) | ${Object.entries(each).map(([k, v]) => `${k} ${v}`).join(', ')} ${fault} |\n`);
  }
};

(async () => {
  const folder = fs.mkdtempSync(path.join(require('os').tmpdir(), 'speed-'));
  fs.cpSync(site, folder, { recursive: true });
  fs.writeFileSync(path.join(folder, BLANK), '<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Blank</title><link rel="icon" href="data:,"><p>A blank page.</p></html>');
  const server = await serve(folder), { port } = server.address(), base = `http://localhost:${port}/`;
  const pages = KINDS.filter((kind) => kind.startsWith(page));
  try {
    if (only !== 'touches') {
      for (const [title, known, again] of /** @type {[string, boolean, boolean][]} */ ([['Nobody yet', false, false], ['Somebody with results', true, false], ['The same, opened again', true, true]])) {
        const all = again ? pages.filter((of) => AGAIN.includes(of)) : pages;
        if (!all.length) continue;
        /** @type {Record<string, any[]>} */
        const found = {};
        for (let run = 0; run < runs; run += 1) {
          const p = await visitor(base, known);
          for (const of of again ? all : []) await seen(p, of);
          // The blank page again and again, or a browser that has only begun would pass for what a page costs.
          for (const [i, of] of all.entries()) for (const one of i % BETWEEN ? [of] : [BLANK, of]) (found[one] = found[one] || []).push(await seen(p, one));
          await p.end();
        }
        const blank = spread(found[BLANK].map((of) => of.largest)).low;
        process.stdout.write(`\n${title}; blank page ${Math.round(blank)} ms\n\n| page | KB | of which | largest paint, least, ms | of blank | shift |\n| --- | ---: | --- | ---: | ---: | ---: |\n`);
        for (const of of all) {
          const files = [...new Set(found[of][0].files.filter((/** @type {string} */ f) => f.startsWith(base)).map((/** @type {string} */ f) => f.slice(base.length).split(/[?#]/)[0]))].filter((f) => fs.existsSync(path.join(folder, f)) && fs.statSync(path.join(folder, f)).isFile());
          /** @type {Record<string, number>} */
          const parts = {};
          for (const file of files) parts[part(file)] = (parts[part(file)] || 0) + gzip(path.join(folder, file));
          const { pictures = 0, ...rest } = parts, sum = Object.values(rest).reduce((a, b) => a + b, 0);
          const { low, high } = spread(found[of].map((one) => one.largest));
          const shift = Math.max(...found[of].map((one) => one.shift));
          process.stdout.write(`| ${of} | ${(sum / 1000).toFixed(1)} | ${Object.entries(rest).map(([k, v]) => `${k} ${(v / 1000).toFixed(1)}`).join(', ')}${pictures ? `; photographs ${(pictures / 1000).toFixed(1)}` : ''} | ${Math.round(low)} (to ${Math.round(high)}) | ${(low / blank).toFixed(1)} | ${shift.toFixed(3)}${shift ? ` ${[...new Set(found[of].flatMap((one) => one.moved))].slice(0, 4).join(' ')}` : ''} |\n`);
          if (process.env.FILES) process.stdout.write(`${files.map((f) => `${f} ${gzip(path.join(folder, f))}`).join('\n')}\n${found[of][0].what}\n`);
        }
      }
    }
    if (only !== 'paints') await touches(base);
  } finally {
    server.closeAllConnections();
    server.close();
    fs.rmSync(folder, { recursive: true, force: true });
  }
  process.exit(0);
})();
