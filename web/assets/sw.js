// Keeps one complete version of Tinwave for use without a network.
//
// The build fills in the version and the list of files. A version is kept
// whole or not at all, answers come from that version alone, and another one
// takes over only when the person says so.

const VERSION = '{{version}}';
const FILES = '{{files}}'.split(' ');
// What only some parts need: fetched once the rest is in use, and not waited for.
const LATER = '{{later}}'.split(' ');

// Several copies of the page may live on one host, each below its own path;
// a path never contains a space.
const SCOPE = new URL(self.registration.scope);
const PREFIX = `tinwave ${SCOPE.pathname} `;
const CACHE = PREFIX + VERSION;

const TYPES = {
  js: /javascript/,
  css: /^text\/css/,
  wasm: /^application\/wasm/,
  svg: /^image\/svg/,
  png: /^image\/png/,
  webmanifest: /json/,
  './': /^text\/html/,
};

const address = (file) => new URL(file, SCOPE).href;
const isHashed = (file) => /-[0-9a-f]{8}\.\w+$/.test(file);

/** Whether a response is the file, not what a host may send in its place. */
function isIt(file, response) {
  const type = response.headers.get('content-type') ?? '';
  const kind = file === './' ? file : file.split('.').pop();
  return response.status === 200 && !response.redirected && TYPES[kind].test(type);
}

/** Fetches one file and refuses what a host may send in its place. */
async function fetched(file) {
  // A name with a fingerprint has one content for good; any other is asked for anew.
  const cache = isHashed(file) ? 'default' : 'reload';
  const response = await fetch(address(file), { cache, credentials: 'same-origin' });
  if (!isIt(file, response)) {
    const type = response.headers.get('content-type') ?? '';
    throw new Error(`${file}: status ${response.status}, type "${type}"`);
  }
  if (file === './' && !(await response.clone().text()).includes(VERSION)) {
    throw new Error('the page is of another version than this worker');
  }
  return response;
}

async function install() {
  const responses = await Promise.all(FILES.map(fetched));
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(FILES.map((file, i) => cache.put(address(file), responses[i])));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function activate() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
}

/** Keeps the files of `LATER`, without haste; what fails is asked for at the next visit. */
async function keepLater() {
  const cache = await caches.open(CACHE);
  for (const file of LATER) {
    try {
      if (await cache.match(address(file))) continue;
      await cache.put(address(file), await fetched(file));
    } catch {
      return;
    }
  }
  for (const page of await self.clients.matchAll()) page.postMessage('all kept');
}

/** The kept file that a request asks for, if any. */
function keptFile(request) {
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== SCOPE.origin) return undefined;
  if (!url.pathname.startsWith(SCOPE.pathname)) return undefined;
  const path = url.pathname.slice(SCOPE.pathname.length);
  const file = path === '' || path === 'index.html' ? './' : path;
  return FILES.includes(file) || LATER.includes(file) ? file : undefined;
}

async function answer(file, request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(address(file), { ignoreVary: true });
  if (kept) return kept;
  // Not kept yet, or dropped by the browser for want of space.
  const response = await fetch(request);
  if (LATER.includes(file) && isIt(file, response)) await cache.put(address(file), response.clone());
  return response;
}

self.addEventListener('install', (event) => event.waitUntil(install()));
self.addEventListener('activate', (event) => event.waitUntil(activate()));
self.addEventListener('message', (event) => {
  if (event.data === 'take over') self.skipWaiting();
  if (event.data === 'keep the rest') event.waitUntil(keepLater());
});
self.addEventListener('fetch', (event) => {
  const file = keptFile(event.request);
  if (file) event.respondWith(answer(file, event.request));
});
