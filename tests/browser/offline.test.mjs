// Without a network: one visit is enough, and the person is told so once.

import assert from 'node:assert/strict';
import { createServer } from 'node:http';
import { readFile, readdir, rm } from 'node:fs/promises';
import { extname, join } from 'node:path';
import {
  FIRST,
  FOR_WORK,
  allKept,
  checkNothingOffered,
  checkQuiet,
  copyOf,
  keptOffline,
  open,
  openIn,
  profile,
  ready,
  scenario,
  serve,
  version,
} from './page.mjs';

/** How often the page was told that it works without a network from now on. */
async function hearing(page) {
  await page.addInitScript(() => {
    window.toldOffline = 0;
    addEventListener('tinwave-offline', () => (window.toldOffline += 1));
  });
  return () => page.evaluate(() => window.toldOffline);
}

/** The addresses that the browser keeps for this page. */
function keptAddresses(page) {
  return page.evaluate(async () => {
    const names = await caches.keys();
    const lists = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
    return lists.flat().map(({ url }) => url);
  });
}

scenario('keeps everything, and says so once', async (t) => {
  const { url } = await serve(t);
  const page = await open(t, 'about:blank');
  const told = await hearing(page);
  await page.goto(url);
  await ready(page);
  await allKept(page);
  assert.equal(await told(), 1);
  const notice = page.getByRole('status').filter({ hasText: 'without a network' });
  await notice.waitFor();
  const kept = await keptAddresses(page);
  for (const name of await readdir(FIRST)) {
    const address = new URL(name === 'index.html' ? '' : name, url).href;
    assert.equal(kept.includes(address), name !== 'sw.js', name);
  }
  await notice.waitFor({ state: 'hidden' }); // It goes by itself.

  await page.reload();
  await ready(page);
  await keptOffline(page);
  await page.waitForTimeout(1000);
  assert.equal(await told(), 0, 'not told again');
  await checkQuiet(page);
});

scenario('reloads and opens links with the server stopped', async (t) => {
  const server = await serve(t);
  const context = await profile(t);
  const page = await ready(await openIn(context, server.url));
  await allKept(page);
  const before = await version(page);

  await server.stop();
  await context.setOffline(true);
  await page.reload();
  await ready(page);
  assert.equal(await version(page), before);
  await checkQuiet(page);

  for (const tail of [new URL(page.url()).hash || '#v=1', '?from=elsewhere', 'index.html']) {
    const other = await ready(await openIn(context, server.url + tail));
    assert.equal(await version(other), before, tail);
    await other.close();
  }
});

scenario('comes back when the server does', async (t) => {
  const server = await serve(t);
  const page = await ready(await open(t, server.url));
  await keptOffline(page);
  await server.stop();
  await page.reload();
  await ready(page);
  await server.restart();
  await page.reload();
  await ready(page);
  await checkNothingOffered(page); // The same version is no news.
});

/** What an installation comes to, and what the browser then keeps for this origin. */
function installed(page) {
  return page.evaluate(async () => {
    const registration = await navigator.serviceWorker.register('./sw.js', { updateViaCache: 'none' });
    const worker = registration.installing ?? registration.waiting ?? registration.active;
    const settled = () => ['redundant', 'activated'].includes(worker.state);
    await new Promise((done) => {
      if (settled()) done();
      worker.addEventListener('statechange', () => settled() && done());
    });
    return { state: worker.state, caches: (await caches.keys()).length };
  });
}

scenario('a whole installation is kept', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url));
  assert.deepEqual(await installed(page), { state: 'activated', caches: 1 });
});

scenario('keeps nothing when one file is missing', async (t) => {
  const folder = await copyOf(t, FIRST);
  await rm(join(folder, 'icon-512.png'));
  const { url } = await serve(t, { folder });
  const page = await open(t, 'about:blank');
  const told = await hearing(page);
  await page.goto(url);
  await ready(page);
  assert.deepEqual(await installed(page), { state: 'redundant', caches: 0 });
  assert.equal(await told(), 0);
});

/** A host that answers everything it lacks with the page itself, status 200. */
async function serveEverything(t, folder, without) {
  const types = {
    '.html': 'text/html',
    '.js': 'text/javascript',
    '.css': 'text/css',
    '.wasm': 'application/wasm',
    '.svg': 'image/svg+xml',
    '.webmanifest': 'application/manifest+json',
  };
  const server = createServer(async (request, response) => {
    const name = new URL(request.url, 'http://host').pathname.slice(1) || 'index.html';
    const found = name === without ? 'index.html' : name;
    const bytes = await readFile(join(folder, found)).catch(() => undefined);
    const shown = bytes ? found : 'index.html';
    response.setHeader('Content-Type', types[extname(shown)] ?? 'image/png');
    response.end(bytes ?? (await readFile(join(folder, shown))));
  });
  await new Promise((done) => server.listen(0, '127.0.0.1', done));
  t.after(() => {
    server.closeAllConnections();
    server.close();
  });
  return `http://127.0.0.1:${server.address().port}/`;
}

scenario('keeps nothing when a host sends the page in place of a missing file', async (t) => {
  // The host itself is no reason: with every file there, all is kept.
  const whole = await ready(await open(t, await serveEverything(t, FIRST, 'no such file')));
  assert.deepEqual(await installed(whole), { state: 'activated', caches: 1 });
  const url = await serveEverything(t, FIRST, 'icon-512.png');
  const page = await ready(await open(t, url));
  assert.deepEqual(await installed(page), { state: 'redundant', caches: 0 });
});

scenario('a page sent in place of the worker\u2019s program is not kept', async (t) => {
  const missing = FOR_WORK.find((name) => name.endsWith('.wasm'));
  const url = await serveEverything(t, FIRST, missing);
  const page = await open(t, 'about:blank');
  const told = await hearing(page);
  await page.goto(url);
  await ready(page);
  await keptOffline(page);
  await page.reload(); // From now on the service worker answers.
  await ready(page);
  await page.waitForTimeout(1000);
  const kept = await keptAddresses(page);
  assert.ok(kept.length > 5, `${kept}`);
  assert.ok(!kept.some((address) => address.endsWith(missing)), missing);
  assert.equal(await told(), 0, 'not everything is kept');
});
