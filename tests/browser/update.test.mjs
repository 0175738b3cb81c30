// A new version: announced, taken up when the person says so, never mixed.

import assert from 'node:assert/strict';
import { copyFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import {
  FIRST,
  SECOND,
  checkNothingOffered,
  checkQuiet,
  copyOf,
  deploy,
  fileLike,
  keptOffline,
  offered,
  openIn,
  profile,
  ready,
  scenario,
  serve,
  version,
} from './page.mjs';

/** A visit to the first version, kept offline, then the second version put in its place. */
async function visited(t) {
  const folder = await copyOf(t, FIRST);
  const server = await serve(t, { folder });
  const context = await profile(t);
  const page = await ready(await openIn(context, server.url));
  await keptOffline(page);
  return { folder, server, context, page, first: await version(page) };
}

/** An address without the cut, which follows the best: it is found anew. */
const butForBest = (address) => address.replace(/&p[ld]=[\d.]+/g, '');

scenario('announces a new version and takes it up when told, the link kept', async (t) => {
  const { folder, context, page, first } = await visited(t);
  await deploy(SECOND, folder);

  await page.reload();
  await ready(page);
  await offered(page);
  assert.equal(await version(page), first, 'still the version that the person has');

  // A second window, opened now, must be the same version, all of it.
  const other = await ready(await openIn(context, page.url()));
  assert.equal(await version(other), first);
  await checkQuiet(other);
  await other.close();

  await page.evaluate(() => history.replaceState(null, '', `${location.hash || '#v=1'}`));
  const address = page.url();
  assert.ok(address.includes('#'), address);
  await (await offered(page)).take.click();
  await page.waitForFunction((old) => document.querySelector('meta[name="version"]')?.content !== old, first);
  await ready(page);
  assert.match(await version(page), /-second$/);
  assert.equal(butForBest(page.url()), butForBest(address));
  await checkNothingOffered(page);
  await checkQuiet(page);
});

scenario('after it, the new version works without a network and the old one is gone', async (t) => {
  const { folder, server, context, page, first } = await visited(t);
  await page.evaluate(() => caches.open('somebody else'));
  await deploy(SECOND, folder);
  await page.reload();
  await (await offered(page)).take.click();
  await page.waitForFunction((old) => document.querySelector('meta[name="version"]')?.content !== old, first);
  await ready(page);
  const names = await page.evaluate(() => caches.keys());
  assert.equal(names.length, 2, `${names}`);
  assert.ok(names.includes('somebody else'), 'caches of others are left alone');

  await server.stop();
  await context.setOffline(true);
  await page.reload();
  await ready(page);
  assert.match(await version(page), /-second$/);
});

scenario('"later" leaves the old version in use, and asks again at the next visit', async (t) => {
  const { folder, page, first } = await visited(t);
  await deploy(SECOND, folder);
  await page.reload();
  await offered(page);
  const { take, later } = await offered(page);
  await later.click();
  await take.waitFor({ state: 'hidden' });
  await page.reload();
  await ready(page);
  assert.equal(await version(page), first);
  await offered(page);
});

const HALF_THERE = [
  ['one file is still missing', async (folder) => rm(join(folder, await fileLike(folder, /^start-.*\.js$/)))],
  ['the page is still the old one', (folder) => copyFile(join(FIRST, 'index.html'), join(folder, 'index.html'))],
];

for (const [what, spoil] of HALF_THERE) {
  scenario(`a new version of which ${what} changes nothing`, async (t) => {
    const { folder, page, first } = await visited(t);
    await deploy(SECOND, folder);
    await spoil(folder);
    const state = await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      const arriving = new Promise((done) => {
        registration.addEventListener('updatefound', () => done(registration.installing), { once: true });
      });
      registration.update().catch(() => {});
      const worker = await arriving;
      const settled = () => ['redundant', 'installed', 'activated'].includes(worker.state);
      await new Promise((done) => {
        if (settled()) done();
        worker.addEventListener('statechange', () => settled() && done());
      });
      return worker.state;
    });
    assert.equal(state, 'redundant');
    await checkNothingOffered(page);
    await page.reload();
    await ready(page);
    assert.equal(await version(page), first);
  });
}

scenario('a window open since the very first visit is asked too', async (t) => {
  const { folder, page, first } = await visited(t);
  await deploy(SECOND, folder);
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
  await offered(page);
  await page.reload();
  await ready(page);
  assert.equal(await version(page), first);
});

scenario('a window left on the old version is offered the new one', async (t) => {
  const { folder, context, page, first } = await visited(t);
  const other = await ready(await openIn(context, page.url()));
  await deploy(SECOND, folder);
  await page.reload();
  await (await offered(page)).take.click();
  await page.waitForFunction((old) => document.querySelector('meta[name="version"]')?.content !== old, first);

  await offered(other);
  assert.equal(await version(other), first, 'not reloaded unasked');
  await (await offered(other)).take.click();
  await other.waitForFunction((old) => document.querySelector('meta[name="version"]')?.content !== old, first);
  await ready(other);
});
