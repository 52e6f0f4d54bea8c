// Keeps the whole site on the device: every file whole and checked by hash, or not at all.
//
// Written by hand; the build puts the list of files in place of the one line below. Two groups in two caches: `shell`
// (pages, scripts, styles, `calc`) under the version of the site, `engine` (the Python runtime) under a hash of its own, so that a new site does not fetch the runtime again. Large files come as .gz and are inflated here. An update is fetched beside what
// runs, and takes over when the page asks for it. Nothing is ever answered with another file than the one asked for.

/** @type {{version: string, engine: string, files: [string, string, number, 'shell'|'engine', string][]}} url, hash, bytes, group, type */
const SITE = /* SITE */ null;

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {any} */ (self));
const ROOT = worker.registration.scope;
const PREFIX = `blankwright ${ROOT} `; // caches belong to the whole origin, and others may live there
const CACHES = { shell: `${PREFIX}shell ${SITE.version}`, engine: `${PREFIX}engine ${SITE.engine}` };
const FILES = new Map(SITE.files.map(([path, hash, size, group, type]) => [new URL(path, ROOT).href, { hash, size, group, type }]));
const NOT_FOUND = new URL('404.html', ROOT).href;

/** The first 96 bits of the SHA-256: enough to tell a damaged file. @param {ArrayBuffer|Uint8Array<ArrayBuffer>} buffer */
async function hashOf(buffer) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', buffer), 0, 12);
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The kept response for a file if it is there; with `deep`, only if its bytes are what they should be. @param {string} cacheName @param {string} url @param {boolean} deep */
async function kept(cacheName, url, deep) {
  const response = await (await caches.open(cacheName)).match(url);
  if (!response || !deep) return response;
  return (await hashOf(await response.clone().arrayBuffer())) === FILES.get(url).hash ? response : undefined;
}

/** Get a file from the network, check it, keep it. An error of any kind means that nothing was kept. @param {string} url */
async function obtain(url) {
  const file = FILES.get(url);
  const packed = file.group === 'engine' || url.endsWith('.zip');
  const reply = await fetch(packed ? `${url}.gz` : url, { cache: 'no-cache', credentials: 'same-origin' });
  if (reply.status !== 200) throw new Error(`${reply.status} for ${url}`);
  let body = new Uint8Array(await reply.arrayBuffer());
  if (packed && body[0] === 0x1f && body[1] === 0x8b) { // some hosts inflate .gz on the way: then it is plain already
    body = new Uint8Array(await new Response(new Blob([body]).stream().pipeThrough(new DecompressionStream('gzip'))).arrayBuffer());
  }
  if ((await hashOf(body)) !== file.hash) throw new Error(`not the file that belongs to this version: ${url}`);
  const response = new Response(body, { headers: { 'Content-Type': file.type, 'Content-Length': String(body.length) } });
  await (await caches.open(CACHES[file.group])).put(url, response.clone());
  return response;
}

/** The same bytes in the cache of an older version, to save the fetch. @param {string} url */
async function carriedOver(url) {
  const file = FILES.get(url);
  for (const name of await caches.keys()) {
    if (!name.startsWith(`${PREFIX}${file.group} `) || name === CACHES[file.group]) continue;
    const old = await kept(name, url, true);
    if (!old) continue;
    await (await caches.open(CACHES[file.group])).put(url, old);
    return true;
  }
  return false;
}

/** Make a group complete, one file after the other; tells the pages how far it is. @param {'shell'|'engine'} group @param {boolean} deep */
async function complete(group, deep) {
  const urls = [...FILES.keys()].filter((url) => FILES.get(url).group === group);
  const total = urls.reduce((sum, url) => sum + FILES.get(url).size, 0);
  let done = 0;
  for (const url of urls) {
    if (!(await kept(CACHES[group], url, deep)) && !(await carriedOver(url))) await obtain(url);
    done += FILES.get(url).size;
    tell({ type: 'installing', group, done, total });
  }
}

/** @param {object} message */
async function tell(message) {
  for (const client of await worker.clients.matchAll({ includeUncontrolled: true, type: 'window' })) client.postMessage(message);
}

/**
 * Whole or not at all. Only the very first time may the engine come later: there is no older build to lose then. What an
 * install that failed has kept is checked, so the next try goes on from there.
 */
async function install() {
  const first = !worker.registration.active;
  try {
    await complete('shell', true);
    await complete('engine', true).catch((error) => {
      if (!first) throw error;
    });
  } catch (error) {
    tell({ type: 'install-failed' });
    throw error;
  }
}

async function activate() {
  const ours = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && !Object.values(CACHES).includes(name));
  await Promise.all(ours.map((name) => caches.delete(name)));
  await worker.clients.claim();
}

/** Answer from the cache; a file that is missing or damaged there is fetched again. @param {string} url */
async function serve(url) {
  const { group } = FILES.get(url);
  return (await kept(CACHES[group], url, group === 'shell')) ?? obtain(url);
}

/** A page that is not ours: the network's answer, or our own page for wrong addresses. @param {Request} request */
async function unknownPage(request) {
  try {
    return await fetch(request);
  } catch (error) {
    const page = FILES.has(NOT_FOUND) && (await serve(NOT_FOUND));
    return page ? new Response(page.body, { status: 404, headers: page.headers }) : Response.error();
  }
}

/** What is complete on this device; with `deep`, after checking every byte. Mends what it can. @param {boolean} deep */
async function report(deep) {
  /** @type {Record<string, boolean>} */
  const done = {};
  for (const group of /** @type {('shell'|'engine')[]} */ (['shell', 'engine'])) done[group] = await complete(group, deep).then(() => true, () => false);
  return done;
}

worker.addEventListener('install', (event) => event.waitUntil(install()));
worker.addEventListener('activate', (event) => event.waitUntil(activate()));

worker.addEventListener('message', (event) => {
  if (event.data?.type === 'take-over') worker.skipWaiting();
  if (event.data?.type === 'report') {
    event.waitUntil(report(event.data.deep).then((done) => event.ports[0]?.postMessage({ version: SITE.version, ...done })));
  }
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || !url.href.startsWith(ROOT)) return;
  url.hash = '';
  if (request.mode === 'navigate') url.search = '';
  if (FILES.has(url.href)) event.respondWith(serve(url.href).catch(() => fetch(request)));
  else if (request.mode === 'navigate' && FILES.has(`${url.href}/`)) event.respondWith(Response.redirect(`${url.href}/`));
  else if (request.mode === 'navigate') event.respondWith(unknownPage(request));
});
