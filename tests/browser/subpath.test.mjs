// Below any path of any static host.

import assert from 'node:assert/strict';
import { cp } from 'node:fs/promises';
import { join } from 'node:path';
import {
  FIRST,
  SECOND,
  allKept,
  checkQuiet,
  keptOffline,
  openIn,
  profile,
  ready,
  scenario,
  scratch,
  serve,
  version,
} from './page.mjs';

scenario('works, and is kept offline, below a path', async (t) => {
  const server = await serve(t, { prefix: '/some/sub/path/' });
  assert.ok(server.url.endsWith('/some/sub/path/'), server.url);
  const context = await profile(t);
  const page = await openIn(context, 'about:blank');
  const outside = [];
  page.on('response', (response) => {
    if (!response.url().startsWith(server.url) || response.status() >= 400) outside.push(response.url());
  });
  await page.goto(server.url);
  await ready(page);
  await allKept(page);
  assert.deepEqual(outside, []);
  const scope = await page.evaluate(async () => (await navigator.serviceWorker.ready).scope);
  assert.equal(scope, server.url);

  const manifest = await page.evaluate(async () => {
    const { href } = document.querySelector('link[rel="manifest"]');
    const { start_url: start, scope: reach, icons } = await (await fetch(href)).json();
    const statuses = await Promise.all(icons.map(async ({ src }) => (await fetch(new URL(src, href))).status));
    return { start: new URL(start, href).href, reach: new URL(reach, href).href, statuses };
  });
  assert.equal(manifest.start, server.url);
  assert.equal(manifest.reach, server.url);
  assert.deepEqual(new Set(manifest.statuses), new Set([200]));

  await server.stop();
  await context.setOffline(true);
  await page.reload();
  await ready(page);
  await checkQuiet(page);
});

scenario('two copies on one host leave each other alone', async (t) => {
  const folder = await scratch(t);
  await cp(FIRST, folder, { recursive: true });
  await cp(SECOND, join(folder, 'next'), { recursive: true });
  const server = await serve(t, { folder });
  const context = await profile(t);
  const upper = await ready(await openIn(context, server.url));
  await keptOffline(upper);
  const lower = await ready(await openIn(context, `${server.url}next/`));
  await keptOffline(lower);

  await server.stop();
  await context.setOffline(true);
  for (const page of [upper, lower]) {
    await page.reload();
    await ready(page);
  }
  assert.doesNotMatch(await version(upper), /-second$/);
  assert.match(await version(lower), /-second$/);
});
