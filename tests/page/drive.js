'use strict';
// A person on a phone in a real browser, counted: what is touched, the words that pass before the eyes, how far the page is moved.
// A small client of the W3C WebDriver protocol, and a server of plain files on the loopback.
const { spawn } = require('child_process');
const fs = require('fs');
const http = require('http');
const os = require('os');
const path = require('path');

const WIDTH = 390, HEIGHT = 844;
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';
const TYPES = { '.html': 'text/html; charset=utf-8', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml', '.json': 'application/json', '.png': 'image/png', '.webmanifest': 'application/manifest+json', '.woff2': 'font/woff2' };

/** @param {string} folder @returns {Promise<any>} */
const serve = (folder) => new Promise((resolve) => {
  const server = http.createServer((request, response) => {
    const name = decodeURIComponent(String(request.url).split('?')[0]).replace(/^\/+/, '') || 'index.html';
    const file = path.join(folder, path.normalize(name));
    if (!file.startsWith(folder) || !fs.existsSync(file) || !fs.statSync(file).isFile()) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'content-type': TYPES[path.extname(file)] || 'application/octet-stream' }).end(fs.readFileSync(file));
  });
  server.listen(0, '127.0.0.1', () => resolve(server));
});

/** What a page counts of itself: each word once, where it stood within the screens that were passed. */
const METER = `
  const [from, to] = arguments, seen = globalThis.seenTexts = globalThis.seenTexts || new WeakMap();
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  let words = 0;
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    const text = node.data.trim();
    if (text === '' || seen.get(node) === text) continue;
    const of = node.parentElement;
    if (!of.checkVisibility({ opacityProperty: true, visibilityProperty: true }) || of.closest('script, style, option, .aside, .skip')) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const box = range.getBoundingClientRect();
    if (box.width < 2 || box.height < 2 || box.bottom + scrollY < from || box.top + scrollY > to) continue;
    seen.set(node, text);
    words += (text.match(/[\\p{L}\\p{N}][\\p{L}\\p{N}'’.-]*/gu) || []).length;
  }
  return words;`;

class Person {
  /** @param {string} base */
  constructor(base) {
    this.base = base;
    this.reset();
  }

  reset() {
    this.touches = 0;
    this.words = 0;
    this.moved = 0;
    /** @type {string[]} */
    this.trail = [];
  }

