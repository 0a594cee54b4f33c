'use strict';
// The worker that keeps a hosted site for when there is no network. A page is kept only together with the very scripts and
// styles that it names, each by its version, so that what is shown never mixes two publishes. Pages come from the network
// first; versioned files from the kept copy first, because their content cannot change under that name.
(() => {
  const { site, version, shell } = globalThis.rungbookOffline;
  const OWN = `rungbook-${site}-`;
  const CACHE = OWN + version;
  const PATIENCE = 4000;
  const scope = /** @type {any} */ (globalThis);
  const here = (/** @type {string} */ path) => new URL(path, scope.registration.scope).href;
  const isVersioned = (/** @type {string} */ url) => /[?&]v=[0-9a-f]+$/.test(url);

  /** @param {string} url */
  const fetched = async (url) => {
    const response = await fetch(url, { cache: isVersioned(url) ? 'default' : 'no-cache' });
    if (!response.ok) throw new Error(`${url}: ${response.status}`);
    return response;
  };

  /** Whether an answer is what its address names: the tables say their version, and a host sends what it has, whatever was asked.
   * @param {string} url @param {Response} response */
  const isNamed = async (url, response) => {
    const named = /data\/tables\.js\?v=([0-9a-f]+)$/.exec(url);
    return !named || (await response.clone().text()).includes(`"version":"${named[1]}"`);
  };

  /** Keeps a page with everything that it names by version. @param {Cache} cache @param {string} url @param {Response} page */
  const keep = async (cache, url, page) => {
    const html = await page.clone().text();
    const named = [...html.matchAll(/(?:src|href)="([^"]+[?]v=[0-9a-f]+)"/g)].map((found) => new URL(found[1], url).href);
    for (const asset of new Set(named)) {
      if (await cache.match(asset)) continue;
      const response = await fetched(asset);
      if (!(await isNamed(asset, response))) throw new Error(`${asset}: of another version`);
      await cache.put(asset, response);
    }
    await cache.put(url, page);
  };

  const install = async () => {
    const cache = await caches.open(CACHE);
    for (const path of shell) {
      const url = here(path);
      await keep(cache, url, await fetched(url));
    }
    // What an older worker kept, such as the chosen skill's pages, is kept in the new version too; what is gone is let go.
    for (const name of (await caches.keys()).filter((other) => other.startsWith(OWN) && other !== CACHE)) {
      for (const { url } of await (await caches.open(name)).keys()) {
        if (isVersioned(url) || await cache.match(url)) continue;
        await fetched(url).then((response) => keep(cache, url, response)).catch(() => {});
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
    const kept = await cache.match(request.url);
    if (kept) return kept;
    const response = await fetched(request.url);
    // The page itself sees that it got another version, and says so.
    if (await isNamed(request.url, response)) await cache.put(request.url, response.clone());
    return response;
  };

  /** A page: from the network within a few seconds, else the kept one. @param {Request} request @param {(work: Promise<unknown>) => void} finish */
  const page = async (request, finish) => {
    const url = request.url.split('#')[0].split('?')[0];
    const address = url.endsWith('/') ? `${url}index.html` : url;
    const cache = await caches.open(CACHE);
    const kept = await cache.match(address);
    const network = fetch(url, { cache: 'no-cache' });
    const late = new Promise((resolve) => setTimeout(resolve, kept ? PATIENCE : 60000));
    try {
      const response = await Promise.race([network, late]);
      if (response instanceof Response) {
        if (response.ok) finish(keep(cache, address, response.clone()).catch(() => {}));
        return response;
      }
    } catch {
      // No network: the kept copy serves.
    }
    return kept || (await cache.match(here('index.html'))) || Response.error();
  };

  scope.addEventListener('install', (/** @type {any} */ event) => {
    scope.skipWaiting();
    event.waitUntil(install());
  });
  scope.addEventListener('activate', (/** @type {any} */ event) => event.waitUntil(activate()));
  scope.addEventListener('fetch', (/** @type {any} */ event) => {
    const { request } = event;
    if (request.method !== 'GET' || !request.url.startsWith(scope.registration.scope)) return;
    if (isVersioned(request.url)) event.respondWith(versioned(request));
    else if (request.mode === 'navigate') event.respondWith(page(request, (work) => event.waitUntil(work)));
  });
  scope.addEventListener('message', (/** @type {any} */ event) => {
    const asked = event.data && Array.isArray(event.data.keep) ? event.data.keep.filter((/** @type {unknown} */ p) => typeof p === 'string') : [];
    event.waitUntil((async () => {
      const cache = await caches.open(CACHE);
      for (const path of asked) {
        const url = here(path);
        if (url.startsWith(scope.registration.scope) && !(await cache.match(url))) await keep(cache, url, await fetched(url)).catch(() => {});
      }
    })());
  });
})();
