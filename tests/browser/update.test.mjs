// A new version: announced, taken up when the person says so, never mixed.

import assert from 'node:assert/strict';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import {
  FIRST,
  SECOND,
  checkQuiet,
  copyOf,
  deploy,
  fileLike,
  keptOffline,
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

const note = (page) => page.locator('#update-note');

scenario('announces a new version and takes it up when told, the link kept', async (t) => {
  const { folder, context, page, first } = await visited(t);
  await deploy(SECOND, folder);

  await page.reload();
  await ready(page);
  await note(page).waitFor();
  assert.equal(await version(page), first, 'still the version that the person has');

  // A second window, opened now, must be the same version, all of it.
  const other = await ready(await openIn(context, page.url()));
  assert.equal(await version(other), first);
  await checkQuiet(other);
  await other.close();

  await page.evaluate(() => history.replaceState(null, '', `${location.hash || '#v=1'}`));
  const address = page.url();
  assert.ok(address.includes('#'), address);
  await page.locator('#update-take').click();
  await page.waitForFunction((old) => document.querySelector('meta[name="version"]')?.content !== old, first);
  await ready(page);
  assert.match(await version(page), /-second$/);
  assert.equal(page.url(), address);
  assert.equal(await note(page).isVisible(), false);
  await checkQuiet(page);
});

scenario('after it, the new version works without a network and the old one is gone', async (t) => {
  const { folder, server, context, page, first } = await visited(t);
  await page.evaluate(() => caches.open('somebody else'));
  await deploy(SECOND, folder);
  await page.reload();
  await note(page).waitFor();
  await page.locator('#update-take').click();
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
  await note(page).waitFor();
  await page.locator('#update-later').click();
  assert.equal(await note(page).isVisible(), false);
  await page.reload();
  await ready(page);
  assert.equal(await version(page), first);
  await note(page).waitFor();
});

scenario('a new version that is only half there changes nothing', async (t) => {
  const { folder, page, first } = await visited(t);
  await deploy(SECOND, folder);
  await rm(join(folder, await fileLike(folder, /^start-.*\.js$/)));
  await page.reload();
  await ready(page);
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update().catch(() => {});
    const installing = registration.installing;
    if (installing && installing.state !== 'redundant') {
      await new Promise((done) => installing.addEventListener('statechange', done, { once: true }));
    }
  });
  assert.equal(await note(page).isVisible(), false);
  await page.reload();
  await ready(page);
  assert.equal(await version(page), first);
});

scenario('a window left on the old version is offered the new one', async (t) => {
  const { folder, context, page, first } = await visited(t);
  const other = await ready(await openIn(context, page.url()));
  await deploy(SECOND, folder);
  await page.reload();
  await note(page).waitFor();
  await page.locator('#update-take').click();
  await page.waitForFunction((old) => document.querySelector('meta[name="version"]')?.content !== old, first);

  await note(other).waitFor();
  assert.equal(await version(other), first, 'not reloaded unasked');
  await other.locator('#update-take').click();
  await other.waitForFunction((old) => document.querySelector('meta[name="version"]')?.content !== old, first);
  await ready(other);
});