  async start() {
    this.profile = fs.mkdtempSync(path.join(os.tmpdir(), 'person-'));
    this.driver = spawn(process.env.CHROMEDRIVER || 'chromedriver', ['--port=0'], { stdio: ['ignore', 'pipe', 'ignore'] });
    const port = await new Promise((resolve) => {
      let text = '';
      this.driver.stdout.on('data', (/** @type {Buffer} */ more) => {
        text += more;
        const found = /successfully on port (\d+)/.exec(text);
        if (found) resolve(found[1]);
      });
    });
    this.root = `http://127.0.0.1:${port}/session`;
    const { sessionId } = await this.send('POST', '', { capabilities: { alwaysMatch: {
      browserName: 'chrome', 'goog:loggingPrefs': { browser: 'ALL' },
      'goog:chromeOptions': { binary: process.env.CHROMIUM || '/usr/bin/chromium', args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
        '--disable-background-networking', '--disable-component-update', '--disable-sync', '--disable-dev-shm-usage', '--no-proxy-server', '--lang=en', `--user-data-dir=${this.profile}`] },
    } } });
    this.root += `/${sessionId}`;
    await this.cdp('Emulation.setDeviceMetricsOverride', { width: WIDTH, height: HEIGHT, deviceScaleFactor: 1, mobile: true });
    return this;
  }

  async end() {
    await this.send('DELETE', '').catch(() => {});
    this.driver.kill();
    fs.rmSync(this.profile, { recursive: true, force: true });
  }

  /** @param {string} method @param {string} to @param {unknown} [body] @returns {Promise<any>} */
  async send(method, to, body) {
    const response = await fetch(this.root + to, { method, body: body === undefined ? undefined : JSON.stringify(body), headers: { 'content-type': 'application/json' } });
    const { value } = await response.json();
    if (value && value.error) throw new Error(`${to}: ${value.message.split('\n')[0]}`);
    return value;
  }

  /** @param {string} cmd @param {object} params */
  cdp(cmd, params) { return this.send('POST', '/goog/cdp/execute', { cmd, params }); }

  /** @param {string} script @param {...unknown} args @returns {Promise<any>} */
  run(script, ...args) { return this.send('POST', '/execute/sync', { script, args }); }

  /** @param {string} page */
  async open(page) {
    await this.send('POST', '/url', { url: this.base + page });
    await this.until("document.readyState === 'complete'");
  }

  /** @param {string} what */
  async until(what) {
    for (const end = Date.now() + 10000; Date.now() < end;) {
      if (await this.run(`return Boolean(${what})`)) return;
      await new Promise((go) => { setTimeout(go, 40); });
    }
    throw new Error(`never: ${what}`);
  }

  /** What is looked for: a selector, or the words with which a control begins. @param {string} what */
  async find(what) {
    return this.run(`
      const what = arguments[0], seen = e => e.checkVisibility({ visibilityProperty: true }) && e.getClientRects().length > 0;
      const within = document.querySelector('dialog[open]') || document;
      const all = /[#.\\[>]/.test(what) ? within.querySelectorAll(what) : [...within.querySelectorAll('button, a, summary, label')].filter(e => e.textContent.trim().startsWith(what));
      return [...all].find(seen) || null;`, what);
  }

  /** The words of the screens between here and where the control is seen; the page is moved no further than needed. @param {any} element */
  async look(element) {
    const before = await this.run('return scrollY');
    if (element) await this.run("const box = arguments[0].getBoundingClientRect(); const by = box.top < 8 ? box.top - 100 : box.bottom > innerHeight - 8 ? box.bottom - innerHeight + 100 : 0; if (by) scrollBy({ top: by, behavior: 'instant' });", element);
    const after = await this.run('return scrollY');
    this.words += await this.run(METER, Math.min(before, after), Math.max(before, after) + HEIGHT);
    this.moved += Math.abs(after - before);
  }

  /** One touch. @param {string} what */
  async touch(what) {
    let element = null;
    for (const end = Date.now() + 6000; !element && Date.now() < end;) element = await this.find(what);
    if (!element) throw new Error(`nothing to touch: ${what} on ${await this.run('return location.href')}`);
    await this.look(element);
    await this.send('POST', `/element/${element[ELEMENT]}/click`, {});
    this.touches += 1;
    this.trail.push(`${what} (${this.words})`);
    await new Promise((go) => { setTimeout(go, 120); });
    await this.until("document.readyState === 'complete' && !document.querySelector('main[aria-busy]')");
    return element;
  }

  /** A field is touched and written in. @param {string} what @param {string} text */
  async write(what, text) {
    const element = await this.touch(what);
    await this.run("arguments[0].value = ''", element);
    await this.send('POST', `/element/${element[ELEMENT]}/value`, { text });
  }

  /** A list is opened and one of it chosen: two touches. @param {string} what @param {string} value */
  async choose(what, value) {
    const element = await this.find(what);
    if (!element) throw new Error(`nothing to choose from: ${what}`);
    await this.look(element);
    await this.run("arguments[0].value = arguments[1]; arguments[0].dispatchEvent(new Event('change', { bubbles: true }));", element, value);
    this.touches += 2;
    this.trail.push(`${what}=${value}`);
  }

  /** What stands on the screen at the end is read too. */
  async read() { await this.look(null); }

  /** @param {string} file */
  async picture(file) {
    const { data } = await this.cdp('Page.captureScreenshot', { format: 'png' });
    fs.writeFileSync(file, Buffer.from(data, 'base64'));
  }
}

module.exports = { Person, serve, WIDTH, HEIGHT };
