'use strict';
// The worker that keeps a hosted site for when there is no network. A page is kept only together with the very scripts and
// styles that it names, each by its version, so that what is shown never mixes two publishes. Pages come from the network
// first: a caution that changed is seen at once. Where the network does not answer soon, the copy says of which day it is.
(() => {
  const { site, version, shell, language } = globalThis.rungbookOffline;
  const OWN = `rungbook-${site}-`;
  const CACHE = OWN + version;
  const PATIENCE = 3000;
  const WHEN = 'x-kept';
  const scope = /** @type {any} */ (globalThis);
  const here = (/** @type {string} */ path) => new URL(path, scope.registration.scope).href;
  const isVersioned = (/** @type {string} */ url) => /(guard[.]|theme[/]|data[/])[^/?]+[?]v=[0-9a-f]+$/.test(url);
  const isFigure = (/** @type {string} */ url) => /figures[/][a-z0-9-]+[.]svg$/.test(url);
  /** @param {string} key @param {Record<string, string>} [values] */
  const say = (key, values = {}) => String((globalThis.rungbookWords || {})[key]).replace(/\{([a-z_]+)\}/g, (hole, name) => values[name] || hole)
    .replace(/[&<>"']/g, (letter) => `&#${letter.charCodeAt(0)};`);

  /** The one address under which a page is kept: hosts know it with and without its ending, and as a folder. @param {string} url */
  const addressOf = (url) => {
    const path = url.split('#')[0].split('?')[0].slice(here('').length).replace(/[/]+$/, '');
    if (path === '') return here('index.html');
    return here(path.slice(path.lastIndexOf('/') + 1).includes('.') ? path : `${path}.html`);
  };

  /** What is kept: by this version, else by one that it follows or that follows it, while the one hands over to the other.
   * @param {Cache} cache @param {string} url */
  const keptAt = async (cache, url) => await cache.match(url) || await caches.match(url);

  /** A page, wherever the host has it. @param {string} url */
  const fetched = async (url) => {
    const response = await fetch(url, { cache: 'no-cache' });
    if (!response.ok) throw new Error(`${url}: ${response.status}`);
    return response;
  };

  /** Whether an answer is what its address names: files say their version, and a host sends what it has, whatever was asked.
   * @param {string} url @param {Response} response */
  const isNamed = async (url, response) => {
    const named = /([^/]+[.](?:js|css))[?]v=([0-9a-f]+)$/.exec(url);
    if (!named) return true;
    const text = await response.clone().text();
    return text.includes(`${named[1]}=${named[2]}`) || text.includes(`"version":"${named[2]}"`);
  };

  /** A script or style of the version that is asked for, else what there is. @param {string} url @returns {Promise<[Response, boolean]>} */
  const asset = async (url) => {
    const response = await fetch(url);
    if (response.ok && await isNamed(url, response)) return [response, true];
    // What was cached on the way may be of an upload that was not finished.
    const again = await fetch(url, { cache: 'reload' });
    return [again, again.ok && await isNamed(url, again)];
  };

  /** Keeps a page with everything that it names by version. @param {Cache} cache @param {string} address @param {Response} page */
  const keep = async (cache, address, page) => {
    const html = await page.text();
    const named = [...html.matchAll(/(?:src|href)="([^"]+[?]v=[0-9a-f]+)"/g)].map((found) => new URL(found[1], address).href);
    for (const url of new Set(named)) {
      if (await cache.match(url)) continue;
      const [response, isRight] = await asset(url);
      if (!isRight) throw new Error(`${url}: of another version`);
      await cache.put(url, response);
    }
    const headers = { 'content-type': 'text/html; charset=utf-8', [WHEN]: String(Date.now()) };
    await cache.put(address, new Response(html, { headers }));
  };

  /** Keeps a figure of this version. @param {Cache} cache @param {string} url */
  const keepFigure = async (cache, url) => {
    const response = await fetch(url, { cache: 'no-cache' });
    if (response.ok) await cache.put(url, response.clone());
    return response;
  };
  /** Keeps the figures that a kept page shows; the page is whole without one that did not come. @param {Cache} cache @param {string} address */
  const keepFigures = async (cache, address) => {
    const page = await cache.match(address), html = page ? await page.text() : '';
    for (const [, path] of html.matchAll(/src="(figures[/][a-z0-9-]+[.]svg)"/g)) {
      if (!await cache.match(here(path))) await keepFigure(cache, here(path)).catch(() => {});
    }
  };

  const install = async () => {
    const cache = await caches.open(CACHE);
    for (const path of shell) {
      const address = here(path);
      await keep(cache, address, await fetched(address));
    }
    await keepFigures(cache, here('index.html'));
    // What an older worker kept, such as the chosen skill's pages, is kept in the new version too; what is gone is let go.
    for (const name of (await caches.keys()).filter((other) => other.startsWith(OWN) && other !== CACHE)) {
      for (const { url } of await (await caches.open(name)).keys()) {
        if (isVersioned(url) || await cache.match(url)) continue;
        await (isFigure(url) ? keepFigure(cache, url) : fetched(url).then((response) => keep(cache, url, response))).catch(() => {});
      }
    }
  };

  const activate = async () => {
    const names = await caches.keys();
    await Promise.all(names.filter((name) => name.startsWith(OWN) && name !== CACHE).map((name) => caches.delete(name)));
    await scope.clients.claim();
  };

  /** @param {Request} request */
  const versioned = async (request) => {
    const cache = await caches.open(CACHE);
    const kept = await keptAt(cache, request.url);
    if (kept) return kept;
    const [response, isRight] = await asset(request.url);
    // The page itself sees that it got another version, and says so.
    if (isRight) await cache.put(request.url, response.clone());
    return response;
  };

  /** A figure: kept by this version, else from the network, else what another version kept. @param {Request} request */
  const figure = async ({ url }) => {
    const cache = await caches.open(CACHE), kept = await cache.match(url);
    return kept || keepFigure(cache, url).catch(async () => await caches.match(url) || Response.error());
  };

  const answer = (/** @type {string} */ html) => new Response(html, { headers: { 'content-type': 'text/html; charset=utf-8' } });

  /** A kept page, which says of which day it is. @param {Response} kept */
  const shown = async (kept) => {
    const day = new Intl.DateTimeFormat(language, { dateStyle: 'long' }).format(Number(kept.headers.get(WHEN)));
    const note = `<p class="kept-from" role="status">${say('offline.kept_from', { day })}</p>`;
    return answer((await kept.text()).replace(/<main\b[^>]*>/, (main) => main + note));
  };

  /** What stands in the place of a page that is not kept: the frame of the home page, and where to go. @param {Cache} cache */
  const nothing = async (cache) => {
    const home = await keptAt(cache, here('index.html'));
    if (!home) return Response.error();
    const says = `<main id="main"><h1>${say('offline.not_kept')}</h1><p>${say('offline.open_it_once')}</p><p><a href="${here('index.html')}">${say('offline.home')}</a> <a href="${here('if-it-hurts.html')}">${say('offline.if_it_hurts')}</a></p></main>`;
    const html = (await home.text()).replace(/<main\b[^]*<[/]main>/, () => says).replace(/<script\b[^>]*><[/]script>/g, '');
    return answer(html.replace(/<title>[^<]*/, () => `<title>${say('offline.not_kept')}`));
  };

  /** A page: from the network within a few seconds, else the kept one. @param {Request} request @param {(work: Promise<unknown>) => void} finish */
  const page = async (request, finish) => {
    const address = addressOf(request.url);
    const cache = await caches.open(CACHE);
    // The browser follows where a host leads: an answer from another address is not one for this navigation.
    const network = fetch(request.url, { cache: 'no-cache', redirect: 'manual' });
    const copied = network.then((response) => (response.ok ? keep(cache, address, response.clone()) : null));
    finish(copied.catch(() => {}));
    const kept = await keptAt(cache, address);
    const late = new Promise((resolve) => setTimeout(resolve, kept ? PATIENCE : 60000));
    try {
      const response = await Promise.race([network, late]);
      if (response instanceof Response) return response;
    } catch {
      // No network: the kept copy serves.
    }
    return kept ? shown(kept) : nothing(cache);
  };

  scope.addEventListener('install', (/** @type {any} */ event) => {
    scope.skipWaiting();
    event.waitUntil(install());
  });
  scope.addEventListener('activate', (/** @type {any} */ event) => event.waitUntil(activate()));
  scope.addEventListener('fetch', (/** @type {any} */ event) => {
    const { request } = event;
    if (request.method !== 'GET' || !request.url.startsWith(scope.registration.scope)) return;
    if (request.mode === 'navigate') event.respondWith(page(request, (work) => event.waitUntil(work)));
    else if (isVersioned(request.url)) event.respondWith(versioned(request));
    else if (isFigure(request.url)) event.respondWith(figure(request));
  });
  scope.addEventListener('message', (/** @type {any} */ event) => {
    const asked = event.data && Array.isArray(event.data.keep) ? event.data.keep.filter((/** @type {unknown} */ p) => typeof p === 'string') : [];
    event.waitUntil((async () => {
      const cache = await caches.open(CACHE);
      for (const path of asked) {
        const url = here(path);
        if (url.startsWith(scope.registration.scope) && !(await cache.match(addressOf(url)))) {
          await fetched(url).then((response) => keep(cache, addressOf(url), response)).catch(() => {});
        }
        if (event.data.whole === true) await keepFigures(cache, addressOf(url));
      }
    })());
  });
})();
