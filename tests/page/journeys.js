'use strict';
// Five ways of a client through a published site, in a real browser on a phone's width: touches and words counted. Run by hand, or
// by the tests: node tests/page/journeys.js SITE [--pictures DIR]. Prints one line of JSON.
const path = require('path');
const { Person, serve } = require('./drive.js');

const site = path.resolve(process.argv[2]);
const at = process.argv.indexOf('--pictures');
const pictures = at > 0 ? process.argv[at + 1] : '';
const GOAL = 'strict-ring-muscle-up';

/** @param {any} p @param {string} name */
const shot = async (p, name) => { if (pictures) await p.picture(path.join(pictures, `${name}.png`)); };

/** The health questions of somebody who exercises regularly and says no to the rest. @param {any} p */
const health = async (p) => {
  await p.write('#born', '1990');
  await p.touch('#questions input[name=regular][value=yes]');
  await shot(p, 'health');
  await p.touch('#questions button[value=rest]');
  await p.until("!document.getElementById('outcome').hidden");
  await shot(p, 'outcome');
  await p.touch('#outcome .act');
};

/** Somebody who was here two weeks ago. @param {any} p */
const returning = async (p) => {
  await p.open('index.html');
  await p.run(`
    const put = (key, value) => localStorage.setItem(rungbook.health.own + key, JSON.stringify(value));
    const day = (before) => new Date(Date.now() - before * 864e5).toISOString().slice(0, 10);
    put('screened', { says: 'clear', on: day(30) });
    put('about', { goal: arguments[0], born: 1990, name: 'Ana' });
    [['pull-up', '9 reps'], ['bar-dip', '10 reps'], ['dead-hang', '60 s'], ['push-up', '25 reps']].forEach(([movement, got], i) => put('tested:000000' + i + '-aaaaaaa', { movement, got, on: day(15) }));`, GOAL);
};

/** @type {Record<string, (p: any, server: any) => Promise<boolean>>} */
const ways = {
  // A beginner, from home to a first session that can be ticked.
  beginner: async (p) => {
    await p.open('index.html');
    p.reset();
    await shot(p, 'home');
    await p.touch('a[href="self-test-one-leg-to-the-floor.html#goal"]');
    await health(p);
    await shot(p, 'known');
    await p.touch('None: my');
    await p.until("document.querySelector('#sets article')");
    await p.touch('#sets .ticks label');
    await shot(p, 'first-session');
    return p.run("return document.querySelectorAll('#sets article .ticks input:checked').length === 1");
  },
  // Somebody who knows their numbers, from home to what holds the goal back.
  numbers: async (p) => {
    await p.open('index.html');
    p.reset();
    await p.touch(`a[href="self-test-${GOAL}.html#goal"]`);
    await health(p);
    // Each as good as the easiest that is asked of it, but for the last two.
    const fields = await p.run("const { model } = rungbook.states; return [...document.querySelectorAll('.known-list li')].map((li) => ['#' + li.querySelector('input').id, Math.min(...model.demands[model.numbers.get(li.dataset.movement)].map((leaf) => model.target(leaf).amount / 1e6))])");
    for (const [i, [field, amount]] of fields.entries()) await p.write(field, String(i < fields.length - 2 ? amount : 0));
    await p.touch('.known .chip');
    await shot(p, 'known-filled');
    await p.touch('.known button[type=submit]');
    await p.until("document.getElementById('aim-says') && document.querySelector('#way li')");
    await p.read();
    await shot(p, 'limiter');
    return p.run("return document.querySelector('#way li').dataset.movement.length > 0");
  },
  // A sore shoulder, from home to a part that rests everywhere.
  shoulder: async (p) => {
    await returning(p);
    await p.open('index.html');
    p.reset();
    await p.touch('a[href="if-it-hurts.html"]');
    await p.touch('#pain-part label:has([value=shoulder])');
    await shot(p, 'hurts');
    await p.touch('#pain-form button[value=pause]');
    await p.read();
    await shot(p, 'paused');
    await p.open('pull-up.html');
    return p.run("return !document.getElementById('rests-here').hidden");
  },
  // Two weeks later, no signal, a new best.
  best: async (p, server) => {
    await returning(p);
    await p.open('where-i-stand.html');
    await p.run("return navigator.serviceWorker.ready.then(() => true)");
    await p.until("document.querySelector('#history article')");
    await new Promise((go) => { setTimeout(go, 4000); });
    server.closeAllConnections();
    server.close();
    await p.open('index.html');
    p.reset();
    await shot(p, 'home-again');
    await p.touch('main a[href="where-i-stand.html"]');
    await p.until("document.querySelector('#history article')");
    await p.write('#history article[data-movement=pull-up] .number-line input', '11');
    await shot(p, 'number');
    await p.touch('#history article[data-movement=pull-up] .number-line button[type=submit]');
    await p.read();
    await shot(p, 'news');
    return p.run("return /2 reps more/.test(document.getElementById('notice').textContent)");
  },
  // The copy to the coach.
  copy: async (p) => {
    await returning(p);
    await p.open('index.html');
    p.reset();
    await p.touch('main a[href="where-i-stand.html"]');
    await p.run("navigator.canShare = () => true; navigator.share = (what) => { globalThis.sent = what; return Promise.resolve(); };");
    await p.touch('#share');
    await p.read();
    await shot(p, 'copy');
    return p.run("return globalThis.sent.files[0].name.startsWith('results-ana-') && globalThis.sent.text.includes('Pull-up')");
  },
};

(async () => {
  /** @type {Record<string, object>} */
  const out = {};
  for (const [name, way] of Object.entries(ways)) {
    if (process.env.ONLY && process.env.ONLY !== name) continue;
    const server = await serve(site), { port } = server.address();
    const p = await new Person(`http://localhost:${port}/`).start();
    try {
      const reached = await way(p, server);
      out[name] = { touches: p.touches, words: p.words, moved: Math.round(p.moved), reached, ...(process.env.TRAIL ? { trail: p.trail } : {}) };
    } catch (error) {
      out[name] = { touches: p.touches, words: p.words, fault: String(error) };
      await shot(p, `failed-${name}`);
    } finally {
      await p.end();
      server.closeAllConnections();
      server.close();
    }
  }
  process.stdout.write(`${JSON.stringify(out)}\n`);
  process.exit(0);
})();
