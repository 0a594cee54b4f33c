'use strict';
(() => {
const { site, version, shell } = globalThis.rungbookOffline;
const OWN = `rungbook-${site}-`;
const CACHE = OWN + version;
const PATIENCE = 4000;
const scope = (globalThis);
const here = (path) => new URL(path, scope.registration.scope).href;
const isVersioned = (url) => /[?&]v=[0-9a-f]+$/.test(url);
const fetched = async (url) => {
const response = await fetch(url, { cache: isVersioned(url) ? 'default' : 'no-cache' });
if (!response.ok) throw new Error(`${url}: ${response.status}`);
return response;
};
const isNamed = async (url, response) => {
const named = /data\/tables\.js\?v=([0-9a-f]+)$/.exec(url);
return !named || (await response.clone().text()).includes(`"version":"${named[1]}"`);
};
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
const versioned = async (request) => {
const cache = await caches.open(CACHE);
const kept = await cache.match(request.url);
if (kept) return kept;
const response = await fetched(request.url);
if (await isNamed(request.url, response)) await cache.put(request.url, response.clone());
return response;
};
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
}
return kept || (await cache.match(here('index.html'))) || Response.error();
};
scope.addEventListener('install', (event) => {
scope.skipWaiting();
event.waitUntil(install());
});
scope.addEventListener('activate', (event) => event.waitUntil(activate()));
scope.addEventListener('fetch', (event) => {
const { request } = event;
if (request.method !== 'GET' || !request.url.startsWith(scope.registration.scope)) return;
if (isVersioned(request.url)) event.respondWith(versioned(request));
else if (request.mode === 'navigate') event.respondWith(page(request, (work) => event.waitUntil(work)));
});
scope.addEventListener('message', (event) => {
const asked = event.data && Array.isArray(event.data.keep) ? event.data.keep.filter((p) => typeof p === 'string') : [];
event.waitUntil((async () => {
const cache = await caches.open(CACHE);
for (const path of asked) {
const url = here(path);
if (url.startsWith(scope.registration.scope) && !(await cache.match(url))) await keep(cache, url, await fetched(url)).catch(() => {});
}
})());
});
})();
